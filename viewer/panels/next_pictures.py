"""Pictures of the scenes to come, for the speaker's notes: drawn while nobody asks for anything."""

from __future__ import annotations

import logging
import time
from collections.abc import Iterator, Sequence
from dataclasses import asdict
from typing import Any

import numpy as np
from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QImage, QPixmap

from viewer.scene.side_picture import PictureOrder, SidePicture
from viewer.state.places import surface_marks
from viewer.state.table_view import limbs_lie, pose_lines
from viewer.state.view_state import ViewState
from viewer.state.visibility import opacities, visible_parts
from viewer.talk.scenes import TalkScene

LOG = logging.getLogger("peelback")

WIDTH_PX = 640
QUIET_MS = 350
"""So long after the last key or movement the next piece of work waits."""
FOLDS_MS = 500
"""How often it is asked again whether a flap's way is known."""


def order_of(window: Any, state: ViewState) -> PictureOrder | None:
    """Return what a picture of a state shows; None while a flap's way is not worked out.

    What is measured or cut on the model is not drawn: it is there once the scene was on.
    """
    from viewer.scene.scene import PartLook

    moved = window.folds.shells_of(state.folds, state.removed)
    if moved is None:
        return None
    model, chosen = window.model, set(state.selection)
    whole: dict[str, PartLook] = {}
    if state.compare:
        plain = ViewState(neighbours=state.neighbours, side_shown=state.side_shown)
        whole = {
            i: PartLook(1.0, i in chosen) for i in visible_parts(model, plain, window._neighbours)
        }
    marks = ()
    if state.surface_marks:
        records = getattr(model.catalogue, "landmarks", None)
        marks = tuple(surface_marks(model.landmarks, records))
    lying = limbs_lie(state)
    return PictureOrder(
        looks={
            i: PartLook(opacity, i in chosen)
            for i, opacity in opacities(model, state, window._neighbours).items()
        },
        whole=whole,
        moved=moved,
        look=state.look,
        table=state.table,
        lying=lying,
        pose_lines=pose_lines(state.table, lying),
        camera=asdict(state.camera) | {"view": state.view} if state.camera else None,
        view=state.view,
        labels=window.label_words(state),
        pins=tuple((np.array(p.point), p.text) for p in state.pins if p.text),
        marks=marks,
        section=None if state.section is None else lambda: window.cut_of(state),
    )


class NextPictures(QObject):
    """Keeps pictures of scenes in ``window.talk_pictures``, a piece of work at a time.

    Parameters
    ----------
    window : MainWindow

    Signals
    -------
    drawn
        Another picture is there.
    """

    drawn = Signal()

    def __init__(self, window: Any) -> None:
        super().__init__(window)
        self.window = window
        self._wanted: tuple[TalkScene, ...] = ()
        self._failed: set[TalkScene] = set()
        self._work: tuple[TalkScene, Iterator] | None = None
        self._side: SidePicture | None = None
        self._last_input = time.monotonic()
        self.longest_ms = 0.0
        self._timer = QTimer(self, singleShot=True)
        self._timer.timeout.connect(self._go_on)

    def want(self, scenes: Sequence[TalkScene | None]) -> None:
        """Say which scenes come next, the nearest first."""
        self._wanted = tuple(s for s in scenes if s is not None)
        if self._work is not None and self._work[0] not in self._wanted:
            self._work = None
        if not self._timer.isActive():
            self._timer.start(QUIET_MS)

    def give_way(self) -> None:
        """Somebody does something: wait until it is quiet again."""
        self._last_input = time.monotonic()

    def _missing(self) -> TalkScene | None:
        pictures = self.window.talk_pictures
        return next((s for s in self._wanted if s not in pictures and s not in self._failed), None)

    def _busy(self) -> bool:
        widget = self.window.scene_widget
        quiet_s = time.monotonic() - self._last_input
        return widget.flying or widget.working or quiet_s < QUIET_MS / 1000.0

    def _go_on(self) -> None:
        """Do one piece of work, then let the window do what it has to."""
        if self._work is None and self._missing() is None:
            return
        if self._busy() or self.window.folds.moving:
            self._timer.start(QUIET_MS)
            return
        began = time.perf_counter()
        try:
            wait_ms = self._piece()
        except Exception:
            # A picture that is missing is no reason to disturb a talk.
            LOG.exception("no picture of a scene to come")
            failed = self._missing() if self._work is None else self._work[0]
            self._failed |= {failed} - {None}
            self._work, wait_ms = None, QUIET_MS
        self.longest_ms = max(self.longest_ms, 1000.0 * (time.perf_counter() - began))
        self._timer.start(wait_ms)

    def _piece(self) -> int:
        """Do one piece; returns how long to wait before the next, ms."""
        if self._work is None:
            scene = self._missing()
            order = order_of(self.window, scene.state)
            if order is None:
                return FOLDS_MS
            self._work = scene, self._ready_side().draw(order)
            return 0
        scene, pieces = self._work
        pixels = next(pieces, None)
        if pixels is None:
            return 0
        self._work = None
        pixels = np.ascontiguousarray(pixels)
        height, width = pixels.shape[:2]
        image = QImage(pixels.data, width, height, 3 * width, QImage.Format.Format_RGB888)
        self.window.talk_pictures.setdefault(scene, QPixmap.fromImage(image.copy()))
        self.drawn.emit()
        return 0

    def _ready_side(self) -> SidePicture:
        main = self.window.scene_widget.scene
        width, height = main.size()
        size = (WIDTH_PX, max(round(WIDTH_PX * height / max(width, 1)), 120))
        if self._side is not None and self._side.size != size:
            self._side.finalize()
            self._side = None
        if self._side is None:
            self._side = SidePicture(main, size)
        return self._side

    def finish(self) -> None:
        """Stop and let go of the graphics; may be called twice."""
        self._timer.stop()
        self._wanted, self._work = (), None
        if self._side is not None:
            self._side.finalize()
            self._side = None
