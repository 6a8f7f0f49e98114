"""Tubes of known volume, bends and forks."""

import numpy as np
import pytest

from meshes.drape.audit import is_closed, is_outward, self_intersections
from meshes.drape.tube import branching, tube


def test_a_straight_tube_has_the_volume_of_cylinder_and_two_half_balls():
    made = tube([[0, 0, 0], [0, 0, 50.0]], 2.0, sides=48)
    assert made.mesh.volume == pytest.approx(np.pi * 4 * 50 + 4 / 3 * np.pi * 8, rel=0.02)
    assert is_closed(made.mesh)
    assert is_outward(made.mesh)


def test_flat_caps_lie_in_the_end_planes():
    made = tube([[0, 0, 0], [0, 0, 50.0]], 2.0, sides=48, caps="flat")
    assert made.mesh.volume == pytest.approx(np.pi * 4 * 50, rel=0.01)
    assert made.mesh.bounds[:, 2] == pytest.approx([0, 50])
    with pytest.raises(ValueError, match="round or flat"):
        tube([[0, 0, 0], [0, 0, 50.0]], 2.0, caps="none")


def test_a_flattened_tube_keeps_its_area():
    made = tube([[0, 0, 0], [0, 0, 50.0]], 3.0, sides=48, caps="flat", flatten=0.5, up=[0, 1, 0])
    assert made.mesh.volume == pytest.approx(np.pi * 9 * 50, rel=0.01)
    low, high = made.mesh.bounds
    assert (high - low)[1] == pytest.approx(6 * np.sqrt(0.5), rel=0.02)
    assert (high - low)[0] == pytest.approx(6 / np.sqrt(0.5), rel=0.02)


def test_a_sharp_bend_does_not_fold_the_tube():
    path = np.array([[0, 0, 0], [0, 0, 20], [3, 0, 22], [6, 0, 20], [6, 0, 0.0]])
    made = tube(path, 2.5)
    assert is_closed(made.mesh)
    assert len(self_intersections(made.mesh)) == 0


def test_u_runs_from_start_to_end():
    made = tube([[0, 0, 0], [0, 5, 25], [0, 0, 50.0]], 1.0)
    order = np.corrcoef(made.uv[:, 0], made.mesh.vertices[:, 2])[0, 1]
    assert order > 0.99


def test_branches_join_the_trunk_in_one_closed_piece():
    trunk = np.array([[0, 0, 0], [0, 0, 60.0]])
    left = np.array([[0, 0, 20], [10, 0, 30], [25, 0, 32.0]])
    right = np.array([[0, 0, 40], [-10, 3, 50], [-25, 3, 52.0]])
    made = branching([trunk, left, right], [2.0, 1.2, 1.0])
    assert is_closed(made.mesh)
    assert is_outward(made.mesh)
    assert len(made.mesh.split(only_watertight=False)) == 1
    assert len(self_intersections(made.mesh)) == 0
    tip = np.argmax(made.mesh.vertices[:, 0])
    assert made.uv[tip] == pytest.approx([1.0, 0.5], abs=0.05)
