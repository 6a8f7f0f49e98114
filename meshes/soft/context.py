"""The front of the trunk, neck, arm and thigh: one neutral part, not modelled here."""

from __future__ import annotations

import numpy as np
from scipy.ndimage import distance_transform_edt, gaussian_filter, label

from meshes.drape.distance import MeshIndex, merge
from meshes.model import Part
from meshes.shapes.contour import contour_grid, largest_piece, relax, simplify
from meshes.soft.envelope import envelope_of, fat_thickness, skin_thickness
from meshes.soft.workbench import Workbench, trimesh_of

_CLEAR_MM = 1.6
"""Room to everything modelled; the contour is coarse."""
_CLOSING_MM = 8.5
"""Half of the widest gap between parts that stays empty."""
_CREVICE_MM = 8.5
"""Radius of the ball that must fit within the body: narrower crevices stay empty."""
_THIN_MM = (3.6, 5.5)
"""The same for the cover of the front, beside the flank and above it."""
_UNDER_CORE_MM = 4.0
"""How far the stand-in keeps inside the plain core where skin and muscle cover it."""
_FRONT_FAT_MM = 11.0
"""How much thicker than at the edge of the skin the cover of the front is."""
_LEDGE_MM = 5.0
"""How much thicker it is already beside that edge."""


_FOLD_SLOPE = 0.8
"""Slope with which it comes out from under gluteus maximus."""
_SEEN_MM = 6.0
"""Depth to which a part that stands in the stand-in is seen."""


def lay_context(bench: Workbench) -> None:
    """Fill what lies in front of the model, so that the body looks closed from there.

    Ahead of the front border it takes the place of skin, fat and wall; behind it
    only the plain core is filled, so that nothing of it stands beside the muscles.
    It keeps clear of all parts and ends flat at thigh and head. A stand-in: it shows
    nothing of the organs.
    """
    envelope = envelope_of(bench)
    outline = envelope.outline
    core = outline.core
    h = 5.0 if bench.full else 7.0
    lower = np.array([0.0, outline.smooth.origin[1], core.thigh_end - 2.0 * h])
    upper = np.minimum(outline.smooth.upper, bench.field.upper)
    upper[2] = core.neck_top + 2.0 * h
    upper[1] = float(core.thigh_centre[1]) + 110.0 * core.scale
    count = np.ceil((upper - lower) / h).astype(int) + 1
    axes = [lower[i] + h * np.arange(count[i]) for i in range(3)]
    points = np.stack(np.meshgrid(*axes, indexing="ij"), -1).reshape(-1, 3)
    z = points[:, 2]
    ahead = -envelope.borders["front_border"](points)
    # In front: at the level of the skin, and thicker away from its edge.
    level = outline.smooth.sample(points)
    cover = np.full(len(points), 12.0)
    near = np.flatnonzero(np.abs(level) < 40.0)
    cover[near] = fat_thickness(bench, points[near]) + skin_thickness(bench, points[near]) + 1.5
    notch, xiphoid = (
        bench.landmark(f"sternum.{name}")[2] for name in ("jugular_notch", "xiphoid_tip")
    )
    heights = [xiphoid - 60.0, xiphoid + 30.0, notch - 40.0, notch + 5.0, notch + 40.0]
    # The wall ahead of the skin's edge stays covered; the contour needs some thickness to show.
    cover += _LEDGE_MM * np.clip(ahead / 10.0, 0.0, 1.0) * np.clip((z + 70.0) / 50.0, 0.0, 1.0)
    chest = _FRONT_FAT_MM + np.interp(z, heights, [0.0, 8.0, 6.0, -5.0, -_FRONT_FAT_MM])
    # None of it on the flank, where the stand-in goes on from the edge of the skin.
    share = np.clip((ahead - 25.0) / 60.0, 0.0, 1.0)
    cover += chest * share * share * (3.0 - 2.0 * share)
    front = level - cover
    behind = core.distance(points, arm=False) + _UNDER_CORE_MM
    share = np.clip((ahead + 3.0) / 9.0, 0.0, 1.0)
    body = share * front + (1.0 - share) * np.maximum(behind, outline.close.sample(points) + 3.0)
    body = np.maximum(body, points[:, 1] - _under_buttock(bench, axes).reshape(-1))
    ends = np.maximum(core.thigh_end + 1.0 - z, z - core.neck_top + 16.0 * core.scale)
    # Between arm and chest it ends a little inward of the arm.
    beside = points[:, 0] - core.arm_head[0] + 20.0 * core.scale
    beside = np.where(z > core.arm_head[2] - 250.0 * core.scale, beside, -20.0)
    ends = np.maximum(ends, np.maximum(beside, -envelope.borders["arm_end"](points)))
    mirrored = points * [-1.0, 1.0, 1.0]
    parts = bench.field.sample(points)
    at = points[:, 0] <= -bench.field.origin[0]
    parts[at] = np.minimum(parts[at], bench.field.sample(mirrored[at]))
    # Gaps in the wall are closed: ribs and muscles leave one smooth slot, not a comb.
    wall = _mirrored((parts < _CLEAR_MM + _CLOSING_MM).reshape(count))
    deep = distance_transform_edt(wall, sampling=h)[count[0] - 1 :].ravel()
    parts = np.minimum(parts - _CLEAR_MM, _CLOSING_MM - deep)
    room = np.minimum(parts, np.minimum(-body, -ends)).reshape(count)
    # Opening: what a ball can reach from within; the cover of the front may be thinner.
    thin = np.where(z < bench.frame["T9"].centre[2], *_THIN_MM)
    ball = np.where(ahead > 0.0, thin, _CREVICE_MM).reshape(count)
    wide = distance_transform_edt(_mirrored(room > 0), sampling=h)[count[0] - 1 :]
    seeds, _ = label(wide > ball)
    sizes = np.bincount(seeds.ravel())
    sizes[0] = 0
    kept = np.isin(seeds, np.flatnonzero(sizes > 0.02 * sizes.max()))
    reach = distance_transform_edt(~_mirrored(kept), sampling=h)[count[0] - 1 :] - ball
    value = gaussian_filter(_mirrored(np.maximum(reach, -room)), 0.8)[count[0] - 1 :]
    value = np.maximum(value, np.maximum(-room - 1.2, ends.reshape(count)))
    whole = _mirrored(value).transpose(2, 1, 0).copy()
    for axis in range(3):
        edge = [slice(None)] * 3
        for index in (0, -1):
            edge[axis] = index
            whole[tuple(edge)] = np.maximum(whole[tuple(edge)], 0.5)
    # A node right on the level pinches the contour.
    whole[np.abs(whole) < 0.02 * h] = 0.02 * h
    start = np.array([-(count[0] - 1) * h, lower[1], lower[2]])
    vertices, faces = contour_grid(whole, start, h)
    vertices, faces = largest_piece(vertices, faces)
    vertices = relax(vertices, faces, 2)
    vertices, faces = simplify(vertices, faces, bench.triangles(9000, 2300))
    mesh = trimesh_of(_cleared(bench, vertices, faces), faces)
    record = bench.catalogue["context_trunk"]
    part = Part(
        id="context_trunk",
        entry="context_trunk",
        kind="context",
        stratum=record.stratum,
        group=record.group,
        mesh=mesh,
        region=record.region,
    )
    bench.add(part, solid=False)


def _under_buttock(bench: Workbench, axes: list[np.ndarray]) -> np.ndarray:
    """How far back the stand-in may reach, y (x, 1, z) broadcast over the grid, mm.

    It passes under gluteus maximus, whose lower border lies over the muscles of the thigh, and
    comes out from under that border in a slope.
    """
    x, y, z = axes
    step = x[1] - x[0]
    points = bench.parts["gluteus_maximus.left"].mesh.vertices
    column = np.rint((points[:, [0, 2]] - [x[0], z[0]]) / step).astype(int)
    inside = np.all((column >= 0) & (column < [len(x), len(z)]), axis=1)
    deep = np.full((len(x), len(z)), np.inf)
    np.minimum.at(deep, tuple(column[inside].T), points[inside, 1])
    seen = np.isfinite(deep)
    away, near = distance_transform_edt(~seen, sampling=step, return_indices=True)
    reach = gaussian_filter(deep[tuple(near)], 1.0) - _CLEAR_MM + _FOLD_SLOPE * away
    return np.broadcast_to(reach[:, None, :], (len(x), len(y), len(z)))


def _cleared(bench: Workbench, vertices: np.ndarray, faces: np.ndarray) -> np.ndarray:
    """Vertices drawn in where the coarse faces touch a part, in both halves alike."""
    ids = [i for i in bench.near_ids(vertices, 4.0) if bench.parts[i].kind != "skin"]
    corners = vertices[faces]
    side = np.linalg.norm(corners - np.roll(corners, -1, axis=1), axis=2).max()
    # The parts at hand are those of the left half.
    places = np.concatenate([vertices, corners.mean(axis=1)])
    places[:, 0] = np.abs(places[:, 0])
    bounds = np.array([vertices.min(axis=0), vertices.max(axis=0)])
    found = merge([bench.index(i) for i in ids], bounds, _SEEN_MM + 0.4 * side, places)
    if found is None:
        return vertices
    merged = found[0]
    points = merged.vertices[np.unique(merged.faces)]
    near = {sign: points * [sign, 1.0, 1.0] for sign in (1.0, -1.0)}
    for _ in range(5):
        index = MeshIndex(vertices, faces)
        move = np.zeros(len(vertices))
        corners = vertices[faces]
        for share in ([1, 0, 0], [1, 1, 1], [1, 1, 0], [0, 1, 1], [1, 0, 1]):
            p = np.einsum("k,fkd->fd", np.array(share) / sum(share), corners)
            p[:, 0] = np.abs(p[:, 0])
            d = merged.signed_distance(p, 12.0)[0]
            lack = np.where(np.isfinite(d), 0.35 - d, 0.0)
            for k in range(3):
                if share[k]:
                    np.maximum.at(move, faces[:, k], lack)
        for sign in (1.0, -1.0):
            d, _, _, face = index.query(near[sign], _SEEN_MM)
            near[sign], d, face = near[sign][face >= 0], d[face >= 0], face[face >= 0]
            deep = d < 0.25
            np.maximum.at(move, faces[face[deep]].ravel(), np.repeat(0.35 - d[deep], 3))
        if move.max() < 0.05:
            break
        vertices = vertices - np.minimum(move, 3.0)[:, None] * index.vertex_normal / np.maximum(
            np.linalg.norm(index.vertex_normal, axis=1, keepdims=True), 1e-9
        )
    return vertices


def _mirrored(half: np.ndarray) -> np.ndarray:
    """Whole grid of a half whose first plane is the median one."""
    return np.concatenate([half[:0:-1], half])
