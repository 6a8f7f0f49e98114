"""A fold stretches nothing, passes through nothing, and comes back exactly."""

import numpy as np
import pytest
import trimesh
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meshes.catalogue.folds import Laid, fold_named, load_folds
from meshes.errors import PeelbackError
from meshes.questions.folding.measures import HINGE_ZONE_MM, OVERLAP_MM, measure, overlaps
from meshes.questions.reflect import Reflector, reflect

FIBRE, AREA = 0.01, 0.03
# Known to be worse, so that they can only get better. A thick belly keeps the length of its
# middle fibres only; fascia turned about its border bends across its fibres; the outermost
# fibre of latissimus runs along the hinge and is torn a third of its length.
LINES_OF = {
    "latissimus": 0.02,
    "levator": 0.035,
    "splenius_cervicis": 0.02,
    "thoracolumbar_fascia": 0.02,
    "semispinalis_capitis": 0.075,
}
OVERLAP_OF = {"levator": 2.5, "semispinalis_capitis": 4.0, "latissimus": 1.5}
QUICK = ("trapezius", "rhomboids")
EACH = [
    pytest.param(rule.id, marks=() if rule.id in QUICK else pytest.mark.slow)
    for rule in load_folds()
]
ORDER = tuple(rule.id for rule in load_folds())
SHARES = (0.25, 0.5, 1.0)


@pytest.fixture(scope="module")
def reflector(preview_model):
    return Reflector(preview_model)


def before(name: str, side: str = "left") -> list[Laid]:
    """What the plan folds earlier than this."""
    return [Laid(f"{n}.{side}") for n in ORDER[: ORDER.index(name)]]


def path_of(reflector, name: str, side: str = "left"):
    return reflector.path(f"{name}.{side}", (), before(name, side))


@pytest.mark.parametrize("name", EACH)
def test_fibres_keep_their_length_and_the_sheet_its_area(reflector, name):
    path = path_of(reflector, name)
    for share in SHARES:
        found = measure(path, share)
        assert found.fibre <= FIBRE, found
        assert abs(found.area) <= AREA, found
        assert found.hinge_mm < 1e-9, found


def dense(fibre: np.ndarray, step: float = 1.0) -> np.ndarray:
    """Points of a line a millimetre apart, so that a tight roll is not cut short."""
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(fibre, axis=0), axis=1).cumsum()])
    at = np.linspace(0, s[-1], int(s[-1] / step) + 2)
    return np.stack([np.interp(at, s, fibre[:, k]) for k in range(3)], axis=1)


def length(line: np.ndarray) -> float:
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())


@pytest.mark.parametrize("name", EACH)
def test_the_model_s_own_fibre_lines_keep_their_length(reflector, name):
    # Carried as points of the flap: an account apart from the grid that was solved.
    path = path_of(reflector, name)
    for part_id in path.carried:
        lines = [dense(f) for f in np.asarray(reflector.model.parts[part_id].fibres, float)]
        carriers = {k: path.carrier(part_id, line) for k, line in enumerate(lines)}
        for share in SHARES:
            moved = path.carry(carriers, share)
            change = [length(moved[k]) / length(line) - 1 for k, line in enumerate(lines)]
            # Lines between two rows of the grid may differ a little more; the rows themselves do not.
            mean = LINES_OF.get(name, FIBRE)
            assert np.abs(change).mean() <= mean, (part_id, share, np.round(change, 4))
            assert np.percentile(np.abs(change), 90) <= 2.5 * mean, (part_id, share)


@pytest.mark.parametrize("name", EACH)
def test_a_flap_passes_through_nothing_that_stays(reflector, name):
    model = reflector.model
    path = path_of(reflector, name)
    rule, side = fold_named(f"{name}.left")
    lying = reflector.laid(before(name))
    stays = [part for part in model.parts.values() if reflector.stays(part.id, f"{name}.left")]
    indexes: dict = {}
    own = np.concatenate([model.parts[i].mesh.vertices for i in path.carried])
    at_rest = overlaps(own, path.hinge(), stays, lying, indexes)
    for share in SHARES:
        vertices = path.vertices(share)
        flap = np.concatenate([vertices[i] for i in path.carried])
        found = overlaps(flap, path.hinge(), stays, lying, indexes)
        most = OVERLAP_OF.get(name, OVERLAP_MM)
        new = {i: round(d, 2) for i, d in found.items() if d - at_rest.get(i, 0.0) > most}
        assert not new, (share, new)


def test_share_none_is_the_model_itself(reflector, preview_model):
    assert reflect(preview_model, "rhomboids.left", 0.0) == {}
    path = path_of(reflector, "rhomboids")
    there = path.vertices(0.0)["rhomboid_major.left"]
    assert np.abs(there - preview_model.parts["rhomboid_major.left"].mesh.vertices).max() < 1e-9


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


def test_the_deep_face_of_a_folded_rhomboid_looks_outward(reflector, preview_model):
    part = preview_model.parts["rhomboid_major.left"]
    flap = path_of(reflector, "rhomboids").vertices(1.0)[part.id]
    folded = trimesh.Trimesh(flap, part.mesh.faces, process=False)
    deep = part.mesh.face_normals[:, 1] < -0.5
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
    for part_id, vertices in moved.items():
        assert vertices.shape == reflector.model.parts[part_id].mesh.vertices.shape
        assert np.isfinite(vertices).all()


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
