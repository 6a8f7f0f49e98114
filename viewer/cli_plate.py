"""A still picture of the peeled back, drawn without a window."""

from __future__ import annotations

import io
import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from meshes.catalogue.folds import Laid, fold_named, moved_by
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
    folds: tuple[Laid, ...] = ()

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
        folds: Iterable[str] = (),
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
        laid = tuple(fold_from(words) for words in folds)
        return cls(stratum, view, side, width, height, look, theme, labels, out, laid)

    @property
    def state(self) -> ViewState:
        """The view state that this picture shows."""
        left = self.stratum if self.side in ("both", "left") else 0
        right = self.stratum if self.side in ("both", "right") else 0
        return ViewState(
            peeled=Sides(left, right), look=self.look, view=self.view, folds=self.folds
        )


def fold_from(words: str) -> Laid:
    """Return the flap of FOLD.SIDE or FOLD.SIDE=SHARE ("trapezius.left=0.5").

    Raises
    ------
    PeelbackError
        There is no such fold, or the share is none.
    """
    fold_id, _, share = words.partition("=")
    fold_named(fold_id)
    try:
        return Laid(fold_id, float(share) if share else 1.0)
    except ValueError:
        raise PeelbackError(f"share of a fold must be a number 0–1, got {share!r}") from None


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
            # A flap that is asked for is seen, whatever is peeled.
            shown |= {
                part_id: 1.0
                for laid in order.folds
                for part_id in moved_by(laid.fold_id)
                if part_id in model.parts
            }
            move_folded(scene, model, order.folds, shown)
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


def move_folded(scene, model: BackModel, folds: tuple[Laid, ...], shown: Iterable[str]) -> None:
    """Draw flaps folded back; what is not shown holds none of them up."""
    from meshes.questions.reflect import reflector_of
    from viewer.scene.folding import FoldedShells

    shells = FoldedShells(reflector_of(model), scene.part_in_place)
    gone = frozenset(model.parts) - frozenset(shown)
    shares = {laid.fold_id: laid.share for laid in folds}
    scene.move_parts(shells.shells(shells.paths(folds, gone), shares))


def fold_measures(model: BackModel, folds: tuple[Laid, ...], shown: Iterable[str]) -> list[dict]:
    """Return how true each fold is: changes of fibre length and area as shares, hinge in mm."""
    from meshes.questions.folding.measures import measure
    from meshes.questions.reflect import reflector_of

    gone = frozenset(model.parts) - frozenset(shown)
    told = []
    for k, laid in enumerate(folds):
        path = reflector_of(model).path(laid.fold_id, gone, folds[:k])
        found = measure(path, laid.share)
        told.append(
            {
                "fold": laid.fold_id,
                "share": laid.share,
                "moves": sorted(path.part_ids()),
                "fibre_change": round(found.fibre, 5),
                "area_change": round(found.area, 5),
                "hinge_moved_mm": round(found.hinge_mm, 5),
            }
        )
    return told
