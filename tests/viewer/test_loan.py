"""Whoever takes the window, a talk or a test, keeps and gives back the same things."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QDockWidget

from meshes.questions.cover import layers_of
from viewer.state import commands
from viewer.state.view_state import Sides, ViewState
from viewer.study.tag_test import TestChoice
from viewer.talk.scenes import Talk, TalkScene

TALK = Talk(
    "t",
    (
        TalkScene(ViewState(peeled=Sides(1, 1)), "From behind", "Say hello."),
        TalkScene(ViewState(table="left", peeled=Sides(3, 3)), "At the table"),
    ),
)


def present(window):
    made = window.start_presenting(TALK, full=False)
    made.next()
    made.deeper()
    return made


def present_full(window):
    made = window.start_presenting(TALK)
    made.last()
    return made


def tour(window):
    made = window.start_presenting(TALK, full=False, notes_in_band=True)
    made.view_after()
    return made


def test_tags(window):
    made = window.begin_tag_test(TestChoice(window.learner, kinds=("name",), number=2), 3)
    made.give_up()
    return made


test_tags.__test__ = False


def lab(window):
    made = window.begin_lab("left")
    made.go_on()
    return made


TAKERS = (present, present_full, tour, test_tags, lab)


@pytest.fixture
def desk(qtbot, window):
    """Return a window in the midst of work: peeled, picked, turned, a section's dock open."""
    window._layers = layers_of(window.model)
    qtbot.waitUntil(lambda: window._probe is not None, timeout=20000)
    window.do(commands.peel_to(2, "left", window.model))
    window.do(commands.select(["rhomboid_major.left"]))
    window.set_section_on(True)
    window._last_place = (30.0, 60.0, 200.0)
    window.scene_widget.scene.orbit(12, 5)
    window._on_view_changed()
    qtbot.wait(20)
    return window


def kept(window):
    return {
        "state": window.state,
        "undo": window.session.undo_name,
        "pose": window.scene_widget.scene.pose,
        "enabled": {name: a.isEnabled() for name, a in window._actions.items()},
        "docks": {type(d).__name__: d.isVisible() for d in window.findChildren(QDockWidget)},
        "round": [
            w.isVisible()
            for w in (
                window.menuBar(), window.tools, window.rail, window.steps, window.side_panel,
                window.statusBar(),
            )
        ],
        "place": window._last_place,
        "hovered": window._hovered,
        "labels": window.scene_widget.scene.most_labels,
        "letters": window.scene_widget.scene.font_scale,
        "in hall": window.in_hall,
        "lent": window.lent,
    }  # fmt: skip


@pytest.mark.parametrize("take", TAKERS)
def test_all_is_given_back_to_the_last_bit(qtbot, desk, take):
    before = kept(desk)
    assert before["docks"]["SectionDock"] and not desk.side_panel.isVisible()
    taken = take(desk)
    qtbot.wait(20)
    assert desk.lent and desk.in_hall and desk.state != before["state"]
    taken.finish()
    qtbot.wait(20)
    assert kept(desk) == before
    desk.undo()
    assert desk.state != before["state"]


@pytest.mark.parametrize("take", TAKERS)
def test_measuring_is_put_away_and_nothing_of_the_window_comes_back_meanwhile(qtbot, desk, take):
    desk.set_measuring(True)
    taken = take(desk)
    assert not desk._measuring and not desk._actions["measure"].isChecked()
    # A state that would switch on undo, the dock of the section and the like.
    desk.session.do(
        commands.Command("all", lambda s: s.with_(selection=("scapula.left",)), recorded=True)
    )
    qtbot.wait(20)
    for name in ("undo", "hide", "review_both", "present", "redo"):
        assert not desk._actions[name].isEnabled(), name
    for part in (desk.tools, desk.rail, desk.steps, desk.side_panel, desk.section_dock):
        assert not part.isVisible()
    taken.finish()


@pytest.mark.parametrize("take", TAKERS)
@pytest.mark.parametrize("other", TAKERS)
def test_only_one_has_the_window(desk, take, other):
    taken = take(desk)
    state = desk.state
    if other is test_tags:
        assert desk.begin_tag_test(TestChoice(desk.learner, kinds=("name",), number=2)) is None
    elif other is lab:
        assert desk.begin_lab("left") is None
    else:
        assert desk.start_presenting(TALK, full=False) is None
    assert desk.state == state
    taken.finish()
    assert not desk.lent


@pytest.mark.parametrize("take", TAKERS)
def test_closing_the_window_keeps_the_work_and_not_what_was_shown(desk, take):
    from viewer.settings import last_session_path
    from viewer.state.working_file import open_working_file

    before = desk.state
    taken = take(desk)
    desk._keep = True
    desk.close()
    assert not desk.lent and taken._over
    back = open_working_file(last_session_path()).state
    assert back.peeled == before.peeled and back.section == before.section
