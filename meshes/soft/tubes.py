"""Nerves and vessels: a smooth course that keeps clear of what is there, and its tube."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import trimesh
from scipy.interpolate import CubicSpline

from meshes.drape.bundle import large_pieces
from meshes.drape.carve import clear_of, fibre_coordinates
from meshes.drape.distance import MeshIndex
from meshes.drape.several import Several
from meshes.model import Contact, Part
from meshes.shapes.polyline import resample, thinned
from meshes.soft.workbench import Workbench

LEAST_RADIUS_MM = 0.6
"""Thinner tubes are drawn at this radius, so that they can be seen and picked."""
CLEARANCE_MM = 0.3
SOFT = ("muscle", "fascia", "tendon", "skin")
"""Kinds that a tube may run through."""
_REACH_MM = 10.0
_SPECK_FACES = 10
"""Pieces with fewer triangles than this are no part of a tube."""
_PARTING_MM = 4.0
_BOWED_MM = 0.35
"""How far the course of a preview's tube may lie from the settled one."""
_HAIR_MM = 1.2
"""Radius up to which a preview's tube has four sides."""
_STOUT_MM = 3.0
"""Radius from which its ends are rounded."""
SEAM_MM = {"full": 1e-3, "preview": 0.05}
"""How far united tubes may move when short edges are taken away."""
_LONGEST_STEP_MM = 15.0
"""A nerve that a turned-back flap takes along bends at its points."""


@dataclass(frozen=True)
class Branch:
    """A side course that melts into the stem.

    Attributes
    ----------
    waypoints : (k, 3) float
        From the stem outward, mm.
    radius : float
        mm.
    """

    waypoints: np.ndarray
    radius: float


def smooth_course(waypoints: np.ndarray, step: float) -> np.ndarray:
    """Spline (n, 3) through waypoints (k, 3), evenly spaced about ``step`` mm apart."""
    waypoints = np.asarray(waypoints, float).reshape(-1, 3)
    chord = np.linalg.norm(np.diff(waypoints, axis=0), axis=1)
    waypoints = waypoints[np.concatenate([[True], chord > 1e-6])]
    if len(waypoints) < 2:
        raise ValueError("a course needs two different waypoints or more")
    # The root of the chord as parameter keeps the spline from looping at close waypoints.
    t = np.concatenate(
        [[0.0], np.cumsum(np.linalg.norm(np.diff(waypoints, axis=0), axis=1) ** 0.5)]
    )
    if len(waypoints) > 2:
        fine = CubicSpline(t, waypoints, bc_type="natural")(np.linspace(0, t[-1], 12 * len(t)))
    else:
        fine = waypoints
    length = np.linalg.norm(np.diff(fine, axis=0), axis=1).sum()
    return resample(fine, max(int(np.ceil(length / step)) + 1, 4))


def drop(bench: Workbench, line: np.ndarray, direction: np.ndarray, above: float) -> np.ndarray:
    """Lower a course on to what has been laid.

    Parameters
    ----------
    bench : Workbench
    line : (n, 3) float
        mm; only its place across ``direction`` matters.
    direction : (3,) or (n, 3) float
        Towards the body.
    above : float
        Wanted height of the centre line over the surface, mm.

    Returns
    -------
    (n, 3) float
    """
    way = np.broadcast_to(np.asarray(direction, float), line.shape)
    way = way / np.linalg.norm(way, axis=1, keepdims=True)
    start = line - 40.0 * way
    gone = np.zeros(len(line))
    for _ in range(60):
        height = bench.field.sample(start + gone[:, None] * way) - above
        gone += np.where(height > 0.05, np.clip(0.8 * height, 0.1, None), 0.0)
    # Where nothing lies below, the course bridges from where something does.
    fell = gone < 75.0
    if not fell.any():
        return line
    place = np.arange(len(line))
    gone = np.interp(place, place[fell], gone[fell])
    # A nerve bridges narrow furrows: smooth, but never below the surface found.
    for _ in range(3):
        even = np.convolve(np.pad(gone, 2, mode="edge"), [0.1, 0.2, 0.4, 0.2, 0.1], mode="valid")
        gone = np.minimum(gone, even) * 0.5 + even * 0.5
    return start + gone[:, None] * way


def settle(
    line: np.ndarray,
    radius: np.ndarray | float,
    obstacles: Sequence[MeshIndex],
    *,
    gap: float = CLEARANCE_MM,
    rounds: int = 14,
    ease: float = 0.25,
) -> np.ndarray:
    """Push a course out of its obstacles and keep it smooth.

    Parameters
    ----------
    line : (n, 3) float
        Centre line, mm.
    radius : float or (n,) float
        mm.
    obstacles : sequence of MeshIndex
    gap : float
        Wanted clearance of the tube's wall, mm.
    rounds : int
    ease : float
        Share of smoothing in each round but the last ones.

    Returns
    -------
    (n, 3) float
    """
    need = np.broadcast_to(np.asarray(radius, float), len(line)) + gap
    return Several(obstacles).settle(line, need, rounds, ease, _REACH_MM)


def tube(
    line: np.ndarray,
    radius: np.ndarray | float,
    sides: int,
    squeeze: float = 1.0,
    *,
    rounded: bool = True,
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Closed tube round a course, with rounded ends.

    Parameters
    ----------
    line : (n, 3) float
    radius : float or (n,) float
        mm.
    sides : int
    squeeze : float
        Height of the section relative to its width; 1 is round.
    rounded : bool
        False ends the tube in points instead, with fewer triangles.

    Returns
    -------
    vertices : (m, 3) float
    faces : (k, 3) int
        Outward.
    uv : (m, 2) float32
        Along and round.
    """
    line = np.asarray(line, float)
    radius = np.broadcast_to(np.asarray(radius, float), len(line))
    along = np.gradient(line, axis=0)
    along /= np.maximum(np.linalg.norm(along, axis=1, keepdims=True), 1e-9)
    # Carried from point to point, the frame does not twist.
    first = np.array([0.0, 1.0, 0.0]) if abs(along[0, 1]) < 0.9 else np.array([1.0, 0.0, 0.0])
    up = np.empty_like(line)
    for i, t in enumerate(along):
        first = first - (first @ t) * t
        first = first / max(np.linalg.norm(first), 1e-9)
        up[i] = first
    side = np.cross(along, up)
    centres, sizes, ups, across = line, radius, up, side
    if rounded:
        centres = np.concatenate(
            [
                line[:1] - 0.75 * radius[0] * along[:1],
                line,
                line[-1:] + 0.75 * radius[-1] * along[-1:],
            ]
        )
        sizes = np.concatenate([[0.66 * radius[0]], radius, [0.66 * radius[-1]]])
        ups = np.concatenate([up[:1], up, up[-1:]])
        across = np.concatenate([side[:1], side, side[-1:]])
    angle = 2 * np.pi * np.arange(sides) / sides
    ring = (
        np.cos(angle)[None, :, None] * across[:, None]
        + squeeze * np.sin(angle)[None, :, None] * ups[:, None]
    )
    rings = centres[:, None] + sizes[:, None, None] * ring
    count = len(centres)
    start = line[0] - radius[0] * along[0]
    stop = line[-1] + radius[-1] * along[-1]
    vertices = np.concatenate([rings.reshape(-1, 3), [start, stop]])
    corner = np.arange(count * sides).reshape(count, sides)
    a, b = corner[:-1], np.roll(corner[:-1], -1, axis=1)
    c, d = np.roll(corner[1:], -1, axis=1), corner[1:]
    faces = [np.stack([a, b, c], -1).reshape(-1, 3), np.stack([a, c, d], -1).reshape(-1, 3)]
    low, high = count * sides, count * sides + 1
    faces.append(np.stack([np.full(sides, low), np.roll(corner[0], -1), corner[0]], -1))
    faces.append(np.stack([np.full(sides, high), corner[-1], np.roll(corner[-1], -1)], -1))
    faces = np.concatenate(faces)
    if _volume(vertices, faces) < 0:
        faces = faces[:, ::-1]
    s = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    s = s / max(s[-1], 1e-9)
    u = np.repeat(np.concatenate([[0.0], s, [1.0]]) if rounded else s, sides)
    v = np.tile(np.arange(sides) / sides, count)
    uv = np.stack([np.concatenate([u, [0, 1]]), np.concatenate([v, [0, 0]])], axis=1)
    return vertices, faces, uv.astype(np.float32)


def _volume(vertices: np.ndarray, faces: np.ndarray) -> float:
    corners = (vertices - vertices.mean(0))[faces]
    return float(np.einsum("ij,ij->", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])))


def unite(
    pieces: Sequence[tuple[np.ndarray, np.ndarray]], seam: float = 1e-3
) -> tuple[np.ndarray, np.ndarray]:
    """Boolean union of closed meshes (vertices, faces), exact where they cross.

    Short edges are taken away as long as nothing moves farther than ``seam`` mm.
    """
    import manifold3d

    whole = None
    for vertices, faces in pieces:
        solid = manifold3d.Manifold(
            manifold3d.Mesh64(
                np.ascontiguousarray(vertices, np.float64), np.ascontiguousarray(faces, np.uint64)
            )
        )
        if solid.is_empty():
            raise ValueError("unite: a piece is not a closed mesh")
        whole = solid if whole is None else whole + solid
    # Slivers along the seams would be degenerate in single precision.
    mesh = whole.simplify(seam).to_mesh64()
    vertices = np.array(mesh.vert_properties)[:, :3]
    faces = np.array(mesh.tri_verts).astype(np.int64)
    # Specks that enclose nothing are left where walls all but coincide.
    return large_pieces(vertices, faces, _SPECK_FACES / len(faces))


def join(meshes: Sequence[tuple[np.ndarray, np.ndarray]]) -> tuple[np.ndarray, np.ndarray]:
    """Put meshes that do not touch into one."""
    offset = np.cumsum([0] + [len(v) for v, _ in meshes])
    return (
        np.concatenate([v for v, _ in meshes]),
        np.concatenate([f + o for (_, f), o in zip(meshes, offset, strict=False)]),
    )


def cleared(
    vertices: np.ndarray, faces: np.ndarray, obstacles: Sequence[MeshIndex], gap: float
) -> np.ndarray:
    """Lift vertices out of the obstacles, but nowhere so that the mesh would cross itself.

    Parameters
    ----------
    vertices : (n, 3) float
    faces : (m, 3) int
    obstacles : sequence of MeshIndex
    gap : float
        mm.

    Returns
    -------
    (n, 3) float
    """
    from meshes.drape.audit import self_intersections

    moved = clear_of(vertices, obstacles, gap)
    change = np.linalg.norm(moved - vertices, axis=1)
    if change.max(initial=0.0) < 1e-9:
        return moved
    share = np.ones(len(vertices))
    for turn in range(6):
        mesh = trimesh.Trimesh(vertices + share[:, None] * (moved - vertices), faces, process=False)
        crossing = self_intersections(mesh)
        if len(crossing) == 0:
            break
        # What crosses goes back towards where it was before, its neighbours a little.
        bad = np.unique(faces[np.unique(crossing)])
        share[bad] *= 0.45 if turn < 4 else 0.0
        around = np.unique(faces[np.isin(faces, bad).any(axis=1)])
        share[around] *= 0.8
    return vertices + share[:, None] * (moved - vertices)


def trimmed(line: np.ndarray, obstacles: Sequence[MeshIndex], need: float) -> np.ndarray:
    """Cut off the ends of a line (n, 3) that lie nearer than ``need`` mm to the obstacles."""
    fine = resample(line, max(3 * len(line), 24))
    free = Several(obstacles).least(fine, _REACH_MM, _REACH_MM) >= need
    most = int(0.42 * len(fine))
    first = int(np.argmax(free[:most])) if free[:most].any() else 0
    last = int(np.argmax(free[::-1][:most])) if free[::-1][:most].any() else 0
    return fine[first : len(fine) - last]


def lay_tube(
    bench: Workbench,
    part_id: str,
    entry: str,
    waypoints: np.ndarray,
    radius: float | Sequence[float] | np.ndarray | None = None,
    *,
    joins: Sequence[str] = (),
    without: Sequence[str] = (),
    through: Sequence[str] = SOFT,
    pierces: Sequence[str] = (),
    branches: Sequence[Branch] = (),
    onto: np.ndarray | None = None,
    clings_to: str | None = None,
    level: str = "",
    region: str = "",
    triangles: tuple[int, int] = (400, 90),
    gap: float = CLEARANCE_MM,
    settled: bool = True,
) -> Part:
    """Lay a nerve or vessel.

    Parameters
    ----------
    bench : Workbench
    part_id, entry : str
    waypoints : (k, 3) float
        From its source outward, mm.
    radius : float, (k,) float or None
        mm; several values are spread evenly from the source outward. None takes half the
        catalogue's calibre.
    joins : sequence of str
        Parts that it comes from or runs into: no obstacles; the contact is a "blend".
    without : sequence of str
        Parts that are no obstacle for other, declared reasons.
    through : sequence of str
        Kinds of part that it may run through; where it does, "pierce" is declared.
    pierces : sequence of str
        Parts of other kinds that it runs through.
    branches : sequence of Branch
    onto : (3,) or (n, 3) float or None
        Direction in which the course is lowered on to what is there.
    clings_to : str or None
        The sheet on whose face it runs.
    triangles : (full, preview)
    settled : bool
        False keeps the course exactly where the waypoints put it.

    Returns
    -------
    Part
    """
    record = bench.catalogue[entry]
    if radius is None:
        radius = 0.5 * float(record.calibre_mm)
    ends = np.atleast_1d(np.asarray(radius, float))
    asked = float(ends.min())
    ends = np.maximum(ends, LEAST_RADIUS_MM)
    budget = bench.triangles(*triangles)
    rounded = bench.full or ends.max() > _STOUT_MM
    sides = 8 if bench.full else (5 if ends.max() > _HAIR_MM else 4)
    courses = [(np.asarray(waypoints, float), ends)]
    courses += [
        (np.asarray(b.waypoints, float), np.full(1, max(b.radius, LEAST_RADIUS_MM)))
        for b in branches
    ]
    lines, radii, obstacles = [], [], None
    box = np.concatenate([c for c, _ in courses])
    ids = bench.near_ids(box, 6.0, (*joins, *without, *pierces))
    hard = [i for i in ids if bench.parts[i].kind not in through]
    obstacles = [bench.index(i) for i in hard]
    lengths = []
    for course, _ in courses:
        lengths.append(np.linalg.norm(np.diff(course, axis=0), axis=1).sum())
    rings = max(budget / (2 * sides) - 3 * len(courses), 4 * len(courses))
    for (course, size), length in zip(courses, lengths, strict=True):
        count = max(int(rings * length / max(sum(lengths), 1e-9)), 4)
        least = 1.2 * float(size.max())
        # Longer steps would cut the corners round a body or a rib.
        step = min(max(length / count, least), max(6.0, least))
        line = smooth_course(course, min(step, 3.0))
        r = profile(size, len(line))
        if onto is not None:
            line = drop(bench, line, _spread(onto, len(line)), float(size.max()) + gap)
        if settled:
            line = settle(line, r, obstacles, gap=gap)
        line = resample(line, max(int(round(length / step)) + 1, 4))
        r = profile(size, len(line))
        if not bench.full:
            kept = thinned(line, _BOWED_MM, _LONGEST_STEP_MM)
            if len(kept) >= 3:
                line, r = line[kept], r[kept]
        lines.append(line)
        radii.append(r)
    if len(lines) > 1:
        # A branch starts inside the stem wherever the stem has settled.
        for k in range(1, len(lines)):
            near = lines[0][np.argmin(np.linalg.norm(lines[0] - lines[k][0], axis=1))]
            fade = np.clip(1 - np.arange(len(lines[k])) / max(len(lines[k]) - 1, 1), 0, 1) ** 2
            lines[k] = lines[k] + fade[:, None] * (near - lines[k][0])
    tubes = [tube(line, r, sides, rounded=rounded) for line, r in zip(lines, radii, strict=True)]
    if len(tubes) == 1:
        vertices, faces, uv = tubes[0]
    else:
        vertices, faces = unite([(v, f) for v, f, _ in tubes], SEAM_MM[bench.detail])
        uv, _ = fibre_coordinates(vertices, lines)
    if settled:
        vertices = cleared(vertices, faces, obstacles, 0.15)
    count = max(len(line) for line in lines)
    mesh = trimesh.Trimesh(vertices, faces, process=False)
    part = Part(
        id=part_id,
        entry=entry,
        kind=record.kind,
        stratum=record.stratum,
        group=record.group,
        mesh=mesh,
        uv=uv,
        fibres=np.stack([resample(line, count) for line in lines]),
        clings_to=clings_to,
        level=level,
        region=region or record.region,
        drawn_thicker=asked < LEAST_RADIUS_MM,
    )
    contacts = contacts_of(bench, part, lines, radii, ids, joins, through, pierces)
    return bench.add(part, contacts)


def profile(sizes: np.ndarray, count: int) -> np.ndarray:
    """Radii (count,) from a few values (k,) spread evenly along a course."""
    sizes = np.atleast_1d(sizes)
    return np.interp(np.linspace(0, 1, count), np.linspace(0, 1, max(len(sizes), 2)),
                     np.repeat(sizes, 2) if len(sizes) == 1 else sizes)  # fmt: skip


def _spread(direction: np.ndarray, count: int) -> np.ndarray:
    direction = np.asarray(direction, float)
    if direction.ndim == 1:
        return direction
    return resample(direction, count)


def contacts_of(
    bench: Workbench,
    part: Part,
    lines: Sequence[np.ndarray],
    radii: Sequence[np.ndarray],
    near: Sequence[str],
    joins: Sequence[str],
    through: Sequence[str],
    pierces: Sequence[str] = (),
) -> list[Contact]:
    """Declare where a tube joins others and where it runs through soft parts.

    Parameters
    ----------
    bench : Workbench
    part : Part
        The tube.
    lines : sequence of (n, 3) float
    radii : sequence of (n,) float
    near : sequence of str
        Ids of parts in reach.
    joins : sequence of str
    through : sequence of str
        Kinds.
    pierces : sequence of str
    """
    contacts: list[Contact] = []
    for other in joins:
        if other not in bench.parts:
            continue
        place = []
        for line, r in zip(lines, radii, strict=True):
            d = bench.index(other).signed_distance(line, 12.0)[0]
            if np.isfinite(d).any():
                close = d < r + 0.3
                place.append(line[close] if close.any() else line[[int(np.argmin(d))]])
        if place:
            contacts.append(Contact(part.id, other, "blend", np.concatenate(place)))
    crossed = [i for i in near if bench.parts[i].kind in through and i not in joins]
    for other in (*crossed, *(i for i in pierces if i in bench.parts)):
        place = []
        for line, r in zip(lines, radii, strict=True):
            fine = resample(line, 3 * len(line))
            d = bench.index(other).signed_distance(fine, 30.0)[0]
            inside = np.isfinite(d) & (d < r.max() + 0.05)
            if inside.any():
                place.append(fine[inside])
        if place:
            contacts.append(Contact(other, part.id, "pierce", np.concatenate(place)))
    return contacts
