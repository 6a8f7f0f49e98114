"""The hip bone and the upper end of the femur."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.body import Body
from meshes.drape.audit import is_closed, is_outward, overlap_depth, self_intersections
from meshes.drape.distance import MeshIndex
from meshes.skeleton import pelvis, spine
from meshes.skeleton.frame import make_frame

_FREE = {"acetabulum.left.centre", "femur.left.head_centre"}


@pytest.fixture(scope="module")
def frame():
    return make_frame(Body())


@pytest.fixture(scope="module")
def pieces(frame):
    return {piece.part.id: piece for piece in pelvis.make(frame, "full")}


@pytest.fixture(scope="module")
def landmarks(pieces):
    return {name: at for piece in pieces.values() for name, at in piece.landmarks.items()}


@pytest.fixture(scope="module")
def column(frame):
    return {piece.part.id: piece for piece in spine.make(frame, "full")}


@pytest.mark.parametrize("detail", ["full", "preview"])
def test_hip_bone_and_femur_are_closed_and_outward(frame, detail):
    for piece in pelvis.make(frame, detail):
        assert is_closed(piece.part.mesh), piece.part.id
        assert is_outward(piece.part.mesh), piece.part.id


def test_hip_bone_and_femur_do_not_cross_themselves(pieces):
    for name, piece in pieces.items():
        assert len(self_intersections(piece.part.mesh)) == 0, name


def test_landmarks_of_the_pelvis_lie_on_their_bones(pieces):
    for piece in pieces.values():
        index = MeshIndex.of(piece.part.mesh)
        for name, place in piece.landmarks.items():
            if name not in _FREE:
                assert np.abs(index.query(np.atleast_2d(place))[0]).max() < 0.5, name


def test_crest_top_stands_at_the_fourth_lumbar_vertebra(frame, landmarks):
    top, body = landmarks["ilium.left.crest_top"], frame["L4"]
    step = frame["L3"].centre[2] - frame["L4"].centre[2]
    assert abs(top[2] - body.centre[2]) < 0.5 * step


def test_posterior_superior_spine_stands_at_the_second_sacral_segment(column, landmarks):
    crest = column["sacrum"].landmarks
    psis = landmarks["ilium.left.PSIS"]
    assert crest["S3.median_crest"][2] < psis[2] < crest["S1.median_crest"][2]
    assert 36.0 < psis[0] < 50.0


def test_breadths_and_height_of_the_pelvis_are_those_of_a_man(pieces, landmarks):
    mesh = pieces["hip_bone.left"].part.mesh
    assert 265.0 < 2 * mesh.bounds[1, 0] < 295.0
    assert 225.0 < 2 * landmarks["ilium.left.ASIS"][0] < 255.0
    assert 205.0 < np.ptp(mesh.bounds[:, 2]) < 230.0


def test_anterior_superior_spine_and_pubic_tubercle_share_a_coronal_plane(landmarks):
    asis, pubis = landmarks["ilium.left.ASIS"], landmarks["ilium.left.pubic_tubercle"]
    assert abs(asis[1] - pubis[1]) < 10.0


@pytest.mark.parametrize("slope", [25.0, 41.0, 57.0])
def test_pelvic_incidence_does_not_change_with_the_sacral_slope(slope):
    frame = make_frame(Body(sacral_slope_deg=slope))
    hip = pelvis.make(frame, "preview")[0].landmarks["acetabulum.left.centre"]
    incidence = slope + np.degrees(np.arctan2(-hip[1], -hip[2]))
    # Vialle et al. 2005: 55 +- 11 degrees (from memory).
    assert 44.0 < incidence < 66.0


BODIES = [
    Body(),
    Body(sex="female", stature_mm=1500.0, sacral_slope_deg=25.0),
    Body(stature_mm=2000.0, sacral_slope_deg=57.0),
]


@pytest.mark.parametrize("body", BODIES, ids=["median", "small_upright", "tall_tilted"])
def test_hip_bone_leaves_a_narrow_joint_with_the_sacrum(body):
    frame = make_frame(body)
    hip, femur = (MeshIndex.of(p.part.mesh) for p in pelvis.make(frame, "full"))
    column = {p.part.id: MeshIndex.of(p.part.mesh) for p in spine.make(frame, "full")}
    for name in ("sacrum", "coccyx", "vertebra_L5", "vertebra_L4", "disc_L5_S1"):
        assert overlap_depth(hip, column[name])[0] <= 0.2, name
    assert overlap_depth(hip, femur)[0] <= 0.2
    gap = column["sacrum"].query(hip.samples(1.5)[0])[0].min()
    assert 0.2 < gap < 2.0


def test_symphysis_leaves_a_gap_at_the_midline(pieces):
    assert 1.0 < pieces["hip_bone.left"].part.mesh.bounds[0, 0] < 4.0


def test_acetabulum_is_a_cup_that_holds_the_head(pieces, landmarks):
    centre = landmarks["acetabulum.left.centre"]
    hip = MeshIndex.of(pieces["hip_bone.left"].part.mesh)
    assert 25.0 < hip.query(centre[None])[0][0] < 29.0
    inward = -np.array([0.74, -0.30, -0.60])
    for out, solid in ((20.0, False), (34.0, True)):
        roof = centre + out * np.array([0.15, 0.1, 0.98])
        floor = centre + out * inward / np.linalg.norm(inward)
        assert bool(hip.query(roof[None])[0][0] < 0) is solid
        if not solid:
            assert hip.query(floor[None])[0][0] > 0


def test_obturator_foramen_is_the_only_hole_in_the_hip_bone(pieces):
    mesh = pieces["hip_bone.left"].part.mesh
    # One handle: the foramen. A closed surface of genus 1 has Euler number 0.
    assert mesh.euler_number == 0


def test_crest_curve_runs_from_the_posterior_to_the_anterior_spine(landmarks):
    crest = landmarks["ilium.left.crest"]
    assert np.linalg.norm(crest[0] - landmarks["ilium.left.PSIS"]) < 8.0
    assert np.linalg.norm(crest[-1] - landmarks["ilium.left.ASIS"]) < 8.0
    # From above an S: the back third bows inward, the front bows outward.
    plan = crest[:, :2]

    def bow(part):
        chord = part[-1] - part[0]
        away = part - part[0]
        return (chord[0] * away[:, 1] - chord[1] * away[:, 0]) / np.linalg.norm(chord)

    third = len(plan) // 3
    assert np.abs(bow(plan[third:])).max() > 10.0
    assert np.abs(bow(plan[: third + 2])).max() < 6.0


def test_gluteal_surface_looks_outward(pieces, landmarks):
    mesh = pieces["hip_bone.left"].part.mesh
    patch = landmarks["ilium.left.gluteal_surface"]
    face = MeshIndex.of(mesh).query(patch)[3]
    assert np.mean(mesh.face_normals[face][:, 0] > 0) > 0.9


def test_greater_trochanter_stands_at_the_height_of_the_hip_joint(landmarks):
    tip = landmarks["femur.left.greater_trochanter_tip"]
    assert abs(tip[2] - landmarks["femur.left.head_centre"][2]) < 12.0
    assert landmarks["femur.left.greater_trochanter"][0] > 140.0
    assert landmarks["femur.left.gluteal_tuberosity"][2] < tip[2] - 60.0
