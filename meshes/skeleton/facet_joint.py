"""The zygapophysial joints: where the articular processes of two neighbours meet.

Both bones take their facets from the same joint, so that they fit with an even
gap whatever the curvature of the column.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.skeleton.frame import (
    CERVICAL,
    LEVELS,
    SkeletonFrame,
    disc_height,
    sagittal_axes,
)
from meshes.skeleton.vertebra_tables import SHAPES

GAP_MM = 1.0
"""Between the facets; two layers of cartilage are about as thick (common practice)."""


@dataclass(frozen=True, slots=True)
class FacetJoint:
    """The left joint below a level, in the model's axes.

    Attributes
    ----------
    upper : str
        Level of the bone above.
    kind : {"cervical", "thoracic", "lumbar"}
    centre : (3,) float
        Middle of the gap, mm.
    normal : (3,) float
        Unit, out of the lower bone's superior facet towards the upper bone.
    along : (3,) float
        Unit, in the plane of the facet, upwards.
    across : (3,) float
        Unit, in the plane of the facet, to the side.
    half : (2,) float
        Half size of the facet across and along, mm.
    """

    upper: str
    kind: str
    centre: np.ndarray
    normal: np.ndarray
    along: np.ndarray
    across: np.ndarray
    half: tuple[float, float]


def facet_joint(frame: SkeletonFrame, upper: str) -> FacetJoint:
    """Joint below a level C2 to L5 (L5: with the sacrum).

    Parameters
    ----------
    frame : SkeletonFrame
    upper : str

    Returns
    -------
    FacetJoint
    """
    shape = SHAPES[upper]
    s = frame.scale
    top = frame[upper]
    left, back, inclination, turn = shape.facets
    if upper == "L5":
        tilt = 0.5 * (top.tilt_deg + frame.body.sacral_slope_deg)
        rear = 0.5 * top.depth
        axes = sagittal_axes(tilt)
        middle = 0.5 * disc_height("L5", s) * axes[:, 2]
    else:
        below = frame[LEVELS[LEVELS.index(upper) + 1]]
        axes = sagittal_axes(0.5 * (top.tilt_deg + below.tilt_deg))
        rear = 0.25 * (top.depth + below.depth)
        under = top.centre - 0.5 * top.height * top.axes[:, 2]
        over = below.centre + 0.5 * below.height * below.axes[:, 2]
        middle = 0.5 * (under + over)
    kind = "cervical" if upper in CERVICAL else "thoracic"
    if upper == "T12" or upper.startswith("L"):
        kind = "lumbar"
    up = {"cervical": 0.0, "thoracic": 1.0, "lumbar": -0.5}[kind] * s
    half = {"cervical": (5.6, 5.2), "thoracic": (5.0, 5.6), "lumbar": (6.6, 7.4)}[kind]
    centre = middle + axes @ np.array([left * s, rear + back * s, up])
    i, t = np.deg2rad(inclination), np.deg2rad(turn)
    if kind == "lumbar":
        normal = np.array([-np.cos(t), np.sin(t), 0.0])
        across = np.array([np.sin(t), np.cos(t), 0.0])
        along = np.array([0.0, 0.0, 1.0])
    else:
        normal = np.array([np.sin(t) * np.sin(i), np.cos(t) * np.sin(i), np.cos(i)])
        across = np.array([np.cos(t), -np.sin(t), 0.0])
        along = np.cross(normal, across)
        along *= np.sign(along[2])
    return FacetJoint(
        upper, kind, centre, axes @ normal, axes @ along, axes @ across,
        (half[0] * s, half[1] * s),
    )  # fmt: skip
