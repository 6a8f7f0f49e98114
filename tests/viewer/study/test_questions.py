"""Questions on the real model: answerable, one right option, the pin in the open."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point

from meshes.catalogue.names import plain
from meshes.questions.cover import layers_of
from viewer.state.view_state import ViewState
from viewer.study.answers import judge
from viewer.study.questions import KINDS, POINTED_KINDS, QuestionMaker


@pytest.fixture(scope="module")
def maker(preview_model):
    return QuestionMaker(preview_model, layers_of(preview_model))


@settings(max_examples=20, deadline=None)
@given(seed=st.integers(0, 10**6), kind=st.sampled_from(sorted(KINDS)))
def test_any_seed_gives_a_question_with_its_right_answer_once(maker, seed, kind):
    question = maker.make(seed, (kind,))
    assert question is not None
    assert question.kind == kind
    assert question.prompt and question.explanation
    assert len(set(question.choices)) == len(question.choices)
    if kind == "order":
        assert sorted(question.choices) == sorted(question.order)
        assert question.choices != question.order
    elif kind not in POINTED_KINDS:
        assert 0 <= question.right < len(question.choices)


@settings(max_examples=8, deadline=None)
@given(seed=st.integers(0, 10**6))
def test_the_tagged_place_lies_open(maker, seed):
    question = maker.make(seed, ("name", "nerve", "deep_to", "level"))
    there = maker.there(question.state)
    places, _ = maker.layers.places_in_view(question.part_id, there)
    assert np.linalg.norm(places - question.pin, axis=1).min() < 1e-6
    # A second opinion: the outermost part on the ray of the tag is the tagged one.
    k = int(np.linalg.norm(places - question.pin, axis=1).argmin())
    _, rays = maker.layers.places_in_view(question.part_id, there)
    assert maker.layers.order_on(int(rays[k]), there)[0] == question.part_id


@pytest.mark.parametrize("kind", sorted(set(KINDS) - {"side", "order"} - POINTED_KINDS))
def test_no_wrong_option_would_be_right(maker, kind):
    for seed in range(3):
        question = maker.make(seed, (kind,))
        row = maker.row(question.part_id)
        wrong = [c for k, c in enumerate(question.choices) if k != question.right]
        right = question.choices[question.right]
        assert right not in wrong
        if kind == "action":
            assert not set(wrong) & set(row.actions)
        if kind == "attachment":
            assert not set(wrong) & {r.words for r in row.attachments}
        if kind == "name":
            assert not any(judge(w, question.accepted).right for w in wrong)


def test_the_same_seed_gives_the_same_question(maker):
    assert maker.make(7) == maker.make(7)


def test_the_prompt_does_not_tell_the_name(maker):
    for seed in range(8):
        question = maker.make(seed, ("name", "nerve", "attachment", "action"))
        assert maker.english(question.part_id) not in question.prompt


def test_a_structure_can_be_asked_for(maker):
    question = maker.make(3, ("name",), structure="trapezius_ascending")
    assert question.part_id.startswith("trapezius_ascending")


def test_the_right_answer_typed_is_right(maker):
    for seed in range(10):
        question = maker.make(seed, ("name", "level"))
        assert judge(question.accepted[0], question.accepted).right


def test_wrong_options_come_from_the_neighbourhood(maker):
    alike = maker.neighbours("rhomboid_major.left")[:10]
    assert any(i.startswith("rhomboid_minor") for i in alike)


def test_an_unknown_kind_is_refused(maker):
    with pytest.raises(ValueError, match="kinds are"):
        maker.make(1, ("spelling",))


def test_a_question_never_starts_from_a_dissection_of_the_readers(maker):
    assert maker.make(1).state.ticked == ViewState().ticked


@pytest.mark.parametrize("kind", ["area", "area_point"])
def test_the_place_in_a_section_lies_inside_the_structures_own_area(maker, kind):
    for seed in range(4):
        question = maker.make(seed, (kind,))
        plane = question.state.section.plane()
        away = np.asarray(question.place) - plane.origin
        assert abs(float(away @ plane.normal)) < 1e-6
        spot = Point(float(away @ plane.right), float(away @ plane.up))
        (own,) = [r for r in maker.slicer.cut(plane, None) if r.part_id == question.part_id]
        assert own.polygons.contains(spot)
        assert own.polygons.boundary.distance(spot) >= 2.0
        if kind == "area":
            assert maker.english(question.part_id) == question.choices[question.right]


def test_the_place_of_a_cut_does_not_tell_the_level_that_is_asked(maker):
    question = maker.make(1, ("area",), structure="vertebra_T10")
    assert "T10" not in question.prompt and "T9" not in question.prompt


def test_side_and_strata_keep_the_test_to_a_part_of_the_back(maker):
    parts = maker.model.parts
    for part_id in maker.among((3, 4), ("neck", "shoulder"), "left"):
        part = parts[part_id]
        assert part.stratum in (3, 4) and part.region in ("neck", "shoulder")
        assert part.side in ("left", None)
    for seed in range(4):
        assert parts[maker.make(seed, ("name",), side="right").part_id].side != "left"


def test_what_says_all_that_the_answer_says_is_no_wrong_option(maker):
    for seed in range(12):
        question = maker.make(seed, ("artery", "nerve"))
        right = set(plain(question.choices[question.right]).split()) - {"and"}
        for k, words in enumerate(question.choices):
            if k != question.right:
                assert not set(plain(words).split()) - {"and"} <= right
