"""Meshes made small for a page: whole numbers, neighbours as differences, planes of bytes.

One stretch of bytes holds all distinct meshes one behind another; a right half
that mirrors its left one is not stored again. Per mesh, each a plane of its own:

========================  ======  ================================================
indices                   uint16  "highest so far minus index"; 0 is a new vertex
x, y, z                   int16   steps of ``STEP_MM``, differences
normal                    2 int8  octahedral
tendon, openness          2 int8  0..127
along, across             int16   fibre mm in steps of ``FIBRE_STEP_MM``, differences
========================  ======  ================================================

Two-byte planes are split into low and high bytes. Differences run modulo 2^16
(2^8) and are folded so that small ones of either sign are small numbers. What
is left is for a general compressor.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components, depth_first_order

from meshes.model import other_side
from viewer.scene.drawn import MIRROR, DrawnPart, Shell, decimated

STEP_MM = 1.0 / 32.0
"""Places are whole multiples of this; 16 bits reach 1024 mm either way."""

FIBRE_STEP_MM = 1.0 / 32.0
MESH_LIMIT = 65535
LEAST_FACES = 60


@dataclass(frozen=True, slots=True)
class PackedMesh:
    """One distinct mesh.

    Attributes
    ----------
    vertices, faces : int
        How many.
    data : bytes
        As the table of this module says.
    """

    vertices: int
    faces: int
    data: bytes


@dataclass(frozen=True, slots=True)
class PackedMeshes:
    """All meshes and which part shows which.

    Attributes
    ----------
    meshes : tuple of PackedMesh
    shows : dict of str to (int, bool)
        Part id to the number of its mesh and whether it is mirrored in the median plane.
    """

    meshes: tuple[PackedMesh, ...]
    shows: dict[str, tuple[int, bool]]

    @property
    def data(self) -> bytes:
        """All meshes one behind another."""
        return b"".join(mesh.data for mesh in self.meshes)


def packed_meshes(drawn: Sequence[DrawnPart], face_budget: int) -> PackedMeshes:
    """Pack the shells of a model.

    Parameters
    ----------
    drawn : sequence of DrawnPart
        With the furrow shade worked out.
    face_budget : int
        About how many triangles both sides may have together.

    Raises
    ------
    ValueError
        A part lies further than 1023 mm from the origin.
    """
    share = kept_share(drawn, face_budget)
    meshes: list[PackedMesh] = []
    shows: dict[str, tuple[int, bool]] = {}
    by_id = {each.part.id: each for each in drawn}
    for each in sorted(drawn, key=lambda each: (each.part.side == "right", each.part.id)):
        twin = by_id.get(other_side(each.part.id))
        if each.part.side == "right" and twin is not None and _mirrors(twin.still, each.still):
            shows[each.part.id] = (shows[twin.part.id][0], True)
            continue
        shows[each.part.id] = (len(meshes), False)
        meshes.append(packed(thinned(each.still, share)))
    return PackedMeshes(tuple(meshes), shows)


def kept_share(drawn: Sequence[DrawnPart], face_budget: int) -> float:
    """Return the share of its faces above ``LEAST_FACES`` that each part may keep."""
    total = sum(len(each.still.faces) for each in drawn)
    least = sum(min(len(each.still.faces), LEAST_FACES) for each in drawn)
    if total <= face_budget:
        return 1.0
    return max((face_budget - least) / max(total - least, 1), 0.02)


def thinned(shell: Shell, share: float) -> Shell:
    """Return a shell with its share of the faces, and no more than 16-bit indices allow."""
    have = len(shell.faces)
    wanted = min(have, LEAST_FACES) + int(share * max(have - LEAST_FACES, 0))
    if wanted < have:
        shell = decimated(shell, wanted, gain=1.1)
    while len(shell.points) > MESH_LIMIT:
        shell = decimated(shell, int(len(shell.faces) * 0.8), gain=1.0)
    return shell


def _mirrors(left: Shell, right: Shell) -> bool:
    return left.points.shape == right.points.shape and np.array_equal(
        right.points, left.points * MIRROR
    )


def packed(shell: Shell) -> PackedMesh:
    """Pack one shell.

    Raises
    ------
    ValueError
        It reaches beyond what 16 bits hold.
    """
    faces = face_walk(shell.faces)
    order, faces = by_first_use(faces)
    places = np.rint(shell.points[order] / STEP_MM)
    if np.abs(places).max() > 32767:
        raise ValueError("a part lies further than 1023 mm from the origin")
    fibre = np.clip(np.rint(shell.surface[order, :2] / FIBRE_STEP_MM), -32767, 32767)
    shade = np.rint(np.clip(shell.surface[order, 2:4], 0, 1) * 127)
    flat = faces.ravel()
    highest = np.concatenate([[0], np.maximum.accumulate(flat)[:-1] + 1])
    highest[0] = 0
    planes = [split((highest - flat).astype(np.uint16))]
    planes += [split(folded16(places[:, axis])) for axis in range(3)]
    normals = octahedral(shell.normals[order])
    planes += [folded8(column) for column in (*normals.T, *shade.T)]
    planes += [split(folded16(fibre[:, axis])) for axis in range(2)]
    return PackedMesh(len(order), len(faces), b"".join(planes))


def face_walk(faces: np.ndarray) -> np.ndarray:
    """Return the faces in an order in which each one mostly touches the one before.

    Parameters
    ----------
    faces : (m, 3) int

    Returns
    -------
    (m, 3) int
    """
    count = len(faces)
    edges = np.sort(faces[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2), axis=1)
    owner = np.repeat(np.arange(count), 3)
    rank = np.lexsort((edges[:, 1], edges[:, 0]))
    same = (edges[rank[1:]] == edges[rank[:-1]]).all(axis=1)
    a, b = owner[rank[:-1][same]], owner[rank[1:][same]]
    graph = coo_matrix((np.ones(len(a)), (a, b)), shape=(count, count)).tocsr()
    number, piece = connected_components(graph, directed=False)
    starts = np.unique(piece, return_index=True)[1]
    walk = [
        depth_first_order(graph, start, directed=False, return_predecessors=False)
        for start in starts[:number]
    ]
    return faces[np.concatenate(walk)]


def by_first_use(faces: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Number vertices in the order in which the faces meet them.

    Returns
    -------
    order : (n,) int
        Old number of each vertex.
    faces : (m, 3) int
        In new numbers.
    """
    used, first, inverse = np.unique(faces.ravel(), return_index=True, return_inverse=True)
    rank = np.argsort(first, kind="stable")
    new = np.empty(len(used), int)
    new[rank] = np.arange(len(used))
    return used[rank], new[inverse].reshape(-1, 3)


def octahedral(normals: np.ndarray) -> np.ndarray:
    """Return unit vectors as two whole numbers in -127..127, (n, 2).

    The octahedron round the unit sphere, its lower half folded outward.
    """
    n = normals / np.maximum(np.abs(normals).sum(axis=1, keepdims=True), 1e-9)
    sign = np.where(n[:, :2] >= 0, 1.0, -1.0)
    lower = (1 - np.abs(n[:, [1, 0]])) * sign
    flat = np.where(n[:, 2:] < 0, lower, n[:, :2])
    return np.rint(np.clip(flat, -1, 1) * 127)


def unfolded_octahedral(flat: np.ndarray) -> np.ndarray:
    """Return the unit vectors of ``octahedral``, (n, 3)."""
    xy = np.asarray(flat, float) / 127.0
    z = 1 - np.abs(xy).sum(axis=1, keepdims=True)
    down = np.maximum(-z, 0)
    xy = xy - np.where(xy >= 0, down, -down)
    n = np.concatenate([xy, z], axis=1)
    return n / np.linalg.norm(n, axis=1, keepdims=True)


def folded16(values: np.ndarray) -> np.ndarray:
    """Return differences modulo 2^16, folded so that small ones of either sign are small."""
    steps = np.diff(values.astype(np.int64), prepend=0).astype(np.uint16).view(np.int16)
    wide = steps.astype(np.int32)
    return ((wide << 1) ^ (wide >> 31)).astype(np.uint16)


def folded8(values: np.ndarray) -> bytes:
    """Return differences modulo 2^8, folded."""
    steps = np.diff(values.astype(np.int64), prepend=0).astype(np.uint8).view(np.int8)
    wide = steps.astype(np.int32)
    return ((wide << 1) ^ (wide >> 31)).astype(np.uint8).tobytes()


def split(values: np.ndarray) -> bytes:
    """Return the low bytes, then the high bytes."""
    pairs = values.astype("<u2").view(np.uint8).reshape(-1, 2)
    return pairs[:, 0].tobytes() + pairs[:, 1].tobytes()


def unpacked(mesh: PackedMesh) -> Shell:
    """Return the shell that a page makes of a packed mesh; the mirror of the page's own code."""
    at = 0

    def bytes_of(count: int) -> np.ndarray:
        nonlocal at
        piece = np.frombuffer(mesh.data, np.uint8, count, at)
        at += count
        return piece

    def wide(count: int) -> np.ndarray:
        low, high = bytes_of(count).astype(np.uint16), bytes_of(count).astype(np.uint16)
        return low | (high << 8)

    def sums(folded: np.ndarray, kind: type) -> np.ndarray:
        folded = folded.astype(np.int64)
        return np.cumsum((folded >> 1) ^ -(folded & 1)).astype(kind)

    codes = wide(3 * mesh.faces).astype(np.int64)
    highest = np.concatenate([[0], np.cumsum(codes == 0)[:-1]])
    faces = (highest - codes).reshape(-1, 3).astype(np.int32)
    points = np.stack([sums(wide(mesh.vertices), np.int16) for _ in range(3)], axis=1) * STEP_MM
    flat = np.stack([sums(bytes_of(mesh.vertices), np.int8) for _ in range(2)], axis=1)
    shade = np.stack([sums(bytes_of(mesh.vertices), np.int8) for _ in range(2)], axis=1) / 127.0
    fibre = np.stack([sums(wide(mesh.vertices), np.int16) for _ in range(2)], axis=1)
    surface = np.concatenate([fibre * FIBRE_STEP_MM, shade], axis=1).astype(np.float32)
    return Shell(
        points.astype(np.float32), unfolded_octahedral(flat).astype(np.float32), faces, surface
    )
