"""Before presenting: cautions, which screen, and whether the last row can read it."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QDoubleSpinBox,
    QFormLayout,
    QLabel,
    QPushButton,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.caption_band import cap_share
from viewer.panels.style import THEMES, Theme
from viewer.scene import looks, overlay
from viewer.state.tongue import told
from viewer.talk.room import (
    RANGES,
    Finding,
    Room,
    check_contrast,
    check_letters,
)

LIGHTS = (
    ("Dark hall", 0.002),
    ("Dimmed", 0.01),
    ("Lights on", 0.05),
    ("Daylight", 0.15),
)
"""Stray light as a share of the projector's white; common practice, no source."""

CAUTIONS = (
    "Teaching model: never for needle or surgical guidance. Say so in the hall.",
    "The model stands; a donor lies prone, and the shoulder blade then sits elsewhere.",
    "Nothing of a donor is shown. Local rules come first.",
)


def hex_colour(rgb: tuple[float, ...], most: float = 1.0) -> str:
    """Return "#rrggbb" of a colour 0..``most``."""
    return "#" + "".join(f"{round(255 * c / most):02x}" for c in rgb[:3])


def room_findings(
    room: Room, band_px: float, label_px: float, theme: Theme, stray: float
) -> list[Finding]:
    """Return what the room check says.

    Parameters
    ----------
    band_px, label_px : float
        Letter sizes (em) of the words under the picture and of the labels in it.
    """
    ground = hex_colour(looks.BACKGROUNDS[theme.name])
    ink = hex_colour(overlay.INK[theme.name], 255.0)
    label_cap = overlay.capital_share()
    return [
        check_letters(room, told("Title and line"), band_px * cap_share()),
        check_letters(room, told("Labels"), label_px * label_cap),
        check_contrast(told("Title and line"), theme.text, theme.panel, large=False, stray=stray),
        check_contrast(told("Part pointed at"), theme.accent, theme.panel, large=True, stray=stray),
        check_contrast(told("Labels"), ink, ground, large=False, stray=stray),
    ]


class RoomSheet(QDialog):
    """Asks about the hall and says what it means.

    Signals
    -------
    changed : float, float, float
        Distance of the last row (m), height of the picture (m), stray light (share).
    rehearse_wanted
        Look through all scenes.
    """

    changed = Signal(float, float, float)
    rehearse_wanted = Signal()

    def __init__(
        self,
        distance_m: float,
        height_m: float,
        light: float,
        theme: str,
        own_place: QRect,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Before presenting")
        self._theme = THEMES[theme]
        self.distance, self.height_box = QDoubleSpinBox(), QDoubleSpinBox()
        for box, value, name, field in (
            (self.distance, distance_m, "Distance of the last row, metres", "distance_m"),
            (self.height_box, height_m, "Height of the picture, metres", "height_m"),
        ):
            box.setRange(*RANGES[field])
            box.setDecimals(1)
            box.setSingleStep(0.5 if field == "distance_m" else 0.1)
            box.setSuffix(" m")
            box.setValue(value)
            box.setAccessibleName(name)
            box.valueChanged.connect(self._tell)
        self.light = QComboBox()
        self.light.setAccessibleName("Light in the hall")
        for words, share in LIGHTS:
            self.light.addItem(words, share)
        self.light.setCurrentIndex(min(range(len(LIGHTS)), key=lambda k: abs(LIGHTS[k][1] - light)))
        self.light.currentIndexChanged.connect(self._tell)
        self.screens = QComboBox()
        self.screens.setAccessibleName("Screen of the hall")
        self._places = [(s.geometry(), s.devicePixelRatio()) for s in QGuiApplication.screens()]
        for k, (place, _) in enumerate(self._places, start=1):
            own = told(", this one") if place == own_place else ""
            self.screens.addItem(f"{k}: {place.width()} × {place.height()}{own}", k - 1)
        others = [k for k, (place, _) in enumerate(self._places) if place != own_place]
        self.screens.setCurrentIndex(others[0] if others else 0)
        self.screens.currentIndexChanged.connect(self._tell)
        form = QFormLayout()
        form.addRow("&Last row", self.distance)
        form.addRow("Picture &height", self.height_box)
        form.addRow("L&ight", self.light)
        form.addRow("&Screen of the hall", self.screens)
        self.text = QTextBrowser()
        self.text.setAccessibleName("Room check")
        self.rehearse = QPushButton("Look through all scenes")
        self.rehearse.setAutoDefault(False)
        self.rehearse.clicked.connect(self.rehearse_wanted)
        buttons = QDialogButtonBox()
        self.present = buttons.addButton("Present", QDialogButtonBox.ButtonRole.AcceptRole)
        self.present.setProperty("strong", True)
        self.present.setDefault(True)
        buttons.addButton("Not now", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.addButton(self.rehearse, QDialogButtonBox.ButtonRole.ActionRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        note = QLabel(
            "Letters: ISO 9241-3 asks for 16 arc minutes, 20 to 22 are better. Contrast: WCAG 2.2."
        )
        note.setProperty("soft", True)
        note.setWordWrap(True)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(self.text, 1)
        layout.addWidget(note)
        layout.addWidget(buttons)
        self.found: list[str] = []
        self._tell()
        screen = self.screen().availableSize()
        self.resize(min(720, screen.width() - 60), min(640, screen.height() - 80))
        self.present.setFocus()

    @property
    def chosen_place(self) -> QRect:
        """The geometry of the screen of the hall."""
        return self._places[self.screens.currentData()][0]

    @property
    def room(self) -> Room:
        """The hall as it was told."""
        place, ratio = self._places[self.screens.currentData()]
        lines = max(round(place.height() * ratio), 200)
        return Room(self.distance.value(), self.height_box.value(), lines)

    def findings(self) -> list[Finding]:
        """Return what the room check says now."""
        from viewer.panels.presenting import letter_sizes

        room = self.room
        band, labels = letter_sizes(room, cap_share())
        return room_findings(room, band, labels, self._theme, self.light.currentData())

    def show_scenes(self, lines: list[str]) -> None:
        """Say what was found when all scenes were looked through."""
        self.found = lines
        self._tell()

    def _tell(self) -> None:
        self.changed.emit(self.distance.value(), self.height_box.value(), self.light.currentData())
        rows = "".join(
            f"<li>{'✓' if f.good else '✗ '} "
            + (escape(f.words) if f.good else f"<b>{escape(f.words)}</b>")
            + "</li>"
            for f in self.findings()
        )
        scenes = "".join(f"<li>{escape(words)}</li>" for words in self.found)
        cautions = "".join(f"<li>{escape(told(words))}</li>" for words in CAUTIONS)
        self.text.setHtml(
            f"<h3>{told('Cautions')}</h3><ul>{cautions}</ul>"
            f"<h3>{told('Room')}</h3><ul>{rows}</ul>"
            + (f"<h3>{told('Scenes')}</h3><ul>{scenes}</ul>" if scenes else "")
            + f"<h3>{told('Keys')}</h3><p>"
            + told(
                "Page Down or → next, Page Up or ← before, number: scene, B or . blank, D pen, "
                "C clear, S spotlight, R back to the scene, Esc end. All in Help."
            )
            + "</p>"
        )

    def keyPressEvent(self, event) -> None:
        # A clicker's start key goes on from here.
        if event.key() == Qt.Key.Key_F5:
            self.accept()
            return
        super().keyPressEvent(event)
