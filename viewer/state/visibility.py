"""Which parts a state shows, how, and what it hides, told in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Protocol

from viewer.state.folding import drawn_aside, fold_title
from viewer.state.tongue import told
from viewer.state.view_state import (
    BOTH_SIDES,
    STRATA,
    STRATUM_COUNT,
    SideChoice,
    ViewState,
    on_side,
    sides_of,
)

NEIGHBOUR_GROUP = "neighbour"
SEE_THROUGH_OPACITY = 0.25
FILM_OPACITY = 0.17
"""Of a film in the open: the muscle shows through it, as it does on the table."""

FILMS = frozenset({"deep_fascia", "nuchal_fascia"})
"""Entries that are films on what they cover; their meshes are closed like all others."""


class Placed(Protocol):
    """What visibility needs to know of a part."""

    id: str
    entry: str
    stratum: int
    side: str | None
    kind: str
    group: str


class HasParts(Protocol):
    """Anything with parts: the finished model, or one still being filled."""

    parts: Mapping[str, Placed]


def taken_off(part: Placed, state: ViewState) -> bool:
    """True when the dissection has taken this part away (peeled, off, removed or hidden).

    A median part goes with a stratum only when both sides have lost it.
    """
    if part.id in state.removed or part.id in state.hidden:
        return True
    sides = BOTH_SIDES if part.side is None else (part.side,)
    return all(
        part.stratum < state.peeled.of(side) or part.stratum in state.strata_off.of(side)
        for side in sides
    )


def visible_parts(
    model: HasParts, state: ViewState, neighbours: frozenset[str] = frozenset()
) -> set[str]:
    """Return the ids of everything that is drawn, solid or see-through.

    Parameters
    ----------
    model : BackModel or anything with ``parts``
    state : ViewState
    neighbours : frozenset of str
        Ids of edge muscles that have a switch of their own.
    """
    if state.alone:
        return {part_id for part_id in state.alone if part_id in model.parts}
    shown = {
        part.id
        for part in model.parts.values()
        if on_side(part.side, state.side_shown)
        and not taken_off(part, state)
        and (state.neighbours or part.id not in neighbours)
    }
    if state.peek:
        # Peeking brings the wanted part into view even where the dissection took it away.
        shown |= {part_id for part_id in state.selection if part_id in model.parts}
    return shown


def see_through_parts(model: HasParts, state: ViewState, shown: Iterable[str]) -> set[str]:
    """Return those of the shown ids that are drawn see-through."""
    shown = set(shown)
    through = shown & state.see_through
    if not state.peek or state.alone:
        return through
    wanted = [model.parts[i] for i in state.selection if i in model.parts]
    if wanted:
        deepest = max(part.stratum for part in wanted)
        through |= {
            i for i in shown if model.parts[i].stratum < deepest and i not in state.selection
        }
        return through
    for side in BOTH_SIDES:
        strata = [model.parts[i].stratum for i in shown if model.parts[i].side in (side, None)]
        if strata:
            outermost = min(strata)
            through |= {
                i
                for i in shown
                if model.parts[i].stratum == outermost and model.parts[i].side in (side, None)
            }
    return through


def is_film(part: Placed) -> bool:
    """True when a part is a film that lies on muscle like a skin on milk."""
    return part.entry in FILMS


def bare_films(model: HasParts, state: ViewState, shown: Iterable[str]) -> set[str]:
    """Return the shown films from which everything that covers them has been taken off.

    A covered film can't be seen; drawn solid it costs nothing.
    """
    shown = set(shown)
    films = [model.parts[i] for i in shown if is_film(model.parts[i])]
    if not films:
        return set()
    covers = {
        side: min(
            (
                part.stratum
                for part in (model.parts[i] for i in shown)
                if part.side in (side, None) and part.kind in ("skin", "fascia", "muscle")
            ),
            default=STRATUM_COUNT,
        )
        for side in BOTH_SIDES
    }
    return {
        film.id
        for film in films
        if all(
            covers[side] >= film.stratum
            for side in (BOTH_SIDES if film.side is None else (film.side,))
        )
    }


def opacities(
    model: HasParts, state: ViewState, neighbours: frozenset[str] = frozenset()
) -> dict[str, float]:
    """Return the opacity of each shown part by id; what is absent is hidden.

    A film in the open is thin, unless it is shown alone.
    """
    shown = visible_parts(model, state, neighbours)
    through = see_through_parts(model, state, shown)
    answer = {i: SEE_THROUGH_OPACITY if i in through else 1.0 for i in shown}
    for i in bare_films(model, state, shown) - set(state.alone):
        answer[i] = FILM_OPACITY
    return answer


@dataclass(frozen=True, slots=True)
class HiddenThing:
    """One line of the strip that says what is not shown.

    Attributes
    ----------
    text : str
    restore : str
        Name of the change that brings it back, see ``commands.RESTORE``.
    side : {"left", "right", "both"}
    detail : str
        The full list where ``text`` is shortened.
    stratum : int
        For a single stratum, its number; else -1.
    """

    text: str
    restore: str
    side: SideChoice = "both"
    detail: str = ""
    stratum: int = -1


def _span(depth: int) -> str:
    if depth == 1:
        return told("stratum 0 ({name})", name=told(STRATA[0]))
    return told("strata 0–{last}", last=depth - 1)


def _listed(names: list[str], limit: int = 3) -> str:
    if len(names) <= limit:
        return ", ".join(names)
    return told("{names} and {more} more", names=", ".join(names[:limit]), more=len(names) - limit)


def what_is_hidden(
    state: ViewState, titles: Mapping[str, str], model: HasParts | None = None
) -> list[HiddenThing]:
    """Return what the present state keeps from view, in words, outermost first.

    Parameters
    ----------
    state : ViewState
    titles : mapping of str to str
        Part id to its title ("Rhomboid major, left").
    model : optional
        When given, parts that are gone with their stratum are not named twice.
    """
    lines: list[HiddenThing] = []
    if state.alone:
        names = sorted(titles.get(i, i) for i in state.alone)
        lines.append(
            HiddenThing(
                told("Only {names}", names=_listed(names)), "alone", detail=", ".join(names)
            )
        )
    left, right = state.peeled
    if left and left == right:
        lines.append(HiddenThing(told("Peeled: {what}, both sides", what=_span(left)), "peeled"))
    else:
        for side in BOTH_SIDES:
            if depth := state.peeled.of(side):
                lines.append(
                    HiddenThing(
                        told("Peeled: {what}, {side}", what=_span(depth), side=told(side)),
                        "peeled",
                        side,
                    )
                )
    for n in range(STRATUM_COUNT):
        off = [
            side
            for side in BOTH_SIDES
            if n in state.strata_off.of(side) and n >= state.peeled.of(side)
        ]
        if len(off) == 2:
            lines.append(
                HiddenThing(
                    told("Off: {what}, both sides", what=told(STRATA[n])),
                    "stratum",
                    "both",
                    stratum=n,
                )
            )
        elif off:
            lines.append(
                HiddenThing(
                    told("Off: {what}, {side}", what=told(STRATA[n]), side=told(off[0])),
                    "stratum",
                    off[0],
                    stratum=n,
                )
            )
    removed = [i for i in state.removed if not _gone_with_stratum(i, state, model)]
    if removed:
        names = sorted(titles.get(i, i) for i in removed)
        lines.append(
            HiddenThing(
                told("Removed by steps: {names}", names=_listed(names)),
                "removed",
                detail=", ".join(names),
            )
        )
    if state.hidden:
        names = sorted(titles.get(i, i) for i in state.hidden)
        lines.append(
            HiddenThing(
                told("Hidden: {names}", names=_listed(names)), "hidden", detail=", ".join(names)
            )
        )
    if state.folds:
        aside = [fold_title(f.fold_id) for f in state.folds if drawn_aside(f.fold_id)]
        back = [fold_title(f.fold_id) for f in state.folds if not drawn_aside(f.fold_id)]
        said = []
        if back:
            said.append(told("Folded back: {names}", names=_listed(back)))
        if aside:
            said.append(told("Drawn aside: {names}", names=_listed(aside)))
        lines.append(HiddenThing("; ".join(said), "folds", detail=", ".join(back + aside)))
    if state.side_shown != "both":
        other = "right" if state.side_shown == "left" else "left"
        lines.append(HiddenThing(told("The {side} side", side=told(other)), "side_shown"))
    if not state.neighbours:
        lines.append(HiddenThing(told("Neighbours at the edge"), "neighbours"))
    return lines


def _gone_with_stratum(part_id: str, state: ViewState, model: HasParts | None) -> bool:
    if model is None or part_id not in model.parts:
        return False
    part = model.parts[part_id]
    sides = BOTH_SIDES if part.side is None else (part.side,)
    return all(part.stratum < state.peeled.of(side) for side in sides)


def outermost_stratum(state: ViewState, side: SideChoice) -> int:
    """Return the first stratum that is still on, on the given side (11: none)."""
    return min(state.peeled.of(s) for s in sides_of(side))
