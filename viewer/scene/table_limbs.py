"""Shoulder blades and arms as they lie on the table. No VTK, no Qt.

A donor on the chest lets the shoulders sink forward and the arms beside the
trunk come to rest: the shoulder blade turns a little round the chest with the
collar bone, the arm hangs towards the table. Bones move rigidly; what lies
between girdle and trunk follows by its distance from either, on a grid. Angles
are common practice, no source. Only the drawing moves: what is asked of the
model (layers, probe, sections) is answered for the standing body.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import map_coordinates
from scipy.spatial import cKDTree
from scipy.spatial.transform import Rotation

BLADE_TURN_DEG = 5.0
"""Shoulder blade round the chest, forward: about 10 mm at its inner border."""

ARM_SAG_DEG = 16.0
"""Arm forward from the hanging one, until it rests on the table beside the trunk."""

GRID_MM = 10.0
THINNED_MM = 5.0
LEAST_MM = 0.3
"""What moves less is left where it is."""

REACH_MM = 90.0
NEAR_MM = 4.0
POWER = 3.0
GIRDLE = ("scapula", "clavicle", "humerus")
TRUNK_KINDS = ("bone", "cartilage")

Motion = Callable[[np.ndarray], np.ndarray]


@dataclass(frozen=True, slots=True, eq=False)
class _Field:
    """How far every place of a box goes, mm: (3, nx, ny, nz) at GRID_MM from ``low``."""

    low: np.ndarray
    shift: np.ndarray

    def at(self, points: np.ndarray) -> np.ndarray:
        """Return (n, 3) mm, nought outside the box."""
        places = (points - self.low).T / GRID_MM
        return np.stack(
            [
                map_coordinates(axis, places, order=1, mode="constant", cval=0.0)
                for axis in self.shift
            ],
            axis=1,
        )


def _thinned(points: np.ndarray) -> np.ndarray:
    """Return one point of each small cube that holds any."""
    _, first = np.unique(np.floor(points / THINNED_MM).astype(int), axis=0, return_index=True)
    return points[first]


def _rotated(points: np.ndarray, centre: np.ndarray, rotation: Rotation) -> np.ndarray:
    return rotation.apply(points - centre) + centre


class Limbs:
    """Where everything of a body goes when the limbs lie as on the table.

    Parameters
    ----------
    points : mapping of part id to (n, 3) float
        Vertices of the whole body in its standing place, mm (a coarse mesh will do).
    kinds : mapping of part id to str
    """

    def __init__(self, points: Mapping[str, np.ndarray], kinds: Mapping[str, str]) -> None:
        self._bones: dict[str, Motion] = {}
        self._fields: list[_Field] = []
        self._fixed = frozenset(
            name
            for name, kind in kinds.items()
            if kind in TRUNK_KINDS and name.split(".")[0] not in GIRDLE
        )
        for side in ("left", "right"):
            names = [f"{bone}.{side}" for bone in GIRDLE]
            if all(name in points for name in names):
                self._add_side(
                    side, {n: np.asarray(points[n], float) for n in names}, points, kinds
                )

    def __bool__(self) -> bool:
        return bool(self._bones)

    def moved(self, name: str, points: np.ndarray) -> np.ndarray:
        """Return where the points of a part go, (n, 3) mm."""
        points = np.asarray(points, float)
        if name in self._bones:
            return self._bones[name](points)
        if name in self._fixed:
            return points
        return points + self.shift(points)

    def shift(self, points: np.ndarray) -> np.ndarray:
        """Return how far places between the bones go, (n, 3) mm."""
        points = np.asarray(points, float).reshape(-1, 3)
        answer = np.zeros_like(points)
        for field in self._fields:
            answer += field.at(points)
        return answer

    def back(self, name: str, point: np.ndarray) -> np.ndarray:
        """Return the standing place of a point that is seen on the table, (3,) mm."""
        point = np.asarray(point, float)
        found = point.copy()
        for _ in range(6):
            found += point - self.moved(name, found[None])[0]
        return found

    def touches(self, name: str, points: np.ndarray) -> bool:
        """Tell whether any of a part's points moves so far that it is seen."""
        if name in self._bones or name in self._fixed:
            return name in self._bones
        low, high = np.min(points, axis=0), np.max(points, axis=0)
        for field in self._fields:
            top = field.low + GRID_MM * (np.array(field.shift.shape[1:]) - 1)
            if (low <= top).all() and (high >= field.low).all():
                some = field.at(np.asarray(points, float)[:: max(len(points) // 400, 1)])
                if np.abs(some).max() > LEAST_MM:
                    return True
        return False

    def _add_side(self, side, girdle, points, kinds) -> None:
        sign = 1.0 if side == "left" else -1.0
        others = {n: np.asarray(points[n], float) for n in self._fixed if n in points}
        trunk = np.concatenate(list(others.values()))
        blade, collar, arm = (girdle[f"{bone}.{side}"] for bone in GIRDLE)
        ribs = [p for name, p in others.items() if name.startswith("rib")]
        chest = np.concatenate(ribs) if ribs else trunk
        axis = np.array([0.0, (chest[:, 1].min() + chest[:, 1].max()) / 2, 0.0])
        # Backward (+y) turns outward on either side.
        round_chest = Rotation.from_rotvec([0, 0, -sign * np.radians(BLADE_TURN_DEG)])

        def blade_goes(p: np.ndarray) -> np.ndarray:
            return _rotated(p, axis, round_chest)

        head = arm[arm[:, 2] > arm[:, 2].max() - 35.0].mean(axis=0)
        sag = Rotation.from_rotvec([-np.radians(ARM_SAG_DEG), 0, 0])

        def arm_goes(p: np.ndarray) -> np.ndarray:
            return blade_goes(_rotated(p, head, sag))

        inner = collar[np.abs(collar[:, 0]) < np.abs(collar[:, 0]).min() + 12.0].mean(axis=0)
        outer = collar[np.abs(collar[:, 0]) > np.abs(collar[:, 0]).max() - 12.0].mean(axis=0)
        swing, _ = Rotation.align_vectors([blade_goes(outer[None])[0] - inner], [outer - inner])

        def collar_goes(p: np.ndarray) -> np.ndarray:
            return _rotated(p, inner, swing)

        motions = {"scapula": blade_goes, "clavicle": collar_goes, "humerus": arm_goes}
        for bone, motion in motions.items():
            self._bones[f"{bone}.{side}"] = motion
        everything = np.concatenate([blade, collar, arm])
        low, high = everything.min(axis=0) - REACH_MM, everything.max(axis=0) + REACH_MM
        # Never across the midline: what lies there belongs to the trunk.
        low[0], high[0] = (max(low[0], 0.0), high[0]) if sign > 0 else (low[0], min(high[0], 0.0))
        counts = np.ceil((high - low) / GRID_MM).astype(int) + 1
        nodes = np.stack(
            np.meshgrid(*(np.arange(n) for n in counts), indexing="ij"), axis=-1
        ).reshape(-1, 3)
        nodes = low + GRID_MM * nodes
        near = np.all((trunk > low - REACH_MM) & (trunk < high + REACH_MM), axis=1)
        sets = (trunk[near] if near.any() else trunk, blade, collar, arm)
        weights = np.stack(
            [
                (cKDTree(_thinned(bone)).query(nodes, eps=0.15)[0] + NEAR_MM) ** -POWER
                for bone in sets
            ],
            axis=1,
        )
        weights /= weights.sum(axis=1, keepdims=True)
        shift = sum(
            weights[:, [k]] * (motion(nodes) - nodes)
            for k, motion in enumerate((blade_goes, collar_goes, arm_goes), start=1)
        )
        self._fields.append(
            _Field(low, np.ascontiguousarray(shift.T.reshape(3, *counts), np.float32))
        )
