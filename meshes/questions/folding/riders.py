"""Nerves and vessels that ride on a flap, still joined to their staying end."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from scipy.spatial import cKDTree

from meshes.questions.folding.control_sheet import ControlSheet

CLINGS_MM = 5.0
"""A tube whose middle lies so near to the flap's face clings there."""

LETS_GO_MM = 14.0


@dataclass(frozen=True, slots=True, eq=False)
class Rider:
    """Points of a tube: carried by the flap where it clings, staying where it comes from.

    Attributes
    ----------
    carried : Carried or AsideCarried
    rest : (n, 3) float
        mm.
    share : (n,) float
        1 rides, 0 stays.
    line, line_share : (k, 3) and (k,) float
        The tube's middle line and the same share along it.
    flap : Flap or AsideFlap
    """

    carried: Any
    rest: np.ndarray
    share: np.ndarray
    line: np.ndarray
    line_share: np.ndarray
    flap: Any

    def place(self, pose: Any) -> np.ndarray:
        """Return the points (n, 3) for a pose of the flap, mm."""
        return self.rest + self.share[:, None] * (self.carried.place(pose) - self.rest)

    def for_points(self, points: np.ndarray) -> Rider:
        """Return a rider of other points of the same tube."""
        return replace(
            self,
            carried=self.flap.carried(points),
            rest=points,
            share=_along(self.line, self.line_share, points),
        )


def rider_of(flap: Any, vertices: np.ndarray, lines: np.ndarray) -> Rider:
    """Prepare a tube to ride on a flap.

    Parameters
    ----------
    flap : Flap or AsideFlap
    vertices : (n, 3) float
        mm.
    lines : (k, m, 3) float
        Middle lines of the tube and its branches, from the end that stays.
    """
    dense, shares = [], []
    for line in np.asarray(lines, float):
        s = np.concatenate([[0.0], np.linalg.norm(np.diff(line, axis=0), axis=1).cumsum()])
        at = np.linspace(0, s[-1], max(int(s[-1] / 1.5), 4))
        points = np.stack([np.interp(at, s, line[:, c]) for c in range(3)], axis=1)
        dense.append(points)
        shares.append(_riding_share(flap.sheet, points, at))
    line, share = np.concatenate(dense), np.concatenate(shares)
    vertices = np.asarray(vertices, float)
    return Rider(flap.carried(vertices), vertices, _along(line, share, vertices), line, share, flap)


def _riding_share(sheet: ControlSheet, points: np.ndarray, at: np.ndarray) -> np.ndarray:
    """Return how far each point of a middle line follows the sheet, rising from the root."""
    nodes = sheet.mid.reshape(-1, 3)
    distance, near = cKDTree(nodes).query(points)
    half_step = 0.5 * sheet.step_mm
    away = np.sqrt(np.maximum(distance**2 - half_step**2, 0.0)) - sheet.half_mm.ravel()[near]
    clings = away < CLINGS_MM
    if not clings.any():
        return np.zeros(len(points))
    first = int(np.argmax(clings))
    last = len(points) - 1 - int(np.argmax(clings[::-1]))
    share = np.ones(len(points))
    # From the root to the place where it joins the flap it pays out its slack.
    share[:first] = _smooth(at[:first] / max(at[first], 1e-6))
    beyond = at[last + 1 :] - at[last]
    if len(beyond):
        # A tip past the flap's rim stays with the flap when it is short.
        share[last + 1 :] = 1.0 if beyond[-1] < LETS_GO_MM else _smooth(1 - beyond / beyond[-1])
    return share


def _smooth(t: np.ndarray) -> np.ndarray:
    t = np.clip(t, 0.0, 1.0)
    return t * t * (3 - 2 * t)


def _along(line: np.ndarray, share: np.ndarray, points: np.ndarray) -> np.ndarray:
    return share[cKDTree(line).query(points)[1]]
