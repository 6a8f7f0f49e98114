"""The pages of a sheet as they will be printed, before they are saved."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QIcon, QImage, QPixmap
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from viewer.state.tongue import told

THUMB_PX = 150
PAGE_DPI = 110.0


def page_pictures(data: bytes, dpi: float = PAGE_DPI) -> list[QImage]:
    """Return every page of a PDF as a picture, as a reader of its own draws it; none for none."""
    if not data:
        return []
    import pypdfium2

    document = pypdfium2.PdfDocument(data)
    try:
        pictures = []
        for page in document:
            pixels = page.render(scale=dpi / 72.0).to_pil().convert("RGB")
            image = QImage(
                pixels.tobytes(),
                pixels.width,
                pixels.height,
                3 * pixels.width,
                QImage.Format.Format_RGB888,
            )
            pictures.append(image.copy())
        return pictures
    finally:
        document.close()


class PagePreview(QDialog):
    """Thumbnails on the left, the chosen page on the right, and the way to save.

    Parameters
    ----------
    data : bytes
        The PDF.

    Signals
    -------
    save_wanted
    """

    save_wanted = Signal()

    def __init__(self, data: bytes, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.data = data
        self.pages: Sequence[QImage] = page_pictures(data)
        self.setWindowTitle("Pages of the lab sheet")
        self.list = QListWidget()
        self.list.setAccessibleName("Pages")
        self.list.setIconSize(QSize(THUMB_PX, round(THUMB_PX * 1.42)))
        self.list.setFixedWidth(THUMB_PX + 60)
        self.page = QLabel()
        self.page.setAlignment(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop)
        scroll = QScrollArea()
        scroll.setWidget(self.page)
        scroll.setWidgetResizable(True)
        scroll.setAccessibleName("The chosen page")
        self.grey = QCheckBox("As a black-and-white printer shows it")
        self.grey.toggled.connect(self._show)
        buttons = QDialogButtonBox()
        self.save = buttons.addButton("Save as…", QDialogButtonBox.ButtonRole.AcceptRole)
        self.save.setDefault(True)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        self.save.clicked.connect(self.save_wanted)
        buttons.rejected.connect(self.reject)
        middle = QHBoxLayout()
        middle.addWidget(self.list)
        middle.addWidget(scroll, 1)
        foot = QHBoxLayout()
        foot.addWidget(self.grey, 1)
        foot.addWidget(buttons)
        layout = QVBoxLayout(self)
        layout.addLayout(middle, 1)
        layout.addLayout(foot)
        for number, picture in enumerate(self.pages, start=1):
            words = told("Page {n} of {count}", n=number, count=len(self.pages))
            item = QListWidgetItem(QIcon(QPixmap.fromImage(picture)), str(number))
            item.setToolTip(words)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, words)
            self.list.addItem(item)
        self.list.currentRowChanged.connect(self._show)
        self.list.setCurrentRow(0)
        room = self.screen().availableSize()
        self.resize(min(1180, room.width() - 60), min(980, room.height() - 80))
        self.list.setFocus()

    def _show(self, *_: object) -> None:
        row = self.list.currentRow()
        if row < 0:
            return
        picture = self.pages[row]
        if self.grey.isChecked():
            picture = picture.convertToFormat(QImage.Format.Format_Grayscale8)
        self.page.setPixmap(QPixmap.fromImage(picture))
        self.page.setAccessibleName(told("Page {n} of {count}", n=row + 1, count=len(self.pages)))
