"""The muscles round the scapula that a dissector of the back sees at the edge."""

from __future__ import annotations

import numpy as np

from meshes.drape.field import Field
from meshes.drape.sheet import belly_profile, lay_sheet, slip_cells
from meshes.shapes.solid import Solid
from meshes.soft.sheets import End, part_of_curve, put_sheet, radial
from meshes.soft.small import lay_small, resample
from meshes.soft.workbench import Workbench

_UP = np.array([0.0, 0.0, 1.0])


def lay_serratus_anterior(bench: Workbench) -> None:
    """Lay serratus anterior on the chest wall, in front of the scapula.

    Ribs 1-8 (9) to the costal face of the medial border (Gray 1918, as recalled).
    """
    chest = Field(bench.field.origin, bench.field.upper, bench.field.spacing)
    for part_id in bench.parts:
        if part_id.startswith(("rib_", "external_intercostal", "costal_cartilage")):
            chest.add_mesh(bench.index(part_id))
    for name, sheet in bench.sheets.items():
        if name.startswith(("external_intercostal", "serratus_posterior")):
            chest.add_sheet(sheet.outer(), depth=7.0, outward=radial(bench))
    numbers = list(range(1, 9))
    slips = []
    for number in numbers:
        shaft = bench.landmark(f"rib_{number}.left.shaft")
        share = float(np.interp(number, [1, 2, 4, 6, 8], [0.45, 0.58, 0.70, 0.74, 0.72]))
        curve = part_of_curve(shaft, share + 0.035, share - 0.035, 4)
        slips.append(curve + 0.8 * radial(bench)(curve))
    border = part_of_curve(bench.landmark("scapula.left.medial_border_costal"), 0.03, 0.97, 40)
    border = border + [0.6, -1.2, 0.0]
    across, along = (40, 40) if bench.full else (24, 20)
    per = [across // 8] * 8
    cells = slip_cells(across, along, per, 0.22, end="origin")
    sheet = lay_sheet(
        slips, border, chest,
        belly_profile(5.0 * bench.body.muscle_bulk, tendon=(0.04, 0.04), edge=0.7),
        along=along, across=across, outward=radial(bench), border_tension=0.0, cells=cells,
        bow_limit=25.0,
    )  # fmt: skip
    put_sheet(
        bench, "serratus_anterior", sheet,
        [End(f"rib_{n}.left", c) for n, c in zip(numbers, slips, strict=True)],
        [End("scapula.left", border)], tendon=(0.03, 0.03), slab_mm=6.0,
    )  # fmt: skip


def _belly(
    bench: Workbench,
    entry: str,
    strands: list[tuple[np.ndarray, float, float]],
    ends: tuple[str, str],
    side,
    *,
    triangles=(2200, 380),
    spacing=(1.4, 2.4),
    tendon=(0.05, 0.12),
    taper=(0.5, 0.4),
    region: str = "shoulder",
    blend: float = 4.0,
) -> None:
    """Lay a fleshy muscle made of a few strands (path, full width, full thickness)."""
    solid, lines = Solid(), []
    for path, width, thickness in strands:
        path = resample(np.asarray(path, float), 9)
        u = np.linspace(0, 1, 9)
        swell = np.interp(u, [0, 0.25, 0.6, 1.0], [taper[0], 0.95, 1.0, taper[1]])
        solid.sweep(path, side, 0.5 * width * swell, 0.5 * thickness * swell, blend=blend)
        lines.append(path)
    lay_small(bench, f"{entry}.left", entry, solid, lines, ends, triangles=triangles,
              spacing=spacing, tendon=tendon, region=region)  # fmt: skip


def lay_scapular_muscles(bench: Workbench) -> None:
    """Lay supraspinatus, infraspinatus, teres minor and major and the long head of triceps.

    Attachments after Gray 1918 (as recalled).
    """
    bulk = bench.body.muscle_bulk * bench.frame.scale
    mark = bench.landmark
    border = mark("scapula.left.medial_border")
    lateral = mark("scapula.left.lateral_border")
    lower_lip = mark("scapula.left.spine_crest_lower_lip")
    upper_lip = mark("scapula.left.spine_crest_upper_lip")
    superior = mark("scapula.left.superior_border")
    root = mark("scapula.left.root_of_spine")
    angle = mark("scapula.left.inferior_angle")
    back = np.cross(mark("scapula.left.glenoid_centre") - root, angle - root)
    back = back / np.linalg.norm(back)
    if back[1] < 0:
        back = -back
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(border, axis=0), axis=1).cumsum()])
    at_root = float(s[int(np.argmin(np.linalg.norm(border - root, axis=1)))] / s[-1])

    def on(curve, share):
        return part_of_curve(curve, share, share + 1e-3, 2)[0]

    upper_ordered = upper_lip[np.argsort(upper_lip[:, 0])]
    lower_ordered = lower_lip[np.argsort(lower_lip[:, 0])]
    superior_ordered = superior[np.argsort(superior[:, 0])]

    # Supraspinatus fills its fossa and passes under the acromion.
    strands = []
    for share, width in ((0.3, 15.0), (0.7, 14.0)):
        path = []
        for along in (0.06, 0.3, 0.55, 0.75):
            a = on(superior_ordered, min(along * 1.05, 1.0))
            b = on(upper_ordered, along * 0.75)
            path.append(a + share * (b - a) + back * 3.0 + _UP * 2.0)
        top = mark("humerus.left.greater_tubercle_superior")
        glenoid = mark("scapula.left.supraglenoid_tubercle")
        path.append(glenoid + [2.0, 4.0 + 3.0 * share, 10.0])
        path.append(top + [0.0, 2.0, 1.5])
        strands.append((np.array(path), width * bulk, 16.0 * bulk))
    _belly(bench, "supraspinatus", strands, ("scapula.left", "humerus.left"),
           [0.0, 1.0, 0.3], tendon=(0.03, 0.2), taper=(0.6, 0.35))  # fmt: skip

    # Teres minor along the lateral border, below infraspinatus.
    inferior = mark("humerus.left.greater_tubercle_inferior")
    path = [on(lateral, q) + back * 5.0 + [1.0, 0, 0] for q in (0.32, 0.55, 0.8)]
    path += [
        mark("scapula.left.infraglenoid_tubercle") + back * 13.0 + [14.0, 0, 12.0],
        inferior + [0, 2.5, -1.0],
    ]
    _belly(bench, "teres_minor", [(np.array(path), 15.0 * bulk, 11.0 * bulk)],
           ("scapula.left", "humerus.left"), [0, 0, 1.0], tendon=(0.05, 0.15))  # fmt: skip

    # Infraspinatus: a fan from the fossa to the middle facet.
    middle = mark("humerus.left.greater_tubercle_middle")
    strands = []
    for share in (0.08, 0.3, 0.52, 0.74, 0.92):
        start = on(border, at_root + 0.03 + share * (0.90 - at_root)) + [3.0, 0, 0]
        waist = 0.45 * on(lower_ordered, 0.75) + 0.55 * on(lateral, 0.82)
        waist = waist + (share - 0.5) * (on(lateral, 0.82) - on(lower_ordered, 0.75)) * 0.75
        path = np.array([
            start + back * 2.0,
            0.55 * start + 0.45 * waist + back * 7.0,
            waist + back * 8.0,
            middle + [-9.0, 11.0, -4.0 + 6.0 * (0.5 - share)],
            middle + [0.0, 2.0, -1.0 + 3.0 * (0.5 - share)],
        ])  # fmt: skip
        strands.append((path, 25.0 * bulk, 14.0 * bulk))
    _belly(bench, "infraspinatus", strands, ("scapula.left", "humerus.left"),
           [0.2, 0.0, 1.0], triangles=(3600, 600), tendon=(0.03, 0.15), taper=(0.8, 0.3),
           blend=6.0)  # fmt: skip

    # Teres major from the inferior angle to the front of the humerus.
    crest = mark("humerus.left.lesser_tubercle_crest")
    crest_ordered = crest[np.argsort(-crest[:, 2])]
    strands = []
    for share in (0.25, 0.75):
        start = on(lateral, 0.06 + 0.22 * (1 - share)) + back * 5.0
        through = on(lateral, 0.5) + np.array([26.0, 0.0, -24.0 - 10.0 * share])
        end = on(crest_ordered, 0.25 + 0.4 * share) + [-3.0, 2.0, 0.0]
        path = np.array([start, 0.6 * start + 0.4 * through + back * 3.0, through,
                         0.45 * through + 0.55 * end + [0.0, 1.0, -1.0], end])  # fmt: skip
        strands.append((path, 22.0 * bulk, 17.0 * bulk))
    _belly(bench, "teres_major", strands, ("scapula.left", "humerus.left"),
           [0.0, 0.2, 1.0], triangles=(2600, 420), taper=(0.6, 0.45), blend=6.0)  # fmt: skip

    infra = mark("scapula.left.infraglenoid_tubercle")
    tuberosity = mark("humerus.left.deltoid_tuberosity")
    head = mark("humerus.left.head_centre")
    down = tuberosity - head
    down = down / np.linalg.norm(down)
    path = [infra + [1.5, 2.0, -2.0], infra + [14.0, 12.0, -26.0]]
    for q in (60.0, 95.0, 125.0):
        path.append(head + down * q * bench.frame.scale + [-6.0, 21.0, 0.0])
    _belly(bench, "triceps_brachii_long_head", [(np.array(path), 24.0 * bulk, 15.0 * bulk)],
           ("scapula.left", "humerus.left"), [1.0, 0, 0.3], tendon=(0.12, 0.02), taper=(0.3, 0.95))  # fmt: skip


def lay_deltoid(bench: Workbench) -> None:
    """Lay deltoid from clavicle, acromion and spine to its tuberosity."""
    mark = bench.landmark
    clavicle = part_of_curve(mark("clavicle.left.anterior_border"), 0.68, 0.97, 8)
    acromion = mark("scapula.left.acromion_lateral_margin")
    if acromion[0, 1] > acromion[-1, 1]:
        acromion = acromion[::-1]
    lip = mark("scapula.left.spine_crest_lower_lip")
    lip = part_of_curve(lip[np.argsort(-lip[:, 0])], 0.06, 0.86, 10)
    pieces = [("clavicle.left", clavicle + [0, -0.6, 0.3]), ("scapula.left", acromion + [0.6, 0, -0.4]),
              ("scapula.left", lip + [0, 0.6, -0.8])]  # fmt: skip
    origin = np.concatenate([p for _, p in pieces])
    tuberosity = mark("humerus.left.deltoid_tuberosity")
    head = mark("humerus.left.head_centre")
    axis = tuberosity - head
    axis = axis / np.linalg.norm(axis)
    front = np.array([0.3, -1.0, 0.0])
    out = np.cross(axis, [0, 1.0, 0])
    out = out / np.linalg.norm(out)
    if out[0] < 0:
        out = -out
    # A V-shaped end: front fibres on its front limb, rear fibres on its rear limb.
    v = np.linspace(-1, 1, 9)[:, None]
    insertion = tuberosity + out * 1.2 + v * np.array([0, 5.0, 0]) - axis * (10.0 * np.abs(v))
    del front

    def outward(points):
        p = np.asarray(points, float)
        t = np.clip((p - head) @ axis, -10.0, None)
        away = p - (head + t[..., None] * axis) + 0.15 * out * 10
        return away / np.maximum(np.linalg.norm(away, axis=-1, keepdims=True), 1e-9)

    across, along = (36, 30) if bench.full else (16, 16)
    sheet = lay_sheet(
        origin, insertion, bench.field,
        belly_profile(13.0 * bench.body.muscle_bulk * bench.frame.scale, tendon=(0.03, 0.08),
                      at=0.4, edge=0.5),
        along=along, across=across, outward=outward, border_tension=(0.0, 0.0),
    )  # fmt: skip
    put_sheet(
        bench, "deltoid", sheet, [End(i, c) for i, c in pieces],
        [End("humerus.left", insertion)], tendon=(0.02, 0.1), slab_mm=10.0,
    )  # fmt: skip


def lay_neck_front(bench: Workbench) -> None:
    """Lay sternocleidomastoid and the scalenes, which bound the neck in front."""
    bulk = bench.body.muscle_bulk * bench.frame.scale
    mark = bench.landmark
    jobs = (
        ("scalenus_anterior", ("C3", "C4", "C5", "C6"), "anterior_tubercle", 1, 0.42, 9.0, 7.0),
        ("scalenus_medius", ("C3", "C4", "C5", "C6", "C7"), "posterior_tubercle", 1, 0.26, 11.0, 9.0),
        ("scalenus_posterior", ("C5", "C6"), "posterior_tubercle", 2, 0.24, 9.0, 7.0),
    )  # fmt: skip
    for entry, levels, key, rib, share, width, thick in jobs:
        shaft = mark(f"rib_{rib}.left.shaft")
        end = part_of_curve(shaft, share, share + 0.01, 2)[0]
        strands = []
        for level in levels:
            start = mark(f"{level}.left.{key}") + [1.5, 0, -1.0]
            bow = 0.5 * (start + end) + [4.0, 0, 0]
            strands.append(
                (
                    np.array([start, bow, end + [0.5, 0, 1.5]]),
                    width * bulk * 0.8,
                    thick * bulk * 0.8,
                )
            )
        _belly(bench, entry, strands, (f"vertebra_{levels[0]}", f"rib_{rib}.left"), [0, 1.0, 0],
               triangles=(1400, 260), spacing=(1.2, 2.0), tendon=(0.1, 0.1), taper=(0.5, 0.5),
               region="neck")  # fmt: skip


def lay_sternocleidomastoid(bench: Workbench) -> None:
    """Lay sternocleidomastoid, sternal and clavicular heads as one belly."""
    bulk = bench.body.muscle_bulk * bench.frame.scale
    mark = bench.landmark
    tip = mark("temporal.left.mastoid_tip")
    outer = mark("temporal.left.mastoid_outer")
    line = part_of_curve(mark("occipital.left.superior_nuchal_line"), 0.72, 1.0, 4)
    notch = mark("sternum.left.clavicular_notch")
    clavicle = part_of_curve(mark("clavicle.left.anterior_border"), 0.04, 0.26, 4)
    tops = [tip + [2.5, -1.0, 1.0], outer.mean(0) + [3.0, 1.0, 0.0], line.mean(0) + [2.0, 2.0, 0.0]]
    bottoms = [
        notch + [-5.0, -6.0, 3.0],
        clavicle[0] + [0, -2.0, 4.0],
        clavicle[-1] + [0, -1.0, 4.0],
    ]
    strands = []
    for top, bottom in zip(tops, bottoms, strict=True):
        u = np.linspace(0, 1, 7)[:, None]
        path = (1 - u) * bottom + u * top
        path += np.sin(np.pi * u) * np.array([9.0, 1.0, 0.0]) * bench.frame.scale
        strands.append((path, 18.0 * bulk, 10.0 * bulk))
    _belly(bench, "sternocleidomastoid", strands, ("sternum", "cranium"), [0.2, 1.0, 0.5],
           triangles=(2400, 400), tendon=(0.1, 0.06), taper=(0.4, 0.6), region="neck")  # fmt: skip
