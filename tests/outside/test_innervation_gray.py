"""Nerves against Gray H., Anatomy of the Human Body, 20th ed. 1918, and Cunningham's Text-book.

``read`` rows were seen in stored pages of the public-domain text; ``recalled``
ones were typed from memory of the same pages.
"""

from __future__ import annotations

import pytest

from meshes.catalogue import load_catalogue
from meshes.catalogue.levels import parse_levels

CATALOGUE = load_catalogue()

# muscle : (nerve row, a root that must be among them, where, read?)
SUPPLY = {
    "rhomboid_major": ("dorsal_scapular_nerve", "C5", "Gray p. 435", True),
    "rhomboid_minor": ("dorsal_scapular_nerve", "C5", "Gray p. 435", True),
    "levator_scapulae": ("dorsal_scapular_nerve", "C3", "Gray p. 435", True),
    "serratus_posterior_superior": ("intercostal_nerve", "T2", "Gray p. 404", True),
    "serratus_posterior_inferior": ("intercostal_nerve", "T9", "Gray p. 404", True),
    "deltoid": ("axillary_nerve", "C5", "Gray p. 440", True),
    "trapezius_transverse": ("accessory_nerve", "C3", "Cunningham p. 319", True),
    "supraspinatus": ("suprascapular_nerve", "C5", "Cunningham p. 375", True),
    "obliquus_capitis_inferior": ("suboccipital_nerve", "C1", "Gray p. 402", True),
    "rectus_capitis_posterior_major": ("suboccipital_nerve", "C1", "Gray p. 921", True),
    "rectus_capitis_posterior_minor": ("suboccipital_nerve", "C1", "Gray p. 921", True),
    "obliquus_capitis_superior": ("suboccipital_nerve", "C1", "Gray p. 921", True),
    "latissimus_dorsi": ("thoracodorsal_nerve", "C7", "Gray p. 434", False),
    "infraspinatus": ("suprascapular_nerve", "C5", "Gray p. 441", False),
    "teres_minor": ("axillary_nerve", "C5", "Gray p. 441", False),
    "serratus_anterior": ("long_thoracic_nerve", "C6", "Gray p. 438", False),
}


@pytest.mark.parametrize(("key", "told"), SUPPLY.items())
def test_nerve_agrees_with_the_text(key: str, told: tuple[str, str, str, bool]) -> None:
    nerve, root, _, _ = told
    row = CATALOGUE[key]
    assert nerve in row.nerve_entries
    assert root in row.roots


@pytest.mark.parametrize("key", SUPPLY)
def test_nerve_row_and_muscle_row_say_the_same(key: str) -> None:
    nerve = CATALOGUE[SUPPLY[key][0]]
    if SUPPLY[key][0] != "intercostal_nerve":
        assert key in nerve.supplies or nerve.id == "accessory_nerve"
    else:
        assert key in nerve.supplies


def test_limb_muscles_of_the_back_have_no_posterior_ramus() -> None:
    for key in (
        *("trapezius_descending", "trapezius_transverse", "trapezius_ascending"),
        *("latissimus_dorsi", "rhomboid_minor", "rhomboid_major", "levator_scapulae"),
        *("serratus_posterior_superior", "serratus_posterior_inferior"),
    ):
        row = CATALOGUE[key]
        assert row.ramus in ("anterior", "cranial"), key
        assert not any("ramus" in n or "branch_of_posterior" in n for n in row.nerve_entries)


def test_greater_occipital_is_the_medial_branch_of_c2_as_in_gray_p_923() -> None:
    row = CATALOGUE["greater_occipital_nerve"]
    assert row.roots == ("C2",)
    assert row.ramus == "posterior"
    # "ascends between the Obliquus inferior and the Semispinalis capitis, and pierces the
    # latter muscle and the Trapezius"
    assert row.pierces == ("semispinalis_capitis", "trapezius_descending")
    assert "edial branch" in row.course
    assert "occipital artery" in row.course


def test_third_occipital_is_medial_to_the_greater_as_in_gray_p_923() -> None:
    row = CATALOGUE["third_occipital_nerve"]
    assert row.roots == ("C3",)
    assert {"splenius_capitis", "trapezius_descending"} <= set(row.pierces)
    assert "medial to the greater occipital" in row.course


def test_suboccipital_nerve_supplies_five_muscles_as_in_gray_p_921() -> None:
    assert set(CATALOGUE["suboccipital_nerve"].supplies) == {
        "rectus_capitis_posterior_major",
        "rectus_capitis_posterior_minor",
        "obliquus_capitis_superior",
        "obliquus_capitis_inferior",
        "semispinalis_capitis",
    }


def test_superior_cluneal_nerves_come_from_the_upper_three_lumbar_nerves() -> None:
    # Gray, posterior divisions of the lumbar nerves (read).
    row = CATALOGUE["superior_cluneal_nerve"]
    assert row.levels == parse_levels("L1..L3")
    assert row.ramus == "posterior"


def test_middle_cluneal_nerves_come_from_the_upper_three_sacral_nerves() -> None:
    # Gray, posterior divisions of the sacral nerves (read).
    assert CATALOGUE["middle_cluneal_nerve"].levels == parse_levels("S1..S3")


def test_nerves_without_a_skin_branch_have_none() -> None:
    # Cunningham p. 690 for C1 (read); C6-C8, L4, L5 common teaching, from memory.
    levels = set(CATALOGUE["posterior_cutaneous_branch"].levels)
    assert not levels & {"C1", "C6", "C7", "C8", "L4", "L5"}
    assert set(parse_levels("T1..T12")) <= levels


def test_medial_branches_reach_skin_above_and_lateral_ones_below_mid_chest() -> None:
    # Gray, posterior divisions of the thoracic nerves (read): upper six medial, lower by
    # lateral branches through latissimus.
    course = CATALOGUE["posterior_cutaneous_branch"].course
    assert course.index("trapezius") < course.index("latissimus")
    assert "T6" in course


def test_dorsal_scapular_nerve_shows_the_figures_of_nguyen_2016() -> None:
    # Nguyen VH et al. 2016, Anat Res Int, art. 4106981, 23 nerves (read).
    doubt = " ".join(CATALOGUE["dorsal_scapular_nerve"].doubts)
    assert "C5 in about 70 %" in doubt
    assert "C4 in 22 %" in doubt
    assert "74 %" in doubt
