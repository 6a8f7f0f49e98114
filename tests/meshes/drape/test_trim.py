"""Trimming against overlaps of known volume."""

import numpy as np
import pytest
import trimesh

from meshes.drape.audit import is_closed, is_outward, overlap_depth
from meshes.drape.distance import MeshIndex
from meshes.drape.trim import trim


def plate():
    mesh = trimesh.creation.box((60, 40, 4))
    return trimesh.Trimesh(*trimesh.remesh.subdivide_to_size(mesh.vertices, mesh.faces, 6))


def ball(height):
    mesh = trimesh.creation.icosphere(subdivisions=4, radius=10)
    mesh.apply_translation([5, 0, height])
    return MeshIndex.of(mesh)


def test_a_ball_in_a_plate_is_cut_out_with_room():
    whole = plate()
    whole.merge_vertices()
    obstacle = ball(-10.5)
    cut = trim(whole, [obstacle], gap=0.2)
    assert is_closed(cut.mesh)
    assert is_outward(cut.mesh)
    assert overlap_depth(MeshIndex.of(cut.mesh), obstacle)[0] < 0.02
    # A cap of height h on the swelled ball: pi h^2 (r - h / 3), h = 1.5 + 0.2.
    cap = np.pi * 1.7**2 * (10.2 - 1.7 / 3)
    assert whole.volume - cut.mesh.volume == pytest.approx(cap, rel=0.05)
    assert cut.kept == pytest.approx(cut.mesh.volume / whole.volume, rel=1e-3)


def test_values_are_carried_to_the_new_vertices():
    whole = plate()
    whole.merge_vertices()
    cut = trim(whole, [ball(-10.5)])
    x = cut.carry(whole.vertices[:, :1].astype(np.float32))
    on_plate = np.abs(cut.mesh.vertices[:, 2]) > 1.999
    assert x.dtype == np.float32
    assert np.abs(x[on_plate, 0] - cut.mesh.vertices[on_plate, 0]).max() < 1e-3


def test_nothing_is_cut_when_apart_or_when_little_would_be_left():
    whole = plate()
    whole.merge_vertices()
    assert trim(whole, [ball(-12.5)]) is None
    big = trimesh.creation.box((50, 50, 50))
    assert trim(whole, [MeshIndex.of(big)]) is None
