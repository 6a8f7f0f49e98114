"""Pages of steps: full, in order, never overfull."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.print.page_fill import filled_pages


def test_two_steps_that_fit_share_a_page_and_their_pictures_fill_it():
    assert filled_pages([100, 120], 0, 400, 50, 200) == [[], [90, 90]]


def test_a_step_begins_on_the_page_that_is_begun_where_it_fits():
    assert filled_pages([100, 300], 160, 400, 50, 90) == [[60], [90]]


def test_a_step_too_high_for_a_page_gets_the_least_picture():
    assert filled_pages([500], 0, 400, 50, 90) == [[], [50]]


def test_no_steps_need_no_page():
    assert filled_pages([], 100, 400, 50, 90) == []


def test_pages_are_filled_evenly_rather_than_one_after_the_other():
    pages = filled_pages([150, 150, 150, 150, 150], 0, 410, 50, 80)
    assert [len(page) for page in pages] == [0, 2, 2, 1]


@given(
    fixed=st.lists(st.floats(20, 250), min_size=1, max_size=14),
    first=st.floats(0, 400),
    room=st.floats(310, 700),
)
def test_no_page_is_overfull_and_no_fewer_pages_would_do(fixed, first, room):
    least, most = 50.0, 150.0
    pages = filled_pages(fixed, first, room, least, most)
    assert sum(map(len, pages)) == len(fixed)
    start = 0
    for number, heights in enumerate(pages):
        end = start + len(heights)
        if heights:
            page = room if number else first
            assert least <= heights[0] <= most
            assert sum(fixed[start:end]) + sum(heights) <= page + 1e-6
        start = end
    # Packing each page as full as it goes, in order, takes the fewest pages there are.
    needed, left = 0, first
    for height in fixed:
        if height + least > left:
            needed, left = needed + 1, room
        left -= height + least
    assert len(pages) - 1 == pytest.approx(needed)
