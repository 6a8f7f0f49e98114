"""Many meshes asked at once, in one kernel: what lies nearest, and how to get clear of it.

A course of a nerve has some thirty neighbours and is moved a dozen times: asking
each neighbour from Python costs more than the answers. The kernels read the
arrays of all the indexes in place, by their addresses.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numba import carray, njit, types
from numba.core import cgutils
from numba.extending import intrinsic

from meshes.drape.audit import TOUCH, _trees_cross
from meshes.drape.distance import (
    KERNEL,
    LEAF_SIZE,
    MeshIndex,
    _boxes,
    _build_tree,
    feature_normal,
    nearest,
)
from meshes.shapes.halves import in_halves

_FLOATS = ("node_low", "node_high", "corners", "face_normal", "edge_normal", "vertex_normal")
_WHOLES = ("order", "faces", "edge_of")


@intrinsic
def _at(context, address):
    """The place in memory that a number names."""

    def generate(context, builder, signature, arguments):
        return builder.inttoptr(arguments[0], cgutils.voidptr_t)

    return types.voidptr(types.int64), generate


def _row(index: MeshIndex) -> list[int]:
    """Addresses and sizes of an index's arrays, as the kernels read them."""
    arrays = [getattr(index, name) for name in (*_FLOATS, *_WHOLES)]
    for array, kind in zip(arrays, [np.float64] * 6 + [np.int64] * 3, strict=True):
        if array.dtype != kind or not array.flags.c_contiguous:
            raise TypeError(
                f"several: arrays must be contiguous {kind.__name__}, got {array.dtype}"
            )
    if index.link.dtype != np.int32 or not index.link.flags.c_contiguous:
        raise TypeError(f"several: links must be contiguous int32, got {index.link.dtype}")
    sizes = [
        len(index.node_low), len(index.faces), len(index.edge_normal), len(index.vertex_normal),
    ]  # fmt: skip
    return [array.ctypes.data for array in (*arrays, index.link)] + sizes


class Triangles:
    """Triangles in a tree, no mesh: only where they cross others can be asked.

    Parameters
    ----------
    corners : (m, 9) float
        mm; in any order, at least one.
    """

    def __init__(self, corners: np.ndarray) -> None:
        corners = np.ascontiguousarray(corners, dtype=np.float64)
        order, self.node_low, self.node_high, self.link = _build_tree(
            *_boxes(corners.reshape(-1, 3), np.arange(3 * len(corners)).reshape(-1, 3)), LEAF_SIZE
        )
        self._finish(corners[order])

    def _finish(self, corners: np.ndarray) -> None:
        self.corners = corners
        self.bounds = np.array([self.node_low[0], self.node_high[0]])
        self.row = [0] * 14
        self.row[:3] = [
            array.ctypes.data for array in (self.node_low, self.node_high, self.corners)
        ]
        self.row[9:12] = [self.link.ctypes.data, len(self.link), len(self.corners)]

    def mirrored(self) -> Triangles:
        """Their mirror image in the plane x = 0."""
        twin = object.__new__(Triangles)
        twin.link = self.link
        twin.node_low, twin.node_high = self.node_low.copy(), self.node_high.copy()
        twin.node_low[:, 0], twin.node_high[:, 0] = -self.node_high[:, 0], -self.node_low[:, 0]
        twin._finish(self.corners * [-1.0, 1.0, 1.0, -1.0, 1.0, 1.0, -1.0, 1.0, 1.0])
        return twin


class Several:
    """Meshes to be asked together.

    Parameters
    ----------
    indexes : sequence of MeshIndex
        Kept alive by this.
    """

    def __init__(self, indexes: Sequence[MeshIndex]) -> None:
        self.indexes = list(indexes)
        count = len(self.indexes)
        self.table = np.array([_handle(i) for i in self.indexes], np.int64).reshape(count, 14)
        self.boxes = np.array([i.bounds for i in self.indexes]).reshape(count, 2, 3)

    def least(
        self, points: np.ndarray, margin: float, reach: float, exact: float = np.inf
    ) -> np.ndarray:
        """Least signed distance (n,) of points (n, 3) to any of the meshes, mm.

        The meshes are closed, and only those are asked in whose box, grown by ``margin``, the
        point lies; ``inf`` where none of those comes within ``reach``. Beyond ``exact`` mm the
        sign alone counts, and the distance may come out smaller, down to ``exact``: where each
        point lies close to the one before, most of them need not be looked up then.
        """
        points = np.ascontiguousarray(np.reshape(points, (-1, 3)), dtype=np.float64)
        return _least(points, self.table, self.boxes, float(margin), float(reach), float(exact))

    def lift(self, points: np.ndarray, gap: float, reach: float = 4.0) -> np.ndarray:
        """Points (n, 3) that lie within ``gap`` mm, or up to ``reach`` mm deep in a mesh, lifted.

        One mesh after the other: what the first lifts may be lifted again by the next.
        """
        out = np.array(points, dtype=np.float64, order="C")
        _lift(out, self.table, self.boxes, float(gap), float(reach))
        return out

    def settle(
        self, line: np.ndarray, need: np.ndarray, rounds: int, ease: float, reach: float
    ) -> np.ndarray:
        """Push a line (n, 3) clear of the meshes, ``need`` (n,) mm, and ease it between pushes.

        Parameters
        ----------
        rounds : int
            Most rounds; stops when clear.
        ease : float
            Share of the way to the neighbours' mean in each round but the last three.
        reach : float
            Depth from which a point is still brought out, mm.
        """
        out = np.array(line, dtype=np.float64, order="C")
        need = np.ascontiguousarray(need, dtype=np.float64)
        _settle(out, need, self.table, self.boxes, rounds, float(ease), float(reach))
        return out


def crossing_boxes(
    ones: Sequence[MeshIndex | Triangles], others: Sequence[MeshIndex | Triangles]
) -> tuple[np.ndarray, np.ndarray]:
    """Where the surfaces of many pairs of meshes meet.

    Parameters
    ----------
    ones, others : sequence of MeshIndex or Triangles
        The pairs.

    Returns
    -------
    meet : (n,) bool
    boxes : (n, 2, 3) float
        As from :func:`meshes.drape.audit.crossing_box`, mm.
    """
    one = np.array([_handle(i) for i in ones], np.int64).reshape(-1, 14)
    other = np.array([_handle(i) for i in others], np.int64).reshape(-1, 14)
    boxes = np.empty((len(one), 2, 3))
    meet = np.zeros(len(one), bool)

    def rows(first: int, last: int) -> None:
        _crossing_boxes(one, other, meet, boxes, first, last, -10 * TOUCH)

    in_halves(rows, len(one), 50)
    return meet, boxes


@njit(**KERNEL)
def _crossing_boxes(one, other, meet, boxes, first, last, touch):
    low = np.full(3, -np.inf)
    high = np.full(3, np.inf)
    for i in range(first, last):
        low_a, high_a, link_a, corners_a = _tree(one[i])
        low_b, high_b, link_b, corners_b = _tree(other[i])
        count, box_low, box_high = _trees_cross(
            low_a, high_a, link_a, corners_a, low_b, high_b, link_b, corners_b, touch, False,
            low, high,
        )  # fmt: skip
        meet[i] = count > 0
        boxes[i, 0] = box_low
        boxes[i, 1] = box_high


def _handle(index: MeshIndex | Triangles) -> list[int]:
    """The index's row, made once."""
    if isinstance(index, Triangles):
        return index.row
    row = index.__dict__.get("_row")
    if row is None:
        row = index.__dict__["_row"] = _row(index)
    return row


@njit(inline="always", **KERNEL)
def _tree(row):
    nodes, faces = row[10], row[11]
    low = carray(_at(row[0]), (nodes, 3), np.float64)
    high = carray(_at(row[1]), (nodes, 3), np.float64)
    corners = carray(_at(row[2]), (faces, 9), np.float64)
    link = carray(_at(row[9]), (nodes, 2), np.int32)
    return low, high, link, corners


@njit(**KERNEL)
def _signed(row, x, y, z, reach, stack, start):
    """Signed distance and unit normal at one point, and where it was found; inf beyond reach."""
    low, high, link, corners = _tree(row)
    d2, slot, v, w, feature = nearest(
        x, y, z, reach * reach, low, high, link, corners, stack, start
    )
    if slot < 0:
        return np.inf, 0.0, 0.0, 0.0, slot
    faces, edges, vertices = row[11], row[12], row[13]
    fn = carray(_at(row[3]), (faces, 3), np.float64)
    en = carray(_at(row[4]), (edges, 3), np.float64)
    vn = carray(_at(row[5]), (vertices, 3), np.float64)
    order = carray(_at(row[6]), (faces,), np.int64)
    corner = carray(_at(row[7]), (faces, 3), np.int64)
    edge_of = carray(_at(row[8]), (faces, 3), np.int64)
    t = corners[slot]
    nx, ny, nz = feature_normal(slot, feature, order, corner, edge_of, fn, en, vn)
    length = np.sqrt(nx * nx + ny * ny + nz * nz)
    if length > 0:
        nx, ny, nz = nx / length, ny / length, nz / length
    side = (
        (x - t[0] - v * (t[3] - t[0]) - w * (t[6] - t[0])) * nx
        + (y - t[1] - v * (t[4] - t[1]) - w * (t[7] - t[1])) * ny
        + (z - t[2] - v * (t[5] - t[2]) - w * (t[8] - t[2])) * nz
    )
    d = np.sqrt(d2)
    return (-d if side < 0 else d), nx, ny, nz, slot


@njit(inline="always", **KERNEL)
def _in_box(box, x, y, z, margin):
    return (
        x > box[0, 0] - margin
        and x < box[1, 0] + margin
        and y > box[0, 1] - margin
        and y < box[1, 1] + margin
        and z > box[0, 2] - margin
        and z < box[1, 2] + margin
    )


@njit(**KERNEL)
def _least(points, table, boxes, margin, reach, exact):
    out = np.full(points.shape[0], np.inf)
    stack = np.empty(128, np.int32)
    for m in range(table.shape[0]):
        last = -1
        # What is known of the point before: where it lies and its distance, if it was far.
        far = 0.0
        ox = oy = oz = 0.0
        for i in range(points.shape[0]):
            x, y, z = points[i, 0], points[i, 1], points[i, 2]
            if not _in_box(boxes[m], x, y, z, margin):
                continue
            left = abs(far) - np.sqrt((x - ox) ** 2 + (y - oy) ** 2 + (z - oz) ** 2)
            if left > exact:
                # Too near for the surface to lie between the two.
                out[i] = min(out[i], left if far > 0 else -left)
                continue
            # Out of its box lies out of the mesh: only what is nearer than the others matters.
            outside = not _in_box(boxes[m], x, y, z, 0.0)
            near = min(reach, max(out[i], 0.0)) if outside else reach
            d, _, _, _, slot = _signed(table[m], x, y, z, near, stack, last)
            if slot >= 0:
                last = slot
                out[i] = min(out[i], d)
                far = d
            elif outside:
                far = near
            elif far > 0 and left > 0:
                far = reach
            else:
                # Nothing within reach: far outside, or deep within.
                far = 0.0
            ox, oy, oz = x, y, z
    return out


@njit(**KERNEL)
def _lift(points, table, boxes, gap, reach):
    stack = np.empty(128, np.int32)
    for m in range(table.shape[0]):
        last = -1
        for i in range(points.shape[0]):
            x, y, z = points[i, 0], points[i, 1], points[i, 2]
            if not _in_box(boxes[m], x, y, z, gap):
                continue
            d, nx, ny, nz, slot = _signed(table[m], x, y, z, reach, stack, last)
            if slot < 0:
                continue
            last = slot
            if d < gap:
                low, high, link, corners = _tree(table[m])
                _, s, v, w, _ = nearest(x, y, z, np.inf, low, high, link, corners, stack, slot)
                t = corners[s]
                for k in range(3):
                    closest = t[k] + v * (t[3 + k] - t[k]) + w * (t[6 + k] - t[k])
                    points[i, k] = closest + gap * (nx if k == 0 else (ny if k == 1 else nz))


@njit(**KERNEL)
def _settle(p, need, table, boxes, rounds, ease, reach):
    n = p.shape[0]
    stack = np.empty(128, np.int32)
    push = np.empty((n, 3))
    along = np.empty(3)
    most = need.max()
    last = np.full((table.shape[0], n), -1)
    for turn in range(rounds):
        push[:] = 0.0
        moved = False
        for m in range(table.shape[0]):
            for i in range(n):
                x, y, z = p[i, 0], p[i, 1], p[i, 2]
                if not _in_box(boxes[m], x, y, z, most):
                    continue
                d, nx, ny, nz, slot = _signed(table[m], x, y, z, reach, stack, last[m, i])
                if slot < 0:
                    continue
                last[m, i] = slot
                short = need[i] - d
                if short > 0:
                    short = min(short, 4.0)
                    push[i, 0] += short * nx
                    push[i, 1] += short * ny
                    push[i, 2] += short * nz
                    moved = True
        if not moved:
            break
        for i in range(1, n - 1):
            length = 0.0
            for k in range(3):
                along[k] = 0.5 * (p[i + 1, k] - p[i - 1, k])
                length += along[k] * along[k]
            length = max(np.sqrt(length), 1e-9)
            dot = 0.0
            for k in range(3):
                along[k] /= length
                dot += push[i, k] * along[k]
            for k in range(3):
                push[i, k] -= dot * along[k]
        for i in range(n):
            for k in range(3):
                p[i, k] += push[i, k]
        if turn < rounds - 3 and n > 2:
            for k in range(3):
                before = p[0, k]
                for i in range(1, n - 1):
                    here = p[i, k]
                    p[i, k] += ease * (0.5 * (before + p[i + 1, k]) - here)
                    before = here
