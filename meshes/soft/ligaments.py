"""Ligaments of the column, the pelvis and the nape, carved between the bones."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import trimesh

from meshes.drape.carve import NothingLeft, carve, clear_of, fibre_coordinates
from meshes.drape.distance import MeshIndex
from meshes.model import Attachment, Contact, Part
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import LEVELS
from meshes.soft.fascicles import level_range
from meshes.soft.small import resample
from meshes.soft.workbench import Workbench

_LEFT = np.array([1.0, 0.0, 0.0])
_BACK = np.array([0.0, 1.0, 0.0])
_UP = np.array([0.0, 0.0, 1.0])

SUPRASPINOUS = (7.0, 2.4)
"""Width and thickness of the supraspinous ligament, mm (common practice, no source)."""
NUCHAL_THICKNESS_MM = 1.9
NUCHAL_SAG_MM = 7.0
"""How far the free edge lies in front of the chord from C7 to the protuberance."""


def lay(bench: Workbench) -> None:
    """Lay every ligament of the catalogue."""
    lay_longitudinal(bench)
    lay_flava(bench)
    lay_interspinous(bench)
    lay_supraspinous(bench)
    lay_nuchal(bench)
    lay_atlanto_occipital_membrane(bench)
    lay_intertransverse(bench)
    lay_costotransverse(bench)
    lay_lumbopelvic(bench)


def median(point: np.ndarray) -> np.ndarray:
    """The point moved into the median plane."""
    return np.array([0.0, point[1], point[2]])


def below(level: str) -> str:
    """Return the next lower level; the sacrum's first below L5."""
    return "S1" if level == "L5" else LEVELS[LEVELS.index(level) + 1]


def bone_of(level: str) -> str:
    """Part id of the bone that a level names."""
    return "sacrum" if level.startswith("S") else f"vertebra_{level}"


def place_ligament(
    bench: Workbench,
    part_id: str,
    entry: str,
    mesh: trimesh.Trimesh,
    lines: Sequence[np.ndarray],
    bones: Sequence[str],
    *,
    level: str = "",
    region: str = "",
    drawn_thicker: bool = False,
) -> Part:
    """Finish a ligament: fibres, attachments where it comes close to its bones, contacts."""
    record = bench.catalogue[entry]
    uv, _ = fibre_coordinates(mesh.vertices, lines)
    attachments = []
    for bone in bones:
        curve = touching(bench, mesh, bone)
        if curve is not None:
            attachments.append(Attachment("attach", bone, curve))
    count = max(max(len(line) for line in lines), 6)
    part = Part(
        id=part_id,
        entry=entry,
        kind="ligament",
        stratum=record.stratum,
        group=record.group,
        mesh=mesh,
        uv=uv,
        tendon=np.ones(len(mesh.vertices), np.float32),
        fibres=np.stack([resample(line, count) for line in lines]),
        attachments=tuple(attachments),
        level=level,
        region=region or record.region,
        drawn_thicker=drawn_thicker,
    )
    return bench.add(part, [Contact(part_id, a.to, "attach", a.curve) for a in attachments])


def touching(
    bench: Workbench, mesh: trimesh.Trimesh, part_id: str, reach: float = 0.9, count: int = 14
) -> np.ndarray | None:
    """Points (k, 3) of a mesh that lie against a finished part; None when it stays 2.5 mm away."""
    if part_id not in bench.parts:
        return None
    distance = bench.index(part_id).signed_distance(mesh.vertices, 6.0)[0]
    order = np.flatnonzero(distance < reach)
    if len(order) == 0:
        nearest = int(np.argmin(distance))
        return mesh.vertices[[nearest]] if distance[nearest] < 2.5 else None
    points = mesh.vertices[order]
    spread = np.argsort(points @ np.array([1.0, 0.3, 0.6]))
    chosen = np.unique(np.linspace(0, len(spread) - 1, min(count, len(spread))).astype(int))
    return points[spread[chosen]]


def carved(
    bench: Workbench,
    solid: Solid,
    triangles: tuple[int, int],
    *,
    spacing: tuple[float, float] = (0.8, 1.3),
    x_min: float | None = None,
    without: Sequence[str] = (),
    gap: float = 0.2,
) -> trimesh.Trimesh:
    """Carve a solid against everything near it."""
    return carve(
        solid,
        bench.near(solid.bounds(0.0), 1.0, without),
        spacing=spacing[0] if bench.full else spacing[1],
        triangles=bench.triangles(*triangles),
        gap=gap,
        x_min=x_min,
        smoothing=1,
    )


# --- strips against a row of bones ------------------------------------------------------


def slab(inner: np.ndarray, outer: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Closed mesh between two grids (nv, nu, 3) that face one another.

    Returns
    -------
    vertices : (2 * nv * nu, 3) float
    faces : (m, 3) int
        Outward.
    """
    nv, nu = inner.shape[:2]
    vertices = np.concatenate([inner.reshape(-1, 3), outer.reshape(-1, 3)])
    corner = np.arange(nv * nu).reshape(nv, nu)
    a, b, c, d = corner[:-1, :-1], corner[:-1, 1:], corner[1:, 1:], corner[1:, :-1]
    top = np.concatenate(
        [np.stack([a, b, c], -1).reshape(-1, 3), np.stack([a, c, d], -1).reshape(-1, 3)]
    )
    faces = [top + nv * nu, top[:, ::-1]]
    rim = np.concatenate([corner[0, :-1], corner[:-1, -1], corner[-1, :0:-1], corner[:0:-1, 0]])
    start, stop = rim, np.roll(rim, -1)
    faces.append(np.stack([start, stop, stop + nv * nu], -1))
    faces.append(np.stack([start, stop + nv * nu, start + nv * nu], -1))
    faces = np.concatenate(faces)
    corners = (vertices - vertices.mean(0))[faces]
    if np.einsum("ij,ij->", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) < 0:
        faces = faces[:, ::-1]
    return vertices, faces


def advance(
    start: np.ndarray, way: np.ndarray, indices: Sequence[MeshIndex], above: float, limit: float
) -> np.ndarray:
    """Move points (n, 3) along unit ways (n, 3) until ``above`` mm before the first surface.

    Returns
    -------
    (n,) float
        How far each went, mm; ``limit`` where it met nothing.
    """
    gone = np.zeros(len(start))
    for _ in range(24):
        p = start + gone[:, None] * way
        height = np.full(len(p), 12.0)
        for index in indices:
            low, high = index.bounds
            near = np.flatnonzero(np.all((p > low - 12) & (p < high + 12), axis=1))
            if len(near):
                d = index.signed_distance(p[near], 12.0)[0]
                height[near] = np.minimum(height[near], np.where(np.isfinite(d), d, 12.0))
        step = np.where(height > above + 0.02, np.maximum(height - above, 0.02), 0.0)
        gone = np.minimum(gone + step, limit)
        if not np.any((step > 0.03) & (gone < limit)):
            break
    return gone


def column_stations(bench: Workbench, upper: str, lower: str, step: float):
    """Centres and axes of the column, evenly spaced, from the endplates of the frames.

    Returns
    -------
    centre : (n, 3) float
        Middle of the bodies and discs, mm.
    back : (n, 3) float
        Unit, to the back across the column.
    discness : (n,) float
        0 in the middle of a body, 1 in the middle of a disc.
    """
    points, backs, disc = [], [], []
    for level in level_range(upper, lower):
        f = bench.frame[level]
        half = 0.5 * f.height * f.axes[:, 2]
        points += [f.centre + half, f.centre, f.centre - half]
        backs += [f.axes[:, 1]] * 3
        disc += [0.8, 0.0, 0.8]
    points, backs, disc = np.array(points), np.array(backs), np.array(disc)
    s = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=1))])
    wanted = np.linspace(0, s[-1], max(int(s[-1] / step), 8))
    centre = np.stack([np.interp(wanted, s, points[:, i]) for i in range(3)], 1)
    back = np.stack([np.interp(wanted, s, backs[:, i]) for i in range(3)], 1)
    back /= np.linalg.norm(back, axis=1, keepdims=True)
    return centre, back, np.interp(wanted, s, disc)


def lay_longitudinal(bench: Workbench) -> None:
    """Lay the anterior and posterior longitudinal ligaments as strips on bodies and discs."""
    bones = [f"vertebra_{v}" for v in LEVELS] + ["sacrum"]
    discs = [i for i in bench.parts if bench.parts[i].kind == "disc"]
    indices = [bench.index(i) for i in bones + discs if i in bench.parts]
    centre, back, disc = column_stations(bench, "C2", "L5", 5.0 if bench.full else 14.0)
    width = np.array([bench.frame[v].width for v in level_range("C2", "L5")])
    at = np.linspace(0, len(width) - 1, len(centre))
    wide = np.interp(at, np.arange(len(width)), width)
    across = np.linspace(-1, 1, 7 if bench.full else 5)

    def strip(entry, start, way, limit, thick):
        count, columns = start.shape[:2]
        flat_way = way.reshape(-1, 3)
        gone = advance(start.reshape(-1, 3), flat_way, indices, 0.3, limit)
        gone = gone.reshape(count, columns)
        # A ligament bridges hollows: never farther in than its neighbours would hold it.
        gone = np.minimum(gone, 0.5 * (gone + gone[:, ::-1]))
        low = np.minimum.reduce([np.roll(gone, k, axis=0) for k in (-1, 0, 1)])
        low[0], low[-1] = gone[0], gone[-1]
        gone = np.minimum(gone, low + 1.0)
        inner = start + gone[..., None] * way
        edge = 1.0 - 0.6 * np.abs(across) ** 3
        outer = inner - (thick * edge)[None, :, None] * way
        vertices, faces = slab(inner, outer)
        vertices = clear_of(vertices, indices, 0.12)
        mesh = trimesh.Trimesh(vertices, faces, process=False)
        lines = [0.5 * (inner + outer)[:, c] for c in range(columns)]
        place_ligament(
            bench, entry, entry, mesh, lines,
            [f"vertebra_{v}" for v in level_range("C2", "L5")],
        )  # fmt: skip

    angle = across * np.deg2rad(38)
    way = np.sin(-angle)[None, :, None] * _LEFT + np.cos(angle)[None, :, None] * back[:, None]
    start = centre[:, None] - (0.9 * wide + 6.0)[:, None, None] * way
    strip("anterior_longitudinal_ligament", start, np.broadcast_to(way, start.shape), 60.0, 1.8)

    spread = np.where(disc > 0.4, 0.24, 0.13)[:, None] * wide[:, None] * across
    line = canal_line(bench)
    behind = line(centre[:, 2])
    start = behind[:, None] + spread[..., None] * _LEFT
    way = np.broadcast_to(-back[:, None], start.shape)
    strip("posterior_longitudinal_ligament", start, way, 14.0, 0.9)


def canal_line(bench: Workbench):
    """Function from heights z (n,) to points (n, 3) of the canal's middle."""
    names = [*LEVELS, "S1", "S2"]
    points = np.array([bench.landmark(f"{v}.canal_centre") for v in names])[::-1]
    points[:, 0] = 0.0

    def at(z: np.ndarray) -> np.ndarray:
        z = np.asarray(z, float)
        y = np.interp(z, points[:, 2], points[:, 1])
        return np.stack([np.zeros_like(z), y, z], axis=-1)

    return at


# --- between laminae and spines ----------------------------------------------------------


def lay_flava(bench: Workbench) -> None:
    """Lay the ligamenta flava: a trough from each lamina to the next, inside the back wall."""
    scale = bench.frame.scale
    angles = np.deg2rad(np.arange(-60, 61, 15))
    for upper in level_range("C2", "L5"):
        lower = below(upper)
        f = bench.frame[upper]
        wide, deep = 0.5 * f.canal_width, 0.5 * f.canal_depth
        lamina = bench.landmark(f"{upper}.left.lamina")
        high = bench.landmark(f"{upper}.canal_centre")
        low = bench.landmark(f"{lower}.canal_centre")
        root = bench.landmark(
            f"{lower}.spinous_root" if lower != "S1" else "S1.median_crest"
        )
        top_z = lamina[2] - 1.0 * scale
        bottom_z = root[2] - 2.0 * scale
        if bottom_z > top_z - 4.0:
            bottom_z = top_z - 6.0 * scale
        solid, lines = Solid(), []
        for k, angle in enumerate(angles):
            ends = []
            for z in (top_z, bottom_z):
                share = (high[2] - z) / (high[2] - low[2])
                middle = median(high + share * (low - high))
                grow = 1.0 if z == top_z else 2.4
                ends.append(
                    middle
                    + [np.sin(angle) * (wide * 0.93 + 1.0), np.cos(angle) * (deep + grow), 0.0]
                )
            line = resample(np.array(ends), 4)
            lines.append(line)
            side = np.array([np.cos(angle), -np.sin(angle), 0.0])
            solid.sweep(line, side, 0.17 * wide + 1.2, 1.4, blend=0.0 if k == 0 else 1.0)
        mesh = carved(bench, solid, (420, 90), spacing=(0.9, 1.4), gap=0.15)
        part_id = f"ligamentum_flavum_{upper}_{lower}"
        place_ligament(bench, part_id, "ligamentum_flavum", mesh, lines,
                       [bone_of(upper), bone_of(lower)], level=upper)  # fmt: skip


def lay_interspinous(bench: Workbench) -> None:
    """Lay the interspinous ligaments: thin median plates, broad in the loin."""
    for upper in level_range("C2", "L4"):
        lower = below(upper)
        # Both processes as chords from root to tip; the plate spans between them.
        chords = []
        for level in (upper, lower):
            root = median(bench.landmark(f"{level}.spinous_root"))
            tip = median(bench.landmark(f"{level}.spinous_process"))
            chords.append((root + 0.22 * (tip - root), root + 0.95 * (tip - root)))
        (ua, ub), (la, lb) = chords
        start, stop = 0.5 * (la + lb), 0.5 * (ua + ub)
        half = 0.5 * np.array([np.linalg.norm(lb - la), np.linalg.norm(ub - ua)])
        thick = {"C": 0.7, "T": 0.8, "L": 1.4}[upper[0]]
        path = resample(np.array([start, stop]), 4)
        solid = Solid().sweep(
            path, (lb - la) + (ub - ua), np.linspace(*half, 4), thick, blend=0.5
        )
        lines = [
            resample(np.array([la + t * (lb - la), ua + t * (ub - ua)]), 5)
            for t in (0.1, 0.35, 0.6, 0.85)
        ]
        try:
            mesh = carved(bench, solid, (220, 60), spacing=(0.6, 1.0))
        except NothingLeft:
            continue
        place_ligament(bench, f"interspinous_ligament_{upper}_{lower}", "interspinous_ligament",
                       mesh, lines, [bone_of(upper), bone_of(lower)], level=upper)  # fmt: skip


def lay_supraspinous(bench: Workbench) -> None:
    """Lay the supraspinous ligament over the tips from C7 to L4, thinning out at L5."""
    levels = level_range("C7", "L5")
    tips = []
    for level in levels:
        tip = median(bench.landmark(f"{level}.spinous_process"))
        tips.append(tip + [0.0, 0.6, 0.0])
    tips = np.array(tips)
    line = resample(tips, 3 * len(tips))
    wide, thick = np.array(SUPRASPINOUS) * bench.frame.scale
    fade = np.clip((len(line) - 1 - np.arange(len(line))) / 4.0, 0.35, 1.0)
    solid = Solid().sweep(line, _LEFT, 0.5 * wide * fade, 0.5 * thick * fade, blend=0.5)
    mesh = carved(bench, solid, (1600, 320), spacing=(0.9, 1.5))
    lines = [line + x * _LEFT for x in (-2.0, 0.0, 2.0)]
    place_ligament(bench, "supraspinous_ligament", "supraspinous_ligament", mesh, lines,
                   [f"vertebra_{v}" for v in levels])  # fmt: skip


def lay_nuchal(bench: Workbench) -> None:
    """Lay the nuchal ligament: a median septum from C7 to the protuberance.

    Its free edge sags a little in front of the chord; its deep edge is fixed
    to the spines, the atlas and the crest of the occipital bone.
    """
    tip = median(bench.landmark("C7.spinous_process"))
    top = median(bench.landmark("occipital.external_protuberance"))
    chord = top - tip
    u = np.linspace(0, 1, 25)
    forward = np.array([0.0, -chord[2], chord[1]]) / np.linalg.norm(chord)
    free = tip + u[:, None] * chord + (np.sin(np.pi * u) * NUCHAL_SAG_MM)[:, None] * forward
    free[0] += [0.0, 1.0, 0.5]
    free[-1] += [0.0, 1.0, -1.0]
    deep = [tip + [0.0, -4.0, 0.0]]
    for level in ("C6", "C5", "C4", "C3", "C2"):
        p = median(bench.landmark(f"{level}.spinous_process"))
        deep.append(p + [0.0, -2.5, 0.0])
    deep.append(median(bench.landmark("C1.posterior_tubercle")) + [0.0, -0.5, 0.0])
    crest = bench.landmark("occipital.external_crest")
    crest = crest[np.argsort(crest[:, 1])]
    deep += [median(crest[k]) + [0, 0, 1.0] for k in (1, len(crest) // 2, len(crest) - 2)]
    deep = np.array(deep)
    deep = deep[np.concatenate([[True], np.diff(deep[:, 2]) > -50])]
    deep = resample(deep, len(u))
    middle, half = 0.5 * (free + deep), 0.5 * np.linalg.norm(free - deep, axis=1)
    solid = Solid()
    thick = 0.5 * NUCHAL_THICKNESS_MM
    for i in range(len(u) - 1):
        side = (free[i] - deep[i]) + (free[i + 1] - deep[i + 1])
        solid.blade(middle[i], middle[i + 1], side, (half[i], half[i + 1]), thick,
                    blend=0.3, power=6.0)  # fmt: skip
    mesh = carved(bench, solid, (900, 180), spacing=(0.65, 1.0))
    lines = [deep + t * (free - deep) for t in (0.1, 0.4, 0.7, 0.95)]
    bones = ["cranium"] + [f"vertebra_{v}" for v in level_range("C1", "C7")]
    place_ligament(bench, "nuchal_ligament", "nuchal_ligament", mesh, lines, bones)


def lay_atlanto_occipital_membrane(bench: Workbench) -> None:
    """Lay the membrane from the back rim of the foramen magnum to the arch of the atlas."""
    ring = bench.landmark("occipital.foramen_magnum")
    behind = median(bench.landmark("occipital.opisthion"))
    rim_middle = ring.mean(0)
    f = bench.frame["C1"]
    arch_middle = median(bench.landmark("C1.canal_centre"))
    arch_back = median(bench.landmark("C1.spinous_root")) + [0, -2.0, -0.5]
    solid, lines = Solid(), []
    angles = np.deg2rad(np.linspace(-58, 58, 9))
    for k, angle in enumerate(angles):
        rim = rim_middle[1] + np.cos(angle) * (behind[1] - rim_middle[1])
        high = np.array([np.sin(angle) * 15.0, rim + 0.5, behind[2] + 1.0])
        low = np.array(
            [
                np.sin(angle) * (0.5 * f.canal_width + 2.5),
                arch_middle[1] + np.cos(angle) * (arch_back[1] - arch_middle[1]),
                arch_back[2] - 0.5,
            ]
        )
        line = resample(np.array([low, high]), 4)
        lines.append(line)
        side = np.array([np.cos(angle), -np.sin(angle), 0.0])
        solid.sweep(line, side, 2.8, 0.75, blend=0.0 if k == 0 else 0.8)
    mesh = carved(bench, solid, (420, 90), spacing=(0.7, 1.1))
    place_ligament(bench, "posterior_atlanto_occipital_membrane",
                   "posterior_atlanto_occipital_membrane", mesh, lines,
                   ["cranium", "vertebra_C1"])  # fmt: skip


# --- at the sides ------------------------------------------------------------------------


def _paired(
    bench: Workbench,
    name: str,
    entry: str,
    lines: Sequence[np.ndarray],
    side: np.ndarray,
    width: float | np.ndarray,
    thickness: float,
    bones: Sequence[str],
    *,
    triangles: tuple[int, int] = (220, 60),
    level: str = "",
) -> None:
    """Lay a ligament of the left side made of bands along lines."""
    solid = Solid()
    for k, line in enumerate(lines):
        path = resample(line, max(5, len(line)))
        solid.sweep(path, side, 0.5 * np.broadcast_to(width, len(path)), 0.5 * thickness,
                    blend=0.0 if k == 0 else 1.5)  # fmt: skip
    mesh = carved(bench, solid, triangles, spacing=(0.8, 1.2), x_min=0.3)
    place_ligament(bench, f"{name}.left", entry, mesh, lines, bones, level=level)


def lay_intertransverse(bench: Workbench) -> None:
    """Lay the intertransverse ligaments: cords in the chest, thin sheets in the loin."""
    for upper in level_range("T1", "L4"):
        lower = below(upper)
        a = bench.landmark(f"{upper}.left.transverse_process")
        b = bench.landmark(f"{lower}.left.transverse_process")
        loin = upper[0] == "L" or upper == "T12"
        inward = np.array([-3.0, -2.5 if not loin else -3.0, 0.0])
        line = resample(np.array([b + inward, a + inward]), 5)
        _paired(bench, f"intertransverse_ligament_{upper}_{lower}", "intertransverse_ligament",
                [line], _LEFT, 8.0 if loin else 3.0, 1.3 if loin else 2.0,
                [bone_of(upper), bone_of(lower)], level=upper)  # fmt: skip


def lay_costotransverse(bench: Workbench) -> None:
    """Lay the superior costotransverse ligaments: neck of a rib to the process above it."""
    for n in range(2, 13):
        above = f"T{n - 1}"
        rib = f"rib_{n}.left"
        neck = bench.landmark(f"{rib}.neck")
        tubercle = bench.landmark(f"{rib}.tubercle")
        process = bench.landmark(f"{above}.left.transverse_process")
        lamina = bench.landmark(f"{above}.left.lamina")
        start = 0.5 * (neck + tubercle) + [0.0, -1.0, 2.5]
        stop = 0.72 * process + 0.28 * lamina + [0.0, -4.0, -3.5]
        if n == 12:
            start = neck + [4.0, 0.0, 2.0]
        _paired(bench, f"superior_costotransverse_ligament_{n}",
                "superior_costotransverse_ligament", [resample(np.array([start, stop]), 5)],
                neck - tubercle, 7.0, 1.5, [rib, bone_of(above)], level=str(n))  # fmt: skip


def lay_lumbopelvic(bench: Workbench) -> None:
    """Lay the iliolumbar, lumbocostal, posterior sacroiliac and sacrotuberous ligaments."""
    crest = resample(bench.landmark("ilium.left.crest"), 60)
    process = bench.landmark("L5.left.transverse_process")
    lines = []
    for share, dz in ((0.16, 2.0), (0.2, 0.0), (0.24, -2.0)):
        target = crest[int(share * 59)] + [-5.0, -2.0, -4.0]
        lines.append(resample(np.array([process + [-4.0, -1.5, 0.5 * dz], target]), 7))
    _paired(bench, "iliolumbar_ligament", "iliolumbar_ligament", lines, _UP, 6.0, 3.0,
            ["vertebra_L5", "hip_bone.left"], triangles=(320, 80))  # fmt: skip

    border = bench.landmark("rib_12.left.lower_border")
    lines = []
    for level, share in (("L1", 0.2), ("L1", 0.4), ("L2", 0.6)):
        tip = bench.landmark(f"{level}.left.transverse_process")
        target = border[int(share * (len(border) - 1))]
        lines.append(resample(np.array([tip + [0.0, -1.0, 0.5], target + [0, -0.5, 0.5]]), 9))
    _paired(bench, "lumbocostal_ligament", "lumbocostal_ligament", lines, _LEFT, 7.0, 1.4,
            ["vertebra_L1", "vertebra_L2", "rib_12.left"], triangles=(400, 90))  # fmt: skip

    lateral = resample(bench.landmark("sacrum.left.lateral_crest"), 20)
    spine, lower = bench.landmark("ilium.left.PSIS"), bench.landmark("ilium.left.PIIS")
    lines = []
    for share, t in ((0.3, 0.0), (0.5, 0.1), (0.68, 0.25), (0.85, 0.5)):
        start = spine + t * (lower - spine) + [-1.0, 0.5, 1.0]
        stop = lateral[int(share * 19)] + [0.0, 1.0, 0.0]
        u = np.linspace(0, 1, 8)[:, None]
        lines.append((1 - u) * start + u * stop + np.sin(np.pi * u) * [0.0, 3.0, 0.0])
    _paired(bench, "posterior_sacroiliac_ligament", "posterior_sacroiliac_ligament", lines,
            [0.6, 0.0, 0.8], 7.0, 2.6, ["hip_bone.left", "sacrum"], triangles=(420, 90))  # fmt: skip

    tuberosity = bench.landmark("ilium.left.ischial_tuberosity")
    coccyx = bench.landmark("coccyx.left.transverse_process")
    corner = bench.landmark("sacrum.left.inferior_lateral_angle")
    knot = 0.55 * tuberosity + 0.45 * corner + [2.0, 4.0, 0.0]
    lines = []
    for start in (lower + [-1, 3.0, -2.0], lateral[15] + [3, 1, 0], corner + [1, 1, 0], coccyx):
        way = np.array([start, 0.4 * start + 0.6 * knot, knot + 0.12 * (start - corner),
                        tuberosity + [-6.0, 4.0, 8.0], tuberosity + [-2.0, 3.0, 1.0]])  # fmt: skip
        lines.append(resample(way, 12))
    _paired(bench, "sacrotuberous_ligament", "sacrotuberous_ligament", lines, [0.5, 0.1, 0.85],
            8.0, 3.0, ["hip_bone.left", "sacrum", "coccyx"], triangles=(600, 120))  # fmt: skip
