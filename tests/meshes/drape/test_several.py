"""Many meshes asked at once answer as each does alone."""

import pickle

import numpy as np
import trimesh

from meshes.drape.audit import crossing_box
from meshes.drape.distance import MeshIndex
from meshes.drape.several import Several, crossing_boxes
from meshes.shapes.halves import in_halves

BALLS = [
    MeshIndex.of(trimesh.creation.icosphere(subdivisions=3, radius=r).apply_translation([x, 0, 0]))
    for r, x in ((5.0, 0.0), (3.0, 7.0), (4.0, 30.0))
]


def test_least_distance_is_the_least_of_all_meshes():
    points = np.random.default_rng(4).uniform(-12, 12, (400, 3))
    alone = np.min([ball.signed_distance(points, 8.0)[0] for ball in BALLS], axis=0)
    assert np.array_equal(Several(BALLS).least(points, 8.0, 8.0), alone)


def test_far_from_the_surface_the_sign_is_right_and_the_distance_at_least_the_exact_one():
    axis = np.arange(-9.0, 14.0, 0.5)
    points = np.stack(np.meshgrid(axis, axis, axis, indexing="ij"), axis=-1).reshape(-1, 3)
    several = Several(BALLS)
    # The reach is less than the radius of a ball: its middle passes for outside either way.
    true, found = several.least(points, 8.0, 4.5), several.least(points, 8.0, 4.5, 1.0)
    near = np.abs(true) < 1.0
    assert near.sum() > 1000 and (~near).sum() > 10000
    assert np.array_equal(found[near], true[near])
    assert np.all(np.abs(found[~near]) >= 1.0)
    known = np.isfinite(true)
    assert np.array_equal(np.sign(found[known]), np.sign(true[known]))
    assert np.any(found[known] != true[known])


def test_nothing_near_is_infinitely_far():
    assert np.isinf(Several([]).least(np.zeros((2, 3)), 8.0, 8.0)).all()


def test_a_course_through_a_ball_is_led_round_it():
    line = np.column_stack([np.linspace(-12, 12, 25), np.full(25, 0.5), np.zeros(25)])
    need = np.full(25, 1.0)
    settled = Several(BALLS[:1]).settle(line, need, 14, 0.25, 10.0)
    # The ends are free to move as well; between pushes the line is eased.
    assert BALLS[0].signed_distance(settled)[0].min() > 0.5


def test_points_in_a_mesh_are_lifted_on_to_it():
    points = np.array([[0.0, 0.0, 4.0], [0.0, 0.0, 9.0]])
    lifted = Several(BALLS[:1]).lift(points, 0.2)
    assert abs(BALLS[0].signed_distance(lifted)[0][0] - 0.2) < 1e-6
    assert np.array_equal(lifted[1], points[1])


def test_meeting_pairs_have_the_box_that_each_has_alone():
    meet, boxes = crossing_boxes([BALLS[0], BALLS[0]], [BALLS[1], BALLS[2]])
    assert meet.tolist() == [True, False]
    assert np.array_equal(boxes[0], crossing_box(BALLS[0], BALLS[1]))


def test_an_index_that_was_stored_and_read_again_is_asked_where_it_lies_now():
    Several(BALLS[:1])
    again = pickle.loads(pickle.dumps(BALLS[0]))
    points = np.array([[0.0, 0.0, 6.0]])
    assert np.array_equal(
        Several([again]).least(points, 8.0, 8.0), Several(BALLS[:1]).least(points, 8.0, 8.0)
    )


def test_both_halves_come_back_in_order():
    assert sum(in_halves(lambda a, b: list(range(a, b)), 5000), []) == list(range(5000))
    assert in_halves(lambda a, b: (a, b), 5) == [(0, 5)]
