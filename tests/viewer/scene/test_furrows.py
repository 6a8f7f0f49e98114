"""Furrow shade: grooves darken, thin sheets do not darken themselves."""

from dataclasses import replace

import numpy as np
import trimesh

from tests.fakes import toy_model
from viewer.scene.drawn import draw_part, draw_parts, within_budget
from viewer.scene.furrows import openness


def _as_muscle(mesh, name="sheet"):
    part = next(p for p in toy_model().parts.values() if p.kind == "muscle")
    return draw_part(replace(part, id=name, mesh=mesh, fibres=None, uv=None, tendon=None))


def _sheet(thick, at=(0, 0, 0)):
    sheet = trimesh.creation.box((120.0, thick, 120.0)).apply_translation(at)
    for _ in range(4):
        sheet = sheet.subdivide()
    return sheet


def test_a_thin_sheet_does_not_darken_itself():
    drawn = _as_muscle(_sheet(0.6))
    assert np.median(openness([drawn])["sheet"]) > 0.9


def test_the_floor_of_a_groove_is_darker_than_the_open():
    floor = _as_muscle(_sheet(6.0), "floor")
    wall = trimesh.creation.box((40.0, 30.0, 120.0))
    walls = [
        _as_muscle(wall.copy().apply_translation((x, 15.0, 0)), f"wall{x}") for x in (-30.0, 30.0)
    ]
    shade = openness([floor, *walls])["floor"]
    top = floor.moving.normals[:, 1] > 0.5
    middle = top & (np.abs(floor.moving.points[:, 0]) < 8)
    assert shade[middle].mean() < 0.9


def test_an_inner_shell_that_comes_through_a_sheet_does_not_darken_it():
    sheet = _as_muscle(_sheet(2.0), "sheet")
    inner = trimesh.creation.box((80.0, 12.0, 80.0)).apply_translation((0, -2.0, 0))
    shade = openness([sheet, _as_muscle(inner, "inner")])["sheet"]
    points, normals = sheet.moving.points, sheet.moving.normals
    covered = (normals[:, 1] > 0.5) & (np.abs(points[:, [0, 2]]) < 36.0).all(axis=1)
    assert covered.any()
    assert shade[covered].mean() > 0.9


def test_the_right_is_as_dark_as_the_left_so_that_no_seam_shows_between_them(preview_model):
    names = [
        f"{name}.{side}"
        for name in ("skin", "superficial_fascia", "trapezius_transverse", "trapezius_descending")
        for side in ("left", "right")
    ]
    drawn = within_budget(draw_parts(preview_model.parts[name] for name in names), 4000)
    found = openness(drawn)
    for left, right in zip(names[::2], names[1::2], strict=True):
        assert found[left].min() < 0.9
        assert np.abs(found[left] - found[right]).max() < 0.1
        assert np.abs(found[left] - found[right]).mean() < 0.005
