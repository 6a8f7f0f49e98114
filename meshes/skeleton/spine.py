"""The column: C1 to L5, the discs, sacrum and coccyx, with their landmarks."""

from __future__ import annotations

import numpy as np
import trimesh

from meshes.drape.distance import MeshIndex
from meshes.drape.resolve import resolve
from meshes.model import Part
from meshes.shapes.solid import Solid
from meshes.shapes.symmetric import contour_symmetric
from meshes.skeleton.atlas_axis import (
    atlanto_axial_joint,
    atlas_plan,
    atlas_solid,
    axis_solid,
)
from meshes.skeleton.disc import disc_mesh
from meshes.skeleton.frame import LEVELS, SkeletonFrame, disc_height, sagittal_axes
from meshes.skeleton.piece import BonePiece, snap_to_both_sides
from meshes.skeleton.sacrum import coccyx_solid, sacrum_solid, segments
from meshes.skeleton.spine_landmarks import (
    atlas_landmarks,
    coccyx_landmarks,
    sacrum_landmarks,
    vertebra_landmarks,
)
from meshes.skeleton.vertebra import Plan, in_axes, vertebra_solid
from meshes.skeleton.vertebra_tables import LOWER_WIDTHS

_SPACING = {
    "full": {"cervical": 1.0, "thoracic": 1.15, "lumbar": 1.2, "sacrum": 1.25, "coccyx": 1.0},
    "preview": {"cervical": 1.5, "thoracic": 1.6, "lumbar": 1.7, "sacrum": 2.0, "coccyx": 1.5},
}
_TRIANGLES = {
    "full": {"cervical": 3200, "thoracic": 3600, "lumbar": 4000, "sacrum": 9000, "coccyx": 1000},
    "preview": {"cervical": 800, "thoracic": 800, "lumbar": 850, "sacrum": 1300, "coccyx": 250},
}

_DISC_GAP_MM = 0.05
"""Room between a disc's surface and the finished bones."""


def make(frame: SkeletonFrame, detail: str = "full") -> list[BonePiece]:
    """Build every bone and disc of the column.

    Parameters
    ----------
    frame : SkeletonFrame
    detail : {"preview", "full"}

    Returns
    -------
    list of BonePiece
        C1 to L5, sacrum, coccyx, then the discs from C2/C3 to L5/S1.
    """
    solids: dict[str, Solid] = {}
    pieces: list[BonePiece] = []
    for level in LEVELS:
        v = frame[level]
        if level == "C1":
            ring = atlas_plan(frame)
            solid, local = atlas_solid(ring), atlas_landmarks(ring)
        else:
            plan = Plan(frame, level)
            if level == "C2":
                solid = axis_solid(plan, in_axes(atlanto_axial_joint(frame), v))
            else:
                solid = vertebra_solid(plan)
            local = vertebra_landmarks(plan, frame)
        solids[level] = solid
        region = _region(level)
        family = _family(level)
        mesh = contour_symmetric(
            solid, _SPACING[detail][family] * frame.scale, _TRIANGLES[detail][family]
        )
        pieces.append(
            _piece(f"vertebra_{level}", mesh, v.axes, v.centre, local, level=level, region=region)
        )
    solids["S1"] = sacrum_solid(frame)
    zero = np.zeros(3)
    for name, solid, local in (
        ("sacrum", solids["S1"], sacrum_landmarks(frame)),
        ("coccyx", coccyx_solid(frame), coccyx_landmarks(frame)),
    ):
        mesh = contour_symmetric(
            solid, _SPACING[detail][name] * frame.scale, _TRIANGLES[detail][name]
        )
        pieces.append(_piece(name, mesh, frame.sacral_axes, zero, local, level="", region="pelvis"))
    bones = {piece.part.id: piece.part.mesh for piece in pieces}
    for level in LEVELS[1:]:
        pieces.append(_disc(frame, level, solids, bones, detail))
    return pieces


def _family(level: str) -> str:
    return {"C": "cervical", "T": "thoracic", "L": "lumbar"}[level[0]]


def _region(level: str) -> str:
    return {"C": "neck", "T": "thorax", "L": "loin"}[level[0]]


def _piece(
    part_id: str,
    mesh: trimesh.Trimesh,
    axes: np.ndarray,
    centre: np.ndarray,
    local: dict[str, tuple[np.ndarray, bool]],
    *,
    level: str,
    region: str,
) -> BonePiece:
    """Carry a bone and its landmarks into the model's axes.

    local : points in the bone's axes, each with whether it lies on the surface.
    """
    mesh.vertices = np.asarray(mesh.vertices) @ axes.T + centre
    names = list(local)
    points = [np.atleast_2d(local[name][0]) @ axes.T + centre for name in names]
    on_bone = np.concatenate([np.full(len(p), local[n][1]) for n, p in zip(names, points)])
    stacked = np.concatenate(points)
    stacked[on_bone] = snap_to_both_sides(mesh, stacked[on_bone])
    landmarks: dict[str, np.ndarray] = {}
    start = 0
    for name, p in zip(names, points):
        found = stacked[start : start + len(p)]
        start += len(p)
        landmarks[name] = found[0] if np.ndim(local[name][0]) == 1 else found
    part = Part(
        id=part_id,
        entry=part_id,
        kind="bone",
        stratum=9,
        group="",
        mesh=mesh,
        level=level,
        region=region,
    )
    return BonePiece(part, landmarks)


def _disc(
    frame: SkeletonFrame,
    level: str,
    solids: dict[str, Solid],
    bones: dict[str, trimesh.Trimesh],
    detail: str,
) -> BonePiece:
    """The disc below a level, filled between the solids and clear of the finished bones."""
    s, v = frame.scale, frame[level]
    below = "S1" if level == "L5" else LEVELS[LEVELS.index(level) + 1]
    height = disc_height(level, s)
    under = v.centre - 0.5 * v.height * v.axes[:, 2]
    if below == "S1":
        over, tilt = np.zeros(3), 0.5 * (v.tilt_deg + frame.body.sacral_slope_deg)
        body = segments(frame)[0]
        size = (body.half[0], body.half[1])
        lower = _distance(solids["S1"], frame.sacral_axes, np.zeros(3))
    else:
        w = frame[below]
        over, tilt = w.centre + 0.5 * w.height * w.axes[:, 2], 0.5 * (v.tilt_deg + w.tilt_deg)
        size = (0.5 * w.width, 0.5 * w.depth)
        lower = _distance(solids[below], w.axes, w.centre)
    upper = _distance(solids[level], v.axes, v.centre)
    cervical = level in ("C2", "C3", "C4", "C5", "C6")
    own = 0.5 * LOWER_WIDTHS[level] * s
    half_width = min(own, size[0]) - (2.9 * s if cervical else 0.9 * s)
    half_depth = min(0.5 * v.depth, size[1]) - 0.7 * s
    full = detail == "full"
    mesh = disc_mesh(
        0.5 * (under + over),
        sagittal_axes(tilt),
        (half_width, half_depth),
        height,
        upper,
        lower,
        around=40 if full else 20,
        rings=7 if full else 3,
        exponent=2.4,
        hollow=(0.3 if cervical else 1.2) * s,
        bulge=(0.2 if cervical else 0.8) * s,
    )
    # Between their corners the bones' triangles stray from the solids.
    beside = (f"vertebra_{level}", "sacrum" if below == "S1" else f"vertebra_{below}")
    mesh = resolve(mesh, [MeshIndex.of(bones[bone]) for bone in beside], _DISC_GAP_MM, rounds=4)
    name = f"disc_{level}_{below}"
    return BonePiece(
        Part(
            id=name,
            entry="intervertebral_disc",
            kind="disc",
            stratum=9,
            group="",
            mesh=mesh,
            level=f"{level}_{below}",
            region=_region(level),
        ),
        {},
    )


def _distance(solid: Solid, axes: np.ndarray, centre: np.ndarray):
    """Signed distance to a mirrored solid, taken in the model's axes."""

    def measure(points: np.ndarray) -> np.ndarray:
        local = (points - centre) @ axes
        local[:, 0] = np.abs(local[:, 0])
        return solid.distance(local)

    return measure
