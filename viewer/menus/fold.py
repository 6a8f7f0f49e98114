"""The window's commands that fold flaps, and the second in which a fold is seen to happen."""

from __future__ import annotations

import logging
import threading
import time
from collections.abc import Iterable
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from meshes.catalogue.folds import Laid, fold_of_part, own_parts
from meshes.errors import PeelbackError
from viewer.state import fold_commands
from viewer.state.folding import fold_title, share_of
from viewer.state.tongue import told
from viewer.state.view_state import sides_of
from viewer.state.visibility import taken_off

LOG = logging.getLogger("peelback")

FOLD_SECONDS = 1.0
FRAME_MS = 16


class FoldPlayer(QObject):
    """Brings the drawn flaps to where the state wants them.

    Ways that are not worked out yet are computed in a thread; meanwhile the
    picture stays as it is.

    Signals
    -------
    moved : the scene holds other shells now
    waiting : str
        Words for the status line while a way is worked out; "" when done.
    """

    moved = Signal()
    waiting = Signal(str)
    _worked_out = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.calm = False
        self._scene: Any = None
        self._model: Any = None
        self._made: Any = None
        self._possible: frozenset[str] = frozenset()
        self._wanted: tuple[Laid, ...] = ()
        self._gone: frozenset[str] = frozenset()
        self._shown: dict[str, float] = {}
        self._start: dict[str, float] = {}
        self._paths: dict[str, Any] = {}
        self._began = 0.0
        self._seconds = FOLD_SECONDS
        self._thread: threading.Thread | None = None
        self._timer = QTimer(self, interval=FRAME_MS)
        self._timer.timeout.connect(self._frame)
        self._worked_out.connect(self._on_worked_out)
        self.last_frame_ms = 0.0

    def set_model(self, model: Any, scene: Any) -> None:
        """Take another model; nothing is folded then."""
        self.stop()
        self._scene = scene
        self._model, self._made = model, None
        self._wanted, self._shown, self._paths = (), {}, {}

    @property
    def _shells(self) -> Any:
        """What draws the flaps, None without a model.

        Made when first asked for: a start that folds nothing needs none of it.
        """
        if self._made is None and self._model is not None:
            from meshes.questions.reflect import Reflector
            from viewer.scene.folding import FoldedShells

            self._made = FoldedShells(Reflector(self._model), self._scene.part_in_place)
            self._possible = frozenset(self._made.reflector.possible())
        return self._made

    def want(self, folds: tuple[Laid, ...], gone: frozenset[str], at_once: bool = False) -> None:
        """Say where the flaps are to lie."""
        if self._made is None and not folds:
            self._gone = gone
            return
        if self._shells is None:
            return
        folds = tuple(f for f in folds if f.fold_id in self._possible)
        if folds == self._wanted and gone == self._gone:
            return
        self._wanted, self._gone = folds, gone
        if not self._shells.ready(folds, gone):
            self._compute()
            return
        self._go(at_once)

    def stop(self) -> None:
        """End what is under way; may be called twice."""
        self._timer.stop()
        thread, self._thread = self._thread, None
        if thread is not None:
            thread.join(timeout=20)

    def let_go(self) -> None:
        """Drop model and scene; nothing is drawn any more."""
        self.stop()
        self._scene = self._model = self._made = None
        self._paths = {}

    def surfaces(self) -> dict[str, Any]:
        """Return (vertices, faces) of the flaps when they have come to rest, by part id.

        Nothing until their ways are worked out.
        """
        if self._shells is None or not self._shells.ready(self._wanted, self._gone):
            return {}
        return self._shells.reflector.laid(self._wanted, self._gone)

    def shells_of(
        self, folds: tuple[Laid, ...], gone: frozenset[str]
    ) -> dict[str, dict[str, Any]] | None:
        """Return the shells of flaps that lie elsewhere than they do now, by part id.

        None until their ways are worked out (see ``prepare``).
        """
        if not folds or self._shells is None:
            return {}
        folds = tuple(f for f in folds if f.fold_id in self._possible)
        if not self._shells.ready(folds, gone):
            return None
        paths = self._shells.paths(folds, gone)
        return self._shells.shells(paths, {laid.fold_id: laid.share for laid in folds})

    @property
    def reflector(self) -> Any:
        """What works the ways out and keeps them; None without a picture."""
        return None if self._shells is None else self._shells.reflector

    @property
    def moving(self) -> bool:
        """True while a flap is on its way."""
        return self._timer.isActive()

    @property
    def playing(self) -> bool:
        """True while a flap is on its way, or its way is being worked out."""
        return self._timer.isActive() or self._thread is not None

    def finish(self) -> None:
        """Work out and draw at once what is wanted (tests, pictures)."""
        if self._shells is None:
            return
        self.stop()
        self._shells.work_out(self._wanted, self._gone)
        self._go(at_once=True)

    def _compute(self) -> None:
        if self._thread is not None:
            return
        order = (self._wanted, self._gone)
        shells = self._shells

        def work() -> None:
            error = None
            try:
                shells.work_out(*order)
            except PeelbackError as failure:
                error = failure
            except Exception as failure:
                LOG.exception("no fold")
                error = failure
            try:
                self._worked_out.emit(error)
            except RuntimeError:
                LOG.debug("the window went away while a fold was worked out")

        titles = ", ".join(
            fold_title(laid.fold_id)
            for k, laid in enumerate(order[0])
            if not shells.reflector.is_ready(laid.fold_id, order[1], order[0][:k])
        )
        self.waiting.emit(told("Working out how to fold {titles} …", titles=titles))
        self._thread = threading.Thread(target=work, name="fold", daemon=True)
        self._thread.start()

    def prepare(self, orders: Iterable[tuple[tuple[Laid, ...], frozenset[str]]]) -> None:
        """Work out beforehand, beside the window, what will be wanted (the scenes of a talk)."""
        if self._shells is None or self._thread is not None:
            return
        shells = self._shells
        waiting = []
        for folds, gone in orders:
            folds = tuple(f for f in folds if f.fold_id in self._possible)
            if folds and not shells.ready(folds, gone):
                waiting.append((folds, gone))
        if not waiting:
            return

        def work() -> None:
            error = None
            try:
                for order in waiting:
                    if self._shells is not shells:
                        break
                    shells.work_out(*order)
            except PeelbackError as failure:
                error = failure
            except Exception as failure:
                LOG.exception("a fold could not be prepared")
                error = failure
            try:
                self._worked_out.emit(error)
            except RuntimeError:
                LOG.debug("the window went away while folds were prepared")

        self._thread = threading.Thread(target=work, name="folds to come", daemon=True)
        self._thread.start()

    def _on_worked_out(self, error: Exception | None) -> None:
        self._thread = None
        if self._shells is None:
            return
        if error is not None:
            self.waiting.emit(told("It cannot be folded: {why}", why=error))
            return
        if not self._shells.ready(self._wanted, self._gone):
            # Something else is wanted by now.
            self._compute()
            return
        self.waiting.emit("")
        # Else flaps of scenes to come were worked out, and nothing that is seen has changed.
        if self._wanted or self._shown or self._paths:
            self._go(at_once=False)

    def _go(self, at_once: bool) -> None:
        self._start = dict(self._shown)
        # A flap that goes back in place keeps its way until it is there.
        self._paths = {**self._paths, **self._shells.paths(self._wanted, self._gone)}
        wanted = {laid.fold_id: laid.share for laid in self._wanted}
        far = [abs(wanted.get(f, 0.0) - self._shown.get(f, 0.0)) for f in self._paths]
        self._seconds = max(FOLD_SECONDS * max(far, default=0.0), 1e-3)
        self._began = time.perf_counter()
        if at_once or self.calm:
            self._timer.stop()
            self._draw(1.0)
        else:
            self._timer.start()

    def _frame(self) -> None:
        t = (time.perf_counter() - self._began) / self._seconds
        if t >= 1.0:
            self._timer.stop()
        self._draw(min(t, 1.0))

    def _draw(self, t: float) -> None:
        began = time.perf_counter()
        eased = t * t * (3 - 2 * t)
        wanted = {laid.fold_id: laid.share for laid in self._wanted}
        shown = {}
        for fold_id in self._paths:
            start, end = self._start.get(fold_id, 0.0), wanted.get(fold_id, 0.0)
            shown[fold_id] = end if t >= 1.0 else start + eased * (end - start)
        if t >= 1.0:
            self._paths = {f: path for f, path in self._paths.items() if f in wanted}
            shown = {f: share for f, share in shown.items() if f in wanted}
        self._shown = shown
        details = ("still", "moving") if t >= 1.0 else ("moving",)
        self._scene.move_parts(self._shells.shells(self._paths, shown, details))
        self.last_frame_ms = 1000 * (time.perf_counter() - began)
        self.moved.emit()


class FoldMenu:
    """What the Part menu, the step line and the caption call to fold."""

    def _folds_of_selection(self) -> list[str]:
        """Flaps that the picked parts belong to, those of the model."""
        found = dict.fromkeys(fold_of_part(i) for i in self.state.selection)
        return [f for f in found if f and all(i in self.model.parts for i in own_parts(f))]

    def toggle_fold_selected(self) -> None:
        """Fold the picked muscle back, or lay it in place again."""
        folds = self._folds_of_selection()
        if not folds:
            self.say("Pick a muscle that the plan folds back: it is not one of these.")
            return
        self.do(fold_commands.toggle_fold(folds))

    def fold_selected_to(self, share: float, dragging: bool = True) -> None:
        """Fold the picked muscle so far, 0 to 1."""
        folds = self._folds_of_selection()
        if folds:
            self.do(fold_commands.fold_to(folds, share, dragging=dragging))

    def fold_step_to(self, step_id: str, share: float) -> None:
        """Fold the flaps of a step so far, on the working side."""
        folds = self._folds_of_step(step_id)
        if folds:
            self.do(fold_commands.fold_to(folds, share, dragging=True))

    def fold_more(self, by: float) -> None:
        """Fold the picked muscle, or the flaps of the chosen step, a little further or less."""
        folds = self._folds_of_selection() or self._folds_of_step(self.steps.chosen)
        if not folds:
            self.say("Pick a muscle that the plan folds back.")
            return
        share = max(share_of(self.state, f) for f in folds)
        share = min(max(round((share + by) * 4) / 4, 0.0), 1.0)
        self.do(fold_commands.fold_to(folds, share))

    def _folds_of_step(self, step_id: str) -> list[str]:
        if step_id not in self.plan:
            return []
        step = self.plan[step_id]
        sides = sides_of(self.state.working_side)
        done = [f for s in sides for f in self.plan.folds_of(step, self.model, s)]
        asked = [f for s in sides for f in self.plan.folds_of(step, self.model, s, by_hand=True)]
        # What has been taken off can't be laid aside any more.
        there = [
            f
            for f in asked
            if not any(taken_off(self.model.parts[i], self.state) for i in own_parts(f))
        ]
        return done + [f for f in there if f not in done]

    def _share_of_step(self, step_id: str) -> float | None:
        """How far the flaps of a step are folded, None when it folds nothing."""
        folds = self._folds_of_step(step_id)
        return max(share_of(self.state, f) for f in folds) if folds else None

    def _on_folds_moved(self) -> None:
        if self.scene_widget is not None:
            self.scene_widget.refresh()

    def set_steps_fold(self, on: bool) -> None:
        """Choose whether steps fold flaps back or take them away."""
        from dataclasses import replace

        self.settings = replace(self.settings, steps_fold=on)
        if self._keep:
            from viewer.settings import save_settings

            save_settings(self.settings)
        self.say(
            told("Steps now fold muscles back, where the plan folds them.")
            if on
            else told("Steps now take muscles away, where the plan folds them.")
        )
