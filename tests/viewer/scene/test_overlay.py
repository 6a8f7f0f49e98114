"""What is written in the picture is written as it is spelled."""

import numpy as np
import pytest

from viewer.scene.overlay import canvas, draw_text, text_size, writable
from viewer.translations.texts import FOLDER, translations


def ink(text, anchor="la", at=(8, 8)):
    image, draw = canvas(300, 40, "light")
    draw_text(draw, at, text, 20, "light", anchor)
    return np.asarray(image)[:, :, 3] > 200


def test_every_letter_of_the_german_window_can_be_written():
    letters = {c for words in translations(FOLDER / "peelback_de.ts").values() for c in words}
    letters -= set("→←↑↓▲▼◀▶✓✗≈▾●○⚠⟲◐↶×\n\u200b")
    assert {"ä", "ö", "ü", "ß", "–", "„"} <= letters
    assert {c for c in letters if writable(c) != c} == set()


@pytest.mark.parametrize(
    "text, plain", [("Fuß", "Fuss"), ("Rückenmark", "Ruckenmark"), ("Łódź", "Lodz")]
)
def test_an_accent_is_drawn(text, plain):
    assert (ink(text) != ink(plain)).any()


def test_a_letter_that_no_font_has_is_spelled_plainly():
    assert writable("T1→T2") == "T1->T2"
    assert writable("\ufffe") == "?"


@pytest.mark.parametrize(
    "anchor, at",
    [("la", (8, 6)), ("ls", (8, 26)), ("mm", (150, 20))],
    ids=["top", "base", "middle"],
)
def test_a_line_keeps_to_its_height(anchor, at):
    rows = np.flatnonzero(ink("Äg Rhomboid", anchor, at).any(axis=1))
    # Halo and accents reach a little beyond it.
    assert rows[-1] - rows[0] + 1 <= text_size("Äg", 20)[1] + 6
    assert rows[0] > 0 and rows[-1] < 39


def test_text_hangs_from_its_top():
    rows = np.flatnonzero(ink("Hx").any(axis=1))
    assert rows[0] + 3 >= 8 and rows[-1] < 8 + text_size("Hx", 20)[1] + 2


@pytest.mark.parametrize("language", ["en", "de"])
def test_the_cross_ends_where_labels_are_told_that_it_does(language):
    from viewer.scene.camera import Pose, view_pose
    from viewer.scene.overlay import marker_picture, marker_top
    from viewer.state.languages import spoken_in

    with spoken_in(language):
        drawn = marker_picture(view_pose("posterior", Pose()), 14, "light")[:, :, 3] > 0
        top = drawn.shape[0] - np.flatnonzero(drawn.any(axis=1))[0]
        assert top - 2 <= marker_top(14) <= top + 14
