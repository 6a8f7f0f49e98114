"""Fill and share: bellies of neighbouring muscles from their fascicles.

A solid region (the gutter between bones and what covers them) is filled
completely, and every point of it goes to the muscle whose fascicle is nearest,
counted from the fascicle's own half-width. Shares are contoured a hair's gap
apart. What one muscle gains another loses: nothing overlaps, nothing is hollow.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
import trimesh
from numba import njit
from scipy.ndimage import gaussian_filter

from meshes.drape.carve import fibre_coordinates
from meshes.drape.distance import KERNEL, MeshIndex
from meshes.drape.field import Field
from meshes.shapes.contour import contour_grid, relax, simplify

KEPT = 4
"""Nearest muscles remembered at each grid point: enough where four shares meet."""

CLIP = 4.0
"""mm: differences between two muscles' distances are of no interest beyond this."""

LEAST_PIECE = 0.03
"""Pieces of a share smaller than this part of its largest are dropped."""


@dataclass(frozen=True, slots=True, eq=False)
class Fascicle:
    """One fascicle of a muscle.

    Attributes
    ----------
    line : (k, 3) float
        Origin end first, mm.
    muscle : str
        Whose share it claims.
    reach : float or (k,) float
        Half-width of its claim, mm: at equal distance the larger reach wins.
        From a cross-section A it is about sqrt(A / pi).
    """

    line: np.ndarray
    muscle: str
    reach: float | np.ndarray = 2.0


@dataclass(frozen=True, slots=True, eq=False)
class Belly:
    """One muscle's share as a closed mesh.

    Attributes
    ----------
    mesh : trimesh.Trimesh
        Closed, outward, mm.
    uv : (n, 2) float32
        u along the nearest fascicle (0 origin, 1 insertion), v which fascicle (0-1).
    fibres : (n_fascicles, n_points, 3) float
        The fascicles, origin end first, mm.
    """

    mesh: trimesh.Trimesh
    uv: np.ndarray
    fibres: np.ndarray


@njit(inline="always", **KERNEL)
def _segment_cost(x, y, z, a, b, ra, rb):
    """Distance from a point to a segment less the reach there."""
    dx, dy, dz = b[0] - a[0], b[1] - a[1], b[2] - a[2]
    px, py, pz = x - a[0], y - a[1], z - a[2]
    l2 = dx * dx + dy * dy + dz * dz
    t = 0.0
    if l2 > 0:
        t = min(1.0, max(0.0, (px * dx + py * dy + pz * dz) / l2))
    px -= t * dx
    py -= t * dy
    pz -= t * dz
    return np.sqrt(px * px + py * py + pz * pz) - (ra + t * (rb - ra))


@njit(**KERNEL)
def _share(
    solid, origin, spacing, limit, begin, end, a, b, ra, rb, fascicle, muscle, count,
    label, cost, groove,
):  # fmt: skip
    """Nearest muscles of all nodes with ``solid`` < limit in the x-slab begin .. end.

    Whole fascicle sets are narrowed down per block of 4 x 4 x 4 nodes first.
    """
    size = 4
    nx, ny, nz = solid.shape
    n = a.shape[0]
    half = 0.5 * (size - 1) * spacing
    radius = np.sqrt(3.0) * half
    at_centre = np.empty(n)
    kept = np.empty(n, np.int64)
    lowest = np.empty(count)
    best = np.empty(count)
    second = np.empty(count)
    whose = np.empty(count, np.int64)
    for i0 in range(begin, end, size):
        for j0 in range(0, ny, size):
            for k0 in range(0, nz, size):
                i1, j1, k1 = min(i0 + size, end), min(j0 + size, ny), min(k0 + size, nz)
                wanted = False
                for i in range(i0, i1):
                    for j in range(j0, j1):
                        for k in range(k0, k1):
                            if solid[i, j, k] < limit:
                                wanted = True
                if not wanted:
                    continue
                x = origin[0] + i0 * spacing + half
                y = origin[1] + j0 * spacing + half
                z = origin[2] + k0 * spacing + half
                lowest[:] = np.inf
                for s in range(n):
                    c = _segment_cost(x, y, z, a[s], b[s], ra[s], rb[s])
                    at_centre[s] = c
                    if c < lowest[muscle[s]]:
                        lowest[muscle[s]] = c
                least = lowest.min()
                m = 0
                for s in range(n):
                    own = lowest[muscle[s]]
                    # Steep reach makes the cost change faster than 1 mm a mm: hence the spare.
                    if own > least + 2.2 * radius + CLIP:
                        continue
                    if at_centre[s] <= own + 2.2 * radius + 3.0:
                        kept[m] = s
                        m += 1
                for i in range(i0, i1):
                    for j in range(j0, j1):
                        for k in range(k0, k1):
                            if solid[i, j, k] >= limit:
                                continue
                            x = origin[0] + i * spacing
                            y = origin[1] + j * spacing
                            z = origin[2] + k * spacing
                            best[:] = np.inf
                            second[:] = np.inf
                            whose[:] = -1
                            for q in range(m):
                                s = kept[q]
                                c = _segment_cost(x, y, z, a[s], b[s], ra[s], rb[s])
                                o = muscle[s]
                                if fascicle[s] == whose[o]:
                                    best[o] = min(best[o], c)
                                elif c < best[o]:
                                    second[o] = best[o]
                                    best[o] = c
                                    whose[o] = fascicle[s]
                                elif c < second[o]:
                                    second[o] = c
                            for r in range(label.shape[3]):
                                o = np.argmin(best)
                                if not np.isfinite(best[o]):
                                    break
                                if r == 0:
                                    groove[i, j, k] = second[o] - best[o]
                                label[i, j, k, r] = o
                                cost[i, j, k, r] = best[o]
                                best[o] = np.inf


@njit(**KERNEL)
def _difference(label, cost, which, clip):
    """Cost of one muscle less the least of all others, clipped; +clip where unknown."""
    nx, ny, nz, kept = label.shape
    out = np.full((nx, ny, nz), clip, np.float32)
    for i in range(nx):
        for j in range(ny):
            for k in range(nz):
                if label[i, j, k, 0] == which:
                    d = clip
                    if label[i, j, k, 1] >= 0:
                        d = cost[i, j, k, 1] - cost[i, j, k, 0]
                    out[i, j, k] = -min(d, clip)
                else:
                    for r in range(1, kept):
                        if label[i, j, k, r] == which:
                            d = cost[i, j, k, r] - cost[i, j, k, 0]
                            out[i, j, k] = min(d, clip)
    return out


def _solid(
    region: Callable[[np.ndarray], np.ndarray],
    bounds: np.ndarray,
    obstacles: Sequence[MeshIndex],
    spacing: float,
    room: float,
) -> Field:
    """Field of the region less its obstacles: negative inside."""
    solid = Field(bounds[0], bounds[1], spacing, band=3.0 * spacing)
    axes = [solid.origin[k] + np.arange(solid.data.shape[k]) * spacing for k in range(3)]
    for i, x in enumerate(axes[0]):
        y, z = np.meshgrid(axes[1], axes[2], indexing="ij")
        points = np.stack([np.full(y.size, x), y.ravel(), z.ravel()], axis=1)
        solid.data[i] = np.asarray(region(points), dtype=np.float32).reshape(y.shape)
    if obstacles:
        taken = Field(bounds[0], bounds[1], spacing, band=3.0 * spacing)
        for index in obstacles:
            taken.add_mesh(index)
        np.maximum(solid.data, room - taken.data, out=solid.data)
    return solid


def fill_and_share(
    region: Callable[[np.ndarray], np.ndarray],
    fascicles: Sequence[Fascicle],
    bounds: np.ndarray,
    *,
    obstacles: Sequence[MeshIndex] = (),
    spacing: float = 1.5,
    gap: float = 0.3,
    room: float = 0.3,
    relief: float = 0.4,
    smooth: float = 1.0,
    limit: float | None = None,
    triangles: int | Mapping[str, int] | None = None,
    fibre_points: int = 24,
    threads: int = 2,
) -> dict[str, Belly]:
    """Share a solid region among muscles by their fascicles.

    Parameters
    ----------
    region : callable (n, 3) mm -> (n,) mm
        About the signed distance to the region's border, negative inside.
    fascicles : sequence of Fascicle
    bounds : (2, 3) float
        Box of the region, mm.
    obstacles : sequence of MeshIndex
        Solids that the region does not include.
    spacing : float
        Grid step, mm: 1.5 for full detail, 2.5 to 3 for preview.
    gap : float
        Between neighbouring shares, mm.
    room : float
        Between shares and obstacles, mm.
    relief : float
        Depth of the furrow between two fascicles of one muscle at the surface, mm.
    smooth : float
        Width (standard deviation) in grid steps of the smoothing of borders.
    limit : float or None
        Points farther than this beyond every fascicle's reach stay empty, mm.
    triangles : int, mapping or None
        Budget for each muscle; None keeps the contour's own triangles.
    fibre_points : int
        Points of each fibre line handed back.
    threads : int

    Returns
    -------
    dict of str to Belly
        Muscles in order of first appearance; one that gets nothing is absent.

    Notes
    -----
    With c_m the smoothed cost of muscle m, a share is where c_m - min c_other
    < -gap. For two muscles these differences can't both be negative, and
    smoothing keeps that, so that shares are apart by construction; contouring
    and decimation add errors of a fraction of a step, which ``gap`` must cover.
    """
    if not fascicles:
        raise ValueError("fill_and_share: needs at least one fascicle, got none")
    from meshes.drape.sheet import resample_curve

    names = list(dict.fromkeys(f.muscle for f in fascicles))
    bounds = np.asarray(bounds, dtype=np.float64)
    margin = 2.0 * spacing
    solid = _solid(region, bounds + np.array([[-margin], [margin]]), obstacles, spacing, room)
    a, b, ra, rb, whose, muscle = [], [], [], [], [], []
    for number, f in enumerate(fascicles):
        line = np.asarray(f.line, dtype=np.float64)
        reach = np.broadcast_to(np.asarray(f.reach, dtype=np.float64), (len(line),))
        a.append(line[:-1])
        b.append(line[1:])
        ra.append(reach[:-1])
        rb.append(reach[1:])
        whose.append(np.full(len(line) - 1, number))
        muscle.append(np.full(len(line) - 1, names.index(f.muscle)))
    rows = [np.ascontiguousarray(np.concatenate(r)) for r in (a, b, ra, rb, whose, muscle)]
    shape = solid.data.shape
    label = np.full((*shape, KEPT), -1, np.int16)
    cost = np.full((*shape, KEPT), 1e3, np.float32)
    groove = np.full(shape, 1e3, np.float32)
    cut = np.linspace(0, shape[0], threads + 1)
    cut = (np.round(cut / 4) * 4).astype(int)
    cut[-1] = shape[0]
    with ThreadPoolExecutor(threads) as pool:
        list(
            pool.map(
                lambda i: _share(
                    solid.data, solid.origin, spacing, 3.0 * spacing, cut[i], cut[i + 1],
                    *rows, len(names), label, cost, groove,
                ),
                range(threads),
            )
        )  # fmt: skip
    hull = solid.data
    if limit is not None:
        hull = np.maximum(hull, np.minimum(cost[..., 0] - limit, CLIP))
    if relief > 0:
        # A furrow two steps wide is the least that the grid can hold.
        width = max(2.0, 1.3 * spacing)
        furrow = np.clip(1 - groove / width, 0, 1)
        hull = hull + relief * gaussian_filter(furrow, 0.7)
    with ThreadPoolExecutor(threads) as pool:
        shares = pool.map(
            lambda n: _contour_share(
                n, label, cost, hull, solid, gap, smooth,
                triangles if isinstance(triangles, int) or triangles is None
                else triangles.get(names[n]),
            ),
            range(len(names)),
        )  # fmt: skip
        meshes = dict(zip(names, shares))
    bellies = {}
    for name, mesh in meshes.items():
        if mesh is None:
            continue
        lines = [resample_curve(f.line, fibre_points) for f in fascicles if f.muscle == name]
        uv, _ = fibre_coordinates(np.asarray(mesh.vertices), lines)
        bellies[name] = Belly(mesh, uv, np.stack(lines))
    return bellies


def _contour_share(n, label, cost, hull, solid, gap, smooth, triangles):
    """Closed mesh of one muscle's share, or None when it has none."""
    mine = label[..., 0] == n
    mine &= hull < 0
    if not mine.any():
        return None
    window = []
    for axis in range(3):
        hit = np.flatnonzero(mine.any(axis=tuple(k for k in range(3) if k != axis)))
        window.append(slice(max(hit[0] - 4, 0), hit[-1] + 5))
    window = tuple(window)
    # The gap is a floor for the drawn mesh: half a step's contour error is added to it.
    value = gaussian_filter(_difference(label[window], cost[window], n, np.float32(CLIP)), smooth)
    value = np.maximum(hull[window], 0.5 * value + 0.5 * gap)
    for axis in range(3):
        edge: list[slice | int] = [slice(None)] * 3
        for index in (0, -1):
            edge[axis] = index
            value[tuple(edge)] = np.maximum(value[tuple(edge)], 0.25 * solid.spacing)
    lower = solid.origin + np.array([w.start for w in window]) * solid.spacing
    vertices, faces = contour_grid(np.ascontiguousarray(value.T), lower, solid.spacing)
    if len(faces) == 0:
        return None
    vertices, faces = _keep_pieces(vertices, faces)
    vertices = relax(vertices, faces, 2)
    if triangles is not None:
        vertices, faces = simplify(vertices, faces, triangles)
    # Back onto the exact border after smoothing and decimation.
    local = object.__new__(Field)
    local.origin, local.spacing, local.band = lower, solid.spacing, solid.band
    local.data = np.ascontiguousarray(value, dtype=np.float32)
    for _ in range(2):
        g = local.gradient(vertices)
        size = np.maximum((g * g).sum(axis=1), 0.25)
        shift = -(local.sample(vertices) / size)[:, None] * g
        most = 0.5 * solid.spacing
        long = np.linalg.norm(shift, axis=1, keepdims=True)
        vertices = vertices + shift * np.minimum(1.0, most / np.maximum(long, 1e-12))
    return trimesh.Trimesh(vertices, faces, process=False)


def _keep_pieces(vertices: np.ndarray, faces: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Drop crumbs: connected pieces much smaller than the largest."""
    from scipy.sparse import coo_matrix
    from scipy.sparse.csgraph import connected_components

    n = len(vertices)
    a = np.concatenate([faces[:, 0], faces[:, 1]])
    b = np.concatenate([faces[:, 1], faces[:, 2]])
    count, label = connected_components(
        coo_matrix((np.ones(len(a)), (a, b)), shape=(n, n)), directed=False
    )
    if count == 1:
        return vertices, faces
    corners = vertices[faces] - vertices.mean(axis=0)
    parts = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6.0
    volume = np.abs(np.bincount(label[faces[:, 0]], weights=parts, minlength=count))
    keep = volume > LEAST_PIECE * volume.max()
    faces = faces[keep[label[faces[:, 0]]]]
    used, renumbered = np.unique(faces, return_inverse=True)
    return vertices[used], renumbered.reshape(-1, 3)
