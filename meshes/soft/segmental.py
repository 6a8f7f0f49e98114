"""The small muscles from vertebra to vertebra, to rib and to skull."""

from __future__ import annotations

import numpy as np

from meshes.drape.distance import merge
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import LEVELS
from meshes.soft.fascicles import level_range
from meshes.soft.parting import free_place
from meshes.soft.small import lay_small, lifted, on_bone, resample, spindle
from meshes.soft.tubes import settle
from meshes.soft.workbench import Workbench

_LEFT = np.array([1.0, 0.0, 0.0])
_BACK = np.array([0.0, 1.0, 0.0])
_UP = np.array([0.0, 0.0, 1.0])


def lay(bench: Workbench) -> None:
    """Lay the suboccipital muscles, rotatores, interspinales, intertransversarii and levatores."""
    lay_suboccipital(bench)
    lay_levatores_costarum(bench)
    lay_interspinales(bench)
    lay_intertransversarii(bench)
    lay_rotatores(bench)


def above(level: str, count: int = 1) -> str:
    """Return the level `count` places higher."""
    return LEVELS[LEVELS.index(level) - count]


def lay_suboccipital(bench: Workbench) -> None:
    """Lay the four suboccipital muscles of the left side.

    Attachments after Gray 1918, The Suboccipital Muscles (as recalled).
    """
    bulk = bench.body.muscle_bulk * bench.frame.scale
    lower = bench.landmark("occipital.left.inferior_nuchal_line")
    lower = lower[np.argsort(lower[:, 0])]
    axis_tip = bench.landmark("C2.spinous_process")
    atlas_process = bench.landmark("C1.left.transverse_process")
    tubercle = bench.landmark("C1.posterior_tubercle")
    lateral_area = bench.landmark("occipital.left.between_lines_lateral")

    def on_line(share: float) -> np.ndarray:
        return lower[int(round(share * (len(lower) - 1)))]

    _fan(
        bench, "rectus_capitis_posterior_minor",
        [tubercle + [x, 1.0, 1.0] for x in (1.5, 3.0)],
        [on_line(0.08) + [0, 1.0, -2.0], on_line(0.32) + [0, 1.0, -2.0]],
        ("vertebra_C1", "cranium"), 8.0 * bulk, 5.0 * bulk, bow=[0, 2.0, 0],
    )  # fmt: skip
    _fan(
        bench, "rectus_capitis_posterior_major",
        [axis_tip + [2.5, -1.0, 2.5], axis_tip + [4.0, -2.0, 1.5]],
        [on_line(0.45) + [0, 1.0, -2.0], on_line(0.72) + [0, 1.0, -2.0]],
        ("vertebra_C2", "cranium"), 9.0 * bulk, 6.5 * bulk, bow=[2.0, 2.0, 0],
    )  # fmt: skip
    _fan(
        bench, "obliquus_capitis_inferior",
        [axis_tip + [3.5, -4.0, -0.5]], [atlas_process + [-1.0, 2.5, -1.0]],
        ("vertebra_C2", "vertebra_C1"), 12.0 * bulk, 9.0 * bulk, bow=[0, 3.5, -1.0],
    )  # fmt: skip
    area = lateral_area[np.argsort(lateral_area[:, 0])]
    _fan(
        bench, "obliquus_capitis_superior",
        [atlas_process + [-1.0, 2.0, 2.0]],
        [area[len(area) // 3] + [0, 1.0, 0], area[2 * len(area) // 3] + [0, 1.0, 0]],
        ("vertebra_C1", "cranium"), 9.0 * bulk, 7.0 * bulk, bow=[0, 3.0, 0],
    )  # fmt: skip


def _fan(bench, entry, starts, ends, to, width, thickness, bow) -> None:
    """Lay a muscle that spreads from its origin points to its insertion points."""
    starts, ends = np.atleast_2d(starts), np.atleast_2d(ends)
    count = max(len(starts), len(ends), 3)
    lines, solid = [], Solid()
    u = np.linspace(0, 1, 7)[:, None]
    for share in np.linspace(0, 1, count):
        a = on_bone(bench, to[0], _between(starts, share))
        b = on_bone(bench, to[1], _between(ends, share))
        line = lifted(bench, (1 - u) * a + u * b + np.sin(np.pi * u) * np.asarray(bow, float), 2.5)
        lines.append(line)
        direction = line[-1] - line[0]
        side = np.cross(direction, _BACK)
        spindle(solid, line, side, width / count * 2.0, thickness, ends=0.45, blend=2.5)
    lay_small(bench, f"{entry}.left", entry, solid, lines, to, triangles=(900, 150),
              level=to[0].removeprefix("vertebra_"), region="neck")  # fmt: skip


def _between(points: np.ndarray, share: float) -> np.ndarray:
    place = share * (len(points) - 1)
    low = min(int(place), max(len(points) - 2, 0))
    high = min(low + 1, len(points) - 1)
    return points[low] + (place - low) * (points[high] - points[low])


def lay_rotatores(bench: Workbench) -> None:
    """Lay the thoracic rotatores: transverse process to the lamina one and two levels higher."""
    bulk = bench.body.muscle_bulk * bench.frame.scale
    for span, kind, first in ((1, "brevis", "T2"), (2, "longus", "T3")):
        for level in level_range(first, "T12"):
            target = above(level, span)
            process = bench.landmark(f"{level}.left.transverse_process")
            lamina = bench.landmark(f"{level}.left.lamina")
            # The long one arises farther out and crosses behind the short one.
            out = 0.44 if span == 1 else 0.66
            start = out * process + (1 - out) * lamina + [0, 1.2, 2.0 if span == 1 else 1.0]
            root = bench.landmark(f"{target}.spinous_root")
            plate = bench.landmark(f"{target}.left.lamina")
            if span == 1:
                end = 0.75 * plate + 0.25 * root + [0, 1.2, -3.0]
            else:
                end = root + [1.8, 0.6, -2.0]
            start = on_bone(bench, f"vertebra_{level}", start)
            end = on_bone(bench, f"vertebra_{target}", end)
            u = np.linspace(0, 1, 8)[:, None]
            lift = np.sin(np.pi * u) * np.array([0.0, 1.6 * span, 0.0])
            line = lifted(bench, (1 - u) * start + u * end + lift, 1.6)
            side = np.cross(end - start, _BACK)
            solid = spindle(Solid(), line, side, 6.5 * bulk, 4.0 * bulk, ends=0.5)
            lay_small(bench, f"rotator_{kind}_{level}.left", f"rotator_{kind}", solid, [line],
                      (f"vertebra_{level}", f"vertebra_{target}"),
                      triangles=(260, 60), level=level)  # fmt: skip


def lay_interspinales(bench: Workbench) -> None:
    """Lay the interspinales of neck and loin, one each side of the interspinous ligament."""
    bulk = bench.body.muscle_bulk * bench.frame.scale
    pairs = [(a, LEVELS[LEVELS.index(a) + 1]) for a in (*level_range("C2", "C7"), "T1")]
    loin = [(a, LEVELS[LEVELS.index(a) + 1]) for a in ("T12", *level_range("L1", "L4"))]
    for upper, lower in pairs + loin:
        neck = upper[0] == "C" or upper == "T1"
        ends = []
        for level, share in ((lower, 0.62), (upper, 0.62)):
            root = bench.landmark(f"{level}.spinous_root")
            tip = bench.landmark(f"{level}.spinous_process")
            ends.append(root + share * (tip - root))
        x = 3.0 if neck else 4.2
        start = on_bone(bench, f"vertebra_{lower}", ends[0] + [x, 0, 2.0])
        end = on_bone(bench, f"vertebra_{upper}", ends[1] + [x, 0, -2.0])
        u = np.linspace(0, 1, 5)[:, None]
        line = (1 - u) * start + u * end
        deep = (5.0 if neck else 11.0) * bulk
        solid = spindle(Solid(), line, _BACK, deep, (3.4 if neck else 4.2) * bulk, ends=0.7)
        entry = "interspinalis_cervicis" if neck else "interspinalis_lumborum"
        lay_small(bench, f"interspinalis_{upper}_{lower}.left", entry, solid, [line],
                  (f"vertebra_{lower}", f"vertebra_{upper}"),
                  triangles=(260, 60), level=upper)  # fmt: skip


def lay_intertransversarii(bench: Workbench) -> None:
    """Lay the cervical (anterior, posterior) and lumbar (medial, lateral) intertransversarii."""
    bulk = bench.body.muscle_bulk * bench.frame.scale

    def between(
        upper: str, lower: str, keys: tuple[str, str], entry: str, width, thickness, border
    ):
        end = bench.landmark(f"{upper}.left.{keys[0]}")
        start = bench.landmark(f"{lower}.left.{keys[1]}")
        # From the lower border of one process to the upper of the next, so that two in a row
        # leave the tip of the process between them.
        up = (end - start) / np.linalg.norm(end - start)
        end = on_bone(bench, f"vertebra_{upper}", end - border * up)
        start = on_bone(bench, f"vertebra_{lower}", start + border * up)
        u = np.linspace(0, 1, 5)[:, None]
        line = (1 - u) * start + u * end
        solid = spindle(Solid(), line, _LEFT, width * bulk, thickness * bulk, ends=0.6)
        lay_small(bench, f"{entry}_{upper}_{lower}.left", entry, solid, [line],
                  (f"vertebra_{lower}", f"vertebra_{upper}"),
                  triangles=(220, 60), level=upper)  # fmt: skip

    # The posterior ones reach from the atlas to the first thoracic vertebra; the first thoracic
    # process has no anterior tubercle, and the anterior ones end above it.
    for upper in level_range("C1", "C7"):
        lower = LEVELS[LEVELS.index(upper) + 1]
        for place in ("anterior", "posterior") if upper != "C7" else ("posterior",):
            atlas = "anterior_tubercle" if place == "anterior" else "transverse_process"
            high = atlas if upper == "C1" else f"{place}_tubercle"
            low = "transverse_process" if lower == "T1" else f"{place}_tubercle"
            between(upper, lower, (high, low),
                    f"intertransversarius_{place}_cervicis", 5.0, 3.6, 1.2)  # fmt: skip
    for upper in level_range("L1", "L4"):
        lower = LEVELS[LEVELS.index(upper) + 1]
        between(upper, lower, ("accessory_process", "mamillary_process"),
                "intertransversarius_medialis_lumborum", 6.0, 4.5, 0.0)  # fmt: skip
        between(upper, lower, ("transverse_process", "transverse_process"),
                "intertransversarius_lateralis_lumborum", 12.0, 3.4, 0.0)  # fmt: skip


def lay_levatores_costarum(bench: Workbench) -> None:
    """Lay the levatores costarum: transverse process to the next rib, or the next but one."""
    bulk = bench.body.muscle_bulk * bench.frame.scale
    jobs = [(level, 1, "brevis") for level in level_range("C7", "T11")]
    jobs += [(level, 2, "longus") for level in level_range("T7", "T10")]
    for level, span, kind in jobs:
        number = int(level[1:]) + span if level[0] == "T" else span
        process = bench.landmark(f"{level}.left.transverse_process")
        upper = bench.landmark(f"rib_{number}.left.upper_border")
        shaft = bench.landmark(f"rib_{number}.left.shaft")
        tubercle = bench.landmark(f"rib_{number}.left.tubercle")
        angle = bench.landmark(f"rib_{number}.left.angle")
        # The long one ends lateral to the short one of the next level and crosses behind it.
        near, far = (0.2, 0.62) if span == 1 else (0.72, 1.0)
        inner = (1 - near) * tubercle + near * angle
        outer = (1 - far) * tubercle + far * angle
        tip = process + ([1.0, -1.5, -2.0] if span == 1 else [0.5, 2.5, 1.0])
        short = [bench.index(i) for i in bench.parts if i.startswith("levator_costarum_brevis")]
        crowd = merge(short)[0] if span == 2 else None

        def place(part_id: str, wanted: np.ndarray, crowd=crowd) -> np.ndarray:
            spot = free_place(bench.index(part_id), crowd, wanted, clear=2.2)
            return on_bone(bench, part_id, spot)

        start = place(f"vertebra_{level}", tip)
        lines, solid = [], Solid()
        u = np.linspace(0, 1, 9)[:, None]
        for share in (0.0, 0.5, 1.0):
            target = inner + share * (outer - inner)
            # On the outer face below the upper border, which the intercostal muscle takes.
            border = upper[np.argmin(np.linalg.norm(upper - target, axis=1))]
            face = shaft[np.argmin(np.linalg.norm(shaft - border, axis=1))]
            end = 0.45 * border + 0.55 * face
            end = place(f"rib_{number}.left", end)
            line = (1 - u) * start + u * end + np.sin(np.pi * u) * np.array([0, 1.0 * span, 0])
            line = lifted(bench, line, 1.4 + 0.6 * span)
            if span == 2:
                way = resample(line, 21)
                room = 2.2 * np.clip(5 * np.sin(np.pi * np.linspace(0, 1, 21)), 0, 1)
                line = settle(way, room, bench.near(way, 4.0), gap=0.0)
            lines.append(line)
            side = np.cross(end - start, _BACK)
            spindle(solid, line, side, 5.5 * bulk, 3.2 * bulk, ends=0.6, blend=2.0)
        lay_small(bench, f"levator_costarum_{kind}_{level}.left", f"levator_costarum_{kind}",
                  solid, lines, (f"vertebra_{level}", f"rib_{number}.left"),
                  triangles=(420, 90), spacing=(0.8, 1.1), level=level,
                  region="thorax")  # fmt: skip
