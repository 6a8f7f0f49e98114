"""Cut away of a mesh what lies in others: the exact last resort where pushing is not enough."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import trimesh

from meshes.drape.audit import overlap_depth, self_intersections
from meshes.drape.distance import MeshIndex

LEAST_PIECE = 0.02
"""Pieces cut off that are smaller than this part of the largest are dropped."""

SLIVER = 0.02
"""mm: edges shorter than this that the cut makes are taken out."""


@dataclass(frozen=True, slots=True, eq=False)
class Trimmed:
    """A trimmed mesh and where its vertices come from.

    Attributes
    ----------
    mesh : trimesh.Trimesh
        Closed, outward.
    corner : (n, 3) int
        Vertices of the untrimmed mesh between which each vertex lies.
    weight : (n, 3) float
        Their shares; rows sum to 1.
    kept : float
        Share of the volume that is left.
    """

    mesh: trimesh.Trimesh
    corner: np.ndarray
    weight: np.ndarray
    kept: float

    def carry(self, values: np.ndarray) -> np.ndarray:
        """Values (m, ...) at the untrimmed vertices, interpolated at the new ones."""
        values = np.asarray(values)
        shape = (len(self.corner), 3) + (1,) * (values.ndim - 1)
        return (values[self.corner] * self.weight.reshape(shape)).sum(axis=1).astype(values.dtype)


def trim(
    mesh: trimesh.Trimesh,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.1,
    *,
    floor: float = 0.2,
    least_kept: float = 0.7,
) -> Trimmed | None:
    """Cut off a mesh what lies deeper than ``floor`` in any obstacle.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        Closed and free of self-intersection.
    obstacles : sequence of MeshIndex
        Closed.
    gap : float
        Room cut free round an obstacle, mm: it is swelled along its vertex
        normals by that much, which is exact on flat faces.
    floor : float
        Obstacles into which the mesh reaches less deep are left alone, mm.
    least_kept : float
        When less of the volume would be left the mesh was laid wrongly, and
        nothing is cut.

    Returns
    -------
    Trimmed or None
        None when there is nothing to cut, or too much.
    """
    from manifold3d import Manifold, Mesh, OpType

    def solid(vertices: np.ndarray, faces: np.ndarray) -> Manifold:
        return Manifold(
            Mesh(
                vert_properties=np.asarray(vertices, np.float32),
                tri_verts=np.asarray(faces, np.uint32),
            )
        )

    index = MeshIndex.of(mesh)
    deep = [o for o in obstacles if overlap_depth(index, o)[0] > floor]
    if not deep or len(self_intersections(index)):
        return None
    tools = []
    for o in deep:
        size = np.linalg.norm(o.vertex_normal, axis=1, keepdims=True)
        normal = o.vertex_normal / np.where(size > 0, size, 1.0)
        tool = solid(o.vertices + gap * normal, o.faces)
        if not tool.is_empty():
            tools.append(tool)
    if not tools:
        return None
    body = solid(index.vertices, index.faces)
    before = body.volume()
    left = Manifold.batch_boolean([body, *tools], OpType.Subtract).simplify(SLIVER)
    pieces = left.decompose()
    if not pieces:
        return None
    largest = max(piece.volume() for piece in pieces)
    pieces = [piece for piece in pieces if piece.volume() > LEAST_PIECE * largest]
    left = Manifold.batch_boolean(pieces, OpType.Add) if len(pieces) > 1 else pieces[0]
    kept = float(left.volume() / max(before, 1e-9))
    if kept < least_kept:
        return None
    found = left.to_mesh()
    vertices = np.array(found.vert_properties[:, :3], dtype=np.float64)
    faces = np.array(found.tri_verts, dtype=np.int64)
    _, close, _, face = index.query(vertices)
    corner = index.faces[face]
    triangle = index.vertices[corner]
    e1, e2, d = triangle[:, 1] - triangle[:, 0], triangle[:, 2] - triangle[:, 0], close
    d = d - triangle[:, 0]
    a, b, c = (e1 * e1).sum(1), (e1 * e2).sum(1), (e2 * e2).sum(1)
    p, q = (d * e1).sum(1), (d * e2).sum(1)
    den = np.maximum(a * c - b * b, 1e-18)
    v, w = (c * p - b * q) / den, (a * q - b * p) / den
    weight = np.clip(np.stack([1 - v - w, v, w], axis=1), 0, 1)
    weight /= weight.sum(axis=1, keepdims=True)
    return Trimmed(trimesh.Trimesh(vertices, faces, process=False), corner, weight, kept)
