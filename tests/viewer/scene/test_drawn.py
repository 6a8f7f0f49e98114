"""Normals of what is drawn: smooth over a surface, not tilted by the wall of a cut edge."""

from dataclasses import replace

import numpy as np
import trimesh

from tests.fakes import toy_model
from viewer.scene.drawn import draw_part, vertex_normals


def _slab(size=(60.0, 4.0, 60.0)) -> trimesh.Trimesh:
    """A plate whose faces are finely divided and whose walls are one strip."""
    box = trimesh.creation.box(size)
    return box.subdivide_to_size(12.0)


def test_the_wall_of_a_cut_edge_does_not_tilt_the_surface():
    slab = _slab()
    points, faces = slab.vertices.astype(np.float32), slab.faces
    outer = np.isclose(points[:, 1], 2.0)
    creased = vertex_normals(points, faces, creased=True)
    plain = vertex_normals(points, faces)
    edge = outer & np.isclose(np.abs(points[:, 0]), 30.0) & (np.abs(points[:, 2]) < 29.0)
    assert edge.sum() > 3
    assert (creased[edge, 1] > 0.999).all()
    assert (np.abs(plain[edge, 1]) < 0.99).any()


def test_normals_of_a_ball_point_outward_creased_or_not():
    ball = trimesh.creation.icosphere(3, 20.0)
    for creased in (False, True):
        normals = vertex_normals(ball.vertices.astype(np.float32), ball.faces, creased)
        assert (np.einsum("ij,ij->i", normals, ball.vertices / 20.0) > 0.999).all()


def test_the_outer_face_of_a_coarse_sheet_is_lit_from_outside_up_to_its_edge(preview_model):
    # Where the two faces of a decimated sheet meet without a wall, each has its own corners.
    for name in ("deep_fascia.left", "trapezius_transverse.left", "latissimus_dorsi.left"):
        shell = draw_part(preview_model.parts[name]).moving
        corners = shell.points[shell.faces].astype(float)
        across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
        facing = np.einsum("fc,fkc->fk", across, shell.normals[shell.faces])
        area = np.linalg.norm(across, axis=1)
        turned = area[(facing < 0).any(axis=1)].sum() / area.sum()
        assert turned < 0.015, name


def test_the_face_on_which_two_halves_meet_does_not_darken_the_outer_one(preview_model):
    for name in ("superficial_fascia.left", "skin.left", "deep_fascia.left"):
        shell = draw_part(preview_model.parts[name]).still
        corners = shell.points[shell.faces].astype(float)
        across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
        across /= np.maximum(np.linalg.norm(across, axis=1, keepdims=True), 1e-12)
        outer = np.unique(shell.faces[across[:, 1] > 0.3])
        at = outer[(np.abs(shell.points[outer, 0]) < 0.5) & (shell.points[outer, 1] > 0.0)]
        assert len(at) > 20
        assert shell.normals[at, 1].min() > 0.2, name


def test_no_light_comes_through_between_the_two_halves_of_the_skin():
    skin = toy_model().parts["skin.left"]
    # The real skin is cut a tenth of a millimetre beside the midline.
    beside = skin.mesh.copy()
    beside.vertices[:, 0] += 0.1 - beside.vertices[:, 0].min()
    drawn = draw_part(replace(skin, mesh=beside)).still.points
    moved = np.linalg.norm(drawn - beside.vertices, axis=1)
    assert drawn[:, 0].min() == 0.0
    assert moved.max() < 0.11
    assert (moved[beside.vertices[:, 0] > 0.3] < 1e-4).all()
