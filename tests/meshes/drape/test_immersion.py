"""What lies in each other is found from where surfaces cross, as deep as a full search finds it."""

import numpy as np
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.drape.audit import overlap_depth
from meshes.drape.distance import MeshIndex
from meshes.drape.immersion import Surface, immersions


def _ball(radius: float, at) -> MeshIndex:
    mesh = trimesh.creation.icosphere(subdivisions=4, radius=radius)
    return MeshIndex(mesh.vertices + np.asarray(at, float), mesh.faces)


def _found(one: MeshIndex, other: MeshIndex):
    return immersions(
        [Surface(one)], [Surface(other)], step=2.0, reach=5.0, left=0.05, borne=0.1
    )  # fmt: skip


@settings(max_examples=25, deadline=None)
@given(st.floats(0.3, 4.0), st.floats(6.0, 14.0))
def test_the_deepest_point_is_the_one_that_a_full_search_finds(depth, radius):
    one, other = _ball(12.0, (0, 0, 0)), _ball(radius, (12.0 + radius - depth, 1.0, 2.0))
    whole, _ = overlap_depth(one, other)
    found = _found(one, other)
    deepest = max(
        (float(inside[3].max()) for side in (0, 1) if (inside := found.of(0, side)) is not None),
        default=0.0,
    )
    assert found.touch[0] == (whole > 0)
    assert abs(deepest - whole) < 1e-9 or max(whole, deepest) <= 0.1


def test_points_lie_between_their_corners_and_the_normal_leads_out():
    one, other = _ball(12.0, (0, 0, 0)), _ball(8.0, (18.5, 0, 0))
    corner, face, point, depth, normal = _found(one, other).of(0, 0)
    ends = one.vertices[corner]
    assert (point >= ends.min(axis=1) - 1e-9).all() and (point <= ends.max(axis=1) + 1e-9).all()
    distance, _, outward, close = other.query(point + 1e-6 * normal)
    assert np.allclose(distance, 1e-6 - depth, atol=1e-6)
    assert (face >= 0).all() and face.max() < len(other.faces) and len(close) == len(face)


def test_balls_apart_do_not_touch():
    found = _found(_ball(12.0, (0, 0, 0)), _ball(8.0, (20.5, 0, 0)))
    assert not found.touch[0] and found.of(0, 0) is None and found.of(0, 1) is None


def test_an_index_in_the_mirror_answers_as_one_built_of_the_mirror_image():
    index = _ball(9.0, (14.0, 3.0, -2.0))
    built = MeshIndex(index.vertices * [-1.0, 1.0, 1.0], index.faces[:, ::-1])
    points = np.random.default_rng(5).uniform(-26.0, 14.0, (400, 3))
    for ours, theirs in zip(
        index.mirrored().signed_distance(points), built.signed_distance(points), strict=True
    ):
        assert np.allclose(ours, theirs)
    assert np.array_equal(
        index.mirrored().edges[index.mirrored().edge_of], built.edges[built.edge_of]
    )
