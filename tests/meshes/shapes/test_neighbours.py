"""Pieces and means over neighbours, held to scipy's sparse matrices and graphs."""

from __future__ import annotations

import numpy as np
import trimesh
from scipy.sparse import coo_matrix, diags
from scipy.sparse.csgraph import connected_components

from meshes.shapes.neighbours import evened, least_of_piece


def test_pieces_are_those_that_the_graph_library_finds():
    rng = np.random.default_rng(5)
    for _ in range(20):
        groups = rng.integers(0, 300, (70, 3))
        ends = np.concatenate([groups[:, :2], groups[:, 1:]])
        graph = coo_matrix((np.ones(len(ends)), tuple(ends.T)), (300, 300))
        count, label = connected_components(graph, directed=False)
        least = least_of_piece(300, groups)
        assert len(np.unique(least)) == count
        assert np.array_equal(np.unique(least, return_inverse=True)[1], label)
        assert np.all(least <= np.arange(300)) and np.all(least[least] == least)


def test_evening_out_is_what_sparse_means_give():
    ball = trimesh.creation.icosphere(3, radius=8.0)
    rough = ball.vertices + np.random.default_rng(1).normal(0, 0.2, ball.vertices.shape)
    n, edges = len(rough), ball.edges
    near = coo_matrix((np.ones(len(edges)), tuple(edges.T)), (n, n)).tocsr()
    near = ((near + near.T) > 0).astype(float)
    mean = diags(1.0 / np.asarray(near.sum(1)).ravel()) @ near
    wanted = rough.copy()
    for _ in range(3):
        wanted += 0.5 * (mean @ wanted - wanted)
        wanted -= 0.53 * (mean @ wanted - wanted)
    found = evened(rough, ball.faces, 3, 0.5, 0.53)
    np.testing.assert_allclose(found, wanted, atol=1e-12)
    assert not np.allclose(found, rough, atol=0.05)


def test_a_vertex_without_faces_is_alone():
    faces = np.array([[1, 2, 3]])
    assert least_of_piece(5, faces).tolist() == [0, 1, 1, 1, 4]
