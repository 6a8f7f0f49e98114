"""Making a talk in the window: keep, order, write, undo, files, recovery, room check."""

import json

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog, QMessageBox

from viewer.panels.room_sheet import RoomSheet, room_findings
from viewer.panels.style import THEMES
from viewer.state import commands
from viewer.state.view_state import Sides, ViewState
from viewer.state.working_file import save_working_file
from viewer.talk import autosave
from viewer.talk.room import Room
from viewer.talk.scenes import Talk, TalkScene
from viewer.talk.talk_file import open_talk, save_talk


def titles(window):
    return [s.title for s in window.desk.talk.scenes]


@pytest.fixture
def three(window):
    window.show_talk_panel(True)
    for depth in (0, 2, 4):
        window.do(commands.peel_to(depth, "both", window.model))
        window.keep_scene()
    return window


@pytest.fixture
def refusals(monkeypatch):
    said = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *words: said.append(words[2]))
    return said


def test_keep_this_view_makes_a_scene_named_after_what_lies_open(three):
    assert titles(three) == ["The whole back", "First sheet", "Intermediate"]
    assert three.desk.talk.scenes[1].state.peeled == Sides(2, 2)
    assert three.desk.talk.scenes[1].state.camera is not None
    assert three.talk_panel.list.count() == 3


def test_a_view_kept_after_a_step_is_named_after_the_step(window):
    ticked = window.state.ticked.put("left", frozenset({"feel_landmarks", "skin"}))
    window.session.replace_state(window.state.with_(ticked=ticked))
    window.keep_scene()
    assert titles(window) == [window.plan["skin"].title]


def test_choosing_a_scene_shows_it_and_undo_goes_back_to_what_was_seen(three):
    three.talk_panel.list.setCurrentRow(0)
    assert three.state.peeled == Sides(0, 0)
    three.talk_panel.title.setFocus()
    three.undo()
    assert three.state.peeled == Sides(4, 4)


def test_scenes_are_ordered_by_keys_and_by_dragging(qtbot, three):
    panel = three.talk_panel
    panel.list.setFocus()
    qtbot.keyClick(panel.list, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    assert titles(three) == ["The whole back", "Intermediate", "First sheet"]
    assert panel.list.currentRow() == 1
    # What a drag ends in: the list's own model moves a row.
    panel.list.model().moveRow(panel.list.rootIndex(), 0, panel.list.rootIndex(), 3)
    qtbot.wait(20)
    assert titles(three) == ["Intermediate", "First sheet", "The whole back"]
    assert [panel.list.item(k).text()[3:] for k in range(3)] == titles(three)


def test_deleting_by_key_is_undone_where_the_list_has_the_keyboard(qtbot, three):
    three.talk_panel.list.setFocus()
    qtbot.keyClick(three.talk_panel.list, Qt.Key.Key_Delete)
    assert titles(three) == ["The whole back", "First sheet"]
    three.undo()
    assert titles(three) == ["The whole back", "First sheet", "Intermediate"]
    assert three.state.peeled == Sides(4, 4)


def test_words_written_in_the_panel_are_in_the_talk(qtbot, three):
    panel = three.talk_panel
    panel.title.selectAll()
    qtbot.keyClicks(panel.title, "Deep")
    qtbot.keyClicks(panel.line, "Mind it")
    panel.notes.setPlainText("Two\nlines")
    scene = three.desk.talk.scenes[2]
    assert (scene.title, scene.line, scene.notes) == ("Deep", "Mind it", "Two\nlines")
    assert panel.list.item(2).text() == "3  Deep"


def test_a_title_that_is_wiped_out_keeps_the_old_one(qtbot, three):
    three.talk_panel.title.selectAll()
    qtbot.keyClick(three.talk_panel.title, Qt.Key.Key_Backspace)
    assert titles(three)[2] == "Intermediate"
    assert "title" in three.statusBar().currentMessage()


def test_a_scene_can_be_given_another_view_and_doubled(three):
    three.do(commands.peel_to(6, "left", three.model))
    three.update_scene()
    assert three.desk.talk.scenes[2].state.peeled == Sides(6, 4)
    three.talk_panel.buttons["duplicate"].click()
    assert titles(three)[2:] == ["Intermediate", "Intermediate"]


def test_with_large_letters_every_button_of_the_desk_is_reached_by_scrolling(qtbot, three):
    window, panel = three, three.talk_panel
    for _ in range(20):
        window._actions["font_larger"].trigger()
    qtbot.wait(50)
    area = panel.scroll
    for widget in (panel.list, *panel.buttons.values(), panel.title, panel.line):
        area.ensureWidgetVisible(widget)
        place = widget.mapTo(area.viewport(), widget.rect().center())
        assert area.viewport().rect().contains(place), widget.accessibleName()
        assert widget.parentWidget().rect().contains(widget.geometry().center())
    assert panel.notes.height() >= 3 * panel.notes.fontMetrics().lineSpacing()


def test_every_control_of_the_panel_has_a_spoken_name(three):
    panel = three.talk_panel
    for widget in (panel.list, panel.title, panel.line, panel.notes, *panel.buttons.values()):
        assert widget.accessibleName()


def test_a_talk_is_saved_and_opened_again(three, tmp_path):
    path = tmp_path / "mine.talk"
    assert three.save_talk_file(path)
    assert not three.desk.unsaved
    assert open_talk(path).title == "mine"
    kept = three.desk.talk
    three.new_talk()
    assert titles(three) == []
    assert three.open_talk_file(path)
    assert three.desk.talk == kept


@pytest.mark.parametrize("text", ["", "{", '{"format": "other"}', '{"format": "peelback talk"}'])
def test_a_broken_file_is_refused_and_the_present_talk_stays(three, tmp_path, refusals, text):
    path = tmp_path / "bad.talk"
    path.write_text(text)
    before = three.desk.talk
    assert not three.open_talk_file(path)
    assert not three.open_any_file(path)
    assert three.desk.talk is before
    assert len(refusals) == 2 and all("bad.talk" in words for words in refusals)
    assert path.read_text() == text


def test_a_file_named_at_the_start_is_opened_as_what_it_is(window, tmp_path, refusals):
    talk, state = tmp_path / "a.json", tmp_path / "b.peelback"
    save_talk(talk, Talk("t", (TalkScene(ViewState(), "one"),)), "0")
    save_working_file(state, ViewState(peeled=Sides(3, 3)), {}, "preview", "0")
    assert window.open_any_file(talk)
    assert titles(window) == ["one"]
    assert window.open_any_file(state)
    assert window.state.peeled == Sides(3, 3)
    assert refusals == []
    foreign = tmp_path / "c.txt"
    foreign.write_text("hello")
    assert not window.open_any_file(foreign)
    assert len(refusals) == 1


def test_an_unsaved_talk_is_kept_on_the_side_and_offered_at_the_next_start(qtbot, three):
    three.keep_talk()
    record = json.loads(autosave.autosave_path().read_text())
    assert [s["title"] for s in record["scenes"]] == titles(three)
    kept = three.desk.talk
    from viewer.talk.scenes import TalkDesk

    three.desk = TalkDesk()
    three.offer_recovered_talk()
    box = next(w for w in QApplication.topLevelWidgets() if isinstance(w, QMessageBox))
    assert "3 scenes was not saved" in box.text()
    button = next(b for b in box.buttons() if b.text() == "Bring it back")
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert three.desk.talk == kept
    assert three.desk.unsaved


def test_closing_keeps_what_was_not_saved(three):
    kept = three.desk.talk
    three.close()
    found, _ = autosave.recover()
    assert found.talk == kept


def test_the_room_check_names_sizes_and_goes_by_the_distance(qtbot, window):
    sheet = RoomSheet(12.0, 2.0, 0.01, "light", window.screen().geometry(), window)
    qtbot.addWidget(sheet)
    assert all(f.good for f in sheet.findings())
    assert "20." in sheet.text.toPlainText() and "Teaching model" in sheet.text.toPlainText()
    sheet.distance.setValue(90)
    bad = [f.words for f in sheet.findings() if not f.good]
    assert bad and "too small" in bad[0]
    sheet.light.setCurrentIndex(3)
    assert any("room's light" in f.words for f in sheet.findings())


@pytest.mark.parametrize("theme", THEMES)
def test_words_for_the_hall_have_contrast_in_a_dimmed_room(theme):
    for finding in room_findings(Room(), 53.0, 53.0, THEMES[theme], 0.01):
        assert finding.good, finding.words


def test_presenting_begins_from_the_sheet_with_enter(qtbot, three):
    three.present()
    sheet = next(w for w in QApplication.topLevelWidgets() if isinstance(w, RoomSheet))
    assert "First sheet" not in sheet.text.toPlainText() or "no notes" in sheet.text.toPlainText()
    qtbot.keyClick(sheet, Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: three.presenting is not None, timeout=3000)
    assert not any(w.isVisible() for w in QApplication.topLevelWidgets() if isinstance(w, QDialog))
    assert three.settings.hall_distance_m == 12.0
    three.presenting.finish()


def test_looking_through_all_scenes_leaves_the_window_as_it_was(qtbot, three):
    before = three.state
    three.present()
    sheet = next(w for w in QApplication.topLevelWidgets() if isinstance(w, RoomSheet))
    three.rehearse(sheet)
    assert three.state == before
    assert set(three.talk_pictures) == set(three.desk.talk.scenes)
    assert three.session.undo_name == "peel to intermediate, both sides"
    sheet.reject()


def test_the_rapid_review_runs_on_the_side_that_is_asked_for(qtbot, window):
    window.rapid_review("left")
    made = window.presenting
    assert made.presenter.playing
    assert made.presenter.talk.title == "Rapid review, left"
    assert made.band.title.text() == made.presenter.scene.title
    made.finish()


def test_standing_at_the_table_and_back_is_undone(window):
    window.stand_at("left")
    assert window.scene_widget.scene.table == "left"
    assert window._actions["stand_left"].isChecked()
    window.undo()
    assert window.scene_widget.scene.table == ""
    window.stand_at("head")
    window.go_to_view("posterior")
    assert window.state.table == ""
    assert window.scene_widget.scene.pose.roll_deg == 0


def test_one_pointer_is_shared_by_table_and_upright_picture(qtbot, window):
    window.stand_at("left")
    qtbot.wait(50)
    scene = window.scene_widget.scene
    left, top, width, height = scene._table.box(scene.size())
    hits = [
        scene.pick(left + width * x, top + height * y)
        for x in (0.35, 0.5, 0.65)
        for y in (0.3, 0.5, 0.7)
    ]
    hit = next(h for h in hits if h is not None)
    window._on_hover(hit)
    for spot in scene._table._spots:
        assert spot.actor.GetVisibility()
        assert spot._data.GetPoint(0) == pytest.approx(tuple(hit.point), abs=1e-3)
    window._on_hover(None)
    assert not scene._table._spots[0].actor.GetVisibility()
