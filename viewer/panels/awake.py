"""Keeps the screen on while a talk is given, with what each system offers for it.

Where none of this is to be had, the screen saver comes as it would; the talk
goes on all the same.
"""

from __future__ import annotations

import logging
import os
import sys
from typing import Any

from PySide6.QtCore import QProcess

LOG = logging.getLogger("peelback")

_CONTINUOUS, _SYSTEM, _DISPLAY = 0x80000000, 0x00000001, 0x00000002
"""Flags of the Windows call that holds sleep off."""


class Awake:
    """Holds screen saver and sleep off from its making until ``release``.

    Attributes
    ----------
    way : str
        How it is done, "" when it cannot be.
    """

    def __init__(self) -> None:
        self.way = ""
        self._cookie: Any = None
        self._bus: Any = None
        self._process: QProcess | None = None
        try:
            if sys.platform == "win32":
                self._hold_windows()
            elif sys.platform == "darwin":
                self._hold_mac()
            else:
                self._hold_freedesktop()
        except Exception as error:
            LOG.info("the screen saver is not held off: %s", error)

    def _hold_windows(self) -> None:
        import ctypes

        if ctypes.windll.kernel32.SetThreadExecutionState(_CONTINUOUS | _SYSTEM | _DISPLAY):
            self.way = "windows"

    def _hold_mac(self) -> None:
        self._process = QProcess()
        # The helper ends by itself when this program does.
        self._process.start("caffeinate", ["-d", "-w", str(os.getpid())])
        self.way = "caffeinate" if self._process.waitForStarted(1000) else ""

    def _hold_freedesktop(self) -> None:
        from PySide6.QtDBus import QDBusConnection, QDBusInterface, QDBusMessage

        bus = QDBusConnection.sessionBus()
        if not bus.isConnected():
            return
        name = "org.freedesktop.ScreenSaver"
        self._bus = QDBusInterface(name, "/org/freedesktop/ScreenSaver", name, bus)
        self._bus.setTimeout(500)
        answer = self._bus.call("Inhibit", "Peelback", "A talk is given")
        if answer.type() == QDBusMessage.MessageType.ReplyMessage:
            self._cookie = answer.arguments()[0]
            self.way = "freedesktop"

    def release(self) -> None:
        """Let the screen sleep again; may be repeated."""
        way, self.way = self.way, ""
        if way == "windows":
            import ctypes

            ctypes.windll.kernel32.SetThreadExecutionState(_CONTINUOUS)
        elif way == "caffeinate" and self._process is not None:
            self._process.kill()
            self._process.waitForFinished(1000)
        elif way == "freedesktop":
            self._bus.call("UnInhibit", self._cookie)
