"""Closed meshes swept along a space curve with a changing cross-section."""

from __future__ import annotations

import numpy as np
import trimesh


def sweep_frames(
    points: np.ndarray, outward: np.ndarray, twist_deg: np.ndarray | float = 0.0
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Tangents and the two cross-section directions along a curve.

    Parameters
    ----------
    points : (n, 3) float
        mm.
    outward : (n, 3) float
        About where the outer face looks; made perpendicular to the curve.
    twist_deg : float or (n,)
        Turns the outer face about the curve; positive turns it upward
        (towards outward x tangent).

    Returns
    -------
    tangent, out, up : (n, 3) float
        Unit vectors; up is tangent x out reversed, so that (out, up, -tangent) is right-handed.
    """
    tangent = np.gradient(points, axis=0)
    tangent /= np.linalg.norm(tangent, axis=1, keepdims=True)
    out = outward - np.einsum("ij,ij->i", outward, tangent)[:, None] * tangent
    out /= np.linalg.norm(out, axis=1, keepdims=True)
    up = np.cross(out, tangent)
    turn = np.radians(np.broadcast_to(twist_deg, len(points)))[:, None]
    return (
        tangent,
        np.cos(turn) * out + np.sin(turn) * up,
        np.cos(turn) * up - np.sin(turn) * out,
    )


def sweep_mesh(rings: np.ndarray, first_tip: np.ndarray, last_tip: np.ndarray) -> trimesh.Trimesh:
    """Join rings of points into a closed mesh with a fan at each end.

    Parameters
    ----------
    rings : (n, k, 3) float
        Rings in order along the curve, each with k points in the same sense, mm.
    first_tip, last_tip : (3,) float
        Middles of the two end caps, mm.

    Returns
    -------
    trimesh.Trimesh
        Outward; vertices are the rings in order, then the two tips.
    """
    count, around, _ = rings.shape
    index = np.arange(count * around).reshape(count, around)
    turned = np.roll(index, -1, axis=1)
    a, b, c, d = index[:-1], turned[:-1], turned[1:], index[1:]
    sides = np.stack([np.stack([a, b, c], -1), np.stack([a, c, d], -1)], axis=2).reshape(-1, 3)
    first, last = count * around, count * around + 1
    start = np.stack([turned[0], index[0], np.full(around, first)], axis=-1)
    end = np.stack([index[-1], turned[-1], np.full(around, last)], axis=-1)
    faces = np.concatenate([sides, start, end])
    vertices = np.concatenate([rings.reshape(-1, 3), first_tip[None], last_tip[None]])
    p, q, r = (vertices[faces[:, i]] for i in range(3))
    if np.einsum("ij,ij->i", p, np.cross(q, r)).sum() < 0:
        faces = faces[:, ::-1]
    return trimesh.Trimesh(vertices, faces, process=False)
