"""What lies beneath a point: the parts along a straight line, in order.

Depths are those of this computed model. It is a teaching model: never for
needle or surgical guidance.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from meshes.errors import PeelbackError
from meshes.model import BackModel, Part
from meshes.questions.outward import inward_rays, mean_inward
from meshes.questions.rays import RayIndex

CAUTION = "Teaching model: depths are not for needle or surgical guidance."

SAME_CROSSING_MM = 1e-6
"""Crossings of one part closer together than this, in the same sense, are one:
the ray went through an edge or a vertex and met several triangles there."""

PATCH_MM = 25.0
"""Half width of the patch of skin whose mean slope is taken as the slope at a point: wider than
the furrow over the spines, whose banks would turn the ray aside."""

MIDLINE_MM = 0.25
"""No ray goes inward nearer to the median plane: skin and fasciae are halves that meet there
with a hair between them, and down that hair it would pass neither."""

OUTSIDE_MM = 400.0
"""A ray through a place in the body is looked at from so far out: outside everything."""

ON_PLACE_MM = 0.5
"""What a ray enters so little behind a place is taken as lying at the place."""

SLOPES_MM = 8.0
"""Spacing of the places of the skin at which its mean slope is known."""

_LEVEL = re.compile(r"(C[1-8]|T(?:[1-9]|1[0-2])|L[1-5]|S[1-5])")


@dataclass(frozen=True, slots=True)
class Rung:
    """One stretch of a ray inside one part.

    Attributes
    ----------
    part_id : str
    enter_mm, leave_mm : float
        Distances from the ray's origin. A ray that starts inside a part enters it at 0.
    """

    part_id: str
    enter_mm: float
    leave_mm: float

    @property
    def thickness_mm(self) -> float:
        """Length of the stretch, mm (along the ray, hence not less than the true thickness)."""
        return self.leave_mm - self.enter_mm


@dataclass(frozen=True, slots=True, eq=False)
class Ladder:
    """What a ray passes through.

    Attributes
    ----------
    origin : (3,) float
        mm. For :meth:`Probe.at` the point where the ray meets the outermost surface.
    direction : (3,) float
        Unit vector.
    rungs : tuple of Rung
        By depth of entry; a part that the ray crosses twice stands twice.
    """

    origin: np.ndarray
    direction: np.ndarray
    rungs: tuple[Rung, ...]

    @property
    def part_ids(self) -> tuple[str, ...]:
        """Ids in order of first entry, each once."""
        return tuple(dict.fromkeys(rung.part_id for rung in self.rungs))


class Probe:
    """Asks a finished model what lies along a ray.

    Building merges all meshes into one tree (about 1.5 s for 1.5 million
    triangles); a ray then takes well under a millisecond.

    Parameters
    ----------
    model : BackModel
    only : iterable of str or None
        Ids of the parts to look at; None for all.

    Examples
    --------
    >>> probe = Probe(model)
    >>> ladder = probe.at("T7", lateral_mm=40, side="left")
    >>> [(rung.part_id, round(rung.thickness_mm, 1)) for rung in ladder.rungs][:2]
    [('skin.left', 2.4), ('superficial_fascia.left', 5.0)]
    """

    def __init__(self, model: BackModel, only: Iterable[str] | None = None) -> None:
        chosen = set(model.parts) if only is None else set(only)
        parts: list[Part] = [part for part_id, part in model.parts.items() if part_id in chosen]
        if not parts:
            raise PeelbackError("there is nothing to probe: the model has no parts")
        self._ids = [part.id for part in parts]
        self._landmarks = model.landmarks
        starts = np.cumsum([0] + [len(part.vertices) for part in parts])
        self._part_of_face = np.repeat(
            np.arange(len(parts), dtype=np.int32), [len(part.faces) for part in parts]
        )
        vertices = np.concatenate([part.vertices for part in parts])
        faces = np.concatenate(
            [part.faces + start for part, start in zip(parts, starts.astype(np.int32))]
        )
        self._rays = RayIndex(vertices, faces)
        self._lower, self._upper = vertices.min(axis=0), vertices.max(axis=0)
        self._model = model
        self._skins = frozenset(part.id for part in parts if part.kind == "skin")

    @cached_property
    def inward(self) -> Callable[[np.ndarray], np.ndarray]:
        """Points (n, 3) mm to unit vectors (n, 3) into the body, square to the skin over each.

        The skin's mean slope counts, whatever has been taken off; a model without skin is
        looked at from straight behind.
        """
        return mean_inward(inward_rays(self._model, self._rays, SLOPES_MM))

    @property
    def index(self) -> RayIndex:
        """The merged meshes, in the order of the chosen parts, for others that cast rays."""
        return self._rays

    @property
    def levels(self) -> tuple[str, ...]:
        """Levels that can be probed, from the head down."""
        suffixes = (".spinous_process", ".posterior_tubercle", ".median_crest")
        found = {
            name.split(".")[0]
            for name in self._landmarks
            if name.endswith(suffixes) and _LEVEL.fullmatch(name.split(".")[0])
        }
        return tuple(sorted(found, key=lambda level: ("CTLS".find(level[0]), int(level[1:]))))

    @property
    def half_width_mm(self) -> float:
        """How far out from the median plane the model reaches."""
        return float(max(-self._lower[0], self._upper[0]))

    def along(self, point: np.ndarray, direction: np.ndarray) -> Ladder:
        """Return what a ray passes through.

        Parameters
        ----------
        point : (3,) float
            Where the ray starts, mm LPS.
        direction : (3,) float
            Where it goes; of any length but zero.
        """
        return self.along_many([point], [direction])[0]

    def along_many(self, points: np.ndarray, directions: np.ndarray) -> list[Ladder]:
        """Return the ladders of many rays: (n, 3) points and (n, 3) directions."""
        points = np.asarray(points, dtype=np.float64).reshape(-1, 3)
        directions = np.asarray(directions, dtype=np.float64).reshape(-1, 3)
        crossings = self._rays.crossings(points, directions)
        parts = self._part_of_face[crossings.face]
        bounds = np.searchsorted(crossings.ray, np.arange(len(points) + 1))
        units = directions / np.linalg.norm(directions, axis=1, keepdims=True)
        ladders = []
        for i, (start, stop) in enumerate(zip(bounds[:-1], bounds[1:])):
            rungs = _pair_up(
                parts[start:stop], crossings.distance[start:stop], crossings.entering[start:stop]
            )
            ladders.append(
                Ladder(points[i], units[i], tuple(Rung(self._ids[k], a, b) for k, a, b in rungs))
            )
        return ladders

    def at(self, level: str, lateral_mm: float, side: str) -> Ladder:
        """Probe from the outermost surface inward, at a vertebral level.

        The ray starts where a horizontal line from behind, at the height of
        the level's spinous process, meets the outermost surface, and runs
        square to the surface there (mean slope of a 5 cm patch) within the
        horizontal plane, so that it stays at the level.

        Parameters
        ----------
        level : str
            "C2" to "S5".
        lateral_mm : float
            Distance from the median plane, mm.
        side : {"left", "right"}
            The subject's side.

        Raises
        ------
        PeelbackError
            Unknown level or side, or a point beside the body.
        """
        height = self.level_height(level)
        if side not in ("left", "right"):
            raise PeelbackError(f"side must be left or right, got {side!r}")
        if not (np.isfinite(lateral_mm) and lateral_mm >= 0):
            raise PeelbackError(f"lateral must be 0 mm or more, got {lateral_mm:g}")
        x = lateral_mm if side == "left" else -lateral_mm
        if not self._lower[0] <= x <= self._upper[0]:
            reach = max(-self._lower[0], self._upper[0])
            raise PeelbackError(
                "lateral must lie in 0–{reach} mm (the half width of the body), got {lateral}",
                reach=f"{reach:.0f}",
                lateral=f"{lateral_mm:g}",
            )
        x = float(np.copysign(max(abs(x), MIDLINE_MM), 1.0 if side == "left" else -1.0))
        origin = self._outermost(x, height)
        if origin is None:
            raise PeelbackError(
                "nothing lies at {level}, {lateral} mm to the {side}",
                level=level,
                lateral=f"{lateral_mm:g}",
                side=side,
            )
        return self.along(origin, self._inward(x, height))

    def through(self, place: np.ndarray) -> Ladder:
        """Return what lies over and under a place: the ray goes inward, square to the skin.

        It begins at the skin over the place, not at that of an arm which hangs before it.

        Parameters
        ----------
        place : (3,) float
            On or in the body, mm LPS.
        """
        place = np.array(place, dtype=np.float64).reshape(3)
        if abs(place[0]) < MIDLINE_MM:
            place[0] = np.copysign(MIDLINE_MM, place[0])
        direction = self.inward(place)[0]
        ladder = self.along(place - OUTSIDE_MM * direction, direction)
        skin = [
            rung.enter_mm
            for rung in ladder.rungs
            if rung.part_id in self._skins and rung.enter_mm <= OUTSIDE_MM + ON_PLACE_MM
        ]
        if not skin:
            return ladder
        return self.along(ladder.origin + (max(skin) - SAME_CROSSING_MM) * direction, direction)

    def level_height(self, level: str) -> float:
        """Return z (mm) of the spinous process of a level."""
        for name in (
            f"{level}.spinous_process",
            f"{level}.posterior_tubercle",
            f"{level}.median_crest",
        ):
            if name in self._landmarks:
                return float(np.asarray(self._landmarks[name]).reshape(-1, 3)[:, 2].mean())
        known = sorted(
            {name.split(".")[0] for name in self._landmarks if name.endswith(".spinous_process")},
            key=lambda name: ("CTLS".find(name[0]), len(name), name),
        )
        kind = "has no spinous process here" if _LEVEL.fullmatch(level) else "is no level"
        raise PeelbackError(
            f"{level!r} {kind}; allowed: {', '.join(known) or 'none in this model'}"
        )

    def _outermost(self, x: float, z: float) -> np.ndarray | None:
        """First crossing of the horizontal line from behind through (x, z)."""
        start = np.array([x, self._upper[1] + 10.0, z])
        crossings = self._rays.crossings(start, [0.0, -1.0, 0.0])
        if len(crossings.distance) == 0:
            return None
        return start - [0.0, crossings.distance[0], 0.0]

    def _inward(self, x: float, z: float) -> np.ndarray:
        """Direction square to the outermost surface about (x, z), in the horizontal plane.

        A plane is fitted to the first crossings over a patch; crossings that
        fall off an edge (more than a patch width away in depth) are left out.
        """
        steps = np.linspace(-PATCH_MM, PATCH_MM, 9)
        offsets = np.stack(np.meshgrid(steps, steps), axis=-1).reshape(-1, 2)
        starts = np.empty((len(offsets), 3))
        starts[:, 0] = x + offsets[:, 0]
        starts[:, 1] = self._upper[1] + 10.0
        starts[:, 2] = z + offsets[:, 1]
        crossings = self._rays.crossings(starts, np.tile([0.0, -1.0, 0.0], (len(starts), 1)))
        rays, first = np.unique(crossings.ray, return_index=True)
        depth = crossings.distance[first]
        centre = np.median(depth)
        near = np.abs(depth - centre) < PATCH_MM
        if near.sum() < 6:
            return np.array([0.0, -1.0, 0.0])
        plane = np.column_stack([offsets[rays][near], np.ones(near.sum())])
        slope_x = np.linalg.lstsq(plane, -depth[near], rcond=None)[0][0]
        inward = np.array([slope_x, -1.0, 0.0])
        return inward / np.linalg.norm(inward)


def _pair_up(
    parts: np.ndarray, distance: np.ndarray, entering: np.ndarray
) -> list[tuple[int, float, float]]:
    """Turn crossings sorted by distance into stretches (part index, enter, leave) by entry.

    Each part is followed by itself. How deep the ray is inside it is counted, so
    that a mesh that folds over itself yields one stretch rather than two that
    overlap. Leaving a part that was never entered means that the ray began inside it.
    """
    found: list[tuple[int, float, float]] = []
    # part -> [depth of nesting, where the outermost stretch began, last distance, last sense]
    present: dict[int, list[Any]] = {}
    for part, at, into in zip(parts.tolist(), distance.tolist(), entering.tolist()):
        state = present.get(part)
        if state is None:
            state = present[part] = [0, 0.0, -np.inf, into]
            if not into:
                state[0] = 1
        elif state[3] == into and at - state[2] < SAME_CROSSING_MM:
            continue
        state[2], state[3] = at, into
        if into:
            state[0] += 1
            if state[0] == 1:
                state[1] = at
        elif state[0] > 0:
            state[0] -= 1
            if state[0] == 0 and at - state[1] > SAME_CROSSING_MM:
                found.append((part, state[1], at))
    found.sort(key=lambda stretch: (stretch[1], stretch[2]))
    return found


def published_thickness(part: Part, model: BackModel) -> float | None:
    """Return the catalogue's thickness of a part at its thickest (mm), None if it names none."""
    row = model.catalogue.get(part.entry)
    thickness = getattr(row, "thickness", None)
    return None if thickness is None else float(thickness.for_sex(model.body.sex))


def thickness_note(part: Part, model: BackModel) -> str:
    """Return what must be said beside a measured thickness; "" for a part drawn as it is.

    Sheets thinner than a mesh can be are drawn thicker; what is published is said then.
    """
    if not part.drawn_thicker:
        return ""
    mm = published_thickness(part, model)
    return "drawn thicker" if mm is None else f"drawn thicker; published {mm:g} mm"


def describe(ladder: Ladder, model: BackModel) -> dict[str, Any]:
    """Return a ladder as plain values for ``--json`` and captions.

    A part that is drawn thicker than its published thickness says so, with that thickness.
    """
    rungs = []
    for rung in ladder.rungs:
        part = model.parts[rung.part_id]
        rungs.append(
            {
                "id": rung.part_id,
                "kind": part.kind,
                "stratum": part.stratum,
                "enter_mm": round(rung.enter_mm, 2),
                "leave_mm": round(rung.leave_mm, 2),
                "thickness_mm": round(rung.thickness_mm, 2),
                "drawn_thicker": part.drawn_thicker,
                "published_mm": published_thickness(part, model) if part.drawn_thicker else None,
            }
        )
    return {
        "origin_mm": [round(float(v), 2) for v in ladder.origin],
        "direction": [round(float(v), 4) for v in ladder.direction],
        "ladder": rungs,
        "caution": CAUTION,
    }
