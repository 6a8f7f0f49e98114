"""The rapid review follows the plan, names each part once, and lasts as long as asked."""

import pytest

from viewer.state.captions import neighbours_of
from viewer.state.plan import plan_with_folds
from viewer.state.visibility import visible_parts
from viewer.talk.review import review_stops, review_talk


@pytest.fixture(scope="module")
def plan(preview_model):
    return plan_with_folds(preview_model.catalogue)


def test_it_begins_with_the_skin_and_ends_in_the_canal(plan, preview_model):
    stops = review_stops(plan, preview_model)
    assert stops[0].name.startswith("Skin")
    assert preview_model.parts[stops[-1].ids[0]].kind == "canal"
    assert len(stops) >= 40


def test_every_name_and_every_part_comes_once(plan, preview_model):
    stops = review_stops(plan, preview_model)
    assert len({s.name for s in stops}) == len(stops)
    ids = [i for s in stops for i in s.ids]
    assert len(set(ids)) == len(ids)


def test_steps_come_in_plan_order(plan, preview_model):
    order = [step.title for step in plan.steps]
    places = [order.index(s.step) for s in review_stops(plan, preview_model)]
    assert places == sorted(places)


def test_every_muscle_that_the_plan_takes_away_is_named(plan, preview_model):
    named = {i for s in review_stops(plan, preview_model) for i in s.ids}
    for step in plan.steps:
        for i in plan.removed_by(step, preview_model, "left"):
            if preview_model.parts[i].kind == "muscle":
                assert i in named, i


@pytest.mark.parametrize("side", ["left", "right", "both"])
def test_each_scene_shows_the_part_it_names_and_leaves_the_other_side(side, plan, preview_model):
    talk = review_talk(plan, preview_model, side, 60)
    edge = neighbours_of(preview_model)
    for scene in talk.scenes:
        shown = visible_parts(preview_model, scene.state, edge)
        assert set(scene.state.selection) <= shown, scene.title
    if side != "both":
        other = "right" if side == "left" else "left"
        assert f"trapezius_ascending.{other}" in shown
        assert not any(i.endswith(f".{other}") for s in talk.scenes for i in s.state.selection)


def test_what_earlier_steps_took_is_gone_when_the_cord_is_named(plan, preview_model):
    talk = review_talk(plan, preview_model)
    cord = next(s for s in talk.scenes if s.title == "Spinal cord")
    shown = visible_parts(preview_model, cord.state, neighbours_of(preview_model))
    assert not shown & {"vertebra_T9", "ligamentum_flavum_T9_T10", "spinal_dura_mater"}
    assert not any(i.startswith(("multifidus", "skin", "greater_occipital")) for i in shown)


def test_threads_are_looked_at_from_near_and_sheets_from_where_all_is_seen(plan, preview_model):
    talk = review_talk(plan, preview_model)
    scale = {s.title: s.state.camera and s.state.camera.parallel_scale for s in talk.scenes}
    assert scale["Filum terminale"] < 220.0 and scale["Cauda equina"] < 220.0
    assert scale["Rectus capitis posterior minor"] < 150.0
    assert scale["Trapezius"] is None and scale["Spinal dura mater"] is None


@pytest.mark.parametrize("seconds", [30, 60, 120])
def test_it_lasts_as_long_as_asked(seconds, plan, preview_model):
    talk = review_talk(plan, preview_model, "both", seconds)
    assert sum(s.seconds for s in talk.scenes) == pytest.approx(seconds)


def test_no_time_at_all_is_refused(plan, preview_model):
    with pytest.raises(ValueError, match="seconds must lie in"):
        review_talk(plan, preview_model, "both", 1)
