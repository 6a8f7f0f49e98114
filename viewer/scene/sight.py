"""One picture of the model as labels see it: what is shown, where, and what hides what."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass

import numpy as np

from viewer.scene.anchors import DEPTH_SLACK_MM
from viewer.scene.camera import Pose, projected, sight_line

LEAST_SHOWN = 0.375
"""Of the places round an anchor where the part lies; a slit shows two in eight."""


@dataclass(frozen=True, slots=True)
class Sight:
    """A picture that is drawn, or about to be, under one pose.

    Attributes
    ----------
    pose : Pose
    size : (width, height)
        Of this picture alone, px.
    depth : (h, w) float
        Distance from the eye's plane of what each pixel shows, mm; infinite where nothing is.
    points : mapping of part id to (n, 3) float
        Vertices of the parts shown solid, as they lie in this picture, mm.
    areas : mapping of part id to float
        Surface of the same parts, mm².
    first_hit : callable
        (origin, direction, ids) to (id, point, normal) of what a sight line meets, or None.
    whole : bool
        The uncut picture of a comparison: no section and no landmark belongs to it.
    """

    pose: Pose
    size: tuple[int, int]
    depth: np.ndarray
    points: Mapping[str, np.ndarray]
    areas: Mapping[str, float]
    first_hit: Callable
    whole: bool = False

    @property
    def mm_per_px(self) -> float:
        """Return the size of a pixel at the model, mm."""
        return 2.0 * self.pose.scale_mm / self.size[1]

    def project(self, points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Return ((n, 2) pixels, (n,) depth mm) of points (n, 3) mm."""
        return projected(self.pose, points, self.size)

    def shows(self, name: str, x: float, y: float, among: Collection[str]) -> bool:
        """Return whether a part is what is met at a pixel, of the parts named."""
        hit = self.first_hit(*sight_line(self.pose, x, y, self.size), among)
        return hit is not None and hit[0] == name

    def middle_seen(self, points: np.ndarray) -> np.ndarray | None:
        """Return the pixel (2,) of a mark, (3,) or (k, 3) mm: of its places that are seen the one
        nearest to its middle, or None.

        Asked of a sight line and not of the depths, in which marks lie before the skin.
        """
        places = np.asarray(points, float).reshape(-1, 3)
        pixels, _ = self.project(places)
        width, height = self.size
        inside = ((pixels > 0) & (pixels < (width, height))).all(axis=1)
        for i in sorted(np.flatnonzero(inside), key=lambda i: abs(2 * i - len(places) + 1)):
            origin, way = sight_line(self.pose, *pixels[i], self.size)
            hit = self.first_hit(origin, way, self.points)
            if hit is None or float((hit[1] - places[i]) @ way) > -DEPTH_SLACK_MM:
                return pixels[i]
        return None

    def stands_out(
        self, name: str, x: float, y: float, among: Collection[str], radius_px: float
    ) -> bool:
        """Return whether a part shows round a pixel about as widely as it lies there.

        A nerve is as narrow as it is; a muscle seen through the slit between two others is not
        what a reader finds at the end of a leader.
        """
        turn = np.arange(8) * (np.pi / 4)
        around = np.stack([x + radius_px * np.cos(turn), y + radius_px * np.sin(turn)], axis=1)
        lies = [p for p in around if self.shows(name, *p, (name,))]
        shown = sum(self.shows(name, *p, among) for p in lies)
        return shown >= LEAST_SHOWN * len(lies)
