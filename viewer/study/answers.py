"""Judges typed answers: any of the names will do, small slips are forgiven, sides are not."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from meshes.catalogue import load_catalogue
from meshes.catalogue.names import names_of, plain, slips
from viewer.state.tongue import told

_SPARE = frozenset(
    ("musculus", "muscle", "of", "the", "m", "nervus", "nerve", "n", "arteria", "artery", "a",
     "ligamentum", "ligament", "and", "os", "part", "pars", "mm", "nn", "aa", "lig", "ligg", "und")
)  # fmt: skip
"""Words that may be left out or put in."""

_SIDES = {"links": "left", "linke": "left", "linker": "left", "linkes": "left",
          "rechts": "right", "rechte": "right", "rechter": "right", "rechtes": "right",
          "left": "left", "sinister": "left", "sinistra": "left", "sinistrum": "left",
          "right": "right", "dexter": "right", "dextra": "right", "dextrum": "right"}  # fmt: skip
_LEVEL = re.compile(r"\b([ctls])\s*[-.]?\s*(\d{1,2})\b", re.IGNORECASE)
_NUMBER = re.compile(r"\b(\d{1,2})(?:st|nd|rd|th)?\b")
_ORDINALS = (
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth",
    "tenth", "eleventh", "twelfth",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Verdict:
    """What was made of an answer.

    Attributes
    ----------
    right : bool
    near : bool
        Wrong, but close to a right answer.
    words : str
        The reason, in a sentence.
    """

    right: bool
    near: bool
    words: str


def sides_in(text: str) -> set[str]:
    """Return the sides that a text names."""
    return {_SIDES[w] for w in re.findall(r"[a-z]+", text.casefold()) if w in _SIDES}


def levels_in(text: str) -> set[str]:
    """Return the levels that a text names: "T7" as "T7", "seventh rib" and "rib 7" as "7"."""
    found = {f"{letter.upper()}{int(number)}" for letter, number in _LEVEL.findall(text)}
    rest = _LEVEL.sub(" ", text.casefold())
    found |= {str(int(number)) for number in _NUMBER.findall(rest)}
    words = re.findall(r"[a-z]+", rest)
    return found | {str(i) for i, name in enumerate(_ORDINALS, start=1) if name in words}


def _bare(text: str) -> str:
    """Return a name without its side and its levels, as names are compared."""
    text = _NUMBER.sub(" ", _LEVEL.sub(" ", text.casefold()))
    words = [w for w in plain(text).split() if w not in _SIDES and w not in _ORDINALS]
    return " ".join(words)


def judge(typed: str, accepted: Iterable[str]) -> Verdict:
    """Judge a typed answer.

    Parameters
    ----------
    typed : str
    accepted : iterable of str
        All names that are right, the one to show first.

    Returns
    -------
    Verdict
        A side or a level that is named must be right; one that is left out is
        asked for only where the accepted names have a level.
    """
    accepted = [name for name in accepted if name.strip()]
    if not accepted:
        raise ValueError("a question needs at least one accepted answer")
    shown = accepted[0]
    if not typed.strip():
        return Verdict(False, False, told("No answer. It is {name}.", name=shown))
    best, by = max(((_likeness(typed, name), name) for name in accepted), key=lambda pair: pair[0])
    if best < 1.0 and any(_begins(typed, name) for name in accepted):
        words = told(
            "“{typed}” leaves open which one is meant: {name}.", typed=typed.strip(), name=shown
        )
        return Verdict(False, True, words)
    if best < 0.5:
        return Verdict(False, False, told("No: it is {name}.", name=shown))
    if best < 1.0:
        return Verdict(False, True, told("Close, but no: it is {name}.", name=shown))
    said, meant = sides_in(typed), sides_in(by)
    if said and meant and said != meant:
        return Verdict(
            False, True, told("The structure is right, the side is not: {name}.", name=shown)
        )
    said, meant = levels_in(typed), levels_in(by)
    if meant and said != meant:
        if said:
            words = told("The structure is right, the level is not: {name}.", name=shown)
        else:
            words = told("The structure is right, but at which level: {name}.", name=shown)
        return Verdict(False, True, words)
    if said and not meant:
        return Verdict(False, True, told("It has no level: {name}.", name=shown))
    if plain(typed) == plain(by) or _bare(typed) == _bare(by):
        return Verdict(True, False, told("Right: {name}.", name=by))
    return Verdict(True, False, told("Right; it is written {name}.", name=by))


def _likeness(typed: str, name: str) -> float:
    """Return the share (0-1) of words on which two names agree, small slips forgiven."""
    given, wanted = _words(typed), _words(name)
    if not wanted:
        # A bare level or side.
        return 1.0 if levels_in(typed) or sides_in(typed) else 0.0
    left, met = list(given), 0
    for word in wanted:
        fit = next((w for w in left if _same(w, word)), None)
        if fit is not None:
            left.remove(fit)
            met += 1
    return met / max(len(wanted), len(given), 1)


def _begins(typed: str, name: str) -> bool:
    """Tell whether an answer is the beginning of a name and leaves the rest of it out."""
    given, wanted = _words(typed), _words(name)
    if not 0 < len(given) < len(wanted):
        return False
    return all(_same(word, meant) for word, meant in zip(given, wanted, strict=False))


def _words(text: str) -> list[str]:
    bare = _bare(text).split()
    return [w for w in bare if w not in _SPARE] or bare


@lru_cache(maxsize=1)
def _trade_words() -> frozenset[str]:
    catalogue = load_catalogue()
    names = (name for key in catalogue for name in names_of(key, catalogue))
    return frozenset(word for name in names for word in plain(name).split())


def _same(typed: str, word: str) -> bool:
    """One slip in a short word, two in a long one; the first letters of a word are no slip."""
    if typed == word:
        return True
    # A word of the trade is never a slip of another: internal, external.
    if min(len(typed), len(word)) < 4 or typed in _trade_words():
        return False
    most = 1 if len(word) < 8 else 2
    return slips(typed, word, most) <= most
