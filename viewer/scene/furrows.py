"""Darkening of furrows: how open each vertex is, by rays against what lies as deep or deeper.

Only parts of the same stratum and deeper can shade a vertex, because what lies
over it is gone when it is looked at. Rays are short, so that this shows the
grooves between bellies and not the roundness of the trunk.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import numpy as np
from scipy.spatial import cKDTree

from viewer.scene.drawn import DrawnPart
from viewer.scene.fibre_field import smoothed

RAY_COUNT = 20
REACH_MM = 22.0
LIFT_MM = 0.35
SHADING_LEAST = 0.12


def openness(shells: Mapping[str, tuple[int, np.ndarray, np.ndarray, np.ndarray]]) -> dict:
    """Return how open each vertex of each shell is.

    Parameters
    ----------
    shells : mapping of id to (stratum, points (n, 3), normals (n, 3), faces (m, 3))
        mm. Low detail is enough: the shade is smooth.

    Returns
    -------
    dict of id to (n,) float32
        1 in the open, towards 0 in a furrow.
    """
    from embreex import rtcore_scene
    from embreex.mesh_construction import TriangleMesh

    directions = _hemisphere(RAY_COUNT)
    answer: dict[str, np.ndarray] = {}
    strata = sorted({stratum for stratum, *_ in shells.values()}, reverse=True)
    for stratum in strata:
        here = [name for name, (s, *_) in shells.items() if s == stratum]
        blockers = [(p, f) for s, p, _, f in shells.values() if s >= stratum]
        scene = rtcore_scene.EmbreeScene()
        triangles = np.concatenate([p[f] for p, f in blockers]).astype(np.float32)
        TriangleMesh(scene, triangles)
        points = np.concatenate([shells[name][1] for name in here]).astype(np.float32)
        normals = np.concatenate([shells[name][2] for name in here]).astype(np.float32)
        values = _open_share(scene, points, normals, directions)
        start = 0
        for name in here:
            count = len(shells[name][1])
            answer[name] = values[start : start + count]
            start += count
    return answer


def _hemisphere(count: int) -> np.ndarray:
    """Return cosine-spread unit directions about +z, (count, 3) float32 (spiral points)."""
    k = np.arange(count) + 0.5
    height = np.sqrt(1.0 - k / count)
    turn = np.pi * (1.0 + 5.0**0.5) * k
    radius = np.sqrt(k / count)
    return np.column_stack([radius * np.cos(turn), radius * np.sin(turn), height]).astype(
        np.float32
    )


def _open_share(scene, points, normals, directions) -> np.ndarray:
    # A frame about each normal; any pair of tangents will do.
    helper = np.where(np.abs(normals[:, 2:]) < 0.9, [[0.0, 0.0, 1.0]], [[1.0, 0.0, 0.0]])
    first = np.cross(helper, normals)
    first /= np.maximum(np.linalg.norm(first, axis=1, keepdims=True), 1e-9)
    second = np.cross(normals, first)
    origins = np.ascontiguousarray(points + LIFT_MM * normals, np.float32)
    reach = np.full(len(points), REACH_MM, np.float32)
    blocked = np.zeros(len(points), np.float64)
    for x, y, z in directions:
        rays = np.ascontiguousarray(x * first + y * second + z * normals, np.float32)
        distance = scene.run(origins, rays, dists=reach.copy(), query="DISTANCE")
        hit = distance < REACH_MM
        # A near wall darkens more than one at the end of the reach.
        blocked += np.where(hit, 1.0 - distance / REACH_MM, 0.0)
    share = 1.0 - blocked / len(directions)
    return np.clip(share, SHADING_LEAST, 1.0).astype(np.float32)


def shade(drawn: Iterable[DrawnPart]) -> dict[str, dict[str, np.ndarray]]:
    """Return the openness of every drawn vertex at both details.

    Worked out on the moving shells and carried to the still ones. No VTK and
    no Qt, so that it can run beside the window.

    Returns
    -------
    dict
        "moving" and "still" to part id to (n,) float32, for ``Scene.set_openness``.
    """
    drawn = list(drawn)
    coarse = openness(
        {
            d.part.id: (d.part.stratum, d.moving.points, d.moving.normals, d.moving.faces)
            for d in drawn
        }
    )
    answer: dict[str, dict[str, np.ndarray]] = {"moving": {}, "still": {}}
    for d in drawn:
        name = d.part.id
        values = smoothed(coarse[name], d.moving.faces, 2).astype(np.float32)
        answer["moving"][name] = values
        answer["still"][name] = (
            values if d.still is d.moving else _carried(values, d.moving.points, d.still.points)
        )
    return answer


def _carried(values: np.ndarray, coarse: np.ndarray, fine: np.ndarray) -> np.ndarray:
    distance, index = cKDTree(coarse).query(fine, k=min(3, len(coarse)))
    distance, index = distance.reshape(len(fine), -1), index.reshape(len(fine), -1)
    weight = 1.0 / (distance + 0.2)
    return ((values[index] * weight).sum(axis=1) / weight.sum(axis=1)).astype(np.float32)
