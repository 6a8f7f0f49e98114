"""The muscles at the edge of the back: where they run, what they leave bare, what they touch."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.drape.audit import is_closed, is_outward, overlap_depth, self_intersections
from meshes.drape.distance import MeshIndex
from meshes.shapes.solid import Solid
from meshes.soft.fan import fan_coordinates, fan_grid, fan_solid, fan_thickness

LAID = (
    "serratus_anterior", "supraspinatus", "infraspinatus", "teres_minor", "teres_major",
    "deltoid", "external_oblique", "internal_oblique", "gluteus_medius", "gluteus_maximus",
    "sternocleidomastoid", "scalenus_medius", "quadratus_lumborum",
)  # fmt: skip


def index(model, part_id):
    return MeshIndex.of(model.parts[part_id].mesh)


@pytest.mark.parametrize("name", LAID)
def test_a_neighbour_is_one_closed_outward_body(preview_model, name):
    mesh = preview_model.parts[f"{name}.left"].mesh
    assert is_closed(mesh)
    assert is_outward(mesh)
    assert mesh.body_count == 1


@pytest.mark.parametrize("name", LAID)
def test_a_neighbour_is_fixed_at_two_millimetres_or_nearer(preview_model, name):
    part = preview_model.parts[f"{name}.left"]
    assert {"origin", "insertion"} <= {a.kind for a in part.attachments}
    for attachment in part.attachments:
        if not attachment.to.startswith("thoracolumbar"):
            bone = index(preview_model, attachment.to)
            assert np.abs(bone.signed_distance(attachment.curve)[0]).max() <= 2.0


@pytest.mark.parametrize("number", range(3, 12))
def test_an_external_intercostal_lies_between_its_ribs(preview_model, number):
    sheet = index(preview_model, f"external_intercostal_{number}.left")
    assert len(self_intersections(sheet)) == 0
    for rib in (number, number + 1):
        assert overlap_depth(sheet, index(preview_model, f"rib_{rib}.left"))[0] <= 0.5
    fibres = preview_model.parts[f"external_intercostal_{number}.left"].fibres
    assert np.all(fibres[:, 0, 2] > fibres[:, -1, 2])


def test_deltoid_leaves_the_medial_part_of_infraspinatus_bare(preview_model):
    root = preview_model.landmarks["scapula.left.root_of_spine"]
    deltoid = preview_model.parts["deltoid.left"].mesh
    infraspinatus = preview_model.parts["infraspinatus.left"].mesh
    assert deltoid.bounds[0, 0] > root[0] + 15.0
    assert infraspinatus.bounds[0, 0] < root[0] + 15.0


def test_deltoid_and_infraspinatus_share_no_room(preview_model):
    deltoid = index(preview_model, "deltoid.left")
    for name in ("infraspinatus", "teres_minor", "teres_major", "supraspinatus"):
        assert overlap_depth(deltoid, index(preview_model, f"{name}.left"))[0] <= 0.5


def test_teres_minor_goes_behind_and_teres_major_in_front_of_the_humerus(preview_model):
    def end(name):
        fibres = preview_model.parts[f"{name}.left"].fibres
        return fibres[:, -1].mean(axis=0)

    assert end("teres_minor")[1] > end("teres_major")[1]
    assert end("teres_minor")[2] > end("teres_major")[2]


def test_serratus_anterior_passes_in_front_of_the_scapula(preview_model):
    fibres = preview_model.parts["serratus_anterior.left"].fibres
    scapula = index(preview_model, "scapula.left")
    near = fibres[:, int(0.8 * fibres.shape[1])]
    _, closest, _ = scapula.signed_distance(near)
    assert np.mean(near[:, 1] < closest[:, 1] + 1.0) > 0.8


def test_quadratus_lumborum_is_a_full_belly_without_holes(preview_model):
    mesh = preview_model.parts["quadratus_lumborum.left"].mesh
    assert mesh.euler_number == 2
    assert 15_000 < mesh.volume < 120_000


def test_external_oblique_reaches_eight_ribs(preview_model):
    part = preview_model.parts["external_oblique.left"]
    ribs = {a.to for a in part.attachments if a.to.startswith("rib_")}
    assert ribs == {f"rib_{n}.left" for n in range(5, 13)}


def test_a_fan_between_straight_lines_is_even_and_whole():
    left = np.array([[0.0, 0, 0], [0, 0, 40.0]])
    right = np.array([[20.0, 0, 0], [10.0, 0, 40.0]])
    grid = fan_grid([left, right], 6, 9)
    assert grid.shape == (6, 9, 3)
    assert np.allclose(np.diff(grid[:, 0, 0]), 4.0, atol=1e-6)
    solid = fan_solid(grid, fan_thickness(6, 9, 8.0, (1.0, 1.0), edge=1.0))
    assert isinstance(solid, Solid)
    middle = grid[:, 1:-1].reshape(-1, 3)
    assert np.all(solid.distance(middle) < -2.0)
    between = 0.5 * (grid[:-1, 4] + grid[1:, 4])
    assert np.all(solid.distance(between) < -1.0)
    assert solid.distance(np.array([[10.0, 12.0, 20.0]]))[0] > 4.0


def test_fan_coordinates_run_from_origin_to_insertion():
    first = np.array([[0.0, 0, 0], [0, 0, 40.0]])
    grid = fan_grid([first, first + [9.0, 0, 0]], 4, 9)
    uv = fan_coordinates(np.array([[0.0, 1, 0], [9.0, 1, 40.0], [4.5, 0, 20.0]]), grid)
    assert np.allclose(uv, [[0, 0], [1, 1], [0.5, 0.5]], atol=0.05)
