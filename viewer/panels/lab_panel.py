"""The take-home lab beside the model: the step, the blade, what the cut was worth, the sum."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QSlider,
    QStackedWidget,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.flow import FlowLayout
from viewer.panels.style import LIGHT, Theme, font
from viewer.state.cut_line import DEPTH_MM
from viewer.state.cut_words import Headed, line_in_words
from viewer.state.measuring import TEACHING_NOTE
from viewer.state.tongue import figure, told
from viewer.study.lab import LabBook, StepRecord

TENTHS = 2
"""Slider steps a millimetre."""
DRAWN, OPEN = "✓", "○"

LEAST_TEXT_PX = 44
"""Height that is left to a text at least."""


class LabPanel(QFrame):
    """Step, blade, verdict and sum of a take-home lab.

    Signals
    -------
    depth_wanted : float, bool
        mm; the flag tells that the slider is being dragged.
    hand_in_wanted, point_back_wanted, again_wanted, go_on_wanted, step_back_wanted
    sum_wanted : bool
        Show the sum, or the step.
    csv_wanted, pdf_wanted, anew_wanted, leave_wanted
    """

    depth_wanted = Signal(float, bool)
    hand_in_wanted = Signal()
    point_back_wanted = Signal()
    again_wanted = Signal()
    go_on_wanted = Signal()
    step_back_wanted = Signal()
    sum_wanted = Signal(bool)
    csv_wanted = Signal()
    pdf_wanted = Signal()
    anew_wanted = Signal()
    leave_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("side")
        self.setAccessibleName("Take-home lab")
        self._theme: Theme = LIGHT
        self._quiet = False
        self.where = QLabel()
        self.where.setObjectName("heading")
        self.way = QProgressBar()
        self.way.setAccessibleName("Steps done")
        self.title = QLabel()
        self.title.setWordWrap(True)
        self.text = QTextBrowser()
        self.text.setAccessibleName("What to do")
        self.text.setOpenLinks(False)
        self.blade_label = QLabel("&Blade")
        self.depth = QSlider(Qt.Orientation.Horizontal)
        self.depth.setRange(round(DEPTH_MM[0] * TENTHS), round(DEPTH_MM[1] * TENTHS))
        self.depth.setAccessibleName("Depth of the blade below the line, mm")
        self.blade_label.setBuddy(self.depth)
        self.depth_words = QLabel()
        self.finger = QCheckBox("A &finger underneath")
        self.hand_in = QPushButton("&Cut here")
        self.hand_in.setProperty("strong", True)
        self.hand_in.setToolTip("Hand this line in and see what it would lose")
        self.back = QPushButton("Last &point back")
        self.back.setToolTip("Backspace")
        self.again = QPushButton("Try &again")
        self.answer = QTextBrowser()
        self.answer.setAccessibleName("What the table sees")
        self.answer.setOpenLinks(False)
        self.go_on = QPushButton("Fold, and go on")
        self.step_back = QPushButton("Step before")
        self.sum_button = QPushButton("Summary")
        self.leave = QPushButton("Leave")
        self.leave.setToolTip("All is kept; the lab goes on where it was left")
        for words in (self.text, self.answer):
            # They scroll: in a low window with large letters the buttons need the room.
            words.setMinimumHeight(LEAST_TEXT_PX)
        self.sum = QTextBrowser()
        self.sum.setAccessibleName("How the lab went")
        self.sum.setOpenLinks(False)
        self.to_steps = QPushButton("Back to the steps")
        self.csv = QPushButton("Export CSV…")
        self.pdf = QPushButton("Save PDF…")
        self.anew = QPushButton("Begin anew…")
        self.leave_too = QPushButton("Leave")
        self.note = QLabel(TEACHING_NOTE)
        self.note.setProperty("caution", True)
        self.note.setWordWrap(True)
        self._arrange()
        self._connect()

    def _arrange(self) -> None:
        step = QWidget()
        box = QVBoxLayout(step)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(6)
        box.addWidget(self.title)
        box.addWidget(self.text, 5)
        self.drawing = QWidget()
        drawing = QVBoxLayout(self.drawing)
        drawing.setContentsMargins(0, 0, 0, 0)
        drawing.setSpacing(6)
        row = QHBoxLayout()
        row.addWidget(self.blade_label)
        row.addWidget(self.depth, 1)
        row.addWidget(self.depth_words)
        drawing.addLayout(row)
        drawing.addWidget(self.finger)
        drawing.addWidget(_flow(self.hand_in, self.back, self.again))
        box.addWidget(self.drawing)
        box.addWidget(self.answer, 6)
        box.addWidget(_flow(self.go_on, self.step_back, self.sum_button, self.leave))
        summing = QWidget()
        box = QVBoxLayout(summing)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(self.sum, 1)
        box.addWidget(_flow(self.to_steps, self.csv, self.pdf, self.anew, self.leave_too))
        self.stack = QStackedWidget()
        self.stack.addWidget(step)
        self.stack.addWidget(summing)
        box = QVBoxLayout(self)
        box.setContentsMargins(10, 10, 10, 6)
        box.setSpacing(7)
        for widget in (self.where, self.way):
            box.addWidget(widget)
        box.addWidget(self.stack, 1)
        box.addWidget(self.note)

    def _connect(self) -> None:
        self.depth.valueChanged.connect(self._tell_depth)
        for button, signal in (
            (self.hand_in, self.hand_in_wanted),
            (self.back, self.point_back_wanted),
            (self.again, self.again_wanted),
            (self.go_on, self.go_on_wanted),
            (self.step_back, self.step_back_wanted),
            (self.csv, self.csv_wanted),
            (self.pdf, self.pdf_wanted),
            (self.anew, self.anew_wanted),
            (self.leave, self.leave_wanted),
            (self.leave_too, self.leave_wanted),
        ):
            button.clicked.connect(lambda _=False, s=signal: s.emit())
        self.sum_button.clicked.connect(lambda: self.sum_wanted.emit(True))
        self.to_steps.clicked.connect(lambda: self.sum_wanted.emit(False))

    def _tell_depth(self, value: int) -> None:
        self.depth_words.setText(f"{figure(value / TENTHS)} mm")
        if not self._quiet:
            self.depth_wanted.emit(value / TENTHS, self.depth.isSliderDown())

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme = theme
        for widget in self.findChildren(QWidget):
            widget.setFont(font(scale, bold=bool(widget.property("strong"))))
        self.title.setFont(font(scale, 1.22, bold=True))
        self.note.setFont(font(scale, 0.88))
        self.depth_words.setMinimumWidth(round(58 * scale))

    def show_way(self, book: LabBook) -> None:
        """Show how far the lab has come."""
        self.way.setRange(0, max(len(book.steps), 1))
        self.way.setValue(book.done)
        score = book.score
        words = told("{done} of {count} steps", done=book.done, count=len(book.steps))
        if score is not None:
            words += " · " + told("{points} points", points=f"{score:.0f}")
        self.way.setFormat(words)

    def show_step(
        self, where: str, title: str, parts: Sequence[tuple[str, str]], record: StepRecord
    ) -> None:
        """Show a step: headed texts, and its lines with what they were worth."""
        self.stack.setCurrentIndex(0)
        self.where.setText(where)
        self.title.setText(title)
        rows = [
            f"<p style='margin:0 0 5px 0'><b style='color:{self._theme.accent}'>{escape(head)}</b>"
            f" {escape(text)}</p>"
            for head, text in parts
            if text
        ]
        if record.lines:
            rows.append(
                f"<p style='margin:0'><b style='color:{self._theme.accent}'>"
                f"{escape(told('Lines to draw'))}</b>"
            )
            for line in record.lines:
                best = record.best(line)
                mark = DRAWN if best else OPEN
                worth = " – " + told("{points} points", points=f"{best.score:.0f}") if best else ""
                rows.append(f"<br>{mark} {escape(line_in_words(line))}{escape(worth)}")
            rows.append("</p>")
        self.text.setHtml("".join(rows))
        self.drawing.setVisible(bool(record.lines))

    def show_line(
        self, depth_mm: float, points: int, goes: str, missing: int, guard: tuple[str, str]
    ) -> None:
        """Show what can be done with the line now.

        Parameters
        ----------
        depth_mm : float
        points : int
            Places clicked so far.
        goes : {"fold", "off", ""}
            The step lays something back, takes something away, or neither.
        missing : int
            Lines of the plan that are not drawn yet.
        guard : tuple of str
            How the blade is kept off what lies beneath, and why; empty where it can't be.
        """
        words, why = guard
        self.finger.setText(words)
        self.finger.setToolTip(why)
        self.finger.setVisible(bool(words))
        self._quiet = True
        if not self.depth.isSliderDown():
            self.depth.setValue(round(depth_mm * TENTHS))
        self.depth_words.setText(f"{figure(depth_mm)} mm")
        self._quiet = False
        self.hand_in.setEnabled(points > 1)
        self.back.setEnabled(points > 0)
        self.again.setEnabled(points > 0)
        words = told("Done, go on")
        if goes:
            words = told("Fold, and go on") if goes == "fold" else told("Take away, and go on")
        if missing:
            words = told("Go on without the rest")
        self.go_on.setText(words)
        strong = not missing
        if bool(self.go_on.property("strong")) != strong:
            self.go_on.setProperty("strong", strong)
            self.go_on.style().unpolish(self.go_on)
            self.go_on.style().polish(self.go_on)

    def show_answer(self, verdict: str, lost: bool, headed: Sequence[Headed]) -> None:
        """Show what a cut means: a sentence, then headed lines."""
        colour = self._theme.caution if lost else self._theme.done
        text = []
        if verdict:
            sign = "✗" if lost else "✓"
            text.append(
                f"<p style='color:{colour}; margin:0 0 4px 0'><b>{sign} {escape(verdict)}</b></p>"
            )
        for heading, lines in headed:
            text.append(f"<p style='margin:0 0 4px 0'><b>{escape(heading)}</b>")
            for line in lines:
                shown = escape(line.words)
                if line.loss:
                    shown = f"<b style='color:{self._theme.caution}'>{shown}</b>"
                text.append(f"<br>{shown}")
            text.append("</p>")
        self.answer.setHtml("".join(text))
        self.answer.verticalScrollBar().setValue(0)

    def say(self, words: str) -> None:
        """Show a sentence in place of an answer."""
        self.answer.setHtml(f"<p style='color:{self._theme.soft}'>{escape(words)}</p>")

    def show_sum(self, html: str, where: str) -> None:
        """Show the sum."""
        self.where.setText(where)
        self.sum.setHtml(html)
        self.stack.setCurrentIndex(1)
        self.to_steps.setFocus()


class LabStart(QDialog):
    """Cautions before the lab, and which side is dissected.

    Parameters
    ----------
    html : str
        The cautions.
    way : mapping of side to (steps done, steps)
        How far the learner has come.
    learner : str
    """

    def __init__(
        self,
        html: str,
        way: Mapping[str, tuple[int, int]],
        learner: str,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Take-home lab")
        self.text = QTextBrowser()
        self.text.setAccessibleName("Cautions")
        self.text.setOpenLinks(False)
        self.text.setHtml(html)
        self._way = dict(way)
        self.side = QComboBox()
        self.side.setAccessibleName("Side")
        for side, words in (("left", "Left side"), ("right", "Right side")):
            self.side.addItem(words, side)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setAccessibleName("Where you are")
        form = QFormLayout()
        form.addRow("&Side", self.side)
        who = QLabel(learner)
        form.addRow("Learner", who)
        buttons = QDialogButtonBox()
        self.go = buttons.addButton(
            "I have read this: begin", QDialogButtonBox.ButtonRole.AcceptRole
        )
        self.go.setDefault(True)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        box = QVBoxLayout(self)
        box.addWidget(self.text, 1)
        box.addLayout(form)
        box.addWidget(self.told)
        box.addWidget(buttons)
        self.side.currentIndexChanged.connect(self._tell)
        begun = [side for side, (done, _) in self._way.items() if done]
        if begun:
            self.side.setCurrentIndex(self.side.findData(begun[0]))
        self._tell()
        letter, screen = self.fontMetrics(), self.screen().availableSize()
        self.resize(
            min(96 * letter.averageCharWidth(), screen.width() - 60),
            min(34 * letter.height(), screen.height() - 90),
        )

    def _tell(self, *_: object) -> None:
        done, count = self._way.get(self.side.currentData(), (0, 0))
        if done >= count > 0:
            self.told.setText(told("All steps of this side are done; the summary is shown."))
        elif done:
            self.told.setText(
                told("Goes on where it was left: {done} of {count} steps.", done=done, count=count)
            )
        else:
            self.told.setText(told("Begins with the whole back."))


def _flow(*widgets: QWidget) -> QWidget:
    row = QWidget()
    flow = FlowLayout(row, spacing=6)
    flow.setContentsMargins(0, 0, 0, 0)
    for widget in widgets:
        flow.addWidget(widget)
    return row
