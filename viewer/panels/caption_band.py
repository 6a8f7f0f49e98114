"""The band under the projected picture: letters that the last row can read."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetricsF
from PySide6.QtWidgets import QApplication, QFrame, QGridLayout, QLabel

from viewer.panels.style import Theme


def cap_share() -> float:
    """Return the height of a capital over the letter size of the window's font."""
    probe = QFont(QApplication.font())
    probe.setPixelSize(200)
    return QFontMetricsF(probe).capHeight() / 200.0


class CaptionBand(QFrame):
    """Title and line of a scene, the number, and the part that is pointed at."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("band")
        self.title, self.line = QLabel(), QLabel()
        self.number, self.part = QLabel(), QLabel()
        self.notes = QLabel()
        for label, name in (
            (self.title, "Title of the scene"),
            (self.line, "Line of the scene"),
            (self.number, "Number of the scene"),
            (self.part, "Part pointed at"),
            (self.notes, "Notes of the scene"),
        ):
            label.setAccessibleName(name)
            label.setWordWrap(label not in (self.number,))
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        self.part.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.number.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        grid = QGridLayout(self)
        grid.addWidget(self.title, 0, 0)
        grid.addWidget(self.number, 0, 1)
        grid.addWidget(self.line, 1, 0)
        grid.addWidget(self.part, 1, 1)
        grid.addWidget(self.notes, 2, 0, 1, 2)
        grid.setColumnStretch(0, 1)
        self.grid = grid
        self.letter_px = 30

    def set_dress(self, theme: Theme, letter_px: int, notes_px: int) -> None:
        """Take colours and the letter size in pixels."""
        self.letter_px = letter_px
        for label, size, bold, colour in (
            (self.title, letter_px, True, theme.text),
            (self.line, letter_px, False, theme.text),
            (self.number, letter_px, False, theme.text),
            (self.part, letter_px, True, theme.accent),
            (self.notes, notes_px, False, theme.text),
        ):
            made = QFont(QApplication.font())
            made.setPixelSize(max(size, 8))
            made.setBold(bold)
            label.setFont(made)
            # The window's style sheet would otherwise set the size.
            label.setStyleSheet(
                f"color: {colour}; font-size: {max(size, 8)}px; background: transparent;"
            )
        self.setStyleSheet(
            f"QFrame#band {{ background: {theme.panel}; border-top: 2px solid {theme.line}; }}"
        )
        pad = max(letter_px // 3, 4)
        self.grid.setContentsMargins(pad * 2, pad // 2, pad * 2, pad // 2)
        self.grid.setVerticalSpacing(max(letter_px // 8, 1))
        self.grid.setHorizontalSpacing(pad * 2)

    def show_scene(self, title: str, line: str, number: str, notes: str = "") -> None:
        """Show the words of a scene."""
        self.title.setText(title)
        self.line.setText(line)
        self.number.setText(number)
        self.notes.setText(notes)
        self.notes.setVisible(bool(notes))

    def show_part(self, words: str) -> None:
        """Name the part that is pointed at or picked; "" names none."""
        # The longest name must not push the line of the scene out of the band.
        self.part.setMaximumWidth(max(self.width() // 2, 60))
        self.part.setText(words)
