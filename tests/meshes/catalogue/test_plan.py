"""The dissection plan: an order that can be kept, refusals with reasons, nothing forgotten."""

from __future__ import annotations

import random
from importlib.resources import files
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.catalogue import load_catalogue
from meshes.catalogue.plan import (
    allowed,
    cautions,
    load_plan,
    part_ids_of,
    read_plan,
    removed_by,
    steps,
)
from meshes.errors import PeelbackError

# What each step needs, written by hand from the order of a dissection.
NEEDS = {
    "skin": {"feel_landmarks"},
    "superficial_fascia": {"skin"},
    "clean_first_sheet": {"superficial_fascia"},
    "trapezius": {"clean_first_sheet"},
    "latissimus": {"clean_first_sheet", "trapezius"},
    "rhomboids": {"trapezius"},
    "levator": {"trapezius"},
    "serratus_superior": {"rhomboids"},
    "serratus_inferior": {"latissimus"},
    "splenii": {"trapezius", "rhomboids", "serratus_superior"},
    "semispinalis_capitis": {"splenii"},
    "suboccipital_triangle": {"semispinalis_capitis"},
    "deep_window": {"erector_columns"},
    "canal": {"laminae"},
}


def test_all_fifteen_steps_are_there() -> None:
    assert {s.number for s in steps()} == set(range(1, 16))


@pytest.mark.parametrize(("step", "needs"), NEEDS.items())
def test_step_needs_what_lies_over_it(step: str, needs: set[str]) -> None:
    assert set(load_plan().step(step).needs) == needs


def test_columns_need_latissimus_rhomboids_and_both_serrati() -> None:
    before = {s.id for s in load_plan().before("erector_columns")}
    assert {"latissimus", "rhomboids", "serratus_superior", "serratus_inferior"} <= before
    assert "splenii" not in before
    assert "splenii" in {s.id for s in load_plan().before("erector_columns_neck")}


def test_no_step_needs_itself() -> None:
    for step in steps():
        assert step.id not in {s.id for s in load_plan().before(step.id)}


def test_order_of_the_file_can_be_kept() -> None:
    done: dict[str, set[str]] = {"left": set(), "right": set()}
    for step in steps():
        assert allowed(step.id, "both", done) == (True, "")
        done["left"].add(step.id)
        done["right"].add(step.id)


@settings(max_examples=60, deadline=None)
@given(st.randoms(use_true_random=False))
def test_random_order_is_refused_with_a_reason_until_it_is_right(shuffler: random.Random) -> None:
    order = [s.id for s in steps()]
    shuffler.shuffle(order)
    done: dict[str, set[str]] = {"left": set(), "right": set()}
    for step_id in order:
        free, reason = allowed(step_id, "left", {**done, "right": done["left"]})
        missing = [n for n in load_plan().step(step_id).needs if n not in done["left"]]
        assert free == (not missing)
        if missing:
            assert "left" in reason
            assert all(load_plan().step(m).title in reason for m in missing)
        else:
            assert reason == ""
            done["left"].add(step_id)


def test_sides_go_their_own_way() -> None:
    done = {"left": {"feel_landmarks", "skin"}, "right": {"feel_landmarks"}}
    assert allowed("superficial_fascia", "left", done)[0]
    free, reason = allowed("superficial_fascia", "both", done)
    assert not free
    assert reason == "first, on the right: Cut and turn the skin"


def test_canal_needs_both_sides() -> None:
    everything = {s.id for s in steps()} - {"laminae", "canal"}
    assert not allowed("laminae", "left", {"left": everything, "right": set()})[0]
    assert allowed("laminae", "left", {"left": everything, "right": everything})[0]


def test_unknown_step_and_side_are_named() -> None:
    with pytest.raises(PeelbackError, match="no step 'trapez' in the plan; steps are feel"):
        load_plan().step("trapez")
    with pytest.raises(PeelbackError, match="side must be left, right or both, got 'port'"):
        allowed("skin", "port", {})


def test_step_takes_away_one_side_only_when_asked() -> None:
    trapezius = load_plan().step("trapezius")
    left = removed_by(trapezius, "left")
    assert "trapezius_ascending.left" in left
    assert not any(i.endswith(".right") for i in left)
    assert len(removed_by(trapezius)) == 2 * len(left)


def test_no_part_is_taken_away_twice() -> None:
    seen: dict[str, str] = {}
    for step in steps():
        for part_id in removed_by(step):
            assert part_id not in seen, (part_id, step.id, seen[part_id])
            seen[part_id] = step.id


def test_nothing_is_kept_that_an_earlier_step_took_away() -> None:
    catalogue = load_catalogue()
    for step in steps():
        gone = {i for s in load_plan().before(step.id) for i in removed_by(s)}
        for name in step.keep:
            assert not gone.intersection(part_ids_of(name, catalogue)), (step.id, name)


def test_nothing_is_revealed_that_was_taken_away_before() -> None:
    catalogue = load_catalogue()
    for step in steps():
        gone = {i for s in load_plan().before(step.id) for i in removed_by(s)}
        for name in step.reveals:
            ids = set(part_ids_of(name, catalogue))
            assert not ids or ids - gone, (step.id, name)


def test_step_never_takes_away_what_it_keeps() -> None:
    catalogue = load_catalogue()
    for step in steps():
        kept = {i for name in step.keep for i in part_ids_of(name, catalogue)}
        assert not kept & set(removed_by(step)), step.id


def test_folds_are_described_in_full() -> None:
    for step_id in (
        *("trapezius", "latissimus", "rhomboids", "levator", "serratus_superior"),
        *("serratus_inferior", "splenii", "thoracolumbar_fascia", "semispinalis_capitis"),
    ):
        step = load_plan().step(step_id)
        assert step.cuts and step.cut_end and step.hinge and step.fold and step.turn_deg
        assert step.hinge.along
        assert step.stop


def test_first_folds_go_laterally_from_the_spines() -> None:
    for step_id in ("trapezius", "latissimus", "rhomboids", "serratus_superior"):
        step = load_plan().step(step_id)
        assert step.fold.startswith("outward")
        assert step.cut_end.startswith("medial")


def test_bundle_of_trapezius_travels_and_is_kept() -> None:
    step = load_plan().step("trapezius")
    assert {"accessory_nerve", "transverse_cervical_artery"} <= set(step.travels) & set(step.keep)


def test_looking_step_can_be_switched_off() -> None:
    plan = load_plan().without(["feel_landmarks", "levator", "canal"])
    assert plan.step("skin").needs == ()
    assert "levator" not in {s.id for s in plan.steps}


def test_step_that_opens_the_way_cannot_be_switched_off() -> None:
    with pytest.raises(PeelbackError, match="'trapezius' cannot be switched off: 'latissimus'"):
        load_plan().without(["trapezius"])


def test_cautions_cover_blades_fixative_bone_donor_and_rules() -> None:
    texts = {c.id: c.text for c in cautions()}
    assert {"sharps", "injury", "fixative", "bone_work", "donor", "local_rules", "model"} <= set(
        texts
    )
    assert "not for needle or surgical guidance" in texts["model"]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('needs = ["trapezius"]', 'needs = ["trapezium"]', "rhomboids: needs an unknown step"),
        ('needs = ["feel_landmarks"]', 'needs = ["trapezius"]', "skin: needs 'trapezius', which"),
        ('removes = ["skin"]', 'removes = ["skim"]', "skin: removes names an unknown row"),
        ('removes = ["skin"]', 'takes = ["skin"]', "skin: unknown field 'takes'"),
        ('along = ["T5.spinous', 'along = ["T55.spinous', "rhomboids: unknown landmark 'T55"),
        ('side = "both"', 'side = "middle"', "laminae: side must be each or both"),
        ('id = "latissimus"', 'id = "trapezius"', "trapezius: is a step already"),
        ('title = "Fold the rhomboids outward"\n', "", "rhomboids: field 'title' is missing"),
    ],
)
def test_slip_in_the_plan_is_named(tmp_path: Path, old: str, new: str, says: str) -> None:
    text = (files("meshes.catalogue") / "plan.toml").read_text(encoding="utf-8")
    assert old in text
    (tmp_path / "plan.toml").write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(PeelbackError) as caught:
        read_plan(tmp_path, load_catalogue())
    assert str(caught.value).startswith(f"plan.toml, {says}")
    assert "\n" not in str(caught.value)
