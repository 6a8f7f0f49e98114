"""What lies over what, against texts in the public domain.

The statements come from

* Gray H., Anatomy of the Human Body, 20th ed., 1918, by page;
* Cunningham's Text-book of Anatomy, by page (319 of the edition of 1906, the others of a later
  one whose year was not seen);
* Todd RB (ed.), The Cyclopaedia of Anatomy and Physiology, 1835-1859, Muscles of the back.

All were read in stored pages of these texts; nothing in them shaped what the model covers.
Not asked: that longissimus capitis covers semispinalis capitis (Cunningham 446), since Gray 400
puts the one medial to the other, as the model does. Of the two muscles that conceal the
suboccipital ones (Cunningham 444) each is asked where it lies in the model.
"""

from __future__ import annotations

import numpy as np
import pytest

from meshes.questions.cover import Layers, layers_of
from meshes.questions.expose import _parts_of
from meshes.questions.probe import Ladder, Probe

LEAST_OVER = 0.02
"""A stated cover must hide at least this share of what it is said to cover."""

MOST_FAULT = {"full": 0.005, "preview": 0.025}
"""What is said to lie deep must hide less than this of what lies over it. In the coarse model
thin tendons near the spines come through one another here and there."""

# over, under, where, what it says
OVER = (
    ("trapezius", "latissimus_dorsi", "Cunningham 366", "overlaps the latissimus dorsi"),
    ("trapezius", "levator_scapulae", "Cunningham 366", "covers the levator scapulae"),
    ("trapezius", "rhomboid_minor", "Cunningham 366", "covers the … rhomboidei"),
    ("trapezius", "rhomboid_major", "Cunningham 366", "covers the … rhomboidei"),
    ("trapezius", "erector_spinae", "Cunningham 366", "and the deeper axial muscles of the back"),
    (
        "trapezius",
        "transverse_cervical_artery",
        "Cunningham 366",
        "along with … artery of the neck",
    ),
    ("trapezius", "accessory_nerve", "Cunningham 366", "along with … the accessory nerve"),
    (
        "trapezius",
        "cervical_branches_to_trapezius",
        "Cunningham 366",
        "along with … branches from the cervical plexus",
    ),
    ("trapezius", "splenius_capitis", "Cunningham 319", "deep surface in contact with … splenius"),
    (
        "trapezius",
        "semispinalis_capitis",
        "Cunningham 319",
        "deep surface in contact with complexus",
    ),
    (
        "trapezius",
        "serratus_posterior_superior",
        "Cunningham 319",
        "deep surface in contact with … serratus posticus superior",
    ),
    ("trapezius", "supraspinatus", "Cunningham 375", "directed laterally under the trapezius"),
    ("rhomboids", "splenius_cervicis", "Todd", "splenii … covered below by the rhomboid"),
    (
        "serratus_posterior_superior",
        "splenius_cervicis",
        "Todd",
        "splenii … covered below by the rhomboid and serratus posticus superior",
    ),
    ("levator_scapulae", "splenius_cervicis", "Todd", "higher up by the trapezius and levator"),
    ("sternocleidomastoid", "splenius_capitis", "Todd", "higher still by the sterno-mastoid"),
    ("splenii", "longissimus_cervicis", "Todd", "the splenii cover … the transversalis"),
    ("splenius_capitis", "semispinalis_capitis", "Gray 400", "beneath the Splenius"),
    (
        "serratus_posterior_superior",
        "thoracolumbar_fascia_posterior",
        "Gray 397",
        "above, it passes in front of the Serratus posterior superior",
    ),
    (
        "thoracolumbar_fascia_posterior",
        "longissimus_thoracis",
        "Gray 397",
        "a deep investing membrane which covers the deep muscles of the back of the trunk",
    ),
    (
        "thoracolumbar_fascia_posterior",
        "iliocostalis_lumborum",
        "Gray 397",
        "serves to bind down the Extensor muscles of the vertebral column",
    ),
    (
        "thoracolumbar_fascia_posterior",
        "spinalis_thoracis",
        "Gray 397",
        "serves to bind down the Extensor muscles of the vertebral column",
    ),
    (
        "latissimus_dorsi",
        "thoracolumbar_fascia_posterior",
        "Gray 397",
        "separates them from the muscles connecting the … column to the upper extremity",
    ),
    (
        "rhomboids",
        "thoracolumbar_fascia_posterior",
        "Gray 397",
        "separates them from the muscles connecting the … column to the upper extremity",
    ),
    (
        "semispinalis_capitis",
        "semispinalis_cervicis",
        "Cunningham 446",
        "it conceals the semispinalis cervicis",
    ),
    (
        "semispinalis_capitis",
        "rectus_capitis_posterior_major",
        "Cunningham 446",
        "it conceals … the muscles of the suboccipital triangle",
    ),
    (
        "semispinalis_capitis",
        "obliquus_capitis_inferior",
        "Gray 402",
        "situated beneath the Semispinalis capitis",
    ),
    (
        "splenius_capitis",
        "obliquus_capitis_superior",
        "Cunningham 444",
        "concealed by the semispinalis capitis and splenius capitis",
    ),
    (
        "erector_spinae",
        "thoracolumbar_fascia_middle",
        "Cunningham 438",
        "between the sacrospinalis behind and the quadratus lumborum in front",
    ),
    (
        "thoracolumbar_fascia_middle",
        "quadratus_lumborum",
        "Cunningham 438",
        "between the sacrospinalis behind and the quadratus lumborum in front",
    ),
    ("infraspinatus", "scapula", "Gray 203", "the lateral third is covered by this muscle"),
    ("deltoid", "infraspinatus", "Gray 441", "along the over-lapping border of the Deltoideus"),
)

# deep, over it: the deep one may not lie over the other.
NEVER = (
    ("latissimus_dorsi", "trapezius", "Cunningham 366", "superficial in its whole extent"),
    ("rhomboid_major", "trapezius", "Cunningham 366", "superficial in its whole extent"),
    ("levator_scapulae", "trapezius", "Cunningham 366", "superficial in its whole extent"),
    ("erector_spinae", "trapezius", "Cunningham 366", "superficial in its whole extent"),
    ("supraspinatus", "trapezius", "Cunningham 366", "superficial in its whole extent"),
    ("rhomboid_minor", "trapezius", "Cunningham 366", "superficial in its whole extent"),
    ("splenius_capitis", "trapezius", "Cunningham 366", "superficial in its whole extent"),
    (
        "serratus_posterior_superior",
        "trapezius",
        "Cunningham 366",
        "superficial in its whole extent",
    ),
    ("semispinalis_capitis", "splenius_capitis", "Gray 400", "beneath the Splenius"),
    (
        "longissimus_thoracis",
        "thoracolumbar_fascia_posterior",
        "Gray 397",
        "covers the deep muscles of the back",
    ),
    (
        "semispinalis_cervicis",
        "semispinalis_capitis",
        "Cunningham 446",
        "it conceals the semispinalis cervicis",
    ),
    (
        "rectus_capitis_posterior_minor",
        "semispinalis_capitis",
        "Cunningham 446",
        "it conceals … the muscles of the suboccipital triangle",
    ),
)


@pytest.fixture(scope="module", params=["preview", pytest.param("full", marks=pytest.mark.slow)])
def model(request):
    """Return the default body, coarse in the quick set, and in full detail as well in the slow."""
    return request.getfixturevalue(f"{request.param}_model")


@pytest.fixture(scope="module")
def layers(model) -> Layers:
    return layers_of(model)


@pytest.fixture(scope="module")
def probe(model) -> Probe:
    return Probe(model)


def _share(model, layers: Layers, over: str, under: str) -> float:
    """Share of ``under`` (a row or group, left) over which any part of ``over`` lies."""
    above, below = (_parts_of(model, [name], "left") for name in (over, under))
    assert above, over
    assert below, under
    hidden = layers.in_view(below, set(above))
    assert hidden is not None
    return 1.0 - hidden


@pytest.mark.parametrize(("over", "under", "where", "says"), OVER)
def test_stated_cover_is_found(model, layers, over, under, where, says):
    assert _share(model, layers, over, under) >= LEAST_OVER, (where, says)


@pytest.mark.parametrize(("over", "under", "where", "says"), OVER)
def test_stated_cover_outweighs_its_reverse(model, layers, over, under, where, says):
    there = _share(model, layers, over, under)
    assert there > _share(model, layers, under, over), (where, says)


@pytest.mark.parametrize(("deep", "above", "where", "says"), NEVER)
def test_what_is_said_to_lie_deep_never_lies_over(model, layers, deep, above, where, says):
    assert _share(model, layers, deep, above) <= MOST_FAULT[model.detail], (where, says)


# --- along rays ----------------------------------------------------------------------------

COVERING = ("skin", "superficial_fascia", "deep_fascia")
COLUMN = "longissimus_thoracis|iliocostalis_thoracis|iliocostalis_cervicis"

# level, mm from the midline (or a share of the way to the medial border), layers from the skin
# inward. "a|b": either; "?": may be absent; "*": from memory, not in the pages that were read.
LADDERS = {
    # Gray 432 (fasciae, Trapezius), Cunningham 366, 319; Gray 404, 397.
    "midway between spine T4 and the medial border": (
        "T4",
        "0.5",
        (
            *COVERING,
            "trapezius_ascending|trapezius_transverse",
            "rhomboid_major",
            "serratus_posterior_superior?",
            "thoracolumbar_fascia_posterior",
            COLUMN,
        ),
    ),  # fmt: skip
    "midway between spine T2 and the medial border": (
        "T2",
        "0.5",
        (
            *COVERING,
            "trapezius_transverse|trapezius_ascending",
            "rhomboid_minor|rhomboid_major",
            "serratus_posterior_superior",
            "thoracolumbar_fascia_posterior?",
        ),
    ),  # fmt: skip
    # Cunningham 366: overlaps the latissimus; Gray 397.
    "spine T9, 25 mm": (
        "T9",
        25,
        (
            *COVERING,
            "trapezius_ascending",
            "latissimus_dorsi",
            "thoracolumbar_fascia_posterior",
            "longissimus_thoracis|spinalis_thoracis",
        ),
    ),  # fmt: skip
    # Gray 404: the aponeurosis of serratus posterior inferior blends with fascia and latissimus.
    "spine T12, 60 mm": (
        "T12",
        60,
        (
            *COVERING,
            "latissimus_dorsi",
            "serratus_posterior_inferior",
            "thoracolumbar_fascia_posterior",
            "longissimus_thoracis|iliocostalis_lumborum",
        ),
    ),  # fmt: skip
    # Gray 397: posterior layer, Sacrospinalis; Bogduk 1980, J Anat 131:525: its aponeurosis
    # passes across multifidus. The text gives no distance; multifidus ends some 2 cm from the
    # midline at this height, so that the place lies within it.
    "spine L3, 15 mm": (
        "L3",
        15,
        (
            *COVERING,
            "thoracolumbar_fascia_posterior",
            "erector_spinae_aponeurosis",
            "multifidus_lumborum",
        ),
    ),  # fmt: skip
    # Gray 400; Cunningham 319.
    "spine C4, 20 mm": (
        "C4",
        20,
        (
            *COVERING,
            "trapezius_descending",
            "splenius_capitis",
            "semispinalis_capitis",
            "semispinalis_cervicis|multifidus_cervicis",
            "vertebra_C4|vertebra_C5?",
        ),
    ),  # fmt: skip
    # Todd: splenii covered by rhomboid and serratus posticus superior; Gray 400: semispinalis
    # beneath the splenius.
    "spine T1, 20 mm": (
        "T1",
        20,
        (
            *COVERING,
            "trapezius_transverse|trapezius_descending",
            "rhomboid_minor?",
            "serratus_posterior_superior",
            "splenius_cervicis|splenius_capitis?",
            "semispinalis_capitis|semispinalis_cervicis",
            "multifidus_cervicis?",
            "vertebra_T1|vertebra_T2",
        ),
    ),  # fmt: skip
    # Cunningham 366, 444, 446; Gray 402: situated beneath the Semispinalis capitis.
    "suboccipital, spine C2, 22 mm": (
        "C2",
        22,
        (
            *COVERING,
            "trapezius_descending?",
            "splenius_capitis",
            "semispinalis_capitis",
            "rectus_capitis_posterior_major|obliquus_capitis_inferior",
        ),
    ),  # fmt: skip
    # Gray 404, 397, 420; Cunningham 438: middle layer between the sacrospinalis behind and the
    # quadratus lumborum in front; Gray 420: the psoas in front of the quadratus.
    "spine L1, 70 mm": (
        "L1",
        70,
        (
            *COVERING,
            "latissimus_dorsi",
            "serratus_posterior_inferior?",
            "thoracolumbar_fascia_posterior",
            "iliocostalis_lumborum",
            "thoracolumbar_fascia_middle",
            "quadratus_lumborum",
            "psoas_major",
        ),
    ),  # fmt: skip
    # Gray 397: the posterior layer is attached below to the iliac crest.
    "over the posterior superior iliac spine": (
        "S2",
        "psis",
        (
            *COVERING,
            "thoracolumbar_fascia_posterior",
            "hip_bone",
            "sacrum",
        ),
    ),  # fmt: skip
}


def _names(ladder: Ladder) -> list[str]:
    return [part_id.rsplit(".", 1)[0] for part_id in ladder.part_ids]


def _lateral(model, probe: Probe, level: str, place: float | str, side: str) -> float:
    if not isinstance(place, str):
        return float(place)
    if place == "psis":
        return abs(float(np.ravel(model.landmarks[f"ilium.{side}.PSIS"])[0]))
    border = np.asarray(model.landmarks[f"scapula.{side}.medial_border"])
    # The border ends above T3: its upper end serves for T2.
    near = border[np.argmin(np.abs(border[:, 2] - probe.level_height(level)))]
    return float(place) * abs(float(near[0]))


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("place", LADDERS)
def test_layers_follow_one_another_as_the_text_has_them(model, probe, place, side):
    level, lateral, expected = LADDERS[place]
    names = _names(probe.at(level, _lateral(model, probe, level, lateral, side), side))
    wrong = _out_of_order(names, expected)
    if wrong and model.detail == "preview":
        pytest.xfail(f"coarse detail: {STAND_OFF}; {wrong!r} is not in its place in {names}")
    assert not wrong, (wrong, names)


STAND_OFF = "the sheets of neck and upper back stand some centimetres off the bellies"


def _out_of_order(names: list[str], expected: tuple[str, ...]) -> str:
    """Return the first of the expected layers that is not met in its place, or ""."""
    at = -1
    for wanted in expected:
        found = [names.index(n) for n in wanted.rstrip("?").split("|") if n in names]
        later = [k for k in found if k > at]
        if later:
            at = min(later)
        elif found or not wanted.endswith("?"):
            return wanted
    return ""


def test_floor_of_the_triangle_of_auscultation_is_partly_rhomboid(model, layers):
    # Gray 1308: bounded by trapezius, latissimus and the vertebral border of the scapula;
    # "floor is partly formed by Rhomboideus major".
    # The model's triangle is small: a few tenths of a square centimetre in full detail.
    covering = {"skin", "superficial_fascia", "deep_fascia", "posterior_cutaneous_branch"}
    there = {i for i in layers.ids if model.parts[i].entry not in covering}
    free = layers.in_view("rhomboid_major.left", there)
    assert free < 0.4
    if free <= 0.002 and model.detail == "full":
        pytest.xfail("in full detail trapezius and latissimus close the triangle")
    assert free > 0.002


def test_floor_of_the_lumbar_triangle_is_internal_oblique(model, layers):
    # Gray on the latissimus (from memory of the page): its margin is parted from the external
    # oblique by a small triangular interval, whose floor is the internal oblique.
    covering = {"skin", "superficial_fascia", "deep_fascia"}
    there = {i for i in layers.ids if model.parts[i].entry not in covering}
    for side in ("left", "right"):
        free = layers.in_view(f"internal_oblique.{side}", there)
        assert 0.005 < free < 0.4
        over = {c.part_id: c.share for c in layers.covers([f"internal_oblique.{side}"], there)}
        assert over[f"external_oblique.{side}"] > over[f"latissimus_dorsi.{side}"] > 0.0


def test_the_spine_of_the_hip_is_met_with_no_belly_over_it(model, probe):
    # Felt through the skin, as the plan's first step has it: bone with thin layers over it only.
    for side in ("left", "right"):
        ladder = probe.at("S2", _lateral(model, probe, "S2", "psis", side), side)
        over = ladder.rungs[: _names(ladder).index("hip_bone")]
        bellies = [r for r in over if model.parts[r.part_id].kind == "muscle"]
        assert sum(r.thickness_mm for r in bellies) < 8.0, [r.part_id for r in bellies]


# --- thickness along the ray -----------------------------------------------------------------

# Hung D et al., J Clin Ultrasound 2011;39:78-82 (young men, ultrasound, near the medial border).
PUBLISHED_MM = {"trapezius": (4.9, 1.0), "rhomboid": (6.3, 2.3)}


@pytest.mark.parametrize("muscle", PUBLISHED_MM)
def test_thickness_along_rays_near_the_medial_border_is_as_published(model, probe, muscle):
    found = []
    for level in ("T3", "T4", "T5"):
        edge = _lateral(model, probe, level, "1.0", "left")
        for inside in (10, 15, 20, 25):
            ladder = probe.at(level, edge - inside, "left")
            total = sum(r.thickness_mm for r in ladder.rungs if r.part_id.startswith(muscle))
            if total:
                found.append(total)
    mean, spread = PUBLISHED_MM[muscle]
    assert len(found) >= 6
    assert np.mean(found) == pytest.approx(mean, abs=2 * spread)
