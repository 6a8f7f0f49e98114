"""Thin things drawn on the model itself: measuring lines, pins, surface marks."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from vtkmodules.util.numpy_support import numpy_to_vtk
from vtkmodules.vtkCommonCore import vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPolyData
from vtkmodules.vtkRenderingCore import vtkActor, vtkPolyDataMapper

MEASURE_COLOUR = (0.98, 0.80, 0.10)
PIN_COLOUR = (0.10, 0.55, 0.75)
CUT_COLOUR = (0.98, 0.98, 0.98)
PLAN_COLOUR = (0.15, 0.80, 0.85)
NEAR_COLOUR = (0.95, 0.45, 0.05)
CUT_EDGE_COLOUR = (0.08, 0.08, 0.10)
MARK_COLOUR = (0.20, 0.16, 0.50)


class Strokes:
    """Points and polylines of one colour, as one actor."""

    def __init__(
        self, renderer, colour, point_px: float = 8.0, line_px: float = 2.5, nearer: float = 1.0
    ):
        """Strokes with a larger ``nearer`` lie over those with a smaller one."""
        self.renderer = renderer
        self._data = vtkPolyData()
        mapper = vtkPolyDataMapper()
        mapper.SetInputData(self._data)
        # In front of the skin it lies on, so that a mark on a surface isn't half swallowed.
        mapper.SetResolveCoincidentTopologyToPolygonOffset()
        mapper.SetRelativeCoincidentTopologyLineOffsetParameters(-8.0, -400.0 * nearer)
        mapper.SetRelativeCoincidentTopologyPointOffsetParameter(-400.0 * nearer)
        self.actor = vtkActor()
        self.actor.SetMapper(mapper)
        looks = self.actor.GetProperty()
        looks.SetColor(*colour)
        looks.LightingOff()
        looks.SetPointSize(point_px)
        looks.SetLineWidth(line_px)
        looks.RenderPointsAsSpheresOn()
        self.actor.VisibilityOff()
        self.actor.PickableOff()
        renderer.AddActor(self.actor)

    def draw(self, points: Sequence[np.ndarray], lines: Sequence[np.ndarray]) -> None:
        """Show these points (3,) and polylines (k, 3), mm; nothing clears."""
        spots = np.asarray(points, float).reshape(-1, 3)
        runs = [np.asarray(line, float).reshape(-1, 3) for line in lines if len(line) > 1]
        everything = np.concatenate([spots, *runs]) if runs else spots
        vertices, polylines = vtkCellArray(), vtkCellArray()
        for i in range(len(spots)):
            vertices.InsertNextCell(1, [i])
        start = len(spots)
        for run in runs:
            polylines.InsertNextCell(len(run), list(range(start, start + len(run))))
            start += len(run)
        place = vtkPoints()
        place.SetData(numpy_to_vtk(np.ascontiguousarray(everything, np.float32), deep=True))
        self._data.SetPoints(place)
        self._data.SetVerts(vertices)
        self._data.SetLines(polylines)
        self.actor.SetVisibility(bool(len(everything)))
