"""Sheets over solids whose shortest ways are known."""

import numpy as np
import pytest
import trimesh

from meshes.drape.audit import self_intersections
from meshes.drape.distance import MeshIndex
from meshes.drape.field import Field
from meshes.drape.resolve import finish_sheet, resolve, resolve_sheet, untangle
from meshes.drape.sheet import (
    SheetGrid,
    arc_length,
    belly_profile,
    lay_sheet,
    resample_curve,
    share_fibres,
    slip_cells,
    thicken,
)

RADIUS = 40.0


def cylinder():
    mesh = trimesh.creation.cylinder(RADIUS, 220, sections=96)
    return trimesh.Trimesh(*trimesh.remesh.subdivide_to_size(mesh.vertices, mesh.faces, 15))


@pytest.fixture(scope="module")
def field():
    field = Field([-100, -100, -120], [100, 100, 120])
    mesh = cylinder()
    mesh.merge_vertices()
    field.add_mesh(mesh)
    return field


def ends(shift=40.0, reach=60.0, drop=-20.0):
    z = np.linspace(-50, 50, 9)
    origin = np.stack([-reach + 0 * z, 0 * z + drop, z], axis=1)
    insertion = np.stack([reach + 0 * z, 0 * z + drop, z + shift], axis=1)
    return origin, insertion


def test_fibres_over_a_cylinder_are_as_long_as_the_geodesic(field):
    origin, insertion = ends()
    sheet = lay_sheet(origin, insertion, field, 4.0, outward=[0, 1, 0], border_tension=0, gap=0)
    r, far = RADIUS + 2, np.hypot(60, 20)
    free = np.sqrt(far**2 - r**2)
    wrapped = np.pi + 2 * np.arctan2(20, 60) - 2 * np.arccos(r / far)
    truth = np.hypot(2 * free + r * wrapped, 40)
    assert np.allclose(arc_length(sheet.mid)[:, -1], truth, rtol=3e-3)


def test_a_sheet_over_a_cylinder_keeps_its_clearance(field):
    sheet = lay_sheet(*ends(), field, 4.0, outward=[0, 1, 0], gap=0.3)
    distance = np.linalg.norm(sheet.mid[..., :2], axis=-1) - RADIUS
    assert distance[:, 4:-4].min() > 2.3 - 0.15


def test_a_sheet_held_clear_of_everything_is_straight():
    field = Field([-100, -100, -120], [100, 100, 120])
    sheet = lay_sheet(*ends(), field, 4.0, outward=[0, 1, 0], border_tension=0)
    chord = np.linalg.norm(sheet.mid[:, -1] - sheet.mid[:, 0], axis=1)
    assert np.allclose(arc_length(sheet.mid)[:, -1], chord, rtol=1e-6)


def test_border_tension_is_the_sag_of_the_free_border():
    field = Field([-100, -100, -120], [100, 100, 120])
    origin, insertion = ends(shift=0)
    sheet = lay_sheet(
        origin, insertion, field, 2.0, outward=[0, 1, 0], border_tension=0.05, iterations=1500
    )
    sag = sheet.mid[0, 16, 2] - sheet.mid[0, 0, 2]
    assert 0.75 * 0.05 * 120 < sag < 1.1 * 0.05 * 120
    assert np.all(np.diff(sheet.mid[:, 16, 2]) > 0)


def test_fixed_points_stay(field):
    held = np.zeros((17, 33), bool)
    held[8, 16] = True
    guide = lay_sheet(*ends(), field, 4.0, outward=[0, 1, 0]).moved(10.0).mid
    sheet = lay_sheet(*ends(), field, 4.0, outward=[0, 1, 0], guide=guide, fixed=held, bow_limit=0)
    assert np.allclose(sheet.mid[8, 16], guide[8, 16])


def test_the_superficial_face_is_the_outer_one(field):
    sheet = lay_sheet(*ends(), field, 4.0, outward=[0, 1, 0])
    flipped = lay_sheet(*(c[::-1] for c in ends()), field, 4.0, outward=[0, 1, 0])
    for s in (sheet, flipped):
        assert s.outer()[8, 16, 1] > s.inner()[8, 16, 1] + 3.5


@pytest.mark.parametrize("slips", [False, True])
def test_thickened_sheets_are_closed_outward_and_of_the_right_volume(field, slips):
    cells = slip_cells(17, 33, [6, 5, 6], 0.3) if slips else None
    sheet = lay_sheet(*ends(), field, 4.0, outward=[0, 1, 0], border_tension=0, cells=cells)
    solid = thicken(sheet, tendon=(0.1, 0.2))
    assert solid.mesh.is_watertight
    assert solid.mesh.is_winding_consistent
    area = arc_length(sheet.mid)[:, -1].mean() * 100
    expected = 4.0 * area * (1 - 2 * 0.3 * 1 / 16 if slips else 1) * 120 / np.hypot(120, 0)
    assert 0.8 * expected < solid.mesh.volume < 1.2 * expected
    assert solid.uv.shape == (len(solid.mesh.vertices), 2)
    assert solid.uv.min() == 0
    assert solid.uv.max() == 1
    assert solid.tendon[solid.uv[:, 0] < 0.02].min() > 0.9
    assert solid.tendon[np.abs(solid.uv[:, 0] - 0.5) < 0.2].max() < 0.1
    assert np.allclose(solid.fibres[:, 0, 0], -60)


def test_pieces_share_fibres_by_length():
    short, long = np.array([[0, 0, 0], [10, 0, 0.0]]), np.array([[20, 0, 0], [50, 0, 0.0]])
    assert share_fibres([short, long], 12) == [3, 9]
    with pytest.raises(ValueError, match="at least 4"):
        share_fibres([short, long], 3)


def test_resampled_curves_have_even_steps():
    curve = np.array([[0, 0, 0], [1, 0, 0], [10, 0, 0], [10, 5, 0.0]])
    step = np.linalg.norm(np.diff(resample_curve(curve, 16), axis=0), axis=1)
    assert step.max() / step.min() < 1.5


def test_profile_is_tendon_at_the_ends_and_peak_in_the_middle():
    profile = belly_profile(9.0, tendon_thickness=(0.8, 1.2))
    assert profile(0.0, 0.5) == pytest.approx(0.8)
    assert profile(1.0, 0.5) == pytest.approx(1.2)
    assert profile(0.5, 0.5) == pytest.approx(9.0)
    assert profile(0.5, 0.0) < 6


def worst(mesh, obstacles):
    mine = MeshIndex.of(mesh)
    forth = min(o.signed_distance(mine.samples(1.0)[0], 6)[0].min() for o in obstacles)
    back = min(mine.signed_distance(o.samples(1.0)[0], 6)[0].min() for o in obstacles)
    return min(forth, back)


def test_resolving_lifts_a_sheet_off_ridges_that_the_field_misses(field):
    rings = []
    for z in range(-80, 81, 20):
        ring = trimesh.creation.torus(RADIUS + 1.5, 1.0, major_sections=64, minor_sections=10)
        ring.apply_translation([0, 0, z])
        rings.append(MeshIndex.of(ring))
    sheet = lay_sheet(*ends(), field, belly_profile(5), outward=[0, 1, 0])
    assert worst(thicken(sheet).mesh, rings) < -0.5
    clear = resolve_sheet(sheet, rings, gap=0.2)
    assert worst(thicken(clear).mesh, rings) > 0.15
    assert np.mean(clear.thickness > 0.99 * sheet.thickness) > 0.8


def test_a_sheet_squeezed_from_both_sides_thins():
    field = Field([-60, -60, -60], [60, 60, 60])
    z = np.linspace(-30, 30, 9)
    origin, insertion = np.stack([-40 + 0 * z, 0 * z, z], 1), np.stack([40 + 0 * z, 0 * z, z], 1)
    sheet = lay_sheet(origin, insertion, field, 4.0, outward=[0, 1, 0], border_tension=0)
    balls = []
    for side in (-1, 1):
        ball = trimesh.creation.icosphere(subdivisions=3, radius=10)
        ball.apply_translation([0, side * 11.2, 0])
        balls.append(MeshIndex.of(ball))
    clear = resolve_sheet(sheet, balls)
    assert worst(thicken(clear).mesh, balls) > 0.1
    assert 0.6 <= clear.thickness[8, 16] < 2.1
    assert clear.thickness[0, 16] == pytest.approx(4.0)


def test_resolving_a_tube_off_a_ball_clears_it():
    tube = trimesh.creation.capsule(height=60, radius=2, count=[12, 12])
    tube = trimesh.Trimesh(*trimesh.remesh.subdivide_to_size(tube.vertices, tube.faces, 4))
    tube.merge_vertices()
    tube.apply_translation([0, 11, -30])
    ball = [MeshIndex.of(trimesh.creation.icosphere(subdivisions=4, radius=10))]
    assert worst(tube, ball) < -0.5
    clear = resolve(tube, ball, body=4.0)
    assert worst(clear, ball) > 0.15
    assert clear.is_watertight
    assert clear.volume > 0.85 * tube.volume


def test_untangling_a_ball_pushed_through_itself_leaves_it_free():
    ball = trimesh.creation.icosphere(subdivisions=4, radius=10)
    vertices = ball.vertices.copy()
    top = int(np.argmax(vertices[:, 2]))
    vertices[top] = (1.3, 0.7, -11.0)
    tangled = trimesh.Trimesh(vertices, ball.faces, process=False)
    assert len(self_intersections(tangled)) > 0
    free = untangle(tangled)
    assert len(self_intersections(free)) == 0
    assert free.volume == pytest.approx(ball.volume, rel=0.05)
    assert untangle(ball) is ball


def test_a_finished_sheet_is_clear_and_free_of_self_intersection(field):
    obstacle = trimesh.creation.icosphere(subdivisions=3, radius=6)
    obstacle.apply_translation([5, 41, 20])
    obstacle = [MeshIndex.of(obstacle)]
    sheet = lay_sheet(*ends(), field, belly_profile(5), outward=[0, 1, 0])
    grid, solid = finish_sheet(sheet, obstacle, tendon=(0.1, 0.1))
    assert grid.mid.shape == sheet.mid.shape
    assert solid.mesh.is_watertight
    assert worst(solid.mesh, obstacle) > 0.1
    assert len(self_intersections(solid.mesh)) == 0


def test_the_normals_of_a_slip_are_its_own_whatever_lies_beyond_the_gap():
    u, v = np.linspace(0, 60, 12), np.linspace(0, 30, 6)
    mid = np.stack([*np.meshgrid(u, v), np.zeros((6, 12))], axis=2)
    cells = slip_cells(6, 12, [3, 3], 0.5)
    # The last three fibres turn up from the others where the gap parts them.
    mid[3:, :5, 2] += 25.0 + np.linspace(0, 10, 3)[:, None]
    whole = SheetGrid(mid, np.full((6, 12), 1.0)).normals()
    parted = SheetGrid(mid, np.full((6, 12), 1.0), cells).normals()
    assert abs(parted[2, 1, 2]) > 0.95 > abs(whole[2, 1, 2])
    assert np.allclose(np.linalg.norm(parted, axis=2), 1.0)


def test_points_of_a_fibre_lie_evenly_however_near_its_end_a_guide_passes(field):
    origin, insertion = ends(drop=70.0)
    guide = {0.5: origin + [8.0, 0.0, 0.0]}
    sheet = lay_sheet(
        origin, insertion, field, 2.0, outward=[0, 1, 0], guide=guide, bow_limit=0, iterations=3
    )
    step = np.diff(arc_length(sheet.mid), axis=1)
    assert step.max() < 1.2 * step.min()


def test_a_thin_tube_is_untangled_without_being_drawn_to_a_thread():
    mesh = trimesh.creation.capsule(height=40.0, radius=3.0, count=[16, 16])
    mesh = trimesh.Trimesh(*trimesh.remesh.subdivide_to_size(mesh.vertices, mesh.faces, 3.0))
    vertices = mesh.vertices.copy()
    middle = np.abs(vertices[:, 2] - vertices[:, 2].mean()) < 4.0
    vertices[middle & (vertices[:, 0] > 2.0), 0] -= 5.0
    tangled = trimesh.Trimesh(vertices, mesh.faces, process=False)
    assert len(self_intersections(tangled)) > 0
    freed = untangle(tangled)
    assert len(self_intersections(freed)) == 0
    assert freed.volume > 0.8 * tangled.volume
