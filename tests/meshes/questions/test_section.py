from types import SimpleNamespace

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.errors import PeelbackError
from meshes.questions.section import Slicer, cut_plane, plane_through, section
from tests.fakes import toy_model


def model_of(**meshes):
    parts = {
        name: SimpleNamespace(kind=kind, vertices=mesh.vertices, faces=mesh.faces)
        for name, (mesh, kind) in meshes.items()
    }
    return SimpleNamespace(parts=parts)


def ball(radius, at=(0, 0, 0)):
    mesh = trimesh.creation.icosphere(subdivisions=4, radius=radius)
    mesh.apply_translation(at)
    return mesh


@settings(max_examples=25, deadline=None)
@given(st.tuples(*[st.floats(-1, 1)] * 3), st.floats(-15, 15))
def test_cut_of_a_ball_has_the_area_of_its_circle(direction, height):
    normal = np.array(direction)
    if np.linalg.norm(normal) < 0.1:
        normal = np.array([0.0, 0.0, 1.0])
    normal /= np.linalg.norm(normal)
    regions = section(model_of(ball=(ball(20.0), "bone")), height * normal, normal)
    circle = np.pi * (20.0**2 - height**2) / 100.0
    assert regions[0].area_cm2 == pytest.approx(circle, rel=0.01)


def test_areas_summed_over_sections_give_the_volume_of_the_mesh():
    rng = np.random.default_rng(3)
    mesh = ball(20.0)
    mesh.vertices *= 1.0 + 0.08 * np.sin(rng.uniform(0.1, 0.2, 3) * mesh.vertices).sum(
        axis=1, keepdims=True
    )
    slicer = Slicer(model_of(lump=(mesh, "bone")))
    low, high = mesh.bounds[:, 2]
    heights = np.linspace(low, high, 201)
    heights = (heights[:-1] + heights[1:]) / 2
    areas = [slicer.cut(cut_plane("transverse", (0, 0, z)))[0].area_cm2 for z in heights]
    volume = 100.0 * np.sum(areas) * (high - low) / len(heights)
    assert volume == pytest.approx(mesh.volume, rel=2e-3)


def test_the_innermost_owns_a_place():
    model = model_of(
        outer=(ball(30.0), "muscle"),
        inner=(ball(10.0), "bone"),
        nerve=(ball(6.0, (20, 0, 0)), "nerve"),
    )
    regions = {r.part_id: r for r in section(model, (0, 0, 0.1), (0, 0, 1))}
    whole = np.pi * 9.0
    assert sum(r.area_cm2 for r in regions.values()) == pytest.approx(whole, rel=0.01)
    assert regions["inner"].area_cm2 == pytest.approx(np.pi, rel=0.01)
    shapes = [r.polygons for r in regions.values()]
    for i, a in enumerate(shapes):
        for b in shapes[i + 1 :]:
            assert a.intersection(b).area < 1e-6


def test_a_nerve_wins_over_the_smaller_part_it_pierces():
    model = model_of(slip=(ball(3.0), "muscle"), nerve=(ball(5.0), "nerve"))
    regions = section(model, (0, 0, 0.1), (0, 0, 1))
    assert [r.part_id for r in regions] == ["nerve"]


def test_a_tube_is_cut_as_a_ring():
    tube = trimesh.creation.annulus(r_min=8.0, r_max=10.0, height=40.0)
    regions = section(model_of(dura=(tube, "canal")), (0, 0, 1.234), (0, 0, 1))
    (polygon,) = regions[0].polygons.geoms
    assert len(polygon.interiors) == 1


def test_a_plane_through_vertices_still_gives_closed_regions():
    box = trimesh.creation.box((20, 20, 20)).subdivide().subdivide()
    regions = section(model_of(box=(box, "bone")), (0, 0, 0), (0, 0, 1))
    assert regions[0].area_cm2 == pytest.approx(4.0, rel=1e-6)


def test_transverse_cut_is_read_with_the_left_on_the_left_and_the_back_up():
    plane = cut_plane("transverse", (0, 0, 100))
    (left,) = plane.flat(np.array([[50.0, 0.0, 100.0]]))
    (back,) = plane.flat(np.array([[0.0, 80.0, 100.0]]))
    assert left[0] < 0 and back[1] > 0


def test_coronal_cut_is_seen_from_behind():
    assert cut_plane("coronal", (0, 0, 0)).normal == pytest.approx([0, 1, 0])
    assert plane_through((0, 0, 0), (0, 1, 0)).right == pytest.approx([-1, 0, 0])


def test_missing_the_model_gives_no_region():
    assert Slicer(toy_model()).cut(cut_plane("transverse", (0, 0, 9999))) == []


def test_wrong_plane_is_told_what_is_allowed():
    with pytest.raises(PeelbackError, match="transverse, sagittal, coronal, got 'axial'"):
        cut_plane("axial", (0, 0, 0))
