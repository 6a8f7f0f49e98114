"""What is shown, and what is said of the rest."""

from dataclasses import replace

import pytest

from tests.fakes import toy_model
from viewer.state.captions import part_titles
from viewer.state.view_state import Sides, ViewState
from viewer.state.visibility import (
    FILM_OPACITY,
    opacities,
    see_through_parts,
    visible_parts,
    what_is_hidden,
)

MODEL = toy_model()
TITLES = part_titles(MODEL)


def test_a_fresh_state_shows_everything_solid():
    assert opacities(MODEL, ViewState()) == dict.fromkeys(MODEL.parts, 1.0)


def test_peeling_one_side_leaves_the_other_whole():
    shown = visible_parts(MODEL, ViewState(peeled=Sides(3, 0)))
    assert "trapezius_transverse.left" not in shown
    assert "rhomboid_major.left" in shown
    assert "trapezius_transverse.right" in shown
    assert "skin.right" in shown


def test_a_median_part_goes_only_with_both_sides():
    assert "sacrum" in visible_parts(MODEL, ViewState(peeled=Sides(10, 0)))
    assert "sacrum" not in visible_parts(MODEL, ViewState(peeled=Sides(10, 10)))


def test_alone_shows_the_part_even_where_it_is_peeled():
    state = ViewState(peeled=Sides(9, 9), alone=frozenset({"rhomboid_major.left"}))
    assert visible_parts(MODEL, state) == {"rhomboid_major.left"}


def test_peek_makes_what_covers_the_selection_see_through():
    state = ViewState(peek=True, selection=("rhomboid_major.left",))
    shown = visible_parts(MODEL, state)
    through = see_through_parts(MODEL, state, shown)
    assert "trapezius_transverse.left" in through
    assert "skin.left" in through
    assert "rhomboid_major.left" not in through
    assert "longissimus_thoracis.left" not in through


def test_peek_without_selection_looks_through_the_outermost_stratum():
    state = ViewState(peek=True, peeled=Sides(2, 0))
    through = see_through_parts(MODEL, state, visible_parts(MODEL, state))
    assert "trapezius_transverse.left" in through
    assert "trapezius_transverse.right" not in through
    assert "skin.right" in through


def test_neighbours_have_a_switch_of_their_own():
    state = ViewState(neighbours=False)
    assert "deltoid.left" not in visible_parts(MODEL, state, frozenset({"deltoid.left"}))


def test_the_strip_is_empty_when_nothing_is_hidden():
    assert what_is_hidden(ViewState(), TITLES) == []


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"peeled": Sides(3, 3)}, "Peeled: strata 0–2, both sides"),
        ({"peeled": Sides(1, 0)}, "Peeled: stratum 0 (skin), left"),
        ({"strata_off": Sides(frozenset({4}), frozenset())}, "Off: intermediate, left"),
        ({"hidden": frozenset({"deltoid.left"})}, "Hidden: Deltoid, left"),
        ({"side_shown": "left"}, "The right side"),
        ({"alone": frozenset({"sacrum"})}, "Only Sacrum"),
    ],
)
def test_the_strip_names_what_is_hidden(changes, words):
    lines = what_is_hidden(replace(ViewState(), **changes), TITLES)
    assert [line.text for line in lines] == [words]


def test_a_state_refuses_a_depth_that_does_not_exist():
    with pytest.raises(ValueError, match="0–11"):
        ViewState(peeled=Sides(12, 0))


def _with_film():
    fat = MODEL.parts["superficial_fascia.left"]
    film = replace(fat, id="deep_fascia.left", entry="deep_fascia", stratum=2)
    return replace(MODEL, parts={**MODEL.parts, film.id: film})


def test_a_film_is_thin_once_its_cover_is_off_and_solid_beneath_it():
    model = _with_film()
    assert opacities(model, ViewState())["deep_fascia.left"] == 1.0
    assert opacities(model, ViewState(peeled=Sides(1, 1)))["deep_fascia.left"] == 1.0
    assert opacities(model, ViewState(peeled=Sides(2, 0)))["deep_fascia.left"] == FILM_OPACITY
    assert opacities(model, ViewState(peeled=Sides(0, 2)))["deep_fascia.left"] == 1.0


def test_a_film_shown_alone_is_solid():
    state = ViewState(peeled=Sides(2, 2), alone=frozenset({"deep_fascia.left"}))
    assert opacities(_with_film(), state) == {"deep_fascia.left": 1.0}
