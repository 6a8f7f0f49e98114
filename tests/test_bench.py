"""The bench measures what it says it measures."""

import json
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from scripts.benching import gpu
from tests.fakes import toy_model
from viewer.scene.drawn import draw_parts
from viewer.scene.drawn_cache import packed, shaded, unpacked

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture
def packed_toy(tmp_path, monkeypatch):
    monkeypatch.setattr("meshes.cache.load_or_build", lambda body, detail: toy_model())
    path = tmp_path / "toy.npz"
    gpu.pack(path, None, "full")
    return path


def test_pack_brings_back_the_same_parts_and_shells(packed_toy):
    drawn = {d.part.id: d for d in shaded(draw_parts(toy_model().parts.values()))}
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
    assert {w["look"] for w in answer["ways"]} == {"full", "moving"}
    assert all(w["fps"] > 0 and w["triangles"] > 0 for w in answer["ways"])


@pytest.mark.parametrize("wrong", ["1280", "0x800", "axb", "1280x"])
def test_size_that_is_none_is_refused(wrong, capsys):
    from scripts.bench import main

    with pytest.raises(SystemExit) as stop:
        main(["gpu", "--size", wrong])
    assert stop.value.code == 2
    assert "WIDTHxHEIGHT" in capsys.readouterr().err
