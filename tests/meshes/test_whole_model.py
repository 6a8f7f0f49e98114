"""The finished model, every part of it: whole, symmetric, in place.

What is not yet as it should be is counted: a number may fall and never rise.
Nought is the aim for all of them.
"""

import pytest

from meshes.drape.distance import MeshIndex
from meshes.model import STRATUM_COUNT
from meshes.questions import check

KNOWN_FAULTS = {
    "inventory": 0,
    "outward": 0,
    "self_intersection": 0,
    "overlap": 0,
    "contact": 0,
    "attachment": 0,
}
"""Findings that fail at full detail."""


def _failed(findings) -> list[str]:
    return [finding.line() for finding in findings if not finding.ok]


def _within_known(findings, name: str) -> None:
    lines = [f.line() for f in findings if not f.ok and f.check == name]
    assert len(lines) <= KNOWN_FAULTS.get(name, 0), "\n".join(lines)


@pytest.fixture(scope="module")
def indexes(full_model):
    return {part_id: MeshIndex.of(part.mesh) for part_id, part in full_model.parts.items()}


def test_inventory_is_complete_but_for_what_is_known(full_model):
    _within_known(check.inventory(full_model), "inventory")
    assert len(full_model.parts) >= 320


def test_every_part_is_closed(full_model):
    assert sum(check.open_edge_count(p.mesh.faces) for p in full_model.parts.values()) == 0


def test_parts_look_outward_and_do_not_cross_themselves_but_for_what_is_known(full_model):
    findings = check.soundness(full_model.parts.values())
    for name in ("closed", "outward", "self_intersection"):
        _within_known(findings, name)


def test_left_and_right_mirror_each_other(full_model):
    assert _failed(check.symmetry(full_model.parts)) == []


def test_landmarks_lie_on_their_bones_and_in_order(full_model, indexes):
    assert _failed(check.landmarks_on_bone(full_model, indexes)) == []
    assert _failed(check.landmark_order(full_model)) == []


def test_attachments_and_contacts_hold_but_for_what_is_known(full_model, indexes):
    _within_known(check.attachments(full_model, indexes), "attachment")
    _within_known(check.contacts_happen(full_model, indexes), "contact")


def test_triangles_stay_within_reach_of_the_budget(full_model):
    # The budget is 1.5 million; a hundredth more is borne.
    assert sum(len(part.mesh.faces) for part in full_model.parts.values()) <= 1_500_000


def test_the_preview_stays_within_a_quarter_of_a_million_triangles(preview_model):
    assert sum(len(part.mesh.faces) for part in preview_model.parts.values()) <= 250_000


def test_the_preview_passes_every_check_overlaps_included(preview_model):
    findings = check.check_model(preview_model)
    assert {f.check for f in findings} > {"overlap", "attachment", "contact", "closed"}
    assert _failed(findings) == []


def test_every_part_has_a_stratum_a_row_and_its_own_id(full_model):
    for part_id, part in full_model.parts.items():
        assert part.id == part_id
        assert 0 <= part.stratum < STRATUM_COUNT
        assert part.entry in full_model.catalogue


@pytest.mark.slow
def test_preview_has_the_same_parts_as_full(full_model, preview_model):
    assert set(full_model.parts) == set(preview_model.parts)


@pytest.mark.slow
def test_overlaps_are_no_more_than_those_known(full_model, indexes):
    _within_known(check.interpenetration(full_model, indexes), "overlap")
