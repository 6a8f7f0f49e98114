"""Small kernels for the bookkeeping of many pairs: whose boxes meet, what hangs together."""

from __future__ import annotations

import numpy as np
from numba import njit

from meshes.drape.distance import KERNEL


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


@njit(**KERNEL)
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


def boxes_meeting(
    left: np.ndarray, boxes: np.ndarray, k: int, region: np.ndarray
) -> list[tuple[int, int, bool]]:
    """Pairs of a thing with those whose box meets a region of it, in order.

    Of a mirrored pair the second is a left part: left against right stands once, and
    median against right; a median part and its own twin are one and the same.

    Parameters
    ----------
    left : (n,) bool
        Whether each has a twin on the right.
    boxes : (n, 2, 3) float
        Lower and upper corners, mm.
    k : int
        The thing.
    region : (2, 3) float
        mm.

    Returns
    -------
    list of (one, other, whether the other is seen in the mirror)
    """
    codes, count = _boxes_meeting(left, boxes, k, region), 2 * len(boxes)
    codes.sort()
    one, rest = np.divmod(codes, count)
    two, mirror = np.divmod(rest, 2)
    return list(zip(one.tolist(), two.tolist(), mirror.astype(bool).tolist(), strict=True))


@njit(**KERNEL)
def _boxes_meeting(left, boxes, k, region):
    n = boxes.shape[0]
    codes = np.empty(2 * n, np.int64)
    found = 0
    for other in range(n):
        box = boxes[other]
        if (
            box[0, 1] > region[1, 1]
            or box[1, 1] < region[0, 1]
            or box[0, 2] > region[1, 2]
            or box[1, 2] < region[0, 2]
        ):
            continue
        one, two = min(k, other), max(k, other)
        if one != two and box[0, 0] <= region[1, 0] and box[1, 0] >= region[0, 0]:
            codes[found] = (one * n + two) * 2
            found += 1
        if box[0, 0] <= -region[0, 0] and box[1, 0] >= -region[1, 0]:
            if left[two]:
                codes[found] = (one * n + two) * 2 + 1
                found += 1
            elif left[one]:
                codes[found] = (two * n + one) * 2 + 1
                found += 1
    return codes[:found].copy()
