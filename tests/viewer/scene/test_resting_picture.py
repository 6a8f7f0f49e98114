"""No speed by another picture: at rest it is what one actor a part would show.

The reference draws every part by an actor of its own, never moves, searches for nothing that is
hidden and holds every array itself. The scene under test is the one of the window: batches, coarse
shells while it turns, hidden parts left out of them, arrays mapped from the cache.
"""

import numpy as np
import pytest

from tests.fakes import toy_model
from viewer.scene import looks
from viewer.scene import scene as scene_module
from viewer.scene.scene import PartLook, Scene
from viewer.state.view_state import Sides, ViewState
from viewer.state.visibility import opacities

SIZE = (480, 360)
LEVELS = 1
"""The most by which any channel of any pixel may differ, of 255."""


def _state(peeled=0, **fields):
    return ViewState(peeled=Sides(peeled, peeled), **fields)


def _group(model, name):
    return frozenset(i for i, p in model.parts.items() if p.group == name)


STATES = {
    **{f"stratum {n}": (lambda m, n=n: _state(n)) for n in (0, 1, 2, 3, 4, 6, 8, 9)},
    "one side": lambda m: ViewState(peeled=Sides(5, 1)),
    "see-through": lambda m: _state(2, see_through=_group(m, "trapezius")),
    "see-through in layers": lambda m: _state(
        2, see_through=frozenset(i for i, p in m.parts.items() if p.stratum in (2, 3, 4))
    ),
    "picked": lambda m: _state(2, selection=tuple(sorted(_group(m, "trapezius")))),
}


def _reference_key(part):
    return (*looks.batch_key(part), part.id)


class Pair:
    """The window's scene and the reference, always told the same."""

    def __init__(self, model, monkeypatch):
        self.model = model
        self.scene = Scene(size=SIZE)
        self.scene.set_model(model)
        with monkeypatch.context() as patch:
            patch.setattr(scene_module, "batch_key", _reference_key)
            self.reference = Scene(size=SIZE)
            self.reference.set_model(model)
        assert len(self.reference._batches) == len(model.parts)
        assert len(self.scene._batches) < len(self.reference._batches)

    def show(self, state, view):
        wanted = {
            i: PartLook(o, highlighted=i in state.selection)
            for i, o in opacities(self.model, state).items()
        }
        for scene in (self.scene, self.reference):
            scene.apply(wanted)
            scene.set_view(view)

    def move(self):
        """Turn to and fro as a hand does, with the search for hidden parts between."""
        pose = self.scene.pose
        for full_look in (False, True):
            self.scene.orbit(15, 5)
            self.scene.render(moving=True, full_look=full_look)
            search = self.scene.seen_search()
            while not search.step():
                pass
            if self.scene.to_search() is not None:
                self.scene.take_seen(search)
            self.scene.pose = pose
            self.scene.render(moving=True, full_look=full_look)

    def differences(self):
        """Return the largest difference of any pixel, and how many differ at all."""
        pictures = []
        for scene in (self.scene, self.reference):
            scene.render()
            pictures.append(scene.grab().astype(int))
        assert np.ptp(pictures[0].reshape(-1, 3), axis=0).max() > 60, "an empty picture"
        off = np.abs(pictures[0] - pictures[1]).max(axis=2)
        return int(off.max()), int((off > 0).sum())

    def finalize(self):
        self.scene.finalize()
        self.reference.finalize()


@pytest.fixture(scope="module")
def toys():
    with pytest.MonkeyPatch.context() as patch:
        pair = Pair(toy_model(), patch)
    yield pair
    pair.finalize()


@pytest.fixture(scope="module")
def backs(preview_model):
    with pytest.MonkeyPatch.context() as patch:
        pair = Pair(preview_model, patch)
    yield pair
    pair.finalize()


def _same_at_rest(pair, state, view):
    pair.show(state, view)
    pair.move()
    worst, count = pair.differences()
    assert worst <= LEVELS, f"{count} pixels differ, by up to {worst} levels"


@pytest.mark.parametrize("view", ["posterior", "oblique_left"])
@pytest.mark.parametrize("name", STATES)
def test_toy_at_rest_is_what_one_actor_a_part_shows(toys, name, view):
    _same_at_rest(toys, STATES[name](toys.model), view)


@pytest.mark.slow
@pytest.mark.parametrize("name", STATES)
def test_back_at_rest_is_what_one_actor_a_part_shows(backs, name):
    _same_at_rest(backs, STATES[name](backs.model), "posterior")


@pytest.mark.slow
@pytest.mark.parametrize("kind, position", [("transverse", 300.0), ("sagittal", 20.0)])
def test_section_at_rest_is_what_one_actor_a_part_shows(backs, kind, position):
    from meshes.questions.planes import placed_plane
    from meshes.questions.section import Slicer

    outlines = Slicer(backs.model).outlines(placed_plane(kind, position))
    for scene in (backs.scene, backs.reference):
        scene.set_section(outlines)
    try:
        _same_at_rest(backs, _state(0), "inferior" if kind == "transverse" else "lateral_left")
        _same_at_rest(backs, _state(3), "oblique_left")
    finally:
        for scene in (backs.scene, backs.reference):
            scene.set_section(None)


@pytest.mark.slow
def test_folded_back_at_rest_is_what_one_actor_a_part_shows(backs):
    from meshes.questions.reflect import Reflector
    from viewer.scene.folding import FoldedShells

    reflector = Reflector(backs.model)
    way = {"trapezius.left": reflector.path("trapezius.left")}
    try:
        for share in (0.5, 1.0):
            for scene in (backs.scene, backs.reference):
                shells = FoldedShells(reflector, scene.part_in_place)
                scene.move_parts(shells.shells(way, {"trapezius.left": share}))
            _same_at_rest(backs, _state(2), "posterior")
    finally:
        for scene in (backs.scene, backs.reference):
            scene.move_parts({})
    # And laid back, nothing of the flap stays behind.
    _same_at_rest(backs, _state(2), "posterior")


def test_full_look_in_motion_is_the_resting_picture_without_its_labels(toys):
    toys.show(_state(2), "posterior")
    toys.scene.render()
    at_rest = toys.scene.grab()
    toys.scene.render(moving=True, full_look=True)
    assert np.array_equal(at_rest, toys.scene.grab())
    toys.scene.render(moving=True)
    assert not np.array_equal(at_rest, toys.scene.grab())


def test_what_is_seen_through_is_dotted_in_full_look_motion_and_blended_at_rest(toys):
    state = STATES["see-through"](toys.model)
    toys.show(state, "posterior")
    toys.scene.render()
    at_rest = toys.scene.grab()
    toys.scene.render(moving=True, full_look=True)
    in_motion = toys.scene.grab()
    assert not np.array_equal(at_rest, in_motion)
    # Seen from afar it is as dense: the dots stand for the same share of the light.
    off = at_rest.astype(float).mean(axis=(0, 1)) - in_motion.astype(float).mean(axis=(0, 1))
    assert np.abs(off).max() < 3.0
    toys.scene.render()
    assert np.array_equal(at_rest, toys.scene.grab())


def test_edges_of_a_huge_moving_picture_are_not_smoothed(toys, monkeypatch):
    toys.show(_state(2), "posterior")
    toys.scene.render()
    at_rest = toys.scene.grab()
    monkeypatch.setattr(scene_module, "SMOOTHED_IN_MOTION_PX", 1000)
    toys.scene.render(moving=True, full_look=True)
    off = np.abs(toys.scene.grab().astype(int) - at_rest).max(axis=2)
    assert 0 < (off > 0).mean() < 0.1
