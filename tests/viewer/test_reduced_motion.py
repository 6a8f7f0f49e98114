"""Without movement: whatever is asked, the picture jumps."""

from __future__ import annotations

import pytest

from viewer.scene.widget import SceneWidget
from viewer.state import commands
from viewer.talk.scenes import Talk, TalkScene

MOVING = (
    "view_oblique_left",
    "view_superior",
    "return_view",
    "fly",
    "stand_left",
    "stand_upright",
    "into_view",
    "mistakes",
)


@pytest.fixture
def flights(window, monkeypatch):
    """Return the flights that were begun in a window that wants no movement."""
    begun = []
    monkeypatch.setattr(SceneWidget, "_start_flight", lambda widget, flight: begun.append(flight))
    window.scene_widget.scene.on_flight = begun.append
    window.scene_widget.scene.animate = not window.settings.calm
    return begun


def test_no_view_search_or_step_moves_the_picture(qtbot, window, flights):
    assert window.settings.calm
    window.do(commands.select(["rhomboid_major.left"]))
    for action in MOVING:
        window._actions[action].trigger()
        qtbot.wait(20)
    assert flights == []


def test_a_talk_and_the_rapid_review_jump_from_scene_to_scene(qtbot, window, flights):
    state = window.state
    scenes = (
        TalkScene(state, "one"),
        TalkScene(state.with_(view="superior", camera=None), "two"),
    )
    given = window.start_presenting(Talk("Two", scenes), full=False)
    given.next()
    qtbot.wait(30)
    given.finish()
    window.rapid_review("both")
    window.presenting.next()
    window.presenting.finish()
    assert flights == []


def test_flaps_lie_where_they_go_at_once(window):
    assert window.folds.calm


def test_with_movement_the_same_actions_do_fly(qtbot, window, flights):
    # The test above can fail: here the picture is allowed to move.
    window.scene_widget.scene.animate = True
    window._actions["view_superior"].trigger()
    assert flights
