"""The open surface under the skin: even, cut along lines, nowhere turned over."""

import numpy as np

from meshes.soft.surface_grid import unfold


class Up:
    """A field that grows upward."""

    def gradient(self, points):
        return np.broadcast_to([0.0, 0.0, 1.0], points.shape)


def _looks_up(vertices, faces):
    a, b, c = (vertices[faces[:, k]] for k in range(3))
    return np.cross(b - a, c - a)[:, 2] > 0


SQUARE = np.array([[0, 0, 0], [10, 0, 0], [10, 10, 0], [0, 10, 0], [2, 2, 0]], float)


def test_a_triangle_that_looks_inward_gets_the_other_diagonal():
    # The fifth corner was snapped over the diagonal on which it stood.
    faces = np.array([[0, 1, 3], [3, 1, 4], [1, 2, 4], [2, 3, 4]])
    held = np.zeros((5, 1), bool)
    assert not _looks_up(SQUARE, faces).all()
    turned = unfold(SQUARE, faces, held, Up())
    assert _looks_up(SQUARE, turned).all()
    assert sorted(map(sorted, turned.tolist())) != sorted(map(sorted, faces.tolist()))


def test_edges_on_a_line_stay():
    faces = np.array([[0, 1, 3], [3, 1, 4], [1, 2, 4], [2, 3, 4]])
    held = np.zeros((5, 1), bool)
    held[[1, 3]] = True
    turned = unfold(SQUARE, faces, held, Up())
    edges = {frozenset((int(f[k]), int(f[k - 1]))) for f in turned for k in range(3)}
    assert frozenset((1, 3)) in edges


def test_a_plain_surface_is_left_alone():
    faces = np.array([[0, 1, 2], [0, 2, 3]])
    assert unfold(SQUARE, faces, np.zeros((5, 1), bool), Up()) is faces
