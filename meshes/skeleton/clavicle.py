"""The left clavicle, swept between the sternum and the acromion.

Mean length of men 150 mm, women 138 mm (osteology handbooks, from memory);
form: common practice.
"""

from __future__ import annotations

import numpy as np
import trimesh
from scipy.interpolate import PchipInterpolator

from meshes.shapes.plate import DistanceGrid
from meshes.shapes.solid import Solid
from meshes.skeleton.piece import snap_to_surface

_TRIANGLES = {"full": 2600, "preview": 500}
_SPACING = {"full": 1.3, "preview": 1.6}

# Along the chord: fraction, forward bow and rise as fractions of the length,
# half breadth (front to back) and half height, mm at a length of 150 mm.
_COURSE = np.array(
    [
        (0.0, 0.000, 0.000, 9.5, 10.5),
        (0.06, 0.026, 0.020, 9.0, 9.4),
        (0.16, 0.064, 0.062, 7.2, 7.2),
        (0.32, 0.092, 0.092, 6.2, 6.3),
        (0.48, 0.068, 0.084, 6.0, 6.0),
        (0.62, 0.008, 0.060, 6.8, 5.4),
        (0.76, -0.050, 0.036, 8.6, 4.9),
        (0.90, -0.046, 0.014, 10.4, 4.6),
        (1.0, 0.000, 0.000, 9.6, 4.4),
    ]
)


def _course_between(start: float, end: float, count: int) -> np.ndarray:
    """Rows of the course at even steps between two fractions of the chord, (count, 5)."""
    along = np.linspace(start, end, count)
    rest = PchipInterpolator(_COURSE[:, 0], _COURSE[:, 1:])(along)
    return np.column_stack([along, rest])


def clavicle(
    sternal: np.ndarray, acromial: np.ndarray, detail: str
) -> tuple[trimesh.Trimesh, dict[str, np.ndarray]]:
    """Contour the clavicle between the middles of its two joint faces.

    Parameters
    ----------
    sternal, acromial : (3,) float
        Middles of the ends, model axes, mm.
    detail : {"preview", "full"}

    Returns
    -------
    mesh : trimesh.Trimesh
    landmarks : dict of str to ndarray
        Names without ``clavicle.left.``; on the mesh.
    """
    sternal, acromial = np.asarray(sternal, float), np.asarray(acromial, float)
    chord = acromial - sternal
    length = float(np.linalg.norm(chord))
    lateral = chord / length
    up = np.array([0.0, 0.0, 1.0]) - lateral[2] * lateral
    up /= np.linalg.norm(up)
    # Right, forward and up of the chord: lateral x up points backwards on the left side.
    back = np.cross(up, lateral)
    size = length / 150.0
    # The blades' rounded ends reach past their axis: the axis stops short by as much.
    course = _course_between(7.0 * size / length, 1.0 - 3.5 * size / length, 18)
    line = (
        sternal
        + length * course[:, :1] * lateral
        - length * course[:, 1:2] * back
        + length * course[:, 2:3] * up
    )
    widths, heights = course[:, 3] * size, course[:, 4] * size
    solid = Solid()
    for i in range(len(line) - 1):
        solid.blade(
            line[i], line[i + 1], back, widths[i : i + 2], heights[i : i + 2],
            blend=0.0, power=2.4,
        )  # fmt: skip
    # Conoid tubercle and trapezoid line below the lateral third; the costal impression medially.
    at = line[int(0.74 * len(line))]
    solid.ellipsoid(at + (4.6 * back - 3.6 * up) * size, np.array([6.0, 3.6, 3.2]) * size,
                    np.stack([lateral, back, up]), blend=3.0 * size)  # fmt: skip
    at = line[int(0.16 * len(line))]
    solid.ellipsoid(at - 9.6 * size * up, np.array([11.0, 4.0, 3.4]) * size,
                    np.stack([lateral, back, up]), blend=2.5, operation="subtract")  # fmt: skip
    # Flat joint faces.
    solid.plane(sternal, -lateral, blend=3.0)
    solid.plane(acromial, lateral, blend=2.0)
    box = np.stack([line.min(0) - 16.0 * size, line.max(0) + 16.0 * size])
    grid = DistanceGrid(box, _SPACING[detail])
    mesh = grid.join(solid, box, blend=0.0).mesh(_TRIANGLES[detail], smoothing=2)
    inner = slice(1, len(line) - 1)
    marks = {
        "sternal_end": sternal,
        "acromial_end": acromial,
        "posterior_border": (line + widths[:, None] * back)[inner],
        "anterior_border": (line - widths[:, None] * back)[inner],
        "superior_face": (line + heights[:, None] * up)[inner],
        "inferior_face": (line - heights[:, None] * up)[inner],
    }
    return mesh, {
        name: snap_to_surface(mesh, p)[0] if p.ndim == 1 else snap_to_surface(mesh, p)
        for name, p in marks.items()
    }
