"""The sternum: manubrium, body and xiphoid process, with their notches."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.model import Part
from meshes.shapes.contour import contour
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import SkeletonFrame
from meshes.skeleton.piece import BonePiece, snap_to_surface
from meshes.skeleton.thorax_shape import rib_course

_X = np.array([1.0, 0.0, 0.0])
# Down the sternum from the jugular notch: share of the manubrium and of the body,
# half width and half thickness, mm. Manubrium about 50 mm long, body about 105 mm,
# 12 and 10 mm thick (common practice, no source).
_MANUBRIUM = ((0.04, 28.0, 6.2), (0.30, 27.0, 6.2), (0.62, 21.5, 5.8), (0.95, 18.0, 5.4))
_BODY = ((0.03, 15.0, 5.4), (0.30, 15.5, 5.0), (0.68, 19.0, 4.8), (0.97, 13.5, 4.6))
_XIPHOID = ((0.0, 9.5, 3.6), (0.55, 7.6, 2.8), (0.95, 4.2, 2.2))
# Where the cartilages meet the sternum, as shares of the manubrium (1, 2) or body (3-7).
_NOTCH_SHARES = {1: 0.30, 2: 1.0, 3: 0.27, 4: 0.49, 5: 0.69, 6: 0.86, 7: 0.985}


@dataclass(frozen=True, slots=True, eq=False)
class SternumForm:
    """The sternum's mesh with what the cartilages need.

    Attributes
    ----------
    piece : BonePiece
    solid : Solid
        Distances to its surface.
    notches : dict of int to (3,) float
        Places of the left costal notches 1 to 7 on its border, mm.
    """

    piece: BonePiece
    solid: Solid
    notches: dict[int, np.ndarray]


def sternal_line(frame: SkeletonFrame) -> np.ndarray:
    """Jugular notch, sternal angle, xiphisternal joint and xiphoid tip, (4, 3) mm.

    They follow the front ends of ribs 1, 2 and 7, which puts the median man's
    notch level with the disc T2/T3, the angle with T4/T5 and the joint with T9.
    """
    s = frame.scale
    ends = {number: rib_course(frame, number, step=4.0).points[-1] for number in (1, 2, 7)}
    notch, angle, joint = (
        ends[number] * [0.0, 1.0, 1.0] + s * np.array([0.0, y, z])
        for number, y, z in ((1, -4.0, 8.5), (2, -10.5, 6.0), (7, -16.0, 42.0))
    )
    axis = (joint - angle) / np.linalg.norm(joint - angle)
    tip = joint + 32.0 * s * (axis + [0.0, 0.12, 0.0])
    return np.array([notch, angle, joint, tip])


def make_sternum(frame: SkeletonFrame, detail: str) -> SternumForm:
    """Build the sternum.

    Parameters
    ----------
    frame : SkeletonFrame
    detail : {"preview", "full"}

    Returns
    -------
    SternumForm
    """
    s = frame.scale
    notch, angle, joint, tip = sternal_line(frame)
    solid = Solid()
    for (start, end), rows in (
        ((notch, angle), _MANUBRIUM),
        ((angle, joint), _BODY),
        ((joint, tip), _XIPHOID),
    ):
        for (a, wide_a, thick_a), (b, wide_b, thick_b) in zip(rows, rows[1:], strict=False):
            solid.blade(
                start + a * (end - start), start + b * (end - start), _X,
                (wide_a * s, wide_b * s), (thick_a * s, thick_b * s), blend=4.5 * s, power=3.0,
            )  # fmt: skip
    down = (angle - notch) / np.linalg.norm(angle - notch)
    front = np.cross(down, _X)
    front *= -np.sign(front[1])
    manubrium = np.stack([_X, front, down])
    solid.ellipsoid(
        notch - 8.0 * s * down, (15.0 * s, 20.0 * s, 12.5 * s), manubrium,
        blend=3.0 * s, operation="subtract",
    )  # fmt: skip
    clavicular = np.array([24.5 * s, 0.0, 0.0]) + notch + 0.5 * s * down
    for side in (1.0, -1.0):
        axis = side * 0.75 * _X - 0.66 * down
        across = np.cross(front, axis)
        solid.ellipsoid(
            clavicular * [side, 1, 1] + 4.6 * s * axis,
            (8.0 * s, 14.0 * s, 11.0 * s),
            np.stack([axis, front, across]), blend=2.0 * s, operation="subtract",
        )  # fmt: skip
    notches = {}
    for number, share in _NOTCH_SHARES.items():
        start, end = (notch, angle) if number <= 2 else (angle, joint)
        middle = start + share * (end - start)
        edge = _edge(solid, middle, 32.0 * s)
        notches[number] = edge
        for side in (1.0, -1.0):
            solid.ellipsoid(
                (edge + [2.6 * s, 0, 0]) * [side, 1, 1], np.array([4.2, 6.0, 5.6]) * s,
                blend=1.2 * s, operation="subtract",
            )  # fmt: skip
    for number in notches:
        start = notches[number] - [8.0 * s, 0, 0]
        notches[number] = _edge(solid, start, 8.0 * s)
    mesh = contour(
        solid, {"full": 1.5, "preview": 2.4}[detail] * s, {"full": 2600, "preview": 520}[detail]
    )
    part = Part("sternum", "sternum", "bone", 9, "", mesh, region="thorax")
    wanted = np.array(
        [notch + 3.0 * s * down, tip + 2.0 * s * (tip - joint) / np.linalg.norm(tip - joint),
         clavicular - 1.0 * s * down]
    )  # fmt: skip
    jugular, xiphoid, clavicle = snap_to_surface(mesh, wanted)
    landmarks = {
        "sternum.jugular_notch": jugular,
        "sternum.xiphoid_tip": xiphoid,
        "sternum.left.clavicular_notch": clavicle,
        "sternum.sternal_angle": snap_to_surface(mesh, angle + 6.0 * s * front)[0],
    }
    return SternumForm(BonePiece(part, landmarks), solid, notches)


def _edge(solid: Solid, start: np.ndarray, reach: float) -> np.ndarray:
    """Where a line to the left from a point inside leaves the solid."""
    x = np.linspace(0.0, reach, 161)
    line = start + x[:, None] * _X
    inside = solid.distance(line) < 0
    last = int(np.flatnonzero(inside).max(initial=0))
    return line[last]
