"""Random planes through the finished model: nothing is lost, nothing counted twice."""

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meshes.errors import PeelbackError
from meshes.questions.section import FREE, PLANES, Slicer, placed_plane
from meshes.questions.stations import next_station, reach, station_words, stations

SOME = settings(
    max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
tilts = st.tuples(st.floats(-90, 90), st.floats(-90, 90))


@pytest.fixture(scope="module")
def slicer(preview_model):
    return Slicer(preview_model)


def even_odd(rings):
    total = shapely.Polygon()
    for ring in rings:
        total = total.symmetric_difference(shapely.make_valid(shapely.Polygon(ring)))
    return total


@SOME
@given(st.sampled_from((*PLANES, FREE)), st.floats(0, 1), tilts)
def test_regions_of_any_plane_make_up_the_outline_and_no_more(
    slicer, preview_model, kind, share, tilt
):
    low, high = reach(preview_model, kind)
    plane = placed_plane(kind, low + share * (high - low), tilt if kind == FREE else (0, 0))
    outlines = slicer.outlines(plane)
    regions = slicer.cut(plane)
    assert all(r.area_cm2 > 0 for r in regions)
    if not outlines.ids:
        assert not regions
        return
    whole = shapely.union_all([even_odd(rings) for rings in outlines.rings])
    assert sum(r.area_cm2 for r in regions) == pytest.approx(whole.area / 100, rel=2e-3, abs=0.02)
    # Only a part that others wholly own may be missing from the regions.
    missing = set(outlines.ids) - {r.part_id for r in regions}
    for part_id in missing:
        mine = even_odd(outlines.rings[outlines.ids.index(part_id)])
        owned = shapely.union_all([r.polygons for r in regions])
        assert mine.difference(owned.buffer(1e-6)).area < 0.05


@SOME
@given(st.sampled_from((*PLANES, FREE)), st.floats(0.05, 0.95), tilts)
def test_triangles_of_the_cut_face_have_the_area_of_the_parts(
    slicer, preview_model, kind, share, tilt
):
    low, high = reach(preview_model, kind)
    plane = placed_plane(kind, low + share * (high - low), tilt if kind == FREE else (0, 0))
    outlines = slicer.outlines(plane)
    triangles, owner = outlines.fill()
    along = triangles[:, 1:] - triangles[:, :1]
    area = 0.5 * (along[:, 0, 0] * along[:, 1, 1] - along[:, 0, 1] * along[:, 1, 0])
    assert (area >= 0).all()
    filled = np.bincount(owner, area, len(outlines.ids))
    for rings, got in zip(outlines.rings, filled, strict=True):
        assert got == pytest.approx(even_odd(rings).area, rel=1e-3, abs=0.05)


@SOME
@given(st.sampled_from((*PLANES, FREE)), st.floats(0.1, 0.9), tilts, st.integers(0, 2**31))
def test_painting_order_and_exact_regions_agree_on_who_owns_a_place(
    slicer, preview_model, kind, share, tilt, seed
):
    low, high = reach(preview_model, kind)
    plane = placed_plane(kind, low + share * (high - low), tilt if kind == FREE else (0, 0))
    outlines, regions = slicer.outlines(plane), slicer.cut(plane)
    if not outlines.ids:
        return
    (left, bottom), (right, top) = outlines.bounds()
    places = np.random.default_rng(seed).uniform((left, bottom), (right, top), (40, 2))
    for place in places:
        point = shapely.Point(place)
        if any(r.polygons.boundary.distance(point) < 1e-3 for r in regions):
            continue
        exact = next((r.part_id for r in regions if r.polygons.contains(point)), None)
        assert outlines.owner_at(place) == exact


def test_cutting_what_is_left_never_shows_what_is_gone(slicer, preview_model):
    left = {i for i, part in preview_model.parts.items() if part.stratum >= 6}
    plane = placed_plane("transverse", 300.0)
    shown = {r.part_id for r in slicer.cut(plane, left)}
    assert shown and shown <= left
    assert set(slicer.outlines(plane, left).ids) <= left


def test_cord_dura_and_canal_own_what_is_innermost(slicer):
    plane = placed_plane("transverse", 300.0)
    outlines = slicer.outlines(plane)
    regions = {r.part_id: r for r in slicer.cut(plane)}
    cord, dura = regions["spinal_cord"], regions["spinal_dura_mater"]
    rings = outlines.rings[outlines.ids.index("spinal_dura_mater")]
    sac = max((shapely.Polygon(ring) for ring in rings), key=lambda polygon: polygon.area)
    assert sac.contains(cord.polygons)
    assert dura.polygons.intersection(cord.polygons).area < 1e-6
    assert outlines.owner_at(cord.polygons.representative_point().coords[0]) == "spinal_cord"


def test_the_median_plane_cuts_the_skin_and_not_the_gap_between_its_halves(slicer):
    assert any(i.startswith("skin.") for i in slicer.outlines(placed_plane("sagittal", 0.0)).ids)


def test_stepping_goes_from_body_to_disc_to_body(preview_model):
    places = stations(preview_model, "transverse")
    names = [s.name for s in places]
    at = next(s for s in places if s.name == "T7")
    assert next_station(places, at.position_mm, 1).name == "disc T6–T7"
    assert next_station(places, at.position_mm, -1).name == "disc T7–T8"
    assert next_station(places, at.position_mm, 2).name == "T6"
    assert names.index("L3") < names.index("T7") < names.index("C4")
    assert next_station(places, places[-1].position_mm, 1) is None
    assert station_words(places, "transverse", at.position_mm + 4) == "4 mm above T7"
    assert station_words((), "sagittal", -30.0) == "30 mm right"


def test_a_free_plane_turned_square_is_a_coronal_one():
    plane = placed_plane(FREE, 100.0, (90.0, 0.0))
    assert abs(plane.normal[1]) == pytest.approx(1.0)
    level = placed_plane(FREE, 100.0)
    assert level.normal == pytest.approx(placed_plane("transverse", 100.0).normal)


@pytest.mark.parametrize(
    ("words", "wrong"),
    [
        ("plane must be one of transverse, sagittal, coronal, free", ("axial", 0.0, (0, 0))),
        ("tilt must lie in -90–90", (FREE, 0.0, (120.0, 0))),
        ("must be numbers", (FREE, float("nan"), (0, 0))),
    ],
)
def test_a_wrong_plane_is_told_what_is_allowed(words, wrong):
    with pytest.raises(PeelbackError, match=words):
        placed_plane(*wrong)
