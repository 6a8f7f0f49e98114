"""The donor on a table: the table's top, a small upright picture, one pointer in both."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from vtkmodules.util.numpy_support import numpy_to_vtk
from vtkmodules.vtkCommonCore import vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPolyData
from vtkmodules.vtkRenderingCore import vtkActor, vtkPolyDataMapper, vtkRenderer

from viewer.scene import looks, marks, overlay
from viewer.scene.camera import EYE_DISTANCE_MM, Pose, framed, view_pose
from viewer.scene.table_pose import table_corners
from viewer.state.tongue import told

INSET_HEIGHT = 0.37
"""Share of the picture's height that the upright picture takes."""
INSET_ASPECT = 0.72
SPOT_COLOURS = ((0.05, 0.05, 0.05), (1.0, 1.0, 1.0))
SPOT_PX = (17.0, 10.0)
TABLE_COLOURS = {"light": (0.70, 0.72, 0.74), "dark": (0.24, 0.26, 0.28)}
GRID_MM = 100.0


class TableView:
    """What a scene shows besides the model while the donor lies on the table.

    Parameters
    ----------
    window : vtkRenderWindow
    viewport : Viewport
        Of the upright picture; the scene puts the parts into it.
    main : vtkRenderer
        Of the large picture; the table stands in it.
    main_front : vtkRenderer
        In front of the large picture.
    """

    def __init__(self, window, viewport, main: vtkRenderer, main_front: vtkRenderer):
        self.window, self.viewport, self.main = window, viewport, main
        self.front = vtkRenderer()
        self.front.SetLayer(1)
        self.front.InteractiveOff()
        self.front.SetAutomaticLightCreation(False)
        window.AddRenderer(self.front)
        self._top = _flat(main)
        self._grid = marks.Strokes(main, (0.5, 0.52, 0.54), line_px=1.0)
        self._spots = [
            marks.Strokes(renderer, colour, size)
            for renderer in (main_front, self.front)
            for colour, size in zip(SPOT_COLOURS, SPOT_PX)
        ]
        for spot in self._spots[1::2]:
            # The white middle lies before its black edge.
            spot.actor.GetMapper().SetRelativeCoincidentTopologyPointOffsetParameter(-1200.0)
        self.pose = Pose()

    def lay(self, points: np.ndarray, theme: str) -> None:
        """Put the table under a body, (n, 3) mm, and frame it in the upright picture."""
        if not len(points):
            return
        self.pose = framed(view_pose("posterior", Pose()), points, INSET_ASPECT, 1.06)
        corners = table_corners(points)
        place = vtkPoints()
        place.SetData(numpy_to_vtk(np.ascontiguousarray(corners, np.float32), deep=True))
        self._top[0].SetPoints(place)
        self._top[0].Modified()
        (x0, y, z0), (x1, _, z1) = corners[0], corners[2]
        x_lines = np.arange(np.ceil(x0 / GRID_MM) * GRID_MM, x1, GRID_MM)
        z_lines = np.arange(np.ceil(z0 / GRID_MM) * GRID_MM, z1, GRID_MM)
        y += 0.5
        self._grid.draw(
            [],
            [np.array([[x, y, z0], [x, y, z1]]) for x in x_lines]
            + [np.array([[x0, y, z], [x1, y, z]]) for z in z_lines]
            + [np.vstack([corners, corners[:1]]) + [0, 0.5, 0]],
        )
        self.set_theme(theme)

    def set_theme(self, theme: str) -> None:
        """Choose the colours for a background."""
        self._top[1].GetProperty().SetColor(*TABLE_COLOURS[theme])
        self.viewport.renderer.SetBackground(*looks.BACKGROUNDS[theme])

    def box(self, size: tuple[int, int]) -> tuple[int, int, int, int]:
        """Return left, top, width, height of the upright picture, px, y down."""
        height = round(size[1] * INSET_HEIGHT)
        width = min(round(height * INSET_ASPECT), round(size[0] * 0.34))
        return size[0] - width - 6, 6, width, height

    def share(self, size: tuple[int, int]) -> tuple[float, float, float, float]:
        """Return the upright picture's place as VTK has it."""
        left, top, width, height = self.box(size)
        return (
            left / size[0],
            1.0 - (top + height) / size[1],
            (left + width) / size[0],
            1.0 - top / size[1],
        )

    def inside(self, x: float, y: float, size: tuple[int, int]) -> bool:
        """Return whether a pixel lies in the upright picture."""
        left, top, width, height = self.box(size)
        return left <= x < left + width and top <= y < top + height

    def place(self, size: tuple[int, int]) -> None:
        """Bring the upright picture and its camera to their places."""
        share = self.share(size)
        right, up, back = self.pose.axes()
        focus = np.asarray(self.pose.focus)
        _, _, width, height = self.box(size)
        # A narrow window narrows the picture: the body must still fit in it.
        scale = self.pose.scale_mm * max(1.0, INSET_ASPECT * height / max(width, 1))
        for renderer in (self.viewport.renderer, self.front):
            renderer.SetViewport(*share)
            eye = renderer.GetActiveCamera()
            eye.ParallelProjectionOn()
            eye.SetFocalPoint(*focus)
            eye.SetPosition(*(focus + EYE_DISTANCE_MM * back))
            eye.SetViewUp(*up)
            eye.SetParallelScale(scale)
            eye.SetClippingRange(100.0, 2 * EYE_DISTANCE_MM)

    def pose_at(self, size: tuple[int, int]) -> Pose:
        """Return the pose of the upright picture as it is drawn."""
        _, _, width, height = self.box(size)
        return replace(
            self.pose,
            scale_mm=self.pose.scale_mm * max(1.0, INSET_ASPECT * height / max(width, 1)),
        )

    def frame_picture(self, size: tuple[int, int], font_px: int, theme: str) -> np.ndarray:
        """Return the frame about the upright picture with its name, RGBA."""
        _, _, width, height = self.box(size)
        image, draw = overlay.canvas(width, height, theme)
        line = max(2, round(font_px / 8))
        draw.rectangle([0, 0, width - 1, height - 1], outline=overlay.LEADER[theme], width=line)
        words = told("Upright")
        size_px = overlay.fitting_px(words, font_px, width - 2 * line - 8)
        overlay.draw_text(draw, (line + 4, line + 2), words, size_px, theme)
        return np.asarray(image)

    def set_spot(self, point: np.ndarray | None) -> None:
        """Mark one point, (3,) mm, in both pictures; None takes it away."""
        for spot in self._spots:
            spot.draw([] if point is None else [point], [])

    def remove(self) -> None:
        """Take everything away again."""
        self.set_spot(None)
        self.main.RemoveActor(self._top[1])
        self.main.RemoveActor(self._grid.actor)
        for spot in self._spots:
            spot.renderer.RemoveActor(spot.actor)
        self.front.RemoveAllViewProps()
        self.window.RemoveRenderer(self.front)


def _flat(renderer: vtkRenderer) -> tuple[vtkPolyData, vtkActor]:
    cells = vtkCellArray()
    cells.InsertNextCell(4, [0, 1, 2, 3])
    data = vtkPolyData()
    place = vtkPoints()
    place.SetNumberOfPoints(4)
    data.SetPoints(place)
    data.SetPolys(cells)
    mapper = vtkPolyDataMapper()
    mapper.SetInputData(data)
    actor = vtkActor()
    actor.SetMapper(mapper)
    actor.GetProperty().LightingOff()
    actor.PickableOff()
    renderer.AddActor(actor)
    return data, actor
