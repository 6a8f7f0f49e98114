"""A tag test in a real window: asked, answered, explained, summed up, and all given back."""

from __future__ import annotations

from datetime import timedelta

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QApplication, QMessageBox

from meshes.questions.cover import layers_of
from viewer.state import commands
from viewer.state.view_state import Sides
from viewer.study.questions import KINDS, POINTED_KINDS
from viewer.study.tag_test import TestChoice


@pytest.fixture
def desk(window):
    """Return a window whose layers are ready, with something done in it already."""
    window._layers = layers_of(window.model)
    window.do(commands.peel_to(2, "left", window.model))
    window.do(commands.select(["rhomboid_major.left"]))
    return window


def begin(desk, seed=3, **choice):
    choice = {"kinds": ("name",), "number": 2} | choice
    return desk.begin_tag_test(TestChoice(desk.learner, **choice), seed)


def press(sitting, keys):
    """Press a key of the sitting (the X server of the tests has no active window)."""
    (shortcut,) = [k for k in sitting._shortcuts if k.key() == QKeySequence(keys)]
    assert shortcut.isEnabled()
    shortcut.activated.emit()


def picture(desk):
    return desk.scene_widget.scene.screenshot((300, 240)).astype(int)


def test_the_tagged_place_is_what_a_click_takes_in_the_picture(qtbot, desk):
    asked = 0
    for seed in range(4):
        sitting = begin(desk, seed, kinds=tuple(KINDS), number=6)
        while (question := sitting.test.question) is not None and not sitting.test.over:
            pixel, hit = desk.scene_widget.scene.sight_of(question.place)
            assert hit is not None and hit.part_id == question.part_id, question.prompt
            width, height = desk.scene_widget.scene.size()
            assert 0 <= pixel[0] < width and 0 <= pixel[1] < height
            sitting.give_up()
            sitting.next()
            asked += 1
        sitting.finish()
    assert asked >= 20


def test_the_flag_is_seen_where_the_tag_is(qtbot, desk):
    sitting = begin(desk)
    scene = desk.scene_widget.scene
    pixel, _ = scene.sight_of(sitting.test.question.pin)
    with_flag = scene.screenshot().astype(int)
    scene.set_tag(None)
    without = scene.screenshot().astype(int)
    changed = np.argwhere(np.abs(with_flag - without).max(axis=2) > 40)[:, ::-1]
    assert len(changed) > 60
    # The flag stands on its place: all of it lies within a few letters' height of the tip.
    away = np.linalg.norm(changed - pixel, axis=1)
    assert away.max() < 6 * scene.font_px and away.min() < scene.font_px


def corner(desk):
    """Return the corner of the picture in which the cross of directions stands."""
    scene = desk.scene_widget.scene
    shown = scene.screenshot().astype(int)
    bare = scene.screenshot(overlays=False).astype(int)
    return np.abs(shown - bare)[-90:, -120:].max()


def test_the_cross_of_directions_does_not_answer_left_or_right(qtbot, desk):
    assert corner(desk) > 60
    sitting = begin(desk, kinds=("side",), number=1)
    assert sitting.test.question.kind == "side"
    assert corner(desk) == 0
    sitting.choose(sitting.test.question.right)
    assert corner(desk) > 60
    sitting.finish()
    sitting = begin(desk, kinds=("name",), number=1)
    assert corner(desk) > 60
    sitting.finish()
    assert corner(desk) > 60


def test_state_camera_and_undo_are_given_back_exactly(qtbot, desk):
    scene = desk.scene_widget.scene
    scene.orbit(12, 5)
    desk._on_view_changed()
    before, pose, undo = desk.state, scene.pose, desk.session.undo_name
    shown = {name: a.isEnabled() for name, a in desk._actions.items()}
    seen = picture(desk)
    sitting = begin(desk)
    assert desk.state != before
    sitting.press_number(0)
    sitting.next()
    desk._actions["turn_left"].trigger()
    sitting.finish()
    assert desk.state == before
    assert scene.pose == pose
    assert desk.session.undo_name == undo
    assert {name: a.isEnabled() for name, a in desk._actions.items()} == shown
    assert np.abs(picture(desk) - seen).mean() < 0.5
    assert desk.rail.isVisible() and desk.steps.isVisible() and desk.takeover is None
    desk.undo()
    assert desk.state.peeled == Sides(0, 0)


def test_number_keys_choose_and_enter_goes_on_to_the_sum(qtbot, desk):
    sitting = begin(desk)
    for _ in range(2):
        right = sitting.test.question.right
        press(sitting, str(right + 1))
        assert sitting.test.verdict.right
        assert sitting.panel_.next_button.isEnabled()
        press(sitting, "Return")
    assert sitting.panel_.stack.currentIndex() == 1
    assert "2 of 2 right" in sitting.panel_.sum.toPlainText()
    assert desk.results.by_stratum(desk.learner)
    sitting.end()
    assert desk.takeover is None


def test_nothing_names_the_structure_before_the_answer(qtbot, desk):
    sitting = begin(desk)
    question = sitting.test.question
    name = desk._titles[question.part_id].rsplit(",", 1)[0].lower()
    pixel, hit = desk.scene_widget.scene.sight_of(question.place)
    desk.scene_widget.hovered.emit(hit)
    assert name not in desk.statusBar().currentMessage().lower()
    assert not desk.caption.isVisible() and not desk.tree.isVisible() and not desk.rail.isVisible()
    for row in ("labels", "find", "into_view", "covers", "undo", "section"):
        assert not desk._actions[row].isEnabled()
    sitting.give_up()
    desk.scene_widget.hovered.emit(hit)
    assert name in desk.statusBar().currentMessage().lower()


def test_the_answer_is_tinted_and_explained(qtbot, desk):
    sitting = begin(desk)
    question = sitting.test.question
    sitting.press_number(question.right)
    assert desk.state.selection == question.shows
    assert question.explanation.split(".")[0] in sitting.panel_.reason.toPlainText()
    assert "Comes again" in sitting.panel_.reason.toPlainText()


def test_a_click_answers_what_is_pointed_at(qtbot, desk):
    for kind in POINTED_KINDS:
        sitting = begin(desk, kinds=(kind,))
        pixel, _ = desk.scene_widget.scene.sight_of(sitting.test.question.place)
        ratio = desk.scene_widget.devicePixelRatioF()
        at = QPoint(round(pixel[0] / ratio), round(pixel[1] / ratio))
        qtbot.mouseClick(desk.scene_widget, Qt.MouseButton.LeftButton, pos=at)
        assert sitting.test.verdict is not None and sitting.test.verdict.right
        sitting.finish()


def test_five_are_moved_into_order_by_keys(qtbot, desk):
    sitting = begin(desk, kinds=("order",), number=1)
    panel, order = sitting.panel_, sitting.test.question.order
    for place, title in enumerate(order):
        row = panel.titles_in_order().index(title)
        panel.order.setCurrentRow(row)
        for _ in range(row - place):
            panel.move_title(-1)
    sitting.press_enter()
    assert sitting.test.verdict.right


def test_typed_answers_are_judged_and_an_empty_line_is_no_answer(qtbot, desk):
    sitting = begin(desk, typed=True)
    press(sitting, "Return")
    assert sitting.is_open
    # A number key is a letter of the answer, not a choice.
    qtbot.keyClicks(sitting.panel_.line, sitting.test.question.accepted[0])
    sitting.press_enter()
    assert sitting.test.verdict.right


def test_half_a_name_has_a_sign_of_its_own_in_the_sum(desk):
    sitting = begin(desk, typed=True, number=1, strata=(3,))
    name = sitting.test.question.accepted[0]
    assert " " in name
    sitting.type_answer(name.split()[0])
    assert sitting.panel_.verdict.text().startswith("≈")
    sitting.next()
    assert sitting.panel_.list.item(0).text().startswith("≈")
    sitting.finish()


def test_a_station_ends_by_itself_and_a_pause_stops_its_clock(qtbot, desk, monkeypatch):
    rung = []
    monkeypatch.setattr(QApplication, "beep", staticmethod(lambda: rung.append(1)))
    sitting = begin(desk, station_s=10, bell=True)
    test = sitting.test
    sitting.pause()
    assert not desk.scene_widget.isVisible() and not sitting.panel_.stack.isVisible()
    began = test._began
    left = test.seconds
    assert test.seconds == left
    sitting.pause()
    assert desk.scene_widget.isVisible() and test._began > began
    test._began -= timedelta(seconds=11)
    sitting._on_tick()
    assert test.verdict is not None and not test.verdict.right
    assert rung == [1] and sitting.panel_.bell.isVisible()


def test_silent_is_the_default(qtbot, desk):
    assert TestChoice("Ada").bell is False


def test_explained_at_the_end_goes_on_at_once(qtbot, desk):
    sitting = begin(desk, explain="end")
    first = sitting.test.question
    sitting.give_up()
    assert sitting.test.question is not first and sitting.is_open
    sitting.give_up()
    assert sitting.panel_.stack.currentIndex() == 1
    sitting.panel_.list.setCurrentRow(0)
    assert desk.state.selection == first.shows


def test_ending_early_asks_and_keeps_what_was_answered(qtbot, desk, monkeypatch):
    sitting = begin(desk, number=5)
    sitting.give_up()
    sitting.next()
    monkeypatch.setattr(QMessageBox, "exec", lambda box: None)
    monkeypatch.setattr(QMessageBox, "clickedButton", lambda box: box.buttons()[0])
    sitting.end()
    assert sitting.panel_.stack.currentIndex() == 1
    assert "0 of 1 right" in sitting.panel_.sum.toPlainText()


def test_closing_the_window_during_a_test_loses_nothing(qtbot, desk):
    before = desk.state
    begin(desk)
    desk.shut_down()
    assert desk.session.state == before


def test_with_large_letters_all_five_rows_of_the_order_are_seen(qtbot, desk):
    for _ in range(20):
        desk._actions["font_larger"].trigger()
    sitting = begin(desk, kinds=("order",), number=1)
    qtbot.wait(50)
    order = sitting.panel_.order
    seen = order.viewport().rect()
    assert order.count() == 5
    assert all(seen.contains(order.visualItemRect(order.item(k))) for k in range(5))
    sitting.finish()


def test_large_letters_keep_the_test_in_the_window(qtbot, desk):
    sitting = begin(desk)
    for _ in range(20):
        desk._actions["font_larger"].trigger()
    assert desk.settings.font_scale == 2.0
    assert not desk.side_panel.isVisible() and not desk.rail.isVisible()
    panel = sitting.panel_
    assert panel.width() < 0.5 * desk.width()
    for button in (panel.next_button, panel.unknown_button, panel.pause_button, panel.end_button):
        assert panel.rect().contains(button.mapTo(panel, button.rect().bottomRight()))


def test_the_start_sheet_says_how_much_there_is_and_begins(qtbot, desk):
    desk.start_tag_test()
    sheet = desk._test_sheet
    assert "structures can be asked about" in sheet.told.text() and sheet.go.isEnabled()
    sheet._tick_all(sheet.kinds, False)
    assert not sheet.go.isEnabled() and sheet.choice is None
    sheet._tick_all(sheet.kinds, True)
    sheet.number.setValue(3)
    sheet.accept()
    assert desk.takeover is not None and desk.takeover.test.choice.number == 3


@pytest.mark.slow
def test_on_the_real_back_every_question_can_be_answered_in_its_picture(qtbot, preview_model):
    from viewer.scene.widget import SceneWidget
    from viewer.settings import Settings
    from viewer.window import MainWindow

    window = MainWindow(preview_model.body, "preview", Settings(cautions_seen=True, calm=True))
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    qtbot.waitExposed(window)
    window.take_scene(SceneWidget(window.stage))
    window.take_model(preview_model)
    window._layers = layers_of(preview_model)
    scene = window.scene_widget.scene
    for seed, places in ((1, "upright"), (2, "table")):
        sitting = begin(window, seed, kinds=tuple(KINDS), number=40, places=places)
        asked = 0
        while (question := sitting.test.question) is not None and not sitting.test.over:
            _, hit = scene.sight_of(question.place)
            assert hit is not None and hit.part_id == question.part_id, question.prompt
            sitting.give_up()
            sitting.next()
            asked += 1
        assert asked == 40
        sitting.finish()
    window.close()


def test_the_test_speaks_german_where_the_window_does(qtbot, desk):
    from dataclasses import replace

    desk._take_settings(replace(desk.settings, language="de"))
    sitting = begin(desk)
    panel = sitting.panel_
    assert panel.prompt.text() == "Benennen Sie die markierte Struktur."
    assert panel.where.text() == "Frage 1 von 2"
    assert panel.unknown_button.text() == "Weiß ich nicht"
    sitting.give_up()
    assert panel.verdict.text().startswith("✗  Keine Antwort. Es ist:")
    sitting.pause()
    assert panel.pause_button.text() == "Weiter"
    sitting.pause()
    sitting.finish()
    desk._take_settings(replace(desk.settings, language="en"))
