"""Presenting on two screens; run by ``test_two_screens`` on a display that has two."""

import subprocess

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QMessageBox

from tests.viewer.talk.test_presenting import TALK
from tests.viewer.talk.test_two_screens import HALL


def screen(name):
    return next(s.geometry() for s in QGuiApplication.screens() if s.name() == name)


@pytest.fixture
def given(qtbot, window):
    assert [s.name() for s in QGuiApplication.screens()] == ["desk", "hall"]
    made = window.start_presenting(TALK, place=screen("hall"))
    qtbot.waitUntil(lambda: screen("hall").contains(window.frameGeometry()), timeout=20000)
    yield made
    made.finish()


def test_the_talk_fills_the_hall_and_the_notes_stand_on_the_desk(given):
    assert given.window.geometry() == screen("hall")
    assert given.notes.isVisible()
    assert screen("desk").contains(given.notes.geometry())
    on_hall = [
        w
        for w in QApplication.topLevelWidgets()
        if w.isVisible() and w.geometry().intersects(screen("hall"))
    ]
    assert on_hall == [given.window]
    assert given.room.lines == screen("hall").height()


def test_a_clicker_turns_the_pages_from_either_screen(qtbot, given):
    qtbot.keyClick(given.notes, Qt.Key.Key_PageDown)
    qtbot.keyClick(given.window.scene_widget, Qt.Key.Key_PageDown)
    assert given.presenter.index == 2
    assert given.notes.title.text() == TALK.scenes[2].title
    assert given.notes.next_title.text().startswith(TALK.scenes[3].title)
    qtbot.keyClick(given.notes, Qt.Key.Key_1)
    assert given.presenter.index == 0 and given.band.title.text() == TALK.scenes[0].title
    # What comes next is seen once it was shown.
    qtbot.keyClick(given.notes, Qt.Key.Key_PageDown)
    qtbot.waitUntil(lambda: TALK.scenes[1] in given.window.talk_pictures, timeout=20000)
    qtbot.keyClick(given.notes, Qt.Key.Key_PageUp)
    qtbot.waitUntil(lambda: not given.notes.next_picture.pixmap().isNull(), timeout=20000)


def test_a_dialog_is_told_on_the_desk_and_never_seen_in_the_hall(qtbot, given):
    seen = []

    def look():
        seen.extend(
            w
            for w in QApplication.topLevelWidgets()
            if isinstance(w, QMessageBox)
            and w.isVisible()
            and not w.testAttribute(Qt.WidgetAttribute.WA_DontShowOnScreen)
        )

    QTimer.singleShot(0, look)
    QMessageBox.warning(given.window, "Peelback", "The disk is full.")
    assert not seen
    assert given.notes.warnings.item(0).text() == "The disk is full."
    # The pen draws in the hall, and the key on the desk clears.
    qtbot.keyClick(given.notes, Qt.Key.Key_D)
    board = given.board
    assert screen("hall").contains(board.mapToGlobal(board.rect().center()))
    qtbot.mousePress(board, Qt.MouseButton.LeftButton, pos=QPoint(200, 200))
    qtbot.mouseMove(board, QPoint(300, 260))
    qtbot.mouseRelease(board, Qt.MouseButton.LeftButton, pos=QPoint(300, 260))
    assert board.strokes
    qtbot.keyClick(given.notes, Qt.Key.Key_C)
    assert not board.strokes


def test_a_pulled_cable_hides_the_notes_and_a_plugged_one_brings_all_back(qtbot, given):
    hall = screen("hall")
    qtbot.keyClick(given.notes, Qt.Key.Key_PageDown)
    subprocess.run(["xrandr", "--delmonitor", "hall"], check=True)
    qtbot.waitUntil(lambda: given.window.geometry() == screen("desk"), timeout=20000)
    assert not given.notes.isVisible()
    assert given.presenter.index == 1 and "screen" in given.presenter.warnings[-1]
    subprocess.run(["xrandr", "--setmonitor", "hall", HALL, "none"], check=True)
    qtbot.waitUntil(lambda: given.window.geometry() == hall, timeout=20000)
    qtbot.waitUntil(given.notes.isVisible, timeout=20000)
    assert screen("desk").contains(given.notes.geometry())
    assert given.presenter.index == 1
