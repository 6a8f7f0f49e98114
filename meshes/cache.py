"""Keeps finished models on disk, so that a body is computed once.

A model lies in a folder of its own, named by its parameters, its detail and the
code that made it: flat arrays (all parts one after the other) that are mapped
into memory rather than read, and one index. Whatever is wrong with a cached
model, it is built again.
"""

from __future__ import annotations

import hashlib
import json
import logging
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import platformdirs

from meshes.body import Body
from meshes.model import Attachment, BackModel, Contact, Part

if TYPE_CHECKING:
    import trimesh

log = logging.getLogger(__name__)

Progress = Callable[[float, str, Sequence[Part]], None]

FORMAT = 1
"""Raised whenever the files change their meaning."""

LIMIT_BYTES = 2 * 1024**3
"""Models used longest ago go when the folder grows beyond this."""

# What changes a model when it changes itself.
_LIBRARIES = ("numpy", "scipy", "numba", "trimesh", "vtk", "manifold3d")
# Parts of the package that only ask a finished model.
_ASKING = ("questions/", "export.py", "cache.py", "catalogue/folds.py", "catalogue/folds.toml")
_ARRAYS = ("vertices", "faces", "uv", "tendon", "fibres", "curves")


def cache_folder() -> Path:
    """Return the folder of cached models: $PEELBACK_CACHE, or the platform's own place."""
    chosen = os.environ.get("PEELBACK_CACHE")
    return Path(chosen) if chosen else platformdirs.user_cache_path("peelback") / "models"


@cache
def code_hash() -> str:
    """Return a hash of everything that decides what a body looks like."""
    package = Path(__file__).resolve().parent
    digest = hashlib.sha256(f"format {FORMAT}\n".encode())
    for path in sorted(package.rglob("*")):
        name = path.relative_to(package).as_posix()
        if path.suffix not in (".py", ".toml") or name.startswith(_ASKING):
            continue
        data = path.read_bytes()
        digest.update(f"{name} {len(data)}\n".encode())
        digest.update(data)
    for library in _LIBRARIES:
        try:
            digest.update(f"{library} {version(library)}\n".encode())
        except PackageNotFoundError:
            continue
    return digest.hexdigest()


def model_folder(body: Body, detail: str) -> Path:
    """Return where the model of a body is kept, whether or not it is there."""
    words = json.dumps([body.as_dict(), detail, code_hash()], sort_keys=True)
    return cache_folder() / f"{detail}-{hashlib.sha256(words.encode()).hexdigest()[:20]}"


def load_or_build(body: Body, detail: str = "full", progress: Progress | None = None) -> BackModel:
    """Return the model of a body, from the cache if it can be had there.

    Parameters
    ----------
    body : Body
    detail : {"preview", "full"}
    progress : callable or None
        As for :func:`meshes.build.build`; called once, with all parts, when the
        model comes from the cache.
    """
    model = load_cached(body, detail)
    if model is not None:
        if progress is not None:
            progress(1.0, "loaded", tuple(model.parts.values()))
        return model
    from meshes.build import build

    model = build(body, detail, progress)
    store(model)
    return model


def load_cached(body: Body, detail: str) -> BackModel | None:
    """Return the cached model of a body, or None; a broken one is removed."""
    folder = model_folder(body, detail)
    if not (folder / "index.json").exists():
        return None
    try:
        model = _read(folder, body, detail)
    except (OSError, ValueError, KeyError, TypeError, IndexError) as problem:
        log.warning("cached model %s is broken (%s): building again", folder.name, problem)
        shutil.rmtree(folder, ignore_errors=True)
        return None
    try:
        os.utime(folder / "index.json")  # last use, for eviction
    except OSError:
        log.debug("cache is read-only: last use not noted")
    return model


def store(model: BackModel) -> Path | None:
    """Keep a model; returns its folder, or None (and a log line) where that fails."""
    folder = model_folder(model.body, model.detail)
    temporary = None
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        temporary = Path(tempfile.mkdtemp(dir=folder.parent, prefix=".new-"))
        _write(model, temporary)
        try:
            os.replace(temporary, folder)
        except OSError:
            # Another process stored it first, or a broken one lies there: put ours in its place.
            shutil.rmtree(folder, ignore_errors=True)
            os.replace(temporary, folder)
    except (OSError, TypeError) as problem:
        log.warning("the model could not be cached in %s: %s", folder.parent, problem)
        if temporary is not None:
            shutil.rmtree(temporary, ignore_errors=True)
        return None
    evict(keep=folder)
    return folder


def evict(limit_bytes: int = LIMIT_BYTES, keep: Path | None = None) -> list[Path]:
    """Remove the models used longest ago until the rest is within the limit."""
    models = []
    for folder in _entries(cache_folder()):
        try:
            size = sum(f.stat().st_size for f in folder.iterdir())
            models.append(((folder / "index.json").stat().st_mtime, size, folder))
        except OSError:
            continue
    total = sum(size for _, size, _ in models)
    removed = []
    for _, size, folder in sorted(models):
        if total <= limit_bytes:
            break
        if folder == keep:
            continue
        shutil.rmtree(folder, ignore_errors=True)
        total -= size
        removed.append(folder)
    return removed


def clear() -> int:
    """Remove every cached model; returns how many there were."""
    folders = list(_entries(cache_folder()))
    for folder in folders:
        shutil.rmtree(folder, ignore_errors=True)
    return len(folders)


def _entries(folder: Path) -> Iterator[Path]:
    if folder.is_dir():
        for entry in folder.iterdir():
            if (
                entry.is_dir()
                and not entry.name.startswith(".")
                and (entry / "index.json").exists()
            ):
                yield entry


class _Flat:
    """Arrays of one width laid end to end; remembers where each begins and ends."""

    def __init__(self) -> None:
        self.pieces: list[np.ndarray] = []
        self.length = 0

    def add(self, array: np.ndarray) -> list[int]:
        start = self.length
        self.pieces.append(array)
        self.length += len(array)
        return [start, self.length]

    def joined(self, width: int | None, dtype: Any) -> np.ndarray:
        if not self.pieces:
            return np.zeros((0, width) if width else 0, dtype)
        return np.concatenate(self.pieces).astype(dtype, copy=False)


def _write(model: BackModel, folder: Path) -> None:
    flat = {name: _Flat() for name in _ARRAYS}

    def curve(points: np.ndarray) -> list[int]:
        return flat["curves"].add(np.asarray(points, dtype=float).reshape(-1, 3))

    parts = []
    for part in model.parts.values():
        row: dict[str, Any] = {
            "id": part.id,
            "entry": part.entry,
            "kind": part.kind,
            "stratum": int(part.stratum),
            "group": part.group,
            "clings_to": part.clings_to,
            "level": part.level,
            "region": part.region,
            "drawn_thicker": bool(part.drawn_thicker),
            "vertices": flat["vertices"].add(np.asarray(part.mesh.vertices)),
            "faces": flat["faces"].add(np.asarray(part.mesh.faces)),
            "attachments": [[a.kind, a.to, *curve(a.curve)] for a in part.attachments],
        }
        if part.uv is not None:
            row["uv"] = flat["uv"].add(part.uv)
        if part.tendon is not None:
            row["tendon"] = flat["tendon"].add(part.tendon)
        if part.fibres is not None:
            row["fibres"] = [
                *flat["fibres"].add(part.fibres.reshape(-1, 3)),
                *part.fibres.shape[:2],
            ]
        parts.append(row)
    index = {
        "parts": parts,
        "landmarks": {
            name: [*curve(place), np.ndim(place)] for name, place in model.landmarks.items()
        },
        "contacts": [[c.a, c.b, c.kind, *curve(c.place)] for c in model.contacts],
        "notes": _plain_notes(model.notes),
    }
    shapes = {
        "vertices": (3, np.float64),
        "faces": (3, np.int32),
        "uv": (2, np.float32),
        "tendon": (None, np.float32),
        "fibres": (3, np.float64),
        "curves": (3, np.float64),
    }
    for name, (width, dtype) in shapes.items():
        np.save(folder / f"{name}.npy", flat[name].joined(width, dtype))
    index["lengths"] = {name: flat[name].length for name in _ARRAYS}
    (folder / "index.json").write_text(json.dumps(index), encoding="utf-8")


_MESH = Part.__dict__["mesh"]
"""Where a part keeps its mesh."""


class _StoredMesh:
    """The arrays of a mesh on disk; the mesh object is made when first asked for."""

    __slots__ = ("faces", "made", "source", "vertices")

    def __init__(self, vertices: np.ndarray, faces: np.ndarray, source: str) -> None:
        self.vertices, self.faces, self.source = vertices, faces, source
        self.made: trimesh.Trimesh | None = None

    def mesh(self) -> trimesh.Trimesh:
        if self.made is None:
            import trimesh

            self.made = trimesh.Trimesh(self.vertices, self.faces, process=False)
        return self.made


class StoredPart(Part):
    """A part of a model on disk.

    The window draws a thousand parts and asks few of them anything, so that neither the mesh
    library nor its objects are needed before the first picture.
    """

    __slots__ = ()

    @property
    def mesh(self) -> trimesh.Trimesh:
        """The closed mesh, mm."""
        held = _MESH.__get__(self)
        return held.mesh() if isinstance(held, _StoredMesh) else held

    @mesh.setter
    def mesh(self, mesh: Any) -> None:
        # Only the constructor comes here: a part is frozen.
        _MESH.__set__(self, mesh)

    @property
    def vertices(self) -> np.ndarray:
        """The (n, 3) vertices of the mesh, mm."""
        held = _MESH.__get__(self)
        return held.vertices if isinstance(held, _StoredMesh) else np.asarray(held.vertices)

    @property
    def faces(self) -> np.ndarray:
        """The (m, 3) faces of the mesh."""
        held = _MESH.__get__(self)
        return held.faces if isinstance(held, _StoredMesh) else np.asarray(held.faces)

    @property
    def source(self) -> str | None:
        """The name of the stored model that it comes from, None once it has another mesh."""
        held = _MESH.__get__(self)
        return held.source if isinstance(held, _StoredMesh) else None


def _read(folder: Path, body: Body, detail: str) -> BackModel:
    from meshes.catalogue import load_catalogue

    index = json.loads((folder / "index.json").read_text(encoding="utf-8"))
    arrays = {name: np.load(folder / f"{name}.npy", mmap_mode="r") for name in _ARRAYS}
    for name, length in index["lengths"].items():
        if len(arrays[name]) != length:
            raise ValueError(f"{name}.npy holds {len(arrays[name])} rows, not {length}")
    # Plain views of the mapped memory: a memmap's own slicing is many times slower.
    vertices, faces, uv, tendon, fibres, curves = (
        np.asarray(arrays[name]).view(np.ndarray) for name in _ARRAYS
    )
    parts: dict[str, Part] = {}
    for row in index["parts"]:
        attachments = tuple(
            Attachment(kind, to, curves[start:stop]) for kind, to, start, stop in row["attachments"]
        )
        lines = None
        if "fibres" in row:
            start, stop, count, points = row["fibres"]
            lines = fibres[start:stop].reshape(count, points, 3)
        parts[row["id"]] = StoredPart(
            id=row["id"],
            entry=row["entry"],
            kind=row["kind"],
            stratum=row["stratum"],
            group=row["group"],
            mesh=_StoredMesh(
                vertices[slice(*row["vertices"])], faces[slice(*row["faces"])], folder.name
            ),
            uv=uv[slice(*row["uv"])] if "uv" in row else None,
            tendon=tendon[slice(*row["tendon"])] if "tendon" in row else None,
            fibres=lines,
            attachments=attachments,
            clings_to=row["clings_to"],
            level=row["level"],
            region=row["region"],
            drawn_thicker=row["drawn_thicker"],
        )
    landmarks = {
        name: curves[start] if dimensions == 1 else curves[start:stop]
        for name, (start, stop, dimensions) in index["landmarks"].items()
    }
    contacts = tuple(
        Contact(a, b, kind, curves[start:stop]) for a, b, kind, start, stop in index["contacts"]
    )
    return BackModel(body, detail, parts, landmarks, contacts, load_catalogue(), index["notes"])


def _plain_notes(notes: Mapping[str, object]) -> dict[str, Any]:
    """Keep those notes that JSON holds; the others are only of the building."""
    kept = {}
    for name, note in notes.items():
        try:
            json.dumps(note)
        except TypeError:
            log.info("note %r is not kept in the cache", name)
            continue
        kept[name] = note
    return kept
