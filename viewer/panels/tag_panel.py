"""The tag test beside the model: the question, the ways to answer, the reason, the sum."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QProgressBar,
    QPushButton,
    QScrollArea,
    QStackedWidget,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.choice_button import ChoiceButton
from viewer.panels.flow import FlowLayout
from viewer.panels.style import LIGHT, Theme, font
from viewer.state.measuring import TEACHING_NOTE
from viewer.state.tongue import told
from viewer.study.answers import Verdict

RIGHT, NEAR, WRONG = "✓", "≈", "✗"
POINT_ADVICE = (
    "Click on it in the picture. By keyboard: Ctrl with the arrows moves the pointer, Enter clicks."
)


class TagPanel(QFrame):
    """Question, answer, reason and sum of a tag test.

    Signals
    -------
    chosen : int
        Place of a choice, from 0.
    typed : str
    ordered : tuple of str
    unknown_wanted, next_wanted, pause_wanted, end_wanted, again_wanted, results_wanted
    shown_wanted : int
        A question of the sum is to be shown on the model again.
    """

    chosen = Signal(int)
    typed = Signal(str)
    ordered = Signal(object)
    unknown_wanted = Signal()
    next_wanted = Signal()
    pause_wanted = Signal()
    end_wanted = Signal()
    again_wanted = Signal()
    results_wanted = Signal()
    shown_wanted = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("side")
        self.setAccessibleName("Tag test")
        self._theme: Theme = LIGHT
        self._scale = 1.0
        self._right: bool | None = None
        self._near = False
        self._reason = ""
        self.choices: list[ChoiceButton] = []
        self._make_widgets()
        self._arrange()
        self._connect()

    def _make_widgets(self) -> None:
        self.where = QLabel()
        self.where.setObjectName("heading")
        self.time = QProgressBar()
        self.time.setAccessibleName("Time left at this station, seconds")
        self.bell = QLabel("Time is over")
        self.bell.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.bell.hide()
        self.prompt = QLabel()
        self.prompt.setWordWrap(True)
        self.prompt.setAccessibleName("Question")
        self.state = QLabel()
        self.state.setWordWrap(True)
        self.state.setProperty("soft", True)
        self.line = QLineEdit()
        self.line.setAccessibleName("Your answer")
        self.line.setPlaceholderText("Latin or English; small slips are forgiven")
        self.answer_button = QPushButton("Answer")
        self.answer_button.setProperty("strong", True)
        self.advice = QLabel(POINT_ADVICE)
        self.advice.setWordWrap(True)
        self.order = QListWidget()
        self.order.setAccessibleName("Five parts, the outermost first")
        # A long name takes two rows: a bar for moving it sideways would hide the last of the five.
        self.order.setWordWrap(True)
        self.order.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.order.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.up_button = QPushButton("Move up")
        self.down_button = QPushButton("Move down")
        self.up_button.setToolTip("Alt+Up")
        self.down_button.setToolTip("Alt+Down")
        self.order_button = QPushButton("This order")
        self.order_button.setProperty("strong", True)
        self.verdict = QLabel()
        self.verdict.setWordWrap(True)
        self.verdict.setAccessibleName("Verdict")
        self.reason = QTextBrowser()
        self.reason.setAccessibleName("Explanation")
        self.reason.setOpenLinks(False)
        self.unknown_button = QPushButton("I don't know")
        self.next_button = QPushButton("Next")
        self.next_button.setProperty("strong", True)
        self.pause_button = QPushButton("Pause")
        self.end_button = QPushButton("End test")
        self.sum = QTextBrowser()
        self.sum.setAccessibleName("How it went")
        self.sum.setOpenLinks(False)
        self.list = QListWidget()
        self.list.setAccessibleName("Questions of this test; Enter shows one on the model")
        self.list.setWordWrap(True)
        self.again_button = QPushButton("Test again…")
        self.results_button = QPushButton("Results…")
        self.close_button = QPushButton("Back to the model")
        self.close_button.setProperty("strong", True)
        self.paused = QLabel("Paused: the picture is covered and the clock stands.")
        self.paused.setWordWrap(True)
        self.paused.hide()
        self.note = QLabel(TEACHING_NOTE)
        self.note.setProperty("caution", True)
        self.note.setWordWrap(True)

    def _arrange(self) -> None:
        choice_page, typed_page, order_page = QWidget(), QWidget(), QWidget()
        self._choice_box = QVBoxLayout(choice_page)
        typed_box = QVBoxLayout(typed_page)
        typed_box.addWidget(self.line)
        typed_box.addWidget(self.answer_button)
        order_box = QVBoxLayout(order_page)
        order_box.addWidget(self.order)
        moves = QWidget()
        flow = FlowLayout(moves, spacing=6)
        flow.setContentsMargins(0, 0, 0, 0)
        for button in (self.up_button, self.down_button, self.order_button):
            flow.addWidget(button)
        order_box.addWidget(moves)
        self._pages = {"choice": choice_page, "typed": typed_page, "order": order_page}
        self._pages["point"] = self.advice
        question = QWidget()
        self._question_box = QVBoxLayout(question)
        self._question_box.setContentsMargins(0, 0, 4, 0)
        self._question_box.setSpacing(8)
        self._question_box.addWidget(self.prompt)
        self._question_box.addWidget(self.state)
        for box in (self._choice_box, typed_box, order_box):
            box.setContentsMargins(0, 0, 0, 0)
            box.setSpacing(6)
        for page in self._pages.values():
            self._question_box.addWidget(page)
            page.hide()
        self._question_box.addWidget(self.verdict)
        self._question_box.addWidget(self.reason, 1)
        self._question_box.addStretch(0)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setWidget(question)
        self.scroll = scroll
        summing = QWidget()
        sum_box = QVBoxLayout(summing)
        sum_box.setContentsMargins(0, 0, 0, 0)
        sum_box.setSpacing(6)
        sum_box.addWidget(self.sum, 2)
        sum_box.addWidget(self.list, 3)
        self.stack = QStackedWidget()
        self.stack.addWidget(scroll)
        self.stack.addWidget(summing)
        self._asking = QWidget()
        flow = FlowLayout(self._asking, spacing=6)
        flow.setContentsMargins(0, 0, 0, 0)
        for button in (
            self.next_button, self.unknown_button, self.pause_button, self.end_button,
        ):  # fmt: skip
            flow.addWidget(button)
        self._ending = QWidget()
        flow = FlowLayout(self._ending, spacing=6)
        flow.setContentsMargins(0, 0, 0, 0)
        for button in (self.close_button, self.again_button, self.results_button):
            flow.addWidget(button)
        box = QVBoxLayout(self)
        box.setContentsMargins(10, 10, 10, 6)
        box.setSpacing(7)
        top = QHBoxLayout()
        top.addWidget(self.where, 1)
        box.addLayout(top)
        box.addWidget(self.time)
        box.addWidget(self.bell)
        box.addWidget(self.stack, 1)
        box.addWidget(self.paused, 1, Qt.AlignmentFlag.AlignTop)
        box.addWidget(self._asking)
        box.addWidget(self._ending)
        box.addWidget(self.note)

    def _connect(self) -> None:
        self.answer_button.clicked.connect(lambda: self.typed.emit(self.line.text()))
        self.order_button.clicked.connect(lambda: self.ordered.emit(self.titles_in_order()))
        self.up_button.clicked.connect(lambda: self.move_title(-1))
        self.down_button.clicked.connect(lambda: self.move_title(1))
        self.unknown_button.clicked.connect(self.unknown_wanted)
        self.next_button.clicked.connect(self.next_wanted)
        self.pause_button.clicked.connect(self.pause_wanted)
        self.end_button.clicked.connect(self.end_wanted)
        self.close_button.clicked.connect(self.end_wanted)
        self.again_button.clicked.connect(self.again_wanted)
        self.results_button.clicked.connect(self.results_wanted)
        self.list.currentRowChanged.connect(
            lambda row: self.shown_wanted.emit(row) if row >= 0 else None
        )

    # --- dress ----------------------------------------------------------------------------------

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        for widget in self.findChildren(QWidget):
            widget.setFont(font(scale, bold=bool(widget.property("strong"))))
        self.prompt.setFont(font(scale, 1.22, bold=True))
        self.verdict.setFont(font(scale, 1.1, bold=True))
        self.bell.setFont(font(scale, 1.3, bold=True))
        self.bell.setStyleSheet(
            f"background: {theme.text}; color: {theme.panel}; padding: 6px; border-radius: 4px;"
        )
        for label in (self.state, self.note):
            label.setFont(font(scale, 0.88))
        for button in self.choices:
            button.set_font(font(scale))
        self._write()

    # --- the question ---------------------------------------------------------------------------

    def show_question(
        self,
        where: str,
        prompt: str,
        state: str,
        way: str,
        choices: Sequence[str] = (),
    ) -> None:
        """Show a question.

        Parameters
        ----------
        where : str
            "Question 3 of 10".
        prompt, state : str
            The question; what the picture shows.
        way : {"choice", "typed", "order", "point"}
        choices : sequence of str
            Options, or what is to be put in order.
        """
        self.stack.setCurrentIndex(0)
        self._asking.show()
        self._ending.hide()
        self.bell.hide()
        self.where.setText(where)
        self.prompt.setText(prompt)
        self.state.setText(state)
        self._right, self._near, self._reason = None, False, ""
        self._write()
        for name, page in self._pages.items():
            page.setVisible(name == way)
        self._fill_choices(choices if way == "choice" else ())
        self.order.clear()
        if way == "order":
            for title in choices:
                self.order.addItem(title)
            self.order.setCurrentRow(0)
        self.set_open(True)
        self.line.clear()
        if way == "typed":
            self.line.setFocus()
        elif way == "order":
            self.order.setFocus()
        elif way == "choice":
            self.choices[0].setFocus()
        self.scroll.verticalScrollBar().setValue(0)
        self.fit_order()
        QTimer.singleShot(0, self, self.fit_order)

    def fit_order(self) -> None:
        """Give the list of five the height of its rows."""
        order = self.order
        if not order.count():
            return
        order.doItemsLayout()
        top, last = (order.visualItemRect(order.item(k)) for k in (0, order.count() - 1))
        order.setFixedHeight(last.bottom() - top.top() + 10)

    def _fill_choices(self, words: Sequence[str]) -> None:
        while self._choice_box.count():
            item = self._choice_box.takeAt(0)
            if widget := item.widget():
                widget.hide()
                widget.deleteLater()
        self.choices = []
        for k, text in enumerate(words):
            button = ChoiceButton(k + 1, text)
            button.set_font(font(self._scale))
            button.clicked.connect(lambda _=False, k=k: self.chosen.emit(k))
            self._choice_box.addWidget(button)
            self.choices.append(button)

    def set_open(self, on: bool) -> None:
        """Let the question be answered, or no longer."""
        for widget in (
            *self.choices, self.line, self.answer_button, self.order, self.up_button,
            self.down_button, self.order_button, self.unknown_button,
        ):  # fmt: skip
            widget.setEnabled(on)
        self.next_button.setEnabled(not on)

    def move_title(self, by: int) -> None:
        """Move the marked one of the five up or down."""
        row = self.order.currentRow()
        to = row + by
        if self.order.isEnabled() and row >= 0 and 0 <= to < self.order.count():
            self.order.insertItem(to, self.order.takeItem(row))
            self.order.setCurrentRow(to)

    def titles_in_order(self) -> tuple[str, ...]:
        """The five as they stand now."""
        return tuple(self.order.item(k).text() for k in range(self.order.count()))

    def show_verdict(
        self, words: str, right: bool, near: bool, reason: str, place: int = -1, chosen: int = -1
    ) -> None:
        """Show what the answer was worth, and why.

        Parameters
        ----------
        words : str
        right, near : bool
        reason : str
            HTML.
        place, chosen : int
            Of the right choice and of the chosen one, -1 for none.
        """
        self.set_open(False)
        self._right, self._near, self._reason = right, near, reason
        self.verdict.setText(f"{sign_of(right, near)}  {words}")
        for k, button in enumerate(self.choices):
            if k == place:
                button.show_verdict(RIGHT, told("right answer"), self._theme.done)
            elif k == chosen:
                button.show_verdict(WRONG, told("your answer"), self._theme.caution)
        self._write()
        # The height asks for the width that the page has once it is laid out.
        QTimer.singleShot(0, self, self._bring_verdict_up)
        self.next_button.setFocus()

    def _write(self) -> None:
        shown = self._right is not None
        self.verdict.setVisible(shown)
        self.reason.setVisible(bool(self._reason))
        colour = self._theme.done if self._right else self._theme.caution
        self.verdict.setStyleSheet(f"color: {colour};")
        self.reason.setHtml(self._reason)
        self._fit_reason()

    def _fit_reason(self) -> None:
        """Give the explanation the height of its words: the page scrolls, not a box within it."""
        document = self.reason.document()
        document.setTextWidth(max(self.reason.viewport().width(), 120))
        self.reason.setMinimumHeight(round(document.size().height()) + 8)

    def _bring_verdict_up(self) -> None:
        self._fit_reason()
        self.scroll.ensureWidgetVisible(self.verdict, 0, 4 * self.fontMetrics().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_reason()
        # Rows break anew; the list has its width only after this.
        QTimer.singleShot(0, self, self.fit_order)

    # --- time -----------------------------------------------------------------------------------

    def show_time(self, left_s: float | None, whole_s: float = 0.0) -> None:
        """Show the time that is left at a station; None: as long as it takes."""
        self.time.setVisible(left_s is not None)
        if left_s is not None:
            self.time.setRange(0, max(round(whole_s), 1))
            left = max(round(left_s), 0)
            self.time.setValue(left)
            self.time.setFormat(f"{left // 60}:{left % 60:02d}")

    def ring(self) -> None:
        """Show that the time is over."""
        self.bell.show()

    def show_paused(self, on: bool) -> None:
        """Cover the question, or uncover it."""
        self.paused.setVisible(on)
        self.stack.setVisible(not on)
        self.pause_button.setText(told("Go on") if on else told("Pause"))
        for button in (self.unknown_button, self.next_button):
            button.setVisible(not on)

    # --- the sum --------------------------------------------------------------------------------

    def show_sum(self, html: str, lines: Sequence[tuple[str, Verdict]]) -> None:
        """Show how the test went; ``lines`` are the questions and what each answer was worth."""
        self.where.setText(told("How it went"))
        self.time.hide()
        self.bell.hide()
        self._asking.hide()
        self._ending.show()
        self.sum.setHtml(html)
        self.list.blockSignals(True)
        self.list.clear()
        for words, verdict in lines:
            item = QListWidgetItem(f"{sign_of(verdict.right, verdict.near)}  {words}")
            item.setToolTip(told("Shows it on the model"))
            self.list.addItem(item)
        self.list.setCurrentRow(-1)
        self.list.blockSignals(False)
        self.stack.setCurrentIndex(1)
        self.close_button.setFocus()


def sign_of(right: bool, near: bool) -> str:
    """Return the sign of an answer: a colour alone would not tell it."""
    return RIGHT if right else NEAR if near else WRONG


def reason_html(theme: Theme, title: str, sentences: Sequence[tuple[str, str]]) -> str:
    """Return an explanation: a title and headed sentences, as HTML."""
    rows = [f"<b>{escape(title)}</b>"] if title else []
    for head, text in sentences:
        start = f"<b style='color:{theme.accent}'>{escape(head)}</b> " if head else ""
        rows.append(f"<div style='margin-top:5px'>{start}{escape(text)}</div>")
    return "".join(rows)
