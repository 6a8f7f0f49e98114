"""The depth rail: how thick each stratum is here, and how tall its band is drawn."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from meshes.catalogue.folds import OUT_OF_THE_WAY, own_parts
from viewer.state.view_state import STRATUM_COUNT, ViewState
from viewer.state.visibility import HasParts

MIN_BAND_PX = 18.0
TYPICAL_MM: tuple[float, ...] = (2.0, 8.0, 5.0, 4.0, 2.0, 3.0, 18.0, 14.0, 8.0, 20.0, 16.0)
"""Shown before anything has been probed; marked as such, never as a measurement."""

# Core colours by stratum, skin first; light enough for dark letters, told apart
# by their grain as well as by hue (see ``depth_rail``).
CORE_COLOURS = (
    "#d9b08c",
    "#e8cf8a",
    "#b4584a",
    "#a8483f",
    "#b8705f",
    "#dcd6c6",
    "#9c3f3c",
    "#8c3a3c",
    "#7d3437",
    "#e6dcc0",
    "#c9c6d6",
)


class Stretch(Protocol):
    """One stretch of the drill inside one part (``meshes.questions.probe.Rung``)."""

    part_id: str
    enter_mm: float
    thickness_mm: float


@dataclass(frozen=True, slots=True)
class Band:
    """One stratum on the rail.

    Attributes
    ----------
    stratum : int
    top, bottom : float
        Pixels from the rail's upper end; bands touch, skin first.
    mm : float or None
        True thickness here; None when this stratum is not met.
    off_left, off_right : bool
        Taken off on that side (drawn notched).
    folded_left, folded_right : bool
        A flap of this stratum lies folded back on that side (drawn half notched).
    """

    stratum: int
    top: float
    bottom: float
    mm: float | None
    off_left: bool = False
    off_right: bool = False
    folded_left: bool = False
    folded_right: bool = False


def thickness_by_stratum(hits: Iterable[Stretch], model: HasParts) -> tuple[float | None, ...]:
    """Return how much of each stratum the drill goes through, mm.

    The drill stops where it leaves the canal or, beside the canal, the bone;
    what it would meet in front of the spine is no business of the back.
    """
    sums: list[float] = [0.0] * STRATUM_COUNT
    met = [False] * STRATUM_COUNT
    bottom: float | None = None
    for hit in sorted(hits, key=lambda h: h.enter_mm):
        part = model.parts.get(hit.part_id)
        if part is None or part.kind == "context":
            continue
        if bottom is not None and hit.enter_mm > bottom + 1.0:
            break
        n = part.stratum
        met[n] = True
        sums[n] += hit.thickness_mm
        if n == 10 or (n == 9 and part.kind == "bone"):
            end = hit.enter_mm + hit.thickness_mm
            bottom = end if bottom is None else max(bottom, end)
    return tuple(s if m else None for s, m in zip(sums, met, strict=True))


def band_heights(
    thicknesses: Sequence[float | None], height: float, minimum: float = MIN_BAND_PX
) -> list[float]:
    """Share a height among bands in proportion to thickness, none below the minimum.

    What the small bands need beyond their share is taken from the large ones,
    which stay in proportion among themselves.
    """
    count = len(thicknesses)
    minimum = min(minimum, height / count)
    values = np.array([t or 0.0 for t in thicknesses])
    small = np.zeros(count, bool)
    while True:
        free = height - minimum * small.sum()
        total = values[~small].sum()
        if small.all():
            return [height / count] * count
        if total <= 0:
            shares = np.where(small, minimum, free / (~small).sum())
            return shares.tolist()
        shares = np.where(small, minimum, values / total * free)
        too_small = ~small & (shares < minimum)
        if not too_small.any():
            return shares.tolist()
        small |= too_small


def rail_bands(
    thicknesses: Sequence[float | None],
    state: ViewState,
    height: float,
    minimum: float = MIN_BAND_PX,
    folded: Collection[tuple[str, int]] = (),
) -> list[Band]:
    """Return the rail's bands from skin to canal.

    ``folded`` holds the (side, stratum) from which flaps lie folded back.
    """
    bands: list[Band] = []
    top = 0.0
    for n, band_height in enumerate(band_heights(thicknesses, height, minimum)):
        bands.append(
            Band(
                n,
                top,
                top + band_height,
                thicknesses[n],
                n < state.peeled.left or n in state.strata_off.left,
                n < state.peeled.right or n in state.strata_off.right,
                ("left", n) in folded,
                ("right", n) in folded,
            )
        )
        top += band_height
    return bands


def folded_strata(state: ViewState, model: HasParts) -> set[tuple[str, int]]:
    """Return (side, stratum) of every stratum from which a flap lies folded back."""
    return {
        (laid.side, model.parts[part_id].stratum)
        for laid in state.folds
        if laid.share >= OUT_OF_THE_WAY
        for part_id in own_parts(laid.fold_id)
        if part_id in model.parts
    }


def depth_at(bands: Sequence[Band], y: float) -> int:
    """Return the peel depth that a handle at ``y`` pixels means (nearest boundary)."""
    edges = [band.top for band in bands] + [bands[-1].bottom]
    return int(np.argmin([abs(edge - y) for edge in edges]))


def handle_y(bands: Sequence[Band], depth: int) -> float:
    """Return where the handle stands for a peel depth, pixels."""
    return bands[depth].top if depth < len(bands) else bands[-1].bottom
