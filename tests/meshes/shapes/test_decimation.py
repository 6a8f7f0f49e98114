"""Decimation, held to the library whose way it goes: fast-simplification, to the last bit."""

from __future__ import annotations

import fast_simplification
import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.shapes.decimation import decimate


def _bumpy(seed: int) -> tuple[np.ndarray, np.ndarray]:
    ball = trimesh.creation.icosphere(4, radius=20.0)
    noise = np.random.default_rng(seed).normal(0, 0.4, ball.vertices.shape)
    return (ball.vertices * [1.0, 0.3, 2.0] + noise).astype(np.float32), np.asarray(ball.faces)


def _same(vertices: np.ndarray, faces: np.ndarray, target: int, aggression: float) -> int:
    points, triangles = fast_simplification.simplify(
        vertices, faces.astype(np.int32), target_count=target, agg=aggression
    )
    ours, our_faces = decimate(vertices, faces, target, aggression)
    np.testing.assert_array_equal(our_faces, triangles)
    np.testing.assert_array_equal(ours, points)
    return len(our_faces)


@settings(deadline=None, max_examples=15)
@given(
    seed=st.integers(0, 1000),
    target=st.integers(100, 5000),
    aggression=st.sampled_from([5.0, 7.0, 8.0]),
)
def test_closed_meshes_become_those_of_the_library(seed, target, aggression):
    assert _same(*_bumpy(seed), target, aggression) < 5120


def test_open_and_flat_meshes_become_those_of_the_library():
    x, y = np.meshgrid(np.arange(40.0), np.arange(30.0))
    cell = np.arange(39) + 40 * np.arange(29)[:, None]
    faces = np.concatenate(
        [
            np.stack([cell, cell + 1, cell + 40], axis=-1).reshape(-1, 3),
            np.stack([cell + 1, cell + 41, cell + 40], axis=-1).reshape(-1, 3),
        ]
    )
    flat = np.stack([x.ravel(), y.ravel(), np.zeros(x.size)], axis=1).astype(np.float32)
    assert _same(flat, faces, 300, 7.0) < len(faces)


def test_lists_that_run_full_go_on_where_they_stopped():
    # So many collapses between two renewals of the lists outgrow the room made at first.
    vertices, faces = _bumpy(3)
    assert _same(vertices, faces, 40, 12.0) < 200


def test_what_was_given_is_left_as_it_was():
    vertices, faces = _bumpy(1)
    before = vertices.copy(), faces.copy()
    decimate(vertices, faces, 500, 5.0)
    np.testing.assert_array_equal(vertices, before[0])
    np.testing.assert_array_equal(faces, before[1])


@pytest.mark.parametrize("target", [5120, 9000])
def test_nothing_to_spare_leaves_the_mesh(target):
    vertices, faces = _bumpy(2)
    ours, our_faces = decimate(vertices, faces, target, 7.0)
    assert len(our_faces) == 5120 and np.array_equal(ours, vertices)
