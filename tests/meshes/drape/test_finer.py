"""Smaller triangles in places: the surface itself stays what it was."""

import numpy as np
import pytest
import trimesh

from meshes.drape.audit import is_closed
from meshes.drape.finer import split_edges


def _ball() -> trimesh.Trimesh:
    return trimesh.creation.icosphere(subdivisions=2, radius=20.0)


@pytest.mark.parametrize("share", [0.02, 0.3, 0.7, 1.0])
def test_the_surface_stays_closed_and_where_it_is(share):
    ball = _ball()
    chosen = np.random.default_rng(3).random(len(ball.faces)) < share
    vertices, faces, ends = split_edges(ball.vertices, ball.faces, chosen, 1.0)
    finer = trimesh.Trimesh(vertices, faces, process=False)
    assert is_closed(finer)
    assert finer.volume == pytest.approx(ball.volume)
    assert finer.area == pytest.approx(ball.area)
    assert np.array_equal(vertices[: len(ball.vertices)], ball.vertices)
    assert np.allclose(vertices[len(ball.vertices) :], ball.vertices[ends].mean(axis=1))


def test_one_chosen_triangle_becomes_four_and_its_neighbours_two_each():
    ball = _ball()
    chosen = np.arange(len(ball.faces)) == 7
    _, faces, ends = split_edges(ball.vertices, ball.faces, chosen, 1.0)
    assert len(ends) == 3
    assert len(faces) == len(ball.faces) + 3 + 3


def test_no_edge_is_halved_that_is_short_enough():
    ball = _ball()
    longest = float(ball.edges_unique_length.max())
    assert split_edges(ball.vertices, ball.faces, np.ones(len(ball.faces), bool), longest) is None
