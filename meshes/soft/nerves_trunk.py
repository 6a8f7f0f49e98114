"""Segmental nerves and vessels of the trunk: rami, intercostals, sympathetic trunk, aorta."""

from __future__ import annotations

import numpy as np

from meshes.skeleton.frame import LEVELS
from meshes.soft.canal import foramen_of, nerve_range
from meshes.soft.fascicles import level_range
from meshes.soft.ligaments import below
from meshes.soft.small import resample
from meshes.soft.tubes import Branch, lay_tube, settle
from meshes.soft.workbench import Workbench

SHARE_OF_RIB = 0.62
"""How far forward along a rib its nerve and artery are drawn: the back is the subject."""


def unit(v: np.ndarray) -> np.ndarray:
    """The vector at length 1."""
    return v / max(float(np.linalg.norm(v)), 1e-9)


def round_body(bench: Workbench, level: str, angles_deg, off: float, rise: float = 0.0):
    """Points (n, 3) round the waist of a vertebral body; angles from the front to the left."""
    f = bench.frame[level]
    a = np.deg2rad(np.asarray(angles_deg, float))
    local = np.stack(
        [
            np.sin(a) * (0.44 * f.width + off),
            -np.cos(a) * (0.46 * f.depth + off),
            np.full_like(a, rise),
        ],
        axis=1,
    )
    return f.to_model(local)


def lay_great_vessels(bench: Workbench) -> None:
    """Lay the aorta and the azygos vein in front of the bodies, as context."""
    scale = bench.frame.scale
    path = []
    radius = np.array([11.0, 11.0, 10.5, 10.0, 9.5, 8.5]) * scale
    for level, x in (("T4", 17.0), ("T6", 14.0), ("T8", 11.0), ("T10", 7.0), ("T12", 4.0),
                     ("L2", 3.0), ("L4", 2.0)):  # fmt: skip
        f = bench.frame[level]
        size = np.interp(LEVELS.index(level), [10, 22], [11.0, 8.5]) * scale
        reach = 0.5 * f.depth + size + 4.5
        # Where it lies beside the body it needs less room in front of it.
        reach -= np.clip(x - 6.0, 0, 20) * 0.45
        path.append(f.to_model([x * scale, -reach, 0.0]))
    lay_tube(bench, "aorta", "aorta", np.array(path), radius, triangles=(900, 240), gap=3.4)
    path = []
    for level, x in (("T4", -9.0), ("T7", -9.0), ("T10", -10.0), ("L1", -11.0)):
        f = bench.frame[level]
        path.append(f.to_model([x * scale, -0.5 * f.depth - 6.0, 0.0]))
    lay_tube(bench, "azygos_vein", "azygos_vein", np.array(path)[::-1],
             np.array([2.6, 3.4, 3.8]) * scale, triangles=(500, 140), gap=3.2)  # fmt: skip


def start_of_ramus(bench: Workbench, nerve: str) -> np.ndarray:
    """Lateral end of the spinal nerve, (3,)."""
    part = bench.parts.get(f"spinal_nerve_{nerve}.left")
    if part is None:
        part = bench.parts[f"spinal_ganglion_{nerve}.left"]
    return part.fibres[0][-1]


def end_of_posterior_ramus(bench: Workbench, nerve: str) -> np.ndarray:
    """Where a posterior ramus divides, behind the joints or between the processes, (3,)."""
    if nerve == "C2":
        c1, c2 = bench.landmark("C1.left.lamina"), bench.landmark("C2.left.lamina")
        return 0.5 * (c1 + c2) + [9.0, 3.0, 0.0]
    if nerve[0] == "C":
        upper = foramen_of(nerve)
        a = bench.landmark(f"{upper}.left.articular_pillar")
        lower = below(upper)
        key = "articular_pillar" if lower[0] == "C" else "transverse_process"
        b = bench.landmark(f"{lower}.left.{key}")
        end = 0.5 * (a + b)
        return np.array([a[0] + 2.5, end[1] + 2.0, end[2]])
    if nerve == "T12":
        # The joint below is of the lumbar kind: the ramus passes lateral to it.
        s = bench.landmark("L1.left.superior_articular_process")
        t = bench.landmark("L1.left.transverse_process")
        return 0.6 * s + 0.4 * t + [1.0, 2.5, 5.0]
    if nerve[0] == "T":
        a = bench.landmark(f"{nerve}.left.transverse_process")
        lower = below(nerve)
        b = bench.landmark(f"{lower}.left.transverse_process")
        lamina = bench.landmark(f"{nerve}.left.lamina")
        end = 0.5 * (a + b)
        x = lamina[0] + 0.55 * (a[0] - lamina[0])
        return np.array([x, end[1] - 1.0, end[2]])
    if nerve[0] == "L":
        lower = below(nerve)
        s = bench.landmark(f"{lower}.left.superior_articular_process")
        if lower == "S1":
            return s + [7.0, 4.0, -2.0]
        t = bench.landmark(f"{lower}.left.transverse_process")
        return 0.62 * s + 0.38 * t + [2.0, 3.0, 2.0]
    k = min(int(nerve[1:]), 4)
    return bench.landmark(f"sacrum.left.dorsal_foramen_{k}") + [0.5, 3.0, 0.0]


def lay_posterior_rami(bench: Workbench) -> None:
    """Lay the posterior rami of C2 to S3, from the nerve back to where they divide."""
    for nerve in nerve_range("C2", "S3"):
        end = end_of_posterior_ramus(bench, nerve)
        joins = [f"spinal_nerve_{nerve}.left", f"spinal_ganglion_{nerve}.left"]
        if nerve[0] == "S":
            dorsal = bench.landmark(f"sacrum.left.dorsal_foramen_{nerve[1:]}")
            # Where bone closes the way from the canal, the ramus is drawn from its foramen on.
            inner = dorsal + [0.0, -7.0, -2.0]
            if joins[1] in bench.parts:
                line = bench.parts[joins[1]].fibres[0]
                root = line[0] + 0.6 * (line[-1] - line[0])
                passage = resample(np.array([root, dorsal + [0.0, -3.0, 0.5]]), 12)
                bone = bench.index("sacrum")
                passage = settle(passage, 0.8, [bone], gap=0.15)
                if bone.signed_distance(passage)[0].min() > 0.5:
                    inner = root
                else:
                    joins = []
            way = np.array([inner, dorsal + [0.0, -3.0, 0.5], dorsal, end])
            lay_tube(bench, f"posterior_ramus_{nerve}.left", "posterior_ramus", way, (1.0, 0.8),
                     joins=joins, triangles=(160, 60), level=nerve, gap=0.15)  # fmt: skip
            continue
        part = bench.parts[joins[0]]
        line = part.fibres[0]
        start = line[0] + 0.55 * (line[-1] - line[0])
        if nerve[0] == "T":
            bend = np.array([0.5 * (start[0] + end[0]) + 1.5, 0.5 * (start[1] + end[1]), end[2]])
        else:
            side = max(start[0], end[0]) + 0.5
            bend = np.array([side, 0.5 * (start[1] + end[1]), start[2] - 1.0])
        size = {"C": 1.0, "T": 0.9, "L": 1.1}[nerve[0]]
        lay_tube(bench, f"posterior_ramus_{nerve}.left", "posterior_ramus",
                 np.array([start, bend, end]), (size, 0.8 * size), joins=joins,
                 triangles=(200, 60), level=nerve, gap=0.15)  # fmt: skip


def from_aorta(bench: Workbench, path: np.ndarray) -> np.ndarray:
    """A course that begins in the wall of the aorta, nearest to its first point, (n + 1, 3)."""
    _, wall, outward = bench.index("aorta").signed_distance(path[:1])
    return np.concatenate([wall - 0.4 * outward, path])


def lay_lumbar_arteries(bench: Workbench) -> None:
    """Lay the lumbar arteries round the waists of L1 to L4."""
    for level in level_range("L1", "L4"):
        f = bench.frame[level]
        path = round_body(bench, level, [4, 30, 60, 88, 108], 1.9)
        process = bench.landmark(f"{level}.left.transverse_process")
        path = np.concatenate(
            [path, [f.to_model([0.5 * f.width + 7.0, 0.46 * f.depth, -9.0])],
             [process + [0.0, -5.0, -9.0]]]
        )  # fmt: skip
        path = from_aorta(bench, path)
        lay_tube(bench, f"lumbar_artery_{level}.left", "lumbar_artery", path, (1.2, 1.0),
                 joins=("aorta",), triangles=(300, 80), level=level)  # fmt: skip


def _groove(bench: Workbench, number: int) -> tuple[np.ndarray, np.ndarray]:
    """Lower border of a rib and the direction into the chest along it, (n, 3) each."""
    border = resample(bench.landmark(f"rib_{number}.left.lower_border"), 40)
    shaft = resample(bench.landmark(f"rib_{number}.left.shaft"), 120)
    # Towards the middle of the chest, level.
    middle = shaft[:100].mean(0)
    inward = middle - border
    inward[:, 2] = 0.0
    inward /= np.maximum(np.linalg.norm(inward, axis=1, keepdims=True), 1e-9)
    return border, inward


def lay_intercostal(bench: Workbench) -> None:
    """Lay intercostal nerves and arteries under the ribs, the nerve lowest."""
    for number in range(1, 13):
        level = f"T{number}"
        border, inward = _groove(bench, number)
        last = int(SHARE_OF_RIB * 40) if number < 11 else 34
        first = 3 if number < 12 else 1
        rows = np.arange(first, last, 3)
        front = 5.0 if number == 12 else 0.0
        groove = border[rows] + (2.0 + front) * inward[rows]
        start = start_of_ramus(bench, level)
        nerve_way = np.concatenate(
            [[start - 0.8 * unit(start - bench.landmark(f"{level}.left.foramen"))],
             [0.55 * start + 0.45 * groove[0] + [0.0, -3.0, -1.0]],
             groove + [0.0, 0.0, -2.6]]
        )  # fmt: skip
        subcostal = number == 12
        lay_tube(
            bench,
            "subcostal_nerve.left" if subcostal else f"intercostal_nerve_{level}.left",
            "subcostal_nerve" if subcostal else "intercostal_nerve",
            nerve_way, (1.1, 0.9),
            joins=(f"spinal_nerve_{level}.left", f"posterior_ramus_{level}.left"),
            triangles=(420, 100), level=level, gap=0.2,
        )  # fmt: skip
        # Above T10 the aorta lies so far to the left that the arteries of the two sides differ:
        # there both begin in front of the body, short of it.
        first_angle = 4 if number > 9 else 14
        rise = -0.3 * bench.frame[level].height
        if number < 3:
            beside = round_body(bench, level, [84, 100], 5.0, rise)
        elif subcostal:
            beside = round_body(bench, level, [4, 35, 70, 96], 1.7, -0.05)
        else:
            beside = round_body(bench, level, [first_angle, 35, 68, 92, 108], 1.7, -0.1)
        groove_high = border[rows] + (2.6 + front) * inward[rows] + [0.0, 0.0, 0.6]
        bridge = 0.5 * beside[-1] + 0.5 * groove_high[0] + [0.0, -2.5, -1.5]
        artery_way = np.concatenate([beside, [bridge], groove_high])
        if number > 9:
            artery_way = from_aorta(bench, artery_way)
        lay_tube(
            bench,
            "subcostal_artery.left" if subcostal else f"posterior_intercostal_artery_{number}.left",
            "subcostal_artery" if subcostal else "posterior_intercostal_artery",
            artery_way, (1.1, 0.9), joins=("aorta",) if number > 9 else (),
            triangles=(480, 110), level=level if subcostal else str(number), gap=0.2,
        )  # fmt: skip


def trunk_line(bench: Workbench) -> np.ndarray:
    """Waypoints of the sympathetic trunk: on the heads of the ribs, then on the bodies."""
    path = []
    for number in range(1, 13):
        head = bench.landmark(f"rib_{number}.left.head")
        neck = bench.landmark(f"rib_{number}.left.neck")
        share = 0.75 if number < 11 else 0.35
        p = head + share * (neck - head)
        path.append(p + [1.0, -5.0, 0.0] if number < 11 else p + [0.0, -6.0, 0.0])
    for level in level_range("L1", "L4"):
        path.append(round_body(bench, level, [52.0], 2.6, 0.0)[0])
    path.append(round_body(bench, "L5", [48.0], 2.6, 0.0)[0])
    return np.array(path)


def lay_sympathetic(bench: Workbench) -> None:
    """Lay the sympathetic trunk, its ganglia and the communicating rami, white and grey."""
    path = trunk_line(bench)
    lay_tube(bench, "sympathetic_trunk.left", "sympathetic_trunk", path, 0.9,
             triangles=(1000, 220), gap=0.3)  # fmt: skip
    trunk = resample(bench.parts["sympathetic_trunk.left"].fibres[0], 400)
    levels = [*level_range("T1", "T12"), *level_range("L1", "L4")]
    for k, level in enumerate(levels):
        near = int(np.argmin(np.linalg.norm(trunk - path[k], axis=1)))
        low, high = max(near - 3, 0), min(near + 3, len(trunk) - 1)
        lay_tube(bench, f"sympathetic_ganglion_{level}.left", "sympathetic_ganglion",
                 trunk[[low, near, high]], (0.9, 1.8, 0.9), joins=("sympathetic_trunk.left",),
                 triangles=(120, 60), level=level, gap=0.2)  # fmt: skip
    for level in [*level_range("T1", "T12"), "L1", "L2"]:
        ganglion = bench.parts[f"sympathetic_ganglion_{level}.left"]
        goal = ganglion.fibres[0][len(ganglion.fibres[0]) // 2]
        nerve = bench.parts[f"spinal_nerve_{level}.left"].fibres[0]
        start = nerve[0] + 0.8 * (nerve[-1] - nerve[0])
        # The white ramus leaves further out than the grey one; both run side by side.
        bend = 0.5 * (start + goal) + [1.8, -1.6, -1.2]
        grey = nerve[0] + 0.35 * (nerve[-1] - nerve[0])
        inner = 0.5 * (grey + goal) + [-0.6, -0.6, 1.6]
        lay_tube(bench, f"ramus_communicans_{level}.left", "ramus_communicans",
                 np.array([start, bend, goal]), 0.6,
                 branches=[Branch(np.array([goal, inner, grey]), 0.6)],
                 joins=(f"spinal_nerve_{level}.left", ganglion.id, "sympathetic_trunk.left",
                        f"intercostal_nerve_{level}.left", "subcostal_nerve.left",
                        f"posterior_ramus_{level}.left"),
                 triangles=(260, 90), level=level, gap=0.15)  # fmt: skip


# --- in the deep muscles -----------------------------------------------------------------


def furrow(bench: Workbench, z: float, deep: float = 3.0) -> np.ndarray:
    """Point (3,) in the furrow between longissimus and iliocostalis at a height.

    Falls back to the angle of the ribs where the muscles are not built.
    """
    inner, outer = [], []
    for part_id, bag in (
        ("longissimus_thoracis.left", inner), ("longissimus_cervicis.left", inner),
        ("iliocostalis_lumborum.left", outer), ("iliocostalis_thoracis.left", outer),
        ("iliocostalis_cervicis.left", outer),
    ):  # fmt: skip
        if part_id not in bench.parts:
            continue
        v = bench.parts[part_id].mesh.vertices
        v = v[np.abs(v[:, 2] - z) < 7.0]
        if len(v):
            bag.append(v)
    if inner and outer:
        a, b = np.concatenate(inner), np.concatenate(outer)
        # Their backs face the furrow: take what lies in the dorsal part of each.
        a = a[a[:, 1] > np.quantile(a[:, 1], 0.5)]
        edge = a[np.argmax(a[:, 0])]
        b = b[b[:, 1] > np.quantile(b[:, 1], 0.5)]
        other = b[np.argmin(np.linalg.norm(b - edge, axis=1))]
        return 0.5 * (edge + other) + [0.0, -deep, 0.0]
    column = np.array([f.centre for f in bench.frame.vertebrae.values()])
    y = np.interp(z, column[::-1, 2], column[::-1, 1])
    return np.array([45.0, y + 38.0, z])


def lay_branches(bench: Workbench) -> None:
    """Lay the medial and lateral branches of the posterior rami of C3 to L5."""
    for nerve in nerve_range("C3", "L5"):
        ramus = bench.parts[f"posterior_ramus_{nerve}.left"]
        line = ramus.fibres[0]
        start = line[-1] - 0.6 * unit(line[-1] - line[-2])
        vertebra = nerve if nerve != "C8" else "C7"
        lower = below(vertebra) if nerve[0] != "C" else vertebra
        if lower == "S1":
            lamina = bench.landmark("S1.left.superior_articular_process") + [-8.0, 8.0, -8.0]
            root = bench.landmark("S1.median_crest")
        else:
            lamina = bench.landmark(f"{lower}.left.lamina")
            root = bench.landmark(f"{lower}.spinous_root")
        tip = bench.landmark(f"{vertebra}.spinous_process")
        mid = 0.5 * (root + tip)
        end = np.array([4.0, mid[1], mid[2]])
        bend = lamina + [3.0, 2.5, 0.0]
        lay_tube(bench, f"medial_branch_{nerve}.left", "medial_branch_of_posterior_ramus",
                 np.array([start, 0.5 * (start + bend) + [0, 1.5, 0], bend, end]), (0.75, 0.6),
                 joins=(ramus.id,), triangles=(240, 60), level=nerve, gap=0.15)  # fmt: skip
        if nerve[0] == "C":
            goal = start + [9.0, 11.0, -9.0]
        else:
            drop = 14.0 if nerve[0] == "T" else 22.0
            goal = furrow(bench, start[2] - drop)
        middle = 0.5 * (start + goal) + [0.0, -2.0, 0.0]
        lay_tube(bench, f"lateral_branch_{nerve}.left", "lateral_branch_of_posterior_ramus",
                 np.array([start, middle, goal]), (0.75, 0.6),
                 joins=(ramus.id, f"medial_branch_{nerve}.left"),
                 triangles=(260, 60), level=nerve, gap=0.15)  # fmt: skip
