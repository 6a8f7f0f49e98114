"""Contour of solids that mirror themselves in the plane x = 0."""

from __future__ import annotations

import numpy as np
import trimesh
from numba import njit

from meshes.shapes.contour import contour_grid, largest_piece, relax, simplify
from meshes.shapes.solid import Solid, _primitive


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


_FAR = 7.0
"""Beyond this distance (mm) a row's bound stands for its distance."""


@njit(cache=True, nogil=True, error_model="numpy")
def _bound(row, x, y, z):
    """Lower bound of the distance to a row's primitive, without powers."""
    kind = int(row[0])
    if kind == 5:
        return -1e9
    dx, dy, dz = x - row[3], y - row[4], z - row[5]
    away = np.sqrt(dx * dx + dy * dy + dz * dz) - row[6]
    if away > _FAR:
        return away
    q = row[7:]
    if kind == 2:  # blade: capsule round it
        bx, by, bz = q[3] - q[0], q[4] - q[1], q[5] - q[2]
        px, py, pz = x - q[0], y - q[1], z - q[2]
        length2 = max(bx * bx + by * by + bz * bz, 1e-9)
        t = min(max((px * bx + py * by + pz * bz) / length2, 0.0), 1.0)
        px, py, pz = px - t * bx, py - t * by, pz - t * bz
        across = np.sqrt(px * px + py * py + pz * pz)
        return max(away, across - max(max(q[9], q[10]), max(q[11], q[12])) * 1.2)
    if kind == 3 or kind == 4:  # prism and box: box round it
        px, py, pz = x - q[0], y - q[1], z - q[2]
        u = max(abs(q[3] * px + q[4] * py + q[5] * pz) - q[12], 0.0)
        v = max(abs(q[6] * px + q[7] * py + q[8] * pz) - q[13], 0.0)
        w = max(abs(q[9] * px + q[10] * py + q[11] * pz) - q[14], 0.0)
        outside = np.sqrt(u * u + v * v + w * w)
        return outside if outside > 0.0 else -1e9
    return away


@njit(cache=True, nogil=True, error_model="numpy")
def _near_value(program, x, y, z):
    """Distance of a program, exact near the surface; a bound with the right sign elsewhere."""
    d = 1e3
    for i in range(program.shape[0]):
        row = program[i]
        operation = int(row[1])
        k = row[2]
        bound = _bound(row, x, y, z)
        if operation == 0:
            if bound > 0.0:
                if bound > d + k:
                    continue
                if bound > _FAR + k:
                    d = min(d, bound)
                    continue
            p = _primitive(row, x, y, z)
            h = max(k - abs(d - p), 0.0) / k if k > 0.0 else 0.0
            d = min(d, p) - h * h * k * 0.25
        else:
            if operation == 1:
                if bound > 0.0 and -bound < d - k:
                    continue
                p = -_primitive(row, x, y, z)
            else:
                p = _primitive(row, x, y, z)
            h = max(k - abs(d - p), 0.0) / k if k > 0.0 else 0.0
            d = max(d, p) + h * h * k * 0.25
    return d


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
                out[k, j, i] = _near_value(
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
                                out[k + c, j + b, i + a] = _near_value(
                                    program,
                                    lower[0] + spacing * (i + a),
                                    lower[1] + spacing * (j + b),
                                    lower[2] + spacing * (k + c),
                                )
                            else:
                                out[k + c, j + b, i + a] = corner
    return out
