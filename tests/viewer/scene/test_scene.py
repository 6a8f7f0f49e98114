import gc
from dataclasses import replace

import numpy as np
import pytest

from tests.fakes import toy_model
from viewer.scene import looks
from viewer.scene.drawn import draw_part
from viewer.scene.furrows import shade
from viewer.scene.scene import PartLook, Scene
from viewer.state.visibility import is_film

SIZE = (480, 400)


@pytest.fixture(scope="module")
def model():
    return toy_model()


@pytest.fixture(scope="module")
def scene(model):
    scene = Scene(size=SIZE)
    scene.set_model(model)
    yield scene
    scene.finalize()


@pytest.fixture(autouse=True)
def plain(scene, model):
    scene.set_labels(False, 0.5, False, {})
    scene.set_look("by_kind")
    scene.set_theme("light")
    scene.set_orbit("limited")
    scene.set_compare(False)
    scene.apply(whole(model))
    scene.set_view("posterior")


def whole(model, least=2, **look):
    return {i: PartLook(**look) for i, p in model.parts.items() if p.stratum >= least}


def moved_pixels(a, b):
    return int((np.abs(a.astype(int) - b.astype(int)).max(axis=2) > 24).sum())


def part_pixel(scene, model, part_id):
    pixels, _ = scene.project(np.array([model.parts[part_id].mesh.vertices.mean(axis=0)]))
    return pixels[0]


def test_picking_names_the_part_under_the_pixel_and_its_side(scene, model):
    for side in ("left", "right"):
        x, y = part_pixel(scene, model, f"latissimus_dorsi.{side}")
        hit = scene.pick(x, y)
        assert hit.part_id == f"latissimus_dorsi.{side}"
        assert (x < SIZE[0] / 2) == (side == "left")
        assert hit.normal == pytest.approx([0, 1, 0], abs=1e-6)
        mesh = model.parts[hit.part_id].mesh
        assert hit.point[1] == pytest.approx(mesh.bounds[1][1], abs=1e-3)


def test_picking_sees_through_what_is_hidden(scene, model):
    x, y = part_pixel(scene, model, "rhomboid_major.left")
    before = scene.pick(x, y).part_id
    shown = whole(model)
    del shown[before]
    scene.apply(shown)
    after = scene.pick(x, y).part_id
    assert after != before
    assert model.parts[after].stratum >= model.parts[before].stratum


def test_picking_empty_space_gives_nothing(scene):
    assert scene.pick(2, 2) is None


def test_every_part_makes_a_difference_to_the_picture_when_alone(scene, model):
    scene.apply({})
    empty = scene.screenshot(SIZE, overlays=False)
    for part_id in ("accessory_nerve.left", "rhomboid_minor.right", "vertebra_T7", "skin.left"):
        scene.apply({part_id: PartLook()})
        assert moved_pixels(scene.screenshot(SIZE, overlays=False), empty) > 15, part_id


def test_hiding_one_part_changes_its_own_pixels_only(scene, model):
    before = scene.screenshot(SIZE, overlays=False)
    shown = whole(model)
    del shown["latissimus_dorsi.left"]
    scene.apply(shown)
    after = scene.screenshot(SIZE, overlays=False)
    changed = np.abs(before.astype(int) - after.astype(int)).max(axis=2) > 24
    assert changed.sum() > 500
    columns = np.flatnonzero(changed.any(axis=0))
    assert columns.max() < SIZE[0] / 2


def test_left_is_drawn_on_the_left(scene):
    scene.apply({"deltoid.left": PartLook()})
    drawn = scene.screenshot(SIZE, overlays=False)
    scene.apply({})
    empty = scene.screenshot(SIZE, overlays=False)
    columns = np.flatnonzero((np.abs(drawn.astype(int) - empty) > 24).any(axis=(0, 2)))
    assert columns.max() < SIZE[0] / 2


def test_moving_picture_shows_the_same_parts_as_the_still_one(scene):
    scene.render()
    still = scene.grab()
    scene.render(moving=True)
    moving = scene.grab()
    assert moved_pixels(still, moving) < 0.03 * SIZE[0] * SIZE[1]


def test_picture_is_the_same_after_hiding_and_showing_again(scene, model):
    before = scene.screenshot(SIZE)
    scene.apply({})
    scene.apply(whole(model))
    assert moved_pixels(scene.screenshot(SIZE), before) == 0


def test_see_through_part_lets_what_lies_behind_be_seen(scene, model):
    x, y = (int(c) for c in part_pixel(scene, model, "trapezius_ascending.left"))
    scene.apply({"trapezius_ascending.left": PartLook()})
    solid = scene.screenshot(SIZE, overlays=False)[y, x].astype(int)
    scene.apply({})
    empty = scene.screenshot(SIZE, overlays=False)[y, x].astype(int)
    scene.apply({"trapezius_ascending.left": PartLook(opacity=0.3)})
    blended = scene.screenshot(SIZE, overlays=False)[y, x].astype(int)
    assert np.all(np.abs(blended - (0.3 * solid + 0.7 * empty)) < 12)
    scene.render(moving=True)
    dithered = scene.grab()[y - 8 : y + 8, x - 8 : x + 8].reshape(-1, 3).astype(int)
    share = (np.abs(dithered - empty).max(axis=1) > 24).mean()
    assert share == pytest.approx(0.3, abs=0.07)


def test_selection_stands_out(scene, model):
    before = scene.screenshot(SIZE, overlays=False)
    shown = whole(model)
    shown["latissimus_dorsi.left"] = PartLook(highlighted=True)
    scene.apply(shown)
    assert moved_pixels(scene.screenshot(SIZE, overlays=False), before) > 500


def test_looks_differ_and_none_clips_to_white(scene):
    pictures = {}
    for look in looks.LOOKS:
        scene.set_look(look)
        scene.set_theme("dark")
        pictures[look] = scene.screenshot(SIZE, overlays=False)
        assert (pictures[look].min(axis=2) >= 250).mean() < 0.001, look
    assert moved_pixels(pictures["by_kind"], pictures["as_fixed"]) > 2000
    assert moved_pixels(pictures["by_kind"], pictures["high_contrast"]) > 2000


def test_fibres_show_on_muscle_and_run_along_u(scene):
    scene.apply({"trapezius_ascending.left": PartLook()})
    scene.set_view("posterior")
    scene.fly_to(["trapezius_ascending.left"])
    picture = scene.screenshot(SIZE, overlays=False).astype(float).mean(axis=2)
    middle = picture[170:230, 200:280]
    # The toy's fibres run up and down: tone changes sideways much more than along.
    across = np.abs(np.diff(middle, axis=1)).mean()
    along = np.abs(np.diff(middle, axis=0)).mean()
    assert across > 0.5
    assert across > 2.0 * along


def test_labels_name_only_what_is_seen(scene, model):
    names = {i: f"{i[:5]} {i[-5:]}" for i in model.parts}
    scene.set_labels(True, 1.0, False, names)
    scene.render()
    labelled = {label.id for label in scene.labels()}
    assert "latissimus_dorsi.left" in labelled
    assert "trapezius_ascending.right" in labelled
    assert not any(i.startswith(("skin", "superficial_fascia")) for i in labelled)
    assert not any(i.startswith("multifidus") for i in labelled)  # wholly under the fascia
    for label in scene.labels():
        hit = scene.pick(*label.anchor)
        assert hit is not None and hit.part_id == label.id


def test_orbit_is_limited_unless_free(scene):
    scene.orbit(170, 0)
    assert scene.camera()["azimuth_deg"] == pytest.approx(60)
    scene.set_orbit("free")
    scene.orbit(100, 0)
    assert scene.camera()["azimuth_deg"] == pytest.approx(160)


def test_flying_to_a_part_brings_it_into_the_middle(scene, model):
    scene.fly_to(["deltoid.right"])
    x, y = part_pixel(scene, model, "deltoid.right")
    assert x == pytest.approx(SIZE[0] / 2, abs=2)
    assert y == pytest.approx(SIZE[1] / 2, abs=2)


def test_zooming_at_a_point_keeps_it_in_place(scene):
    x, y = 100.0, 120.0
    before, _ = scene.ray(x, y)
    scene.zoom(1.7, at=(x, y))
    after, _ = scene.ray(x, y)
    assert after[[0, 2]] == pytest.approx(before[[0, 2]], abs=1e-6)


def test_comparison_shows_the_whole_beside_the_dissected(scene, model):
    scene.set_compare(True)
    scene.apply({})
    scene.apply_whole(whole(model))
    scene.set_view("posterior")
    picture = scene.screenshot(SIZE, overlays=False)
    left, right = picture[:, : SIZE[0] // 2], picture[:, SIZE[0] // 2 :]
    assert left.astype(int).std(axis=(1, 2)).max() < 30
    assert right.astype(int).std(axis=(1, 2)).max() > 40
    hit = scene.pick(SIZE[0] * 0.75 - 30, SIZE[1] / 2)
    assert hit is not None and scene.pick(SIZE[0] * 0.25 - 30, SIZE[1] / 2) is None


def test_compared_pictures_both_carry_names_and_the_measured_line(scene, model):
    scene.set_compare(True)
    scene.apply(whole(model, least=6))
    scene.apply_whole(whole(model))
    scene.set_view("posterior")
    half = SIZE[0] // 2

    def picture():
        scene.render(moving=False)
        return scene.grab().astype(int)

    bare = picture()
    scene.set_measure([(-60.0, 200.0, 300.0), (60.0, 200.0, 250.0)], text="130 mm")
    line = np.abs(picture() - bare).max(axis=2) > 60
    scene.set_measure()
    scene.set_labels(True, 1.0, False, dict.fromkeys(model.parts, "Nm"))
    named = np.abs(picture() - bare).max(axis=2) > 60
    # The same line at the same place of either picture, under one camera.
    ends = [np.argwhere(line[:, part]) for part in (slice(0, half), slice(half, 2 * half))]
    assert all(len(end) > 30 for end in ends)
    assert np.abs(ends[0].mean(axis=0) - ends[1].mean(axis=0)).max() < 12
    assert named[:, :half].sum() > 30 and named[:, half:].sum() > 30
    scene.set_compare(False)
    alone = picture()
    scene.set_compare(True)
    scene.set_compare(False)
    assert moved_pixels(alone, picture()) == 0


def test_a_fold_leaves_the_whole_picture_of_a_comparison_as_it_is(scene, model):
    everything = whole(model)
    scene.apply(everything)
    scene.set_compare(True)
    scene.apply_whole(everything)
    scene.set_view("posterior")
    half = SIZE[0] // 2
    name = max(everything, key=lambda i: np.ptp(scene.drawn_parts()[i].still.points, axis=0)[0])
    at_rest = scene.screenshot(SIZE, overlays=False)
    shells = {
        detail: replace(shell, points=shell.points + np.float32([0.0, 0.0, 400.0]))
        for detail in ("still", "moving")
        for shell in (getattr(scene.part_in_place(name), detail),)
    }
    scene.move_parts({name: shells})
    for _ in range(2):
        folded = scene.screenshot(SIZE, overlays=False)
        assert moved_pixels(at_rest[:, :half], folded[:, :half]) > 100
        assert moved_pixels(at_rest[:, half:], folded[:, half:]) == 0
        # The comparison may also begin while something lies folded.
        scene.set_compare(False)
        scene.set_compare(True)
        scene.apply_whole(everything)
    before = {name: {"still": shells["still"]}}
    scene.move_parts({})
    assert moved_pixels(at_rest, scene.screenshot(SIZE, overlays=False)) == 0
    # Picks ask each picture's own surfaces.
    scene.apply({name: everything[name]})
    scene.apply_whole({name: everything[name]})
    pixels, _ = scene.project(scene.drawn_parts()[name].still.points)
    x, y = next((x, y) for x, y in pixels if scene.pick(x, y) is not None)
    scene.move_parts(before)
    assert scene.pick(x, y) is None
    assert scene.pick(x + half, y) is not None
    scene.move_parts({})


def test_screenshot_has_the_size_asked_for_and_refuses_nonsense(scene):
    assert scene.screenshot((321, 200)).shape == (200, 321, 3)
    assert scene.size() == SIZE
    with pytest.raises(ValueError, match="16"):
        scene.screenshot((3, 4000))


def test_opacity_nought_is_refused(scene):
    with pytest.raises(ValueError, match="leave it out"):
        scene.apply({"skin.left": PartLook(opacity=0.0)})


def test_adding_a_part_again_replaces_it(model):
    scene = Scene(size=SIZE)
    part = model.parts["deltoid.left"]
    scene.add_parts([part])
    moved = replace(part, mesh=part.mesh.copy())
    moved.mesh.apply_translation([0, 0, 300])
    scene.add_parts([moved])
    scene.apply({"deltoid.left": PartLook()})
    scene.set_view("posterior")
    assert len(scene.part_ids()) == 1
    assert scene.pick(SIZE[0] / 2, SIZE[1] / 2).point[2] > 500
    scene.finalize()
    scene.finalize()


def test_moving_shells_are_coarse_and_keep_their_place(model):
    import trimesh

    ball = trimesh.creation.icosphere(subdivisions=5, radius=60.0)
    part = replace(model.parts["scapula.left"], mesh=ball)
    drawn = draw_part(part)
    assert len(drawn.moving.faces) < 0.2 * len(drawn.still.faces)
    radius = np.linalg.norm(drawn.moving.points, axis=1)
    assert np.abs(radius - 60.0).max() < 1.0


def test_furrow_between_two_bellies_is_darker_than_their_backs(model):
    import trimesh

    def belly(x, name):
        mesh = trimesh.creation.icosphere(subdivisions=3, radius=10.0)
        mesh.apply_translation([x, 0, 0])
        plain = replace(model.parts["deltoid.left"], id=name, uv=None, tendon=None, fibres=None)
        return draw_part(replace(plain, mesh=mesh))

    bellies = [belly(-9.9, "a.left"), belly(9.9, "b.left")]
    answer = shade(bellies)["still"]
    points = bellies[0].still.points
    furrow = answer["a.left"][np.argmax(points[:, 0])]
    back = answer["a.left"][np.argmin(points[:, 0])]
    assert back > 0.95
    assert furrow < back - 0.12


def test_finalised_scenes_leave_no_window_behind(model):
    from vtkmodules.vtkRenderingCore import vtkRenderWindow

    def living():
        gc.collect()
        return sum(isinstance(thing, vtkRenderWindow) for thing in gc.get_objects())

    before = living()
    for _ in range(3):
        scene = Scene(size=(64, 64))
        scene.add_parts([model.parts["sacrum"]])
        scene.render()
        scene.finalize()
        del scene
    assert living() <= before


@pytest.fixture
def filmed(scene, model):
    """Lay a see-through film just outside one muscle."""
    muscle = model.parts["latissimus_dorsi.left"]
    mesh = muscle.mesh.copy()
    mesh.apply_translation([0.0, 2.0, 0.0])
    # Without the muscle's tendon, by which a fascia would thin out and let the flesh show.
    film = replace(
        muscle, id="deep_fascia.left", entry="deep_fascia", kind="fascia", mesh=mesh, tendon=None
    )
    assert is_film(film)
    scene.add_parts([film])
    bare = scene.screenshot(SIZE)
    scene.apply({**whole(model), film.id: PartLook(0.3)})
    assert moved_pixels(scene.screenshot(SIZE), bare) > 500
    yield scene
    scene._drop([film.id])


def test_resting_picture_is_the_same_to_the_pixel_after_any_movement(filmed):
    pose, before = filmed.pose, filmed.screenshot(SIZE)
    for turn in (7.0, -7.0):
        filmed.orbit(turn, 0.0)
        filmed.render(moving=True)
    filmed.pose = pose
    assert np.array_equal(filmed.screenshot(SIZE), before)
