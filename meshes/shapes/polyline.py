"""Polylines: points evenly along them."""

from __future__ import annotations

import numpy as np
from numba import njit


def resample(line: np.ndarray, count: int) -> np.ndarray:
    """Points (count, 3) evenly spaced along a polyline (n, 3)."""
    line = np.asarray(line, float)
    step = np.linalg.norm(np.diff(line, axis=0), axis=1)
    s = np.concatenate([[0.0], np.cumsum(step)])
    wanted = np.linspace(0, s[-1], count)
    return np.stack([np.interp(wanted, s, line[:, i]) for i in range(3)], axis=1)


def thinned(line: np.ndarray, tolerance: float, longest: float) -> np.ndarray:
    """Numbers (k,) of those points of a polyline (n, 3) that its course needs, ends among them.

    Parameters
    ----------
    line : (n, 3) float
    tolerance : float
        How far a point left out may lie from the line that is left.
    longest : float
        Greatest step between two points kept, as far as the polyline's own steps allow.
    """
    return np.flatnonzero(_kept(np.ascontiguousarray(line, np.float64), tolerance, longest))


@njit(cache=True, nogil=True)
def _kept(line, tolerance, longest):
    """Which points are kept: from each one the farthest that all between lie close to."""
    n = len(line)
    keep = np.zeros(n, np.bool_)
    keep[0] = keep[n - 1] = True
    start = 0
    while start < n - 1:
        stop = start + 1
        while stop + 1 < n:
            way = line[stop + 1] - line[start]
            square = (way * way).sum()
            if square > longest * longest:
                break
            close = True
            for i in range(start + 1, stop + 1):
                off = line[i] - line[start]
                share = min(max((off * way).sum() / max(square, 1e-12), 0.0), 1.0)
                off = off - share * way
                if (off * off).sum() > tolerance * tolerance:
                    close = False
                    break
            if not close:
                break
            stop += 1
        keep[stop] = True
        start = stop
    return keep
