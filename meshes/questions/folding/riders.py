"""Nerves and vessels that ride on a flap, still joined to their staying end.

The middle line of a tube goes with the flap where it clings to it. From there back to where
it comes from it is a slack cord: it follows evenly, keeps its length as well as it can, and lets go of the flap so far as it
would be torn otherwise. The tube stays round about its line.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numba import njit
from scipy.spatial import cKDTree

from meshes.drape.distance import KERNEL
from meshes.questions.folding.control_sheet import ControlSheet
from meshes.shapes.polyline import resample

CLINGS_MM = 5.0
"""A tube whose middle lies so near to the flap's face clings there."""

LETS_GO_MM = 14.0
STEP_MM = 1.5
"""Spacing of the points of a middle line."""

FIXED_SHARE = 0.25
"""Of the way from the root to the flap: so much stays where it is."""

TAUT = 1.25
"""Share of its length that a cord spans at most: a cord that is freed by hand gives, and a flap
that tears it off altogether would show less of what clings there."""

MORE = 1.1
"""Where it is torn anyhow, so much more is as good."""

JOINED_MM = 3.0
"""A branch that begins so near to another goes with it."""

JUDGED = (0.25, 0.5, 0.75, 1.0)
"""Shares of the fold at which a cord must be long enough."""

ROUNDS, EVENED, DRAWN = 200, 0.3, 0.02
"""Sweeps; how much each evens out, and draws what rides to its place on the flap: a cord does
not follow the flesh into a crease."""

NEAREST = 3

STAYS, FREE, RIDES = 0, 1, 2


@dataclass(frozen=True, slots=True, eq=False)
class Rider:
    """Points of a tube: carried by the flap where it clings, staying where it comes from.

    Attributes
    ----------
    flap : Flap or AsideFlap
    carried : Carried or AsideCarried
        Of the points of the middle line and its branches.
    line : (k, 3) float
        These points at rest, mm; each branch from the end that stays.
    first : (b + 1,) int
        Where each branch begins.
    parent : (b,) int
        Point of an earlier branch that each branch begins at, -1 for those that stay.
    state : (k,) int
        ``STAYS``, ``FREE`` or ``RIDES``.
    frames : (k, 3, 3) float
        Unit frames along the line at rest.
    at : (n, 3) int
        Points of the line that each point of the tube goes with.
    weight : (n, 3) float
    offset : (n, 3, 3) float
        From each of them, in its frame, mm.
    """

    flap: Any
    carried: Any
    line: np.ndarray
    first: np.ndarray
    parent: np.ndarray
    state: np.ndarray
    frames: np.ndarray
    at: np.ndarray
    weight: np.ndarray
    offset: np.ndarray

    def place(self, pose: Any) -> np.ndarray:
        """Return the points (n, 3) for a pose of the flap, mm."""
        line = self.middle(pose)
        frames = np.empty_like(self.frames)
        _transported(line, self.first, self.frames, frames)
        found = line[self.at] + np.einsum("nkij,nki->nkj", frames[self.at], self.offset)
        return (self.weight[..., None] * found).sum(axis=1)

    def middle(self, pose: Any) -> np.ndarray:
        """Return the middle line (k, 3) for a pose of the flap, mm."""
        by = np.where(self.state[:, None] == RIDES, self.carried.place(pose) - self.line, 0.0)
        out = self.line + by
        _paid_out(out, self.line, self.first, self.parent, self.state)
        return out

    def for_points(self, points: np.ndarray) -> Rider:
        """Return a rider of other points of the same tube."""
        at, weight, offset = _held(self.line, self.frames, points)
        return replace(self, at=at, weight=weight, offset=offset)


def rider_of(flap: Any, vertices: np.ndarray, lines: np.ndarray) -> Rider:
    """Prepare a tube to ride on a flap.

    Parameters
    ----------
    flap : Flap or AsideFlap
    vertices : (n, 3) float
        mm.
    lines : (k, m, 3) float
        Middle lines of the tube and its branches, from the end that stays.
    """
    dense, states, parent = [], [], []
    for line in np.asarray(lines, float):
        length = float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())
        at = np.linspace(0, length, max(int(length / STEP_MM), 4) + 1)
        points = resample(line, len(at))
        parent.append(-1)
        if dense:
            distance, near = cKDTree(np.concatenate(dense)).query(points[0])
            parent[-1] = int(near) if distance < JOINED_MM else -1
        dense.append(points)
        states.append(_states(flap, points, at, parent[-1] >= 0))
    line = np.ascontiguousarray(np.concatenate(dense))
    first = np.cumsum([0] + [len(points) for points in dense])
    frames = np.empty((len(line), 3, 3))
    start = np.broadcast_to(np.eye(3), frames.shape).copy()
    _transported(line, first, start, frames)
    held = _held(line, frames, np.asarray(vertices, float))
    return Rider(
        *(flap, flap.carried(line), line, first, np.array(parent)),
        *(np.concatenate(states), frames, *held),
    )


def _states(flap: Any, points: np.ndarray, at: np.ndarray, branches: bool) -> np.ndarray:
    """Return for each point of a middle line whether it stays, hangs free or rides.

    A line that ``branches`` off another begins where that one takes it.
    """
    sheet: ControlSheet = flap.sheet
    distance, near = cKDTree(sheet.mid.reshape(-1, 3)).query(points)
    half_step = 0.5 * sheet.step_mm
    away = np.sqrt(np.maximum(distance**2 - half_step**2, 0.0)) - sheet.half_mm.ravel()[near]
    clings = away < CLINGS_MM
    state = np.full(len(points), STAYS)
    if not clings.any():
        return state
    first = int(np.argmax(clings))
    last = len(points) - 1 - int(np.argmax(clings[::-1]))
    # A tip past the flap's rim stays with the flap when it is short.
    short = at[-1] - at[last] < LETS_GO_MM
    end = len(points) - 1 if short else last
    if branches:
        state[1:-1] = FREE
        state[-1] = RIDES if short else STAYS
        return state
    leaves = int(np.searchsorted(at, FIXED_SHARE * at[first]))
    joins = min(_joins(flap, points, at, leaves, first), end)
    state[leaves + 1 : joins] = FREE
    state[joins : end + 1] = RIDES
    if not short:
        # Its tip is held by what it goes to.
        state[end + 1 : -1] = FREE
    return state


def _joins(flap: Any, points: np.ndarray, at: np.ndarray, leaves: int, first: int) -> int:
    """Return the first point from ``first`` on that a cord from ``leaves`` reaches untorn.

    Where there is none, the one that it reaches with least strain.
    """
    carried = flap.carried(points)
    spans = [
        np.linalg.norm(carried.place(flap.pose(share)) - points[leaves], axis=1) for share in JUDGED
    ]
    strain = np.max(spans, axis=0) / np.maximum(at - at[leaves], 1e-6)
    strain[: max(first, leaves + 1)] = np.inf
    return int(np.argmax(strain <= max(TAUT, MORE * strain.min())))


def _held(line: np.ndarray, frames: np.ndarray, points: np.ndarray):
    """Return which points of the line each point goes with, how much, and from how far."""
    distance, at = cKDTree(line).query(points, NEAREST)
    weight = 1.0 / (distance**2 + 0.1 * STEP_MM**2)
    weight /= weight.sum(axis=1, keepdims=True)
    offset = np.einsum("nkij,nkj->nki", frames[at], points[:, None] - line[at])
    return at, weight, offset


@njit(**KERNEL)
def _paid_out(x, rest, first, parent, state):
    """Let the free points follow evenly at their links' lengths, in place."""
    drawn_to = x.copy()
    for b in range(len(first) - 1):
        begin, end = first[b], first[b + 1]
        if parent[b] >= 0:
            for c in range(3):
                x[begin, c] = rest[begin, c] + x[parent[b], c] - rest[parent[b], c]
        # Begun as an even share of what its ends move by.
        k = begin
        while k < end:
            if state[k] != FREE:
                k += 1
                continue
            low = k - 1
            while k < end and state[k] == FREE:
                k += 1
            high = min(k, end - 1)
            for n in range(low + 1, high):
                t = (n - low) / (high - low)
                t = t * t * (3.0 - 2.0 * t)
                for c in range(3):
                    x[n, c] = (
                        rest[n, c]
                        + (1.0 - t) * (x[low, c] - rest[low, c])
                        + t * (x[high, c] - rest[high, c])
                    )
        for _ in range(ROUNDS):
            for n in range(begin + 1, end - 1):
                if state[n] != STAYS:
                    for c in range(3):
                        beside = 0.5 * (x[n - 1, c] - rest[n - 1, c] + x[n + 1, c] - rest[n + 1, c])
                        x[n, c] += EVENED * (beside - (x[n, c] - rest[n, c]))
            for n in range(begin + 1, end):
                if state[n] == RIDES:
                    for c in range(3):
                        x[n, c] += DRAWN * (drawn_to[n, c] - x[n, c])
            for sweep in range(2):
                for m in range(begin, end - 1):
                    n = m if sweep == 0 else begin + end - 2 - m
                    wa = 0.0 if n == begin or state[n] == STAYS else 1.0
                    wb = 0.0 if state[n + 1] == STAYS else 1.0
                    if wa + wb == 0.0:
                        continue
                    want = now = 0.0
                    for c in range(3):
                        want += (rest[n + 1, c] - rest[n, c]) ** 2
                        now += (x[n + 1, c] - x[n, c]) ** 2
                    want, now = want**0.5, now**0.5
                    if now < 1e-9:
                        continue
                    f = (now - want) / now / (wa + wb)
                    for c in range(3):
                        d = f * (x[n + 1, c] - x[n, c])
                        x[n, c] += wa * d
                        x[n + 1, c] -= wb * d


@njit(**KERNEL)
def _transported(line, first, begun, out):
    """Carry a frame along each branch with as little twist as may be.

    Row 0 points along the line. The first frame of a branch is that of ``begun`` there, turned
    into the line.
    """
    along = np.empty(3)
    for b in range(len(first) - 1):
        begin, end = first[b], first[b + 1]
        for n in range(begin, end):
            low, high = max(n - 1, begin), min(n + 1, end - 1)
            size = 0.0
            for c in range(3):
                along[c] = line[high, c] - line[low, c]
                size += along[c] ** 2
            size = max(size**0.5, 1e-12)
            before = begun[begin, 1] if n == begin else out[n - 1, 1]
            dot = 0.0
            for c in range(3):
                along[c] /= size
                dot += along[c] * before[c]
            if abs(dot) > 0.99:
                # Nearly along the line: another direction to begin with.
                before = begun[begin, 2] if n == begin else out[n - 1, 2]
                dot = along[0] * before[0] + along[1] * before[1] + along[2] * before[2]
            size = 0.0
            for c in range(3):
                out[n, 0, c] = along[c]
                out[n, 1, c] = before[c] - dot * along[c]
                size += out[n, 1, c] ** 2
            size = max(size**0.5, 1e-12)
            for c in range(3):
                out[n, 1, c] /= size
            out[n, 2, 0] = along[1] * out[n, 1, 2] - along[2] * out[n, 1, 1]
            out[n, 2, 1] = along[2] * out[n, 1, 0] - along[0] * out[n, 1, 2]
            out[n, 2, 2] = along[0] * out[n, 1, 1] - along[1] * out[n, 1, 0]
