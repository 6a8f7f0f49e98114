"""Asks what a tag test shall be: who, what of the back, which kinds, how long, how."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import date

from PySide6.QtCore import QDate, Qt, Signal
from PySide6.QtWidgets import (
    QBoxLayout,
    QCheckBox,
    QComboBox,
    QDateEdit,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QInputDialog,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QScrollArea,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from viewer.state.tongue import told
from viewer.state.view_state import STRATA
from viewer.study.questions import KINDS
from viewer.study.tag_test import EXPLAINED, MARKS, NUMBERS, PLACES, STATION_S, TestChoice

SIDES = {"both": "Both sides", "left": "Left side", "right": "Right side"}
REGION_WORDS = {
    "all": "The whole back",
    "neck": "Neck and head",
    "trunk": "Chest and shoulder",
    "loin": "Loin and pelvis",
}
WIDE_LETTERS = 140
"""Width of the sheet with form and lists side by side, in letters."""
_ID = Qt.ItemDataRole.UserRole


class TestChoices(QDialog):
    """The start sheet of a tag test.

    Parameters
    ----------
    learners : sequence of str
    choice : TestChoice or None
        What was chosen last.
    describe : callable
        Takes a choice and returns how much there is to ask, in a sentence, and whether any.

    Signals
    -------
    learner_added : str
    exam_changed : str, date or None
        A learner and the day of the examination.
    """

    __test__ = False

    learner_added = Signal(str)
    exam_changed = Signal(str, object)

    def __init__(
        self,
        learners: Sequence[str],
        choice: TestChoice | None,
        describe: Callable[[TestChoice], tuple[str, bool]],
        parent: QWidget | None = None,
        exam_of: Callable[[str], date | None] = lambda learner: None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Tag test")
        self._describe, self._exam_of = describe, exam_of
        self._quiet = True
        self.learner = QComboBox()
        self.learner.setAccessibleName("Learner")
        for name in learners:
            self.learner.addItem(name, name)
        self.add = QPushButton("&New learner…")
        self.add.setAutoDefault(False)
        self.region = self._box("Region", REGION_WORDS)
        self.side = self._box("Side", SIDES)
        self.number = QSpinBox()
        self.number.setRange(*NUMBERS)
        self.number.setValue(10)
        self.number.setAccessibleName("Number of questions")
        self.answers = self._box("Answers", {"choices": "Choose from four", "typed": "Type"})
        self.mark = self._box("Marked with", MARKS)
        self.explain = self._box("Answers explained", EXPLAINED)
        self.places = self._box("The donor", PLACES)
        self.timed = QCheckBox("S&tations of")
        self.seconds = QSpinBox()
        self.seconds.setRange(*STATION_S)
        self.seconds.setSingleStep(10)
        self.seconds.setValue(60)
        self.seconds.setSuffix(" s")
        self.seconds.setAccessibleName("Seconds at a station")
        self.bell = QCheckBox("The &bell can be heard")
        self.exam = QCheckBox("Exa&mination on")
        self.exam_day = QDateEdit(QDate.currentDate().addDays(28))
        # Day and month are the other way about on either side of the Atlantic.
        self.exam_day.setDisplayFormat("yyyy-MM-dd")
        self.exam_day.setCalendarPopup(True)
        self.exam_day.setMinimumDate(QDate.currentDate())
        self.exam_day.setAccessibleName("Day of the examination")
        self.exam_day.setToolTip("What would come again after it comes before it")
        self.strata = self._ticks(
            "Strata", {str(n): f"{n}  {told(w)}" for n, w in enumerate(STRATA)}
        )
        self.kinds = self._ticks("Kinds of question", {k: told(w) for k, w in KINDS.items()})
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setAccessibleName("What there is to ask")
        self._arrange()
        self.add.clicked.connect(self._ask_learner)
        for box in (
            self.learner, self.region, self.side, self.answers, self.mark, self.explain, self.places,
        ):  # fmt: skip
            box.currentIndexChanged.connect(self._refresh)
        for spin in (self.number, self.seconds):
            spin.valueChanged.connect(self._refresh)
        for tick in (self.timed, self.bell):
            tick.toggled.connect(self._refresh)
        self.learner.currentIndexChanged.connect(self._show_exam)
        self.exam.toggled.connect(self._change_exam)
        self.exam_day.dateChanged.connect(self._change_exam)
        for ticks in (self.strata, self.kinds):
            ticks.itemChanged.connect(self._refresh)
        if choice is not None:
            self._fill(choice)
        self._quiet = False
        self._show_exam()
        self._refresh()

    def _show_exam(self, *_: object) -> None:
        """Show the examination of the chosen learner."""
        if self._quiet:
            return
        day = self._exam_of(self.learner.currentData()) if self.learner.currentData() else None
        # An examination that is over is none any more.
        ahead = day is not None and QDate(day) >= QDate.currentDate()
        self._quiet = True
        self.exam.setChecked(ahead)
        if ahead:
            self.exam_day.setDate(QDate(day))
        self._quiet = False
        self.exam_day.setEnabled(ahead)

    def _change_exam(self, *_: object) -> None:
        self.exam_day.setEnabled(self.exam.isChecked())
        if self._quiet or not self.learner.currentData():
            return
        day = self.exam_day.date().toPython() if self.exam.isChecked() else None
        self.exam_changed.emit(self.learner.currentData(), day)
        self._refresh()

    def _box(self, name: str, options: Mapping[str, str]) -> QComboBox:
        box = QComboBox()
        box.setAccessibleName(name)
        for value, words in options.items():
            box.addItem(words, value)
        return box

    def _ticks(self, name: str, options: Mapping[str, str]) -> QListWidget:
        ticks = QListWidget()
        ticks.setAccessibleName(name)
        for value, words in options.items():
            item = QListWidgetItem(words)
            item.setData(_ID, value)
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(Qt.CheckState.Checked)
            ticks.addItem(item)
        return ticks

    def _arrange(self) -> None:
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        who = QHBoxLayout()
        who.addWidget(self.learner, 1)
        who.addWidget(self.add)
        label = QLabel("&Learner")
        label.setBuddy(self.learner)
        form.addRow(label, who)
        for words, field in (
            ("&Region", self.region),
            ("&Side", self.side),
            ("&Questions", self.number),
            ("&Answers", self.answers),
            ("&Marked with", self.mark),
            ("The &donor", self.places),
            ("E&xplained", self.explain),
        ):
            form.addRow(words, field)
        station = QHBoxLayout()
        station.addWidget(self.timed)
        station.addWidget(self.seconds)
        station.addStretch(1)
        form.addRow("", station)
        form.addRow("", self.bell)
        exam = QHBoxLayout()
        exam.addWidget(self.exam)
        exam.addWidget(self.exam_day)
        exam.addStretch(1)
        form.addRow("", exam)
        lists = QGridLayout()
        for k, (words, ticks) in enumerate((("Strata", self.strata), ("Kinds", self.kinds))):
            label = QLabel(words)
            label.setObjectName("heading")
            lists.addWidget(label, 0, k)
            lists.addWidget(ticks, 1, k)
            ticks.setMinimumWidth(ticks.sizeHintForColumn(0) + 3 * self.fontMetrics().height())
            row = QHBoxLayout()
            for name, on in (("All", True), ("None", False)):
                button = QPushButton(name)
                button.setAutoDefault(False)
                button.setAccessibleName(f"{name}: {words.lower()}")
                button.clicked.connect(lambda _=False, t=ticks, on=on: self._tick_all(t, on))
                row.addWidget(button)
            row.addStretch(1)
            lists.addLayout(row, 2, k)
        body = QWidget()
        letter, screen = self.fontMetrics(), self.screen().availableSize()
        # With large letters on a small screen the lists stand under the form.
        wide = WIDE_LETTERS * letter.averageCharWidth() <= screen.width() - 60
        way = QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom
        both = QBoxLayout(way, body)
        both.setContentsMargins(0, 0, 6, 0)
        both.setSpacing(16)
        both.addLayout(form, 4)
        both.addLayout(lists, 6)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setWidget(body)
        buttons = QDialogButtonBox()
        self.go = buttons.addButton("Begin", QDialogButtonBox.ButtonRole.AcceptRole)
        self.go.setDefault(True)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(scroll, 1)
        layout.addWidget(self.told)
        layout.addWidget(buttons)
        row = letter.height() + 6
        for ticks in (self.strata, self.kinds):
            ticks.setMinimumHeight(9 * row)
        self.resize(
            min(WIDE_LETTERS * letter.averageCharWidth(), screen.width() - 60),
            min(28 * row, screen.height() - 90),
        )

    def _tick_all(self, ticks: QListWidget, on: bool) -> None:
        self._quiet = True
        for k in range(ticks.count()):
            ticks.item(k).setCheckState(Qt.CheckState.Checked if on else Qt.CheckState.Unchecked)
        self._quiet = False
        self._refresh()

    def _ticked(self, ticks: QListWidget) -> tuple[str, ...]:
        items = [ticks.item(k) for k in range(ticks.count())]
        return tuple(i.data(_ID) for i in items if i.checkState() == Qt.CheckState.Checked)

    def _fill(self, choice: TestChoice) -> None:
        for box, value in (
            (self.learner, choice.learner),
            (self.region, choice.region),
            (self.side, choice.side),
            (self.answers, "typed" if choice.typed else "choices"),
            (self.mark, choice.mark),
            (self.explain, choice.explain),
            (self.places, choice.places),
        ):
            box.setCurrentIndex(max(box.findData(value), 0))
        self.number.setValue(choice.number)
        self.timed.setChecked(choice.station_s is not None)
        if choice.station_s is not None:
            self.seconds.setValue(choice.station_s)
        self.bell.setChecked(choice.bell)
        strata = {str(n) for n in choice.strata} or {str(n) for n in range(len(STRATA))}
        for ticks, wanted in ((self.strata, strata), (self.kinds, set(choice.kinds))):
            for k in range(ticks.count()):
                on = ticks.item(k).data(_ID) in wanted
                ticks.item(k).setCheckState(
                    Qt.CheckState.Checked if on else Qt.CheckState.Unchecked
                )

    def _ask_learner(self) -> None:
        name, good = QInputDialog.getText(
            self, "New learner", "Name or initials (kept on this computer only):"
        )
        if good and name.strip():
            self.learner_added.emit(name)

    def show_learners(self, learners: Sequence[str], chosen: str) -> None:
        """List the learners anew."""
        self._quiet = True
        self.learner.clear()
        for name in learners:
            self.learner.addItem(name, name)
        self.learner.setCurrentIndex(max(self.learner.findData(chosen), 0))
        self._quiet = False
        self._show_exam()
        self._refresh()

    @property
    def choice(self) -> TestChoice | None:
        """What is chosen now, None while something is missing."""
        strata = tuple(int(n) for n in self._ticked(self.strata))
        if not self.learner.currentData() or not strata:
            return None
        try:
            return TestChoice(
                self.learner.currentData(),
                self._ticked(self.kinds),
                self.number.value(),
                self.answers.currentData() == "typed",
                self.seconds.value() if self.timed.isChecked() else None,
                self.bell.isChecked(),
                () if len(strata) == len(STRATA) else strata,
                self.region.currentData(),
                self.side.currentData(),
                self.mark.currentData(),
                self.explain.currentData(),
                self.places.currentData(),
            )
        except ValueError:
            return None

    def _refresh(self, *_: object) -> None:
        if self._quiet:
            return
        self.seconds.setEnabled(self.timed.isChecked())
        self.bell.setEnabled(self.timed.isChecked())
        choice = self.choice
        if choice is None:
            words = told("Choose a learner, a stratum and a kind of question at least.")
            good = False
        else:
            words, good = self._describe(choice)
        self.told.setText(words)
        self.go.setEnabled(good)
