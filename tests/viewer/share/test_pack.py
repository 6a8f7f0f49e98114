"""What is packed comes out again, within the steps that the page can hold."""

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fakes import toy_model
from viewer.scene.drawn import MIRROR, Shell, draw_parts, vertex_normals
from viewer.share.pack import (
    STEP_MM,
    face_walk,
    octahedral,
    packed,
    packed_meshes,
    unfolded_octahedral,
    unpacked,
)


def _ball(radius: float, centre=(0.0, 0.0, 0.0), subdivisions: int = 2) -> Shell:
    mesh = trimesh.creation.icosphere(subdivisions, radius)
    points = (np.asarray(mesh.vertices) + centre).astype(np.float32)
    faces = np.asarray(mesh.faces, np.int32)
    surface = np.zeros((len(points), 4), np.float32)
    surface[:, 0] = points[:, 2]
    surface[:, 1] = points[:, 0]
    surface[:, 2] = 0.5
    surface[:, 3] = 1.0
    return Shell(points, vertex_normals(points, faces), faces, surface)


def _corners(shell: Shell) -> np.ndarray:
    """Faces as corner places, in an order that does not depend on numbering."""
    corners = shell.points[shell.faces]
    first = np.array([np.lexsort(c.round(2).T[::-1])[0] for c in corners])
    turned = np.array([np.roll(c, -k, axis=0) for c, k in zip(corners, first)])
    return turned[np.lexsort(turned.reshape(len(turned), -1).round(2).T[::-1])]


@settings(max_examples=25, deadline=None)
@given(
    radius=st.floats(1.0, 300.0),
    centre=st.tuples(*[st.floats(-600.0, 600.0)] * 3),
)
def test_packed_ball_comes_out_the_same_within_half_a_step(radius, centre):
    shell = _ball(radius, centre, 1)
    back = unpacked(packed(shell))
    assert len(back.faces) == len(shell.faces)
    for point in shell.points:
        assert np.abs(back.points - point).max(axis=1).min() <= STEP_MM / 2 + 1e-4
    assert trimesh.Trimesh(back.points, back.faces, process=False).volume > 0


def test_faces_keep_their_corners_and_their_winding():
    shell = _ball(50.0)
    back = unpacked(packed(shell))
    assert np.abs(_corners(back) - _corners(shell)).max() <= STEP_MM


def test_fibre_coordinates_tendon_and_openness_travel_with_their_vertex():
    back = unpacked(packed(_ball(80.0)))
    assert np.abs(back.surface[:, 0] - back.points[:, 2]).max() <= 0.05
    assert np.abs(back.surface[:, 1] - back.points[:, 0]).max() <= 0.05
    assert back.surface[:, 2] == pytest.approx(0.5, abs=0.01)
    assert back.surface[:, 3] == pytest.approx(1.0)


@given(st.lists(st.floats(-1, 1), min_size=3, max_size=3).filter(lambda v: np.hypot(*v[:2]) > 0.1))
def test_normals_come_out_within_two_degrees(vector):
    unit = np.array([vector]) / np.linalg.norm(vector)
    back = unfolded_octahedral(octahedral(unit))
    assert np.degrees(np.arccos(np.clip((unit * back).sum(), -1, 1))) < 2.0


def test_walk_over_faces_loses_none_even_in_pieces():
    one, two = _ball(5.0), _ball(5.0, (50.0, 0.0, 0.0))
    faces = np.concatenate([one.faces, two.faces + len(one.points)])
    assert sorted(map(tuple, face_walk(faces))) == sorted(map(tuple, faces))


def test_part_beyond_the_range_is_refused():
    with pytest.raises(ValueError, match="1023 mm"):
        packed(_ball(50.0, (1000.0, 0.0, 0.0)))


def test_mirrored_twins_are_stored_once():
    drawn = draw_parts(toy_model().parts.values())
    meshes = packed_meshes(drawn, 10**9)
    assert set(meshes.shows) == set(toy_model().parts)
    left, right = meshes.shows["scapula.left"], meshes.shows["scapula.right"]
    assert left[0] == right[0]
    assert (left[1], right[1]) == (False, True)
    mesh = unpacked(meshes.meshes[right[0]])
    wanted = toy_model().parts["scapula.right"].mesh.bounds
    mirrored = mesh.points * MIRROR
    assert np.array([mirrored.min(axis=0), mirrored.max(axis=0)]) == pytest.approx(
        wanted, abs=STEP_MM
    )


def test_budget_of_faces_is_kept():
    balls = [_ball(100.0, subdivisions=4) for _ in range(3)]

    class Each:
        def __init__(self, shell, name):
            self.still = shell
            self.part = type("Part", (), {"id": name, "side": None})()

    drawn = [Each(shell, f"ball_{n}") for n, shell in enumerate(balls)]
    before = sum(len(ball.faces) for ball in balls)
    meshes = packed_meshes(drawn, before // 4)
    assert sum(mesh.faces for mesh in meshes.meshes) == pytest.approx(before / 4, rel=0.1)
