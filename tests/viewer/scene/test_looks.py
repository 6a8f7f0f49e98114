"""Colours seen through the eyes of colour-blind viewers, simulated by a published method."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest

from viewer.scene.looks import _PALETTES, COVERING, HIGHLIGHT

# Machado GM, Oliveira MM, Fernandes LAF, IEEE Trans Vis Comput Graph 2009;15:1291-1298:
# matrices of full severity, applied to linear sRGB (figures seen in several open programs that
# cite the paper; the paper itself was not read).
EYES = {
    "three cones": np.eye(3),
    "no red cones": np.array(
        [
            [0.152286, 1.052583, -0.204868],
            [0.114503, 0.786281, 0.099216],
            [-0.003882, -0.048116, 1.051998],
        ]
    ),
    "no green cones": np.array(
        [
            [0.367322, 0.860646, -0.227968],
            [0.280085, 0.672501, 0.047413],
            [-0.011820, 0.042940, 0.968881],
        ]
    ),
    "no blue cones": np.array(
        [
            [1.255528, -0.076749, -0.178779],
            [-0.078411, 0.930809, 0.147602],
            [0.004733, 0.691367, 0.303900],
        ]
    ),
}
# IEC 61966-2-1 (sRGB) and CIE 15: linear light to XYZ under D65, XYZ to L*a*b*.
TO_XYZ = np.array(
    [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]
) / np.array([[0.95047], [1.0], [1.08883]])


def lab(colour, eye) -> np.ndarray:
    share = np.asarray(colour, float) / 255
    light = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    xyz = TO_XYZ @ np.clip(EYES[eye] @ light, 0, 1)
    f = np.where(xyz > 0.008856, np.cbrt(xyz), 7.787 * xyz + 16 / 116)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def apart(first, second, eye) -> float:
    """Distance of two colours in CIELAB (CIE 1976)."""
    return float(np.linalg.norm(lab(first, eye) - lab(second, eye)))


# A tendon runs out into bone and fascia: told by its place; discs are cartilage.
MAY_BE_ALIKE = ({"tendon", "bone"}, {"tendon", "fascia"}, {"cartilage", "disc"})


def test_black_and_white_are_a_hundred_apart_for_every_eye():
    for eye in EYES:
        assert apart((0, 0, 0), (255, 255, 255), eye) == pytest.approx(100, abs=0.2)


@pytest.mark.parametrize("eye", EYES)
def test_every_two_kinds_stay_apart_in_the_look_for_projectors(eye):
    palette = _PALETTES["high_contrast"]
    close = {
        (a, b): round(apart(palette[a], palette[b], eye), 1)
        for a, b in combinations(palette, 2)
        if {a, b} not in MAY_BE_ALIKE and apart(palette[a], palette[b], eye) < 14
    }
    assert close == {}


@pytest.mark.parametrize("eye", EYES)
def test_what_must_not_be_mistaken_stays_apart_in_the_usual_look(eye):
    palette = _PALETTES["by_kind"]
    kinds = ("bone", "muscle_outer", "fat", "nerve", "artery", "vein")
    close = {
        (a, b): round(apart(palette[a], palette[b], eye), 1)
        for a, b in combinations(kinds, 2)
        if apart(palette[a], palette[b], eye) < 7
    }
    assert close == {}


@pytest.mark.parametrize("eye", EYES)
def test_what_is_picked_and_what_covers_it_are_told_apart_by_every_eye(eye):
    assert apart(HIGHLIGHT, COVERING, eye) > 40


def test_the_look_for_projectors_has_pale_bone_and_fascia_on_dark_flesh():
    palette = _PALETTES["high_contrast"]
    for pale in ("bone", "fascia", "tendon", "nerve"):
        for dark in ("muscle_outer", "muscle_deep", "artery", "vein"):
            light, deep = lab(palette[pale], "three cones")[0], lab(palette[dark], "three cones")[0]
            assert light - deep > 24, (pale, dark)
