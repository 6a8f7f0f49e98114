"""The sample talk opens on the model, and every scene shows what its notes speak of."""

import re
from dataclasses import asdict

import numpy as np
import pytest

from viewer.state.captions import english_name, neighbours_of
from viewer.state.plan import plan_with_folds
from viewer.state.visibility import opacities, visible_parts
from viewer.talk.back_lab import ids_of, lab_talk, recipes
from viewer.talk.check import check_talk
from viewer.talk.talk_file import talk_from_text, talk_to_json

RECIPES = recipes()[1]
SEEN_LEAST = 0.08
"""Share of points all over a part that are seen: its front and edges cover the rest."""


def lay_flaps(scene, model, state):
    """Put the flaps where the state has them, as the window does."""
    from meshes.questions.reflect import Reflector
    from viewer.scene.folding import FoldedShells

    shells = FoldedShells(Reflector(model), scene.part_in_place)
    shells.work_out(state.folds, state.removed)
    paths = shells.paths(state.folds, state.removed)
    shares = {laid.fold_id: laid.share for laid in state.folds}
    scene.move_parts(shells.shells(paths, shares, ("still", "moving")))


def seen_share(scene, ids, looks):
    """Return which share of points on parts the hall sees, what is see-through looked through."""
    solid = {i: None for i, opacity in looks.items() if opacity == 1.0 or i in ids}
    points = np.concatenate([scene.drawn_parts()[i].still.points for i in sorted(ids)])
    points = points[np.linspace(0, len(points) - 1, 80).astype(int)]
    pixels, _ = scene.pixels_of(points)
    width, height = scene.size()
    seen = 0
    for x, y in pixels:
        inset = scene._table is not None and scene._table.inside(x, y, scene.size())
        if 0 <= x < width and 0 <= y < height and not inset:
            hit = scene.target().first_hit(*scene.ray(x, y), solid)
            seen += hit is not None and hit[0] in ids
    return seen / len(points)


@pytest.fixture(scope="module")
def plan(preview_model):
    return plan_with_folds(preview_model.catalogue)


@pytest.fixture(scope="module")
def talk(preview_model, plan):
    return lab_talk(preview_model, plan)


@pytest.fixture(scope="module")
def scene(preview_model):
    from viewer.scene.scene import Scene

    made = Scene(size=(640, 427))
    made.set_model(preview_model)
    yield made
    made.finalize()


def test_there_is_a_talk_of_fifteen_to_twenty_scenes_of_a_quarter_of_an_hour(talk):
    assert 15 <= len(talk.scenes) <= 20
    assert 10 * 60 <= sum(s.seconds for s in talk.scenes) <= 20 * 60


def test_no_scene_has_a_fault_or_a_remark(talk, preview_model):
    for report in check_talk(talk, preview_model):
        assert (report.faults, report.remarks) == ((), ()), report.title


def test_the_talk_survives_its_file(talk):
    import json

    words = json.dumps(talk_to_json(talk, "0"))
    assert talk_from_text(words, "x") == talk
    assert len(words) < 200_000


@pytest.mark.parametrize("number", range(len(RECIPES)), ids=[r.title for r in RECIPES])
def test_the_scene_shows_what_its_notes_speak_of(number, talk, plan, preview_model, scene):
    from viewer.scene.scene import PartLook

    recipe, state = RECIPES[number], talk.scenes[number].state
    neighbours = neighbours_of(preview_model)
    looks = opacities(preview_model, state, neighbours)
    scene.apply({i: PartLook(o) for i, o in looks.items()})
    lay_flaps(scene, preview_model, state)
    scene.set_table(state.table)
    camera = asdict(state.camera) | {"view": state.view} if state.camera else None
    scene.pose = scene.pose_of(state.view, camera, state.table)
    visible = visible_parts(preview_model, state, neighbours)
    assert recipe.shows
    for name in recipe.shows:
        ids = ids_of((name,), plan, preview_model)
        assert ids, name
        assert ids <= visible, name
        words = {english_name(preview_model.parts[i], preview_model.catalogue) for i in ids}
        words |= {name.split(".")[0].replace("_", " ")}
        words |= {preview_model.parts[i].group.replace("_", " ") for i in ids} - {""}
        assert any(w.lower() in recipe.notes.lower() for w in words), name
        share = seen_share(scene, ids, looks)
        assert share >= SEEN_LEAST, f"{name}: {share:.0%} is seen"


def test_the_sample_talk_opens_in_german_in_a_german_window(preview_model, plan, talk):
    from tests.viewer.german import English
    from viewer.state.languages import spoken_in

    english = English()
    with spoken_in("de"):
        german = lab_talk(preview_model, plan)
        reports = check_talk(german, preview_model)
    assert [s.state for s in german.scenes] == [s.state for s in talk.scenes]
    texts = [german.title, *(t for s in german.scenes for t in (s.title, s.line, s.notes) if t)]
    assert len(texts) > 55
    assert [t for t in texts if english.left_in(re.sub("[„“]", "", t))] == []
    assert [r.remarks for r in reports if r.remarks or r.faults] == []
    # Notes keep their paragraphs, so that none is lost on the way.
    assert [s.notes.count("\n") for s in german.scenes] == [
        s.notes.count("\n") for s in talk.scenes
    ]


def test_the_hall_reads_the_landmarks_of_which_the_first_scene_speaks(preview_model, talk):
    from viewer.scene.scene import PartLook, Scene
    from viewer.state.places import surface_marks
    from viewer.state.visibility import opacities

    first = talk.scenes[0]
    assert first.state.surface_marks
    scene = Scene(size=(1920, 900))
    scene.set_model(preview_model)
    looks = opacities(preview_model, first.state)
    scene.apply({i: PartLook(opacity) for i, opacity in looks.items()})
    records = preview_model.catalogue.landmarks
    scene.set_surface_marks(surface_marks(preview_model.landmarks, records))
    scene.most_labels = 7
    scene.set_font_scale(2.4)
    scene.set_view(first.state.view)
    scene.render()
    read = {label.text for label in scene.labels()}
    scene.finalize()
    assert read >= {
        "external occipital protuberance", "C7", "root of the scapular spine",
        "inferior angle of the scapula", "iliac crest, outer lip",
    }  # fmt: skip
