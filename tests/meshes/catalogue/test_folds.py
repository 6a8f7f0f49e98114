"""The table of folds is checked row by row, and agrees with the plan."""

import pytest

from meshes.catalogue import load_catalogue
from meshes.catalogue.folds import (
    FILE,
    fold_ids,
    fold_named,
    fold_of_part,
    folds_by_hand,
    folds_of_step,
    load_folds,
    read_folds,
)
from meshes.catalogue.plan import load_plan, part_ids_of
from meshes.errors import PeelbackError

ROW = """
sources = { folds = "practice" }
[[fold]]
id = "rhomboid_major"
title = "Rhomboid major"
step = "rhomboids"
parts = ["rhomboid_major"]
cut_end = "origin"
turn_deg = 150
"""


def read(tmp_path, text):
    (tmp_path / FILE).write_text(text)
    return read_folds(tmp_path, load_catalogue(), load_plan())


def test_a_good_table_is_read(tmp_path):
    assert read(tmp_path, ROW)[0].part_ids("left") == ("rhomboid_major.left",)


@pytest.mark.parametrize(
    ("old", "new", "word"),
    [
        ('"rhomboids"', '"carving"', "carving"),
        ('["rhomboid_major"]', '["rhomboid_maximus"]', "rhomboid_maximus"),
        ('"origin"', '"middle"', "middle"),
        ("150", "200", "turn_deg"),
        ('title = "Rhomboid major"', "", "title"),
        ("turn_deg = 150", 'turn_deg = 150\ncolour = "red"', "colour"),
        ("turn_deg = 150", "turn_deg = 150\naxis = [0, 0, 0]", "axis"),
        ("turn_deg = 150", 'turn_deg = 150\nclings = ["rhomboid_major"]', "rhomboid_major"),
        (
            "turn_deg = 150",
            'turn_deg = 150\ncuts = [{ along = ["T8.nose", "T9.lamina"], words = "down" }]',
            "T8.nose",
        ),
        ('sources = { folds = "practice" }', "", "source"),
    ],
)
def test_a_bad_row_is_named_in_one_line(tmp_path, old, new, word):
    with pytest.raises(PeelbackError) as error:
        read(tmp_path, ROW.replace(old, new, 1))
    assert word in str(error.value) and "\n" not in str(error.value)


ASIDE = """
sources = { folds = "practice" }
[[fold]]
id = "columns"
title = "Columns"
step = "deep_window"
parts = ["longissimus_thoracis"]
aside_mm = 18
bow = ["T3.spinous_process", "L5.spinous_process"]
"""


def test_what_is_drawn_aside_needs_a_bow_and_no_cut(tmp_path):
    assert read(tmp_path, ASIDE)[0].aside_mm == 18


@pytest.mark.parametrize(
    ("old", "new", "word"),
    [
        ("aside_mm = 18", "aside_mm = 60", "aside_mm"),
        ("aside_mm = 18", "aside_mm = 18\nturn_deg = 90", "turn_deg"),
        ('"T3.spinous_process", ', "", "bow"),
        ("T3.spinous", "T3.nasal", "T3.nasal"),
        ('bow = ["T3.spinous_process", "L5.spinous_process"]', "", "bow"),
    ],
)
def test_a_bad_row_drawn_aside_is_named_in_one_line(tmp_path, old, new, word):
    with pytest.raises(PeelbackError) as error:
        read(tmp_path, ASIDE.replace(old, new, 1))
    assert word in str(error.value) and "\n" not in str(error.value)


def test_every_fold_belongs_to_a_step_that_removes_its_parts():
    plan, catalogue = load_plan(), load_catalogue()
    for rule in load_folds():
        gone = {i for name in plan.step(rule.step).removes for i in part_ids_of(name, catalogue)}
        assert set(rule.part_ids("left")) <= gone, rule.id


def test_the_turn_lies_in_the_plan_s_range():
    for rule in load_folds():
        turn = load_plan().step(rule.step).turn_deg
        assert rule.aside_mm or turn is None or turn[0] <= rule.turn_deg <= turn[1], rule.id


def test_a_window_is_opened_by_hand_and_not_with_its_step():
    assert fold_named("deep_fascia.left")[0].by_hand
    assert "deep_fascia" not in {rule.id for rule in folds_of_step("clean_first_sheet")}
    assert fold_of_part("deep_fascia.right") == "deep_fascia.right"


def test_columns_are_drawn_aside_by_hand():
    rule, _ = fold_named("erector_spinae.left")
    assert rule.by_hand and 15 <= rule.aside_mm <= 20
    assert fold_of_part("longissimus_thoracis.left") == "erector_spinae.left"
    assert [r.id for r in folds_by_hand("deep_window")] == ["erector_spinae"]


def test_parts_know_their_fold():
    assert fold_of_part("trapezius_ascending.right") == "trapezius.right"
    assert fold_of_part("accessory_nerve.left") == "trapezius.left"
    assert fold_of_part("deltoid.left") == ""
    assert {rule.id for rule in folds_of_step("rhomboids")} == {"rhomboids"}
    assert all(fold_named(i) for i in fold_ids())
