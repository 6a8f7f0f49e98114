"""Where labels stand: two columns at the sides, none overlapping, no leader through a text.

Pure arithmetic on pixels (x right, y down), so that it can be tested without
drawing anything.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

MOST_LABELS = 48
LINE_GAP_PX = 4.0
MARGIN_PX = 10.0
LEADER_GAP_PX = 6.0


@dataclass(frozen=True, slots=True)
class Anchor:
    """Something that could be labelled.

    Attributes
    ----------
    id : str
    text : str
    x, y : float
        Pixel at which the leader ends, y down.
    weight : float
        How much of it is seen (pixels): heavier ones are kept first.
    own_words : bool
        Written by the user (a pin, a measure): shown in words in blank mode too.
    """

    id: str
    text: str
    x: float
    y: float
    weight: float = 1.0
    own_words: bool = False


@dataclass(frozen=True, slots=True)
class Label:
    """A placed label: its box, and the leader from the box over a bend to the anchor.

    All leaders of a column bend at the same x, beyond its longest text, so that
    none runs through another label.
    """

    id: str
    text: str
    left: float
    top: float
    width: float
    height: float
    anchor: tuple[float, float]
    side: str
    bend_x: float

    @property
    def bend(self) -> tuple[float, float]:
        """Return where the leader turns towards the anchor."""
        return (self.bend_x, self.top + self.height / 2)

    @property
    def leader(self) -> list[tuple[float, float]]:
        """Return the leader's corners from the text to the anchor."""
        return [self.elbow, self.bend, self.anchor]

    @property
    def elbow(self) -> tuple[float, float]:
        """Return where the leader leaves the text."""
        middle = self.top + self.height / 2
        if self.side == "left":
            return (self.left + self.width + LEADER_GAP_PX, middle)
        return (self.left - LEADER_GAP_PX, middle)


def wanted_count(density: float) -> int:
    """Return how many labels a density of 0..1 asks for."""
    if not 0.0 <= density <= 1.0:
        raise ValueError(f"label density must lie in 0..1, got {density}")
    return round(density * MOST_LABELS)


def lay_out(
    anchors: Sequence[Anchor],
    size: tuple[int, int],
    measure: Callable[[str], tuple[float, float]],
    density: float = 0.5,
    blank: bool = False,
    top_px: float = MARGIN_PX,
    bottom_px: float = MARGIN_PX,
) -> list[Label]:
    """Place labels in a left and a right column.

    Parameters
    ----------
    anchors : sequence of Anchor
        Only of what is seen.
    size : (width, height)
        Of the picture, px.
    measure : callable
        Text to (width, height) in px.
    density : float
        0 none to 1 as many as fit (at most ``MOST_LABELS``).
    blank : bool
        Numbers in reading order in place of names, for self-test.

    Returns
    -------
    list of Label
        In reading order: left column from the top, then right.
    """
    width, height = size
    count = wanted_count(density)
    heaviest = sorted(anchors, key=lambda a: (-a.weight, a.id))
    room = width * 0.46
    chosen: list[Anchor] = []
    for anchor in heaviest:
        if len(chosen) == count:
            break
        if measure(_shown_text(anchor, 88, blank))[0] + MARGIN_PX < room:
            chosen.append(anchor)
    # A leader that starts under a column would run through its texts: leave those out.
    for _ in range(len(chosen) + 1):
        columns = _split(chosen, width)
        inside = {
            side: max((measure(_shown_text(a, 88, blank))[0] for a in column), default=0.0)
            + MARGIN_PX
            + 2 * LEADER_GAP_PX
            for side, column in columns.items()
        }
        kept = [
            a for a in columns["left"] if a.x > inside["left"] and a.x < width - inside["right"]
        ] + [a for a in columns["right"] if a.x < width - inside["right"] and a.x > inside["left"]]
        if len(kept) == len(chosen):
            break
        chosen = [a for a in chosen if a in kept]
    columns = _split(chosen, width)
    labels: list[Label] = []
    number = 1
    for side in ("left", "right"):
        column = columns[side]
        # All rows of a column are as high as its highest text, which may have two lines.
        texts = [_shown_text(a, 88, blank) for a in column]
        row = max(measure(text)[1] for text in ("Ag", *texts)) + LINE_GAP_PX
        fits = max(int((height - top_px - bottom_px) // row), 0)
        if len(column) > fits:
            keep = set(sorted(column, key=lambda a: (-a.weight, a.id))[:fits])
            column = [a for a in column if a in keep]
        widest = max((measure(_shown_text(a, 88, blank))[0] for a in column), default=0.0)
        reach = MARGIN_PX + widest + LEADER_GAP_PX
        bend_x = reach if side == "left" else width - reach
        column = _uncrossed(column, bend_x, top_px, height - bottom_px, row)
        tops = _spread([a.y - row / 2 for a in column], row, top_px, height - bottom_px)
        for anchor, top in zip(column, tops, strict=True):
            text = _shown_text(anchor, number, blank)
            number += not anchor.own_words
            text_width, text_height = measure(text)
            left = MARGIN_PX if side == "left" else width - MARGIN_PX - text_width
            top += (row - LINE_GAP_PX - text_height) / 2
            labels.append(
                Label(
                    anchor.id,
                    text,
                    float(left),
                    float(top),
                    float(text_width),
                    float(text_height),
                    (anchor.x, anchor.y),
                    side,
                    float(bend_x),
                )
            )
    return labels


def _shown_text(anchor: Anchor, number: int, blank: bool) -> str:
    return f"{number}  __________" if blank and not anchor.own_words else anchor.text


def _split(anchors: Sequence[Anchor], width: float) -> dict[str, list[Anchor]]:
    """Return the anchors by the column they go to, halves of a full picture kept even."""
    ordered = sorted(anchors, key=lambda a: (a.x, a.id))
    left = [a for a in ordered if a.x < width / 2]
    right = [a for a in ordered if a.x >= width / 2]
    half = (len(ordered) + 3) // 2
    if len(left) > half + 2:
        left, right = ordered[: half + 2], ordered[half + 2 :]
    elif len(right) > half + 2:
        cut = len(ordered) - half - 2
        left, right = ordered[:cut], ordered[cut:]
    return {
        "left": sorted(left, key=lambda a: (a.y, a.id)),
        "right": sorted(right, key=lambda a: (a.y, a.id)),
    }


def _spread(wanted: Sequence[float], row: float, low: float, high: float) -> list[float]:
    """Return tops at least a row apart, as near as can be to the wanted ones (in order).

    Neighbours that are too close are pooled and share their mean shift, which
    is the least-squares answer.
    """
    blocks: list[list[float]] = []  # sum of (wanted - offset), count
    for i, top in enumerate(wanted):
        blocks.append([top - i * row, 1.0])
        while len(blocks) > 1 and blocks[-2][0] / blocks[-2][1] > blocks[-1][0] / blocks[-1][1]:
            total, n = blocks.pop()
            blocks[-1][0] += total
            blocks[-1][1] += n
    limit = high - row * len(wanted)
    tops: list[float] = []
    for total, n in blocks:
        base = float(np.clip(total / n, low, max(limit, low)))
        for _ in range(int(n)):
            tops.append(base + len(tops) * row)
    return tops


def _uncrossed(column, bend_x, low, high, row) -> list[Anchor]:
    """Return the column reordered until no two leaders cross (or after many rounds)."""
    column = list(column)
    for _ in range(40):
        tops = _spread([a.y - row / 2 for a in column], row, low, high)
        swapped = False
        for i in range(len(column)):
            for j in range(i + 1, len(column)):
                a, b = column[i], column[j]
                if segments_cross(
                    (a.x, a.y),
                    (bend_x, tops[i] + row / 2),
                    (b.x, b.y),
                    (bend_x, tops[j] + row / 2),
                ):
                    column[i], column[j] = b, a
                    swapped = True
        if not swapped:
            break
    return column


def segments_cross(a, b, c, d) -> bool:
    """Return whether the segments a-b and c-d cross in their insides."""

    def turn(p, q, r) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0
