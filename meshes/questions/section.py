"""A flat cut through the model: closed, named regions, each point in exactly one part.

All meshes are cut as one: signed distances of all vertices, the two cut edges
of every crossing face, and loops found by following face to face. Where
regions lie in one another (a part that contains others, a nerve that pierces
a muscle), the innermost owns the place.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from numba import njit
from shapely.geometry import MultiPolygon, Polygon

from meshes.errors import PeelbackError
from meshes.model import BackModel

PLANES = ("transverse", "sagittal", "coronal")

NUDGE_MM = 1e-7
"""Vertices nearer to the plane count as just in front of it, so that no face touches at a point."""

LEAST_AREA_MM2 = 0.02
_TUBES = ("nerve", "artery", "vein")


@dataclass(frozen=True, slots=True, eq=False)
class CutPlane:
    """A plane with the picture axes on it.

    Attributes
    ----------
    origin : (3,) float
        mm LPS.
    right, up : (3,) float
        Unit vectors of the picture's axes. The viewer looks along ``cross(up, right)``.
    """

    origin: np.ndarray
    right: np.ndarray
    up: np.ndarray

    @property
    def normal(self) -> np.ndarray:
        """Unit normal, towards the viewer."""
        return np.cross(self.right, self.up)

    def flat(self, points: np.ndarray) -> np.ndarray:
        """Return (n, 2) picture coordinates of (n, 3) points, mm."""
        away = np.asarray(points, float) - self.origin
        return np.column_stack([away @ self.right, away @ self.up])


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


def cut_plane(kind: str, origin) -> CutPlane:
    """Return a plane with the reading direction of a dissection: the subject's left on the left.

    Transverse cuts are seen from the feet with the back up, as the donor lies
    prone; sagittal cuts from the subject's left with the back to the left of
    the picture; coronal cuts from behind.
    """
    origin = np.asarray(origin, float)
    axes = {
        "transverse": ((-1, 0, 0), (0, 1, 0)),
        "sagittal": ((0, -1, 0), (0, 0, 1)),
        "coronal": ((-1, 0, 0), (0, 0, 1)),
    }
    if kind not in axes:
        raise PeelbackError(f"plane must be one of {', '.join(PLANES)}, got {kind!r}")
    right, up = axes[kind]
    return CutPlane(origin, np.array(right, float), np.array(up, float))


def plane_through(origin, normal) -> CutPlane:
    """Return a plane by its normal, with the head (or else the back) upward in the picture."""
    normal = np.asarray(normal, float)
    length = float(np.linalg.norm(normal))
    if not length > 0:
        raise PeelbackError(f"normal must not be zero, got {normal.tolist()}")
    normal = normal / length
    upward = np.array([0.0, 0.0, 1.0]) if abs(normal[2]) < 0.9 else np.array([0.0, 1.0, 0.0])
    right = np.cross(upward, normal)
    right /= np.linalg.norm(right)
    return CutPlane(np.asarray(origin, float), right, np.cross(normal, right))


class Slicer:
    """The model's meshes laid out for cutting again and again."""

    def __init__(self, model: BackModel, parts=None):
        ids = list(model.parts) if parts is None else [i for i in model.parts if i in set(parts)]
        meshes = [model.parts[i].mesh for i in ids]
        self.ids = ids
        self.kinds = [model.parts[i].kind for i in ids]
        counts = [len(m.vertices) for m in meshes]
        starts = np.concatenate([[0], np.cumsum(counts)]).astype(np.int64)
        self.points = (
            np.concatenate([np.asarray(m.vertices, float) for m in meshes])
            if meshes
            else np.zeros((0, 3))
        )
        self.faces = (
            np.concatenate(
                [
                    np.asarray(m.faces, np.int32) + np.int32(s)
                    for m, s in zip(meshes, starts, strict=False)
                ]
            )
            if meshes
            else np.zeros((0, 3), np.int32)
        )
        self.owner = np.repeat(np.arange(len(ids)), [len(m.faces) for m in meshes])

    def loops(self, plane: CutPlane) -> list[tuple[int, np.ndarray]]:
        """Return (index of part, (k, 2) closed loop) pairs of the raw cut."""
        height = (self.points - plane.origin) @ plane.normal
        height = np.where(np.abs(height) < NUDGE_MM, NUDGE_MM, height)
        crossing = _crossing_faces(self.faces, height > 0)
        if not len(crossing):
            return []
        start_edge, stop_edge = _cut_edges(self.faces[crossing], height)
        edges, inverse = np.unique(np.concatenate([start_edge, stop_edge]), return_inverse=True)
        start, stop = inverse[: len(crossing)], inverse[len(crossing) :]
        low, high = np.divmod(edges, len(self.points))
        share = height[low] / (height[low] - height[high])
        places = self.points[low] + share[:, None] * (self.points[high] - self.points[low])
        flat = plane.flat(places)
        order, first = _follow(start, stop, len(edges))
        rings = np.split(order, first[1:-1])
        owners = self.owner[crossing]
        # Any face of a ring tells whose it is.
        owner_of_edge = np.empty(len(edges), np.int64)
        owner_of_edge[start] = owners
        return [(int(owner_of_edge[ring[0]]), flat[ring]) for ring in rings if len(ring) > 2]

    def cut(self, plane: CutPlane) -> list[Region]:
        """Return the regions of the cut, largest first."""
        rings: dict[int, list[np.ndarray]] = {}
        for owner, ring in self.loops(plane):
            rings.setdefault(owner, []).append(ring)
        shapes = {owner: _even_odd(loops) for owner, loops in rings.items()}
        shapes = {o: s for o, s in shapes.items() if s.area > LEAST_AREA_MM2}
        owned = _innermost(shapes, [self.kinds[o] in _TUBES for o in range(len(self.ids))])
        regions = [
            Region(self.ids[owner], _multi(shape), shape.area / 100.0)
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


def _cut_edges(faces: np.ndarray, height: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Return for each crossing face the keys of the edge going down and the edge going up."""
    count = np.int64(len(height))
    down = np.zeros(len(faces), np.int64)
    up = np.zeros(len(faces), np.int64)
    for k in range(3):
        a, b = faces[:, k].astype(np.int64), faces[:, (k + 1) % 3].astype(np.int64)
        key = np.minimum(a, b) * count + np.maximum(a, b)
        falls = (height[a] > 0) & (height[b] < 0)
        climbs = (height[a] < 0) & (height[b] > 0)
        down[falls] = key[falls]
        up[climbs] = key[climbs]
    return down, up


@njit(cache=True)
def _crossing_faces(faces, above):
    """Return the indices of faces with corners on both sides."""
    found = np.empty(len(faces), np.int64)
    used = 0
    for i in range(len(faces)):
        a = above[faces[i, 0]]
        if a != above[faces[i, 1]] or a != above[faces[i, 2]]:
            found[used] = i
            used += 1
    return found[:used]


@njit(cache=True)
def _follow(start, stop, edge_count):
    """Chain segments start -> stop into loops; returns edges in order and where loops begin."""
    following = np.full(edge_count, -1, np.int64)
    for i in range(len(start)):
        following[start[i]] = stop[i]
    seen = np.zeros(edge_count, np.bool_)
    order = np.empty(edge_count, np.int64)
    first = np.empty(edge_count + 1, np.int64)
    used = 0
    loops = 0
    for edge in range(edge_count):
        if seen[edge] or following[edge] < 0:
            continue
        first[loops] = used
        loops += 1
        at = edge
        while at >= 0 and not seen[at]:
            seen[at] = True
            order[used] = at
            used += 1
            at = following[at]
    first[loops] = used
    return order[:used], first[: loops + 1]


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
    outlines = [shapes[o] for o in order]
    tree = shapely.STRtree(outlines)
    owned = {}
    for i, owner in enumerate(order):
        shape = outlines[i]
        near = [j for j in tree.query(shape) if j < i]
        near = [j for j in near if shape.intersects(outlines[j])]
        if near:
            shape = shape.difference(shapely.union_all([outlines[j] for j in near]))
        owned[owner] = shape
    return owned


def _multi(shape) -> MultiPolygon:
    """Return only the areas of a shape, as a MultiPolygon."""
    if shape.geom_type == "Polygon":
        return MultiPolygon([shape])
    parts = [g for g in getattr(shape, "geoms", ()) if g.geom_type in ("Polygon", "MultiPolygon")]
    flat = []
    for part in parts:
        flat.extend(part.geoms if part.geom_type == "MultiPolygon" else [part])
    return MultiPolygon([p for p in flat if p.area > 0])
