"""Presenting: the window becomes the projected picture, and nothing else reaches the hall.

The presenter takes the window's own picture, so that peeling, picking, folds
and sections work as ever; the talk has a session of its own, so that neither
the user's undo nor the saved state is touched. While it runs, all keys are its
own, no tooltip, menu or dialog is shown, and what would have been a dialog is
kept for the notes.
"""

from __future__ import annotations

import logging
import time
from dataclasses import asdict
from typing import Any

import numpy as np
from PySide6.QtCore import QEvent, QObject, QPointF, QRect, Qt, QTimer, Signal
from PySide6.QtGui import QGuiApplication, QImage, QKeySequence, QPixmap
from PySide6.QtWidgets import QApplication, QDialog, QMenu, QMessageBox, QWidget

from viewer.panels.awake import Awake
from viewer.panels.board import Board, ring_cursor
from viewer.panels.caption_band import CaptionBand, cap_share
from viewer.panels.loan import WindowLoan
from viewer.panels.next_pictures import WIDTH_PX, NextPictures
from viewer.panels.notes_window import NotesWindow
from viewer.scene import overlay
from viewer.scene.camera import Flight
from viewer.state import commands
from viewer.state.commands import Command
from viewer.state.tongue import figure, told
from viewer.state.view_state import LOOKS, VIEWS, ViewState
from viewer.talk.presenter import PACE_STEP, PRESENTER_KEYS, Presenter
from viewer.talk.room import LEAST_ARCMIN, Room
from viewer.talk.scenes import Talk, TalkScene

LOG = logging.getLogger("peelback")

MOST_LABELS = 7
TRAVEL_S = 0.9
DIGIT_WAIT_MS = 1200
LEAST_STAY = 0.5
"""A scene stays for this share of its time, however late a slow machine is."""
POINTER_HIDES_MS = 3000
TICK_MS = 500
SCENES_AHEAD = 2
"""So many scenes to come are drawn beforehand."""
BAND_SHARE = 0.34
"""Most of the screen's height that the words may take."""

BAND_ROWS = 3.2
"""Rows that fit in the band, with the room between them."""


def letter_sizes(room: Room, capitals: float) -> tuple[float, float]:
    """Return the letter sizes (em, physical px) of the band and of the labels in a hall.

    Both are what 20 arc minutes ask for, held to what leaves the picture its room.

    Parameters
    ----------
    capitals : float
        Height of a capital over the letter size of the window's font.
    """
    wanted = room.letter_px(cap_share=capitals)
    band = min(max(wanted, 16.0), BAND_SHARE * room.lines / BAND_ROWS)
    labels = room.letter_px(cap_share=overlay.capital_share())
    return float(round(band)), float(round(min(max(labels, 14.0), room.lines / 16.0)))


_DEEDS = {
    key: row.does
    for row in PRESENTER_KEYS
    for key in (QKeySequence(k)[0].toCombined() if k else 0 for k in row.keys)
}


_DEEDS_OF_HANDS = frozenset(
    (
        QEvent.Type.KeyPress,
        QEvent.Type.MouseMove,
        QEvent.Type.MouseButtonPress,
        QEvent.Type.MouseButtonRelease,
        QEvent.Type.Wheel,
    )
)


def keep_picture(window: Any, scene: TalkScene) -> None:
    """Keep a small still of a scene that is on, for the notes to show what comes next."""
    still = QPixmap.fromImage(still_of(window, drawn=True))
    window.talk_pictures[scene] = still.scaledToWidth(
        WIDTH_PX, Qt.TransformationMode.SmoothTransformation
    )


def still_of(window: Any, *, drawn: bool = False) -> QImage:
    """Return the window's picture as it stands; ``drawn`` says that it was just drawn in full."""
    scene = window.scene_widget.scene
    if not drawn:
        scene.render(moving=False)
    picture = np.ascontiguousarray(scene.grab())
    height, width = picture.shape[:2]
    return QImage(picture.data, width, height, 3 * width, QImage.Format.Format_RGB888).copy()


class Presenting(QObject):
    """Runs a talk in a main window until ``finish``.

    Parameters
    ----------
    window : MainWindow
    talk : Talk
    start : int
    room : Room
        ``lines`` is taken from the screen.
    place : QRect or None
        Geometry of the projector's screen; None: the screen the window is on.
    full : bool
        Fill the screen (a guided tour stays in its window).
    notes_in_band : bool
        Show the notes under the picture, for someone who goes through it alone.
    playing : bool
        Scenes with seconds follow one another.

    Signals
    -------
    finished
    """

    finished = Signal()

    def __init__(
        self,
        window: Any,
        talk: Talk,
        start: int = 0,
        *,
        room: Room | None = None,
        place: QRect | None = None,
        full: bool = True,
        notes_in_band: bool = False,
        playing: bool = False,
    ) -> None:
        super().__init__(window)
        self.window = window
        self.presenter = Presenter(talk, start, playing=playing)
        self.room = room or Room()
        self.full, self.notes_in_band = full, notes_in_band
        self._over = False
        self._travelling = False
        self._kept: set[TalkScene] = set()
        self.pictures = NextPictures(window)
        self.pictures.drawn.connect(self._tell_notes)
        self._hold = False
        self._due, self._late_s = 0.0, 0.0
        self._began = self._arrived = time.monotonic()
        scene = window.scene_widget.scene
        self._loan = WindowLoan(window)
        self._before = {
            "font_scale": scene.font_scale,
            "most_labels": scene.most_labels,
            "context": window.scene_widget.cursor(),
            "geometry": window.saveGeometry(),
            "states": window.windowState(),
        }
        self._tick = QTimer(self, interval=TICK_MS)
        self._tick.timeout.connect(self._show_time)
        self._play = QTimer(self, singleShot=True)
        self._play.timeout.connect(self._play_on)
        self._digits = QTimer(self, singleShot=True, interval=DIGIT_WAIT_MS)
        self._digits.timeout.connect(self.enter_number)
        self._idle = QTimer(self, singleShot=True, interval=POINTER_HIDES_MS)
        self._idle.timeout.connect(self._hide_pointer)
        self._begin(place)

    # --- beginning and end ---------------------------------------------------------------------

    def _begin(self, place: QRect | None) -> None:
        window = self.window
        # Screens are looked up by their place each time: a screen object dies with its cable.
        self._place = QRect(place) if place is not None else window.screen().geometry()
        self._hall = QRect(self._place)
        self.band = CaptionBand()
        self.band.wanted.connect(self.do)
        stage_box = window.stage.parentWidget().layout()
        stage_box.insertWidget(stage_box.indexOf(window.stage) + 1, self.band)
        self.board = Board(window.stage)
        self.board.pointed.connect(self._name_at)
        self.board.clicked.connect(self._pick_at)
        window.scene_widget.setCursor(ring_cursor())
        self.board.setCursor(ring_cursor())
        self.notes: NotesWindow | None = None
        if self.full:
            self._fill_screen()
            self._place_notes()
        self._awake = Awake()
        app = QApplication.instance()
        app.installEventFilter(self)
        QGuiApplication.instance().screenRemoved.connect(self._screen_gone)
        QGuiApplication.instance().screenAdded.connect(self._screen_came)
        self._loan.begin(self._on_state)
        window.scene_widget.scene.most_labels = MOST_LABELS
        window.scene_widget.view_changed.connect(self._on_view)
        window.scene_widget.settled.connect(self._on_settled)
        window.scene_widget.hovered.connect(self._on_hovered)
        self.fit_letters()
        self._tick.start()
        window.scene_widget.setFocus()
        window.activateWindow()
        self._arrive(jump=True)

    def _open_notes(self, area: QRect) -> None:
        if self.notes is None:
            self.notes = NotesWindow()
            self.notes.set_dress(self.window.theme, self.window.scale)
            self.notes.wanted.connect(self.do)
        self.notes.setGeometry(
            area.x() + 20,
            area.y() + 40,
            min(1500, area.width() - 40),
            min(1000, area.height() - 80),
        )
        self.notes.show()
        self._tell_notes()
        self._want_pictures()

    def _fill_screen(self) -> None:
        """Fill the screen that the talk is on."""
        window = self.window
        for screen in QGuiApplication.screens():
            if screen.geometry() == self._place and window.windowHandle():
                window.windowHandle().setScreen(screen)
        # Some desktops leave the size to the program when asked for the whole screen.
        window.setGeometry(self._place)
        window.showFullScreen()
        window.setGeometry(self._place)

    def _place_notes(self) -> None:
        """Put the notes on a screen that is not the hall's; there may be none."""
        others = [
            s.availableGeometry()
            for s in QGuiApplication.screens()
            if not s.geometry().intersects(self._place)
        ]
        if others:
            self._open_notes(others[0])
        elif self.notes is not None:
            # One screen is left, and it is the hall's: the notes must not be on it.
            self.notes.hide()

    def _screen_gone(self, _screen: object) -> None:
        """A cable was pulled: the talk goes on, on whatever screen is left."""
        self.warn(told("A screen was taken away."))
        # The screen that goes may still stand in the list.
        QTimer.singleShot(0, self, self._follow_screens)

    def _screen_came(self, _screen: object) -> None:
        """A cable was plugged in: the talk goes back to the hall, the notes to the desk."""
        # The screen tells its place only once it is there.
        QTimer.singleShot(0, self, self._follow_screens)

    def _follow_screens(self) -> None:
        places = [s.geometry() for s in QGuiApplication.screens()]
        if self._over or not self.full or not places:
            return
        place = self._hall if self._hall in places else self._place
        place = place if place in places else places[0]
        if place != self._place:
            self._place = QRect(place)
            self._fill_screen()
            self.fit_letters()
        self._place_notes()

    def fit_letters(self) -> None:
        """Give band and labels the size that the last row needs, as far as there is room."""
        window, ratio = self.window, self.window.devicePixelRatioF()
        height = self._place.height() if self.full else window.height()
        if self.full:
            self.room = Room(
                self.room.distance_m, self.room.height_m, max(round(height * ratio), 200)
            )
            band_px, label_px = letter_sizes(self.room, cap_share())
            for px, share, words in (
                (band_px, cap_share(), told("The words are smaller than the last row needs.")),
                (
                    label_px,
                    overlay.capital_share(),
                    told("The labels are smaller than the last row needs."),
                ),
            ):
                if self.room.arcmin_of(px * share) < LEAST_ARCMIN:
                    self.warn(words)
        else:
            band_px, label_px = 21.0 * window.scale * ratio, 15.0 * window.scale * ratio
        self.letter_px = round(band_px / ratio)
        notes_px = round(14 * window.scale)
        self.band.set_dress(window.theme, self.letter_px, notes_px)
        width = self._place.width() if self.full else window.width()
        self.band.show_buttons(self._buttons())
        self.band.hold_height(self.presenter.talk.scenes, width, notes=self.notes_in_band)
        scene = window.scene_widget.scene
        scene.set_font_scale(min(max(label_px / ratio / overlay.BASE_FONT_PX, 1.0), 12.0))
        window.scene_widget.refresh()

    def _buttons(self) -> tuple[str, ...]:
        """Which buttons stand under the picture: none where a hall looks on."""
        if self.notes_in_band:
            return ("back", "next", "return_to_scene", "stop")
        if self._is_review() and self.notes is None:
            return ("back", "toggle_play", "next", "slower", "faster", "stop")
        return ()

    def finish(self) -> None:
        """Give the window back as it was; may be repeated."""
        if self._over:
            return
        self._over = True
        window, before = self.window, self._before
        for timer in (self._tick, self._play, self._digits, self._idle):
            timer.stop()
        self._awake.release()
        self.pictures.finish()
        QApplication.instance().removeEventFilter(self)
        QGuiApplication.instance().screenRemoved.disconnect(self._screen_gone)
        QGuiApplication.instance().screenAdded.disconnect(self._screen_came)
        widget = window.scene_widget
        widget.view_changed.disconnect(self._on_view)
        widget.settled.disconnect(self._on_settled)
        widget.hovered.disconnect(self._on_hovered)
        widget.setCursor(before["context"])
        widget.scene.most_labels = before["most_labels"]
        widget.scene.set_font_scale(before["font_scale"])
        self.board.hide()
        self.board.deleteLater()
        self.band.hide()
        window.stage.parentWidget().layout().removeWidget(self.band)
        self.band.deleteLater()
        if self.notes is not None:
            self.notes.hide()
            self.notes.deleteLater()
        if self.full:
            window.setWindowState(before["states"])
            window.restoreGeometry(before["geometry"])
        self._loan.give_back()
        self.finished.emit()

    # --- what is seen --------------------------------------------------------------------------

    def _arrive(self, *, jump: bool = False) -> None:
        """Bring the picture to the present scene."""
        window, scene = self.window, self.presenter.scene
        self._arrived = time.monotonic()
        self.board.clear()
        self.presenter.strayed = False
        self._travel_to(scene.state, jump=jump or window.settings.calm)
        self._show_words()
        self._cover()
        self._wait_for_next()

    def _travel_to(self, state: ViewState, *, jump: bool) -> None:
        window = self.window
        widget = window.scene_widget
        widget.end_flight()
        # The instructor's own pins and working side are not the scene's affair.
        self._hold = window._flying = True
        try:
            window.session.do(Command("scene", lambda _: state, moves_camera=True))
        finally:
            window._flying = self._hold = False
        camera = asdict(state.camera) | {"view": state.view} if state.camera else None
        target = widget.scene.pose_of(state.view, camera, state.table)
        start = widget.scene.pose
        if jump or start == target:
            widget.scene.pose = target
            window._tell_markers()
            widget.refresh()
        else:
            self._travelling = True
            widget._start_flight(Flight(start, target, TRAVEL_S))

    def _show_words(self) -> None:
        presenter = self.presenter
        scene, count = presenter.scene, len(presenter.talk.scenes)
        self.band.show_scene(
            scene.title,
            scene.line,
            f"{presenter.index + 1} / {count}",
            scene.notes if self.notes_in_band else "",
        )
        self._tell_notes()
        self._want_pictures()

    def _want_pictures(self) -> None:
        """Have the scenes to come drawn for the notes; nobody needs them without a second screen."""
        if self.notes is not None and self.notes.isVisible():
            at, scenes = self.presenter.index, self.presenter.talk.scenes
            self.pictures.want(scenes[at + 1 : at + 1 + SCENES_AHEAD])

    def _is_review(self) -> bool:
        return bool(self.presenter.scene.seconds) and not self.presenter.scene.notes

    def _tell_notes(self) -> None:
        if self.notes is not None:
            self.notes.show_presenter(
                self.presenter, self.window.talk_pictures.get(self.presenter.following)
            )

    def _show_time(self) -> None:
        if self.notes is not None:
            now = time.monotonic()
            self.notes.show_time(now - self._began, now - self._arrived)

    def _cover(self) -> None:
        """Show or take away what lies over the picture."""
        presenter, board = self.presenter, self.board
        board.blank = presenter.blank
        board.pen, board.spotlight = presenter.pen, presenter.spotlight
        board.setGeometry(self.window.stage.rect())
        if board.needs_picture and not self._travelling:
            self._give_picture()
        shown = board.wanted and (bool(board.blank) or not self._travelling)
        board.setVisible(shown)
        if shown:
            board.raise_()
            if presenter.spotlight:
                board.set_spot(QPointF(board.mapFromGlobal(self.window.cursor().pos())))
        # A blank screen must be blank: the words go too.
        self.band.setVisible(not presenter.blank)
        board.setGeometry(self.window.stage.rect())
        board.update()
        self._tell_notes()

    def _give_picture(self) -> None:
        self.board.set_picture(still_of(self.window))

    # --- hearing of changes --------------------------------------------------------------------

    def _on_state(self, before: ViewState, after: ViewState) -> None:
        if self._hold:
            return
        if before.with_(camera=None) != after.with_(camera=None):
            self._stray()
        chosen = after.selection
        if chosen != before.selection:
            self._name_part(chosen[-1] if chosen else "")
        if self.board.needs_picture:
            QTimer.singleShot(0, self, self._refresh_still)

    def _refresh_still(self) -> None:
        if not self._over and self.board.needs_picture and self.board.isVisible():
            self._give_picture()

    def _on_view(self) -> None:
        if self._travelling:
            if not self.window.scene_widget.flying:
                self._travelling = False
                self._cover()
            return
        self._stray()

    def _stray(self) -> None:
        if not self.presenter.strayed:
            self.presenter.strayed = True
            self.pause()
            self._tell_notes()

    def _on_settled(self) -> None:
        if self._travelling and not self.window.scene_widget.flying:
            self._travelling = False
            self._cover()
        presenter = self.presenter
        if self.notes and not presenter.strayed and not self._travelling:
            if presenter.scene not in self._kept:
                # What was drawn beforehand gives way to what the hall has seen.
                self._kept.add(presenter.scene)
                keep_picture(self.window, presenter.scene)

    def _on_hovered(self, hit: Any) -> None:
        if hit is not None:
            self._name_part(hit.part_id)
        elif self.presenter.strayed and self.window.state.selection:
            self._name_part(self.window.state.selection[-1])
        else:
            self.band.show_part("")

    def _name_at(self, place: QPointF) -> None:
        self._on_hovered(self.window.scene_widget.pick_at(place))

    def _pick_at(self, place: QPointF) -> None:
        hit = self.window.scene_widget.pick_at(place)
        if hit is not None:
            self.window.do(commands.select([hit.part_id]))

    def _name_part(self, part_id: str) -> None:
        self.band.show_part(self.window._titles.get(part_id, "") if part_id else "")

    def warn(self, words: str) -> None:
        """Keep something for the speaker that must not be projected."""
        LOG.info("while presenting: %s", words)
        if words not in self.presenter.warnings:
            self.presenter.warnings.append(words)
        if getattr(self, "notes", None) is not None:
            self.notes.show_warnings(self.presenter.warnings)

    # --- keys ----------------------------------------------------------------------------------

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kind = event.type()
        if kind in _DEEDS_OF_HANDS:
            self.pictures.give_way()
        if kind == QEvent.Type.ToolTip:
            return True
        if kind == QEvent.Type.Polish and isinstance(watched, (QDialog, QMenu)):
            self._keep_from_hall(watched)
            return False
        if kind == QEvent.Type.ContextMenu and isinstance(watched, QWidget):
            return True
        if kind in (QEvent.Type.KeyPress, QEvent.Type.ShortcutOverride) and self._is_ours(watched):
            if event.type() == QEvent.Type.ShortcutOverride:
                event.accept()
                return True
            self._press(event)
            return True
        if kind == QEvent.Type.MouseMove and watched in (self.board, self.window.scene_widget):
            self._show_pointer()
        if kind == QEvent.Type.MouseButtonRelease and watched is self.window.scene_widget:
            if event.button() == Qt.MouseButton.RightButton:
                return True
        if kind == QEvent.Type.Resize and watched is self.window.stage:
            self.board.setGeometry(self.window.stage.rect())
        return False

    def _is_ours(self, watched: QObject) -> bool:
        """True for widgets of the two windows (not for their native handles: each key once)."""
        if not isinstance(watched, QWidget):
            return False
        top = watched.window()
        return top is self.window or (self.notes is not None and top is self.notes)

    def _keep_from_hall(self, dialog: QWidget) -> None:
        dialog.setAttribute(Qt.WidgetAttribute.WA_DontShowOnScreen)
        if isinstance(dialog, QMessageBox):
            self.warn(" ".join(filter(None, (dialog.text(), dialog.informativeText()))))
        elif dialog.windowTitle():
            self.warn(
                told("“{title}” was not opened while presenting.", title=dialog.windowTitle())
            )
        if isinstance(dialog, QDialog):
            QTimer.singleShot(0, dialog, dialog.reject)
        else:
            QTimer.singleShot(0, dialog, dialog.close)

    def _press(self, event: Any) -> None:
        key = Qt.Key(event.key())
        text = event.text()
        strong = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        if event.modifiers() & strong:
            return
        if text and text in "0123456789":
            self.digit(text)
            return
        does = _DEEDS.get(int(key))
        if does is None and text:
            sequence = QKeySequence(text.upper())
            does = _DEEDS.get(sequence[0].toCombined()) if sequence.count() else None
        if does and not (event.isAutoRepeat() and does not in ("next", "back")):
            if key == Qt.Key.Key_Space and (self.presenter.playing or self._is_review()):
                self.toggle_play()
            else:
                self.do(does)

    def do(self, does: str) -> None:
        """Do what a key or a button of the notes stands for."""
        getattr(self, does)()

    def digit(self, digit: str) -> None:
        """Type a digit of a scene's number."""
        index = self.presenter.type_digit(digit)
        if index is not None:
            self._digits.stop()
            self.go(index)
        elif self.presenter.typed:
            self._digits.start()
        self._tell_notes()

    def enter_number(self) -> None:
        """Go to the number typed so far."""
        index = self.presenter.take_typed()
        if index is not None:
            self.go(index)

    def go(self, index: int) -> None:
        """Go to a scene; from a moved picture the same scene is gone back to."""
        covered = bool(self.presenter.blank)
        if self.presenter.go(index) or self.presenter.strayed or self.board.strokes:
            self._arrive()
        elif covered:
            self._cover()

    def next(self) -> None:
        """Next scene; at the end nothing happens."""
        if self.presenter.blank and self.presenter.following is None:
            self.presenter.blank = ""
            self._cover()
            return
        if self.presenter.next():
            self._arrive()

    def back(self) -> None:
        """Scene before."""
        if self.presenter.back():
            self._arrive()
        else:
            self._cover()

    def first(self) -> None:
        """First scene."""
        self.go(0)

    def last(self) -> None:
        """Last scene."""
        self.go(len(self.presenter.talk.scenes) - 1)

    def enter(self) -> None:
        """Go to the number typed, else back to the scene."""
        self._digits.stop()
        if self.presenter.typed:
            self.enter_number()
        else:
            self.return_to_scene()

    def return_to_scene(self) -> None:
        """Back to the scene as it was kept."""
        self.presenter.blank, self.presenter.pen = "", False
        self._arrive()

    def blank(self) -> None:
        """Black screen, and back."""
        self.presenter.blank = "" if self.presenter.blank else "black"
        self.pause()
        self._cover()

    def blank_white(self) -> None:
        """White screen, and back."""
        self.presenter.blank = "" if self.presenter.blank == "white" else "white"
        self.pause()
        self._cover()

    def pen(self) -> None:
        """Take the pen, or put it away (what was drawn stays until it is cleared)."""
        self.presenter.pen = not self.presenter.pen
        self.pause()
        self._cover()

    def clear_pen(self) -> None:
        """Clear what was drawn."""
        self.board.clear()
        self._cover()

    def spotlight(self) -> None:
        """Dim all but the place that is pointed at."""
        self.presenter.spotlight = not self.presenter.spotlight
        self._cover()

    def stop(self) -> None:
        """Take away what lies over the picture; else end."""
        if self.presenter.uncover():
            self._cover()
        elif self.board.strokes:
            self.clear_pen()
        else:
            self.finish()

    # --- answering the hall --------------------------------------------------------------------

    def _change(self, command: Command) -> None:
        self.window.do(command)

    def view_after(self) -> None:
        """Next fixed view."""
        self._turn(1)

    def view_before(self) -> None:
        """Fixed view before."""
        self._turn(-1)

    def _turn(self, by: int) -> None:
        names = list(VIEWS)
        at = names.index(self.window.state.view) if self.window.state.view in names else 0
        self._change(commands.set_view(names[(at + by) % len(names)]))
        self._stray()

    def deeper(self) -> None:
        """Take one stratum off."""
        self.window.peel_deeper()

    def shallower(self) -> None:
        """Lay one stratum back."""
        self.window.peel_shallower()

    def see_through(self) -> None:
        """Make what is picked see-through."""
        if self.window.state.selection:
            self._change(commands.toggle_see_through(self.window.state.selection))

    def hide(self) -> None:
        """Hide what is picked."""
        if self.window.state.selection:
            self._change(commands.hide(self.window.state.selection))

    def peek(self) -> None:
        """Look through what covers."""
        self._change(commands.set_peek(not self.window.state.peek))

    def labels(self) -> None:
        """Labels on or off."""
        self._change(commands.set_flag("labels", not self.window.state.labels, "labels"))

    def look(self) -> None:
        """Next look."""
        names = list(LOOKS)
        at = names.index(self.window.state.look)
        self._change(commands.set_look(names[(at + 1) % len(names)]))

    # --- playing -------------------------------------------------------------------------------

    def _wait_for_next(self) -> None:
        """Wait what the scene asks for, less what a slow machine lost before."""
        self._play.stop()
        seconds = self.presenter.seconds_here()
        if not self.presenter.playing or seconds <= 0:
            self._late_s = 0.0
            return
        wait = max(seconds - self._late_s, LEAST_STAY * seconds)
        self._due = time.monotonic() + wait
        self._late_s -= seconds - wait
        self._play.start(round(1000 * wait))

    def _play_on(self) -> None:
        if not self.presenter.playing:
            return
        if self.presenter.following is None:
            self.pause()
            return
        # Drawing the scenes must not make the whole longer: what one is late, the next makes up.
        began = time.monotonic()
        self._late_s += max(began - self._due, 0.0)
        self.next()
        self._late_s += time.monotonic() - began

    def pause(self) -> None:
        """Stop playing; the scene stays."""
        self.presenter.playing = False
        self._play.stop()
        self._tell_notes()

    def toggle_play(self) -> None:
        """Play on, from the beginning after the end; or pause."""
        presenter = self.presenter
        if presenter.playing:
            self.pause()
            return
        presenter.playing = True
        if presenter.strayed:
            self._arrive()
        elif presenter.following is None:
            self.go(0)
        else:
            self._wait_for_next()
        self._tell_notes()

    def faster(self) -> None:
        """Play faster."""
        self._set_pace(PACE_STEP)

    def slower(self) -> None:
        """Play slower."""
        self._set_pace(1.0 / PACE_STEP)

    def _set_pace(self, factor: float) -> None:
        pace = self.presenter.set_pace(factor)
        left = self.presenter.seconds_left()
        if self._is_review():
            self.band.show_part(
                told(
                    "pace {pace}, {seconds} s to go",
                    pace=figure(pace, ".2g"),
                    seconds=f"{left:.0f}",
                )
            )
        self._wait_for_next()
        self._tell_notes()

    # --- pointer -------------------------------------------------------------------------------

    def _show_pointer(self) -> None:
        if self.board.cursor().shape() == Qt.CursorShape.BlankCursor:
            for widget in (self.board, self.window.scene_widget):
                widget.setCursor(ring_cursor())
        self._idle.start()

    def _hide_pointer(self) -> None:
        if not self.presenter.pen:
            for widget in (self.board, self.window.scene_widget):
                widget.setCursor(Qt.CursorShape.BlankCursor)
