"""Decimation of a closed mesh by the least quadric error, in a kernel that lets go of the lock.

The way is that of Fast-Quadric-Mesh-Simplification (copyright (c) 2014 Sven Forstmann, under the
MIT licence, whose terms stand in LICENSE), step for step. The library of that name in Python gives the same
mesh to the last bit (a test holds it to that), but it keeps its mesh in globals and holds the
interpreter's lock all the while, so that nothing else is laid beside it.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

_ROUNDS = 100
_AGAIN = 5
"""Rounds after which the lists of faces round each vertex are made anew."""

_KERNEL = {"cache": True, "nogil": True, "fastmath": False, "error_model": "numpy"}


def decimate(
    vertices: np.ndarray, faces: np.ndarray, target: int, aggression: float
) -> tuple[np.ndarray, np.ndarray]:
    """Collapse edges until about the wanted number of faces is left.

    Parameters
    ----------
    vertices : (n, 3) float
        mm.
    faces : (m, 3) int
    target : int
        Wanted number of faces; it stops above it where every collapse would turn a face over.
    aggression : float
        How fast the error allowed grows from round to round: 5 for good triangles, 8 for few.

    Returns
    -------
    vertices : (k, 3) float
    faces : (l, 3) int64
    """
    allowed = np.array([1e-9 * math.pow(turn + 3.0, aggression) for turn in range(_ROUNDS)])
    return _decimate(
        np.array(vertices, np.float64, order="C"), np.array(faces, np.int64, order="C"),
        int(target), allowed,
    )  # fmt: skip


@njit(inline="always", **_KERNEL)
def _least(a, b):
    """The smaller of two; what is no number does not count."""
    return a if a < b or b != b else b


@njit(inline="always", **_KERNEL)
def _error_at(q0, q1, q2, q3, q4, q5, q6, q7, q8, q9, x, y, z):
    """Quadric error of a place."""
    return (
        q0 * x * x + 2 * q1 * x * y + 2 * q2 * x * z + 2 * q3 * x + q4 * y * y
        + 2 * q5 * y * z + 2 * q6 * y + q7 * z * z + 2 * q8 * z + q9
    )  # fmt: skip


@njit(inline="always", **_KERNEL)
def _det(a11, a12, a13, a21, a22, a23, a31, a32, a33):
    return (
        a11 * a22 * a33 + a13 * a21 * a32 + a12 * a23 * a31
        - a13 * a22 * a31 - a11 * a23 * a32 - a12 * a21 * a33
    )  # fmt: skip


@njit(inline="always", **_KERNEL)
def _collapse(a, b, points, quadrics, border):
    """Error of collapsing an edge, and the place where to."""
    q0 = quadrics[a, 0] + quadrics[b, 0]
    q1 = quadrics[a, 1] + quadrics[b, 1]
    q2 = quadrics[a, 2] + quadrics[b, 2]
    q3 = quadrics[a, 3] + quadrics[b, 3]
    q4 = quadrics[a, 4] + quadrics[b, 4]
    q5 = quadrics[a, 5] + quadrics[b, 5]
    q6 = quadrics[a, 6] + quadrics[b, 6]
    q7 = quadrics[a, 7] + quadrics[b, 7]
    q8 = quadrics[a, 8] + quadrics[b, 8]
    q9 = quadrics[a, 9] + quadrics[b, 9]
    det = _det(q0, q1, q2, q1, q4, q5, q2, q5, q7)
    if det != 0 and not (border[a] and border[b]):
        x = -1 / det * _det(q1, q2, q3, q4, q5, q6, q5, q7, q8)
        y = 1 / det * _det(q0, q2, q3, q1, q5, q6, q2, q7, q8)
        z = -1 / det * _det(q0, q1, q3, q1, q4, q6, q2, q5, q8)
        return _error_at(q0, q1, q2, q3, q4, q5, q6, q7, q8, q9, x, y, z), x, y, z
    # Flat or straight: the best of both ends and the middle.
    xa, ya, za = points[a, 0], points[a, 1], points[a, 2]
    xb, yb, zb = points[b, 0], points[b, 1], points[b, 2]
    xm, ym, zm = (xa + xb) / 2, (ya + yb) / 2, (za + zb) / 2
    one = _error_at(q0, q1, q2, q3, q4, q5, q6, q7, q8, q9, xa, ya, za)
    two = _error_at(q0, q1, q2, q3, q4, q5, q6, q7, q8, q9, xb, yb, zb)
    middle = _error_at(q0, q1, q2, q3, q4, q5, q6, q7, q8, q9, xm, ym, zm)
    error = _least(one, _least(two, middle))
    x, y, z = 0.0, 0.0, 0.0
    if one == error:
        x, y, z = xa, ya, za
    if two == error:
        x, y, z = xb, yb, zb
    if middle == error:
        x, y, z = xm, ym, zm
    return error, x, y, z


@njit(inline="always", **_KERNEL)
def _turns_over(x, y, z, b, first, many, points, faces, dead, normal, face_of, corner_of, dropped):
    """Whether a face round a vertex would turn over or become a sliver at its new place.

    ``dropped`` says of each face round it whether it holds the other end ``b`` as well.
    """
    for k in range(many):
        f = face_of[first + k]
        if dead[f]:
            continue
        s = corner_of[first + k]
        c, d = faces[f, s + 1 if s < 2 else 0], faces[f, s - 1 if s > 0 else 2]
        if c == b or d == b:
            dropped[k] = True
            continue
        x1, y1, z1 = points[c, 0] - x, points[c, 1] - y, points[c, 2] - z
        length = np.sqrt(x1 * x1 + y1 * y1 + z1 * z1)
        x1, y1, z1 = x1 / length, y1 / length, z1 / length
        x2, y2, z2 = points[d, 0] - x, points[d, 1] - y, points[d, 2] - z
        length = np.sqrt(x2 * x2 + y2 * y2 + z2 * z2)
        x2, y2, z2 = x2 / length, y2 / length, z2 / length
        if abs(x2 * x1 + y2 * y1 + z2 * z1) > 0.999:
            return True
        nx, ny, nz = y1 * z2 - z1 * y2, z1 * x2 - x1 * z2, x1 * y2 - y1 * x2
        length = np.sqrt(nx * nx + ny * ny + nz * nz)
        nx, ny, nz = nx / length, ny / length, nz / length
        dropped[k] = False
        if normal[f, 0] * nx + normal[f, 1] * ny + normal[f, 2] * nz < 0.2:
            return True
    return False


@njit(**_KERNEL)
def _set_errors(f, faces, errors, points, quadrics, border):
    a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
    ab = _collapse(a, b, points, quadrics, border)[0]
    bc = _collapse(b, c, points, quadrics, border)[0]
    ca = _collapse(c, a, points, quadrics, border)[0]
    errors[f, 0], errors[f, 1], errors[f, 2] = ab, bc, ca
    errors[f, 3] = _least(ab, _least(bc, ca))


@njit(**_KERNEL)
def _mark_borders(start, many, faces, face_of, border):
    """Mark the vertices that a neighbour shares one face with only."""
    names = np.empty(64, np.int64)
    uses = np.empty(64, np.int64)
    for v in range(start.size):
        if 3 * many[v] > names.size:
            names = np.empty(3 * many[v], np.int64)
            uses = np.empty(3 * many[v], np.int64)
        count = 0
        for j in range(many[v]):
            f = face_of[start[v] + j]
            for k in range(3):
                at = 0
                while at < count and names[at] != faces[f, k]:
                    at += 1
                if at == count:
                    names[at], uses[at] = faces[f, k], 1
                    count += 1
                else:
                    uses[at] += 1
        for at in range(count):
            if uses[at] == 1:
                border[names[at]] = True


@njit(**_KERNEL)
def _lay_out(points, faces, normal, quadrics):
    """Normals of the faces, and the quadric of the planes round each vertex."""
    for f in range(faces.shape[0]):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        x1, y1, z1 = (
            points[b, 0] - points[a, 0],
            points[b, 1] - points[a, 1],
            points[b, 2] - points[a, 2],
        )
        x2, y2, z2 = (
            points[c, 0] - points[a, 0],
            points[c, 1] - points[a, 1],
            points[c, 2] - points[a, 2],
        )
        nx, ny, nz = y1 * z2 - z1 * y2, z1 * x2 - x1 * z2, x1 * y2 - y1 * x2
        length = np.sqrt(nx * nx + ny * ny + nz * nz)
        nx, ny, nz = nx / length, ny / length, nz / length
        normal[f, 0], normal[f, 1], normal[f, 2] = nx, ny, nz
        d = -(points[a, 0] * nx + points[a, 1] * ny + points[a, 2] * nz)
        for k in range(3):
            v = faces[f, k]
            quadrics[v, 0] += nx * nx
            quadrics[v, 1] += nx * ny
            quadrics[v, 2] += nx * nz
            quadrics[v, 3] += nx * d
            quadrics[v, 4] += ny * ny
            quadrics[v, 5] += ny * nz
            quadrics[v, 6] += ny * d
            quadrics[v, 7] += nz * nz
            quadrics[v, 8] += nz * d
            quadrics[v, 9] += d * d


@njit(**_KERNEL)
def _without_dead(faces, normal, errors, dead, m):
    """Close the gaps among the first m faces; returns how many are left."""
    kept = 0
    for f in range(m):
        if not dead[f]:
            for k in range(3):
                faces[kept, k] = faces[f, k]
                normal[kept, k] = normal[f, k]
            for k in range(4):
                errors[kept, k] = errors[f, k]
            dead[kept] = False
            kept += 1
    return kept


@njit(**_KERNEL)
def _faces_round(faces, m, start, many, face_of, corner_of):
    """List the faces round each vertex; returns the length of the list."""
    many[:] = 0
    for f in range(m):
        for k in range(3):
            many[faces[f, k]] += 1
    used = 0
    for v in range(start.size):
        start[v] = used
        used += many[v]
        many[v] = 0
    for f in range(m):
        for k in range(3):
            v = faces[f, k]
            face_of[start[v] + many[v]] = f
            corner_of[start[v] + many[v]] = k
            many[v] += 1
    return used


@njit(**_KERNEL)
def _collapse_round(
    points, faces, errors, normal, quadrics, border, dead, dirty, start, many, face_of, corner_of,
    dropped, m, begin, used, spare, limit,
):  # fmt: skip
    """Collapse what costs less than ``limit``, from face ``begin`` on, until none is to spare.

    Returns the face at which it stopped for want of room in the lists (m when done), how far
    these are filled, and how many faces are still to spare.
    """
    for f in range(begin, m):
        if errors[f, 3] > limit or dead[f] or dirty[f]:
            continue
        for j in range(3):
            if not errors[f, j] < limit:
                continue
            a, b = faces[f, j], faces[f, j + 1 if j < 2 else 0]
            if border[a] != border[b]:
                continue
            if used + many[a] + many[b] > face_of.size:
                return f, used, spare
            _, x, y, z = _collapse(a, b, points, quadrics, border)
            if _turns_over(
                x, y, z, b, start[a], many[a], points, faces, dead, normal, face_of, corner_of,
                dropped[0],
            ) or _turns_over(
                x, y, z, a, start[b], many[b], points, faces, dead, normal, face_of, corner_of,
                dropped[1],
            ):  # fmt: skip
                continue
            points[a, 0], points[a, 1], points[a, 2] = x, y, z
            for k in range(10):
                quadrics[a, k] = quadrics[b, k] + quadrics[a, k]
            first = used
            for side in range(2):
                v = b if side else a
                for k in range(many[v]):
                    g = face_of[start[v] + k]
                    if dead[g]:
                        continue
                    if dropped[side, k]:
                        dead[g] = True
                        spare -= 1
                        continue
                    s = corner_of[start[v] + k]
                    faces[g, s] = a
                    dirty[g] = True
                    _set_errors(g, faces, errors, points, quadrics, border)
                    face_of[used], corner_of[used] = g, s
                    used += 1
            count = used - first
            if count <= many[a]:
                for k in range(count):
                    face_of[start[a] + k] = face_of[first + k]
                    corner_of[start[a] + k] = corner_of[first + k]
            else:
                start[a] = first
            many[a] = count
            break
        if spare <= 0:
            break
    return m, used, spare


@njit(**_KERNEL)
def _decimate(points, faces, target, allowed):
    n, m = points.shape[0], faces.shape[0]
    spare = m - target
    quadrics = np.zeros((n, 10))
    border = np.zeros(n, np.bool_)
    start = np.zeros(n, np.int64)
    many = np.zeros(n, np.int64)
    errors = np.empty((m, 4))
    normal = np.empty((m, 3))
    dead = np.zeros(m, np.bool_)
    dirty = np.zeros(m, np.bool_)
    face_of = np.empty(4 * m, np.int64)
    corner_of = np.empty(4 * m, np.int64)
    dropped = np.zeros((2, 3 * m), np.bool_)
    used = 0
    for turn in range(allowed.size):
        if spare <= 0:
            break
        if turn == 0:
            _lay_out(points, faces, normal, quadrics)
            for f in range(m):
                _set_errors(f, faces, errors, points, quadrics, border)
        elif turn % _AGAIN == 0:
            m = _without_dead(faces, normal, errors, dead, m)
        if turn % _AGAIN == 0:
            used = _faces_round(faces, m, start, many, face_of, corner_of)
        if turn == 0:
            _mark_borders(start, many, faces, face_of, border)
        dirty[:m] = False
        at = 0
        while at < m:
            at, used, spare = _collapse_round(
                points, faces, errors, normal, quadrics, border, dead, dirty, start, many, face_of,
                corner_of, dropped, m, at, used, spare, allowed[turn],
            )  # fmt: skip
            if at < m:
                more = np.empty(2 * face_of.size, np.int64)
                more[:used] = face_of[:used]
                face_of = more
                more = np.empty(face_of.size, np.int64)
                more[:used] = corner_of[:used]
                corner_of = more
    m = _without_dead(faces, normal, errors, dead, m)
    many[:] = 0
    for f in range(m):
        for k in range(3):
            many[faces[f, k]] = 1
    count = 0
    for v in range(n):
        if many[v]:
            start[v] = count
            for k in range(3):
                points[count, k] = points[v, k]
            count += 1
    for f in range(m):
        for k in range(3):
            faces[f, k] = start[faces[f, k]]
    return points[:count].copy(), faces[:m].copy()
