"""The outline of what is selected: its back faces, pushed out by a few pixels."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from vtkmodules.util.numpy_support import numpy_to_vtk
from vtkmodules.vtkCommonCore import vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPolyData
from vtkmodules.vtkRenderingCore import vtkActor, vtkPolyDataMapper

from viewer.scene import shading
from viewer.scene.drawn import Shell

OUTLINE_PX = 2.4
COARSE_BACK_MM = 6.0
OUTLINE_COLOUR = (0.93, 0.70, 0.05)


class Outline:
    """One actor that rims the given shells."""

    def __init__(self, renderer):
        self._data = vtkPolyData()
        mapper = vtkPolyDataMapper()
        mapper.SetInputData(self._data)
        self.actor = vtkActor()
        self.actor.SetMapper(mapper)
        self.actor.GetProperty().FrontfaceCullingOn()
        self.actor.GetProperty().BackfaceCullingOff()
        self.actor.ForceOpaqueOn()
        self.actor.VisibilityOff()
        shading.dress_outline(self.actor, OUTLINE_COLOUR)
        renderer.AddActor(self.actor)
        self._ids: tuple[str, ...] = ()

    def show(self, shells: Mapping[str, Shell]) -> None:
        """Rim these shells; none clears."""
        if tuple(shells) == self._ids:
            return
        self._ids = tuple(shells)
        self.actor.SetVisibility(bool(shells))
        if not shells:
            return
        starts = np.cumsum([0] + [len(s.points) for s in shells.values()])
        points = vtkPoints()
        points.SetData(numpy_to_vtk(np.concatenate([s.points for s in shells.values()]), deep=True))
        normals = numpy_to_vtk(np.concatenate([s.normals for s in shells.values()]), deep=True)
        faces = np.concatenate(
            [s.faces + start for s, start in zip(shells.values(), starts[:-1], strict=True)]
        )
        cells = vtkCellArray()
        cells.SetData(3, numpy_to_vtk(faces.astype(np.int32).ravel(), deep=True))
        self._data.SetPoints(points)
        self._data.SetPolys(cells)
        self._data.GetPointData().SetNormals(normals)

    def clear(self) -> None:
        """Take the outline off."""
        self.show({})

    def step(
        self,
        size: tuple[int, int],
        pixel_ratio: float = 1.0,
        *,
        coarse: bool = False,
        depth_mm: float = 1000.0,
    ) -> None:
        """Tell the shader how wide the rim is in a picture of this size.

        Parameters
        ----------
        coarse : bool
            The coarse shapes are drawn: the far face of a thin sheet may come before its near
            one there, and the rim is held back so as not to cover the sheet.
        depth_mm : float
            From the near to the far plane of the eye.
        """
        px = OUTLINE_PX * pixel_ratio
        uniforms = self.actor.GetShaderProperty().GetVertexCustomUniforms()
        uniforms.SetUniform2f(
            "outlineStep", [2.0 * px / max(size[0], 1), 2.0 * px / max(size[1], 1)]
        )
        uniforms.SetUniformf("outlineBack", 2.0 * COARSE_BACK_MM / depth_mm if coarse else 0.0)
