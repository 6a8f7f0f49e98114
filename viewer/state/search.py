"""Find parts by any of their names, however they are spelled."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from meshes.catalogue.names import plain, score


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


def find(text: str, index: Iterable[Named], limit: int = 12) -> list[Found]:
    """Return what a typed word may mean, best first.

    "left" and "right" in the text choose the side; every other word must find
    a word of the name, begun or with a small slip (`meshes.catalogue.names`).
    """
    words = text.split()
    side = next((w.casefold() for w in words if w.casefold() in ("left", "right")), None)
    wanted = plain(" ".join(w for w in words if w.casefold() not in ("left", "right"))).split()
    if not wanted:
        return []
    found = []
    for named in index:
        best, by = max(((score(wanted, plain(n)), n) for n in named.names), default=(0.0, ""))
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
