"""Parts merged into a few drawing batches: one per material and stratum.

A back has some 600 parts; one actor for each draws ten times slower on
software GL than the same triangles merged. Every batch keeps where each part's
vertices and faces lie, so that hiding a part only shortens the face list and
lighting one up only repaints its own vertices.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from vtkmodules.util.numpy_support import numpy_to_vtk
from vtkmodules.vtkCommonCore import vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPolyData
from vtkmodules.vtkRenderingCore import vtkActor, vtkPolyDataMapper

from viewer.scene import looks, shading
from viewer.scene.drawn import DrawnPart

DETAILS = ("moving", "still")
LAYER_STEP_MM = 1.1
"""How far apart in depth coarse shells of neighbouring strata are drawn."""


def end_to_end(arrays: Sequence[np.ndarray]) -> np.ndarray:
    """Return arrays of one width as one: without copying when they lie so in memory already."""
    first = arrays[0]
    whole = first.base
    if (
        isinstance(whole, np.ndarray)
        and whole.flags.c_contiguous
        and whole.dtype == first.dtype
        and whole.shape[1:] == first.shape[1:]
        and all(a.base is whole and a.flags.c_contiguous for a in arrays)
    ):
        origin = whole.__array_interface__["data"][0]
        row = whole.strides[0]
        starts = [(a.__array_interface__["data"][0] - origin) // row for a in arrays]
        ends = [start + len(a) for start, a in zip(starts, arrays, strict=True)]
        if starts[1:] == ends[:-1]:
            return whole[starts[0] : ends[-1]]
    return np.concatenate(arrays)


class Batch:
    """The merged vertices of some parts at one detail.

    The arrays may be those of the parts' own shells, end to end; they are copied
    before a part is laid elsewhere.
    """

    def __init__(self, drawn: dict[str, DrawnPart], detail: str):
        self.ids = list(drawn)
        shells = [getattr(d, detail) for d in drawn.values()]
        counts = [len(s.points) for s in shells]
        starts = np.concatenate([[0], np.cumsum(counts)]).astype(int)
        self.vertex_range = {
            name: slice(starts[i], starts[i + 1]) for i, name in enumerate(self.ids)
        }
        self._faces = {name: shell.faces for name, shell in zip(self.ids, shells, strict=True)}
        self.points = end_to_end([s.points for s in shells])
        self.surface = end_to_end([s.surface for s in shells])
        self._normals = end_to_end([s.normals for s in shells])
        self._own = False
        self.colours = np.full((len(self.points), 4), 255, np.uint8)
        self._parts = {name: d.part for name, d in drawn.items()}
        self._cut = {name: shell.cut for name, shell in zip(self.ids, shells, strict=True)}
        self._vtk_points = vtkPoints()
        self._vtk_points.SetData(numpy_to_vtk(self.points))
        self._vtk_normals = numpy_to_vtk(self._normals)
        self._vtk_normals.SetName("normals")
        self._vtk_surface = numpy_to_vtk(self.surface)
        self._vtk_surface.SetName(shading.SURFACE_ARRAY)
        self._vtk_colours = numpy_to_vtk(self.colours)
        self._vtk_colours.SetName("colours")

    def paint(
        self,
        name: str,
        look: str,
        highlighted: bool,
        hovered: bool,
        opacity: float,
        covering: bool = False,
    ) -> None:
        """Set the colours of one part's vertices; ``touch`` tells VTK afterwards."""
        place = self.vertex_range[name]
        self.colours[place, :3] = looks.vertex_colours(
            self._parts[name], self.surface[place, 2], look, highlighted, hovered, covering,
            self._cut[name],
        )  # fmt: skip
        self.colours[place, 3] = round(255 * opacity)

    def touch(self) -> None:
        """Tell VTK that the colours have changed."""
        self._vtk_colours.Modified()

    def _make_own(self) -> None:
        """Copy the arrays that are still those of the shells."""
        if self._own:
            return
        self._own = True
        self.points, self._normals, self.surface = (
            a.copy() for a in (self.points, self._normals, self.surface)
        )
        for held, array in (
            (self._vtk_points.GetData(), self.points),
            (self._vtk_normals, self._normals),
            (self._vtk_surface, self.surface),
        ):
            held.SetVoidArray(array, array.size, 1)
            held.Modified()

    def set_openness(self, name: str, values: np.ndarray) -> None:
        """Set the furrow shade of one part, (n,) 0..1."""
        self._make_own()
        self.surface[self.vertex_range[name], 3] = values
        self._vtk_surface.Modified()

    def move(self, name: str, points: np.ndarray, normals: np.ndarray) -> None:
        """Lay one part's vertices elsewhere; ``touch_shape`` tells VTK afterwards."""
        self._make_own()
        place = self.vertex_range[name]
        self.points[place] = points
        self._normals[place] = normals

    def touch_shape(self) -> None:
        """Tell VTK that vertices have moved."""
        self._vtk_points.GetData().Modified()
        self._vtk_points.Modified()
        self._vtk_normals.Modified()
        self._vtk_surface.Modified()

    def polydata(self) -> vtkPolyData:
        """Return a polydata that shares this batch's vertices and has no face yet."""
        data = vtkPolyData()
        data.SetPoints(self._vtk_points)
        data.GetPointData().SetNormals(self._vtk_normals)
        data.GetPointData().SetScalars(self._vtk_colours)
        data.GetPointData().AddArray(self._vtk_surface)
        return data

    def cells(self, names) -> vtkCellArray:
        """Return the faces of the named parts as one cell array."""
        merged = np.empty((self.face_count(names), 3), np.int32)
        at = 0
        for name in names:
            faces = self._faces[name]
            np.add(faces, self.vertex_range[name].start, out=merged[at : at + len(faces)])
            at += len(faces)
        cells = vtkCellArray()
        cells.SetData(3, numpy_to_vtk(merged.ravel(), deep=True))
        return cells

    def face_count(self, names) -> int:
        """Return how many faces the named parts have."""
        return sum(len(self._faces[name]) for name in names)


class BatchActors:
    """The actors that draw one batch in one viewport: its solid and its see-through parts."""

    def __init__(self, batch: Batch, key, detail: str, renderer, pattern: bool = True):
        self.batch = batch
        self.renderer = renderer
        self._stratum, self._material = key[:2]
        self._coarse = detail == "moving"
        self._pattern = pattern
        self._shown: dict[str, tuple[str, ...]] = {}
        self._wanted: dict[str, tuple[str, ...]] = {"solid": (), "see_through": ()}
        self._data: dict[str, vtkPolyData] = {}
        self.actors: dict[str, vtkActor] = {}
        self._add_actor("solid", "solid")
        # A film covers half the picture: a dot pattern over it would be all one sees.
        dotted = self._coarse and not self._is_film
        self._add_actor("see_through", "screen_door" if dotted else "blended")

    @property
    def _is_film(self) -> bool:
        return self._material == "film"

    def _add_actor(self, role: str, opacity: str) -> None:
        data = self.batch.polydata()
        mapper = vtkPolyDataMapper()
        mapper.SetInputData(data)
        mapper.SetColorModeToDirectScalars()
        # The shader takes vertices for millimetres; VTK would rescale them for itself.
        mapper.SetVBOShiftScaleMethod(0)
        actor = vtkActor()
        actor.SetMapper(mapper)
        actor.VisibilityOff()
        actor.GetProperty().BackfaceCullingOn()
        shading.dress(
            actor,
            mapper,
            self._material,
            opacity,
            self._pattern,
            LAYER_STEP_MM * self._stratum if self._coarse else 0.0,
        )
        if opacity == "blended":
            actor.ForceTranslucentOn()
        else:
            actor.ForceOpaqueOn()
        self.renderer.AddActor(actor)
        self._shown[role] = ()
        self._data[role] = data
        self.actors[role] = actor

    def want(self, solid: tuple[str, ...], see_through: tuple[str, ...]) -> None:
        """Say which parts are to be drawn; faces are gathered when next drawn."""
        self._wanted = {"solid": solid, "see_through": see_through}

    def draw(self, on: bool, dotted: bool = False) -> None:
        """Switch this detail on (bringing its face lists up to date) or off.

        Parameters
        ----------
        on : bool
        dotted : bool
            See-through parts as a share of pixels, which needs no peeling; not films.
        """
        dotted = dotted and not self._is_film
        if on and dotted and self._wanted["see_through"] and "dotted" not in self.actors:
            self._add_actor("dotted", "screen_door")
        for role, actor in self.actors.items():
            wanted = self._wanted["solid" if role == "solid" else "see_through"]
            visible = on and bool(wanted) and (role == "solid" or (role == "dotted") == dotted)
            if visible and wanted != self._shown[role]:
                self._data[role].SetPolys(self.batch.cells(wanted))
                self._shown[role] = wanted
            if bool(actor.GetVisibility()) != visible:
                actor.SetVisibility(visible)

    def remove(self) -> None:
        """Take the actors out of their renderer."""
        for actor in self.actors.values():
            self.renderer.RemoveActor(actor)

    def face_count(self) -> int:
        """Return how many triangles these actors draw when on."""
        return sum(self.batch.face_count(names) for names in self._wanted.values())
