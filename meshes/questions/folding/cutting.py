"""Where a part is cut: across its fibres, or along lines of incision."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from scipy import sparse
from scipy.ndimage import gaussian_filter1d, map_coordinates
from scipy.spatial import cKDTree

from meshes.questions.folding.carrying import nearest_place
from meshes.questions.folding.control_sheet import (
    LEAST_FLAP_MM,
    ControlSheet,
    lifted_rows,
    trimmed,
)
from meshes.questions.folding.flap_mesh import STAYS, FlapMesh, in_own_right, parted, refined
from meshes.questions.folding.patch import OFF_SHEET_MM, PatchLines

LEAST_STUMP_MM = 3.0
MOST_STUMP = 0.6
"""Share of a fibre that a stump takes at most."""

BESIDE_ROWS = 0.3
"""So far beside its last row, in rows, a flap is cut along its fibres."""

NOT_LIFTED_MM = 2.0
"""From the hinge to the cut of fibres that stay: what lies beyond their hinge is not parted."""

ROLL_EDGE_MM, EDGE_MM = 4.0, 7.0
"""Longest edges of a flap's triangles, where it rolls and elsewhere."""

ROLLS_FOR_MM = 35.0
ROUND_MM = 1200.0
"""Length given to the way round a flap, when its rim is laid flat."""


def stumps(sheet: ControlSheet, stump_mm: float, from_midline: bool) -> np.ndarray:
    """Return the length of each fibre's stump, (rows,) mm.

    Parameters
    ----------
    sheet : ControlSheet
        To the ends of the fibres; left side.
    stump_mm : float
    from_midline : bool
        It reaches so far from the midline, instead of so far along the fibre.
    """
    lengths = np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2)
    left = lengths[:, ::-1].cumsum(axis=1)[:, ::-1]
    out = np.full(len(sheet.mid), stump_mm)
    if from_midline:
        for k, row in enumerate(sheet.mid):
            away = np.abs(row[:, 0])
            beyond = np.flatnonzero(away[:-1] >= stump_mm)
            if not len(beyond):
                out[k] = LEAST_STUMP_MM
                continue
            j = int(beyond.max())
            span = away[j] - away[j + 1]
            share = (away[j] - stump_mm) / span if span > 1e-6 else 0.0
            out[k] = left[k, j] - np.clip(share, 0.0, 1.0) * lengths[k, j]
    out = gaussian_filter1d(np.maximum(out, LEAST_STUMP_MM), 1.5, mode="nearest")
    return np.minimum(out, MOST_STUMP * left[:, 0])


def cut_across(
    whole: ControlSheet,
    sheet: ControlSheet,
    stump_mm: np.ndarray,
    vertices: np.ndarray,
    faces: np.ndarray,
) -> FlapMesh:
    """Cut a part across its fibres.

    Parameters
    ----------
    whole, sheet : ControlSheet
        To the ends of the fibres, and to the cut.
    stump_mm : (rows,) float
    vertices, faces
        Of the part's own mesh, mm.
    """
    lengths = np.linalg.norm(np.diff(whole.mid, axis=1), axis=2)
    gone = np.concatenate([np.zeros((len(lengths), 1)), lengths.cumsum(axis=1)], axis=1)
    flap_mm = gone[:, -1] - stump_mm
    # Where hinge and cut run together there is nothing to turn: the cut ends on the hinge.
    rows = np.arange(float(len(flap_mm)))
    kept = rows[lifted_rows(trimmed(whole, stump_mm))]
    lifted = (rows >= kept[0]) & (rows <= kept[-1]) & (flap_mm >= LEAST_FLAP_MM)
    flap_mm = np.where(lifted, flap_mm, NOT_LIFTED_MM)
    # Beside the last fibre that is lifted the knife parts two fibres.
    for border in (kept[0] - BESIDE_ROWS, kept[-1] + BESIDE_ROWS):
        if 0.0 < border < rows[-1]:
            place = int(np.searchsorted(rows, border))
            rows, flap_mm = np.insert(rows, place, border), np.insert(flap_mm, place, NOT_LIFTED_MM)

    def from_hinge(points: np.ndarray) -> np.ndarray:
        place = np.array(nearest_place(whole, points))
        return map_coordinates(gone, place, order=1, mode="nearest"), place[0]

    def inside(points: np.ndarray) -> np.ndarray:
        at, row = from_hinge(points)
        return np.interp(row, rows, flap_mm) - at

    def limit(points: np.ndarray) -> np.ndarray:
        at, _ = from_hinge(points)
        fine = np.where(at < ROLLS_FOR_MM, ROLL_EDGE_MM, EDGE_MM)
        return np.where(at <= 0.0, 1e3, fine)

    dense = np.linspace(0.0, len(gone) - 1.0, 20 * len(gone))
    run = _length_of_cut(whole, gone, dense, np.interp(dense, rows, flap_mm))

    def flat(points: np.ndarray) -> np.ndarray:
        row, column = nearest_place(whole, points)
        height = _height(whole, points, row, column)
        return np.column_stack([np.interp(row, dense, run), height])

    return _cut(vertices, faces, [inside], limit, flat, [sheet])


def cut_out(
    sheets: Sequence[ControlSheet],
    lines: Sequence[PatchLines],
    vertices: np.ndarray,
    faces: np.ndarray,
) -> FlapMesh:
    """Cut flaps out of a sheet along lines of incision.

    Parameters
    ----------
    sheets : sequence of ControlSheet
        One for each flap.
    lines : sequence of PatchLines
    vertices, faces
        Of the part's own mesh, left side, mm.
    """
    trees = [cKDTree(sheet.mid.reshape(-1, 3)) for sheet in sheets]

    def insider(k: int) -> Callable[[np.ndarray], np.ndarray]:
        def inside(points: np.ndarray) -> np.ndarray:
            found = lines[k].inside(points)
            distance, near = trees[k].query(points)
            reach = OFF_SHEET_MM + sheets[k].half_mm.ravel()[near]
            return np.minimum(found, reach - distance)

        return inside

    insides = [insider(k) for k in range(len(sheets))]

    def limit(points: np.ndarray) -> np.ndarray:
        found = np.max([inside(points) for inside in insides], axis=0)
        return np.where(found > -EDGE_MM, EDGE_MM, 1e3)

    def flat_of(k: int):
        rows, columns = sheets[k].mid.shape[:2]

        def flat(points: np.ndarray) -> np.ndarray:
            row, column = nearest_place(sheets[k], points)
            # Round the flap, begun at the middle of its medial edge.
            a, b = row / (rows - 1) - 0.5, column / (columns - 1) - 0.5
            height = _height(sheets[k], points, row, column)
            return np.column_stack([ROUND_MM / (2 * np.pi) * np.arctan2(a, -b), height])

        return flat

    return _cut(vertices, faces, insides, limit, [flat_of(k) for k in range(len(sheets))], sheets)


def _height(sheet: ControlSheet, points, row, column) -> np.ndarray:
    normals = sheet.normals()
    at = [row, column]
    middle = np.column_stack(
        [map_coordinates(sheet.mid[..., k], at, order=1, mode="nearest") for k in range(3)]
    )
    normal = np.column_stack(
        [map_coordinates(normals[..., k], at, order=1, mode="nearest") for k in range(3)]
    )
    return ((points - middle) * normal).sum(axis=1)


def _length_of_cut(sheet: ControlSheet, gone, rows, flap_mm) -> np.ndarray:
    """Return how far along the line of cut each row lies, mm: a cut face is laid flat by it."""
    columns = np.arange(gone.shape[1], dtype=float)
    at_row = np.array([map_coordinates(line, [rows], order=1) for line in gone.T])
    column = [np.interp(mm, at_row[:, k], columns) for k, mm in enumerate(flap_mm)]
    line = np.column_stack(
        [map_coordinates(sheet.mid[..., k], [rows, column], order=1) for k in range(3)]
    )
    steps = np.linalg.norm(np.diff(line, axis=0), axis=1)
    return np.concatenate([[0.0], (steps + 1e-6).cumsum()])


def _cut(vertices, faces, insides, limit, flat, sheets) -> FlapMesh:
    """Split, part and close a mesh; later flaps are cut from what earlier ones leave."""
    vertices = np.asarray(vertices, float)
    faces = np.asarray(faces, int)
    weights = sparse.identity(len(vertices), format="csr")
    faces, weights = refined(faces, weights, vertices, limit)
    piece = np.full(weights.shape[0], STAYS)
    raw = np.zeros(len(faces), bool)
    for k, inside in enumerate(insides):
        points = weights @ vertices
        value = inside(points)
        # What an earlier flap took is not cut again.
        value[piece != STAYS] = -1e3
        before = len(points)
        faces, weights, in_flap, raw_now = _parted_with_raw(
            faces,
            weights,
            vertices,
            value,
            flat[k] if isinstance(flat, list) else flat,
            ROUND_MM if isinstance(flat, list) else 0.0,
            raw,
        )
        old = piece
        piece = np.full(weights.shape[0], STAYS)
        piece[:before] = old
        piece[in_flap] = k
        raw = raw_now
    drawn, drawn_faces, is_raw = in_own_right(faces, raw)
    points = (weights @ vertices)[drawn]
    deep = np.zeros(len(drawn))
    owner = piece[drawn]
    for k, sheet in enumerate(sheets):
        mine = np.flatnonzero(owner == k)
        if len(mine):
            row, column = nearest_place(sheet, points[mine])
            deep[mine] = _height(sheet, points[mine], row, column) < 0
    deep[is_raw] = 0.0
    return FlapMesh(weights, faces, piece, drawn, drawn_faces, is_raw, deep)


def _parted_with_raw(faces, weights, vertices, value, flat, period, raw):
    """As ``parted``, keeping which faces were raw before."""
    marked = faces[raw]
    keep, weights, in_flap, raw_now = parted(faces, weights, vertices, value, flat, period)
    if len(marked):
        known = {tuple(sorted(face)) for face in marked.tolist()}
        raw_now = raw_now | np.array([tuple(sorted(face)) in known for face in keep.tolist()])
    return keep, weights, in_flap, raw_now
