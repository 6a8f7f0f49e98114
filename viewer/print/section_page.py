"""A section painted with Qt: on the screen, and as a page of a PDF with the same painter."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import numpy as np
from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPageLayout,
    QPageSize,
    QPainter,
    QPainterPath,
    QPdfWriter,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import QApplication

from meshes.export import write_bytes
from viewer.scene import overlay
from viewer.scene.section_picture import CAUTION, EDGE, GROUND, GROUND_NOTE, PAPER, SectionLayout
from viewer.state.tongue import told

PDF_DPI = 300
PAGE_MM = (297.0, 210.0)
MARGIN_MM = 10.0
_started: QApplication | None = None
HOVER_SHARE = 0.35
HIGHLIGHT = (255, 214, 64)


def rings_path(rings) -> QPainterPath:
    """Return a path of closed (k, 2) loops; what an odd number of them encloses is inside."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for ring in rings:
        path.addPolygon(QPolygonF([QPointF(x, y) for x, y in np.asarray(ring).tolist()]))
        path.closeSubpath()
    return path


def tinted(colour, share: float) -> QColor:
    """Return a colour drawn towards the tint of what is picked."""
    return QColor(*(round(c + share * (h - c)) for c, h in zip(colour, HIGHLIGHT, strict=True)))


def paint_section(
    painter: QPainter,
    layout: SectionLayout,
    lit: frozenset[str] = frozenset(),
    hovered: str = "",
    paper: bool = True,
    caution: bool = True,
) -> None:
    """Paint a section, with its labels, title, sides, scale and caution.

    Parameters
    ----------
    painter : QPainter
        In the layout's pixels.
    layout : SectionLayout
    lit : set of str
        Picked parts.
    hovered : str
        The part under the pointer.
    paper : bool
        Paint the ground.
    caution : bool
        Write the caution; off where it stands beside the picture.
    """
    width, height = layout.size
    theme, font_px = layout.theme, layout.font_px
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if paper:
        painter.fillRect(QRectF(0, 0, width, height), QColor(*PAPER[theme]))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(*GROUND[theme]))
    for outer, holes in layout.ground:
        painter.drawPath(rings_path([outer, *holes]))
    edge = QPen(QColor(*EDGE[theme]), max(0.06 * font_px, 0.6))
    edge.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    for part_id, colour, outers, holes in layout.shapes:
        rings = [
            ring for outer, inner in zip(outers, holes, strict=True) for ring in (outer, *inner)
        ]
        share = HOVER_SHARE if part_id == hovered else 0.55 if part_id in lit else 0.0
        painter.setPen(edge)
        painter.setBrush(tinted(colour, share))
        painter.drawPath(rings_path(rings))
    ink = QColor(*overlay.INK[theme])
    leader = QColor(*overlay.LEADER[theme])
    halo = QColor(*overlay.HALO[theme])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    line = max(font_px / 13, 0.8)
    for pen in (QPen(halo, line + 1.6), QPen(leader, line)):
        painter.setPen(pen)
        for label in layout.labels:
            painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in label.leader]))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(leader)
    for label in layout.labels:
        painter.drawEllipse(QPointF(*label.anchor), 1.4 * line, 1.4 * line)
    for label in layout.labels:
        right = label.side == "right"
        x = label.left + label.width if right else label.left
        lines = label.text.split("\n")
        high = label.height / len(lines)
        for k, text in enumerate(lines):
            _text(painter, x, label.top + (k + 0.8) * high, text, font_px, ink, halo,
                  "end" if right else "start", label.width)  # fmt: skip
    left, right, top, bottom = layout.ends
    length = overlay.bar_length_mm(height / (2 * layout.px_per_mm), height, 9.0 * font_px)
    bar = (length * layout.px_per_mm, letters_measure(font_px)(f"{length / 10:g} cm")[0])
    beside = 1.2 * max(letters_measure(font_px)(end)[0] for end in (left, right)) + 1.6 * font_px
    note = told(GROUND_NOTE) if layout.ground else ""
    free = width - max(bar) - 3.0 * font_px
    foot = height - 0.7 * font_px
    for x, y, text, size, anchor, most in (
        (width / 2, 1.6 * font_px, layout.title, 1.2, "middle", max(width - 2 * beside, 60.0)),
        (0.8 * font_px, 1.7 * font_px, left, 1.2, "start", None),
        (width - 0.8 * font_px, 1.7 * font_px, right, 1.2, "end", None),
        (width / 2, 3.0 * font_px, top, 1.0, "middle", None),
        (width / 2, height - 2.6 * font_px, bottom, 1.0, "middle", None),
        (width - font_px, foot, told(CAUTION) if caution else "", 0.85, "end", None),
        (width - font_px, foot - 1.05 * font_px if caution else foot, note, 0.85, "end", free),
    ):
        _text(painter, x, y, text, size * font_px, ink, halo, anchor, most)
    start, y = 0.9 * font_px, height - 0.7 * font_px
    painter.setPen(QPen(ink, max(font_px / 7, 1.2)))
    painter.drawLine(QPointF(start, y), QPointF(start + length * layout.px_per_mm, y))
    _text(painter, start, y - 0.4 * font_px, f"{length / 10:g} cm", font_px, ink, halo, "start")


def _letters(size_px: float) -> QFont:
    letters = QFont()
    letters.setStyleHint(QFont.StyleHint.SansSerif)
    letters.setPixelSize(max(round(size_px), 1))
    return letters


def letters_measure(size_px: float):
    """Return a function from a text to its (width, height) in pixels, as painted here."""
    _need_letters()
    metrics = QFontMetricsF(_letters(size_px))
    return lambda text: (metrics.horizontalAdvance(text), float(round(1.25 * size_px)))


def _text(painter, x, y, text, size_px, ink, halo, anchor, most=None) -> None:
    """Write a line with a thin halo, no wider than ``most``."""
    letters = _letters(size_px)
    wide = QFontMetricsF(letters).horizontalAdvance(text)
    if most is not None and wide > most:
        letters.setPixelSize(max(int(size_px * most / wide), 1))
        wide = QFontMetricsF(letters).horizontalAdvance(text)
    x -= {"start": 0.0, "middle": wide / 2, "end": wide}[anchor]
    painter.setFont(letters)
    if halo.alpha():
        path = QPainterPath()
        path.addText(QPointF(x, y), letters, text)
        painter.strokePath(path, QPen(halo, max(size_px / 5, 1.5)))
    painter.setPen(ink)
    painter.drawText(QPointF(x, y), text)


def write_section_pdf(path: Path, layout: SectionLayout) -> None:
    """Write a section as a landscape page of vectors; the file is replaced as a whole.

    Raises
    ------
    PeelbackError
        The file cannot be written.
    """
    _need_letters()
    page = QBuffer()
    page.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(page)
    writer.setResolution(PDF_DPI)
    writer.setTitle(layout.title)
    writer.setCreator("Peelback")
    writer.setPageLayout(
        QPageLayout(
            QPageSize(QSizeF(*sorted(PAGE_MM)), QPageSize.Unit.Millimeter),
            QPageLayout.Orientation.Landscape,
            QMarginsF(*[MARGIN_MM] * 4),
            QPageLayout.Unit.Millimeter,
        )
    )
    painter = QPainter(writer)
    room = writer.pageLayout().paintRectPixels(PDF_DPI).size()
    share = min(room.width() / layout.size[0], room.height() / layout.size[1])
    painter.translate(
        (room.width() - share * layout.size[0]) / 2,
        (room.height() - share * layout.size[1]) / 2,
    )
    painter.scale(share, share)
    paint_section(painter, layout, paper=layout.theme != "light")
    painter.end()
    page.close()
    write_bytes(path, page.data().data())


def _need_letters() -> None:
    """Start Qt without a display when no program runs: letters need it.

    It is kept until the end, since Qt does not stand being ended and begun again.
    """
    global _started
    if QApplication.instance() is None:
        if sys.platform.startswith("linux"):
            os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
        _started = QApplication([])
