"""Broad fleshy muscles: a fan of flat strands that melt into one belly, carved to fit."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from scipy.interpolate import Akima1DInterpolator, PchipInterpolator
from scipy.spatial import cKDTree

from meshes.drape.carve import carve
from meshes.drape.distance import MeshIndex
from meshes.drape.field import Field
from meshes.drape.resolve import give_way, untangle
from meshes.model import Attachment, Contact, Part
from meshes.shapes.solid import Solid
from meshes.soft.sheets import End
from meshes.soft.slips import with_slips
from meshes.soft.small import resample, tendon_at_ends
from meshes.soft.workbench import Workbench

GAP_MM = 0.5
"""Clearance to what is there already; cut corners of coarse triangles eat half of it."""
_SLIP_MM = 0.9
_ATTACHED_MM = 1.5
"""A fibre's end counts as fixed where belly and bone come this near each other."""


def fan_grid(paths: Sequence[np.ndarray], across: int, along: int) -> np.ndarray:
    """Spread a few fibre paths into an even grid of fibres.

    Parameters
    ----------
    paths : sequence of (k, 3) float
        Neighbouring fibres in order across the muscle, origin end first, all with
        the same number of points, mm.
    across, along : int
        Fibres, and points on each.

    Returns
    -------
    (across, along, 3) float
        mm.
    """
    rows = np.stack([_smooth_line(np.asarray(p, float), along) for p in paths])
    if len(rows) == 1:
        return np.repeat(rows, across, axis=0)
    v = np.linspace(0, 1, len(rows))
    return PchipInterpolator(v, rows, axis=0)(np.linspace(0, 1, across))


def _smooth_line(path: np.ndarray, count: int) -> np.ndarray:
    """Points (count, 3), evenly spaced on a smooth line through the points of a path."""
    step = np.linalg.norm(np.diff(path, axis=0), axis=1)
    s = np.concatenate([[0.0], np.cumsum(step)])
    if len(path) < 3:
        return resample(path, count)
    dense = Akima1DInterpolator(s, path, axis=0)(np.linspace(0, s[-1], 6 * count))
    return resample(dense, count)


def lift_grid(
    field: Field, grid: np.ndarray, clearance: np.ndarray, rounds: int = 8, ends: float = 0.0
) -> np.ndarray:
    """Push the inner points of a grid of fibres off everything solid, evenly.

    Parameters
    ----------
    field : Field
    grid : (across, along, 3) float
        mm.
    clearance : (across, along) float
        Wanted distance, mm.
    ends : float
        Share of the clearance wanted at origin and insertion.

    Returns
    -------
    (across, along, 3) float
    """
    grid = np.array(grid, dtype=np.float64)
    need = np.array(clearance, dtype=np.float64)
    need[:, [0, -1]] *= ends
    for _ in range(rounds):
        flat = grid.reshape(-1, 3)
        push = np.clip(need.ravel() - field.sample(flat), 0.0, 4.0)
        if push.max() < 0.1:
            break
        gradient = field.gradient(flat)
        length = np.linalg.norm(gradient, axis=1, keepdims=True)
        moved = grid + (push[:, None] * gradient / np.maximum(length, 0.3)).reshape(grid.shape)
        step = _even(moved - grid)
        # A push spreads to its neighbours, but nobody is held back from his own.
        own = moved - grid
        larger = np.linalg.norm(own, axis=-1) > np.linalg.norm(step, axis=-1)
        grid += np.where(larger[..., None], own, step)
    return grid


def _even(values: np.ndarray) -> np.ndarray:
    """Smooth a field (across, along, 3) on the grid, the ends of the fibres held."""
    out = values.copy()
    out[:, 1:-1] = 0.25 * out[:, :-2] + 0.5 * out[:, 1:-1] + 0.25 * out[:, 2:]
    out[1:-1] = 0.25 * out[:-2] + 0.5 * out[1:-1] + 0.25 * out[2:]
    return out


def smooth_grid(grid: np.ndarray, rounds: int) -> np.ndarray:
    """Even out a grid of fibres; ends and outer fibres keep to their lines."""
    grid = np.array(grid, dtype=np.float64)
    for _ in range(rounds):
        grid[:, 1:-1] = 0.25 * grid[:, :-2] + 0.5 * grid[:, 1:-1] + 0.25 * grid[:, 2:]
        inner = grid[1:-1, 1:-1]
        grid[1:-1, 1:-1] = 0.25 * grid[:-2, 1:-1] + 0.5 * inner + 0.25 * grid[2:, 1:-1]
    return grid


def fan_solid(grid: np.ndarray, thickness: np.ndarray, least_width: float = 2.5) -> Solid:
    """Solid round a grid of fibres, everywhere as thick as told.

    Each fibre becomes a flat strand that overlaps its nearer neighbour, so that no
    furrow shows between them; where the farther neighbour is far off, a slip parts.

    Parameters
    ----------
    grid : (across, along, 3) float
        mm.
    thickness : float or (across, along) float
        Full thickness, mm.
    least_width : float
        Smallest half width of a strand, mm (where fibres crowd together).

    Returns
    -------
    Solid
    """
    thickness = np.broadcast_to(np.asarray(thickness, float), grid.shape[:2])
    step = np.diff(grid, axis=0)
    before, after = np.concatenate([step[:1], step]), np.concatenate([step, step[-1:]])
    near, far = np.linalg.norm(before, axis=-1), np.linalg.norm(after, axis=-1)
    side = np.where((near < far)[..., None], before, after)
    # Where fibres all but meet their direction across is uncertain: take it from the whole row.
    whole = grid[-1] - grid[0]
    whole = whole / np.maximum(np.linalg.norm(whole, axis=-1, keepdims=True), 1e-9)
    side = side + 0.3 * whole[None]
    half = np.maximum(1.05 * np.minimum(near, far), least_width)
    solid = Solid()
    for fibre, sides, width, thick in zip(grid, side, half, thickness, strict=True):
        solid.sweep(fibre, sides, width, 0.5 * thick, blend=2.5)
    return solid


def fan_thickness(
    across: int,
    along: int,
    peak: float,
    ends: tuple[float, float] = (0.5, 0.4),
    edge: float = 0.6,
    at: float = 0.5,
) -> np.ndarray:
    """Thickness (across, along): fullest at share ``at`` of the length and in mid-width, mm.

    ``ends`` and ``edge`` are the shares of the peak left at origin, insertion and borders.
    """
    u = np.linspace(0, 1, along)
    v = np.linspace(-1, 1, across)
    swell = PchipInterpolator([0.0, at, 1.0], [ends[0], 1.0, ends[1]])(u)
    round_off = edge + (1 - edge) * np.sqrt(np.clip(1 - v**4, 0, 1))
    return peak * round_off[:, None] * swell[None, :]


def lay_fan(
    bench: Workbench,
    entry: str,
    grid: np.ndarray,
    thickness: np.ndarray,
    origins: Sequence[End],
    insertions: Sequence[End],
    *,
    triangles: tuple[int, int],
    spacing: tuple[float, float],
    tendon: tuple[float, float] = (0.04, 0.12),
    region: str = "",
    least_width: float = 2.5,
    without: Sequence[str] = (),
    smoothing: int = 5,
    gap: float = GAP_MM,
    part_id: str | None = None,
    solid: bool = True,
    led: Sequence[np.ndarray] = (),
) -> Part:
    """Carve a broad muscle out of the room round its fibres and put it on the bench.

    Parameters
    ----------
    bench : Workbench
    entry : str
        Catalogue row.
    grid : (across, along, 3) float
        Fibres, origin end first, mm.
    thickness : (across, along) float
        Full thickness, mm.
    origins, insertions : sequence of End
        Where it is fixed; only what the belly reaches is kept.
    triangles, spacing : (full, preview)
    without : sequence of str
        Parts that are no obstacle.
    gap : float
        Clearance to what is there already, mm.
    part_id : str or None
        None takes the left part of the row.
    solid : bool
        False leaves the field to the caller (thin sheets).
    led : sequence of (k, 3) float
        Fibres, the end to be reached first, on which a slip too thin for the grid is led on.

    Returns
    -------
    Part
    """
    choose = 0 if bench.full else 1
    room = fan_solid(grid, thickness, least_width)
    obstacles = bench.near(room.bounds(0.0), 1.0, without)
    mesh = carve(
        room, obstacles, spacing=spacing[choose], triangles=triangles[choose], gap=gap,
        x_min=0.15, smoothing=smoothing,
    )  # fmt: skip
    mesh = untangle(give_way(mesh, obstacles))
    if len(led):
        mesh = with_slips(mesh, led, _SLIP_MM, obstacles)
    uv = fan_coordinates(mesh.vertices, grid)
    own = MeshIndex.of(mesh)
    part_id = part_id or f"{entry}.left"
    ends = []
    for kind, pieces in (("origin", origins), ("insertion", insertions)):
        for piece in pieces:
            curve = _fixed(bench, own, piece)
            if len(curve):
                ends.append(Attachment(kind, piece.to, curve))
    record = bench.catalogue[entry]
    rows = np.linspace(0, len(grid) - 1, min(16, len(grid))).round().astype(int)
    part = Part(
        id=part_id,
        entry=entry,
        kind="muscle",
        stratum=record.stratum,
        group=record.group,
        mesh=mesh,
        uv=uv,
        tendon=tendon_at_ends(uv[:, 0], *tendon),
        fibres=np.ascontiguousarray(grid[rows]),
        attachments=tuple(ends),
        region=region or record.region,
    )
    return bench.add(part, [Contact(part_id, a.to, "attach", a.curve) for a in ends], solid=solid)


def fan_coordinates(points: np.ndarray, grid: np.ndarray, finer: int = 4) -> np.ndarray:
    """Fibre coordinates (n, 2) of points (n, 3) from the nearest place of a grid of fibres."""
    across, along = grid.shape[:2]
    v, u = np.linspace(0, 1, across), np.linspace(0, 1, along)
    fine_v = np.linspace(0, 1, finer * (across - 1) + 1)
    fine_u = np.linspace(0, 1, finer * (along - 1) + 1)
    dense = PchipInterpolator(v, grid, axis=0)(fine_v)
    dense = PchipInterpolator(u, dense, axis=1)(fine_u)
    _, nearest = cKDTree(dense.reshape(-1, 3)).query(points)
    row, column = np.divmod(nearest, len(fine_u))
    return np.stack([fine_u[column], fine_v[row]], axis=1).astype(np.float32)


def _fixed(bench: Workbench, own: MeshIndex, end: End) -> np.ndarray:
    """Points (k, 3) half-way between a belly and its bone, near a wanted line; may be none."""
    bone = bench.index(end.to)
    points = np.asarray(end.curve, float).reshape(-1, 3)
    for _ in range(4):
        points = own.signed_distance(points)[1]
        points = bone.signed_distance(points)[1]
    distance, closest, _ = own.signed_distance(points)
    held = np.abs(distance) <= _ATTACHED_MM
    return 0.5 * (points[held] + closest[held])
