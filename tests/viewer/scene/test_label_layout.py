import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from viewer.scene.label_layout import Anchor, lay_out, segments_cross, wanted_count

SIZE = (1000, 700)


def measure(text):
    return 7.0 * len(text), 17.0


def overlap(a, b):
    return (
        a.left < b.left + b.width
        and b.left < a.left + a.width
        and a.top < b.top + b.height
        and b.top < a.top + a.height
    )


def leader_enters(label, other):
    """Whether a leader runs through another label's box (sampled)."""
    steps = np.linspace(0, 1, 101)[:, None]
    corners = np.array(label.leader)
    way = [a + steps * (b - a) for a, b in itertools.pairwise(corners)]
    for x, y in np.concatenate(way):
        if other.left < x < other.left + other.width and other.top < y < other.top + other.height:
            return True
    return False


@st.composite
def many_anchors(draw):
    places = draw(
        st.lists(
            st.tuples(st.floats(0, SIZE[0]), st.floats(0, SIZE[1]), st.floats(1, 1e5)),
            max_size=70,
        )
    )
    return [
        Anchor(f"p{i}", "name " + "x" * (i * 7 % 23), x, y, weight)
        for i, (x, y, weight) in enumerate(places)
    ]


@settings(max_examples=60, deadline=None)
@given(many_anchors(), st.floats(0, 1), st.booleans())
def test_labels_never_overlap_nor_leave_the_picture(anchors, density, blank):
    labels = lay_out(anchors, SIZE, measure, density, blank)
    assert len(labels) <= wanted_count(density)
    for a, b in itertools.combinations(labels, 2):
        assert not overlap(a, b)
    for label in labels:
        assert label.left >= 0 and label.left + label.width <= SIZE[0]
        assert label.top >= 0 and label.top + label.height <= SIZE[1]
    for a, b in itertools.permutations(labels, 2):
        assert not leader_enters(a, b)


def test_leaders_of_a_usual_picture_do_not_cross():
    anchors = [
        Anchor(f"p{i}", f"muscle {i}", 400 + 37 * (i * 5 % 11), 60 + 47 * (i * 7 % 12), i + 1.0)
        for i in range(24)
    ]
    labels = lay_out(anchors, SIZE, measure, 1.0)
    assert len(labels) == 24
    for a, b in itertools.combinations(labels, 2):
        assert not segments_cross(a.bend, a.anchor, b.bend, b.anchor)


def test_density_keeps_what_is_seen_most():
    anchors = [Anchor(f"p{i}", f"n{i}", 500, 20 + 9 * i, weight=float(i)) for i in range(60)]
    few = lay_out(anchors, SIZE, measure, 0.1)
    assert {label.id for label in few} == {"p59", "p58", "p57", "p56", "p55"}
    assert lay_out(anchors, SIZE, measure, 0.0) == []


def test_blank_mode_numbers_in_reading_order_and_gives_nothing_away():
    anchors = [
        Anchor("deltoid", "deltoid", 300, 100),
        Anchor("trapezius", "trapezius", 320, 300),
        Anchor("latissimus", "latissimus", 700, 200),
    ]
    labels = lay_out(anchors, SIZE, measure, 1.0, blank=True)
    assert [label.text.split()[0] for label in labels] == ["1", "2", "3"]
    assert not any(label.id in label.text for label in labels)
    assert [label.id for label in labels] == ["deltoid", "trapezius", "latissimus"]


def test_pins_keep_their_words_in_blank_mode():
    anchors = [
        Anchor("deltoid", "deltoid", 300, 100),
        Anchor("pin 0", "ask about this", 320, 200, own_words=True),
        Anchor("trapezius", "trapezius", 330, 300),
    ]
    labels = lay_out(anchors, SIZE, measure, 1.0, blank=True)
    assert [label.text.split()[0] for label in labels] == ["1", "ask", "2"]


def test_density_out_of_range_is_told():
    with pytest.raises(ValueError, match=r"0\.\.1, got 3"):
        lay_out([], SIZE, measure, 3)
