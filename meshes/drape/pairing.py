"""Whose boxes meet, for the bookkeeping of many pairs."""

from __future__ import annotations

import numpy as np
from numba import njit

from meshes.drape.distance import KERNEL


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
