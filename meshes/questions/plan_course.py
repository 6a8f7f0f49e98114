"""Where a line of cut of the plan runs, before it is laid on what is cut.

One account for all who ask: the way in, a rehearsed cut, the printed sheet. Each then
lays the line on the layer with the rays that it has cast already.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from meshes.catalogue.plan import Cut
from meshes.model import BackModel
from meshes.shapes.polyline import resample

STEP_MM = 2.0
MIDLINE_MM = 1.0


def course(
    model: BackModel,
    cut: Cut,
    side: str,
    inward: Callable[[np.ndarray], np.ndarray],
) -> np.ndarray | None:
    """Return the way of a line of cut through its landmarks, moved off them as the plan says.

    Parameters
    ----------
    cut : Cut
    side : {"left", "right"}
    inward : callable
        Points (n, 3) mm to unit vectors (n, 3) into the body.

    Returns
    -------
    (n, 3) float or None
        mm LPS, 2 mm apart; None where the model lacks a landmark or the line has no length.
    """
    names = [name.format(side=side) for name in cut.along]
    if not names or any(name not in model.landmarks for name in names):
        return None
    corners = [np.asarray(model.landmarks[name], float).reshape(-1, 3) for name in names]
    # A curve among the landmarks stands for its nearer end; alone, for itself.
    path = [corners[0][len(corners[0]) // 2]] if len(corners) > 1 else list(corners[0])
    for more in corners[1:]:
        path.append(more[np.argmin(np.linalg.norm(more - path[-1], axis=1))])
    points = _beside_midline(evenly(np.array(path), STEP_MM), side)
    points = _moved_off(points, cut.offset_mm, side, inward(points))
    if cut.reach_mm:
        gone = np.concatenate([[0.0], np.linalg.norm(np.diff(points, axis=0), axis=1).cumsum()])
        points = points[gone <= cut.reach_mm]
    return points if len(points) > 1 else None


def evenly(line: np.ndarray, step_mm: float) -> np.ndarray:
    """Return a polyline (n, 3) with points at most a step apart, ends kept."""
    line = np.asarray(line, float).reshape(-1, 3)
    length = np.linalg.norm(np.diff(line, axis=0), axis=1).sum()
    if length < 1e-9:
        return line[:1]
    return resample(line, max(int(np.ceil(length / step_mm)), 1) + 1)


def _moved_off(points: np.ndarray, by_mm: float, side: str, inward: np.ndarray) -> np.ndarray:
    """Move a line outward over the body by so much (a line across is moved downward)."""
    if not by_mm:
        return points
    along = np.gradient(points, axis=0)
    along /= np.maximum(np.linalg.norm(along, axis=1, keepdims=True), 1e-12)
    across = np.cross(along, inward)
    across /= np.maximum(np.linalg.norm(across, axis=1, keepdims=True), 1e-12)
    outward = np.array([1.0 if side == "left" else -1.0, 0.0, 0.0])
    # A line that runs across the body has no outer side: keep below it.
    wanted = outward if abs(along[:, 2]).mean() > 0.5 else np.array([0.0, 0.0, -1.0])
    across *= np.where(across @ wanted < 0, -1.0, 1.0)[:, None]
    return points + by_mm * across


def _beside_midline(points: np.ndarray, side: str) -> np.ndarray:
    """Move points in the hair's gap between left and right skin onto one of them."""
    moved = points.copy()
    sign = 1.0 if side == "left" else -1.0
    moved[:, 0] = np.where(sign * moved[:, 0] < MIDLINE_MM, sign * MIDLINE_MM, moved[:, 0])
    return moved
