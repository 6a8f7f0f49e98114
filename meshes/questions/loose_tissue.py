"""What fills a flat cut between its parts: loose tissue and fat that no part stands for.

Worked out twice over, as the cut itself is: exactly for areas that rest and for files,
and on a grid, quick enough for a plane that is dragged.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from numba import njit

from meshes.model import BackModel
from meshes.questions.section import Outlines, Region, only_areas

GAP_MM = 24.0
"""Widest gap that is filled."""

HOLE_MM2 = 8000.0
"""A hole within the body up to this size is filled too, such as the axilla; not the skull's."""

STEP_MM = 0.4
"""Corners that change an outline by less are left out."""

CELL_MM = 1.5
"""Side of the cells on which a moving cut is filled."""

FLUID_WITHIN = "spinal_arachnoid_mater"
"""Round cord and roots there is fluid."""


def loose_tissue(
    model: BackModel, regions: Sequence[Region], gap_mm: float = GAP_MM
) -> shapely.MultiPolygon:
    """Return what lies within the skin between the parts of a cut, mm.

    Nothing where the skin is not shown: then the gaps are what was taken away.

    Parameters
    ----------
    model : BackModel
    regions : sequence of Region
    gap_mm : float
        Widest gap that is filled.
    """
    if not any(model.parts[r.part_id].kind == "skin" for r in regions):
        return shapely.MultiPolygon()
    half = 0.5 * gap_mm
    shown = shapely.unary_union([r.polygons.simplify(STEP_MM) for r in regions])
    closed = shown.buffer(half, quad_segs=4).buffer(-half, quad_segs=4)
    filled = shapely.MultiPolygon([_without_holes(p) for p in only_areas(closed).geoms])
    fluid = [
        shapely.Polygon(p.exterior)
        for r in regions
        if model.parts[r.part_id].entry == FLUID_WITHIN
        for p in r.polygons.geoms
    ]
    return only_areas(filled.simplify(STEP_MM).difference(shapely.unary_union(fluid)))


def _without_holes(polygon: shapely.Polygon) -> shapely.Polygon:
    """Return a polygon with its smaller holes filled."""
    large = [r for r in polygon.interiors if shapely.Polygon(r).area > HOLE_MM2]
    return shapely.Polygon(polygon.exterior, large)


def loose_strips(model: BackModel, outlines: Outlines) -> np.ndarray:
    """Return the same as level strips, under all of the cut, to be painted before the parts.

    Parameters
    ----------
    model : BackModel
    outlines : Outlines
        The raw cut.

    Returns
    -------
    (n, 4) float
        Left, low, right and high side of each strip, mm in the picture; none where the
        skin is not cut. They are true to about a cell of 1.5 mm.
    """
    parts = [model.parts[i] for i in outlines.ids]
    if not any(part.kind == "skin" for part in parts):
        return np.zeros((0, 4))
    rings = [ring for part in outlines.rings for ring in part]
    whose = np.repeat(np.arange(len(parts)), [len(part) for part in outlines.rings])
    wet = np.array([part.entry == FLUID_WITHIN for part in parts])
    reach = round(0.5 * GAP_MM / CELL_MM)
    low, high = outlines.bounds()
    corner = low - (reach + 2) * CELL_MM
    shape = np.ceil((high - corner) / CELL_MM).astype(np.int64) + reach + 2
    runs = _runs(
        np.concatenate(rings),
        np.cumsum([0] + [len(ring) for ring in rings]),
        whose,
        wet,
        corner,
        shape,
        CELL_MM,
        reach,
        int(HOLE_MM2 / CELL_MM**2),
    )
    row, first, last = runs.T
    x, y = corner
    return np.column_stack(
        [x + first * CELL_MM, y + row * CELL_MM, x + last * CELL_MM, y + (row + 1) * CELL_MM]
    )


@njit(cache=True, nogil=True)
def _runs(points, starts, whose, wet, corner, shape, cell, reach, hole_cells):
    """Return (row, first cell, cell after the last) of what is filled, (n, 3)."""
    wide, tall = shape[0], shape[1]
    solid = np.zeros((tall, wide), np.bool_)
    fluid = np.zeros((tall, wide), np.bool_)
    turns = np.zeros((tall, wide), np.bool_)
    n_rings = len(starts) - 1
    ring = 0
    while ring < n_rings:
        last = ring
        while last < n_rings and whose[last] == whose[ring]:
            last += 1
        _paint(points, starts, ring, last, corner, cell, turns, solid)
        if wet[whose[ring]]:
            # Whatever its loops leave open: only the outermost of them counts.
            for r in range(ring, last):
                _paint(points, starts, r, r + 1, corner, cell, turns, fluid)
        ring = last
    closed = ~_near(~_near(solid, reach), reach)
    _fill_holes(closed, hole_cells)
    runs = np.empty((tall * 8, 3), np.int64)
    used = 0
    for row in range(tall):
        column = 0
        while column < wide:
            if not closed[row, column] or fluid[row, column]:
                column += 1
                continue
            first = column
            while column < wide and closed[row, column] and not fluid[row, column]:
                column += 1
            if used == len(runs):
                more = np.empty((2 * used, 3), np.int64)
                more[:used] = runs
                runs = more
            runs[used, 0], runs[used, 1], runs[used, 2] = row, first, column
            used += 1
    return runs[:used]


@njit(cache=True, nogil=True)
def _paint(points, starts, first, last, corner, cell, turns, into):
    """Set the cells whose middle an odd number of loops enclose; ``turns`` is left clear."""
    tall, wide = turns.shape
    left, right, bottom, top = wide, -1, tall, -1
    for r in range(first, last):
        for i in range(starts[r], starts[r + 1]):
            j = i + 1 if i + 1 < starts[r + 1] else starts[r]
            ax, ay = (points[i, 0] - corner[0]) / cell, (points[i, 1] - corner[1]) / cell
            bx, by = (points[j, 0] - corner[0]) / cell, (points[j, 1] - corner[1]) / cell
            if ay > by:
                ax, ay, bx, by = bx, by, ax, ay
            for row in range(int(np.ceil(ay - 0.5)), int(np.ceil(by - 0.5))):
                x = ax + (row + 0.5 - ay) * (bx - ax) / (by - ay)
                column = int(np.ceil(x - 0.5))
                turns[row, column] = not turns[row, column]
                left, right = min(left, column), max(right, column)
                bottom, top = min(bottom, row), max(top, row)
    for row in range(bottom, top + 1):
        within = False
        for column in range(left, right + 1):
            if turns[row, column]:
                within = not within
                turns[row, column] = False
            if within:
                into[row, column] = True


@njit(cache=True, nogil=True)
def _near(cells, reach):
    """Return the cells within so many cells of one that is set; beyond the edge none is."""
    tall, wide = cells.shape
    beside = np.empty((tall, wide), np.int32)
    for row in range(tall):
        gap = reach + 1
        for column in range(wide):
            gap = 0 if cells[row, column] else gap + 1
            beside[row, column] = gap
        gap = reach + 1
        for column in range(wide - 1, -1, -1):
            gap = 0 if cells[row, column] else gap + 1
            beside[row, column] = min(beside[row, column], gap)
    near = np.zeros((tall, wide), np.bool_)
    for away in range(-reach, reach + 1):
        across = int(np.sqrt(reach * reach - away * away))
        for row in range(max(0, -away), min(tall, tall - away)):
            for column in range(wide):
                near[row, column] |= beside[row + away, column] <= across
    return near


@njit(cache=True, nogil=True)
def _fill_holes(cells, most):
    """Set the cells of holes that have at most so many; what the edge reaches is no hole."""
    tall, wide = cells.shape
    seen = cells.copy()
    stack = np.empty(tall * wide + 1, np.int64)
    for begin in range(tall * wide):
        if seen[begin // wide, begin % wide]:
            continue
        seen[begin // wide, begin % wide] = True
        stack[0] = begin
        count, done = 1, 0
        open_hole = False
        while done < count:
            row, column = stack[done] // wide, stack[done] % wide
            done += 1
            for k in range(4):
                r = row + (1 if k == 0 else -1 if k == 1 else 0)
                c = column + (1 if k == 2 else -1 if k == 3 else 0)
                if r < 0 or c < 0 or r >= tall or c >= wide:
                    open_hole = True
                elif not seen[r, c]:
                    seen[r, c] = True
                    stack[count] = r * wide + c
                    count += 1
        if not open_hole and count <= most:
            for k in range(count):
                cells[stack[k] // wide, stack[k] % wide] = True
