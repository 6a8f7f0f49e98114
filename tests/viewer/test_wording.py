"""Words of the window: translation, spelling, Latin, and a name for every control."""

import json
import re

import pytest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSlider,
    QAbstractSpinBox,
    QComboBox,
    QLineEdit,
    QScrollBar,
    QTextEdit,
    QWidget,
)

from viewer.panels.sheets import SettingsSheet
from viewer.settings import load_settings, settings_path
from viewer.state import commands
from viewer.state.spelling import spellings_in
from viewer.translations.texts import (
    FOLDER,
    action_texts,
    all_sheets,
    refusal_texts,
    sentence_texts,
    translations,
    unfinished,
    window_texts,
    word_texts,
)
from viewer.wording import LANGUAGES, choose, language_of, reword, shown, texts_of

GERMAN = FOLDER / "peelback_de.ts"


@pytest.fixture(autouse=True)
def plain_english_again(qapp):
    yield
    choose("en", "uk")


def set_language(window, **changes):
    from dataclasses import replace

    window._take_settings(replace(window.settings, **changes))


def test_the_german_translation_is_finished():
    assert unfinished(GERMAN) == []
    assert len(translations(GERMAN)) > 250


def test_the_german_translation_covers_every_title_menu_and_tip():
    assert [t for t in action_texts() if t not in translations(GERMAN)] == []


def test_the_german_translation_covers_every_sentence_the_program_makes():
    known = translations(GERMAN)
    assert len(sentence_texts()) > 80
    texts = (*sentence_texts(), *refusal_texts(), *word_texts())
    assert [t for t in texts if t not in known] == []


def test_a_stratum_has_one_name_in_german():
    def plain(text):
        return re.sub(r"{\w+}", "", text)

    table = translations(GERMAN)
    assert [w for w in table.values() if re.search(r"[Ss]trat(um|a|en)\b", plain(w))] == []
    named = [text for text in table if re.search(r"\b[Ss]trat(um|a)\b", plain(text))]
    assert len(named) > 25
    assert [text for text in named if "chicht" not in table[text]] == []


def test_a_translated_sentence_keeps_its_gaps():
    def gaps(text):
        return sorted(re.findall(r"{\w+}", text))

    assert [(s, t) for s, t in translations(GERMAN).items() if gaps(s) != gaps(t)] == []


ENGLISH = re.compile(
    r"\b(the|and|of|is|are|on|with|both|sides|hidden|peeled|picked|this|to)\b", re.I
)


def test_no_english_sentence_is_left_in_a_german_window(window):
    set_language(window, language="de")
    window.do(commands.peel_to(2, "left"))
    window.do(commands.toggle_stratum(4, "right"))
    window.do(commands.select(["rhomboid_major.left"]))
    window.do(commands.stand_at("left"))
    reword(window)
    english = [
        get()
        for owner, what, get, _ in texts_of(window)
        if ENGLISH.search(re.sub(r"<[^>]*>|“[^”]*”", "", get())) and owner is not window.steps._what
    ]
    assert english == []
    assert "Nerv" in window.caption.text.toPlainText()
    assert "links" in window.caption.text.toPlainText()
    assert "auf beiden Seiten" in window.steps._what.text()
    assert window.rail.accessibleDescription().startswith("linke Seite: abgetragen bis Schicht 2")
    assert any("Bauchlage" in line for line in window.scene_widget.scene.pose_lines)


def test_the_compiled_translation_says_what_the_source_says(qapp):
    choose("de", "uk")
    for source, words in translations(GERMAN).items():
        assert shown(source) == words


def test_window_and_sheets_turn_german_and_english_again(window):
    before = window._actions["undo"].text(), window.rail.accessibleName()
    set_language(window, language="de")
    assert window._actions["settings"].text() == "Einstellungen …"
    assert [a.text() for a in window.menuBar().actions()][:2] == ["Datei", "Bearbeiten"]
    assert window.rail.accessibleName() == "Tiefenleiste"
    assert window.caption.text.toPlainText().startswith("Auf einen Teil zeigen")
    sheet = SettingsSheet(window.settings, window)
    window._open(sheet)
    assert sheet.windowTitle() == "Einstellungen"
    assert sheet.latin.text() == "Lateinischer Name zuerst"
    sheet.close()
    set_language(window, language="en")
    assert (window._actions["undo"].text(), window.rail.accessibleName()) == before


def test_words_of_the_panels_are_in_the_translation(window):
    sheets = all_sheets(window)
    known = translations(GERMAN)
    texts = window_texts(sheets)
    made = ("Kept in ", "1 part, each")
    missing = [t for t in texts if t not in known and not t.startswith(made)]
    assert missing == []


def test_a_locale_without_translation_gets_english():
    assert language_of("system", "de_AT") == "de"
    assert language_of("system", "xx_YY") == "en"
    assert set(LANGUAGES) == {"system", "en", "de"}


def test_american_spelling_reaches_menus_and_no_text_mixes(window):
    set_language(window, language="en", spelling="us")
    assert window._actions["neighbours"].text() == "Neighbors at the edge"
    assert [t for t in (get() for *_, get, _ in texts_of(window)) if "uk" in spellings_in(t)] == []
    set_language(window, spelling="uk")
    assert window._actions["neighbours"].text() == "Neighbours at the edge"


def test_latin_names_reach_tree_search_and_titles(window):
    part = window.model.parts["rhomboid_major.left"]
    latin = window.model.catalogue[part.entry].latin
    window._actions["latin_first"].trigger()
    assert window.settings.latin_first
    assert window._titles[part.id].casefold().startswith(latin.casefold())
    assert window.tree._rows[part.id].text(0).casefold().startswith(latin.casefold())
    window._actions["latin_first"].trigger()
    assert window.tree._rows[part.id].text(0) == "Rhomboid major"


def test_settings_without_the_new_keys_open_and_bad_ones_are_put_aside():
    path = settings_path()
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps({"theme": "dark"}), encoding="utf-8")
    settings, message = load_settings()
    assert (settings.theme, settings.spelling, message) == ("dark", "uk", "")
    path.write_text(json.dumps({"spelling": "au"}), encoding="utf-8")
    _, message = load_settings()
    assert "spelling must be one of uk, us" in message


CONTROLS = (
    QAbstractButton,
    QComboBox,
    QAbstractSlider,
    QAbstractSpinBox,
    QLineEdit,
    QTextEdit,
    QAbstractItemView,
)


def nameless(root: QWidget) -> list[str]:
    """Return the controls under a widget that a screen reader could not name."""
    found = []
    for widget in root.findChildren(QWidget):
        own = not widget.objectName().startswith("qt_") and not isinstance(widget, QScrollBar)
        inner = isinstance(widget.parentWidget(), (QComboBox, QAbstractSpinBox, QAbstractItemView))
        if not isinstance(widget, CONTROLS) or not own or inner:
            continue
        above = widget.parentWidget().parentWidget()
        if isinstance(above, QComboBox):
            # The list that drops down speaks by its box.
            continue
        text = widget.text() if isinstance(widget, QAbstractButton) else ""
        if not (widget.accessibleName() or text):
            found.append(f"{type(widget).__name__} in {type(widget.parentWidget()).__name__}")
    return found


def test_every_control_of_window_docks_and_sheets_has_a_name(window):
    for action in ("section", "rehearse", "mistakes", "talk_panel"):
        window._actions[action].trigger()
    assert nameless(window) == []
    for sheet in all_sheets(window):
        assert nameless(sheet) == []
