"""The last push: clears a finished mesh of the real meshes under and over it.

The field is too coarse to prove anything. Here points of the new surface are
tested against the exact deeper meshes, and points of those against the new
surface, because a thin ridge can pierce a triangle whose corners are all clear.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import numpy as np
import trimesh
from numba import njit
from scipy.ndimage import maximum_filter, uniform_filter
from scipy.sparse import coo_matrix, csr_matrix, diags

from meshes.drape.audit import overlap_depth, self_intersections
from meshes.drape.distance import KERNEL, MeshIndex, Nearness, merge, number_edges
from meshes.drape.sheet import SheetGrid, ThickSheet, arc_length, least_thickness, thicken

SAMPLE_STEP = 2.0
"""mm between tested points of a surface: the step at which overlap is judged."""

LONGEST_PUSH = 3.0
"""mm in one round; a longer push is made in several, each with fresh distances."""

ATTACHED_DEPTH = 1.5
"""mm that an attached end may lie in what it attaches to."""

TOLERANCE = 0.02
"""mm of the gap that may be missing when a surface counts as clear."""

OVERSHOOT = 1.05
"""Factor on every push, so that few rounds are spent on the last hundredth."""

DEEPER_BIAS = 1.0
"""mm over the mid-surface up to which an obstacle still counts as lying under the sheet:
what was laid before is deeper in case of doubt."""

SEARCH = 6.0
"""mm round the new surface in which obstacles are looked at."""


@njit(**KERNEL)
def _surface_samples(faces, edge_of, edge_count, vertices, step, low, high, marks, origin, cell):
    """Corner numbers (n, 3), weights (n, 3) and places (n, 3) of test points on a mesh.

    Vertices once, points on edges once, points inside faces; no two
    neighbours farther apart than about ``step`` mm, edge midpoints and face
    centres always among them. Only those in the box from ``low`` to ``high``
    and in marked cells.
    """
    most = vertices.shape[0]
    cuts_of = np.empty((faces.shape[0], 4), np.int64)
    for f in range(faces.shape[0]):
        longest = 0.0
        for k in range(3):
            p, q = vertices[faces[f, k]], vertices[faces[f, (k + 1) % 3]]
            length = np.sqrt((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2)
            longest = max(longest, length)
            cuts_of[f, k] = 2 * max(int(np.ceil(length / (2 * step))), 1)
            most += cuts_of[f, k] - 1
        n = max(int(np.ceil(longest / step)), 1)
        cuts_of[f, 3] = n
        most += 1 + (n - 1) * (n - 2) // 2
    corner = np.empty((most, 3), np.int64)
    weight = np.empty((most, 3))
    points = np.empty((most, 3))
    seen_edge = np.zeros(edge_count, np.bool_)
    seen_vertex = np.zeros(vertices.shape[0], np.bool_)
    count = 0
    for f in range(faces.shape[0]):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        for kind in range(7):
            # 0-2 corners, 3-5 edges, 6 the inside.
            number = 1
            n = 1
            if kind < 3:
                v = faces[f, kind]
                if seen_vertex[v]:
                    continue
                seen_vertex[v] = True
            elif kind < 6:
                e = edge_of[f, kind - 3]
                if seen_edge[e]:
                    continue
                seen_edge[e] = True
                n = cuts_of[f, kind - 3]
                number = n - 1
            else:
                n = cuts_of[f, 3]
                number = 1 + (n - 1) * (n - 2) // 2
            i, j = 1, 0
            for m in range(number):
                if kind < 3:
                    p, q, r = faces[f, kind], faces[f, kind], faces[f, kind]
                    u, v, w = 1.0, 0.0, 0.0
                elif kind < 6:
                    p, q = faces[f, kind - 3], faces[f, (kind - 2) % 3]
                    r = q
                    v = (m + 1) / n
                    u, w = 1.0 - v, 0.0
                else:
                    p, q, r = a, b, c
                    if m == 0:
                        u, v, w = 1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0
                    else:
                        j += 1
                        if i + j >= n:
                            i, j = i + 1, 1
                        u, v, w = i / n, j / n, (n - i - j) / n
                inside = True
                for k in range(3):
                    x = u * vertices[p, k] + v * vertices[q, k] + w * vertices[r, k]
                    points[count, k] = x
                    if x < low[k] or x > high[k]:
                        inside = False
                        break
                if not inside:
                    continue
                at0 = int(np.floor((points[count, 0] - origin[0]) / cell))
                at1 = int(np.floor((points[count, 1] - origin[1]) / cell))
                at2 = int(np.floor((points[count, 2] - origin[2]) / cell))
                if at0 < 0 or at1 < 0 or at2 < 0:
                    continue
                if at0 >= marks.shape[0] or at1 >= marks.shape[1] or at2 >= marks.shape[2]:
                    continue
                if not marks[at0, at1, at2]:
                    continue
                corner[count, 0], corner[count, 1], corner[count, 2] = p, q, r
                weight[count, 0], weight[count, 1], weight[count, 2] = u, v, w
                count += 1
    return corner[:count].copy(), weight[:count].copy(), points[:count].copy()


_EVERYWHERE = (
    np.full(3, -np.inf), np.full(3, np.inf), np.ones((1, 1, 1), bool), np.zeros(3), np.inf,
)  # fmt: skip


def surface_points(index: MeshIndex, step: float, low: np.ndarray, high: np.ndarray) -> np.ndarray:
    """Points (n, 3) on a mesh in a box, at most about ``step`` mm apart: vertices, points on
    edges, points in faces."""
    return _surface_samples(
        index.faces, index.edge_of, len(index.edges), index.vertices, step, low, high,
        *_EVERYWHERE[2:],
    )[2]  # fmt: skip


@njit(**KERNEL)
def _weighted(weight, corner, values):
    """(n, 3) weighted sums of three rows of ``values`` each."""
    out = np.empty((corner.shape[0], 3))
    for i in range(corner.shape[0]):
        a, b, c = corner[i, 0], corner[i, 1], corner[i, 2]
        u, v, w = weight[i, 0], weight[i, 1], weight[i, 2]
        for k in range(3):
            out[i, k] = u * values[a, k] + v * values[b, k] + w * values[c, k]
    return out


def _obstacle_samples(
    merged: MeshIndex, owner: np.ndarray, low, high, near: Nearness | None = None
):
    """Points, unit normals and owners of the obstacles' own test points in a box."""
    faces = merged.faces
    marks = _EVERYWHERE[2:] if near is None else (near.marks, near.origin, near.cell)
    corner, weight, points = _surface_samples(
        faces, merged.edge_of, len(merged.edges), merged.vertices, SAMPLE_STEP, low, high, *marks
    )
    of_vertex = np.zeros(len(merged.vertices), np.int64)
    of_vertex[faces.reshape(-1)] = np.repeat(owner, 3)
    normal = _weighted(weight, corner, merged.vertex_normal)
    normal /= np.maximum(np.linalg.norm(normal, axis=1, keepdims=True), 1e-12)
    return points, normal, of_vertex[corner[:, 0]]


def _longest(count: int, index: np.ndarray, vector: np.ndarray) -> np.ndarray:
    """(count, 3): for each number in ``index`` the longest of its vectors."""
    result = np.zeros((count, 3))
    size = np.linalg.norm(vector, axis=1)
    order = np.argsort(size, kind="stable")
    result[index[order]] = vector[order]
    return result


# --- sheets -----------------------------------------------------------------------------------

STEEPEST_BULGE = 0.5
"""mm a mm along the sheet: how steeply a pushed place may stand out of its surroundings."""

FARTHEST_MOVE = 12.0
"""mm that resolving may move any point of a sheet; more means that it was laid wrongly."""

END_FREE = 3.0
"""mm next to an attached end in which what it is attached to asks nothing of the sheet."""


def _spread_rise(rise: np.ndarray, mid: np.ndarray, rounds: int = 12) -> np.ndarray:
    """Let neighbours follow a raised grid point, so that the sheet bulges, not spikes.

    A neighbour d mm away rises at least as far less d times ``STEEPEST_BULGE``,
    however close the fibres lie.
    """
    rise = rise.copy()
    fall = [STEEPEST_BULGE * np.linalg.norm(np.diff(mid, axis=axis), axis=2) for axis in (0, 1)]
    for _ in range(rounds):
        before = rise.copy()
        np.maximum(rise[1:], rise[:-1] - fall[0], out=rise[1:])
        np.maximum(rise[:-1], rise[1:] - fall[0], out=rise[:-1])
        np.maximum(rise[:, 1:], rise[:, :-1] - fall[1], out=rise[:, 1:])
        np.maximum(rise[:, :-1], rise[:, 1:] - fall[1], out=rise[:, :-1])
        if np.array_equal(before, rise):
            break
    return rise


def _around(values: np.ndarray) -> np.ndarray:
    """Mean of the four neighbours on the grid, borders repeated."""
    pad = ((1, 1), (1, 1)) + ((0, 0),) * (values.ndim - 2)
    padded = np.pad(values, pad, mode="edge")
    return 0.25 * (padded[:-2, 1:-1] + padded[2:, 1:-1] + padded[1:-1, :-2] + padded[1:-1, 2:])


def _cell_centres(mid: np.ndarray) -> np.ndarray:
    """(nv - 1, nu - 1, 3) centres of the grid's cells."""
    return 0.25 * (mid[:-1, :-1] + mid[1:, :-1] + mid[:-1, 1:] + mid[1:, 1:])


def _directors(sheet: SheetGrid, rounds: int = 6) -> np.ndarray:
    """Normals smoothed so far that points moved along them keep their order."""
    way = sheet.normals()
    for _ in range(rounds):
        way = way + _around(way)
        way /= np.maximum(np.linalg.norm(way, axis=2, keepdims=True), 1e-12)
    return way


def _mid_faces(sheet: SheetGrid) -> np.ndarray:
    """(m, 3) triangles of the mid-surface, facing the superficial side."""
    nv, nu = sheet.mid.shape[:2]
    corner = np.arange(nv * nu).reshape(nv, nu)
    quads = np.stack([corner[:-1, :-1], corner[:-1, 1:], corner[1:, 1:], corner[1:, :-1]], axis=-1)
    quads = quads.reshape(-1, 4) if sheet.cells is None else quads[sheet.cells]
    if sheet.sign < 0:
        quads = quads[:, ::-1]
    return np.concatenate([quads[:, [0, 1, 2]], quads[:, [0, 2, 3]]])


@njit(**KERNEL)
def _heights(point, close, face, node, edge_of, border_edge, mid, way, half, to_end):
    """How points stand to the triangles of a mid-surface that lie closest to them.

    Returns for each the weights of the triangle's corners, the height along the
    smoothed normal, the vector and the distance beside it, whether the closest
    place is on a free border, and half thickness and way to the end there.
    """
    n = point.shape[0]
    weight = np.empty((n, 3))
    height = np.empty(n)
    aside = np.empty((n, 3))
    lateral = np.empty(n)
    border = np.zeros(n, np.bool_)
    own_half = np.empty(n)
    own_end = np.empty(n)
    for i in range(n):
        p, q, r = node[i, 0], node[i, 1], node[i, 2]
        a = b = c = e = f = 0.0
        for k in range(3):
            e1, e2, d = mid[q, k] - mid[p, k], mid[r, k] - mid[p, k], close[i, k] - mid[p, k]
            a += e1 * e1
            b += e1 * e2
            c += e2 * e2
            e += d * e1
            f += d * e2
        den = max(a * c - b * b, 1e-18)
        v, w = (c * e - b * f) / den, (a * f - b * e) / den
        weight[i, 0] = min(max(1.0 - v - w, 0.0), 1.0)
        weight[i, 1] = min(max(v, 0.0), 1.0)
        weight[i, 2] = min(max(w, 0.0), 1.0)
        high = 0.0
        for k in range(3):
            aside[i, k] = (
                weight[i, 0] * way[p, k] + weight[i, 1] * way[q, k] + weight[i, 2] * way[r, k]
            )
            high += (point[i, k] - close[i, k]) * aside[i, k]
        height[i] = high
        beside = 0.0
        for k in range(3):
            aside[i, k] = point[i, k] - close[i, k] - high * aside[i, k]
            beside += aside[i, k] * aside[i, k]
        lateral[i] = np.sqrt(beside)
        for k in range(3):
            if weight[i, k] < 1e-6 and border_edge[edge_of[face[i], (k + 1) % 3]]:
                border[i] = True
        own_half[i] = weight[i, 0] * half[p] + weight[i, 1] * half[q] + weight[i, 2] * half[r]
        own_end[i] = weight[i, 0] * to_end[p] + weight[i, 1] * to_end[q] + weight[i, 2] * to_end[r]
    return weight, height, aside, lateral, border, own_half, own_end


@njit(**KERNEL)
def _most_of(values, node):
    """Largest of three values each, (n,)."""
    out = np.empty(node.shape[0])
    for i in range(node.shape[0]):
        out[i] = max(values[node[i, 0]], values[node[i, 1]], values[node[i, 2]])
    return out


def _vote(count, shape, owner, touched, height) -> np.ndarray:
    """(obstacles, nodes) float: +1 where an obstacle lies under the sheet, -1 where over it.

    Judged by the mean height of all its points near by, so that what pierces
    the sheet is passed on the side on which most of it lies.
    """
    total = np.zeros((count, shape[0] * shape[1]))
    np.add.at(total, (np.repeat(owner, 3), touched.reshape(-1)), np.repeat(height, 3))
    total = total.reshape(count, *shape)
    around = uniform_filter(total, size=(1, 9, 9), mode="constant")
    whole = np.sign(total.sum(axis=(1, 2)))[:, None, None]
    known = np.abs(around) > 1e-9
    return np.where(known, -np.sign(around), -whole).reshape(count, -1)


def resolve_sheet(
    sheet: SheetGrid,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.2,
    *,
    attached: Sequence[MeshIndex] | None = None,
    reach: float = 8.0,
    rounds: int = 6,
    fixed: np.ndarray | None = None,
    outermost: bool = False,
) -> SheetGrid:
    """Clear a sheet of exact meshes; its two faces stay apart.

    Every point of an obstacle near the sheet (vertices, edge midpoints, face
    centres, at most 2 mm apart) has a height over the mid-surface. Points of
    obstacles under the sheet bound it from below, of those over it from above;
    between the bounds it moves as little and as smoothly as it can. Where the
    bounds leave less room than its thickness it thins, down to 0.6 mm (0.3 mm
    at its ends). Wrinkles that would make it cross itself are smoothed away.

    Parameters
    ----------
    sheet : SheetGrid
    obstacles : sequence of MeshIndex
        Closed meshes.
    gap : float
        Room to be left, mm.
    attached : sequence of MeshIndex or None
        Those of the obstacles to which the ends are attached: within ``reach``
        of an end the sheet may sink into them, up to 1.5 mm at the very end.
        None means all.
    reach : float
        mm along the fibres.
    rounds : int
        Most rounds; stops when clear.
    fixed : (nv, nu) bool or None
        Grid points that stay. The end rows (u = 0, 1) always stay.
    outermost : bool
        True when all obstacles lie under the sheet; else most of each obstacle decides.

    Returns
    -------
    SheetGrid
        With its thickness raised to the least that can be drawn.
    """
    least = least_thickness(sheet)
    thickness = np.maximum(sheet.thickness, least)
    now = without_wrinkles(replace(sheet, thickness=thickness))
    near = _Ground(now, obstacles, gap, attached, reach, outermost)
    if near.empty:
        return now
    held = np.zeros(sheet.mid.shape[:2], bool) if fixed is None else fixed.astype(bool)
    for attempt in range(3):
        for _ in range(rounds if attempt == 0 else 2):
            now, moved = near.clear(now, least, held)
            if moved < TOLERANCE:
                break
        smooth = without_wrinkles(now)
        if smooth is now:
            break
        now = smooth
    return now


class _Ground:
    """The obstacles' test points near a sheet, and what they ask of it.

    Parameters are those of :func:`resolve_sheet`.
    """

    def __init__(self, sheet, obstacles, gap, attached, reach, outermost=False):
        self.start = sheet.mid
        self.gap = gap
        self.reach = max(reach, 1e-6)
        self.count = len(obstacles)
        self.soft = np.array(
            [attached is None or any(o is a for a in attached) for o in obstacles], bool
        )
        flat = sheet.mid.reshape(-1, 3)
        margin = 0.5 * float(sheet.thickness.max()) + gap + SEARCH
        bounds = np.array([flat.min(axis=0), flat.max(axis=0)])
        centres = _cell_centres(sheet.mid).reshape(-1, 3)
        cell = max(np.linalg.norm(np.diff(sheet.mid, axis=k), axis=2).max() for k in (0, 1))
        nodes = np.concatenate([flat, centres])
        found = merge(obstacles, bounds, margin + 0.5 * cell, nodes)
        self.empty = found is None
        self.sides = np.ones((self.count, sheet.mid[..., 0].size)) if outermost else None
        if found is not None:
            self.merged, self.owner_of_face = found
            self.points, _, self.owner = _obstacle_samples(
                *found, bounds[0] - margin, bounds[1] + margin,
                Nearness.of(nodes, margin + 0.5 * cell),
            )  # fmt: skip
            self.empty = len(self.points) == 0
            # What a point lacks to come near the sheet; below zero it is asked again.
            self.slack = np.full(len(self.points), -1.0)
            self.nodes = np.zeros((len(self.points), 3), np.int64)

    def clear(self, sheet: SheetGrid, least: np.ndarray, held: np.ndarray):
        """One round: the moved sheet and the farthest that it moved, mm."""
        nv, nu = sheet.mid.shape[:2]
        mid, way = sheet.mid.reshape(-1, 3), _directors(sheet).reshape(-1, 3)
        half = 0.5 * sheet.thickness.reshape(-1)
        index = MeshIndex(mid, _mid_faces(sheet))
        search = float(half.max()) + self.gap + SEARCH
        ask = np.flatnonzero(self.slack < 0)
        distance, close, _, face = index.query(self.points[ask], reach=search)
        on = face >= 0
        self.slack[ask[~on]] = SEARCH
        ask, distance, close, face = ask[on], distance[on], close[on], face[on]
        point, owner = self.points[ask], self.owner[ask]
        node = index.faces[face]
        self.nodes[ask] = node
        self.slack[ask] = np.abs(distance) - _most_of(half, node) - self.gap - 0.5
        s = arc_length(sheet.mid)
        to_end = np.minimum(s, s[:, -1:] - s).reshape(-1)
        weight, height, aside, lateral, border, own_half, own_end = _heights(
            point, close, face, node, index.edge_of, index.border_edge, mid, way, half, to_end
        )
        if self.sides is None:
            self.sides = _vote(
                self.count, (nv, nu), owner[~border], node[~border], height[~border] - DEEPER_BIAS
            )
        lower, upper = np.full(nv * nu, -np.inf), np.full(nv * nu, np.inf)
        soft = self.soft[owner]
        sink = (self.gap + ATTACHED_DEPTH) * np.clip(1 - own_end / self.reach, 0, 1) * soft
        room = self.gap + own_half - sink
        under = self.sides[owner, node[:, 0]] >= 0
        # What stands out beyond the far face is not in the sheet; what is joined to it by a
        # wall through the sheet comes within its faces and is passed step by step.
        inside = np.where(under, height, -height) < own_half + self.gap
        inside &= (~border | (lateral < 0.5 * np.abs(height))) & (room > 0)
        inside &= ~soft | (own_end > END_FREE)
        # Beside a row that stays, the next one must rise more; close to it nothing helps.
        stay = held.copy()
        stay[:, [0, -1]] = True
        free = (weight * ~stay.reshape(-1)[node]).sum(axis=1)
        rows = np.flatnonzero(inside & (free > 0.5))
        spread, share = node[rows], free[rows, None]
        heights, room = height[rows, None] / share, room[rows, None] / share
        counts = weight[rows] > 0.15
        low, high = counts & under[rows, None], counts & ~under[rows, None]
        np.maximum.at(lower, spread[low], (heights + room + np.zeros((1, 3)))[low])
        np.minimum.at(upper, spread[high], (heights - room + np.zeros((1, 3)))[high])
        self._immersed(sheet, way, half, to_end, lower, upper)
        lower, upper = lower.reshape(nv, nu), upper.reshape(nv, nu)

        # Too little room: thinner first, then half-way.
        short = np.maximum(lower - upper, 0)
        short[~np.isfinite(short)] = 0
        thickness = np.maximum(sheet.thickness - short, least)
        given = 0.5 * (sheet.thickness - thickness)
        lower, upper = lower - given, upper + given
        crossed = lower > upper
        middle = 0.5 * (np.where(crossed, lower, 0) + np.where(crossed, upper, 0))
        lower, upper = np.where(crossed, middle, lower), np.where(crossed, middle, upper)
        lower[stay], upper[stay] = 0, 0

        rise = np.clip(0, lower, upper)
        rise = _spread_rise(np.maximum(rise, 0), sheet.mid) - _spread_rise(
            np.maximum(-rise, 0), sheet.mid
        )
        for _ in range(8):
            rise = np.clip(0.5 * rise + 0.5 * _around(rise), lower, upper)
        rise = np.clip(rise, -LONGEST_PUSH, LONGEST_PUSH)
        rise[stay] = 0
        moved = mid.reshape(nv, nu, 3) + rise[..., None] * way.reshape(nv, nu, 3)

        # A wall beside a free border pushes it sideways.
        beside = np.flatnonzero(border & (lateral >= 0.5 * np.abs(height)))
        if len(beside):
            radius = (half[node[beside]] * weight[beside]).sum(axis=1) + self.gap
            free = 1 - to_end[node[beside]].min(axis=1) / self.reach < 0
            lack = np.sqrt(np.maximum(radius**2 - height[beside] ** 2, 0)) - lateral[beside]
            pick = free & (lack > TOLERANCE)
            rows = beside[pick]
            push = -aside[rows] / np.maximum(lateral[rows, None], 1e-9) * lack[pick, None]
            shove = _longest(nv * nu, node[rows].reshape(-1), np.repeat(push, 3, axis=0))
            shove = shove.reshape(nv, nu, 3)
            shove[stay] = 0
            size = np.linalg.norm(shove, axis=2, keepdims=True)
            moved = moved + shove * np.minimum(1.0, 1.0 / np.maximum(size, 1e-12))
        away = moved - self.start
        far = np.linalg.norm(away, axis=2, keepdims=True)
        most = np.minimum(FARTHEST_MOVE, END_FREE / 2 + STEEPEST_BULGE * to_end.reshape(nv, nu, 1))
        moved = self.start + away * np.minimum(1.0, most / np.maximum(far, 1e-12))
        step = np.linalg.norm(moved - sheet.mid, axis=2)
        around = maximum_filter(step, size=5).reshape(-1)
        self.slack -= _most_of(around, self.nodes)
        return replace(sheet, mid=moved, thickness=thickness), float(step.max())

    def _immersed(self, sheet, way, half, to_end, lower, upper) -> None:
        """Bounds (nv * nu,) at points of the mid-surface that lie in or close to an obstacle.

        A thin sheet deep in an obstacle may have none of its points between its faces.
        """
        nv, nu = sheet.mid.shape[:2]
        corner = np.arange(nv * nu).reshape(nv, nu)
        quads = np.stack(
            [corner[:-1, :-1], corner[:-1, 1:], corner[1:, 1:], corner[1:, :-1]], axis=-1
        ).reshape(-1, 4)
        if sheet.cells is not None:
            quads = quads[sheet.cells.reshape(-1)]
        owners = np.flatnonzero(sheet.used().reshape(-1))
        nodes = np.concatenate([np.repeat(owners[:, None], 4, axis=1), quads])
        points = sheet.mid.reshape(-1, 3)[nodes].mean(axis=1)
        d, _, normal, face = self.merged.query(points, reach=SEARCH)
        on = face >= 0
        nodes, d, normal = nodes[on], d[on], normal[on]
        owner = self.owner_of_face[face[on]]
        soft = self.soft[owner]
        end = to_end[nodes].mean(axis=1)
        sink = (self.gap + ATTACHED_DEPTH) * np.clip(1 - end / self.reach, 0, 1) * soft
        lack = half[nodes].mean(axis=1) + self.gap - sink - d
        facing = np.einsum("nd,nd->n", normal, way[nodes].mean(axis=1))
        side = self.sides[owner, nodes[:, 0]]
        # Through the nearest face where that is the right one, else step by step.
        right = facing * side
        amount = np.where(right > 0.4, lack / np.maximum(right, 0.4), np.maximum(lack, 0))
        pick = (lack > 0) & ((right > 0.4) | (d < 0)) & ~(soft & (end < END_FREE))
        nodes, amount, below = nodes[pick], amount[pick], side[pick] >= 0
        np.maximum.at(lower, nodes[below], amount[below, None] + np.zeros((1, 4)))
        np.minimum.at(upper, nodes[~below], np.zeros((1, 4)) - amount[~below, None])


def without_wrinkles(sheet: SheetGrid, rounds: int = 12) -> SheetGrid:
    """Smooth and thin a sheet where its solid would cross itself; itself when nowhere.

    Parameters
    ----------
    sheet : SheetGrid
    rounds : int
        Most rounds of smoothing.
    """
    least = least_thickness(sheet)
    nv, nu = sheet.mid.shape[:2]
    mid, thickness = sheet.mid, sheet.thickness
    # Fibres on either side of a gap between slips are no neighbours.
    joined = np.ones((nv - 1, nu), bool)
    if sheet.cells is not None:
        joined = np.pad(sheet.cells, ((0, 0), (0, 1))) | np.pad(sheet.cells, ((0, 0), (1, 0)))
    for number in range(rounds):
        now = sheet if number == 0 else replace(sheet, mid=mid, thickness=thickness)
        solid = thicken(now, fibres=1)
        pairs = self_intersections(solid.mesh)
        if len(pairs) == 0:
            return now
        bad = np.zeros(nv * nu, bool)
        bad[solid.node[solid.mesh.faces[pairs].reshape(-1)]] = True
        bad = maximum_filter(bad.reshape(nv, nu), size=3 + 2 * (number // 3))
        thickness = np.where(bad, np.maximum(0.75 * thickness, least), thickness)
        bad[:, [0, -1]] = False
        for _ in range(4):
            along = mid.copy()
            along[:, 1:-1] = 0.5 * (mid[:, :-2] + mid[:, 2:])
            across = mid.copy()
            across[1:-1] = np.where(
                (joined[:-1] & joined[1:])[..., None], 0.5 * (mid[:-2] + mid[2:]), mid[1:-1]
            )
            mean = 0.6 * along + 0.4 * across
            mid = np.where(bad[..., None], 0.5 * (mid + mean), mid)
    return replace(sheet, mid=mid, thickness=thickness)


# --- any mesh ---------------------------------------------------------------------------------


def _neighbour_mean(faces: np.ndarray, count: int) -> csr_matrix:
    a = np.concatenate([faces[:, [0, 1, 2]].reshape(-1), faces[:, [1, 2, 0]].reshape(-1)])
    b = np.concatenate([faces[:, [1, 2, 0]].reshape(-1), faces[:, [0, 1, 2]].reshape(-1)])
    near = coo_matrix((np.ones(len(a)), (a, b)), shape=(count, count)).tocsr()
    near.data[:] = 1.0
    return diags(1.0 / np.maximum(np.asarray(near.sum(axis=1)).reshape(-1), 1)) @ near


def resolve(
    mesh: trimesh.Trimesh,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.2,
    fixed: np.ndarray | None = None,
    rounds: int = 12,
    *,
    body: float = 0.0,
) -> trimesh.Trimesh:
    """Clear any closed mesh of exact meshes by moving its vertices.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        Closed; connectivity is kept, so that per-vertex arrays stay valid.
    obstacles : sequence of MeshIndex
        Closed meshes that do not overlap one another.
    gap : float
        Room to be left, mm.
    fixed : (n_vertices,) bool or None
        Vertices that stay.
    rounds : int
        Most rounds; stops when clear.
    body : float
        Width of the mesh, mm: vertices within this distance of a pushed one
        move with it, so that a tube gives way instead of being flattened. 0
        moves only the pushed side.

    Returns
    -------
    trimesh.Trimesh
    """
    vertices = np.array(mesh.vertices, dtype=np.float64)
    faces = np.ascontiguousarray(mesh.faces, dtype=np.int64)
    bounds = np.array([vertices.min(axis=0), vertices.max(axis=0)])
    found = merge(obstacles, bounds, SEARCH)
    if found is None:
        return mesh
    merged, owner = found
    o_points, o_normals, _ = _obstacle_samples(merged, owner, bounds[0] - 1.0, bounds[1] + 1.0)
    mean = _neighbour_mean(faces, len(vertices))
    edges, edge_of = number_edges(faces, len(vertices))
    held = np.zeros(len(vertices), bool) if fixed is None else np.asarray(fixed, bool)
    for _ in range(rounds):
        corner, _, points = _surface_samples(
            faces, edge_of, len(edges), vertices, SAMPLE_STEP, *_EVERYWHERE
        )
        d, _, normal, face = merged.query(points, reach=SEARCH)
        bad = (face >= 0) & (d < gap - TOLERANCE)
        index, vector = [corner[bad]], [(gap - d[bad])[:, None] * normal[bad]]
        if len(o_points):
            mine = MeshIndex(vertices, faces)
            d, close, _, face = mine.query(o_points, reach=SEARCH)
            near = face >= 0
            o_points, o_normals = o_points[near], o_normals[near]
            d, face = d[near], face[near]
            bad = d < gap - TOLERANCE
            index.append(faces[face[bad]])
            vector.append((gap - d[bad])[:, None] * o_normals[bad])
        index, vector = np.concatenate(index), np.concatenate(vector)
        if len(index) == 0:
            break
        vector *= OVERSHOOT
        size = np.linalg.norm(vector, axis=1, keepdims=True)
        vector *= np.minimum(1.0, LONGEST_PUSH / np.maximum(size, 1e-12))
        move = _longest(len(vertices), index.reshape(-1), np.repeat(vector, 3, axis=0))
        if body > 0:
            move = _carry_along(vertices, move, body)
        for _ in range(2):
            around = mean @ move
            longer = np.linalg.norm(around, axis=1) > np.linalg.norm(move, axis=1)
            move = np.where(longer[:, None], around, move)
        move[held] = 0
        vertices = vertices + move
    return trimesh.Trimesh(vertices, faces, process=False)


def give_way(
    mesh: trimesh.Trimesh,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.1,
    *,
    rounds: int = 4,
    most: float = 3.0,
) -> trimesh.Trimesh:
    """Draw a belly back where others stick into it, but nowhere so that it would cross itself.

    For a carved mesh, whose vertices lie clear but whose triangles cut the
    corners of what they lie on.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        Closed; connectivity is kept.
    obstacles : sequence of MeshIndex
    gap : float
        Room to be left, mm.
    rounds : int
        Most rounds; stops when clear.
    most : float
        Depth to which something may stick in and still be given way to, mm.

    Returns
    -------
    trimesh.Trimesh
        The mesh itself when nothing sticks into it.
    """
    start, faces = np.asarray(mesh.vertices, dtype=np.float64), np.asarray(mesh.faces)
    vertices = start
    low, high = start.min(axis=0), start.max(axis=0)
    points = []
    for obstacle in obstacles:
        box = obstacle.bounds
        if np.any(box[0] > high) or np.any(box[1] < low):
            continue
        points.append(surface_points(obstacle, SAMPLE_STEP, low, high))
    if not points:
        return mesh
    points = np.concatenate(points)
    for _ in range(rounds):
        own = MeshIndex(vertices, faces)
        distance, _, normal, face = own.query(points, reach=most)
        near = face >= 0
        points, distance, normal, face = points[near], distance[near], normal[near], face[near]
        bad = distance < -TOLERANCE
        if not bad.any():
            break
        push = (distance[bad] - gap)[:, None] * normal[bad]
        move = _longest(len(vertices), faces[face[bad]].reshape(-1), np.repeat(push, 3, axis=0))
        vertices = vertices + move
    return mesh if vertices is start else as_far_as_free(start, vertices, faces)


def as_far_as_free(start: np.ndarray, goal: np.ndarray, faces: np.ndarray) -> trimesh.Trimesh:
    """Move vertices from start towards goal, where they would cross less far or not at all.

    Parameters
    ----------
    start, goal : (n, 3) float
        mm.
    faces : (m, 3) int
    """
    share = np.ones(len(start))
    for turn in range(7):
        now = trimesh.Trimesh(start + share[:, None] * (goal - start), faces, process=False)
        pairs = self_intersections(now)
        if len(pairs) == 0:
            break
        bad = np.unique(faces[np.unique(pairs)])
        share[bad] *= 0.45 if turn < 4 else 0.0
        around = np.unique(faces[np.isin(faces, bad).any(axis=1)])
        share[around] *= 0.8 if turn < 5 else 0.0
    return now


def _carry_along(vertices: np.ndarray, move: np.ndarray, body: float) -> np.ndarray:
    """Give each vertex the longest move found within ``body`` mm, fading with distance."""
    from scipy.spatial import cKDTree

    pushed = np.flatnonzero(np.linalg.norm(move, axis=1) > 1e-6)
    if len(pushed) == 0:
        return move
    tree = cKDTree(vertices[pushed])
    count = min(8, len(pushed))
    distance, number = tree.query(vertices, k=count, distance_upper_bound=1.5 * body)
    distance, number = distance.reshape(len(vertices), -1), number.reshape(len(vertices), -1)
    ok = np.isfinite(distance)
    fade = np.where(ok, np.clip(1.5 - distance / body, 0, 1), 0.0)
    vectors = move[pushed[np.where(ok, number, 0)]] * fade[..., None]
    best = np.linalg.norm(vectors, axis=2).argmax(axis=1)
    carried = vectors[np.arange(len(vertices)), best]
    longer = np.linalg.norm(carried, axis=1) > np.linalg.norm(move, axis=1)
    return np.where(longer[:, None], carried, move)


SWELL_MM = 0.2
"""How far a tangled place is swollen in a round: smoothing alone draws it to a thread."""

SHRINK, REGROW = 0.5, 0.4
"""Shares of the way to and from the neighbours' mean in a round: creases go, bulk stays."""


def untangle(mesh: trimesh.Trimesh, rounds: int = 16) -> trimesh.Trimesh:
    """Smooth and swell a mesh where it crosses itself until it no longer does.

    Parameters
    ----------
    mesh : trimesh.Trimesh
        Closed; connectivity is kept, so that per-vertex arrays stay valid.
    rounds : int
        Most rounds; each evens out the crossing triangles' corners and, later,
        wider surroundings, and moves them a little outward.

    Returns
    -------
    trimesh.Trimesh
        The mesh itself when nothing crosses; the best of what was tried when something
        always does.
    """
    vertices, faces = np.asarray(mesh.vertices, dtype=np.float64), np.asarray(mesh.faces)
    best, least = vertices, np.inf
    for swell in (True, False):
        found, crossing = _smoothed(vertices, faces, rounds, swell)
        if crossing < least:
            best, least = found, crossing
        if least == 0:
            break
    return mesh if best is vertices else trimesh.Trimesh(best, faces, process=False)


def _smoothed(
    vertices: np.ndarray, faces: np.ndarray, rounds: int, swell: bool
) -> tuple[np.ndarray, int]:
    """The best that rounds of smoothing make of a tangled mesh, and what still crosses in it.

    ``swell`` keeps its bulk; else it is drawn together, which frees what is only creased.
    """
    mean = None
    best, least, stuck = vertices, np.inf, 0
    for number in range(rounds + 1):
        pairs = self_intersections(MeshIndex(vertices, faces))
        stuck = 0 if len(pairs) < least else stuck + 1
        if len(pairs) < least:
            best, least = vertices, len(pairs)
        if least == 0 or number == rounds:
            break
        if mean is None:
            mean = _neighbour_mean(faces, len(vertices))
        chosen = np.zeros(len(vertices))
        chosen[faces[pairs].reshape(-1)] = 1.0
        for _ in range(1 + number // (4 if swell else 2)):
            chosen = np.minimum(chosen + (mean @ chosen > 0), 1.0)
        if not swell:
            for _ in range(3):
                vertices = np.where(
                    chosen[:, None] > 0, 0.5 * (vertices + mean @ vertices), vertices
                )
            continue
        share = (0.5 * chosen + 0.5 * (mean @ chosen))[:, None]
        # Where that leads nowhere a crease is pulled straight, at the cost of bulk.
        plain = stuck >= 2 and stuck % 2 == 0
        for step in (SHRINK, SHRINK if plain else -REGROW):
            vertices = vertices + step * share * (mean @ vertices - vertices)
        if plain:
            continue
        # The outer side, of the surroundings: that of a crease is anywhere.
        way = MeshIndex(vertices, faces).vertex_normal
        for _ in range(3):
            way = way + mean @ way
        way /= np.maximum(np.linalg.norm(way, axis=1, keepdims=True), 1e-9)
        vertices = vertices + SWELL_MM * share * way
    return best, int(least)


def finish_sheet(
    sheet: SheetGrid,
    obstacles: Sequence[MeshIndex],
    gap: float = 0.2,
    *,
    attached: Sequence[MeshIndex] | None = None,
    fixed: np.ndarray | None = None,
    rounds: int = 10,
    tendon: tuple[float, float] | Callable[[np.ndarray, np.ndarray], np.ndarray] | None = None,
    fibres: int = 16,
    rim_points: int = 3,
) -> tuple[SheetGrid, ThickSheet]:
    """Resolve, thicken and untangle a sheet in one go.

    Parameters
    ----------
    sheet, obstacles, gap, attached, fixed, rounds
        See :func:`resolve_sheet`.
    tendon, fibres, rim_points
        See :func:`meshes.drape.sheet.thicken`.

    Returns
    -------
    SheetGrid
        The resolved grid, for ``Field.add_sheet(grid.outer(), ...)``.
    ThickSheet
        The closed solid.
    """
    grid = resolve_sheet(sheet, obstacles, gap, attached=attached, fixed=fixed, rounds=rounds)
    solid = thicken(grid, tendon=tendon, fibres=fibres, rim_points=rim_points)
    return grid, replace(solid, mesh=untangle(solid.mesh))


def settle(
    meshes: Mapping[str, trimesh.Trimesh],
    obstacles: Sequence[MeshIndex] = (),
    gap: float = 0.1,
    *,
    rounds: int = 6,
    threads: int = 2,
) -> dict[str, trimesh.Trimesh]:
    """Push a family of touching meshes off obstacles and off one another.

    For shares of one space (``bundle``) that contour and decimation left a
    fraction of a millimetre in each other: each mesh is cleared of the
    obstacles, then, in order, of the ones before it.

    Parameters
    ----------
    meshes : mapping of str to trimesh.Trimesh
        Closed.
    obstacles : sequence of MeshIndex
    gap : float
        mm to be left.
    rounds : int
        Most rounds for each.
    threads : int

    Returns
    -------
    dict of str to trimesh.Trimesh
        Same order and connectivity, free of self-intersection where smoothing could do it.
    """

    def off_obstacles(mesh: trimesh.Trimesh) -> trimesh.Trimesh:
        return untangle(resolve(mesh, obstacles, gap, rounds=rounds))

    names = list(meshes)
    with ThreadPoolExecutor(threads) as pool:
        settled = dict(zip(names, pool.map(off_obstacles, meshes.values())))
    done: list[MeshIndex] = []
    for name in names:
        index = MeshIndex.of(settled[name])
        if any(overlap_depth(index, other)[0] > 0 for other in done):
            settled[name] = untangle(
                resolve(settled[name], [*done, *obstacles], gap, rounds=rounds)
            )
            index = MeshIndex.of(settled[name])
        done.append(index)
    return settled
