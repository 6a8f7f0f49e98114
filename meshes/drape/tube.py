"""Tubes: round or flattened sweeps along curves, single or branching."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import trimesh

from meshes.drape.distance import MeshIndex

CAP_RINGS = 2
"""Rings of a round cap between the rim and its pole."""

BEND_SHARE = 0.8
"""A tube's radius stays below this share of its path's radius of curvature."""


@dataclass(frozen=True, slots=True, eq=False)
class TubeMesh:
    """A closed tube.

    Attributes
    ----------
    mesh : trimesh.Trimesh
        Closed, outward, mm.
    uv : (n, 2) float32
        u along the path (0 start, 1 end), v round it.
    paths : tuple of (k, 3) float
        The smoothed paths, mm.
    radii : tuple of (k,) float
        mm along them.
    """

    mesh: trimesh.Trimesh
    uv: np.ndarray
    paths: tuple[np.ndarray, ...]
    radii: tuple[np.ndarray, ...]


def smooth_path(
    path: np.ndarray, radius: float | np.ndarray, step: float | None = None
) -> tuple[np.ndarray, np.ndarray]:
    """Centripetal spline through points, evenly stepped.

    Parameters
    ----------
    path : (k, 3) float
        mm.
    radius : float or (k,) float
        mm at the points.
    step : float or None
        mm; default 1.5 times the mean radius, between 1 and 6 mm.

    Returns
    -------
    points : (n, 3) float
    radii : (n,) float
        Lowered where the path bends more sharply than the tube can follow.
    """
    path = np.reshape(np.asarray(path, dtype=np.float64), (-1, 3))
    radius = np.broadcast_to(np.asarray(radius, dtype=np.float64), (len(path),))
    if np.any(radius <= 0):
        raise ValueError(f"tube: radii must lie above 0 mm, got {radius.min():g}")
    keep = np.concatenate([[True], np.linalg.norm(np.diff(path, axis=0), axis=1) > 1e-6])
    path, radius = path[keep], radius[keep]
    if len(path) < 2:
        raise ValueError("tube: the path needs at least two different points")
    chord = np.linalg.norm(np.diff(path, axis=0), axis=1)
    knots = np.concatenate([[0.0], np.cumsum(np.sqrt(chord))])
    if len(path) > 2:
        from scipy.interpolate import CubicSpline

        fine_at = np.linspace(0, knots[-1], 12 * len(path))
        fine = CubicSpline(knots, path, bc_type="natural")(fine_at)
    else:
        fine_at, fine = knots, path
    s = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(fine, axis=0), axis=1))])
    if step is None:
        step = float(np.clip(1.5 * radius.mean(), 1.0, 6.0))
    count = max(int(np.ceil(s[-1] / step)) + 1, 3)
    at = np.linspace(0, s[-1], count)
    points = np.stack([np.interp(at, s, fine[:, k]) for k in range(3)], axis=1)
    radii = np.interp(np.interp(at, s, fine_at), knots, radius)
    first, second = np.gradient(points, axis=0), np.gradient(np.gradient(points, axis=0), axis=0)
    speed = np.linalg.norm(first, axis=1)
    bend = np.linalg.norm(np.cross(first, second), axis=1) / np.maximum(speed**3, 1e-12)
    radii = np.minimum(radii, BEND_SHARE / np.maximum(bend, 1e-9))
    return points, radii


def _frames(points: np.ndarray, up: np.ndarray | None) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Tangents and two normals along a path; without ``up`` they don't twist."""
    tangent = np.gradient(points, axis=0)
    tangent /= np.maximum(np.linalg.norm(tangent, axis=1, keepdims=True), 1e-12)
    if up is not None:
        first = up - np.einsum("nd,nd->n", up, tangent)[:, None] * tangent
    else:
        first = np.zeros_like(points)
        seed = np.eye(3)[int(np.argmin(np.abs(tangent[0])))]
        for i, t in enumerate(tangent):
            seed = seed - (seed @ t) * t
            seed = seed / max(float(np.linalg.norm(seed)), 1e-12)
            first[i] = seed
    first /= np.maximum(np.linalg.norm(first, axis=1, keepdims=True), 1e-12)
    return tangent, first, np.cross(tangent, first)


def tube(
    path: np.ndarray,
    radius: float | np.ndarray,
    *,
    sides: int = 10,
    step: float | None = None,
    caps: str = "round",
    flatten: float | np.ndarray = 1.0,
    up: np.ndarray | None = None,
) -> TubeMesh:
    """Sweep a closed tube along a smooth curve through points.

    Parameters
    ----------
    path : (k, 3) float
        mm; start first.
    radius : float or (k,) float
        mm.
    sides : int
    step : float or None
        mm between rings; see :func:`smooth_path`.
    caps : {"round", "flat"}
    flatten : float or (k,) float
        Height along ``up`` as a share of a round tube's; the width grows so
        that the cross-section keeps its area. 1 is round.
    up : (3,) or (k, 3) float or None
        Direction in which it is flattened.

    Returns
    -------
    TubeMesh

    Examples
    --------
    >>> t = tube([[0, 0, 0], [0, 0, 50.0]], 2.0, sides=32)
    >>> bool(abs(t.mesh.volume - (3.14159 * 4 * 50 + 4 / 3 * 3.14159 * 8)) < 20)
    True
    """
    if caps not in ("round", "flat"):
        raise ValueError(f"tube: caps must be round or flat, got {caps}")
    if sides < 3:
        raise ValueError(f"tube: sides must be at least 3, got {sides}")
    given = np.reshape(np.asarray(path, dtype=np.float64), (-1, 3))
    points, radii = smooth_path(given, radius, step)
    n = len(points)
    along = np.linspace(0, 1, n)
    if up is not None:
        up = np.broadcast_to(np.asarray(up, dtype=np.float64), (len(given), 3))
        up = _interpolate(along, up)
    squash = np.broadcast_to(np.asarray(flatten, dtype=np.float64), (len(given),))
    squash = _interpolate(along, squash[:, None])[:, 0]
    tangent, first, second = _frames(points, up)

    centre, height, lift, u = points, radii, np.zeros(n), along
    if caps == "round":
        angle = np.arange(CAP_RINGS, 0, -1) / (CAP_RINGS + 1) * 0.5 * np.pi
        low = -radii[0] * np.sin(angle), radii[0] * np.cos(angle)
        high = radii[-1] * np.sin(angle[::-1]), radii[-1] * np.cos(angle[::-1])
        pick = np.concatenate([np.zeros(CAP_RINGS, int), np.arange(n), np.full(CAP_RINGS, n - 1)])
        lift = np.concatenate([low[0], np.zeros(n), high[0]])
        height = np.concatenate([low[1], radii, high[1]])
    else:
        pick = np.arange(n)
    centre = points[pick] + lift[:, None] * tangent[pick]
    turn = 2 * np.pi * np.arange(sides) / sides
    a = height[:, None] * np.sqrt(squash[pick])[:, None] * np.cos(turn)
    b = height[:, None] / np.sqrt(squash[pick])[:, None] * np.sin(turn)
    rings = (
        centre[:, None] + a[..., None] * first[pick][:, None] + b[..., None] * second[pick][:, None]
    )
    ends = np.stack([points[0], points[-1]])
    if caps == "round":
        ends += np.stack([-radii[0] * tangent[0], radii[-1] * tangent[-1]])
    m = len(rings)
    number = np.arange(m * sides).reshape(m, sides)
    near, far = number[:-1], number[1:]
    near_next, far_next = np.roll(near, -1, axis=1), np.roll(far, -1, axis=1)
    first_ring, last_ring = number[0], number[-1]
    start, stop = m * sides, m * sides + 1
    faces = np.concatenate(
        [
            np.stack([near, near_next, far_next], axis=-1).reshape(-1, 3),
            np.stack([near, far_next, far], axis=-1).reshape(-1, 3),
            np.stack([np.roll(first_ring, -1), first_ring, np.full(sides, start)], axis=1),
            np.stack([last_ring, np.roll(last_ring, -1), np.full(sides, stop)], axis=1),
        ]
    )
    uv = np.concatenate(
        [
            np.stack([np.repeat(u[pick], sides), np.tile(turn / (2 * np.pi), m)], axis=1),
            [[0.0, 0.0], [1.0, 0.0]],
        ]
    )
    mesh = trimesh.Trimesh(np.concatenate([rings.reshape(-1, 3), ends]), faces, process=False)
    return TubeMesh(mesh, uv.astype(np.float32), (points,), (radii,))


def _interpolate(along: np.ndarray, values: np.ndarray) -> np.ndarray:
    at = np.linspace(0, 1, len(values))
    return np.stack([np.interp(along, at, values[:, k]) for k in range(values.shape[1])], axis=1)


def branching(
    paths: Sequence[np.ndarray],
    radii: Sequence[float | np.ndarray],
    *,
    sides: int = 10,
    step: float | None = None,
    blend: int = 3,
) -> TubeMesh:
    """Join tubes into one closed mesh.

    The union is exact (Manifold's boolean); round the forks the vertices are
    then smoothed, which takes off the crease.

    Parameters
    ----------
    paths : sequence of (k, 3) float
        The trunk first; a branch starts on its parent's axis.
    radii : sequence of float or (k,) float
        mm.
    sides : int
    step : float or None
        mm between rings.
    blend : int
        Rounds of smoothing round the forks.

    Returns
    -------
    TubeMesh
        Closed; connected when every branch starts inside another tube. u runs
        along each branch, v is which branch (0-1).
    """
    from manifold3d import Manifold, Mesh, OpType

    if len(paths) != len(radii):
        raise ValueError(f"branching: {len(paths)} paths need as many radii, got {len(radii)}")
    tubes = [tube(p, r, sides=sides, step=step) for p, r in zip(paths, radii)]
    if len(tubes) == 1:
        return tubes[0]
    solids = [
        Manifold(
            Mesh(
                vert_properties=np.asarray(t.mesh.vertices, np.float32),
                tri_verts=np.asarray(t.mesh.faces, np.uint32),
            )
        )
        for t in tubes
    ]
    joined = Manifold.batch_boolean(solids, OpType.Add)
    finest = min(float(t.radii[0].min()) for t in tubes)
    joined = joined.simplify(0.05 * finest)
    found = joined.to_mesh()
    vertices = np.array(found.vert_properties[:, :3], dtype=np.float64)
    faces = np.array(found.tri_verts, dtype=np.int64)
    lines = [t.paths[0] for t in tubes]
    widths = [t.radii[0] for t in tubes]
    vertices = _soften_forks(vertices, faces, tubes, blend)
    uv = _branch_coordinates(vertices, lines, widths)
    mesh = trimesh.Trimesh(vertices, faces, process=False)
    return TubeMesh(mesh, uv, tuple(lines), tuple(widths))


def _soften_forks(
    vertices: np.ndarray, faces: np.ndarray, tubes: Sequence[TubeMesh], rounds: int
) -> np.ndarray:
    from meshes.drape.resolve import _neighbour_mean

    close = np.zeros(len(vertices), int)
    for t in tubes:
        reach = 0.5 * float(t.radii[0].mean())
        close += np.isfinite(MeshIndex.of(t.mesh).signed_distance(vertices, reach)[0])
    fork = close >= 2
    if not fork.any():
        return vertices
    mean = _neighbour_mean(faces, len(vertices))
    for _ in range(rounds):
        moved = 0.5 * (mean @ vertices) + 0.5 * vertices
        vertices = np.where(fork[:, None], moved, vertices)
    return vertices


def _branch_coordinates(vertices, lines, radii) -> np.ndarray:
    """(n, 2) float32: share along the branch that a vertex lies on, and which branch."""
    best = np.full(len(vertices), np.inf)
    uv = np.zeros((len(vertices), 2))
    from scipy.spatial import cKDTree

    for number, (line, radius) in enumerate(zip(lines, radii)):
        distance, at = cKDTree(line).query(vertices)
        # Nearness in radii: on a thick trunk a thin branch's axis may be nearer in mm.
        distance = np.abs(distance - radius[at])
        nearer = distance < best
        best[nearer] = distance[nearer]
        uv[nearer, 0] = at[nearer] / max(len(line) - 1, 1)
        uv[nearer, 1] = (number + 0.5) / len(lines)
    return uv.astype(np.float32)
