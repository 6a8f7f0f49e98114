"""The wall in front of the deep muscles: intercostals, quadratus lumborum, psoas, middle layer."""

from __future__ import annotations

import numpy as np

from meshes.drape.distance import MeshIndex
from meshes.drape.resolve import resolve_sheet
from meshes.drape.sheet import SheetGrid
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import LUMBAR
from meshes.soft.fan import fan_grid, fan_thickness, lay_fan
from meshes.soft.gutter import make_gutter
from meshes.soft.relief import Relief, raised
from meshes.soft.sheets import End, part_of_curve, put_sheet, radial
from meshes.soft.small import lay_small
from meshes.soft.workbench import Workbench

_TUBES = ("nerve", "artery", "vein")
_QUADRATUS_ON_CREST = (0.38, 0.24)
"""Shares of the iliac crest from the posterior spine between which quadratus lumborum stands."""
_OVER_CREST_MM = 4.0
"""How far above the iliac crest the middle layer begins."""


def lay(bench: Workbench) -> None:
    """Lay external intercostals, psoas, quadratus lumborum and the middle layer of the fascia."""
    bench.gutter = make_gutter(bench)
    lay_external_intercostals(bench)
    lay_psoas(bench)
    lay_quadratus_lumborum(bench)
    lay_middle_layer(bench)


def lay_external_intercostals(bench: Workbench) -> None:
    """Fill each space between two ribs; fibres run down and forward (seen behind: down and out).

    From the tubercle to near the end of the bony rib (Gray 1918, as recalled).
    """
    outward = radial(bench)
    for number in range(1, 12):
        upper = bench.landmark(f"rib_{number}.left.lower_border")
        lower = bench.landmark(f"rib_{number + 1}.left.upper_border")
        last = 0.93 if number < 10 else (0.80 if number == 10 else 0.62)
        across = 34 if bench.full else 16
        top = part_of_curve(upper, 0.03, last, across)
        bottom = part_of_curve(lower, 0.03, 1.0, 200)
        # The fibre's lower end lies further forward than its upper end by about the space's height.
        ends = []
        for i, point in enumerate(top):
            way = top[min(i + 1, across - 1)] - top[max(i - 1, 0)]
            way = way / max(np.linalg.norm(way), 1e-9)
            near = bottom[np.argmin(np.linalg.norm(bottom - point, axis=1))]
            height = np.linalg.norm(near - point)
            slant = 0.7 * min(i / (0.15 * across), 1.0)
            ends.append(
                int(np.argmin(np.linalg.norm(bottom - (near + slant * height * way), axis=1)))
            )
        ends = np.maximum.accumulate(ends).astype(float)
        # No two fibres end at one point.
        apart = np.arange(across) * 0.3 * len(bottom) / across
        ends = np.minimum(np.maximum.accumulate(ends - apart) + apart, len(bottom) - 1.0)
        for _ in range(2):
            ends[1:-1] = 0.25 * ends[:-2] + 0.5 * ends[1:-1] + 0.25 * ends[2:]
        places = np.arange(len(bottom))
        foot = np.stack([np.interp(ends, places, bottom[:, i]) for i in range(3)], axis=1)
        # The borders stop a hair short of the ribs, so that the sheet lies flush between them.
        span = foot - top
        height = np.linalg.norm(span, axis=1, keepdims=True)
        short = np.minimum(1.0 / np.maximum(height, 1e-6), 0.3)
        u = np.linspace(0, 1, 5)
        share = short + u[None, :] * (1 - 2 * short)
        mid = top[:, None] + share[..., None] * span[:, None]
        away = outward(mid.reshape(-1, 3)).reshape(mid.shape)
        thickness = np.full(mid.shape[:2], 2.2 * bench.frame.scale)
        thickness[:, [0, -1]] = 1.2
        tubes = [bench.index(i) for i in bench.near_ids(mid, 2.0) if bench.parts[i].kind in _TUBES]
        ribs = [bench.index(i) for i in bench.near_ids(mid, 2.0) if i.startswith(("rib_", "vert"))]
        # The first ribs lie flat, their borders against the sheet.
        if number > 2:
            tubes += ribs
        mid = _lifted_over(mid, away, 0.5 * thickness + 0.25, tubes)
        sheet = SheetGrid(mid, thickness, None, 1)
        facing = float((sheet.normals() * away).sum())
        sheet = resolve_sheet(SheetGrid(mid, thickness, None, 1 if facing > 0 else -1), [])
        put_sheet(
            bench, "external_intercostal", sheet,
            [End(f"rib_{number}.left", top)], [End(f"rib_{number + 1}.left", foot)],
            part_id=f"external_intercostal_{number}.left", tendon=(0.05, 0.05), slab_mm=6.0,
            resolve=False,
        )  # fmt: skip


def _lifted_over(
    mid: np.ndarray, away: np.ndarray, clearance: np.ndarray, under: list[MeshIndex]
) -> np.ndarray:
    """Lift a grid outward over the tubes and bones under it, evenly.

    Parameters
    ----------
    mid, away : (across, along, 3) float
        Mid-surface, mm, and outward unit vectors.
    clearance : (across, along) float
        Wanted distance from the mid-surface, mm.
    under : list of MeshIndex

    Returns
    -------
    (across, along, 3) float
    """
    lift = np.zeros(mid.shape[:2])
    for _ in range(3):
        points = (mid + lift[..., None] * away).reshape(-1, 3)
        short = np.zeros(len(points))
        for index in under:
            low, high = index.bounds
            near = np.flatnonzero(np.all((points > low - 2.0) & (points < high + 2.0), axis=1))
            if len(near):
                distance = index.signed_distance(points[near], 4.0)[0]
                short[near] = np.maximum(short[near], clearance.ravel()[near] - distance)
        lift += np.clip(short, 0.0, 1.5).reshape(lift.shape)
    # What one fibre is lifted its neighbours follow by half.
    padded = np.pad(lift, ((1, 1), (0, 0)), mode="edge")
    lift = np.maximum(lift, 0.5 * np.maximum(padded[:-2], padded[2:]))
    return mid + lift[..., None] * away


def lay_psoas(bench: Workbench) -> None:
    """Lay psoas major beside the lumbar bodies, for orientation in sections."""
    scale, bulk = bench.frame.scale, bench.body.muscle_bulk
    path = []
    for level in ("T12", *LUMBAR):
        frame = bench.frame[level]
        grow = {"T12": 0.3, "L1": 0.45, "L2": 0.65, "L3": 0.85, "L4": 1.0, "L5": 1.08}[level]
        x = 0.5 * frame.width + (6.0 + 13.0 * grow) * scale
        path.append([*frame.to_model(np.array([x, -2.0 - 8.0 * grow, 0.0])), grow])
    head = bench.landmark("femur.left.head_centre")
    path.append([0.72 * head[0], head[1] - 34.0 * scale, head[2] + 40.0 * scale, 0.85])
    path.append([0.95 * head[0], head[1] - 34.0 * scale, head[2], 0.7])
    path = np.array(path)
    radius = 19.0 * scale * bulk * path[:, 3]
    solid = Solid().sweep(path[:, :3], [1.0, 0, 0], 0.95 * radius, 1.05 * radius)
    line = path[:, :3]
    lay_small(bench, "psoas_major.left", "psoas_major", solid, [line],
              ("vertebra_L1", "femur.left"), kind="context", triangles=(2400, 400),
              spacing=(2.0, 3.5), tendon=(0.02, 0.05), attach=False)  # fmt: skip


def lay_quadratus_lumborum(bench: Workbench) -> None:
    """Lay quadratus lumborum: crest and iliolumbar ligament to rib 12 and the transverse processes.

    Gray 1918 (as recalled).
    """
    bulk = bench.body.muscle_bulk * bench.frame.scale
    crest = bench.landmark("ilium.left.crest")
    lower = bench.landmark("rib_12.left.lower_border")
    starts = part_of_curve(crest, *_QUADRATUS_ON_CREST, 4) + [-3.0, -4.0, 0.0]
    # Innermost it stands on the iliolumbar ligament, not beside it.
    beside = bench.landmark("L5.left.transverse_process")
    starts[-1] = 0.62 * starts[-1] + 0.38 * beside + np.array([6.0, -3.0, 4.0]) * bench.frame.scale
    ends = part_of_curve(lower, 0.62, 0.16, 4) + [0, -6.0, -1.0]
    levels = ("L1", "L2", "L3", "L4")
    tips = np.array([bench.landmark(f"{v}.left.transverse_process") for v in levels])
    u = np.linspace(0, 1, 9)
    paths = []
    for start, end in zip(starts, ends, strict=True):
        line = (1 - u)[:, None] * start + u[:, None] * end
        # Behind psoas and in front of the middle layer.
        bed = bench.gutter.floor_at(line[:, 0], line[:, 2]) - 14.0 * bulk
        hold = np.clip(np.minimum(u, 1 - u) / 0.13, 0.0, 1.0)
        line[:, 1] = (1 - hold) * line[:, 1] + hold * np.minimum(line[:, 1], bed)
        paths.append(line)
    # The inner border touches the transverse processes, in front of the ligaments between them.
    order = np.argsort(tips[:, 2])
    inner, z = paths[-1], paths[-1][:, 2]
    inside = np.clip(np.minimum(u, 1 - u) / 0.2, 0, 1)
    for axis, shift in ((0, 5.0), (1, -5.9 - 3.3 * bulk)):
        at_tips = np.interp(z, tips[order, 2], tips[order, axis]) + shift
        inner[:, axis] = (1 - inside) * inner[:, axis] + inside * at_tips
    grid = fan_grid(paths, 9, 11)
    fixed_below = [End("hip_bone.left", grid[:, 0])]
    fixed_above = [End("rib_12.left", grid[:, -1])]
    fixed_above += [End(f"vertebra_{v}", t[None]) for v, t in zip(levels, tips, strict=True)]
    lay_fan(bench, "quadratus_lumborum", grid,
            fan_thickness(9, 11, 12.0 * bulk, (0.6, 0.45), edge=0.55), fixed_below, fixed_above,
            triangles=(2800, 480), spacing=(1.8, 2.6), tendon=(0.06, 0.05))  # fmt: skip


def lay_middle_layer(bench: Workbench) -> None:
    """Lay the middle layer of the thoracolumbar fascia between erector and quadratus."""
    gutter = bench.gutter
    across, along = (14, 44) if bench.full else (8, 16)
    low = float(bench.frame["L4"].centre[2]) - 12.0
    high = float(bench.frame["L1"].centre[2]) + 4.0
    levels = ("L1", "L2", "L3", "L4")
    tips = np.array([bench.landmark(f"{v}.left.transverse_process") for v in levels])
    order = np.argsort(tips[:, 2])
    s = np.linspace(0, 1, across)[:, None]
    # It ends below the last rib, which runs down and outward.
    rib = bench.landmark("rib_12.left.lower_border")
    rib = rib[np.argsort(rib[:, 0])]
    end = np.interp(high, tips[order, 2], tips[order, 0])
    end = end + s * (gutter.edge(np.array(high)) + 1.0 - end)
    top = np.minimum(high, np.interp(end, rib[:, 0], rib[:, 2]) - 5.0)
    # Below it reaches the iliolumbar ligament and the crest beside quadratus lumborum.
    foot = part_of_curve(bench.landmark("ilium.left.crest"), *_QUADRATUS_ON_CREST, 2)[0]
    inward = float(bench.landmark("L5.left.transverse_process")[2]) + 6.0 * bench.frame.scale
    sag = 8.0 * bench.frame.scale * np.sin(np.pi * s) ** 2
    bottom = np.minimum(low, inward + s * (foot[2] + _OVER_CREST_MM - inward) - sag)
    zz = bottom + np.linspace(0, 1, along)[None] * (top - bottom)
    inner = np.interp(zz, tips[order, 2], tips[order, 0]) - 1.0
    spread = np.clip((low + 12.0 - zz) / (low + 12.0 - bottom[-1]), 0.0, 1.0) ** 2
    edge = gutter.edge(np.maximum(zz, low)) + 1.0
    x = inner + s * (edge + spread * np.maximum(foot[0] - 9.0 - edge, 0.0) - inner)
    y = gutter.floor_at(x, np.maximum(zz, low)) - 5.8
    # Behind quadratus lumborum, and on to the tips of the transverse processes.
    corner = (float(x.min()) - 3.0, float(zz.min()) - 3.0), (float(x.max()) + 3.0, high + 3.0)
    front = Relief.of(bench, ["quadratus_lumborum.left"], *corner).at(x, zz)
    y = raised(y, front + 0.9)
    hold = np.clip(1 - (x - inner) / 8.0, 0, 1) ** 2
    y = (1 - hold) * y + hold * np.interp(zz, tips[order, 2], tips[order, 1])
    mid = np.stack([x, y, zz], axis=-1)
    sheet = SheetGrid(mid, np.full(x.shape, 0.8), None, 1)
    if float(sheet.normals()[..., 1].mean()) < 0:
        sheet = SheetGrid(mid, sheet.thickness, None, -1)
    put_sheet(
        bench, "thoracolumbar_fascia_middle", sheet,
        [End(f"vertebra_{v}", t[None]) for v, t in zip(levels, tips, strict=True)], [],
        kind="fascia", tendon=lambda a, b: np.ones_like(a), gap=0.15, slab_mm=6.0,
        attach_kind=("attach", "attach"), drawn_thicker=True, held_by_first_border=True,
    )  # fmt: skip
