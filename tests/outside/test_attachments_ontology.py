"""Attachments and ids against UBERON, release 2021-07-27 (CC BY 3.0).

The notes on origin and insertion, and the cross-references, as read in the
release; the formal relations are partly wrong there (trapezius is said to end
on the lateral border of the scapula), so the notes are used.
"""

from __future__ import annotations

import pytest

from meshes.catalogue import load_catalogue
from meshes.catalogue.levels import parse_levels

CATALOGUE = load_catalogue()

# key : (origin spines, origin transverse processes, insertion ribs, insertion spines)
NOTES = {
    "semispinalis_thoracis": ("", "T6..T10", "", "C6..T4"),
    "semispinalis_cervicis": ("", "T1..T6", "", "C2..C5"),
    "serratus_posterior_superior": ("C7..T3", "", "2..5", ""),
    "serratus_posterior_inferior": ("T11..L2", "", "9..12", ""),
    "spinalis_thoracis": ("T11..L2", "", "", "T1..T8"),
    "iliocostalis_cervicis": ("", "", "", ""),
}

# Cross-references: class, FMA.
IDS = {
    "latissimus_dorsi": ("UBERON:0001112", "FMA:13357"),
    "levator_scapulae": ("UBERON:0005461", "FMA:32519"),
    "serratus_posterior_superior": ("UBERON:0001126", "FMA:13401"),
    "serratus_posterior_inferior": ("UBERON:0001127", "FMA:13402"),
    "splenius_capitis": ("UBERON:0000711", "FMA:22653"),
    "splenius_cervicis": ("UBERON:0008544", "FMA:22681"),
    "iliocostalis_lumborum": ("UBERON:0011207", "FMA:22702"),
    "longissimus_capitis": ("UBERON:0001403", "FMA:22714"),
    "spinalis_thoracis": ("UBERON:0001405", "FMA:22765"),
    "semispinalis_capitis": ("UBERON:0001409", "FMA:22830"),
    "rectus_capitis_posterior_major": ("UBERON:0008454", "FMA:32525"),
    "rectus_capitis_posterior_minor": ("UBERON:0008455", "FMA:32526"),
    "nuchal_ligament": ("UBERON:0000351", "FMA:13427"),
    "scapula": ("UBERON:0006849", "FMA:13394"),
    "rib_8": ("UBERON:0010757", "FMA:8120"),
    "vertebra_T8": ("UBERON:0011050", "FMA:9991"),
    "vertebra_L5": ("UBERON:0004621", "FMA:13076"),
    "quadratus_lumborum": ("UBERON:0001220", "FMA:15569"),
}


@pytest.mark.parametrize(("key", "note"), NOTES.items())
def test_levels_lie_within_the_notes_of_uberon(key: str, note: tuple[str, ...]) -> None:
    spines, processes, ribs, ends = (set(parse_levels(n)) for n in note)
    found: dict[str, set[str]] = {"spines": set(), "processes": set(), "ribs": set(), "ends": set()}
    for rule, to, mark in CATALOGUE[key].attachments_at():
        level = to.removeprefix("vertebra_").removeprefix("rib_").split(".")[0]
        if mark.endswith("spinous_process") and not (rule.inconstant and level not in spines):
            found["spines" if rule.kind == "origin" else "ends"].add(level)
        elif mark.endswith("transverse_process") and rule.kind == "origin":
            found["processes"].add(level)
        elif to.startswith("rib_") and rule.kind == "insertion":
            found["ribs"].add(level)
    assert found == {"spines": spines, "processes": processes, "ribs": ribs, "ends": ends}


def test_iliocostalis_cervicis_follows_the_definition_of_uberon_0008546() -> None:
    row = CATALOGUE["iliocostalis_cervicis"]
    ends = [(to, mark) for _, to, mark in row.attachments_at()]
    assert {to for to, _ in ends} == {
        *(f"rib_{n}.left" for n in range(3, 7)),
        *(f"vertebra_C{n}" for n in range(4, 7)),
    }
    assert {m.split(".")[-1] for _, m in ends} == {"angle", "posterior_tubercle"}


def test_longissimus_capitis_follows_the_definition_of_uberon_0001403() -> None:
    # "upper four or five thoracic, lower three or four cervical, to the mastoid"
    row = CATALOGUE["longissimus_capitis"]
    marks = {mark for _, _, mark in row.attachments_at()}
    assert {f"T{n}.left.transverse_process" for n in range(1, 5)} <= marks
    assert {f"C{n}.left.articular_pillar" for n in range(5, 8)} <= marks
    assert "temporal.left.mastoid_tip" in marks


@pytest.mark.parametrize(("key", "ids"), IDS.items())
def test_ids_are_those_of_uberon(key: str, ids: tuple[str, str]) -> None:
    assert (CATALOGUE[key].ids["uberon"], CATALOGUE[key].ids["fma"]) == ids


def test_no_id_is_given_to_two_unrelated_rows() -> None:
    seen: dict[str, str] = {}
    for key, row in CATALOGUE.items():
        fma = row.ids.get("fma", "")
        if fma and fma in seen:
            # One class for the whole muscle stands for its parts.
            assert CATALOGUE[seen[fma]].group == row.group != "", (key, seen[fma])
        seen[fma] = key
