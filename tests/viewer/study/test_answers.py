"""Typed answers: all names count, small slips are forgiven, sides and levels are not."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meshes.catalogue import load_catalogue
from meshes.catalogue.names import names_of
from viewer.study.answers import judge

CATALOGUE = load_catalogue()
MUSCLES = [row for row in CATALOGUE.of_kind("muscle") if not row.levels]


@pytest.mark.parametrize(
    "typed",
    ["splenius capitis", "Spelnius capitis", "Musculus splenius capitis", "m. splenius capitis"],
)
def test_a_small_slip_or_the_latin_counts(typed):
    assert judge(typed, ["splenius capitis", "musculus splenius capitis"]).right


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("splenius cervicis", "splenius capitis"),
        ("rhomboid minor", "rhomboid major"),
        ("serratus posterior inferior", "serratus posterior superior"),
        ("capitis", "splenius capitis"),
        ("teres minor", "teres major"),
    ],
)
def test_a_look_alike_name_is_wrong(typed, name):
    assert not judge(typed, [name]).right


@pytest.mark.parametrize(
    "typed, name",
    [
        ("rhomboid", "rhomboid major"),
        ("Musculus rhomboideus", "Musculus rhomboideus minor"),
        ("serratus", "serratus posterior superior"),
        ("serratus posterior", "serratus posterior inferior"),
    ],
)
def test_half_a_name_is_close_and_says_what_it_leaves_open(typed, name):
    verdict = judge(typed, (name,))
    assert not verdict.right and verdict.near
    assert "leaves open which one" in verdict.words and name in verdict.words


def test_the_end_of_a_name_alone_leaves_more_open_than_which_one():
    assert "leaves open" not in judge("major", ("rhomboid major",)).words
    assert not judge("posterior", ("serratus posterior superior",)).near


def test_a_wrong_side_is_told():
    verdict = judge("left rhomboid major", ["right rhomboid major"])
    assert not verdict.right
    assert "side" in verdict.words


def test_a_wrong_level_is_told():
    verdict = judge("rib 8", ["rib 7"])
    assert not verdict.right
    assert "level" in verdict.words
    assert judge("seventh rib", ["rib 7"]).right
    assert judge("t 7", ["T7"]).right


def test_an_empty_answer_is_wrong():
    assert not judge("  ", ["trapezius"]).right


@pytest.mark.parametrize("row", MUSCLES, ids=lambda row: row.id)
def test_every_name_of_a_muscle_is_accepted(row):
    names = names_of(row.id, CATALOGUE)
    for name in names:
        assert judge(name, names).right, name


@pytest.mark.parametrize("row", MUSCLES, ids=lambda row: row.id)
def test_no_other_muscle_passes_for_it(row):
    names = names_of(row.id, CATALOGUE)
    for other in MUSCLES:
        if other is not row and other.english not in names:
            assert not judge(other.english, names).right, other.english


@given(st.text(max_size=60))
def test_anything_can_be_typed(text):
    judge(text, ["rhomboid major", "musculus rhomboideus major"])
