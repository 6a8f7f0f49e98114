"""Which texts the window shows, and the .ts files that hold their translations."""

from __future__ import annotations

import ast
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterable
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parent
CONTEXT = "Peelback"


def action_texts() -> tuple[str, ...]:
    """Return titles, menus and tips of the table of actions."""
    from viewer.state.actions import ACTIONS, MENUS

    texts = [*MENUS, "Undo", "Redo"]
    for action in ACTIONS:
        texts += [action.title, action.tip or action.title.rstrip("…"), action.title.rstrip("…")]
    return tuple(dict.fromkeys(texts))


def sentence_texts(root: Path = FOLDER.parent) -> tuple[str, ...]:
    """Return the texts of every ``told``, ``counted`` and ``say``, read out of the source."""
    found: list[str] = []

    def take(node: ast.expr) -> None:
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value:
            found.append(node.value)
        elif isinstance(node, ast.IfExp):
            take(node.body)
            take(node.orelse)
        elif isinstance(node, ast.Subscript) and isinstance(node.value, ast.Dict):
            for value in node.value.values:
                take(value)

    for path in sorted(root.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call) or not node.args:
                continue
            name = getattr(node.func, "id", "")
            if name == "told" or getattr(node.func, "attr", "") == "say":
                take(node.args[0])
            elif name == "counted":
                for given in node.args[1:]:
                    take(given)
    return tuple(dict.fromkeys(found))


def refusal_texts() -> tuple[str, ...]:
    """Return what the questions refuse, as far as a window can meet it: texts, no f-strings."""
    found: list[str] = []
    for path in sorted((FOLDER.parent.parent / "meshes" / "questions").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "PeelbackError":
                if node.args and isinstance(node.args[0], ast.Constant):
                    found.append(node.args[0].value)
    return tuple(dict.fromkeys(found))


def word_texts() -> tuple[str, ...]:
    """Return the words that fill the gaps of sentences: kinds, places, headings, steps, folds."""
    from meshes.catalogue import load_catalogue
    from meshes.catalogue.folds import load_folds
    from meshes.catalogue.plan import steps
    from meshes.questions.probe import CAUTION as CAUTION_OF_DEPTHS
    from viewer.panels.hidden_strip import ALL, SHORT_ALL
    from viewer.panels.mistakes_dock import _HEADS as MISTAKE_HEADS
    from viewer.panels.room_sheet import CAUTIONS
    from viewer.panels.search_box import LONG, SHORT
    from viewer.panels.step_line import HEADINGS, STATUS_WORDS
    from viewer.print.sheet import AT_THE_END, FOOTER, KIT, SEXES, TUBE_KEY
    from viewer.print.sheet import SIDES as SHEET_SIDES
    from viewer.print.sheet_words import SIDES as SIDE_WORDS
    from viewer.scene.overlay import _LETTERS
    from viewer.scene.section_picture import CAUTION as SECTION_CAUTION
    from viewer.scene.section_picture import ENDS, GROUND_NOTE
    from viewer.share.payload import CAUTION, SHORT_VIEWS, TITLE, page_texts
    from viewer.state.captions import ATTACHED, FIELDS, KIND_WORDS, OWN_NOTE, REGIONS
    from viewer.state.places import PLANE_TEXTS
    from viewer.state.section_plane import KEPT
    from viewer.state.step_words import PLAN_NOTE
    from viewer.state.table_view import LIMBS_NOTE, LYING_NOTE, TABLE_PLACES
    from viewer.state.working_file import KINDS as FILE_KINDS
    from viewer.state.working_file import WANTED
    from viewer.study.layer_questions import (
        DEEP_PROMPT,
        OVER_PROMPT,
        TELLS,
        TISSUE_PROMPT,
        TISSUES,
    )
    from viewer.study.plan_questions import LOSE_PROMPT, SHOWS_PROMPT, TAKES_PROMPT
    from viewer.study.questions import ARTERY_PROMPT, BONE_FAMILIES, NERVE_PROMPT
    from viewer.study.questions import KINDS as QUESTIONS
    from viewer.talk.presenter import NUMBER_WORDS, PRESENTER_KEYS
    from viewer.talk.scenes import UNTITLED

    return tuple(
        dict.fromkeys(
            (
                *KIND_WORDS.values(),
                *FIELDS,
                *REGIONS,
                *{row.region for row in load_catalogue().values() if row.region},
                *BONE_FAMILIES,
                UNTITLED,
                CAUTION_OF_DEPTHS,
                *PLANE_TEXTS,
                SECTION_CAUTION,
                GROUND_NOTE,
                *(end for ends in ENDS for end in ends),
                " or ",
                NUMBER_WORDS,
                *(row.words for row in PRESENTER_KEYS),
                "Undo",
                "Redo",
                "whole back",
                *CAUTIONS,
                *WANTED.values(),
                *FILE_KINDS.values(),
                *ATTACHED.values(),
                *TABLE_PLACES.values(),
                LYING_NOTE,
                LIMBS_NOTE,
                *HEADINGS,
                *STATUS_WORDS.values(),
                *(head for _, head in MISTAKE_HEADS),
                "both sides",
                *_LETTERS.values(),
                *(words for halves in KEPT.values() for words in halves),
                "left",
                "right",
                *(rule.title for rule in load_folds()),
                *(step.title for step in steps()),
                *QUESTIONS.values(),
                *SHEET_SIDES.values(),
                *SIDE_WORDS.values(),
                *SEXES.values(),
                *AT_THE_END,
                KIT,
                TUBE_KEY,
                FOOTER,
                PLAN_NOTE,
                *SHORT_VIEWS.values(),
                TITLE,
                CAUTION,
                *(words.split("  (")[0] for words in (ALL, SHORT_ALL)),
                *(words.split("  (")[0] for words in (LONG, SHORT)),
                *page_texts(),
                OWN_NOTE,
                NERVE_PROMPT,
                ARTERY_PROMPT,
                TAKES_PROMPT,
                SHOWS_PROMPT,
                LOSE_PROMPT,
                DEEP_PROMPT,
                OVER_PROMPT,
                TISSUE_PROMPT,
                *TISSUES.values(),
                *TELLS.values(),
            )
        )
    )


def window_texts(windows: Iterable) -> tuple[str, ...]:
    """Return the texts of widgets, as they are written; figures and bare signs left out."""
    from viewer.wording import texts_of

    found = []
    for window in windows:
        for owner, what, get, _ in texts_of(window):
            kept = owner.property(f"source {what}")
            text = kept[0] if kept else get()
            if re.search(r"[A-Za-z]{2}", text) and not re.search(r"[\d/\\]{2}|<|@", text):
                # Keys in brackets and lines are looked up apart, as `viewer.wording` does.
                found += [re.sub(r"\s+\([^()]*\)$", "", line) for line in text.split("\n")]
    return tuple(dict.fromkeys(found))


def all_sheets(window: Any) -> list[Any]:
    """Return one of every sheet and dock that the window opens, with next to nothing in it."""
    from PySide6.QtCore import QRect

    from viewer.panels.caption_band import CaptionBand
    from viewer.panels.lab_panel import LabPanel, LabStart
    from viewer.panels.mistakes_dock import MistakesDock
    from viewer.panels.notes_window import NotesWindow
    from viewer.panels.own_notes import OwnNotes
    from viewer.panels.page_preview import PagePreview
    from viewer.panels.probe_sheet import ProbeSheet
    from viewer.panels.rehearse_dock import RehearseDock
    from viewer.panels.results_sheet import ResultsSheet
    from viewer.panels.room_sheet import RoomSheet
    from viewer.panels.section_dock import SectionDock
    from viewer.panels.sheets import PictureSheet, PinSheet, SettingsSheet
    from viewer.panels.tag_panel import TagPanel
    from viewer.panels.take_home import ExportChoices, ShareChoices, SheetChoices
    from viewer.panels.test_choices import TestChoices
    from viewer.study.results import Results

    results = Results(Path(":memory:"))
    counts = {"all": 1, "seen": 1, "picked": 1}
    return [
        SettingsSheet(window.settings, window),
        PictureSheet(800, 600, window),
        PinSheet(window),
        SheetChoices((), (), lambda choice: "", window),
        ShareChoices("", window),
        ExportChoices(counts, window),
        PagePreview(b"", window),
        RoomSheet(12.0, 2.0, 0.01, "light", QRect(0, 0, 100, 100), window),
        ProbeSheet(("T1",), 100.0, lambda level, mm, side: (), "", 1.0, window),
        CaptionBand(),
        NotesWindow(),
        SectionDock(window),
        RehearseDock(window),
        MistakesDock((), window),
        TagPanel(window),
        TestChoices((), None, lambda choice: ("", False), window),
        ResultsSheet(results, "", str, window),
        OwnNotes(window),
        LabPanel(window),
        LabStart("", {}, "", window),
    ]


def gather() -> tuple[str, ...]:
    """Return all texts: actions, strata, the window with no model, settings and other sheets."""
    from meshes.body import Body
    from viewer.panels.sheets import BEGIN
    from viewer.settings import Settings
    from viewer.state.view_state import LOOKS, STRATA, VIEWS
    from viewer.window import MainWindow
    from viewer.wording import choose

    choose("en", "uk")
    window = MainWindow(Body(), "preview", Settings(language="en"), keep=False)
    sheets = all_sheets(window)
    from viewer.talk.back_lab import talk_texts
    from viewer.translations.facts import fact_texts, name_texts, plan_texts

    texts = (
        *action_texts(),
        *name_texts(),
        *fact_texts(),
        *plan_texts(),
        *talk_texts(),
        *sentence_texts(),
        *refusal_texts(),
        *word_texts(),
        *BEGIN,
        *STRATA,
        *LOOKS.values(),
        *VIEWS.values(),
    )
    texts += window_texts([window, *sheets])
    for widget in (*sheets, window):
        widget.close()
    made = (
        "Kept in ",
        "0 scenes",
        "Untitled",
        "1 part, each",
    )  # sentences with figures and paths in them
    return tuple(dict.fromkeys(t for t in texts if t and not t.startswith(made)))


def translations(path: Path) -> dict[str, str]:
    """Return source and translation of a .ts file; "" where there is none yet."""
    return {
        message.findtext("source", ""): message.findtext("translation", "")
        for message in ET.parse(path).getroot().iter("message")
    }


def unfinished(path: Path) -> list[str]:
    """Return the sources that have no finished translation."""
    return [
        message.findtext("source", "")
        for message in ET.parse(path).getroot().iter("message")
        if not message.findtext("translation", "")
        or message.find("translation").get("type") == "unfinished"
    ]


def merge(path: Path, texts: Iterable[str]) -> None:
    """Add texts to a .ts file; what is translated stays."""
    old = translations(path)
    write(path, {text: old.get(text, "") for text in dict.fromkeys([*old, *texts])})


def write(path: Path, pairs: dict[str, str]) -> None:
    """Write a .ts file of (source, translation)."""
    language = path.stem.split("_")[-1]
    root = ET.Element("TS", version="2.1", language=language, sourcelanguage="en_GB")
    context = ET.SubElement(root, "context")
    ET.SubElement(context, "name").text = CONTEXT
    for source, words in pairs.items():
        message = ET.SubElement(context, "message")
        ET.SubElement(message, "source").text = source
        translation = ET.SubElement(message, "translation")
        if words:
            translation.text = words
        else:
            translation.set("type", "unfinished")
    ET.indent(root)
    path.write_text(
        '<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n'
        + ET.tostring(root, encoding="unicode")
        + "\n",
        encoding="utf-8",
    )
