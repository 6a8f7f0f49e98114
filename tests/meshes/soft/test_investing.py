"""The collar that holds neck muscles down."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest
import trimesh

from meshes.drape.field import Field
from meshes.soft.investing import collar, held_down

NECK_MM = 45.0
NEED_MM = 2.0


@pytest.fixture(scope="module")
def column() -> Field:
    """A round column (the neck) on a broad round plate (the shoulders)."""
    field = Field(np.array([-18.0, -150, -40]), np.array([150.0, 150, 200]), 3.0)
    field.add_mesh(
        trimesh.creation.cylinder(NECK_MM, 220.0, sections=96).apply_translation([0, 0, 90])
    )
    field.add_mesh(
        trimesh.creation.cylinder(130.0, 20.0, sections=96).apply_translation([0, 0, -10])
    )
    return field


@pytest.fixture(scope="module")
def laid(column):
    v, u = np.linspace(-0.4, 0.4, 7), np.linspace(0, 1, 25)
    top = np.stack([48 * np.cos(v), 48 * np.sin(v), np.full(7, 180.0)], -1)
    low = np.stack([125 * np.cos(v), 125 * np.sin(v), np.full(7, 3.0)], -1)
    taut = top[:, None] + u[None, :, None] * (low - top)[:, None]
    bench = SimpleNamespace(field=column)
    held_by = collar(bench, 40.0, taut.min((0, 1)), taut.max((0, 1)))
    hold = np.broadcast_to(np.sin(np.pi * u) > 0.05, taut.shape[:2]).astype(float)
    need = np.full(taut.shape[:2], NEED_MM)
    return taut, held_down(taut, held_by, column, need, hold)


def test_collar_draws_a_taut_sheet_in_to_the_neck(laid):
    taut, held = laid
    middle = (held[..., 2] > 90) & (held[..., 2] < 150)
    out = np.hypot(held[..., 0], held[..., 1])[middle]
    assert out.max() < NECK_MM + NEED_MM + 4.0
    middle = (taut[..., 2] > 90) & (taut[..., 2] < 150)
    assert np.hypot(taut[..., 0], taut[..., 1])[middle].max() > NECK_MM + 30.0


def test_collar_leaves_the_ends_where_they_were(laid):
    taut, held = laid
    assert np.array_equal(taut[:, [0, -1]], held[:, [0, -1]])


def test_collar_presses_nothing_into_the_solids(laid, column):
    _, held = laid
    assert column.sample(held[:, 2:-2].reshape(-1, 3)).min() > NEED_MM - 1.0
