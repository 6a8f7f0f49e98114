import json

import pytest

from viewer.state.cut_line import CutLine, add_cut_point, begin_cut, change_cut
from viewer.state.section_plane import SectionPlane, change_section, set_section
from viewer.state.session import Session
from viewer.state.view_state import ViewState
from viewer.state.working_file import WorkingFileError, state_from_json, state_to_json


def test_section_and_rehearsed_cut_go_through_a_file_unchanged():
    state = ViewState(
        section=SectionPlane("free", 123.5, (30.0, -12.0), near_half=True, whole=True),
        cut_line=CutLine(((1.0, 2.0, 3.0), (4.0, 5.0, 6.0)), "trapezius.left", "trapezius", 4.5),
    )
    assert state_from_json(json.loads(json.dumps(state_to_json(state)))) == state


def test_a_file_from_before_there_were_sections_still_opens():
    old = state_to_json(ViewState())
    del old["section"], old["cut_line"]
    assert state_from_json(old) == ViewState()


@pytest.mark.parametrize(
    ("field", "value", "words"),
    [
        ("section", {"kind": "axial"}, "kind must be one of"),
        ("section", {"position_mm": 1e9}, "position_mm must lie in"),
        ("section", {"near_half": 1}, "near_half cannot be 1"),
        ("section", {"angle": 3}, "unknown field 'angle'"),
        ("section", [1, 2], "an object or null is wanted"),
        ("cut_line", {"depth_mm": 90}, "depth_mm must lie in"),
        ("cut_line", {"points": [[1, 2]]}, "cannot be read"),
        ("cut_line", {"blade": 1}, "unknown field 'blade'"),
    ],
)
def test_a_file_with_a_wrong_section_is_refused_in_one_line(field, value, words):
    with pytest.raises(WorkingFileError, match=words) as refusal:
        state_from_json({field: value})
    assert "\n" not in str(refusal.value)


def test_a_drag_of_the_plane_is_one_undo():
    session = Session()
    session.do(set_section(SectionPlane()))
    for position in (1.0, 2.0, 3.0):
        session.do(change_section("move", dragging=True, position_mm=position))
    session.close_gesture()
    session.do(change_section("move", dragging=True, position_mm=9.0))
    session.undo()
    assert session.state.section.position_mm == 3.0
    session.undo()
    assert session.state.section.position_mm == 0.0
    session.undo()
    assert session.state.section is None


def test_changing_a_plane_that_is_not_there_leaves_no_trace():
    session = Session()
    session.do(change_section("move", position_mm=5.0))
    session.do(change_cut("depth", depth_mm=5.0))
    assert session.undo_name is None


def test_the_first_click_of_a_line_says_which_layer_is_cut():
    session = Session()
    session.do(begin_cut("trapezius"))
    session.do(add_cut_point((0, 0, 0), "trapezius_ascending.left"))
    session.do(add_cut_point((0, 0, 9), "skin.left"))
    line = session.state.cut_line
    assert line.part_id == "trapezius_ascending.left" and len(line.points) == 2
    session.undo()
    assert len(session.state.cut_line.points) == 1
