"""Fibre millimetres on the surface of a belly, worked out from its fibre lines.

A flat sheet has smooth fibre coordinates of its own. A belly filled from many
fascicles has not: neighbouring fascicles end and begin within it, so its v
jumps. There the pattern coordinate is solved for: of all functions on the
surface the one whose slope comes closest (least squares over the faces) to one
millimetre a millimetre straight across the fibres.
"""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_matrix, identity
from scipy.sparse.linalg import splu
from scipy.spatial import cKDTree

SOLVED_FACES = 3500
"""Larger meshes are solved on a decimated copy and interpolated: the field is smooth."""

ALIGNED_BELOW = 0.30
"""A v coordinate is kept when its slope along the fibres is under this share of its slope."""


def surface_millimetres(points: np.ndarray, faces: np.ndarray, fibres: np.ndarray) -> np.ndarray:
    """Return coordinates along and across the fibres for each vertex, (n, 2) mm.

    Parameters
    ----------
    points : (n, 3) float
    faces : (m, 3) int
    fibres : (f, k, 3) float
        Origin end first, mm.
    """
    if len(faces) > 1.3 * SOLVED_FACES:
        coarse, coarse_faces = simplified(points, faces, SOLVED_FACES)
        if len(coarse_faces) > 100:
            values = _solved(np.asarray(coarse, float), coarse_faces, fibres)
            return _interpolated(coarse, values, points)
    return _solved(np.asarray(points, float), faces, fibres)


def simplified(points: np.ndarray, faces: np.ndarray, face_count: int):
    """Return (points, faces) with about so many faces.

    Decimation gives up early on uneven meshes, so it is asked again, harder each time.
    """
    from meshes.shapes.decimation import decimate

    points = np.ascontiguousarray(points, np.float32)
    faces = np.ascontiguousarray(faces, np.int32)
    for haste in (7.0, 9.0):
        points, faces = decimate(points, faces, face_count, haste)
        points = np.ascontiguousarray(points, np.float32)
        faces = np.ascontiguousarray(faces, np.int32)
        if len(faces) <= 1.2 * face_count:
            break
    return points, faces


def fibre_directions(places: np.ndarray, fibres: np.ndarray) -> np.ndarray:
    """Return the unit fibre direction at each place, (n, 3), from the nearest fibre points."""
    tangents = np.gradient(np.asarray(fibres, float), axis=1).reshape(-1, 3)
    tangents /= np.maximum(np.linalg.norm(tangents, axis=1, keepdims=True), 1e-9)
    nodes = np.asarray(fibres, float).reshape(-1, 3)
    k = min(8, len(nodes))
    distance, index = cKDTree(nodes).query(places, k=k)
    weight = 1.0 / (distance.reshape(len(places), -1) + 2.0) ** 2
    mean = (tangents[index.reshape(len(places), -1)] * weight[..., None]).sum(axis=1)
    return mean / np.maximum(np.linalg.norm(mean, axis=1, keepdims=True), 1e-9)


def is_aligned(points: np.ndarray, faces: np.ndarray, v: np.ndarray, fibres: np.ndarray) -> bool:
    """Return whether lines of equal v run along the fibres over most of the surface."""
    gradient, area, _ = _gradient(np.asarray(points, float), faces)
    slope = (gradient @ np.asarray(v, float)).reshape(-1, 3)
    along = fibre_directions(points[faces].mean(axis=1), fibres)
    steep = np.linalg.norm(slope, axis=1)
    total = float((area * steep).sum())
    if total <= 0:
        return False
    return float((area * np.abs((slope * along).sum(axis=1))).sum()) / total < ALIGNED_BELOW


def _gradient(points: np.ndarray, faces: np.ndarray):
    """Return the face gradient operator (3m, n), face areas (m,) and face normals (m, 3)."""
    a, b, c = (points[faces[:, k]] for k in range(3))
    across = np.cross(b - a, c - a)
    double = np.maximum(np.linalg.norm(across, axis=1), 1e-9)
    normal = across / double[:, None]
    # The slope of a corner's hat function: the opposite edge turned by a right angle.
    hats = [np.cross(normal, e) / double[:, None] for e in (c - b, a - c, b - a)]
    m = len(faces)
    rows = np.arange(3 * m).reshape(m, 3)
    row = np.concatenate([rows.ravel()] * 3)
    column = np.concatenate([np.repeat(faces[:, k], 3) for k in range(3)])
    value = np.concatenate([hat.ravel() for hat in hats])
    return (
        coo_matrix((value, (row, column)), shape=(3 * m, len(points))).tocsr(),
        double / 2,
        normal,
    )


def _solved(points: np.ndarray, faces: np.ndarray, fibres: np.ndarray) -> np.ndarray:
    gradient, area, normal = _gradient(points, faces)
    along = fibre_directions(points[faces].mean(axis=1), fibres)
    along -= (along * normal).sum(axis=1, keepdims=True) * normal
    along /= np.maximum(np.linalg.norm(along, axis=1, keepdims=True), 0.05)
    # Front and back of a belly must count the same way across, or a closed surface
    # would have no single-valued coordinate: both are measured against the main facing.
    facing = np.linalg.eigh((area[:, None, None] * normal[:, :, None] * normal[:, None, :]).sum(0))
    across = np.cross(along, facing[1][:, 2])
    across -= (across * normal).sum(axis=1, keepdims=True) * normal
    across -= (across * along).sum(axis=1, keepdims=True) * along
    across /= np.linalg.norm(across, axis=1, keepdims=True) + 0.15
    weight = np.repeat(np.maximum(area, 1e-6), 3)
    weighted = gradient.T.multiply(weight).tocsr()
    # Degenerate faces blow the operator up; a trace of stiffness keeps it solvable.
    matrix = (weighted @ gradient + 1e-6 * identity(len(points))).tocsc()
    solver = splu(matrix)
    return np.column_stack(
        [solver.solve(weighted @ along.ravel()), solver.solve(weighted @ across.ravel())]
    )


def _interpolated(coarse: np.ndarray, values: np.ndarray, points: np.ndarray) -> np.ndarray:
    """Return values at points by a local plane through the nearest coarse ones.

    A mean of neighbours would make terraces of a slope; a fitted plane keeps it.
    """
    k = min(9, len(coarse))
    distance, index = cKDTree(coarse).query(points, k=k)
    weight = 1.0 / (distance + 0.5) ** 2
    away = np.asarray(coarse, float)[index] - np.asarray(points, float)[:, None]
    row = np.concatenate([np.ones((*away.shape[:2], 1)), away], axis=2)
    matrix = np.einsum("nk,nki,nkj->nij", weight, row, row)
    # The neighbours lie on a surface: across it the slope is free, and held to nought.
    spread = np.einsum("nk,nki->n", weight, away**2)
    matrix[:, [1, 2, 3], [1, 2, 3]] += 0.02 * spread[:, None] + 1e-9
    right = np.einsum("nk,nki,nkc->nic", weight, row, values[index])
    return np.linalg.solve(matrix, right)[:, 0]


def smoothed(values: np.ndarray, faces: np.ndarray, rounds: int = 3) -> np.ndarray:
    """Return vertex values averaged with their neighbours a few times."""
    a = np.concatenate([faces[:, 0], faces[:, 1], faces[:, 2]])
    b = np.concatenate([faces[:, 1], faces[:, 2], faces[:, 0]])
    n = len(values)
    count = np.bincount(a, minlength=n) + np.bincount(b, minlength=n)
    values = np.asarray(values, float)
    for _ in range(rounds):
        total = np.bincount(a, weights=values[b], minlength=n)
        total += np.bincount(b, weights=values[a], minlength=n)
        values = np.where(count > 0, 0.4 * values + 0.6 * total / np.maximum(count, 1), values)
    return values
