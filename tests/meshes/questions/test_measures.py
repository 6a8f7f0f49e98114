"""Measures give the known answer on shapes whose answer is known."""

import numpy as np
import pytest
import trimesh

from meshes.questions.measures import plane_axes, section_area, section_polygons
from meshes.questions.published import MEASURES, published_values


def test_section_of_a_ball_is_its_disc():
    ball = trimesh.creation.icosphere(subdivisions=5, radius=10)
    assert section_area(ball, np.array([0, 0, 6.01]), np.array([0, 0, 1.0])) == pytest.approx(
        np.pi * 64, rel=0.01
    )


def test_section_of_a_tube_leaves_out_its_bore():
    tube = trimesh.creation.annulus(r_min=4, r_max=6, height=20, sections=128)
    assert section_area(tube, np.array([0, 0, 1.3]), np.array([0, 0, 1.0])) == pytest.approx(
        np.pi * 20, rel=0.01
    )


def test_oblique_section_of_a_bar_is_longer():
    bar = trimesh.creation.box((10, 10, 100))
    area = section_area(bar, np.array([0.1, 0.2, 0.3]), np.array([0, 1.0, 1.0]))
    assert area == pytest.approx(100 * np.sqrt(2))


def test_two_legs_are_two_pieces():
    legs = trimesh.util.concatenate(
        [trimesh.creation.icosphere(radius=5).apply_translation((x, 0, 0)) for x in (-9, 9)]
    )
    assert len(section_polygons(legs, np.array([0, 0, 0.3]), np.array([0, 0, 1.0]))) == 2


def test_axes_of_a_square_plane_are_the_models_own():
    assert plane_axes([1.0, 0, 0]) == pytest.approx(np.array([[0, 1.0, 0], [0, 0, 1.0]]))
    assert plane_axes([0, 0, 1.0]) == pytest.approx(np.array([[1.0, 0, 0], [0, 1.0, 0]]))


def test_every_published_value_has_a_measure_a_source_and_a_role():
    values = published_values()
    assert len(values) > 150
    for value in values:
        assert value.measure in MEASURES
        assert value.source
        assert value.role in ("input", "held_out")
    assert any(not value.seen for value in values)
    assert any(value.role == "held_out" and value.seen for value in values)
