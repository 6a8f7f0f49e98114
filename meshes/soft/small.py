"""One way to lay a small belly: an implicit solid along its fibre lines, carved to fit."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import trimesh

from meshes.drape.carve import carve, fibre_coordinates
from meshes.drape.distance import MeshIndex
from meshes.model import Attachment, Contact, Part
from meshes.shapes.polyline import resample
from meshes.shapes.solid import Solid
from meshes.soft.slips import MET_MM, with_slips
from meshes.soft.workbench import Workbench

_SLIP_MM = 1.0
"""Radius of the tendon that leads a belly on where it was cut short of its bone."""

_END_MM = 1.8
"""Least half breadth of a belly at its bone."""


def on_bone(bench: Workbench, part_id: str, point: np.ndarray, lift: float = 0.4) -> np.ndarray:
    """The place on a part's surface nearest to a point, lifted off it by some mm."""
    _, closest, normal = bench.index(part_id).signed_distance(np.reshape(point, (1, 3)))
    return closest[0] + lift * normal[0]


def lifted(bench: Workbench, line: np.ndarray, clearance: float, rounds: int = 6) -> np.ndarray:
    """Push the inner points of a line (n, 3) off everything solid on the bench.

    ``clearance`` in mm is reached at mid-length and falls to nothing at the ends.
    """
    out = np.array(line, dtype=np.float64)
    need = clearance * np.sin(np.pi * np.linspace(0, 1, len(out)))
    for _ in range(rounds):
        distance = bench.field.sample(out)
        push = np.clip(need - distance, 0, 3.0)
        push[[0, -1]] = 0.0
        if push.max() < 0.05:
            break
        out += push[:, None] * bench.field.gradient(out)
        out[1:-1] = 0.25 * out[:-2] + 0.5 * out[1:-1] + 0.25 * out[2:]
    return out


def spindle(
    solid: Solid,
    line: np.ndarray,
    side: np.ndarray,
    width: float,
    thickness: float,
    *,
    ends: float = 0.35,
    blend: float = 1.5,
) -> Solid:
    """Add one belly to a solid: widest in the middle, tapering to its ends.

    Parameters
    ----------
    solid : Solid
    line : (n, 3) float
        Its axis, mm.
    side : (3,) float
        Direction of its width.
    width, thickness : float
        Full width and thickness at mid-belly, mm.
    ends : float
        Share of the width and thickness left at the ends.
    """
    path = resample(line, max(5, len(line)))
    u = np.linspace(0, 1, len(path))
    swell = ends + (1 - ends) * np.sin(np.pi * np.clip(u, 0.0, 1.0)) ** 0.8
    # Half of an end is lost in the bone: what is left must still be a tendon.
    wide = np.maximum(0.5 * width * swell, min(_END_MM, 0.5 * width))
    thick = np.maximum(0.5 * thickness * swell, min(_END_MM, 0.5 * thickness))
    return solid.sweep(path, side, wide, thick, blend=blend)


def tendon_at_ends(u: np.ndarray, origin: float, insertion: float) -> np.ndarray:
    """Tendon share along u: 1 at each end, fading over the given shares of the length."""
    start = np.clip(1 - u / max(origin, 1e-6), 0, 1) if origin > 0 else np.zeros_like(u)
    end = np.clip(1 - (1 - u) / max(insertion, 1e-6), 0, 1) if insertion > 0 else np.zeros_like(u)
    return np.maximum(start, end).astype(np.float32)


def lay_small(
    bench: Workbench,
    part_id: str,
    entry: str,
    solid: Solid,
    lines: Sequence[np.ndarray],
    ends: tuple[str, str],
    *,
    kind: str = "muscle",
    triangles: tuple[int, int] = (500, 90),
    spacing: tuple[float, float] = (0.8, 1.4),
    level: str = "",
    region: str = "",
    x_min: float | None = 0.15,
    tendon: tuple[float, float] = (0.12, 0.12),
    without: Sequence[str] = (),
    gap: float = 0.25,
    attach: bool = True,
) -> Part:
    """Carve a belly, give it its fibres and attachments and put it on the bench.

    Parameters
    ----------
    bench : Workbench
    part_id, entry : str
    solid : Solid
    lines : sequence of (n, 3) float
        Fibre lines, origin end first.
    ends : (str, str)
        Part ids of origin and insertion.
    triangles, spacing : (full, preview)
    without : sequence of str
        Parts that are no obstacle (they are pierced or contain this one).
    attach : bool
        False leaves out the attachments (a part cut off at the model's end).

    Returns
    -------
    Part
    """
    choose = 0 if bench.full else 1
    box = solid.bounds(0.0)
    obstacles = bench.near(box, 1.0, without)
    mesh = carve(
        solid,
        obstacles,
        spacing=spacing[choose],
        triangles=triangles[choose],
        gap=gap,
        x_min=x_min,
    )
    if attach:
        mesh = with_slips(
            mesh, [*_unmet(mesh, lines), *_unmet(mesh, [line[::-1] for line in lines])], _SLIP_MM
        )
    uv, _ = fibre_coordinates(mesh.vertices, lines)
    count = max(len(line) for line in lines)
    fibres = np.stack([resample(line, max(count, 8)) for line in lines])
    record = bench.catalogue[entry]
    attachments = ()
    if attach:
        attachments = (
            Attachment("origin", ends[0], _met(mesh, np.array([line[0] for line in lines]))),
            Attachment("insertion", ends[1], _met(mesh, np.array([line[-1] for line in lines]))),
        )
    part = Part(
        id=part_id,
        entry=entry,
        kind=kind,
        stratum=record.stratum,
        group=record.group,
        mesh=mesh,
        uv=uv,
        tendon=tendon_at_ends(uv[:, 0], *tendon),
        fibres=fibres,
        attachments=attachments,
        level=level,
        region=region or record.region,
    )
    contacts = [Contact(part_id, a.to, "attach", a.curve) for a in attachments]
    return bench.add(part, contacts)


def _unmet(mesh: trimesh.Trimesh, lines: Sequence[np.ndarray]) -> Sequence[np.ndarray]:
    """The middle one of the lines when the belly reaches none of their first points."""
    away = np.abs(MeshIndex.of(mesh).signed_distance(np.array([line[0] for line in lines]))[0])
    return [] if away.min() <= MET_MM else [lines[len(lines) // 2]]


def _met(mesh: trimesh.Trimesh, places: np.ndarray) -> np.ndarray:
    """Those of the wanted places (n, 3) that the belly really reaches; all when it is none.

    Where a neighbour cuts off one edge of a fan, the fan ends with the fibres that are left.
    """
    away = np.abs(MeshIndex.of(mesh).signed_distance(places)[0])
    return places[away <= MET_MM] if (away <= MET_MM).any() else places
