"""The strip that says what is hidden, so that hiding is never silent."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from viewer.panels.style import LIGHT, Theme, font
from viewer.state.tongue import told
from viewer.state.visibility import HiddenThing
from viewer.wording import shown

GAP_PX = 5
ALL = "Bring all back  (A)"
SHORT_ALL = "All  (A)"


class ChipRow(QWidget):
    """Buttons side by side; those without room stand in a list that a last button opens."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("ground")
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.chips: list[QToolButton] = []
        self.more = QToolButton(self)
        self.more.setAccessibleName("Hidden, further ones")
        self.more.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.menu = QMenu(self)
        self.more.setMenu(self.menu)

    def show_chips(self, chips: Sequence[QToolButton]) -> None:
        """Take these buttons in place of the former ones."""
        for chip in self.chips:
            chip.hide()
            chip.deleteLater()
        self.chips = list(chips)
        for chip in self.chips:
            chip.setParent(self)
        self.lay()

    def lay(self) -> None:
        """Show as many buttons as have room for all of their words."""
        self.menu.clear()
        sizes = [chip.sizeHint() for chip in self.chips]
        total = sum(size.width() + GAP_PX for size in sizes)
        count = len(sizes)
        if total > self.width():
            room = self.width() - self._more_words(count)
            while count and sum(s.width() + GAP_PX for s in sizes[:count]) > room:
                count -= 1
        at = 0
        for k, (chip, size) in enumerate(zip(self.chips, sizes, strict=True)):
            chip.setVisible(k < count)
            if k < count:
                chip.setGeometry(at, 0, size.width(), self.height())
                at += size.width() + GAP_PX
            else:
                self.menu.addAction(chip.text(), chip.click)
        rest = len(self.chips) - count
        self.more.setVisible(rest > 0)
        if rest:
            self._more_words(rest, count > 0)
            self.more.setGeometry(at, 0, self.more.sizeHint().width(), self.height())

    def _more_words(self, rest: int, some: bool = True) -> int:
        """Give the last button its words; returns the room it takes, px."""
        self.more.setText(f"+{rest} ▾" if some else f"{rest} ▾")
        words = f"{told('Hidden, further ones')}: {rest}"
        self.more.setAccessibleName(words)
        self.more.setToolTip(words)
        return self.more.sizeHint().width() + GAP_PX

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.lay()

    def sizeHint(self) -> QSize:
        return QSize(0, self.more.sizeHint().height())


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
        self._label = QLabel()
        self._label.setProperty("soft", True)
        self.chips = ChipRow()
        self._all = QToolButton()
        self._all.setText(ALL)
        self._all.setAccessibleName("Bring all back")
        self._all.clicked.connect(self.all_back_wanted)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(10, 3, 8, 3)
        layout.setSpacing(8)
        layout.addWidget(self._label)
        layout.addWidget(self.chips, 1)
        layout.addWidget(self._all)
        self.show_hidden(())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._make_room()

    def _make_room(self) -> None:
        """Give way to the chips: first the heading, then words of the button, as room is scarce."""
        least = 4 * self.fontMetrics().height()
        self._label.show()
        self._all.setText(shown(ALL))
        fixed = self._all.sizeHint().width() + 40
        if self._things and self.width() - fixed - self._label.sizeHint().width() < least:
            self._label.hide()
            if self.width() - fixed < least:
                self._all.setText(shown(SHORT_ALL))

    @property
    def things(self) -> tuple[HiddenThing, ...]:
        """What is shown as hidden."""
        return self._things

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        self.setFont(font(scale, 0.9))
        self.setFixedHeight(round(34 * scale))
        for widget in self.findChildren(QToolButton) + [self._label, self.chips.menu]:
            widget.setFont(font(scale, 0.9))
        self._make_room()
        self.chips.lay()

    def show_hidden(self, things: Sequence[HiddenThing]) -> None:
        """Show what is hidden now."""
        if tuple(things) == self._things and self._label.text():
            return
        self._things = tuple(things)
        self._label.setText(told("Hidden") if things else told("Nothing is hidden"))
        chips = []
        for thing in things:
            chip = QToolButton()
            chip.setFont(font(self._scale, 0.9))
            chip.setText(f"{thing.text}  ×")
            chip.setToolTip(told("Bring back: {what}", what=thing.detail or thing.text))
            chip.setAccessibleName(told("Bring back: {what}", what=thing.text))
            chip.setCursor(Qt.CursorShape.PointingHandCursor)
            chip.clicked.connect(lambda _=False, t=thing: self.restore_wanted.emit(t))
            chips.append(chip)
        self.chips.show_chips(chips)
        self._all.setVisible(bool(things))
        self._make_room()
        self.setAccessibleDescription(
            "; ".join(t.text for t in things) or told("Nothing is hidden")
        )
