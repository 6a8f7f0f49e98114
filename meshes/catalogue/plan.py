"""The dissection plan as data: steps, what must come first, what is taken away, what must stay.

Pure functions over ``plan.toml``; nothing here knows a model or a window.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, fields
from functools import lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from meshes.catalogue.loader import (
    check_fields,
    entry_error,
    load_catalogue,
    read_citations,
    read_toml,
)
from meshes.catalogue.records import SIDES, Catalogue, Citation
from meshes.errors import PeelbackError

FILE = "plan.toml"


@dataclass(frozen=True, slots=True)
class Cut:
    """A line of cut.

    Attributes
    ----------
    along : tuple of str
        Landmark patterns that it follows, in cutting order.
    words : str
    offset_mm : float
        Distance kept from the landmarks, outward or downward, mm.
    reach_mm : float
        Length from the first landmark, mm; 0 for the whole way.
    """

    along: tuple[str, ...]
    words: str
    offset_mm: float = 0.0
    reach_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Hinge:
    """Where a flap stays attached: landmark patterns (may be none) and words."""

    along: tuple[str, ...]
    words: str


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another usual way of doing a step."""

    id: str
    title: str
    words: str
    hinge: str = ""
    fold: str = ""


@dataclass(frozen=True, slots=True)
class Caution:
    """A general caution, shown at first start, in Help and on every sheet."""

    id: str
    title: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanStep:
    """One step.

    Attributes
    ----------
    id, title, do : str
    number : int
        Number of the main step that it belongs to.
    needs : tuple of str
        Steps that must be done before, on the same side.
    side : {"each", "both"}
        "each" is done a side at a time; "both" needs both sides ready.
    removes, travels, reveals, keep : tuple of str
        Rows, groups or part names: out of the way afterwards; riding on the
        flap; to be seen; not to be cut.
    cuts : tuple of Cut
    cut_end : str
        Which end is cut, in words.
    hinge : Hinge or None
    fold : str
        Direction in words.
    turn_deg : (2,) tuple of float or None
        Usual range through which the flap turns; common practice, no source.
    stop : tuple of str
        Stop signs: "too deep if ...".
    caution, differs : str
    alternatives : tuple of Alternative
    optional : bool
        Left out by many courses.
    minutes : float
    """

    id: str
    title: str
    do: str
    number: int
    needs: tuple[str, ...]
    side: str = "each"
    removes: tuple[str, ...] = ()
    travels: tuple[str, ...] = ()
    reveals: tuple[str, ...] = ()
    keep: tuple[str, ...] = ()
    cuts: tuple[Cut, ...] = ()
    cut_end: str = ""
    hinge: Hinge | None = None
    fold: str = ""
    turn_deg: tuple[float, float] | None = None
    stop: tuple[str, ...] = ()
    caution: str = ""
    differs: str = ""
    alternatives: tuple[Alternative, ...] = ()
    optional: bool = False
    minutes: float = 0.0


@dataclass(frozen=True, slots=True)
class DissectionPlan:
    """Steps in an order in which they can be done, and the general cautions."""

    steps: tuple[PlanStep, ...]
    cautions: tuple[Caution, ...]
    cited: tuple[tuple[str, tuple[Citation, ...]], ...]

    def step(self, step_id: str) -> PlanStep:
        """Return a step by its id.

        Raises
        ------
        PeelbackError
            No such step; the message lists those there are.
        """
        for step in self.steps:
            if step.id == step_id:
                return step
        listed = ", ".join(s.id for s in self.steps)
        raise PeelbackError(f"no step {step_id!r} in the plan; steps are {listed}")

    def allowed(
        self, step_id: str, side: str, done: Mapping[str, Collection[str]]
    ) -> tuple[bool, str]:
        """Say whether a step may be done now.

        Parameters
        ----------
        step_id : str
        side : {"left", "right", "both"}
        done : mapping of str to collection of str
            Ids of the steps done, by side.

        Returns
        -------
        (bool, str)
            False comes with the reason in words, True with "".
        """
        step = self.step(step_id)
        if side not in (*SIDES, "both"):
            raise PeelbackError(f"side must be left, right or both, got {side!r}")
        sides = SIDES if side == "both" or step.side == "both" else (side,)
        reasons = []
        for each in sides:
            ready = set(done.get(each, ()))
            missing = [self.step(need).title for need in step.needs if need not in ready]
            if missing:
                reasons.append(f"first, on the {each}: {', '.join(missing)}")
        return (not reasons, "; ".join(reasons))

    def before(self, step_id: str) -> tuple[PlanStep, ...]:
        """Return all steps that must come before one, in plan order."""
        found: set[str] = set()
        waiting = list(self.step(step_id).needs)
        while waiting:
            need = waiting.pop()
            if need not in found:
                found.add(need)
                waiting.extend(self.step(need).needs)
        return tuple(s for s in self.steps if s.id in found)

    def without(self, switched_off: Iterable[str]) -> DissectionPlan:
        """Return the plan with some steps switched off.

        A step that only looks hands its needs on to those that needed it. One
        that takes something away can go only if no step that stays needs it.

        Raises
        ------
        PeelbackError
            A step that stays would ask for something still covered.
        """
        off = {self.step(step_id).id for step_id in switched_off}
        kept = []
        for step in self.steps:
            if step.id in off:
                continue
            needs: list[str] = []
            waiting = list(step.needs)
            while waiting:
                need = self.step(waiting.pop(0))
                if need.id not in off:
                    needs.append(need.id)
                elif need.removes:
                    raise PeelbackError(
                        f"step {need.id!r} cannot be switched off: {step.id!r} needs what it opens"
                    )
                else:
                    waiting.extend(need.needs)
            changed = {f.name: getattr(step, f.name) for f in fields(step)}
            kept.append(PlanStep(**{**changed, "needs": tuple(dict.fromkeys(needs))}))
        return DissectionPlan(tuple(kept), self.cautions, self.cited)


def removed_by(
    step: PlanStep, side: str = "both", catalogue: Catalogue | None = None
) -> tuple[str, ...]:
    """Return the ids of the parts that a step takes away.

    Parameters
    ----------
    step : PlanStep
    side : {"left", "right", "both"}
        Median parts count for either side.
    catalogue : Catalogue or None
        The shipped one if None.

    Returns
    -------
    tuple of str
    """
    catalogue = catalogue or load_catalogue()
    ids: list[str] = []
    for name in step.removes:
        ids.extend(part_ids_of(name, catalogue))
    other = {"left": ".right", "right": ".left", "both": "\0"}[side]
    return tuple(dict.fromkeys(i for i in ids if not i.endswith(other)))


def part_ids_of(name: str, catalogue: Catalogue) -> tuple[str, ...]:
    """Return all part ids that a row, a group, or a part name stands for, () for none."""
    if name in catalogue:
        entry = catalogue[name]
        return () if entry.kind == "space" else entry.part_ids()
    members = list(catalogue.group(name))
    if not members and name in catalogue.groups:
        members = [catalogue[key] for key in catalogue.groups[name].members]
    if members:
        return tuple(i for entry in members for i in entry.part_ids())
    try:
        entry = catalogue.entry_of_part(name)
    except KeyError:
        return ()
    return tuple(f"{name}.{side}" for side in SIDES) if entry.paired else (name,)


@lru_cache(maxsize=1)
def load_plan() -> DissectionPlan:
    """Return the plan that ships with the package (read once)."""
    return read_plan(files("meshes.catalogue"), load_catalogue())


def steps() -> tuple[PlanStep, ...]:
    """Return the steps of the shipped plan."""
    return load_plan().steps


def cautions() -> tuple[Caution, ...]:
    """Return the general cautions of the shipped plan."""
    return load_plan().cautions


def allowed(step_id: str, side: str, done: Mapping[str, Collection[str]]) -> tuple[bool, str]:
    """Say whether a step of the shipped plan may be done now (see ``DissectionPlan.allowed``)."""
    return load_plan().allowed(step_id, side, done)


def read_plan(folder: Traversable | Path, catalogue: Catalogue) -> DissectionPlan:
    """Read and check a plan.

    Raises
    ------
    PeelbackError
        One line naming the step, for an unknown field, row, landmark or step,
        or for steps that need one another.
    """
    table = read_toml(folder, FILE)
    cited = read_citations(FILE, "plan", table.get("sources", {}), catalogue.citations)
    if not cited:
        raise entry_error(FILE, "plan", "source is missing")
    cautions = []
    for row in table.get("caution", []):
        key = row.get("id", "(no id)")
        check_fields(FILE, key, row, ("id", "title", "text"), ("id", "title", "text"))
        cautions.append(Caution(**row))
    allowed_fields = {f.name for f in fields(PlanStep)}
    made: list[PlanStep] = []
    for row in table.get("step", []):
        key = row.get("id", "(no id)")
        needed = ("id", "title", "do", "number", "needs")
        check_fields(FILE, key, row, allowed_fields, needed)
        if key in {s.id for s in made}:
            raise entry_error(FILE, key, "is a step already")
        made.append(_make_step(key, row, catalogue))
    _check_order(made)
    return DissectionPlan(tuple(made), tuple(cautions), tuple(cited.items()))


def _make_step(key: str, row: dict, catalogue: Catalogue) -> PlanStep:
    row = dict(row)
    cuts = make_cuts(FILE, key, row.pop("cuts", ()), catalogue)
    hinge = row.pop("hinge", None)
    if hinge is not None:
        check_fields(FILE, key, hinge, ("along", "words"), ("along", "words"))
        hinge = Hinge(tuple(hinge["along"]), hinge["words"])
    alternatives = []
    for other in row.pop("alternatives", ()):
        check_fields(
            FILE, key, other, ("id", "title", "words", "hinge", "fold"), ("id", "title", "words")
        )
        alternatives.append(Alternative(**other))
    _check_landmarks(FILE, key, hinge.along if hinge else (), catalogue)
    for field in ("removes", "travels", "reveals", "keep"):
        for name in row.get(field, ()):
            if name not in catalogue and not part_ids_of(name, catalogue):
                raise entry_error(FILE, key, f"{field} names an unknown row or part {name!r}")
    if row.get("side", "each") not in ("each", "both"):
        raise entry_error(FILE, key, f"side must be each or both, got {row['side']!r}")
    lists = {name: tuple(value) for name, value in row.items() if isinstance(value, list)}
    return PlanStep(**{**row, **lists}, cuts=cuts, hinge=hinge, alternatives=tuple(alternatives))


def make_cuts(
    file: str, key: str, rows: Iterable[Mapping], catalogue: Catalogue
) -> tuple[Cut, ...]:
    """Return the lines of cut of an entry of a file, checked.

    Raises
    ------
    PeelbackError
        One line naming the entry, for an unknown field or landmark.
    """
    cuts = []
    for cut in rows:
        check_fields(
            file, key, cut, ("along", "words", "offset_mm", "reach_mm"), ("along", "words")
        )
        _check_landmarks(file, key, cut["along"], catalogue)
        cuts.append(Cut(**{**cut, "along": tuple(cut["along"])}))
    return tuple(cuts)


def _check_landmarks(file: str, key: str, names: Iterable[str], catalogue: Catalogue) -> None:
    for name in names:
        if name.format(side="left") not in catalogue.landmarks:
            raise entry_error(file, key, f"unknown landmark {name!r}")


def _check_order(made: Sequence[PlanStep]) -> None:
    """Every step stands after all that it needs; so nothing can need itself."""
    known = {step.id for step in made}
    earlier: set[str] = set()
    for step in made:
        for need in step.needs:
            if need not in known:
                raise entry_error(FILE, step.id, f"needs an unknown step {need!r}")
            if need not in earlier:
                raise entry_error(FILE, step.id, f"needs {need!r}, which does not come before it")
        earlier.add(step.id)
