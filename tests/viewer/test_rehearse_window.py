"""Rehearsed cuts and common mistakes in a real window."""

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QAbstractButton, QComboBox, QListWidget, QSlider

from viewer.state.view_state import Sides
from viewer.state.working_file import state_from_json, state_to_json


@pytest.fixture
def drawing(window):
    window.set_rehearsing(True)
    return window


def outer_place(window, part_id, share):
    """A place on the back of a box of the toy model, so far up."""
    low, high = window.model.parts[part_id].mesh.bounds
    return np.array([(low[0] + high[0]) / 2, high[1], low[2] + share * (high[2] - low[2])])


def draw(window, part_id="skin.left", shares=(0.7, 0.3)):
    for share in shares:
        window.add_cut_point(outer_place(window, part_id, share), part_id)
    window._answer_cut()
    return window.rehearsal


def picture(window):
    return window.scene_widget.scene.screenshot((400, 400)).astype(int)


def test_clicks_draw_the_line_and_the_panel_answers(qtbot, drawing):
    before = picture(drawing)
    widget = drawing.scene_widget
    middle = widget.rect().center()
    for place in (middle - QPoint(20, 60), middle + QPoint(-20, 40)):
        qtbot.mouseClick(widget, Qt.MouseButton.LeftButton, pos=place)
    assert len(drawing.state.cut_line.points) == 2
    assert drawing.state.selection == ()
    qtbot.waitUntil(lambda: drawing.rehearsal is not None, timeout=5000)
    text = drawing.rehearse_dock.answer.toPlainText()
    assert "mm long, blade 3 mm deep" in text
    assert "Would be lost" in text
    assert np.abs(picture(drawing) - before).max() > 60


def test_a_deeper_blade_loses_more_and_one_undo_brings_it_back(qtbot, drawing):
    shallow = draw(drawing)
    drawing.rehearse_dock.depth.setValue(50)
    drawing._answer_cut()
    assert drawing.state.cut_line.depth_mm == 25.0
    assert len(drawing.rehearsal.losses) > len(shallow.losses)
    drawing.undo()
    drawing._answer_cut()
    assert drawing.rehearsal.losses == shallow.losses


def test_trying_again_keeps_the_blade_and_undo_returns_the_first_try(qtbot, drawing):
    drawing.set_cut_depth(6.0)
    draw(drawing)
    drawing._actions["rehearse_again"].trigger()
    assert drawing.state.cut_line.points == () and drawing.state.cut_line.depth_mm == 6.0
    drawing.undo()
    assert len(drawing.state.cut_line.points) == 2


def test_the_last_point_can_be_taken_back(qtbot, drawing):
    draw(drawing, shares=(0.7, 0.5, 0.3))
    qtbot.mouseClick(drawing.rehearse_dock.back_button, Qt.MouseButton.LeftButton)
    assert len(drawing.state.cut_line.points) == 2


def test_what_was_peeled_is_not_lost_again(qtbot, drawing):
    from viewer.state import commands

    part_id = next(i for i in drawing.model.parts if i.startswith("trapezius") and "left" in i)
    drawing.set_cut_depth(30.0)
    draw(drawing, part_id)
    covered = {loss.part_id for loss in drawing.rehearsal.losses}
    assert covered
    stratum = min(drawing.model.parts[i].stratum for i in covered)
    drawing.do(commands.toggle_stratum(stratum, "both"))
    drawing._answer_cut()
    kept = set(drawing._rehearser.kept(drawing._rehearser.step_of(part_id), "left"))
    left = {loss.part_id for loss in drawing.rehearsal.losses}
    assert not {i for i in left - kept if drawing.model.parts[i].stratum == stratum}


def test_a_saved_state_holds_the_line(qtbot, drawing):
    draw(drawing)
    state = state_from_json(state_to_json(drawing.state))
    drawing.set_rehearsing(False)
    assert drawing.rehearse_dock.isHidden()
    drawing.session.replace_state(state)
    assert not drawing.rehearse_dock.isHidden()
    drawing._answer_cut()
    assert drawing.rehearsal is not None


def test_the_key_adds_the_place_under_the_pointer(qtbot, window):
    window._actions["rehearse_point"].trigger()
    assert window.state.cut_line is not None
    window._hovered = "skin.left"
    window._last_place = tuple(outer_place(window, "skin.left", 0.5))
    window._actions["rehearse_point"].trigger()
    assert window.state.cut_line.part_id == "skin.left"
    assert len(window.state.cut_line.points) == 1


def test_a_mistake_is_shown_and_one_undo_brings_all_back(qtbot, window):
    window.work_on("left")
    before = window.state
    window.open_mistakes(True)
    window.mistakes_dock.choose("rhomboids_with_trapezius")
    qtbot.mouseClick(window.mistakes_dock.show_button, Qt.MouseButton.LeftButton)
    shown = window.scene_widget.scene.shown()
    assert "rhomboid_major.left" not in shown and "rhomboid_major.right" in shown
    assert not any(i.startswith("trapezius") and i.endswith("left") for i in shown)
    assert window.state.peeled == Sides(0, 0)
    window.undo()
    assert window.state.removed == before.removed and window.state.ticked == before.ticked


def test_the_list_of_mistakes_follows_the_present_step(qtbot, window):
    window.open_mistakes(True)
    dock = window.mistakes_dock
    assert dock.list.count() == 10
    dock.show_step("trapezius")
    titles = [dock.list.item(k).text() for k in range(dock.list.count())]
    assert "Rhomboids lifted with trapezius" in titles and len(titles) == 3
    assert "How to tell" in dock.text.toPlainText()


def test_every_control_has_a_name_and_letters_grow(qtbot, drawing):
    drawing.open_mistakes(True)
    for dock in (drawing.rehearse_dock, drawing.mistakes_dock):
        for kind in (QSlider, QComboBox, QListWidget, QAbstractButton):
            for widget in dock.widget().findChildren(kind):
                assert widget.accessibleName() or widget.text()
    small = drawing.mistakes_dock.list.font().pointSizeF()
    drawing.larger_letters()
    assert drawing.mistakes_dock.list.font().pointSizeF() > small
