"""The commands that fold flaps and lay them back."""

from __future__ import annotations

from collections.abc import Iterable

from viewer.state.commands import Command
from viewer.state.folding import drawn_aside, fold_title, share_of, with_fold
from viewer.state.view_state import ViewState


def fold_to(fold_ids: Iterable[str], share: float, *, dragging: bool = False) -> Command:
    """Fold flaps to a share of their way, 0 laid back in place to 1 folded.

    Parameters
    ----------
    dragging : bool
        Of a slider: changes in a row make one undo entry.
    """
    fold_ids = tuple(fold_ids)
    if not 0.0 <= share <= 1.0:
        raise ValueError(f"share must lie in 0–1, got {share:g}")

    def change(state: ViewState) -> ViewState:
        for fold_id in fold_ids:
            state = with_fold(state, fold_id, share)
        return state

    titles = ", ".join(fold_title(fold_id) for fold_id in fold_ids)
    aside = all(drawn_aside(fold_id) for fold_id in fold_ids)
    words = "lay back" if share <= 0 else "draw aside" if aside else "fold"
    key = f"fold {' '.join(fold_ids)}" if dragging else ""
    return Command(f"{words} {titles}", change, merges_with=key)


def toggle_fold(fold_ids: Iterable[str]) -> Command:
    """Fold flaps back, or lay them in place when all of them are folded."""
    fold_ids = tuple(fold_ids)
    titles = ", ".join(fold_title(fold_id) for fold_id in fold_ids)

    def change(state: ViewState) -> ViewState:
        all_folded = all(share_of(state, fold_id) > 0 for fold_id in fold_ids)
        for fold_id in fold_ids:
            state = with_fold(state, fold_id, 0.0 if all_folded else 1.0)
        return state

    return Command(f"fold or lay back {titles}", change)
