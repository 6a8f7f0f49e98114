"""The presenter: next and back, numbers, blank, pace; and keys that a clicker sends."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from viewer.state.view_state import ViewState
from viewer.talk.presenter import PRESENTER_KEYS, Presenter, clashes
from viewer.talk.scenes import Talk, TalkScene


def talk(count, seconds=2.0):
    return Talk("t", tuple(TalkScene(ViewState(), f"s{k}", seconds=seconds) for k in range(count)))


def typed(presenter, digits):
    index = None
    for digit in digits:
        index = presenter.type_digit(digit)
    return index


def test_next_stays_on_the_last_scene_and_back_on_the_first():
    presenter = Presenter(talk(3))
    assert not presenter.back()
    assert [presenter.next() for _ in range(4)] == [True, True, False, False]
    assert presenter.index == 2
    assert presenter.following is None


def test_going_on_uncovers_a_blank_screen():
    presenter = Presenter(talk(3))
    presenter.blank = "black"
    presenter.next()
    assert presenter.blank == ""


def test_one_digit_goes_at_once_where_no_second_can_follow():
    assert typed(Presenter(talk(9)), "4") == 3
    assert typed(Presenter(talk(19)), "4") == 3


def test_a_first_digit_waits_where_a_second_may_follow():
    presenter = Presenter(talk(19))
    assert typed(presenter, "1") is None
    assert typed(presenter, "7") == 16


def test_a_digit_that_was_waiting_can_be_taken():
    presenter = Presenter(talk(19))
    typed(presenter, "1")
    assert presenter.take_typed() == 0
    assert presenter.take_typed() is None


@given(st.integers(1, 120), st.data())
def test_every_scene_can_be_reached_by_its_number(count, data):
    number = data.draw(st.integers(1, count))
    presenter = Presenter(talk(count))
    index = typed(presenter, str(number))
    if index is None:
        index = presenter.take_typed()
    assert index == number - 1


@given(st.integers(1, 120), st.text("0123456789", max_size=6))
def test_whatever_is_typed_the_scene_exists(count, digits):
    presenter = Presenter(talk(count))
    for digit in digits:
        index = presenter.type_digit(digit)
        if index is None:
            index = presenter.take_typed()
        assert index is None or 0 <= index < count


def test_escape_takes_away_one_thing_at_a_time():
    presenter = Presenter(talk(2))
    presenter.blank, presenter.pen, presenter.spotlight = "black", True, True
    assert presenter.uncover() and not presenter.blank
    assert presenter.uncover() and not presenter.pen
    assert presenter.uncover() and not presenter.spotlight
    assert not presenter.uncover()


def test_the_pace_is_held_in_its_range_and_shortens_what_is_left():
    presenter = Presenter(talk(10))
    assert presenter.seconds_left() == pytest.approx(20)
    presenter.set_pace(2)
    assert presenter.seconds_left() == pytest.approx(10)
    assert presenter.set_pace(100) == 4
    assert presenter.set_pace(0.0001) == 0.25


def test_an_empty_talk_cannot_be_presented():
    with pytest.raises(ValueError, match="without scenes"):
        Presenter(Talk())


def test_no_key_is_given_twice():
    assert clashes() == []


def test_a_clicker_alone_can_give_the_talk():
    does = {key: row.does for row in PRESENTER_KEYS for key in row.keys}
    assert (does["PgDown"], does["PgUp"], does["B"], does["."], does["Esc"]) == (
        "next", "back", "blank", "blank", "stop",
    )  # fmt: skip


def test_every_key_names_something_the_presenting_window_can_do():
    from viewer.panels.presenting import Presenting

    for row in PRESENTER_KEYS:
        assert callable(getattr(Presenting, row.does)), row.does
