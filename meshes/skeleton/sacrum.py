"""Sacrum and coccyx: five fused segments on a forward curve, and the tail below.

Axes: those of the sacral endplate (left, back, up; origin at the centre of the
superior endplate of S1), mm. Solids hold the half x >= 0 (`meshes.shapes.symmetric`).

Lengths, breadths and curvature are common practice, no source (ventral length
along the curve about 105-115 mm in men, breadth about 105-110 mm).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import PchipInterpolator

from meshes.shapes.solid import Solid
from meshes.skeleton.facet_joint import GAP_MM, FacetJoint, facet_joint
from meshes.skeleton.frame import SkeletonFrame

X, Y, Z = np.eye(3)

_LENGTHS = (30.0, 24.5, 20.5, 17.5, 15.5)
_HEADINGS_DEG = (2.0, 12.0, 28.0, 48.0, 68.0)
_BODY_HALF = ((25.5, 16.8), (19.5, 11.5), (16.0, 9.0), (13.5, 7.0), (11.0, 5.2))
_CANAL_HALF = ((15.0, 8.0), (11.5, 6.4), (9.0, 5.0), (7.0, 4.0), (5.5, 3.2))
_LATERAL = (53.5, 50.0, 41.0, 32.0, 22.0)
_DORSAL_FORAMEN = (21.0, 18.0, 15.5, 13.5)
_VENTRAL_FORAMEN = (22.0, 18.5, 16.0, 14.0)
_COCCYX = (
    (12.5, 80.0, 10.0, 4.6),
    (9.5, 94.0, 7.0, 3.7),
    (7.5, 106.0, 5.0, 3.0),
    (6.0, 116.0, 3.4, 2.5),
)


@dataclass(frozen=True, slots=True)
class Segment:
    """One sacral segment: where its body lies and how it is turned.

    Attributes
    ----------
    top, middle, bottom : (3,) float
        Along the axis of the bodies, mm.
    axes : (3, 3) float
        Rows left, back, up of the segment.
    half : (3,) float
        Half width, depth and height of its body.
    canal : (2,) float
        Half width and half depth of the canal behind it.
    lateral : float
        Half breadth of the sacrum here.
    """

    top: np.ndarray
    middle: np.ndarray
    bottom: np.ndarray
    axes: np.ndarray
    half: np.ndarray
    canal: tuple[float, float]
    lateral: float

    def at(self, left: float, back: float, up: float = 0.0) -> np.ndarray:
        """Point in the segment's own axes, from the middle of its body."""
        return self.middle + np.array([left, back, up]) @ self.axes

    @property
    def canal_back(self) -> float:
        """Middle of the canal behind the axis of the bodies, mm."""
        return self.half[1] + 0.9 * self.canal[1]

    @property
    def dorsal(self) -> float:
        """Dorsal face of the laminae behind the axis of the bodies, mm."""
        return self.half[1] + 1.8 * self.canal[1] + 5.0


def segments(frame: SkeletonFrame) -> list[Segment]:
    """S1 to S5."""
    s = frame.scale
    breadth = s * (1.0 if frame.body.sex == "male" else 1.04)
    place = np.zeros(3)
    found = []
    for i, length in enumerate(_LENGTHS):
        angle = np.deg2rad(_HEADINGS_DEG[i])
        up = np.array([0.0, np.sin(angle), np.cos(angle)])
        back = np.array([0.0, np.cos(angle), -np.sin(angle)])
        bottom = place - length * s * up
        half = np.array([_BODY_HALF[i][0] * s, _BODY_HALF[i][1] * s, 0.5 * length * s])
        found.append(
            Segment(
                place,
                0.5 * (place + bottom),
                bottom,
                np.stack([X, back, up]),
                half,
                (_CANAL_HALF[i][0] * s, _CANAL_HALF[i][1] * s),
                _LATERAL[i] * breadth,
            )
        )
        place = bottom
    return found


def lumbosacral_joint(frame: SkeletonFrame) -> FacetJoint:
    """Left joint with L5 in the sacral axes."""
    joint = facet_joint(frame, "L5")
    turn = frame.sacral_axes
    return FacetJoint(
        joint.upper,
        joint.kind,
        joint.centre @ turn,
        joint.normal @ turn,
        joint.along @ turn,
        joint.across @ turn,
        joint.half,
    )


def auricular_plane(frame: SkeletonFrame) -> tuple[np.ndarray, np.ndarray]:
    """Point and outward normal of the left auricular surface, in the sacral axes.

    The sacrum is a wedge: broader in front than behind, broader above than below.
    """
    lateral = segments(frame)[0].lateral
    normal = np.array([0.93, 0.30, -0.20])
    return (
        np.array([lateral - 1.5 * frame.scale, 4.0 * frame.scale, -22.0 * frame.scale]),
        normal / np.linalg.norm(normal),
    )


def sacrum_solid(frame: SkeletonFrame) -> Solid:
    """Solid of the sacrum (half x >= 0)."""
    s = frame.scale
    parts = segments(frame)
    solid = Solid()
    for i, seg in enumerate(parts):
        solid.prism(
            seg.middle,
            (seg.half[0], seg.half[1], seg.half[2] + (0.0 if i == 0 else 1.0 * s)),
            seg.axes,
            exponent=2.4,
            waist=0.06,
            rounding=1.6 * s,
            blend=2.5 * s,
        )
    _lateral_parts(solid, frame, parts)
    _dorsal_wall(solid, frame, parts)
    joint = lumbosacral_joint(frame)
    _superior_process(solid, joint, parts[0], s)
    # The endplate: everything above it near the midline goes, then it sinks a little.
    solid.ellipsoid(
        (0, 0, 3.0 * s - 1.0 * s),
        (0.95 * parts[0].half[0], 0.95 * parts[0].half[1], 3.0 * s),
        blend=0.8 * s,
        operation="subtract",
    )
    _cut_canal(solid, parts, s)
    _crests(solid, parts, s)
    _cut_foramina(solid, parts, s)
    thick = 4.8 * s
    middle = joint.centre + (thick + 0.5 * GAP_MM) * joint.normal
    solid.blade(
        middle + 5.0 * s * joint.along,
        middle - 3.2 * s * joint.along,
        joint.across,
        (6.8 * s + GAP_MM, 6.2 * s + GAP_MM),
        (thick + GAP_MM, 0.92 * thick + GAP_MM),
        blend=0.4,
        operation="subtract",
        power=2.6,
    )
    return solid


_MASS = (
    # left, back, up; half breadth and half thickness of the lateral part at S1 to S5
    (35.0, 11.0, -1.0, 19.0, 15.0),
    (31.5, 10.5, 0.0, 19.0, 12.0),
    (25.0, 8.5, 0.0, 16.5, 9.0),
    (19.0, 6.5, 0.0, 13.0, 6.6),
    (13.0, 3.5, 2.5, 9.5, 4.6),
)


def _lateral_parts(solid: Solid, frame: SkeletonFrame, parts: list[Segment]) -> None:
    s = frame.scale
    s1 = parts[0]
    # Ala: from the side of S1, its upper face falling away sideways.
    solid.blade(
        s1.at(18 * s, 0.0, 2.5 * s),
        s1.at(s1.lateral - 10 * s, 5 * s, -2.5 * s),
        Z,
        (12.0 * s, 11.5 * s),
        (13.5 * s, 12.5 * s),
        blend=6.0 * s,
        power=2.4,
    )
    # The fused transverse and costal elements run on as one mass down to S5.
    rows = np.array(_MASS) * s
    knots = np.array([seg.at(*row[:3]) for seg, row in zip(parts, rows)])
    steps = np.linspace(0.0, 4.0, 11)
    course = PchipInterpolator(np.arange(5), knots)(steps)
    sizes = PchipInterpolator(np.arange(5), rows[:, 3:])(steps)
    for i in range(len(steps) - 1):
        solid.blade(
            course[i],
            course[i + 1],
            X,
            sizes[i : i + 2, 0],
            sizes[i : i + 2, 1],
            blend=(5.0 if i == 0 else 2.0) * s,
            power=2.4,
        )
    point, normal = auricular_plane(frame)
    axes = np.stack([normal, *_perpendicular(normal)])
    solid.box(
        point + 20 * s * normal,
        (20 * s, 60 * s, 60 * s),
        axes,
        rounding=0.5,
        blend=1.5 * s,
        operation="subtract",
    )


def _dorsal_wall(solid: Solid, frame: SkeletonFrame, parts: list[Segment]) -> None:
    """Fused laminae: a plate bowed backwards, down to the hiatus in the lower half of S4."""
    s = frame.scale
    ends = [parts[0].at(0, parts[0].dorsal - 2.6 * s, 4.0 * s)]
    ends += [seg.at(0, seg.dorsal - 2.6 * s) for seg in parts[1:3]]
    ends.append(parts[3].at(0, parts[3].dorsal - 2.6 * s, 3.0 * s))
    side = [
        np.array([left * s, -back * s, 0.0])
        for left, back in ((17.0, 3.2), (15.0, 3.6), (12.5, 3.4), (10.0, 3.0))
    ]
    for i in range(3):
        turn = parts[i].axes
        solid.blade(ends[i], ends[i + 1], X, (10.0 * s, 9.0 * s), 3.1 * s, blend=1.5 * s, power=2.4)
        solid.blade(
            ends[i] + side[i] @ turn,
            ends[i + 1] + side[i + 1] @ parts[i + 1].axes,
            X,
            ((10.0 - i) * s, (9.0 - i) * s),
            (3.6 * s, 3.4 * s),
            blend=2.5 * s,
            power=2.4,
        )


def _superior_process(solid: Solid, joint: FacetJoint, s1: Segment, s: float) -> None:
    thick = 4.8 * s
    middle = joint.centre - (thick - 1.6 * s) * joint.normal + 0.6 * s * joint.across
    solid.blade(
        middle - 13.0 * s * joint.along,
        middle + 2.5 * s * joint.along,
        joint.across,
        (9.0 * s, 7.0 * s),
        (thick * 1.15, 0.85 * thick),
        blend=3.5 * s,
        power=2.2,
    )


def _cut_canal(solid: Solid, parts: list[Segment], s: float) -> None:
    points = [parts[0].at(0, parts[0].canal_back, parts[0].half[2] + 12 * s)]
    widths, depths = [parts[0].canal[0] * 1.05], [parts[0].canal[1] * 1.25]
    for seg in parts:
        points.append(seg.at(0, seg.canal_back))
        widths.append(seg.canal[0])
        depths.append(seg.canal[1])
    last = parts[4]
    points.append(last.at(0, last.canal_back + 1.5 * s, -last.half[2] - 4 * s))
    widths.append(4.5 * s)
    depths.append(3.0 * s)
    for i in range(len(points) - 1):
        solid.blade(
            points[i],
            points[i + 1],
            X,
            widths[i : i + 2],
            depths[i : i + 2],
            blend=0.6,
            operation="subtract",
        )


def _crests(solid: Solid, parts: list[Segment], s: float) -> None:
    tips = [seg.at(0, seg.dorsal) for seg in parts[:4]]
    for i in range(3):
        a, b = parts[i], parts[i + 1]
        solid.blade(
            a.at(0, a.dorsal + 1.0 * s),
            b.at(0, b.dorsal + 0.5 * s),
            Y,
            (4.0 * s, 3.4 * s),
            (2.0 * s, 1.8 * s),
            blend=2.6 * s,
        )
    for i, seg in enumerate(parts[:4]):
        size = (5.4, 5.0, 4.2, 3.2)[i] * s
        solid.ellipsoid(
            tips[i] + (2.6 * s) * seg.axes[1] - 1.0 * s * seg.axes[2],
            (2.7 * s, size, 1.25 * size),
            seg.axes,
            blend=2.4 * s,
        )
    for i, seg in enumerate(parts[:4]):
        for place, size in (
            (intermediate_tubercle(seg, i, s), 2.6),
            (lateral_tubercle(seg, i, s), 3.4),
        ):
            solid.ellipsoid(
                place, (size * 0.9 * s, size * s, 1.5 * size * s), seg.axes, blend=2.8 * s
            )
    # Cornua on both sides of the hiatus.
    last = parts[4]
    solid.blade(
        parts[3].at(6.5 * s, parts[3].dorsal - 3 * s, -6 * s),
        last.at(8.0 * s, last.half[1] + 1.2 * s, 1.5 * s),
        X,
        (2.6 * s, 2.0 * s),
        (2.4 * s, 1.8 * s),
        blend=2.0 * s,
    )


def intermediate_tubercle(seg: Segment, index: int, s: float) -> np.ndarray:
    """Tubercle of the intermediate crest, just inside the dorsal foramina."""
    return seg.at((16.5, 13.5, 11.5, 9.5)[index] * s, seg.dorsal - 2.4 * s)


def lateral_tubercle(seg: Segment, index: int, s: float) -> np.ndarray:
    """Tubercle of the lateral crest, outside the dorsal foramina."""
    left = (33.0, 30.0, 25.5, 20.0)[index] * s
    back = (25.0, 20.5, 15.0, 10.0)[index] * s
    return seg.at(left, back, -0.1 * seg.half[2])


def dorsal_foramen(parts: list[Segment], index: int, s: float) -> np.ndarray:
    """Middle of the left dorsal foramen below S(index + 1)."""
    a, b = parts[index], parts[index + 1]
    back = 0.5 * (a.dorsal + b.dorsal) - 4.0 * s
    direction = a.axes[1] + b.axes[1]
    direction /= np.linalg.norm(direction)
    return a.bottom + _DORSAL_FORAMEN[index] * s * X + back * direction


def _cut_foramina(solid: Solid, parts: list[Segment], s: float) -> None:
    for i in range(4):
        a, b = parts[i], parts[i + 1]
        direction = a.axes[1] + b.axes[1]
        direction /= np.linalg.norm(direction)
        # From the canal sideways: here the nerve leaves it, to divide for both faces.
        if i < 3:
            level = a.bottom + 0.5 * (a.canal_back + b.canal_back) * direction
            solid.cone(
                level + (b.canal[0] - 3.0 * s) * X,
                level + (_VENTRAL_FORAMEN[i] - 1.0) * s * X,
                (4.0, 3.6, 3.0)[i] * s,
                blend=1.5 * s,
                operation="subtract",
            )
        behind = dorsal_foramen(parts, i, s)
        front = a.bottom + _VENTRAL_FORAMEN[i] * s * X - (b.half[1] + 4.0 * s) * direction
        solid.cone(
            front,
            behind + 6.0 * s * direction,
            (6.2, 5.4, 4.8, 4.2)[i] * s,
            (4.2, 3.6, 3.2, 2.7)[i] * s,
            blend=2.2 * s,
            operation="subtract",
        )


def coccyx_pieces(frame: SkeletonFrame) -> list[tuple[np.ndarray, np.ndarray, np.ndarray]]:
    """Middle, axes (rows) and half sizes of the four coccygeal segments, sacral axes."""
    s = frame.scale
    last = segments(frame)[4]
    place = last.bottom - 1.6 * s * last.axes[2]
    found = []
    for length, heading, width, depth in _COCCYX:
        angle = np.deg2rad(heading)
        up = np.array([0.0, np.sin(angle), np.cos(angle)])
        back = np.array([0.0, np.cos(angle), -np.sin(angle)])
        half = np.array([width, depth, 0.5 * length]) * s
        found.append((place - half[2] * up, np.stack([X, back, up]), half))
        place = place - 2 * half[2] * up
    return found


def coccyx_solid(frame: SkeletonFrame) -> Solid:
    """Solid of the coccyx (half x >= 0)."""
    s = frame.scale
    solid = Solid()
    pieces = coccyx_pieces(frame)
    for i, (middle, axes, half) in enumerate(pieces):
        solid.prism(
            middle,
            (half[0], half[1], half[2] + 0.4 * s),
            axes,
            exponent=2.2,
            waist=0.10,
            rounding=1.6 * s,
            blend=2.2 * s if i else 0.0,
        )
    middle, axes, half = pieces[0]
    # Transverse processes and cornua of the first piece.
    solid.blade(
        middle + np.array([5 * s, 0, 2.5 * s]) @ axes,
        middle + np.array([13.5 * s, 0.6 * s, 3.0 * s]) @ axes,
        axes[2],
        (3.6 * s, 2.0 * s),
        (2.8 * s, 1.7 * s),
        blend=2.0 * s,
    )
    solid.blade(
        middle + np.array([7 * s, 3 * s, 2.0 * s]) @ axes,
        middle + np.array([7.4 * s, 5.6 * s, 6.0 * s]) @ axes,
        X,
        2.0 * s,
        (1.8 * s, 1.3 * s),
        blend=1.5 * s,
    )
    last = segments(frame)[4]
    solid.plane(last.bottom - 1.0 * s * last.axes[2], last.axes[2], blend=0.6)
    return solid


def _perpendicular(normal: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    first = np.cross(normal, X if abs(normal[0]) < 0.9 else Y)
    first /= np.linalg.norm(first)
    return first, np.cross(normal, first)
