"""The dissection plan against the present state: what is done, allowed or refused, and why."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

from meshes.catalogue.folds import own_parts
from viewer.state.commands import Command
from viewer.state.folding import is_folded, with_fold
from viewer.state.tongue import told
from viewer.state.view_state import BOTH_SIDES, SideChoice, ViewState, on_side, sides_of
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
    stop : str
        Signs of being too deep.
    cut, hinge : str
        Line of cut and where the flap stays fixed, in words.
    caution : str
    differs : str
        Where courses differ.
    side : {"each", "both"}
        "each" is done a side at a time, "both" once, when both sides are ready.
    folds : tuple of str
        Flaps that it lays back (names of folds, without side).
    by_hand : tuple of str
        Flaps that can be laid back at it, but only when they are asked for.
    takes_off : tuple of str
        Flaps of earlier steps that come off with this one, when steps fold.
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
    stop: str = ""
    cut: str = ""
    hinge: str = ""
    caution: str = ""
    differs: str = ""
    side: str = "each"
    folds: tuple[str, ...] = ()
    by_hand: tuple[str, ...] = ()
    takes_off: tuple[str, ...] = ()
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

    def __init__(
        self, steps: Sequence[Step], expand: Callable[[str], Iterable[str]] | None = None
    ) -> None:
        """Check the order of the steps; ``expand`` spells a name out into part ids."""
        self.steps = tuple(steps)
        self._expand = expand
        self._removed: dict[tuple, frozenset[str]] = {}
        self._called: tuple[tuple, dict[str, list[str]]] = ((), {})
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
        called = self._parts_by_handle(model)
        found: set[str] = set()
        for name in set(names):
            found.update(called.get(name, ()))
            if self._expand is not None:
                found.update(i for i in self._expand(name) if i in model.parts)
        return {i for i in found if on_side(model.parts[i].side, side)}

    def _parts_by_handle(self, model: HasParts) -> dict[str, list[str]]:
        """Return handle -> ids, gathered once for a model (and again while it grows)."""
        key = (id(model.parts), len(model.parts))
        if self._called[0] != key:
            called: dict[str, list[str]] = {}
            for part in model.parts.values():
                for handle in _handles(part):
                    called.setdefault(handle, []).append(part.id)
            self._called = (key, called)
        return self._called[1]

    def removed_by(self, step: Step, model: HasParts, side: str) -> frozenset[str]:
        """Return the ids that a step takes out of the way on one side."""
        key = (id(model.parts), len(model.parts), step.id, side)
        if key not in self._removed:
            self._removed[key] = frozenset(self.parts_of(step.removes, model, side))
        return self._removed[key]

    def done(self, model: HasParts, state: ViewState, side: str) -> set[str]:
        """Return the ids of the steps that count as done on one side.

        A step that takes something away is done when all of it is gone,
        or folded back, whether by the step line, the rail or by hand. A step that only looks
        or frees is done when it was ticked or when a later step is done,
        unless something it needs has been laid back since.
        """
        removing = {
            step.id: parts for step in self.steps if (parts := self.removed_by(step, model, side))
        }
        gone = {
            step_id
            for step_id, parts in removing.items()
            if all(taken_off(model.parts[i], state) or is_folded(state, i) for i in parts)
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
        done = {s: self.done(model, state, s) for s in BOTH_SIDES}
        lines = []
        for step in self.steps:
            if step.id in done[side]:
                lines.append(StepLine(step, "done"))
                continue
            reasons = []
            for s in BOTH_SIDES if step.side == "both" else (side,):
                missing = [self._by_id[n].title for n in step.needs if n not in done[s]]
                if missing:
                    titles = ", ".join(f"“{told(title)}”" for title in missing)
                    reasons.append(
                        told("First, on the {side}: {titles}.", side=told(s), titles=titles)
                    )
            lines.append(StepLine(step, "refused" if reasons else "allowed", " ".join(reasons)))
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

    def folds_of(
        self, step: Step, model: HasParts, side: str, by_hand: bool = False
    ) -> tuple[str, ...]:
        """Return the flaps that a step lays back on one side of this model.

        With ``by_hand`` those as well that it lays back only when asked.
        """
        names = (*step.folds, *step.by_hand) if by_hand else step.folds
        folds = (f"{name}.{side}" for name in names)
        return tuple(
            f for f in folds if own_parts(f) and all(i in model.parts for i in own_parts(f))
        )

    def _taken_off_by(self, step: Step, model: HasParts, side: str) -> set[str]:
        """Return the ids of earlier flaps (skin, fat) that come off with a step."""
        ids = {i for name in step.takes_off for i in own_parts(f"{name}.{side}")}
        return {i for i in ids if i in model.parts}

    def do_step(
        self, step_id: str, model: HasParts, side: SideChoice, fold: bool = False
    ) -> Command:
        """Return the command that does a step, whether or not it is allowed.

        With ``fold`` flaps are folded back where the plan says so, and what
        rides on one stays; otherwise all of it is taken away.

        Ask ``refusal`` first; calling this in spite of a refusal is the
        instructor's 'anyway' and is noted as such in the state.
        """
        step = self._by_id[step_id]
        if step.side == "both":
            side = "both"

        def change(state: ViewState) -> ViewState:
            ticked, overridden, removed = state.ticked, state.overridden, state.removed
            for s in sides_of(side):
                if self.refusal(step_id, model, state, s):
                    overridden = overridden.put(s, overridden.of(s) | {step_id})
                ticked = ticked.put(s, ticked.of(s) | {step_id})
                going = self.removed_by(step, model, s)
                if fold:
                    for fold_id in self.folds_of(step, model, s):
                        state = with_fold(state, fold_id, 1.0)
                    going = {i for i in going if not is_folded(state, i)}
                    going |= self._taken_off_by(step, model, s)
                removed = removed | going
            return replace(state, ticked=ticked, overridden=overridden, removed=removed)

        where = "both sides" if side == "both" else side
        return Command(f"step “{step.title}”, {where}", change)

    def undo_step(self, step_id: str, model: HasParts, side: SideChoice) -> Command:
        """Return the command that lays a step's parts back, and those of all that need it."""
        step = self._by_id[step_id]
        steps = [step, *self.after(step_id)]
        if step.side == "both":
            side = "both"

        def change(state: ViewState) -> ViewState:
            ticked, overridden = state.ticked, state.overridden
            peeled, off = state.peeled, state.strata_off
            removed, hidden = state.removed, state.hidden
            ids = {s.id for s in steps}
            for s in sides_of(side):
                back = set().union(
                    *(self.removed_by(st, model, s) for st in steps),
                    *(self._taken_off_by(st, model, s) for st in steps),
                )
                for fold_id in (f for st in steps for f in self.folds_of(st, model, s)):
                    state = with_fold(state, fold_id, 0.0)
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


def plan_from_records(
    records: Iterable[Any],
    expand: Callable[[str], Iterable[str]] | None = None,
    folds: Callable[[str], Iterable[str]] | None = None,
    takes_off: Callable[[str], Iterable[str]] | None = None,
    by_hand: Callable[[str], Iterable[str]] | None = None,
) -> Plan:
    """Make a plan from the catalogue's own records (``meshes.catalogue.plan.PlanStep``).

    ``folds`` tells the names of the flaps that a step lays back, ``takes_off`` of those of
    earlier steps that come off with it, ``by_hand`` of those that it leaves to the hand.
    """
    return Plan(
        [
            Step(
                id=record.id,
                title=record.title,
                needs=record.needs,
                removes=record.removes,
                reveals=record.reveals,
                keep=record.keep,
                do=record.do,
                stop="; ".join(record.stop),
                cut="; ".join(cut.words for cut in record.cuts),
                hinge=" – ".join(
                    words for words in (record.hinge and record.hinge.words, record.fold) if words
                ),
                caution=record.caution,
                differs=record.differs,
                side=record.side,
                folds=tuple(folds(record.id)) if folds is not None else (),
                by_hand=tuple(by_hand(record.id)) if by_hand is not None else (),
                takes_off=tuple(takes_off(record.id)) if takes_off is not None else (),
                minutes=record.minutes,
            )
            for record in records
        ],
        expand,
    )


def names_in_words(names: Iterable[str], titles: Mapping[str, str]) -> str:
    """Return part names, groups or free words as a readable list."""
    return ", ".join(titles.get(n, n.replace("_", " ")) for n in names)


def plan_with_folds(catalogue: Any) -> Plan:
    """Return the plan of the catalogue with its flaps, names spelled out by the model's rows."""
    from meshes.catalogue.folds import folds_by_hand, folds_of_step, folds_off_with
    from meshes.catalogue.plan import part_ids_of, steps

    return plan_from_records(
        steps(),
        lambda name: part_ids_of(name, catalogue),
        lambda step_id: [rule.id for rule in folds_of_step(step_id)],
        lambda step_id: [rule.id for rule in folds_off_with(step_id)],
        lambda step_id: [rule.id for rule in folds_by_hand(step_id)],
    )
