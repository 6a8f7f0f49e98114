"""Meshes that touch themselves are taken apart."""

import numpy as np
import trimesh

from meshes.shapes.contour import is_two_manifold, pieces, unpinched, without_crumbs


def test_two_tetrahedra_that_share_an_edge_are_taken_apart():
    points = np.array(
        [[0, 0, 0], [0, 0, 1], [1, 0, 0.5], [1, 1, 0.5], [-1, 0, 0.5], [-1, -1, 0.5]], float
    )
    faces = np.concatenate([_tetrahedron(points, 0, 1, 2, 3), _tetrahedron(points, 0, 1, 4, 5)])
    assert not is_two_manifold(faces)
    parted, parted_faces = unpinched(points, faces)
    assert is_two_manifold(parted_faces)
    assert len(parted) == 8
    mesh = trimesh.Trimesh(parted, parted_faces, process=False)
    assert mesh.body_count == 2 and mesh.volume > 0


def _tetrahedron(points, *corners):
    faces = []
    for k in range(4):
        a, b, c = (corner for i, corner in enumerate(corners) if i != k)
        normal = np.cross(points[b] - points[a], points[c] - points[a])
        inward = points[corners[k]] - points[a]
        faces.append([a, b, c] if normal @ inward < 0 else [a, c, b])
    return np.array(faces)


def test_crumbs_are_dropped_and_pieces_are_kept():
    points = np.concatenate([np.eye(3), [[0, 0, 0]]])
    one = _tetrahedron(points, 0, 1, 2, 3)
    many = np.concatenate([points, 0.9 * points + 5.0, 0.05 * points - 5.0])
    kept, faces = without_crumbs(many, np.concatenate([one, one + 4, one + 8]))
    assert len(kept) == 8
    assert len(np.unique(pieces(faces))) == 2


def _shrunken_waist() -> tuple[np.ndarray, np.ndarray]:
    """A ring of three prisms, two of which meet in one edge only: it can't be taken apart."""
    box = trimesh.creation.annulus(2.0, 5.0, 1.0, sections=8)
    points, faces = np.asarray(box.vertices, float).copy(), np.asarray(box.faces)
    # All corners at one station of the ring are drawn together, top with top, bottom with bottom.
    angle = np.arctan2(points[:, 1], points[:, 0])
    at = np.abs(angle - angle[0]) < 1e-6
    for z in np.unique(points[:, 2]):
        level = np.flatnonzero(at & (points[:, 2] == z))
        faces = np.where(np.isin(faces, level), level[0], faces)
    flat = (np.sort(faces, axis=1)[:, 1:] == np.sort(faces, axis=1)[:, :-1]).any(axis=1)
    used, renumbered = np.unique(faces[~flat], return_inverse=True)
    return points[used], renumbered.reshape(-1, 3)


def test_a_waist_that_shrank_to_an_edge_is_kept_as_a_hair_where_asked():
    points, faces = _shrunken_waist()
    assert not is_two_manifold(faces)
    _, left = unpinched(points, faces)
    mended_points, mended = unpinched(points, faces, waists=True)
    assert is_two_manifold(mended)
    assert len(np.unique(pieces(mended))) == 1
    mesh = trimesh.Trimesh(mended_points, mended, process=False)
    before = trimesh.Trimesh(points, faces, process=False)
    assert abs(mesh.volume - before.volume) < 0.05 * abs(before.volume)
    assert len(left) <= len(mended)
