"""The ribs: swept along their courses with head, neck, tubercle, angle and groove."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import PchipInterpolator

from meshes.model import Part
from meshes.skeleton.frame import SkeletonFrame
from meshes.skeleton.piece import BonePiece
from meshes.skeleton.swept import sweep_frames, sweep_mesh
from meshes.skeleton.thorax_shape import PLACES, RibCourse, rib_course, thoracic_solid

_AROUND = {"full": 16, "preview": 8}
# Spacing of the rings near the head and the tubercle, and along the shaft, mm.
_SPACING = {"full": (2.4, 8.0), "preview": (6.0, 19.0)}

_JOINT_GAP_MM = 0.8

# Half height and half thickness of the cross-section at PLACES, mm: a shaft about
# 13 mm high and 7 mm thick (common practice, no source).
_USUAL = (
    (4.9, 4.3, 5.4, 7.0, 6.8, 6.8, 7.0),
    (4.3, 2.9, 3.9, 4.2, 3.3, 3.2, 4.2),
)
_SECTIONS = {
    1: ((4.0, 3.4, 5.4, 5.4, 8.6, 8.6, 9.6), (3.6, 2.9, 4.0, 4.0, 2.7, 2.8, 4.2)),
    2: ((4.4, 3.8, 5.0, 6.0, 6.0, 6.0, 6.6), (4.0, 2.8, 3.7, 3.5, 3.1, 3.1, 4.0)),
    10: ((4.8, 4.2, 5.0, 6.3, 6.2, 6.0, 5.8), (4.2, 2.9, 3.6, 3.6, 3.2, 3.1, 3.6)),
    11: ((4.8, 4.4, 4.8, 6.0, 5.6, 4.8, 2.4), (4.0, 3.1, 3.2, 3.5, 3.1, 2.8, 1.9)),
    12: ((4.5, 4.2, 4.4, 4.4, 5.0, 4.2, 2.0), (3.6, 3.1, 3.0, 3.0, 3.0, 2.6, 1.7)),
}
# How far the outer face looks up (negative: down) at PLACES, degrees: the twist of the shaft.
_TWISTS = {
    1: (30, 34, 42, 42, 72, 72, 58),
    2: (5, 5, 8, 14, 40, 42, 34),
    11: (0, 0, -8, -14, -6, 0, 0),
    12: (0, 0, -4, -4, -2, 0, 0),
}
_USUAL_TWIST = (0, 0, -10, -18, -2, 8, 16)


@dataclass(frozen=True, slots=True, eq=False)
class RibForm:
    """A rib's mesh with what its cartilage continues.

    Attributes
    ----------
    piece : BonePiece
    course : RibCourse
    end : (3,) float
        Middle of the anterior end, mm.
    end_frame : (3, 3) float
        Rows: direction in which the rib runs out, its outer face, its upper border.
    end_half : (2,) float
        Half height and half thickness of the anterior end, mm.
    """

    piece: BonePiece
    course: RibCourse
    end: np.ndarray
    end_frame: np.ndarray
    end_half: np.ndarray


def make_rib(frame: SkeletonFrame, number: int, detail: str) -> RibForm:
    """Build a left rib.

    Parameters
    ----------
    frame : SkeletonFrame
    number : int
        1 to 12.
    detail : {"preview", "full"}

    Returns
    -------
    RibForm
    """
    course = rib_course(frame, number)
    scale = frame.scale
    arcs = _ring_arcs(course, *_SPACING[detail])
    points = course.at(arcs)
    _, out, up = _frames(course, number, arcs)
    tangent = _tangents(course, arcs)
    height, thick = (_along(course, s, arcs) * scale for s in _section(number))
    rings = points[:, None] + _outline(course, number, arcs, height, thick, out, up, detail)
    if number <= 10:
        rings += _tubercle(course, arcs, rings, out, up, scale)
    # The head is a blunt wedge: its two facets meet in a crest opposite the disc.
    rise = np.einsum("kj,j->k", rings[0] - points[0], up[0]) / height[0]
    slope = 1.5 if 2 <= number <= 9 else 0.5
    rings[0] += (slope * np.abs(rise))[:, None] * tangent[0] * scale
    head = points[0] - 1.4 * scale * tangent[0]
    busy = int(np.searchsorted(arcs, course.places["tubercle"] + 14.0 * scale))
    near = _clear_of_column(np.concatenate([rings[:busy].reshape(-1, 3), [head]]), frame, number)
    rings[:busy], head = near[:-1].reshape(busy, -1, 3), near[-1]
    end = (
        points[-1] - 0.3 * scale * tangent[-1]
        if number <= 10
        else (points[-1] + 1.2 * scale * tangent[-1])
    )
    mesh = sweep_mesh(rings, head, end)
    part = Part(
        id=f"rib_{number}.left",
        entry=f"rib_{number}",
        kind="bone",
        stratum=9,
        group="",
        mesh=mesh,
        level=str(number),
        region="thorax",
    )
    landmarks = _landmarks(course, number, arcs, rings, head, end)
    end_frame = np.stack([tangent[-1], out[-1], up[-1]])
    half = np.array([height[-1], thick[-1]])
    return RibForm(BonePiece(part, landmarks), course, points[-1], end_frame, half)


def _section(number: int) -> tuple[tuple[float, ...], tuple[float, ...]]:
    return _SECTIONS.get(number, _USUAL)


def _along(course: RibCourse, values: tuple[float, ...], arcs: np.ndarray) -> np.ndarray:
    """Interpolate values given at PLACES to arc lengths."""
    at = np.array([course.places[name] for name in PLACES])
    kept = np.concatenate([[True], np.diff(at) > 0.5])
    return PchipInterpolator(at[kept], np.asarray(values, float)[kept])(arcs)


def _ring_arcs(course: RibCourse, near: float, far: float) -> np.ndarray:
    """Arc lengths of the rings: close at head, tubercle and angle, wider along the shaft."""
    fine = course.arc
    busy = course.places["tubercle"] + 8.0
    spacing = np.interp(fine, [busy, busy + 25.0], [near, far])
    spacing = np.minimum(spacing, np.interp(course.length - fine, [0.0, 12.0], [near * 1.5, far]))
    steps = np.concatenate([[0.0], np.cumsum(np.diff(fine) / spacing[1:])])
    count = int(np.ceil(steps[-1])) + 1
    return np.interp(np.linspace(0.0, steps[-1], count), steps, fine)


def _tangents(course: RibCourse, arcs: np.ndarray) -> np.ndarray:
    whole = np.gradient(course.points, axis=0)
    tangent = np.stack([np.interp(arcs, course.arc, whole[:, i]) for i in range(3)], axis=1)
    return tangent / np.linalg.norm(tangent, axis=1, keepdims=True)


def _frames(
    course: RibCourse, number: int, arcs: np.ndarray
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Tangent, outer-face and upper-border directions at arc lengths."""
    whole = np.gradient(course.points, axis=0)
    # In plan the outer face is to the left of the way from head to anterior end.
    outward = np.stack([-whole[:, 1], whole[:, 0], np.zeros(len(whole))], axis=1)
    twist = _along(course, _TWISTS.get(number, _USUAL_TWIST), course.arc)
    frames = sweep_frames(course.points, outward, twist)
    taken = []
    for field in frames:
        at = np.stack([np.interp(arcs, course.arc, field[:, i]) for i in range(3)], axis=1)
        taken.append(at / np.linalg.norm(at, axis=1, keepdims=True))
    return taken[0], taken[1], taken[2]


def _outline(
    course: RibCourse,
    number: int,
    arcs: np.ndarray,
    height: np.ndarray,
    thick: np.ndarray,
    out: np.ndarray,
    up: np.ndarray,
    detail: str,
) -> np.ndarray:
    """Offsets (rings, around, 3) of the cross-sections from the middle line, mm.

    Point 0 of a ring is its outer face, a quarter on the upper border, three
    quarters on the lower border.
    """
    around = _AROUND[detail]
    theta = 2.0 * np.pi * np.arange(around) / around
    c, s = np.cos(theta), np.sin(theta)
    n = np.sign(c) * np.abs(c) ** 0.85
    u = np.sign(s) * np.abs(s) ** 0.85
    # Outer face full, inner face flatter, lower border sharper than the upper.
    n = np.where(n < 0, 0.88 * n, n)
    sharp = np.where(u < 0, 1.0 - 0.28 * np.abs(u) ** 2, 1.0)
    shaft = np.clip((arcs - course.places["tubercle"]) / 20.0, 0.0, 1.0)
    shaft *= np.clip((course.length - arcs) / (0.35 * course.length), 0.0, 1.0)
    if number in (1, 12):
        shaft *= 0.0
    # The costal groove: just inside the lower border, behind.
    groove = np.exp(-(((theta - np.radians(232.0)) / np.radians(24.0)) ** 2))
    across = n * (1.0 + shaft[:, None] * (sharp - 1.0)) + 0.62 * shaft[:, None] * groove
    along = np.broadcast_to(u, across.shape) * (
        1.0 + 0.10 * shaft[:, None] * np.where((u < 0) & (n >= -0.3), -u, 0.0)
    )
    return (
        across[:, :, None] * thick[:, None, None] * out[:, None]
        + along[:, :, None] * height[:, None, None] * up[:, None]
    )


def _tubercle(
    course: RibCourse,
    arcs: np.ndarray,
    rings: np.ndarray,
    out: np.ndarray,
    up: np.ndarray,
    scale: float,
) -> np.ndarray:
    """Push (rings, around, 3) that raises the tubercle on the outer face, mm."""
    middle = rings.mean(axis=1, keepdims=True)
    offset = rings - middle
    outer = np.einsum("rkj,rj->rk", offset, out)
    upper = np.einsum("rkj,rj->rk", offset, up)
    size = np.maximum(np.linalg.norm(offset, axis=2), 1e-6)
    facing = np.clip(outer / size, 0.0, None) ** 1.2 * np.where(upper < 0, 1.0, 0.85)
    here = np.exp(-(((arcs - course.places["tubercle"]) / (4.6 * scale)) ** 2))
    return (1.7 * scale * here)[:, None, None] * facing[:, :, None] * out[:, None]


def _clear_of_column(points: np.ndarray, frame: SkeletonFrame, number: int) -> np.ndarray:
    """Move (n, 3) points that come too near the vertebrae to the joint gap."""
    moved = points.copy()
    gap, h = _JOINT_GAP_MM * frame.scale, 0.1
    for level in (number, number - 1) if number >= 2 else (number,):
        vertebra, solid = frame[f"T{level}"], thoracic_solid(frame, level)
        local = vertebra.to_local(moved)
        for _ in range(4):
            distance = solid.distance(local)
            short = distance < gap
            if not short.any():
                break
            p = local[short]
            gradient = np.stack(
                [solid.distance(p + h * e) - solid.distance(p - h * e) for e in np.eye(3)], axis=1
            ) / (2 * h)
            size2 = np.maximum((gradient**2).sum(1), 0.3)
            local[short] += ((gap - distance[short]) / size2)[:, None] * gradient
        moved = vertebra.to_model(local)
    return moved


def _landmarks(
    course: RibCourse,
    number: int,
    arcs: np.ndarray,
    rings: np.ndarray,
    head: np.ndarray,
    end: np.ndarray,
) -> dict[str, np.ndarray]:
    around = rings.shape[1]
    # Rings run from the outer face over the lower border and the inner face to the upper one.
    outer, lower, upper = rings[:, 0], rings[:, around // 4], rings[:, 3 * around // 4]
    where = {name: int(np.argmin(np.abs(arcs - arc))) for name, arc in course.places.items()}
    first = where["tubercle"]
    name = f"rib_{number}.left"
    return {
        f"{name}.head": head,
        f"{name}.neck": outer[max(where["neck"], 1)],
        f"{name}.tubercle": outer[first],
        f"{name}.angle": outer[where["angle"]],
        f"{name}.shaft": outer,
        f"{name}.upper_border": upper[first:],
        f"{name}.lower_border": lower[first:],
        f"{name}.anterior_end": end,
    }
