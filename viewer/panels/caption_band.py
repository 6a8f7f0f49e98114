"""The band under the projected picture: letters that the last row can read."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QFont, QFontMetrics, QFontMetricsF
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QWidget,
)

from viewer.panels.style import Theme
from viewer.talk.scenes import TalkScene


def cap_share() -> float:
    """Return the height of a capital over the letter size of the window's font."""
    probe = QFont(QApplication.font())
    probe.setPixelSize(200)
    return QFontMetricsF(probe).capHeight() / 200.0


class CaptionBand(QFrame):
    """Title, number and line of a scene; a part that is pointed at stands in for the line.

    Signals
    -------
    wanted : str
        Name of a presenter's deed, from the buttons of a guided tour.
    """

    wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("band")
        self.title, self.number = QLabel(), QLabel()
        self.line, self.notes = QLabel(), QLabel()
        for label, name in (
            (self.title, "Title of the scene"),
            (self.number, "Number of the scene"),
            (self.line, "Line of the scene, or the part pointed at"),
            (self.notes, "Notes of the scene"),
        ):
            label.setAccessibleName(name)
            label.setWordWrap(label is not self.number)
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        self.number.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        self.title.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.line.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.notes.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        grid = QGridLayout(self)
        grid.addWidget(self.title, 0, 0)
        grid.addWidget(self.number, 0, 1)
        grid.addWidget(self.line, 1, 0, 1, 2)
        grid.addWidget(self.notes, 2, 0, 1, 2)
        self.buttons = QWidget()
        row = QHBoxLayout(self.buttons)
        row.setContentsMargins(0, 0, 0, 0)
        self._buttons: dict[str, QPushButton] = {}
        for does, words, spoken in (
            ("back", "← Before", "Scene before, left arrow"),
            ("next", "Next →", "Next scene, right arrow"),
            ("toggle_play", "Pause, play (Space)", "Pause or play, Space"),
            ("slower", "Slower (-)", "Slower, minus"),
            ("faster", "Faster (+)", "Faster, plus"),
            ("return_to_scene", "Back to the scene (R)", "Back to the scene, R"),
            ("stop", "End (Esc)", "End, Escape"),
        ):
            button = QPushButton(words)
            button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            button.setAccessibleName(spoken)
            button.clicked.connect(lambda _=False, d=does: self.wanted.emit(d))
            self._buttons[does] = button
            row.addWidget(button)
        row.addStretch(1)
        grid.addWidget(self.buttons, 3, 0, 1, 2)
        self.buttons.hide()
        grid.setColumnStretch(0, 1)
        self.grid = grid
        self._colours = ("#000000", "#000000")
        self._words = self._part = ""
        self.letter_px = 30

    def set_dress(self, theme: Theme, letter_px: int, notes_px: int) -> None:
        """Take colours and the letter size in pixels."""
        self.letter_px = letter_px
        self._colours = (theme.text, theme.accent)
        for label, size, bold in (
            (self.title, letter_px, True),
            (self.number, letter_px, False),
            (self.line, letter_px, False),
            (self.notes, notes_px, False),
        ):
            made = QFont(QApplication.font())
            made.setPixelSize(max(size, 8))
            made.setBold(bold)
            label.setFont(made)
            self._paint(label, theme.text)
        self.setStyleSheet(
            f"QFrame#band {{ background: {theme.panel}; border-top: 2px solid {theme.line}; }}"
        )
        pad = max(letter_px // 3, 4)
        self.grid.setContentsMargins(pad * 2, pad // 2, pad * 2, pad // 2)
        self.grid.setVerticalSpacing(max(letter_px // 10, 1))
        self.grid.setHorizontalSpacing(pad * 2)

    def _paint(self, label: QLabel, colour: str) -> None:
        # The window's own style sheet would otherwise set the size of the letters.
        font = label.font()
        weight = "bold" if font.bold() else "normal"
        label.setStyleSheet(
            f"color: {colour}; font-size: {font.pixelSize()}px; font-weight: {weight}; "
            "background: transparent;"
        )

    def hold_height(self, scenes: Iterable[TalkScene], width: int, *, notes: bool) -> None:
        """Take the height that the longest words need, so that the picture never jumps."""
        scenes = list(scenes)
        margins = self.grid.contentsMargins()
        room = max(width - margins.left() - margins.right(), 100)
        number = QFontMetrics(self.number.font()).horizontalAdvance("999 / 999")

        def tallest(label: QLabel, words: Iterable[str], wide: int) -> int:
            metrics = QFontMetrics(label.font())
            flags = int(Qt.TextFlag.TextWordWrap)
            box = QRect(0, 0, max(wide, 60), 100_000)
            return max(
                [metrics.boundingRect(box, flags, text or "x").height() for text in words],
                default=metrics.height(),
            )

        self.title.setFixedHeight(
            tallest(self.title, (s.title for s in scenes), room - number - 40)
        )
        self.line.setFixedHeight(tallest(self.line, (s.line for s in scenes), room))
        if notes:
            self.notes.setFixedHeight(tallest(self.notes, (s.notes for s in scenes), room))
        self.notes.setVisible(notes)

    def show_scene(self, title: str, line: str, number: str, notes: str = "") -> None:
        """Show the words of a scene."""
        self._words, self._part = line, ""
        self.title.setText(title)
        self.number.setText(number)
        self.notes.setText(notes)
        self._show_line()

    def show_buttons(self, names: Iterable[str]) -> None:
        """Show buttons for someone alone at the screen; none for a hall."""
        names = set(names)
        for does, button in self._buttons.items():
            button.setVisible(does in names)
        self.buttons.setVisible(bool(names))

    def show_part(self, words: str) -> None:
        """Name the part that is pointed at or picked, in place of the line; "" names none."""
        self._part = words
        self._show_line()

    def _show_line(self) -> None:
        self.line.setText(self._part or self._words)
        self._paint(self.line, self._colours[1 if self._part else 0])
