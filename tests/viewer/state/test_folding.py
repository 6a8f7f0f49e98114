"""What is folded is state like anything else: undone, ordered, told, and out of the way."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meshes.catalogue.folds import Laid
from meshes.errors import PeelbackError
from tests.fakes import toy_model
from viewer.state import commands, fold_commands
from viewer.state.folding import is_folded, moved_parts, share_of
from viewer.state.rail import folded_strata, rail_bands
from viewer.state.session import Session
from viewer.state.view_state import ViewState
from viewer.state.visibility import visible_parts, what_is_hidden

NAMES = ("trapezius.left", "trapezius.right", "rhomboids.left", "latissimus.right")


def test_folding_and_laying_back_are_undone_one_by_one():
    session = Session()
    session.do(fold_commands.fold_to(["trapezius.left"], 1.0))
    session.do(fold_commands.fold_to(["trapezius.left"], 0.0))
    assert session.state.folds == ()
    assert session.undo() == "lay back Trapezius, left"
    assert share_of(session.state, "trapezius.left") == 1.0
    session.undo()
    assert session.state == ViewState()


def test_a_dragged_slider_is_one_entry():
    session = Session()
    for share in (0.2, 0.4, 0.7):
        session.do(fold_commands.fold_to(["trapezius.left"], share, dragging=True))
    session.undo()
    assert session.state.folds == ()


@given(st.lists(st.tuples(st.sampled_from(NAMES), st.sampled_from([0.0, 0.3, 1.0])), max_size=12))
def test_any_row_of_folds_undoes_to_the_start(row):
    session = Session()
    for fold_id, share in row:
        session.do(fold_commands.fold_to([fold_id], share))
        names = [laid.fold_id for laid in session.state.folds]
        assert len(names) == len(set(names))
        assert share_of(session.state, fold_id) == share
    while session.undo():
        pass
    assert session.state == ViewState()


def test_a_folded_part_is_still_shown_and_told():
    state = ViewState(folds=(Laid("trapezius.left"),))
    assert "trapezius_transverse.left" in visible_parts(toy_model(), state)
    assert is_folded(state, "accessory_nerve.left")
    assert not is_folded(state, "trapezius_transverse.right")
    assert "accessory_nerve.left" in moved_parts(state)
    (line,) = what_is_hidden(state, {})
    assert line.text == "Folded back: Trapezius, left"
    assert commands.restore(line.restore).change(state) == ViewState()


def test_a_sheet_with_a_window_in_it_is_not_out_of_the_way():
    state = ViewState(folds=(Laid("deep_fascia.left"),))
    assert not is_folded(state, "deep_fascia.left")
    assert "deep_fascia.left" in moved_parts(state)


def test_columns_drawn_aside_are_told_so_and_not_done():
    state = ViewState(folds=(Laid("trapezius.left"), Laid("erector_spinae.left")))
    assert not is_folded(state, "longissimus_thoracis.left")
    (line,) = what_is_hidden(state, {})
    assert line.text == "Folded back: Trapezius, left; Drawn aside: Erector spinae, left"
    assert fold_commands.fold_to(["erector_spinae.left"], 1.0).name.startswith("draw aside")


def test_half_lifted_is_not_out_of_the_way():
    assert not is_folded(
        ViewState(folds=(Laid("trapezius.left", 0.4),)), "trapezius_ascending.left"
    )


def test_the_rail_knows_the_stratum_from_which_a_flap_lies_back():
    state = ViewState(folds=(Laid("trapezius.left"),))
    folded = folded_strata(state, toy_model())
    assert folded == {("left", 2)}
    bands = rail_bands([5.0] * 11, state, 600.0, folded=folded)
    assert [(b.folded_left, b.folded_right) for b in bands][2] == (True, False)
    assert not any(b.off_left for b in bands)


def test_peeling_outward_lays_flaps_back():
    session = Session(ViewState(folds=(Laid("trapezius.left"), Laid("trapezius.right"))))
    model = toy_model()
    session.do(commands.peel_to(3, "left", model))
    assert len(session.state.folds) == 2
    session.do(commands.peel_to(0, "left", model))
    assert [laid.fold_id for laid in session.state.folds] == ["trapezius.right"]


def test_bring_all_back_unfolds():
    state = ViewState(folds=(Laid("trapezius.left", 0.3),))
    assert commands.bring_all_back().change(state).folds == ()


@pytest.mark.parametrize("bad", [("trapezius", 1.0), ("trapezius.left", -0.1)])
def test_an_impossible_flap_is_refused(bad):
    with pytest.raises(PeelbackError):
        Laid(*bad)
