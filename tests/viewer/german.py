"""Finds the English words that are left in a German window."""

from __future__ import annotations

import re
from collections.abc import Iterator

from PySide6.QtCore import QAbstractItemModel, QAbstractListModel, QModelIndex, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractSpinBox,
    QLineEdit,
    QPlainTextEdit,
    QTextEdit,
    QWidget,
)

from viewer.translations.texts import FOLDER, translations
from viewer.wording import texts_of

LITTLE = re.compile(
    r"\b(the|and|of|is|are|on|with|both|sides|side|left|right|this|that|to|it|its|from|no|not"
    r"|hidden|peeled|picked|what|which|all|none|part|parts|step|steps|answer|mean|deep)\b",
    re.I,
)
"""Words that stand in most English sentences and in no German one."""
TOP = QModelIndex()
ROLES = (
    Qt.ItemDataRole.DisplayRole,
    Qt.ItemDataRole.ToolTipRole,
    Qt.ItemDataRole.AccessibleTextRole,
)


def seen_texts(root: QWidget) -> Iterator[tuple[str, str]]:
    """Yield (where, text) of all that a window or sheet shows, tells or lets be spoken."""
    for owner, what, get, _ in texts_of(root):
        yield f"{type(owner).__name__} {what}", get()
    for action in root.findChildren(QAction):
        yield "QAction tip", action.toolTip()
    for widget in [root, *root.findChildren(QWidget)]:
        name = type(widget).__name__
        yield f"{name} described", widget.accessibleDescription()
        yield f"{name} window", widget.windowTitle()
        if isinstance(widget, QAbstractSpinBox):
            yield f"{name} spin", widget.text()
        elif isinstance(widget, (QTextEdit, QPlainTextEdit)):
            yield f"{name} document", widget.toPlainText()
        elif isinstance(widget, QLineEdit) and widget.isReadOnly():
            yield f"{name} line", widget.text()
        elif isinstance(widget, QAbstractItemView) and widget.model() is not None:
            yield from ((f"{name} item", text) for text in _items(widget.model()))


def _items(model: QAbstractItemModel, parent: QModelIndex = TOP) -> Iterator[str]:
    columns = 1 if isinstance(model, QAbstractListModel) else model.columnCount(parent)
    for row in range(model.rowCount(parent)):
        for column in range(columns):
            item = model.index(row, column, parent)
            texts = (model.data(item, role) for role in ROLES)
            yield from (text for text in texts if isinstance(text, str))
        if columns > 1 or not isinstance(model, QAbstractListModel):
            yield from _items(model, model.index(row, 0, parent))


class English:
    """Knows the English texts of the program and tells which of them stand in a text."""

    def __init__(self) -> None:
        table = translations(FOLDER / "peelback_de.ts")
        german = f" {' '.join(_words(' '.join(table.values())))} "
        self._starting: dict[str, list[list[str]]] = {}
        self._known: dict[str, str] = {}
        for text, said in table.items():
            words = _words(text)
            if said == text or "{" in text or len(text) < 4 or not words:
                continue
            if f" {' '.join(words)} " not in german:
                self._starting.setdefault(words[0], []).append(words)

    def left_in(self, text: str) -> str:
        """Return what of a text is English, "" for none; what is quoted is passed over."""
        if text not in self._known:
            self._known[text] = self._found(
                re.sub(r"<[^>]*>|„[^“]*“", " ", text).split("Quellen")[0]
            )
        return self._known[text]

    def _found(self, text: str) -> str:
        words = _words(text)
        for k, word in enumerate(words):
            for wanted in self._starting.get(word, ()):
                if words[k : k + len(wanted)] == wanted:
                    return " ".join(wanted)
        found = LITTLE.search(text)
        return found[0] if found else ""


def _words(text: str) -> list[str]:
    return re.findall(r"[\w'’]+", text.replace("&", "").casefold())
