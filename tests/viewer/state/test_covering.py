"""What lies over a part in a state, and the commands that bring it into view."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.catalogue.plan import part_ids_of, steps
from meshes.questions.cover import Layers, cast_layers
from meshes.questions.expose import AtRisk
from meshes.questions.probe import CAUTION, Probe
from tests.fakes import toy_model
from viewer.state import commands, covering
from viewer.state.captions import part_titles, title_of_several
from viewer.state.plan import plan_from_records
from viewer.state.session import Session
from viewer.state.view_state import ViewState
from viewer.state.visibility import taken_off

MODEL = toy_model()
TITLES = part_titles(MODEL)
PLAN = plan_from_records(steps(), lambda name: part_ids_of(name, MODEL.catalogue))


@pytest.fixture(scope="module")
def layers() -> Layers:
    return cast_layers(MODEL, 4.0)


def _asked(part_id: str, **fields) -> ViewState:
    return ViewState(covers_of=(part_id,), **fields)


def _way(layers, state, ids, share=0.8):
    return covering.way_in(PLAN, layers, MODEL, state, ids, share)


def test_what_is_peeled_lies_over_nothing(layers):
    state = commands.peel_to(2, "left").change(_asked("rhomboid_major.left"))
    in_view, rows = covering.cover_rows(layers, MODEL, state, TITLES)
    assert in_view < 0.5
    assert rows[0].title == "Trapezius, ascending part" or "Trapezius" in rows[0].title
    assert not any(MODEL.parts[i].stratum < 2 for row in rows for i in row.part_ids)
    deeper = commands.peel_to(3, "left").change(state)
    in_view, rows = covering.cover_rows(layers, MODEL, deeper, TITLES)
    assert in_view > 0.95


def test_ways_of_looking_do_not_change_what_lies_over(layers):
    state = _asked("rhomboid_major.left")
    plain = covering.cover_rows(layers, MODEL, state, TITLES)
    looking = replace(
        state,
        see_through=frozenset({"skin.left"}),
        alone=frozenset({"rhomboid_major.left"}),
        side_shown="right",
        peek=True,
    )
    assert covering.cover_rows(layers, MODEL, looking, TITLES) == plain


def test_the_answer_in_words_names_shares(layers):
    state = commands.peel_to(2, "both").change(_asked("rhomboid_major.left"))
    in_view, rows = covering.cover_rows(layers, MODEL, state, TITLES)
    words = covering.covers_in_words("Rhomboid major, left", in_view, rows)
    assert "Trapezius" in words
    assert "hides" in words
    assert "%" in words
    assert "Nothing lies over" in covering.covers_in_words("Skin", 1.0, ())
    assert "not reached" in covering.covers_in_words("Sternum", None, ())


def test_both_sides_asked_about_together_have_one_line_a_pair(layers):
    both = ViewState(covers_of=("rhomboid_major.left", "rhomboid_major.right"))
    in_view, rows = covering.cover_rows(layers, MODEL, both, TITLES)
    one_view, one = covering.cover_rows(layers, MODEL, _asked("rhomboid_major.left"), TITLES)
    assert in_view == pytest.approx(one_view, abs=0.02)
    assert [row.title for row in rows] == [row.title for row in one]
    for row, single in zip(rows, one, strict=True):
        assert len(row.part_ids) == 2
        assert row.share == pytest.approx(single.share, abs=0.03)
        assert row.depth_mm == pytest.approx(single.depth_mm, abs=0.3)
    assert title_of_several(both.covers_of, TITLES) == "Rhomboid major, both sides"
    assert title_of_several(("skin.left", "scapula.left"), TITLES) == "2 parts"


def test_asking_is_passed_over_by_undo():
    session = Session()
    session.do(commands.peel_to(2, "both"))
    session.do(covering.ask(["scapula.left"]))
    session.undo()
    assert session.state.covers_of == ("scapula.left",)
    assert session.state.peeled.left == 0
    assert session.undo_name is None


def test_bringing_into_view_is_one_undo_and_one_redo(layers):
    session = Session()
    ids = ("serratus_posterior_superior.left",)
    way = _way(layers, session.state, ids)
    played = covering.play(PLAN, MODEL, session.state, ids, way, "it")
    assert len(played) > 3
    for command in played:
        session.do(command)
    session.close_gesture()
    assert session.undo_name == "bring it into view"
    after = session.state
    assert not any(taken_off(MODEL.parts[i], after) for i in ids)
    session.undo()
    assert session.state == ViewState()
    session.redo()
    assert session.state.removed == after.removed
    assert not session.state.overridden.left


def test_a_part_that_was_taken_away_is_laid_back_first(layers):
    state = commands.peel_to(5, "both").change(ViewState())
    ids = ("rhomboid_major.left",)
    laid = commands.show(ids, MODEL).change(state)
    way = _way(layers, laid, ids)
    session = Session(state)
    for command in covering.play(PLAN, MODEL, state, ids, way, "it"):
        session.do(command)
    assert not taken_off(MODEL.parts[ids[0]], session.state)


def test_the_words_of_a_way_say_share_and_steps(layers):
    way = _way(layers, ViewState(), ("rhomboid_major.left",))
    words = covering.way_in_words(way, "Rhomboid major, left", TITLES)
    assert words.startswith("Rhomboid major, left: ")
    assert f"{len(way.steps)} steps" in words
    there = _way(layers, ViewState(), ("skin.left",))
    assert "already" in covering.way_in_words(there, "Skin", TITLES)
    assert covering.risks_in_words(there, TITLES, {}) == ""
    never = _way(layers, ViewState(), ("spinal_cord",), 1.0)
    words = covering.way_in_words(never, "Cord", TITLES)
    assert "no more" in words
    assert any(reason in words for reason in ("no step takes it", "in one step with it"))


def test_the_words_of_a_way_name_what_ends_it_not_what_lies_before_that(layers):
    never = _way(layers, ViewState(), ("spinal_cord",), 1.0)
    stays = {
        "skin.left": "little is gained by taking it",
        "vertebra_T5": "no step takes it",
    }
    rows = [replace(never.remains[0], part_id=i, share=0.9 - 0.3 * k) for k, i in enumerate(stays)]
    short = replace(never, steps=(), remains=tuple(rows), stays=stays)
    words = covering.way_in_words(short, "Cord", {"vertebra_T5": "Vertebra T5"})
    assert "Vertebra T5 still hides 60 % (no step takes it)" in words


def test_twins_at_risk_are_told_of_once_with_the_nearer_distance(layers):
    way = _way(layers, ViewState(), ("rhomboid_major.left",))
    risks = [
        AtRisk(f"accessory_nerve.{side}", mm, "line") for side, mm in (("left", 4), ("right", 2))
    ]
    way = replace(way, steps=(replace(way.steps[0], at_risk=tuple(risks)),))
    words = covering.risks_in_words(way, TITLES, {})
    assert words.count("both sides 2 mm") == 1
    assert words.count("mm") == 1


def test_a_ladder_is_told_with_its_caution():
    ladder = Probe(MODEL).at("T7", 40, "left")
    rows = covering.ladder_rows(ladder, MODEL, TITLES)
    assert rows[0].title.startswith("Skin")
    assert float(rows[0].enters) == 0
    text = covering.ladder_text("Spine T7, 40 mm left", rows, CAUTION)
    assert text.splitlines()[0].startswith("Spine T7")
    assert CAUTION in text
    assert len(text.splitlines()) == len(rows) + 3


@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_any_part_in_any_state_is_answered_and_played_without_loss(data, layers):
    left = data.draw(st.integers(0, 11))
    right = data.draw(st.integers(0, 11))
    hidden = data.draw(st.frozensets(st.sampled_from(sorted(MODEL.parts)), max_size=4))
    target = data.draw(st.sampled_from(sorted(MODEL.parts)))
    state = ViewState(hidden=hidden, covers_of=(target,))
    state = commands.peel_to(left, "left").change(state)
    state = commands.peel_to(right, "right").change(state)
    in_view, rows = covering.cover_rows(layers, MODEL, state, TITLES)
    assert not any(taken_off(MODEL.parts[i], state) for row in rows for i in row.part_ids)
    way = _way(layers, state, (target,))
    session = Session(state)
    for command in covering.play(PLAN, MODEL, state, (target,), way, "it"):
        session.do(command)
    session.close_gesture()
    assert not taken_off(MODEL.parts[target], session.state)
    if session.undo_name:
        session.undo()
    assert session.state == state
