"""Tendon slips: a belly that was cut short of its bone is led on to it along its own fibre.

Contours on a grid lose what is thinner than the grid: the last stretch of a thin
fascicle, where neighbours leave it little room. The fibre's course is known, and
was parted from its neighbours; a tendon as thin as a cord takes it to the end.
"""

from __future__ import annotations

import logging
from collections.abc import Iterable

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


def with_slips(
    mesh: trimesh.Trimesh, fibres: Iterable[np.ndarray], radius: float
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
        try:
            united = trimesh.Trimesh(
                *unite([(mesh.vertices, mesh.faces), tube(course, radius, _SIDES)[:2]]),
                process=False,
            )
        except ValueError as problem:
            log.info("a slip could not be joined: %s", problem)
            continue
        if is_closed(united) and len(self_intersections(united)) <= len(self_intersections(mesh)):
            mesh = united
    return mesh


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
