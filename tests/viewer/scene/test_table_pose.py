"""At the table: up is the back, the head lies where it does for someone who stands there."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.scene.camera import Flight, Pose, pose_from_dict, side_letters
from viewer.scene.table_pose import HEIGHT_DEG, STANDS, place_at_table, table_pose, walked


def letters(stand):
    return side_letters(table_pose(STANDS[stand], HEIGHT_DEG, Pose()))


@pytest.mark.parametrize("stand", STANDS)
def test_the_back_of_the_donor_is_up(stand):
    across, along = letters(stand)["back"]
    assert along > 0.5
    assert abs(across) < 1e-9


@pytest.mark.parametrize(
    "stand, name, where",
    [
        # Standing at the left of a prone donor the head is at one's left hand.
        ("left", "head", (-1, 0)),
        ("right", "head", (1, 0)),
        ("head", "left", (1, 0)),
        ("foot", "left", (-1, 0)),
    ],
)
def test_the_donor_lies_as_for_someone_who_stands_there(stand, name, where):
    assert letters(stand)[name] == pytest.approx(where, abs=1e-9)


@pytest.mark.parametrize("stand, near", [("left", "left"), ("right", "right"), ("head", "head")])
def test_what_is_near_is_low_in_the_picture(stand, near):
    assert letters(stand)[near][1] < -0.5


@given(st.floats(-179, 179), st.floats(12, 86))
def test_a_place_at_the_table_can_be_read_back(around, height):
    assert place_at_table(table_pose(around, height, Pose())) == pytest.approx(
        (around, height), abs=1e-6
    )


@given(st.floats(-200, 200), st.floats(-200, 200), st.sampled_from(list(STANDS)))
def test_a_limited_walk_stays_at_its_side(around, height, stand):
    pose = walked(table_pose(STANDS[stand], HEIGHT_DEG, Pose()), around, height, stand)
    found, up = place_at_table(pose)
    assert abs((found - STANDS[stand] + 180) % 360 - 180) <= 50 + 1e-6
    assert 12 - 1e-6 <= up <= 86 + 1e-6


@given(st.floats(-179, 179), st.floats(-80, 80), st.floats(-179, 179))
def test_a_rolled_pose_survives_the_camera_it_is_saved_as(azimuth, elevation, roll):
    pose = Pose(azimuth, elevation, roll_deg=roll)
    saved = {k: pose.to_dict()[k] for k in ("position", "focal_point", "view_up", "parallel_scale")}
    back = pose_from_dict(saved)
    for mine, theirs in zip(pose.axes(), back.axes()):
        np.testing.assert_allclose(mine, theirs, atol=1e-3)


def test_a_flight_to_the_table_leans_over_the_short_way():
    end = table_pose(STANDS["left"], HEIGHT_DEG, Pose())
    half = Flight(Pose(), end).at(0.5)
    assert abs(half.roll_deg) == pytest.approx(45, abs=1e-6)
    assert Flight(Pose(), end).at(1.0) == end


def test_upright_views_have_no_roll():
    for azimuth, elevation in ((0, 0), (38, 14), (90, 0), (0, 90), (180, 0)):
        saved = Pose(azimuth, elevation).to_dict()
        saved.pop("azimuth_deg")
        assert pose_from_dict(saved).roll_deg == 0
