"""The dissection plan against the present state: what is done, allowed or refused, and why."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from viewer.state.commands import Command
from viewer.state.view_state import SideChoice, ViewState, on_side, sides_of
from viewer.state.visibility import HasParts, taken_off

StepStatus = Literal["done", "allowed", "refused"]


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the plan, as the step line shows it.

    Attributes
    ----------
    id : str
    title : str
        What to do, in one line.
    needs : tuple of str
        Ids of steps that must come first.
    removes : tuple of str
        Part names, groups or catalogue entries that are out of the way afterwards.
    reveals, keep : tuple of str
        The same kind of names: what comes into view, and what must not be cut.
    do : str
        How it is done.
    caution : str
    differs : str
        Where courses differ.
    side : {"each", "both", "mid"}
        "each" is done a side at a time, the others once for the donor.
    minutes : float
        Planned time; an editable default without a source.
    """

    id: str
    title: str
    needs: tuple[str, ...] = ()
    removes: tuple[str, ...] = ()
    reveals: tuple[str, ...] = ()
    keep: tuple[str, ...] = ()
    do: str = ""
    caution: str = ""
    differs: str = ""
    side: str = "each"
    minutes: float = 0.0


@dataclass(frozen=True, slots=True)
class StepLine:
    """How one step stands on one side.

    Attributes
    ----------
    step : Step
    status : {"done", "allowed", "refused"}
    reason : str
        Why it is refused, in words; "" otherwise.
    """

    step: Step
    status: StepStatus
    reason: str = ""


class Plan:
    """Steps in their order, with the parts of a model that each one concerns."""

    def __init__(self, steps: Sequence[Step]) -> None:
        self.steps = tuple(steps)
        self._by_id = {step.id: step for step in self.steps}
        for step in self.steps:
            for need in step.needs:
                if need not in self._by_id:
                    raise ValueError(f"step {step.id} needs {need}, which is not in the plan")
        self._ancestors = {step.id: self._closure(step.id) for step in self.steps}

    def __getitem__(self, step_id: str) -> Step:
        return self._by_id[step_id]

    def __contains__(self, step_id: str) -> bool:
        return step_id in self._by_id

    def _closure(self, step_id: str) -> frozenset[str]:
        found: set[str] = set()
        waiting = list(self._by_id[step_id].needs)
        while waiting:
            need = waiting.pop()
            if need == step_id:
                raise ValueError(f"step {step_id} needs itself")
            if need not in found:
                found.add(need)
                waiting.extend(self._by_id[need].needs)
        return frozenset(found)

    def before(self, step_id: str) -> list[Step]:
        """Return all steps that must come before one, in plan order."""
        return [s for s in self.steps if s.id in self._ancestors[step_id]]

    def after(self, step_id: str) -> list[Step]:
        """Return all steps that need this one, at once or through others."""
        return [s for s in self.steps if step_id in self._ancestors[s.id]]

    def parts_of(self, names: Iterable[str], model: HasParts, side: SideChoice) -> set[str]:
        """Return the ids of the model's parts that names stand for, on a side."""
        names = set(names)
        return {
            part.id
            for part in model.parts.values()
            if on_side(part.side, side) and names & _handles(part)
        }

    def removed_by(self, step: Step, model: HasParts, side: str) -> set[str]:
        """Return the ids that a step takes out of the way on one side."""
        return self.parts_of(step.removes, model, side)

    def done(self, model: HasParts, state: ViewState, side: str) -> set[str]:
        """Return the ids of the steps that count as done on one side.

        A step that takes something away is done when all of it is gone,
        whether by the step line, the rail or by hand. A step that only looks
        or frees is done when it was ticked or when a later step is done,
        unless something it needs has been laid back since.
        """
        removing = {
            step.id: parts for step in self.steps if (parts := self.removed_by(step, model, side))
        }
        gone = {
            step_id
            for step_id, parts in removing.items()
            if all(taken_off(model.parts[i], state) for i in parts)
        }
        implied = set()
        for step_id in gone:
            implied |= {a for a in self._ancestors[step_id] if a not in removing}
        ticked = {
            step_id
            for step_id in state.ticked.of(side)
            if step_id in self._by_id
            and step_id not in removing
            and (
                step_id in state.overridden.of(side)
                or all(a in gone for a in self._ancestors[step_id] if a in removing)
            )
        }
        return gone | implied | ticked

    def lines(self, model: HasParts, state: ViewState, side: str) -> list[StepLine]:
        """Return every step with its standing on one side, in plan order."""
        done = self.done(model, state, side)
        lines = []
        for step in self.steps:
            if step.id in done:
                lines.append(StepLine(step, "done"))
                continue
            missing = [self._by_id[n] for n in step.needs if n not in done]
            if missing:
                titles = ", ".join(f"“{m.title}”" for m in missing)
                lines.append(StepLine(step, "refused", f"First: {titles} ({side} side)."))
            else:
                lines.append(StepLine(step, "allowed"))
        return lines

    def next_step(self, model: HasParts, state: ViewState, side: str) -> Step | None:
        """Return the first step that is allowed and not done, or None."""
        for line in self.lines(model, state, side):
            if line.status == "allowed":
                return line.step
        return None

    def last_done(self, model: HasParts, state: ViewState, side: str) -> Step | None:
        """Return the done step that no other done step needs, latest in the plan."""
        done = self.done(model, state, side)
        for step in reversed(self.steps):
            if step.id in done and not any(step.id in self._ancestors[other] for other in done):
                return step
        return None

    def refusal(self, step_id: str, model: HasParts, state: ViewState, side: SideChoice) -> str:
        """Return why a step may not be done yet, or "" when it may."""
        reasons = []
        for s in sides_of(side):
            for line in self.lines(model, state, s):
                if line.step.id == step_id and line.status == "refused":
                    reasons.append(line.reason)
        return " ".join(dict.fromkeys(reasons))

    def do_step(self, step_id: str, model: HasParts, side: SideChoice) -> Command:
        """Return the command that does a step, whether or not it is allowed.

        Ask ``refusal`` first; calling this in spite of a refusal is the
        instructor's 'anyway' and is noted as such in the state.
        """
        step = self._by_id[step_id]

        def change(state: ViewState) -> ViewState:
            ticked, overridden, removed = state.ticked, state.overridden, state.removed
            for s in sides_of(side):
                if self.refusal(step_id, model, state, s):
                    overridden = overridden.put(s, overridden.of(s) | {step_id})
                ticked = ticked.put(s, ticked.of(s) | {step_id})
                removed = removed | self.removed_by(step, model, s)
            return replace(state, ticked=ticked, overridden=overridden, removed=removed)

        where = "both sides" if side == "both" else side
        return Command(f"step “{step.title}”, {where}", change)

    def undo_step(self, step_id: str, model: HasParts, side: SideChoice) -> Command:
        """Return the command that lays a step's parts back, and those of all that need it."""
        step = self._by_id[step_id]
        steps = [step, *self.after(step_id)]

        def change(state: ViewState) -> ViewState:
            ticked, overridden = state.ticked, state.overridden
            peeled, off = state.peeled, state.strata_off
            removed, hidden = state.removed, state.hidden
            ids = {s.id for s in steps}
            for s in sides_of(side):
                back = set().union(*(self.removed_by(st, model, s) for st in steps))
                ticked = ticked.put(s, ticked.of(s) - ids)
                overridden = overridden.put(s, overridden.of(s) - ids)
                strata = {model.parts[i].stratum for i in back}
                if strata and peeled.of(s) > min(strata):
                    depth = min(strata)
                    # The rail comes out to the outermost thing that lies there again;
                    # what was peeled below it and is no step's business stays away.
                    stays = {
                        p.id
                        for p in model.parts.values()
                        if p.side in (s, None)
                        and depth <= p.stratum < peeled.of(s)
                        and p.id not in back
                        and taken_off(p, state)
                    }
                    removed = removed | stays
                    peeled = peeled.put(s, depth)
                off = off.put(s, off.of(s) - strata)
                removed = removed - back
                hidden = hidden - back
            return replace(
                state,
                ticked=ticked,
                overridden=overridden,
                removed=removed,
                hidden=hidden,
                peeled=peeled,
                strata_off=off,
            )

        where = "both sides" if side == "both" else side
        return Command(f"lay back “{step.title}”, {where}", change)


def _handles(part: object) -> set[str]:
    """All names by which a plan may call a part."""
    name = part.id.split(".", 1)[0]
    return {name, part.group, getattr(part, "entry", name)} - {""}


def plan_from_records(records: Iterable[object]) -> Plan:
    """Make a plan from the catalogue's own records (any objects with the fields of ``Step``)."""

    def words(record: object, *names: str) -> tuple[str, ...]:
        for name in names:
            value = getattr(record, name, None)
            if value:
                return (value,) if isinstance(value, str) else tuple(value)
        return ()

    def text(record: object, *names: str) -> str:
        for name in names:
            value = getattr(record, name, None)
            if value:
                return value if isinstance(value, str) else "; ".join(value)
        return ""

    return Plan(
        [
            Step(
                id=str(record.id),
                title=text(record, "title", "what"),
                needs=words(record, "needs"),
                removes=words(record, "removes"),
                reveals=words(record, "reveals"),
                keep=words(record, "keep"),
                do=text(record, "do", "how"),
                caution=text(record, "caution", "cautions"),
                differs=text(record, "differs", "courses_differ"),
                side=text(record, "side") or "each",
                minutes=float(getattr(record, "minutes", 0) or 0),
            )
            for record in records
        ]
    )


def names_in_words(names: Iterable[str], titles: Mapping[str, str]) -> str:
    """Return part names, groups or free words as a readable list."""
    return ", ".join(titles.get(n, n.replace("_", " ")) for n in names)
