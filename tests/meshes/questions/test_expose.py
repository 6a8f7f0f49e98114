"""The way in: shortest, in order, sided, and never through what must be kept."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.catalogue.plan import load_plan
from meshes.drape.distance import MeshIndex
from meshes.errors import PeelbackError
from meshes.questions.cover import Layers, cast_layers, layers_of
from meshes.questions.expose import cut_lines, done_steps, expose, removed_parts
from meshes.questions.named import nearest_names, parts_named
from tests.fakes import toy_model

PLAN = load_plan()
SIDES = ("left", "right")


@pytest.fixture(scope="module")
def toy_layers() -> Layers:
    return cast_layers(toy_model(), 4.0)


@pytest.fixture(scope="module")
def preview_layers(preview_model) -> Layers:
    return layers_of(preview_model)


def _ids(way) -> list[str]:
    return [step.step_id for step in way.steps]


def test_the_rhomboids_are_reached_through_trapezius(preview_model, preview_layers):
    way = expose(preview_model, preview_layers, "rhomboid_major.left")
    assert _ids(way) == [
        "feel_landmarks",
        "skin",
        "superficial_fascia",
        "clean_first_sheet",
        "trapezius",
    ]
    assert {step.side for step in way.steps} == {"left"}
    assert way.reached
    assert way.before == 0
    assert way.after == pytest.approx(way.steps[-1].in_view)
    assert way.after > 0.8


def test_the_way_goes_on_from_what_is_done(preview_model, preview_layers):
    gone = {
        i
        for step in (*PLAN.before("trapezius"), PLAN.step("trapezius"))
        for i in removed_parts(preview_model, step, "right")
    }
    way = expose(preview_model, preview_layers, "serratus_posterior_superior.right", gone=gone)
    assert _ids(way) == ["rhomboids"]
    assert all(i.endswith(".right") for i in way.steps[0].removes)
    # The other side is as it was: there the way is whole.
    other = expose(preview_model, preview_layers, "serratus_posterior_superior.left", gone=gone)
    assert _ids(other)[0] == "feel_landmarks"


def test_what_is_in_view_needs_no_step(preview_model, preview_layers):
    way = expose(preview_model, preview_layers, "skin.left")
    assert (way.steps, way.reached) == ((), True)
    assert way.before > 0.999


def test_a_median_part_is_reached_from_both_sides(preview_model, preview_layers):
    way = expose(preview_model, preview_layers, "supraspinous_ligament")
    assert {step.side for step in way.steps} == {"both"}
    assert way.reached


def test_the_canal_is_opened_after_everything_on_both_sides(preview_model, preview_layers):
    way = expose(preview_model, preview_layers, "spinal_cord", share=0.2)
    assert _ids(way)[-2:] == ["laminae", "canal"]
    assert {step.side for step in way.steps} == {"both"}
    assert way.reached
    # The window is a part of the canal only: most of the cord stays under its arches.
    whole = expose(preview_model, preview_layers, "spinal_cord")
    assert not whole.reached
    assert any(row.part_id == "vertebra_C5" for row in whole.remains)
    assert whole.stays["vertebra_C5"] == "no step takes it"


def test_what_is_taken_together_cannot_uncover_one_another(preview_model, preview_layers):
    way = expose(preview_model, preview_layers, "longissimus_thoracis.left", 0.95)
    assert not way.reached
    assert way.stays["erector_spinae_aponeurosis.left"] == "taken in one step with it"


def test_steps_that_take_what_is_kept_are_not_taken(preview_model, preview_layers):
    kept = {"rhomboid_major.left", "rhomboid_minor.left"}
    way = expose(preview_model, preview_layers, "serratus_posterior_superior.left", keep=kept)
    assert "rhomboids" not in _ids(way)
    assert not kept.intersection(*[step.removes for step in way.steps] or [()])
    assert not way.reached
    assert {row.part_id for row in way.remains} >= kept
    assert all("kept" in way.stays[i] for i in kept)


def test_risks_are_of_the_keep_list_and_near_the_cut(preview_model, preview_layers):
    way = expose(preview_model, preview_layers, "semispinalis_cervicis.left")
    by_step = {step.step_id: step for step in way.steps}
    risks = by_step["semispinalis_capitis"].at_risk
    # The nerve passes through the muscle close to where it is cut.
    assert "greater_occipital_nerve.left" in {risk.part_id for risk in risks}
    for step in way.steps:
        assert all(0 <= risk.clearance_mm <= 15 for risk in step.at_risk)
        assert [r.clearance_mm for r in step.at_risk] == sorted(
            r.clearance_mm for r in step.at_risk
        )
        assert not {risk.part_id for risk in step.at_risk} & set(step.removes)


def test_lines_of_cut_lie_on_what_they_cut(preview_model, preview_layers):
    for step_id, part in (("rhomboids", "rhomboid_major"), ("trapezius", "trapezius_ascending")):
        lines = cut_lines(preview_model, preview_layers, PLAN.step(step_id), "right")
        assert lines
        surface = preview_model.parts[f"{part}.right"].mesh
        distance = MeshIndex.of(surface).signed_distance(lines[0].outer)[0]
        assert np.abs(distance).min() < 0.05
        assert (lines[0].outer[:, 0] < 5).all()
        # The blade goes inward, through a sheet some millimetres thick.
        through = np.linalg.norm(lines[0].inner - lines[0].outer, axis=1)
        assert 0.3 < np.median(through) < 12
        assert np.median(lines[0].inner[:, 1] - lines[0].outer[:, 1]) < 0


def test_steps_count_as_done_when_their_parts_are_gone():
    model = toy_model()
    gone = {i for i in model.parts if i.startswith(("skin", "superficial_fascia"))}
    done = done_steps(model, PLAN, gone)
    assert done["left"] >= {"feel_landmarks", "skin", "superficial_fascia"}
    assert "trapezius" not in done["left"]
    assert done_steps(model, PLAN, {"skin.left"})["right"] == frozenset()


def test_what_a_done_step_has_left_there_is_not_counted_as_gone(toy_layers):
    model = toy_model()
    gone = {i for i in model.parts if i.startswith(("skin", "superficial", "cutaneous"))}
    first = PLAN.before("trapezius")
    done = {side: {s.id for s in first} | {"trapezius"} for side in SIDES}
    # Trapezius was folded, not taken: here it still lies over the rhomboid.
    way = expose(model, toy_layers, "rhomboid_major.left", 0.8, gone, done)
    assert not way.reached
    assert way.steps == ()
    assert any("trapezius" in row.part_id for row in way.remains)


def _legal(chosen: frozenset[str]) -> bool:
    return all(need in chosen for step_id in chosen for need in PLAN.step(step_id).needs)


@pytest.mark.parametrize(
    ("target", "share"),
    [
        ("rhomboid_major.left", 0.8),
        ("serratus_posterior_inferior.left", 0.6),
        ("splenius_capitis.right", 0.5),
        ("levator_scapulae.left", 0.9),
    ],
)
def test_no_shorter_legal_set_of_steps_does_it(toy_layers, target, share):
    model = toy_model()
    way = expose(model, toy_layers, target, share)
    side = target.rsplit(".", 1)[1]
    if not way.reached:
        pytest.fail("the toy is made so that the plan reaches these")
    each = [s.id for s in PLAN.steps if s.side == "each"]
    for chosen in itertools.combinations(each, len(way.steps) - 1):
        if not _legal(frozenset(chosen)):
            continue
        removed = {i for s in chosen for i in removed_parts(model, PLAN.step(s), side)}
        if target in removed:
            continue
        assert toy_layers.in_view(target, set(toy_layers.ids) - removed) < share


@settings(max_examples=40, deadline=None)
@given(data=st.data())
def test_any_way_is_legal_true_and_spares_what_it_must(data, toy_layers):
    model = toy_model()
    target = data.draw(st.sampled_from(sorted(toy_layers.ids)))
    share = data.draw(st.floats(0.05, 1.0))
    depth = data.draw(st.integers(0, len(PLAN.steps)))
    side = data.draw(st.sampled_from(SIDES))
    started = PLAN.steps[:depth]
    gone = {i for s in started for i in removed_parts(model, s, side)} - {target}
    keep = data.draw(st.sets(st.sampled_from(sorted(toy_layers.ids)), max_size=2)) - gone
    done = {s: set(steps) for s, steps in done_steps(model, PLAN, gone).items()}
    try:
        way = expose(model, toy_layers, target, share, gone, keep=keep)
    except PeelbackError as refusal:
        assert "no ray" in str(refusal)
        return
    left = set(toy_layers.ids) - gone
    for step in way.steps:
        plan_step = PLAN.step(step.step_id)
        for each in SIDES if step.side == "both" else (step.side,):
            assert set(plan_step.needs) <= done[each]
            done[each].add(step.step_id)
        assert target not in step.removes
        assert not keep & set(step.removes)
        assert set(step.removes) <= left
        left -= set(step.removes)
        assert step.in_view == pytest.approx(toy_layers.in_view(target, left), abs=1e-9)
    assert way.reached == (way.after >= share - 1e-6)
    assert way.after >= way.before - 1e-9
    assert way.remains == toy_layers.covers(target, left)


@pytest.mark.parametrize(
    ("target", "options", "said"),
    [
        ("romboid", {}, "romboid"),
        ((), {}, "named"),
        ("rhomboid_major.left", {"share": 0}, "share"),
        ("rhomboid_major.left", {"share": float("nan")}, "share"),
        ("rhomboid_major.left", {"gone": {"rhomboid_major.left"}}, "taken away"),
    ],
)
def test_bad_questions_are_refused_in_one_line(toy_layers, target, options, said):
    with pytest.raises(PeelbackError, match=said) as refusal:
        expose(toy_model(), toy_layers, target, **options)
    assert "\n" not in str(refusal.value)


def test_names_find_parts_in_any_dress():
    model = toy_model()
    both = ("rhomboid_major.left", "rhomboid_major.right")
    assert set(parts_named(model, "rhomboid_major")) == set(both)
    assert set(parts_named(model, "Rhomboid major")) == set(both)
    assert set(parts_named(model, "musculus rhomboideus major")) == set(both)
    assert parts_named(model, "rhomboid major left") == both[:1]
    assert parts_named(model, "rhomboid_major.right") == both[1:]
    assert len(parts_named(model, "trapezius.left")) == 3
    assert parts_named(model, "spinal cord") == ("spinal_cord",)


def test_unknown_names_are_answered_with_the_nearest():
    model = toy_model()
    with pytest.raises(PeelbackError, match="nearest: .*rhomboid major"):
        parts_named(model, "romboid major")
    assert "trapezius" in " ".join(nearest_names(model, "trapezius muscle of the bck"))
    for typed in ("rhomboid_mjor", "trapzius", "spinal crd"):
        named = nearest_names(model, typed)
        assert named and len(set(named)) == len(named)
    with pytest.raises(PeelbackError, match="xyzzy"):
        parts_named(model, "xyzzy")
    for empty in ("", "left", " . "):
        with pytest.raises(PeelbackError):
            parts_named(model, empty)
