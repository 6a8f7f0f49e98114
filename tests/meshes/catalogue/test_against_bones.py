"""Catalogue and bones speak of the same parts and the same landmarks."""

from __future__ import annotations

from importlib import import_module
from importlib.util import find_spec

import pytest

from meshes.body import Body
from meshes.build import _BONES
from meshes.catalogue import load_catalogue
from meshes.skeleton.frame import make_frame

CATALOGUE = load_catalogue()


@pytest.fixture(scope="module")
def pieces() -> list:
    """Every bone of the left half and the midline, at preview detail."""
    frame = make_frame(Body())
    modules = [name for name, *_ in _BONES if find_spec(name)]
    assert len(modules) >= 4
    return [p for name in modules for p in import_module(name).make(frame, "preview")]


def test_every_bone_has_its_row_and_agrees_with_it(pieces: list) -> None:
    for piece in pieces:
        part = piece.part
        row = CATALOGUE.entry_of_part(part.id)
        assert part.entry == row.id
        assert (part.kind, part.stratum) == (row.kind, row.stratum), part.id
        assert row.level_of(part.name) in ("", part.level)


def test_bones_carry_every_landmark_that_the_catalogue_names(pieces: list) -> None:
    built = {piece.part.id for piece in pieces}
    carried = {name for piece in pieces for name in piece.landmarks}
    for name, landmark in CATALOGUE.landmarks.items():
        if ".right" in name:
            continue
        on = landmark.on.replace("{side}", "left")
        if on in built or "{level}" in on:
            assert name in carried


def test_landmark_forms_are_points_and_curves_as_named(pieces: list) -> None:
    for piece in pieces:
        for name, place in piece.landmarks.items():
            if name in CATALOGUE.landmarks:
                form = CATALOGUE.landmarks[name].form
                assert place.ndim == (1 if form in ("point", "free") else 2), (name, form)
