"""What lies over the picture while presenting: blank, pen, spotlight. And the ring pointer.

The board is an opaque widget that shows a still of the picture beneath. So the
pen is as smooth as the machine allows, whatever a frame of the model costs.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QCursor, QImage, QPainter, QPainterPath, QPen, QPixmap
from PySide6.QtWidgets import QWidget

RING_PX = 46
PEN_COLOURS = ("#000000", "#ffd400")
"""Edge and body of the pen's line: seen on red, white and skin alike."""

DIM = 165
SPOT_SHARE = 0.11
"""Radius of the spotlight over the height of the picture."""


def ring_cursor(size: int = RING_PX) -> QCursor:
    """Return a ring with a white and a black edge: seen on any tissue, unlike a red dot."""
    picture = QPixmap(size, size)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for colour, width in (("#000000", 7.0), ("#ffffff", 3.5)):
        painter.setPen(QPen(QColor(colour), width))
        painter.drawEllipse(QRectF(5, 5, size - 10, size - 10))
    painter.end()
    return QCursor(picture, size // 2, size // 2)


class Board(QWidget):
    """Covers the stage.

    Signals
    -------
    pointed : QPointF
        Where the pointer is, while the spotlight is on.
    clicked : QPointF
    """

    pointed = Signal(QPointF)
    clicked = Signal(QPointF)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_NativeWindow)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAccessibleName("Board over the picture")
        self.blank = ""
        self.pen = False
        self.spotlight = False
        self.strokes: list[QPainterPath] = []
        self._picture: QPixmap | None = None
        self._spot = QPointF(-1, -1)
        self._drawing = False
        self.hide()

    @property
    def wanted(self) -> bool:
        """True when something is to lie over the picture."""
        return bool(self.blank or self.pen or self.spotlight or self.strokes)

    @property
    def needs_picture(self) -> bool:
        """True when the still beneath is seen."""
        return self.wanted and not self.blank

    def set_picture(self, image: QImage) -> None:
        """Take the still that is shown."""
        self._picture = QPixmap.fromImage(image)
        self.update()

    def set_spot(self, place: QPointF) -> None:
        """Move the spotlight."""
        self._spot = place
        self.update()

    def clear(self) -> None:
        """Wipe what was drawn."""
        self.strokes.clear()
        self._drawing = False
        self.update()

    def paintEvent(self, _event) -> None:
        painter = QPainter(self)
        if self.blank:
            painter.fillRect(self.rect(), QColor(self.blank))
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._picture is None:
            painter.fillRect(self.rect(), self.palette().window())
        else:
            painter.drawPixmap(self.rect(), self._picture)
        if self.spotlight and self._spot.x() >= 0:
            around = QPainterPath()
            around.addRect(QRectF(self.rect()))
            hole = QPainterPath()
            radius = SPOT_SHARE * self.height()
            hole.addEllipse(self._spot, radius, radius)
            painter.fillPath(around.subtracted(hole), QColor(0, 0, 0, DIM))
        width = max(4.0, self.height() / 200.0)
        for colour, extra in zip(PEN_COLOURS, (width * 0.9, 0.0)):
            pen = QPen(QColor(colour), width + extra)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            painter.setPen(pen)
            for stroke in self.strokes:
                painter.drawPath(stroke)

    def mousePressEvent(self, event) -> None:
        if self.pen and event.button() == Qt.MouseButton.LeftButton:
            path = QPainterPath(event.position())
            # A dot is a stroke too.
            path.lineTo(event.position() + QPointF(0.1, 0))
            self.strokes.append(path)
            self._drawing = True
            self.update()
        event.accept()

    def mouseMoveEvent(self, event) -> None:
        if self._drawing and self.strokes:
            self.strokes[-1].lineTo(event.position())
            self.update()
        elif self.spotlight:
            self.set_spot(event.position())
            self.pointed.emit(event.position())
        event.accept()

    def mouseReleaseEvent(self, event) -> None:
        if not self._drawing and not self.pen and not self.blank:
            self.clicked.emit(event.position())
        self._drawing = False
        event.accept()

    def wheelEvent(self, event) -> None:
        event.accept()

    def contextMenuEvent(self, event) -> None:
        event.accept()
