"""Nerves and vessels of the shoulder: round the scapula, to the rhomboids, to trapezius."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.drape.distance import MeshIndex
from meshes.soft.small import resample
from meshes.soft.tubes import Branch, drop, lay_tube, smooth_course
from meshes.soft.workbench import Workbench

_FORWARD = np.array([0.0, -1.0, 0.0])

HILUM_FROM_ANGLE_MM = 56.0
"""Where the thoracodorsal bundle enters latissimus."""
_TO_HILUM = np.array([0.733, -0.677, 0.065])
DORSAL_SCAPULAR_MEDIAL_MM = (5.0, 8.5, 12.5)
"""Artery, nerve and vein medial to the medial border, mm. They lie deep to it as well: the
nerve's whole distance from the border is 16.1 +- 5.3 mm (Pinto MC et al., 22 shoulders)."""
ACCESSORY_ABOVE_CLAVICLE_MM = 52.0
"""Where the accessory nerve lies under the front border of trapezius, as the collar of the neck
holds it (published 49.8 +- 5.9 mm, Orthopedics 2002;25:71-4)."""
ACCESSORY_BELOW_MASTOID_MM = 52.0
"""Where it leaves sternocleidomastoid (same: 50.7 +- 12.9 mm)."""
TRIANGLE_BREADTH_MM = 23.0
"""From the hind border of sternocleidomastoid back to the front border of trapezius there."""


def _border(bench: Workbench, count: int = 12) -> np.ndarray:
    """The medial border of the scapula from the superior to the inferior angle."""
    return resample(bench.landmark("scapula.left.medial_border"), count)


def lay_dorsal_scapular(bench: Workbench) -> None:
    """Lay the dorsal scapular artery, nerve and vein on the wall under the rhomboids."""
    border = _border(bench)
    scale = bench.frame.scale
    c5 = bench.landmark("C5.left.foramen")
    angle = bench.landmark("scapula.left.superior_angle")
    for name, entry, medial, radius in (
        ("dorsal_scapular_artery", "dorsal_scapular_artery", 0, (1.2, 0.8)),
        ("dorsal_scapular_nerve", "dorsal_scapular_nerve", 1, (1.0, 0.7)),
        ("dorsal_scapular_vein", "dorsal_scapular_vein", 2, (1.2, 0.9)),
    ):
        off = DORSAL_SCAPULAR_MEDIAL_MM[medial] * scale
        down = border[1:10] - [off, 0.0, 0.0]
        down[:, 1] = np.minimum(down[:, 1], border[1:10, 1])
        # Where it comes round the neck it lies on the scalenes, then under levator.
        top = angle + [-off + 2.0, 5.0, 11.0]
        if name.endswith("nerve"):
            root = bench.parts.get("spinal_nerve_C5.left")
            source = root.fibres[0][-1] if root is not None else c5 + [6.0, -3.0, -2.0]
            way = [source, source + [9.0, 5.0, -12.0], 0.5 * (source + top) + [4.0, 8.0, -4.0]]
        else:
            first = bench.landmark("rib_1.left.shaft")
            over = first[int(np.argmax(first[:, 0]))] + [2.0 * medial - 3.0, 4.0, 8.0]
            way = [
                over,
                0.6 * over + 0.4 * top + [0, 0, 5.0],
                0.25 * over + 0.75 * top + [0, 0, 3.0],
            ]
        course = np.concatenate([np.array(way), [top], down])
        lay_tube(bench, f"{name}.left", entry, course, radius,
                 joins=("spinal_nerve_C5.left",) if name.endswith("nerve") else (),
                 onto=_below_levator(course, len(way)), clings_to="rhomboid_major.left",
                 triangles=(800, 180))  # fmt: skip


def _below_levator(course: np.ndarray, free: int) -> np.ndarray:
    """Ways (n, 3) on to the chest wall: forward, from the side where the course is free."""
    ways = np.broadcast_to(_FORWARD, course.shape).copy()
    ways[:free] = [-0.55, -0.8, 0.0]
    return ways


@dataclass(frozen=True, eq=False)
class _Blade:
    """Directions of the scapula's blade and its surface, to lay tubes on its back.

    Attributes
    ----------
    glenoid : (3,) float
        Centre of the socket, mm.
    scale : float
        Size of the body against the median man.
    along, up, back : (3,) float
        Unit vectors: towards the glenoid, up in the plane of the blade, away from the ribs.
    bone : MeshIndex
    """

    glenoid: np.ndarray
    scale: float
    along: np.ndarray
    up: np.ndarray
    back: np.ndarray
    bone: MeshIndex

    @classmethod
    def of(cls, bench: Workbench) -> _Blade:
        """Return the blade of the left scapula."""
        root = bench.landmark("scapula.left.root_of_spine")
        glenoid = bench.landmark("scapula.left.glenoid_centre")
        angle = bench.landmark("scapula.left.inferior_angle")
        along = (glenoid - root) / np.linalg.norm(glenoid - root)
        back = np.cross(along, angle - root)
        back /= np.linalg.norm(back)
        if back[1] < 0:
            back = -back
        up = np.cross(back, along)
        up = up if up[2] > 0 else -up
        return cls(glenoid, bench.frame.scale, along, up, back, bench.index("scapula.left"))

    def at(self, along: float, up: float, back: float) -> np.ndarray:
        """Point (3,) by its way from the socket in the directions of the blade, mm."""
        way = along * self.along + up * self.up + back * self.back
        return self.glenoid + self.scale * way

    def behind(self, point: np.ndarray, room: float) -> np.ndarray:
        """First place behind a point, at most 30 mm, that is ``room`` mm clear of the bone."""
        way = point + np.linspace(-8.0, 30.0, 77)[:, None] * self.back
        free = self.bone.signed_distance(way)[0] >= room
        # Behind the blade: past the last place inside it that the line comes through first.
        inside = np.flatnonzero(~free)
        start = int(inside[0]) if len(inside) else 0
        after = np.flatnonzero(free[start:])
        return way[start + int(after[0])] if len(after) else way[-1]


def lay_round_scapula(bench: Workbench) -> None:
    """Lay suprascapular nerve and artery, subscapular and circumflex arteries, axillary nerve."""
    mark = bench.landmark
    notch = mark("scapula.left.superior_border")[-3]
    blade = _Blade.of(bench)
    # Over the fossa, round the neck lateral to the base of the spine, to the other fossa.
    fossa_above = blade.at(-25.0, 25.0, 8.0)
    c5 = mark("C5.left.foramen")
    clavicle = resample(mark("clavicle.left.posterior_border"), 10)
    for name, over, side, radius, source in (
        ("suprascapular_nerve", 2.4, 0.0, (1.0, 0.7), c5 + [16.0, -6.0, -32.0]),
        ("suprascapular_artery", 5.5, 3.0, (1.1, 0.8), clavicle[2] + [0.0, 8.0, 4.0]),
    ):
        behind = clavicle[7] + [-6.0, 9.0, 3.0 + 0.5 * over]
        course = np.array(
            [
                source,
                0.5 * (source + behind) + [0.0, 4.0, 2.0],
                behind,
                notch + [0.0, -2.0, over + 1.5],
                notch + [0.0, 4.0, over],
                fossa_above + side * blade.along,
                blade.at(-17.0 + 0.5 * side, 21.0, 9.5),
                blade.at(-11.0 + 0.5 * side, 16.0, 12.5 + 0.7 * side),
                blade.at(-12.0 + side, 8.0, 12.0 + 0.5 * side),
                blade.behind(blade.at(-20.0 + side, -4.0, 0.0), 2.6),
                blade.behind(blade.at(-38.0, -18.0 - 2 * side, 0.0), 2.6),
            ]
        )
        lay_tube(bench, f"{name}.left", name, course, radius, clings_to="supraspinatus.left",
                 triangles=(620, 150))  # fmt: skip
    infra = mark("scapula.left.infraglenoid_tubercle")
    lateral = resample(mark("scapula.left.lateral_border"), 20)
    armpit = infra + [4.0, -26.0, 4.0]
    stem = np.array([armpit, infra + [-12.0, -24.0, -18.0], lateral[10] + [8.0, -14.0, -2.0]])
    lay_tube(bench, "subscapular_artery.left", "subscapular_artery", stem, (1.7, 1.4),
             triangles=(300, 90))  # fmt: skip
    # Through the triangular space, round the lateral border, into the infraspinous fossa.
    turn = lateral[13]
    start = bench.parts["subscapular_artery.left"].fibres[0]
    start = start[len(start) // 2]
    fossa = mark("scapula.left.infraspinous_fossa")
    goal = fossa[np.argmin(np.linalg.norm(fossa - (turn + [-22.0, 14.0, -6.0]), axis=1))]
    course = np.array([start, turn + [7.0, -6.0, -2.0], turn + [6.0, 5.0, -2.0],
                       turn + [-4.0, 10.0, -2.0], goal + [0.0, 3.0, 0.0]])  # fmt: skip
    lay_tube(bench, "circumflex_scapular_artery.left", "circumflex_scapular_artery", course,
             (1.1, 0.7), joins=("subscapular_artery.left",), clings_to="infraspinatus.left",
             triangles=(360, 90))  # fmt: skip
    head = mark("humerus.left.head_centre")
    neck_of_humerus = mark("humerus.left.anatomical_neck_inferior")
    shaft = np.array([head[0] + 24.0, head[1] + 2.0, head[2] - 34.0])
    course = np.array(
        [
            armpit + [-4.0, -4.0, 8.0],
            neck_of_humerus + [-10.0, -8.0, -6.0],
            neck_of_humerus + [0.0, 8.0, -12.0],
            head + [14.0, 24.0, -33.0],
            shaft + [12.0, 14.0, 0.0],
            shaft + [16.0, -4.0, 1.0],
        ]
    )
    lay_tube(bench, "axillary_nerve.left", "axillary_nerve", course, (1.3, 0.9),
             clings_to="deltoid.left", triangles=(420, 100))  # fmt: skip


def lay_to_trapezius(bench: Workbench) -> None:
    """Lay the accessory nerve, the C3 and C4 branches and the transverse cervical artery."""
    mark = bench.landmark
    scale = bench.frame.scale
    angle = mark("scapula.left.superior_angle")
    clavicle = resample(mark("clavicle.left.posterior_border"), 20)
    deep, leave = _through_sternocleidomastoid(bench)
    jugular = mark("C1.left.transverse_process") + np.array([1.0, -8.0, -4.0]) * scale
    face = mark("clavicle.left.superior_face")
    behind = leave + np.array([-4.0, 24.0, 0.0]) * scale
    beneath = face[np.argmin(np.linalg.norm((face - behind)[:, :2], axis=1))]
    height = beneath[2] + ACCESSORY_ABOVE_CLAVICLE_MM * scale
    # Back and down across the triangle, on levator, to under the front border of trapezius.
    entry = np.array([leave[0] - 1.0, leave[1] + TRIANGLE_BREADTH_MM * scale, height])
    under = entry + np.array([-2.0, 14.0, -16.0]) * scale
    over = angle + np.array([-6.0, 4.0, 12.0]) * scale
    root = mark("scapula.left.root_of_spine")
    low = mark("T6.spinous_process")
    path = np.array(
        [
            jugular,
            deep,
            leave,
            0.5 * (leave + entry) + [0.0, 3.0, 2.0],
            entry,
            under,
            0.5 * (under + over) + [0.0, 4.0, 0.0],
            over,
            root + [-16.0, 2.0, 8.0],
            root + [-20.0, 6.0, -20.0],
            [0.62 * root[0], root[1] + 12.0, low[2] + 14.0],
        ]
    )
    # From the posterior triangle on it lies on levator and the muscles below.
    ways = np.broadcast_to(_FORWARD, path[3:].shape).copy()
    ways[:4] = [-1.0, -0.1, 0.0]
    lower = smooth_course(path[3:], 4.0)
    laid = drop(bench, lower, resample(ways, len(lower)), 1.6)
    # In the triangle it runs in the fat, between levator and the fascia that roofs it.
    in_fat = np.clip(0.6 - np.linspace(0.0, 1.4, len(lower)), 0.0, 1.0)[:, None]
    lower = in_fat * lower + (1 - in_fat) * laid
    lay_tube(bench, "accessory_nerve.left", "accessory_nerve",
             np.concatenate([path[:3], lower]), (1.3, 1.25, 1.0, 0.8),
             clings_to="trapezius_transverse.left", triangles=(1000, 220))  # fmt: skip
    nerve = bench.parts["accessory_nerve.left"].fibres[0]
    meet = nerve[int(0.62 * len(nerve))]
    third, fourth = (bench.parts[f"spinal_nerve_{n}.left"].fibres[0][-1] for n in ("C3", "C4"))
    out = 0.45 * fourth + 0.55 * meet + [6.0, 4.0, 2.0]
    stem = np.array([fourth, fourth + [12.0, 6.0, -6.0], out, meet + [-0.5, -0.5, 1.0]])
    upper = np.array([out, 0.5 * (third + out) + [7.0, 3.0, 4.0], third])
    lay_tube(bench, "cervical_branches_to_trapezius.left", "cervical_branches_to_trapezius",
             stem, 0.75, branches=[Branch(upper, 0.7)],
             joins=("accessory_nerve.left", "spinal_nerve_C3.left", "spinal_nerve_C4.left"),
             clings_to="trapezius_transverse.left", triangles=(520, 130))  # fmt: skip
    base = clavicle[4] + [0.0, 12.0, 12.0]
    along = nerve[int(0.56 * len(nerve)) :: max(len(nerve) // 12, 1)] + [5.0, 0.5, -3.0]
    path = np.concatenate([[base, 0.5 * (base + along[0]) + [2.0, 4.0, 4.0]], along[:-1]])
    ways = np.broadcast_to(_FORWARD, path.shape).copy()
    ways[:3] = [-0.6, -0.6, -0.4]
    lay_tube(bench, "transverse_cervical_artery.left", "transverse_cervical_artery", path,
             (1.2, 0.8), onto=ways, clings_to="trapezius_transverse.left",
             triangles=(700, 160))  # fmt: skip


def _through_sternocleidomastoid(bench: Workbench) -> tuple[np.ndarray, np.ndarray]:
    """Where the accessory nerve lies under the muscle, and where it leaves its hind border.

    The second place lies a given way from the tip of the mastoid.
    """
    scale = bench.frame.scale
    mastoid = bench.landmark("temporal.left.mastoid_tip")
    v = bench.parts["sternocleidomastoid.left"].mesh.vertices

    def section(z: float) -> np.ndarray:
        return v[np.abs(v[:, 2] - z) < 4.0]

    edges = []
    for below in np.arange(30.0, 75.0, 1.0) * scale:
        near = section(mastoid[2] - below)
        if len(near):
            edges.append(near[np.argmax(near[:, 1])])
    away = np.linalg.norm(np.array(edges) - mastoid, axis=1)
    leave = edges[int(np.argmin(np.abs(away - ACCESSORY_BELOW_MASTOID_MM * scale)))]
    near = section(leave[2] + 20.0 * scale)
    # Deep means towards the column.
    inner = near[near[:, 0] < np.quantile(near[:, 0], 0.25)].mean(axis=0)
    return inner + [-2.0, 0.0, 0.0], leave + [-1.0, 0.6, 0.0]


def lay_thoracodorsal(bench: Workbench) -> None:
    """Lay the thoracodorsal nerve and artery on the wall of the armpit, under latissimus.

    They enter its deep face 6 cm from the inferior angle (60.8 +- 6.2 mm, nine women: cadaver
    study of the pedicle, 2022).
    """
    mark = bench.landmark
    corner = mark("scapula.left.inferior_angle")
    infra = mark("scapula.left.infraglenoid_tubercle")
    part = bench.parts.get("subscapular_artery.left")
    stem = part.fibres[0][-1] if part is not None else infra + [0.0, -20.0, -20.0]
    # From the angle along the side of the chest, where latissimus will lie on it.
    goal = corner + HILUM_FROM_ANGLE_MM * bench.frame.scale * _TO_HILUM
    for name, shift, radius in (
        ("thoracodorsal_artery", 0.0, (1.3, 0.8)),
        ("thoracodorsal_nerve", 4.5, (1.0, 0.7)),
    ):
        start = stem if shift == 0.0 else infra + [-2.0, -28.0, 8.0]
        path = np.array(
            [
                start,
                0.65 * stem + 0.35 * goal + [2.0, -shift, 0.0],
                0.3 * stem + 0.7 * goal + [-4.0, -shift, 0.0],
                goal + [0.0, -shift, 0.0],
                goal + [1.0, -shift - 6.0, -34.0],
            ]
        )
        joins = ("subscapular_artery.left",) if shift == 0.0 else ()
        lay_tube(bench, f"{name}.left", name, path, radius, joins=joins,
                 clings_to="latissimus_dorsi.left", triangles=(420, 110))  # fmt: skip
