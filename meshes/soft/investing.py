"""The investing fascia of the neck: it holds muscles down where a taut string would stand off.

From skull to shoulder girdle the shortest way runs through the air beside the
neck. In life a layer of fascia wraps the neck like a collar and holds trapezius
and sternocleidomastoid against what lies under them, so that the outline from
behind is a hollow curve.
"""

from __future__ import annotations

import numpy as np
from scipy.ndimage import distance_transform_edt, gaussian_filter

from meshes.drape.field import Field
from meshes.soft.workbench import Workbench

_STEP_MM = 4.0
_FAR_MM = 1e6


def collar(bench: Workbench, radius: float, low: np.ndarray, high: np.ndarray) -> Field:
    """Signed distance to what is laid, hollows bridged by a rolling ball.

    Parameters
    ----------
    bench : Workbench
    radius : float
        Of the ball that may not enter a hollow, mm.
    low, high : (3,) float
        Corners of the region, x from the median plane outward, mm.

    Returns
    -------
    Field
        Positive outside; both sides of the median plane.
    """
    h = _STEP_MM
    margin = radius + 2 * h
    low = np.array([0.0, low[1] - margin, low[2] - margin])
    high = np.asarray(high, float) + margin
    count = np.ceil((high - low) / h).astype(int) + 1
    axes = [low[i] + h * np.arange(count[i]) for i in range(3)]
    nodes = np.stack(np.meshgrid(*axes, indexing="ij"), -1).reshape(-1, 3)
    solid = bench.field.sample(nodes).reshape(count) < 0
    away = distance_transform_edt(~_whole(solid), sampling=h)
    free = away > radius
    # A node is half a step from the surface on the average.
    reach = distance_transform_edt(~free, sampling=h)
    signed = np.where(free, radius, radius - reach)
    signed = gaussian_filter(signed, 0.7, mode="nearest")
    origin = np.array([-(count[0] - 1) * h, low[1], low[2]])
    field = Field(origin, origin + h * (np.array(signed.shape) - 1.5), h, band=_FAR_MM)
    field.data = np.ascontiguousarray(signed.astype(np.float32))
    return field


def _whole(half: np.ndarray) -> np.ndarray:
    """Both sides of a half whose first plane is the median one."""
    return np.concatenate([half[:0:-1], half])


def held_down(
    mid: np.ndarray,
    held_by: Field,
    solids: Field,
    need: np.ndarray,
    hold: np.ndarray,
    rounds: int = 60,
) -> np.ndarray:
    """Bring a sheet down onto the collar, its fibres taut along it.

    Parameters
    ----------
    mid : (nv, nu, 3) float
        Mid-surface; row v is one fibre, mm.
    held_by, solids : Field
        The collar; what must not be entered.
    need : (nv, nu) float
        Distance to keep from both, mm.
    hold : (nv, nu) float
        How much the collar holds each point, 0 to 1; 0 at both ends of a fibre.
    rounds : int

    Returns
    -------
    (nv, nu, 3) float
    """
    mid = mid.copy()
    hold = hold.copy()
    hold[:, [0, -1]] = 0.0
    taut = np.clip(4.0 * hold, 0.0, 1.0)[..., None]
    for number in range(rounds):
        step = np.zeros_like(mid)
        step[:, 1:-1] += 0.6 * (0.5 * (mid[:, :-2] + mid[:, 2:]) - mid[:, 1:-1])
        step[1:-1] += 0.25 * (0.5 * (mid[:-2] + mid[2:]) - mid[1:-1])
        mid += taut * step
        flat = mid.reshape(-1, 3)
        share = hold.ravel() * min(1.0, 0.1 * (1 + number))
        flat = flat - (share * (held_by.sample(flat) - need.ravel()))[:, None] * _way(held_by, flat)
        lack = np.clip(need.ravel() - solids.sample(flat), 0.0, 3.0)
        lack *= (taut[..., 0] > 0).ravel()
        mid = (flat + lack[:, None] * _way(solids, flat)).reshape(mid.shape)
    return mid


def _way(field: Field, points: np.ndarray) -> np.ndarray:
    gradient = field.gradient(points)
    return gradient / np.maximum(np.linalg.norm(gradient, axis=1, keepdims=True), 0.3)
