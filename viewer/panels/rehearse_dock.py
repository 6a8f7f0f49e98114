"""The rehearsed cut beside the model: which step, how deep the blade, and the answer."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDockWidget,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSlider,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.flow import FlowLayout
from viewer.panels.style import LIGHT, Theme, font
from viewer.state.cut_line import DEPTH_MM, CutLine
from viewer.state.cut_words import Headed
from viewer.state.measuring import TEACHING_NOTE
from viewer.state.tongue import figure, told

TENTHS = 2
"""Slider steps a millimetre."""


class RehearseDock(QDockWidget):
    """Everything about a rehearsed cut that stands beside the model.

    Signals
    -------
    step_wanted : str
        Id of the step to compare with, "" for the one that cuts the layer.
    depth_wanted : float, bool
        mm; the flag tells that the slider is being dragged.
    drag_ended, again_wanted, point_back_wanted, closed
    """

    step_wanted = Signal(str)
    depth_wanted = Signal(float, bool)
    drag_ended = Signal()
    again_wanted = Signal()
    point_back_wanted = Signal()
    closed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Rehearse a cut", parent)
        self.setObjectName("rehearse dock")
        self._quiet = False
        self._theme: Theme = LIGHT
        self._answer: Sequence[tuple[str, Sequence[str]]] = ()
        self._verdict = ""
        self._lost = False
        self.advice = QLabel(
            "Click along the line that you would cut, on skin or muscle (or point and press "
            "Shift+Q). White is your line, blue the plan's, orange what comes near."
        )
        self.advice.setWordWrap(True)
        self.advice.setProperty("soft", True)
        self.step = QComboBox()
        self.step.setAccessibleName("Step that the cut belongs to")
        self.step.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.step.setMinimumContentsLength(12)
        self.step.currentTextChanged.connect(self.step.setToolTip)
        self.depth = QSlider(Qt.Orientation.Horizontal)
        self.depth.setRange(round(DEPTH_MM[0] * TENTHS), round(DEPTH_MM[1] * TENTHS))
        self.depth.setAccessibleName("Depth of the blade below the line, mm")
        self.depth_words = QLabel()
        self.answer = QTextBrowser()
        self.answer.setAccessibleName("What the cut means")
        self.answer.setOpenLinks(False)
        self.back_button = QPushButton("Last point back")
        self.again_button = QPushButton("Try again")
        self.again_button.setToolTip("Takes the line away and begins anew (Alt+Q)")
        self.note = QLabel(TEACHING_NOTE)
        self.note.setProperty("caution", True)
        self.note.setWordWrap(True)
        body = QFrame()
        body.setObjectName("side")
        box = QVBoxLayout(body)
        box.setContentsMargins(8, 8, 8, 6)
        box.setSpacing(6)
        box.addWidget(self.advice)
        box.addWidget(self.step)
        row = QHBoxLayout()
        self._blade = QLabel("&Blade")
        self._blade.setBuddy(self.depth)
        row.addWidget(self._blade)
        row.addWidget(self.depth, 1)
        row.addWidget(self.depth_words)
        box.addLayout(row)
        box.addWidget(self.answer, 1)
        buttons = QWidget()
        flow = FlowLayout(buttons, spacing=6)
        flow.setContentsMargins(0, 0, 0, 0)
        flow.addWidget(self.back_button)
        flow.addWidget(self.again_button)
        box.addWidget(buttons)
        box.addWidget(self.note)
        self.setWidget(body)
        self.step.activated.connect(lambda _: self.step_wanted.emit(self.step.currentData()))
        self.depth.valueChanged.connect(self._tell_depth)
        self.depth.sliderReleased.connect(self.drag_ended)
        self.back_button.clicked.connect(self.point_back_wanted)
        self.again_button.clicked.connect(self.again_wanted)

    def closeEvent(self, event) -> None:
        super().closeEvent(event)
        self.closed.emit()

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme = theme
        for widget in (
            self, self.step, self.answer, self.back_button, self.again_button, self._blade,
            self.depth_words,
        ):  # fmt: skip
            widget.setFont(font(scale, 0.95))
        for label in (self.advice, self.note):
            label.setFont(font(scale, 0.88))
        self.depth_words.setMinimumWidth(round(58 * scale))
        self._write()

    def set_steps(self, steps: Sequence[tuple[str, str]]) -> None:
        """List the steps of the plan that cut something, as (id, title)."""
        self._quiet = True
        self.step.clear()
        self.step.addItem(told("The step that cuts this layer"), "")
        for step_id, title in steps:
            self.step.addItem(title, step_id)
        self._quiet = False

    def show_line(self, line: CutLine) -> None:
        """Show the line's settings, without telling anybody."""
        self._quiet = True
        self.step.setCurrentIndex(max(self.step.findData(line.step_id), 0))
        if not self.depth.isSliderDown():
            self.depth.setValue(round(line.depth_mm * TENTHS))
        self.depth_words.setText(f"{figure(line.depth_mm)} mm")
        self.back_button.setEnabled(bool(line.points))
        self.again_button.setEnabled(bool(line.points))
        self._quiet = False

    def show_answer(self, headed: Sequence[Headed], verdict: str = "", lost: bool = False) -> None:
        """Show the answer: a verdict and headed lines.

        Parameters
        ----------
        headed : sequence of (heading, lines)
        verdict : str
            One sentence above all.
        lost : bool
            True when something that must stay is cut.
        """
        self._answer, self._verdict, self._lost = tuple(headed), verdict, lost
        self._write()

    def _write(self) -> None:
        colour = self._theme.caution if self._lost else self._theme.done
        text = []
        if self._verdict:
            text.append(f'<p style="color:{colour}"><b>{escape(self._verdict)}</b></p>')
        for heading, lines in self._answer:
            text.append(f"<p><b>{escape(heading)}</b>")
            for line in lines:
                shown = escape(line.words)
                if line.loss:
                    shown = f'<span style="color:{self._theme.caution}"><b>{shown}</b></span>'
                text.append(f"<br>{shown}")
            text.append("</p>")
        self.answer.setHtml("".join(text))

    def _tell_depth(self, value: int) -> None:
        if not self._quiet:
            self.depth_wanted.emit(value / TENTHS, self.depth.isSliderDown())
