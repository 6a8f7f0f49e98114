"""The costal cartilages, from the ends of ribs 1 to 10 to the sternum or each other."""

from __future__ import annotations

import numpy as np

from meshes.model import Part
from meshes.skeleton.frame import SkeletonFrame
from meshes.skeleton.piece import BonePiece
from meshes.skeleton.rib import RibForm
from meshes.skeleton.sternum import SternumForm
from meshes.skeleton.swept import sweep_frames, sweep_mesh

_RINGS = {"full": 20, "preview": 9}
_AROUND = {"full": 14, "preview": 8}
_GAP = 0.25
_STERNAL_GAP = 0.5
# Half height and half thickness at the medial end, mm; lengths of the handles with
# which the cartilage leaves the rib and reaches its other end, as shares of the span.
_MEDIAL = {
    1: (5.0, 4.0), 2: (5.0, 4.2), 3: (4.8, 4.0), 4: (4.6, 3.9), 5: (4.4, 3.8),
    6: (4.0, 3.6), 7: (3.8, 3.4), 8: (3.2, 3.0), 9: (3.0, 2.8), 10: (2.6, 2.6),
}  # fmt: skip
_HANDLES = {
    1: (0.4, 0.35), 2: (0.35, 0.35), 3: (0.35, 0.35), 4: (0.4, 0.35), 5: (0.45, 0.35),
    6: (0.55, 0.40), 7: (0.55, 0.45), 8: (0.45, 0.40), 9: (0.40, 0.35), 10: (0.35, 0.30),
}  # fmt: skip
# Share of the cartilage above at which the eighth to tenth join it.
_JOINS = {8: 0.60, 9: 0.48, 10: 0.42}


def make_cartilages(
    frame: SkeletonFrame, ribs: dict[int, RibForm], sternum: SternumForm, detail: str
) -> list[BonePiece]:
    """Build the left costal cartilages 1 to 10.

    Parameters
    ----------
    frame : SkeletonFrame
    ribs : dict of int to RibForm
    sternum : SternumForm
    detail : {"preview", "full"}

    Returns
    -------
    list of BonePiece
    """
    pieces = []
    above: tuple[np.ndarray, np.ndarray, np.ndarray] | None = None
    for number in range(1, 11):
        rib = ribs[number]
        half = np.array(_MEDIAL[number]) * frame.scale
        if number <= 7:
            notch = sternum.notches[number]
            target = notch + [_GAP, 0.0, 0.0]
            approach = np.array([-1.0, -0.12, 0.0 if number <= 2 else 0.05 * (number - 1)])
        else:
            points, _, heights = above
            place = int(round(_JOINS[number] * (len(points) - 1)))
            approach = np.gradient(points, axis=0)[place]
            down = np.array([0.0, 0.0, -1.0])
            target = points[place] + (heights[place] + half[0] + 2 * _GAP) * _across(down, approach)
        approach = approach / np.linalg.norm(approach)
        points = _course(rib, target, approach, _HANDLES[number], _RINGS[detail])
        rings, heights = _rings(points, rib, half, _AROUND[detail])
        if number <= 7:
            # Draw back until the end face clears the notch, then let its middle fill it.
            for _ in range(4):
                short = _STERNAL_GAP - sternum.solid.distance(rings[-2:].reshape(-1, 3)).min()
                if abs(short) < 0.05:
                    break
                target = target - short * approach
                points = _course(rib, target, approach, _HANDLES[number], _RINGS[detail])
                rings, heights = _rings(points, rib, half, _AROUND[detail])
            room = sternum.solid.distance(points[-1:])[0] - _STERNAL_GAP
            tip = points[-1] + np.clip(room, 0.1, 2.0) * approach
        else:
            tip = points[-1] + 0.8 * half[1] * approach
        mesh = sweep_mesh(rings, points[0], tip)
        name = f"costal_cartilage_{number}.left"
        part = Part(
            name, "costal_cartilage", "cartilage", 9, "", mesh, level=str(number), region="thorax"
        )
        pieces.append(BonePiece(part, {f"{name}.medial_end": tip}))
        above = (points, rings, heights)
    return pieces


def _across(direction: np.ndarray, axis: np.ndarray) -> np.ndarray:
    axis = axis / np.linalg.norm(axis)
    across = direction - np.dot(direction, axis) * axis
    return across / np.linalg.norm(across)


def _course(
    rib: RibForm, target: np.ndarray, approach: np.ndarray, handles: tuple[float, float], count: int
) -> np.ndarray:
    """Bezier curve from the rib's end to the target, (count, 3)."""
    start = rib.end + _GAP * rib.end_frame[0]
    span = np.linalg.norm(target - start)
    a = start + handles[0] * span * rib.end_frame[0]
    b = target - handles[1] * span * approach
    t = np.linspace(0.0, 1.0, count)[:, None]
    return (1 - t) ** 3 * start + 3 * t * (1 - t) ** 2 * a + 3 * t**2 * (1 - t) * b + t**3 * target


def _rings(
    points: np.ndarray, rib: RibForm, half: np.ndarray, around: int
) -> tuple[np.ndarray, np.ndarray]:
    """Elliptical rings (n, around, 3) and their half heights (n,)."""
    share = np.linspace(0.0, 1.0, len(points))
    forward = np.array([0.0, -1.0, 0.0])
    fade = np.clip(share / 0.5, 0.0, 1.0)[:, None]
    outward = (1 - fade) * rib.end_frame[1] + fade * forward
    _, out, up = sweep_frames(points, outward)
    # The first ring lies in the plane of the rib's end, whose outline it continues.
    out[0], up[0] = rib.end_frame[1], rib.end_frame[2]
    ease = share**1.3
    height = (1 - ease) * rib.end_half[0] + ease * half[0]
    thick = (1 - ease) * rib.end_half[1] + ease * half[1]
    theta = 2 * np.pi * np.arange(around) / around
    n, u = np.cos(theta), np.sin(theta)
    n = np.sign(n) * np.abs(n) ** 0.9
    u = np.sign(u) * np.abs(u) ** 0.9
    rings = (
        points[:, None]
        + n[None, :, None] * thick[:, None, None] * out[:, None]
        + u[None, :, None] * height[:, None, None] * up[:, None]
    )
    return rings, height
