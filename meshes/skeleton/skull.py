"""The skull: a simple head with a true back and base, seated on the atlas.

Own frame: origin midway between the superior facets of the atlas; x left,
y back, z up, the head level. Numbers are a man's, mm. Length, breadth and
height of the vault: common values of men's skulls (about 185, 142 and 135 mm
from the base to the top). The face and the lower jaw: :mod:`meshes.skeleton.face`.
"""

from __future__ import annotations

import numpy as np
import trimesh

from meshes.model import Part
from meshes.shapes.plate import DistanceGrid, open_spline
from meshes.shapes.solid import Solid
from meshes.skeleton import face
from meshes.skeleton.atlas_axis import atlas_plan
from meshes.skeleton.frame import SkeletonFrame
from meshes.skeleton.piece import BonePiece, snap_to_both_sides

_TRIANGLES = {"full": 18000, "preview": 2800}
_SPACING = {"full": 1.7, "preview": 2.1}
_JAW_TRIANGLES = {"full": 7000, "preview": 700}
_JAW_SPACING = {"full": 1.3, "preview": 1.8}

PROTUBERANCE = np.array([0.0, 84.0, 41.0])
"""External occipital protuberance, own frame, mm."""
MASTOID_TIP = np.array([51.5, 11.0, -8.0])
_OPISTHION = np.array([0.0, 27.0, 9.5])
_BASION = np.array([0.0, -11.0, 8.0])

# Courses drawn near the surface and pressed on to it (x, y, z).
_SUPERIOR_LINE = np.array(
    [(3, 85.5, 41), (14, 84.5, 42.5), (26, 79.5, 42.0), (38, 70.0, 38.0), (48, 58.0, 32.0),
     (55, 46.0, 26.0), (60, 33.0, 19.0), (62, 22.0, 12.0)]
)  # fmt: skip
_INFERIOR_LINE = np.array(
    [(2, 57, 23), (11, 58, 22.5), (21, 54.5, 20.0), (31, 47.0, 15.5), (39, 37.0, 10.0),
     (44, 26.0, 7.0)]
)  # fmt: skip
_CREST = np.array([(0, 84.0, 38.5), (0, 72, 31), (0, 57, 22.5), (0, 42, 15), (0, 31, 10.5)])


def head_scale(frame: SkeletonFrame) -> float:
    """Size of the head relative to the median man's: it follows stature only in part."""
    size = 1.0 + 0.45 * (frame.scale * frame.body.factor - 1.0)
    return size / frame.body.factor * (0.985 if frame.body.sex == "female" else 1.0)


def _vault() -> Solid:
    """Braincase: smooth, a little flattened at the sides, with the slope of the nuchal plane."""
    solid = Solid()
    solid.ellipsoid((0, 0, 62), (70.6, 86.5, 68), blend=0.0)
    solid.ellipsoid((0, -40, 58), (60, 56, 56), blend=14.0)
    solid.ellipsoid((0, 37, 58), (60, 53, 50), blend=14.0)
    # Temporal squama, which comes down steeply to the ear.
    solid.ellipsoid((0, 2, 40), (67.9, 62, 44), blend=10.0)
    # Nuchal plane, from the protuberance down to the foramen magnum, and the base before it.
    slope = PROTUBERANCE - _OPISTHION
    normal = np.array([0.0, slope[2], -slope[1]])
    solid.plane(_OPISTHION + [0, 0, -1.0], normal, blend=22.0)
    # Cerebellar swellings on either side of the crest.
    solid.ellipsoid((25, 44, 38.0), (30, 30, 22.5), blend=12.0)
    solid.plane((0, 0, 7.5), (0, 0.05, -1), blend=8.0)
    return solid


def _temporal() -> Solid:
    """Mastoid process, root of the zygomatic process and the petrous base."""
    solid = Solid()
    solid.blade((57.5, 9.0, 20.0), MASTOID_TIP + [0.4, -0.4, 4.6], (0.0, 1.0, 0.25),
                (16.0, 4.8), (8.6, 4.4), blend=0.0)  # fmt: skip
    solid.ellipsoid((57, 17, 23), (8.5, 18, 15), blend=8.0)
    solid.blade((60.5, -4, 20), (66.0, -24, 17.5), (0, 0, 1), (6.0, 3.8), (4.6, 2.8), blend=6.0)
    # Petrous and sphenoid base that close the skull below, in front of the foramen.
    solid.blade((18, -16, 12), (52, 2, 12), (0, 1, 0), (9, 11), (7.5, 7.5), blend=6.0)
    solid.blade((0, -8, 13), (0, -34, 18), (1, 0, 0), (13, 12), (5.5, 8.0), blend=5.0)
    # Jugular process beside the condyle.
    solid.blade((22, 4, 11), (42, 10, 9.5), (0, 1, 0), (7, 6), (4, 4), blend=5.0)
    return solid


def _condyles(frame: SkeletonFrame, to_own) -> Solid:
    """Occipital condyle: the facet of the atlas filled to a gap of about 1 mm."""
    plan = atlas_plan(frame)
    s = plan.s
    turn, tilt = np.deg2rad(22.0), np.deg2rad(24.0)
    long = np.array([np.sin(turn), np.cos(turn), 0.0])
    wide = np.array([np.cos(turn) * np.cos(tilt), -np.sin(turn) * np.cos(tilt), np.sin(tilt)])
    normal = np.cross(wide, long)
    normal *= np.sign(normal[2])
    v = frame["C1"]
    turned = np.stack([wide, long, normal]) @ v.axes.T
    centre = v.to_model(plan.superior_facet + 8.0 * s * normal)
    k = head_scale(frame)
    radii = np.array([7.4 * s, 11.6 * s, 6.9 * s]) / k
    solid = Solid()
    own = to_own(centre)
    solid.ellipsoid(own, radii, turned, blend=0.0)
    # The stem that carries it on the base.
    solid.blade(own + [1.5, -5, 2.0], own + [2.0, 6, 2.5], (1, 0, 0), 6.4, 5.2, blend=2.0)
    solid.blade(
        own + [1.5, -3, 2.0], own + [3.0, 2, 9.0], (0, 1, 0), (9.5, 11), (5.8, 8), blend=2.0
    )
    return solid


def _cavity() -> tuple[Solid, Solid]:
    """Brain cavity, and the canal of the foramen magnum that opens it below."""
    cavity = Solid()
    cavity.ellipsoid((0, 1, 62), (65.5, 79.5, 61), blend=0.0)
    cavity.ellipsoid((0, -40, 62), (52, 50, 46), blend=12.0)
    cavity.ellipsoid((24, 38, 34), (28, 31, 23), blend=10.0)
    slope = PROTUBERANCE - _OPISTHION
    cavity.plane(_OPISTHION + [0, 0, 8.5], (0.0, slope[2], -slope[1]), blend=12.0)
    cavity.plane((0, 0, 24), (0, -0.25, -1), blend=12.0)
    cavity.plane((0, -86, 56), (0, -0.6, -1), blend=12.0)
    foramen = Solid()
    middle = (_OPISTHION + _BASION) / 2
    foramen.prism(middle + [0, 0, 6.0], (15.2, 18.6, 26.0), exponent=2.0, rounding=0.3, blend=0.0)
    return cavity, foramen


def _pressed(base: Solid, course: np.ndarray, count: int, depth: float) -> np.ndarray:
    """A course pressed on to the surface of a solid and sunk by depth mm."""
    line = base.project(open_spline(course, count), steps=6)
    inward = base.project(line, steps=1)
    h = 0.1
    gradient = np.stack(
        [(base.distance(inward + h * e) - base.distance(inward - h * e)) / (2 * h)
         for e in np.eye(3)], axis=1,
    )  # fmt: skip
    gradient /= np.maximum(np.linalg.norm(gradient, axis=1)[:, None], 1e-6)
    return inward - depth * gradient


def _ridges(base: Solid) -> Solid:
    """Nuchal lines, external crest and the protuberance as raised bone."""
    solid = Solid()
    for course, radii, depth in (
        (_SUPERIOR_LINE, (3.4, 3.0, 2.8, 2.6), 1.4),
        (_INFERIOR_LINE, (2.6, 2.6, 2.4, 1.8), 1.3),
        (_CREST, (2.8, 2.4, 2.4, 1.8), 1.1),
    ):
        line = _pressed(base, course, 14, depth)
        r = np.interp(np.linspace(0, 3, 14), range(4), radii)
        for i in range(13):
            solid.cone(line[i], line[i + 1], r[i], r[i + 1], blend=0.0)
    knob = _pressed(base, PROTUBERANCE[None].repeat(2, 0) + [[0, 0, 0], [0.5, 0, 0]], 2, 0.0)[0]
    solid.ellipsoid(knob + [0, -0.6, 0.6], (8.0, 4.6, 5.4), blend=3.0)
    solid.cone(knob + [0, 0.6, 0.2], knob + [0, 3.6, -2.6], 4.2, 2.2, blend=3.0)
    return solid


def make(frame: SkeletonFrame, detail: str) -> list[BonePiece]:
    """Make the cranium and the mandible.

    Parameters
    ----------
    frame : SkeletonFrame
    detail : {"preview", "full"}

    Returns
    -------
    list of BonePiece
    """
    plan = atlas_plan(frame)
    facet = frame["C1"].to_model(plan.superior_facet)
    origin = np.array([0.0, facet[1], facet[2]])
    k = head_scale(frame)

    def to_own(points):
        return (np.asarray(points, float) - origin) / k

    def to_model(points):
        return k * np.asarray(points, float) + origin

    vault = _vault()
    grid = DistanceGrid([(0, -116, -40), (80, 100, 136)], _SPACING[detail])
    everywhere = [grid.lower, grid.lower + grid.spacing * (grid.count - 1)]
    cavity, foramen = _cavity()
    grid.join(vault, everywhere, blend=0.0)
    grid.join(_temporal(), blend=5.0)
    grid.join(face.brow(), everywhere, blend=12.0)
    grid.join(face.upper_face(), everywhere, blend=6.0)
    grid.join(face.hollows(), everywhere, blend=2.5, cut=True)
    grid.join(face.upper_teeth(detail), blend=1.0)
    tubercle, fossa = face.jaw_joint()
    grid.join(tubercle, blend=4.0)
    grid.join(fossa, blend=2.0, cut=True)
    grid.join(_ridges(vault), blend=3.5)
    grid.join(cavity, everywhere, blend=2.0, cut=True)
    grid.join(foramen, blend=3.0, cut=True)
    grid.join(_condyles(frame, to_own), blend=2.0)
    # Groove of digastric medial to the mastoid; opening of the ear; temporal hollow.
    hollows = Solid().cone((44.5, 22, 6), (42, 4, 2), 3.0, blend=0.0)
    hollows.cone((74, -6, 18.5), (54, -4.5, 17.0), 4.2, blend=0.0)
    grid.join(hollows, blend=2.5, cut=True)
    mesh = grid.mirrored().mesh(_TRIANGLES[detail], smoothing=2)
    mesh.vertices[:] = to_model(mesh.vertices)
    cranium = Part("cranium", "cranium", "bone", 9, "", mesh, region="head")
    jaw_box = [(0, -108, -84), (68, -6, 18)]
    jaw_grid = DistanceGrid(jaw_box, _JAW_SPACING[detail])
    jaw_grid.join(face.lower_jaw(detail), jaw_box, blend=0.0)
    jaw = jaw_grid.mirrored().mesh(_JAW_TRIANGLES[detail])
    jaw.vertices[:] = to_model(jaw.vertices)
    mandible = Part("mandible", "mandible", "bone", 9, "", jaw, region="head")
    return [
        BonePiece(cranium, _landmarks(vault, mesh, to_model, k)),
        BonePiece(mandible, {}),
    ]


def _landmarks(vault: Solid, mesh: trimesh.Trimesh, to_model, k: float) -> dict[str, np.ndarray]:
    superior = _pressed(vault, _SUPERIOR_LINE, 24, -1.4)
    inferior = _pressed(vault, _INFERIOR_LINE, 20, -1.2)
    turn = np.linspace(0, 2 * np.pi, 33)[:-1]
    middle = (_OPISTHION + _BASION) / 2
    ring = middle + np.stack(
        [15.2 * np.sin(turn), 18.6 * np.cos(turn), -0.4 * np.cos(turn)], axis=1
    )
    tip = MASTOID_TIP
    outer = open_spline(
        np.array([(66, 22, 18), (65, 16, 10), (61.5, 13, 2), (56, 11.5, -5), tip + [1, 0, 0]]), 12
    )
    own = {
        "occipital.external_protuberance": PROTUBERANCE + [0, 6.0, -1.0],
        "occipital.left.superior_nuchal_line": superior,
        "occipital.left.inferior_nuchal_line": inferior,
        "occipital.external_crest": _pressed(vault, _CREST, 16, -1.2),
        "occipital.foramen_magnum": ring,
        "occipital.opisthion": _OPISTHION,
        "occipital.basion": _BASION,
        "temporal.left.mastoid_tip": tip + [0, 0, -1.0],
        "temporal.left.mastoid_outer": outer,
        "occipital.left.between_lines_medial": _between(vault, superior, inferior, 0.04, 0.48),
        "occipital.left.between_lines_lateral": _between(vault, superior, inferior, 0.52, 0.95),
        "occipital.left.condyle": np.array([18.5, 0.0, -2.0]),
        "cranium.vertex": np.array([0.0, 5.0, 132.0]),
    }
    names = list(own)
    stacked = to_model(np.concatenate([np.atleast_2d(own[n]) for n in names]))
    snapped = snap_to_both_sides(mesh, stacked)
    out, start = {}, 0
    for name in names:
        size = len(np.atleast_2d(own[name]))
        out[name] = snapped[start] if own[name].ndim == 1 else snapped[start : start + size]
        start += size
    return out


def _between(vault, upper, lower, start, end, across=6, along=8) -> np.ndarray:
    """Points on the bone between two lines, over a share of their length."""
    t = np.linspace(start, end, along)
    a = np.stack([np.interp(t, np.linspace(0, 1, len(upper)), upper[:, i]) for i in range(3)], 1)
    b = np.stack([np.interp(t, np.linspace(0, 1, len(lower)), lower[:, i]) for i in range(3)], 1)
    share = np.linspace(0.12, 0.88, across)[:, None, None]
    return vault.project(((1 - share) * a + share * b).reshape(-1, 3), steps=5)
