"""Small drawings on buttons, made from strokes on a 24 × 24 grid."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPainterPath, QPen, QPixmap

from viewer.panels.style import Theme

_RATIO = 3


def _torso_behind(path: QPainterPath, shift: float = 0.0, squeeze: float = 1.0) -> None:
    """Head, neck, shoulders and trunk seen from behind."""

    def at(x: float, y: float) -> QPointF:
        return QPointF(12 + shift + (x - 12) * squeeze, y)

    path.addEllipse(at(12, 5), 2.9 * max(squeeze, 0.8), 3.3)
    path.moveTo(at(10.4, 8.2))
    path.quadTo(at(10.2, 10.2), at(5.0, 11.0))
    path.quadTo(at(4.2, 13.5), at(6.6, 16.4))
    path.quadTo(at(7.4, 19), at(6.4, 22))
    path.lineTo(at(17.6, 22))
    path.quadTo(at(16.6, 19), at(17.4, 16.4))
    path.quadTo(at(19.8, 13.5), at(19.0, 11.0))
    path.quadTo(at(13.8, 10.2), at(13.6, 8.2))


def _torso_side(path: QPainterPath, mirror: bool) -> None:
    """Head and trunk seen from the side, back to the left unless mirrored."""

    def at(x: float, y: float) -> QPointF:
        return QPointF(24 - x if mirror else x, y)

    path.addEllipse(at(12.6, 5), 3.3, 3.3)
    path.moveTo(at(10.6, 8))
    path.quadTo(at(10.8, 9.6), at(8.9, 11.4))
    path.quadTo(at(7.2, 14), at(9.6, 17.4))
    path.quadTo(at(8.0, 19.4), at(8.2, 22))
    path.lineTo(at(15.4, 22))
    path.quadTo(at(15.8, 18), at(15.6, 15.6))
    path.quadTo(at(16.8, 12.8), at(14.4, 10))
    path.lineTo(at(14.2, 8.2))


def _paths(name: str) -> tuple[QPainterPath, QPainterPath]:
    """Return (outline, extra strokes) of a drawing."""
    path, extra = QPainterPath(), QPainterPath()
    if name == "posterior":
        _torso_behind(path)
        extra.moveTo(12, 9.5)
        extra.lineTo(12, 21)
    elif name == "anterior":
        _torso_behind(path)
        extra.addEllipse(QPointF(12, 19), 0.7, 0.7)
    elif name in ("oblique_left", "oblique_right"):
        sign = -1 if name.endswith("left") else 1
        _torso_behind(path, squeeze=0.78)
        extra.moveTo(12 + sign * 1.4, 9.5)
        extra.quadTo(12 + sign * 3.0, 15, 12 + sign * 1.6, 21)
    elif name in ("lateral_left", "lateral_right"):
        _torso_side(path, name.endswith("right"))
    elif name in ("superior", "inferior"):
        path.addEllipse(QPointF(12, 13), 9.5, 5.0)
        path.addEllipse(QPointF(12, 12.2), 3.4, 3.9)
        if name == "superior":
            extra.moveTo(12, 1.5)
            extra.lineTo(12, 6)
            extra.moveTo(10, 4.2)
            extra.lineTo(12, 6.4)
            extra.lineTo(14, 4.2)
        else:
            extra.moveTo(12, 23)
            extra.lineTo(12, 19.4)
            extra.moveTo(10, 21)
            extra.lineTo(12, 19.2)
            extra.lineTo(14, 21)
    elif name in ("undo", "redo"):
        flip = name == "redo"

        def at(x: float, y: float) -> QPointF:
            return QPointF(24 - x if flip else x, y)

        path.moveTo(at(5, 9))
        path.lineTo(at(14, 9))
        path.cubicTo(at(21, 9), at(21, 18.5), at(14, 18.5))
        path.lineTo(at(9, 18.5))
        extra.moveTo(at(9, 5))
        extra.lineTo(at(5, 9))
        extra.lineTo(at(9, 13))
    elif name == "labels":
        path.addRoundedRect(QRectF(10, 4, 11, 7), 1.5, 1.5)
        extra.moveTo(10, 8)
        extra.lineTo(4, 18)
        extra.addEllipse(QPointF(4, 19), 1.4, 1.4)
    elif name == "measure":
        path.addRect(QRectF(2.5, 9, 19, 7))
        for k in range(1, 6):
            extra.moveTo(2.5 + k * 3.2, 9)
            extra.lineTo(2.5 + k * 3.2, 12.4 if k % 2 else 11)
    elif name == "surface":
        _torso_behind(path)
        for x, y in ((12, 10.5), (8.5, 14.5), (15.5, 14.5), (12, 19.5)):
            extra.addEllipse(QPointF(x, y), 0.8, 0.8)
    elif name == "compare":
        path.addRect(QRectF(3, 5, 8, 14))
        path.addRect(QRectF(13, 5, 8, 14))
        extra.moveTo(3, 12)
        extra.lineTo(11, 12)
        extra.moveTo(3, 15.5)
        extra.lineTo(11, 15.5)
    elif name in ("left", "right", "both"):
        _torso_behind(path)
        extra.moveTo(12, 9.5)
        extra.lineTo(12, 21.5)
    elif name == "return":
        path.addEllipse(QPointF(12, 13), 6.5, 6.5)
        extra.moveTo(12, 2.5)
        extra.lineTo(12, 13)
        extra.moveTo(9, 5.5)
        extra.lineTo(12, 2.5)
        extra.lineTo(15, 5.5)
    elif name == "help":
        path.addEllipse(QPointF(12, 12), 9, 9)
        extra.moveTo(9, 9.5)
        extra.cubicTo(9, 5.5, 15.5, 5.5, 15, 9.8)
        extra.cubicTo(14.8, 12, 12, 11.8, 12, 14.6)
        extra.addEllipse(QPointF(12, 17.6), 0.5, 0.5)
    elif name == "theme":
        path.addEllipse(QPointF(12, 12), 8.5, 8.5)
    else:
        raise ValueError(f"no drawing is called {name!r}")
    return path, extra


def _draw(name: str, colour: QColor, pixels: int) -> QPixmap:
    image = QPixmap(pixels * _RATIO, pixels * _RATIO)
    image.setDevicePixelRatio(_RATIO)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(pixels / 24, pixels / 24)
    path, extra = _paths(name)
    pen = QPen(colour, 1.5)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    wash = QColor(colour)
    wash.setAlpha(80)
    if name in ("left", "right", "theme"):
        painter.save()
        half = QRectF(0, 0, 12, 24) if name in ("left", "theme") else QRectF(12, 0, 12, 24)
        painter.setClipRect(half)
        strong = QColor(colour)
        strong.setAlpha(190)
        painter.fillPath(path, strong)
        painter.restore()
    elif name in ("both",):
        painter.fillPath(path, wash)
    painter.setPen(pen)
    painter.drawPath(path)
    thin = QPen(pen)
    thin.setWidthF(1.3)
    painter.setPen(thin)
    painter.drawPath(extra)
    painter.end()
    return image


def glyph(name: str, theme: Theme, pixels: int) -> QIcon:
    """Return a drawing as an icon: in text colour, and in the colour of pressed buttons."""
    icon = QIcon()
    icon.addPixmap(_draw(name, QColor(theme.text), pixels), QIcon.Mode.Normal, QIcon.State.Off)
    icon.addPixmap(_draw(name, QColor(theme.on_accent), pixels), QIcon.Mode.Normal, QIcon.State.On)
    faint = QColor(theme.soft)
    faint.setAlpha(120)
    icon.addPixmap(_draw(name, faint, pixels), QIcon.Mode.Disabled, QIcon.State.Off)
    return icon


def glyph_size(scale: float) -> QSize:
    """Return the size of drawings on buttons."""
    return QSize(round(20 * scale), round(20 * scale))


def program_icon() -> QIcon:
    """Return the program's sign: a core of layers with its upper ones pulled aside."""
    icon = QIcon()
    colours = ("#d9b08c", "#e8cf8a", "#b4584a", "#dcd6c6", "#8c3a3c", "#e6dcc0")
    for pixels in (16, 32, 64, 128):
        image = QPixmap(pixels, pixels)
        image.fill(Qt.GlobalColor.transparent)
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(pixels / 24, pixels / 24)
        for k, colour in enumerate(colours):
            shift = max(0.0, 4.5 - 1.8 * k)
            painter.setPen(QPen(QColor("#2b2320"), 0.7))
            painter.setBrush(QColor(colour))
            painter.drawRoundedRect(QRectF(4 + shift, 2 + k * 3.4, 13, 3.4), 1.0, 1.0)
        painter.end()
        icon.addPixmap(image)
    return icon
