"""The languages there are, and a look-up for paper, page and command line. No Qt.

The window asks Qt for its words (`viewer.wording`); what is written without a
window reads the same .ts files.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

from meshes.errors import PeelbackError
from viewer.state import tongue
from viewer.state.spelling import spelled

FOLDER = Path(__file__).resolve().parent.parent / "translations"


def languages() -> tuple[str, ...]:
    """Return the languages there are, English first."""
    return ("en", *sorted(path.stem.split("_")[1] for path in FOLDER.glob("peelback_*.ts")))


def language_of(setting: str, locale: str) -> str:
    """Return the language that a setting means; English where there is no translation.

    Parameters
    ----------
    setting : str
        "system" for that of the locale, or a language.
    locale : str
        As in "de_AT".
    """
    wanted = locale.split("_")[0] if setting == "system" else setting
    return wanted if wanted in languages() else "en"


def checked_language(wanted: str) -> str:
    """Return a language that was asked for.

    Raises
    ------
    PeelbackError
        There is no such language; the message lists those there are.
    """
    if wanted.lower() not in languages():
        raise PeelbackError(f"language must be one of {', '.join(languages())}, got {wanted!r}")
    return wanted.lower()


@cache
def _table(language: str) -> dict[str, str]:
    root = ET.parse(FOLDER / f"peelback_{language}.ts").getroot()
    return {
        message.findtext("source", ""): message.findtext("translation", "")
        for message in root.iter("message")
    }


def lookup(language: str, spelling: str = "uk") -> Callable[[str], str]:
    """Return what turns a text as it is written into the text that is shown."""
    if language == "en":
        return lambda text: spelled(text, spelling) if spelling != "uk" else text
    table = _table(language)
    return lambda text: table.get(text) or text


@contextmanager
def spoken_in(language: str, spelling: str = "uk") -> Iterator[None]:
    """Let all that is told speak a language for a while."""
    before = tongue.speaks()
    tongue.speak(lookup(language, spelling), language)
    try:
        yield
    finally:
        tongue.speak(*before)
