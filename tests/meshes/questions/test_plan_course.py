"""Whoever asks, a line of the plan runs in one place."""

import numpy as np
import pytest
from scipy.spatial import cKDTree

from meshes.catalogue.plan import Cut, load_plan
from meshes.questions.cover import layers_of
from meshes.questions.expose import cut_lines
from meshes.questions.plan_course import course, evenly
from meshes.questions.rehearse import Rehearser
from tests.fakes import toy_model

PLAN = load_plan()


@pytest.fixture(scope="module")
def preview_layers(preview_model):
    return layers_of(preview_model)


@pytest.fixture(scope="module")
def rehearser(preview_model):
    return Rehearser(preview_model)


def backwards(points):
    return np.tile([0.0, -1.0, 0.0], (len(points), 1))


@pytest.mark.parametrize("step_id", ["rhomboids", "latissimus", "thoracolumbar_fascia", "splenii"])
@pytest.mark.parametrize("side", ["left", "right"])
def test_the_way_in_and_a_rehearsal_lay_the_plan_s_lines_alike(
    preview_model, preview_layers, rehearser, step_id, side
):
    lines = cut_lines(preview_model, preview_layers, PLAN.step(step_id), side)
    rehearsed = rehearser.plan_lines(step_id, side)
    assert lines and rehearsed
    assert {line.words for line in lines} == {line.words for line in rehearsed}
    tree = cKDTree(np.concatenate([evenly(line.outer, 1.0) for line in lines]))
    away = tree.query(np.concatenate([line.points for line in rehearsed]))[0]
    # One lays it on its own rays, 2 mm apart, the other casts some for it; and beyond the end
    # of a layer, where there is nothing to cut, a rehearsal draws no line.
    assert np.median(away) < 3.0


def test_a_course_is_moved_outward_and_ends_at_its_reach():
    model = toy_model()
    upright = [name for name in model.landmarks if name.endswith(".spinous_process")][:2]
    for side, sign in (("left", 1.0), ("right", -1.0)):
        along = tuple(upright)
        plain = course(model, Cut(along, "line"), side, backwards)
        moved = course(model, Cut(along, "line", offset_mm=20.0), side, backwards)
        assert np.allclose((moved - plain)[:, 0], sign * 20.0, atol=1.0)
        short = course(model, Cut(along, "line", reach_mm=10.0), side, backwards)
        assert np.linalg.norm(short[-1] - short[0]) <= 10.0 + 1e-9


def test_a_missing_landmark_gives_no_course():
    model = toy_model()
    assert course(model, Cut(("nowhere.at_all",), "line"), "left", backwards) is None
    assert course(model, Cut((), "line"), "left", backwards) is None
