"""A cut through the model as a labelled picture: PNG or SVG from the same layout."""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

import numpy as np
import shapely
from PIL import Image, ImageDraw

from meshes.model import BackModel
from meshes.questions.loose_tissue import loose_tissue
from meshes.questions.section import CutPlane, Region, only_areas
from viewer.scene import looks, overlay
from viewer.scene.anchors import once_each
from viewer.scene.label_layout import LEADER_GAP_PX, MARGIN_PX, Anchor, Label, lay_out
from viewer.state.tongue import figure, told

PAPER = {"light": (250, 250, 248), "dark": (26, 27, 31)}
EDGE = {"light": (60, 46, 42), "dark": (12, 12, 14)}
GROUND = {"light": looks.LOOSE_TISSUE, "dark": (92, 86, 66)}
"""Loose tissue and fat between the parts, which the model holds no part for: on paper paler than its fat."""

GROUND_NOTE = "Between the parts: loose tissue and fat, not modelled"
ENDS = (("Left", "Right"), ("Back", "Front"), ("Head", "Foot"))
SUPERSAMPLE = 2
LEAST_LABELLED_PX2 = 40.0
LABEL_SHARE = (0.23, 0.26)
"""Most of the width that one column of labels may take, in a wide and in a narrow picture."""

NARROW_LETTERS = 70
NAME_LINES = 2
"""A name too long for its column stands on so many lines."""

CAUTION = "Teaching model – not for needle or surgical guidance"


@dataclass(frozen=True, slots=True, eq=False)
class SectionLayout:
    """Where everything of a section picture stands, in pixels (y down)."""

    size: tuple[int, int]
    px_per_mm: float
    shapes: list[tuple[str, tuple[int, int, int], list[np.ndarray], list[list[np.ndarray]]]]
    labels: list[Label]
    title: str
    ends: tuple[str, str, str, str]
    font_px: int
    theme: str
    ground: tuple[tuple[np.ndarray, tuple[np.ndarray, ...]], ...] = ()


def section_layout(
    model: BackModel,
    plane: CutPlane,
    regions: Sequence[Region],
    size: tuple[int, int],
    names: Mapping[str, str],
    title: str = "",
    look: str = "by_kind",
    theme: str = "light",
    labels: bool = True,
    density: float = 0.9,
    font_px: int | None = None,
    zoom: float = 1.0,
    centre=None,
    measure: Callable[[str], tuple[float, float]] | None = None,
    loose: shapely.MultiPolygon | None = None,
) -> SectionLayout:
    """Fit the regions of a cut into a picture and place their labels.

    Parameters
    ----------
    model : BackModel
    plane : CutPlane
    regions : sequence of Region
    size : (width, height)
        Pixels.
    names : mapping of part id to text
        Parts without one get no label.
    title, look, theme : str
    labels : bool
    density : float
        How many labels, 0-1.
    font_px : int, optional
        Letter size; by the height of the picture when not given.
    zoom : float
        1 fits the whole cut between the labels.
    centre : (2,) float, optional
        Place of the cut in the middle of the picture, mm; that of the whole when not given.
    measure : callable, optional
        Text to (width, height) in pixels, for letters other than this module's own.
    loose : shapely.MultiPolygon, optional
        Loose tissue of the cut, where it is known already.
    """
    width, height = size
    font_px = font_px or letter_px(height)
    measure = measure or (lambda text: overlay.text_size(text, font_px))
    top, bottom = font_px * 3.2, font_px * 4.2
    widest = max((measure(t)[0] for t in names.values()), default=0.0)
    most = LABEL_SHARE[0] if width > NARROW_LETTERS * font_px else LABEL_SHARE[1]
    side = min(widest + 3.5 * font_px, most * width) if labels else font_px * 2
    bounds = np.array([r.polygons.bounds for r in regions]).reshape(-1, 4)
    if len(bounds):
        low, high = bounds[:, :2].min(axis=0), bounds[:, 2:].max(axis=0)
    else:
        low, high = np.array([-50.0, -50.0]), np.array([50.0, 50.0])
    span = np.maximum(high - low, 1.0)
    scale = float(min((width - 2 * side) / span[0], (height - top - bottom) / span[1]))
    scale *= zoom
    centre = (low + high) / 2 if centre is None else np.asarray(centre, float)
    middle = np.array([width / 2, top + (height - top - bottom) / 2])

    def place(flat: np.ndarray) -> np.ndarray:
        away = (np.asarray(flat) - centre) * scale
        return np.column_stack([middle[0] + away[:, 0], middle[1] - away[:, 1]])

    shapes = []
    anchors = []
    for region in regions:
        part = model.parts[region.part_id]
        colour = looks.section_colour(part, look)
        outers, holes = [], []
        for polygon in region.polygons.geoms:
            outers.append(place(np.asarray(polygon.exterior.coords)))
            holes.append([place(np.asarray(ring.coords)) for ring in polygon.interiors])
        shapes.append((region.part_id, colour, outers, holes))
        name = names.get(region.part_id) if labels else None
        seen = region.polygons
        if name and zoom > 1.0:
            half = np.array([width / 2 - side, (height - top - bottom) / 2]) / scale
            seen = only_areas(shapely.clip_by_rect(seen, *(centre - half), *(centre + half)))
        seen_px2 = seen.area * scale**2
        if name and seen_px2 > LEAST_LABELLED_PX2:
            largest = max(seen.geoms, key=lambda p: p.area)
            spot = shapely.maximum_inscribed_circle(largest, 0.5).coords[0]
            x, y = place(np.array([spot]))[0]
            text = _fitted(name, side - MARGIN_PX - 2 * LEADER_GAP_PX, measure)
            anchors.append(Anchor(region.part_id, text, float(x), float(y), seen_px2))
    placed = []
    if labels:
        placed = lay_out(
            once_each(anchors),
            size,
            _block(measure),
            density,
            top_px=top,
            bottom_px=bottom,
        )
    ground = tuple(
        (
            place(np.asarray(p.exterior.coords)),
            tuple(place(np.asarray(r.coords)) for r in p.interiors),
        )
        for p in (loose_tissue(model, regions) if loose is None else loose).geoms
    )
    return SectionLayout(
        (int(width), int(height)),
        scale,
        shapes,
        placed,
        title,
        _ends(plane),
        font_px,
        theme,
        ground,
    )


def letter_px(height: int) -> int:
    """Return the letter size (px) for a picture so high."""
    return max(11, round(height / 62))


def _fitted(text: str, room: float, measure: Callable[[str], tuple[float, float]]) -> str:
    """Return a name that keeps within its column: on two lines, else its last words give way."""
    lines, words = [], text.split(" ")
    while words and len(lines) < NAME_LINES:
        upto = len(words)
        if len(lines) + 1 < NAME_LINES:
            while measure(" ".join(words[:upto]))[0] > room and upto > 1:
                upto -= 1
        lines.append(" ".join(words[:upto]))
        words = words[upto:]
    last = lines[-1].split(" ")
    while measure(lines[-1])[0] > room and len(last) > 1:
        last.pop()
        lines[-1] = " ".join(last).rstrip(",:;") + " …"
    return "\n".join(lines)


def _block(measure: Callable[[str], tuple[float, float]]) -> Callable[[str], tuple[float, float]]:
    """Return a function that measures a text of several lines."""

    def size(text: str) -> tuple[float, float]:
        sizes = [measure(line) for line in text.split("\n")]
        return max(w for w, _ in sizes), sum(h for _, h in sizes)

    return size


def short_name(title: str) -> str:
    """Return a title as it stands beside a section: without the side, vertebrae by their sign."""
    for side in ("left", "right"):
        title = title.removesuffix(f", {told(side)}").removesuffix(f", {side}")
        title = title.removeprefix(f"{side} ")
    sign = re.fullmatch(r".*vertebra \(([CTL]\d+)\)", title)
    return f"Vertebra {sign[1]}" if sign else title[:1].upper() + title[1:]


def _ends(plane: CutPlane) -> tuple[str, str, str, str]:
    """Return what lies at the left, right, top and bottom of the picture."""

    def word(direction: np.ndarray) -> str:
        axis = int(np.argmax(np.abs(direction)))
        return told(ENDS[axis][0 if direction[axis] > 0 else 1])

    return word(-plane.right), word(plane.right), word(plane.up), word(-plane.up)


def section_png(layout: SectionLayout) -> bytes:
    """Return the picture as PNG bytes."""
    buffer = io.BytesIO()
    Image.fromarray(section_array(layout)).save(buffer, "PNG")
    return buffer.getvalue()


def section_array(layout: SectionLayout) -> np.ndarray:
    """Return the picture, (h, w, 3) uint8."""
    width, height = layout.size
    k = SUPERSAMPLE
    image = Image.new("RGB", (width * k, height * k), PAPER[layout.theme])
    draw = ImageDraw.Draw(image)
    edge, line = EDGE[layout.theme], max(1, round(0.09 * layout.font_px * k))
    for outer, holes in layout.ground:
        _fill(image, draw, outer * k, [ring * k for ring in holes], GROUND[layout.theme])
    for _, colour, outers, holes in layout.shapes:
        for outer, inner in zip(outers, holes, strict=True):
            _fill(image, draw, outer * k, [ring * k for ring in inner], colour)
            for ring in (outer, *inner):
                points = [tuple(p) for p in ring * k]
                draw.line([*points, points[0]], fill=edge, width=line, joint="curve")
    small = image.resize((width, height), Image.Resampling.BOX)
    picture = np.asarray(small)
    layer = overlay.labels_picture(layout.size, layout.labels, layout.font_px, layout.theme)
    picture = overlay.blended(picture, layer, 0, 0)
    return overlay.blended(picture, _frame(layout), 0, 0)


def _fill(image, draw, outer, holes, colour) -> None:
    points = [tuple(p) for p in outer]
    if not holes:
        draw.polygon(points, fill=colour)
        return
    # Pillow's polygons have no holes: fill through a mask of the polygon's own box.
    low = np.floor(outer.min(axis=0)).astype(int) - 1
    high = np.ceil(outer.max(axis=0)).astype(int) + 2
    mask = Image.new("L", tuple(high - low), 0)
    stencil = ImageDraw.Draw(mask)
    stencil.polygon([tuple(p - low) for p in outer], fill=255)
    for ring in holes:
        stencil.polygon([tuple(p - low) for p in ring], fill=0)
    image.paste(colour, (int(low[0]), int(low[1])), mask)


def _frame(layout: SectionLayout) -> np.ndarray:
    """Return title, ends, scale bar and caution as an RGBA layer."""
    width, height = layout.size
    image = Image.new("RGBA", layout.size, (*PAPER[layout.theme], 0))
    draw = ImageDraw.Draw(image)
    font, theme = layout.font_px, layout.theme
    overlay.draw_text(draw, (width / 2, font * 0.5), layout.title, round(font * 1.2), theme, "ma")
    left, right, top, bottom = layout.ends
    overlay.draw_text(draw, (font * 0.8, font * 0.7), left, round(font * 1.2), theme, "la")
    overlay.draw_text(draw, (width - font * 0.8, font * 0.7), right, round(font * 1.2), theme, "ra")
    overlay.draw_text(draw, (width / 2, font * 2.2), top, font, theme, "ma")
    overlay.draw_text(draw, (width / 2, height - font * 2.6), bottom, font, theme, "ms")
    overlay.draw_text(
        draw, (width - font, height - font * 0.7), told(CAUTION), round(font * 0.85), theme, "rs"
    )
    if layout.ground:
        overlay.draw_text(
            draw,
            (width - font, height - font * 1.75),
            told(GROUND_NOTE),
            round(font * 0.85),
            theme,
            "rs",
        )
    bar = overlay.scale_bar_picture(height / (2.0 * layout.px_per_mm), height, font, theme)
    image.alpha_composite(Image.fromarray(bar), (8, height - bar.shape[0] - 8))
    return np.asarray(image)


def _hex(colour) -> str:
    return "#" + "".join(f"{int(c):02x}" for c in colour)


def _path(rings: Sequence[np.ndarray]) -> str:
    return " ".join(
        "M" + " L".join(f"{x:.1f} {y:.1f}" for x, y in ring[:-1]) + " Z" for ring in rings
    )


def section_svg(layout: SectionLayout) -> str:
    """Return the picture as SVG text; every region is a path with the part's id."""
    width, height = layout.size
    ink = _hex(overlay.INK[layout.theme][:3])
    edge = _hex(EDGE[layout.theme])
    font = layout.font_px
    out = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
        f'viewBox="0 0 {width} {height}" font-family="sans-serif" font-size="{font}">',
        f"<title>{escape(layout.title)}</title>",
        f'<rect width="{width}" height="{height}" fill="{_hex(PAPER[layout.theme])}"/>',
    ]
    for outer, holes in layout.ground:
        out.append(
            f'<path d="{_path((outer, *holes))}" fill="{_hex(GROUND[layout.theme])}" '
            'fill-rule="evenodd"/>'
        )
    for part_id, colour, outers, holes in layout.shapes:
        rings = [
            ring for outer, inner in zip(outers, holes, strict=True) for ring in (outer, *inner)
        ]
        path = _path(rings)
        out.append(
            f'<path id="{escape(part_id)}" d="{path}" fill="{_hex(colour)}" '
            f'fill-rule="evenodd" stroke="{edge}" stroke-width="{0.09 * font:.2f}"/>'
        )
    for label in layout.labels:
        corners = " ".join(f"{x:.1f},{y:.1f}" for x, y in label.leader)
        out.append(f'<polyline points="{corners}" fill="none" stroke="{ink}" stroke-width="1"/>')
        anchor = "start" if label.side == "left" else "end"
        x = label.left if label.side == "left" else label.left + label.width
        lines = label.text.split("\n")
        high = label.height / len(lines)
        wide = [overlay.text_size(line, font)[0] for line in lines]
        for k, line in enumerate(lines):
            held = label.width * wide[k] / max(*wide, 1.0)
            out.append(
                f'<text x="{x:.1f}" y="{label.top + (k + 0.8) * high:.1f}" '
                f'text-anchor="{anchor}" textLength="{held:.1f}" '
                f'lengthAdjust="spacingAndGlyphs" fill="{ink}">{escape(line)}</text>'
            )
    left, right, top, bottom = layout.ends
    length = overlay.bar_length_mm(height / (2 * layout.px_per_mm), height, 9.0 * font)
    bar_px = length * layout.px_per_mm
    for x, y, anchor, text in (
        (width / 2, font * 1.5, "middle", layout.title),
        (font * 0.8, font * 1.6, "start", left),
        (width - font * 0.8, font * 1.6, "end", right),
        (width / 2, font * 3.0, "middle", top),
        (width / 2, height - font * 2.6, "middle", bottom),
        (width - font, height - font * 0.7, "end", told(CAUTION)),
        *(
            [(width - font, height - font * 1.75, "end", told(GROUND_NOTE))]
            if layout.ground
            else []
        ),
        (16 + bar_px / 2, height - 22, "middle", f"{figure(length / 10)} cm"),
    ):
        out.append(
            f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" fill="{ink}">'
            f"{escape(text)}</text>"
        )
    out.append(f'<path d="M16 {height - 14} h{bar_px:.1f}" stroke="{ink}" stroke-width="2"/>')
    out.append("</svg>")
    return "\n".join(out)
