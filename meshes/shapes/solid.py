"""Implicit solids: a list of primitives, joined or cut with soft blends.

A `Solid` is a small program: each row is one primitive and how it joins what
stands above it. Distances are exact for cones and boxes and first-order
estimates for ellipsoids, blades and prisms (good near the surface, where the
contour is taken).
"""

from __future__ import annotations

import numpy as np
from numba import njit

from meshes.shapes.halves import in_halves

_WIDTH = 24
_CONE, _ELLIPSOID, _BLADE, _PRISM, _BOX, _PLANE = range(6)
_OPERATIONS = {"union": 0, "subtract": 1, "intersect": 2}

# Row layout: 0 type, 1 operation, 2 blend radius, 3-5 bounding centre,
# 6 bounding radius, 7... parameters of the type.
_P = 7


class Solid:
    """A smooth union, difference and intersection of primitives, in mm.

    Every method adds one primitive (or a chain of them) and returns the solid.
    ``blend`` is the radius in mm over which the new primitive melts into what
    is there; ``operation`` is "union", "subtract" or "intersect".
    """

    def __init__(self) -> None:
        self._rows: list[np.ndarray] = []
        self._program: np.ndarray | None = None

    def __len__(self) -> int:
        return len(self._rows)

    def cone(self, a, b, radius_a, radius_b=None, *, blend=2.0, operation="union") -> Solid:
        """Round cone (capsule where the radii are equal) from a (3,) to b (3,)."""
        radius_b = radius_a if radius_b is None else radius_b
        a, b = _point(a), _point(b)
        row = self._row(_CONE, operation, blend)
        row[_P : _P + 8] = [*a, *b, radius_a, radius_b]
        reach = max(radius_a, radius_b) + np.linalg.norm(b - a) / 2
        return self._add(row, (a + b) / 2, reach)

    def ellipsoid(self, centre, radii, axes=None, *, blend=2.0, operation="union") -> Solid:
        """Ellipsoid with half axes radii (3,); rows of axes (3, 3) are its directions."""
        row = self._row(_ELLIPSOID, operation, blend)
        row[_P : _P + 3] = _point(centre)
        row[_P + 3 : _P + 12] = _axes(axes).ravel()
        row[_P + 12 : _P + 15] = radii
        return self._add(row, _point(centre), float(np.max(radii)))

    def blade(
        self, a, b, side, widths, thicknesses, *, blend=2.0, operation="union", power=2.0
    ) -> Solid:
        """Flattened, tapering bar from a to b with rounded ends.

        Parameters
        ----------
        a, b : (3,) float
            Ends of its axis, mm.
        side : (3,) float
            Direction of its width (made perpendicular to the axis).
        widths, thicknesses : float or (2,) float
            Half width along side and half thickness across it, at a and b, mm.
        power : float
            2 gives an elliptical cross-section, 4 a flatter plate.
        """
        a, b = _point(a), _point(b)
        widths = np.broadcast_to(widths, 2)
        thicknesses = np.broadcast_to(thicknesses, 2)
        axis = b - a
        length = np.linalg.norm(axis)
        axis = axis / length if length > 1e-9 else np.array([0.0, 0.0, 1.0])
        side = _point(side) - np.dot(_point(side), axis) * axis
        norm = np.linalg.norm(side)
        if norm < 1e-9:
            raise ValueError("blade: side must not run along the axis from a to b")
        row = self._row(_BLADE, operation, blend)
        row[_P : _P + 14] = [*a, *b, *(side / norm), *widths, *thicknesses, power]
        return self._add(row, (a + b) / 2, length / 2 + float(max(*widths, *thicknesses)) * 1.2)

    def sweep(self, points, side, widths, thicknesses, *, blend=None, operation="union") -> Solid:
        """Chain of blades along points (n, 3).

        side : (3,) or (n, 3); widths, thicknesses : float or (n,), half sizes in mm.
        ``blend`` defaults to a small radius that hides the joints.
        """
        points = np.asarray(points, float)
        count = len(points)
        sides = np.broadcast_to(np.asarray(side, float), (count, 3))
        widths = np.broadcast_to(widths, count)
        thicknesses = np.broadcast_to(thicknesses, count)
        first = 2.0 if blend is None else blend
        for i in range(count - 1):
            joint = first if i == 0 else min(0.6, 0.25 * float(min(thicknesses[i], widths[i])))
            self.blade(
                points[i],
                points[i + 1],
                (sides[i] + sides[i + 1]) / 2,
                (widths[i], widths[i + 1]),
                (thicknesses[i], thicknesses[i + 1]),
                blend=joint,
                operation=operation,
            )
        return self

    def prism(
        self,
        centre,
        half,
        axes=None,
        *,
        exponent=2.5,
        waist=0.0,
        dish=0.0,
        rounding=1.5,
        blend=2.0,
        operation="union",
    ) -> Solid:
        """Superellipse prism along its third axis.

        half : (3,) half sizes; exponent of the outline; waist narrows the middle
        by this fraction; dish sinks both end faces by this many mm at the centre.
        """
        row = self._row(_PRISM, operation, blend)
        row[_P : _P + 3] = _point(centre)
        row[_P + 3 : _P + 12] = _axes(axes).ravel()
        row[_P + 12 : _P + 15] = half
        # 24 columns hold no separate place for the prism's last numbers: pack the two small ones.
        row[_P + 15] = exponent
        row[_P + 16] = np.round(waist * 1000) + np.clip(rounding, 0, 9.99) / 10
        row[2] = blend
        row = np.append(row, dish)
        return self._add(row, _point(centre), float(np.linalg.norm(half)))

    def box(self, centre, half, axes=None, *, rounding=1.0, blend=2.0, operation="union") -> Solid:
        """Box with rounded edges; half sizes (3,) include the rounding."""
        row = self._row(_BOX, operation, blend)
        row[_P : _P + 3] = _point(centre)
        row[_P + 3 : _P + 12] = _axes(axes).ravel()
        row[_P + 12 : _P + 15] = half
        row[_P + 15] = min(rounding, float(np.min(half)))
        return self._add(row, _point(centre), float(np.linalg.norm(half)))

    def plane(self, point, normal, *, blend=0.5, operation="intersect") -> Solid:
        """Half-space behind a plane: the side that normal points away from is solid."""
        row = self._row(_PLANE, operation, blend)
        normal = _point(normal) / np.linalg.norm(normal)
        row[_P : _P + 6] = [*_point(point), *normal]
        return self._add(row, _point(point), 1e9)

    def extend(self, other: Solid) -> Solid:
        """Append another solid's program."""
        self._rows.extend(other._rows)
        self._program = None
        return self

    @property
    def program(self) -> np.ndarray:
        """(n, 25) float64: the rows as the kernels read them."""
        if self._program is None:
            self._program = np.stack(self._rows)
        return self._program

    def bounds(self, margin: float = 3.0) -> np.ndarray:
        """(2, 3) box round everything that adds material, grown by margin mm."""
        rows = [r for r in self._rows if r[1] == 0 and r[6] < 1e8]
        low = np.min([r[3:6] - r[6] - r[2] for r in rows], axis=0)
        high = np.max([r[3:6] + r[6] + r[2] for r in rows], axis=0)
        return np.stack([low - margin, high + margin])

    def distance(self, points: np.ndarray) -> np.ndarray:
        """Signed distance (n,) of points (n, 3), negative inside."""
        points = np.ascontiguousarray(points, dtype=np.float64).reshape(-1, 3)
        return _evaluate_points(self.program, points)

    def project(self, points: np.ndarray, steps: int = 8) -> np.ndarray:
        """Move points (n, 3) on to the surface along the gradient."""
        single = np.ndim(points) == 1
        p = np.array(points, dtype=np.float64).reshape(-1, 3)
        h = 0.05
        for _ in range(steps):
            d = self.distance(p)
            gradient = np.stack(
                [
                    (self.distance(p + h * e) - self.distance(p - h * e)) / (2 * h)
                    for e in np.eye(3)
                ],
                axis=1,
            )
            size2 = np.maximum((gradient**2).sum(1), 0.05)
            p -= (d / size2)[:, None] * gradient
        return p[0] if single else p

    @staticmethod
    def _row(kind: int, operation: str, blend: float) -> np.ndarray:
        if operation not in _OPERATIONS:
            raise ValueError(f"operation must be one of {list(_OPERATIONS)}, got {operation!r}")
        row = np.zeros(_WIDTH)
        row[0], row[1], row[2] = kind, _OPERATIONS[operation], blend
        return row

    def _add(self, row: np.ndarray, centre: np.ndarray, radius: float) -> Solid:
        row[3:6], row[6] = centre, radius
        if len(row) == _WIDTH:
            row = np.append(row, 0.0)
        self._rows.append(row)
        self._program = None
        return self


def _point(p) -> np.ndarray:
    return np.asarray(p, dtype=np.float64).reshape(3)


def _axes(axes) -> np.ndarray:
    return np.eye(3) if axes is None else np.asarray(axes, dtype=np.float64).reshape(3, 3)


@njit(cache=True, nogil=True, error_model="numpy")
def _primitive(row, x, y, z):
    kind = int(row[0])
    q = row[7:]
    if kind == 0:  # round cone, exact within the blend of its two spheres
        bx, by, bz = q[3] - q[0], q[4] - q[1], q[5] - q[2]
        px, py, pz = x - q[0], y - q[1], z - q[2]
        l2 = bx * bx + by * by + bz * bz
        r1, r2 = q[6], q[7]
        rr = r1 - r2
        a2 = l2 - rr * rr
        if a2 <= 1e-9:
            d1 = np.sqrt(px * px + py * py + pz * pz) - r1
            ex, ey, ez = x - q[3], y - q[4], z - q[5]
            return min(d1, np.sqrt(ex * ex + ey * ey + ez * ez) - r2)
        il2 = 1.0 / l2
        yy = px * bx + py * by + pz * bz
        zz = yy - l2
        vx, vy, vz = px * l2 - bx * yy, py * l2 - by * yy, pz * l2 - bz * yy
        x2 = vx * vx + vy * vy + vz * vz
        y2 = yy * yy * l2
        z2 = zz * zz * l2
        sign_rr = 1.0 if rr > 0 else (-1.0 if rr < 0 else 0.0)
        kk = sign_rr * rr * rr * x2
        sign_z = 1.0 if zz > 0 else -1.0
        sign_y = 1.0 if yy > 0 else -1.0
        if sign_z * a2 * z2 > kk:
            return np.sqrt(x2 + z2) * il2 - r2
        if sign_y * a2 * y2 < kk:
            return np.sqrt(x2 + y2) * il2 - r1
        return (np.sqrt(x2 * a2 * il2) + yy * rr) * il2 - r1
    if kind == 1:  # ellipsoid
        px, py, pz = x - q[0], y - q[1], z - q[2]
        u = q[3] * px + q[4] * py + q[5] * pz
        v = q[6] * px + q[7] * py + q[8] * pz
        w = q[9] * px + q[10] * py + q[11] * pz
        a, b, c = q[12], q[13], q[14]
        k0 = np.sqrt((u / a) ** 2 + (v / b) ** 2 + (w / c) ** 2)
        k1 = np.sqrt((u / (a * a)) ** 2 + (v / (b * b)) ** 2 + (w / (c * c)) ** 2)
        if k1 < 1e-12:
            return -min(a, min(b, c))
        return k0 * (k0 - 1.0) / k1
    if kind == 2:  # blade
        bx, by, bz = q[3] - q[0], q[4] - q[1], q[5] - q[2]
        px, py, pz = x - q[0], y - q[1], z - q[2]
        length = np.sqrt(bx * bx + by * by + bz * bz)
        if length < 1e-9:
            bx, by, bz, length = 0.0, 0.0, 1.0, 1e-9
        ax, ay, az = bx / length, by / length, bz / length
        along = px * ax + py * ay + pz * az
        t = min(max(along / length, 0.0), 1.0)
        over = along - t * length
        sx, sy, sz = q[6], q[7], q[8]
        s = px * sx + py * sy + pz * sz
        nx, ny, nz = ay * sz - az * sy, az * sx - ax * sz, ax * sy - ay * sx
        n = px * nx + py * ny + pz * nz
        wide = q[9] + t * (q[10] - q[9])
        thick = q[11] + t * (q[12] - q[11])
        # Ends close over about the thickness, so that a wide blade ends bluntly.
        cap = min(wide, thick)
        power = q[13]
        if power == 2.0:
            k0 = np.sqrt((s / wide) ** 2 + (n / thick) ** 2 + (over / cap) ** 2)
            k1 = np.sqrt(
                (s / (wide * wide)) ** 2 + (n / (thick * thick)) ** 2 + (over / (cap * cap)) ** 2
            )
            if k1 < 1e-12:
                return -cap
            return k0 * (k0 - 1.0) / k1
        fs, fn, fo = abs(s) / wide, abs(n) / thick, abs(over) / cap
        ps, pn, po = fs**power, fn**power, fo**power
        total = ps + pn + po
        f = total ** (1.0 / power)
        if f < 1e-9:
            return -cap
        # x ** (power - 1) as x ** power / x: powers cost most of a bone's time.
        gs = ps / (max(fs, 1e-12) * wide)
        gn = pn / (max(fn, 1e-12) * thick)
        go = po / (max(fo, 1e-12) * cap)
        g = np.sqrt(gs * gs + gn * gn + go * go) * f / total
        return (f - 1.0) / max(g, 1e-9)
    if kind == 3:  # superellipse prism
        px, py, pz = x - q[0], y - q[1], z - q[2]
        u = q[3] * px + q[4] * py + q[5] * pz
        v = q[6] * px + q[7] * py + q[8] * pz
        w = q[9] * px + q[10] * py + q[11] * pz
        a, b, h = q[12], q[13], q[14]
        power = q[15]
        packed = q[16]
        waist = np.floor(packed) / 1000.0
        rounding = (packed - np.floor(packed)) * 10.0
        dish = row[24]
        t = min(abs(w) / h, 1.0)
        shrink = 1.0 - waist * (1.0 - t * t)
        aa, bb = a * shrink, b * shrink
        fu, fv = abs(u) / aa, abs(v) / bb
        pu, pv = fu**power, fv**power
        f = (pu + pv) ** (1.0 / power)
        if f < 1e-6:
            radial = -min(aa, bb)
        else:
            gu = pu / (max(fu, 1e-12) * aa)
            gv = pv / (max(fv, 1e-12) * bb)
            g = np.sqrt(gu * gu + gv * gv) * f / (pu + pv)
            radial = (f - 1.0) / max(g, 1e-9)
        inner = min(f / 0.85, 1.0)
        axial = abs(w) - (h - dish * (1.0 - inner * inner))
        ra, rw = radial + rounding, axial + rounding
        outside = np.sqrt(max(ra, 0.0) ** 2 + max(rw, 0.0) ** 2)
        return outside + min(max(ra, rw), 0.0) - rounding
    if kind == 4:  # rounded box
        px, py, pz = x - q[0], y - q[1], z - q[2]
        r = q[15]
        u = abs(q[3] * px + q[4] * py + q[5] * pz) - q[12] + r
        v = abs(q[6] * px + q[7] * py + q[8] * pz) - q[13] + r
        w = abs(q[9] * px + q[10] * py + q[11] * pz) - q[14] + r
        outside = np.sqrt(max(u, 0.0) ** 2 + max(v, 0.0) ** 2 + max(w, 0.0) ** 2)
        return outside + min(max(u, max(v, w)), 0.0) - r
    # half-space
    return (x - q[0]) * q[3] + (y - q[1]) * q[4] + (z - q[2]) * q[5]


@njit(cache=True, nogil=True, error_model="numpy")
def _value(program, x, y, z):
    d = 1e3
    for i in range(program.shape[0]):
        row = program[i]
        operation = int(row[1])
        k = row[2]
        dx, dy, dz = x - row[3], y - row[4], z - row[5]
        away = np.sqrt(dx * dx + dy * dy + dz * dz) - row[6]
        # `away` bounds the primitive's distance from below: rows that cannot matter are skipped.
        if operation == 0:
            if away > 0.0 and away > d + k:
                continue
            p = _primitive(row, x, y, z)
            if k > 0.0:
                h = max(k - abs(d - p), 0.0) / k
                d = min(d, p) - h * h * k * 0.25
            else:
                d = min(d, p)
        elif operation == 1:
            if away > 0.0 and -away < d - k:
                continue
            p = -_primitive(row, x, y, z)
            if k > 0.0:
                h = max(k - abs(d - p), 0.0) / k
                d = max(d, p) + h * h * k * 0.25
            else:
                d = max(d, p)
        else:
            p = _primitive(row, x, y, z)
            if k > 0.0:
                h = max(k - abs(d - p), 0.0) / k
                d = max(d, p) + h * h * k * 0.25
            else:
                d = max(d, p)
    return d


@njit(cache=True, nogil=True, error_model="numpy")
def _evaluate_points(program, points):
    out = np.empty(points.shape[0])
    for i in range(points.shape[0]):
        out[i] = _value(program, points[i, 0], points[i, 1], points[i, 2])
    return out


@njit(cache=True, nogil=True, error_model="numpy")
def _rows_near(program, x, y, z, radius, d, out):
    """Copy into ``out`` the rows that can matter within ``radius`` of a place; how many.

    ``d`` is the solid's distance there. What is cut away or limits the solid always
    counts; what adds to it counts unless it lies beyond all that the distance can
    reach within the radius, blends included.
    """
    blend = 0.0
    for i in range(program.shape[0]):
        blend = max(blend, program[i, 2])
    most = d + _STEEPEST * radius + 2.0 * blend
    count = 0
    for i in range(program.shape[0]):
        if program[i, 1] == 0.0:
            dx, dy, dz = x - program[i, 3], y - program[i, 4], z - program[i, 5]
            far = most + radius + program[i, 6]
            if far < 0.0 or dx * dx + dy * dy + dz * dz > far * far:
                continue
        out[count] = program[i]
        count += 1
    return count


_STEEPEST = 1.7
"""How much faster than the way an estimated distance may change."""

_SUPER = 4
"""Blocks along the edge of the larger block for which rows are chosen first."""


def evaluate_grid(
    program: np.ndarray, lower: np.ndarray, spacing: float, nx: int, ny: int, nz: int, block: int
) -> np.ndarray:
    """Distance on a grid, exact only near the surface.

    Blocks whose centre lies further from the surface than they reach are
    filled with the centre's value: only their sign counts. Within a block only
    the rows near it are looked at.

    Parameters
    ----------
    program : (n, 25) float64
    lower : (3,) float64
    spacing : float
    nx, ny, nz : int
    block : int
        Edge of a block in nodes.

    Returns
    -------
    (nz, ny, nx) float32
    """
    out = np.empty((nz, ny, nx), np.float32)
    large = _SUPER * block

    def slabs(first: int, last: int) -> None:
        _evaluate_slabs(out, program, lower, spacing, block, first * large, last * large)

    in_halves(slabs, -(-nz // large), 2)
    return out


@njit(cache=True, nogil=True, error_model="numpy")
def _evaluate_slabs(out, program, lower, spacing, block, first, last):
    """Fill the slabs from ``first`` to ``last`` (exclusive) of a grid."""
    nz, ny, nx = out.shape
    wide = np.empty_like(program)
    close = np.empty_like(program)
    large = _SUPER * block
    radius = 0.5 * np.sqrt(3.0) * block * spacing
    reach = radius * _STEEPEST + spacing
    large_radius = 0.5 * np.sqrt(3.0) * large * spacing
    for k2 in range(first, min(last, nz), large):
        for j2 in range(0, ny, large):
            for i2 in range(0, nx, large):
                kn, jn, in_ = min(k2 + large, nz), min(j2 + large, ny), min(i2 + large, nx)
                xc = lower[0] + spacing * 0.5 * (i2 + in_ - 1)
                yc = lower[1] + spacing * 0.5 * (j2 + jn - 1)
                zc = lower[2] + spacing * 0.5 * (k2 + kn - 1)
                d = _value(program, xc, yc, zc)
                if abs(d) > large_radius * _STEEPEST + spacing:
                    out[k2:kn, j2:jn, i2:in_] = d
                    continue
                many = wide[: _rows_near(program, xc, yc, zc, large_radius, d, wide)]
                for k0 in range(k2, kn, block):
                    k1 = min(k0 + block, kn)
                    zc = lower[2] + spacing * 0.5 * (k0 + k1 - 1)
                    for j0 in range(j2, jn, block):
                        j1 = min(j0 + block, jn)
                        yc = lower[1] + spacing * 0.5 * (j0 + j1 - 1)
                        for i0 in range(i2, in_, block):
                            i1 = min(i0 + block, in_)
                            xc = lower[0] + spacing * 0.5 * (i0 + i1 - 1)
                            d = _value(many, xc, yc, zc)
                            if abs(d) > reach:
                                out[k0:k1, j0:j1, i0:i1] = d
                                continue
                            few = close[: _rows_near(many, xc, yc, zc, radius, d, close)]
                            for k in range(k0, k1):
                                z = lower[2] + spacing * k
                                for j in range(j0, j1):
                                    y = lower[1] + spacing * j
                                    for i in range(i0, i1):
                                        out[k, j, i] = _value(few, lower[0] + spacing * i, y, z)
