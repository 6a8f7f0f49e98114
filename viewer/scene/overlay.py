"""Flat things over the picture, drawn with Pillow: labels, scale bar, side marker, texts.

Everything returns RGBA arrays (row 0 at the top), which the window shows as
one textured rectangle each and which still pictures blend in themselves.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from functools import lru_cache
from importlib.resources import as_file, files

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from viewer.scene.camera import Pose, side_letters
from viewer.scene.label_layout import Label
from viewer.state.tongue import figure, told

BASE_FONT_PX = 14
INK = {"light": (24, 24, 28, 255), "dark": (238, 238, 240, 255)}
HALO = {"light": (244, 244, 242, 215), "dark": (22, 23, 27, 215)}
BASELINE = 0.97
LEADER = {"light": (50, 50, 56, 230), "dark": (214, 214, 218, 230)}


@lru_cache(maxsize=32)
def font(size_px: int):
    """Return the font that comes with the program at a size; nothing has to be installed for it.

    It is that of the lab sheet: Pillow's own has no letter with an accent or an umlaut.
    """
    with as_file(files("viewer.print") / "fonts" / "OpenSans-Regular.ttf") as path:
        return ImageFont.truetype(path, max(int(size_px), 6))


@lru_cache(maxsize=1)
def capital_share() -> float:
    """Return the height of a capital over the letter size."""
    _, top, _, bottom = font(200).getbbox("H")
    return (bottom - top) / 200.0


@lru_cache(maxsize=4096)
def writable(text: str) -> str:
    """Return the text with characters that the font lacks spelled plainly (→ as ->)."""
    return "".join(c if _has_glyph(c) else _plain(c) for c in text)


@lru_cache(maxsize=512)
def _has_glyph(character: str) -> bool:
    if character.isspace():
        return True
    face = font(24)
    missing = bytes(face.getmask("\ufffe"))
    return bytes(face.getmask(character)) != missing


def _plain(character: str) -> str:
    if character == "→":
        return "->"
    bare = "".join(c for c in unicodedata.normalize("NFKD", character) if ord(c) < 128)
    return bare or "?"


def text_size(text: str, size_px: int) -> tuple[float, float]:
    """Return (width, height) of one line of text in px, the height alike for all texts."""
    return float(font(size_px).getlength(writable(text))), float(round(size_px * 1.25))


def canvas(width: int, height: int, theme: str):
    """Return a clear RGBA picture and the pen for it."""
    # Clear pixels take the halo's colour so that smooth edges don't fringe when blended.
    red, green, blue, _ = HALO[theme]
    image = Image.new("RGBA", (max(int(width), 1), max(int(height), 1)), (red, green, blue, 0))
    return image, ImageDraw.Draw(image)


def draw_text(draw, place, text: str, size_px: int, theme: str, anchor: str = "la") -> None:
    """Write a line of text with a thin halo of the background's colour.

    Text that hangs from its top ("a") has its baseline ``BASELINE`` letter sizes below it.
    """
    x, y = place
    if anchor[1] == "a":
        y, anchor = y + BASELINE * size_px, f"{anchor[0]}s"
    draw.text(
        (x, y),
        writable(text),
        font=font(size_px),
        fill=INK[theme],
        anchor=anchor,
        stroke_width=max(1, round(size_px / 9)),
        stroke_fill=HALO[theme],
    )


def labels_picture(
    size: tuple[int, int], labels: Sequence[Label], font_px: int, theme: str
) -> np.ndarray:
    """Return (height, width, 4) uint8 with the leaders and texts."""
    image, draw = canvas(*size, theme)
    line = max(1, round(font_px / 11))
    for label in labels:
        draw.line(label.leader, fill=HALO[theme], width=line + 2)
    for label in labels:
        draw.line(label.leader, fill=LEADER[theme], width=line)
        x, y = label.anchor
        r = 1.2 * line + 0.8
        draw.ellipse([x - r, y - r, x + r, y + r], fill=LEADER[theme], outline=HALO[theme])
    for label in labels:
        lines = label.text.split("\n")
        for k, text in enumerate(lines):
            left = label.left
            if label.side == "right" and len(lines) > 1:
                left += label.width - text_size(text, font_px)[0]
            draw_text(draw, (left, label.top + k * label.height / len(lines)), text, font_px, theme)
    return np.asarray(image)


def bar_length_mm(scale_mm: float, height_px: int, most_px: float) -> float:
    """Return the longest round length (1, 2 or 5 times a power of ten mm) that fits."""
    room = most_px * 2.0 * scale_mm / max(height_px, 1)
    if room <= 0:
        return 1.0
    power = 10.0 ** np.floor(np.log10(room))
    return float(max(step * power for step in (1, 2, 5) if step * power <= room))


def scale_bar_picture(scale_mm: float, height_px: int, font_px: int, theme: str) -> np.ndarray:
    """Return a small RGBA picture of the scale bar with its length in cm."""
    most = max(90.0, 9.0 * font_px)
    length_mm = bar_length_mm(scale_mm, height_px, most)
    length_px = length_mm * height_px / (2.0 * scale_mm)
    text = f"{figure(length_mm / 10)} cm"
    width = int(max(length_px, text_size(text, font_px)[0]) + 16)
    height = int(font_px * 1.3 + 14)
    image, draw = canvas(width, height, theme)
    y = height - 7
    x0, x1 = 8, 8 + length_px
    thick = max(2, round(font_px / 7))
    for colour, extra in ((HALO[theme], 2), (INK[theme], 0)):
        w = thick + extra
        draw.line([(x0, y), (x1, y)], fill=colour, width=w)
        for x in (x0, x1):
            draw.line([(x, y - 5), (x, y + 4)], fill=colour, width=w)
    draw_text(draw, (x0 + length_px / 2, y - 7), text, font_px, theme, anchor="ms")
    return np.asarray(image)


_LETTERS = {
    "left": "L",
    "right": "R",
    "head": "Head",
    "foot": "Foot",
    "back": "Back",
    "front": "Front",
}


def marker_size(font_px: int) -> int:
    """Return the side of the cross's picture, px: there is room for the longest word."""
    return int(2 * (font_px * 3.0 + max(text_size(told(t), font_px)[0] for t in _LETTERS.values())))


def marker_top(font_px: int) -> float:
    """Return how far over the foot of its picture the cross ends with its words, px."""
    return marker_size(font_px) / 2 + 3.5 * font_px


def marker_picture(pose: Pose, font_px: int, theme: str) -> np.ndarray:
    """Return a small RGBA cross that tells the subject's left, right, head and foot."""
    size = marker_size(font_px)
    image, draw = canvas(size, size, theme)
    centre = size / 2
    reach = font_px * 2.1
    line = max(1, round(font_px / 9))
    shown = []
    for name, (x, y) in side_letters(pose).items():
        length = float(np.hypot(x, y))
        if length > 0.3:
            shown.append((name, x, y, length))
    # Of two arms that point the same way (on the table) only the longer one is drawn.
    shown = [
        arm
        for arm in shown
        if not any(
            other[3] > arm[3] + 1e-9
            and (arm[1] * other[1] + arm[2] * other[2]) > 0.9 * arm[3] * other[3]
            for other in shown
        )
    ]
    for name, x, y, _ in shown:
        end = (centre + reach * x, centre - reach * y)
        bold = name in ("left", "right")
        for colour, extra in ((HALO[theme], 2), (LEADER[theme], 0)):
            draw.line([(centre, centre), end], fill=colour, width=line + bold + extra)
    for name, x, y, length in shown:
        # Letters stand beyond the arm's end, pushed out by their own half-size.
        out = reach * length + font_px * 0.72
        half_width = text_size(told(_LETTERS[name]), font_px)[0] / 2 if abs(x) > 0.5 * length else 0
        place = (
            centre + (out * x + np.sign(x) * max(half_width - font_px * 0.3, 0)) / length,
            centre - out * y / length,
        )
        draw_text(draw, place, told(_LETTERS[name]), font_px, theme, anchor="mm")
    towards = pose.axes()[2]
    for name, share in (
        ("left", towards[0]),
        ("right", -towards[0]),
        ("head", towards[2]),
        ("foot", -towards[2]),
    ):
        if share > 0.8:
            # This side faces the viewer: no arm can point at it.
            word = told(_LETTERS[name])
            half = max(text_size(word, font_px)[0] / 2 + 0.35 * font_px, 0.8 * font_px)
            box = [centre - half, centre - 0.8 * font_px, centre + half, centre + 0.8 * font_px]
            draw.rounded_rectangle(
                box, radius=0.7 * font_px, fill=HALO[theme], outline=LEADER[theme], width=line
            )
            draw_text(draw, (centre, centre), word, font_px, theme, anchor="mm")
    return np.asarray(image)


def wrapped(text: str, font_px: int, width_px: float) -> list[str]:
    """Return a text as lines that are no wider than given; a longer word keeps its own line."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_size(longer, font_px)[0] <= width_px:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def fitting_px(text: str, font_px: int, width_px: float) -> int:
    """Return the largest letter size, no larger than given, at which a line has this width."""
    width = text_size(text, font_px)[0]
    return font_px if width <= width_px else max(int(font_px * width_px / width), 6)


def text_picture(
    lines: Sequence[str], font_px: int, theme: str, width_px: float = np.inf
) -> np.ndarray:
    """Return a small RGBA picture of some lines of text, left-aligned, wrapped to a width."""
    lines = [part for line in lines for part in wrapped(line, font_px, width_px - 8)]
    width = max((text_size(line, font_px)[0] for line in lines), default=1.0)
    row = round(font_px * 1.35)
    image, draw = canvas(int(width + 8), row * max(len(lines), 1) + 4, theme)
    for i, line in enumerate(lines):
        draw_text(draw, (4, 2 + i * row), line, font_px, theme)
    return np.asarray(image)


def blended(picture: np.ndarray, layer: np.ndarray, left: int, top: int) -> np.ndarray:
    """Return the RGB picture with an RGBA layer laid over it at a place (clipped to it)."""
    height, width = picture.shape[:2]
    y0, x0 = max(top, 0), max(left, 0)
    y1, x1 = min(top + layer.shape[0], height), min(left + layer.shape[1], width)
    if y1 <= y0 or x1 <= x0:
        return picture
    part = layer[y0 - top : y1 - top, x0 - left : x1 - left].astype(np.float32)
    alpha = part[..., 3:] / 255.0
    under = picture[y0:y1, x0:x1, :3].astype(np.float32)
    picture = picture.copy()
    picture[y0:y1, x0:x1, :3] = np.rint(under + alpha * (part[..., :3] - under)).astype(np.uint8)
    return picture
