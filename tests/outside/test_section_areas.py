"""Areas of flat cuts against an independent geometry library on the same meshes.

manifold3d slices each closed mesh by its own code and gives cross-sections whose area and
union it works out itself; ours come from the merged cut and shapely.
"""

from __future__ import annotations

import manifold3d
import numpy as np
import pytest
import shapely

from meshes.questions.section import Slicer, placed_plane

HEIGHTS = (40.0, 110.0, 205.0, 300.0, 405.0, 500.0)
RELATIVE = 0.005
SELF_CROSSING_RELATIVE = 0.02
"""Where a mesh runs through itself the two libraries count the doubled place differently."""


@pytest.fixture(scope="module")
def slicer(preview_model):
    return Slicer(preview_model)


@pytest.fixture(scope="module")
def solids(preview_model):
    """Every part that manifold3d takes for a solid, and how many it refuses."""
    taken, refused = {}, []
    for part_id, part in preview_model.parts.items():
        solid = manifold3d.Manifold(
            manifold3d.Mesh64(
                np.array(part.mesh.vertices, np.float64, order="C"),
                np.array(part.mesh.faces, np.uint64, order="C"),
            )
        )
        if solid.status() == manifold3d.Error.NoError:
            taken[part_id] = solid
        else:
            refused.append(part_id)
    return taken, refused


def raw_areas(slicer, height):
    outlines = slicer.outlines(placed_plane("transverse", height))
    found = {}
    for part_id, rings in zip(outlines.ids, outlines.rings, strict=True):
        total = shapely.Polygon()
        for ring in rings:
            total = total.symmetric_difference(shapely.make_valid(shapely.Polygon(ring)))
        found[part_id] = total.area
    return found


def test_the_other_library_takes_nearly_all_parts_for_solids(solids, preview_model):
    assert len(solids[1]) <= 0.02 * len(preview_model.parts), solids[1][:10]


def crosses_itself(rings):
    lines = [shapely.LinearRing(ring) for ring in rings]
    return not all(line.is_simple for line in lines) or any(
        a.crosses(b) for i, a in enumerate(lines) for b in lines[i + 1 :]
    )


@pytest.mark.parametrize("height", HEIGHTS)
def test_every_parts_area_agrees_within_half_a_per_cent(slicer, solids, height):
    ours = raw_areas(slicer, height)
    outlines = slicer.outlines(placed_plane("transverse", height))
    rings = dict(zip(outlines.ids, outlines.rings, strict=True))
    compared, excused = 0, []
    for part_id, solid in solids[0].items():
        theirs = solid.slice(height).area()
        if theirs < 0.05 and part_id not in ours:
            continue
        got = ours.get(part_id, 0.0)
        if got != pytest.approx(theirs, rel=RELATIVE, abs=0.05):
            assert crosses_itself(rings.get(part_id, ())), (part_id, got, theirs)
            assert got == pytest.approx(theirs, rel=SELF_CROSSING_RELATIVE, abs=0.05), part_id
            excused.append(part_id)
        compared += 1
    assert compared > 40
    assert len(excused) <= 2, excused


@pytest.mark.parametrize("height", HEIGHTS[::2])
def test_regions_together_have_the_area_of_the_union(slicer, solids, height):
    taken, refused = solids
    slices = [solid.slice(height) for solid in taken.values()]
    union = manifold3d.CrossSection.batch_boolean(slices, manifold3d.OpType.Add).area()
    regions = [r for r in slicer.cut(placed_plane("transverse", height)) if r.part_id in taken]
    assert not set(refused) & {r.part_id for r in regions}
    ours = 100.0 * sum(r.area_cm2 for r in regions)
    assert ours == pytest.approx(union, rel=RELATIVE)


def test_an_oblique_cut_agrees_too(slicer, solids, preview_model):
    plane = placed_plane("free", 250.0, (25.0, -10.0))
    turn = np.stack([plane.right, plane.up, plane.normal])
    outlines = slicer.outlines(plane)
    checked = 0
    for part_id, rings in zip(outlines.ids, outlines.rings, strict=True):
        if part_id not in solids[0]:
            continue
        matrix = np.column_stack([turn, -turn @ plane.origin])
        theirs = solids[0][part_id].transform(matrix).slice(0.0).area()
        total = shapely.Polygon()
        for ring in rings:
            total = total.symmetric_difference(shapely.make_valid(shapely.Polygon(ring)))
        assert total.area == pytest.approx(theirs, rel=RELATIVE, abs=0.05), part_id
        checked += 1
    assert checked > 40
