"""Where the eye is when one stands at the table with the donor lying prone. No VTK.

The body keeps its axes; the room turns about it. The table is horizontal, so
the room's upward direction is the body's backward one (+y). Walking round the
table changes ``around``: 0 at the foot end, +90 at the donor's left, 180 at
the head end; ``height`` is how steeply one looks down.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from viewer.scene.camera import Pose, nearest_view, pose_from_dict, wrapped

STANDS: dict[str, float] = {"left": 90.0, "right": -90.0, "head": 180.0, "foot": 0.0}
"""Places at the table: name to the angle round it, degrees."""

HEIGHT_DEG = 50.0
"""How steeply somebody standing looks down on a table; common practice, no source."""

HEIGHT_RANGE_DEG = (12.0, 86.0)
WALK_LIMIT_DEG = 50.0


def table_pose(around_deg: float, height_deg: float, pose: Pose) -> Pose:
    """Return the pose seen from a place at the table, focus and scale kept."""
    around, height = np.radians([around_deg, height_deg])
    back = np.array(
        [np.sin(around) * np.cos(height), np.sin(height), -np.cos(around) * np.cos(height)]
    )
    up = np.array(
        [-np.sin(around) * np.sin(height), np.cos(height), np.cos(around) * np.sin(height)]
    )
    made = pose_from_dict(
        {
            "focal_point": pose.focus,
            "position": np.asarray(pose.focus) + 1000.0 * back,
            "view_up": up,
            "parallel_scale": pose.scale_mm,
        }
    )
    return replace(made, view=nearest_view(made.azimuth_deg, made.elevation_deg))


def place_at_table(pose: Pose) -> tuple[float, float]:
    """Return (around, height) in degrees of a pose at the table."""
    back = pose.axes()[2]
    around = float(np.degrees(np.arctan2(back[0], -back[2])))
    return wrapped(around), float(np.degrees(np.arcsin(np.clip(back[1], -1.0, 1.0))))


def walked(
    pose: Pose, around_deg: float, height_deg: float, stand: str, limited: bool = True
) -> Pose:
    """Return the pose after walking on round the table and looking from higher up.

    A limited walk stays at its side of the table.
    """
    around, height = place_at_table(pose)
    around += around_deg
    if limited:
        away = wrapped(around - STANDS[stand])
        around = STANDS[stand] + float(np.clip(away, -WALK_LIMIT_DEG, WALK_LIMIT_DEG))
    height = float(np.clip(height + height_deg, *HEIGHT_RANGE_DEG))
    return table_pose(around, height, pose)


def table_corners(points: np.ndarray, margin_mm: float = 120.0) -> np.ndarray:
    """Return the corners of the table under a body, (4, 3) mm.

    Parameters
    ----------
    points : (n, 3) array
        Of the body; its most forward point lies on the table.
    """
    points = np.asarray(points, float).reshape(-1, 3)
    low, high = points.min(axis=0), points.max(axis=0)
    x = max(abs(low[0]), abs(high[0])) + margin_mm
    y = low[1] - 2.0
    z0, z1 = low[2] - margin_mm, high[2] + margin_mm
    return np.array([[-x, y, z0], [x, y, z0], [x, y, z1], [-x, y, z1]])


def with_room_above(pose: Pose, points: np.ndarray, share: float = 0.7) -> Pose:
    """Return the pose with a share of the empty room below a body, (n, 3) mm, put above it."""
    _, up, _ = pose.axes()
    along = np.asarray(points, float).reshape(-1, 3) @ up
    if not len(along):
        return pose
    slack = max(pose.scale_mm - float(np.ptp(along)) / 2.0, 0.0)
    focus = np.asarray(pose.focus) + share * slack * up
    return replace(pose, focus=tuple(float(c) for c in focus))
