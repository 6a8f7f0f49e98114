"""Long columns of muscle that are freed from what is under them and drawn aside, uncut.

Their lower ends stay, their upper ones give some millimetres along the column, and between
them they take a bow. Every place moves outward by what the bow has there, and forward or
back with what the columns slide over; breadth and thickness of the sheet are kept, and with
them the volume. What a slanting fibre would gain or lose is made up by sliding a little
along the column, worked out from the fibres themselves. What still lies in the way of the
rest presses the surface in.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numba import njit
from scipy import sparse
from scipy.ndimage import (
    distance_transform_edt,
    gaussian_filter,
    map_coordinates,
    maximum_filter1d,
)

from meshes.drape.distance import KERNEL, MeshIndex
from meshes.questions.folding.control_sheet import ControlSheet

STEP_MM = 3.0
"""Spacing of the tables, mm."""

POSES = 8
BESIDE_MM = 45.0
"""So far outward of the columns the ground is looked at."""

EVEN_MM = 16.0, 36.0
"""Over so much, across and along, the ground is evened out: flesh does not follow every rib."""

OFF_MIDLINE_MM = 8.0
"""Nearer to the midline spines stand up beside the columns, which do not lie on them."""

UNDER_MM = 0.5
"""What is to bear the columns lies at least so far under their outer face."""

MOST_SINK_MM = 3.0
CLEAR_MM, ALLOWED_MM = 0.5, 0.3
"""A point that lay clear comes no nearer to what stays; one in it goes in no deeper than so."""

LOOKED_MM = 12.0
"""Surfaces are looked for this far off: no step brings a point deeper into one."""

MOST_LIFT_MM = 5.0
PRESSES, MOST_PRESSED_MM = 3, 4.0
"""Thin tails between others give way by themselves, so far at most."""

REACH_MM = 5.0, 10.0, 5.0
"""So far about the columns, beside how far they move outward, they may meet something."""

LIFTED_MM, LIFTS = (9.0, 27.0), 3
"""What must be lifted is lifted with what lies so near to it, across and along; in rounds."""

SLIDES_MM = 9.0, 18.0
"""Spacing of the table of sliding, across and along."""

LEAN_MM = 10.0
"""At so much off the middle, leaning counts as much as sliding."""

ROUNDS = 3
MEAN_FIBRE_MM, GOOD = 200.0, 0.003
STIFF = 0.1, 0.2, 2.6
"""How much the sliding is evened out, across and along the columns, and its upper end held,
against mm of fibre."""

ROWS, COLUMN_MM = 8, 5.0
GIVES_MM = 12.0


@dataclass(frozen=True, slots=True, eq=False)
class Shift:
    """How far every place is moved, seen from behind.

    Attributes
    ----------
    origin : (2,) float
        x and z of the first node, mm.
    by : (nx, nz, 3) float
        Of the columns' middle, mm.
    deepens : (nx, nz) float
        How much the depth grows with which a point lies off the middle, as a share of it:
        where the sheet comes to lie steeper, flesh of one thickness is deeper from front to back.
    leans : (nx, nz) float
        How much further up flesh slides for each mm that it lies behind the middle.
    middle : (nx, nz) float
        y of the middle at rest, mm.
    share : float
        Of the way.
    """

    origin: np.ndarray
    by: np.ndarray
    deepens: np.ndarray
    leans: np.ndarray
    middle: np.ndarray
    share: float = 0.0

    def at(self, points: np.ndarray) -> np.ndarray:
        """Return the shift of points (n, 3), mm."""
        node = (points[:, [0, 2]] - self.origin).T / STEP_MM

        def read(table: np.ndarray) -> np.ndarray:
            return map_coordinates(table, node, order=1, mode="nearest")

        found = np.column_stack([read(self.by[..., k]) for k in range(3)])
        off = points[:, 1] - read(self.middle)
        found[:, 1] += read(self.deepens) * off
        found[:, 2] += read(self.leans) * off
        return found


@dataclass(frozen=True, slots=True, eq=False)
class AsideCarried:
    """Points that go with the columns; see ``Carried``.

    Attributes
    ----------
    points : (n, 3) float
        mm at rest.
    column : (n,) float
        0 where they stay, 1 and more within the bow.
    pressed : (count, n, 3) float or None
        What besides is pressed out of the way, at evenly spaced shares, mm.
    """

    points: np.ndarray
    column: np.ndarray
    pressed: np.ndarray | None = None

    def place(self, pose: Shift) -> np.ndarray:
        """Return the points (n, 3) for a pose, mm."""
        moved = self.points + pose.at(self.points)
        if self.pressed is not None:
            at = pose.share * (len(self.pressed) - 1)
            low = min(int(at), len(self.pressed) - 2)
            moved += self.pressed[low] + (at - low) * (self.pressed[low + 1] - self.pressed[low])
        return moved


@dataclass(frozen=True, slots=True, eq=False)
class Reeds:
    """The columns' own fibres, (n, 3) mm each."""

    lines: tuple[np.ndarray, ...]

    def lengths(self, pose: Shift) -> np.ndarray:
        """Return their lengths in a pose, mm."""
        return np.array([_length(line + pose.at(line)) for line in self.lines])


@dataclass(frozen=True, slots=True, eq=False)
class AsideFlap:
    """Columns and how they are drawn aside, left side.

    Attributes
    ----------
    sheet : ControlSheet
        Through their middle, rows along them; column 0 is the lower end of the bow.
    shifts : tuple of Shift
        Of evenly spaced shares of the way, none first.
    ends : (2,) tuple of float
        Heights between which they are moved, mm.
    reeds : Reeds
        Their own fibres.
    """

    sheet: ControlSheet
    shifts: tuple[Shift, ...]
    ends: tuple[float, float]
    reeds: Reeds

    def pose(self, share: float) -> Shift:
        """Return what carries the points at a share of the way."""
        at = float(np.clip(share, 0.0, 1.0)) * (len(self.shifts) - 1)
        low = min(int(at), len(self.shifts) - 2)
        a, b = self.shifts[low], self.shifts[low + 1]
        pairs = ((a.by, b.by), (a.deepens, b.deepens), (a.leans, b.leans))
        mixed = (x + (at - low) * (y - x) for x, y in pairs)
        return Shift(a.origin, *mixed, a.middle, float(np.clip(share, 0.0, 1.0)))

    def grid(self, share: float) -> np.ndarray:
        """Return the sheet's grid at a share of the way, (rows, columns, 3) mm."""
        nodes = self.sheet.mid.reshape(-1, 3)
        return (nodes + self.pose(share).at(nodes)).reshape(self.sheet.mid.shape)

    def carried(self, points: np.ndarray, pressed: np.ndarray | None = None) -> AsideCarried:
        """Prepare points (n, 3), mm at rest, to be carried along; see ``AsideCarried``."""
        points = np.asarray(points, float).reshape(-1, 3)
        above = np.clip(points[:, 2] - self.ends[0], 0.0, None)
        return AsideCarried(points, above / GIVES_MM, pressed)


def drawn_aside(
    own: Sequence[tuple[np.ndarray, np.ndarray]],
    fibres: Sequence[np.ndarray],
    stays: Sequence[tuple[np.ndarray, np.ndarray]],
    laid: Sequence[tuple[np.ndarray, np.ndarray]],
    ends: tuple[float, float],
    aside_mm: float,
) -> tuple[AsideFlap, list[np.ndarray]]:
    """Work out how columns are drawn aside.

    Parameters
    ----------
    own : sequence of (vertices (n, 3), faces (m, 3))
        The columns' closed surfaces, mm, left side.
    fibres : sequence of (k, m, 3) float
        Their fibre lines, mm.
    stays : sequence of (vertices, faces)
        All that they may come to lie on.
    laid : sequence of (vertices, faces)
        Flaps that lie there, over them or beside them.
    ends : (2,) tuple of float
        Heights of the lower and the upper end of the bow, mm.
    aside_mm : float
        How far the middle of the bow moves outward.

    Returns
    -------
    flap : AsideFlap
    pressed : list of (count, n, 3) float
        For the vertices of each surface, see ``AsideCarried``.
    """
    points = np.concatenate([v for v, _ in own])
    low = np.array([0.0, ends[0]])
    high = np.array([points[:, 0].max() + BESIDE_MM, ends[1]])
    count = np.ceil((high - low) / STEP_MM).astype(int) + 1
    ends = (float(low[1]), float(low[1] + STEP_MM * (count[1] - 1)))
    outer = _face(own, low, count, 1.0)
    inner = _face(own, low, count, -1.0)
    floor = _face([*stays, *laid], low, count, 1.0, _filled(outer) - UNDER_MM)
    floor[: int(OFF_MIDLINE_MM / STEP_MM)] = np.nan
    floor = _filled(floor)
    z = low[1] + STEP_MM * np.arange(count[1])
    bow = aside_mm * np.sin(np.pi * np.clip((z - ends[0]) / (ends[1] - ends[0]), 0.0, 1.0)) ** 2
    lines = [_dense(line) for group in fibres for line in np.asarray(group, float)]
    middle = gaussian_filter(0.5 * (_filled(outer) + _filled(inner)), 2.0, mode="nearest")
    none = np.zeros(tuple(count))
    shifts = [Shift(low, np.zeros((*count, 3)), none, none, middle)]
    sliding = _Sliding(lines, shifts[0])
    pressed = [np.zeros_like(points)]
    bearing = _Bearing(
        points,
        floor,
        _Stays(stays, laid, points, aside_mm),
        shifts[0],
    )
    for share in np.linspace(0.0, 1.0, POSES + 1)[1:]:
        shift = sliding.worked_out(bearing.moved(share * bow, shifts[-1]))
        shifts.append(shift)
        pressed.append(bearing.pressed(shift))
    reeds = Reeds(tuple(lines))
    borders = np.cumsum([len(v) for v, _ in own])[:-1]
    flap = AsideFlap(_sheet(outer, inner, low), tuple(shifts), ends, reeds)
    return flap, np.split(np.array(pressed), borders, axis=1)


class _Stays:
    """Closed surfaces that may not be entered, and how near to each of them points may come.

    A tail may lie in the bone that it is fixed to; that gives it no leave to enter others.

    Parameters
    ----------
    stays, laid : sequence of (vertices (n, 3), faces (m, 3))
        What is fixed; flaps that lie there and give way.
    points : (n, 3) float
        At rest, mm.
    aside_mm : float
        How far outward they may move.
    """

    def __init__(
        self,
        stays: Sequence[tuple[np.ndarray, np.ndarray]],
        laid: Sequence[tuple[np.ndarray, np.ndarray]],
        points: np.ndarray,
        aside_mm: float,
    ) -> None:
        low = points.min(axis=0) - REACH_MM[0]
        high = points.max(axis=0) + [aside_mm, 0.0, 0.0] + REACH_MM
        self._shells = []
        for k, (vertices, faces) in enumerate([*laid, *stays]):
            if np.all(vertices.max(axis=0) > low) and np.all(vertices.min(axis=0) < high):
                index = MeshIndex(vertices, faces)
                least = np.full(len(points), CLEAR_MM - ALLOWED_MM)
                near = self._near(index, points)
                least[near] = np.minimum(index.query(points[near])[0], CLEAR_MM) - ALLOWED_MM
                gives_mm = MOST_PRESSED_MM if k < len(laid) else np.inf
                self._shells.append((index, least, gives_mm))

    @staticmethod
    def _near(index: MeshIndex, points: np.ndarray) -> np.ndarray:
        low, high = index.bounds
        near = np.arange(len(points))
        # Along the body first: most shells are short that way.
        for axis in (2, 0, 1):
            at = points[near, axis]
            near = near[(at > low[axis] - CLEAR_MM) & (at < high[axis] + CLEAR_MM)]
        return near

    def short(self, points: np.ndarray) -> np.ndarray:
        """Return how much too near the moved points (n, 3) lie, mm; 0 where they are clear."""
        found = np.zeros(len(points))
        for index, least, _ in self._shells:
            near = self._near(index, points)
            if len(near):
                lack = least[near] - index.query(points[near], LOOKED_MM)[0]
                found[near] = np.maximum(found[near], lack)
        return found

    def press(self, points: np.ndarray) -> None:
        """Move points (n, 3) out until they are no nearer than they may be, in place, mm.

        What is fixed has the last word. A point that lies deeper in a flap than its own flesh
        gives way lifts the flap.
        """
        for index, least, gives_mm in self._shells:
            near = self._near(index, points)
            if len(near):
                distance, _, normal, _ = index.query(points[near], LOOKED_MM)
                short = np.clip(least[near] - distance, 0.0, None)
                short[short > gives_mm] = 0.0
                points[near] += short[:, None] * normal


class _Bearing:
    """Works out how far back or forward places move as they slide outward over the ground.

    Parameters
    ----------
    points : (n, 3) float
        Of the columns' surfaces, mm at rest.
    floor : (nx, nz) float
        y of what they lie on, mm.
    stays : _Stays
    rest : Shift
        None yet.
    """

    def __init__(self, points: np.ndarray, floor: np.ndarray, stays: _Stays, rest: Shift) -> None:
        self._points, self._rest = points, rest
        self._even = gaussian_filter(floor, np.array(EVEN_MM) / STEP_MM, mode="nearest")
        self._stays = stays
        node = np.round((points[:, [0, 2]] - rest.origin) / STEP_MM).astype(int)
        self._node = tuple(np.clip(node, 0, np.array(floor.shape) - 1).T)
        self._lift = np.zeros(floor.shape)

    def moved(self, bow: np.ndarray, before: Shift) -> Shift:
        """Return the shift for a bow (nz,), mm; it slides as the one before does."""
        at = np.indices(self._even.shape, float)
        at[0] += bow / STEP_MM
        sink = map_coordinates(self._even, at, order=1, mode="nearest") - self._even
        sink = np.maximum(sink, -MOST_SINK_MM)
        on = np.minimum(bow / STEP_MM, 1.0)
        for _ in range(LIFTS):
            shift = self._turned(bow, on * (sink + self._lift), before)
            short = self._stays.short(self._points + shift.at(self._points))
            lack = np.zeros_like(sink)
            np.maximum.at(lack, self._node, np.minimum(short, MOST_LIFT_MM))
            for axis in (0, 1):
                size = 2 * int(LIFTED_MM[axis] / STEP_MM / 2) + 1
                lack = maximum_filter1d(lack, size, axis=axis, mode="nearest")
            lack = gaussian_filter(lack, np.array(LIFTED_MM) / STEP_MM / 2, mode="nearest")
            self._lift = np.minimum(self._lift + lack, MOST_LIFT_MM)
        return self._turned(bow, on * (sink + self._lift), before)

    def pressed(self, shift: Shift) -> np.ndarray:
        """Return how far each point is pressed out of what stays, (n, 3) mm."""
        start = self._points + shift.at(self._points)
        points = start.copy()
        for _ in range(PRESSES):
            self._stays.press(points)
        by = points - start
        size = np.linalg.norm(by, axis=1, keepdims=True)
        by *= np.minimum(1.0, MOST_PRESSED_MM / np.maximum(size, 1e-9))
        return by

    def _turned(self, bow: np.ndarray, back: np.ndarray, before: Shift) -> Shift:
        """Return the shift that moves the middle back, keeping breadth and thickness."""
        middle = self._rest.middle
        steep = [
            np.hypot(1.0, np.gradient(table, STEP_MM, axis=0)) for table in (middle, middle + back)
        ]
        narrower = steep[0] / steep[1]
        gone = STEP_MM * 0.5 * (narrower[1:] + narrower[:-1] - 2.0).cumsum(axis=0)
        by = np.zeros((*middle.shape, 3))
        by[..., 0] = bow
        by[1:, :, 0] += gone
        by[..., 1], by[..., 2] = back, before.by[..., 2]
        return Shift(self._rest.origin, by, 1.0 / narrower - 1.0, before.leans, middle)


class _Sliding:
    """Works out how places slide along the columns for fibres to keep their length.

    Parameters
    ----------
    lines : sequence of (n, 3) float
        Fibres, mm.
    rest : Shift
        None yet.
    """

    def __init__(self, lines: Sequence[np.ndarray], rest: Shift) -> None:
        self._lines = lines
        count = np.array(rest.middle.shape)
        reach = STEP_MM * (count - 1)
        self._shape = tuple(np.maximum(np.ceil(reach / SLIDES_MM), 3).astype(int) + 1)
        step = reach / (np.array(self._shape) - 1)
        self._weights = []
        for line in lines:
            place = line[:, [0, 2]] - rest.origin
            weight = _bilinear(place / step, self._shape)
            off = line[:, 1] - map_coordinates(
                rest.middle, (place / STEP_MM).T, order=1, mode="nearest"
            )
            both = [weight, sparse.diags(off / LEAN_MM) @ weight]
            self._weights.append(sparse.hstack(both).tocsr())
        nodes = np.stack(np.meshgrid(*map(np.arange, count), indexing="ij"), axis=-1)
        self._fine = _bilinear(nodes.reshape(-1, 2) * STEP_MM / step, self._shape)
        self._rest = np.array([_length(line) for line in lines])
        even = _evening(self._shape)
        self._even = sparse.block_diag([even, even]).tocsr()
        free = np.zeros((2, *self._shape), bool)
        free[:, :, 1:] = True
        self._free = np.flatnonzero(free.ravel())
        self._slide = np.zeros(free.size)

    def worked_out(self, shift: Shift) -> Shift:
        """Return the shift with the sliding that it asks for; begun at the last one."""
        by = shift.by.copy()
        by[..., 2] = 0.0
        still = replace(shift, by=by, leans=np.zeros_like(shift.leans))
        moved = [line + still.at(line) for line in self._lines]
        evened = self._even[:, self._free]
        for _ in range(ROUNDS):
            rows, lack = [], []
            for line, weight in zip(moved, self._weights, strict=True):
                now = line.copy()
                now[:, 2] += weight @ self._slide
                step = np.diff(now, axis=0)
                size = np.maximum(np.linalg.norm(step, axis=1), 1e-9)
                rows.append((step[:, 2] / size) @ (weight[1:] - weight[:-1]).toarray())
                lack.append(size.sum())
            by_fibre = np.array(rows)[:, self._free]
            # All count alike, by their share of length, and the worst most.
            off = np.array(lack) / self._rest - 1.0
            scale = MEAN_FIBRE_MM / self._rest * np.hypot(1.0, off / GOOD)
            by_fibre *= scale[:, None]
            right = by_fibre.T @ (scale * (self._rest - np.array(lack)))
            right -= evened.T @ (self._even @ self._slide)
            normal = by_fibre.T @ by_fibre + (evened.T @ evened).toarray()
            self._slide[self._free] += np.linalg.solve(normal, right)
        along, lean = (self._fine @ each for each in np.split(self._slide, 2))
        by[..., 2] = along.reshape(by.shape[:2])
        return replace(still, by=by, leans=lean.reshape(by.shape[:2]) / LEAN_MM)


def _evening(shape) -> sparse.csr_matrix:
    """Return the rows that hold a table even: first differences across, second along."""
    nx, nz = shape
    across = sparse.diags([-np.ones(nx - 1), np.ones(nx - 1)], [0, 1], (nx - 1, nx))
    along = sparse.diags([np.ones(nz), -2 * np.ones(nz), np.ones(nz)], [0, 1, 2], (nz - 2, nz))
    rows = [
        STIFF[0] * sparse.kron(across, sparse.identity(nz)),
        STIFF[1] * sparse.kron(sparse.identity(nx), along),
        # Upper ends are let go no more than they need.
        STIFF[2] * sparse.kron(sparse.identity(nx), sparse.csr_matrix(([1.0], ([0], [nz - 1])))),
    ]
    return sparse.vstack(rows).tocsr()


def _bilinear(node: np.ndarray, shape) -> sparse.csr_matrix:
    """Return the weights (n, nodes) of the four nodes about places (n, 2) of a table."""
    node = np.clip(node, 0.0, np.array(shape) - 1.0)
    i = np.minimum(node.astype(int), np.array(shape) - 2)
    f = node - i
    n = np.arange(len(node))
    rows, columns, values = [], [], []
    for a in (0, 1):
        for b in (0, 1):
            rows.append(n)
            columns.append((i[:, 0] + a) * shape[1] + i[:, 1] + b)
            values.append(np.abs(1 - a - f[:, 0]) * np.abs(1 - b - f[:, 1]))
    flat = (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns)))
    return sparse.csr_matrix(flat, (len(node), shape[0] * shape[1]))


def _dense(line: np.ndarray) -> np.ndarray:
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(line, axis=0), axis=1).cumsum()])
    at = np.linspace(0.0, s[-1], max(int(s[-1] / STEP_MM), 4) + 1)
    return np.stack([np.interp(at, s, line[:, k]) for k in range(3)], axis=1)


def _length(line: np.ndarray) -> float:
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())


def _filled(table: np.ndarray) -> np.ndarray:
    """Return a table whose gaps hold the nearest known value."""
    near = distance_transform_edt(~np.isfinite(table), return_distances=False, return_indices=True)
    return table[tuple(near)]


def _face(shells, low, count, sign: float, under: np.ndarray | None = None) -> np.ndarray:
    """Return the outermost (``sign`` 1) or innermost (-1) y of surfaces over each node, else nan.

    Only of what lies forward of ``under``, where that is given.
    """
    found = np.full(tuple(count), -np.inf)
    limit = np.full(tuple(count), np.inf) if under is None else np.asarray(under, float)
    for vertices, faces in shells:
        corners = np.asarray(vertices, float)[faces]
        high = low + STEP_MM * (np.asarray(count) - 1)
        near = np.all(corners[:, :, [0, 2]].max(axis=1) >= low - STEP_MM, axis=1)
        near &= np.all(corners[:, :, [0, 2]].min(axis=1) <= high + STEP_MM, axis=1)
        if near.any():
            _rastered(np.ascontiguousarray(corners[near]), low, STEP_MM, sign, limit, found)
    found[~np.isfinite(found)] = np.nan
    return sign * found


@njit(**KERNEL)
def _rastered(corners, low, step, sign, limit, found):
    nx, nz = found.shape
    for t in range(len(corners)):
        longest = 0.0
        for a in range(3):
            b = (a + 1) % 3
            dx = corners[t, a, 0] - corners[t, b, 0]
            dz = corners[t, a, 2] - corners[t, b, 2]
            longest = max(longest, dx * dx + dz * dz)
        cuts = max(1, int(np.ceil(np.sqrt(longest) / (0.7 * step))))
        for i in range(cuts + 1):
            for j in range(cuts + 1 - i):
                u, v = i / cuts, j / cuts
                w = 1.0 - u - v
                x = u * corners[t, 0, 0] + v * corners[t, 1, 0] + w * corners[t, 2, 0]
                y = u * corners[t, 0, 1] + v * corners[t, 1, 1] + w * corners[t, 2, 1]
                z = u * corners[t, 0, 2] + v * corners[t, 1, 2] + w * corners[t, 2, 2]
                a = int(np.round((x - low[0]) / step))
                b = int(np.round((z - low[1]) / step))
                if 0 <= a < nx and 0 <= b < nz and y < limit[a, b]:
                    found[a, b] = max(found[a, b], sign * y)


def _sheet(outer: np.ndarray, inner: np.ndarray, low: np.ndarray) -> ControlSheet:
    """Return the sheet through the middle of the columns, rows from medial to lateral."""
    nx, nz = outer.shape
    middle = gaussian_filter(0.5 * (_filled(outer) + _filled(inner)), 2.0, mode="nearest")
    half = gaussian_filter(0.5 * (_filled(outer) - _filled(inner)), 2.0, mode="nearest")
    here = np.isfinite(outer)
    first = np.array([np.flatnonzero(here[:, k]).min(initial=nx - 1) for k in range(nz)])
    last = np.array([np.flatnonzero(here[:, k]).max(initial=0) for k in range(nz)])
    first, last = (gaussian_filter(a.astype(float), 3.0, mode="nearest") for a in (first, last))
    at_z = np.linspace(0.0, nz - 1.0, int((nz - 1) * STEP_MM / COLUMN_MM) + 1)
    share = np.linspace(0.05, 0.95, ROWS)[:, None]
    at_x = (1 - share) * np.interp(at_z, np.arange(nz), first) + share * np.interp(
        at_z, np.arange(nz), last
    )
    node = [at_x, np.broadcast_to(at_z, at_x.shape)]
    mid = np.stack(
        [
            low[0] + STEP_MM * node[0],
            map_coordinates(middle, node, order=1),
            low[1] + STEP_MM * node[1],
        ],
        axis=-1,
    )
    half_mm = np.maximum(map_coordinates(half, node, order=1), 1.0)
    sheet = ControlSheet(np.ascontiguousarray(mid), half_mm, 1)
    backward = float(sheet.normals()[..., 1].mean()) > 0
    return sheet if backward else ControlSheet(sheet.mid, half_mm, -1)
