"""Rehearsed cuts: lengths, depths, clearances, losses, the plan's lines, and worked cases."""

import numpy as np
import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from meshes.catalogue.plan import removed_by
from meshes.errors import PeelbackError
from meshes.questions.rehearse import Rehearser

RHOMBOIDS = ("rhomboid_major.left", "rhomboid_minor.left")


@pytest.fixture(scope="module")
def rehearser(preview_model):
    return Rehearser(preview_model)


def left_at(rehearser, step_id):
    """What the dissection has left when a step begins."""
    gone = {
        i
        for step in rehearser.plan.before(step_id)
        for i in removed_by(step, "both", rehearser.model.catalogue)
    }
    return set(rehearser.model.parts) - gone


def along_the_plan(rehearser, step_id, part_id, depth_mm, number=0):
    line = rehearser.plan_lines(step_id, "left")[number].points
    return rehearser.rehearse(line, part_id, depth_mm, step_id, left_at(rehearser, step_id))


def test_the_plans_own_line_is_no_way_from_itself(rehearser):
    for step_id, part_id in (
        ("skin", "skin.left"),
        ("trapezius", "trapezius_transverse.left"),
        ("rhomboids", "rhomboid_major.left"),
    ):
        told = along_the_plan(rehearser, step_id, part_id, 1.0).comparison
        assert told.mean_mm < 0.1 and told.largest_mm < 0.6
        assert told.followed > 0.2


def test_every_step_that_cuts_a_sheet_has_a_line_on_it(rehearser):
    for step in rehearser.plan.steps:
        sheets = rehearser._cut_parts(step, "left")
        if not step.cuts or not sheets:
            continue
        lines = rehearser.plan_lines(step.id, "left")
        assert lines, step.id
        for line in lines:
            away = min(
                float(np.abs(rehearser._index(i).signed_distance(line.points)[0]).max())
                for i in sheets
            )
            nearest = np.min(
                [np.abs(rehearser._index(i).signed_distance(line.points)[0]) for i in sheets],
                axis=0,
            )
            # Between two slips the line bridges a gap; on them it lies on the surface.
            assert np.median(nearest) < 0.5, (step.id, line.words, away)


def test_the_planned_lines_of_skin_lose_nothing(rehearser):
    for number in range(len(rehearser.plan_lines("skin", "left"))):
        answer = along_the_plan(rehearser, "skin", "skin.left", 1.0, number)
        assert not answer.losses, (number, answer.losses)


def test_the_planned_line_of_the_rhomboids_loses_nothing(rehearser):
    # Beside the spines the sheet thins out to hardly two millimetres, and so must the blade.
    deep = 1.5
    for number in range(len(rehearser.plan_lines("rhomboids", "left"))):
        answer = along_the_plan(rehearser, "rhomboids", "rhomboid_major.left", deep, number)
        assert not answer.loses_what_must_stay
        assert answer.safe_mm is None or answer.safe_mm > deep


def test_the_fat_is_cut_along_the_lines_of_the_skin(rehearser):
    skin = rehearser.plan_lines("skin", "left")
    fat = rehearser.plan_lines("superficial_fascia", "left")
    assert [line.words for line in fat] == [line.words for line in skin]
    for over, under in zip(skin, fat, strict=True):
        away = np.abs(rehearser._index("superficial_fascia.left").signed_distance(under.points)[0])
        assert np.median(away) < 0.5
        assert np.linalg.norm(over.points.mean(axis=0) - under.points.mean(axis=0)) < 12.0


def test_no_line_of_the_plan_loses_anything_with_the_blade_kept_off_what_lies_beneath(rehearser):
    for step in rehearser.plan.steps:
        cut = rehearser._cut_parts(step, "left")
        for line in rehearser.plan_lines(step.id, "left") if cut else ():
            middle = line.points[len(line.points) // 2]
            part_id = rehearser._nearest_of(cut, middle)
            held = rehearser.rehearse(
                line.points, part_id, 20.0, step.id, left_at(rehearser, step.id), lifted=True
            )
            assert not held.loses_what_must_stay, (step.id, line.words)


def test_arches_come_off_with_their_ligaments_and_dura_with_arachnoid(rehearser):
    for step_id, part_id, along in (
        ("laminae", "vertebra_T9", "ligamentum_flavum_T8_T9"),
        ("canal", "spinal_dura_mater", "spinal_arachnoid_mater"),
    ):
        lost = {x.part_id for x in along_the_plan(rehearser, step_id, part_id, 3.0).losses}
        layer = {x.part_id for x in along_the_plan(rehearser, step_id, part_id, 3.0).layers}
        assert along in layer and along not in lost


def test_the_saw_goes_on_into_the_dura_and_the_scissors_into_the_cord(rehearser):
    through_bone = along_the_plan(rehearser, "laminae", "vertebra_T9", 10.0)
    assert "spinal_dura_mater" in {x.part_id for x in through_bone.losses if x.kept}
    opened = along_the_plan(rehearser, "canal", "spinal_dura_mater", 3.0)
    assert "spinal_cord" in {x.part_id for x in opened.losses if x.kept}


def test_rhomboids_cut_5_mm_too_deep_lose_serratus_posterior_superior(rehearser):
    lost = {}
    for number in range(len(rehearser.plan_lines("rhomboids", "left"))):
        answer = along_the_plan(rehearser, "rhomboids", "rhomboid_major.left", 7.0, number)
        lost |= {loss.part_id: loss for loss in answer.losses if loss.kept}
    assert "serratus_posterior_superior.left" in lost
    assert lost["serratus_posterior_superior.left"].length_mm > 5


def test_rhomboids_cut_at_the_border_come_near_the_dorsal_scapular_bundle(rehearser):
    border = rehearser.model.landmarks["scapula.left.medial_border"]
    line = rehearser.onto(border + np.array([-4.0, 0, 0]), RHOMBOIDS)
    answer = rehearser.rehearse(line, RHOMBOIDS[0], 8.0, present=left_at(rehearser, "rhomboids"))
    clear = {c.part_id: c.mm for c in answer.clearances}
    assert min(clear["dorsal_scapular_nerve.left"], clear["dorsal_scapular_artery.left"]) < 5.0
    good = along_the_plan(rehearser, "rhomboids", RHOMBOIDS[0], 2.0)
    assert {c.part_id: c.mm for c in good.clearances}["dorsal_scapular_nerve.left"] > 20.0
    assert answer.comparison.mean_mm > 40


@pytest.mark.parametrize("step_id", ["rhomboids", "latissimus", "serratus_inferior"])
def test_with_a_finger_underneath_nothing_beneath_the_layer_is_lost(rehearser, step_id):
    present = left_at(rehearser, step_id)
    for line in rehearser.plan_lines(step_id, "left"):
        cut = rehearser._cut_parts(rehearser.plan.step(step_id), "left")[0]
        free = rehearser.rehearse(line.points, cut, 7.0, step_id, present)
        held = rehearser.rehearse(line.points, cut, 7.0, step_id, present, lifted=True)
        assert free.loses_what_must_stay and not held.loses_what_must_stay
        assert {x.part_id for x in held.losses} <= {x.part_id for x in free.losses}
        clear = {c.part_id: c.mm for c in free.clearances}
        assert all(c.mm >= clear[c.part_id] - 0.6 for c in held.clearances)


def test_latissimus_cut_5_mm_too_deep_loses_serratus_posterior_inferior(rehearser):
    lost = set()
    for number in range(len(rehearser.plan_lines("latissimus", "left"))):
        answer = along_the_plan(rehearser, "latissimus", "latissimus_dorsi.left", 7.5, number)
        lost |= {x.part_id for x in answer.losses if x.kept}
    assert "serratus_posterior_inferior.left" in lost


@settings(
    max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.floats(1.0, 12.0), st.floats(1.0, 12.0))
def test_a_deeper_blade_never_loses_less_nor_stands_clearer(rehearser, one, other):
    low, high = sorted((one, other))
    shallow = along_the_plan(rehearser, "rhomboids", RHOMBOIDS[0], low)
    deep = along_the_plan(rehearser, "rhomboids", RHOMBOIDS[0], high)
    assert {x.part_id for x in shallow.losses} <= {x.part_id for x in deep.losses}
    clear = {c.part_id: c.mm for c in deep.clearances}
    for c in shallow.clearances:
        # The ribbon is sampled about every millimetre: half a step may be missed.
        assert clear[c.part_id] <= c.mm + 0.6


@settings(
    max_examples=8, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.lists(st.tuples(st.floats(-120, 120), st.floats(60, 480)), min_size=2, max_size=5))
@example([(0.0, 60.0), (48.0, 388.0)])
@example([(0.0, 73.0), (0.0, 193.0)])
@example([(0.0, 90.0), (0.0, 145.46239601461974)])
def test_any_clicks_on_skin_give_a_line_on_skin_and_an_answer(rehearser, places):
    points = rehearser.onto([(x, 60.0, z) for x, z in places], ("skin.left", "skin.right"))
    if max(np.linalg.norm(points - points[0], axis=1)) < 1.0:
        return
    line = rehearser.line_through(points, "skin.left")
    off = np.minimum(
        *(np.abs(rehearser._index(f"skin.{s}").signed_distance(line)[0]) for s in ("left", "right"))
    )
    assert np.quantile(off, 0.9) < 0.5
    answer = rehearser.rehearse(line, "skin.left", 3.0)
    chord = sum(np.linalg.norm(b - a) for a, b in zip(points[:-1], points[1:], strict=True))
    assert answer.length_mm >= 0.97 * chord
    assert all(c.mm >= 0 for c in answer.clearances)
    assert all(loss.length_mm > 0 and 0 <= loss.depth_mm < 3.0 for loss in answer.losses)


def test_layers_have_the_thickness_that_the_probe_finds(rehearser):
    answer = along_the_plan(rehearser, "skin", "skin.left", 2.0, number=3)
    skin = next(one for one in answer.layers if one.part_id == "skin.left")
    k = len(answer.line) // 2
    ladder = rehearser._probe.along(answer.line[k] - 2 * answer.inward[k], answer.inward[k])
    thick = next(r.thickness_mm for r in ladder.rungs if r.part_id == "skin.left")
    assert skin.least_mm <= thick
    assert skin.mean_mm == pytest.approx(thick, abs=2.0)
    order = [one.part_id for one in answer.layers]
    assert order.index("skin.left") < order.index("superficial_fascia.left")


@pytest.mark.parametrize(
    ("ask", "words"),
    [
        (lambda r: r.line_through([(0, 0, 0)], "skin.left"), "two places"),
        (lambda r: r.line_through([(0, 0, 0), (9, 9, 9)], "cloak"), "no part 'cloak'"),
        (lambda r: r.plan_lines("skin", "port"), "side must be left or right"),
        (lambda r: r.plan_lines("shave", "left"), "no step 'shave'"),
        (lambda r: r.rehearse(np.eye(3), "skin.left", 0.0), "depth must lie in 0–60 mm"),
        (lambda r: r.rehearse(np.zeros((2, 3)), "skin.left", 1.0), "two places"),
    ],
)
def test_what_cannot_be_rehearsed_is_refused_in_one_line(rehearser, ask, words):
    with pytest.raises(PeelbackError, match=words) as refusal:
        ask(rehearser)
    assert "\n" not in str(refusal.value)
