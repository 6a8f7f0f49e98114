"""Gives a body its own stature: all is laid at the median man's and scaled as a whole."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from meshes.model import Part
from meshes.soft.workbench import Workbench, trimesh_of


def bring_to_stature(bench: Workbench) -> None:
    """Scale all that was laid; what comes after is judged in the body's own millimetres."""
    factor = bench.body.factor
    if factor == 1.0:
        return
    # An attachment's line often is the place of a contact as well: they stay one array.
    grown: dict[int, np.ndarray] = {}

    def once(line: np.ndarray) -> np.ndarray:
        if id(line) not in grown:
            grown[id(line)] = factor * np.asarray(line, float)
        return grown[id(line)]

    # What is held here keeps its identity until all is done.
    kept = bench.contacts, dict(bench.parts)
    bench.contacts = [replace(c, place=once(c.place)) for c in bench.contacts]
    for part in kept[1].values():
        ends = tuple(replace(a, curve=once(a.curve)) for a in part.attachments)
        bench.replace(replace(scaled([part], factor)[0], attachments=ends))
    bench.landmarks = {name: factor * place for name, place in bench.landmarks.items()}


def scaled(parts: Iterable[Part], factor: float) -> list[Part]:
    """Scale meshes, fibres and ends of parts about the origin."""
    if factor == 1.0:
        return list(parts)
    return [
        replace(
            part,
            mesh=trimesh_of(factor * np.asarray(part.mesh.vertices), part.mesh.faces),
            fibres=None if part.fibres is None else factor * part.fibres,
            attachments=tuple(
                replace(a, curve=factor * np.asarray(a.curve)) for a in part.attachments
            ),
        )
        for part in parts
    ]
