"""Body parameters: ranges are kept, and errors name what is allowed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meshes.body import RANGES, Body, BodyError


def test_defaults_follow_the_medians_of_the_sex():
    # Gordon CC et al., ANSUR II, 2014 (from memory): mean stature 1756 and 1628 mm.
    assert Body().stature_mm == 1756.0
    assert Body(sex="female").stature_mm == 1628.0


def test_shoulder_breadth_follows_stature_when_it_is_not_given():
    assert Body(stature_mm=1900).biacromial_mm > Body().biacromial_mm


def test_stature_in_metres_is_refused_with_a_hint():
    with pytest.raises(
        BodyError, match=r"stature_mm must lie in 1400–2050, got 1.75 \(in metres\?\)"
    ):
        Body(stature_mm=1.75)


def test_an_unknown_parameter_is_refused_by_name():
    with pytest.raises(BodyError, match="unknown body parameter 'height'"):
        Body.from_dict({"height": 1700})


def test_an_unknown_sex_is_refused_with_the_allowed_ones():
    with pytest.raises(BodyError, match="male, female"):
        Body(sex="other")


@given(st.sampled_from(sorted(RANGES)), st.floats(0, 1))
def test_every_value_inside_its_range_is_accepted(name, share):
    low, high = RANGES[name]
    value = low + share * (high - low)
    assert getattr(Body(**{name: value}), name) == value


@given(st.sampled_from(sorted(RANGES)), st.floats(0.01, 100), st.booleans())
def test_every_value_outside_its_range_is_refused(name, beyond, above):
    low, high = RANGES[name]
    with pytest.raises(BodyError, match=name):
        Body(**{name: high + beyond if above else low - beyond})


def test_a_body_survives_the_way_through_a_dictionary():
    body = Body(sex="female", stature_mm=1700, scapular_slip=False)
    assert Body.from_dict(body.as_dict()) == body
