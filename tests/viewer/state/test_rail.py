"""The bands of the depth rail."""

from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.fakes import toy_model
from viewer.state.rail import (
    band_heights,
    depth_at,
    handle_y,
    rail_bands,
    thickness_by_stratum,
)
from viewer.state.view_state import Sides, ViewState

MODEL = toy_model()
LADDER = st.lists(st.one_of(st.none(), st.floats(0, 80)), min_size=11, max_size=11)


@given(LADDER, st.floats(220, 1500))
def test_bands_fill_the_rail_and_none_is_too_thin_to_hit(ladder, height):
    heights = band_heights(ladder, height)
    assert sum(heights) == pytest.approx(height)
    assert min(heights) >= 18.0 - 1e-6


def test_thick_bands_keep_their_proportion():
    heights = band_heights([30.0, 60.0, 1.0], 318.0)
    assert heights[1] == pytest.approx(2 * heights[0])
    assert heights[2] == pytest.approx(18.0)


def test_bands_of_what_is_peeled_are_marked_by_side():
    state = ViewState(peeled=Sides(2, 0), strata_off=Sides(frozenset(), frozenset({4})))
    bands = rail_bands([5.0] * 11, state, 600.0)
    assert [b.stratum for b in bands if b.off_left] == [0, 1]
    assert [b.stratum for b in bands if b.off_right] == [4]


@given(LADDER, st.integers(0, 11))
def test_a_handle_put_at_a_depth_reads_back_as_that_depth(ladder, depth):
    bands = rail_bands(ladder, ViewState(), 700.0)
    assert depth_at(bands, handle_y(bands, depth)) == depth


def test_the_ladder_stops_at_the_bone():
    hits = [
        SimpleNamespace(part_id="skin.left", enter_mm=10.0, thickness_mm=2.4),
        SimpleNamespace(part_id="rib_7.left", enter_mm=60.0, thickness_mm=12.0),
        SimpleNamespace(part_id="latissimus_dorsi.left", enter_mm=150.0, thickness_mm=9.0),
    ]
    ladder = thickness_by_stratum(hits, MODEL)
    assert ladder[0] == pytest.approx(2.4)
    assert ladder[9] == pytest.approx(12.0)
    assert ladder[2] is None
