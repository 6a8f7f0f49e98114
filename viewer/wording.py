"""The words that are shown: translated by Qt, in the chosen spelling.

The source of every text is British English. A text is looked up with
``QCoreApplication.translate`` in the context "Peelback"; what has no entry (a
sentence made of facts, a name of a part) stays English and takes the spelling.
Titles of actions and texts of panels are written plain where they are made;
`reword` walks the finished widgets and puts the shown words in their place, and
keeps the source, so that the language can change while the window is open.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from PySide6.QtCore import (
    QCoreApplication,
    QEvent,
    QLibraryInfo,
    QLocale,
    QObject,
    QTranslator,
)
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QDialog,
    QDockWidget,
    QGroupBox,
    QLabel,
    QLineEdit,
    QMenu,
    QPlainTextEdit,
    QTableWidget,
    QTabWidget,
    QTextEdit,
    QTreeWidget,
    QWidget,
)

from viewer.state import languages, tongue
from viewer.state.spelling import spelled

CONTEXT = "Peelback"
LANGUAGES: dict[str, str] = {"system": "As the computer", "en": "English", "de": "Deutsch"}
FOLDER = Path(__file__).parent / "translations"


@dataclass
class _Chosen:
    """Language and spelling of this process; widgets ask for them at every paint."""

    language: str = "en"
    spelling: str = "uk"
    translators: list[QTranslator] = field(default_factory=list)
    watch: QObject | None = None


_CHOSEN = _Chosen()


def language_of(setting: str, locale: str | None = None) -> str:
    """Return the language that a setting means; English where there is no translation."""
    return languages.language_of(setting, locale or QLocale.system().name())


def choose(language: str, spelling: str) -> bool:
    """Take language ("system", "en", "de") and spelling; returns whether anything changed."""
    language = language_of(language)
    if (language, spelling) == (_CHOSEN.language, _CHOSEN.spelling):
        return False
    app = QCoreApplication.instance()
    if language != _CHOSEN.language:
        for translator in _CHOSEN.translators:
            app.removeTranslator(translator)
        _CHOSEN.translators = []
        if language != "en":
            # Qt's own words first: buttons of its dialogs, names of keys.
            own = Path(QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath))
            for file in (own / f"qtbase_{language}.qm", FOLDER / f"peelback_{language}.qm"):
                translator = QTranslator(app)
                if translator.load(str(file)):
                    app.installTranslator(translator)
                    _CHOSEN.translators.append(translator)
    _CHOSEN.language, _CHOSEN.spelling = language, spelling
    tongue.speak(shown, language)
    if _CHOSEN.watch is None:
        # Only now: a filter in Python is asked about every event.
        _CHOSEN.watch = _Watch(app)
        app.installEventFilter(_CHOSEN.watch)
    return True


def in_plain_english() -> bool:
    """Tell whether texts are shown as they are written."""
    return _CHOSEN.language == "en" and _CHOSEN.spelling == "uk"


def shown(text: str) -> str:
    """Return a text as it is shown: translated, or in the chosen spelling."""
    if not text or (_CHOSEN.language == "en" and _CHOSEN.spelling == "uk"):
        return text
    words = _translated(text) if _CHOSEN.language != "en" else text
    return words if words != text else spelled(text, _CHOSEN.spelling)


_WITH_KEY = re.compile(r"^(.*?)(\s+\([^()]*\))$")


def _translated(text: str) -> str:
    """Look a text up whole; else line by line, without the keys in brackets after it."""
    words = QCoreApplication.translate(CONTEXT, text)
    if words != text:
        return words
    if "\n" in text:
        return "\n".join(_translated(line) for line in text.split("\n"))
    match = _WITH_KEY.match(text)
    if not match:
        return text
    keys = match[2].strip(" ()")
    bracket = match[2].replace(keys, keys_shown(keys))
    return f"{QCoreApplication.translate(CONTEXT, match[1])}{bracket}"


def keys_shown(keys: str) -> str:
    """Return "Alt+Up" with the names that keys bear in the language that is shown."""
    if _CHOSEN.language == "en":
        return keys
    if " or " in keys:
        return shown(" or ").join(map(keys_shown, keys.split(" or ")))
    known = QKeySequence.fromString(keys, QKeySequence.SequenceFormat.PortableText)
    if known.toString(QKeySequence.SequenceFormat.PortableText) != keys:
        return keys
    return known.toString(QKeySequence.SequenceFormat.NativeText)


class _Watch(QObject):
    """Rewords sheets and docks as they open."""

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if (
            event.type() == QEvent.Type.Show
            and isinstance(watched, QWidget)
            and (watched.isWindow() or isinstance(watched, QDockWidget))
        ):
            reword(watched)
            if isinstance(watched, QDialog):
                # Its size was found with the words as they are written.
                if watched.layout() is not None:
                    watched.layout().activate()
                watched.resize(watched.size().expandedTo(watched.minimumSizeHint()))
        return False


Text = tuple[QObject, str, Callable[[], str], Callable[[str], None]]


def texts_of(root: QWidget) -> Iterator[Text]:
    """Yield (object, what, getter, setter) of every text of the window's own under a widget.

    What a person has typed and what lists of the model's parts hold is left out.
    """
    for widget in [root, *root.findChildren(QWidget)]:
        yield widget, "name", widget.accessibleName, widget.setAccessibleName
        yield widget, "tip", widget.toolTip, widget.setToolTip
        if widget.windowTitle() and (widget.isWindow() or isinstance(widget, QDockWidget)):
            yield widget, "title", widget.windowTitle, widget.setWindowTitle
        if isinstance(widget, QMenu):
            yield widget, "menu", widget.title, widget.setTitle
        elif isinstance(widget, (QLabel, QAbstractButton)):
            if widget.text():
                yield widget, "text", widget.text, widget.setText
        elif isinstance(widget, QGroupBox):
            yield widget, "text", widget.title, widget.setTitle
        elif isinstance(widget, (QLineEdit, QTextEdit, QPlainTextEdit)):
            yield widget, "place", widget.placeholderText, widget.setPlaceholderText
        elif isinstance(widget, QComboBox):
            for k in range(widget.count()):
                yield (
                    widget,
                    f"item {k}",
                    lambda w=widget, k=k: w.itemText(k),
                    lambda t, w=widget, k=k: w.setItemText(k, t),
                )
        elif isinstance(widget, QTabWidget):
            for k in range(widget.count()):
                yield (
                    widget,
                    f"tab {k}",
                    lambda w=widget, k=k: w.tabText(k),
                    lambda t, w=widget, k=k: w.setTabText(k, t),
                )
        elif isinstance(widget, (QTreeWidget, QTableWidget)):
            for k in range(widget.columnCount()):
                item = (
                    widget.headerItem()
                    if isinstance(widget, QTreeWidget)
                    else widget.horizontalHeaderItem(k)
                )
                if item is None:
                    continue
                at = (k,) if isinstance(widget, QTreeWidget) else ()
                yield (
                    widget,
                    f"head {k}",
                    lambda i=item, at=at: i.text(*at),
                    lambda t, i=item, at=at: i.setText(*at, t),
                )
    for action in root.findChildren(QAction):
        if not action.isSeparator():
            yield action, "text", action.text, action.setText
            yield action, "status", action.statusTip, action.setStatusTip


def reword(root: QWidget) -> None:
    """Put the shown words in place of the written ones under a widget; may be repeated.

    A text that something has set since is taken for a new source.
    """
    for owner, what, get, put in texts_of(root):
        now = get()
        if not now:
            continue
        kept: Any = owner.property(f"source {what}")
        source = kept[0] if kept and kept[1] == now else now
        words = shown(source)
        if words != now:
            put(words)
        if words != source or kept:
            owner.setProperty(f"source {what}", [source, words])


def reword_all() -> None:
    """Reword every open window."""
    for widget in QApplication.topLevelWidgets():
        reword(widget)
