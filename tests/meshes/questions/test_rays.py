"""Crossings are found all, in order, and agree with two other ray engines."""

import numpy as np
import pytest
import trimesh
import vtk
from hypothesis import given, settings
from hypothesis import strategies as st
from vtk.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray

from meshes.questions.rays import RayIndex


def _nested_balls(count: int) -> tuple[np.ndarray, np.ndarray]:
    ball = trimesh.creation.icosphere(subdivisions=3)
    vertices = np.vstack([ball.vertices * (10 + i) for i in range(count)])
    faces = np.vstack([ball.faces + i * len(ball.vertices) for i in range(count)])
    return vertices, faces


BALLS = (RayIndex(*_nested_balls(5)), _nested_balls(5)[0])


def test_ray_through_shells_a_hair_apart_finds_every_one():
    # Eleven plates 0.001 mm apart: an engine that restarts a ray behind each hit skips some.
    plates = [trimesh.creation.box((10, 10, 0.0004)) for _ in range(11)]
    for i, plate in enumerate(plates):
        plate.apply_translation((0, 0, i * 0.001))
    merged = trimesh.util.concatenate(plates)
    crossings = RayIndex(merged.vertices, merged.faces).crossings([1.3, 0.7, -5], [0, 0, 1])
    assert len(crossings.distance) == 22
    assert crossings.entering.tolist() == [True, False] * 11
    assert np.all(np.diff(crossings.distance) > 0)


def test_no_ray_slips_through_an_edge_or_a_vertex():
    ball = trimesh.creation.icosphere(subdivisions=2)
    targets = np.vstack([ball.vertices, ball.vertices[ball.edges_unique].mean(axis=1)])
    origins = np.zeros_like(targets)
    crossings = RayIndex(ball.vertices, ball.faces).crossings(origins, targets)
    assert set(crossings.ray) == set(range(len(targets)))


def test_crossings_agree_with_vtk_locator():
    vertices, faces = _nested_balls(5)
    rng = np.random.default_rng(3)
    origins = rng.uniform(-8, 8, (60, 3)) + [0, 0, -40]
    directions = rng.normal(0, 0.1, (60, 3)) + [0, 0, 1]
    directions /= np.linalg.norm(directions, axis=1, keepdims=True)
    ours = RayIndex(vertices, faces).crossings(origins, directions)
    surface = vtk.vtkPolyData()
    points = vtk.vtkPoints()
    points.SetData(numpy_to_vtk(vertices, deep=True))
    surface.SetPoints(points)
    cells = vtk.vtkCellArray()
    cells.SetData(3, numpy_to_vtkIdTypeArray(faces.astype(np.int64).ravel(), deep=True))
    surface.SetPolys(cells)
    locator = vtk.vtkStaticCellLocator()
    locator.SetDataSet(surface)
    locator.BuildLocator()
    for i in range(len(origins)):
        hits = vtk.vtkPoints()
        locator.IntersectWithLine(origins[i], origins[i] + 100 * directions[i], 1e-9, hits, None)
        theirs = np.array([hits.GetPoint(k) for k in range(hits.GetNumberOfPoints())])
        theirs = np.sort((theirs.reshape(-1, 3) - origins[i]) @ directions[i])
        assert ours.distance[ours.ray == i] == pytest.approx(theirs, abs=1e-4)


def test_first_crossing_agrees_with_embree():
    embree = pytest.importorskip("trimesh.ray.ray_pyembree")
    vertices, faces = _nested_balls(4)
    mesh = trimesh.Trimesh(vertices, faces, process=False)
    rng = np.random.default_rng(5)
    origins = rng.uniform(-12, 12, (500, 3)) + [0, 0, -40]
    directions = np.tile([0.02, -0.03, 1.0], (500, 1))
    ours = RayIndex(vertices, faces).crossings(origins, directions)
    place, ray, _ = embree.RayMeshIntersector(mesh).intersects_location(
        origins, directions, multiple_hits=False
    )
    first = np.searchsorted(ours.ray, ray)
    assert np.array_equal(np.unique(ours.ray), np.sort(ray))
    distance = np.linalg.norm(place - origins[ray], axis=1)
    assert ours.distance[first] == pytest.approx(distance, abs=1e-3)


@settings(max_examples=40)
@given(
    st.integers(0, 10_000),
    st.integers(1, 45),
    st.sampled_from(["parallel", "spread", "along an axis", "through corners"]),
    st.floats(5.0, 100.0),
)
def test_rays_side_by_side_find_the_same_to_the_last_bit(seed, count, kind, reach):
    index, corners = BALLS
    rng = np.random.default_rng(seed)
    origins = rng.uniform(-14, 14, (count, 3)) + [0, 0, -20]
    directions = np.tile([0.05, -0.02, 1.0], (count, 1))
    if kind == "spread":
        directions = rng.normal(size=(count, 3))
    elif kind == "along an axis":
        directions = np.eye(3)[rng.integers(0, 3, count)] * rng.choice([-1.0, 1.0], (count, 1))
    elif kind == "through corners":
        directions = corners[rng.integers(0, len(corners), count)] - origins
    one = index.unsorted(origins, directions, reach)
    together = index.unsorted(origins, directions, reach, side_by_side=True)
    assert np.all(np.diff(together[0]) >= 0)
    keys = [np.lexsort((found[1], found[0])) for found in (one, together)]
    for alone, beside in zip(one, together, strict=True):
        assert np.array_equal(alone[keys[0]], beside[keys[1]])


@pytest.mark.parametrize("beside", [0.0, 1e-300, 1e-60, 1e-30, -1e-30, -1e-60, -1e-300])
@pytest.mark.parametrize("together", [False, True])
def test_a_ray_in_the_face_of_a_box_of_the_tree_misses_nothing(beside, together):
    # Two halves that meet in a plane, as skin does in the midline: the ray runs along it.
    halves = [trimesh.creation.box((4, 4, 4)) for _ in range(2)]
    halves[0].apply_translation([2, 0, 0])
    halves[1].apply_translation([-2, 0, 0])
    merged = trimesh.util.concatenate([half.subdivide().subdivide() for half in halves])
    index = RayIndex(merged.vertices, merged.faces)
    for way in (1.0, -1.0):
        ray, _, distance, _ = index.unsorted(
            [[beside, 0.3, -10.0 * way]], [[0, 0, way]], side_by_side=together
        )
        assert {0} == set(ray.tolist())
        assert set(np.round(distance, 9)) == {8.0, 12.0}


def test_zero_direction_is_refused():
    vertices, faces = _nested_balls(1)
    with pytest.raises(ValueError, match="direction"):
        RayIndex(vertices, faces).crossings([0, 0, 0], [0, 0, 0])
