"""Getting ready what questions are asked of, beside the window: the probe and the layers."""

from __future__ import annotations

import logging
import threading
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from viewer.memory import give_back
from viewer.state.tongue import told

LOG = logging.getLogger("peelback")

AFTER_PICTURE_MS = 50
"""A picture that was asked for in the meantime comes first; it would have to share both cores."""


class QuestionSource(QObject):
    """Makes the probe of a model, and its layers when they are wanted.

    Each signal carries the model that it belongs to, since another may have come
    in the meantime.

    Signals
    -------
    probe_ready : BackModel, Probe
    layers_ready : BackModel, Layers
    folded_ready : BackModel, tuple, Layers
        With the folds and what is gone, as they were asked.
    failed : BackModel, str
        One sentence; the rest is in the log.
    """

    probe_ready = Signal(object, object)
    layers_ready = Signal(object, object)
    folded_ready = Signal(object, object, object)
    failed = Signal(object, str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._stopped = threading.Event()
        self._model: Any = None
        self._probe: Any = None
        self._threads: dict[str, threading.Thread] = {}

    def prepare(self, model: Any) -> None:
        """Begin to make the probe of a model, once its first picture has been drawn."""
        self._model, self._probe = model, None
        QTimer.singleShot(AFTER_PICTURE_MS, self, lambda: self._begin(model))

    def _begin(self, model: Any) -> None:
        if model is self._model and not self._stopped.is_set():
            self._start("probe", self._make_probe, model)

    def want_layers(self) -> None:
        """Begin to make the layers of the model that was prepared last, unless under way."""
        thread = self._threads.get("layers")
        if thread is None or not thread.is_alive():
            self._start("layers", self._make_layers, self._model)

    def want_folded(self, layers: Any, reflector: Any, folds: tuple, gone: frozenset[str]) -> None:
        """Begin to make layers with flaps where they lie, unless others are under way."""
        thread = self._threads.get("folded")
        if thread is None or not thread.is_alive():
            self._start(
                "folded",
                lambda model: self._make_folded(model, layers, reflector, folds, gone),
                self._model,
            )

    def stop(self, wait_s: float = 10.0) -> None:
        """Send nothing from now on, and wait for what is under way."""
        self._stopped.set()
        for thread in self._threads.values():
            if thread.is_alive():
                thread.join(wait_s)

    def _start(self, name: str, work: Any, model: Any) -> None:
        before = self._threads.get("probe")

        def run() -> None:
            try:
                if before is not None:
                    before.join()
                if not self._stopped.is_set():
                    work(model)
            except Exception as error:
                LOG.exception("no %s", name)
                self._send(self.failed, model, told("The model cannot be asked: {why}", why=error))

        thread = threading.Thread(target=run, name=name, daemon=True)
        self._threads[name] = thread
        thread.start()

    def _make_probe(self, model: Any) -> None:
        from meshes.questions.probe import Probe

        probe = Probe(model)
        # Worked out here, so that the pointer's first move finds it.
        _ = probe.inward
        if model is self._model:
            self._probe = probe
        self._send(self.probe_ready, model, probe)
        give_back()

    def _make_layers(self, model: Any) -> None:
        from meshes.questions.cover import layers_of

        index = self._probe.index if self._probe is not None and model is self._model else None
        self._send(self.layers_ready, model, layers_of(model, index))
        give_back()

    def _make_folded(
        self, model: Any, layers: Any, reflector: Any, folds: tuple, gone: frozenset[str]
    ) -> None:
        import trimesh

        if reflector is None:
            from meshes.questions.reflect import reflector_of

            reflector = reflector_of(model)
        moved = {
            part_id: trimesh.Trimesh(*surface, process=False)
            for part_id, surface in reflector.laid(folds, gone).items()
        }
        answer = layers.folded(moved) if moved else layers
        self._send(self.folded_ready, model, (folds, gone), answer)

    def _send(self, signal: Any, *values: object) -> None:
        if not self._stopped.is_set():
            try:
                signal.emit(*values)
            except RuntimeError:
                # The window went away between the question and the answer.
                self._stopped.set()
