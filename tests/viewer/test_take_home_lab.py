"""The take-home lab in a real window: drawn, handed in, folded, kept, gone on with, summed up."""

from __future__ import annotations

import csv

import numpy as np
import pytest
from PySide6.QtWidgets import QMessageBox

from meshes.model import other_side
from viewer.scene.scene import PickHit
from viewer.state import commands
from viewer.study.results import ResultsError

TUBES = ("nerve", "artery", "vein")


@pytest.fixture
def lab(qtbot, window):
    qtbot.waitUntil(lambda: window._probe is not None, timeout=20000)
    made = window.begin_lab("left")
    yield made
    made.finish()


def to_step_with_lines(lab):
    """Go on to the first step that has a line to draw."""
    while lab.step is not None and not lab.book.of(lab.step.id).lines:
        lab.go_on()
    assert lab.step is not None


def layer(lab):
    """Return the part on the left that the step's line lies on."""
    window = lab.window
    wanted = window.plan.removed_by(lab.step, window.model, "left")
    start = lab._planned[0].points[0]
    sheets = [i for i in wanted if window.model.parts[i].kind not in TUBES]

    def away(part_id):
        vertices = np.asarray(window.model.parts[part_id].mesh.vertices)
        return np.linalg.norm(vertices - start, axis=1).min()

    return min(sheets, key=away)


def click_along(lab, count=4, aside_mm=0.0):
    points = lab._planned[0].points
    part_id = layer(lab)
    for k in np.linspace(0, len(points) - 1, count).astype(int):
        place = points[k] + np.array([aside_mm, 0.0, 0.0])
        lab.on_pick(PickHit(part_id, place, np.array([0.0, 1.0, 0.0])), False)


def test_cautions_stand_before_the_lab(window):
    window.start_lab()
    sheet = window._lab_sheet
    assert "not for needle or surgical guidance" in sheet.text.toPlainText()
    assert "Begins with the whole back" in sheet.told.text()
    sheet.side.setCurrentIndex(sheet.side.findData("right"))
    sheet.accept()
    assert window.takeover is not None and window.takeover.book.side == "right"
    window.takeover.finish()


def test_the_first_step_shows_what_is_felt_and_the_next_no_longer(lab):
    assert lab.step.id == "feel_landmarks"
    assert lab.window.state.surface_marks
    lab.go_on()
    assert not lab.window.state.surface_marks
    lab.step_back()
    assert lab.window.state.surface_marks


def test_the_plans_line_is_shown_only_once_a_line_was_handed_in(lab):
    to_step_with_lines(lab)
    scene = lab.window.scene_widget.scene
    click_along(lab)
    assert len(scene._marks.cut[0]) == 4 and not len(scene._marks.cut[2])
    lab.hand_in()
    assert len(scene._marks.cut[2]) == len(lab._planned)
    assert lab.window.rehearse_dock is None or lab.window.rehearse_dock.isHidden()


def test_the_plans_own_line_earns_more_than_one_beside_it(lab):
    to_step_with_lines(lab)
    click_along(lab, 6)
    lab.hand_in()
    lab.again()
    click_along(lab, 6, aside_mm=20.0)
    lab.hand_in()
    on, beside = lab.book.of(lab.step.id).cuts
    assert on.followed > 0.9 and on.mean_mm < 3.0
    assert on.score > beside.score
    assert lab.book.of(lab.step.id).best(on.line).score == on.score


def test_the_table_sees_what_is_lost_and_how_near_the_rest_lies(lab):
    to_step_with_lines(lab)
    part_id = layer(lab)
    low, high = lab.window.model.parts[part_id].mesh.bounds
    for share in (0.7, 0.3):
        place = np.array([(low[0] + high[0]) / 2, high[1], low[2] + share * (high[2] - low[2])])
        lab.on_pick(PickHit(part_id, place, np.array([0.0, 1.0, 0.0])), False)
    lab.set_depth(30.0)
    lab.hand_in()
    text = lab.lab.answer.toPlainText()
    assert "Would be lost" in text and "Clearance to what must stay" in text
    deep = lab.book.of(lab.step.id).cuts[-1]
    assert deep.lost and deep.through
    for loss in deep.lost:
        assert lab.window._titles[loss.part_id] in text
        assert 0.0 <= loss.depth_mm <= 30.0


def test_another_layer_is_refused_and_counted(lab):
    to_step_with_lines(lab)
    wanted = lab.window.plan.removed_by(lab.step, lab.window.model, "left")
    other = next(i for i in lab.window.model.parts if i not in wanted)
    lab.on_pick(PickHit(other, np.zeros(3), np.array([0.0, 1.0, 0.0])), False)
    assert not lab.window.state.cut_line.points
    assert "this step cuts" in lab.lab.answer.toPlainText()
    assert lab.book.of(lab.step.id).strays == 1


def test_the_last_point_comes_back_and_a_handed_in_line_stays(lab):
    to_step_with_lines(lab)
    click_along(lab, 3)
    lab.point_back()
    assert len(lab.window.state.cut_line.points) == 2
    lab.hand_in()
    lab.point_back()
    assert len(lab.window.state.cut_line.points) == 2
    lab.hand_in()
    assert len(lab.book.of(lab.step.id).cuts) == 1


def test_going_on_takes_away_what_the_step_frees_and_back_lays_it_again(lab):
    to_step_with_lines(lab)
    step, window = lab.step, lab.window
    lab.go_on()
    assert step.id in window.plan.done(window.model, window.state, "left")
    assert step.id not in window.plan.done(window.model, window.state, "right")
    lab.step_back()
    assert lab.step.id == step.id
    assert step.id not in window.plan.done(window.model, window.state, "left")


def test_the_lab_goes_on_where_it_was_left(window, lab):
    to_step_with_lines(lab)
    click_along(lab)
    lab.hand_in()
    lab.go_on()
    step, done, state = lab.step.id, lab.book.done, window.state
    points = lab.book.score
    lab.finish()
    window.results.close()
    window._results = None
    again = window.begin_lab("left")
    assert (again.step.id, again.book.done, again.book.score) == (step, done, points)
    assert window.state.removed == state.removed and window.state.folds == state.folds
    again.finish()
    other = window.begin_lab("right")
    assert other.book.done == 0
    other.finish()


def test_enter_goes_on_where_no_line_is_left_to_draw(lab, qtbot):
    first = lab.step
    lab.window.scene_widget.setFocus()
    if not lab.book.of(first.id).missing:
        lab.press_enter()
        assert lab.step is not first
    while len(lab.book.of(lab.step.id).missing) != 1:
        lab.go_on()
    here = lab.step
    lab.press_enter()
    assert lab.step is here
    click_along(lab)
    lab.press_enter()
    assert lab.step is here
    lab.hand_in()
    assert not lab.book.of(here.id).missing
    lab.press_enter()
    assert lab.step is not here


def test_the_window_is_given_back_exactly(window, lab):
    lab.finish()
    window.do(commands.peel_to(3, "right", window.model))
    window.set_rehearsing(True)
    before, pose, undo = window.state, window.scene_widget.scene.pose, window.session.undo_name
    again = window.begin_lab("left")
    to_step_with_lines(again)
    click_along(again)
    again.hand_in()
    again.finish()
    assert window.state == before and window.session.undo_name == undo
    assert window.scene_widget.scene.pose == pose
    assert window.rehearse_dock.isVisible()
    assert window.rail.isVisible()


def test_every_step_to_the_end_gives_a_summary_that_is_written(lab, tmp_path):
    drawn = 0
    while lab.step is not None:
        if lab.book.of(lab.step.id).lines and drawn < 2:
            click_along(lab)
            lab.hand_in()
            drawn += 1
        lab.go_on()
    assert lab.lab.stack.currentIndex() == 1
    text = lab.lab.sum.toPlainText()
    assert f"{len(lab.book.steps)} of {len(lab.book.steps)} steps done" in text
    assert all(step.title in text for step in lab.window.plan.steps)
    assert lab.write_csv(tmp_path / "lab.csv")
    with open(tmp_path / "lab.csv", encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert {row["number"] for row in rows[:-1]} == {str(n + 1) for n in range(len(lab.book.steps))}
    assert sum(bool(row["points"]) for row in rows) >= 2
    assert "not for needle or surgical guidance" in rows[-1]["step"]
    assert lab.write_pdf(tmp_path / "lab.pdf")
    assert (tmp_path / "lab.pdf").read_bytes().startswith(b"%PDF")


def test_a_place_that_cannot_be_written_is_told_and_leaves_nothing(lab, tmp_path, monkeypatch):
    said = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *words: said.append(words[-1]))
    (tmp_path / "file").write_text("in the way")
    assert not lab.write_csv(tmp_path / "file" / "lab.csv")
    assert not lab.write_pdf(tmp_path / "file" / "lab.pdf")
    assert len(said) == 2 and all("cannot be written" in words for words in said)


def test_a_step_that_cannot_be_kept_is_told_and_the_lab_goes_on(lab, monkeypatch):
    def refuse(step, record):
        raise ResultsError("the disk is full")

    monkeypatch.setattr(lab, "_keep_record", refuse)
    first = lab.step.id
    lab.go_on()
    assert lab.step.id != first
    assert "the disk is full" in lab.window.statusBar().currentMessage()


def test_a_broken_record_is_told_and_the_other_steps_stay(window, lab):
    lab.go_on()
    done = lab.book.done
    lab.finish()
    window.results.keep_lab(window.learner, "left", "trapezius", "{broken")
    again = window.begin_lab("left")
    assert again.book.done == done
    again.finish()


def test_beginning_anew_asks_and_drops_only_this_side(window, lab, monkeypatch):
    lab.go_on()
    asked = []
    monkeypatch.setattr(QMessageBox, "exec", lambda box: asked.append(box.text()))
    lab._ask_anew()
    assert asked and lab.book.done == 1
    window.results.keep_lab(window.learner, "right", "skin", '{"step_id": "skin", "done": true}')
    lab.begin_anew()
    assert lab.book.done == 0 and not window.results.lab(window.learner, "left")
    assert window.results.lab(window.learner, "right")


def test_large_letters_keep_the_lab_in_the_window(lab):
    window = lab.window
    to_step_with_lines(lab)
    for _ in range(20):
        window._actions["font_larger"].trigger()
    panel = lab.lab
    assert panel.width() < 0.5 * window.width()
    for button in (panel.hand_in, panel.go_on, panel.leave, panel.sum_button):
        assert panel.rect().contains(button.mapTo(panel, button.rect().bottomRight()))


def test_what_was_freed_before_is_held_aside_by_a_click(lab):
    to_step_with_lines(lab)
    freed = lab.window.plan.removed_by(lab.step, lab.window.model, "left")
    part_id = layer(lab)
    lab.go_on()
    scene = lab.window.scene_widget.scene
    low, high = lab.window.model.parts[part_id].mesh.bounds
    place = np.array([(low[0] + high[0]) / 2, high[1], (low[2] + high[2]) / 2])
    hit = lab._beneath_flaps(PickHit(part_id, place, np.array([0.0, 1.0, 0.0])))
    assert hit is None or hit.part_id not in freed
    (pixel,), _ = scene.pixels_of(place[None])
    assert hit is None or hit.part_id == scene.pick(*pixel, without=freed).part_id


def test_only_the_last_steps_muscle_lies_folded(lab):
    window = lab.window
    while lab.step is not None:
        step = lab.step
        lab.go_on()
        folded = {laid.fold_id.rsplit(".", 1)[0] for laid in window.state.folds}
        assert folded <= set(step.folds)


def test_a_finger_underneath_keeps_what_lies_beneath(lab):
    lab.lab.finger.setChecked(True)

    while lab.step is not None:
        kinds = {
            lab.window.model.parts[i].kind
            for i in lab.window.plan.removed_by(lab.step, lab.window.model, "left")
        }
        assert lab.lab.finger.isHidden() != bool(kinds & {"muscle", "fascia"})
        if "muscle" in kinds and lab.book.of(lab.step.id).lines:
            lab.set_depth(20.0)
            click_along(lab)
            lab.hand_in()

            cut = lab.book.of(lab.step.id).cuts[-1]
            lab.lab.finger.setChecked(False)
            lab.again()
            click_along(lab)
            lab.hand_in()
            bare = lab.book.of(lab.step.id).cuts[-1]
            assert sum(x.kept for x in cut.lost) <= sum(x.kept for x in bare.lost)
            return
        lab.go_on()
    raise AssertionError("no muscle was cut")


def test_every_step_that_lays_something_back_does_so_in_the_lab(lab):
    window, laid = lab.window, set()
    while lab.step is not None:
        folds = window.plan.folds_of(lab.step, window.model, "left")
        words = lab.lab.go_on.text()
        missing = lab.book.of(lab.step.id).missing
        assert missing or words.startswith("Fold") == bool(folds)
        lab.go_on()
        assert set(folds) <= {f.fold_id for f in window.state.folds}
        laid |= set(folds)
    assert {"skin.left", "trapezius.left"} <= laid
    assert not any(f.endswith(".right") for f in laid)


def test_a_click_just_across_the_midline_is_meant_for_the_side_that_is_cut(lab):
    to_step_with_lines(lab)
    mine = layer(lab)
    twin = other_side(mine)
    for x, taken in ((-40.0, 0), (-3.0, 1)):
        hit = PickHit(twin, np.array([x, 200.0, 300.0]), np.array([0.0, 1.0, 0.0]))
        lab.on_pick(hit, False)
        assert len(lab.window.state.cut_line.points) == taken
    assert lab.window.state.cut_line.part_id == mine


def test_each_step_says_how_the_blade_is_kept_off_what_lies_beneath(lab):
    said = {}
    while lab.step is not None:
        said[lab.step.id] = lab._guard()[0].replace("&", "")
        lab.go_on()
    assert said["feel_landmarks"] == said["skin"] == ""
    assert said["trapezius"] == "A finger underneath"
    kinds = {
        step.id: {
            lab.window.model.parts[i].kind
            for i in lab.window.plan.removed_by(step, lab.window.model, "left")
        }
        for step in lab.window.plan.steps
    }
    for step_id, words in said.items():
        assert ("canal" in words) == ("bone" in kinds[step_id])
