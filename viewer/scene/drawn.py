"""What is drawn of a part: its vertices at two details with all that the shader needs.

The still detail is the part's own mesh. The moving detail is a decimated copy
whose face count follows the square root of the area, so that about 100,000
triangles draw the whole back while it turns.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from meshes.model import other_side

MOVING_FACES_PER_SQRT_CM2 = 24.0
MOVING_FACES_LEAST = 40
MOVING_BUDGET = 96_000
SHEET_AREA_MM2, SHEET_MM = 4000.0, 8.0
"""What has so much surface and is no thicker than this is a sheet."""
_CREASED_KINDS = ("skin", "fascia", "context")
AT_MIDLINE_MM = 0.25
"""Vertices of the halves' edges lie this near to the median plane."""
ROUNDED_MM = 10.0
"""So far from the midline a shell is lit as if its furrow were round."""

MIRROR = np.array([-1.0, 1.0, 1.0], np.float32)


@dataclass(slots=True, eq=False)
class Shell:
    """Drawn arrays of one part at one detail.

    Attributes
    ----------
    points, normals : (n, 3) float32
        mm LPS; unit outward normals.
    faces : (m, 3) int32
    surface : (n, 4) float32
        Fibre millimetres along and across, tendon fraction, openness (1 in the
        open, 0 deep in a furrow).
    source : (n,) int or None
        Of a decimated shell: the vertex of the fine one that each vertex stands for.
    cut : (n, 2) float32 or None
        Of a part that is cut and folded: how far each vertex lies on the raw face of the
        cut, and on the deep surface that is turned up, 0..1.
    """

    points: np.ndarray
    normals: np.ndarray
    faces: np.ndarray
    surface: np.ndarray
    source: np.ndarray | None = None
    cut: np.ndarray | None = None


@dataclass(slots=True, eq=False)
class DrawnPart:
    """A part with its two shells; ``moving`` may be the same object as ``still``.

    ``shaded`` tells whether the openness has been worked out; ``box`` holds the bounds
    and ``area_mm2`` the area of the moving shell when they are known beforehand.
    """

    part: object
    still: Shell
    moving: Shell
    shaded: bool = False
    box: np.ndarray | None = None
    area_mm2: float | None = None

    @property
    def bounds(self) -> np.ndarray:
        """Return the (2, 3) lowest and highest corner, mm."""
        if self.box is None:
            self.box = np.array([self.still.points.min(axis=0), self.still.points.max(axis=0)])
        return self.box

    @property
    def area(self) -> float:
        """Return the area of the moving shell, mm²."""
        if self.area_mm2 is None:
            corners = self.moving.points[self.moving.faces]
            across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
            self.area_mm2 = 0.5 * float(np.linalg.norm(across, axis=1).sum())
        return self.area_mm2


def draw_part(part) -> DrawnPart:
    """Return the drawn arrays of a part."""
    from viewer.scene.fibre_field import smoothed

    points = np.ascontiguousarray(part.vertices, dtype=np.float32)
    # The simplifier takes no read-only array, such as one mapped from the cache.
    faces = np.require(part.faces, np.int32, ["C", "W"])
    surface = np.zeros((len(points), 4), np.float32)
    surface[:, 3] = 1.0
    surface[:, :2] = _fibre_millimetres(part, points, faces)
    if part.tendon is not None:
        surface[:, 2] = np.clip(smoothed(part.tendon, faces), 0.0, 1.0)
    elif part.kind == "tendon":
        surface[:, 2] = 1.0
    np.nan_to_num(surface, copy=False)
    normals = vertex_normals(points, faces, creased=part.kind in _CREASED_KINDS)
    if part.kind in _CREASED_KINDS:
        normals = _level_at_midline(points, normals)
        points = _met_at_midline(points)
    still = Shell(points, normals, faces, surface)
    return DrawnPart(part, still, decimated(still, moving_face_count(points, faces)))


def _fibre_millimetres(part, points: np.ndarray, faces: np.ndarray) -> np.ndarray:
    """Return (n, 2) mm along and across the fibres: the part's own, or solved for a belly."""
    from viewer.scene.fibre_field import is_aligned, surface_millimetres

    if part.fibres is not None and part.kind == "muscle":
        fibres = np.asarray(part.fibres, float)
        if part.uv is None or not is_aligned(points, faces, part.uv[:, 1], fibres):
            return surface_millimetres(points, faces, fibres)
    if part.uv is None:
        return np.zeros((len(points), 2))
    return part.uv * np.array(fibre_extent(part))


def draw_parts(parts: Iterable) -> list[DrawnPart]:
    """Return the drawn arrays of several parts; a mirrored twin takes over its fibre field."""
    done: dict[str, DrawnPart] = {}
    answer = []
    for part in parts:
        twin = done.get(other_side(part.id))
        drawn = _mirrored(twin, part) if twin is not None else None
        drawn = drawn or draw_part(part)
        done[part.id] = drawn
        answer.append(drawn)
    return answer


def _mirrored(twin: DrawnPart, part) -> DrawnPart | None:
    """Return the twin's shells mirrored when the part is its exact mirror image, else None."""
    points, own = (np.asarray(p.vertices, np.float32) for p in (part, twin.part))
    if part.id == twin.part.id or points.shape != own.shape:
        return None
    if not np.array_equal(points, own * MIRROR):
        return None
    still = _mirror(twin.still)
    return DrawnPart(part, still, still if twin.moving is twin.still else _mirror(twin.moving))


def _mirror(shell: Shell) -> Shell:
    return Shell(
        shell.points * MIRROR,
        shell.normals * MIRROR,
        np.ascontiguousarray(shell.faces[:, ::-1]),
        shell.surface.copy(),
        shell.source,
    )


def within_budget(drawn: list[DrawnPart], budget: int = MOVING_BUDGET) -> list[DrawnPart]:
    """Return the parts with moving shells that together have about the budget of faces.

    Larger shells give way more than small ones, whose outlines would suffer first.
    """
    total = sum(len(d.moving.faces) for d in drawn)
    if total <= budget:
        return drawn
    small = sum(min(len(d.moving.faces), MOVING_FACES_LEAST) for d in drawn)
    share = max((budget - small) / max(total - small, 1), 0.1)
    had = {d.part.id: d.moving for d in drawn}
    done: dict[str, DrawnPart] = {}
    for d in drawn:
        twin = done.get(other_side(d.part.id))
        if twin is not None and _is_mirror_image(d.moving, had[twin.part.id]):
            # The same triangles on both sides, or furrows would be darker on one of them.
            d.moving = _mirror(twin.moving)
        else:
            have = len(d.moving.faces)
            keep = min(have, MOVING_FACES_LEAST)
            d.moving = decimated(d.still, int(keep + share * (have - keep)), gain=1.05)
        done[d.part.id] = d
    return drawn


def _is_mirror_image(shell: Shell, twin: Shell) -> bool:
    return (
        shell is not twin
        and shell.points.shape == twin.points.shape
        and np.array_equal(shell.points, twin.points * MIRROR)
    )


def fibre_extent(part) -> tuple[float, float]:
    """Return (length, width) in mm of a part's fibre field: median fibre, mean breadth.

    Without fibre lines the extents of the mesh stand in.
    """
    if part.fibres is not None and len(part.fibres) > 1:
        steps = np.linalg.norm(np.diff(part.fibres, axis=1), axis=2)
        along = float(np.median(steps.sum(axis=1)))
        middle = part.fibres[:, part.fibres.shape[1] // 2]
        across = float(np.linalg.norm(np.diff(middle, axis=0), axis=1).sum())
        # The outermost fibres lie inside the border by half a spacing.
        across *= len(part.fibres) / (len(part.fibres) - 1)
        if along > 0 and across > 0:
            return along, max(across, 3.0)
    extents = np.sort(np.ptp(part.vertices, axis=0))
    return float(extents[2]), float(max(extents[1], 3.0))


def vertex_normals(points: np.ndarray, faces: np.ndarray, creased: bool = False) -> np.ndarray:
    """Return area-weighted unit vertex normals, (n, 3) float32.

    Parameters
    ----------
    creased : bool
        True leaves out of each vertex's mean the faces that turn by more than
        60 degrees from its main one. The narrow wall along a cut edge of a
        shell then no longer tilts the edge, which would show as a dark seam.
    """
    corners = points[faces].astype(np.float64)
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    if creased:
        # The face on which the two halves of a shell meet is never seen from outside.
        across[(np.abs(points[faces, 0]) < AT_MIDLINE_MM).all(axis=1)] *= 1e-6
    flat = faces.ravel()
    weights = np.repeat(across, 3, axis=0)
    if creased:
        area = np.linalg.norm(across, axis=1)
        unit = across / np.maximum(area, 1e-12)[:, None]
        # The wall is a strip: all its corners lie on sharp edges.
        sharp = _on_sharp_edges(faces, unit, len(points))
        area = np.repeat(np.where(sharp[faces].all(axis=1), 1e-3 * area, area), 3)
        order = np.argsort(area, kind="stable")
        main = np.zeros((len(points), 3))
        main[flat[order]] = np.repeat(unit, 3, axis=0)[order]
        agree = (np.repeat(unit, 3, axis=0) * main[flat]).sum(axis=1) > 0.5
        weights = weights * agree[:, None]
    normals = np.empty((len(points), 3))
    for axis in range(3):
        normals[:, axis] = np.bincount(flat, weights=weights[:, axis], minlength=len(points))
    length = np.linalg.norm(normals, axis=1, keepdims=True)
    return (normals / np.where(length > 0, length, 1.0)).astype(np.float32)


def _level_at_midline(points: np.ndarray, normals: np.ndarray) -> np.ndarray:
    """Return normals that don't lean to a side where two mirrored halves of a shell meet.

    Each half knows only its own faces; leaning away from the other, they would draw a seam.
    Within some millimetres the furrow is rounded.
    """
    away = np.clip(np.abs(points[:, 0]) / ROUNDED_MM, 0.0, 1.0)
    away *= away * (3.0 - 2.0 * away)
    away[np.abs(points[:, 0]) < AT_MIDLINE_MM] = 0.0
    # What looks to the side is the face on which they meet.
    across = np.abs(normals[:, 0]) < 0.8
    normals = normals.copy()
    normals[across, 0] *= away[across]
    length = np.linalg.norm(normals, axis=1, keepdims=True)
    return (normals / np.where(length > 0, length, 1.0)).astype(np.float32)


def _met_at_midline(points: np.ndarray) -> np.ndarray:
    """Return points of a half with its cut edge moved the hair's breadth to the other half.

    Where a column of pixels has its middle there, light would show through the gap.
    """
    points = points.copy()
    points[np.abs(points[:, 0]) < AT_MIDLINE_MM, 0] = 0.0
    return points


def _on_sharp_edges(faces: np.ndarray, unit: np.ndarray, count: int) -> np.ndarray:
    """Return which vertices lie on an edge whose faces turn by more than 60 degrees."""
    ends = np.sort(np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]), axis=1)
    key = ends[:, 0].astype(np.int64) * count + ends[:, 1]
    order = np.argsort(key, kind="stable")
    same = key[order[:-1]] == key[order[1:]]
    first, second = order[:-1][same], order[1:][same]
    turn = (unit[first % len(faces)] * unit[second % len(faces)]).sum(axis=1)
    on = np.zeros(count, bool)
    on[ends[first[turn < 0.5]]] = True
    return on


def moving_face_count(points: np.ndarray, faces: np.ndarray) -> int:
    """Return how many faces the moving shell may have."""
    corners = points[faces]
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    area_cm2 = 0.5 * float(np.linalg.norm(across, axis=1).sum()) / 100.0
    return max(MOVING_FACES_LEAST, int(MOVING_FACES_PER_SQRT_CM2 * np.sqrt(area_cm2)))


def _is_sheet(points: np.ndarray, faces: np.ndarray) -> bool:
    """Tell whether a closed mesh is wide and thin."""
    corners = points[faces].astype(np.float64)
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    area = 0.5 * float(np.linalg.norm(across, axis=1).sum())
    volume = abs(float(np.einsum("ij,ij->", corners[:, 0], across))) / 6.0
    return area > SHEET_AREA_MM2 and 2.0 * volume < SHEET_MM * area


def _parted_at_rims(points: np.ndarray, faces: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Give both faces of a thin sheet corners of their own where they share one.

    A coarse sheet has no wall along its edge: one normal for both faces would turn the outer
    one away from the light.

    Returns
    -------
    points : (n + k, 3) float32
        The same, then once more those that stand on both faces.
    faces : (m, 3) int32
    """
    corners = points[faces].astype(np.float64)
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    # The widest face at a corner says which side it belongs to, not a mean of two opposite ones.
    area = np.linalg.norm(across, axis=1)
    main = np.zeros((len(points), 3))
    order = np.argsort(area, kind="stable")
    main[faces[order].ravel()] = np.repeat(across[order], 3, axis=0)
    other = np.einsum("fc,fkc->fk", across, main[faces]) < 0
    twice = np.unique(faces[other])
    number = np.full(len(points), -1, np.int32)
    number[twice] = len(points) + np.arange(len(twice), dtype=np.int32)
    return np.concatenate([points, points[twice]]), np.where(other, number[faces], faces)


def decimated(shell: Shell, face_count: int, gain: float = 1.25) -> Shell:
    """Return a copy of the shell with about ``face_count`` faces (itself when that is no gain)."""
    # These bring scipy and the simplifier in, which a start from the cache never needs.
    from scipy.spatial import cKDTree

    from viewer.scene.fibre_field import simplified

    if len(shell.faces) <= gain * face_count:
        return shell
    points, faces = simplified(shell.points, shell.faces, face_count)
    if len(faces) < 4:
        return shell
    points = np.ascontiguousarray(points, np.float32)
    faces = np.ascontiguousarray(faces, np.int32)
    if _is_sheet(points, faces):
        points, faces = _parted_at_rims(points, faces)
    # Smooth normals of the fine mesh shade the coarse one as if it were fine. On a thin
    # sheet the nearest fine vertex may lie on the other face: take one that looks the same way.
    own = vertex_normals(points, faces)
    k = min(8, len(shell.points))
    index = cKDTree(shell.points).query(points, k=k)[1].reshape(len(points), -1)
    agree = np.einsum("nkc,nc->nk", shell.normals[index], own) > 0.3
    first = agree.argmax(axis=1)
    nearest = index[np.arange(len(points)), first]
    normals = np.where(agree.any(axis=1)[:, None], shell.normals[nearest], own)
    return Shell(points, normals.astype(np.float32), faces, shell.surface[nearest], nearest)
