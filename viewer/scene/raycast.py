"""The first face a ray meets, on the processor: boxes first, then triangles.

Hardware picking renders the scene again (about half a second on software GL);
this takes about a millisecond for a million triangles and needs no structure
to be rebuilt when parts are hidden.
"""

from __future__ import annotations

import numpy as np
from numba import njit


class RayTarget:
    """All parts' triangles with a box each; asks only those that are shown."""

    def __init__(self, shells: dict[str, tuple[np.ndarray, np.ndarray]]):
        """Take a mapping of id to (points (n, 3), faces (m, 3)), mm."""
        self.ids = list(shells)
        self.index = {name: i for i, name in enumerate(self.ids)}
        triangles = [np.asarray(p, np.float32)[f] for p, f in shells.values()]
        counts = [len(t) for t in triangles]
        self.starts = np.concatenate([[0], np.cumsum(counts)]).astype(np.int64)
        self.triangles = np.concatenate(triangles) if triangles else np.zeros((0, 3, 3), np.float32)
        self.low = np.array([t.min(axis=(0, 1)) for t in triangles], np.float64).reshape(-1, 3)
        self.high = np.array([t.max(axis=(0, 1)) for t in triangles], np.float64).reshape(-1, 3)

    def move(self, name: str, points: np.ndarray, faces: np.ndarray) -> None:
        """Lay one part's triangles elsewhere."""
        i = self.index[name]
        triangles = np.asarray(points, np.float32)[faces]
        self.triangles[self.starts[i] : self.starts[i + 1]] = triangles
        self.low[i], self.high[i] = triangles.min(axis=(0, 1)), triangles.max(axis=(0, 1))

    def first_hit(self, origin, direction, shown) -> tuple[str, np.ndarray, np.ndarray] | None:
        """Return (id, point, outward normal) of the nearest face among the shown parts.

        Parameters
        ----------
        origin, direction : (3,) float
            mm; the direction need not be a unit vector.
        shown : iterable of str
        """
        allowed = np.zeros(len(self.ids), np.bool_)
        for name in shown:
            index = self.index.get(name)
            if index is not None:
                allowed[index] = True
        origin = np.asarray(origin, np.float64)
        direction = np.asarray(direction, np.float64)
        direction = direction / np.linalg.norm(direction)
        face, distance, part = _nearest(
            origin, direction, self.triangles, self.starts, self.low, self.high, allowed
        )
        if face < 0:
            return None
        a, b, c = self.triangles[face].astype(np.float64)
        normal = np.cross(b - a, c - a)
        normal /= max(float(np.linalg.norm(normal)), 1e-12)
        return self.ids[part], origin + distance * direction, normal


@njit(cache=True, nogil=True)
def _nearest(origin, direction, triangles, starts, low, high, allowed):
    best = np.inf
    best_face = -1
    best_part = -1
    for part in range(len(allowed)):
        if not allowed[part]:
            continue
        enter = 0.0
        leave = best
        for axis in range(3):
            d = direction[axis]
            if abs(d) < 1e-12:
                if origin[axis] < low[part, axis] or origin[axis] > high[part, axis]:
                    leave = -1.0
                    break
            else:
                t0 = (low[part, axis] - origin[axis]) / d
                t1 = (high[part, axis] - origin[axis]) / d
                if t0 > t1:
                    t0, t1 = t1, t0
                enter = max(enter, t0)
                leave = min(leave, t1)
        if enter > leave:
            continue
        for face in range(starts[part], starts[part + 1]):
            ax = float(triangles[face, 0, 0])
            ay = float(triangles[face, 0, 1])
            az = float(triangles[face, 0, 2])
            e1x = triangles[face, 1, 0] - ax
            e1y = triangles[face, 1, 1] - ay
            e1z = triangles[face, 1, 2] - az
            e2x = triangles[face, 2, 0] - ax
            e2y = triangles[face, 2, 1] - ay
            e2z = triangles[face, 2, 2] - az
            px = direction[1] * e2z - direction[2] * e2y
            py = direction[2] * e2x - direction[0] * e2z
            pz = direction[0] * e2y - direction[1] * e2x
            det = e1x * px + e1y * py + e1z * pz
            if abs(det) < 1e-12:
                continue
            sx = origin[0] - ax
            sy = origin[1] - ay
            sz = origin[2] - az
            u = (sx * px + sy * py + sz * pz) / det
            if u < -1e-7 or u > 1.0 + 1e-7:
                continue
            qx = sy * e1z - sz * e1y
            qy = sz * e1x - sx * e1z
            qz = sx * e1y - sy * e1x
            v = (direction[0] * qx + direction[1] * qy + direction[2] * qz) / det
            if v < -1e-7 or u + v > 1.0 + 1e-7:
                continue
            t = (e2x * qx + e2y * qy + e2z * qz) / det
            if 1e-6 < t < best:
                best = t
                best_face = face
                best_part = part
    return best_face, best, best_part


SLIT_MM = 0.5
"""The halves of the body, mirrored, lie so near to the midline that no pixel shows the slit."""
SLIT_LEAN = 0.1
"""Sideways share of a sight line above which it meets a wall of the slit by itself."""


def seen_at_midline(cast, origin, direction, shown):
    """Return what a sight line meets, as the eye has it where the two halves of the body meet.

    Skin and fasciae of the two sides are parts of their own with a hair's breadth between them.
    A line exactly in the midline would run through all of these slits down to the ligaments.

    Parameters
    ----------
    cast : callable
        Of origin, direction and ``shown``: (name, point, normal) or None.
    origin, direction : array (3,)
        mm LPS; the direction is a unit vector.
    shown : collection of str
    """
    origin, direction = np.asarray(origin, float), np.asarray(direction, float)
    hit = cast(origin, direction, shown)
    place = origin if hit is None else np.asarray(hit[1])
    if abs(direction[0]) > SLIT_LEAN or abs(place[0]) > SLIT_MM:
        return hit
    beside = [cast(origin + (dx, 0.0, 0.0), direction, shown) for dx in (SLIT_MM, -SLIT_MM)]
    if None in beside:
        return hit
    far = np.inf if hit is None else float((place - origin) @ direction)
    before = [far - float((np.asarray(b[1]) - origin) @ direction) for b in beside]
    return beside[0] if min(before) > SLIT_MM else hit
