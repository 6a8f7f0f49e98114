"""The window's commands for a rehearsed cut: points, depth, answer, another try."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6.QtCore import Qt, QTimer

from meshes.errors import PeelbackError
from viewer.building import GrowingModel
from viewer.state.cut_line import (
    CutLine,
    add_cut_point,
    begin_cut,
    change_cut,
    end_cut,
)
from viewer.state.cut_words import answer_in_words, headed, verdict
from viewer.state.tongue import refused, told
from viewer.state.view_state import ViewState
from viewer.state.visibility import taken_off, visible_parts

if TYPE_CHECKING:
    from meshes.questions.rehearse import PlanLine, Rehearsal, Rehearser
    from viewer.panels.rehearse_dock import RehearseDock

LOG = logging.getLogger("peelback")

ANSWER_AFTER_MS = 60
NEAR_MM = 15.0
"""What must stay and comes nearer than this is marked on the model."""


class RehearseMenu:
    """What the rehearsal's menu entries, keys, dock and clicks call."""

    def _make_rehearsal(self) -> None:
        """Set up what the rehearsal needs; the dock is made when it is first wanted."""
        self.rehearse_dock: RehearseDock | None = None
        self.rehearsal: Rehearsal | None = None
        self._rehearser: Rehearser | None = None
        self._rehearser_of: Any = None
        self._cut_path: tuple[tuple, np.ndarray] | None = None
        self._rehearse_timer = QTimer(self)
        self._rehearse_timer.setSingleShot(True)
        self._rehearse_timer.setInterval(ANSWER_AFTER_MS)
        self._rehearse_timer.timeout.connect(self._answer_cut)

    # Commands ---------------------------------------------------------------------------

    def set_rehearsing(self, on: bool) -> None:
        """Begin to draw a cut, or take it away."""
        if on == (self.state.cut_line is not None):
            return
        if not on:
            self.do(end_cut())
            return
        if isinstance(self.model, GrowingModel):
            self._actions["rehearse"].setChecked(False)
            self.say("A cut can be rehearsed as soon as the model is finished.")
            return
        if self._measuring:
            self.set_measuring(False)
        self.do(begin_cut())
        self.say("Click along the line that you would cut.", 0)

    def add_cut_point(self, point, part_id: str) -> None:
        """Add a place to the line; the first one says which layer is cut."""
        self.do(add_cut_point(point, part_id))

    def add_cut_here(self) -> None:
        """Add the place under the pointer, for those who press keys rather than buttons."""
        if self.state.cut_line is None:
            self.set_rehearsing(True)
        elif self._hovered and self._last_place is not None:
            self.add_cut_point(self._last_place, self._hovered)
        else:
            self.say("Point at the layer that is to be cut.")

    def take_cut_point_back(self) -> None:
        """Take the last place of the line away."""
        line = self.state.cut_line
        if line is not None and line.points:
            points = line.points[:-1]
            part_id = line.part_id if points else ""
            self.do(change_cut("take a point of the cut back", points=points, part_id=part_id))

    def cut_again(self) -> None:
        """Take the line away and begin anew, for the same step and blade."""
        if self.state.cut_line is not None:
            self.do(change_cut("try the cut again", points=(), part_id=""))

    def set_cut_depth(self, depth_mm: float, dragging: bool = False) -> None:
        """Choose how deep the blade goes below the line, mm."""
        self.do(change_cut("depth of the blade", dragging=dragging, depth_mm=depth_mm))

    def set_cut_step(self, step_id: str) -> None:
        """Choose the step whose line and keep list the cut is held against."""
        self.do(change_cut("step of the cut", step_id=step_id))

    # Following the state ----------------------------------------------------------------

    def _follow_rehearsal(self, before: ViewState | None, after: ViewState) -> None:
        """Bring line, dock and answer up to a state."""
        line = after.cut_line
        on = line is not None
        self._actions["rehearse"].setChecked(on)
        self._actions["rehearse_again"].setEnabled(on and bool(line.points))
        if not on or isinstance(self.model, GrowingModel):
            if self.rehearse_dock is not None and not self.rehearse_dock.isHidden():
                self._rehearse_timer.stop()
                self.rehearse_dock.hide()
                self._take_room_back()
                self.rehearsal = None
                self._show_cut_lines(None, ())
            return
        self._open_rehearsal()
        self.rehearse_dock.show_line(line)
        keys = ("cut_line", "peeled", "strata_off", "removed", "hidden", "alone")
        if before is None or any(getattr(before, k) != getattr(after, k) for k in keys):
            self._rehearse_timer.start()

    def _open_rehearsal(self) -> None:
        if self.rehearse_dock is None:
            from viewer.panels.rehearse_dock import RehearseDock

            dock = self.rehearse_dock = RehearseDock(self)
            dock.step_wanted.connect(self.set_cut_step)
            dock.depth_wanted.connect(self.set_cut_depth)
            dock.drag_ended.connect(self.session.close_gesture)
            dock.again_wanted.connect(self.cut_again)
            dock.point_back_wanted.connect(self.take_cut_point_back)
            dock.closed.connect(lambda: self.set_rehearsing(False))
            self._place_dock(dock)
            dock.set_dress(self.theme, self.scale)
            dock.set_steps([(s.id, told(s.title)) for s in self.plan.steps if s.removes])
            dock.hide()
        if self.in_hall:
            self.rehearse_dock.hide()
        elif self.rehearse_dock.isHidden():
            self._open_dock(self.rehearse_dock)

    def _ready_rehearser(self) -> Rehearser:
        if self._rehearser is None or self._rehearser_of is not self.model:
            from meshes.questions.rehearse import Rehearser

            self.say("Getting ready …", 2000)
            self._rehearser, self._rehearser_of = (
                Rehearser(self.model, probe=self._probe),
                self.model,
            )
            self._cut_path = None
        return self._rehearser

    def _path_of(self, line: CutLine) -> np.ndarray | None:
        """Return the way over the layer, worked out again only when a point changes."""
        key = (line.points, line.part_id)
        if self._cut_path is None or self._cut_path[0] != key:
            try:
                path = self._rehearser.line_through(line.points, line.part_id)
            except PeelbackError:
                return None
            self._cut_path = key, path
        return self._cut_path[1]

    def _answer_cut(self) -> None:
        """Work out the answer to the present line and show it."""
        line = self.state.cut_line
        if line is None or self._closed or self.rehearse_dock is None:
            return
        rehearser = self._ready_rehearser()
        planned = self._planned_lines(rehearser, line)
        path = self._path_of(line) if len(line.points) > 1 else None
        self.rehearsal = None
        if path is None:
            self._show_cut_lines(line, planned)
            words = told("Click the next place." if line.points else "Click where the cut begins.")
            layer = self._titles.get(line.part_id, "")
            self.rehearse_dock.show_answer([headed(layer, words) if layer else headed(words)])
            return
        present = visible_parts(self.model, self.state, self._neighbours)
        present |= {i for i, p in self.model.parts.items() if not taken_off(p, self.state)}
        try:
            self.rehearsal = rehearser.rehearse(
                path, line.part_id, line.depth_mm, line.step_id or None, present
            )
        except PeelbackError as error:
            self.rehearse_dock.show_answer([headed(refused(error))])
            return
        self._show_cut_lines(line, planned)
        self.rehearse_dock.show_answer(
            answer_in_words(self.rehearsal, self._titles), *self._verdict(self.rehearsal)
        )

    def _verdict(self, answer: Rehearsal) -> tuple[str, bool]:
        kinds = {i: part.kind for i, part in self.model.parts.items()}
        return verdict(answer, self._titles, kinds)

    def _planned_lines(self, rehearser: Rehearser, line: CutLine) -> tuple[PlanLine, ...]:
        step_id = line.step_id
        if not step_id:
            step = rehearser.step_of(line.part_id) if line.part_id else None
            step_id = step.id if step else ""
        if not step_id or step_id not in self.plan:
            return ()
        if line.points:
            sides = ("left",) if line.points[0][0] > 0 else ("right",)
            across = min(p[0] for p in line.points) < -3 and max(p[0] for p in line.points) > 3
            sides = ("left", "right") if across else sides
        else:
            chosen = self.state.working_side
            sides = ("left", "right") if chosen == "both" else (chosen,)
        found: list[PlanLine] = []
        for side in sides:
            found += rehearser.plan_lines(step_id, side)
        return tuple(found)

    def _show_cut_lines(self, line: CutLine | None, planned) -> None:
        if self.scene_widget is None:
            return
        scene = self.scene_widget.scene
        if line is None:
            scene.set_cut_lines()
        else:
            answer = self.rehearsal
            near = [] if answer is None else [c.place for c in answer.clearances if c.mm < NEAR_MM]
            lift = 0.6
            path = None
            if answer is not None:
                path = answer.line - lift * answer.inward
            scene.set_cut_lines(line.points, path, [p.points for p in planned], near)
        self.scene_widget.refresh()

    def _place_dock(self, dock) -> None:
        """Put a dock to the right, as a tab beside those that are there."""
        others = [
            d
            for d in (self.section_dock, self.rehearse_dock, self.mistakes_dock)
            if d is not None and d is not dock
        ]
        self.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, dock)
        if others:
            self.tabifyDockWidget(others[0], dock)
