"""Getting the model without holding the window up: from the cache, or built in another process."""

from __future__ import annotations

import logging
import threading
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from viewer.build_process import BuildProcess, one_line, take

if TYPE_CHECKING:
    from meshes.body import Body
    from meshes.model import Part

LOG = logging.getLogger("peelback")


@dataclass
class GrowingModel:
    """A model that is still being filled: what the window needs of a ``BackModel``."""

    body: Body
    detail: str
    catalogue: Mapping[str, Any] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    landmarks: Mapping[str, Any] = field(default_factory=dict)
    contacts: tuple = ()
    notes: Mapping[str, object] = field(default_factory=dict)


class ModelSource(QObject):
    """Brings a model, part by part.

    Signals
    -------
    catalogue_ready : Catalogue
    progressed : float, str
        Share done 0-1, and what was laid.
    parts_ready : list of Part
        From deep to superficial.
    finished : BackModel
    failed : str
        One sentence; the rest is in the log.
    """

    catalogue_ready = Signal(object)
    progressed = Signal(float, str)
    parts_ready = Signal(object)
    finished = Signal(object)
    failed = Signal(str)

    def __init__(self, body: Body, detail: str, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.body, self.detail = body, detail
        self.drawn: Any = None
        """Drawn parts of a model that came from the cache, for ``Scene.set_model``."""
        self._stopped = threading.Event()
        self._child: BuildProcess | None = None
        self._thread = threading.Thread(target=self._run, name="model", daemon=True)

    def start(self) -> None:
        """Begin; signals arrive in the thread in which the receiver lives."""
        self._thread.start()

    def stop(self, wait_s: float = 5.0) -> None:
        """Give up; nothing is sent afterwards."""
        self._stopped.set()
        if self._child is not None:
            self._child.stop()
        if self._thread.is_alive():
            self._thread.join(wait_s)

    def _send(self, signal: Any, *values: object) -> None:
        if not self._stopped.is_set():
            try:
                signal.emit(*values)
            except RuntimeError:
                # The window went away between the question and the answer.
                self._stopped.set()

    def _run(self) -> None:
        try:
            from meshes.cache import load_cached
            from meshes.catalogue import load_catalogue
            from viewer.scene.drawn_cache import drawn_model

            self._send(self.catalogue_ready, load_catalogue())
            model = load_cached(self.body, self.detail)
            if model is None:
                model = self._build_elsewhere()
            else:
                # Here rather than in the window's thread, which then only takes what is ready.
                self.drawn = drawn_model(model)
                self._send(self.progressed, 1.0, "loaded")
            if model is not None:
                self._send(self.finished, model)
        except Exception as error:
            LOG.exception("no model")
            self._send(self.failed, one_line(error))

    def _build_elsewhere(self) -> Any:
        """Build in a process of its own, so that the window never waits for the interpreter."""
        from meshes.cache import load_cached
        from meshes.catalogue import load_catalogue

        child = self._child = take(self.body, self.detail)
        parts: dict[str, Part] = {}
        rest: dict[str, Any] | None = None
        try:
            while not self._stopped.is_set():
                kind, *values = child.receive()
                if kind == "progress":
                    share, what, laid = values
                    parts.update((part.id, part) for part in laid)
                    self._send(self.parts_ready, laid)
                    self._send(self.progressed, share, what)
                elif kind == "failed":
                    LOG.error("building failed\n%s", values[1])
                    self._send(self.failed, values[0])
                    return None
                else:
                    (rest,) = values
                    break
        except EOFError:
            if not self._stopped.is_set():
                self._send(
                    self.failed,
                    "Building the model stopped early; there may be too little memory.",
                )
            return None
        finally:
            child.close()
        if rest is None:
            return None
        # From the cache the arrays are mapped, not copied; without one they are here already.
        model = load_cached(self.body, self.detail)
        if model is not None:
            return model
        from meshes.model import BackModel

        return BackModel(
            self.body,
            self.detail,
            {part_id: parts[part_id] for part_id in rest["order"]},
            rest["landmarks"],
            rest["contacts"],
            load_catalogue(),
            rest["notes"],
        )
