"""The flat muscles of the back, from the splenii out to trapezius and latissimus."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from meshes.body import MEDIAN_STATURE_MM
from meshes.drape.distance import MeshIndex
from meshes.drape.sheet import SheetGrid, arc_length, belly_profile, lay_sheet, slip_cells
from meshes.model import Contact
from meshes.skeleton.frame import LUMBAR
from meshes.soft.fan import fan_grid, lay_fan, lift_grid, smooth_grid
from meshes.soft.investing import collar, held_down
from meshes.soft.midline import flat_beside_spines
from meshes.soft.relief import Relief
from meshes.soft.sheets import (
    End,
    at_ligament,
    clear_sheet,
    fixed_to,
    free_spot,
    joined,
    part_of_curve,
    put_sheet,
    radial,
)
from meshes.soft.workbench import Workbench

_FLESHY_END = 0.35
"""Slope with which the flesh of rhomboids and serrati rises from scapula and ribs: Hung D et
al., J Clin Ultrasound 2011;39:78-82, found 6.3 and 3.5 mm beside the medial border."""
_COLLAR_MM = 130.0
"""Radius of the hollow curve from neck to shoulder as the investing fascia bridges it."""


def _thick(bench: Workbench, entry: str) -> float:
    """Greatest thickness of a muscle for this body, mm.

    The catalogue's holds at the median stature of the sex, and goes along with stature.
    """
    body = bench.body
    size = float(bench.catalogue[entry].thickness.for_sex(body.sex)) * body.muscle_bulk
    return size * body.scale / (MEDIAN_STATURE_MM[body.sex] / MEDIAN_STATURE_MM["male"])


def _spines(bench: Workbench, levels: list[str], x: float = 0.8) -> np.ndarray:
    """Points on the left of the spine tips, (n, 3) mm."""
    return np.array(
        [bench.landmark(f"{v}.spinous_process") * [0, 1, 1] + [x, 0.6, 0] for v in levels]
    )


def nuchal_edge(
    bench: Workbench, first: float, last: float, count: int, x: float = 0.9
) -> np.ndarray:
    """Points beside the free edge of the nuchal ligament, (count, 3) mm.

    first, last : shares of the height from C7 (0) to the protuberance (1).
    """
    low = bench.landmark("C7.spinous_process")
    high = bench.landmark("occipital.external_protuberance")
    z = low[2] + np.linspace(first, last, count) * (high[2] - low[2])
    y = bench.gutter.roof_at(np.zeros(count), z) - 1.0
    edge = np.stack([np.full(count, x), y, z], axis=1)
    # Just above C7 its spine stands out farther than the ligament.
    for _ in range(4):
        lack = 0.3 - bench.index("vertebra_C7").signed_distance(edge)[0]
        edge[:, 1] += np.maximum(lack, 0.0)
    return edge


def _ends(levels: list[str], curve: np.ndarray) -> list[End]:
    """One attachment piece a vertebra."""
    return [End(f"vertebra_{v}", point[None]) for v, point in zip(levels, curve, strict=True)]


def _put(bench, entry, sheet, origins, insertions, **more):
    return put_sheet(bench, entry, sheet, origins, insertions, **more)


def _grid(bench: Workbench, along: int, across: int) -> dict[str, int]:
    if bench.full:
        return {"along": along, "across": across}
    return {"along": max(14, along // 2), "across": max(9, across // 2)}


def lay_splenii(bench: Workbench) -> None:
    """Lay splenius capitis and cervicis.

    Gray 1918, The Splenius Muscles (as recalled): nuchal ligament's lower half,
    spines C7-T3 to mastoid and lateral third of the superior nuchal line;
    spines T3-T6 to the transverse processes of the upper two or three cervical vertebrae.
    """
    low = ["T3", "T4", "T5", "T6"]
    origin = _spines(bench, low)
    tubercles = np.array([_tubercle(bench, v, [1.0, 1.0, 0.0]) for v in ("C1", "C2", "C3")])
    grid = _grid(bench, 48, 16)
    sheet = lay_sheet(
        origin, tubercles, bench.field,
        belly_profile(_thick(bench, "splenius_cervicis"), tendon=(0.1, 0.06)),
        outward=radial(bench), border_tension=0.0, **grid,
    )  # fmt: skip
    _put(
        bench, "splenius_cervicis", sheet, _ends(low, origin),
        _ends(["C1", "C2", "C3"], tubercles), tendon=(0.1, 0.06), from_spines=True,
        contacts=[at_ligament("splenius_cervicis.left", origin)],
    )  # fmt: skip
    high = ["C7", "T1", "T2", "T3"]
    ligament = nuchal_edge(bench, 0.45, 0.09, 6)
    spines = _spines(bench, high)
    line = bench.landmark("occipital.left.superior_nuchal_line")
    mastoid = bench.landmark("temporal.left.mastoid_outer")
    line_part = part_of_curve(line, 0.62, 1.0, 6)
    insertion = part_of_curve(np.concatenate([line_part[:-1], mastoid[2:]]), 0.0, 1.0, 12)
    sheet = lay_sheet(
        np.concatenate([ligament, spines]), insertion, bench.field,
        belly_profile(_thick(bench, "splenius_capitis"), tendon=(0.08, 0.05)),
        outward=radial(bench), border_tension=(0.02, 0.0), **_grid(bench, 44, 24),
    )  # fmt: skip
    _put(bench, "splenius_capitis", sheet,
         [End("nuchal_ligament", ligament), *_ends(high, spines)],
         [End("cranium", insertion)], tendon=(0.08, 0.05), from_spines=True,
         contacts=[at_ligament("splenius_capitis.left", spines)])  # fmt: skip


def _tubercle(bench: Workbench, level: str, shift: list[float]) -> np.ndarray:
    """A free place on the posterior tubercle of a cervical vertebra, left, (3,) mm."""
    wanted = bench.landmark(f"{level}.left.posterior_tubercle") + shift
    return free_spot(bench, f"vertebra_{level}", wanted)


def lay_serrati_posteriores(bench: Workbench) -> None:
    """Lay serratus posterior superior and inferior: thin, half aponeurosis, four slips each.

    Gray 1918 (as recalled): C7-T2/3 to ribs 2-5 lateral to the angles; T11-L2/3 to ribs 9-12.
    """
    levels = ["C7", "T1", "T2", "T3"]
    ligament = nuchal_edge(bench, 0.14, 0.08, 3)
    spines = _spines(bench, levels)
    # The ribs run much as these fibres do: each slip ends across its rib, not along it.
    pieces = [
        (n, _across_rib(bench, n, beyond)) for n, beyond in ((2, 16), (3, 22), (4, 18), (5, 18))
    ]
    _serrated(
        bench, "serratus_posterior_superior",
        [End("nuchal_ligament", ligament), *_ends(levels, spines)],
        np.concatenate([ligament, spines]), pieces,
        [at_ligament("serratus_posterior_superior.left", spines)],
    )  # fmt: skip
    low = ["T11", "T12", "L1", "L2"]
    origin = _spines(bench, low, x=2.0)
    edge = _on_fascia(bench, [(14.0 * bench.frame.scale, float(z)) for z in origin[:, 2]])
    pieces = []
    for number, first, last in (
        (9, 12.0, 34.0),
        (10, 14.0, 38.0),
        (11, 16.0, 40.0),
        (12, 62.0, 80.0),
    ):
        pieces.append((number, _on_rib(bench, number, first, last, border=-0.35)))
    _serrated(
        bench, "serratus_posterior_inferior",
        [End("thoracolumbar_fascia_posterior.left", edge)], edge, pieces,
    )  # fmt: skip


def _on_rib(bench: Workbench, number: int, first: float, last: float, border: float) -> np.ndarray:
    """Points on a rib's outer face from `first` to `last` mm beyond its angle, lifted off it.

    border : share of the way towards the upper (+) or lower (-) border.
    """
    shaft = bench.landmark(f"rib_{number}.left.shaft")
    upper = bench.landmark(f"rib_{number}.left.upper_border")
    lower = bench.landmark(f"rib_{number}.left.lower_border")
    angle = bench.landmark(f"rib_{number}.left.angle")
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(shaft, axis=0), axis=1).cumsum()])
    start = s[int(np.argmin(np.linalg.norm(shaft - angle, axis=1)))]
    scale = bench.frame.scale
    wanted = np.linspace(start + first * scale, min(start + last * scale, s[-1] - 3.0), 5)
    points = np.stack([np.interp(wanted, s, shaft[:, i]) for i in range(3)], axis=1)
    towards = upper if border > 0 else lower
    near = np.array([towards[np.argmin(np.linalg.norm(towards - p, axis=1))] for p in points])
    points = points + 2 * abs(border) * (near - points)
    return points + 0.5 * radial(bench)(points)


def _across_rib(bench: Workbench, number: int, beyond: float) -> np.ndarray:
    """Points (5, 3) from the upper to the lower border of a rib, `beyond` mm past its angle."""
    middle = _on_rib(bench, number, beyond, beyond + 0.1, border=0.0)[0]
    ends = []
    for which in ("upper", "lower"):
        border = bench.landmark(f"rib_{number}.left.{which}_border")
        ends.append(border[np.argmin(np.linalg.norm(border - middle, axis=1))])
    upper, lower = (0.75 * end + 0.25 * middle for end in ends)
    curve = part_of_curve(np.array([upper, middle, lower]), 0.0, 1.0, 5)
    return curve + 0.5 * radial(bench)(curve)


def _serrated(bench, entry, origins, origin, pieces, contacts=()) -> None:
    across, along = (25, 36) if bench.full else (13, 20)
    per = _shares([1.0] * len(pieces), across)
    cells = slip_cells(across, along, per, 0.3, end="insertion")
    profile = belly_profile(
        _thick(bench, entry), tendon=(0.45, 0.04), tendon_thickness=0.7, at=0.84, edge=0.7
    )
    sheet = lay_sheet(
        origin, [p for _, p in pieces], bench.field, profile,
        along=along, across=across, outward=radial(bench), border_tension=0.02, cells=cells,
        guide=_on_the_roof(bench, origin, [p for _, p in pieces], across), bow_limit=0.0,
    )  # fmt: skip
    insertions = [End(f"rib_{n}.left", p) for n, p in pieces]
    _put(bench, entry, sheet, origins, insertions, tendon=(0.5, 0.05), slab_mm=7.0,
         contacts=contacts, from_spines=True, end_taper=_FLESHY_END)  # fmt: skip


def _on_the_roof(bench, origin, pieces, across: int) -> dict[float, np.ndarray]:
    """Curves on the roof of the deep muscles, so that a sheet starts under the scapula."""
    first = _even(origin, across)
    last = joined(pieces, across)
    ends = np.concatenate([first, last])
    under = [
        i
        for i in bench.near_ids(ends, 30.0)
        if i.startswith(("splenius", "thoracolumbar", "rib_", "external_intercostal"))
    ]
    low, high = ends.min(axis=0) - 3.0, ends.max(axis=0) + 3.0
    relief = Relief.of(bench, under, low[[0, 2]], high[[0, 2]])
    guide = {}
    for u in (0.08, 0.16, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85):
        line = first + u * (last - first)
        line[:, 1] = np.maximum(line[:, 1], relief.at(line[:, 0], line[:, 2]) + 0.8)
        guide[u] = line
    return guide


def _shares(weights: list[float], total: int) -> list[int]:
    """Whole numbers in proportion to weights, each at least 2, summing to total."""
    weights_array = np.asarray(weights, float)
    raw = np.maximum(weights_array / weights_array.sum() * total, 2)
    out = np.floor(raw).astype(int)
    while out.sum() < total:
        out[int(np.argmax(raw - out))] += 1
    while out.sum() > total:
        out[int(np.argmax(out))] -= 1
    return out.tolist()


def lay_levator_and_rhomboids(bench: Workbench) -> None:
    """Lay levator scapulae and the two rhomboids.

    Gray 1918 (as recalled): levator from the transverse processes of C1-C4 to
    the medial border between superior angle and root of the spine; minor from
    nuchal ligament and C7-T1 to the border at the root; major from T2-T5 to
    the border below it.
    """
    border = bench.landmark("scapula.left.medial_border")
    root = bench.landmark("scapula.left.root_of_spine")
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(border, axis=0), axis=1).cumsum()])
    at_root = float(s[int(np.argmin(np.linalg.norm(border - root, axis=1)))] / s[-1])
    off = 0.6 * radial(bench)(border)
    border = border + off
    # From the superior angle to the root of the spine.
    _lay_levator(bench, part_of_curve(border, at_root - 0.02, 0.01, 20))
    ligament = nuchal_edge(bench, 0.10, 0.03, 3)
    minor_levels, major_levels = ["C7", "T1"], ["T2", "T3", "T4", "T5"]
    spines = _spines(bench, minor_levels)
    target = part_of_curve(border, at_root - 0.045, at_root + 0.075, 8)
    sheet = lay_sheet(
        np.concatenate([ligament, spines]), target, bench.field,
        belly_profile(_thick(bench, "rhomboid_minor"), tendon=(0.12, 0.02), edge=0.6, at=0.8),
        outward=radial(bench), border_tension=0.0, **_grid(bench, 30, 10),
    )  # fmt: skip
    starts = [End("nuchal_ligament", ligament), *_ends(minor_levels, spines)]
    _put(bench, "rhomboid_minor", sheet, starts, [End("scapula.left", target)],
         tendon=(0.12, 0.03), from_spines=True, end_taper=_FLESHY_END, contacts=[at_ligament("rhomboid_minor.left", spines)])  # fmt: skip
    spines = _spines(bench, major_levels)
    target = part_of_curve(border, at_root + 0.10, 0.985, 20)
    sheet = lay_sheet(
        spines, target, bench.field,
        belly_profile(_thick(bench, "rhomboid_major"), tendon=(0.1, 0.02), edge=0.6, at=0.8),
        outward=radial(bench), border_tension=(0.0, 0.015), **_grid(bench, 34, 26),
    )  # fmt: skip
    _put(bench, "rhomboid_major", sheet, _ends(major_levels, spines),
         [End("scapula.left", target)], tendon=(0.1, 0.04), from_spines=True, end_taper=_FLESHY_END,
         contacts=[at_ligament("rhomboid_major.left", spines)])  # fmt: skip


def _lay_levator(bench: Workbench, target: np.ndarray) -> None:
    """Lay levator scapulae: four slips, one belly on edge beside the neck, turned on its way down.

    The fibres of the atlas lie behind in the neck and end lowest on the medial border, those of
    C4 lie in front and end at the superior angle (Gray 1918, as recalled, for the attachments;
    the turn: common practice, no source).

    Parameters
    ----------
    bench : Workbench
    target : (n, 3) float
        The medial border from the root of the spine (first) to the superior angle, mm.
    """
    scale = bench.frame.scale
    levels = ("C1", "C2", "C3", "C4")
    per, along = (5, 26) if bench.full else (3, 18)
    at_c5, at_c7 = (bench.landmark(f"{v}.left.posterior_tubercle") for v in ("C5", "C7"))
    # Where the belly stands beside the lower neck, and its half breadth there from front to back.
    beside = (
        at_c5 + np.array([14.5, 20.0, 0.0]) * scale,
        at_c7 + np.array([11.5, 13.0, 2.0]) * scale,
    )
    half = 8.0 * scale, 8.5 * scale
    tips = [_tubercle(bench, v, [1.5, 0.0, 0.0]) for v in levels]
    side = np.linspace(1.0, -1.0, 4 * per)
    ends = part_of_curve(target, 0.02, 0.98, 4 * per)
    paths = []
    for k, (place, end) in enumerate(zip(side, ends, strict=True)):
        slip, within = k // per, (k % per) / (per - 1) - 0.5
        start = tips[slip] + np.array([0.3, 1.4 * within, 2.8 * within])
        high = beside[0] + np.array([0.0, half[0] * place, 1.5 * place])
        low = beside[1] + np.array([0.0, half[1] * place, 0.0])
        # Each slip stays a strand of its own until it meets the others.
        free = tips[slip] + 0.5 * (high - tips[slip]) + np.array([2.5, 2.5 * within, 3.0 * within])
        # The lower slips come out behind scalenus medius, which takes the same tubercles.
        free += np.array([0.0, 1.2 * slip, 0.8 * slip]) * scale
        turn = 0.52 * low + 0.48 * end + np.array([0.5, 0.0, 2.5]) * scale
        paths.append(np.array([start, free, high, low, turn, end]))
    grid = np.stack([fan_grid([path], 1, along)[0] for path in paths])
    peak = _thick(bench, "levator_scapulae")
    u = np.linspace(0, 1, along)
    swell = np.interp(u, [0, 0.12, 0.3, 0.5, 0.72, 1.0], [0.42, 0.45, 0.6, 1.0, 0.95, 0.3])
    # Round slips above, one rounded strap below.
    slip_round = np.tile(1 - 0.35 * np.linspace(-1, 1, per) ** 2, 4)[:, None]
    strap_round = 0.6 + 0.4 * np.sqrt(np.clip(1 - side**4, 0, 1))[:, None]
    one = _smooth((u - 0.2) / 0.25)
    thickness = peak * swell * ((1 - one) * slip_round + one * strap_round)
    grid = smooth_grid(lift_grid(bench.field, grid, 0.5 * thickness, ends=0.0), 1)
    lay_fan(
        bench, "levator_scapulae", grid, thickness,
        [End(f"vertebra_{v}", grid[k * per : (k + 1) * per, 0]) for k, v in enumerate(levels)],
        [End("scapula.left", target)], triangles=(3600, 900), spacing=(1.3, 1.8),
        tendon=(0.1, 0.07), least_width=1.6, led=grid[per // 2 :: per],
    )  # fmt: skip


def lay_trapezius(bench: Workbench) -> None:
    """Lay trapezius as one sheet and part it into its three named parts.

    Gray 1918 (as recalled): protuberance, medial third of the superior nuchal
    line, nuchal ligament, spines C7-T12 to the lateral third of the clavicle,
    acromion and spine of the scapula; the ascending fibres end by a triangular
    aponeurosis on the medial end of the spine.
    """
    lowest = 10 if bench.body.trapezius_to_T10 else 12
    line = part_of_curve(bench.landmark("occipital.left.superior_nuchal_line"), 0.30, 0.03, 8)
    line = line + 0.6 * radial(bench)(line)
    ligament = nuchal_edge(bench, 0.96, 0.10, 16, x=0.7) + [0, 1.2, 0]
    middle_levels = ["C7", "T1", "T2", "T3"]
    lower_levels = [f"T{i}" for i in range(4, lowest + 1)]
    middle, lower = _spines(bench, middle_levels), _spines(bench, lower_levels)
    # Over the upper corner of latissimus, which takes the same spines further in.
    lower = lower + [0.0, 0.8, 0.0]
    clavicle = part_of_curve(bench.landmark("clavicle.left.posterior_border"), 0.66, 0.97, 10)
    clavicle = clavicle + [0.0, 0.5, 0.8]
    acromion = bench.landmark("scapula.left.acromion_medial_margin")
    if acromion[0, 1] > acromion[-1, 1]:
        acromion = acromion[::-1]
    # Behind the outer end of the clavicle, which lies between the two.
    acromion = part_of_curve(acromion, 0.6, 0.95, 8) + [-0.4, 0.0, 0.8]
    lip = bench.landmark("scapula.left.spine_crest_upper_lip")
    lip = lip[np.argsort(-lip[:, 0])]
    lower_lip = bench.landmark("scapula.left.spine_crest_lower_lip")
    lower_lip = lower_lip[np.argsort(-lower_lip[:, 0])]
    spine_part = part_of_curve(lip, 0.04, 0.70, 16) + [0.0, 0.3, 0.8]
    # The aponeurosis of the ascending part lies on the smooth triangle at the root: its upper
    # fibres come from the midline to the upper lip, its lowest from below to the lower lip.
    on_spine = [(lip, 0.74), (lip, 0.83), (lip, 0.92), (lower_lip, 0.96), (lower_lip, 0.92),
                (lower_lip, 0.88)]  # fmt: skip
    apex = np.concatenate([part_of_curve(c, share, share + 1e-3, 1) for c, share in on_spine])
    apex = part_of_curve(apex, 0.0, 1.0, 12)
    tubercle_part = bench.index("scapula.left").signed_distance(apex + [0, 6.0, 0])[1]
    tubercle_part = tubercle_part + [0.0, 0.9, 0.0]
    full = bench.full
    rows = (24, 16, 22) if full else (12, 8, 11)
    origin = np.concatenate([
        joined([line, ligament], rows[0]),
        _even(np.concatenate([ligament[-1:], middle, lower[:1]]), rows[1] + 2)[1:-1],
        _even(lower, rows[2]),
    ])  # fmt: skip
    insertion = np.concatenate([
        _even(clavicle, rows[0]),
        joined([acromion, spine_part], rows[1]),
        _even(tubercle_part, rows[2]),
    ])  # fmt: skip
    across, along = sum(rows), 44 if full else 24
    v = np.linspace(0, 1, across)
    # Thickness across, from the skull (thin) over the root of the neck (thick) to the lower tip.
    first, second = (rows[0] - 0.5) / across, (rows[0] + rows[1] - 0.5) / across
    peaks = [_thick(bench, f"trapezius_{p}") for p in ("descending", "transverse", "ascending")]
    crest = np.interp(
        v, [0, 0.12, first * 0.75, first + 0.08, second + 0.05, 0.85, 1.0],
        [1.2, 0.45 * peaks[0], peaks[0], peaks[1], peaks[2], 0.7 * peaks[2], 1.0],
    )  # fmt: skip
    u = np.linspace(0, 1, along)
    # The tendinous diamond: longest about C7, short at both ends of the origin.
    diamond = 0.05 + 0.20 * np.exp(-(((v - first - 0.06) / 0.09) ** 2))
    lower_tip = 0.05 + 0.12 * np.clip((v - 0.85) / 0.15, 0, 1)
    start = np.maximum(diamond, lower_tip)
    end = np.where(v > second, 0.12, 0.03)
    rise = _smooth((u[None] - start[:, None]) / 0.22)
    fall = _smooth((1 - u[None] - end[:, None]) / 0.18)
    thickness = 0.8 + np.maximum(crest - 0.8, 0)[:, None] * np.sqrt(rise * fall)
    sheet = lay_sheet(
        origin, insertion, bench.field, thickness,
        along=along, across=across, outward=_neck_and_back(bench), border_tension=(0.03, 0.06),
        iterations=260, ramp=2.5,
    )  # fmt: skip
    angle = bench.landmark("scapula.left.superior_angle")
    sheet = _in_the_collar(bench, sheet, first, float(angle[2]))
    names = ("descending", "transverse", "ascending")
    pieces = (
        (
            [End("cranium", line), End("nuchal_ligament", ligament)],
            [End("clavicle.left", clavicle)],
        ),
        (
            _ends(middle_levels, middle),
            [End("scapula.left", np.concatenate([acromion, spine_part]))],
        ),
        (_ends(lower_levels, lower), [End("scapula.left", tubercle_part)]),
    )
    ids = bench.near_ids(sheet.mid, 6.0)
    own_ends = fixed_to([e for p in pieces for e in p[0]], [e for p in pieces for e in p[1]], ())
    laid = sheet
    sheet = clear_sheet(bench, sheet, ids, own_ends, outermost=True, outward=_neck_and_back(bench))
    sheet = flat_beside_spines(bench, laid, sheet, ids)
    bounds = [0, rows[0], rows[0] + rows[1], across]

    def pale(row0: int, row1: int):
        def share(uu, vv):
            place = (row0 + np.asarray(vv) * (row1 - row0)) / max(across - 1, 1)
            a, b = np.interp(place, v, start), np.interp(place, v, end)
            return np.maximum(1 - _smooth((uu - 0.6 * a) / (0.5 * a)),
                              1 - _smooth((1 - uu - 0.6 * b) / (0.5 * b)))  # fmt: skip

        return share

    for k, name in enumerate(names):
        first_row, last_row = bounds[k], bounds[k + 1]
        own = _rows(sheet, first_row, min(last_row + 1, across), shrink=(k > 0, k < 2))
        contacts = []
        if k:
            spines = [middle, lower[:1]] if k == 1 else [middle[-1:], lower]
            contacts.append(at_ligament(f"trapezius_{name}.left", np.concatenate(spines)))
        if k < 2:
            shared = sheet.mid[last_row]
            contacts.append(
                Contact(f"trapezius_{name}.left", f"trapezius_{names[k + 1]}.left", "abut", shared)
            )
        put_sheet(
            bench, f"trapezius_{name}", own, *pieces[k], resolve=False, contacts=contacts,
            tendon=pale(first_row, last_row),
        )  # fmt: skip


def _in_the_collar(bench: Workbench, sheet: SheetGrid, first: float, floor: float) -> SheetGrid:
    """Trapezius as the investing fascia holds it against the neck above a height, mm.

    first : share of its fibres that belong to the descending part.
    """
    v = np.linspace(0, 1, len(sheet.mid))[:, None]
    z = sheet.mid[..., 2]
    hold = _smooth((z - floor - 8.0) / 54.0) * _smooth((first + 0.14 - v) / 0.14)
    reach = np.minimum(arc_length(sheet.mid), arc_length(sheet.mid[:, ::-1])[:, ::-1])
    hold *= _smooth(reach / 12.0)
    need = 0.5 * sheet.thickness + 0.4
    box = sheet.mid[hold > 0]
    held_by = collar(bench, _COLLAR_MM * bench.frame.scale, box.min(0), box.max(0))
    return replace(sheet, mid=held_down(sheet.mid, held_by, bench.field, need, hold))


def _rows(sheet: SheetGrid, first: int, last: int, shrink: tuple[bool, bool]) -> SheetGrid:
    """Rows of a sheet, drawn in by a hair at borders it shares with its neighbour."""
    mid = sheet.mid[first:last].copy()
    thickness = sheet.thickness[first:last].copy()
    for flag, edge, inner in ((shrink[0], 0, 1), (shrink[1], -1, -2)):
        if flag:
            step = mid[inner] - mid[edge]
            length = np.maximum(np.linalg.norm(step, axis=1, keepdims=True), 1e-6)
            # The rim bulges by about half the thickness: draw in by that and a hair.
            room = np.minimum(0.30 * thickness[edge][:, None] + 0.15, 0.8 * length)
            mid[edge] += step / length * room
    return replace(sheet, mid=mid, thickness=thickness, cells=None)


def _even(curve: np.ndarray, count: int) -> np.ndarray:
    return part_of_curve(curve, 0.0, 1.0, count)


def _on_fascia(bench: Workbench, places: list[tuple[float, float]]) -> np.ndarray:
    """Points (n, 3) on the posterior layer of the thoracolumbar fascia at (x, z), mm."""
    x, z = np.array(places).T
    low, high = (x.min() - 3.0, z.min() - 3.0), (x.max() + 3.0, z.max() + 3.0)
    fascia = Relief.of(bench, ["thoracolumbar_fascia_posterior.left"], low, high)
    return np.stack([x, fascia.at(x, z) + 0.5, z], axis=1)


def _smooth(x: np.ndarray) -> np.ndarray:
    x = np.clip(x, 0, 1)
    return x * x * (3 - 2 * x)


def _neck_and_back(bench: Workbench):
    """Outward directions for trapezius: away from the neck above, upward over the shoulder."""
    around = radial(bench)
    top = float(bench.landmark("scapula.left.superior_angle")[2])

    def direction(points: np.ndarray) -> np.ndarray:
        away = around(points)
        # Over the supraspinous fossa and the root of the neck the sheet faces upward as well.
        lift = np.clip((points[..., 0] - 25.0) / 60.0, 0, 1) * np.clip(
            (points[..., 2] - top + 40.0) / 40.0, 0, 1
        )
        away[..., 2] += 0.9 * lift
        return away / np.maximum(np.linalg.norm(away, axis=-1, keepdims=True), 1e-9)

    return direction


def lay_latissimus(bench: Workbench) -> None:
    """Lay latissimus dorsi from its fascial origin to the floor of the intertubercular sulcus.

    Gray 1918 (as recalled): spines T7-T12 (through the fascia also the lumbar
    and sacral), posterior part of the iliac crest, lower three or four ribs; it
    winds round the lower border of teres major to the front of it.
    """
    fascia = "thoracolumbar_fascia_posterior.left"
    levels = ["T7", "T8", "T9", "T10", "T11"]
    spines = _spines(bench, levels, x=1.0) + [0.0, 0.6, 0.0]
    # Its aponeurosis, the outer lamina of the fascia, goes on to the midline of loin and sacrum.
    lumbar = [float(bench.landmark(f"{v}.spinous_process")[2]) for v in ("T12", *LUMBAR)]
    sacral = [float(bench.landmark(f"S{i}.median_crest")[2]) for i in (1, 2, 3)]
    end = float(bench.landmark("S4.median_crest")[2]) + 4.0
    midline = _on_fascia(bench, [(1.4, z) for z in (*lumbar, *sacral, end)])
    crest = bench.landmark("ilium.left.crest")
    on_crest = part_of_curve(crest, 0.09, 0.37, 12)
    on_crest = on_crest + 0.8 * radial(bench)(on_crest) + [0, 0, 0.8]
    # Its lower edge follows that of the fascia under it, up the side of the sacrum to the crest.
    heights = end + (on_crest[0, 2] - end) * np.array([0.0, 0.2, 0.4, 0.6, 0.8, 0.9])
    beside = bench.gutter.edge(heights) - np.linspace(1.5, 4.0, len(heights))
    lower_edge = _on_fascia(bench, list(zip(beside, heights, strict=True)))
    floor = bench.landmark("humerus.left.intertubercular_floor")
    # Slips of three fibres each on the lower ribs, in front of the last fibre from the crest.
    slip = 3 if bench.full else 2
    ribs = _latissimus_slips(bench, on_crest[-1], floor.mean(axis=0), slip)
    main, along = (40, 60) if bench.full else (20, 48)
    across = main + slip * len(ribs)
    # Each piece keeps its corners, however few the fibres.
    body = joined([np.concatenate([spines, midline, lower_edge]), on_crest], main)
    origin = np.concatenate([body, *[c for _, c in ribs]])
    gaps = [0.15, 0.14, 0.12, 0.10][: len(ribs)]
    cells = slip_cells(across, along, [main, *[slip] * len(ribs)], gaps, end="origin")
    # The sheet turns over: upper fibres end lowest, the lateral ones highest.
    insertion = part_of_curve(floor, 0.56, 0.17, across)
    guide = _latissimus_guide(bench, insertion)
    v = np.linspace(0, 1, across)
    u = np.linspace(0, 1, along)
    way = np.stack([origin, *guide.values(), insertion], axis=1)
    reach = np.linalg.norm(np.diff(way, axis=1), axis=2)
    white = _white_share(bench, origin, guide[0.45], reach[:, 0] / reach.sum(axis=1))
    peak = _thick(bench, "latissimus_dorsi")
    crest_v = np.interp(
        v, [0, 0.1, 0.5, 0.85, 1.0], [1.5, 0.6 * peak, peak, 1.1 * peak, 0.7 * peak]
    )
    rise = _smooth((u[None] - 0.85 * white[:, None]) / 0.26)
    fall = _smooth((1 - u) / 0.25)
    thickness = 0.8 + np.maximum(crest_v[:, None] - 0.8, 0) * np.sqrt(rise * fall[None])
    sheet = lay_sheet(
        origin, insertion, bench.field, thickness, along=along, across=across,
        guide=guide, outward=_round_teres(bench), border_tension=(-0.06, 0.01), iterations=300,
        bow_limit=30.0, cells=cells,
    )  # fmt: skip
    # Gray 1918 p. 434 (as recalled): the lower border of its tendon is united with teres major.
    united = sheet.mid[:3, -(along // 8) :].reshape(-1, 3)

    def pale(uu: np.ndarray, vv: np.ndarray) -> np.ndarray:
        start = np.interp(vv, v, white)
        return np.maximum(1 - _smooth((uu - 0.86 * start) / (0.07 + 0.22 * start)),
                          1 - _smooth((1 - uu - 0.05) / 0.12))  # fmt: skip

    put_sheet(
        bench, "latissimus_dorsi", sheet,
        [*_ends(levels, spines), End(fascia, midline), End("hip_bone.left", on_crest),
         *[End(f"rib_{n}.left", c) for n, c in ribs]],
        [End("humerus.left", insertion)],
        tendon=pale, fibres=24, outermost=True, from_spines=True,
        contacts=[Contact("latissimus_dorsi.left", "teres_major.left", "blend", united),
                  at_ligament("latissimus_dorsi.left", np.concatenate([spines, midline]))],
    )  # fmt: skip


def _white_share(
    bench: Workbench, origin: np.ndarray, through: np.ndarray, at: np.ndarray
) -> np.ndarray:
    """Share of each fibre, (n,), that is aponeurosis: up to where the flesh begins.

    origin, through : (n, 3) float
        Where each fibre starts, and a place on its way, mm.
    at : (n,) float
        Share of its length at which it passes there.
    """
    # The flesh begins further out with every lumbar level (common practice, no source).
    edge = (("T7", 4.0), ("T11", 9.0), ("T12", 14.0), ("L1", 34.0), ("L2", 50.0), ("L3", 57.0),
            ("L4", 61.0), ("L5", 74.0))  # fmt: skip
    z = np.array([bench.frame[level].centre[2] for level, _ in edge])
    x = np.array([out for _, out in edge]) * bench.frame.scale
    t = np.linspace(0, 1, 80)
    path = origin[:, None] + t[None, :, None] * (through - origin)[:, None]
    beyond = path[..., 0] > np.interp(path[..., 2], z[::-1], x[::-1])
    first = np.where(beyond.any(axis=1), beyond.argmax(axis=1), len(t) - 1)
    return np.maximum(at * t[first], 0.04)


def _round_teres(bench: Workbench):
    """Outward directions for latissimus: away from the trunk, then away from teres major."""
    around, roll = radial(bench, 10.0), TeresRoll.of(bench)

    def direction(points: np.ndarray) -> np.ndarray:
        flat = np.reshape(points, (-1, 3))
        away, holds = roll.outward(flat)
        mixed = (1 - holds)[:, None] * around(flat) + holds[:, None] * away
        mixed /= np.maximum(np.linalg.norm(mixed, axis=1, keepdims=True), 1e-9)
        return mixed.reshape(np.shape(points))

    return direction


def _latissimus_slips(
    bench: Workbench, crest_end: np.ndarray, arm_end: np.ndarray, count: int
) -> list[tuple[int, np.ndarray]]:
    """Rib number and points (count, 3) of each costal slip, mm, lowest first.

    A slip starts where its rib comes out in front of the border that runs from
    the crest to the arm; ribs that end behind it (often the twelfth) are only
    overlain. Three or four lower ribs (Gray 1918, as recalled).
    """
    slips = []
    for number in (12, 11, 10, 9):
        shaft = bench.landmark(f"rib_{number}.left.shaft")
        fine = part_of_curve(shaft, 0.2, 0.97, 80)
        along = (fine[:, 2] - crest_end[2]) / (arm_end[2] - crest_end[2])
        border_y = crest_end[1] + along * (arm_end[1] - crest_end[1])
        # Each slip comes out in front of the one below, so that no fibre crosses another.
        clear = (4.0 + 10.0 * len(slips)) * bench.frame.scale
        free = np.flatnonzero(fine[:, 1] < border_y - clear)
        if len(free) == 0 or free[0] + 5 >= len(fine):
            continue
        curve = part_of_curve(fine[free[0] : free[0] + 5], 0.0, 1.0, count)
        slips.append((number, curve + 0.8 * radial(bench)(curve)))
    return slips


def _latissimus_guide(bench: Workbench, insertion: np.ndarray) -> dict[float, np.ndarray]:
    """Curves through which the sheet passes on its way round teres major to the humerus."""
    angle = bench.landmark("scapula.left.inferior_angle")
    shaft = bench.landmark("rib_7.left.shaft")
    wall = shaft[int(np.argmax(shaft[:, 0]))]
    # Upper border over the inferior angle; lateral border on the side wall of the chest.
    over = np.linspace(0, 1, 5)[:, None]
    upper = angle + [4.0, 9.0, 18.0]
    outer = wall + [16.0, 6.0, 0.0]
    curve = (1 - over) * upper + over * outer + np.sin(np.pi * over) * [6.0, 14.0, 0.0]
    roll = TeresRoll.of(bench)
    across = len(insertion)
    guide = {0.45: _even(curve, across)}
    v = np.linspace(0, 1, across)
    for u, along, first, last, lift in (
        (0.68, (0.42, 0.62), 75.0, 150.0, 3.0),
        (0.82, (0.70, 0.82), 125.0, 185.0, 2.2),
    ):
        share = along[0] + v * (along[1] - along[0])
        guide[u] = roll.at(share, np.radians(first + v * (last - first)), lift)
    # Over the crest on which teres major ends, to the sulcus beside it.
    crest = bench.landmark("humerus.left.lesser_tubercle_crest")
    order = np.argsort(crest[:, 2])
    lip = np.stack([np.interp(insertion[:, 2], crest[order, 2], crest[order, k]) for k in range(3)])
    guide[0.94] = lip.T + [-5.0, -2.5, 0.0]
    return guide


@dataclass(frozen=True, eq=False)
class TeresRoll:
    """Teres major as a roll round which latissimus winds.

    Angles go round its long axis: 0 on its outer face (back and outward), a
    quarter turn on its lower border, half a turn on its front face.

    Attributes
    ----------
    start, stop : (3,) float
        Ends of the axis, scapula first, mm.
    outer, lower : (3,) float
        Unit vectors square to the axis.
    surface : MeshIndex
    """

    start: np.ndarray
    stop: np.ndarray
    outer: np.ndarray
    lower: np.ndarray
    surface: MeshIndex

    @classmethod
    def of(cls, bench: Workbench) -> TeresRoll:
        """Return the roll of the body on the bench."""
        fibres = bench.parts["teres_major.left"].fibres
        start, stop = fibres[:, 0].mean(axis=0), fibres[:, -1].mean(axis=0)
        axis = (stop - start) / np.linalg.norm(stop - start)
        up = np.array([0.0, 0.0, 1.0]) - axis[2] * axis
        up /= np.linalg.norm(up)
        outer = np.cross(axis, up)
        if outer[0] < 0:
            outer = -outer
        return cls(start, stop, outer, -up, bench.index("teres_major.left"))

    def at(self, share: np.ndarray, angle: np.ndarray, lift: float) -> np.ndarray:
        """Points (n, 3) at shares of the axis and angles (n,), ``lift`` mm off the muscle."""
        centre = self.start + np.asarray(share)[:, None] * (self.stop - self.start)
        way = np.cos(angle)[:, None] * self.outer + np.sin(angle)[:, None] * self.lower
        far = np.full(len(centre), 60.0)
        for _ in range(20):
            height = self.surface.signed_distance(centre + far[:, None] * way)[0] - lift
            far -= np.clip(height, -5.0, 20.0)
        return centre + far[:, None] * way

    def outward(self, points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Directions (n, 3) away from the axis, and how much (n,) of the roll holds there, 0-1."""
        axis = self.stop - self.start
        length = np.linalg.norm(axis)
        axis = axis / length
        from_start = points - self.start
        along = from_start @ axis
        away = from_start - along[:, None] * axis
        size = np.linalg.norm(away, axis=1)
        holds = _smooth((along / length - 0.25) / 0.25) * _smooth((55.0 - size) / 20.0)
        return away / np.maximum(size, 1e-9)[:, None], holds
