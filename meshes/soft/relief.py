"""The relief of what has been laid, seen from behind: how far back it stands at each place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter, maximum_filter

from meshes.drape.resolve import surface_points
from meshes.soft.workbench import Workbench

_STEP_MM = 1.5
_NOTHING = -1e3


@dataclass(frozen=True, eq=False)
class Relief:
    """Greatest y of some parts on a grid over x and z.

    Attributes
    ----------
    x0, z0 : float
        First node, mm.
    top : (nx, nz) float
        mm; far in front where there is nothing.
    """

    x0: float
    z0: float
    top: np.ndarray

    @classmethod
    def of(cls, bench: Workbench, ids: Sequence[str], low: Sequence[float], high: Sequence[float]):
        """Return the relief of parts between two corners (x, z), mm."""
        shape = tuple(int(np.ceil((h - a) / _STEP_MM)) + 2 for a, h in zip(low, high, strict=True))
        top = np.full(shape, _NOTHING)
        box = np.array([[low[0], -np.inf, low[1]], [high[0], np.inf, high[1]]])
        box += 3 * _STEP_MM * np.array([[-1.0], [1.0]])
        for part_id in ids:
            index = bench.index(part_id)
            if np.any(index.bounds[1] < box[0]) or np.any(index.bounds[0] > box[1]):
                continue
            points = surface_points(index, _STEP_MM, box[0], box[1])
            column = np.rint((points[:, [0, 2]] - low) / _STEP_MM).astype(int)
            inside = ((column >= 0) & (column < shape)).all(axis=1)
            np.maximum.at(top, tuple(column[inside].T), points[inside, 1])
        return cls(float(low[0]), float(low[1]), top)

    def at(self, x: np.ndarray, z: np.ndarray, reach: int = 1) -> np.ndarray:
        """Greatest y within ``reach`` nodes of places (x, z), mm; -1000 where there is nothing."""
        wide = maximum_filter(self.top, size=2 * reach + 1)
        x, z = np.broadcast_arrays(np.asarray(x, float), np.asarray(z, float))
        i = np.clip(np.rint((x - self.x0) / _STEP_MM).astype(int), 0, self.top.shape[0] - 1)
        j = np.clip(np.rint((z - self.z0) / _STEP_MM).astype(int), 0, self.top.shape[1] - 1)
        return wide[i, j]


def raised(y: np.ndarray, least: np.ndarray, wide: float = 1.5) -> np.ndarray:
    """Raise a surface (nv, nu) on a grid to a least height without steps.

    Parameters
    ----------
    y, least : (nv, nu) float
        mm.
    wide : float
        Grid points over which what is raised runs out.

    Returns
    -------
    (nv, nu) float
    """
    lack = np.maximum(least - y, 0.0)
    return y + np.maximum(lack, gaussian_filter(maximum_filter(lack, size=3), wide))
