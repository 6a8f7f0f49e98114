"""Proofs on finished meshes: closed, outward, free of self-intersection, apart.

Nothing here looks at fields or grids; what is judged is what is drawn.
"""

from __future__ import annotations

from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor

import numpy as np
import trimesh
from numba import njit

from meshes.drape.distance import KERNEL, LEAF_SIZE, MeshIndex, _boxes, _build_tree, _corners
from meshes.shapes.halves import in_halves

SAMPLE_STEP = 2.0
"""mm between the points of a surface that are tested for lying inside another."""

TOUCH = 1e-7
"""Share of an edge: crossings nearer than this to a triangle's border count as touching."""


def is_closed(mesh: trimesh.Trimesh) -> bool:
    """Whether every edge is used exactly once in each direction."""
    faces = np.asarray(mesh.faces, dtype=np.int64)
    if len(faces) == 0:
        return False
    size = int(faces.max()) + 1
    a, b = faces.reshape(-1), np.roll(faces, -1, axis=1).reshape(-1)
    there, back = np.sort(a * size + b), np.sort(b * size + a)
    return bool(np.all(a != b) and np.all(np.diff(there) > 0) and np.array_equal(there, back))


def signed_volume(mesh: trimesh.Trimesh) -> float:
    """Volume, mm^3; negative when the faces look inward."""
    corners = (np.asarray(mesh.vertices) - np.mean(mesh.vertices, axis=0))[np.asarray(mesh.faces)]
    cross = np.cross(corners[:, 1], corners[:, 2])
    return float(np.einsum("ij,ij->", corners[:, 0], cross) / 6.0)


def is_outward(mesh: trimesh.Trimesh) -> bool:
    """Whether a closed mesh and each of its separate pieces look outward.

    A piece inside another (a hollow) may look inward; here that counts as wrong,
    because no part of the model has hollows.
    """
    faces = np.asarray(mesh.faces)
    vertices = np.asarray(mesh.vertices, dtype=np.float64)
    from scipy.sparse import coo_matrix
    from scipy.sparse.csgraph import connected_components

    n = len(vertices)
    ones = np.ones(2 * len(faces))
    a = np.concatenate([faces[:, 0], faces[:, 1]])
    b = np.concatenate([faces[:, 1], faces[:, 2]])
    count, label = connected_components(coo_matrix((ones, (a, b)), shape=(n, n)), directed=False)
    # A reference point near by: far ones lose digits.
    corners = (vertices - vertices.mean(axis=0))[faces]
    parts = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6.0
    volume = np.bincount(label[faces[:, 0]], weights=parts, minlength=count)
    used = np.unique(label[faces[:, 0]])
    return bool(np.all(volume[used] > 0))


# --- self-intersection --------------------------------------------------------------------------


@njit(**KERNEL)
def _segment_hits(p, q, t, touch):
    """Whether the open segment pq crosses the inside of triangle ``t`` (9,)."""
    e1 = np.empty(3)
    e2 = np.empty(3)
    d = np.empty(3)
    s = np.empty(3)
    for k in range(3):
        e1[k] = t[3 + k] - t[k]
        e2[k] = t[6 + k] - t[k]
        d[k] = q[k] - p[k]
        s[k] = p[k] - t[k]
    hx = d[1] * e2[2] - d[2] * e2[1]
    hy = d[2] * e2[0] - d[0] * e2[2]
    hz = d[0] * e2[1] - d[1] * e2[0]
    det = e1[0] * hx + e1[1] * hy + e1[2] * hz
    size = (
        np.sqrt(e1[0] ** 2 + e1[1] ** 2 + e1[2] ** 2)
        * np.sqrt(e2[0] ** 2 + e2[1] ** 2 + e2[2] ** 2)
        * np.sqrt(d[0] ** 2 + d[1] ** 2 + d[2] ** 2)
    )
    # Parallel segments (and coplanar triangles) touch but do not cross.
    if abs(det) <= 1e-12 * size:
        return False
    u = (s[0] * hx + s[1] * hy + s[2] * hz) / det
    if u < touch or u > 1 - touch:
        return False
    cx = s[1] * e1[2] - s[2] * e1[1]
    cy = s[2] * e1[0] - s[0] * e1[2]
    cz = s[0] * e1[1] - s[1] * e1[0]
    v = (d[0] * cx + d[1] * cy + d[2] * cz) / det
    if v < touch or u + v > 1 - touch:
        return False
    r = (e2[0] * cx + e2[1] * cy + e2[2] * cz) / det
    return touch < r < 1 - touch


@njit(**KERNEL)
def _cross(a, b, fa, fb, touch):
    """Whether two triangles cross; edges that meet a shared corner can't cross there."""
    for k in range(3):
        p, q = fa[k], fa[(k + 1) % 3]
        if not (
            (p == fb[0] or p == fb[1] or p == fb[2]) or (q == fb[0] or q == fb[1] or q == fb[2])
        ):
            i, j = 3 * k, 3 * ((k + 1) % 3)
            if _segment_hits(a[i : i + 3], a[j : j + 3], b, touch):
                return True
        p, q = fb[k], fb[(k + 1) % 3]
        if not (
            (p == fa[0] or p == fa[1] or p == fa[2]) or (q == fa[0] or q == fa[1] or q == fa[2])
        ):
            i, j = 3 * k, 3 * ((k + 1) % 3)
            if _segment_hits(b[i : i + 3], b[j : j + 3], a, touch):
                return True
    return False


@njit(**KERNEL)
def _self_pairs(low, high, link, corners, order, faces, fresh, touch, most, begin, end):
    """Pairs of crossing triangles, found by walking the tree with each triangle's box.

    With ``fresh`` (m,), in the order of the tree, one of each pair is marked; empty asks all.
    """
    every = fresh.size == 0
    found = np.empty((most, 2), np.int64)
    count = 0
    stack = np.empty(128, np.int32)
    for i in range(begin, end):
        if not (every or fresh[i]):
            continue
        t = corners[i]
        l0, l1, l2 = min(t[0], t[3], t[6]), min(t[1], t[4], t[7]), min(t[2], t[5], t[8])
        h0, h1, h2 = max(t[0], t[3], t[6]), max(t[1], t[4], t[7]), max(t[2], t[5], t[8])
        fi = faces[order[i]]
        # Normal of the triangle: others wholly to one side of its plane can't cross it.
        n0 = (t[4] - t[1]) * (t[8] - t[2]) - (t[5] - t[2]) * (t[7] - t[1])
        n1 = (t[5] - t[2]) * (t[6] - t[0]) - (t[3] - t[0]) * (t[8] - t[2])
        n2 = (t[3] - t[0]) * (t[7] - t[1]) - (t[4] - t[1]) * (t[6] - t[0])
        stack[0] = 0
        top = 1
        while top > 0:
            top -= 1
            node = stack[top]
            if (
                low[node, 0] > h0
                or low[node, 1] > h1
                or low[node, 2] > h2
                or high[node, 0] < l0
                or high[node, 1] < l1
                or high[node, 2] < l2
            ):
                continue
            first, n = link[node, 0], link[node, 1]
            if n == 0:
                stack[top] = node + 1
                stack[top + 1] = first
                top += 2
                continue
            for j in range(first, first + n):
                # Of two that are asked, the earlier one finds the pair.
                if j == i or (j < i and (every or fresh[j])):
                    continue
                s = corners[j]
                if (
                    min(s[0], s[3], s[6]) > h0
                    or max(s[0], s[3], s[6]) < l0
                    or min(s[1], s[4], s[7]) > h1
                    or max(s[1], s[4], s[7]) < l1
                    or min(s[2], s[5], s[8]) > h2
                    or max(s[2], s[5], s[8]) < l2
                ):
                    continue
                d0 = (s[0] - t[0]) * n0 + (s[1] - t[1]) * n1 + (s[2] - t[2]) * n2
                d1 = (s[3] - t[0]) * n0 + (s[4] - t[1]) * n1 + (s[5] - t[2]) * n2
                d2 = (s[6] - t[0]) * n0 + (s[7] - t[1]) * n1 + (s[8] - t[2]) * n2
                if (d0 > 0 and d1 > 0 and d2 > 0) or (d0 < 0 and d1 < 0 and d2 < 0):
                    continue
                if _cross(t, s, fi, faces[order[j]], touch):
                    if count < most:
                        found[count, 0] = order[i]
                        found[count, 1] = order[j]
                    count += 1
    return found[: min(count, most)].copy(), count


_ALL = np.zeros(0, bool)


@njit(**KERNEL)
def _moved_pairs(vertices, faces, moved, touch, most):
    order, low, high, link = _build_tree(*_boxes(vertices, faces), LEAF_SIZE)
    corners = _corners(vertices, faces, order)
    fresh = np.zeros(order.size, np.bool_)
    for i in range(order.size):
        for k in range(3):
            fresh[i] = fresh[i] or moved[faces[order[i], k]]
    return _self_pairs(
        low, high, link, corners, order, faces, fresh, touch, most, 0, order.size
    )[0]  # fmt: skip


def moved_intersections(
    vertices: np.ndarray, faces: np.ndarray, moved: np.ndarray, most: int = 20_000
) -> np.ndarray:
    """Pairs of triangles that cross, of those that moved with all.

    Parameters
    ----------
    vertices : (n, 3) float
        mm.
    faces : (m, 3) int
    moved : (n,) bool
        Vertices that moved; pairs of triangles without any of them are passed over.
    most : int
        Largest number of pairs handed back.

    Returns
    -------
    (k,) int
        Each pair as one number, smaller face first: face * m + face; sorted.
    """
    vertices = np.ascontiguousarray(vertices, dtype=np.float64)
    faces = np.ascontiguousarray(faces, dtype=np.int64)
    if len(faces) == 0:
        return np.zeros(0, np.int64)
    pairs = _moved_pairs(vertices, faces, np.ascontiguousarray(moved), TOUCH, most)
    return np.sort(pairs.min(axis=1) * len(faces) + pairs.max(axis=1))


def self_intersections(mesh: trimesh.Trimesh | MeshIndex, most: int = 100_000) -> np.ndarray:
    """Pairs of faces of one mesh that cross each other.

    Triangles that merely touch, or lie in one plane, do not count; where faces
    of one mesh pass through each other some pair crosses.

    Parameters
    ----------
    mesh : trimesh.Trimesh or MeshIndex
    most : int
        Largest number of pairs handed back.

    Returns
    -------
    (k, 2) int
        Face numbers, smaller first, sorted.
    """
    index = MeshIndex.of(mesh)

    def rows(first: int, last: int) -> np.ndarray:
        return _self_pairs(
            *index.tree, index.order, index.faces, _ALL, TOUCH, most, first, last
        )[0]  # fmt: skip

    pairs = np.sort(np.concatenate(in_halves(rows, len(index.faces)))[:most], axis=1)
    return pairs[np.lexsort((pairs[:, 1], pairs[:, 0]))]


_NOWHERE, _EVERYWHERE = np.full(3, -np.inf), np.full(3, np.inf)


@njit(**KERNEL)
def _trees_cross(
    low_a,
    high_a,
    link_a,
    corners_a,
    low_b,
    high_b,
    link_b,
    corners_b,
    touch,
    first_only,
    low_r,
    high_r,
):
    """Count triangles of two trees that cross near a region, and the box of where they do.

    Both trees are walked at once; ``first_only`` stops at the first. What lies in the box
    already is passed over, so that the count is no more than a sign.
    """
    box_low = np.full(3, np.inf)
    box_high = np.full(3, -np.inf)
    count = 0
    none_a = np.array([0, 1, 2])
    none_b = np.array([3, 4, 5])
    stack = np.empty((512, 2), np.int32)
    stack[0, 0], stack[0, 1] = 0, 0
    top = 1
    while top > 0:
        top -= 1
        a, b = stack[top, 0], stack[top, 1]
        if (
            low_a[a, 0] > high_b[b, 0]
            or low_a[a, 1] > high_b[b, 1]
            or low_a[a, 2] > high_b[b, 2]
            or high_a[a, 0] < low_b[b, 0]
            or high_a[a, 1] < low_b[b, 1]
            or high_a[a, 2] < low_b[b, 2]
        ):
            continue
        apart = False
        known = True
        for k in range(3):
            low, high = max(low_a[a, k], low_b[b, k]), min(high_a[a, k], high_b[b, k])
            apart = apart or low > high_r[k] or high < low_r[k]
            known = known and low >= box_low[k] and high <= box_high[k]
        if apart or known:
            continue
        na, nb = link_a[a, 1], link_b[b, 1]
        if na > 0 and nb > 0:
            for i in range(link_a[a, 0], link_a[a, 0] + na):
                t = corners_a[i]
                n0 = (t[4] - t[1]) * (t[8] - t[2]) - (t[5] - t[2]) * (t[7] - t[1])
                n1 = (t[5] - t[2]) * (t[6] - t[0]) - (t[3] - t[0]) * (t[8] - t[2])
                n2 = (t[3] - t[0]) * (t[7] - t[1]) - (t[4] - t[1]) * (t[6] - t[0])
                l0, l1, l2 = min(t[0], t[3], t[6]), min(t[1], t[4], t[7]), min(t[2], t[5], t[8])
                h0, h1, h2 = max(t[0], t[3], t[6]), max(t[1], t[4], t[7]), max(t[2], t[5], t[8])
                for j in range(link_b[b, 0], link_b[b, 0] + nb):
                    s = corners_b[j]
                    if (
                        min(s[0], s[3], s[6]) > h0
                        or max(s[0], s[3], s[6]) < l0
                        or min(s[1], s[4], s[7]) > h1
                        or max(s[1], s[4], s[7]) < l1
                        or min(s[2], s[5], s[8]) > h2
                        or max(s[2], s[5], s[8]) < l2
                    ):
                        continue
                    d0 = (s[0] - t[0]) * n0 + (s[1] - t[1]) * n1 + (s[2] - t[2]) * n2
                    d1 = (s[3] - t[0]) * n0 + (s[4] - t[1]) * n1 + (s[5] - t[2]) * n2
                    d2 = (s[6] - t[0]) * n0 + (s[7] - t[1]) * n1 + (s[8] - t[2]) * n2
                    if (d0 > 0 and d1 > 0 and d2 > 0) or (d0 < 0 and d1 < 0 and d2 < 0):
                        continue
                    if _cross(t, s, none_a, none_b, touch):
                        count += 1
                        if first_only:
                            return count, box_low, box_high
                        for k in range(3):
                            low = max(min(t[k], t[3 + k], t[6 + k]), min(s[k], s[3 + k], s[6 + k]))
                            high = min(max(t[k], t[3 + k], t[6 + k]), max(s[k], s[3 + k], s[6 + k]))
                            box_low[k] = min(box_low[k], low)
                            box_high[k] = max(box_high[k], high)
            continue
        # The larger of the two boxes is opened.
        size_a = (
            (high_a[a, 0] - low_a[a, 0])
            + (high_a[a, 1] - low_a[a, 1])
            + (high_a[a, 2] - low_a[a, 2])
        )
        size_b = (
            (high_b[b, 0] - low_b[b, 0])
            + (high_b[b, 1] - low_b[b, 1])
            + (high_b[b, 2] - low_b[b, 2])
        )
        if na == 0 and (nb > 0 or size_a >= size_b):
            stack[top, 0], stack[top, 1] = link_a[a, 0], b
            stack[top + 1, 0], stack[top + 1, 1] = a + 1, b
        else:
            stack[top, 0], stack[top, 1] = a, link_b[b, 0]
            stack[top + 1, 0], stack[top + 1, 1] = a, b + 1
        top += 2
    return count, box_low, box_high


def cross(a: MeshIndex, b: MeshIndex) -> bool:
    """Whether the surfaces of two meshes meet anywhere; those that just touch count.

    Two closed meshes that do not meet are apart, or one lies wholly inside the other.
    """
    return _trees_cross(*a.tree, *b.tree, -10 * TOUCH, True, _NOWHERE, _EVERYWHERE)[0] > 0


def crossing_box(a: MeshIndex, b: MeshIndex, region: np.ndarray | None = None) -> np.ndarray | None:
    """(2, 3) box of where the surfaces of two meshes meet, mm; None where they don't.

    ``region`` (2, 3) is the box outside which nobody asks.
    """
    low, high = (_NOWHERE, _EVERYWHERE) if region is None else region
    count, low, high = _trees_cross(*a.tree, *b.tree, -10 * TOUCH, False, low, high)
    return np.array([low, high]) if count else None


# --- overlap ------------------------------------------------------------------------------------


def _depth_inside(points: np.ndarray, index: MeshIndex) -> tuple[np.ndarray, np.ndarray]:
    """Depths (k,) and points (k, 3) of those points that lie inside a closed mesh."""
    low, high = index.bounds
    points = points[np.all((points >= low) & (points <= high), axis=1)]
    if len(points) == 0:
        return np.zeros(0), np.zeros((0, 3))
    d = index.query(points)[0]
    inside = d < 0
    return -d[inside], points[inside]


def overlap_depth(
    a: MeshIndex,
    b: MeshIndex,
    step: float = SAMPLE_STEP,
    samples: tuple[np.ndarray, np.ndarray] | None = None,
) -> tuple[float, np.ndarray]:
    """How deep two closed meshes lie in each other.

    Depth is the farthest that a vertex, edge midpoint or face centre (points
    at most ``step`` mm apart) of either mesh lies inside the other.

    Parameters
    ----------
    a, b : MeshIndex
    step : float
        mm.
    samples : pair of (n, 3) or None
        Points of ``a`` and of ``b`` when they are at hand.

    Returns
    -------
    depth : float
        mm; 0 when apart.
    points : (k, 4) float
        Points inside the other mesh and, in the last column, their depth, deepest first.
    """
    box_a, box_b = a.bounds, b.bounds
    if np.any(box_a[0] > box_b[1]) or np.any(box_b[0] > box_a[1]):
        return 0.0, np.zeros((0, 4))
    of_a = a.samples(step)[0] if samples is None else samples[0]
    of_b = b.samples(step)[0] if samples is None else samples[1]
    depth, points = (
        np.concatenate(both) for both in zip(_depth_inside(of_a, b), _depth_inside(of_b, a))
    )
    if len(depth) == 0:
        return 0.0, np.zeros((0, 4))
    order = np.argsort(-depth)
    return float(depth[order[0]]), np.column_stack([points[order], depth[order]])


def overlapping_pairs(
    indexes: Sequence[MeshIndex],
    floor: float = 0.05,
    step: float = SAMPLE_STEP,
    threads: int = 2,
) -> list[tuple[int, int, float, np.ndarray]]:
    """All pairs of meshes that overlap by more than ``floor`` mm.

    Parameters
    ----------
    indexes : sequence of MeshIndex
    floor : float
        mm.
    step : float
        mm between test points.
    threads : int

    Returns
    -------
    list of (i, j, depth, points)
        i < j; ``points`` as from :func:`overlap_depth`.
    """
    if len(indexes) < 2:
        return []
    boxes = np.array([index.bounds for index in indexes])
    meet = np.all(boxes[:, None, 0] <= boxes[None, :, 1], axis=2)
    pairs = np.argwhere(np.triu(meet & meet.T, k=1))
    with ThreadPoolExecutor(threads) as pool:
        samples = list(pool.map(lambda index: index.samples(step)[0], indexes))

        def measure(pair: np.ndarray) -> tuple[int, int, float, np.ndarray]:
            i, j = int(pair[0]), int(pair[1])
            depth, points = overlap_depth(indexes[i], indexes[j], step, (samples[i], samples[j]))
            return i, j, depth, points

        return [found for found in pool.map(measure, pairs) if found[2] > floor]
