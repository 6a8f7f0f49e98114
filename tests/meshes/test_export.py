"""What is written is what was built, in the other program's own axes."""

import json
import stat
from pathlib import Path

import numpy as np
import pytest
import trimesh

from meshes.errors import PeelbackError
from meshes.export import (
    chosen_parts,
    glb_bytes,
    model_facts,
    read_glb,
    stl_bytes,
    to_gltf_frame,
    write_bytes,
    write_model,
    write_pieces,
)
from tests.fakes import toy_model


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Path:
    place = tmp_path_factory.mktemp("export")
    write_model(toy_model(), place)
    return place


def test_glb_has_one_mesh_node_a_part_named_by_its_id(folder):
    assert set(read_glb(folder / "model.glb")) == set(toy_model().parts)


def test_reloaded_glb_has_left_at_plus_x_head_at_plus_y_front_at_plus_z(folder):
    meshes = read_glb(folder / "model.glb")
    assert meshes["scapula.left"].centroid[0] > 0.05
    assert meshes["scapula.right"].centroid[0] < -0.05
    assert meshes["vertebra_C7"].centroid[1] > meshes["vertebra_L3"].centroid[1] + 0.2
    # The trapezius lies behind the vertebra, hence at smaller Z.
    assert meshes["trapezius_transverse.left"].centroid[2] < meshes["vertebra_T4"].centroid[2]


def test_glb_says_its_unit_and_axes_and_what_it_is_not_for(folder):
    raw = (folder / "model.glb").read_bytes()
    asset = json.loads(raw[20 : 20 + int.from_bytes(raw[12:16], "little")])["asset"]
    assert asset["extras"]["unit"] == "m"  # glTF 2.0, section 3.4: all linear distances in metres
    assert all(way in asset["extras"]["axes"] for way in ("+x", "+y", "+z"))
    assert "not for needle" in asset["extras"]["caution"]


def test_gltf_frame_is_a_rotation_and_no_mirror():
    turn = to_gltf_frame(np.eye(3)).T * 1000
    assert np.linalg.det(turn) == pytest.approx(1)
    assert turn @ turn.T == pytest.approx(np.eye(3))


def test_reloaded_meshes_are_closed_outward_and_of_the_right_volume(folder):
    meshes = read_glb(folder / "model.glb")
    for part_id, part in toy_model().parts.items():
        assert meshes[part_id].is_watertight, part_id
        assert meshes[part_id].volume * 1e9 == pytest.approx(part.mesh.volume, rel=1e-4)


def test_glb_carries_unit_normals_and_fibre_coordinates(folder):
    mesh = read_glb(folder / "model.glb")["rhomboid_major.left"]
    part = toy_model().parts["rhomboid_major.left"]
    assert np.linalg.norm(mesh.vertex_normals, axis=1) == pytest.approx(1)
    # trimesh turns v upside down on loading, as its own frame has v upward.
    uv = np.asarray(mesh.visual.uv)
    assert uv[:, 0] == pytest.approx(part.uv[:, 0], abs=1e-6)
    assert 1 - uv[:, 1] == pytest.approx(part.uv[:, 1], abs=1e-6)


def test_normals_in_the_glb_point_outward():
    data = glb_bytes([toy_model().parts["skin.left"]])
    head_length = int.from_bytes(data[12:16], "little")
    head = json.loads(data[20 : 20 + head_length])
    body = data[28 + head_length :]
    views = [
        np.frombuffer(body, "<f4", view["byteLength"] // 4, view["byteOffset"]).reshape(-1, 3)
        for view in head["bufferViews"][:2]
    ]
    points, normals = views
    outward = points - (points.max(axis=0) + points.min(axis=0)) / 2
    assert np.all(np.sum(outward * normals, axis=1) > 0)


def test_same_model_gives_the_same_bytes():
    parts = toy_model().parts.values()
    assert glb_bytes(parts) == glb_bytes(parts)


def test_model_json_holds_what_other_tools_rely_on(folder):
    facts = json.loads((folder / "model.json").read_text())
    model = toy_model()
    assert facts["parameters"] == model.body.as_dict()
    assert set(facts["parts"]) == set(model.parts)
    part = facts["parts"]["rhomboid_major.left"]
    assert (part["kind"], part["stratum"], part["group"]) == ("muscle", 3, "rhomboids")
    assert part["names"]["english"] == "left rhomboid major"
    assert part["names"]["latin"] == "musculus rhomboideus major"
    assert [a["kind"] for a in part["attachments"]] == ["origin", "insertion"]
    assert np.array(part["attachments"][0]["curve"]).shape[1] == 3
    assert facts["landmarks"]["T7.spinous_process"] == [0.0, 40.0, 280.0]
    assert np.array(facts["landmarks"]["ilium.left.crest"]).shape == (3, 3)
    assert facts["contacts"][0]["kind"] == "attach"
    assert set(facts["catalogue"]) == set(model.catalogue)


def test_facts_are_json_without_loss_of_order():
    assert list(model_facts(toy_model())["parts"]) == list(toy_model().parts)


@pytest.mark.parametrize(("pieces", "count"), [("whole", 1), ("stratum", 11), ("part", None)])
@pytest.mark.parametrize("form", ["stl", "glb"])
def test_files_can_be_written_whole_by_stratum_and_by_part(tmp_path, form, pieces, count):
    paths = write_pieces(toy_model(), tmp_path, form, pieces)
    assert len(paths) == (count or len(toy_model().parts))
    back = trimesh.load(paths[0], file_type=form, force="mesh")
    assert len(back.faces) > 0


def test_reloaded_stl_is_closed_outward_and_of_the_right_volume_in_cubic_millimetres(tmp_path):
    parts = toy_model().parts
    for path in write_pieces(toy_model(), tmp_path, "stl", "part"):
        back = trimesh.load(path)
        assert back.is_watertight, path.name
        assert back.volume == pytest.approx(parts[path.stem].mesh.volume, rel=1e-4), path.name


def test_reloaded_glb_of_one_part_is_in_metres(tmp_path):
    part = toy_model().parts["scapula.left"]
    (path,) = write_pieces(toy_model(), tmp_path, "glb", "part", ["scapula.left"])
    back = read_glb(path)["scapula.left"]
    assert back.extents * 1000 == pytest.approx(part.mesh.extents[[0, 2, 1]], abs=1e-3)


@pytest.mark.parametrize("pieces", ["whole", "stratum", "part"])
def test_another_library_finds_printed_files_closed_and_in_millimetres(tmp_path, pieces):
    """VTK reads the STL files back: no open edge, none with three faces, the model's own size."""
    from vtkmodules.vtkFiltersCore import vtkCleanPolyData, vtkFeatureEdges
    from vtkmodules.vtkIOGeometry import vtkSTLReader

    model = toy_model()
    bounds = []
    for path in write_pieces(model, tmp_path, "stl", pieces):
        reader = vtkSTLReader()
        reader.SetFileName(str(path))
        reader.MergingOff()
        clean = vtkCleanPolyData()
        clean.SetInputConnection(reader.GetOutputPort())
        clean.SetTolerance(0.0)
        edges = vtkFeatureEdges()
        edges.SetInputConnection(clean.GetOutputPort())
        edges.FeatureEdgesOff()
        edges.ManifoldEdgesOff()
        edges.NonManifoldEdgesOff()
        edges.Update()
        assert clean.GetOutput().GetNumberOfCells() > 0
        assert edges.GetOutput().GetNumberOfCells() == 0, path.name
        bounds.append(np.reshape(clean.GetOutput().GetBounds(), (3, 2)))
    ours = np.array([part.mesh.bounds for part in model.parts.values()])
    low, high = ours[:, 0].min(axis=0), ours[:, 1].max(axis=0)
    assert np.min([b[:, 0] for b in bounds], axis=0) == pytest.approx(low, abs=1e-3)
    assert np.max([b[:, 1] for b in bounds], axis=0) == pytest.approx(high, abs=1e-3)


@pytest.mark.parametrize("pieces", ["whole", "stratum", "part"])
def test_another_library_finds_glb_files_in_metres_and_in_the_axes_of_gltf(tmp_path, pieces):
    from vtkmodules.vtkIOGeometry import vtkGLTFReader

    model, bounds = toy_model(), []
    for path in write_pieces(model, tmp_path, "glb", pieces):
        reader = vtkGLTFReader()
        reader.SetFileName(str(path))
        reader.Update()
        each = np.zeros(6)
        reader.GetOutput().GetBounds(each)
        bounds.append(each.reshape(3, 2))
    ours = np.array([part.mesh.bounds for part in model.parts.values()])
    low, high = ours[:, 0].min(axis=0), ours[:, 1].max(axis=0)
    # Left +X, head +Y, front +Z: LPS (x, y, z) goes to (x, z, -y).
    wanted = np.array([[low[0], high[0]], [low[2], high[2]], [-high[1], -low[1]]]) / 1000.0
    assert np.min([b[:, 0] for b in bounds], axis=0) == pytest.approx(wanted[:, 0], abs=1e-5)
    assert np.max([b[:, 1] for b in bounds], axis=0) == pytest.approx(wanted[:, 1], abs=1e-5)


@pytest.mark.slow
def test_every_printed_part_of_the_real_back_reloads_closed(preview_model, tmp_path):
    open_parts = []
    for part in preview_model.parts.values():
        path = write_bytes(tmp_path / "part.stl", stl_bytes([part]))
        if not trimesh.load(path).is_watertight:
            open_parts.append(part.id)
    assert open_parts == []


@pytest.mark.parametrize(
    ("name", "count"),
    [
        ("rhomboid_major.left", 1),
        ("rhomboid_major", 2),
        ("trapezius", 6),
        ("posterior_cutaneous_branch", 2),
        ("vertebra_T4", 1),
    ],
)
def test_parts_are_chosen_by_id_name_row_and_group(name, count):
    assert len(chosen_parts(toy_model(), [name])) == count


def test_a_stratum_is_chosen_by_its_number():
    chosen = chosen_parts(toy_model(), ["stratum_3", "rhomboid_major.left"])
    assert {part.stratum for part in chosen} == {3}
    assert len(chosen) == len({part.id for part in chosen}) == 10


def test_unknown_part_is_refused_with_the_nearest_names():
    with pytest.raises(PeelbackError, match="rhomboid_major"):
        chosen_parts(toy_model(), ["rhomboid_mayor"])


def test_stl_stays_in_lps_millimetres(tmp_path):
    part = toy_model().parts["scapula.left"]
    path = write_bytes(tmp_path / "scapula.stl", stl_bytes([part]))
    assert trimesh.load(path).bounds == pytest.approx(part.mesh.bounds, abs=1e-3)


def test_unknown_way_of_cutting_up_is_refused(tmp_path):
    with pytest.raises(PeelbackError, match="whole, stratum, part"):
        write_pieces(toy_model(), tmp_path, "stl", "slices")
    with pytest.raises(PeelbackError, match="stl, glb"):
        write_pieces(toy_model(), tmp_path, "obj", "part")


def test_failed_write_leaves_neither_file_nor_scrap(tmp_path):
    (tmp_path / "taken").mkdir()
    with pytest.raises(PeelbackError, match="cannot write"):
        write_bytes(tmp_path / "taken", b"x")
    assert [p.name for p in tmp_path.iterdir()] == ["taken"]


def test_written_files_can_be_read_by_others(folder):
    assert (folder / "model.json").stat().st_mode & stat.S_IRUSR
