"""Where a point is, in the words of a dissector: level, side, distance from the midline."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

import numpy as np

from viewer.state.tongue import told

_PLANES = (
    (re.compile(r"(?P<mm>\d+) mm left"), "{mm} mm left"),
    (re.compile(r"(?P<mm>\d+) mm right"), "{mm} mm right"),
    (re.compile(r"(?P<mm>\d+) mm behind S1"), "{mm} mm behind S1"),
    (re.compile(r"(?P<mm>\d+) mm in front of S1"), "{mm} mm in front of S1"),
    (re.compile(r"(?P<mm>-?\d+) mm above (?P<place>.+)"), "{mm} mm above {place}"),
    (re.compile(r"(?P<mm>\d+) mm below (?P<place>.+)"), "{mm} mm below {place}"),
    (re.compile(r"disc (?P<levels>\S+)"), "disc {levels}"),
)
"""Ways in which `meshes.questions.stations` says where a plane stands."""
PLANE_TEXTS = tuple(text for _, text in _PLANES)

_SUFFIXES = (".spinous_process", ".posterior_tubercle", ".median_crest")

# Feelable through the skin (common practice); all others are found by counting. What one
# begins with comes first: a hall is shown the names of the first few.
PALPABLE = (
    "occipital.external_protuberance",
    "C7.spinous_process",
    "scapula.{side}.root_of_spine",
    "scapula.{side}.inferior_angle",
    "ilium.{side}.crest",
    "ilium.{side}.PSIS",
    "scapula.{side}.acromion_tip",
    "temporal.{side}.mastoid_tip",
    "scapula.{side}.medial_border",
    "T3.spinous_process",
    "T7.spinous_process",
    "T12.spinous_process",
    "L4.spinous_process",
    "S2.median_crest",
    "coccyx.tip",
)


def level_heights(landmarks: Mapping[str, np.ndarray]) -> dict[str, float]:
    """Return z (mm) of the tip of each spine by level."""
    heights: dict[str, float] = {}
    for name, place in landmarks.items():
        for suffix in _SUFFIXES:
            if name.endswith(suffix) and name.count(".") == 1:
                level = name.removesuffix(suffix)
                if level[:1] in "CTLS" and level[1:].isdigit():
                    heights.setdefault(level, float(np.asarray(place).reshape(-1, 3)[:, 2].mean()))
    return heights


def place_in_words(point: Sequence[float], heights: Mapping[str, float]) -> str:
    """Return "level of spine T7, 40 mm left"."""
    x, z = float(point[0]), float(point[2])
    side = "left" if x > 0 else "right"
    across = (
        told("midline")
        if abs(x) < 2.5
        else told("{mm} mm {side}", mm=f"{abs(x):.0f}", side=told(side))
    )
    if not heights:
        return across
    level = min(heights, key=lambda name: abs(heights[name] - z))
    top, bottom = max(heights.values()), min(heights.values())
    if z > top + 30 or z < bottom - 60:
        return across
    return told("spine {level}, {across}", level=level, across=across)


def surface_marks(
    landmarks: Mapping[str, np.ndarray], records: Mapping[str, object] | None = None
) -> list[tuple[str, np.ndarray]]:
    """Return the palpable landmarks that the model has, with the words on their marks.

    Parameters
    ----------
    landmarks : mapping of str to (3,) or (k, 3) float, mm
    records : mapping of str to catalogue ``Landmark``, optional
        Gives the English words; without it the id is spelled out.
    """
    marks = []
    for pattern in PALPABLE:
        for side in ("left", "right") if "{side}" in pattern else ("",):
            name = pattern.format(side=side)
            if name not in landmarks:
                continue
            record = (records or {}).get(name)
            if record is not None and not record.palpable:
                continue
            words = getattr(record, "english", "") or name.rsplit(".", 1)[-1].replace("_", " ")
            level = name.split(".", 1)[0]
            if level[:1] in "CTLS" and level[1:].isdigit():
                words = f"{level}"
            marks.append((told(words), np.asarray(landmarks[name], float)))
    return marks


def plane_in_words(station: str) -> str:
    """Return where a plane stands in the language that is shown.

    Parameters
    ----------
    station : str
        As `meshes.questions.stations` says it: "midline", "4 mm above disc T7–T8".
    """
    for pattern, text in _PLANES:
        if found := pattern.fullmatch(station):
            gaps = found.groupdict()
            if "place" in gaps:
                gaps["place"] = plane_in_words(gaps["place"])
            return told(text, **gaps)
    return told(station)
