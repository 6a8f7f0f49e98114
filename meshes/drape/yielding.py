"""The last parting of finished parts: where two overlap, the softer gives way.

Each part is laid clear of what was laid before it, on grids and triangles of its own;
what contour, decimation and untangling leave of one part in another is taken away
here, on the finished meshes, by the rule they are judged by. A part keeps its
triangles, unless a place is stuck and gets smaller ones, and moves nowhere so far that it would
cross itself.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace

import numpy as np
import trimesh
from scipy.sparse import csr_matrix
from scipy.spatial import cKDTree

from meshes.contacts import Place, declared_places, within
from meshes.drape.audit import moved_intersections
from meshes.drape.distance import MeshIndex
from meshes.drape.finer import split_edges
from meshes.drape.immersion import Surface, immersions
from meshes.drape.pairing import boxes_meeting
from meshes.drape.resolve import (
    _carry_along,
    _longest,
    _neighbour_mean,
)
from meshes.drape.several import Triangles, crossing_boxes
from meshes.model import Contact, Part, mirror_points, other_side
from meshes.shapes.neighbours import least_of_piece

BORNE_MM = 0.4
"""Overlap that is left alone: what is judged is half a millimetre."""

LEFT_MM = 0.15
"""Overlap that remains where one gave way."""

_SAMPLE_MM = 2.0
_REACH_MM = 6.0
_LONGEST_MM = 1.5
"""Push in one round."""

_FREEING = 12
"""Turns in which a surface that would cross itself is moved less."""

_SAME_MM = 5.0
"""A patch this close to one of the round before goes on where that one stood."""

_GAIN = 0.97
"""A move stays where it leaves no more than this share of what overlapped there."""

_ENOUGH = 0.85
"""A way out is left for the next where it leaves more than this share."""

_PASSED_ON = 0.5
"""What an overlap with something softer weighs against one with something harder."""

_FINE_MM = 3.0
"""Edges shorter than this are not halved where a place is stuck."""

_ROUND_STUCK_MM = 1.5
"""How far round a stuck place triangles are made smaller."""

_STUCK_MM = 0.05
"""Excess over what is borne from which a place that is stuck counts."""

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
    surface: Surface
    twin: Surface | None = None
    news: Triangles | None = None
    news_twin: Triangles | None = None
    _mean: csr_matrix | None = None

    @property
    def index(self) -> MeshIndex:
        """Exact distances to it as it is now."""
        return self.surface.index

    @property
    def rank(self) -> tuple[int, int]:
        """Greater gives way to smaller."""
        soft = 9 if self.part.entry in _SOFTEST else HARDNESS.get(self.part.kind, 6)
        return soft, self.order

    @property
    def firm(self) -> bool:
        """Whether it stays whatever lies in it."""
        return self.part.kind in ("bone", "disc", "cartilage")

    @property
    def mean(self) -> csr_matrix:
        """Takes the mean of the neighbours of each vertex."""
        if self._mean is None:
            self._mean = _neighbour_mean(self.index.faces, len(self.index.vertices))
        return self._mean

    def mirrored(self) -> Surface:
        """The twin on the other side."""
        if self.twin is None:
            self.twin = self.surface.moved(self.index.mirrored())
        return self.twin

    def mirrored_news(self) -> Triangles:
        """The moved triangles on the other side."""
        if self.news_twin is None:
            self.news_twin = self.news.mirrored()
        return self.news_twin

    def become(self, vertices: np.ndarray) -> tuple:
        """Take new places for the vertices; returns what :meth:`go_back` needs."""
        before = (self.surface, self.twin)
        faces = self.index.faces
        moved = np.any(vertices != self.index.vertices, axis=1)
        self.news = Triangles(vertices[faces[moved[faces].any(axis=1)]].reshape(-1, 9))
        self.surface = self.surface.moved(self.index.moved(vertices))
        self.twin = self.news_twin = None
        return before

    def go_back(self, before: tuple) -> None:
        """Undo :meth:`become`."""
        self.news = self.news_twin = None
        self.surface, self.twin = before

    def split(self, chosen: np.ndarray) -> bool:
        """Halve the longer edges of the chosen (n_faces,) triangles; False when none is long.

        The surface stays where it is; it only gets corners that can move.
        """
        finer = split_edges(self.index.vertices, self.index.faces, chosen, _FINE_MM)
        if finer is None:
            return False
        vertices, faces, ends = finer
        self.surface, self.twin = Surface(MeshIndex(vertices, faces)), None
        self.news = self.news_twin = self._mean = None

        def carried(values: np.ndarray | None) -> np.ndarray | None:
            if values is None:
                return None
            return np.concatenate([values, values[ends].mean(axis=1, dtype=values.dtype)])

        self.part = replace(
            self.part,
            mesh=trimesh.Trimesh(vertices, faces, process=False),
            uv=carried(self.part.uv),
            tendon=carried(self.part.tendon),
        )
        return True


@dataclass(frozen=True, slots=True, eq=False)
class _Stab:
    """Points of one thing that lie in another."""

    corner: np.ndarray
    face: np.ndarray
    point: np.ndarray
    depth: np.ndarray
    normal: np.ndarray

    def some(self, chosen: np.ndarray) -> _Stab | None:
        """Those of the points that are chosen; None when none is."""
        if not chosen.any():
            return None
        return _Stab(*(getattr(self, name)[chosen] for name in self.__slots__))


@dataclass(slots=True, eq=False)
class _Overlap:
    """How two things lie in each other; both None when they are apart as they should."""

    one: _Stab | None = None
    two: _Stab | None = None
    held: tuple[_Stab | None, _Stab | None] = (None, None)
    """Deep points at declared places: they stay, but nothing may drive them deeper."""
    excess: float = field(init=False)
    """Deepest point beyond what is borne, mm."""
    places: list[tuple[_Overlap, np.ndarray]] | None = None
    """What hangs together of it, and the deepest point of each; made when first asked."""

    def __post_init__(self) -> None:
        deepest = [float(s.depth.max()) - BORNE_MM for s in (self.one, self.two) if s is not None]
        self.excess = max(deepest, default=0.0)

    @property
    def stabs(self) -> tuple[_Stab | None, _Stab | None]:
        """What of the first lies in the second, and of the second in the first."""
        return self.one, self.two


_APART = _Overlap()

_Pair = tuple[int, int, bool]
"""One thing, another, and whether the other is seen in the mirror."""

_WAYS = (
    "dent",
    "shift",
    "carry",
    "dent the harder",
    "shift the harder",
    "carry the harder",
    "dent both",
    "carry both",
)
"""What is tried on a patch, one after the other: the pushed face alone moves, or the whole
thickness with it, or all within some millimetres."""

_CARRY_MM = 6.0
"""What lies within half of this goes along wholly, what lies half as far again not at all."""


def part_overlapping(
    parts: Mapping[str, Part],
    contacts: Iterable[Contact],
    indexes: Mapping[str, MeshIndex] | None = None,
    *,
    rounds: int = 30,
    among: Collection[str] | None = None,
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
    among : collection of str or None
        Only overlaps of these with others are looked for at first; None for those of all.
    threads : int

    Returns
    -------
    dict of str to trimesh.Trimesh
        The moved ones, same triangles.
    """
    parting = Parting(parts, indexes)
    moved = parting.apart(parts, contacts, rounds=rounds, among=among, threads=threads)
    return {part_id: parting.mesh(part_id) for part_id in moved}


class Parting:
    """Parts under way, and what is known of how they lie in each other.

    What was measured of a pair is kept until one of the two moves, and beyond for the case
    that the move is taken back.

    Parameters
    ----------
    parts : mapping of str to Part
        Left and median ones; the right side is their mirror image and counts as well.
    indexes : mapping of str to MeshIndex or None
        Those at hand already.
    """

    def __init__(
        self, parts: Mapping[str, Part], indexes: Mapping[str, MeshIndex] | None = None
    ) -> None:
        at_hand = indexes or {}
        self.things = [
            _Thing(
                part,
                n,
                Surface(at_hand.get(part.id) or MeshIndex(part.mesh.vertices, part.mesh.faces)),
            )
            for n, part in enumerate(parts.values())
        ]
        self._number = {thing.part.id: n for n, thing in enumerate(self.things)}
        self._first = [thing.surface for thing in self.things]
        self._ledger = _Ledger()
        self._left = np.array([thing.part.side == "left" for thing in self.things], bool)
        self._radii: dict[str, float] = {}

    def index(self, part_id: str) -> MeshIndex:
        """Exact distances to a part as it is now."""
        return self.things[self._number[part_id]].index

    def mesh(self, part_id: str) -> trimesh.Trimesh:
        """A part as it is now."""
        index = self.index(part_id)
        return trimesh.Trimesh(index.vertices, index.faces, process=False)

    def apart(
        self,
        parts: Mapping[str, Part],
        contacts: Iterable[Contact],
        *,
        rounds: int = 30,
        among: Collection[str] | None = None,
        threads: int = 2,
    ) -> list[str]:
        """Push softer parts out of harder ones; returns the ids of those that moved.

        Parameters
        ----------
        parts : mapping of str to Part
            The same ones as at the start, with their attachments as they are now.
        contacts, rounds, among, threads
            As in :func:`part_overlapping`.
        """
        things, ledger = self.things, self._ledger
        for thing in things:
            thing.part = parts[thing.part.id]
        ledger.declare(declared_places(parts, contacts, self._radii))
        meeting = _meeting(things, self._left)
        if among is not None:
            changed = [t.surface is not first for t, first in zip(things, self._first, strict=True)]
            chosen = [thing.part.id in among for thing in things]
            meeting = [
                pair
                for pair in meeting
                if (chosen[pair[0]] or chosen[pair[1]])
                and (changed[pair[0]] or changed[pair[1]] or pair in ledger.known)
            ]
        overlaps = {p: o for p, o in ledger.measured(things, meeting).items() if o is not _APART}
        tried: dict[_Pair, list[_Patch]] = {}
        moved: set[int] = set()
        since = False
        with ThreadPoolExecutor(threads) as pool:
            for _ in range(rounds):
                pushes: dict[int, list[_Push]] = defaultdict(list)
                givers: dict[int, list[_Patch]] = defaultdict(list)
                tried = {
                    pair: _patches(things, pair, overlap, tried.get(pair, ()))
                    for pair, overlap in overlaps.items()
                    if overlap.excess > 0
                }
                patches = [patch for found in tried.values() for patch in found]
                for patch in patches:
                    while patch.way < len(_WAYS):
                        asked = _ask(things, patch.pair, patch.overlap, _WAYS[patch.way], pushes)
                        if asked:
                            patch.tried = patch.way
                            for k in asked:
                                givers[k].append(patch)
                            break
                        patch.way += 1
                if not pushes:
                    if not patches or not since:
                        break
                    # What lies around a patch that found no way has moved: it tries them all again.
                    for patch in patches:
                        patch.way = 0
                    since = False
                    continue
                moving = sorted(pushes)
                goals = pool.map(_moved, [things[k] for k in moving], [pushes[k] for k in moving])
                before = {}
                for k, goal in zip(moving, list(goals), strict=True):
                    if goal is not None:
                        before[k] = things[k].become(goal)
                near = _near_change(things, self._left, set(before), overlaps)
                after = ledger.measured(things, near)
                again, back = _take_back(things, before, givers, overlaps, after)
                for k in moving:
                    for patch in givers[k]:
                        if k not in before or patch.touches(k, things[k].index.faces, back.get(k)):
                            patch.way += 1
                after.update(ledger.measured(things, again))
                for pair, overlap in after.items():
                    if overlap is _APART:
                        overlaps.pop(pair, None)
                    else:
                        overlaps[pair] = overlap
                moved |= set(before)
                since |= bool(before)
        names = [things[k].part.id for k in sorted(moved)]
        for name in names:
            self._radii.pop(name, None)
        return names

    def refine(self, parts: Mapping[str, Part], contacts: Iterable[Contact]) -> list[str]:
        """Give parts smaller triangles where they still overlap and no way out was found.

        A large triangle moves only with its corners, and takes all that hangs on them along;
        smaller ones let the place itself give way.

        Parameters
        ----------
        parts, contacts
            As in :meth:`apart`.

        Returns
        -------
        list of str
            Ids of the parts that have new triangles.
        """
        things, ledger = self.things, self._ledger
        ledger.declare(declared_places(parts, contacts, self._radii))
        stuck: dict[int, list[np.ndarray]] = defaultdict(list)
        for pair, overlap in ledger.measured(things, list(ledger.known)).items():
            if overlap.excess <= _STUCK_MM:
                continue
            first, second, mirror = pair
            for stab in overlap.stabs:
                if stab is None:
                    continue
                deep = stab.point[stab.depth > BORNE_MM]
                if len(deep) == 0:
                    continue
                stuck[first].append(deep)
                stuck[second].append(mirror_points(deep) if mirror else deep)
        finer = []
        for k, places in sorted(stuck.items()):
            thing = things[k]
            if thing.firm:
                continue
            thing.part = parts[thing.part.id]
            if thing.split(_faces_near(thing.index, np.concatenate(places))):
                finer.append(thing.part.id)
        return finer

    def part(self, part_id: str) -> Part:
        """A part with its surface as it is now."""
        thing = self.things[self._number[part_id]]
        return replace(thing.part, mesh=self.mesh(part_id))


def _faces_near(index: MeshIndex, points: np.ndarray) -> np.ndarray:
    """(n_faces,) bool: triangles that come close to any of the points."""
    corners = index.vertices[index.faces]
    centre = corners.mean(axis=1)
    radius = np.linalg.norm(corners - centre[:, None], axis=2).max(axis=1)
    away = cKDTree(points).query(centre)[0]
    return away < radius + _ROUND_STUCK_MM


@dataclass(eq=False)
class _Patch:
    """One place where a pair overlaps too deeply, and which way out it tries."""

    pair: _Pair
    overlap: _Overlap
    centre: np.ndarray
    way: int = 0
    tried: int = 0
    """The way that was taken in this round."""

    def touches(self, k: int, faces: np.ndarray, vertices: np.ndarray | None) -> bool:
        """Whether any of the marked vertices of a thing is one of the patch."""
        return vertices is not None and any(
            vertices[corner].any() for corner, _ in _on(k, self.pair, self.overlap.stabs, faces)
        )


def _patches(things, pair: _Pair, overlap: _Overlap, old: Iterable[_Patch]) -> list[_Patch]:
    """Split what two things have in each other into places that hang together."""
    if overlap.places is None:
        overlap.places = _places_of_overlap(things, pair, overlap)
    found = []
    for piece, centre in overlap.places:
        patch = _Patch(pair, piece, centre)
        nearest = min(old, key=lambda o: float(np.linalg.norm(o.centre - centre)), default=None)
        if nearest is not None and np.linalg.norm(nearest.centre - centre) < _SAME_MM:
            gained = patch.overlap.excess < _ENOUGH * nearest.overlap.excess
            patch.way = nearest.way + (not gained and nearest.way == nearest.tried)
        found.append(patch)
    return found


def _places_of_overlap(things, pair: _Pair, overlap: _Overlap) -> list[tuple[_Overlap, np.ndarray]]:
    """The pieces of an overlap that are too deep, and the deepest point of each."""
    first, second, _ = pair
    count = len(things[first].index.vertices)
    ends, points, depths = [], [], []
    for stab, outer in ((overlap.one, second), (overlap.two, first)):
        if stab is None:
            continue
        shift_in, shift_out = (0, count) if stab is overlap.one else (count, 0)
        faces = things[outer].index.faces[stab.face]
        ends.append(np.concatenate([stab.corner + shift_in, faces + shift_out], axis=1))
        points.append(stab.point)
        depths.append(stab.depth)
    end, point, depth = np.concatenate(ends), np.concatenate(points), np.concatenate(depths)
    label = least_of_piece(count + len(things[second].index.vertices), end)[end[:, 0]]
    half = 0 if overlap.one is None else len(overlap.one.depth)
    found = []
    for value in np.unique(label[depth > BORNE_MM]):
        chosen = label == value
        one = None if overlap.one is None else overlap.one.some(chosen[:half])
        two = None if overlap.two is None else overlap.two.some(chosen[half:])
        found.append((_Overlap(one, two), point[chosen][depth[chosen].argmax()]))
    return found


def _on(k: int, pair: _Pair, stabs: Iterable[_Stab | None], faces: np.ndarray):
    """Vertices of one thing between which, or under which, each point of an overlap lies."""
    for stab, (inner, outer) in zip(stabs, (pair[:2], pair[1::-1]), strict=True):
        if stab is not None:
            if inner == k:
                yield stab.corner, stab.depth
            if outer == k:
                yield faces[stab.face], stab.depth


def _take_back(
    things: list[_Thing],
    before: dict[int, tuple],
    givers: Mapping[int, list[_Patch]],
    old: Mapping[_Pair, _Overlap],
    new: Mapping[_Pair, _Overlap],
) -> tuple[list[_Pair], dict[int, np.ndarray]]:
    """Undo those moves, place by place, that did not lessen what overlaps there.

    Returns
    -------
    again : list
        Pairs to be measured again.
    back : dict of int to (n,) bool
        Vertices of each thing that are again where they were. Things that went back
        wholly leave ``before``.
    """
    pairs_of = defaultdict(list)
    for pair in new:
        for k in set(pair[:2]):
            if k in before:
                pairs_of[k].append(pair)
    again: set[_Pair] = set()
    back: dict[int, np.ndarray] = {}
    moved = set(before)
    for k in sorted(moved):
        thing = things[k]
        start, faces, now = before[k][0].index.vertices, thing.index.faces, thing.index.vertices
        asked = [
            c for patch in givers[k] for c, _ in _on(k, patch.pair, patch.overlap.stabs, faces)
        ]
        label, count = _places_of_change(start, now, faces, np.unique(np.concatenate(asked)))
        # The last one is for what lies elsewhere.
        cost = np.zeros((2, count + 1))
        touching: list[tuple[_Pair, np.ndarray]] = []
        for pair in pairs_of[k]:
            there = np.zeros(count + 1, bool)
            held = np.zeros((2, count + 1))
            for column, overlap in enumerate((old.get(pair, _APART), new[pair])):
                # What is softer can still give way in its turn.
                other = pair[0] if pair[1] == k else pair[1]
                weight = _PASSED_ON if things[other].rank > thing.rank else 1.0
                for row, stabs in ((cost, overlap.stabs), (held, overlap.held)):
                    worst = np.zeros(count + 1)
                    for corner, depth in _on(k, pair, stabs, faces):
                        at = label[corner].max(axis=1)
                        np.maximum.at(worst, at, depth - BORNE_MM)
                        there[at] = True
                    row[column] += weight * worst
            cost[1] += np.maximum(held[1] - held[0], 0.0)
            touching.append((pair, there))
        worse = cost[1, :count] > _GAIN * cost[0, :count]
        if not worse.any():
            continue
        undone = np.append(worse, False)[label]
        mean = thing.mean
        share = np.minimum(~undone, mean @ (mean @ (~undone).astype(float)))
        goal = start + share[:, None] * (now - start)
        if worse.all() or _tangled(start, goal, faces):
            worse[:] = True
            undone = label >= 0
            thing.go_back(before.pop(k))
        else:
            thing.become(goal)
        back[k] = undone
        # What two places were in each other may change as well where both were on the move.
        again |= {
            pair
            for pair, there in touching
            if there[:count][worse].any() or (pair[0] in moved and pair[1] in moved)
        }
    return sorted(again), back


def _places_of_change(
    start: np.ndarray, now: np.ndarray, faces: np.ndarray, asked: np.ndarray
) -> tuple[np.ndarray, int]:
    """Share what moved of a surface among the places that were asked to.

    Returns
    -------
    label : (n,) int
        Number of its place for each vertex; -1 for those that did not move.
    count : int
        How many places there are.
    """
    chosen = np.zeros(len(start), bool)
    chosen[asked] = True
    near = faces[chosen[faces].any(axis=1)]
    name = least_of_piece(len(start), near)
    seeds = np.unique(near)
    names, number = np.unique(name[seeds], return_inverse=True)
    label = np.full(len(start), -1)
    moved = np.flatnonzero(np.any(start != now, axis=1))
    if len(names) == 1:
        label[moved] = 0
    else:
        label[moved] = number[cKDTree(start[seeds]).query(start[moved])[1]]
    return label, len(names)


def _tangled(start: np.ndarray, goal: np.ndarray, faces: np.ndarray) -> bool:
    """Whether a surface of which a part went back now crosses itself where it did not."""
    moving = np.any(start != goal, axis=1)
    if not moving.any():
        return False
    near = _beside_moving(start, faces, moving, _LONGEST_MM)
    known = moved_intersections(start, near, moving)
    return len(np.setdiff1d(moved_intersections(goal, near, moving), known)) > 0


def _meeting(things: list[_Thing], left: np.ndarray) -> list[_Pair]:
    """Pairs whose boxes meet: (one, other, whether the other is seen in the mirror)."""
    boxes = np.array([t.index.bounds for t in things])
    found: set[_Pair] = set()
    for k, box in enumerate(boxes):
        found.update(boxes_meeting(left, boxes, k, box))
    return sorted(found)


def _near_change(
    things: list[_Thing],
    left: np.ndarray,
    changed: set[int],
    overlaps: Mapping[_Pair, _Overlap],
) -> list[_Pair]:
    """Pairs to be measured again: those that touched before, and those that what moved meets."""
    boxes = np.array([t.index.bounds for t in things])
    firm = [thing.firm for thing in things]
    found: dict[_Pair, None] = {}
    asked: list[_Pair] = []
    news: list[tuple[MeshIndex | Triangles, MeshIndex | Triangles]] = []
    for k in changed:
        for pair in boxes_meeting(left, boxes, k, things[k].news.bounds):
            if firm[pair[0]] and firm[pair[1]]:
                continue
            if pair in overlaps:
                found[pair] = None
                continue
            one, two, mirror = things[pair[0]], things[pair[1]], pair[2]
            if pair[0] == k:
                asked.append(pair)
                news.append((one.news, two.mirrored().index if mirror else two.index))
            if pair[1] == k:
                asked.append(pair)
                news.append((one.index, two.mirrored_news() if mirror else two.news))
    meet, _ = crossing_boxes([a for a, _ in news], [b for _, b in news])
    found.update((pair, None) for pair, met in zip(asked, meet.tolist(), strict=True) if met)
    for pair, overlap in overlaps.items():
        if overlap.excess > 0 and (pair[0] in changed or pair[1] in changed):
            found[pair] = None
    return list(found)


@dataclass(slots=True, eq=False)
class _Known:
    """What was measured of a pair, and of which surfaces (the second not in the mirror)."""

    one: Surface
    two: Surface
    inside: tuple[tuple[np.ndarray, ...] | None, tuple[np.ndarray, ...] | None]
    overlap: _Overlap
    turn: int
    """Which declaration of places the overlap was judged by."""


class _Ledger:
    """How the parts of each pair lie in each other, as far as it is known."""

    def __init__(self) -> None:
        self.known: dict[_Pair, tuple[_Known, ...]] = {}
        self._places: Mapping[tuple[str, str], list[Place]] = {}
        self._of_pair: dict[_Pair, Sequence[Place]] = {}
        self._apart_anyhow: dict[_Pair, bool] = {}
        self._turn = 0

    def declare(self, places: Mapping[tuple[str, str], list[Place]]) -> None:
        """Judge by these places, those of the left half, from now on."""
        self._places = places
        self._of_pair.clear()
        self._apart_anyhow.clear()
        self._turn += 1

    def measured(self, things: list[_Thing], pairs: Iterable[_Pair]) -> dict[_Pair, _Overlap]:
        """How the first of each pair lies in the second, and the second in the first."""
        out = dict.fromkeys(pairs, _APART)
        asked = []
        for pair in out:
            passed = self._apart_anyhow.get(pair)
            if passed is None:
                passed = self._apart_anyhow[pair] = (
                    things[pair[0]].firm and things[pair[1]].firm
                ) or any(p.contact.kind == "contain" for p in self._declared(things, pair))
            if not passed:
                asked.append(pair)
        still: dict[_Pair, _Known] = {}
        rest = []
        for pair in asked:
            one, two = things[pair[0]].surface, things[pair[1]].surface
            for found in self.known.get(pair, ()):
                if found.one is one and found.two is two:
                    still[pair] = found
                    break
            else:
                rest.append(pair)
        inside = immersions(
            [things[one].surface for one, _, _ in rest],
            [things[two].mirrored() if mirror else things[two].surface for _, two, mirror in rest],
            step=_SAMPLE_MM,
            reach=_REACH_MM,
            left=LEFT_MM,
            borne=BORNE_MM,
        )
        for n, touch in enumerate(inside.touch.tolist()):
            pair = rest[n]
            if not touch:
                self.known.pop(pair, None)
                continue
            both = inside.of(n, 0), inside.of(n, 1)
            surfaces = things[pair[0]].surface, things[pair[1]].surface
            found = _Known(*surfaces, both, _APART, 0)
            # The last two states: a move may be taken back.
            self.known[pair] = (found, *self.known.get(pair, ())[:1])
            still[pair] = found
        for pair, found in still.items():
            if found.turn != self._turn:
                declared = self._declared(things, pair)
                (one, held_one), (two, held_two) = (_stab(s, declared) for s in found.inside)
                found.overlap = _Overlap(one, two, (held_one, held_two))
                found.turn = self._turn
            out[pair] = found.overlap
        return out

    def _declared(self, things: list[_Thing], pair: _Pair) -> Sequence[Place]:
        """Places at which a pair may touch."""
        known = self._of_pair.get(pair)
        if known is None:
            one, two = things[pair[0]].part.id, things[pair[1]].part.id
            if pair[2]:
                two = other_side(two)
            known = self._places.get((one, two))
            if known is None:
                twin = self._places.get((other_side(one), other_side(two)), ())
                known = tuple(
                    replace(
                        p, contact=Contact(one, two, p.contact.kind, mirror_points(p.contact.place))
                    )
                    for p in twin
                )
            self._of_pair[pair] = known
        return known


def _stab(inside: tuple[np.ndarray, ...] | None, declared) -> tuple[_Stab | None, _Stab | None]:
    """What of one part lies too deep in another: outside the places declared, and at them."""
    if inside is None:
        return None, None
    found = _Stab(*inside)
    borne, anyhow = np.zeros(len(found.depth), bool), np.zeros(len(found.depth), bool)
    for place in declared:
        if place.contact.kind != "contain":
            near = within(found.point, place.contact.place, place.reach)
            borne |= near & (found.depth <= place.depth)
            if np.isinf(place.depth):
                anyhow |= near
    held = found.some(borne & ~anyhow & (found.depth > BORNE_MM))
    if not (found.depth[~borne] >= BORNE_MM).any():
        return None, held
    return found.some(~borne), held


_Push = tuple[np.ndarray, np.ndarray, str]
"""Corners (n, 3) to be moved, vectors (n, 3), and what goes along."""


def _ask(things, pair: _Pair, overlap: _Overlap, how: str, pushes) -> set[int]:
    """Add what a pair asks of its parts to their pushes; returns who was asked."""
    first, second, mirror = pair
    softer, harder = (
        (first, second) if things[first].rank > things[second].rank else (second, first)
    )
    if "both" in how:
        asked = {first: 0.55, second: 0.55}
    else:
        asked = {harder if "harder" in how else softer: 1.0}
    if first == second:
        asked = {first: 0.55}
    asked = {k: share for k, share in asked.items() if not things[k].firm}
    manner = how.split()[0]
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
            pushes[k].append((corner, sign * asked[k] * vector, manner))
    return set(asked)


def _moved(thing: _Thing, pushes: list[_Push]) -> np.ndarray | None:
    """New places of a thing's vertices; None when it can't move without crossing itself."""
    start, faces = thing.index.vertices, thing.index.faces
    move = np.zeros_like(start)
    for manner in ("dent", "shift", "carry"):
        chosen = [(c, v) for c, v, m in pushes if m == manner]
        if not chosen:
            continue
        corner = np.concatenate([c for c, _ in chosen])
        vector = np.concatenate([v for _, v in chosen])
        size = np.linalg.norm(vector, axis=1, keepdims=True)
        vector = vector * np.minimum(1.0, _LONGEST_MM / np.maximum(size, 1e-12))
        found = _longest(len(start), corner.reshape(-1), np.repeat(vector, 3, axis=0))
        if manner == "shift":
            found = _carry_along(start, found, 2.5 * _thickness(start, faces))
        if manner == "carry":
            found = _carried(start, found)
        else:
            for _ in range(2):
                found = _longer(thing.mean @ found, found)
        move = _longer(found, move)
    return _free(start, move, faces)


def _longer(one: np.ndarray, other: np.ndarray) -> np.ndarray:
    """Row by row the longer of two vectors."""
    longer = np.linalg.norm(one, axis=1) > np.linalg.norm(other, axis=1)
    return np.where(longer[:, None], one, other)


def _carried(start: np.ndarray, move: np.ndarray) -> np.ndarray:
    """Take along all that lies near what moves, fading so gently that nothing passes through."""
    size = np.linalg.norm(move, axis=1)
    pushed = np.flatnonzero(size > 1e-6)
    if len(pushed) == 0:
        return move
    count = min(12, len(pushed))
    distance, number = cKDTree(start[pushed]).query(
        start, k=count, distance_upper_bound=1.5 * _CARRY_MM
    )
    distance, number = distance.reshape(len(start), -1), number.reshape(len(start), -1)
    near = np.isfinite(distance)
    fade = np.where(near, np.clip(1.5 - distance / _CARRY_MM, 0, 1), 0.0)
    whose = pushed[np.where(near, number, 0)]
    way = np.einsum("ij,ijk->ik", fade**2, move[whose])
    way /= np.maximum(np.linalg.norm(way, axis=1, keepdims=True), 1e-9)
    return (fade * size[whose]).max(axis=1)[:, None] * way


def _thickness(vertices: np.ndarray, faces: np.ndarray) -> float:
    """Mean thickness of a sheet, or radius of a tube: 2 volume / surface, mm, 2 at most."""
    corners = vertices[faces] - vertices[0]
    cross_ = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    volume = abs(float(np.einsum("ij,ij->", corners[:, 0], cross_))) / 6.0
    area = 0.5 * float(np.linalg.norm(cross_, axis=1).sum())
    return min(2.0 * volume / max(area, 1e-9), _THICK_MM)


def _beside_moving(
    start: np.ndarray, faces: np.ndarray, moving: np.ndarray, reach: float
) -> np.ndarray:
    """Those of the triangles (m, 3) that others, of which a corner moves, may come to cross.

    Large triangles count as wide as they are: one may be crossed far from its corners.
    """
    corners = start[faces]
    centre = corners.mean(axis=1)
    radius = np.linalg.norm(corners - centre[:, None], axis=2).max(axis=1)
    own = moving[faces].any(axis=1)
    away = cKDTree(centre[own]).query(centre)[0]
    return faces[away <= radius + radius[own].max() + reach]


def _free(start: np.ndarray, move: np.ndarray, faces: np.ndarray) -> np.ndarray | None:
    """Move vertices as far as the surface stays free of crossings; None when nowhere."""
    size = np.linalg.norm(move, axis=1)
    active = size > 1e-4
    if not active.any():
        return None
    near = _beside_moving(start, faces, active, 2.0 * float(size.max()))
    known = moved_intersections(start, near, active)
    share = np.ones(len(start))
    place = None
    for turn in range(_FREEING):
        goal = start + share[:, None] * move
        bad = np.setdiff1d(moved_intersections(goal, near, active), known)
        if len(bad) == 0:
            return goal if share[active].any() else None
        touched = np.unique(near[np.concatenate(np.divmod(bad, len(near)))])
        if turn >= 7:
            # It finds no way here: all of this place stays, the others go on.
            if place is None:
                place = least_of_piece(len(start), faces[active[faces].any(axis=1)])
            share[np.isin(place, place[touched])] = 0.0
            continue
        share[touched] *= 0.45 if turn < 4 else 0.0
        around = np.unique(near[np.isin(near, touched).any(axis=1)])
        share[around] *= 0.8 if turn < 5 else 0.0
    return None
