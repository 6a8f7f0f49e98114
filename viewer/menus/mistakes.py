"""The window's commands for the commonest mistakes."""

from __future__ import annotations

from meshes.catalogue.mistakes import load_mistakes
from viewer.building import GrowingModel
from viewer.panels.mistakes_dock import MistakesDock
from viewer.state.mistakes import show_mistake


class MistakesMenu:
    """What the mistakes' menu entry, key and dock call."""

    def _make_mistakes(self) -> None:
        """Set up; the dock is made when it is first wanted."""
        self.mistakes_dock: MistakesDock | None = None

    def open_mistakes(self, on: bool) -> None:
        """List what goes wrong in the present step, or close the list."""
        if not on:
            if self.mistakes_dock is not None:
                self.mistakes_dock.hide()
                self._take_room_back()
            self._actions["mistakes"].setChecked(False)
            return
        if self.mistakes_dock is None:
            dock = self.mistakes_dock = MistakesDock(load_mistakes(), self)
            dock.show_wanted.connect(self.show_mistake)
            dock.closed.connect(lambda: self.open_mistakes(False))
            self._place_dock(dock)
            dock.set_dress(self.theme, self.scale)
            dock.hide()
        dock = self.mistakes_dock
        dock.set_steps({step.id: step.title for step in self.plan.steps})
        dock.show_step(self._present_step())
        self._open_dock(dock)
        self._actions["mistakes"].setChecked(True)
        dock.list.setFocus()

    def _present_step(self) -> str:
        """Return the id of the step that comes next on the side that is worked on."""
        if isinstance(self.model, GrowingModel):
            return ""
        side = self.state.working_side
        side = "left" if side == "both" else side
        step = self.plan.next_step(self.model, self.state, side)
        return step.id if step else ""

    def show_mistake(self, mistake_id: str) -> None:
        """Bring the model to where a mistake has happened; one undo brings it back."""
        mistake = next((m for m in load_mistakes() if m.id == mistake_id), None)
        if mistake is None or isinstance(self.model, GrowingModel) or mistake.step not in self.plan:
            return
        self.do(show_mistake(mistake, self.plan, self.model, self.state.working_side))
        self.say(mistake.looks, 15000)
