"""Fill and share: one space, filled by families of fascicles without gap or overlap.

Every node of the region goes to the family whose nearest strand is closest,
where a strand with a longer ``reach`` counts as nearer by that much. The
border between two families is where both are equally near; both draw back from
it by half a hair's gap. Since the two borders come from one field, they can't
cross.

Whatever its family gets that way, a strand keeps a thin cord of its own from
end to end: so each fascicle reaches its bone, and threads through a neighbour
that lies in between as a tendon does.
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
from meshes.shapes.neighbours import least_of_piece

_KEPT = 3
"""Nearest families remembered at each node: the owner and two rivals."""

_FAR = 40.0

_MATTERS = 12.0
"""mm: a family so much farther than the nearest one has no say at a node."""

_BLOCK = 4
"""Nodes per side of the blocks for which segments are narrowed down."""

_COARSE = 2
"""Nodes of the region per node at which it is shared; borders between bellies are smooth."""

_EVEN_MM = 28.0
"""Length along z over which the border between two families is evened out."""

_THREADS = 2

_CORD_BAND_MM = 6.0
"""Distance from a cord up to which its field is known."""


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
    cord : float or (k,) float
        Radius of what is its own in any case, mm; 0 for nothing.
    """

    line: np.ndarray
    family: str
    reach: float | np.ndarray
    cord: float | np.ndarray = 0.0


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
def _cords(shape, origin, spacing, band, a, b, radius, family):
    """Nearest and second nearest cord (of another family) at each node, and the nearest's family.

    A cord's field is its distance less its radius, known up to ``band`` mm.
    """
    nx, ny, nz = shape
    best = np.full((nx, ny, nz), np.float32(_FAR))
    second = np.full((nx, ny, nz), np.float32(_FAR))
    who = np.full((nx, ny, nz), np.int8(-1))
    next_who = np.full((nx, ny, nz), np.int8(-1))
    low = np.empty(3, np.int64)
    high = np.empty(3, np.int64)
    for s in range(a.shape[0]):
        if radius[s] <= 0.0:
            continue
        for c in range(3):
            least = min(a[s, c], b[s, c]) - band - radius[s]
            most = max(a[s, c], b[s, c]) + band + radius[s]
            low[c] = max(int(np.ceil((least - origin[c]) / spacing)), 0)
            high[c] = min(int((most - origin[c]) / spacing) + 1, shape[c])
        for i in range(low[0], high[0]):
            x = origin[0] + spacing * i
            for j in range(low[1], high[1]):
                y = origin[1] + spacing * j
                for k in range(low[2], high[2]):
                    d = _lead(x, y, origin[2] + spacing * k, a[s], b[s], radius[s])
                    if d > band or d >= second[i, j, k]:
                        continue
                    if who[i, j, k] == family[s]:
                        best[i, j, k] = min(best[i, j, k], d)
                    elif d < best[i, j, k]:
                        if who[i, j, k] >= 0:
                            second[i, j, k] = best[i, j, k]
                            next_who[i, j, k] = who[i, j, k]
                        best[i, j, k] = d
                        who[i, j, k] = family[s]
                    else:
                        second[i, j, k] = d
                        next_who[i, j, k] = family[s]
    return best, second, who, next_who


@njit(inline="always", cache=True, nogil=True)
def _claim(near, who, m):
    """Half the lead of family m over its best rival (negative where m owns the node)."""
    if who[0] == m:
        return 0.5 * (near[0] - near[1])
    if who[0] < 0:
        return _FAR
    own = _FAR
    for n in range(1, _KEPT):
        if who[n] == m:
            own = near[n]
    return 0.5 * (own - near[0])


@njit(cache=True, nogil=True)
def _claims(near, who, m, most):
    """Claim of family m at the shared nodes, at most ``most`` mm either way."""
    nx, ny, nz = near.shape[:3]
    out = np.empty((nx, ny, nz), np.float32)
    for i in range(nx):
        for j in range(ny):
            for k in range(nz):
                out[i, j, k] = min(max(_claim(near[i, j, k], who[i, j, k], m), -most), most)
    return out


@njit(cache=True, nogil=True)
def _compose(claim, start, coarse, region, free, best, second, who, next_who, m, gap, top, out):
    """Signed field of family m, negative inside, written with its axes reversed.

    The belly keeps within the region and clear of foreign cords; the own cords
    keep clear of what is solid only and meet foreign cords half way. ``start``
    is the window's first node on the claim's grid, in nodes of the region.
    """
    nx, ny, nz = region.shape
    half = 0.5 * gap
    for i in range(nx):
        fi = min(max((start[0] + i) / coarse, 0.0), claim.shape[0] - 1.001)
        i0 = int(fi)
        fi -= i0
        for j in range(ny):
            fj = min(max((start[1] + j) / coarse, 0.0), claim.shape[1] - 1.001)
            j0 = int(fj)
            fj -= j0
            for k in range(nz):
                value = region[i, j, k]
                rival = best[i, j, k]
                own = np.float32(_FAR)
                if who[i, j, k] == m:
                    own = best[i, j, k]
                    rival = second[i, j, k]
                elif next_who[i, j, k] == m:
                    own = second[i, j, k]
                if value < top:
                    fk = min(max((start[2] + k) / coarse, 0.0), claim.shape[2] - 1.001)
                    k0 = int(fk)
                    fk -= k0
                    c = 0.0
                    for di in range(2):
                        wi = fi if di else 1.0 - fi
                        for dj in range(2):
                            wj = wi * (fj if dj else 1.0 - fj)
                            c += wj * (
                                claim[i0 + di, j0 + dj, k0] * (1.0 - fk)
                                + claim[i0 + di, j0 + dj, k0 + 1] * fk
                            )
                    value = max(value, c + half)
                    value = max(value, gap - rival)
                cord = max(max(own, 0.5 * (own - rival) + half), free[i, j, k])
                out[k, j, i] = min(value, cord)


def fill_and_share(
    region: np.ndarray,
    origin: np.ndarray,
    spacing: float,
    strands: Sequence[Strand],
    triangles: Mapping[str, int],
    *,
    free: np.ndarray | None = None,
    gap: float = 0.3,
    obstacles: Sequence[MeshIndex] = (),
    least_share: float = 0.006,
    even: np.ndarray | None = None,
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
    free : (nx, ny, nz) float32 or None
        The same for the cords, which may run outside the region; None: as the region.
    gap : float
        Space left between two families, mm.
    obstacles : sequence of MeshIndex
        Meshes from which the finished surfaces are lifted where decimation took them inside.
    least_share : float
        Loose pieces smaller than this share of a family's faces are dropped.
    even : (nz,) float or None
        At each height 0-1: how far borders between families are evened out along z.

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
    reach = np.concatenate([_by_segment(s.line, s.reach) for s in strands])
    cord = np.concatenate([_by_segment(s.line, s.cord) for s in strands])
    a, b, family, reach = (np.ascontiguousarray(array) for array in (a, b, family, reach))
    origin = np.asarray(origin, float)
    free = region if free is None else free
    coarse = np.ascontiguousarray(region[::_COARSE, ::_COARSE, ::_COARSE])
    near = np.full((*coarse.shape, _KEPT), _FAR, np.float32)
    who = np.full((*coarse.shape, _KEPT), -1, np.int8)
    cuts = _BLOCK * np.linspace(0, -(-coarse.shape[0] // _BLOCK), _THREADS + 1).astype(int)
    cuts[-1] = coarse.shape[0]
    with ThreadPoolExecutor(_THREADS) as pool:
        jobs = [
            pool.submit(
                _share, coarse, 4.0 * _COARSE * spacing, origin, _COARSE * spacing, a, b, family,
                reach, len(families), int(first), int(last), near, who,
            )
            for first, last in zip(cuts[:-1], cuts[1:], strict=True)
        ]  # fmt: skip
        cords = _cords(region.shape, origin, spacing, _CORD_BAND_MM, a, b, cord, family)
        for job in jobs:
            job.result()
        if even is not None:
            near, who = _evened(near, who, len(families), even[::_COARSE], _COARSE * spacing)

        def draw(name: str) -> trimesh.Trimesh | None:
            return _draw(
                number[name], origin, spacing, region, free, near, who, cords, gap,
                least_share, triangles[name], obstacles,
            )  # fmt: skip

        drawn = dict(zip(families, pool.map(draw, families), strict=True))
    return {name: mesh for name, mesh in drawn.items() if mesh is not None}


def _evened(
    near: np.ndarray, who: np.ndarray, count: int, even: np.ndarray, step: float
) -> tuple[np.ndarray, np.ndarray]:
    """Nearest families after their leads were averaged along z.

    Each fascicle that ends or begins makes a wave in the border of its muscle. Averaged, the
    leads are shared anew, so that neither a gap nor an overlap comes of it.
    """
    nodes = 2 * int(round(0.5 * _EVEN_MM / step)) + 1
    weight = np.asarray(even, np.float32)
    phi = np.empty((count, *near.shape[:3]), np.float32)
    for m in range(count):
        lead = _claims(near, who, m, _MATTERS)
        phi[m] = lead + weight * (uniform_filter(lead, (1, 1, nodes), mode="nearest") - lead)
    kept = min(_KEPT, count)
    order = np.argpartition(phi, kept - 1, axis=0)[:kept]
    values = np.take_along_axis(phi, order, axis=0)
    rank = np.argsort(values, axis=0)
    order = np.take_along_axis(order, rank, axis=0)
    values = np.take_along_axis(values, rank, axis=0)
    known = who[..., 0] >= 0
    near, who = near.copy(), who.copy()
    for k in range(kept):
        near[..., k] = np.where(known, 2.0 * values[k], near[..., k])
        who[..., k] = np.where(known, order[k], who[..., k])
    return near, who


def _draw(
    m: int, origin, spacing, region, free, near, who, cords, gap, least_share, triangles, obstacles
) -> trimesh.Trimesh | None:
    """Contour of one family's share, decimated and lifted off the obstacles."""
    best, second, cord_of, next_cord_of = cords
    inside = region[::_COARSE, ::_COARSE, ::_COARSE] < _COARSE * spacing
    owned = _COARSE * np.argwhere((who[..., 0] == m) & inside)
    threads = np.argwhere((cord_of == m) & (best < spacing))
    nodes = [n for n in (owned, threads) if len(n)]
    if not nodes:
        return None
    first = np.maximum(np.min([n.min(0) for n in nodes], axis=0) - 4, 0)
    last = np.minimum(np.max([n.max(0) for n in nodes], axis=0) + 5, region.shape)
    window = tuple(slice(f, t) for f, t in zip(first, last, strict=True))
    low = np.maximum(first // _COARSE - 1, 0)
    high = np.minimum(last // _COARSE + 3, near.shape[:3])
    part = tuple(slice(f, t) for f, t in zip(low, high, strict=True))
    claim = _claims(near[part], who[part], m, 4.0 * spacing * _COARSE)
    # Softened once: borders between bellies run smooth and both sides see the same field.
    claim = uniform_filter(claim, 3, mode="nearest") * 0.5 + claim * 0.5
    values = np.empty(tuple(int(t - f) for f, t in zip(first, last, strict=True))[::-1], np.float32)
    _compose(
        claim, (first - _COARSE * low).astype(np.int64), _COARSE, region[window], free[window],
        best[window], second[window], cord_of[window], next_cord_of[window], m, gap,
        4.0 * spacing, values,
    )  # fmt: skip
    border(values, 0.3 * spacing)
    vertices, faces = contour_grid(values, origin + spacing * first, spacing)
    if len(faces) < 20:
        return None
    vertices, faces = large_pieces(vertices, faces, least_share)
    vertices = relax(vertices, faces, 3)
    vertices, faces = simplify(vertices, faces, triangles)
    box = np.stack([vertices.min(0), vertices.max(0)])
    close = [o for o in obstacles if np.all(o.bounds[0] < box[1]) and np.all(o.bounds[1] > box[0])]
    vertices = clear_of(vertices, close, 0.5 * gap)
    return trimesh.Trimesh(vertices, faces, process=False)


def _by_segment(line: np.ndarray, values: float | np.ndarray) -> np.ndarray:
    """The larger of the values at both ends of each segment."""
    at_points = np.broadcast_to(np.asarray(values, float), len(line))
    return np.maximum(at_points[:-1], at_points[1:])


def large_pieces(
    vertices: np.ndarray, faces: np.ndarray, least_share: float
) -> tuple[np.ndarray, np.ndarray]:
    """Drop connected pieces with fewer than a share of all faces."""
    n = len(vertices)
    label = least_of_piece(n, faces)
    if not label.any():
        return vertices, faces
    face_label = label[faces[:, 0]]
    size = np.bincount(face_label, minlength=n)
    keep = size >= max(least_share * len(faces), 1)
    keep[size.argmax()] = True
    faces = faces[keep[face_label]]
    used, inverse = np.unique(faces, return_inverse=True)
    return vertices[used], inverse.reshape(-1, 3)
