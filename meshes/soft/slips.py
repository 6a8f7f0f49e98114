"""Tendon slips: a belly that was cut short of its bone is led on to it along its own fibre.

Contours on a grid lose what is thinner than the grid: the last stretch of a thin
fascicle, where neighbours leave it little room. The fibre's course is known, and
was parted from its neighbours; a tendon as thin as a cord takes it to the end.
"""

from __future__ import annotations

import logging
from collections.abc import Iterable, Sequence

import numpy as np
import trimesh

from meshes.drape.audit import is_closed, self_intersections
from meshes.drape.distance import MeshIndex
from meshes.shapes.polyline import resample

log = logging.getLogger(__name__)

MET_MM = 1.7
"""A belly that comes this close to the end of a fibre reaches it."""

_LONGEST_MM = 60.0
_ACROSS_MM = 8.0
_STEP_MM = 2.0
_SIDES = 7
_RADII = (1.0, 0.85, 1.2, 0.7)
"""Shares of the wanted radius that are tried in turn."""


def with_slips(
    mesh: trimesh.Trimesh,
    fibres: Iterable[np.ndarray],
    radius: float,
    obstacles: Sequence[MeshIndex] = (),
) -> trimesh.Trimesh:
    """Lead a belly on to the ends of its fibres that it does not reach.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        Closed.
    fibres : iterable of (n, 3) float
        Their first points are the ends to be reached, the others lead back into the belly.
    radius : float
        Of the slips, mm.
    obstacles : sequence of MeshIndex
        What a slip runs over instead of through.

    Returns
    -------
    trimesh.Trimesh
        The mesh itself when nothing is missing or nothing could be joined.
    """
    from meshes.soft.tubes import tube, unite

    for fibre in fibres:
        fibre = np.asarray(fibre, float)
        own = MeshIndex.of(mesh)
        if abs(own.signed_distance(fibre[:1])[0][0]) <= MET_MM:
            continue
        course = _course(own, fibre)
        if course is None:
            continue
        course = _over(course, obstacles, radius)
        before = len(self_intersections(own))
        # Where the two surfaces all but coincide the union may cross itself by a hair: a little
        # thicker or thinner it does not.
        for share in _RADII:
            try:
                united = trimesh.Trimesh(
                    *unite([(mesh.vertices, mesh.faces), tube(course, share * radius, _SIDES)[:2]]),
                    process=False,
                )
            except ValueError as problem:
                log.info("a slip could not be joined: %s", problem)
                continue
            if is_closed(united) and len(self_intersections(united)) <= before:
                mesh = united
                break
    return mesh


_END_MM = 4.0
"""Length next to the bone over which a slip comes down to it."""


def _over(
    course: np.ndarray, obstacles: Sequence[MeshIndex], radius: float, rounds: int = 8
) -> np.ndarray:
    """Lift a course (k, 3) off what it would run through; its first point keeps to its bone."""
    low, high = course.min(axis=0) - radius, course.max(axis=0) + radius
    near = [o for o in obstacles if np.all(o.bounds[0] < high) and np.all(o.bounds[1] > low)]
    if not near:
        return course
    course = course.copy()
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(course, axis=0), axis=1))])
    clear = (radius + 0.15) * np.minimum(1.0, along / _END_MM)
    for turn in range(rounds):
        if turn:
            course[1:-1] = 0.25 * course[:-2] + 0.5 * course[1:-1] + 0.25 * course[2:]
        moved = False
        for obstacle in near:
            distance, _, normal = obstacle.signed_distance(course, 8.0)
            lack = np.where(np.isfinite(distance), clear - distance, 0.0)
            lack[0] = 0.0
            rows = lack > 0.05
            # The muscles of the back lie behind the bone: never round its front.
            way = normal[rows]
            way[:, 1] = np.maximum(way[:, 1], 0.3)
            way /= np.linalg.norm(way, axis=1, keepdims=True)
            course[rows] += lack[rows, None] * way
            moved |= bool(rows.any())
        if not moved:
            break
        # It comes down to the bone on the side on which it runs.
        ends = [o.signed_distance(course[:2]) for o in near]
        distance, closest, _ = min(ends, key=lambda end: abs(end[0][0]))
        if abs(distance[0]) < MET_MM:
            course[0] = closest[1]
    return course


def _course(own: MeshIndex, fibre: np.ndarray) -> np.ndarray | None:
    """From the end of a fibre into the belly, (k, 3) mm; None when it is too far."""
    step = np.linalg.norm(np.diff(fibre, axis=0), axis=1)
    s = np.concatenate([[0.0], np.cumsum(step)])
    if s[-1] < 1e-6:
        return None
    wanted = np.arange(0.0, min(s[-1], _LONGEST_MM), 0.5)
    fine = np.stack([np.interp(wanted, s, fibre[:, i]) for i in range(3)], axis=1)
    distance, closest, normal = own.signed_distance(fine)
    inside = np.flatnonzero(distance < -0.4)
    if len(inside):
        course = fine[: min(inside[0] + 5, len(fine))]
    else:
        # The fibre misses the belly: along it as far as it comes close, then across.
        best = int(np.argmin(distance))
        if distance[best] > _ACROSS_MM:
            return None
        course = np.concatenate([fine[: best + 1], [closest[best] - 0.8 * normal[best]]])
    length = np.linalg.norm(np.diff(course, axis=0), axis=1).sum()
    if length < 1.0:
        return None
    return resample(course, max(3, int(np.ceil(length / _STEP_MM)) + 1))
