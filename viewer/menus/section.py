"""The window's commands for the section, and how plane, picture and areas follow the state."""

from __future__ import annotations

import logging
import threading
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QFileDialog, QMessageBox

from meshes.errors import PeelbackError
from meshes.export import write_bytes
from meshes.questions.stations import Station, next_station, reach, station_words, stations
from viewer.building import GrowingModel
from viewer.memory import give_back
from viewer.menus.refusal import unwritten
from viewer.state.places import plane_in_words
from viewer.state.section_plane import KINDS, SectionPlane, change_section, set_section
from viewer.state.tongue import figure, told
from viewer.state.view_state import ViewState
from viewer.state.visibility import visible_parts

if TYPE_CHECKING:
    from meshes.questions.section import Outlines, Region, Slicer
    from viewer.panels.section_dock import SectionDock

LOG = logging.getLogger("peelback")

REST_MS = 140
WARM_AFTER_MS = 4000
LEAST_LABELLED_CM2 = 0.05
SNAP_MM = 2.5
PICTURE_SIZE = (1600, 1200)
FACING = {
    ("transverse", False): "inferior",
    ("transverse", True): "superior",
    ("free", False): "inferior",
    ("free", True): "superior",
    ("sagittal", False): "lateral_left",
    ("sagittal", True): "lateral_right",
    ("coronal", False): "posterior",
    ("coronal", True): "anterior",
}
"""The fixed view that looks at the cut face, by kind and half kept."""


class SectionMenu:
    """What the section's menu entries, keys, dock and grip call."""

    def _make_section(self) -> None:
        """Set up what the section needs; the dock is made when it is first wanted."""
        self.section_dock: SectionDock | None = None
        self._slicer: Slicer | None = None
        self._slicer_of: Any = None
        self._outlines: Outlines | None = None
        self._regions: list[Region] = []
        self._cut_key: tuple | None = None
        self._only: frozenset[str] | None = None
        self._desk_session = self.session
        self._folded_slicer: tuple[tuple, Slicer] | None = None
        self._section_hover = ""
        self._dragged_to: float | None = None
        self._view_before = "posterior"
        self._axes: dict[tuple, tuple] = {}
        self._section_rest = QTimer(self)
        self._section_rest.setSingleShot(True)
        self._section_rest.setInterval(REST_MS)
        self._section_rest.timeout.connect(self._rest_section)

    # Commands ---------------------------------------------------------------------------

    def set_section_on(self, on: bool) -> None:
        """Cut the model flat, or make it whole again."""
        if on == (self.state.section is not None):
            return
        if not on:
            self.do(set_section(None))
            if self.state.view in FACING.values():
                self.go_to_view(self._view_before)
            return
        self._view_before = self.state.view
        if isinstance(self.model, GrowingModel):
            self._actions["section"].setChecked(False)
            self.say("The section can be made as soon as the model is finished.")
            return
        places = self._stations("transverse")
        first = next((s for s in places if s.name == "T7"), places[0] if places else None)
        self.do(set_section(SectionPlane(position_mm=first.position_mm if first else 0.0)))
        self.face_section()

    def set_section_kind(self, kind: str) -> None:
        """Turn the plane: transverse, sagittal, coronal or free."""
        section = self.state.section
        if section is None or section.kind == kind:
            return
        turned = replace(section, kind=kind)
        level = {"transverse", "free"}
        if not ({section.kind, kind} <= level):
            low, high = self._section_reach(kind)
            middle = 0.0 if kind == "sagittal" else 0.5 * (low + high)
            if kind in level:
                middle = next(
                    (s.position_mm for s in self._stations(kind) if s.name == "T7"), middle
                )
            turned = replace(turned, position_mm=float(middle))
        self.do(set_section(turned, f"{KINDS[kind].lower()} section"))
        self.face_section()

    def next_section_plane(self) -> None:
        """Go through transverse, sagittal, coronal and free."""
        if self.state.section is None:
            self.set_section_on(True)
            return
        kinds = list(KINDS)
        self.set_section_kind(kinds[(kinds.index(self.state.section.kind) + 1) % len(kinds)])

    def step_section(self, steps: int) -> None:
        """Go to the next vertebra or disc, or a centimetre on."""
        section = self.state.section
        if section is None:
            self.set_section_on(True)
            return
        found = next_station(self._stations(section.kind), section.position_mm, steps)
        if found is None:
            self.say("The section is at the end of the model.")
            return
        self.do(change_section(f"section at {found.name}", position_mm=found.position_mm))

    def move_section(self, position_mm: float, dragging: bool = False) -> None:
        """Put the plane somewhere along its axis; near a level it snaps to it."""
        section = self.state.section
        if section is None:
            return
        low, high = self._section_reach(section.kind)
        position_mm = float(np.clip(position_mm, low, high))
        if dragging and section.kind == "transverse":
            near = min(
                self._stations(section.kind),
                key=lambda s: abs(s.position_mm - position_mm),
                default=None,
            )
            if near is not None and abs(near.position_mm - position_mm) <= SNAP_MM:
                position_mm = near.position_mm
        self.do(change_section("move the section", dragging=dragging, position_mm=position_mm))

    def _drag_section(self, mm: float) -> None:
        """The grip was dragged so far along the plane's normal."""
        section = self.state.section
        if section is None:
            return
        axis = {"sagittal": 0, "coronal": 1}.get(section.kind, 2)
        along = float(section.plane().normal[axis])
        if abs(along) < 0.2:
            return
        if self._dragged_to is None:
            self._dragged_to = section.position_mm
        # The hand's own place is kept apart, so that snapping never holds it back.
        self._dragged_to += mm / along
        self.move_section(self._dragged_to, dragging=True)

    def _end_section_drag(self) -> None:
        self._dragged_to = None
        self.session.close_gesture()

    def tilt_section(self, nod: float, lean: float, dragging: bool = False) -> None:
        """Tilt a free plane, degrees."""
        self.do(change_section("tilt the section", dragging=dragging, tilt_deg=(nod, lean)))

    def flip_section(self) -> None:
        """Keep the other half."""
        if self.state.section is not None:
            self._set_section_flag("near_half", not self.state.section.near_half)
            self.face_section()

    def set_section_whole(self, on: bool) -> None:
        """Cut everything, or only what the dissection has left."""
        self._set_section_flag("whole", on)

    def _set_section_flag(self, name: str, on: bool) -> None:
        words = {
            "near_half": "keep the other half",
            "whole": "cut the whole" if on else "cut what is left",
            "as_imaged": "section as images lie" if on else "section as the donor lies",
        }[name]
        self.do(change_section(words, **{name: on}))

    def face_section(self) -> None:
        """Look at the cut face."""
        section = self.state.section
        if section is not None:
            self.go_to_view(FACING[section.kind, section.near_half])

    # Following the state ----------------------------------------------------------------

    @property
    def in_hall(self) -> bool:
        """True while a talk runs: its session is not the desk's, and panels stay out of sight."""
        return self.session is not self._desk_session

    def _follow_section(self, before: ViewState | None, after: ViewState) -> None:
        """Bring cut face, dock and menu up to a state."""
        section = after.section
        on = section is not None
        self._actions["section"].setChecked(on)
        for name in ("section_flip", "section_whole", "section_save"):
            self._actions[name].setEnabled(on)
        self._actions["section_whole"].setChecked(on and section.whole)
        if not on or isinstance(self.model, GrowingModel):
            self._close_section()
            return
        self._open_section()
        moved_only = (
            before is not None
            and before.section is not None
            and before == replace(after, section=before.section)
            and before.section.whole == section.whole
        )
        if not moved_only:
            self._only = (
                None
                if section.whole and not after.alone
                else frozenset(visible_parts(self.model, after, self._neighbours))
            )
        only = self._only
        folds = () if section.whole else after.folds
        key = (id(self.model), section, only, after.look, folds, after.removed if folds else None)
        if key != self._cut_key:
            self._cut_key = key
            self._cut(section, only)
        if before is None or before.selection != after.selection:
            self._show_section_picked()

    def _cut(self, section: SectionPlane, only) -> None:
        """Cut quickly: outlines on the model and in the flat picture; areas follow at rest."""
        from meshes.questions.loose_tissue import loose_strips

        self._ready_slicer()
        self._outlines = self._slicer_as_folded(section).outlines(section.plane(), only)
        strips = loose_strips(self.model, self._outlines)
        dock = self.section_dock
        dock.show_plane(section, self._section_words(section), self._section_reach(section.kind))
        if self.scene_widget is not None:
            self.scene_widget.scene.set_section(self._outlines, section.near_half, strips)
            self.scene_widget.refresh()
        dock.picture.show_moving(self.model, self._outlines, strips, self.state.look)
        self._section_rest.start()

    def cut_of(self, state: ViewState) -> tuple:
        """Return the cut face of a state that may not be on, as ``Scene.set_section`` takes it."""
        from meshes.questions.loose_tissue import loose_strips

        section, slicer = state.section, self._ready_slicer()
        whole = section.whole and not state.alone
        only = None if whole else frozenset(visible_parts(self.model, state, self._neighbours))
        if state.folds and not section.whole:
            slicer = slicer.moved(self.folds.reflector.laid(state.folds, state.removed))
        outlines = slicer.outlines(section.plane(), only)
        return outlines, section.near_half, loose_strips(self.model, outlines)

    def _ready_slicer(self) -> Slicer:
        if self._slicer is None or self._slicer_of is not self.model:
            from meshes.questions.section import Slicer

            self._slicer, self._slicer_of = Slicer(self.model), self.model
        return self._slicer

    def _slicer_as_folded(self, section: SectionPlane) -> Slicer:
        """Return the meshes to cut: flaps where they lie, but in the whole back in their place."""
        state = self.state
        if section.whole or not state.folds:
            self._folded_slicer = None
            return self._slicer
        key = (id(self._slicer), state.folds, state.removed)
        if self._folded_slicer is None or self._folded_slicer[0] != key:
            places = self.folds.surfaces()
            if not places:
                return self._slicer
            self._folded_slicer = key, self._slicer.moved(places)
        return self._folded_slicer[1]

    def _cut_after_fold(self) -> None:
        """A flap has come to rest: cut it where it lies."""
        if self.state.section is not None and self.state.folds and not self.folds.playing:
            self._cut_key = self._folded_slicer = None
            self._follow_section(None, self.state)

    def _rest_section(self) -> None:
        """The plane rests: work out areas and labels."""
        section = self.state.section
        if section is None or self._outlines is None or self._closed:
            return
        only = frozenset(self._outlines.ids)
        self._regions = self._slicer_as_folded(section).cut(self._outlines.plane, only)
        dock = self.section_dock
        dock.show_areas(self._regions, self._titles)
        dock.picture.show_resting(
            self.model,
            self._outlines,
            self._regions,
            self._section_names(),
            self._section_title(section),
            self.state.look,
        )
        self._show_section_picked()
        if self.scene_widget is not None:
            from viewer.panels.section_dock import region_middle

            plane = self._outlines.plane
            spots = {}
            for region in self._regions:
                if region.area_cm2 >= LEAST_LABELLED_CM2:
                    across, upward = region_middle(region)
                    place = plane.origin + across * plane.right + upward * plane.up
                    spots[region.part_id] = place, 100.0 * region.area_cm2
            self.scene_widget.scene.set_section_spots(spots)
            if self.state.labels:
                self.scene_widget.refresh(moving=False)

    def _warm_section(self) -> None:
        """Lay the meshes out beside the window, so that the first cut is as quick as the others.

        The first time ever this also compiles the kernels.
        """
        model = self.model
        if isinstance(model, GrowingModel) or self._slicer_of is model:
            return

        def work() -> None:
            try:
                from meshes.questions.loose_tissue import loose_strips
                from meshes.questions.section import Slicer

                slicer = Slicer(model)
                outlines = slicer.outlines(SectionPlane().plane())
                outlines.fill()
                loose_strips(model, outlines)
            except Exception:
                LOG.exception("the section could not be made ready")
                return
            if self.model is model and self._slicer_of is not model:
                self._slicer, self._slicer_of = slicer, model
            # The last of what is made ready after a start.
            give_back()

        threading.Thread(target=work, name="section", daemon=True).start()

    def _section_names(self) -> dict[str, str]:
        from viewer.scene.section_picture import short_name

        names = {}
        for region in self._regions:
            names[region.part_id] = short_name(self._titles.get(region.part_id, region.part_id))
        return names

    def _stations(self, kind: str) -> tuple[Station, ...]:
        return self._along(kind)[0]

    def _section_reach(self, kind: str) -> tuple[float, float]:
        return self._along(kind)[1]

    def _along(self, kind: str) -> tuple[tuple[Station, ...], tuple[float, float]]:
        """Return stations and reach of a kind of plane, found once for a model."""
        key = (id(self.model), kind)
        if key not in self._axes:
            self._axes = {k: v for k, v in self._axes.items() if k[0] == id(self.model)}
            self._axes[key] = stations(self.model, kind), reach(self.model, kind)
        return self._axes[key]

    def _section_words(self, section: SectionPlane) -> str:
        places = self._stations(section.kind)
        return plane_in_words(station_words(places, section.kind, section.position_mm))

    def _section_title(self, section: SectionPlane) -> str:
        words = told(
            "{kind} section, {place}",
            kind=told(KINDS[section.kind]).split(" ")[0],
            place=self._section_words(section),
        )
        if section.kind == "free":
            nod, lean = section.tilt_deg
            words += told(", tilted {nod}° and {lean}°", nod=f"{nod:.0f}", lean=f"{lean:.0f}")
        return words

    def _open_section(self) -> None:
        if self.section_dock is None:
            from viewer.panels.section_dock import SectionDock

            dock = self.section_dock = SectionDock(self)
            dock.kind_wanted.connect(self.set_section_kind)
            dock.position_wanted.connect(self.move_section)
            dock.tilt_wanted.connect(self.tilt_section)
            dock.drag_ended.connect(self.session.close_gesture)
            dock.flag_wanted.connect(self._set_section_flag)
            dock.step_wanted.connect(self.step_section)
            dock.face_wanted.connect(self.face_section)
            dock.save_wanted.connect(self.save_section)
            dock.closed.connect(lambda: self.set_section_on(False))
            dock.picture.hovered.connect(self._hover_section)
            dock.picture.picked.connect(self._pick_in_section)
            self._place_dock(dock)
            dock.set_dress(self.theme, self.scale)
            dock.hide()
        if self.in_hall:
            self.section_dock.hide()
        elif self.section_dock.isHidden():
            self._open_dock(self.section_dock)

    def _close_section(self) -> None:
        if self._cut_key is None:
            return
        self._cut_key, self._outlines, self._regions = None, None, []
        self._section_rest.stop()
        if self.section_dock is not None:
            self.section_dock.hide()
            self._take_room_back()
        if self.scene_widget is not None:
            self.scene_widget.scene.set_section(None)
            self.scene_widget.refresh()

    def _show_section_picked(self) -> None:
        if self.section_dock is not None:
            self.section_dock.show_picked(
                self.state.selection, self._section_hover or self._hovered
            )

    def _hover_section(self, part_id: str) -> None:
        """The pointer is over a part in the flat picture: tint it on the model too."""
        if part_id == self._section_hover:
            return
        self._section_hover = part_id
        if self.section_dock is not None:
            self.section_dock.picture.show_picked(self.state.selection, part_id)
        if self.scene_widget is not None:
            self.scene_widget.scene.set_section_hover(part_id)
            self.scene_widget.refresh(moving=False)
        if part_id:
            area = next((r.area_cm2 for r in self._regions if r.part_id == part_id), None)
            words = self._titles.get(part_id, part_id)
            self.say(words if area is None else f"{words} · {figure(area, '.2f')} cm²", 0)
            self._hovered = part_id
        else:
            self._hovered = ""
            self.statusBar().clearMessage()
        self._show_caption()

    def _pick_in_section(self, part_id: str, adding: bool) -> None:
        from viewer.state import commands

        if part_id:
            self.do(commands.select([part_id], adding=adding))
        elif not adding:
            self.do(commands.select(()))

    # Files ------------------------------------------------------------------------------

    def save_section(self) -> None:
        """Ask for a place and save the flat picture as it is shown."""
        if self.state.section is None:
            return
        words = self._section_words(self.state.section).replace(" ", "-").replace("–", "-")
        name, _ = QFileDialog.getSaveFileName(
            self,
            told("Save the section"),
            str(Path.home() / f"section-{words}.svg"),
            f"{told('Drawings')} (*.svg *.pdf);;{told('Pictures')} (*.png)",
        )
        if name:
            self.save_section_to(Path(name))

    def save_section_to(self, path: Path) -> bool:
        """Save the flat picture: SVG, PDF or PNG by the file's ending."""
        from viewer.print.section_page import write_section_pdf
        from viewer.scene.section_picture import section_png, section_svg

        if not path.suffix:
            path = path.with_suffix(".svg")
        self._section_rest.stop()
        self._rest_section()
        kind = path.suffix.lower()
        layout = self.section_dock.picture.layout_for(PICTURE_SIZE, page=kind == ".pdf")
        try:
            if kind == ".svg":
                write_bytes(path, section_svg(layout).encode())
            elif kind == ".png":
                write_bytes(path, section_png(layout))
            elif kind == ".pdf":
                write_section_pdf(path, layout)
            else:
                raise PeelbackError(
                    told("a section is saved as .svg, .pdf or .png, not {kind}", kind=kind)
                )
        except PeelbackError as error:
            QMessageBox.warning(self, told("Save the section"), unwritten(path, error))
            return False
        self.say(told("Saved {file}", file=path.name))
        return True
