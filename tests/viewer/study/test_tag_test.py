"""A sitting on the real model: asked, answered, kept, summed up."""

from datetime import UTC, datetime, timedelta

import pytest

from meshes.questions.cover import layers_of
from viewer.study.questions import KINDS, QuestionMaker
from viewer.study.results import Results
from viewer.study.tag_test import TagTest, TestChoice

START = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


@pytest.fixture(scope="module")
def maker(preview_model):
    return QuestionMaker(preview_model, layers_of(preview_model))


@pytest.fixture
def results(tmp_path):
    results = Results(tmp_path / "results.db")
    results.add_learner("Ada")
    yield results
    results.close()


def sit(maker, results, now=START, **choice):
    choice = {"kinds": ("name",), "number": 3} | choice
    return TagTest(maker, results, TestChoice("Ada", **choice), 5, lambda: now)


def test_a_sitting_asks_so_many_and_sums_up(maker, results):
    test = sit(maker, results)
    for k in range(3):
        question = test.next()
        test.answer_choice(question.right if k else (question.right + 1) % len(question.choices))
    assert test.over and test.next() is None
    assert test.summary().startswith("2 of 3 right. To look at again: ")
    assert sum(w.answers for w in results.by_structure("Ada")) == 3


def test_what_was_wrong_comes_first_when_it_is_due(maker, results):
    first = sit(maker, results, number=1)
    question = first.next()
    first.give_up()
    later = sit(maker, results, START + timedelta(days=1))
    assert later.next().structure == question.structure


def test_pointing_takes_either_side_and_says_what_was_hit(maker, results):
    test = sit(maker, results, kinds=("point_to",))
    question = test.next()
    assert question.pin is None
    other = next(i for i in maker.askable if maker.structure(i) != question.structure)
    verdict = test.answer_part(other)
    assert not verdict.right and maker.english(other) in verdict.words
    question = test.next()
    assert test.answer_part(question.part_id).right


def test_an_order_is_right_only_as_it_lies(maker, results):
    test = sit(maker, results, kinds=("order",))
    order = test.next().order
    verdict = test.answer_order((order[1], order[0], *order[2:]))
    assert verdict.near and not verdict.right
    assert test.answer_order(test.next().order).right


def test_only_kinds_with_names_are_typed(maker, results):
    test = sit(maker, results, kinds=("nerve", "name"), typed=True, number=6)
    while (question := test.next()) is not None:
        assert test.typed == (question.kind == "name")
        if test.typed:
            assert test.answer_typed(question.accepted[0]).right
        else:
            test.give_up()


def test_one_question_is_answered_once(maker, results):
    test = sit(maker, results)
    test.next()
    test.give_up()
    with pytest.raises(ValueError, match="no question is open"):
        test.give_up()


@pytest.mark.parametrize(
    ("choice", "words"),
    [({"kinds": ()}, "at least one"), ({"number": 0}, "1–100"), ({"station_s": 1}, "10–600")],
)
def test_a_sitting_that_makes_no_sense_is_refused(choice, words):
    with pytest.raises(ValueError, match=words):
        TestChoice("Ada", **choice)


def test_every_kind_can_be_sat(maker, results):
    for kind in KINDS:
        assert sit(maker, results, kinds=(kind,)).next().kind == kind
