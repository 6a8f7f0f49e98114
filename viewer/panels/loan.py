"""Lends the window's picture to a talk, a test or the lab, and gives all of it back.

Everybody who takes the window takes it through here, so that a talk and a test keep and give
back the same things: session and undo, the camera to the last bit, which actions could be
used, what stood round the picture, and the place that was pointed at last.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from typing import Any

from PySide6.QtWidgets import QDockWidget, QWidget

from viewer.state.session import Session
from viewer.state.view_state import ViewState


class WindowLoan:
    """A window that is lent until ``give_back``.

    Parameters
    ----------
    window : MainWindow
        Nobody else has it; its flight ends and measuring is put away.
    keep : collection of str
        Ids of actions that stay on.
    stays : collection of QWidget
        What stands round the picture and is not put away.
    """

    def __init__(
        self, window: Any, keep: Collection[str] = (), stays: Collection[QWidget] = ()
    ) -> None:
        self._window, self._keep = window, frozenset(keep)
        if window._measuring:
            window.set_measuring(False)
        window.scene_widget.end_flight()
        self._session = window.session
        self._pose = window.scene_widget.scene.pose
        self._place = window._last_place
        self._enabled = {a: a.isEnabled() for a in window._actions.values()}
        docks = window.findChildren(QDockWidget)
        round_it = (
            window.tools, window.strip, window.rail.parentWidget(), window.steps,
            window.side_panel, window.menuBar(), window.statusBar(), *docks,
        )  # fmt: skip
        self._shown = {w: w.isVisibleTo(window) for w in round_it if w not in stays}
        window._hovered = ""

    @property
    def put_away(self) -> tuple[QWidget, ...]:
        """What stood round the picture and is out of sight until it is given back."""
        return tuple(self._shown)

    def begin(self, follow: Callable[[ViewState, ViewState], None]) -> None:
        """Give the borrower a session of its own, which the window and ``follow`` hear of."""
        window = self._window
        session = Session(self._session.state)
        session.subscribe(window._on_state)
        session.subscribe(self.hold)
        session.subscribe(follow)
        window.session = session
        self.hold()

    def hold(self, *_states: ViewState) -> None:
        """Keep off and away what a state, new letters or new colours brought back."""
        for name, action in self._window._actions.items():
            action.setEnabled(name in self._keep)
        for part in self._shown:
            part.hide()

    def give_back(self) -> None:
        """Bring everything back; the borrower has let go of the window's signals."""
        window, scene = self._window, self._window.scene_widget.scene
        window.scene_widget.end_flight()
        for part, shown in self._shown.items():
            part.setVisible(shown)
        for action, enabled in self._enabled.items():
            action.setEnabled(enabled)
        last = window.session.state
        window.session = self._session
        window._last_place, window._hovered = self._place, ""
        window.takeover = window.presenting = None
        window._on_state(last, window.session.state)
        # The state's camera moved the picture, and may be older than what was looked at.
        window.scene_widget.end_flight()
        scene.pose = self._pose
        # What is due to letters and colours that were changed meanwhile.
        window._dress()
        window.scene_widget.refresh()
        window.scene_widget.setFocus()
