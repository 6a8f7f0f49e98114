"""Thin plates with a drawn outline, and grids on which solids and plates are joined.

A plate is a height field along one axis of its frame: an outline in the other
two axes, a mid-surface over it and a thickness. Primitives of
`meshes.shapes.solid` cannot give a thin bent plate with a true outline; plates
and solids are joined on one grid of distances and contoured together.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import trimesh
from numba import njit

from meshes.shapes.contour import contour_grid, largest_piece, relax, simplify
from meshes.shapes.solid import Solid, evaluate_grid

Field = Callable[[np.ndarray, np.ndarray], np.ndarray]

_BLOCK_MM = 6.0
# Distances further from a surface than about half a block are estimates: blends stay below it.


@njit(cache=True, nogil=True, error_model="numpy")
def _polygon_distance(outline, a, b):
    """Signed distance of points (n,), (n,) to a closed polygon (m, 2), negative inside."""
    out = np.empty(a.shape[0])
    m = outline.shape[0]
    for i in range(a.shape[0]):
        x, y = a[i], b[i]
        best = 1e30
        inside = False
        k = m - 1
        for j in range(m):
            x0, y0, x1, y1 = outline[k, 0], outline[k, 1], outline[j, 0], outline[j, 1]
            ex, ey = x1 - x0, y1 - y0
            t = ((x - x0) * ex + (y - y0) * ey) / max(ex * ex + ey * ey, 1e-12)
            t = min(max(t, 0.0), 1.0)
            dx, dy = x - x0 - t * ex, y - y0 - t * ey
            best = min(best, dx * dx + dy * dy)
            if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * ex / ey:
                inside = not inside
            k = j
        out[i] = -np.sqrt(best) if inside else np.sqrt(best)
    return out


def closed_spline(points: np.ndarray, per_span: int = 6) -> np.ndarray:
    """Smooth closed polygon (n * per_span, k) through control points (n, k) (Catmull-Rom)."""
    p = np.asarray(points, float)
    before, after, later = np.roll(p, 1, 0), np.roll(p, -1, 0), np.roll(p, -2, 0)
    t = (np.arange(per_span) / per_span)[None, :, None]
    p0, p1, p2, p3 = (q[:, None, :] for q in (before, p, after, later))
    curve = 0.5 * (
        2 * p1
        + (p2 - p0) * t
        + (2 * p0 - 5 * p1 + 4 * p2 - p3) * t**2
        + (3 * p1 - p0 - 3 * p2 + p3) * t**3
    )
    return curve.reshape(-1, p.shape[1])


def open_spline(points: np.ndarray, count: int) -> np.ndarray:
    """Resample a smooth curve through points (n, k) to count points, even in length."""
    from scipy.interpolate import PchipInterpolator

    p = np.asarray(points, float)
    s = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(p, axis=0), axis=1))])
    dense = PchipInterpolator(s, p)(np.linspace(0, s[-1], 40 * len(p)))
    length = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(dense, axis=0), axis=1))])
    at = np.linspace(0, length[-1], count)
    return np.stack([np.interp(at, length, dense[:, i]) for i in range(p.shape[1])], axis=1)


class Plate:
    """A thin plate along one axis.

    Parameters
    ----------
    axis : int
        The axis (0, 1 or 2) along which it is thin; the other two, in order, are a and b.
    outline : (m, 2) float
        Closed polygon in (a, b), mm.
    middle : callable of (a, b)
        Position of the mid-surface along the axis, mm.
    thickness : callable of (a, b)
        Full thickness, mm; the rim is rounded over half of it.
    """

    def __init__(self, axis: int, outline: np.ndarray, middle: Field, thickness: Field) -> None:
        self.axis = axis
        self.across = tuple(i for i in range(3) if i != axis)
        self.outline = np.ascontiguousarray(outline, float)
        self.middle, self.thickness = middle, thickness

    def fields(self, a: np.ndarray, b: np.ndarray) -> tuple[np.ndarray, ...]:
        """Outline distance, mid-surface, half thickness and slope factor at (a, b)."""
        a, b = np.asarray(a, float), np.asarray(b, float)
        edge = _polygon_distance(self.outline, a.ravel(), b.ravel()).reshape(a.shape)
        middle = self.middle(a, b)
        h = 0.5
        slope_a = (self.middle(a + h, b) - self.middle(a - h, b)) / (2 * h)
        slope_b = (self.middle(a, b + h) - self.middle(a, b - h)) / (2 * h)
        return edge, middle, 0.5 * self.thickness(a, b), 1.0 / np.sqrt(1 + slope_a**2 + slope_b**2)

    def distance(self, points: np.ndarray) -> np.ndarray:
        """Signed distance (n,) of points (n, 3), negative inside (first order)."""
        p = np.asarray(points, float).reshape(-1, 3)
        edge, middle, half, lean = self.fields(p[:, self.across[0]], p[:, self.across[1]])
        return _rounded(edge, p[:, self.axis] - middle, half, lean)

    def on_grid(self, lower: np.ndarray, spacing: float, count: np.ndarray) -> np.ndarray:
        """Distances (nz, ny, nx) float32 at the nodes of a grid."""
        lines = [lower[i] + spacing * np.arange(count[i]) for i in range(3)]
        a, b = np.meshgrid(lines[self.across[0]], lines[self.across[1]], indexing="ij")
        fields = [f.astype(np.float32) for f in self.fields(a, b)]
        edge, middle, half, lean = (np.expand_dims(f, self.axis) for f in fields)
        shape = [1, 1, 1]
        shape[self.axis] = -1
        along = lines[self.axis].astype(np.float32).reshape(shape)
        values = _rounded(edge, along - middle, half, lean)
        return np.ascontiguousarray(values.transpose(2, 1, 0))


def _rounded(edge, height, half, lean):
    over = np.maximum(edge + half, 0)
    return np.sqrt(over * over + (height * lean) ** 2) - half


def smooth_union(a: np.ndarray, b: np.ndarray, blend: float) -> np.ndarray:
    """Join two distance arrays, melting them together over blend mm."""
    if blend <= 0:
        return np.minimum(a, b)
    h = np.maximum(blend - np.abs(a - b), 0) / blend
    return np.minimum(a, b) - h * h * (blend * 0.25)


def smooth_subtract(a: np.ndarray, b: np.ndarray, blend: float) -> np.ndarray:
    """Take b out of a, with an edge rounded over blend mm."""
    return -smooth_union(-a, b, blend)


class DistanceGrid:
    """Distances on a grid, to which plates and solids are added one after the other.

    Parameters
    ----------
    bounds : (2, 3) float
        Box, mm.
    spacing : float
        Grid step, mm.
    """

    def __init__(self, bounds: np.ndarray, spacing: float) -> None:
        bounds = np.asarray(bounds, float)
        self.lower, self.spacing = bounds[0], float(spacing)
        self.count = np.maximum(np.ceil((bounds[1] - bounds[0]) / spacing).astype(int) + 1, 4)
        self.values = np.full(tuple(self.count[::-1]), 1e3, np.float32)

    def _window(self, box):
        low = np.clip(((box[0] - self.lower) / self.spacing).astype(int), 0, self.count - 2)
        high = np.clip(((box[1] - self.lower) / self.spacing).astype(int) + 2, low + 2, self.count)
        return low, high, tuple(slice(low[i], high[i]) for i in (2, 1, 0))

    def join(self, shape: Solid | Plate, box=None, *, blend: float = 2.0, cut: bool = False):
        """Add a shape (or take it away with cut) within a box (2, 3); a solid's own by default."""
        if box is None:
            box = shape.bounds(3.0 + blend)
        low, high, window = self._window(np.asarray(box, float))
        origin = self.lower + low * self.spacing
        if isinstance(shape, Plate):
            values = shape.on_grid(origin, self.spacing, high - low)
        else:
            block = max(3, round(_BLOCK_MM / self.spacing))
            values = evaluate_grid(
                shape.program, origin, self.spacing, *map(int, high - low), block
            )
        combine = smooth_subtract if cut else smooth_union
        self.values[window] = combine(self.values[window], values, np.float32(blend))
        return self

    def mirrored(self) -> DistanceGrid:
        """The grid joined to its mirror image in x = 0, where its own box must start."""
        if abs(self.lower[0]) > 1e-9:
            raise ValueError(f"mirrored: the box must start at x = 0, got {self.lower[0]:g}")
        whole = object.__new__(DistanceGrid)
        whole.spacing = self.spacing
        whole.lower = self.lower - [self.spacing * (self.count[0] - 1), 0.0, 0.0]
        whole.values = np.concatenate([self.values[:, :, :0:-1], self.values], axis=2)
        whole.count = np.array(whole.values.shape[::-1])
        return whole

    def project(self, vertices: np.ndarray, steps: int = 2) -> np.ndarray:
        """Move vertices (n, 3) near the surface on to it, by the grid's own values."""
        p = np.array(vertices, float)
        for _ in range(steps):
            value, gradient = _sample(self.values, self.lower, self.spacing, p)
            size = np.maximum((gradient**2).sum(1), 0.2)
            p -= np.clip(value / size, -self.spacing, self.spacing)[:, None] * gradient
        return p

    def mesh(self, triangles: int, smoothing: int = 3) -> trimesh.Trimesh:
        """Closed mesh of the largest piece, of about the wanted number of triangles."""
        values = self.values
        for axis in range(3):
            edge = [slice(None)] * 3
            for index in (0, -1):
                edge[axis] = index
                values[tuple(edge)] = np.maximum(values[tuple(edge)], 0.25 * self.spacing)
        vertices, faces = contour_grid(values, self.lower, self.spacing)
        if len(faces) == 0:
            raise ValueError("DistanceGrid.mesh: nothing solid lies in the box")
        vertices, faces = largest_piece(vertices, faces)
        vertices = self.project(relax(vertices, faces, smoothing))
        vertices, faces = simplify(vertices, faces, triangles)
        return trimesh.Trimesh(vertices, faces, process=False)


@njit(cache=True, nogil=True, error_model="numpy")
def _sample(values, lower, spacing, points):
    """Trilinear value (n,) and gradient (n, 3) of a grid at points (n, 3)."""
    nz, ny, nx = values.shape
    n = points.shape[0]
    value, gradient = np.empty(n), np.empty((n, 3))
    for m in range(n):
        fx = min(max((points[m, 0] - lower[0]) / spacing, 0.0), nx - 1.001)
        fy = min(max((points[m, 1] - lower[1]) / spacing, 0.0), ny - 1.001)
        fz = min(max((points[m, 2] - lower[2]) / spacing, 0.0), nz - 1.001)
        i, j, k = int(fx), int(fy), int(fz)
        u, v, w = fx - i, fy - j, fz - k
        a00, b00 = values[k, j, i], values[k, j, i + 1]
        a10, b10 = values[k, j + 1, i], values[k, j + 1, i + 1]
        a01, b01 = values[k + 1, j, i], values[k + 1, j, i + 1]
        a11, b11 = values[k + 1, j + 1, i], values[k + 1, j + 1, i + 1]
        c00, c10 = a00 + u * (b00 - a00), a10 + u * (b10 - a10)
        c01, c11 = a01 + u * (b01 - a01), a11 + u * (b11 - a11)
        d0, d1 = c00 + v * (c10 - c00), c01 + v * (c11 - c01)
        value[m] = d0 + w * (d1 - d0)
        gx0 = (b00 - a00) + v * ((b10 - a10) - (b00 - a00))
        gx1 = (b01 - a01) + v * ((b11 - a11) - (b01 - a01))
        gradient[m, 0] = (gx0 + w * (gx1 - gx0)) / spacing
        gradient[m, 1] = ((c10 - c00) + w * ((c11 - c01) - (c10 - c00))) / spacing
        gradient[m, 2] = (d1 - d0) / spacing
    return value, gradient
