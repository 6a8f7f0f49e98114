"""Picking with rays, held against what an eye sees in the midline."""

import numpy as np
import pytest

from viewer.scene.raycast import RayTarget, seen_at_midline

INWARD = np.array([0.0, -1.0, 0.0])


@pytest.fixture(scope="module")
def target(preview_model):
    return RayTarget({i: (p.vertices, p.faces) for i, p in preview_model.parts.items()})


def names_down_the_midline(model, target, shown, cast):
    skin = model.parts["skin.left"].vertices
    heights = np.linspace(skin[:, 2].min() + 40, skin[:, 2].max() - 40, 40)
    hits = [cast(np.array([0.0, 3000.0, z]), INWARD, shown) for z in heights]
    return [hit and hit[0] for hit in hits]


def seen(target):
    return lambda *line: seen_at_midline(target.first_hit, *line)


def test_in_the_midline_the_skin_is_met_and_not_what_lies_in_the_slit(preview_model, target):
    shown = list(preview_model.parts)
    plain = names_down_the_midline(preview_model, target, shown, target.first_hit)
    assert any(not name.startswith("skin") for name in plain)  # there is a slit
    for name in names_down_the_midline(preview_model, target, shown, seen(target)):
        assert name.startswith("skin")


def test_what_lies_open_in_the_midline_is_met(preview_model, target):
    # Between the two trapezii lies the supraspinous ligament on the spines.
    shown = [p.id for p in preview_model.parts.values() if p.kind in ("bone", "ligament")]
    place = np.array([0.0, 3000.0, preview_model.landmarks["T7.spinous_process"][2]])
    name = seen(target)(place, INWARD, shown)[0]
    assert name in ("supraspinous_ligament", "vertebra_T7", "vertebra_T6")


def test_nothing_is_found_beside_the_body(target, preview_model):
    assert seen(target)(np.array([900.0, 3000.0, 0.0]), INWARD, list(preview_model.parts)) is None
