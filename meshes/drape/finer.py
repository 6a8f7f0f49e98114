"""Smaller triangles in places: the surface stays where it is and gets more corners."""

from __future__ import annotations

import numpy as np

from meshes.drape.distance import number_edges


def split_edges(
    vertices: np.ndarray, faces: np.ndarray, chosen: np.ndarray, longest: float
) -> tuple[np.ndarray, np.ndarray, np.ndarray] | None:
    """Halve edges of chosen triangles; their neighbours are divided to fit.

    Parameters
    ----------
    vertices : (n, 3) float
        mm.
    faces : (m, 3) int
        Closed.
    chosen : (m,) bool
    longest : float
        Edges up to this length stay, mm.

    Returns
    -------
    vertices : (n + k, 3) float
        The old ones first.
    faces : (m', 3) int
        The surface as it was, closed again.
    ends : (k, 2) int
        Between which old vertices each new one lies.
    None when no edge is long enough.
    """
    edges, edge_of = number_edges(faces, len(vertices))
    edges = np.asarray(edges)
    length = np.linalg.norm(vertices[edges[:, 0]] - vertices[edges[:, 1]], axis=1)
    halved = np.zeros(len(edges), bool)
    halved[edge_of[chosen].reshape(-1)] = True
    halved &= length > longest
    if not halved.any():
        return None
    number = np.full(len(edges), -1)
    number[halved] = len(vertices) + np.arange(int(halved.sum()))
    ends = edges[halved]
    out = [faces[(number[edge_of] < 0).all(axis=1)]]
    # Edge k of a triangle runs from corner k to the next: turn it so that the cases are few.
    mids = number[edge_of]
    count = (mids >= 0).sum(axis=1)
    for turn in range(3):
        a, b, c = (faces[:, (turn + k) % 3] for k in range(3))
        ab, bc, ca = (mids[:, (turn + k) % 3] for k in range(3))
        one = (count == 1) & (ab >= 0)
        out += [np.stack(t, axis=1)[one] for t in ((a, ab, c), (ab, b, c))]
        two = (count == 2) & (ca < 0)
        # Of the four-sided rest the shorter diagonal is drawn.
        at = np.concatenate([vertices, vertices[ends].mean(axis=1)])
        through_a = np.linalg.norm(at[a] - at[bc], axis=1) <= np.linalg.norm(at[ab] - at[c], axis=1)
        out.append(np.stack((ab, b, bc), axis=1)[two])
        rest = (((a, ab, bc), (a, bc, c)), ((a, ab, c), (ab, bc, c)))
        for which, triangles in zip((two & through_a, two & ~through_a), rest, strict=True):
            out += [np.stack(t, axis=1)[which] for t in triangles]
        if turn == 0:
            three = count == 3
            out += [
                np.stack(t, axis=1)[three]
                for t in ((a, ab, ca), (ab, b, bc), (ca, bc, c), (ab, bc, ca))
            ]
    return at, np.concatenate(out).astype(faces.dtype), ends
