import xml.etree.ElementTree as ET

import numpy as np
import pytest
import shapely

from meshes.questions.section import Slicer, cut_plane
from tests.fakes import toy_model
from viewer.scene.looks import section_colour
from viewer.scene.section_picture import (
    GROUND_NOTE,
    _fitted,
    loose_tissue,
    section_array,
    section_layout,
    section_svg,
)

SIZE = (700, 520)


@pytest.fixture(scope="module")
def layout():
    model = toy_model()
    plane = cut_plane("transverse", (0, 0, 280.5))
    regions = Slicer(model).cut(plane)
    names = {r.part_id: r.part_id for r in regions}
    return model, regions, section_layout(model, plane, regions, SIZE, names, "At T7")


def test_each_large_region_is_filled_with_its_own_colour(layout):
    model, regions, placed = layout
    picture = section_array(placed)
    for label in placed.labels:
        region = next(r for r in regions if r.part_id == label.id)
        if region.area_cm2 * placed.px_per_mm**2 * 100 < 600:
            continue
        x, y = (int(c) for c in label.anchor)
        around = picture[y - 8 : y + 9, x - 8 : x + 9].reshape(-1, 3).astype(int)
        colour = np.array(section_colour(model.parts[label.id]))
        assert (np.abs(around - colour).max(axis=1) <= 3).sum() > 12, label.id


def test_left_regions_stand_on_the_left(layout):
    _, _, placed = layout
    sides = {label.id: label.anchor[0] for label in placed.labels}
    checked = 0
    for part_id, x in sides.items():
        if part_id.endswith(".left"):
            assert x < SIZE[0] / 2
            checked += 1
    assert checked > 3
    assert placed.ends == ("Left", "Right", "Back", "Front")


@pytest.mark.parametrize("size", [(1600, 1200), (900, 700), (700, 520)])
@pytest.mark.parametrize("zoom", [1.0, 2.5])
def test_no_label_leaves_its_column_or_lies_over_another(layout, size, zoom):
    model, regions, _ = layout
    plane = cut_plane("transverse", (0, 0, 280.5))
    names = {
        r.part_id: f"{r.part_id.split('.')[0]}, a layer of it with many words, part {k}"
        for k, r in enumerate(regions)
    }
    placed = section_layout(model, plane, regions, size, names, "At T7", density=1.0, zoom=zoom)
    assert placed.labels
    xs = np.concatenate([ring[:, 0] for shape in placed.shapes for ring in shape[2]])
    for k, label in enumerate(placed.labels):
        assert label.left >= 0 and label.left + label.width <= size[0]
        if zoom == 1.0:
            left = label.side == "left"
            assert label.left + label.width < xs.min() if left else label.left > xs.max(), label
        for other in placed.labels[k + 1 :]:
            if other.side == label.side:
                upper, lower = sorted((label, other), key=lambda each: each.top)
                assert upper.top + upper.height <= lower.top, (label, other)


def test_a_name_that_fits_stands_on_a_line_and_a_longer_one_on_two_or_gives_its_last_words(layout):
    def measure(text):
        return 10.0 * len(text), 14.0

    name = "Transversus abdominis, aponeurosis of origin"
    assert _fitted(name, 10.0 * len(name), measure) == name
    assert _fitted(name, 360.0, measure) == "Transversus abdominis, aponeurosis\nof origin"
    assert _fitted(name, 260.0, measure) == "Transversus abdominis,\naponeurosis of origin"
    assert _fitted(name, 200.0, measure) == "Transversus\nabdominis …"
    assert _fitted("Trapezius", 10.0, measure) == "Trapezius"


def test_svg_is_well_formed_and_names_every_region(layout):
    _, regions, placed = layout
    root = ET.fromstring(section_svg(placed))
    ids = {path.get("id") for path in root.iter("{http://www.w3.org/2000/svg}path")}
    assert {r.part_id for r in regions} <= ids
    texts = {t.text for t in root.iter("{http://www.w3.org/2000/svg}text")}
    assert "Teaching model – not for needle or surgical guidance" in texts


def test_gaps_within_the_skin_are_ground_and_none_where_the_skin_is_off(layout):
    model, regions, placed = layout
    under = [r for r in regions if model.parts[r.part_id].kind != "skin"]
    assert len(under) < len(regions)
    assert loose_tissue(model, under).is_empty
    ground = loose_tissue(model, regions)
    parts = shapely.unary_union([r.polygons for r in regions])
    assert ground.area > parts.area
    # It lies beneath the parts and never reaches out past their common outline.
    assert parts.difference(ground.buffer(0.6)).area < 0.01 * parts.area
    assert ground.difference(parts.convex_hull.buffer(0.6)).area == 0
    assert placed.ground
    assert GROUND_NOTE in section_svg(placed)


def test_no_note_on_the_ground_where_there_is_none(layout):
    model, regions, _ = layout
    under = [r for r in regions if model.parts[r.part_id].kind != "skin"]
    plane = cut_plane("transverse", (0, 0, 280.5))
    bare = section_layout(model, plane, under, SIZE, {}, "At T7")
    assert bare.ground == ()
    assert GROUND_NOTE not in section_svg(bare)


def test_psoas_is_cut_as_a_muscle_and_the_front_of_the_trunk_is_not(preview_model):
    psoas, front, quadratus = (
        section_colour(preview_model.parts[name])
        for name in ("psoas_major.left", "context_trunk", "quadratus_lumborum.left")
    )
    assert psoas[0] > 1.5 * psoas[2] and quadratus[0] > 1.5 * quadratus[2]
    assert abs(front[0] - front[2]) < 20
