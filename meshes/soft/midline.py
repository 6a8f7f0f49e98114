"""Sheets beside the spines: flat on one another, as their aponeuroses lie."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from scipy.ndimage import gaussian_filter

from meshes.drape.sheet import SheetGrid, arc_length
from meshes.soft.relief import Relief, raised
from meshes.soft.small import resample
from meshes.soft.workbench import Workbench

_FLAT_MM = 18.0
_FADE_MM = 40.0
_BESIDE_MM = (28.0, 48.0)
_APART = 0.2
_CLEAR_MM = 1.6
"""A fibre leaves the midline at once: by this share of its length, up to so many mm."""


def flat_beside_spines(
    bench: Workbench, laid: SheetGrid, cleared: SheetGrid, near: Sequence[str], gap: float = 0.3
) -> SheetGrid:
    """Bring the start of a sheet down onto what lies under it beside the spines.

    Several sheets take the same spines. What a general push makes of their common
    start is a tent; here each lies flat on the ones before, seen from behind.

    Parameters
    ----------
    bench : Workbench
    laid, cleared : SheetGrid
        Before and after it was cleared of its neighbours; origin at u = 0.
    near : sequence of str
        Ids of what lies under it.
    gap : float
        mm.

    Returns
    -------
    SheetGrid
    """
    s = arc_length(laid.mid)
    share = _fall(s, _FLAT_MM, _FADE_MM) * _fall(laid.mid[..., 0], *_BESIDE_MM)
    # Only fibres that start in the midline.
    share *= _fall(laid.mid[:, :1, 0], 4.0, 8.0)
    if not share.any():
        return cleared
    mid = (1 - share)[..., None] * cleared.mid + share[..., None] * laid.mid
    start = mid[:, :1, 0]
    mid[..., 0] = np.where(
        share > 0,
        np.maximum(mid[..., 0], start + share * np.minimum(_APART * s, _CLEAR_MM)),
        mid[..., 0],
    )
    x, z = mid[..., 0], mid[..., 2]
    used = share > 0
    low = (0.0, float(z[used].min()) - 4.0)
    high = (float(x[used].max()) + 4.0, float(z[used].max()) + 4.0)
    least = Relief.of(bench, list(near), low, high).at(x, z)
    least = np.where(least < -500.0, mid[..., 1], least) + 0.5 * cleared.thickness + gap
    # The fixed end itself lies on its bone.
    least[:, 0] = mid[:, 0, 1]
    smooth = gaussian_filter(least, (0.7, 1.2), mode="nearest")
    y = raised(smooth, least, wide=1.0)
    y[:, 0] = mid[:, 0, 1]
    mid[..., 1] = (1 - share) * cleared.mid[..., 1] + share * y
    mid[:, 0] = cleared.mid[:, 0]
    for fibre, flat in zip(mid, share, strict=True):
        last = int(np.count_nonzero(flat > 0.5))
        if last > 2:
            fibre[: last + 1] = resample(fibre[: last + 1], last + 1)
    return replace(cleared, mid=mid)


def _fall(x: np.ndarray, first: float, last: float) -> np.ndarray:
    """1 below ``first``, 0 above ``last``."""
    t = np.clip((last - x) / (last - first), 0.0, 1.0)
    return t * t * (3 - 2 * t)
