"""The room check against hand-worked figures and against published examples of contrast."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.talk.room import (
    Room,
    angle_arcmin,
    check_contrast,
    check_letters,
    contrast,
    letter_height_mm,
)


def test_twenty_minutes_at_twelve_metres_are_seventy_millimetres():
    # 12 m x tan(20/60 degrees) = 69.8 mm: worked by hand, as in the note that quotes ISO 9241-3.
    assert letter_height_mm(12, 20) == pytest.approx(69.8, abs=0.1)


def test_on_a_two_metre_picture_of_1080_lines_that_is_38_pixels():
    assert round(Room(12, 2, 1080).capital_px()) == 38


@given(st.floats(1, 100), st.floats(1, 60))
def test_height_and_angle_undo_one_another(distance, arcmin):
    assert angle_arcmin(letter_height_mm(distance, arcmin), distance) == pytest.approx(arcmin)


@given(st.floats(1, 90), st.floats(0.2, 20), st.integers(200, 4000))
def test_letters_grow_with_the_distance_of_the_last_row(distance, height, lines):
    assert (
        Room(distance + 1, height, lines).letter_px() >= Room(distance, height, lines).letter_px()
    )


@given(st.floats(1, 90), st.floats(0.2, 20), st.integers(200, 4000))
def test_letters_of_the_size_asked_for_pass(distance, height, lines):
    room = Room(distance, height, lines)
    assert check_letters(room, "x", room.letter_px() * 0.71).good


def test_letters_under_sixteen_minutes_are_a_warning():
    room = Room(12, 2, 1080)
    assert not check_letters(room, "x", room.capital_px(15.9)).good
    assert check_letters(room, "x", room.capital_px(16.1)).good


def test_contrast_of_black_and_white_is_21():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


def test_contrast_agrees_with_a_figure_that_is_published():
    # #767676 on white is the lightest grey that passes 4.5 to 1 (W3C, WCAG 2 technique G18).
    assert contrast("#767676", "#ffffff") >= 4.5
    assert contrast("#777777", "#ffffff") < 4.5


def test_light_of_the_room_lowers_the_contrast():
    assert contrast("#000000", "#ffffff", 0.05) == pytest.approx(1.10 / 0.10)
    assert not check_contrast("x", "#767676", "#ffffff", large=False, stray=0.05).good


@pytest.mark.parametrize("values", [(0.5, 2, 1080), (12, 0, 1080), (12, 2, 10)])
def test_a_room_that_is_none_is_refused(values):
    with pytest.raises(ValueError):
        Room(*values)
