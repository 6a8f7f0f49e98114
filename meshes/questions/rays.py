"""Every crossing of straight lines with a large triangle mesh.

All crossings are gathered in one walk through a bounding-volume tree in double
precision. (Re-firing a first-hit ray engine skips surfaces closer together than
its restart offset, and single precision blurs layers a fraction of a millimetre
thick; both would lose thin sheets.)
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numba import njit

from meshes.drape.distance import KERNEL, LEAF_SIZE, _boxes, _build_tree

_NOTHING = 1e-12
"""Share of a direction along an axis that counts as none."""


PACKET = 16
"""So many neighbouring rays walk the tree together."""


@njit(**KERNEL)
def _volumes(ax, ay, az, bx, by, bz, cx, cy, cz, dx, dy, dz):
    """Return volume(direction, p, q) of each edge of a triangle seen from a ray's origin.

    Written so that swapping p and q gives exactly the negative.
    """
    u = dx * (cy * bz - cz * by) + dy * (cz * bx - cx * bz) + dz * (cx * by - cy * bx)
    v = dx * (ay * cz - az * cy) + dy * (az * cx - ax * cz) + dz * (ax * cy - ay * cx)
    w = dx * (by * az - bz * ay) + dy * (bz * ax - bx * az) + dz * (bx * ay - by * ax)
    return u, v, w


@njit(**KERNEL)
def _cross_all(origins, directions, reach, low, high, link, vertices, faces, order, size):
    """Find all triangles that rays cross, ``size`` rays at a time, in the order of the rays.

    So many of them walk the tree at a time: a node is opened when any of them meets it,
    and a triangle is tried with all of them in one stroke of the processor. What is found
    does not depend on ``size``, to the last bit.
    """
    n_rays = origins.shape[0]
    room = max(64, 24 * n_rays)
    ray_of = np.empty(room, np.int64)
    face_of = np.empty(room, np.int64)
    distance = np.empty(room, np.float64)
    facing = np.empty(room, np.float64)
    used = 0
    stack = np.empty(256, np.int64)
    ox, oy, oz = np.empty(size), np.empty(size), np.empty(size)
    dx, dy, dz = np.empty(size), np.empty(size), np.empty(size)
    ix, iy, iz = np.empty(size), np.empty(size), np.empty(size)
    u, v, w = np.empty(size), np.empty(size), np.empty(size)
    keep = np.empty(size)
    whose = np.empty(64 * size, np.int64)
    hit_face = np.empty(64 * size, np.int64)
    hit_at = np.empty(64 * size)
    hit_in = np.empty(64 * size)
    begin = np.empty(size + 1, np.int64)
    for first in range(0, n_rays, size):
        mine = min(size, n_rays - first)
        for k in range(size):
            r = first + min(k, mine - 1)
            ox[k], oy[k], oz[k] = origins[r, 0], origins[r, 1], origins[r, 2]
            dx[k], dy[k], dz[k] = directions[r, 0], directions[r, 1], directions[r, 2]
            # Endless where a component is zero. On a face of a box its product is undefined: then
            # comparisons below pass it over, and that axis bars no box.
            ix[k] = 1.0 / dx[k] if dx[k] != 0.0 else np.inf
            iy[k] = 1.0 / dy[k] if dy[k] != 0.0 else np.inf
            iz[k] = 1.0 / dz[k] if dz[k] != 0.0 else np.inf
        hits = 0
        stack[0] = 0
        top = 1
        while top > 0:
            top -= 1
            node = stack[top]
            lx, ly, lz = (
                np.float64(low[node, 0]),
                np.float64(low[node, 1]),
                np.float64(low[node, 2]),
            )
            hx, hy, hz = (
                np.float64(high[node, 0]),
                np.float64(high[node, 1]),
                np.float64(high[node, 2]),
            )
            met = 0.0
            for k in range(size):
                p, q = (lx - ox[k]) * ix[k], (hx - ox[k]) * ix[k]
                near = q if q < p else p
                far = p if p > q else q
                p, q = (ly - oy[k]) * iy[k], (hy - oy[k]) * iy[k]
                a = q if q < p else p
                b = p if p > q else q
                near = near if near > a else a
                far = far if far < b else b
                p, q = (lz - oz[k]) * iz[k], (hz - oz[k]) * iz[k]
                a = q if q < p else p
                b = p if p > q else q
                near = near if near > a else a
                far = far if far < b else b
                near = near if near > 0.0 else 0.0
                far = far if far < reach else reach
                keep[k] = 1.0 if near <= far + 1e-9 * (1.0 + abs(far)) else 0.0
            for k in range(size):
                met += keep[k]
            if met == 0.0:
                continue
            count = link[node, 1]
            if count == 0:
                stack[top] = link[node, 0]
                stack[top + 1] = node + 1
                top += 2
                continue
            leaf = link[node, 0]
            for i in range(leaf, leaf + count):
                a0, a1, a2 = faces[i, 0], faces[i, 1], faces[i, 2]
                pax, pay, paz = vertices[a0, 0], vertices[a0, 1], vertices[a0, 2]
                pbx, pby, pbz = vertices[a1, 0], vertices[a1, 1], vertices[a1, 2]
                pcx, pcy, pcz = vertices[a2, 0], vertices[a2, 1], vertices[a2, 2]
                for k in range(size):
                    ax, ay, az = pax - ox[k], pay - oy[k], paz - oz[k]
                    bx, by, bz = pbx - ox[k], pby - oy[k], pbz - oz[k]
                    cx, cy, cz = pcx - ox[k], pcy - oy[k], pcz - oz[k]
                    u[k], v[k], w[k] = _volumes(
                        ax, ay, az, bx, by, bz, cx, cy, cz, dx[k], dy[k], dz[k]
                    )
                    least = u[k] if u[k] < v[k] else v[k]
                    least = least if least < w[k] else w[k]
                    most = u[k] if u[k] > v[k] else v[k]
                    most = most if most > w[k] else w[k]
                    keep[k] = 1.0 if (least >= 0.0) | (most <= 0.0) else 0.0
                any_hit = 0.0
                for k in range(size):
                    any_hit += keep[k]
                if any_hit == 0.0:
                    continue
                for k in range(mine):
                    if keep[k] == 0.0:
                        continue
                    total = u[k] + v[k] + w[k]
                    if total == 0.0:
                        continue
                    ax, ay, az = pax - ox[k], pay - oy[k], paz - oz[k]
                    bx, by, bz = pbx - ox[k], pby - oy[k], pbz - oz[k]
                    cx, cy, cz = pcx - ox[k], pcy - oy[k], pcz - oz[k]
                    t = (
                        u[k] * (ax * dx[k] + ay * dy[k] + az * dz[k])
                        + v[k] * (bx * dx[k] + by * dy[k] + bz * dz[k])
                        + w[k] * (cx * dx[k] + cy * dy[k] + cz * dz[k])
                    ) / total
                    if t < 0.0 or t > reach:
                        continue
                    if hits == len(whose):
                        whose = np.concatenate((whose, whose))
                        hit_face = np.concatenate((hit_face, hit_face))
                        hit_at = np.concatenate((hit_at, hit_at))
                        hit_in = np.concatenate((hit_in, hit_in))
                    whose[hits] = k
                    hit_face[hits] = order[i]
                    hit_at[hits] = t
                    hit_in[hits] = 1.0 if total > 0.0 else -1.0
                    hits += 1
        while used + hits > room:
            ray_of = np.concatenate((ray_of, np.empty(room, np.int64)))
            face_of = np.concatenate((face_of, np.empty(room, np.int64)))
            distance = np.concatenate((distance, np.empty(room)))
            facing = np.concatenate((facing, np.empty(room)))
            room *= 2
        # In the order of their rays.
        begin[:] = 0
        for h in range(hits):
            begin[whose[h] + 1] += 1
        for k in range(size):
            begin[k + 1] += begin[k]
        for h in range(hits):
            at = used + begin[whose[h]]
            begin[whose[h]] += 1
            ray_of[at] = first + whose[h]
            face_of[at] = hit_face[h]
            distance[at] = hit_at[h]
            facing[at] = hit_in[h]
        used += hits
    return ray_of[:used].copy(), face_of[:used].copy(), distance[:used].copy(), facing[:used].copy()


@dataclass(frozen=True, slots=True, eq=False)
class Crossings:
    """All crossings of a set of rays, sorted by ray and then by distance.

    Attributes
    ----------
    ray : (n,) int
        Index of the ray.
    face : (n,) int
        Index of the crossed triangle.
    distance : (n,) float
        From the ray's origin, mm.
    entering : (n,) bool
        True where the ray goes in through an outward-facing triangle.
    """

    ray: np.ndarray
    face: np.ndarray
    distance: np.ndarray
    entering: np.ndarray


class RayIndex:
    """A triangle mesh prepared for finding every crossing of a ray.

    Parameters
    ----------
    vertices : (n, 3) float
        mm.
    faces : (m, 3) int
        Counter-clockwise seen from outside.
    """

    def __init__(self, vertices: np.ndarray, faces: np.ndarray) -> None:
        self._vertices = np.ascontiguousarray(vertices, dtype=np.float64)
        faces = np.asarray(faces)
        if len(faces) == 0:
            raise ValueError("a ray index needs at least one triangle, got none")
        order, low, high, self._link = _build_tree(*_boxes(self._vertices, faces), LEAF_SIZE)
        # In single precision, rounded outward: a box may be larger than what it holds.
        self._low = np.nextafter(low.astype(np.float32), np.float32(-np.inf))
        self._high = np.nextafter(high.astype(np.float32), np.float32(np.inf))
        self._order = order.astype(np.int32)
        # By number rather than corner by corner: a fifth of the memory for as quick a walk.
        self._faces = np.ascontiguousarray(faces[order], dtype=np.int32)

    def crossings(
        self, origins: np.ndarray, directions: np.ndarray, reach: float = np.inf
    ) -> Crossings:
        """Find every crossing ahead of the origins.

        Parameters
        ----------
        origins : (n, 3) float
            mm.
        directions : (n, 3) float
            Of any length but zero.
        reach : float
            Crossings further away than this are left out, mm.

        Returns
        -------
        Crossings
        """
        ray, face, distance, facing = self.unsorted(origins, directions, reach)
        order = np.lexsort((distance, ray))
        return Crossings(ray[order], face[order], distance[order], facing[order] > 0)

    def unsorted(
        self,
        origins: np.ndarray,
        directions: np.ndarray,
        reach: float = np.inf,
        *,
        side_by_side: bool = False,
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
        """Find the same crossings ray by ray, in no order along a ray.

        Parameters
        ----------
        origins, directions : (n, 3) float
        reach : float
        side_by_side : bool
            Rays that follow one another lie beside one another: found three times as quickly
            then, and more slowly where it is not so.

        Returns
        -------
        tuple of (n,) arrays
            Ray, face, distance (mm), and 1 where the ray goes in, -1 where it comes out.
        """
        origins = np.ascontiguousarray(np.reshape(origins, (-1, 3)), dtype=np.float64)
        directions = np.array(np.reshape(directions, (-1, 3)), dtype=np.float64)
        length = np.linalg.norm(directions, axis=1, keepdims=True)
        if np.any(length == 0) or not np.all(np.isfinite(length)):
            raise ValueError("a ray needs a direction of non-zero, finite length")
        directions /= length
        # Divided by, so small a share runs over and is lost in one of two opposite directions.
        directions[np.abs(directions) < _NOTHING] = 0.0
        mesh = (self._low, self._high, self._link, self._vertices, self._faces, self._order)
        size = PACKET if side_by_side else 1
        return _cross_all(origins, directions, float(reach), *mesh, size)
