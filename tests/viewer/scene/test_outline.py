"""The rim of what is picked goes round it and never over it, moving or at rest."""

import numpy as np
import pytest

from viewer.scene.outline import OUTLINE_COLOUR
from viewer.scene.scene import PartLook, Scene
from viewer.state.visibility import is_film

SHEETS = ("latissimus_dorsi", "trapezius")


@pytest.fixture(scope="module")
def scene(preview_model):
    scene = Scene(size=(640, 480))
    scene.set_model(preview_model)
    scene.set_labels(False, 0.5, False, {})
    yield scene
    scene.finalize()


def rim_pixels(scene, moving):
    scene.render(moving=moving)
    picture = np.asarray(scene.grab()).astype(int)
    colour = 255 * np.array(OUTLINE_COLOUR)
    return int((np.abs(picture - colour).max(axis=2) < 6).sum())


@pytest.mark.parametrize("sheet", SHEETS)
def test_a_thin_sheet_is_not_covered_by_its_own_rim_while_it_moves(scene, preview_model, sheet):
    lit = {i for i in preview_model.parts if i.startswith(sheet)}
    scene.apply(
        {
            p.id: PartLook(highlighted=p.id in lit)
            for p in preview_model.parts.values()
            if p.stratum >= 2 and not is_film(p)
        }
    )
    scene.set_view("posterior")
    at_rest = rim_pixels(scene, moving=False)
    assert at_rest > 100
    assert 0.5 * at_rest < rim_pixels(scene, moving=True) < 2.5 * at_rest
