"""The step line: the dissection plan as a row of steps under the model."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSlider,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.style import LIGHT, Theme, font
from viewer.state.folding import drawn_aside
from viewer.state.plan import Step, StepLine, names_in_words
from viewer.state.tongue import told, told_each

FOLD_STEPS = 100
HEADINGS = (
    "Not yet.",
    "Do",
    "Reveals",
    "Keep",
    "Cut",
    "Hinge",
    "Too deep if",
    "Caution",
    "Courses differ",
)
STATUS_WORDS = {"done": "done", "allowed": "may be done now", "refused": "not yet"}


class StepMark(QAbstractButton):
    """One step in the row: its number, its name, and how it stands on either side."""

    def __init__(self, number: int, step: Step, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.step = step
        self.number = number
        self._status = {"left": "refused", "right": "refused"}
        self._chosen = False
        self._theme: Theme = LIGHT
        self._scale = 1.0
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def show_status(self, left: str, right: str, chosen: bool) -> None:
        """Show how the step stands on the left and on the right."""
        self._status = {"left": left, "right": right}
        self._chosen = chosen
        self.setAccessibleName(
            told("Step {n}: {title}", n=self.number, title=told(self.step.title))
        )
        self.setAccessibleDescription(
            told(
                "left: {left}; right: {right}",
                left=told(STATUS_WORDS[left]),
                right=told(STATUS_WORDS[right]),
            )
        )
        self.update()

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        metrics = self.fontMetrics()
        width = min(max(metrics.horizontalAdvance(told(self.step.title)) * 0.56, 84), 150)
        return QSize(round(width + 40 * self._scale), round(46 * self._scale))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t, s = self._theme, self._scale
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        # An arrow-shaped tab: the row reads from left to right.
        tip = 9 * s
        path = QPainterPath(box.topLeft())
        path.lineTo(box.right() - tip, box.top())
        path.lineTo(box.right(), box.center().y())
        path.lineTo(box.right() - tip, box.bottom())
        path.lineTo(box.left(), box.bottom())
        if self.number > 1:
            path.lineTo(box.left() + tip, box.center().y())
        path.closeSubpath()
        both = set(self._status.values())
        ground = t.raised if "refused" not in both or len(both) > 1 else t.panel
        painter.setBrush(QColor(t.accent_wash if self._chosen else ground))
        width = 2.0 if self._chosen or self.hasFocus() else 1.0
        painter.setPen(QPen(QColor(t.accent if self._chosen or self.hasFocus() else t.line), width))
        painter.drawPath(path)
        self._paint_sides(painter, QRectF(box.left() + 15 * s, box.top(), 18 * s, box.height()))
        quiet = both == {"refused"}
        painter.setPen(QColor(t.soft if quiet else t.text))
        painter.setFont(font(s, 0.86, bold=self._chosen))
        painter.drawText(
            QRectF(box.left() + 37 * s, box.top() + 2, box.width() - 49 * s, box.height() - 4),
            Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap,
            self._wrapped(painter, int(box.width() - 49 * s)),
        )
        painter.end()

    def _wrapped(self, painter: QPainter, width: int) -> str:
        """The title on at most two lines, shortened at its end."""
        metrics = painter.fontMetrics()
        words, first = f"{self.number}. {told(self.step.title)}".split(), ""
        while words and metrics.horizontalAdvance(f"{first} {words[0]}".strip()) <= width:
            first = f"{first} {words.pop(0)}".strip()
        rest = metrics.elidedText(" ".join(words), Qt.TextElideMode.ElideRight, width)
        return f"{first}\n{rest}" if first and rest else first or rest

    def _paint_sides(self, painter: QPainter, box: QRectF) -> None:
        """Left mark above, right mark below: tick done, ring allowed, dash not yet."""
        s, t = self._scale, self._theme
        for k, side in enumerate(("left", "right")):
            at = QPointF(box.center().x() + 3 * s, box.center().y() + (k - 0.5) * 17 * s)
            status = self._status[side]
            painter.setFont(font(s, 0.62, bold=True))
            painter.setPen(QColor(t.soft))
            painter.drawText(
                QRectF(at.x() - 18 * s, at.y() - 7 * s, 12 * s, 14 * s),
                Qt.AlignmentFlag.AlignCenter,
                side[0].upper(),
            )
            r = 5 * s
            if status == "done":
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(QColor(t.done))
                painter.drawEllipse(at, r, r)
                painter.setPen(QPen(QColor(t.panel), 1.6 * s))
                painter.drawPolyline(
                    [
                        QPointF(at.x() - 2.4 * s, at.y()),
                        QPointF(at.x() - 0.6 * s, at.y() + 2 * s),
                        QPointF(at.x() + 2.6 * s, at.y() - 2.2 * s),
                    ]
                )
            elif status == "allowed":
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.setPen(QPen(QColor(t.accent), 2 * s))
                painter.drawEllipse(at, r - 0.6 * s, r - 0.6 * s)
            else:
                painter.setPen(QPen(QColor(t.soft), 1.6 * s))
                painter.drawLine(
                    QPointF(at.x() - r * 0.7, at.y()), QPointF(at.x() + r * 0.7, at.y())
                )


class StepLineBar(QFrame):
    """The row of steps and what is to be done at the chosen one.

    Signals
    -------
    step_wanted : str, bool
        Do this step; True for 'anyway'.
    lay_back_wanted : str
    fold_wanted : str, float
        Fold the flaps of this step so far, 0 to 1.
    fold_ended : the slider was let go
    whole_wanted : bool
        The whole text of the step is to be seen, whatever it takes of the picture.
    """

    step_wanted = Signal(str, bool)
    lay_back_wanted = Signal(str)
    fold_wanted = Signal(str, float)
    fold_ended = Signal()
    whole_wanted = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("steps")
        self.setAccessibleName("Step line")
        self._marks: list[StepMark] = []
        self._lines: dict[str, Sequence[StepLine]] = {}
        self._chosen = ""
        self._followed = True
        self._side = "both"
        self._titles: Mapping[str, str] = {}
        self._theme: Theme = LIGHT
        self._scale = 1.0
        self._room: tuple[int, Callable[[], int]] = (10_000, lambda: 10_000)

        self._row = QWidget()
        self._row_layout = QHBoxLayout(self._row)
        self._row_layout.setContentsMargins(6, 0, 6, 0)
        self._row_layout.setSpacing(0)
        self._scroll = QScrollArea()
        self._scroll.setWidget(self._row)
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.viewport().setAutoFillBackground(False)
        self._row.setAutoFillBackground(False)

        self._what = QLabel()
        self._what.setWordWrap(True)
        self._what.setTextFormat(Qt.TextFormat.RichText)
        self._what.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._words = QScrollArea()
        self._words.setWidget(self._what)
        self._words.setWidgetResizable(True)
        self._words.setFrameShape(QFrame.Shape.NoFrame)
        self._words.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._words.setAccessibleName("What to do at this step")
        self._what.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.whole_button = QToolButton()
        self.whole_button.setCheckable(True)
        self.whole_button.setArrowType(Qt.ArrowType.UpArrow)
        self.whole_button.setAccessibleName("Show the whole text of the step")
        self.whole_button.setToolTip("Show the whole text of the step")
        self.whole_button.toggled.connect(self._on_whole)
        self.do_button = QPushButton("Do this step")
        self.do_button.setProperty("strong", True)
        self.anyway_button = QPushButton("Anyway")
        self.anyway_button.setToolTip("Do the step although the plan does not allow it yet")
        self.back_button = QPushButton("Lay back")
        self.back_button.setToolTip("Lay this step back, and every step that needs it")
        self.do_button.clicked.connect(lambda: self.step_wanted.emit(self._chosen, False))
        self.anyway_button.clicked.connect(lambda: self.step_wanted.emit(self._chosen, True))
        self.back_button.clicked.connect(lambda: self.lay_back_wanted.emit(self._chosen))
        self.fold_slider = QSlider(Qt.Orientation.Horizontal)
        self.fold_slider.setRange(0, FOLD_STEPS)
        self.fold_slider.setSingleStep(1)
        self.fold_slider.setPageStep(FOLD_STEPS // 4)
        self.fold_slider.setAccessibleName("How far it is folded back")
        self.fold_slider.setToolTip("Fold it back so far; stop midway to look beneath")
        self.fold_slider.valueChanged.connect(self._on_fold_slider)
        self.fold_slider.sliderReleased.connect(self.fold_ended)
        self._fold_words = QLabel()
        self._fold_words.setBuddy(self.fold_slider)
        self._share_of: Callable[[str], float | None] = lambda step_id: None
        buttons = QVBoxLayout()
        buttons.setSpacing(4)
        buttons.addWidget(self.do_button)
        buttons.addWidget(self.anyway_button)
        buttons.addWidget(self.back_button)
        buttons.addWidget(self._fold_words)
        buttons.addWidget(self.fold_slider)
        buttons.addStretch(1)
        below = QHBoxLayout()
        below.setContentsMargins(12, 0, 10, 6)
        below.setSpacing(14)
        below.addWidget(self._words, 1)
        below.addLayout(buttons)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 6, 0, 0)
        layout.setSpacing(5)
        top = QHBoxLayout()
        top.setContentsMargins(0, 0, 10, 0)
        top.setSpacing(4)
        top.addWidget(self._scroll, 1)
        top.addWidget(self.whole_button, 0, Qt.AlignmentFlag.AlignVCenter)
        layout.addLayout(top)
        layout.addLayout(below, 1)
        self._tell()

    @property
    def chosen(self) -> str:
        """Id of the step whose words are shown."""
        return self._chosen

    def set_steps(self, steps: Sequence[Step], titles: Mapping[str, str]) -> None:
        """Lay out the plan."""
        for mark in self._marks:
            self._row_layout.removeWidget(mark)
            # At once no child any more: names are read off all children.
            mark.setParent(None)
            mark.deleteLater()
        while self._row_layout.count():
            self._row_layout.takeAt(0)
        self._titles = titles
        self._marks = []
        for number, step in enumerate(steps, start=1):
            mark = StepMark(number, step)
            mark.clicked.connect(lambda _=False, i=step.id: self.choose(i))
            mark.set_dress(self._theme, self._scale)
            self._marks.append(mark)
            self._row_layout.addWidget(mark)
        self._row_layout.addStretch(1)
        if not any(mark.step.id == self._chosen for mark in self._marks):
            self._chosen = ""

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        for mark in self._marks:
            mark.set_dress(theme, scale)
        self._scroll.setFixedHeight(round(46 * scale) + round(11 * scale))
        side = round(26 * scale)
        self.whole_button.setFixedSize(max(side, 24), max(side, 24))
        for button in (self.do_button, self.anyway_button, self.back_button):
            button.setFont(font(scale, 0.95, bold=button is self.do_button))
        self._what.setFont(font(scale, 0.95))
        self._fold_words.setFont(font(scale, 0.88))
        self._tell()
        self._share_height()

    def set_room(self, height: int, most: Callable[[], int] = lambda: 10_000) -> None:
        """Take at most this height, pixels; the words of a step scroll when it is scarce.

        ``most`` tells the height that may be taken while the whole text of a step is shown.
        """
        self._room = (height, most)
        self._share_height()

    def resizeEvent(self, event: QEvent) -> None:
        super().resizeEvent(event)
        self._share_height()

    def _on_whole(self, on: bool) -> None:
        self.whole_button.setArrowType(Qt.ArrowType.DownArrow if on else Qt.ArrowType.UpArrow)
        self._share_height()
        self.whole_wanted.emit(on)

    def _share_height(self) -> None:
        """Give the words whole lines, and all of them when they are asked for."""
        usual, most = self._room
        usual = min(round(178 * self._scale), usual)
        margins = self.layout().contentsMargins()
        above = self._scroll.height() + self.layout().spacing() + margins.top() + 6
        width = max(self._words.width() - self._words.verticalScrollBar().sizeHint().width(), 80)
        wanted = above + self._what.heightForWidth(width) + 6
        self.whole_button.setVisible(wanted > usual or self.whole_button.isChecked())
        height = max(min(wanted, most()), usual) if self.whole_button.isChecked() else usual
        if height != self.height() or self.minimumHeight() != height:
            self.setFixedHeight(height)
        # A line cut through its middle can be read by nobody.
        line = self._what.fontMetrics().lineSpacing()
        lines = max((height - above) // line, 1)
        self._words.setMaximumHeight(lines * line + 2)

    def show_lines(self, left: Sequence[StepLine], right: Sequence[StepLine], side: str) -> None:
        """Show how every step stands, and follow the dissection to the next one."""
        before = self._standing()
        self._lines = {"left": left, "right": right}
        self._side = side
        if self._standing() != before or not self._chosen:
            self._chosen = self._next() or (self._marks[-1].step.id if self._marks else "")
        self._mark()

    def show_fold(self, share_of: Callable[[str], float | None]) -> None:
        """Show how far the flaps of the chosen step are folded.

        Parameters
        ----------
        share_of : callable
            Step id to 0..1, or None where a step folds nothing.
        """
        self._share_of = share_of
        self._tell_fold()

    def _tell_fold(self) -> None:
        share = self._share_of(self._chosen) if self._chosen else None
        for widget in (self.fold_slider, self._fold_words):
            widget.setVisible(share is not None)
        if share is None:
            return
        self.fold_slider.blockSignals(True)
        if not self.fold_slider.isSliderDown():
            self.fold_slider.setValue(round(share * FOLD_STEPS))
        self.fold_slider.blockSignals(False)
        self._fold_words.setText(self._words_of_fold(share))
        self.fold_slider.setAccessibleDescription(self._fold_words.text())

    def _words_of_fold(self, share: float) -> str:
        if not share:
            return told("In place")
        step = next((mark.step for mark in self._marks if mark.step.id == self._chosen), None)
        names = (*step.folds, *step.by_hand) if step is not None else ()
        if names and all(drawn_aside(f"{name}.left") for name in names):
            return told("Drawn aside {share}", share=f"{share:.0%}")
        return told("Folded {share}", share=f"{share:.0%}")

    def _on_fold_slider(self, value: int) -> None:
        if self._chosen:
            self.fold_wanted.emit(self._chosen, value / FOLD_STEPS)

    def choose(self, step_id: str) -> None:
        """Show the words of a step."""
        self._chosen = step_id
        self._mark()

    def _standing(self) -> tuple:
        return (
            self._side,
            *(tuple(line.status for line in self._lines.get(s, ())) for s in ("left", "right")),
        )

    def _next(self) -> str:
        sides = ("left", "right") if self._side == "both" else (self._side,)
        for k, mark in enumerate(self._marks):
            if any(self._lines[s][k].status == "allowed" for s in sides):
                return mark.step.id
        return ""

    def _mark(self) -> None:
        shown = None
        for k, mark in enumerate(self._marks):
            chosen = mark.step.id == self._chosen
            mark.show_status(self._lines["left"][k].status, self._lines["right"][k].status, chosen)
            if chosen:
                shown = mark
        if shown is not None:
            QTimer.singleShot(0, self, lambda: self._bring_into_view(shown))
        self._tell()

    def _bring_into_view(self, mark: StepMark) -> None:
        if mark in self._marks:
            self._scroll.ensureWidgetVisible(mark, self._scroll.width() // 3, 0)

    def _chosen_lines(self) -> list[StepLine]:
        sides = ("left", "right") if self._side == "both" else (self._side,)
        return [
            line for s in sides for line in self._lines.get(s, ()) if line.step.id == self._chosen
        ]

    def _tell(self) -> None:
        lines = self._chosen_lines()
        self._tell_fold()
        for button in (self.do_button, self.anyway_button, self.back_button):
            button.setVisible(bool(lines))
        if not lines:
            self._what.setText(told("The plan appears when the model is ready."))
            return
        step, t = lines[0].step, self._theme
        statuses = {line.status for line in lines}
        refused = "refused" in statuses
        done = statuses == {"done"}
        self.do_button.setEnabled("allowed" in statuses and not refused)
        self.do_button.setVisible(not done and not refused)
        self.anyway_button.setVisible(refused)
        self.back_button.setVisible("done" in statuses)

        def part(head: str, text: str, colour: str = "") -> str:
            if not text:
                return ""
            tint = f" style='color:{colour}'" if colour else f" style='color:{t.soft}'"
            return f"<b{tint}>{told(head)}</b>&nbsp; {text}"

        where = told(
            {"both": "on both sides", "left": "on the left side", "right": "on the right side"}[
                self._side
            ]
        )
        head = f"<b>{told(step.title)}</b> <span style='color:{t.soft}'>· {where}"
        if step.minutes:
            head += " · " + told("about {minutes} min", minutes=f"{step.minutes:.0f}")
        head += "</span>"
        reasons = " ".join(dict.fromkeys(line.reason for line in lines if line.reason))
        rows = [
            head,
            part("Not yet.", reasons, t.caution) if refused else "",
            part("Do", told(step.do)) if step.do != step.title else "",
            "&nbsp;&nbsp; ".join(
                piece
                for piece in (
                    part("Reveals", names_in_words(step.reveals, self._titles)),
                    part("Keep", names_in_words(step.keep, self._titles)),
                )
                if piece
            ),
            "&nbsp;&nbsp; ".join(
                piece
                for piece in (
                    part("Cut", told_each(step.cut, "; ")),
                    part("Hinge", told_each(step.hinge, " – ")),
                )
                if piece
            ),
            part("Too deep if", told_each(step.stop, "; "), t.caution),
            part("Caution", told(step.caution), t.caution),
            part("Courses differ", told(step.differs)),
        ]
        text = "<br>".join(row for row in rows if row)
        if text != self._what.text():
            self._what.setText(text)
            self._words.verticalScrollBar().setValue(0)
            self._share_height()
        self._what.setToolTip(f"<p>{text}</p>")
