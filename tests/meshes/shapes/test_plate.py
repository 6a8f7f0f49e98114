"""Plates keep their outline, thickness and bend when contoured."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.shapes.contour import is_two_manifold
from meshes.shapes.plate import DistanceGrid, Plate, closed_spline, smooth_subtract, smooth_union
from meshes.shapes.solid import Solid

_SQUARE = np.array([(-20.0, -15), (20, -15), (20, 15), (-20, 15)])


def bent(a, b):
    return 0.01 * a**2 + 0.0 * b


def flat(a, b):
    return 0.0 * (a + b)


def three(a, b):
    return 3.0 + 0.0 * (a + b)


@pytest.mark.parametrize("axis", [0, 1, 2])
def test_plate_has_its_outline_and_thickness_along_any_axis(axis):
    box = np.array([[-26.0] * 3, [26.0] * 3])
    mesh = DistanceGrid(box, 0.8).join(Plate(axis, _SQUARE, flat, three), box).mesh(4000)
    size = np.delete(np.ptp(mesh.bounds, axis=0), axis)
    assert is_two_manifold(mesh.faces)
    assert np.allclose(size, (40, 30), atol=0.3)
    assert np.isclose(np.ptp(mesh.bounds, axis=0)[axis], 3.0, atol=0.15)


def test_bent_plate_follows_its_middle_surface():
    box = np.array([(-26.0, -8, -20), (26, 14, 20)])
    plate = Plate(1, _SQUARE, bent, three)
    mesh = DistanceGrid(box, 0.8).join(plate, box).mesh(4000)
    inner = (abs(mesh.vertices[:, 0]) < 16) & (abs(mesh.vertices[:, 2]) < 11)
    v = mesh.vertices[inner]
    lean = 1 / np.sqrt(1 + (0.02 * v[:, 0]) ** 2)
    off = abs(v[:, 1] - bent(v[:, 0], v[:, 2])) * lean
    assert np.allclose(off, 1.5, atol=0.2)
    assert np.allclose(plate.distance(v), 0.0, atol=0.15)


def test_cutting_takes_material_away_and_joining_adds_it():
    box = np.array([[-15.0] * 3, [15.0] * 3])
    ball = Solid().ellipsoid((0, 0, 0), (10, 10, 10), blend=0.0)
    hole = Solid().cone((0, 0, -20), (0, 0, 20), 4.0, blend=0.0)
    whole = DistanceGrid(box, 0.8).join(ball, box, blend=0.0).mesh(3000)
    bored = DistanceGrid(box, 0.8).join(ball, box, blend=0.0).join(hole, box, blend=0.0, cut=True)
    bored = bored.mesh(3000)
    assert np.isclose(whole.volume, 4 / 3 * np.pi * 1000, rtol=0.03)
    assert bored.volume < 0.85 * whole.volume
    assert bored.euler_number == 0  # a hole right through


def test_mirrored_grid_is_symmetric_and_needs_a_box_at_the_plane():
    box = np.array([(0.0, -12, -12), (24, 12, 12)])
    knob = Solid().cone((0, 0, 0), (12, 0, 0), 6.0, blend=0.0)
    mesh = DistanceGrid(box, 1.0).join(knob, box, blend=0.0).mirrored().mesh(2000)
    assert np.isclose(mesh.bounds[0, 0], -mesh.bounds[1, 0], atol=0.1)
    with pytest.raises(ValueError, match="must start at x = 0"):
        DistanceGrid(box + [1, 0, 0], 1.0).mirrored()


def test_blends_never_lose_what_both_hold():
    a, b = np.meshgrid(np.linspace(-5, 5, 41), np.linspace(-5, 5, 41))
    assert (smooth_union(a, b, 3.0) <= np.minimum(a, b)).all()
    assert (smooth_subtract(a, b, 3.0) >= np.maximum(a, -b)).all()


def test_closed_spline_passes_through_its_points():
    curve = closed_spline(_SQUARE, 5)
    assert len(curve) == 20
    assert np.allclose(curve[::5], _SQUARE)
