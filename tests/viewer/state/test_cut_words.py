"""The answer to a rehearsed cut in words: every figure told, losses marked, in either language."""

from dataclasses import replace

import numpy as np
import pytest

from meshes.questions.rehearse import Clearance, Comparison, Layer, Loss, Rehearsal
from tests.viewer.german import English
from viewer.state.cut_words import answer_in_words, verdict
from viewer.state.languages import spoken_in

HERE = (0.0, 0.0, 0.0)
CUT = Rehearsal(
    line=np.zeros((2, 3)),
    inward=np.zeros((2, 3)),
    length_mm=120.0,
    depth_mm=7.0,
    safe_mm=3.1,
    layers=(Layer("felt", 1.0, 0.0, 1.2, 2.5), Layer("mat", 0.4, 2.5, 0.5, 4.0)),
    through_mm=2.5,
    clearances=(Clearance("thread", 0.0, HERE), Clearance("rope", 4.2, HERE)),
    losses=(Loss("thread", 12.0, 3.1, True, HERE), Loss("mat", 40.0, 2.5, False, HERE)),
    comparison=Comparison("close to the spines, T5 upward to the lower nuchal ligament",
                          1.5, 4.0, 0.9, 130.0),
)  # fmt: skip
TITLES = {"felt": "Filz", "mat": "Matte", "thread": "Faden", "rope": "Seil"}
NONE = replace(CUT, safe_mm=None, clearances=(), losses=(), comparison=None)


def spoken(answer):
    return {head: [line.words for line in lines] for head, lines in answer_in_words(answer, TITLES)}


def test_the_answer_tells_length_plan_losses_clearances_and_layers():
    text = spoken(CUT)
    assert text["120 mm long, blade 7 mm deep"] == ["The first thing to be kept lies 3.1 mm down."]
    assert text["Would be lost"][0] == "Faden: over 12 mm, from 3.1 mm down – must be kept"
    assert text["Clearance to what must stay"] == ["Faden: cut", "Seil: 4.2 mm"]
    assert text["Layers under the line"][1] == (
        "Matte: 4.0 mm thick (least 0.5), 2.5 mm down, under 40 % of the line"
    )
    assert "90 % of it followed" in text["Beside the plan's line"][1]


def test_only_what_must_stay_and_is_cut_is_marked_as_lost():
    marked = [
        line.words for _, lines in answer_in_words(CUT, TITLES) for line in lines if line.loss
    ]
    assert len(marked) == 2 and all(words.startswith("Faden") for words in marked)
    assert not any(line.loss for _, lines in answer_in_words(NONE, TITLES) for line in lines)


@pytest.mark.parametrize("answer", [CUT, NONE], ids=["with losses", "without"])
@pytest.mark.parametrize("derived", [False, True])
def test_nothing_of_the_answer_is_english_in_german(answer, derived):
    if derived and answer.comparison:
        beside = replace(answer.comparison, words="at the origin of rhomboid minor")
        answer = replace(answer, comparison=beside)
    english = English()
    with spoken_in("de"):
        texts = [t for head, lines in spoken(answer).items() for t in (head, *lines)]
        texts.append(verdict(answer, TITLES, {"mat": "nerve"})[0])
        assert any("2,5 mm" in text for text in texts)
    # What is quoted is passed over by the walk: the plan's own words are looked at bare.
    assert [t for t in texts if english.left_in(t.replace("„", "").replace("“", ""))] == []


@pytest.mark.parametrize(
    ("losses", "words", "bad"),
    [
        (CUT.losses, "loses 1 thing that must stay", True),
        (2 * CUT.losses[:1], "loses 2 things that must stay", True),
        (CUT.losses[1:], "goes beyond the layer", False),
        ((Loss("rope", 2.0, 1.0, False, HERE),), "goes through Seil", True),
        ((), "nothing but the layer itself", False),
    ],
)
def test_the_verdict_says_the_worst_in_one_sentence(losses, words, bad):
    told, lost = verdict(replace(CUT, losses=losses), TITLES, {"rope": "artery", "mat": "muscle"})
    assert words in told and lost is bad
