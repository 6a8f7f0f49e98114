"""The take-home lab without a window: points, records, the book, what is written."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.study.lab import (
    TEACHING,
    DrawnCut,
    LabBook,
    Lost,
    StepRecord,
    lab_book,
    record_from_json,
    record_to_json,
)
from viewer.study.results import Results

GOOD = DrawnCut("along the spines", 1.0, 0.0, 0.0, 120.0, 4.0, True)
STEPS = ("skin", "trapezius", "levator")

losses = st.builds(
    Lost,
    st.sampled_from(("accessory_nerve.left", "rhomboid_major.left")),
    st.floats(0, 30),
    st.floats(0.5, 100),
    st.booleans(),
)
cuts = st.builds(
    DrawnCut,
    st.sampled_from(("along the spines", "across")),
    st.floats(0, 1),
    st.floats(0, 80),
    st.floats(0, 80),
    st.floats(1, 400),
    st.floats(0.5, 30),
    st.booleans(),
    st.lists(losses, max_size=4).map(tuple),
    st.lists(st.tuples(st.just("accessory_nerve.left"), st.floats(0, 90)), max_size=3).map(tuple),
)


def test_the_plans_own_line_at_the_right_depth_is_worth_all_points():
    assert GOOD.score == 100.0


@given(cut=cuts)
def test_points_lie_between_0_and_100_and_a_loss_never_adds_any(cut):
    from dataclasses import replace

    assert 0.0 <= cut.score <= 100.0
    worse = replace(cut, lost=(*cut.lost, Lost("dorsal_scapular_nerve.left", 2.0, 3.0, True)))
    assert worse.score <= cut.score
    if sum(x.kept for x in cut.lost) == 0:
        assert worse.score <= cut.score - 25.0 + 1e-9  # one rounding of a sum


@given(cut=cuts)
def test_a_record_comes_back_from_its_json_as_it_was(cut):
    record = StepRecord("trapezius", ("along the spines", "across"), (cut, GOOD), 2, True)
    assert record_from_json(record_to_json(record)) == record


def test_a_missing_line_counts_nothing_and_the_best_try_counts():
    poor = DrawnCut("along the spines", 0.2, 12.0, 30.0, 50.0, 4.0, False)
    record = StepRecord("trapezius", ("along the spines", "across"), (poor, GOOD))
    assert record.missing == ("across",)
    assert record.best("along the spines") is GOOD
    assert record.score == 50.0


def test_a_step_that_cuts_nothing_has_no_score():
    assert StepRecord("feel_landmarks", done=True).score is None


def test_the_book_goes_on_with_the_first_step_that_is_not_done():
    book = LabBook("left", STEPS, {}).put(StepRecord("skin", ("a",), done=True))
    assert book.next == "trapezius" and book.done == 1
    for step in STEPS[1:]:
        book = book.put(StepRecord(step, done=True))
    assert book.next is None


@pytest.mark.parametrize("junk", ["", "{}", "[1]", '{"step_id": "skin", "cuts": [{"a": 1}]}'])
def test_a_broken_record_is_counted_and_the_others_stay(junk):
    good = record_to_json(StepRecord("skin", ("a",), (), 0, True))
    book, broken = lab_book("left", STEPS, [junk, good])
    assert broken == 1 and book.of("skin").done


def test_records_are_kept_per_learner_and_side_and_can_be_begun_anew(tmp_path):
    results = Results(tmp_path / "results.db")
    for name in ("Ada", "Bo"):
        results.add_learner(name)
    results.keep_lab("Ada", "left", "skin", record_to_json(StepRecord("skin", done=True)))
    results.keep_lab("Ada", "left", "skin", record_to_json(StepRecord("skin", strays=1)))
    results.close()
    results = Results(tmp_path / "results.db")
    book, _ = lab_book("left", STEPS, results.lab("Ada", "left"))
    assert book.of("skin") == StepRecord("skin", strays=1)
    assert not results.lab("Bo", "left") and not results.lab("Ada", "right")
    results.forget_lab("Ada", "left")
    assert not results.lab("Ada", "left")
    results.close()


def test_the_table_names_what_was_lost_and_says_what_the_model_is_not_for():
    lost = Lost("accessory_nerve.left", 3.0, 5.0, True)
    cut = DrawnCut("along the spines", 1.0, 0.0, 0.0, 120.0, 4.0, True, (lost,))
    book = LabBook("left", STEPS, {}).put(StepRecord("trapezius", ("along the spines",), (cut,)))
    names = {"accessory_nerve.left": "Accessory nerve, left"}
    rows = list(csv.DictReader(io.StringIO(book.csv({"trapezius": "Fold trapezius"}, names))))
    row = next(r for r in rows if r["step"] == "Fold trapezius")
    assert row["lost_that_must_stay"] == "Accessory nerve, left"
    assert float(row["points"]) == cut.score < 75
    assert rows[-1]["step"] == TEACHING
