"""The window for real: peel by rail, pick, hide, undo, search, steps, files, closing."""

import gc
import json
import weakref
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QAction, QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget

from tests.fakes import toy_model
from viewer.panels.sheets import help_html
from viewer.settings import Settings, last_session_path, load_settings
from viewer.state import commands
from viewer.state.actions import ACTIONS
from viewer.state.folding import is_folded
from viewer.state.view_state import Pin, Sides, ViewState
from viewer.window import MainWindow


def picture(window):
    return window.scene_widget.scene.screenshot((400, 400)).astype(int)


def drag_handle(qtbot, window, depth, side="left"):
    rail = window.rail
    start = rail.handle_centre(side).toPoint()
    end = QPoint(
        start.x(), round(rail._core().top() + (rail.bands()[depth].top if depth < 11 else 9999))
    )
    qtbot.mousePress(rail, Qt.MouseButton.LeftButton, pos=start)
    for k in range(1, 6):
        qtbot.mouseMove(rail, start + (end - start) * k / 5)
    qtbot.mouseRelease(rail, Qt.MouseButton.LeftButton, pos=end)


def press(window, action_id):
    window._actions[action_id].trigger()


def test_dragging_the_rail_peels_both_sides_in_one_undo(qtbot, window):
    before = picture(window)
    drag_handle(qtbot, window, 3)
    assert window.state.peeled == Sides(3, 3)
    assert np.abs(picture(window) - before).mean() > 1
    window.undo()
    assert window.state.peeled == Sides(0, 0)
    assert np.abs(picture(window) - before).mean() < 0.5


def test_the_rail_peels_only_the_side_that_is_worked_on(qtbot, window):
    window.work_on("right")
    drag_handle(qtbot, window, 2, "right")
    assert window.state.peeled == Sides(0, 2)
    shown = window.scene_widget.scene.shown()
    assert "skin.left" in shown
    assert "skin.right" not in shown


def test_a_click_on_a_band_hides_its_stratum_and_a_second_shows_it(qtbot, window):
    place = window.rail.band_centre(3).toPoint()
    qtbot.mouseClick(window.rail, Qt.MouseButton.LeftButton, pos=place)
    assert "rhomboid_major.left" not in window.scene_widget.scene.shown()
    assert [t.text for t in window.strip.things] == ["Off: second sheet, both sides"]
    qtbot.mouseClick(window.rail, Qt.MouseButton.LeftButton, pos=place)
    assert window.state == ViewState() or window.strip.things == ()


def test_the_rail_works_from_the_keyboard(qtbot, window):
    window.rail.setFocus()
    for _ in range(3):
        qtbot.keyClick(window.rail, Qt.Key.Key_Down)
    qtbot.keyClick(window.rail, Qt.Key.Key_Up)
    assert window.state.peeled == Sides(2, 2)
    for _ in range(6):
        qtbot.keyClick(window.rail, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(window.rail, Qt.Key.Key_Space)
    assert 5 in window.state.strata_off.left


def test_bands_show_the_true_thickness_under_the_pointer_and_hold_still_on_the_rail(qtbot, window):
    qtbot.waitUntil(lambda: window._probe is not None)
    window._last_place = (40.0, 115.0, 280.0)
    window._probe_here()
    ladder = window.rail.ladder
    assert ladder[0] == pytest.approx(2.4, abs=0.2)
    assert ladder[1] == pytest.approx(8.0, abs=0.6)
    window.rail.pointer_inside = True
    window._last_place = (150.0, 115.0, 100.0)
    window._probe_here()
    assert window.rail.ladder == ladder


def test_a_click_on_the_picture_picks_names_and_captions(qtbot, window):
    place = window.scene_widget.rect().center() + QPoint(-30, 0)
    hit = window.scene_widget.pick_at(QPointF(place))
    assert hit is not None
    qtbot.mouseClick(window.scene_widget, Qt.MouseButton.LeftButton, pos=place)
    assert window.state.selection == (hit.part_id,)
    assert window.caption.title == window._titles[hit.part_id]
    assert window.tree.selectedItems()


def test_left_is_left_in_the_picture_from_behind(window):
    scene = window.scene_widget.scene
    points, _ = scene.project(np.array([[100.0, 0, 200], [-100.0, 0, 200]]))
    assert points[0, 0] < points[1, 0]


def test_hide_and_one_key_brings_all_back(qtbot, window):
    window.do(commands.select(["deltoid.left"]))
    press(window, "hide")
    assert "deltoid.left" not in window.scene_widget.scene.shown()
    assert window.strip.things[0].text.startswith("Hidden: Deltoid")
    drag_handle(qtbot, window, 4)
    press(window, "all_back")
    assert set(window.scene_widget.scene.shown()) == set(window.model.parts)
    press(window, "undo")
    assert window.state.peeled == Sides(4, 4)
    assert "deltoid.left" in window.state.hidden


def test_a_chip_of_the_strip_brings_its_own_thing_back(qtbot, window):
    window.do(commands.hide(["deltoid.left"]))
    window.do(commands.show_side("left"))
    chip = next(
        b for b in window.strip.findChildren(QAbstractButton) if "right side" in b.text().lower()
    )
    qtbot.mouseClick(chip, Qt.MouseButton.LeftButton)
    assert window.state.side_shown == "both"
    assert window.state.hidden == {"deltoid.left"}


def test_alone_see_through_and_peek_look_without_doing(window):
    window.do(commands.peel_to(2, "both", window.model))
    done = window.state.peeled
    window.do(commands.select(["rhomboid_major.left"]))
    press(window, "alone")
    assert set(window.scene_widget.scene.shown()) == {"rhomboid_major.left"}
    press(window, "alone")
    press(window, "peek")
    assert window.scene_widget.scene.shown()["trapezius_transverse.left"].opacity < 1
    press(window, "peek")
    press(window, "see_through")
    assert window.scene_widget.scene.shown()["rhomboid_major.left"].opacity < 1
    assert window.state.peeled == done


def test_search_picks_and_goes_there(qtbot, window):
    before = window.scene_widget.scene.camera()
    window.focus_search()
    qtbot.keyClicks(window.search, "left rhomboideus major")
    qtbot.keyClick(window.search, Qt.Key.Key_Return)
    assert window.state.selection == ("rhomboid_major.left",)
    after = window.scene_widget.scene.camera()
    assert after["parallel_scale"] < before["parallel_scale"]
    window.undo()
    assert window.scene_widget.scene.camera()["parallel_scale"] == pytest.approx(
        before["parallel_scale"]
    )


def test_a_key_that_still_comes_through_the_closed_list_is_the_windows(qtbot, window):
    # As X delivers it when the window was busy going to what was found.
    window.focus_search()
    qtbot.keyClicks(window.search, "left rhomboideus major")
    qtbot.keyClick(window.search, Qt.Key.Key_Return)
    assert not window.search.hasFocus()
    late = QKeyEvent(
        QEvent.Type.ShortcutOverride, Qt.Key.Key_W, Qt.KeyboardModifier.NoModifier, "w"
    )
    QApplication.sendEvent(window.search, late)
    assert not late.isAccepted()
    window.focus_search()
    typed = QKeyEvent(
        QEvent.Type.ShortcutOverride, Qt.Key.Key_W, Qt.KeyboardModifier.NoModifier, "w"
    )
    QApplication.sendEvent(window.search, typed)
    assert typed.isAccepted()


def test_letters_typed_into_the_search_are_not_keys_of_the_window(qtbot, window):
    window.do(commands.select(["deltoid.left"]))
    window.focus_search()
    qtbot.keyClicks(window.search, "hah")
    assert window.search.text() == "hah"
    assert window.state.hidden == frozenset()


def test_a_refused_step_says_why_and_anyway_does_it(window):
    window.steps.choose("trapezius")
    window.do_step("trapezius")
    assert "trapezius_transverse.left" in window.scene_widget.scene.shown()
    assert "First" in window.statusBar().currentMessage()
    assert window.steps.anyway_button.isVisibleTo(window)
    assert not window.steps.do_button.isVisibleTo(window)
    window.steps.anyway_button.click()
    assert is_folded(window.state, "trapezius_transverse.left")
    assert "trapezius" in window.state.overridden.left


def test_steps_forwards_and_back_move_the_model(window):
    whole = set(window.scene_widget.scene.shown())
    names = [step.id for step in window.plan.steps]
    for _ in range(names.index("trapezius") + 1):
        window.next_step()
    shown = window.scene_widget.scene.shown()
    assert is_folded(window.state, "trapezius_transverse.left")
    assert is_folded(window.state, "trapezius_transverse.right")
    assert "skin.left" not in shown
    assert "rhomboid_major.left" in shown
    for _ in range(names.index("trapezius") + 1):
        window.previous_step()
    assert set(window.scene_widget.scene.shown()) == whole


def test_the_rail_moves_the_step_line(qtbot, window):
    drag_handle(qtbot, window, 3)
    done = {line.step.id for line in window.steps._lines["left"] if line.status == "done"}
    assert {"skin", "superficial_fascia", "trapezius", "latissimus"} <= done


def test_a_box_of_the_tree_hides_one_side(window):
    row = window.tree._rows["deltoid.left"]
    row.setCheckState(1, Qt.CheckState.Unchecked)
    assert window.state.hidden == {"deltoid.left"}
    assert row.checkState(2) == Qt.CheckState.Checked
    row.setCheckState(1, Qt.CheckState.Checked)
    assert "deltoid.left" in window.scene_widget.scene.shown()


def test_fixed_views_and_the_way_back(window):
    scene = window.scene_widget.scene
    start = scene.camera()
    press(window, "view_lateral_left")
    assert scene.camera()["azimuth_deg"] == pytest.approx(90)
    window.turn((20, 0))
    assert scene.camera()["azimuth_deg"] != pytest.approx(90)
    press(window, "return_view")
    assert scene.camera()["azimuth_deg"] == pytest.approx(90)
    press(window, "view_posterior")
    assert scene.camera()["focal_point"] == pytest.approx(start["focal_point"])


def test_the_gentle_orbit_never_goes_round(window):
    for _ in range(40):
        window.turn((10, 0))
    limited = window.scene_widget.scene.camera()["azimuth_deg"]
    assert abs(limited) <= 90
    window.set_free_orbit(True)
    for _ in range(6):
        window.turn((10, 0))
    assert abs(window.scene_widget.scene.camera()["azimuth_deg"]) > abs(limited)


def test_measure_says_millimetres_and_that_it_is_for_teaching(window):
    window.set_measuring(True)
    for point in ((0.0, 115.0, 100.0), (0.0, 115.0, 150.0)):
        window._add_measure_point(point)
    message = window.statusBar().currentMessage()
    assert "50 mm" in message
    assert "not for needle" in message
    window.clear_measure()
    assert window.state.measure == ()


@pytest.mark.parametrize(
    "action",
    ["labels", "blank_labels", "surface", "compare", "look_as_fixed", "look_high_contrast"],
)
def test_each_way_of_showing_changes_the_picture_and_comes_back(window, action):
    window.do(commands.peel_to(3, "left", window.model))
    before = picture(window) if action != "compare" else None
    press(window, action)
    QApplication.processEvents()
    if before is not None:
        assert np.abs(picture(window) - before).max() > 20
    else:
        assert window.state.compare
    while window.session.undo_name and "peel" not in window.session.undo_name:
        window.undo()
    if before is not None:
        assert np.abs(picture(window) - before).mean() < 0.5
    assert not window.state.compare


def test_a_saved_state_is_opened_again_with_view_peel_and_pins(window, tmp_path):
    window.do(commands.peel_to(4, "left", window.model))
    window.do(commands.select(["rhomboid_major.right"]))
    window.add_pin("tendon here")
    window.go_to_view("superior")
    path = tmp_path / "a.peelback"
    assert window.save_file(path)
    saved = window.state
    window.bring_all_back()
    window.go_to_view("posterior")
    assert window.open_file(path)
    assert window.state.peeled == Sides(4, 0)
    assert window.state.pins[0].text == "tendon here"
    assert window.state.view == "superior"
    assert window.state.camera == saved.camera


def test_a_foreign_file_is_refused_and_nothing_is_lost(window, tmp_path, monkeypatch):
    told = []
    monkeypatch.setattr(
        "viewer.menus.file.QMessageBox.warning", lambda parent, title, text: told.append(text)
    )
    path = tmp_path / "x.peelback"
    path.write_text(json.dumps({"hello": 1}))
    before = window.state
    assert not window.open_file(path)
    assert window.state == before
    assert "not a working state" in told[0]


def test_the_next_window_begins_where_the_last_one_ended(qtbot, window):
    window.do(commands.peel_to(5, "both", window.model))
    window.do(commands.add_pin(Pin((1.0, 2.0, 3.0), "note")))
    window.close()
    assert last_session_path().exists()
    second = MainWindow(window.model.body, "preview", Settings(cautions_seen=True))
    qtbot.addWidget(second)
    second._reopen()
    second.take_model(toy_model())
    assert second.state.peeled == Sides(5, 5)
    assert second.state.pins[0].text == "note"
    second.close()


@pytest.mark.parametrize(
    "text",
    ["{", '{"format": "peelback working state", "version": 99, "state": {}}', '{"peeled": 3}'],
)
def test_a_last_session_that_cannot_be_read_is_not_written_over(qtbot, window, text):
    path = last_session_path()
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text)
    second = MainWindow(window.model.body, "preview", Settings(cautions_seen=True))
    qtbot.addWidget(second)
    second._reopen()
    second.take_model(toy_model())
    second.do(commands.peel_to(5, "both", second.model))
    second.close()
    aside = path.with_name("last.broken-1.peelback")
    assert aside.read_text() == text
    assert str(aside) in second._faults[0]


def test_the_picture_is_saved_at_the_chosen_size(window, tmp_path):
    from PIL import Image

    path = tmp_path / "p.png"
    assert window.save_picture_to(path, (640, 480))
    with Image.open(path) as image:
        assert image.size == (640, 480)
        assert np.asarray(image.convert("L")).std() > 5
    window.copy_picture()
    assert not QApplication.clipboard().image().isNull()


def test_every_action_of_the_table_is_in_a_menu_with_its_keys(window):
    texts = {a.statusTip() for a in window.findChildren(QAction)}
    for action in ACTIONS:
        assert (action.tip or action.title.rstrip("…")) in texts
        keys = [k.toString() for k in window._actions[action.id].shortcuts()]
        assert len(keys) == len(action.keys)


def test_the_help_sheet_lists_all_keys_and_the_cautions(window):
    html = help_html(window.theme)
    for action in ACTIONS:
        assert action.title.rstrip("…").replace("&", "&amp;") in html
    assert "sharps" in html.lower()
    assert "not for needle" in html


def test_every_control_has_a_name_for_screen_readers(window):
    for widget in window.findChildren(QWidget):
        if isinstance(widget, (QAbstractButton, QLineEdit)) and widget.isVisibleTo(window):
            name = widget.accessibleName() or getattr(widget, "text", lambda: "")()
            assert name or widget.objectName().startswith("qt_") or widget.parent().objectName()


def test_letters_grow_to_200_per_cent_and_the_window_still_fits(qtbot, window):
    from dataclasses import replace

    window._take_settings(replace(window.settings, font_scale=2.0, theme="dark"))
    qtbot.wait(50)
    assert window.rail.minimumSizeHint().height() <= 800
    assert window.scene_widget.width() >= 200
    assert load_settings()[0].font_scale == 2.0


def test_the_cautions_come_once(qtbot, window):
    from dataclasses import replace

    window.settings = replace(window.settings, cautions_seen=False)
    window.show_first_cautions()
    sheet = QApplication.activeModalWidget()
    assert "Before you begin" in sheet.windowTitle()
    sheet.close_button.click()
    assert load_settings()[0].cautions_seen
    window.show_first_cautions()
    assert QApplication.activeModalWidget() is None


def test_broken_graphics_give_a_sentence_and_no_traceback(qtbot, monkeypatch):
    def no_picture(parent):
        raise RuntimeError("no OpenGL")

    made = MainWindow(toy_model().body, "preview", Settings(), make_scene=no_picture, keep=False)
    qtbot.addWidget(made)
    monkeypatch.setattr(made, "_start_model", lambda: None)
    made._start_scene()
    assert "OpenGL" in made._waiting.text()
    made.close()


def test_a_window_that_was_never_shown_closes_without_a_picture_left(qtbot):
    from viewer.scene.widget import SceneWidget

    made = MainWindow(toy_model().body, "preview", Settings(), keep=False)
    widget = SceneWidget(made.stage)
    made.take_scene(widget)
    made.close()
    assert widget._finalized


def test_closing_lets_go_of_the_scene(qtbot, window):
    scene = weakref.ref(window.scene_widget.scene)
    window.close()
    assert window.scene_widget._finalized
    window.scene_widget.scene = None
    gc.collect()
    assert scene() is None


def still_points(window, part_id):
    return window.scene_widget.scene.drawn_parts()[part_id].still.points.copy()


def test_a_step_folds_and_undo_lays_it_back_exactly(window):
    before = still_points(window, "trapezius_transverse.left")
    window.do_step("trapezius", anyway=True)
    window.folds.finish()
    folded = still_points(window, "trapezius_transverse.left")
    assert np.linalg.norm(folded[: len(before)] - before, axis=1).max() > 20
    window.session.undo()
    window.folds.finish()
    assert np.array_equal(still_points(window, "trapezius_transverse.left"), before)
    window.session.redo()
    window.folds.finish()
    folded = still_points(window, "trapezius_transverse.left")
    assert np.linalg.norm(folded[: len(before)] - before, axis=1).max() > 20


def test_steps_take_away_when_they_are_set_to(window):
    window.set_steps_fold(False)
    window.do_step("trapezius", anyway=True)
    assert "trapezius_transverse.left" not in window.scene_widget.scene.shown()
    assert window.state.folds == ()


def test_the_slider_of_a_step_stops_a_fold_midway_in_one_undo_entry(window):
    window.steps.choose("trapezius")
    for value in (10, 30, 50):
        window.steps.fold_slider.setValue(value)
    assert {laid.share for laid in window.state.folds} == {0.5}
    window.session.undo()
    assert window.state.folds == ()


def test_a_fold_is_seen_to_happen_unless_movement_is_off(qtbot, window):
    window.show()
    window.folds.calm = False
    window.do(commands.select(["trapezius_transverse.left"]))
    window.toggle_fold_selected()
    qtbot.waitUntil(lambda: not window.folds.playing, timeout=20000)
    assert window.folds._shown == {"trapezius.left": 1.0}
    window.toggle_fold_selected()
    assert window.folds.playing
    qtbot.waitUntil(lambda: not window.folds.playing, timeout=5000)
    assert not window.scene_widget.scene.moved_parts()
    window.folds.calm = True
    window.toggle_fold_selected()
    assert not window.folds.playing
    assert window.folds._shown == {"trapezius.left": 1.0}


def test_picking_meets_a_flap_where_it_lies(window):
    scene = window.scene_widget.scene
    window.do_step("trapezius", anyway=True)
    window.folds.finish()
    points = still_points(window, "trapezius_transverse.left")
    top = points[points[:, 1].argmax()].astype(float)
    hit = scene.target().first_hit(top + [0, 300.0, 0], [0.0, -1.0, 0.0], scene.shown())
    assert hit is not None and abs(hit[1][1] - top[1]) < 3.0


def test_a_screen_reader_reads_and_sets_the_depth_rail(window):
    window.do(commands.peel_to(3, "both"))
    spoken = QAccessible.queryAccessibleInterface(window.rail)
    assert spoken.role() == QAccessible.Role.Slider
    value = spoken.valueInterface()
    assert (value.currentValue(), value.minimumValue(), value.maximumValue()) == (3, 0, 11)
    value.setCurrentValue(5)
    assert window.state.peeled == (5, 5)
    assert window.session.undo_name.startswith("peel to")


def test_large_letters_on_a_small_screen_show_whole_lines_and_on_wish_the_whole_step(window, qtbot):
    window._take_settings(replace(window.settings, font_scale=2.0))
    qtbot.waitUntil(lambda: window.tools.height() < 100)
    steps = window.steps
    line = steps._what.fontMetrics().lineSpacing()
    assert (steps._words.maximumHeight() - 2) % line == 0
    assert steps._words.maximumHeight() >= 3 * line
    assert steps.whole_button.isVisible()
    before = steps._words.height()
    steps.whole_button.click()
    qtbot.waitUntil(lambda: steps._words.height() > 1.5 * before)
    # All of it, or as much as leaves the picture its strip.
    qtbot.waitUntil(
        lambda: not steps._words.verticalScrollBar().isVisible() or window.stage.height() < 160
    )
    assert window.centralWidget().height() + window.menuBar().height() <= window.height()
    assert window.stage.height() >= 100
    steps.whole_button.click()
    qtbot.waitUntil(lambda: steps._words.height() == before)
    assert window.side_panel.isVisible()
