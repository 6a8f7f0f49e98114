"""The nuchal fascia: the film on splenius and semispinalis, under trapezius."""

from __future__ import annotations

import numpy as np
from scipy.ndimage import gaussian_filter

from meshes.drape.sheet import SheetGrid
from meshes.soft.back_sheets import nuchal_edge
from meshes.soft.roof_sheets import thinned_out
from meshes.soft.sheets import End, clear_sheet, part_of_curve, put_sheet, radial
from meshes.soft.workbench import Workbench

FASCIA_MM = 0.6
"""Drawn thickness; the usual one is 0.4 mm."""
_GAP_MM = 0.25
_LOWEST_SHARE = 0.2
"""Where it ends below, as a share of the height of the nuchal ligament: there serratus
posterior superior and the thoracolumbar fascia take over."""
_INTO_SPLENIUS_MM = 32.0
"""Length over which it thins out there."""
_LINE_SHARES = (0.0, 0.72)
"""Stretch of the superior nuchal line along which it ends above."""


def lay_nuchal_fascia(bench: Workbench) -> None:
    """Lay the nuchal fascia from the nuchal ligament round to the edge of splenius capitis.

    Gray 1918 calls it the deeper of the two fasciae of the nape (as recalled).
    """
    across, along = (30, 56) if bench.full else (11, 20)
    v, u = np.linspace(0, 1, across), np.linspace(0, 1, along)
    ligament = nuchal_edge(bench, _LOWEST_SHARE, 0.97, along, x=1.3)
    line = bench.landmark("occipital.left.superior_nuchal_line")
    top = part_of_curve(line, *_LINE_SHARES, across) - [0.0, 0.0, 1.2]
    top[:, 0] = np.maximum(top[:, 0], 1.3)
    splenius = bench.parts["splenius_capitis.left"].mesh.vertices
    z = ligament[:, 2]
    beside = np.abs(splenius[:, 2] - z[:, None])
    # Beyond the muscle's upper end the margin of its last fibres counts.
    reach = np.maximum(beside.min(axis=1, keepdims=True) + 1.0, 8.0)
    edge = np.where(beside < reach, splenius[:, 0], -np.inf).max(axis=1)
    edge = np.minimum(edge, top[-1, 0]) - 5.0
    # A fan of lines of equal v: from the ligament outward, ending on the nuchal line.
    x = ligament[None, :, 0] + v[:, None] * (edge - ligament[:, 0])[None]
    height = z[None] + np.zeros((across, 1))
    rise = (u**2)[None] * (top[:, 2:] - z[-1])
    x = (1 - u**3)[None] * x + (u**3)[None] * top[:, :1]
    y = ligament[None, :, 1] - 0.35 * v[:, None] * x
    start = np.stack([x, y, height + rise], axis=-1)
    mid = _dropped(bench, start, _GAP_MM + 0.5 * FASCIA_MM)
    grid = SheetGrid(mid, np.full((across, along), FASCIA_MM), None, 1)
    out = radial(bench)(mid.reshape(-1, 3)).reshape(mid.shape)
    sign = 1 if float((grid.normals() * out).sum(-1).mean()) > 0 else -1
    sheet = SheetGrid(mid, grid.thickness, None, sign)
    near = bench.near_ids(sheet.mid, 6.0)
    sheet = clear_sheet(bench, sheet, near, {"nuchal_ligament", "cranium"}, 0.2, outermost=True)
    # It takes the side of the ligament and the bone wherever its borders come to them.
    ends = [
        End("nuchal_ligament", _met(bench, "nuchal_ligament", sheet.mid[0])),
        End("cranium", _met(bench, "cranium", sheet.mid[:, -1])),
    ]
    put_sheet(
        bench, "nuchal_fascia", sheet, ends, [], kind="fascia",
        tendon=thinned_out(sheet, _INTO_SPLENIUS_MM, below=True), fibres=16, resolve=False,
        attach_kind=("attach", "attach"), drawn_thicker=True,
    )  # fmt: skip


def _met(bench: Workbench, part_id: str, border: np.ndarray, within: float = 1.6) -> np.ndarray:
    """Places on a part (k, 3) to which a border comes close; the nearest three at least."""
    distance, place, _ = bench.index(part_id).signed_distance(border)
    close = distance <= max(within, float(np.sort(distance)[2]))
    return place[close]


def _dropped(bench: Workbench, start: np.ndarray, above: float) -> np.ndarray:
    """Grid points let down along level lines towards the column, ``above`` mm over what is laid."""
    shape = start.shape
    way = radial(bench)(start.reshape(-1, 3))
    p = start.reshape(-1, 3) + 30.0 * way
    gone = np.zeros(len(p))
    for _ in range(60):
        height = bench.field.sample(p - gone[:, None] * way) - above
        gone = np.minimum(gone + np.where(height > 0.05, np.maximum(0.8 * height, 0.1), 0.0), 60.0)
    # Taut over the furrows between the bellies.
    depth = gone.reshape(shape[:2])
    for _ in range(4):
        depth = np.minimum(depth, gaussian_filter(depth, 1.5, mode="nearest"))
    return (p - depth.reshape(-1, 1) * way).reshape(shape)
