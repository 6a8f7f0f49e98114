"""How deep two surfaces lie in each other, for many pairs in one kernel.

Surfaces of two closed meshes that overlap cross along closed lines; what lies in the
other is bounded by them. So the search starts at the triangles that cross and floods
from there over those in the other: what merely lies beside it is never asked.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numba import carray, njit

from meshes.drape.audit import TOUCH, _cross
from meshes.drape.distance import KERNEL, MeshIndex
from meshes.drape.several import _at, _handle, _signed, _tree
from meshes.shapes.halves import in_halves


@njit(**KERNEL)
def faces_round(faces, count):
    """Faces that use each of ``count`` vertices: (count + 1,) where they start, and (3 m,) they."""
    start = np.zeros(count + 1, np.int64)
    for f in range(faces.shape[0]):
        for k in range(3):
            start[faces[f, k] + 1] += 1
    for v in range(count):
        start[v + 1] += start[v]
    place = start[:-1].copy()
    around = np.empty(3 * faces.shape[0], np.int64)
    for f in range(faces.shape[0]):
        for k in range(3):
            v = faces[f, k]
            around[place[v]] = f
            place[v] += 1
    return start, around


class Surface:
    """A closed mesh, and which faces meet at its vertices."""

    def __init__(self, index: MeshIndex, around: tuple[np.ndarray, np.ndarray] | None = None):
        self.index = index
        self.around = faces_round(index.faces, len(index.vertices)) if around is None else around
        self.row = [
            *_handle(index),
            index.vertices.ctypes.data,
            *(array.ctypes.data for array in self.around),
        ]

    def moved(self, index: MeshIndex) -> Surface:
        """The same triangles with their vertices elsewhere, or seen in the mirror."""
        return Surface(index, self.around)


class Immersions:
    """Points of either of a pair that lie in the other.

    Attributes
    ----------
    touch : (n,) bool
        Pairs whose surfaces cross.
    """

    def __init__(self, touch: np.ndarray, whole: np.ndarray, real: np.ndarray) -> None:
        self.touch = touch
        order = np.argsort(2 * whole[:, 0] + whole[:, 1], kind="stable")
        self._whole, self._real = whole[order], real[order]
        keys = 2 * self._whole[:, 0] + self._whole[:, 1]
        self._starts = np.searchsorted(keys, np.arange(2 * len(touch) + 1))

    def of(self, pair: int, side: int) -> tuple[np.ndarray, ...] | None:
        """Points of the first (side 0) or second (1) of a pair in the other; None when none.

        Returns
        -------
        corner : (k, 3) int
            Vertices between which each point lies.
        face : (k,) int
            Face of the other closest to it.
        point : (k, 3) float
        depth : (k,) float
            mm.
        normal : (k, 3) float
            Out of the other.
        """
        first, last = self._starts[2 * pair + side : 2 * pair + side + 2]
        if first == last:
            return None
        whole, real = self._whole[first:last], self._real[first:last]
        return whole[:, 2:5], whole[:, 5], real[:, :3], real[:, 3], real[:, 4:]


def immersions(
    ones: Sequence[Surface],
    others: Sequence[Surface],
    *,
    step: float,
    reach: float,
    left: float,
    borne: float,
) -> Immersions:
    """Find what lies in each other of many pairs of closed meshes.

    Parameters
    ----------
    ones, others : sequence of Surface
        The pairs.
    step : float
        mm between test points.
    reach : float
        Depth beyond which a point does not count, mm.
    left : float
        Least depth of a point that counts, mm.
    borne : float
        Where no point of a surface lies deeper than this in the other, none counts, mm.
    """
    one = np.array([s.row for s in ones], np.int64).reshape(-1, 17)
    other = np.array([s.row for s in others], np.int64).reshape(-1, 17)
    touch = np.zeros(len(one), bool)
    # Neighbours in the list are alike in size: each half gets every second one.
    turn = np.concatenate([np.arange(0, len(one), 2), np.arange(1, len(one), 2)])

    def rows(first: int, last: int) -> tuple[np.ndarray, np.ndarray]:
        return _immersed_pairs(
            one, other, turn, first, last, touch, float(step), float(reach), float(left),
            float(borne), -10 * TOUCH,
        )  # fmt: skip

    found = in_halves(rows, len(one), 20)
    return Immersions(touch, *map(np.concatenate, zip(*found, strict=True)))


@njit(**KERNEL)
def _immersed_pairs(one, other, turn, first, last, touch, step, reach, left, borne, tolerance):
    whole = np.empty((4096, 6), np.int64)
    real = np.empty((4096, 7))
    count = 0
    for at in range(first, last):
        pair = turn[at]
        a, b = one[pair], other[pair]
        cross_a = np.zeros(a[11], np.bool_)
        cross_b = np.zeros(b[11], np.bool_)
        if not _mark_crossing(a, b, tolerance, cross_a, cross_b):
            continue
        touch[pair] = True
        for side in range(2):
            seeds = cross_a if side == 0 else cross_b
            mine, yours = (a, b) if side == 0 else (b, a)
            before = count
            whole, real, count, deepest = _flood(
                mine, yours, seeds, step, reach, left, whole, real, count
            )
            if deepest < borne:
                count = before
            for i in range(before, count):
                whole[i, 0], whole[i, 1] = pair, side
    return whole[:count].copy(), real[:count].copy()


@njit(**KERNEL)
def _mark_crossing(a, b, tolerance, cross_a, cross_b):
    """Mark the triangles of two trees that cross one of the other; whether there are any."""
    low_a, high_a, link_a, corners_a = _tree(a)
    low_b, high_b, link_b, corners_b = _tree(b)
    order_a = carray(_at(a[6]), (a[11],), np.int64)
    order_b = carray(_at(b[6]), (b[11],), np.int64)
    none_a = np.array([0, 1, 2])
    none_b = np.array([3, 4, 5])
    stack = np.empty((512, 2), np.int32)
    stack[0, 0], stack[0, 1] = 0, 0
    top = 1
    found = False
    while top > 0:
        top -= 1
        m, n = stack[top, 0], stack[top, 1]
        if (
            low_a[m, 0] > high_b[n, 0]
            or low_a[m, 1] > high_b[n, 1]
            or low_a[m, 2] > high_b[n, 2]
            or high_a[m, 0] < low_b[n, 0]
            or high_a[m, 1] < low_b[n, 1]
            or high_a[m, 2] < low_b[n, 2]
        ):
            continue
        na, nb = link_a[m, 1], link_b[n, 1]
        if na > 0 and nb > 0:
            for i in range(link_a[m, 0], link_a[m, 0] + na):
                t = corners_a[i]
                n0 = (t[4] - t[1]) * (t[8] - t[2]) - (t[5] - t[2]) * (t[7] - t[1])
                n1 = (t[5] - t[2]) * (t[6] - t[0]) - (t[3] - t[0]) * (t[8] - t[2])
                n2 = (t[3] - t[0]) * (t[7] - t[1]) - (t[4] - t[1]) * (t[6] - t[0])
                l0, l1, l2 = min(t[0], t[3], t[6]), min(t[1], t[4], t[7]), min(t[2], t[5], t[8])
                h0, h1, h2 = max(t[0], t[3], t[6]), max(t[1], t[4], t[7]), max(t[2], t[5], t[8])
                for j in range(link_b[n, 0], link_b[n, 0] + nb):
                    if cross_a[order_a[i]] and cross_b[order_b[j]]:
                        continue
                    s = corners_b[j]
                    if (
                        min(s[0], s[3], s[6]) > h0
                        or max(s[0], s[3], s[6]) < l0
                        or min(s[1], s[4], s[7]) > h1
                        or max(s[1], s[4], s[7]) < l1
                        or min(s[2], s[5], s[8]) > h2
                        or max(s[2], s[5], s[8]) < l2
                    ):
                        continue
                    d0 = (s[0] - t[0]) * n0 + (s[1] - t[1]) * n1 + (s[2] - t[2]) * n2
                    d1 = (s[3] - t[0]) * n0 + (s[4] - t[1]) * n1 + (s[5] - t[2]) * n2
                    d2 = (s[6] - t[0]) * n0 + (s[7] - t[1]) * n1 + (s[8] - t[2]) * n2
                    if (d0 > 0 and d1 > 0 and d2 > 0) or (d0 < 0 and d1 < 0 and d2 < 0):
                        continue
                    if _cross(t, s, none_a, none_b, tolerance):
                        cross_a[order_a[i]] = True
                        cross_b[order_b[j]] = True
                        found = True
            continue
        # The larger of the two boxes is opened.
        size_a = size_b = 0.0
        for k in range(3):
            size_a += high_a[m, k] - low_a[m, k]
            size_b += high_b[n, k] - low_b[n, k]
        if na == 0 and (nb > 0 or size_a >= size_b):
            stack[top, 0], stack[top, 1] = link_a[m, 0], n
            stack[top + 1, 0], stack[top + 1, 1] = m + 1, n
        else:
            stack[top, 0], stack[top, 1] = m, link_b[n, 0]
            stack[top + 1, 0], stack[top + 1, 1] = m, n + 1
        top += 2
    return found


@njit(**KERNEL)
def _flood(mine, yours, seeds, step, reach, left, whole, real, count):
    """Points of one surface deeper than ``left`` in another, reached from where they cross.

    Vertices once, points on edges once, points inside faces; no two neighbours farther
    apart than about ``step`` mm. Returns the buffers, how far they are filled, and the
    greatest depth.
    """
    faces = carray(_at(mine[7]), (mine[11], 3), np.int64)
    edge_of = carray(_at(mine[8]), (mine[11], 3), np.int64)
    vertices = carray(_at(mine[14]), (mine[13], 3), np.float64)
    start = carray(_at(mine[15]), (mine[13] + 1,), np.int64)
    around = carray(_at(mine[16]), (3 * mine[11],), np.int64)
    order = carray(_at(yours[6]), (yours[11],), np.int64)
    seen_vertex = np.zeros(mine[13], np.bool_)
    seen_edge = np.zeros(mine[12], np.bool_)
    seen_face = np.zeros(mine[11], np.bool_)
    # How far outside each corner lies: what is nearer to it than that lies outside as well.
    outside = np.zeros(mine[13])
    queue = np.empty(mine[11], np.int64)
    waiting = 0
    for f in range(mine[11]):
        if seeds[f]:
            seen_face[f] = True
            queue[waiting] = f
            waiting += 1
    stack = np.empty(128, np.int32)
    slot = -1
    deepest = 0.0
    done = 0
    while done < waiting:
        f = queue[done]
        done += 1
        longest = 0.0
        for kind in range(7):
            # 0-2 corners, 3-5 edges, 6 the inside.
            p, q, r = faces[f, 0], faces[f, 1], faces[f, 2]
            n = number = 1
            if kind < 3:
                p = q = r = faces[f, kind]
                if seen_vertex[p]:
                    continue
                seen_vertex[p] = True
            elif kind < 6:
                p, q = faces[f, kind - 3], faces[f, (kind - 2) % 3]
                r = q
                length = np.sqrt(
                    (vertices[p, 0] - vertices[q, 0]) ** 2
                    + (vertices[p, 1] - vertices[q, 1]) ** 2
                    + (vertices[p, 2] - vertices[q, 2]) ** 2
                )
                longest = max(longest, length)
                e = edge_of[f, kind - 3]
                if seen_edge[e]:
                    continue
                seen_edge[e] = True
            else:
                # As the judge does: beyond two cuts the whole grid, edges included.
                n = max(int(np.ceil(longest / step)), 1)
                number = 1 if n <= 2 else 1 + (n + 1) * (n + 2) // 2
            i, j = 0, -1
            for m in range(number):
                u, v, w = 1.0, 0.0, 0.0
                if 3 <= kind < 6:
                    u = v = 0.5
                elif kind == 6:
                    if m == 0:
                        u = v = w = 1.0 / 3.0
                    else:
                        j += 1
                        if i + j > n:
                            i, j = i + 1, 0
                        u, v, w = i / n, j / n, (n - i - j) / n
                        if i == n or j == n or i + j == 0:
                            continue
                x = u * vertices[p, 0] + v * vertices[q, 0] + w * vertices[r, 0]
                y = u * vertices[p, 1] + v * vertices[q, 1] + w * vertices[r, 1]
                z = u * vertices[p, 2] + v * vertices[q, 2] + w * vertices[r, 2]
                clear = False
                for k in range(3):
                    c = faces[f, k]
                    clear = clear or outside[c] ** 2 > (
                        (x - vertices[c, 0]) ** 2
                        + (y - vertices[c, 1]) ** 2
                        + (z - vertices[c, 2]) ** 2
                    )
                if clear:
                    continue
                d, nx, ny, nz, found = _signed(yours, x, y, z, reach, stack, slot)
                if found < 0:
                    continue
                slot = found
                if d >= 0:
                    if kind < 3:
                        outside[p] = d
                    continue
                if kind < 3:
                    for k in range(start[p], start[p + 1]):
                        near = around[k]
                        if not seen_face[near]:
                            seen_face[near] = True
                            queue[waiting] = near
                            waiting += 1
                if -d <= left:
                    continue
                if count == whole.shape[0]:
                    more_whole = np.empty((2 * count, 6), np.int64)
                    more_real = np.empty((2 * count, 7))
                    more_whole[:count] = whole
                    more_real[:count] = real
                    whole, real = more_whole, more_real
                whole[count, 2], whole[count, 3], whole[count, 4] = p, q, r
                whole[count, 5] = order[found]
                real[count, 0], real[count, 1], real[count, 2], real[count, 3] = x, y, z, -d
                real[count, 4], real[count, 5], real[count, 6] = nx, ny, nz
                deepest = max(deepest, -d)
                count += 1
    return whole, real, count, deepest
