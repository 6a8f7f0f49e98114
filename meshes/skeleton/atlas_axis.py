"""Atlas and axis, built together so that dens, arch and facets meet with a gap."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import PchipInterpolator

from meshes.shapes.solid import Solid
from meshes.skeleton.facet_joint import FacetJoint
from meshes.skeleton.frame import SkeletonFrame, VertebraFrame
from meshes.skeleton.vertebra import (
    Plan,
    X,
    Y,
    Z,
    add_body,
    add_lamina,
    add_spine,
    cut_canal,
    cut_joint,
    in_axes,
)

DENS_RADIUS_MM = 5.2
"""Half the breadth of the dens (common practice: about 10 mm across)."""
DENS_GAP_MM = 1.2
"""Between dens and anterior arch, both cartilages together (common practice)."""
_JOINT_GAP_MM = 1.4
_SPAN_MM = 38.5
"""Half the breadth of the atlas over its transverse processes (men, common practice)."""


@dataclass(frozen=True, slots=True)
class AtlasPlan:
    """Measures of the atlas in its own axes, mm.

    Attributes
    ----------
    frame : VertebraFrame
    s : float
    dens : float
        Back of the axis of the dens at mid-height of the ring.
    front, back : float
        Inner faces of the anterior and posterior arch at the midline.
    below : FacetJoint
        Lateral atlanto-axial joint.
    """

    frame: VertebraFrame
    s: float
    dens: float
    front: float
    back: float
    below: FacetJoint

    @property
    def foramen(self) -> np.ndarray:
        """Middle of the left foramen transversarium."""
        return np.array([27.5 * self.s, self.dens + 4.0 * self.s, -1.0 * self.s])

    @property
    def transverse_tip(self) -> np.ndarray:
        """Tip of the left transverse process."""
        return np.array([_SPAN_MM * self.s, self.dens + 6.5 * self.s, -2.0 * self.s])

    @property
    def superior_facet(self) -> np.ndarray:
        """Floor of the left superior articular facet."""
        return np.array([18.5 * self.s, self.dens + 1.5 * self.s, 5.6 * self.s])


def atlanto_axial_joint(frame: SkeletonFrame) -> FacetJoint:
    """Left lateral atlanto-axial joint in the model's axes."""
    v, s = frame["C2"], frame.scale
    centre = v.to_model([15.8 * s, -0.5 * s, 0.5 * v.height + 1.2 * s])
    slope = np.deg2rad(23.0)
    normal = v.axes @ np.array([np.sin(slope), 0.0, np.cos(slope)])
    across = v.axes @ np.array([np.cos(slope), 0.0, -np.sin(slope)])
    return FacetJoint(
        "C1", "atlanto_axial", centre, normal, v.axes[:, 1], across, (7.6 * s, 8.2 * s)
    )


def atlas_plan(frame: SkeletonFrame) -> AtlasPlan:
    """Work out where the ring of the atlas lies round the dens."""
    v, s, axis = frame["C1"], frame.scale, frame["C2"]
    dens = v.to_local(axis.to_model([0.0, -0.8 * s, 0.5 * axis.height + 9.0 * s]))[1]
    front = dens - DENS_RADIUS_MM * s - DENS_GAP_MM
    return AtlasPlan(
        v, s, dens, front, front + v.canal_depth, in_axes(atlanto_axial_joint(frame), v)
    )


def atlas_solid(plan: AtlasPlan) -> Solid:
    """Ring with lateral masses and wide transverse processes; no body, no spine."""
    s, d = plan.s, plan.dens
    solid = Solid()
    # Lateral mass: a wedge, higher on its outer side.
    solid.prism(
        (17.6 * s, d + 2.0 * s, -0.7 * s),
        (7.6 * s, 10.5 * s, 8.7 * s),
        exponent=2.3,
        rounding=3.2 * s,
        blend=0.0,
    )
    tip = plan.transverse_tip
    solid.blade(
        (23 * s, d + 4.0 * s, -0.5 * s),
        tip - [4.0 * s, 0.8 * s, 0],
        Y,
        (7.6 * s, 5.4 * s),
        (4.2 * s, 3.4 * s),
        blend=3.0 * s,
    )
    solid.ellipsoid(tip - [3.8 * s, 0, 0], (3.9 * s, 5.4 * s, 4.2 * s), blend=3.0 * s)
    # The superior facet: a hollow turned in and forward, longer than wide.
    turn = np.deg2rad(22.0)
    long = np.array([np.sin(turn), np.cos(turn), 0.0])
    tilt = np.deg2rad(24.0)
    wide = np.array([np.cos(turn) * np.cos(tilt), -np.sin(turn) * np.cos(tilt), np.sin(tilt)])
    normal = np.cross(wide, long)
    normal *= np.sign(normal[2])
    solid.ellipsoid(
        plan.superior_facet + 8.0 * s * normal,
        (8.6 * s, 13.5 * s, 8.0 * s),
        np.stack([wide, long, normal]),
        blend=0.8 * s,
        operation="subtract",
    )
    cut_joint(solid, plan.below, -1, s, depth=6.0, gap=_JOINT_GAP_MM)
    # Room of the dens and the canal.
    solid.cone(
        (0, d, -20 * s),
        (0, d, 20 * s),
        DENS_RADIUS_MM * s + 4.0 * s,
        blend=0.6 * s,
        operation="subtract",
    )
    # Anterior arch with its tubercle.
    y = plan.front - 2.6 * s
    solid.blade((0, y, 0), (7 * s, y + 0.8 * s, 0), Z, 5.6 * s, 2.6 * s, blend=0.6 * s)
    solid.blade(
        (7 * s, y + 0.8 * s, 0),
        (15 * s, y + 5.0 * s, -0.5 * s),
        Z,
        (5.6 * s, 5.2 * s),
        (2.6 * s, 3.2 * s),
        blend=1.6 * s,
    )
    solid.ellipsoid((0, y - 2.4 * s, -1.0 * s), (2.6 * s, 2.2 * s, 3.6 * s), blend=2.2 * s)
    # Posterior arch, thin and flat where the vertebral artery crosses it.
    y = plan.back + 2.8 * s
    knots = np.array(
        [
            [20.0, d / s + 9.0, -1.2],
            [18.6, d / s + 14.5, -1.4],
            [14.6, d / s + 20.0, -0.9],
            [7.8, y / s - 1.8, -0.3],
            [0.0, y / s, 0.0],
        ]
    )
    course = PchipInterpolator([0.0, 0.22, 0.46, 0.76, 1.0], knots)(np.linspace(0, 1, 9))
    thick = PchipInterpolator(
        [0.0, 0.3, 0.6, 1.0], [[3.8, 3.8], [3.0, 3.2], [4.4, 2.7], [4.6, 2.9]]
    )(np.linspace(0, 1, 9))
    solid.sweep(course * s, Z, thick[:, 0] * s, thick[:, 1] * s, blend=2.2 * s)
    solid.ellipsoid((0, y + 2.2 * s, 0.3 * s), (3.0 * s, 2.8 * s, 3.6 * s), blend=2.4 * s)
    solid.cone(
        plan.foramen - [0, 0, 12 * s],
        plan.foramen + [0, 0, 12 * s],
        3.3 * s,
        blend=0.8 * s,
        operation="subtract",
    )
    # Groove of the vertebral artery, from the foramen round the back of the lateral mass.
    solid.cone(
        (26 * s, d + 9.0 * s, 4.4 * s),
        (12 * s, d + 18.5 * s, 4.8 * s),
        3.0 * s,
        blend=1.2 * s,
        operation="subtract",
    )
    return solid


def axis_solid(plan: Plan, above: FacetJoint) -> Solid:
    """C2: body with the dens, sloping shoulders, a big forked spine."""
    s, h = plan.s, plan.half_height
    solid = Solid()
    add_body(solid, plan)
    below = plan.below
    # Shoulders that carry the atlas, and the pars back to the inferior process.
    middle = above.centre - 4.4 * s * above.normal
    solid.ellipsoid(
        middle,
        (8.8 * s, 9.4 * s, 5.6 * s),
        np.stack([above.across, above.along, above.normal]),
        blend=3.0 * s,
    )
    solid.blade(
        (6 * s, -1.0 * s, 0.45 * h),
        middle - 2.5 * s * above.normal,
        Y,
        6.0 * s,
        5.0 * s,
        blend=3.0 * s,
    )
    solid.blade(
        middle + [1.0 * s, 3.0 * s, -3.0 * s],
        below.centre + [0, 0, 3.5 * s],
        X,
        (6.0 * s, 5.6 * s),
        (4.4 * s, 4.2 * s),
        blend=2.4 * s,
    )
    solid.blade(
        below.centre + [0, 0.5 * s, 5 * s],
        below.centre - [0, -0.5 * s, 0.5 * s],
        X,
        5.7 * s,
        4.5 * s,
        blend=1.6 * s,
        power=2.6,
    )
    add_lamina(solid, plan)
    cut_canal(solid, plan)
    cut_joint(solid, above, +1, s, depth=6.0, gap=_JOINT_GAP_MM)
    cut_joint(solid, below, -1, s, depth=6.0)
    # Dens: a neck where the transverse ligament crosses, then the rounded tooth.
    radius = DENS_RADIUS_MM * s
    solid.cone((0, -0.8 * s, 0.3 * h), (0, -0.6 * s, h + 3.0 * s), 6.4 * s, 4.9 * s, blend=2.0 * s)
    solid.cone(
        (0, -0.6 * s, h + 3.0 * s), (0, -0.8 * s, h + 9.5 * s), 4.8 * s, radius, blend=0.8 * s
    )
    solid.cone(
        (0, -0.8 * s, h + 9.5 * s), (0, -0.2 * s, h + 13.5 * s), radius, 3.0 * s, blend=0.8 * s
    )
    _axis_transverse(solid, plan)
    add_spine(solid, plan)
    return solid


def _axis_transverse(solid: Solid, plan: Plan) -> None:
    s = plan.s
    tip = np.array(plan.shape.transverse_tip) * s
    foramen = axis_foramen(plan)
    solid.blade(
        (11 * s, foramen[1] - 1.0 * s, -0.5 * s),
        tip - [2.2 * s, 0.6 * s, 0],
        Y,
        (5.4 * s, 3.2 * s),
        (3.4 * s, 2.8 * s),
        blend=2.0 * s,
    )
    solid.blade(
        (19 * s, plan.rear + 2.0 * s, -1.0 * s),
        tip - [2.6 * s, 0, 0],
        Y,
        3.0 * s,
        2.8 * s,
        blend=2.0 * s,
    )
    along = np.array([0.42, -0.10, 0.90])
    solid.cone(
        foramen - 8 * s * along,
        foramen + 9 * s * along,
        2.8 * s,
        blend=0.6 * s,
        operation="subtract",
    )


def axis_foramen(plan: Plan) -> np.ndarray:
    """Middle of the left foramen transversarium of C2, which runs up and out."""
    return np.array([18.5 * plan.s, plan.rear - 4.6 * plan.s, -2.5 * plan.s])
