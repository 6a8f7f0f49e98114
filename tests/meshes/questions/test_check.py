"""Each check finds the fault that is planted for it, and none where there is none."""

from dataclasses import replace

import numpy as np
import pytest
import trimesh

from meshes.drape.distance import MeshIndex
from meshes.model import Attachment, Contact, Part, mirror_part
from meshes.questions import check
from tests.fakes import toy_model


def _box(part_id: str, low, high, kind: str = "muscle", cuts: int = 2) -> Part:
    low, high = np.asarray(low, float), np.asarray(high, float)
    mesh = trimesh.creation.box(high - low)
    for _ in range(cuts):
        mesh = mesh.subdivide()
    mesh = trimesh.Trimesh(mesh.vertices + (low + high) / 2, mesh.faces, process=False)
    return Part(part_id, part_id, kind, 2, "", mesh)


def _model(*parts: Part, contacts=(), landmarks=None):
    return replace(
        toy_model(),
        parts={part.id: part for part in parts},
        contacts=tuple(contacts),
        landmarks=landmarks or {},
    )


def _indexes(model):
    return {part_id: MeshIndex.of(part.mesh) for part_id, part in model.parts.items()}


def _overlaps(model) -> dict[str, check.Finding]:
    return {f.id: f for f in check.interpenetration(model, _indexes(model))}


SLAB = _box("slab", (-40, 0, -40), (40, 10, 40), cuts=4)


# --- each mesh by itself


def test_sound_box_has_three_good_findings():
    assert [f.ok for f in check.soundness([SLAB])] == [True, True, True]


def test_missing_triangle_is_found():
    mesh = trimesh.Trimesh(SLAB.mesh.vertices, SLAB.mesh.faces[1:], process=False)
    closed = check.soundness([replace(SLAB, mesh=mesh)])[0]
    assert (closed.ok, closed.value) == (False, 3.0)


def test_one_turned_triangle_is_found():
    faces = np.array(SLAB.mesh.faces)
    faces[0] = faces[0][::-1]
    assert check.open_edge_count(faces) > 0


def test_inward_mesh_is_found():
    mesh = trimesh.Trimesh(SLAB.mesh.vertices, SLAB.mesh.faces[:, ::-1], process=False)
    assert [f.ok for f in check.soundness([replace(SLAB, mesh=mesh)])] == [True, False, True]


def test_mesh_that_passes_through_itself_is_found():
    # A little off the grid of the slab: triangles that only share edges touch, not cross.
    one, two = SLAB.mesh, _box("x", (-4.9, -19.9, -4.8), (5.1, 20.1, 5.2)).mesh
    crossing = trimesh.util.concatenate([one, two])
    findings = check.soundness([replace(SLAB, mesh=crossing)])
    assert [f.ok for f in findings] == [True, True, False]
    assert findings[2].value >= 8


def test_vertex_that_is_not_a_number_is_found():
    vertices = np.array(SLAB.mesh.vertices)
    vertices[3, 1] = np.nan
    broken = replace(SLAB, mesh=trimesh.Trimesh(vertices, SLAB.mesh.faces, process=False))
    assert "not a number" in check._bad_numbers(broken)


def test_fibre_coordinates_of_the_wrong_length_are_found():
    broken = replace(SLAB, uv=np.zeros((3, 2), np.float32))
    assert not check.soundness([broken])[0].ok


# --- parts against each other


def test_parts_with_a_gap_do_not_overlap():
    found = _overlaps(_model(SLAB, _box("other", (-5, 10.2, -5), (5, 20, 5))))
    assert list(found) == ["overlap:worst"]
    assert found["overlap:worst"].ok


@pytest.mark.parametrize(("depth", "ok"), [(0.5, True), (3.0, False)])
def test_overlap_is_measured_and_judged(depth, ok):
    found = _overlaps(_model(SLAB, _box("other", (-5, 10 - depth, -5), (5, 20, 5))))
    finding = found["overlap:slab|other"]
    assert finding.value == pytest.approx(depth, abs=0.01)
    assert finding.ok is ok
    assert found["overlap:worst"].value == pytest.approx(depth, abs=0.01)


@pytest.mark.parametrize("seed", range(5))
def test_overlap_does_not_depend_on_the_order_of_vertices(seed):
    rng = np.random.default_rng(seed)
    rod = _box("rod", (-2, 9.3, -60), (2, 16, 60), cuts=4)
    order = rng.permutation(len(rod.mesh.vertices))
    place = np.argsort(order)
    mesh = trimesh.Trimesh(
        rod.mesh.vertices[order], rng.permutation(place[rod.mesh.faces]), process=False
    )
    found = _overlaps(_model(SLAB, replace(rod, mesh=mesh)))
    assert found["overlap:slab|rod"].value == pytest.approx(0.7, abs=1e-6)


def test_part_wholly_inside_another_is_found():
    found = _overlaps(_model(SLAB, _box("pea", (-1, 4, -1), (1, 6, 1))))
    assert found["overlap:slab|pea"].value == pytest.approx(5, abs=1)
    assert not found["overlap:slab|pea"].ok


def test_declared_containment_is_no_overlap_but_the_reverse_is():
    pea = _box("pea", (-1, 4, -1), (1, 6, 1))
    empty = np.zeros((0, 3))
    assert (
        list(_overlaps(_model(SLAB, pea, contacts=[Contact("slab", "pea", "contain", empty)])))[:-1]
        == []
    )
    wrong = _model(SLAB, pea, contacts=[Contact("pea", "slab", "contain", empty)])
    assert not _overlaps(wrong)["overlap:slab|pea"].ok


def test_overlap_on_the_right_is_reported_as_on_the_left():
    ribs = [_box("rib.left", (10, 0, 0), (30, 10, 10)), _box("slip.left", (12, 7, 2), (20, 20, 8))]
    found = _overlaps(_model(*ribs, *(mirror_part(rib) for rib in ribs)))
    left, right = found["overlap:rib.left|slip.left"], found["overlap:rib.right|slip.right"]
    assert left.value == right.value == pytest.approx(3, abs=0.01)


def test_overlap_on_the_right_alone_is_found():
    rib = _box("rib.left", (10, 0, 0), (30, 10, 10))
    apart = _box("slip.left", (12, 11, 2), (20, 20, 8))
    into = _box("slip.right", (-20, 7, 2), (-12, 20, 8))
    found = _overlaps(_model(rib, mirror_part(rib), apart, into))
    assert not found["overlap:rib.right|slip.right"].ok
    assert "overlap:rib.left|slip.left" not in found


PEG = _box("peg", (-2, 8.5, -2), (2, 30, 2))


def test_attachment_is_exempt_near_its_line():
    line = np.array([[-3.0, 10, 0], [3.0, 10, 0]])
    attached = replace(PEG, attachments=(Attachment("insertion", "slab", line),))
    assert list(_overlaps(_model(SLAB, attached)))[:-1] == []


def test_attachment_exempts_nothing_far_from_its_line():
    line = np.array([[-30.0, 10, 20], [-30.0, 10, 30]])
    attached = replace(PEG, attachments=(Attachment("insertion", "slab", line),))
    assert _overlaps(_model(SLAB, attached))["overlap:slab|peg"].value == pytest.approx(1.5)


def test_attachment_exempts_only_two_millimetres_of_depth():
    deep = _box("peg", (-2, 7, -2), (2, 30, 2))
    line = np.array([[-3.0, 10, 0], [3.0, 10, 0]])
    deep = replace(deep, attachments=(Attachment("insertion", "slab", line),))
    assert not _overlaps(_model(SLAB, deep))["overlap:slab|peg"].ok


def test_slips_on_two_ribs_exempt_nothing_between_the_ribs():
    # The line's two points are 60 mm apart: the peg half way is not at either.
    line = np.array([[-30.0, 10, 0], [30.0, 10, 0]])
    attached = replace(PEG, attachments=(Attachment("insertion", "slab", line),))
    assert not _overlaps(_model(SLAB, attached))["overlap:slab|peg"].ok


def test_nerve_may_pierce_where_it_is_declared_and_nowhere_else():
    tube = trimesh.creation.cylinder(radius=1.5, height=60, sections=16)
    tube.apply_transform(trimesh.transformations.rotation_matrix(np.pi / 2, (1, 0, 0)))
    tube = trimesh.Trimesh(tube.vertices, tube.faces, process=False)
    nerve = Part("nerve", "nerve", "nerve", 1, "", tube)
    thin = _box("sheet", (-40, 0, -40), (40, 4, 40), cuts=5)
    here = Contact("nerve", "sheet", "pierce", np.array([[0.0, 2, 0]]))
    there = Contact("nerve", "sheet", "pierce", np.array([[20.0, 2, 0]]))
    assert not [k for k in _overlaps(_model(thin, nerve, contacts=[here])) if "|" in k]
    assert [k for k in _overlaps(_model(thin, nerve, contacts=[there])) if "|" in k]


# --- contacts, attachments, symmetry


def test_declared_contact_that_does_not_happen_is_found():
    far = _box("far", (-5, 30, -5), (5, 40, 5))
    model = _model(SLAB, far, contacts=[Contact("slab", "far", "abut", np.array([[0.0, 20, 0]]))])
    finding = check.contacts_happen(model, _indexes(model))[0]
    assert not finding.ok
    assert finding.value == pytest.approx(20)


def test_contact_that_happens_is_well():
    near = _box("near", (-5, 10.3, -5), (5, 20, 5))
    model = _model(SLAB, near, contacts=[Contact("slab", "near", "abut", np.array([[0.0, 10, 0]]))])
    assert check.contacts_happen(model, _indexes(model))[0].ok


def test_contact_with_what_is_not_built_is_found():
    model = _model(SLAB, contacts=[Contact("slab", "ghost", "abut", np.zeros((1, 3)))])
    assert "ghost" in check.contacts_happen(model, _indexes(model))[0].what


def test_container_must_hold_what_it_declares():
    pea = _box("pea", (-1, 8, -1), (1, 12, 1))
    model = _model(SLAB, pea, contacts=[Contact("slab", "pea", "contain", np.zeros((0, 3)))])
    finding = check.contacts_happen(model, _indexes(model))[0]
    assert (finding.ok, finding.value) == (False, pytest.approx(2))


@pytest.mark.parametrize(("height", "ok"), [(10.0, True), (14.5, False)])
def test_attachment_line_must_lie_on_both_parts(height, ok):
    peg = _box("peg", (-5, 10.2, -5), (5, 30, 5))
    line = np.array([[-3.0, height, 0], [3.0, height, 0]])
    model = _model(SLAB, replace(peg, attachments=(Attachment("origin", "slab", line),)))
    finding = check.attachments(model, _indexes(model))[0]
    assert finding.ok is ok


def test_attachment_to_nothing_is_found():
    model = _model(replace(SLAB, attachments=(Attachment("origin", "ghost", np.zeros((2, 3))),)))
    assert not check.attachments(model, _indexes(model))[0].ok


def test_toy_is_symmetric_and_a_moved_vertex_is_not():
    assert all(f.ok for f in check.symmetry(toy_model().parts))
    left = _box("rib.left", (10, 0, 0), (20, 5, 5))
    right = mirror_part(left)
    vertices = np.array(right.mesh.vertices)
    vertices[0] += 0.01
    right = replace(right, mesh=trimesh.Trimesh(vertices, right.mesh.faces, process=False))
    assert not check.symmetry({left.id: left, right.id: right})[0].ok
    assert not check.symmetry({left.id: left})[0].ok


# --- the real model


def test_a_level_out_of_order_is_found():
    model = toy_model()
    swapped = dict(model.landmarks)
    swapped["T4.spinous_process"], swapped["T7.spinous_process"] = (
        swapped["T7.spinous_process"],
        swapped["T4.spinous_process"],
    )
    finding = check.landmark_order(replace(model, landmarks=swapped))[0]
    assert "out of order: T7.spinous_process" in finding.what


def test_finding_reads_as_one_line():
    finding = check.Finding("overlap:a|b", "overlap in mm", 2.0, 1.0, False)
    assert finding.line() == "FAIL overlap:a|b: overlap in mm [2.00; at most 1]"
    assert finding.as_dict() == {
        "id": "overlap:a|b",
        "what": "overlap in mm",
        "value": 2.0,
        "limit": 1.0,
        "ok": False,
    }


def test_summary_counts_failures_by_check():
    findings = [
        check.Finding("closed:a", "", 0.0, 0.0, True),
        check.Finding("closed:b", "", 3.0, 0.0, False),
        check.Finding("symmetry:a.left", "", 0.0, 0.0, True),
    ]
    assert check.summary(findings) == ["FAIL closed: 1 of 2", "ok   symmetry: 1 of 1"]
