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
