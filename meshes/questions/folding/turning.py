"""The way of a flap from its place to where it is laid, as a row of poses of its grid."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.questions.folding.cloth import Links, distances, march, settle
from meshes.questions.folding.control_sheet import ControlSheet
from meshes.questions.folding.ground import Ground
from meshes.questions.folding.measures import area

STEP_DEG = 5.0
SETTLING_POSES = 18
PULL_MM, WEIGHT_MM = 0.03, 0.05
"""How far hand and weight move every node in one sweep."""

SMOOTH = 0.08
UNHELD_MM = 1000.0
HINGE_ZONE_MM = 8.0
"""So near to its hinge a flap may rest on what it is fixed to."""


@dataclass(frozen=True, slots=True)
class Turn:
    """How a flap is laid back.

    Attributes
    ----------
    angle_deg : float
        Through how much it is turned by hand; its weight does the rest.
    down : (3,) float
        Direction in which its weight draws it, mm LPS.
    axis : (3,) float or None
        Of the turn; None takes the hinge's own direction, from its first to its last fibre.
    square : bool
        Turn square to the fibres; for straps, whose hinge is hardly broader than thick.
    radius_mm, across_mm : float
        Least radius of the roll, and of a bend across the fibres: flesh does not roll up.
    gap_mm : float
        Distance kept between the flap's face and what it lies on.
    """

    angle_deg: float
    down: np.ndarray
    axis: np.ndarray | None = None
    square: bool = False
    radius_mm: float = 6.0
    across_mm: float = 20.0
    gap_mm: float = 0.7


def poses(sheet: ControlSheet, ground: Ground, turn: Turn) -> np.ndarray:
    """Return the grid's poses (count, rows, columns, 3); the first is the rest pose.

    Parameters
    ----------
    sheet : ControlSheet
    ground : Ground
        Of all that stays.
    turn : Turn
    """
    rest = np.ascontiguousarray(sheet.mid)
    links = Links(rest, turn.radius_mm, turn.across_mm)
    length = np.concatenate([np.zeros((len(rest), 1)), links.along.cumsum(axis=1)], axis=1)
    weight = free_nodes(sheet)
    axis, way = _axis_and_way(sheet, turn)
    contact = _Contact(sheet, ground, turn.gap_mm, length)
    count = max(8, int(np.ceil(turn.angle_deg / STEP_DEG)))
    step = np.radians(turn.angle_deg) / count
    # A correction walks one link in a sweep: large sheets take more of them.
    rounds = max(1, round(sum(rest.shape[:2]) / 40))
    whole = area(rest)
    x = rest.copy()
    out = [rest.copy()]
    share = np.clip((length - 4.0) / (2.0 * turn.radius_mm), 0.0, 1.0)
    field = (ground.distance, np.asarray(ground.origin, float), float(ground.voxel_mm))
    for _ in range(count):
        _turn_about_hinge(x, share * step, axis)
        way = _turned(way, axis, np.asarray(step))
        clear = contact.clearances(x)
        pull = np.broadcast_to(PULL_MM * way, x.shape).copy()
        settle(x, rest, weight, clear, pull, *links.all(), *field, 40 * rounds, 0.5, SMOOTH)
        _finish(x, rest, weight, clear, links, field, rounds)
        out.append(x.copy())
        links.draw_in(area(x) / whole)
    for _ in range(SETTLING_POSES):
        clear = contact.clearances(x)
        pull = np.broadcast_to(PULL_MM * way + WEIGHT_MM * turn.down, x.shape).copy()
        settle(x, rest, weight, clear, pull, *links.all(), *field, 120, 0.5, SMOOTH)
        _finish(x, rest, weight, clear, links, field, rounds)
        out.append(x.copy())
        links.draw_in(area(x) / whole)
    return np.array(out)


class _Contact:
    """How far each node has to keep from the ground.

    A sheet lies closer at rest than it need be afterwards, and its ends grow into
    bone: a node that starts too close is let go as it is, and held off from the
    moment when it has come clear for the first time. (Pushed out at once, an end that
    lies deep between two spines would leave on the far side.)
    """

    def __init__(self, sheet: ControlSheet, ground: Ground, gap_mm: float, length) -> None:
        self._ground = ground
        self._wanted = sheet.half_mm + gap_mm
        self._at_rest = self._distance(sheet.mid)
        self._clear = self._at_rest >= self._wanted
        # 1 at the hinge, 0 beyond its zone: there the flap lies on what it is fixed to.
        self._by_hinge = np.clip(1.0 - (length - 2.0) / HINGE_ZONE_MM, 0.0, 1.0)

    def _distance(self, x: np.ndarray) -> np.ndarray:
        ground = self._ground
        d = distances(x.reshape(-1, 3), ground.distance, ground.origin, ground.voxel_mm)
        return d.reshape(x.shape[:2])

    def clearances(self, x: np.ndarray) -> np.ndarray:
        """Return the least distance for each node (rows, columns) in the coming step, mm."""
        now = self._distance(x)
        self._clear |= now >= self._wanted
        # Close but outside: no closer than now. Embedded: not held off at all.
        close = np.where(now > 0.0, np.minimum(now, self._wanted), -UNHELD_MM)
        clear = np.where(self._clear, self._wanted, close)
        return clear - UNHELD_MM * (self._by_hinge > 0.25)


def free_nodes(sheet: ControlSheet) -> np.ndarray:
    """Return 1 where the sheet may move and 0 where it is held, (rows, columns)."""
    free = np.ones(sheet.mid.shape[:2])
    free[:, :2] = 0.0
    return free


def _finish(x, rest, weight, clear, links: Links, field, rounds: int) -> None:
    none = np.zeros_like(x)
    settle(x, rest, weight, clear, none, *links.all(), *field, 40 * rounds, 0.15, 0.2 * SMOOTH)
    march(x, weight, links.along)


def _axis_and_way(sheet: ControlSheet, turn: Turn) -> tuple[np.ndarray, np.ndarray]:
    """Return the unit axis, signed so that the flap is lifted outward, and hinge to cut edge."""
    way = (sheet.mid[:, -1] - sheet.mid[:, 0]).mean(axis=0)
    way /= np.linalg.norm(way)
    axis = sheet.mid[-1, 0] - sheet.mid[0, 0] if turn.axis is None else np.asarray(turn.axis)
    axis = axis / np.linalg.norm(axis)
    third = max(3, sheet.mid.shape[1] // 3)
    normal = sheet.normals()[:, :third].reshape(-1, 3).mean(axis=0)
    if turn.square:
        axis = np.cross((sheet.mid[:, third - 1] - sheet.mid[:, 0]).mean(axis=0), normal)
        axis /= np.linalg.norm(axis)
    return (axis if np.cross(axis, way) @ normal >= 0 else -axis), way


def _turn_about_hinge(x: np.ndarray, angle: np.ndarray, axis: np.ndarray) -> None:
    """Turn each fibre's nodes about its hinge point, in place, by (rows, columns) radians."""
    hinge = x[:, 1:2].copy()
    x[:] = hinge + _turned(x - hinge, axis, angle)


def _turned(arm: np.ndarray, axis: np.ndarray, angle: np.ndarray) -> np.ndarray:
    """Turn (..., 3) arms about a unit axis by (...) radians (Rodrigues)."""
    cosine, sine = np.cos(angle)[..., None], np.sin(angle)[..., None]
    along = (arm @ axis)[..., None] * axis
    return arm * cosine + np.cross(axis, arm) * sine + along * (1 - cosine)
