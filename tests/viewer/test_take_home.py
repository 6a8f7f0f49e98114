"""Lab sheet, take-home page and meshes from the window."""

from __future__ import annotations

from pathlib import Path

import trimesh
from PySide6.QtWidgets import QMessageBox

from meshes.body import Body
from meshes.catalogue.plan import steps
from tests.fakes import toy_model
from viewer import cli
from viewer.cli_body import body_from, words_of
from viewer.menus.verb_run import VerbRun
from viewer.panels.take_home import ExportChoices, ShareChoices, SheetChoice, SheetChoices
from viewer.print.sheet import sheet_pdf
from viewer.print.sheet_order import SheetOrder
from viewer.print.sheet_words import muscles_of, sheet_in_words
from viewer.state.commands import peel_to


def _started(window, monkeypatch) -> list[list[str]]:
    """Keep what would be run, and run nothing."""
    words = []
    monkeypatch.setattr(VerbRun, "start", lambda run: words.append(run.words))
    return words


def test_body_options_make_the_same_body_again():
    body = Body(sex="female", stature_mm=1640.0, scapular_slip=False, scapular_elevation_mm=-5.0)
    words = cli.make_parser().parse_args(["check", *words_of(body)])
    assert body_from(words) == body
    assert words_of(Body()) == []


def test_sheet_from_the_window_is_the_command_with_the_same_choices(window, monkeypatch, tmp_path):
    words = _started(window, monkeypatch)
    choice = SheetChoice("Letter", True, "left", ("trapezius", "rhomboids"))
    window.write_sheet_to(tmp_path / "lab.pdf", choice)
    parsed = cli.make_parser().parse_args(words[0])
    assert (parsed.verb, parsed.paper, parsed.blank, parsed.side) == (
        "sheet",
        "Letter",
        True,
        "left",
    )
    assert parsed.steps == "trapezius,rhomboids"
    assert parsed.out == tmp_path / "lab.pdf"
    assert parsed.detail == window.model.detail
    assert body_from(parsed) == window.model.body


def test_short_sheet_from_the_window_is_asked_of_the_command(window, monkeypatch, tmp_path):
    words = _started(window, monkeypatch)
    window.write_sheet_to(tmp_path / "lab.pdf", SheetChoice("A4", False, "both", ("skin",), True))
    assert cli.make_parser().parse_args(words[0]).short


def test_pages_are_seen_before_they_are_saved(window, qtbot, monkeypatch, tmp_path):
    order = SheetOrder.checked(out=tmp_path / "made.pdf", wanted="trapezius", short=True)
    data, count = sheet_pdf(toy_model(), order)

    def made(run):
        next(Path(w[6:]) for w in run.words if w.startswith("--out=")).write_bytes(data)
        run.ended.emit(True, "made")

    monkeypatch.setattr(VerbRun, "start", made)
    shown = []
    monkeypatch.setattr(window, "_open", shown.append)
    window.preview_sheet(SheetChoice("A4", False, "both", ("trapezius",), True))
    preview = shown[0]
    qtbot.addWidget(preview)
    assert preview.list.count() == len(preview.pages) == count
    assert all(page.width() > 800 for page in preview.pages)
    coloured = preview.page.pixmap().toImage().pixelColor(300, 400)
    preview.grey.setChecked(True)
    assert preview.page.pixmap().toImage().isGrayscale()
    assert coloured.isValid()
    assert window.save_pages_to(tmp_path / "kept.pdf", preview.data)
    assert (tmp_path / "kept.pdf").read_bytes() == data
    warned = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *words: warned.append(words[-1]))
    (tmp_path / "file").write_text("")
    assert not window.save_pages_to(tmp_path / "file" / "no.pdf", preview.data)
    assert warned


def test_dialog_ticks_the_steps_that_are_still_to_do_and_says_what_comes(window, qtbot):
    window.do(peel_to(3, "both"))
    wanted = window._open_steps()
    assert "skin" not in wanted
    assert "rhomboids" in wanted
    dialog = SheetChoices(
        [(s.id, s.title, s.minutes) for s in steps()],
        wanted,
        lambda choice: sheet_in_words(choice, window.model),
    )
    qtbot.addWidget(dialog)
    assert dialog.choice.steps == wanted
    assert "A4" in dialog.preview.text()
    dialog.tick_all(False)
    assert not dialog.go.isEnabled()
    dialog.tick_all(True)
    dialog.paper.setCurrentIndex(1)
    dialog.kind.setCurrentIndex(dialog.kind.findData("blank"))
    assert dialog.choice.steps == tuple(s.id for s in steps())
    assert dialog.preview.text().startswith("Letter")
    assert "answers on the last page" in dialog.preview.text()


def test_words_of_a_sheet_count_its_muscles_and_minutes():
    chosen = [s for s in steps() if s.id == "rhomboids"]
    names = [entry.id for entry in muscles_of(chosen, toy_model())]
    assert names == ["rhomboid_minor", "rhomboid_major", "serratus_posterior_superior"]
    said = sheet_in_words(SheetChoice("A4", False, "both", ("rhomboids",)), toy_model())
    assert "18 minutes a side" in said
    assert "3 muscles" in said


def test_open_talk_travels_with_the_page(window, monkeypatch, tmp_path):
    words = _started(window, monkeypatch)
    window.keep_scene()
    window.write_page_to(tmp_path / "back.html", notes=True, with_open_talk=True)
    parsed = cli.make_parser().parse_args(words[0])
    assert parsed.talk.exists()
    assert parsed.notes
    window._verb_run.ended.emit(True, "back.html, 3.0 MB")
    assert not parsed.talk.exists()
    assert "back.html, 3.0 MB" in window.statusBar().currentMessage()


def test_refusal_of_the_command_comes_back_as_its_one_line(window, monkeypatch, qtbot, tmp_path):
    shown = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *args: shown.append(args[2]))
    (tmp_path / "file").write_text("")
    window.write_page_to(tmp_path / "file" / "back.html")
    qtbot.waitUntil(lambda: bool(shown), timeout=20000)
    assert "cannot write" in shown[0]
    assert "\n" not in shown[0]
    assert window._verb_run is None


def test_second_file_waits_for_the_first_and_closing_stops_it(window, monkeypatch, tmp_path):
    _started(window, monkeypatch)
    window.write_page_to(tmp_path / "back.html")
    assert not window._is_ready()
    window.stop_verb()
    assert window._is_ready()


def test_share_dialog_asks_for_a_file_only_when_one_is_wanted(qtbot):
    dialog = ShareChoices("A lecture")
    qtbot.addWidget(dialog)
    assert [dialog.talk.itemData(i) for i in range(dialog.talk.count())] == ["none", "open", "file"]
    assert not dialog.file.isEnabled()
    assert not dialog.notes.isEnabled()
    dialog.talk.setCurrentIndex(2)
    assert not dialog.go.isEnabled()
    dialog.file.setText("lecture.talk")
    assert dialog.go.isEnabled()
    assert "without its notes" in dialog.preview.text()


def test_meshes_of_what_is_shown_are_written_closed(window, tmp_path):
    window.do(peel_to(9, "both"))
    chosen = window._parts_to_export()
    assert 0 < len(chosen["seen"]) < len(chosen["all"]) == len(toy_model().parts)
    assert window.write_meshes_to(tmp_path, "stl", "part", chosen["seen"])
    files = list(tmp_path.iterdir())
    assert {path.stem for path in files} == set(chosen["seen"])
    assert all(trimesh.load(path).is_watertight for path in files)
    assert f"{len(files)} files" in window.statusBar().currentMessage()


def test_export_dialog_leaves_out_empty_choices_and_tells_the_frame(qtbot):
    dialog = ExportChoices({"picked": 0, "seen": 4, "all": 9})
    qtbot.addWidget(dialog)
    assert [dialog.which.itemData(i) for i in range(dialog.which.count())] == ["seen", "all"]
    assert "Millimetres" in dialog.preview.text()
    dialog.form_box.setCurrentIndex(1)
    assert "Metres" in dialog.preview.text()
