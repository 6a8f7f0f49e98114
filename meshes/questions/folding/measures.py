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
    """A fold at one share of its way.

    Attributes
    ----------
    share : float
    fibre : float
        Greatest change of the length of a fibre of the sheets' grids (of a belly: of its own
        fibres), as a share of it.
    area : float
        Greatest change of a sheet's area (of a belly: of its surface), as a share of it.
    volume : float
        Greatest change of the volume of a part's mesh, as a share of it.
    hinge_mm : float
        How far the hinge has moved.
    """

    share: float
    fibre: float
    area: float
    volume: float
    hinge_mm: float


def measure(path, share: float) -> FoldMeasure:
    """Measure a ``FoldPath`` at a share of its way."""
    fibre = changed_area = hinge = 0.0
    poses = path.poses(share)
    placed = {i: part.place(poses) for i, part in path.parts.items()}
    for k, flap in enumerate(path.flaps):
        rest, grid = flap.sheet.mid, flap.grid(share)
        reeds = getattr(flap, "reeds", None)
        if reeds is None:
            hinge = max(hinge, float(np.linalg.norm(grid[:, 0] - rest[:, 0], axis=1).max()))
            change = fibre_lengths(grid) / fibre_lengths(rest) - 1
            changed_area = max(changed_area, abs(area(grid) / area(rest) - 1))
        else:
            # A belly is no sheet: its fibres are its own, its area that of its surface, and
            # its hinge all that lies before the bend. Columns drawn aside have fibres, too.
            for part in path.parts.values():
                before = part.carried[k].place(poses[k])[part.carried[k].column <= 0.0]
                still = part.rest[part.at[k]][part.carried[k].column <= 0.0]
                hinge = max(hinge, float(np.abs(before - still).max(initial=0.0)))
            change = reeds.lengths(poses[k]) / reeds.lengths(flap.pose(0.0)) - 1
            now = area(grid) / area(rest) if path.rule.aside_mm else _surface(path, k, placed)
            changed_area = max(changed_area, abs(now - 1))
        fibre = max(fibre, float(np.abs(change).max()))
    volumes = [
        abs(volume(placed[i], part.mesh.faces) / volume(part.rest, part.mesh.faces) - 1)
        for i, part in path.parts.items()
    ]
    return FoldMeasure(share, fibre, changed_area, max(volumes), hinge)


def _surface(path, number: int, placed: Mapping[str, np.ndarray]) -> float:
    """Return the area of a flap's own surface as a share of what it was at rest.

    Without the face that the knife made: it is none of the muscle's, and slants.
    """
    before = after = 0.0
    for part_id, part in path.parts.items():
        mesh = part.mesh
        faces = mesh.faces[
            (mesh.piece[mesh.faces] == number).all(axis=1) & ~mesh.raw[mesh.drawn_faces].all(axis=1)
        ]
        for vertices, now in ((part.rest, False), (placed[part_id], True)):
            a, b, c = (vertices[faces[:, k]] for k in range(3))
            size = 0.5 * float(np.linalg.norm(np.cross(b - a, c - a), axis=1).sum())
            before, after = (before, after + size) if now else (before + size, after)
    return after / before


def fibre_changes(path, part_id: str, fibres: np.ndarray, share: float) -> np.ndarray:
    """Return the change of length of a part's own fibre lines, as shares of it, (k,).

    Points of the lines are carried one by one: an account apart from the grid that was
    solved. A line that the knife parts is measured on each side of the cut.

    Parameters
    ----------
    path : FoldPath
    part_id : str
    fibres : (k, m, 3) float
        mm.
    """
    lines = [_dense(np.asarray(line, float)) for line in fibres]
    carriers = {k: path.carrier(part_id, line) for k, line in enumerate(lines)}
    moved = path.carry(carriers, share)
    out = []
    for k, line in enumerate(lines):
        piece = np.full(len(line), -1)
        for number, at in enumerate(carriers[k].at):
            piece[at] = number
        same = piece[1:] == piece[:-1]
        before = np.linalg.norm(np.diff(line, axis=0), axis=1)[same].sum()
        after = np.linalg.norm(np.diff(moved[k], axis=0), axis=1)[same].sum()
        out.append(after / before - 1)
    return np.array(out)


def volume(vertices: np.ndarray, faces: np.ndarray) -> float:
    """Return the volume within a closed surface, mm³."""
    a, b, c = (vertices[faces[:, k]] for k in range(3))
    return float((a * np.cross(b, c)).sum() / 6)


def _dense(line: np.ndarray, step: float = 1.0) -> np.ndarray:
    """Points of a line a millimetre apart, so that a tight roll is not cut short."""
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(line, axis=0), axis=1).cumsum()])
    at = np.linspace(0, s[-1], int(s[-1] / step) + 2)
    return np.stack([np.interp(at, s, line[:, k]) for k in range(3)], axis=1)


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
    moved: Mapping[str, tuple[np.ndarray, np.ndarray]] | None = None,
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
    moved : mapping of part id to (vertices, faces), optional
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
        own = part.mesh.vertices, part.mesh.faces
        place, faces = (np.asarray(a) for a in (moved or {}).get(part.id, own))
        if np.any(place.min(axis=0) > high) or np.any(place.max(axis=0) < low):
            continue
        if part.id not in indexes:
            indexes[part.id] = MeshIndex(place, faces)
        index = indexes[part.id]
        box = index.bounds
        near = np.all((points >= box[0]) & (points <= box[1]), axis=1)
        if near.any():
            distance = index.query(points[near])[0]
            deep = np.flatnonzero(distance < -OVERLAP_MM)
            # A flap may lie against itself, where the sign of the nearest face tells nothing.
            deep = deep[winding(points[near][deep], place[faces]) > 0.5]
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
