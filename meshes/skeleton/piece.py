"""One finished bone with the landmarks that stand on it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import trimesh
from scipy.spatial import cKDTree

from meshes.model import Part


@dataclass(frozen=True, slots=True, eq=False)
class BonePiece:
    """A bone, disc or cartilage and its landmarks.

    Attributes
    ----------
    part : Part
    landmarks : dict of str to ndarray
        (3,) points or (k, 3) curves and patches, mm, model axes; left side and median only.
    """

    part: Part
    landmarks: dict[str, np.ndarray]


def snap_to_surface(mesh: trimesh.Trimesh, points: np.ndarray, neighbours: int = 24) -> np.ndarray:
    """Nearest points of a mesh's surface to given points.

    Only the triangles whose centroids are nearest are tried: exact for points
    near the surface of an evenly triangulated mesh.

    Parameters
    ----------
    mesh : trimesh.Trimesh
    points : (n, 3) float
        mm.
    neighbours : int
        Triangles tried a point.

    Returns
    -------
    (n, 3) float
    """
    points = np.atleast_2d(np.asarray(points, float))
    triangles = mesh.vertices[mesh.faces]
    neighbours = min(neighbours, len(triangles))
    _, near = cKDTree(triangles.mean(axis=1)).query(points, k=neighbours)
    near = near.reshape(len(points), -1)
    repeated = np.repeat(points, near.shape[1], axis=0)
    found = trimesh.triangles.closest_point(triangles[near.ravel()], repeated)
    found = found.reshape(len(points), -1, 3)
    best = np.linalg.norm(found - points[:, None], axis=2).argmin(axis=1)
    return found[np.arange(len(points)), best]


_UNEVEN_MM = 0.35
"""Least distance between one side's surface and the mirrored other that is made up for."""

_BETWEEN_TURNS = 4


def snap_to_both_sides(mesh: trimesh.Trimesh, points: np.ndarray) -> np.ndarray:
    """Nearest points of a median bone's surface, fit for the other side as well.

    Landmarks of the right are mirror images of the left, but coarse triangles
    differ from side to side: where that shows, a place half-way between both
    surfaces serves.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        A bone that the plane x = 0 halves.
    points : (n, 3) float
        mm, of the left side.

    Returns
    -------
    (n, 3) float
    """
    turn_over = np.array([-1.0, 1.0, 1.0])
    snapped = snap_to_surface(mesh, points)
    other = snap_to_surface(mesh, snapped * turn_over) * turn_over
    uneven = np.linalg.norm(other - snapped, axis=1) > _UNEVEN_MM
    between = 0.5 * (snapped[uneven] + other[uneven])
    if uneven.any():
        # From the middle both surfaces lie nearer somewhere beside the first places.
        for _ in range(_BETWEEN_TURNS):
            one = snap_to_surface(mesh, between)
            two = snap_to_surface(mesh, between * turn_over) * turn_over
            between = 0.5 * (one + two)
    snapped[uneven] = between
    return snapped
