"""Questions that join plan and structure, held against plan, layers and a ray engine."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.catalogue.plan import part_ids_of, removed_by, steps
from meshes.questions.cover import layers_of
from viewer.study.plan_questions import NEAR_LINE_MM, TUBES, seen_after
from viewer.study.questions import QuestionMaker


@pytest.fixture(scope="module")
def maker(preview_model):
    return QuestionMaker(preview_model, layers_of(preview_model))


def titled(title):
    (step,) = [step for step in steps() if step.title == title]
    return step


@settings(max_examples=12, deadline=None)
@given(seed=st.integers(0, 10**6))
def test_the_right_step_meets_the_structure_and_no_wrong_one_speaks_of_it(maker, seed):
    question = maker.make(seed, ("step",))
    catalogue = maker.model.catalogue
    for k, title in enumerate(question.choices):
        step = titled(title)
        takes = question.part_id in removed_by(step, "both", catalogue)
        shows = question.part_id in {i for n in step.reveals for i in part_ids_of(n, catalogue)}
        if k == question.right:
            assert takes or shows
            if not takes:
                before = seen_after(maker, step, question.part_id, without=True)
                assert seen_after(maker, step, question.part_id) > before
        elif maker.model.parts[question.part_id].kind not in TUBES:
            assert not takes and not shows


def test_a_nerve_is_met_where_it_comes_to_light_not_where_its_layer_goes(maker):
    question = maker.make(0, ("step",), structure="accessory_nerve")
    assert "into view" in question.prompt
    assert question.choices[question.right] == "Fold trapezius outward"
    # The answer is explained, not the structure alone.
    number = [step.title for step in steps()].index("Fold trapezius outward") + 1
    assert question.explanation.startswith(f"Step {number}, Fold trapezius outward: ")


@pytest.mark.parametrize("seed", range(6))
def test_the_blade_meets_the_right_option_and_none_of_the_wrong_ones(maker, seed):
    """A second opinion: rays of another engine along the drawn line, down to the told depth."""
    embree = pytest.importorskip("trimesh.ray.ray_pyembree")
    question = maker.make(seed, ("lose",))
    line = np.asarray(question.line)
    inward = maker.rehearser.inward(line)
    depth = float(question.prompt.split(" mm deep")[0].rsplit(" ", 1)[1])

    def met(name, slack):
        found = 0
        for part in maker.model.parts.values():
            if part.id in maker.named and maker.english(part.id) == name:
                rays = embree.RayMeshIntersector(part.mesh)
                places, which, _ = rays.intersects_location(line, inward, multiple_hits=False)
                if len(places):
                    away = np.linalg.norm(places - line[which], axis=1)
                    found += int((away < depth - slack).sum())
        return found

    wrong = [name for k, name in enumerate(question.choices) if k != question.right]
    assert met(question.choices[question.right], -0.5) > 0
    assert [name for name in wrong if met(name, 0.5)] == []
    assert np.linalg.norm(line - question.pin, axis=1).min() <= NEAR_LINE_MM + 1.0
    # What is explained is what is lost, and how deep it lies.
    right = question.choices[question.right]
    assert question.explanation.casefold().startswith(f"{right.casefold()}: ")
    deep = float(question.explanation[len(right) + 2 :].split()[0])
    assert 0 <= deep <= depth


@pytest.mark.parametrize(
    "structure", ["trapezius_ascending", "latissimus_dorsi", "rhomboid_major", "splenius_capitis"]
)
def test_the_great_cuts_of_the_plan_give_questions(maker, structure):
    assert maker.make(1, ("lose",), structure=structure) is not None
