"""The table of common mistakes: complete, checked on loading, fit for the plan."""

from importlib.resources import files

import pytest

from meshes.catalogue import load_catalogue
from meshes.catalogue.mistakes import load_mistakes, mistakes_of, read_mistakes
from meshes.catalogue.plan import load_plan, part_ids_of, removed_by
from meshes.errors import PeelbackError
from viewer.state.view_state import VIEWS


def test_ten_mistakes_each_say_how_to_tell_and_what_to_save():
    mistakes = load_mistakes()
    assert len(mistakes) == 10
    for mistake in mistakes:
        for text in (mistake.looks, mistake.tell, mistake.cause, mistake.avoid, mistake.save):
            assert len(text) > 10 and text.endswith("."), mistake.id
        assert mistake.view in VIEWS
        cited = [c.text for _, found in mistake.sources for c in found]
        assert cited and all("no source" in text for text in cited)


def test_a_mistake_takes_only_what_is_still_there_in_its_step():
    catalogue, plan = load_catalogue(), load_plan()
    for mistake in load_mistakes():
        gone = {i for s in plan.before(mistake.step) for i in removed_by(s, "both", catalogue)}
        for name in mistake.gone:
            assert not gone.intersection(part_ids_of(name, catalogue)), (mistake.id, name)


def test_mistakes_are_found_by_their_step():
    assert "rhomboids_with_trapezius" in {m.id for m in mistakes_of("trapezius")}
    assert mistakes_of("canal") == ()


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('step = "rhomboids"', 'step = "rhomboid"', "unknown step 'rhomboid'"),
        (
            'gone = ["greater_occipital_nerve"]',
            'gone = ["great_nerve"]',
            "row or part 'great_nerve'",
        ),
        ('view = "posterior"', 'view = "behind"', "view must be one of posterior"),
        ("tell = ", "telling = ", "unknown field 'telling', did you mean 'tell'"),
        ('id = "wrong_level"', 'id = "skin_with_fascia"', "is a mistake already"),
    ],
)
def test_a_broken_table_is_refused_in_one_line(tmp_path, old, new, words):
    text = files("meshes.catalogue").joinpath("mistakes.toml").read_text(encoding="utf-8")
    assert old in text
    (tmp_path / "mistakes.toml").write_text(text.replace(old, new), encoding="utf-8")
    with pytest.raises(PeelbackError, match=words) as refusal:
        read_mistakes(tmp_path, load_catalogue(), load_plan())
    assert "\n" not in str(refusal.value)
