"""The list of what lies over a part: shares, depths, and the way on from there."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QLabel,
    QScrollArea,
    QSpinBox,
    QToolButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.flow import FlowLayout
from viewer.panels.style import LIGHT, Theme, font
from viewer.state.covering import CoverRow, covers_in_words, percent
from viewer.state.tongue import figure, told
from viewer.wording import shown

_PART = Qt.ItemDataRole.UserRole


class CoverPanel(QWidget):
    """What lies over the part that is asked about, outermost first.

    Signals
    -------
    parts_wanted : tuple of str
        A row was chosen (Enter or double click).
    into_view_wanted
    share_wanted : float
        Another share (0–1) counts as in view from now on.
    close_wanted
    """

    parts_wanted = Signal(object)
    into_view_wanted = Signal()
    share_wanted = Signal(float)
    close_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._theme: Theme = LIGHT
        self._scale, self._cramped = 1.0, False
        self.head = QLabel()
        self.head.setObjectName("heading")
        self.head.setWordWrap(True)
        self.words = QLabel()
        self.words.setProperty("soft", True)
        self.words.setWordWrap(True)
        self._scroll = QScrollArea()
        self._scroll.setWidget(self.words)
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setAccessibleName("How much of it is in view")
        self.list = QTreeWidget()
        self.list.setColumnCount(3)
        self.list.setHeaderLabels(["Part", "Hides", "Depth"])
        self.list.setRootIsDecorated(False)
        self.list.setUniformRowHeights(True)
        # What stands last in a long name tells most: "(folded)", the part of a muscle.
        self.list.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.list.setAccessibleName("What lies over it, from outside inward")
        self.list.itemActivated.connect(lambda item, _: self.parts_wanted.emit(item.data(0, _PART)))
        header = self.list.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column in (1, 2):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
            self.list.headerItem().setTextAlignment(column, Qt.AlignmentFlag.AlignRight)
        self.into_view = QToolButton()
        self.into_view.setText("Bring into view  (D)")
        self.into_view.setAccessibleName("Bring into view")
        self.into_view.clicked.connect(self.into_view_wanted)
        self.share = QSpinBox()
        self.share.setRange(5, 100)
        self.share.setSingleStep(5)
        self.share.setPrefix("≥ ")
        self.share.setSuffix(" %")
        self.share.setValue(80)
        self.share.setKeyboardTracking(False)
        self.share.setAccessibleName("Share that counts as in view")
        self.share.setToolTip("So much of the part's area counts as brought into view")
        self.share.valueChanged.connect(lambda value: self.share_wanted.emit(value / 100))
        self.close_button = QToolButton()
        self.close_button.setText("Close  (Esc)")
        self.close_button.setAccessibleName("Close the list of what lies over it")
        self.close_button.clicked.connect(self.close_wanted)
        self._buttons = QWidget()
        row = FlowLayout(self._buttons, spacing=4, line_gap=4)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.into_view)
        row.addWidget(self.share)
        row.addWidget(self.close_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 4, 0, 4)
        layout.setSpacing(4)
        layout.addWidget(self.head)
        layout.addWidget(self._scroll)
        layout.addWidget(self.list, 1)
        layout.addWidget(self._buttons)

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        self.head.setFont(font(scale, 1.0, bold=True))
        self.words.setFont(font(scale, 0.92))
        self.list.setFont(font(scale))
        self.list.header().setFont(font(scale, 0.9))
        self.list.setMinimumHeight(round((60 if self._cramped else 90) * scale))
        self._share_height()
        for button in (self.into_view, self.share, self.close_button):
            button.setFont(font(scale, 0.92))

    def set_share(self, share: float) -> None:
        """Show which share (0–1) counts as in view."""
        self.share.blockSignals(True)
        self.share.setValue(round(100 * share))
        self.share.blockSignals(False)

    def set_cramped(self, cramped: bool) -> None:
        """Leave the keys off the buttons, so that both have room on one line.

        The share is then chosen in the menu of the part.
        """
        self._cramped = cramped
        self.share.setVisible(not cramped)
        self.list.setMinimumHeight(round((60 if cramped else 90) * self._scale))
        self.into_view.setText(shown("Into view" if cramped else "Bring into view  (D)"))
        self.close_button.setText(shown("Close" if cramped else "Close  (Esc)"))
        self._buttons.layout().invalidate()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._share_height()

    def _share_height(self) -> None:
        """Show all words where there is room; else they scroll, in whole lines."""
        line = self.words.fontMetrics().lineSpacing()
        width = self.width() - self._scroll.verticalScrollBar().sizeHint().width()
        wanted = max(self.words.heightForWidth(max(width, 60)), line)
        room = max(self.height() // 4 // line, 2) * line
        self._scroll.setFixedHeight(min(wanted, room))

    def show_waiting(self, title: str) -> None:
        """Say that the layers are being looked through."""
        self._fill(title, told("Looking through the layers …"), ())

    def show_rows(
        self, title: str, in_view: float | None, rows: Sequence[CoverRow], note: str = ""
    ) -> None:
        """Show what lies over a part, and a note such as what was at risk on the way in."""
        if in_view is None:
            words = told("Not reached from behind.")
        elif not rows:
            words = told("Nothing lies over it: {share} in view.", share=percent(in_view))
        else:
            words = told(
                "{share} in view. Depths under the skin, mm; teaching only.", share=percent(in_view)
            )
        self._fill(title, f"{words}\n{note}" if note else words, rows)
        spoken = covers_in_words(title, in_view, rows)
        self.list.setAccessibleDescription(f"{spoken} {note}".strip())

    def _fill(self, title: str, words: str, rows: Sequence[CoverRow]) -> None:
        self.head.setText(title)
        self.words.setText(words)
        self._share_height()
        self.list.clear()
        for row in rows:
            item = QTreeWidgetItem([row.title, percent(row.share), figure(row.depth_mm, ".1f")])
            item.setData(0, _PART, row.part_ids)
            spoken = told(
                "{title}: hides {share}, {mm} mm deep, {detail}",
                title=row.title,
                share=percent(row.share),
                mm=figure(row.depth_mm, ".1f"),
                detail=row.detail,
            )
            for column in range(3):
                item.setToolTip(column, f"{row.title}\n{row.detail}")
            item.setData(0, Qt.ItemDataRole.AccessibleTextRole, spoken)
            for column in (1, 2):
                item.setTextAlignment(
                    column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
                )
            self.list.addTopLevelItem(item)
        if rows:
            self.list.setCurrentItem(self.list.topLevelItem(0))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.close_wanted.emit()
            return
        super().keyPressEvent(event)
