"""Draws every fold from three sides, midway and at its end; see scripts/plates."""

from __future__ import annotations

import argparse
import io
import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw

from meshes.cache import load_or_build
from meshes.catalogue.folds import Laid, fold_named, load_folds
from meshes.errors import PeelbackError
from meshes.export import write_bytes
from meshes.model import BackModel
from meshes.questions.reflect import reflector_of
from viewer.cli_body import add_body_options, body_from
from viewer.cli_plate import THEMES, move_folded, one_of
from viewer.print.plates import CAUTION, plate_scene
from viewer.scene import camera as cameras
from viewer.scene import overlay
from viewer.scene.scene import PartLook
from viewer.state.folding import with_fold
from viewer.state.plan import Plan, plan_with_folds
from viewer.state.view_state import ViewState
from viewer.state.visibility import opacities

PANEL = (620, 620)
MARGIN = 1.12
SHARES = (0.5, 1.0)
SIDES = ("left", "right")
VIEWS = {
    "from behind": (0.0, 0.0),
    "oblique": (42.0, 16.0),
    "from the side": (88.0, 0.0),
}
"""Name to (azimuth, elevation) in degrees, for a fold of the left side."""

FROM_ABOVE = {"levator", "splenius_capitis", "splenius_cervicis", "semispinalis_capitis"}
"""In the neck a flap is seen better from above than from the side."""

SUPERSAMPLE = 2
TITLE_PX, CAPTION_PX, SMALL_PX = 24, 17, 13
STRIP_PX = 132
LEAST_SHOWN_MM = 240.0


def state_of(model: BackModel, plan: Plan, fold_id: str, share: float) -> ViewState:
    """Return the state in which a fold is done: all that its step needs is done, and folded."""
    rule, side = fold_named(fold_id)
    state = ViewState()
    needed = {step.id for step in plan.before(rule.step)}
    needed |= set() if rule.by_hand else {rule.step}
    for step_id in (step.id for step in plan.steps if step.id in needed):
        state = plan.do_step(step_id, model, side, fold=True).change(state)
    return with_fold(state, fold_id, share)


def views_of(fold_id: str) -> dict[str, tuple[float, float]]:
    """Return the three directions from which a fold is drawn."""
    rule, side = fold_named(fold_id)
    views = dict(VIEWS)
    if rule.id in FROM_ABOVE:
        views.pop("from the side")
        views["from above"] = (10.0, 65.0)
    sign = 1.0 if side == "left" else -1.0
    return {name: (sign * azimuth, elevation) for name, (azimuth, elevation) in views.items()}


def contact_sheet(model: BackModel, scene, plan: Plan, fold_id: str, theme: str) -> Image.Image:
    """Return one picture with all views of one fold: a row for each share of its way."""
    rule, side = fold_named(fold_id)
    width, height = PANEL
    views = views_of(fold_id)
    head = 2 * TITLE_PX
    size = (width * len(views), head + (height + STRIP_PX) * len(SHARES) + 2 * CAPTION_PX)
    sheet = Image.new("RGB", size, "white" if theme == "light" else "#202020")
    draw = ImageDraw.Draw(sheet)
    title = f"{rule.title}, {side}"
    overlay.draw_text(draw, (size[0] / 2, TITLE_PX), title, TITLE_PX, theme, "mm")
    scene.set_theme(theme)
    scene.set_look("by_kind")
    scene.animate = False
    for row, share in enumerate(SHARES):
        state = state_of(model, plan, fold_id, share)
        shown = opacities(model, state)
        folds = tuple(Laid(laid.fold_id, laid.share) for laid in state.folds)
        move_folded(scene, model, folds, shown)
        scene.apply({part_id: PartLook(opacity) for part_id, opacity in shown.items()})
        points = _places(model, state, fold_id)
        for column, (name, (azimuth, elevation)) in enumerate(views.items()):
            pose = replace(scene.pose, azimuth_deg=azimuth, elevation_deg=elevation, roll_deg=0.0)
            scene.pose = cameras.framed(pose, points, width / height, MARGIN)
            picture = scene.screenshot(PANEL, supersample=SUPERSAMPLE, overlays=False)
            at = (column * width, head + row * (height + STRIP_PX))
            sheet.paste(Image.fromarray(picture), at)
            words = f"{name}, {'midway' if share < 1 else 'laid back'}"
            _write_strip(sheet, scene.pose, (at[0], at[1] + height), words, theme)
    foot = (size[0] / 2, size[1] - CAPTION_PX)
    overlay.draw_text(draw, foot, CAUTION, CAPTION_PX, theme, "mm")
    return sheet


def _write_strip(sheet: Image.Image, pose, at: tuple[int, int], words: str, theme: str) -> None:
    """Write scale, caption and directions under a panel: in it they would lie on the model."""
    width, height = PANEL
    draw = ImageDraw.Draw(sheet)
    middle = at[1] + STRIP_PX // 2
    overlay.draw_text(draw, (at[0] + width / 2, middle), words, CAPTION_PX, theme, "mm")
    bar = Image.fromarray(overlay.scale_bar_picture(pose.scale_mm, height, SMALL_PX, theme))
    marker = Image.fromarray(overlay.marker_picture(pose, SMALL_PX, theme))
    for picture, left in ((bar, at[0] + 8), (marker, at[0] + width - marker.width)):
        sheet.paste(picture, (left, middle - picture.height // 2), picture)


def _places(model: BackModel, state: ViewState, fold_id: str) -> np.ndarray:
    """Return points that the picture of a fold has to hold: the flap, at rest and as it lies."""
    shown = opacities(model, state)
    gone = frozenset(model.parts) - frozenset(shown)
    number = next(k for k, laid in enumerate(state.folds) if laid.fold_id == fold_id)
    path = reflector_of(model).path(fold_id, gone, state.folds[:number])
    lying = {share: path.vertices(share) for share in (0.0, state.folds[number].share)}
    points = np.concatenate(
        [moved[i][cut.mesh.piece >= 0] for moved in lying.values() for i, cut in path.parts.items()]
    )
    # Of a small flap enough is shown to tell where it is.
    low, high = points.min(axis=0), points.max(axis=0)
    wider = np.maximum(LEAST_SHOWN_MM - (high - low).max(), 0.0) / 2
    return np.concatenate([points, [low - wider, high + wider]])


def main() -> int:
    """Draw them."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, nargs="?", default=Path("plates"))
    parser.add_argument("--detail", choices=("preview", "full"), default="full")
    parser.add_argument("--only", nargs="*", default=(), metavar="FOLD", help="these folds only")
    parser.add_argument("--side", choices=SIDES, default="left")
    parser.add_argument("--theme", choices=THEMES, default="light")
    add_body_options(parser)
    words = parser.parse_args()
    try:
        wanted = [rule.id for rule in load_folds()]
        for name in words.only:
            one_of("only", name, wanted)
        body = body_from(words)
        print("Computing or loading the model …", file=sys.stderr)
        model = load_or_build(body, words.detail)
        started = time.perf_counter()
        scene = plate_scene(model)
        plan = plan_with_folds(model.catalogue)
        drawn = 0
        try:
            for name in words.only or wanted:
                sheet = contact_sheet(model, scene, plan, f"{name}.{words.side}", words.theme)
                picture = io.BytesIO()
                sheet.save(picture, "PNG")
                write_bytes(words.folder / f"fold_{name}.png", picture.getvalue())
                drawn += 1
        finally:
            scene.finalize()
    except PeelbackError as refusal:
        print(f"folds: {refusal}", file=sys.stderr)
        return 2
    print(f"{drawn} folds in {words.folder} ({time.perf_counter() - started:.1f} s)")
    return 0


if __name__ == "__main__":
    sys.exit(main())
