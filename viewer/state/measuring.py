"""Lengths of measuring lines, and the caution that goes with every one of them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from viewer.state.tongue import told

TEACHING_NOTE = "Teaching model: not for needle or surgical guidance."


def length_mm(points: Sequence[Sequence[float]] | np.ndarray) -> float:
    """Return the length of a polyline of (k, 3) points, mm."""
    line = np.asarray(points, float).reshape(-1, 3)
    if len(line) < 2:
        return 0.0
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())


def measure_words(points: Sequence[Sequence[float]], path: np.ndarray | None = None) -> str:
    """Return what a measure says, "" with fewer than two points."""
    if len(points) < 2:
        return ""
    straight = length_mm(points)
    if path is None or len(path) < 2:
        return told("{mm} mm straight", mm=f"{straight:.0f}")
    return told(
        "{along} mm along the surface ({mm} mm straight)",
        along=f"{length_mm(path):.0f}",
        mm=f"{straight:.0f}",
    )
