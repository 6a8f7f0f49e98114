"""Talk files come back as they went; broken, foreign and newer ones are refused with a reason."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from viewer.state.view_state import VIEWS, Camera, Pin, Sides, ViewState
from viewer.talk import autosave
from viewer.talk.scenes import Talk, TalkScene
from viewer.talk.talk_file import TalkFileError, open_talk, save_talk, talk_from_text, talk_to_json

FULL = Talk(
    "Back lab",
    (
        TalkScene(
            ViewState(
                peeled=Sides(3, 0),
                removed=frozenset({"trapezius_ascending.left"}),
                selection=("b", "a"),
                pins=(Pin((1, 2, 3), "here", "a"),),
                camera=Camera((0, 3000, 0), (0, 0, 0), (0, 0, 1), 300),
                table="left",
            ),
            "Under trapezius",
            "Mind the nerve.\nZweite Zeile – ë",
            "One line",
            12.5,
        ),
        TalkScene(ViewState(), "Whole"),
    ),
)


def test_a_talk_comes_back_as_it_was_saved(tmp_path):
    path = tmp_path / "a.talk"
    save_talk(path, FULL, "0")
    assert open_talk(path) == FULL


def test_a_scene_of_the_plain_view_takes_little_room():
    record = talk_to_json(FULL, "0")["scenes"][1]
    assert record == {"title": "Whole", "state": {}}


text = st.text(st.characters(blacklist_categories=("Cs", "Cc")), min_size=1, max_size=20).filter(
    str.strip
)
states = st.builds(
    lambda depth, hidden, view, labels: ViewState(
        peeled=Sides(depth, 11 - depth), hidden=frozenset(hidden), view=view, labels=labels
    ),
    st.integers(0, 11),
    st.lists(text, max_size=3),
    st.sampled_from(list(VIEWS)),
    st.booleans(),
)
scenes = st.builds(TalkScene, states, text, st.text(max_size=40), text, st.floats(0, 100))


@given(st.builds(Talk, text, st.lists(scenes, max_size=4).map(tuple)))
@settings(max_examples=50, deadline=None)
def test_any_talk_survives_the_way_through_text(talk):
    words = json.dumps(talk_to_json(talk, "0"), ensure_ascii=False)
    assert talk_from_text(words, "x") == talk


@given(st.integers(0, 1200))
@settings(max_examples=60, deadline=None)
def test_a_truncated_file_is_refused_or_whole_never_something_else(cut):
    words = json.dumps(talk_to_json(FULL, "0"))
    short = words[: min(cut, len(words) - 1)]
    with pytest.raises(TalkFileError, match=r"^x "):
        talk_from_text(short, "x")


def changed(**changes):
    return {**talk_to_json(FULL, "0"), **changes}


@pytest.mark.parametrize(
    "record, reason",
    [
        ([], "not a talk"),
        ({"format": "peelback working state", "version": 1}, "not a talk"),
        (changed(version=99), "newer"),
        (changed(version="1"), "names no version"),
        (changed(version=True), "names no version"),
        (changed(scenes={}), "no list of scenes"),
        (changed(scenes=[3]), "scene 1 of x: must be an object"),
        (changed(scenes=[{"title": "a"}]), "holds no state"),
        (changed(scenes=[{"title": 4, "state": {}}]), "title must be text"),
        (changed(scenes=[{"title": "a", "state": {}, "video": 1}]), "unknown field 'video'"),
        (changed(scenes=[{"title": "a", "state": {"peeled": 3}}]), "peeled"),
        (changed(scenes=[{"title": "a", "state": {"look": "neon"}}]), "look"),
        (changed(scenes=[{"title": "a", "state": {"nonsense": 1}}]), "nonsense"),
        (changed(scenes=[{"title": "a", "state": {}, "seconds": "long"}]), "seconds"),
        (changed(scenes=[{"title": "a", "state": {}, "seconds": 1e9}]), "seconds"),
        (changed(scenes=[{"title": "  ", "state": {}}]), "needs a title"),
        (changed(scenes=[{"title": "a", "state": {}}] * 501), "501 scenes"),
        (changed(title=""), "title"),
    ],
)
def test_what_is_wrong_is_said_in_one_line(record, reason):
    with pytest.raises(TalkFileError, match=reason) as refusal:
        talk_from_text(json.dumps(record), "x")
    assert "\n" not in str(refusal.value)


def test_numbers_that_are_none_are_refused():
    words = json.dumps(talk_to_json(FULL, "0")).replace("300", "NaN", 1)
    with pytest.raises(TalkFileError, match="NaN"):
        talk_from_text(words, "x")


def test_a_picture_renamed_to_a_talk_is_refused(tmp_path):
    path = tmp_path / "a.talk"
    path.write_bytes(b"\x89PNG\r\n\x1a\n\xff\xfe\x00")
    with pytest.raises(TalkFileError, match="not a talk"):
        open_talk(path)


def test_a_missing_file_and_a_folder_are_refused(tmp_path):
    for path in (tmp_path / "no.talk", tmp_path):
        with pytest.raises(TalkFileError, match="cannot be read"):
            open_talk(path)


def test_saving_where_one_may_not_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "a.talk"
    save_talk(path, FULL, "0")

    def refuse(*_):
        raise PermissionError(13, "no")

    monkeypatch.setattr("os.replace", refuse)
    with pytest.raises(OSError):
        save_talk(path, Talk("other"), "0")
    assert open_talk(path) == FULL
    assert [p.name for p in tmp_path.iterdir() if p.suffix != ""] == ["a.talk"]


def test_what_was_kept_on_the_side_is_offered_with_the_file_it_came_from(tmp_path):
    assert autosave.recover() == (None, "")
    assert autosave.keep_unsaved(FULL, tmp_path / "b.talk", "0") == ""
    found, message = autosave.recover()
    assert (found.talk, found.file, message) == (FULL, tmp_path / "b.talk", "")
    autosave.forget_unsaved()
    assert autosave.recover() == (None, "")


def test_a_broken_file_on_the_side_is_put_aside_and_said():
    path = autosave.autosave_path()
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text('{"format": "peelback talk", "version": 1, "sce')
    found, message = autosave.recover()
    assert found is None
    assert "broken" in message
    kept = [p for p in path.parent.iterdir() if "broken" in p.name]
    assert kept and kept[0].read_text().startswith('{"format"')
    assert not path.exists()
