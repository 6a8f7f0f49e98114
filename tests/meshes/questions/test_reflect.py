"""A fold stretches nothing, passes through nothing, and comes back exactly."""

import numpy as np
import pytest
import trimesh
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meshes.catalogue.folds import Laid, fold_named, load_folds
from meshes.errors import PeelbackError
from meshes.questions.folding.flap_mesh import _simple_loops
from meshes.questions.folding.measures import (
    HINGE_ZONE_MM,
    OVERLAP_MM,
    fibre_changes,
    measure,
    overlaps,
    volume,
)
from meshes.questions.folding.riders import RIDES
from meshes.questions.reflect import Reflector, reflect

FIBRE, AREA, VOLUME = 0.01, 0.03, 0.005
COVERS = ("skin", "superficial_fascia", "deep_fascia")
QUICK = ("trapezius", "rhomboids")
EACH = [
    pytest.param(rule.id, marks=() if rule.id in QUICK else pytest.mark.slow)
    for rule in load_folds()
]
ORDER = tuple(rule.id for rule in load_folds())
BY_HAND = {rule.id for rule in load_folds() if rule.by_hand}
SHARES = (0.25, 0.5, 0.75, 1.0)


@pytest.fixture(scope="module")
def reflector(preview_model):
    return Reflector(preview_model)


def before(name: str, side: str = "left") -> list[Laid]:
    """What the plan folds earlier than this; skin and fat are taken as gone."""
    earlier = [n for n in ORDER[: ORDER.index(name)] if n not in BY_HAND]
    return [Laid(f"{n}.{side}") for n in earlier if n not in COVERS or name in COVERS]


def path_of(reflector, name: str, side: str = "left"):
    return reflector.path(f"{name}.{side}", (), before(name, side))


@pytest.mark.parametrize("name", EACH)
def test_fibres_area_and_volume_are_kept(reflector, name):
    path = path_of(reflector, name)
    for share in SHARES:
        found = measure(path, share)
        assert found.fibre <= FIBRE, found
        assert found.area <= AREA, found
        assert found.volume <= VOLUME, found
        assert found.hinge_mm < 1e-9, found


@pytest.mark.parametrize("name", EACH)
def test_the_model_s_own_fibre_lines_keep_their_length(reflector, name):
    path = path_of(reflector, name)
    for part_id in path.parts:
        fibres = reflector.model.parts[part_id].fibres
        if fibres is None:
            continue
        for share in SHARES:
            change = np.abs(fibre_changes(path, part_id, fibres, share))
            assert change.mean() <= FIBRE, (part_id, share, change)
            assert change.max() <= FIBRE, (part_id, share, change)


@pytest.mark.parametrize("name", EACH)
def test_flap_and_stump_are_closed_and_together_the_whole_part(reflector, name):
    path = path_of(reflector, name)
    for part_id, cut in path.parts.items():
        mesh = trimesh.Trimesh(cut.rest, cut.mesh.faces, process=False)
        assert mesh.is_watertight
        own = reflector.model.parts[part_id].mesh
        assert mesh.volume == pytest.approx(own.volume, rel=0.005)
        if path.rule.aside_mm:
            # Freed and drawn aside, nothing is cut.
            assert not cut.mesh.raw.any() and (cut.mesh.piece == 0).all()
            continue
        assert cut.mesh.raw.any()
        assert set(np.unique(cut.mesh.piece)) == set(range(-1, len(path.flaps)))


def test_a_stump_of_trapezius_stays_beside_the_spines(reflector):
    path = path_of(reflector, "trapezius")
    cut = path.parts["trapezius_transverse.left"]
    stays = cut.mesh.piece == -1
    moved = path.vertices(1.0)["trapezius_transverse.left"]
    assert np.array_equal(moved[stays], cut.rest[stays])
    stump = cut.rest[stays & (np.abs(cut.rest[:, 0]) < 40.0)]
    assert 12.0 < np.abs(stump[:, 0]).max() < 22.0


@pytest.mark.parametrize("name", EACH)
def test_a_flap_passes_through_nothing_that_stays(reflector, name):
    model = reflector.model
    path = path_of(reflector, name)
    rule, side = fold_named(f"{name}.left")
    lying = reflector.laid(before(name))
    stays = [part for part in model.parts.values() if reflector.stays(part.id, f"{name}.left")]
    indexes: dict = {}
    own = np.concatenate([cut.rest[cut.mesh.piece >= 0] for cut in path.parts.values()])
    at_rest = overlaps(own, path.hinge(), stays, lying, indexes)
    for share in SHARES:
        vertices = path.vertices(share)
        flap = np.concatenate([vertices[i][c.mesh.piece >= 0] for i, c in path.parts.items()])
        found = overlaps(flap, path.hinge(), stays, lying, indexes)
        new = {i: round(d, 2) for i, d in found.items() if d - at_rest.get(i, 0.0) > OVERLAP_MM}
        assert not new, (share, new)


@pytest.mark.slow
def test_columns_drawn_aside_keep_their_ends_and_bare_what_lies_beside_the_spines(reflector):
    path = path_of(reflector, "erector_spinae")
    landmarks = reflector.model.landmarks
    low, high = (float(landmarks[f"{v}.spinous_process"][2]) for v in ("L5", "T3"))
    moved, half = path.vertices(1.0), path.vertices(0.5)
    for part_id, cut in path.parts.items():
        by = moved[part_id] - cut.rest
        below, above = cut.rest[:, 2] < low, cut.rest[:, 2] > high + 5.0
        assert np.abs(by[below]).max(initial=0.0) < 1e-9
        # Upper ends give some millimetres along the column, and stay where they are across it.
        assert np.abs(by[above][:, 0]).max(initial=0.0) < 3.0
        assert np.abs(by[above][:, 2]).max(initial=0.0) < 8.0
        assert by[:, 0].max() <= path.rule.aside_mm + 4.0
        again = path.vertices(0.5)[part_id]
        assert np.array_equal(again, half[part_id])
        assert np.abs(path.vertices(0.0)[part_id] - cut.rest).max() == 0.0
    middle = 0.5 * (low + high)
    spinalis = "spinalis_thoracis.left"
    there = np.abs(path.parts[spinalis].rest[:, 2] - middle) < 20.0
    assert path.parts[spinalis].rest[there, 0].min() < 3.0
    assert moved[spinalis][there, 0].min() > 12.0


@pytest.mark.slow
def test_the_lateral_branches_go_with_the_columns_from_their_roots(reflector):
    path = path_of(reflector, "erector_spinae")
    nerve = reflector.model.parts["lateral_branch_T10.left"]
    away = np.linalg.norm(path.vertices(1.0)[nerve.id] - nerve.mesh.vertices, axis=1)
    root = np.asarray(nerve.fibres)[0][0]
    assert away[np.linalg.norm(nerve.mesh.vertices - root, axis=1) < 2.0].max() < 3.0
    assert away.max() > 8.0


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_window_in_the_deep_fascia_opens_outward_and_leaves_the_rest(reflector, side):
    path = reflector.path(f"deep_fascia.{side}")
    (part_id, cut), sign = next(iter(path.parts.items())), 1.0 if side == "left" else -1.0
    moved, rest = path.vertices(1.0)[part_id], path.vertices(0.0)[part_id]
    flap = cut.mesh.piece == 0
    assert np.array_equal(moved[~flap], rest[~flap])
    window = rest[flap] * [sign, 1.0, 1.0]
    assert 40.0 < window[:, 0].min() < 50.0 and window[:, 0].max() < 95.0
    # The free edge comes to lie outward of the hinge, and nothing of it over the window.
    free = window[:, 0] < window[:, 0].min() + 5.0
    assert (moved[flap][free][:, 0] * sign).min() > window[:, 0].max() + 10.0
    assert cut.mesh.raw.sum() > 20
    for share in SHARES:
        found = measure(path, share)
        assert found.fibre <= FIBRE and found.area <= AREA, found


def test_share_none_is_the_model_itself(reflector, preview_model):
    assert reflect(preview_model, "rhomboids.left", 0.0) == {}
    path = path_of(reflector, "rhomboids")
    there = path.vertices(0.0)["rhomboid_major.left"]
    own = np.asarray(preview_model.parts["rhomboid_major.left"].mesh.vertices)
    assert np.abs(there[: len(own)] - own).max() < 1e-9


def test_left_and_right_mirror_each_other(reflector):
    left, right = (path_of(reflector, "rhomboids", side) for side in ("left", "right"))
    a = left.vertices(1.0)["rhomboid_major.left"]
    b = right.vertices(1.0)["rhomboid_major.right"]
    assert np.abs(a * [-1, 1, 1] - b).max() == 0.0


def test_the_accessory_nerve_rides_on_trapezius_and_stays_joined(reflector, preview_model):
    path = path_of(reflector, "trapezius")
    nerve = preview_model.parts["accessory_nerve.left"]
    moved = path.vertices(1.0)["accessory_nerve.left"]
    away = np.linalg.norm(moved - nerve.mesh.vertices, axis=1)
    line = np.asarray(nerve.fibres)[0]
    root = np.linalg.norm(nerve.mesh.vertices - line[0], axis=1) < 4.0
    assert away[root].max() < 2.0
    assert away.max() > 40.0
    assert trimesh.Trimesh(moved, nerve.mesh.faces, process=False).is_watertight


@pytest.mark.parametrize("name", QUICK)
def test_what_rides_is_hardly_stretched_has_no_kinks_and_stays_on_its_flap(reflector, name):
    path = path_of(reflector, name)
    for share in SHARES:
        (pose,) = path.poses(share)
        riding = []
        for part_id, rider in path.riders.items():
            moved = rider.middle(pose)
            begin, end = rider.first[0], rider.first[1]
            ways = [np.diff(line[begin:end], axis=0) for line in (rider.line, moved)]
            before, after = (np.linalg.norm(way, axis=1) for way in ways)
            assert 0.95 < after.sum() / before.sum() < 1.35, (part_id, share)
            way = ways[1] / after[:, None]
            assert (way[1:] * way[:-1]).sum(axis=1).min() > np.cos(np.radians(75)), part_id
            off = np.linalg.norm(moved - rider.carried.place(pose), axis=1)
            riding.extend(off[rider.state == RIDES])
            mesh = reflector.model.parts[part_id].mesh
            there = rider.place(pose)
            assert 0.9 < volume(there, mesh.faces) / volume(mesh.vertices, mesh.faces) < 1.4
        assert len(riding) > 20 and np.median(riding) < 4.0, share


def test_the_deep_face_of_a_folded_rhomboid_looks_outward(reflector, preview_model):
    part = preview_model.parts["rhomboid_major.left"]
    path = path_of(reflector, "rhomboids")
    cut = path.parts[part.id]
    flap = (cut.mesh.piece[cut.mesh.faces] >= 0).all(axis=1)
    lying = trimesh.Trimesh(cut.rest, cut.mesh.faces[flap], process=False)
    folded = trimesh.Trimesh(path.vertices(1.0)[part.id], cut.mesh.faces[flap], process=False)
    deep = lying.face_normals[:, 1] < -0.5
    assert np.average(folded.face_normals[deep, 1], weights=folded.area_faces[deep]) > 0.5


@settings(
    max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.permutations([f"{name}.left" for name in QUICK]),
    st.lists(st.sampled_from([0.0, 0.2, 0.6, 1.0]), min_size=len(QUICK), max_size=len(QUICK)),
)
def test_any_order_and_share_moves_just_the_flaps(reflector, order, shares):
    folds = [Laid(name, share) for name, share in zip(order, shares, strict=True)]
    moved = reflector.laid(folds)
    wanted = {
        part_id
        for laid in folds
        if laid.share > 0
        for part_id in (
            *fold_named(laid.fold_id)[0].part_ids("left"),
            *fold_named(laid.fold_id)[0].cling_ids("left"),
        )
    }
    assert set(moved) == wanted
    for vertices, faces in moved.values():
        assert np.isfinite(vertices).all()
        assert faces.min() >= 0 and faces.max() < len(vertices)


@pytest.mark.parametrize(
    ("fold_id", "share", "word"),
    [
        ("deltoid.left", 1.0, "no fold"),
        ("trapezius.left", 1.2, "share"),
        ("trapezius", 1.0, "left"),
    ],
)
def test_bad_words_are_refused_in_one_line(preview_model, fold_id, share, word):
    with pytest.raises(PeelbackError, match=word) as error:
        reflect(preview_model, fold_id, share)
    assert "\n" not in str(error.value)


def test_the_hinge_zone_is_no_larger_than_said():
    assert HINGE_ZONE_MM == 8.0


def test_a_third_fold_lies_on_the_two_before_it(reflector):
    names = ("trapezius", "rhomboids", "serratus_superior")
    folds = [Laid(f"{name}.left") for name in names]
    moved = reflector.laid(folds)
    assert {"trapezius_transverse.left", "serratus_posterior_superior.left"} <= set(moved)


@given(st.lists(st.integers(0, 12), min_size=3, max_size=40))
def test_a_rim_that_meets_itself_is_parted_into_rims_that_do_not(rim):
    found = _simple_loops(rim)
    assert all(len(set(loop)) == len(loop) >= 3 for loop in found)
    ways = {(a, b) for a, b in zip(rim, [*rim[1:], rim[0]], strict=True)}
    assert {(a, b) for loop in found for a, b in zip(loop, [*loop[1:], loop[0]])} <= ways
    if len(set(rim)) == len(rim):
        assert found == [rim]
