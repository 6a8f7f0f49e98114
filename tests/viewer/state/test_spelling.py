"""British and American spelling of what is shown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meshes.catalogue import load_catalogue
from viewer.state.actions import ACTIONS
from viewer.state.spelling import TABLE, spelled, spellings_in


def test_stems_change_and_keep_their_case():
    assert spelled("Fibres of the grey colour", "us") == "Fibers of the gray color"
    assert spelled("zygapophysial CENTRE", "us") == "zygapophyseal CENTER"
    assert spelled("gray fibers", "uk") == "grey fibres"


def test_the_author_gray_keeps_his_name():
    assert spelled("Gray 1918, fibers", "uk") == "Gray 1918, fibres"


def test_another_spelling_is_refused():
    with pytest.raises(ValueError, match="uk, us"):
        spelled("x", "au")


@given(st.lists(st.sampled_from([w for pair in TABLE for w in pair]), max_size=8))
def test_american_text_holds_no_british_stem_and_is_stable(words):
    text = spelled(" ".join(words), "us")
    assert "uk" not in spellings_in(text)
    assert spelled(text, "us") == text


def test_no_text_of_program_or_catalogue_mixes_spellings():
    texts = [f"{a.title} {a.tip}" for a in ACTIONS]
    catalogue = load_catalogue()
    for key in catalogue:
        row = catalogue[key]
        texts += [
            row.english,
            row.nerve,
            row.artery,
            row.course,
            row.note,
            *row.actions,
            *(rule.words for rule in row.attachments),
        ]
    assert [t for t in texts if t and len(spellings_in(t)) > 1] == []
    assert [t for t in texts if t and "us" in spellings_in(t)] == []
    assert any("uk" in spellings_in(t) for t in texts if t)
