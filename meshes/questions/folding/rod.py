"""A belly as a rod: a middle line that bends, and flesh carried beside it.

A sheet bends about a line; a belly that is as thick as it is broad bends like a sheaf of
reeds. Every point keeps its offset from the middle line, across and in height, and its
length along its own reed: where the line bends the reeds slide past one another, as the
pages of a book do, whichever way it bends. Nothing is stretched, and the free end comes
out slanted.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numba import njit
from scipy.ndimage import gaussian_filter1d
from scipy.spatial import cKDTree

from meshes.drape.distance import KERNEL
from meshes.shapes.polyline import resample

STATION_MM = 2.0
REED_STEP_MM = 2.0
FOOT_ROUNDS = 6
SEARCHED = 3
BEYOND = 12.0
"""So many stations past its end a rod goes straight on."""

NEAREST = 8
HINGE_STATIONS = 2.0
SLOPE_REACH, MOST_SLOPE = 2, 0.9
MOST_AHEAD = 4.0
SOFT_MM = 0.8
"""A point so near to a reed slides wholly with it; between reeds it slides with their mean."""


@dataclass(frozen=True, slots=True, eq=False)
class Rod:
    """A middle line with a frame at every station.

    Attributes
    ----------
    centre : (n, 3) float
        mm; stations evenly spaced, station 0 at the end that stays.
    frame : (n, 3, 3) float
        Rows: unit vectors along, across and to the superficial side.
    """

    centre: np.ndarray
    frame: np.ndarray

    @property
    def step_mm(self) -> float:
        """Distance of two stations, mm."""
        return float(np.linalg.norm(np.diff(self.centre, axis=0), axis=1).mean())

    def place(self, station: np.ndarray, across: np.ndarray, height: np.ndarray) -> np.ndarray:
        """Return points (n, 3) at real-valued stations and offsets, mm."""
        centre, frame = _interpolated(self.centre, self.frame, np.asarray(station, float))
        return centre + across[:, None] * frame[:, 1] + height[:, None] * frame[:, 2]


def rod_along(
    line: np.ndarray, side: np.ndarray, outward: np.ndarray, smooth_mm: float = 6.0
) -> Rod:
    """Lay a rod along a line.

    Parameters
    ----------
    line : (k, 3) float
        From the end that stays, mm.
    side : (k, 3) float
        Roughly across.
    outward : (3,) or (k, 3) float
        Roughly to the superficial side; decides the sign of the frame.
    """
    gone = np.append(0.0, np.linalg.norm(np.diff(line, axis=0), axis=1).cumsum())
    count = max(int(round(gone[-1] / STATION_MM)), 6) + 1
    at = np.linspace(0.0, gone[-1], count)

    def even(values):
        values = np.broadcast_to(values, line.shape)
        even = np.column_stack([np.interp(at, gone, values[:, c]) for c in range(3)])
        return gaussian_filter1d(even, smooth_mm / STATION_MM, axis=0, mode="nearest")

    centre = even(line)
    # Smoothing draws the ends in: they are put back where they were.
    centre += (
        line[0]
        - centre[0]
        + np.linspace(0, 1, count)[:, None] * (line[-1] - centre[-1] - line[0] + centre[0])
    )
    return Rod(centre, frames_of(centre, even(side), even(outward)))


def frames_of(centre: np.ndarray, side: np.ndarray, outward: np.ndarray) -> np.ndarray:
    """Return frames (n, 3, 3) of a line, across as near to ``side`` as may be."""
    along = np.gradient(centre, axis=0)
    along /= np.linalg.norm(along, axis=1, keepdims=True)
    across = side - (side * along).sum(axis=1, keepdims=True) * along
    across /= np.maximum(np.linalg.norm(across, axis=1, keepdims=True), 1e-9)
    height = np.cross(along, across)
    height *= 1.0 if (height * outward).sum() >= 0 else -1.0
    return np.ascontiguousarray(np.stack([along, across, height], axis=1))


@dataclass(frozen=True, slots=True, eq=False)
class Reeds:
    """Fibre lines within a rod: what keeps its length when the rod bends.

    Attributes
    ----------
    points : (n, 3) float
        Of all lines one after the other, each from the end that stays, mm at rest.
    first : (k + 1,) int
        Where each line begins.
    links : (n,) float
        Length of the link from the point before, mm; 0 for the first of a line.
    station, across, height : (n,) float
        Where they lie in the rod at rest.
    """

    points: np.ndarray
    first: np.ndarray
    links: np.ndarray
    station: np.ndarray
    across: np.ndarray
    height: np.ndarray

    def stations(self, rod: Rod) -> np.ndarray:
        """Return the stations (n,) that the points reach in another pose of the rod."""
        out = np.empty(len(self.links))
        _walk(
            *(rod.centre, rod.frame, self.first, self.links),
            *(self.station, self.across, self.height, out),
        )
        return out

    def lengths(self, rod: Rod) -> np.ndarray:
        """Return the length (k,) of each line in a pose of the rod, mm."""
        points = rod.place(self.stations(rod), self.across, self.height)
        links = np.append(0.0, np.linalg.norm(np.diff(points, axis=0), axis=1))
        links[self.first[:-1]] = 0.0
        return np.add.reduceat(links, self.first[:-1])

    def slope(self, slid: np.ndarray) -> np.ndarray:
        """Return by how much a value (n,) of the points grows with each station along a reed."""
        out = np.zeros(len(slid))
        for begin, end in zip(self.first[:-1], self.first[1:], strict=True):
            # Over a few points: what one of them jumps is no slope.
            reach = min(SLOPE_REACH, end - begin - 1)
            at = np.arange(begin, end)
            low, high = np.maximum(at - reach, begin), np.minimum(at + reach, end - 1)
            run = np.maximum(self.station[high] - self.station[low], 0.5)
            out[at] = (slid[high] - slid[low]) / run
        return np.clip(out, -MOST_SLOPE, MOST_SLOPE)


def reeds_of(rod: Rod, fibres: Sequence[np.ndarray]) -> Reeds:
    """Lay fibre lines (each (m, 3), mm) into a rod at rest, from its first station on."""
    lines = []
    for fibre in fibres:
        length = np.linalg.norm(np.diff(fibre, axis=0), axis=1).sum()
        line = resample(fibre, max(int(length / REED_STEP_MM), 2) + 1)
        station = _feet(rod, line)
        if station[0] > station[-1]:
            line, station = line[::-1], station[::-1]
        # What lies before the first station stays; the walk begins beyond it.
        inside = np.flatnonzero(station > 0.0)
        if len(inside) >= 2:
            lines.append(line[int(inside[0]) :])
    points = np.concatenate(lines)
    links = np.concatenate(
        [np.append(0.0, np.linalg.norm(np.diff(line, axis=0), axis=1)) for line in lines]
    )
    first = np.cumsum([0] + [len(line) for line in lines])
    station, offset = within(rod, points)
    across, height = (np.ascontiguousarray(offset[:, k]) for k in (1, 2))
    return Reeds(points, first, links, station, across, height)


def within(rod: Rod, points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Return each point's station (n,) and its offset (n, 3) in the frame there."""
    station = _feet(rod, points)
    centre, frame = _interpolated(rod.centre, rod.frame, station)
    return station, np.einsum("nij,nj->ni", frame, points - centre)


class RodCarried:
    """Points carried by a rod and the reeds in it.

    Parameters
    ----------
    rod : Rod
        At rest.
    reeds : Reeds
    points : (n, 3) float
        mm.
    """

    def __init__(self, rod: Rod, reeds: Reeds, points: np.ndarray) -> None:
        points = np.ascontiguousarray(np.asarray(points, float).reshape(-1, 3))
        self.rest, self.reeds, self._points = rod, reeds, points
        self.column, self._offset = within(rod, points)
        count = min(NEAREST, len(reeds.points))
        distance, near = cKDTree(reeds.points).query(points, count)
        self._near = near.reshape(-1, count)
        weight = 1.0 / (distance.reshape(-1, count) ** 2 + SOFT_MM**2) ** 2
        self._weight = weight / weight.sum(axis=1, keepdims=True)
        ahead = self.column[:, None] - reeds.station[self._near]
        self._ahead = np.clip(ahead, -MOST_AHEAD, MOST_AHEAD)

    def place(self, rod: Rod) -> np.ndarray:
        """Return the points (n, 3) for another pose of the rod, mm."""
        if rod is self.rest:
            return self._points.copy()
        reeds = self.reeds
        slid = reeds.stations(rod) - reeds.station
        # Each reed says how far it has slid here, not at its own nearest point.
        here = slid[self._near] + reeds.slope(slid)[self._near] * self._ahead
        # By the hinge nothing slides yet.
        begun = np.clip(self.column / HINGE_STATIONS, 0.0, 1.0)
        station = self.column + begun * (self._weight * here).sum(axis=1)
        # What lies before the first station stays.
        station = np.where(self.column > 0.0, np.maximum(station, 0.0), 0.0)
        centre, frame = _interpolated(rod.centre, rod.frame, station)
        return centre + np.einsum("nij,ni->nj", frame, self._offset)


def _feet(rod: Rod, points: np.ndarray) -> np.ndarray:
    """Return the station (n,) whose plane each point lies in, as real numbers."""
    last = len(rod.centre) - 1
    station = np.asarray(cKDTree(rod.centre).query(points)[1], float)
    step = rod.step_mm
    for _ in range(FOOT_ROUNDS):
        centre, frame = _interpolated(rod.centre, rod.frame, station)
        ahead = ((points - centre) * frame[:, 0]).sum(axis=1) / step
        station = np.clip(station + np.clip(0.7 * ahead, -SEARCHED, SEARCHED), 0.0, last + BEYOND)
    return station


def _interpolated(centre: np.ndarray, frame: np.ndarray, station: np.ndarray):
    """Return places (n, 3) and frames (n, 3, 3) at real-valued stations."""
    low = np.clip(station.astype(int), 0, len(centre) - 2)
    beyond = np.maximum(station - low - 1.0, 0.0)[:, None]
    t = np.clip(station - low, 0.0, 1.0)[:, None]
    a, b = centre[low], centre[low + 1]
    length = np.linalg.norm(b - a, axis=1, keepdims=True)
    u, v = length * frame[low, 0], length * frame[low + 1, 0]
    # A cubic with the frames' own directions: a bend has no corners.
    place = (
        (2 * t**3 - 3 * t**2 + 1) * a
        + (t**3 - 2 * t**2 + t) * u
        + (3 * t**2 - 2 * t**3) * b
        + (t**3 - t**2) * v
        + beyond * v
    )
    mixed = (1 - t[:, :, None]) * frame[low] + t[:, :, None] * frame[low + 1]
    mixed[:, 0] /= np.linalg.norm(mixed[:, 0], axis=1, keepdims=True)
    mixed[:, 1] -= (mixed[:, 1] * mixed[:, 0]).sum(axis=1, keepdims=True) * mixed[:, 0]
    mixed[:, 1] /= np.linalg.norm(mixed[:, 1], axis=1, keepdims=True)
    turned = np.cross(mixed[:, 0], mixed[:, 1])
    mixed[:, 2] = turned * np.sign((turned * mixed[:, 2]).sum(axis=1, keepdims=True))
    return place, mixed


@njit(inline="always", **KERNEL)
def _at(centre, frame, station, across, height, out):
    """Place of a point of the rod; straight on beyond the last station."""
    last = len(centre) - 2
    j = min(max(int(station), 0), last)
    t = station - j
    length = 0.0
    for c in range(3):
        length += (centre[j + 1, c] - centre[j, c]) ** 2
    length = math.sqrt(length)
    if t <= 1.0:
        a, b = 2 * t**3 - 3 * t**2 + 1, t**3 - 2 * t**2 + t
        d, e = 3 * t**2 - 2 * t**3, t**3 - t**2
        w = t
    else:
        a, b, d, e = 0.0, 0.0, 1.0, t - 1.0
        w = 1.0
    for c in range(3):
        out[c] = (
            a * centre[j, c]
            + b * length * frame[j, 0, c]
            + d * centre[j + 1, c]
            + e * length * frame[j + 1, 0, c]
            + across * ((1 - w) * frame[j, 1, c] + w * frame[j + 1, 1, c])
            + height * ((1 - w) * frame[j, 2, c] + w * frame[j + 1, 2, c])
        )


@njit(**KERNEL)
def _walk(centre, frame, first, links, station, across, height, out):
    """Find where each point of a reed comes to lie: a link further than the one before."""
    p, q = np.empty(3), np.empty(3)
    step = 0.0
    for c in range(3):
        step += (centre[1, c] - centre[0, c]) ** 2
    step = math.sqrt(step)
    for k in range(len(first) - 1):
        n = first[k]
        out[n] = station[n]
        _at(centre, frame, out[n], across[n], height[n], p)
        for n in range(first[k] + 1, first[k + 1]):
            low, high = out[n - 1], out[n - 1] + 4.0 * links[n] / step
            # The nearest place ahead that lies as far off as the link is long.
            for _ in range(24):
                mid = 0.5 * (low + high)
                _at(centre, frame, mid, across[n], height[n], q)
                d = 0.0
                for c in range(3):
                    d += (q[c] - p[c]) ** 2
                if d < links[n] ** 2:
                    low = mid
                else:
                    high = mid
            out[n] = 0.5 * (low + high)
            _at(centre, frame, out[n], across[n], height[n], p)
