"""A row that goes on in the next line where it is too long, so that large letters fit."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Puts widgets side by side and wraps them like words."""

    def __init__(self, parent: QWidget | None = None, spacing: int = 8, line_gap: int = 5) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self.setSpacing(spacing)
        self._line_gap = line_gap

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._place(QRect(0, 0, width, 0), dry=True)

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._place(rect, dry=False)

    def sizeHint(self) -> QSize:
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        size = QSize()
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
        margins = self.contentsMargins()
        return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom())

    def _place(self, rect: QRect, *, dry: bool) -> int:
        margins = self.contentsMargins()
        area = rect.adjusted(margins.left(), margins.top(), -margins.right(), -margins.bottom())
        x, y, line = area.x(), area.y(), 0
        rows: list[list[tuple[QLayoutItem, QSize, int]]] = [[]]
        for item in self._items:
            if item.isEmpty():
                continue
            hint = item.sizeHint()
            if x + hint.width() > area.right() + 1 and rows[-1]:
                x, y = area.x(), y + line + self._line_gap
                line = 0
                rows.append([])
            rows[-1].append((item, hint, x))
            x += hint.width() + self.spacing()
            line = max(line, hint.height())
        if not dry:
            top = area.y()
            for row in rows:
                tall = max((hint.height() for _, hint, _ in row), default=0)
                for item, hint, left in row:
                    gap = (tall - hint.height()) // 2
                    item.setGeometry(QRect(QPoint(left, top + gap), hint))
                top += tall + self._line_gap
        return y + line - rect.y() + margins.bottom()
