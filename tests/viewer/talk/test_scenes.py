"""A talk being made: keep, order, write, delete; and every change can be undone."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from viewer.state.view_state import Sides, ViewState
from viewer.talk.scenes import Talk, TalkDesk, TalkScene


def scene(title, depth=0):
    return TalkScene(ViewState(peeled=Sides(depth, depth)), title)


def talk_of(*titles):
    return Talk("t", tuple(scene(t) for t in titles))


def titles(desk):
    return [s.title for s in desk.talk.scenes]


def test_keeping_a_view_puts_it_after_the_chosen_scene_and_chooses_it():
    desk = TalkDesk(talk_of("a", "b"))
    desk.keep(ViewState(), "new")
    assert titles(desk) == ["a", "new", "b"]
    assert desk.chosen == 1


def test_a_scene_moves_up_and_stays_chosen():
    desk = TalkDesk(talk_of("a", "b", "c"))
    desk.move(2, 0)
    assert titles(desk) == ["c", "a", "b"]
    assert desk.chosen == 0


def test_moving_beyond_the_ends_stays_within_the_talk():
    desk = TalkDesk(talk_of("a", "b"))
    desk.move(1, 9)
    assert titles(desk) == ["a", "b"]
    assert desk.undo_name is None


def test_a_deleted_scene_comes_back_by_undo_with_all_it_held():
    kept = TalkScene(ViewState(selection=("x",)), "a", "notes", "line", 3)
    desk = TalkDesk(Talk("t", (kept,)))
    desk.delete()
    assert desk.chosen == -1
    desk.undo()
    assert desk.talk.scenes == (kept,)
    assert desk.chosen == 0


def test_letters_typed_into_one_field_are_one_undo():
    desk = TalkDesk(talk_of("a"))
    for text in ("A", "Ab", "Abc"):
        desk.write("title", text)
    desk.write("line", "x")
    assert desk.undo() == "change line of scene 1"
    assert desk.undo() == "change title of scene 1"
    assert titles(desk) == ["a"]


def test_typing_after_an_undo_does_not_join_what_was_typed_before():
    desk = TalkDesk(talk_of("a"))
    desk.write("title", "b")
    desk.keep(ViewState(), "c")
    desk.undo()
    desk.chosen = 0
    desk.write("title", "d")
    desk.undo()
    assert titles(desk) == ["b"]


def test_a_duplicate_stands_next_to_its_model():
    desk = TalkDesk(talk_of("a", "b"))
    desk.duplicate()
    assert titles(desk) == ["a", "a", "b"]
    assert desk.chosen == 1


def test_a_talk_is_unsaved_until_it_equals_its_file_again():
    desk = TalkDesk(talk_of("a"))
    assert not desk.unsaved
    desk.duplicate()
    assert desk.unsaved
    desk.undo()
    assert not desk.unsaved


@pytest.mark.parametrize(
    "made",
    [
        lambda: TalkScene(ViewState(), " "),
        lambda: TalkScene(ViewState(), "a\nb"),
        lambda: TalkScene(ViewState(), "a", line="x" * 400),
        lambda: TalkScene(ViewState(), "a", seconds=-1),
        lambda: Talk(""),
    ],
)
def test_words_that_cannot_be_shown_are_refused(made):
    with pytest.raises(ValueError):
        made()


OPS = st.lists(
    st.tuples(
        st.sampled_from(["keep", "delete", "duplicate", "move", "write", "update", "undo", "redo"]),
        st.integers(0, 6),
        st.integers(-2, 8),
    ),
    max_size=25,
)


def play(desk, ops):
    for op, a, b in ops:
        count = len(desk.talk.scenes)
        if count:
            desk.chosen = a % count
        if op == "keep":
            desk.keep(ViewState(peeled=Sides(a, a)), f"k{a}{b}")
        elif op in ("undo", "redo"):
            getattr(desk, op)()
        elif count:
            if op == "move":
                desk.move(a % count, b)
            elif op == "write":
                desk.write("title", f"w{a}{b}")
            elif op == "update":
                desk.update(ViewState(peeled=Sides(a, 0)))
            else:
                getattr(desk, op)()
        assert -1 <= desk.chosen < max(len(desk.talk.scenes), 1)
        assert (desk.chosen == -1) == (not desk.talk.scenes)


@given(OPS)
@settings(max_examples=60, deadline=None)
def test_undoing_all_changes_returns_to_the_first_talk_and_redoing_to_the_last(ops):
    first = talk_of("a", "b", "c")
    desk = TalkDesk(first)
    play(desk, ops)
    last = desk.talk
    while desk.redo():
        pass
    last = desk.talk
    while desk.undo():
        pass
    assert desk.talk == first
    while desk.redo():
        pass
    assert desk.talk == last


@given(st.integers(1, 8), st.integers(0, 7), st.integers(-3, 12))
def test_moving_keeps_every_scene_and_the_order_of_the_others(count, index, to):
    index %= count
    talk = Talk("t", tuple(scene(str(k)) for k in range(count)))
    moved = [s.title for s in talk.moved(index, to).scenes]
    assert sorted(moved) == sorted(s.title for s in talk.scenes)
    rest = [t for t in moved if t != str(index)]
    assert rest == [str(k) for k in range(count) if k != index]
    assert moved.index(str(index)) == min(max(to, 0), count - 1)
