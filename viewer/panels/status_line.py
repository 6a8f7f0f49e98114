"""The status line: what is said is read whole, however large the letters are.

A message that has no room beside the standing notes is shown above the line, on
as many lines as it takes, for as long as it lasts.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QLabel, QStatusBar, QStyle, QStyleOption, QWidget

PAD_PX = 6


class ElidedLabel(QLabel):
    """A line that gives way where room is scarce; the whole of it is its tooltip."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)

    def setText(self, text: str) -> None:
        super().setText(text)
        self.setToolTip(text)

    def minimumSizeHint(self) -> QSize:
        return QSize(self.fontMetrics().height() * 2, super().minimumSizeHint().height())

    @property
    def elided(self) -> str:
        """What there is room for."""
        width = self.contentsRect().width()
        return self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, width)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        # Colour of the style sheet, which stands in the palette once the label is polished.
        painter.setPen(self.palette().color(self.foregroundRole()))
        painter.drawText(self.contentsRect(), int(Qt.AlignmentFlag.AlignVCenter), self.elided)


class StatusLine(QStatusBar):
    """A status bar whose messages are never cut."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.whole = QLabel(parent)
        self.whole.setObjectName("said")
        self.whole.setAccessibleName("Message")
        self.whole.setWordWrap(True)
        self.whole.setTextFormat(Qt.TextFormat.PlainText)
        self.whole.setMargin(PAD_PX)
        self.whole.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.whole.hide()
        self.messageChanged.connect(lambda _: self._lay())
        parent.installEventFilter(self)

    def message_room(self) -> QRect:
        """Return where a message stands on the line itself."""
        room = self.contentsRect().adjusted(PAD_PX, 0, 0, 0)
        for child in self.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly):
            if child.isVisible():
                room.setRight(min(room.right(), child.x() - 3))
        return room

    def _lay(self) -> None:
        """Show above the line what does not fit on it."""
        words = self.currentMessage()
        fits = self.fontMetrics().horizontalAdvance(words) <= self.message_room().width()
        if not words or fits or not self.isVisible():
            self.whole.hide()
            self.update()
            return
        window = self.parentWidget()
        self.whole.setFont(self.font())
        self.whole.setText(words)
        width = window.width()
        height = min(self.whole.heightForWidth(width), window.height() // 2)
        self.whole.setGeometry(0, self.y() - height, width, height)
        self.whole.show()
        self.whole.raise_()
        self.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.Resize, QEvent.Type.LayoutRequest):
            self._lay()
        return False

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._lay()

    def hideEvent(self, event: QEvent) -> None:
        super().hideEvent(event)
        self.whole.hide()

    def paintEvent(self, event: QPaintEvent) -> None:
        words = self.currentMessage()
        painter = QPainter(self)
        option = QStyleOption()
        option.initFrom(self)
        self.style().drawPrimitive(QStyle.PrimitiveElement.PE_PanelStatusBar, option, painter, self)
        if words and not self.whole.isVisible():
            painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
            painter.drawText(self.message_room(), int(Qt.AlignmentFlag.AlignVCenter), words)
