"""The left scapula in its own frame.

Own frame: origin at the root of the spine on the medial border; x lateral in
the plane of the body, y dorsal, z up along the medial border. The numbers are
those of a man's scapula 149 mm high and 105 mm broad; the caller scales it.

Sizes: Oliveira Costa AC et al., Int J Morphol 2016;34:1164-1168 (men: height
151.4 +- 11.4, breadth 102.4 +- 6.5, spine 140.1 +- 8.1 mm); angles: The
Scapula: osseous dimensions and gender dimorphism in Thais, Siriraj Med J 2004
(inferior 40.9 +- 5.3, superior 84.3 +- 9.4 degrees). Its height lies
between theirs and that of Kumar A et al., Int J Orthop Surg 2021;29:12-15 (143.3 +- 10.2),
its breadth a little above because the shoulders of today's median man (ANSUR II) are
broader; the corner at the inferior angle is blunt, as the breadths 20 and 40 mm above it
(44 and 55 mm, Oliveira Costa) ask.
Form: common practice.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import trimesh
from scipy.interpolate import PchipInterpolator

from meshes.shapes.plate import DistanceGrid, Plate, closed_spline, open_spline
from meshes.shapes.solid import Solid
from meshes.skeleton.piece import snap_to_surface

_TRIANGLES = {"full": 8000, "preview": 1400}
_SPACING = {"full": 1.0, "preview": 1.3}

# Outline of the body in (x, z), from the root of the spine down the medial
# border, round the inferior angle, up the lateral border and back along the
# superior border.
_OUTLINE = np.array(
    [
        (0.0, 1.0), (-1.6, -11.4), (-2.8, -26.6), (-3.0, -43.7), (-2.2, -62.7), (-0.6, -79.8),
        (1.6, -91.2), (6.2, -98.6), (14.0, -101.6), (24.6, -97.6), (33.4, -87.4), (41.4, -74.2),
        (48.2, -60.4), (54.8, -46.4), (64.2, -35.2), (75.0, -22.4), (84.0, -11.0), (92.0, -2.9),
        (98.5, 6), (98.5, 20), (92.0, 27.5), (85.0, 27.5), (79.6, 24.0), (77.2, 17.8),
        (73.8, 15.6), (70.6, 18.0), (69.0, 23.6), (61.5, 27.8), (48.0, 33.0), (35.0, 38.8),
        (24.0, 44.6), (16.4, 47.8), (11.6, 46.2), (7.6, 38), (3.6, 24), (1.2, 11),
    ]
)  # fmt: skip

# The line along which the spine stands on the body, and its free crest (x, y, z).
_BASE = np.array([(2.0, 0.8), (16, 4.0), (32, 8.2), (50, 12.4), (66, 15.8), (80, 18.0)])
_CREST = np.array(
    [
        (6.5, 0.2, 1.2), (14, 3.6, 3.2), (24, 8.4, 6.2), (38, 14.8, 11.4), (56, 22.0, 17.8),
        (74, 28.6, 24.4), (90, 33.0, 30.4), (99, 34.4, 33.6),
    ]
)  # fmt: skip
# Half breadth of the crest between its lips, and half its height above the web.
_CREST_BREADTH = np.array([6.5, 5.0, 4.0, 5.4, 4.1, 4.4, 5.2, 4.6])
_CREST_FACING = np.array([-0.18, 0.93, 0.30])
_CREST_HEIGHT = np.array([1.2, 1.7, 2.2, 3.0, 2.5, 2.6, 2.9, 2.4])

# Outline of the acromion seen from above, (x, y): from the crest's lower lip
# round the acromial angle, lateral margin, tip, clavicular facet, medial margin.
_ACROMION = np.array(
    [
        (88.0, 37.4), (103.0, 40.6), (114.5, 41.0), (122.5, 37.5), (128.0, 29.5), (132.8, 19.5),
        (135.8, 8.0), (135.6, -3.0), (131.0, -11.5), (123.5, -13.5), (115.7, -9.0),
        (110.6, -2.5), (108.6, 5.0), (104.9, 13.0), (98.5, 20.0), (91.0, 25.0),
        (84.0, 29.0), (82.0, 33.0),
    ]
)  # fmt: skip

HEAD_CENTRE = np.array([127.0, -0.5, 11.8])
"""Centre of the humeral head, own frame, mm."""
HEAD_RADIUS = 23.5
GLENOID_NORMAL = np.array([0.9915, 0.0, 0.13])
"""Direction in which the glenoid cavity faces."""
_GLENOID = np.array([103.0, -0.5, 9.4])


def _middle(x: np.ndarray, z: np.ndarray) -> np.ndarray:
    """Height of the body's mid-surface, mm dorsal: bent forward above the spine and at the tip."""
    over = 0.976 * z - 0.22 * x
    knee = 7.0
    above = knee * np.logaddexp(0.0, over / knee)
    below = knee * np.logaddexp(0.0, -over / knee)
    fade = np.clip((94.0 - x) / 30.0, 0.0, 1.0)
    fade = fade * fade * (3 - 2 * fade)
    sunk = -0.30 * above * fade
    curl = -0.00072 * below**2
    across = 5.0 - 5.0 * ((x - 44.0) / 52.0) ** 2 * np.exp(-np.clip(below - 30, 0, None) / 60)
    return sunk + curl + across - 2.0


def _lateral_distance(x: np.ndarray, z: np.ndarray) -> np.ndarray:
    """Distance medial to the line of the lateral border, mm."""
    a, b = np.array([20.5, -100.7]), np.array([89.0, -7.1])
    along = (b - a) / np.linalg.norm(b - a)
    return -(along[1] * (x - a[0]) - along[0] * (z - a[1]))


def _body_middle(x: np.ndarray, z: np.ndarray) -> np.ndarray:
    """Mid-surface with the infraspinous swell, the groove beside the border, the costal ridges."""
    d = _lateral_distance(x, z)
    low = 1.0 / (1.0 + np.exp((0.976 * z - 0.22 * x + 9.0) / 3.0))
    groove = 2.2 * np.exp(-(((d - 15.5) / 6.5) ** 2)) / (1.0 + np.exp((x - 62.0) / 5.0))
    swell = 1.3 * np.exp(-(((d - 34) / 14.0) ** 2)) - groove
    medial_groove = -0.8 * np.exp(-(((x - 9.0) / 5.0) ** 2))
    return _middle(x, z) + low * (swell + medial_groove)


def _body_thickness(x: np.ndarray, z: np.ndarray) -> np.ndarray:
    """Thickness of the body, mm: thin in the fossae, thicker at the borders and the angles."""
    d = _lateral_distance(x, z)
    medial = np.exp(-((np.clip(x + 2.5, 0, None) / 6.0) ** 2))
    lateral = np.exp(-((np.clip(d, 0, None) / 7.0) ** 2))
    inferior = np.exp(-(((z + 102.6) / 15.0) ** 2))
    superior = np.exp(-(((x - 13.0) ** 2 + (z - 47.0) ** 2) / 10.0**2))
    ridges = 0.35 * np.sin((z + 0.75 * x) * (2 * np.pi / 21.0)) * np.clip((60.0 - x) / 40.0, 0, 1)
    thin = 2.9 + ridges / (1.0 + np.exp((z - 6.0) / 4.0))
    return thin + 1.5 * medial + 4.0 * lateral + 2.4 * inferior + 1.8 * superior


def _acromion_middle(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    rise = 30.6 + 0.36 * (x - 90.0) + 0.13 * (33.0 - y)
    return rise - 0.010 * np.clip(x - 114.0, 0, None) ** 2 - 0.006 * np.clip(4.0 - y, 0, None) ** 2


def _acromion_thickness(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    return 7.6 - 0.06 * np.clip(10.0 - y, 0, 30) + 0.0 * x


@dataclass(frozen=True, slots=True, eq=False)
class OwnScapula:
    """Mesh and landmarks in the own frame, mm, unscaled.

    Attributes
    ----------
    mesh : trimesh.Trimesh
    landmarks : dict of str to ndarray
        Without the ``scapula.left.`` before the name.
    """

    mesh: trimesh.Trimesh
    landmarks: dict[str, np.ndarray]


def _on_body(points: np.ndarray, lift: float = 0.0) -> np.ndarray:
    """Points (n, 2) of the plane on the body's mid-surface, lifted dorsally by mm: (n, 3)."""
    p = np.asarray(points, float).reshape(-1, 2)
    return np.stack([p[:, 0], _body_middle(p[:, 0], p[:, 1]) + lift, p[:, 1]], axis=1)


def _chain(solid, points, sides, widths, thicknesses, power=2.0) -> Solid:
    """Blades end to end along points (n, 3), joined without a swelling at the joints."""
    count = len(points)
    sides = np.broadcast_to(sides, (count, 3))
    for i in range(count - 1):
        solid.blade(
            points[i], points[i + 1], (sides[i] + sides[i + 1]) / 2, widths[i : i + 2],
            thicknesses[i : i + 2], blend=0.0, power=power,
        )  # fmt: skip
    return solid


def _lateral_bar() -> Solid:
    """The stout lateral border from the inferior angle to the glenoid, with its costal ridge."""
    line = np.array(
        [
            (17.5, -95),
            (29.5, -83.8),
            (39.0, -70.2),
            (48.5, -55.0),
            (59.5, -38.2),
            (72.5, -22.6),
            (86, -8.6),
        ]
    )
    points = _on_body(line)
    points[:, 1] += [0, -0.2, -0.8, -1.0, -1.0, -1.0, -0.8]
    solid = _chain(
        Solid(),
        points,
        np.array([(0.8, 0.0, -0.6)]),
        np.array([4.0, 3.4, 3.4, 3.6, 3.9, 4.3, 5.4]),
        np.array([3.2, 3.2, 3.6, 4.0, 4.4, 4.8, 5.2]),
    )
    # Facet of teres major on the back of the inferior angle; rough infraglenoid tubercle.
    solid.ellipsoid(
        _on_body([(18.0, -90)])[0] + [0, 1.2, 0], (6.0, 2.4, 11.0),
        np.array([(0.83, 0, -0.56), (0, 1, 0), (0.56, 0, 0.83)]), blend=3.0,
    )  # fmt: skip
    solid.ellipsoid((90.0, -1.2, -9.0), (4.6, 3.6, 5.4), _turn_z(40), blend=5.0)
    return solid


# Outline in (x, y) of the plate that carries the crest: along the crest, down the
# free border beside the neck, and back within the body.
_WEB = np.array(
    [
        (4.0, -0.5), (14, 3.6), (24, 8.4), (38, 14.8), (56, 22.0), (74, 28.6), (93, 33.6),
        (90.5, 25.0), (85.5, 15.0), (82.0, 6.0), (80.0, 0.8), (66, 2.2), (48, 2.8), (28, 1.2),
        (12, -1.6), (5, -2.6),
    ]
)  # fmt: skip


def _web_middle(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Height of the spine's plate: it climbs laterally and tips up towards its crest."""
    return 0.233 * x + (0.10 + 0.0025 * x) * (y - 2.5)


def _web_thickness(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    return 3.0 + 0.018 * np.clip(x, 0, 100) + 0.0 * y


def _crest() -> Solid:
    """The crest of the spine with its two lips."""
    crest = Solid()
    line = open_spline(_CREST, 22)
    s0 = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(_CREST, axis=0), axis=1))])
    s = np.linspace(0, s0[-1], len(line))
    tangent = np.gradient(line, axis=0)
    # The crest looks backwards and a little up: its breadth runs from lower to upper lip.
    side = np.cross(tangent, _CREST_FACING)
    breadth = PchipInterpolator(s0, _CREST_BREADTH)(s)
    _chain(crest, line, side, breadth, PchipInterpolator(s0, _CREST_HEIGHT)(s))
    # Deltoid tubercle: the lower lip bulges where the ascending fibres of trapezius end.
    crest.ellipsoid((37.5, 15.0, 8.8), (8.0, 2.6, 3.4), _turn_z(19), blend=3.5)
    return crest


def _turn_z(deg: float) -> np.ndarray:
    """Rows: x turned up towards z by deg, y, and the third at right angles."""
    c, s = np.cos(np.deg2rad(deg)), np.sin(np.deg2rad(deg))
    return np.array([(c, 0, s), (0, 1, 0), (-s, 0, c)])


def _neck() -> Solid:
    """The neck: broad above and below, thinner from front to back."""
    solid = Solid()
    for a, b, widths, thick in (
        ((64.0, 2.2, 8.0), (88.0, 0.4, 9.4), (15.0, 14.5), (0.8, 6.2)),
        ((88.0, 0.4, 9.4), (98.5, -0.2, 9.6), (14.5, 17.0), (6.2, 10.4)),
    ):
        solid.blade(a, b, (0.0, 0.0, 1.0), widths, thick, blend=2.0)
    return solid


def _glenoid() -> tuple[Solid, Solid]:
    """The pear-shaped rim and the head's sphere that is taken out of it."""
    n = GLENOID_NORMAL / np.linalg.norm(GLENOID_NORMAL)
    up = np.array([-n[2], 0.0, n[0]])
    c = _GLENOID
    rim, cavity = Solid(), Solid()
    rim.cone(c - 4.6 * up, c + 9.4 * up + [0, -1.0, 0], 14.6, 9.8, blend=0.0)
    rim.plane(c + 1.6 * n, n, blend=1.6)
    rim.plane(c - 4.0 * n, -n, blend=5.0)
    # Supraglenoid tubercle.
    rim.ellipsoid(c + 18.2 * up - 2.2 * n, (3.2, 3.4, 3.0), blend=2.5)
    cavity.ellipsoid(HEAD_CENTRE, np.array([1.0, 1.0, 1.12]) * (HEAD_RADIUS + 2.6), blend=0.0)
    return rim, cavity


def _coracoid() -> Solid:
    """The hook: root on the neck, rising forwards, then bent lateral over the head's front."""
    points = open_spline(
        np.array(
            [(88, 0.5, 23), (88.5, -5.0, 31.0), (90, -13.5, 36.5), (94.5, -24, 37.8),
             (100.5, -34.0, 35.4), (105.5, -41.5, 31.6)]
        ),
        14,
    )  # fmt: skip
    s = np.linspace(0, 1, 14)
    widths = np.interp(s, [0, 0.25, 0.5, 0.8, 1.0], [10.5, 8.6, 7.6, 6.9, 6.0])
    thick = np.interp(s, [0, 0.25, 0.5, 0.8, 1.0], [7.0, 6.0, 5.2, 4.9, 4.8])
    # Broad from medial to lateral, flat from above down.
    return _chain(Solid(), points, np.array([(0.86, 0.36, -0.10)]), widths, thick)


@lru_cache(maxsize=4)
def own_scapula(detail: str) -> OwnScapula:
    """Contour the scapula in its own frame.

    Parameters
    ----------
    detail : {"preview", "full"}

    Returns
    -------
    OwnScapula
    """
    grid = DistanceGrid([(-8, -52, -113), (139, 46, 62)], _SPACING[detail])
    outline = closed_spline(_OUTLINE, 5)
    body = Plate(1, outline, _body_middle, _body_thickness)
    grid.join(body, [(-8, -24, -113), (104, 16, 55)], blend=0.0)
    grid.join(_lateral_bar(), blend=4.0)
    box = [(46, -24, -30), (113, 24, 42)]
    rim, cavity = _glenoid()
    grid.join(_neck(), box, blend=5.0)
    grid.join(rim, box, blend=5.0)
    grid.join(cavity, box, blend=1.2, cut=True)
    web = Plate(2, closed_spline(_WEB, 4), _web_middle, _web_thickness)
    grid.join(web, [(-4, -12, -10), (104, 42, 44)], blend=4.5)
    grid.join(_crest(), blend=3.0)
    acromion = Plate(2, closed_spline(_ACROMION, 5), _acromion_middle, _acromion_thickness)
    grid.join(acromion, [(78, -22, 24), (139, 46, 62)], blend=3.5)
    grid.join(_coracoid(), blend=4.0)
    mesh = grid.mesh(_TRIANGLES[detail])
    return OwnScapula(mesh, _landmarks(mesh))


def costal_footprint() -> tuple[np.ndarray, np.ndarray]:
    """Points of the costal face that rest on the chest wall: inside (n, 3), and its edge (m, 3).

    Own frame, mm, from the drawing itself: the same at every detail.
    """
    inside = _patch(_SUBSCAPULAR, -1.6, step=12.0)
    edge = _border(_medial_edge(3.0), 14) - [0.0, 1.6, 0.0]
    return inside, edge[1:-1]


def acromion_reach() -> np.ndarray:
    """Points (n, 3) of the acromion's lateral margin, own frame, mm."""
    p = closed_spline(_ACROMION, 5)
    return np.column_stack([p, _acromion_middle(p[:, 0], p[:, 1])])


_SUBSCAPULAR = [(4, 30), (3, -57), (15, -87), (74, -15.5), (86, 6), (62, 22), (16, 40)]


def _medial_edge(inset: float) -> np.ndarray:
    """The medial border from superior to inferior angle, (n, 2), moved laterally by mm."""
    line = np.concatenate([[(13.0, 47.0)], _OUTLINE[-3:], _OUTLINE[:9]])
    line = line + (inset, 0.0)
    line[0, 1] -= inset
    return line[:-1] if inset else line


def _border(points: np.ndarray, count: int) -> np.ndarray:
    return _on_body(open_spline(np.asarray(points, float), count))


def _landmarks(mesh: trimesh.Trimesh) -> dict[str, np.ndarray]:
    """Landmarks on the mesh, own frame."""
    marks: dict[str, np.ndarray] = {}
    outline = _OUTLINE
    lateral = outline[9:18]
    marks["superior_angle"] = _on_body([(14.6, 47.4)])[0]
    marks["inferior_angle"] = _on_body([(11.5, -101.0)])[0]
    marks["root_of_spine"] = _on_body([(0.0, 1.0)], 2.0)[0]
    marks["medial_border"] = _border(_medial_edge(0.0), 32)
    marks["lateral_border"] = _border(lateral[:-1], 24)
    marks["superior_border"] = _border(outline[24:32][::-1], 20)
    marks["medial_border_costal"] = _border(_medial_edge(3.5), 32) - [0, 4.0, 0]
    crest = open_spline(_CREST[:-1], 24)
    s = np.linspace(0, 1, 24)
    breadth = np.interp(s, np.linspace(0, 1, 7), _CREST_BREADTH[:-1])
    tangent = np.gradient(crest, axis=0)
    side = np.cross(tangent, _CREST_FACING)
    side /= np.linalg.norm(side, axis=1)[:, None]
    lift = np.array([0.0, 1.6, 0.5])
    upper_sign = np.sign(side[12, 2])
    marks["spine_crest_upper_lip"] = crest + lift + 0.8 * upper_sign * breadth[:, None] * side
    marks["spine_crest_lower_lip"] = crest + lift - 0.8 * upper_sign * breadth[:, None] * side
    marks["deltoid_tubercle"] = np.array([37.5, 19.0, 8.6])
    rim = _ACROMION

    def on_acromion(points, lift=0.0):
        p = open_spline(np.asarray(points, float), 16)
        return np.column_stack([p, _acromion_middle(p[:, 0], p[:, 1]) + lift])

    marks["acromion_lateral_margin"] = on_acromion(rim[3:9], 1.0)
    marks["acromion_medial_margin"] = on_acromion(rim[9:16][::-1], 1.0)
    marks["clavicular_facet"] = on_acromion([(111.0, 1.0), (111.4, 0.0)])[0]
    marks["acromial_angle"] = on_acromion([(120.2, 39.0), (120.6, 38.6)])[0]
    marks["acromion_tip"] = on_acromion([(127.5, -14.0), (128.0, -13.6)])[0]
    marks["coracoid_tip"] = np.array([108.0, -45.0, 29.6])
    marks["glenoid_centre"] = _GLENOID.copy()
    marks["infraglenoid_tubercle"] = np.array([93.0, -1.5, -17.0])
    marks["supraglenoid_tubercle"] = _GLENOID + [-4.0, 0.0, 22.0]
    marks["supraspinous_fossa"] = _patch([(10, 12), (16, 42), (60, 27), (84, 27), (74, 23)], 2.0)
    marks["infraspinous_fossa"] = _patch(
        [(3, -6), (3, -57), (15, -80), (60, -30.5), (80, -2), (78, 14), (40, 3)], 2.0
    )
    marks["subscapular_fossa"] = _patch(_SUBSCAPULAR, -2.0)
    names = list(marks)
    stacked = np.concatenate([np.atleast_2d(marks[n]) for n in names])
    snapped = snap_to_surface(mesh, stacked)
    start = 0
    for name in names:
        size = len(np.atleast_2d(marks[name]))
        piece = snapped[start : start + size]
        marks[name] = piece[0] if marks[name].ndim == 1 else piece
        start += size
    return marks


def _patch(corners: list[tuple[float, float]], lift: float, step: float = 8.0) -> np.ndarray:
    """Points of the body's surface on a net of step mm within a polygon."""
    from meshes.shapes.plate import _polygon_distance

    polygon = np.asarray(corners, float)
    low, high = polygon.min(0), polygon.max(0)
    a, b = np.meshgrid(np.arange(low[0], high[0], step), np.arange(low[1], high[1], step))
    points = np.stack([a.ravel(), b.ravel()], axis=1)
    inside = _polygon_distance(polygon, points[:, 0].copy(), points[:, 1].copy()) < 0
    return _on_body(points[inside], lift)
