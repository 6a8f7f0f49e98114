"""Nerves of nape, shoulder and skin in the finished body: what they pass, and in which order."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.drape.distance import MeshIndex


def _line(model, part_id: str) -> np.ndarray:
    return np.asarray(model.parts[part_id].fibres[0], dtype=float)


def _to(model, part_id: str, points: np.ndarray, reach: float = 60.0) -> np.ndarray:
    return MeshIndex.of(model.parts[part_id].mesh).signed_distance(points, reach)[0]


def test_accessory_nerve_passes_sternocleidomastoid_then_trapezius(preview_model):
    line = _line(preview_model, "accessory_nerve.left")
    first = np.flatnonzero(_to(preview_model, "sternocleidomastoid.left", line) < 6.0)
    later = np.flatnonzero(_to(preview_model, "trapezius_descending.left", line) < 6.0)
    assert len(first) and len(later)
    assert first[0] < later[0]
    # Between the two it crosses the posterior triangle.
    assert later[0] - first[0] > 1


def test_accessory_nerve_runs_in_front_of_trapezius_down_to_mid_chest(preview_model):
    line = _line(preview_model, "accessory_nerve.left")
    t6 = preview_model.landmarks["T6.spinous_process"][2]
    assert line[-1, 2] < t6 + 40.0
    behind = preview_model.parts["trapezius_transverse.left"].mesh.vertices
    low = line[line[:, 2] < preview_model.landmarks["T3.spinous_process"][2]]
    for place in low:
        near = behind[np.linalg.norm(behind[:, [0, 2]] - place[[0, 2]], axis=1) < 6.0]
        if len(near):
            assert near[:, 1].max() > place[1]


def test_greater_occipital_nerve_winds_round_the_inferior_oblique(preview_model):
    line = _line(preview_model, "greater_occipital_nerve.left")
    gap = _to(preview_model, "obliquus_capitis_inferior.left", line)
    beside = np.flatnonzero(gap < 8.0)
    belly = preview_model.parts["obliquus_capitis_inferior.left"].mesh.vertices
    # From in front of the belly to behind it, round it and not through it.
    sides = []
    for place in line[beside]:
        near = belly[np.abs(belly[:, 0] - place[0]) < 4.0]
        sides.append(np.sign(place[1] - near[:, 1].mean()))
    assert sides[0] < 0 < sides[-1]
    assert -1.5 < gap[beside].min() < 4.0
    assert line[beside, 0].max() > 20.0
    assert line[-1, 2] > preview_model.landmarks["occipital.external_protuberance"][2]


@pytest.mark.parametrize(
    "part_id",
    [
        "posterior_cutaneous_branch_T3.left",
        "posterior_cutaneous_branch_T10.left",
        "superior_cluneal_nerve_L2.left",
        "middle_cluneal_nerve_S1.left",
    ],
)
def test_cutaneous_nerves_come_through_the_deep_fascia_into_the_fat(full_model, part_id):
    line = _line(full_model, part_id)
    shell = MeshIndex.of(full_model.parts["deep_fascia.left"].mesh)
    _, foot, _ = shell.signed_distance(line, 60.0)
    behind = (line - foot)[:, 1]
    assert behind[0] < -2.0
    assert behind[-2:].max() > 0.3
    skin = MeshIndex.of(full_model.parts["skin.left"].mesh)
    assert (skin.signed_distance(line, 60.0)[0] > 0).all()


@pytest.mark.parametrize("level", ["T1", "T6", "T12", "L2"])
def test_a_white_and_a_grey_ramus_join_nerve_and_ganglion(preview_model, level):
    threads = preview_model.parts[f"ramus_communicans_{level}.left"].fibres
    assert len(threads) == 2
    white, grey = (np.asarray(thread) for thread in threads)
    nerve = _line(preview_model, f"spinal_nerve_{level}.left")
    # The white one leaves the nerve further out.
    out = nerve[-1] - nerve[0]
    assert (white[0] - nerve[0]) @ out > (grey[-1] - nerve[0]) @ out
