"""The bench measures what it says it measures."""

import json
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scripts.benching import gpu, growth
from tests.fakes import toy_model
from viewer.scene.drawn import draw_parts
from viewer.scene.drawn_cache import packed, shaded, unpacked

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture
def shaded_toy():
    return shaded(draw_parts(toy_model().parts.values()))


@pytest.fixture
def packed_toy(tmp_path, monkeypatch, shaded_toy):
    monkeypatch.setattr("meshes.cache.load_or_build", lambda body, detail: toy_model())
    # Shaded once: rays that graze an edge may fall either way in a second run.
    monkeypatch.setattr("viewer.scene.drawn_cache.drawn_model", lambda model: shaded_toy)
    path = tmp_path / "toy.npz"
    gpu.pack(path, None, "full")
    return path


def test_pack_brings_back_the_same_parts_and_shells(packed_toy, shaded_toy):
    drawn = {d.part.id: d for d in shaded_toy}
    again = gpu.unpack(packed_toy)
    assert {d.part.id for d in again} == set(drawn)
    for theirs in again:
        mine = drawn[theirs.part.id]
        assert theirs.part.stratum == mine.part.stratum and theirs.part.group == mine.part.group
        for detail in ("still", "moving"):
            for name in ("points", "faces", "normals", "surface"):
                a, b = (getattr(getattr(d, detail), name) for d in (mine, theirs))
                assert np.array_equal(a, b), (theirs.part.id, detail, name)


def test_arrays_of_another_number_of_parts_are_refused():
    drawn = draw_parts(toy_model().parts.values())
    with pytest.raises(ValueError):
        unpacked(packed(drawn), [d.part for d in drawn[1:]])


def test_machine_with_the_card_needs_no_solver_and_no_window_library(packed_toy):
    code = (
        "import sys; from scripts.bench import main\n"
        f"main(['gpu', '--pack', {str(packed_toy)!r}, '--size', '64x48', '--frames', '1', '--json'])\n"
        "heavy = {'scipy', 'numba', 'trimesh', 'PySide6', 'shapely', 'pyvista', 'embreex'}\n"
        "print(sorted(heavy & set(sys.modules)), file=sys.stderr)"
    )
    told = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, timeout=300
    )
    assert told.returncode == 0, told.stderr
    assert told.stderr.splitlines()[-1] == "[]"
    answer = json.loads(told.stdout)
    assert answer["renderer"] and answer["size"] == [64, 48]
    assert {w["look"] for w in answer["ways"]} == set(gpu.LOOKS)
    assert all(w["fps"] > 0 and w["triangles"] > 0 for w in answer["ways"])


@pytest.mark.parametrize("wrong", ["1280", "0x800", "axb", "1280x"])
def test_size_that_is_none_is_refused(wrong, capsys):
    from scripts.bench import main

    with pytest.raises(SystemExit) as stop:
        main(["gpu", "--size", wrong])
    assert stop.value.code == 2
    assert "WIDTHxHEIGHT" in capsys.readouterr().err


def test_row_tells_how_many_times_ahead_ours_is():
    from scripts.benching.table import Row

    assert Row("orbit", "ms", 20.0, 400.0).ratio == 20.0
    assert Row("start", "s", 1.5, None, 2.0).ratio is None
    line = Row("orbit", "ms", 20.0, 400.0, 33.3, "note").line()
    assert line.split() == ["orbit", "ms", "20", "400", "20x", "<=", "33.3", "note"]


@given(st.floats(-3, 3), st.floats(0.01, 100), st.lists(st.floats(1, 1e6), min_size=2, max_size=9))
def test_slope_of_a_power_law_is_its_exponent(exponent, factor, sizes):
    sizes = sorted({round(s, 3) for s in sizes})
    if len(sizes) < 2 or sizes[-1] < 1.5 * sizes[0]:
        return
    found = growth.log_slope([(s, factor * s**exponent) for s in sizes])
    assert found == pytest.approx(exponent, abs=1e-6)


@pytest.mark.parametrize("times", [1, 2])
def test_subdividing_keeps_surface_and_closedness_and_makes_four_of_each_triangle(times):
    import trimesh

    shell = draw_parts([toy_model().parts["scapula.left"]])[0].still
    fine = growth.subdivided(shell, times)
    assert len(fine.faces) == 4**times * len(shell.faces)
    before, after = (trimesh.Trimesh(s.points, s.faces, process=False) for s in (shell, fine))
    assert after.is_watertight and after.is_winding_consistent
    assert after.area == pytest.approx(before.area, rel=1e-5)
    assert after.volume == pytest.approx(before.volume, rel=1e-5)
    assert np.allclose(np.linalg.norm(fine.normals, axis=1), 1.0, atol=1e-5)
    assert np.array_equal(fine.surface[: len(shell.points)], shell.surface)


def test_growth_is_written_as_table_figures_and_plots(tmp_path):
    points = tuple(
        growth.Point(f"x{n}", 1e5 * n, {"still_ms": 30.0 * n, "memory_mib": 50.0 * n**0.5})
        for n in (1, 4, 16)
    )
    curve = growth.Curve("triangles", "made up", points)
    files = growth.write(tmp_path / "new" / "folder", [curve])
    assert all(f.exists() for f in files)
    (facts,) = json.loads((tmp_path / "new" / "folder" / "growth.json").read_text())
    assert facts["slopes"]["still_ms"] == pytest.approx(1.0)
    assert facts["slopes"]["memory_mib"] == pytest.approx(0.5)
    picture = ElementTree.parse(files[-1]).getroot()
    circles = picture.findall("{http://www.w3.org/2000/svg}circle")
    assert len(circles) == 6
    wide, high = float(picture.get("width")), float(picture.get("height"))
    for circle in circles:
        assert 0 < float(circle.get("cx")) < wide and 0 < float(circle.get("cy")) < high


LINEAR = 1.1
"""Slopes are measured on a machine that may have other work: a tenth is let pass."""


@pytest.mark.slow
@pytest.mark.parametrize("curve", ["by_detail", "by_parts"])
def test_nothing_grows_faster_than_linear(curve, preview_model):
    found = getattr(growth, curve)()
    assert found.points[-1].size > 10 * found.points[0].size
    for measure in growth.MEASURES:
        slope = found.slope(measure)
        assert slope is None or slope <= LINEAR, (measure, growth.table([found]))
