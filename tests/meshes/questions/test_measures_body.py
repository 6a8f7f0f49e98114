"""Measures of outlines and depths, on the finished preview model."""

import numpy as np
import pytest

from meshes.questions.measures import Measured, Unmeasurable
from meshes.questions.measures_body import MEASURES as BODY
from meshes.questions.measures_body import level_of_height
from meshes.questions.measures_nerves import MEASURES as NERVES


@pytest.fixture(scope="module")
def measured(preview_model):
    return Measured(preview_model)


def test_the_trunk_is_broader_than_deep(measured):
    assert BODY["outline_breadth"](measured, "300") > BODY["outline_depth"](measured, "300") + 30


def test_a_plane_above_the_head_has_no_outline(measured):
    with pytest.raises(Unmeasurable, match="nothing of the body"):
        BODY["outline_breadth"](measured, "-900")


def test_the_level_of_a_body_is_its_own_number(measured):
    z = float(measured.landmark("T7.body_centre")[2])
    assert level_of_height(measured, z) == pytest.approx(7.0, abs=1e-6)


def test_the_cord_ends_above_the_dural_sac(measured):
    assert BODY["cord_end"](measured, "conus_medullaris") < BODY["cord_end"](
        measured, "spinal_dura_mater"
    )


def test_the_superior_angle_of_the_scapula_is_the_blunter(measured):
    assert BODY["scapular_angle"](measured, "superior") > BODY["scapular_angle"](
        measured, "inferior"
    )


def test_the_greater_occipital_nerve_leaves_trapezius_higher_than_semispinalis(measured):
    upper = NERVES["leaves_below"](measured, "greater_occipital_nerve|trapezius_descending")
    lower = NERVES["leaves_below"](measured, "greater_occipital_nerve|semispinalis_capitis")
    assert upper < lower


def test_a_nerve_that_is_not_built_is_named(measured):
    with pytest.raises(Unmeasurable, match="no_such_nerve"):
        NERVES["leaves_below"](measured, "no_such_nerve|trapezius_descending")


def test_the_suboccipital_triangle_has_an_area(measured):
    assert np.isfinite(NERVES["suboccipital_triangle_area"](measured, "default"))
