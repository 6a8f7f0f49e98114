"""What lies in the vertebral canal: dura, arachnoid, cord, roots, ganglia, veins and fat."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import trimesh
from scipy.interpolate import CubicSpline

from meshes.model import Attachment, Contact, Part
from meshes.shapes.polyline import resample, thinned
from meshes.skeleton.frame import LEVELS
from meshes.soft.ligaments import advance, median, slab
from meshes.soft.tubes import (
    SEAM_MM,
    Branch,
    cleared,
    join,
    lay_tube,
    settle,
    smooth_course,
    tube,
    unite,
)
from meshes.soft.workbench import Workbench

DURA_MM = 0.6
"""Drawn thickness; the real dura has about half of it (common practice, no source)."""
ARACHNOID_MM = 0.4
SACK_END = "S2"
"""The sac ends most often at the middle third of S2 (Anat Res Int 2014:351769)."""
CONUS_END_SHARE = 0.83
"""Share of the body of L1 at which the conus ends: its lower third (Spine 1998, n = 504)."""
LIMIT_MM = 16.0

# Half widths and half depths of cord and dural sac by level, mm (common practice from
# imaging series; no single source).
_CORD = {
    "C1": (5.6, 4.4), "C3": (6.0, 4.1), "C5": (6.7, 4.0), "C7": (5.9, 3.7), "T2": (4.6, 3.5),
    "T7": (4.2, 3.4), "T10": (4.6, 3.6), "T12": (4.8, 4.0),
}  # fmt: skip
_SAC = {
    "C1": (10.0, 8.6), "C3": (9.2, 6.7), "C7": (9.0, 6.4), "T3": (7.4, 6.4), "T9": (7.3, 6.4),
    "T12": (8.4, 7.4), "L2": (8.6, 7.6), "L4": (8.4, 7.2), "L5": (8.0, 6.6), "S1": (6.2, 5.0),
    "S2": (3.4, 3.0),
}  # fmt: skip

# Where the segments of the cord lie, counted in vertebrae (C1 = 1, T1 = 8, L1 = 20):
# pairs of segment number (C1 = 1, T1 = 9, L1 = 21, S1 = 26) and vertebra number.
# Common practice, no source: the lag grows from none in the neck to three in the loin.
_SEGMENTS = np.array(
    [
        (1, 0.9), (4, 3.6), (8, 7.2), (9, 8.0), (12, 10.5), (16, 14.0), (20, 17.2),
        (21, 17.7), (25, 19.1), (26, 19.3), (30, 20.1),
    ]
)  # fmt: skip

NERVES = (
    *(f"C{i}" for i in range(1, 9)), *(f"T{i}" for i in range(1, 13)),
    *(f"L{i}" for i in range(1, 6)), *(f"S{i}" for i in range(1, 6)),
)  # fmt: skip
"""Spinal nerves from the head down (C8 has no vertebra of its own)."""


def nerve_range(first: str, last: str) -> list[str]:
    """Nerves from first to last, both included."""
    return list(NERVES[NERVES.index(first) : NERVES.index(last) + 1])


def foramen_of(nerve: str) -> str:
    """Landmark prefix of the foramen through which a nerve leaves: that below this vertebra."""
    if nerve == "C8":
        return "C7"
    if nerve[0] == "C":
        return f"C{int(nerve[1:]) - 1}"
    return nerve


@dataclass(frozen=True, slots=True, eq=False)
class Canal:
    """Cross-sections of the canal from the foramen magnum to S2.

    Attributes
    ----------
    centre, back, along : (n, 3) float
        Middle, direction to the back and direction downward at each station, mm.
    angles : (m,) float
        Directions in the section, radians from the back, positive to the left.
    free : (n, m) float
        Room to the first wall, at most LIMIT_MM, mm; the same on both sides.
    sac : (n, m) float
        Outer radius of the dura, mm.
    cord : (n, m) float
        Radius of the cord, mm; 0 below the conus.
    number : (n,) float
        Place counted in vertebrae (C1 = 1).
    """

    centre: np.ndarray
    back: np.ndarray
    along: np.ndarray
    angles: np.ndarray
    free: np.ndarray
    sac: np.ndarray
    cord: np.ndarray
    number: np.ndarray

    def ways(self) -> np.ndarray:
        """(n, m, 3) unit directions of the angles."""
        left = np.array([1.0, 0.0, 0.0])
        return (
            np.sin(self.angles)[None, :, None] * left
            + np.cos(self.angles)[None, :, None] * self.back[:, None]
        )

    def rings(self, radius: np.ndarray) -> np.ndarray:
        """(n, m, 3) points at a radius (n, m)."""
        return self.centre[:, None] + radius[..., None] * self.ways()

    def at(self, number: float, angle_deg: float, radius: float | None = None,
           share: float = 1.0, of: str = "sac") -> np.ndarray:  # fmt: skip
        """Point (3,) at a place along the canal.

        Parameters
        ----------
        number : float
            Place counted in vertebrae.
        angle_deg : float
            From the back, positive to the left.
        radius : float or None
            mm; None takes ``share`` of the radius of ``of``.
        """
        k = np.interp(number, self.number, np.arange(len(self.number)))
        i = min(int(k), len(self.number) - 2)
        t = k - i
        centre = (1 - t) * self.centre[i] + t * self.centre[i + 1]
        back = (1 - t) * self.back[i] + t * self.back[i + 1]
        if radius is None:
            table = getattr(self, of)
            row = (1 - t) * table[i] + t * table[i + 1]
            angle = np.deg2rad(angle_deg)
            radius = share * float(np.interp(angle, self.angles, row, period=2 * np.pi))
        a = np.deg2rad(angle_deg)
        return centre + radius * (np.sin(a) * np.array([1.0, 0, 0]) + np.cos(a) * back)


def lay(bench: Workbench) -> None:
    """Lay all contents of the canal."""
    canal = measure(bench)
    lay_meninges(bench, canal)
    lay_cord(bench, canal)
    lay_ganglia(bench, canal)
    lay_spinal_nerves(bench)
    lay_roots(bench, canal)
    lay_cauda_equina(bench, canal)
    lay_denticulate(bench, canal)
    lay_veins(bench, canal)
    lay_fat(bench, canal)


def _by_level(table: dict[str, tuple[float, float]], number: np.ndarray) -> np.ndarray:
    """(n, 2) values of a table at places counted in vertebrae."""
    names = [*LEVELS, "S1", "S2"]
    known = np.array([names.index(v) + 1 for v in table], float)
    values = np.array(list(table.values()))
    return np.stack([np.interp(number, known, values[:, i]) for i in (0, 1)], axis=1)


def measure(bench: Workbench) -> Canal:
    """Take sections of the canal and fit sac and cord into them."""
    names = [*LEVELS, "S1", "S2"]
    points = [median(bench.landmark("occipital.foramen_magnum").mean(0))]
    points += [median(bench.landmark(f"{v}.canal_centre")) for v in names]
    points = np.array(points)
    s = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=1))])
    spline = CubicSpline(s, points)
    step = 6.5 if bench.full else 15.0
    wanted = np.linspace(0, s[-1], int(s[-1] / step))
    centre = spline(wanted)
    centre[:, 0] = 0.0
    along = spline(wanted, 1)
    along[:, 0] = 0.0
    along /= np.linalg.norm(along, axis=1, keepdims=True)
    # Downward along the canal, the back lies where left x down points.
    back = np.cross(along, [1.0, 0.0, 0.0])
    back *= np.sign(back[:, 1])[:, None]
    number = np.interp(wanted, s, np.arange(len(points)))
    sides = 16 if bench.full else 10
    angles = 2 * np.pi * np.arange(sides) / sides
    walls = [
        bench.index(i)
        for i, part in bench.parts.items()
        if i.startswith(("vertebra_", "disc_", "ligamentum_flavum"))
        or i in ("sacrum", "cranium", "posterior_longitudinal_ligament")
        or i == "posterior_atlanto_occipital_membrane"
    ]
    scale = bench.frame.scale

    def room(middle: np.ndarray) -> np.ndarray:
        canal = Canal(middle, back, along, angles, *(np.zeros((len(middle), sides)),) * 3, number)
        way = canal.ways().reshape(-1, 3)
        start = np.repeat(middle, sides, axis=0)
        gone = advance(start, way, walls, 0.05, LIMIT_MM).reshape(len(middle), sides)
        return np.minimum(gone, gone[:, -np.arange(sides)])

    # The middle of the room in front and behind, so that the sac is not squeezed on one side.
    for _ in range(2):
        free = room(centre)
        ends = np.minimum(free[:, [0, sides // 2]], 10.0)
        ends = np.minimum.reduce([np.roll(ends, k, axis=0) for k in (-1, 0, 1)])
        shift = 0.5 * (ends[:, 0] - ends[:, 1])
        even = [0.1, 0.2, 0.4, 0.2, 0.1]
        shift = np.convolve(np.pad(shift, 2, mode="edge"), even, mode="valid")
        centre = centre + shift[:, None] * back
    free = room(centre)
    narrow = free.copy()
    narrow[1:] = np.minimum(narrow[1:], free[:-1] + 0.8)
    narrow[:-1] = np.minimum(narrow[:-1], free[1:] + 0.8)

    def ellipse(half: np.ndarray) -> np.ndarray:
        return 1.0 / np.hypot(
            np.sin(angles)[None] / half[:, :1], np.cos(angles)[None] / half[:, 1:]
        )

    # Veins run in front and at the sides of the sac, fat behind it.
    margin = 1.0 + 0.6 * np.clip(-np.cos(angles), 0, 1)
    sac = np.minimum(ellipse(_by_level(_SAC, number) * scale), narrow - margin)
    for _ in range(2):
        sac[:, :] = 0.5 * sac + 0.25 * (np.roll(sac, 1, axis=1) + np.roll(sac, -1, axis=1))
    sac[1:-1] = np.minimum(sac[1:-1], 0.25 * sac[:-2] + 0.5 * sac[1:-1] + 0.25 * sac[2:] + 0.2)
    sac = np.maximum(np.minimum(sac, narrow - 0.8), 2.4)
    end = 20.0 - 0.5 + CONUS_END_SHARE
    conus = np.clip((end - number) / (end - 18.9), 0, 1) ** 0.6
    cord = np.minimum(ellipse(_by_level(_CORD, number) * scale), sac - 1.8) * conus[:, None]
    return Canal(centre, back, along, angles, free, sac, np.maximum(cord, 0.0), number)


def _closed_rings(rings: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Closed mesh round stacked rings (n, m, 3) with a point at either end."""
    n, m = rings.shape[:2]
    first = rings[0].mean(0) + 0.3 * (rings[0].mean(0) - rings[1].mean(0))
    last = rings[-1].mean(0) + 0.3 * (rings[-1].mean(0) - rings[-2].mean(0))
    vertices = np.concatenate([rings.reshape(-1, 3), [first, last]])
    corner = np.arange(n * m).reshape(n, m)
    faces = [_wall(corner), _fan(corner[0], n * m, False), _fan(corner[-1], n * m + 1, True)]
    return vertices, _outward(vertices, np.concatenate(faces))


def _wall(corner: np.ndarray) -> np.ndarray:
    a, b = corner[:-1], np.roll(corner[:-1], -1, axis=1)
    c, d = np.roll(corner[1:], -1, axis=1), corner[1:]
    return np.concatenate(
        [np.stack([a, b, c], -1).reshape(-1, 3), np.stack([a, c, d], -1).reshape(-1, 3)]
    )


def _fan(ring: np.ndarray, pole: int, forward: bool) -> np.ndarray:
    a, b = (ring, np.roll(ring, -1)) if forward else (np.roll(ring, -1), ring)
    return np.stack([a, b, np.full(len(ring), pole)], -1)


def _outward(vertices: np.ndarray, faces: np.ndarray) -> np.ndarray:
    corners = (vertices - vertices.mean(0))[faces]
    volume = np.einsum("ij,ij->", corners[:, 0], np.cross(corners[:, 1], corners[:, 2]))
    return faces if volume > 0 else faces[:, ::-1]


def _cup(outer: np.ndarray, inner: np.ndarray, wall: float) -> tuple[np.ndarray, np.ndarray]:
    """Closed shell with a lumen, open at the first ring: rings (n, m, 3) outside and inside."""
    n, m = outer.shape[:2]
    down = outer[-1].mean(0) - outer[-2].mean(0)
    down /= np.linalg.norm(down)
    tip = outer[-1].mean(0) + 3.0 * down
    vertices = np.concatenate(
        [outer.reshape(-1, 3), inner.reshape(-1, 3), [tip, tip - 1.5 * wall * down]]
    )
    corner = np.arange(n * m).reshape(n, m)
    within = corner + n * m
    faces = [
        _wall(corner),
        _wall(within)[:, ::-1],
        _fan(corner[-1], 2 * n * m, True),
        _fan(within[-1], 2 * n * m + 1, True)[:, ::-1],
        _wall(np.stack([within[0], corner[0]])),
    ]
    return vertices, _outward(vertices, np.concatenate(faces))


def _finish(bench: Workbench, part_id: str, vertices, faces, *, thicker: bool = False,
            attachments: Sequence[Attachment] = (), contacts: Sequence[Contact] = (),
            fibres: np.ndarray | None = None, uv: np.ndarray | None = None,
            entry: str = "") -> Part:  # fmt: skip
    record = bench.catalogue[entry or part_id]
    part = Part(
        id=part_id, entry=entry or part_id, kind=record.kind, stratum=record.stratum,
        group=record.group, mesh=trimesh.Trimesh(vertices, faces, process=False), uv=uv,
        fibres=fibres, attachments=tuple(attachments), region=record.region,
        drawn_thicker=thicker,
    )  # fmt: skip
    return bench.add(part, contacts)


def lay_meninges(bench: Workbench, canal: Canal) -> None:
    """Lay the dura as a tube with a lumen down to S2, and the arachnoid within it."""
    outer = canal.sac
    for part_id, outside, wall in (
        ("spinal_dura_mater", outer, DURA_MM),
        ("spinal_arachnoid_mater", outer - DURA_MM - 0.15, ARACHNOID_MM),
    ):
        vertices, faces = _cup(canal.rings(outside), canal.rings(outside - wall), wall)
        _finish(bench, part_id, vertices, faces, thicker=True)


def lay_cord(bench: Workbench, canal: Canal) -> None:
    """Lay the cord with its two enlargements, the conus below it, and the filum."""
    rings = canal.rings(canal.cord)
    start = 19.3
    above = np.flatnonzero(canal.number < start)
    vertices, faces = _closed_rings(rings[above])
    fibre = canal.centre[above]
    _finish(bench, "spinal_cord", vertices, faces, fibres=fibre[None])
    tip_number = 20.0 - 0.5 + CONUS_END_SHARE
    # The conus starts where the cord stops and tapers to a point.
    count = 7 if bench.full else 4
    places = np.linspace(canal.number[above[-1]] + 0.06, tip_number, count)
    rows = []
    for place in places[:-1]:
        k = np.interp(place, canal.number, np.arange(len(canal.number)))
        i = min(int(k), len(canal.number) - 2)
        row = (1 - (k - i)) * rings[i] + (k - i) * rings[i + 1]
        middle = row.mean(0)
        # Rings near the end of the table collapse; keep a smooth taper.
        t = (place - places[0]) / (places[-1] - places[0])
        first = canal.cord[above[-1]] * (1 - 0.9 * t**1.6)
        way = (row - middle) / np.maximum(np.linalg.norm(row - middle, axis=1), 1e-9)[:, None]
        ways = canal.ways()[i]
        way = np.where(np.isfinite(way) & (np.abs(way) > 0), way, ways)
        rows.append(middle + first[:, None] * ways)
    vertices, faces = _closed_rings(np.array(rows))
    place = vertices[: len(canal.angles)]
    _finish(bench, "conus_medullaris", vertices, faces,
            contacts=[Contact("conus_medullaris", "spinal_cord", "abut", place)])  # fmt: skip
    tip = np.array(rows)[-1].mean(0)
    path = [tip + [0, 0, -1.5]]
    path += [canal.at(n, 0.0, 0.0) for n in (21.5, 22.5, 23.5, 24.5, 25.3, 26.0)]
    path += [median(bench.landmark(f"{v}.canal_centre")) for v in ("S3", "S4")]
    path.append(median(bench.landmark("sacrum.hiatus")) + [0, -2.0, 0.5])
    path.append(median(bench.landmark("coccyx.dorsum")) + [0, 1.4, 0])
    lay_tube(bench, "filum_terminale", "filum_terminale", np.array(path), 0.6,
             joins=("conus_medullaris",),
             pierces=("spinal_dura_mater", "spinal_arachnoid_mater"),
             triangles=(700, 160))  # fmt: skip


def outlet(bench: Workbench, canal: Canal, nerve: str) -> tuple[np.ndarray, np.ndarray]:
    """Centre of the ganglion of a nerve and the direction in which the nerve leaves."""
    if nerve[0] == "S":
        k = int(nerve[1:])
        upper = median(bench.landmark(f"S{k}.canal_centre"))
        lower = median(bench.landmark(f"S{k + 1}.canal_centre"))
        middle = 0.45 * upper + 0.55 * lower
        # Sacral ganglia lie inside the canal, beside the end of the sac.
        return middle + [8.5 - 1.5 * k, -1.0, 0.0], np.array([0.62, -0.45, -0.64])
    vertebra = foramen_of(nerve)
    place = bench.landmark(f"{vertebra}.left.foramen")
    way = {"C": [0.8, -0.45, -0.4], "T": [0.93, -0.2, -0.3], "L": [0.75, -0.35, -0.56]}[nerve[0]]
    if nerve == "C2":
        # Behind the joint of atlas and axis, not in a foramen.
        place = place + [1.5, 3.0, 0.0]
        way = [0.95, -0.1, -0.3]
    return place, np.array(way) / np.linalg.norm(way)


def lay_ganglia(bench: Workbench, canal: Canal) -> None:
    """Lay the spinal ganglia: in the foramina, C2 behind the joint, S1 and S2 in the canal."""
    scale = bench.frame.scale
    for nerve in nerve_range("C2", "S2"):
        place, way = outlet(bench, canal, nerve)
        size = {"C": 2.1, "T": 1.9, "L": 2.6, "S": 1.9}[nerve[0]] * scale
        half = {"C": 2.4, "T": 2.2, "L": 3.2, "S": 2.6}[nerve[0]] * scale
        line = np.array([place - half * way, place, place + half * way])
        lay_tube(bench, f"spinal_ganglion_{nerve}.left", "spinal_ganglion", line,
                 (0.55 * size, size, 0.6 * size), triangles=(140, 60), level=nerve,
                 gap=0.2)  # fmt: skip


def lay_spinal_nerves(bench: Workbench) -> None:
    """Lay the short spinal nerves, from the ganglion out of the foramen."""
    for nerve in nerve_range("C2", "L5"):
        ganglion = bench.parts[f"spinal_ganglion_{nerve}.left"]
        line = ganglion.fibres[0]
        way = line[-1] - line[0]
        way /= np.linalg.norm(way)
        size = {"C": 1.5, "T": 1.3, "L": 1.9}[nerve[0]] * bench.frame.scale
        start = line[-1] - 0.5 * way
        lay_tube(bench, f"spinal_nerve_{nerve}.left", "spinal_nerve",
                 np.array([start, start + 3.0 * way, start + 6.5 * way]), size,
                 joins=(ganglion.id,), triangles=(140, 60), level=nerve, gap=0.2)  # fmt: skip


def _segment(nerve: str) -> float:
    """Place of a segment of the cord, counted in vertebrae."""
    return float(np.interp(NERVES.index(nerve) + 1, _SEGMENTS[:, 0], _SEGMENTS[:, 1]))


def lay_roots(bench: Workbench, canal: Canal) -> None:
    """Lay the posterior and anterior root of C2 to L1, steeper the lower they lie."""
    for nerve in nerve_range("C2", "L1"):
        ganglion = bench.parts[f"spinal_ganglion_{nerve}.left"]
        line = ganglion.fibres[0]
        start = _segment(nerve)
        goal = line[0]
        exit_number = _place_of(canal, goal)
        exit_number = max(exit_number, start + 0.02)
        leave = canal.at(exit_number - 0.12 * (exit_number > start + 0.3), 84, share=0.86)
        courses = []
        for angle in (48.0, 128.0):
            rise = canal.at(start, angle, share=1.0, of="cord")
            outward = rise + 0.55 * (rise - canal.at(start, 0, 0.0)) / max(
                np.linalg.norm(rise - canal.at(start, 0, 0.0)), 1e-6
            )
            way = [outward]
            for t in (0.35, 0.7) if exit_number - start > 0.8 else (0.5,):
                number = start + t * (exit_number - start)
                bend = angle + t * (84 - angle) * 0.8
                way.append(canal.at(number, bend, share=0.78 + 0.04 * t))
            way += [leave, goal + 0.4 * (line[-1] - goal) * 0.3]
            courses.append(np.array(way))
        lay_tube(bench, f"spinal_root_{nerve}.left", "spinal_root", courses[0], 0.6,
                 joins=(ganglion.id, "spinal_cord", *(("conus_medullaris",) * (nerve == "L1"))),
                 pierces=("spinal_dura_mater", "spinal_arachnoid_mater"),
                 branches=[Branch(courses[1][::-1][1:], 0.6)],
                 triangles=(420, 120), level=nerve, gap=0.15)  # fmt: skip


def _place_of(canal: Canal, point: np.ndarray) -> float:
    """Place of a point along the canal, counted in vertebrae."""
    fine = resample(np.concatenate([canal.centre, canal.number[:, None]], axis=1)[:, :3], 600)
    number = np.interp(
        np.linspace(0, 1, 600),
        np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(canal.centre, axis=0), axis=1))])
        / np.linalg.norm(np.diff(canal.centre, axis=0), axis=1).sum(),
        canal.number,
    )
    return float(number[np.argmin(np.linalg.norm(fine - point, axis=1))])


def lay_cauda_equina(bench: Workbench, canal: Canal) -> None:
    """Lay the roots of L2 to S4 as one mesh: through the sac to their outlets, both sides."""
    strands = nerve_range("L2", "S4") if bench.full else nerve_range("L2", "S2")
    sides = 6 if bench.full else 4
    step = 8.0 if bench.full else 18.0
    pieces, lines = [], []
    for k, nerve in enumerate(strands):
        t = k / (len(strands) - 1)
        start = _segment(nerve)
        # Higher roots lie at the side, lower ones nearer to the middle and farther back.
        angle = 104.0 - 72.0 * t
        share = 0.66 if k % 2 == 0 else 0.5
        rise = canal.at(min(start, 19.9), 75.0 - 40.0 * t, share=1.0, of="cord")
        middle = canal.at(min(start, 19.9), 0, 0.0)
        rise = middle + (rise - middle) * 1.0 + 0.8 * _unit(rise - middle)
        if nerve[0] == "L" or nerve in ("S1", "S2"):
            ganglion = bench.parts[f"spinal_ganglion_{nerve}.left"]
            goal = ganglion.fibres[0][0] - 0.9 * _unit(
                ganglion.fibres[0][-1] - ganglion.fibres[0][0]
            )
            stop = min(_place_of(canal, goal), 25.6) - 0.25
        else:
            goal = canal.at(26.0, 60.0, 1.9)
            stop = 25.4
        way = [rise]
        for number in np.arange(max(start, 19.9) + 0.7, stop - 0.3, 0.9):
            way.append(canal.at(number, angle, share=share * 0.93))
        way.append(canal.at(stop, 0.5 * (angle + 84.0), share=0.74))
        way.append(goal)
        line = smooth_course(np.array(way), step)
        line[:, 0] = np.maximum(line[:, 0], 0.75)
        vertices, faces, _ = tube(line, 0.6, sides, rounded=bench.full)
        pieces.append((vertices, faces))
        lines.append(line)
    vertices, faces = unite(pieces)
    mirrored = vertices * [-1.0, 1.0, 1.0]
    both, turned = join([(vertices, faces), (mirrored, faces[:, ::-1])])
    contacts = []
    for other in ("spinal_dura_mater", "spinal_arachnoid_mater", "conus_medullaris", "spinal_cord",
                  "filum_terminale", *(f"spinal_ganglion_{n}.left" for n in strands[:6]),
                  *(f"spinal_root_{n}.left" for n in ("T12", "L1"))):  # fmt: skip
        if other not in bench.parts:
            continue
        place = []
        for line in lines:
            fine = resample(line, 4 * len(line))
            d = bench.index(other).signed_distance(fine, 12.0)[0]
            near = np.isfinite(d) & (d < 0.7)
            place += [fine[near], fine[near] * [-1, 1, 1]]
        place = np.concatenate(place)
        if len(place):
            kind = "pierce" if other.endswith("mater") else "blend"
            contacts.append(Contact(other, "cauda_equina", kind, place))
    count = max(len(line) for line in lines)
    fibres = np.stack([resample(line, count) for line in lines])
    _finish(bench, "cauda_equina", both, turned, contacts=contacts,
            fibres=np.concatenate([fibres, fibres * [-1, 1, 1]]))  # fmt: skip


def _unit(v: np.ndarray) -> np.ndarray:
    return v / max(float(np.linalg.norm(v)), 1e-9)


def lay_denticulate(bench: Workbench, canal: Canal) -> None:
    """Lay the denticulate ligament: a frill from the side of the cord with 21 teeth."""
    teeth = 21
    numbers = np.linspace(1.0, 19.2, 2 * teeth - 1)
    inner, outer = [], []
    for k, number in enumerate(numbers):
        a = canal.at(number, 90.0, share=1.0, of="cord")
        wall = canal.at(number, 90.0, share=1.0)
        room = np.linalg.norm(wall - a) - DURA_MM - ARACHNOID_MM - 0.4
        reach = room if k % 2 == 0 else 0.35 * room
        way = _unit(wall - a)
        inner.append(a + 0.2 * way)
        outer.append(a + max(reach, 0.6) * way)
    inner, outer = np.array(inner), np.array(outer)
    grid = np.stack([inner, 0.5 * (inner + outer), outer])
    half = np.array([0.0, 0.25, 0.0])
    vertices, faces = slab(grid - half, grid + half)
    obstacles = [bench.index(i) for i in bench.near_ids(vertices, 1.0)
                 if i.startswith(("spinal_root", "spinal_cord", "spinal_arachnoid"))]  # fmt: skip
    vertices = cleared(vertices, faces, obstacles, 0.1)
    attachments = (
        Attachment("attach", "spinal_cord", inner[1:-2]),
        Attachment("attach", "spinal_dura_mater", outer[::2]),
    )
    _finish(bench, "denticulate_ligament.left", vertices, faces, entry="denticulate_ligament",
            attachments=attachments, thicker=True,
            contacts=[Contact("denticulate_ligament.left", a.to, "attach", a.curve)
                      for a in attachments])  # fmt: skip


def lay_veins(bench: Workbench, canal: Canal) -> None:
    """Lay the internal vertebral venous plexus: two channels a side with rungs between."""
    step = 8.0 if bench.full else 20.0
    sides = 6 if bench.full else 4
    obstacles = [
        bench.index(i)
        for i in bench.parts
        if i.startswith(("vertebra_", "disc_", "ligamentum_flavum", "spinal_root", "spinal_gang"))
        or i in ("sacrum", "posterior_longitudinal_ligament", "spinal_dura_mater")
    ]
    channels = {}
    numbers = np.arange(1.6, 25.2, 0.35)
    for name, angle in (("anterior", 138.0), ("posterior", 47.0)):
        way = []
        for number in numbers:
            wall = canal.at(number, angle, share=1.0, of="free")
            sac = canal.at(number, angle, share=1.0)
            gap = np.linalg.norm(wall - sac)
            way.append(sac + min(0.5 * gap, 1.3) * _unit(wall - sac))
        line = settle(smooth_course(np.array(way), 3.0), 0.6, obstacles, gap=0.15)
        line = resample(line, int(len(line) * 3.0 / min(step, 8.0)))
        channels[name] = line if bench.full else line[thinned(line, 0.3, step)]
    pieces = [tube(line, 0.6, sides)[:2] for line in channels.values()]
    front = channels["anterior"]
    for level in range(2, 25):
        # Behind the middle of each body the two front channels reach towards one another.
        target = canal.at(level, 180.0, share=1.0, of="sac")
        start = front[np.argmin(np.linalg.norm(front - canal.at(level, 138.0, share=1.1), axis=1))]
        stop = target + 0.9 * _unit(target - canal.at(level, 0, 0.0))
        stop[0] = 1.6
        rung = settle(smooth_course(np.array([start, 0.5 * (start + stop), stop]), 2.0), 0.6,
                      obstacles, gap=0.12)  # fmt: skip
        rung[:, 0] = np.maximum(rung[:, 0], 0.9)
        rung[0] = start
        if not bench.full:
            rung = rung[thinned(rung, 0.25, step)]
        pieces.append(tube(rung, 0.6, sides, rounded=bench.full)[:2])
    vertices, faces = unite(pieces, SEAM_MM[bench.detail])
    vertices = cleared(vertices, faces, obstacles, 0.08)
    both, turned = join([(vertices, faces), (vertices * [-1.0, 1.0, 1.0], faces[:, ::-1])])
    _finish(bench, "internal_vertebral_venous_plexus", both, turned,
            fibres=np.stack([resample(v, 60) for v in channels.values()]))  # fmt: skip


def lay_fat(bench: Workbench, canal: Canal) -> None:
    """Lay the fat behind the dura, a pad in each interval between the laminae."""
    angles = np.deg2rad(np.linspace(-27, 27, 7 if bench.full else 5))
    rows = 4 if bench.full else 3
    walls = [bench.index(i) for i in bench.parts
             if i.startswith(("vertebra_", "ligamentum_flavum")) or i == "sacrum"]  # fmt: skip
    veins = [bench.index("internal_vertebral_venous_plexus"), bench.index("spinal_dura_mater")]
    pieces = []
    for upper in range(2, 25):
        numbers = np.linspace(upper + 0.2, upper + 0.85, rows)
        start = np.array([[canal.at(n, np.rad2deg(a), share=1.0) for a in angles] for n in numbers])
        middle = np.array([[canal.at(n, 0, 0.0)] * len(angles) for n in numbers])
        way = start - middle
        way /= np.linalg.norm(way, axis=2, keepdims=True)
        inner = start + 0.2 * way
        gone = advance(
            inner.reshape(-1, 3), way.reshape(-1, 3), walls, 0.2, 6.0 if upper > 18 else 3.5
        )
        gone = gone.reshape(rows, -1)
        gone = np.minimum(gone, gone[:, ::-1])
        if np.median(gone) < 0.5:
            continue
        edge = 1 - 0.75 * np.abs(np.linspace(-1, 1, len(angles))) ** 4
        thick = np.maximum(gone * edge, 0.35)
        vertices, faces = slab(inner, inner + thick[..., None] * way)
        vertices = cleared(vertices, faces, walls + veins, 0.08)
        pieces.append((vertices, faces))
    vertices, faces = join(pieces)
    _finish(bench, "epidural_fat", vertices, faces)
