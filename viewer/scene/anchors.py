"""Which parts are seen in a finished picture, and where a leader should touch them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

import numpy as np

from viewer.scene.label_layout import Anchor

DEPTH_SLACK_MM = 2.0
SURE_SLACK_MM = 0.4
"""Less than the sheets are thick that may cover a point."""
LEAST_VERTICES = 3
TRIES = 6
LITTLE_SEEN = 0.25
"""Share of a part's vertices; about half of a part that nothing covers faces the eye."""
FIRST_WEIGHT = 12.0


def seen(
    pixels: np.ndarray,
    depth_mm: np.ndarray,
    picture_depth_mm: np.ndarray,
    slack_mm: float = DEPTH_SLACK_MM,
) -> np.ndarray:
    """Return which points lie on what the picture shows at their pixel.

    Parameters
    ----------
    pixels : (n, 2) float
        x right, y down.
    depth_mm : (n,) float
        Distance from the eye's plane.
    picture_depth_mm : (h, w) float
        The same for each pixel of the picture.
    slack_mm : float
        How much deeper than the picture a point may lie.
    """
    height, width = picture_depth_mm.shape
    column = np.floor(pixels[:, 0]).astype(int)
    row = np.floor(pixels[:, 1]).astype(int)
    inside = (column >= 0) & (column < width) & (row >= 0) & (row < height)
    answer = np.zeros(len(pixels), bool)
    at = picture_depth_mm[row[inside], column[inside]]
    answer[inside] = depth_mm[inside] <= at + slack_mm
    return answer


def anchors(
    points: Mapping[str, np.ndarray],
    names: Mapping[str, str],
    project,
    picture_depth_mm: np.ndarray,
    mm_per_px: float,
    areas_mm2: Mapping[str, float] | None = None,
    confirm: Callable[[str, float, float], bool] | None = None,
    roomy: Callable[[str, float, float], bool] | None = None,
    most: int = 90,
    least_px2: float = 150.0,
    first: frozenset[str] = frozenset(),
) -> list[Anchor]:
    """Return an anchor for each part of which enough is seen, the best seen first.

    Parameters
    ----------
    points : mapping of id to (n, 3) float
        Vertices of the shown parts (a coarse mesh will do).
    project : callable
        (n, 3) points to ((n, 2) pixels, (n,) depth mm).
    areas_mm2 : mapping of id to float, optional
        Surface area, which with the seen share of vertices gives the weight.
    confirm : callable, optional
        (id, x, y) to whether the part is what is seen at that pixel. Depths alone
        can't tell parts that lie a millimetre apart.
    roomy : callable, optional
        (id, x, y) to whether a reader can tell there what the leader points at. Asked only of
        parts of which little is seen.
    most : int
        How many anchors are wanted at most.
    least_px2 : float
        Parts of which less is seen get none: a sliver in a gap can't be told from its neighbour.
    first : set of str
        Ids that count as if much more of them were seen.
    """
    ids = [name for name in points if name in names]
    if not ids:
        return []
    pixels, depth = project(np.concatenate([points[name] for name in ids]))
    visible = seen(pixels, depth, picture_depth_mm)
    surely = seen(pixels, depth, picture_depth_mm, SURE_SLACK_MM)
    candidates: list[tuple[float, str, np.ndarray, bool]] = []
    start = 0
    for name in ids:
        stop = start + len(points[name])
        mask = visible[start:stop]
        if mask.sum() >= LEAST_VERTICES:
            here = pixels[start:stop][mask]
            # The seen vertex nearest the middle of what is seen lies best on the part.
            away = ((here - np.median(here, axis=0)) ** 2).sum(axis=1)
            area = (areas_mm2 or {}).get(name, float(len(mask)))
            weight = float(mask.mean() * area / max(mm_per_px, 1e-6) ** 2)
            if weight < least_px2:
                start = stop
                continue
            if name in first:
                weight *= FIRST_WEIGHT
            order = np.argsort(away)
            step = max(len(order) // TRIES, 1)
            little = float(surely[start:stop].mean()) < LITTLE_SEEN
            candidates.append((weight, name, here[order[::step][:TRIES]], little))
        start = stop
    candidates.sort(key=lambda c: (-c[0], c[1]))
    chosen: list[Anchor] = []
    for weight, name, places, little in candidates:
        for x, y in places.astype(float).tolist():
            if confirm is not None and not confirm(name, x, y):
                continue
            if little and roomy is not None and not roomy(name, x, y):
                continue
            chosen.append(Anchor(name, names[name], x, y, weight))
            break
        if len(chosen) >= most:
            break
    return chosen


def once_each(chosen: Iterable[Anchor]) -> list[Anchor]:
    """Return one anchor for each text: of twins, the one on the emptier half of the picture.

    Of twins that are seen very unequally (one is half covered) the better seen one is kept.
    """
    by_text: dict[str, list[Anchor]] = {}
    for anchor in sorted(chosen, key=lambda a: (-a.weight, a.id)):
        by_text.setdefault(anchor.text, []).append(anchor)
    kept: list[Anchor] = []
    if not by_text:
        return kept
    middle = float(np.mean([a.x for group in by_text.values() for a in group]))
    left = 0
    for group in by_text.values():
        equals = [a for a in group if a.weight > 0.6 * group[0].weight]
        lefts = [a for a in equals if a.x < middle]
        rights = [a for a in equals if a.x >= middle]
        wanted = lefts if 2 * left <= len(kept) else rights
        choice = (wanted or equals)[0]
        left += choice.x < middle
        kept.append(choice)
    return kept


def spread_out(chosen: Iterable[Anchor], size: tuple[int, int], inset_px: float) -> list[Anchor]:
    """Return the anchors that lie inside the picture, away from its edge."""
    width, height = size
    return [
        a
        for a in chosen
        if inset_px < a.x < width - inset_px and inset_px < a.y < height - inset_px
    ]
