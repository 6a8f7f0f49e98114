"""Measures of the body's outline, its depths and its girdle, read off the finished meshes."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np
import shapely
from shapely.geometry import Polygon

from meshes.questions.measures import Measured, Unmeasurable, section_polygons

_OUTER_KINDS = ("skin", "fascia", "context")
_BRIDGE_MM = 4.0
"""Clefts narrower than twice this, such as the median seam, are closed in an outline."""
_UP = np.array([0.0, 0.0, 1.0])


def _outline_at(measured: Measured, z: float) -> Polygon:
    """Return the outline of the trunk or neck in the horizontal plane at z, (x, y) in mm."""
    pieces = [
        polygon
        for part in measured.model.parts.values()
        if part.mesh.bounds[0, 2] < z < part.mesh.bounds[1, 2]
        for polygon in section_polygons(part.mesh, np.array([0.0, 0.0, z]), _UP)
    ]
    if not pieces:
        raise Unmeasurable(f"nothing of the body lies at {z:.0f} mm")
    joined = shapely.union_all([p.buffer(_BRIDGE_MM) for p in pieces]).buffer(-_BRIDGE_MM)
    # The arms stand free below the axilla: the trunk is the piece about the median plane.
    middle = [p for p in shapely.get_parts(joined) if p.bounds[0] < 0 < p.bounds[2]]
    if not middle:
        raise Unmeasurable(f"no outline crosses the median plane at {z:.0f} mm")
    return Polygon(max(middle, key=lambda p: p.area).exterior)


def _c7(measured: Measured) -> float:
    return float(measured.landmark("C7.spinous_process")[2])


def outline_breadth(measured: Measured, below_c7: str) -> float:
    """Breadth of the trunk a given number of mm below the tip of C7, mm."""
    lower, _, upper, _ = _outline_at(measured, _c7(measured) - float(below_c7)).bounds
    return float(upper - lower)


def outline_depth(measured: Measured, below_c7: str) -> float:
    """Depth of the trunk a given number of mm below the tip of C7, mm."""
    _, front, _, back = _outline_at(measured, _c7(measured) - float(below_c7)).bounds
    return float(back - front)


def neck_breadth(measured: Measured, level: str) -> float:
    """Breadth of the neck in the horizontal plane of a cervical body, mm."""
    lower, _, upper, _ = _outline_at(
        measured, float(measured.landmark(f"{level}.body_centre")[2])
    ).bounds
    return float(upper - lower)


def _head_points(measured: Measured) -> np.ndarray:
    brim = float(measured.landmark("occipital.external_protuberance")[2]) + 10.0
    points = [
        part.mesh.vertices
        for part in measured.model.parts.values()
        if part.kind in _OUTER_KINDS or part.id == "cranium"
    ]
    points = np.concatenate([np.asarray(p) for p in points])
    points = points[points[:, 2] > brim]
    if len(points) == 0:
        raise Unmeasurable("the head is not built")
    return points


def head_length(measured: Measured, _: str) -> float:
    """Length of the head, from the forehead to the back of the head, mm."""
    return float(np.ptp(_head_points(measured)[:, 1]))


def head_breadth(measured: Measured, _: str) -> float:
    """Greatest breadth of the head, mm."""
    return float(np.ptp(_head_points(measured)[:, 0]))


def vertex_above_c7(measured: Measured, _: str) -> float:
    """Height of the top of the head above the tip of C7, mm."""
    return float(_head_points(measured)[:, 2].max() - _c7(measured))


def c7_above_trochanter(measured: Measured, _: str) -> float:
    """Height of the tip of C7 above the top of the greater trochanter, mm."""
    femur = np.asarray(measured.mesh("femur.left").vertices)
    # The head lies medial to the trochanter.
    outer = femur[femur[:, 0] > femur[:, 0].max() - 25.0]
    return float(_c7(measured) - outer[:, 2].max())


def skin_to_epidural_space(measured: Measured, pair: str) -> float:
    """Depth from the skin to the epidural space between two vertebrae, in the midline, mm.

    Along a line that enters between the spinous processes, level or tilted headward by the
    least angle, at most 25 degrees, at which it passes between the bones, as a needle is
    led; the middle of the heights at which it does.
    """
    upper, lower = pair.split("_")
    a = float(measured.landmark(f"{upper}.spinous_process")[2])
    crest = f"{lower}.spinous_process" if lower != "S1" else "S1.median_crest"
    b = float(np.reshape(measured.landmark(crest), (-1, 3))[:, 2].mean())
    bones = (f"vertebra_{upper}", "sacrum" if lower == "S1" else f"vertebra_{lower}")
    for tilt in np.radians(np.arange(0.0, 25.1, 2.5)):
        forward = np.array([0.0, -np.cos(tilt), np.sin(tilt)])
        depths = []
        for z in np.linspace(b - 8.0, a + 8.0, 33):
            start = _on_skin(measured, z, forward)
            if start is None:
                continue
            try:
                dura = measured.reach("spinal_dura_mater", start, forward)
                skin = measured.reach("skin.left", start, forward)
            except Unmeasurable:
                continue
            crossings = [measured.rays(bone).crossings(start, forward).distance for bone in bones]
            if not any(len(c) and c[0] < dura for c in crossings):
                depths.append(_fat_or(measured, start, forward, dura) - skin)
        if depths:
            return float(np.median(depths))
    raise Unmeasurable(f"bone lies before the canal everywhere between {upper} and {lower}")


def _on_skin(measured: Measured, z: float, forward: np.ndarray) -> np.ndarray | None:
    """Return a point behind the body from which a way comes to the skin at a height z."""
    level = np.array([0.0, -1.0, 0.0])
    behind = np.array([0.4, 250.0, z])
    try:
        entry = behind + measured.reach("skin.left", behind, level) * level
    except Unmeasurable:
        return None
    return entry - 60.0 * forward


def _fat_or(measured: Measured, start: np.ndarray, forward: np.ndarray, dura: float) -> float:
    """Return how far it is to the epidural fat, or to the dura where no fat lies behind it."""
    try:
        return min(dura, measured.reach("epidural_fat", start, forward))
    except Unmeasurable:
        return dura


def scapular_angle(measured: Measured, which: str) -> float:
    """Angle of the scapula at its "inferior" or "superior" corner, degrees.

    As with a goniometer, whose arms are laid along the two borders that meet there: straight
    lines through each border, from the end of the rounded corner 60 (35) mm on.
    """
    borders = {
        "inferior": ("medial_border", "lateral_border", (12.0, 60.0)),
        "superior": ("medial_border", "superior_border", (5.0, 35.0)),
    }
    first, second, (near, far) = borders[which]
    corner = measured.landmark(f"scapula.left.{which}_angle")
    arms = []
    for name in (first, second):
        line = measured.landmark(f"scapula.left.{name}")
        away = np.linalg.norm(line - corner, axis=1)
        laid = line[(away > near) & (away < far)]
        middle = laid.mean(axis=0)
        arm = np.linalg.svd(laid - middle)[2][0]
        arms.append(arm * np.sign(arm @ (middle - corner)))
    return float(np.degrees(np.arccos(arms[0] @ arms[1])))


def acromion_to_coracoid(measured: Measured, _: str) -> float:
    """Distance between the tips of the acromion and the coracoid process, mm."""
    return float(
        np.linalg.norm(
            measured.landmark("scapula.left.acromion_tip")
            - measured.landmark("scapula.left.coracoid_tip")
        )
    )


def body_level(measured: Measured, landmark: str) -> float:
    """Vertebral body level with a landmark, as a running number: T1 1, L1 13.

    Whole numbers are middles of bodies, halves are discs.
    """
    z = float(np.reshape(measured.landmark(landmark), (-1, 3))[:, 2].mean())
    return level_of_height(measured, z)


def level_of_height(measured: Measured, z: float) -> float:
    """Return the body level of a height z (mm): T1 1 to L5 17, S1 18, S2 19 and so on."""
    names = [*(f"T{n}" for n in range(1, 13)), *(f"L{n}" for n in range(1, 6))]
    names += [f"S{n}" for n in range(1, 6)]
    heights = [float(measured.landmark(f"{name}.body_centre")[2]) for name in names]
    return float(np.interp(-z, -np.array(heights), np.arange(1, len(names) + 1)))


def cord_end(measured: Measured, part_id: str) -> float:
    """Body level of the lower end of a part of the canal: L1 13, S2 19."""
    return level_of_height(measured, float(measured.mesh(part_id).bounds[0, 2]))


def muscle_thickness(measured: Measured, muscle: str) -> float:
    """Thickness of a flat muscle at its thickest third, mm.

    Twice the mean over the fleshy faces of the shortest way through, by rays
    from the outer face straight inward: the two thirds that are thinner are left out.
    """
    part_id = f"{muscle}.left"
    mesh = measured.mesh(part_id)
    rng = np.random.default_rng(7)
    picked = rng.choice(len(mesh.faces), min(400, len(mesh.faces)), replace=False)
    centres, normals = mesh.triangles_center[picked], mesh.face_normals[picked]
    found = []
    for centre, normal in zip(centres, normals, strict=True):
        crossings = measured.rays(part_id).crossings(centre - 0.02 * normal, -normal)
        if len(crossings.distance):
            found.append(float(crossings.distance[0]))
    if not found:
        raise Unmeasurable(f"no ray passes through {part_id}")
    found.sort()
    return float(np.mean(found[-len(found) // 3 :][: max(1, len(found) // 4)]))


MEASURES: Mapping[str, Callable[[Measured, str], float]] = {
    function.__name__: function
    for function in (
        outline_breadth,
        outline_depth,
        neck_breadth,
        head_length,
        head_breadth,
        vertex_above_c7,
        c7_above_trochanter,
        skin_to_epidural_space,
        scapular_angle,
        acromion_to_coracoid,
        body_level,
        cord_end,
        muscle_thickness,
    )
}
"""Measures by name, as the table of published values calls them."""
