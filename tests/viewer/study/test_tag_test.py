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


def test_a_week_of_sittings_follows_what_the_learner_does_not_know(maker, results):
    weak = "rhomboid"
    asked: dict[str, list[int]] = {}
    for day in range(7):
        now = START + timedelta(days=day)
        met_before = {s for s, _ in results.met("Ada")}
        due = [s for s, _ in results.due("Ada", now)]
        test = sit(maker, results, now, number=10, strata=(2, 3, 4, 5))
        today = []
        while (question := test.next()) is not None:
            wrong = question.structure.startswith(weak)
            test.answer_choice((question.right + wrong) % len(question.choices))
            today.append(question.structure)
            asked.setdefault(question.structure, []).append(day)
        assert len(set(today)) == 10
        # What is due comes first, then what was never asked, and only then the rest.
        rank = [0 if s in due else 1 if s not in met_before else 2 for s in today]
        assert rank == sorted(rank)
        assert set(today) >= set(due[:10])
    rhomboids = [len(days) for s, days in asked.items() if s.startswith(weak)]
    others = [len(days) for s, days in asked.items() if not s.startswith(weak)]
    assert rhomboids and min(rhomboids) > sum(others) / len(others)
    assert min(w.share for w in results.by_structure("Ada")) == 0.0
    assert len(asked) > 20


def test_sittings_ask_each_row_before_a_row_with_many_levels_comes_again(maker, results):
    test = sit(maker, results, number=40)
    entries = []
    while (question := test.next()) is not None:
        entries.append(maker.model.parts[question.part_id].entry)
        test.give_up()
    assert len(set(entries)) == len(entries)


def test_a_pause_is_not_counted(maker, results):
    now = [START]
    test = TagTest(maker, results, TestChoice("Ada", ("name",), 1), 5, lambda: now[0])
    test.next()
    now[0] += timedelta(seconds=4)
    test.halt()
    now[0] += timedelta(seconds=400)
    assert test.seconds == 4.0
    test.go_on()
    now[0] += timedelta(seconds=2)
    assert test.seconds == 6.0


@pytest.mark.parametrize(
    ("choice", "words"),
    [({"strata": (11,)}, "0–10"), ({"region": "knee"}, "region must be one of"),
     ({"mark": "arrow"}, "mark must be one of"), ({"side": "up"}, "side must be one of")],
)  # fmt: skip
def test_a_part_of_the_back_that_there_is_not_is_refused(choice, words):
    with pytest.raises(ValueError, match=words):
        TestChoice("Ada", **choice)
