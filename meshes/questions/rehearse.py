"""A cut that the reader draws: how long, how deep, how near to what must stay, what it would lose.

The line lies on the surface of one layer. From every half millimetre of it a
ray goes inward, square to the body; what the rays meet above the blade's depth
is lost, and distances to the surfaces of what must be kept are measured from
the whole ribbon that the blade sweeps. It is a teaching model: never for
needle or surgical guidance.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.spatial import cKDTree

from meshes.catalogue.folds import folds_of_step
from meshes.catalogue.plan import (
    Cut,
    DissectionPlan,
    PlanStep,
    load_plan,
    part_ids_of,
    removed_by,
)
from meshes.drape.distance import MeshIndex
from meshes.errors import PeelbackError
from meshes.model import BackModel, other_side, side_of
from meshes.questions.outward import inward_rays, mean_inward
from meshes.questions.plan_course import course, evenly
from meshes.questions.probe import Ladder, Probe
from meshes.shapes.surface_path import shortest_on_surface

STEP_MM = 0.5
"""Rays stand so near that no nerve of the model slips between two of them."""

RIBBON_STEP_MM = 1.0
LIFT_MM = 2.0
"""Rays start this far outside the line, so that the layer itself is met from outside."""

OUTWARD_SPACING_MM = 8.0
REACH_MM = 60.0
SETTLE_MM = 3.0
"""A chord over a furrow stands off by less than this; a gap between two slips is deeper."""

LAYERS_TOLD = 5
LEAST_LOSS_MM = 0.5
GAP_POINTS = 4
"""A layer missing under so many points of a planned line, 2 mm apart, ends a piece of it."""

STRIP_GAP_MM = 6.0
"""What goes on no further below belongs to the same strip of the layer."""

OVERLYING_MM = 0.6
"""What begins this far outside the line lies over the layer: it was turned away before."""

ON_LINE_MM = 10.0
"""A place of the plan's line counts as followed when the reader's line comes this near."""

CAUTION = "Teaching model: not for needle or surgical guidance."
_TUBES = ("nerve", "artery", "vein")

AT_ORIGIN = "at the origin of "
"""Begins the words of a line that the plan does not give."""


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer under the line.

    Attributes
    ----------
    part_id : str
    share : float
        Of the line under which it lies, 0-1.
    depth_mm : float
        Mean depth of its outer face below the line.
    least_mm, mean_mm : float
        Its thickness under the line.
    """

    part_id: str
    share: float
    depth_mm: float
    least_mm: float
    mean_mm: float


@dataclass(frozen=True, slots=True)
class Clearance:
    """How near the blade comes to something that must stay.

    Attributes
    ----------
    part_id : str
    mm : float
        From the swept blade to the nearest point of the part; 0 when it is cut.
    place : (3,) tuple of float
        That nearest point, mm LPS.
    """

    part_id: str
    mm: float
    place: tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Loss:
    """Something that the blade would go into besides the layer that is to be cut.

    Attributes
    ----------
    part_id : str
    length_mm : float
        Length of the line over which it is reached.
    depth_mm : float
        Least depth below the line at which it is met.
    kept : bool
        True when the step says that it must be kept.
    place : (3,) tuple of float
        Where it is first met along the line, mm LPS.
    """

    part_id: str
    length_mm: float
    depth_mm: float
    kept: bool
    place: tuple[float, float, float]


@dataclass(frozen=True, slots=True, eq=False)
class PlanLine:
    """A line of cut of the plan, laid on the layer that it cuts.

    Where the layer is missing under the plan's line there is nothing to cut: such a line
    comes in pieces with the same words.

    Attributes
    ----------
    words : str
    points : (n, 3) float
        mm LPS.
    derived : bool
        True when the plan gives no line and the muscle's own attachment serves.
    """

    words: str
    points: np.ndarray
    derived: bool = False


@dataclass(frozen=True, slots=True)
class Comparison:
    """The reader's line beside the plan's.

    Attributes
    ----------
    words : str
        The plan's line that lies nearest, in the plan's words.
    mean_mm, largest_mm : float
        Distance of the reader's line from it.
    followed : float
        Share of the plan's line that the reader's comes within 10 mm of, 0-1.
    length_mm : float
        Of the plan's line.
    """

    words: str
    mean_mm: float
    largest_mm: float
    followed: float
    length_mm: float


@dataclass(frozen=True, slots=True, eq=False)
class Rehearsal:
    """The answer to a drawn line.

    Attributes
    ----------
    line : (n, 3) float
        The line on the surface, a point every half millimetre, mm LPS.
    inward : (n, 3) float
        Unit vectors into the body.
    length_mm, depth_mm : float
        Of the line, and of the blade.
    safe_mm : float or None
        The depth at which the first thing on the keep list is met; None when none is.
    layers : tuple of Layer
        In the order in which they are met, the cut layer first.
    through_mm : float
        Mean depth at which a blade is through the layer.
    clearances : tuple of Clearance
        Nearest first.
    losses : tuple of Loss
        What must be kept first, then by length.
    comparison : Comparison or None
        None when there is no line to compare with.
    """

    line: np.ndarray
    inward: np.ndarray
    length_mm: float
    depth_mm: float
    safe_mm: float | None
    layers: tuple[Layer, ...]
    through_mm: float
    clearances: tuple[Clearance, ...]
    losses: tuple[Loss, ...]
    comparison: Comparison | None

    @property
    def loses_what_must_stay(self) -> bool:
        """True when anything on the keep list is cut."""
        return any(loss.kept for loss in self.losses)


class Rehearser:
    """Answers drawn lines on one model; what takes time is made once and kept.

    Parameters
    ----------
    model : BackModel
    plan : DissectionPlan, optional
        The shipped plan when not given.
    probe : Probe, optional
        Of all parts of the model, where there is one already: making it takes seconds.
    """

    def __init__(
        self, model: BackModel, plan: DissectionPlan | None = None, probe: Probe | None = None
    ) -> None:
        self.model = model
        self.plan = plan or load_plan()
        self._probe = probe or Probe(model)
        self._indexes: dict[str, MeshIndex] = {}
        self._lines: dict[tuple[str, str], tuple[PlanLine, ...]] = {}
        rays = inward_rays(model, self._probe.index, OUTWARD_SPACING_MM)
        self._inward = mean_inward(rays)

    # Where things are -------------------------------------------------------------------

    def inward(self, points: np.ndarray) -> np.ndarray:
        """Return (n, 3) unit vectors into the body, square to the skin nearest to each point."""
        return self._inward(points)

    def _index(self, part_id: str) -> MeshIndex:
        if part_id not in self._indexes:
            self._indexes[part_id] = MeshIndex.of(self.model.parts[part_id].mesh)
        return self._indexes[part_id]

    def step_of(self, part_id: str) -> PlanStep | None:
        """Return the step of the plan that cuts a part, or None."""
        for step in self.plan.steps:
            if part_id in removed_by(step, "both", self.model.catalogue):
                return step
        return None

    def kept(self, step: PlanStep | None, side: str | None) -> tuple[str, ...]:
        """Return the ids of the model's parts that a step keeps, on one side and in the median."""
        if step is None:
            return ()
        ids = [i for name in step.keep for i in part_ids_of(name, self.model.catalogue)]
        return tuple(
            dict.fromkeys(
                i
                for i in ids
                if i in self.model.parts and (side is None or side_of(i) in (side, None))
            )
        )

    # Lines ------------------------------------------------------------------------------

    def line_through(self, points: Sequence[Sequence[float]], part_id: str) -> np.ndarray:
        """Return the way over a layer through the clicked points, (n, 3) mm, evenly spaced.

        Between two clicks on one mesh it is the short way over its surface; where a mesh
        ends, as at the midline, it is the straight line laid on the outermost face there.

        Raises
        ------
        PeelbackError
            Fewer than two places, or no such part.
        """
        points = np.asarray(points, float).reshape(-1, 3)
        if part_id not in self.model.parts:
            raise PeelbackError(f"there is no part {part_id!r} to cut")
        if len(points) < 2 or np.linalg.norm(points - points[0], axis=1).max() < STEP_MM:
            raise PeelbackError("a cut needs two places at least")
        family = self._family(part_id)
        pieces = []
        for a, b in zip(points[:-1], points[1:], strict=True):
            if np.linalg.norm(b - a) < STEP_MM:
                continue
            first, second = self._nearest_of(family, a), self._nearest_of(family, b)
            way = None
            if first == second:
                mesh = self.model.parts[first].mesh
                way = shortest_on_surface(mesh.vertices, mesh.faces, a, b)
            if way is None or _length(way) > 1.6 * np.linalg.norm(b - a) + 5.0:
                way = self.onto(evenly(np.array([a, b]), 4.0), family)
            pieces.append(way)
        return self._settled(evenly(np.concatenate(pieces), STEP_MM), family)

    def _settled(self, line: np.ndarray, ids: Collection[str]) -> np.ndarray:
        """Return a line whose points that nearly lie on one of some parts lie on it.

        Chords between evenly spaced points cut across furrows. What stands further off
        bridges a gap between two slips, and stays.
        """
        off = np.full(len(line), SETTLE_MM)
        laid = line.copy()
        for part_id in ids:
            distance, nearest = self._index(part_id).signed_distance(line)[:2]
            better = np.abs(distance) < off
            off[better], laid[better] = np.abs(distance)[better], nearest[better]
        return laid

    def _family(self, part_id: str) -> tuple[str, ...]:
        """Return a part and what goes on from it as the same layer: its group, both sides."""
        part = self.model.parts[part_id]
        return tuple(
            other.id
            for other in self.model.parts.values()
            if other.name == part.name
            or other.id == other_side(part_id)
            or (part.group and other.group == part.group and other.stratum == part.stratum)
        )

    def _nearest_of(self, ids: Iterable[str], point: np.ndarray) -> str:
        return min(ids, key=lambda i: abs(float(self._index(i).signed_distance([point])[0][0])))

    def onto(self, points: np.ndarray, ids: Collection[str]) -> np.ndarray:
        """Lay (n, 3) points on the outermost face of some parts, along the inward direction.

        A point over which none of them lies goes to the nearest place of their surface.
        """
        points = np.asarray(points, float).reshape(-1, 3)
        inward = self.inward(points)
        ids = set(ids)
        ladders = self._probe.along_many(points - REACH_MM * inward, inward)
        laid = _met(ladders, ids)
        for i in np.flatnonzero(np.isnan(laid[:, 0])):
            nearest = self._nearest_of(ids, points[i])
            laid[i] = self._index(nearest).signed_distance([points[i]])[1][0]
        return laid

    def _pieces_over(self, points: np.ndarray, ids: Collection[str]) -> list[np.ndarray]:
        """Lay points as ``onto`` does, in pieces: none where the parts are missing for a while."""
        inward = self.inward(points)
        laid = _met(self._probe.along_many(points - REACH_MM * inward, inward), set(ids))
        there = np.flatnonzero(~np.isnan(laid[:, 0]))
        runs = np.split(there, np.flatnonzero(np.diff(there) > GAP_POINTS) + 1)
        return [laid[run] for run in runs if len(run) > 1]

    def plan_lines(self, step_id: str, side: str) -> tuple[PlanLine, ...]:
        """Return a step's lines of cut on one side, laid on the layer that they cut.

        Where the plan gives none, the attachment of what the step removes serves.

        Raises
        ------
        PeelbackError
            Unknown step or side.
        """
        if side not in ("left", "right"):
            raise PeelbackError(f"side must be left or right, got {side!r}")
        key = (step_id, side)
        if key not in self._lines:
            step = self.plan.step(step_id)
            self._lines[key] = self._given_lines(step, side) or self._attachment_lines(step, side)
        return self._lines[key]

    def _cut_parts(self, step: PlanStep, side: str) -> list[str]:
        """Return what a step's lines go through: its sheets, not the nerves taken with them."""
        return [
            i
            for i in removed_by(step, side, self.model.catalogue)
            if i in self.model.parts and self.model.parts[i].kind not in _TUBES
        ]

    def _cut_with(self, part_id: str, step: PlanStep | None, line: np.ndarray) -> set[str]:
        """Return the sheets that a step takes along with a part: they are its layer, no loss.

        Arches come off with the ligaments between them, dura with the arachnoid beneath it.
        """
        if step is None:
            return set()
        sides = {side_of(part_id) or "both"} if not _crosses_midline(line) else {"both"}
        found: set[str] = set()
        for side in ("left", "right") if "both" in sides else sides:
            found.update(self._cut_parts(step, side))
        return found if part_id in found else set()

    def _given_lines(self, step: PlanStep, side: str) -> tuple[PlanLine, ...]:
        layer = self._cut_parts(step, side)
        lines = []
        for cut in step.cuts or self._flap_cuts(step):
            points = course(self.model, cut, side, self.inward) if layer else None
            if points is None:
                continue
            pieces = self._pieces_over(points, layer)
            if sum(len(piece) for piece in pieces) < 0.3 * len(points):
                # The line runs beside the layer, as at the tip of a slip: go to its nearest place.
                pieces = [self.onto(points, layer)]
            else:
                calmed = [_calmed(piece) for piece in pieces]
                pieces = [p for piece in calmed for p in self._pieces_over(piece, layer)]
            lines += [PlanLine(cut.words, evenly(piece, 1.0)) for piece in pieces]
        return tuple(lines)

    def _flap_cuts(self, step: PlanStep) -> tuple[Cut, ...]:
        """Return the lines that bound a step's flaps where they are those of another step.

        The fat is laid back in flaps along the lines of the skin over it.
        """
        others = {rule.lines_of for rule in folds_of_step(step.id)} - {""}
        return tuple(cut for name in sorted(others) for cut in self.plan.step(name).cuts)

    def _attachment_lines(self, step: PlanStep, side: str) -> tuple[PlanLine, ...]:
        lines = []
        for part_id in self._cut_parts(step, side):
            part = self.model.parts[part_id]
            if part.kind != "muscle":
                continue
            for attachment in part.attachments:
                if attachment.kind == "origin" and len(attachment.curve) > 1:
                    row = self.model.catalogue.get(part.entry)
                    name = row.english if row else part.name.replace("_", " ")
                    words = f"{AT_ORIGIN}{name}"
                    lines.append(PlanLine(words, evenly(attachment.curve, 1.0), derived=True))
        return tuple(lines)

    # The answer -------------------------------------------------------------------------

    def rehearse(
        self,
        line: np.ndarray,
        part_id: str,
        depth_mm: float,
        step_id: str | None = None,
        present: Collection[str] | None = None,
        lifted: bool = False,
    ) -> Rehearsal:
        """Say what a line means.

        Parameters
        ----------
        line : (n, 3) float
            On the layer, as from ``line_through`` or ``plan_lines``, mm LPS.
        part_id : str
            The layer that is cut.
        depth_mm : float
            How deep the blade goes below the line.
        step_id : str, optional
            The step to compare with; the one that cuts the layer when not given.
        present : collection of str, optional
            What the dissection has left; all parts when not given.
        lifted : bool
            A finger lies underneath: the blade goes through the layer and no further.

        Raises
        ------
        PeelbackError
            No such part or step, a line without length, a depth that is none.
        """
        if part_id not in self.model.parts:
            raise PeelbackError(f"there is no part {part_id!r} to cut")
        if not 0.0 < depth_mm <= REACH_MM:
            raise PeelbackError(f"depth must lie in 0–{REACH_MM:.0f} mm, got {depth_mm:g}")
        line = np.asarray(line, float).reshape(-1, 3)
        if len(line) < 2 or _length(line) < STEP_MM:
            raise PeelbackError("a cut needs two places at least")
        line = evenly(line, STEP_MM)
        step = self.plan.step(step_id) if step_id else self.step_of(part_id)
        x = float(np.median(line[:, 0]))
        side = side_of(part_id) or ("left" if x > 0 else "right")
        kept = self.kept(step, None if _crosses_midline(line) else side)
        present = set(self.model.parts) if present is None else set(present)
        present |= set(kept)
        inward = self.inward(line)
        ladders = self._probe.along_many(line - LIFT_MM * inward, inward)
        layer = set(self._family(part_id)) | self._cut_with(part_id, step, line)
        layer &= present
        reach, through = np.full(len(line), float(depth_mm)), _through(ladders, layer, present)
        if lifted:
            reach = np.minimum(reach, through)
        losses = _losses(ladders, line, reach, present - layer, set(kept))
        cut = {loss.part_id for loss in losses}
        return Rehearsal(
            line,
            inward,
            _length(line),
            float(depth_mm),
            _safe_depth(ladders, set(kept) - layer),
            _layers(ladders, present, layer),
            float(through[through > 0].mean()) if (through > 0).any() else 0.0,
            self._clearances(line, inward, reach, [i for i in kept if i not in layer], cut),
            losses,
            self._compared(line, step, side),
        )

    def _clearances(self, line, inward, reach, kept, cut) -> tuple[Clearance, ...]:
        every = max(int(RIBBON_STEP_MM / STEP_MM), 1)
        places, ways = line[::every], inward[::every] * reach[::every, None]
        shares = np.linspace(0.0, 1.0, max(int(np.ceil(reach.max() / RIBBON_STEP_MM)), 1) + 1)
        ribbon = (places[None] + shares[:, None, None] * ways[None]).reshape(-1, 3)
        found = []
        for part_id in kept:
            # The sign is left out: a thin tube's end can turn it. What is cut is known by the rays.
            distance, closest, _ = self._index(part_id).signed_distance(ribbon)
            k = int(np.argmin(np.abs(distance)))
            place = tuple(float(c) for c in closest[k])
            mm = 0.0 if part_id in cut else abs(float(distance[k]))
            found.append(Clearance(part_id, mm, place))
        return tuple(sorted(found, key=lambda c: (c.mm, c.part_id)))

    def _compared(self, line, step: PlanStep | None, side: str) -> Comparison | None:
        if step is None:
            return None
        sides = ("left", "right") if _crosses_midline(line) else (side,)
        best = None
        for each in sides:
            pieces: dict[str, list[np.ndarray]] = {}
            for plan_line in self.plan_lines(step.id, each):
                pieces.setdefault(plan_line.words, []).append(plan_line.points)
            for words, found in pieces.items():
                planned = np.concatenate([evenly(piece, STEP_MM) for piece in found])
                away = cKDTree(planned).query(line)[0]
                back = cKDTree(line).query(planned)[0]
                told = Comparison(
                    words,
                    float(away.mean()),
                    float(away.max()),
                    float((back <= ON_LINE_MM).mean()),
                    sum(_length(piece) for piece in found),
                )
                if best is None or told.mean_mm < best.mean_mm:
                    best = told
        return best


def _met(ladders: Sequence[Ladder], ids: Collection[str]) -> np.ndarray:
    """Return where each ray first meets one of the parts, (n, 3) mm; NaN where it meets none."""
    laid = np.full((len(ladders), 3), np.nan)
    for i, ladder in enumerate(ladders):
        for rung in ladder.rungs:
            if rung.enter_mm >= 2 * REACH_MM:
                break
            # A ray along a closing face may show only its way out: that tells no place.
            if rung.part_id in ids and rung.enter_mm > 0.0:
                laid[i] = ladder.origin + rung.enter_mm * ladder.direction
                break
    return laid


def _safe_depth(ladders: Sequence[Ladder], kept: set[str]) -> float | None:
    """Return the least depth at which something that must stay is met, or None."""
    depths = [
        rung.enter_mm - LIFT_MM
        for ladder in ladders
        for rung in ladder.rungs
        if rung.part_id in kept and -OVERLYING_MM < rung.enter_mm - LIFT_MM < REACH_MM
    ]
    return max(min(depths), 0.0) if depths else None


def _layers(ladders: Sequence[Ladder], present: set[str], layer: set[str]) -> tuple[Layer, ...]:
    """Gather what the rays meet, in the order of its mean depth."""
    met: dict[str, list[tuple[float, float]]] = {}
    for ladder in ladders:
        seen: dict[str, tuple[float, float]] = {}
        for rung in ladder.rungs:
            if rung.part_id in present and rung.enter_mm < REACH_MM and rung.part_id not in seen:
                seen[rung.part_id] = (rung.enter_mm - LIFT_MM, rung.thickness_mm)
        for part_id, what in seen.items():
            met.setdefault(part_id, []).append(what)
    told = [
        Layer(
            part_id,
            len(values) / len(ladders),
            max(float(np.mean([depth for depth, _ in values])), 0.0),
            float(min(thick for _, thick in values)),
            float(np.mean([thick for _, thick in values])),
        )
        for part_id, values in met.items()
    ]
    told.sort(key=lambda one: (one.part_id not in layer, one.depth_mm, one.part_id))
    cut = [one for one in told if one.part_id in layer]
    under = [one for one in told if one.part_id not in layer and one.share >= 0.1]
    return tuple(cut + under[:LAYERS_TOLD])


def _through(ladders: Sequence[Ladder], layer: set[str], present: set[str]) -> np.ndarray:
    """Return how deep each blade goes that ends at a layer's deep face, (n,) mm.

    What lies in one with the layer, as bone under the ligament that comes off with it, is
    gone through until something else that is there is met.
    """
    depths = np.zeros(len(ladders))
    for i, ladder in enumerate(ladders):
        for rung in ladder.rungs:
            if rung.part_id in layer:
                if rung.enter_mm - LIFT_MM > depths[i] + STRIP_GAP_MM:
                    break
                depths[i] = max(depths[i], rung.leave_mm - LIFT_MM)
            elif rung.part_id in present and rung.enter_mm - LIFT_MM > OVERLYING_MM:
                break
    return depths


def _losses(ladders, line, reach, present: set[str], kept: set[str]) -> tuple[Loss, ...]:
    reached: dict[str, list[tuple[int, float]]] = {}
    for i, ladder in enumerate(ladders):
        for rung in ladder.rungs:
            depth = rung.enter_mm - LIFT_MM
            if rung.part_id in present and -OVERLYING_MM < depth < reach[i]:
                reached.setdefault(rung.part_id, []).append((i, max(depth, 0.0)))
    losses = []
    for part_id, hits in reached.items():
        length = STEP_MM * len({i for i, _ in hits})
        if length < LEAST_LOSS_MM:
            continue
        first, _ = hits[0]
        depth = min(depth for _, depth in hits)
        place = tuple(float(c) for c in line[first])
        losses.append(Loss(part_id, length, depth, part_id in kept, place))
    return tuple(sorted(losses, key=lambda loss: (not loss.kept, -loss.length_mm, loss.part_id)))


def _length(line: np.ndarray) -> float:
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())


def _calmed(line: np.ndarray, rounds: int = 6) -> np.ndarray:
    """Return a line without the steps where it goes from one part to the next; ends kept."""
    line = line.copy()
    for _ in range(rounds):
        line[1:-1] = 0.5 * line[1:-1] + 0.25 * (line[:-2] + line[2:])
    return line


def _crosses_midline(line: np.ndarray, slack_mm: float = 3.0) -> bool:
    return bool(line[:, 0].min() < -slack_mm and line[:, 0].max() > slack_mm)
