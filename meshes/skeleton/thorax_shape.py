"""The form of the chest: where every rib runs, and the wall they make together.

Ribs are space curves through a few points set out from the thoracic vertebrae;
the wall through their outer faces is what the scapula rests on.

Notes
-----
Sizes describe the median man and grow with stature: bony breadth about 270 mm at
ribs 8 and 9, depth about 200 mm, first rib about 110 mm wide (inside a chest of
289 by 254 mm with its soft tissue, ANSUR II; the bony share is common practice,
no source). Rib angles move away from the midline from rib 2 to rib 10 (Gray H.,
Anatomy of the Human Body, 20th ed. 1918).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from scipy.interpolate import CubicSpline, PchipInterpolator

from meshes.body import Body
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import SkeletonFrame, VertebraFrame, make_frame
from meshes.skeleton.vertebra import Plan, vertebra_solid
from meshes.skeleton.vertebra_tables import LOWER_WIDTHS, SHAPES

RIBS = tuple(range(1, 13))

_AXIS_BEFORE_T8_MM = 55.55680303607206
"""From the centre of T8 forward to the chest's axis, in the median man."""

# Points of the shaft's middle line after the tubercle, as x and y, mm: the angle
# (y from the tip of the transverse process), then the widest place, one between it
# and the anterior end, and the anterior end (y from the centre of the body); and how
# far each lies below the tubercle.
_COURSE = {
    1: ((None, (51.5, -20), (50, -34), (42, -48)), (0, 20, 32, 44)),
    2: (((44, -4.0), (81, -20), (76, -50), (51, -79)), (3, 31, 51, 66)),
    3: (((47, -3.0), (97, -31), (90, -73), (60, -106)), (6, 35, 58, 73)),
    4: (((51, -2.0), (108, -40), (100, -86), (66, -121)), (9, 38, 62, 78)),
    5: (((56, -1.0), (116, -47), (107, -95), (72, -133)), (11, 41, 66, 83)),
    6: (((62, -0.5), (122, -51), (113, -100), (79, -139)), (12, 47, 71, 87)),
    7: (((67, 0.0), (126.5, -51), (118, -98), (88, -136)), (14, 52, 76, 92)),
    8: (((72, 0.5), (130, -46), (122, -88), (99, -123)), (16, 57, 83, 102)),
    9: (((77, 0.0), (131, -38), (125, -74), (109, -102)), (18, 64, 95, 117)),
    10: (((79, -1.0), (127, -27), (124, -52), (115, -74)), (20, 73, 106, 131)),
    11: (((72, -4.0), (112, -6), None, (124, -46)), (20, 62, 84, 104)),
    12: ((None, (64, 21), None, (97, 4)), (10, 26, 42, 57)),
}
TUBERCLE_STAND_OFF = 6.5
"""From a rib's middle line to the transverse process at the tubercle, mm: half the
rib, the tubercle's rise and the joint."""

# Shares of a rib's arc length are called by these places.
PLACES = ("head", "neck", "tubercle", "angle", "widest", "fore", "end")


@dataclass(frozen=True, slots=True, eq=False)
class RibCourse:
    """Middle line of a left rib.

    Attributes
    ----------
    number : int
    points : (k, 3) float
        Evenly spaced from the head to the anterior end, mm.
    arc : (k,) float
        Arc length from the head, mm.
    places : dict of str to float
        Arc length at the named places of the rib.
    """

    number: int
    points: np.ndarray
    arc: np.ndarray
    places: dict[str, float]

    @property
    def length(self) -> float:
        """Arc length from head to anterior end, mm."""
        return float(self.arc[-1])

    def at(self, arc: np.ndarray) -> np.ndarray:
        """Points (..., 3) at arc lengths from the head, mm."""
        arc = np.asarray(arc, float)
        return np.stack([np.interp(arc, self.arc, self.points[:, i]) for i in range(3)], axis=-1)


def head_contact(frame: SkeletonFrame, number: int) -> np.ndarray:
    """Centre of a left rib's head on the column, (3,) mm.

    Ribs 2 to 9 meet the disc above their own vertebra and both its neighbours;
    ribs 1, 10, 11 and 12 meet one body.
    """
    vertebra, s = frame[f"T{number}"], frame.scale
    half = 0.5 * vertebra.height
    shape = SHAPES[f"T{number}"]
    if number >= 11:
        # On the side of the pedicle.
        x = 0.5 * vertebra.canal_width + 2.0 * shape.pedicle[0] * s
        up = half - shape.pedicle[1] * s - 0.6
        return vertebra.to_model((x, 0.5 * vertebra.depth - 1.0 * s, up))
    own = np.array([0.46 * vertebra.width, 0.36 * vertebra.depth, half - 2.2 * s])
    if number in (1, 10):
        return vertebra.to_model(own + np.array([0.3, 1.5, -1.5]) * s)
    above = frame[f"T{number - 1}"]
    width = LOWER_WIDTHS[f"T{number - 1}"] * s
    edge = above.to_model((0.46 * width, 0.36 * above.depth, -0.5 * above.height + 2.0 * s))
    return 0.5 * (vertebra.to_model(own) + edge)


def rib_course(frame: SkeletonFrame, number: int, step: float = 1.0) -> RibCourse:
    """Middle line of a left rib.

    Parameters
    ----------
    frame : SkeletonFrame
    number : int
        1 to 12.
    step : float
        Spacing of its points, mm.

    Returns
    -------
    RibCourse
    """
    if number not in RIBS:
        raise ValueError(f"rib number must be 1 to 12, got {number!r}")
    vertebra, scale = frame[f"T{number}"], frame.scale
    contact = head_contact(frame, number)
    shape = SHAPES[f"T{number}"]
    tip = vertebra.to_model(np.array(shape.transverse_tip) * scale)
    thick = shape.transverse_end[1]
    if number <= 10:
        # The tubercle meets the front of the tip, from rib 6 down more from below upward.
        offset = (-0.3 * thick, -1.05 * thick - 6.0, 0.0 if number <= 5 else 2.0)
    else:
        # No joint: the rib passes outside the small process.
        offset = (8.0, -8.0, 0.0)
    tubercle = tip + scale * vertebra.axes @ np.array(offset)
    solid = thoracic_solid(frame, number)
    if number <= 10:
        tubercle = _stand_off(solid, vertebra, tubercle, TUBERCLE_STAND_OFF * scale, exact=True)
    else:
        tubercle = _stand_off(solid, vertebra, tubercle, 5.5 * scale)
    outward = tubercle - contact
    outward /= np.linalg.norm(outward)
    # The cap of the head reaches 1.4 mm further: a hair of cartilage remains.
    head = _stand_off(solid, vertebra, contact + 1.6 * scale * outward, 2.4 * scale)
    neck = 0.5 * (head + tubercle) + np.array([0.0, -0.6 * scale, 0.0])
    neck = _stand_off(solid, vertebra, neck, 4.6 * scale)
    names, points = ["head", "neck", "tubercle"], [head, neck, tubercle]
    across, drops = _COURSE[number]
    for name, place, drop in zip(PLACES[3:], across, drops, strict=True):
        if place is None:
            continue
        x, y = place
        start = tip[1] if name == "angle" else vertebra.centre[1]
        points.append(np.array([x * scale, start + y * scale, tubercle[2] - drop * scale]))
        names.append(name)
    return _through(number, names, np.array(points), step)


@lru_cache(maxsize=64)
def _thoracic_solid(body: Body, number: int) -> Solid:
    return vertebra_solid(Plan(make_frame(body), f"T{number}"))


def thoracic_solid(frame: SkeletonFrame, number: int) -> Solid:
    """Solid (half x >= 0, its own axes) of the thoracic vertebra that a rib belongs to."""
    return _thoracic_solid(frame.body, number)


def _stand_off(
    solid: Solid, vertebra: VertebraFrame, point: np.ndarray, wanted: float, exact: bool = False
) -> np.ndarray:
    """Move a point (3,) away from a vertebra until it is ``wanted`` mm off (exact: also nearer)."""
    p = vertebra.to_local(point)
    h = 0.1
    for _ in range(5):
        around = np.concatenate([[p], p + h * np.eye(3), p - h * np.eye(3)])
        distance = solid.distance(around)
        if distance[0] >= wanted and not exact:
            break
        gradient = (distance[1:4] - distance[4:7]) / (2 * h)
        p = p + (wanted - distance[0]) * gradient / max(float(gradient @ gradient), 0.3)
    return vertebra.to_model(p)


def _through(number: int, names: list[str], points: np.ndarray, step: float) -> RibCourse:
    chords = np.linalg.norm(np.diff(points, axis=0), axis=1)
    knots = np.concatenate([[0.0], np.cumsum(chords**0.75)])
    spline = CubicSpline(knots, points, bc_type="natural")
    fine = np.linspace(0.0, knots[-1], 800)
    dense = spline(fine)
    arc = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(dense, axis=0), axis=1))])
    count = max(int(round(arc[-1] / step)) + 1, 12)
    even = np.linspace(0.0, arc[-1], count)
    course = np.stack([np.interp(even, arc, dense[:, i]) for i in range(3)], axis=1)
    places = {name: float(np.interp(knot, fine, arc)) for name, knot in zip(names, knots)}
    places.setdefault("angle", places["tubercle"])
    places.setdefault("fore", 0.5 * (places["widest"] + arc[-1]))
    return RibCourse(number, course, even, places)


@dataclass(frozen=True)
class ChestSurface:
    """The wall through the outer faces of the left ribs.

    Places on it are a height z and an angle round the chest's axis: 0 to the
    left, 90 to the back, -90 to the front, degrees.

    Attributes
    ----------
    frame : SkeletonFrame
    courses : tuple of RibCourse
    half_thickness : float
        From the ribs' middle lines to their outer faces, mm.
    """

    frame: SkeletonFrame
    courses: tuple[RibCourse, ...]
    half_thickness: float

    @cached_property
    def _angles(self) -> np.ndarray:
        return np.linspace(-64.0, 80.0, 73)

    @cached_property
    def axis_y(self) -> float:
        """y of the chest's axis (it stands at x = 0), mm; before T8, wherever the column leans."""
        return float(self.frame["T8"].centre[1]) - _AXIS_BEFORE_T8_MM * self.frame.scale

    @cached_property
    def _walls(self) -> list[PchipInterpolator]:
        # At every angle: radius against height, from the ribs that pass there.
        passes: list[list[tuple[float, float]]] = [[] for _ in self._angles]
        for course in self.courses:
            kept = course.arc >= 0.6 * course.places["tubercle"]
            x, y, z = course.points[kept].T
            radius = np.hypot(x, y - self.axis_y) + self.half_thickness
            angle = np.degrees(np.arctan2(y - self.axis_y, x))
            order = np.argsort(angle)
            for slot, wanted in zip(passes, self._angles, strict=True):
                # A little past its end a rib still shapes the wall.
                if angle.min() - 30.0 <= wanted <= angle.max() + 14.0:
                    slot.append(
                        (
                            float(np.interp(wanted, angle[order], z[order])),
                            float(np.interp(wanted, angle[order], radius[order])),
                        )
                    )
        # An angle that fewer than two ribs pass takes the wall of the nearest that more do.
        crowded = np.flatnonzero([len(slot) > 1 for slot in passes])
        walls = []
        for number in range(len(passes)):
            slot = passes[crowded[np.argmin(np.abs(crowded - number))]]
            heights, radii = np.array(sorted(slot)).T
            walls.append(PchipInterpolator(heights, radii, extrapolate=False))
        return walls

    def radius(self, z: np.ndarray, angle_deg: np.ndarray) -> np.ndarray:
        """Distance from the axis to the wall, (...) mm; heights beyond the ribs are held."""
        z, angle = np.broadcast_arrays(np.asarray(z, float), np.asarray(angle_deg, float))
        # Between the tubercles and the spine, and behind the sternum, no ribs pass: held.
        position = np.clip((angle - self._angles[0]) / 2.0, 0.0, len(self._angles) - 1.0)
        lower = np.minimum(position.astype(int), len(self._angles) - 2)
        share = position - lower
        table = np.stack([w(np.clip(z, w.x[0], w.x[-1])) for w in self._walls], axis=-1)
        a = np.take_along_axis(table, lower[..., None], -1)[..., 0]
        b = np.take_along_axis(table, lower[..., None] + 1, -1)[..., 0]
        return (1 - share) * a + share * b

    def point(self, z: np.ndarray, angle_deg: np.ndarray) -> np.ndarray:
        """Points (..., 3) of the wall, mm."""
        z, angle = np.broadcast_arrays(np.asarray(z, float), np.asarray(angle_deg, float))
        radius = self.radius(z, angle)
        turn = np.radians(angle)
        return np.stack([radius * np.cos(turn), self.axis_y + radius * np.sin(turn), z], axis=-1)

    def normal(self, z: np.ndarray, angle_deg: np.ndarray, reach: float = 8.0) -> np.ndarray:
        """Outward unit normals (..., 3), smoothed over about ``reach`` mm."""
        z, angle = np.broadcast_arrays(np.asarray(z, float), np.asarray(angle_deg, float))
        turn = np.degrees(reach / 110.0)
        round_it = self.point(z, angle + turn) - self.point(z, angle - turn)
        up = self.point(z + reach, angle) - self.point(z - reach, angle)
        # Angle grows from left to back, so (round, up) turns outward.
        normal = np.cross(round_it, up)
        return normal / np.linalg.norm(normal, axis=-1, keepdims=True)

    def point_at(self, x: np.ndarray, z: np.ndarray) -> np.ndarray:
        """Points (..., 3) of the back of the wall at a distance x from the midline, mm."""
        x, z = np.broadcast_arrays(np.asarray(x, float), np.asarray(z, float))
        angles = np.linspace(0.0, 80.0, 161)
        reach = self.point(z[..., None], angles)
        index = np.argmin(np.abs(reach[..., 0] - x[..., None]), axis=-1)
        return np.take_along_axis(reach, index[..., None, None], -2)[..., 0, :]

    def rib_height(self, number: int, angle_deg: float) -> float:
        """Height z at which a rib's middle line passes an angle, mm."""
        x, y, z = self.courses[number - 1].points.T
        angle = np.degrees(np.arctan2(y - self.axis_y, x))
        order = np.argsort(angle)
        return float(np.interp(angle_deg, angle[order], z[order]))


def chest_surface(frame: SkeletonFrame) -> ChestSurface:
    """The wall through the outer faces of a body's left ribs."""
    courses = tuple(rib_course(frame, n, step=2.0) for n in RIBS)
    return ChestSurface(frame, courses, 3.8 * frame.scale)
