"""The way in to a part: the shortest ordered list of steps that brings it into view.

The steps are those of the dissection plan, done in an order in which each step's
needs are met. Which steps help is read off the layers of the model
(``meshes.questions.cover``); nothing is looked up. The list is the shortest there
is: all sets of steps that could help are compared.

A teaching model: never for needle or surgical guidance.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from scipy.spatial import cKDTree

from meshes.catalogue.plan import DissectionPlan, PlanStep, load_plan, part_ids_of
from meshes.drape.distance import MeshIndex
from meshes.errors import PeelbackError
from meshes.model import BackModel
from meshes.questions.cover import Cover, Layers
from meshes.questions.outward import mean_inward
from meshes.questions.plan_course import course

SHARE = 0.8
"""A part counts as brought into view when so much of its area is free, unless asked otherwise."""

NEAR_CUT_MM = 15.0
"""A part to be kept is at risk when it comes so near to a line of cut."""

PLACES_ABOUT = 250
"""Places of a layer, some 2 mm apart, among which that of a line of cut is looked for."""

LITTLE = 0.02
"""Where the plan can't show what was asked for, no steps are added for a share below this."""

_BOTH = ("left", "right")
_THIN_KINDS = ("nerve", "artery", "vein")
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class AtRisk:
    """A part to be kept that comes near a line of cut.

    Attributes
    ----------
    part_id : str
    clearance_mm : float
        Least distance from the blade on its way through what is cut.
    line : str
        The line, in the plan's words.
    """

    part_id: str
    clearance_mm: float
    line: str


@dataclass(frozen=True, slots=True)
class WayStep:
    """One step of a way in.

    Attributes
    ----------
    step_id, title : str
    side : {"left", "right", "both"}
    removes : tuple of str
        Part ids that it takes out of the way.
    in_view : float
        Share (0–1) of the target's area that is free when the step is done.
    keep : tuple of str
        Names (rows, groups or parts) that must not be cut in this step.
    at_risk : tuple of AtRisk
        Those of them near a cut, nearest first.
    """

    step_id: str
    title: str
    side: str
    removes: tuple[str, ...]
    in_view: float
    keep: tuple[str, ...]
    at_risk: tuple[AtRisk, ...]


@dataclass(frozen=True, slots=True)
class WayIn:
    """How a part is brought into view.

    Attributes
    ----------
    target : tuple of str
        Part ids.
    wanted : float
        Share (0–1) of its area asked for.
    before : float
        Share that is in view in the given state.
    after : float
        Share in view at the end of ``steps``.
    steps : tuple of WayStep
        In order; empty when it is in view already.
    reached : bool
        Whether ``after`` is what was asked for. If not, ``steps`` is the shortest way to
        nearly the most that the plan can show (see ``LITTLE``).
    remains : tuple of Cover
        What still lies over it at the end.
    stays : mapping of str to str
        For each of ``remains`` why no step of the way takes it, in words; only where the
        way falls short.
    """

    target: tuple[str, ...]
    wanted: float
    before: float
    after: float
    steps: tuple[WayStep, ...]
    reached: bool
    remains: tuple[Cover, ...]
    stays: Mapping[str, str]


def expose(
    model: BackModel,
    layers: Layers,
    target: str | Iterable[str],
    share: float = SHARE,
    gone: Collection[str] = frozenset(),
    done: Mapping[str, Collection[str]] | None = None,
    keep: Collection[str] = frozenset(),
    plan: DissectionPlan | None = None,
) -> WayIn:
    """Return the shortest list of steps that brings a part into view.

    Parameters
    ----------
    model : BackModel
    layers : Layers
        Of this model, in the given state (:meth:`Layers.folded` if something is folded).
    target : str or iterable of str
        Part ids, taken as one. On one side, that side is dissected; median parts and
        parts of both sides are reached from both.
    share : float
        Share of its area wanted in view, above 0 to 1.
    gone : collection of str
        Ids of parts that are taken away already.
    done : mapping of side to step ids, or None
        Steps that are done; None: read off ``gone``.
    keep : collection of str
        Ids of parts that no step may take away.
    plan : DissectionPlan or None
        The shipped one if None.

    Raises
    ------
    PeelbackError
        Unknown target, one that is gone or that no ray from behind meets, or a share
        out of range.
    """
    plan = plan or load_plan()
    wanted = (target,) if isinstance(target, str) else tuple(target)
    if not 0.0 < share <= 1.0:
        raise PeelbackError(f"share must lie above 0 and up to 1, got {share:g}")
    if not wanted:
        raise PeelbackError("a part must be named")
    gone = frozenset(gone)
    visible = [i for i in layers.ids if i not in gone]
    taken = [i for i in wanted if i in gone]
    if taken:
        raise PeelbackError("{part} is taken away already; lay it back first", part=repr(taken[0]))
    before = layers.in_view(wanted, visible)
    if before is None:
        raise PeelbackError("{part} lies where no ray from behind reaches", part=repr(wanted[0]))
    search = _Search(model, plan, wanted, gone, done, frozenset(keep) | set(wanted))
    shares = layers.needs_of(wanted, search.marks, visible)
    found = search.shortest(shares, share)
    steps = _steps_in_order(model, layers, search, found, wanted, gone)
    after = steps[-1].in_view if steps else before
    left = set(visible).difference(*(step.removes for step in steps))
    remains = layers.covers(wanted, left)
    reached = after >= share - 1e-6
    return WayIn(
        wanted,
        share,
        before,
        after,
        tuple(steps),
        reached,
        remains,
        {} if reached else {row.part_id: search.why_it_stays(row.part_id) for row in remains},
    )


class _Search:
    """The plan as bits: one for each step that is still to be done."""

    def __init__(
        self,
        model: BackModel,
        plan: DissectionPlan,
        target: tuple[str, ...],
        gone: frozenset[str],
        done: Mapping[str, Collection[str]] | None,
        keep: frozenset[str],
    ) -> None:
        sides = {model.parts[i].side for i in target}
        self.sides = (sides.pop(),) if len(sides) == 1 and None not in sides else _BOTH
        self.plan = plan
        self.keep = keep
        self.target = frozenset(target)
        self.done = done_steps(model, plan, gone) if done is None else done
        self.removed = {
            (step.id, side): removed_parts(model, step, side)
            for step in plan.steps
            for side in _BOTH
        }
        self._closure: dict[str, int] = {}
        self._bit = {step.id: 1 << k for k, step in enumerate(plan.steps)}
        self._usable: dict[str, bool] = {}
        for step in plan.steps:
            close = self._bit[step.id]
            for need in step.needs:
                close |= self._closure[need]
            self._closure[step.id] = close
            usable = all(self._usable[need] for need in step.needs)
            for side in self.sides_of(step):
                if not self.is_done(step, side):
                    usable = usable and not keep & set(self.removed[step.id, side])
            self._usable[step.id] = usable
        self.marks = self._marks()

    def sides_of(self, step: PlanStep) -> tuple[str, ...]:
        """Return the sides on which this search would do a step of its own accord."""
        return _BOTH if step.side == "both" else self.sides

    def is_done(self, step: PlanStep, side: str) -> bool:
        return step.id in self.done.get(side, ())

    def _marks(self) -> dict[str, int]:
        """Return for each part that can go the bit of the step that takes it.

        What a step that is done has left there, such as a flap that lies folded, stays.
        """
        marks: dict[str, int] = {}
        for step in self.plan.steps:
            if not self._usable[step.id]:
                continue
            for side in _BOTH:
                opener = step if side in self.sides_of(step) else self._opener(step)
                if opener is not None and not self.is_done(step, side):
                    for part_id in self.removed[step.id, side]:
                        marks.setdefault(part_id, self._bit[opener.id])
        return marks

    def _opener(self, step: PlanStep) -> PlanStep | None:
        """Return the first step that needs both sides and so brings this one on the other."""
        for other in self.plan.steps:
            needs = self._closure[other.id] & self._bit[step.id]
            if other.side == "both" and needs and self._usable[other.id]:
                return other
        return None

    def why_it_stays(self, part_id: str) -> str:
        """Return in words why no step of a way takes a part."""
        for step in self.plan.steps:
            for side in _BOTH:
                taken = set(self.removed[step.id, side])
                if part_id not in taken:
                    continue
                if self.is_done(step, side):
                    return "laid aside, it lies there now"
                if taken & self.target:
                    return "taken in one step with it"
                if self._usable[step.id]:
                    return "little is gained by taking it"
                return "taken only after what is to be kept, or after the part itself"
        return "no step takes it"

    def entries(self, steps: int) -> list[tuple[PlanStep, tuple[str, ...]]]:
        """Return what is to be done for a set of steps: steps and sides, in plan order."""
        across = 0
        for step in self.plan.steps:
            if steps & self._bit[step.id] and step.side == "both":
                across |= self._closure[step.id]
        listed = []
        for step in self.plan.steps:
            if steps & self._bit[step.id]:
                sides = _BOTH if across & self._bit[step.id] else self.sides_of(step)
                open_sides = tuple(s for s in sides if not self.is_done(step, s))
                if open_sides:
                    listed.append((step, open_sides))
        return listed

    def _cost(self, steps: int) -> tuple[int, int, int, float, int]:
        """Few steps first; then no optional ones, little taken away, little time."""
        listed = self.entries(steps)
        return (
            len(listed),
            sum(step.optional for step, _ in listed),
            sum(len(self.removed[step.id, side]) for step, sides in listed for side in sides),
            sum(step.minutes for step, _ in listed),
            steps,
        )

    def shortest(self, shares: Mapping[int, float], wanted: float) -> int:
        """Return the cheapest set of steps that frees the wanted share, or else nearly the most."""
        masks = np.array(list(shares), np.int64)
        areas = np.array(list(shares.values()))
        most = float(areas.sum())
        goal = (wanted if wanted <= most + _ROUNDING else most - LITTLE) - _ROUNDING
        useful = {
            self._bit[s.id]: self._closure[s.id]
            for s in self.plan.steps
            if np.any(masks & self._bit[s.id])
        }
        if float(areas[masks == 0].sum()) >= goal:
            return 0
        best: tuple | None = None
        seen = {0}
        waiting = [0]
        while waiting:
            steps = waiting.pop()
            for bit, close in useful.items():
                more = steps | close
                if steps & bit or more in seen:
                    continue
                seen.add(more)
                cost = self._cost(more)
                # More steps never cost less, so what is dearer than the best leads nowhere.
                if best is not None and cost[0] > best[0]:
                    continue
                if float(areas[(masks & ~more) == 0].sum()) >= goal:
                    if best is None or cost < best:
                        best = cost
                else:
                    waiting.append(more)
        return best[-1] if best is not None else 0


def _steps_in_order(
    model: BackModel,
    layers: Layers,
    search: _Search,
    found: int,
    target: tuple[str, ...],
    gone: frozenset[str],
) -> list[WayStep]:
    left = set(layers.ids) - gone
    steps = []
    for step, sides in search.entries(found):
        removes = tuple(
            dict.fromkeys(i for side in sides for i in search.removed[step.id, side] if i in left)
        )
        kept = left - set(removes)
        steps.append(
            WayStep(
                step.id,
                step.title,
                "both" if len(sides) == 2 else sides[0],
                removes,
                layers.in_view(target, kept) or 0.0,
                step.keep,
                at_risk(model, layers, step, sides, left),
            )
        )
        left = kept
    return steps


# --- the plan on a model ----------------------------------------------------------------


def removed_parts(model: BackModel, step: PlanStep, side: str) -> tuple[str, ...]:
    """Return the ids of the model's parts that a step takes away on one side."""
    return _parts_of(model, step.removes, side)


def _parts_of(model: BackModel, names: Iterable[str], side: str) -> tuple[str, ...]:
    ids = [i for name in names for i in part_ids_of(name, model.catalogue)]
    return tuple(
        i for i in dict.fromkeys(ids) if i in model.parts and model.parts[i].side in (side, None)
    )


def done_steps(
    model: BackModel, plan: DissectionPlan, gone: Collection[str]
) -> dict[str, frozenset[str]]:
    """Return the steps that count as done on each side when some parts are gone.

    A step that takes parts away is done when all of them are gone; one that only
    looks or frees, when a step that needs it is done.
    """
    gone = set(gone)
    done = {}
    for side in _BOTH:
        looking = set()
        found = set()
        for step in plan.steps:
            parts = removed_parts(model, step, side)
            if not parts:
                looking.add(step.id)
            elif gone.issuperset(parts):
                found.add(step.id)
        for step_id in tuple(found):
            found |= {s.id for s in plan.before(step_id) if s.id in looking}
        done[side] = frozenset(found)
    return done


@dataclass(frozen=True, slots=True, eq=False)
class CutLine:
    """A step's line of cut, laid on what is cut.

    Attributes
    ----------
    words : str
        The plan's own.
    outer, inner : (n, 3) float
        The line on the outer face of what is cut, and where the blade comes out of its
        inner face, mm LPS.
    """

    words: str
    outer: np.ndarray
    inner: np.ndarray


def cut_lines(model: BackModel, layers: Layers, step: PlanStep, side: str) -> tuple[CutLine, ...]:
    """Return a step's lines of cut; those whose landmarks the model lacks are left out."""
    sheets = [i for i in removed_parts(model, step, side) if model.parts[i].kind not in _THIN_KINDS]
    outer, inner = layers.faces_of(sheets)
    if not len(outer):
        return ()
    tree, inward = cKDTree(outer), mean_inward(layers.rays)
    lines = []
    for cut in step.cuts:
        line = course(model, cut, side, inward)
        if line is None:
            continue
        # Straight inward or outward to the layer, as the blade goes; beside it to its nearest.
        near = tree.query(line, min(PLACES_ABOUT, len(outer)))[1].reshape(len(line), -1)
        off, way = outer[near] - line[:, None], inward(line)[:, None]
        beside = np.linalg.norm(off - (off * way).sum(axis=2, keepdims=True) * way, axis=2)
        nearest = near[np.arange(len(line)), beside.argmin(axis=1)]
        lines.append(CutLine(cut.words, outer[nearest], inner[nearest]))
    return tuple(lines)


def at_risk(
    model: BackModel,
    layers: Layers,
    step: PlanStep,
    sides: Iterable[str],
    there: Collection[str],
) -> tuple[AtRisk, ...]:
    """Return the parts on a step's keep list that lie near its cuts, nearest first.

    Parameters
    ----------
    there : collection of str
        Ids of the parts that are not gone yet.
    """
    nearest: dict[str, AtRisk] = {}
    for side in sides:
        lines = cut_lines(model, layers, step, side)
        if not lines:
            continue
        removed = set(removed_parts(model, step, side))
        for part_id in _parts_of(model, step.keep, side):
            if part_id not in there or part_id in removed:
                continue
            mesh = model.parts[part_id].mesh
            low, high = mesh.bounds[0] - NEAR_CUT_MM, mesh.bounds[1] + NEAR_CUT_MM
            for line in lines:
                blade = np.concatenate([line.outer, 0.5 * (line.outer + line.inner), line.inner])
                blade = blade[np.all((low <= blade) & (blade <= high), axis=1)]
                if not len(blade):
                    continue
                gap = float(np.abs(MeshIndex.of(mesh).signed_distance(blade)[0]).min())
                if gap <= NEAR_CUT_MM and (
                    part_id not in nearest or gap < nearest[part_id].clearance_mm
                ):
                    nearest[part_id] = AtRisk(part_id, gap, line.words)
    return tuple(sorted(nearest.values(), key=lambda risk: (risk.clearance_mm, risk.part_id)))
