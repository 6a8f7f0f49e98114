"""The parameters of a body, with their allowed ranges."""

from __future__ import annotations

from dataclasses import asdict, dataclass, fields
from typing import Any

from meshes.errors import PeelbackError

# Gordon CC et al., 2012 Anthropometric Survey of U.S. Army Personnel,
# NATICK/TR-15/007 (2014): mean stature and biacromial breadth by sex (from memory).
MEDIAN_STATURE_MM = {"male": 1756.0, "female": 1628.0}
MEDIAN_BIACROMIAL_MM = {"male": 415.7, "female": 365.3}

RANGES: dict[str, tuple[float, float]] = {
    "stature_mm": (1400.0, 2050.0),
    "biacromial_mm": (320.0, 470.0),
    "cervical_lordosis_deg": (0.0, 35.0),
    "thoracic_kyphosis_deg": (20.0, 60.0),
    "lumbar_lordosis_deg": (40.0, 80.0),
    "sacral_slope_deg": (25.0, 57.0),
    "fat_upper_mm": (2.0, 20.0),
    "fat_lower_mm": (3.0, 40.0),
    "muscle_bulk": (0.7, 1.35),
    "arm_abduction_deg": (10.0, 30.0),
    "scapular_upward_rotation_deg": (-5.0, 25.0),
    "scapular_protraction_mm": (-15.0, 20.0),
    "scapular_elevation_mm": (-10.0, 25.0),
}
"""Allowed range of every number, inclusive."""

SEXES = ("male", "female")


class BodyError(PeelbackError, ValueError):
    """A body parameter is unknown or outside its range."""


@dataclass(frozen=True, slots=True)
class Body:
    """A standing adult, described by a few numbers.

    Every default is a published median or mean; sizes left at None follow the
    median of the sex.

    Attributes
    ----------
    sex : {"male", "female"}
        Chooses the table of sizes and of muscle thickness.
    stature_mm : float or None
        Standing height, 1400-2050 mm. None: median of the sex (ANSUR II).
    biacromial_mm : float or None
        Breadth between the acromia, 320-470 mm. None: in proportion to stature.
    cervical_lordosis_deg : float
        C2-C7 Cobb angle, 0-35 degrees.
    thoracic_kyphosis_deg : float
        T4-T12 Cobb angle, 20-60 degrees.
    lumbar_lordosis_deg : float
        L1-S1 Cobb angle, 40-80 degrees.
    sacral_slope_deg : float
        Tilt of the S1 endplate to the horizontal, 25-57 degrees.
    fat_upper_mm, fat_lower_mm : float
        Thickness of superficial fascia over the upper back (2-20 mm) and the loin (3-40 mm).
    muscle_bulk : float
        Factor on muscle thickness, 0.7-1.35.
    arm_abduction_deg : float
        Arm away from the trunk, 10-30 degrees.
    scapular_upward_rotation_deg, scapular_protraction_mm, scapular_elevation_mm : float
        Pose of the scapulae relative to rest.
    scapular_slip : bool
        Variant: fleshy slip of latissimus from the inferior angle.
    trapezius_to_T10 : bool
        Variant: trapezius ends at T10 rather than T12.

    Raises
    ------
    BodyError
        A value outside its range, with the range in the message.

    Notes
    -----
    Angles: common values in adult standing radiographs (Bernhardt & Bridwell,
    Spine 1989;14:717-721; Vialle et al., J Bone Joint Surg Am 2005;87:260-267;
    from memory).
    """

    sex: str = "male"
    stature_mm: float | None = None
    biacromial_mm: float | None = None
    cervical_lordosis_deg: float = 15.0
    thoracic_kyphosis_deg: float = 40.0
    lumbar_lordosis_deg: float = 60.0
    sacral_slope_deg: float = 41.0
    fat_upper_mm: float = 5.0
    fat_lower_mm: float = 10.0
    muscle_bulk: float = 1.0
    arm_abduction_deg: float = 15.0
    scapular_upward_rotation_deg: float = 0.0
    scapular_protraction_mm: float = 0.0
    scapular_elevation_mm: float = 0.0
    scapular_slip: bool = True
    trapezius_to_T10: bool = False

    def __post_init__(self) -> None:
        if self.sex not in SEXES:
            raise BodyError(f"sex must be one of {', '.join(SEXES)}, got {self.sex!r}")
        if self.stature_mm is None:
            object.__setattr__(self, "stature_mm", MEDIAN_STATURE_MM[self.sex])
        _require_in_range("stature_mm", self.stature_mm)
        if self.biacromial_mm is None:
            scaled = MEDIAN_BIACROMIAL_MM[self.sex] * self.stature_mm / MEDIAN_STATURE_MM[self.sex]
            low, high = RANGES["biacromial_mm"]
            object.__setattr__(self, "biacromial_mm", min(max(scaled, low), high))
        for name in RANGES:
            _require_in_range(name, getattr(self, name))
        for name in ("scapular_slip", "trapezius_to_T10"):
            if not isinstance(getattr(self, name), bool):
                raise BodyError(f"{name} must be true or false, got {getattr(self, name)!r}")

    @property
    def scale(self) -> float:
        """Stature relative to the median male, the body that the tables describe."""
        return float(self.stature_mm) / MEDIAN_STATURE_MM["male"]

    @property
    def factor(self) -> float:
        """What lengths laid for it are multiplied by to come to its own."""
        return 1.0

    def as_dict(self) -> dict[str, Any]:
        """Return all parameters by name."""
        return asdict(self)

    @classmethod
    def from_dict(cls, values: dict[str, Any]) -> Body:
        """Make a body from a mapping, refusing names that are not parameters."""
        known = {f.name for f in fields(cls)}
        for name in values:
            if name not in known:
                raise BodyError(
                    f"unknown body parameter {name!r}; allowed: {', '.join(sorted(known))}"
                )
        return cls(**values)


@dataclass(frozen=True, slots=True)
class LaidBody(Body):
    """A body brought to the median man's stature, as it is laid before it gets its own size.

    What the builders say in millimetres (distances, grids, thin sheets) holds for that
    stature: laid there and scaled as a whole, a small body is built as well as a tall one.
    Its lengths may lie outside the ranges, which hold for the body itself.

    Attributes
    ----------
    factor : float
        What lengths are multiplied by to come to the body's own.
    """

    factor: float = 1.0

    def __post_init__(self) -> None:
        """Nothing to be filled in or refused: the body was checked."""


def at_median_stature(body: Body) -> LaidBody:
    """Bring a body to the median man's stature; all its other lengths go along."""
    factor = body.scale
    values = body.as_dict()
    for name in RANGES:
        if name.endswith("_mm"):
            values[name] = values[name] / factor
    values["stature_mm"] = MEDIAN_STATURE_MM["male"]
    return LaidBody(**values, factor=factor)


def _require_in_range(name: str, value: Any) -> None:
    low, high = RANGES[name]
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise BodyError(f"{name} must be a number in {low:g}–{high:g}, got {value!r}")
    if not low <= value <= high:
        hint = " (in metres?)" if name.endswith("_mm") and 1.0 <= value <= 2.5 and low > 100 else ""
        raise BodyError(f"{name} must lie in {low:g}–{high:g}, got {value:g}{hint}")
