"""An even open surface on a level of a field, cut exactly along given lines."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from scipy.sparse import coo_matrix, csr_matrix, diags

from meshes.drape.field import Field

Line = Callable[[np.ndarray], np.ndarray]
"""A function of points (n, 3) whose zero is the line of cut; what is >= 0 is kept."""

MEDIAN_X_MM = 0.1
NO_LINE = 1e4
"""Value of a line where it has ended: a jump to it is no crossing."""


def surface_net(field: Field, level: float, step: float) -> tuple[np.ndarray, np.ndarray]:
    """Even triangles on a level of a symmetrical field, left half, ending in the median plane.

    Parameters
    ----------
    field : Field
        Symmetrical about x = 0, with nodes beyond it.
    level : float
    step : float
        Edge length, mm.

    Returns
    -------
    vertices : (n, 3) float
    faces : (m, 3) int
        Outward (towards larger values).
    """
    lower = np.array([MEDIAN_X_MM - 0.5 * step, field.origin[1], field.origin[2]])
    count = np.floor((field.upper - lower) / step).astype(int) + 1
    axes = [lower[i] + step * np.arange(count[i]) for i in range(3)]
    nodes = np.stack(np.meshgrid(*axes, indexing="ij"), -1)
    values = field.sample(nodes.reshape(-1, 3)).reshape(count) - level
    total = np.zeros((*(count - 1), 3))
    hits = np.zeros(count - 1)
    crossings = []
    for axis in range(3):
        low = np.take(values, np.arange(count[axis] - 1), axis)
        high = np.take(values, np.arange(1, count[axis]), axis)
        at = np.argwhere((low < 0) != (high < 0))
        a, b = low[tuple(at.T)], high[tuple(at.T)]
        place = at.astype(float)
        place[:, axis] += a / (a - b)
        crossings.append((axis, at, a < 0))
        i, j = [k for k in range(3) if k != axis]
        for di in (0, 1):
            for dj in (0, 1):
                cell = at.copy()
                cell[:, i] -= di
                cell[:, j] -= dj
                ok = np.all((cell >= 0) & (cell < count - 1), axis=1)
                np.add.at(total, tuple(cell[ok].T), place[ok])
                np.add.at(hits, tuple(cell[ok].T), 1.0)
    used = hits > 0
    number = np.full(used.shape, -1)
    number[used] = np.arange(used.sum())
    vertices = lower + step * total[used] / hits[used][:, None]
    vertices[np.argwhere(used)[:, 0] == 0, 0] = MEDIAN_X_MM
    faces = []
    for axis, at, rising in crossings:
        i, j = (axis + 1) % 3, (axis + 2) % 3
        corners = []
        for di, dj in ((1, 1), (0, 1), (0, 0), (1, 0)):
            cell = at.copy()
            cell[:, i] -= di
            cell[:, j] -= dj
            bad = np.any((cell < 0) | (cell >= count - 1), axis=1)
            cell[bad] = 0
            corners.append(np.where(bad, -1, number[tuple(cell.T)]))
        quad = np.stack(corners, 1)
        ok = np.all(quad >= 0, axis=1)
        quad = np.where(rising[:, None], quad, quad[:, ::-1])[ok]
        faces.append(quad)
    quads = np.concatenate(faces)
    p = vertices[quads]
    first = np.linalg.norm(p[:, 0] - p[:, 2], axis=1) <= np.linalg.norm(p[:, 1] - p[:, 3], axis=1)
    q = np.where(first[:, None], quads, np.roll(quads, -1, axis=1))
    return vertices, np.concatenate([q[:, [0, 1, 2]], q[:, [0, 2, 3]]])


def neighbour_mean(faces: np.ndarray, count: int) -> csr_matrix:
    """(count, count) matrix that takes the mean of each vertex's neighbours."""
    a = np.concatenate([faces.reshape(-1), np.roll(faces, -1, axis=1).reshape(-1)])
    b = np.concatenate([np.roll(faces, -1, axis=1).reshape(-1), faces.reshape(-1)])
    near = coo_matrix((np.ones(len(a)), (a, b)), (count, count)).tocsr()
    near.data[:] = 1.0
    return diags(1.0 / np.maximum(np.asarray(near.sum(1)).ravel(), 1)) @ near


def gradient_of(line: Line, points: np.ndarray) -> np.ndarray:
    """(n, 3) numerical gradient of a function of points."""
    out = np.empty_like(points)
    for i in range(3):
        step = np.zeros(3)
        step[i] = 0.5
        out[:, i] = line(points + step) - line(points - step)
    return out


def onto_level(points: np.ndarray, field: Field, level: float, rounds: int = 2) -> np.ndarray:
    """Bring points onto a level of a field by Newton steps."""
    for _ in range(rounds):
        g = field.gradient(points)
        square = np.maximum(np.einsum("ij,ij->i", g, g), 0.04)
        points = points - ((field.sample(points) - level) / square)[:, None] * g
    return points


def snap_to_line(
    vertices: np.ndarray, faces: np.ndarray, line: Line, held: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """Move vertices along edges so that edges run on the zero of a line.

    Parameters
    ----------
    vertices, faces : arrays
    line : callable
    held : (n, k) bool
        Lines on which each vertex lies already; it may only move along an
        edge that lies on the same ones.

    Returns
    -------
    vertices : (n, 3) float
    on : (n,) bool
        Vertices now on the line.
    """
    value = line(vertices)
    edges = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    edges = edges[(value[edges[:, 0]] < 0) != (value[edges[:, 1]] < 0)]
    edges = edges[np.abs(value[edges[:, 0]] - value[edges[:, 1]]) < 0.5 * NO_LINE]
    # Few are left: those are put in order.
    edges = np.unique(np.sort(edges, axis=1), axis=0)
    t = value[edges[:, 0]] / (value[edges[:, 0]] - value[edges[:, 1]])
    both = np.concatenate([np.column_stack([edges, t]), np.column_stack([edges[:, ::-1], 1 - t])])
    start, end = both[:, 0].astype(int), both[:, 1].astype(int)
    free = np.all(held[end] >= held[start], axis=1)
    reach = np.where(free, both[:, 2], np.inf)
    # The nearer end of every edge moves; where it may not, the farther one.
    count = len(edges)
    takes = np.concatenate([reach[:count] <= reach[count:], reach[:count] > reach[count:]])
    takes &= np.isfinite(reach)
    order = np.argsort(reach, kind="stable")
    order = order[takes[order]]
    moved = vertices.copy()
    on = np.zeros(len(vertices), bool)
    for k in order:
        s = start[k]
        if not on[s]:
            moved[s] = vertices[s] + both[k, 2] * (vertices[end[k]] - vertices[s])
            on[s] = True
    return moved, on


def compact(faces: np.ndarray, count: int) -> tuple[np.ndarray, np.ndarray]:
    """Vertices that faces use, and the faces renumbered."""
    used = np.zeros(count, bool)
    used[faces] = True
    number = np.cumsum(used) - 1
    return np.flatnonzero(used), number[faces]


def border_edges(faces: np.ndarray) -> np.ndarray:
    """(k, 2) edges of one face only, in that face's direction."""
    edges = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    n = int(faces.max()) + 1
    key = edges[:, 0] * n + edges[:, 1]
    back = edges[:, 1] * n + edges[:, 0]
    return edges[~np.isin(key, back)]


def is_plain(faces: np.ndarray) -> bool:
    """True when no edge has more than two faces and no vertex two separate borders."""
    a, b = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]).T
    key = np.minimum(a, b) * (int(faces.max()) + 1) + np.maximum(a, b)
    _, count = np.unique(key, return_counts=True)
    starts = border_edges(faces)[:, 0]
    return bool(count.max() <= 2 and len(np.unique(starts)) == len(starts))


def cut_surface(
    vertices: np.ndarray,
    faces: np.ndarray,
    field: Field,
    level: float,
    trims: Sequence[Line],
    loops: Sequence[Line],
    rounds: int = 6,
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Trim a surface along lines, lay edge loops on others, and even it out again.

    Returns
    -------
    vertices, faces : arrays
    held : (n, 1 + len(trims) + len(loops)) bool
        Which line each vertex lies on: the median plane, the trims, the loops.
    """
    lines = [lambda p: p[:, 0] - MEDIAN_X_MM, *trims, *loops]
    held = np.zeros((len(vertices), len(lines)), bool)
    held[:, 0] = vertices[:, 0] <= MEDIAN_X_MM + 1e-9
    for number, line in enumerate(lines[1:], 1):
        vertices, on = snap_to_line(vertices, faces, line, held)
        held[on, number] = True
        if number <= len(trims):
            value = np.where(on, 0.0, line(vertices))
            keep = value[faces].sum(1) > 0
            faces = faces[keep]
            chosen, faces = compact(faces, len(vertices))
            vertices, held = vertices[chosen], held[chosen]
            chosen, faces = _largest(faces, len(vertices))
            vertices, held = vertices[chosen], held[chosen]
    mean = neighbour_mean(faces, len(vertices))
    border = np.zeros(len(vertices), bool)
    border[border_edges(faces)] = True
    # On a line only the neighbours on the same line count.
    fixed = held.sum(1) > 1
    edges = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    shared = held[edges[:, 0]] & held[edges[:, 1]]
    on_line = held.any(1)
    same = shared.any(1)
    a = np.concatenate([edges[same, 0], edges[same, 1]])
    b = np.concatenate([edges[same, 1], edges[same, 0]])
    along = coo_matrix((np.ones(len(a)), (a, b)), (len(vertices),) * 2).tocsr()
    along.data[:] = 1.0
    degree = np.asarray(along.sum(1)).ravel()
    along = diags(1.0 / np.maximum(degree, 1)) @ along
    fixed |= on_line & (degree < 2)
    for number in range(2 * rounds):
        if number >= rounds:
            # Where lines meet at a sharp angle snapping may turn a triangle over.
            unfolded = unfold(vertices, faces, held, field)
            if unfolded is faces:
                break
            faces = unfolded
            mean = neighbour_mean(faces, len(vertices))
        target = mean @ vertices
        target[on_line] = (along @ vertices)[on_line]
        target[fixed | (border & ~on_line)] = vertices[fixed | (border & ~on_line)]
        vertices = onto_level(0.5 * (vertices + target), field, level, 1)
        for number, line in enumerate(lines):
            at = held[:, number]
            vertices[at] = onto_line(vertices[at], line)
    return vertices, faces, held


def unfold(vertices: np.ndarray, faces: np.ndarray, held: np.ndarray, field: Field) -> np.ndarray:
    """Turn the edges of triangles that look inward where that helps.

    Parameters
    ----------
    vertices : (n, 3) float
        mm, on a level of ``field``.
    faces : (m, 3) int
        Meant to look towards larger values.
    held : (n, k) bool
        Lines on which each vertex lies; the edges along them stay.
    field : Field

    Returns
    -------
    (m, 3) int
        ``faces`` itself when none looks inward.
    """

    def shape(corners: np.ndarray) -> np.ndarray:
        """1 for an even triangle that looks outward, below 0 for one that looks inward."""
        a, b, c = (vertices[corners[..., k]] for k in range(3))
        way = field.gradient(((a + b + c) / 3.0).reshape(-1, 3)).reshape(a.shape)
        way = way / np.maximum(np.linalg.norm(way, axis=-1, keepdims=True), 1e-9)
        area = np.einsum("...d,...d->...", np.cross(b - a, c - a), way)
        size = sum(((p - q) ** 2).sum(axis=-1) for p, q in ((a, b), (b, c), (c, a)))
        return 2.0 * np.sqrt(3.0) * area / np.maximum(size, 1e-12)

    if not (shape(faces) <= 0).any():
        return faces
    faces = faces.copy()
    edge_of = {(int(f[k]), int(f[k - 2])): n for n, f in enumerate(faces) for k in range(3)}
    for n in np.flatnonzero(shape(faces) <= 0):
        best = None
        for k in range(3):
            a, b, c = (int(faces[n, (k + j) % 3]) for j in range(3))
            other = edge_of.get((b, a))
            if other is None or (held[a] & held[b]).any():
                continue
            d = int(next(v for v in faces[other] if v not in (a, b)))
            if (c, d) in edge_of or (d, c) in edge_of:
                continue
            now = shape(np.array([[a, b, c], [b, a, d]])).min()
            then = shape(np.array([[a, d, c], [d, b, c]])).min()
            if then > now and (best is None or then - now > best[0]):
                best = (then - now, a, b, c, d, other)
        if best is None:
            continue
        _, a, b, c, d, other = best
        for edge in ((a, b), (b, a)):
            del edge_of[edge]
        faces[n], faces[other] = (a, d, c), (d, b, c)
        for m in (n, other):
            edge_of.update({(int(faces[m, k]), int(faces[m, k - 2])): m for k in range(3)})
    return faces


def onto_line(points: np.ndarray, line: Line) -> np.ndarray:
    """One Newton step onto the zero of a line."""
    g = gradient_of(line, points)
    square = np.maximum(np.einsum("ij,ij->i", g, g), 0.1)
    return points - (line(points) / square)[:, None] * g


def _largest(faces: np.ndarray, count: int) -> tuple[np.ndarray, np.ndarray]:
    from scipy.sparse.csgraph import connected_components

    edges = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]]])
    graph = coo_matrix((np.ones(len(edges), bool), (edges[:, 0], edges[:, 1])), (count, count))
    _, piece = connected_components(graph, directed=False)
    piece = piece[faces[:, 0]]
    return compact(faces[piece == np.bincount(piece).argmax()], count)


def ascent_lines(
    points: np.ndarray,
    field: Field,
    inward: float,
    outward: float,
    step: float,
    held: np.ndarray,
    lines: Sequence[Line],
) -> tuple[np.ndarray, np.ndarray]:
    """Follow the steepest ascent of a field from each point, both ways.

    Parameters
    ----------
    points : (n, 3) float
    field : Field
    inward, outward : float
        How far, mm.
    step : float
    held : (n, k) bool, lines : k callables
        Lines that the vertex's way must not leave.

    Returns
    -------
    way : (n, m, 3) float
        Points `step` apart, deepest first.
    s : (m,) float
        Distance from the start, negative inward.
    """
    back, ahead = int(np.ceil(inward / step)), int(np.ceil(outward / step))
    way = np.empty((len(points), back + ahead + 1, 3))
    way[:, back] = points
    at = [np.flatnonzero(held[:, k]) for k in range(len(lines))]
    corner = [held[:, :k].any(1) if k else np.zeros(len(held), bool) for k in range(len(lines))]

    def direction(p: np.ndarray) -> np.ndarray:
        g = field.gradient(p)
        first = np.zeros((len(p), 3))
        for k, line in enumerate(lines):
            if len(at[k]) == 0:
                continue
            n = gradient_of(line, p[at[k]])
            # Where two lines meet, the way runs along both.
            met = corner[k][at[k]]
            n -= np.where(met, np.einsum("ij,ij->i", n, first[at[k]]), 0.0)[:, None] * first[at[k]]
            n /= np.maximum(np.linalg.norm(n, axis=1, keepdims=True), 1e-9)
            g[at[k]] -= np.einsum("ij,ij->i", g[at[k]], n)[:, None] * n
            first[at[k]] = np.where(met[:, None], first[at[k]], n)
        return g / np.maximum(np.linalg.norm(g, axis=1, keepdims=True), 1e-6)

    for sign, number in ((-1.0, back), (1.0, ahead)):
        p = points.copy()
        for k in range(1, number + 1):
            half = p + 0.5 * sign * step * direction(p)
            p = p + sign * step * direction(half)
            for j, line in enumerate(lines):
                if len(at[j]):
                    p[at[j]] = onto_line(p[at[j]], line)
            way[:, back + int(sign) * k] = p
    return way, step * np.arange(-back, ahead + 1)


def along_way(way: np.ndarray, s: np.ndarray, t: np.ndarray) -> np.ndarray:
    """(n, 3) points at distance t (n,) along each way."""
    x = np.clip((t - s[0]) / (s[1] - s[0]), 0.0, len(s) - 1.000001)
    k = x.astype(int)
    f = (x - k)[:, None]
    row = np.arange(len(way))
    return (1 - f) * way[row, k] + f * way[row, k + 1]
