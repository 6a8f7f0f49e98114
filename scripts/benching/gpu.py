"""Orbiting in full look at 3840 by 2160, off screen, on whatever card the machine has.

The machine with the card needs no solver and no mesh library: ``pack`` puts what is drawn into
one file on any machine, and ``gpu`` draws that file with numpy, vtk, pillow and platformdirs
alone.
"""

from __future__ import annotations

import json
import os
import statistics
import sys
import time
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np

FACTS = ("id", "entry", "kind", "stratum", "group")
BAR_FPS = 120.0
LOOKS = {
    "full": {"moving": True, "full_look": True},
    "coarse": {"moving": True},
    "resting": {},
}
"""The ways of drawing and what ``Scene.render`` is told: full look while turning (what a fast
card gets), coarse shells while turning, and the resting picture again and again."""


def pack(path: Path, body: Any, detail: str) -> str:
    """Write the drawn arrays of a model into one file; returns a line about it."""
    from meshes.cache import load_or_build
    from viewer.scene.drawn_cache import drawn_model, packed

    model = load_or_build(body, detail)
    drawn = drawn_model(model)
    facts = [{name: getattr(d.part, name) for name in FACTS} for d in drawn]
    words = np.frombuffer(json.dumps(facts).encode(), np.uint8)
    with path.open("wb") as file:
        np.savez_compressed(file, parts=words, **packed(drawn))
    return f"{path}: {len(drawn)} parts, {path.stat().st_size / 1024**2:.1f} MiB"


def unpack(path: Path) -> list[Any]:
    """Return the drawn parts of a packed file."""
    from meshes.model import Part
    from viewer.scene.drawn_cache import unpacked

    with np.load(path) as file:
        arrays = {name: file[name] for name in file.files}
    facts = json.loads(bytes(arrays.pop("parts")))
    return unpacked(arrays, [Part(**row, mesh=None) for row in facts])


def measure(drawn: list[Any], size: tuple[int, int], frames: int) -> dict[str, Any]:
    """Turn the eye in equal steps and wait for each picture to be finished.

    Returns
    -------
    dict
        "renderer" and "version" of OpenGL, "triangles", and for each state and way of drawing
        the frames a second with their median and worst milliseconds.
    """
    from viewer.scene.scene import PartLook, Scene
    from viewer.state.view_state import Sides, ViewState
    from viewer.state.visibility import opacities

    model = SimpleNamespace(parts={d.part.id: d.part for d in drawn})
    scene = Scene(size=size)
    try:
        scene.add_parts(drawn)
        scene.render()
        answer: dict[str, Any] = {**opengl_of(scene.window), "size": size, "parts": len(drawn)}
        ways = []
        for words, peeled, see_through in (
            ("whole body", 0, ()),
            ("skin and fat off", 2, ()),
            ("down to the deep muscles", 6, ()),
            ("trapezius seen through", 2, ("trapezius",)),
        ):
            through = frozenset(i for i, p in model.parts.items() if p.group in see_through)
            state = ViewState(peeled=Sides(peeled, peeled), see_through=through)
            scene.apply({i: PartLook(o) for i, o in opacities(model, state).items()})
            scene.set_view("posterior")
            warm_up(scene)
            for look, how in LOOKS.items():
                taken = orbit(scene, how, frames)
                ways.append(
                    {
                        "state": words,
                        "look": look,
                        "triangles": scene.face_counts()["moving" if look == "coarse" else "still"],
                        "fps": 1000.0 / statistics.fmean(taken),
                        "median_ms": statistics.median(taken),
                        "worst_ms": max(taken),
                    }
                )
        answer["ways"] = ways
        return answer
    finally:
        scene.finalize()


def warm_up(scene: Any, seconds: float = 2.0) -> None:
    """Draw until an idle card has raised its clocks: it does so only under load."""
    began = time.perf_counter()
    while time.perf_counter() - began < seconds:
        orbit(scene, LOOKS["full"], 1)


def orbit(scene: Any, how: dict[str, bool], frames: int) -> list[float]:
    """Milliseconds of each frame of a turn; the first few, which upload, do not count."""
    taken = []
    for k in range(frames + 8):
        started = time.perf_counter()
        scene.orbit(0.7, 0.0)
        scene.render(**how)
        # Without this only the handing over of commands would be measured.
        scene.window.WaitForCompletion()
        if k >= 8:
            taken.append(1000.0 * (time.perf_counter() - started))
    return taken


def opengl_of(window: Any) -> dict[str, str]:
    """Return who draws: renderer, vendor and version of OpenGL."""
    found = {}
    for line in window.ReportCapabilities().splitlines():
        head, _, text = line.partition(":")
        for name in ("renderer", "vendor", "version"):
            if head.strip() == f"OpenGL {name} string":
                found[name] = text.strip()
    return found


def run(words: Any) -> int:
    """Measure as asked on the command line and print a table."""
    if words.egl:
        # VTK asks EGL for a picture without a screen only where no display is named.
        os.environ.pop("DISPLAY", None)
    if words.pack is not None:
        drawn = unpack(words.pack)
    else:
        from meshes.body import Body
        from meshes.cache import load_or_build
        from viewer.scene.drawn_cache import drawn_model

        drawn = drawn_model(load_or_build(Body(), words.detail))
    told = measure(drawn, words.size, words.frames)
    if words.json:
        print(json.dumps(told, indent=1))
        return 0
    width, height = told["size"]
    print(f"{told.get('renderer', 'unknown renderer')}, OpenGL {told.get('version', '?')}")
    print(f"{width} by {height}, {told['parts']} parts, {words.frames} frames each")
    print(f"{'state':28} {'look':7} {'triangles':>10} {'fps':>8} {'median ms':>10} {'worst ms':>9}")
    for way in told["ways"]:
        print(
            f"{way['state']:28} {way['look']:7} {way['triangles']:>10,} {way['fps']:>8.1f}"
            f" {way['median_ms']:>10.2f} {way['worst_ms']:>9.2f}"
        )
    least = min(way["fps"] for way in told["ways"] if way["look"] == "full")
    print(f"least in full look: {least:.1f} frames a second (bar on a GPU: {BAR_FPS:g})")
    if "llvmpipe" in told.get("renderer", "") or "softpipe" in told.get("renderer", ""):
        print("This is a software renderer, no card.", file=sys.stderr)
    return 0
