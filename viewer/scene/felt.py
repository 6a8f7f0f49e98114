"""Lays what is felt through the skin onto the surface that is shown.

A landmark is a place on bone. Its mark stands where the finger lies: outward of it, on the
first of the shown parts that a line from outside meets. With the skin taken away that is the
layer that lies open there, and in the end the bone itself.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

NEAR = 40
"""So many points of the skin round the nearest one say which way is out: one alone would lean
with the net of the skin."""
MIDLINE_MM = 2.0
"""A place so near to the midline is felt in it."""
START_MM = 40.0
"""The line begins so far outside the skin, beyond flaps that lie folded on it."""
BELOW_MM = 3.0
"""A face may lie so far under the landmark and still be that of its bone."""
CALMED = 60
"""Rounds of taking the mean of each place and its two neighbours."""
ALONG_MM = 6.0
"""Distance of the places at which a border is laid onto the surface."""

Cast = Callable[[np.ndarray, np.ndarray], tuple[str, np.ndarray, np.ndarray] | None]


class Felt:
    """Knows the way out from every place near the skin.

    Parameters
    ----------
    skin : (n, 3) float
        Points of the skin, mm LPS.
    """

    def __init__(self, skin: np.ndarray) -> None:
        from scipy.spatial import cKDTree

        self._skin = np.asarray(skin, float)
        self._tree = cKDTree(self._skin)

    def outward(self, place: np.ndarray) -> tuple[np.ndarray, float]:
        """Return the unit way (3,) from a place to the skin, and how far that is, mm."""
        _, near = self._tree.query(place, min(NEAR, len(self._skin)))
        away = self._skin[np.atleast_1d(near)].mean(axis=0) - place
        if abs(place[0]) < MIDLINE_MM:
            # The halves are mirrored, the net of the skin not quite.
            away[0] = 0.0
        far = float(np.linalg.norm(away))
        return (away / far if far > 1e-6 else np.array([0.0, 1.0, 0.0])), far

    def laid(self, mark: np.ndarray, cast: Cast) -> np.ndarray:
        """Return a mark, (3,) or (k, 3) mm, on the surface.

        Parameters
        ----------
        mark : (3,) or (k, 3) float
            A place on bone, or a border.
        cast : callable
            Takes origin and direction, (3,) each, and returns what such a line meets first:
            (part id, place, normal) or None.
        """
        places = np.asarray(mark, float)
        if places.ndim == 2:
            # Here, not above: what the window's start does without.
            from meshes.questions.plan_course import evenly

            places = evenly(places, ALONG_MM)
            ways = [self.outward(place) for place in places]
            outs = _calmed(np.array([out for out, _ in ways]))
            return np.array(
                [
                    _laid(place, out, far, cast)
                    for place, out, (_, far) in zip(places, outs, ways, strict=True)
                ]
            )
        return _laid(places, *self.outward(places), cast)


def _laid(place: np.ndarray, out: np.ndarray, far: float, cast: Cast) -> np.ndarray:
    """Return what a line from outside meets over a place, or the place itself."""
    hit = cast(place + (far + START_MM) * out, -out)
    if hit is None or float((hit[1] - place) @ out) < -BELOW_MM:
        return place
    return np.asarray(hit[1], float)


def _calmed(ways: np.ndarray) -> np.ndarray:
    """Return unit ways (k, 3) along a border without their jumps from place to place."""
    for _ in range(CALMED):
        padded = np.concatenate([ways[:1], ways, ways[-1:]])
        ways = padded[:-2] + padded[1:-1] + padded[2:]
        ways /= np.linalg.norm(ways, axis=1)[:, None]
    return ways
