"""The ways of rods: a belly turned over on itself, a column drawn aside along its groove."""

from __future__ import annotations

import numpy as np
from scipy.ndimage import (
    distance_transform_edt,
    gaussian_filter,
    gaussian_filter1d,
    map_coordinates,
    maximum_filter,
)

from meshes.questions.folding.cloth import distances
from meshes.questions.folding.ground import Ground
from meshes.questions.folding.rod import Rod, frames_of

POSES = 24
MOST_TURN_DEG = 200.0
DRAPE_RADIUS_MM, DRAPE_STEP_DEG, DRAPE_ROUNDS = 35.0, 1.5, 60
STIFF_MM = 10.0
"""Length over which a column evens out what it lies on."""

RISES_OVER_MM = 14.0
AXIS_Y_MM = -40.0
"""Upright axis in the midline, a little in front of the column."""


def turned_over(
    rod: Rod, hinge: int, turn_deg: float, radius_mm: float, breadth: np.ndarray,
    half: np.ndarray, ground: Ground, gap_mm: float = 0.4,
) -> list[Rod]:  # fmt: skip
    """Return the poses of a belly that is turned over about one cylinder.

    The bend is part of a circle, so that nothing is stretched; how far it closes, and how
    the rest of the flap settles, is where it meets what lies beneath.

    Parameters
    ----------
    rod : Rod
    hinge : int
        Station from which it is free.
    turn_deg : float
        Through how much the hand turns it at least.
    radius_mm : float
        Of the bend.
    breadth : (2,) float
        How far the flesh reaches to either side of the middle line, mm.
    half : (n,) float
        Its height over the middle line, mm, by station.
    ground : Ground
    """
    count = len(rod.centre)
    step = rod.step_mm
    arm = np.arange(count) - hinge
    bend = np.clip(arm * step / radius_mm, 0.0, None)
    wanted = half + gap_mm
    # On the roll, and just beyond it, the flap lies over what it is fixed to.
    judged = arm * step > 0.5 * np.pi * radius_mm

    def pose(angle: float, settled: np.ndarray | None = None) -> Rod:
        turn = np.minimum(bend, angle)
        if settled is not None:
            turn = turn + settled
        return _bent(rod, hinge, turn)

    def free(made: Rod) -> np.ndarray:
        return _clearance(made, breadth, ground) - wanted

    low, high = np.radians(turn_deg), np.radians(MOST_TURN_DEG)
    closed = low
    for angle in np.arange(low, high, np.radians(2.0)):
        if judged.any() and (free(pose(angle))[judged] < 0).any():
            break
        closed = angle
    settled = np.zeros(count)
    by = np.radians(DRAPE_STEP_DEG)
    most = step / DRAPE_RADIUS_MM
    first = int(hinge + np.ceil(closed * radius_mm / step))
    for _ in range(DRAPE_ROUNDS):
        moved = False
        for k in range(first, count - 2):
            trial = settled.copy()
            trial[k + 1 :] += by
            if trial[k + 1] - trial[k] > most or closed + trial[-1] > high:
                continue
            if (free(pose(closed, trial))[k + 1 :] < 0).any():
                continue
            settled, moved = trial, True
        if not moved:
            break
    settled = gaussian_filter1d(settled, 2.0, mode="nearest")
    out = []
    for share in np.linspace(0.0, 1.0, POSES + 1):
        out.append(pose(closed * share, settled * max(0.0, 2.0 * share - 1.0)))
    return [rod, *out[1:]]


def drawn_aside(
    rod: Rod, from_station: int, over_mm: float, by_mm: float, back_from: float,
    back_to: float, under: np.ndarray, ground: Ground, gap_mm: float = 0.6,
) -> list[Rod]:  # fmt: skip
    """Return the poses of a column that is drawn sideways over what lies beside it.

    It leaves its bed from a station on and comes back towards it further up; what the
    bow costs in length its free upper end gives.

    Parameters
    ----------
    by_mm : float
        How far: above 0 outward, below 0 towards the spines.
    from_station : int
    over_mm : float
        Length over which it leaves its bed, and comes back.
    back_from : float
        Level from which it comes back, mm.
    back_to : float
        Share of the way that is left at its upper end.
    under : (n,) float
        How far its flesh reaches under the middle line, mm.
    """
    step = rod.step_mm
    t = np.clip((np.arange(len(rod.centre)) - from_station) * step / over_mm, 0.0, 1.0)
    back = np.clip((rod.centre[:, 2] - back_from) / over_mm, 0.0, 1.0)
    back, t = (v * v * v * (10 - 15 * v + 6 * v * v) for v in (back, t))
    profile = t * (1.0 - (1.0 - back_to) * back)
    rises = min(RISES_OVER_MM, 0.8 * abs(by_mm))
    bed = WallHeight(ground)
    angle, radius = bed.polar(rod.centre)
    out = [rod]
    for share in np.linspace(0.0, 1.0, POSES + 1)[1:]:
        aside = share * by_mm * profile
        # It first rises out of its bed and then lies on the wall.
        risen = np.clip(np.abs(aside) / rises, 0.0, 1.0)
        risen = risen * risen * (3 - 2 * risen)
        centre = rod.centre
        for _ in range(4):
            turned = angle + aside / np.maximum(radius, 1.0)
            wall = bed.at(turned, centre[:, 2])
            lying = radius + risen * (wall + under + gap_mm - radius)
            lying = gaussian_filter1d(lying - radius, STIFF_MM / step, mode="nearest") + radius
            lying = np.where(risen > 0, lying, radius)
            centre = _marched(bed.points(turned, lying, centre[:, 2]), rod.centre)
        normal = bed.normals(turned, centre[:, 2])
        height = (1 - risen[:, None]) * rod.frame[:, 2] + risen[:, None] * normal
        height = gaussian_filter1d(height, STIFF_MM / step, axis=0, mode="nearest")
        height = np.where(profile[:, None] > 0, height, rod.frame[:, 2])
        along = np.gradient(centre, axis=0)
        along /= np.linalg.norm(along, axis=1, keepdims=True)
        side = np.cross(height, along)
        side *= np.sign((side * rod.frame[:, 1]).sum())
        out.append(Rod(centre, frames_of(centre, side, height)))
    return out


class WallHeight:
    """How far out the ground reaches, seen from an upright axis within the trunk.

    Parameters
    ----------
    ground : Ground
    """

    def __init__(self, ground: Ground) -> None:
        low = ground.origin
        high = low + ground.voxel_mm * (np.array(ground.distance.shape) - 1)
        self.angles = np.radians(np.arange(-20.0, 95.0, 1.5))
        self.levels = np.arange(low[2], high[2], 4.0)
        radii = np.arange(240.0, 40.0, -1.0)
        a, z = np.meshgrid(self.angles, self.levels, indexing="ij")
        reach = np.full(a.shape, np.nan)
        field = (ground.distance, ground.origin, ground.voxel_mm)
        for radius in radii:
            open_yet = np.isnan(reach)
            points = self.points(a[open_yet], np.full(open_yet.sum(), radius), z[open_yet])
            met = distances(points, *field) <= 0.0
            reach[open_yet] = np.where(met, radius, np.nan)
        known = np.isfinite(reach)
        if not known.any():
            raise ValueError("nothing lies in the box of the ground")
        near = distance_transform_edt(~known, return_distances=False, return_indices=True)
        reach = reach[tuple(near)]
        # What lies on it bridges the small hollows.
        reach = maximum_filter(reach, (5, 7), mode="nearest")
        self.reach = gaussian_filter(reach, (3.0, 5.0), mode="nearest")

    @staticmethod
    def polar(points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Return angles from straight back to the left (rad) and radii (mm) of points (n, 3)."""
        x, y = points[:, 0], points[:, 1] - AXIS_Y_MM
        return np.arctan2(x, y), np.hypot(x, y)

    @staticmethod
    def points(angle: np.ndarray, radius: np.ndarray, level: np.ndarray) -> np.ndarray:
        """Return points (n, 3), mm LPS."""
        x, y = radius * np.sin(angle), radius * np.cos(angle) + AXIS_Y_MM
        return np.column_stack([x, y, level])

    def at(self, angle: np.ndarray, level: np.ndarray) -> np.ndarray:
        """Return how far out the wall reaches, (n,) mm."""
        place = [
            np.interp(angle, self.angles, np.arange(len(self.angles))),
            np.interp(level, self.levels, np.arange(len(self.levels))),
        ]
        return map_coordinates(self.reach, place, order=1, mode="nearest")

    def normals(self, angle: np.ndarray, level: np.ndarray) -> np.ndarray:
        """Return unit normals (n, 3) of the wall, outward."""
        by, up = np.radians(4.0), 8.0
        places = [
            self.points(a, self.at(a, z), z)
            for a, z in (
                (angle + by, level), (angle - by, level), (angle, level + up), (angle, level - up)
            )
        ]  # fmt: skip
        normal = np.cross(places[0] - places[1], places[2] - places[3])
        straight = self.points(angle, np.ones_like(angle), level) - [0.0, AXIS_Y_MM, 0.0]
        straight[:, 2] = 0.0
        normal *= np.sign((normal * straight).sum(axis=1, keepdims=True))
        return normal / np.linalg.norm(normal, axis=1, keepdims=True)


def between(low: Rod, high: Rod, share: float) -> Rod:
    """Return the pose between two neighbouring ones, its stations as far apart as theirs."""
    if share <= 0.0:
        return low
    if share >= 1.0:
        return high
    centre = (1 - share) * low.centre + share * high.centre
    mixed = (1 - share) * low.frame + share * high.frame
    centre = _marched(centre, low.centre)
    along = np.gradient(centre, axis=0)
    along /= np.linalg.norm(along, axis=1, keepdims=True)
    return Rod(centre, frames_of(centre, mixed[:, 1], mixed[:, 2]))


def _clearance(rod: Rod, breadth: np.ndarray, ground: Ground) -> np.ndarray:
    """Return the least distance (n,) of the rod's middle and borders from the ground, mm."""
    found = []
    for at in (0.8 * breadth[0], 0.0, 0.8 * breadth[1]):
        points = rod.centre + at * rod.frame[:, 1]
        found.append(distances(points, ground.distance, ground.origin, ground.voxel_mm))
    return np.min(found, axis=0)


def _bent(rod: Rod, hinge: int, turn: np.ndarray) -> Rod:
    """Turn every link by an angle about the hinge's own axis."""
    along, axis, height = rod.frame[hinge]
    if np.dot(np.cross(axis, along), height) < 0:
        axis = -axis
    links = np.diff(rod.centre, axis=0)
    middle = 0.5 * (turn[1:] + turn[:-1])
    links = _turned(links, axis, middle)
    centre = rod.centre.copy()
    centre[hinge + 1 :] = centre[hinge] + links[hinge:].cumsum(axis=0)
    frame = np.stack([_turned(rod.frame[:, k], axis, turn) for k in range(3)], axis=1)
    return Rod(centre, np.ascontiguousarray(frame))


def _turned(arm: np.ndarray, axis: np.ndarray, angle: np.ndarray) -> np.ndarray:
    cosine, sine = np.cos(angle)[:, None], np.sin(angle)[:, None]
    return arm * cosine + np.cross(axis, arm) * sine + (arm @ axis)[:, None] * axis * (1 - cosine)


def _marched(centre: np.ndarray, like: np.ndarray) -> np.ndarray:
    """Return the line with links as long as those of another, from its first station on."""
    links = np.diff(centre, axis=0)
    wanted = np.linalg.norm(np.diff(like, axis=0), axis=1)
    links *= (wanted / np.maximum(np.linalg.norm(links, axis=1), 1e-9))[:, None]
    return np.concatenate([centre[:1], centre[0] + links.cumsum(axis=0)])
