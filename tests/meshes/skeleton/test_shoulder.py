"""The scapula has the published sizes and angles and sits on the chest at its level."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial import cKDTree

from meshes.body import Body
from meshes.shapes.contour import is_two_manifold
from meshes.skeleton import shoulder, thorax
from meshes.skeleton.frame import make_frame
from meshes.skeleton.piece import snap_to_surface
from meshes.skeleton.vertebra_tables import SHAPES

S = "scapula.left."


@pytest.fixture(scope="module")
def frame():
    return make_frame(Body())


@pytest.fixture(scope="module")
def pieces(frame):
    return {piece.part.id: piece for piece in shoulder.make(frame, "full")}


@pytest.fixture(scope="module")
def marks(pieces):
    return {name: p for piece in pieces.values() for name, p in piece.landmarks.items()}


def spine_tip(frame, level):
    back, up = SHAPES[level].spine_tip
    return frame[level].to_model(frame.scale * np.array([0.0, back, up]))


def angle(apex, a, b):
    u, v = a - apex, b - apex
    return np.rad2deg(np.arccos(u @ v / np.linalg.norm(u) / np.linalg.norm(v)))


def gap_between(a, b):
    """Smallest distance from points of one fine mesh to the other's surface, mm."""
    near = cKDTree(a.vertices).query(b.vertices)[0]
    some = b.vertices[np.argsort(near)[:400]]
    return np.linalg.norm(snap_to_surface(a, some, 60) - some, axis=1).min()


def overlaps(mesh, points):
    """How many of some points lie inside a closed mesh."""
    return int(mesh.contains(points).sum())


@pytest.mark.parametrize("detail", ["preview", "full"])
def test_girdle_bones_are_closed_and_outward(frame, detail):
    for piece in shoulder.make(frame, detail):
        assert is_two_manifold(piece.part.mesh.faces), piece.part.id
        assert piece.part.mesh.volume > 0, piece.part.id


def test_scapula_has_the_published_height_breadth_and_spine(marks):
    # Oliveira Costa AC et al., Int J Morphol 2016;34:1164-1168, men: mean and SD.
    height = np.linalg.norm(marks[S + "superior_angle"] - marks[S + "inferior_angle"])
    breadth = np.linalg.norm(marks[S + "root_of_spine"] - marks[S + "glenoid_centre"])
    lateral = marks[S + "acromion_lateral_margin"]
    length = np.linalg.norm(lateral - marks[S + "root_of_spine"], axis=1).max()
    assert abs(height - 151.4) < 11.4
    assert abs(breadth - 102.4) < 6.5
    assert abs(length - 140.1) < 8.1


def test_scapula_has_the_published_angles(marks):
    # The Scapula: osseous dimensions and gender dimorphism in Thais, Siriraj Med J 2004. The
    # arms of a goniometer lie along the borders, beyond the blunt corner between them.
    border = marks[S + "medial_border"]
    lateral = marks[S + "lateral_border"]
    superior = marks[S + "superior_border"]
    low, high = marks[S + "inferior_angle"], marks[S + "superior_angle"]
    away = np.linalg.norm(border - low, axis=1)
    arm = border[np.argmin(np.abs(away - 60.0))] - border[np.argmin(np.abs(away - 14.0))]
    away = np.linalg.norm(lateral - low, axis=1)
    other = lateral[np.argmin(np.abs(away - 60.0))] - lateral[np.argmin(np.abs(away - 14.0))]
    assert abs(angle(np.zeros(3), arm, other) - 40.9) < 5.3
    assert abs(angle(high, border[9], superior[14]) - 84.3) < 9.4


def test_borders_run_without_turning_back(marks):
    for name in ("medial_border", "medial_border_costal", "lateral_border"):
        z = marks[S + name][:, 2]
        steps = np.diff(z)
        assert (np.sign(steps) == np.sign(z[-1] - z[0])).all(), name
    for name in ("spine_crest_upper_lip", "spine_crest_lower_lip"):
        assert (np.diff(marks[S + name][:, 0]) > 0).all(), name


def test_upper_lip_of_the_spine_lies_above_the_lower(marks):
    upper, lower = marks[S + "spine_crest_upper_lip"], marks[S + "spine_crest_lower_lip"]
    assert (upper[:, 2] - lower[:, 2] > 2.0).all()


def test_scapula_stands_at_its_levels(frame, marks):
    # Arms at rest: superior angle about T2, root near the spine of T3, inferior
    # angle between the tips of the spines of T7 and T9.
    assert frame["T3"].centre[2] < marks[S + "superior_angle"][2] < frame["T1"].centre[2]
    root = marks[S + "root_of_spine"][2]
    assert spine_tip(frame, "T4")[2] <= root <= spine_tip(frame, "T2")[2]
    low = marks[S + "inferior_angle"][2]
    assert spine_tip(frame, "T9")[2] < low < spine_tip(frame, "T7")[2]


def test_plane_of_the_scapula_is_30_to_40_degrees_to_the_coronal_plane(marks):
    # By the axis from the root of the spine to the glenoid, and by the costal face as a whole.
    axis = marks[S + "glenoid_centre"] - marks[S + "root_of_spine"]
    assert 30 <= np.rad2deg(np.arctan2(-axis[1], axis[0])) <= 40
    face = marks[S + "subscapular_fossa"]
    normal = np.linalg.svd(face - face.mean(0))[2][2]
    assert 30 <= np.rad2deg(np.arctan2(abs(normal[0]), abs(normal[1]))) <= 40


def test_costal_face_keeps_room_for_serratus_and_subscapularis(frame, pieces):
    blade = pieces["scapula.left"].part.mesh
    ribs = [p.part for p in thorax.make(frame, "preview") if p.part.name.startswith("rib_")]
    gaps = [gap_between(blade, rib.mesh) for rib in ribs if rib.id != "rib_1.left"]
    assert 6.0 < min(gaps) < 14.0


def test_acromion_stands_near_half_the_biacromial_breadth(frame, pieces):
    reach = pieces["scapula.left"].part.mesh.vertices[:, 0].max()
    # ANSUR II: SD of biacromial breadth 19 mm; half of two of them a side.
    assert abs(reach - frame.body.biacromial_mm / 2) < 19.0


def test_body_of_the_scapula_is_a_thin_plate(pieces, marks):
    mesh = pieces["scapula.left"].part.mesh
    front = marks[S + "subscapular_fossa"]
    back = snap_to_surface(mesh, marks[S + "infraspinous_fossa"])
    thickness = cKDTree(front).query(back)[0]
    centre = np.abs(thickness) < 8.0
    assert centre.sum() > 10
    # Net points of the two faces lie nearly opposite: the plate is 2-6 mm thick.
    assert 2.0 < np.median(thickness[centre]) < 6.0


def test_girdle_landmarks_lie_on_the_bones(pieces):
    for piece in pieces.values():
        for name, place in piece.landmarks.items():
            if name.endswith("head_centre"):
                continue
            points = np.atleast_2d(place)
            off = np.linalg.norm(snap_to_surface(piece.part.mesh, points, 60) - points, axis=1)
            assert off.max() < 0.5, name


def test_joints_of_the_girdle_have_a_cleft(pieces):
    blade, clavicle, humerus = (
        pieces[f"{n}.left"].part.mesh for n in ("scapula", "clavicle", "humerus")
    )
    assert 0.3 < gap_between(blade, clavicle) < 4.0
    assert 1.5 < gap_between(blade, humerus) < 4.0
    assert overlaps(blade, clavicle.vertices) == 0
    assert overlaps(blade, humerus.vertices) == 0


def test_clavicle_has_its_length_and_clears_ribs_and_sternum(frame, pieces, marks):
    length = np.linalg.norm(
        marks["clavicle.left.sternal_end"] - marks["clavicle.left.acromial_end"]
    )
    assert abs(length - 150.0) < 9.0
    clavicle = pieces["clavicle.left"].part.mesh
    near = {"rib_1.left", "rib_2.left", "sternum", "costal_cartilage_1.left"}
    for part in (p.part for p in thorax.make(frame, "preview")):
        if part.id in near:
            assert overlaps(part.mesh, clavicle.vertices) == 0, part.id
            assert gap_between(clavicle, part.mesh) > 0.2, part.id


def test_clavicle_is_bowed_forwards_medially_and_backwards_laterally(marks):
    line = (marks["clavicle.left.posterior_border"] + marks["clavicle.left.anterior_border"]) / 2
    a, b = marks["clavicle.left.sternal_end"], marks["clavicle.left.acromial_end"]
    along = (line - a) @ (b - a) / ((b - a) @ (b - a))
    off = line - (a + along[:, None] * (b - a))
    assert off[np.argmin(abs(along - 0.3)), 1] < -5
    assert off[np.argmin(abs(along - 0.78)), 1] > 3


def test_arm_hangs_at_its_abduction_and_is_cut_flat(marks, pieces):
    mesh = pieces["humerus.left"].part.mesh
    for degrees in (10.0, 30.0):
        body = Body(arm_abduction_deg=degrees)
        up, lateral, back = shoulder.humerus_axes(body, shoulder.scapula_pose(make_frame(body)))
        assert np.isclose(np.rad2deg(np.arccos(up[2])), degrees)
        assert np.allclose(np.cross(lateral, back), up)
    up = shoulder.humerus_axes(Body(), shoulder.scapula_pose(make_frame(Body())))[0]
    height = mesh.vertices @ up
    end = height < height.min() + 0.3
    assert end.sum() >= 8
    floor = marks["humerus.left.deltoid_tuberosity"] @ up
    assert floor - height.min() > 15


def test_intertubercular_sulcus_is_a_groove_that_looks_forwards(marks):
    floor = marks["humerus.left.intertubercular_floor"]
    greater = marks["humerus.left.greater_tubercle_crest"].mean(0)
    lesser = marks["humerus.left.lesser_tubercle_crest"].mean(0)
    centre = marks["humerus.left.head_centre"]
    # It lies in front of the head's centre, the lesser tubercle's crest medial to the greater's.
    assert (floor[:, 1] < centre[1] - 10).all()
    assert lesser[0] < floor[:, 0].mean() < greater[0]


@pytest.mark.parametrize(
    "change",
    [
        {"scapular_upward_rotation_deg": 25.0},
        {"scapular_protraction_mm": 20.0},
        {"scapular_protraction_mm": -15.0},
        {"scapular_elevation_mm": 25.0},
        {"sex": "female"},
        {"stature_mm": 1400.0, "biacromial_mm": 320.0},
        {"thoracic_kyphosis_deg": 60.0},
    ],
)
def test_scapula_glides_on_the_chest_at_every_pose(change):
    body = Body(**change)
    frame = make_frame(body)
    pose = shoulder.scapula_pose(frame)
    assert np.allclose(pose.rotation.T @ pose.rotation, np.eye(3))
    assert np.isclose(np.linalg.det(pose.rotation), 1.0)
    blade = shoulder.make(frame, "preview")[0].part.mesh
    gaps = shoulder.chest_gap(shoulder.chest_surface(frame), blade.vertices)
    assert 3.0 < gaps.min() < 14.0


def test_upward_rotation_raises_the_glenoid_and_swings_the_inferior_angle_out():
    def place(name, degrees):
        body = Body(scapular_upward_rotation_deg=degrees)
        return shoulder.make(make_frame(body), "preview")[0].landmarks[S + name]

    assert place("glenoid_centre", 20.0)[2] > place("glenoid_centre", 0.0)[2] + 8
    assert place("inferior_angle", 20.0)[0] > place("inferior_angle", 0.0)[0] + 20


def test_women_have_smaller_scapulae():
    woman, man = (make_frame(Body(sex=sex)) for sex in ("female", "male"))
    assert shoulder.scapula_size(woman.body) < 0.93 * shoulder.scapula_size(man.body)
