"""A belly cut short of its bone is led on along its fibre, by a thin tendon and no farther."""

import numpy as np
import pytest
import trimesh

from meshes.drape.audit import is_closed, overlap_depth, self_intersections
from meshes.drape.distance import MeshIndex
from meshes.soft.slips import MET_MM, with_slips

RADIUS = 1.0


def _belly():
    mesh = trimesh.creation.icosphere(subdivisions=3, radius=10.0)
    return trimesh.Trimesh(mesh.vertices, mesh.faces, process=False)


def _fibre(reach: float) -> np.ndarray:
    return np.stack([np.linspace(reach, 0.0, 12), np.zeros(12), np.zeros(12)], axis=1)


def _off(mesh, point) -> float:
    return abs(float(MeshIndex.of(mesh).signed_distance(np.reshape(point, (1, 3)))[0][0]))


@pytest.mark.parametrize("lack", [3.0, 8.0, 20.0])
def test_the_end_of_the_fibre_is_reached(lack):
    fibre = _fibre(10.0 + lack)
    led = with_slips(_belly(), [fibre], RADIUS)
    assert _off(_belly(), fibre[0]) > MET_MM
    assert _off(led, fibre[0]) <= MET_MM
    assert is_closed(led)
    assert len(self_intersections(led)) == 0


def test_the_slip_is_as_thin_as_a_cord():
    belly, led = _belly(), with_slips(_belly(), [_fibre(25.0)], RADIUS)
    added = led.volume - belly.volume
    assert 0 < added < 1.5 * np.pi * RADIUS**2 * 16


def test_a_belly_that_reaches_its_ends_is_left_alone():
    belly = _belly()
    assert with_slips(belly, [_fibre(11.0)], RADIUS) is belly


def test_an_end_out_of_reach_is_not_joined_by_a_guess():
    belly = _belly()
    away = _fibre(12.0) + [0.0, 60.0, 0.0]
    assert with_slips(belly, [away], RADIUS) is belly


def test_a_fibre_that_passes_beside_the_belly_is_joined_across():
    belly = _belly()
    beside = np.stack([np.linspace(20.0, 0.0, 12), np.full(12, 13.0), np.zeros(12)], axis=1)
    led = with_slips(belly, [beside], RADIUS)
    assert _off(led, beside[0]) <= MET_MM
    assert len(self_intersections(led)) == 0


def _round_ball(radius: float, at) -> trimesh.Trimesh:
    mesh = trimesh.creation.icosphere(subdivisions=3, radius=radius)
    return trimesh.Trimesh(mesh.vertices + np.asarray(at, float), mesh.faces, process=False)


def test_a_slip_runs_behind_a_bone_that_stands_in_its_way():
    belly, bone = _round_ball(8.0, (20, 0, 0)), MeshIndex.of(_round_ball(4.0, (20, -1.0, 18)))
    fibre = np.linspace((20.0, 0, 30.0), (20.0, 0, 0.0), 31)
    led = with_slips(belly, [fibre], 1.3, [bone])
    assert is_closed(led) and len(self_intersections(led)) == 0
    assert abs(MeshIndex.of(led).signed_distance(fibre[:1])[0][0]) < 1.7
    through = with_slips(belly, [fibre], 1.3)
    assert overlap_depth(MeshIndex.of(through), bone)[0] > 2.0
    assert overlap_depth(MeshIndex.of(led), bone)[0] < 0.8
    # Over the back of it (+y), not round its front.
    beside = np.abs(led.vertices[:, 2] - 18) < 2
    assert led.vertices[beside, 1].min() > 1.0
