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

log = logging.getLogger(__name__)

MET_MM = 1.7
"""A belly that comes this close to the end of a fibre reaches it."""

_LONGEST_MM = 45.0
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

    own = MeshIndex.of(mesh)
    pieces = []
    for fibre in fibres:
        fibre = np.asarray(fibre, float)
        if abs(own.signed_distance(fibre[:1])[0][0]) <= MET_MM:
            continue
        course = _course(own, fibre)
        if course is not None:
            pieces.append(tube(course, radius, _SIDES)[:2])
    if not pieces:
        return mesh
    try:
        vertices, faces = unite([(mesh.vertices, mesh.faces), *pieces])
    except ValueError as problem:
        log.info("a slip could not be joined: %s", problem)
        return mesh
    united = trimesh.Trimesh(vertices, faces, process=False)
    if not is_closed(united) or len(self_intersections(united)) > len(self_intersections(mesh)):
        return mesh
    return united


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
        last = min(inside[0] + 4, len(fine) - 1)
        course = fine[: last + 1 : int(_STEP_MM / 0.5)]
        return np.concatenate([course, fine[last : last + 1]]) if last > 1 else None
    # The fibre misses the belly: along it as far as it comes close, then across.
    best = int(np.argmin(distance))
    if distance[best] > 8.0:
        return None
    target = closest[best] - 0.8 * normal[best]
    return np.concatenate([fine[:best:4], [fine[best], target]])
