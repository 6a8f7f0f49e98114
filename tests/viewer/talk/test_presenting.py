"""Presenting for real: keys, blank, pen, spotlight, notes on a second screen, no dialog in the hall."""

from types import SimpleNamespace

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtWidgets import QApplication, QDockWidget, QMessageBox, QToolTip

from viewer.panels import presenting
from viewer.panels.notes_window import NotesWindow
from viewer.state import commands
from viewer.state.view_state import Sides, ViewState
from viewer.talk.room import Room
from viewer.talk.scenes import Talk, TalkScene

TALK = Talk(
    "t",
    (
        TalkScene(ViewState(), "Whole back", "Say hello.", "From behind"),
        TalkScene(
            ViewState(peeled=Sides(3, 3)), "Second sheet", "Mind the nerve.", "Three muscles"
        ),
        TalkScene(
            ViewState(peeled=Sides(5, 0), view="oblique_left", selection=("scapula.left",)),
            "Left side",
            "Compare.",
        ),
        TalkScene(ViewState(table="left", peeled=Sides(3, 3)), "At the table"),
    ),
)


@pytest.fixture
def given(qtbot, window):
    """Return a window that presents, not full screen."""
    window.do(commands.peel_to(1, "both", window.model))
    made = window.start_presenting(TALK, full=False)
    qtbot.wait(30)
    yield made
    made.finish()


def key(qtbot, presenting, *keys):
    for one in keys:
        qtbot.keyClick(presenting.window.scene_widget, one)
        qtbot.wait(10)


def shown(presenting):
    return set(presenting.window.scene_widget.scene.shown())


def test_only_the_picture_and_the_words_are_seen(given):
    window = given.window
    for furniture in (
        window.menuBar(), window.tools, window.rail, window.steps, window.side_panel,
        window.statusBar(), window.strip,
    ):  # fmt: skip
        assert not furniture.isVisible()
    assert window.stage.isVisible() and given.band.isVisible()
    assert given.band.title.text() == "Whole back"
    assert given.band.number.text() == "1 / 4"


@pytest.mark.parametrize("forward, back", [
    (Qt.Key.Key_Right, Qt.Key.Key_Left),
    (Qt.Key.Key_PageDown, Qt.Key.Key_PageUp),
])  # fmt: skip
def test_arrows_and_clicker_keys_go_on_and_back(qtbot, given, forward, back):
    key(qtbot, given, forward)
    assert given.presenter.index == 1
    assert "skin.left" not in shown(given)
    assert given.band.title.text() == "Second sheet"
    key(qtbot, given, back)
    assert given.presenter.index == 0
    assert "skin.left" in shown(given)


def test_home_end_and_numbers_go_to_scenes(qtbot, given):
    key(qtbot, given, Qt.Key.Key_End)
    assert given.presenter.index == 3
    key(qtbot, given, Qt.Key.Key_2)
    assert given.presenter.index == 1
    key(qtbot, given, Qt.Key.Key_Home)
    assert given.presenter.index == 0


def test_a_blank_screen_hides_picture_and_words_and_the_next_key_brings_them_back(qtbot, given):
    for blank in (Qt.Key.Key_B, Qt.Key.Key_Period):
        key(qtbot, given, blank)
        assert given.board.isVisible() and not given.band.isVisible()
        picture = given.board.grab().toImage()
        assert picture.pixelColor(5, 5).lightness() == 0
        assert given.board.size() == given.window.stage.size()
        key(qtbot, given, blank)
        assert not given.board.isVisible() and given.band.isVisible()
    key(qtbot, given, Qt.Key.Key_B, Qt.Key.Key_Right)
    assert not given.board.isVisible() and given.presenter.index == 1


def test_the_pen_draws_and_one_key_clears(qtbot, given):
    key(qtbot, given, Qt.Key.Key_D)
    board = given.board
    assert board.isVisible()
    before = board.grab().toImage()
    start = QPoint(100, 100)
    qtbot.mousePress(board, Qt.MouseButton.LeftButton, pos=start)
    for k in range(1, 6):
        qtbot.mouseMove(board, start + QPoint(20 * k, 0))
    qtbot.mouseRelease(board, Qt.MouseButton.LeftButton, pos=start + QPoint(100, 0))
    drawn = board.grab().toImage()
    assert drawn != before
    assert drawn.pixelColor(150, 100).name() == "#ffd400"
    key(qtbot, given, Qt.Key.Key_C)
    assert board.strokes == []
    assert board.grab().toImage() == before


def test_the_still_under_the_pen_is_the_picture(qtbot, given):
    live = given.window.scene_widget.scene.screenshot().astype(int)
    key(qtbot, given, Qt.Key.Key_D)
    image = given.board._picture.toImage().convertToFormat(image_format())
    still = (
        np.frombuffer(image.constBits(), np.uint8)
        .reshape(image.height(), image.bytesPerLine())[:, : 3 * image.width()]
        .reshape(image.height(), image.width(), 3)
    )
    assert np.abs(still.astype(int) - live).mean() < 2


def image_format():
    from PySide6.QtGui import QImage

    return QImage.Format.Format_RGB888


def test_the_spotlight_dims_all_but_the_place_that_is_pointed_at(qtbot, given):
    key(qtbot, given, Qt.Key.Key_S)
    board = given.board
    qtbot.mouseMove(board, QPoint(200, 200))
    given.board.set_spot(QPoint(200, 200).toPointF())
    picture = board.grab().toImage()
    far = board.width() - 30
    still = board._picture.toImage()
    assert picture.pixelColor(200, 200) == still.pixelColor(200, 200)
    assert picture.pixelColor(far, 20).lightness() < still.pixelColor(far, 20).lightness() * 0.6


def test_after_a_question_one_key_returns_to_the_scene(qtbot, given):
    key(qtbot, given, Qt.Key.Key_2)
    window = given.window
    pose, parts = window.scene_widget.scene.pose, shown(given)
    window.scene_widget.scene.orbit(20, 5)
    window.scene_widget.view_changed.emit()
    key(qtbot, given, Qt.Key.Key_BracketRight, Qt.Key.Key_BracketRight, Qt.Key.Key_K)
    assert given.presenter.strayed and shown(given) != parts
    key(qtbot, given, Qt.Key.Key_R)
    assert not given.presenter.strayed
    assert shown(given) == parts
    np.testing.assert_allclose(window.scene_widget.scene.pose.axes(), pose.axes(), atol=1e-9)


def test_a_picked_part_is_named_large(qtbot, given):
    key(qtbot, given, Qt.Key.Key_2)
    assert given.band.line.text() == "Three muscles"
    given.window.do(commands.select(["rib_7.right"]))
    assert given.band.line.text() == "Seventh rib, right"
    key(qtbot, given, Qt.Key.Key_R)
    assert given.band.line.text() == "Three muscles"


def test_ending_gives_window_state_and_undo_back(qtbot, window):
    window.do(commands.peel_to(2, "both", window.model))
    state, undo = window.state, window.session.undo_name
    enabled = {name: a.isEnabled() for name, a in window._actions.items()}
    made = window.start_presenting(TALK, full=False)
    key(qtbot, made, Qt.Key.Key_End, Qt.Key.Key_BracketRight, Qt.Key.Key_Escape)
    assert window.presenting is None
    assert window.state.with_(camera=None) == state.with_(camera=None)
    assert window.session.undo_name == undo
    assert {name: a.isEnabled() for name, a in window._actions.items()} == enabled
    assert window.menuBar().isVisible() and window.rail.isVisible()
    window.undo()
    assert window.state.peeled == Sides(0, 0)


def test_no_dialog_menu_or_tooltip_reaches_the_hall(qtbot, given):
    window = given.window
    seen = []

    def look():
        seen.extend(
            w for w in QApplication.topLevelWidgets()
            if w.isVisible() and w is not window and not isinstance(w, NotesWindow)
            and not w.testAttribute(Qt.WidgetAttribute.WA_DontShowOnScreen)
        )  # fmt: skip

    timer = QTimer(interval=1)
    timer.timeout.connect(look)
    timer.start()
    QMessageBox.warning(window, "Save", "The disk is full.")
    window.open_help()
    window.open_settings()
    qtbot.mouseClick(window.scene_widget, Qt.MouseButton.RightButton, pos=QPoint(300, 300))
    QApplication.postEvent(window.stage, help_event())
    qtbot.wait(60)
    timer.stop()
    assert seen == []
    assert not QToolTip.isVisible()
    assert "The disk is full." in given.presenter.warnings


def test_what_could_not_be_kept_waits_for_the_end_and_is_told_to_the_speaker(qtbot, given):
    window = given.window
    window.tell_fault("The talk could not be kept.")
    window.tell_fault("The talk could not be kept.")
    given.deeper()
    qtbot.wait(20)
    assert not window._faults_button.isVisible()
    assert not window.statusBar().isVisible() and not window.statusBar().whole.isVisible()
    assert given.presenter.warnings == ["The talk could not be kept."]
    given.finish()
    qtbot.wait(20)
    assert window._faults_button.isVisible() and "1" in window._faults_button.text()


def help_event():
    from PySide6.QtCore import QEvent
    from PySide6.QtGui import QHelpEvent

    return QHelpEvent(QEvent.Type.ToolTip, QPoint(5, 5), QPoint(5, 5))


def test_the_windows_own_keys_rest_while_presenting(qtbot, given):
    key(qtbot, given, Qt.Key.Key_N, Qt.Key.Key_F1, Qt.Key.Key_F9)
    assert given.window.presenting is given
    assert given.window.session.state.peeled == Sides(0, 0)


def test_travel_is_smooth_and_jumps_when_movement_is_unwanted(qtbot, window):
    from dataclasses import replace

    made = window.start_presenting(TALK, full=False)
    made.go(2)
    assert not window.scene_widget.flying
    window.settings = replace(window.settings, calm=False)
    made.go(0)
    assert window.scene_widget.flying
    qtbot.waitUntil(lambda: not window.scene_widget.flying, timeout=4000)
    assert not made.presenter.strayed
    made.finish()


def test_a_scene_at_the_table_shows_the_table_and_says_so(qtbot, given):
    key(qtbot, given, Qt.Key.Key_4)
    scene = given.window.scene_widget.scene
    assert scene.table == "left"
    assert scene.pose_lines[0].startswith("Pose: Prone")
    key(qtbot, given, Qt.Key.Key_1)
    assert scene.table == ""
    assert scene.pose_lines == ("Pose: Standing, as in anatomy",)


def test_a_talk_that_plays_goes_on_by_itself_pauses_and_ends(qtbot, window):
    talk = Talk("r", tuple(TalkScene(ViewState(), f"n{k}", seconds=0.15) for k in range(4)))
    made = window.start_presenting(talk, full=False, playing=True)
    qtbot.waitUntil(lambda: made.presenter.index >= 1, timeout=3000)
    key(qtbot, made, Qt.Key.Key_Space)
    stopped = made.presenter.index
    qtbot.wait(350)
    assert made.presenter.index == stopped and not made.presenter.playing
    key(qtbot, made, Qt.Key.Key_Plus)
    assert made.presenter.pace > 1
    key(qtbot, made, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: made.presenter.index == 3 and not made.presenter.playing, timeout=4000)
    made.finish()


def test_what_a_slow_machine_is_late_the_next_scenes_make_up(window, monkeypatch):
    clock = [100.0]
    monkeypatch.setattr(presenting, "time", SimpleNamespace(monotonic=lambda: clock[0]))
    talk = Talk("r", tuple(TalkScene(ViewState(), f"n{k}", seconds=2.0) for k in range(9)))
    made = window.start_presenting(talk, full=False, playing=True)
    waits = [made._play.interval()]
    for passed in (2.5, 1.5, 6.0, 1.0, 1.0, 1.0, 1.0):
        clock[0] += passed
        made._play_on()
        waits.append(made._play.interval())
    # Half a second late is made up at once, four seconds at half a scene each.
    assert waits == [2000, 1500, 2000, 1000, 1000, 1000, 1000, 2000]
    made.pause()
    clock[0] += 60.0
    made.toggle_play()
    assert made._play.interval() == 2000
    made.finish()


def test_letters_have_the_size_that_the_last_row_needs(qtbot, window):
    made = window.start_presenting(TALK, room=Room(12, 2))
    qtbot.wait(100)
    lines = window.screen().geometry().height()
    capital = made.band.title.fontMetrics().capHeight()
    wanted = 69.8 / 2000 * lines
    assert capital == pytest.approx(wanted, rel=0.06)
    labels = window.scene_widget.scene.font_px
    assert labels * 0.71 == pytest.approx(wanted, rel=0.1)
    made.finish()


def test_a_section_in_a_scene_brings_no_panel_into_the_hall(qtbot, window):
    window.set_section_on(True)
    cut = window.state
    assert cut.section is not None
    docks = [d for d in window.findChildren(QDockWidget) if d.isVisible()]
    made = window.start_presenting(
        Talk("t", (TalkScene(cut, "Cut"), TalkScene(ViewState(), "Whole"))), full=False
    )
    for deed in (made.next, made.back, made.next):
        deed()
        qtbot.wait(20)
        assert not any(w.isVisible() for w in made._loan.put_away)
    made.finish()
    assert window.state.section == cut.section
    assert [d for d in window.findChildren(QDockWidget) if d.isVisible()] == docks


def test_nothing_is_kept_of_what_was_presented(qtbot, window):
    from viewer.settings import last_session_path

    made = window.start_presenting(TALK, full=False)
    key(qtbot, made, Qt.Key.Key_End)
    window._keep_work()
    assert not last_session_path().exists()
    window.close()
    assert window.presenting is None


def test_the_guided_tour_of_an_unfinished_talk_says_what_to_do(window):
    window.present()
    assert "no scene yet" in window.statusBar().currentMessage()


def test_the_notes_show_notes_next_scene_clock_and_warnings(qtbot, window):
    made = window.start_presenting(TALK, full=False)
    made._open_notes(window.screen().availableGeometry())
    made.go(1)
    made.warn("Something for the speaker.")
    made._show_time()
    notes = made.notes
    assert notes.notes.toPlainText() == "Mind the nerve."
    assert notes.next_title.text().startswith("Left side")
    assert notes.where.text() == "Scene 2 of 4"
    assert "0:0" in notes.clock.text()
    assert notes.warnings.item(0).text() == "Something for the speaker."
    qtbot.keyClick(notes, Qt.Key.Key_PageDown)
    assert made.presenter.index == 2
    notes.buttons["back"].click()
    assert made.presenter.index == 1
    notes.close()
    assert window.presenting is made
    made.finish()


def test_flaps_of_scenes_to_come_do_not_disturb_the_one_that_is_on(window, monkeypatch):
    from types import SimpleNamespace

    moved = []
    window.folds.moved.connect(lambda: moved.append(1))
    ready = SimpleNamespace(ready=lambda *_: True)
    monkeypatch.setattr(type(window.folds), "_shells", ready)
    window.folds._on_worked_out(None)
    assert moved == [] and not window.folds.moving
