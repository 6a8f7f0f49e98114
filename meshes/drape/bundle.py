"""Fill and share: one space, filled by families of fascicles without gap or overlap.

Every node of the region goes to the family whose nearest strand is closest,
where a strand with a longer ``reach`` counts as nearer by that much. The
border between two families is where both are equally near; both draw back from
it by half a hair's gap. Since the two borders come from one field, they can't
cross.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
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

_MATTERS = 12.0
"""mm: a family so much farther than the nearest one has no say at a node."""

_BLOCK = 4
"""Nodes per side of the blocks for which segments are narrowed down."""

_THREADS = 2

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


@njit(inline="always", cache=True, nogil=True)
def _lead(x, y, z, a, b, reach):
    """Distance from a point to a segment, less the reach of its strand."""
    ex, ey, ez = b[0] - a[0], b[1] - a[1], b[2] - a[2]
    px, py, pz = x - a[0], y - a[1], z - a[2]
    l2 = ex * ex + ey * ey + ez * ez
    t = 0.0
    if l2 > 0.0:
        t = min(max((px * ex + py * ey + pz * ez) / l2, 0.0), 1.0)
    dx, dy, dz = px - t * ex, py - t * ey, pz - t * ez
    return np.sqrt(dx * dx + dy * dy + dz * dz) - reach


@njit(cache=True, nogil=True)
def _share(region, limit, origin, spacing, a, b, family, reach, count, first, last, near, who):
    """Nearest families of all nodes of the layers ``first`` .. ``last`` along x.

    For each block of nodes the segments are narrowed down first to those that
    can be nearest of their family, and the families to those that can matter.
    """
    ny, nz = region.shape[1], region.shape[2]
    n = a.shape[0]
    half = 0.5 * (_BLOCK - 1) * spacing
    # A lead changes by no more than the distance; both ends of the comparison move.
    spare = 2.0 * np.sqrt(3.0) * half + 1e-6
    centre = np.empty(n)
    kept = np.empty(n, np.int64)
    lowest = np.empty(count)
    phi = np.empty(count)
    for i0 in range(first, last, _BLOCK):
        for j0 in range(0, ny, _BLOCK):
            for k0 in range(0, nz, _BLOCK):
                i1, j1, k1 = min(i0 + _BLOCK, last), min(j0 + _BLOCK, ny), min(k0 + _BLOCK, nz)
                wanted = False
                for i in range(i0, i1):
                    for j in range(j0, j1):
                        for k in range(k0, k1):
                            wanted = wanted or region[i, j, k] <= limit
                if not wanted:
                    continue
                x = origin[0] + spacing * i0 + half
                y = origin[1] + spacing * j0 + half
                z = origin[2] + spacing * k0 + half
                lowest[:] = np.inf
                for s in range(n):
                    centre[s] = _lead(x, y, z, a[s], b[s], reach[s])
                    if centre[s] < lowest[family[s]]:
                        lowest[family[s]] = centre[s]
                least = lowest.min()
                m = 0
                for s in range(n):
                    own = lowest[family[s]]
                    if own <= least + spare + _MATTERS and centre[s] <= own + spare:
                        kept[m] = s
                        m += 1
                for i in range(i0, i1):
                    x = origin[0] + spacing * i
                    for j in range(j0, j1):
                        y = origin[1] + spacing * j
                        for k in range(k0, k1):
                            if region[i, j, k] > limit:
                                continue
                            z = origin[2] + spacing * k
                            phi[:] = _FAR
                            for q in range(m):
                                s = kept[q]
                                d = _lead(x, y, z, a[s], b[s], reach[s])
                                if d < phi[family[s]]:
                                    phi[family[s]] = d
                            for f in range(count):
                                v = phi[f]
                                if v >= near[i, j, k, _KEPT - 1]:
                                    continue
                                place = _KEPT - 1
                                while place > 0 and near[i, j, k, place - 1] > v:
                                    near[i, j, k, place] = near[i, j, k, place - 1]
                                    who[i, j, k, place] = who[i, j, k, place - 1]
                                    place -= 1
                                near[i, j, k, place] = v
                                who[i, j, k, place] = f


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
    near = np.full((*region.shape, _KEPT), _FAR, np.float32)
    who = np.full((*region.shape, _KEPT), -1, np.int8)
    rows = [np.ascontiguousarray(array) for array in (a, b, family, reach)]
    cuts = _BLOCK * np.linspace(0, -(-region.shape[0] // _BLOCK), _THREADS + 1).astype(int)
    cuts[-1] = region.shape[0]
    with ThreadPoolExecutor(_THREADS) as pool:
        jobs = [
            pool.submit(
                _share, region, 4.0 * spacing, np.asarray(origin, float), spacing, *rows,
                len(families), int(first), int(last), near, who,
            )
            for first, last in zip(cuts[:-1], cuts[1:], strict=True)
        ]  # fmt: skip
        for job in jobs:
            job.result()
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
