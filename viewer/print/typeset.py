"""Type, rules and boxes of the printed sheet: an open typeface, black ink, no meaning by colour."""

from __future__ import annotations

import io
import re
from collections.abc import Sequence
from functools import lru_cache
from html import escape
from importlib.resources import as_file, files

import numpy as np
from PIL import Image
from reportlab.lib.colors import black, white
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.lib.utils import ImageReader
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import Flowable, Paragraph

from viewer.print.sheet_pictures import DrawnLine, StepPicture
from viewer.scene.label_layout import LINE_GAP_PX, Anchor, lay_out

FACE = "OpenSans"
BODY_PT = 10.0
SMALL_PT = 8.5
LABEL_PT = 8.2
BLANK_ROW_PT = 13.0
JPEG_QUALITY = 88
_ABBREVIATION = re.compile(r"\b([A-Z][a-z]{0,3}\.) ")
"""As in "M. trapezius", "Nn. clunium", "Proc. mastoideus"."""


@lru_cache(maxsize=1)
def register_fonts() -> None:
    """Make the shipped typeface known to the PDF writer."""
    for cut in ("Regular", "Bold", "Italic"):
        with as_file(files("viewer.print") / "fonts" / f"OpenSans-{cut}.ttf") as path:
            pdfmetrics.registerFont(TTFont(f"{FACE}-{cut}", str(path)))
    pdfmetrics.registerFontFamily(
        FACE,
        normal=f"{FACE}-Regular",
        bold=f"{FACE}-Bold",
        italic=f"{FACE}-Italic",
        boldItalic=f"{FACE}-Bold",
    )


def style(name: str = "body", **changes: object) -> ParagraphStyle:
    """Return a style: body, small, title, heading, step, cell or note."""
    register_fonts()
    base = {"fontName": f"{FACE}-Regular", "fontSize": BODY_PT, "leading": BODY_PT * 1.3}
    bold = f"{FACE}-Bold"
    kinds: dict[str, dict[str, object]] = {
        "body": {},
        "small": {"fontSize": SMALL_PT, "leading": SMALL_PT * 1.28},
        "title": {"fontName": bold, "fontSize": 20, "leading": 25, "spaceAfter": 2},
        "heading": {
            "fontName": bold,
            "fontSize": 13.5,
            "leading": 18,
            "spaceBefore": 9,
            "spaceAfter": 3,
            "keepWithNext": 1,
        },
        "step": {"fontName": bold, "fontSize": 12.5, "leading": 16},
        "cell": {"fontSize": 9, "leading": 11.6},
        "note": {"fontSize": SMALL_PT, "leading": SMALL_PT * 1.28, "fontName": f"{FACE}-Italic"},
    }
    return ParagraphStyle(name, **{**base, **kinds[name], **changes})


def words(text: str, kind: str = "body", **changes: object) -> Paragraph:
    """Return plain text as a paragraph."""
    return Paragraph(escape(text, quote=False), style(kind, **changes))


def rich(markup: str, kind: str = "body", **changes: object) -> Paragraph:
    """Return text that already holds <b>, <i>, <super> as a paragraph."""
    return Paragraph(markup, style(kind, **changes))


def label_width(text: str) -> float:
    """Return the width of words beside a picture, points, as wide as they can be (bold)."""
    return pdfmetrics.stringWidth(text, f"{FACE}-Bold", LABEL_PT)


class TickBox(Flowable):
    """An empty square to tick, with a letter after it ("L")."""

    def __init__(self, letter: str = "", size_mm: float = 4.2) -> None:
        super().__init__()
        self.letter = letter
        self.side = size_mm * mm
        self.width = self.side + (10 if letter else 0)
        self.height = self.side

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas = self.canv
        canvas.setLineWidth(0.9)
        canvas.rect(0, 0, self.side, self.side)
        if self.letter:
            canvas.setFont(f"{FACE}-Bold", 9)
            canvas.drawString(self.side + 2, self.side / 2 - 3.2, self.letter)


class Boxes(Flowable):
    """Tick boxes in a row, one a letter."""

    def __init__(self, letters: Sequence[str]) -> None:
        super().__init__()
        self.boxes = [TickBox(letter) for letter in letters]
        self.width = sum(box.width for box in self.boxes) + 4 * (len(self.boxes) - 1)
        self.height = max(box.height for box in self.boxes)

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        x = 0.0
        for box in self.boxes:
            box.drawOn(self.canv, x, 0)
            x += box.width + 4


class Plate(Flowable):
    """A picture with leaders to names, or to numbers and lines to write on, at both sides.

    Parameters
    ----------
    picture : StepPicture
    width, height : float
        Of the whole flowable, points.
    column : float
        Room for writing at each side, points; 0 for none.
    blank : bool
        Numbers in place of names.
    start : int
        First number in blank mode.
    most : int
        How many labels at most.
    """

    def __init__(
        self,
        picture: StepPicture,
        width: float,
        height: float,
        column: float = 0.0,
        blank: bool = False,
        start: int = 1,
        most: int = 12,
    ) -> None:
        super().__init__()
        register_fonts()
        self.picture = picture
        self.width, self.height, self.column, self.blank = width, height, column, blank
        self.labels = self._laid_out(most) if column else []
        self.answers = [(start + n, label.id) for n, label in enumerate(self.labels)]
        self.start = start

    def _laid_out(self, most: int):
        """Labels in points, y down; the id of each is its text."""
        rows, columns = self.picture.pixels.shape[:2]
        sx, sy = (self.width - 2 * self.column) / columns, self.height / rows
        anchors = [
            Anchor(a.text, self._shown(a.text), self.column + a.x * sx, a.y * sy, a.weight)
            for a in self.picture.anchors
        ]
        heaviest = sorted(anchors, key=lambda a: -a.weight)[:most]
        self._most_lines = max((len(self._lines_of(a.text)) for a in heaviest), default=1)
        return lay_out(
            heaviest,
            (self.width, self.height),
            self._measure,
            1.0,
            False,
            top_px=2,
            bottom_px=2,
        )

    def _shown(self, text: str) -> str:
        return "00 ____________" if self.blank else text

    def _lines_of(self, text: str) -> list[str]:
        """Break a name into lines that fit the column; an abbreviation stays with its word."""
        room = self.column - 16
        bound = _ABBREVIATION.sub(lambda found: f"{found[1]}\u00a0", text)
        words = [
            piece
            for word in bound.split(" ")
            for piece in ([word] if label_width(word) <= room else word.split("\u00a0"))
        ]
        lines = [""]
        for word in words:
            longer = f"{lines[-1]} {word}".strip()
            if label_width(longer) <= room or not lines[-1]:
                lines[-1] = longer
            else:
                lines.append(word)
        return lines

    def _measure(self, text: str) -> tuple[float, float]:
        if text == "Ag":
            # Handwriting needs more room than print.
            return 10.0, BLANK_ROW_PT if self.blank else self._most_lines * LABEL_PT * 1.1
        widest = max(map(label_width, self._lines_of(text)))
        return min(widest, self.column - 16), LABEL_PT * 1.1 * len(self._lines_of(text))

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas = self.canv
        wide = self.width - 2 * self.column
        canvas.drawImage(jpeg(self.picture.pixels), self.column, 0, wide, self.height)
        canvas.setLineWidth(0.4)
        canvas.rect(self.column, 0, wide, self.height)
        canvas.saveState()
        clip = canvas.beginPath()
        clip.rect(self.column, 0, wide, self.height)
        canvas.clipPath(clip, stroke=0)
        rows, columns = self.picture.pixels.shape[:2]
        for line in self.picture.lines:
            places = line.points * [wide / columns, self.height / rows]
            draw_line(
                canvas,
                line.kind,
                [(self.column + x, self.height - y) for x, y in places],
            )
        canvas.restoreState()
        for number, label in enumerate(self.labels, start=self.start):
            self._draw_label(canvas, number, label)

    def _draw_label(self, canvas, number: int, label) -> None:
        left = label.side == "left"
        row = self._measure("Ag")[1] + LINE_GAP_PX
        middle = self.height - (label.top + row / 2)
        edge = self.column - 8 if left else self.width - self.column + 8
        anchor = (label.anchor[0], self.height - label.anchor[1])
        bend = (self.column if left else self.width - self.column, middle)
        for width, ink in ((1.9, white), (0.6, black)):
            canvas.setLineWidth(width)
            canvas.setStrokeColor(ink)
            path = canvas.beginPath()
            path.moveTo(edge, middle)
            path.lineTo(*bend)
            path.lineTo(*anchor)
            canvas.drawPath(path)
        canvas.setStrokeColor(white)
        canvas.setFillColor(black)
        canvas.setLineWidth(0.6)
        canvas.circle(*anchor, 1.5, fill=1)
        canvas.setStrokeColor(black)
        if self.blank:
            canvas.setFont(f"{FACE}-Bold", LABEL_PT + 1)
            start = 0 if left else self.width - self.column + 11
            canvas.drawString(start, middle - 3, str(number))
            canvas.setLineWidth(0.6)
            # All lines begin where the widest number leaves room.
            canvas.line(start + 21, middle - 4, start + self.column - 12, middle - 4)
            return
        kept = label.id in self.picture.kept
        face = f"{FACE}-{'Bold' if kept else 'Regular'}"
        lines = self._lines_of(label.id)
        # A single word can be wider than the column; the page's margin stays free all the same.
        widest = max(pdfmetrics.stringWidth(line, face, LABEL_PT) for line in lines)
        canvas.setFont(face, LABEL_PT * min(1.0, (self.column - 11) / widest))
        top = middle + LABEL_PT * 1.1 * (len(lines) - 1) / 2 - LABEL_PT * 0.34
        for row, line in enumerate(lines):
            y = top - row * LABEL_PT * 1.1
            if left:
                canvas.drawRightString(edge - 3, y, line)
            else:
                canvas.drawString(edge + 3, y, line)


def draw_line(canvas, kind: str, points: Sequence[tuple[float, float]]) -> None:
    """Draw a line of cut (long dashes) or a hinge (two thin lines), black on a white casing."""
    path = canvas.beginPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    canvas.saveState()
    canvas.setLineCap(1 if kind == "hinge" else 0)
    canvas.setLineJoin(1)
    if kind == "cut":
        passes = ((3.2, white, ()), (1.7, black, (6, 3.2)))
    else:
        passes = ((4.0, black, ()), (2.4, white, ()))
    for width, ink, dash in passes:
        canvas.setStrokeColor(ink)
        canvas.setLineWidth(width)
        canvas.setDash(list(dash))
        canvas.drawPath(path)
    canvas.restoreState()


class LineKey(Flowable):
    """What the lines over a picture mean."""

    def __init__(self, lines: Sequence[DrawnLine], names: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.names = [
            (kind, text) for kind, text in names if any(line.kind == kind for line in lines)
        ]
        self.width, self.height = 150.0, 11.0

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        x = 0.0
        for kind, text in self.names:
            draw_line(self.canv, kind, [(x, 4), (x + 26, 4)])
            self.canv.setFont(f"{FACE}-Regular", SMALL_PT)
            self.canv.drawString(x + 32, 1, text)
            x += 42 + pdfmetrics.stringWidth(text, f"{FACE}-Regular", SMALL_PT)


def jpeg(pixels: np.ndarray) -> ImageReader:
    """Return pixels as a picture that goes into the file compressed."""
    buffer = io.BytesIO()
    Image.fromarray(pixels).save(buffer, "JPEG", quality=JPEG_QUALITY)
    buffer.seek(0)
    return ImageReader(buffer)
