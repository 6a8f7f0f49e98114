"""Parting: of fascicles' courses before they are laid, of finished parts that still overlap."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np
from scipy.spatial import cKDTree

from meshes.contacts import TUBES
from meshes.drape.distance import MeshIndex
from meshes.drape.field import Field
from meshes.drape.yielding import Parting
from meshes.soft.small import resample
from meshes.soft.workbench import Workbench

_STEP_MM = 3.5
_FREE_MM = 4.0
"""Length at each end over which a course runs straight to its bone."""


_BESIDE_MM = 1.6
"""Least distance of a left end from the median plane."""


def part_courses(
    lines: Sequence[np.ndarray],
    families: Sequence[str],
    solid: Field,
    *,
    apart: float,
    above: float,
    behind_above: float = -np.inf,
    rounds: int = 16,
) -> list[np.ndarray]:
    """Push courses of different families apart, and all of them out of what is solid.

    Parameters
    ----------
    lines : sequence of (n, 3) float
        mm; their first and last points stay.
    families : sequence of str
        Courses of one family may touch.
    solid : Field
        What is laid already.
    apart : float
        Wanted distance between two courses, mm.
    above : float
        Wanted height over what is solid, mm.
    behind_above : float
        Over what is solid at a greater z than this, courses are lifted backward, mm.
    rounds : int

    Returns
    -------
    list of (k, 3) float
        Evenly spaced.
    """
    pieces = []
    for line in lines:
        length = np.linalg.norm(np.diff(line, axis=0), axis=1).sum()
        pieces.append(resample(line, max(5, int(np.ceil(length / _STEP_MM)) + 1)))
    starts = np.concatenate([[0], np.cumsum([len(p) for p in pieces])])
    points = np.concatenate(pieces)
    names = {name: i for i, name in enumerate(dict.fromkeys(families))}
    family = np.repeat([names[f] for f in families], [len(p) for p in pieces])
    fixed = np.zeros(len(points), bool)
    fixed[starts[:-1]] = fixed[starts[1:] - 1] = True
    inner = np.flatnonzero(~fixed)
    # Near its bone a course may touch it.
    to_end = np.concatenate(
        [
            np.minimum(np.linalg.norm(p - p[0], axis=1), np.linalg.norm(p - p[-1], axis=1))
            for p in pieces
        ]
    )
    height = above * np.clip(to_end / _FREE_MM, 0, 1)
    # Midpoints count as well, so that no course slips between two points of another.
    links = np.setdiff1d(np.arange(len(points)), starts[1:] - 1)
    owner = np.concatenate([family, family[links]])
    pairs = np.zeros((0, 2), int)
    for turn in range(rounds):
        places = np.concatenate([points, 0.5 * (points[links] + points[links + 1])])
        if turn % 3 == 0:
            pairs = cKDTree(places).query_pairs(apart + 2.0, output_type="ndarray")
            pairs = pairs[owner[pairs[:, 0]] != owner[pairs[:, 1]]]
        way = places[pairs[:, 0]] - places[pairs[:, 1]]
        distance = np.linalg.norm(way, axis=1)
        close = distance < apart
        way, distance = way[close], distance[close]
        # Courses that meet head on part towards their own lanes: sideways.
        way[distance < 0.2] = [1.0, 0.3, 0.0]
        way *= (0.4 * (apart - distance) / np.maximum(distance, 0.2))[:, None]
        shove = np.zeros_like(places)
        for column, sign in ((0, 1.0), (1, -1.0)):
            for axis in range(3):
                shove[:, axis] += np.bincount(
                    pairs[close, column], sign * way[:, axis], minlength=len(places)
                )
        push = shove[: len(points)].copy()
        push[links] += shove[len(points) :]
        push[links + 1] += shove[len(points) :]
        size = np.linalg.norm(push, axis=1, keepdims=True)
        push *= np.minimum(1.0, 1.5 / np.maximum(size, 1e-9))
        points[inner] += push[inner]
        if turn < rounds - 5:
            ease = 0.25
            points[inner] += ease * (0.5 * (points[inner - 1] + points[inner + 1]) - points[inner])
        lift = np.clip(height - solid.sample(points), 0, 2.5)
        lift[fixed] = 0.0
        low = np.flatnonzero(lift > 0.02)
        slope = solid.gradient(points[low])
        # Over the ribs and processes the muscles lie behind the bone: never round its front.
        behind = points[low, 2] > behind_above
        slope[behind, 1] = np.maximum(slope[behind, 1], 0.15)
        slope /= np.maximum(np.linalg.norm(slope, axis=1, keepdims=True), 1e-6)
        points[low] += lift[low, None] * slope
        points[inner, 0] = np.maximum(points[inner, 0], above)
    return [points[a:b] for a, b in zip(starts[:-1], starts[1:], strict=True)]


def free_place(
    bone: MeshIndex,
    others: MeshIndex | None,
    wanted: np.ndarray,
    *,
    clear: float,
    taken: np.ndarray | None = None,
    apart: float = 0.0,
    reach: float = 9.0,
) -> np.ndarray:
    """Place on a bone nearest to a point that keeps clear of what else lies there, (3,) mm.

    Parameters
    ----------
    bone : MeshIndex
    others : MeshIndex or None
        What is in the way.
    wanted : (3,) float
    clear : float
        Distance to keep from it, mm.
    taken : (n, 3) float or None
        Places where something else ends already.
    apart : float
        Distance to keep from those, mm.
    reach : float
        Farthest place considered, mm.
    """
    nearest = bone.signed_distance(wanted[None])[1][0]

    def short(points: np.ndarray) -> np.ndarray:
        """How much room is wanting at each point, mm."""
        wanting = np.clip(_BESIDE_MM - points[:, 0], 0, None)
        if others is not None:
            room = others.signed_distance(points, clear)[0]
            wanting += clear - np.clip(room, -clear, clear)
        if taken is not None and len(taken):
            gap = np.linalg.norm(points[:, None] - taken[None], axis=2).min(axis=1)
            wanting += np.clip(apart - gap, 0, None)
        return wanting

    if short(nearest[None])[0] < 0.1:
        return nearest
    around = bone.vertices[np.linalg.norm(bone.vertices - nearest, axis=1) < reach]
    if len(around) == 0:
        return nearest
    cost = np.linalg.norm(around - nearest, axis=1) + 6.0 * short(around)
    return around[np.argmin(cost)]


_SEATED_MM = 1.8
"""An end recorded farther from its part or from what it is fixed to is looked for anew."""

_NEAR_MM = 6.0

_AFTER = (6, 6, 6)
"""Rounds of parting after ends were looked for anew, as often as any was moved."""

_FINER = (16, 12, 12)
"""Rounds of parting after what is stuck was given smaller triangles."""


def part_finished(bench: Workbench) -> None:
    """Let the softer of two finished parts give way where they overlap undeclared.

    The recorded ends are looked for anew before and afterwards, on the parts as they are
    then: what they exempt is where they lie.
    """
    rounds = 30 if bench.full else 16
    _seat_ends(bench)
    parting = Parting(bench.parts, {part_id: bench.index(part_id) for part_id in bench.parts})

    def settle(among: Iterable[str] | None, turns: Iterable[int]) -> None:
        for most in turns:
            moved = parting.apart(bench.parts, bench.contacts, rounds=most, among=among)
            for part_id in moved:
                bench.replace(parting.part(part_id), parting.index(part_id))
            # How far a tube's piercing reaches goes by its radius, which may have changed.
            tubes = {part_id for part_id in moved if bench.parts[part_id].kind in TUBES}
            among = _seat_ends(bench) | tubes
            if not among:
                break

    settle(None, (rounds, *_AFTER))
    for most in _FINER:
        finer = parting.refine(bench.parts, bench.contacts)
        if not finer:
            break
        for part_id in finer:
            bench.replace(parting.part(part_id), parting.index(part_id))
        settle(finer, (most, *_AFTER))


def _seat_ends(bench: Workbench) -> set[str]:
    """Bring recorded attachments to where the finished part lies on what it is fixed to.

    Returns the parts of which an end was moved.
    """
    seated: dict[int, np.ndarray] = {}
    moved: set[str] = set()
    for part_id in list(bench.parts):
        part = bench.parts[part_id]
        ends = []
        for end in part.attachments:
            if end.to in bench.parts:
                curve = np.asarray(end.curve, float).reshape(-1, 3)
                found = seated_on(bench.index(part_id), bench.index(end.to), curve)
                if found is not curve:
                    seated[id(end.curve)] = found
                    end = replace(end, curve=found)
            ends.append(end)
        if any(a is not b for a, b in zip(ends, part.attachments, strict=True)):
            bench.parts[part_id] = replace(part, attachments=tuple(ends))
            moved.add(part_id)
    bench.contacts = [
        replace(c, place=seated[id(c.place)]) if id(c.place) in seated else c
        for c in bench.contacts
    ]
    return moved


def seated_on(own: MeshIndex, target: MeshIndex, curve: np.ndarray) -> np.ndarray:
    """Move those points of an attachment line that lie off either surface in between the two.

    Parameters
    ----------
    own, target : MeshIndex
        The part, and what it is fixed to.
    curve : (n, 3) float
        mm.

    Returns
    -------
    (n, 3) float
        The curve itself when all its points lie on both; points for which nothing better
        is found within reach stay where they are.
    """

    def off(points: np.ndarray) -> np.ndarray:
        return np.maximum(
            np.abs(own.signed_distance(points)[0]), np.abs(target.signed_distance(points)[0])
        )

    away = off(curve)
    loose = np.flatnonzero(away > _SEATED_MM)
    if len(loose) == 0:
        return curve
    points = curve[loose]
    for _ in range(4):
        on_own = own.signed_distance(points)[1]
        on_target = target.signed_distance(on_own)[1]
        points = 0.5 * (on_own + on_target)
    better = (off(points) < away[loose]) & (
        np.linalg.norm(points - curve[loose], axis=1) < _NEAR_MM
    )
    if not better.any():
        return curve
    out = curve.copy()
    out[loose[better]] = points[better]
    return out
