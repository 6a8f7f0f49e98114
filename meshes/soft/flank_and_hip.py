"""Obliques and gluteal muscles: the lower and lateral edge of the back."""

from __future__ import annotations

import numpy as np

from meshes.drape.sheet import belly_profile, lay_sheet, slip_cells
from meshes.soft.fan import fan_grid, fan_thickness, lay_fan, lift_grid, smooth_grid
from meshes.soft.sheets import End, joined, part_of_curve, put_sheet, radial
from meshes.soft.workbench import Workbench


def _rib(bench: Workbench, number: int, share: float, lift: float = 0.8) -> np.ndarray:
    point = part_of_curve(bench.landmark(f"rib_{number}.left.shaft"), share, share + 1e-3, 2)[0]
    return point + lift * radial(bench)(point[None])[0]


def lay_transversus_aponeurosis(bench: Workbench) -> None:
    """Lay the posterior aponeurosis of transversus abdominis, the floor of the superior triangle."""
    scale = bench.frame.scale
    # From the lateral border of the middle layer, which it carries on, whole from rib to crest.
    border = bench.sheets["thoracolumbar_fascia_middle.left"].mid[-1]
    inner = part_of_curve(border[np.argsort(border[:, 2])], 0.02, 0.98, 12) + [0.6, 0.0, 0.0]
    outer = inner + np.array([32.0 * scale, -28.0 * scale, 0.0])
    # Its free edges follow the crest, to whose inner lip it spreads, and the last rib.
    lip = part_of_curve(bench.landmark("ilium.left.crest"), 0.5, 0.501, 2)[0]
    down = np.linspace(1.0, 0.0, len(outer))[:, None] ** 2
    outer += down * (lip + [-9.0 * scale, -2.0, 4.0] - outer[0])
    outer[-1, 2] = _rib(bench, 12, 0.97)[2] - 3.0
    outer[:, 2] = np.interp(inner[:, 2], inner[[0, -1], 2], outer[[0, -1], 2])
    across, along = (16, 12) if bench.full else (9, 8)
    sheet = lay_sheet(
        inner, outer, bench.field, 0.9, along=along, across=across,
        outward=radial(bench), border_tension=0.0, bow_limit=15.0,
    )  # fmt: skip
    put_sheet(
        bench, "transversus_abdominis_aponeurosis", sheet,
        [End("thoracolumbar_fascia_middle.left", inner)], [], kind="fascia",
        tendon=lambda a, b: np.ones_like(a), slab_mm=6.0, attach_kind=("attach", "attach"),
    )  # fmt: skip


def lay_internal_oblique(bench: Workbench) -> None:
    """Lay the posterior part of internal oblique: crest and raphe up and forward to ribs 10-12."""
    crest = bench.landmark("ilium.left.crest")
    low, high = float(bench.frame["L4"].centre[2]), float(bench.frame["L2"].centre[2])
    border = bench.sheets["thoracolumbar_fascia_posterior.left"].mid[-1]
    border = border[(border[:, 2] > low) & (border[:, 2] < high)][::-1]
    raphe = part_of_curve(border, 0.0, 1.0, 5) + [0.8, 0.0, 0.0]
    on_crest = part_of_curve(crest, 0.36, 0.82, 12) + [0, 0, 1.2]
    targets = [
        (12, _rib(bench, 12, 0.96, 1.2)),
        (11, _rib(bench, 11, 0.97, 1.8)),
        (10, _rib(bench, 10, 0.97, 1.2)),
    ]
    front = np.array([bench.landmark("costal_cartilage_10.left.medial_end") + [22.0, 6.0, -20.0],
                      bench.landmark("ilium.left.ASIS") + [-4.0, -8.0, 40.0]])  # fmt: skip
    insertion = np.concatenate([np.array([p for _, p in targets]), front])
    across, along = (28, 22) if bench.full else (20, 14)
    sheet = lay_sheet(
        joined([raphe, on_crest], across), insertion, bench.field,
        belly_profile(6.0 * bench.body.muscle_bulk, tendon=(0.05, 0.05), edge=0.6),
        along=along, across=across, outward=radial(bench), border_tension=0.0,
    )  # fmt: skip
    put_sheet(
        bench, "internal_oblique", sheet,
        [End("thoracolumbar_fascia_posterior.left", raphe), End("hip_bone.left", on_crest)],
        [End(f"rib_{n}.left", p[None]) for n, p in targets], tendon=(0.08, 0.05), outermost=True,
    )  # fmt: skip


def lay_external_oblique(bench: Workbench) -> None:
    """Lay external oblique: slips from ribs 5-12 down and forward to the crest; free behind."""
    numbers = list(range(12, 4, -1))
    shares = {12: 0.84, 11: 0.69, 10: 0.64, 9: 0.67, 8: 0.74, 7: 0.78, 6: 0.82, 5: 0.855}
    slips = []
    for number in numbers:
        shaft = bench.landmark(f"rib_{number}.left.shaft")
        curve = part_of_curve(shaft, shares[number] - 0.02, min(shares[number] + 0.04, 0.99), 4)
        slips.append(curve + 2.0 * radial(bench)(curve))
    crest = part_of_curve(bench.landmark("ilium.left.crest"), 0.52, 0.95, 14) + [1.0, 0, 1.2]
    spine = bench.landmark("ilium.left.ASIS")
    rim = bench.landmark("costal_cartilage_9.left.medial_end")
    front = np.array([spine + [-6.0, -12.0, 14.0], 0.6 * spine + 0.4 * rim + [10.0, -16.0, 0.0],
                      0.25 * spine + 0.75 * rim + [20.0, -10.0, 0.0]])  # fmt: skip
    across, along = (32, 18) if bench.full else (32, 16)
    insertion = joined([crest, front], across)
    per = [across // 8] * 8
    gaps = [0.13, 0.10, *[0.08] * 5]
    cells = slip_cells(across, along, per, gaps, end="origin")
    sheet = lay_sheet(
        slips, insertion, bench.field,
        belly_profile(6.5 * bench.body.muscle_bulk, tendon=(0.14, 0.05), edge=0.6),
        along=along, across=across, outward=radial(bench), border_tension=(0.015, 0.0), cells=cells,
    )  # fmt: skip
    put_sheet(
        bench, "external_oblique", sheet,
        [End(f"rib_{n}.left", c) for n, c in zip(numbers, slips, strict=True)],
        [End("hip_bone.left", crest)], tendon=(0.03, 0.06), outermost=True,
    )  # fmt: skip


def lay_gluteus_medius(bench: Workbench) -> None:
    """Lay gluteus medius from the outer face of the ilium to the greater trochanter."""
    bulk = bench.body.muscle_bulk * bench.frame.scale
    crest = bench.landmark("ilium.left.crest")
    surface = bench.landmark("ilium.left.gluteal_surface")
    trochanter = bench.landmark("femur.left.greater_trochanter")
    centre = surface.mean(0)
    away = np.array([1.0, 0.45, 0.0]) / np.hypot(1.0, 0.45)
    paths = []
    for share in (0.13, 0.32, 0.52, 0.72, 0.90):
        start = part_of_curve(crest, share, share + 1e-3, 2)[0] + [2.5, 0.5, -7.0]
        end = trochanter + [1.5, 3.0 - 9.0 * (share - 0.13), 4.0 + 8.0 * (0.58 - share) ** 2]
        middle = 0.5 * (0.5 * (start + end) + centre + 0.5 * (start - centre))
        paths.append(np.array([start, middle + 9.0 * bulk * away, end]))
    across, along = (15, 14) if bench.full else (11, 10)
    thickness = fan_thickness(across, along, 22.0 * bulk, (0.55, 0.35), edge=0.45, at=0.45)
    grid = lift_grid(bench.field, fan_grid(paths, across, along), 0.4 * thickness)
    lay_fan(bench, "gluteus_medius", grid, thickness, [End("hip_bone.left", grid[:, 0])],
            [End("femur.left", grid[:, -1])], triangles=(3600, 640), spacing=(2.2, 3.4),
            tendon=(0.03, 0.12), region="pelvis")  # fmt: skip


def lay_gluteus_maximus(bench: Workbench) -> None:
    """Lay gluteus maximus from crest, sacrum, coccyx and fascia to the gluteal tuberosity."""
    crest = part_of_curve(bench.landmark("ilium.left.crest"), 0.22, 0.02, 6)
    lateral = bench.landmark("sacrum.left.lateral_crest")
    lateral = lateral[np.argsort(-lateral[:, 2])][1:]
    coccyx = bench.landmark("coccyx.left.transverse_process")[None] + [1.0, 2.5, 0]
    crest = crest + [1.0, 0.8, -1.5]
    ligament = bench.index("sacrotuberous_ligament.left").signed_distance(
        part_of_curve(np.concatenate([lateral[-2:], coccyx]), 0.0, 1.0, 8) + [6.0, 3.0, -4.0]
    )[1]
    origin = np.concatenate([crest, lateral + [2.0, 2.0, 0.0], coccyx])
    line = bench.landmark("femur.left.gluteal_tuberosity_line")
    trochanter = bench.landmark("femur.left.greater_trochanter")
    # Its upper fibres pass over the trochanter, which they hide with the border of medius.
    insertion = np.concatenate([trochanter[None] + [8.0, 1.0, -10.0], line + [1.0, 1.0, 0.0]])
    across, along = (20, 16) if bench.full else (16, 14)

    def outward(points):
        p = np.asarray(points, float)
        away = np.zeros_like(p)
        away[..., 0] = 0.45 + 0.004 * p[..., 0]
        away[..., 1] = 1.0
        return away / np.linalg.norm(away, axis=-1, keepdims=True)

    sheet = lay_sheet(
        origin, insertion, bench.field,
        belly_profile(24.0 * bench.body.muscle_bulk * bench.frame.scale, tendon=(0.02, 0.06),
                      edge=0.55, edge_width=0.3),
        along=along, across=across, outward=outward, border_tension=(-0.05, -0.04), bow_limit=50.0,
        ramp=5.0,
    )  # fmt: skip
    # Its broad origin lies on the bones and the fascia, not half within them.
    thickness = np.maximum(sheet.thickness, 7.5)
    grid = smooth_grid(lift_grid(bench.field, sheet.mid, 0.5 * thickness + 0.4, ends=0.55), 1)
    lay_fan(
        bench, "gluteus_maximus", grid, thickness,
        [End("hip_bone.left", crest), End("sacrum", lateral), End("coccyx", coccyx),
         End("sacrotuberous_ligament.left", ligament)],
        [End("femur.left", insertion)], triangles=(5000, 900), spacing=(2.4, 3.6),
        tendon=(0.02, 0.08), region="pelvis",
    )  # fmt: skip
