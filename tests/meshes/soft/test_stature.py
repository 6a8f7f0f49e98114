"""A body is laid at the median stature and then gets its own: lengths, ends and contacts alike."""

import numpy as np
import pytest
import trimesh
from hypothesis import given
from hypothesis import strategies as st

from meshes.body import RANGES, Body, at_median_stature
from meshes.model import Attachment, Contact, Part
from meshes.skeleton.frame import LEVELS, make_frame
from meshes.skeleton.skull import head_scale
from meshes.soft.stature import bring_to_stature, scaled
from meshes.soft.workbench import Workbench


def _muscle() -> Part:
    mesh = trimesh.creation.box((10.0, 4.0, 80.0))
    return Part(
        "muscle.left", "muscle", "muscle", 3, "", mesh,
        fibres=np.array([[[0.0, 0.0, -40.0], [0.0, 0.0, 40.0]]]),
        attachments=(Attachment("origin", "bone", np.array([[0.0, 0.0, -40.0]])),),
    )  # fmt: skip


def _bench(body: Body) -> Workbench:
    bench = Workbench(at_median_stature(body), "preview", None, None, None)
    part = _muscle()
    # The declared place and the recorded end are one line, as the builders leave it.
    place = Contact(part.id, "bone", "attach", part.attachments[0].curve)
    bench.add(part, [place], solid=False)
    bench.landmarks["bone.tip"] = np.array([1.0, 2.0, 3.0])
    return bench


def test_the_median_man_is_left_as_he_was_laid():
    bench = _bench(Body())
    part = bench.parts["muscle.left"]
    bring_to_stature(bench)
    assert bench.parts["muscle.left"] is part
    assert at_median_stature(Body()).as_dict() == {**Body().as_dict(), "factor": 1.0}


def test_meshes_fibres_ends_contacts_and_landmarks_grow_together():
    body = Body(stature_mm=2000.0)
    bench = _bench(body)
    bring_to_stature(bench)
    part, factor = bench.parts["muscle.left"], 2000.0 / 1756.0
    assert part.mesh.extents == pytest.approx([10.0 * factor, 4.0 * factor, 80.0 * factor])
    assert part.fibres[0, 1, 2] == pytest.approx(40.0 * factor)
    assert part.attachments[0].curve is bench.contacts[0].place
    assert bench.contacts[0].place[0, 2] == pytest.approx(-40.0 * factor)
    assert bench.landmarks["bone.tip"] == pytest.approx(factor * np.array([1.0, 2.0, 3.0]))
    assert bench.index("muscle.left").bounds[1, 2] == pytest.approx(40.0 * factor)


@given(st.sampled_from(("male", "female")), st.floats(*RANGES["stature_mm"]), st.floats(0, 1))
def test_laid_and_brought_to_stature_the_column_is_the_bodys_own(sex, stature, share):
    low, high = RANGES["thoracic_kyphosis_deg"]
    body = Body(
        sex=sex, stature_mm=stature, thoracic_kyphosis_deg=low + share * (high - low),
        fat_lower_mm=40.0, scapular_protraction_mm=20.0,
    )  # fmt: skip
    laid = at_median_stature(body)
    own, brought = make_frame(body), make_frame(laid)
    for level in LEVELS:
        assert laid.factor * brought[level].centre == pytest.approx(own[level].centre, abs=1e-6)
        assert laid.factor * brought[level].width == pytest.approx(own[level].width)
    assert laid.factor * head_scale(brought) == pytest.approx(head_scale(own))
    for name in RANGES:
        grown = laid.factor if name.endswith("_mm") else 1.0
        assert getattr(laid, name) * grown == pytest.approx(getattr(body, name))


def test_scaled_parts_keep_triangles_and_names():
    part = _muscle()
    (grown,) = scaled([part], 0.8)
    assert grown.id == part.id
    assert np.array_equal(grown.mesh.faces, part.mesh.faces)
    assert grown.mesh.volume == pytest.approx(0.8**3 * part.mesh.volume)
