"""Finds texts of a window that are cut: they need more room than their widget has.

A text that is shortened on purpose (ends in "…") counts as whole when all of it stands in the
tooltip or is spoken.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QTextDocument
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QAbstractSpinBox,
    QCheckBox,
    QComboBox,
    QDockWidget,
    QGroupBox,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QProgressBar,
    QPushButton,
    QRadioButton,
    QStyle,
    QStyleOptionButton,
    QStyleOptionComboBox,
    QStyleOptionSpinBox,
    QTextEdit,
    QToolButton,
    QWidget,
)

from viewer.panels.status_line import ElidedLabel, StatusLine

SLACK_PX = 3


def cut_texts(root: QWidget) -> list[str]:
    """Return one line for every text under a window that is cut."""
    found = []
    for widget in [root, *root.findChildren(QWidget)]:
        if not widget.isVisible() or (widget is not root and widget.window() is not root.window()):
            continue
        for text, needed, room in _texts(widget):
            short = needed.width() > room.width() + SLACK_PX
            low = needed.height() > room.height() + SLACK_PX
            if (short or low) and not _told_elsewhere(widget, text):
                found.append(
                    f"{_path(widget)} “{_plain(text)[:60]}” needs {needed.width()}×{needed.height()}, "
                    f"has {room.width()}×{room.height()}"
                )
        if _shows_text(widget):
            hidden = _hidden_part(widget)
            if hidden:
                found.append(f"{_path(widget)} “{_plain(_words(widget))[:60]}” {hidden}")
    return found


def _plain(text: str) -> str:
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", text)).strip()


def _path(widget: QWidget) -> str:
    names = []
    at: QWidget | None = widget
    while at is not None:
        names.append(at.objectName() or type(at).__name__)
        at = at.parentWidget()
    return "/".join(reversed(names[:4]))


def _words(widget: QWidget) -> str:
    for get in ("text", "title", "currentText"):
        if hasattr(widget, get):
            return str(getattr(widget, get)())
    return type(widget).__name__


def _shows_text(widget: QWidget) -> bool:
    return isinstance(
        widget, (QLabel, QAbstractButton, QComboBox, QLineEdit, QAbstractSpinBox, QProgressBar)
    ) and not (isinstance(widget, QLabel) and not widget.text())


def _told_elsewhere(widget: QWidget, text: str) -> bool:
    """True when a text that is shortened with "…" can be read whole beside it or in the tooltip."""
    if isinstance(widget, ElidedLabel):
        return widget.toolTip() == text and widget.elided.endswith("…")
    if isinstance(widget, QComboBox):
        # A box writes as much of its choice as there is room for.
        return text in widget.toolTip()
    if isinstance(widget, StatusLine):
        return widget.whole.isVisible() and widget.whole.text() == text
    return False


def _texts(widget: QWidget) -> Iterator[tuple[str, QSize, QRect]]:
    """Yield (text, room it needs, room it has) of what a widget itself writes."""
    style, metrics = widget.style(), widget.fontMetrics()
    if isinstance(widget, QLabel):
        if widget.text():
            yield widget.text(), _label_needs(widget), widget.contentsRect()
    elif isinstance(widget, (QCheckBox, QRadioButton)):
        option = QStyleOptionButton()
        widget.initStyleOption(option)
        element = (
            QStyle.SubElement.SE_CheckBoxContents
            if isinstance(widget, QCheckBox)
            else QStyle.SubElement.SE_RadioButtonContents
        )
        yield (
            widget.text(),
            metrics.size(Qt.TextFlag.TextShowMnemonic, widget.text()),
            style.subElementRect(element, option, widget),
        )
    elif isinstance(widget, (QPushButton, QToolButton)):
        words = widget.text()
        icon_only = isinstance(widget, QToolButton) and (
            widget.toolButtonStyle() == Qt.ToolButtonStyle.ToolButtonIconOnly
            or widget.arrowType() != Qt.ArrowType.NoArrow
        )
        if words and not icon_only and type(widget).paintEvent in _PLAIN_PAINT:
            needed = metrics.size(Qt.TextFlag.TextShowMnemonic, words)
            icon = 0
            if not widget.icon().isNull() and not (
                isinstance(widget, QToolButton)
                and widget.toolButtonStyle() == Qt.ToolButtonStyle.ToolButtonTextOnly
            ):
                icon = widget.iconSize().width() + 4
            yield words, needed, widget.contentsRect().adjusted(2 + icon, 1, -2, -1)
    elif isinstance(widget, (QComboBox, QAbstractSpinBox)):
        kind, option, field = (
            (_CONTROL.CC_ComboBox, QStyleOptionComboBox(), _FIELD.SC_ComboBoxEditField)
            if isinstance(widget, QComboBox)
            else (_CONTROL.CC_SpinBox, QStyleOptionSpinBox(), _FIELD.SC_SpinBoxEditField)
        )
        widget.initStyleOption(option)
        words = _words(widget)
        yield words, metrics.size(0, words), style.subControlRect(kind, option, field, widget)
    elif isinstance(widget, QLineEdit) and not isinstance(widget.parent(), QAbstractSpinBox):
        words = widget.text() or widget.placeholderText()
        if widget.isReadOnly() or not widget.text():
            room = widget.contentsRect().adjusted(4, 0, -4, 0)
            if widget.isClearButtonEnabled() and widget.text():
                room.setRight(room.right() - room.height())
            yield words, metrics.size(0, words), room
    elif isinstance(widget, (QTextEdit, QPlainTextEdit)):
        if not widget.toPlainText() and widget.placeholderText():
            box = metrics.boundingRect(
                QRect(0, 0, widget.viewport().width() - 8, 10_000),
                int(Qt.TextFlag.TextWordWrap),
                widget.placeholderText(),
            )
            yield widget.placeholderText(), box.size(), widget.viewport().rect()
    elif isinstance(widget, QGroupBox):
        if widget.title():
            yield widget.title(), metrics.size(0, widget.title()), widget.contentsRect()
    elif isinstance(widget, QProgressBar):
        if widget.isTextVisible():
            yield widget.text(), metrics.size(0, widget.text()), widget.contentsRect()
    elif isinstance(widget, StatusLine):
        words = widget.currentMessage()
        if words:
            yield words, metrics.size(0, words), widget.message_room()
    elif isinstance(widget, QHeaderView):
        yield from _heads(widget)
    elif isinstance(widget, QAbstractItemView):
        yield from _items(widget)
    elif isinstance(widget, QDockWidget) and widget.windowTitle():
        if widget.titleBarWidget() is None:
            buttons = [
                b.width() for b in widget.findChildren(QAbstractButton) if b.parent() is widget
            ]
            room = widget.rect().adjusted(4, 0, -4 - sum(buttons), 0)
            yield widget.windowTitle(), metrics.size(0, widget.windowTitle()), room


_CONTROL, _FIELD = QStyle.ComplexControl, QStyle.SubControl
_PLAIN_PAINT = (QPushButton.paintEvent, QToolButton.paintEvent)


def _label_needs(label: QLabel) -> QSize:
    room = label.contentsRect()
    inset = 2 * label.margin() + max(label.indent(), 0)
    rich = label.textFormat() == Qt.TextFormat.RichText or (
        label.textFormat() == Qt.TextFormat.AutoText and bool(re.search(r"<[^>]+>", label.text()))
    )
    if rich:
        page = QTextDocument()
        page.setDefaultFont(label.font())
        page.setDocumentMargin(0)
        page.setHtml(label.text())
        page.setTextWidth(room.width() - inset if label.wordWrap() else -1)
        return QSize(round(page.idealWidth()) + inset, round(page.size().height()) + inset)
    flags = int(Qt.TextFlag.TextShowMnemonic) if label.buddy() else 0
    if label.wordWrap():
        flags |= int(Qt.TextFlag.TextWordWrap)
    box = label.fontMetrics().boundingRect(
        QRect(0, 0, room.width() - inset if label.wordWrap() else 100_000, 100_000),
        flags,
        label.text(),
    )
    return QSize(box.width() + inset, box.height() + inset)


def _heads(header: QHeaderView) -> Iterator[tuple[str, QSize, QRect]]:
    model = header.model()
    if model is None or header.orientation() != Qt.Orientation.Horizontal:
        return
    for section in range(header.count()):
        words = model.headerData(section, Qt.Orientation.Horizontal)
        if not isinstance(words, str) or not words or header.isSectionHidden(section):
            continue
        tip = model.headerData(section, Qt.Orientation.Horizontal, Qt.ItemDataRole.ToolTipRole)
        if tip and words in str(tip):
            continue
        size = header.fontMetrics().size(0, words)
        yield words, size, QRect(0, 0, header.sectionSize(section) - 4, header.height())


def _items(view: QAbstractItemView, parent: QModelIndex | None = None):
    model = view.model()
    if model is None:
        return
    parent = QModelIndex() if parent is None else parent
    columns = 1 if isinstance(model, QAbstractListModel) else model.columnCount(parent)
    for row in range(model.rowCount(parent)):
        for column in range(columns):
            index = model.index(row, column, parent)
            words = index.data()
            box = view.visualRect(index)
            if not isinstance(words, str) or not words or not box.isValid():
                continue
            if not view.viewport().rect().intersects(box):
                continue
            tip = index.data(Qt.ItemDataRole.ToolTipRole)
            if isinstance(tip, str) and words in tip:
                continue
            if getattr(view, "wordWrap", lambda: False)():
                continue
            needed = view.sizeHintForIndex(index)
            room = QSize(box.width(), box.height())
            if view.horizontalScrollBarPolicy() != Qt.ScrollBarPolicy.ScrollBarAlwaysOff and (
                not hasattr(view, "header")
            ):
                room.setWidth(max(room.width(), needed.width()))
            yield words, QSize(needed.width(), needed.height()), QRect(QPoint(0, 0), room)
        if columns > 1:
            yield from _items(view, model.index(row, 0, parent))


def _hidden_part(widget: QWidget) -> str:
    """Tell what of a widget lies outside its parents; what can be scrolled to counts as seen."""
    rect = widget.rect()
    at = widget
    while not at.isWindow():
        parent = at.parentWidget()
        if isinstance(parent, QAbstractScrollArea) and at.objectName() == "qt_scrollarea_viewport":
            return ""
        if parent.objectName() == "qt_scrollarea_viewport":
            return ""
        rect = rect.translated(at.pos())
        over = rect.adjusted(SLACK_PX, SLACK_PX, -SLACK_PX, -SLACK_PX)
        if over.isValid() and not parent.rect().contains(over):
            return f"stands out of {type(parent).__name__} {parent.size().toTuple()} at {rect.getRect()}"
        at = parent
    return ""
