"""The moving picture has the full look where the machine can draw it, and never flickers."""

from hypothesis import given
from hypothesis import strategies as st

from viewer.scene.frame_budget import (
    FRAMES_BEFORE_LOWERING,
    LOWER_ABOVE_MS,
    MOST_PATIENCE,
    RAISE_BELOW_MS,
    FrameBudget,
)


class Machine:
    """A fake machine: so many ms a picture of either look; its clock moves only by drawing."""

    def __init__(self, coarse_ms, full_ms):
        self.coarse_ms, self.full_ms = coarse_ms, full_ms
        self.budget = FrameBudget()
        self.clock_ms = 0.0
        self.looks = []

    def _draw(self, ms):
        began = self.clock_ms
        self.clock_ms += ms
        return self.clock_ms - began

    def turn(self, frames=30):
        """Turn the body, then let it rest; returns the looks of the moving pictures."""
        looks = []
        for _ in range(frames):
            looks.append(self.budget.full)
            self.budget.moved(self._draw(self.full_ms if self.budget.full else self.coarse_ms))
        self.budget.rested(self._draw(self.full_ms))
        self.looks.append(looks)
        return looks


def test_first_movement_is_coarse_on_any_machine():
    assert not any(Machine(1, 1).turn())


def test_a_fast_card_has_the_full_look_from_the_second_movement_on():
    card = Machine(2, 5)
    card.turn()
    assert all(all(card.turn()) for _ in range(5))


def test_software_drawing_stays_coarse():
    slow = Machine(20, 300)
    assert not any(any(slow.turn()) for _ in range(20))


def test_a_screen_that_waits_for_60_hz_is_no_hindrance():
    card = Machine(16.7, 16.7)
    card.turn()
    assert all(card.turn())


def test_full_look_that_is_too_slow_in_motion_is_given_up_within_a_few_frames():
    # At rest quick (nothing seen through), in motion slow: another program has the card.
    machine = Machine(5, 10)
    machine.turn()
    machine.full_ms = 80
    looks = machine.turn()
    assert looks.index(False) <= FRAMES_BEFORE_LOWERING
    assert not any(looks[looks.index(False) :])


def test_one_slow_frame_in_many_does_not_lower_the_look():
    budget = FrameBudget()
    budget.rested(5)
    for k in range(40):
        budget.moved(45.0 if k == 20 else 8.0)
    assert budget.full


def test_a_look_given_up_is_tried_again_ever_more_rarely():
    budget = FrameBudget()
    waits = []
    for _ in range(9):
        rests = 0
        while not budget.full:
            budget.rested(RAISE_BELOW_MS - 1)
            rests += 1
        waits.append(rests)
        for _ in range(FRAMES_BEFORE_LOWERING):
            budget.moved(LOWER_ABOVE_MS + 50)
        assert not budget.full
    assert waits == sorted(waits)
    assert waits[0] == 1 and waits[-1] == MOST_PATIENCE


@given(
    st.lists(
        st.tuples(st.lists(st.floats(0, 200), min_size=1, max_size=40), st.floats(0, 200)),
        max_size=30,
    )
)
def test_look_changes_at_most_once_in_a_movement_and_only_downward(movements):
    budget = FrameBudget()
    for frames, rest in movements:
        looks = []
        for ms in frames:
            looks.append(budget.full)
            budget.moved(ms)
        looks.append(budget.full)
        changes = [(a, b) for a, b in zip(looks, looks[1:]) if a != b]
        assert changes in ([], [(True, False)])
        budget.rested(rest)
