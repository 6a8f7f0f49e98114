"""The window asked: what lies over, the way in, and the probe at a place."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtWidgets import QApplication

from viewer.state import commands
from viewer.state.folding import is_folded
from viewer.state.view_state import ViewState

TARGET = "rhomboid_major.left"


def press(window, action_id):
    window._actions[action_id].trigger()


@pytest.fixture
def asked(qtbot, window):
    """Return the window with the rhomboid picked, peeled to the first sheet, and asked."""
    window.do(commands.peel_to(2, "both", window.model))
    window.do(commands.select([TARGET]))
    press(window, "covers")
    qtbot.waitUntil(lambda: window._layers is not None, timeout=90000)
    return window


def test_the_layers_are_at_hand_before_anybody_asks(qtbot, window):
    assert window.state.covers_of == ()
    qtbot.waitUntil(lambda: window._layers is not None, timeout=20000)
    window.do(commands.select([TARGET]))
    press(window, "covers")
    # At once, without a turn of the event loop.
    assert window.covers.list.topLevelItemCount() > 0


def test_what_lies_over_is_tinted_and_listed(asked):
    rows = [asked.covers.list.topLevelItem(k) for k in range(asked.covers.list.topLevelItemCount())]
    assert any("Trapezius" in row.text(0) for row in rows)
    assert all("%" in row.text(1) for row in rows)
    assert asked.covers.isVisible()
    tinted = {i for i, look in asked.scene_widget.scene.shown().items() if look.covering}
    assert "trapezius_ascending.left" in tinted
    assert "deltoid.right" not in tinted


def test_a_caption_says_what_covers_the_part_in_this_state(asked):
    words = asked.caption.text.toPlainText()
    assert "Covered by" in words
    assert "Trapezius" in words.split("Covered by")[1].split("In view")[0]
    asked.do(commands.peel_to(3, "both", asked.model))
    later = asked.caption.text.toPlainText().split("Covered by")[1].split("In view")[0]
    assert "Trapezius," not in later and "Trapezius " not in later


def test_escape_ends_the_tint_before_it_lets_go_of_the_selection(asked):
    press(asked, "deselect")
    assert asked.state.covers_of == ()
    assert not asked.covers.isVisible()
    assert not any(look.covering for look in asked.scene_widget.scene.shown().values())
    assert asked.state.selection == (TARGET,)
    press(asked, "deselect")
    assert asked.state.selection == ()


def test_asking_again_ends_it_and_asking_about_another_part_goes_over_to_that(asked):
    asked.do(commands.select(["scapula.left"]))
    press(asked, "covers")
    assert asked.state.covers_of == ("scapula.left",)
    press(asked, "covers")
    assert asked.state.covers_of == ()


def test_the_tint_is_seen_in_the_picture(qtbot, asked):
    tinted = asked.scene_widget.scene.screenshot((300, 300)).astype(int)
    press(asked, "deselect")
    plain = asked.scene_widget.scene.screenshot((300, 300)).astype(int)
    assert np.abs(tinted - plain).mean() > 0.5


def test_the_list_follows_the_dissection(asked):
    asked.do(commands.peel_to(3, "both", asked.model))
    rows = [asked.covers.list.topLevelItem(k) for k in range(asked.covers.list.topLevelItemCount())]
    # Nerve and artery of the same stratum still cross it.
    assert {row.data(0, Qt.ItemDataRole.UserRole) for row in rows} == {
        ("accessory_nerve.left",),
        ("transverse_cervical_artery.left",),
    }
    asked.do(commands.hide(["accessory_nerve.left", "transverse_cervical_artery.left"]))
    assert asked.covers.list.topLevelItemCount() == 0
    assert "Nothing lies over it" in asked.covers.words.text()


def test_the_list_works_from_the_keyboard(qtbot, asked):
    asked.covers.list.setCurrentItem(asked.covers.list.topLevelItem(0))
    first = asked.covers.list.topLevelItem(0).data(0, Qt.ItemDataRole.UserRole)
    qtbot.keyClick(asked.covers.list, Qt.Key.Key_Return)
    assert asked.state.selection == first
    # Another part is picked now, the question stays with the first.
    assert asked.state.covers_of == (TARGET,)
    qtbot.keyClick(asked.covers.list, Qt.Key.Key_Escape)
    assert asked.state.covers_of == ()


def test_bring_into_view_plays_the_steps_as_one_undo(qtbot, window):
    from dataclasses import replace

    window.settings = replace(window.settings, steps_fold=False)
    window.do(commands.select(["serratus_posterior_superior.left"]))
    press(window, "into_view")
    qtbot.waitUntil(lambda: "trapezius_ascending.left" in window.state.removed, timeout=20000)
    assert "rhomboid_major.left" in window.state.removed
    assert "rhomboid_major.right" not in window.state.removed
    assert "in view" in window.statusBar().currentMessage()
    assert window.session.undo_name.startswith("bring Serratus posterior superior")
    risk = window._way_note[1]
    assert risk and risk in window.covers.words.text()
    window.undo()
    assert window.state.removed == frozenset()
    # What was at risk belongs to the steps, which are no longer done.
    assert window.state.covers_of and risk not in window.covers.words.text()


def test_steps_are_played_one_after_another_and_escape_stops_them(qtbot, window):
    from dataclasses import replace

    window.settings = replace(window.settings, calm=False)
    window.do(commands.select(["serratus_posterior_superior.left"]))
    press(window, "into_view")
    qtbot.waitUntil(lambda: is_folded(window.state, "skin.left"), timeout=20000)
    assert "trapezius_ascending.left" not in window.state.removed
    press(window, "deselect")
    qtbot.wait(800)
    assert "trapezius_ascending.left" not in window.state.removed
    assert window.state.selection
    window.undo()
    assert window.state.removed == frozenset()
    assert window.state.folds == ()


def test_another_hand_stops_the_play(qtbot, window):
    from dataclasses import replace

    window.settings = replace(window.settings, calm=False)
    window.do(commands.select(["serratus_posterior_superior.left"]))
    press(window, "into_view")
    qtbot.waitUntil(lambda: is_folded(window.state, "skin.left"), timeout=20000)
    window.bring_all_back()
    qtbot.wait(800)
    assert window.state.removed == frozenset()


def test_the_share_that_counts_as_in_view_is_the_readers_choice(qtbot, asked):
    from dataclasses import replace

    asked.settings = replace(asked.settings, steps_fold=False)
    asked.do(commands.bring_all_back())
    asked.do(commands.select(["multifidus_lumborum.left"]))
    ways = {}
    for percent in (5, 95):
        asked.covers.share.setValue(percent)
        assert asked.settings.share_in_view == percent / 100
        press(asked, "into_view")
        assert "in view" in asked.statusBar().currentMessage()
        ways[percent] = asked.state.removed
        asked.undo()
    assert ways[5] < ways[95]


def test_a_covered_part_is_brought_into_view_from_its_row_in_the_tree(qtbot, window):
    window.do(commands.select([TARGET]))
    wanted = []
    window.tree.menu_wanted.connect(wanted.append)
    window.tree.menu_wanted.disconnect(window._on_tree_menu)
    QApplication.sendEvent(
        window.tree,
        QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(5, 5), QPoint(5, 5)),
    )
    assert len(wanted) == 1
    menu = window._part_menu(window._selection_words())
    titles = [action.text() for action in menu.actions()]
    assert titles[0].startswith("Rhomboid major, left")
    assert {"Bring into view", "What lies over it"} <= set(titles)
    shares = next(a.menu() for a in menu.actions() if a.menu() is not None)
    assert [a.text() for a in shares.actions() if a.isChecked()] == ["80 %"]
    fifty = next(a for a in shares.actions() if a.text() == "50 %")
    fifty.trigger()
    assert window.settings.share_in_view == 0.5
    assert window.covers.share.value() == 50
    qtbot.waitUntil(lambda: bool(window.state.folds) or bool(window.state.removed), timeout=20000)


def test_nothing_picked_is_said(window):
    window.bring_into_view()
    assert "Pick a part" in window.statusBar().currentMessage()
    window.ask_what_covers()
    assert "Pick a part" in window.statusBar().currentMessage()
    assert window.state == ViewState() or window.state.covers_of == ()


def test_probe_at_lists_entry_thickness_and_exit(qtbot, window):
    qtbot.waitUntil(lambda: window._probe is not None)
    window._last_place = (42.0, 100.0, 281.0)
    press(window, "probe_at")
    sheet = window._probe_sheet
    assert (sheet.level.currentText(), sheet.lateral.value()) == ("T7", 42)
    assert sheet.rows[0].title.startswith("Skin")
    assert float(sheet.rows[0].leaves) == pytest.approx(2.4, abs=0.2)
    sheet.side.setCurrentIndex(1)
    assert sheet.rows[0].part_id == "skin.right"
    sheet.lateral.setValue(sheet.lateral.maximum())
    assert sheet.words.text()
    sheet.lateral.setValue(40)
    sheet.copy()
    assert "not for needle" in QApplication.clipboard().text()
    sheet.list.setCurrentItem(sheet.list.topLevelItem(0))
    qtbot.keyClick(sheet.list, Qt.Key.Key_Return)
    assert window.state.selection == ("skin.right",)
    sheet.close()


def test_a_question_asked_of_a_saved_state_comes_back(tmp_path, asked):
    from viewer.state.working_file import open_working_file, save_working_file

    path = tmp_path / "asked.peelback"
    save_working_file(path, asked.state, asked.model.body.as_dict(), "preview", "0")
    assert open_working_file(path).state.covers_of == (TARGET,)


def test_closing_while_the_layers_are_made_leaves_nothing_behind(qtbot, window):
    window.do(commands.select([TARGET]))
    press(window, "covers")
    window.close()
    assert not any(t.is_alive() for t in window._questions._threads.values())


@pytest.mark.slow
def test_a_flap_is_asked_about_where_it_lies(qtbot, asked):
    from viewer.state import fold_commands

    def names():
        tree = asked.covers.list
        return [tree.topLevelItem(k).text(0) for k in range(tree.topLevelItemCount())]

    assert any("Trapezius" in name for name in names())
    asked.do(fold_commands.fold_to(["trapezius.left"], 1.0))
    asked.folds.finish()
    qtbot.waitUntil(lambda: not asked._when_layers and not asked.folds.playing, timeout=30000)
    # The flap lies outward of its hinge now; what it still hides there is said to be folded.
    assert all("(folded)" in name for name in names() if "Trapezius" in name)
    assert "in view" in asked.covers.words.text()
    asked.undo()
    asked.folds.finish()
    qtbot.waitUntil(lambda: any("Trapezius" in n and "folded" not in n for n in names()))
