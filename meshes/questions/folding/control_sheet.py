"""A grid laid through a flap, and the flap's mesh carried in the grid's coordinates.

A fold is computed on the grid (rows are fibres, column 0 lies on the hinge).
Every vertex of the mesh keeps its place on the grid and its offset from it in
the grid's own frame, so that the sheet keeps its thickness however it is bent.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter1d

from meshes.drape.distance import MeshIndex

ALONG_MM = (3.5, 6.0)
"""Least and greatest spacing of the grid along the fibres; the roll is a few of these round."""

ACROSS_MM = (5.0, 9.0)
BELLY_STATIONS, BELLY_DEGREE, BELLY_REACH_MM = 40, 5, 45.0
LEAST_HALF_MM, MOST_HALF_MM = 0.3, 12.0
LEAST_FLAP_MM = 15.0
"""A fibre shorter than this between hinge and cut is not turned: it could not even roll."""

MOST_SLANT = 2.5
"""A border fibre is turned if the next one is longer by so many times their distance at most."""

LINKS = (40, 36)
"""Links along and across that the spacing aims at between its limits."""


@dataclass(frozen=True, slots=True, eq=False)
class ControlSheet:
    """The mid-surface of a flap.

    Attributes
    ----------
    mid : (rows, columns, 3) float
        mm; column 0 is the hinge, the last one the cut edge.
    half_mm : (rows, columns) float
        Half the thickness there.
    outward : int
        +1 where cross(d/dcolumn, d/drow) points to the superficial side, else -1.
    beside : ControlSheet or None
        The same sheet with the fibres at its borders that are not lifted: what lies by their
        hinge is held as well.
    """

    mid: np.ndarray
    half_mm: np.ndarray
    outward: int
    beside: ControlSheet | None = None

    @property
    def step_mm(self) -> float:
        """Mean spacing along the fibres, mm."""
        return float(np.linalg.norm(np.diff(self.mid, axis=1), axis=2).mean())

    def normals(self) -> np.ndarray:
        """(rows, columns, 3) unit normals to the superficial side."""
        along, across = np.gradient(self.mid, axis=1), np.gradient(self.mid, axis=0)
        normal = np.cross(along, across) * self.outward
        return normal / np.maximum(np.linalg.norm(normal, axis=2, keepdims=True), 1e-12)


def sheet_through(
    fibres: Sequence[np.ndarray],
    meshes: Sequence[MeshIndex],
    cut_end: str,
    line: np.ndarray | None = None,
    held: float = 0.0,
    belly: bool = False,
) -> ControlSheet:
    """Lay a grid through one part or several that join along their fibres.

    Parameters
    ----------
    fibres : sequence of (k, m, 3) float
        Fibre lines of each part, side by side in this order, mm.
    meshes : sequence of MeshIndex
        Of each part, mm.
    cut_end : {"origin", "insertion"}
        The end that comes free; the hinge is the other one.
    held : float
        Share of each fibre next to the uncut end that stays as it is.
    belly : bool
        The fibres make no grid: the sheet is laid through the middle of the mesh.
    line : (2, 3) float, optional
        Ends of a hinge that crosses the sheet, mm: what lies outward of it stays.

    Returns
    -------
    ControlSheet
    """
    rows = [_to_the_edges(np.asarray(f, float)) for f in fibres]
    halves = [_half_thickness(r, m) for r, m in zip(rows, meshes, strict=True)]
    if belly:
        laid = [
            _through_the_middle(np.asarray(f, float), m.vertices, cut_end)
            for f, m in zip(fibres, meshes, strict=True)
        ]
        rows, halves = [grid for grid, _ in laid], [half for _, half in laid]
    if cut_end == "origin":
        rows, halves = [r[:, ::-1] for r in rows], [h[:, ::-1] for h in halves]
    if line is not None:
        rows, halves = _from_the_line(rows, halves, np.asarray(line, float))
    if held > 0:
        rows = [resampled_by_length(r, 201)[:, round(200 * held) :] for r in rows]
        halves = [_even(h[..., None], 201, axis=1)[:, round(200 * held) :, 0] for h in halves]
    lengths = [np.linalg.norm(np.diff(r, axis=1), axis=2).sum(axis=1) for r in rows]
    breadths = [
        float(np.median(np.linalg.norm(np.diff(r, axis=0), axis=2).sum(axis=0))) for r in rows
    ]
    along = _point_count(float(np.median(np.concatenate(lengths))), LINKS[0], ALONG_MM)
    across = float(np.clip(sum(breadths) / LINKS[1], *ACROSS_MM))
    grid, half = np.zeros((0, along, 3)), np.zeros((0, along))
    for row, thick, breadth in zip(rows, halves, breadths, strict=True):
        count = max(4, round(breadth / across)) + 1
        # Rows are taken within each part, so that none is a mean across a border.
        row = resampled_by_length(_even(resampled_by_length(row, along), count, axis=0), along)
        thick = _even(_even(thick[..., None], along, axis=1), count, axis=0)[..., 0]
        if len(grid) and np.linalg.norm(grid[-1] - row[0], axis=1).mean() < 0.6 * across:
            # Parts that abut share their border row.
            grid[-1], row = 0.5 * (grid[-1] + row[0]), row[1:]
            thick = thick[1:]
        grid, half = np.concatenate([grid, row]), np.concatenate([half, thick])
    # The border rows lie on the sheet's edge; the flesh beside them has its thickness.
    half[0], half[-1] = half[1], half[-2]
    sheet = ControlSheet(np.ascontiguousarray(grid), np.ascontiguousarray(half), 1)
    return ControlSheet(sheet.mid, sheet.half_mm, _outward_sign(sheet))


def _through_the_middle(fibres: np.ndarray, vertices: np.ndarray, cut_end: str):
    """Lay a grid through the middle of a belly, across its breadth: grid and half thickness.

    Its middle line is the mean of its fibres, which keep step from the cut end on: their
    other ends lie at several levels. Rows run from medial to lateral, columns from the
    origin on.
    """
    fibres = fibres[:, ::-1] if cut_end == "insertion" else fibres
    steps = np.linalg.norm(np.diff(fibres, axis=1), axis=2)
    gone = np.concatenate([np.zeros((len(fibres), 1)), steps.cumsum(axis=1)], axis=1)
    at = np.linspace(0.0, float(np.median(gone[:, -1])), BELLY_STATIONS)
    points = np.full((len(fibres), len(at), 3), np.nan)
    for k, fibre in enumerate(fibres):
        there = at <= gone[k, -1] + 1e-6
        for c in range(3):
            points[k, there, c] = np.interp(at[there], gone[k], fibre[:, c])
    mean = np.nanmean(points, axis=0)
    share = at / at[-1]
    curves = [np.polynomial.Polynomial.fit(share, mean[:, c], BELLY_DEGREE) for c in range(3)]
    centre = np.column_stack([curve(share) for curve in curves])
    way = np.gradient(centre, axis=0)
    wide = cut_end == "origin"
    if wide:
        # Origins far apart along the spines make no middle line: it is the mean direction.
        way[:] = (fibres[:, -1] - fibres[:, 0]).mean(axis=0)
    way /= np.linalg.norm(way, axis=1, keepdims=True)
    if wide:
        along = (vertices - vertices.mean(axis=0)) @ way[0]
        at = np.linspace(*np.percentile(along, [0.5, 99.5]), BELLY_STATIONS)
        centre = vertices.mean(axis=0) + at[:, None] * way
    reach = 1.2 * (at[1] - at[0])
    slices = []
    for k in range(len(at)):
        off = vertices - centre[k]
        near = np.abs(off @ way[k]) < reach
        slices.append(off[near & (wide | (np.linalg.norm(off, axis=1) < BELLY_REACH_MM))])
    if wide:
        outward = np.array([0.0, 1.0, 0.0]) - way[:, 1:2] * way
        outward /= np.linalg.norm(outward, axis=1, keepdims=True)
        side = np.cross(outward, way)
        side *= np.sign(side[:, :1].mean()) or 1.0
    else:
        side = _breadth(slices, way)
        outward = np.cross(way, side)
    table = np.full((len(at), 4), np.nan)
    for k, near in enumerate(slices):
        if len(near) >= 6:
            low, high = np.percentile(near @ side[k], [5, 95])
            under, over = np.percentile(near @ outward[k], [6, 94])
            table[k] = low + high, under + over, high - low, over - under
    table *= 0.5
    for column in table.T:
        known = np.isfinite(column)
        column[~known] = np.interp(at[~known], at[known], column[known])
    table = gaussian_filter1d(table, 2.0, axis=0, mode="nearest")
    rows = np.linspace(-1, 1, 5)[:, None, None]
    grid = centre + table[:, :1] * side + table[:, 1:2] * outward + rows * table[:, 2:3] * side
    half = np.repeat(table[None, :, 3], 5, axis=0)
    if cut_end == "insertion":
        grid, half = grid[:, ::-1], half[:, ::-1]
    return grid, half


def _breadth(slices: Sequence[np.ndarray], way: np.ndarray) -> np.ndarray:
    """Return the direction (n, 3) in which a belly is broadest, square to its way."""
    found = np.zeros((len(way), 3))
    for k, near in enumerate(slices):
        if len(near) >= 6:
            flat = near - (near @ way[k])[:, None] * way[k]
            spread = np.linalg.eigh(np.cov(flat.T))
            found[k] = spread[1][:, 2] * np.sqrt(spread[0][2])
    first = np.abs(found[:, 0]) >= np.abs(found[:, 1])
    # Medial to lateral where it lies flat, front to back where it stands on edge.
    axis = np.array([1.0, 0.2, 0.0]) if first.mean() > 0.5 else np.array([0.2, 1.0, 0.0])
    found *= np.where(found @ axis < 0, -1.0, 1.0)[:, None]
    found = gaussian_filter1d(found, 4.0, axis=0, mode="nearest")
    found -= (found * way).sum(axis=1, keepdims=True) * way
    return found / np.maximum(np.linalg.norm(found, axis=1, keepdims=True), 1e-9)


def _from_the_line(rows, halves, line):
    """Let each row begin where it crosses a hinge line seen from behind, the outer part left out."""
    along = line[1] - line[0]
    # Outward of the line in the frontal plane.
    out = np.array([abs(along[2]), 0.0, -along[0] * np.sign(along[2])])
    cut_rows, cut_halves = [], []
    for grid, half in zip(rows, halves, strict=True):
        beyond = (grid - line[0]) @ out > 0
        new = np.empty_like(grid)
        thick = np.empty_like(half)
        for k, row in enumerate(grid):
            crossing = np.flatnonzero(beyond[k])
            first = int(crossing.max()) if len(crossing) else 0
            start = float(first)
            if 0 < first < len(row) - 1:
                a, b = ((row[first + i] - line[0]) @ out for i in (0, 1))
                start += a / (a - b)
            at = np.linspace(min(start, len(row) - 2.0), len(row) - 1, len(row))
            for c in range(3):
                new[k, :, c] = np.interp(at, np.arange(len(row)), row[:, c])
            thick[k] = np.interp(at, np.arange(len(row)), half[k])
        cut_rows.append(new)
        cut_halves.append(thick)
    return cut_rows, cut_halves


def _point_count(length: float, links: int, limits: tuple[float, float]) -> int:
    return max(4, round(length / float(np.clip(length / links, *limits)))) + 1


def _to_the_edges(fibres: np.ndarray) -> np.ndarray:
    """Add the two border rows, which lie half a spacing outside the first and last fibre."""
    if len(fibres) < 2:
        raise ValueError("a sheet needs at least two fibres")
    first = fibres[:1] - 0.5 * (fibres[1:2] - fibres[:1])
    last = fibres[-1:] + 0.5 * (fibres[-1:] - fibres[-2:-1])
    return np.concatenate([first, fibres, last])


def _half_thickness(rows: np.ndarray, mesh: MeshIndex) -> np.ndarray:
    """Return half the sheet's thickness at the points of a grid, mm."""
    near = np.abs(mesh.query(rows.reshape(-1, 3))[0]).reshape(rows.shape[:2])
    return np.clip(near, LEAST_HALF_MM, MOST_HALF_MM)


def _even(grid: np.ndarray, count: int, axis: int) -> np.ndarray:
    """Resample a grid by index, linearly."""
    if grid.shape[axis] == count:
        return grid
    at = np.linspace(0, grid.shape[axis] - 1, count)
    low = np.minimum(at.astype(int), grid.shape[axis] - 2)
    share = (at - low).reshape([-1 if k == axis else 1 for k in range(grid.ndim)])
    return (1 - share) * grid.take(low, axis=axis) + share * grid.take(low + 1, axis=axis)


def resampled_by_length(grid: np.ndarray, count: int, axes: int = 3) -> np.ndarray:
    """Resample each row (points, values) to points evenly spaced by its own length.

    The first ``axes`` values of a point are its place.
    """
    out = np.empty((len(grid), count, grid.shape[2]))
    for k, row in enumerate(grid):
        steps = np.linalg.norm(np.diff(row[:, :axes], axis=0), axis=1)
        s = np.concatenate([[0.0], steps.cumsum()])
        at = np.linspace(0, s[-1], count)
        for c in range(grid.shape[2]):
            out[k, :, c] = np.interp(at, s, row[:, c])
    return out


def trimmed(sheet: ControlSheet, stump_mm: np.ndarray) -> ControlSheet:
    """Return a sheet without the end of each fibre that stays when it is cut.

    Parameters
    ----------
    stump_mm : (rows,) float
        Length of the stump of each fibre.
    """
    both = np.concatenate([sheet.mid, sheet.half_mm[..., None]], axis=2)
    out = np.empty_like(both)
    for k, row in enumerate(both):
        s = np.concatenate([[0.0], np.linalg.norm(np.diff(row[:, :3], axis=0), axis=1).cumsum()])
        at = np.linspace(0, max(s[-1] - stump_mm[k], 0.3 * s[-1]), len(row))
        for c in range(4):
            out[k, :, c] = np.interp(at, s, row[:, c])
    return ControlSheet(
        np.ascontiguousarray(out[..., :3]), np.ascontiguousarray(out[..., 3]), sheet.outward
    )


def lifted_rows(sheet: ControlSheet) -> slice:
    """Return the rows of a sheet, to its cut, that turn; what lies beyond stays with the stump.

    Where hinge and cut run together nothing is lifted: a fibre there is too short to turn, or
    the cut runs along the fibres rather than across them, and the knife parts two of them.
    """
    length = np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2).sum(axis=1)
    long = np.flatnonzero(length >= LEAST_FLAP_MM)
    if len(long) < 3:
        return slice(0, len(length))
    apart = np.linalg.norm(np.diff(sheet.mid[:, 0], axis=0), axis=1)
    rises = np.diff(length) / np.maximum(apart, 1e-6)
    first, last = int(long[0]), int(long[-1])
    while last - first > 3 and rises[first] > MOST_SLANT:
        first += 1
    while last - first > 3 and -rises[last - 1] > MOST_SLANT:
        last -= 1
    return slice(first, last + 1)


def without_short_ends(sheet: ControlSheet) -> ControlSheet:
    """Return a sheet, to its cut, without the fibres at either border that are not lifted."""
    kept = lifted_rows(sheet)
    return ControlSheet(
        np.ascontiguousarray(sheet.mid[kept]),
        np.ascontiguousarray(sheet.half_mm[kept]),
        sheet.outward,
        sheet if kept.stop - kept.start < len(sheet.mid) else None,
    )


def _outward_sign(sheet: ControlSheet) -> int:
    """+1 or -1: the superficial side looks away from the body's axis (mm LPS)."""
    middle = sheet.mid.reshape(-1, 3)
    away = middle.copy()
    away[:, 1] -= -40.0  # a little in front of the column
    away[:, 2] = 0.0
    return 1 if float((sheet.normals().reshape(-1, 3) * away).sum()) >= 0 else -1
