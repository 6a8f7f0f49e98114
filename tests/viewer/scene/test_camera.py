import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.scene import camera as cameras
from viewer.scene.camera import Pose

ANGLES = st.floats(-400, 400, allow_nan=False)


def test_from_behind_the_subjects_left_is_on_the_left_and_the_head_up():
    letters = cameras.side_letters(cameras.view_pose("posterior", Pose()))
    assert letters["left"][0] == pytest.approx(-1)
    assert letters["head"][1] == pytest.approx(1)
    assert np.hypot(*letters["back"]) == pytest.approx(0, abs=1e-9)


def test_from_the_front_the_subjects_left_is_on_the_right():
    assert cameras.side_letters(Pose(*cameras.VIEWS["anterior"]))["left"][0] == pytest.approx(1)


def test_left_views_look_at_the_left_flank():
    for name in ("oblique_left", "lateral_left"):
        assert Pose(*cameras.VIEWS[name]).axes()[2][0] > 0.5
    assert Pose(*cameras.VIEWS["superior"]).axes()[2] == pytest.approx([0, 0, 1])


@given(ANGLES, ANGLES)
def test_axes_are_square_and_never_roll(azimuth, elevation):
    right, up, back = Pose(azimuth, float(np.clip(elevation, -90, 90))).axes()
    assert np.array([right, up, back]) @ np.array([right, up, back]).T == pytest.approx(np.eye(3))
    assert right[2] == pytest.approx(0, abs=1e-9)
    assert up[2] >= -1e-9


@given(st.sampled_from(list(cameras.VIEWS)), st.lists(st.tuples(ANGLES, ANGLES), max_size=6))
def test_limited_orbit_stays_near_its_view(name, turns):
    pose = cameras.view_pose(name, Pose())
    for turn in turns:
        pose = cameras.orbited(pose, *turn)
    azimuth, elevation = cameras.VIEWS[name]
    assert abs(cameras.wrapped(pose.azimuth_deg - azimuth)) <= cameras.AZIMUTH_LIMIT_DEG + 1e-6
    assert abs(pose.elevation_deg - elevation) <= cameras.ELEVATION_LIMIT_DEG + 1e-6


def test_free_orbit_goes_all_the_way_round():
    pose = cameras.orbited(Pose(), 170, 0, limited=False)
    assert pose.azimuth_deg == pytest.approx(170)


@given(st.sampled_from(list(cameras.VIEWS)))
def test_pose_survives_being_written_and_read(name):
    pose = cameras.view_pose(name, Pose(focus=(1.0, -2.0, 3.0), scale_mm=123.0))
    words = pose.to_dict()
    assert cameras.pose_from_dict(words) == pose
    for key in ("azimuth_deg", "elevation_deg"):
        words.pop(key)
    by_place = cameras.pose_from_dict(words)
    for mine, theirs in zip(by_place.axes(), pose.axes(), strict=True):
        assert mine == pytest.approx(theirs, abs=1e-6)


@given(
    st.sampled_from(list(cameras.VIEWS)),
    st.lists(st.tuples(*[st.floats(-300, 300)] * 3), min_size=1, max_size=12),
    st.floats(0.4, 2.5),
)
def test_framing_brings_every_point_into_the_picture(name, points, aspect):
    points = np.array(points)
    pose = cameras.framed(cameras.view_pose(name, Pose()), points, aspect)
    right, up, _ = pose.axes()
    away = points - np.asarray(pose.focus)
    assert np.abs(away @ up).max() <= pose.scale_mm + 1e-6
    assert np.abs(away @ right).max() <= pose.scale_mm * aspect + 1e-6


def test_panning_moves_the_picture_with_the_pointer():
    pose = cameras.panned(Pose(scale_mm=400.0), 80, 0, height_px=800)
    # The eye goes to the picture's left, which from behind is the subject's left.
    assert pose.focus[0] == pytest.approx(80.0)


def test_flight_begins_and_ends_where_it_should_and_takes_the_short_way():
    flight = cameras.Flight(Pose(170, 0), Pose(-170, 10, scale_mm=100.0))
    assert flight.at(0.0).azimuth_deg == pytest.approx(170)
    assert flight.at(1.0) == flight.end
    assert abs(flight.at(0.5).azimuth_deg) == pytest.approx(180)


def test_wrong_view_is_told_what_is_allowed():
    with pytest.raises(ValueError, match=r"posterior.*got 'behind'"):
        cameras.view_pose("behind", Pose())


def test_marker_sentence_tells_left_and_head():
    assert cameras.markers_sentence(Pose()) == (
        "The subject's left is on the left of the picture; the head is at the top of the picture."
    )
