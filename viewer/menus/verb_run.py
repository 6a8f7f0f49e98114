"""A verb of the command run beside the window, so that long work never holds it up."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, QProcess, QProcessEnvironment, Signal

import viewer


class VerbRun(QObject):
    """One run of ``peelback VERB …`` in a process of its own.

    The model comes from the cache that the window filled; what is written is
    there whole or not at all, however the run ends.

    Signals
    -------
    ended : bool, str
        Whether it went well, and what it said (its answer, or one line of refusal).
    """

    ended = Signal(bool, str)

    def __init__(self, words: Sequence[str], parent: Any = None) -> None:
        super().__init__(parent)
        self.words = list(words)
        self.process = QProcess(self)
        surroundings = QProcessEnvironment.systemEnvironment()
        root = str(Path(viewer.__file__).resolve().parent.parent)
        before = surroundings.value("PYTHONPATH")
        surroundings.insert("PYTHONPATH", os.pathsep.join([root, before]) if before else root)
        self.process.setProcessEnvironment(surroundings)
        self.process.finished.connect(self._tell)
        self.process.errorOccurred.connect(self._tell_failure)

    def start(self) -> None:
        """Begin; ``ended`` follows."""
        self.process.start(sys.executable, ["-m", "viewer", *self.words])

    def stop(self) -> None:
        """End it at once and say nothing."""
        self.process.blockSignals(True)
        self.process.kill()
        self.process.waitForFinished(2000)

    def _tell(self, code: int, status: QProcess.ExitStatus) -> None:
        good = code == 0 and status == QProcess.ExitStatus.NormalExit
        raw = self.process.readAllStandardOutput() if good else self.process.readAllStandardError()
        lines = bytes(raw.data()).decode("utf-8", "replace").strip().splitlines()
        said = lines[-1].removeprefix("peelback: ") if lines else ""
        self.ended.emit(good, said or ("Done" if good else "it stopped without a word"))

    def _tell_failure(self, error: QProcess.ProcessError) -> None:
        if error == QProcess.ProcessError.FailedToStart:
            self.ended.emit(False, self.process.errorString())
