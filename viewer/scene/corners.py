"""The small pictures in the corners: side marker, scale bar, pose in words, the inset's frame."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from viewer.scene import overlay
from viewer.scene.camera import Pose
from viewer.scene.picture_layer import PictureLayer
from viewer.scene.table_view import TableView

EDGE_PX = 6
BAR_EDGE_PX = 8


@dataclass(frozen=True, slots=True)
class CornerWords:
    """What the corners tell of a picture.

    Attributes
    ----------
    size : (width, height)
        Of the whole picture, px.
    pose : Pose
    font_px : int
    theme : str
    lines : tuple of str
        The pose of the donor in words.
    table : str
        The place at the table, "" for a standing donor.
    directions : bool
        False leaves out the cross that tells left from right.
    """

    size: tuple[int, int]
    pose: Pose
    font_px: int
    theme: str
    lines: tuple[str, ...]
    table: str
    directions: bool = True

    def bar_key(self) -> tuple:
        """Return what the scale bar depends on: a turn changes no length."""
        return self.size, self.font_px, self.theme, round(float(self.pose.scale_mm), 2)

    def key(self) -> tuple:
        """Return what the corners depend on, as finely as can be told in them."""
        pose = self.pose
        turn = (round(pose.azimuth_deg), round(pose.elevation_deg), round(pose.roll_deg))
        return *self.bar_key(), turn, self.table, self.lines, self.directions

    def marker(self) -> np.ndarray:
        """Return the cross of directions, RGBA."""
        return overlay.marker_picture(self.pose, self.font_px, self.theme)

    def bar(self) -> np.ndarray:
        """Return the scale bar, RGBA."""
        scale, height = self.pose.scale_mm, self.size[1]
        return overlay.scale_bar_picture(scale, height, self.font_px, self.theme)

    def words(self, table: TableView | None) -> np.ndarray:
        """Return the pose in words, RGBA, clear of what stands at the right edge."""
        beside = table.box(self.size)[2] if table is not None else self.marker().shape[1]
        width = self.size[0]
        room = max(width - beside - BAR_EDGE_PX - 2 * EDGE_PX, width // 3)
        return overlay.text_picture(self.lines, self.font_px, self.theme, room)

    def words_top(self, words_px: int, bar_px: int) -> int:
        """Return where the words begin, px from above: over a lying donor there is room."""
        return 8 if self.table else self.size[1] - bar_px - words_px - 12


class Corners:
    """The corners of a drawn window.

    Parameters
    ----------
    written : vtkRenderer
        Of what lies before the model and its labels.
    """

    def __init__(self, written):
        names = ("inset", "scale", "marker", "pose")
        self._layers = {name: PictureLayer(written) for name in names}
        self._key: tuple | None = None
        self._bar_key: tuple | None = None
        self._bar_px = 0

    def hide(self) -> None:
        """Take them off the picture until the next ``show``."""
        for layer in self._layers.values():
            layer.hide()
        self.forget()

    def forget(self) -> None:
        """Draw all anew next time."""
        self._key = self._bar_key = None

    def show(self, told: CornerWords, table: TableView | None) -> None:
        """Bring the corners up to date; nothing is drawn anew that looks as it did."""
        if told.key() == self._key:
            return
        self._key = told.key()
        width, height = told.size
        marker = told.marker()
        if told.directions:
            self._layers["marker"].show(marker, width - marker.shape[1] - EDGE_PX, EDGE_PX)
        else:
            self._layers["marker"].hide()
        if told.bar_key() != self._bar_key:
            self._bar_key = told.bar_key()
            bar = told.bar()
            self._layers["scale"].show(bar, BAR_EDGE_PX, BAR_EDGE_PX)
            self._bar_px = bar.shape[0]
        if told.lines:
            words = told.words(table)
            tall = words.shape[0]
            bottom = height - tall - told.words_top(tall, self._bar_px)
            self._layers["pose"].show(words, BAR_EDGE_PX, bottom)
        else:
            self._layers["pose"].hide()
        if table is not None:
            left, top, _, tall = table.box(told.size)
            frame = table.frame_picture(told.size, told.font_px, told.theme)
            self._layers["inset"].show(frame, left, height - top - tall)
        else:
            self._layers["inset"].hide()


def with_corners(picture: np.ndarray, told: CornerWords, table: TableView | None) -> np.ndarray:
    """Return an (h, w, 3) picture with its corners laid over."""
    width, height = told.size
    marker, bar = told.marker(), told.bar()
    low = height - marker.shape[0] - EDGE_PX
    if told.directions:
        picture = overlay.blended(picture, marker, width - marker.shape[1] - EDGE_PX, low)
    low = height - bar.shape[0] - BAR_EDGE_PX
    picture = overlay.blended(picture, bar, BAR_EDGE_PX, low)
    if told.lines:
        words = told.words(table)
        top = told.words_top(words.shape[0], bar.shape[0])
        picture = overlay.blended(picture, words, BAR_EDGE_PX, top)
    if table is not None:
        left, top, _, _ = table.box(told.size)
        frame = table.frame_picture(told.size, told.font_px, told.theme)
        picture = overlay.blended(picture, frame, left, top)
    return picture
