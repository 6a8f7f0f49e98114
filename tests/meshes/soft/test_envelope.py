"""The open surface under skin and fascia: even, plain, cut where it should be."""

import numpy as np
import pytest

from meshes.drape.field import Field
from meshes.soft.surface_grid import (
    MEDIAN_X_MM,
    along_way,
    ascent_lines,
    border_edges,
    cut_surface,
    is_plain,
    surface_net,
)

RADIUS = 60.0


@pytest.fixture(scope="module")
def ball():
    field = Field(np.array([-20.0, -100, -100]), np.array([100.0, 100, 100]), 5.0, band=1e6)
    axes = [field.origin[i] + 5.0 * np.arange(field.data.shape[i]) for i in range(3)]
    grid = np.stack(np.meshgrid(*axes, indexing="ij"), -1)
    field.data = (np.linalg.norm(grid, axis=-1) - RADIUS).astype(np.float32)
    return field


def test_net_lies_on_the_level_and_ends_in_the_median_plane(ball):
    vertices, faces = surface_net(ball, 0.0, 8.0)
    assert is_plain(faces)
    assert np.abs(np.linalg.norm(vertices, axis=1) - RADIUS).max() < 1.5
    rim = np.unique(border_edges(faces))
    assert np.allclose(vertices[rim, 0], MEDIAN_X_MM)
    a, b, c = (vertices[faces[:, k]] for k in range(3))
    outward = np.einsum("ij,ij->i", np.cross(b - a, c - a), a + b + c)
    assert (outward > 0).all()


def test_trimmed_border_lies_on_its_line(ball):
    vertices, faces = surface_net(ball, 0.0, 8.0)
    vertices, faces, held = cut_surface(
        vertices, faces, ball, 0.0, [lambda p: p[:, 2] + 20.0], [lambda p: p[:, 2] - 15.0]
    )
    assert is_plain(faces)
    assert vertices[:, 2].min() == pytest.approx(-20.0, abs=0.1)
    loop = vertices[held[:, 2]]
    assert len(loop) > 10
    assert np.abs(loop[:, 2] - 15.0).max() < 0.1


def test_ways_run_straight_out_and_keep_their_order(ball):
    points = RADIUS * np.array([[0.6, 0.8, 0.0], [0.6, 0.0, 0.8]])
    way, s = ascent_lines(points, ball, 10.0, 20.0, 2.0, np.zeros((2, 0), bool), [])
    for depth in (-6.0, 0.0, 13.0):
        reached = np.linalg.norm(along_way(way, s, np.full(2, depth)), axis=1)
        assert reached == pytest.approx(RADIUS + depth, abs=0.6)
