"""Where a flat cut stands: planes with the axes of their picture. Asks nothing of a model."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.errors import PeelbackError

PLANES = ("transverse", "sagittal", "coronal")
FREE = "free"
TILT_LIMIT_DEG = 90.0
MIDLINE_GAP_MM = 0.25
"""Left and right twins of skin and fascia leave a hair between them at the midline. A sagittal
plane there is moved by this much to the left, so that it cuts them and not the gap."""

PIVOT_MM = (0.0, 0.0, 240.0)
"""A plane stands on this point (about the middle of the trunk) but for the axis along which it
is moved, so that tilting it turns it about the body and not about the sacrum."""


@dataclass(frozen=True, slots=True, eq=False)
class CutPlane:
    """A plane with the picture axes on it.

    Attributes
    ----------
    origin : (3,) float
        mm LPS.
    right, up : (3,) float
        Unit vectors of the picture's axes. The viewer looks along ``cross(up, right)``.
    """

    origin: np.ndarray
    right: np.ndarray
    up: np.ndarray

    @property
    def normal(self) -> np.ndarray:
        """Unit normal, towards the viewer."""
        return np.cross(self.right, self.up)

    def flat(self, points: np.ndarray) -> np.ndarray:
        """Return (n, 2) picture coordinates of (n, 3) points, mm."""
        away = np.asarray(points, float) - self.origin
        return np.column_stack([away @ self.right, away @ self.up])


def cut_plane(kind: str, origin) -> CutPlane:
    """Return a plane with the reading direction of a dissection: the subject's left on the left.

    Transverse cuts are seen from the feet with the back up, as the donor lies
    prone; sagittal cuts from the subject's left, with the back to the right of
    the picture; coronal cuts from behind.
    """
    origin = np.asarray(origin, float)
    axes = {
        "transverse": ((-1, 0, 0), (0, 1, 0)),
        "sagittal": ((0, 1, 0), (0, 0, 1)),
        "coronal": ((-1, 0, 0), (0, 0, 1)),
    }
    if kind not in axes:
        raise PeelbackError(f"plane must be one of {', '.join(PLANES)}, got {kind!r}")
    right, up = axes[kind]
    return CutPlane(origin, np.array(right, float), np.array(up, float))


def placed_plane(
    kind: str, position_mm: float, tilt_deg: tuple[float, float] = (0.0, 0.0)
) -> CutPlane:
    """Return a plane by where it stands along its own axis.

    Parameters
    ----------
    kind : {"transverse", "sagittal", "coronal", "free"}
        A free plane is a transverse one that is tilted.
    position_mm : float
        z of a transverse or free plane, x of a sagittal, y of a coronal one, mm LPS.
    tilt_deg : (float, float)
        Turn about the picture's horizontal axis, then about its vertical one; within ±90.

    Raises
    ------
    PeelbackError
        Unknown kind, a tilt beyond 90 degrees, or a number that is none.
    """
    if kind not in (*PLANES, FREE):
        raise PeelbackError(f"plane must be one of {', '.join((*PLANES, FREE))}, got {kind!r}")
    numbers = (float(position_mm), *(float(t) for t in tilt_deg))
    if not np.isfinite(numbers).all():
        raise PeelbackError("position and tilt of a section must be numbers")
    if max(abs(t) for t in numbers[1:]) > TILT_LIMIT_DEG:
        raise PeelbackError(f"tilt must lie in -90–90 degrees, got {max(numbers[1:], key=abs):g}")
    axis = {"sagittal": 0, "coronal": 1}.get(kind, 2)
    origin = np.array(PIVOT_MM)
    origin[axis] = numbers[0]
    if kind == "sagittal" and abs(numbers[0]) < MIDLINE_GAP_MM:
        origin[axis] = MIDLINE_GAP_MM
    plane = cut_plane("transverse" if kind == FREE else kind, origin)
    nod, lean = np.radians(numbers[1:])
    right, up, towards = plane.right, plane.up, plane.normal
    up, towards = np.cos(nod) * up + np.sin(nod) * towards, np.cos(nod) * towards - np.sin(nod) * up
    right = np.cos(lean) * right + np.sin(lean) * towards
    return CutPlane(origin, right, up)


def plane_through(origin, normal) -> CutPlane:
    """Return a plane by its normal, with the head (or else the back) upward in the picture."""
    normal = np.asarray(normal, float)
    length = float(np.linalg.norm(normal))
    if not length > 0:
        raise PeelbackError(f"normal must not be zero, got {normal.tolist()}")
    normal = normal / length
    upward = np.array([0.0, 0.0, 1.0]) if abs(normal[2]) < 0.9 else np.array([0.0, 1.0, 0.0])
    right = np.cross(upward, normal)
    right /= np.linalg.norm(right)
    return CutPlane(np.asarray(origin, float), right, np.cross(normal, right))
