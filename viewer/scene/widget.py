"""The scene as a Qt widget: mouse, coalesced drawing, flights, and a clean end."""

from __future__ import annotations

import logging
import threading
import time

from PySide6.QtCore import QPoint, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QPaintEngine
from PySide6.QtWidgets import QSizePolicy, QWidget
from vtkmodules.vtkRenderingCore import vtkRenderWindow

from viewer.milestones import reached
from viewer.scene.camera import Flight
from viewer.scene.frame_budget import FrameBudget
from viewer.scene.hidden import SeenSearch
from viewer.scene.scene import PickHit, Scene
from viewer.scene.window import set_up

LOG = logging.getLogger("peelback")

SETTLE_MS = 120
SHADE_AFTER_MS = 1500
HOVER_MS = 30
SEARCH_AFTER_MS = 250
CLICK_SLACK_PX = 4
FLIGHT_FRAME_MS = 16
DEGREES_PER_WIDTH = 200.0


class SceneWidget(QWidget):
    """A native child window that VTK draws into.

    Signals
    -------
    hovered(PickHit or None)
        What is under the pointer, at most every 60 ms.
    picked(PickHit or None, bool)
        A click without a drag; the flag tells that Ctrl or Shift was held.
    context_requested(PickHit or None, QPoint)
        Right click, with the global position.
    view_changed()
        The user moved the eye.
    section_dragged(float), section_drag_ended()
        The grip of the section was dragged so many mm along the plane's normal.
    """

    hovered = Signal(object)
    picked = Signal(object, bool)
    context_requested = Signal(object, QPoint)
    view_changed = Signal()
    settled = Signal()
    section_dragged = Signal(float)
    section_drag_ended = Signal()
    _shade_ready = Signal(object)

    def __init__(self, parent: QWidget | None = None):
        super().__init__(parent)
        # VTK paints this window itself: Qt must neither buffer nor clear it.
        self.setAttribute(Qt.WidgetAttribute.WA_NativeWindow)
        self.setAttribute(Qt.WidgetAttribute.WA_PaintOnScreen)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAttribute(Qt.WidgetAttribute.WA_NoSystemBackground)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(160, 120)
        self.setAccessibleName("Model")
        self.mode = "pick"
        window = vtkRenderWindow()
        set_up(window)
        window.SetWindowInfo(str(int(self.winId())))
        self.scene = Scene(window)
        self.scene.on_flight = self._start_flight
        self.scene.animate = True
        self._finalized = False
        self._press: QPoint | None = None
        self._last: QPoint | None = None
        self._button = Qt.MouseButton.NoButton
        self._dragged = False
        self._on_grip = False
        self._moving = False
        self._told = False
        self.milestone = ""
        """Said with the next picture to whoever measures the start."""
        self._flight: Flight | None = None
        self._flight_began = 0.0
        self.last_frame_ms = 0.0
        self.budget = FrameBudget()
        self._draw_timer = QTimer(self, singleShot=True, interval=0)
        self._draw_timer.timeout.connect(self._draw)
        self._settle_timer = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._settle_timer.timeout.connect(self._settle)
        self._flight_timer = QTimer(self, interval=FLIGHT_FRAME_MS)
        self._flight_timer.timeout.connect(self._fly)
        self._hover_timer = QTimer(self, singleShot=True, interval=HOVER_MS)
        self._hover_timer.timeout.connect(self._hover)
        self._hover_at: QPoint | None = None
        # What can be seen at all is looked for in small steps while nothing happens.
        self._search_timer = QTimer(self, singleShot=True, interval=SEARCH_AFTER_MS)
        self._search_timer.timeout.connect(self._search)
        self._seen_search: SeenSearch | None = None
        # Parts that come one stage after another are shaded together, once they stop coming.
        self._shade_timer = QTimer(self, singleShot=True, interval=SHADE_AFTER_MS)
        self._shade_timer.timeout.connect(self._start_shading)
        self._shade_ready.connect(self._take_shade)
        self._shade_thread: threading.Thread | None = None
        self.scene.on_parts = self._shade_timer.start

    # Drawing ----------------------------------------------------------------------------

    def refresh(self, moving: bool = True) -> None:
        """Ask for one picture soon: coarse at once, full when nothing moves any more."""
        if self._finalized:
            return
        self._moving = self._moving or moving
        self._search_timer.stop()
        if moving:
            self._seen_search = None
        self._draw_timer.start()
        if moving:
            self._settle_timer.start()

    def rest(self) -> None:
        """Ask for the full picture at once, without a coarse one before it."""
        if self._finalized or self._flight is not None:
            return
        self._settle_timer.stop()
        self._moving = False
        self._draw_timer.start()

    def _draw(self) -> None:
        if self._finalized or not self.isVisible():
            return
        began = time.perf_counter()
        self.scene.render(moving=self._moving, full_look=self.budget.full)
        self.last_frame_ms = 1000.0 * (time.perf_counter() - began)
        if self._moving:
            self.budget.moved(self.scene.last_draw_ms)
        elif self.scene.shown():
            self.budget.rested(self.scene.last_draw_ms)
        if not self._told and self.scene.shown():
            self._told = not self._moving
            reached("full picture" if self._told else "coarse picture")
        if self.milestone:
            reached(self.milestone)
            self.milestone = ""
        if not self._moving:
            self._search_timer.start(SEARCH_AFTER_MS)

    def _search(self) -> None:
        """Go on looking for what can be seen; gives way to anything else."""
        if self._finalized or self._moving or self._flight is not None:
            return
        wanted = self.scene.to_search()
        if wanted is None:
            self._seen_search = None
            return
        if self._seen_search is None or frozenset(self._seen_search.names) != wanted:
            self._seen_search = self.scene.seen_search()
        if self._seen_search.step():
            self.scene.take_seen(self._seen_search)
            self._seen_search = None
        else:
            self._search_timer.start(0)

    def _settle(self) -> None:
        if self._flight is not None or self._button != Qt.MouseButton.NoButton:
            if self._flight is None and self._dragged:
                self._moving = False
                self._draw()
            return
        self._moving = False
        self._draw()
        self.settled.emit()

    def paintEngine(self) -> QPaintEngine | None:
        """Return None: Qt has nothing to paint here."""
        return None

    def paintEvent(self, _event) -> None:
        self.refresh(moving=False)

    def resizeEvent(self, event) -> None:
        super().resizeEvent(event)
        if self._finalized:
            return
        ratio = self.devicePixelRatioF()
        self.scene.pixel_ratio = ratio
        size = event.size() if event is not None else self.size()
        self.scene.window.SetSize(
            max(round(size.width() * ratio), 1), max(round(size.height() * ratio), 1)
        )
        self.refresh()

    def sizeHint(self) -> QSize:
        """Return a comfortable first size."""
        return QSize(960, 720)

    # Furrow shade -----------------------------------------------------------------------

    def _start_shading(self) -> None:
        """Work out the furrow shade beside the window and keep it for the next start."""
        if self._finalized or (self._shade_thread and self._shade_thread.is_alive()):
            return
        drawn = list(self.scene.drawn_parts().values())
        if all(part.shaded for part in drawn):
            return

        def work() -> None:
            from viewer.scene.drawn_cache import LEAST_PARTS, drawn_path, save
            from viewer.scene.furrows import shade

            try:
                answer = shade(drawn)
                self._shade_ready.emit(answer)
                if len(drawn) >= LEAST_PARTS:
                    for detail, values in answer.items():
                        for part in drawn:
                            getattr(part, detail).surface[:, 3] = values[part.part.id]
                    save(drawn_path([part.part for part in drawn]), drawn)
            except RuntimeError:
                LOG.debug("the window went away while the shade was worked out")
            except Exception:
                LOG.exception("no furrow shade")

        self._shade_thread = threading.Thread(target=work, name="furrow shade", daemon=True)
        self._shade_thread.start()

    def _take_shade(self, answer) -> None:
        if not self._finalized:
            self.scene.set_openness(answer)
            self.refresh(moving=False)

    # Flights ----------------------------------------------------------------------------

    def _start_flight(self, flight: Flight) -> None:
        if not self.isVisible() or self._finalized:
            self.scene.pose = flight.end
            return
        self._flight = flight
        self._flight_began = time.perf_counter()
        self._flight_timer.start()

    def _fly(self) -> None:
        flight = self._flight
        if flight is None or self._finalized:
            self._flight_timer.stop()
            return
        fraction = (time.perf_counter() - self._flight_began) / flight.seconds
        self.scene.pose = flight.at(fraction)
        if fraction >= 1.0:
            self._flight = None
            self._flight_timer.stop()
            self.view_changed.emit()
        self.refresh()

    @property
    def working(self) -> bool:
        """True while a button is held or a picture is still to be drawn."""
        return (
            self._moving
            or self._button != Qt.MouseButton.NoButton
            or self._draw_timer.isActive()
            or self._settle_timer.isActive()
        )

    @property
    def flying(self) -> bool:
        """True while the picture is on its way to another place."""
        return self._flight is not None

    def end_flight(self) -> None:
        """Jump to where a flight under way leads."""
        if self._flight is not None:
            self.scene.pose = self._flight.end
            self._flight = None
            self._flight_timer.stop()

    # Mouse ------------------------------------------------------------------------------

    def _pixel(self, place) -> tuple[float, float]:
        ratio = self.devicePixelRatioF()
        return place.x() * ratio, place.y() * ratio

    def pick_at(self, place) -> PickHit | None:
        """Return what is under a point of the widget (logical pixels)."""
        return self.scene.pick(*self._pixel(place))

    def mousePressEvent(self, event) -> None:
        self.end_flight()
        self._press = self._last = event.position().toPoint()
        self._button = event.button()
        self._dragged = False
        self._on_grip = self._button == Qt.MouseButton.LeftButton and self.scene.section_grip_at(
            *self._pixel(event.position())
        )
        event.accept()

    def mouseMoveEvent(self, event) -> None:
        place = event.position().toPoint()
        if self._button == Qt.MouseButton.NoButton or self._last is None:
            self._hover_at = place
            if not self._hover_timer.isActive():
                self._hover_timer.start()
            return
        if (place - self._press).manhattanLength() > CLICK_SLACK_PX:
            self._dragged = True
        if not self._dragged:
            return
        step = place - self._last
        self._last = place
        if self._on_grip:
            self.section_dragged.emit(self.scene.section_drag_mm(*self._pixel(step)))
            return
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if self._button == Qt.MouseButton.MiddleButton or (
            self._button == Qt.MouseButton.LeftButton and shift
        ):
            self.scene.pan(*self._pixel(step))
        elif self._button == Qt.MouseButton.LeftButton:
            degrees = DEGREES_PER_WIDTH / max(self.width(), 1)
            # Dragging to the right turns the body to the right: the eye goes to the left flank.
            self.scene.orbit(-step.x() * degrees, step.y() * degrees)
        else:
            return
        self.view_changed.emit()
        self.refresh()

    def mouseReleaseEvent(self, event) -> None:
        button, self._button = self._button, Qt.MouseButton.NoButton
        if self._on_grip:
            self._on_grip = False
            self.section_drag_ended.emit()
            self._settle_timer.start()
            event.accept()
            return
        if self._dragged or self._press is None:
            self._settle_timer.start()
            return
        hit = self.pick_at(event.position())
        if button == Qt.MouseButton.LeftButton:
            more = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
            self.picked.emit(hit, bool(event.modifiers() & more))
        elif button == Qt.MouseButton.RightButton:
            self.context_requested.emit(hit, event.globalPosition().toPoint())
        event.accept()

    def wheelEvent(self, event) -> None:
        self.end_flight()
        steps = event.angleDelta().y() / 120.0
        if steps:
            self.scene.zoom(1.15**steps, at=self._pixel(event.position()))
            self.view_changed.emit()
            self.refresh()
        event.accept()

    def leaveEvent(self, event) -> None:
        self._hover_timer.stop()
        self._hover_at = None
        self.hovered.emit(None)
        super().leaveEvent(event)

    def _hover(self) -> None:
        if self._hover_at is not None and not self._finalized and self._flight is None:
            self.hovered.emit(self.pick_at(self._hover_at))

    # End --------------------------------------------------------------------------------

    def finalize(self) -> None:
        """Let go of the graphics; may be called twice, and without ever being shown."""
        if self._finalized:
            return
        self._finalized = True
        for timer in (
            self._draw_timer,
            self._shade_timer,
            self._settle_timer,
            self._flight_timer,
            self._hover_timer,
            self._search_timer,
        ):
            timer.stop()
        self._flight = None
        self.scene.finalize()

    def closeEvent(self, event) -> None:
        self.finalize()
        super().closeEvent(event)
