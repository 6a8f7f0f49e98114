"""What can be seen from outside, and what the moving picture may leave out."""

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from viewer.scene.hidden import SeenSearch, directions


def _search(solids, spacing=2.0):
    search = SeenSearch(
        {n: (np.asarray(m.vertices), np.asarray(m.faces)) for n, m in solids.items()}, spacing
    )
    while not search.step():
        pass
    return search.seen


def _ball(radius, at=(0, 0, 0)):
    return trimesh.creation.icosphere(subdivisions=2, radius=radius).apply_translation(at)


def test_a_ball_within_a_ball_is_not_seen():
    assert _search({"outer": _ball(40), "inner": _ball(20)}) == {"outer"}


def test_a_ball_beside_a_ball_is_seen():
    assert _search({"one": _ball(20), "two": _ball(20, (60, 0, 0))}) == {"one", "two"}


def test_what_lies_in_an_open_bowl_is_seen():
    bowl = _ball(40)
    bowl.update_faces(bowl.triangles_center[:, 2] < 20)
    assert _search({"bowl": bowl, "inner": _ball(15)}) == {"bowl", "inner"}


def test_nothing_to_search_is_done_at_once():
    search = SeenSearch({})
    assert search.done
    assert search.step()
    assert search.seen == set()


def test_the_eye_goes_all_round():
    found = directions()
    assert len(found) == 26
    assert np.allclose(np.linalg.norm(found, axis=1), 1.0)
    assert np.allclose(found.sum(axis=0), 0.0)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.tuples(*[st.integers(-3, 3)] * 3), min_size=1, max_size=6, unique=True))
def test_the_outermost_part_in_any_direction_is_always_seen(places):
    solids = {str(i): _ball(8, 25 * np.array(p)) for i, p in enumerate(places)}
    seen = _search(solids)
    for axis in range(3):
        for pick in (np.argmin, np.argmax):
            assert any(str(i) in seen for i in [int(pick([p[axis] for p in places]))])


@pytest.fixture
def scene():
    from tests.fakes import toy_model
    from viewer.scene.scene import PartLook, Scene

    scene = Scene(size=(200, 200))
    model = toy_model()
    scene.set_model(model)
    scene.apply({name: PartLook() for name in model.parts})
    yield scene
    scene.finalize()


def _searched(scene):
    search = scene.seen_search()
    while not search.step():
        pass
    scene.take_seen(search)
    return search


def test_the_resting_picture_stays_the_same_after_a_search(scene):
    before = scene.screenshot()
    _searched(scene)
    assert scene.to_search() is None
    assert np.array_equal(before, scene.screenshot())


def test_the_moving_picture_stays_the_same_after_a_search(scene):
    def moving():
        scene.render(moving=True)
        return scene.grab()

    before = moving()
    _searched(scene)
    assert np.abs(before.astype(int) - moving().astype(int)).mean() < 0.5


def test_another_picture_is_searched_anew(scene):
    from viewer.scene.scene import PartLook

    _searched(scene)
    some = list(scene.shown())[:-1]
    scene.apply({name: PartLook() for name in some})
    assert scene.to_search() == frozenset(some)
