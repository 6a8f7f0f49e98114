"""Questions on the layers at a tag, held against what a single ray or the catalogue says."""

import random

import numpy as np
import pytest

from meshes.questions.cover import layers_of
from viewer.state.visibility import bare_films, visible_parts
from viewer.study.layer_questions import SINEW, TISSUES
from viewer.study.questions import KINDS, QuestionMaker


@pytest.fixture(scope="module")
def maker(preview_model):
    return QuestionMaker(preview_model, layers_of(preview_model))


def drawn(maker, kind, count, seed=1):
    """Return questions of a kind on structures drawn at random."""
    rng = random.Random(seed)
    names = sorted({maker.structure(i) for i in maker.tagged if maker.may(kind, i)})
    found = []
    # Structures by turns: of some kinds (what a cut loses) only a few come into question.
    for _ in range(8):
        rng.shuffle(names)
        for name in names:
            question = maker.make(rng.randrange(10**6), (kind,), name)
            if question is not None:
                found.append(question)
            if len(found) == count:
                return found
    return found


def ray_of(maker, question, state=None):
    """Return the ray of a tag."""
    there = maker.there(state or question.state)
    places, rays = maker.layers.places_in_view(question.part_id, there)
    away = np.linalg.norm(places - question.pin, axis=1)
    assert away.min() < 1e-6
    return int(rays[away.argmin()])


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_a_long_run_of_drawn_questions_can_all_be_answered(maker, kind):
    questions = drawn(maker, kind, 25, seed=3)
    assert len(questions) == 25
    for question in questions:
        assert question.prompt and question.explanation
        assert len(set(question.choices)) == len(question.choices)
        if question.right >= 0:
            assert len(question.choices) >= (2 if kind == "side" else 3)
        if question.pin is not None and question.state.section is None:
            ray = ray_of(maker, question)
            there = maker.there(question.state)
            assert maker.layers.order_on(ray, there)[0] == question.part_id


def test_under_the_fat_comes_the_deep_fascia_and_not_the_muscle(maker):
    # The investing layer covers trapezius and latissimus (Gray 1918, p. 432).
    for seed in range(6):
        question = maker.make(seed, ("deep_to",), "superficial_fascia")
        assert question.choices[question.right] == "deep fascia of the back"


def test_fat_is_never_said_to_lie_on_the_bare_skull(maker):
    # The scalp has three more layers there, none of which is a part (Gray 1918, pp. 378-380).
    questions = [maker.make(seed, ("superficial_to",), "cranium") for seed in range(8)]
    questions += [maker.make(seed, ("tissue",), "cranium") for seed in range(8)]
    for question in questions:
        if question is not None:
            text = f"{question.choices} {question.explanation}"
            assert "superficial fascia; cranium" not in text
            if question.kind == "superficial_to":
                assert question.choices[question.right] != "superficial fascia"


@pytest.mark.parametrize(
    ("structure", "over"),
    [
        # Common order of the layers of the back (Gray 1918, pp. 432-434).
        ("trapezius_transverse", "deep fascia of the back"),
        ("rhomboid_major", "trapezius"),
        ("longissimus_thoracis", "thoracolumbar fascia, posterior layer"),
    ],
)
def test_what_lay_over_it_is_what_the_books_say(maker, structure, over):
    found = [maker.make(seed, ("superficial_to",), structure) for seed in range(6)]
    said = {q.choices[q.right] for q in found if q is not None}
    assert said and any(words.startswith(over) for words in said)


def test_fat_lies_between_the_wall_of_the_canal_and_the_dura(maker):
    # The epidural fat and veins (Gray 1918, the meninges).
    for k in range(1, 8):
        question = maker.make(k, ("deep_to",), f"vertebra_T{k + 2}")
        if question is not None:
            assert question.choices[question.right] != "spinal dura mater"


@pytest.mark.parametrize("kind", ["deep_to", "superficial_to"])
def test_no_wrong_option_lies_next_to_the_tag(maker, kind):
    for question in drawn(maker, kind, 20):
        state = question.state
        visible = maker.there(state) if kind == "deep_to" else None
        order = maker.layers.order_on(ray_of(maker, question), visible)
        k = order.index(question.part_id) + (1 if kind == "deep_to" else -1)
        right = question.choices[question.right]
        assert maker.english(order[k]) == right
        assert maker.english(question.part_id) not in question.choices


def test_the_answer_over_a_tag_is_back_in_place_when_it_is_explained(maker):
    for question in drawn(maker, "superficial_to", 12):
        (answer,) = question.shows
        assert answer in visible_parts(maker.model, question.shown_in)
        assert answer not in maker.there(question.state)


def test_the_tissue_agrees_with_the_kind_of_the_row(maker):
    seen = set()
    for question in drawn(maker, "tissue", 60):
        row, right = maker.row(question.part_id), question.choices[question.right]
        seen.add(right)
        if right == "aponeurosis or tendon":
            assert getattr(row, "tendon", "") or "aponeurosis" in row.english
        elif row.kind == "fascia":
            assert right in ("superficial fascia", "deep fascia")
        else:
            assert right == row.kind
    assert {"muscle", "bone", "ligament", "nerve"} <= seen


def test_every_tissue_comes_up_in_a_sitting_of_tissues(maker, tmp_path):
    from viewer.study.results import Results
    from viewer.study.tag_test import TagTest, TestChoice

    results = Results(tmp_path / "r.db")
    results.add_learner("Ada")
    test = TagTest(maker, results, TestChoice("Ada", ("tissue",), 60), 2)
    seen = set()
    while (question := test.next()) is not None:
        seen.add(question.choices[question.right])
        test.give_up()
    results.close()
    # A muscle is tagged where it is sinew by chance only.
    assert seen >= set(TISSUES.values()) - {"aponeurosis or tendon"}


def test_the_broad_tendon_of_latissimus_is_never_told_from_the_fascia_it_is_fused_with(maker):
    # It is the outer lamina of the posterior layer (Bogduk and Macintosh 1984).
    met = 0
    for seed in range(24):
        question = maker.make(seed, ("tissue",), "latissimus_dorsi")
        if question.choices[question.right] == "aponeurosis or tendon":
            met += 1
            assert "deep fascia" not in question.choices
            part = maker.model.parts[question.part_id]
            near = np.linalg.norm(part.vertices - question.pin, axis=1).argsort()[:1]
            assert part.tendon[near[0]] > SINEW - 0.2
    assert met
    fascia = maker.make(1, ("tissue",), "thoracolumbar_fascia_posterior")
    assert "aponeurosis or tendon" not in fascia.choices


def test_no_film_lies_over_a_place_whose_tissue_is_asked(maker):
    for question in drawn(maker, "tissue", 30, seed=5):
        state = question.state
        assert not bare_films(maker.model, state, visible_parts(maker.model, state))
