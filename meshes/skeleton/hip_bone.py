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
import trimesh
from scipy.interpolate import CubicSpline
from scipy.ndimage import binary_dilation
from scipy.spatial import cKDTree

from meshes.model import Part
from meshes.shapes.contour import contour_grid, largest_piece, relax, simplify
from meshes.shapes.solid import Solid, evaluate_grid
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
        (118.0, -71.0, -25.0, 4.6),
        (124.0, -65.0, -8.0, 4.8),
        (130.0, -55.0, 7.0, 6.0),
        (133.0, -42.0, 18.5, 8.2),
        (132.5, -25.0, 26.5, 6.4),
        (127.5, -7.0, 32.0, 5.2),
        (117.5, 9.0, 35.0, 4.8),
        (104.0, 23.0, 35.0, 5.0),
        (89.0, 34.0, 29.5, 6.0),
        (74.5, 43.5, 18.5, 7.2),
        (61.0, 51.5, 2.0, 8.0),
        (49.5, 55.5, -16.0, 7.4),
        (43.5, 57.0, -28.0, 6.0),
    ]
)
# The foot of the wing, along the linea arcuata and over the acetabulum, opposite
# the crest's points, with half thickness there.
_FOOT = np.array(
    [
        (105.0, -62.0, -62.0, 5.5),
        (104.0, -56.0, -66.0, 8.0),
        (104.0, -47.0, -70.0, 11.0),
        (103.0, -38.0, -72.0, 13.0),
        (99.0, -28.0, -70.0, 14.0),
        (92.0, -17.0, -65.0, 13.0),
        (82.0, -6.0, -58.0, 11.5),
        (73.0, 3.0, -51.0, 10.0),
        (67.0, 11.0, -46.0, 9.0),
        (62.0, 19.0, -44.0, 8.5),
        (58.0, 28.0, -46.5, 8.0),
        (53.0, 38.0, -53.0, 7.0),
        (48.5, 45.5, -58.0, 5.0),
    ]
)
# How far the middle of the wing bows outward (the iliac fossa), and its half thickness.
_BOW = (1.0, 3.0, 5.5, 7.0, 7.0, 4.5, 0.5, -4.0, -7.0, -7.0, -4.5, -1.5, 0.0)
_MIDDLE_HALF = (4.2, 3.6, 3.2, 3.4, 3.0, 2.8, 3.0, 4.4, 6.6, 8.0, 8.2, 7.4, 5.4)

_ASIS = np.array([117.5, -73.0, -29.0])
_AIIS = np.array([104.0, -65.0, -64.0])
_PSIS = np.array([43.0, 58.0, -26.0])
_PIIS = np.array([48.0, 47.0, -57.0])
_SPINE = np.array([50.0, 15.0, -112.0])
_TUBER = np.array([60.0, -4.0, -160.0])
_CUP_AXIS = np.array([0.74, -0.30, -0.60])


# The points were laid out for a bone that proved a tenth too short: the top of the
# greater trochanter lay 131 mm below the crest, against 161 mm (ANSUR II, men). All that
# hangs below the sacro-iliac joint stands so much lower than laid out, mm.
_LONGER = 19.0


def _lengthened(points: np.ndarray) -> np.ndarray:
    """Take (..., 3) laid-out points to those of the longer bone, mm."""
    points = np.array(points, float)
    low = np.clip((-36.0 - points[..., 2]) / 50.0, 0.0, 1.0)
    forward = np.clip((44.0 - points[..., 1]) / 30.0, 0.0, 1.0)
    share = (low * low * (3 - 2 * low)) * (forward * forward * (3 - 2 * forward))
    points[..., 2] -= _LONGER * share
    return points


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
        return _lengthened(points) * [self.breadth, self.s, self.s]

    def turn(self, points: np.ndarray) -> np.ndarray:
        """Turn (..., 3) grown points with the sacrum."""
        return np.asarray(points, float) @ self._turn.T

    def place(self, points: np.ndarray) -> np.ndarray:
        """Grow and turn (..., 3) laid-out points into the model."""
        return self.turn(self.grow(points))


def _wing_samples(layout: HipLayout) -> tuple[np.ndarray, np.ndarray]:
    """Points (n, 3) strewn over the wing's middle surface and half thickness (n,) there, mm."""
    s = layout.s
    crest, foot = layout.grow(CREST[:, :3]), layout.grow(_FOOT[:, :3])
    bow = _outward(crest, foot) * (np.array(_BOW) * s)[:, None]
    knots = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(crest, axis=0), axis=1))])
    across = np.linspace(0.0, knots[-1], int(knots[-1] / (1.5 * s)))
    rails = np.concatenate(
        [foot, bow, crest, _FOOT[:, 3:] * s, np.array(_MIDDLE_HALF)[:, None] * s, CREST[:, 3:] * s],
        axis=1,
    )
    rails = CubicSpline(knots, rails)(across)
    foot, bow, crest = rails[:, 0:3], rails[:, 3:6], rails[:, 6:9]
    up = np.linspace(0.0, 1.0, 66)[:, None]
    points = (
        (1 - up[..., None]) * foot + up[..., None] * crest + (4 * up * (1 - up))[..., None] * bow
    )
    # The crest is a lip on a thin plate: the thickness gathers in the last tenth.
    low = np.clip(1.0 - up / 0.45, 0.0, 1.0) ** 1.5
    lip = np.clip((up - 0.74) / 0.26, 0.0, 1.0) ** 2.2
    half = rails[:, 10] + low * (rails[:, 9] - rails[:, 10]) + lip * (rails[:, 11] - rails[:, 10])
    return points.reshape(-1, 3), np.maximum(half, 2.2 * s).ravel()


def _outward(crest: np.ndarray, foot: np.ndarray) -> np.ndarray:
    """Unit directions from the inner to the gluteal face, opposite the crest's points."""
    outward = np.cross(crest - foot, np.gradient(crest, axis=0))
    outward /= np.linalg.norm(outward, axis=1, keepdims=True)
    return outward * np.sign(outward[:, :1])


def _body_solid(frame: SkeletonFrame, layout: HipLayout) -> Solid:
    """All of the hip bone that is no plate: spines, columns, ischium, pubis, socket wall."""
    g, s = layout.grow, layout.s
    solid = Solid()
    _auricular(solid, frame, layout)
    _spines(solid, layout)
    _columns(solid, layout)
    _pubis(solid, layout)
    axis, _ = _cup_axes()
    solid.ellipsoid(
        g(HIP_CENTRE) - 2.0 * s * axis, np.full(3, (_HEAD_RADIUS + 3.0 + 4.8) * s), blend=9.0 * s
    )
    return solid


def _cutters(frame: SkeletonFrame, layout: HipLayout) -> Solid:
    """What is taken away: the socket, the sacrum's side, the other pubis."""
    s = layout.s
    solid = Solid()
    _socket(solid, layout)
    # Sacro-iliac joint: what lies within a hair of the sacrum's auricular plane goes.
    point, axes = _auricular_axes(frame)
    solid.box(
        point + (_SACROILIAC_GAP_MM - 25.0 * s) * axes[0] + 12.0 * s * axes[1],
        (25.0 * s, 46.0 * s, 40.0 * s), axes, rounding=0.5, blend=0.8,
    )  # fmt: skip
    # Symphysis: half of its disc's thickness from the midline.
    solid.plane(layout.grow([2.2, 0, 0]), (1.0, 0.0, 0.0), blend=1.0, operation="union")
    return solid


def _auricular_axes(frame: SkeletonFrame) -> tuple[np.ndarray, np.ndarray]:
    """Middle of the sacrum's auricular surface in the laid-out tilt, and (3, 3) rows:
    outward, down along the sacrum, and across."""
    point, normal = auricular_plane(frame)
    turn = sagittal_axes(_LAID_OUT_AT_DEG)
    point, normal = turn @ point, turn @ normal
    down = np.array([0.0, 0.5, -1.0])
    down -= np.dot(down, normal) * normal
    down /= np.linalg.norm(down)
    return point, np.stack([normal, down, np.cross(normal, down)])


def _auricular(solid: Solid, frame: SkeletonFrame, layout: HipLayout) -> None:
    """The thick part of the ilium that carries the auricular surface."""
    s = layout.s
    point, (normal, down, across) = _auricular_axes(frame)
    middle = point + 5.0 * s * normal
    solid.blade(
        middle - 3.0 * s * down, middle + 24.0 * s * down, across,
        (17.0 * s, 14.0 * s), (7.5 * s, 8.0 * s), blend=8.0 * s, power=2.4,
    )  # fmt: skip


def _spines(solid: Solid, layout: HipLayout) -> None:
    g, s = layout.grow, layout.s
    solid.cone(g(CREST[0, :3]), g(_ASIS), 4.4 * s, 4.6 * s, blend=3.0 * s)
    solid.ellipsoid(g(_PSIS), np.array([6.0, 6.0, 8.5]) * s, blend=4.0 * s)
    solid.cone(g(_PIIS + [3.0, -5.0, 5.0]), g(_PIIS), 6.0 * s, 4.6 * s, blend=4.0 * s)
    # Anterior border with the lower spine.
    solid.blade(
        g(_ASIS + [-2.0, 5.0, -4.0]), g(_AIIS + [0.0, 6.0, 6.0]), (0.0, 1.0, 0.2),
        (4.0 * s, 7.0 * s), (3.4 * s, 6.0 * s), blend=4.0 * s,
    )  # fmt: skip
    solid.cone(g(_AIIS + [-2.0, 10.0, 0.0]), g(_AIIS), 9.0 * s, 5.5 * s, blend=5.0 * s)


def _columns(solid: Solid, layout: HipLayout) -> None:
    g, s = layout.grow, layout.s
    # Thick bar from the auricular surface to the acetabulum's roof.
    solid.blade(
        g([66.0, 14.0, -38.0]), g([80.0, -12.0, -62.0]), (0.75, 0.1, 0.45),
        (10.0 * s, 13.0 * s), (14.0 * s, 17.0 * s), blend=7.0 * s,
    )  # fmt: skip
    # Posterior column behind the acetabulum, down to the ischium and its tuberosity.
    column = g(
        [[75.0, -1.0, -58.0], [78.0, 1.0, -80.0], [76.0, 2.5, -98.0], [72.5, 1.5, -116.0],
         [68.0, 1.0, -132.0], [63.0, -2.5, -147.0], [57.5, -9.0, -160.0]]
    )  # fmt: skip
    solid.sweep(
        column,
        [(0.5, 1, 0), (0.7, 1, 0), (0.8, 1, 0), (0.8, 0.9, 0), (0.9, 0.6, 0), (1, 0.5, 0),
         (1, 0.5, 0)],
        np.array([13.0, 16.0, 17.0, 15.0, 14.0, 13.0, 9.5]) * s,
        np.array([9.0, 10.0, 10.5, 10.5, 11.0, 11.0, 9.0]) * s, blend=8.0 * s,
    )  # fmt: skip
    for middle, size in (([70.0, 3.5, -138.0], 9.0), ([64.0, 3.0, -147.0], 8.0)):
        solid.ellipsoid(g(middle), np.array([size + 2.5, size, size + 2.0]) * s, blend=7.0 * s)
    solid.blade(
        g([66.0, 9.0, -107.0]), g(_SPINE), (0.0, 0.2, 1.0), (10.0 * s, 2.6 * s),
        (4.8 * s, 2.2 * s), blend=6.0 * s,
    )  # fmt: skip
    # Ramus of the ischium, forward and inward to the pubis.
    solid.sweep(
        g([[57.0, -12.0, -159.0], [49.0, -24.0, -156.5], [39.0, -35.0, -150.0],
           [28.0, -45.0, -140.5], [19.0, -52.0, -131.0], [12.0, -56.0, -122.0]]),
        [(0.3, 0.5, 1.0), (0.4, 0.4, 1.0), (0.5, 0.4, 1.0), (0.6, 0.3, 1.0), (0.6, 0.2, 1.0),
         (0.6, 0.2, 1.0)],
        np.array([8.5, 7.2, 6.6, 6.8, 7.6, 9.0]) * s, np.array([7.0, 5.0, 4.4, 4.4, 5.0, 6.0]) * s,
        blend=6.0 * s,
    )  # fmt: skip


def _pubis(solid: Solid, layout: HipLayout) -> None:
    g, s = layout.grow, layout.s
    # Superior ramus, three-sided, with its pecten behind and the tubercle in front.
    solid.sweep(
        g([[84.0, -50.0, -83.0], [70.0, -57.0, -84.5], [55.0, -63.0, -88.0], [40.0, -67.0, -93.0],
           [28.0, -68.5, -97.0], [18.0, -68.5, -101.0]]),
        (0.0, 0.6, 1.0),
        np.array([12.5, 9.5, 7.6, 7.0, 7.6, 9.0]) * s,
        np.array([12.0, 8.5, 6.8, 6.0, 6.2, 6.8]) * s,
        blend=8.0 * s,
    )  # fmt: skip
    solid.blade(
        g([22.0, -66.5, -102.0]), g([1.0, -64.0, -104.0]), (0.0, 0.35, 1.0),
        (9.5 * s, 11.0 * s), (7.0 * s, 7.6 * s), blend=5.0 * s, power=2.6,
    )  # fmt: skip
    solid.blade(
        g([8.5, -64.0, -102.0]), g([8.5, -52.0, -126.0]), (1.0, 0.0, 0.0),
        (11.0 * s, 9.0 * s), (7.6 * s, 6.6 * s), blend=5.0 * s, power=2.6,
    )  # fmt: skip
    solid.ellipsoid(g([25.0, -74.0, -95.5]), np.array([5.0, 4.6, 4.4]) * s, blend=4.0 * s)
    solid.sweep(
        g([[72.0, -38.0, -70.0], [60.0, -51.0, -79.0], [44.0, -62.0, -86.0], [27.0, -69.5, -92.5]]),
        (0.0, 0.6, 1.0), 3.2 * s, np.array([3.0, 2.8, 2.6, 2.4]) * s, blend=5.0 * s,
    )  # fmt: skip


def _cup_axes() -> tuple[np.ndarray, np.ndarray]:
    """Direction in which the socket opens, and (3, 3) rows with it first."""
    axis = _CUP_AXIS / np.linalg.norm(_CUP_AXIS)
    ortho = np.array([0.0, 1.0, -0.5])
    ortho -= np.dot(ortho, axis) * axis
    ortho /= np.linalg.norm(ortho)
    return axis, np.stack([axis, ortho, np.cross(axis, ortho)])


def _socket(solid: Solid, layout: HipLayout) -> None:
    s = layout.s
    centre = layout.grow(HIP_CENTRE)
    axis, axes = _cup_axes()
    inner = (_HEAD_RADIUS + 3.0) * s
    # The brim: what stands outside the plane of the opening goes.
    solid.ellipsoid(centre + 27.0 * s * axis, np.array([23.0, 36.0, 36.0]) * s, axes, blend=2.0 * s)
    solid.ellipsoid(centre, np.full(3, inner), blend=1.2 * s)
    # Notch at the lower brim and the fossa in the floor.
    notch = np.array([-0.25, -0.35, -1.0])
    notch -= np.dot(notch, axis) * axis
    notch /= np.linalg.norm(notch)
    solid.cone(
        centre - 6.0 * s * axis + 14.0 * s * notch, centre + 14.0 * s * axis + 37.0 * s * notch,
        8.5 * s, 10.0 * s, blend=2.0 * s,
    )  # fmt: skip
    solid.ellipsoid(
        centre - 0.55 * inner * axis + 4.0 * s * notch, np.full(3, 15.5 * s), blend=2.0 * s
    )


def _field(
    frame: SkeletonFrame, layout: HipLayout, spacing: float
) -> tuple[np.ndarray, np.ndarray]:
    """Distance grid (nz, ny, nx) of the hip bone and its lower corner."""
    s = layout.s
    body, cut = _body_solid(frame, layout), _cutters(frame, layout)
    wing, half = _wing_samples(layout)
    lower = np.minimum(body.bounds()[0], wing.min(0) - 12.0 * s)
    upper = np.maximum(body.bounds()[1], wing.max(0) + 12.0 * s)
    lower[0] = max(lower[0], 0.0)
    count = np.ceil((upper - lower) / spacing).astype(int) + 1
    values = evaluate_grid(body.program, lower, spacing, *map(int, count), 6)
    reach = 9.0 * s
    # Only the nodes near the wing are measured to it.
    node = np.rint((wing - lower) / spacing).astype(int)
    near = np.zeros(values.shape, bool)
    near[node[:, 2], node[:, 1], node[:, 0]] = True
    near = binary_dilation(near, np.ones((3, 3, 3), bool), iterations=int(reach / spacing) + 1)
    k, j, i = np.nonzero(near)
    places = lower + spacing * np.stack([i, j, k], axis=1)
    # Points where the plate is thick count as nearer.
    distance, index = cKDTree(wing).query(places, k=3)
    plate = (distance - half[index]).min(axis=1)
    values[k, j, i] = _melt(values[k, j, i], plate, 5.0 * s)
    taken = evaluate_grid(cut.program, lower, spacing, *map(int, count), 6)
    values = -_melt(-values, taken, 1.2 * s)
    for axis in range(3):
        edge = [slice(None)] * 3
        for end in (0, -1):
            edge[axis] = end
            values[tuple(edge)] = np.maximum(values[tuple(edge)], 0.25 * spacing)
    return values, lower


def _melt(a: np.ndarray, b: np.ndarray, blend: float) -> np.ndarray:
    """Smooth minimum of two distances."""
    h = np.maximum(blend - np.abs(a - b), 0.0) / blend
    return np.minimum(a, b) - h * h * blend * 0.25


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
    spacing = {"full": 1.6, "preview": 2.6}[detail] * s
    values, lower = _field(frame, layout, spacing)
    vertices, faces = largest_piece(*contour_grid(values, lower, spacing))
    vertices = relax(vertices, faces, 4)
    vertices, faces = simplify(vertices, faces, {"full": 7000, "preview": 1300}[detail])
    mesh = trimesh.Trimesh(vertices, faces, process=False)
    mesh.vertices = layout.turn(mesh.vertices)
    part = Part("hip_bone.left", "hip_bone", "bone", 9, "", mesh, region="pelvis")
    return BonePiece(part, _landmarks(layout, mesh))


def _landmarks(layout: HipLayout, mesh) -> dict[str, np.ndarray]:
    crest = CREST[:, :3]
    outward = _outward(crest, _FOOT[:, :3])
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
