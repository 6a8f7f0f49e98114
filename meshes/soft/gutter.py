"""The gutter beside the spines: what bounds the deep muscles of the back.

Two surfaces stand over the coronal plane. The *roof* is where the deep
muscles end and their fascia begins; the *floor* is the bony bed they lie on.
Both are given per level by bony landmarks and interpolated in between, across
the gutter (t = 0 at the midline, 1 at its lateral edge) and along the height.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numba import njit
from scipy.interpolate import PchipInterpolator
from scipy.ndimage import (
    distance_transform_edt,
    gaussian_filter,
    gaussian_filter1d,
    grey_closing,
)
from scipy.spatial import cKDTree

from meshes.skeleton.frame import LEVELS
from meshes.soft.workbench import Workbench

_STEP_MM = 3.0
_ACROSS = 33
_LEVELLING_MM = 9.0
_FASCIA_ROOM_MM = 1.8

# What the deep muscles lie on, by the beginnings of entries' names.
_BED = (
    "vertebra_", "rib_", "sacrum", "rectus_capitis", "obliquus_capitis", "suboccipital", "rotator_",
    "levator_costarum", "external_intercostal", "intertransversarius", "intertransverse",
    "ligamentum_flavum", "posterior_atlanto", "superior_costo", "iliolumbar",
    "posterior_sacroiliac", "lumbocostal", "subcostal", "quadratus", "thoracolumbar_fascia_middle",
    "posterior_ramus",
)  # fmt: skip
_SPINOUS_MM = 6.0
"""Nearer to the median plane than this stand the spines, not the bed."""
_SPAN_ROWS = 9
_SINK_MM = 1.5
_DEEPEST_MM = 9.0
"""How far the bellies sink into the hollows of the bed, and below the bony floor at most."""

# Splenius and the sheets over it, between the nuchal ligament's free edge and the deep bellies.
_NAPE_COVER_MM = 5.0


@dataclass(frozen=True, slots=True)
class Gutter:
    """Roof and floor of the left gutter on a regular grid.

    Attributes
    ----------
    z0, dz : float
        First height and step, mm.
    width : (nz,) float
        Lateral edge, distance from the median plane, mm.
    roof, floor : (nz, nt) float
        y of the surfaces at t = 0 ... 1, mm.
    """

    z0: float
    dz: float
    width: np.ndarray
    roof: np.ndarray
    floor: np.ndarray

    def edge(self, z: np.ndarray) -> np.ndarray:
        """Distance of the lateral edge from the median plane at heights z, mm."""
        return np.interp(z, self.z0 + self.dz * np.arange(len(self.width)), self.width)

    def roof_at(self, x: np.ndarray, z: np.ndarray) -> np.ndarray:
        """y of the roof at (x, z), mm; beyond the edge it runs on level."""
        return _sample(self.roof, self.width, self.z0, self.dz, *_flat(x, z)).reshape(np.shape(x))

    def floor_at(self, x: np.ndarray, z: np.ndarray) -> np.ndarray:
        """y of the floor at (x, z), mm."""
        return _sample(self.floor, self.width, self.z0, self.dz, *_flat(x, z)).reshape(np.shape(x))

    def place(self, x: float, depth: float, z: float) -> np.ndarray:
        """Point at x and height z, depth 0 on the floor and 1 on the roof."""
        xs, zs = np.array([x]), np.array([z])
        low, high = self.floor_at(xs, zs)[0], self.roof_at(xs, zs)[0]
        return np.array([x, low + depth * (high - low), z])


def _flat(x, z):
    x, z = np.broadcast_arrays(np.asarray(x, float), np.asarray(z, float))
    return np.ascontiguousarray(x.ravel()), np.ascontiguousarray(z.ravel())


@njit(cache=True, nogil=True)
def sample_one(grid, width, z0, dz, x, z):
    """Bilinear value of a gutter surface at one (x, z)."""
    nz, nt = grid.shape
    f = min(max((z - z0) / dz, 0.0), nz - 1.001)
    k = int(f)
    f -= k
    edge = width[k] * (1 - f) + width[k + 1] * f
    g = min(max(x / edge, 0.0), 1.0) * (nt - 1)
    i = min(int(g), nt - 2)
    g -= i
    low = grid[k, i] * (1 - g) + grid[k, i + 1] * g
    high = grid[k + 1, i] * (1 - g) + grid[k + 1, i + 1] * g
    return low * (1 - f) + high * f


@njit(cache=True, nogil=True)
def _sample(grid, width, z0, dz, x, z):
    out = np.empty(x.size)
    for i in range(x.size):
        out[i] = sample_one(grid, width, z0, dz, x[i], z[i])
    return out


# Bulge of the roof over the line from spine tip to lateral edge, mm at normal
# bulk: high in the loin, where the columns stand above the spines and leave a
# furrow, low at mid-chest (common practice, no source).
_BULGE = {
    "C1": 6, "C2": 9, "C3": 10, "C4": 10, "C5": 10, "C6": 9, "C7": 7,
    "T1": 7, "T2": 7, "T3": 7, "T4": 7, "T5": 7, "T6": 7.5, "T7": 8, "T8": 8.5,
    "T9": 9, "T10": 10, "T11": 13, "T12": 15,
}  # fmt: skip

# In the loin the columns stand above the spine tips by so much, mm at normal bulk, and end
# bluntly at their lateral edge: the furrow lies between them (common practice, no source).
_CROWN = {"T11": 5, "T12": 7, "L1": 9, "L2": 11, "L3": 12.5, "L4": 14, "L5": 12.5}
_FURROW_SHARE = 0.36
_BLUNT = 4.8

# Lateral edge where no rib angle gives it, mm from the midline in the median man.
_EDGE = {
    "C1": 28, "C2": 28, "C3": 29, "C4": 30, "C5": 33, "C6": 37, "C7": 42, "T1": 46,
    "L1": 73, "L2": 75, "L3": 76, "L4": 74, "L5": 65,
}  # fmt: skip


def make_gutter(bench: Workbench) -> Gutter:
    """Lay roof and floor over the bones on the bench.

    Parameters
    ----------
    bench : Workbench
        With all bones and their landmarks.

    Returns
    -------
    Gutter
    """
    marks, scale, bulk = bench.landmarks, bench.frame.scale, bench.body.muscle_bulk
    heights, edges, roofs, floors = [], [], [], []
    t = np.linspace(0, 1, _ACROSS)

    def tip_profile() -> PchipInterpolator:
        points = [marks["C7.spinous_process"]]
        points += [marks[f"T{i}.spinous_process"] for i in range(1, 13)]
        points += [marks[f"L{i}.spinous_process"] for i in range(1, 6)]
        points += [marks[f"S{i}.median_crest"] for i in range(1, 5)]
        points.append(marks["occipital.external_protuberance"])
        # The nuchal ligament spans the hollow of the neck between C7 and the protuberance,
        # its free edge sagging in front of the chord.
        top, seventh = marks["occipital.external_protuberance"], marks["C7.spinous_process"]
        for share, sag in ((0.2, 5.0), (0.5, 9.0), (0.8, 6.0)):
            point = seventh + share * (top - seventh)
            points.append(point - np.array([0, sag * scale, 0]))
        order = np.argsort([p[2] for p in points])
        z = np.array([points[i][2] for i in order])
        y = np.array([points[i][1] for i in order])
        keep = np.concatenate([[True], np.diff(z) > 1.0])
        return PchipInterpolator(z[keep], y[keep])

    tip = tip_profile()

    def across(points: list[tuple[float, float]], edge: float) -> np.ndarray:
        xs, ys = zip(*sorted(points), strict=True)
        return PchipInterpolator(np.array(xs) / edge, ys, extrapolate=True)(t)

    for level in LEVELS:
        process = marks[f"{level}.left.transverse_process"]
        lamina = marks[f"{level}.left.lamina"]
        z = float(process[2]) if level[0] != "L" else float(lamina[2])
        median = float(tip(z))
        lateral_y = float(process[1])
        floor_points = [(0.0, lamina[1] + 1.0), (lamina[0], lamina[1]), (process[0], process[1])]
        if level[0] == "T":
            number = int(level[1:])
            angle = marks[f"rib_{number}.left.angle"]
            tubercle = marks[f"rib_{number}.left.tubercle"]
            # Rib angles stand lower than the process of the same number: take the rib that
            # crosses at this height.
            edge_x, edge_y = _rib_edge(marks, z, float(angle[0]), float(angle[1]))
            if number == 12:
                edge_x, edge_y = _EDGE["L1"] * scale, process[1] - 2.0
            edge = max(edge_x + 5.0 * scale, process[0] + 12.0)
            lateral_y = edge_y
            floor_points.append((max(float(tubercle[0]), process[0] + 2), float(tubercle[1])))
            floor_points.append((edge, lateral_y))
            lateral_roof = lateral_y + 3.5 * bulk
        else:
            edge = max(_EDGE[level] * scale, process[0] + (8.0 if level[0] == "L" else 3.0))
            if level[0] == "L":
                lateral_y = process[1] - 6.0
                floor_points.append((edge, lateral_y))
                lateral_roof = lateral_y + 3.0 * bulk
            else:
                floor_points.append((edge, process[1] - 1.0))
                lateral_roof = process[1] + 4.0 * bulk
        median_roof = median + (0.5 if level[0] != "C" else 0.0)
        if level in _CROWN:
            roof = _column(t, median_roof, _CROWN[level] * scale * bulk, lateral_roof)
        else:
            bulge = _BULGE[level] * scale * bulk
            roof = median_roof + t * (lateral_roof - median_roof) + bulge * 4 * t * (1 - t)
        if level[0] == "C":
            # Full and round beside the ligament, falling away to the transverse processes;
            # splenius and trapezius still come on top, so the bellies keep below its free edge.
            crown = median_roof - _NAPE_COVER_MM * scale
            roof = lateral_roof + (crown - lateral_roof) * np.sqrt(np.clip(1 - t**2.2, 0, 1))
        heights.append(z)
        edges.append(edge)
        roofs.append(roof)
        floors.append(across(floor_points, edge))

    # Above the atlas: up to the superior nuchal line, where the deep muscles have ended.
    line = marks["occipital.left.superior_nuchal_line"]
    lower = marks["occipital.left.inferior_nuchal_line"]
    for curve, lift, width in ((lower, 11.0, 31.0), (line, 3.0, 33.0)):
        inner = curve[curve[:, 0] < 45 * scale]
        edge = width * scale
        order = np.argsort(inner[:, 0])
        y = np.interp(t * edge, inner[order, 0], inner[order, 1])
        heights.append(float(np.mean(inner[:, 2])))
        edges.append(edge)
        # Bone surface there; the muscle is thick below and runs out at the upper line.
        thick = lift * bulk * np.clip(1.25 - t**2, 0, 1)
        roofs.append(y + thick)
        floors.append(y)

    crest_line = marks["ilium.left.crest"]
    for number, width in ((1, 66.0), (2, 46.0), (3, 30.0), (4, 18.0)):
        crest = marks[f"S{number}.median_crest"]
        lateral = marks["sacrum.left.lateral_crest"]
        lateral = lateral[np.argsort(lateral[:, 2])]
        z = float(crest[2])
        x_lateral = float(np.interp(z, lateral[:, 2], lateral[:, 0]))
        y_lateral = float(np.interp(z, lateral[:, 2], lateral[:, 1]))
        edge, y_edge = width * scale, y_lateral
        if number <= 2:
            # Between the sacrum and the back of the iliac crest, which stands higher.
            edge, y_edge = _crest_edge(crest_line, z)
        inner = crest[1] - 8.0 * scale
        bed = [(0.0, inner), (min(x_lateral, edge * 0.9), y_lateral), (edge, y_lateral)]
        floors.append(across(bed, edge))
        bulge = {1: 11.0, 2: 7.0, 3: 4.0, 4: 1.5}[number] * scale * bulk
        roofs.append(crest[1] + 0.5 + t * (y_edge - crest[1]) + bulge * 4 * t * (1 - t))
        heights.append(z)
        edges.append(edge)

    order = np.argsort(heights)
    z = np.array(heights)[order]
    keep = np.concatenate([[True], np.diff(z) > 1.5])
    index = order[keep]
    z = z[keep]
    grid_z = np.arange(z[0], z[-1] + _STEP_MM, _STEP_MM)

    def along(values: list) -> np.ndarray:
        return PchipInterpolator(z, np.array(values)[index], axis=0, extrapolate=True)(
            np.clip(grid_z, z[0], z[-1])
        )

    roof_rows = _over_bone(bench, grid_z, along(edges), along(roofs))
    # Levels meet without a step: about the height of half a vertebra is levelled out.
    roof = gaussian_filter1d(roof_rows, _LEVELLING_MM / _STEP_MM, axis=0, mode="nearest")
    width = gaussian_filter1d(along(edges), _LEVELLING_MM / _STEP_MM, mode="nearest")
    floor = along(floors)
    roof = np.maximum(roof, floor + 0.3)
    return Gutter(float(grid_z[0]), _STEP_MM, width, roof, floor)


def _column(t: np.ndarray, median: float, crown: float, lateral: float) -> np.ndarray:
    """Roof of the loin's column across the gutter: furrow, crown and blunt outer edge, y in mm."""
    rise = np.sin(0.5 * np.pi * np.clip(t / _FURROW_SHARE, 0, 1))
    return lateral + (median + crown * rise - lateral) * (1 - t**_BLUNT)


def on_bed(bench: Workbench, gutter: Gutter) -> Gutter:
    """The gutter with its floor laid on what really covers its bed.

    Bones, ligaments and the small muscles between them make the bed; between
    two ribs or processes it spans the hollow.

    Parameters
    ----------
    bench : Workbench
        With all that lies under the deep muscles.
    gutter : Gutter

    Returns
    -------
    Gutter
    """
    points = []
    for part in bench.parts.values():
        if part.entry.startswith(_BED) and part.side != "right":
            found = bench.index(part.id).samples(2.5)[0]
            points.append(found[found[:, 0] > _SPINOUS_MM])
    points = np.concatenate(points)
    rows, columns = gutter.floor.shape
    row = np.rint((points[:, 2] - gutter.z0) / gutter.dz).astype(int)
    inside = (row >= 0) & (row < rows)
    points, row = points[inside], row[inside]
    column = np.rint(points[:, 0] / gutter.width[row] * (columns - 1)).astype(int)
    inside = column < columns
    bed = np.full(gutter.floor.shape, -np.inf)
    np.maximum.at(bed, (row[inside], column[inside]), points[inside, 1])
    seen = np.isfinite(bed)
    # Nearest seen place where there is none: beside the spines and in small gaps.
    near = distance_transform_edt(
        ~seen, sampling=(2.0, 1.0), return_distances=False, return_indices=True
    )
    bed = grey_closing(bed[tuple(near)], size=(_SPAN_ROWS, 3), mode="nearest")
    bed = gaussian_filter(bed, (1.0, 0.7), mode="nearest")
    bed = np.maximum(bed - _SINK_MM, gutter.floor - _DEEPEST_MM)
    return replace(gutter, floor=np.minimum(bed, gutter.roof - 0.3))


def _over_bone(bench: Workbench, z: np.ndarray, width: np.ndarray, roof: np.ndarray) -> np.ndarray:
    """Raise the roof over the back of sacrum and ilium, where they stand out of it, mm."""
    points = np.concatenate([bench.parts[i].mesh.vertices for i in ("sacrum", "hip_bone.left")])
    points = points[(points[:, 0] > -2.0) & (points[:, 1] > 0.0)]
    tree = cKDTree(points[:, [0, 2]])
    out = roof.copy()
    t = np.linspace(0, 1, roof.shape[1])
    low = z < float(bench.landmark("L5.spinous_process")[2])
    for row in np.flatnonzero(low):
        near = tree.query_ball_point(
            np.stack([t * width[row], np.full(len(t), z[row])], axis=1), 5.0
        )
        for column, members in enumerate(near):
            if members:
                out[row, column] = max(out[row, column], points[members, 1].max() + _FASCIA_ROOM_MM)
    return out


def _crest_edge(crest: np.ndarray, z: float) -> tuple[float, float]:
    """Inner lip of the back of the iliac crest at a height: (x, y) mm."""
    back = crest[: int(0.45 * len(crest))]
    order = np.argsort(back[:, 2])
    x = float(np.interp(z, back[order, 2], back[order, 0]))
    y = float(np.interp(z, back[order, 2], back[order, 1]))
    return x - 4.0, y - 0.5


def _rib_edge(marks, z: float, default_x: float, default_y: float) -> tuple[float, float]:
    """Where the line of the rib angles stands at a height: (x, y) mm."""
    angles = np.array([marks[f"rib_{n}.left.angle"] for n in range(2, 12)])
    order = np.argsort(angles[:, 2])
    angles = angles[order]
    if not angles[0, 2] <= z <= angles[-1, 2]:
        return default_x, default_y
    return (
        float(np.interp(z, angles[:, 2], angles[:, 0])),
        float(np.interp(z, angles[:, 2], angles[:, 1])),
    )
