"""The drawn arrays of a whole model, kept on disk so that a warm start needs no decimation.

The file is keyed by what the meshes hold and by this code's version; a broken
or foreign file is made anew, and a read-only folder only costs the time.
"""

from __future__ import annotations

import hashlib
import logging
import os
import tempfile
import zipfile
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

import numpy as np

from meshes.cache import cache_folder
from viewer.scene.drawn import DrawnPart, Shell, draw_parts, within_budget

LOG = logging.getLogger("peelback")

VERSION = 10
"""Raise when the drawn arrays change their meaning."""

KEPT_FILES = 4
LEAST_PARTS = 60
"""Smaller models are drawn anew each time: it takes no longer than a file."""

_FIELDS = ("normals", "surface")
_MOVING = ("points", "normals", "faces", "surface", "source")


def drawn_model(model) -> list[DrawnPart]:
    """Return the drawn parts of a model with their furrow shade, from the cache if there.

    Needs no VTK and no Qt: call it beside the window.
    """
    parts = _in_order(model.parts.values())
    drawn = None
    if len(parts) >= LEAST_PARTS:
        path = drawn_path(parts)
        drawn = load(path, parts)
    if drawn is None:
        drawn = shaded(within_budget(draw_parts(parts)))
        if len(parts) >= LEAST_PARTS:
            save(path, drawn)
    return drawn


def shaded(drawn: list[DrawnPart]) -> list[DrawnPart]:
    """Return the parts with their furrow shade written into the shells."""
    from viewer.scene.furrows import shade

    for detail, values in shade(drawn).items():
        for part in drawn:
            getattr(part, detail).surface[:, 3] = values[part.part.id]
            part.shaded = True
    return drawn


def drawn_path(parts: Sequence) -> Path:
    """Return where the drawn arrays of these parts are kept."""
    digest = hashlib.blake2b(f"drawn {VERSION}".encode(), digest_size=16)
    for part in _in_order(parts):
        digest.update(f"{part.id} {part.kind} {part.stratum}".encode())
        digest.update(np.ascontiguousarray(part.mesh.vertices, np.float32))
        digest.update(np.ascontiguousarray(part.mesh.faces, np.int32))
        if part.tendon is not None:
            digest.update(np.ascontiguousarray(part.tendon, np.float32))
    folder = cache_folder()
    return folder.with_name(f"{folder.name}-drawn") / f"drawn-{digest.hexdigest()}.npz"


def _in_order(parts: Iterable) -> list:
    return sorted(parts, key=lambda part: part.id)


def save(path: Path, drawn: Sequence[DrawnPart]) -> bool:
    """Write the arrays of all parts of a model; returns whether it could."""
    drawn = sorted(drawn, key=lambda d: d.part.id)
    arrays: dict[str, np.ndarray] = {}
    same = np.array([d.moving is d.still for d in drawn])
    arrays["same"] = same
    for name in _FIELDS:
        arrays[f"still_{name}"] = np.concatenate([getattr(d.still, name) for d in drawn])
    own = [d.moving for d, s in zip(drawn, same, strict=True) if not s]
    arrays["moving_counts"] = np.array([[len(s.points), len(s.faces)] for s in own], int)
    for name in _MOVING if own else ():
        arrays[f"moving_{name}"] = np.concatenate([getattr(s, name) for s in own])
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, scratch = tempfile.mkstemp(dir=path.parent, suffix=".part")
        with os.fdopen(handle, "wb") as file:
            np.savez(file, **arrays)
        os.replace(scratch, path)
        _drop_old(path.parent)
    except OSError as error:
        LOG.info("drawn arrays not kept: %s", error)
        return False
    return True


def load(path: Path, parts: Sequence) -> list[DrawnPart] | None:
    """Return the drawn parts of a file, or None when it isn't there or doesn't fit."""
    parts = _in_order(parts)
    try:
        with np.load(path) as file:
            arrays = {name: file[name] for name in file.files}
        return _unpacked(arrays, parts)
    except FileNotFoundError:
        return None
    except (OSError, ValueError, KeyError, IndexError, EOFError, zipfile.BadZipFile) as error:
        LOG.info("drawn arrays made anew: %s", error)
        return None


def _unpacked(arrays: Mapping[str, np.ndarray], parts: Sequence) -> list[DrawnPart]:
    vertex_total = sum(len(part.mesh.vertices) for part in parts)
    if len(arrays["same"]) != len(parts) or len(arrays["still_normals"]) != vertex_total:
        raise ValueError("the file is of another model")
    drawn = []
    at = moving_at = face_at = own = 0
    for part, same in zip(parts, arrays["same"], strict=True):
        points = np.ascontiguousarray(part.mesh.vertices, np.float32)
        faces = np.ascontiguousarray(part.mesh.faces, np.int32)
        here = slice(at, at + len(points))
        at += len(points)
        still = Shell(points, arrays["still_normals"][here], faces, arrays["still_surface"][here])
        moving = still
        if not same:
            vertices, count = arrays["moving_counts"][own]
            own += 1
            there = slice(moving_at, moving_at + vertices)
            corners = slice(face_at, face_at + count)
            moving_at, face_at = moving_at + vertices, face_at + count
            moving = Shell(
                arrays["moving_points"][there],
                arrays["moving_normals"][there],
                arrays["moving_faces"][corners],
                arrays["moving_surface"][there],
                arrays["moving_source"][there],
            )
        drawn.append(DrawnPart(part, still, moving, shaded=True))
    return drawn


def _drop_old(folder: Path) -> None:
    files = sorted(folder.glob("drawn-*.npz"), key=lambda p: p.stat().st_mtime, reverse=True)
    for old in files[KEPT_FILES:]:
        old.unlink(missing_ok=True)
