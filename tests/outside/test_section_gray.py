"""The order of muscles in transverse sections at C4, T4, T7 and L3, against old open texts.

Each row quotes what was read, in stored pages, of

* Gray H., Anatomy of the Human Body, 20th ed., 1918, by page;
* Cunningham's Text-book of Anatomy, by page.

"medial" compares how far from the midline the middles of the cut areas lie; "behind" goes
along lines from back to front that cross both, and asks which is met first.
"""

from __future__ import annotations

import numpy as np
import pytest
import shapely

from meshes.questions.section import Slicer, placed_plane
from meshes.questions.stations import stations

# level, relation, the one, the other, where, what it says
ORDER = (
    ("C4", "behind", "splenius_capitis", "semispinalis_capitis", "Gray 400",
     "semispinalis capitis … beneath the Splenius"),
    ("C4", "medial", "semispinalis_capitis", "longissimus_capitis", "Gray 400",
     "medial to the Longissimus cervicis and capitis"),
    ("C4", "medial", "semispinalis_capitis", "longissimus_cervicis", "Gray 400",
     "medial to the Longissimus cervicis and capitis"),
    ("C4", "behind", "semispinalis_capitis", "semispinalis_cervicis", "Cunningham 446",
     "it conceals the semispinalis cervicis"),
    ("C4", "behind", "trapezius_descending", "splenius_capitis", "Cunningham 319",
     "deep surface in contact with … splenius"),
    ("C4", "behind", "trapezius_descending", "semispinalis_capitis", "Cunningham 319",
     "deep surface in contact with complexus"),
    ("T4", "medial", "spinalis_thoracis", "longissimus_thoracis", "Gray 399",
     "an intermediate, the Longissimus, and a medial, the Spinalis"),
    ("T4", "medial", "longissimus_thoracis", "iliocostalis_thoracis", "Gray 399",
     "a lateral, the Iliocostalis, an intermediate, the Longissimus"),
    ("T4", "behind", "rhomboid_major", "thoracolumbar_fascia_posterior", "Gray 397",
     "to separate them from the muscles connecting the vertebral column to the upper extremity"),
    ("T4", "behind", "thoracolumbar_fascia_posterior", "longissimus_thoracis", "Gray 397",
     "a thin fibrous lamina which serves to bind down the Extensor muscles"),
    ("T7", "medial", "spinalis_thoracis", "longissimus_thoracis", "Gray 399",
     "an intermediate, the Longissimus, and a medial, the Spinalis"),
    ("T7", "medial", "longissimus_thoracis", "iliocostalis_thoracis", "Gray 399",
     "a lateral, the Iliocostalis, an intermediate, the Longissimus"),
    ("T7", "behind", "thoracolumbar_fascia_posterior", "longissimus_thoracis", "Gray 397",
     "a thin fibrous lamina which serves to bind down the Extensor muscles"),
    ("T7", "behind", "trapezius_ascending", "thoracolumbar_fascia_posterior", "Gray 397",
     "to separate them from the muscles connecting the vertebral column to the upper extremity"),
    ("L3", "medial", "multifidus_lumborum", "longissimus_thoracis", "Gray 400",
     "fill up the groove on either side of the spinous processes of the vertebrae"),
    ("L3", "medial", "longissimus_thoracis", "iliocostalis_lumborum", "Gray 399",
     "a lateral, the Iliocostalis, an intermediate, the Longissimus"),
    ("L3", "behind", "thoracolumbar_fascia_posterior", "longissimus_thoracis", "Gray 397",
     "a deep investing membrane which covers the deep muscles of the back of the trunk"),
    ("L3", "behind", "iliocostalis_lumborum", "thoracolumbar_fascia_middle", "Gray 420",
     "the anterior layer … intervenes between the Quadratus lumborum and the Sacrospinalis"),
    ("L3", "behind", "thoracolumbar_fascia_middle", "quadratus_lumborum", "Gray 420",
     "the anterior layer … intervenes between the Quadratus lumborum and the Sacrospinalis"),
    ("L3", "behind", "quadratus_lumborum", "psoas_major", "Gray 420",
     "in front of the Quadratus lumborum are the colon, the kidney, the Psoas major"),
)  # fmt: skip

LEAST_OF_LINES = 0.9
"""So much of the lines that cross both must meet the one behind first."""


@pytest.fixture(scope="module")
def cuts(preview_model):
    slicer = Slicer(preview_model)
    places = {s.name: s.position_mm for s in stations(preview_model, "transverse")}
    return {
        level: {
            r.part_id: r.polygons for r in slicer.cut(placed_plane("transverse", places[level]))
        }
        for level in ("C4", "T4", "T7", "L3")
    }


def back_of(shape, x):
    """The rearmost place of a shape on a line from back to front; None where it misses."""
    met = shape.intersection(shapely.LineString([(x, -1000), (x, 1000)]))
    return None if met.is_empty else met.bounds[3]


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize(("level", "relation", "one", "other", "page", "words"), ORDER)
def test_section_order_is_as_the_texts_say(cuts, level, relation, one, other, page, words, side):
    found = cuts[level]
    first, second = found[f"{one}.{side}"], found[f"{other}.{side}"]
    if relation == "medial":
        # Seen from below with the back up, the subject's left has negative x in the picture.
        assert abs(first.centroid.x) < abs(second.centroid.x), (page, words)
        return
    low = max(first.bounds[0], second.bounds[0])
    high = min(first.bounds[2], second.bounds[2])
    right = crossed = 0
    for x in np.linspace(low, high, 60)[1:-1]:
        behind, before = back_of(first, x), back_of(second, x)
        if behind is not None and before is not None:
            crossed += 1
            right += behind > before
    if crossed == 0:
        # No line meets both: compare where they lie.
        assert first.centroid.y > second.centroid.y, (page, words)
    else:
        assert right >= LEAST_OF_LINES * crossed, (page, words, right, crossed)


def test_the_canal_holds_the_cord_above_and_the_roots_below(cuts):
    # Gray 749 puts the end of the cord at the first lumbar vertebra (from memory of the page).
    for level in ("C4", "T4", "T7"):
        assert "spinal_cord" in cuts[level]
    assert "spinal_cord" not in cuts["L3"]
    assert "spinal_dura_mater" in cuts["L3"]
