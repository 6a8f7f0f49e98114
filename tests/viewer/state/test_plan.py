"""The step line: what is done, allowed and refused."""

import pytest

from tests.fakes import toy_model
from viewer.state import commands
from viewer.state.plan import Plan, Step
from viewer.state.session import Session
from viewer.state.view_state import ViewState
from viewer.state.visibility import visible_parts

MODEL = toy_model()
PLAN = Plan(
    [
        Step("feel", "Feel the landmarks"),
        Step("skin", "Turn the skin flaps", ("feel",), ("skin",)),
        Step("fat", "Take off the superficial fascia", ("skin",), ("superficial_fascia",)),
        Step("free", "Free trapezius", ("fat",)),
        Step("trapezius", "Fold trapezius", ("free",), ("trapezius",)),
        Step("bundle", "Clean the bundle", ("trapezius",)),
        Step("rhomboids", "Fold the rhomboids", ("bundle",), ("rhomboids",)),
    ]
)


def statuses(state, side="left"):
    return {line.step.id: line.status for line in PLAN.lines(MODEL, state, side)}


def test_only_the_first_step_is_allowed_on_a_whole_back():
    assert [i for i, s in statuses(ViewState()).items() if s == "allowed"] == ["feel"]


def test_a_refusal_says_what_must_come_first():
    assert "Free trapezius" in PLAN.refusal("trapezius", MODEL, ViewState(), "left")


def test_a_step_removes_its_parts_on_its_side_only():
    session = Session()
    for step in ("feel", "skin"):
        session.do(PLAN.do_step(step, MODEL, "left"))
    shown = visible_parts(MODEL, session.state)
    assert "skin.left" not in shown
    assert "skin.right" in shown
    assert statuses(session.state, "left")["fat"] == "allowed"
    assert statuses(session.state, "right")["fat"] == "refused"


def test_peeling_by_the_rail_counts_as_doing_the_steps():
    session = Session()
    session.do(commands.peel_to(3, "left", MODEL))
    done = PLAN.done(MODEL, session.state, "left")
    assert {"feel", "skin", "fat", "free"} <= done
    assert "rhomboids" not in done


def test_pulling_the_rail_back_undoes_the_steps():
    session = Session()
    for step in ("feel", "skin", "fat", "free", "trapezius", "bundle", "rhomboids"):
        session.do(PLAN.do_step(step, MODEL, "both"))
    assert PLAN.next_step(MODEL, session.state, "left") is None
    session.do(commands.peel_to(1, "both", MODEL))
    session.do(commands.peel_to(0, "both", MODEL))
    done = PLAN.done(MODEL, session.state, "left")
    assert "bundle" not in done
    assert "skin" not in done


def test_laying_a_step_back_lays_back_all_that_needs_it():
    session = Session()
    for step in ("feel", "skin", "fat", "free", "trapezius", "bundle", "rhomboids"):
        session.do(PLAN.do_step(step, MODEL, "left"))
    session.do(PLAN.undo_step("trapezius", MODEL, "left"))
    shown = visible_parts(MODEL, session.state)
    assert "trapezius_transverse.left" in shown
    assert "rhomboid_major.left" in shown
    assert "skin.left" not in shown


def test_laying_a_step_back_works_when_the_rail_did_it():
    session = Session()
    session.do(commands.peel_to(4, "left", MODEL))
    session.do(PLAN.undo_step("rhomboids", MODEL, "left"))
    shown = visible_parts(MODEL, session.state)
    assert "rhomboid_major.left" in shown
    assert "trapezius_transverse.left" not in shown


def test_anyway_is_noted_in_the_state():
    session = Session()
    session.do(PLAN.do_step("trapezius", MODEL, "left"))
    assert session.state.overridden.left == {"trapezius"}
    assert "trapezius_transverse.left" not in visible_parts(MODEL, session.state)


def test_a_plan_refuses_a_need_that_is_not_in_it():
    with pytest.raises(ValueError, match="not in the plan"):
        Plan([Step("a", "A", ("b",))])


def test_a_plan_refuses_a_circle():
    with pytest.raises(ValueError, match="needs itself"):
        Plan([Step("a", "A", ("b",)), Step("b", "B", ("a",))])
