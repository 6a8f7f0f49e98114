"""The strip that says what is hidden, so that hiding is never silent."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QToolButton, QWidget

from viewer.panels.style import LIGHT, Theme, font
from viewer.state.tongue import told
from viewer.state.visibility import HiddenThing


class HiddenStrip(QFrame):
    """One button for each hidden thing; pressing it brings the thing back.

    Signals
    -------
    restore_wanted : HiddenThing
    all_back_wanted
    """

    restore_wanted = Signal(object)
    all_back_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("strip")
        self.setAccessibleName("What is hidden")
        self._theme: Theme = LIGHT
        self._scale = 1.0
        self._things: tuple[HiddenThing, ...] = ()
        self._label = QLabel("Nothing is hidden")
        self._label.setProperty("soft", True)
        self._chips = QWidget()
        self._chips.setObjectName("ground")
        self._chips.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._row = QHBoxLayout(self._chips)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(5)
        self._all = QToolButton()
        self._all.setText("Bring all back  (A)")
        self._all.setAccessibleName("Bring all back")
        self._all.clicked.connect(self.all_back_wanted)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(10, 3, 8, 3)
        layout.setSpacing(8)
        layout.addWidget(self._label)
        layout.addWidget(self._chips, 1)
        layout.addWidget(self._all)
        self.show_hidden(())

    @property
    def things(self) -> tuple[HiddenThing, ...]:
        """What is shown as hidden."""
        return self._things

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        self.setFixedHeight(round(34 * scale))
        for widget in self.findChildren(QToolButton) + [self._label]:
            widget.setFont(font(scale, 0.9))

    def show_hidden(self, things: Sequence[HiddenThing]) -> None:
        """Show what is hidden now."""
        if tuple(things) == self._things and self._row.count():
            return
        self._things = tuple(things)
        while self._row.count():
            item = self._row.takeAt(0)
            if widget := item.widget():
                widget.hide()
                widget.deleteLater()
        self._label.setText(told("Hidden") if things else told("Nothing is hidden"))
        for thing in things:
            chip = QToolButton()
            chip.setFont(font(self._scale, 0.9))
            chip.setText(f"{thing.text}  ×")
            chip.setToolTip(told("Bring back: {what}", what=thing.detail or thing.text))
            chip.setAccessibleName(told("Bring back: {what}", what=thing.text))
            chip.setCursor(Qt.CursorShape.PointingHandCursor)
            chip.clicked.connect(lambda _=False, t=thing: self.restore_wanted.emit(t))
            self._row.addWidget(chip)
        self._row.addStretch(1)
        self._all.setVisible(bool(things))
        self.setAccessibleDescription(
            "; ".join(t.text for t in things) or told("Nothing is hidden")
        )
