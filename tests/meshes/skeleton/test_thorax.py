"""The ribs, their cartilages and the sternum."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.body import Body
from meshes.drape.audit import is_closed, is_outward, overlap_depth, self_intersections
from meshes.drape.distance import MeshIndex
from meshes.skeleton import spine, thorax
from meshes.skeleton.frame import make_frame
from meshes.skeleton.thorax_shape import RIBS, chest_surface, rib_course


@pytest.fixture(scope="module")
def frame():
    return make_frame(Body())


@pytest.fixture(scope="module")
def pieces(frame):
    return {piece.part.id: piece for piece in thorax.make(frame, "full")}


@pytest.fixture(scope="module")
def landmarks(pieces):
    return {name: at for piece in pieces.values() for name, at in piece.landmarks.items()}


@pytest.fixture(scope="module")
def column(frame):
    return {piece.part.id: piece for piece in spine.make(frame, "full")}


def test_there_are_twelve_ribs_ten_cartilages_and_a_sternum(pieces):
    assert set(pieces) == (
        {f"rib_{n}.left" for n in range(1, 13)}
        | {f"costal_cartilage_{n}.left" for n in range(1, 11)}
        | {"sternum"}
    )


@pytest.mark.parametrize("detail", ["full", "preview"])
def test_every_mesh_of_the_thorax_is_closed_and_outward(frame, detail):
    for piece in thorax.make(frame, detail):
        assert is_closed(piece.part.mesh), piece.part.id
        assert is_outward(piece.part.mesh), piece.part.id


def test_no_rib_or_cartilage_crosses_itself(pieces):
    for name, piece in pieces.items():
        assert len(self_intersections(piece.part.mesh)) == 0, name


def test_landmarks_of_the_thorax_lie_on_their_bones(pieces):
    for piece in pieces.values():
        index = MeshIndex.of(piece.part.mesh)
        for name, place in piece.landmarks.items():
            distance = np.abs(index.query(np.atleast_2d(place))[0])
            assert distance.max() < 0.5, name


@pytest.mark.parametrize("number", range(2, 10))
def test_heads_of_ribs_two_to_nine_meet_the_disc_above_their_vertebra(landmarks, column, number):
    disc = column[f"disc_T{number - 1}_T{number}"].part.mesh
    head = landmarks[f"rib_{number}.left.head"]
    low, high = disc.bounds[:, 2]
    assert low - 3.0 < head[2] < high + 3.0
    assert MeshIndex.of(disc).query(head[None])[0][0] < 4.0


@pytest.mark.parametrize("number", [1, 10, 11, 12])
def test_heads_of_the_outer_ribs_meet_one_body_only(landmarks, column, number):
    head = landmarks[f"rib_{number}.left.head"][None]
    own = MeshIndex.of(column[f"vertebra_T{number}"].part.mesh).query(head)[0][0]
    above = "C7" if number == 1 else f"T{number - 1}"
    other = MeshIndex.of(column[f"vertebra_{above}"].part.mesh).query(head)[0][0]
    assert own < 2.5
    assert other > own + 1.5


@pytest.mark.parametrize("number", range(1, 11))
def test_tubercles_meet_the_transverse_process_of_their_own_vertebra(
    pieces, landmarks, column, number
):
    name = f"rib_{number}.left"
    surface = MeshIndex.of(pieces[name].part.mesh).samples(1.5)[0]
    near = surface[np.linalg.norm(surface - landmarks[f"{name}.tubercle"], axis=1) < 9.0]
    vertebra = MeshIndex.of(column[f"vertebra_T{number}"].part.mesh)
    assert 0.0 < vertebra.query(near)[0].min() < 1.6


@pytest.mark.parametrize("number", range(1, 13))
def test_ribs_slope_down_and_outward_from_the_spine(landmarks, number):
    shaft = landmarks[f"rib_{number}.left.shaft"]
    start, widest = landmarks[f"rib_{number}.left.tubercle"], shaft[shaft[:, 0].argmax()]
    run = np.hypot(*(widest - start)[:2])
    slope = np.degrees(np.arctan2(start[2] - widest[2], run))
    assert widest[0] > start[0]
    assert 8.0 < slope < 45.0


@pytest.mark.parametrize("number", range(2, 11))
def test_front_ends_lie_two_vertebrae_or_more_below_the_heads(frame, landmarks, number):
    end = landmarks[f"rib_{number}.left.anterior_end"]
    lower = min(number + 2, 12)
    assert end[2] < frame[f"T{lower}"].centre[2] + 6.0


def test_ribs_grow_to_the_seventh_and_shrink_below(frame):
    lengths = [rib_course(frame, n).length for n in RIBS]
    assert lengths.index(max(lengths)) + 1 in (7, 8)
    assert np.all(np.diff(lengths[:7]) > 0)
    assert np.all(np.diff(lengths[7:]) < 0)


def test_floating_ribs_have_no_cartilage_and_end_far_from_the_sternum(pieces, landmarks):
    sternum = MeshIndex.of(pieces["sternum"].part.mesh)
    for number in (11, 12):
        assert f"costal_cartilage_{number}.left" not in pieces
        end = landmarks[f"rib_{number}.left.anterior_end"]
        assert sternum.query(end[None])[0][0] > 90.0


@pytest.mark.parametrize("number", range(1, 8))
def test_true_ribs_reach_the_sternum_by_their_cartilage(pieces, landmarks, number):
    sternum = MeshIndex.of(pieces["sternum"].part.mesh)
    cartilage = MeshIndex.of(pieces[f"costal_cartilage_{number}.left"].part.mesh)
    rib_end = landmarks[f"rib_{number}.left.anterior_end"]
    medial = landmarks[f"costal_cartilage_{number}.left.medial_end"]
    assert sternum.query(medial[None])[0][0] < 1.5
    assert cartilage.query(rib_end[None])[0][0] < 1.0


@pytest.mark.parametrize("number", [8, 9, 10])
def test_false_ribs_join_the_cartilage_above(pieces, landmarks, number):
    above = MeshIndex.of(pieces[f"costal_cartilage_{number - 1}.left"].part.mesh)
    medial = landmarks[f"costal_cartilage_{number}.left.medial_end"]
    assert above.query(medial[None])[0][0] < 5.0


@pytest.mark.parametrize("number", RIBS)
def test_the_upper_border_of_a_rib_lies_above_its_lower_border(landmarks, number):
    upper = landmarks[f"rib_{number}.left.upper_border"]
    lower = landmarks[f"rib_{number}.left.lower_border"]
    assert np.all(upper[:, 2] > lower[:, 2])


def test_rib_angles_move_away_from_the_midline_downward(landmarks):
    across = [landmarks[f"rib_{n}.left.angle"][0] for n in range(2, 11)]
    # The landmarks stand on cross-sections a few millimetres apart.
    assert np.all(np.diff(across) > -1.5)
    assert np.all(np.diff(across[::2]) > 0)
    assert 30.0 < across[0] < 50.0
    assert 65.0 < across[-1] < 90.0


@pytest.mark.parametrize("number", range(4, 11))
def test_rib_angles_reach_as_far_back_as_the_transverse_processes(landmarks, column, number):
    tip = column[f"vertebra_T{number}"].landmarks[f"T{number}.left.transverse_process"]
    assert landmarks[f"rib_{number}.left.shaft"][:, 1].max() > tip[1] - 3.0


def test_first_rib_is_flat_with_upper_and_lower_faces(landmarks):
    name = "rib_1.left"
    shaft = landmarks[f"{name}.shaft"]
    rim = landmarks[f"{name}.upper_border"] - landmarks[f"{name}.lower_border"]
    broadest = rim[np.linalg.norm(rim, axis=1).argmax()]
    assert np.linalg.norm(broadest) > 15.0
    assert abs(broadest[2]) < 0.65 * np.linalg.norm(broadest)
    assert shaft[:, 0].max() < 65.0


def test_cage_is_narrow_above_and_broadest_at_ribs_eight_and_nine(pieces):
    half = {n: pieces[f"rib_{n}.left"].part.mesh.bounds[1, 0] for n in RIBS}
    assert max(half, key=half.get) in (8, 9)
    assert 2 * half[1] < 125.0
    assert 255.0 < 2 * max(half.values()) < 285.0


def test_intercostal_spaces_at_the_side_are_regular(landmarks):
    heights = []
    for n in range(2, 11):
        shaft = landmarks[f"rib_{n}.left.shaft"]
        heights.append(shaft[shaft[:, 0].argmax(), 2])
    spaces = -np.diff(heights)
    assert spaces.min() > 17.0
    assert spaces.max() < 42.0


def test_sternal_landmarks_stand_at_their_levels(frame, landmarks):
    notch, angle = landmarks["sternum.jugular_notch"], landmarks["sternum.sternal_angle"]
    assert frame["T3"].centre[2] < notch[2] < frame["T2"].centre[2]
    assert frame["T5"].centre[2] < angle[2] < frame["T4"].centre[2]
    assert notch[1] > angle[1] > landmarks["sternum.xiphoid_tip"][1]
    second = landmarks["costal_cartilage_2.left.medial_end"]
    assert abs(second[2] - angle[2]) < 10.0


BODIES = [
    Body(),
    Body(sex="female", stature_mm=1500.0, thoracic_kyphosis_deg=60.0),
    Body(stature_mm=2000.0, thoracic_kyphosis_deg=20.0),
]


@pytest.mark.parametrize("body", BODIES, ids=["median", "small_round", "tall_flat"])
def test_ribs_overlap_neither_the_column_nor_each_other(body):
    frame = make_frame(body)
    chest = {p.part.id: MeshIndex.of(p.part.mesh) for p in thorax.make(frame, "full")}
    column = {
        p.part.id: MeshIndex.of(p.part.mesh) for p in spine.make(frame, "full") if "_T" in p.part.id
    }
    names = list(chest)
    for i, name in enumerate(names):
        for other in names[i + 1 :]:
            assert overlap_depth(chest[name], chest[other])[0] <= 0.2, (name, other)
        for other, index in column.items():
            assert overlap_depth(chest[name], index)[0] <= 0.2, (name, other)


def test_chest_surface_runs_through_the_outer_faces_of_the_ribs(frame, landmarks):
    surface = chest_surface(frame)
    for number in range(2, 8):
        shaft = landmarks[f"rib_{number}.left.shaft"]
        back = shaft[(shaft[:, 1] > 0.0) & (shaft[:, 0] > 50.0)]
        angle = np.degrees(np.arctan2(back[:, 1] - surface.axis_y, back[:, 0]))
        wall = surface.point(back[:, 2], angle)
        assert np.linalg.norm(wall - back, axis=1).max() < 4.0, number


def test_chest_surface_normals_point_outward(frame):
    surface = chest_surface(frame)
    heights, angles = np.meshgrid(np.linspace(250, 420, 8), np.linspace(0, 60, 7))
    normal = surface.normal(heights, angles)
    radial = surface.point(heights, angles) - [0.0, surface.axis_y, 0.0]
    radial[..., 2] = 0.0
    assert np.all(np.einsum("...i,...i->...", normal, radial) > 0)
    assert np.allclose(np.linalg.norm(normal, axis=-1), 1.0)


def test_a_rib_number_beyond_twelve_is_refused(frame):
    with pytest.raises(ValueError, match="1 to 12, got 13"):
        rib_course(frame, 13)
