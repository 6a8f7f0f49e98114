"""The tag of a tag test: a pin with a flag, whose tip stands on the tagged place.

It is drawn as a flat picture over the model, so that its shape tells it from everything
that belongs to the body, in black and white as well.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from viewer.scene import overlay
from viewer.scene.picture_layer import PictureLayer

FLAG = (250, 204, 21, 255)
DARK = (12, 14, 18, 255)
WHITE = (255, 255, 255, 255)
FINER = 4
"""Drawn so many times larger and averaged down, for smooth edges."""


@lru_cache(maxsize=8)
def tag_picture(size_px: int, hidden: bool = False) -> tuple[np.ndarray, int, int]:
    """Return the picture and where its tip is.

    Parameters
    ----------
    size_px : int
        Letter size that the flag goes with.
    hidden : bool
        The place is turned away from the eye: the flag is hollow.

    Returns
    -------
    picture : (h, w, 4) uint8
    tip_x, tip_y : int
        Pixel of the picture, from the top left, that stands on the tagged place.
    """
    from PIL import Image, ImageDraw

    unit = round(1.25 * max(size_px, 8) * FINER)
    width, height = round(2.6 * unit), round(3.6 * unit)
    image = Image.new("RGBA", (width, height), (0, 0, 0, 0))
    draw = ImageDraw.Draw(image)
    tip = (0.7 * unit, height - 0.7 * unit)
    top = (tip[0], 0.25 * unit)
    thick = max(round(0.14 * unit), 2)
    # A ring about the place itself leaves open what lies in it.
    for radius, colour, line in (
        (0.52 * unit, DARK, round(2.2 * thick)),
        (0.46 * unit, WHITE, thick),
    ):
        box = [tip[0] - radius, tip[1] - radius, tip[0] + radius, tip[1] + radius]
        draw.ellipse(box, outline=colour, width=line)
    flag = [top, (top[0] + 1.75 * unit, top[1] + 0.68 * unit), (top[0], top[1] + 1.36 * unit)]
    edge = [*flag, flag[0], flag[1]]
    for colour, line in ((WHITE, round(3.4 * thick)), (DARK, round(1.8 * thick))):
        draw.line([tip, top], fill=colour, width=line)
        draw.line(edge, fill=colour, width=line, joint="curve")
    if not hidden:
        draw.polygon(flag, fill=FLAG)
        draw.line(edge, fill=DARK, width=thick, joint="curve")
    small = image.resize((width // FINER, height // FINER), Image.Resampling.BOX)
    return np.asarray(small), round(tip[0] / FINER), round(tip[1] / FINER)


class TagMark:
    """Shows the tag at one place of the model.

    Parameters
    ----------
    renderer : vtkRenderer
        Of what lies over the model.
    """

    def __init__(self, renderer):
        self._layer = PictureLayer(renderer)
        self.point: np.ndarray | None = None
        self._shown: tuple | None = None

    def set_point(self, point) -> None:
        """Tag a place, (3,) mm; None takes the tag away."""
        self.point = None if point is None else np.asarray(point, float)
        self._shown = None
        if point is None:
            self._layer.hide()

    def hide(self) -> None:
        """Take it off the picture until it is placed again."""
        self._layer.hide()
        self._shown = None

    def place(self, pixel, size_px: int, height: int, hidden: bool) -> None:
        """Put the tip on a pixel (from the top left) of a picture so high."""
        picture, tip_x, tip_y = tag_picture(size_px, hidden)
        left = round(float(pixel[0])) - tip_x
        bottom = height - (round(float(pixel[1])) - tip_y + picture.shape[0])
        key = (size_px, hidden)
        if key != self._shown:
            self._shown = key
            self._layer.show(picture, left, bottom)
        else:
            self._layer.place(left, bottom, picture.shape[1], picture.shape[0])

    def laid_over(self, picture: np.ndarray, pixel, size_px: int, hidden: bool) -> np.ndarray:
        """Return an (h, w, 3) picture with the tag on it."""
        flag, tip_x, tip_y = tag_picture(size_px, hidden)
        left, top = round(float(pixel[0])) - tip_x, round(float(pixel[1])) - tip_y
        return overlay.blended(picture, flag, left, top)
