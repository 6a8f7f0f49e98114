"""Triangles that a preview can spare are taken out once everything is laid.

Sheets are laid on even grids, because a coarser one would not follow what lies beneath; once
they are laid, flat places need fewer triangles.
"""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import numpy as np

from meshes.drape.audit import self_intersections
from meshes.drape.distance import MeshIndex
from meshes.model import Part
from meshes.shapes.thinning import thinned_mesh
from meshes.soft.workbench import Workbench, trimesh_of

_FLATTENED_MM = 1.25
"""How far a surface may move."""
_FIRM = ("disc", "cartilage")
_FIRM_MM = 0.6
"""The same for what gives way to nothing and fits between bones."""
_OF_THICKNESS = 0.45
"""The same as a share of the thickness of what is thin."""
_SHEET_MM = 8.0
"""Thickness up to which a part counts as a sheet."""
_ENDS = 0.15
"""Share of the fibres at either end where a sheet is thin."""
_AT_ENDS_MM = 0.1
"""How far it may move there."""
_LONGEST_MM = 25.0
"""Longest edge that may arise; what is folded bends at its edges."""
_TRIES = (1.0, 0.6, 0.3)
"""Shares of that which are tried one after the other where the surface would cross itself."""
_WHOLE = ("bone", "skin")
"""Kinds that have no triangle to spare."""


def take_out(bench: Workbench) -> None:
    """Thin the meshes of a preview; the full model stays as it is."""
    if bench.full:
        return
    parts = [part for part in bench.parts.values() if part.kind not in _WHOLE]
    with ThreadPoolExecutor(2) as pool:
        for part in pool.map(thinned, parts):
            if part is not bench.parts[part.id]:
                bench.replace(part)


def thinned(part: Part) -> Part:
    """A part with fewer triangles; itself where there are none to spare or it would cross itself.

    Its corners are some of those it had, with their fibre coordinates.
    """
    vertices, faces = np.asarray(part.mesh.vertices), np.asarray(part.mesh.faces)
    corners = vertices[faces] - vertices[0]
    cross = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    volume = abs(float(np.einsum("ij,ij->", corners[:, 0], cross))) / 6.0
    thickness = 4.0 * volume / max(float(np.linalg.norm(cross, axis=1).sum()), 1e-9)
    most = _FIRM_MM if part.kind in _FIRM else _FLATTENED_MM
    tolerance = min(most, _OF_THICKNESS * thickness)
    if part.uv is not None and thickness < _SHEET_MM:
        # Where sheets end they lie on one another, a few tenths of a millimetre thick.
        to_end = np.minimum(part.uv[:, 0], 1.0 - part.uv[:, 0])
        tolerance = np.where(to_end < _ENDS, min(_AT_ENDS_MM, tolerance), tolerance)
    for share in _TRIES:
        kept, new_faces = thinned_mesh(vertices, faces, share * tolerance, _LONGEST_MM)
        if len(kept) == len(vertices):
            return part
        index = MeshIndex(vertices[kept], new_faces)
        if len(self_intersections(index)) == 0:
            break
    else:
        return part
    return replace(
        part,
        mesh=trimesh_of(index.vertices, index.faces),
        uv=None if part.uv is None else part.uv[kept],
        tendon=None if part.tendon is None else part.tendon[kept],
    )
