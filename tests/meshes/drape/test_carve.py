"""Carved solids keep clear of what is there."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from meshes.drape.carve import NothingLeft, carve, fibre_coordinates
from meshes.drape.distance import MeshIndex
from meshes.shapes.solid import Solid


def test_a_carved_bar_clears_the_ball_it_would_run_through():
    ball = trimesh.creation.icosphere(subdivisions=4, radius=6)
    bar = Solid().cone([-20, 5, 0], [20, 5, 0], 5)
    mesh = carve(bar, [MeshIndex.of(ball)], spacing=0.8, triangles=2000, gap=0.3)
    assert mesh.is_watertight
    distance = MeshIndex.of(ball).signed_distance(mesh.vertices)[0]
    assert distance.min() > 0.1
    assert mesh.volume < 0.9 * (np.pi * 25 * 40 + 4 / 3 * np.pi * 125)


def test_a_solid_inside_an_obstacle_leaves_nothing():
    ball = trimesh.creation.icosphere(subdivisions=3, radius=10)
    with pytest.raises(NothingLeft):
        carve(
            Solid().ellipsoid([0, 0, 0], [3, 3, 3]),
            [MeshIndex.of(ball)],
            spacing=1.0,
            triangles=100,
        )


def test_the_median_plane_is_not_crossed():
    mesh = carve(
        Solid().ellipsoid([1, 0, 0], [5, 5, 5]), [], spacing=0.7, triangles=800, x_min=0.15
    )
    assert mesh.vertices[:, 0].min() > 0.0


def test_fibre_coordinates_run_from_origin_to_insertion():
    line = np.array([[0.0, 0, 0], [0, 0, 10], [0, 0, 30]])
    uv, which = fibre_coordinates(
        np.array([[1.0, 0, 0], [1, 0, 15], [1, 0, 30]]), [line, line + 50]
    )
    assert np.allclose(uv[:, 0], [0, 0.5, 1])
    assert np.all(which == 0)
