"""Where the eye is: named views, limited orbit, framing and flights. Pure arithmetic, no VTK.

A pose is a direction round the body (azimuth and elevation), the point looked
at and the half-height of the picture in mm. Azimuth 0 looks at the back from
behind, +90 looks at the subject's left flank; elevation +90 looks down from
the head. Roll is 0 in every upright view, so that up stays up and nobody loses
their side; only the views of a donor lying on a table are rolled
(``viewer.scene.table_pose``).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from viewer.state.tongue import told

VIEWS: dict[str, tuple[float, float]] = {
    "posterior": (0.0, 0.0),
    "oblique_left": (38.0, 14.0),
    "oblique_right": (-38.0, 14.0),
    "lateral_left": (90.0, 0.0),
    "lateral_right": (-90.0, 0.0),
    "superior": (0.0, 90.0),
    "inferior": (0.0, -90.0),
    "anterior": (180.0, 0.0),
}
"""Fixed views: name to (azimuth, elevation) in degrees."""

AZIMUTH_LIMIT_DEG = 60.0
ELEVATION_LIMIT_DEG = 35.0
"""How far the limited orbit may leave its fixed view. Free turning made learners with
weak spatial skill do worse in a trial, so the gentle orbit is the default."""

SCALE_RANGE_MM = (4.0, 1500.0)
EYE_DISTANCE_MM = 3000.0


@dataclass(frozen=True, slots=True)
class Pose:
    """One place of the eye.

    Attributes
    ----------
    azimuth_deg, elevation_deg : float
        Direction from the focus to the eye; elevation within -90..90.
    focus : tuple of 3 float
        The point looked at, mm LPS.
    scale_mm : float
        Half the height of the picture at the focus, mm.
    view : str
        The fixed view that a limited orbit stays near.
    roll_deg : float
        How far the upward direction of the picture is turned from the body's,
        counter-clockwise as seen in the picture: at 90 the head is on the right.
    """

    azimuth_deg: float = 0.0
    elevation_deg: float = 0.0
    focus: tuple[float, float, float] = (0.0, 0.0, 200.0)
    scale_mm: float = 450.0
    view: str = "posterior"
    roll_deg: float = 0.0

    def axes(self) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Return unit vectors right, up and towards the eye, (3,) each."""
        azimuth, elevation = np.radians([self.azimuth_deg, self.elevation_deg])
        back = np.array(
            [
                np.sin(azimuth) * np.cos(elevation),
                np.cos(azimuth) * np.cos(elevation),
                np.sin(elevation),
            ]
        )
        up = np.array(
            [
                -np.sin(azimuth) * np.sin(elevation),
                -np.cos(azimuth) * np.sin(elevation),
                np.cos(elevation),
            ]
        )
        right = np.cross(up, back)
        if self.roll_deg:
            roll = np.radians(self.roll_deg)
            # The camera's own up leans over so that what was up is seen turned the other way.
            up = np.cos(roll) * up - np.sin(roll) * right
            right = np.cross(up, back)
        return right, up, back

    def to_dict(self) -> dict:
        """Return the pose as plain JSON values."""
        _, up, back = self.axes()
        position = np.asarray(self.focus) + EYE_DISTANCE_MM * back
        return {
            "azimuth_deg": self.azimuth_deg,
            "elevation_deg": self.elevation_deg,
            "roll_deg": self.roll_deg,
            "focal_point": [float(c) for c in self.focus],
            "position": [float(c) for c in position],
            "view_up": [float(c) for c in up],
            "parallel_scale": self.scale_mm,
            "parallel": True,
            "view": self.view,
        }


def pose_from_dict(values: Mapping) -> Pose:
    """Return the pose of ``Pose.to_dict`` (or of position and focal point alone)."""
    focus = np.asarray(values.get("focal_point", Pose().focus), float)
    if focus.shape != (3,) or not np.isfinite(focus).all():
        raise ValueError(f"focal_point must be three finite numbers, got {focus.tolist()}")
    if "azimuth_deg" in values:
        azimuth, elevation = float(values["azimuth_deg"]), float(values["elevation_deg"])
        roll = float(values.get("roll_deg", 0.0))
    else:
        back = np.asarray(values["position"], float) - focus
        back = back / max(float(np.linalg.norm(back)), 1e-9)
        elevation = float(np.degrees(np.arcsin(np.clip(back[2], -1, 1))))
        level = back
        if abs(elevation) > 89.0 and "view_up" in values:
            # Looking along the body's axis: only the upward direction tells the azimuth.
            level = -np.sign(elevation) * np.asarray(values["view_up"], float)
        azimuth = float(np.degrees(np.arctan2(level[0], level[1])))
        roll = _roll(azimuth, elevation, values.get("view_up"))
    view = values.get("view", "posterior")
    return Pose(
        wrapped(azimuth),
        float(np.clip(elevation, -90, 90)),
        tuple(float(c) for c in focus),
        float(np.clip(values.get("parallel_scale", 450.0), *SCALE_RANGE_MM)),
        view if view in VIEWS else nearest_view(azimuth, elevation),
        roll,
    )


def _roll(azimuth_deg: float, elevation_deg: float, view_up: object) -> float:
    """Return by how much an upward direction (3,) is turned from the upright one, degrees."""
    if view_up is None:
        return 0.0
    right, up, _ = Pose(azimuth_deg, elevation_deg).axes()
    wanted = np.asarray(view_up, float)
    across, along = float(wanted @ right), float(wanted @ up)
    if not np.isfinite([across, along]).all() or np.hypot(across, along) < 1e-6:
        return 0.0
    roll = float(np.degrees(np.arctan2(-across, along)))
    return 0.0 if abs(roll) < 0.01 else wrapped(roll)


def wrapped(angle_deg: float) -> float:
    """Return the angle brought above -180 and up to 180 degrees."""
    return float(180.0 - (180.0 - angle_deg) % 360.0)


def nearest_view(azimuth_deg: float, elevation_deg: float) -> str:
    """Return the fixed view whose direction is closest."""
    _, _, back = Pose(azimuth_deg, elevation_deg).axes()
    return max(VIEWS, key=lambda name: float(back @ Pose(*VIEWS[name]).axes()[2]))


def view_pose(name: str, pose: Pose) -> Pose:
    """Return the pose turned into a fixed view, focus and scale kept."""
    if name not in VIEWS:
        raise ValueError(f"view must be one of {', '.join(VIEWS)}, got {name!r}")
    azimuth, elevation = VIEWS[name]
    return replace(pose, azimuth_deg=azimuth, elevation_deg=elevation, view=name, roll_deg=0.0)


def orbited(pose: Pose, azimuth_deg: float, elevation_deg: float, limited: bool = True) -> Pose:
    """Return the pose turned by two angles, held near its fixed view when limited."""
    azimuth = pose.azimuth_deg + azimuth_deg
    elevation = float(np.clip(pose.elevation_deg + elevation_deg, -90.0, 90.0))
    if limited:
        base_azimuth, base_elevation = VIEWS[pose.view]
        away = wrapped(azimuth - base_azimuth)
        azimuth = base_azimuth + float(np.clip(away, -AZIMUTH_LIMIT_DEG, AZIMUTH_LIMIT_DEG))
        elevation = float(
            np.clip(
                elevation,
                max(base_elevation - ELEVATION_LIMIT_DEG, -90.0),
                min(base_elevation + ELEVATION_LIMIT_DEG, 90.0),
            )
        )
    return replace(pose, azimuth_deg=wrapped(azimuth), elevation_deg=elevation)


def panned(pose: Pose, dx_px: float, dy_px: float, height_px: int) -> Pose:
    """Return the pose shifted so that the picture follows the pointer (y down)."""
    right, up, _ = pose.axes()
    mm_per_px = 2.0 * pose.scale_mm / max(height_px, 1)
    focus = np.asarray(pose.focus) + (-dx_px * right + dy_px * up) * mm_per_px
    return replace(pose, focus=tuple(float(c) for c in focus))


def zoomed(pose: Pose, factor: float) -> Pose:
    """Return the pose with the picture enlarged by a factor (> 1 comes closer)."""
    if not factor > 0:
        raise ValueError(f"zoom factor must be above 0, got {factor}")
    return replace(pose, scale_mm=float(np.clip(pose.scale_mm / factor, *SCALE_RANGE_MM)))


def framed(pose: Pose, points: np.ndarray, aspect: float, margin: float = 1.08) -> Pose:
    """Return the pose centred on (n, 3) points and scaled so that all are in the picture.

    Parameters
    ----------
    aspect : float
        Width over height of the picture.
    """
    points = np.asarray(points, float).reshape(-1, 3)
    if not len(points):
        return pose
    right, up, back = pose.axes()
    across, along = points @ right, points @ up
    deep = points @ back
    centre = (
        (across.min() + across.max()) / 2 * right
        + (along.min() + along.max()) / 2 * up
        + (deep.min() + deep.max()) / 2 * back
    )
    half = max(np.ptp(along) / 2, np.ptp(across) / 2 / max(aspect, 1e-6), SCALE_RANGE_MM[0])
    return replace(
        pose,
        focus=tuple(float(c) for c in centre),
        scale_mm=float(np.clip(half * margin, *SCALE_RANGE_MM)),
    )


@dataclass(frozen=True, slots=True)
class Flight:
    """A smooth way from one pose to another."""

    start: Pose
    end: Pose
    seconds: float = 0.35

    def at(self, fraction: float) -> Pose:
        """Return the pose at a fraction (0..1) of the way, eased at both ends."""
        if fraction >= 1.0:
            return self.end
        t = max(fraction, 0.0)
        t = t * t * (3.0 - 2.0 * t)
        turn = wrapped(self.end.azimuth_deg - self.start.azimuth_deg)
        lean = wrapped(self.end.roll_deg - self.start.roll_deg)
        focus = (1 - t) * np.asarray(self.start.focus) + t * np.asarray(self.end.focus)
        scale = self.start.scale_mm ** (1 - t) * self.end.scale_mm**t
        return Pose(
            wrapped(self.start.azimuth_deg + t * turn),
            (1 - t) * self.start.elevation_deg + t * self.end.elevation_deg,
            tuple(float(c) for c in focus),
            float(scale),
            self.end.view,
            wrapped(self.start.roll_deg + t * lean),
        )


def side_letters(pose: Pose) -> dict[str, tuple[float, float]]:
    """Return where the subject's directions point in the picture.

    Returns
    -------
    dict
        "left", "right", "head", "foot", "back", "front" to (x right, y up) of
        the unit direction in the picture plane.
    """
    right, up, _ = pose.axes()
    directions = {
        "left": (1, 0, 0),
        "right": (-1, 0, 0),
        "head": (0, 0, 1),
        "foot": (0, 0, -1),
        "back": (0, 1, 0),
        "front": (0, -1, 0),
    }
    return {name: (float(np.dot(right, d)), float(np.dot(up, d))) for name, d in directions.items()}


def markers_sentence(pose: Pose) -> str:
    """Return in words where left and head lie in the picture, for screen readers."""
    letters = side_letters(pose)

    def where(name: str) -> str:
        x, y = letters[name]
        if max(abs(x), abs(y)) < 0.35:
            return told("along the line of sight")
        if abs(x) >= abs(y):
            return told("on the left of the picture" if x < 0 else "on the right of the picture")
        return told("at the top of the picture" if y > 0 else "at the bottom of the picture")

    return told(
        "The subject's left is {left}; the head is {head}.",
        left=where("left"),
        head=where("head"),
    )


def sight_line(
    pose: Pose, x: float, y: float, size: tuple[int, int]
) -> tuple[np.ndarray, np.ndarray]:
    """Return (origin, unit direction) of the sight line through a pixel of a picture.

    Parameters
    ----------
    pose : Pose
    x, y : float
        Pixels, y down.
    size : (width, height)
        Of the picture, px.
    """
    right, up, back = pose.axes()
    width, height = size
    mm_per_px = 2.0 * pose.scale_mm / height
    start = np.asarray(pose.focus) + EYE_DISTANCE_MM * back
    start = start + (x - width / 2) * mm_per_px * right
    return start + (height / 2 - y) * mm_per_px * up, -back


def projected(
    pose: Pose, points: np.ndarray, size: tuple[int, int]
) -> tuple[np.ndarray, np.ndarray]:
    """Return ((n, 2) pixels, (n,) distance from the eye's plane, mm) of points (n, 3) mm."""
    right, up, back = pose.axes()
    width, height = size
    px_per_mm = height / (2.0 * pose.scale_mm)
    away = np.asarray(points, float).reshape(-1, 3) - np.asarray(pose.focus)
    pixels = np.column_stack(
        [width / 2 + (away @ right) * px_per_mm, height / 2 - (away @ up) * px_per_mm]
    )
    return pixels, EYE_DISTANCE_MM - away @ back
