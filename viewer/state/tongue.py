"""Sentences that the program makes itself, in the language that is shown. No Qt.

A sentence stands in the source in British English, with gaps: ``told("{title}
hides {share}", title=…, share=…)``. The window gives the look-up that puts the
translation in its place before the gaps are filled, and so do paper and page
(`viewer.state.languages`); without one (command line, tests) the English stands. `viewer.translations.texts` reads these calls
out of the source, so that none is forgotten.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from meshes.errors import PeelbackError

_lookup: Callable[[str], str] = str
_language = "en"


def speak(lookup: Callable[[str], str], language: str = "en") -> None:
    """Take the look-up of a language: source text to shown text."""
    global _lookup, _language
    _lookup, _language = lookup, language


def speaks() -> tuple[Callable[[str], str], str]:
    """Return look-up and language that are spoken now, as `speak` takes them."""
    return _lookup, _language


def figure(number: float, form: str = "g") -> str:
    """Return a number as it is written in the language that is shown ("4,5" in German)."""
    text = format(number, form)
    return text.replace(".", ",") if _language == "de" else text


def told(text: str, **gaps: object) -> str:
    """Return a sentence as it is shown, its gaps filled.

    Parameters
    ----------
    text : str
        British English, gaps in braces.
    gaps
        What fills them; words among them are told by the caller first.
    """
    words = _lookup(text)
    return words.format(**gaps) if gaps else words


def told_each(text: str, between: str) -> str:
    """Return a text that was joined of several, each of them as it is shown.

    Parameters
    ----------
    text : str
    between : str
        What stands between two of them, and in none of them.
    """
    return between.join(told(piece) for piece in text.split(between))


def refused(error: PeelbackError) -> str:
    """Return why something was refused, as it is shown.

    Words in the gaps are told as well; texts of the questions are gathered from
    ``meshes/questions``.
    """
    gaps = {name: told(gap) if isinstance(gap, str) else gap for name, gap in error.gaps.items()}
    return told(error.text, **gaps)


def counted(count: int, one: str, many: str) -> str:
    """Return ``one`` or ``many`` with the number in its gap ``{count}``.

    Both must also stand somewhere as ``told`` texts or in a table that is gathered.
    """
    return told(one if count == 1 else many, count=count)
