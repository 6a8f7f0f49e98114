"""Rays that go straight inward everywhere on the back, each with the area that it stands for.

"Outward" is not "backward": over the flank, the shoulder and the side of the neck
the direction follows the body. It is the mean normal of the skin round about.
Neighbouring rays draw together where the body is convex; the area of the tube
that a ray stands for is therefore known at every depth, so that shares of area
are right for deep parts too.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from meshes.errors import PeelbackError
from meshes.model import BackModel
from meshes.questions.rays import RayIndex
from meshes.shapes.halves import in_halves

SPACING_MM = 2.0
"""There is one ray for every square of this side on the skin."""

START_MM = 3.0
"""Rays start so far outside the skin, so that they enter it."""

SMOOTH_MM = 20.0
"""Standard deviation of the weights by which the skin's normals are averaged."""

INNER_FACE_MM = 60.0
"""A face of the skin that looks at another part nearer than this is its inner face."""

FACES_CELL_MM = 8.0
"""Faces of the skin are asked one such cell after the other, so that neighbours go together."""

NEIGHBOURS = 12
"""So many rays make up the direction at a place."""

RIM_COSINE = 0.5
"""Faces that lean away from the mean direction by more than 60° are rims."""


@dataclass(frozen=True, slots=True, eq=False)
class InwardRays:
    """Rays over the whole back.

    Attributes
    ----------
    origins : (n, 3) float
        ``START_MM`` outside the skin, mm LPS; neighbours on the skin follow one another.
    directions : (n, 3) float
        Unit vectors, inward.
    tube : (n, 3) float
        Coefficients of the area that a ray stands for: at a distance r (mm) from its
        origin it is tube[0] + tube[1] r + tube[2] r², mm².
    """

    origins: np.ndarray
    directions: np.ndarray
    tube: np.ndarray

    def area(self, ray: np.ndarray, distance: np.ndarray) -> np.ndarray:
        """Return the area (mm²) that rays stand for at distances (mm); 0 where tubes have met."""
        a, b, c = self.tube[ray].T
        return np.maximum(a + distance * (b + distance * c), 0.0)


def inward_rays(model: BackModel, index: RayIndex, spacing_mm: float = SPACING_MM) -> InwardRays:
    """Return rays over all the skin, or from straight behind where a model has none.

    Parameters
    ----------
    model : BackModel
    index : RayIndex
        Of all parts of the model.
    spacing_mm : float
    """
    if not 0.2 <= spacing_mm <= 50.0:
        raise PeelbackError(f"spacing must lie in 0.2–50 mm, got {spacing_mm:g}")
    skins = [part for part in model.parts.values() if part.kind == "skin"]
    if skins:
        corners = np.concatenate([np.asarray(m.vertices, float)[m.faces] for m in skins])
        corners = _outer_faces(corners, index)
    else:
        corners = _sheet_behind(model)
    import trimesh

    vertices, faces = trimesh.remesh.subdivide_to_size(
        corners.reshape(-1, 3), np.arange(3 * len(corners)).reshape(-1, 3), 2.0 * SMOOTH_MM
    )
    corners = vertices[faces]
    outward = _mean_directions(corners)
    middle = _unit(outward.sum(axis=1))
    keep = np.einsum("ij,ij->i", _unit(_area_vectors(corners)), middle) > RIM_COSINE
    return _sample(corners[keep] + START_MM * outward[keep], outward[keep], spacing_mm)


def mean_inward(rays: InwardRays) -> Callable[[np.ndarray], np.ndarray]:
    """Return a function from points (n, 3) to unit vectors square to the skin nearest to each."""
    from scipy.spatial import cKDTree

    tree = cKDTree(rays.origins)

    def inward(points: np.ndarray) -> np.ndarray:
        points = np.asarray(points, float).reshape(-1, 3)
        near = tree.query(points, min(NEIGHBOURS, tree.n))[1].reshape(len(points), -1)
        mean = rays.directions[near].mean(axis=1)
        return mean / np.linalg.norm(mean, axis=1, keepdims=True)

    return inward


def _area_vectors(corners: np.ndarray) -> np.ndarray:
    """Return (n, 3) normals of (n, 3, 3) triangles, as long as their areas (mm²)."""
    return 0.5 * np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])


def _unit(vectors: np.ndarray) -> np.ndarray:
    length = np.linalg.norm(vectors, axis=-1, keepdims=True)
    return vectors / np.where(length > 0, length, 1.0)


def _outer_faces(corners: np.ndarray, index: RayIndex) -> np.ndarray:
    """Leave out the faces of the skin that look at what lies beneath it."""
    normals = _unit(_area_vectors(corners))
    centres = corners.mean(axis=1)
    good = np.linalg.norm(normals, axis=1) > 0.5
    corners, normals, centres = corners[good], normals[good], centres[good]
    order = _side_by_side(centres, FACES_CELL_MM)
    start, along = (centres + 0.01 * normals)[order], normals[order]

    def met(first: int, last: int) -> np.ndarray:
        looked = slice(first, last)
        found = index.unsorted(start[looked], along[looked], INNER_FACE_MM, side_by_side=True)
        return order[first + found[0]]

    outer = np.ones(len(corners), bool)
    for inner in in_halves(met, len(order)):
        outer[inner] = False
    return corners[outer]


def _sheet_behind(model: BackModel) -> np.ndarray:
    """Return triangles of a flat sheet behind everything, facing back."""
    points = [part.vertices for part in model.parts.values()]
    low = np.min([p.min(axis=0) for p in points], axis=0)
    high = np.max([p.max(axis=0) for p in points], axis=0)
    x = np.linspace(low[0], high[0], max(2, int((high[0] - low[0]) / 20) + 1))
    z = np.linspace(low[2], high[2], max(2, int((high[2] - low[2]) / 20) + 1))
    grid = np.stack(np.meshgrid(x, [high[1]], z, indexing="ij"), axis=-1)[:, 0]
    a, b, c, d = grid[:-1, :-1], grid[1:, :-1], grid[1:, 1:], grid[:-1, 1:]
    # Counter-clockwise seen from behind, where +x lies to the left.
    return np.concatenate([np.stack(t, axis=-2).reshape(-1, 3, 3) for t in ((a, c, b), (a, d, c))])


def _mean_directions(corners: np.ndarray) -> np.ndarray:
    """Return (n, 3, 3) outward unit vectors at the corners of (n, 3, 3) triangles."""
    normals = _area_vectors(corners)
    centres = corners.mean(axis=1)
    # Normals are gathered into cells first: the mean is much wider than a triangle.
    cell, member = np.unique(
        np.floor(centres / (0.5 * SMOOTH_MM)).astype(np.int64), axis=0, return_inverse=True
    )
    member = member.reshape(-1)
    gathered = np.zeros((len(cell), 3))
    where = np.zeros((len(cell), 3))
    weight = np.linalg.norm(normals, axis=1)
    np.add.at(gathered, member, normals)
    np.add.at(where, member, centres * weight[:, None])
    where /= np.maximum(np.bincount(member, weight, len(cell)), 1e-12)[:, None]
    places, corner = np.unique(corners.reshape(-1, 3), axis=0, return_inverse=True)
    from scipy.spatial import cKDTree

    near = cKDTree(places).sparse_distance_matrix(
        cKDTree(where), 3.0 * SMOOTH_MM, output_type="coo_matrix"
    )
    shares = np.exp(-0.5 * (near.data / SMOOTH_MM) ** 2)
    outward = np.zeros((len(places), 3))
    for k in range(3):
        outward[:, k] = np.bincount(near.row, shares * gathered[near.col, k], len(places))
    return _unit(outward)[corner.reshape(-1)].reshape(-1, 3, 3)


def _sample(corners: np.ndarray, outward: np.ndarray, spacing_mm: float) -> InwardRays:
    """Spread rays evenly over triangles whose corners have directions of their own."""
    area = np.linalg.norm(_area_vectors(corners), axis=1)
    # Each triangle gets its share of rays; what rounding leaves over goes to the next.
    upto = np.floor(np.cumsum(area) / spacing_mm**2 + 0.5).astype(np.int64)
    count = np.diff(upto, prepend=0)
    lonely = count == 0
    face = np.repeat(np.arange(len(corners)), count)
    number = np.arange(len(face)) - np.repeat(np.cumsum(count) - count, count)
    # Roberts' sequence fills a square evenly whatever the count; folded, it fills a triangle.
    u, v = (0.5 + (number + 1) * 0.7548776662) % 1.0, (0.5 + (number + 1) * 0.5698402910) % 1.0
    folded = u + v > 1.0
    u, v = np.where(folded, 1.0 - u, u), np.where(folded, 1.0 - v, v)
    share = np.column_stack([1.0 - u - v, u, v])
    origins = np.einsum("ij,ijk->ik", share, corners[face])
    directions = -_unit(np.einsum("ij,ijk->ik", share, outward[face]))
    # Tube of a triangle whose corners move along -outward: a quadratic in the distance.
    e1, e2 = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    f1, f2 = outward[:, 0] - outward[:, 1], outward[:, 0] - outward[:, 2]
    along = _unit(outward.sum(axis=1))
    terms = (np.cross(e1, e2), np.cross(e1, f2) + np.cross(f1, e2), np.cross(f1, f2))
    tube = 0.5 * np.stack([np.einsum("ij,ij->i", t, along) for t in terms], axis=1)
    # Triangles too small for a ray of their own are stood for by the others.
    spread = tube[~lonely][:, 0].sum()
    scale = tube[:, 0].sum() / spread if spread > 0 else 1.0
    tube = tube[face] * (scale / count[face])[:, None]
    order = _side_by_side(origins, 4.0 * spacing_mm)
    return InwardRays(origins[order], directions[order], tube[order])


def _side_by_side(places: np.ndarray, cell_mm: float) -> np.ndarray:
    """Return an order in which (n, 3) places follow one another cell by cell, near by near."""
    if not len(places):
        return np.zeros(0, np.int64)
    cell = np.floor((places - places.min(axis=0)) / cell_mm).astype(np.int64)
    key = np.zeros(len(cell), np.int64)
    for bit in range(20):
        for axis in range(3):
            key |= ((cell[:, axis] >> bit) & 1) << (3 * bit + axis)
    return np.argsort(key, kind="stable")
