"""The finished model against published measurements, each with its source.

The values, their sources, and whether they were read or are from memory stand in
``meshes/questions/published.toml``. A value with a standard deviation must be met
within two of them; one with a range must lie in it; an input without any spread
within a tenth. Known disagreements are expected to fail, with the reason: an
explained row is not a passed row. What the model cannot answer yet is skipped, by name.
"""

from functools import lru_cache

import pytest

from meshes.questions.published import (
    Comparison,
    compare,
    compare_other_sex,
    published_values,
)

MALE = [value for value in published_values() if value.sex in ("any", "male")]

DISAGREEMENTS = {
    ("posterior_body_height T", "Panjabi MM"): (
        "heights follow Busscher 2010 and ANSUR II, taller than these specimens at their stature"
    ),
    ("cluneal_from_psis medial", "Anatomic"): "the medial branch is laid as its groove lies",
}


def _reason(value) -> str | None:
    for (start, source), reason in DISAGREEMENTS.items():
        if f"{value.measure} {value.about}".startswith(start) and value.source.startswith(source):
            return reason
    return None


@lru_cache(maxsize=1)
def _compared(model) -> dict:
    rows = compare(model)
    return dict(zip(MALE, rows))


def _agrees(row: Comparison) -> bool:
    if row.within_2 is not None:
        return row.within_2
    if row.within_range is not None:
        return row.within_range
    return abs(row.model - row.published) <= 0.1 * row.published


@pytest.mark.parametrize(
    "value", MALE, ids=lambda v: f"{v.measure}-{v.about}-{v.role}-{v.source.split()[0]}"
)
def test_model_agrees_with_published_value(full_model, value, request):
    reason = _reason(value)
    row = _compared(full_model)[value]
    if row.model is None:
        pytest.skip(row.note)
    if reason:
        request.applymarker(pytest.mark.xfail(strict=False, reason=reason))
    assert _agrees(row), row.line()


def _held_out_and_read(rows) -> list[Comparison]:
    return [r for r in rows if r.role == "held_out" and r.seen and r.within_1 is not None]


def test_most_held_out_values_that_were_read_lie_within_one_spread(full_model):
    rows = _held_out_and_read([*_compared(full_model).values(), *compare_other_sex(full_model)])
    assert len(rows) >= 60
    assert sum(row.within_1 for row in rows) > 0.75 * len(rows)


def test_nine_of_ten_values_with_a_spread_lie_within_one(full_model):
    rows = [*_compared(full_model).values(), *compare_other_sex(full_model)]
    spread = [row for row in rows if row.spread is not None]
    assert len(spread) > 150
    assert sum(row.within_1 is True for row in spread) >= 0.9 * len(spread)


def test_every_row_outside_one_spread_says_why(full_model):
    rows = [*_compared(full_model).values(), *compare_other_sex(full_model)]
    outside = [row for row in rows if row.within_1 is False or row.within_range is False]
    assert [row.line() for row in outside if not row.note] == []


def test_every_disagreement_names_a_row_of_the_table():
    for start, source in DISAGREEMENTS:
        assert any(
            f"{v.measure} {v.about}".startswith(start) and v.source.startswith(source) for v in MALE
        ), (start, source)
