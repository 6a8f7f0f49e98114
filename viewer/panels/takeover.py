"""Takes the window over for a while: its own session, its own panel, and all given back.

The tag test and the take-home lab work on the window's own picture. Neither the user's state
nor undo is touched meanwhile, and afterwards both are as they were, to the last bit.
"""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, Signal
from PySide6.QtGui import QCursor, QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from viewer.panels.loan import WindowLoan
from viewer.state.commands import Command
from viewer.state.view_state import ViewState
from viewer.wording import reword

LOOKING = (
    "turn_left", "turn_right", "turn_up", "turn_down", "pan_left", "pan_right", "pan_up",
    "pan_down", "zoom_in", "zoom_out", "font_larger", "font_smaller", "font_normal", "dark",
    "full_screen", "quit",
)  # fmt: skip
"""Actions that give nothing away and so stay on."""
AIM_STEP_PX = 12
WIDTH_SHARE = (0.30, 0.42)
"""Share of the window that the panel takes, with small and with large letters."""


class Takeover(QObject):
    """Holds a window until ``finish``.

    Parameters
    ----------
    window : MainWindow
    panel : QWidget
        Stands on the right of the picture; has ``set_dress(theme, scale)``.
    keep : tuple of str
        Further actions of the window that stay on.
    furniture : tuple of QWidget
        Parts of the window that stay where they are.

    Signals
    -------
    finished
    """

    finished = Signal()

    def __init__(
        self,
        window: Any,
        panel: QWidget,
        keep: tuple[str, ...] = (),
        furniture: tuple[QWidget, ...] = (),
    ) -> None:
        super().__init__(window)
        self.window, self.panel = window, panel
        self._over = False
        self._keep, self._stays = keep, furniture
        self._shortcuts: list[QShortcut] = []
        self._loan: WindowLoan

    def take(self) -> None:
        """Take the window; called once, when whoever takes it is ready."""
        window, panel = self.window, self.panel
        scene = window.scene_widget.scene
        self._loan = WindowLoan(
            window, (*LOOKING, *self._keep), (window.menuBar(), window.statusBar(), *self._stays)
        )
        window.statusBar().clearMessage()
        widget = window.scene_widget
        widget.hovered.disconnect(window._on_hover)
        widget.picked.disconnect(window._on_pick)
        widget.context_requested.disconnect(window._on_context)
        widget.hovered.connect(self.on_hover)
        widget.picked.connect(self.on_pick)
        scene.show_section_grip(False)
        row = window.centralWidget().layout().itemAt(1).layout()
        row.addWidget(panel)
        window.takeover = self
        self._loan.begin(self.on_state)
        window.installEventFilter(self)
        self.dress()
        reword(panel)
        panel.show()

    # --- what the window does meanwhile ---------------------------------------------------------

    def on_state(self, before: ViewState, after: ViewState) -> None:
        """The borrowed session has a new state; window and loan have followed it."""

    def settle(self) -> None:
        """Take colours, letters and room anew, and keep away what these brought back."""
        self.dress()
        self._loan.hold()

    def key(self, keys: str, deed: Any) -> QShortcut:
        """Let a key do something while this lasts."""
        shortcut = QShortcut(QKeySequence(keys), self.window)
        shortcut.setContext(Qt.ShortcutContext.WindowShortcut)
        shortcut.activated.connect(deed)
        self._shortcuts.append(shortcut)
        return shortcut

    def dress(self) -> None:
        """Give the panel colours, letters and room."""
        window = self.window
        self.panel.set_dress(window.theme, window.scale)
        least, most = WIDTH_SHARE
        share = least + (most - least) * (window.scale - 1.0)
        self.panel.setFixedWidth(max(round(share * window.width()), 340))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.window and event.type() == QEvent.Type.Resize and not self._over:
            self.dress()
        return False

    # --- the picture ----------------------------------------------------------------------------

    def show_state(self, state: ViewState, name: str = "show", *, recorded: bool = False) -> None:
        """Show a state, camera and all."""
        self.window.scene_widget.end_flight()
        self.window.session.do(Command(name, lambda _: state, recorded, True))

    def aim(self, across: int, down: int) -> None:
        """Move the pointer over the picture, for those who press keys."""
        widget = self.window.scene_widget
        at = widget.mapFromGlobal(QCursor.pos())
        if not widget.rect().contains(at):
            at = widget.rect().center()
        else:
            at += QPoint(AIM_STEP_PX * across, AIM_STEP_PX * down)
        QCursor.setPos(widget.mapToGlobal(at))

    def on_hover(self, hit: Any) -> None:
        """The pointer is over something; nothing is told."""

    def on_pick(self, hit: Any, adding: bool) -> None:
        """Something was clicked."""

    # --- the end --------------------------------------------------------------------------------

    def finish(self) -> None:
        """Give the window back as it was; may be repeated."""
        if self._over:
            return
        self._over = True
        window = self.window
        for shortcut in self._shortcuts:
            shortcut.setEnabled(False)
            shortcut.deleteLater()
        window.removeEventFilter(self)
        widget = window.scene_widget
        widget.end_flight()
        widget.hovered.disconnect(self.on_hover)
        widget.picked.disconnect(self.on_pick)
        widget.hovered.connect(window._on_hover)
        widget.picked.connect(window._on_pick)
        widget.context_requested.connect(window._on_context)
        widget.scene.show_section_grip(True)
        self.panel.hide()
        window.centralWidget().layout().itemAt(1).layout().removeWidget(self.panel)
        self.panel.deleteLater()
        self._loan.give_back()
        self.finished.emit()
