"""Ligaments of the column, the pelvis and the nape, carved between the bones."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import trimesh

from meshes.drape.carve import carve, fibre_coordinates
from meshes.drape.distance import MeshIndex
from meshes.drape.several import Several
from meshes.model import Attachment, Contact, Part
from meshes.shapes.solid import Solid
from meshes.skeleton.frame import LEVELS
from meshes.soft.fascicles import level_range
from meshes.soft.small import resample
from meshes.soft.tubes import cleared, settle, smooth_course, trimmed, tube
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
    several = Several(indices)
    for _ in range(24):
        p = start + gone[:, None] * way
        height = np.minimum(several.least(p, 12.0, 12.0), 12.0)
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
    if lower == "L5":
        points.append(median(bench.landmark("S1.body_centre")))
        backs.append(bench.frame.sacral_axes[:, 1])
        disc.append(0.0)
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
        vertices = cleared(vertices, faces, indices, 0.12)
        mesh = trimesh.Trimesh(vertices, faces, process=False)
        lines = [0.5 * (inner + outer)[:, c] for c in range(columns)]
        place_ligament(
            bench, entry, entry, mesh, lines,
            [*(f"vertebra_{v}" for v in level_range("C2", "L5")), "sacrum"],
        )  # fmt: skip

    angle = across * np.deg2rad(38)
    way = np.sin(-angle)[None, :, None] * _LEFT + np.cos(angle)[None, :, None] * back[:, None]
    start = centre[:, None] - (0.9 * wide + 6.0)[:, None, None] * way
    strip("anterior_longitudinal_ligament", start, np.broadcast_to(way, start.shape), 60.0, 1.8)

    spread = np.where(disc > 0.4, 0.14, 0.08)[:, None] * wide[:, None] * across
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


# --- sheets and bands ----------------------------------------------------------------


def sheet_of_lines(
    bench: Workbench,
    lines: Sequence[np.ndarray],
    thickness: float,
    *,
    without: Sequence[str] = (),
    columns: tuple[int, int] = (16, 8),
    rows: tuple[int, int] = (9, 5),
) -> tuple[trimesh.Trimesh, list[np.ndarray]]:
    """Thin closed sheet through neighbouring fibre lines, pushed clear of everything.

    Parameters
    ----------
    bench : Workbench
    lines : sequence of (k, 3) float
        Side by side, each from origin to insertion, mm.
    thickness : float
        In the middle, mm; the rim is thinner.
    columns, rows : (full, preview)
        Points along and across.

    Returns
    -------
    mesh, fibre lines
    """
    choose = 0 if bench.full else 1
    count = columns[choose]
    near = bench.near(np.concatenate(lines), 5.0, without)
    courses = [trimmed(smooth_course(line, 2.0), near, 0.5 * thickness) for line in lines]
    grid = np.stack([resample(line, count) for line in courses])
    wanted = np.linspace(0, len(lines) - 1, rows[choose])
    low = np.minimum(wanted.astype(int), len(lines) - 2)
    share = (wanted - low)[:, None, None]
    grid = (1 - share) * grid[low] + share * grid[low + 1]
    obstacles = bench.near(grid, 5.0, without)
    grid = np.stack([settle(line, 0.5 * thickness, obstacles, gap=0.2) for line in grid])
    for _ in range(2):
        grid[1:-1] += 0.3 * (0.5 * (grid[:-2] + grid[2:]) - grid[1:-1])
    along, across = np.gradient(grid, axis=1), np.gradient(grid, axis=0)
    normal = np.cross(along, across)
    normal /= np.maximum(np.linalg.norm(normal, axis=2, keepdims=True), 1e-9)
    v = np.abs(np.linspace(-1, 1, len(grid)))
    half = 0.5 * thickness * (1 - 0.65 * v**4)[:, None, None]
    vertices, faces = slab(grid - half * normal, grid + half * normal)
    vertices = cleared(vertices, faces, obstacles, 0.12)
    return trimesh.Trimesh(vertices, faces, process=False), list(grid)


def band(
    bench: Workbench, line: np.ndarray, width: float, thickness: float
) -> tuple[trimesh.Trimesh, list[np.ndarray]]:
    """Flat band along a line, pushed clear of everything; its width lies across the back."""
    obstacles = bench.near(line, 5.0)
    path = smooth_course(line, max(1.6, 0.5 * width) if bench.full else width)
    path = trimmed(path, obstacles, 0.5 * thickness)
    path = resample(path, max(int(len(path) / 3), 4))
    path = settle(path, 0.5 * thickness, obstacles, gap=0.15)
    vertices, faces, _ = tube(path, 0.5 * width, 8 if bench.full else 6, thickness / width)
    vertices = cleared(vertices, faces, obstacles, 0.12)
    return trimesh.Trimesh(vertices, faces, process=False), [path]


# --- between laminae and spines ------------------------------------------------------


def lay_flava(bench: Workbench) -> None:
    """Lay the ligamenta flava: a trough from each lamina to the next, inside the back wall."""
    angles = np.deg2rad(np.linspace(-56, 56, 11 if bench.full else 7))
    rows = 6 if bench.full else 4
    way = np.stack([np.sin(angles), np.cos(angles), np.zeros_like(angles)], 1)
    line = canal_line(bench)
    for upper in level_range("C2", "L5"):
        lower = below(upper)
        f = bench.frame[upper]
        thick = {"C": 1.6, "T": 2.2, "L": 3.0}[upper[0]] * bench.frame.scale
        lamina = bench.landmark(f"{upper}.left.lamina")
        root = bench.landmark(f"{lower}.spinous_root" if lower != "S1" else "S1.median_crest")
        top = lamina[2] - 0.5
        bottom = min(root[2] - 1.5, top - 5.0)
        middle = line(np.linspace(top, bottom, rows))
        indices = [bench.index(bone_of(v)) for v in (upper, lower)]
        start = np.repeat(middle[:, None], len(angles), axis=1)
        flat = np.broadcast_to(way, start.shape).reshape(-1, 3)
        # Wider than deep: the canal is an ellipse.
        ellipse = 0.5 / np.hypot(np.sin(angles) / f.canal_width, np.cos(angles) / f.canal_depth)
        gone = advance(start.reshape(-1, 3), flat, indices, 0.2, 25.0).reshape(rows, -1)
        gone = np.minimum(gone, 0.5 * (gone + gone[:, ::-1]) + 0.3)
        met = gone < 1.45 * ellipse + 2.0
        default = 1.04 * ellipse + 1.0
        first = np.where(met[0], gone[0], default)
        last = np.where(met[-1], gone[-1], default)
        u = np.linspace(0, 1, rows)[:, None]
        outer = np.minimum((1 - u) * first + u * last, np.where(met, gone, 99.0))
        outer = np.clip(outer, 0.45 * ellipse, 1.3 * ellipse + 2.0)
        edge = 1 - 0.5 * np.abs(np.linspace(-1, 1, len(angles))) ** 4
        # Where bone leaves little room the ligament is thinner.
        edge = np.minimum(edge, np.maximum(outer - 0.72 * ellipse, 0.7) / thick)
        outside = start + outer[..., None] * way
        inside = start + (outer - thick * edge)[..., None] * way
        vertices, faces = slab(inside, outside)
        mesh = trimesh.Trimesh(cleared(vertices, faces, indices, 0.1), faces, process=False)
        lines = list(np.transpose(0.5 * (inside + outside), (1, 0, 2)))
        place_ligament(bench, f"ligamentum_flavum_{upper}_{lower}", "ligamentum_flavum", mesh,
                       lines, [bone_of(upper), bone_of(lower)], level=upper)  # fmt: skip


def lay_interspinous(bench: Workbench) -> None:
    """Lay the interspinous ligaments: thin median plates, broad in the loin."""
    count = 13
    for upper in level_range("C2", "L4"):
        lower = below(upper)
        # Both processes as chords from root to tip; the plate spans between them.
        chords = []
        for level in (upper, lower):
            root = median(bench.landmark(f"{level}.spinous_root"))
            tip = median(bench.landmark(f"{level}.spinous_process"))
            t = np.linspace(0.2, 0.97, count)[:, None]
            chords.append(root + t * (tip - root))
        indices = [bench.index(bone_of(v)) for v in (upper, lower)]
        up = chords[0] - chords[1]
        reach = np.linalg.norm(up, axis=1)
        up /= reach[:, None]
        # From where the plate is clear of both bones it grows up and down until it meets them.
        share = np.linspace(0, 1, 15)
        trial = chords[1][:, None] + share[None, :, None] * (chords[0] - chords[1])[:, None]
        clear = np.full(trial.shape[:2], np.inf)
        for index in indices:
            d = index.signed_distance(trial.reshape(-1, 3), 30.0)[0]
            clear = np.minimum(clear, d.reshape(clear.shape))
        best = np.argmax(clear, axis=1)
        clear = clear[np.arange(count), best]
        # Where the laminae overlap there is no room: the plate starts farther back. Where the
        # spines all but touch, only a thin one fits.
        for thinner in (1.0, 0.6, 0.3):
            thick = thinner * {"C": 1.4, "T": 1.6, "L": 2.6}[upper[0]]
            room = clear > 0.5 * thick + 0.3
            if room.sum() >= 3:
                break
        else:
            continue
        start = trial[np.arange(count), best][room]
        up, reach = up[room], reach[room]
        above = 0.5 * thick + 0.15
        high = start + advance(start, up, indices, above, 0.8 * reach)[:, None] * up
        low = start - advance(start, -up, indices, above, 0.8 * reach)[:, None] * up
        t = np.linspace(0, 1, 5 if bench.full else 3)[:, None, None]
        grid = (1 - t) * low + t * high
        half = 0.5 * thick * _LEFT
        vertices, faces = slab(grid - half, grid + half)
        mesh = trimesh.Trimesh(cleared(vertices, faces, indices, 0.1), faces, process=False)
        lines = list(np.transpose(grid, (1, 0, 2)))
        place_ligament(bench, f"interspinous_ligament_{upper}_{lower}", "interspinous_ligament",
                       mesh, lines, [bone_of(upper), bone_of(lower)], level=upper)  # fmt: skip


def lay_supraspinous(bench: Workbench) -> None:
    """Lay the supraspinous ligament over the tips from C7 to L4, thinning out at L5."""
    levels = level_range("C7", "L5")
    tips = [median(bench.landmark(f"{v}.spinous_process")) + [0, 0.8, 0] for v in levels]
    wide, thick = np.array(SUPRASPINOUS) * bench.frame.scale
    line = resample(np.array(tips), 110 if bench.full else 40)
    obstacles = bench.near(line, 4.0)
    line = settle(line, 0.5 * thick, obstacles, gap=0.2)
    line[:, 0] = 0.0
    fade = np.clip((len(line) - np.arange(len(line))) / (0.06 * len(line)), 0.35, 1.0)
    vertices, faces, _ = tube(line, 0.5 * wide * fade, 8, thick / wide)
    mesh = trimesh.Trimesh(cleared(vertices, faces, obstacles, 0.1), faces, process=False)
    lines = [line + x * _LEFT for x in (-2.0, 0.0, 2.0)]
    place_ligament(bench, "supraspinous_ligament", "supraspinous_ligament", mesh, lines,
                   [f"vertebra_{v}" for v in levels])  # fmt: skip


def lay_nuchal(bench: Workbench) -> None:
    """Lay the nuchal ligament: a median septum from C7 to the protuberance.

    Its free edge sags a little in front of the chord; its deep edge reaches
    the spines, the atlas and the crest of the occipital bone.
    """
    tip = median(bench.landmark("C7.spinous_process"))
    top = median(bench.landmark("occipital.external_protuberance"))
    chord = top - tip
    u = np.linspace(0, 1, 34 if bench.full else 16)
    forward = np.array([0.0, -chord[2], chord[1]]) / np.linalg.norm(chord)
    free = tip + u[:, None] * chord + (np.sin(np.pi * u) * NUCHAL_SAG_MM)[:, None] * forward
    free += (1.2 * np.abs(np.cos(np.pi * u)) ** 6)[:, None] * -forward
    free[0] += [0.0, -2.0, 1.0]
    bones = ["cranium"] + [f"vertebra_{v}" for v in level_range("C1", "C7")]
    indices = [bench.index(i) for i in bones]
    deep = [median(bench.landmark(f"{v}.spinous_process")) for v in ("C7", "C6", "C5", "C4", "C3")]
    deep += [median(bench.landmark(f"{v}.spinous_process")) for v in ("C2", "C1")]
    crest = bench.landmark("occipital.external_crest")
    crest = crest[np.argsort(crest[:, 1])]
    deep += [median(crest[int(t * (len(crest) - 1))]) for t in (0.1, 0.4, 0.7, 1.0)]
    deep = resample(np.array(deep), len(u)) + 1.5 * forward
    way = deep - free
    reach = np.linalg.norm(way, axis=1)
    way /= np.maximum(reach, 1e-6)[:, None]
    half = 0.5 * NUCHAL_THICKNESS_MM
    gone = advance(free, way, indices, half + 0.15, np.maximum(reach, 1.5))
    gone = np.maximum(gone, 1.2)
    t = np.linspace(0, 1, 8 if bench.full else 4)[:, None, None]
    grid = free + t * (gone[:, None] * way)
    size = half * (1 - 0.25 * np.abs(2 * t - 1) ** 4) * _LEFT
    vertices, faces = slab(grid - size, grid + size)
    mesh = trimesh.Trimesh(cleared(vertices, faces, indices, 0.1), faces, process=False)
    place_ligament(bench, "nuchal_ligament", "nuchal_ligament", mesh, list(grid), bones)


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


# --- at the sides --------------------------------------------------------------------


def lay_intertransverse(bench: Workbench) -> None:
    """Lay the intertransverse ligaments: cords in the chest, thin sheets in the loin."""
    for upper in level_range("T1", "L4"):
        lower = below(upper)
        a = bench.landmark(f"{upper}.left.transverse_process")
        b = bench.landmark(f"{lower}.left.transverse_process")
        loin = upper[0] == "L" or upper == "T12"
        inward = np.array([-4.5, -3.0, 0.0]) if loin else np.array([-3.0, -2.5, 0.0])
        line = resample(np.array([b + inward, a + inward]), 6)
        mesh, lines = band(bench, line, 8.0 if loin else 3.0, 1.4 if loin else 2.0)
        place_ligament(bench, f"intertransverse_ligament_{upper}_{lower}.left",
                       "intertransverse_ligament", mesh, lines,
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
        start = 0.5 * (neck + tubercle) + [0.0, -1.0, 3.0]
        stop = 0.75 * process + 0.25 * lamina + [0.0, -4.0, -3.5]
        if n == 12:
            start = neck + [4.0, 0.0, 3.0]
        mesh, lines = band(bench, resample(np.array([start, stop]), 6), 6.0, 1.5)
        place_ligament(bench, f"superior_costotransverse_ligament_{n}.left",
                       "superior_costotransverse_ligament", mesh, lines,
                       [rib, bone_of(above)], level=str(n))  # fmt: skip


def lay_lumbopelvic(bench: Workbench) -> None:
    """Lay the iliolumbar, lumbocostal, posterior sacroiliac and sacrotuberous ligaments."""
    crest = resample(bench.landmark("ilium.left.crest"), 60)
    process = bench.landmark("L5.left.transverse_process")
    lines = []
    for share, dz in ((0.26, 3.0), (0.21, 0.0), (0.16, -3.0)):
        target = crest[int(share * 59)] + [-3.0, -2.0, -4.0]
        lines.append(np.array([process + [-3.0, -1.0, 0.7 * dz], target]))
    mesh, lines = sheet_of_lines(bench, lines, 3.0)
    place_ligament(bench, "iliolumbar_ligament.left", "iliolumbar_ligament", mesh, lines,
                   ["vertebra_L5", "hip_bone.left"])  # fmt: skip

    border = bench.landmark("rib_12.left.lower_border")
    lines = []
    for level, part, share in (("L1", 0.5, 0.12), ("L1", 0.0, 0.3), ("L2", 0.0, 0.5)):
        tip = bench.landmark(f"{level}.left.transverse_process")
        target = border[int(share * (len(border) - 1))]
        lines.append(np.array([tip + [-3.0 * part, -1.0, 1.0], target + [0, -0.5, -0.5]]))
    mesh, lines = sheet_of_lines(bench, lines, 1.2)
    place_ligament(bench, "lumbocostal_ligament.left", "lumbocostal_ligament", mesh, lines,
                   ["vertebra_L1", "vertebra_L2", "rib_12.left"])  # fmt: skip

    lateral = resample(bench.landmark("sacrum.left.lateral_crest"), 20)
    spine, lower = bench.landmark("ilium.left.PSIS"), bench.landmark("ilium.left.PIIS")
    lines = []
    for share, t in ((0.35, -0.25), (0.5, 0.0), (0.68, 0.2), (0.9, 0.4)):
        start = spine + t * (lower - spine) + [-1.5, 0.5, 0.0]
        stop = lateral[int(share * 19)] + [-1.0, 2.0, 0.0]
        lines.append(np.array([start, 0.5 * (start + stop) + [0, 4.0, 0], stop]))
    mesh, lines = sheet_of_lines(bench, lines, 2.4, rows=(11, 6))
    place_ligament(bench, "posterior_sacroiliac_ligament.left", "posterior_sacroiliac_ligament",
                   mesh, lines, ["hip_bone.left", "sacrum"])  # fmt: skip

    tuberosity = bench.landmark("ilium.left.ischial_tuberosity")
    coccyx = bench.landmark("coccyx.left.transverse_process")
    corner = bench.landmark("sacrum.left.inferior_lateral_angle")
    # Broad at the pelvis and the sacrum, a waist, and broader again on the tuberosity.
    knot = 0.6 * tuberosity + 0.4 * corner + [4.0, 6.0, 0.0]
    ends = (
        lower + [-1, 3.0, -2.0],
        lateral[16] + [3.5, 2.0, 0.0],
        corner + [3.5, 1.5, -1.0],
        coccyx + [2.5, 0.0, 0.0],
    )
    lines = []
    for k, start in enumerate(ends):
        across = np.array([1.0, 0.0, 0.6]) * (1.5 - k)
        lines.append(
            np.array([start, 0.5 * start + 0.5 * knot + across, knot + 3.0 * across,
                      tuberosity + [-2.0, 5.0, 3.0] + 4.5 * across])
        )  # fmt: skip
    mesh, lines = sheet_of_lines(bench, lines, 2.8, columns=(22, 10), rows=(11, 6))
    place_ligament(bench, "sacrotuberous_ligament.left", "sacrotuberous_ligament", mesh, lines,
                   ["hip_bone.left", "sacrum", "coccyx"])  # fmt: skip
