"""Implicit solids against shapes whose distances and volumes are known by hand."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.shapes.contour import contour, is_two_manifold, without_flaps
from meshes.shapes.solid import Solid


def test_a_capsule_has_its_exact_distances():
    capsule = Solid().cone([0, 0, -10], [0, 0, 10], 3)
    points = np.array([[5.0, 0, 0], [0, 0, 15.0], [0, 0, 0], [3.0, 4.0, 13.0]])
    assert np.allclose(capsule.distance(points), [2, 2, -3, np.sqrt(9 + 16 + 9) - 3])


def test_a_contoured_ball_has_its_volume():
    ball = Solid().ellipsoid([1, 2, 3], [10, 10, 10])
    mesh = contour(ball, 1.0, 3000)
    assert mesh.is_watertight
    assert mesh.volume == pytest.approx(4 / 3 * np.pi * 1000, rel=0.02)
    assert np.allclose(mesh.centroid, [1, 2, 3], atol=0.1)


def test_a_box_with_a_hole_loses_the_hole():
    solid = Solid().box([0, 0, 0], [10, 10, 10], rounding=0.2)
    solid.cone([0, 0, -20], [0, 0, 20], 4, operation="subtract", blend=0)
    mesh = contour(solid, 0.8, 6000)
    assert mesh.volume == pytest.approx(8000 - np.pi * 16 * 20, rel=0.02)
    assert mesh.euler_number == 0


def test_projected_points_lie_on_the_surface():
    solid = Solid().prism([0, 0, 0], [15, 12, 10], waist=0.1, dish=1.0)
    solid.blade([0, 10, 0], [0, 40, -20], [1, 0, 0], (3, 2), (8, 4))
    rng = np.random.default_rng(3)
    points = solid.project(rng.normal(size=(50, 3)) * [8, 8, 6] + [0, 12, 0], steps=30)
    assert np.abs(solid.distance(points)).max() < 0.05


def test_an_empty_contour_is_refused():
    solid = Solid().ellipsoid([0, 0, 0], [5, 5, 5])
    with pytest.raises(ValueError, match="empty"):
        contour(solid, 1.0, 100, bounds=np.array([[20.0, 20, 20], [30, 30, 30]]))


def test_an_unknown_operation_is_refused_with_the_allowed_ones():
    with pytest.raises(ValueError, match="union"):
        Solid().cone([0, 0, 0], [1, 0, 0], 1, operation="add")


def test_a_mesh_with_a_missing_face_is_no_manifold():
    mesh = contour(Solid().ellipsoid([0, 0, 0], [8, 6, 5]), 1.0, 400)
    assert is_two_manifold(mesh.faces)
    assert not is_two_manifold(mesh.faces[1:])


def test_a_pair_of_faces_back_to_back_is_dropped():
    mesh = contour(Solid().ellipsoid([0, 0, 0], [8, 6, 5]), 1.0, 400)
    count = len(mesh.vertices)
    flap = np.array([[0, 1, 2], [2, 1, 0]]) + count
    vertices = np.concatenate([mesh.vertices, [[20.0, 0, 0], [21, 0, 0], [20, 1, 0]]])
    faces = np.concatenate([mesh.faces, flap])
    assert is_two_manifold(faces)
    kept_vertices, kept_faces = without_flaps(vertices, faces)
    assert len(kept_faces) == len(mesh.faces)
    assert len(kept_vertices) == count
