"""The window's commands for labels, measures, marks and pins."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from PySide6.QtWidgets import QInputDialog

from viewer.panels.sheets import (
    PinSheet,
)
from viewer.state import commands
from viewer.state.measuring import TEACHING_NOTE, measure_words
from viewer.state.tongue import told
from viewer.state.view_state import Pin


class ToolsMenu:
    """What the Tools menu calls."""

    def set_labels(self, on: bool) -> None:
        """Switch labels on or off."""
        self.do(commands.set_flag("labels", on, "labels"))

    def set_blank_labels(self, on: bool) -> None:
        """Numbers in place of names."""
        self.do(commands.set_flag("blank_labels", on, "numbers in place of names"))
        if on and not self.state.labels:
            self.set_labels(True)

    def change_density(self, by: float) -> None:
        """More labels, or fewer."""
        density = min(max(round(self.state.label_density + by, 2), 0.0), 1.0)
        self.do(commands.set_label_density(density))

    def set_measuring(self, on: bool) -> None:
        """Let clicks set the points of a measure."""
        self._measuring = on
        self._actions["measure"].setChecked(on)
        if self.scene_widget is not None:
            self.scene_widget.mode = "measure" if on else "pick"
        self.say(f"{told('Click two points.')} {told(TEACHING_NOTE)}" if on else "", 0)

    def set_measure_surface(self, on: bool) -> None:
        """Measure along the surface rather than straight."""
        self.do(commands.set_flag("measure_surface", on, "measure along the surface"))

    def _add_measure_point(self, point: Iterable[float]) -> None:
        points = self.state.measure
        if len(points) >= 2:
            points = ()
        self.do(commands.set_measure([*points, tuple(float(c) for c in point)]))

    def clear_measure(self) -> None:
        """Take the measuring line away."""
        self.do(commands.set_measure(()))

    def _set_measure(self) -> None:
        state, scene = self.state, self.scene_widget.scene
        path = None
        if state.measure_surface and len(state.measure) == 2:
            path = scene.surface_path(*(np.array(p) for p in state.measure))
        words = measure_words(state.measure, path)
        scene.set_measure(np.array(state.measure).reshape(-1, 3), path, words)
        if words:
            unable = state.measure_surface and path is None
            note = told(" No way along one part joins the points.") if unable else ""
            self.say(f"{words}.{note} {told(TEACHING_NOTE)}", 0)

    def set_surface_marks(self, on: bool) -> None:
        """Draw the palpable landmarks on the skin."""
        self.do(commands.set_flag("surface_marks", on, "landmarks on the skin"))

    def pin_selected(self) -> None:
        """Stick a note to the place that was picked last."""
        part_id = self.state.selected
        if part_id is None:
            self.say("Pick a part first; the note sticks where it was clicked.")
            return
        words, good = QInputDialog.getText(
            self,
            told("Pin a note"),
            told("Note on {title}:", title=self._titles.get(part_id, part_id)),
        )
        if good and words.strip():
            self.add_pin(words.strip())

    def add_pin(self, words: str) -> None:
        """Stick a note to the picked part, where it was clicked or at its outermost point."""
        part = self.model.parts.get(self.state.selected or "")
        if part is None:
            return
        vertices = part.vertices
        place = np.array(self._last_place if self._last_place else vertices.mean(axis=0))
        if self._last_place is None or np.min(np.linalg.norm(vertices - place, axis=1)) > 25:
            place = vertices[np.argmax(vertices[:, 1])]
        self.do(commands.add_pin(Pin(tuple(float(c) for c in place), words, part.id)))

    def open_pins(self) -> None:
        """Read and change the notes."""
        sheet = PinSheet(self)
        self._pin_sheet = sheet
        sheet.show_pins(self.state.pins, self._titles)
        sheet.pin_changed.connect(lambda k, text: self.do(commands.change_pin(k, text)))
        sheet.pin_wanted.connect(lambda k: self.fly_to([self.state.pins[k].part_id]))
        self._open(sheet)
        sheet.finished.connect(self._forget_pin_sheet)

    def _forget_pin_sheet(self) -> None:
        self._pin_sheet = None
