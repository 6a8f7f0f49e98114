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

from meshes.drape.distance import KERNEL, LEAF_SIZE, _build_tree

_NOTHING = 1e-12
"""Share of a direction along an axis that counts as none."""


@njit(**KERNEL)
def _cross_all(origins, directions, reach, low, high, link, vertices, faces, order):
    """Walk the tree for each ray, as far as ``reach``.

    Triangle test: the sign of the three edge volumes seen along the ray
    (Plücker coordinates). Two triangles that share an edge compute the same
    number for it but for the sign, so no ray slips through between them; a
    ray exactly through an edge counts as crossing on one rule for all.
    """
    n_rays = origins.shape[0]
    room = max(64, 32 * n_rays)
    ray_of = np.empty(room, np.int64)
    face_of = np.empty(room, np.int64)
    distance = np.empty(room, np.float64)
    facing = np.empty(room, np.float64)
    used = 0
    stack = np.empty(256, np.int64)
    for r in range(n_rays):
        ox, oy, oz = origins[r, 0], origins[r, 1], origins[r, 2]
        dx, dy, dz = directions[r, 0], directions[r, 1], directions[r, 2]
        # A zero component gives an infinite inverse; the slab test below never
        # multiplies it with zero because such a slab is decided by position.
        ix = 1.0 / dx if dx != 0.0 else np.inf
        iy = 1.0 / dy if dy != 0.0 else np.inf
        iz = 1.0 / dz if dz != 0.0 else np.inf
        stack[0] = 0
        top = 1
        while top > 0:
            top -= 1
            node = stack[top]
            near, far = 0.0, reach
            if dx == 0.0:
                if ox < low[node, 0] or ox > high[node, 0]:
                    continue
            else:
                p, q = (low[node, 0] - ox) * ix, (high[node, 0] - ox) * ix
                near, far = max(near, min(p, q)), min(far, max(p, q))
            if dy == 0.0:
                if oy < low[node, 1] or oy > high[node, 1]:
                    continue
            else:
                p, q = (low[node, 1] - oy) * iy, (high[node, 1] - oy) * iy
                near, far = max(near, min(p, q)), min(far, max(p, q))
            if dz == 0.0:
                if oz < low[node, 2] or oz > high[node, 2]:
                    continue
            else:
                p, q = (low[node, 2] - oz) * iz, (high[node, 2] - oz) * iz
                near, far = max(near, min(p, q)), min(far, max(p, q))
            if near > far + 1e-9 * (1.0 + abs(far)):
                continue
            count = link[node, 1]
            if count == 0:
                stack[top] = link[node, 0]
                stack[top + 1] = node + 1
                top += 2
                continue
            first = link[node, 0]
            for i in range(first, first + count):
                a, b, c = faces[i, 0], faces[i, 1], faces[i, 2]
                ax, ay, az = vertices[a, 0] - ox, vertices[a, 1] - oy, vertices[a, 2] - oz
                bx, by, bz = vertices[b, 0] - ox, vertices[b, 1] - oy, vertices[b, 2] - oz
                cx, cy, cz = vertices[c, 0] - ox, vertices[c, 1] - oy, vertices[c, 2] - oz
                # volume(direction, p, q) of each edge, written so that swapping
                # p and q gives exactly the negative.
                u = dx * (cy * bz - cz * by) + dy * (cz * bx - cx * bz) + dz * (cx * by - cy * bx)
                v = dx * (ay * cz - az * cy) + dy * (az * cx - ax * cz) + dz * (ax * cy - ay * cx)
                w = dx * (by * az - bz * ay) + dy * (bz * ax - bx * az) + dz * (bx * ay - by * ax)
                if (u < 0.0 or v < 0.0 or w < 0.0) and (u > 0.0 or v > 0.0 or w > 0.0):
                    continue
                total = u + v + w
                if total == 0.0:
                    continue
                t = (
                    u * (ax * dx + ay * dy + az * dz)
                    + v * (bx * dx + by * dy + bz * dz)
                    + w * (cx * dx + cy * dy + cz * dz)
                ) / total
                if t < 0.0 or t > reach:
                    continue
                if used == room:
                    room *= 2
                    bigger_i = np.empty(room, np.int64)
                    bigger_i[:used] = ray_of
                    ray_of = bigger_i
                    bigger_f = np.empty(room, np.int64)
                    bigger_f[:used] = face_of
                    face_of = bigger_f
                    bigger_t = np.empty(room, np.float64)
                    bigger_t[:used] = distance
                    distance = bigger_t
                    bigger_s = np.empty(room, np.float64)
                    bigger_s[:used] = facing
                    facing = bigger_s
                ray_of[used] = r
                face_of[used] = order[i]
                distance[used] = t
                facing[used] = 1.0 if total > 0.0 else -1.0
                used += 1
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
        a, b, c = (self._vertices[faces[:, k]] for k in range(3))
        low, high = (side(side(a, b), c) for side in (np.minimum, np.maximum))
        del a, b, c
        order, *tree = _build_tree(low, high, 0.5 * (low + high), LEAF_SIZE)
        # Copies, where the kernel returns the beginnings of larger arrays.
        low, high, self._link = (a.copy() for a in tree)
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
        self, origins: np.ndarray, directions: np.ndarray, reach: float = np.inf
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
        """Find the same crossings ray by ray, in no order along a ray.

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
        return _cross_all(
            origins,
            directions,
            float(reach),
            self._low,
            self._high,
            self._link,
            self._vertices,
            self._faces,
            self._order,
        )
