"""How a learner stands: what is weak, what comes next; learners added, switched, deleted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QInputDialog,
    QLabel,
    QMessageBox,
    QPushButton,
    QTabWidget,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.flow import FlowLayout
from viewer.state.tongue import told
from viewer.state.view_state import STRATA
from viewer.state.working_file import write_atomically
from viewer.study.questions import KINDS
from viewer.study.results import Results, ResultsError

MOST_ROWS = 60
WEAK = 0.8
"""A stratum under this share is to be gone over again; a goal of our own, without a source."""


class ResultsSheet(QDialog):
    """The results of the learners of this machine.

    Parameters
    ----------
    results : Results
    learner : str
        Shown first.
    name_of : callable
        Takes a structure and returns its name.

    Signals
    -------
    learner_chosen : str
    test_wanted
        Practise what is due.
    """

    learner_chosen = Signal(str)
    test_wanted = Signal()

    def __init__(
        self,
        results: Results,
        learner: str,
        name_of: Callable[[str], str],
        parent: QWidget | None = None,
        clock: Callable[[], datetime] = lambda: datetime.now(UTC),
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Results")
        self._results, self._name_of, self._clock = results, name_of, clock
        self._quiet = False
        self.learner = QComboBox()
        self.learner.setAccessibleName("Learner")
        self.add = QPushButton("&New learner…")
        self.delete = QPushButton("&Delete learner…")
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setAccessibleName("How it stands")
        # Not “right”: of that there is a side as well, and other tongues have two words for them.
        counts = ("Answers", "Correct", "Due")
        self.strata = self._table("By stratum", ("Stratum", *counts))
        self.kinds = self._table("By question", ("Kind of question", *counts))
        self.weak = self._table("Weakest parts", ("Part", *counts))
        self.coming = self._table("Comes next", ("When", "Part", "Kind of question"))
        self.tabs = QTabWidget()
        self.tabs.setAccessibleName("Tables")
        for table in (self.strata, self.kinds, self.weak, self.coming):
            self.tabs.addTab(table, table.accessibleName())
        self.practise = QPushButton("&Practise…")
        self.practise.setToolTip("A tag test; what is due comes first")
        self.export = QPushButton("&Export CSV…")
        self.close_button = QPushButton("Close")
        self.close_button.setDefault(True)
        note = QLabel("Kept on this computer only, in a file of this program.")
        note.setProperty("soft", True)
        note.setWordWrap(True)
        who = QWidget()
        flow = FlowLayout(who, spacing=6)
        flow.setContentsMargins(0, 0, 0, 0)
        label = QLabel("&Learner")
        label.setBuddy(self.learner)
        for widget in (label, self.learner, self.add, self.delete):
            flow.addWidget(widget)
        row = QHBoxLayout()
        for button in (self.practise, self.export):
            row.addWidget(button)
        row.addStretch(1)
        row.addWidget(self.close_button)
        for button in (self.add, self.delete, self.practise, self.export):
            button.setAutoDefault(False)
        box = QVBoxLayout(self)
        box.addWidget(who)
        box.addWidget(self.told)
        box.addWidget(self.tabs, 1)
        box.addWidget(note)
        box.addLayout(row)
        self.learner.currentIndexChanged.connect(self._choose)
        self.add.clicked.connect(self._ask_learner)
        self.delete.clicked.connect(self._ask_delete)
        self.practise.clicked.connect(self._practise)
        self.export.clicked.connect(self._ask_export)
        self.close_button.clicked.connect(self.accept)
        letter, screen = self.fontMetrics(), self.screen().availableSize()
        self.resize(
            min(92 * letter.averageCharWidth(), screen.width() - 60),
            min(32 * letter.height(), screen.height() - 90),
        )
        self.show_learners(learner)

    def _table(self, name: str, heads: Sequence[str]) -> QTreeWidget:
        table = QTreeWidget()
        table.setAccessibleName(name)
        table.setRootIsDecorated(False)
        table.setHeaderLabels(list(heads))
        table.setColumnCount(len(heads))
        header = table.header()
        header.setStretchLastSection(False)
        wide = 0 if len(heads) > 3 else 1
        for k in range(len(heads)):
            mode = QHeaderView.ResizeMode
            header.setSectionResizeMode(k, mode.Stretch if k == wide else mode.ResizeToContents)
        return table

    # --- learners -------------------------------------------------------------------------------

    def show_learners(self, chosen: str) -> None:
        """List the learners and show one."""
        self._quiet = True
        self.learner.clear()
        for name in self._results.learners():
            self.learner.addItem(name, name)
        self.learner.setCurrentIndex(max(self.learner.findData(chosen), 0))
        self._quiet = False
        self._choose()

    def _choose(self, *_: object) -> None:
        if self._quiet or not self.learner.count():
            return
        self.learner_chosen.emit(self.learner.currentData())
        self.fill()

    def _ask_learner(self) -> None:
        name, good = QInputDialog.getText(
            self, "New learner", "Name or initials (kept on this computer only):"
        )
        if good and name.strip():
            self.add_learner(name)

    def add_learner(self, name: str) -> None:
        """Add a learner and show it; a name that will not do is refused with the reason."""
        try:
            name = self._results.add_learner(name)
        except ResultsError as error:
            QMessageBox.warning(self, told("New learner"), str(error))
            return
        self.show_learners(name)

    def _ask_delete(self) -> None:
        name = self.learner.currentData()
        count = sum(w.answers for w in self._results.by_stratum(name))
        notes = len(self._results.notes(name))
        box = QMessageBox(self)
        box.setWindowTitle("Delete learner")
        box.setText(
            told(
                "Delete {name} with {count} answers and {notes} notes? There is no way back.",
                name=name,
                count=count,
                notes=notes,
            )
        )
        yes = box.addButton(told("Delete"), QMessageBox.ButtonRole.DestructiveRole)
        stay = box.addButton(told("Keep"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(stay)
        box.exec()
        if box.clickedButton() is yes:
            self.delete_learner(name)

    def delete_learner(self, name: str) -> None:
        """Take a learner away; there is always one left."""
        from viewer.study.store import DEFAULT_LEARNER

        try:
            self._results.remove_learner(name)
        except ResultsError as error:
            QMessageBox.warning(self, told("Delete learner"), str(error))
            return
        if not self._results.learners():
            self._results.add_learner(DEFAULT_LEARNER)
        self.show_learners("")

    # --- tables ---------------------------------------------------------------------------------

    def fill(self) -> None:
        """Fill the tables for the chosen learner."""
        name, now = self.learner.currentData(), self._clock()
        by_stratum = self._results.by_stratum(name, now)
        for table in (self.strata, self.kinds, self.weak, self.coming):
            table.clear()
        for w in by_stratum:
            self._row(self.strata, f"{w.name}  {told(STRATA[int(w.name)])}", w)
        for w in self._results.by_kind(name, now):
            self._row(self.kinds, told(KINDS.get(w.name, w.name)), w)
        for w in self._results.by_structure(name, now)[:MOST_ROWS]:
            self._row(self.weak, self._name_of(w.name), w)
        for when, structure, kind in self._results.coming(name, MOST_ROWS):
            day = told("now") if when <= now else f"{when.astimezone():%Y-%m-%d %H:%M}"
            item = QTreeWidgetItem([day, self._name_of(structure), told(KINDS.get(kind, kind))])
            self.coming.addTopLevelItem(item)
        answers = sum(w.answers for w in by_stratum)
        right = sum(w.right for w in by_stratum)
        due = len(self._results.due(name, now))
        self.export.setEnabled(answers > 0)
        if not answers:
            self.told.setText(told("No question has been answered yet."))
            return
        words = told(
            "{right} of {answers} answers right; {due} cards are due.",
            right=right,
            answers=answers,
            due=due,
        )
        low = [f"{w.name} {told(STRATA[int(w.name)])}" for w in by_stratum if w.share < WEAK]
        if low:
            words += " " + told("Weak, under 80 %: {strata}.", strata=", ".join(low))
        self.told.setText(words)

    def _row(self, table: QTreeWidget, name: str, w: object) -> None:
        item = QTreeWidgetItem([name, str(w.answers), f"{w.share:.0%}", str(w.due or "")])
        for k in (1, 2, 3):
            item.setTextAlignment(k, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if w.share < WEAK:
            # A sign, not a colour alone.
            item.setText(2, f"▾ {w.share:.0%}")
        table.addTopLevelItem(item)

    # --- out ------------------------------------------------------------------------------------

    def _practise(self) -> None:
        self.accept()
        self.test_wanted.emit()

    def _ask_export(self) -> None:
        start = Path.home() / f"results-{self.learner.currentData()}.csv".replace("/", "-")
        name, _ = QFileDialog.getSaveFileName(
            self, told("Export results"), str(start), "CSV (*.csv)"
        )
        if name:
            path = Path(name)
            self.export_to(path if path.suffix else path.with_suffix(".csv"))

    def export_to(self, path: Path) -> bool:
        """Write every answer of the learner, whole or not at all."""
        try:
            write_atomically(path, self._results.csv(self.learner.currentData()))
        except OSError as error:
            QMessageBox.warning(
                self,
                told("Export results"),
                told("{path} cannot be written: {why}", path=path, why=error.strerror),
            )
            return False
        self.told.setText(told("Saved {name}", name=path.name))
        return True
