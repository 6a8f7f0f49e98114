"""Fewer triangles for the same shape: corners that lie on their neighbours' planes are taken out.

A corner is drawn on to one of its neighbours as long as the new place lies within a tolerance
of the planes of all triangles that have been drawn together there. The corners that are left
have not moved, so that whatever is known of each (fibre coordinates, tendon) stays true.
"""

from __future__ import annotations

import numpy as np
from numba import njit

_ROUNDS = 16
_TURN = 0.90
"""Cosine of the most that a triangle may turn."""
_SLIVER = 0.12
"""Least height of a new triangle, as a share of its longest side."""


def thinned_mesh(
    vertices: np.ndarray, faces: np.ndarray, tolerance: float | np.ndarray, longest: float
) -> tuple[np.ndarray, np.ndarray]:
    """Take corners out of a closed mesh.

    Parameters
    ----------
    vertices : (n, 3) float
        mm.
    faces : (m, 3) int
        Every edge in two of them.
    tolerance : float or (n,) float
        How far a corner's goal may lie from the planes that met in the corner, mm; the
        surface moves by about as much. One for each corner that is taken out, or one for all.
    longest : float
        Longest edge that may arise, mm.

    Returns
    -------
    kept : (k,) int
        Numbers of the corners that are left.
    faces : (l, 3) int
        Numbered among those.
    """
    faces, removed = _thin(
        np.ascontiguousarray(vertices, np.float64),
        np.ascontiguousarray(faces, np.int64),
        np.broadcast_to(np.asarray(tolerance, np.float64) ** 2, len(vertices)).copy(),
        float(longest) ** 2,
        _ROUNDS,
    )
    number = np.cumsum(~removed) - 1
    return np.flatnonzero(~removed), number[faces]


@njit(cache=True, nogil=True)
def _thin(v, f, tolerance, longest, rounds):
    n = len(v)
    f = f.copy()
    quadric = np.zeros((n, 10))
    normal = np.empty((len(f), 3))
    for i in range(len(f)):
        _plane(v, f[i, 0], f[i, 1], f[i, 2], normal[i])
        a, b, c = normal[i]
        d = -(a * v[f[i, 0], 0] + b * v[f[i, 0], 1] + c * v[f[i, 0], 2])
        for k in range(3):
            q = quadric[f[i, k]]
            q[0] += a * a
            q[1] += a * b
            q[2] += a * c
            q[3] += a * d
            q[4] += b * b
            q[5] += b * c
            q[6] += b * d
            q[7] += c * c
            q[8] += c * d
            q[9] += d * d
    removed = np.zeros(n, np.bool_)
    mark = np.zeros(n, np.int64)
    stamp = 0
    fresh = np.empty(3)
    for _ in range(rounds):
        start = np.zeros(n + 1, np.int64)
        for i in range(len(f)):
            for k in range(3):
                start[f[i, k] + 1] += 1
        for i in range(n):
            start[i + 1] += start[i]
        fill = start[:-1].copy()
        around = np.empty(3 * len(f), np.int64)
        for i in range(len(f)):
            for k in range(3):
                around[fill[f[i, k]]] = i
                fill[f[i, k]] += 1
        goal = np.full(n, -1)
        cost = np.full(n, np.inf)
        for i in range(n):
            if removed[i]:
                continue
            for s in range(start[i], start[i + 1]):
                face = f[around[s]]
                for k in range(3):
                    to = face[k]
                    if to == i:
                        continue
                    e = _off(quadric[i], v[to])
                    if e < cost[i] and e <= tolerance[i]:
                        cost[i], goal[i] = e, to
        order = np.argsort(cost)
        busy = np.zeros(n, np.bool_)
        dead = np.zeros(len(f), np.bool_)
        changed = False
        for at in range(n):
            i = order[at]
            if goal[i] < 0:
                break
            if busy[i]:
                continue
            best, least = -1, tolerance[i]
            # The cheapest neighbour may be barred; each is looked at.
            for s in range(start[i], start[i + 1]):
                face = f[around[s]]
                for k in range(3):
                    if face[k] != i:
                        continue
                    to = face[(k + 1) % 3]
                    e = _off(quadric[i], v[to])
                    if e > least or (best >= 0 and e >= least) or busy[to]:
                        continue
                    stamp += 1
                    if _may(v, f, normal, start, around, mark, stamp, i, to, longest, fresh):
                        best, least = to, e
            if best < 0:
                continue
            changed = True
            for s in range(start[i], start[i + 1]):
                number = around[s]
                face = f[number]
                has = False
                for k in range(3):
                    busy[face[k]] = True
                    has = has or face[k] == best
                if has:
                    dead[number] = True
                    continue
                for k in range(3):
                    if face[k] == i:
                        face[k] = best
                _plane(v, face[0], face[1], face[2], normal[number])
            for k in range(10):
                quadric[best, k] += quadric[i, k]
            # The neighbours' lists are old until the next round.
            busy[i] = busy[best] = True
            for s in range(start[best], start[best + 1]):
                for k in range(3):
                    busy[f[around[s], k]] = True
            removed[i] = True
        if not changed:
            break
        f = f[~dead]
        normal = normal[~dead]
    return f, removed


@njit(inline="always", cache=True, nogil=True)
def _plane(v, a, b, c, out):
    """Unit normal of a triangle."""
    for k in range(3):
        i, j = (k + 1) % 3, (k + 2) % 3
        out[k] = (v[b, i] - v[a, i]) * (v[c, j] - v[a, j]) - (v[b, j] - v[a, j]) * (
            v[c, i] - v[a, i]
        )
    size = np.sqrt(out[0] * out[0] + out[1] * out[1] + out[2] * out[2])
    if size > 0.0:
        for k in range(3):
            out[k] /= size


@njit(inline="always", cache=True, nogil=True)
def _off(q, p):
    """Sum of squared distances from a set of planes."""
    x, y, z = p[0], p[1], p[2]
    return (
        q[0] * x * x + 2 * q[1] * x * y + 2 * q[2] * x * z + 2 * q[3] * x
        + q[4] * y * y + 2 * q[5] * y * z + 2 * q[6] * y + q[7] * z * z + 2 * q[8] * z + q[9]
    )  # fmt: skip


@njit(cache=True, nogil=True)
def _may(v, f, normal, start, around, mark, stamp, i, to, longest, fresh):
    """Whether corner i may be drawn on to its neighbour without harm to the mesh."""
    for s in range(start[i], start[i + 1]):
        for k in range(3):
            mark[f[around[s], k]] = stamp
    mark[i] = mark[to] = 0
    # Only the two triangles on the edge may be shared by both.
    common = 0
    for s in range(start[to], start[to + 1]):
        face = f[around[s]]
        for k in range(3):
            if mark[face[k]] == stamp:
                mark[face[k]] = 0
                common += 1
    if common != 2:
        return False
    shared = 0
    for s in range(start[i], start[i + 1]):
        face = f[around[s]]
        if face[0] == to or face[1] == to or face[2] == to:
            shared += 1
            continue
        a = to if face[0] == i else face[0]
        b = to if face[1] == i else face[1]
        c = to if face[2] == i else face[2]
        side = 0.0
        for p, q in ((a, b), (b, c), (c, a)):
            x, y, z = v[p, 0] - v[q, 0], v[p, 1] - v[q, 1], v[p, 2] - v[q, 2]
            side = max(side, x * x + y * y + z * z)
        if side > longest:
            return False
        x = (v[b, 1] - v[a, 1]) * (v[c, 2] - v[a, 2]) - (v[b, 2] - v[a, 2]) * (v[c, 1] - v[a, 1])
        y = (v[b, 2] - v[a, 2]) * (v[c, 0] - v[a, 0]) - (v[b, 0] - v[a, 0]) * (v[c, 2] - v[a, 2])
        z = (v[b, 0] - v[a, 0]) * (v[c, 1] - v[a, 1]) - (v[b, 1] - v[a, 1]) * (v[c, 0] - v[a, 0])
        double = np.sqrt(x * x + y * y + z * z)
        if double < _SLIVER * side:
            return False
        old = normal[around[s]]
        if x * old[0] + y * old[1] + z * old[2] < _TURN * double:
            return False
    return shared == 2
