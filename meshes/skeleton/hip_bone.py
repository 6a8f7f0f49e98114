"""The left hip bone: ilium, ischium and pubis.

Points are laid out in the model's axes for a sacral slope of 41 degrees and the
median man, then grown and turned with the sacrum, so that the sacro-iliac joint
fits at every slope.

Notes
-----
Breadth between the crests about 280 mm, between the anterior superior spines
about 240 mm, height about 217 mm, hip joints 176 mm apart (common practice, no
source). The hip axis lies 28 mm before and 93 mm below the sacral endplate's
centre: a pelvic incidence of about 58 degrees, within one standard deviation of
Vialle R et al., J Bone Joint Surg Am 2005;87:260-267 (from memory).
"""

from __future__ import annotations

import numpy as np

from meshes.model import Part
from meshes.shapes.contour import contour
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import SkeletonFrame, sagittal_axes
from meshes.skeleton.piece import BonePiece, snap_to_surface
from meshes.skeleton.sacrum import auricular_plane

_LAID_OUT_AT_DEG = 41.0
_SACROILIAC_GAP_MM = 1.0

HIP_CENTRE = np.array([88.0, -28.0, -93.0])
_HEAD_RADIUS = 24.0

# Middle of the iliac crest from the anterior to the posterior superior spine, with
# half thickness, mm: S-curved from above, thickest at the tubercle and behind.
CREST = np.array(
    [
        (118.0, -71.0, -25.0, 4.2),
        (124.0, -65.0, -8.0, 4.4),
        (130.5, -55.0, 9.0, 5.4),
        (133.5, -42.0, 24.0, 7.4),
        (134.0, -25.0, 35.5, 5.6),
        (129.0, -6.0, 41.5, 4.6),
        (119.0, 11.0, 42.0, 4.6),
        (105.0, 24.0, 38.0, 5.0),
        (89.0, 33.5, 28.0, 5.8),
        (74.0, 42.0, 14.0, 6.6),
        (60.0, 50.5, -3.0, 7.0),
        (48.0, 57.5, -20.0, 6.6),
    ]
)
# The foot of the wing, along the linea arcuata and over the acetabulum, opposite
# the crest's points, with half thickness there.
_FOOT = np.array(
    [
        (104.0, -58.0, -60.0, 8.0),
        (102.0, -53.0, -60.0, 8.0),
        (100.0, -46.0, -58.0, 8.5),
        (97.0, -38.0, -56.0, 9.0),
        (92.0, -28.0, -54.0, 9.0),
        (86.0, -17.0, -50.0, 9.0),
        (79.0, -6.0, -46.0, 9.5),
        (73.0, 4.0, -42.0, 9.5),
        (69.0, 13.0, -40.0, 9.0),
        (65.0, 21.0, -40.0, 8.5),
        (60.0, 30.0, -42.0, 8.0),
        (54.0, 38.0, -44.0, 7.5),
    ]
)
# How far the middle of the wing bows outward (the iliac fossa), and its half thickness.
_BOW = (1.0, 2.5, 4.5, 5.5, 5.5, 4.5, 3.0, 1.0, -0.5, -0.5, 0.0, 0.0)
_MIDDLE_HALF = (4.5, 3.6, 3.2, 3.4, 3.0, 2.7, 2.7, 3.4, 5.5, 8.0, 8.5, 7.5)

_ASIS = np.array([117.5, -73.0, -29.0])
_AIIS = np.array([104.0, -65.0, -64.0])
_PSIS = np.array([43.0, 61.0, -26.0])
_PIIS = np.array([48.0, 47.0, -57.0])
_SPINE = np.array([50.0, 15.0, -112.0])
_TUBER = np.array([60.0, -4.0, -160.0])
_CUP_AXIS = np.array([0.74, -0.30, -0.60])


class HipLayout:
    """Takes laid-out points of the median man to a body's, in the laid-out tilt.

    Parameters
    ----------
    frame : SkeletonFrame
    """

    def __init__(self, frame: SkeletonFrame) -> None:
        self.s = frame.scale
        # The sacrum of women is broader by the same share.
        self.breadth = self.s * (1.04 if frame.body.sex == "female" else 1.0)
        self._turn = frame.sacral_axes @ sagittal_axes(_LAID_OUT_AT_DEG).T

    def grow(self, points: np.ndarray) -> np.ndarray:
        """Grow (..., 3) laid-out points to the body's size."""
        return np.asarray(points, float) * [self.breadth, self.s, self.s]

    def turn(self, points: np.ndarray) -> np.ndarray:
        """Turn (..., 3) grown points with the sacrum."""
        return np.asarray(points, float) @ self._turn.T

    def place(self, points: np.ndarray) -> np.ndarray:
        """Grow and turn (..., 3) laid-out points into the model."""
        return self.turn(self.grow(points))


def hip_solid(frame: SkeletonFrame) -> Solid:
    """Solid of the left hip bone in the laid-out tilt, at the body's size."""
    layout = HipLayout(frame)
    g, s = layout.grow, layout.s
    solid = Solid()
    _wing(solid, layout)
    _columns(solid, layout)
    _pubis(solid, layout)
    _acetabulum(solid, layout)
    # Sacro-iliac joint: what lies within a hair of the sacrum's auricular plane goes.
    point, normal = auricular_plane(frame)
    turn = sagittal_axes(_LAID_OUT_AT_DEG)
    point, normal = turn @ point, turn @ normal
    back = np.array([0.0, 0.5, -1.0])
    back -= np.dot(back, normal) * normal
    back /= np.linalg.norm(back)
    axes = np.stack([normal, back, np.cross(normal, back)])
    solid.box(
        point + (_SACROILIAC_GAP_MM - 25.0 * s) * normal + 12.0 * s * back,
        (25.0 * s, 46.0 * s, 40.0 * s), axes, rounding=0.5, blend=0.8, operation="subtract",
    )  # fmt: skip
    # Symphysis: half of its disc's thickness from the midline.
    solid.plane(g([2.2, 0, 0]), (-1.0, 0.0, 0.0), blend=1.0)
    return solid


def _wing(solid: Solid, layout: HipLayout) -> None:
    g, s = layout.grow, layout.s
    crest, foot = g(CREST[:, :3]), g(_FOOT[:, :3])
    along = np.gradient(crest, axis=0)
    along /= np.linalg.norm(along, axis=1, keepdims=True)
    rise = crest - foot
    outward = np.cross(rise, along)
    outward /= np.linalg.norm(outward, axis=1, keepdims=True)
    outward *= np.sign(outward[:, :1])
    middle = 0.5 * (crest + foot) + outward * (np.array(_BOW) * s)[:, None]
    for i in range(len(crest) - 1):
        # Panels between neighbouring spokes of the fan, lower and upper half.
        spans = [0.5 * (line[i] + line[i + 1]) for line in (foot, middle, crest)]
        widths = [
            0.62 * np.linalg.norm(line[i + 1] - line[i]) + 1.5 * s
            for line in (foot, middle, crest)
        ]
        halves = [
            0.5 * (v[i] + v[i + 1]) * s for v in (_FOOT[:, 3], _MIDDLE_HALF, 0.8 * CREST[:, 3])
        ]
        sides = [line[i + 1] - line[i] for line in (foot, middle, crest)]
        for k in range(2):
            side = sides[k] + sides[k + 1]
            solid.blade(
                spans[k], spans[k + 1], side, widths[k : k + 2], halves[k : k + 2],
                blend=3.0 * s, power=2.6,
            )  # fmt: skip
    # The crest itself: a lip thicker than the wing below it.
    for i in range(len(crest) - 1):
        solid.blade(
            crest[i], crest[i + 1], outward[i] + outward[i + 1],
            CREST[i : i + 2, 3] * s, np.array([3.6, 3.6]) * s, blend=2.5 * s,
        )  # fmt: skip
    solid.cone(g(CREST[0, :3]), g(_ASIS), 4.6 * s, 4.4 * s, blend=3.0 * s)
    solid.ellipsoid(g(CREST[3, :3] + [3.0, 0.0, -1.5]), np.array([6.0, 11.0, 6.0]) * s,
                    blend=4.0 * s)  # fmt: skip
    solid.blade(g(CREST[-1, :3]), g(_PSIS), outward[-1], (6.6 * s, 6.2 * s), (6.4 * s, 6.0 * s),
                blend=3.0 * s)  # fmt: skip
    solid.blade(g(_PSIS + [2.0, -4.0, -6.0]), g(_PIIS), outward[-1], (5.4 * s, 4.6 * s),
                (7.0 * s, 5.4 * s), blend=4.0 * s)  # fmt: skip
    solid.blade(g(_PIIS + [1.0, -3.0, 4.0]), g([62.0, 24.0, -52.0]), outward[-2],
                (5.0 * s, 7.0 * s), (6.0 * s, 9.0 * s), blend=4.0 * s)  # fmt: skip
    # Anterior border with the lower spine.
    solid.blade(g(_ASIS + [-1.5, 3.0, 0.0]), g(_AIIS + [0.0, 5.0, 6.0]), (0.0, 1.0, 0.2),
                (6.0 * s, 8.0 * s), (4.2 * s, 6.5 * s), blend=4.0 * s)  # fmt: skip
    solid.cone(g(_AIIS + [-1.0, 10.0, 2.0]), g(_AIIS), 9.0 * s, 5.5 * s, blend=4.0 * s)


def _columns(solid: Solid, layout: HipLayout) -> None:
    g, s = layout.grow, layout.s
    # Thick bar from the auricular surface to the acetabulum's roof.
    solid.blade(g([66.0, 14.0, -38.0]), g([78.0, -12.0, -58.0]), (0.75, 0.1, 0.45),
                (10.0 * s, 13.0 * s), (14.0 * s, 16.0 * s), blend=6.0 * s)  # fmt: skip
    # Posterior column behind the acetabulum, down to the ischium.
    solid.blade(g([72.0, 4.0, -62.0]), g([75.0, 6.0, -100.0]), (0.3, 1.0, 0.0),
                (11.0 * s, 12.0 * s), (9.0 * s, 9.0 * s), blend=6.0 * s)  # fmt: skip
    solid.blade(g([75.0, 4.0, -98.0]), g([69.0, 1.0, -132.0]), (0.5, 1.0, 0.0),
                (13.0 * s, 13.5 * s), (10.0 * s, 10.5 * s), blend=6.0 * s)  # fmt: skip
    spine_root = g([67.0, 10.0, -108.0])
    solid.blade(spine_root, g(_SPINE), (0.0, 0.2, 1.0), (8.5 * s, 2.4 * s), (4.6 * s, 2.0 * s),
                blend=4.0 * s)  # fmt: skip
    # Tuberosity: rough and long, facing back and down.
    solid.blade(g([68.5, 4.0, -136.0]), g([58.0, -9.0, -160.5]), (0.8, 0.3, 0.0),
                (11.5 * s, 9.5 * s), (10.5 * s, 9.5 * s), blend=5.0 * s, power=2.4)  # fmt: skip
    # Ramus of the ischium, forward and inward to the pubis.
    solid.sweep(
        g([[57.0, -13.0, -160.0], [44.0, -31.0, -155.0], [28.0, -47.0, -141.0],
           [15.0, -56.0, -127.0]]),
        [(0.3, 0.5, 1.0), (0.5, 0.4, 1.0), (0.6, 0.3, 1.0), (0.6, 0.2, 1.0)],
        np.array([8.5, 7.0, 7.0, 9.0]) * s, np.array([6.5, 4.6, 4.4, 6.0]) * s, blend=5.0 * s,
    )  # fmt: skip


def _pubis(solid: Solid, layout: HipLayout) -> None:
    g, s = layout.grow, layout.s
    # Superior ramus, three-sided, with its pecten behind and the tubercle in front.
    solid.sweep(
        g([[82.0, -50.0, -84.0], [62.0, -60.0, -87.0], [40.0, -67.0, -93.0],
           [20.0, -69.0, -100.0]]),
        (0.0, 0.6, 1.0),
        np.array([11.5, 8.0, 7.0, 8.5]) * s, np.array([11.0, 7.5, 6.0, 6.6]) * s, blend=6.0 * s,
    )  # fmt: skip
    solid.blade(g([24.0, -67.0, -100.0]), g([2.0, -66.0, -102.0]), (0.0, 0.35, 1.0),
                (9.0 * s, 9.5 * s), (7.0 * s, 7.5 * s), blend=4.0 * s, power=2.6)  # fmt: skip
    solid.blade(g([9.0, -65.0, -100.0]), g([9.0, -50.0, -127.0]), (1.0, 0.0, 0.0),
                (11.0 * s, 8.0 * s), (7.8 * s, 6.6 * s), blend=4.0 * s, power=2.6)  # fmt: skip
    solid.ellipsoid(g([25.0, -74.0, -95.5]), np.array([5.0, 4.6, 4.4]) * s, blend=3.5 * s)
    solid.sweep(
        g([[66.0, -44.0, -76.0], [48.0, -59.0, -83.5], [27.0, -69.0, -92.0]]),
        (0.0, 0.6, 1.0), 3.2 * s, np.array([3.0, 2.6, 2.4]) * s, blend=4.0 * s,
    )  # fmt: skip


def _acetabulum(solid: Solid, layout: HipLayout) -> None:
    g, s = layout.grow, layout.s
    centre = g(HIP_CENTRE)
    axis = _CUP_AXIS / np.linalg.norm(_CUP_AXIS)
    radius = _HEAD_RADIUS * s
    inner = radius + 3.0 * s
    solid.ellipsoid(centre - 3.0 * s * axis, np.full(3, inner + 6.0 * s), blend=5.0 * s)
    # The brim: everything outside the plane of the opening near the joint goes.
    ortho = np.array([0.0, 1.0, -0.5])
    ortho -= np.dot(ortho, axis) * axis
    ortho /= np.linalg.norm(ortho)
    axes = np.stack([axis, ortho, np.cross(axis, ortho)])
    solid.ellipsoid(centre + (4.0 + 22.0) * s * axis, np.array([22.0, 36.0, 36.0]) * s, axes,
                    blend=2.0 * s, operation="subtract")  # fmt: skip
    solid.ellipsoid(centre, np.full(3, inner), blend=1.2 * s, operation="subtract")
    # Notch at the lower brim and the fossa in the floor.
    notch = np.array([-0.25, -0.15, -1.0])
    notch -= np.dot(notch, axis) * axis
    notch /= np.linalg.norm(notch)
    solid.cone(centre - 8.0 * s * axis + 12.0 * s * notch, centre + 4.0 * s * axis + 34.0 * s * notch,
               8.0 * s, blend=2.0 * s, operation="subtract")  # fmt: skip
    solid.ellipsoid(centre - 0.55 * inner * axis + 4.0 * s * notch, np.full(3, 15.5 * s),
                    blend=2.0 * s, operation="subtract")  # fmt: skip


def make_hip_bone(frame: SkeletonFrame, detail: str) -> BonePiece:
    """Build the left hip bone.

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
    solid = hip_solid(frame)
    bounds = solid.bounds()
    bounds[0, 0] = 0.0
    mesh = contour(
        solid, {"full": 1.7, "preview": 3.0}[detail] * s, {"full": 7000, "preview": 1300}[detail],
        bounds=bounds,
    )  # fmt: skip
    mesh.vertices = layout.turn(mesh.vertices)
    part = Part("hip_bone.left", "hip_bone", "bone", 9, "", mesh, region="pelvis")
    return BonePiece(part, _landmarks(layout, mesh))


def _landmarks(layout: HipLayout, mesh) -> dict[str, np.ndarray]:
    crest = CREST[:, :3]
    along = np.gradient(crest, axis=0)
    outward = np.cross(crest - _FOOT[:, :3], along)
    outward /= np.linalg.norm(outward, axis=1, keepdims=True)
    outward *= np.sign(outward[:, :1])
    t = np.linspace(0.0, len(crest) - 1.0, 34)
    index = np.arange(len(crest))
    # Between the middle of the crest and its outer lip, on top.
    lip = crest + 0.75 * CREST[:, 3:] * outward
    lip[:, 2] += 3.0
    line = np.stack([np.interp(t, index, lip[:, i]) for i in range(3)], axis=1)
    line = np.concatenate([[_ASIS + [2.0, -3.0, -1.0]], line, [_PSIS + [0.0, 5.0, 0.0]]])[::-1]
    panel = np.linspace(0.2, 0.75, 5)[:, None, None]
    wing = (1 - panel) * _FOOT[2:9, :3] + panel * crest[2:9]
    wing = wing + outward[2:9] * (np.array(_BOW[2:9])[:, None] + 5.0)
    gluteal = np.linspace(0.0, 1.0, 8)[:, None]
    posterior_line = (1 - gluteal) * (0.8 * crest[8] + 0.2 * _FOOT[8, :3]) + gluteal * (
        0.15 * crest[10] + 0.85 * _FOOT[10, :3]
    )
    posterior_line = posterior_line + 8.0 * outward[9]
    points = {
        "ilium.left.crest": line,
        "ilium.left.PSIS": _PSIS + [0.0, 6.0, 0.5],
        "ilium.left.PIIS": _PIIS + [0.0, 5.0, -3.0],
        "ilium.left.ASIS": _ASIS + [1.0, -4.5, 0.0],
        "ilium.left.AIIS": _AIIS + [1.0, -5.0, 0.0],
        "ilium.left.crest_top": crest[5] + [0.0, 8.0, 6.0],
        "ilium.left.iliac_tubercle": crest[3] + [9.0, 0.0, 2.0],
        "ilium.left.gluteal_surface": wing.reshape(-1, 3),
        "ilium.left.posterior_gluteal_line": posterior_line,
        "ilium.left.ischial_tuberosity": _TUBER + [0.0, 10.0, -2.0],
        "ilium.left.ischial_spine": _SPINE + [-1.5, 0.5, 0.0],
        "ilium.left.pubic_tubercle": np.array([25.0, -79.0, -94.0]),
    }
    names = list(points)
    stacked = np.concatenate([np.atleast_2d(points[name]) for name in names])
    snapped = snap_to_surface(mesh, layout.place(stacked))
    found, start = {}, 0
    for name in names:
        count = len(np.atleast_2d(points[name]))
        taken = snapped[start : start + count]
        found[name] = taken[0] if np.ndim(points[name]) == 1 else taken
        start += count
    top = mesh.vertices[np.argmax(mesh.vertices[:, 2])]
    found["ilium.left.crest_top"] = np.array(top)
    found["acetabulum.left.centre"] = layout.place(HIP_CENTRE)
    for name in ("ischial_tuberosity", "ischial_spine"):
        found[f"ischium.left.{name}"] = found[f"ilium.left.{name}"]
    return found
