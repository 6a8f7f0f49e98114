"""A muscle's own fibre lines, held to their length wherever the flap carries them.

The grid keeps the length of its rows. A fibre that does not run along a row, or lies
deep in a thick belly, would come out a little long or short: every line is walked again
from the hinge, link by link, and the flesh about it goes along.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numba import njit
from scipy import sparse
from scipy.spatial import cKDTree

from meshes.drape.distance import KERNEL
from meshes.questions.folding.carrying import Carried

STEP_MM, EVENED_MM = 2.0, 2.5
NEAREST = 8
ROUNDS = 4

SOFT_MM = 0.4
"""A point so near to a line goes wholly with it; between lines it goes with their mean."""


@dataclass(frozen=True, slots=True, eq=False)
class Strands:
    """Fibre lines of one part within its flap.

    Attributes
    ----------
    carried : Carried
        Of the points of all lines, each from the hinge to the cut.
    first : (k + 1,) int
        Where each line begins.
    links : (n,) float
        Length of the link to the point before, mm; 0 for the first of a line.
    points : (n, 3) float
        At rest, mm.
    evened : (n, n) sparse
        Mean of the shifts of neighbouring points.
    weights : (m, n) sparse
        How much of each point's shift each carried vertex takes on.
    """

    carried: Carried
    first: np.ndarray
    links: np.ndarray
    points: np.ndarray
    evened: sparse.csr_matrix
    weights: sparse.csr_matrix

    def shift(self, grid: np.ndarray) -> np.ndarray:
        """Return by how much the vertices move (m, 3) so that the lines keep their length."""
        placed = self.carried.place(grid)
        now = placed.copy()
        for _ in range(ROUNDS):
            walked = now.copy()
            _walk(walked, self.first, self.links)
            # A line that changes rows makes a step there, which is none of the flesh; and
            # lines that run together move together. Evening leaves a little to walk again.
            now += self.evened @ (walked - now)
        return self.weights @ (now - placed)

    def for_points(self, points: np.ndarray) -> Strands:
        """Return the same lines for other points of the flap."""
        return replace(self, weights=_weights(self.points, points))


def strands_of(sheet, part, fibres: np.ndarray) -> Strands | None:
    """Prepare the fibre lines of a part that is cut and folded, None where no line is lifted.

    Parameters
    ----------
    sheet : ControlSheet
        Of its flap.
    part : CutPart
    fibres : (k, m, 3) float
        mm, left side.
    """
    tree = cKDTree(part.rest)
    lines, links = [], []
    for fibre in fibres:
        line = _evenly(np.asarray(fibre, float))
        in_flap = np.flatnonzero(part.mesh.piece[tree.query(line)[1]] == 0)
        if len(in_flap) < 3:
            continue
        run = line[in_flap.min() : in_flap.max() + 1]
        column = Carried(sheet, run).column
        if column[0] > column[-1]:
            run, column = run[::-1], column[::-1]
        # What lies at the hinge stays; the walk begins there.
        begins = max(int(np.flatnonzero(column > 0.0)[0]) - 1, 0) if (column > 0).any() else 0
        run = run[begins:]
        if len(run) < 3:
            continue
        lines.append(run)
        links.append(np.append(0.0, np.linalg.norm(np.diff(run, axis=0), axis=1)))
    if not lines:
        return None
    points = np.concatenate(lines)
    first = np.cumsum([0] + [len(line) for line in lines])
    weights = _weights(points, part.rest[part.at[0]])
    evened = _weights(points, points, EVENED_MM)
    return Strands(Carried(sheet, points), first, np.concatenate(links), points, evened, weights)


def _evenly(line: np.ndarray) -> np.ndarray:
    gone = np.append(0.0, np.linalg.norm(np.diff(line, axis=0), axis=1).cumsum())
    at = np.linspace(0.0, gone[-1], max(int(gone[-1] / STEP_MM), 2) + 1)
    return np.column_stack([np.interp(at, gone, line[:, c]) for c in range(3)])


def _weights(points: np.ndarray, wanted: np.ndarray, soft_mm: float = SOFT_MM) -> sparse.csr_matrix:
    count = min(NEAREST, len(points))
    distance, near = cKDTree(points).query(wanted, count)
    distance, near = distance.reshape(-1, count), near.reshape(-1, count)
    weight = 1.0 / (distance**2 + soft_mm**2) ** 2
    weight /= weight.sum(axis=1, keepdims=True)
    rows = np.repeat(np.arange(len(wanted)), count)
    shape = (len(wanted), len(points))
    return sparse.csr_matrix((weight.ravel(), (rows, near.ravel())), shape=shape)


@njit(**KERNEL)
def _walk(x, first, links):
    """Set every link to its length, in place; each keeps the direction in which it came."""
    for k in range(len(first) - 1):
        bx = x[first[k], 0]
        by = x[first[k], 1]
        bz = x[first[k], 2]
        for n in range(first[k] + 1, first[k + 1]):
            dx, dy, dz = x[n, 0] - bx, x[n, 1] - by, x[n, 2] - bz
            bx, by, bz = x[n, 0], x[n, 1], x[n, 2]
            length = (dx * dx + dy * dy + dz * dz) ** 0.5
            f = links[n] / length if length > 1e-9 else 0.0
            x[n, 0] = x[n - 1, 0] + f * dx
            x[n, 1] = x[n - 1, 1] + f * dy
            x[n, 2] = x[n - 1, 2] + f * dz
