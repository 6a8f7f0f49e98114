"""A flat cut on the model in the picture: one half clipped away, the cut face filled and coloured.

The half that stays keeps its own meshes and shading; VTK drops the rest per
pixel. The face is drawn in painting order, each part a hair in front of what
it lies in, so that a nested part owns its place without any polygon work.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

import numpy as np
from vtkmodules.util.numpy_support import numpy_to_vtk
from vtkmodules.vtkCommonCore import vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPlane, vtkPolyData
from vtkmodules.vtkRenderingCore import vtkActor, vtkPolyDataMapper

from viewer.scene import looks

if TYPE_CHECKING:
    from meshes.questions.section import Outlines

STEP_MM = 0.004
"""How far each part lies in front of the one painted before it."""

RING_COLOUR = (0.16, 0.11, 0.10)
FRAME_COLOUR = (0.05, 0.45, 0.48)
FRAME_MARGIN_MM = 14.0
GRIP_PX = 15.0
"""A press this near to the grip takes hold of the plane."""


class Caps:
    """The cut of one picture: its plane, its filled face, its frame and grip.

    Parameters
    ----------
    renderer : vtkRenderer
    """

    def __init__(self, renderer):
        self.renderer = renderer
        self.outlines: Outlines | None = None
        self.towards = np.array([0.0, 0.0, 1.0])
        self.near_half = False
        self.spots: dict[str, tuple[np.ndarray, float]] = {}
        self.with_grip = True
        self._plane = vtkPlane()
        self._ground = _flat_actor(renderer, 1.0)
        self._ground[0].GetProperty().SetColor(*(c / 255.0 for c in looks.LOOSE_TISSUE))
        self._strips = np.zeros((0, 4))
        self._face = _flat_actor(renderer, 1.0)
        self._rings = _flat_actor(renderer, 1.2)
        self._frame = _flat_actor(renderer, 2.0)
        self._grip = _flat_actor(renderer, 1.0)
        self._rings[0].GetProperty().SetColor(*RING_COLOUR)
        for actor, _ in (self._frame, self._grip):
            actor.GetProperty().SetColor(*FRAME_COLOUR)
        self._grip[0].GetProperty().SetPointSize(15.0)
        self._grip[0].GetProperty().RenderPointsAsSpheresOn()
        self._owner = np.zeros(0, np.int64)
        self._colours: dict[tuple[str, str], np.ndarray] = {}
        self.grip: np.ndarray | None = None

    @property
    def on(self) -> bool:
        """True while something is cut."""
        return self.outlines is not None

    def show(
        self, outlines: Outlines | None, near_half: bool, strips: np.ndarray | None = None
    ) -> None:
        """Cut along these outlines, or not at all.

        Parameters
        ----------
        outlines : Outlines or None
        near_half : bool
            Keep the half towards the reader of the flat picture, not the half beyond.
        strips : (n, 4) float, optional
            Loose tissue under the parts, as ``loose_strips`` gives it.
        """
        self.outlines, self.near_half = outlines, near_half
        self._strips = np.zeros((0, 4)) if strips is None else strips
        self.spots = {}
        for actor in self._actors():
            actor.SetVisibility(outlines is not None)
        if outlines is None:
            self.grip = None
            return
        plane = outlines.plane
        # Clipping keeps what the plane's normal points to; the face looks the other way.
        kept = plane.normal if near_half else -plane.normal
        self.towards = -kept
        self._plane.SetOrigin(*plane.origin)
        self._plane.SetNormal(*kept)
        triangles, self._owner = outlines.fill()
        if near_half:
            triangles = triangles[:, ::-1]
        lift = STEP_MM * (1.0 + np.arange(len(outlines.ids)))
        self._put_ground(plane)
        self._put_face(plane, triangles, lift)
        self._put_rings(plane, outlines, lift)
        self._put_frame(plane, outlines.bounds())

    def _space(self, plane, flat: np.ndarray, lift) -> np.ndarray:
        places = plane.origin + flat[..., :1] * plane.right + flat[..., 1:] * plane.up
        return places + np.asarray(lift)[..., None] * self.towards

    @property
    def strips(self) -> np.ndarray:
        """The loose tissue of the cut, (n, 4) mm."""
        return self._strips

    def _actors(self) -> list[vtkActor]:
        pairs = (self._ground, self._face, self._rings, self._frame, self._grip)
        return [actor for actor, _ in pairs]

    def _put_ground(self, plane) -> None:
        left, low, right, high = self._strips.T
        corners = np.stack([left, low, right, low, right, high, left, high], axis=1)
        places = self._space(plane, corners.reshape(-1, 2), 0.0)
        _set_points(self._ground[1], places)
        cells = vtkCellArray()
        cells.SetData(4, numpy_to_vtk(np.arange(len(places), dtype=np.int32), deep=True))
        self._ground[1].SetPolys(cells)

    def _put_face(self, plane, triangles: np.ndarray, lift: np.ndarray) -> None:
        data = self._face[1]
        corners = triangles.reshape(-1, 2)
        places = self._space(plane, corners, lift[np.repeat(self._owner, 3)])
        _set_points(data, places)
        cells = vtkCellArray()
        cells.SetData(3, numpy_to_vtk(np.arange(len(corners), dtype=np.int32), deep=True))
        data.SetPolys(cells)

    def _put_rings(self, plane, outlines: Outlines, lift: np.ndarray) -> None:
        data = self._rings[1]
        rings = [ring for part in outlines.rings for ring in part]
        whose = np.repeat(np.arange(len(outlines.ids)), [len(part) for part in outlines.rings])
        sizes = np.array([len(ring) for ring in rings], np.int64)
        if not len(sizes):
            data.SetPoints(vtkPoints())
            data.SetLines(vtkCellArray())
            return
        flat = np.concatenate(rings)
        _set_points(data, self._space(plane, flat, np.repeat(lift[whose], sizes) + STEP_MM / 2))
        starts = np.concatenate([[0], np.cumsum(sizes)])
        # Each loop once round: its own points and the first again.
        index = np.arange(starts[-1] + len(sizes))
        index -= np.repeat(np.arange(len(sizes)), sizes + 1)
        ends = np.cumsum(sizes + 1) - 1
        index[ends] = starts[:-1]
        cells = vtkCellArray()
        cells.SetData(
            numpy_to_vtk(np.concatenate([[0], ends + 1]).astype(np.int64), deep=True),
            numpy_to_vtk(index.astype(np.int64), deep=True),
        )
        data.SetLines(cells)

    def _put_frame(self, plane, bounds: np.ndarray | None) -> None:
        shown = bounds is not None and self.with_grip
        self._frame[0].SetVisibility(shown)
        self._grip[0].SetVisibility(shown)
        self.grip = None
        if not shown:
            return
        (left, low), (right, high) = bounds + FRAME_MARGIN_MM * np.array([[-1], [1]])
        flat = np.array([[left, low], [right, low], [right, high], [left, high]])
        places = self._space(plane, flat, np.zeros(4))
        _set_points(self._frame[1], places)
        cells = vtkCellArray()
        cells.InsertNextCell(5, [0, 1, 2, 3, 0])
        self._frame[1].SetLines(cells)
        self.grip = (places[1] + places[2]) / 2
        _set_points(self._grip[1], self.grip[None])
        spots = vtkCellArray()
        spots.InsertNextCell(1, [0])
        self._grip[1].SetVerts(spots)

    def paint(
        self, parts: Mapping[str, object], look: str, lit: Iterable[str], hovered: Iterable[str]
    ) -> None:
        """Colour the face by part; selected and hovered parts are tinted.

        Parameters
        ----------
        parts : mapping of id to Part
        look : str
        lit, hovered : iterable of str
        """
        if self.outlines is None or not len(self._owner):
            return
        lit, hovered = set(lit), set(hovered)
        table = np.full((len(self.outlines.ids), 3), 128, np.uint8)
        for i, part_id in enumerate(self.outlines.ids):
            part = parts.get(part_id)
            if part is None:
                continue
            colour = self._colour(part, look)
            share = (
                looks.HIGHLIGHT_SHARE
                if part_id in lit
                else 2 * looks.HOVER_SHARE
                if part_id in hovered
                else 0.0
            )
            if share:
                colour = np.rint(colour + share * (np.array(looks.HIGHLIGHT) - colour))
            table[i] = colour
        colours = numpy_to_vtk(np.repeat(table[self._owner], 3, axis=0), deep=True)
        self._face[1].GetPointData().SetScalars(colours)

    def _colour(self, part, look: str) -> np.ndarray:
        """Return a colour worked out once: a dragged plane asks for all of them in every frame."""
        key = (part.id, look)
        if key not in self._colours:
            self._colours[key] = np.array(looks.section_colour(part, look), float)
        return self._colours[key]

    def clip(self, mappers: Iterable) -> None:
        """Clip what these mappers draw, or stop clipping it."""
        for mapper in mappers:
            clipped = bool(mapper.GetClippingPlanes()) and bool(
                mapper.GetClippingPlanes().GetNumberOfItems()
            )
            if self.on and not clipped:
                mapper.AddClippingPlane(self._plane)
            elif clipped and not self.on:
                mapper.RemoveAllClippingPlanes()

    def kept(self, points: np.ndarray) -> np.ndarray:
        """Return which of (n, 3) points stay, (n,) bool; all while nothing is cut."""
        points = np.asarray(points, float).reshape(-1, 3)
        if self.outlines is None:
            return np.ones(len(points), bool)
        return (points - self.outlines.plane.origin) @ self.towards <= 1e-6

    def beyond(self, boxes: np.ndarray) -> np.ndarray:
        """Return which of (n, 2, 3) boxes lie wholly in the half that is taken away, (n,) bool."""
        middle = (boxes.mean(axis=1) - self.outlines.plane.origin) @ self.towards
        return middle > (boxes[:, 1] - boxes[:, 0]) / 2 @ np.abs(self.towards)

    def first_hit(self, origin, direction, ask):
        """Return (id, point, normal) of what a sight line meets first, with the cut face counted.

        Parameters
        ----------
        origin, direction : (3,) float
            mm; a unit direction.
        ask : callable
            Origin to the first hit on the uncut model from there, or None.
        """
        if self.outlines is None:
            return ask(origin)
        plane = self.outlines.plane
        height = float((origin - plane.origin) @ self.towards)
        slope = float(direction @ self.towards)
        if height <= 0.0:
            hit = ask(origin)
            if hit is not None and float((hit[1] - plane.origin) @ self.towards) > 1e-3:
                return None
            return hit
        if slope > -1e-9:
            return None
        at = origin + (height / -slope) * direction
        place = plane.flat(at[None])[0]
        owner = self.outlines.owner_at(place)
        if owner is not None:
            return owner, at, self.towards.copy()
        # Loose tissue belongs to no part, and nothing is seen through it.
        return None if self._is_loose(place) else ask(at)

    def _is_loose(self, place: np.ndarray) -> bool:
        left, low, right, high = self._strips.T
        (x, y) = place
        return bool(np.any((left <= x) & (x <= right) & (low <= y) & (y <= high)))

    def remove(self) -> None:
        """Take the actors out of their renderer."""
        for actor in self._actors():
            self.renderer.RemoveActor(actor)


def _flat_actor(renderer, width: float):
    data = vtkPolyData()
    mapper = vtkPolyDataMapper()
    mapper.SetInputData(data)
    mapper.SetColorModeToDirectScalars()
    actor = vtkActor()
    actor.SetMapper(mapper)
    look = actor.GetProperty()
    look.LightingOff()
    look.SetLineWidth(width)
    actor.ForceOpaqueOn()
    actor.VisibilityOff()
    actor.PickableOff()
    renderer.AddActor(actor)
    return actor, data


def _set_points(data: vtkPolyData, places: np.ndarray) -> None:
    points = vtkPoints()
    points.SetData(numpy_to_vtk(np.ascontiguousarray(places, np.float32), deep=True))
    data.SetPoints(points)
