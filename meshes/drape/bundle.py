"""Fill and share: one space, filled by families of fascicles without gap or overlap.

Every node of the region goes to the family whose nearest strand is closest,
where a strand with a longer ``reach`` counts as nearer by that much. The
border between two families is where both are equally near; both draw back from
it by half a hair's gap. Since the two borders come from one field, they can't
cross.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import trimesh
from numba import njit
from scipy.ndimage import uniform_filter

from meshes.drape.carve import border, clear_of
from meshes.drape.distance import MeshIndex
from meshes.shapes.contour import contour_grid, relax, simplify

_KEPT = 3
"""Nearest families remembered at each node: the owner and two rivals."""

_FAR = 40.0

_HOLD = 12.0
"""mm of head start on the line of a strand itself, fading to nothing at the core's edge."""


@dataclass(frozen=True, slots=True)
class Strand:
    """One fascicle that claims space.

    Attributes
    ----------
    line : (k, 3) float
        Its course, mm.
    family : str
        The muscle for which it claims.
    reach : float or (k,) float
        Head start in mm over strands of other families, one for all or one a point.
    """

    line: np.ndarray
    family: str
    reach: float | np.ndarray


@njit(cache=True, nogil=True)
def _share(
    region, limit, origin, spacing, a, b, family, reach, count, bins, start, bin_size, z0, core
):
    nx, ny, nz = region.shape
    near = np.full((nx, ny, nz, _KEPT), np.float32(_FAR), np.float32)
    who = np.full((nx, ny, nz, _KEPT), np.int8(-1), np.int8)
    phi = np.empty(count)
    for k in range(nz):
        z = origin[2] + spacing * k
        slot = min(max(int((z - z0) / bin_size), 0), start.size - 2)
        first, last = start[slot], start[slot + 1]
        for i in range(nx):
            x = origin[0] + spacing * i
            for j in range(ny):
                if region[i, j, k] > limit:
                    continue
                y = origin[1] + spacing * j
                phi[:] = _FAR
                for n in range(first, last):
                    s = bins[n]
                    ex, ey, ez = b[s, 0] - a[s, 0], b[s, 1] - a[s, 1], b[s, 2] - a[s, 2]
                    px, py, pz = x - a[s, 0], y - a[s, 1], z - a[s, 2]
                    l2 = ex * ex + ey * ey + ez * ez
                    t = 0.0
                    if l2 > 0.0:
                        t = min(max((px * ex + py * ey + pz * ez) / l2, 0.0), 1.0)
                    dx, dy, dz = px - t * ex, py - t * ey, pz - t * ez
                    d = np.sqrt(dx * dx + dy * dy + dz * dz)
                    # Close round its line a strand gives way to no one, so that it stays whole.
                    d -= reach[s] + _HOLD * max(0.0, 1.0 - d / core)
                    if d < phi[family[s]]:
                        phi[family[s]] = d
                for m in range(count):
                    v = phi[m]
                    if v >= near[i, j, k, _KEPT - 1]:
                        continue
                    place = _KEPT - 1
                    while place > 0 and near[i, j, k, place - 1] > v:
                        near[i, j, k, place] = near[i, j, k, place - 1]
                        who[i, j, k, place] = who[i, j, k, place - 1]
                        place -= 1
                    near[i, j, k, place] = v
                    who[i, j, k, place] = m
    return near, who


@njit(cache=True, nogil=True)
def _claim(near, who, m):
    """Half the lead of family m over its best rival (negative where m owns the node)."""
    nx, ny, nz = near.shape[:3]
    out = np.empty((nx, ny, nz), np.float32)
    for i in range(nx):
        for j in range(ny):
            for k in range(nz):
                if who[i, j, k, 0] == m:
                    out[i, j, k] = 0.5 * (near[i, j, k, 0] - near[i, j, k, 1])
                else:
                    own = np.float32(_FAR)
                    for n in range(1, _KEPT):
                        if who[i, j, k, n] == m:
                            own = near[i, j, k, n]
                    out[i, j, k] = 0.5 * (own - near[i, j, k, 0])
    return out


def fill_and_share(
    region: np.ndarray,
    origin: np.ndarray,
    spacing: float,
    strands: Sequence[Strand],
    triangles: Mapping[str, int],
    *,
    gap: float = 0.3,
    core: float = 3.5,
    obstacles: Sequence[MeshIndex] = (),
    least_share: float = 0.006,
) -> dict[str, trimesh.Trimesh]:
    """Divide a region among families of strands.

    Parameters
    ----------
    region : (nx, ny, nz) float32
        Signed distance (or a first-order estimate) to the border of the space
        that is filled, negative inside, mm. Obstacles are already taken out.
    origin : (3,) float
        Position of region[0, 0, 0], mm.
    spacing : float
        Node distance, mm.
    strands : sequence of Strand
    triangles : mapping of str to int
        Wanted triangles of each family.
    gap : float
        Space left between two families, mm.
    core : float
        Radius round each strand's line within which it holds its ground, mm.
    obstacles : sequence of MeshIndex
        Meshes from which the finished surfaces are lifted where decimation took them inside.
    least_share : float
        Loose pieces smaller than this share of a family's faces are dropped.

    Returns
    -------
    dict of str to trimesh.Trimesh
        Closed meshes, outward; families that got no space are missing.
    """
    families = sorted({strand.family for strand in strands})
    number = {name: i for i, name in enumerate(families)}
    a = np.concatenate([s.line[:-1] for s in strands])
    b = np.concatenate([s.line[1:] for s in strands])
    counts = [len(s.line) - 1 for s in strands]
    family = np.repeat([number[s.family] for s in strands], counts)
    reach = np.concatenate([_segment_reach(s) for s in strands])
    bin_size = 12.0
    z0 = float(origin[2])
    bin_count = int(np.ceil(region.shape[2] * spacing / bin_size)) + 1
    low = np.minimum(a[:, 2], b[:, 2]) - _FAR / 2
    high = np.maximum(a[:, 2], b[:, 2]) + _FAR / 2
    chosen, start = [], [0]
    for i in range(bin_count):
        bottom = z0 + i * bin_size
        rows = np.flatnonzero((low <= bottom + bin_size) & (high >= bottom))
        chosen.append(rows)
        start.append(start[-1] + len(rows))
    near, who = _share(
        region, 4.0 * spacing, np.asarray(origin, float), spacing,
        np.ascontiguousarray(a), np.ascontiguousarray(b), family, reach, len(families),
        np.concatenate(chosen), np.array(start), bin_size, z0, float(core),
    )  # fmt: skip
    meshes: dict[str, trimesh.Trimesh] = {}
    owner = who[..., 0]
    inside = region < 0
    for name, m in number.items():
        owned = np.argwhere((owner == m) & inside)
        if len(owned) < 20:
            continue
        first = np.maximum(owned.min(0) - 4, 0)
        last = np.minimum(owned.max(0) + 5, region.shape)
        window = tuple(slice(f, t) for f, t in zip(first, last, strict=True))
        claim = _claim(near[window], who[window], m)
        claim = uniform_filter(np.clip(claim, -4 * spacing, 4 * spacing), 3, mode="nearest")
        values = np.maximum(claim + 0.5 * gap, region[window])
        values = np.ascontiguousarray(values.transpose(2, 1, 0))
        border(values, 0.3 * spacing)
        corner = np.asarray(origin, float) + spacing * first
        vertices, faces = contour_grid(values, corner, spacing)
        if len(faces) == 0:
            continue
        vertices, faces = large_pieces(vertices, faces, least_share)
        vertices = relax(vertices, faces, 3)
        vertices, faces = simplify(vertices, faces, triangles[name])
        close = [o for o in obstacles if _boxes_meet(o.bounds, vertices)]
        vertices = clear_of(vertices, close, 0.5 * gap)
        meshes[name] = trimesh.Trimesh(vertices, faces, process=False)
    return meshes


def _segment_reach(strand: Strand) -> np.ndarray:
    at_points = np.broadcast_to(np.asarray(strand.reach, float), len(strand.line))
    return np.maximum(at_points[:-1], at_points[1:])


def large_pieces(
    vertices: np.ndarray, faces: np.ndarray, least_share: float
) -> tuple[np.ndarray, np.ndarray]:
    """Drop connected pieces with fewer than a share of all faces."""
    from scipy.sparse import coo_matrix
    from scipy.sparse.csgraph import connected_components

    n = len(vertices)
    edges = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]]])
    graph = coo_matrix((np.ones(len(edges), bool), (edges[:, 0], edges[:, 1])), (n, n))
    count, label = connected_components(graph, directed=False)
    if count == 1:
        return vertices, faces
    face_label = label[faces[:, 0]]
    size = np.bincount(face_label, minlength=count)
    keep = size >= max(least_share * len(faces), 1)
    keep[size.argmax()] = True
    faces = faces[keep[face_label]]
    used, inverse = np.unique(faces, return_inverse=True)
    return vertices[used], inverse.reshape(-1, 3)


def _boxes_meet(bounds: np.ndarray, vertices: np.ndarray) -> bool:
    return bool(np.all(bounds[0] < vertices.max(0)) and np.all(bounds[1] > vertices.min(0)))
