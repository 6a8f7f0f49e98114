"""The outline of the body: everything laid so far, hollows bridged, as a smooth field.

Fasciae, fat and skin are laid along the lines of steepest ascent of this field.
Where the model has nothing (the front of the trunk, the neck in front of the
column, the front of arm and thigh) a plain core stands in for the body.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.ndimage import distance_transform_edt, gaussian_filter, gaussian_filter1d, label

from meshes.drape.field import Field
from meshes.soft.workbench import Workbench

_BRIDGE_MM = 11.0
"""Radius of the ball that may not enter a hollow: narrower clefts are bridged."""
_AXILLA_BRIDGE_MM = 7.5
"""The same between arm and chest, so that the axilla stays open."""
_NECK_BRIDGE_MM = 34.0
"""The same at the neck: its fascia roofs the triangle between trapezius and
sternocleidomastoid."""
_SMOOTH_MM = 9.0
_FAR = 1e6

# Core behind which the model is hollow; mm of the median man (common practice, no source).
_NECK = (50.0, 32.0)
_ARM_RADIUS = (34.0, 38.0)
_THIGH = (77.0, 80.0)
_EXPONENT = 2.4


@dataclass(frozen=True, slots=True)
class Outline:
    """Smooth and close outline of a body, left half and a margin over the midline.

    Attributes
    ----------
    smooth : Field
        Signed distance, smoothed; its gradient gives the way to the skin.
    close : Field
        Signed distance to the outline that hugs the parts, clefts bridged.
    core : Core
    """

    smooth: Field
    close: Field
    core: Core


class Core:
    """The plain body that fills what the model leaves hollow.

    Parameters
    ----------
    bench : Workbench
    """

    def __init__(self, bench: Workbench) -> None:
        mark = bench.landmark
        self.scale = scale = bench.frame.scale
        levels = list(bench.frame.vertebrae.values())[::-1]
        self._column = (
            np.array([v.centre[2] for v in levels]),
            np.array([v.centre[1] for v in levels]),
        )
        femur = bench.parts["femur.left"].mesh.bounds
        self.thigh_end = float(femur[0, 2])
        humerus = bench.parts["humerus.left"].mesh.vertices
        head = mark("humerus.left.head_centre")
        below = humerus[humerus[:, 2] < humerus[:, 2].min() + 20.0 * scale]
        along = below.mean(0) - head
        self.arm_head = head
        self.arm_axis = along / np.linalg.norm(along)
        self.arm_length = float(((humerus - head) @ self.arm_axis).max())
        notch, xiphoid = mark("sternum.jugular_notch"), mark("sternum.xiphoid_tip")
        pubis = mark("ilium.left.pubic_tubercle")
        loin = float(bench.frame["L4"].centre[2])
        chest = bench.parts["sternum"].mesh.vertices
        heights = np.linspace(xiphoid[2] + 8.0, notch[2] - 8.0, 5)
        front = [
            float(chest[np.abs(chest[:, 2] - z) < 8.0 * scale, 1].min()) - 3.0 for z in heights
        ]
        z = [pubis[2] - 50 * scale, pubis[2], loin, *heights, notch[2] + 25.0 * scale]
        y = [pubis[1] - 4, pubis[1] - 16.0 * scale, front[0] - 4.0 * scale, *front, front[-1] + 8]
        self._front = PchipInterpolator(z, y)
        self.perineum = float(mark("ilium.left.ischial_spine")[2]) - 30.0 * scale
        self.neck_base = float(notch[2])
        self.neck_top = float(mark("temporal.left.mastoid_tip")[2])
        self.thigh_centre = np.array([85.0 * scale, float(femur[:, 1].mean()) - 4.0 * scale])
        self._half_width = self._measure_half_width(bench)

    def column_y(self, z: np.ndarray) -> np.ndarray:
        """y of the middle of the column at height z, mm."""
        return np.interp(z, *self._column)

    def half_width(self, z: np.ndarray) -> np.ndarray:
        """Half width of the bony and muscular trunk at height z, mm."""
        return np.interp(z, *self._half_width)

    def _measure_half_width(self, bench: Workbench) -> tuple[np.ndarray, np.ndarray]:
        names = ("rib_", "hip_bone", "external_oblique", "internal_oblique", "femur", "gluteus_med")
        points = np.concatenate(
            [p.mesh.vertices for i, p in bench.parts.items() if i.startswith(names)]
        )
        z = np.arange(self.thigh_end, self.neck_base + 1.0, 8.0)
        bins = np.clip(np.searchsorted(z, points[:, 2] + 4.0) - 1, 0, len(z) - 1)
        wide = np.zeros(len(z))
        np.maximum.at(wide, bins, points[:, 0])
        known = wide > 20.0
        wide = np.interp(z, z[known], wide[known])
        # Beside the hip bone and the trochanter nothing but the muscles themselves stands out.
        pelvic = np.clip((self.perineum + 190.0 * self.scale - z) / (60.0 * self.scale), 0.0, 1.0)
        return z, gaussian_filter1d(wide, 2.0, mode="nearest") - 5.0 - 13.0 * pelvic

    def distance(self, p: np.ndarray, arm: bool = True) -> np.ndarray:
        """About the signed distance (n,) of points (n, 3) to the core, with or without arm, mm."""
        s = self.scale
        p = np.asarray(p, float)
        x, y, z = np.abs(p[:, 0]), p[:, 1], p[:, 2]
        middle = self.column_y(z) - 22.0 * s
        # Trunk: the front half of a superellipse, shallow at the back.
        a = self.half_width(z)
        ahead = np.maximum(middle - self._front(np.clip(z, *self._front.x[[0, -1]])), 10.0)
        b = np.where(y < middle, ahead, 34.0 * s)
        r = ((x / a) ** _EXPONENT + (np.abs(y - middle) / b) ** _EXPONENT) ** (1 / _EXPONENT)
        level = (r - 1.0) * np.minimum(a, b)
        beyond = np.maximum(z - self.neck_base, self.perineum - z)
        best = np.maximum(level, beyond)
        # Neck.
        a, b = _NECK[0] * s, _NECK[1] * s
        r = np.hypot(x / a, (y - middle - 2.0 * s) / b)
        ends = np.maximum(z - self.neck_top - 6.0 * s, self.neck_base - 30.0 * s - z)
        best = _smooth_least(best, np.maximum((r - 1.0) * b, ends), 24.0 * s)
        # Arm.
        from_head = np.stack([x, y, z], 1) - self.arm_head
        t = np.clip(from_head @ self.arm_axis, 0.0, self.arm_length + 4.0)
        radius = np.interp(t / self.arm_length, [0.0, 0.7], _ARM_RADIUS) * s
        away = np.linalg.norm(from_head - t[:, None] * self.arm_axis, axis=1)
        past = np.linalg.norm(from_head, axis=1) - self.arm_length - 20.0
        if arm:
            best = np.minimum(best, np.maximum(away - radius, past))
        # Thigh, running up into the hip.
        a, b = _THIGH[0] * s, _THIGH[1] * s
        r = np.hypot((x - self.thigh_centre[0]) / a, (y - self.thigh_centre[1]) / b)
        top = z - (self.perineum + 60.0 * s)
        return _smooth_least(best, np.maximum((r - 1.0) * a, top), 10.0 * s)


def make_outline(bench: Workbench) -> Outline:
    """Outline of everything on the bench.

    Parameters
    ----------
    bench : Workbench

    Returns
    -------
    Outline
    """
    h = 5.0 if bench.full else 7.0
    core = Core(bench)
    boxes = np.array([p.mesh.bounds for p in bench.parts.values()])
    margin = 45.0 + bench.body.fat_lower_mm
    lower = np.array([0.0, core._front(core._front.x).min() - 30.0, core.thigh_end - 40.0])
    upper = boxes[:, 1].max(0) + [margin, margin, 40.0]
    count = np.ceil((upper - lower) / h).astype(int) + 1
    axes = [lower[i] + h * np.arange(count[i]) for i in range(3)]
    points = np.stack(np.meshgrid(*axes, indexing="ij"), -1).reshape(-1, 3)
    parts = np.minimum(bench.field.sample(points), core.distance(points)).reshape(count)
    # What a ball of the bridging radius can reach from outside is outside.
    bridge = _bridge(core, points).reshape(count)
    # The field of the parts knows no distance beyond its band.
    away = distance_transform_edt(parts > 0, sampling=h) - 0.5 * h
    far = np.where(parts < bench.field.band - 1.0, parts, np.maximum(away, parts))
    free, _ = label(far > bridge)
    outside = free == free[-1, -1, -1]
    to_outside = distance_transform_edt(~outside, sampling=h) - 0.5 * h
    closed = np.where(outside, 0.0, to_outside - bridge)
    inside = closed > 0
    away = distance_transform_edt(~inside, sampling=h) - 0.5 * h
    signed = np.where(inside, -closed, away)
    near = np.abs(parts) < bench.field.band - 1.0
    signed = np.where(near, np.minimum(signed, parts), signed)
    smooth = gaussian_filter(signed, _SMOOTH_MM / h, mode=("mirror", "nearest", "nearest"))
    # Between arm and chest the levels draw in, so that those of both sides stay apart.
    gap = core.arm_head + core.arm_length * core.arm_axis - [48.0 * core.scale, 0.0, 0.0]
    away = np.linalg.norm((points - gap) / [1.0, 2.0, 1.4], axis=1) / (48.0 * core.scale)
    smooth += 8.0 * np.exp(-(away**2)).reshape(count)
    return Outline(
        _as_field(smooth, lower, h),
        _as_field(gaussian_filter(signed, 0.5, mode=("mirror", "nearest", "nearest")), lower, h),
        core,
    )  # fmt: skip


def _bridge(core: Core, points: np.ndarray) -> np.ndarray:
    """Radius (n,) of the bridging ball, mm: small beside the arm, large at the neck."""
    middle = core.arm_head + [-10.0 * core.scale, 0.0, -150.0 * core.scale]
    away = np.linalg.norm((points - middle) / [1.0, 2.0, 1.6], axis=1)
    share = np.clip((away / core.scale - 40.0) / 50.0, 0.0, 1.0)
    bridge = _AXILLA_BRIDGE_MM + share * (_BRIDGE_MM - _AXILLA_BRIDGE_MM)
    low = np.clip((points[:, 2] - core.neck_base) / (40.0 * core.scale), 0.0, 1.0)
    high = np.clip((core.neck_top - 10.0 - points[:, 2]) / (30.0 * core.scale), 0.0, 1.0)
    return bridge + low * high * (_NECK_BRIDGE_MM - _BRIDGE_MM)


def _as_field(half: np.ndarray, lower: np.ndarray, h: float, ghosts: int = 4) -> Field:
    """A field of a grid that starts in the median plane, with mirrored nodes beyond it."""
    data = np.concatenate([half[ghosts:0:-1], half]).astype(np.float32)
    origin = lower - [ghosts * h, 0.0, 0.0]
    field = Field(origin, origin + h * (np.array(data.shape) - 1.5), h, band=_FAR)
    field.data = np.ascontiguousarray(data)
    return field


def _smooth_least(a: np.ndarray, b: np.ndarray, width: float) -> np.ndarray:
    share = np.clip(0.5 + 0.5 * (b - a) / width, 0.0, 1.0)
    return share * a + (1 - share) * b - width * share * (1 - share)
