"""What goes wrong most often, step by step, with a button that shows it on the model."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDockWidget,
    QFrame,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QSplitter,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from meshes.catalogue.mistakes import Mistake
from viewer.panels.style import LIGHT, Theme, font
from viewer.state.tongue import told

_ID = Qt.ItemDataRole.UserRole
_HEADS = (
    ("looks", "How it looks"),
    ("tell", "How to tell"),
    ("cause", "Why here"),
    ("avoid", "How to avoid it"),
    ("save", "What can be saved"),
)


class MistakesDock(QDockWidget):
    """The commonest mistakes of a step, or of all.

    Signals
    -------
    show_wanted : str
        Id of the mistake to show on the model.
    closed
    """

    show_wanted = Signal(str)
    closed = Signal()

    def __init__(self, mistakes: Sequence[Mistake], parent: QWidget | None = None) -> None:
        super().__init__("What goes wrong", parent)
        self.setObjectName("mistakes dock")
        self._mistakes = {m.id: m for m in mistakes}
        self._steps: dict[str, str] = {}
        self._theme: Theme = LIGHT
        self.step = QComboBox()
        self.step.currentTextChanged.connect(self.step.setToolTip)
        self.step.setAccessibleName("Step of the plan")
        self.step.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.step.setMinimumContentsLength(12)
        self.list = QListWidget()
        self.list.setWordWrap(True)
        self.list.setAccessibleName("Common mistakes")
        self.text = QTextBrowser()
        self.text.setAccessibleName("The mistake in words")
        self.show_button = QPushButton("Show it")
        self.show_button.setToolTip("Show it on the model; one undo brings all back")
        self.show_button.setProperty("strong", True)
        self.note = QLabel(
            "The model goes to where it has happened, on the side that is worked on; what is "
            "laid bare or left behind is tinted. One undo brings all back. "
            "Common practice, no source."
        )
        self.note.setProperty("soft", True)
        self.note.setWordWrap(True)
        body = QFrame()
        body.setObjectName("side")
        box = QVBoxLayout(body)
        box.setContentsMargins(8, 8, 8, 6)
        box.setSpacing(6)
        box.addWidget(self.step)
        split = QSplitter(Qt.Orientation.Vertical)
        split.addWidget(self.list)
        split.addWidget(self.text)
        split.setChildrenCollapsible(False)
        split.setStretchFactor(0, 2)
        split.setStretchFactor(1, 3)
        box.addWidget(split, 1)
        box.addWidget(self.show_button)
        box.addWidget(self.note)
        self.setWidget(body)
        self.step.currentIndexChanged.connect(lambda _: self._fill())
        self.list.currentItemChanged.connect(lambda *_: self._write())
        self.list.itemActivated.connect(lambda item: self.show_wanted.emit(item.data(_ID)))
        self.show_button.clicked.connect(self._tell)

    def closeEvent(self, event) -> None:
        super().closeEvent(event)
        self.closed.emit()

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme = theme
        for widget in (self, self.step, self.list, self.text, self.show_button):
            widget.setFont(font(scale, 0.95))
        self.note.setFont(font(scale, 0.88))
        self._write()

    def set_steps(self, titles: dict[str, str]) -> None:
        """List the steps in which something goes wrong, as id to title, in plan order."""
        self._steps = {
            step_id: title
            for step_id, title in titles.items()
            if any(m.step == step_id for m in self._mistakes.values())
        }
        self.step.blockSignals(True)
        self.step.clear()
        self.step.addItem("All steps", "")
        for step_id, title in self._steps.items():
            self.step.addItem(told(title), step_id)
        self.step.blockSignals(False)
        self._fill()

    def show_step(self, step_id: str) -> None:
        """Turn to a step; one in which nothing usual goes wrong leaves all listed."""
        self.step.setCurrentIndex(max(self.step.findData(step_id), 0))

    @property
    def chosen(self) -> Mistake | None:
        """The mistake that is read."""
        item = self.list.currentItem()
        return self._mistakes[item.data(_ID)] if item is not None else None

    def choose(self, mistake_id: str) -> None:
        """Turn to a mistake by its id."""
        for k in range(self.list.count()):
            if self.list.item(k).data(_ID) == mistake_id:
                self.list.setCurrentRow(k)
                return

    def _fill(self) -> None:
        wanted = self.step.currentData() or ""
        order = list(self._steps)
        shown = [m for m in self._mistakes.values() if wanted in ("", m.step)]
        shown.sort(key=lambda m: order.index(m.step) if m.step in order else len(order))
        self.list.clear()
        for mistake in shown:
            item = QListWidgetItem(told(mistake.title))
            item.setData(_ID, mistake.id)
            item.setToolTip(told(self._steps.get(mistake.step, "")))
            self.list.addItem(item)
        if shown:
            self.list.setCurrentRow(0)
        self._write()

    def _write(self) -> None:
        mistake = self.chosen
        self.show_button.setEnabled(mistake is not None)
        if mistake is None:
            self.text.clear()
            return
        step = told(self._steps.get(mistake.step, ""))
        text = [f"<p><b>{escape(told(mistake.title))}</b>"]
        if step:
            text.append(
                f'<br><span style="color:{self._theme.soft}">{escape(told("in “{step}”", step=step))}</span>'
            )
        text.append("</p>")
        for name, head in _HEADS:
            text.append(f"<p><b>{told(head)}</b><br>{escape(told(getattr(mistake, name)))}</p>")
        self.text.setHtml("".join(text))

    def _tell(self) -> None:
        if self.chosen is not None:
            self.show_wanted.emit(self.chosen.id)
