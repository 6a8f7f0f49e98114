"""Find parts by any of their names, however they are spelled."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher

_SPELLINGS = (
    ("fiber", "fibre"),
    ("center", "centre"),
    ("haem", "hem"),
    ("oesoph", "esoph"),
    ("physeal", "physial"),
    ("colli", "cervicis"),
    ("dorsal ramus", "posterior ramus"),
    ("ventral ramus", "anterior ramus"),
)
"""Spellings that count as the same, wanted form last."""

CLOSE_ENOUGH = 0.78


def plain(text: str) -> str:
    """Return text in the one form in which names are compared."""
    text = unicodedata.normalize("NFKD", text.casefold())
    text = "".join(c for c in text if not unicodedata.combining(c))
    text = re.sub(r"[^a-z0-9]+", " ", text).strip()
    for other, wanted in _SPELLINGS:
        text = text.replace(other, wanted)
    return text


@dataclass(frozen=True, slots=True)
class Named:
    """Something that can be found.

    Attributes
    ----------
    title : str
        Shown in the list.
    ids : tuple of str
        Part ids it stands for (both sides, all parts of a group).
    names : tuple of str
        Everything it may be called.
    stratum : int
    """

    title: str
    ids: tuple[str, ...]
    names: tuple[str, ...]
    stratum: int = -1


@dataclass(frozen=True, slots=True)
class Found:
    """A find and how well it fits, 1 best."""

    named: Named
    score: float
    by: str


def _score(wanted: str, name: str) -> float:
    if name == wanted:
        return 1.0
    if name.startswith(wanted):
        return 0.95 - 0.001 * min(len(name) - len(wanted), 50)
    words, parts = name.split(), wanted.split()
    if all(any(word.startswith(part) for word in words) for part in parts):
        return 0.9 - 0.001 * min(len(name), 50)
    if len(wanted) >= 3 and wanted in name:
        return 0.8
    if len(wanted) >= 4:
        ratio = SequenceMatcher(None, wanted, name).ratio()
        for word in words:
            if len(word) >= 4:
                ratio = max(ratio, 0.97 * SequenceMatcher(None, wanted, word).ratio())
        if ratio >= CLOSE_ENOUGH:
            return 0.6 * ratio
    return 0.0


def find(text: str, index: Iterable[Named], limit: int = 12) -> list[Found]:
    """Return what a typed word may mean, best first.

    "left" and "right" in the text choose the side; every other word must
    begin a word of the name, or the whole be nearly spelled like one.
    """
    words = plain(text).split()
    side = next((w for w in words if w in ("left", "right")), None)
    wanted = " ".join(w for w in words if w not in ("left", "right"))
    if not wanted:
        return []
    found = []
    for named in index:
        best, by = max(((_score(wanted, plain(n)), n) for n in named.names), default=(0.0, ""))
        if best <= 0:
            continue
        if side:
            ids = tuple(i for i in named.ids if i.endswith(f".{side}"))
            if not ids:
                continue
            named = Named(f"{named.title}, {side}", ids, named.names, named.stratum)
        found.append(Found(named, best, by))
    found.sort(key=lambda f: (-f.score, f.named.stratum < 0, len(f.named.title), f.named.title))
    return found[:limit]


def also_called(named: Named, by: str, titles: Mapping[str, str] | None = None) -> str:
    """Return the name by which something was found, when it is not its title."""
    return "" if plain(by) in plain(named.title) else by
