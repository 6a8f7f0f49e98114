"""The form that probes at a level, so far from the midline, on a side."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QComboBox,
    QDialog,
    QDoubleSpinBox,
    QFormLayout,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from meshes.errors import PeelbackError
from viewer.panels.style import font
from viewer.state.covering import Rung, ladder_text
from viewer.state.tongue import figure, refused, told

_PART = Qt.ItemDataRole.UserRole


class ProbeSheet(QDialog):
    """Level, distance and side; under them the parts in order, with depths in mm.

    It stays open beside the window; every change of a field is answered at once.

    Parameters
    ----------
    levels : sequence of str
        From the head down.
    reach_mm : float
        Largest distance from the midline.
    ask : callable
        (level, lateral_mm, side) -> rows; raises PeelbackError where nothing lies.
    caution : str
    scale : float
        Letters.

    Signals
    -------
    part_wanted : str
    """

    part_wanted = Signal(str)

    def __init__(
        self,
        levels: Sequence[str],
        reach_mm: float,
        ask: Callable[[str, float, str], Sequence[Rung]],
        caution: str,
        scale: float = 1.0,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Probe at a place")
        self._ask, self._caution = ask, caution
        self._rows: tuple[Rung, ...] = ()
        self.level = QComboBox()
        self.level.addItems(list(levels))
        self.level.setAccessibleName("Level of the spine")
        self.lateral = QDoubleSpinBox()
        self.lateral.setRange(0.0, float(int(reach_mm)))
        self.lateral.setDecimals(0)
        self.lateral.setSingleStep(5.0)
        self.lateral.setSuffix(" mm")
        self.lateral.setAccessibleName("Distance from the midline, mm")
        self.side = QComboBox()
        self.side.addItem("Left", "left")
        self.side.addItem("Right", "right")
        self.side.setAccessibleName("Side")
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        form.addRow("Le&vel of the spine", self.level)
        form.addRow("From the &midline", self.lateral)
        form.addRow("&Side", self.side)
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.list = QTreeWidget()
        self.list.setColumnCount(5)
        self.list.setHeaderLabels(["Part", "Enters", "Thick", "Leaves", ""])
        self.list.setRootIsDecorated(False)
        self.list.setUniformRowHeights(True)
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.list.setAccessibleName("Parts in order from the skin, depths in mm")
        self.list.itemActivated.connect(lambda item, _: self.part_wanted.emit(item.data(0, _PART)))
        header = self.list.header()
        header.setStretchLastSection(True)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        for column in (1, 2, 3):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
            self.list.headerItem().setTextAlignment(column, Qt.AlignmentFlag.AlignRight)
        note = QLabel(caution)
        note.setProperty("caution", True)
        note.setWordWrap(True)
        self.copy_button = QPushButton("Copy")
        self.copy_button.setToolTip("Put the list on the clipboard as text")
        self.copy_button.clicked.connect(self.copy)
        self.close_button = QPushButton("Close")
        self.close_button.setDefault(True)
        self.close_button.clicked.connect(self.accept)
        row = QHBoxLayout()
        row.addWidget(self.copy_button)
        row.addStretch(1)
        row.addWidget(self.close_button)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(self.words)
        layout.addWidget(self.list, 1)
        layout.addWidget(note)
        layout.addLayout(row)
        for widget in (self.list, self.words):
            widget.setFont(font(scale))
        self.level.currentIndexChanged.connect(self.answer)
        self.lateral.valueChanged.connect(self.answer)
        self.side.currentIndexChanged.connect(self.answer)
        screen = self.screen().availableSize()
        self.resize(
            min(round(760 * scale), screen.width() - 60),
            min(round(600 * scale), screen.height() - 80),
        )

    @property
    def rows(self) -> tuple[Rung, ...]:
        """What is listed now."""
        return self._rows

    def set_place(self, level: str, lateral_mm: float, side: str) -> None:
        """Set the fields, and answer once."""
        for widget in (self.level, self.lateral, self.side):
            widget.blockSignals(True)
        if (index := self.level.findText(level)) >= 0:
            self.level.setCurrentIndex(index)
        self.lateral.setValue(lateral_mm)
        self.side.setCurrentIndex(self.side.findData(side))
        for widget in (self.level, self.lateral, self.side):
            widget.blockSignals(False)
        self.answer()

    def place(self) -> str:
        """Return the place in words."""
        return told(
            "Spine {level}, {mm} mm {side}",
            level=self.level.currentText(),
            mm=figure(self.lateral.value(), ".0f"),
            side=told(self.side.currentData()),
        )

    def answer(self) -> None:
        """List what lies at the place of the fields."""
        self.list.clear()
        try:
            self._rows = tuple(
                self._ask(self.level.currentText(), self.lateral.value(), self.side.currentData())
            )
            self.words.setText(
                told(
                    "{place}: {count} layers from the skin inward, mm",
                    place=self.place(),
                    count=len(self._rows),
                )
            )
        except PeelbackError as refusal:
            self._rows = ()
            self.words.setText(f"{self.place()}: {refused(refusal)}.")
        for rung in self._rows:
            item = QTreeWidgetItem([rung.title, rung.enters, rung.thick, rung.leaves, rung.note])
            item.setToolTip(0, rung.title)
            item.setToolTip(4, rung.note)
            item.setData(0, _PART, rung.part_id)
            item.setData(
                0,
                Qt.ItemDataRole.AccessibleTextRole,
                told(
                    "{title}: enters at {enters} mm, {thick} mm thick, leaves at {leaves} mm",
                    title=rung.title,
                    enters=rung.enters,
                    thick=rung.thick,
                    leaves=rung.leaves,
                )
                + (f"; {rung.note}" if rung.note else ""),
            )
            for column in (1, 2, 3):
                item.setTextAlignment(
                    column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
                )
            self.list.addTopLevelItem(item)
        self.copy_button.setEnabled(bool(self._rows))

    def copy(self) -> None:
        """Put the list on the clipboard, with the caution."""
        QApplication.clipboard().setText(ladder_text(self.place(), self._rows, self._caution))
