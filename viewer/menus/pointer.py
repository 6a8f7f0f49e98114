"""What follows the pointer: caption, rail, picks, context menu."""

from __future__ import annotations

import logging
from typing import Any

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QMenu

from viewer.building import GrowingModel
from viewer.state import commands, rail
from viewer.state.places import place_in_words
from viewer.state.tongue import told

LOG = logging.getLogger("peelback")

PROBE_EVERY_MS = 15
HOVER_TINT_MS = 60.0
SHARES_PERCENT = (50, 80, 95, 100)
"""Shares offered in the menu of a part; the list of what lies over it takes any."""


class Pointer:
    """Joins the picture's pointer to caption, rail and selection."""

    def _on_hover(self, hit: Any) -> None:
        part_id = hit.part_id if hit is not None else ""
        self._share_pointer(hit)
        if hit is not None:
            self._last_place = tuple(float(c) for c in hit.point)
            if not self._probe_timer.isActive():
                self._probe_timer.start(PROBE_EVERY_MS)
        if part_id == self._hovered:
            return
        self._hovered = part_id
        self._show_caption()
        # A tint under the pointer is worth a frame only where frames are quick.
        if self.scene_widget.last_frame_ms < HOVER_TINT_MS:
            self._draw()
            self.scene_widget.refresh(moving=False)
        if part_id:
            part = self.model.parts.get(part_id)
            if part is not None:
                where = place_in_words(self._last_place, self._heights)
                self.say(f"{self._titles.get(part_id, part_id)} · {where}", 0)
        else:
            self.statusBar().clearMessage()

    def _probe_usual_place(self) -> None:
        """Before the pointer has been anywhere: 40 mm left of spine T7."""
        if self._closed or self._last_place is not None:
            return
        z = self._heights.get("T7")
        if z is None:
            return
        self._last_place = (40.0, self._half_depth, z)
        self._probe_here()

    def _probe_here(self) -> None:
        if self._last_place is None or isinstance(self.model, GrowingModel) or self._closed:
            return
        if self.rail.pointer_inside:
            return
        if self._probe is None:
            # It is being made ready beside the window; its coming asks again.
            return
        try:
            ladder = self._probe.through(self._last_place)
        except Exception:
            LOG.exception("the probe failed")
            return
        self.rail.set_ladder(rail.thickness_by_stratum(ladder.rungs, self.model))
        place = place_in_words(self._last_place, self._heights)
        self._rail_place.setText(told("at {place}", place=place))

    def _on_pick(self, hit: Any, adding: bool) -> None:
        if self.state.cut_line is not None and not adding:
            if hit is not None:
                self.add_cut_point(hit.point, hit.part_id)
            return
        if self._measuring:
            if hit is not None:
                self._add_measure_point(hit.point)
            return
        if hit is None:
            if not adding:
                self.do(commands.select(()))
            return
        self._last_place = tuple(float(c) for c in hit.point)
        self.do(commands.select([hit.part_id], adding=adding))

    def _on_view_changed(self) -> None:
        self._note_camera()
        self._tell_markers()

    def _tell_markers(self) -> None:
        if self.scene_widget is None:
            return
        words = self.scene_widget.scene.markers_text()
        self._markers.setText(words)
        self.scene_widget.setAccessibleDescription(words)

    def _on_context(self, hit: Any, at: QPoint) -> None:
        if hit is not None and hit.part_id not in self.state.selection:
            self.do(commands.select([hit.part_id]))
        self._part_menu(self._titles.get(hit.part_id, hit.part_id) if hit else "").exec(at)

    def _on_tree_menu(self, at: QPoint) -> None:
        """Show the menu of what the tree has picked: covered parts can be asked about there."""
        self._part_menu(self._selection_words()).exec(at)

    def _part_menu(self, words: str) -> QMenu:
        """Return the menu of what is picked, headed by its title."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        if words:
            # Styles leave the title of a section out; one that cannot be chosen they show.
            menu.addAction(words).setEnabled(False)
            menu.addSeparator()
        for name in (
            "hide",
            "alone",
            "see_through",
            "peek",
            "show_part",
            "into_view",
            "covers",
            "fly",
            "other_side",
            "select_group",
            "pin",
        ):
            menu.addAction(self._actions[name])
            if name == "into_view":
                menu.addMenu(self._share_menu(menu))
        menu.addSeparator()
        menu.addAction(self._actions["all_back"])
        return menu

    def _share_menu(self, parent: QMenu) -> QMenu:
        """Return the choice of how much of a part counts as in view; choosing brings it there."""
        menu = QMenu(told("Bring so much into view"), parent)
        chosen = round(100 * self.settings.share_in_view)
        for percent in sorted({*SHARES_PERCENT, chosen}):
            action = menu.addAction(f"{percent} %")
            action.setCheckable(True)
            action.setChecked(percent == chosen)
            action.triggered.connect(lambda _, share=percent / 100: self._bring_share(share))
        return menu

    def _bring_share(self, share: float) -> None:
        self.set_share_in_view(share)
        self.bring_into_view()
