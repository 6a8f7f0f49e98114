"""The ladder under a point, against boxes worked by hand."""

import time
from dataclasses import replace

import numpy as np
import pytest
import trimesh
from hypothesis import example, given, settings
from hypothesis import strategies as st

from meshes.errors import PeelbackError
from meshes.model import Part
from meshes.questions.outward import inward_rays
from meshes.questions.probe import CAUTION, Probe, describe
from tests.fakes import toy_model


def _box(part_id: str, low, high) -> Part:
    low, high = np.asarray(low, float), np.asarray(high, float)
    mesh = trimesh.creation.box(high - low)
    mesh.apply_translation((low + high) / 2)
    return Part(part_id, part_id, "muscle", 2, "", mesh)


def _model(*parts: Part):
    return replace(toy_model(), parts={part.id: part for part in parts})


@pytest.fixture(scope="module")
def back(preview_model):
    return Probe(preview_model)


def test_ladder_of_three_boxes_is_as_worked_by_hand():
    model = _model(
        _box("skin", (-50, 0, -50), (50, 2, 50)),
        _box("muscle", (-50, -8, -50), (50, -3, 50)),
        _box("bone", (-50, -30, -50), (50, -10, 50)),
    )
    ladder = Probe(model).along((1.3, 12, 2.1), (0, -2, 0))
    stretches = [(r.part_id, r.enter_mm, r.leave_mm, r.thickness_mm) for r in ladder.rungs]
    assert stretches == [
        ("skin", pytest.approx(10), pytest.approx(12), pytest.approx(2)),
        ("muscle", pytest.approx(15), pytest.approx(20), pytest.approx(5)),
        ("bone", pytest.approx(22), pytest.approx(42), pytest.approx(20)),
    ]


def test_oblique_ray_reports_the_longer_way():
    model = _model(_box("muscle", (-50, -8, -50), (50, -3, 50)))
    rung = Probe(model).along((0.2, 0, 0.1), (1, -1, 0)).rungs[0]
    assert rung.enter_mm == pytest.approx(3 * np.sqrt(2))
    assert rung.thickness_mm == pytest.approx(5 * np.sqrt(2))


def test_ray_that_starts_inside_enters_at_zero():
    model = _model(_box("bone", (-10, -10, -10), (10, 10, 10)))
    rung = Probe(model).along((1, 2, 3), (0, 0, 1)).rungs[0]
    assert (rung.enter_mm, rung.leave_mm) == (0.0, pytest.approx(7))


def test_part_crossed_twice_stands_twice():
    prongs = trimesh.util.concatenate(
        [_box("a", (-5, 0, -5), (5, 2, 5)).mesh, _box("b", (-5, 6, -5), (5, 9, 5)).mesh]
    )
    ladder = Probe(_model(Part("fork", "fork", "bone", 9, "", prongs))).along(
        (0.3, -1, 0.2), (0, 1, 0)
    )
    assert [round(r.thickness_mm, 9) for r in ladder.rungs] == [2, 3]
    assert ladder.part_ids == ("fork",)


def test_ray_along_the_diagonal_of_two_triangles_counts_once():
    # The box faces' diagonals cross at their centres: the ray meets two triangles there.
    model = _model(_box("bone", (-10, -10, -10), (10, 10, 10)))
    assert len(Probe(model).along((0, 30, 0), (0, -1, 0)).rungs) == 1


def test_part_within_a_part_is_entered_after_it_and_left_before():
    model = _model(
        _box("bone", (-20, -20, -20), (20, 20, 20)), _box("cord", (-5, -5, -20), (5, 5, 20))
    )
    outer, inner = Probe(model).along((0.4, 30, 0.3), (0, -1, 0)).rungs
    assert (outer.part_id, inner.part_id) == ("bone", "cord")
    assert outer.enter_mm < inner.enter_mm < inner.leave_mm < outer.leave_mm


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.tuples(st.floats(0.05, 20), st.floats(0.05, 20)), min_size=1, max_size=12),
    st.floats(-9, 9),
    st.floats(-9, 9),
)
def test_any_stack_of_plates_is_read_in_order(plates, x, z):
    parts, y, expected = [], 0.0, []
    for i, (gap, thickness) in enumerate(plates):
        y -= gap
        parts.append(_box(f"plate_{i}", (-10, y - thickness, -10), (10, y, 10)))
        expected.append((f"plate_{i}", -y, -y + thickness))
        y -= thickness
    rungs = Probe(_model(*parts)).along((x, 0, z), (0, -1, 0)).rungs
    assert [r.part_id for r in rungs] == [name for name, *_ in expected]
    assert [r.enter_mm for r in rungs] == pytest.approx([enter for _, enter, _ in expected])
    assert [r.leave_mm for r in rungs] == pytest.approx([leave for *_, leave in expected])


@settings(max_examples=60, deadline=None)
@given(
    st.tuples(st.floats(-180, 180), st.floats(-60, 110), st.floats(-150, 600)),
    st.tuples(st.floats(-1, 1), st.floats(-1, 1), st.floats(-1, 1)),
)
@example((0.1, 0.0, 0.0), (5.770070027892479e-238, 0.0, 1.0))
@example((-8.703239980212546e-60, 0.0, 0.0), (0.0, 0.0, 1.0))
def test_any_ray_through_the_back_reads_the_same_from_either_end(back, middle, way):
    if np.linalg.norm(way) < 0.1:
        return
    way = np.array(way) / np.linalg.norm(way)
    probe, far = back, 1500.0
    there = probe.along(np.array(middle) - far * way, way).rungs
    back_again = probe.along(np.array(middle) + far * way, -way).rungs
    assert [r.enter_mm for r in there] == sorted(r.enter_mm for r in there)
    assert all(r.thickness_mm > 0 for r in (*there, *back_again))
    stretches = sorted((r.part_id, round(r.enter_mm, 3), round(r.leave_mm, 3)) for r in there)
    mirrored = sorted(
        (r.part_id, round(2 * far - r.leave_mm, 3), round(2 * far - r.enter_mm, 3))
        for r in back_again
    )
    assert len(stretches) == len(mirrored)
    for one, other in zip(stretches, mirrored):
        assert one[0] == other[0]
        assert one[1:] == pytest.approx(other[1:], abs=2e-3)


def test_probe_at_a_level_starts_on_the_skin_and_stays_at_the_level():
    model = toy_model()
    ladder = Probe(model).at("T7", 40, "left")
    assert ladder.rungs[0].part_id == "skin.left"
    assert ladder.rungs[0].enter_mm == pytest.approx(0, abs=1e-6)
    assert ladder.origin[0] == pytest.approx(40)
    assert ladder.origin[2] == pytest.approx(model.landmarks["T7.spinous_process"][2])
    assert ladder.direction[2] == 0
    assert ladder.direction[1] < 0


def test_left_and_right_ladders_mirror_each_other():
    probe = Probe(toy_model())
    left, right = (probe.at("T7", 40, side) for side in ("left", "right"))
    assert [i.replace(".left", "") for i in left.part_ids] == [
        i.replace(".right", "") for i in right.part_ids
    ]
    assert left.origin[0] == pytest.approx(-right.origin[0])


@pytest.mark.parametrize(
    ("level", "lateral", "side", "said"),
    [
        ("T13", 40, "left", "T13"),
        ("L4x", 40, "left", "L4x"),
        ("T7", -3, "left", "0 mm or more"),
        ("T7", float("nan"), "left", "0 mm or more"),
        ("T7", 5000, "left", "half width"),
        ("T7", 40, "port", "port"),
    ],
)
def test_bad_place_is_refused_in_one_line(level, lateral, side, said):
    with pytest.raises(PeelbackError, match=said) as refusal:
        Probe(toy_model()).at(level, lateral, side)
    assert "\n" not in str(refusal.value)


def test_description_carries_the_caution_and_the_thickness():
    model = toy_model()
    told = describe(Probe(model).at("T7", 40, "left"), model)
    assert told["caution"] == CAUTION
    assert all(rung["thickness_mm"] > 0 for rung in told["ladder"])


def test_a_ray_takes_less_than_two_milliseconds():
    probe = Probe(toy_model())
    probe.along((40, 200, 280), (0, -1, 0))
    started = time.perf_counter()
    for _ in range(50):
        probe.along((40, 200, 280), (0, -1, 0))
    assert (time.perf_counter() - started) / 50 < 0.002


def _well_on_the_skin(probe, rays):
    """Return the starts of rays that meet skin also 1 mm beside; at a cut edge a tilt misses it."""
    across = np.cross(rays.directions, [0.0, 1.0, 0.0])
    across /= np.linalg.norm(across, axis=1, keepdims=True)
    met = np.ones(len(rays.origins), bool)
    for beside in (across, np.cross(across, rays.directions)):
        for side in (beside, -beside):
            ladders = probe.along_many(rays.origins + side, rays.directions)
            met &= [bool(r.rungs) and r.rungs[0].part_id.startswith("skin.") for r in ladders]
    assert met.mean() > 0.97
    return rays.origins[met]


def test_inward_is_square_to_the_skin_even_on_the_shoulder(preview_model):
    probe = Probe(preview_model)
    at = _well_on_the_skin(probe, inward_rays(preview_model, probe.index, 15.0))
    inward = probe.inward(at)
    assert np.linalg.norm(inward, axis=1) == pytest.approx(1.0)
    ladders = probe.along_many(at - 20.0 * inward, inward)
    first = [ladder.rungs[0] for ladder in ladders]
    assert all(rung.part_id.startswith("skin.") for rung in first)
    # A slanting way through skin of 3.2 mm at most would be longer.
    thick = np.array([rung.thickness_mm for rung in first])
    assert np.percentile(thick, 99) < 1.4 * 3.2
    assert np.percentile(thick, 1) > 1.5


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("level", ["C4", "T1", "T7", "L3"])
def test_in_the_midline_the_halves_of_skin_and_fascia_are_met(preview_model, level, side):
    probe = Probe(preview_model)
    at_level = probe.at(level, 0.0, side).part_ids
    assert at_level[:2] == (f"skin.{side}", f"superficial_fascia.{side}")
    back = probe._outermost(0.5, probe.level_height(level))
    pointed = probe.through(np.array([0.0, back[1], back[2]])).part_ids
    assert [i.split(".")[0] for i in pointed[:2]] == ["skin", "superficial_fascia"]


@settings(max_examples=80)
@given(st.integers(0, 10**6), st.floats(0.0, 60.0))
def test_a_place_anywhere_in_the_back_is_reached_from_the_skin_over_it(places, number, deep):
    probe, rays = places
    k = number % len(rays.origins)
    place = rays.origins[k] + (3.0 + deep) * rays.directions[k]
    ladder = probe.through(place)
    assert ladder.part_ids[0].startswith("skin.")
    way = place - ladder.origin
    along = float(way @ ladder.direction)
    # The place lies on the ray (moved off the midline where it was in it), and not behind an arm.
    assert np.linalg.norm(way - along * ladder.direction) < 0.6
    assert -1.0 < along < deep + 45.0
    assert [r.enter_mm for r in ladder.rungs] == sorted(r.enter_mm for r in ladder.rungs)


@pytest.fixture(scope="module")
def places(preview_model):
    probe = Probe(preview_model)
    return probe, inward_rays(preview_model, probe.index, 15.0)
