"""A flat cut through the model: closed, named regions, each point in exactly one part.

All meshes are cut as one: signed distances of all vertices, the two cut edges
of every crossing face, and loops found by following face to face. Where
regions lie in one another (a part that contains others, a nerve that pierces
a muscle), the innermost owns the place.
"""

from __future__ import annotations

import copy
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import shapely
from numba import njit
from shapely.geometry import MultiPolygon, Polygon

from meshes.model import BackModel
from meshes.questions.planes import (
    FREE,
    PLANES,
    TILT_LIMIT_DEG,
    CutPlane,
    cut_plane,
    placed_plane,
    plane_through,
)

__all__ = [
    "FREE",
    "PLANES",
    "TILT_LIMIT_DEG",
    "CutPlane",
    "Outlines",
    "Region",
    "Slicer",
    "cut_plane",
    "only_areas",
    "placed_plane",
    "plane_through",
    "section",
]

NUDGE_MM = 1e-7
"""Vertices nearer to the plane count as just in front of it, so that no face touches at a point."""

LEAST_AREA_MM2 = 0.02
_TUBES = ("nerve", "artery", "vein")


@dataclass(frozen=True, slots=True, eq=False)
class Region:
    """What the cut shows of one part.

    Attributes
    ----------
    part_id : str
    polygons : shapely.MultiPolygon
        In picture coordinates, mm; holes where something lies inside.
    area_cm2 : float
    """

    part_id: str
    polygons: MultiPolygon
    area_cm2: float


@dataclass(frozen=True, slots=True, eq=False)
class Outlines:
    """The raw cut of every part, in the order in which a painter lays them down.

    Larger parts come first, parts inside others and tubes last, so that painting
    one over the other shows each place as the innermost part's. No polygon is
    worked out: that is what keeps up with a hand that drags the plane.

    Attributes
    ----------
    plane : CutPlane
    ids : tuple of str
        Parts in painting order.
    rings : tuple of tuple of (k, 2) float
        Closed loops of each part in picture coordinates, mm; what an odd number of
        them encloses is the part.
    """

    plane: CutPlane
    ids: tuple[str, ...]
    rings: tuple[tuple[np.ndarray, ...], ...]

    def owner_at(self, place) -> str | None:
        """Return the innermost part at a (2,) place of the picture, or None."""
        x, y = float(place[0]), float(place[1])
        for part_id, rings in zip(reversed(self.ids), reversed(self.rings), strict=True):
            if _inside(rings, x, y):
                return part_id
        return None

    def fill(self) -> tuple[np.ndarray, np.ndarray]:
        """Return triangles that fill every part, and whose each is.

        Returns
        -------
        (n, 3, 2) float
            Picture coordinates, mm; counter-clockwise.
        (n,) int
            Index into ``ids``.
        """
        if not self.ids:
            return np.zeros((0, 3, 2)), np.zeros(0, np.int64)
        rings = [ring for part in self.rings for ring in part]
        return _triangles(
            np.concatenate(rings),
            np.cumsum([0] + [len(ring) for ring in rings]),
            np.repeat(np.arange(len(self.ids)), [len(part) for part in self.rings]),
        )

    def bounds(self) -> np.ndarray | None:
        """Return ((low x, low y), (high x, high y)) mm, or None when nothing is cut."""
        rings = [ring for part in self.rings for ring in part]
        if not rings:
            return None
        points = np.concatenate(rings)
        return np.array([points.min(axis=0), points.max(axis=0)])


class Slicer:
    """The model's meshes laid out for cutting again and again.

    Parameters
    ----------
    model : BackModel
    parts : iterable of str, optional
        Ids of the parts to lay out; all by default.
    """

    def __init__(self, model: BackModel, parts=None):
        ids = list(model.parts) if parts is None else [i for i in model.parts if i in set(parts)]
        chosen = [model.parts[i] for i in ids]
        self.ids = ids
        self.kinds = [model.parts[i].kind for i in ids]
        self._lay_out(
            [np.asarray(p.vertices, float) for p in chosen],
            [np.asarray(p.faces, np.int32) for p in chosen],
        )

    def _lay_out(self, points: list[np.ndarray], faces: list[np.ndarray]) -> None:
        """Lay the meshes' vertices and faces end to end."""
        self._starts = np.cumsum([0] + [len(p) for p in points]).astype(np.int64)
        self._face_starts = np.cumsum([0] + [len(f) for f in faces]).astype(np.int64)
        starts = self._starts[:-1].astype(np.int32)
        self.points = np.concatenate([np.zeros((0, 3)), *points])
        self.faces = np.concatenate(
            [np.zeros((0, 3), np.int32), *(f + s for f, s in zip(faces, starts, strict=True))]
        )
        self._low = np.array([p.min(axis=0) for p in points]).reshape(-1, 3)
        self._high = np.array([p.max(axis=0) for p in points]).reshape(-1, 3)
        self._height = np.empty(len(self.points))

    def moved(self, surfaces: Mapping[str, tuple[np.ndarray, np.ndarray]]) -> Slicer:
        """Return the same meshes with some of them elsewhere, as flaps that are folded back.

        Parameters
        ----------
        surfaces : mapping of part id to (vertices (n, 3), faces (m, 3))
            mm LPS; a closed surface in place of the part's own.
        """
        points, faces = [], []
        for i, part_id in enumerate(self.ids):
            if part_id in surfaces:
                own, own_faces = surfaces[part_id]
                points.append(np.asarray(own, float))
                faces.append(np.asarray(own_faces, np.int32))
            else:
                points.append(self.points[self._starts[i] : self._starts[i + 1]])
                mine = slice(self._face_starts[i], self._face_starts[i + 1])
                faces.append(self.faces[mine] - np.int32(self._starts[i]))
        moved = copy.copy(self)
        moved._lay_out(points, faces)
        return moved

    def loops(self, plane: CutPlane, only=None) -> list[tuple[int, np.ndarray]]:
        """Return (index of part, (k, 2) closed loop) pairs of the raw cut.

        Parameters
        ----------
        plane : CutPlane
        only : collection of str, optional
            Ids of the parts to cut; all by default.
        """
        touched = self._touched(plane, only)
        if not len(touched):
            return []
        crossing, owners = _crossing_faces(
            touched,
            self._starts,
            self._face_starts,
            self.points,
            self.faces,
            np.asarray(plane.origin, float),
            plane.normal,
            self._height,
        )
        if not len(crossing):
            return []
        flat, first, whose = _trace(
            self.faces,
            crossing,
            owners,
            self._height,
            self.points,
            np.asarray(plane.origin, float),
            np.asarray(plane.right, float),
            np.asarray(plane.up, float),
        )
        bounds = first.tolist()
        return [
            (owner, flat[a:b])
            for owner, a, b in zip(whose.tolist(), bounds[:-1], bounds[1:], strict=True)
            if b - a > 2
        ]

    def _touched(self, plane: CutPlane, only=None) -> np.ndarray:
        """Return the indices of the parts whose boxes the plane meets."""
        if not len(self.ids):
            return np.zeros(0, np.int64)
        normal = plane.normal
        middle = ((self._low + self._high) / 2 - plane.origin) @ normal
        reach = (self._high - self._low) / 2 @ np.abs(normal)
        touched = np.flatnonzero(np.abs(middle) <= reach + 2 * NUDGE_MM)
        if only is not None:
            touched = np.array([i for i in touched if self.ids[i] in only], np.int64)
        return touched

    def outlines(self, plane: CutPlane, only=None) -> Outlines:
        """Return the raw cut in painting order: quick enough for a plane that is dragged."""
        rings: dict[int, list[np.ndarray]] = {}
        for owner, ring in self.loops(plane, only):
            rings.setdefault(owner, []).append(ring)
        # Loops run so that the part lies to their left: holes take their own area away.
        areas = {owner: sum(_signed_area(ring) for ring in loops) for owner, loops in rings.items()}
        order = sorted(
            (owner for owner in rings if areas[owner] > LEAST_AREA_MM2),
            key=lambda owner: (self.kinds[owner] in _TUBES, -areas[owner], owner),
        )
        # Tubes own their place whatever their size, but among tubes the inner still wins.
        return Outlines(
            plane,
            tuple(self.ids[owner] for owner in order),
            tuple(tuple(rings[owner]) for owner in order),
        )

    def cut(self, plane: CutPlane, only=None) -> list[Region]:
        """Return the regions of the cut, largest first.

        Parameters
        ----------
        plane : CutPlane
        only : collection of str, optional
            Ids of the parts to cut; all by default.
        """
        rings: dict[int, list[np.ndarray]] = {}
        for owner, ring in self.loops(plane, only):
            rings.setdefault(owner, []).append(ring)
        shapes = {owner: _even_odd(loops) for owner, loops in rings.items()}
        shapes = {o: s for o, s in shapes.items() if s.area > LEAST_AREA_MM2}
        owned = _innermost(shapes, [kind in _TUBES for kind in self.kinds])
        regions = [
            Region(self.ids[owner], only_areas(shape), shape.area / 100.0)
            for owner, shape in owned.items()
            if shape.area > LEAST_AREA_MM2
        ]
        return sorted(regions, key=lambda region: (-region.area_cm2, region.part_id))


def section(model: BackModel, origin, normal) -> list[Region]:
    """Return the closed regions of a flat cut, largest first.

    Parameters
    ----------
    model : BackModel
    origin, normal : (3,) float
        A point of the plane and its normal, mm LPS.

    Returns
    -------
    list of Region
        No two overlap; areas in cm².
    """
    return Slicer(model).cut(plane_through(origin, normal))


@njit(cache=True)
def _crossing_faces(touched, starts, face_starts, points, faces, origin, normal, height):
    """Fill in the heights of the touched parts' vertices; return faces with corners on both sides.

    Returns the indices of the faces and of the part that each belongs to.
    """
    room = 0
    for t in range(len(touched)):
        part = touched[t]
        room += face_starts[part + 1] - face_starts[part]
    found = np.empty(room, np.int64)
    owner = np.empty(room, np.int64)
    used = 0
    for t in range(len(touched)):
        part = touched[t]
        for i in range(starts[part], starts[part + 1]):
            h = (
                (points[i, 0] - origin[0]) * normal[0]
                + (points[i, 1] - origin[1]) * normal[1]
                + (points[i, 2] - origin[2]) * normal[2]
            )
            height[i] = NUDGE_MM if abs(h) < NUDGE_MM else h
        for i in range(face_starts[part], face_starts[part + 1]):
            above = height[faces[i, 0]] > 0
            if above != (height[faces[i, 1]] > 0) or above != (height[faces[i, 2]] > 0):
                found[used] = i
                owner[used] = part
                used += 1
    return found[:used], owner[:used]


@njit(cache=True)
def _trace(faces, crossing, owners, height, points, origin, right, up):
    """Go from crossing face to crossing face round every loop of the cut.

    A face is left through the edge on which it climbs through the plane, and the
    next face is the one that comes down through that edge.

    Returns
    -------
    (n, 2) float, (loops + 1,) int, (loops,) int
        Points in picture coordinates, where each loop begins, and whose it is.
    """
    count = len(crossing)
    total = np.uint64(len(height))
    size = 16
    while size < 2 * count:
        size *= 2
    mask = np.uint64(size - 1)
    mix = np.uint64(0x9E3779B97F4A7C15)
    turn = np.uint64(29)
    slots = np.full(size, -1, np.int64)
    down = np.empty(count, np.uint64)
    up_key = np.empty(count, np.uint64)
    flat = np.empty((count, 2))
    for i in range(count):
        face = crossing[i]
        for k in range(3):
            a = faces[face, k]
            b = faces[face, (k + 1) % 3]
            if (height[a] > 0) == (height[b] > 0):
                continue
            low, high = min(a, b), max(a, b)
            key = np.uint64(low) * total + np.uint64(high)
            if height[a] < 0:
                up_key[i] = key
                continue
            down[i] = key
            share = height[low] / (height[low] - height[high])
            x = 0.0
            y = 0.0
            for axis in range(3):
                away = (
                    points[low, axis]
                    + share * (points[high, axis] - points[low, axis])
                    - origin[axis]
                )
                x += away * right[axis]
                y += away * up[axis]
            flat[i, 0], flat[i, 1] = x, y
            slot = ((key * mix) >> turn) & mask
            while slots[slot] >= 0 and down[slots[slot]] != key:
                slot = (slot + np.uint64(1)) & mask
            slots[slot] = i
    seen = np.zeros(count, np.bool_)
    order = np.empty(count, np.int64)
    first = np.empty(count + 1, np.int64)
    whose = np.empty(count, np.int64)
    used = 0
    loops = 0
    for face in range(count):
        if seen[face]:
            continue
        first[loops] = used
        whose[loops] = owners[face]
        loops += 1
        at = face
        while at >= 0 and not seen[at]:
            seen[at] = True
            order[used] = at
            used += 1
            key = up_key[at]
            slot = ((key * mix) >> turn) & mask
            while slots[slot] >= 0 and down[slots[slot]] != key:
                slot = (slot + np.uint64(1)) & mask
            at = slots[slot]
    first[loops] = used
    return flat[order[:used]], first[: loops + 1], whose[:loops]


def _signed_area(ring: np.ndarray) -> float:
    """Return the area of a (k, 2) loop, positive when it runs counter-clockwise."""
    x, y = ring[:, 0], ring[:, 1]
    return 0.5 * float(x[:-1] @ y[1:] - x[1:] @ y[:-1] + x[-1] * y[0] - x[0] * y[-1])


def _inside(rings, x: float, y: float) -> bool:
    """Return whether an odd number of loops encloses a place."""
    crossings = 0
    for ring in rings:
        if not ring[:, 1].min() <= y <= ring[:, 1].max():
            continue
        first, second = ring, np.roll(ring, -1, axis=0)
        spans = (first[:, 1] > y) != (second[:, 1] > y)
        a, b = first[spans], second[spans]
        at = a[:, 0] + (y - a[:, 1]) * (b[:, 0] - a[:, 0]) / (b[:, 1] - a[:, 1])
        crossings += int((at > x).sum())
    return crossings % 2 == 1


@njit(cache=True)
def _triangles(points, starts, part_of_ring):
    """Fill what an odd number of each part's loops enclose with triangles.

    A line sweeps upward over each part. Between two neighbouring edges that it
    crosses a trapezium stays open as long as both edges go on, so that there are
    about as many trapezia as vertices.
    """
    n_rings = len(starts) - 1
    room = 4 * len(points) + 8
    corners = np.empty((room, 3, 2))
    owner = np.empty(room, np.int64)
    used = 0
    ring = 0
    while ring < n_rings:
        part = part_of_ring[ring]
        last = ring
        while last < n_rings and part_of_ring[last] == part:
            last += 1
        # Edges from low to high; level ones bound nothing.
        size = starts[last] - starts[ring]
        edge = np.empty((size, 4))
        edges = 0
        for r in range(ring, last):
            for i in range(starts[r], starts[r + 1]):
                j = i + 1 if i + 1 < starts[r + 1] else starts[r]
                if points[i, 1] < points[j, 1]:
                    low, high = i, j
                elif points[i, 1] > points[j, 1]:
                    low, high = j, i
                else:
                    continue
                edge[edges, 0], edge[edges, 1] = points[low, 0], points[low, 1]
                edge[edges, 2], edge[edges, 3] = points[high, 0], points[high, 1]
                edges += 1
        edge = edge[:edges]
        edge = edge[np.argsort(edge[:, 1])]
        levels = np.sort(np.concatenate((edge[:, 1], edge[:, 3])))
        active = np.empty(edges, np.int64)
        at = np.empty(edges)
        count = 0
        waiting = 0
        partner = np.full(edges, -1, np.int64)  # right edge of the open trapezium, by left edge
        since = np.empty(edges)
        open_left = np.empty(edges, np.int64)
        opened = 0
        now = np.full(edges, -1, np.int64)
        for k in range(len(levels)):
            y = levels[k]
            if k > 0 and y == levels[k - 1]:
                continue
            kept = 0
            for a in range(count):
                if edge[active[a], 3] > y:
                    active[kept] = active[a]
                    kept += 1
            count = kept
            while waiting < edges and edge[waiting, 1] <= y:
                if edge[waiting, 3] > y:
                    active[count] = waiting
                    count += 1
                waiting += 1
            upper = y
            for m in range(k + 1, len(levels)):
                if levels[m] > y:
                    upper = levels[m]
                    break
            middle = 0.5 * (y + upper)
            for a in range(count):
                e = active[a]
                x = edge[e, 0] + (middle - edge[e, 1]) * (edge[e, 2] - edge[e, 0]) / (
                    edge[e, 3] - edge[e, 1]
                )
                place = a
                while place > 0 and at[place - 1] > x:
                    at[place] = at[place - 1]
                    active[place] = active[place - 1]
                    place -= 1
                at[place] = x
                active[place] = e
            for a in range(0, count - 1, 2):
                now[active[a]] = active[a + 1]
            still = 0
            for o in range(opened):
                left = open_left[o]
                right = partner[left]
                if now[left] == right:
                    open_left[still] = left
                    still += 1
                    continue
                partner[left] = -1
                below = since[left]
                quad = np.empty((4, 2))
                for c in range(4):
                    e = left if c == 0 or c == 3 else right
                    h = below if c < 2 else y
                    quad[c, 0] = edge[e, 0] + (h - edge[e, 1]) * (edge[e, 2] - edge[e, 0]) / (
                        edge[e, 3] - edge[e, 1]
                    )
                    quad[c, 1] = h
                if used + 2 > room:
                    grown = np.empty((2 * room, 3, 2))
                    grown[:used] = corners[:used]
                    corners = grown
                    more = np.empty(2 * room, np.int64)
                    more[:used] = owner[:used]
                    owner = more
                    room = 2 * room
                if quad[1, 0] > quad[0, 0]:
                    corners[used, 0], corners[used, 1] = quad[0], quad[1]
                    corners[used, 2] = quad[2]
                    owner[used] = part
                    used += 1
                if quad[2, 0] > quad[3, 0]:
                    corners[used, 0], corners[used, 1] = quad[0], quad[2]
                    corners[used, 2] = quad[3]
                    owner[used] = part
                    used += 1
            opened = still
            for a in range(0, count - 1, 2):
                left = active[a]
                if partner[left] < 0:
                    partner[left] = active[a + 1]
                    since[left] = y
                    open_left[opened] = left
                    opened += 1
                now[left] = -1
        ring = last
    return corners[:used], owner[:used]


def _even_odd(loops: list[np.ndarray]):
    """Return the area that an odd number of a part's loops enclose."""
    shapes = []
    for loop in loops:
        polygon = Polygon(loop)
        if not polygon.is_valid:
            polygon = shapely.make_valid(polygon)
        if polygon.area > 0:
            shapes.append(polygon)
    if len(shapes) == 1:
        return shapes[0]
    shapes.sort(key=lambda s: -s.area)
    total = Polygon()
    for shape in shapes:
        total = total.symmetric_difference(shape) if total.intersects(shape) else total.union(shape)
    return total


def _innermost(shapes: dict, is_tube: list[bool]) -> dict:
    """Take from each shape what belongs to tubes and to smaller shapes inside it."""
    order = sorted(shapes, key=lambda o: (not is_tube[o], shapes[o].area, o))
    outlines = np.array([shapes[o] for o in order], dtype=object)
    owned = dict(zip(order, outlines, strict=True))
    if len(order) < 2:
        return owned
    shapely.prepare(outlines)
    later, sooner = shapely.STRtree(outlines).query(outlines, predicate="intersects")
    mine = sooner < later
    later, sooner = later[mine], sooner[mine]
    if not len(later):
        return owned
    sequence = np.argsort(later, kind="stable")
    later, sooner = later[sequence], sooner[sequence]
    begins = np.flatnonzero(np.diff(later, prepend=-1))
    for a, b in zip(begins, [*begins[1:], len(later)], strict=True):
        i = later[a]
        inner = outlines[sooner[a:b]]
        taken = inner[0] if len(inner) == 1 else shapely.union_all(inner)
        owned[order[i]] = outlines[i].difference(taken)
    return owned


def only_areas(shape) -> MultiPolygon:
    """Return the areas of a shape, as a MultiPolygon."""
    if shape.geom_type == "Polygon":
        return MultiPolygon([shape])
    parts = [g for g in getattr(shape, "geoms", ()) if g.geom_type in ("Polygon", "MultiPolygon")]
    flat = []
    for part in parts:
        flat.extend(part.geoms if part.geom_type == "MultiPolygon" else [part])
    return MultiPolygon([p for p in flat if p.area > 0])
