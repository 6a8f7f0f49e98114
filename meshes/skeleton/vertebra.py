"""C3 to L5: one family of implicit solids, driven by the tables.

A solid holds the median rows and those of the left half only and is contoured
as its own mirror image (`meshes.shapes.symmetric`). Local axes: left, back, up,
origin at the centre of the body, mm.
"""

from __future__ import annotations

import numpy as np

from meshes.shapes.solid import Solid
from meshes.skeleton.facet_joint import GAP_MM, FacetJoint, facet_joint
from meshes.skeleton.frame import (
    CERVICAL,
    LEVELS,
    LUMBAR,
    SkeletonFrame,
    VertebraFrame,
    body_wedge,
    disc_height,
    sagittal_axes,
)
from meshes.skeleton.vertebra_tables import LOWER_WIDTHS, SHAPES, VertebraShape

X, Y, Z = np.eye(3)

_NOTCHED = 0.82
"""Height of a lumbar lamina at the midline, where its lower border arches, against its middle."""


class Plan:
    """Measures of one vertebra, worked out once for solid and landmarks.

    Attributes
    ----------
    level : str
    frame : VertebraFrame
    shape : VertebraShape
    s : float
        Scale of the body.
    rear : float
        Rear wall of the body behind its centre, mm.
    canal : (3,) float
        Half width and half depth of the canal and the back of its middle, mm.
    lamina_back : float
        Front face of the laminae at the midline, mm behind the body's centre.
    above, below : FacetJoint
        The joints, in the vertebra's own axes.
    """

    def __init__(self, frame: SkeletonFrame, level: str) -> None:
        self.level = level
        self.skeleton = frame
        self.frame: VertebraFrame = frame[level]
        self.shape: VertebraShape = SHAPES[level]
        self.s = frame.scale
        v = self.frame
        self.half_height = 0.5 * v.height
        self.rear = 0.5 * v.depth
        self.canal = (0.5 * v.canal_width, 0.5 * v.canal_depth, self.rear + 0.5 * v.canal_depth)
        self.lamina_back = self.rear + v.canal_depth
        self.wedge_deg = body_wedge(level, frame.body)
        self.lower_width = LOWER_WIDTHS[level] * v.width / _table_width(frame, level)
        self.below = in_axes(facet_joint(frame, level), v)
        upper = LEVELS[LEVELS.index(level) - 1]
        self.above = None if level == "C2" else in_axes(facet_joint(frame, upper), v)
        self.disc_below = disc_height(level, frame.scale)

    @property
    def pedicle_centre(self) -> np.ndarray:
        """Middle of the left pedicle."""
        half_width, half_height = np.array(self.shape.pedicle) * self.s
        x = self.canal[0] + half_width
        if self.level in CERVICAL:
            return np.array([x, self.rear + 1.0, 0.12 * self.half_height])
        z = self.half_height - half_height - 0.6
        return np.array([x, self.rear + 0.22 * self.frame.canal_depth, z])

    @property
    def spine_axis(self) -> np.ndarray:
        """(3, 3) root, middle and tip of the axis of the spinous process."""
        s = self.s
        tip = np.array([0.0, self.shape.spine_tip[0] * s, self.shape.spine_tip[1] * s])
        root = np.array([0.0, self.lamina_back + 1.5, self.root_height])
        droop = (tip[2] - root[2]) / (tip[1] - root[1])
        # Steep spines are a little concave upwards, level ones straight.
        middle = 0.5 * (root + tip) + np.array([0.0, 0.0, 0.6 * droop * s])
        thick = min(self.shape.spine_heights[2], 4.0) * s
        tip = tip - 0.8 * thick * (tip - middle) / np.linalg.norm(tip - middle)
        return np.array([root, middle, tip])

    @property
    def spine_heights(self) -> np.ndarray:
        """Half heights (3,) of the spinous process at root, middle and tip, mm.

        Less than the table's where a deep lordosis brings neighbouring processes so close
        that they would meet: each gives up half of what is lacking.
        """
        lack = np.zeros(3)
        number = LEVELS.index(self.level)
        for other in (number - 1, number + 1):
            # C1 has no spine, and below L5 lies the sacrum.
            if 1 <= other < len(LEVELS):
                neighbour = Plan(self.skeleton, LEVELS[other])
                upper, lower = (neighbour, self) if other < number else (self, neighbour)
                lack = np.maximum(lack, 0.5 * _spine_lack(upper, lower))
        heights = np.array(self.shape.spine_heights) * self.s
        return np.maximum(heights - lack, _LEAST_SPINE * heights)

    @property
    def root_height(self) -> float:
        """Height of the axis where the spine leaves the laminae."""
        if self.level in CERVICAL:
            return -1.5 * self.s
        if self.level in LUMBAR:
            return -0.42 * self.half_height
        number = int(self.level[1:])
        return (-0.25 if number <= 9 else -0.32) * self.half_height


_SPINE_ROOM_MM = 1.1
"""Least room between two neighbouring spinous processes, mm."""

_LEAST_SPINE = 0.4
"""Share of its height that a spinous process keeps."""


def _spine_lack(upper: Plan, lower: Plan) -> np.ndarray:
    """How much room is lacking between two spinous processes at root, middle and tip, (3,) mm."""
    one = lower.frame.to_local(upper.spine_axis @ upper.frame.axes.T + upper.frame.centre)
    two = lower.spine_axis
    along = np.linspace(0.0, 1.0, 21)[:, None]
    course = np.concatenate([a + along * (b - a) for a, b in zip(two[:-1], two[1:], strict=True)])
    away = np.linalg.norm(one[:, None] - course[None], axis=2).min(axis=1)
    sizes = np.array(upper.shape.spine_heights) + np.array(lower.shape.spine_heights)
    lack = _SPINE_ROOM_MM * upper.s + sizes * upper.s - away
    # The roots are held apart by the joints.
    return np.maximum(lack, 0.0) * [0.0, 1.0, 1.0]


def in_axes(joint: FacetJoint, frame: VertebraFrame) -> FacetJoint:
    """Joint in a vertebra's own axes."""
    return FacetJoint(
        joint.upper,
        joint.kind,
        frame.to_local(joint.centre),
        joint.normal @ frame.axes,
        joint.along @ frame.axes,
        joint.across @ frame.axes,
        joint.half,
    )


def vertebra_solid(plan: Plan) -> Solid:
    """Solid of a vertebra C3 to L5 in its own axes (half x >= 0)."""
    solid = Solid()
    add_body(solid, plan)
    if plan.level in CERVICAL:
        _cervical_arch(solid, plan)
    else:
        _trunk_arch(solid, plan)
    return solid


def add_body(solid: Solid, plan: Plan) -> None:
    """Body: waisted, with raised rims, sunk endplates and the regional outline."""
    v, s, h = plan.frame, plan.s, plan.half_height
    cervical, lumbar = plan.level in CERVICAL, plan.level in LUMBAR
    thoracic = not cervical and not lumbar
    exponent = 2.6 if cervical else 2.3 if thoracic else 2.55
    upper_tilt = sagittal_axes(0.5 * plan.wedge_deg).T
    lower_tilt = sagittal_axes(-0.5 * plan.wedge_deg).T
    upper = np.array([0.5 * v.width, 0.5 * v.depth])
    lower = np.array([0.5 * plan.lower_width, 0.5 * v.depth * 1.02])
    mean = 0.5 * (upper + lower)
    waist = 0.9 if not cervical else 0.94
    solid.prism(
        (0, 0, 0), (*(mean * waist), h), exponent=exponent, waist=0.05, rounding=1.0, blend=0.0
    )
    rim = 1.5 * s
    for sign, size, axes in ((1, upper, upper_tilt), (-1, lower, lower_tilt)):
        centre = axes.T @ np.array([0.0, 0.0, sign * (h - rim)])
        solid.prism(centre, (*size, rim), axes, exponent=exponent, rounding=0.9 * s, blend=3.5 * s)
        if thoracic:
            # Rear corners: seen from above a thoracic body is heart-shaped.
            offset = axes.T @ np.array([0.22 * size[0], 0.24 * size[1], 0.0])
            half = (0.74 * size[0], 0.80 * size[1], rim)
            solid.prism(centre + offset, half, axes, exponent=2.2, rounding=0.9 * s, blend=3.5 * s)
    if thoracic:
        solid.prism(
            (0.22 * mean[0] * waist, 0.24 * mean[1] * waist, 0.0),
            (0.72 * mean[0] * waist, 0.80 * mean[1] * waist, h - 0.5),
            exponent=2.2,
            rounding=1.0,
            blend=3.5,
        )
    for sign, size, axes in ((1, upper, upper_tilt), (-1, lower, lower_tilt)):
        # The endplate sinks inside its rim; cervical upper ones are all but flat front to back.
        sink = (0.5 if cervical and sign > 0 else 0.9 if cervical else 1.0) * s
        centre = axes.T @ np.array([0.0, 0.02 * v.depth, sign * (h + 3.0 * s - sink)])
        solid.ellipsoid(
            centre,
            (0.95 * size[0], 0.95 * size[1], 3.0 * s),
            axes,
            blend=0.8 * s,
            operation="subtract",
        )
    if cervical and plan.level != "C2":
        x = upper[0] - 0.6 * s
        solid.blade(
            (x, -0.15 * v.depth, h + 0.6 * s),
            (x - 0.4 * s, 0.36 * v.depth, h + 1.6 * s),
            Z,
            (3.0 * s, 3.6 * s),
            (1.5 * s, 1.8 * s),
            blend=1.6 * s,
        )
    if cervical:
        # The lower front lip hangs down over the disc, the lower rear corners are bevelled.
        solid.blade(
            (0, -0.40 * v.depth, -h),
            (0.26 * v.width, -0.30 * v.depth, -h),
            Z,
            1.5 * s,
            1.5 * s,
            blend=1.5 * s,
        )
        solid.blade(
            (0.5 * plan.lower_width + 1.2 * s, -0.1 * v.depth, -h - 1.4 * s),
            (0.5 * plan.lower_width + 0.6 * s, 0.42 * v.depth, -h - 1.0 * s),
            Z,
            3.4 * s,
            2.6 * s,
            blend=1.0 * s,
            operation="subtract",
        )


def cut_canal(solid: Solid, plan: Plan) -> None:
    """Open the vertebral canal: triangular in the neck and loin, round in the chest."""
    half_width, half_depth, middle = plan.canal
    reach = plan.half_height + 26.0 * plan.s
    low, high = np.array([0, 0, -reach]), np.array([0, 0, reach])
    if plan.level in CERVICAL or plan.level in LUMBAR or plan.level == "T12":
        front = np.array([0.0, middle - 0.18 * half_depth, 0.0])
        back = np.array([0.0, middle + 0.30 * half_depth, 0.0])
        solid.blade(
            front + low,
            front + high,
            X,
            half_width,
            0.82 * half_depth,
            blend=0.4,
            operation="subtract",
        )
        solid.blade(
            back + low,
            back + high,
            X,
            0.66 * half_width,
            0.70 * half_depth,
            blend=0.8,
            operation="subtract",
        )
    else:
        centre = np.array([0.0, middle, 0.0])
        solid.blade(
            centre + low,
            centre + high,
            X,
            half_width,
            half_depth,
            blend=1.2 * plan.s,
            operation="subtract",
        )


def cut_joint(
    solid: Solid,
    joint: FacetJoint,
    side: int,
    s: float,
    depth: float = 4.0,
    gap: float = GAP_MM,
) -> None:
    """Cut everything off beyond half the gap of a flat joint.

    side : +1 cuts the lower bone behind its superior facet, -1 the upper bone in front.
    """
    axes = np.stack([joint.across, joint.along, joint.normal])
    half = (joint.half[0] + 2.4 * s, joint.half[1] + 2.6 * s, depth * s)
    centre = joint.centre + side * (depth * s - 0.5 * gap) * joint.normal
    solid.box(centre, half, axes, rounding=0.3, blend=0.3, operation="subtract")


def _cervical_arch(solid: Solid, plan: Plan) -> None:
    shape, s, v = plan.shape, plan.s, plan.frame
    above, below = plan.above, plan.below
    half_width, half_height = np.array(shape.pedicle) * s
    # Pedicle: from the rear corner of the body out and back to the pillar.
    start = np.array([0.5 * v.width - 1.5 * s, plan.rear - 2.5 * s, 0.1 * plan.half_height])
    pillar = 0.5 * (above.centre + below.centre)
    solid.blade(start, pillar - [2.0 * s, 1.5 * s, 0], Z, half_height, half_width, blend=2.0 * s)
    # Articular pillar, cut off obliquely at both facets.
    axis = above.centre - below.centre
    axis /= np.linalg.norm(axis)
    solid.blade(
        below.centre - 0.5 * s * axis,
        above.centre + 0.5 * s * axis,
        X,
        5.7 * s,
        4.5 * s,
        blend=1.5 * s,
        power=2.6,
    )
    add_lamina(solid, plan)
    cut_canal(solid, plan)
    cut_joint(solid, above, +1, s, depth=6.0)
    cut_joint(solid, below, -1, s, depth=6.0)
    _cervical_transverse(solid, plan)
    # Once more, now that the transverse process has grown on to the pillar.
    cut_joint(solid, above, +1, s, depth=6.0)
    cut_joint(solid, below, -1, s, depth=6.0)
    add_spine(solid, plan)


def add_lamina(solid: Solid, plan: Plan) -> None:
    """Lamina: a plate from the arch's corner to the midline, its lower edge further back."""
    shape, s = plan.shape, plan.s
    half_height, half_thick = np.array(shape.lamina) * s
    outer, inner, lean = lamina_axis(plan)
    side = np.array([0.0, np.sin(lean), -np.cos(lean)])
    solid.blade(
        outer,
        inner,
        side,
        (half_height * 0.86, half_height * (_NOTCHED if plan.level in LUMBAR else 1.0)),
        (half_thick * 1.1, half_thick),
        blend=1.8 * s,
        power=2.6,
    )


def lamina_axis(plan: Plan) -> tuple[np.ndarray, np.ndarray, float]:
    """Outer and inner end of the left lamina's axis and its lean in radians."""
    shape, s, v = plan.shape, plan.s, plan.frame
    half_height, half_thick = np.array(shape.lamina) * s
    cd = v.canal_depth
    if plan.level in CERVICAL:
        outer = np.array([plan.canal[0] + 4.0 * s, plan.rear + 0.44 * cd, -1.0 * s])
        inner = np.array([0.5, plan.lamina_back + 0.8 * half_thick, plan.root_height])
        return outer, inner, np.deg2rad(24.0)
    if plan.level in LUMBAR:
        outer = np.array([plan.canal[0] + 0.5 * s, plan.rear + 0.70 * cd, -0.28 * plan.half_height])
        inner = np.array([0.5, plan.lamina_back + 0.9 * half_thick, plan.root_height])
        return outer, inner, np.deg2rad(13.0)
    outer = np.array([plan.canal[0] + 1.5 * s, plan.rear + 0.72 * cd, -0.20 * plan.half_height])
    inner = np.array([0.5, plan.lamina_back + half_thick, -0.42 * plan.half_height])
    return outer, inner, np.deg2rad(17.0)


def _cervical_transverse(solid: Solid, plan: Plan) -> None:
    """Gutter-shaped process with its two tubercles, pierced for the vertebral artery."""
    shape, s, v = plan.shape, plan.s, plan.frame
    tip = np.array(shape.transverse_tip) * s
    big = plan.level == "C7"
    foramen = foramen_transversarium(plan)
    inner = np.array([0.5 * v.width - 1.0 * s, foramen[1] + 0.5 * s, 0.0])
    front = np.array(
        [tip[0] - (9.0 if big else 3.0) * s, (5.0 if big else 0.5) * s, tip[2] + 1.0 * s]
    )
    outer = np.array([tip[0] - 2.5 * s, 0.5 * (front[1] + tip[1]), tip[2] + 0.2 * s])
    half_height, half_width = np.array(shape.transverse_root) * s
    solid.blade(
        inner, outer, Y, (half_width + 0.8 * s, half_width), (2.6 * s, 1.9 * s), blend=1.5 * s
    )
    solid.blade(
        outer - [7 * s, -3.5 * s, -1.0 * s],
        tip - [1.6 * s, 1.0 * s, 0],
        Y,
        (2.6 * s, shape.transverse_end[1] * s),
        (3.2 * s, shape.transverse_end[0] * s),
        blend=1.6 * s,
    )
    bump = 1.5 if big else 3.0 if plan.level == "C6" else 2.4
    solid.ellipsoid(front + [0, 0, 0.4 * s], (bump * s, bump * s, (bump + 0.5) * s), blend=1.8 * s)
    # Sulcus of the spinal nerve: it runs out, forward and down between the tubercles.
    solid.cone(
        (foramen[0] - 5 * s, foramen[1] + 1.0 * s, 5.0 * s),
        (tip[0] + 3 * s, outer[1], tip[2] + 5.2 * s),
        2.9 * s,
        3.2 * s,
        blend=0.8 * s,
        operation="subtract",
    )
    radius = (2.0 if big else 2.9) * s
    solid.cone(
        foramen - [0, 0, 12 * s],
        foramen + [0, 0, 12 * s],
        radius,
        blend=0.5 * s,
        operation="subtract",
    )


def foramen_transversarium(plan: Plan) -> np.ndarray:
    """Middle of the left foramen transversarium."""
    x = plan.canal[0] + 4.6 * plan.s
    return np.array([x, plan.rear - 3.2 * plan.s, -1.0 * plan.s])


def add_spine(solid: Solid, plan: Plan) -> None:
    """Spinous process: a flattened blade with a thickened tip, forked from C2 to C6."""
    shape, s = plan.shape, plan.s
    root, middle, tip = plan.spine_axis
    heights = plan.spine_heights
    thick = np.array(shape.spine_thick) * s
    lumbar = plan.level in LUMBAR or plan.level in ("T11", "T12")
    power = 3.0 if lumbar else 2.2
    forked = plan.level in ("C2", "C3", "C4", "C5", "C6")
    if forked:
        end = middle + 0.55 * (tip - middle)
        solid.blade(root, middle, Z, heights[:2], thick[:2], blend=2.4 * s, power=power)
        solid.blade(middle, end, Z, heights[1:], thick[1:] * 0.9, blend=0.8 * s, power=power)
        spread = (4.6 if plan.level in ("C2",) else 3.8 if plan.level != "C6" else 3.0) * s
        fork = np.array([spread, tip[1] + 0.8 * s, tip[2] - 0.4 * s])
        solid.blade(
            middle + 0.35 * (tip - middle) + [0.8 * s, 0, 0],
            fork,
            Z,
            (heights[1] * 0.8, heights[2]),
            (1.7 * s, thick[2] * 0.8),
            blend=1.4 * s,
        )
        return
    root_wide = 1.0 if lumbar else 1.3
    solid.blade(
        root,
        middle,
        Z,
        (heights[0] * (1.0 if lumbar else 1.15), heights[1]),
        (thick[0] * root_wide, thick[1]),
        blend=4.0 * s,
        power=power,
    )
    solid.blade(middle, tip, Z, heights[1:], (thick[1], 0.7 * thick[2]), blend=1.0 * s, power=power)
    # Apophysis of the tip: a knob in the chest, a ridge along the edge in the loin.
    direction = (tip - middle) / np.linalg.norm(tip - middle)
    side = np.array([0.0, direction[2], -direction[1]])
    axes = np.stack([X, side, direction])
    solid.ellipsoid(
        tip, (thick[2], heights[2] * (0.96 if lumbar else 1.0), 3.2 * s), axes, blend=2.2 * s
    )


def _trunk_arch(solid: Solid, plan: Plan) -> None:
    shape, s, v = plan.shape, plan.s, plan.frame
    above, below = plan.above, plan.below
    cd = v.canal_depth
    half_width, half_height = np.array(shape.pedicle) * s
    centre = plan.pedicle_centre
    start = np.array(
        [min(centre[0], 0.5 * v.width - 0.5 * half_width), plan.rear - 3.0 * s, centre[2]]
    )
    arch = np.array([plan.canal[0] + half_width, plan.rear + 0.62 * cd, centre[2] - 1.0 * s])
    solid.blade(
        start, arch, Z, (half_height, half_height * 0.9), half_width, blend=2.6 * s, power=2.4
    )
    # Pars: the corner between pedicle, lamina and processes.
    solid.blade(
        arch,
        [plan.canal[0] + 0.5 * s, plan.rear + 0.80 * cd, -0.45 * plan.half_height],
        Y,
        3.4 * s,
        max(half_width, 3.2 * s),
        blend=2.0 * s,
    )
    _superior_process(solid, plan, arch)
    add_lamina(solid, plan)
    if below.kind != "lumbar":
        _flat_inferior_process(solid, plan)
    cut_canal(solid, plan)
    if above.kind == "lumbar":
        for start_, end_, side, widths, thick in convex_process(above, s):
            solid.blade(
                start_,
                end_,
                side,
                np.add(widths, GAP_MM),
                np.add(thick, GAP_MM),
                blend=0.4,
                operation="subtract",
                power=2.6,
            )
    else:
        cut_joint(solid, above, +1, s)
    if below.kind == "lumbar":
        # Room for the lower bone's process, fillets included, before the convex one is added.
        for start_, end_, side, widths, thick in concave_process(below, s):
            solid.blade(
                start_,
                end_,
                side,
                np.add(widths, 1.2 * GAP_MM),
                np.add(thick, 1.2 * GAP_MM),
                blend=0.6,
                operation="subtract",
                power=2.2,
            )
        for start_, end_, side, widths, thick in convex_process(below, s):
            solid.blade(start_, end_, side, widths, thick, blend=2.2 * s, power=2.6)
        root = below.centre + 2.5 * s * below.normal + 9.0 * s * below.along
        solid.blade(
            below.centre + 3.2 * s * below.normal + 3.0 * s * below.along,
            root + [-1.0 * s, 0.0, 3.0 * s],
            below.across,
            (5.2 * s, 5.0 * s),
            (3.4 * s, 3.4 * s),
            blend=2.4 * s,
        )
    else:
        cut_joint(solid, below, -1, s)
    _transverse(solid, plan, arch)
    if below.kind != "lumbar":
        # Once more: the root of the transverse process reaches down over the joint.
        cut_joint(solid, below, -1, s)
    add_spine(solid, plan)
    if plan.level not in LUMBAR:
        # The root of a steep spine would reach forward into the canal.
        cut_canal(solid, plan)
        _costal_facets(solid, plan)


def convex_process(joint: FacetJoint, s: float):
    """The blade that makes the convex inferior articular process of a lumbar joint."""
    thick = 4.8 * s
    middle = joint.centre + (thick + 0.5 * GAP_MM) * joint.normal
    top, bottom = middle + 5.0 * s * joint.along, middle - 3.2 * s * joint.along
    return [(top, bottom, joint.across, (6.8 * s, 6.2 * s), (thick, thick * 0.92))]


def concave_process(joint: FacetJoint, s: float):
    """The blade out of which the hollow superior articular process of a lumbar joint is cut."""
    thick = 4.6 * s
    middle = joint.centre - (thick - 1.6 * s) * joint.normal + 0.6 * s * joint.across
    top, bottom = middle + 3.0 * s * joint.along, middle - 9.0 * s * joint.along
    return [(bottom, top, joint.across, (8.0 * s, 6.8 * s), (thick, 0.85 * thick))]


def _superior_process(solid: Solid, plan: Plan, arch: np.ndarray) -> None:
    joint, s = plan.above, plan.s
    if joint.kind == "lumbar":
        for start, end, side, widths, thick in concave_process(joint, s):
            solid.blade(start, end, side, widths, thick, blend=2.6 * s, power=2.2)
        solid.ellipsoid(mamillary_process(plan), (3.0 * s, 3.2 * s, 4.4 * s), blend=2.4 * s)
        return
    thick = (3.2 if joint.kind == "cervical" else 2.6) * s
    middle = joint.centre - (thick + 0.5 * GAP_MM) * joint.normal + 0.9 * s * joint.across
    top = middle + (joint.half[1] - 2.4 * s) * joint.along
    bottom = middle - 9.0 * s * joint.along
    solid.blade(
        bottom,
        top + 0.5 * s * joint.normal,
        joint.across,
        (joint.half[0] - 0.2 * s, joint.half[0] - 0.8 * s),
        (thick * 1.4, thick),
        blend=3.0 * s,
        power=2.3,
    )


def mamillary_process(plan: Plan) -> np.ndarray:
    """Knob on the rear edge of a lumbar superior articular process."""
    joint, s = plan.above, plan.s
    return joint.centre + 6.2 * s * joint.across - 3.4 * s * joint.normal - 1.5 * s * joint.along


def accessory_process(plan: Plan) -> np.ndarray:
    """Tubercle at the back of the root of a lumbar transverse process."""
    s = plan.s
    half_width, half_height = np.array(plan.shape.pedicle) * s
    centre = plan.pedicle_centre
    return np.array(
        [
            plan.canal[0] + half_width + 4.5 * s,
            plan.rear + 0.62 * plan.frame.canal_depth + 1.2 * s,
            centre[2] - 0.75 * half_height,
        ]
    )


def _flat_inferior_process(solid: Solid, plan: Plan) -> None:
    joint, s = plan.below, plan.s
    thick = 2.4 * s
    middle = joint.centre + (thick + 0.4 * GAP_MM) * joint.normal
    top = middle + 8.0 * s * joint.along
    bottom = middle - (joint.half[1] - 1.6 * s) * joint.along
    solid.blade(
        top - [1.0 * s, 0, 0],
        bottom,
        joint.across,
        (joint.half[0] + 1.0 * s, joint.half[0] - 0.2 * s),
        thick,
        blend=3.2 * s,
        power=2.3,
    )


def _transverse(solid: Solid, plan: Plan, arch: np.ndarray) -> None:
    shape, s = plan.shape, plan.s
    tip = np.array(shape.transverse_tip) * s
    (root_height, root_thick), (end_height, end_thick) = (
        np.array(shape.transverse_root) * s,
        np.array(shape.transverse_end) * s,
    )
    if plan.level in LUMBAR:
        number = int(plan.level[1])
        root = arch + [1.5 * s, -4.0 * s, -1.0 * s]
        end = tip - [0.8 * end_thick, 0, 0]
        middle = 0.5 * (root + end) + [0.0, -0.8 * s, -0.8 * s]
        if number == 5:
            root = arch + [0.0, -7.0 * s, -1.0 * s]
            middle = 0.45 * root + 0.55 * end + [0, 0.5 * s, 1.0 * s]
        heights = (
            root_height,
            0.92 * root_height if number < 5 else 0.75 * root_height,
            end_height,
        )
        thick = (root_thick, 0.75 * root_thick, end_thick)
        solid.blade(root, middle, Z, heights[:2], thick[:2], blend=3.0 * s)
        solid.blade(middle, end, Z, heights[1:], thick[1:], blend=0.7 * s)
        accessory = accessory_process(plan)
        solid.blade(
            accessory + [-2.0 * s, -2.5 * s, 3.0 * s],
            accessory,
            X,
            (2.4 * s, 1.2 * s),
            (1.8 * s, 1.1 * s),
            blend=2.2 * s,
        )
        return
    root = arch + [0.0, 1.5 * s, -1.5 * s]
    end = tip - 0.75 * end_thick * (tip - root) / np.linalg.norm(tip - root)
    direction = (end - root) / np.linalg.norm(end - root)
    neck = root + 0.55 * (end - root) + [0, 0, -0.8 * s]
    solid.blade(
        root,
        neck,
        Z,
        (1.3 * root_height, 1.12 * root_height),
        (1.05 * root_thick, 0.85 * root_thick),
        blend=3.4 * s,
    )
    solid.blade(
        neck,
        end,
        Z,
        (1.12 * root_height, 0.97 * end_height),
        (0.85 * root_thick, 0.8 * end_thick),
        blend=0.8 * s,
    )
    if plan.level != "T12":
        solid.ellipsoid(
            end - 1.5 * s * direction,
            (0.95 * end_thick, 0.98 * end_height, 0.80 * end_thick),
            np.stack([direction, Z, np.cross(direction, Z)]),
            blend=2.0 * s,
        )


def transverse_facet(plan: Plan) -> np.ndarray:
    """Centre of the costal facet on the front of the left transverse process (T1 to T10)."""
    s = plan.s
    tip = np.array(plan.shape.transverse_tip) * s
    thick = plan.shape.transverse_end[1] * s
    number = int(plan.level[1:])
    up = 0.0 if number <= 5 else 2.0 * s
    return tip + np.array([-0.55 * thick, -1.05 * thick, up])


def costal_facets(plan: Plan) -> dict[str, np.ndarray]:
    """Centres of the left costal facets on the body, by name."""
    s, v, h = plan.s, plan.frame, plan.half_height
    number = int(plan.level[1:])
    upper = np.array([0.46 * v.width, 0.36 * v.depth, h - 2.2 * s])
    lower = np.array([0.46 * plan.lower_width, 0.36 * v.depth, -h + 2.0 * s])
    if number >= 11:
        pedicle = plan.pedicle_centre
        upper = np.array([pedicle[0] + plan.shape.pedicle[0] * s, plan.rear - 1.0 * s, pedicle[2]])
    elif number in (1, 10):
        upper = upper + [0.3 * s, 1.5 * s, -1.5 * s]
    facets = {"superior_costal_facet": upper}
    if number <= 9:
        facets["inferior_costal_facet"] = lower
    return facets


def _costal_facets(solid: Solid, plan: Plan) -> None:
    """Shallow cups where the ribs lie on body and transverse process."""
    s, number = plan.s, int(plan.level[1:])
    cups = []
    for name, centre in costal_facets(plan).items():
        outward = np.array([0.8, 0.6, 0.35 if name.startswith("superior") else -0.35])
        # Smaller at the first rib, where a full ball would reach the articular process behind it.
        small = number == 1 and name.startswith("superior")
        cups.append((centre, outward, (6.2, 6.2) if small else (7.0, 7.0)))
    if number <= 10:
        forward = np.array([0.35, -0.9, 0.0 if number <= 5 else 0.5])
        cups.append((transverse_facet(plan), forward, (7.0, 7.0)))
    for centre, outward, (across, deep) in cups:
        outward = outward / np.linalg.norm(outward)
        side = np.cross(outward, Z)
        side /= np.linalg.norm(side)
        # A ball that only grazes the bone; at the body it also hollows the pedicle's root.
        solid.ellipsoid(
            solid.project(centre) + (deep - 0.7) * s * outward,
            np.array([across, across, deep]) * s,
            np.stack([side, np.cross(outward, side), outward]),
            blend=0.5 * s,
            operation="subtract",
        )


def _table_width(frame: SkeletonFrame, level: str) -> float:
    breadth = frame.scale * (0.95 if frame.body.sex == "female" else 1.0)
    return frame[level].width / breadth
