"""Measures starting, drawing, asking and building, and prints one table.

Each line has ours, the plain way in the same run on the same model where there is one (a
plotter with one actor a part, a clip part by part, rays part by part) and how many times ahead
ours is. ``bench draw`` and the like print more about one topic, ``--scale FOLDER`` how things
grow, ``bench gpu`` what a graphics card does (see ``bench gpu --help``). Building is measured in
a process of its own with compiled kernels at hand and no cached model; ``build --compile`` also
measures a first build with no compiled kernels.
"""

from __future__ import annotations

import argparse
import json
import os
import platform
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

_ROOT = Path(__file__).resolve().parent.parent
if str(_ROOT) not in sys.path:
    # From a checkout that is not installed, as on a borrowed machine with a GPU.
    sys.path.insert(0, str(_ROOT))

from scripts.benching.timing import times  # noqa: E402

GOAL = 10.0
"""Every row is to be so many times ahead of the plain way."""

_BUILD = """
import json, resource, sys, time
started = time.perf_counter()
from meshes.body import Body
from meshes.build import build
seen = {}
model = build(Body(), sys.argv[1], lambda s, what, p: seen.update({what: time.perf_counter()}))
print(json.dumps({
    "seconds": time.perf_counter() - started,
    "bones": seen["bones"] - started,
    "processor": time.process_time(),
    "parts": len(model.parts),
    "triangles": sum(len(p.mesh.faces) for p in model.parts.values()),
    "peak_gib": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024**2,
}))
"""


def build_time(detail: str, kernels: str | None = None) -> dict[str, Any]:
    """Build in a fresh process; ``kernels`` names another folder for compiled kernels."""
    environment = dict(os.environ)
    if kernels is not None:
        environment["NUMBA_CACHE_DIR"] = kernels
    told = subprocess.run(
        [sys.executable, "-c", _BUILD, detail],
        env=environment, capture_output=True, text=True, check=True,
    )  # fmt: skip
    return json.loads(told.stdout)


def building(detail: str, compile_too: bool) -> Iterator[tuple[str, Any]]:
    """Cold builds."""
    if compile_too:
        with tempfile.TemporaryDirectory() as folder:
            yield (
                "first build ever, kernels compiled on the way, s",
                build_time(detail, folder)["seconds"],
            )
    build_time("preview")  # brings the kernels in
    told = build_time(detail)
    yield f"cold build, {detail}, s", told["seconds"]
    yield "bones ready, s", told["bones"]
    yield "parts", told["parts"]
    yield "triangles", told["triangles"]
    yield "peak memory, GiB", told["peak_gib"]


def loading(body: Any, detail: str) -> Iterator[tuple[str, Any]]:
    """Warm load from the model cache."""
    from meshes import cache

    cache.load_or_build(body, detail)
    yield (
        "warm load of the model, ms",
        statistics.median(times(lambda: cache.load_cached(body, detail), 3)),
    )


def probing(model: Any) -> Iterator[tuple[str, Any]]:
    """One ray, against asking every part in turn."""
    import numpy as np
    import vtk

    from meshes.questions.probe import Probe

    started = time.perf_counter()
    probe = Probe(model)
    yield "probe: getting ready, s", time.perf_counter() - started
    start, direction = np.array([40.0, 300.0, 280.0]), np.array([0.0, -1.0, 0.0])
    ours = statistics.median(times(lambda: probe.along(start, direction), 50))
    locators = []
    for part in model.parts.values():
        locator = vtk.vtkStaticCellLocator()
        locator.SetDataSet(_poly(part.mesh))
        locator.BuildLocator()
        locators.append(locator)

    def plain() -> None:
        for locator in locators:
            locator.IntersectWithLine(start, start + 600 * direction, 1e-6, vtk.vtkPoints(), None)

    theirs = statistics.median(times(plain, 20))
    yield "probe: one ray, ms", ours
    yield "probe: one ray part by part, ms", theirs
    yield "probe: times faster", theirs / ours
    near = [p.mesh for p in model.parts.values() if _box_is_met(p.mesh.bounds, start, direction)]

    def plainer() -> None:
        for mesh in near:
            mesh.ray.intersects_location([start], [direction], multiple_hits=True)

    theirs = statistics.median(times(plainer, 5))
    yield "probe: one ray with trimesh, only parts whose box it meets, ms", theirs
    yield "probe: times faster than that", theirs / ours


def covering(model: Any) -> Iterator[tuple[str, Any]]:
    """Everything over everything, against asking every part with trimesh's own rays."""
    from meshes.questions.cover import cast_layers, layers_of
    from meshes.questions.expose import expose

    cast_layers(model, 20.0)  # brings the kernels in
    started = time.perf_counter()
    layers = cast_layers(model)
    ours = time.perf_counter() - started
    yield "cover: rays", len(layers.rays.origins)
    yield "cover: casting all, s", ours
    layers_of(model)
    yield (
        "cover: all layers from the cache, ms",
        statistics.median(times(lambda: layers_of(model), 3)),
    )
    yield "cover: graph of one state, ms", statistics.median(times(layers.graph, 5))
    target = "rhomboid_major.left"
    yield "cover: one part, ms", statistics.median(times(lambda: layers.covers(target), 10))
    yield (
        "expose: one part, ms",
        statistics.median(times(lambda: expose(model, layers, target), 5)),
    )
    every = 100
    origins, directions = layers.rays.origins[::every], layers.rays.directions[::every]
    for part in model.parts.values():
        part.mesh.ray.intersects_location(origins[:2], directions[:2])
    started = time.perf_counter()
    for part in model.parts.values():
        part.mesh.ray.intersects_location(origins, directions, multiple_hits=True)
    theirs = every * (time.perf_counter() - started)
    yield (
        f"cover: trimesh part by part, s (from every {every}th ray, getting ready left out)",
        theirs,
    )
    yield "cover: times faster", theirs / ours


def _box_is_met(bounds: Any, start: Any, direction: Any) -> bool:
    """Tell whether a ray along one axis meets a box."""
    import numpy as np

    across = np.asarray(direction) == 0
    return bool(np.all((bounds[0] <= start) & (start <= bounds[1]) | ~across))


def cutting(model: Any) -> Iterator[tuple[str, Any]]:
    """Flat cuts of the whole model, dragged and at rest, against clipping every part."""
    import numpy as np
    import pyvista

    from meshes.questions.section import Slicer, placed_plane
    from viewer.scene.scene import PartLook, Scene

    started = time.perf_counter()
    slicer = Slicer(model)
    yield "section: getting ready, s", time.perf_counter() - started
    surfaces = [pyvista.wrap(_poly(part.mesh)) for part in model.parts.values()]
    dragged, rested, plain = [], [], []
    for kind, position, tilt in (
        ("transverse", 100.0, (0, 0)),
        ("transverse", 300.0, (0, 0)),
        ("sagittal", 20.0, (0, 0)),
        ("coronal", 60.0, (0, 0)),
        ("free", 250.0, (30, 15)),
    ):
        plane = placed_plane(kind, position, tilt)

        def face(plane=plane) -> None:
            slicer.outlines(plane).fill()

        def clipped(plane=plane) -> None:
            for surface in surfaces:
                box = np.reshape(surface.bounds, (3, 2)).T
                middle = (box.mean(axis=0) - plane.origin) @ plane.normal
                if abs(middle) < (box[1] - box[0]) / 2 @ np.abs(plane.normal):
                    surface.clip_closed_surface(tuple(plane.normal), origin=tuple(plane.origin))

        dragged.append(statistics.median(times(face, 9)))
        rested.append(statistics.median(times(lambda p=plane: slicer.cut(p), 5)))
        plain.append(statistics.median(times(clipped, 1)))
        where = kind if kind != "transverse" else f"transverse at {position:.0f} mm"
        yield f"section: {where}, cut and capped while dragged, ms", dragged[-1]
        yield f"section: {where}, regions and areas at rest, ms", rested[-1]
        yield f"section: {where}, one clip part by part, ms", plain[-1]
        yield f"section: {where}, times faster", plain[-1] / dragged[-1]
    yield "section: worst cut while dragged, ms", max(dragged)
    yield "section: worst regions at rest, ms", max(rested)
    yield "section: least times faster", min(p / d for p, d in zip(plain, dragged, strict=True))

    scene = Scene()
    try:
        scene.window.SetSize(1280, 800)
        scene.set_model(model)
        scene.apply({part_id: PartLook(1.0) for part_id in model.parts})
        scene.set_view("inferior")

        def turn() -> None:
            scene.orbit(0.5, 0.0)
            scene.render(True)

        whole = statistics.median(times(turn, 10))
        at = [300.0]

        def drag() -> None:
            at[0] += 1.0
            scene.set_section(slicer.outlines(placed_plane("transverse", at[0])))
            scene.render(True)

        yield (
            "section: one frame of a dragged plane with its cut, ms",
            statistics.median(times(drag, 10)),
        )
        yield "section: one frame of the whole model turned, ms", whole
    finally:
        scene.finalize()


def folding(model: Any) -> Iterator[tuple[str, Any]]:
    """Working a fold out, and one frame of it with everything that rides on the flap."""
    from meshes.questions.reflect import Reflector
    from viewer.scene.drawn import draw_part
    from viewer.scene.folding import FoldedShells

    reflector = Reflector(model)
    reflector.path("rhomboids.left")  # brings the kernels in
    started = time.perf_counter()
    path = reflector.path("trapezius.left")
    yield "trapezius worked out, s", time.perf_counter() - started
    drawn = {name: draw_part(model.parts[name]) for name in path.part_ids()}
    shells = FoldedShells(reflector, drawn.__getitem__)
    paths, share = {"trapezius.left": path}, {"trapezius.left": 0.4}
    for detail in ("moving", "still"):
        frames = times(lambda d=detail: shells.shells(paths, share, (d,)), 20)
        yield f"one frame of its fold, {detail} detail, ms", statistics.median(frames)


def drawing(model: Any) -> Iterator[tuple[str, Any]]:
    """Orbit and peel at 1280 by 800, off screen, with whatever OpenGL there is."""
    from viewer.scene.scene import PartLook, Scene
    from viewer.state.view_state import Sides, ViewState
    from viewer.state.visibility import opacities

    scene = Scene()
    try:
        scene.window.SetSize(1280, 800)
        scene.set_model(model)

        def show(stratum: int) -> None:
            shown = opacities(model, ViewState(peeled=Sides(stratum, stratum)))
            scene.apply({part_id: PartLook(value) for part_id, value in shown.items()})

        for stratum in (0, 2, 6):
            show(stratum)
            scene.set_view("posterior")

            def turn(moving: bool = True) -> None:
                scene.orbit(1.0, 0.0)
                scene.render(moving)

            frame = statistics.median(times(turn, 20))
            yield f"orbit, peeled to stratum {stratum}, moving, frames a second", 1000 / frame
            still = statistics.median(times(lambda: turn(False), 3))
            yield f"orbit, peeled to stratum {stratum}, still picture, ms", still

        def peel() -> None:
            show(2)
            scene.render(True)
            show(3)
            scene.render(True)

        yield "peel one stratum and repaint, ms", statistics.median(times(peel, 5)) / 2
    finally:
        scene.finalize()


def _poly(mesh: Any) -> Any:
    import pyvista

    return pyvista.make_tri_mesh(mesh.vertices, mesh.faces)


def main(argv: Sequence[str] | None = None) -> int:
    """Run the measurements asked for."""
    argv = list(sys.argv[1:] if argv is None else argv)
    if argv[:1] == ["gpu"]:
        return _on_a_card(argv[1:])
    if argv[:1] == ["pack"]:
        return _pack(argv[1:])
    parser = argparse.ArgumentParser(description=__doc__)
    what = ("build", "load", "probe", "cover", "section", "draw", "fold")
    parser.add_argument(
        "what",
        nargs="*",
        choices=[*what, []],
        help=f"more about: {', '.join(what)}; without one, the table of everything",
    )
    parser.add_argument("--detail", choices=("preview", "full"), default="full")
    parser.add_argument("--compile", action="store_true", help="also a build with no kernels")
    parser.add_argument("--no-build", action="store_true", help="leave building out of the table")
    parser.add_argument("--no-plain", action="store_true", help="ours alone, for a quick look")
    parser.add_argument(
        "--scale", type=Path, metavar="FOLDER", help="how everything grows; written to a folder"
    )
    words = parser.parse_args(argv)
    if words.scale is not None:
        return _grow(words.scale, not words.no_build)
    if not words.what:
        return _table(words)
    wanted = words.what

    print(f"{platform.processor() or platform.machine()}, {os.cpu_count()} cores, {words.detail}")

    def tell(rows: Iterator[tuple[str, Any]]) -> None:
        for name, value in rows:
            shown = f"{value:,}" if isinstance(value, int) else f"{value:.3g}"
            print(f"{shown:>12}  {name}", flush=True)

    if "build" in wanted:
        tell(building(words.detail, words.compile))
    from meshes.body import Body
    from meshes.cache import load_or_build

    body = Body()
    if "load" in wanted:
        tell(loading(body, words.detail))
    if set(wanted) & {"probe", "cover", "section", "draw", "fold"}:
        model = load_or_build(body, words.detail)
        if "probe" in wanted:
            tell(probing(model))
        if "cover" in wanted:
            tell(covering(model))
        if "section" in wanted:
            tell(cutting(model))
        if "draw" in wanted:
            tell(drawing(model))
        if "fold" in wanted:
            tell(folding(model))
    return 0


def _table(words: argparse.Namespace) -> int:
    """Print the one table."""
    from meshes.body import Body
    from meshes.cache import load_or_build
    from scripts.benching import asking, pictures, starting, table

    body, plain = Body(), not words.no_plain
    name = platform.processor() or platform.machine()
    print(f"{name}, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}, {words.detail}")

    def rows() -> Iterator[table.Row]:
        model = load_or_build(body, words.detail)
        yield from starting.loads(body, words.detail, plain)
        yield from starting.starts(words.detail, 5, plain)
        yield from pictures.moving(model, plain)
        if plain:
            yield from asking.sections(model)
            yield from asking.probes(model)
            yield from asking.covers(model)
        if not words.no_build:
            build_time("preview")  # brings the kernels in
            yield from starting.cold_starts(words.detail)
            for detail, bar in (("preview", 5.0), ("full", 20.0)):
                told = build_time(detail)
                note = f"bones {told['bones']:.1f} s; peak {told['peak_gib']:.2f} GiB"
                yield table.Row(f"cold build, {detail}", "s", told["seconds"], None, bar, note)

    kept = table.show(rows())
    behind = [row for row in kept if row.ratio is not None and row.ratio < GOAL]
    if behind:
        print(f"less than {GOAL}x ahead: " + "; ".join(f"{r.what} {r.ratio:.1f}" for r in behind))
    return 0


def _grow(folder: Path, build_too: bool) -> int:
    """Measure growth and write it into a folder."""
    from scripts.benching import growth

    curves = [growth.by_detail(), growth.by_parts()]
    if build_too:
        curves.append(growth.by_build(build_time))
    files = growth.write(folder, curves)
    print("times are processor time of all threads")
    print(growth.table(curves))
    print("written: " + ", ".join(str(f) for f in files))
    return 0


def _on_a_card(argv: Sequence[str]) -> int:
    from scripts.benching import gpu

    parser = argparse.ArgumentParser(prog="bench gpu", description=gpu.__doc__)
    parser.add_argument("--pack", type=Path, help="file written by: bench pack FILE")
    parser.add_argument("--size", type=_size, default=(3840, 2160), help="default: 3840x2160")
    parser.add_argument("--frames", type=_count, default=240, help="of each row; default: 240")
    parser.add_argument("--detail", choices=("preview", "full"), default="full")
    parser.add_argument("--json", action="store_true", help="all figures as JSON")
    parser.add_argument(
        "--no-egl", dest="egl", action="store_false", help="draw through the display (GLX) instead"
    )
    return gpu.run(parser.parse_args(argv))


def _pack(argv: Sequence[str]) -> int:
    from meshes.body import Body
    from scripts.benching.gpu import pack

    parser = argparse.ArgumentParser(prog="bench pack", description="One file for: bench gpu")
    parser.add_argument("file", type=Path, metavar="FILE")
    parser.add_argument("--detail", choices=("preview", "full"), default="full")
    words = parser.parse_args(argv)
    print(pack(words.file, Body(), words.detail))
    return 0


def _size(text: str) -> tuple[int, int]:
    width, times_, height = text.partition("x")
    if not (times_ and width.isdigit() and height.isdigit() and int(width) and int(height)):
        raise argparse.ArgumentTypeError(f"must be WIDTHxHEIGHT in pixels, got {text!r}")
    return int(width), int(height)


def _count(text: str) -> int:
    if not text.isdigit() or not int(text):
        raise argparse.ArgumentTypeError(f"must be a whole number above 0, got {text!r}")
    return int(text)


if __name__ == "__main__":
    sys.exit(main())
