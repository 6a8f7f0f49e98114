"""How muscles and fasciae are laid back, as data: ``folds.toml``, checked on loading.

Pure facts; ``meshes.questions.reflect`` works the folds out on a finished model.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from functools import cache, lru_cache
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
from meshes.catalogue.plan import Cut, DissectionPlan, load_plan, make_cuts, part_ids_of
from meshes.catalogue.records import SIDES, Catalogue
from meshes.errors import PeelbackError

FILE = "folds.toml"
CUT_ENDS = ("origin", "insertion")
MOST_TURN_DEG = 180.0
MOST_ASIDE_MM = 30.0
OUT_OF_THE_WAY = 0.5
"""From this share on a flap counts as folded back: it lies clear of what it covered."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Incision:
    """The lines that bound a flap of skin or fascia, by their numbers in the plan's step.

    Attributes
    ----------
    title : str
    hinge : (2,) tuple of str
        Landmarks beside which the hinge ends, above and below.
    hinge_out_mm : (2,) tuple of float
        How far outward of them.
    top, bottom : int or None
        Lines across; None: straight across at the end of the medial cut.
    medial : int or None
        The cut beside the midline; None: the flap begins at the midline.
    """

    title: str
    hinge: tuple[str, str]
    hinge_out_mm: tuple[float, float]
    top: int | None = None
    bottom: int | None = None
    medial: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FoldRule:
    """How one flap is laid back, on either side.

    Attributes
    ----------
    id, title : str
    step : str
        Step of the plan that does it.
    parts : tuple of str
        Part names (without side) that turn as one sheet.
    cut_end : {"origin", "insertion"}
        The end of the fibres that comes free.
    turn_deg : float
        Through how much the hand turns it.
    axis : (3,) tuple of float or None
        Of the turn: outward, back, up. None takes the hinge's own direction.
    falls : (3,) tuple of float
        Where its weight draws it: outward, back, up. The donor lies prone.
    hinge : tuple of str
        Two landmarks, where the hinge crosses the muscle; none: it is the uncut end.
    hinge_out_mm : float
        How far outward of them it lies.
    held : float
        Share of the fibres next to the uncut end that is not lifted.
    stump_mm : float
        What is left of each fibre at the cut end.
    stump_from_midline : bool
        The stump is measured from the midline instead of from the fibre's end.
    flaps : tuple of Incision
        For skin and fascia: the flaps between lines of incision, instead of fibres.
    cuts : tuple of Cut
        Lines that bound the flaps, where the plan's step has none of its own.
    by_hand : bool
        It is done only when it is asked for: its step takes the parts off instead.
    lines_of : str
        Step whose lines of cut bound the flaps; "": the fold's own.
    square : bool
        It turns square to its fibres instead of along its hinge's line.
    belly : bool
        A round muscle, whose fibres make no sheet.
    off_with : str
        Later step with which the flap comes off altogether; "": it stays.
    clings : tuple of str
        Part names of nerves and vessels that come along.
    aside_mm : float
        Above 0: it is not turned but drawn aside uncut, by so much in the middle.
    bow : tuple of str
        Two landmarks, between whose heights it is drawn aside.
    """

    id: str
    title: str
    step: str
    parts: tuple[str, ...]
    cut_end: str = "origin"
    turn_deg: float = 0.0
    axis: tuple[float, float, float] | None = None
    falls: tuple[float, float, float] = (0.0, -1.0, 0.0)
    hinge: tuple[str, ...] = ()
    hinge_out_mm: float = 0.0
    held: float = 0.0
    stump_mm: float = 4.0
    stump_from_midline: bool = False
    flaps: tuple[Incision, ...] = ()
    cuts: tuple[Cut, ...] = ()
    by_hand: bool = False
    lines_of: str = ""
    off_with: str = ""
    square: bool = False
    belly: bool = False
    clings: tuple[str, ...] = ()
    aside_mm: float = 0.0
    bow: tuple[str, ...] = ()

    def part_ids(self, side: str) -> tuple[str, ...]:
        """Return the ids of what is folded on a side."""
        return tuple(f"{name}.{side}" for name in self.parts)

    def cling_ids(self, side: str) -> tuple[str, ...]:
        """Return the ids of what rides on the flap."""
        return tuple(f"{name}.{side}" for name in self.clings)


@dataclass(frozen=True, slots=True)
class Laid:
    """One flap as it lies.

    Attributes
    ----------
    fold_id : str
        ``trapezius.left``.
    share : float
        0 in place, 1 laid back.
    """

    fold_id: str
    share: float = 1.0

    def __post_init__(self) -> None:
        if self.fold_id.rpartition(".")[2] not in SIDES:
            raise PeelbackError(f"fold must end in .left or .right, got {self.fold_id!r}")
        if not 0.0 <= self.share <= 1.0:
            raise PeelbackError(f"share of fold {self.fold_id} must lie in 0–1, got {self.share:g}")

    @property
    def side(self) -> str:
        """The side on which it is."""
        return self.fold_id.rpartition(".")[2]


@lru_cache(maxsize=1)
def load_folds() -> tuple[FoldRule, ...]:
    """Return the folds that ship with the package (read once)."""
    return read_folds(files("meshes.catalogue"), load_catalogue(), load_plan())


def fold_ids() -> tuple[str, ...]:
    """Return all folds with their sides, as they are named in states and on the command line."""
    return tuple(f"{rule.id}.{side}" for rule in load_folds() for side in SIDES)


def fold_named(fold_id: str) -> tuple[FoldRule, str]:
    """Return the rule and the side of ``trapezius.left``.

    Raises
    ------
    PeelbackError
        There is no such fold; the message lists those there are.
    """
    name, _, side = fold_id.rpartition(".")
    for rule in load_folds():
        if rule.id == name and side in SIDES:
            return rule, side
    listed = ", ".join(rule.id for rule in load_folds())
    raise PeelbackError(f"no fold {fold_id!r}; allowed are {listed}, each with .left or .right")


@cache
def fold_of_part(part_id: str) -> str:
    """Return the fold that moves a part or that it rides on, "" for none."""
    name, _, side = part_id.rpartition(".")
    for rule in load_folds():
        if side in SIDES and (name in rule.parts or name in rule.clings):
            return f"{rule.id}.{side}"
    return ""


def moved_by(fold_id: str) -> tuple[str, ...]:
    """Return the ids of all parts that a fold moves, () for a fold that is not known."""
    try:
        rule, side = fold_named(fold_id)
    except PeelbackError:
        return ()
    return (*rule.part_ids(side), *rule.cling_ids(side))


def own_parts(fold_id: str) -> tuple[str, ...]:
    """Return the ids of the flap itself, without what rides on it; () for an unknown fold."""
    try:
        rule, side = fold_named(fold_id)
    except PeelbackError:
        return ()
    return rule.part_ids(side)


def folds_of_step(step_id: str) -> tuple[FoldRule, ...]:
    """Return the folds that a step of the plan does, in order."""
    return tuple(rule for rule in load_folds() if rule.step == step_id and not rule.by_hand)


def folds_by_hand(step_id: str) -> tuple[FoldRule, ...]:
    """Return the folds that a step of the plan leaves to the hand, in order."""
    return tuple(rule for rule in load_folds() if rule.step == step_id and rule.by_hand)


def folds_off_with(step_id: str) -> tuple[FoldRule, ...]:
    """Return the folds of earlier steps whose flaps come off with a step of the plan."""
    return tuple(rule for rule in load_folds() if step_id and rule.off_with == step_id)


def read_folds(
    folder: Traversable | Path, catalogue: Catalogue, plan: DissectionPlan
) -> tuple[FoldRule, ...]:
    """Read and check a table of folds.

    Raises
    ------
    PeelbackError
        One line naming the fold, for an unknown field, row or step, or an
        impossible value.
    """
    table = read_toml(folder, FILE)
    if not read_citations(FILE, "folds", table.get("sources", {}), catalogue.citations):
        raise entry_error(FILE, "folds", "source is missing")
    allowed = {f.name for f in fields(FoldRule)}
    needed = ("id", "title", "step", "parts")
    made: list[FoldRule] = []
    for row in table.get("fold", []):
        key = row.get("id", "(no id)")
        how = ("bow",) if "aside_mm" in row else ("cut_end", "turn_deg")
        check_fields(FILE, key, row, allowed, (*needed, *how))
        made.append(_make_fold(key, row, catalogue, plan, made))
    return tuple(made)


def _make_fold(key, row, catalogue: Catalogue, plan: DissectionPlan, made) -> FoldRule:
    if key in {rule.id for rule in made}:
        raise entry_error(FILE, key, "is a fold already")
    if row["step"] not in {step.id for step in plan.steps}:
        raise entry_error(FILE, key, f"step {row['step']!r} is not in the plan")
    if row.get("off_with", row["step"]) not in {step.id for step in plan.steps}:
        raise entry_error(FILE, key, f"off_with {row['off_with']!r} is not in the plan")
    if "aside_mm" in row:
        _check_aside(key, row, catalogue)
    elif row["cut_end"] not in CUT_ENDS:
        raise entry_error(
            FILE, key, f"cut_end must be one of {', '.join(CUT_ENDS)}, got {row['cut_end']!r}"
        )
    elif not 0 < row["turn_deg"] <= MOST_TURN_DEG:
        raise entry_error(
            FILE, key, f"turn_deg must lie in 0–{MOST_TURN_DEG:g}, got {row['turn_deg']}"
        )
    if not 0.0 <= row.get("held", 0.0) <= 0.8:
        raise entry_error(FILE, key, f"held must lie in 0–0.8, got {row['held']}")
    hinge = row.get("hinge", ())
    if len(hinge) not in (0, 2):
        raise entry_error(FILE, key, f"hinge must be two landmarks, got {len(hinge)}")
    for name in hinge:
        if name.format(side="left") not in catalogue.landmarks:
            raise entry_error(FILE, key, f"unknown landmark {name!r}")
    if not row["parts"]:
        raise entry_error(FILE, key, "parts is empty")
    for field in ("parts", "clings"):
        for name in row.get(field, ()):
            if f"{name}.left" not in part_ids_of(name, catalogue):
                raise entry_error(FILE, key, f"{field} names an unknown paired part {name!r}")
    taken = {name: rule.id for rule in made for name in rule.parts + rule.clings}
    here: set[str] = set()
    for name in (*row["parts"], *row.get("clings", ())):
        if name in here:
            raise entry_error(FILE, key, f"{name!r} is named twice")
        here.add(name)
        if name in taken:
            raise entry_error(FILE, key, f"{name!r} is folded by {taken[name]!r} already")
    for field in ("axis", "falls"):
        value = row.get(field, (0, 0, 1))
        if len(value) != 3 or not any(value):
            raise entry_error(FILE, key, f"{field} must be three numbers, not all 0, got {value}")
    cuts = make_cuts(FILE, key, row.get("cuts", ()), catalogue)
    lines = {step.id: len(step.cuts) for step in plan.steps}.get(row.get("lines_of", row["step"]))
    flaps = tuple(
        _make_incision(key, flap, catalogue, len(cuts) or lines) for flap in row.get("flaps", ())
    )
    if flaps and len(row["parts"]) != 1:
        raise entry_error(FILE, key, "flaps between incisions are cut from one part")
    if not 0.0 <= row.get("stump_mm", 0.0) <= 60.0:
        raise entry_error(FILE, key, f"stump_mm must lie in 0–60, got {row['stump_mm']}")
    lists = {name: tuple(value) for name, value in row.items() if isinstance(value, list)}
    return FoldRule(**{**row, **lists, "flaps": flaps, "cuts": cuts})


def _check_aside(key, row, catalogue: Catalogue) -> None:
    if not 0 < row["aside_mm"] <= MOST_ASIDE_MM:
        raise entry_error(
            FILE, key, f"aside_mm must lie in 0–{MOST_ASIDE_MM:g}, got {row['aside_mm']}"
        )
    turned = {"cut_end", "turn_deg", "hinge", "flaps", "belly", "stump_mm"} & set(row)
    if turned:
        raise entry_error(FILE, key, f"what is drawn aside is not cut: {sorted(turned)[0]}")
    if len(row["bow"]) != 2:
        raise entry_error(FILE, key, f"bow must be two landmarks, got {len(row['bow'])}")
    for name in row["bow"]:
        if name.format(side="left") not in catalogue.landmarks:
            raise entry_error(FILE, key, f"unknown landmark {name!r}")


def _make_incision(key, row, catalogue: Catalogue, lines: int | None) -> Incision:
    allowed = {f.name for f in fields(Incision)}
    check_fields(FILE, key, row, allowed, ("title", "hinge", "hinge_out_mm"))
    if lines is None:
        raise entry_error(FILE, key, "lines_of names no step of the plan")
    for name in row["hinge"]:
        if name.format(side="left") not in catalogue.landmarks:
            raise entry_error(FILE, key, f"unknown landmark {name!r}")
    if len(row["hinge"]) != 2 or len(row["hinge_out_mm"]) != 2:
        raise entry_error(FILE, key, "a flap's hinge needs two landmarks and two distances")
    numbers = [row[name] for name in ("top", "bottom", "medial") if name in row]
    if any(not 0 <= number < lines for number in numbers):
        raise entry_error(FILE, key, f"lines of cut are numbered 0–{lines - 1}, got {numbers}")
    if ("top" not in row or "bottom" not in row) and "medial" not in row:
        raise entry_error(FILE, key, "a flap without lines across needs a medial one")
    return Incision(
        **{name: tuple(value) if isinstance(value, list) else value for name, value in row.items()}
    )
