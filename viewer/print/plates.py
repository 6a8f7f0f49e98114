"""Plates: still pictures of the back as it lies open, with labels, scale and side marker."""

from __future__ import annotations

import io
from collections.abc import Iterable, Mapping
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw

from meshes.model import STRATUM_COUNT, BackModel
from viewer.scene import overlay
from viewer.scene.scene import PartLook, Scene
from viewer.state.view_state import STRATA, VIEWS, Sides, ViewState
from viewer.state.visibility import opacities

CAUTION = "Teaching model – not for needle or surgical guidance"
SUPERSAMPLE = 2
PIXEL_LIMIT = 36_000_000
"""Largest picture drawn with supersampling; larger ones are drawn as they are."""


def plate_scene(model: BackModel) -> Scene:
    """Return an offscreen scene with the whole model and its furrow shade."""
    scene = Scene()
    scene.set_model(model)
    return scene


def plate_state(stratum: int, side: str = "both", view: str = "posterior") -> ViewState:
    """Return the state in which a stratum is the outermost one left on the chosen side."""
    if not 0 <= stratum < STRATUM_COUNT:
        raise ValueError(f"stratum must lie in 0..{STRATUM_COUNT - 1}, got {stratum}")
    left = stratum if side in ("both", "left") else 0
    right = stratum if side in ("both", "right") else 0
    return ViewState(peeled=Sides(left, right), view=view)


def plate_title(stratum: int, view: str, side: str = "both") -> str:
    """Return what a plate shows, in words."""
    where = VIEWS[view][0].lower() + VIEWS[view][1:]
    if side == "both":
        return f"Stratum {stratum}: {STRATA[stratum]} ({where})"
    return f"Stratum {stratum} on the {side}: {STRATA[stratum]} ({where})"


def picture(
    scene: Scene,
    shown: Mapping[str, float],
    view: str,
    size: tuple[int, int],
    names: Mapping[str, str],
    title: str = "",
    labels: bool = True,
    look: str = "by_kind",
    theme: str = "light",
    density: float = 0.75,
    first: Iterable[str] = (),
) -> np.ndarray:
    """Draw one plate with a scene that holds the model.

    Parameters
    ----------
    shown : mapping of part id to opacity
    names : mapping of part id to label text
    first : iterable of part id
        Parts that the plate is about: labelled before the rest.

    Returns
    -------
    (h, w, 3) uint8
    """
    width, height = size
    scene.set_theme(theme)
    scene.set_look(look)
    scene.apply({part_id: PartLook(opacity) for part_id, opacity in shown.items()})
    scene.animate = False
    # Writing grows with the picture, so that a plate reads alike at any size.
    scene.set_font_scale(float(np.clip(_writing_scale(width, height), 0.6, 6.0)))
    font_px = scene.font_px
    labelled_aspect = max(width - 2 * font_px * 13 * labels, width * 0.4) / (height - 4.6 * font_px)
    scene.frame_view(view, aspect=labelled_aspect, picture_size=size, margin=1.03)
    scene.set_labels(labels, density, False, names, first)
    factor = SUPERSAMPLE if width * height * SUPERSAMPLE**2 <= PIXEL_LIMIT else 1
    pixels = scene.screenshot((width, height), supersample=factor)
    return overlay.blended(pixels, _captions((width, height), title, font_px, theme), 0, 0)


def _writing_scale(width: int, height: int) -> float:
    """Letters of a plate over those of the window: a wide plate has more room beside the body."""
    return height / 1000.0 if width > 1.2 * height else min(width, height * 0.8) / 1150.0


def plate(
    model: BackModel,
    stratum: int,
    view: str = "posterior",
    size: tuple[int, int] = (1600, 2000),
    out: Path | str | None = None,
    labels: bool = True,
    look: str = "by_kind",
    theme: str = "light",
    side: str = "both",
    scene: Scene | None = None,
) -> np.ndarray:
    """Draw a plate of everything from bone up to a stratum.

    Parameters
    ----------
    out : path or None
        PNG to write; None only returns the picture.
    side : {"both", "left", "right"}
        The side that is peeled; the other stays whole.
    scene : Scene or None
        From ``plate_scene``, to draw several plates of one model.

    Returns
    -------
    (h, w, 3) uint8
    """
    own = scene is None
    scene = scene or plate_scene(model)
    try:
        shown = opacities(model, plate_state(stratum, side, view))
        pixels = picture(
            scene,
            shown,
            view,
            size,
            label_names(model, worth_naming(model, shown, stratum)),
            plate_title(stratum, view, side),
            labels,
            look,
            theme,
            first=[i for i in shown if model.parts[i].stratum == stratum],
        )
    finally:
        if own:
            scene.finalize()
    if out is not None:
        buffer = io.BytesIO()
        Image.fromarray(pixels).save(buffer, "PNG")
        Path(out).write_bytes(buffer.getvalue())
    return pixels


def worth_naming(model: BackModel, ids, stratum: int) -> list[str]:
    """Return the parts a plate of this stratum is about: it, the next two, and the large bones.

    Ribs and vertebrae glimpsed through gaps would otherwise take the room.
    """
    return [
        part_id
        for part_id in ids
        if (model.parts[part_id].stratum <= stratum + 2 and model.parts[part_id].kind != "bone")
        or stratum >= 9
        or (model.parts[part_id].kind == "bone" and not _is_serial(model.parts[part_id]))
    ]


def _is_serial(part) -> bool:
    return bool(part.level) or part.name.startswith(("rib_", "vertebra_"))


def label_names(model: BackModel, ids) -> dict[str, str]:
    """Return the English label of each part, without its side (the picture tells that)."""
    from meshes.export import part_names

    names = {}
    for part_id in ids:
        english = part_names(model.parts[part_id], model)["english"]
        names[part_id] = english.removeprefix("left ").removeprefix("right ")
    return names


def _captions(size: tuple[int, int], title: str, font_px: int, theme: str) -> np.ndarray:
    width, height = size
    red, green, blue, _ = overlay.HALO[theme]
    image = Image.new("RGBA", size, (red, green, blue, 0))
    draw = ImageDraw.Draw(image)
    overlay.draw_text(draw, (width / 2, font_px * 0.7), title, round(font_px * 1.25), theme, "ma")
    overlay.draw_text(
        draw, (width / 2, height - font_px * 0.6), CAUTION, round(font_px * 0.85), theme, "ms"
    )
    return np.asarray(image)
