"""The window's commands for views, sides, looks and letters."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from viewer.settings import (
    FONT_SCALES,
)
from viewer.state import commands
from viewer.state.tongue import told
from viewer.state.view_state import LOOKS, VIEWS, SideChoice


class ViewMenu:
    """What the View menu calls."""

    def go_to_view(self, name: str) -> None:
        """Go to a fixed view."""
        self.do(commands.set_view(name))
        self.say(VIEWS[name])

    def return_to_view(self) -> None:
        """Go back to the last fixed view."""
        self.do(commands.set_view(self.state.view))

    def set_free_orbit(self, on: bool) -> None:
        """Free the orbit, or hold it near the fixed view again."""
        self.do(commands.set_orbit("free" if on else "limited"))
        self.say("Free orbit. Home returns to the fixed view." if on else "Gentle orbit.")

    def turn(self, angles: tuple[float, float]) -> None:
        """Turn by (azimuth, elevation) degrees."""
        self._move(lambda scene: scene.orbit(*angles))

    def pan(self, pixels: tuple[float, float]) -> None:
        """Move the picture by pixels."""
        self._move(lambda scene: scene.pan(*pixels))

    def zoom(self, factor: float) -> None:
        """Come closer (above 1) or go away."""
        self._move(lambda scene: scene.zoom(factor))

    def _move(self, how: Callable[[Any], None]) -> None:
        if self.scene_widget is None:
            return
        how(self.scene_widget.scene)
        self._note_camera()
        self._tell_markers()
        self.scene_widget.refresh()

    def show_side(self, side: SideChoice) -> None:
        """Show the left side, the right side or both."""
        self.do(commands.show_side(side))

    def set_compare(self, on: bool) -> None:
        """Show the dissected back beside the whole one."""
        self.do(commands.set_flag("compare", on, "dissected beside whole"))

    def set_neighbours(self, on: bool) -> None:
        """Show the muscles at the edge that do not belong to the back."""
        self.do(commands.set_flag("neighbours", on, "neighbours at the edge"))

    def set_look(self, look: str) -> None:
        """Change the colours of tissues."""
        self.do(commands.set_look(look))

    def next_look(self) -> None:
        """Go on to the next look."""
        names = list(LOOKS)
        self.set_look(names[(names.index(self.state.look) + 1) % len(names)])

    def set_dark(self, on: bool) -> None:
        """Dark or light window."""
        self._take_settings(replace(self.settings, theme="dark" if on else "light"))

    def set_latin_first(self, on: bool) -> None:
        """Latin or English names first."""
        self._take_settings(replace(self.settings, latin_first=on))
        self.say("Latin names first" if on else "English names first")

    def larger_letters(self) -> None:
        """Letters larger by 10 %."""
        self._set_letters(self.scale + 0.1)

    def smaller_letters(self) -> None:
        """Letters smaller by 10 %."""
        self._set_letters(self.scale - 0.1)

    def normal_letters(self) -> None:
        """Letters at 100 %."""
        self._set_letters(1.0)

    def _set_letters(self, scale: float) -> None:
        low, high = FONT_SCALES
        scale = min(max(round(scale, 2), low), high)
        self._take_settings(replace(self.settings, font_scale=scale))
        self.say(told("Letters at {share}", share=f"{scale:.0%}"))

    def show_side_panel(self, on: bool) -> None:
        """Show caption and tree, or give their room to the model."""
        self._take_settings(replace(self.settings, side_panel=on))
        self.side_panel.setVisible(on)

    def set_full_screen(self, on: bool) -> None:
        """Fill the screen."""
        if on:
            self.showFullScreen()
        else:
            self.showNormal()
