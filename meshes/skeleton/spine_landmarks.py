"""Where the named points of the column lie, in each bone's own axes.

Every function returns name -> (points, on_bone): points (3,) or (k, 3) in mm;
those on the bone are later snapped to its finished surface.
"""

from __future__ import annotations

import numpy as np

from meshes.skeleton.atlas_axis import AtlasPlan, axis_foramen
from meshes.skeleton.frame import CERVICAL, LEVELS, LUMBAR, SkeletonFrame
from meshes.skeleton.sacrum import (
    auricular_plane,
    coccyx_pieces,
    dorsal_foramen,
    intermediate_tubercle,
    lateral_tubercle,
    lumbosacral_joint,
    segments,
)
from meshes.skeleton.vertebra import (
    Plan,
    accessory_process,
    costal_facets,
    foramen_transversarium,
    lamina_axis,
    mamillary_process,
    transverse_facet,
)

Placed = dict[str, tuple[np.ndarray, bool]]


def vertebra_landmarks(plan: Plan, frame: SkeletonFrame) -> Placed:
    """Landmarks of C2 to L5."""
    level, s, shape = plan.level, plan.s, plan.shape
    root, middle, tip = plan.spine_axis
    direction = (tip - middle) / np.linalg.norm(tip - middle)
    side = np.array([0.0, direction[2], -direction[1]])
    side *= -np.sign(side[2]) if side[2] else 1.0
    side = -side  # towards the upper edge
    high = shape.spine_heights[2] * s
    end = np.array([0.0, *(np.array(shape.spine_tip) * s)])
    fork = np.array([3.4 * s, 0.0, 0.0]) if level in ("C2", "C3", "C4", "C5", "C6") else np.zeros(3)
    ridge = np.array(
        [
            0.45 * middle + 0.55 * tip + 1.1 * np.mean(shape.spine_heights[1:]) * s * side,
            tip + 0.95 * high * side + 0.6 * s * direction,
            tip + 0.5 * high * side + 3.0 * s * direction,
            tip + 3.6 * s * direction,
            tip - 0.5 * high * side + 3.0 * s * direction,
            tip - 0.95 * high * side + 0.6 * s * direction,
        ]
    )
    outer, inner, lean = lamina_axis(plan)
    half_thick = shape.lamina[1] * s
    backward = np.array([0.0, np.cos(lean), np.sin(lean)])
    facing = np.array([0.0, 1.0, 0.0])
    found: Placed = {
        "body_centre": (np.zeros(3), False),
        "canal_centre": (np.array([0.0, plan.canal[2], 0.0]), False),
        "spinous_process": (end + fork + 0.3 * direction, True),
        "spinous_root": (
            np.array(
                [0.0, plan.lamina_back + 2.6 * half_thick, root[2] + shape.spine_heights[0] * s]
            ),
            True,
        ),
        "spinous_ridge": (ridge + (fork if fork.any() else 0.0), True),
        "left.lamina": (0.45 * outer + 0.55 * inner + 1.5 * half_thick * backward, True),
        "left.inferior_articular_process": (
            plan.below.centre + 3.0 * s * plan.below.normal - 4.0 * s * plan.below.along,
            True,
        ),
        "left.pedicle": (plan.pedicle_centre + [0, 0, shape.pedicle[1] * s], True),
        "left.foramen": (_foramen(plan, frame), False),
    }
    tip_left = np.array(shape.transverse_tip) * s
    if plan.above is not None:
        found["left.superior_articular_process"] = (
            plan.above.centre - 0.6 * plan.above.normal + 1.0 * s * plan.above.along,
            True,
        )
    if level in CERVICAL:
        pillar = (
            plan.below.centre
            if plan.above is None
            else 0.5 * (plan.above.centre + plan.below.centre)
        )
        found["left.articular_pillar"] = (pillar + [4.2 * s, 6.0 * s, 0.0], True)
        found["left.transverse_process"] = (tip_left + 0.5 * facing, True)
        found["left.posterior_tubercle"] = (tip_left + [0.3, 0.5, -0.4], True)
        reach, front = (9.0, 2.2) if level == "C7" else (3.0, -2.5)
        found["left.anterior_tubercle"] = (
            np.array([tip_left[0] - reach * s + 0.6, front * s, tip_left[2] + 1.4 * s]),
            True,
        )
        hole = axis_foramen(plan) if level == "C2" else foramen_transversarium(plan)
        found["left.foramen_transversarium"] = (hole, False)
        if level == "C2":
            found["dens"] = (np.array([0.0, -0.4 * s, plan.half_height + 17.0 * s]), True)
            found["left.superior_articular_process"] = (
                np.array([15.8 * s, -0.5 * s, plan.half_height + 0.5 * s]),
                True,
            )
    else:
        thick = shape.transverse_end[1] * s
        found["left.transverse_process"] = (
            tip_left + np.array([-0.4 * thick, 0.6 * thick, 0.0]),
            True,
        )
    if level in LUMBAR or level == "T12":
        if plan.above.kind == "lumbar":
            found["left.mamillary_process"] = (
                mamillary_process(plan) + [0.8 * s, 3.2 * s, 0.0],
                True,
            )
            found["left.accessory_process"] = (
                accessory_process(plan) + [0, 1.5 * s, -0.8 * s],
                True,
            )
        else:
            found["left.mamillary_process"] = (tip_left + [-5.5 * s, 2.0 * s, 7.0 * s], True)
            found["left.accessory_process"] = (tip_left + [-3.5 * s, 0.5 * s, -6.0 * s], True)
    if level.startswith("T"):
        for name, centre in costal_facets(plan).items():
            found[f"left.{name}"] = (centre, True)
        if int(level[1:]) <= 10:
            found["left.transverse_costal_facet"] = (transverse_facet(plan), True)
    return {f"{level}.{name}": value for name, value in found.items()}


def _foramen(plan: Plan, frame: SkeletonFrame) -> np.ndarray:
    """Middle of the intervertebral foramen below a level."""
    s = plan.s
    half_width, half_height = np.array(plan.shape.pedicle) * s
    roof = plan.pedicle_centre[2] - half_height
    place = LEVELS.index(plan.level) + 1
    if place < len(LEVELS):
        lower = Plan(frame, LEVELS[place])
        top = lower.pedicle_centre + [0, 0, lower.shape.pedicle[1] * s]
        floor = plan.frame.to_local(lower.frame.to_model(top))[2]
    else:
        floor = -plan.half_height - plan.disc_below
    back = plan.rear + (1.0 if plan.level in CERVICAL else 4.0) * s
    return np.array([plan.canal[0] + half_width, back, 0.5 * (roof + floor)])


def atlas_landmarks(plan: AtlasPlan) -> Placed:
    """Landmarks of C1."""
    s, d = plan.s, plan.dens
    tip = plan.transverse_tip
    back = plan.back + 8.0 * s
    found: Placed = {
        "body_centre": (np.array([0.0, d, 0.0]), False),
        "canal_centre": (np.array([0.0, 0.5 * (d + 6.0 * s + plan.back), 0.0]), False),
        "posterior_tubercle": (np.array([0.0, back, 0.3 * s]), True),
        "anterior_tubercle": (np.array([0.0, plan.front - 8.0 * s, -1.0 * s]), True),
        "spinous_process": (np.array([0.0, back, 0.3 * s]), True),
        "spinous_root": (np.array([0.0, back - 2.0 * s, 4.0 * s]), True),
        "spinous_ridge": (
            np.array([[0.0, back - 1.5 * s, z * s] for z in (3.5, 1.5, -0.5, -3.0)]),
            True,
        ),
        "left.transverse_process": (tip + [0.0, 1.5 * s, 0.0], True),
        "left.posterior_tubercle": (tip + [-1.0 * s, 3.0 * s, -1.0 * s], True),
        "left.anterior_tubercle": (tip + [-3.0 * s, -5.0 * s, 0.0], True),
        "left.lamina": (np.array([11.0 * s, plan.back + 4.5 * s, 0.0]), True),
        "left.superior_articular_process": (plan.superior_facet, True),
        "left.inferior_articular_process": (plan.below.centre + 0.7 * plan.below.normal, True),
        "left.articular_pillar": (np.array([19.0 * s, d + 13.0 * s, 0.0]), True),
        "left.pedicle": (np.array([20.0 * s, d + 10.0 * s, -1.0 * s]), True),
        "left.foramen": (np.array([17.0 * s, d + 15.0 * s, -8.5 * s]), False),
        "left.foramen_transversarium": (plan.foramen, False),
        "left.vertebral_groove": (np.array([18.8 * s, d + 14.0 * s, 2.0 * s]), True),
    }
    return {f"C1.{name}": value for name, value in found.items()}


def sacrum_landmarks(frame: SkeletonFrame) -> Placed:
    """Landmarks of the sacrum."""
    s = frame.scale
    parts = segments(frame)
    found: Placed = {}
    for i, seg in enumerate(parts):
        back = seg.dorsal + 8.0 * s
        if i < 4:
            found[f"S{i + 1}.median_crest"] = (seg.at(0, back, -1.0 * s), True)
        else:
            # No crest at S5, where the hiatus opens: the floor of its canal stands in.
            found["S5.median_crest"] = (seg.at(0, seg.half[1], 0.0), True)
        found[f"S{i + 1}.body_centre"] = (seg.middle, False)
        found[f"S{i + 1}.canal_centre"] = (seg.at(0, seg.canal_back), False)
    steps = []
    for i in range(4):
        steps.append(parts[i].at(0, parts[i].dorsal + 7.0 * s))
        if i < 3:
            steps.append(0.5 * (steps[-1] + parts[i + 1].at(0, parts[i + 1].dorsal + 7.0 * s)))
    found["sacrum.median_crest"] = (np.array(steps), True)
    found["sacrum.left.intermediate_crest"] = (
        np.array(
            [intermediate_tubercle(p, i, s) + 3.0 * s * p.axes[1] for i, p in enumerate(parts[:4])]
        ),
        True,
    )
    found["sacrum.left.lateral_crest"] = (
        np.array(
            [lateral_tubercle(p, i, s) + 4.0 * s * p.axes[1] for i, p in enumerate(parts[:4])]
        ),
        True,
    )
    for i in range(4):
        # Off-centre by the radius of the hole: the rim lies on the bone, its middle does not.
        found[f"sacrum.left.dorsal_foramen_{i + 1}"] = (dorsal_foramen(parts, i, s), False)
    last = parts[4]
    found["sacrum.hiatus"] = (last.at(0, last.half[1] + 1.0 * s, 1.0 * s), True)
    found["sacrum.apex"] = (last.bottom, True)
    found["sacrum.promontory"] = (np.array([0.0, -parts[0].half[1] - 1.0, -1.5 * s]), True)
    joint = lumbosacral_joint(frame)
    found["S1.left.superior_articular_process"] = (
        joint.centre - 0.6 * joint.normal + 1.0 * s * joint.along,
        True,
    )
    point, normal = auricular_plane(frame)
    # Ear-shaped: a short limb on S1, a longer one down S2 to the top of S3.
    ear = np.array(
        [
            parts[i].at(0.0, back * s, up * s)
            for i, back, up in (
                (0, -1, 4),
                (0, 6, 4),
                (0, -3, -5),
                (0, 5, -5),
                (0, 11, -3),
                (1, 2, 8),
                (1, 9, 8),
                (1, 5, 0),
                (1, 12, 0),
                (1, 8, -8),
                (2, 8, 6),
            )
        ]
    )
    ear[:, 0] = point[0] - (ear - point)[:, 1:] @ normal[1:] / normal[0]
    found["sacrum.left.auricular_surface"] = (ear, True)
    found["sacrum.left.inferior_lateral_angle"] = (
        parts[4].at(parts[4].lateral + 1, 3.5 * s, 3 * s),
        True,
    )
    return found


def coccyx_landmarks(frame: SkeletonFrame) -> Placed:
    """Landmarks of the coccyx."""
    middle, axes, half = coccyx_pieces(frame)[-1]
    first, first_axes, first_half = coccyx_pieces(frame)[0]
    return {
        "coccyx.tip": (middle - 1.3 * half[2] * axes[2], True),
        "coccyx.dorsum": (first + 1.3 * first_half[1] * first_axes[1], True),
        "coccyx.left.transverse_process": (
            first + np.array([15.0, 0.6, 3.0]) * frame.scale @ first_axes,
            True,
        ),
    }
