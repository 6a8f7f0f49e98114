"""The order of building: bones, then soft parts from deep to superficial, then the twin side."""

from __future__ import annotations

import gc
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor, as_completed
from contextlib import contextmanager
from importlib import import_module
from types import ModuleType

import numpy as np

from meshes.body import Body, at_median_stature
from meshes.catalogue import load_catalogue
from meshes.drape.field import Field
from meshes.errors import PeelbackError
from meshes.model import (
    BackModel,
    Part,
    mirror_contact,
    mirror_part,
    mirror_points,
    other_side,
    side_of,
)
from meshes.skeleton.frame import make_frame
from meshes.soft.stature import scaled
from meshes.soft.workbench import FIELD_MARGIN_MM, FIELD_SPACING_MM, Workbench

Progress = Callable[[float, str, Sequence[Part]], None]
"""Called with the share done (0-1), what was laid, and the parts just finished (both sides)."""

DETAILS = ("preview", "full")

_BONES = (
    ("meshes.skeleton.spine", "make"),
    ("meshes.skeleton.thorax", "make"),
    ("meshes.skeleton.shoulder", "make"),
    ("meshes.skeleton.pelvis", "make"),
    ("meshes.skeleton.skull", "make"),
)
_BONES_WEIGHT = 2.0

# Deep to superficial. A tube stands before the sheet that covers it, so that the
# sheet is laid over it.
STAGES: tuple[tuple[str, str, str, float], ...] = (
    # module, function, what is laid, relative time
    ("meshes.soft.ligaments", "lay", "the ligaments", 2.0),
    ("meshes.soft.canal", "lay", "the vertebral canal", 2.0),
    ("meshes.soft.nerves", "lay_deep", "nerves and vessels of the trunk wall", 3.0),
    ("meshes.soft.trunk_wall", "lay", "the trunk wall", 3.0),
    ("meshes.soft.segmental", "lay", "small segmental muscles", 3.0),
    ("meshes.soft.deep", "lay", "erector spinae and transversospinales", 4.0),
    ("meshes.soft.nerves", "lay_in_deep_muscles", "nerves in the deep muscles", 2.0),
    ("meshes.soft.roof_sheets", "lay_aponeurosis", "the aponeurosis of erector spinae", 1.0),
    ("meshes.soft.flank_and_hip", "lay_transversus_aponeurosis", "transversus", 0.3),
    ("meshes.soft.roof_sheets", "lay_thoracolumbar_fascia", "the thoracolumbar fascia", 2.0),
    ("meshes.soft.back_sheets", "lay_splenii", "the splenii", 1.0),
    ("meshes.soft.nuchal", "lay_nuchal_fascia", "the nuchal fascia", 0.2),
    ("meshes.soft.shoulder_muscles", "lay_neck_front", "the scalenes", 0.5),
    ("meshes.soft.back_sheets", "lay_serrati_posteriores", "the serrati posteriores", 1.0),
    ("meshes.soft.shoulder_muscles", "lay_serratus_anterior", "serratus anterior", 1.0),
    ("meshes.soft.nerves", "lay_under_rhomboids", "nerves under the rhomboids", 0.5),
    ("meshes.soft.back_sheets", "lay_levator_and_rhomboids", "levator and rhomboids", 1.0),
    ("meshes.soft.shoulder_muscles", "lay_scapular_muscles", "the scapular muscles", 1.0),
    ("meshes.soft.flank_and_hip", "lay_internal_oblique", "internal oblique", 0.5),
    ("meshes.soft.flank_and_hip", "lay_gluteus_medius", "gluteus medius", 0.3),
    ("meshes.soft.flank_and_hip", "lay_external_oblique", "external oblique", 1.0),
    ("meshes.soft.shoulder_muscles", "lay_sternocleidomastoid", "sternocleidomastoid", 0.3),
    ("meshes.soft.nerves", "lay_under_trapezius", "nerves under trapezius", 0.5),
    ("meshes.soft.back_sheets", "lay_latissimus", "latissimus dorsi", 2.0),
    ("meshes.soft.back_sheets", "lay_trapezius", "trapezius", 2.0),
    ("meshes.soft.shoulder_muscles", "lay_deltoid", "deltoid", 1.0),
    ("meshes.soft.flank_and_hip", "lay_gluteus_maximus", "gluteus maximus", 1.0),
    ("meshes.soft.nerves", "lay_cutaneous", "cutaneous nerves", 0.5),
    ("meshes.soft.envelope", "lay_deep_fascia", "the deep fascia", 1.0),
    ("meshes.soft.envelope", "lay_superficial_fascia", "the superficial fascia", 0.5),
    ("meshes.soft.envelope", "lay_skin", "the skin", 0.5),
    ("meshes.soft.context", "lay_context", "the front of the trunk", 1.0),
    ("meshes.soft.stature", "bring_to_stature", "the body's own stature", 0.1),
    ("meshes.soft.spare", "take_out", "triangles to spare taken out", 0.3),
    ("meshes.soft.parting", "part_finished", "what still overlaps parted", 3.0),
)


def build(body: Body, detail: str = "full", progress: Progress | None = None) -> BackModel:
    """Compute a back.

    Parameters
    ----------
    body : Body
    detail : {"preview", "full"}
    progress : callable or None
        Called after each stage with (share, what, parts); may raise to stop.

    Returns
    -------
    BackModel

    Raises
    ------
    PeelbackError
        ``detail`` is not one of the two names.
    """
    if detail not in DETAILS:
        raise PeelbackError(f"detail must be one of {', '.join(DETAILS)}, got {detail!r}")
    with _collector_off():
        return _build(body, detail, progress)


@contextmanager
def _collector_off() -> Iterator[None]:
    """Let rings of objects lie until the end: looking for them costs a fortieth of a build."""
    on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if on:
            gc.enable()


def _build(body: Body, detail: str, progress: Progress | None) -> BackModel:
    started = time.perf_counter()
    timings: dict[str, float] = {}
    report = progress or (lambda share, what, parts: None)
    laid_body = at_median_stature(body)
    total = sum(weight for *_, weight in STAGES) + _BONES_WEIGHT

    def shown(laid) -> list[Part]:
        return _with_twins(scaled(laid, laid_body.factor))

    bench = _start_bench(
        laid_body,
        detail,
        lambda share, parts: report(share * _BONES_WEIGHT / total, "bones", shown(parts)),
    )
    timings["bones"] = time.perf_counter() - started
    done = _BONES_WEIGHT
    for module, function, what, weight in STAGES:
        before = set(bench.parts)
        stage_started = time.perf_counter()
        getattr(import_module(module), function)(bench)
        timings[what] = time.perf_counter() - stage_started
        done += weight
        laid = [part for part_id, part in bench.parts.items() if part_id not in before]
        report(min(done / total, 1.0), what, shown(laid))
    parts = {part.id: part for part in _with_twins(bench.parts.values())}
    landmarks: dict[str, np.ndarray] = {}
    for name, place in bench.landmarks.items():
        landmarks[name] = place
        if side_of(name) == "left":
            landmarks[other_side(name)] = mirror_points(place)
    contacts = list(bench.contacts)
    contacts += [
        mirror_contact(c)
        for c in bench.contacts
        if side_of(c.a) == "left" or side_of(c.b) == "left"
    ]
    timings["total"] = time.perf_counter() - started
    return BackModel(
        body, detail, parts, landmarks, tuple(contacts), bench.catalogue, {"timings_s": timings}
    )


def _start_bench(
    body: Body,
    detail: str,
    report: Callable[[float, Sequence[Part]], None] = lambda share, parts: None,
) -> Workbench:
    """Make the bones and the field that holds them; each group is told of when it is done."""
    frame = make_frame(body)
    with ThreadPoolExecutor(2) as pool:
        jobs = [
            pool.submit(getattr(import_module(module), function), frame, detail)
            for module, function in _BONES
        ]
        for number, job in enumerate(as_completed(jobs), 1):
            report(number / len(jobs), [piece.part for piece in job.result()])
        pieces = [piece for job in jobs for piece in job.result()]
    boxes = np.array([piece.part.mesh.bounds for piece in pieces])
    lower = boxes[:, 0].min(0) - 40.0
    upper = boxes[:, 1].max(0) + 40.0
    lower[0] = -FIELD_MARGIN_MM
    field = Field(lower, upper, FIELD_SPACING_MM, later=True)
    bench = Workbench(body, detail, frame, load_catalogue(), field)
    for piece in pieces:
        bench.add(piece.part)
        bench.landmarks.update(piece.landmarks)
    return bench


def _with_twins(parts) -> list[Part]:
    """Both sides of each left part, median parts once, in order."""
    out: list[Part] = []
    for part in parts:
        out.append(part)
        if part.side == "left":
            out.append(mirror_part(part))
    return out


class _CallableModule(ModuleType):
    """Importing this module binds ``meshes.build`` to the module rather than to the
    function; calling either must build, so that ``from meshes import build`` holds always."""

    def __call__(self, body: Body, detail: str = "full", progress: Progress | None = None):
        return build(body, detail, progress)


sys.modules[__name__].__class__ = _CallableModule
