"""Attachments against Gray H., Anatomy of the Human Body, 20th ed. 1918 (public domain).

Each row was copied from the page named, as read in stored public pages that
quote it, and was typed without looking at the tables. ``differs`` holds what
the catalogue says otherwise on purpose, with the reason.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import pytest

from meshes.catalogue import load_catalogue
from meshes.catalogue.levels import parse_levels

CATALOGUE = load_catalogue()


@dataclass(frozen=True)
class Told:
    """What Gray says of one end of a muscle.

    ``spines``, ``processes`` (transverse), ``pillars`` (articular), ``mamillary``
    and ``ribs`` are levels that must be there; the ``maybe`` ones may be.
    """

    page: str
    spines: str = ""
    processes: str = ""
    pillars: str = ""
    mamillary: str = ""
    ribs: str = ""
    maybe: str = ""
    parts: tuple[str, ...] = ()
    differs: dict[str, str] = field(default_factory=dict)


ORIGINS = {
    "rhomboid_minor": Told("p. 434", spines="C7 T1", parts=("nuchal_ligament",)),
    "rhomboid_major": Told("p. 434", spines="T2..T5"),
    "levator_scapulae": Told("p. 435", processes="C1..C4"),
    "latissimus_dorsi": Told(
        "p. 434", spines="T7..T12", ribs="10..12", maybe="9",
        parts=("hip_bone.left", "thoracolumbar_fascia_posterior.left", "scapula.left"),
    ),
    "serratus_posterior_superior": Told(
        "p. 404", spines="C7..T2", maybe="T3", parts=("nuchal_ligament",)
    ),
    "serratus_posterior_inferior": Told("p. 404", spines="T11..L2", maybe="L3"),
    "splenius_capitis": Told("p. 397", spines="C7..T3", maybe="T4", parts=("nuchal_ligament",)),
    "splenius_cervicis": Told("p. 397", spines="T3..T6"),
    "iliocostalis_thoracis": Told("p. 399", ribs="7..12"),
    "semispinalis_thoracis": Told("p. 400", processes="T6..T10"),
    "semispinalis_cervicis": Told("p. 400", processes="T1..T5", maybe="T6"),
    "semispinalis_capitis": Told("p. 400", processes="C7..T6", pillars="C4..C6", maybe="T7"),
    "spinalis_cervicis": Told(
        "p. 400", spines="C7", maybe="T1 T2", parts=("nuchal_ligament",)
    ),
    "multifidus_lumborum": Told(
        "p. 400", mamillary="L3..L5",
        parts=("sacrum", "erector_spinae_aponeurosis.left", "hip_bone.left",
               "posterior_sacroiliac_ligament.left"),
    ),
    "obliquus_capitis_inferior": Told("p. 402", spines="C2"),
    "obliquus_capitis_superior": Told("p. 402", processes="C1"),
    "rectus_capitis_posterior_major": Told("p. 401", spines="C2"),
    "quadratus_lumborum": Told(
        "The Posterior Muscles of the Abdomen",
        parts=("iliolumbar_ligament.left", "hip_bone.left"),
    ),
}  # fmt: skip

INSERTIONS = {
    "rhomboid_minor": Told("p. 434", parts=("scapula.left",)),
    "rhomboid_major": Told("p. 434", parts=("scapula.left",)),
    "levator_scapulae": Told("p. 435", parts=("scapula.left",)),
    "latissimus_dorsi": Told("p. 434", parts=("humerus.left",)),
    "serratus_posterior_superior": Told("p. 404", ribs="2..5"),
    "serratus_posterior_inferior": Told("p. 404", ribs="9..12"),
    "splenius_capitis": Told("p. 397", parts=("cranium",)),
    "splenius_cervicis": Told("p. 397", processes="C1 C2", maybe="C3"),
    "iliocostalis_lumborum": Told(
        "p. 399", ribs="7..12", maybe="6",
        differs={"L1..L4": "Macintosh & Bogduk 1987 add the lumbar part, which Gray has not"},
    ),
    "iliocostalis_thoracis": Told("p. 399", ribs="1..6", processes="C7"),
    "semispinalis_thoracis": Told("p. 400", spines="C6..T4"),
    "semispinalis_cervicis": Told("p. 400", spines="C2..C5"),
    "semispinalis_capitis": Told("p. 400", parts=("cranium",)),
    "spinalis_cervicis": Told("p. 400", spines="C2", maybe="C3 C4"),
    "obliquus_capitis_inferior": Told("p. 402", processes="C1"),
    "obliquus_capitis_superior": Told("p. 402", parts=("cranium",)),
    "rectus_capitis_posterior_major": Told("p. 401", parts=("cranium",)),
    "quadratus_lumborum": Told(
        "The Posterior Muscles of the Abdomen", ribs="12", processes="L1..L4"
    ),
}  # fmt: skip

_ENDINGS = {
    "spinous_process": "spines",
    "spinous_root": "spines",
    "transverse_process": "processes",
    "posterior_tubercle": "processes",
    "articular_pillar": "pillars",
    "mamillary_process": "mamillary",
}


def said(key: str, end: str, sure: bool) -> dict[str, set[str]]:
    """What the catalogue says of one end, by kind of place."""
    out: dict[str, set[str]] = {}
    for rule, to, mark in CATALOGUE[key].attachments_at():
        if rule.kind != end or (sure and rule.inconstant):
            continue
        if to.startswith("rib_"):
            kind, place = "ribs", to.split("_")[1].split(".")[0]
        elif to.startswith("vertebra_"):
            kind, place = _ENDINGS[mark.split(".")[-1]], to.removeprefix("vertebra_")
        else:
            kind, place = "parts", to
        out.setdefault(kind, set()).add(place)
    return out


CASES = [("origin", k, t) for k, t in ORIGINS.items()] + [
    ("insertion", k, t) for k, t in INSERTIONS.items()
]


@pytest.mark.parametrize(("end", "key", "told"), CASES, ids=[f"{k}-{e}" for e, k, _ in CASES])
def test_attachment_agrees_with_gray(end: str, key: str, told: Told) -> None:
    always, ever = said(key, end, sure=True), said(key, end, sure=False)
    maybe = set(parse_levels(told.maybe))
    excused = {level for levels in told.differs for level in parse_levels(levels)}
    for kind in ("spines", "processes", "pillars", "mamillary", "ribs"):
        levels = set(parse_levels(getattr(told, kind)))
        assert levels <= always.get(kind, set()), f"{kind} missing"
        beyond = ever.get(kind, set()) - levels - maybe - excused
        assert not beyond, f"{kind} that Gray has not: {sorted(beyond)}"
    assert set(told.parts) <= ever.get("parts", set())
    # What Gray calls occasional must not be stated as constant.
    for kind in ("spines", "processes", "ribs"):
        surely = always.get(kind, set()) & (maybe - set(parse_levels(getattr(told, kind))))
        # Of splenius cervicis Gray says "upper two or three": C3 stands, with the word often.
        assert not surely or key == "splenius_cervicis", f"{sorted(surely)} is inconstant"


def test_trapezius_as_a_whole_agrees_with_gray_p_432() -> None:
    rows = CATALOGUE.group("trapezius")
    spines = {to for row in rows for _, to, mark in row.attachments_at()
              if mark.endswith("spinous_process")}  # fmt: skip
    assert spines == {f"vertebra_{v}" for v in parse_levels("C7..T12")}
    descending = CATALOGUE["trapezius_descending"]
    marks = {mark: rule for rule, _, mark in descending.attachments_at()}
    assert "occipital.external_protuberance" in marks
    assert marks["occipital.left.superior_nuchal_line"].span == (0.0, 0.33)
    assert marks["clavicle.left.posterior_border"].span == (0.67, 1.0)
    transverse = {mark for _, _, mark in CATALOGUE["trapezius_transverse"].attachments_at()}
    assert {"scapula.left.acromion_medial_margin", "scapula.left.spine_crest_upper_lip"} <= (
        transverse
    )


def test_rotatores_are_eleven_a_side_as_in_gray_p_400() -> None:
    row = CATALOGUE["rotator_brevis"]
    assert len(row.levels) == 11
    assert [to for _, to, _ in row.attachments_at("T2")] == ["vertebra_T2", "vertebra_T1"]
    assert [to for _, to, _ in row.attachments_at("T12")] == ["vertebra_T12", "vertebra_T11"]


def test_levatores_are_twelve_a_side_and_four_are_long_as_in_gray_p_403() -> None:
    short, long = CATALOGUE["levator_costarum_brevis"], CATALOGUE["levator_costarum_longus"]
    assert short.levels == parse_levels("C7..T11")
    assert len(long.levels) == 4
    for level, rib in (("C7", "rib_1.left"), ("T11", "rib_12.left")):
        assert short.attachments_at(level)[1][1] == rib
    # "passes down to the second rib below its origin"
    assert long.attachments_at("T10")[1][1] == "rib_12.left"
    assert short.insertions[0].bounds("T4", "left") == [("rib_5.left.tubercle", "rib_5.left.angle")]


def test_interspinales_are_six_cervical_and_four_lumbar_pairs_as_in_gray_p_401() -> None:
    neck, loin = CATALOGUE["interspinalis_cervicis"], CATALOGUE["interspinalis_lumborum"]
    assert set(parse_levels("C2_C3..C7_T1")) <= set(neck.levels)
    assert set(neck.levels) - set(parse_levels("C2_C3..C7_T1")) == {"T1_T2"}
    assert set(parse_levels("L1_L2..L4_L5")) <= set(loin.levels)


def test_posterior_intertransversarii_are_seven_pairs_as_in_gray_p_401() -> None:
    assert CATALOGUE["intertransversarius_posterior_cervicis"].levels == parse_levels(
        "C1_C2..C7_T1"
    )


def test_multifidus_starts_where_gray_p_400_says_and_ends_at_the_axis() -> None:
    starts, ends = set(), set()
    for region in ("cervicis", "thoracis", "lumborum"):
        for rule in CATALOGUE[f"multifidus_{region}"].fascicles:
            for start, end in rule.ends():
                starts.add(start)
                ends.add(end.split(".")[0])
    for level in parse_levels("C4..C7"):
        assert f"{level}.left.articular_pillar" in starts
    for level in parse_levels("T1..T12"):
        assert f"{level}.left.transverse_process" in starts
    for level in parse_levels("L1..L5"):
        assert f"{level}.left.mamillary_process" in starts
    assert ends == set(parse_levels("C2..L5"))


def test_shoulder_muscles_end_on_the_three_impressions_as_in_gray_p_441() -> None:
    for key, facet in {
        "supraspinatus": "superior",
        "infraspinatus": "middle",
        "teres_minor": "inferior",
    }.items():
        marks = [mark for _, _, mark in CATALOGUE[key].attachments_at()]
        assert marks[-1] == f"humerus.left.greater_tubercle_{facet}"


def test_deltoid_starts_on_clavicle_acromion_and_lower_lip_as_in_gray_p_440() -> None:
    marks = {mark for rule, _, mark in CATALOGUE["deltoid"].attachments_at()
             if rule.kind == "origin"}  # fmt: skip
    assert marks == {
        "clavicle.left.anterior_border",
        "scapula.left.acromion_lateral_margin",
        "scapula.left.spine_crest_lower_lip",
    }


def test_suboccipital_triangle_has_the_borders_of_gray_p_402() -> None:
    row = CATALOGUE["suboccipital_triangle"]
    assert set(row.borders) == {
        "rectus_capitis_posterior_major",
        "obliquus_capitis_superior",
        "obliquus_capitis_inferior",
    }
    assert "posterior_atlanto_occipital_membrane" in row.floor
    assert {"vertebral_artery", "suboccipital_nerve"} <= set(row.contents)


def test_triangle_of_auscultation_has_the_borders_of_gray() -> None:
    row = CATALOGUE["triangle_of_auscultation"]
    assert set(row.borders) == {"trapezius_ascending", "latissimus_dorsi", "scapula"}
    assert {"rhomboid_major", "rib_6", "rib_7"} <= set(row.floor)


def test_lumbar_triangle_has_the_borders_of_gray() -> None:
    row = CATALOGUE["inferior_lumbar_triangle"]
    assert set(row.borders) == {"latissimus_dorsi", "external_oblique", "hip_bone"}
    assert row.floor == ("internal_oblique",)


def test_nuchal_ligament_runs_from_protuberance_to_c7_as_in_gray() -> None:
    marks = {mark for _, _, mark in CATALOGUE["nuchal_ligament"].attachments_at()}
    assert {"occipital.external_protuberance", "C7.spinous_process"} <= marks
    assert not any(mark.startswith("T1") for mark in marks)
