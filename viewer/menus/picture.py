"""How the picture follows the state."""

from __future__ import annotations

from dataclasses import asdict

import numpy as np

from viewer.state.places import surface_marks
from viewer.state.table_view import limbs_lie, pose_lines
from viewer.state.view_state import ViewState
from viewer.state.visibility import opacities, visible_parts


class Picture:
    """Tells the scene what the state wants; the scene compares and draws."""

    def _follow_scene(self, before: ViewState | None, after: ViewState) -> None:
        def changed(*names: str) -> bool:
            return before is None or any(getattr(before, n) != getattr(after, n) for n in names)

        shown = visible_parts(self.model, after, self._neighbours)
        self.tree.show_visible(shown)
        if self.scene_widget is None:
            return
        scene = self.scene_widget.scene
        if changed("look"):
            scene.set_look(after.look)
        if changed("orbit"):
            scene.set_orbit(after.orbit)
        if changed("compare"):
            scene.set_compare(after.compare)
        self._draw()
        if changed("folds", "removed"):
            self.folds.want(after.folds, after.removed, at_once=before is None)
        if changed("labels", "label_density", "blank_labels") or (
            after.labels and changed("selection")
        ):
            self._set_labels()
        if changed("pins"):
            scene.set_pins([(np.array(p.point), p.text) for p in after.pins if p.text])
            scene.set_tag(next((p.point for p in after.pins if not p.text), None))
        if changed("measure", "measure_surface"):
            self._set_measure()
        if changed("surface_marks"):
            records = getattr(self.model.catalogue, "landmarks", None)
            scene.set_surface_marks(
                surface_marks(self.model.landmarks, records), after.surface_marks
            )
        if changed("table"):
            scene.set_table(after.table)
        self._lay_limbs(after)
        if self.model.parts and changed("view", "camera", "table") and not self._flying:
            self.scene_widget.end_flight()
            if after.camera is None and after.table:
                scene.stand()
            elif after.camera is None:
                scene.set_view(after.view)
            else:
                scene.set_camera({**asdict(after.camera), "view": after.view})
            self._tell_markers()
        self.scene_widget.refresh()

    def _lay_limbs(self, state: ViewState) -> None:
        """Draw blades and arms as they lie, or as they stand, and say which."""
        if self.scene_widget is None or not self.model.parts:
            return
        scene = self.scene_widget.scene
        scene.lay_limbs(limbs_lie(state))
        scene.pose_lines = pose_lines(state.table, scene.limbs_lie)

    def _draw(self) -> None:
        """Tell the scene what is shown and how."""
        if self.scene_widget is None:
            return
        from viewer.scene.scene import PartLook

        state, scene = self.state, self.scene_widget.scene
        chosen = set(state.selection)
        over = self.covering_ids()
        scene.apply(
            {
                part_id: PartLook(
                    opacity, part_id in chosen, part_id == self._hovered, part_id in over
                )
                for part_id, opacity in opacities(self.model, state, self._neighbours).items()
            }
        )
        if state.compare:
            whole = ViewState(neighbours=state.neighbours, side_shown=state.side_shown)
            scene.apply_whole(
                {
                    part_id: PartLook(1.0, part_id in chosen, part_id == self._hovered)
                    for part_id in visible_parts(self.model, whole, self._neighbours)
                }
            )

    def _set_labels(self) -> None:
        self.scene_widget.scene.set_labels(*self.label_words(self.state))

    def label_words(self, state: ViewState) -> tuple:
        """Return the labels of a state, as ``Scene.set_labels`` takes them."""
        names = {}
        if state.labels:
            for part in self.model.parts.values():
                title = self._titles.get(part.id, part.id)
                names[part.id] = title.rsplit(",", 1)[0] if part.side else title
        if self.scene_widget.scene.most_labels and len(state.selection) > 1:
            # The hall is shown the names of what the scene speaks of.
            names = {part_id: name for part_id, name in names.items() if part_id in state.selection}
        return state.labels, state.label_density, state.blank_labels, names, state.selection
