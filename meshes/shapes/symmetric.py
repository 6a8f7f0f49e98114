"""Contour of solids that mirror themselves in the plane x = 0."""

from __future__ import annotations

import numpy as np
import trimesh
from numba import njit

from meshes.shapes.contour import contour_grid, largest_piece, relax, simplify
from meshes.shapes.solid import Solid, _value


def contour_symmetric(
    solid: Solid,
    spacing: float,
    triangles: int,
    *,
    smoothing: int = 2,
    keep_pieces: bool = False,
) -> trimesh.Trimesh:
    """Contour a solid whose program describes its half x >= 0.

    The distance at (x, y, z) is taken at (|x|, y, z), which halves both the
    program and the grid. Rows that should melt into their own mirror image
    must reach across the plane.

    Parameters
    ----------
    solid : Solid
        Median rows and those of the half with x >= 0, mm.
    spacing : float
        Grid step, mm.
    triangles : int
        Wanted number of triangles.
    smoothing : int
        Rounds of tangential relaxation before decimation.
    keep_pieces : bool
        False keeps only the largest connected piece.

    Returns
    -------
    trimesh.Trimesh
        Closed, outward.
    """
    box = solid.bounds(margin=0.0)
    box = np.stack([box[0] - 2 * spacing, box[1] + 2 * spacing])
    box[0, 0] = 0.0
    count = np.maximum(np.ceil((box[1] - box[0]) / spacing).astype(int) + 1, 4)
    count += 1 - count % 2
    half = _evaluate_band(solid.program, box[0], spacing, *map(int, count))
    values = np.concatenate([half[:, :, :0:-1], half], axis=2)
    for axis in range(3):
        edge: list[slice | int] = [slice(None)] * 3
        for index in (0, -1):
            edge[axis] = index
            values[tuple(edge)] = np.maximum(values[tuple(edge)], 0.25 * spacing)
    lower = box[0] - [spacing * (count[0] - 1), 0.0, 0.0]
    vertices, faces = contour_grid(values, lower, spacing)
    if len(faces) == 0:
        raise ValueError("contour_symmetric: the solid is empty within its bounds")
    if not keep_pieces:
        vertices, faces = largest_piece(vertices, faces)
    vertices = relax(vertices, faces, smoothing)
    vertices, faces = simplify(vertices, faces, triangles)
    return trimesh.Trimesh(vertices, faces, process=False)


@njit(cache=True, nogil=True, error_model="numpy")
def _evaluate_band(program, lower, spacing, nx, ny, nz):
    """Distances on a grid of odd sizes, exact in a band round the surface.

    Every second node is evaluated first; the nodes between are evaluated only
    in cells near the surface and filled with a corner's value elsewhere, where
    the sign alone counts.
    """
    out = np.empty((nz, ny, nx), np.float32)
    for k in range(0, nz, 2):
        for j in range(0, ny, 2):
            for i in range(0, nx, 2):
                out[k, j, i] = _value(
                    program, lower[0] + spacing * i, lower[1] + spacing * j, lower[2] + spacing * k
                )
    near = 2.4 * spacing
    done = np.zeros((nz, ny, nx), np.bool_)
    for k in range(0, nz - 1, 2):
        for j in range(0, ny - 1, 2):
            for i in range(0, nx - 1, 2):
                least = np.float32(1e9)
                for c in range(0, 3, 2):
                    for b in range(0, 3, 2):
                        for a in range(0, 3, 2):
                            least = min(least, abs(out[k + c, j + b, i + a]))
                close = least < near
                corner = out[k, j, i]
                for c in range(3):
                    for b in range(3):
                        for a in range(3):
                            if a % 2 == 0 and b % 2 == 0 and c % 2 == 0:
                                continue
                            if done[k + c, j + b, i + a]:
                                continue
                            if close:
                                done[k + c, j + b, i + a] = True
                                out[k + c, j + b, i + a] = _value(
                                    program,
                                    lower[0] + spacing * (i + a),
                                    lower[1] + spacing * (j + b),
                                    lower[2] + spacing * (k + c),
                                )
                            else:
                                out[k + c, j + b, i + a] = corner
    return out
