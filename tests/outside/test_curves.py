"""Cobb angles read off the finished vertebrae follow the parameters of the body."""

from types import SimpleNamespace

import pytest

from meshes.body import Body
from meshes.model import mirror_points, other_side, side_of
from meshes.questions.measures import (
    Measured,
    cervical_lordosis,
    lumbar_lordosis,
    sacral_slope,
    thoracic_kyphosis,
)
from meshes.skeleton import spine
from meshes.skeleton.frame import make_frame


def _spine_of(body: Body) -> Measured:
    pieces = spine.make(make_frame(body), "preview")
    landmarks = {name: place for piece in pieces for name, place in piece.landmarks.items()}
    for name in [name for name in landmarks if side_of(name) == "left"]:
        landmarks[other_side(name)] = mirror_points(landmarks[name])
    parts = {piece.part.id: piece.part for piece in pieces}
    return Measured(SimpleNamespace(parts=parts, landmarks=landmarks))


@pytest.mark.parametrize(
    "body",
    [
        Body(),
        Body(thoracic_kyphosis_deg=25, lumbar_lordosis_deg=45, sacral_slope_deg=30),
        Body(sex="female", thoracic_kyphosis_deg=55, cervical_lordosis_deg=30),
        Body(stature_mm=1950, lumbar_lordosis_deg=75, sacral_slope_deg=52, cervical_lordosis_deg=5),
    ],
    ids=["default", "flat", "round", "hollow"],
)
def test_measured_angles_are_those_asked_for(body):
    measured = _spine_of(body)
    assert sacral_slope(measured, "") == pytest.approx(body.sacral_slope_deg, abs=3)
    assert lumbar_lordosis(measured, "") == pytest.approx(body.lumbar_lordosis_deg, abs=5)
    assert thoracic_kyphosis(measured, "") == pytest.approx(body.thoracic_kyphosis_deg, abs=5)
    assert cervical_lordosis(measured, "") == pytest.approx(body.cervical_lordosis_deg, abs=5)
