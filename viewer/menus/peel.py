"""The window's commands that peel: rail, strip and step line."""

from __future__ import annotations

from viewer.state import commands
from viewer.state.plan import names_in_words
from viewer.state.tongue import told
from viewer.state.view_state import STRATUM_COUNT, SideChoice
from viewer.state.visibility import HiddenThing


class PeelMenu:
    """What the Peel menu, the rail, the strip and the step line call."""

    def _peel(self, depth: int, side: SideChoice, dragging: bool) -> None:
        self.do(commands.peel_to(depth, side, self.model, dragging=dragging))

    def _nudge(self, by: int) -> None:
        state = self.state
        side = state.working_side
        depth = max(state.peeled) if side == "both" else state.peeled.of(side)
        self._peel(min(max(depth + by, 0), STRATUM_COUNT), side, False)

    def peel_deeper(self) -> None:
        """Take one more stratum off."""
        self._nudge(1)

    def peel_shallower(self) -> None:
        """Lay one stratum back."""
        self._nudge(-1)

    def peel_none(self) -> None:
        """Lay all strata back on the working side."""
        self._peel(0, self.state.working_side, False)

    def bring_all_back(self) -> None:
        """Show everything, as it was before any peeling or hiding."""
        self.do(commands.bring_all_back())

    def _restore(self, thing: HiddenThing) -> None:
        self.do(commands.restore(thing.restore, thing.side, thing.stratum))

    def work_on(self, side: SideChoice) -> None:
        """Choose the side on which rail and steps act."""
        self.do(commands.set_working_side(side))

    def do_step(self, step_id: str, anyway: bool = False) -> None:
        """Do a step of the plan, or say why not."""
        if step_id not in self.plan:
            return
        side = self.state.working_side
        reason = self.plan.refusal(step_id, self.model, self.state, side)
        if reason and not anyway:
            self.say(reason, 10000)
            return
        self.do(self.plan.do_step(step_id, self.model, side, self.settings.steps_fold))
        step = self.plan[step_id]
        if step.keep:
            names = names_in_words(step.keep, self._names_of_things())
            self.say(told("Keep: {names}.", names=names), 10000)

    def lay_step_back(self, step_id: str) -> None:
        """Lay a step back, and all that need it."""
        if step_id in self.plan:
            self.do(self.plan.undo_step(step_id, self.model, self.state.working_side))

    def _step_side(self) -> str:
        """The side that decides which step is next when both are worked on: the one behind."""
        side = self.state.working_side
        if side != "both":
            return side
        left = len(self.plan.done(self.model, self.state, "left"))
        right = len(self.plan.done(self.model, self.state, "right"))
        return "left" if left <= right else "right"

    def next_step(self) -> None:
        """Do the next step that is allowed."""
        step = self.plan.next_step(self.model, self.state, self._step_side())
        if step is None:
            self.say("Every step of the plan is done.")
            return
        fold = self.settings.steps_fold
        self.do(self.plan.do_step(step.id, self.model, self.state.working_side, fold))
        self.say(told("Done: {what}", what=told(step.title)))

    def previous_step(self) -> None:
        """Lay the last step back."""
        side = self.state.working_side
        other = self._step_side()
        if side == "both":
            other = "right" if other == "left" else "left"
        step = self.plan.last_done(self.model, self.state, other)
        if step is None:
            self.say("No step has been done yet.")
            return
        self.do(self.plan.undo_step(step.id, self.model, side))
        self.say(told("Laid back: {what}", what=told(step.title)))
