"""An RGBA array shown as a flat rectangle over the picture."""

from __future__ import annotations

import numpy as np
from vtkmodules.util.numpy_support import numpy_to_vtk
from vtkmodules.vtkCommonCore import vtkFloatArray, vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkImageData, vtkPolyData
from vtkmodules.vtkRenderingCore import (
    vtkCoordinate,
    vtkPolyDataMapper2D,
    vtkTexture,
    vtkTexturedActor2D,
)


class PictureLayer:
    """One textured rectangle in display pixels."""

    def __init__(self, renderer):
        self._image = vtkImageData()
        texture = vtkTexture()
        texture.SetInputData(self._image)
        texture.InterpolateOff()
        self._points = vtkPoints()
        self._points.SetNumberOfPoints(4)
        corners = vtkFloatArray()
        corners.SetNumberOfComponents(2)
        for u, v in ((0, 0), (1, 0), (1, 1), (0, 1)):
            corners.InsertNextTuple2(u, v)
        cells = vtkCellArray()
        cells.InsertNextCell(4, [0, 1, 2, 3])
        self._data = vtkPolyData()
        self._data.SetPoints(self._points)
        self._data.SetPolys(cells)
        self._data.GetPointData().SetTCoords(corners)
        mapper = vtkPolyDataMapper2D()
        mapper.SetInputData(self._data)
        place = vtkCoordinate()
        place.SetCoordinateSystemToDisplay()
        mapper.SetTransformCoordinate(place)
        self.actor = vtkTexturedActor2D()
        self.actor.SetMapper(mapper)
        self.actor.SetTexture(texture)
        self.actor.VisibilityOff()
        renderer.AddViewProp(self.actor)

    def show(self, picture: np.ndarray, left: int, bottom: int) -> None:
        """Show an (h, w, 4) uint8 array with its lower left corner at a pixel (y up)."""
        height, width = picture.shape[:2]
        self._image.SetDimensions(width, height, 1)
        flipped = np.ascontiguousarray(picture[::-1]).reshape(-1, 4)
        self._image.GetPointData().SetScalars(numpy_to_vtk(flipped, deep=True))
        self._image.Modified()
        self.place(left, bottom, width, height)
        self.actor.VisibilityOn()

    def place(self, left: int, bottom: int, width: int, height: int) -> None:
        """Move the rectangle."""
        for i, (x, y) in enumerate(((0, 0), (width, 0), (width, height), (0, height))):
            self._points.SetPoint(i, left + x, bottom + y, 0)
        self._points.Modified()

    def hide(self) -> None:
        """Take it off the picture."""
        self.actor.VisibilityOff()
