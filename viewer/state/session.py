"""The present state of a window, its history, and who wants to hear of changes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from viewer.state.commands import Command
from viewer.state.view_state import Camera, ViewState

Listener = Callable[[ViewState, ViewState], None]
"""Called with the state before and the state after."""

HISTORY_LIMIT = 500


@dataclass(frozen=True, slots=True)
class _Entry:
    name: str
    before: ViewState
    after: ViewState
    moves_camera: bool
    merges_with: str


class Session:
    """Holds the present state; every change goes through ``do``."""

    def __init__(self, state: ViewState | None = None) -> None:
        self._state = state or ViewState()
        self._done: list[_Entry] = []
        self._undone: list[_Entry] = []
        self._listeners: list[Listener] = []

    @property
    def state(self) -> ViewState:
        """The present state."""
        return self._state

    @property
    def undo_name(self) -> str | None:
        """What the next undo takes back, or None."""
        return self._done[-1].name if self._done else None

    @property
    def redo_name(self) -> str | None:
        """What the next redo does again, or None."""
        return self._undone[-1].name if self._undone else None

    def subscribe(self, listener: Listener) -> Callable[[], None]:
        """Call ``listener(before, after)`` on every change; returns how to stop."""
        self._listeners.append(listener)

        def stop() -> None:
            if listener in self._listeners:
                self._listeners.remove(listener)

        return stop

    def do(self, command: Command) -> ViewState:
        """Carry out a command; one that changes nothing leaves no trace."""
        before = self._state
        after = command.change(before)
        if after == before:
            return before
        if command.recorded:
            self._remember(command, before, after)
        self._set(after)
        return after

    def _remember(self, command: Command, before: ViewState, after: ViewState) -> None:
        self._undone.clear()
        last = self._done[-1] if self._done else None
        if last and command.merges_with and last.merges_with == command.merges_with:
            before = last.before
            self._done.pop()
        self._done.append(
            _Entry(command.name, before, after, command.moves_camera, command.merges_with)
        )
        del self._done[:-HISTORY_LIMIT]

    def close_gesture(self) -> None:
        """End a drag: the next command of the same kind is an entry of its own."""
        if self._done and self._done[-1].merges_with:
            self._done[-1] = replace(self._done[-1], merges_with="")

    def undo(self) -> str | None:
        """Take the last recorded change back; returns its name, or None if there is none."""
        if not self._done:
            return None
        entry = self._done.pop()
        self._undone.append(replace(entry, merges_with=""))
        self._set(self._carry_over(entry.before, entry.moves_camera))
        return entry.name

    def redo(self) -> str | None:
        """Do again what was taken back last."""
        if not self._undone:
            return None
        entry = self._undone.pop()
        self._done.append(entry)
        self._set(self._carry_over(entry.after, entry.moves_camera))
        return entry.name

    def _carry_over(self, state: ViewState, moves_camera: bool) -> ViewState:
        """Keep what undo must not touch: the selection, a peek, and mostly the camera."""
        now = self._state
        state = replace(
            state,
            selection=now.selection,
            covers_of=now.covers_of,
            peek=now.peek,
            working_side=now.working_side,
            orbit=now.orbit,
        )
        if moves_camera:
            return state
        return replace(state, camera=now.camera, view=now.view, table=now.table)

    def note_camera(self, camera: Camera | None) -> None:
        """Record where the user turned the camera, without an undo entry."""
        # Nobody is told: the scene is where this comes from.
        self._state = replace(self._state, camera=camera)

    def replace_state(self, state: ViewState) -> None:
        """Start afresh from an opened state; the history is dropped."""
        self._done.clear()
        self._undone.clear()
        self._set(state)

    def _set(self, state: ViewState) -> None:
        before, self._state = self._state, state
        for listener in tuple(self._listeners):
            listener(before, state)
