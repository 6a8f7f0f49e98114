"""Exact distances from points to a triangle mesh.

A bounding-volume tree over the triangles answers closest-point queries; the
sign comes from angle-weighted pseudo-normals (Baerentzen & Aanaes 2005), which
is exact for closed meshes, thin ones included. Open meshes are allowed: the
sign then tells the side of the surface.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
from numba import njit

from meshes.shapes.halves import in_halves

if TYPE_CHECKING:
    import trimesh

LEAF_SIZE = 4
"""Triangles per leaf of the tree."""

KERNEL = {"cache": True, "nogil": True, "fastmath": False}


@njit(**KERNEL)
def _build_tree(low, high, centre, leaf_size):
    """Median-split tree over boxes; returns order, node boxes and node links.

    ``link[i] = (first, count)`` for a leaf (count > 0), ``(right child, 0)``
    for an inner node, whose left child is ``i + 1``.
    """
    n = low.shape[0]
    order = np.arange(n)
    # Centres move with the order, so that a node's are read one after the other.
    place = centre.copy()
    most = max(1, 4 * (n // max(1, leaf_size // 2) + 1))
    link = np.zeros((most, 2), np.int32)
    # Depth-first: (start, stop, parent whose right child this is or -1).
    stack = np.empty((128, 3), np.int64)
    stack[0, 0], stack[0, 1], stack[0, 2] = 0, n, -1
    top = 1
    used = 0
    while top > 0:
        top -= 1
        start, stop, parent = stack[top, 0], stack[top, 1], stack[top, 2]
        node = used
        used += 1
        if parent >= 0:
            link[parent, 0] = node
        count = stop - start
        if count <= leaf_size:
            link[node, 0] = start
            link[node, 1] = count
            continue
        lx, ly, lz = np.inf, np.inf, np.inf
        hx, hy, hz = -np.inf, -np.inf, -np.inf
        for i in range(start, stop):
            x, y, z = place[i, 0], place[i, 1], place[i, 2]
            lx, ly, lz = min(lx, x), min(ly, y), min(lz, z)
            hx, hy, hz = max(hx, x), max(hy, y), max(hz, z)
        axis = 1 if hy - ly > hx - lx else 0
        if hz - lz > max(hx - lx, hy - ly):
            axis = 2
        middle = (start + stop) // 2
        # Quickselect of the middle triangle along the axis.
        a, b = start, stop - 1
        while a < b:
            pivot = place[(a + b) // 2, axis]
            i, j = a, b
            while i <= j:
                while place[i, axis] < pivot:
                    i += 1
                while place[j, axis] > pivot:
                    j -= 1
                if i <= j:
                    order[i], order[j] = order[j], order[i]
                    for k in range(3):
                        place[i, k], place[j, k] = place[j, k], place[i, k]
                    i += 1
                    j -= 1
            if middle <= j:
                b = j
            elif middle >= i:
                a = i
            else:
                break
        stack[top, 0], stack[top, 1], stack[top, 2] = middle, stop, node
        stack[top + 1, 0], stack[top + 1, 1], stack[top + 1, 2] = start, middle, -1
        top += 2
    node_low = np.full((used, 3), np.inf)
    node_high = np.full((used, 3), -np.inf)
    if n > 0:
        # Children stand behind their parent.
        for node in range(used - 1, -1, -1):
            first, count = link[node, 0], link[node, 1]
            for k in range(3):
                a, b = np.inf, -np.inf
                for i in range(first, first + count):
                    a, b = min(a, low[order[i], k]), max(b, high[order[i], k])
                if count == 0:
                    a = min(node_low[node + 1, k], node_low[first, k])
                    b = max(node_high[node + 1, k], node_high[first, k])
                node_low[node, k], node_high[node, k] = a, b
    return order, node_low, node_high, link[:used].copy()


@njit(**KERNEL)
def _boxes(vertices, faces):
    """Lower and upper corners of the boxes of triangles, and the boxes' centres, (m, 3) each."""
    m = faces.shape[0]
    low = np.empty((m, 3))
    high = np.empty((m, 3))
    centre = np.empty((m, 3))
    for f in range(m):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        for k in range(3):
            x, y, z = vertices[a, k], vertices[b, k], vertices[c, k]
            low[f, k] = min(x, y, z)
            high[f, k] = max(x, y, z)
            centre[f, k] = 0.5 * (low[f, k] + high[f, k])
    return low, high, centre


@njit(**KERNEL)
def _corners(vertices, faces, order):
    """Corners (m, 9) of triangles in tree order."""
    out = np.empty((order.size, 9))
    for i in range(order.size):
        for k in range(3):
            v = faces[order[i], k]
            out[i, 3 * k], out[i, 3 * k + 1], out[i, 3 * k + 2] = (
                vertices[v, 0], vertices[v, 1], vertices[v, 2],
            )  # fmt: skip
    return out


@njit(**KERNEL)
def _refit(corners, link):
    """Boxes of the nodes of a tree whose triangles (m, 9) stand elsewhere now."""
    nodes = link.shape[0]
    low = np.full((nodes, 3), np.inf)
    high = np.full((nodes, 3), -np.inf)
    # Children stand behind their parent.
    for node in range(nodes - 1, -1, -1):
        first, count = link[node, 0], link[node, 1]
        if count == 0:
            for k in range(3):
                low[node, k] = min(low[node + 1, k], low[first, k])
                high[node, k] = max(high[node + 1, k], high[first, k])
        for i in range(first, first + count):
            for j in range(9):
                low[node, j % 3] = min(low[node, j % 3], corners[i, j])
                high[node, j % 3] = max(high[node, j % 3], corners[i, j])
    return low, high


@njit(**KERNEL)
def number_edges(faces, count):
    """Edges (e, 2) of a mesh of ``count`` vertices, in order of their ends, and (m, 3) which edge
    leads from each corner to the next."""
    m = faces.shape[0]
    start = np.zeros(count + 1, np.int64)
    for f in range(m):
        for k in range(3):
            start[min(faces[f, k], faces[f, (k + 1) % 3]) + 1] += 1
    for v in range(count):
        start[v + 1] += start[v]
    place = start[:-1].copy()
    other = np.empty(3 * m, np.int64)
    half = np.empty(3 * m, np.int64)
    for f in range(m):
        for k in range(3):
            a, b = faces[f, k], faces[f, (k + 1) % 3]
            if b < a:
                a, b = b, a
            other[place[a]] = b
            half[place[a]] = 3 * f + k
            place[a] += 1
    edge_of = np.empty((m, 3), np.int64)
    edges = np.empty((3 * m, 2), np.int64)
    used = 0
    for v in range(count):
        first, last = start[v], start[v + 1]
        for i in range(first + 1, last):
            b, h = other[i], half[i]
            j = i - 1
            while j >= first and other[j] > b:
                other[j + 1], half[j + 1] = other[j], half[j]
                j -= 1
            other[j + 1], half[j + 1] = b, h
        for i in range(first, last):
            if i == first or other[i] != other[i - 1]:
                edges[used, 0], edges[used, 1] = v, other[i]
                used += 1
            edge_of[half[i] // 3, half[i] % 3] = used - 1
    return edges[:used].copy(), edge_of


@njit(**KERNEL)
def _pseudo_normals(vertices, faces, edge_of, n_edges):
    """Face, edge and angle-weighted vertex normals; and which edges and vertices are borders."""
    nf = faces.shape[0]
    face_normal = np.zeros((nf, 3))
    edge_normal = np.zeros((n_edges, 3))
    vertex_normal = np.zeros((vertices.shape[0], 3))
    uses = np.zeros(n_edges, np.int32)
    border_vertex = np.zeros(vertices.shape[0], np.bool_)
    for f in range(nf):
        a = vertices[faces[f, 0]]
        b = vertices[faces[f, 1]]
        c = vertices[faces[f, 2]]
        nx = (b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1])
        ny = (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2])
        nz = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
        length = np.sqrt(nx * nx + ny * ny + nz * nz)
        if length > 0:
            nx, ny, nz = nx / length, ny / length, nz / length
        face_normal[f, 0], face_normal[f, 1], face_normal[f, 2] = nx, ny, nz
        for k in range(3):
            e = edge_of[f, k]
            uses[e] += 1
            p = vertices[faces[f, k]]
            q = vertices[faces[f, (k + 1) % 3]]
            r = vertices[faces[f, (k + 2) % 3]]
            dot = 0.0
            pq = 0.0
            pr = 0.0
            for m in range(3):
                dot += (q[m] - p[m]) * (r[m] - p[m])
                pq += (q[m] - p[m]) ** 2
                pr += (r[m] - p[m]) ** 2
            angle = 0.0
            if pq > 0 and pr > 0:
                angle = np.arccos(min(1.0, max(-1.0, dot / np.sqrt(pq * pr))))
            for m in range(3):
                edge_normal[e, m] += face_normal[f, m]
                vertex_normal[faces[f, k], m] += angle * face_normal[f, m]
    border_edge = np.zeros(n_edges, np.bool_)
    for f in range(nf):
        for k in range(3):
            e = edge_of[f, k]
            if uses[e] == 1:
                border_edge[e] = True
                border_vertex[faces[f, k]] = True
                border_vertex[faces[f, (k + 1) % 3]] = True
    return face_normal, edge_normal, vertex_normal, border_edge, border_vertex


@njit(inline="always", **KERNEL)
def _closest_on_triangle(px, py, pz, t):
    """Closest point of triangle ``t`` (9,) to p: squared distance, barycentrics (v, w), feature.

    Feature: 0 face; 1, 2, 3 edge ab, bc, ca; 4, 5, 6 vertex a, b, c (Ericson 2005, 5.1.5).
    """
    ax, ay, az = t[0], t[1], t[2]
    abx, aby, abz = t[3] - ax, t[4] - ay, t[5] - az
    acx, acy, acz = t[6] - ax, t[7] - ay, t[8] - az
    apx, apy, apz = px - ax, py - ay, pz - az
    d1 = abx * apx + aby * apy + abz * apz
    d2 = acx * apx + acy * apy + acz * apz
    v = 0.0
    w = 0.0
    feature = 0
    bpx, bpy, bpz = px - t[3], py - t[4], pz - t[5]
    d3 = abx * bpx + aby * bpy + abz * bpz
    d4 = acx * bpx + acy * bpy + acz * bpz
    cpx, cpy, cpz = px - t[6], py - t[7], pz - t[8]
    d5 = abx * cpx + aby * cpy + abz * cpz
    d6 = acx * cpx + acy * cpy + acz * cpz
    vc = d1 * d4 - d3 * d2
    vb = d5 * d2 - d1 * d6
    va = d3 * d6 - d5 * d4
    if d1 <= 0 and d2 <= 0:
        feature = 4
    elif d3 >= 0 and d4 <= d3:
        v, feature = 1.0, 5
    elif vc <= 0 and d1 >= 0 and d3 <= 0:
        den = d1 - d3
        v = d1 / den if den > 0 else 0.0
        feature = 1
    elif d6 >= 0 and d5 <= d6:
        w, feature = 1.0, 6
    elif vb <= 0 and d2 >= 0 and d6 <= 0:
        den = d2 - d6
        w = d2 / den if den > 0 else 0.0
        feature = 3
    elif va <= 0 and (d4 - d3) >= 0 and (d5 - d6) >= 0:
        den = (d4 - d3) + (d5 - d6)
        w = (d4 - d3) / den if den > 0 else 0.0
        v = 1.0 - w
        feature = 2
    else:
        den = va + vb + vc
        if den > 0:
            v = vb / den
            w = vc / den
    dx = ax + v * abx + w * acx - px
    dy = ay + v * aby + w * acy - py
    dz = az + v * abz + w * acz - pz
    return dx * dx + dy * dy + dz * dz, v, w, feature


@njit(inline="always", **KERNEL)
def _box_distance2(px, py, pz, low, high, node):
    dx = max(low[node, 0] - px, 0.0, px - high[node, 0])
    dy = max(low[node, 1] - py, 0.0, py - high[node, 1])
    dz = max(low[node, 2] - pz, 0.0, pz - high[node, 2])
    return dx * dx + dy * dy + dz * dz


@njit(**KERNEL)
def nearest(px, py, pz, reach2, low, high, link, corners, stack, start):
    """Closest triangle (slot in tree order) within sqrt(reach2); -1 when there is none.

    ``start`` >= 0 names a triangle that is tried first, so that neighbouring
    queries prune early. Returns squared distance, slot, barycentrics, feature.
    """
    best = reach2
    slot = -1
    bv = 0.0
    bw = 0.0
    feature = 0
    if start >= 0:
        d2, v, w, f = _closest_on_triangle(px, py, pz, corners[start])
        if d2 < best:
            best, slot, bv, bw, feature = d2, start, v, w, f
    top = 0
    node = 0
    if _box_distance2(px, py, pz, low, high, 0) >= best:
        return best, slot, bv, bw, feature
    while True:
        count = link[node, 1]
        if count > 0:
            first = link[node, 0]
            for i in range(first, first + count):
                d2, v, w, f = _closest_on_triangle(px, py, pz, corners[i])
                if d2 < best:
                    best, slot, bv, bw, feature = d2, i, v, w, f
        else:
            left = node + 1
            right = link[node, 0]
            dl = _box_distance2(px, py, pz, low, high, left)
            dr = _box_distance2(px, py, pz, low, high, right)
            if dr < dl:
                left, right = right, left
                dl, dr = dr, dl
            if dl < best:
                if dr < best:
                    stack[top] = right
                    top += 1
                node = left
                continue
        found = False
        while top > 0:
            top -= 1
            node = stack[top]
            if _box_distance2(px, py, pz, low, high, node) < best:
                found = True
                break
        if not found:
            break
    return best, slot, bv, bw, feature


@njit(inline="always", **KERNEL)
def feature_normal(slot, feature, order, faces, edge_of, face_normal, edge_normal, vertex_normal):
    """Pseudo-normal (not normalised) of the feature on which the closest point lies."""
    f = order[slot]
    if feature == 0:
        return face_normal[f, 0], face_normal[f, 1], face_normal[f, 2]
    if feature <= 3:
        e = edge_of[f, feature - 1]
        return edge_normal[e, 0], edge_normal[e, 1], edge_normal[e, 2]
    v = faces[f, feature - 4]
    return vertex_normal[v, 0], vertex_normal[v, 1], vertex_normal[v, 2]


@njit(inline="always", **KERNEL)
def on_border(slot, feature, order, faces, edge_of, border_edge, border_vertex):
    """Whether the closest point lies on a border of an open mesh."""
    f = order[slot]
    if feature == 0:
        return False
    if feature <= 3:
        return border_edge[edge_of[f, feature - 1]]
    return border_vertex[faces[f, feature - 4]]


@njit(**KERNEL)
def _signed_distance(points, reach, low, high, link, corners, order, faces, edge_of, fn, en, vn):
    n = points.shape[0]
    distance = np.empty(n)
    closest = np.empty((n, 3))
    normal = np.zeros((n, 3))
    face = np.full(n, -1, np.int64)
    stack = np.empty(128, np.int32)
    last = -1
    for i in range(n):
        px, py, pz = points[i, 0], points[i, 1], points[i, 2]
        d2, slot, v, w, feature = nearest(
            px, py, pz, reach * reach, low, high, link, corners, stack, last
        )
        if slot < 0:
            distance[i] = np.inf
            closest[i, 0], closest[i, 1], closest[i, 2] = px, py, pz
            continue
        last = slot
        t = corners[slot]
        cx = t[0] + v * (t[3] - t[0]) + w * (t[6] - t[0])
        cy = t[1] + v * (t[4] - t[1]) + w * (t[7] - t[1])
        cz = t[2] + v * (t[5] - t[2]) + w * (t[8] - t[2])
        nx, ny, nz = feature_normal(slot, feature, order, faces, edge_of, fn, en, vn)
        length = np.sqrt(nx * nx + ny * ny + nz * nz)
        if length > 0:
            nx, ny, nz = nx / length, ny / length, nz / length
        side = (px - cx) * nx + (py - cy) * ny + (pz - cz) * nz
        d = np.sqrt(d2)
        distance[i] = -d if side < 0 else d
        closest[i, 0], closest[i, 1], closest[i, 2] = cx, cy, cz
        normal[i, 0], normal[i, 1], normal[i, 2] = nx, ny, nz
        face[i] = order[slot]
    return distance, closest, normal, face


class MeshIndex:
    """A triangle mesh prepared for closest-point queries.

    ``bounds`` (2, 3) holds the lower and the upper corner of its box, mm.

    Building costs about 1 ms per 1,000 triangles. Queries only read, so that
    one index serves many threads.

    Parameters
    ----------
    vertices : (n, 3) float
        mm.
    faces : (m, 3) int
        Counter-clockwise seen from outside.

    Examples
    --------
    >>> ball = trimesh.creation.icosphere(subdivisions=4, radius=10)
    >>> d, closest, normal = MeshIndex.of(ball).signed_distance([[0, 0, 12.0]])
    >>> round(float(d[0]), 1)
    2.0
    """

    def __init__(self, vertices: np.ndarray, faces: np.ndarray) -> None:
        self.vertices = np.ascontiguousarray(vertices, dtype=np.float64)
        self.faces = np.ascontiguousarray(faces, dtype=np.int64)
        if len(self.faces) == 0:
            raise ValueError("a mesh index needs at least one triangle, got none")
        self.order, self.node_low, self.node_high, self.link = _build_tree(
            *_boxes(self.vertices, self.faces), LEAF_SIZE
        )
        self.bounds = np.array([self.node_low[0], self.node_high[0]])
        self.corners = _corners(self.vertices, self.faces, self.order)
        self.edges, self.edge_of = number_edges(self.faces, len(self.vertices))
        (
            self.face_normal,
            self.edge_normal,
            self.vertex_normal,
            self.border_edge,
            self.border_vertex,
        ) = _pseudo_normals(self.vertices, self.faces, self.edge_of, len(self.edges))

    def __getstate__(self) -> dict:
        # Addresses (``several``) hold in this process only.
        return {name: value for name, value in self.__dict__.items() if name != "_row"}

    @classmethod
    def of(cls, mesh: trimesh.Trimesh | MeshIndex) -> MeshIndex:
        """Index of a trimesh; an index is handed back as it is."""
        if isinstance(mesh, MeshIndex):
            return mesh
        return cls(mesh.vertices, mesh.faces)

    def moved(self, vertices: np.ndarray) -> MeshIndex:
        """Index of the same triangles with their vertices (n, 3) a little elsewhere, mm.

        The tree keeps its branches: answers are as exact as ever, and as quick while
        triangles that were close stay close.
        """
        new = object.__new__(MeshIndex)
        new.order, new.link, new.faces = self.order, self.link, self.faces
        new.edges, new.edge_of = self.edges, self.edge_of
        new.vertices = np.ascontiguousarray(vertices, dtype=np.float64)
        new.corners = _corners(new.vertices, new.faces, new.order)
        new.node_low, new.node_high = _refit(new.corners, new.link)
        new.bounds = np.array([new.node_low[0], new.node_high[0]])
        (
            new.face_normal,
            new.edge_normal,
            new.vertex_normal,
            new.border_edge,
            new.border_vertex,
        ) = _pseudo_normals(new.vertices, new.faces, new.edge_of, len(new.edges))
        return new

    def mirrored(self) -> MeshIndex:
        """Index of the mirror image in the plane x = 0, faces turned; nothing is built anew."""
        twin = object.__new__(MeshIndex)
        twin.order, twin.link, twin.edges = self.order, self.link, self.edges
        twin.border_edge, twin.border_vertex = self.border_edge, self.border_vertex
        twin.faces = np.ascontiguousarray(self.faces[:, ::-1])
        # The edge from corner k of a turned face is the one that led to it before.
        twin.edge_of = np.ascontiguousarray(self.edge_of[:, [1, 0, 2]])
        for name in ("vertices", "face_normal", "edge_normal", "vertex_normal"):
            values = getattr(self, name).copy()
            values[:, 0] *= -1
            setattr(twin, name, values)
        corners = self.corners.reshape(-1, 3, 3)[:, ::-1].copy()
        corners[..., 0] *= -1
        twin.corners = corners.reshape(-1, 9)
        twin.node_low, twin.node_high = self.node_low.copy(), self.node_high.copy()
        twin.node_low[:, 0], twin.node_high[:, 0] = -self.node_high[:, 0], -self.node_low[:, 0]
        twin.bounds = np.array([twin.node_low[0], twin.node_high[0]])
        return twin

    @property
    def is_closed(self) -> bool:
        """Whether no edge is a border."""
        return not self.border_edge.any()

    @property
    def tree(self) -> tuple[np.ndarray, ...]:
        """Node boxes, links and corners, as the kernels take them."""
        return self.node_low, self.node_high, self.link, self.corners

    def query(
        self, points: np.ndarray, reach: float = np.inf
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
        """As :meth:`signed_distance`, with the index of the closest face (-1 beyond reach)."""
        points = np.ascontiguousarray(points, dtype=np.float64)
        if points.ndim != 2:
            points = points.reshape(-1, 3)

        def rows(first: int, last: int) -> tuple[np.ndarray, ...]:
            return _signed_distance(
                points[first:last],
                float(reach),
                *self.tree,
                self.order,
                self.faces,
                self.edge_of,
                self.face_normal,
                self.edge_normal,
                self.vertex_normal,
            )

        found = in_halves(rows, len(points))
        return found[0] if len(found) == 1 else tuple(map(np.concatenate, zip(*found)))

    def signed_distance(
        self, points: np.ndarray, reach: float = np.inf
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Exact signed distance of points to the surface.

        Parameters
        ----------
        points : (n, 3) float
            mm.
        reach : float
            Search radius, mm. A point farther from the surface than this gets
            ``inf`` (inside or outside), itself as closest point, and no normal.

        Returns
        -------
        distance : (n,) float
            mm, negative inside.
        closest : (n, 3) float
            Closest point of the surface, mm.
        normal : (n, 3) float
            Unit pseudo-normal there, outward.
        """
        return self.query(points, reach)[:3]

    def inside(self, points: np.ndarray) -> np.ndarray:
        """(n,) bool: whether each point lies inside the closed surface."""
        points = np.reshape(np.asarray(points, dtype=np.float64), (-1, 3))
        low, high = self.bounds
        result = ((points >= low) & (points <= high)).all(axis=1)
        if result.any():
            result[result] = self.query(points[result])[0] < 0
        return result

    def samples(self, step: float = 2.0) -> tuple[np.ndarray, np.ndarray]:
        """Points on the surface at most about ``step`` mm apart.

        Vertices, edge midpoints and face centres; where triangles are larger
        than ``step``, evenly spaced points inside them as well.

        Returns
        -------
        points, normals : (n, 3) float
        """
        centre = self.vertices[self.faces].mean(axis=1)
        points = [self.vertices, self.vertices[self.edges].mean(axis=1), centre]
        normals = [self.vertex_normal, self.edge_normal, self.face_normal]
        corners = self.vertices[self.faces]
        side = np.linalg.norm(corners - np.roll(corners, -1, axis=1), axis=2).max(axis=1)
        # Neighbouring samples of a triangle cut in k lie side / k apart; the midpoints give 2.
        cuts = np.ceil(side / step).astype(int)
        for k in np.unique(cuts[cuts > 2]):
            chosen = cuts == k
            i, j = np.meshgrid(np.arange(k + 1), np.arange(k + 1), indexing="ij")
            keep = i + j <= k
            weights = np.stack([i[keep], j[keep], (k - i - j)[keep]], axis=1) / k
            points.append(np.einsum("sk,fkd->fsd", weights, corners[chosen]).reshape(-1, 3))
            normals.append(np.repeat(self.face_normal[chosen], len(weights), axis=0))
        normal = np.concatenate(normals)
        length = np.linalg.norm(normal, axis=1, keepdims=True)
        return np.concatenate(points), normal / np.where(length > 0, length, 1.0)


@njit(**KERNEL)
def _faces_in_box(vertices, faces, low, high):
    """Numbers of the triangles whose box meets a box."""
    out = np.empty(faces.shape[0], np.int64)
    count = 0
    for f in range(faces.shape[0]):
        meets = True
        for k in range(3):
            x, y, z = vertices[faces[f, 0], k], vertices[faces[f, 1], k], vertices[faces[f, 2], k]
            if min(x, y, z) > high[k] or max(x, y, z) < low[k]:
                meets = False
                break
        if meets:
            out[count] = f
            count += 1
    return out[:count].copy()


@njit(**KERNEL)
def _mark(marks, origin, cell, points, reach):
    """Mark the cells of a grid that come within ``reach`` of points."""
    for i in range(points.shape[0]):
        a0 = max(int((points[i, 0] - reach - origin[0]) / cell), 0)
        b0 = max(int((points[i, 1] - reach - origin[1]) / cell), 0)
        c0 = max(int((points[i, 2] - reach - origin[2]) / cell), 0)
        a1 = min(int((points[i, 0] + reach - origin[0]) / cell), marks.shape[0] - 1)
        b1 = min(int((points[i, 1] + reach - origin[1]) / cell), marks.shape[1] - 1)
        c1 = min(int((points[i, 2] + reach - origin[2]) / cell), marks.shape[2] - 1)
        for a in range(a0, a1 + 1):
            x = origin[0] + a * cell
            dx = max(x - points[i, 0], points[i, 0] - x - cell, 0.0)
            for b in range(b0, b1 + 1):
                y = origin[1] + b * cell
                dy = max(y - points[i, 1], points[i, 1] - y - cell, 0.0)
                for c in range(c0, c1 + 1):
                    z = origin[2] + c * cell
                    dz = max(z - points[i, 2], points[i, 2] - z - cell, 0.0)
                    if dx * dx + dy * dy + dz * dz <= reach * reach:
                        marks[a, b, c] = True


@njit(**KERNEL)
def _faces_marked(marks, origin, cell, vertices, faces):
    """Which triangles have a box that meets a marked cell."""
    out = np.zeros(faces.shape[0], np.bool_)
    first = np.empty(3, np.int64)
    last = np.empty(3, np.int64)
    for f in range(faces.shape[0]):
        for k in range(3):
            x, y, z = vertices[faces[f, 0], k], vertices[faces[f, 1], k], vertices[faces[f, 2], k]
            first[k] = max(int(np.floor((min(x, y, z) - origin[k]) / cell)), 0)
            last[k] = min(int(np.floor((max(x, y, z) - origin[k]) / cell)), marks.shape[k] - 1)
        for a in range(first[0], last[0] + 1):
            for b in range(first[1], last[1] + 1):
                for c in range(first[2], last[2] + 1):
                    if marks[a, b, c]:
                        out[f] = True
                        break
                if out[f]:
                    break
            if out[f]:
                break
    return out


class Nearness:
    """Which places lie within a distance of some points, to the cell of a coarse grid.

    What is near is always found; what is a cell farther may be found as well.
    """

    def __init__(self, marks: np.ndarray, origin: np.ndarray, cell: float) -> None:
        self.marks, self.origin, self.cell = marks, origin, cell

    @classmethod
    def of(cls, points: np.ndarray, reach: float) -> Nearness:
        """Places within ``reach`` mm of points (n, 3)."""
        points = np.ascontiguousarray(np.reshape(points, (-1, 3)), dtype=np.float64)
        low, high = points.min(axis=0) - reach, points.max(axis=0) + reach
        cell = max(0.4 * reach, 2.0)
        shape = np.ceil((high - low) / cell).astype(int) + 1
        marks = np.zeros(shape, bool)
        _mark(marks, low, cell, points, float(reach))
        return cls(marks, low, cell)

    def of_faces(self, vertices: np.ndarray, faces: np.ndarray) -> np.ndarray:
        """(m,) bool: triangles that may come near."""
        return _faces_marked(self.marks, self.origin, self.cell, vertices, faces)

    def of_points(self, points: np.ndarray) -> np.ndarray:
        """(n,) bool: points that may be near."""
        at = np.floor((points - self.origin) / self.cell).astype(np.int64)
        inside = ((at >= 0) & (at < self.marks.shape)).all(axis=1)
        result = np.zeros(len(points), bool)
        at = at[inside]
        result[inside] = self.marks[at[:, 0], at[:, 1], at[:, 2]]
        return result


def reaching(
    indexes: Sequence[MeshIndex], points: np.ndarray, margin: float
) -> list[tuple[MeshIndex, np.ndarray]]:
    """Which points lie near which mesh.

    Parameters
    ----------
    indexes : sequence of MeshIndex
    points : (n, 3) float
        mm.
    margin : float
        mm.

    Returns
    -------
    list of (MeshIndex, (k,) int)
        Meshes in their order with the points inside their box grown by ``margin``; those
        with none are left out.
    """
    if len(indexes) == 0 or len(points) == 0:
        return []
    boxes = np.array([index.bounds for index in indexes])
    low, high = boxes[:, 0] - margin, boxes[:, 1] + margin
    meet = ((low < points.max(axis=0)) & (high > points.min(axis=0))).all(axis=1)
    found = []
    for number in np.flatnonzero(meet).tolist():
        near = np.flatnonzero(((points > low[number]) & (points < high[number])).all(axis=1))
        if len(near):
            found.append((indexes[number], near))
    return found


def merge(
    indexes: Sequence[MeshIndex],
    bounds: np.ndarray | None = None,
    margin: float = 0.0,
    near: np.ndarray | None = None,
) -> tuple[MeshIndex, np.ndarray] | None:
    """One index of several closed meshes that do not overlap, cut to a box.

    Inside one of several disjoint solids the closest surface is its own, so
    that the merged sign is exact. Normals are those of the whole meshes, so
    that cutting to the box makes no false border.

    Parameters
    ----------
    indexes : sequence of MeshIndex
    bounds : (2, 3) float or None
        Box, mm; triangles that miss it by more than ``margin`` are left out.
    margin : float
    near : (n, 3) float or None
        Points, mm; triangles that are clearly farther than ``margin`` from all of them are
        left out too.

    Returns
    -------
    (MeshIndex, (n_faces,) int) or None
        The index and which of ``indexes`` each face is from; None when no
        triangle is left.
    """
    chosen: list[tuple[int, MeshIndex, np.ndarray]] = []
    low, high = np.full(3, -np.inf), np.full(3, np.inf)
    if bounds is not None:
        low, high = bounds[0] - margin, bounds[1] + margin
    marks = None if near is None else Nearness.of(near, margin)
    for number, index in enumerate(indexes):
        if np.any(index.node_low[0] > high) or np.any(index.node_high[0] < low):
            continue
        faces = _faces_in_box(index.vertices, index.faces, low, high)
        if marks is not None and len(faces):
            faces = faces[marks.of_faces(index.vertices, index.faces[faces])]
        if len(faces):
            chosen.append((number, index, faces))
    if not chosen:
        return None
    merged = object.__new__(MeshIndex)
    vertex_offset = np.cumsum([0] + [len(i.vertices) for _, i, _ in chosen])
    edge_offset = np.cumsum([0] + [len(i.edges) for _, i, _ in chosen])
    merged.vertices = np.concatenate([i.vertices for _, i, _ in chosen])
    merged.faces = np.concatenate([i.faces[f] + o for (_, i, f), o in zip(chosen, vertex_offset)])
    merged.edge_of = np.concatenate([i.edge_of[f] + o for (_, i, f), o in zip(chosen, edge_offset)])
    merged.edges = np.concatenate([i.edges + o for (_, i, _), o in zip(chosen, vertex_offset)])
    merged.face_normal = np.concatenate([i.face_normal[f] for _, i, f in chosen])
    for name in ("edge_normal", "vertex_normal", "border_edge", "border_vertex"):
        setattr(merged, name, np.concatenate([getattr(i, name) for _, i, _ in chosen]))
    merged.order, merged.node_low, merged.node_high, merged.link = _build_tree(
        *_boxes(merged.vertices, merged.faces), LEAF_SIZE
    )
    merged.bounds = np.array([merged.node_low[0], merged.node_high[0]])
    merged.corners = _corners(merged.vertices, merged.faces, merged.order)
    return merged, np.concatenate([np.full(len(f), n) for n, _, f in chosen])
