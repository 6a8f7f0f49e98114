"""The twelve bodies: chosen so that every parameter stands at both ends of its range."""

import pytest

from meshes.body import RANGES, Body
from meshes.questions.bodies import BODIES, QUICK


@pytest.mark.parametrize("name", RANGES)
def test_each_parameter_stands_at_both_ends_of_its_range(name):
    values = {getattr(body, name) for body in BODIES.values()}
    assert set(RANGES[name]) <= values


def test_there_are_twelve_bodies_all_different_and_one_is_the_default():
    assert len(BODIES) == len(set(BODIES.values())) == 12
    assert BODIES["default"] == Body()


def test_both_sexes_and_both_variants_are_among_them():
    bodies = BODIES.values()
    assert {body.sex for body in bodies} == {"male", "female"}
    assert {body.scapular_slip for body in bodies} == {True, False}
    assert {body.trapezius_to_T10 for body in bodies} == {True, False}


def test_small_and_large_are_so_and_the_quick_ones_are_a_woman_and_a_flat_back():
    small, large = BODIES["small"], BODIES["large"]
    woman, flat = (BODIES[name] for name in QUICK)
    assert small.stature_mm < woman.stature_mm < large.stature_mm
    assert woman.sex == "female"
    assert flat.thoracic_kyphosis_deg < woman.thoracic_kyphosis_deg
