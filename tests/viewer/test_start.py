"""The start brings in nothing that the first picture does not need."""

import subprocess
import sys

HEAVY = ("numba", "trimesh", "scipy", "shapely", "reportlab", "embreex", "pyvista", "matplotlib")

_START = f"""
import sys
import viewer.app, viewer.building, viewer.window, viewer.scene.widget, viewer.scene.drawn_cache
print(" ".join(name for name in {HEAVY!r} if name in sys.modules))
"""


def test_window_and_picture_need_no_solver_no_mesh_library_and_no_typesetter():
    told = subprocess.run(
        [sys.executable, "-c", _START], capture_output=True, text=True, check=True, timeout=120
    )
    assert told.stdout.split() == []


def test_milestones_are_told_only_when_asked_for(capsys, monkeypatch):
    from viewer.milestones import VARIABLE, reached

    monkeypatch.delenv(VARIABLE, raising=False)
    reached("window")
    assert capsys.readouterr().err == ""
    monkeypatch.setenv(VARIABLE, "1")
    reached("window")
    name, clock, spent = capsys.readouterr().err.removeprefix("milestone ").split()
    assert name == "window" and float(clock) > 1e9 and float(spent) > 0


def test_giving_memory_back_harms_nothing():
    import numpy as np

    from viewer.memory import give_back

    kept = np.arange(1_000_000)
    assert give_back() in (True, False)
    assert kept.sum() == 499_999_500_000
