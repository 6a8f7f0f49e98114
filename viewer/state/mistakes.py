"""Showing a common mistake on the model, as one undoable command."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Protocol

from viewer.state.commands import Command
from viewer.state.plan import Plan
from viewer.state.view_state import SideChoice, ViewState, sides_of
from viewer.state.visibility import HasParts


class Shown(Protocol):
    """What showing needs to know of a mistake (``meshes.catalogue.mistakes.Mistake``)."""

    title: str
    step: str
    gone: Iterable[str]
    bare: Iterable[str]
    view: str
    marks: bool


def bare_parts(mistake: Shown, plan: Plan, model: HasParts, side: SideChoice) -> tuple[str, ...]:
    """Return the ids of what the mistake lays bare, on a side."""
    return tuple(sorted(plan.parts_of(mistake.bare, model, side)))


def show_mistake(mistake: Shown, plan: Plan, model: HasParts, side: SideChoice) -> Command:
    """Bring the model to where a mistake has happened.

    All steps before are done, and the step itself, on the chosen side; what the mistake
    takes with it is gone, what it lays bare is picked. One undo brings all of it back,
    but for the pick, which undo leaves alone.
    """
    steps = [*plan.before(mistake.step), plan[mistake.step]]

    def change(state: ViewState) -> ViewState:
        removed, ticked = state.removed, state.ticked
        for s in sides_of(side):
            for step in steps:
                removed = removed | plan.removed_by(step, model, s)
            ticked = ticked.put(s, ticked.of(s) | {step.id for step in steps})
            removed = removed | frozenset(plan.parts_of(mistake.gone, model, s))
        bare = bare_parts(mistake, plan, model, side)
        return replace(
            state,
            removed=removed - frozenset(bare),
            hidden=state.hidden - frozenset(bare),
            ticked=ticked,
            alone=frozenset(),
            selection=bare,
            view=mistake.view,
            camera=None,
            surface_marks=state.surface_marks or mistake.marks,
        )

    return Command(f"show “{mistake.title}”", change, moves_camera=True)
