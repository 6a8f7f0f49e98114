"""The tree of parts by stratum and region, with a box for each side."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from viewer.state.captions import sentence_case, tree_of_parts
from viewer.state.view_state import STRATA
from viewer.wording import shown

if TYPE_CHECKING:
    from meshes.model import BackModel

_IDS = Qt.ItemDataRole.UserRole
_COLUMN_SIDE = {1: "left", 2: "right"}


class PartsTree(QTreeWidget):
    """Stratum, region, part; the boxes show what is visible and change it.

    Signals
    -------
    selection_wanted : tuple of str
    shown_wanted : tuple of str, bool
        Show or hide these ids.
    fly_wanted : tuple of str
    menu_wanted : QPoint
        The menu of what is picked, at a place of the screen.
    """

    selection_wanted = Signal(object)
    shown_wanted = Signal(object, bool)
    fly_wanted = Signal(object)
    menu_wanted = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setColumnCount(3)
        self.setHeaderLabels(["Part", "L", "R"])
        self.setAccessibleName("Parts by stratum and region")
        self.setUniformRowHeights(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        header = self.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column in _COLUMN_SIDE:
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.Fixed)
            self.headerItem().setTextAlignment(column, Qt.AlignmentFlag.AlignCenter)
        self._rows: dict[str, QTreeWidgetItem] = {}
        self._quiet = False
        self._visible: frozenset[str] = frozenset()
        self.set_column_width(28)
        self.itemSelectionChanged.connect(self._tell_selection)
        self.itemChanged.connect(self._tell_box)
        self.itemActivated.connect(lambda item, _: self.fly_wanted.emit(self._ids_of(item)))

    def set_column_width(self, pixels: int) -> None:
        """Make room for the boxes."""
        for column in _COLUMN_SIDE:
            self.setColumnWidth(column, pixels)

    def set_model_parts(
        self, model: BackModel, *, latin: bool = False, spelling: str = "uk"
    ) -> None:
        """Fill the tree, with Latin or English names."""
        self._quiet = True
        self.clear()
        self._rows.clear()
        self._visible = frozenset()
        for stratum, regions in tree_of_parts(
            model.parts.values(), model.catalogue, latin=latin, spelling=spelling
        ):
            top = self._item(self, f"{stratum}  {sentence_case(shown(STRATA[stratum]))}", ())
            every: list[str] = []
            for region, rows in regions:
                middle = self._item(top, sentence_case(shown(region)), ())
                here: list[str] = []
                for title, ids in rows:
                    row = self._item(middle, title, ids)
                    here += ids
                    for part_id in ids:
                        self._rows[part_id] = row
                middle.setData(0, _IDS, tuple(here))
                every += here
            top.setData(0, _IDS, tuple(every))
        self._quiet = False

    def _item(self, parent: object, text: str, ids: Iterable[str]) -> QTreeWidgetItem:
        item = QTreeWidgetItem(parent, [text, "", ""])
        item.setData(0, _IDS, tuple(ids))
        item.setToolTip(0, text)
        for column in _COLUMN_SIDE:
            item.setCheckState(column, Qt.CheckState.Checked)
        item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
        return item

    @staticmethod
    def _ids_of(item: QTreeWidgetItem, side: str = "") -> tuple[str, ...]:
        ids = item.data(0, _IDS) or ()
        other = {"left": ".right", "right": ".left", "": "\0"}[side]
        return tuple(i for i in ids if not i.endswith(other))

    def show_visible(self, visible: Iterable[str]) -> None:
        """Show by the boxes what is visible."""
        visible = frozenset(visible)
        if visible == self._visible and self._rows:
            return
        self._visible = visible
        self._quiet = True
        for k in range(self.topLevelItemCount()):
            self._show_boxes(self.topLevelItem(k), visible)
        self._quiet = False

    def _show_boxes(self, item: QTreeWidgetItem, visible: frozenset[str]) -> None:
        for column, side in _COLUMN_SIDE.items():
            ids = self._ids_of(item, side)
            shown = sum(i in visible for i in ids)
            state = (
                Qt.CheckState.Checked
                if ids and shown == len(ids)
                else Qt.CheckState.PartiallyChecked
                if shown
                else Qt.CheckState.Unchecked
            )
            if item.checkState(column) != state:
                item.setCheckState(column, state)
        for k in range(item.childCount()):
            self._show_boxes(item.child(k), visible)

    def show_selection(self, ids: Iterable[str]) -> None:
        """Mark the rows of picked parts and bring the last one into sight."""
        rows = [self._rows[i] for i in ids if i in self._rows]
        if {id(r) for r in rows} == {id(r) for r in self.selectedItems()}:
            return
        self._quiet = True
        self.clearSelection()
        for row in rows:
            row.setSelected(True)
        if rows:
            self.scrollToItem(rows[-1])
            self.setCurrentItem(rows[-1], 0, self.selectionModel().SelectionFlag.NoUpdate)
        self._quiet = False

    def _tell_selection(self) -> None:
        if not self._quiet:
            ids = [i for item in self.selectedItems() for i in self._ids_of(item)]
            self.selection_wanted.emit(tuple(dict.fromkeys(ids)))

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        at = event.globalPos()
        if event.reason() == QContextMenuEvent.Reason.Keyboard and self.currentItem() is not None:
            at = self.viewport().mapToGlobal(self.visualItemRect(self.currentItem()).center())
        if self.selectedItems():
            self.menu_wanted.emit(at)

    def _tell_box(self, item: QTreeWidgetItem, column: int) -> None:
        if self._quiet or column not in _COLUMN_SIDE:
            return
        ids = self._ids_of(item, _COLUMN_SIDE[column])
        wanted = item.checkState(column) == Qt.CheckState.Checked
        # The box is set by the state that follows, not by the click.
        self._visible = frozenset()
        self.shown_wanted.emit(ids, wanted)
