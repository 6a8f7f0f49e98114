"""Where finished parts overlap the softer gives way, and only as far as it must."""

import numpy as np
import pytest
import trimesh

from meshes.drape.audit import is_closed, overlap_depth, self_intersections
from meshes.drape.distance import MeshIndex
from meshes.drape.yielding import BORNE_MM, Parting, _beside_moving, part_overlapping
from meshes.model import Contact, Part, mirror_points


def _ball(part_id: str, kind: str, radius: float, at) -> Part:
    mesh = trimesh.creation.icosphere(subdivisions=4, radius=radius)
    mesh = trimesh.Trimesh(mesh.vertices + np.asarray(at, float), mesh.faces, process=False)
    return Part(part_id, part_id.split(".")[0], kind, 5, "", mesh)


def _plate(part_id: str, kind: str, size, at) -> Part:
    mesh = trimesh.creation.box(size)
    while mesh.edges_unique_length.max() > 2.0:
        mesh = mesh.subdivide()
    mesh = trimesh.Trimesh(mesh.vertices + np.asarray(at, float), mesh.faces, process=False)
    return Part(part_id, part_id.split(".")[0], kind, 5, "", mesh)


def _depth(a, b) -> float:
    return overlap_depth(MeshIndex.of(a), MeshIndex.of(b))[0]


def _parted(*parts: Part, contacts=()):
    moved = part_overlapping({p.id: p for p in parts}, contacts)
    return {p.id: moved.get(p.id, p.mesh) for p in parts}, moved


@pytest.mark.parametrize("depth", [0.6, 1.0, 2.0])
def test_muscle_gives_way_to_bone_and_bone_stays(depth):
    bone = _ball("bone.left", "bone", 12.0, (40, 0, 0))
    muscle = _ball("muscle.left", "muscle", 15.0, (40 + 27 - depth, 0, 0))
    meshes, moved = _parted(bone, muscle)
    assert set(moved) == {"muscle.left"}
    assert _depth(meshes["bone.left"], meshes["muscle.left"]) <= BORNE_MM + 0.05
    assert is_closed(moved["muscle.left"])
    assert len(self_intersections(moved["muscle.left"])) == 0
    assert np.array_equal(moved["muscle.left"].faces, muscle.mesh.faces)


def test_it_moves_only_near_the_overlap():
    bone = _ball("bone.left", "bone", 12.0, (40, 0, 0))
    muscle = _ball("muscle.left", "muscle", 15.0, (66, 0, 0))
    _, moved = _parted(bone, muscle)
    change = np.linalg.norm(moved["muscle.left"].vertices - muscle.mesh.vertices, axis=1)
    far = np.linalg.norm(muscle.mesh.vertices - [51.5, 0, 0], axis=1) > 12
    assert change.max() < 1.5
    assert change[far].max() == 0.0


def test_a_declared_contact_is_left_alone():
    bone = _ball("bone.left", "bone", 12.0, (40, 0, 0))
    muscle = _ball("muscle.left", "muscle", 15.0, (66, 0, 0))
    place = Contact("muscle.left", "bone.left", "attach", np.array([[51.5, 0.0, 0.0]]))
    assert _parted(bone, muscle, contacts=[place])[1] == {}


def test_parts_that_barely_touch_are_left_alone():
    bone = _ball("bone.left", "bone", 12.0, (40, 0, 0))
    muscle = _ball("muscle.left", "muscle", 15.0, (40 + 27 - 0.3, 0, 0))
    assert _parted(bone, muscle)[1] == {}


def test_a_thin_sheet_moves_as_a_whole_out_of_a_bone():
    bone = _ball("bone.left", "bone", 12.0, (40, 0, 0))
    sheet = _plate("fascia.left", "fascia", (0.8, 24, 24), (40 + 12 - 0.4, 0, 0))
    meshes, moved = _parted(bone, sheet)
    assert _depth(meshes["bone.left"], meshes["fascia.left"]) <= BORNE_MM + 0.05
    assert len(self_intersections(moved["fascia.left"])) == 0
    assert moved["fascia.left"].volume == pytest.approx(sheet.mesh.volume, rel=0.1)


def test_a_left_part_gives_way_to_its_own_mirror_image():
    muscle = _ball("muscle.left", "muscle", 10.0, (9.3, 0, 0))
    meshes, _ = _parted(muscle)
    mesh = meshes["muscle.left"]
    twin = trimesh.Trimesh(mirror_points(mesh.vertices), mesh.faces[:, ::-1], process=False)
    assert _depth(mesh, twin) <= BORNE_MM + 0.05


def test_a_median_part_is_cleared_of_the_right_side_too():
    ligament = _ball("ligament", "ligament", 10.0, (0, 0, 0))
    # Leaning to the right, it reaches only the right twin of the bone.
    ligament.mesh.vertices[:, 0] -= 0.6
    bone = _ball("bone.left", "bone", 12.0, (21.9, 0, 0))
    meshes, moved = _parted(bone, ligament)
    right = trimesh.Trimesh(
        mirror_points(bone.mesh.vertices), bone.mesh.faces[:, ::-1], process=False
    )
    assert set(moved) == {"ligament"}
    assert _depth(meshes["ligament"], right) <= BORNE_MM + 0.05


def test_a_place_that_finds_no_way_out_does_not_hold_back_another():
    sheet = _plate("muscle.left", "muscle", (1.6, 24, 80), (60, 0, 0))
    free = _ball("free.left", "bone", 12.0, (60 + 0.8 + 12 - 1.2, 0, 28))
    vice = [
        _ball(f"vice_{n}.left", "bone", 12.0, (60 + sign * (0.8 + 12 - 1.2), 0, -28))
        for n, sign in enumerate((1, -1))
    ]
    meshes, _ = _parted(sheet, free, *vice)
    assert _depth(meshes["free.left"], meshes["muscle.left"]) <= BORNE_MM + 0.05
    assert len(self_intersections(meshes["muscle.left"])) == 0


def test_smaller_triangles_let_a_stuck_place_give_way():
    box = trimesh.creation.box((1.2, 40.0, 40.0))
    faces = box.faces
    mesh = trimesh.Trimesh(box.vertices + [60, 0, 0], faces, process=False)
    along = ((mesh.vertices[:, 2] + 20.0) / 40.0).astype(np.float32)
    sheet = Part("muscle.left", "muscle", "muscle", 5, "", mesh, uv=np.stack([along, along], 1))
    # One bone presses on the middle; others hold the corners where they are.
    bones = [_ball("middle.left", "bone", 12.0, (60 + 0.6 + 12 - 1.8, 4, 7))]
    bones += [
        _ball(f"corner_{y}_{z}.left", "bone", 12.0, (60 - 0.6 - 12, y, z))
        for y in (-18, 18)
        for z in (-18, 18)
    ]
    parts = {part.id: part for part in (sheet, *bones)}
    parting = Parting(parts)
    parting.apart(parts, ())
    before = _depth(bones[0].mesh, parting.mesh("muscle.left"))
    assert before > BORNE_MM + 0.1
    for _ in range(3):
        parts |= {name: parting.part(name) for name in parting.refine(parts, ())}
        parting.apart(parts, ())
    found = parting.part("muscle.left")
    assert all(_depth(bone.mesh, found.mesh) <= BORNE_MM + 0.05 for bone in bones)
    assert is_closed(found.mesh)
    assert len(self_intersections(found.mesh)) == 0
    assert len(found.uv) == len(found.mesh.vertices)
    assert all(np.array_equal(parting.mesh(b.id).vertices, b.mesh.vertices) for b in bones)


def test_a_large_triangle_counts_as_wide_as_it_is():
    """A dent may go through the middle of a triangle whose corners are all far away."""
    corners = [[-40, -40, 0], [40, -40, 0], [0, 40, 0], [-1, -10, 1], [1, -10, 1], [0, -9, 1]]
    faces = np.array([[0, 1, 2], [3, 4, 5]])
    moving = np.array([False, False, False, True, True, True])
    near = _beside_moving(np.array(corners, float), faces, moving, 2.0)
    assert near.tolist() == faces.tolist()
    apart = np.array(corners, float) + np.repeat([[0.0, 0, 0], [0.0, 0, 90]], 3, axis=0)
    assert _beside_moving(apart, faces, moving, 2.0).tolist() == faces[1:].tolist()
