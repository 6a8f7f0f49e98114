"""Places at which a section is usually made: vertebrae and discs, the midline, even steps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meshes.model import BackModel

EVEN_STEP_MM = 10.0


@dataclass(frozen=True, slots=True)
class Station:
    """A named place along the axis of a plane.

    Attributes
    ----------
    name : str
        "T7", "disc T7–T8", "midline", "40 mm left".
    position_mm : float
        z, x or y, mm LPS, as for ``placed_plane``.
    """

    name: str
    position_mm: float


def stations(model: BackModel, kind: str) -> tuple[Station, ...]:
    """Return the places of a kind of plane, in order along its axis.

    A transverse or free plane has the middle of each vertebral body and each disc, from below
    upward; the others have a place every centimetre from end to end of the model.

    Parameters
    ----------
    model : BackModel
    kind : {"transverse", "sagittal", "coronal", "free"}
    """
    if kind in ("transverse", "free"):
        return _levels(model)
    low, high = reach(model, kind)
    steps = range(int(np.ceil(low / EVEN_STEP_MM)), int(np.floor(high / EVEN_STEP_MM)) + 1)
    return tuple(Station(place_words(kind, EVEN_STEP_MM * k), EVEN_STEP_MM * k) for k in steps)


def _levels(model: BackModel) -> tuple[Station, ...]:
    heights: dict[str, float] = {}
    for wanted in ("body_centre", "spinous_process"):
        for name, place in model.landmarks.items():
            level, _, what = name.partition(".")
            if what == wanted and level[:1] in "CTLS" and level[1:].isdigit():
                heights.setdefault(level, float(np.asarray(place).reshape(-1, 3)[0, 2]))
    found = [Station(level, height) for level, height in heights.items()]
    for part in model.parts.values():
        if part.kind == "disc":
            above, _, below = part.name.removeprefix("disc_").partition("_")
            z = part.vertices[:, 2]
            middle = float(z.min() + z.max()) / 2
            found.append(Station(f"disc {above}–{below}", middle))
    return tuple(sorted(found, key=lambda station: station.position_mm))


def reach(model: BackModel, kind: str) -> tuple[float, float]:
    """Return the lowest and the highest position at which a plane still meets the model, mm."""
    axis = {"sagittal": 0, "coronal": 1}.get(kind, 2)
    along = [part.vertices[:, axis] for part in model.parts.values()]
    if not along:
        return -100.0, 100.0
    return float(min(a.min() for a in along)), float(max(a.max() for a in along))


def nearest_station(places: Sequence[Station], position_mm: float) -> Station | None:
    """Return the station nearest to a position, or None when there is none."""
    return min(places, key=lambda s: abs(s.position_mm - position_mm), default=None)


def next_station(
    places: Sequence[Station], position_mm: float, steps: int, slack_mm: float = 0.05
) -> Station | None:
    """Return the station that many steps up (or down) from a position; the last one at the end."""
    ahead = [s for s in places if (s.position_mm - position_mm) * np.sign(steps) > slack_mm]
    if not ahead:
        return None
    ordered = ahead if steps > 0 else ahead[::-1]
    return ordered[min(abs(steps), len(ordered)) - 1]


def place_words(kind: str, position_mm: float) -> str:
    """Return where a sagittal or coronal plane stands, in words."""
    if kind == "sagittal":
        if abs(position_mm) < 0.05:
            return "midline"
        return f"{abs(position_mm):.0f} mm {'left' if position_mm > 0 else 'right'}"
    return f"{abs(position_mm):.0f} mm {'behind' if position_mm >= 0 else 'in front of'} S1"


def station_words(places: Sequence[Station], kind: str, position_mm: float) -> str:
    """Return where a plane stands in words: a station, or one and the distance from it."""
    if kind in ("sagittal", "coronal"):
        return place_words(kind, position_mm)
    near = nearest_station(places, position_mm)
    if near is None:
        return f"{position_mm:.0f} mm above S1"
    away = position_mm - near.position_mm
    if abs(away) < 0.5:
        return near.name
    return f"{abs(away):.0f} mm {'above' if away > 0 else 'below'} {near.name}"
