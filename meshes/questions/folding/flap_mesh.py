"""The mesh of a part that is cut and folded: flap and stump apart, with raw faces between.

A part's own triangles are too large for a roll of a centimetre, and have no edge where
the knife goes. Here they are split until they can follow the roll, parted along the line
of cut, and both cut faces are closed.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse

STAYS = -1
"""Number of the piece that is not lifted."""

SPLIT_ROUNDS = 4
SNAP_MM = 0.35
"""A vertex so near to the line of cut is taken to lie on it: no slivers."""


@dataclass(frozen=True, slots=True, eq=False)
class FlapMesh:
    """A part's surface, cut.

    Attributes
    ----------
    weights : (n, m) sparse
        Each vertex as a mean of the m vertices of the part's own mesh.
    faces : (k, 3) int
        Closed: flap and stump are each a closed surface.
    piece : (n,) int
        Number of the flap that carries a vertex, -1 for what stays.
    drawn : (d,) int
        Vertex that each drawn vertex stands for; cut faces have their own, for a sharp edge.
    drawn_faces : (k, 3) int
    raw : (d,) bool
        On a cut face.
    deep : (d,) float
        1 on the deep surface of the flap, 0 on its outer one and on what stays.
    """

    weights: sparse.csr_matrix
    faces: np.ndarray
    piece: np.ndarray
    drawn: np.ndarray
    drawn_faces: np.ndarray
    raw: np.ndarray
    deep: np.ndarray

    def mirrored(self) -> FlapMesh:
        """Return the mesh for a part that is the mirror image."""
        return FlapMesh(
            self.weights,
            np.ascontiguousarray(self.faces[:, ::-1]),
            self.piece,
            self.drawn,
            np.ascontiguousarray(self.drawn_faces[:, ::-1]),
            self.raw,
            self.deep,
        )


def uncut(count: int, faces: np.ndarray) -> FlapMesh:
    """Return the mesh of a part of ``count`` vertices that moves whole."""
    everything = np.arange(count)
    return FlapMesh(
        sparse.identity(count, format="csr"),
        np.ascontiguousarray(faces, np.int64),
        np.zeros(count, int),
        everything,
        np.ascontiguousarray(faces, np.int64),
        np.zeros(count, bool),
        np.zeros(count),
    )


def refined(faces: np.ndarray, weights, vertices: np.ndarray, limit_mm):
    """Split edges until none that is asked for is longer than its limit.

    Parameters
    ----------
    faces : (k, 3) int
    weights : (n, m) sparse
    vertices : (m, 3) float
        mm; the places of the n points are ``weights @ vertices``.
    limit_mm : callable
        Points (e, 3) to the longest edge allowed there, (e,) mm.

    Returns
    -------
    faces, weights
        Still closed; old points keep their numbers.
    """
    for _ in range(SPLIT_ROUNDS):
        points = weights @ vertices
        pairs = np.sort(np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]), 1)
        edges, back = np.unique(pairs, axis=0, return_inverse=True)
        back = back.reshape(3, -1).T
        a, b = points[edges[:, 0]], points[edges[:, 1]]
        split = np.linalg.norm(a - b, axis=1) > limit_mm(0.5 * (a + b))
        # The longest edge of a face is split first: triangles stay well shaped.
        length = np.linalg.norm(a - b, axis=1)
        longest = back[np.arange(len(faces)), length[back].argmax(axis=1)]
        touched = split[back].any(axis=1)
        while True:
            more = np.zeros(len(edges), bool)
            more[longest[touched]] = True
            if not (more & ~split).any():
                break
            split |= more
            touched = split[back].any(axis=1)
        if not split.any():
            break
        number = np.full(len(edges), -1)
        number[split] = weights.shape[0] + np.arange(split.sum())
        half = 0.5 * (weights[edges[split, 0]] + weights[edges[split, 1]])
        weights = sparse.vstack([weights, half]).tocsr()
        faces = _split_faces(faces, number[back], longest == back.T)
    return faces, weights


def _split_faces(faces, mid, is_longest):
    """Split faces at the midpoints ``mid`` (k, 3) of their edges, -1 where there is none."""
    # Turn each face so that its longest edge, which is split if any is, comes first.
    first = is_longest.T.argmax(axis=1)
    turn = (first[:, None] + np.arange(3)) % 3
    rows = np.arange(len(faces))[:, None]
    v, m = faces[rows, turn], mid[rows, turn]
    whole = m[:, 0] < 0
    made = [v[whole]]
    v, m = v[~whole], m[~whole]
    # The longest edge is cut across to the far corner; each half may be cut once more.
    for corner, edge in ((1, 1), (0, 2)):
        cut = m[:, edge] >= 0
        if corner == 1:
            plain = np.column_stack([m[:, 0], v[:, 1], v[:, 2]])
            two = [
                np.column_stack([m[:, 0], v[:, 1], m[:, 1]]),
                np.column_stack([m[:, 0], m[:, 1], v[:, 2]]),
            ]
        else:
            plain = np.column_stack([m[:, 0], v[:, 2], v[:, 0]])
            two = [
                np.column_stack([m[:, 0], v[:, 2], m[:, 2]]),
                np.column_stack([m[:, 0], m[:, 2], v[:, 0]]),
            ]
        made.append(plain[~cut])
        made += [piece[cut] for piece in two]
    return np.concatenate(made)


def parted(
    faces: np.ndarray, weights, vertices: np.ndarray, inside: np.ndarray, flat, period: float = 0.0
):
    """Cut a closed surface where a value crosses 0 and close both halves.

    Parameters
    ----------
    inside : (n,) float
        Above 0 in the flap, mm from the line of cut.
    flat : callable
        Points (p, 3) to plane coordinates (p, 2) of the cut face, mm.
    period : float
        After which the first of them comes round again, for a cut that runs round; 0: never.

    Returns
    -------
    faces, weights
        As in ``refined``; points on the cut are doubled.
    in_flap : (n,) bool
    raw : (k,) bool
        Of the faces: those of the cut.
    """
    value = np.where(np.abs(inside) < SNAP_MM, 0.0, inside)
    above, below = value > 0, value < 0
    if not above.any() or not below.any():
        return faces, weights, np.full(len(value), above.any()), np.zeros(len(faces), bool)
    # Points on crossing edges.
    pairs = np.sort(np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]), axis=1)
    edges = np.unique(pairs[value[pairs[:, 0]] * value[pairs[:, 1]] < 0], axis=0)
    share = value[edges[:, 0]] / (value[edges[:, 0]] - value[edges[:, 1]])
    new = (
        sparse.diags(1 - share) @ weights[edges[:, 0]] + sparse.diags(share) @ weights[edges[:, 1]]
    )
    count = len(value)
    weights = sparse.vstack([weights, new]).tocsr()
    value = np.concatenate([value, np.zeros(len(edges))])
    number = {(int(a), int(b)): count + k for k, (a, b) in enumerate(edges)}
    crossing = (value[faces] > 0).any(axis=1) & (value[faces] < 0).any(axis=1)
    whole = faces[~crossing]
    sign = np.where((value[whole] > 0).any(axis=1), 1, -1)
    flat_on_cut = (value[whole] == 0).all(axis=1)
    sign[flat_on_cut] = 1
    pieces, signs = [whole], [sign]
    for face in faces[crossing]:
        for kept in (1, -1):
            ring = []
            for a, b in zip(face, np.roll(face, -1), strict=True):
                if value[a] * kept >= 0:
                    ring.append(int(a))
                if value[a] * value[b] < 0:
                    ring.append(number[(int(min(a, b)), int(max(a, b)))])
            ring = [a for k, a in enumerate(ring) if a != ring[k - 1]]
            if len(ring) >= 3 and any(value[a] * kept > 0 for a in ring):
                fan = [[ring[0], ring[k], ring[k + 1]] for k in range(1, len(ring) - 1)]
                pieces.append(np.array(fan))
                signs.append(np.full(len(fan), kept))
    faces, sign = np.concatenate(pieces), np.concatenate(signs)
    points = weights @ vertices
    out, raw, in_flap = [], [], None
    # Points on the cut stand twice: once for the flap, once for what stays.
    on_cut = np.flatnonzero(value == 0)
    twin = np.arange(len(value))
    twin[on_cut] = len(value) + np.arange(len(on_cut))
    # Both halves have the same rim; closed alike, together they hold what the whole held.
    caps = _caps(faces[sign == 1], points, flat, period)
    for kept in (1, -1):
        mine = faces[sign == kept]
        caps = caps if kept > 0 else caps[:, ::-1]
        both = np.concatenate([mine, caps]) if len(caps) else mine
        out.append(both if kept > 0 else twin[both])
        raw.append(np.arange(len(both)) >= len(mine))
    weights = sparse.vstack([weights, weights[on_cut]]).tocsr()
    in_flap = np.concatenate([value >= 0, np.zeros(len(on_cut), bool)])
    return np.concatenate(out), weights, in_flap, np.concatenate(raw)


def _turns(angle: np.ndarray, period: float) -> int:
    """Return how often a closed line goes round, +1 or -1 for once."""
    step = np.diff(np.append(angle, angle[0]))
    return round(float((step - period * np.round(step / period)).sum()) / period)


def _band(loops, points: np.ndarray, flat, period: float) -> np.ndarray:
    """Return triangles between two rims that run round the flap in opposite directions."""
    first, second = (np.asarray(loop) for loop in loops)
    second = second[::-1]
    ways = []
    for loop in (first, second):
        angle = flat(points[loop])[:, 0]
        step = np.diff(np.append(angle, angle[0]))
        step -= period * np.round(step / period)
        if step.sum() < 0:
            # Both are walked in the direction in which the angle grows.
            ways.append((loop, angle, -1))
        else:
            ways.append((loop, angle, 1))
    sign = ways[0][2]
    walks = []
    for loop, angle, _ in ways:
        angle = sign * angle
        start = int(np.argmin(angle % period))
        order = np.roll(np.arange(len(loop)), -start)
        step = np.diff(angle[order], append=angle[order][0])
        step -= period * np.round(step / period)
        gone = (angle[order][0] % period) + np.concatenate([[0.0], step.cumsum()])
        walks.append((np.append(loop[order], loop[order][0]), np.maximum.accumulate(gone)))
    (a, at_a), (b, at_b) = walks
    i = j = 0
    made = []
    while i < len(a) - 1 or j < len(b) - 1:
        if j == len(b) - 1 or (i < len(a) - 1 and at_a[i + 1] <= at_b[j + 1]):
            made.append([a[i], a[i + 1], b[j]])
            i += 1
        else:
            made.append([b[j + 1], b[j], a[i]])
            j += 1
    return np.array(made)


def _caps(faces: np.ndarray, points: np.ndarray, flat, period: float = 0.0) -> np.ndarray:
    """Return triangles that close the open rims of some faces."""
    from manifold3d import triangulate

    directed = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    have = {(int(a), int(b)) for a, b in directed}
    following = {}
    for a, b in directed:
        if (int(b), int(a)) not in have:
            following.setdefault(int(b), []).append(int(a))
    loops = []
    while following:
        start = next(iter(following))
        loop, at = [], start
        while at in following:
            loop.append(at)
            ahead = following[at]
            nxt = ahead.pop()
            if not ahead:
                del following[at]
            at = nxt
        loops += _simple_loops(loop)
    made = []
    if period:
        # Rims that run right round the flap bound a band, not a face.
        turns = [_turns(flat(points[loop])[:, 0], period) for loop in loops]
        round_it = [loop for loop, turn in zip(loops, turns, strict=True) if turn]
        if len(round_it) == 2:
            made.append(_band(round_it, points, flat, period))
            loops = [loop for loop, turn in zip(loops, turns, strict=True) if not turn]
    for loop in loops:
        ring = flat(points[loop])
        if period:
            ring[:, 0] = np.unwrap(ring[:, 0], period=period)
        area = 0.5 * np.sum(
            ring[:, 0] * np.roll(ring[:, 1], -1) - np.roll(ring[:, 0], -1) * ring[:, 1]
        )
        ring = ring if area >= 0 else ring * [1.0, -1.0]
        found = np.asarray(triangulate([np.ascontiguousarray(ring)], -1.0, True))
        made.append(np.asarray(loop)[found])
    return np.concatenate(made) if made else np.zeros((0, 3), int)


def _simple_loops(loop: list[int]) -> list[list[int]]:
    """Part a rim that comes through a point twice, as an eight does, into rims that don't."""
    found, way, place = [], [], {}
    for point in loop:
        if point in place:
            begin = place[point]
            found.append(way[begin:])
            for each in way[begin + 1 :]:
                del place[each]
            del way[begin + 1 :]
        else:
            place[point] = len(way)
            way.append(point)
    return [each for each in (*found, way) if len(each) >= 3]


def in_own_right(faces: np.ndarray, raw_faces: np.ndarray):
    """Give faces of the cut vertices of their own: (drawn, drawn_faces, raw of the drawn)."""
    count = int(faces.max()) + 1
    used = np.unique(faces[raw_faces])
    twin = np.arange(count)
    twin[used] = count + np.arange(len(used))
    drawn_faces = faces.copy()
    drawn_faces[raw_faces] = twin[faces[raw_faces]]
    raw = np.concatenate([np.zeros(count, bool), np.ones(len(used), bool)])
    return np.concatenate([np.arange(count), used]), drawn_faces, raw
