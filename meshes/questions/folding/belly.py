"""A belly as a rod, with what is needed to work its way out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter1d

from meshes.questions.folding.control_sheet import ControlSheet
from meshes.questions.folding.ground import Ground
from meshes.questions.folding.rod import Reeds, Rod, RodCarried, reeds_of, rod_along, within
from meshes.questions.folding.rod_ways import turned_over

LEAST_RADIUS_MM, RADIUS_OF_HALF = 6.0, 1.6
"""Least radius of a bend, mm, and as a multiple of the flesh's depth: its inside must not
run backwards."""


@dataclass(frozen=True, slots=True, eq=False)
class Belly:
    """A rod within its flesh, left side.

    Attributes
    ----------
    rod : Rod
        At rest.
    sheet : ControlSheet
        Across its breadth; column 0 is where it stays fixed.
    breadth : (2,) float
        How far the flesh reaches to either side, mm.
    over, under : (n,) float
        Its height over and under the middle line, by station, mm.
    reeds : Reeds
        Its fibres.
    start : int
        Station from which it is free.
    """

    rod: Rod
    sheet: ControlSheet
    breadth: np.ndarray
    over: np.ndarray
    under: np.ndarray
    reeds: Reeds
    start: int = 0

    def way(self, rule, ground: Ground) -> list[Rod]:
        """Return the poses of a rule's fold over a ground, the rest pose first."""
        by_hinge = slice(self.start, max(self.start + 3, len(self.over) // 2))
        depth = max(float(self.over[by_hinge].max()), float(self.under[by_hinge].max()))
        radius = max(LEAST_RADIUS_MM, RADIUS_OF_HALF * depth)
        return turned_over(
            self.rod, self.start, rule.turn_deg, radius, self.breadth, self.over, ground
        )

    def nodes(self) -> RodCarried:
        """Return the sheet's nodes as points that the rod carries."""
        return self.carried(self.sheet.mid)

    def carried(self, points: np.ndarray) -> RodCarried:
        """Prepare points (n, 3), mm at rest, to be carried along."""
        return RodCarried(self.rod, self.reeds, points)

    def held(self, points: np.ndarray) -> np.ndarray:
        """Tell which points (n, 3) lie before the place from which it is free."""
        along = self.rod.frame[self.start, 0]
        return (np.asarray(points) - self.rod.centre[self.start]) @ along < -2.0


def belly_of(sheet: ControlSheet, vertices: np.ndarray, fibres: Sequence[np.ndarray]) -> Belly:
    """Return a belly as a rod, from the grid laid through its middle (column 0: its hinge)."""
    middle = sheet.mid[len(sheet.mid) // 2]
    side = sheet.mid[-1] - sheet.mid[0]
    rod = rod_along(middle, side, sheet.normals().mean(axis=0))
    return _measured(rod, sheet, vertices, 0, fibres)


def _measured(rod: Rod, sheet: ControlSheet | None, vertices, start: int, fibres) -> Belly:
    """Measure the flesh about a rod."""
    station, offset = within(rod, np.asarray(vertices, float))
    inside = station > start
    breadth = np.percentile(offset[inside, 1], [3, 97])
    count = len(rod.centre)
    over, under = np.full(count, np.nan), np.full(count, np.nan)
    for k in range(count):
        near = inside & (np.abs(station - k) < 3.0)
        if near.sum() >= 4:
            under[k], over[k] = np.percentile(offset[near, 2], [8, 92]) * [-1, 1]
    at = np.arange(count)
    for values in (over, under):
        known = np.isfinite(values)
        values[~known] = np.interp(at[~known], at[known], values[known])
    over, under = (
        np.maximum(gaussian_filter1d(values, 4.0, mode="nearest"), 1.0) for values in (over, under)
    )
    reeds = reeds_of(rod, [line for lines in fibres for line in lines])
    return Belly(rod, sheet, breadth, over, under, reeds, start)
