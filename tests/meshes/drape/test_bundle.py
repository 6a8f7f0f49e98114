"""Sharing a box and half a column among strands whose shares are known."""

import numpy as np
import pytest
import trimesh

from meshes.drape.audit import is_closed, is_outward, overlapping_pairs, self_intersections
from meshes.drape.bundle import Strand, fill_and_share
from meshes.drape.distance import MeshIndex
from meshes.drape.resolve import settle

SPACING = 1.5


def box_region(half):
    """Signed distance grid of a box round the origin, and its first node."""
    origin = -np.asarray(half) - 6.0
    count = np.ceil(-2 * origin / SPACING).astype(int) + 1
    axes = [origin[k] + SPACING * np.arange(count[k]) for k in range(3)]
    p = np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1)
    e = np.abs(p) - half
    d = np.linalg.norm(np.maximum(e, 0), axis=-1) + np.minimum(e.max(axis=-1), 0)
    return d.astype(np.float32), origin


def strand(x, y, family, reach=2.0, length=40.0):
    z = np.linspace(-length, length, 30)
    return Strand(np.stack([x + 0 * z, y + 0 * z, z], axis=1), family, reach)


def test_two_equal_strands_halve_a_box():
    region, origin = box_region((20, 10, 40))
    shares = fill_and_share(
        region, origin, SPACING, [strand(-10, 0, "a"), strand(10, 0, "b")], {"a": 4000, "b": 4000}
    )
    for mesh in shares.values():
        assert is_closed(mesh)
        assert is_outward(mesh)
        assert mesh.volume == pytest.approx(20 * 20 * 80, rel=0.05)
    assert shares["a"].bounds[1, 0] < shares["b"].bounds[0, 0]


def test_a_longer_reach_moves_the_border_by_half_the_difference():
    region, origin = box_region((20, 10, 40))
    shares = fill_and_share(
        region,
        origin,
        SPACING,
        [strand(-10, 0, "a", reach=6.0), strand(10, 0, "b", reach=2.0)],
        {"a": 4000, "b": 4000},
    )
    on_axis = np.abs(shares["b"].vertices[:, 1]) < 2
    assert shares["b"].vertices[on_axis, 0].min() == pytest.approx(2.0, abs=0.6)


def test_settled_shares_stand_clear_of_one_another_and_of_what_runs_through():
    region, origin = box_region((20, 12, 40))
    strands = [strand(x, y, f"{x}{y}") for x in (-12, 0, 12) for y in (-6, 6)]
    rod = trimesh.creation.capsule(height=50, radius=4, count=[24, 24])
    rod.apply_transform(trimesh.transformations.rotation_matrix(np.pi / 2, [0, 1, 0]))
    rod.apply_translation([-25, 0, 3])
    rod = MeshIndex.of(rod)
    axes = [origin[k] + SPACING * np.arange(region.shape[k]) for k in range(3)]
    nodes = np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1)
    taken = rod.signed_distance(nodes.reshape(-1, 3))[0].reshape(region.shape)
    region = np.maximum(region, 0.3 - taken).astype(np.float32)
    shares = fill_and_share(
        region, origin, SPACING, strands, {s.family: 700 for s in strands}, obstacles=[rod]
    )
    assert len(shares) == 6
    settled = settle(shares, [rod])
    indexes = [MeshIndex.of(mesh) for mesh in settled.values()]
    assert overlapping_pairs([*indexes, rod], floor=0.1) == []
    for mesh in settled.values():
        assert is_closed(mesh)
        assert len(self_intersections(mesh)) == 0
