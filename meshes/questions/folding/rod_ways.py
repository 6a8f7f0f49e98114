"""The way of a rod: a belly turned over on itself."""

from __future__ import annotations

import numpy as np
from scipy.ndimage import gaussian_filter1d

from meshes.questions.folding.cloth import distances
from meshes.questions.folding.ground import Ground
from meshes.questions.folding.rod import Rod, frames_of

POSES = 24
MOST_TURN_DEG = 200.0
DRAPE_RADIUS_MM, DRAPE_STEP_DEG, DRAPE_ROUNDS = 35.0, 1.5, 60


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
