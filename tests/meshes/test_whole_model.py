"""The finished model, every part of it: whole, symmetric, in place."""

import pytest

from meshes.drape.distance import MeshIndex
from meshes.model import STRATUM_COUNT
from meshes.questions import check


def _failed(findings) -> list[str]:
    return [finding.line() for finding in findings if not finding.ok]


def test_no_row_of_the_inventory_is_missing(full_model):
    assert _failed(check.inventory(full_model)) == []
    assert len(full_model.parts) >= 320


def test_every_part_is_closed_outward_and_free_of_self_intersection(full_model):
    assert _failed(check.soundness(full_model.parts.values())) == []


def test_left_and_right_mirror_each_other(full_model):
    assert _failed(check.symmetry(full_model.parts)) == []


def test_landmarks_lie_on_their_bones_and_in_order(full_model):
    bones = {i: MeshIndex.of(p.mesh) for i, p in full_model.parts.items() if p.kind == "bone"}
    assert _failed(check.landmarks_on_bone(full_model, bones)) == []
    assert _failed(check.landmark_order(full_model)) == []


def test_triangles_stay_within_the_budget_of_each_detail(full_model, preview_model):
    for model, most in ((full_model, 1_500_000), (preview_model, 250_000)):
        assert sum(len(part.mesh.faces) for part in model.parts.values()) <= most


def test_every_part_has_a_stratum_a_row_and_its_own_id(full_model):
    for part_id, part in full_model.parts.items():
        assert part.id == part_id
        assert 0 <= part.stratum < STRATUM_COUNT
        assert part.entry in full_model.catalogue


def test_preview_has_the_same_parts_as_full(full_model, preview_model):
    assert set(full_model.parts) == set(preview_model.parts)


@pytest.mark.slow
def test_nothing_lies_in_anything_else_and_everything_is_attached(full_model):
    indexes = {part_id: MeshIndex.of(part.mesh) for part_id, part in full_model.parts.items()}
    assert _failed(check.attachments(full_model, indexes)) == []
    assert _failed(check.contacts_happen(full_model, indexes)) == []
    assert _failed(check.interpenetration(full_model, indexes)) == []
