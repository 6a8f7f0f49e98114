"""Commands, undo and redo."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fakes import toy_model
from viewer.state import commands
from viewer.state.session import Session
from viewer.state.view_state import BOTH_SIDES, SIDE_CHOICES, Camera, Sides, ViewState
from viewer.state.visibility import taken_off, visible_parts

MODEL = toy_model()
POSE = Camera((0, 900, 200), (0, 0, 200), (0, 0, 1), 300.0)


def test_undo_and_redo_name_what_they_do():
    session = Session()
    session.do(commands.hide(["deltoid.left"], "Deltoid, left"))
    assert session.undo_name == "hide Deltoid, left"
    session.undo()
    assert session.state == ViewState()
    assert session.redo_name == "hide Deltoid, left"
    session.redo()
    assert session.state.hidden == {"deltoid.left"}


def test_a_drag_of_the_rail_is_one_undo():
    session = Session()
    for depth in (1, 2, 3, 4):
        session.do(commands.peel_to(depth, "both", MODEL, dragging=True))
    session.close_gesture()
    session.do(commands.peel_to(5, "both", MODEL, dragging=True))
    session.undo()
    assert session.state.peeled == Sides(4, 4)
    session.undo()
    assert session.state.peeled == Sides(0, 0)
    assert session.undo_name is None


def test_a_command_that_changes_nothing_leaves_no_trace():
    session = Session()
    session.do(commands.peel_to(0, "left", MODEL))
    assert session.undo_name is None


def test_undoing_a_peel_leaves_the_camera_where_the_user_turned_it():
    session = Session()
    session.do(commands.peel_to(2, "both", MODEL))
    session.note_camera(POSE)
    session.undo()
    assert session.state.camera == POSE


def test_undoing_a_view_brings_the_camera_back():
    session = Session()
    session.note_camera(POSE)
    session.do(commands.set_view("superior"))
    assert session.state.camera is None
    session.undo()
    assert session.state.camera == POSE
    assert session.state.view == "posterior"


def test_picking_and_peeking_are_looking_and_leave_no_undo():
    session = Session()
    session.do(commands.select(["skin.left"]))
    session.do(commands.set_peek(True))
    assert session.undo_name is None


def test_listeners_hear_before_and_after_until_they_stop():
    session = Session()
    heard = []
    stop = session.subscribe(lambda before, after: heard.append((before.peeled, after.peeled)))
    session.do(commands.peel_to(1, "left", MODEL))
    stop()
    session.do(commands.peel_to(2, "left", MODEL))
    assert heard == [(Sides(0, 0), Sides(1, 0))]


def test_a_click_on_a_band_takes_one_stratum_out_and_puts_it_back():
    session = Session()
    session.do(commands.toggle_stratum(4, "left"))
    shown = visible_parts(MODEL, session.state)
    assert "serratus_posterior_superior.left" not in shown
    assert "serratus_posterior_superior.right" in shown
    assert "trapezius_transverse.left" in shown
    session.do(commands.toggle_stratum(4, "left"))
    assert session.state == ViewState()


def test_a_band_that_is_peeled_comes_back_alone():
    session = Session()
    session.do(commands.peel_to(4, "left", MODEL))
    session.do(commands.toggle_stratum(2, "left"))
    shown = visible_parts(MODEL, session.state)
    assert "trapezius_transverse.left" in shown
    assert "skin.left" not in shown
    assert "rhomboid_major.left" not in shown


def test_pulling_the_rail_outward_brings_back_what_steps_removed():
    session = Session(ViewState(removed=frozenset({"trapezius_transverse.left"})))
    session.do(commands.peel_to(4, "both", MODEL))
    session.do(commands.peel_to(2, "both", MODEL))
    assert session.state.removed == frozenset()


def test_show_brings_back_one_part_and_nothing_else():
    session = Session()
    session.do(commands.peel_to(5, "both", MODEL))
    before = visible_parts(MODEL, session.state)
    session.do(commands.show(["rhomboid_major.left"], MODEL))
    assert visible_parts(MODEL, session.state) == before | {"rhomboid_major.left"}


def test_bring_all_back_brings_all_back_and_is_undone_in_one():
    session = Session()
    session.do(commands.peel_to(5, "left", MODEL))
    session.do(commands.hide(["deltoid.right"]))
    session.do(commands.show_side("left"))
    untidy = session.state
    session.do(commands.bring_all_back())
    assert visible_parts(MODEL, session.state) == set(MODEL.parts)
    session.undo()
    assert session.state == untidy


PART_IDS = sorted(MODEL.parts)
COMMANDS = st.one_of(
    st.builds(
        lambda d, s: commands.peel_to(d, s, MODEL),
        st.integers(0, 11),
        st.sampled_from(SIDE_CHOICES),
    ),
    st.builds(commands.toggle_stratum, st.integers(0, 10), st.sampled_from(SIDE_CHOICES)),
    st.builds(lambda i: commands.hide([i]), st.sampled_from(PART_IDS)),
    st.builds(lambda i: commands.show([i], MODEL), st.sampled_from(PART_IDS)),
    st.builds(lambda i: commands.toggle_alone([i]), st.sampled_from(PART_IDS)),
    st.builds(lambda i: commands.toggle_see_through([i]), st.sampled_from(PART_IDS)),
    st.builds(commands.show_side, st.sampled_from(SIDE_CHOICES)),
)


@settings(max_examples=60, deadline=None)
@given(st.lists(COMMANDS, max_size=12))
def test_any_row_of_commands_is_undone_and_redone_exactly(row):
    session = Session()
    for command in row:
        session.do(command)
    end = session.state
    while session.undo():
        pass
    assert session.state == ViewState()
    while session.redo():
        pass
    assert session.state == end


@settings(max_examples=60, deadline=None)
@given(st.lists(COMMANDS, max_size=8), st.sampled_from(PART_IDS))
def test_show_makes_a_part_visible_from_any_state(row, part_id):
    session = Session()
    for command in row:
        session.do(command)
    session.do(commands.show([part_id], MODEL))
    assert part_id in visible_parts(MODEL, session.state)


@settings(max_examples=60, deadline=None)
@given(st.lists(COMMANDS, max_size=8), st.integers(0, 11))
def test_after_peeling_nothing_above_the_depth_is_left(row, depth):
    session = Session()
    for command in row:
        session.do(command)
    session.do(commands.peel_to(depth, "both", MODEL))
    for part in MODEL.parts.values():
        if part.stratum < depth:
            assert taken_off(part, session.state)


@pytest.mark.parametrize("side", BOTH_SIDES)
def test_peeling_refuses_a_depth_outside_the_body(side):
    with pytest.raises(ValueError, match="0–11"):
        commands.peel_to(12, side)
