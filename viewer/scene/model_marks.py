"""What is marked on the model: pins, a measured line, a rehearsed cut, the surface landmarks."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from vtkmodules.vtkRenderingCore import vtkRenderer

from viewer.scene import marks


class ModelMarks:
    """The marks of one scene; each kind has a colour of its own.

    Parameters
    ----------
    front : vtkRenderer
        Of what lies before the model.
    model : vtkRenderer
        Of the model itself: surface landmarks are hidden where the body hides them.

    Attributes
    ----------
    pins : list of ((3,) mm, text)
    landmarks : list of (name, (3,) or (k, 3) mm)
    cut : tuple
        What ``set_cut`` was given last.
    """

    def __init__(self, front: vtkRenderer, model: vtkRenderer):
        self.pins: list[tuple[np.ndarray, str]] = []
        self.landmarks: list[tuple[str, np.ndarray]] = []
        self.cut: tuple = ((), None, (), ())
        self._measure_text = ""
        self._measure_at: np.ndarray | None = None
        self._measure_line = marks.Strokes(front, marks.MEASURE_COLOUR, 9.0, 3.0)
        self._cut_edge = marks.Strokes(front, marks.CUT_EDGE_COLOUR, 11.0, 5.5)
        self._plan_line = marks.Strokes(front, marks.PLAN_COLOUR, 7.0, 2.5, 40.0)
        self._cut_line = marks.Strokes(front, marks.CUT_COLOUR, 7.0, 2.5, 80.0)
        self._cut_near = marks.Strokes(front, marks.NEAR_COLOUR, 11.0, 2.5, 120.0)
        self._pin_spots = marks.Strokes(front, marks.PIN_COLOUR, 11.0)
        self._landmark_lines = marks.Strokes(model, marks.MARK_COLOUR, 9.0)

    def set_pins(self, pins: Sequence[tuple[np.ndarray, str]]) -> None:
        """Stick notes to points, (3,) mm."""
        self.pins = [(np.asarray(point, float), str(text)) for point, text in pins]
        self._pin_spots.draw([point for point, _ in self.pins], [])

    def set_measure(self, points, path, text: str) -> None:
        """Show a measured line: its ends (k, 3), an optional way (m, 3), and the figure."""
        points = np.asarray(points, float).reshape(-1, 3)
        line = points if path is None else np.asarray(path, float)
        self._measure_line.draw(points, [line] if len(line) > 1 else [])
        self._measure_text = text if len(points) else ""
        self._measure_at = (
            line[len(line) // 2] if len(line) > 2 else (line.mean(axis=0) if len(line) else None)
        )

    def set_cut(self, points, path, planned, near) -> None:
        """Show a rehearsed cut beside the plan's lines (``Scene.set_cut_lines``)."""
        self.cut = (points, path, planned, near)
        points = np.asarray(points, float).reshape(-1, 3)
        own = [] if path is None else [np.asarray(path, float)]
        self._cut_edge.draw(points, [*own, *planned])
        self._plan_line.draw([], planned)
        self._cut_line.draw(points, own)
        self._cut_near.draw(near, [])

    def set_landmarks(self, landmarks: Sequence[tuple[str, np.ndarray]]) -> None:
        """Draw named points or curves, (3,) or (k, 3) mm."""
        self.landmarks = [(str(name), np.asarray(place, float)) for name, place in landmarks]
        self._landmark_lines.draw(
            [place for _, place in self.landmarks if place.ndim == 1],
            [place for _, place in self.landmarks if place.ndim == 2],
        )

    def notes(self) -> list[tuple[np.ndarray, str]]:
        """Return what is written beside a place in any case: pins and the measured figure."""
        measured = bool(self._measure_text) and self._measure_at is not None
        return self.pins + ([(self._measure_at, self._measure_text)] if measured else [])

    def has_texts(self) -> bool:
        """Return whether any of the marks is to be written beside."""
        return bool(self.pins or self.landmarks or self._measure_text)

    def copy_to(self, other: ModelMarks) -> None:
        """Mark the same pins, cut and landmarks on another scene."""
        other.set_pins(self.pins)
        other.set_cut(*self.cut)
        other.set_landmarks(self.landmarks)
