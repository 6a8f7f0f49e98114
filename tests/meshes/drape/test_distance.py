"""Distances against solids whose distance is known."""

import numpy as np
import trimesh

from meshes.drape.distance import MeshIndex


def box_distance(points, half):
    """Exact signed distance to a box centred on the origin."""
    e = np.abs(points) - half
    return np.linalg.norm(np.maximum(e, 0), axis=1) + np.minimum(e.max(axis=1), 0)


def test_distance_to_a_ball_is_radius_less_the_chord_error():
    ball = MeshIndex.of(trimesh.creation.icosphere(subdivisions=4, radius=10))
    points = np.random.default_rng(1).normal(size=(3000, 3)) * 10
    d, closest, normal = ball.signed_distance(points)
    assert np.abs(d - (np.linalg.norm(points, axis=1) - 10)).max() < 0.05
    assert np.allclose(np.linalg.norm(points - closest, axis=1), np.abs(d))
    assert np.all(np.einsum("ij,ij->i", normal, closest) > 0)


def test_distance_to_a_plate_of_a_third_of_a_millimetre_is_exact():
    half = np.array([25, 15, 0.15])
    plate = trimesh.creation.box(2 * half).subdivide().subdivide()
    points = np.random.default_rng(2).uniform(-1, 1, (5000, 3)) * [30, 20, 0.5]
    index = MeshIndex.of(plate)
    assert np.allclose(index.signed_distance(points)[0], box_distance(points, half), atol=1e-9)
    assert np.array_equal(index.inside(points), box_distance(points, half) < 0)


def test_points_beyond_reach_are_infinitely_far():
    ball = MeshIndex.of(trimesh.creation.icosphere(subdivisions=3, radius=10))
    d, closest, _ = ball.signed_distance([[0, 0, 30.0], [0, 0, 12.0]], reach=5.0)
    assert np.isinf(d[0])
    assert np.allclose(closest[0], [0, 0, 30])
    assert abs(d[1] - 2) < 0.05


def test_samples_lie_on_the_surface_no_farther_apart_than_asked():
    box = MeshIndex.of(trimesh.creation.box((20, 20, 20)))
    points, normals = box.samples(2.0)
    assert np.abs(box.signed_distance(points)[0]).max() < 1e-9
    from scipy.spatial import cKDTree

    probe = np.random.default_rng(3).uniform(-10, 10, (500, 3))
    probe[:, 2] = 10
    assert cKDTree(points).query(probe)[0].max() < 2.0
    assert np.allclose(np.linalg.norm(normals, axis=1), 1)
