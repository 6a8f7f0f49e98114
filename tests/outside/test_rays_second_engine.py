"""Depths along rays through the whole model, against two engines that share no code with ours."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.questions.cover import Layers, layers_of
from meshes.questions.rays import RayIndex

REACH_MM = 140.0
AGREE_MM = 0.05
COUNT = 400


@pytest.fixture(scope="module")
def merged(preview_model):
    meshes = [part.mesh for part in preview_model.parts.values()]
    starts = np.cumsum([0] + [len(m.vertices) for m in meshes])
    vertices = np.concatenate([np.asarray(m.vertices) for m in meshes])
    faces = np.concatenate([np.asarray(m.faces) + s for m, s in zip(meshes, starts)])
    return vertices, faces


@pytest.fixture(scope="module")
def rays(preview_model):
    layers: Layers = layers_of(preview_model)
    chosen = np.random.default_rng(11).choice(len(layers.rays.origins), COUNT, replace=False)
    return layers.rays.origins[chosen], layers.rays.directions[chosen]


@pytest.fixture(scope="module")
def ours(merged, rays) -> list[np.ndarray]:
    crossed = RayIndex(*merged).crossings(*rays, REACH_MM)
    return [crossed.distance[crossed.ray == k] for k in range(COUNT)]


def _agree(mine: list[np.ndarray], theirs: list[np.ndarray]) -> float:
    """Share of rays on which every crossing of either engine has one of the other's near it."""
    good = 0
    for a, b in zip(mine, theirs):
        if len(a) and len(b):
            gaps = np.abs(a[:, None] - b[None, :])
            good += bool(gaps.min(axis=1).max() < AGREE_MM and gaps.min(axis=0).max() < AGREE_MM)
        else:
            good += len(a) == len(b)
    return good / len(mine)


def test_vtk_finds_the_same_crossings(merged, rays, ours):
    import pyvista
    import vtk

    locator = vtk.vtkStaticCellLocator()
    locator.SetDataSet(pyvista.make_tri_mesh(*merged))
    locator.BuildLocator()
    theirs = []
    for origin, direction in zip(*rays):
        points = vtk.vtkPoints()
        locator.IntersectWithLine(origin, origin + REACH_MM * direction, 1e-9, points, None)
        found = np.array([points.GetPoint(k) for k in range(points.GetNumberOfPoints())])
        theirs.append(np.sort((found.reshape(-1, 3) - origin) @ direction))
    assert _agree(ours, theirs) >= 0.99


def test_embree_finds_the_same_crossings_part_by_part(preview_model, rays):
    # Embree restarts behind each hit: layers closer together than its offset are lost, and it
    # counts in single precision. A part at a time, with sheets some tenths thick, it serves.
    pytest.importorskip("embreex")
    origins, directions = (array[:60] for array in rays)
    worst, count = [], 0
    for part in preview_model.parts.values():
        if part.kind not in ("muscle", "bone", "skin"):
            continue
        places, ray, _ = part.mesh.ray.intersects_location(origins, directions, multiple_hits=True)
        theirs = np.einsum("ij,ij->i", places - origins[ray], directions[ray])
        crossed = RayIndex(part.mesh.vertices, part.mesh.faces).crossings(origins, directions)
        for k in np.unique(crossed.ray):
            mine, other = crossed.distance[crossed.ray == k], theirs[ray == k]
            count += 1
            if not len(other) or abs(mine[0] - other.min()) > AGREE_MM:
                worst.append((part.id, int(k)))
    assert count > 200
    assert len(worst) <= 0.01 * count, worst[:5]
