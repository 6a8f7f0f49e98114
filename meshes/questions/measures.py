"""Measures a finished model as a radiologist or an osteologist would.

Everything is read off the finished meshes, with the named landmarks only as
pointers to the place; nothing here knows how a part was made.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

import numpy as np
import shapely
import trimesh
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import polygonize, unary_union

from meshes.model import BackModel
from meshes.questions.rays import RayIndex

# Of the depth of a body, how far in from front and back wall its rims are read:
# rims are rounded, the middle of an endplate is sunk.
_RIM = (0.12, 0.88)
_FAR_MM = 3000.0
"""Longer than any body, from the origin."""
_LEVEL_NAMES = (
    *(f"C{n}" for n in range(1, 8)),
    *(f"T{n}" for n in range(1, 13)),
    *(f"L{n}" for n in range(1, 6)),
)


class Unmeasurable(Exception):
    """The model lacks what a measure needs, or the measure found no answer."""


@dataclass(frozen=True, slots=True, eq=False)
class BodyOutline:
    """A vertebral body in its median section.

    Attributes
    ----------
    polygon : shapely Polygon
        In (y, z), mm.
    up, forward : (2,) float
        Unit vectors in (y, z): square to the mean endplate, and along it to the front.
    rims : mapping of str to (2, 2) float
        "upper" and "lower": rear and front point of the endplate, (y, z).
    """

    polygon: Polygon
    up: np.ndarray
    forward: np.ndarray
    rims: Mapping[str, np.ndarray]


@dataclass(eq=False)
class Measured:
    """A model and what has been read off it so far.

    Attributes
    ----------
    model : BackModel
    """

    model: BackModel
    _outlines: dict[str, BodyOutline] = field(default_factory=dict)
    _rays: dict[str, RayIndex] = field(default_factory=dict)

    def mesh(self, part_id: str) -> trimesh.Trimesh:
        """Return the mesh of a part."""
        if part_id not in self.model.parts:
            raise Unmeasurable(f"{part_id} is not built")
        return self.model.parts[part_id].mesh

    def landmark(self, name: str) -> np.ndarray:
        """Return a landmark, (3,) or (k, 3) mm."""
        if name not in self.model.landmarks:
            raise Unmeasurable(f"there is no landmark {name}")
        return np.asarray(self.model.landmarks[name], dtype=float)

    def rays(self, part_id: str) -> RayIndex:
        """Return the ray index of a part."""
        if part_id not in self._rays:
            mesh = self.mesh(part_id)
            self._rays[part_id] = RayIndex(mesh.vertices, mesh.faces)
        return self._rays[part_id]

    def outline(self, level: str) -> BodyOutline:
        """Return the median section of a vertebral body, C2 to L5."""
        if level not in self._outlines:
            self._outlines[level] = _body_outline(self, level)
        return self._outlines[level]

    def reach(self, part_id: str, start: np.ndarray, direction: np.ndarray) -> float:
        """Return how far a ray goes before it meets a part, mm."""
        crossings = self.rays(part_id).crossings(start, direction)
        if len(crossings.distance) == 0:
            raise Unmeasurable(f"a ray misses {part_id}")
        return float(crossings.distance[0])


# --- sections ------------------------------------------------------------------------


def section_area(mesh: trimesh.Trimesh, origin: np.ndarray, normal: np.ndarray) -> float:
    """Return the area of a plane section of a closed mesh, mm²."""
    return float(sum(piece.area for piece in section_polygons(mesh, origin, normal)))


def section_polygons(
    mesh: trimesh.Trimesh, origin: np.ndarray, normal: np.ndarray
) -> list[Polygon]:
    """Return the pieces of a plane section, in two axes of the plane.

    For a plane square to an axis, the other two in their order: (y, z), (x, z) or (x, y).
    """
    axes = plane_axes(normal)
    lines = trimesh.intersections.mesh_plane(mesh, normal, origin)
    return _polygons(np.asarray(lines).reshape(-1, 2, 3) @ axes.T)


def plane_axes(normal: np.ndarray) -> np.ndarray:
    """Return two axes of a plane as rows, (2, 3); the model's own where the plane is square."""
    normal = np.asarray(normal, dtype=float)
    k = int(np.argmax(np.abs(normal)))
    basis = np.delete(np.eye(3), k, axis=0)
    first = basis[0] - normal * (basis[0] @ normal) / (normal @ normal)
    first /= np.linalg.norm(first)
    second = basis[1] - normal * (basis[1] @ normal) / (normal @ normal)
    second -= first * (first @ second)
    return np.array([first, second / np.linalg.norm(second)])


def _polygons(segments: np.ndarray) -> list[Polygon]:
    """Join the (n, 2, 2) segments of a section into filled pieces, holes left out."""
    if len(segments) == 0:
        return []
    # Ends that belong together differ in the last digits: put them on a fine grid.
    segments = np.round(segments, 5)
    segments = segments[np.any(segments[:, 0] != segments[:, 1], axis=1)]
    lines = shapely.linestrings(segments)
    rings = [Polygon(ring.exterior) for ring in polygonize(unary_union(lines))]
    # Even-odd: a ring within a ring is a hole.
    filled: Polygon = Polygon()
    for ring in sorted(rings, key=lambda ring: -ring.area):
        filled = filled.symmetric_difference(ring) if filled.covers(ring) else filled.union(ring)
    return [p for p in shapely.get_parts(filled) if isinstance(p, Polygon) and p.area > 1e-6]


# --- vertebrae ------------------------------------------------------------------------


def _body_outline(measured: Measured, level: str) -> BodyOutline:
    mesh = measured.mesh(f"vertebra_{level}")
    centre = measured.landmark(f"{level}.body_centre")
    canal = measured.landmark(f"{level}.canal_centre")
    pieces = section_polygons(mesh, [0.05, 0, 0], [1.0, 0, 0])
    inside = [p for p in pieces if p.distance(Point(centre[1], centre[2])) < 1.0]
    if not inside:
        raise Unmeasurable(f"{level} has no body in the median plane")
    polygon = max(inside, key=lambda p: p.area)
    forward = (centre - canal)[1:]
    forward /= np.linalg.norm(forward)
    if level == "C2":
        # Without the dens, whose top is no endplate: cut off 3 mm above the centre.
        up = np.array([forward[1], -forward[0]])
        up *= np.sign(up[1])
        corner = centre[1:] + 3.0 * up
        slab = [corner + 60 * forward, corner - 60 * forward]
        slab += [slab[1] - 60 * up, slab[0] - 60 * up]
        polygon = max(
            shapely.get_parts(polygon.intersection(Polygon(slab))), key=lambda piece: piece.area
        )
    rims: dict[str, np.ndarray] = {}
    for _ in range(4):
        # A quarter turn from forward (-y) to up (+z).
        up = np.array([forward[1], -forward[0]])
        up *= np.sign(up[1])
        rims = _rims(polygon, forward, up)
        if level == "C2":
            forward = _unit(rims["lower"][1] - rims["lower"][0])
        else:
            forward = _unit(sum(_unit(rim[1] - rim[0]) for rim in rims.values()))
    up = np.array([forward[1], -forward[0]])
    up *= np.sign(up[1])
    return BodyOutline(polygon, up, forward, rims)


def _rims(polygon: Polygon, forward: np.ndarray, up: np.ndarray) -> dict[str, np.ndarray]:
    points = np.asarray(polygon.exterior.coords)
    along = points @ forward
    low, high = along.min(), along.max()
    found: dict[str, list[np.ndarray]] = {"upper": [], "lower": []}
    for share in _RIM:
        at = low + share * (high - low)
        top, bottom = _extent_at(polygon, at, forward, up)
        found["upper"].append(at * forward + top * up)
        found["lower"].append(at * forward + bottom * up)
    return {name: np.array(pair) for name, pair in found.items()}


def _extent_at(
    polygon: Polygon, at: float, forward: np.ndarray, up: np.ndarray
) -> tuple[float, float]:
    """Highest and lowest point of a polygon on the line across it at a depth."""
    line = LineString([at * forward - _FAR_MM * up, at * forward + _FAR_MM * up])
    cut = polygon.intersection(line)
    if cut.is_empty:
        raise Unmeasurable("a section line misses the body")
    heights = shapely.get_coordinates(cut) @ up
    return float(heights.max()), float(heights.min())


def _unit(vector: np.ndarray) -> np.ndarray:
    return vector / np.linalg.norm(vector)


def _wall_height(measured: Measured, level: str, shares: tuple[float, float]) -> float:
    outline = measured.outline(level)
    along = np.asarray(outline.polygon.exterior.coords) @ outline.forward
    low, high = along.min(), along.max()
    tops, bottoms = zip(
        *(
            _extent_at(outline.polygon, low + share * (high - low), outline.forward, outline.up)
            for share in np.linspace(*shares, 7)
        )
    )
    return max(tops) - min(bottoms)


def posterior_body_height(measured: Measured, level: str) -> float:
    """Height of a body at its rear wall, mm."""
    return _wall_height(measured, level, (0.04, 0.2))


def anterior_body_height(measured: Measured, level: str) -> float:
    """Height of a body at its front wall, mm."""
    return _wall_height(measured, level, (0.8, 0.96))


def upper_endplate_depth(measured: Measured, level: str) -> float:
    """Front-to-rear extent of the upper rim in the median plane, mm."""
    outline = measured.outline(level)
    points = np.asarray(outline.polygon.exterior.segmentize(0.3).coords)
    heights = points @ outline.up
    rim = (outline.rims["upper"] @ outline.up).mean()
    near = points[np.abs(heights - rim) < 2.5]
    along = near @ outline.forward
    return float(along.max() - along.min())


def upper_endplate_width(measured: Measured, level: str) -> float:
    """Side-to-side extent of the body 2 mm below its upper rim, mm."""
    outline = measured.outline(level)
    up = np.array([0.0, *outline.up])
    forward = np.array([0.0, *outline.forward])
    rim = outline.rims["upper"].mean(axis=0)
    place = np.array([0.0, *rim]) - 2.0 * up
    mesh = measured.mesh(f"vertebra_{level}")
    cut = np.asarray(trimesh.intersections.mesh_plane(mesh, up, place)).reshape(-1, 3)
    # Front of the middle of the body only: pedicles and rib facets lie behind it.
    ahead = cut[(cut - place) @ forward > 0]
    if len(ahead) == 0:
        raise Unmeasurable(f"no upper rim found on {level}")
    return float(np.ptp(ahead[:, 0]))


def canal_width(measured: Measured, level: str) -> float:
    """Least distance between the pedicles, mm."""
    return _canal(measured, level, sideways=True)


def canal_depth(measured: Measured, level: str) -> float:
    """Least distance between rear wall and lamina in the median plane, mm."""
    return _canal(measured, level, sideways=False)


def _canal(measured: Measured, level: str, sideways: bool) -> float:
    outline = measured.outline(level)
    up = np.array([0.0, *outline.up])
    forward = np.array([0.0, *outline.forward])
    direction = np.array([1.0, 0, 0]) if sideways else forward
    centre = measured.landmark(f"{level}.canal_centre")
    if sideways:
        # Below the pedicles the articular processes come closer together than they do.
        middle = float((measured.landmark(f"{level}.left.pedicle") - centre) @ up)
        heights = middle + np.arange(-3.0, 3.5, 1.0)
    else:
        heights = np.arange(-8.0, 8.5, 1.0)
    widths = []
    for height in heights:
        start = centre + height * up + np.array([0.03, 0, 0])
        try:
            widths.append(
                measured.reach(f"vertebra_{level}", start, direction)
                + measured.reach(f"vertebra_{level}", start, -direction)
            )
        except Unmeasurable:
            continue  # above or below the bony ring
    if not widths:
        raise Unmeasurable(f"the canal of {level} has no walls")
    return float(min(widths))


def transverse_width(measured: Measured, level: str) -> float:
    """Distance between the tips of the transverse processes, mm."""
    vertices = np.asarray(measured.mesh(f"vertebra_{level}").vertices)
    return float(np.ptp(vertices[:, 0]))


def disc_height(measured: Measured, pair: str) -> float:
    """Height of the middle of a disc, mm; ``pair`` as in L3_L4, sacrum as S1."""
    mesh = measured.mesh(f"disc_{pair}")
    upper = pair.split("_")[0]
    up = np.array([0.0, *measured.outline(upper).up])
    middle = np.asarray(mesh.vertices).mean(axis=0) + np.array([0.07, 0, 0])
    return measured.reach(f"disc_{pair}", middle, up) + measured.reach(f"disc_{pair}", middle, -up)


# --- curves -----------------------------------------------------------------------------


def _inclination(rim: np.ndarray) -> float:
    """Angle of an endplate to the horizontal, degrees; positive when its front is lower."""
    rear, front = rim
    step = front - rear
    return float(np.degrees(np.arctan2(-step[1], -step[0])))


def endplate_inclination(measured: Measured, level: str, end: str) -> float:
    """Inclination of an endplate to the horizontal, degrees; positive: front lower."""
    if level == "S1":
        return sacral_slope(measured, "")
    return _inclination(measured.outline(level).rims[end])


def thoracic_kyphosis(measured: Measured, _: str) -> float:
    """Cobb angle from the upper endplate of T4 to the lower one of T12, degrees."""
    return endplate_inclination(measured, "T4", "upper") - endplate_inclination(
        measured, "T12", "lower"
    )


def lumbar_lordosis(measured: Measured, _: str) -> float:
    """Cobb angle from the upper endplate of L1 to that of S1, degrees."""
    return endplate_inclination(measured, "S1", "upper") - endplate_inclination(
        measured, "L1", "upper"
    )


def thoracolumbar_lordosis(measured: Measured, _: str) -> float:
    """Cobb angle from the upper endplate of T12 to that of S1, degrees."""
    return endplate_inclination(measured, "S1", "upper") - endplate_inclination(
        measured, "T12", "upper"
    )


def lower_lumbar_lordosis(measured: Measured, _: str) -> float:
    """Cobb angle from the upper endplate of L4 to that of S1, degrees."""
    return endplate_inclination(measured, "S1", "upper") - endplate_inclination(
        measured, "L4", "upper"
    )


def cervical_lordosis(measured: Measured, _: str) -> float:
    """Cobb angle from the lower endplate of C2 to that of C7, degrees."""
    return endplate_inclination(measured, "C7", "lower") - endplate_inclination(
        measured, "C2", "lower"
    )


def sacral_slope(measured: Measured, _: str) -> float:
    """Inclination of the sacral endplate to the horizontal, degrees.

    A line through the points where rays from above meet the endplate, up to
    12 mm before and behind its centre, which is the origin.
    """
    slope = 41.0
    for _ in range(3):
        turn = np.radians(slope)
        forward = np.array([0.0, -np.cos(turn), -np.sin(turn)])
        up = np.array([0.0, -np.sin(turn), np.cos(turn)])
        starts = np.outer(np.linspace(-12, 12, 13), forward) + 25 * up + [0.06, 0, 0]
        hits = []
        for start in starts:
            crossings = measured.rays("sacrum").crossings(start, -up)
            if len(crossings.distance) and crossings.distance[0] < 40:
                hits.append(start - crossings.distance[0] * up)
        if len(hits) < 8:
            raise Unmeasurable("no sacral endplate found")
        places = np.array(hits)
        rise = np.polyfit(places @ forward, places @ up, 1)[0]
        slope -= float(np.degrees(np.arctan(rise)))
    return slope


def region_length(measured: Measured, region: str) -> float:
    """Length of a stretch of the column along its curve, through the body centres, mm.

    ``region``: "cervical" C2-C7 with the atlas left out, "thoracic" or
    "lumbar"; each from the upper endplate of its first to that of the next.
    """
    runs = {
        "thoracic": (*(f"T{n}" for n in range(1, 13)), "L1"),
        "lumbar": (*(f"L{n}" for n in range(1, 6)), "S1"),
    }
    points = [
        np.zeros(2) if level == "S1" else measured.outline(level).rims["upper"].mean(axis=0)
        for level in runs[region]
    ]
    return float(np.linalg.norm(np.diff(points, axis=0), axis=1).sum())


# --- levels -----------------------------------------------------------------------------


def spine_level(measured: Measured, height: float) -> float:
    """Return the spinous process at a height as a running number: C1 1, T1 8, L1 20, S1 25.

    Fractions lie between two tips.
    """
    names = [
        *(f"{level}.spinous_process" for level in _LEVEL_NAMES),
        *(f"S{n}.median_crest" for n in range(1, 6)),
    ]
    numbers, heights = [], []
    for number, name in enumerate(names, start=1):
        if name in measured.model.landmarks:
            numbers.append(number)
            heights.append(float(measured.landmark(name).reshape(-1, 3)[:, 2].mean()))
    if len(numbers) < 2 or not min(heights) <= height <= max(heights):
        raise Unmeasurable("the height lies beyond the spinous processes")
    return float(np.interp(-height, -np.array(heights), numbers))


def inferior_angle_level(measured: Measured, _: str) -> float:
    """Thoracic spinous process level with the lowest point of the scapula."""
    return spine_level(measured, measured.mesh("scapula.left").bounds[0, 2]) - 7


def superior_angle_level(measured: Measured, _: str) -> float:
    """Thoracic spinous process level with the superior angle."""
    return spine_level(measured, measured.landmark("scapula.left.superior_angle")[2]) - 7


def scapular_root_level(measured: Measured, _: str) -> float:
    """Thoracic spinous process level with the root of the scapular spine."""
    return spine_level(measured, measured.landmark("scapula.left.root_of_spine")[2]) - 7


def crest_level(measured: Measured, _: str) -> float:
    """Lumbar spinous process level with the top of the iliac crest."""
    return spine_level(measured, measured.mesh("hip_bone.left").bounds[1, 2]) - 19


def psis_level(measured: Measured, _: str) -> float:
    """Sacral level of the posterior superior iliac spine."""
    return spine_level(measured, measured.landmark("ilium.left.PSIS")[2]) - 24


# --- girdle and trunk ----------------------------------------------------------------


def scapula_height(measured: Measured, _: str) -> float:
    """Superior to inferior angle, mm."""
    return _apart(measured, "scapula.left.superior_angle", "scapula.left.inferior_angle")


def scapula_breadth(measured: Measured, _: str) -> float:
    """Medial border at the root of the spine to the glenoid, mm."""
    return _apart(measured, "scapula.left.root_of_spine", "scapula.left.glenoid_centre")


def scapular_spine_length(measured: Measured, _: str) -> float:
    """Root of the spine to the tip of the acromion, mm."""
    return _apart(measured, "scapula.left.root_of_spine", "scapula.left.acromion_tip")


def scapula_width_above_angle(measured: Measured, distance: str) -> float:
    """Breadth of the blade a given number of mm above the inferior angle, mm."""
    mesh = measured.mesh("scapula.left")
    low = measured.landmark("scapula.left.inferior_angle")
    up = _unit(measured.landmark("scapula.left.root_of_spine") - low)
    cut = trimesh.intersections.mesh_plane(mesh, up, low + float(distance) * up)
    points = np.asarray(cut).reshape(-1, 3)
    if len(points) == 0:
        raise Unmeasurable("the plane misses the scapula")
    spread = points - points.mean(axis=0)
    _, _, axes = np.linalg.svd(spread, full_matrices=False)
    return float(np.ptp(spread @ axes[0]))


def clavicle_length(measured: Measured, _: str) -> float:
    """Greatest length of the clavicle, mm."""
    vertices = np.asarray(measured.mesh("clavicle.left").vertices)
    hull = vertices[_hull_vertices(vertices)]
    return float(np.linalg.norm(hull[:, None] - hull[None], axis=2).max())


def _hull_vertices(points: np.ndarray) -> np.ndarray:
    from scipy.spatial import ConvexHull

    return ConvexHull(points).vertices


def biacromial_breadth(measured: Measured, _: str) -> float:
    """Distance between the lateral edges of the acromia, mm."""
    places = measured.landmark("scapula.left.acromion_lateral_margin")
    return 2 * float(places[:, 0].max())


def bideltoid_breadth(measured: Measured, _: str) -> float:
    """Greatest breadth over the deltoids with skin and fat, mm."""
    deltoid = measured.mesh("deltoid.left")
    z = deltoid.vertices[np.argmax(deltoid.vertices[:, 0]), 2]
    cut = trimesh.intersections.mesh_plane(measured.mesh("skin.left"), [0, 0, 1.0], [0, 0, z])
    points = np.asarray(cut).reshape(-1, 3)
    if len(points) == 0:
        raise Unmeasurable("the skin does not reach the deltoid")
    return 2 * float(points[:, 0].max())


def bicristal_breadth(measured: Measured, _: str) -> float:
    """Greatest breadth between the iliac crests, mm."""
    return 2 * float(np.max(measured.landmark("ilium.left.crest")[:, 0]))


def c7_above_crest(measured: Measured, _: str) -> float:
    """Height of the C7 spinous process above the iliac crest, mm."""
    top = measured.mesh("hip_bone.left").bounds[1, 2]
    return float(measured.landmark("C7.spinous_process")[2] - top)


def c7_above_acromion(measured: Measured, _: str) -> float:
    """Height of the C7 spinous process above the acromion, mm."""
    places = measured.landmark("scapula.left.acromion_lateral_margin")
    return float(measured.landmark("C7.spinous_process")[2] - places[:, 2].max())


def tenth_rib_above_crest(measured: Measured, _: str) -> float:
    """Height of the lowest point of the tenth rib above the iliac crest, mm."""
    lowest = measured.mesh("rib_10.left").bounds[0, 2]
    return float(lowest - measured.mesh("hip_bone.left").bounds[1, 2])


def _apart(measured: Measured, a: str, b: str) -> float:
    return float(np.linalg.norm(measured.landmark(a) - measured.landmark(b)))


# --- muscles and nerves ----------------------------------------------------------------


def thickness_at_medial_border(measured: Measured, muscle: str) -> float:
    """Thickness of a muscle 15 mm medial to the scapula, from behind inward, mm.

    Taken at the middle third of the muscle's overlap with the medial border:
    the median of five rays along the border.
    """
    border = measured.landmark("scapula.left.medial_border")
    ids = [i for i in (f"{name}.left" for name in muscle.split("+")) if i in measured.model.parts]
    if not ids:
        raise Unmeasurable(f"{muscle} is not built")
    found = []
    for place in border[:: max(1, len(border) // 12)]:
        start = place + np.array([-15.0, 80.0, 0.0])
        total = 0.0
        for part_id in ids:
            crossings = measured.rays(part_id).crossings(start, [0.0, -1.0, 0.0])
            if len(crossings.distance) < 2:
                continue
            first = int(np.argmax(crossings.entering))
            face = np.asarray(measured.mesh(part_id).face_normals[crossings.face[first]])
            # Square to the surface rather than along the ray.
            total += float(crossings.distance[first + 1] - crossings.distance[first]) * abs(face[1])
        if total > 0:
            found.append(total)
    if not found:
        raise Unmeasurable(f"{muscle} does not reach the medial border")
    return float(np.median(found))


def cross_section_at(measured: Measured, words: str) -> float:
    """Area of muscles of one side in the horizontal plane of a body or a disc, cm².

    ``words``: muscles joined by "+", then "@", then the level or the disc:
    "multifidus_lumborum@L4", "spinalis_thoracis@L3_L4".
    """
    muscles, level = words.split("@")
    if "_" in level:
        z = float(measured.mesh(f"disc_{level}").bounds[:, 2].mean())
    else:
        z = float(measured.landmark(f"{level}.body_centre")[2])
    ids = [i for i in (f"{name}.left" for name in muscles.split("+")) if i in measured.model.parts]
    if not ids:
        raise Unmeasurable(f"{muscles} is not built")
    area = sum(
        section_area(measured.mesh(i), np.array([0, 0, z]), np.array([0, 0, 1.0])) for i in ids
    )
    return area / 100.0


MEASURES: Mapping[str, Callable[[Measured, str], float]] = {
    function.__name__: function
    for function in (
        posterior_body_height,
        anterior_body_height,
        upper_endplate_depth,
        upper_endplate_width,
        canal_width,
        canal_depth,
        transverse_width,
        disc_height,
        thoracic_kyphosis,
        lumbar_lordosis,
        lower_lumbar_lordosis,
        thoracolumbar_lordosis,
        cervical_lordosis,
        sacral_slope,
        region_length,
        inferior_angle_level,
        superior_angle_level,
        scapular_root_level,
        crest_level,
        psis_level,
        scapula_height,
        scapula_breadth,
        scapular_spine_length,
        scapula_width_above_angle,
        clavicle_length,
        biacromial_breadth,
        bideltoid_breadth,
        bicristal_breadth,
        c7_above_crest,
        c7_above_acromion,
        tenth_rib_above_crest,
        thickness_at_medial_border,
        cross_section_at,
    )
}
"""Measures by name, as the table of published values calls them."""
