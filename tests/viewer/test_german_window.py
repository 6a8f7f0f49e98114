"""Walks the German window, its panels and sheets: nothing that is shown or spoken is English."""

from __future__ import annotations

import re

import pytest
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QFileDialog,
    QInputDialog,
    QMenu,
    QMessageBox,
)

from meshes.errors import PeelbackError
from meshes.questions.cover import layers_of
from meshes.questions.probe import Probe
from tests.viewer.german import English, seen_texts
from viewer.state import commands
from viewer.state.actions import ACTIONS
from viewer.state.tongue import refused
from viewer.translations.texts import all_sheets
from viewer.wording import reword

OTHERS = {"quit", "tag_test", "present", "present_here", "full_screen", "tour", "talk_sample"}
"""Actions that end the window or take it over: they are walked by themselves."""


@pytest.fixture
def english():
    return English()


@pytest.fixture
def german(german_window, monkeypatch):
    """Return a German window, and all that dialogs and the status line said in it."""
    window = german_window
    said = []

    def answered(dialog):
        reword(dialog)
        said.extend(seen_texts(dialog))
        return 0

    def asked(*words, **more):
        said.extend(("file dialog", word) for word in words if isinstance(word, str))
        return "", ""

    for box in (QDialog, QMessageBox, QMenu):
        monkeypatch.setattr(box, "exec", answered)
    for name in ("getSaveFileName", "getOpenFileName"):
        monkeypatch.setattr(QFileDialog, name, asked)
    monkeypatch.setattr(QInputDialog, "getText", lambda *words: ("", asked(*words) == 0))
    show = window.statusBar().showMessage
    monkeypatch.setattr(
        window.statusBar(), "showMessage", lambda *a: (said.append(("said", a[0])), show(*a))
    )
    window._layers = layers_of(window.model)
    return window, said


def left(english, texts):
    """Return what is English, without the program's own paths and names."""
    return {
        (where, text): found
        for where, text in texts
        if (found := english.left_in(re.sub(r"/\S*|\*\.\w+", "", text)))
    }


def everything(window):
    """Return the texts of all that is open."""
    return [t for top in QApplication.topLevelWidgets() for t in seen_texts(top) if top.isVisible()]


def test_every_action_of_the_german_window_speaks_german(qtbot, german, english):
    window, said = german
    found = left(english, everything(window))
    for action in ACTIONS:
        if action.id in OTHERS or action.id.startswith(("turn_", "pan_", "zoom_", "review_")):
            continue
        window.do(commands.select(["rhomboid_major.left"]))
        window._actions[action.id].trigger()
        qtbot.wait(1)
        if window._reword_timer.isActive():
            reword(window)
        found |= {key: action.id for key in left(english, everything(window)) if key not in found}
        if window.takeover is not None:
            window.takeover.finish()
    assert found == {}
    assert left(english, said) == {}
    assert len(said) > 60


def test_every_sheet_of_the_german_window_is_german(german, english):
    window, _ = german
    for sheet in all_sheets(window):
        reword(sheet)
        assert left(english, seen_texts(sheet)) == {}, type(sheet).__name__


def test_the_walk_finds_an_english_word_and_leaves_latin_and_german_alone(english):
    assert english.left_in("Bring into view") and english.left_in("M. trapezius hides 3 %")
    assert english.left_in("Trigonum auscultationis; M. latissimus dorsi") == ""
    assert english.left_in("Der Schritt „The title“ ist getan") == ""


def test_the_labs_answer_and_the_rehearsals_are_german(qtbot, german, english):
    from tests.viewer.test_take_home_lab import click_along, to_step_with_lines

    window, _ = german
    qtbot.waitUntil(lambda: window._probe is not None, timeout=20000)
    lab = window.begin_lab("left")
    to_step_with_lines(lab)
    click_along(lab)
    lab.set_depth(30.0)
    lab.hand_in()
    assert "Ginge verloren" in lab.lab.answer.toPlainText()
    found = left(english, seen_texts(lab.lab))
    lab.show_sum(True)
    found |= left(english, seen_texts(lab.lab))
    lab.finish()
    assert found == {}


TALKS = (
    "{not json",
    '{"format": "peelback talk", "version": 99}',
    '{"format": "peelback talk", "version": 1, "scenes": 3}',
    '{"format": "peelback talk", "version": 1, "scenes": [{"title": ""}]}',
    '{"format": "peelback talk", "version": 1, "scenes": [{"title": "", "state": {}}]}',
    '{"format": "peelback talk", "version": 1, "scenes": [{"title": "a\\nb", "state": {}}]}',
    '{"format": "peelback talk", "version": 1, "scenes": [{"title": "a", "state": {"peeled": 3}}]}',
    '{"format": "peelback talk", "version": 1, "scenes": [{"title": "a", "state": {"look": "x"}}]}',
    '{"format": "peelback talk", "version": 1, "scenes": [{"title": "a", "state": {"hidden": 1}}]}',
    '{"format": "peelback talk", "version": 1, "scenes": NaN}',
    '{"format": "something else"}',
)


OTHERS_WORDS = re.compile(
    r"[\w-]+\.(talk|peelback|db|json)\S*|'[^']*'|[\[{].*[\]}]|No such file or directory"
    r"|file is not a database|\b(title|state|selection|theme|light|dark|font_scale|by_kind)\b"
)
"""Names of files and of fields in them, and what the computer answers: these stay as they are."""


def of_ours(words):
    return OTHERS_WORDS.sub("", words)


@pytest.mark.parametrize("text", TALKS)
def test_a_talk_or_state_that_is_refused_is_refused_in_german(
    german, english, monkeypatch, tmp_path, text
):
    window, _ = german
    said = []
    monkeypatch.setattr(QMessageBox, "warning", lambda _, *words: said.extend(words))
    talk, state = tmp_path / "a.talk", tmp_path / "a.peelback"
    talk.write_text(text)
    state.write_text(text.replace("peelback talk", "peelback working state"))
    before = window.desk.talk, window.state
    assert not window.open_any_file(talk)
    window.open_file(state)
    window.open_file(tmp_path / "none.peelback")
    assert len(said) >= 4
    assert left(english, [(str(k), of_ours(words)) for k, words in enumerate(said)]) == {}
    assert window.desk.talk is before[0]
    if '"state"' not in text:
        assert window.state == before[1]


def test_settings_results_and_a_kept_talk_that_are_broken_are_told_in_german(
    german, english, tmp_path
):
    from viewer.settings import load_settings
    from viewer.study.results import Results, ResultsError
    from viewer.talk import autosave

    window, _ = german
    told = []
    for k, text in enumerate(("{", '{"theme": "pink"}', '{"font_scale": 9}', '{"calm": 3}', "[]")):
        path = tmp_path / f"settings-{k}.json"
        path.write_text(text)
        told.append(load_settings(path, lambda: "de")[1])
        assert load_settings(path, lambda: "de")[1] == ""
    path = tmp_path / "results.db"
    path.write_bytes(b"no base at all, but long enough to be looked into")
    results = Results(path)
    told.append(results.message)
    for name in ("", "x" * 90):
        with pytest.raises(ResultsError) as refusal:
            results.add_learner(name)
        told.append(str(refusal.value))
    results._base.execute("pragma user_version = 99")
    results.close()
    with pytest.raises(ResultsError) as refusal:
        Results(path)
    told.append(str(refusal.value))
    autosave.autosave_path().parent.mkdir(parents=True, exist_ok=True)
    autosave.autosave_path().write_text("{")
    told.append(autosave.recover()[1])
    assert all(told)
    assert left(english, [(str(k), of_ours(words)) for k, words in enumerate(told)]) == {}


def test_lengths_take_a_comma_in_german(german):
    from viewer.panels.depth_rail import _millimetres

    window, _ = german
    assert [_millimetres(mm) for mm in (0.84, 3.2, 14.6)] == ["0,8 mm", "3,2 mm", "15 mm"]
    window.set_rehearsing(True)
    window.set_cut_depth(4.5)
    assert window.rehearse_dock.depth_words.text() == "4,5 mm"


def test_what_the_model_refuses_is_said_in_german(german_window):
    with pytest.raises(PeelbackError, match="lateral must lie in") as found:
        Probe(german_window.model).at("T7", 4000.0, "left")
    assert "muss in 0–" in refused(found.value) and "war 4000" in refused(found.value)
    error = PeelbackError("nothing lies at {level}, {lateral} mm to the {side}",
                          level="T7", lateral="40", side="left")  # fmt: skip
    assert refused(error) == "auf Höhe T7, 40 mm links, liegt nichts"
    assert str(error) == "nothing lies at T7, 40 mm to the left"
