"""Every structure that the plan of the body asks for has a row with what a learner needs.

The list is written here by hand, not read from the tables.
"""

from __future__ import annotations

import pytest

from meshes.catalogue import load_catalogue

# name : (kind, stratum, number of parts counting sides)
BONES = {
    "cranium": 1, "sacrum": 1, "coccyx": 1, "sternum": 1, "scapula": 2, "clavicle": 2,
    "humerus": 2, "hip_bone": 2, "femur": 2, "intervertebral_disc": 23, "costal_cartilage": 20,
    **{f"vertebra_C{n}": 1 for n in range(1, 8)},
    **{f"vertebra_T{n}": 1 for n in range(1, 13)},
    **{f"vertebra_L{n}": 1 for n in range(1, 6)},
    **{f"rib_{n}": 2 for n in range(1, 13)},
}  # fmt: skip

LIGAMENTS_AND_FASCIAE = {
    "nuchal_ligament": 1, "supraspinous_ligament": 1, "interspinous_ligament": 22,
    "ligamentum_flavum": 23, "thoracolumbar_fascia_posterior": 2,
    "thoracolumbar_fascia_middle": 2, "superficial_fascia": 2, "deep_fascia": 2,
    "nuchal_fascia": 2, "skin": 2, "anterior_longitudinal_ligament": 1,
    "posterior_longitudinal_ligament": 1, "iliolumbar_ligament": 2, "lumbocostal_ligament": 2,
    "posterior_sacroiliac_ligament": 2, "sacrotuberous_ligament": 2,
    "posterior_atlanto_occipital_membrane": 1, "transversus_abdominis_aponeurosis": 2,
    "erector_spinae_aponeurosis": 2,
}  # fmt: skip

# stratum, what it is built as, parts
MUSCLES = {
    "trapezius_descending": (2, "sheet", 2),
    "trapezius_transverse": (2, "sheet", 2),
    "trapezius_ascending": (2, "sheet", 2),
    "latissimus_dorsi": (2, "sheet", 2),
    "levator_scapulae": (3, "sheet", 2),
    "rhomboid_minor": (3, "sheet", 2),
    "rhomboid_major": (3, "sheet", 2),
    "serratus_posterior_superior": (4, "sheet", 2),
    "serratus_posterior_inferior": (4, "sheet", 2),
    "splenius_capitis": (5, "sheet", 2),
    "splenius_cervicis": (5, "sheet", 2),
    "iliocostalis_lumborum": (6, "bundle", 2),
    "iliocostalis_thoracis": (6, "bundle", 2),
    "iliocostalis_cervicis": (6, "bundle", 2),
    "longissimus_thoracis": (6, "bundle", 2),
    "longissimus_cervicis": (6, "bundle", 2),
    "longissimus_capitis": (6, "bundle", 2),
    "spinalis_thoracis": (6, "bundle", 2),
    "spinalis_cervicis": (7, "bundle", 2),
    "semispinalis_thoracis": (7, "bundle", 2),
    "semispinalis_cervicis": (7, "bundle", 2),
    "semispinalis_capitis": (7, "bundle", 2),
    "multifidus_cervicis": (7, "bundle", 2),
    "multifidus_thoracis": (7, "bundle", 2),
    "multifidus_lumborum": (7, "bundle", 2),
    "rotator_brevis": (7, "bundle", 22),
    "rotator_longus": (7, "bundle", 20),
    "interspinalis_cervicis": (8, "bundle", 14),
    "interspinalis_lumborum": (8, "bundle", 10),
    "intertransversarius_anterior_cervicis": (8, "bundle", 12),
    "intertransversarius_posterior_cervicis": (8, "bundle", 14),
    "intertransversarius_medialis_lumborum": (8, "bundle", 8),
    "intertransversarius_lateralis_lumborum": (8, "bundle", 8),
    "levator_costarum_brevis": (8, "bundle", 24),
    "levator_costarum_longus": (8, "bundle", 8),
    "rectus_capitis_posterior_major": (8, "bundle", 2),
    "rectus_capitis_posterior_minor": (8, "bundle", 2),
    "obliquus_capitis_superior": (8, "bundle", 2),
    "obliquus_capitis_inferior": (8, "bundle", 2),
    "deltoid": (2, "sheet", 2),
    "sternocleidomastoid": (2, "bundle", 2),
    "external_oblique": (2, "sheet", 2),
    "gluteus_maximus": (2, "sheet", 2),
    "supraspinatus": (3, "solid", 2),
    "infraspinatus": (3, "solid", 2),
    "teres_major": (3, "bundle", 2),
    "teres_minor": (3, "bundle", 2),
    "triceps_brachii_long_head": (3, "bundle", 2),
    "internal_oblique": (3, "sheet", 2),
    "gluteus_medius": (3, "sheet", 2),
    "serratus_anterior": (4, "sheet", 2),
    "scalenus_medius": (5, "bundle", 2),
    "scalenus_posterior": (5, "bundle", 2),
    "quadratus_lumborum": (8, "solid", 2),
    "external_intercostal": (8, "sheet", 22),
}

NERVES = [
    "accessory_nerve",
    "cervical_branches_to_trapezius",
    "dorsal_scapular_nerve",
    "thoracodorsal_nerve",
    "suprascapular_nerve",
    "axillary_nerve",
    "greater_occipital_nerve",
    "third_occipital_nerve",
    "suboccipital_nerve",
    "lesser_occipital_nerve",
    "great_auricular_nerve",
    "posterior_ramus",
    "medial_branch_of_posterior_ramus",
    "lateral_branch_of_posterior_ramus",
    "posterior_cutaneous_branch",
    "superior_cluneal_nerve",
    "middle_cluneal_nerve",
    "spinal_nerve",
    "intercostal_nerve",
    "subcostal_nerve",
    "ramus_communicans",
    "sympathetic_trunk",
    "sympathetic_ganglion",
    "spinal_ganglion",
]

VESSELS = [
    "occipital_artery",
    "transverse_cervical_artery",
    "dorsal_scapular_artery",
    "dorsal_scapular_vein",
    "suprascapular_artery",
    "circumflex_scapular_artery",
    "subscapular_artery",
    "thoracodorsal_artery",
    "deep_cervical_artery",
    "vertebral_artery",
    "posterior_intercostal_artery",
    "subcostal_artery",
    "lumbar_artery",
    "aorta",
    "azygos_vein",
]

CANAL = [
    "spinal_cord",
    "cauda_equina",
    "spinal_dura_mater",
    "spinal_arachnoid_mater",
    "denticulate_ligament",
    "internal_vertebral_venous_plexus",
    "epidural_fat",
    "filum_terminale",
]

SPACES = [
    "triangle_of_auscultation",
    "inferior_lumbar_triangle",
    "superior_lumbar_triangle",
    "suboccipital_triangle",
    "quadrangular_space",
    "triangular_space",
]

CATALOGUE = load_catalogue()


@pytest.mark.parametrize(("key", "count"), [*BONES.items(), *LIGAMENTS_AND_FASCIAE.items()])
def test_bone_ligament_and_fascia_has_its_row(key: str, count: int) -> None:
    row = CATALOGUE[key]
    assert len(row.part_ids()) == count
    assert row.latin
    assert row.note


@pytest.mark.parametrize(("key", "expected"), MUSCLES.items())
def test_muscle_row_is_whole(key: str, expected: tuple[int, str, int]) -> None:
    row = CATALOGUE[key]
    assert (row.stratum, row.built_as, len(row.part_ids())) == expected
    assert row.kind == "muscle"
    assert row.latin.startswith(("musculus ", "musculi ", "pars ", "caput "))
    assert row.origins and row.insertions
    assert all(rule.words for rule in row.attachments)
    assert row.nerve and row.artery and row.actions and row.note
    assert row.ramus in ("anterior", "posterior", "cranial", "mixed")
    assert {"attachments", "nerve", "artery", "actions"} <= set(row.cited)


@pytest.mark.parametrize("key", [*NERVES, *VESSELS, *CANAL])
def test_nerve_vessel_and_canal_row_has_a_course(key: str) -> None:
    row = CATALOGUE[key]
    assert row.course
    assert row.note
    assert row.latin


@pytest.mark.parametrize("key", SPACES)
def test_space_has_three_borders_or_more(key: str) -> None:
    row = CATALOGUE[key]
    assert len(row.borders) >= 3
    assert len(row.border_words) == len(row.borders)


def test_sheets_have_a_thickness_for_both_sexes() -> None:
    for row in CATALOGUE.of_kind("muscle"):
        if row.built_as == "sheet":
            assert row.thickness is not None, row.id
            assert 0 < row.thickness.female_mm <= row.thickness.male_mm < 30, row.id


def test_true_back_muscles_are_those_of_posterior_rami() -> None:
    deep = {r.id for r in CATALOGUE.of_kind("muscle") if r.depth_group == "deep"}
    posterior = {r.id for r in CATALOGUE.of_kind("muscle") if r.ramus == "posterior"}
    # The mixed ones lie among the deep muscles but belong to the body wall by their nerve.
    not_true = {
        "intertransversarius_anterior_cervicis",
        "intertransversarius_lateralis_lumborum",
        "intertransversarius_posterior_cervicis",
    }
    assert deep - posterior == not_true
    assert not posterior - deep


def test_disputed_facts_are_shown_as_doubts() -> None:
    for key, word in {
        "levator_scapulae": "Nerve",
        "levator_costarum_brevis": "Nerve",
        "serratus_posterior_superior": "function",
        "serratus_posterior_inferior": "function",
        "dorsal_scapular_artery": "Origin",
    }.items():
        assert any(word in doubt for doubt in CATALOGUE[key].doubts), key


def test_depth_and_group_are_two_orders() -> None:
    row = CATALOGUE["spinalis_cervicis"]
    assert row.group == "erector_spinae"
    assert row.stratum > CATALOGUE["spinalis_thoracis"].stratum
    assert row.stratum >= CATALOGUE["semispinalis_capitis"].stratum


def test_inventory_yields_more_than_320_parts() -> None:
    assert len(CATALOGUE.part_ids(optional=False)) > 320


def test_erector_columns_end_on_rib_process_and_spine() -> None:
    def ends(key: str) -> set[str]:
        row = CATALOGUE[key]
        return {mark.split(".")[-1] for rule, _, mark in row.attachments_at()
                if rule.kind == "insertion"}  # fmt: skip

    assert "angle" in ends("iliocostalis_lumborum")
    assert "transverse_process" in ends("longissimus_thoracis")
    assert ends("spinalis_thoracis") == {"spinous_process"}


def test_fascicles_end_where_the_attachments_say() -> None:
    for row in CATALOGUE.of_kind("muscle"):
        for rule in row.fascicles:
            marks = {mark for _, _, mark in row.attachments_at()}
            for start, _ in rule.ends():
                mark = start.partition("@")[0]
                # Thoracic longissimus starts through the aponeurosis, which has no landmark.
                through = mark.endswith(("spinous_process", "median_crest"))
                assert mark in marks or (row.id == "longissimus_thoracis" and through), (
                    row.id,
                    mark,
                )


def test_slanting_muscles_run_upward_from_process_to_spine() -> None:
    order = [*(f"C{n}" for n in range(1, 8)), *(f"T{n}" for n in range(1, 13)),
             *(f"L{n}" for n in range(1, 6))]  # fmt: skip
    for row in CATALOGUE.group("transversospinales"):
        for rule in row.fascicles:
            for a, b in rule.pairs:
                if a in order and b in order:
                    assert order.index(a) > order.index(b), (row.id, a, b)
    for rule in CATALOGUE["multifidus_thoracis"].fascicles:
        for a, b in rule.pairs:
            assert 2 <= order.index(a) - order.index(b) <= 5
