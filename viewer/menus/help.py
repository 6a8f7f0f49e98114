"""The window's sheets: help, cautions, about, settings."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from PySide6.QtCore import Qt

from viewer.panels.sheets import (
    SettingsSheet,
    Sheet,
    about_html,
    cautions_html,
    help_html,
)
from viewer.settings import (
    Settings,
    log_path,
    save_settings,
)
from viewer.state.tongue import told


class HelpMenu:
    """What the Help menu calls, and the settings."""

    def _open(self, sheet: Any) -> None:
        sheet.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        sheet.open()

    def open_help(self) -> None:
        """Keys, how to begin, cautions."""
        self._open(Sheet("Help", help_html(self.theme), self))

    def open_cautions(self) -> None:
        """The cautions."""
        self._open(Sheet("Cautions", cautions_html(self.theme), self))

    def show_first_cautions(self) -> None:
        """The cautions once, at the first start."""
        if self.settings.cautions_seen:
            return
        sheet = Sheet(
            "Before you begin", cautions_html(self.theme), self, close_words="I have read this"
        )
        sheet.accepted.connect(
            lambda: self._take_settings(replace(self.settings, cautions_seen=True))
        )
        self._open(sheet)

    def open_log(self) -> None:
        """Say where the log file is."""
        self._open(
            Sheet(
                "Log file",
                f"<p>{told('What went wrong is written to')}</p><p><b>{log_path()}</b></p><p>"
                + told("It holds no names and leaves this machine only when you send it.")
                + "</p>",
                self,
            )
        )

    def open_about(self) -> None:
        """Version, licences, sources."""
        citations = getattr(self.model.catalogue, "citations", {})
        self._open(Sheet("About Peelback", about_html(self.theme, list(citations.values())), self))

    def open_settings(self) -> None:
        """Choices that stay."""
        sheet = SettingsSheet(self.settings, self)
        sheet.changed.connect(self._take_settings)
        self._open(sheet)

    def _take_settings(self, settings: Settings) -> None:
        before, self.settings = self.settings, settings
        if self._keep and (message := save_settings(settings)):
            self.say(message, 12000)
        if settings.look != before.look:
            self.set_look(settings.look)
        self._dress()
        named = ("latin_first", "spelling", "language")
        if any(getattr(settings, name) != getattr(before, name) for name in named):
            self._name_parts()
        if settings.latin_first != before.latin_first and self.scene_widget is not None:
            self._set_labels()
            self.scene_widget.refresh()
