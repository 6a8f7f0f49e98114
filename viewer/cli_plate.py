"""A still picture of the peeled back, drawn without a window."""

from __future__ import annotations

import io
import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from meshes.errors import PeelbackError
from meshes.export import write_bytes
from meshes.model import STRATUM_COUNT, BackModel
from viewer.state.view_state import LOOKS, SIDE_CHOICES, VIEWS, Sides, ViewState
from viewer.state.visibility import opacities

SIZE_LIMITS = (64, 8192)
THEMES = ("light", "dark")
FILE_ENDINGS = (".png", ".jpg", ".jpeg", ".tif", ".tiff")

# Short words for the views that have a left and a right one.
_SHORT_VIEWS = {"oblique": "oblique_left", "lateral": "lateral_left"}


@dataclass(frozen=True, slots=True)
class PlateOrder:
    """A picture as it was asked for, found to be possible.

    Attributes
    ----------
    stratum : int
        The outermost stratum that is still on, 0-10.
    view : str
        A key of ``viewer.state.view_state.VIEWS``.
    side : {"both", "left", "right"}
        The side that is peeled; the other stays whole.
    width, height : int
        Pixels.
    look, theme : str
    labels : bool
    out : Path
    """

    stratum: int
    view: str
    side: str
    width: int
    height: int
    look: str
    theme: str
    labels: bool
    out: Path

    @classmethod
    def checked(
        cls,
        *,
        stratum: int,
        view: str,
        side: str,
        size: str,
        look: str,
        theme: str,
        labels: bool,
        out: Path,
    ) -> PlateOrder:
        """Make an order from the words of the command.

        Raises
        ------
        PeelbackError
            One of the words is none of those allowed.
        """
        if not 0 <= stratum < STRATUM_COUNT:
            raise PeelbackError(f"stratum must lie in 0–{STRATUM_COUNT - 1}, got {stratum}")
        view = _SHORT_VIEWS.get(view, view)
        one_of("view", view, VIEWS)
        one_of("side", side, SIDE_CHOICES)
        one_of("look", look, LOOKS)
        one_of("theme", theme, THEMES)
        if out.suffix.lower() not in FILE_ENDINGS:
            raise PeelbackError(
                f"out must end in one of {', '.join(FILE_ENDINGS)}, got {out.name!r}"
            )
        width, height = size_from(size)
        return cls(stratum, view, side, width, height, look, theme, labels, out)

    @property
    def state(self) -> ViewState:
        """The view state that this picture shows."""
        left = self.stratum if self.side in ("both", "left") else 0
        right = self.stratum if self.side in ("both", "right") else 0
        return ViewState(peeled=Sides(left, right), look=self.look, view=self.view)


def size_from(words: str) -> tuple[int, int]:
    """Return (width, height) in pixels from WIDTHxHEIGHT.

    Raises
    ------
    PeelbackError
        It is something else, or too small or large.
    """
    numbers = re.fullmatch(r"(\d+)x(\d+)", words)
    low, high = SIZE_LIMITS
    if numbers is None or not all(low <= int(n) <= high for n in numbers.groups()):
        raise PeelbackError(
            f"size must be WIDTHxHEIGHT with {low}–{high} pixels each, got {words!r}"
        )
    return int(numbers[1]), int(numbers[2])


def one_of(name: str, value: str, allowed: Iterable[str]) -> None:
    """Refuse a word that is none of those allowed."""
    if value not in allowed:
        raise PeelbackError(f"{name} must be one of {', '.join(allowed)}, got {value!r}")


def draw_plate(model: BackModel, order: PlateOrder) -> set[str]:
    """Draw and write a picture; returns the ids of the parts that it shows."""
    return draw_plates(model, [order])[0]


def draw_plates(model: BackModel, orders: list[PlateOrder]) -> list[set[str]]:
    """Draw several pictures of one model; the model enters the scene once.

    Returns
    -------
    list of set of str
        For each order the ids of the parts that are on.

    Raises
    ------
    PeelbackError
        A file cannot be written.
    """
    from PIL import Image

    from viewer.print import plates

    scene = plates.plate_scene(model)
    drawn = []
    try:
        for order in orders:
            shown = opacities(model, order.state)
            pixels = plates.picture(
                scene,
                shown,
                order.view,
                (order.width, order.height),
                plates.label_names(model, plates.worth_naming(model, shown, order.stratum)),
                plates.plate_title(order.stratum, order.view, order.side),
                order.labels,
                order.look,
                order.theme,
                first=[i for i in shown if model.parts[i].stratum == order.stratum],
            )
            picture = io.BytesIO()
            kind = {".png": "PNG", ".tif": "TIFF", ".tiff": "TIFF"}.get(
                order.out.suffix.lower(), "JPEG"
            )
            Image.fromarray(pixels).save(picture, kind)
            write_bytes(order.out, picture.getvalue())
            drawn.append(set(shown))
    finally:
        scene.finalize()
    return drawn
