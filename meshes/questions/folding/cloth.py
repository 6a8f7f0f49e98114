"""Turns an inextensible sheet about its hinge, step by small step.

Each step turns the free sheet a little about its hinge line and then restores,
by sweeps of projections (position-based dynamics, Müller et al. 2007), what a
muscle keeps: the length of every fibre, the distance of neighbouring fibres,
a least radius of bend, and that it lies on the ground and never in it. The
last word has a march along each fibre that sets every link to its length.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

from meshes.drape.distance import KERNEL


@njit(inline="always", **KERNEL)
def _link(x, a, b, c, d, rest, stiff, only_shorter, wa, wb):
    """Bring two nodes to their distance (or, when ``only_shorter``, to at least it)."""
    dx = x[c, d, 0] - x[a, b, 0]
    dy = x[c, d, 1] - x[a, b, 1]
    dz = x[c, d, 2] - x[a, b, 2]
    length = math.sqrt(dx * dx + dy * dy + dz * dz)
    if length < 1e-9 or wa + wb == 0.0:
        return
    if only_shorter and length >= rest:
        return
    move = stiff * (length - rest) / length / (wa + wb)
    x[a, b, 0] += wa * move * dx
    x[a, b, 1] += wa * move * dy
    x[a, b, 2] += wa * move * dz
    x[c, d, 0] -= wb * move * dx
    x[c, d, 1] -= wb * move * dy
    x[c, d, 2] -= wb * move * dz


@njit(inline="always", **KERNEL)
def _sample(field, ox, oy, oz, h, px, py, pz):
    """Trilinear distance and gradient; far outside the box it is free."""
    fx, fy, fz = (px - ox) / h, (py - oy) / h, (pz - oz) / h
    i, j, k = int(math.floor(fx)), int(math.floor(fy)), int(math.floor(fz))
    nx, ny, nz = field.shape
    if i < 0 or j < 0 or k < 0 or i >= nx - 1 or j >= ny - 1 or k >= nz - 1:
        return 1e9, 0.0, 0.0, 0.0
    a, b, c = fx - i, fy - j, fz - k
    c000, c001 = field[i, j, k], field[i, j, k + 1]
    c010, c011 = field[i, j + 1, k], field[i, j + 1, k + 1]
    c100, c101 = field[i + 1, j, k], field[i + 1, j, k + 1]
    c110, c111 = field[i + 1, j + 1, k], field[i + 1, j + 1, k + 1]
    x00 = c000 + (c100 - c000) * a
    x01 = c001 + (c101 - c001) * a
    x10 = c010 + (c110 - c010) * a
    x11 = c011 + (c111 - c011) * a
    y0 = x00 + (x10 - x00) * b
    y1 = x01 + (x11 - x01) * b
    gx = (
        ((c100 - c000) * (1 - b) + (c110 - c010) * b) * (1 - c)
        + ((c101 - c001) * (1 - b) + (c111 - c011) * b) * c
    ) / h
    gy = ((x10 - x00) * (1 - c) + (x11 - x01) * c) / h
    gz = (y1 - y0) / h
    return y0 + (y1 - y0) * c, gx, gy, gz


@njit(**KERNEL)
def settle(x, rest, weight, clear, pull, along, across, slant, slant2, least2, least4, across2, across4,
           field, origin, voxel, rounds, bend, smooth):  # fmt: skip
    """Sweep the projections ``rounds`` times over the nodes ``x`` (rows, columns, 3), in place.

    Parameters
    ----------
    rest : (rows, columns, 3) float
        Where nodes with weight 0 stay.
    weight : (rows, columns) float
        1 free, 0 held at the hinge.
    clear : (rows, columns) float
        Least distance from the ground, mm.
    pull : (rows, columns, 3) float
        Moves every free node by this in each sweep, mm.
    along, across, slant, slant2, least2, least4, across2, across4 : arrays of float
        Lengths of links, mm.
    """
    rows, columns = x.shape[0], x.shape[1]
    ox, oy, oz = origin[0], origin[1], origin[2]
    for sweep in range(rounds):
        for i in range(rows):
            for j in range(columns):
                w = weight[i, j]
                for k in range(3):
                    x[i, j, k] += w * pull[i, j, k]
        # Smooth across and along: a muscle's flesh resists creases.
        if smooth > 0.0:
            for i in range(rows):
                for j in range(2, columns):
                    w = weight[i, j] * smooth
                    for k in range(3):
                        if 0 < i < rows - 1:
                            x[i, j, k] += w * (0.5 * (x[i - 1, j, k] + x[i + 1, j, k]) - x[i, j, k])
                        if j < columns - 1:
                            x[i, j, k] += w * (0.5 * (x[i, j - 1, k] + x[i, j + 1, k]) - x[i, j, k])
        for i in range(rows):
            for j in range(columns):
                if j + 2 < columns:
                    _link(x, i, j, i, j + 2, least2[i, j], bend, True,
                          weight[i, j], weight[i, j + 2])  # fmt: skip
                if j + 4 < columns:
                    _link(x, i, j, i, j + 4, least4[i, j], bend, True,
                          weight[i, j], weight[i, j + 4])  # fmt: skip
                if i + 4 < rows:
                    _link(x, i, j, i + 4, j, across4[i, j], bend, True,
                          weight[i, j], weight[i + 4, j])  # fmt: skip
                if i + 2 < rows:
                    _link(x, i, j, i + 2, j, across2[i, j], bend, True,
                          weight[i, j], weight[i + 2, j])  # fmt: skip
        for at in range(rows - 1):
            # Turn about: so that a correction travels both ways across the sheet.
            i = at if sweep % 2 == 0 else rows - 2 - at
            for j in range(columns):
                _link(x, i, j, i + 1, j, across[i, j], 1.0, False,
                      weight[i, j], weight[i + 1, j])  # fmt: skip
                if j + 1 < columns:
                    _link(x, i, j, i + 1, j + 1, slant[i, j], 1.0, False,
                          weight[i, j], weight[i + 1, j + 1])  # fmt: skip
                    _link(x, i + 1, j, i, j + 1, slant2[i, j], 1.0, False,
                          weight[i + 1, j], weight[i, j + 1])  # fmt: skip
        for i in range(rows):
            for j in range(columns - 1):
                _link(x, i, j, i, j + 1, along[i, j], 1.0, False,
                      weight[i, j], weight[i, j + 1])  # fmt: skip
            for j in range(columns - 2, -1, -1):
                _link(x, i, j, i, j + 1, along[i, j], 1.0, False,
                      weight[i, j], weight[i, j + 1])  # fmt: skip
        for i in range(rows):
            for j in range(columns):
                if weight[i, j] == 0.0:
                    continue
                d, gx, gy, gz = _sample(field, ox, oy, oz, voxel,
                                        x[i, j, 0], x[i, j, 1], x[i, j, 2])  # fmt: skip
                lack = clear[i, j] - d
                if lack > 0.0:
                    g = math.sqrt(gx * gx + gy * gy + gz * gz)
                    if g > 1e-3:
                        lack = min(lack, 4.0) / g
                        x[i, j, 0] += lack * gx
                        x[i, j, 1] += lack * gy
                        x[i, j, 2] += lack * gz


@njit(**KERNEL)
def march(x, weight, along):
    """Set every link of every fibre to its length, from the hinge outwards, in place."""
    rows, columns = x.shape[0], x.shape[1]
    for i in range(rows):
        for j in range(columns - 1):
            if weight[i, j + 1] == 0.0:
                continue
            dx = x[i, j + 1, 0] - x[i, j, 0]
            dy = x[i, j + 1, 1] - x[i, j, 1]
            dz = x[i, j + 1, 2] - x[i, j, 2]
            length = math.sqrt(dx * dx + dy * dy + dz * dz)
            if length < 1e-9:
                continue
            f = along[i, j] / length
            x[i, j + 1, 0] = x[i, j, 0] + f * dx
            x[i, j + 1, 1] = x[i, j, 1] + f * dy
            x[i, j + 1, 2] = x[i, j, 2] + f * dz


@njit(**KERNEL)
def distances(points, field, origin, voxel):
    """Return the field at points (n, 3), mm; 1e9 outside its box."""
    out = np.empty(len(points))
    for n in range(len(points)):
        out[n] = _sample(field, origin[0], origin[1], origin[2], voxel,
                         points[n, 0], points[n, 1], points[n, 2])[0]  # fmt: skip
    return out


LEFT_OF_AREA = 0.012


class Links:
    """Rest lengths of a grid (rows, columns, 3) and its least bends."""

    def __init__(self, mid: np.ndarray, radius_mm: float, across_mm: float) -> None:
        def length(a, b):
            return np.ascontiguousarray(np.linalg.norm(b - a, axis=2))

        self._drawn_in = 1.0
        self.along = length(mid[:, :-1], mid[:, 1:])
        self.across = length(mid[:-1], mid[1:])
        self.slant = length(mid[:-1, :-1], mid[1:, 1:])
        self.slant2 = length(mid[1:, :-1], mid[:-1, 1:])
        self.least2 = self._least(mid, 2, 1, radius_mm)
        self.least4 = self._least(mid, 4, 1, radius_mm)
        self.across2 = self._least(mid, 2, 0, across_mm)
        self.across4 = self._least(mid, 4, 0, across_mm)

    @staticmethod
    def _least(mid: np.ndarray, reach: int, axis: int, radius_mm: float) -> np.ndarray:
        """Chord of an arc of the least radius over ``reach`` links; never more than at rest."""
        n = mid.shape[axis]
        if n <= reach:
            return np.zeros(mid.shape[:2])
        step = np.linalg.norm(np.diff(mid, axis=axis), axis=2)
        arc = sum(step.take(range(k, n - reach + k), axis=axis) for k in range(reach))
        rest = np.linalg.norm(
            mid.take(range(reach, n), axis=axis) - mid.take(range(n - reach), axis=axis), axis=2
        )
        chord = 2 * radius_mm * np.sin(np.minimum(arc / (2 * radius_mm), np.pi / 2))
        return np.ascontiguousarray(np.minimum(chord, rest))

    def draw_in(self, area: float) -> None:
        """Tighten or loosen the links across for a sheet whose area is now this share of its own.

        Flat cells can't follow a doubly curved sheet exactly; this keeps the small
        error of each of them from adding up over the whole. Small errors are left:
        a sheet that is drawn in crumples.
        """
        error = area - 1.0
        excess = np.sign(error) * max(abs(error) - LEFT_OF_AREA, 0.0)
        self._drawn_in = float(np.clip(self._drawn_in - 0.9 * excess, 0.85, 1.15))

    def all(self) -> tuple[np.ndarray, ...]:
        """Return the arrays in the order in which ``settle`` takes them."""
        return (
            *(self.along, self._drawn_in * self.across),
            *(self._drawn_in * self.slant, self._drawn_in * self.slant2),
            *(self.least2, self.least4, self.across2, self.across4),
        )
