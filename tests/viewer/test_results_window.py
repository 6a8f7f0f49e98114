"""Results and own notes in a real window: looked at, switched, deleted, exported, never lost."""

from __future__ import annotations

import csv
from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox

from viewer.panels.sheets import Sheet
from viewer.state import commands
from viewer.study.results import Answered, ResultsError
from viewer.study.store import results_path
from viewer.talk.autosave import autosave_path

DAY = timedelta(days=1)


@pytest.fixture
def sheet(window):
    """Return the results of a learner who knows trapezius and not the rhomboids."""
    results, now = window.results, datetime.now(UTC) - 3 * DAY
    results.add_learner("Ada")
    window.choose_learner("Ada")
    for right in (True, True, True):
        results.keep("Ada", Answered("trapezius_descending", "name", 2, right, seconds=4), now)
        results.keep("Ada", Answered("rhomboid_major", "nerve", 3, not right, seconds=4), now)
    window.open_results()
    yield window._results_sheet
    window._results_sheet.close()


def rows(table):
    return [
        [table.topLevelItem(k).text(c) for c in range(table.columnCount())]
        for k in range(table.topLevelItemCount())
    ]


def test_what_is_weak_is_shown_by_stratum_with_a_sign(sheet):
    strata = {row[0]: row[2] for row in rows(sheet.strata)}
    assert strata["2  first sheet"] == "100%"
    assert strata["3  second sheet"] == "▾ 0%"
    assert "3 second sheet" in sheet.told.text() and "2 first sheet" not in sheet.told.text()


def test_what_is_weak_is_shown_by_kind_of_question(sheet):
    assert rows(sheet.kinds) == [
        ["Its nerve", "3", "▾ 0%", "1"],
        ["Name the tagged structure", "3", "100%", "1"],
    ]


def test_the_weakest_part_stands_first_and_what_is_due_says_now(sheet):
    assert rows(sheet.weak)[0][0] == "Rhomboid major"
    first = rows(sheet.coming)[0]
    assert first == ["now", "Rhomboid major", "Its nerve"]


def test_learners_are_switched_and_do_not_share(window, sheet):
    sheet.add_learner("  Bo ")
    assert sheet.learner.currentData() == "Bo" and window.learner == "Bo"
    assert not rows(sheet.strata) and not sheet.export.isEnabled()
    sheet.learner.setCurrentIndex(sheet.learner.findData("Ada"))
    assert window.learner == "Ada" and len(rows(sheet.strata)) == 2


def test_a_name_that_will_not_do_is_refused(sheet, monkeypatch):
    said = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *words: said.append(words[-1]))
    sheet.add_learner("x" * 200)
    assert "1 to 60 letters" in said[0] and sheet.learner.currentData() == "Ada"


def test_deleting_asks_first_and_says_what_goes(sheet, monkeypatch):
    asked = []
    monkeypatch.setattr(QMessageBox, "exec", lambda box: asked.append(box.text()))
    sheet._ask_delete()
    assert "Ada" in asked[0] and "6 answers" in asked[0]
    # Nothing was pressed: nothing is gone.
    assert sheet.learner.findData("Ada") >= 0
    sheet.delete_learner("Ada")
    assert sheet.learner.findData("Ada") < 0 and sheet.learner.count() >= 1


def test_the_last_learner_leaves_a_new_one(window, sheet):
    for name in window.results.learners():
        sheet.delete_learner(name)
    assert window.results.learners() == ("Me",)


def test_the_export_holds_every_answer_or_is_not_written(sheet, tmp_path, monkeypatch):
    assert sheet.export_to(tmp_path / "out.csv")
    with open(tmp_path / "out.csv", encoding="utf-8", newline="") as file:
        table = list(csv.DictReader(file))
    assert len(table) == 6 and {r["structure"] for r in table} == {
        "trapezius_descending",
        "rhomboid_major",
    }
    said = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *words: said.append(words[-1]))
    assert not sheet.export_to(tmp_path / "out.csv" / "in-a-file.csv")
    assert "cannot be written" in said[0]


def test_a_broken_results_file_is_put_aside_and_told(window):
    path = results_path()
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(b"not a database at all" * 100)
    assert window.results.learners()
    assert "cannot be read" in window.statusBar().currentMessage()
    assert path.with_name("results.db.broken-1").read_bytes().startswith(b"not a database")


def test_every_fault_stays_to_be_read_until_it_was(window):
    path = results_path()
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(b"not a database at all" * 100)
    autosave_path().write_text("{not a talk")
    assert not window._faults_button.isVisibleTo(window)
    assert window.results.learners()
    window._keep = True
    window.offer_recovered_talk()
    window.say("Something else")
    assert window._faults_button.isVisibleTo(window)
    assert "2" in window._faults_button.text()
    window._faults_button.click()
    sheet = window.findChildren(Sheet)[-1]
    text = sheet.text.toPlainText()
    assert "results.db.broken-1" in text and "unsaved talk could not be read" in text
    sheet.close_button.click()
    assert not window._faults_button.isVisibleTo(window)


def test_a_place_that_cannot_be_written_does_not_stop_the_study(window, monkeypatch, tmp_path):
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setenv("PEELBACK_CONFIG", str(tmp_path / "file"))
    assert window.results.learners() == ("Me",)
    assert "cannot be kept" in window.statusBar().currentMessage()


def test_a_note_is_shown_in_the_caption_of_either_side_and_kept(window):
    window.write_note("rhomboid_major", "Slants down.\nTwo fingers below minor.")
    for part_id in ("rhomboid_major.left", "rhomboid_major.right"):
        window.do(commands.select([part_id]))
        text = window.caption.text.toPlainText()
        assert "My note" in text and "Slants down.\nTwo fingers below minor." in text
    window.do(commands.select(["levator_scapulae.left"]))
    assert "My note" not in window.caption.text.toPlainText()
    assert window.session.undo_name is None
    window.results.close()
    window._results = window._own_notes = None
    window.do(commands.select(["rhomboid_major.left"]))
    assert "Slants down." in window.caption.text.toPlainText()


def test_notes_are_listed_changed_and_taken_out(window):
    window.write_note("rhomboid_major", "Slants down.")
    window.do(commands.select(["levator_scapulae.left"]))
    window.note_selected()
    sheet = window._notes_sheet
    assert sheet.list.count() == 2 and sheet.structure == "levator_scapulae"
    sheet.words.setPlainText("Turns in its course.")
    sheet.keep()
    assert window.note_on(window.model.parts["levator_scapulae.right"]) == "Turns in its course."
    sheet.list.setCurrentRow(1)
    assert sheet.structure == "rhomboid_major"
    sheet.remove()
    assert sheet.list.count() == 1
    sheet._go()
    assert set(window.state.selection) == {"levator_scapulae.left", "levator_scapulae.right"}


def test_closing_the_notes_keeps_what_was_typed(window):
    window.do(commands.select(["levator_scapulae.left"]))
    window.note_selected()
    window._notes_sheet.words.setPlainText("Four slips.")
    window._notes_sheet.close()
    assert window.note_on(window.model.parts["levator_scapulae.left"]) == "Four slips."


def test_escape_and_another_row_keep_what_was_typed(qtbot, window):
    window.write_note("rhomboid_major", "Slants down.")
    window.do(commands.select(["levator_scapulae.left"]))
    window.note_selected()
    sheet = window._notes_sheet
    sheet.words.setPlainText("Four slips.")
    sheet.list.setCurrentRow(1)
    assert sheet.structure == "rhomboid_major"
    assert sheet.words.toPlainText() == "Slants down."
    sheet.words.setPlainText("Slants down and out.")
    qtbot.keyClick(sheet, Qt.Key.Key_Escape)
    assert not sheet.isVisible()
    assert window.results.notes(window.learner) == {
        "levator_scapulae": "Four slips.",
        "rhomboid_major": "Slants down and out.",
    }


def test_a_note_that_cannot_be_kept_is_said_and_stays_to_be_seen(window, monkeypatch):
    window.write_note("rhomboid_major", "Slants down.")
    window.do(commands.select(["levator_scapulae.left"]))
    window.note_selected()
    sheet = window._notes_sheet

    def full(*_):
        raise ResultsError("the disk is full")

    monkeypatch.setattr(window.results, "set_note", full)
    sheet.words.setPlainText("Four slips.")
    sheet.list.setCurrentRow(1)
    assert sheet.structure == "levator_scapulae"
    assert sheet.words.toPlainText() == "Four slips."
    assert "the disk is full" in sheet.head.text()


def test_a_long_note_is_kept_whole(window):
    window.do(commands.select(["levator_scapulae.left"]))
    window.note_selected()
    words = "Four slips. " * 400
    window._notes_sheet.words.setPlainText(words)
    window._notes_sheet.close()
    assert window.note_on(window.model.parts["levator_scapulae.left"]) == words.strip()


def test_pins_stand_in_the_caption_of_their_part_only(window):
    window.do(commands.select(["rhomboid_major.left"]))
    window.add_pin("Edge felt here")
    window.write_note("rhomboid_major", "Slants down.")
    text = window.caption.text.toPlainText()
    assert "Slants down." in text and "Pin: Edge felt here" in text
    window.do(commands.select(["rhomboid_major.right"]))
    assert "Pin:" not in window.caption.text.toPlainText()
    window.undo()
    window.do(commands.select(["rhomboid_major.left"]))
    assert "Pin:" not in window.caption.text.toPlainText()
