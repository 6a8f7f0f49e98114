"""Carries the points of a flap along with its grid, fibre by fibre.

A point keeps its fibre (the row), its height within the flesh (as a share of the
half thickness) and its length of fibre from the hinge. Bent flesh does what the
pages of a book do: its layers slide over one another, so that those on the inside
of the roll are not squeezed and those on its outside not torn, and the cut end
comes out slanted.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit
from scipy.ndimage import gaussian_filter, map_coordinates
from scipy.spatial import cKDTree

from meshes.drape.distance import KERNEL

HALF_SMOOTH, LEAST_OF_THICK = 2.0, 0.6
"""A layer within the flesh is smooth: nodes over which the thickness is evened out, and the
share of the thick places that thin ones count with."""

FOOT_ROUNDS = 3


class Carried:
    """Points carried by a control sheet.

    Parameters
    ----------
    sheet : ControlSheet
        In its rest pose.
    points : (n, 3) float
        mm.
    """

    def __init__(self, sheet, points: np.ndarray) -> None:
        self.outward = float(sheet.outward)
        half = gaussian_filter(sheet.half_mm, HALF_SMOOTH, mode="nearest")
        self.half = np.maximum(half, LEAST_OF_THICK * np.percentile(half, 90))
        points = np.ascontiguousarray(np.asarray(points, float).reshape(-1, 3))
        self.row, self.column = nearest_place(sheet, points)
        if sheet.beside is not None:
            # What lies by a fibre that is held is no further from the hinge than on that one.
            row, column = nearest_place(sheet.beside, points)
            from_hinge = column * _spacing_at(sheet.beside, row)
            self.column = np.minimum(self.column, from_hinge / _spacing_at(sheet, self.row))
        rest = np.ascontiguousarray(sheet.mid, float)
        count = len(points)
        middle, frame = np.empty((count, 3)), np.empty((count, 3, 3))
        _frames(rest, self.row, self.column, self.outward, middle, frame)
        self._offset = np.einsum("nij,nj->ni", frame, points - middle)
        half = map_coordinates(self.half, [self.row, self.column], order=1, mode="nearest")
        self._height = self._offset[:, 2] / half
        self._gone = np.empty(count)
        normals, tangents = node_frames(rest, self.outward)
        _lengths(
            rest, normals, tangents, self.half, self.row, self.column, self._height, self._gone
        )

    @property
    def distance_mm(self) -> np.ndarray:
        """(n,) distance of each point from its place on the grid at rest, mm."""
        return np.linalg.norm(self._offset, axis=1)

    def columns(self, mid: np.ndarray) -> np.ndarray:
        """Return the column (n,) to which each point's fibre reaches on a grid."""
        mid = np.ascontiguousarray(mid, float)
        normals, tangents = node_frames(mid, self.outward)
        out = np.empty(len(self.row))
        _columns(mid, normals, tangents, self.half, self.row, self._height, self._gone, out)
        return out

    def frames(self, mid: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Return each point's place on a grid (n, 3) and unit frame there (n, 3, 3).

        The frame's rows point along the fibre, across, and to the superficial side.
        """
        mid = np.ascontiguousarray(mid, float)
        middle, frame = np.empty((len(self.row), 3)), np.empty((len(self.row), 3, 3))
        _frames(mid, self.row, self.columns(mid), self.outward, middle, frame)
        return middle, frame

    def place(self, mid: np.ndarray) -> np.ndarray:
        """Return the points (n, 3) for a grid (rows, columns, 3), mm."""
        middle, frame = self.frames(mid)
        return middle + np.einsum("nij,ni->nj", frame, self._offset)


def _spacing_at(sheet, row: np.ndarray) -> np.ndarray:
    """Return the spacing of the columns along each row (n,), mm."""
    links = np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2).mean(axis=1)
    return np.interp(row, np.arange(len(links)), links)


def nearest_place(sheet, points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Return the (row, column) of the nearest place of the grid, as real numbers."""
    rows, columns = sheet.mid.shape[:2]
    fine = 6
    r = np.linspace(0, rows - 1, (rows - 1) * fine + 1)
    c = np.linspace(0, columns - 1, (columns - 1) * fine + 1)
    at = np.stack(np.meshgrid(r, c, indexing="ij")).reshape(2, -1)
    dense = np.stack(
        [map_coordinates(sheet.mid[..., k], at, order=1, mode="nearest") for k in range(3)], axis=1
    )
    near = cKDTree(dense).query(points)[1]
    row, column = np.ascontiguousarray(at[0, near]), np.ascontiguousarray(at[1, near])
    _onto_the_grid(np.ascontiguousarray(sheet.mid, float), points, row, column, 1.0 / fine)
    return row, column


@njit(**KERNEL)
def _onto_the_grid(mid, points, row, column, reach):
    """Bring places found on a raster to the foot of the perpendicular, in place.

    Left on the raster, neighbours would sit on it in steps, and the steps open where the
    grid is bent: fibres would come out long and faces ribbed.
    """
    rows, columns = mid.shape[0], mid.shape[1]
    for n in range(len(row)):
        r0, c0 = row[n], column[n]
        for _ in range(FOOT_ROUNDS):
            i = min(int(row[n]), rows - 2)
            j = min(int(column[n]), columns - 2)
            u, v = row[n] - i, column[n] - j
            aa = ab = bb = ga = gb = 0.0
            for k in range(3):
                p00, p01 = mid[i, j, k], mid[i, j + 1, k]
                p10, p11 = mid[i + 1, j, k], mid[i + 1, j + 1, k]
                a = (1 - v) * (p10 - p00) + v * (p11 - p01)
                b = (1 - u) * (p01 - p00) + u * (p11 - p10)
                off = points[n, k] - (
                    (1 - u) * ((1 - v) * p00 + v * p01) + u * ((1 - v) * p10 + v * p11)
                )
                aa += a * a
                ab += a * b
                bb += b * b
                ga += a * off
                gb += b * off
            det = aa * bb - ab * ab
            if det < 1e-9:
                break
            row[n] += (bb * ga - ab * gb) / det
            column[n] += (aa * gb - ab * ga) / det
            row[n] = min(max(row[n], r0 - reach, 0.0), r0 + reach, rows - 1.0)
            column[n] = min(max(column[n], c0 - reach, 0.0), c0 + reach, columns - 1.0)


@njit(**KERNEL)
def node_frames(mid, outward):
    """Return unit normals to the superficial side and unit tangents along, at every node."""
    rows, columns = mid.shape[0], mid.shape[1]
    normals = np.empty((rows, columns, 3))
    tangents = np.empty((rows, columns, 3))
    for i in range(rows):
        up, down = min(i + 1, rows - 1), max(i - 1, 0)
        for j in range(columns):
            ahead, back = min(j + 1, columns - 1), max(j - 1, 0)
            ax = mid[i, ahead, 0] - mid[i, back, 0]
            ay = mid[i, ahead, 1] - mid[i, back, 1]
            az = mid[i, ahead, 2] - mid[i, back, 2]
            bx = mid[up, j, 0] - mid[down, j, 0]
            by = mid[up, j, 1] - mid[down, j, 1]
            bz = mid[up, j, 2] - mid[down, j, 2]
            nx, ny, nz = ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx
            n = outward / max(math.sqrt(nx * nx + ny * ny + nz * nz), 1e-12)
            normals[i, j, 0], normals[i, j, 1], normals[i, j, 2] = n * nx, n * ny, n * nz
            a = 1.0 / max(math.sqrt(ax * ax + ay * ay + az * az), 1e-12)
            tangents[i, j, 0], tangents[i, j, 1], tangents[i, j, 2] = a * ax, a * ay, a * az
    return normals, tangents


@njit(inline="always", **KERNEL)
def _link_length(mid, normals, tangents, half, i, w, j, height):
    """Length of one link of a layer, with the round of the arc over its chord."""
    k = min(i + 1, mid.shape[0] - 1)
    total = 0.0
    turn = 0.0
    for c in range(3):
        a = (1 - w) * (mid[i, j, c] + height * half[i, j] * normals[i, j, c]) + w * (
            mid[k, j, c] + height * half[k, j] * normals[k, j, c]
        )
        b = (1 - w) * (mid[i, j + 1, c] + height * half[i, j + 1] * normals[i, j + 1, c]) + w * (
            mid[k, j + 1, c] + height * half[k, j + 1] * normals[k, j + 1, c]
        )
        total += (b - a) ** 2
        t = (1 - w) * (tangents[i, j + 1, c] - tangents[i, j, c]) + w * (
            tangents[k, j + 1, c] - tangents[k, j, c]
        )
        turn += t * t
    # On the inside of a roll sharper than the flesh is thick a layer would run backwards.
    return max(math.sqrt(total), 0.02) * (1.0 + turn / 24.0)


@njit(**KERNEL)
def _lengths(mid, normals, tangents, half, row, column, height, out):
    columns = mid.shape[1]
    for n in range(len(row)):
        i = min(int(row[n]), mid.shape[0] - 1)
        w = row[n] - i
        gone = 0.0
        j = 0
        while j < columns - 1 and j < column[n]:
            share = min(column[n] - j, 1.0)
            gone += share * _link_length(mid, normals, tangents, half, i, w, j, height[n])
            j += 1
        out[n] = gone


@njit(**KERNEL)
def _columns(mid, normals, tangents, half, row, height, gone, out):
    columns = mid.shape[1]
    for n in range(len(row)):
        i = min(int(row[n]), mid.shape[0] - 1)
        w = row[n] - i
        left = gone[n]
        at = 0.0
        if left > 0.0:
            length = 1.0
            for j in range(columns - 1):
                length = _link_length(mid, normals, tangents, half, i, w, j, height[n])
                if left <= length or j == columns - 2:
                    at = j + left / length
                    break
                left -= length
        out[n] = at


@njit(**KERNEL)
def _frames(mid, row, column, outward, middle, frame):
    """Place and frame of points of the grid: uniform Catmull-Rom, straight beyond the ends."""
    rows, columns = mid.shape[0], mid.shape[1]
    wr, dr, wc, dc = np.empty(4), np.empty(4), np.empty(4), np.empty(4)
    for n in range(len(row)):
        i0 = _weights(row[n], rows, wr, dr)
        j0 = _weights(column[n], columns, wc, dc)
        ax = ay = az = bx = by = bz = px = py = pz = 0.0
        for a in range(4):
            i = min(max(i0 + a, 0), rows - 1)
            for b in range(4):
                j = min(max(j0 + b, 0), columns - 1)
                p, s, t = wr[a] * wc[b], wr[a] * dc[b], dr[a] * wc[b]
                x, y, z = mid[i, j, 0], mid[i, j, 1], mid[i, j, 2]
                px += p * x
                py += p * y
                pz += p * z
                ax += s * x
                ay += s * y
                az += s * z
                bx += t * x
                by += t * y
                bz += t * z
        nx, ny, nz = ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx
        f = outward / max(math.sqrt(nx * nx + ny * ny + nz * nz), 1e-12)
        nx, ny, nz = f * nx, f * ny, f * nz
        f = 1.0 / max(math.sqrt(ax * ax + ay * ay + az * az), 1e-12)
        ax, ay, az = f * ax, f * ay, f * az
        middle[n, 0], middle[n, 1], middle[n, 2] = px, py, pz
        frame[n, 0, 0], frame[n, 0, 1], frame[n, 0, 2] = ax, ay, az
        frame[n, 1, 0] = ny * az - nz * ay
        frame[n, 1, 1] = nz * ax - nx * az
        frame[n, 1, 2] = nx * ay - ny * ax
        frame[n, 2, 0], frame[n, 2, 1], frame[n, 2, 2] = nx, ny, nz


@njit(inline="always", **KERNEL)
def _weights(at, count, weight, slope):
    """Weights and derivative weights of the four nodes about a place; return the first one."""
    low = min(max(int(math.floor(at)), 0), count - 2)
    t = at - low
    if t > 1.0:
        # Straight on past the last node.
        weight[0], weight[1], weight[2], weight[3] = 0.0, 1.0 - t, t, 0.0
        slope[0], slope[1], slope[2], slope[3] = 0.0, -1.0, 1.0, 0.0
        return low - 1
    weight[0] = 0.5 * (-t + 2 * t * t - t * t * t)
    weight[1] = 0.5 * (2 - 5 * t * t + 3 * t * t * t)
    weight[2] = 0.5 * (t + 4 * t * t - 3 * t * t * t)
    weight[3] = 0.5 * (-t * t + t * t * t)
    slope[0] = 0.5 * (-1 + 4 * t - 3 * t * t)
    slope[1] = 0.5 * (-10 * t + 9 * t * t)
    slope[2] = 0.5 * (1 + 8 * t - 9 * t * t)
    slope[3] = 0.5 * (-2 * t + 3 * t * t)
    if low == 0:
        weight[1] += 2 * weight[0]
        weight[2] -= weight[0]
        weight[0] = 0.0
        slope[1] += 2 * slope[0]
        slope[2] -= slope[0]
        slope[0] = 0.0
    if low + 3 > count:
        weight[2] += 2 * weight[3]
        weight[1] -= weight[3]
        weight[3] = 0.0
        slope[2] += 2 * slope[3]
        slope[1] -= slope[3]
        slope[3] = 0.0
    return low - 1
