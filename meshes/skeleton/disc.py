"""Intervertebral discs: filled between the endplates of two finished bones."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import trimesh

CLEARANCE_MM = 0.25
"""Kept between disc and endplates, so that the meshes stay apart."""

_STEPS = 14


def disc_mesh(
    centre: np.ndarray,
    axes: np.ndarray,
    half: tuple[float, float],
    height: float,
    upper: Callable[[np.ndarray], np.ndarray],
    lower: Callable[[np.ndarray], np.ndarray],
    *,
    around: int,
    rings: int,
    exponent: float,
    hollow: float,
    bulge: float,
) -> trimesh.Trimesh:
    """Closed disc whose faces follow the endplates above and below.

    Parameters
    ----------
    centre : (3,) float
        Middle of the disc, mm.
    axes : (3, 3) float
        Columns left, back, up.
    half : (2,) float
        Half width and half depth of the outline, mm.
    height : float
        Mid-height, mm; faces never leave it by more than half as much again.
    upper, lower : callable
        Signed distance (n,) of points (n, 3) to the bone above and below, mm.
    around, rings : int
        Points round the rim and rings between centre and rim.
    exponent : float
        Of the superellipse outline.
    hollow : float
        Depth of the dent in the rear outline, mm.
    bulge : float
        How far the rim bulges at mid-height, mm.

    Returns
    -------
    trimesh.Trimesh
        Closed, outward.
    """
    angle = 2 * np.pi * np.arange(around) / around
    radius = (np.abs(np.cos(angle)) ** exponent + np.abs(np.sin(angle)) ** exponent) ** (
        -1.0 / exponent
    )
    outline = np.stack([half[0] * radius * np.cos(angle), half[1] * radius * np.sin(angle)], axis=1)
    dent = np.exp(-((outline[:, 0] / (0.42 * half[0])) ** 2)) * (outline[:, 1] > 0)
    outline[:, 1] -= hollow * dent
    # Rings crowd towards the rim, where the endplates are most curved.
    fraction = 1.0 - (1.0 - np.arange(1, rings + 1) / rings) ** 1.8
    flat = np.concatenate([[[0.0, 0.0]], (fraction[:, None, None] * outline).reshape(-1, 2)])
    start = centre + flat[:, :1] * axes[:, 0] + flat[:, 1:] * axes[:, 1]
    limit = 0.75 * height
    up = _march(start, axes[:, 2], upper, limit)
    down = _march(start, -axes[:, 2], lower, limit)
    top = start + up[:, None] * axes[:, 2]
    bottom = start - down[:, None] * axes[:, 2]
    # The rim: two rings that bulge between top and bottom.
    rim = slice(1 + (rings - 1) * around, 1 + rings * around)
    normal = outline / np.linalg.norm(outline, axis=1, keepdims=True)
    sideways = normal[:, :1] * axes[:, 0] + normal[:, 1:] * axes[:, 1]
    upper_rim = (0.68 * top[rim] + 0.32 * bottom[rim]) + bulge * sideways
    lower_rim = (0.32 * top[rim] + 0.68 * bottom[rim]) + bulge * sideways
    count = len(flat)
    vertices = np.concatenate([top, bottom, upper_rim, lower_rim])
    cap = _fan(around, rings)
    top_rim = np.arange(rim.start, rim.stop)
    first, second = 2 * count + np.arange(around), 2 * count + around + np.arange(around)
    faces = [cap, cap[:, ::-1] + count]
    for above, below in ((top_rim, first), (first, second), (second, top_rim + count)):
        after_above, after_below = np.roll(above, -1), np.roll(below, -1)
        faces.append(np.stack([above, below, after_above], axis=1))
        faces.append(np.stack([after_above, below, after_below], axis=1))
    return trimesh.Trimesh(vertices, np.concatenate(faces), process=False)


def _march(start, direction, distance, limit):
    """Lengths (n,) to walk from start until the clearance to the bone is reached."""
    walked = np.zeros(len(start))
    for _ in range(_STEPS):
        gap = distance(start + walked[:, None] * direction) - CLEARANCE_MM
        walked = np.clip(walked + 0.85 * gap, 0.15, limit)
    return walked


def _fan(around: int, rings: int) -> np.ndarray:
    """Faces (m, 3) of a disc of rings round vertex 0, seen from above counter-clockwise."""
    i = np.arange(around)
    j = np.roll(i, -1)
    faces = [np.stack([np.zeros(around, int), 1 + i, 1 + j], axis=1)]
    for ring in range(rings - 1):
        inner, outer = 1 + ring * around, 1 + (ring + 1) * around
        faces.append(np.stack([inner + i, outer + i, outer + j], axis=1))
        faces.append(np.stack([inner + i, outer + j, inner + j], axis=1))
    return np.concatenate(faces)
