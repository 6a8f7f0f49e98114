"""Small solids cut to fit: an implicit solid minus everything that is already there.

Where a sheet is pushed out of the way, a small belly, ligament or tube is
carved: its solid is evaluated on a fine local grid and every obstacle, grown
by a hair's gap, is taken away before the contour is drawn. What results
touches nothing and leaves no hollow.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import trimesh
from numba import njit

from meshes.drape.audit import self_intersections
from meshes.drape.distance import MeshIndex, reaching
from meshes.drape.resolve import as_far_as_free
from meshes.drape.several import Several
from meshes.shapes.contour import contour_grid, largest_piece, relax, simplify
from meshes.shapes.halves import in_halves
from meshes.shapes.solid import Solid, evaluate_grid

_OBSTACLE_REACH_MM = 12.0
_FINER = (1.0, 1.6, 2.5)
"""Shares of the wanted triangles that are tried in turn."""


class NothingLeft(ValueError):
    """The obstacles leave nothing of the solid."""


def carve(
    solid: Solid,
    obstacles: Sequence[MeshIndex],
    *,
    spacing: float,
    triangles: int,
    gap: float = 0.25,
    smoothing: int = 2,
    x_min: float | None = None,
    keep_pieces: bool = False,
) -> trimesh.Trimesh:
    """Contour a solid outside its obstacles.

    Parameters
    ----------
    solid : Solid
        mm.
    obstacles : sequence of MeshIndex
        Closed meshes to stay clear of.
    spacing : float
        Grid step, mm.
    triangles : int
        Wanted number of triangles.
    gap : float
        Clearance to the obstacles, mm.
    smoothing : int
        Rounds of relaxation of the contour.
    x_min : float or None
        Keeps the solid at x >= x_min (the median plane).
    keep_pieces : bool
        False keeps only the largest connected piece.

    Returns
    -------
    trimesh.Trimesh
        Closed, outward.

    Raises
    ------
    NothingLeft
        When the obstacles swallow the solid.
    """
    if x_min is not None:
        solid = Solid().extend(solid).plane([x_min, 0, 0], [-1, 0, 0], blend=0.4)
    box = solid.bounds(margin=2 * spacing)
    count = np.maximum(np.ceil((box[1] - box[0]) / spacing).astype(int) + 1, 4)
    values = evaluate_grid(solid.program, box[0], spacing, *map(int, count), 4)
    wanted = np.flatnonzero(values.ravel() < 2.5 * spacing)
    if len(wanted):
        k, j, i = np.unravel_index(wanted, values.shape)
        points = box[0] + spacing * np.stack([i, j, k], axis=1)
        flat = values.ravel()
        several = Several(obstacles)

        def rows(first: int, last: int) -> np.ndarray:
            # Farther off than some steps of the grid an obstacle moves no contour.
            return several.least(
                points[first:last], gap + spacing, _OBSTACLE_REACH_MM, gap + 4.0 * spacing
            )

        distance = np.concatenate(in_halves(rows, len(points)))
        flat[wanted] = np.maximum(flat[wanted], gap - distance)
    border(values, 0.3 * spacing)
    vertices, faces = contour_grid(values, box[0], spacing)
    if len(faces) == 0:
        raise NothingLeft("carve: the obstacles leave nothing of the solid")
    if not keep_pieces:
        vertices, faces = largest_piece(vertices, faces)
    fine, fine_faces = relax(vertices, faces, smoothing), faces
    # Where few triangles run through one another, or are lifted through one another out of an
    # obstacle, more do not.
    for share in _FINER:
        vertices, faces = simplify(fine, fine_faces, int(share * triangles))
        lifted = clear_of(vertices, obstacles, 0.5 * gap)
        mesh = trimesh.Trimesh(lifted, faces, process=False)
        if len(self_intersections(mesh)) == 0:
            return mesh
    return as_far_as_free(vertices, lifted, faces)


def clear_of(vertices: np.ndarray, obstacles: Sequence[MeshIndex], gap: float) -> np.ndarray:
    """Lift vertices (n, 3) that ended up inside an obstacle, or nearer than gap mm, out of it."""
    # What one obstacle lifts may come to lie in the next.
    near = [obstacle for obstacle, _ in reaching(obstacles, vertices, gap + 4.0)]
    return Several(near).lift(vertices, gap)


def border(values: np.ndarray, outside: float) -> None:
    """Make the border of a grid count as outside, so that its contour closes."""
    for axis in range(3):
        edge: list[slice | int] = [slice(None)] * 3
        for index in (0, -1):
            edge[axis] = index
            values[tuple(edge)] = np.maximum(values[tuple(edge)], outside)


@njit(cache=True, nogil=True)
def _nearest_line(vertices, starts, lines, lengths):
    """For each vertex the nearest line, and the share of its length where it is nearest."""
    n = vertices.shape[0]
    which = np.zeros(n, np.int64)
    share = np.zeros(n)
    for i in range(n):
        best = np.inf
        for m in range(starts.size - 1):
            passed = 0.0
            for s in range(starts[m], starts[m + 1] - 1):
                ax, ay, az = lines[s, 0], lines[s, 1], lines[s, 2]
                bx, by, bz = lines[s + 1, 0] - ax, lines[s + 1, 1] - ay, lines[s + 1, 2] - az
                px, py, pz = vertices[i, 0] - ax, vertices[i, 1] - ay, vertices[i, 2] - az
                l2 = bx * bx + by * by + bz * bz
                t = 0.0
                if l2 > 0:
                    t = min(max((px * bx + py * by + pz * bz) / l2, 0.0), 1.0)
                dx, dy, dz = px - t * bx, py - t * by, pz - t * bz
                d2 = dx * dx + dy * dy + dz * dz
                if d2 < best:
                    best = d2
                    which[i] = m
                    share[i] = (passed + t * np.sqrt(l2)) / max(lengths[m], 1e-9)
                passed += np.sqrt(l2)
    return which, share


def fibre_coordinates(
    vertices: np.ndarray, lines: Sequence[np.ndarray]
) -> tuple[np.ndarray, np.ndarray]:
    """Fibre coordinates of points from the nearest of a muscle's lines.

    Parameters
    ----------
    vertices : (n, 3) float
    lines : sequence of (k, 3) float
        Fibre lines, origin end first, mm.

    Returns
    -------
    uv : (n, 2) float32
        u along the nearest line (0 origin, 1 insertion), v the line's place in the sequence, 0-1.
    which : (n,) int
        Index of the nearest line.
    """
    starts = np.concatenate([[0], np.cumsum([len(line) for line in lines])])
    flat = np.ascontiguousarray(np.concatenate(lines), dtype=np.float64)
    lengths = np.array([np.linalg.norm(np.diff(line, axis=0), axis=1).sum() for line in lines])
    which, share = _nearest_line(
        np.ascontiguousarray(vertices, dtype=np.float64), starts, flat, lengths
    )
    v = (which + 0.5) / max(len(lines), 1)
    return np.stack([share, v], axis=1).astype(np.float32), which
