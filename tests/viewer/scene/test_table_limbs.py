"""Shoulder blades and arms on the table: rigid bones, a trunk that stays, and the way back."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.scene.drawn import Shell
from viewer.scene.scene import PartLook, Scene
from viewer.scene.table_limbs import ARM_SAG_DEG, Limbs
from viewer.state.section_plane import SectionPlane
from viewer.state.table_view import limbs_lie, pose_lines
from viewer.state.view_state import ViewState


@pytest.fixture(scope="module")
def limbs(preview_model):
    return Limbs(
        {name: part.mesh.vertices for name, part in preview_model.parts.items()},
        {name: part.kind for name, part in preview_model.parts.items()},
    )


def lengths(points):
    return np.linalg.norm(points[1:] - points[:-1], axis=1)


@pytest.mark.parametrize("bone", ["scapula", "clavicle", "humerus"])
def test_bones_of_the_girdle_move_and_keep_their_shape(bone, limbs, preview_model):
    moved = {}
    for side in ("left", "right"):
        points = preview_model.parts[f"{bone}.{side}"].mesh.vertices
        moved[side] = limbs.moved(f"{bone}.{side}", points)
        assert np.abs(lengths(moved[side]) - lengths(points)).max() < 1e-6
        assert np.linalg.norm(moved[side] - points, axis=1).max() > 4.0
    middles = [moved[side].mean(axis=0) for side in ("left", "right")]
    assert middles[0] * [-1, 1, 1] == pytest.approx(middles[1], abs=0.5)


def test_shoulders_sink_forward_and_outward_and_arms_towards_the_table(limbs, preview_model):
    blade = preview_model.parts["scapula.left"].mesh.vertices
    shift = (limbs.moved("scapula.left", blade) - blade).mean(axis=0)
    assert shift[0] > 4 and shift[1] < -4 and abs(shift[2]) < 1
    arm = preview_model.parts["humerus.left"].mesh.vertices
    end = arm[:, 2] < arm[:, 2].min() + 5
    sunk = (limbs.moved("humerus.left", arm) - arm)[end].mean(axis=0)
    length = np.ptp(arm[:, 2])
    assert -sunk[1] > 0.7 * length * np.sin(np.radians(ARM_SAG_DEG))


def test_the_trunk_stays(limbs, preview_model):
    for name in ("vertebra_T7", "rib_7.left", "sacrum", "multifidus_lumborum.left"):
        if name in preview_model.parts:
            points = preview_model.parts[name].mesh.vertices
            assert np.abs(limbs.moved(name, points) - points).max() < 1.0


def test_muscles_follow_at_the_blade_and_stay_at_the_spines(limbs, preview_model):
    points = preview_model.parts["rhomboid_major.left"].mesh.vertices
    shift = np.linalg.norm(limbs.moved("rhomboid_major.left", points) - points, axis=1)
    inner = points[:, 0] < np.quantile(points[:, 0], 0.05)
    outer = points[:, 0] > np.quantile(points[:, 0], 0.95)
    assert shift[inner].max() < 2.0
    assert shift[outer].mean() > 5.0


@given(st.sampled_from(["scapula.left", "deltoid.left", "trapezius_transverse.right", "skin.left"]))
def test_a_point_that_is_seen_is_found_in_the_standing_body(limbs, preview_model, name):
    if name not in preview_model.parts:
        return
    points = np.asarray(preview_model.parts[name].mesh.vertices)[::97]
    moved = limbs.moved(name, points)
    for seen, standing in list(zip(moved, points, strict=True))[:12]:
        assert limbs.back(name, seen) == pytest.approx(standing, abs=1.0)


def test_a_body_without_a_girdle_has_no_limbs_to_lay():
    assert not Limbs({"rib_1.left": np.zeros((3, 3))}, {"rib_1.left": "bone"})


@pytest.fixture(scope="module")
def scene(preview_model):
    """Return a scene with the bones of chest and shoulder and some muscles on them."""
    wanted = ("scapula", "clavicle", "humerus", "rib_", "vertebra_T", "deltoid", "trapezius")
    scene = Scene(size=(320, 240))
    scene.add_parts(p for i, p in preview_model.parts.items() if i.startswith(wanted))
    scene.apply({name: PartLook() for name in scene._drawn})
    scene.set_view("posterior")
    yield scene
    scene.finalize()


def test_the_drawn_arm_lies_and_a_pick_on_it_gives_the_standing_place(scene, preview_model):
    home = scene._drawn["humerus.left"].still.points.copy()
    scene.set_table("left")
    scene.lay_limbs(True)
    assert scene.limbs_lie
    lying = scene._drawn["humerus.left"].still.points
    assert np.linalg.norm(lying - home, axis=1).max() > 20
    scene.stand()
    shown = scene.target().first_hit
    middle = lying.mean(axis=0)
    origin = middle + np.array([0.0, 500.0, 0.0])
    seen = shown(origin, np.array([0.0, -1.0, 0.0]), ["humerus.left"])
    place = scene.standing_place("humerus.left", np.asarray(seen[1]))
    surface = preview_model.parts["humerus.left"].mesh.subdivide().subdivide().vertices
    assert np.linalg.norm(surface - place, axis=1).min() < 1.5
    scene.set_table("")
    assert not scene.limbs_lie
    assert np.array_equal(scene._drawn["humerus.left"].still.points, home)


def test_a_flap_that_is_folded_while_lying_moves_with_the_blade_and_lies_back(scene):
    name = "trapezius_transverse.left"
    home = scene._drawn[name]
    lifted = Shell(
        home.still.points + np.float32([0, 60, 0]),
        home.still.normals,
        home.still.faces,
        home.still.surface,
    )
    scene.set_table("right")
    scene.lay_limbs(True)
    scene.move_parts({name: {"still": lifted}})
    assert scene._drawn[name].still.points[:, 1].mean() > home.still.points[:, 1].mean() + 30
    assert scene._drawn["humerus.left"] is not scene.part_in_place("humerus.left")
    scene.move_parts({})
    assert scene.limbs_lie
    scene.lay_limbs(False)
    assert scene._drawn[name] is home
    assert scene.moved_parts() == frozenset()
    scene.set_table("")


def test_nothing_lies_while_something_is_stuck_to_the_standing_body():
    lying = ViewState(table="left")
    assert limbs_lie(lying)
    assert not limbs_lie(ViewState())
    assert not limbs_lie(lying.with_(surface_marks=True))
    assert not limbs_lie(lying.with_(measure=((0.0, 0.0, 0.0), (1.0, 0.0, 0.0))))
    assert not limbs_lie(lying.with_(section=SectionPlane()))
    assert pose_lines("left", lying=True)[1] != pose_lines("left")[1]
