"""The speaker's own screen: notes, the next scene, a clock, and all that must not be projected."""

from __future__ import annotations

from PySide6.QtCore import QDateTime, QLocale, Qt, Signal
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QListWidget,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.style import Theme, font
from viewer.state.tongue import told
from viewer.talk.presenter import Presenter

BUTTONS = (
    ("back", "◀ Before", "Left"),
    ("next", "Next ▶", "Right"),
    ("return_to_scene", "Back to scene", "R"),
    ("blank", "Blank", "B"),
    ("pen", "Pen", "D"),
    ("clear_pen", "Clear", "C"),
    ("spotlight", "Spotlight", "S"),
    ("stop", "End", "Esc"),
)


def clock_words(seconds: float) -> str:
    """Return minutes and seconds."""
    whole = max(int(seconds), 0)
    return f"{whole // 60}:{whole % 60:02d}"


class NotesWindow(QWidget):
    """Stands on the other screen.

    Signals
    -------
    wanted : str
        Name of a presenter's deed.
    """

    wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__(None, Qt.WindowType.Window)
        self.setWindowTitle("Notes")
        self.setObjectName("ground")
        self.where = QLabel()
        self.clock = QLabel()
        self.clock.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.title = QLabel()
        self.line = QLabel()
        self.notes = QPlainTextEdit()
        self.notes.setReadOnly(True)
        self.next_head = QLabel("Next scene")
        self.next_title = QLabel()
        self.next_picture = QLabel()
        self.next_picture.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignHCenter)
        self.state = QLabel()
        self.warnings = QListWidget()
        self.warnings_head = QLabel("Kept from the hall")
        for widget, name in (
            (self.where, "Scene"),
            (self.clock, "Clock"),
            (self.title, "Title"),
            (self.line, "Line for the hall"),
            (self.notes, "Notes"),
            (self.next_title, "Next scene"),
            (self.next_picture, "Picture of the next scene"),
            (self.state, "State"),
            (self.warnings, "Warnings kept from the projected screen"),
        ):
            widget.setAccessibleName(name)
        for label in (self.title, self.line, self.next_title, self.state):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
        top = QHBoxLayout()
        top.addWidget(self.where)
        top.addWidget(self.clock, 1)
        left = QVBoxLayout()
        left.addWidget(self.title)
        left.addWidget(self.line)
        left.addWidget(self.notes, 1)
        right = QVBoxLayout()
        right.addWidget(self.next_head)
        right.addWidget(self.next_title)
        right.addWidget(self.next_picture, 1)
        right.addWidget(self.state)
        right.addWidget(self.warnings_head)
        right.addWidget(self.warnings)
        middle = QHBoxLayout()
        middle.addLayout(left, 3)
        middle.addLayout(right, 2)
        row = QHBoxLayout()
        self.buttons: dict[str, QPushButton] = {}
        for does, words, key in BUTTONS:
            button = QPushButton(words)
            button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            button.setAccessibleName(f"{words.strip('◀▶ ')} ({key})")
            button.clicked.connect(lambda _=False, d=does: self.wanted.emit(d))
            self.buttons[does] = button
            row.addWidget(button)
        layout = QVBoxLayout(self)
        layout.addLayout(top)
        layout.addLayout(middle, 1)
        layout.addLayout(row)
        self.resize(1100, 700)

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self.setStyleSheet(f"QWidget#ground {{ background: {theme.panel}; }}")
        for widget, factor, bold in (
            (self.where, 1.3, False),
            (self.clock, 1.5, True),
            (self.title, 1.8, True),
            (self.line, 1.3, False),
            (self.notes, 1.6, False),
            (self.next_head, 1.1, True),
            (self.next_title, 1.3, False),
            (self.state, 1.1, False),
            (self.warnings_head, 1.0, True),
            (self.warnings, 1.0, False),
        ):
            widget.setFont(font(scale, factor, bold=bold))
        for button in self.buttons.values():
            button.setFont(font(scale, 1.0))

    def show_presenter(self, presenter: Presenter, picture: QPixmap | None) -> None:
        """Show where the talk stands."""
        scene, after = presenter.scene, presenter.following
        self.where.setText(
            told("Scene {n} of {count}", n=presenter.index + 1, count=len(presenter.talk.scenes))
        )
        self.title.setText(scene.title)
        self.line.setText(scene.line)
        self.notes.setPlainText(scene.notes or told("No notes."))
        self.next_title.setText(
            f"{after.title}\n{after.line}".strip() if after else told("This is the last scene.")
        )
        if picture is None or after is None:
            self.next_picture.clear()
        else:
            ratio = self.devicePixelRatioF()
            width = max(self.width() * 2 // 5 - 30, 80)
            small = picture.scaledToWidth(
                round(width * ratio), Qt.TransformationMode.SmoothTransformation
            )
            small.setDevicePixelRatio(ratio)
            self.next_picture.setPixmap(small)
        words = []
        if presenter.strayed:
            words.append(told("Away from the scene: R goes back."))
        if presenter.blank:
            words.append(told("The screen is blank."))
        if presenter.pen:
            words.append(told("Pen: C clears, D puts it away."))
        if presenter.spotlight:
            words.append(told("Spotlight on."))
        if presenter.typed:
            words.append(told("Scene {n} …", n=presenter.typed))
        if presenter.playing:
            words.append(told("Playing, {time} to go.", time=clock_words(presenter.seconds_left())))
        self.state.setText(" ".join(words))
        self.show_warnings(presenter.warnings)

    def show_warnings(self, warnings: list[str]) -> None:
        """List what was kept from the hall, latest first."""
        self.warnings.clear()
        self.warnings.addItems(list(reversed(warnings)))
        self.warnings.setVisible(bool(warnings))
        self.warnings_head.setVisible(bool(warnings))

    def show_time(self, elapsed_s: float, here_s: float) -> None:
        """Show the time of day, since the beginning, and on this scene."""
        now = QLocale().toString(QDateTime.currentDateTime().time(), QLocale.FormatType.ShortFormat)
        here = told("here {time}", time=clock_words(here_s))
        self.clock.setText(f"{now}   {clock_words(elapsed_s)}   {here}")

    def closeEvent(self, event) -> None:
        # Closing the notes must not end the talk, and the window goes with it.
        event.ignore()
        self.hide()
