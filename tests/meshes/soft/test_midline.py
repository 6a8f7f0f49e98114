"""Sheets that start beside the spines."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import trimesh

from meshes.drape.distance import MeshIndex
from meshes.drape.sheet import SheetGrid
from meshes.soft.midline import flat_beside_spines


def _bench() -> SimpleNamespace:
    floor = MeshIndex.of(trimesh.creation.box((120.0, 20.0, 80.0)).subdivide().subdivide())
    return SimpleNamespace(index=lambda part_id: floor)


def _tent() -> tuple[SheetGrid, SheetGrid]:
    """A sheet laid flat at y = 9 and the tent a push has made of it."""
    v, u = np.meshgrid(np.linspace(-20, 20, 9), np.linspace(0.8, 55, 15), indexing="ij")
    laid = np.stack([u, np.full_like(u, 9.0), v], axis=-1)
    tent = laid.copy()
    tent[:, 1:, 1] = 24.0 - 0.2 * u[:, 1:]
    tent[:, 1, 0] = -4.0
    thick = np.full(u.shape, 0.8)
    return SheetGrid(laid, thick), SheetGrid(tent, thick)


def test_a_tent_beside_the_spines_is_let_down_onto_what_lies_under_it():
    laid, tent = _tent()
    flat = flat_beside_spines(_bench(), laid, tent, ["floor"]).mid
    first = flat[:, 1:4, 1]
    assert np.all(first > 10.0 + 0.4) and np.all(first < 12.0)


def test_no_fibre_is_left_across_the_midline():
    laid, tent = _tent()
    assert flat_beside_spines(_bench(), laid, tent, ["floor"]).mid[..., 0].min() > 0.0


def test_the_outer_part_and_the_fixed_end_stay():
    laid, tent = _tent()
    flat = flat_beside_spines(_bench(), laid, tent, ["floor"]).mid
    assert np.array_equal(flat[:, 0], tent.mid[:, 0])
    assert np.allclose(flat[:, -1], tent.mid[:, -1])
