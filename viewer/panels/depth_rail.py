"""The depth rail: the layers of the back as a drilled core that peels when it is pulled."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleValueChangeEvent,
    QBrush,
    QColor,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
)
from PySide6.QtWidgets import QAbstractSlider, QSizePolicy, QToolTip, QWidget

from viewer.panels.style import LIGHT, Theme, font
from viewer.state.rail import (
    CORE_COLOURS,
    MIN_BAND_PX,
    TYPICAL_MM,
    Band,
    depth_at,
    handle_y,
    rail_bands,
)
from viewer.state.tongue import figure, told
from viewer.state.view_state import STRATA, STRATUM_COUNT, ViewState
from viewer.wording import shown

HANDLE_REACH_PX = 9


class DepthRail(QAbstractSlider):
    """A drilled core split down its middle: left half the donor's left, right half the right.

    To a screen reader it is a slider from 0 (whole) to 11 (all off) of the side worked on.

    Signals
    -------
    depth_wanted : int, str, bool
        Depth, side, and True while the handle is still being dragged.
    drag_ended
    stratum_clicked : int, str
        A band was clicked: stratum and side.
    """

    depth_wanted = Signal(int, str, bool)
    drag_ended = Signal()
    stratum_clicked = Signal(int, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Depth rail")
        self.setOrientation(Qt.Orientation.Vertical)
        self.setInvertedAppearance(True)
        self.setRange(0, STRATUM_COUNT)
        self._telling = False
        self.valueChanged.connect(self._on_value)
        self._state = ViewState()
        self._folded: frozenset[tuple[str, int]] = frozenset()
        self._theme = LIGHT
        self._scale = 1.0
        self._ladder: tuple[float | None, ...] = TYPICAL_MM
        self._measured = False
        self._dragging = ""
        self._hover_band = -1
        self._cursor_band = -1
        self._room = 10_000
        self.pointer_inside = False
        self._describe()

    # --- what it shows --------------------------------------------------------------------

    def set_state(self, state: ViewState, folded: Collection[tuple[str, int]] = ()) -> None:
        """Show a state; ``folded`` holds (side, stratum) of flaps that lie folded back."""
        self._state = state
        self._folded = frozenset(folded)
        self._telling = True
        self.setValue(self._depth())
        self._telling = False
        self._describe()
        self.update()

    def set_ladder(self, ladder: Sequence[float | None] | None) -> None:
        """Show true thicknesses, mm; None goes back to the typical ones, without numbers.

        Nothing moves while the pointer is on the rail.
        """
        if self.pointer_inside or self._dragging:
            return
        self._measured = ladder is not None
        self._ladder = tuple(ladder) if ladder is not None else TYPICAL_MM
        self._describe()
        self.update()

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        self.updateGeometry()
        self.update()

    @property
    def ladder(self) -> tuple[float | None, ...]:
        """The thicknesses that are shown, mm."""
        return self._ladder

    def set_room(self, width: int) -> None:
        """Take at most this width, pixels; names are shortened when it is scarce."""
        self._room = width
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        return QSize(min(round(232 * self._scale), self._room), 520)

    def minimumSizeHint(self) -> QSize:
        height = round(STRATUM_COUNT * MIN_BAND_PX * self._scale) + 34
        return QSize(self.sizeHint().width(), height)

    # --- geometry -------------------------------------------------------------------------

    def _core(self) -> QRectF:
        """The core's rectangle without its caps."""
        s = self._scale
        width = min(54 * s, 0.24 * self.width())
        return QRectF(20 * s, 14 * s, width, self.height() - 30 * s)

    def bands(self) -> list[Band]:
        """Return the bands as drawn, pixels from the core's upper end."""
        return rail_bands(
            self._ladder,
            self._state,
            self._core().height(),
            MIN_BAND_PX * self._scale,
            self._folded,
        )

    def band_centre(self, stratum: int, side: str = "left") -> QPointF:
        """Return where a band's half is, in widget pixels."""
        core = self._core()
        band = self.bands()[stratum]
        x = core.left() + core.width() * (0.25 if side == "left" else 0.75)
        return QPointF(x, core.top() + (band.top + band.bottom) / 2)

    def handle_centre(self, side: str) -> QPointF:
        """Return where a side's handle stands, in widget pixels."""
        core = self._core()
        y = core.top() + handle_y(self.bands(), self._state.peeled.of(side))
        x = core.left() - 9 * self._scale if side == "left" else core.right() + 9 * self._scale
        return QPointF(x, y)

    # --- painting -------------------------------------------------------------------------

    def paintEvent(self, event: QEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        core = self._core()
        bands = self.bands()
        cap = 7 * self._scale
        self._paint_bore(painter, core, cap)
        for band in bands:
            for side in ("left", "right"):
                self._paint_half(painter, core, band, side, cap)
        self._paint_shine(painter, core, cap)
        for band in bands:
            self._paint_words(painter, core, band)
        self._paint_handles(painter, core, bands)
        if self.hasFocus():
            pen = QPen(QColor(self._theme.accent), 2)
            painter.setPen(pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(self.rect().adjusted(2, 2, -2, -2), 5, 5)
        painter.end()

    def _paint_bore(self, painter: QPainter, core: QRectF, cap: float) -> None:
        """The empty drill hole in which the core stands."""
        hole = QPainterPath()
        hole.addRoundedRect(core.adjusted(-2, -cap, 2, cap), core.width() / 2, cap)
        shade = QLinearGradient(core.left(), 0, core.right(), 0)
        dark = QColor(self._theme.ground).darker(128)
        shade.setColorAt(0, dark.darker(115))
        shade.setColorAt(0.5, QColor(self._theme.ground))
        shade.setColorAt(1, dark.darker(115))
        painter.setPen(QPen(QColor(self._theme.line), 1))
        painter.setBrush(QBrush(shade))
        painter.drawPath(hole)

    def _paint_half(
        self, painter: QPainter, core: QRectF, band: Band, side: str, cap: float
    ) -> None:
        s = self._scale
        middle = core.center().x()
        x0, x1 = (core.left(), middle - 1) if side == "left" else (middle + 1, core.right())
        y0, y1 = core.top() + band.top, core.top() + band.bottom
        off = band.off_left if side == "left" else band.off_right
        if off:
            # Taken off: only a notch at the core's edge is left of it.
            notch = QPainterPath()
            edge, depth = (x0, 7 * s) if side == "left" else (x1, -7 * s)
            notch.moveTo(edge, y0 + 1)
            notch.lineTo(edge + depth, y0 + 1)
            notch.lineTo(edge + depth * 0.45, (y0 + y1) / 2)
            notch.lineTo(edge + depth, y1 - 1)
            notch.lineTo(edge, y1 - 1)
            colour = QColor(CORE_COLOURS[band.stratum])
            colour.setAlpha(170)
            painter.setPen(QPen(QColor(self._theme.soft), 0.8))
            painter.setBrush(colour)
            painter.drawPath(notch)
            painter.setPen(QPen(QColor(self._theme.line), 1, Qt.PenStyle.DotLine))
            painter.drawLine(QPointF(x0, y1), QPointF(x1, y1))
            return
        folded = band.folded_left if side == "left" else band.folded_right
        if folded:
            # Folded back: the band is turned aside, and what lies under it shows in its middle.
            width = 0.42 * (x1 - x0)
            x0, x1 = (x0, x0 + width) if side == "left" else (x1 - width, x1)
            painter.setPen(QPen(QColor(self._theme.line), 1, Qt.PenStyle.DotLine))
            painter.drawLine(QPointF(core.left() + 2, y1), QPointF(core.right() - 2, y1))
        # Bands bow a little, as the surface of a cylinder does.
        bow = min(cap * 0.55, (y1 - y0) * 0.3)

        def arc(y: float) -> tuple[QPointF, QPointF, QPointF]:
            if side == "left":
                return QPointF(x0, y), QPointF((x0 + x1) / 2, y + bow), QPointF(x1, y + bow)
            return QPointF(x0, y + bow), QPointF((x0 + x1) / 2, y + bow), QPointF(x1, y)

        top, bottom = arc(y0), arc(y1)
        path = QPainterPath(top[0])
        path.quadTo(top[1], top[2])
        path.lineTo(bottom[2])
        path.quadTo(bottom[1], bottom[0])
        path.closeSubpath()
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(CORE_COLOURS[band.stratum]))
        painter.drawPath(path)
        painter.save()
        painter.setClipPath(path)
        _paint_grain(painter, band.stratum, QRectF(x0, y0, x1 - x0, y1 - y0 + bow), side, s)
        painter.restore()
        edge = QPen(QColor(CORE_COLOURS[band.stratum]).darker(160), 1)
        painter.setPen(edge)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        line = QPainterPath(bottom[0])
        line.quadTo(bottom[1], bottom[2])
        painter.drawPath(line)
        if band.stratum == self._hover_band:
            wash = QColor("#ffffff")
            wash.setAlpha(70)
            painter.fillPath(path, wash)

    def _paint_shine(self, painter: QPainter, core: QRectF, cap: float) -> None:
        """Light and shade of a round core, over all bands at once."""
        shade = QLinearGradient(core.left(), 0, core.right(), 0)
        for at, colour, alpha in (
            (0.0, "#000000", 105),
            (0.16, "#000000", 26),
            (0.34, "#ffffff", 52),
            (0.52, "#ffffff", 0),
            (0.84, "#000000", 34),
            (1.0, "#000000", 115),
        ):
            tone = QColor(colour)
            tone.setAlpha(alpha)
            shade.setColorAt(at, tone)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QBrush(shade))
        painter.drawRect(core.adjusted(0, 0, 0, cap * 0.5))
        painter.setPen(QPen(QColor(0, 0, 0, 120), 1.2))
        painter.drawLine(
            QPointF(core.center().x(), core.top()), QPointF(core.center().x(), core.bottom() + cap)
        )

    def _paint_words(self, painter: QPainter, core: QRectF, band: Band) -> None:
        s = self._scale
        x = core.right() + 21 * s
        y0, y1 = core.top() + band.top, core.top() + band.bottom
        off = band.off_left and band.off_right
        box = QRectF(x, y0, self.width() - x - 6 * s, y1 - y0)
        if band.stratum in (self._hover_band, self._cursor_band):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(self._theme.accent_wash))
            painter.drawRoundedRect(box.adjusted(-4 * s, 1, 4 * s, -1), 3, 3)
        tick = QPen(QColor(self._theme.line), 1)
        painter.setPen(tick)
        painter.drawLine(QPointF(core.right() + 3, y0), QPointF(self.width() - 6 * s, y0))
        if band.stratum == STRATUM_COUNT - 1:
            painter.drawLine(QPointF(core.right() + 3, y1), QPointF(self.width() - 6 * s, y1))
        colour = QColor(self._theme.soft if off else self._theme.text)
        painter.setPen(colour)
        face = font(s, 0.86)
        face.setStrikeOut(off)
        painter.setFont(face)
        number = ""
        if self._measured:
            number = _millimetres(band.mm)
        tall = y1 - y0 > 34 * s
        name_box = QRectF(box.left(), box.top(), box.width(), 18 * s) if tall else box
        metrics = painter.fontMetrics()
        left_over = name_box.width() - (
            0 if tall else metrics.horizontalAdvance(number) * 1.1 + 8 * s
        )
        words = f"{band.stratum}  {shown(STRATA[band.stratum])}"
        if left_over < 62 * s:
            # A name cut to two letters says nothing: the number stands for it.
            words = str(band.stratum)
        words = metrics.elidedText(words, Qt.TextElideMode.ElideRight, int(left_over))
        painter.drawText(
            name_box.adjusted(0, 1 if tall else 0, 0, 0),
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter,
            words,
        )
        painter.setFont(font(s, 0.86, bold=True))
        painter.setPen(QColor(self._theme.soft if off or not band.mm else self._theme.text))
        if tall:
            number_box = QRectF(box.left(), box.top() + 16 * s, box.width(), 18 * s)
            painter.drawText(number_box, Qt.AlignmentFlag.AlignRight, number)
        else:
            painter.drawText(
                box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, number
            )

    def _paint_handles(self, painter: QPainter, core: QRectF, bands: list[Band]) -> None:
        s = self._scale
        left, right = self.handle_centre("left"), self.handle_centre("right")
        accent = QColor(self._theme.accent)
        for side, at in (("left", left), ("right", right)):
            active = self._state.working_side in (side, "both")
            colour = accent if active else QColor(self._theme.soft)
            middle = core.center().x()
            x0, x1 = (core.left(), middle) if side == "left" else (middle, core.right())
            painter.setPen(QPen(colour, 2.6 * s))
            painter.drawLine(QPointF(x0 - 2, at.y()), QPointF(x1 + 2, at.y()))
            tab = QPainterPath()
            d = 1 if side == "left" else -1
            tab.moveTo(at.x() + d * 8 * s, at.y())
            tab.lineTo(at.x() + d * 2 * s, at.y() - 8 * s)
            tab.lineTo(at.x() - d * 9 * s, at.y() - 8 * s)
            tab.lineTo(at.x() - d * 9 * s, at.y() + 8 * s)
            tab.lineTo(at.x() + d * 2 * s, at.y() + 8 * s)
            tab.closeSubpath()
            painter.setPen(QPen(QColor(self._theme.panel), 1))
            painter.setBrush(colour)
            painter.drawPath(tab)
            painter.setPen(QColor(self._theme.on_accent if active else self._theme.panel))
            painter.setFont(font(s, 0.78, bold=True))
            painter.drawText(
                QRectF(at.x() - d * 3.5 * s - 8 * s, at.y() - 9 * s, 16 * s, 18 * s),
                Qt.AlignmentFlag.AlignCenter,
                side[0].upper(),
            )

    # --- mouse and keys -------------------------------------------------------------------

    def _handle_under(self, at: QPointF) -> str:
        reach = HANDLE_REACH_PX * self._scale
        for side in ("left", "right"):
            handle = self.handle_centre(side)
            if abs(at.y() - handle.y()) <= reach and abs(at.x() - handle.x()) <= reach * 1.4:
                return side
        return ""

    def _line_under(self, at: QPointF) -> str:
        """The side whose boundary line is under the pointer, on the core itself."""
        core = self._core()
        if not core.left() <= at.x() <= core.right():
            return ""
        side = "left" if at.x() < core.center().x() else "right"
        return side if abs(at.y() - self.handle_centre(side).y()) <= 5 * self._scale else ""

    def _band_under(self, at: QPointF) -> int:
        core = self._core()
        if at.x() < core.left() - 2:
            return -1
        for band in self.bands():
            if core.top() + band.top <= at.y() < core.top() + band.bottom:
                return band.stratum
        return -1

    def _side_for(self, side: str) -> str:
        return "both" if self._state.working_side == "both" else side

    def _depth_under(self, at: QPointF) -> int:
        return depth_at(self.bands(), at.y() - self._core().top())

    def mousePressEvent(self, event) -> None:
        if event.button() != Qt.MouseButton.LeftButton:
            return
        at = event.position()
        side = self._handle_under(at) or self._line_under(at)
        if side:
            self._dragging = self._side_for(side)
            return
        stratum = self._band_under(at)
        if stratum >= 0:
            core = self._core()
            if at.x() > core.right():
                self.stratum_clicked.emit(stratum, self._state.working_side)
            else:
                half = "left" if at.x() < core.center().x() else "right"
                self.stratum_clicked.emit(stratum, self._side_for(half))

    def mouseMoveEvent(self, event) -> None:
        at = event.position()
        if self._dragging:
            self.depth_wanted.emit(self._depth_under(at), self._dragging, True)
            return
        over_handle = self._handle_under(at) or self._line_under(at)
        band = -1 if over_handle else self._band_under(at)
        self.setCursor(
            Qt.CursorShape.SizeVerCursor
            if over_handle
            else Qt.CursorShape.PointingHandCursor
            if band >= 0
            else Qt.CursorShape.ArrowCursor
        )
        if band != self._hover_band:
            self._hover_band = band
            self.update()

    def mouseReleaseEvent(self, event) -> None:
        if self._dragging:
            self._dragging = ""
            self.drag_ended.emit()

    def wheelEvent(self, event) -> None:
        steps = event.angleDelta().y()
        if steps:
            self._nudge(-1 if steps > 0 else 1)
            event.accept()

    def enterEvent(self, event) -> None:
        self.pointer_inside = True

    def leaveEvent(self, event) -> None:
        self.pointer_inside = False
        if self._hover_band != -1:
            self._hover_band = -1
            self.update()

    def _depth(self) -> int:
        """The depth of the side that is worked on; of both, the deeper one."""
        side = self._state.working_side
        return max(self._state.peeled) if side == "both" else self._state.peeled.of(side)

    def _on_value(self, value: int) -> None:
        """A screen reader or another aid has set the slider."""
        if not self._telling:
            self.depth_wanted.emit(value, self._state.working_side, False)

    def _nudge(self, by: int) -> None:
        wanted = min(max(self._depth() + by, 0), STRATUM_COUNT)
        self.depth_wanted.emit(wanted, self._state.working_side, False)

    def keyPressEvent(self, event) -> None:
        key = event.key()
        if key in (Qt.Key.Key_Down, Qt.Key.Key_Up) and event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier
        ):
            by = 1 if key == Qt.Key.Key_Down else -1
            self._cursor_band = min(max(self._cursor_band + by, 0), STRATUM_COUNT - 1)
            QToolTip.hideText()
            self._describe()
            self.update()
        elif key == Qt.Key.Key_Down:
            self._nudge(1)
        elif key == Qt.Key.Key_Up:
            self._nudge(-1)
        elif key == Qt.Key.Key_Home:
            self.depth_wanted.emit(0, self._state.working_side, False)
        elif key == Qt.Key.Key_End:
            self.depth_wanted.emit(STRATUM_COUNT - 2, self._state.working_side, False)
        elif key == Qt.Key.Key_Space and self._cursor_band >= 0:
            self.stratum_clicked.emit(self._cursor_band, self._state.working_side)
        else:
            super().keyPressEvent(event)
            return
        event.accept()

    def event(self, event: QEvent) -> bool:
        # Up, Down and Space belong to the rail while it has the focus, not to the menus.
        if event.type() == QEvent.Type.ShortcutOverride and event.key() in (
            Qt.Key.Key_Up,
            Qt.Key.Key_Down,
            Qt.Key.Key_Home,
            Qt.Key.Key_End,
            Qt.Key.Key_Space,
        ):
            event.accept()
            return True
        if event.type() == QEvent.Type.ToolTip:
            self._show_tip(event)
            return True
        return super().event(event)

    def _show_tip(self, event) -> None:
        stratum = self._band_under(QPointF(event.pos()))
        if stratum < 0:
            QToolTip.hideText()
            return
        band = self.bands()[stratum]
        mm = told(" – {mm} here", mm=_millimetres(band.mm)) if self._measured else ""
        QToolTip.showText(
            event.globalPos(),
            told("Stratum {n}, {name}{mm}", n=stratum, name=told(STRATA[stratum]), mm=mm)
            + "\n"
            + told("Click: take it out or put it back"),
            self,
        )

    def _under(self, depth: int) -> str:
        """How deep the handle stands under the skin here, in words; "" when not measured."""
        if not self._measured:
            return ""
        mm = sum(t or 0.0 for t in self._ladder[:depth])
        return told(", {mm} of layers off here", mm=_millimetres(mm))

    def _depth_words(self, depth: int) -> str:
        """How far a side is peeled, in words."""
        if depth == 0:
            return told("whole")
        if depth == STRATUM_COUNT:
            return told("all taken off")
        return told(
            "peeled to stratum {n}, {name}{under}",
            n=depth,
            name=told(STRATA[depth]),
            under=self._under(depth),
        )

    def _describe(self) -> None:
        words = []
        for side in ("left", "right"):
            depth = self._state.peeled.of(side)
            words.append(
                f"{told('left side' if side == 'left' else 'right side')}: {self._depth_words(depth)}"
            )
        if self._cursor_band >= 0:
            n = self._cursor_band
            words.append(told("band {n}, {name}", n=n, name=told(STRATA[n])))
        text = "; ".join(words) + ". "
        text += told(
            "Up and Down peel, Control with Up or Down chooses a band, "
            "Space takes it out or puts it back."
        )
        if text != self.accessibleDescription():
            self.setAccessibleDescription(text)
            QAccessible.updateAccessibility(
                QAccessibleValueChangeEvent(self, max(self._state.peeled))
            )


def _millimetres(mm: float | None) -> str:
    if mm is None:
        return "—"
    return f"{figure(mm, '.0f' if mm >= 9.95 else '.1f')} mm"


def _paint_grain(painter: QPainter, stratum: int, box: QRectF, side: str, s: float) -> None:
    """Draw what a stratum is made of: grain tells layers apart without their hue.

    Slopes are those of the fibres on that side: rhomboids down and out,
    splenii up and out, transversospinales up and in.
    """
    base = QColor(CORE_COLOURS[stratum])
    out = -1 if side == "left" else 1
    dark, pale = QColor(base.darker(135)), QColor(base.lighter(118))
    dark.setAlpha(150)
    pale.setAlpha(150)

    def stripes(dx: float, dy: float, gap: float, pen: QPen) -> None:
        painter.setPen(pen)
        span = box.width() + box.height()
        count = int(2 * span / gap) + 2
        horizontal = abs(dx) >= abs(dy)
        for k in range(-count // 2, count // 2 + 1):
            if horizontal:
                y = box.center().y() + k * gap
                slope = dy / dx
                painter.drawLine(
                    QPointF(box.left(), y + slope * (box.left() - box.center().x())),
                    QPointF(box.right(), y + slope * (box.right() - box.center().x())),
                )
            else:
                x = box.center().x() + k * gap
                slope = dx / dy
                painter.drawLine(
                    QPointF(x + slope * (box.top() - box.center().y()), box.top()),
                    QPointF(x + slope * (box.bottom() - box.center().y()), box.bottom()),
                )

    def dots(step: float, size: float, colour: QColor, ring: bool = False) -> None:
        painter.setPen(QPen(colour, 0.9 * s) if ring else Qt.PenStyle.NoPen)
        painter.setBrush(Qt.BrushStyle.NoBrush if ring else colour)
        row, y = 0, box.top() + step / 2
        while y < box.bottom() + step:
            x = box.left() + (step / 2 if row % 2 else 0)
            while x < box.right() + step:
                wobble = ((row * 7 + int(x) * 13) % 5 - 2) * 0.12
                r = size * (1 + wobble)
                painter.drawEllipse(QPointF(x, y), r, r * 0.85)
                x += step
            y += step * 0.8
            row += 1

    thin = QPen(dark, 1.0 * s)
    if stratum == 0:
        dots(5 * s, 0.7 * s, dark)
    elif stratum == 1:
        dots(7 * s, 3.0 * s, dark, ring=True)
    elif stratum == 2:
        stripes(out, 0.12, 3.4 * s, thin)
    elif stratum == 3:
        stripes(out, 0.6, 3.4 * s, thin)
    elif stratum == 4:
        stripes(out, 0.9, 3.0 * s, QPen(pale, 1.2 * s))
    elif stratum == 5:
        stripes(out, -0.7, 3.6 * s, QPen(dark, 0.8 * s))
        stripes(out, 0.7, 3.6 * s, QPen(dark, 0.8 * s))
    elif stratum == 6:
        stripes(0.08 * out, 1, 3.2 * s, thin)
    elif stratum == 7:
        stripes(0.42 * out, 1, 3.4 * s, thin)
    elif stratum == 8:
        stripes(0.8 * out, 1, 3.8 * s, thin)
        stripes(0.8 * out, 1, 7.6 * s, QPen(pale, 1.1 * s))
    elif stratum == 9:
        dots(5.2 * s, 1.5 * s, dark)
    else:
        stripes(0.02, 1, 5.0 * s, QPen(dark, 0.9 * s))
