"""A learner's own notes on parts: written, changed, listed, gone to."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.flow import FlowLayout
from viewer.state.tongue import told

_ID = Qt.ItemDataRole.UserRole


class OwnNotes(QDialog):
    """The notes of one learner.

    Signals
    -------
    note_changed : str, str
        Structure and new words; empty words take the note away.
    wanted : str
        Go to this structure.
    """

    note_changed = Signal(str, str)
    wanted = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("My notes")
        self.list = QListWidget()
        self.list.setAccessibleName("Parts with a note")
        self.head = QLabel("No notes yet: pick a part and press Y.")
        self.head.setWordWrap(True)
        self.words = QPlainTextEdit()
        self.words.setAccessibleName("Words of the note")
        self.words.setTabChangesFocus(True)
        self.keep_button = QPushButton("&Keep")
        self.keep_button.setProperty("strong", True)
        self.remove_button = QPushButton("&Take out")
        self.go_button = QPushButton("&Go there")
        self.close_button = QPushButton("Close")
        buttons = QWidget()
        flow = FlowLayout(buttons, spacing=6)
        flow.setContentsMargins(0, 0, 0, 0)
        for button in (self.keep_button, self.remove_button, self.go_button, self.close_button):
            button.setAutoDefault(False)
            flow.addWidget(button)
        box = QVBoxLayout(self)
        box.addWidget(self.list, 2)
        box.addWidget(self.head)
        box.addWidget(self.words, 1)
        box.addWidget(buttons)
        self._notes: dict[str, str] = {}
        self._names: Mapping[str, str] = {}
        self._shown = ""
        self.list.currentRowChanged.connect(self._go_on)
        self.list.itemActivated.connect(lambda _: self._go())
        self.keep_button.clicked.connect(self.keep)
        self.remove_button.clicked.connect(self.remove)
        self.go_button.clicked.connect(self._go)
        self.close_button.clicked.connect(self.close)
        letter = self.fontMetrics()
        self.resize(58 * letter.averageCharWidth(), 26 * letter.height())

    @property
    def structure(self) -> str:
        """The structure whose note is shown, "" for none."""
        item = self.list.currentItem()
        return item.data(_ID) if item is not None else ""

    def show_notes(self, notes: Mapping[str, str], names: Mapping[str, str], at: str = "") -> None:
        """List notes by structure and show one; ``at`` may have none yet.

        Parameters
        ----------
        notes : mapping of structure to words
        names : mapping of structure to its name
        at : str
        """
        self._notes, self._names = dict(notes), names
        if at:
            self._notes.setdefault(at, "")
        self.list.blockSignals(True)
        self.list.clear()
        for structure in sorted(self._notes, key=lambda s: names.get(s, s).casefold()):
            first = self._notes[structure].split("\n")[0]
            name = names.get(structure, structure)
            item = QListWidgetItem(f"{name}  –  {first}" if first else name)
            item.setData(_ID, structure)
            self.list.addItem(item)
            if structure == at:
                self.list.setCurrentItem(item)
        if not at and self.list.count():
            self.list.setCurrentRow(0)
        self.list.blockSignals(False)
        self._show_words()

    def _go_on(self, *_: object) -> None:
        """Show the note of another row; what was typed on the one before is kept first."""
        before, after = self._shown, self.structure
        typed = self._typed()
        if typed is None:
            self._show_words()
            return
        # Whoever keeps the note lists all of them anew and shows the one that was kept.
        self.note_changed.emit(before, typed)
        if self._typed() is not None:
            # It was not kept: the words stay to be seen.
            self._mark_row(before)
        elif self._mark_row(after):
            self._show_words()

    def _mark_row(self, structure: str) -> bool:
        """Choose the row of a structure, its words untouched; False when it has none."""
        for row in range(self.list.count()):
            if self.list.item(row).data(_ID) == structure:
                self.list.blockSignals(True)
                self.list.setCurrentRow(row)
                self.list.blockSignals(False)
                return True
        return False

    def tell(self, words: str) -> None:
        """Say what became of a note, under the list."""
        self.head.setText(words)

    def _typed(self) -> str | None:
        """Return the words that were typed and not kept, None where there are none."""
        words = self.words.toPlainText()
        if not self._shown or words.strip() == self._notes.get(self._shown, ""):
            return None
        return words

    def _show_words(self) -> None:
        structure = self._shown = self.structure
        for widget in (self.words, self.keep_button, self.remove_button, self.go_button):
            widget.setEnabled(bool(structure))
        self.words.setPlainText(self._notes.get(structure, ""))
        if structure:
            self.head.setText(self._names.get(structure, structure))
        else:
            self.head.setText(told("No notes yet: pick a part and press Y."))

    def keep(self) -> None:
        """Keep the words as they stand."""
        if self.structure:
            self.note_changed.emit(self.structure, self.words.toPlainText())

    def remove(self) -> None:
        """Take the note out."""
        if self.structure:
            self.note_changed.emit(self.structure, "")

    def _go(self) -> None:
        if self.structure:
            self.wanted.emit(self.structure)

    def done(self, result: int) -> None:
        # What was typed and not kept is kept: nothing is lost by closing, with Escape neither.
        self._keep_typed()
        super().done(result)

    def closeEvent(self, event: object) -> None:
        self._keep_typed()
        super().closeEvent(event)

    def _keep_typed(self) -> None:
        typed = self._typed()
        if typed is not None:
            self._notes[self._shown] = typed.strip()
            self.note_changed.emit(self._shown, typed)
