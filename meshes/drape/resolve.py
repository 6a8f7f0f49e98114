"""The last push: clears a finished mesh of the real meshes under and over it.

The field is too coarse to prove anything. Here points of the new surface are
tested against the exact deeper meshes, and points of those against the new
surface, because a thin ridge can pierce a triangle whose corners are all clear.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import numpy as np
import trimesh
from scipy.ndimage import binary_erosion, maximum_filter, uniform_filter
from scipy.sparse import coo_matrix, csr_matrix, diags

from meshes.drape.audit import overlap_depth, self_intersections
from meshes.drape.distance import MeshIndex, merge
from meshes.drape.sheet import SheetGrid, ThickSheet, arc_length, least_thickness, thicken

SAMPLE_STEP = 2.0
"""mm between tested points of a surface: the step at which overlap is judged."""

LONGEST_PUSH = 3.0
"""mm in one round; a longer push is made in several, each with fresh distances."""

ATTACHED_DEPTH = 1.5
"""mm that an attached end may lie in what it attaches to."""

TOLERANCE = 0.02
"""mm of the gap that may be missing when a surface counts as clear."""

OVERSHOOT = 1.05
"""Factor on every push, so that few rounds are spent on the last hundredth."""

DEEPER_BIAS = 1.0
"""mm over the mid-surface up to which an obstacle still counts as lying under the sheet:
what was laid before is deeper in case of doubt."""

SEARCH = 6.0
"""mm round the new surface in which obstacles are looked at."""


def _surface_samples(faces: np.ndarray, vertices: np.ndarray, step: float):
    """Corner numbers (n, 3) and weights (n, 3) of test points on a mesh.

    Vertices once, points on edges once, points inside faces; no two
    neighbours farther apart than about ``step`` mm, edge midpoints and face
    centres always among them.
    """
    edges = np.sort(faces[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2), axis=1)
    edges = edges[np.unique(edges[:, 0] * len(vertices) + edges[:, 1], return_index=True)[1]]
    used = np.unique(faces)
    index = [np.repeat(used[:, None], 3, axis=1)]
    weight = [np.tile([1.0, 0.0, 0.0], (len(used), 1))]
    length = np.linalg.norm(vertices[edges[:, 0]] - vertices[edges[:, 1]], axis=1)
    cuts = 2 * np.maximum(np.ceil(length / (2 * step)).astype(int), 1)
    for k in np.unique(cuts):
        chosen = edges[cuts == k]
        t = np.arange(1, k) / k
        w = np.stack([1 - t, t, 0 * t], axis=1)
        index.append(np.repeat(chosen[:, [0, 1, 1]], len(w), axis=0))
        weight.append(np.tile(w, (len(chosen), 1)))
    corners = vertices[faces]
    side = np.linalg.norm(corners - np.roll(corners, -1, axis=1), axis=2).max(axis=1)
    cuts = np.maximum(np.ceil(side / step).astype(int), 1)
    for k in np.unique(cuts):
        i, j = np.meshgrid(np.arange(1, k), np.arange(1, k), indexing="ij")
        keep = i + j < k
        w = np.stack([i[keep], j[keep], (k - i - j)[keep]], axis=1) / k
        w = np.concatenate([w, [[1 / 3, 1 / 3, 1 / 3]]])
        chosen = faces[cuts == k]
        index.append(np.repeat(chosen, len(w), axis=0))
        weight.append(np.tile(w, (len(chosen), 1)))
    return np.concatenate(index), np.concatenate(weight)


def _obstacle_samples(merged: MeshIndex, owner: np.ndarray, low, high):
    """Points, unit normals and owners of the obstacles' own test points in a box."""
    faces = merged.faces
    corner, weight = _surface_samples(faces, merged.vertices, SAMPLE_STEP)
    # _surface_samples groups faces by size; the owner follows by each face's first corner.
    of_vertex = np.zeros(len(merged.vertices), np.int64)
    of_vertex[faces.reshape(-1)] = np.repeat(owner, 3)
    points = np.einsum("nk,nkd->nd", weight, merged.vertices[corner])
    near = np.all((points >= low) & (points <= high), axis=1)
    corner, weight, points = corner[near], weight[near], points[near]
    normal = np.einsum("nk,nkd->nd", weight, merged.vertex_normal[corner])
    normal /= np.maximum(np.linalg.norm(normal, axis=1, keepdims=True), 1e-12)
    return points, normal, of_vertex[corner[:, 0]]


def _longest(count: int, index: np.ndarray, vector: np.ndarray) -> np.ndarray:
    """(count, 3): for each number in ``index`` the longest of its vectors."""
    result = np.zeros((count, 3))
    size = np.linalg.norm(vector, axis=1)
    order = np.argsort(size, kind="stable")
    result[index[order]] = vector[order]
    return result


# --- sheets -----------------------------------------------------------------------------------


STEEPEST_BULGE = 0.5
"""mm a mm along the sheet: how steeply a pushed place may stand out of its surroundings."""


def _spread_moves(move: np.ndarray, mid: np.ndarray, rounds: int = 12) -> np.ndarray:
    """Let neighbours follow a moved grid point, so that the sheet bulges, not spikes.

    A neighbour d mm away moves at least as far less d times ``STEEPEST_BULGE``,
    however close the fibres lie.
    """
    size = np.linalg.norm(move, axis=2)
    if not size.any():
        return move
    steps = [
        (axis, STEEPEST_BULGE * np.linalg.norm(np.diff(mid, axis=axis), axis=2)) for axis in (0, 1)
    ]
    for _ in range(rounds):
        changed = False
        for axis, fall in steps:
            for forward in (True, False):
                near, far = [slice(None)] * 2, [slice(None)] * 2
                near[axis], far[axis] = slice(None, -1), slice(1, None)
                if not forward:
                    near, far = far, near
                near, far = tuple(near), tuple(far)
                wanted = size[near] - fall
                more = wanted > size[far] + 1e-3
                if more.any():
                    changed = True
                    scale = np.where(more, wanted / np.maximum(size[near], 1e-12), 0)[..., None]
                    move[far] = np.where(more[..., None], scale * move[near], move[far])
                    size[far] = np.where(more, wanted, size[far])
        if not changed:
            break
    return move


def resolve_sheet(
    sheet: SheetGrid,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.2,
    *,
    attached: Sequence[MeshIndex] | None = None,
    reach: float = 8.0,
    rounds: int = 10,
    fixed: np.ndarray | None = None,
) -> SheetGrid:
    """Clear a sheet of exact meshes; its two faces stay apart.

    Where obstacles press from one side both faces move; where from both sides
    the sheet thins, down to 0.6 mm (0.3 mm at its ends).

    Parameters
    ----------
    sheet : SheetGrid
    obstacles : sequence of MeshIndex
        Closed meshes that do not overlap one another.
    gap : float
        Room to be left, mm.
    attached : sequence of MeshIndex or None
        Those of the obstacles to which the ends are attached: within ``reach``
        of an end the sheet may sink into them, up to 1.5 mm at the very end.
        None means all.
    reach : float
        mm along the fibres.
    rounds : int
        Most rounds; stops when clear.
    fixed : (nv, nu) bool or None
        Grid points that stay. End rows (u = 0, 1) move 1 mm at most.

    Returns
    -------
    SheetGrid
        With its thickness raised to the least that can be drawn.
    """
    nv, nu = sheet.mid.shape[:2]
    mid = sheet.mid.copy()
    least = least_thickness(sheet)
    thickness = np.maximum(sheet.thickness, least)
    bounds = np.array([mid.reshape(-1, 3).min(axis=0), mid.reshape(-1, 3).max(axis=0)])
    bounds += np.array([[-1], [1]]) * 0.5 * thickness.max()
    found = merge(obstacles, bounds, SEARCH)
    if found is None:
        return replace(sheet, thickness=thickness)
    merged, owner = found
    soft = np.array([attached is None or any(o is a for a in attached) for o in obstacles])
    s = arc_length(mid)
    to_end = np.minimum(s, s[:, -1:] - s).reshape(-1)
    sink = (gap + ATTACHED_DEPTH) * np.clip(1 - to_end / max(reach, 1e-6), 0, 1)
    held = np.zeros((nv, nu), bool) if fixed is None else fixed.astype(bool)
    start = mid.copy()
    o_points, o_normals, o_owner = _obstacle_samples(
        merged, owner, bounds[0] - 1.0, bounds[1] + 1.0
    )
    # Lower bounds of each test point's distance: what can't have come near is not asked again.
    corner = weight = None
    own_bound = other_bound = np.zeros(0)
    side_of = None
    edge = ~binary_erosion(sheet.used(), np.ones((3, 3))).reshape(-1)
    other_nodes = np.zeros((0, 3), np.int64)
    fresh = True
    for _ in range(2 * rounds):
        now = replace(sheet, mid=mid, thickness=thickness)
        solid = thicken(now, fibres=1)
        vertices, faces, node = solid.mesh.vertices, solid.mesh.faces, solid.node
        unit = now.normals().reshape(-1, 3)
        if fresh:
            corner, weight = _surface_samples(faces, vertices, SAMPLE_STEP)
            own_bound = np.full(len(corner), -np.inf)
            other_bound = np.full(len(o_points), -np.inf)
            other_nodes = np.zeros((len(o_points), 3), np.int64)

        ask = np.flatnonzero(own_bound < gap)
        points = np.einsum("nk,nkd->nd", weight[ask], vertices[corner[ask]])
        d, _, normal, face = merged.query(points, reach=SEARCH)
        own_bound[ask] = np.minimum(d, SEARCH)
        allow = np.einsum("nk,nk->n", weight[ask], sink[node[corner[ask]]])
        allow *= soft[owner[np.maximum(face, 0)]]
        lack = np.where(face >= 0, gap - allow - d, 0.0)
        bad = lack > TOLERANCE
        mine = [ask[bad], lack[bad], normal[bad], owner[face[bad]]]

        # The obstacles' own points against the new surface.
        ask = np.flatnonzero(other_bound < gap)
        index, vector = [], []
        if len(ask):
            d, _, _, face = MeshIndex(vertices, faces).query(o_points[ask], reach=SEARCH)
            other_bound[ask] = np.minimum(d, SEARCH)
            on = face >= 0
            ask, d, touched = ask[on], d[on], node[faces[face[on]]]
            other_nodes[ask] = touched
            if side_of is None:
                height = _height(o_points[ask], mid.reshape(-1, 3)[touched], unit[touched])
                height -= DEEPER_BIAS
                side_of = _vote(len(obstacles), (nv, nu), o_owner[ask], touched, height)
            allow = sink[touched].mean(axis=1) * soft[o_owner[ask]]
            bad = d < gap - allow - TOLERANCE
            index.append(touched[bad])
            vector.append(
                _clear_point(
                    o_points[ask[bad]],
                    o_normals[ask[bad]],
                    (gap - allow)[bad],
                    d[bad],
                    mid.reshape(-1, 3)[touched[bad]],
                    unit[touched[bad]],
                    0.5 * thickness.reshape(-1)[touched[bad]],
                    None if side_of is None else side_of[o_owner[ask[bad]], touched[bad, 0]],
                    edge[touched[bad, 0]],
                )
            )
        sample, lack, normal, whose = mine
        nodes = node[corner[sample]]
        facing = np.einsum("nd,nd->n", normal, unit[nodes[:, 0]])
        if side_of is not None:
            # Above what lies below; a face turned the other way is the obstacle's far side.
            wanted = side_of[whose, nodes[:, 0]]
            keep = (facing * wanted > 0.5) | edge[nodes[:, 0]]
            nodes, lack, normal, facing = nodes[keep], lack[keep], normal[keep], facing[keep]
        index.append(nodes)
        vector.append(_along_normal(lack, normal, unit[nodes[:, 0]]))
        index, vector = np.concatenate(index), np.concatenate(vector)
        if len(index) == 0:
            if fresh:
                break
            fresh = True
            continue
        fresh = False
        vector *= OVERSHOOT
        size = np.linalg.norm(vector, axis=1, keepdims=True)
        vector *= np.minimum(1.0, LONGEST_PUSH / np.maximum(size, 1e-12))
        all_nodes = index.reshape(-1)
        all_vectors = np.repeat(vector, 3, axis=0)
        side = np.einsum("nd,nd->n", all_vectors, unit[all_nodes])
        up = _longest(nv * nu, all_nodes[side >= 0], all_vectors[side >= 0])
        down = _longest(nv * nu, all_nodes[side < 0], all_vectors[side < 0])
        up, down = (_spread_moves(m.reshape(nv, nu, 3), mid) for m in (up, down))
        squeezed = (np.linalg.norm(up, axis=2) > 1e-3) & (np.linalg.norm(down, axis=2) > 1e-3)
        lost = np.einsum("vud,vud->vu", up - down, unit.reshape(nv, nu, 3))
        move = np.where(squeezed[..., None], 0.5 * (up + down), up + down)
        move[held] = 0
        before = vertices
        mid = mid + move
        thickness = np.where(
            squeezed, np.maximum(thickness - np.maximum(lost, 0), least), thickness
        )
        # Ends stay where they are attached.
        for end in (0, -1):
            away = mid[:, end] - start[:, end]
            size = np.linalg.norm(away, axis=1, keepdims=True)
            mid[:, end] = start[:, end] + away * np.minimum(1.0, 1.0 / np.maximum(size, 1e-12))
        after = thicken(replace(sheet, mid=mid, thickness=thickness), fibres=1).mesh.vertices
        shift = np.linalg.norm(after - before, axis=1)
        own_bound -= shift[corner].max(axis=1)
        # An obstacle's point sees no more than the largest move of the grid round its nodes.
        of_node = np.zeros(nv * nu)
        np.maximum.at(of_node, node, shift)
        of_node = maximum_filter(of_node.reshape(nv, nu), size=5).reshape(-1)
        other_bound -= of_node[other_nodes].max(axis=1)
    return replace(sheet, mid=mid, thickness=thickness)


def _height(point: np.ndarray, mid: np.ndarray, unit: np.ndarray) -> np.ndarray:
    """(n,) height of points (n, 3) over the sheet at three grid points each, mm."""
    return np.einsum("nd,nd->n", point - mid.mean(axis=1), unit.mean(axis=1))


def _vote(count, shape, owner, touched, height) -> np.ndarray:
    """(obstacles, nodes) float: +1 where an obstacle lies under the sheet, -1 where over it.

    Judged by the mean height of all its points near by, so that what pierces
    the sheet is passed on the side on which most of it lies.
    """
    total = np.zeros((count, shape[0] * shape[1]))
    np.add.at(total, (np.repeat(owner, 3), touched.reshape(-1)), np.repeat(height, 3))
    total = total.reshape(count, *shape)
    around = uniform_filter(total, size=(1, 9, 9), mode="constant")
    whole = np.sign(total.sum(axis=(1, 2)))[:, None, None]
    known = np.abs(around) > 1e-9
    return np.where(known, -np.sign(around), -whole).reshape(count, -1)


def _clear_point(point, normal, room, distance, mid, unit, half, wanted, edge):
    """(n, 3) moves of a sheet that bring it clear of points of an obstacle.

    For an obstacle under the sheet (``wanted`` +1) the deep face must rise
    above the point, else the superficial face sink below it. At the sheet's
    ``edge`` a shallow wall beside it pushes it sideways.
    """
    n_mid = unit.mean(axis=1)
    height = np.einsum("nd,nd->n", point - mid.mean(axis=1), n_mid)
    facing = np.einsum("nd,nd->n", normal, n_mid)
    thick = half.mean(axis=1)
    up = np.maximum(height + room + thick, 0)
    down = np.minimum(height - room - thick, 0)
    side = facing if wanted is None else wanted
    push = np.where(side >= 0, up, down)[:, None] * n_mid
    lateral = edge & (np.abs(facing) < 0.35) & (distance > -1.5)
    push[lateral] = (room - distance)[lateral, None] * normal[lateral]
    return push


def _along_normal(lack: np.ndarray, normal: np.ndarray, unit: np.ndarray) -> np.ndarray:
    """Push along the sheet's own normal where that leads out, else along the obstacle's."""
    facing = np.einsum("nd,nd->n", normal, unit)
    steep = np.abs(facing) < 0.5
    along = (lack / np.where(steep, 1.0, facing))[:, None] * unit
    return np.where(steep[:, None], lack[:, None] * normal, along)


# --- any mesh ---------------------------------------------------------------------------------


def _neighbour_mean(faces: np.ndarray, count: int) -> csr_matrix:
    a = np.concatenate([faces[:, [0, 1, 2]].reshape(-1), faces[:, [1, 2, 0]].reshape(-1)])
    b = np.concatenate([faces[:, [1, 2, 0]].reshape(-1), faces[:, [0, 1, 2]].reshape(-1)])
    near = coo_matrix((np.ones(len(a)), (a, b)), shape=(count, count)).tocsr()
    near.data[:] = 1.0
    return diags(1.0 / np.maximum(np.asarray(near.sum(axis=1)).reshape(-1), 1)) @ near


def resolve(
    mesh: trimesh.Trimesh,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.2,
    fixed: np.ndarray | None = None,
    rounds: int = 12,
    *,
    body: float = 0.0,
) -> trimesh.Trimesh:
    """Clear any closed mesh of exact meshes by moving its vertices.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        Closed; connectivity is kept, so that per-vertex arrays stay valid.
    obstacles : sequence of MeshIndex
        Closed meshes that do not overlap one another.
    gap : float
        Room to be left, mm.
    fixed : (n_vertices,) bool or None
        Vertices that stay.
    rounds : int
        Most rounds; stops when clear.
    body : float
        Width of the mesh, mm: vertices within this distance of a pushed one
        move with it, so that a tube gives way instead of being flattened. 0
        moves only the pushed side.

    Returns
    -------
    trimesh.Trimesh
    """
    vertices, faces = np.array(mesh.vertices, dtype=np.float64), np.asarray(mesh.faces)
    bounds = np.array([vertices.min(axis=0), vertices.max(axis=0)])
    found = merge(obstacles, bounds, SEARCH)
    if found is None:
        return mesh
    merged, owner = found
    o_points, o_normals, _ = _obstacle_samples(merged, owner, bounds[0] - 1.0, bounds[1] + 1.0)
    mean = _neighbour_mean(faces, len(vertices))
    held = np.zeros(len(vertices), bool) if fixed is None else np.asarray(fixed, bool)
    for _ in range(rounds):
        corner, weight = _surface_samples(faces, vertices, SAMPLE_STEP)
        points = np.einsum("nk,nkd->nd", weight, vertices[corner])
        d, _, normal, face = merged.query(points, reach=SEARCH)
        bad = (face >= 0) & (d < gap - TOLERANCE)
        index, vector = [corner[bad]], [(gap - d[bad])[:, None] * normal[bad]]
        if len(o_points):
            mine = MeshIndex(vertices, faces)
            d, close, _, face = mine.query(o_points, reach=SEARCH)
            near = face >= 0
            o_points, o_normals = o_points[near], o_normals[near]
            d, face = d[near], face[near]
            bad = d < gap - TOLERANCE
            index.append(faces[face[bad]])
            vector.append((gap - d[bad])[:, None] * o_normals[bad])
        index, vector = np.concatenate(index), np.concatenate(vector)
        if len(index) == 0:
            break
        vector *= OVERSHOOT
        size = np.linalg.norm(vector, axis=1, keepdims=True)
        vector *= np.minimum(1.0, LONGEST_PUSH / np.maximum(size, 1e-12))
        move = _longest(len(vertices), index.reshape(-1), np.repeat(vector, 3, axis=0))
        if body > 0:
            move = _carry_along(vertices, move, body)
        for _ in range(2):
            around = mean @ move
            longer = np.linalg.norm(around, axis=1) > np.linalg.norm(move, axis=1)
            move = np.where(longer[:, None], around, move)
        move[held] = 0
        vertices = vertices + move
    return trimesh.Trimesh(vertices, faces, process=False)


def _carry_along(vertices: np.ndarray, move: np.ndarray, body: float) -> np.ndarray:
    """Give each vertex the longest move found within ``body`` mm, fading with distance."""
    from scipy.spatial import cKDTree

    pushed = np.flatnonzero(np.linalg.norm(move, axis=1) > 1e-6)
    if len(pushed) == 0:
        return move
    tree = cKDTree(vertices[pushed])
    count = min(8, len(pushed))
    distance, number = tree.query(vertices, k=count, distance_upper_bound=1.5 * body)
    distance, number = distance.reshape(len(vertices), -1), number.reshape(len(vertices), -1)
    ok = np.isfinite(distance)
    fade = np.where(ok, np.clip(1.5 - distance / body, 0, 1), 0.0)
    vectors = move[pushed[np.where(ok, number, 0)]] * fade[..., None]
    best = np.linalg.norm(vectors, axis=2).argmax(axis=1)
    carried = vectors[np.arange(len(vertices)), best]
    longer = np.linalg.norm(carried, axis=1) > np.linalg.norm(move, axis=1)
    return np.where(longer[:, None], carried, move)


def untangle(mesh: trimesh.Trimesh, rounds: int = 8) -> trimesh.Trimesh:
    """Smooth a mesh where it crosses itself until it no longer does.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        Closed; connectivity is kept, so that per-vertex arrays stay valid.
    rounds : int
        Most rounds; each moves the crossing triangles' corners and, later,
        wider surroundings half-way to their neighbours' mean.

    Returns
    -------
    trimesh.Trimesh
        The mesh itself when nothing crosses.
    """
    vertices, faces = np.asarray(mesh.vertices, dtype=np.float64), np.asarray(mesh.faces)
    mean = None
    for number in range(rounds):
        pairs = self_intersections(MeshIndex(vertices, faces))
        if len(pairs) == 0:
            break
        if mean is None:
            mean = _neighbour_mean(faces, len(vertices))
        chosen = np.zeros(len(vertices))
        chosen[faces[pairs].reshape(-1)] = 1.0
        for _ in range(1 + number // 2):
            chosen = np.minimum(chosen + (mean @ chosen > 0), 1.0)
        for _ in range(3):
            vertices = np.where(chosen[:, None] > 0, 0.5 * (vertices + mean @ vertices), vertices)
    else:
        return trimesh.Trimesh(vertices, faces, process=False)
    return mesh if mean is None else trimesh.Trimesh(vertices, faces, process=False)


def finish_sheet(
    sheet: SheetGrid,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.2,
    *,
    attached: Sequence[MeshIndex] | None = None,
    fixed: np.ndarray | None = None,
    rounds: int = 10,
    tendon: tuple[float, float] | Callable[[np.ndarray, np.ndarray], np.ndarray] | None = None,
    fibres: int = 16,
    rim_points: int = 3,
) -> tuple[SheetGrid, ThickSheet]:
    """Resolve, thicken and untangle a sheet in one go.

    Parameters
    ----------
    sheet, obstacles, gap, attached, fixed, rounds
        See :func:`resolve_sheet`.
    tendon, fibres, rim_points
        See :func:`meshes.drape.sheet.thicken`.

    Returns
    -------
    SheetGrid
        The resolved grid, for ``Field.add_sheet(grid.outer(), ...)``.
    ThickSheet
        The closed solid.
    """
    grid = resolve_sheet(sheet, obstacles, gap, attached=attached, fixed=fixed, rounds=rounds)
    solid = thicken(grid, tendon=tendon, fibres=fibres, rim_points=rim_points)
    return grid, replace(solid, mesh=untangle(solid.mesh))


def settle(
    meshes: Mapping[str, trimesh.Trimesh],
    obstacles: Sequence[MeshIndex] = (),
    gap: float = 0.1,
    *,
    rounds: int = 6,
    threads: int = 2,
) -> dict[str, trimesh.Trimesh]:
    """Push a family of touching meshes off obstacles and off one another.

    For shares of one space (``bundle``) that contour and decimation left a
    fraction of a millimetre in each other: each mesh is cleared of the
    obstacles, then, in order, of the ones before it.

    Parameters
    ----------
    meshes : mapping of str to trimesh.Trimesh
        Closed.
    obstacles : sequence of MeshIndex
    gap : float
        mm to be left.
    rounds : int
        Most rounds for each.
    threads : int

    Returns
    -------
    dict of str to trimesh.Trimesh
        Same order and connectivity, free of self-intersection where smoothing could do it.
    """

    def off_obstacles(mesh: trimesh.Trimesh) -> trimesh.Trimesh:
        return untangle(resolve(mesh, obstacles, gap, rounds=rounds), rounds=4)

    names = list(meshes)
    with ThreadPoolExecutor(threads) as pool:
        settled = dict(zip(names, pool.map(off_obstacles, meshes.values())))
    done: list[MeshIndex] = []
    for name in names:
        index = MeshIndex.of(settled[name])
        if any(overlap_depth(index, other)[0] > 0 for other in done):
            settled[name] = untangle(
                resolve(settled[name], [*done, *obstacles], gap, rounds=rounds), rounds=4
            )
            index = MeshIndex.of(settled[name])
        done.append(index)
    return settled
