"""The deep muscles that fill the gutter: erector spinae and transversospinales."""

from __future__ import annotations

from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import numpy as np
import trimesh
from numba import njit

from meshes.drape.audit import self_intersections
from meshes.drape.bundle import Strand, fill_and_share
from meshes.drape.carve import fibre_coordinates
from meshes.drape.distance import MeshIndex
from meshes.drape.field import Field
from meshes.drape.resolve import resolve, untangle
from meshes.model import Attachment, Contact, Part
from meshes.soft.fascicles import Fascicle, deep_fascicles
from meshes.soft.gutter import Gutter, on_bed, sample_one
from meshes.soft.parting import part_courses
from meshes.soft.roof_sheets import APONEUROSIS_MM, aponeurosis_top
from meshes.soft.slips import MET_MM, with_slips
from meshes.soft.small import resample
from meshes.soft.surface_grid import neighbour_mean
from meshes.soft.workbench import Workbench

_GAP = 0.3
_CLEAR = 0.45
"""Space left between bellies, and between the flesh of a belly and what is not one, mm."""

# Space left under the roof, mm: film above, and below it the aponeurosis as well.
_UNDER_ROOF = 0.25
_UNDER_APONEUROSIS = APONEUROSIS_MM + 0.45

_TRIANGLES = {
    "iliocostalis_lumborum": 12600,
    "iliocostalis_thoracis": 8400,
    "iliocostalis_cervicis": 5600,
    "longissimus_thoracis": 19600,
    "longissimus_cervicis": 7000,
    "longissimus_capitis": 7000,
    "spinalis_thoracis": 7000,
    "spinalis_cervicis": 3500,
    "semispinalis_thoracis": 9800,
    "semispinalis_cervicis": 8400,
    "semispinalis_capitis": 11200,
    "multifidus_cervicis": 5600,
    "multifidus_thoracis": 9800,
    "multifidus_lumborum": 12600,
}

# Share of the fibre length that is tendon at origin and insertion (common
# practice, no source): long caudal tendons in the columns, long cranial ones in
# iliocostalis and spinalis.
_TENDON = {
    "iliocostalis_lumborum": (0.22, 0.18),
    "iliocostalis_thoracis": (0.15, 0.25),
    "iliocostalis_cervicis": (0.15, 0.3),
    "longissimus_thoracis": (0.25, 0.12),
    "longissimus_cervicis": (0.12, 0.15),
    "longissimus_capitis": (0.12, 0.12),
    "spinalis_thoracis": (0.25, 0.2),
    "spinalis_cervicis": (0.15, 0.15),
    "semispinalis_thoracis": (0.2, 0.25),
    "semispinalis_cervicis": (0.12, 0.1),
    "semispinalis_capitis": (0.15, 0.08),
    "multifidus_cervicis": (0.1, 0.12),
    "multifidus_thoracis": (0.12, 0.15),
    "multifidus_lumborum": (0.08, 0.12),
}


def lay(bench: Workbench) -> None:
    """Fill the left gutter and share it among the deep muscles."""
    gutter = on_bed(bench, bench.gutter)
    fascicles = deep_fascicles(bench, gutter)
    spacing = 1.5 if bench.full else 2.4
    lower, upper = _box(bench, gutter, fascicles)
    near = [
        bench.index(part_id)
        for part_id in bench.near_ids(np.stack([lower, upper]), 0.0)
        if bench.parts[part_id].entry not in _OUT_OF_REACH
    ]
    solid = _solid_field(lower, upper, spacing, near)
    cord = _CORD_MM[0 if bench.full else 1]
    courses = part_courses(
        [f.line for f in fascicles], [f.muscle for f in fascicles], solid,
        apart=2 * cord + _GAP, above=cord + _GAP,
        behind_above=float(bench.landmark("ilium.left.crest")[:, 2].max()),
    )  # fmt: skip
    fascicles = [replace(f, line=line) for f, line in zip(fascicles, courses, strict=True)]
    region, free = _region(bench, gutter, solid)
    families = {f.muscle for f in fascicles}
    meshes = fill_and_share(
        region,
        solid.origin,
        spacing,
        [*(_strand(bench, f, cord) for f in fascicles), *_margins(bench, gutter)],
        {name: bench.triangles(_TRIANGLES[name], _TRIANGLES[name] // 8) for name in families},
        free=free,
        gap=_GAP,
        even=_evenness(bench, solid.origin[2] + spacing * np.arange(region.shape[2])),
        obstacles=near,
    )
    order = sorted(meshes, key=lambda n: -bench.catalogue[n].stratum)
    meshes = {name: meshes[name] for name in order}
    meshes = _parted(meshes, () if bench.full else near)
    for name, mesh in meshes.items():
        own = [f for f in fascicles if f.muscle == name]
        _finish(bench, name, _led_on(bench, mesh, own, 0.7 * cord, near), own)


def _parted(
    meshes: dict[str, trimesh.Trimesh], obstacles: Sequence[MeshIndex]
) -> dict[str, trimesh.Trimesh]:
    """Bellies free of crossings; where obstacles are given, pushed off them and one another.

    Coarse triangles cut across what the contour kept clear of. Every belly
    gives way to the others as they were, so that all can be done at once.
    """
    indexes = {name: MeshIndex.of(mesh) for name, mesh in meshes.items()} if obstacles else {}

    def free(name: str) -> trimesh.Trimesh:
        mesh = meshes[name]
        others = [index for other, index in indexes.items() if other != name]
        # What is pushed far may tangle for good: then it is pushed less.
        for rounds in (5, 2) if obstacles else ():
            freed = untangle(resolve(mesh, [*obstacles, *others], 0.1, rounds=rounds))
            if len(self_intersections(freed)) == 0:
                return freed
        return untangle(mesh)

    with ThreadPoolExecutor(2) as pool:
        return dict(zip(meshes, pool.map(free, meshes), strict=True))


# Inside the canal or in front of the spine: no deep muscle comes near.
_OUT_OF_REACH = {
    "spinal_cord", "spinal_root", "spinal_arachnoid_mater", "cauda_equina", "denticulate_ligament",
    "epidural_fat", "internal_vertebral_venous_plexus", "sympathetic_trunk",
    "sympathetic_ganglion", "ramus_communicans", "aorta", "azygos_vein", "intervertebral_disc",
    "anterior_longitudinal_ligament", "posterior_longitudinal_ligament", "costal_cartilage",
    "sternum", "clavicle", "humerus", "femur",
}  # fmt: skip


def _solid_field(lower, upper, spacing: float, indexes: Sequence[MeshIndex]) -> Field:
    """Field of many meshes, which may overlap."""
    fields = [Field(lower, upper, spacing, band=5.0) for _ in range(2)]

    def fill(number: int) -> None:
        for index in indexes[number::2]:
            fields[number].add_mesh(index)

    with ThreadPoolExecutor(2) as pool:
        list(pool.map(fill, range(2)))
    np.minimum(fields[0].data, fields[1].data, out=fields[0].data)
    return fields[0]


_SEARCH_MM = 30.0

_CORD_MM = (1.5, 1.9)
"""Radius of the tendon that is a fascicle's own from bone to bone, mm (full, preview)."""

# Muscles whose fascicles end side by side in one broad attachment: end (first or last point)
# and half the breadth of each there, mm.
_BROAD = {"iliocostalis_lumborum": (0, 2.6), "semispinalis_capitis": (-1, 3.6)}
_BROAD_MM = 30.0
"""Length over which they broaden."""

_UNDER_MM = 5.0
"""Within this of a place of the aponeurosis the belly lifts it, mm."""

_BELOW_COUNTS = 4.0
"""How much more a millimetre below the roof counts than one along it, looking for that place."""

_TAPER_MM = 22.0
"""Over this length from its bone a fascicle's claim grows to its full reach."""


def _strand(bench: Workbench, fascicle: Fascicle, cord: float) -> Strand:
    """The claim of one fascicle, weaker at its ends, where it is tendon."""
    whole = fascicle.line
    line = _fleshy(bench, fascicle)
    length = np.linalg.norm(np.diff(line, axis=0), axis=1).sum()
    line = resample(line, max(6, int(length / 6.0)))
    away = np.minimum(
        np.linalg.norm(line - whole[0], axis=1), np.linalg.norm(line - whole[-1], axis=1)
    )
    reach = fascicle.reach * np.clip(away / _TAPER_MM, 0, 1)
    if fascicle.muscle == "multifidus_lumborum":
        # Large behind the sacrum, narrower with every level above it.
        low, high = (bench.frame[v].centre[2] for v in ("L4", "L1"))
        reach = reach * np.interp(line[:, 2], [low, high], [1.0, 0.42])
    girth = np.full(len(line), cord)
    foot = _BROAD.get(fascicle.muscle)
    if foot is not None:
        end, radius = foot
        s = np.linalg.norm(line - whole[end], axis=1)
        girth += (radius - cord) * np.clip(1 - s / _BROAD_MM, 0, 1)
    return Strand(line, fascicle.muscle, reach, girth)


# Fleshy margins that no fascicle's course tells of: muscle, first and last level, and at either
# the share of the way from midline to lateral edge, the depth (0 floor, 1 roof) and the claim, mm.
# At mid-chest the columns meet over the transversospinales (Gray 1918, as recalled; places common
# practice, no source).
_MARGINS = (
    ("longissimus_thoracis", "T3", "T12", ((0.30, 0.97, 3.0), (0.34, 0.97, 5.0))),
    ("spinalis_thoracis", "T3", "T11", ((0.13, 0.97, 2.0), (0.17, 0.97, 2.5))),
)  # fmt: skip


def _evenness(bench: Workbench, z: np.ndarray) -> np.ndarray:
    """How far the borders between bellies are evened out at heights z, 0-1.

    In trunk the columns run upright; in the neck fascicles cross the height more obliquely.
    """
    levels = [bench.frame[level].centre[2] for level in ("L5", "L3", "T4", "T1")]
    return np.interp(z, levels, [0.0, 1.0, 1.0, 0.0])


def _margins(bench: Workbench, gutter: Gutter) -> list[Strand]:
    """Claims under the roof for the margins with which neighbouring columns meet."""
    strands = []
    for muscle, first, last, (above, below) in _MARGINS:
        z = np.linspace(bench.frame[first].centre[2], bench.frame[last].centre[2], 24)
        s = np.linspace(0, 1, 24)
        share, depth, reach = (
            np.interp(s, [0, 1], pair) for pair in zip(above, below, strict=True)
        )
        x = share * gutter.edge(z)
        line = np.array([gutter.place(*place) for place in zip(x, depth, z, strict=True)])
        ends = np.minimum(z - z[-1], z[0] - z)
        strands.append(Strand(line, muscle, reach * np.clip(ends / _TAPER_MM, 0, 1)))
    return strands


def _fleshy(bench: Workbench, fascicle: Fascicle) -> np.ndarray:
    """The part of a fascicle that claims space, (n, 3) mm.

    The thoracic fascicles of longissimus begin as tendons in the aponeurosis
    of erector spinae and turn to muscle above about L3 (Bogduk 1980, as
    recalled); below, multifidus fills the place beside the spines.
    """
    if not _by_aponeurosis(bench, fascicle):
        return fascicle.line
    fine = resample(fascicle.line, 40)
    return fine[fine[:, 2] > bench.frame["L3"].centre[2] - 12.0]


def _by_aponeurosis(bench: Workbench, fascicle: Fascicle) -> bool:
    """True for fascicles whose lower tendon is part of the aponeurosis of erector spinae."""
    return (
        fascicle.muscle == "longissimus_thoracis"
        and fascicle.origin != "hip_bone.left"
        and fascicle.line[0, 2] < bench.frame["L3"].centre[2] + 5.0
        and fascicle.line[-1, 2] > bench.frame["L3"].centre[2] + 15.0
    )


def _box(bench: Workbench, gutter: Gutter, fascicles: list[Fascicle]):
    points = np.concatenate([f.line for f in fascicles])
    lower = points.min(0) - [0, 12.0, 12.0]
    upper = points.max(0) + [14.0, 14.0, 10.0]
    lower[0] = -3.0
    upper[1] = max(upper[1], float(gutter.roof.max()) + 6.0)
    return lower, upper


@njit(cache=True, nogil=True)
def _fill(data, origin, spacing, width, roof, floor, z0, dz, gap, cover, cover_top, median):
    """Region of the gutter: between floor and roof, inside the edge, clear of what is solid."""
    nx, ny, nz = data.shape
    out = np.empty((nx, ny, nz), np.float32)
    z_low = z0 + 1.0
    z_high = z0 + dz * (roof.shape[0] - 1)
    for i in range(nx):
        x = origin[0] + spacing * i
        for k in range(nz):
            z = origin[2] + spacing * k
            f = min(max((z - z0) / dz, 0.0), roof.shape[0] - 1.001)
            row = int(f)
            f -= row
            edge = width[row] * (1 - f) + width[row + 1] * f
            g = min(max(x / edge, 0.0), 1.0) * (cover_top.size - 1)
            column = min(int(g), cover_top.size - 2)
            limit = cover_top[column] + (g - column) * (cover_top[column + 1] - cover_top[column])
            blend = min(max((limit + 12.0 - z) / 12.0, 0.0), 1.0)
            top = sample_one(roof, width, z0, dz, x, z) - cover[0] - blend * (cover[1] - cover[0])
            bottom = sample_one(floor, width, z0, dz, x, z)
            side = max(x - edge, median - x)
            side = max(side, max(z_low - z, z - z_high))
            for j in range(ny):
                y = origin[1] + spacing * j
                d = max(max(y - top, bottom - y), side)
                out[i, j, k] = max(d, gap - data[i, j, k])
    return out


def _region(bench: Workbench, gutter: Gutter, solid: Field) -> tuple[np.ndarray, np.ndarray]:
    """Fields of the gutter, for the bellies, and of all that is not solid, for the tendons."""
    median = 0.25
    region = _fill(
        solid.data, solid.origin, solid.spacing, gutter.width, gutter.roof, gutter.floor,
        gutter.z0, gutter.dz, _CLEAR, np.array([_UNDER_ROOF, _UNDER_APONEUROSIS]),
        aponeurosis_top(bench, np.linspace(0, 1, 41)), median,
    )  # fmt: skip
    free = np.float32(_GAP) - solid.data
    # The tendons keep to their side.
    x = solid.origin[0] + solid.spacing * np.arange(free.shape[0])
    np.maximum(free, (median - x)[:, None, None].astype(np.float32), out=free)
    return region, free


def _where_met(own: MeshIndex, bone: MeshIndex, point: np.ndarray) -> np.ndarray:
    """Where a belly really meets a bone, nearest to the landmark that its fascicle aims at, mm.

    Neighbours may crowd a thin slip away from its landmark: the attachment is
    then the nearest place at which the belly lies on that bone.
    """
    if abs(own.signed_distance(point[None])[0][0]) <= MET_MM:
        return point
    vertices = own.vertices[np.linalg.norm(own.vertices - point, axis=1) < _SEARCH_MM]
    if len(vertices) == 0:
        return point
    distance, closest, _ = bone.signed_distance(vertices, MET_MM)
    touching = np.abs(distance) <= MET_MM
    if not touching.any():
        return point
    away = np.linalg.norm(vertices - point, axis=1)
    return closest[np.argmin(np.where(touching, away, np.inf))]


def _led_on(
    bench: Workbench,
    mesh: trimesh.Trimesh,
    fascicles: list[Fascicle],
    radius: float,
    obstacles: Sequence[MeshIndex],
) -> trimesh.Trimesh:
    """Lead a belly on to those bones of its fascicles that it lies on nowhere."""
    own = MeshIndex.of(mesh)
    missing = []
    for fascicle in fascicles:
        ends = [(fascicle.insertion, fascicle.line[::-1])]
        if not _by_aponeurosis(bench, fascicle):
            ends.append((fascicle.origin, fascicle.line))
        for target, line in ends:
            if target in bench.parts:
                place = _where_met(own, bench.index(target), line[0])
                if abs(own.signed_distance(place[None])[0][0]) > MET_MM:
                    missing.append(line)
    return with_slips(mesh, missing, radius, obstacles)


def _under_aponeurosis(bench: Workbench, mesh: trimesh.Trimesh, start: np.ndarray) -> np.ndarray:
    """Where a belly meets the aponeurosis that will lie on it, near the start of its flesh, mm."""
    v = mesh.vertices
    depth = bench.gutter.roof_at(v[:, 0], v[:, 2]) - v[:, 1]
    away = np.hypot(v[:, 0] - start[0], v[:, 2] - start[2])
    x, _, z = v[np.argmin(away + _BELOW_COUNTS * np.maximum(depth - APONEUROSIS_MM, 0.0))]
    y = bench.gutter.roof_at(np.array([x]), np.array([z]))[0] - 0.6
    # The aponeurosis runs over what of the belly stands out of the roof.
    near = np.hypot(v[:, 0] - x, v[:, 2] - z) < _UNDER_MM
    return np.array([x, max(y, v[near, 1].max() + 0.7 * APONEUROSIS_MM), z])


def _soft(mesh: trimesh.Trimesh, values: np.ndarray, rounds: int = 12) -> np.ndarray:
    """Values at vertices evened out over the surface: neighbouring fascicles shade into each other."""
    mean = neighbour_mean(mesh.faces, len(mesh.vertices))
    for _ in range(rounds):
        values = 0.5 * values + 0.5 * (mean @ values)
    return values


def _finish(bench: Workbench, name: str, mesh, fascicles: list[Fascicle]) -> None:
    lines = [f.line for f in fascicles]
    uv, _ = fibre_coordinates(mesh.vertices, lines)
    u = uv[:, 0]
    start, end = _TENDON[name]
    tendon = np.maximum(np.clip(1 - u / start, 0, 1), np.clip(1 - (1 - u) / end, 0, 1)) ** 1.5
    tendon = _soft(mesh, tendon)
    if name == "semispinalis_capitis":
        # Its tendinous intersection, about the level of C6 (common practice, no source).
        place = bench.frame["C6"].centre[2]
        band = np.exp(-(((mesh.vertices[:, 2] - place) / (5.0 * bench.frame.scale)) ** 2))
        tendon = np.maximum(tendon, 0.85 * band)
    record = bench.catalogue[name]
    own = MeshIndex(mesh.vertices, mesh.faces)
    attachments = []
    for kind, end, key in (("origin", 0, "origin"), ("insertion", -1, "insertion")):
        places: dict[str, list[np.ndarray]] = {}
        for fascicle in fascicles:
            target = getattr(fascicle, key)
            point = fascicle.line[end]
            if end == 0 and _by_aponeurosis(bench, fascicle):
                target = "erector_spinae_aponeurosis.left"
                point = _under_aponeurosis(bench, mesh, _fleshy(bench, fascicle)[0])
            elif target in bench.parts:
                point = _where_met(own, bench.index(target), point)
            places.setdefault(target, []).append(point)
        attachments += [
            Attachment(kind, target, np.unique(np.round(points, 3), axis=0))
            for target, points in places.items()
        ]
    part = Part(
        id=f"{name}.left",
        entry=name,
        kind="muscle",
        stratum=record.stratum,
        group=record.group,
        mesh=mesh,
        uv=uv,
        tendon=tendon.astype(np.float32),
        fibres=np.stack([resample(line, 24) for line in lines]),
        attachments=tuple(attachments),
        region=record.region,
    )
    bench.add(part, [Contact(part.id, a.to, "attach", a.curve) for a in attachments])
