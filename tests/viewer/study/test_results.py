"""Results: kept, scheduled, exported, and never lost."""

import sqlite3
from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.study.results import Answered, Results, ResultsError, before_exam, in_order

START = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


@pytest.fixture
def results(tmp_path):
    results = Results(tmp_path / "results.db")
    results.add_learner("Ada")
    yield results
    results.close()


def _answer(structure, right, kind="name", stratum=2):
    return Answered(structure, kind, stratum, right, seconds=5.0)


def test_a_week_of_right_answers_lets_a_card_rest_longer_and_longer(results):
    now, rests = START, []
    for _ in range(6):
        due = results.keep("Ada", _answer("trapezius", True), now)
        rests.append(due - now)
        now = max(due, now + timedelta(hours=1))
    assert rests[-1] > timedelta(days=7)
    assert all(b >= a for a, b in zip(rests[1:], rests[2:], strict=False))


def test_through_a_week_the_weak_structure_is_asked_more_often(results):
    asked = {"trapezius": 0, "multifidus": 0}
    for day in range(7):
        for hour in (9, 14, 19):
            now = START + timedelta(days=day, hours=hour - 9)
            ripe = {s for s, _ in results.due("Ada", now)}
            for structure in asked:
                if day == 0 or structure in ripe:
                    asked[structure] += 1
                    results.keep("Ada", _answer(structure, structure == "trapezius"), now)
    assert asked["multifidus"] > 2 * asked["trapezius"]
    assert results.by_structure("Ada", now)[0].name == "multifidus"


def test_a_wrong_answer_comes_back_before_a_right_one(results):
    right = results.keep("Ada", _answer("trapezius", True), START)
    wrong = results.keep("Ada", _answer("multifidus", False), START)
    assert wrong <= right


def test_learners_do_not_share_results(results):
    results.add_learner("Ben")
    results.keep("Ada", _answer("trapezius", True), START)
    assert results.met("Ben") == frozenset()
    assert results.by_stratum("Ben") == ()


def test_results_survive_closing(tmp_path):
    first = Results(tmp_path / "r.db")
    first.add_learner("Ada")
    first.keep("Ada", _answer("trapezius", True), START)
    first.set_note("Ada", "trapezius", "mind the nerve")
    first.close()
    again = Results(tmp_path / "r.db")
    assert again.met("Ada") == {("trapezius", "name")}
    assert again.notes("Ada") == {"trapezius": "mind the nerve"}
    again.close()


@pytest.mark.parametrize(
    "junk", [b"not a database, but long enough to look", b"SQLite format 3\0" * 40]
)
def test_a_broken_file_is_put_aside_and_told(tmp_path, junk):
    path = tmp_path / "r.db"
    path.write_bytes(junk)
    results = Results(path)
    assert "r.db.broken-1" in results.message
    assert (tmp_path / "r.db.broken-1").read_bytes() == junk
    results.add_learner("Ada")
    results.close()


def test_a_file_of_a_newer_program_stays_where_it_is(tmp_path):
    path = tmp_path / "r.db"
    base = sqlite3.connect(path)
    base.execute("pragma user_version = 99")
    base.commit()
    base.close()
    kept = path.read_bytes()
    with pytest.raises(ResultsError, match="newer Peelback, format 99"):
        Results(path)
    assert path.read_bytes() == kept and list(tmp_path.iterdir()) == [path]


def test_the_export_names_every_answer_and_no_formula(results):
    results.keep("Ada", Answered("trapezius", "name", 2, False, True, "=1+1", 3.0), START)
    head, line = results.csv("Ada").splitlines()
    assert head.startswith("at,structure,kind")
    assert "near" in line
    assert "'=1+1" in line


def test_an_unknown_learner_is_refused(results):
    with pytest.raises(ResultsError, match="no learner"):
        results.keep("Eve", _answer("trapezius", True))
    with pytest.raises(ResultsError, match="1 to 60"):
        results.add_learner("  ")


def test_a_learner_who_cannot_be_kept_or_deleted_is_said(tmp_path):
    results = Results(tmp_path / "r.db", wait_s=0.05)
    results.add_learner("Ada")
    holder = sqlite3.connect(tmp_path / "r.db", timeout=0, isolation_level=None)
    holder.execute("begin immediate")
    with pytest.raises(ResultsError, match="not kept: database is locked"):
        results.add_learner("Bo")
    with pytest.raises(ResultsError, match="not deleted: database is locked"):
        results.remove_learner("Ada")
    holder.execute("rollback")
    holder.close()
    assert results.learners() == ("Ada",)
    results.close()


def test_what_is_due_comes_first_then_what_is_new():
    a, b, c = ("a", "name"), ("b", "name"), ("c", "name")
    assert in_order([a, b, c], due=[c], met=[a, c]) == [c, b, a]


def test_a_learner_is_taken_away_with_all_that_was_kept(results):
    results.add_learner("Bo")
    for name in ("Ada", "Bo"):
        results.keep(name, Answered("trapezius", "name", 2, True), START)
        results.set_note(name, "trapezius", "three parts")
    results.remove_learner("Bo")
    assert results.learners() == ("Ada",)
    assert results.notes("Ada") and results.coming("Ada")
    results.add_learner("Bo")
    assert results.csv("Bo").count("\n") == 1 and not results.notes("Bo")


def test_what_comes_next_is_listed_by_its_day(results):
    results.keep("Ada", Answered("trapezius", "name", 2, False), START)
    results.keep("Ada", Answered("rhomboid_major", "name", 3, True), START)
    coming = results.coming("Ada")
    assert [row[1] for row in coming] == ["trapezius", "rhomboid_major"]
    assert coming[0][0] <= coming[1][0]


def test_a_file_that_another_program_holds_is_neither_moved_nor_lost(tmp_path):
    path = tmp_path / "results.db"
    Results(path).close()
    holder = sqlite3.connect(path, timeout=0, isolation_level=None)
    holder.execute("begin exclusive")
    kept = path.read_bytes()
    with pytest.raises(ResultsError, match="locked"):
        Results(path, wait_s=0.05)
    holder.execute("rollback")
    holder.close()
    assert path.read_bytes() == kept and list(tmp_path.iterdir()) == [path]


EXAM = date(2026, 3, 20)


def test_no_card_comes_again_only_after_the_examination(results):
    results.set_exam("Ada", EXAM, START)
    assert results.exam("Ada") == EXAM
    now = START
    for k in range(40):
        for day in (0, 2, 7):
            due = results.keep("Ada", _answer(f"part {k}", True), now + timedelta(days=day))
        assert due.date() < EXAM
    days = {when.date() for when, *_ in results.coming("Ada")}
    # Not all on one day, and in the last stretch, where they serve.
    assert len(days) > 3
    assert min(days) > START.date() + timedelta(days=10)


def test_setting_the_examination_brings_late_cards_forward_and_letting_go_gives_them_back(results):
    now = START
    for _ in range(5):
        late = results.keep("Ada", _answer("trapezius", True), now)
        now = max(late, now + timedelta(hours=1))
    early = results.keep("Ada", _answer("multifidus", False), now)
    exam = (now + timedelta(days=4)).date()
    assert late.date() < exam or results.coming("Ada")[-1][0].date() > exam
    before = {s: when for when, s, _ in results.coming("Ada")}
    results.set_exam("Ada", exam, now)
    after = {s: when for when, s, _ in results.coming("Ada")}
    assert all(when.date() < exam for when in after.values())
    assert after["multifidus"] == early
    results.set_exam("Ada", None, now)
    assert {s: when for when, s, _ in results.coming("Ada")} == before


@given(
    days=st.integers(-3, 60),
    rest=st.floats(0.01, 400),
    hour=st.floats(0, 24),
    name=st.text(max_size=12),
)
def test_an_examination_only_ever_brings_a_card_forward(days, rest, hour, name):
    now = START + timedelta(hours=hour)
    own = now + timedelta(days=rest)
    exam = (now + timedelta(days=days)).date()
    due = before_exam(own, now, exam, name)
    assert now < due <= own
    if days >= 2:
        assert due.date() < exam


def test_results_of_a_program_without_examinations_open_and_take_one(tmp_path):
    old = Results(tmp_path / "r.db")
    old.add_learner("Ada")
    old._base.execute("drop table exam")
    old._base.commit()
    old.close()
    again = Results(tmp_path / "r.db")
    assert again.message == "" and again.exam("Ada") is None
    again.set_exam("Ada", EXAM)
    again.remove_learner("Ada")
    assert again._base.execute("select count(*) from exam").fetchone() == (0,)
    again.close()
