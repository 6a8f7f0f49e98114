"""Surface patterns: no blots, whichever way the body is turned."""

import numpy as np
import pytest

from viewer.scene.scene import PartLook, Scene


@pytest.fixture(scope="module")
def fat(preview_model):
    scene = Scene(size=(1000, 1250))
    scene.set_model(preview_model)
    scene.apply({f"superficial_fascia.{side}": PartLook(1.0) for side in ("left", "right")})
    yield scene
    scene.finalize()


# From the side the armpit is dark.
@pytest.mark.parametrize(("view", "dark"), [("posterior", 0.003), ("lateral_right", 0.01)])
def test_lobules_of_fat_are_seen_and_make_no_blots(fat, view, dark):
    fat.set_view(view)
    picture = fat.screenshot(overlays=False).astype(float)
    grey = picture.mean(axis=2)
    body = picture[..., 0] - picture[..., 2] > 12.0
    assert body.mean() > 0.1
    # Well within the outline, where nothing turns away.
    inside = np.logical_and.reduce(
        [np.roll(body, (dy, dx), (0, 1)) for dy in (-25, 0, 25) for dx in (-25, 0, 25)]
    )
    assert (grey[inside] < 0.5 * np.median(grey[inside])).mean() < dark
    beside = 0.5 * (np.roll(grey, 3, 1) + np.roll(grey, -3, 1))
    assert np.abs(grey - beside)[inside].mean() > 1.0
