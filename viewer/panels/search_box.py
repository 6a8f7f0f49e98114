"""The search field: any name, any spelling; Enter goes there."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QModelIndex, Qt, Signal
from PySide6.QtGui import QFocusEvent, QResizeEvent, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QCompleter, QLineEdit, QToolButton, QWidget

from viewer.state.search import Found, Named, also_called, find
from viewer.wording import shown

LONG = "Find a part: English, Latin, synonym…  (/)"
SHORT = "Find a part  (/)"


class SearchBox(QLineEdit):
    """A line that finds parts.

    Signals
    -------
    found : Named
        Chosen from the list, or the best find on Enter.
    nothing_found : str
    """

    found = Signal(object)
    nothing_found = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setPlaceholderText(LONG)
        self.setClearButtonEnabled(True)
        for button in self.findChildren(QToolButton):
            button.setAccessibleName("Clear the search")
        self.setAccessibleName("Find a part")
        self._index: Sequence[Named] = ()
        self._finds: list[Found] = []
        self._has_gone = False
        self._model = QStandardItemModel(self)
        completer = QCompleter(self._model, self)
        completer.setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setMaxVisibleItems(12)
        completer.popup().setAccessibleName("Found parts")
        completer.activated[QModelIndex].connect(self._take_row)
        self.setCompleter(completer)
        self.textEdited.connect(self._look)
        self.returnPressed.connect(self._take_best)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.invite()

    def invite(self) -> None:
        """Say in the empty line what may be typed, as far as there is room."""
        room = self.width() - self.fontMetrics().height()
        for words in (shown(LONG), shown(SHORT)):
            if self.fontMetrics().horizontalAdvance(words) <= room:
                break
        if words != self.placeholderText():
            self.setPlaceholderText(words)

    def set_index(self, index: Sequence[Named]) -> None:
        """Take what can be found."""
        self._index = index

    @property
    def finds(self) -> list[Found]:
        """The present finds, best first."""
        return self._finds

    def _look(self, text: str) -> None:
        self._finds = find(text, self._index)
        self._model.clear()
        for found in self._finds:
            by = also_called(found.named, found.by)
            words = f"{found.named.title}  –  {by}" if by else found.named.title
            item = QStandardItem(words)
            item.setEditable(False)
            self._model.appendRow(item)

    def _take_row(self, index: QModelIndex) -> None:
        if 0 <= index.row() < len(self._finds):
            self._take(self._finds[index.row()].named)

    def _take_best(self) -> None:
        if self.completer().popup().isVisible() and (
            self.completer().popup().currentIndex().isValid()
        ):
            return
        self._look(self.text())
        if self._finds:
            self._take(self._finds[0].named)
        elif self.text().strip():
            self.nothing_found.emit(self.text().strip())

    def _take(self, named: Named) -> None:
        self.completer().popup().hide()
        self._has_gone = True
        self.found.emit(named)
        self.selectAll()

    def begin(self) -> None:
        """Take the keys, with what was typed before picked to be typed over."""
        # Not left to `focusInEvent`, which does not come while another window is in front.
        self._has_gone = False
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.selectAll()

    def focusInEvent(self, event: QFocusEvent) -> None:
        self._has_gone = False
        super().focusInEvent(event)

    def event(self, event: QEvent) -> bool:
        # A key pressed while the window was busy going to a find still comes through the list,
        # which has closed: it is meant for the window.
        if event.type() == QEvent.Type.ShortcutOverride and self._has_gone and not self.hasFocus():
            event.ignore()
            return False
        # Letters typed here are text, not the window's keys.
        if event.type() == QEvent.Type.ShortcutOverride and not (
            event.modifiers() & Qt.KeyboardModifier.ControlModifier
        ):
            event.accept()
            return True
        return super().event(event)
