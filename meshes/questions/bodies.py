"""Twelve bodies on which every check of the geometry must pass.

The default and eleven more, chosen so that each parameter of
:class:`meshes.body.Body` stands at both ends of its range and with different
company: what holds for these may be trusted in between. Several are extremer
than any real person, as the ranges allow. Invented, no one's measurements.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from meshes.body import RANGES, Body


def _ends(end: int, *names: str) -> dict[str, float]:
    """Parameters at one end of their ranges: 0 low, 1 high."""
    return {name: RANGES[name][end] for name in names}


_CURVES = (
    "cervical_lordosis_deg",
    "thoracic_kyphosis_deg",
    "lumbar_lordosis_deg",
    "sacral_slope_deg",
)
_FAT = ("fat_upper_mm", "fat_lower_mm")
_SIZE = ("stature_mm", "biacromial_mm")
_POSE = (
    "arm_abduction_deg",
    "scapular_upward_rotation_deg",
    "scapular_protraction_mm",
    "scapular_elevation_mm",
)

BODIES: Mapping[str, Body] = MappingProxyType(
    {
        "default": Body(),
        "female": Body(sex="female"),
        "small": Body(sex="female", **_ends(0, *_SIZE, *_FAT, "muscle_bulk")),
        "large": Body(**_ends(1, *_SIZE, *_FAT, "muscle_bulk")),
        "flat": Body(**_ends(0, *_CURVES)),
        "round": Body(**_ends(1, *_CURVES)),
        "lean_strong": Body(**_ends(0, *_FAT), **_ends(1, "muscle_bulk")),
        "stout_weak": Body(sex="female", **_ends(1, *_FAT), **_ends(0, "muscle_bulk")),
        "arms_close": Body(**_ends(0, *_POSE)),
        "arms_away": Body(sex="female", **_ends(1, *_POSE)),
        "small_round": Body(
            **_ends(0, "stature_mm"),
            **_ends(1, "thoracic_kyphosis_deg", "scapular_protraction_mm"),
            lumbar_lordosis_deg=70.0,
            sacral_slope_deg=50.0,
            muscle_bulk=1.2,
            scapular_slip=False,
            trapezius_to_T10=True,
        ),
        "large_flat": Body(
            sex="female",
            **_ends(1, "stature_mm", "fat_lower_mm"),
            **_ends(0, *_CURVES[1:], "scapular_elevation_mm"),
            muscle_bulk=0.85,
        ),
    }
)
"""Name -> body."""

QUICK = ("female", "flat")
"""Those that the quick tests build: a woman's breadths, and a back with hardly a curve."""
