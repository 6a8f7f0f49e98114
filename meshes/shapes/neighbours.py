"""Who hangs together with whom in a mesh, and means over neighbours, in kernels."""

from __future__ import annotations

import numpy as np
from numba import njit


def least_of_piece(count: int, groups: np.ndarray) -> np.ndarray:
    """Tell the pieces that hang together apart.

    Parameters
    ----------
    count : int
        Number of nodes.
    groups : (m, k) int
        Nodes of one row belong together.

    Returns
    -------
    (count,) int
        The least node of the piece that each belongs to.
    """
    return _least_of_piece(count, np.ascontiguousarray(groups, dtype=np.int64))


@njit(cache=True, nogil=True)
def _least_of_piece(count, groups):
    parent = np.arange(count)
    for row in range(groups.shape[0]):
        a = groups[row, 0]
        while parent[a] != a:
            parent[a] = parent[parent[a]]
            a = parent[a]
        for k in range(1, groups.shape[1]):
            b = groups[row, k]
            while parent[b] != b:
                parent[b] = parent[parent[b]]
                b = parent[b]
            if b < a:
                parent[a] = b
                a = b
            else:
                parent[b] = a
    # A parent is never the greater one, so that those of smaller nodes are done.
    for node in range(count):
        parent[node] = parent[parent[node]]
    return parent


def evened(
    vertices: np.ndarray, faces: np.ndarray, rounds: int, there: float, back: float
) -> np.ndarray:
    """Move each vertex a share of the way to its neighbours' mean, then a share away from it.

    Parameters
    ----------
    vertices : (n, 3) float
    faces : (m, 3) int
    rounds : int
    there, back : float
        Shares; back is taken with the opposite sign.

    Returns
    -------
    (n, 3) float
    """
    vertices = np.array(vertices, np.float64, order="C")
    _even(vertices, *_neighbours(faces, len(vertices)), rounds, float(there), float(back))
    return vertices


@njit(cache=True, nogil=True)
def _neighbours(faces, count):
    """Neighbours of each vertex: (count + 1,) where they start, and they, greater ones first."""
    start = np.zeros(count + 1, np.int64)
    for f in range(faces.shape[0]):
        for k in range(3):
            start[faces[f, k] + 1] += 2
    for v in range(count):
        start[v + 1] += start[v]
    place = start[:-1].copy()
    near = np.empty(6 * faces.shape[0], np.int64)
    for f in range(faces.shape[0]):
        for k in range(3):
            v = faces[f, k]
            for step in range(1, 3):
                near[place[v]] = faces[f, (k + step) % 3]
                place[v] += 1
    used = 0
    for v in range(count):
        first, last = start[v], start[v + 1]
        start[v] = used
        for i in range(first + 1, last):
            here = near[i]
            j = i - 1
            while j >= first and near[j] < here:
                near[j + 1] = near[j]
                j -= 1
            near[j + 1] = here
        for i in range(first, last):
            # What is written lies at or before what is read.
            here = near[i]
            if used == start[v] or near[used - 1] != here:
                near[used] = here
                used += 1
    start[count] = used
    return start, near[:used].copy()


@njit(cache=True, nogil=True, fastmath=False)
def _even(v, start, near, rounds, there, back):
    n = v.shape[0]
    mean = np.empty((n, 3))
    for turn in range(2 * rounds):
        for i in range(n):
            x = y = z = 0.0
            share = 1.0 / max(start[i + 1] - start[i], 1)
            for k in range(start[i], start[i + 1]):
                j = near[k]
                x += share * v[j, 0]
                y += share * v[j, 1]
                z += share * v[j, 2]
            mean[i, 0], mean[i, 1], mean[i, 2] = x, y, z
        for i in range(n):
            for k in range(3):
                if turn % 2 == 0:
                    v[i, k] += there * (mean[i, k] - v[i, k])
                else:
                    v[i, k] -= back * (mean[i, k] - v[i, k])
