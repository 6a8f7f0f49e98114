"""Corners that a shape can spare are taken out; the shape stays."""

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.drape.distance import MeshIndex
from meshes.shapes.contour import is_two_manifold
from meshes.shapes.polyline import thinned
from meshes.shapes.thinning import thinned_mesh


def _box_of_many_triangles() -> trimesh.Trimesh:
    box = trimesh.creation.box((20.0, 30.0, 4.0))
    for _ in range(4):
        box = box.subdivide()
    return box


def test_a_box_keeps_its_edges_and_volume_with_a_quarter_of_the_triangles():
    box = _box_of_many_triangles()
    kept, faces = thinned_mesh(box.vertices, box.faces, 0.05, 100.0)
    less = trimesh.Trimesh(box.vertices[kept], faces, process=False)
    assert is_two_manifold(faces)
    assert len(faces) < 0.25 * len(box.faces)
    assert less.volume == pytest.approx(box.volume, rel=1e-6)
    assert np.allclose(less.bounds, box.bounds)


def test_no_edge_grows_longer_than_allowed():
    box = _box_of_many_triangles()
    kept, faces = thinned_mesh(box.vertices, box.faces, 0.05, 5.0)
    less = trimesh.Trimesh(box.vertices[kept], faces, process=False)
    assert less.edges_unique_length.max() <= 5.0 + 1e-9


@settings(max_examples=15, deadline=None)
@given(st.floats(0.02, 0.6), st.integers(0, 2**31))
def test_what_was_lies_close_to_what_is_left(tolerance, seed):
    ball = trimesh.creation.icosphere(subdivisions=3, radius=12.0)
    rng = np.random.default_rng(seed)
    points = ball.vertices * (1.0 + 0.02 * rng.standard_normal((len(ball.vertices), 1)))
    kept, faces = thinned_mesh(points, ball.faces, tolerance, 100.0)
    assert is_two_manifold(faces)
    less = trimesh.Trimesh(points[kept], faces, process=False)
    assert less.volume > 0
    away = np.abs(MeshIndex.of(less).signed_distance(points)[0])
    # Where planes meet at an angle, the surface lies a little farther off than either.
    assert away.max() <= 2.0 * tolerance + 1e-9


def test_corners_with_no_tolerance_all_stay():
    box = _box_of_many_triangles()
    tolerance = np.where(box.vertices[:, 2] > 1.99, 0.0, 0.05)
    box.vertices += 0.01 * np.sin(7 * box.vertices[:, [1, 2, 0]] + 5 * box.vertices + 1.0)
    kept, _ = thinned_mesh(box.vertices, box.faces, tolerance, 100.0)
    assert np.isin(np.flatnonzero(tolerance == 0.0), kept).all()
    assert len(kept) < len(box.vertices)


@settings(max_examples=30, deadline=None)
@given(st.integers(2, 40), st.floats(0.05, 1.0), st.integers(0, 2**31))
def test_a_thinned_course_stays_close_to_the_course(count, tolerance, seed):
    rng = np.random.default_rng(seed)
    line = np.cumsum(rng.standard_normal((count, 3)), axis=0)
    kept = thinned(line, tolerance, 15.0)
    assert kept[0] == 0 and kept[-1] == count - 1
    for a, b in zip(kept[:-1], kept[1:], strict=True):
        way = line[b] - line[a]
        for point in line[a + 1 : b]:
            share = np.clip((point - line[a]) @ way / max(way @ way, 1e-12), 0, 1)
            assert np.linalg.norm(point - line[a] - share * way) <= tolerance + 1e-9
