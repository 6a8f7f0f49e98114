"""The grid against analytic distances."""

import numpy as np
import pytest
import trimesh

from meshes.drape.field import Field


def nodes(field):
    axes = [field.origin[k] + np.arange(field.data.shape[k]) * field.spacing for k in range(3)]
    return np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1)


def test_a_ball_is_exact_at_every_node_and_negative_to_its_middle():
    field = Field([-60, -60, -60], [60, 60, 60])
    field.add_mesh(trimesh.creation.icosphere(subdivisions=5, radius=40))
    truth = np.clip(np.linalg.norm(nodes(field), axis=-1) - 40, -12, 12)
    assert np.abs(field.data - truth).max() < 0.02


def test_a_ball_cut_by_the_border_of_the_grid_is_filled_too():
    field = Field([0, -60, 0], [60, 60, 60])
    field.add_mesh(trimesh.creation.icosphere(subdivisions=5, radius=40))
    truth = np.clip(np.linalg.norm(nodes(field), axis=-1) - 40, -12, 12)
    assert np.abs(field.data - truth).max() < 0.02


def test_a_capsule_is_exact_and_joins_what_is_there():
    field = Field([-30, -30, -30], [30, 30, 30], spacing=2.0)
    field.add_mesh(trimesh.creation.icosphere(subdivisions=5, radius=8))
    field.add_capsules(np.array([[-20, 0, 0], [20, 0, 0.0]]), 4.0)
    p = nodes(field)
    axis = np.stack([np.clip(p[..., 0], -20, 20), 0 * p[..., 1], 0 * p[..., 2]], axis=-1)
    truth = np.minimum(np.linalg.norm(p - axis, axis=-1) - 4, np.linalg.norm(p, axis=-1) - 8)
    assert np.abs(field.data - np.clip(truth, -12, 12)).max() < 0.02


def test_a_sheet_is_a_slab_below_its_face_and_ends_at_its_border():
    field = Field([-30, -30, -30], [30, 30, 30])
    u, v = np.meshgrid(np.linspace(-15, 15, 11), np.linspace(-15, 15, 11))
    field.add_sheet(np.stack([u, v, 0 * u], axis=-1), depth=9.0, outward=[0, 0, 1])
    got = field.sample([[0, 0, 4], [0, 0, -3], [0, 0, -12], [21, 0, -3]])
    assert np.allclose(got[:3], [4, -3, 3], atol=1e-4)
    assert got[3] > 5


def test_gradient_points_out_of_the_solid():
    field = Field([-60, -60, -60], [60, 60, 60])
    field.add_mesh(trimesh.creation.icosphere(subdivisions=4, radius=40))
    points = np.random.default_rng(0).normal(size=(200, 3))
    points *= 42 / np.linalg.norm(points, axis=1, keepdims=True)
    assert np.all(np.einsum("ij,ij->i", field.gradient(points), points / 42) > 0.97)


@pytest.mark.parametrize("spacing", [0.7, 0.9, 1.1, 1.3, 1.7])
def test_a_field_over_another_has_its_shape(spacing):
    for k in range(200):
        low = np.array([-3.1, 0.37, 11.9]) + 0.173 * k
        one = Field(low, low + [31.3, 47.9, 205.1 + 0.41 * k], spacing)
        assert Field(one.origin, one.upper, spacing).data.shape == one.data.shape
