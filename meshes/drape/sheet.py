"""Taut sheets: fibres stretched between two curves over what lies beneath.

A sheet is a grid of fibres (v across, u along). Each fibre is pulled straight
like a string, weakly held to its neighbours, and pushed out of the solids in
the way. Straight strings over a solid are its geodesics, so the rest pose is
the shortest way round. The grid then gets its thickness and a rounded rim.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
import trimesh
from numba import njit
from scipy.ndimage import maximum_filter

from meshes.drape.distance import KERNEL, MeshIndex
from meshes.drape.field import Field, gradient_at, sample_at

ALONG_WEIGHT = 0.7
ACROSS_WEIGHT = 0.15
"""Shares of the way to the neighbours' mean; explicit scheme, stable while their sum is < 1."""

LEAST_THICKNESS = 0.6
LEAST_END_THICKNESS = 0.3
"""mm; thinner sheets vanish on the screen and cut their own faces."""

ATTACHMENT_SINK = 2.0
"""mm that a sheet may sink at its very end, where it grows into what it attaches to."""

Thickness = float | np.ndarray | Callable[[np.ndarray, np.ndarray], np.ndarray]
Direction = np.ndarray | Callable[[np.ndarray], np.ndarray] | None


# --- curves -----------------------------------------------------------------------------------


def resample_curve(curve: np.ndarray, count: int, smooth: bool = False) -> np.ndarray:
    """(count, 3) points evenly spaced by arc length on a polyline (or a spline through it)."""
    curve = np.reshape(np.asarray(curve, dtype=np.float64), (-1, 3))
    if len(curve) == 1:
        return np.repeat(curve, count, axis=0)
    step = np.linalg.norm(np.diff(curve, axis=0), axis=1)
    keep = np.concatenate([[True], step > 1e-9])
    curve = curve[keep]
    if len(curve) == 1:
        return np.repeat(curve, count, axis=0)
    s = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(curve, axis=0), axis=1))])
    if smooth and len(curve) > 2:
        from scipy.interpolate import PchipInterpolator

        fine = np.linspace(0, s[-1], 16 * len(curve))
        return resample_curve(PchipInterpolator(s, curve)(fine), count)
    at = np.linspace(0, s[-1], count)
    return np.stack([np.interp(at, s, curve[:, k]) for k in range(3)], axis=1)


def share_fibres(pieces: Sequence[np.ndarray], across: int, least: int = 2) -> list[int]:
    """Numbers of fibres, summing to ``across``, shared among curve pieces by their length."""
    if across < least * len(pieces):
        raise ValueError(
            f"share_fibres: {len(pieces)} pieces need at least {least * len(pieces)} fibres, "
            f"got {across}"
        )
    length = np.array(
        [np.linalg.norm(np.diff(np.reshape(p, (-1, 3)), axis=0), axis=1).sum() for p in pieces]
    )
    length = np.maximum(length, 1e-6)
    wanted = length / length.sum() * across
    count = np.maximum(np.floor(wanted).astype(int), least)
    while count.sum() > across:
        spare = np.where(count > least, count - wanted, -np.inf)
        count[int(np.argmax(spare))] -= 1
    while count.sum() < across:
        count[int(np.argmax(wanted - count))] += 1
    return [int(c) for c in count]


def _end_points(curve: np.ndarray | Sequence[np.ndarray], across: int) -> np.ndarray:
    if isinstance(curve, np.ndarray) and curve.ndim == 2:
        return curve.astype(np.float64) if len(curve) == across else resample_curve(curve, across)
    if isinstance(curve, np.ndarray) and curve.ndim == 1:
        return np.repeat(curve[None].astype(np.float64), across, axis=0)
    pieces = [np.reshape(np.asarray(p, dtype=np.float64), (-1, 3)) for p in curve]
    if all(len(p) == 1 for p in pieces):
        return _end_points(np.concatenate(pieces), across)
    counts = share_fibres(pieces, across)
    return np.concatenate([resample_curve(p, n) for p, n in zip(pieces, counts)])


def _matched_ends(origin, insertion, across: int) -> tuple[np.ndarray, np.ndarray]:
    """End points of the fibres; equal numbers of pieces at both ends are joined piece to piece."""
    both = [isinstance(c, (list, tuple)) and len(c) > 1 for c in (origin, insertion)]
    if not (all(both) and len(origin) == len(insertion)):
        return _end_points(origin, across), _end_points(insertion, across)
    pieces = [
        (np.reshape(np.asarray(a, float), (-1, 3)), np.reshape(np.asarray(b, float), (-1, 3)))
        for a, b in zip(origin, insertion)
    ]
    length = np.array(
        [[np.linalg.norm(np.diff(c, axis=0), axis=1).sum() for c in pair] for pair in pieces]
    )
    # Each pair's width is the mean of its shares of both ends.
    width = (length / np.maximum(length.sum(axis=0), 1e-9)).mean(axis=1)
    lines = [np.array([[0.0, 0, 0], [w, 0, 0]]) for w in width]
    counts = share_fibres(lines, across)
    return tuple(
        np.concatenate([resample_curve(pair[end], n) for pair, n in zip(pieces, counts)])
        for end in (0, 1)
    )


def slip_cells(
    across: int,
    along: int,
    pieces: Sequence[int],
    depth_u: float | Sequence[float] = 0.2,
    end: str = "origin",
    cells: np.ndarray | None = None,
) -> np.ndarray:
    """Cells of a sheet whose one end is cut into slips.

    Parameters
    ----------
    across, along : int
        Numbers of grid points.
    pieces : sequence of int
        Fibres in each slip, summing to ``across`` (see :func:`share_fibres`).
    depth_u : float or sequence of float
        How far the gaps reach from that end, as a share of u; one for all or
        one for each gap.
    end : {"origin", "insertion"}
    cells : (across - 1, along - 1) bool or None
        Cells cut already (slips at the other end).

    Returns
    -------
    (across - 1, along - 1) bool
        False where the sheet is open.
    """
    if sum(pieces) != across:
        raise ValueError(f"slip_cells: pieces must sum to {across} fibres, got {sum(pieces)}")
    if end not in ("origin", "insertion"):
        raise ValueError(f"slip_cells: end must be origin or insertion, got {end}")
    cells = np.ones((across - 1, along - 1), bool) if cells is None else cells.copy()
    gaps = np.cumsum(pieces)[:-1] - 1
    depths = np.broadcast_to(np.asarray(depth_u, dtype=float), gaps.shape)
    for row, depth in zip(gaps, depths):
        count = min(max(1, round(float(depth) * (along - 1))), along - 2)
        cells[row, slice(0, count) if end == "origin" else slice(along - 1 - count, None)] = False
    return cells


# --- the grid ---------------------------------------------------------------------------------


def _evaluate(thickness: Thickness, nv: int, nu: int) -> np.ndarray:
    if callable(thickness):
        u, v = np.meshgrid(np.linspace(0, 1, nu), np.linspace(0, 1, nv))
        return np.broadcast_to(np.asarray(thickness(u, v), dtype=np.float64), (nv, nu)).copy()
    value = np.asarray(thickness, dtype=np.float64)
    if value.ndim == 2 and value.shape != (nv, nu):
        return _resample_grid(value[..., None], nv, nu)[..., 0]
    return np.broadcast_to(value, (nv, nu)).copy()


def _resample_grid(grid: np.ndarray, nv: int, nu: int) -> np.ndarray:
    """Cubic resampling of a (v, u, k) grid by index."""
    from scipy.interpolate import PchipInterpolator

    for axis, count in ((0, nv), (1, nu)):
        have = grid.shape[axis]
        if have != count:
            at = np.linspace(0, have - 1, count)
            grid = PchipInterpolator(np.arange(have), grid, axis=axis)(at)
    return grid


@dataclass(frozen=True, slots=True, eq=False)
class SheetGrid:
    """A sheet's mid-surface and thickness.

    Attributes
    ----------
    mid : (nv, nu, 3) float
        mm; row v is one fibre, origin first.
    thickness : (nv, nu) float
        mm.
    cells : (nv - 1, nu - 1) bool or None
        False where the sheet is open (gaps between slips).
    sign : int
        +1 when cross(d/du, d/dv) points to the superficial side, else -1.
    """

    mid: np.ndarray
    thickness: np.ndarray
    cells: np.ndarray | None = None
    sign: int = 1

    def normals(self) -> np.ndarray:
        """(nv, nu, 3) unit normals towards the superficial side.

        Smoothed over about half the thickness, so that the two faces don't
        fold where fibres run closer together than the sheet is thick.
        """
        joined = _joined_across(self.cells)
        unit = _grid_normals(self.mid, joined) * self.sign
        for axis in (0, 1):
            rounds = _smoothing_rounds(self.mid, self.thickness, axis)
            for number in range(int(rounds.max(initial=0))):
                mean = _across_mean(unit, joined) if axis == 0 else _line_mean(unit, axis)
                mean /= np.maximum(np.linalg.norm(mean, axis=2, keepdims=True), 1e-12)
                unit = np.where((rounds > number)[..., None], mean, unit)
        return unit

    def outer(self) -> np.ndarray:
        """(nv, nu, 3) superficial face, mm; NaN at points that only holes touch."""
        return self._masked(self.mid + 0.5 * self.thickness[..., None] * self.normals())

    def inner(self) -> np.ndarray:
        """(nv, nu, 3) deep face, mm; NaN at points that only holes touch."""
        return self._masked(self.mid - 0.5 * self.thickness[..., None] * self.normals())

    def used(self) -> np.ndarray:
        """(nv, nu) bool: points that belong to at least one cell."""
        used = np.ones(self.mid.shape[:2], bool)
        if self.cells is not None:
            used[:] = False
            for a in (0, 1):
                for b in (0, 1):
                    used[a : a + len(self.cells), b : b + self.cells.shape[1]] |= self.cells
        return used

    def folded(self, outward: Direction = None) -> float:
        """Share of the grid that looks the wrong way: fibres cross there.

        Measured against ``outward`` (a vector or a function of points), else
        against the sheet's own mean side.
        """
        normal = self.normals()
        if outward is None:
            way = np.broadcast_to(normal.reshape(-1, 3).mean(axis=0), normal.shape)
        elif callable(outward):
            way = np.reshape(outward(self.mid.reshape(-1, 3)), normal.shape)
        else:
            way = np.broadcast_to(np.asarray(outward, dtype=np.float64), normal.shape)
        return float(np.mean((normal * way).sum(axis=2) < 0))

    def fibres(self, count: int) -> np.ndarray:
        """(count, nu, 3) fibre lines in the mid-surface, origin end first, mm."""
        at = (np.arange(count) + 0.5) / count * (len(self.mid) - 1)
        low = np.minimum(at.astype(int), len(self.mid) - 2)
        t = (at - low)[:, None, None]
        return (1 - t) * self.mid[low] + t * self.mid[low + 1]

    def resampled(self, across: int, along: int) -> SheetGrid:
        """The same sheet on another grid (smooth between the old points); holes by nearest."""
        cells = self.cells
        if cells is not None:
            i = ((np.arange(across - 1) + 0.5) / (across - 1) * cells.shape[0]).astype(int)
            j = ((np.arange(along - 1) + 0.5) / (along - 1) * cells.shape[1]).astype(int)
            cells = cells[np.ix_(i, j)]
        return replace(
            self,
            mid=_resample_grid(self.mid, across, along),
            thickness=_resample_grid(self.thickness[..., None], across, along)[..., 0],
            cells=cells,
        )

    def moved(self, offset: float) -> SheetGrid:
        """The same sheet moved ``offset`` mm to its superficial side."""
        return replace(self, mid=self.mid + offset * self.normals())

    def _masked(self, face: np.ndarray) -> np.ndarray:
        if self.cells is not None:
            face = face.copy()
            face[~self.used()] = np.nan
        return face


MOST_SMOOTHING = 30
"""Rounds of averaging at most where fibres crowd together."""


def _smoothing_rounds(mid: np.ndarray, thickness: np.ndarray, axis: int) -> np.ndarray:
    """(nv, nu) int: rounds after which averaging along an axis has spread half a thickness."""
    step = np.linalg.norm(np.diff(mid, axis=axis), axis=2)
    pad = ((1, 0), (0, 0)) if axis == 0 else ((0, 0), (1, 0))
    before = np.pad(step, pad, mode="edge")
    after = np.pad(step, tuple((b, a) for a, b in pad), mode="edge")
    step = np.maximum(0.5 * (before + after), 1e-6)
    # n rounds of (1/4, 1/2, 1/4) spread by sqrt(n / 2) steps.
    spread = 0.5 * thickness / step
    return np.minimum(np.floor(2 * spread * spread), MOST_SMOOTHING).astype(int)


def _joined_across(cells: np.ndarray | None) -> np.ndarray | None:
    """(nv - 1, nu) bool: which points belong together with the same point of the next fibre.

    Fibres on either side of a gap between slips do not. None where nothing is open.
    """
    if cells is None or cells.all():
        return None
    return np.pad(cells, ((0, 0), (0, 1))) | np.pad(cells, ((0, 0), (1, 0)))


def _beside(values: np.ndarray, joined: np.ndarray | None) -> tuple[np.ndarray, np.ndarray]:
    """Values (nv, nu, k) of the fibres before and after; a point's own where it has no such."""
    before = np.concatenate([values[:1], values[:-1]])
    after = np.concatenate([values[1:], values[-1:]])
    if joined is not None:
        before[1:] = np.where(joined[..., None], before[1:], values[1:])
        after[:-1] = np.where(joined[..., None], after[:-1], values[:-1])
    return before, after


def _across_mean(values: np.ndarray, joined: np.ndarray | None) -> np.ndarray:
    """Quarter, half, quarter across the fibres, never over a gap between slips."""
    before, after = _beside(values, joined)
    return 0.5 * values + 0.25 * (before + after)


def _line_mean(values: np.ndarray, axis: int) -> np.ndarray:
    """Quarter, half, quarter along one axis; borders repeated."""
    pad = [(0, 0)] * values.ndim
    pad[axis] = (1, 1)
    padded = np.pad(values, pad, mode="edge")
    low, high = [slice(None)] * values.ndim, [slice(None)] * values.ndim
    low[axis], high[axis] = slice(None, -2), slice(2, None)
    return 0.5 * values + 0.25 * (padded[tuple(low)] + padded[tuple(high)])


def _fair(mid: np.ndarray, thickness: np.ndarray, held: np.ndarray, cells: np.ndarray) -> None:
    """Even out the mid-surface where fibres crowd together; changes ``mid`` in place.

    Moves only inner fibres, and only across: a border and a fibre's course stay.
    """
    rounds = np.minimum(_smoothing_rounds(mid, thickness, 0), 12)
    joined = np.pad(cells, ((0, 0), (0, 1))) | np.pad(cells, ((0, 0), (1, 0)))
    free = np.zeros(held.shape, bool)
    free[1:-1] = joined[:-1] & joined[1:] & ~held[1:-1]
    for number in range(int(rounds.max(initial=0))):
        pick = free & (rounds > number)
        if not pick.any():
            break
        mid[pick] = _line_mean(mid, 0)[pick]


def _unfold_mid(mid: np.ndarray, held: np.ndarray, cells: np.ndarray, rounds: int = 40) -> None:
    """Pull out creases in which the mid-surface doubles back; changes ``mid`` in place.

    A cell that looks away from its wider surroundings, or stands steeply to
    them, is smoothed along and across until it lies with them.
    """
    joined = np.pad(cells, ((0, 0), (0, 1))) | np.pad(cells, ((0, 0), (1, 0)))
    inner = np.zeros(held.shape, bool)
    inner[1:-1] = joined[:-1] & joined[1:]
    for number in range(rounds):
        cross = np.cross(mid[:-1, 1:] - mid[1:, :-1], mid[1:, 1:] - mid[:-1, :-1])
        cross /= np.maximum(np.linalg.norm(cross, axis=2, keepdims=True), 1e-12)
        wide = cross
        for _ in range(6):
            wide = _line_mean(_line_mean(wide, 0), 1)
        wide = wide / np.maximum(np.linalg.norm(wide, axis=2, keepdims=True), 1e-12)
        steep = ((cross * wide).sum(axis=2) < 0.5) & cells
        if not steep.any():
            return
        reach = 1 + number // 10
        bad = np.zeros(held.shape, bool)
        for i in (0, 1):
            for j in (0, 1):
                bad[i : i + steep.shape[0], j : j + steep.shape[1]] |= steep
        bad = maximum_filter(bad, size=2 * reach + 1) & ~held
        along = _line_mean(mid, 1)
        both = np.where(inner[..., None], 0.5 * (along + _line_mean(mid, 0)), along)
        mid[bad] = both[bad]


_SURE = 0.3
"""Sine of the angle between a fibre and the way across from which its normal counts in full."""


def _grid_normals(mid: np.ndarray, joined: np.ndarray | None = None) -> np.ndarray:
    """(nv, nu, 3) unit normals; ``joined`` as from :func:`_joined_across`."""
    # The way across, up to a factor: a slip's own, whatever lies beyond the gap beside it.
    before, after = _beside(mid, joined)
    along, across = np.gradient(mid, axis=1), after - before
    cross = np.cross(along, across)
    length = np.linalg.norm(cross, axis=2)
    good = length > 1e-9 * max(float(length.max()), 1e-30)
    unit = cross / np.where(good, length, 1.0)[..., None]
    unit[~good] = 0.0
    # Where fibres all but run along the border the side is uncertain: the neighbours tell.
    sides = np.linalg.norm(along, axis=2) * np.linalg.norm(across, axis=2)
    unit *= np.minimum(length / np.maximum(_SURE * sides, 1e-30), 1.0)[..., None]
    # Smoothed over neighbours, so that a crease does not throw the two faces through each other.
    for _ in range(2):
        padded = np.pad(unit, ((0, 0), (1, 1), (0, 0)), mode="edge")
        before, after = _beside(unit, joined)
        unit = 2 * unit + before + after + padded[:, :-2] + padded[:, 2:]
        size = np.linalg.norm(unit, axis=2, keepdims=True)
        unit = unit / np.where(size > 1e-12, size, 1.0)
    return unit


# --- laying -----------------------------------------------------------------------------------


@njit(**KERNEL)
def _relax(
    data, origin, spacing, mid, need, fixed, outward, force, along, across, cells, iterations
):
    """Jacobi steps of string tension and push-out; changes ``mid`` in place."""
    nv, nu = mid.shape[0], mid.shape[1]
    new = mid.copy()
    most = 1.5 * spacing
    for _ in range(iterations):
        for v in range(nv):
            for u in range(nu):
                if fixed[v, u]:
                    continue
                dx, dy, dz = 0.0, 0.0, 0.0
                if 0 < u < nu - 1:
                    dx = along * (0.5 * (mid[v, u - 1, 0] + mid[v, u + 1, 0]) - mid[v, u, 0])
                    dy = along * (0.5 * (mid[v, u - 1, 1] + mid[v, u + 1, 1]) - mid[v, u, 1])
                    dz = along * (0.5 * (mid[v, u - 1, 2] + mid[v, u + 1, 2]) - mid[v, u, 2])
                left = v > 0 and (cells[v - 1, max(u - 1, 0)] or cells[v - 1, min(u, nu - 2)])
                right = v < nv - 1 and (cells[v, max(u - 1, 0)] or cells[v, min(u, nu - 2)])
                if left and right:
                    dx += across * (0.5 * (mid[v - 1, u, 0] + mid[v + 1, u, 0]) - mid[v, u, 0])
                    dy += across * (0.5 * (mid[v - 1, u, 1] + mid[v + 1, u, 1]) - mid[v, u, 1])
                    dz += across * (0.5 * (mid[v - 1, u, 2] + mid[v + 1, u, 2]) - mid[v, u, 2])
                if force[v] != 0.0:
                    a, b = max(v - 1, 0), min(v + 1, nv - 1)
                    cx = mid[b, u, 0] - mid[a, u, 0]
                    cy = mid[b, u, 1] - mid[a, u, 1]
                    cz = mid[b, u, 2] - mid[a, u, 2]
                    c = np.sqrt(cx * cx + cy * cy + cz * cz)
                    if c > 1e-9:
                        dx += force[v] * cx / c
                        dy += force[v] * cy / c
                        dz += force[v] * cz / c
                x, y, z = mid[v, u, 0] + dx, mid[v, u, 1] + dy, mid[v, u, 2] + dz
                d = sample_at(data, origin, spacing, x, y, z)
                lack = need[v, u] - d
                if lack > 0:
                    gx, gy, gz = gradient_at(data, origin, spacing, x, y, z)
                    g = np.sqrt(gx * gx + gy * gy + gz * gz)
                    if g < 0.3:
                        # Deep inside the field is flat: the way out is the outward direction.
                        gx, gy, gz = outward[v, u, 0], outward[v, u, 1], outward[v, u, 2]
                        g = 1.0
                    lack = min(lack, most)
                    x += lack * gx / g
                    y += lack * gy / g
                    z += lack * gz / g
                new[v, u, 0], new[v, u, 1], new[v, u, 2] = x, y, z
        for v in range(nv):
            for u in range(nu):
                mid[v, u, 0], mid[v, u, 1], mid[v, u, 2] = new[v, u, 0], new[v, u, 1], new[v, u, 2]


@njit(**KERNEL)
def _bow(data, origin, spacing, base, need, outward, fixed, limit):
    """Lift each fibre to the upper hull of what lies along ``outward`` of its base line."""
    nv, nu = base.shape[0], base.shape[1]
    height = np.zeros((nv, nu))
    for v in range(nv):
        for u in range(nu):
            if fixed[v, u]:
                continue
            # Marched from outside inward: the sheet starts outside everything.
            h = limit
            while h > 0:
                d = sample_at(
                    data,
                    origin,
                    spacing,
                    base[v, u, 0] + h * outward[v, u, 0],
                    base[v, u, 1] + h * outward[v, u, 1],
                    base[v, u, 2] + h * outward[v, u, 2],
                )
                if d < need[v, u]:
                    break
                h -= max(0.5 * spacing, 0.8 * (d - need[v, u]))
            height[v, u] = max(h, 0.0)
        # Upper concave hull of the heights between fixed points: a string over a profile.
        hull = np.empty(nu, np.int64)
        top = 0
        for u in range(nu):
            while top >= 2:
                a, b = hull[top - 2], hull[top - 1]
                if fixed[v, b]:
                    break
                if (height[v, b] - height[v, a]) * (u - a) <= (height[v, u] - height[v, a]) * (
                    b - a
                ):
                    top -= 1
                else:
                    break
            hull[top] = u
            top += 1
        for i in range(top - 1):
            a, b = hull[i], hull[i + 1]
            for u in range(a, b):
                h = height[v, a] + (height[v, b] - height[v, a]) * (u - a) / (b - a)
                for k in range(3):
                    base[v, u, k] += h * outward[v, u, k]


def _start_grid(
    first: np.ndarray,
    last: np.ndarray,
    guide: Mapping[float, np.ndarray] | np.ndarray | None,
    nv: int,
    nu: int,
) -> np.ndarray:
    if guide is not None and not isinstance(guide, Mapping):
        grid = np.array(guide, dtype=np.float64)
        if grid.ndim != 3:
            raise ValueError(f"lay_sheet: guide grid must be (nv, nu, 3), got {grid.shape}")
        grid = _resample_grid(grid, nv, nu)
        grid[:, 0], grid[:, -1] = first, last
        return grid
    curves = {0.0: first, 1.0: last}
    for u, curve in (guide or {}).items():
        if not 0 < u < 1:
            raise ValueError(f"lay_sheet: guide curves lie at 0 < u < 1, got {u}")
        curves[float(u)] = _end_points(curve, nv)
    at = np.array(sorted(curves))
    lines = np.stack([curves[u] for u in at], axis=1)
    u = np.linspace(0, 1, nu)
    if len(at) == 2:
        return lines[:, :1] + (lines[:, 1:] - lines[:, :1]) * u[None, :, None]
    from scipy.interpolate import PchipInterpolator

    fine = np.linspace(0, 1, 4 * (nu - 1) + 1)
    return np.stack([resample_curve(f, nu) for f in PchipInterpolator(at, lines, axis=1)(fine)])


def _directions(outward: Direction, grid: np.ndarray, field: Field) -> np.ndarray:
    """(nv, nu, 3) unit outward directions at a grid."""
    if outward is None:
        unit = _grid_normals(grid)
        h = 0.8 * field.band
        rise = field.sample(grid + h * unit) - field.sample(grid - h * unit)
        way = unit * (1.0 if rise.sum() >= 0 else -1.0)
    elif callable(outward):
        way = np.asarray(outward(grid.reshape(-1, 3)), dtype=np.float64).reshape(grid.shape)
    else:
        way = np.broadcast_to(np.asarray(outward, dtype=np.float64), grid.shape)
    size = np.linalg.norm(way, axis=2, keepdims=True)
    return np.ascontiguousarray(way / np.where(size > 1e-12, size, 1.0))


def arc_length(mid: np.ndarray) -> np.ndarray:
    """(nv, nu) arc length from the origin along each fibre, mm."""
    step = np.linalg.norm(np.diff(mid, axis=1), axis=2)
    return np.concatenate([np.zeros((len(mid), 1)), np.cumsum(step, axis=1)], axis=1)


def _to_fixed(mid: np.ndarray, fixed: np.ndarray) -> np.ndarray:
    """(nv, nu) way along the fibre to the nearest fixed point, mm."""
    s = arc_length(mid)
    after = np.where(fixed, s, -np.inf)
    before = np.where(fixed, s, np.inf)
    after = np.maximum.accumulate(after, axis=1)
    before = np.minimum.accumulate(before[:, ::-1], axis=1)[:, ::-1]
    return np.minimum(s - after, before - s)


def _smoothstep(x: np.ndarray) -> np.ndarray:
    x = np.clip(x, 0, 1)
    return x * x * (3 - 2 * x)


def _clearance(
    mid: np.ndarray, thickness: np.ndarray, fixed: np.ndarray, gap: float, ramp: float
) -> np.ndarray:
    """Distance that each grid point must keep; falls below zero at fixed points."""
    rise = _smoothstep(_to_fixed(mid, fixed) / max(ramp, 1e-6))
    return rise * (0.5 * thickness + gap) - (1 - rise) * ATTACHMENT_SINK


def _spread_end(points: np.ndarray, other: np.ndarray, least: float = 1.5) -> np.ndarray:
    """Keep an end at least a little wide: coincident fibres would make flat triangles."""
    width = np.linalg.norm(np.diff(points, axis=0), axis=1)
    if width.sum() >= least or len(points) < 2:
        return points
    way = other[-1] - other[0]
    size = np.linalg.norm(way)
    if size < 1e-6:
        way = np.cross(other.mean(axis=0) - points.mean(axis=0), [0.0, 0.0, 1.0])
        size = max(float(np.linalg.norm(way)), 1e-6)
    t = np.linspace(-0.5, 0.5, len(points))[:, None]
    return points.mean(axis=0) + t * least * way / size


def lay_sheet(
    origin: np.ndarray | Sequence[np.ndarray],
    insertion: np.ndarray | Sequence[np.ndarray],
    obstacles: Field,
    thickness: Thickness,
    *,
    along: int = 33,
    across: int = 17,
    guide: Mapping[float, np.ndarray] | np.ndarray | None = None,
    outward: Direction = None,
    border_tension: float | tuple[float, float] = 0.04,
    iterations: int = 200,
    fixed: np.ndarray | None = None,
    gap: float = 0.3,
    ramp: float = 10.0,
    exact: Sequence[MeshIndex] = (),
    cells: np.ndarray | None = None,
    bow_limit: float | None = None,
    across_weight: float = ACROSS_WEIGHT,
) -> SheetGrid:
    """Stretch a sheet of fibres between two curves over the obstacles.

    Parameters
    ----------
    origin, insertion : (n, 3) float, or sequence of (n_i, 3)
        Attachment curves, mm, in matching order: fibre v runs from v along the
        origin to v along the insertion (reverse one to twist the sheet). With
        ``across`` points they are taken one a fibre, else resampled by length;
        a sequence of pieces shares the fibres among them by length; as many
        pieces at both ends are joined piece to piece, in order.
    obstacles : Field
        What must not be entered.
    thickness : float, (across, along) or callable (u, v) -> mm
    along, across : int
        Grid points along and across the fibres.
    guide : mapping {u: (n, 3)}, (nv, nu, 3) or None
        Curves or a grid the start passes through (wrapping, twisting); the
        sheet tightens from there, and stays at ``fixed`` points. Between curves the
        points of each fibre are spread evenly, however near its end the first one passes.
    outward : (3,), callable (n, 3) -> (n, 3) or None
        Towards the superficial side. The start is bowed that way to lie
        outside everything within ``bow_limit``; None takes the side on which
        the field rises.
    border_tension : float or pair
        Inward sag of the two free borders (v = 0, v = 1) as a share of the
        fibre length; negative bulges.
    iterations : int
        Steps after the start, which is near the answer already.
    fixed : (across, along) bool or None
        Further points that stay where the start puts them.
    gap : float
        Room under the sheet, mm.
    ramp : float
        Way over which the clearance grows from an attachment, mm.
    exact : sequence of MeshIndex
        Meshes to clear exactly after the field has done its work.
    cells : (across - 1, along - 1) bool or None
        False opens the sheet there (see :func:`slip_cells`).
    bow_limit : float or None
        How far outside the start is looked for, mm; default 40 % of the
        longest fibre. 0 keeps the start as given (for a sheet that runs under
        something, with a guide).
    across_weight : float
        Pull towards neighbouring fibres; with the pull along (0.7) below 1.

    Returns
    -------
    SheetGrid

    Examples
    --------
    A string over a quarter of a cylinder takes the geodesic: see the tests.
    """
    if along < 4 or across < 2:
        raise ValueError(f"lay_sheet: needs along >= 4 and across >= 2, got {along} and {across}")
    if ALONG_WEIGHT + across_weight >= 1:
        raise ValueError(
            f"lay_sheet: across_weight must lie below {1 - ALONG_WEIGHT:.1f}, got {across_weight}"
        )
    first, last = _matched_ends(origin, insertion, across)
    first, last = _spread_end(first, last), _spread_end(last, first)
    mid = np.ascontiguousarray(_start_grid(first, last, guide, across, along))
    held = np.zeros((across, along), bool)
    held[:, 0] = held[:, -1] = True
    if fixed is not None:
        held |= fixed
    t = _evaluate(thickness, across, along)
    open_cells = np.ones((across - 1, along - 1), bool) if cells is None else cells.astype(bool)
    way = _directions(outward, mid, obstacles)
    length = arc_length(mid)[:, -1]
    limit = 0.4 * float(length.max()) if bow_limit is None else float(bow_limit)
    need = _clearance(mid, t, held, gap, ramp)
    grid = (obstacles.data, obstacles.origin, obstacles.spacing)
    if limit > 0:
        _bow(*grid, mid, need, way, held, limit)
    sag = np.broadcast_to(np.asarray(border_tension, dtype=np.float64), (2,)) * length[[0, -1]]
    v = np.linspace(0, 1, across)
    # A parabola of that sag is where this force balances the pull along (h^2 y'' = 8 s h^2).
    force = 4 * ALONG_WEIGHT * (sag[0] * (1 - v) ** 2 - sag[1] * v**2) / (along - 1) ** 2
    for _ in range(3):
        need = _clearance(mid, t, held, gap, ramp)
        way = _directions(outward, mid, obstacles)
        _relax(
            *grid, mid, need, held, way, force, ALONG_WEIGHT, across_weight, open_cells,
            max(1, iterations // 3),
        )  # fmt: skip
    _fair(mid, t, held, open_cells)
    _unfold_mid(mid, held, open_cells)
    if exact:
        _clear_exactly(mid, need, held, exact)
    sign = 1 if float((_grid_normals(mid) * way).sum()) >= 0 else -1
    return SheetGrid(mid, t, None if cells is None else open_cells, sign)


def _clear_exactly(
    mid: np.ndarray, need: np.ndarray, fixed: np.ndarray, exact: Sequence[MeshIndex]
) -> None:
    """Push grid points off the real meshes; changes ``mid`` in place."""
    most = float(need.max()) + 1e-6
    for _ in range(8):
        moved = np.zeros_like(mid)
        low, high = mid.reshape(-1, 3).min(axis=0) - most, mid.reshape(-1, 3).max(axis=0) + most
        for index in exact:
            bounds = index.bounds
            if np.any(bounds[0] > high) or np.any(bounds[1] < low):
                continue
            near = np.all((mid > bounds[0] - most) & (mid < bounds[1] + most), axis=2) & ~fixed
            if not near.any():
                continue
            d, _, normal = index.signed_distance(mid[near], reach=most + 6.0)
            lack = np.where(np.isfinite(d), need[near] - d, 0.0)
            push = np.clip(lack, 0, 3.0)[:, None] * normal
            longer = np.linalg.norm(push, axis=1) > np.linalg.norm(moved[near], axis=1)
            moved[near] = np.where(longer[:, None], push, moved[near])
        if not np.any(moved):
            return
        mid += moved


# --- thickness --------------------------------------------------------------------------------


def belly_profile(
    peak: float,
    *,
    tendon: tuple[float, float] = (0.08, 0.12),
    tendon_thickness: float | tuple[float, float] = 0.8,
    edge: float | tuple[float, float] = 0.5,
    at: float = 0.5,
    edge_width: float = 0.25,
) -> Callable[[np.ndarray, np.ndarray], np.ndarray]:
    """Thickness of a flat muscle: thin tendons, a belly, thinner free borders.

    Parameters
    ----------
    peak : float
        Thickest, mm.
    tendon : pair of float
        Shares of u at origin and insertion that stay tendon.
    tendon_thickness : float or pair
        mm.
    edge : float or pair
        Share of the thickness left at the borders v = 0 and v = 1.
    at : float
        u of the thickest place.
    edge_width : float
        Share of v over which a border thins.

    Returns
    -------
    callable (u, v) -> mm
    """
    start, end = np.broadcast_to(np.asarray(tendon_thickness, dtype=float), (2,))
    near, far = np.broadcast_to(np.asarray(edge, dtype=float), (2,))

    def thickness(u: np.ndarray, v: np.ndarray) -> np.ndarray:
        u, v = np.asarray(u, dtype=float), np.asarray(v, dtype=float)
        rise = _smoothstep((u - tendon[0]) / max(at - tendon[0], 1e-6))
        fall = _smoothstep((1 - tendon[1] - u) / max(1 - tendon[1] - at, 1e-6))
        belly = np.sqrt(np.where(u < at, rise, fall))
        thin = np.where(u < at, start, end)
        a = np.clip(v / edge_width, 0, 1)
        b = np.clip((1 - v) / edge_width, 0, 1)
        border = (near + (1 - near) * np.sqrt(a * (2 - a))) * (
            far + (1 - far) * np.sqrt(b * (2 - b))
        )
        return thin + (np.maximum(peak - thin, 0)) * belly * border

    return thickness


# --- the solid --------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, eq=False)
class ThickSheet:
    """A sheet as a closed mesh.

    Attributes
    ----------
    mesh : trimesh.Trimesh
        Closed, outward, mm.
    uv : (n, 2) float32
        u along the fibre from origin 0 to insertion 1 by arc length, v across.
    tendon : (n,) float32
        0 fleshy, 1 tendon.
    fibres : (n_fibres, n_points, 3) float
        Origin first, mm.
    node : (n,) int
        Grid point (v * nu + u) that each vertex belongs to.
    face : (n,) int8
        +1 superficial face, -1 deep face, 0 rim.
    """

    mesh: trimesh.Trimesh
    uv: np.ndarray
    tendon: np.ndarray
    fibres: np.ndarray
    node: np.ndarray
    face: np.ndarray


def _mend_cells(cells: np.ndarray) -> np.ndarray:
    """Fill cells so that no two present cells touch by a corner only."""
    cells = cells.copy()
    while True:
        a, b, c, d = cells[:-1, :-1], cells[:-1, 1:], cells[1:, :-1], cells[1:, 1:]
        pinch = (a & d & ~b & ~c) | (b & c & ~a & ~d)
        if not pinch.any():
            return cells
        i, j = np.argwhere(pinch)[0]
        cells[i : i + 2, j : j + 2] = True


def least_thickness(sheet: SheetGrid) -> np.ndarray:
    """(nv, nu) mm: 0.3 at the attached ends, 0.6 from 6 mm on."""
    s = arc_length(sheet.mid)
    end = np.minimum(s, s[:, -1:] - s)
    return LEAST_END_THICKNESS + (LEAST_THICKNESS - LEAST_END_THICKNESS) * _smoothstep(end / 6.0)


def _unfold(mid: np.ndarray, normal: np.ndarray, thickness: np.ndarray) -> np.ndarray:
    """Thin the sheet where a face would fold over itself in a sharp bend."""
    t = thickness.copy()
    cross = np.cross(mid[:-1, 1:] - mid[:-1, :-1], mid[1:, :-1] - mid[:-1, :-1])
    cross += np.cross(mid[:-1, 1:] - mid[1:, 1:], mid[1:, :-1] - mid[1:, 1:]) * -1.0
    for _ in range(12):
        bad = np.zeros(t.shape, bool)
        for side in (0.5, -0.5):
            p = mid + side * t[..., None] * normal
            a, b, c, d = p[:-1, :-1], p[:-1, 1:], p[1:, 1:], p[1:, :-1]
            for q in (np.cross(b - a, d - a), np.cross(b - c, d - c) * -1.0):
                # A face may shrink in a bend, but not to a tenth and not turn over.
                turned = (q * cross).sum(axis=2) * 2 < 0.1 * (cross * cross).sum(axis=2)
                for i in (0, 1):
                    for j in (0, 1):
                        bad[i : i + turned.shape[0], j : j + turned.shape[1]] |= turned
        if not bad.any():
            break
        t = np.where(bad, 0.75 * t, t)
        padded = np.pad(t, 1, mode="edge")
        around = 0.25 * (
            padded[:-2, 1:-1] + padded[2:, 1:-1] + padded[1:-1, :-2] + padded[1:-1, 2:]
        )
        t = np.minimum(t, 0.5 * t + 0.5 * np.maximum(around, 0))
    return t


def thicken(
    sheet: SheetGrid,
    *,
    rim_points: int = 3,
    tendon: tuple[float, float] | Callable[[np.ndarray, np.ndarray], np.ndarray] | None = None,
    fibres: int = 16,
) -> ThickSheet:
    """Close a sheet into a solid with a rounded rim.

    Parameters
    ----------
    sheet : SheetGrid
        Thickness is raised to 0.6 mm (0.3 at attached ends) where thinner and
        lowered where a sharp bend would fold a face.
    rim_points : int
        Points between the two faces round the rim.
    tendon : pair of float, callable (u, v) -> 0..1, or None
        Shares of u that are tendon at origin and insertion.
    fibres : int
        Number of fibre lines handed back.

    Returns
    -------
    ThickSheet
    """
    nv, nu = sheet.mid.shape[:2]
    cells = np.ones((nv - 1, nu - 1), bool) if sheet.cells is None else _mend_cells(sheet.cells)
    normal = sheet.normals()
    thickness = _unfold(sheet.mid, normal, np.maximum(sheet.thickness, least_thickness(sheet)))
    thickness = np.maximum(thickness, LEAST_END_THICKNESS)
    half = 0.5 * thickness.reshape(-1)
    mid, unit = sheet.mid.reshape(-1, 3), normal.reshape(-1, 3)
    corner = np.arange(nv * nu).reshape(nv, nu)
    quads = np.stack([corner[:-1, :-1], corner[:-1, 1:], corner[1:, 1:], corner[1:, :-1]], axis=-1)[
        cells
    ]
    if sheet.sign < 0:
        quads = quads[:, ::-1]
    # The shorter diagonal keeps triangles even where fibres fan out.
    shorter = np.linalg.norm(mid[quads[:, 0]] - mid[quads[:, 2]], axis=1) <= np.linalg.norm(
        mid[quads[:, 1]] - mid[quads[:, 3]], axis=1
    )
    turned = np.where(shorter[:, None], quads, np.roll(quads, -1, axis=1))
    top = np.concatenate([turned[:, [0, 1, 2]], turned[:, [0, 2, 3]]])
    # Borders: directed edges of the superficial face used once.
    edges = np.concatenate([quads[:, [k, (k + 1) % 4]] for k in range(4)])
    key = edges[:, 0] * (nv * nu) + edges[:, 1]
    twin = edges[:, 1] * (nv * nu) + edges[:, 0]
    rim = edges[~np.isin(key, twin)]
    edge_way = mid[rim[:, 1]] - mid[rim[:, 0]]
    side = np.cross(edge_way, 0.5 * (unit[rim[:, 0]] + unit[rim[:, 1]]))
    side /= np.maximum(np.linalg.norm(side, axis=1, keepdims=True), 1e-12)
    away = np.zeros_like(mid)
    np.add.at(away, rim[:, 0], side)
    np.add.at(away, rim[:, 1], side)
    away -= (away * unit).sum(axis=1, keepdims=True) * unit
    away /= np.maximum(np.linalg.norm(away, axis=1, keepdims=True), 1e-12)

    used = np.unique(quads)
    place = np.full(nv * nu, -1)
    place[used] = np.arange(len(used))
    points = [mid[used] + half[used, None] * unit[used], mid[used] - half[used, None] * unit[used]]
    node, face = [used, used], [np.ones(len(used)), -np.ones(len(used))]
    faces = [place[top], place[top][:, ::-1] + len(used)]
    border = np.unique(rim)
    on_rim = np.full(nv * nu, -1)
    on_rim[border] = np.arange(len(border))
    levels = [place[border]]
    at = 2 * len(used)
    for k in range(1, rim_points + 1):
        angle = np.pi * k / (rim_points + 1)
        points.append(
            mid[border]
            + half[border, None] * (np.cos(angle) * unit[border] + np.sin(angle) * away[border])
        )
        node.append(border)
        face.append(np.zeros(len(border)))
        levels.append(at + np.arange(len(border)))
        at += len(border)
    levels.append(place[border] + len(used))
    i, j = on_rim[rim[:, 0]], on_rim[rim[:, 1]]
    for upper, lower in zip(levels[:-1], levels[1:]):
        faces.append(np.stack([upper[j], upper[i], lower[i]], axis=1))
        faces.append(np.stack([upper[j], lower[i], lower[j]], axis=1))

    node = np.concatenate(node)
    s = arc_length(sheet.mid)
    u = (s / np.maximum(s[:, -1:], 1e-9)).reshape(-1)
    v = np.repeat(np.linspace(0, 1, nv), nu)
    if tendon is None:
        flesh = np.zeros(nv * nu)
    elif callable(tendon):
        flesh = np.broadcast_to(np.asarray(tendon(u, v), dtype=np.float64), (nv * nu,))
    else:
        soft = 0.04
        flesh = np.maximum(
            1 - _smoothstep((u - tendon[0] + soft) / (2 * soft)) if tendon[0] > 0 else 0 * u,
            _smoothstep((u - 1 + tendon[1] + soft) / (2 * soft)) if tendon[1] > 0 else 0 * u,
        )
    return ThickSheet(
        mesh=trimesh.Trimesh(np.concatenate(points), np.concatenate(faces), process=False),
        uv=np.stack([u, v], axis=1)[node].astype(np.float32),
        tendon=np.clip(flesh[node], 0, 1).astype(np.float32),
        fibres=sheet.fibres(fibres),
        node=node,
        face=np.concatenate(face).astype(np.int8),
    )
