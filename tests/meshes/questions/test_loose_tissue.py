"""Loose tissue between the parts of a cut: on a grid as exactly, never through fluid or air."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from meshes.questions.loose_tissue import CELL_MM, GAP_MM, loose_strips, loose_tissue
from meshes.questions.planes import placed_plane
from meshes.questions.section import Slicer

PLACES = [("transverse", 100.0), ("transverse", 330.0), ("sagittal", 25.0), ("coronal", 70.0)]
SLACK_MM = 3.0


@pytest.fixture(scope="module")
def slicer(preview_model) -> Slicer:
    return Slicer(preview_model)


def _boxes(strips: np.ndarray) -> shapely.Geometry:
    return shapely.union_all(shapely.box(*strips.T))


@pytest.mark.parametrize(("kind", "at"), PLACES)
def test_strips_and_exact_areas_fill_the_same(preview_model, slicer, kind, at):
    plane = placed_plane(kind, at)
    regions = slicer.cut(plane)
    quick = _boxes(loose_strips(preview_model, slicer.outlines(plane)))
    # A gap just as wide as the widest may fall either way on a grid.
    less, more = (
        loose_tissue(preview_model, regions, gap_mm=GAP_MM + by) for by in (-SLACK_MM, SLACK_MM)
    )
    assert less.difference(quick.buffer(2.0 * CELL_MM)).area == pytest.approx(
        0.0, abs=0.001 * quick.area
    )
    assert quick.difference(more.buffer(2.0 * CELL_MM)).area == pytest.approx(
        0.0, abs=0.001 * quick.area
    )
    assert quick.area == pytest.approx(0.5 * (less.area + more.area), rel=0.04)


@settings(max_examples=25)
@given(st.sampled_from(["transverse", "sagittal", "coronal"]), st.floats(0.05, 0.95))
def test_strips_lie_about_the_cut_and_never_over_one_another(preview_model, slicer, kind, share):
    axis = {"sagittal": 0, "coronal": 1, "transverse": 2}[kind]
    low, high = slicer.points[:, axis].min(), slicer.points[:, axis].max()
    outlines = slicer.outlines(placed_plane(kind, float(low + share * (high - low))))
    strips = loose_strips(preview_model, outlines)
    if not any(preview_model.parts[i].kind == "skin" for i in outlines.ids):
        assert not len(strips)
        return
    widths = strips[:, 2:] - strips[:, :2]
    assert (widths > 0).all()
    assert widths.prod(axis=1).sum() == pytest.approx(_boxes(strips).area, rel=1e-6)
    bounds = outlines.bounds()
    assert (strips[:, :2] >= bounds[0] - GAP_MM).all()
    assert (strips[:, 2:] <= bounds[1] + GAP_MM).all()


def test_round_the_cord_there_is_fluid_and_no_loose_tissue(preview_model, slicer):
    heights = preview_model.landmarks["T7.spinous_process"]
    plane = placed_plane("transverse", float(np.asarray(heights).reshape(-1, 3)[0, 2]))
    outlines = slicer.outlines(plane)
    (k,) = (
        k
        for k, i in enumerate(outlines.ids)
        if preview_model.parts[i].entry == "spinal_arachnoid_mater"
    )
    within = shapely.union_all([shapely.Polygon(ring) for ring in outlines.rings[k]])
    wet = within.buffer(-CELL_MM).intersection(_boxes(loose_strips(preview_model, outlines)))
    assert within.area > 50.0
    assert wet.area == 0.0


def test_where_the_skin_is_off_gaps_stay_open(preview_model, slicer):
    only = {p.id for p in preview_model.parts.values() if p.kind != "skin"}
    outlines = slicer.outlines(placed_plane("transverse", 100.0), only)
    assert not len(loose_strips(preview_model, outlines))
