"""Find rows and groups by any of their names, with small slips forgiven.

Names are compared in one plain form: lower case, no accents, one spelling for
each word that the trade spells in two ways.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache

from meshes.catalogue.levels import spoken
from meshes.catalogue.records import Catalogue

# Spellings that count as the same; the second is the one compared. Whole-word
# equivalents of the trade first, then letter groups of UK and US spelling.
_WORDS = {
    "colli": "cervicis",
    "dorsal": "posterior",
    "ventral": "anterior",
    "rami": "ramus",
    "ganglia": "ganglion",
    "vertebrae": "vertebra",
    "costae": "costa",
    "musculi": "musculus",
    "muscles": "muscle",
    "nerves": "nerve",
    "ligaments": "ligament",
    "ligamenta": "ligamentum",
    "arteries": "artery",
    "trigona": "trigonum",
    "spatia": "spatium",
    "spines": "spine",
    "discs": "disc",
    "disk": "disc",
    "ribs": "rib",
    "grey": "gray",
}
_LETTERS = (
    ("fibre", "fiber"),
    ("centre", "center"),
    ("haem", "hem"),
    ("oesoph", "esoph"),
    ("physeal", "physial"),
    ("mammill", "mamill"),
    ("glutae", "glute"),
    ("ae", "e"),
    ("azygous", "azygos"),
)
_DROPPED = frozenset(
    ("musculus", "muscle", "of", "the", "m", "nervus", "n", "arteria", "a", "ligamentum", "and")
)


@dataclass(frozen=True, slots=True)
class NameHit:
    """A row or group that a typed name may mean.

    Attributes
    ----------
    key : str
        Key of the row or group.
    is_group : bool
    part_names : tuple of str
        Parts without side; for a family asked with a level, that one part.
    english : str
    by : str
        The name by which it was found.
    score : float
        1 for the very name, falling to 0.
    """

    key: str
    is_group: bool
    part_names: tuple[str, ...]
    english: str
    by: str
    score: float


@lru_cache(maxsize=8192)
def plain(text: str) -> str:
    """Return a name in the form in which names are compared.

    Examples
    --------
    >>> plain("Musculi iliocostales colli, Fibres")
    'musculus iliocostales cervicis fibers'
    """
    text = unicodedata.normalize("NFKD", text.casefold())
    text = "".join(c for c in text if not unicodedata.combining(c))
    words = [_WORDS.get(w, w) for w in re.sub(r"[^a-z0-9]+", " ", text).split()]
    text = " ".join(words)
    for written, compared in _LETTERS:
        text = text.replace(written, compared)
    return text


def slips(a: str, b: str, most: int) -> int:
    """Count the letters to change, add, drop or swap between two words.

    Parameters
    ----------
    a, b : str
    most : int
        Counting stops above this.

    Returns
    -------
    int
        ``most + 1`` when there are more.

    Examples
    --------
    >>> slips("rhomboid", "romboid", 2), slips("teres", "teers", 2)
    (1, 1)
    """
    if abs(len(a) - len(b)) > most:
        return most + 1
    before: list[int] = []
    row = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        older, before, row = before, row, [i]
        for j, y in enumerate(b, 1):
            cost = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (x != y))
            if i > 1 and j > 1 and x == b[j - 2] and a[i - 2] == y:
                cost = min(cost, older[j - 2] + 1)
            row.append(cost)
        if min(row) > most:
            return most + 1
    return row[-1]


def _word_score(typed: str, word: str) -> float:
    """How well one typed word fits one word of a name, 0 to 1."""
    if typed == word:
        return 1.0
    if any(c.isdigit() for c in typed):
        return 0.0
    if word.startswith(typed):
        return 0.9 if len(typed) >= 3 else 0.6
    if len(typed) < 4:
        return 0.0
    most = 1 if len(typed) < 7 else 2
    count = slips(typed, word, most)
    if count > most:
        # A slip in a word that is not finished yet.
        count = slips(typed, word[: len(typed)], 1) + 1
    return 0.85 - 0.15 * count if count <= most else 0.0


def score(typed: list[str], name: str) -> float:
    """How well typed words fit a name: each must find its own word."""
    words = name.split()
    if typed == words:
        return 1.0
    wanted = [w for w in typed if w not in _DROPPED] or typed
    offered = [w for w in words if w not in _DROPPED] or words
    if wanted == offered:
        return 0.99
    left = list(offered)
    total = 0.0
    for each in wanted:
        best = max(left, key=lambda w: _word_score(each, w), default="")
        value = _word_score(each, best)
        if value == 0.0:
            return 0.0
        total += value
        left.remove(best)
    # Whole, ordered, short names come first.
    fit = total / len(wanted)
    spare = len(left) / (len(offered) + 1)
    first = 0.02 if offered and _word_score(wanted[0], offered[0]) else 0.0
    return max(0.0, 0.9 * fit - 0.25 * spare + first)


def names_of(key: str, catalogue: Catalogue) -> tuple[str, ...]:
    """Return every name of a row or a group: English, Latin, synonyms, the key in words."""
    row = catalogue[key] if key in catalogue else catalogue.groups[key]
    names = (row.english, row.latin, *row.synonyms, key.replace("_", " "))
    return tuple(dict.fromkeys(n for n in names if n))


def find(text: str, catalogue: Catalogue, limit: int = 12) -> list[NameHit]:
    """Return what a typed name may mean, best first.

    Parameters
    ----------
    text : str
        Any part of an English, Latin, older or short name, a level with it if
        wanted ("short rotator T5"). "left" and "right" are passed over.
    catalogue : Catalogue
    limit : int

    Returns
    -------
    list of NameHit
    """
    typed = [w for w in plain(text).split() if w not in ("left", "right")]
    if not typed:
        return []
    hits: list[NameHit] = []
    for key, group in catalogue.groups.items():
        best, by = _best(typed, names_of(key, catalogue))
        if best:
            parts = tuple(n for m in group.members for n in catalogue[m].part_names())
            hits.append(NameHit(key, True, parts, group.english, by, best))
    for key, entry in catalogue.items():
        names = names_of(key, catalogue)
        best, by = _best(typed, names)
        parts = () if entry.kind == "space" else entry.part_names()
        if best:
            hits.append(NameHit(key, False, parts, entry.english, by, best))
        for level in entry.levels:
            hit = _family_hit(typed, key, level, names, catalogue)
            if hit:
                hits.append(hit)
    seen = set()
    ranked = []
    for hit in sorted(hits, key=lambda h: (-h.score, not h.is_group, len(h.english))):
        mark = (hit.key, hit.part_names)
        if mark not in seen:
            seen.add(mark)
            ranked.append(hit)
    return ranked[:limit]


def _best(typed: list[str], names: tuple[str, ...]) -> tuple[float, str]:
    return max(((score(typed, plain(n)), n) for n in names), default=(0.0, ""))


def _family_hit(
    typed: list[str], key: str, level: str, names: tuple[str, ...], catalogue: Catalogue
) -> NameHit | None:
    """Return the one part of a family that is asked for with its level, or None."""
    marks = plain(spoken(level)).split()
    marks = [m for m in marks if m not in _DROPPED]
    if not all(m in typed for m in marks):
        return None
    rest = [w for w in typed if w not in marks]
    if not rest:
        return None
    best, by = _best(rest, names)
    if not best:
        return None
    entry = catalogue[key]
    part = entry.part_names()[entry.levels.index(level)]
    # The level was matched as well, so this beats the family as a whole.
    return NameHit(key, False, (part,), entry.name_at(level), by, min(1.0, best + 0.05))
