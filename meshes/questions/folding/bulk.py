"""Holds the volume of a flap: flesh that is bent neither swells nor shrinks.

A mesh of flat triangles loses a little volume where it rolls up. It is given back
evenly over the flap's two faces, by some tenths of a millimetre.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numba import njit

from meshes.drape.distance import KERNEL

ROUNDS = 2
FULL_FROM_COLUMN = 3.0
"""By the hinge, which is held, the faces don't give; from this column on they do wholly."""


@dataclass(frozen=True, slots=True, eq=False)
class Bulk:
    """One closed flap.

    Attributes
    ----------
    faces : (m, 3) int
    volume : float
        mm³ at rest.
    gives : (n,) float
        0 for vertices of the whole part that are held, 1 for those that may move.
    """

    faces: np.ndarray
    volume: float
    gives: np.ndarray

    def restore(self, vertices: np.ndarray) -> None:
        """Move the flap's faces out or in until it holds as much as at rest, in place."""
        _restore(vertices, self.faces, self.volume, self.gives, ROUNDS)


def bulk_of(rest: np.ndarray, faces: np.ndarray, at: np.ndarray, column: np.ndarray) -> Bulk:
    """Prepare a flap.

    Parameters
    ----------
    rest : (n, 3) float
        Of the whole part, mm.
    faces : (m, 3) int
        Of the flap, closed.
    at : (k,) int
        The flap's vertices.
    column : (k,) float
        Their places along the fibres of the grid; 0 at the hinge.
    """
    gives = np.zeros(len(rest))
    gives[at] = np.clip(column / FULL_FROM_COLUMN, 0.0, 1.0)
    faces = np.ascontiguousarray(faces, np.int64)
    return Bulk(faces, _volume(np.ascontiguousarray(rest), faces), gives)


@njit(**KERNEL)
def _volume(x, faces):
    total = 0.0
    for k in range(len(faces)):
        a, b, c = faces[k, 0], faces[k, 1], faces[k, 2]
        total += (
            x[a, 0] * (x[b, 1] * x[c, 2] - x[b, 2] * x[c, 1])
            + x[a, 1] * (x[b, 2] * x[c, 0] - x[b, 0] * x[c, 2])
            + x[a, 2] * (x[b, 0] * x[c, 1] - x[b, 1] * x[c, 0])
        )
    return total / 6.0


@njit(**KERNEL)
def _restore(x, faces, wanted, gives, rounds):
    for _ in range(rounds):
        normal = np.zeros((len(x), 3))
        for k in range(len(faces)):
            a, b, c = faces[k, 0], faces[k, 1], faces[k, 2]
            ux, uy, uz = x[b, 0] - x[a, 0], x[b, 1] - x[a, 1], x[b, 2] - x[a, 2]
            vx, vy, vz = x[c, 0] - x[a, 0], x[c, 1] - x[a, 1], x[c, 2] - x[a, 2]
            nx = (uy * vz - uz * vy) / 6.0
            ny = (uz * vx - ux * vz) / 6.0
            nz = (ux * vy - uy * vx) / 6.0
            for j in range(3):
                v = faces[k, j]
                normal[v, 0] += nx
                normal[v, 1] += ny
                normal[v, 2] += nz
        lack = wanted - _volume(x, faces)
        reach = 0.0
        for v in range(len(x)):
            reach += gives[v] * (normal[v, 0] ** 2 + normal[v, 1] ** 2 + normal[v, 2] ** 2) ** 0.5
        if reach <= 1e-9:
            return
        by = lack / reach
        for v in range(len(x)):
            length = (normal[v, 0] ** 2 + normal[v, 1] ** 2 + normal[v, 2] ** 2) ** 0.5
            if gives[v] > 0.0 and length > 1e-12:
                f = by * gives[v] / length
                x[v, 0] += f * normal[v, 0]
                x[v, 1] += f * normal[v, 1]
                x[v, 2] += f * normal[v, 2]
