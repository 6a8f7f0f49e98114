"""The upper half of the left humerus in its own frame.

Own frame: origin at the centre of the head; x lateral, away from the head in
the plane of its axis; y backwards; z up along the shaft. Numbers are those of
a man's bone with a head of radius 23.5 mm; form and angles (neck-shaft 135
degrees, offset of the head 7-8 mm): common practice, no source.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import trimesh

from meshes.shapes.plate import DistanceGrid
from meshes.shapes.solid import Solid
from meshes.skeleton.piece import snap_to_surface
from meshes.skeleton.scapula import HEAD_RADIUS

_TRIANGLES = {"full": 5000, "preview": 900}
_SPACING = {"full": 1.3, "preview": 1.7}

CUT = -168.0
"""Height of the flat cut below the deltoid tuberosity, own frame, mm."""

_AXIS = np.array([8.0, 0.0])
_SULCUS_DEG, _GREATER_CREST_DEG, _LESSER_CREST_DEG = 52.0, 27.0, 84.0


def _round(deg: float, radius: float, z: float) -> np.ndarray:
    """Point at an angle forward of lateral round the shaft's axis."""
    a = np.deg2rad(deg)
    return np.array([_AXIS[0] + radius * np.cos(a), _AXIS[1] - radius * np.sin(a), z])


def _polyline(deg, levels) -> np.ndarray:
    """Points (n, 3) round the axis from (radius, z) pairs; deg may vary along them."""
    degs = np.broadcast_to(deg, len(levels))
    return np.array([_round(d, r, z) for d, (r, z) in zip(degs, levels, strict=True)])


_SULCUS = _polyline(
    [_SULCUS_DEG, _SULCUS_DEG, 54, 56, 58, 60],
    [(21.5, 10), (20.5, -4), (18.6, -20), (15.6, -38), (13.9, -58), (13.4, -80)],
)
_GREATER_CREST = _polyline(
    [_GREATER_CREST_DEG, 29, 31, 33], [(19.0, -22), (15.6, -42), (13.2, -62), (12.0, -88)]
)
_LESSER_CREST = _polyline(
    [_LESSER_CREST_DEG, 83, 83, 83], [(17.2, -20), (14.4, -40), (12.6, -58), (11.4, -80)]
)


@lru_cache(maxsize=4)
def own_humerus(detail: str) -> tuple[trimesh.Trimesh, dict[str, np.ndarray]]:
    """Contour the bone in its own frame, unscaled.

    Returns
    -------
    mesh : trimesh.Trimesh
    landmarks : dict of str to ndarray
        Names without ``humerus.left.``.
    """
    solid = Solid()
    solid.cone((8.0, 0.0, -34), (8.0, 0.0, -70), 14.6, 11.8, blend=0.0)
    solid.cone((8.0, 0.0, -70), (8.5, -0.6, -185), 11.8, 11.0, blend=0.0)
    solid.cone((7.6, 0.0, -10), (8.0, 0.0, -36), 19.5, 14.4, blend=3.0)
    head = Solid().ellipsoid((0, 0, 0), (HEAD_RADIUS,) * 3, blend=0.0)
    # Greater tubercle with its three facets, lesser tubercle in front.
    tubercles = Solid()
    tubercles.ellipsoid((22.5, 1.5, -1.0), (8.6, 16.5, 15.0), blend=0.0)
    tubercles.ellipsoid((19.0, -7.5, 7.0), (7.4, 7.4, 8.0), blend=4.0)
    tubercles.plane((19.0, -8.0, 13.8), (0.25, -0.05, 1.0), blend=3.0)
    tubercles.plane((25.5, 3.0, 7.6), (0.75, 0.28, 0.72), blend=3.0)
    tubercles.plane((23.5, 13.0, -2.0), (0.55, 0.82, 0.25), blend=3.0)
    lesser = Solid().ellipsoid(_round(86, 20.5, -5.0), (6.6, 6.4, 8.6), blend=0.0)
    lips = Solid()
    for crest, radii in ((_GREATER_CREST, (4.2, 3.4, 2.8, 1.2)), (_LESSER_CREST, (3.8, 3, 2.4, 1))):
        for i in range(len(crest) - 1):
            lips.cone(crest[i], crest[i + 1], radii[i], radii[i + 1], blend=0.0)
    # Deltoid tuberosity: a long low V on the lateral side.
    rough = Solid()
    rough.cone(_round(20, 9.0, -92), _round(6, 10.4, -128), 2.0, 4.6, blend=0.0)
    rough.cone(_round(-20, 8.6, -102), _round(4, 10.4, -128), 2.0, 4.6, blend=3.0)
    rough.cone(_round(5, 10.4, -128), _round(4, 6.6, -158), 4.6, 3.0, blend=3.0)
    groove = Solid()
    for i, (a, b) in enumerate(zip(_SULCUS[:-1], _SULCUS[1:], strict=True)):
        radii = np.interp([i, i + 1], [0, 2, 5], [4.6, 4.6, 3.2])
        out_a, out_b = (p + _outward(p) * r * 0.55 for p, r in zip((a, b), radii, strict=True))
        groove.cone(out_a, out_b, *radii, blend=0.0)

    grid = DistanceGrid([(-27, -29, CUT - 4), (36, 27, 28)], _SPACING[detail])
    grid.join(solid, blend=0.0)
    grid.join(head, blend=3.0)
    grid.join(tubercles, [(-10, -27, -34), (36, 27, 28)], blend=3.0)
    grid.join(lesser, blend=4.0)
    grid.join(lips, blend=6.0)
    grid.join(rough, blend=5.0)
    grid.join(groove, blend=2.5, cut=True)
    lower = Solid().box((8, 0, CUT - 50), (80, 80, 50), rounding=0.1, blend=0.0)
    grid.join(lower, [(-27, -29, CUT - 4), (36, 27, CUT + 6)], blend=0.8, cut=True)
    mesh = grid.mesh(_TRIANGLES[detail])

    marks = {
        "greater_tubercle": np.array([27.0, 0.0, 8.0]),
        "greater_tubercle_superior": np.array([19.5, -7.5, 14.0]),
        "greater_tubercle_middle": np.array([26.0, 3.5, 8.0]),
        "greater_tubercle_inferior": np.array([24.0, 13.5, -3.0]),
        "lesser_tubercle": _round(86, 27.5, -5.0),
        "intertubercular_floor": _resample(_SULCUS[1:], 12),
        "lesser_tubercle_crest": _resample(_LESSER_CREST, 10, 2.6),
        "greater_tubercle_crest": _resample(_GREATER_CREST, 10, 3.0),
        "deltoid_tuberosity": _round(5, 14.8, -132),
        "anatomical_neck_inferior": np.array([-15.0, 0.0, -20.0]),
    }
    marks = {
        name: snap_to_surface(mesh, p)[0] if p.ndim == 1 else snap_to_surface(mesh, p)
        for name, p in marks.items()
    }
    marks["head_centre"] = np.zeros(3)
    return mesh, marks


def _outward(p: np.ndarray) -> np.ndarray:
    radial = np.array([p[0] - _AXIS[0], p[1] - _AXIS[1], 0.0])
    return radial / np.linalg.norm(radial)


def _resample(points: np.ndarray, count: int, lift: float = 0.0) -> np.ndarray:
    s = np.linspace(0, len(points) - 1, count)
    line = np.stack([np.interp(s, np.arange(len(points)), points[:, i]) for i in range(3)], axis=1)
    return line + lift * np.array([_outward(p) for p in line])
