"""Bones alone, of another stature or sex than the model."""

from dataclasses import replace

import numpy as np
import pytest

from meshes.body import Body
from meshes.questions import published
from meshes.questions.measures import Measured, posterior_body_height
from meshes.questions.published import (
    BONE_MEASURES,
    COLUMN_MEASURES,
    MEASURES,
    compare_other_sex,
    published_values,
)
from meshes.questions.specimens import bones_of


@pytest.fixture(scope="module")
def column():
    return bones_of(Body(), "preview", True)


def test_a_shorter_body_has_lower_vertebrae_in_proportion(column):
    short = Measured(bones_of(Body(stature_mm=1678.0), "preview", True))
    ratio = posterior_body_height(short, "L3") / posterior_body_height(Measured(column), "L3")
    assert ratio == pytest.approx(1678 / 1756, abs=0.02)


def test_the_column_alone_has_no_ribs(column):
    assert "vertebra_T5" in column.parts
    assert not any(name.startswith("rib_") for name in column.parts)


def test_measures_of_the_column_are_measures_of_bones():
    assert COLUMN_MEASURES < BONE_MEASURES <= set(MEASURES)


def test_statures_of_specimens_are_told_for_measures_of_the_column_only():
    told = [value for value in published_values() if value.specimens_mm is not None]
    assert told
    assert all(value.measure in COLUMN_MEASURES and value.note for value in told)


def test_values_of_the_other_sex_are_held_against_its_own_bones(preview_model):
    rows = compare_other_sex(preview_model)
    women = [v for v in published_values() if v.sex == "female" and v.measure in BONE_MEASURES]
    assert len(rows) == len(women) > 20
    assert all(row.model is not None for row in rows)
    crest = next(row for row in rows if row.quantity.startswith("breadth between the iliac"))
    assert np.isfinite(crest.model)
    assert crest.published == pytest.approx(273.3)


def test_a_source_that_tells_its_stature_is_not_scaled(preview_model):
    value = next(v for v in published_values() if v.specimens_mm is not None)
    tall = replace(preview_model, body=Body(stature_mm=1900.0))
    row = next(r for r in published.compare(tall) if r.source == value.source)
    assert row.published == pytest.approx(value.published)
