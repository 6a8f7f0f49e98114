"""Darkening of furrows: how open each vertex is, by rays against what lies as deep or deeper.

Only parts of the same stratum and deeper can shade a vertex, because what lies
over it is gone when it is looked at; a film, which is seen through, shades nothing.
Rays are short, so that this shows the grooves between bellies and not the
roundness of the trunk. A face counts only when it is met from without.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from scipy.spatial import cKDTree

from viewer.scene.drawn import MIRROR, DrawnPart, Shell
from viewer.scene.fibre_field import smoothed
from viewer.state.visibility import is_film

RAY_COUNT = 20
REACH_MM = 22.0
LIFT_MM = 0.5
DRAWN_IN_MM = 2.6
SHADING_LEAST = 0.12


def openness(drawn: Iterable[DrawnPart]) -> dict[str, np.ndarray]:
    """Return how open each vertex of each moving shell is, by id, (n,) float32 0..1.

    Rays start from the true surface (the fine vertices that the moving ones
    stand for) and meet the moving shells, drawn in by the amount that coarse
    shells of neighbouring layers run through each other: otherwise an inner one
    would darken the outer in blotches.
    """
    from embreex import rtcore_scene
    from embreex.mesh_construction import TriangleMesh

    drawn = list(drawn)
    directions = _hemisphere(RAY_COUNT)
    answer: dict[str, np.ndarray] = {}
    for stratum in sorted({d.part.stratum for d in drawn}, reverse=True):
        here = [d for d in drawn if d.part.stratum == stratum]
        blockers = [d.moving for d in drawn if d.part.stratum >= stratum and not is_film(d.part)]
        scene = rtcore_scene.EmbreeScene()
        triangles = np.concatenate(
            [(s.points - _drawn_in(s)[:, None] * s.normals)[s.faces] for s in blockers]
        ).astype(np.float32)
        TriangleMesh(scene, triangles)
        starts = [_true_surface(d) for d in here]
        values = _open_share(
            scene,
            np.concatenate([points for points, _ in starts]),
            np.concatenate([normals for _, normals in starts]),
            np.concatenate(
                [
                    np.full(len(points), d.part.side == "right")
                    for d, (points, _) in zip(here, starts)
                ]
            ),
            directions,
        )
        ends = np.cumsum([len(points) for points, _ in starts])
        for d, piece in zip(here, np.split(values, ends[:-1]), strict=True):
            answer[d.part.id] = piece
    return answer


def _drawn_in(shell: Shell) -> np.ndarray:
    """Return how far each vertex is drawn in, (n,) mm: never through the other face.

    The far wall of a thin sheet would otherwise come to lie before the near one and
    leave the whole sheet in the dark.
    """
    points, normals = shell.points, shell.normals
    count = min(16, len(points))
    _, near = cKDTree(points).query(points, k=count)
    near = near.reshape(len(points), count)
    through = np.einsum("nkc,nc->nk", points[near] - points[:, None], -normals)
    opposite = np.einsum("nkc,nc->nk", normals[near], normals) < -0.3
    thick = np.where(opposite & (through > 0), through, np.inf).min(axis=1)
    return np.minimum(DRAWN_IN_MM, 0.4 * thick).astype(np.float32)


def _true_surface(drawn: DrawnPart) -> tuple[np.ndarray, np.ndarray]:
    shell, source = drawn.still, drawn.moving.source
    if drawn.moving is shell or source is None:
        return drawn.moving.points, drawn.moving.normals
    return shell.points[source], shell.normals[source]


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
    coarse = openness(drawn)
    answer: dict[str, dict[str, np.ndarray]] = {"moving": {}, "still": {}}
    for d in drawn:
        name = d.part.id
        values = smoothed(coarse[name], d.moving.faces, 2).astype(np.float32)
        answer["moving"][name] = values
        answer["still"][name] = (
            values if d.still is d.moving else _carried(values, d.moving, d.still)
        )
    return answer


def _carried(values: np.ndarray, coarse: Shell, fine: Shell) -> np.ndarray:
    """Return values of the coarse vertices at the fine ones.

    Only neighbours that look the same way count: the other face of a thin
    sheet lies as near, and in the dark.
    """
    k = min(8, len(coarse.points))
    distance, index = cKDTree(coarse.points).query(fine.points, k=k)
    distance, index = distance.reshape(len(fine.points), -1), index.reshape(len(fine.points), -1)
    agree = np.einsum("nkc,nc->nk", coarse.normals[index], fine.normals)
    weight = np.clip(agree, 1e-3, 1.0) ** 2 / (distance + 0.3)
    return ((values[index] * weight).sum(axis=1) / weight.sum(axis=1)).astype(np.float32)


def _hemisphere(count: int) -> np.ndarray:
    """Return cosine-spread unit directions about +z, (count, 3) float32 (spiral points)."""
    k = np.arange(count) + 0.5
    height = np.sqrt(1.0 - k / count)
    turn = np.pi * (1.0 + 5.0**0.5) * k
    radius = np.sqrt(k / count)
    return np.column_stack([radius * np.cos(turn), radius * np.sin(turn), height]).astype(
        np.float32
    )


def _open_share(scene, points, normals, mirrored, directions) -> np.ndarray:
    # The right looks about as the left does in a mirror: a few rays in other directions would
    # find it lighter or darker, which shows along the midline.
    sign = np.where(mirrored[:, None], MIRROR, 1.0).astype(np.float32)
    turned = normals * sign
    # A frame about each normal; any pair of tangents will do.
    helper = np.where(np.abs(turned[:, 2:]) < 0.9, [[0.0, 0.0, 1.0]], [[1.0, 0.0, 0.0]])
    first = np.cross(helper, turned)
    first /= np.maximum(np.linalg.norm(first, axis=1, keepdims=True), 1e-9)
    second = sign * np.cross(turned, first)
    first *= sign
    origins = np.ascontiguousarray(points + LIFT_MM * normals, np.float32)
    reach = np.full(len(points), REACH_MM, np.float32)
    blocked = np.zeros(len(points), np.float64)
    for x, y, z in directions:
        rays = np.ascontiguousarray(x * first + y * second + z * normals, np.float32)
        hit = scene.run(origins, rays, dists=reach.copy(), output=True)
        # A face met from within belongs to an inner shell that comes through the outer one.
        from_without = np.einsum("nc,nc->n", hit["Ng"], rays) < 0.0
        met = (hit["primID"] >= 0) & from_without
        # A near wall darkens more than one at the end of the reach.
        blocked += np.where(met, 1.0 - hit["tfar"] / REACH_MM, 0.0)
    share = 1.0 - blocked / len(directions)
    return np.clip(share, SHADING_LEAST, 1.0).astype(np.float32)
