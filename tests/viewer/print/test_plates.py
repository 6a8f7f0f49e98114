import numpy as np
import pytest
from PIL import Image

from tests.fakes import toy_model
from viewer.print import plates

SIZE = (420, 520)


@pytest.fixture(scope="module")
def scene():
    scene = plates.plate_scene(toy_model())
    yield scene
    scene.finalize()


def test_each_deeper_plate_shows_something_else(scene):
    model = toy_model()
    before = None
    for stratum in range(10):
        picture = plates.plate(model, stratum, size=SIZE, labels=False, scene=scene)
        body = picture[40:-80]
        if before is not None:
            assert (np.abs(body.astype(int) - before).max(axis=2) > 24).sum() > 150, stratum
        before = body.astype(int)


def test_plate_is_written_at_the_size_asked_for(scene, tmp_path):
    out = tmp_path / "plate.png"
    plates.plate(toy_model(), 3, "oblique_left", (300, 400), out, scene=scene)
    assert Image.open(out).size == (300, 400)


def test_one_side_alone_can_be_peeled(scene):
    model = toy_model()
    both = plates.plate(model, 5, size=SIZE, labels=False, scene=scene)[40:-80].astype(int)
    left = plates.plate(model, 5, size=SIZE, labels=False, scene=scene, side="left")
    left = left[40:-80].astype(int)
    changed = np.abs(both - left).max(axis=2) > 24
    half = SIZE[0] // 2
    # The whole half is larger, so that the picture is framed anew: only the amount can tell.
    assert changed[:, half + 10 :].sum() > 3 * changed[:, : half - 10].sum() > 0


def test_stratum_beyond_the_last_is_refused():
    with pytest.raises(ValueError, match=r"0\.\.10, got 11"):
        plates.plate_state(11)
