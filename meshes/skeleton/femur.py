"""The upper end of the left femur, cut across below the gluteal tuberosity."""

from __future__ import annotations

import numpy as np

from meshes.model import Part
from meshes.shapes.contour import contour
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import SkeletonFrame
from meshes.skeleton.hip_bone import HIP_CENTRE, HipLayout
from meshes.skeleton.piece import BonePiece, snap_to_surface

# From the centre of the head, mm: neck-shaft angle about 126 degrees, neck turned
# forward about 12 degrees, offset 43 mm (common practice, no source).
_SHAFT_TOP = np.array([43.0, 9.0, -34.0])
_SHAFT_END = np.array([35.0, 8.0, -150.0])


def femur_solid(scale: float) -> Solid:
    """Solid of the upper femur about the centre of its head, mm."""
    s = scale
    solid = Solid()
    solid.ellipsoid((0, 0, 0), (24.0 * s, 24.0 * s, 24.0 * s))
    solid.blade(
        np.array([6.0, 1.0, -4.0]) * s, np.array([38.0, 8.5, -29.0]) * s, (0.55, 0.0, 0.8),
        (14.5 * s, 18.0 * s), (12.5 * s, 12.5 * s), blend=4.0 * s,
    )  # fmt: skip
    solid.cone(_SHAFT_TOP * s, (_SHAFT_TOP + [-2.5, -0.5, -34.0]) * s, 17.5 * s, 15.5 * s,
               blend=6.0 * s)  # fmt: skip
    solid.cone((_SHAFT_TOP + [-2.5, -0.5, -34.0]) * s, _SHAFT_END * s, 15.5 * s, 14.0 * s,
               blend=1.0 * s)  # fmt: skip
    # Greater trochanter: a block standing up behind the neck, its tip bent inward.
    solid.blade(
        np.array([55.0, 11.0, -38.0]) * s, np.array([53.0, 17.0, -12.0]) * s, (0.25, 1.0, 0.0),
        (19.0 * s, 10.5 * s), (10.5 * s, 8.5 * s), blend=6.0 * s,
    )  # fmt: skip
    solid.blade(
        np.array([53.0, 10.5, -36.0]) * s, np.array([42.0, 9.0, -88.0]) * s, (0.25, 1.0, 0.0),
        (18.0 * s, 14.0 * s), (11.5 * s, 13.0 * s), blend=8.0 * s,
    )  # fmt: skip
    solid.cone(np.array([52.0, 18.0, -14.0]) * s, np.array([46.0, 21.0, -7.0]) * s, 7.5 * s, 5 * s,
               blend=4.0 * s)  # fmt: skip
    solid.ellipsoid(np.array([38.0, 22.0, -14.0]) * s, (8.0 * s, 8.0 * s, 9.0 * s), blend=3.0 * s,
                    operation="subtract")  # fmt: skip
    # Lesser trochanter and the crest between the two.
    solid.cone(np.array([33.0, 14.0, -58.0]) * s, np.array([25.0, 23.0, -57.0]) * s, 10.0 * s,
               5.5 * s, blend=5.0 * s)  # fmt: skip
    solid.blade(
        np.array([51.0, 23.0, -16.0]) * s, np.array([31.0, 22.0, -52.0]) * s, (0.6, 0.2, -0.7),
        4.0 * s, 4.0 * s, blend=5.0 * s,
    )  # fmt: skip
    # Gluteal tuberosity, running down into the linea aspera.
    solid.sweep(
        np.array([[53.0, 19.0, -66.0], [49.0, 22.0, -92.0], [44.0, 22.5, -120.0],
                  [38.0, 22.5, -150.0]]) * s,
        (1.0, 0.3, 0.0), np.array([4.5, 4.0, 3.2, 2.8]) * s, np.array([3.0, 3.2, 3.0, 2.8]) * s,
        blend=5.0 * s,
    )  # fmt: skip
    solid.ellipsoid(np.array([-23.0, 2.0, -5.0]) * s, (4.0 * s, 4.5 * s, 4.5 * s), blend=1.5 * s,
                    operation="subtract")  # fmt: skip
    solid.plane(np.array([0.0, 0.0, -143.0]) * s, (0.0, 0.0, -1.0), blend=0.8)
    return solid


def make_femur(frame: SkeletonFrame, detail: str) -> BonePiece:
    """Build the upper end of the left femur.

    Parameters
    ----------
    frame : SkeletonFrame
    detail : {"preview", "full"}

    Returns
    -------
    BonePiece
    """
    layout = HipLayout(frame)
    s = layout.s
    solid = femur_solid(s)
    mesh = contour(
        solid, {"full": 1.9, "preview": 3.2}[detail] * s, {"full": 2800, "preview": 560}[detail]
    )
    head = layout.place(HIP_CENTRE)
    mesh.vertices = mesh.vertices + head
    part = Part("femur.left", "femur", "bone", 9, "", mesh, region="pelvis")
    wanted = head + s * np.array(
        [
            [66.0, 14.0, -24.0],
            [53.0, 19.0, -2.0],
            [51.0, 26.0, -84.0],
            [22.0, 28.0, -57.0],
        ]
    )
    line = head + s * np.array([[56, 22, -62], [53, 25, -75], [50, 26, -90], [47, 26, -105.0],
                                [44, 26, -120.0]])  # fmt: skip
    side, tip, tuberosity, lesser = snap_to_surface(mesh, wanted)
    landmarks = {
        "femur.left.head_centre": head,
        "femur.left.greater_trochanter": side,
        "femur.left.greater_trochanter_tip": tip,
        "femur.left.gluteal_tuberosity": tuberosity,
        "femur.left.gluteal_tuberosity_line": snap_to_surface(mesh, line),
        "femur.left.lesser_trochanter": lesser,
    }
    return BonePiece(part, landmarks)
