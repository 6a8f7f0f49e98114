"""Sheets: help with all keys, cautions, about, settings, picture size, pins."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from html import escape
from importlib import metadata

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QPushButton,
    QSlider,
    QSpinBox,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.style import Theme
from viewer.settings import Settings, config_folder, log_path, reset_settings
from viewer.state.actions import help_lines
from viewer.state.spelling import SPELLINGS
from viewer.state.tongue import told
from viewer.state.view_state import LOOKS, Pin
from viewer.talk.presenter import NUMBER_WORDS, PRESENTER_KEYS
from viewer.wording import LANGUAGES, keys_shown, shown

BEGIN = (
    "Pull the <b>handle of the depth rail</b> down: the back peels, stratum by stratum, on the "
    "left, the right or both. Click a <b>band</b> to take one stratum out and to put it back.",
    "The <b>step line</b> under the model holds the dissection in order. It follows what you "
    "peel, and says why a step may not be done yet.",
    "<b>Point</b> at a part to see what it is, <b>click</b> to pick it. Type any name to find one.",
    "<b>Looking</b> (see through, alone, peek) never changes what you have <b>done</b>. The strip "
    "above the model lists what is hidden; <b>A</b> brings all back and one undo returns.",
    "<b>1</b> to <b>8</b> are fixed views; <b>Home</b> returns to the last one. Drag to turn a "
    "little about it, with Shift or the middle button to move, wheel to come closer. Free orbit "
    "is in the View menu.",
    "The body stands, arms a little away from the trunk; a donor lies prone.",
)


def version() -> str:
    """Return the program's version."""
    try:
        return metadata.version("peelback")
    except metadata.PackageNotFoundError:
        return "from source"


class Sheet(QDialog):
    """A dialog with a text and a way out."""

    def __init__(
        self, title: str, html: str, parent: QWidget | None, *, close_words: str = "Close"
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.text = QTextBrowser()
        self.text.setAccessibleName(title)
        self.text.setHtml(html)
        self.text.setOpenLinks(False)
        self.close_button = QPushButton(close_words)
        self.close_button.setProperty("strong", True)
        self.close_button.setDefault(True)
        self.close_button.clicked.connect(self.accept)
        row = QHBoxLayout()
        row.addStretch(1)
        row.addWidget(self.close_button)
        layout = QVBoxLayout(self)
        layout.addWidget(self.text, 1)
        layout.addLayout(row)
        self.row = row
        screen = self.screen().availableSize()
        width = min(780, screen.width() - 80)
        self.text.document().setTextWidth(width - 40)
        tall = round(self.text.document().size().height()) + 90
        self.resize(width, min(tall, 700, screen.height() - 100))


def help_html(theme: Theme) -> str:
    """Return the help sheet; its keys come from the table of actions."""
    begin = "".join(f"<li style='margin-bottom:4px'>{shown(line)}</li>" for line in BEGIN)
    tables = []
    for menu, rows in help_lines():
        body = "".join(
            f"<tr><td style='padding:1px 14px 1px 0; color:{theme.accent}'><b>{_keys_html(keys)}</b>"
            f"</td><td>{escape(shown(title))}</td></tr>"
            for keys, title in rows
        )
        tables.append(f"<h3>{shown(menu)}</h3><table>{body}</table>")
    talk = (
        f"<h3>{told('While presenting')}</h3><table>"
        + "".join(
            f"<tr><td style='padding:1px 14px 1px 0; color:{theme.accent}'><b>{_keys_html(keys)}</b>"
            f"</td><td>{escape(told(words))}</td></tr>"
            for keys, words in (
                (told("0 to 9"), NUMBER_WORDS),
                *((" or ".join(row.keys), row.words) for row in PRESENTER_KEYS),
            )
        )
        + "</table>"
    )
    rail = (
        f"<h3>{told('On the depth rail')}</h3><table>"
        + "".join(
            f"<tr><td style='padding:1px 14px 1px 0; color:{theme.accent}'><b>{keys}</b></td>"
            f"<td>{words}</td></tr>"
            for keys, words in (
                (told("Down, Up"), told("Peel one stratum, or lay one back")),
                (told("Home, End"), told("Whole back; down to the bones")),
                (told("Ctrl+Down, Ctrl+Up"), told("Choose a band")),
                (told("Space"), told("Take the chosen band out, or put it back")),
                (told("Wheel"), told("Peel")),
            )
        )
        + "</table>"
    )
    half = (len(tables) + 1) // 2
    columns = (
        "<table width='100%'><tr><td width='50%' valign='top'>"
        + "".join(tables[:half])
        + "</td><td valign='top'>"
        + "".join(tables[half:])
        + talk
        + rail
        + "</td></tr></table>"
    )
    return (
        f"<h2>{told('How to begin')}</h2><ul>{begin}</ul><h2>{told('Keys')}</h2>{columns}"
        f"<h2>{told('Cautions')}</h2>{_caution_rows(theme)}"
    )


def _keys_html(keys: str) -> str:
    """Return keys, joined by "or" as in the table of actions, as they are called here."""
    return escape(keys_shown(keys))


def _caution_rows(theme: Theme) -> str:
    from meshes.catalogue.plan import cautions

    # What the model may not be used for stands first: it holds for everybody.
    rows = sorted(cautions(), key=lambda caution: caution.id != "model")
    return "".join(
        f"<p style='margin:4px 0'><b style='color:{theme.caution}'>{escape(told(row.title))}.</b> "
        f"{escape(told(row.text))}</p>"
        for row in rows
    )


def cautions_html(theme: Theme) -> str:
    """Return the cautions that stand before everything else."""
    return f"<h2>{told('Before you begin')}</h2>{_caution_rows(theme)}"


def about_html(theme: Theme, sources: Sequence[str]) -> str:
    """Return version, licences and the sources of the catalogue."""
    libraries = []
    for name, licence in (
        ("PySide6-Essentials", "LGPL v3"),
        ("vtk", "BSD 3-clause"),
        ("numpy", "BSD 3-clause"),
        ("scipy", "BSD 3-clause"),
        ("numba", "BSD 2-clause"),
        ("trimesh", "MIT"),
        ("pyvista", "MIT"),
        ("shapely", "BSD 3-clause"),
        ("manifold3d", "Apache 2.0"),
        ("embreex", "MIT; Embree: Apache 2.0"),
        ("pillow", "MIT-CMU"),
        ("platformdirs", "MIT"),
        ("reportlab", "BSD 3-clause"),
    ):
        try:
            libraries.append(f"{name} {metadata.version(name)} ({licence})")
        except metadata.PackageNotFoundError:
            continue
    cited = (
        "".join(f"<li>{escape(s)}</li>" for s in sources)
        or f"<li>{told('The model is not ready.')}</li>"
    )
    return (
        f"<h2>Peelback {escape(version())}</h2>"
        f"<p>{told('A back computed from a few numbers, to be peeled from skin to bone. MIT licence.')}"
        f"</p><p style='color:{theme.caution}'>"
        f"{told('Teaching model: not for needle or surgical guidance.')}</p>"
        f"<p>{told('The program never opens a network connection.')}</p>"
        f"<p>Python {sys.version.split()[0]}. {told('Built on:')} {escape('; '.join(libraries))}.</p>"
        "<p>"
        + told(
            "Inside: three.js in the take-home page (MIT), Open Sans on the lab sheet (Apache 2.0), "
            "the steps of Fast-Quadric-Mesh-Simplification (MIT)."
        )
        + f"</p><p>{told('Settings')}: {escape(str(config_folder()))}<br>"
        f"{told('Log file')}: {escape(str(log_path()))}</p>"
        f"<h3>{told('Sources of the facts')}</h3><ul>{cited}</ul>"
    )


class SettingsSheet(QDialog):
    """Choices that stay.

    Signals
    -------
    changed : Settings
        At once, so that the effect is seen.
    """

    changed = Signal(object)

    def __init__(self, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Settings")
        self._settings = settings
        self._quiet = True
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        self.theme = QComboBox()
        self.theme.addItem("Light", "light")
        self.theme.addItem("Dark", "dark")
        self.scale = QSlider(Qt.Orientation.Horizontal)
        self.scale.setRange(100, 200)
        self.scale.setSingleStep(10)
        self.scale.setPageStep(25)
        self.scale_words = QLabel()
        scale_row = QHBoxLayout()
        scale_row.addWidget(self.scale, 1)
        scale_row.addWidget(self.scale_words)
        self.look = QComboBox()
        for name, title in LOOKS.items():
            self.look.addItem(title, name)
        self.detail = QComboBox()
        self.detail.addItem("Full", "full")
        self.detail.addItem("Preview (quicker, coarser)", "preview")
        self.latin = QCheckBox("Latin name first")
        self.spelling = QComboBox()
        for name, title in SPELLINGS.items():
            self.spelling.addItem(title, name)
        self.language = QComboBox()
        for name, title in LANGUAGES.items():
            self.language.addItem(title, name)
        self.reopen = QCheckBox("Begin where the last session ended")
        self.calm = QCheckBox("No movement: views change at once")
        for words, field in (
            ("&Window", self.theme),
            ("&Look of tissues", self.look),
            ("&Detail of the model", self.detail),
            ("&Spelling", self.spelling),
            ("L&anguage", self.language),
        ):
            form.addRow(words, field)
        label = QLabel("L&etters")
        label.setBuddy(self.scale)
        form.insertRow(1, label, scale_row)
        for box in (self.latin, self.reopen, self.calm):
            form.addRow("", box)
        for widget, name in (
            (self.theme, "Window"),
            (self.scale, "Letters, per cent"),
            (self.look, "Look of tissues"),
            (self.detail, "Detail of the model"),
            (self.spelling, "Spelling"),
            (self.language, "Language"),
        ):
            widget.setAccessibleName(name)
        note = QLabel(
            told("Detail takes effect at the next start.")
            + "\n"
            + told("Kept in {file}", file=config_folder() / "settings.json")
        )
        note.setProperty("soft", True)
        note.setWordWrap(True)
        buttons = QDialogButtonBox()
        self.reset_button = buttons.addButton("Reset all", QDialogButtonBox.ButtonRole.ResetRole)
        close = buttons.addButton("Close", QDialogButtonBox.ButtonRole.AcceptRole)
        close.setDefault(True)
        buttons.accepted.connect(self.accept)
        self.reset_button.clicked.connect(self._reset)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(note)
        layout.addWidget(buttons)
        self._fill()
        for combo in (self.theme, self.look, self.detail, self.spelling, self.language):
            combo.currentIndexChanged.connect(self._tell)
        for box in (self.latin, self.reopen, self.calm):
            box.toggled.connect(self._tell)
        self.scale.valueChanged.connect(self._tell)
        self._quiet = False
        self.setMinimumWidth(460)

    def _fill(self) -> None:
        self._quiet = True
        s = self._settings
        for combo, value in (
            (self.theme, s.theme),
            (self.look, s.look),
            (self.detail, s.detail),
            (self.spelling, s.spelling),
            (self.language, s.language),
        ):
            combo.setCurrentIndex(combo.findData(value))
        self.scale.setValue(round(s.font_scale * 100))
        self.scale_words.setText(f"{round(s.font_scale * 100)} %")
        self.latin.setChecked(s.latin_first)
        self.reopen.setChecked(s.reopen)
        self.calm.setChecked(s.calm)
        self._quiet = False

    def _tell(self) -> None:
        if self._quiet:
            return
        percent = round(self.scale.value() / 5) * 5
        self.scale_words.setText(f"{percent} %")
        self._settings = replace(
            self._settings,
            theme=self.theme.currentData(),
            look=self.look.currentData(),
            detail=self.detail.currentData(),
            spelling=self.spelling.currentData(),
            language=self.language.currentData(),
            font_scale=percent / 100,
            latin_first=self.latin.isChecked(),
            reopen=self.reopen.isChecked(),
            calm=self.calm.isChecked(),
        )
        self.changed.emit(self._settings)

    def _reset(self) -> None:
        self._settings = reset_settings(self._settings)
        self._fill()
        self.changed.emit(self._settings)


class PictureSheet(QDialog):
    """Asks for the size of a picture."""

    PRESETS = (
        ("Screen, 1920 × 1080", 1920, 1080),
        ("Slide, 1600 × 1200", 1600, 1200),
        ("Portrait page, 2480 × 3508", 2480, 3508),
        ("Large, 3840 × 2160", 3840, 2160),
    )

    def __init__(self, width: int, height: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Save picture")
        self.width_box, self.height_box = QSpinBox(), QSpinBox()
        for box, value, name in (
            (self.width_box, width, "Width in pixels"),
            (self.height_box, height, "Height in pixels"),
        ):
            box.setRange(64, 8192)
            box.setValue(value)
            box.setSuffix(" px")
            box.setAccessibleName(name)
        preset = QComboBox()
        preset.setAccessibleName("Usual sizes")
        preset.addItem("Own size", None)
        for words, w, h in self.PRESETS:
            preset.addItem(words, (w, h))
            if (w, h) == (width, height):
                preset.setCurrentIndex(preset.count() - 1)
        preset.currentIndexChanged.connect(lambda _: self._take(preset.currentData()))
        form = QFormLayout()
        form.addRow("Usual sizes", preset)
        form.addRow("Width", self.width_box)
        form.addRow("Height", self.height_box)
        buttons = QDialogButtonBox()
        save = buttons.addButton("Save as…", QDialogButtonBox.ButtonRole.AcceptRole)
        save.setDefault(True)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(buttons)

    def _take(self, size: tuple[int, int] | None) -> None:
        if size:
            self.width_box.setValue(size[0])
            self.height_box.setValue(size[1])

    @property
    def size_wanted(self) -> tuple[int, int]:
        """Width and height, pixels."""
        return self.width_box.value(), self.height_box.value()


class PinSheet(QDialog):
    """The notes on the model: read, change, take out, go there.

    Signals
    -------
    pin_changed : int, str
        Index and new words; empty words take the pin out.
    pin_wanted : int
        Go there.
    """

    pin_changed = Signal(int, str)
    pin_wanted = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Pins and notes")
        self.list = QListWidget()
        self.list.setAccessibleName("Pins")
        self.words = QLineEdit()
        self.words.setAccessibleName("Words of the pin")
        self.words.setPlaceholderText("No pins yet: pick a place and press Ctrl+P")
        change = QPushButton("Change")
        remove = QPushButton("Take out")
        go = QPushButton("Go there")
        row = QHBoxLayout()
        for button in (change, remove, go):
            button.setAutoDefault(False)
            row.addWidget(button)
        row.addStretch(1)
        close = QPushButton("Close")
        close.clicked.connect(self.accept)
        row.addWidget(close)
        layout = QVBoxLayout(self)
        layout.addWidget(self.list, 1)
        layout.addWidget(self.words)
        layout.addLayout(row)
        self.list.currentRowChanged.connect(self._show_words)
        self._pins: tuple[Pin, ...] = ()
        change.clicked.connect(lambda: self._emit(self.words.text().strip()))
        self.words.returnPressed.connect(lambda: self._emit(self.words.text().strip()))
        remove.clicked.connect(lambda: self._emit(""))
        go.clicked.connect(
            lambda: self.list.currentRow() >= 0 and self.pin_wanted.emit(self.list.currentRow())
        )
        self.resize(460, 320)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_words()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._fit_words()

    def _fit_words(self) -> None:
        """Leave room for the words that stand in an empty line."""
        words = self.words.placeholderText()
        wanted = self.words.fontMetrics().horizontalAdvance(words) + 40
        self.words.setMinimumWidth(min(wanted, self.screen().availableSize().width() - 60))

    def show_pins(self, pins: Sequence[Pin], titles: dict[str, str]) -> None:
        """List the pins of the present state."""
        row = self.list.currentRow()
        self._pins = tuple(pins)
        self.list.clear()
        for pin in pins:
            where = titles.get(pin.part_id, pin.part_id)
            self.list.addItem(f"{pin.text}  –  {where}" if where else pin.text)
        if pins:
            self.list.setCurrentRow(min(max(row, 0), len(pins) - 1))
        else:
            self.words.clear()

    def _show_words(self, row: int) -> None:
        if 0 <= row < len(self._pins):
            self.words.setText(self._pins[row].text)

    def _emit(self, words: str) -> None:
        row = self.list.currentRow()
        if 0 <= row < len(self._pins) and words != self._pins[row].text:
            self.pin_changed.emit(row, words)
