"""The proofs, tried on meshes that are known to be good or bad."""

import numpy as np
import pytest
import trimesh

from meshes.drape.audit import (
    cross,
    is_closed,
    is_outward,
    overlap_depth,
    overlapping_pairs,
    self_intersections,
    signed_volume,
)
from meshes.drape.distance import MeshIndex


def ball(radius=10.0, at=(0, 0, 0), subdivisions=4):
    mesh = trimesh.creation.icosphere(subdivisions=subdivisions, radius=radius)
    mesh.apply_translation(at)
    return mesh


def test_a_ball_is_closed_and_outward():
    assert is_closed(ball())
    assert is_outward(ball())
    assert signed_volume(ball()) == pytest.approx(4 / 3 * np.pi * 1000, rel=0.01)


def test_a_ball_with_a_missing_or_turned_face_is_not_closed():
    mesh = ball()
    assert not is_closed(trimesh.Trimesh(mesh.vertices, mesh.faces[1:], process=False))
    faces = mesh.faces.copy()
    faces[0] = faces[0, ::-1]
    assert not is_closed(trimesh.Trimesh(mesh.vertices, faces, process=False))


def test_one_piece_turned_inside_out_is_found_beside_a_good_one():
    good, bad = ball(), ball(3, (30, 0, 0))
    faces = np.concatenate([good.faces, bad.faces[:, ::-1] + len(good.vertices)])
    both = trimesh.Trimesh(np.concatenate([good.vertices, bad.vertices]), faces, process=False)
    assert signed_volume(both) > 0
    assert not is_outward(both)


def test_good_meshes_do_not_cross_themselves():
    for mesh in (ball(), trimesh.creation.torus(20, 5), trimesh.creation.box((10, 20, 0.3))):
        assert len(self_intersections(mesh)) == 0


def test_a_ball_pushed_through_its_far_side_crosses_itself():
    mesh = ball()
    vertices = mesh.vertices.copy()
    top = int(np.argmax(vertices[:, 2]))
    vertices[top] = (1.3, 0.7, -11.0)
    pairs = self_intersections(trimesh.Trimesh(vertices, mesh.faces, process=False))
    assert len(pairs) > 0
    assert np.all(np.any(mesh.faces[pairs] == top, axis=(1, 2)))


def test_crossing_pairs_agree_with_every_pair_tried_plainly():
    rng = np.random.default_rng(5)
    vertices = rng.uniform(0, 10, (90, 3))
    faces = np.arange(90).reshape(30, 3)
    found = {tuple(p) for p in self_intersections(MeshIndex(vertices, faces))}
    plain = set()
    for i in range(30):
        for j in range(i + 1, 30):
            for a, b in ((i, j), (j, i)):
                corners = vertices[faces[a]]
                for k in range(3):
                    p, q = corners[k], corners[(k + 1) % 3]
                    m = np.column_stack(
                        [
                            p - q,
                            vertices[faces[b, 1]] - vertices[faces[b, 0]],
                            vertices[faces[b, 2]] - vertices[faces[b, 0]],
                        ]
                    )
                    t, u, v = np.linalg.solve(m, p - vertices[faces[b, 0]])
                    if 0 < t < 1 and u > 0 and v > 0 and u + v < 1:
                        plain.add((i, j))
    assert found == plain
    assert len(found) > 20


def test_overlap_of_two_balls_is_the_depth_of_the_lens():
    a, b = MeshIndex.of(ball(10)), MeshIndex.of(ball(10, (17, 0, 0)))
    depth, points = overlap_depth(a, b)
    assert depth == pytest.approx(3.0, abs=0.1)
    assert np.all((points[:, 0] > 6.9) & (points[:, 0] < 10.1))
    assert np.all(np.diff(points[:, 3]) <= 0)


def test_a_thin_spike_into_a_big_triangle_is_found():
    plate = MeshIndex.of(trimesh.creation.box((100, 100, 10)))
    spike = trimesh.creation.cone(radius=0.4, height=20, sections=8)
    spike.apply_transform(trimesh.transformations.rotation_matrix(np.pi, [1, 0, 0]))
    spike.apply_translation([13, 7, 22])
    depth, _ = overlap_depth(plate, MeshIndex.of(spike))
    assert depth == pytest.approx(3.0, abs=0.05)


def test_balls_apart_do_not_overlap():
    assert overlap_depth(MeshIndex.of(ball(10)), MeshIndex.of(ball(10, (20.5, 0, 0))))[0] == 0


def test_only_overlapping_pairs_of_many_are_named():
    row = [MeshIndex.of(ball(5, (12.0 * i, 0, 0), 3)) for i in range(6)]
    row.append(MeshIndex.of(ball(5, (12.0 * 2 + 8, 0, 0), 3)))
    found = overlapping_pairs(row, floor=0.5)
    assert [(i, j) for i, j, _, _ in found] == [(2, 6), (3, 6)]
    assert found[0][2] == pytest.approx(2.0, abs=0.15)
    assert found[1][2] == pytest.approx(4.0, abs=0.15)


@pytest.mark.parametrize(
    ("radius", "at", "meet"),
    [
        (10.0, (15.0, 3.0, -2.0), True),
        (10.0, (21.0, 0.0, 0.0), False),
        (3.0, (0.0, 1.0, 0.0), False),
        (3.0, (8.5, 0.0, 0.0), True),
    ],
)
def test_surfaces_cross_where_balls_cut_each_other_and_not_where_one_holds_the_other(
    radius, at, meet
):
    one, two = MeshIndex.of(ball()), MeshIndex.of(ball(radius, at, 3))
    assert cross(one, two) is meet
    assert cross(two, one) is meet


def test_boxes_with_faces_in_one_plane_count_as_meeting():
    one, two = trimesh.creation.box((10, 10, 10)), trimesh.creation.box((10, 10, 10))
    two.apply_translation((5, 0, 0))
    assert cross(MeshIndex.of(one), MeshIndex.of(two))
