"""The left shoulder girdle on the chest: scapula, clavicle and upper humerus.

The scapula is contoured once in its own frame and placed as a rigid body that
glides on the chest wall; the clavicle spans sternum and acromion, the humerus
hangs from the glenoid.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import trimesh
from scipy.optimize import least_squares

from meshes.body import Body
from meshes.model import Part
from meshes.skeleton.clavicle import clavicle
from meshes.skeleton.frame import SkeletonFrame, make_frame
from meshes.skeleton.humerus import own_humerus
from meshes.skeleton.piece import BonePiece
from meshes.skeleton.scapula import (
    GLENOID_NORMAL,
    HEAD_CENTRE,
    acromion_reach,
    costal_footprint,
    own_scapula,
)
from meshes.skeleton.sternum import sternal_line
from meshes.skeleton.thorax_shape import ChestSurface, chest_surface
from meshes.skeleton.vertebra_tables import SHAPES

CHEST_GAP_MM = 11.0
"""Wanted distance from rib faces to the costal face: serratus anterior and subscapularis."""

# Resting attitude to which the fit is drawn: plane of the body to the coronal
# plane and forward lean (30-40 degrees to the coronal plane is common practice;
# lean 8-14 degrees by bone pins: Ludewig PM et al., J Bone Joint Surg Am
# 2009;91:378-389, from memory).
_PLANE_DEG, _LEAN_DEG = 32.0, 11.0
_PLANE_RANGE, _LEAN_RANGE = (30.0, 40.0), (6.0, 18.0)
# Turn in its own plane at rest. The lean of an oblique plate carries the inferior
# angle outwards; this brings the medial border upright again and leaves the line from
# the root of the spine to the acromial angle rising by about 11 degrees (upward
# rotation at rest 5.4 degrees by bone pins: Ludewig PM et al. 2009, from memory), so
# that the acromion lies about as far below C7 as ANSUR II has it (77 +- 14 mm in men).
_REST_TURN_DEG = -11.5

# Soft tissue over the acromion within a biacromial breadth (common practice).
_OVER_ACROMION_MM = 5.0
_ROOT_RANGE_MM = (58.0, 73.0)


@dataclass(frozen=True, slots=True, eq=False)
class ScapulaPose:
    """A rigid place of the left scapula, with its size.

    Attributes
    ----------
    rotation : (3, 3) float
        Columns: the own frame's lateral, dorsal and up in the model's axes.
    translation : (3,) float
        Place of the own origin (root of the spine), mm.
    size : float
        Length of this scapula relative to the own frame's numbers.
    plane_deg, lean_deg, upward_deg : float
        Angle of the plane to the coronal plane, forward lean, upward rotation.
    """

    rotation: np.ndarray
    translation: np.ndarray
    size: float
    plane_deg: float
    lean_deg: float
    upward_deg: float

    def to_model(self, own: np.ndarray) -> np.ndarray:
        """Take (..., 3) points of the own frame (unscaled) to the model's axes, mm."""
        return self.size * np.asarray(own, float) @ self.rotation.T + self.translation


def scapula_size(body: Body) -> float:
    """Size of the scapula relative to the median man's.

    Women's are smaller than their stature alone would make them (0.96), and
    broad shoulders go in part with broad scapulae; the median shoulders of ANSUR II
    are broad for the bones of the osteological samples, hence 1.02.
    """
    sexed = 1.02 * body.scale * (0.96 if body.sex == "female" else 1.0)
    usual = 415.7 * body.scale if body.sex == "male" else 365.3 * body.scale / (1628.0 / 1756.0)
    return float(sexed * np.clip((body.biacromial_mm / usual) ** 0.5, 0.93, 1.07))


def scapula_pose(frame: SkeletonFrame) -> ScapulaPose:
    """Place the scapula on the chest wall at the body's pose.

    Parameters
    ----------
    frame : SkeletonFrame
        Its body gives breadth, upward rotation, protraction and elevation.

    Returns
    -------
    ScapulaPose
    """
    return _pose(frame.body)


@lru_cache(maxsize=8)
def _pose(body: Body) -> ScapulaPose:
    frame = make_frame(body)
    size = scapula_size(body)
    # Serratus anterior alone lies under the border, subscapularis thickens towards the axilla.
    inside, edge = costal_footprint()
    wanted = np.concatenate([CHEST_GAP_MM + 0.16 * inside[:, 0], np.full(len(edge), CHEST_GAP_MM)])
    footing = (np.concatenate([inside, edge]), wanted * size)
    rim = acromion_reach()
    root_z = _root_height(frame)
    reach = 150.0 * size
    wall = _WallTable(chest_surface(frame), root_z - reach, root_z + reach)
    wanted_x = body.biacromial_mm / 2 - _OVER_ACROMION_MM
    # Rest first: where the root must stand so that the acromion is at its breadth.
    root_x = 66.0 * frame.scale
    for _ in range(3):
        rest = _settle(wall, footing, size, root_x, root_z, _REST_TURN_DEG)
        root_x += wanted_x - float(rest.to_model(rim)[:, 0].max())
        root_x = float(np.clip(root_x, *(frame.scale * np.array(_ROOT_RANGE_MM))))
    upward = body.scapular_upward_rotation_deg
    # Upward rotation turns about a point above the spine: the clavicle keeps its length
    # and the inferior angle swings out round the chest.
    pivot = size * np.array([45.0, 0.0, 38.0])
    turn = np.deg2rad(upward)
    shift_x = pivot[0] * (1 - np.cos(turn)) + pivot[2] * np.sin(turn)
    shift_z = -pivot[0] * np.sin(turn) + pivot[2] * (1 - np.cos(turn))
    return _settle(
        wall,
        footing,
        size,
        root_x + body.scapular_protraction_mm + 0.83 * shift_x,
        root_z + body.scapular_elevation_mm + shift_z,
        _REST_TURN_DEG + upward,
    )


def _root_height(frame: SkeletonFrame) -> float:
    """Height of the root of the spine: between the tips of T3's and T4's spines, mm."""
    # Standing, the shoulder hangs lower than on a mounted skeleton: C7 is 77 +- 14 mm
    # above the acromion in men (ANSUR II). This height keeps the superior angle
    # at T2 and the inferior angle between the tips of T7 and T8.
    third = frame["T3"]
    back, up = SHAPES["T3"].spine_tip
    tip = third.to_model([0.0, back * frame.scale, up * frame.scale])
    return float(tip[2]) - 22.8 * frame.scale


def _rotation(plane_deg: float, lean_deg: float, upward_deg: float) -> np.ndarray:
    a, lean, up = np.deg2rad([plane_deg, lean_deg, upward_deg])
    turned = np.array([[np.cos(a), np.sin(a), 0], [-np.sin(a), np.cos(a), 0], [0, 0, 1.0]])
    # Columns lateral, dorsal, up after turning the plane; lean brings the top forward,
    # upward rotation brings the glenoid up in the plane of the body.
    forward = np.array(
        [[1.0, 0, 0], [0, np.cos(lean), -np.sin(lean)], [0, np.sin(lean), np.cos(lean)]]
    )
    rise = np.array([[np.cos(up), 0, -np.sin(up)], [0, 1.0, 0], [np.sin(up), 0, np.cos(up)]])
    return turned @ forward @ rise


def _settle(
    wall: _WallTable,
    footing: tuple[np.ndarray, np.ndarray],
    size: float,
    root_x: float,
    root_z: float,
    upward_deg: float,
) -> ScapulaPose:
    """Lay the costal face on the chest wall: solves depth, plane angle and lean."""
    footprint, wanted = footing

    def pose(v) -> ScapulaPose:
        rotation = _rotation(v[1], v[2], upward_deg)
        return ScapulaPose(rotation, np.array([root_x, v[0], root_z]), size, v[1], v[2], upward_deg)

    def residual(v):
        gap = wall.gap(pose(v).to_model(footprint))
        # Too near counts five times as much as too far.
        off = (gap - wanted) / np.sqrt(len(gap))
        off = np.where(off < 0, 5.0 * off, off)
        drawn = [(v[1] - _PLANE_DEG) * 1.0, (v[2] - _LEAN_DEG) * 1.0]
        return np.concatenate([off, drawn])

    start = wall.axis_y + 90.0 * size
    found = least_squares(
        residual,
        [start, _PLANE_DEG, _LEAN_DEG],
        bounds=([start - 80, _PLANE_RANGE[0], _LEAN_RANGE[0]],
                [start + 80, _PLANE_RANGE[1], _LEAN_RANGE[1]]),
        x_scale=[5.0, 3.0, 3.0], xtol=1e-3, ftol=1e-3, max_nfev=12, diff_step=1e-3,
    )  # fmt: skip
    return pose(found.x)


class _WallTable:
    """The chest wall's radius on a table, quick enough for the fit.

    Parameters
    ----------
    chest : ChestSurface
    low, high : float
        Heights z between which it is needed, mm.
    """

    def __init__(self, chest: ChestSurface, low: float, high: float) -> None:
        self.axis_y = chest.axis_y
        self.heights = np.linspace(low, high, 41)
        self.angles = np.linspace(-10.0, 80.0, 46)
        radii = chest.radius(self.heights[:, None], self.angles[None, :])
        per_z, per_angle = np.gradient(radii, self.heights, np.deg2rad(self.angles))
        self._tables = np.stack([radii, per_z, per_angle], axis=-1)

    def gap(self, points: np.ndarray) -> np.ndarray:
        """Distance (n,) of points (n, 3) outside the wall, mm, negative inside (first order)."""
        x, y = points[:, 0], points[:, 1] - self.axis_y
        radius = np.hypot(x, y)
        i = np.interp(points[:, 2], self.heights, np.arange(len(self.heights)))
        j = np.interp(np.rad2deg(np.arctan2(y, x)), self.angles, np.arange(len(self.angles)))
        i0 = np.minimum(i.astype(int), len(self.heights) - 2)
        j0 = np.minimum(j.astype(int), len(self.angles) - 2)
        u, v = (i - i0)[:, None], (j - j0)[:, None]
        t = self._tables
        wall, per_z, per_angle = (
            (1 - u) * ((1 - v) * t[i0, j0] + v * t[i0, j0 + 1])
            + u * ((1 - v) * t[i0 + 1, j0] + v * t[i0 + 1, j0 + 1])
        ).T
        return (radius - wall) / np.sqrt(1.0 + per_z**2 + (per_angle / wall) ** 2)


def chest_gap(chest: ChestSurface, points: np.ndarray) -> np.ndarray:
    """Distance (n,) of points (n, 3) outside the chest wall, mm, negative inside (first order)."""
    points = np.asarray(points, float)
    return _WallTable(chest, points[:, 2].min() - 5, points[:, 2].max() + 5).gap(points)


def make(frame: SkeletonFrame, detail: str) -> list[BonePiece]:
    """Make the left scapula, clavicle and humerus.

    Parameters
    ----------
    frame : SkeletonFrame
    detail : {"preview", "full"}

    Returns
    -------
    list of BonePiece
    """
    pose = scapula_pose(frame)
    own = own_scapula(detail)
    shoulder_blade = _piece(
        "scapula",
        trimesh.Trimesh(pose.to_model(own.mesh.vertices), own.mesh.faces, process=False),
        {name: pose.to_model(p) for name, p in own.landmarks.items()},
        "shoulder",
    )
    return [
        shoulder_blade,
        _clavicle(frame, detail, shoulder_blade),
        _humerus(frame, detail, pose),
    ]


def _piece(name: str, mesh: trimesh.Trimesh, marks: dict, region: str) -> BonePiece:
    part = Part(
        id=f"{name}.left", entry=name, kind="bone", stratum=9, group="", mesh=mesh, region=region
    )
    return BonePiece(part, {f"{name}.left.{key}": value for key, value in marks.items()})


def _clavicle(frame: SkeletonFrame, detail: str, scapula: BonePiece) -> BonePiece:
    jugular, angle = sternal_line(frame)[:2]
    down = (angle - jugular) / np.linalg.norm(angle - jugular)
    # In the hollow of the manubrium's clavicular notch, which looks up and out;
    # the disc of the joint lies between.
    start = jugular + frame.scale * (np.array([24.5, -2.5, 0.0]) - 5.5 * down)
    facet = scapula.landmarks["scapula.left.clavicular_facet"]
    chord = facet - start
    chord = chord / np.linalg.norm(chord)
    # The cleft of the acromial joint.
    mesh, marks = clavicle(start, facet - chord * 2.5 * frame.scale, detail)
    return _piece("clavicle", mesh, marks, "shoulder")


def _humerus(frame: SkeletonFrame, detail: str, pose: ScapulaPose) -> BonePiece:
    mesh, marks = own_humerus(detail)
    up, lateral, back = humerus_axes(frame.body, pose)
    rotation = np.stack([lateral, back, up], axis=1)
    centre = pose.to_model(HEAD_CENTRE)

    def place(points):
        return pose.size * np.asarray(points, float) @ rotation.T + centre

    placed = trimesh.Trimesh(place(mesh.vertices), mesh.faces, process=False)
    return _piece("humerus", placed, {name: place(p) for name, p in marks.items()}, "arm")


def humerus_axes(body: Body, pose: ScapulaPose) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Up along the shaft, lateral away from the head, and back of the hanging humerus."""
    out = np.deg2rad(body.arm_abduction_deg)
    # The arm hangs a little in front of the coronal plane.
    sideways = np.array([np.cos(np.deg2rad(8.0)), -np.sin(np.deg2rad(8.0)), 0.0])
    up = np.cos(out) * np.array([0.0, 0.0, 1.0]) - np.sin(out) * sideways
    facing = pose.rotation @ GLENOID_NORMAL
    lateral = facing - np.dot(facing, up) * up
    lateral /= np.linalg.norm(lateral)
    return up, lateral, np.cross(up, lateral)
