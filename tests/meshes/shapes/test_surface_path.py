import numpy as np
import pytest
import trimesh

from meshes.shapes.surface_path import shortest_on_surface


def test_way_over_a_ball_is_nearly_a_great_circle():
    mesh = trimesh.creation.icosphere(subdivisions=4, radius=50.0)
    a, b = (
        mesh.vertices[np.argmax(mesh.vertices[:, 0])],
        mesh.vertices[np.argmax(mesh.vertices[:, 2])],
    )
    way = shortest_on_surface(mesh.vertices, mesh.faces, a, b)
    length = np.linalg.norm(np.diff(way, axis=0), axis=1).sum()
    assert length == pytest.approx(50.0 * np.pi / 2, rel=0.04)
    assert np.linalg.norm(way, axis=1) == pytest.approx(50.0, rel=0.02)
    assert way[0] == pytest.approx(a) and way[-1] == pytest.approx(b)


def test_no_way_between_two_separate_pieces():
    left = trimesh.creation.icosphere(radius=5.0)
    right = left.copy()
    right.apply_translation([40, 0, 0])
    both = trimesh.util.concatenate([left, right])
    assert shortest_on_surface(both.vertices, both.faces, [0, 0, 5.0], [40.0, 0, 5.0]) is None
