"""The section beside the model: where the plane stands, the flat picture, the areas."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
import shapely
from PySide6.QtCore import QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDockWidget,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QSizePolicy,
    QSlider,
    QSplitter,
    QToolButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from meshes.questions.loose_tissue import loose_tissue
from meshes.questions.section import Outlines, Region
from viewer.panels.flow import FlowLayout
from viewer.panels.style import LIGHT, Theme, font
from viewer.print.section_page import letters_measure, paint_section, rings_path, tinted
from viewer.scene import looks
from viewer.scene.section_picture import (
    EDGE,
    GROUND,
    PAPER,
    SectionLayout,
    letter_px,
    section_layout,
)
from viewer.state.measuring import TEACHING_NOTE
from viewer.state.section_plane import KINDS, SectionPlane, area_words
from viewer.state.tongue import figure, told

_ID = Qt.ItemDataRole.UserRole
LABEL_AFTER_MS = 160
ZOOM_LIMITS = (1.0, 40.0)
ZOOM_STEP = 1.25


class FlatPicture(QWidget):
    """The cut as a flat picture that can be zoomed and panned.

    While the plane moves it paints raw outlines; once it rests it gets regions and labels.

    Signals
    -------
    hovered : str
        Id of the part under the pointer, "" for none.
    picked : str, bool
        A click; the flag tells that Ctrl or Shift was held.
    """

    hovered = Signal(str)
    picked = Signal(str, bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(180, 140)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Flat picture of the section")
        self._theme: Theme = LIGHT
        self._scale = 1.0
        self._model = None
        self._look = "by_kind"
        self._outlines: Outlines | None = None
        self._strips = np.zeros((0, 4))
        self._loose: Any = None
        self._regions: Sequence[Region] = ()
        self._names: Mapping[str, str] = {}
        self._title = ""
        self._colours: dict[tuple[str, str], QColor] = {}
        self._layout: SectionLayout | None = None
        self._fit_scale = 1.0
        self._lit: frozenset[str] = frozenset()
        self._hovered = ""
        self.zoom = 1.0
        self.centre: np.ndarray | None = None
        self._press: QPointF | None = None
        self._dragged = False
        self._label_timer = QTimer(self, singleShot=True, interval=LABEL_AFTER_MS)
        self._label_timer.timeout.connect(self._lay_out)

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme, self._scale = theme, scale
        self._lay_out()

    def show_moving(self, model, outlines: Outlines, strips: np.ndarray, look: str) -> None:
        """Paint a cut whose plane is on its way: no labels, no areas."""
        self._model, self._outlines, self._look = model, outlines, look
        self._strips = strips
        self._regions, self._layout = (), None
        self._label_timer.stop()
        self.update()

    def show_resting(
        self, model, outlines: Outlines, regions, names, title: str, look: str
    ) -> None:
        """Paint a cut whose plane rests, with its labels."""
        self._model, self._outlines, self._look = model, outlines, look
        self._regions, self._names, self._title = regions, names, title
        self._loose = loose_tissue(model, regions)
        self._lay_out()

    def show_picked(self, lit, hovered: str) -> None:
        """Tint picked parts and the one under the pointer."""
        if (frozenset(lit), hovered) != (self._lit, self._hovered):
            self._lit, self._hovered = frozenset(lit), hovered
            self.update()

    @property
    def layout_shown(self) -> SectionLayout | None:
        """What is painted while the plane rests."""
        return self._layout

    def layout_for(
        self, size: tuple[int, int], theme: str = "light", page: bool = False
    ) -> SectionLayout | None:
        """Return the present view of the cut at another size, for a file or for a page of a PDF."""
        if self._outlines is None:
            return None
        return section_layout(
            self._model, self._outlines.plane, self._regions, size, self._names, self._title,
            self._look, theme, zoom=self.zoom, centre=self.centre, loose=self._loose,
            measure=letters_measure(letter_px(size[1])) if page else None,
        )  # fmt: skip

    # Zooming and panning ----------------------------------------------------------------

    def fit(self) -> None:
        """Show the whole cut."""
        self.zoom, self.centre = 1.0, None
        self._lay_out()

    def zoom_by(self, factor: float, at: QPointF | None = None) -> None:
        """Enlarge by a factor about a place of the widget (its middle by default)."""
        at = at or QPointF(self.width() / 2, self.height() / 2)
        under = self.place_at(at)
        self.zoom = float(np.clip(self.zoom * factor, *ZOOM_LIMITS))
        if self.zoom == 1.0:
            self.centre = None
        elif under is not None:
            self.centre = self._middle()
            self.centre = self.centre + under - self.place_at(at)
        self._relabel()

    def pan(self, dx: float, dy: float) -> None:
        """Shift the picture by pixels; only while it is enlarged."""
        if self.zoom > 1.0:
            self.centre = self._middle() + np.array([-dx, dy]) / self._px_per_mm()
            self._relabel()

    def _relabel(self) -> None:
        self._layout = None
        self._label_timer.start()
        self.update()

    def _bounds(self) -> np.ndarray:
        bounds = self._outlines.bounds() if self._outlines is not None else None
        return np.array([[-50.0, -50.0], [50.0, 50.0]]) if bounds is None else bounds

    def _middle(self) -> np.ndarray:
        return self._bounds().mean(axis=0) if self.centre is None else self.centre

    def _px_per_mm(self) -> float:
        return self._fit_scale * self.zoom

    def _font_px(self) -> int:
        return round(11.5 * self._scale)

    def _ground_middle(self) -> QPointF:
        top, bottom = 3.2 * self._font_px(), 4.2 * self._font_px()
        return QPointF(self.width() / 2, top + (self.height() - top - bottom) / 2)

    def place_at(self, at: QPointF) -> np.ndarray | None:
        """Return the place of the cut under a point of the widget, (2,) mm."""
        if self._outlines is None:
            return None
        middle = self._ground_middle()
        away = np.array([at.x() - middle.x(), middle.y() - at.y()])
        return self._middle() + away / self._px_per_mm()

    def pixel_of(self, place) -> QPointF:
        """Return the point of the widget over a place of the cut, (2,) mm."""
        away = (np.asarray(place, float) - self._middle()) * self._px_per_mm()
        middle = self._ground_middle()
        return QPointF(middle.x() + away[0], middle.y() - away[1])

    def part_at(self, at: QPointF) -> str:
        """Return the id of the part under a point of the widget, "" for none."""
        place = self.place_at(at)
        return (self._outlines.owner_at(place) or "") if place is not None else ""

    # Painting ---------------------------------------------------------------------------

    def _lay_out(self) -> None:
        if self._outlines is None or not self._regions or self.width() < 40:
            self.update()
            return
        self._layout = section_layout(
            self._model,
            self._outlines.plane,
            self._regions,
            (self.width(), self.height()),
            self._names,
            self._title,
            self._look,
            self._theme.name,
            density=min(0.9, self.height() / (48 * 1.5 * self._font_px())),
            font_px=self._font_px(),
            zoom=self.zoom,
            centre=self.centre,
            measure=letters_measure(self._font_px()),
            loose=self._loose,
        )
        self._fit_scale = self._layout.px_per_mm / self.zoom
        self.update()

    def resizeEvent(self, event) -> None:
        super().resizeEvent(event)
        self._relabel()

    def paintEvent(self, _event) -> None:
        painter = QPainter(self)
        if self._layout is not None and self._layout.size == (self.width(), self.height()):
            paint_section(painter, self._layout, self._lit, self._hovered, caution=False)
        else:
            self._paint_outlines(painter)
        if self.hasFocus():
            painter.setPen(self.palette().highlight().color())
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))
        painter.end()

    def _paint_outlines(self, painter: QPainter) -> None:
        painter.fillRect(self.rect(), _colour(PAPER[self._theme.name]))
        if self._outlines is None:
            return
        middle, scale, centre = self._ground_middle(), self._px_per_mm(), self._middle()
        shift = np.array([middle.x(), middle.y()])
        ends = (self._strips.reshape(-1, 2, 2) - centre) * (scale, -scale) + shift
        ground = _colour(GROUND[self._theme.name])
        # Their sides on whole pixels, so that no line shows between two.
        for (left, below), (right, above) in np.rint(ends).astype(int).tolist():
            painter.fillRect(left, above, right - left, below - above, ground)
        painter.setPen(_colour(EDGE[self._theme.name]))
        for part_id, rings in zip(self._outlines.ids, self._outlines.rings, strict=True):
            key = (part_id, self._look)
            if key not in self._colours:
                self._colours[key] = QColor(
                    *looks.section_colour(self._model.parts[part_id], self._look)
                )
            colour = self._colours[key]
            lit = part_id in self._lit
            painter.setBrush(tinted(colour.getRgb()[:3], 0.55) if lit else colour)
            painter.drawPath(
                rings_path([(ring - centre) * (scale, -scale) + shift for ring in rings])
            )

    # Mouse and keys ---------------------------------------------------------------------

    def wheelEvent(self, event) -> None:
        steps = event.angleDelta().y() / 120.0
        if steps:
            self.zoom_by(ZOOM_STEP**steps, event.position())
        event.accept()

    def mousePressEvent(self, event) -> None:
        self._press, self._dragged = event.position(), False

    def mouseMoveEvent(self, event) -> None:
        at = event.position()
        if self._press is None:
            self.hovered.emit(self.part_at(at))
            return
        step = at - self._press
        if self._dragged or step.manhattanLength() > 4:
            self._dragged = True
            self._press = at
            self.pan(step.x(), step.y())

    def mouseReleaseEvent(self, event) -> None:
        if self._press is not None and not self._dragged:
            more = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
            self.picked.emit(self.part_at(event.position()), bool(event.modifiers() & more))
        self._press = None

    def mouseDoubleClickEvent(self, _event) -> None:
        self.fit()

    def leaveEvent(self, event) -> None:
        self.hovered.emit("")
        super().leaveEvent(event)

    def keyPressEvent(self, event) -> None:
        step = 30
        moves = {
            Qt.Key.Key_Left: (step, 0),
            Qt.Key.Key_Right: (-step, 0),
            Qt.Key.Key_Up: (0, step),
            Qt.Key.Key_Down: (0, -step),
        }
        if (
            event.modifiers()
            & ~Qt.KeyboardModifier.KeypadModifier
            & ~Qt.KeyboardModifier.ShiftModifier
        ):
            super().keyPressEvent(event)
        elif event.key() in moves:
            self.pan(*moves[event.key()])
        elif event.key() in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom_by(ZOOM_STEP)
        elif event.key() == Qt.Key.Key_Minus:
            self.zoom_by(1 / ZOOM_STEP)
        elif event.key() == Qt.Key.Key_0:
            self.fit()
        else:
            super().keyPressEvent(event)

    def event(self, event) -> bool:
        # The window's own keys would take arrows, plus and minus away from a focused picture.
        if event.type() == event.Type.ShortcutOverride and self.hasFocus():
            plain = not event.modifiers() & ~(
                Qt.KeyboardModifier.KeypadModifier | Qt.KeyboardModifier.ShiftModifier
            )
            if plain and event.key() in (
                Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down,
                Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Minus, Qt.Key.Key_0,
            ):  # fmt: skip
                event.accept()
                return True
        return super().event(event)


class SectionDock(QDockWidget):
    """Everything about the section that stands beside the model.

    Signals
    -------
    kind_wanted : str
    position_wanted : float, bool
        mm; the flag tells that the slider is being dragged.
    tilt_wanted : float, float, bool
    drag_ended
    flag_wanted : str, bool
        A yes-or-no field of ``SectionPlane``.
    step_wanted : int
    face_wanted, save_wanted, closed
    """

    kind_wanted = Signal(str)
    position_wanted = Signal(float, bool)
    tilt_wanted = Signal(float, float, bool)
    drag_ended = Signal()
    flag_wanted = Signal(str, bool)
    step_wanted = Signal(int)
    face_wanted = Signal()
    save_wanted = Signal()
    closed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Section", parent)
        self.setObjectName("section dock")
        self._quiet = False
        self._heads: list[QWidget] = []
        self.kind = QComboBox()
        self.kind.setAccessibleName("Plane of the section")
        for name, title in KINDS.items():
            self.kind.addItem(title, name)
        self.where = QLabel()
        self.where.setAccessibleName("Where the section lies")
        self.where.setWordWrap(True)
        self.position = QSlider(Qt.Orientation.Horizontal)
        self.position.setAccessibleName("Position of the section, mm")
        self.position.setSingleStep(1)
        self.position.setPageStep(10)
        self.down, self.up = QToolButton(), QToolButton()
        for button, words, text in (
            (self.down, "One level down (Alt+Down)", "▼"),
            (self.up, "One level up (Alt+Up)", "▲"),
        ):
            button.setText(text)
            button.setToolTip(words)
            button.setAccessibleName(words)
        self.nod, self.lean = QSlider(Qt.Orientation.Horizontal), QSlider(Qt.Orientation.Horizontal)
        self._tilt_words = [QLabel(), QLabel()]
        self._tilt_names = [QLabel("Tilt back and forth"), QLabel("Tilt to the side")]
        for slider, words in ((self.nod, "Tilt back and forth"), (self.lean, "Tilt to the side")):
            slider.setRange(-90, 90)
            slider.setPageStep(5)
            slider.setAccessibleName(f"{words}, degrees")
            slider.setToolTip(words)
        self.near = QCheckBox("Keep the other half")
        self.whole = QCheckBox("Cut the whole")
        self.whole.setToolTip("Off: cuts what the dissection has left")
        self.imaged = QCheckBox("As images lie")
        self.imaged.setToolTip("Front up, the subject's left on the viewer's right")
        self.picture = FlatPicture()
        self.areas = QTreeWidget()
        self.areas.setColumnCount(2)
        self.areas.setHeaderLabels(["Part", "cm²"])
        self.areas.setRootIsDecorated(False)
        self.areas.setUniformRowHeights(True)
        self.areas.setMouseTracking(True)
        self.areas.setAccessibleName("Areas of the section in square centimetres")
        self.areas.header().setStretchLastSection(False)
        self.areas.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.areas.header().setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
        self.total = QLabel()
        self.total.setProperty("soft", True)
        self.total.setWordWrap(True)
        self.face_button = QPushButton("Face the cut")
        self.fit_button = QPushButton("Fit")
        self.fit_button.setToolTip("Whole section in the picture: 0, or a double click")
        self.save_button = QPushButton("Save…")
        self.save_button.setToolTip("SVG, PDF or PNG, as it is shown (Alt+S)")
        self.note = QLabel(TEACHING_NOTE)
        self.note.setProperty("caution", True)
        self.note.setWordWrap(True)
        self._arrange()
        self._connect()

    def _arrange(self) -> None:
        body = QFrame()
        body.setObjectName("side")
        box = QVBoxLayout(body)
        box.setContentsMargins(8, 8, 8, 6)
        box.setSpacing(5)
        first = QHBoxLayout()
        first.addWidget(self.kind)
        first.addWidget(self.where, 1)
        first.addWidget(self.down)
        first.addWidget(self.up)
        box.addLayout(first)
        box.addWidget(self.position)
        self.tilts = QWidget()
        grid = QGridLayout(self.tilts)
        grid.setContentsMargins(0, 0, 0, 0)
        for row, slider in enumerate((self.nod, self.lean)):
            self._tilt_names[row].setBuddy(slider)
            grid.addWidget(self._tilt_names[row], row, 0)
            grid.addWidget(slider, row, 1)
            grid.addWidget(self._tilt_words[row], row, 2)
        box.addWidget(self.tilts)
        flags = QWidget()
        flow = FlowLayout(flags, spacing=8)
        flow.setContentsMargins(0, 0, 0, 0)
        for widget in (self.near, self.whole, self.imaged):
            flow.addWidget(widget)
        box.addWidget(flags)
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.addWidget(self.picture)
        lower = QWidget()
        under = QVBoxLayout(lower)
        under.setContentsMargins(0, 0, 0, 0)
        under.setSpacing(4)
        under.addWidget(self.areas, 1)
        under.addWidget(self.total)
        self.split.addWidget(lower)
        self.split.setChildrenCollapsible(False)
        self.split.setStretchFactor(0, 3)
        self.split.setStretchFactor(1, 2)
        box.addWidget(self.split, 1)
        buttons = QWidget()
        flow = FlowLayout(buttons, spacing=6)
        flow.setContentsMargins(0, 0, 0, 0)
        for button in (self.face_button, self.fit_button, self.save_button):
            flow.addWidget(button)
        box.addWidget(buttons)
        box.addWidget(self.note)
        self.setWidget(body)

    def _connect(self) -> None:
        self.kind.activated.connect(lambda _: self.kind_wanted.emit(self.kind.currentData()))
        self.position.valueChanged.connect(self._tell_position)
        self.down.clicked.connect(lambda: self.step_wanted.emit(-1))
        self.up.clicked.connect(lambda: self.step_wanted.emit(1))
        for slider in (self.nod, self.lean):
            slider.valueChanged.connect(self._tell_tilt)
        for slider in (self.position, self.nod, self.lean):
            slider.sliderReleased.connect(self.drag_ended)
        for box, name in (
            (self.near, "near_half"),
            (self.whole, "whole"),
            (self.imaged, "as_imaged"),
        ):
            box.clicked.connect(lambda on, n=name: self.flag_wanted.emit(n, on))
        self.face_button.clicked.connect(self.face_wanted)
        self.fit_button.clicked.connect(self.picture.fit)
        self.save_button.clicked.connect(self.save_wanted)
        self.areas.itemEntered.connect(lambda item, _: self.picture.hovered.emit(item.data(0, _ID)))
        self.areas.itemSelectionChanged.connect(self._tell_row)

    def closeEvent(self, event) -> None:
        super().closeEvent(event)
        self.closed.emit()

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        for widget in (
            self, self.kind, self.near, self.whole, self.imaged, self.areas, self.areas.header(),
            self.face_button, self.fit_button, self.save_button, self.down, self.up,
        ):  # fmt: skip
            widget.setFont(font(scale, 0.95))
        self.where.setFont(font(scale, 1.05, bold=True))
        for label in (self.total, self.note, *self._tilt_words, *self._tilt_names):
            label.setFont(font(scale, 0.88))
        self.picture.set_dress(theme, scale)

    def show_plane(self, section: SectionPlane, words: str, reach: tuple[float, float]) -> None:
        """Show where the plane stands, without telling anybody."""
        self._quiet = True
        self.kind.setCurrentIndex(self.kind.findData(section.kind))
        self.where.setText(words)
        self.position.setRange(int(np.floor(reach[0])), int(np.ceil(reach[1])))
        if not self.position.isSliderDown():
            self.position.setValue(round(section.position_mm))
        self.tilts.setVisible(section.kind == "free")
        for slider, label, degrees in zip(
            (self.nod, self.lean), self._tilt_words, section.tilt_deg, strict=True
        ):
            if not slider.isSliderDown():
                slider.setValue(round(degrees))
            label.setText(f"{degrees:.0f}°")
        other = SectionPlane(kind=section.kind, near_half=True).kept_words
        self.near.setText(told("Keep the {half}", half=told(other)))
        self.near.setChecked(section.near_half)
        self.whole.setChecked(section.whole)
        self.imaged.setChecked(section.as_imaged)
        self.imaged.setEnabled(section.kind in ("transverse", "free"))
        self._quiet = False

    def show_areas(self, regions: Sequence[Region], titles: Mapping[str, str]) -> None:
        """List the regions, largest first."""
        self._quiet = True
        self.areas.clear()
        for region in regions:
            title = titles.get(region.part_id, region.part_id)
            item = QTreeWidgetItem(self.areas, [title, area_words(region.area_cm2)])
            item.setData(0, _ID, region.part_id)
            item.setToolTip(0, title)
            item.setTextAlignment(1, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        total = sum(region.area_cm2 for region in regions)
        count = len(regions)
        self.total.setText(
            told("{count} parts, {area} cm² together", count=count, area=figure(total, ".1f"))
            if count
            else told("Nothing is cut")
        )
        self._quiet = False

    def show_picked(self, lit, hovered: str) -> None:
        """Tint and mark picked parts and the one under the pointer."""
        self.picture.show_picked(lit, hovered)
        lit = set(lit)
        self._quiet = True
        for k in range(self.areas.topLevelItemCount()):
            item = self.areas.topLevelItem(k)
            wanted = item.data(0, _ID) in lit
            if item.isSelected() != wanted:
                item.setSelected(wanted)
                if wanted:
                    self.areas.scrollToItem(item)
        self._quiet = False

    def _tell_position(self, value: int) -> None:
        if not self._quiet:
            self.position_wanted.emit(float(value), self.position.isSliderDown())

    def _tell_tilt(self) -> None:
        if not self._quiet:
            down = self.nod.isSliderDown() or self.lean.isSliderDown()
            self.tilt_wanted.emit(float(self.nod.value()), float(self.lean.value()), down)

    def _tell_row(self) -> None:
        items = self.areas.selectedItems()
        if not self._quiet and items:
            self.picture.picked.emit(items[-1].data(0, _ID), False)


def _colour(rgb):
    return QColor(*rgb)


def region_middle(region: Region) -> np.ndarray:
    """Return a place well inside the largest piece of a region, (2,) mm."""
    largest = max(region.polygons.geoms, key=lambda p: p.area)
    return np.array(shapely.maximum_inscribed_circle(largest, 0.5).coords[0])
