"""The window's sheets: help, cautions, about, settings."""

from __future__ import annotations

from dataclasses import replace
from html import escape
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QToolButton

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

    def _make_faults_button(self) -> QToolButton:
        """Return the button at the foot of the window that comes with the first fault."""
        self._faults_button = QToolButton()
        self._faults_button.setAccessibleName("What could not be read or kept")
        self._faults_button.clicked.connect(self.open_faults)
        self._faults_button.hide()
        return self._faults_button

    def tell_fault(self, words: str) -> None:
        """Say that something could not be read or kept, and keep it where it can be read again.

        What the pointer meets is written over the status line, and one fault over another: the
        button beside it stays until the list has been read.
        """
        if words not in self._faults:
            self._faults.append(words)
        if self.presenting is not None:
            self.presenting.warn(words)
        self._show_faults()

    def _show_faults(self) -> None:
        """Say the last fault, and offer the list of all."""
        if not self._faults:
            return
        self._faults_button.setText(told("Not read or kept: {count}", count=len(self._faults)))
        self._faults_button.setAccessibleName(self._faults_button.text())
        self._faults_button.show()
        self.say(self._faults[-1], 0)

    def open_faults(self) -> None:
        """List what could not be read or kept; read, the button goes."""
        sheet = Sheet(
            told("What could not be read or kept"),
            "".join(f"<p>{escape(words)}</p>" for words in self._faults),
            self,
        )
        sheet.accepted.connect(self._forget_faults)
        self._open(sheet)

    def _forget_faults(self) -> None:
        self._faults.clear()
        self._faults_button.hide()

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
            self.tell_fault(message)
        if settings.look != before.look:
            self.set_look(settings.look)
        self._dress()
        named = ("latin_first", "spelling", "language")
        if any(getattr(settings, name) != getattr(before, name) for name in named):
            self._name_parts()
        if settings.latin_first != before.latin_first and self.scene_widget is not None:
            self._set_labels()
            self.scene_widget.refresh()
