"""A signed-distance grid of everything laid so far.

The field tells a sheet how far it is from the solids under it and which way is
out. It is a guide only: proofs are made on meshes (``audit``), never here.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor

import numpy as np
import trimesh
from numba import njit

from meshes.drape.distance import KERNEL, MeshIndex, feature_normal, nearest, on_border

Outward = np.ndarray | Callable[[np.ndarray], np.ndarray] | float | None

BLOCK = 4
"""Nodes per side of the blocks that are tested against the mesh as a whole."""


@njit(**KERNEL)
def _min_solid(
    data, origin, spacing, band, first, last, low, high, link, corners, order, faces, edge_of,
    fn, en, vn,
):  # fmt: skip
    """Min-union a closed mesh into the nodes ``first`` .. ``last`` (exclusive) of the grid."""
    stack = np.empty(128, np.int32)
    nb = np.empty(3, np.int64)
    for k in range(3):
        nb[k] = (last[k] - first[k] + BLOCK - 1) // BLOCK
    # Blocks that the band round the mesh reaches.
    near = np.zeros((nb[0], nb[1], nb[2]), np.bool_)
    half = 0.5 * (BLOCK - 1) * spacing
    reach = band + np.sqrt(3.0) * half
    seed = -1
    for a in range(nb[0]):
        for b in range(nb[1]):
            for c in range(nb[2]):
                x = origin[0] + (first[0] + a * BLOCK) * spacing + half
                y = origin[1] + (first[1] + b * BLOCK) * spacing + half
                z = origin[2] + (first[2] + c * BLOCK) * spacing + half
                slot = nearest(x, y, z, reach * reach, low, high, link, corners, stack, seed)[1]
                if slot >= 0:
                    near[a, b, c] = True
                    seed = slot
    row = np.empty(last[2] - first[2])
    for i in range(first[0], last[0]):
        x = origin[0] + i * spacing
        for j in range(first[1], last[1]):
            y = origin[1] + j * spacing
            known = False
            sign = 1.0
            seed = -1
            previous = -1.0
            leading = 0
            for k in range(first[2], last[2]):
                m = k - first[2]
                row[m] = np.inf
                if not near[(i - first[0]) // BLOCK, (j - first[1]) // BLOCK, m // BLOCK]:
                    previous = -1.0
                    if known:
                        row[m] = sign * band
                    continue
                z = origin[2] + k * spacing
                # Farther than what stands there nothing changes; but the surface is never
                # passed unseen between two nodes.
                bound = min(band, max(data[i, j, k], 1.1 * spacing))
                # A node is at most one step farther from the surface than the last one.
                if previous >= 0 and previous + 1.001 * spacing < bound:
                    bound = previous + 1.001 * spacing
                d2, slot, v, w, feature = nearest(
                    x, y, z, bound * bound, low, high, link, corners, stack, seed
                )
                if slot < 0:
                    previous = -1.0
                    if known:
                        row[m] = sign * band
                    continue
                seed = slot
                t = corners[slot]
                nx, ny, nz = feature_normal(slot, feature, order, faces, edge_of, fn, en, vn)
                side = (
                    (x - t[0] - v * (t[3] - t[0]) - w * (t[6] - t[0])) * nx
                    + (y - t[1] - v * (t[4] - t[1]) - w * (t[7] - t[1])) * ny
                    + (z - t[2] - v * (t[5] - t[2]) - w * (t[8] - t[2])) * nz
                )
                sign = -1.0 if side < 0 else 1.0
                d = np.sqrt(d2)
                previous = d
                row[m] = sign * d
                if not known:
                    # Nothing lies between the row's start and here, so the sign holds there too.
                    known = True
                    leading = m
                    for q in range(leading):
                        row[q] = sign * band
            if not known:
                # The row never comes near the surface: wholly inside or wholly outside.
                z = origin[2] + first[2] * spacing
                if z < low[0, 2] or x < low[0, 0] or x > high[0, 0]:
                    continue
                if y < low[0, 1] or y > high[0, 1]:
                    continue
                d2, slot, v, w, feature = nearest(
                    x, y, z, np.inf, low, high, link, corners, stack, -1
                )
                t = corners[slot]
                nx, ny, nz = feature_normal(slot, feature, order, faces, edge_of, fn, en, vn)
                side = (
                    (x - t[0] - v * (t[3] - t[0]) - w * (t[6] - t[0])) * nx
                    + (y - t[1] - v * (t[4] - t[1]) - w * (t[7] - t[1])) * ny
                    + (z - t[2] - v * (t[5] - t[2]) - w * (t[8] - t[2])) * nz
                )
                if side >= 0:
                    continue
                for q in range(last[2] - first[2]):
                    row[q] = -band
            for m in range(last[2] - first[2]):
                if row[m] < data[i, j, first[2] + m]:
                    data[i, j, first[2] + m] = row[m]


@njit(**KERNEL)
def _min_slab(
    data, origin, spacing, band, depth, first, last, low, high, link, corners, order, faces,
    edge_of, fn, en, vn, border_edge, border_vertex,
):  # fmt: skip
    """Min-union a slab that reaches ``depth`` inward from an open, outward-facing surface."""
    stack = np.empty(128, np.int32)
    # Below the slab a little more than the slab itself: enough for a gradient there.
    reach = max(band, depth + 2.0 * spacing)
    half = 0.5 * (BLOCK - 1) * spacing
    wide = reach + np.sqrt(3.0) * half
    for a in range(first[0], last[0], BLOCK):
        for b in range(first[1], last[1], BLOCK):
            for c in range(first[2], last[2], BLOCK):
                slot = nearest(
                    origin[0] + a * spacing + half,
                    origin[1] + b * spacing + half,
                    origin[2] + c * spacing + half,
                    wide * wide, low, high, link, corners, stack, -1,
                )[1]  # fmt: skip
                if slot < 0:
                    continue
                seed = slot
                for i in range(a, min(a + BLOCK, last[0])):
                    for j in range(b, min(b + BLOCK, last[1])):
                        for k in range(c, min(c + BLOCK, last[2])):
                            x = origin[0] + i * spacing
                            y = origin[1] + j * spacing
                            z = origin[2] + k * spacing
                            d2, slot, v, w, feature = nearest(
                                x, y, z, reach * reach, low, high, link, corners, stack, seed
                            )
                            if slot < 0:
                                continue
                            seed = slot
                            d = np.sqrt(d2)
                            value = d
                            if not on_border(
                                slot, feature, order, faces, edge_of, border_edge, border_vertex
                            ):
                                t = corners[slot]
                                nx, ny, nz = feature_normal(
                                    slot, feature, order, faces, edge_of, fn, en, vn
                                )
                                side = (
                                    (x - t[0] - v * (t[3] - t[0]) - w * (t[6] - t[0])) * nx
                                    + (y - t[1] - v * (t[4] - t[1]) - w * (t[7] - t[1])) * ny
                                    + (z - t[2] - v * (t[5] - t[2]) - w * (t[8] - t[2])) * nz
                                )
                                if side < 0:
                                    value = max(-d, d - depth)
                            if value < data[i, j, k]:
                                data[i, j, k] = max(value, -band)


@njit(**KERNEL)
def _min_capsule(data, origin, spacing, band, p, q, rp, rq):
    """Min-union one capsule with radii ``rp`` at ``p`` and ``rq`` at ``q``."""
    r = max(rp, rq) + band
    first = np.empty(3, np.int64)
    last = np.empty(3, np.int64)
    length2 = 0.0
    for k in range(3):
        first[k] = max(0, int(np.floor((min(p[k], q[k]) - r - origin[k]) / spacing)))
        last[k] = min(data.shape[k], int(np.ceil((max(p[k], q[k]) + r - origin[k]) / spacing)) + 1)
        length2 += (q[k] - p[k]) ** 2
    for i in range(first[0], last[0]):
        x = origin[0] + i * spacing - p[0]
        for j in range(first[1], last[1]):
            y = origin[1] + j * spacing - p[1]
            for k in range(first[2], last[2]):
                z = origin[2] + k * spacing - p[2]
                t = 0.0
                if length2 > 0:
                    t = (x * (q[0] - p[0]) + y * (q[1] - p[1]) + z * (q[2] - p[2])) / length2
                    t = min(1.0, max(0.0, t))
                dx = x - t * (q[0] - p[0])
                dy = y - t * (q[1] - p[1])
                dz = z - t * (q[2] - p[2])
                d = np.sqrt(dx * dx + dy * dy + dz * dz) - (rp + t * (rq - rp))
                if d < data[i, j, k]:
                    data[i, j, k] = max(d, -band)


@njit(inline="always", **KERNEL)
def sample_at(data, origin, spacing, x, y, z):
    """Trilinear value at one point; points outside the grid take the border's value."""
    fx = min(max((x - origin[0]) / spacing, 0.0), data.shape[0] - 1.000001)
    fy = min(max((y - origin[1]) / spacing, 0.0), data.shape[1] - 1.000001)
    fz = min(max((z - origin[2]) / spacing, 0.0), data.shape[2] - 1.000001)
    i, j, k = int(fx), int(fy), int(fz)
    u, v, w = fx - i, fy - j, fz - k
    return (
        (data[i, j, k] * (1 - w) + data[i, j, k + 1] * w) * (1 - u) * (1 - v)
        + (data[i, j + 1, k] * (1 - w) + data[i, j + 1, k + 1] * w) * (1 - u) * v
        + (data[i + 1, j, k] * (1 - w) + data[i + 1, j, k + 1] * w) * u * (1 - v)
        + (data[i + 1, j + 1, k] * (1 - w) + data[i + 1, j + 1, k + 1] * w) * u * v
    )


@njit(inline="always", **KERNEL)
def gradient_at(data, origin, spacing, x, y, z):
    """Central difference over one cell of the trilinear value at one point."""
    h = 0.5 * spacing
    inv = 1.0 / spacing
    gx = sample_at(data, origin, spacing, x + h, y, z) - sample_at(
        data, origin, spacing, x - h, y, z
    )
    gy = sample_at(data, origin, spacing, x, y + h, z) - sample_at(
        data, origin, spacing, x, y - h, z
    )
    gz = sample_at(data, origin, spacing, x, y, z + h) - sample_at(
        data, origin, spacing, x, y, z - h
    )
    return gx * inv, gy * inv, gz * inv


@njit(**KERNEL)
def _sample(data, origin, spacing, points):
    result = np.empty(points.shape[0])
    for i in range(points.shape[0]):
        result[i] = sample_at(data, origin, spacing, points[i, 0], points[i, 1], points[i, 2])
    return result


@njit(**KERNEL)
def _gradient(data, origin, spacing, points):
    result = np.empty((points.shape[0], 3))
    for i in range(points.shape[0]):
        result[i, 0], result[i, 1], result[i, 2] = gradient_at(
            data, origin, spacing, points[i, 0], points[i, 1], points[i, 2]
        )
    return result


class Field:
    """Signed distance on a regular grid, mm, clipped to ± ``band``.

    Each solid enters by the smaller value (union). Values at nodes are exact
    for one mesh within the band; the deep inside stays ``-band``, the far
    outside ``band``, where the gradient is zero.

    Parameters
    ----------
    lower, upper : (3,) float
        Box that the grid must cover, mm.
    spacing : float
        Node distance, mm.
    band : float
        Largest distance kept, mm.

    later : bool
        True adds solids in a thread of its own while the caller goes on; whoever
        reads the field waits for them.

    Attributes
    ----------
    data : (nx, ny, nz) float32
        Indexed x, y, z.
    origin : (3,) float
        Position of ``data[0, 0, 0]``, mm.
    """

    def __init__(
        self,
        lower: np.ndarray,
        upper: np.ndarray,
        spacing: float = 3.0,
        band: float = 12.0,
        later: bool = False,
    ) -> None:
        self.origin = np.array(lower, dtype=np.float64)
        extent = np.asarray(upper, dtype=np.float64) - self.origin
        if np.any(extent <= 0):
            raise ValueError(f"field: upper must lie above lower on every axis, got {extent} mm")
        self.spacing = float(spacing)
        self.band = float(band)
        # A box that is a whole number of cells stays so, whatever the rounding of its corners.
        count = np.ceil(extent / self.spacing - 1e-6).astype(int) + 1
        self._data = np.full(np.maximum(count, 2), self.band, dtype=np.float32)
        self._later = later
        self._adder: ThreadPoolExecutor | None = None
        self._added: list[Future] = []

    @property
    def data(self) -> np.ndarray:
        """Distances, with everything that was added."""
        while self._added:
            self._added.pop(0).result()
        return self._data

    @data.setter
    def data(self, values: np.ndarray) -> None:
        self._data = values

    def __getstate__(self) -> dict:
        return {**self.__dict__, "_data": self.data, "_adder": None, "_added": []}

    def _add(self, kernel: Callable, *arguments) -> None:
        if not self._later:
            kernel(*arguments)
            return
        if self._adder is None:
            self._adder = ThreadPoolExecutor(1, thread_name_prefix="field")
        self._added.append(self._adder.submit(kernel, *arguments))

    @property
    def upper(self) -> np.ndarray:
        """(3,) position of the last node, mm."""
        return self.origin + (np.array(self._data.shape) - 1) * self.spacing

    def copy(self) -> Field:
        """An independent field with the same values."""
        twin = object.__new__(Field)
        twin.origin, twin.spacing, twin.band = self.origin.copy(), self.spacing, self.band
        twin._later, twin._adder, twin._added = self._later, None, []
        twin._data = self.data.copy()
        return twin

    def window(self, bounds: np.ndarray, margin: float) -> tuple[np.ndarray, np.ndarray]:
        """First and last (exclusive) node indices, (3,) each, of a box widened by ``margin``."""
        first = np.floor((bounds[0] - margin - self.origin) / self.spacing).astype(np.int64)
        last = np.ceil((bounds[1] + margin - self.origin) / self.spacing).astype(np.int64) + 1
        shape = np.array(self._data.shape)
        return np.clip(first, 0, shape), np.clip(last, 0, shape)

    def add_mesh(self, mesh: trimesh.Trimesh | MeshIndex) -> None:
        """Add a closed solid; a few ms to some tens of ms."""
        index = MeshIndex.of(mesh)
        first, last = self.window(index.bounds, self.band)
        if np.any(last <= first):
            return
        self._add(
            _min_solid, self._data, self.origin, self.spacing, self.band, first, last, *index.tree,
            index.order, index.faces, index.edge_of,
            index.face_normal, index.edge_normal, index.vertex_normal,
        )  # fmt: skip

    def add_sheet(self, grid: np.ndarray, depth: float = 8.0, outward: Outward = None) -> None:
        """Add a thin sheet by its superficial face, as a slab that reaches ``depth`` inward.

        A grid of 3 mm can't hold a sheet of 1 mm, and what lies right under a
        sheet is covered by it anyway. Beyond its border the sheet has no inside.

        Parameters
        ----------
        grid : (nv, nu, 3) float
            Superficial face, mm (``SheetGrid.outer()``). Rows with NaN are holes.
        depth : float
            Thickness of the slab, mm; at least two cells are used.
        outward : (3,) vector, callable, +1, -1 or None
            Which side is superficial: a direction, a function of points (n, 3)
            giving directions (n, 3), or the sign of cross(d/du, d/dv). None
            takes the side of larger field values.
        """
        grid = np.asarray(grid, dtype=np.float64)
        nv, nu = grid.shape[:2]
        corner = np.arange(nv * nu).reshape(nv, nu)
        a, b, c, d = corner[:-1, :-1], corner[:-1, 1:], corner[1:, 1:], corner[1:, :-1]
        points = grid.reshape(-1, 3)
        faces = np.concatenate(
            [np.stack([a, b, c], -1).reshape(-1, 3), np.stack([a, c, d], -1).reshape(-1, 3)]
        )
        corners = points[faces]
        cross = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
        # A fibre that ends in one shared point leaves flat triangles, which have no side.
        keep = np.isfinite(corners).all(axis=(1, 2)) & (np.linalg.norm(cross, axis=1) > 1e-6)
        faces, cross, corners = faces[keep], cross[keep], corners[keep]
        if len(faces) == 0:
            return
        centre = corners.mean(axis=1)
        if outward is None:
            unit = cross / np.linalg.norm(cross, axis=1, keepdims=True)
            h = 0.5 * self.band
            up = self.sample(centre + h * unit) - self.sample(centre - h * unit)
            sign = up.sum()
        elif np.isscalar(outward):
            sign = float(outward)
        else:
            way = outward(centre) if callable(outward) else np.asarray(outward, dtype=np.float64)
            sign = float((cross * way).sum())
        if sign < 0:
            faces = faces[:, ::-1]
        index = MeshIndex(np.nan_to_num(points), faces)
        depth = max(float(depth), 2.0 * self.spacing)
        first, last = self.window(index.bounds, max(self.band, depth + 2.0 * self.spacing))
        if np.any(last <= first):
            return
        self._add(
            _min_slab, self._data, self.origin, self.spacing, self.band, depth, first, last, *index.tree,
            index.order, index.faces, index.edge_of, index.face_normal, index.edge_normal,
            index.vertex_normal, index.border_edge, index.border_vertex,
        )  # fmt: skip

    def add_capsules(self, points: np.ndarray, radii: float | np.ndarray) -> None:
        """Add a string of capsules along a polyline.

        Parameters
        ----------
        points : (k, 3) float
            mm; one point makes a ball.
        radii : float or (k,) float
            mm, at the points.
        """
        points = np.reshape(np.asarray(points, dtype=np.float64), (-1, 3))
        radii = np.broadcast_to(np.asarray(radii, dtype=np.float64), (len(points),))
        if len(points) == 1:
            points, radii = np.repeat(points, 2, axis=0), np.repeat(radii, 2)
        for p, q, rp, rq in zip(points[:-1], points[1:], radii[:-1], radii[1:]):
            self._add(
                _min_capsule, self._data, self.origin, self.spacing, self.band, p, q,
                float(rp), float(rq),
            )  # fmt: skip

    def sample(self, points: np.ndarray) -> np.ndarray:
        """Distance at points (..., 3) by trilinear interpolation, mm, shape (...)."""
        points = np.asarray(points, dtype=np.float64)
        flat = np.ascontiguousarray(points.reshape(-1, 3))
        return _sample(self.data, self.origin, self.spacing, flat).reshape(points.shape[:-1])

    def gradient(self, points: np.ndarray) -> np.ndarray:
        """Gradient at points (..., 3); about unit length in the band, zero beyond it."""
        points = np.asarray(points, dtype=np.float64)
        flat = np.ascontiguousarray(points.reshape(-1, 3))
        return _gradient(self.data, self.origin, self.spacing, flat).reshape(points.shape)
