"""The drawn arrays of a whole model, kept on disk so that a warm start needs no decimation.

They lie in a folder of flat arrays, part after part in the order in which the parts are drawn
together, and are mapped into memory rather than read: a drawing batch is then one stretch of
each file and nothing is put together at the start. The folder is keyed by what the meshes hold
and by this code's version; a broken or foreign one is made anew, and a read-only place only
costs the time.
"""

from __future__ import annotations

import hashlib
import logging
import os
import shutil
import tempfile
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

import numpy as np

from meshes.cache import cache_folder
from viewer.scene.drawn import DrawnPart, Shell, draw_parts, within_budget
from viewer.scene.looks import batch_key

LOG = logging.getLogger("peelback")

VERSION = 19
"""Raise when the drawn arrays change their meaning."""

KEPT_FOLDERS = 4
LEAST_PARTS = 60
"""Smaller models are drawn anew each time: it takes no longer than a file."""

_FIELDS = ("points", "normals", "faces", "surface")
_ARRAYS = (
    *(f"still_{name}" for name in _FIELDS),
    *(f"moving_{name}" for name in _FIELDS),
    "moving_source",
    "counts",
    "boxes",
    "areas",
)
# Columns of ``counts``; the last says whether the moving shell stands for finer vertices.
_POINTS, _FACES, _MOVING_POINTS, _MOVING_FACES, _COARSE = range(5)


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
        if len(parts) >= LEAST_PARTS and save(path, drawn):
            # Mapped arrays take no memory of their own and lie ready for the batches.
            drawn = load(path, parts) or drawn
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
    parts = _in_order(parts)
    digest = hashlib.blake2b(f"drawn {VERSION}".encode(), digest_size=16)
    sources = {getattr(part, "source", None) for part in parts}
    stored = sources.pop() if len(sources) == 1 else None
    # The name of a stored model stands for its content.
    digest.update(str(stored).encode())
    for part in parts:
        digest.update(f"{part.id} {part.kind} {part.stratum}".encode())
        if stored is None:
            digest.update(np.ascontiguousarray(part.vertices, np.float32))
            digest.update(np.ascontiguousarray(part.faces, np.int32))
            if part.tendon is not None:
                digest.update(np.ascontiguousarray(part.tendon, np.float32))
    folder = cache_folder()
    return folder.with_name(f"{folder.name}-drawn") / f"drawn-{digest.hexdigest()}"


def _in_order(parts: Iterable) -> list:
    return sorted(parts, key=lambda part: (*batch_key(part), part.id))


def packed(drawn: Sequence[DrawnPart]) -> dict[str, np.ndarray]:
    """Return the arrays of drawn parts laid end to end, for ``unpacked``."""
    arrays: dict[str, np.ndarray] = {}
    for detail in ("still", "moving"):
        for name in _FIELDS:
            pieces = [getattr(getattr(d, detail), name) for d in drawn]
            arrays[f"{detail}_{name}"] = np.concatenate(pieces)
    arrays["moving_source"] = np.concatenate(
        [
            np.arange(len(d.moving.points)) if d.moving.source is None else d.moving.source
            for d in drawn
        ]
    ).astype(np.int32)
    arrays["counts"] = np.array(
        [
            [
                len(d.still.points),
                len(d.still.faces),
                len(d.moving.points),
                len(d.moving.faces),
                d.moving.source is not None,
            ]
            for d in drawn
        ],
        np.int64,
    )
    arrays["boxes"] = np.array([d.bounds for d in drawn])
    arrays["areas"] = np.array([d.area for d in drawn])
    return arrays


def save(path: Path, drawn: Sequence[DrawnPart]) -> bool:
    """Write the arrays of all parts of a model; returns whether it could."""
    arrays = packed(sorted(drawn, key=lambda d: (*batch_key(d.part), d.part.id)))
    scratch = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        scratch = Path(tempfile.mkdtemp(dir=path.parent, prefix=".new-"))
        for name in _ARRAYS:
            np.save(scratch / f"{name}.npy", arrays[name])
        try:
            os.replace(scratch, path)
        except OSError:
            # Another window wrote it first, or a broken one lies there.
            shutil.rmtree(path, ignore_errors=True)
            os.replace(scratch, path)
        _drop_old(path.parent)
    except OSError as error:
        LOG.info("drawn arrays not kept: %s", error)
        if scratch is not None:
            shutil.rmtree(scratch, ignore_errors=True)
        return False
    return True


def load(path: Path, parts: Sequence) -> list[DrawnPart] | None:
    """Return the drawn parts of a folder, or None when it isn't there or doesn't fit."""
    parts = _in_order(parts)
    try:
        # Copied on writing: what the window changes never reaches the file.
        arrays = {
            name: np.asarray(np.load(path / f"{name}.npy", mmap_mode="c")).view(np.ndarray)
            for name in _ARRAYS
        }
        counts = arrays["counts"]
        if counts.shape != (len(parts), 5) or any(
            len(part.vertices) != row[_POINTS] or len(part.faces) != row[_FACES]
            for part, row in zip(parts, counts.tolist(), strict=True)
        ):
            raise ValueError("the folder is of another model")
        return unpacked(arrays, parts)
    except FileNotFoundError:
        return None
    except (OSError, ValueError, KeyError, IndexError, EOFError) as error:
        LOG.info("drawn arrays made anew: %s", error)
        return None


def unpacked(arrays: Mapping[str, np.ndarray], parts: Sequence) -> list[DrawnPart]:
    """Return the drawn parts that arrays hold, in the parts' order.

    Raises
    ------
    ValueError
        The arrays are not as long as they say, or of another number of parts.
    """
    counts = np.array(arrays["counts"])
    if counts.shape != (len(parts), 5):
        raise ValueError("the folder is of another model")
    ends = np.concatenate([np.zeros((1, 5), np.int64), np.cumsum(counts, axis=0)])
    for detail, column in (("still", _POINTS), ("moving", _MOVING_POINTS)):
        for k, name in enumerate(_FIELDS):
            wanted = ends[-1, column + (name == "faces")]
            if len(arrays[f"{detail}_{name}"]) != wanted:
                raise ValueError(f"array {k} of the {detail} detail is cut short")
    drawn = []
    boxes, areas = np.array(arrays["boxes"]), arrays["areas"].tolist()
    ends = ends.tolist()
    for k, part in enumerate(parts):
        first, last = ends[k], ends[k + 1]
        here = slice(first[_POINTS], last[_POINTS])
        corners = slice(first[_FACES], last[_FACES])
        still = Shell(
            arrays["still_points"][here],
            arrays["still_normals"][here],
            arrays["still_faces"][corners],
            arrays["still_surface"][here],
        )
        here = slice(first[_MOVING_POINTS], last[_MOVING_POINTS])
        corners = slice(first[_MOVING_FACES], last[_MOVING_FACES])
        moving = Shell(
            arrays["moving_points"][here],
            arrays["moving_normals"][here],
            arrays["moving_faces"][corners],
            arrays["moving_surface"][here],
            arrays["moving_source"][here] if counts[k, _COARSE] else None,
        )
        drawn.append(DrawnPart(part, still, moving, True, boxes[k], areas[k]))
    return drawn


def _drop_old(folder: Path) -> None:
    kept = [f for f in folder.iterdir() if f.is_dir() and f.name.startswith("drawn-")]
    kept.sort(key=lambda f: f.stat().st_mtime, reverse=True)
    for old in kept[KEPT_FOLDERS:]:
        shutil.rmtree(old, ignore_errors=True)
    # As versions before kept them.
    for old in folder.glob("drawn-*.npz"):
        old.unlink(missing_ok=True)
