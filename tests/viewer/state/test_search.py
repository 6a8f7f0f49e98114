"""Finding parts by any of their names."""

import pytest

from tests.fakes import toy_model
from viewer.state.captions import caption_of, search_index, tree_of_parts
from viewer.state.search import find
from viewer.state.view_state import Sides, ViewState

MODEL = toy_model()
INDEX = search_index(MODEL)


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("rhomboid major", "Rhomboid major"),
        ("rhomboideus major", "Rhomboid major"),
        ("RHOMBOID MAJ", "Rhomboid major"),
        ("lat dor", "Latissimus dorsi"),
        ("latisimus dorsi", "Latissimus dorsi"),
        ("levator scapula", "Levator scapulae"),
        ("sacrum", "Sacrum"),
    ],
)
def test_a_part_is_found_by_any_of_its_names(typed, first):
    assert find(typed, INDEX)[0].named.title == first


def test_left_in_the_text_chooses_the_side():
    assert find("left rhomboid minor", INDEX)[0].named.ids == ("rhomboid_minor.left",)


def test_a_group_is_found_with_all_its_parts():
    ids = next(f for f in find("trapezius", INDEX) if "group" in f.named.title).named.ids
    assert len(ids) == 6


def test_nonsense_finds_nothing():
    assert find("xyzzy", INDEX) == []
    assert find("   ", INDEX) == []


def test_a_caption_says_name_side_stratum_and_attachments():
    caption = caption_of(MODEL.parts["rhomboid_major.right"], MODEL)
    assert caption.title == "Rhomboid major, right"
    assert caption.latin == "musculus rhomboideus major"
    assert "stratum 3" in caption.place
    assert dict(caption.lines)["Attachments"]


def test_a_caption_says_when_a_part_was_taken_off():
    state = ViewState(peeled=Sides(5, 0))
    part = MODEL.parts["rhomboid_major.left"]
    assert "taken off" in caption_of(part, MODEL, state).place
    twin = MODEL.parts["rhomboid_major.right"]
    assert "taken off" not in caption_of(twin, MODEL, state).place


def test_the_tree_holds_every_part_once():
    ids = [
        i
        for _, regions in tree_of_parts(MODEL.parts.values(), MODEL.catalogue)
        for _, rows in regions
        for _, twins in rows
        for i in twins
    ]
    assert sorted(ids) == sorted(MODEL.parts)
