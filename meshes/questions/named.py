"""Which parts of a model a typed name stands for."""

from __future__ import annotations

import difflib

from meshes.catalogue.names import find, names_of, plain
from meshes.catalogue.plan import part_ids_of
from meshes.errors import PeelbackError
from meshes.model import BackModel

_SIDES = ("left", "right")
_SURE = 0.98
"""A name that scores so well is the very name, but for articles and spelling."""

_NEAREST = 4


def parts_named(model: BackModel, text: str) -> tuple[str, ...]:
    """Return the ids of the parts that a name stands for, in the model's order.

    Parameters
    ----------
    model : BackModel
    text : str
        An id (``rhomboid_major.left``), an id or a group without its side (both sides
        then), or any English or Latin name, with "left" or "right" if wanted.

    Raises
    ------
    PeelbackError
        Nothing is called so; the message names the nearest there are.
    """
    typed = text.strip()
    if typed in model.parts:
        return (typed,)
    words = typed.replace(".", " ").split()
    side = next((w.lower() for w in words if w.lower() in _SIDES), None)
    bare = " ".join(w for w in words if w.lower() not in _SIDES)
    ids = _of_id(model, bare.replace(" ", "_")) or _of_id(model, bare.lower().replace(" ", "_"))
    if not ids:
        ids = _of_name(model, bare)
    chosen = [i for i in ids if side is None or not _other(i, side)]
    if ids and not chosen:
        raise PeelbackError(f"{text!r} has no part on the {side}; there is {', '.join(ids)}")
    if not chosen:
        near = nearest_names(model, bare)
        hint = f"; nearest: {'; '.join(near)}" if near else ""
        raise PeelbackError(f"no part is called {text!r}{hint}")
    return tuple(chosen)


def nearest_names(model: BackModel, text: str, limit: int = _NEAREST) -> list[str]:
    """Return the English names that come nearest to a typed one, best first."""
    hits = [h for h in find(text, model.catalogue, limit * 3) if _present(model, h.part_names)]
    names = list(dict.fromkeys(h.english for h in hits))
    if len(names) < limit:
        known = {
            plain(name): model.catalogue[key].english
            for key in {part.entry for part in model.parts.values()}
            if key in model.catalogue
            for name in names_of(key, model.catalogue)
        }
        close = difflib.get_close_matches(plain(text), known, limit, 0.55)
        names = list(dict.fromkeys([*names, *(known[name] for name in close)]))
    return names[:limit]


def _other(part_id: str, side: str) -> bool:
    other = "right" if side == "left" else "left"
    return part_id.endswith(f".{other}")


def _of_id(model: BackModel, name: str) -> list[str]:
    if not name:
        return []
    spelled = set(part_ids_of(name, model.catalogue))
    return [
        part.id
        for part in model.parts.values()
        if part.id in spelled or name in (part.name, part.entry, part.group)
    ]


def _of_name(model: BackModel, text: str) -> list[str]:
    for hit in find(text, model.catalogue, 3):
        if hit.score < _SURE:
            continue
        ids = _present(model, hit.part_names)
        if ids:
            return ids
    return []


def _present(model: BackModel, names: tuple[str, ...]) -> list[str]:
    wanted = set(names)
    return [part.id for part in model.parts.values() if part.name in wanted]
