"""Which flaps lie folded back in a state."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from meshes.catalogue.folds import (
    OUT_OF_THE_WAY,
    Laid,
    fold_named,
    fold_of_part,
    moved_by,
    own_parts,
)
from meshes.errors import PeelbackError
from viewer.state.tongue import told
from viewer.state.view_state import ViewState


def share_of(state: ViewState, fold_id: str) -> float:
    """Return how far a flap is folded, 0 to 1."""
    return next((laid.share for laid in state.folds if laid.fold_id == fold_id), 0.0)


def is_folded(state: ViewState, part_id: str) -> bool:
    """Tell whether a part lies folded out of the way, or rides on a flap that does.

    A sheet with no more than a window in it does not.
    """
    fold_id = fold_of_part(part_id)
    if not fold_id or share_of(state, fold_id) < OUT_OF_THE_WAY:
        return False
    return not fold_named(fold_id)[0].by_hand


def moved_parts(state: ViewState) -> frozenset[str]:
    """Return the ids of all parts that lie elsewhere than in the whole body."""
    return frozenset(i for laid in state.folds if laid.share > 0 for i in moved_by(laid.fold_id))


def drawn_aside(fold_id: str) -> bool:
    """Tell whether a fold draws its parts aside, uncut, instead of turning them."""
    try:
        return fold_named(fold_id)[0].aside_mm > 0
    except PeelbackError:
        return False


def fold_title(fold_id: str) -> str:
    """Return a fold's name with its side ("Trapezius, left")."""
    try:
        rule, side = fold_named(fold_id)
    except PeelbackError:
        return fold_id
    return f"{told(rule.title)}, {told(side)}"


def with_fold(state: ViewState, fold_id: str, share: float) -> ViewState:
    """Return the state with one flap at a share; one that is folded first comes last in order."""
    folds = tuple(laid for laid in state.folds if laid.fold_id != fold_id)
    if share <= 0:
        return replace(state, folds=folds)
    if len(folds) < len(state.folds):
        folds = tuple(
            Laid(fold_id, share) if laid.fold_id == fold_id else laid for laid in state.folds
        )
    else:
        folds = (*folds, Laid(fold_id, share))
    return replace(state, folds=folds)


def without_folds_of(state: ViewState, part_ids: Iterable[str]) -> ViewState:
    """Return the state with every flap in place that moves one of these parts."""
    part_ids = set(part_ids)
    kept = tuple(laid for laid in state.folds if part_ids.isdisjoint(own_parts(laid.fold_id)))
    return replace(state, folds=kept)
