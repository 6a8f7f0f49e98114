"""Dialogs for what leaves the window: lab sheet, take-home page, meshes; each tells what it makes."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from viewer.state.tongue import counted, figure, told

TEACHING = "Teaching model: not for needle or surgical guidance."


@dataclass(frozen=True, slots=True)
class SheetChoice:
    """What was chosen for a lab sheet; steps are ids, in plan order."""

    paper: str
    blank: bool
    side: str
    steps: tuple[str, ...]
    short: bool = False


class _Choices(QDialog):
    """A form, what will be made of it in words, and a way on."""

    def __init__(self, title: str, go: str, parent: QWidget | None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.form = QFormLayout()
        self.form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        self.preview = QLabel()
        self.preview.setWordWrap(True)
        self.preview.setTextFormat(Qt.TextFormat.PlainText)
        self.preview.setAccessibleName("What will be made")
        self.preview.setAlignment(Qt.AlignmentFlag.AlignTop)
        note = QLabel(TEACHING)
        note.setProperty("soft", True)
        buttons = QDialogButtonBox()
        self.go = buttons.addButton(go, QDialogButtonBox.ButtonRole.AcceptRole)
        self.go.setDefault(True)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addLayout(self.form)
        layout.addWidget(self.preview, 1)
        layout.addWidget(note)
        layout.addWidget(buttons)
        self.setMinimumWidth(max(520, 62 * self.fontMetrics().averageCharWidth()))

    def choice_box(self, label: str, options: Mapping[str, str]) -> QComboBox:
        """Add a row with a list of options, value to words."""
        box = QComboBox()
        for value, words in options.items():
            box.addItem(words, value)
        box.setAccessibleName(label.replace("&", ""))
        box.currentIndexChanged.connect(self._refresh)
        self.form.addRow(label, box)
        return box

    def tell(self, words: str) -> None:
        """Say what will be made; the room for it grows with the letters."""
        self.preview.setText(words)
        width = max(self.preview.width(), self.minimumWidth() - 24)
        tall = max(self.preview.heightForWidth(width), self.fontMetrics().height() * 5)
        self.preview.setMinimumHeight(tall)

    def _refresh(self) -> None:
        raise NotImplementedError


class SheetChoices(_Choices):
    """Asks what a lab sheet shall hold.

    Parameters
    ----------
    steps : sequence of (id, title, minutes)
    chosen : collection of str
        Steps that are ticked to begin with.
    describe : callable
        A ``SheetChoice`` to what the sheet will hold, in words.
    """

    def __init__(
        self,
        steps: Sequence[tuple[str, str, float]],
        chosen: Sequence[str],
        describe: Callable[[SheetChoice], str],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__("Lab sheet", "See the pages…", parent)
        self._describe = describe
        self.steps = QListWidget()
        self.paper = self.choice_box("&Paper", {"A4": "A4", "Letter": "Letter"})
        self.side = self.choice_box(
            "&Side", {"both": "Both sides", "left": "Left side", "right": "Right side"}
        )
        self.kind = self.choice_box(
            "&Kind",
            {
                "full": "Full: everything a table needs",
                "short": "Short: two to four pages, one row a step",
                "blank": "Blank, to test yourself; answers on the last page",
            },
        )
        self.steps.setAccessibleName("Steps on the sheet")
        for number, (step_id, title, minutes) in enumerate(steps, start=1):
            item = QListWidgetItem(f"{number}  {title} ({figure(minutes)} min)")
            item.setData(Qt.ItemDataRole.UserRole, step_id)
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            ticked = step_id in chosen
            item.setCheckState(Qt.CheckState.Checked if ticked else Qt.CheckState.Unchecked)
            self.steps.addItem(item)
        rows = min(11, self.screen().availableSize().height() // self.fontMetrics().height() - 18)
        self.steps.setMinimumHeight(self.fontMetrics().height() * max(rows, 3))
        self.steps.itemChanged.connect(self._refresh)
        label = QLabel("S&teps")
        label.setBuddy(self.steps)
        self.form.addRow(label, self.steps)
        row = QHBoxLayout()
        for words, on in (("All steps", True), ("No steps", False)):
            button = QPushButton(words)
            button.setAutoDefault(False)
            button.clicked.connect(lambda _=False, on=on: self.tick_all(on))
            row.addWidget(button)
        row.addStretch(1)
        self.form.addRow("", row)
        self._refresh()

    def tick_all(self, on: bool) -> None:
        """Tick every step, or none."""
        self.steps.blockSignals(True)
        for i in range(self.steps.count()):
            self.steps.item(i).setCheckState(
                Qt.CheckState.Checked if on else Qt.CheckState.Unchecked
            )
        self.steps.blockSignals(False)
        self._refresh()

    @property
    def choice(self) -> SheetChoice:
        """What is chosen now."""
        items = [self.steps.item(i) for i in range(self.steps.count())]
        return SheetChoice(
            self.paper.currentData(),
            self.kind.currentData() == "blank",
            self.side.currentData(),
            tuple(
                item.data(Qt.ItemDataRole.UserRole)
                for item in items
                if item.checkState() == Qt.CheckState.Checked
            ),
            self.kind.currentData() == "short",
        )

    def _refresh(self) -> None:
        if not self.steps.count():
            return
        choice = self.choice
        self.go.setEnabled(bool(choice.steps))
        self.tell(self._describe(choice) if choice.steps else told("Tick a step at least."))


class ShareChoices(_Choices):
    """Asks whether a talk travels with the take-home page.

    Parameters
    ----------
    open_talk : str
        Title of the talk that is open in the window, "" for none.
    """

    def __init__(self, open_talk: str = "", parent: QWidget | None = None) -> None:
        super().__init__("Take-home page", "Write page…", parent)
        options = {"none": "No talk"}
        if open_talk:
            options["open"] = told("The open talk: {title}", title=open_talk)
        options["file"] = "A talk from a file"
        self.notes = QCheckBox("With the speaker's &notes")
        self.file = QLineEdit()
        self.talk = self.choice_box("&Talk", options)
        self.file.setAccessibleName("Talk file")
        self.file.setPlaceholderText("Choose a file")
        self.file.textChanged.connect(self._refresh)
        self.browse = QPushButton("&Choose…")
        self.browse.setAutoDefault(False)
        self.browse.clicked.connect(self._choose)
        row = QHBoxLayout()
        row.addWidget(self.file, 1)
        row.addWidget(self.browse)
        self.form.addRow("File", row)
        self.form.addRow("", self.notes)
        self.notes.toggled.connect(self._refresh)
        self._refresh()

    def _choose(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self, told("Talk"), str(Path.home()), told("Talks") + " (*.talk)"
        )
        if name:
            self.file.setText(name)

    def _refresh(self) -> None:
        kind = self.talk.currentData()
        self.file.setEnabled(kind == "file")
        self.browse.setEnabled(kind == "file")
        self.notes.setEnabled(kind != "none")
        self.go.setEnabled(kind != "file" or bool(self.file.text().strip()))
        said = [
            told(
                "One file of about 3 MB that opens in a browser with no network, on a phone too: "
                "turn, peel, hide, see through, names and captions, search, the steps of the plan, "
                "cautions."
            )
        ]
        if kind != "none":
            said.append(
                told(
                    "The scenes of the talk are in it, with its notes."
                    if self.notes.isChecked()
                    else "The scenes of the talk are in it, without its notes."
                )
            )
        said.append(told("Folds, sections and probing stay in this program."))
        self.tell(" ".join(said))


class ExportChoices(_Choices):
    """Asks which meshes go into which files.

    Parameters
    ----------
    counts : mapping of str to int
        Parts by choice: "all", "seen", "picked".
    """

    def __init__(self, counts: Mapping[str, int], parent: QWidget | None = None) -> None:
        super().__init__("Export meshes", "Write into a folder…", parent)
        self._counts = dict(counts)
        words = {"all": "All parts", "seen": "What is shown now", "picked": "What is picked"}
        self.which = self.choice_box(
            "&Parts", {key: f"{told(words[key])} ({n})" for key, n in counts.items() if n}
        )
        self.pieces = self.choice_box(
            "&Files", {"part": "One a part", "stratum": "One a stratum", "whole": "One for all"}
        )
        self.form_box = self.choice_box(
            "Fo&rmat", {"stl": "STL, for printing in 3D (mm)", "glb": "GLB, for pictures (metres)"}
        )
        self._refresh()

    def _refresh(self) -> None:
        if not hasattr(self, "form_box"):
            return
        count = self._counts[self.which.currentData()]
        shells = counted(count, "{count} part", "{count} parts")
        frame = told(
            {
                "stl": "Millimetres; x to the donor's left, y to the back, z to the head.",
                "glb": "Metres in glTF's axes: left +X, head +Y, front +Z; colours by kind.",
            }[self.form_box.currentData()]
        )
        self.tell(
            told(
                "{parts}, each a closed shell. {frame} Thin sheets are less than a millimetre "
                "thick: a printer may need them scaled up.",
                parts=shells,
                frame=frame,
            )
        )
