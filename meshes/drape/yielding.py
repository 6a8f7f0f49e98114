"""The last parting of finished parts: where two overlap, the softer gives way.

Each part is laid clear of what was laid before it, on grids and triangles of its own;
what contour, decimation and untangling leave of one part in another is taken away
here, on the finished meshes, by the rule they are judged by. A part keeps its
triangles, and moves nowhere so far that it would cross itself.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace
from itertools import repeat

import numpy as np
import trimesh
from numba import njit
from scipy.spatial import cKDTree

from meshes.contacts import Place, declared_places, exempt
from meshes.drape.audit import crossing_box, self_intersections
from meshes.drape.distance import KERNEL, MeshIndex, feature_normal, nearest
from meshes.drape.resolve import (
    _EVERYWHERE,
    _carry_along,
    _longest,
    _neighbour_mean,
    _surface_samples,
)
from meshes.drape.several import crossing_boxes
from meshes.model import Contact, Part, mirror_points, other_side

BORNE_MM = 0.4
"""Overlap that is left alone: what is judged is half a millimetre."""

LEFT_MM = 0.15
"""Overlap that remains where one gave way."""

_SAMPLE_MM = 2.0
_REACH_MM = 2.5
_BULGE_MM = 3.0
_LONGEST_MM = 1.5
"""Push in one round."""

_THICK_MM = 2.0
"""Thickness beyond which the far face of a part takes no part in a shift."""

HARDNESS = {
    "bone": 0,
    "disc": 1,
    "cartilage": 1,
    "ligament": 2,
    "canal": 3,
    "nerve": 4,
    "artery": 4,
    "vein": 4,
    "tendon": 5,
    "fascia": 5,
    "muscle": 6,
    "skin": 7,
    "context": 8,
}
"""The lower number stays, the higher gives way; bone never does."""

_SOFTEST = ("epidural_fat",)


@dataclass(eq=False)
class _Thing:
    """A part under way: where its surface is now."""

    part: Part
    order: int
    index: MeshIndex
    twin: MeshIndex | None = None
    news: MeshIndex | None = None
    news_twin: MeshIndex | None = None
    corner: np.ndarray = field(default_factory=lambda: np.zeros((0, 3), int))
    points: np.ndarray | None = None

    @property
    def rank(self) -> tuple[int, int]:
        """Greater gives way to smaller."""
        soft = 9 if self.part.entry in _SOFTEST else HARDNESS.get(self.part.kind, 6)
        return soft, self.order

    @property
    def firm(self) -> bool:
        """Whether it stays whatever lies in it."""
        return self.part.kind in ("bone", "disc", "cartilage")

    def samples(self) -> np.ndarray:
        """Test points, (n, 3) mm, by height; their corners are kept beside them."""
        if self.points is None:
            index = self.index
            corner, _, points = _surface_samples(
                index.faces,
                index.edge_of,
                len(index.edges),
                index.vertices,
                _SAMPLE_MM,
                *_EVERYWHERE,
            )
            order = np.argsort(points[:, 2])
            self.corner, self.points = corner[order], points[order]
        return self.points

    def mirrored(self) -> MeshIndex:
        """Index of the twin on the other side."""
        if self.twin is None:
            self.twin = MeshIndex(mirror_points(self.index.vertices), self.index.faces[:, ::-1])
        return self.twin

    def mirrored_news(self) -> MeshIndex:
        """Index of the moved triangles on the other side."""
        if self.news_twin is None:
            self.news_twin = MeshIndex(mirror_points(self.news.vertices), self.news.faces[:, ::-1])
        return self.news_twin

    def become(self, vertices: np.ndarray) -> tuple:
        """Take new places for the vertices; returns what :meth:`go_back` needs."""
        before = (self.index, self.twin, self.corner, self.points)
        faces = self.index.faces
        moved = np.any(vertices != self.index.vertices, axis=1)
        self.news = MeshIndex(vertices, faces[moved[faces].any(axis=1)])
        self.index = MeshIndex(vertices, faces)
        self.twin = self.points = self.news_twin = None
        return before

    def go_back(self, before: tuple) -> None:
        """Undo :meth:`become`."""
        self.news = self.news_twin = None
        self.index, self.twin, self.corner, self.points = before


@dataclass(frozen=True, slots=True, eq=False)
class _Stab:
    """Points of one thing that lie in another."""

    corner: np.ndarray
    face: np.ndarray
    depth: np.ndarray
    normal: np.ndarray


@dataclass(frozen=True, slots=True, eq=False)
class _Overlap:
    """How two things lie in each other; both None when they are apart as they should."""

    one: _Stab | None = None
    two: _Stab | None = None

    @property
    def excess(self) -> float:
        """Deepest point beyond what is borne, mm."""
        deepest = [float(s.depth.max()) - BORNE_MM for s in (self.one, self.two) if s is not None]
        return max(deepest, default=0.0)


_APART = _Overlap()

_Pair = tuple[int, int, bool]
"""One thing, another, and whether the other is seen in the mirror."""

_WAYS = ("dent", "shift", "dent the harder", "shift the harder", "dent both")
"""What is tried on a pair, one after the other."""


def part_overlapping(
    parts: Mapping[str, Part],
    contacts: Iterable[Contact],
    indexes: Mapping[str, MeshIndex] | None = None,
    *,
    rounds: int = 30,
    threads: int = 2,
) -> dict[str, trimesh.Trimesh]:
    """Push softer parts out of harder ones, but for the places where contact is declared.

    Parameters
    ----------
    parts : mapping of str to Part
        Left and median ones; the right side is their mirror image and counts as well.
    contacts : iterable of Contact
        Declared ones (left and median).
    indexes : mapping of str to MeshIndex or None
        Those at hand already.
    rounds : int
        Most rounds; stops when all is apart.
    threads : int

    Returns
    -------
    dict of str to trimesh.Trimesh
        The moved ones, same triangles.
    """
    places = _places_of_both_sides(parts, contacts)
    at_hand = indexes or {}
    with ThreadPoolExecutor(threads) as pool:
        made = pool.map(
            lambda p: at_hand.get(p.id) or MeshIndex(p.mesh.vertices, p.mesh.faces), parts.values()
        )
        things = [
            _Thing(p, n, i) for n, (p, i) in enumerate(zip(parts.values(), made, strict=True))
        ]

        overlaps: dict[_Pair, _Overlap] = {}

        def measured(pairs: Iterable[_Pair], news: Iterable = repeat(None)) -> dict:
            pairs = list(pairs)
            found = pool.map(
                lambda pair, new: _measure(things, pair, places, overlaps, new), pairs, news
            )
            return dict(zip(pairs, found, strict=True))

        first = _crossing(things, _meeting(things), pool)
        overlaps.update(
            (p, o) for p, o in measured(first, first.values()).items() if o is not _APART
        )
        way: dict[_Pair, int] = {}
        moved: set[int] = set()
        since = False
        for _ in range(rounds):
            pushes: dict[int, list[_Push]] = defaultdict(list)
            givers: dict[int, list[_Pair]] = defaultdict(list)
            for pair, overlap in overlaps.items():
                if overlap.excess <= 0:
                    continue
                way.setdefault(pair, 0)
                while way[pair] < len(_WAYS):
                    asked = _ask(things, pair, overlap, _WAYS[way[pair]], pushes)
                    if asked:
                        for k in asked:
                            givers[k].append(pair)
                        break
                    way[pair] += 1
            if not pushes:
                stuck = [p for p, overlap in overlaps.items() if overlap.excess > 0]
                if not stuck or not since:
                    break
                # What lies around a pair that found no way has moved: it tries them all again.
                way.update(dict.fromkeys(stuck, 0))
                since = False
                continue
            moving = sorted(pushes)
            goals = pool.map(_moved, [things[k] for k in moving], [pushes[k] for k in moving])
            before = {}
            for k, goal in zip(moving, list(goals), strict=True):
                if goal is None:
                    for pair in givers[k]:
                        way[pair] += 1
                else:
                    before[k] = things[k].become(goal)
            near = _near_change(things, set(before), overlaps)
            after = measured(near, near.values())
            worse = _worse(before, overlaps, after)
            for k in worse:
                things[k].go_back(before.pop(k))
                for pair in givers[k]:
                    way[pair] += 1
            # A pair of which one went back and the other stayed moved is neither as it
            # was nor as it was measured.
            again = [p for p in after if (p[0] in worse or p[1] in worse)]
            mixed = [p for p in again if p[0] in before or p[1] in before]
            for pair in again:
                after.pop(pair)
            after.update(measured(mixed))
            for pair, overlap in after.items():
                if overlap is _APART:
                    overlaps.pop(pair, None)
                else:
                    overlaps[pair] = overlap
            moved |= set(before)
            since |= bool(before)
    return {
        things[k].part.id: trimesh.Trimesh(
            things[k].index.vertices, things[k].index.faces, process=False
        )
        for k in sorted(moved)
    }


def _places_of_both_sides(
    parts: Mapping[str, Part], contacts: Iterable[Contact]
) -> dict[tuple[str, str], list[Place]]:
    """Declared places by pair of ids, mirrored ones too."""
    places = declared_places(parts, contacts)
    for (a, b), found in list(places.items()):
        mirrored = (other_side(a), other_side(b))
        if mirrored not in places:
            places[mirrored] = [
                replace(
                    p, contact=Contact(*mirrored, p.contact.kind, mirror_points(p.contact.place))
                )
                for p in found
            ]
    return places


def _worse(before: Iterable[int], old: Mapping[_Pair, _Overlap], new) -> list[int]:
    """Return those of the moved things whose overlaps did not get less by moving."""
    sums = {k: [0.0, 0.0] for k in before}
    for column, overlaps in enumerate((old, new)):
        for pair, overlap in overlaps.items():
            for k in set(pair[:2]):
                if k in sums:
                    sums[k][column] += overlap.excess
    return [k for k, (was, now) in sums.items() if now > 0.85 * was]


def _meeting(things: list[_Thing]) -> list[_Pair]:
    """Pairs whose boxes meet: (one, other, whether the other is seen in the mirror)."""
    boxes = np.array([t.index.bounds for t in things])
    left = _left(things)
    found = set()
    for k, box in enumerate(boxes):
        found |= _partners(left, boxes, k, box)
    return sorted(found)


def _left(things: list[_Thing]) -> list[bool]:
    return [t.part.side == "left" for t in things]


def _partners(left: list[bool], boxes: np.ndarray, k: int, region: np.ndarray) -> set[_Pair]:
    """Pairs of a thing with those whose box meets a region of it.

    Of a mirrored pair the second is a left part: left against right stands once, and
    median against right; a median part and its own twin are one and the same.
    """
    found = set()
    for mirror, box in ((False, region), (True, _in_mirror(region))):
        meet = ((boxes[:, 0] <= box[1]) & (boxes[:, 1] >= box[0])).all(axis=1)
        for other in np.flatnonzero(meet).tolist():
            one, two = min(k, other), max(k, other)
            if not mirror:
                if one != two:
                    found.add((one, two, False))
            elif left[two]:
                found.add((one, two, True))
            elif left[one]:
                found.add((two, one, True))
    return found


def _crossing(
    things: list[_Thing], pairs: Iterable[_Pair], pool: ThreadPoolExecutor
) -> dict[_Pair, np.ndarray]:
    """Those of the pairs whose surfaces meet, and the box (2, 3) of where; firm ones stay out."""
    wanted = [p for p in pairs if not (things[p[0]].firm and things[p[1]].firm)]
    seen = sorted({p[1] for p in wanted if p[2]})
    list(pool.map(lambda k: things[k].mirrored(), seen))
    others = [things[p[1]].mirrored() if p[2] else things[p[1]].index for p in wanted]
    meet, boxes = crossing_boxes([things[p[0]].index for p in wanted], others)
    return {p: box for p, met, box in zip(wanted, meet.tolist(), boxes, strict=True) if met}


def _in_mirror(box: np.ndarray) -> np.ndarray:
    """The mirror image of a box (2, 3)."""
    low, high = box
    return np.array([[-high[0], low[1], low[2]], [-low[0], high[1], high[2]]])


def _near_change(
    things: list[_Thing], changed: set[int], overlaps: Mapping[_Pair, _Overlap]
) -> dict[_Pair, tuple[bool, bool] | None]:
    """Pairs to be measured again: of which of the two only the news count, None when all does."""
    boxes = np.array([t.index.bounds for t in things])
    left = _left(things)
    found: dict[_Pair, tuple[bool, bool] | None] = {}
    for k in changed:
        for pair in _partners(left, boxes, k, things[k].news.bounds):
            found[pair] = (pair[0] in changed, pair[1] in changed)
    for pair, overlap in overlaps.items():
        if overlap.excess > 0 and (pair[0] in changed or pair[1] in changed):
            found[pair] = None
    return found


def _measure(
    things: list[_Thing],
    pair: _Pair,
    places,
    known: Mapping[_Pair, _Overlap],
    news: tuple[bool, bool] | np.ndarray | None = None,
) -> _Overlap:
    """How the first lies in the second, and the second in the first.

    ``news`` tells of which of the two only the triangles that moved last are looked at; it
    may be the box (2, 3) in which the surfaces are known to meet.
    """
    one, two, mirror = things[pair[0]], things[pair[1]], pair[2]
    if one.firm and two.firm:
        return _APART
    index = two.mirrored() if mirror else two.index
    a, b = one.part.id, other_side(two.part.id) if mirror else two.part.id
    declared = places.get((a, b), ())
    if any(p.contact.kind == "contain" for p in declared):
        return _APART
    boxes = []
    if news is None:
        boxes.append(crossing_box(one.index, index))
    elif isinstance(news, np.ndarray):
        boxes.append(news)
    else:
        of_two = two.mirrored_news() if mirror and news[1] else two.news
        if pair in known:
            # They touched before: what moved may lie deeper without crossing anew.
            boxes += [one.news.bounds] if news[0] else []
            boxes += [of_two.bounds] if news[1] else []
        else:
            boxes += [crossing_box(one.news, index)] if news[0] else []
            boxes += [crossing_box(one.index, of_two)] if news[1] else []
    boxes = [box for box in boxes if box is not None]
    if not boxes:
        return known.get(pair, _APART) if news is not None else _APART
    # A shallow overlap bulges little beyond the line where the surfaces cross.
    box = np.array(
        [np.min([box[0] for box in boxes], axis=0), np.max([box[1] for box in boxes], axis=0)]
    ) + [[-_BULGE_MM], [_BULGE_MM]]
    points = two.samples()
    return _Overlap(
        _stab(one.samples(), one, index, declared, box),
        _stab(mirror_points(points) if mirror else points, two, one.index, declared, box),
    )


@njit(**KERNEL)
def _deep_points(
    points, first, last, box_low, box_high, reach, left, borne, low, high, link, corners, order,
    faces, edge_of, fn, en, vn,
):  # fmt: skip
    """Those of the points in a box that lie deeper than ``left`` in a mesh.

    Returns their numbers, distances, unit normals and closest faces; none when not one
    lies deeper than ``borne``.
    """
    most = max(last - first, 0)
    number = np.empty(most, np.int64)
    distance = np.empty(most)
    normal = np.empty((most, 3))
    face = np.empty(most, np.int64)
    stack = np.empty(128, np.int32)
    seed = -1
    count = 0
    deepest = 0.0
    for i in range(first, last):
        x, y, z = points[i, 0], points[i, 1], points[i, 2]
        if not (x > box_low[0] and x < box_high[0] and y > box_low[1] and y < box_high[1]):
            continue
        d2, slot, v, w, feature = nearest(
            x, y, z, reach * reach, low, high, link, corners, stack, seed
        )
        if slot < 0:
            continue
        seed = slot
        t = corners[slot]
        nx, ny, nz = feature_normal(slot, feature, order, faces, edge_of, fn, en, vn)
        side = (
            (x - t[0] - v * (t[3] - t[0]) - w * (t[6] - t[0])) * nx
            + (y - t[1] - v * (t[4] - t[1]) - w * (t[7] - t[1])) * ny
            + (z - t[2] - v * (t[5] - t[2]) - w * (t[8] - t[2])) * nz
        )
        d = np.sqrt(d2)
        if side >= 0 or d <= left:
            continue
        length = np.sqrt(nx * nx + ny * ny + nz * nz)
        number[count], distance[count], face[count] = i, -d, order[slot]
        normal[count, 0], normal[count, 1], normal[count, 2] = (
            nx / length, ny / length, nz / length,
        )  # fmt: skip
        deepest = max(deepest, d)
        count += 1
    if deepest < borne:
        count = 0
    return (
        number[:count].copy(),
        distance[:count].copy(),
        normal[:count].copy(),
        face[:count].copy(),
    )


def _stab(
    points: np.ndarray, owner: _Thing, other: MeshIndex, declared, box: np.ndarray
) -> _Stab | None:
    low, high = np.maximum(other.bounds[0], box[0]), np.minimum(other.bounds[1], box[1])
    first, last = np.searchsorted(points[:, 2], (low[2], high[2]))
    near, distance, normal, face = _deep_points(
        points, first, last, low, high, _REACH_MM, LEFT_MM, BORNE_MM, *other.tree, other.order,
        other.faces, other.edge_of, other.face_normal, other.edge_normal, other.vertex_normal,
    )  # fmt: skip
    if len(near) == 0:
        return None
    deep = np.arange(len(near))
    deep = deep[~exempt(points[near[deep]], -distance[deep], declared)]
    if len(deep) == 0 or distance[deep].min() > -BORNE_MM:
        return None
    return _Stab(owner.corner[near[deep]], face[deep], -distance[deep], normal[deep])


_Push = tuple[np.ndarray, np.ndarray, bool]
"""Corners (n, 3) to be moved, vectors (n, 3), and whether the whole wall goes along."""


def _ask(things, pair: _Pair, overlap: _Overlap, how: str, pushes) -> set[int]:
    """Add what a pair asks of its parts to their pushes; returns who was asked."""
    first, second, mirror = pair
    softer, harder = (
        (first, second) if things[first].rank > things[second].rank else (second, first)
    )
    if how == "dent both":
        asked = {first: 0.55, second: 0.55}
    else:
        asked = {harder if "harder" in how else softer: 1.0}
    if first == second:
        asked = {first: 0.55}
    asked = {k: share for k, share in asked.items() if not things[k].firm}
    whole = how.startswith("shift")
    for stab, inner, outer in ((overlap.one, first, second), (overlap.two, second, first)):
        if stab is None:
            continue
        push = (1.05 * stab.depth - LEFT_MM)[:, None] * stab.normal
        for k, corner, sign in (
            (inner, stab.corner, 1.0),
            (outer, things[outer].index.faces[stab.face], -1.0),
        ):
            if k not in asked:
                continue
            # The second thing was looked at in the mirror; what it is asked is turned back.
            seen_in_mirror = mirror and (sign > 0) == (stab is overlap.two)
            vector = mirror_points(push) if seen_in_mirror else push
            pushes[k].append((corner, sign * asked[k] * vector, whole))
    return set(asked)


def _moved(thing: _Thing, pushes: list[_Push]) -> np.ndarray | None:
    """New places of a thing's vertices; None when it can't move without crossing itself."""
    start, faces = thing.index.vertices, thing.index.faces
    move = np.zeros_like(start)
    for whole in (False, True):
        chosen = [(c, v) for c, v, w in pushes if w == whole]
        if not chosen:
            continue
        corner = np.concatenate([c for c, _ in chosen])
        vector = np.concatenate([v for _, v in chosen])
        size = np.linalg.norm(vector, axis=1, keepdims=True)
        vector = vector * np.minimum(1.0, _LONGEST_MM / np.maximum(size, 1e-12))
        found = _longest(len(start), corner.reshape(-1), np.repeat(vector, 3, axis=0))
        if whole:
            found = _carry_along(start, found, 2.5 * _thickness(start, faces))
        longer = np.linalg.norm(found, axis=1) > np.linalg.norm(move, axis=1)
        move = np.where(longer[:, None], found, move)
    mean = _neighbour_mean(faces, len(start))
    for _ in range(2):
        around = mean @ move
        longer = np.linalg.norm(around, axis=1) > np.linalg.norm(move, axis=1)
        move = np.where(longer[:, None], around, move)
    return _free(start, move, faces)


def _thickness(vertices: np.ndarray, faces: np.ndarray) -> float:
    """Mean thickness of a sheet, or radius of a tube: 2 volume / surface, mm, 2 at most."""
    corners = vertices[faces] - vertices[0]
    cross_ = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    volume = abs(float(np.einsum("ij,ij->", corners[:, 0], cross_))) / 6.0
    area = 0.5 * float(np.linalg.norm(cross_, axis=1).sum())
    return min(2.0 * volume / max(area, 1e-9), _THICK_MM)


def _free(start: np.ndarray, move: np.ndarray, faces: np.ndarray) -> np.ndarray | None:
    """Move vertices as far as the surface stays free of crossings; None when nowhere."""
    size = np.linalg.norm(move, axis=1)
    active = size > 1e-4
    if not active.any():
        return None
    tree = cKDTree(start[active])
    beside = np.isfinite(tree.query(start, distance_upper_bound=2.0 + 2.0 * size.max())[0])
    near = faces[beside[faces].any(axis=1)]
    known = _crossings(start, near)
    share = np.ones(len(start))
    for turn in range(8):
        goal = start + share[:, None] * move
        bad = _crossings(goal, near) - known
        if not bad:
            return goal
        touched = np.unique(near[np.array(sorted(bad)).reshape(-1)])
        share[touched] *= 0.45 if turn < 4 else 0.0
        around = np.unique(near[np.isin(near, touched).any(axis=1)])
        share[around] *= 0.8 if turn < 5 else 0.0
    return None


def _crossings(vertices: np.ndarray, faces: np.ndarray) -> set[tuple[int, int]]:
    return set(map(tuple, self_intersections(MeshIndex(vertices, faces)).tolist()))
