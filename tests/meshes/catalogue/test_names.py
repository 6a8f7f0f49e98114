"""Finding by name: English, Latin, older names, both spellings, and small slips."""

from __future__ import annotations

import time

import pytest

from meshes.catalogue import load_catalogue
from meshes.catalogue.names import find, names_of, plain, slips

CATALOGUE = load_catalogue()


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        ("rhomboid minor", "rhomboid_minor"),
        ("musculus latissimus dorsi", "latissimus_dorsi"),
        ("sacrospinalis", "erector_spinae"),
        ("levator anguli scapulae", "levator_scapulae"),
        ("complexus", "semispinalis_capitis"),
        ("trachelomastoid", "longissimus_capitis"),
        ("lumbodorsal fascia", "thoracolumbar_fascia"),
        ("shoulder blade", "scapula"),
        ("facet joint", "zygapophysial_joint"),
        ("Petit triangle", "inferior_lumbar_triangle"),
        ("eleventh cranial nerve", "accessory_nerve"),
        ("PLL", "posterior_longitudinal_ligament"),
        ("atlas", "vertebra_C1"),
        ("TRAPEZIUS", "trapezius"),
    ],
)
def test_any_name_finds_its_row_first(typed: str, key: str) -> None:
    assert find(typed, CATALOGUE)[0].key == key


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        ("romboid major", "rhomboid_major"),
        ("latisimus dorsi", "latissimus_dorsi"),
        ("trapezuis", "trapezius"),
        ("levator scapula", "levator_scapulae"),
        ("splenius capitus", "splenius_capitis"),
        ("greater ocipital nerve", "greater_occipital_nerve"),
        ("serratus postrior inferior", "serratus_posterior_inferior"),
        ("multifidous", "multifidus"),
    ],
)
def test_small_slip_is_forgiven(typed: str, key: str) -> None:
    assert find(typed, CATALOGUE)[0].key == key


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("zygapophyseal joint", "zygapophysial joint"),
        ("longissimus colli", "longissimus cervicis"),
        ("dorsal rami", "posterior ramus"),
        ("gluteus maximus", "glutaeus maximus"),
        ("azygous vein", "azygos vein"),
    ],
)
def test_both_spellings_find_the_same(one: str, other: str) -> None:
    assert find(one, CATALOGUE)[0].key == find(other, CATALOGUE)[0].key


@pytest.mark.parametrize(
    ("typed", "part"),
    [
        ("T7", "vertebra_T7"),
        ("rib 7", "rib_7"),
        ("short rotator T5", "rotator_brevis_T5"),
        ("disc L4 L5", "disc_L4_L5"),
        ("dorsal ramus L3", "posterior_ramus_L3"),
        ("external intercostal 6", "external_intercostal_6"),
    ],
)
def test_level_picks_one_part_of_a_family(typed: str, part: str) -> None:
    assert find(typed, CATALOGUE)[0].part_names == (part,)


def test_group_stands_for_all_its_parts() -> None:
    hit = find("trapezius", CATALOGUE)[0]
    assert hit.is_group
    assert hit.part_names == ("trapezius_descending", "trapezius_transverse", "trapezius_ascending")


def test_every_row_is_found_first_by_its_own_english_name() -> None:
    missed = []
    for key, row in CATALOGUE.items():
        hits = find(row.english, CATALOGUE, limit=4)
        best = {h.key for h in hits if h.score == hits[0].score} if hits else set()
        if key not in best:
            missed.append(key)
    assert missed == []


def test_every_latin_name_finds_its_row() -> None:
    for key, row in CATALOGUE.items():
        if row.latin:
            assert key in {h.key for h in find(row.latin, CATALOGUE, limit=4)}, row.latin


def test_nonsense_finds_nothing() -> None:
    assert find("qwxzv", CATALOGUE) == []
    assert find("   ", CATALOGUE) == []
    assert find("left", CATALOGUE) == []


def test_side_words_are_passed_over() -> None:
    assert find("left rhomboid minor", CATALOGUE)[0].key == "rhomboid_minor"


def test_slips_count_letters() -> None:
    assert slips("rhomboid", "romboid", 2) == 1
    assert slips("teres", "teers", 2) == 1
    assert slips("teres", "deltoid", 2) == 3


def test_plain_drops_accents_and_case() -> None:
    assert plain("Ligamentum Núchae") == plain("ligamentum nuchae")


def test_names_of_a_row_hold_its_synonyms() -> None:
    assert {"erector spinae", "sacrospinalis"} <= set(names_of("erector_spinae", CATALOGUE))


def test_search_keeps_up_with_typing() -> None:
    find("warm", CATALOGUE)
    started = time.perf_counter()
    find("semispinalis", CATALOGUE)
    assert time.perf_counter() - started < 0.3
