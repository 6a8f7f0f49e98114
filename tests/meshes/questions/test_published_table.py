"""The page of published values."""

from dataclasses import replace

from meshes.questions.published import Comparison
from meshes.questions.published_table import published_markdown, tally, verdict

ROW = Comparison(
    quantity="height of something",
    role="held_out",
    published=10.0,
    spread=2.0,
    model=11.0,
    source="Source A | B",
    seen=True,
    within_1=True,
    within_2=True,
    unit="mm",
    within_range=None,
    note="",
)


def test_a_row_outside_one_spread_is_not_counted_as_within():
    off = replace(ROW, model=13.0, within_1=False)
    assert tally([ROW, off]) == {"rows": 2, "with_sd": 2, "within_1": 1, "within_2": 2}
    assert verdict(off) == "within 2 sd"


def test_what_was_not_measured_says_why():
    missing = replace(ROW, model=None, within_1=None, within_2=None, note="the nerve is not built")
    page = published_markdown([missing], "A body")
    assert "not measured: the nerve is not built" in page


def test_rows_from_memory_stand_apart():
    page = published_markdown([ROW, replace(ROW, quantity="remembered", seen=False)], "A body")
    read, memory = page.split("## From memory")
    assert "remembered" in memory
    assert "remembered" not in read


def test_a_bar_in_a_source_does_not_break_the_table():
    line = next(x for x in published_markdown([ROW], "A body").splitlines() if "Source A" in x)
    assert line.count("|") == 8
