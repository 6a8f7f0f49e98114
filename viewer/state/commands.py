"""Every change of the state as a named, undoable command.

A command is a value: its name, the pure function that makes the new state,
and whether undo should remember it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from viewer.state.folding import without_folds_of
from viewer.state.table_view import TABLE_PLACES
from viewer.state.view_state import (
    BOTH_SIDES,
    LOOKS,
    STRATA,
    STRATUM_COUNT,
    VIEWS,
    Camera,
    Pin,
    SideChoice,
    Sides,
    ViewState,
    on_side,
    sides_of,
)
from viewer.state.visibility import HasParts, taken_off


@dataclass(frozen=True, slots=True)
class Command:
    """A change of the state.

    Attributes
    ----------
    name : str
        What the undo entry says, lower case ("peel to stratum 3, left").
    change : callable
        ViewState -> ViewState.
    recorded : bool
        False for changes that undo passes over (the selection, a peek).
    moves_camera : bool
        True when undo must also bring the camera back.
    merges_with : str
        Commands in a row with the same non-empty word make one undo entry
        (a drag of the rail is one peel).
    """

    name: str
    change: Callable[[ViewState], ViewState]
    recorded: bool = True
    moves_camera: bool = False
    merges_with: str = ""


def _side_words(side: SideChoice) -> str:
    return "both sides" if side == "both" else side


# --- done ---------------------------------------------------------------------------------


def peel_to(
    depth: int, side: SideChoice, model: HasParts | None = None, *, dragging: bool = False
) -> Command:
    """Take off all strata above ``depth`` and lay everything from there back on.

    Going outward also returns what steps removed and what was off at or below
    ``depth``, so that rail and step line never contradict each other.
    """
    if not 0 <= depth <= STRATUM_COUNT:
        raise ValueError(f"depth must lie in 0–{STRATUM_COUNT}, got {depth}")

    def change(state: ViewState) -> ViewState:
        peeled = state.peeled.put(side, depth)
        going_out = any(depth < state.peeled.of(s) for s in sides_of(side))
        if not going_out or model is None:
            return replace(state, peeled=peeled)
        returned = {
            part.id
            for part in model.parts.values()
            if on_side(part.side, side) and part.stratum >= depth
        }
        off = state.strata_off
        for s in sides_of(side):
            off = off.put(s, frozenset(n for n in off.of(s) if n < depth))
        state = without_folds_of(state, returned)
        return replace(state, peeled=peeled, removed=state.removed - returned, strata_off=off)

    layer = STRATA[depth] if depth < STRATUM_COUNT else "nothing"
    name = (
        f"lay all back, {_side_words(side)}"
        if depth == 0
        else f"peel to {layer}, " + (_side_words(side))
    )
    return Command(name, change, merges_with=f"rail {side}" if dragging else "")


def toggle_stratum(stratum: int, side: SideChoice) -> Command:
    """Take one stratum out, or put it back if it is off on all the chosen sides."""
    if not 0 <= stratum < STRATUM_COUNT:
        raise ValueError(f"stratum must lie in 0–{STRATUM_COUNT - 1}, got {stratum}")

    def change(state: ViewState) -> ViewState:
        off, peeled = state.strata_off, state.peeled
        is_off = all(stratum in off.of(s) or stratum < peeled.of(s) for s in sides_of(side))
        for s in sides_of(side):
            if not is_off:
                off = off.put(s, off.of(s) | {stratum})
            elif stratum < peeled.of(s):
                # It is gone with the peel: keep the others off singly, put this one back.
                off = off.put(s, (off.of(s) | set(range(peeled.of(s)))) - {stratum})
                peeled = peeled.put(s, 0)
            else:
                off = off.put(s, off.of(s) - {stratum})
        for s in sides_of(side):
            off, peeled = _tidy(off, peeled, s)
        return replace(state, strata_off=off, peeled=peeled)

    return Command(f"hide or show {STRATA[stratum]}, {_side_words(side)}", change)


def _tidy(off: Sides, peeled: Sides, side: str) -> tuple[Sides, Sides]:
    """Let single strata that follow on from the peel count as peeled."""
    depth, strata = peeled.of(side), set(off.of(side))
    if depth or 0 in strata:
        while depth < STRATUM_COUNT and depth in strata:
            depth += 1
    strata = {n for n in strata if n >= depth}
    return off.put(side, frozenset(strata)), peeled.put(side, depth)


def hide(ids: Iterable[str], title: str = "") -> Command:
    """Hide parts by hand; a selected part that is hidden stays selected."""
    ids = frozenset(ids)
    return Command(
        f"hide {title or f'{len(ids)} parts'}",
        lambda state: replace(state, hidden=state.hidden | ids, alone=state.alone - ids),
    )


def show(ids: Iterable[str], model: HasParts, title: str = "") -> Command:
    """Bring parts back, however they went, leaving all others as they are.

    A part gone with a peeled stratum is returned by taking the rest of that
    stratum away by hand.
    """
    ids = frozenset(ids)

    def change(state: ViewState) -> ViewState:
        state = replace(state, hidden=state.hidden - ids, removed=state.removed - ids)
        state = without_folds_of(state, ids)
        gone = [
            model.parts[i] for i in ids if i in model.parts and taken_off(model.parts[i], state)
        ]
        for part in gone:
            for side in BOTH_SIDES if part.side is None else (part.side,):
                state = _return_stratum(state, part.stratum, side)
        if gone:
            strata = {(part.stratum, s) for part in gone for s in _sides(part.side)}
            rest = {
                p.id
                for p in model.parts.values()
                if p.id not in ids and any((p.stratum, s) in strata for s in _sides(p.side))
            }
            state = replace(state, hidden=state.hidden | rest)
        if state.side_shown != "both" and any(
            i in model.parts and not on_side(model.parts[i].side, state.side_shown) for i in ids
        ):
            state = replace(state, side_shown="both")
        if state.alone:
            state = replace(state, alone=state.alone | ids)
        return state

    return Command(f"show {title or f'{len(ids)} parts'}", change)


def _sides(side: str | None) -> tuple[str, ...]:
    return BOTH_SIDES if side is None else (side,)


def _return_stratum(state: ViewState, stratum: int, side: str) -> ViewState:
    off, peeled = state.strata_off.of(side), state.peeled.of(side)
    if stratum < peeled:
        off = off | frozenset(range(peeled))
        peeled = 0
    off = off - {stratum}
    new_off, new_peeled = _tidy(
        state.strata_off.put(side, off), state.peeled.put(side, peeled), side
    )
    return replace(state, strata_off=new_off, peeled=new_peeled)


def set_working_side(side: SideChoice) -> Command:
    """Choose the side on which rail and steps act."""
    return Command(
        f"work on {_side_words(side)}",
        lambda state: replace(state, working_side=side),
        recorded=False,
    )


def bring_all_back(name: str = "bring all back") -> Command:
    """Undo every hiding and every peel; pins, camera and look stay."""
    nothing = ViewState()
    return Command(
        name,
        lambda state: replace(
            state,
            peeled=nothing.peeled,
            strata_off=nothing.strata_off,
            removed=nothing.removed,
            ticked=nothing.ticked,
            overridden=nothing.overridden,
            hidden=nothing.hidden,
            folds=nothing.folds,
            see_through=nothing.see_through,
            alone=nothing.alone,
            peek=False,
            side_shown="both",
            neighbours=True,
        ),
    )


def restore(what: str, side: SideChoice = "both", stratum: int = -1) -> Command:
    """Bring back one line of the strip; ``what`` is ``HiddenThing.restore``."""

    def change(state: ViewState) -> ViewState:
        if what == "peeled":
            return replace(state, peeled=state.peeled.put(side, 0))
        if what == "stratum":
            off = state.strata_off
            for s in sides_of(side):
                off = off.put(s, off.of(s) - {stratum})
            return replace(state, strata_off=off)
        if what == "removed":
            return replace(state, removed=frozenset())
        if what == "hidden":
            return replace(state, hidden=frozenset())
        if what == "folds":
            return replace(state, folds=())
        if what == "alone":
            return replace(state, alone=frozenset())
        if what == "side_shown":
            return replace(state, side_shown="both")
        if what == "neighbours":
            return replace(state, neighbours=True)
        raise ValueError(f"nothing is restored by {what!r}")

    return Command(f"bring back {what.replace('_', ' ')}", change)


# --- looking ------------------------------------------------------------------------------


def select(ids: Iterable[str], *, adding: bool = False) -> Command:
    """Pick parts; with ``adding`` a part already picked is let go."""
    ids = tuple(dict.fromkeys(ids))

    def change(state: ViewState) -> ViewState:
        if not adding:
            return replace(state, selection=ids)
        kept = tuple(i for i in state.selection if i not in ids)
        new = tuple(i for i in ids if i not in state.selection)
        return replace(state, selection=kept + new)

    return Command("pick", change, recorded=False)


def toggle_see_through(ids: Iterable[str], title: str = "") -> Command:
    """Make parts see-through, or solid again when all of them are see-through."""
    ids = frozenset(ids)
    return Command(
        f"see through {title or f'{len(ids)} parts'}",
        lambda state: replace(
            state,
            see_through=state.see_through - ids
            if ids <= state.see_through
            else state.see_through | ids,
        ),
    )


def toggle_alone(ids: Iterable[str], title: str = "") -> Command:
    """Show parts alone, or all again when just these are alone."""
    ids = frozenset(ids)
    return Command(
        f"show {title or f'{len(ids)} parts'} alone",
        lambda state: replace(state, alone=frozenset() if state.alone == ids else ids),
    )


def set_peek(on: bool) -> Command:
    """Look through what covers, without changing what was done."""
    return Command("peek", lambda state: replace(state, peek=on), recorded=False)


def show_side(side: SideChoice) -> Command:
    """Show the left side, the right side or both."""
    return Command(f"show {_side_words(side)}", lambda state: replace(state, side_shown=side))


def set_look(look: str) -> Command:
    """Change the colours of tissues."""
    if look not in LOOKS:
        raise ValueError(f"look must be one of {', '.join(LOOKS)}, got {look!r}")
    return Command(f"look: {LOOKS[look].lower()}", lambda state: replace(state, look=look))


def set_view(view: str) -> Command:
    """Go to a fixed view."""
    if view not in VIEWS:
        raise ValueError(f"view must be one of {', '.join(VIEWS)}, got {view!r}")
    return Command(
        f"view {VIEWS[view].lower()}",
        lambda state: replace(state, view=view, camera=None, table=""),
        moves_camera=True,
    )


def stand_at(table: str) -> Command:
    """Go to a place at the table with the donor lying prone; "" sets the body upright."""
    if table not in TABLE_PLACES:
        raise ValueError(f"table must be one of {', '.join(TABLE_PLACES)}, got {table!r}")
    return Command(
        f"stand: {TABLE_PLACES[table].lower()}",
        lambda state: replace(state, table=table, camera=None),
        moves_camera=True,
    )


def fly(camera: Camera, title: str) -> Command:
    """Note that the camera went to look at something."""
    return Command(f"go to {title}", lambda state: replace(state, camera=camera), moves_camera=True)


def set_orbit(orbit: str) -> Command:
    """Choose the limited or the free orbit."""
    return Command(f"{orbit} orbit", lambda state: replace(state, orbit=orbit), recorded=False)


def set_flag(name: str, on: bool, words: str) -> Command:
    """Set a yes-or-no field of the state."""
    return Command(words if on else f"no {words}", lambda state: replace(state, **{name: bool(on)}))


def set_label_density(density: float) -> Command:
    """Set how many labels are wanted, 0-1."""
    return Command(
        "label density",
        lambda state: replace(state, label_density=density, labels=True),
        merges_with="label density",
    )


def set_measure(points: Iterable[tuple[float, float, float]]) -> Command:
    """Set the points of the measuring line."""
    points = tuple(tuple(float(c) for c in p) for p in points)
    return Command(
        "measure" if points else "clear the measure",
        lambda state: replace(state, measure=points),
    )


def add_pin(pin: Pin) -> Command:
    """Stick a note to the model."""
    return Command(f"pin “{pin.text}”", lambda state: replace(state, pins=(*state.pins, pin)))


def change_pin(index: int, text: str) -> Command:
    """Change the words of a note; empty words take the pin out."""

    def change(state: ViewState) -> ViewState:
        pins = list(state.pins)
        if text:
            pins[index] = replace(pins[index], text=text)
        else:
            del pins[index]
        return replace(state, pins=tuple(pins))

    return Command("change pin" if text else "remove pin", change)
