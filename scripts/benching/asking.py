"""Questions: cuts against a clip a part, rays and covers against the mesh library's own rays."""

from __future__ import annotations

import time
from collections.abc import Iterator
from typing import Any

import numpy as np

from scripts.benching.pictures import polydata
from scripts.benching.table import Row
from scripts.benching.timing import median

EVERY_RAY = 100
PLANES = (
    ("transverse", 100.0, (0, 0)),
    ("transverse", 300.0, (0, 0)),
    ("sagittal", 20.0, (0, 0)),
    ("coronal", 60.0, (0, 0)),
    ("free", 250.0, (30, 15)),
)


def sections(model: Any) -> Iterator[Row]:
    """A cut while the plane is dragged, and its regions at rest."""
    from meshes.questions.planes import placed_plane
    from meshes.questions.section import Slicer

    slicer = Slicer(model)
    surfaces = [polydata(part) for part in model.parts.values()]
    boxes = [np.reshape(s.bounds, (3, 2)).T for s in surfaces]
    for kind, position, tilt in PLANES:
        plane = placed_plane(kind, position, tilt)

        def clipped(plane=plane) -> None:
            for surface, box in zip(surfaces, boxes, strict=True):
                middle = (box.mean(axis=0) - plane.origin) @ plane.normal
                # The loop is spared the parts that the plane does not meet.
                if abs(middle) < (box[1] - box[0]) / 2 @ np.abs(plane.normal):
                    surface.clip_closed_surface(tuple(plane.normal), origin=tuple(plane.origin))

        theirs = median(clipped, 1)
        where = f"{kind} at {position:.0f}"
        mine = median(lambda p=plane: slicer.outlines(p).fill(), 9)
        yield Row(f"section dragged, {where}", "ms", mine, theirs, 20, "cut and capped")
        mine = median(lambda p=plane: slicer.cut(p), 3)
        yield Row(f"section at rest, {where}", "ms", mine, theirs, 150, "named regions, areas")


def probes(model: Any) -> Iterator[Row]:
    """One ray, with every layer it meets."""
    from meshes.questions.probe import Probe

    probe = Probe(model)
    start, direction = np.array([40.0, 300.0, 280.0]), np.array([0.0, -1.0, 0.0])
    mine = median(lambda: probe.along(start, direction), 50)
    near = []
    for part in model.parts.values():
        low, high = part.mesh.bounds
        if ((low[[0, 2]] <= start[[0, 2]]) & (start[[0, 2]] <= high[[0, 2]])).all():
            near.append(part.mesh)

    def plain() -> None:
        for mesh in near:
            mesh.ray.intersects_location([start], [direction], multiple_hits=True)

    note = "plain: only parts whose box it meets"
    yield Row("probe, one ray", "ms", mine, median(plain, 5), 2, note)


def covers(model: Any) -> Iterator[Row]:
    """Everything over everything."""
    from meshes.questions.cover import cast_layers

    cast_layers(model, 20.0)  # brings the kernels in
    started = time.perf_counter()
    layers = cast_layers(model)
    mine = time.perf_counter() - started
    origins, directions = layers.rays.origins[::EVERY_RAY], layers.rays.directions[::EVERY_RAY]
    for part in model.parts.values():
        part.mesh.ray.intersects_location(origins[:2], directions[:2])
    started = time.perf_counter()
    for part in model.parts.values():
        part.mesh.ray.intersects_location(origins, directions, multiple_hits=True)
    theirs = EVERY_RAY * (time.perf_counter() - started)
    note = (
        f"{len(layers.rays.origins):,} rays; plain: every {EVERY_RAY}th, scaled, made ready before"
    )
    yield Row("cover graph, all parts", "s", mine, theirs, 3, note)
