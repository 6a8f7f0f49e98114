"""British and American spelling: one function through which shown words go.

The words of program and catalogue are written in British spelling. Proper
names stay as they are: "Gray" with a capital is an author.
"""

from __future__ import annotations

import re
from functools import lru_cache

SPELLINGS: dict[str, str] = {"uk": "British", "us": "American"}

TABLE: tuple[tuple[str, str], ...] = (
    ("fibre", "fiber"),
    ("fibrecartilag", "fibercartilag"),
    ("centre", "center"),
    ("centred", "centered"),
    ("centring", "centering"),
    ("centimetre", "centimeter"),
    ("millimetre", "millimeter"),
    ("colour", "color"),
    ("grey", "gray"),
    ("neighbour", "neighbor"),
    ("labelled", "labeled"),
    ("labelling", "labeling"),
    ("modelled", "modeled"),
    ("modelling", "modeling"),
    ("travelled", "traveled"),
    ("travelling", "traveling"),
    ("cancelled", "canceled"),
    ("apophysial", "apophyseal"),
    ("epiphysial", "epiphyseal"),
    ("hypophysial", "hypophyseal"),
    ("diaphysial", "diaphyseal"),
    ("symphysial", "symphyseal"),
    ("oesophag", "esophag"),
    ("oedema", "edema"),
    ("haemorrh", "hemorrh"),
    ("haematoma", "hematoma"),
    ("anaesthe", "anesthe"),
    ("paraesthe", "paresthe"),
    ("caesarean", "cesarean"),
    ("foetal", "fetal"),
    ("behaviour", "behavior"),
    ("favour", "favor"),
    ("practise", "practice"),
    ("programme", "program"),
    ("catalogue", "catalog"),
    ("mould", "mold"),
    ("judgement", "judgment"),
    ("recognise", "recognize"),
    ("organise", "organize"),
    ("defence", "defense"),
)
"""(British, American) beginnings or stems, lower case."""

_TO_US = dict(TABLE)
_TO_UK = {us: uk for uk, us in TABLE if us not in ("practice", "program", "catalog")}
# A letter before the stem is allowed where words are compounded: myofibre, zygapophysial.
_UK_WORD = re.compile("|".join(sorted(map(re.escape, _TO_US), key=len, reverse=True)), re.I)
_US_WORD = re.compile(
    "|".join(
        rf"\b{us}\b" if us == "gray" else re.escape(us)
        for us in sorted(_TO_UK, key=len, reverse=True)
    ),
    re.I,
)


def _cased(new: str, old: str) -> str:
    if old.isupper():
        return new.upper()
    return new[:1].upper() + new[1:] if old[:1].isupper() else new


@lru_cache(maxsize=4096)
def spelled(text: str, spelling: str) -> str:
    """Return text in one spelling.

    Parameters
    ----------
    text : str
    spelling : {"uk", "us"}

    Raises
    ------
    ValueError
        For another spelling.
    """
    if spelling not in SPELLINGS:
        raise ValueError(f"spelling must be one of {', '.join(SPELLINGS)}, got {spelling!r}")
    if spelling == "us":
        return _UK_WORD.sub(lambda m: _cased(_TO_US[m[0].lower()], m[0]), text)

    def british(match: re.Match[str]) -> str:
        if match[0] == "Gray":
            return match[0]
        return _cased(_TO_UK[match[0].lower()], match[0])

    return _US_WORD.sub(british, text)


def spellings_in(text: str) -> set[str]:
    """Return which of "uk" and "us" a text holds words of; the author Gray counts for neither."""
    found = {"uk"} if spelled(text, "us") != text else set()
    if spelled(text, "uk") != text:
        found.add("us")
    return found
