"""How build time, memory and frame time grow with detail and with the number of parts.

The build knows two details, preview and full. Beyond them, and to have steps of four, the
meshes of the preview are subdivided for drawing only: every triangle into four. For more parts
of the same kind, copies of every fourth part of the preview stand side by side (the window's cap
on moving triangles is left out there). Each measurement is a process of its own; times are
processor time of all its threads, so that other work on the machine does not bend the curves.
"""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

import numpy as np

ROOT = Path(__file__).resolve().parent.parent.parent
SIZE = (1280, 800)
MEASURES = {
    "still_ms": "resting picture, ms",
    "moving_ms": "moving picture, ms",
    "ready_ms": "made ready to draw, ms",
    "memory_mib": "memory taken, MiB",
    "probe_ms": "probe, one ray, ms",
    "section_ms": "section dragged, ms",
    "build_s": "build, s",
}


@dataclass(frozen=True, slots=True)
class Point:
    """One size and what it cost."""

    label: str
    size: float
    costs: dict[str, float]


@dataclass(frozen=True, slots=True)
class Curve:
    """One kind of growth.

    Attributes
    ----------
    by : str
        What grows: "triangles" or "parts".
    how : str
        How it was made to grow.
    points : tuple of Point
    """

    by: str
    how: str
    points: tuple[Point, ...]

    def slope(self, measure: str) -> float | None:
        """Return the slope of cost over size, both as logarithms; None with fewer than two."""
        pairs = [(p.size, p.costs[measure]) for p in self.points if p.costs.get(measure, 0) > 0]
        return log_slope(pairs) if len(pairs) > 1 else None


def log_slope(pairs: Iterable[tuple[float, float]]) -> float:
    """Return the slope of the line of least squares through (log size, log cost)."""
    x, y = np.log(np.array(list(pairs), float)).T
    x, y = x - x.mean(), y - y.mean()
    return float(x @ y / (x @ x))


def subdivided(shell: Any, times: int) -> Any:
    """Return a shell with every triangle cut into four, so many times over."""
    from viewer.scene.drawn import Shell

    for _ in range(times):
        faces = shell.faces.astype(np.int64)
        ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
        ends.sort(axis=1)
        n = len(shell.points)
        key, place = np.unique(ends[:, 0] * n + ends[:, 1], return_inverse=True)
        a, b = key // n, key % n

        def middles(values: np.ndarray, a=a, b=b) -> np.ndarray:
            return np.concatenate([values, (values[a] + values[b]) / 2]).astype(np.float32)

        normals = middles(shell.normals)
        normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-9)
        ab, bc, ca = (place + n).reshape(3, -1)
        i, j, k = faces.T
        split = np.concatenate(
            [np.column_stack(t) for t in ((i, ab, ca), (j, bc, ab), (k, ca, bc), (ab, bc, ca))]
        )
        shell = Shell(
            middles(shell.points), normals, split.astype(np.int32), middles(shell.surface)
        )
    return shell


EVERY = 4
APART_MM = 800.0


def _named(part_id: str, copy: int) -> str:
    name, dot, side = part_id.partition(".")
    return f"{name}_copy_{copy}{dot}{side}" if copy else part_id


def _shells_beside(drawn: Sequence[Any], copies: int) -> list[Any]:
    """Return drawn parts and copies of them side by side."""
    from dataclasses import replace

    beside = []
    for k in range(copies):
        step = np.array([k * APART_MM, 0.0, 0.0], np.float32)
        for d in drawn:
            shells = {
                n: replace(getattr(d, n), points=getattr(d, n).points + step) for n in _DETAILS
            }
            part = replace(d.part, id=_named(d.part.id, k))
            beside.append(replace(d, part=part, box=None, **shells))
    return beside


_DETAILS = ("still", "moving")


def draw(times: int = 0, copies: int = 0, detail: str = "preview") -> dict[str, float]:
    """Measure pictures of the preview subdivided ``times``, or of copies of a quarter of it.

    Costs are of what is added to the empty program.
    """
    from dataclasses import replace
    from time import process_time

    from meshes.body import Body
    from meshes.cache import load_or_build
    from scripts.benching.timing import spent
    from viewer.scene.drawn_cache import drawn_model
    from viewer.scene.scene import PartLook, Scene

    drawn = drawn_model(load_or_build(Body(), detail))
    if copies:
        drawn = _shells_beside(drawn[::EVERY], copies)
    if times:
        drawn = [replace(d, still=subdivided(d.still, times)) for d in drawn]
    scene = Scene(size=SIZE)
    try:
        scene.render()
        empty = memory_mib()
        began = process_time()
        scene.add_parts(drawn)
        scene.apply({d.part.id: PartLook() for d in drawn})
        scene.set_view("posterior")
        scene.render()
        ready = 1000 * (process_time() - began)

        def turn(moving: bool) -> None:
            scene.orbit(1.0, 0.0)
            scene.render(moving)

        still = spent(lambda: turn(False), 3)
        moving = spent(lambda: turn(True), 9)
        # The shells themselves count, whether they were made or mapped.
        held = sum(
            a.nbytes
            for d in drawn
            for a in (d.still.points, d.still.normals, d.still.faces, d.still.surface)
        )
        return {
            "triangles": float(sum(len(d.still.faces) for d in drawn)),
            "parts": float(len(drawn)),
            "still_ms": still,
            "moving_ms": moving,
            "ready_ms": ready,
            "memory_mib": max(memory_mib() - empty, 0.0)
            + (held / 1024**2 if times or copies else 0.0),
        }
    finally:
        scene.finalize()


def ask(copies: int, detail: str = "preview") -> dict[str, float]:
    """Measure a probe and a dragged section of copies of a quarter of the preview."""
    from dataclasses import replace

    import trimesh

    from meshes.body import Body
    from meshes.cache import load_or_build
    from meshes.questions.planes import placed_plane
    from meshes.questions.probe import Probe
    from meshes.questions.section import Slicer
    from scripts.benching.timing import spent

    model = load_or_build(Body(), detail)
    beside = {}
    for k in range(copies):
        for part in list(model.parts.values())[::EVERY]:
            mesh = trimesh.Trimesh(part.vertices + [k * APART_MM, 0, 0], part.faces, process=False)
            name = _named(part.id, k)
            beside[name] = replace(part, id=name, mesh=mesh)
    model = replace(model, parts=beside)
    slicer, probe = Slicer(model), Probe(model)
    plane = placed_plane("transverse", 300.0)
    start, direction = np.array([40.0, 300.0, 280.0]), np.array([0.0, -1.0, 0.0])

    def probes() -> None:
        for _ in range(100):
            probe.along(start, direction)

    return {
        "parts": float(len(model.parts)),
        "section_ms": spent(lambda: slicer.outlines(plane).fill(), 7),
        "probe_ms": spent(probes, 9) / 100,
    }


def memory_mib() -> float:
    """Return this process's resident memory, MiB (Linux)."""
    for line in Path("/proc/self/status").read_text().splitlines():
        if line.startswith("VmRSS"):
            return int(line.split()[1]) / 1024
    raise RuntimeError("no VmRSS")


def _elsewhere(call: str) -> dict[str, float]:
    """Evaluate a call of this module in a process of its own."""
    code = f"import json; from scripts.benching import growth; print(json.dumps(growth.{call}))"
    told = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )  # fmt: skip
    if told.returncode:
        raise RuntimeError(f"{call} failed: {told.stderr.strip().splitlines()[-1:]}")
    return json.loads(told.stdout.splitlines()[-1])


def by_detail(steps: Sequence[int] = (0, 1, 2)) -> Curve:
    """Grow the triangles by four at each step."""
    points = []
    for n in steps:
        costs = _elsewhere(f"draw(times={n})")
        points.append(Point(f"x{4**n}", costs["triangles"], costs))
    return Curve("triangles", "the preview, subdivided for drawing", tuple(points))


def by_parts(steps: Sequence[int] = (1, 4, 16)) -> Curve:
    """Take ever more parts."""
    points = []
    for n in steps:
        costs = {**_elsewhere(f"draw(copies={n})"), **_elsewhere(f"ask({n})")}
        points.append(Point(f"x{n}", costs["parts"], costs))
    how = "copies of every fourth part of the preview, side by side"
    return Curve("parts", how, tuple(points))


def by_build(build_time: Any) -> Curve:
    """Build at both details that the build has."""
    points = []
    build_time("preview")  # brings the kernels in
    for detail in ("preview", "full"):
        told = build_time(detail)
        costs = {"build_s": told["processor"], "memory_mib": 1024 * told["peak_gib"]}
        points.append(Point(detail, float(told["triangles"]), costs))
    return Curve("triangles", "the two details of the build, from nothing", tuple(points))


def table(curves: Iterable[Curve]) -> str:
    """Return all curves as text."""
    lines = []
    for curve in curves:
        lines.append(f"with {curve.by}: {curve.how}")
        names = [m for m in MEASURES if any(m in p.costs for p in curve.points)]
        lines.append(f"  {'':10}{curve.by:>14}" + "".join(f"{MEASURES[m]:>26}" for m in names))
        for point in curve.points:
            cells = "".join(f"{point.costs.get(m, math.nan):>26.4g}" for m in names)
            lines.append(f"  {point.label:10}{point.size:>14,.0f}{cells}")
        slopes = [curve.slope(m) for m in names]
        cells = "".join(f"{'' if s is None else f'{s:.2f}':>26}" for s in slopes)
        lines.append(f"  {'slope':10}{'(1: linear)':>14}{cells}")
    return "\n".join(lines)


# Colours that stay apart for colour-blind readers (Okabe and Ito's set, from memory).
_INKS = ("#0072b2", "#d55e00", "#009e73", "#cc79a7", "#56b4e9", "#e69f00", "#000000")
_WIDE, _HIGH, _LEFT, _TOP, _ROOM = 640, 420, 74, 46, 260


def plot(curve: Curve) -> str:
    """Return a plot of one curve, both axes logarithmic, as SVG; grey lines are linear growth."""
    names = [m for m in MEASURES if sum(p.costs.get(m, 0) > 0 for p in curve.points) > 1]
    sizes = [p.size for p in curve.points]
    costs = [p.costs[m] for m in names for p in curve.points if p.costs.get(m, 0) > 0]
    low_x, high_x = _decades(sizes)
    low_y, high_y = _decades(costs)

    def x(size: float) -> float:
        return _LEFT + (math.log10(size) - low_x) / (high_x - low_x) * _WIDE

    def y(cost: float) -> float:
        return _TOP + _HIGH - (math.log10(cost) - low_y) / (high_y - low_y) * _HIGH

    title = escape(f"Growth with {curve.by}: {curve.how}")
    out = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_LEFT + _WIDE + _ROOM}" '
        f'height="{_TOP + _HIGH + 54}" font-family="sans-serif" font-size="13">',
        f"<title>{title}</title>",
        '<rect width="100%" height="100%" fill="white"/>',
        f'<text x="{_LEFT}" y="24" font-size="15" font-weight="bold">{title}</text>',
    ]
    for power in range(low_x, high_x + 1):
        at = x(10.0**power)
        out.append(
            f'<path d="M{at:.1f} {_TOP}V{_TOP + _HIGH}" stroke="#ddd"/>'
            f'<text x="{at:.1f}" y="{_TOP + _HIGH + 18}" text-anchor="middle">{10**power:,}</text>'
        )
    for power in range(low_y, high_y + 1):
        at = y(10.0**power)
        out.append(
            f'<path d="M{_LEFT} {at:.1f}H{_LEFT + _WIDE}" stroke="#ddd"/>'
            f'<text x="{_LEFT - 8}" y="{at + 4:.1f}" text-anchor="end">{10.0**power:g}</text>'
        )
    out.append(
        f'<text x="{_LEFT + _WIDE / 2}" y="{_TOP + _HIGH + 40}" text-anchor="middle">'
        f"{escape(curve.by)}</text>"
    )
    for k, name in enumerate(names):
        ink = _INKS[k % len(_INKS)]
        known = [(p.size, p.costs[name]) for p in curve.points if p.costs.get(name, 0) > 0]
        first, last = known[0], known[-1]
        linear = first[1] * last[0] / first[0]
        if linear < 10.0**high_y:
            out.append(
                f'<path d="M{x(first[0]):.1f} {y(first[1]):.1f}L{x(last[0]):.1f} {y(linear):.1f}" '
                'stroke="#bbb" stroke-dasharray="4 4" fill="none"/>'
            )
        way = "L".join(f"{x(s):.1f} {y(c):.1f}" for s, c in known)
        out.append(f'<path d="M{way}" stroke="{ink}" stroke-width="2" fill="none"/>')
        out += [f'<circle cx="{x(s):.1f}" cy="{y(c):.1f}" r="4" fill="{ink}"/>' for s, c in known]
        words = escape(f"{MEASURES[name]}: slope {curve.slope(name):.2f}")
        out.append(
            f'<text x="{_LEFT + _WIDE + 10}" y="{_TOP + 20 + 22 * k}" fill="{ink}">{words}</text>'
        )
    out.append("</svg>")
    return "\n".join(out)


def _decades(values: Sequence[float]) -> tuple[int, int]:
    low, high = math.floor(math.log10(min(values))), math.ceil(math.log10(max(values)))
    return low, max(high, low + 1)


def write(folder: Path, curves: Sequence[Curve]) -> list[Path]:
    """Write the table, the figures and a plot for each curve into a folder; returns the files."""
    folder.mkdir(parents=True, exist_ok=True)
    files = [folder / "growth.txt", folder / "growth.json"]
    files[0].write_text(table(curves) + "\n", encoding="utf-8")
    facts = [
        {
            "by": c.by,
            "how": c.how,
            "points": [{"label": p.label, "size": p.size, **p.costs} for p in c.points],
            "slopes": {m: s for m in MEASURES if (s := c.slope(m)) is not None},
        }
        for c in curves
    ]
    files[1].write_text(json.dumps(facts, indent=1) + "\n", encoding="utf-8")
    for k, curve in enumerate(curves):
        path = folder / f"growth-{k + 1}-{curve.by}.svg"
        path.write_text(plot(curve) + "\n", encoding="utf-8")
        files.append(path)
    return files
