"""A flap between lines of incision, for skin and fascia, which have no fibres of their own.

The lines are those of the plan, seen from behind: one above, one below, a medial one and
a straight hinge. Between them a grid is laid through the middle of the sheet.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.errors import PeelbackError
from meshes.questions.folding.control_sheet import ControlSheet, resampled_by_length
from meshes.questions.rays import RayIndex

LINK_MM = (5.0, 8.0)
LINKS = 30
FROM_BEHIND_MM = 60.0
OFF_SHEET_MM = 12.0
"""What lies further than this from the grid, beside half its thickness, is not the flap."""


@dataclass(frozen=True, slots=True, eq=False)
class PatchLines:
    """Where a flap is cut, left side, seen from behind: points (x, z) in mm.

    Attributes
    ----------
    top, bottom : (n, 2) float
        Lines across, from the midline outward.
    hinge : (2, 2) float
        Upper and lower end.
    medial : (n, 2) float or None
        The cut near the midline; None: the flap begins at the midline.
    """

    top: np.ndarray
    bottom: np.ndarray
    hinge: np.ndarray
    medial: np.ndarray | None = None

    def _height(self, line: np.ndarray, x: np.ndarray) -> np.ndarray:
        order = np.argsort(line[:, 0])
        return np.interp(x, line[order, 0], line[order, 1])

    def _lateral(self, line: np.ndarray, z: np.ndarray) -> np.ndarray:
        order = np.argsort(line[:, 1])
        return np.interp(z, line[order, 1], line[order, 0])

    def inside(self, points: np.ndarray) -> np.ndarray:
        """Return how far inside all the lines points (n, 3) lie, mm; below 0 outside."""
        x, z = points[:, 0], points[:, 2]
        h = self.hinge
        along = (h[0] - h[1]) / np.linalg.norm(h[0] - h[1])
        medial_of_hinge = (z - h[1, 1]) * along[0] - (x - h[1, 0]) * along[1]
        found = np.minimum(self._height(self.top, x) - z, z - self._height(self.bottom, x))
        found = np.minimum(found, medial_of_hinge)
        if self.medial is not None:
            found = np.minimum(found, x - self._lateral(self.medial, z))
        return found

    def place(self, s: np.ndarray, t: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Return (x, z) for shares from bottom to top (s) and from the hinge inward (t)."""
        hinge_x = self.hinge[1, 0] + s * (self.hinge[0, 0] - self.hinge[1, 0])
        inner_x = np.full_like(s, 0.6)
        if self.medial is not None:
            for _ in range(3):
                low = self._height(self.bottom, inner_x)
                inner_x = self._lateral(
                    self.medial, low + s * (self._height(self.top, inner_x) - low)
                )
        x = hinge_x + t * (inner_x - hinge_x)
        low, high = self._height(self.bottom, x), self._height(self.top, x)
        return x, low + s * (high - low)


def patch_sheet(vertices: np.ndarray, faces: np.ndarray, lines: PatchLines) -> ControlSheet:
    """Lay a grid through the middle of a sheet between lines of incision.

    Parameters
    ----------
    vertices, faces
        Of the sheet's mesh, left side, mm LPS.
    lines : PatchLines

    Raises
    ------
    PeelbackError
        The sheet is missing between the lines.
    """
    height = float(np.abs(np.diff(lines.hinge[:, 1])).max())
    breadth = float(lines.hinge[:, 0].mean())
    rows = max(6, round(height / float(np.clip(height / LINKS, *LINK_MM)))) + 1
    columns = max(8, round(breadth / float(np.clip(breadth / LINKS, *LINK_MM)))) + 1
    dense = 4 * columns
    s, t = np.meshgrid(np.linspace(0, 1, rows), np.linspace(0, 1, dense), indexing="ij")
    x, z = lines.place(s.ravel(), t.ravel())
    index = RayIndex(vertices, faces)
    start = float(np.max(np.asarray(vertices)[:, 1])) + FROM_BEHIND_MM
    origins = np.column_stack([x, np.full(len(x), start), z])
    ray, _, distance, _ = index.unsorted(
        origins, np.tile([0.0, -1.0, 0.0], (len(x), 1)), 2 * FROM_BEHIND_MM + 400.0
    )
    first = np.full(len(x), np.nan)
    second = np.full(len(x), np.nan)
    order = np.lexsort((distance, ray))
    ray, distance = ray[order], distance[order]
    begins = np.flatnonzero(np.diff(ray, prepend=-1))
    first[ray[begins]] = distance[begins]
    more = begins[(np.diff(np.append(begins, len(ray))) > 1)]
    second[ray[more]] = distance[more + 1]
    if np.isnan(second).mean() > 0.2:
        raise PeelbackError("the sheet is missing between the lines of incision")
    outer = _filled((start - first).reshape(rows, dense))
    inner = _filled((start - second).reshape(rows, dense))
    mid = np.stack([x.reshape(rows, dense), 0.5 * (outer + inner), z.reshape(rows, dense)], axis=2)
    # Square to the sheet it is thinner than along the ray.
    normal = np.cross(np.gradient(mid, axis=1), np.gradient(mid, axis=0))
    lean = np.abs(normal[..., 1]) / np.maximum(np.linalg.norm(normal, axis=2), 1e-9)
    half = 0.5 * (outer - inner) * np.clip(lean, 0.3, 1.0)
    both = np.concatenate([mid, half[..., None]], axis=2)
    grid = resampled_by_length(both, columns, 3)
    mid, half = np.ascontiguousarray(grid[..., :3]), np.ascontiguousarray(grid[..., 3])
    normal = np.cross(np.gradient(mid, axis=1), np.gradient(mid, axis=0))
    outward = 1 if normal[..., 1].mean() >= 0 else -1
    return ControlSheet(mid, np.clip(half, 0.3, 15.0), outward)


def _filled(table: np.ndarray) -> np.ndarray:
    """Fill gaps of a table row by row from what is known on both sides."""
    out = table.copy()
    at = np.arange(table.shape[1])
    for row in out:
        known = np.isfinite(row)
        if known.sum() >= 2:
            row[~known] = np.interp(at[~known], at[known], row[known])
    lost = ~np.isfinite(out).all(axis=1)
    if lost.any():
        good = np.flatnonzero(~lost)
        for k in np.flatnonzero(lost):
            out[k] = out[good[np.abs(good - k).argmin()]]
    return out
