"""Nerves and vessels on paper, read without colour."""

import numpy as np
import pytest

from viewer.print.ink import grey, inked

FLESH = {"flesh": (178, 118, 106), "tendon": (232, 226, 216), "dark furrow": (96, 52, 46)}
LEAST_CONTRAST = 3.0
"""Luminance contrast of graphics against what is beside them (WCAG 2.2, 1.4.11; from memory)."""


def _contrast(a: float, b: float) -> float:
    """Ratio of relative luminances of two greys, 0..255 (sRGB, gamma taken as 2.2)."""
    high, low = sorted(((a / 255) ** 2.2, (b / 255) ** 2.2), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.fixture(params=FLESH.values(), ids=FLESH.keys())
def ground(request):
    return np.full((30, 40, 3), request.param, np.uint8)


def _hair(row: int) -> np.ndarray:
    mask = np.zeros((30, 40), bool)
    mask[row, 4:36] = True
    return mask


def test_a_nerve_of_one_dot_can_be_seen_in_grey_on_every_ground(ground):
    tone = grey(inked(ground, _hair(10), np.zeros((30, 40), bool)))[:, 20]
    assert tone[9:12].min() > 190
    for edge in (tone[8], tone[12]):
        assert _contrast(tone[10], edge) > LEAST_CONTRAST
    assert (tone[:8] == grey(ground)[0, 0]).all()


def test_a_vessel_of_one_dot_can_be_seen_in_grey_on_every_ground(ground):
    tone = grey(inked(ground, np.zeros((30, 40), bool), _hair(10)))[:, 20]
    assert tone[9:12].max() < 60
    for edge in (tone[8], tone[12]):
        assert _contrast(tone[10], edge) > LEAST_CONTRAST


def test_nerve_and_vessel_are_told_apart_without_colour(ground):
    tone = grey(inked(ground, _hair(8), _hair(20)))[:, 20]
    assert _contrast(tone[8], tone[20]) > 2 * LEAST_CONTRAST


def test_artery_and_vein_keep_their_colours(ground):
    ground[:15] = (176, 34, 36)
    ground[15:] = (58, 80, 150)
    made = inked(ground, np.zeros((30, 40), bool), _hair(8) | _hair(22)).astype(int)
    assert made[8, 20, 0] > made[8, 20, 2] + 40
    assert made[22, 20, 2] > made[22, 20, 0] + 40


def test_a_picture_without_tubes_is_left_as_it_is(ground):
    none = np.zeros((30, 40), bool)
    assert (inked(ground, none, none) == ground).all()
