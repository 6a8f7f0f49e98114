"""Can the last row read it? Letter height by visual angle, and contrast.

Letter height = 2 d tan(a / 2) for a distance d and a visual angle a. ISO
9241-3, as quoted by a screen maker's ergonomics page, asks for a character
height of at least 16 arc minutes and prefers 20 to 22. The height is that of
the capital letters. Contrast is the ratio of relative luminances of the Web
Content Accessibility Guidelines (WCAG 2.2): 4.5 to 1 for text, 3 to 1 for
large text and for graphics. A projector in a lit room washes out: the ratio is
also worked out with stray light added to both.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from viewer.state.tongue import told

LEAST_ARCMIN = 16.0
PREFERRED_ARCMIN = (20.0, 22.0)
TEXT_CONTRAST = 4.5
LARGE_CONTRAST = 3.0
CAP_SHARE = 0.71
"""Height of a capital over the size of the letter (em), as in common sans faces;
common practice, no source. The window measures its own font instead."""

RANGES = {"distance_m": (1.0, 100.0), "height_m": (0.2, 20.0)}


def letter_height_mm(distance_m: float, arcmin: float = PREFERRED_ARCMIN[0]) -> float:
    """Return the height of a letter seen under an angle, mm."""
    return 2000.0 * distance_m * math.tan(math.radians(arcmin / 60.0) / 2.0)


def angle_arcmin(height_mm: float, distance_m: float) -> float:
    """Return the angle under which a letter is seen, arc minutes."""
    return 60.0 * math.degrees(2.0 * math.atan(height_mm / (2000.0 * distance_m)))


def relative_luminance(colour: str) -> float:
    """Return the relative luminance (0-1) of a "#rrggbb" colour, after WCAG 2.2."""
    channels = [int(colour[i : i + 2], 16) / 255.0 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str, stray: float = 0.0) -> float:
    """Return the contrast ratio (1-21) of two colours.

    Parameters
    ----------
    stray : float
        Light of the room on the screen, as a share of the projector's white.
    """
    light, dark = sorted((relative_luminance(one), relative_luminance(other)), reverse=True)
    return (light + stray + 0.05) / (dark + stray + 0.05)


@dataclass(frozen=True, slots=True)
class Room:
    """A hall.

    Attributes
    ----------
    distance_m : float
        From the screen to the last row.
    height_m : float
        Height of the projected picture.
    lines : int
        Height of the picture in pixels.
    """

    distance_m: float = 12.0
    height_m: float = 2.0
    lines: int = 1080

    def __post_init__(self) -> None:
        for name, (low, high) in RANGES.items():
            if not low <= getattr(self, name) <= high:
                raise ValueError(
                    f"{name} must lie in {low:g}–{high:g} m, got {getattr(self, name):g}"
                )
        if self.lines < 200:
            raise ValueError(f"lines must be 200 or more, got {self.lines}")

    @property
    def mm_per_px(self) -> float:
        """Height of a pixel on the wall, mm."""
        return 1000.0 * self.height_m / self.lines

    def capital_px(self, arcmin: float = PREFERRED_ARCMIN[0]) -> float:
        """Return the height of a capital that is seen under an angle, px."""
        return letter_height_mm(self.distance_m, arcmin) / self.mm_per_px

    def letter_px(self, arcmin: float = PREFERRED_ARCMIN[0], cap_share: float = CAP_SHARE) -> int:
        """Return the size of the letter (em) whose capitals are seen so, px rounded up."""
        return math.ceil(self.capital_px(arcmin) / cap_share)

    def arcmin_of(self, capital_px: float) -> float:
        """Return the angle under which capitals of a height are seen from the last row."""
        return angle_arcmin(capital_px * self.mm_per_px, self.distance_m)


@dataclass(frozen=True, slots=True)
class Finding:
    """One line of the room check; ``good`` False is a warning."""

    words: str
    good: bool


def check_letters(room: Room, what: str, capital_px: float) -> Finding:
    """Judge letters of a height by the angle under which the last row sees them."""
    arcmin = room.arcmin_of(capital_px)
    low, high = PREFERRED_ARCMIN
    if arcmin < LEAST_ARCMIN:
        verdict = told("too small: {least}′ is the least", least=f"{LEAST_ARCMIN:g}")
    elif arcmin < low - 0.05:
        verdict = told("readable, {low} to {high}′ is better", low=f"{low:g}", high=f"{high:g}")
    else:
        verdict = told("good")
    return Finding(
        told(
            "{what}: capitals {px} px = {mm} mm, {angle}′ from {distance} m: {verdict}",
            what=what,
            px=f"{capital_px:.0f}",
            mm=f"{capital_px * room.mm_per_px:.0f}",
            angle=f"{arcmin:.1f}",
            distance=f"{room.distance_m:g}",
            verdict=verdict,
        ),
        arcmin >= LEAST_ARCMIN,
    )


def check_contrast(what: str, ink: str, ground: str, *, large: bool, stray: float) -> Finding:
    """Judge two colours, dark room and with the room's own light on the screen."""
    least = LARGE_CONTRAST if large else TEXT_CONTRAST
    plain, lit = contrast(ink, ground), contrast(ink, ground, stray)
    good = lit >= least
    words = told("{what}: contrast {ratio} to 1", what=what, ratio=f"{plain:.1f}")
    if stray:
        words += told(
            ", {ratio} to 1 with the room's light ({share} of the white)",
            ratio=f"{lit:.1f}",
            share=f"{stray:.0%}",
        )
    if not good:
        words += told(": too little, {least} to 1 is the least", least=f"{least:g}")
    return Finding(words, good)
