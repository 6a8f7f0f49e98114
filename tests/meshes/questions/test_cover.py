"""What lies over what, against boxes worked by hand and against straight ladders."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.catalogue.plan import load_plan
from meshes.errors import PeelbackError
from meshes.model import Part
from meshes.questions.cover import START_MM, Layers, cast_layers, layers_of
from meshes.questions.expose import removed_parts
from meshes.questions.outward import inward_rays
from meshes.questions.probe import Probe
from meshes.questions.rays import RayIndex
from tests.fakes import toy_model


def _box(part_id: str, low, high, kind: str = "muscle") -> Part:
    low, high = np.asarray(low, float), np.asarray(high, float)
    mesh = trimesh.creation.box(high - low)
    mesh.apply_translation((low + high) / 2)
    return Part(part_id, part_id, kind, 2, "", mesh)


def _model(*parts: Part):
    return replace(toy_model(), parts={part.id: part for part in parts})


@pytest.fixture(scope="module")
def stack():
    """A flat skin, a cover over the left half of a plate, and the plate; seen from behind."""
    return _model(
        _box("plate", (-40, 0, -40), (40, 4, 40)),
        _box("cover", (0, 10, -40), (40, 13, 40)),
        _box("strap", (-40, 6, -10), (40, 8, 10)),
    )


@pytest.fixture(scope="module")
def toy_layers() -> Layers:
    return cast_layers(toy_model(), 4.0)


@pytest.fixture(scope="module")
def preview_layers(preview_model) -> Layers:
    return layers_of(preview_model)


def test_shares_of_stacked_plates_are_as_worked_by_hand(stack):
    layers = cast_layers(stack, 1.0)
    rows = {row.part_id: row for row in layers.covers("plate")}
    assert list(rows) == ["cover", "strap"]
    assert rows["cover"].share == pytest.approx(0.5, abs=0.01)
    assert rows["strap"].share == pytest.approx(0.25, abs=0.01)
    # Under the cover the strap lies next to the plate, beside it the cover does.
    assert rows["cover"].next_share == pytest.approx(0.375, abs=0.01)
    assert rows["strap"].next_share == pytest.approx(0.25, abs=0.01)
    assert rows["cover"].thickness_mm == pytest.approx(3, abs=1e-3)
    assert rows["cover"].gap_mm == pytest.approx(6, abs=1e-3)
    assert layers.in_view("plate") == pytest.approx(0.375, abs=0.01)
    assert layers.area_cm2("plate") == pytest.approx(64, rel=0.01)


def test_what_is_taken_away_covers_no_more(stack):
    layers = cast_layers(stack, 1.0)
    assert layers.in_view("plate", {"plate", "strap"}) == pytest.approx(0.75, abs=0.01)
    assert layers.in_view("plate", {"plate"}) == 1.0
    assert layers.covers("plate", {"plate"}) == ()


def test_parts_asked_about_as_one_do_not_cover_one_another(stack):
    layers = cast_layers(stack, 1.0)
    together = {row.part_id for row in layers.covers(["plate", "strap"])}
    assert together == {"cover"}


def test_a_folded_part_covers_where_it_lies_now(stack):
    layers = cast_layers(stack, 1.0)
    turned = stack.parts["cover"].mesh.copy()
    turned.apply_translation((-40, 20, 0))
    folded = layers.folded({"cover": turned})
    rows = {row.part_id: row for row in folded.covers("plate")}
    assert rows["cover"].share == pytest.approx(0.5, abs=0.01)
    assert rows["cover"].gap_mm == pytest.approx(26, abs=1e-3)
    # It stands off the body now: outside everything, hence nothing lies over it.
    assert folded.in_view("cover") == 1.0
    half = stack.parts["cover"].mesh.copy()
    half.apply_translation((20, 0, 0))
    assert layers.folded({"cover": half}).in_view("plate", {"plate", "cover"}) == pytest.approx(
        0.75, abs=0.01
    )
    assert layers.folded({"cover": None}).in_view("plate") == pytest.approx(0.75, abs=0.01)
    # The layers that were folded from stay as they were.
    assert layers.in_view("plate") == pytest.approx(0.375, abs=0.01)


def test_rays_follow_the_body_round_the_flank():
    ring = trimesh.creation.annulus(r_min=98, r_max=100, height=200, sections=96)
    core = trimesh.creation.cylinder(radius=50, height=200, sections=96)
    model = _model(
        Part("skin", "skin", "skin", 0, "", ring), Part("core", "core", "bone", 9, "", core)
    )
    index = RayIndex(
        np.concatenate([ring.vertices, core.vertices]),
        np.concatenate([ring.faces, core.faces + len(ring.vertices)]),
    )
    rays = inward_rays(model, index, 4.0)
    on_side = np.abs(rays.origins[:, 2]) < 60
    outward = rays.origins[on_side, :2] / np.linalg.norm(
        rays.origins[on_side, :2], axis=1, keepdims=True
    )
    assert np.all(np.einsum("ij,ij->i", outward, -rays.directions[on_side, :2]) > 0.99)
    # Tubes draw together: halfway to the axis they have half the area.
    ray = np.nonzero(np.abs(rays.origins[:, 2]) < 60)[0]
    on_skin = rays.area(ray, np.full(len(ray), START_MM)).sum()
    halfway = rays.area(ray, np.full(len(ray), START_MM + 50.0)).sum()
    assert len(ray) > 1000
    assert halfway / on_skin == pytest.approx(0.5, abs=0.01)


def test_the_graph_says_the_same_as_single_questions(toy_layers):
    visible = {i for i in toy_layers.ids if not i.startswith(("skin", "superficial", "cutaneous"))}
    graph = toy_layers.graph(visible)
    shares = graph.shares_in_view()
    for target in ("rhomboid_major.left", "scapula.right", "spinal_cord", "rib_7.left"):
        assert shares[target] == pytest.approx(toy_layers.in_view(target, visible), abs=1e-9)
        for row in toy_layers.covers(target, visible):
            assert graph.share(row.part_id, target) == pytest.approx(row.share, abs=1e-9)


def test_depth_order_comes_from_geometry_and_ignores_groups(toy_layers):
    order = [i for i in toy_layers.graph().depth_order() if i.endswith(".left")]
    places = [
        order.index(f"{name}.left")
        for name in ("skin", "superficial_fascia", "trapezius_ascending", "rhomboid_major")
    ]
    assert places == sorted(places)
    # Scapular muscles would stand elsewhere by group; depth asks only where they lie.
    assert order.index("rhomboid_major.left") < order.index("serratus_posterior_superior.left")


def test_twins_are_covered_alike(preview_layers):
    for name in ("rhomboid_major", "supraspinatus", "multifidus_lumborum"):
        left, right = (
            {
                row.part_id.rsplit(".", 1)[0]: row.share
                for row in preview_layers.covers(f"{name}.{side}")
                if row.part_id.endswith(f".{side}")
            }
            for side in ("left", "right")
        )
        for part in left.keys() | right.keys():
            assert left.get(part, 0) == pytest.approx(right.get(part, 0), abs=0.02)


def test_layers_agree_with_ladders_of_the_probe(preview_model, preview_layers):
    layers, probe = preview_layers, Probe(preview_model)
    rng = np.random.default_rng(4)
    for ray in rng.choice(len(layers.rays.origins), 60, replace=False):
        span = slice(layers._s.start[ray], layers._s.start[ray + 1])
        ladder = probe.along(layers.rays.origins[ray], layers.rays.directions[ray])
        first = {}
        for rung in ladder.rungs:
            first.setdefault(rung.part_id, rung.enter_mm)
        found = {
            layers.ids[k]: float(enter)
            for k, enter in zip(layers._s.part[span], layers._s.enter[span])
        }
        # Origins are kept in single precision; a ray may graze an edge that the other misses.
        missed = set(found) ^ {i for i, at in first.items() if at < max(found.values(), default=0)}
        assert len(missed) <= 1
        for part_id in found.keys() & first.keys():
            assert found[part_id] == pytest.approx(first[part_id], abs=0.05)


def test_there_is_a_ray_for_every_two_millimetres_of_skin(preview_model, preview_layers):
    skin = preview_layers.area_cm2(["skin.left", "skin.right"]) * 100
    assert skin / len(preview_layers.rays.origins) <= 2.0**2
    # All the outer skin is asked, on both sides alike.
    drawn = sum(preview_model.parts[f"skin.{s}"].mesh.area for s in ("left", "right")) / 2
    assert skin == pytest.approx(drawn, rel=0.08)


def test_kept_layers_are_the_same_and_broken_ones_are_cast_again(tmp_path, monkeypatch):
    monkeypatch.setenv("PEELBACK_CACHE", str(tmp_path))
    from meshes.cache import model_folder, store

    model = toy_model()
    assert not list(tmp_path.glob("**/layers-*"))
    first = layers_of(model)
    # A model that is not in the cache leaves nothing there.
    assert not list(tmp_path.glob("**/layers-*"))
    store(model)
    first = layers_of(model)
    (kept,) = model_folder(model.body, model.detail).glob("layers-*.npz")
    again = layers_of(model)
    old, new = (
        {row.part_id: row.share for row in layers.covers("rhomboid_major.left")}
        for layers in (first, again)
    )
    assert new == pytest.approx(old, rel=1e-4)
    kept.write_bytes(kept.read_bytes()[:1000])
    assert layers_of(model).in_view("rhomboid_major.left") == pytest.approx(
        first.in_view("rhomboid_major.left")
    )
    assert kept.stat().st_size > 1000


def test_another_model_under_the_same_parameters_is_told_apart(tmp_path, monkeypatch):
    monkeypatch.setenv("PEELBACK_CACHE", str(tmp_path))
    from meshes.cache import store

    model = toy_model()
    store(model)
    layers_of(model)
    without = replace(model, parts={i: p for i, p in model.parts.items() if "trapezius" not in i})
    covering = {row.part_id for row in layers_of(without).covers("rhomboid_major.left")}
    assert not any("trapezius" in part_id for part_id in covering)


def test_a_part_that_is_not_there_is_refused(toy_layers):
    with pytest.raises(PeelbackError, match="romboid"):
        toy_layers.covers("romboid")
    with pytest.raises(PeelbackError, match="no parts"):
        cast_layers(replace(toy_model(), parts={}))
    with pytest.raises(PeelbackError, match="spacing"):
        cast_layers(toy_model(), 0.0)


@settings(max_examples=30, deadline=None)
@given(data=st.data())
def test_any_state_keeps_shares_whole(data, toy_layers):
    gone = data.draw(st.sets(st.sampled_from(sorted(toy_layers.ids))))
    target = data.draw(st.sampled_from(sorted(toy_layers.ids)))
    visible = set(toy_layers.ids) - gone
    share = toy_layers.in_view(target, visible)
    rows = toy_layers.covers(target, visible)
    assert all(row.part_id in visible and row.part_id != target for row in rows)
    assert all(0 <= row.next_share <= row.share + 1e-9 <= 1 + 2e-9 for row in rows)
    if share is None:
        assert rows == ()
        return
    # What hides it next adds up to what is hidden (small covers are left out of the list).
    hidden = sum(row.next_share for row in rows)
    assert hidden <= 1 - share + 1e-6
    assert hidden >= 1 - share - 0.05
    # Taking one more thing away never hides more.
    if rows:
        fewer = visible - {rows[0].part_id}
        assert toy_layers.in_view(target, fewer) >= share - 1e-9


@settings(max_examples=25, deadline=None)
@given(
    st.lists(
        st.tuples(st.floats(-35, 20), st.floats(4, 30), st.floats(0.5, 4)), min_size=1, max_size=6
    )
)
def test_any_stack_of_straps_hides_what_lies_under_it(straps):
    parts, y = [_box("floor", (-40, -5, -20), (40, 0, 20))], 0.5
    for k, (left, width, thick) in enumerate(straps):
        right = min(left + width, 40)
        parts.append(_box(f"strap_{k}", (left, y, -20), (right, y + thick, 20)))
        y += thick + 0.5
    layers = cast_layers(_model(*parts), 2.0)
    for k, (left, width, thick) in enumerate(straps):
        right = min(left + width, 40)
        rows = {row.part_id: row for row in layers.covers("floor")}
        assert rows[f"strap_{k}"].share == pytest.approx((right - left) / 80, abs=0.04)
        assert rows[f"strap_{k}"].thickness_mm == pytest.approx(thick, abs=1e-3)


def test_a_folded_trapezius_frees_the_rhomboids_and_hides_other_things(
    preview_model, preview_layers
):
    from meshes.catalogue.folds import Laid
    from meshes.questions.reflect import reflector_of

    plan = load_plan()
    gone = {
        i
        for step in plan.before("trapezius")
        for side in ("left", "right")
        for i in removed_parts(preview_model, step, side)
    }
    visible = set(preview_layers.ids) - gone
    moved = {
        part_id: trimesh.Trimesh(*surface, process=False)
        for part_id, surface in reflector_of(preview_model)
        .laid((Laid("trapezius.left"),), gone)
        .items()
    }
    folded = preview_layers.folded(moved)
    lying = preview_layers.in_view("rhomboid_major.left", visible)
    assert folded.in_view("rhomboid_major.left", visible) > lying + 0.5
    before, after = (layers.graph(visible) for layers in (preview_layers, folded))
    flap = [i for i in moved if i.startswith("trapezius")]
    # After the fold the flap lies over what it did not lie over before.
    fresh = {
        under
        for under in visible - set(moved)
        if sum(after.share(i, under) for i in flap)
        > sum(before.share(i, under) for i in flap) + 0.02
    }
    assert fresh
    assert all(preview_model.parts[i].side != "right" for i in fresh)
