"""How true a fold is: lengths, areas and overlaps of a flap against the flap at rest."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from meshes.drape.distance import MeshIndex
from meshes.model import Part

OVERLAP_MM = 1.0
HINGE_ZONE_MM = 8.0
"""Within this of its hinge a flap may touch what it is fixed to."""


@dataclass(frozen=True, slots=True)
class FoldMeasure:
    """A flap at one share of its way.

    Attributes
    ----------
    share : float
    fibre : float
        Greatest change of a fibre's length, as a share of it.
    area : float
        Change of the mid-surface's area, as a share of it.
    thickness_mm : float
        Greatest change of the distance from a vertex to the mid-surface.
    hinge_mm : float
        How far the hinge has moved.
    """

    share: float
    fibre: float
    area: float
    thickness_mm: float
    hinge_mm: float


def measure(path, share: float) -> FoldMeasure:
    """Measure a ``FoldPath`` at a share of its way."""
    rest, grid = path.sheet.mid, path.grid(share)
    before, after = fibre_lengths(rest), fibre_lengths(grid)
    thickness = 0.0
    for carried in path.carried.values():
        middle, _ = carried.frames(grid)
        off = np.linalg.norm(carried.place(grid) - middle, axis=1)
        thickness = max(thickness, float(np.abs(off - carried.distance_mm).max()))
    return FoldMeasure(
        share=share,
        fibre=float(np.abs(after / before - 1).max()),
        area=area(grid) / area(rest) - 1,
        thickness_mm=thickness,
        hinge_mm=float(np.linalg.norm(grid[:, 0] - rest[:, 0], axis=1).max()),
    )


def fibre_lengths(grid: np.ndarray) -> np.ndarray:
    """Return the length of each row of a grid (rows, columns, 3), mm."""
    return np.linalg.norm(np.diff(grid, axis=1), axis=2).sum(axis=1)


def area(grid: np.ndarray) -> float:
    """Return the area of a grid (rows, columns, 3), mm²; the mean over both diagonals."""
    a, b, c, d = grid[:-1, :-1], grid[1:, :-1], grid[1:, 1:], grid[:-1, 1:]

    def triangle(p, q, r):
        return 0.5 * np.linalg.norm(np.cross(q - p, r - p), axis=2).sum()

    halves = triangle(a, b, c) + triangle(a, c, d) + triangle(a, b, d) + triangle(b, c, d)
    return float(0.5 * halves)


def overlaps(
    vertices: np.ndarray,
    hinge: np.ndarray,
    stays: Iterable[Part],
    moved: Mapping[str, np.ndarray] | None = None,
    indexes: dict[str, MeshIndex] | None = None,
) -> dict[str, float]:
    """Return how deep a flap's vertices lie in each staying part, mm, where over the limit.

    Parameters
    ----------
    vertices : (n, 3) float
        Of the flap, mm.
    hinge : (k, 3) float
        Points of its hinge; what lies within 8 mm of it is passed over.
    stays : iterable of Part
    moved : mapping of part id to vertices, optional
        Of staying parts that lie elsewhere.
    indexes : dict, optional
        Filled with an index for each part met, for the next call.
    """
    from scipy.spatial import cKDTree

    indexes = {} if indexes is None else indexes
    away = cKDTree(hinge).query(vertices)[0] > HINGE_ZONE_MM
    points = vertices[away]
    found: dict[str, float] = {}
    if not len(points):
        return found
    low, high = points.min(axis=0), points.max(axis=0)
    for part in stays:
        place = np.asarray((moved or {}).get(part.id, part.mesh.vertices), float)
        if np.any(place.min(axis=0) > high) or np.any(place.max(axis=0) < low):
            continue
        if part.id not in indexes:
            indexes[part.id] = MeshIndex(place, part.mesh.faces)
        index = indexes[part.id]
        box = index.bounds
        near = np.all((points >= box[0]) & (points <= box[1]), axis=1)
        if near.any():
            distance = index.query(points[near])[0]
            deep = np.flatnonzero(distance < -OVERLAP_MM)
            # A flap may lie against itself, where the sign of the nearest face tells nothing.
            deep = deep[winding(points[near][deep], place[part.mesh.faces]) > 0.5]
            if len(deep):
                found[part.id] = -float(distance[deep].min())
    return found


def winding(points: np.ndarray, corners: np.ndarray) -> np.ndarray:
    """Return how often closed triangles (m, 3, 3) wind about points (n, 3): 1 inside, 0 outside.

    Sum of solid angles (van Oosterom & Strackee 1983).
    """
    turns = np.zeros(len(points))
    for k, point in enumerate(points):
        a, b, c = (corners[:, i] - point for i in range(3))
        la, lb, lc = (np.linalg.norm(v, axis=1) for v in (a, b, c))
        volume = (a * np.cross(b, c)).sum(axis=1)
        below = la * lb * lc + (a * b).sum(1) * lc + (b * c).sum(1) * la + (c * a).sum(1) * lb
        turns[k] = 2 * np.arctan2(volume, below).sum() / (4 * np.pi)
    return turns
