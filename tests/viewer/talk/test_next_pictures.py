"""The next scene stands beside the notes before the hall has seen it, and costs no movement."""

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QImage

from tests.viewer.talk.test_presenting import TALK
from viewer.panels import next_pictures
from viewer.state.section_plane import SectionPlane
from viewer.state.view_state import ViewState
from viewer.talk.scenes import Talk, TalkScene

DESK = QRect(50, 50, 900, 600)


def begin(window, monkeypatch, talk=TALK):
    monkeypatch.setattr(next_pictures, "QUIET_MS", 20)
    made = window.start_presenting(talk, full=False)
    made._open_notes(DESK)
    return made


@pytest.fixture
def given(window, monkeypatch):
    made = begin(window, monkeypatch)
    yield made
    made.finish()


def pixels(picture):
    image = picture.toImage().convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.bytesPerLine())
    return rows[:, : 3 * image.width()].reshape(image.height(), image.width(), 3).astype(float)


def test_the_next_scene_is_seen_on_the_desk_before_the_hall_sees_it(qtbot, given):
    window = given.window
    before = window.state, window.scene_widget.scene.pose
    grabbed = window.scene_widget.scene.screenshot((200, 150))
    qtbot.waitUntil(lambda: TALK.scenes[1] in window.talk_pictures, timeout=20000)
    assert given.presenter.index == 0 and TALK.scenes[1] not in given._kept
    assert not given.notes.next_picture.pixmap().isNull()
    # The hall's own picture was never anything else.
    assert (window.state, window.scene_widget.scene.pose) == before
    assert np.array_equal(window.scene_widget.scene.screenshot((200, 150)), grabbed)


@pytest.mark.parametrize("number", [1, 2, 3])
def test_what_was_drawn_beforehand_is_what_the_hall_sees_then(qtbot, given, number):
    for _ in range(number - 1):
        given.next()
    scene = TALK.scenes[number]
    qtbot.waitUntil(lambda: scene in given.window.talk_pictures, timeout=20000)
    early = pixels(given.window.talk_pictures[scene])
    given.next()
    qtbot.waitUntil(lambda: scene in given._kept, timeout=20000)
    late = pixels(given.window.talk_pictures[scene])
    assert early.shape == late.shape
    assert np.abs(early - late).mean() < 6.0
    other = pixels(given.window.talk_pictures[TALK.scenes[number - 1]])
    assert np.abs(other - late).mean() > 2 * np.abs(early - late).mean()


def test_a_scene_with_a_section_is_drawn_beforehand_too(qtbot, window, monkeypatch):
    cut = ViewState(section=SectionPlane("transverse", 300.0), view="superior")
    talk = Talk("t", (TalkScene(ViewState(), "Whole"), TalkScene(cut, "Cut")))
    made = begin(window, monkeypatch, talk)
    qtbot.waitUntil(lambda: talk.scenes[1] in window.talk_pictures, timeout=20000)
    early = pixels(window.talk_pictures[talk.scenes[1]])
    made.next()
    qtbot.waitUntil(lambda: talk.scenes[1] in made._kept, timeout=20000)
    assert np.abs(early - pixels(window.talk_pictures[talk.scenes[1]])).mean() < 6.0
    made.finish()


def test_no_picture_is_worked_on_while_hands_are_at_work_or_the_picture_moves(qtbot, given):
    pictures, widget = given.pictures, given.window.scene_widget
    pieces = []
    monkey = pictures._piece
    pictures._piece = lambda: pieces.append(widget.flying or widget.working) or monkey()
    qtbot.keyClick(widget, Qt.Key.Key_Right)
    assert pictures._busy()
    qtbot.mousePress(widget, Qt.MouseButton.LeftButton, pos=QPoint(40, 40))
    for k in range(8):
        qtbot.mouseMove(widget, QPoint(40 + 6 * k, 40))
        qtbot.wait(30)
    assert pieces == []
    qtbot.mouseRelease(widget, Qt.MouseButton.LeftButton, pos=QPoint(100, 40))
    qtbot.waitUntil(lambda: TALK.scenes[2] in given.window.talk_pictures, timeout=20000)
    assert pieces and not any(pieces)


def test_without_notes_on_a_second_screen_nothing_is_drawn_beforehand(qtbot, window, monkeypatch):
    monkeypatch.setattr(next_pictures, "QUIET_MS", 5)
    made = window.start_presenting(TALK, full=False)
    qtbot.wait(300)
    assert made.pictures._side is None and not made.pictures._timer.isActive()
    made.finish()


def test_a_picture_that_fails_disturbs_nobody_and_is_not_tried_for_ever(
    qtbot, given, monkeypatch, caplog
):
    def broken(*_):
        raise RuntimeError("no graphics")

    monkeypatch.setattr(next_pictures.SidePicture, "draw", broken)
    given.pictures.want(TALK.scenes[2:])
    given.pictures._work = None
    given.window.talk_pictures.clear()
    qtbot.waitUntil(lambda: given.pictures._failed >= set(TALK.scenes[2:]), timeout=20000)
    assert given.presenter.index == 0 and given.notes.next_picture.pixmap().isNull()
