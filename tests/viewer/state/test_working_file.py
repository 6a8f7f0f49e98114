"""Saving and opening a working state."""

import json
import re
from dataclasses import fields

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meshes.catalogue.folds import Laid
from viewer.state.view_state import Camera, Pin, Sides, ViewState
from viewer.state.working_file import (
    WorkingFileError,
    open_working_file,
    save_working_file,
    state_from_json,
    state_to_json,
    write_atomically,
)

FULL = ViewState(
    peeled=Sides(3, 0),
    strata_off=Sides(frozenset({5}), frozenset()),
    removed=frozenset({"trapezius_transverse.left", "a_part_of_a_later_version"}),
    ticked=Sides(frozenset({"T4"}), frozenset()),
    hidden=frozenset({"deltoid.left"}),
    folds=(Laid("trapezius.left", 0.5), Laid("a_fold_of_a_later_version.right")),
    see_through=frozenset({"skin.left"}),
    selection=("rhomboid_major.left", "sacrum"),
    measure=((1.0, 2.0, 3.0), (4.0, 5.0, 6.0)),
    pins=(Pin((0.1, 0.2, 0.3), "tendon — “here”", "sacrum"),),
    view="superior",
    camera=Camera((0, 900, 1), (0, 0, 1), (0, 0, 1), 333.25),
)


def test_what_is_saved_is_what_is_opened(tmp_path):
    path = tmp_path / "day 1.peelback"
    save_working_file(path, FULL, {"sex": "female"}, "preview", "0.1.0")
    opened = open_working_file(path)
    assert opened.state == FULL
    assert opened.body == {"sex": "female"}
    assert opened.detail == "preview"


@given(
    st.builds(
        ViewState,
        peeled=st.builds(Sides, st.integers(0, 11), st.integers(0, 11)),
        hidden=st.frozensets(st.text(max_size=8), max_size=4),
        look=st.sampled_from(["by_kind", "as_fixed", "high_contrast"]),
        label_density=st.floats(0, 1),
        selection=st.lists(st.text(max_size=5), max_size=3).map(tuple),
    )
)
def test_any_state_survives_json(state):
    assert state_from_json(json.loads(json.dumps(state_to_json(state)))) == state


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "broken"),
        ('{"format": "peelback wor', "broken"),
        ("[1, 2]", "not a working state"),
        ('{"format": "something else", "version": 1}', "not a working state"),
        ('{"format": "peelback working state", "version": 99, "state": {}}', "newer"),
        ('{"format": "peelback working state", "version": 1, "state": {"peeled": 3}}', "peeled"),
        ('{"format": "peelback working state", "version": 1, "state": {"glow": 1}}', "glow"),
        (
            '{"format": "peelback working state", "version": 1,'
            ' "state": {"peeled": {"left": 40, "right": 0}}}',
            "0–11",
        ),
        (
            '{"format": "peelback working state", "version": 1, "state": {"hidden": "skin"}}',
            "hidden",
        ),
        ("[" * 100_000, "broken"),
    ],
)
def test_a_broken_or_foreign_file_is_refused_in_one_line(tmp_path, text, words):
    path = tmp_path / "x.peelback"
    path.write_text(text)
    with pytest.raises(WorkingFileError, match=words) as caught:
        open_working_file(path)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize("field", [f.name for f in fields(ViewState)])
@pytest.mark.parametrize("value", [7.5, "x", True, [1, [2]], [None], {"left": 1}, None])
def test_a_field_of_the_wrong_kind_is_refused_in_words_and_not_in_pythons(field, value):
    try:
        state_from_json({field: value})
    except WorkingFileError as error:
        words = str(error)
        assert "\n" not in words and field in words
        assert not re.search(r"object (is|has)|subscript|argument|NoneType|\bdict\b", words), words


def test_a_picture_is_refused(tmp_path):
    path = tmp_path / "x.peelback"
    path.write_bytes(b"\x89PNG\r\n\x1a\n\xff\xfe")
    with pytest.raises(WorkingFileError, match="not a working state"):
        open_working_file(path)


def test_a_file_that_cannot_be_replaced_stays_as_it_was(tmp_path, monkeypatch):
    path = tmp_path / "x.json"
    path.write_text("old")

    def broken(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("viewer.state.working_file.os.replace", broken)
    with pytest.raises(OSError, match="No space"):
        write_atomically(path, "new")
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]
