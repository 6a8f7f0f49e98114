"""The labels of a picture: which parts are named in it, and where their leaders end."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from viewer.scene import anchors as anchor_finding
from viewer.scene import overlay
from viewer.scene.label_layout import MARGIN_PX, MOST_LABELS, Anchor, Label, lay_out
from viewer.scene.sight import Sight

INSET_PX = 8.0
"""Leaders end no nearer to the edge of the picture."""
ALWAYS = 1e9
"""Weight of what is written whatever the density: landmarks, and above them pins."""
CAP_WEIGHT = 4.0
"""A cut face is what a section is about: it counts so much more than its pixels."""
LEAST_SLANT = 0.15
ROOM = 0.4
"""How far round its anchor a part of which little is seen must show, in heights of the font."""


class Labels:
    """What is to be named, and the labels of the picture drawn last.

    Attributes
    ----------
    on : bool
    density : float
        0 none to 1 as many as fit.
    blank : bool
        Numbers in place of names.
    names : mapping of part id to text
    first : set of part id
        Labelled before others of their size.
    most : int
        No more than these, 0 for no limit.
    laid_out : list of Label
        In reading order.
    """

    def __init__(self):
        self.on = False
        self.density = 0.5
        self.blank = False
        self.names: dict[str, str] = {}
        self.first: frozenset[str] = frozenset()
        self.most = 0
        self.laid_out: list[Label] = []

    def copy_to(self, other: Labels) -> None:
        """Let another picture be labelled like this one."""
        other.on, other.density, other.blank = self.on, self.density, self.blank
        other.names, other.first, other.most = self.names, self.first, self.most

    def wanted(self) -> bool:
        """Return whether parts are to be named."""
        return self.on and bool(self.names)

    def lay_out(
        self,
        sight: Sight,
        font_px: int,
        *,
        notes: Sequence[tuple[np.ndarray, str]] = (),
        landmarks: Sequence[tuple[str, np.ndarray]] = (),
        cap: Iterable[Anchor] = (),
        top_px: float = 0.0,
        bottom_px: float = 0.0,
    ) -> list[Label]:
        """Return the labels of one picture.

        Parameters
        ----------
        sight : Sight
        font_px : int
        notes : sequence of ((3,) mm, text)
            Written in any case.
        landmarks : sequence of (name, (3,) or (k, 3) mm)
            Written where they are seen; not in the whole picture of a comparison.
        cap : iterable of Anchor
            Parts seen on a cut face.
        top_px, bottom_px : float
            Room that is taken above and below.
        """
        found: list[Anchor] = []
        if self.on:
            found += seen_parts(sight, self.names, self.first, font_px, cap)
        for i, (point, text) in enumerate(notes):
            (pixel,), _ = sight.project(point)
            x, y = map(float, pixel)
            found.append(Anchor(f"pin {i}", text, x, y, weight=1e3 * ALWAYS, own_words=True))
        written: set[str] = set()
        for name, points in () if sight.whole else landmarks:
            # A hall reads few words: the first of them, and of two sides one.
            if self.most and (name in written or len(written) >= self.most):
                continue
            pixel = sight.middle_seen(points)
            if pixel is not None:
                found.append(Anchor(f"mark {name}", name, *map(float, pixel), weight=ALWAYS))
                written.add(name)
        found = anchor_finding.spread_out(found, sight.size, INSET_PX)
        certain = sum(anchor.weight >= ALWAYS for anchor in found)
        density = self.density if self.on else 0.0
        if self.most:
            density = min(density, self.most / MOST_LABELS)
        least = min(1.0, certain / MOST_LABELS + 1e-6) if certain else 0.0
        return lay_out(
            found,
            sight.size,
            lambda text: overlay.text_size(text, font_px),
            max(density, least),
            self.blank,
            top_px=max(MARGIN_PX, top_px + MARGIN_PX),
            bottom_px=bottom_px,
        )


def seen_parts(
    sight: Sight,
    names: Mapping[str, str],
    first: frozenset[str],
    font_px: int,
    cap: Iterable[Anchor] = (),
) -> list[Anchor]:
    """Return an anchor for each text of which a part is seen well enough, of twins one."""
    if sight.whole:
        names = {name: text for name, text in names.items() if name in sight.points}
    on_surface = anchor_finding.anchors(
        sight.points,
        names,
        sight.project,
        sight.depth,
        sight.mm_per_px,
        sight.areas,
        lambda name, x, y: sight.shows(name, x, y, sight.points),
        lambda name, x, y: sight.stands_out(name, x, y, sight.points, ROOM * font_px),
        least_px2=0.8 * font_px**2,
        first=first,
    )
    return anchor_finding.once_each([*cap, *on_surface])


def cap_anchors(
    spots: Mapping[str, tuple[np.ndarray, float]],
    towards: np.ndarray,
    names: Mapping[str, str],
    sight: Sight,
    font_px: int,
    among: Iterable[str],
) -> list[Anchor]:
    """Return an anchor for each part that is seen well enough on a cut face.

    Parameters
    ----------
    spots : mapping of part id to ((3,) place in mm, area in mm²)
    towards : (3,) float
        Unit normal of the face, out of the half that is kept.
    among : iterable of part id
        What may hide the face.
    """
    slant = float(towards @ sight.pose.axes()[2])
    known = [name for name in spots if name in names]
    if slant < LEAST_SLANT or not known:
        return []
    pixels, _ = sight.project(np.array([spots[name][0] for name in known]))
    width, height = sight.size
    found = []
    for name, (x, y) in zip(known, pixels, strict=True):
        weight = spots[name][1] * slant / sight.mm_per_px**2
        if weight < 0.6 * font_px**2 or not (0 <= x < width and 0 <= y < height):
            continue
        if sight.shows(name, x, y, among):
            found.append(Anchor(name, names[name], float(x), float(y), CAP_WEIGHT * weight))
    return found
