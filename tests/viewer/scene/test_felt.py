"""Surface marks stand where the finger lies: on the skin, or on what lies open beneath it."""

import numpy as np
import pytest

from meshes.questions.plan_course import evenly
from viewer.scene.felt import ALONG_MM, Felt
from viewer.scene.scene import PartLook, Scene
from viewer.state.places import surface_marks


def flat_skin(y=50.0):
    x, z = np.meshgrid(np.arange(-200, 201, 10.0), np.arange(-200, 201, 10.0))
    return np.column_stack([x.ravel(), np.full(x.size, y), z.ravel()])


def wall(y):
    """Return what a line meets that comes upon a plane behind the body."""

    def cast(origin, direction):
        share = (y - origin[1]) / direction[1]
        return (
            ("wall", origin + share * direction, np.array([0.0, 1.0, 0.0])) if share > 0 else None
        )

    return cast


def test_a_place_comes_out_square_to_the_skin():
    laid = Felt(flat_skin()).laid(np.array([5.0, 20.0, 5.0]), wall(47.0))
    assert laid == pytest.approx([5.0, 47.0, 5.0], abs=2.0)
    assert laid[1] == pytest.approx(47.0)


def test_a_border_stays_as_straight_as_it_is():
    border = np.array([[-60.0, 20.0, -80.0], [-50.0, 22.0, 0.0], [-55.0, 18.0, 90.0]])
    laid = Felt(flat_skin()).laid(border, wall(50.0))
    wanted = evenly(border, ALONG_MM)
    assert np.abs(laid[:, [0, 2]] - wanted[:, [0, 2]]).max() < 2.0
    assert np.linalg.norm(np.diff(laid, axis=0), axis=1).max() < 1.3 * ALONG_MM


def test_a_place_over_which_nothing_lies_stays_on_its_bone():
    place = np.array([0.0, 20.0, 0.0])
    felt = Felt(flat_skin())
    assert felt.laid(place, lambda *_: None) == pytest.approx(place)
    # What is met far beneath it is not over it.
    assert felt.laid(place, wall(-40.0)) == pytest.approx(place)
    assert felt.laid(place, wall(19.0))[1] == pytest.approx(19.0)


@pytest.fixture(scope="module")
def scene(preview_model):
    made = Scene(size=(900, 700))
    made.set_model(preview_model)
    made.set_view("posterior")
    records = preview_model.catalogue.landmarks
    made.set_surface_marks(surface_marks(preview_model.landmarks, records))
    yield made
    made.finalize()


def show(scene, model, *kinds):
    scene.apply({i: PartLook(1.0) for i, part in model.parts.items() if part.kind in kinds})
    scene.render()


def test_every_mark_lies_on_the_skin_near_its_bone(scene, preview_model):
    show(scene, preview_model, "skin")
    records = preview_model.catalogue.landmarks
    bare = dict(surface_marks(preview_model.landmarks, records))
    assert len(scene._marks.landmarks) > 15
    skin = np.concatenate(
        [p.mesh.vertices for p in preview_model.parts.values() if p.kind == "skin"]
    )
    for name, place in scene._marks.landmarks:
        for point in place.reshape(-1, 3):
            assert np.linalg.norm(skin - point, axis=1).min() < 12.0, name
        if place.ndim == 1:
            off = np.abs(np.abs(place) - np.abs(bare[name]))
            assert np.linalg.norm(off) < 50.0, name
            # What lies in the midline is felt in the midline.
            assert abs(bare[name][0]) > 1.0 or abs(place[0]) < 2.0, name


def test_marks_are_named_on_the_skin_seen_from_behind(scene, preview_model):
    show(scene, preview_model, "skin")
    named = {label.text for label in scene.labels()}
    assert {
        "external occipital protuberance", "C7", "T7", "root of the scapular spine",
        "inferior angle of the scapula", "posterior superior iliac spine", "iliac crest, outer lip",
    } <= named  # fmt: skip
    # From the front no spine is felt.
    scene.set_view("anterior")
    scene.render()
    assert not {"C7", "T7"} & {label.text for label in scene.labels()}
    scene.set_view("posterior")


def test_marks_sink_with_what_is_taken_away(scene, preview_model):
    depths = []
    for kinds in (("skin", "fascia", "muscle", "bone"), ("fascia", "muscle", "bone"), ("bone",)):
        show(scene, preview_model, *kinds)
        depths.append({name: place for name, place in scene._marks.landmarks if place.ndim == 1})
    skin, flesh, bone = (d["inferior angle of the scapula"] for d in depths)
    assert skin[1] > flesh[1] + 1.0 > bone[1] + 2.0


def test_a_hall_reads_the_first_few_names_once(scene, preview_model):
    show(scene, preview_model, "skin")
    scene.most_labels = 7
    scene.render()
    named = [label.text for label in scene.labels()]
    scene.most_labels = 0
    assert len(named) == len(set(named)) <= 7
    assert {"external occipital protuberance", "C7", "inferior angle of the scapula"} <= set(named)


def test_a_section_takes_the_marks_of_its_half_along(scene, preview_model):
    from meshes.questions.planes import placed_plane
    from meshes.questions.section import Slicer

    show(scene, preview_model, "skin", "bone")
    whole = {name for name, _ in scene._marks.landmarks}
    height = preview_model.landmarks["T12.spinous_process"][2] - 20.0
    scene.set_section(Slicer(preview_model).outlines(placed_plane("transverse", height)))
    scene.render()
    left = {name for name, _ in scene._marks.landmarks}
    heights = [place.reshape(-1, 3)[:, 2] for _, place in scene._marks.landmarks]
    scene.set_section(None)
    scene.render()
    assert {"C7", "T7"} <= left < whole
    assert not {"L4", "posterior superior iliac spine"} & left
    assert min(map(np.min, heights)) >= height - 1e-3
    assert {name for name, _ in scene._marks.landmarks} == whole


def test_a_still_of_a_scene_that_was_never_drawn_has_its_marks(preview_model):
    stills = []
    for on in (False, True):
        made = Scene(size=(400, 300))
        made.set_model(preview_model)
        made.apply({i: PartLook(1.0) for i, p in preview_model.parts.items() if p.kind == "skin"})
        made.set_view("posterior")
        records = preview_model.catalogue.landmarks
        made.set_surface_marks(surface_marks(preview_model.landmarks, records), on)
        stills.append(made.screenshot(overlays=False).astype(int))
        made.finalize()
    assert (np.abs(stills[0] - stills[1]).max(axis=2) > 60).sum() > 60
