"""A belly or a column of the back as a rod, with what is needed to work its way out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.ndimage import gaussian_filter1d

from meshes.questions.folding.control_sheet import ControlSheet
from meshes.questions.folding.ground import Ground
from meshes.questions.folding.rod import Reeds, Rod, RodCarried, reeds_of, rod_along, within
from meshes.questions.folding.rod_ways import drawn_aside, turned_over

SLICE_MM, SLICES_EVENED_MM = 10.0, 30.0
ROWS = 5
LEAST_RADIUS_MM, RADIUS_OF_HALF = 6.0, 1.25
"""Least radius of a bend, mm, and as a multiple of the flesh's depth: its inside must not
run backwards."""

SIDEWAYS_MM = 90.0


@dataclass(frozen=True, slots=True, eq=False)
class Column:
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
    back_from_mm : float
        Level from which a column that is drawn aside comes back to its bed.
    """

    rod: Rod
    sheet: ControlSheet
    breadth: np.ndarray
    over: np.ndarray
    under: np.ndarray
    reeds: Reeds
    start: int = 0
    back_from_mm: float = 1e6

    def way(self, rule, ground: Ground) -> list[Rod]:
        """Return the poses of a rule's fold over a ground, the rest pose first."""
        if rule.drawn_mm:
            return drawn_aside(
                *(self.rod, self.start, rule.drawn_over_mm, rule.drawn_mm),
                *(self.back_from_mm, rule.drawn_back_to, self.under, ground),
            )
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

    def reach(self) -> np.ndarray:
        """Return the box (2, 3) that a column can be drawn about in, mm."""
        low, high = self.rod.centre.min(axis=0), self.rod.centre.max(axis=0)
        room = np.array([SIDEWAYS_MM, SIDEWAYS_MM, 20.0])
        return np.array([low - room, high + room])


def belly_column(sheet: ControlSheet, vertices: np.ndarray, fibres: Sequence[np.ndarray]) -> Column:
    """Return a belly as a rod, from the grid laid through its middle (column 0: its hinge)."""
    middle = sheet.mid[len(sheet.mid) // 2]
    side = sheet.mid[-1] - sheet.mid[0]
    rod = rod_along(middle, side, sheet.normals().mean(axis=0))
    return _measured(rod, sheet, vertices, 0, fibres)


def column_of(
    fibres: Sequence[np.ndarray],
    vertices: Sequence[np.ndarray],
    start: np.ndarray,
    back: np.ndarray | None = None,
) -> Column:
    """Lay a rod through a column, level by level, from below.

    Parameters
    ----------
    fibres : sequence of (k, m, 3) float
        mm, left side.
    vertices : sequence of (n, 3) float
        Of its parts' meshes, mm.
    start : (3,) float
        At this level it leaves its bed.
    back : (3,) float, optional
        At this level it begins to come back.
    """
    points = np.concatenate([*(_dense(f) for f in fibres), *vertices])
    levels = np.arange(points[:, 2].min() + 4.0, points[:, 2].max() - 4.0, SLICE_MM)
    table = np.full((len(levels), 2), np.nan)
    for k, level in enumerate(levels):
        near = points[np.abs(points[:, 2] - level) < SLICE_MM, :2]
        if len(near) >= 6:
            table[k] = 0.5 * np.percentile(near, [4, 96], axis=0).sum(axis=0)
    for column in table.T:
        known = np.isfinite(column)
        column[~known] = np.interp(levels[~known], levels[known], column[known])
    table = gaussian_filter1d(table, SLICES_EVENED_MM / SLICE_MM, axis=0, mode="nearest")
    line = np.column_stack([table, levels])
    rod = rod_along(line, np.array([1.0, 0.0, 0.0]), np.array([0.0, 1.0, 0.0]), 10.0)
    first = int(np.abs(rod.centre[:, 2] - start[2]).argmin())
    made = _measured(rod, None, np.concatenate(vertices), first, fibres)
    stations = np.arange(first, len(rod.centre), 2)
    rows = np.linspace(made.breadth[0], made.breadth[1], ROWS)
    grid = np.stack(
        [rod.place(stations, np.full(len(stations), at), np.zeros(len(stations))) for at in rows]
    )
    half = np.tile(0.5 * (made.over + made.under)[stations], (ROWS, 1))
    sheet = ControlSheet(np.ascontiguousarray(grid), np.maximum(half, 0.3), 1)
    if (sheet.normals()[..., 1]).mean() < 0:
        sheet = ControlSheet(sheet.mid, sheet.half_mm, -1)
    level = 1e6 if back is None else float(back[2])
    return replace(made, sheet=sheet, back_from_mm=level)


def _measured(rod: Rod, sheet: ControlSheet | None, vertices, start: int, fibres) -> Column:
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
    return Column(rod, sheet, breadth, over, under, reeds, start)


def _dense(fibres: np.ndarray) -> np.ndarray:
    """Points of fibre lines (k, m, 3), a few between each two."""
    fibres = np.asarray(fibres, float)
    between = [
        fibres[:, :-1] + t * (fibres[:, 1:] - fibres[:, :-1]) for t in (0.0, 0.25, 0.5, 0.75)
    ]
    return np.concatenate([b.reshape(-1, 3) for b in between])
