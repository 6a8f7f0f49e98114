"""The muscles round the scapula that a dissector of the back sees at the edge."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np
from scipy.ndimage import maximum_filter, zoom
from scipy.spatial import cKDTree

from meshes.drape.distance import MeshIndex
from meshes.drape.field import Field
from meshes.drape.several import Several
from meshes.drape.sheet import arc_length, belly_profile, lay_sheet, slip_cells
from meshes.soft.fan import fan_grid, fan_thickness, lay_fan, lift_grid, smooth_grid
from meshes.soft.sheets import End, part_of_curve, put_sheet, radial
from meshes.soft.small import resample
from meshes.soft.workbench import Workbench

_UP = np.array([0.0, 0.0, 1.0])


def lay_serratus_anterior(bench: Workbench) -> None:
    """Lay serratus anterior on the chest wall, in front of the scapula.

    Ribs 1-8 (9) to the costal face of the medial border (Gray 1918, as recalled).
    """
    out = _off_the_chest(bench)
    chest = Field(bench.field.origin, bench.field.upper, bench.field.spacing)
    wall = ("rib_", "external_intercostal", "costal_cartilage", "serratus_posterior_superior")
    ground = [bench.index(part_id) for part_id in bench.parts if part_id.startswith(wall)]
    for part_id in bench.parts:
        if part_id.startswith(wall[:3]):
            chest.add_mesh(bench.index(part_id))
    for name, sheet in bench.sheets.items():
        if name.startswith("serratus_posterior"):
            chest.add_sheet(sheet.outer(), depth=7.0, outward=out)
    numbers = list(range(1, 9))
    each = 5 if bench.full else 4
    slips = []
    for number in numbers:
        shaft = bench.landmark(f"rib_{number}.left.shaft")
        share = float(np.interp(number, [1, 2, 4, 6, 8], [0.45, 0.58, 0.70, 0.74, 0.72]))
        curve = part_of_curve(shaft, share - 0.04, share + 0.04, each)
        # From the upper border behind to the lower one in front: its fibres run across the line.
        oblique = 3.5 * bench.frame.scale if number > 1 else 0.0
        curve[:, 2] += np.linspace(oblique, -oblique, each)
        rib = bench.index(f"rib_{number}.left")
        slips.append(rib.signed_distance(curve + 4.0 * out(curve))[1] + 0.4 * out(curve))
    across, along = each * len(numbers), 24 if bench.full else 16
    # Slips 1-2 reach the upper angle, 3-4 most of the border, 5-8 gather at the lower angle.
    edge = bench.landmark("scapula.left.medial_border_costal")
    shares = np.interp(np.linspace(0, 1, across), [0, 0.25, 0.5, 1.0], [0.03, 0.14, 0.76, 0.97])
    border = np.concatenate([part_of_curve(edge, s, s + 1e-3, 1) for s in shares])
    border = border + [0.6, -1.8, 0.0]
    cells = slip_cells(across, along, [each] * len(numbers), 0.22, end="origin")
    sheet = lay_sheet(
        np.concatenate(slips), border, chest, belly_profile(6.5 * bench.body.muscle_bulk, tendon=(0.02, 0.03), edge=0.7),
        along=along, across=across, outward=out, border_tension=0.0, cells=cells,
        bow_limit=25.0,
    )  # fmt: skip
    # Each slip lies on its rib before it takes it, and not half within it.
    thick = np.minimum(sheet.thickness, 1.2 + 0.22 * arc_length(sheet.mid))
    grid = _outward(ground, sheet.mid, 0.5 * thick + 0.4, out)
    cells = _parted(cells, grid, thick)
    put_sheet(
        bench, "serratus_anterior", replace(sheet, mid=grid, thickness=thick, cells=cells),
        [End(f"rib_{n}.left", c) for n, c in zip(numbers, slips, strict=True)],
        [End("scapula.left", border)], tendon=(0.015, 0.03), resolve=False,
    )  # fmt: skip


def _off_the_chest(bench: Workbench) -> Callable[[np.ndarray], np.ndarray]:
    """Outward directions of the chest wall: level below, upward over the first ribs."""
    level = radial(bench)
    heights = [float(bench.landmark(f"rib_{n}.left.shaft")[:, 2].mean()) for n in (5, 3, 2, 1)]

    def direction(points: np.ndarray) -> np.ndarray:
        way = level(points)
        way[..., 2] = np.interp(np.asarray(points)[..., 2], heights, [0.0, 0.3, 0.7, 1.6])
        return way / np.linalg.norm(way, axis=-1, keepdims=True)

    return direction


def _parted(cells: np.ndarray, grid: np.ndarray, thickness: np.ndarray) -> np.ndarray:
    """Close those cells between slips again where there is no room for two rounded borders."""
    apart = np.linalg.norm(grid[1:] - grid[:-1], axis=-1)
    room = apart > 1.2 * np.maximum(thickness[1:], thickness[:-1]) + 1.0
    wide = room[:, :-1] & room[:, 1:]
    # Once two slips have met they stay together.
    return cells | ~np.logical_and.accumulate(wide, axis=1)


def _outward(
    ground: Sequence[MeshIndex],
    grid: np.ndarray,
    need: np.ndarray,
    out: Callable,
    most: float = 9.0,
) -> np.ndarray:
    """Bring a grid of fibres (nv, nu, 3) outward until it lies ``need`` (nv, nu) mm off meshes."""
    nv, nu = need.shape
    # Half-way between fibres and points as well: a rib is narrower than the grid is wide.
    fine, wanted = (
        zoom(grid, (2 - 1 / nv, 2 - 1 / nu, 1), order=1),
        zoom(need, (2 - 1 / nv, 2 - 1 / nu), order=1),
    )
    way = out(fine.reshape(-1, 3)).reshape(fine.shape)
    step = np.arange(0.0, most, 0.25)
    places = fine[..., None, :] + step[:, None] * way[..., None, :]
    room = Several(ground).least(places.reshape(-1, 3), 6.0, 6.0).reshape(places.shape[:3])
    # Past the last place that is not free.
    lift = np.where(room >= wanted[..., None], 0.0, step + 0.25).max(axis=-1)
    lift = maximum_filter(lift, 3)[::2, ::2]
    # The ends themselves stay on their bones.
    lift[:, [0, -1]] = np.minimum(lift[:, [0, -1]], 0.8)
    even = lift.copy()
    for _ in range(2):
        even[:, 1:-1] = 0.25 * even[:, :-2] + 0.5 * even[:, 1:-1] + 0.25 * even[:, 2:]
        even[:, 1:-1] = np.maximum(even, lift)[:, 1:-1]
    return grid + even[..., None] * way[::2, ::2]


def _belly(
    bench: Workbench,
    entry: str,
    paths: list[np.ndarray],
    thickness: float,
    ends: tuple[Sequence[str], Sequence[str]],
    *,
    across: int = 7,
    along: int = 10,
    triangles=(2400, 420),
    spacing=(1.8, 2.4),
    tendon=(0.05, 0.12),
    taper=(0.5, 0.4),
    edge: float = 0.6,
    at: float = 0.5,
    region: str = "shoulder",
    least_width: float = 2.5,
    lifted: float = 0.0,
    smoothing: int = 5,
) -> None:
    """Lay a fleshy muscle as a fan between a few fibre paths.

    It is fullest at share ``at`` of its length; ``lifted`` is the share of half its thickness
    by which the fibres keep off what is laid.
    """
    grid = fan_grid(paths, across, along)
    thick = fan_thickness(across, along, thickness, taper, edge, at)
    if lifted:
        grid = smooth_grid(lift_grid(bench.field, grid, 0.5 * lifted * thick, ends=0.3), 1)
    first, last = grid[:, 0], grid[:, -1]
    lay_fan(bench, entry, grid, thick,
            [End(i, first) for i in ends[0]], [End(i, last) for i in ends[1]],
            triangles=triangles, spacing=spacing, tendon=tendon, region=region,
            least_width=least_width, smoothing=smoothing)  # fmt: skip


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

    # In the plane of the blade, square to its lateral border, away from the blade.
    across_border = np.cross(on(lateral, 0.9) - on(lateral, 0.1), back)
    across_border = across_border / np.linalg.norm(across_border)
    if across_border[0] < 0:
        across_border = -across_border

    upper_ordered = upper_lip[np.argsort(upper_lip[:, 0])]
    lower_ordered = lower_lip[np.argsort(lower_lip[:, 0])]
    superior_ordered = superior[np.argsort(superior[:, 0])]

    # Round the head of the humerus, which the cuff's tendons wrap: at heights z, angles from
    # straight back (0) towards the outer side, `room` mm off the cartilage.
    head = mark("humerus.left.head_centre")
    ball = float(np.linalg.norm(mark("humerus.left.anatomical_neck_inferior") - head))

    def round_head(degrees: float, z: float, room: float) -> np.ndarray:
        level = np.sqrt(max((ball + room) ** 2 - (z - head[2]) ** 2, (0.4 * ball) ** 2))
        way = np.radians(degrees)
        return np.array([head[0] + level * np.sin(way), head[1] + level * np.cos(way), z])

    # Supraspinatus fills its fossa and passes under the acromion.
    top = mark("humerus.left.greater_tubercle_superior")
    glenoid = mark("scapula.left.supraglenoid_tubercle")
    paths = []
    for share in (0.0, 0.33, 0.67, 1.0):
        path = []
        for along in (0.03, 0.3, 0.55, 0.78):
            a = on(superior_ordered, min(along * 1.05, 1.0))
            b = on(upper_ordered, along * 0.86)
            # Within the groove between blade and spine, its face level with the lip.
            open_face = np.cross(b - a, glenoid - on(superior_ordered, 0.0))
            open_face *= np.sign(open_face[2]) / np.linalg.norm(open_face)
            wide = 0.86 if along < 0.6 else 0.74
            deep = (4.5 * np.sin(np.pi * share) - 4.0 - 4.0 * (along > 0.6)) * bench.frame.scale
            path.append(a + (0.07 + wide * share) * (b - a) - deep * open_face)
        path.append(glenoid + [2.0, 12.0 * (share - 0.25), 3.5])
        path.append(0.45 * glenoid + 0.55 * top + [0.0, 8.0 * (share - 0.5), 5.0])
        path.append(top + [-0.5, 8.0 * (share - 0.5), 0.5])
        paths.append(np.array(path))
    _belly(bench, "supraspinatus", paths, 27.0 * bulk, (["scapula.left"], ["humerus.left"]),
           across=9, along=14, triangles=(2800, 900),
           spacing=(1.6, 1.7), tendon=(0.0, 0.25), taper=(0.6, 0.14), edge=0.35, at=0.28)  # fmt: skip

    # Teres minor along the lateral border, below infraspinatus, to the lowest facet.
    inferior = mark("humerus.left.greater_tubercle_inferior")
    infra = mark("scapula.left.infraglenoid_tubercle")
    paths = []
    for side in (-1.0, 0.0, 1.0):
        path = [on(lateral, q) + back * 5.5 + across_border * (4.5 * side - 4.0)
                for q in (0.34, 0.58, 0.82)]  # fmt: skip
        # Below the head's equator, above the surgical neck.
        low = head[2] - (6.0 + 4.0 * side) * bench.frame.scale
        path.append(0.5 * (infra + round_head(-8.0, low, 5.0)) + back * 4.0)
        path.append(round_head(28.0, low + 1.0, 4.0))
        path.append(round_head(62.0, 0.5 * (low + inferior[2]), 3.5))
        path.append(inferior + [0.5, 1.5, -1.0 - 3.0 * side])
        paths.append(np.array(path))
    _belly(bench, "teres_minor", paths, 13.0 * bulk, (["scapula.left"], ["humerus.left"]),
           across=6, along=16, tendon=(0.05, 0.18), taper=(0.5, 0.36), edge=0.7,
           spacing=(1.6, 1.8), triangles=(2400, 640), lifted=1.0, smoothing=7)  # fmt: skip

    # Infraspinatus: a fan from the fossa to the middle facet, below the lower lip.
    middle = mark("humerus.left.greater_tubercle_middle")
    neck_top, neck_low = on(lower_ordered, 0.78), on(lateral, 0.86)
    paths = []
    for share in (0.02, 0.25, 0.5, 0.75, 0.98):
        # The smooth triangle at the root of the spine stays free for trapezius.
        start = on(border, at_root + 0.10 + share * (0.82 - at_root)) + [4.0, 0, 0]
        if share > 0.9:
            start = on(lateral, 0.14) - across_border * 13.0
        waist = (1 - share) * (neck_top + [0, 0, -12.5]) + share * (neck_low - across_border * 14.0)
        waist = waist + back * (1.0 + 6.0 * share)
        z = middle[2] + (4.0 - 9.0 * share) * bench.frame.scale
        path = np.array([
            start + back * 1.5,
            0.55 * start + 0.45 * waist + back * (2.5 + 3.5 * share),
            waist + back * (1.0 + 3.0 * share),
            round_head(18.0, z, 5.0),
            round_head(58.0, 0.5 * (z + middle[2]), 4.0),
            middle + [0.5, 2.0, 0.5 + 7.0 * (0.5 - share)],
        ])  # fmt: skip
        paths.append(path)
    _belly(bench, "infraspinatus", paths, 20.0 * bulk, (["scapula.left"], ["humerus.left"]),
           across=19, along=18, triangles=(4400, 800), tendon=(0.0, 0.2), taper=(0.34, 0.26), edge=0.35,
           lifted=0.8, smoothing=7)  # fmt: skip

    # Teres major from the back of the inferior angle to the front of the humerus.
    crest = mark("humerus.left.lesser_tubercle_crest")
    crest_ordered = crest[np.argsort(-crest[:, 2])]
    paths = []
    for share in (0.0, 0.5, 1.0):
        start = on(lateral, 0.30 - 0.26 * share) + back * 5.0 - across_border * (3.0 + 4.0 * share)
        end = on(crest_ordered, 0.2 + 0.5 * share) + [-3.0, 2.0, 0.0]
        bow = np.array([4.0, 9.0, -9.0])
        paths.append(np.array([start, 0.7 * start + 0.3 * end + 0.8 * bow,
                               0.35 * start + 0.65 * end + bow, end]))  # fmt: skip
    _belly(bench, "teres_major", paths, 19.0 * bulk, (["scapula.left"], ["humerus.left"]),
           triangles=(3000, 520), taper=(0.6, 0.35), edge=0.7)  # fmt: skip

    tuberosity = mark("humerus.left.deltoid_tuberosity")
    down = tuberosity - head
    down = down / np.linalg.norm(down)
    paths = []
    for side in (-1.0, 1.0):
        path = [infra + [1.5, 2.0, -2.0 - 2.0 * side]]
        for q in (72.0, 100.0, 125.0):
            path.append(head + down * q * bench.frame.scale + [-6.0 + 8.0 * side, 25.0, 0.0])
        paths.append(np.array(path))
    _belly(bench, "triceps_brachii_long_head", paths, 15.0 * bulk, (["scapula.left"], []),
           across=4, tendon=(0.12, 0.02), taper=(0.4, 0.95))  # fmt: skip


def lay_deltoid(bench: Workbench) -> None:
    """Lay deltoid: a cap from clavicle, acromion and spine over the head to its tuberosity."""
    mark = bench.landmark
    scale = bench.frame.scale
    clavicle = part_of_curve(mark("clavicle.left.anterior_border"), 0.68, 0.97, 8)
    acromion = mark("scapula.left.acromion_lateral_margin")
    if acromion[0, 1] > acromion[-1, 1]:
        acromion = acromion[::-1]
    lip = mark("scapula.left.spine_crest_lower_lip")
    lip = part_of_curve(lip[np.argsort(-lip[:, 0])], 0.04, 0.74, 10)
    # From the edges themselves: the bone then trims its flesh to a clean line.
    pieces = [("clavicle.left", clavicle + [0, -0.6, -0.6]), ("scapula.left", acromion + [0.5, 0, -1.5]),
              ("scapula.left", lip + [0, 3.2, -0.6])]  # fmt: skip
    across, along = (30, 16) if bench.full else (26, 14)
    origin = resample(np.concatenate([p for _, p in pieces]), across)
    tuberosity = mark("humerus.left.deltoid_tuberosity")
    head = mark("humerus.left.head_centre")
    axis = tuberosity - head
    axis = axis / np.linalg.norm(axis)
    out = np.cross(axis, [0, 1.0, 0])
    out = out / np.linalg.norm(out)
    if out[0] < 0:
        out = -out
    # A V-shaped end: front fibres on its front limb, rear fibres on its rear limb.
    v = np.linspace(-1, 1, across)[:, None]
    insertion = tuberosity + out * 1.0 + v * np.array([0, 6.5, 0]) - axis * (20.0 * np.abs(v))
    u = np.linspace(0, 1, along)
    grid = (1 - u)[None, :, None] * origin[:, None] + u[None, :, None] * insertion[:, None]
    # Over the head and the muscles on it the fibres run on a rounded cap about the shaft.
    along_shaft = (grid - head) @ axis
    foot = head + np.clip(along_shaft, 0.0, None)[..., None] * axis
    away = grid - foot
    distance = np.linalg.norm(away, axis=-1)
    radius = (
        np.interp(along_shaft / scale, [-40, 0, 40, 80, 130], [38.0, 42.0, 33.0, 23.0, 12.0])
        * scale
    )
    lateral = np.clip((away @ out) / np.maximum(distance, 1e-9), -1, 1)
    wanted = np.maximum(distance, radius * np.clip(0.55 + 0.75 * lateral, 0, 1.0))
    hold = np.sin(np.pi * np.clip(u, 0, 1)) ** 0.4
    shift = (wanted / np.maximum(distance, 1e-9) - 1)[..., None] * away
    grid = grid + hold[None, :, None] * shift
    # The spinal part lies behind infraspinatus and teres minor, its border all but straight.
    rear = np.clip((np.linspace(0, 1, across) - 0.55) / 0.25, 0, 1)[:, None, None]
    grid = grid + rear * np.sin(np.pi * u)[None, :, None] * np.array([4.0, 16.0, 0.0]) * scale
    thickness = fan_thickness(across, along, 17.0 * bench.body.muscle_bulk * scale, (0.34, 0.3),
                              edge=0.55, at=0.45)  # fmt: skip
    grid = smooth_grid(grid, 3)
    for _ in range(2):
        grid = smooth_grid(_backward(bench.field, grid, 0.5 * thickness + 2.6, rear[..., 0]), 3)
    grid = smooth_grid(lift_grid(bench.field, grid, 0.5 * thickness + 1.0, ends=0.4), 1)
    # Quite off the axillary nerve, which runs on its deep face and never within it.
    grid = _off(bench.index("axillary_nerve.left"), grid, 0.5 * thickness + 1.4, head, axis)
    lay_fan(
        bench, "deltoid", grid, thickness, [End(i, c) for i, c in pieces],
        [End("humerus.left", insertion)], triangles=(5200, 1200), spacing=(2.4, 2.3),
        tendon=(0.02, 0.1), region="shoulder", gap=1.1, smoothing=9,
    )  # fmt: skip


def _backward(field: Field, grid: np.ndarray, need: np.ndarray, share: np.ndarray) -> np.ndarray:
    """Fibres (nv, nu, 3) brought out backward, not forward, until nothing lies behind them.

    Parameters
    ----------
    field : Field
    need : (nv, nu) float
        Distance to keep, mm.
    share : (nv, 1) float
        How much of the way each fibre goes, 0 to 1.
    """
    step = np.arange(0.0, 45.0, 1.5)
    way = grid[..., None, :] + step[:, None] * np.array([0.25, 0.97, 0.0])
    free = field.sample(way.reshape(-1, 3)).reshape(way.shape[:3]) >= need[..., None]
    # Past the last place that is not free.
    last = np.where(free, 0.0, step).max(axis=-1)
    last[:, [0, -1]] = 0.0
    return grid + (share * last)[..., None] * np.array([0.25, 0.97, 0.0])


def _off(
    nerve: MeshIndex, grid: np.ndarray, room: np.ndarray, head: np.ndarray, axis: np.ndarray
) -> np.ndarray:
    """Fibres (nv, nu, 3) lifted away from the shaft until a nerve lies under all of them."""
    points = nerve.vertices
    along = (points - head) @ axis
    far = np.linalg.norm(points - head - along[:, None] * axis, axis=1)
    foot = head + ((grid - head) @ axis)[..., None] * axis
    away = grid - foot
    distance = np.linalg.norm(away, axis=-1, keepdims=True)
    way = away / np.maximum(distance, 1e-9)
    gap, nearest = cKDTree(points).query(grid.reshape(-1, 3))
    gap = gap.reshape(grid.shape[:2])
    lack = far[nearest].reshape(grid.shape[:2]) + room - distance[..., 0]
    # A smooth bulge round the nerve, no crease along it.
    share = np.clip(1.0 - (gap - room - 4.0) / 45.0, 0.0, 1.0)
    lift = np.maximum(lack, 0.0) * share * share * (3.0 - 2.0 * share)
    lift[:, [0, -1]] = 0.0
    return grid + lift[..., None] * way


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
        paths = []
        for level in levels:
            # A little below and before the tip, which levator scapulae takes.
            start = mark(f"{level}.left.{key}") + [1.2, -0.8, -1.6]
            bow = 0.5 * (start + end) + [4.0, 0, 0]
            spread = np.array([0.0, 1.5 * (len(paths) - 0.5 * (len(levels) - 1)), 0.0])
            paths.append(np.array([start, bow + spread, end + [0.5, 0, 1.5] + spread]))
        _belly(bench, entry, paths, thick * bulk,
               ([f"vertebra_{level}" for level in levels], [f"rib_{rib}.left"]),
               across=2 * len(levels) - 1, triangles=(1400, 260), spacing=(1.6, 2.0),
               tendon=(0.1, 0.1), taper=(0.5, 0.5), region="neck",
               least_width=0.4 * width * bulk)  # fmt: skip


def lay_sternocleidomastoid(bench: Workbench) -> None:
    """Lay sternocleidomastoid, sternal and clavicular heads as one belly."""
    bulk = bench.body.muscle_bulk * bench.frame.scale
    mark = bench.landmark
    tip = mark("temporal.left.mastoid_tip")
    outer = mark("temporal.left.mastoid_outer")
    line = part_of_curve(mark("occipital.left.superior_nuchal_line"), 0.72, 1.0, 4)
    notch = mark("sternum.left.clavicular_notch")
    clavicle = part_of_curve(mark("clavicle.left.anterior_border"), 0.03, 0.18, 4)
    tops = [tip + [1.0, -1.0, 1.0], outer.mean(0) + [2.0, 1.0, 0.0], line.mean(0) + [2.0, 2.0, 0.0]]
    bottoms = [
        notch + [-5.0, -6.0, 3.0],
        clavicle[0] + [0, -2.0, 4.0],
        clavicle[-1] + [0, -1.0, 4.0],
    ]
    paths = []
    bows = ([-3.0, 0.0, 0.0], [-6.0, 3.0, 0.0], [-9.0, 7.0, 0.0])
    for top, bottom, bow in zip(tops, bottoms, bows, strict=True):
        u = np.linspace(0, 1, 7)[:, None]
        path = (1 - u) * bottom + u * top
        # The investing fascia holds it in: the neck is narrower than the head.
        path += np.sin(np.pi * u) * np.array(bow) * bench.frame.scale
        paths.append(path)
    # The middle fibres lie between the two heads, which part only in the lower third.
    grid = fan_grid(
        [paths[0], 0.5 * (paths[0] + paths[1]), 0.5 * (paths[1] + paths[2]), paths[2]], 10, 14
    )
    middle_of_heads = np.where(np.arange(10) < 4, 0, 9)
    pull = np.clip(1 - np.linspace(0, 1, 14) / 0.34, 0, 1)[None, :, None] * 0.55
    grid = (1 - pull) * grid + pull * grid[middle_of_heads]
    lay_fan(bench, "sternocleidomastoid", grid,
            fan_thickness(10, 14, 11.0 * bulk, (0.5, 0.55), edge=0.65),
            [End("sternum", grid[:4, 0]), End("clavicle.left", grid[5:, 0])],
            [End("cranium", grid[:, -1])], triangles=(3000, 560), spacing=(1.5, 2.4),
            tendon=(0.1, 0.06), region="neck")  # fmt: skip
