"""A button whose words wrap: an answer can be a whole sentence."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QFont, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget


class ChoiceButton(QPushButton):
    """One answer to choose, with the number key that stands for it.

    Parameters
    ----------
    number : int
    words : str
    """

    def __init__(self, number: int, words: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = words
        self._number = QLabel(str(number))
        self._label = QLabel(words)
        self._mark = QLabel()
        self._label.setWordWrap(True)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 6, 8, 6)
        row.setSpacing(8)
        row.addWidget(self._number, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self._label, 1)
        row.addWidget(self._mark, 0, Qt.AlignmentFlag.AlignTop)
        for label in (self._number, self._label, self._mark):
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._number.setProperty("soft", True)
        self.setAccessibleName(f"{number}: {words}")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAutoDefault(False)

    def set_font(self, font: QFont) -> None:
        """Take a font, and the height that it asks for."""
        bold = QFont(font)
        bold.setBold(True)
        self._label.setFont(font)
        self._number.setFont(font)
        self._mark.setFont(bold)
        self._fit()

    def show_verdict(self, mark: str, words: str, colour: str) -> None:
        """Mark the button after the answer: a sign, a colour, and words that are spoken."""
        self._mark.setText(mark)
        for label in (self._label, self._mark):
            label.setStyleSheet(f"color: {colour}; font-weight: bold;")
        self.setStyleSheet(f"ChoiceButton {{ border: 2px solid {colour}; }}")
        self.setAccessibleDescription(words)
        self._fit()

    def sizeHint(self) -> QSize:
        return QSize(super().sizeHint().width(), self.minimumHeight())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self.layout().invalidate()
        tall = self.layout().heightForWidth(max(self.width(), 160))
        if tall > 0 and tall != self.minimumHeight():
            self.setFixedHeight(tall)
            self.updateGeometry()
        self.layout().activate()
