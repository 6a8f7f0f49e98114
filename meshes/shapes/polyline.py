"""Polylines: points evenly along them."""

from __future__ import annotations

import numpy as np


def resample(line: np.ndarray, count: int) -> np.ndarray:
    """Points (count, 3) evenly spaced along a polyline (n, 3)."""
    line = np.asarray(line, float)
    step = np.linalg.norm(np.diff(line, axis=0), axis=1)
    s = np.concatenate([[0.0], np.cumsum(step)])
    wanted = np.linspace(0, s[-1], count)
    return np.stack([np.interp(wanted, s, line[:, i]) for i in range(3)], axis=1)
