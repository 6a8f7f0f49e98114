"""Writes a model for other programs: GLB for pictures, STL for printing, JSON for facts.

Files are written beside their place and then renamed, so that a reader never
meets half a file, and the same model always gives the same bytes.
"""

from __future__ import annotations

import difflib
import json
import os
import struct
import tempfile
from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import numpy as np

from meshes.errors import PeelbackError
from meshes.model import BackModel, Part

if TYPE_CHECKING:
    import trimesh

CAUTION = "Teaching model: not for needle or surgical guidance."

AXES = "mm, DICOM LPS: +x to the subject's left, +y to the back, +z to the head"

# Base colours of the plain materials, sRGB (common practice, no source: arteries red,
# veins blue, nerves yellow). The viewer has its own, richer looks.
_COLOURS = {
    "bone": (0.89, 0.85, 0.74),
    "cartilage": (0.74, 0.80, 0.82),
    "disc": (0.70, 0.76, 0.76),
    "ligament": (0.87, 0.84, 0.76),
    "muscle": (0.62, 0.27, 0.24),
    "tendon": (0.88, 0.86, 0.80),
    "fascia": (0.86, 0.84, 0.80),
    "nerve": (0.90, 0.80, 0.30),
    "artery": (0.76, 0.13, 0.13),
    "vein": (0.22, 0.32, 0.66),
    "canal": (0.90, 0.87, 0.72),
    "skin": (0.80, 0.64, 0.54),
    "context": (0.70, 0.69, 0.67),
}


def peelback_version() -> str:
    """Return the installed version, or "0+unknown" when run without being installed."""
    try:
        return version("peelback")
    except PackageNotFoundError:
        return "0+unknown"


def to_gltf_frame(points: np.ndarray) -> np.ndarray:
    """Turn LPS millimetres into glTF metres.

    (X, Y, Z) = (x, z, -y) / 1000: a quarter turn about x and no mirror, so
    that winding and handedness stay. In glTF's frame the subject stands with
    the left at +X, the head at +Y and the front at +Z.

    Parameters
    ----------
    points : (..., 3) float
        LPS, mm.

    Returns
    -------
    (..., 3) float
        glTF axes, m.
    """
    points = np.asarray(points)
    return np.stack([points[..., 0], points[..., 2], -points[..., 1]], axis=-1) / 1000.0


def vertex_normals(vertices: np.ndarray, faces: np.ndarray) -> np.ndarray:
    """Return area-weighted unit normals, (n, 3); +z where the faces of a vertex cancel out."""
    corners = np.asarray(vertices)[faces]
    face_normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals = np.empty((len(vertices), 3))
    slots = np.asarray(faces).ravel()
    for axis in range(3):
        normals[:, axis] = np.bincount(
            slots, np.repeat(face_normals[:, axis], 3), minlength=len(vertices)
        )
    length = np.linalg.norm(normals, axis=1, keepdims=True)
    flat = length[:, 0] < 1e-12
    length[flat] = 1.0
    normals /= length
    normals[flat] = (0.0, 0.0, 1.0)
    return normals


def glb_bytes(parts: Iterable[Part]) -> bytes:
    """Return parts as binary glTF 2.0: one mesh node a part, named by its id.

    Nodes carry no transform; positions and normals are in glTF's own frame
    (:func:`to_gltf_frame`); TEXCOORD_0 is (u, v) along and across the fibres
    for parts that have them. ``extras`` of a node hold kind, stratum and group.
    """
    parts = list(parts)
    kinds = list(dict.fromkeys(part.kind for part in parts))
    document: dict[str, Any] = {
        "asset": {
            "version": "2.0",
            "generator": f"Peelback {peelback_version()}",
            "extras": {
                "caution": CAUTION,
                "unit": "m",
                "axes": "glTF: +x to the subject's left, +y to the head, +z to the front",
            },
        },
        "scene": 0,
        "scenes": [{"name": "back", "nodes": list(range(len(parts)))}],
        "nodes": [],
        "meshes": [],
        "materials": [
            {
                "name": kind,
                "pbrMetallicRoughness": {
                    "baseColorFactor": [*_linear(_COLOURS.get(kind, (0.7, 0.7, 0.7))), 1.0],
                    "metallicFactor": 0.0,
                    "roughnessFactor": 0.7,
                },
            }
            for kind in kinds
        ],
        "accessors": [],
        "bufferViews": [],
    }
    chunks: list[bytes] = []
    filled = 0

    def store(array: np.ndarray, target: int, kind: str, component: int, **limits: Any) -> int:
        nonlocal filled
        data = np.ascontiguousarray(array).tobytes()
        document["bufferViews"].append(
            {"buffer": 0, "byteOffset": filled, "byteLength": len(data), "target": target}
        )
        document["accessors"].append(
            {
                "bufferView": len(document["bufferViews"]) - 1,
                "componentType": component,
                "count": array.size if kind == "SCALAR" else len(array),
                "type": kind,
                **limits,
            }
        )
        chunks.append(data)
        filled += len(data)  # every array is 4-byte, so the next one stays aligned
        return len(document["accessors"]) - 1

    for i, part in enumerate(parts):
        faces = np.asarray(part.mesh.faces)
        points = to_gltf_frame(part.mesh.vertices).astype("<f4")
        normals = vertex_normals(part.mesh.vertices, faces)
        attributes = {
            "POSITION": store(
                points,
                34962,
                "VEC3",
                5126,
                min=[float(v) for v in points.min(axis=0)],
                max=[float(v) for v in points.max(axis=0)],
            ),
            "NORMAL": store((to_gltf_frame(normals) * 1000.0).astype("<f4"), 34962, "VEC3", 5126),
        }
        if part.uv is not None:
            attributes["TEXCOORD_0"] = store(part.uv.astype("<f4"), 34962, "VEC2", 5126)
        document["meshes"].append(
            {
                "name": part.id,
                "primitives": [
                    {
                        "attributes": attributes,
                        "indices": store(faces.ravel().astype("<u4"), 34963, "SCALAR", 5125),
                        "material": kinds.index(part.kind),
                    }
                ],
            }
        )
        document["nodes"].append(
            {
                "name": part.id,
                "mesh": i,
                "extras": {"kind": part.kind, "stratum": part.stratum, "group": part.group},
            }
        )
    document["buffers"] = [{"byteLength": filled}]
    head = json.dumps(document, separators=(",", ":"), ensure_ascii=False).encode()
    head += b" " * (-len(head) % 4)
    body = b"".join(chunks)
    total = 12 + 8 + len(head) + 8 + len(body)
    return b"".join(
        [
            struct.pack("<4sII", b"glTF", 2, total),
            struct.pack("<I4s", len(head), b"JSON"),
            head,
            struct.pack("<I4s", len(body), b"BIN\0"),
            body,
        ]
    )


def stl_bytes(parts: Iterable[Part]) -> bytes:
    """Return parts as one binary STL in LPS millimetres."""
    meshes = [part.mesh for part in parts]
    triangles = np.concatenate([np.asarray(m.vertices)[np.asarray(m.faces)] for m in meshes])
    normals = np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
    length = np.linalg.norm(normals, axis=1, keepdims=True)
    normals = np.divide(normals, length, out=np.zeros_like(normals), where=length > 0)
    record = np.zeros(
        len(triangles), dtype=[("normal", "<3f4"), ("corners", "<9f4"), ("spare", "<u2")]
    )
    record["normal"] = normals
    record["corners"] = triangles.reshape(-1, 9)
    title = f"Peelback {peelback_version()}; mm; LPS; {CAUTION}".encode("ascii")[:80].ljust(80)
    return title + struct.pack("<I", len(triangles)) + record.tobytes()


def model_facts(model: BackModel) -> dict[str, Any]:
    """Return everything about a model but its meshes, as plain values.

    Keys: ``parameters``; ``landmarks`` (id -> [x, y, z] or a list of points);
    ``parts`` (id -> kind, stratum, group, attachments, names, ...);
    ``contacts``; ``catalogue``; and ``version``, ``detail``, ``axes``, ``caution``.
    """
    return {
        "version": peelback_version(),
        "detail": model.detail,
        "axes": AXES,
        "caution": CAUTION,
        "parameters": plain(model.body.as_dict()),
        "landmarks": {name: plain(place) for name, place in model.landmarks.items()},
        "parts": {part_id: _part_facts(part, model) for part_id, part in model.parts.items()},
        "contacts": [
            {"a": c.a, "b": c.b, "kind": c.kind, "place": plain(np.reshape(c.place, (-1, 3)))}
            for c in model.contacts
        ],
        "catalogue": {key: plain(model.catalogue[key]) for key in model.catalogue},
    }


def part_names(part: Part, model: BackModel) -> dict[str, Any]:
    """Return a part's names: english (with side and level), latin, synonyms."""
    entry = model.catalogue[part.entry]
    name_at = getattr(entry, "name_at", None)
    # The row knows both levels of what lies between two; a part may know only the upper one.
    level = entry.level_of(part.name) or part.level if name_at else ""
    english = name_at(level) if name_at else entry.english
    return {
        "english": f"{part.side} {english}" if part.side else english,
        "latin": entry.latin,
        "synonyms": list(entry.synonyms),
    }


def _part_facts(part: Part, model: BackModel) -> dict[str, Any]:
    return {
        "kind": part.kind,
        "stratum": part.stratum,
        "group": part.group,
        "attachments": [
            {"kind": a.kind, "to": a.to, "curve": plain(a.curve)} for a in part.attachments
        ],
        "names": part_names(part, model),
        "entry": part.entry,
        "side": part.side,
        "level": part.level,
        "region": part.region,
        "clings_to": part.clings_to,
        "drawn_thicker": part.drawn_thicker,
    }


def plain(value: Any) -> Any:
    """Turn records, arrays and mappings into what JSON holds; mm to 3 decimals."""
    if isinstance(value, np.ndarray):
        return np.round(value.astype(float), 3).tolist()
    if isinstance(value, np.generic):
        return value.item()
    if is_dataclass(value) and not isinstance(value, type):
        return {f.name: plain(getattr(value, f.name)) for f in fields(value)}
    if isinstance(value, SimpleNamespace):
        return plain(vars(value))
    if isinstance(value, Mapping):
        return {str(key): plain(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain(item) for item in value]
    if isinstance(value, (set, frozenset)):
        return [plain(item) for item in sorted(value)]
    return value


def write_model(model: BackModel, folder: Path) -> list[Path]:
    """Write ``model.glb`` and ``model.json`` into a folder, made if it is not there.

    Raises
    ------
    PeelbackError
        The folder cannot be made or written.
    """
    facts = json.dumps(model_facts(model), ensure_ascii=False, separators=(",", ":"))
    return [
        write_bytes(folder / "model.glb", glb_bytes(model.parts.values())),
        write_bytes(folder / "model.json", facts.encode()),
    ]


PIECES = ("whole", "stratum", "part")
FORMS = ("stl", "glb")


def chosen_parts(model: BackModel, names: Iterable[str]) -> list[Part]:
    """Return the parts that names stand for, in the model's order.

    Parameters
    ----------
    model : BackModel
    names : iterable of str
        A part id ("rhomboid_major.left"), an id without its side, a row or a group of the
        catalogue, or a stratum ("stratum_3").

    Raises
    ------
    PeelbackError
        A name stands for nothing in this model; the message gives the nearest ones.
    """
    found: set[str] = set()
    for name in names:
        parts = [part.id for part in model.parts.values() if name in _handles(part)]
        if not parts:
            known = sorted({h for part in model.parts.values() for h in _handles(part)})
            near = difflib.get_close_matches(name, known, n=3) or ["vertebra_T4", "stratum_3"]
            raise PeelbackError(f"no part is called {name!r}; near it: {', '.join(near)}")
        found.update(parts)
    return [part for part in model.parts.values() if part.id in found]


def _handles(part: Part) -> set[str]:
    """All names by which a part can be asked for."""
    return {part.id, part.name, part.entry, part.group, f"stratum_{part.stratum}"} - {""}


def grouped(parts: Iterable[Part], pieces: str) -> dict[str, list[Part]]:
    """Return parts by the name of the file that they go into.

    Parameters
    ----------
    pieces : {"whole", "stratum", "part"}

    Raises
    ------
    PeelbackError
        ``pieces`` is none of the three.
    """
    if pieces == "whole":
        return {"back": list(parts)}
    if pieces == "part":
        return {part.id: [part] for part in parts}
    if pieces != "stratum":
        raise PeelbackError(f"pieces must be one of {', '.join(PIECES)}, got {pieces!r}")
    strata: dict[str, list[Part]] = {}
    for part in sorted(parts, key=lambda part: part.stratum):
        strata.setdefault(f"stratum_{part.stratum:02d}", []).append(part)
    return strata


def write_pieces(
    model: BackModel, folder: Path, form: str, pieces: str, names: Iterable[str] = ()
) -> list[Path]:
    """Write STL or GLB files: one for the whole ("whole"), one a stratum or one a part.

    STL is in LPS millimetres, z to the head, as printers have it; GLB in glTF's
    metres and axes. Every part is a closed shell of its own; parts that touch are
    not joined, which slicing programs take as one body.

    Parameters
    ----------
    model : BackModel
    folder : Path
    form : {"stl", "glb"}
    pieces : {"whole", "stratum", "part"}
    names : iterable of str
        Only these parts (see :func:`chosen_parts`); all when empty.

    Raises
    ------
    PeelbackError
        A word is none of those allowed, a name is unknown, or the folder cannot be written.
    """
    if form not in FORMS:
        raise PeelbackError(f"form must be one of {', '.join(FORMS)}, got {form!r}")
    names = list(names)
    parts = chosen_parts(model, names) if names else list(model.parts.values())
    make = {"stl": stl_bytes, "glb": glb_bytes}[form]
    return [
        write_bytes(folder / f"{name}.{form}", make(members))
        for name, members in grouped(parts, pieces).items()
    ]


def write_bytes(path: Path, data: bytes) -> Path:
    """Write a file so that it is either there whole or not at all.

    Raises
    ------
    PeelbackError
        The place cannot be written; says why.
    """
    path = Path(path)
    temporary = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
        # mkstemp makes files for their owner only; give what a plain open() would.
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(temporary, 0o666 & ~mask)
        os.replace(temporary, path)
    except OSError as problem:
        if temporary is not None and os.path.exists(temporary):
            os.unlink(temporary)
        raise PeelbackError(f"cannot write {path}: {problem.strerror or problem}") from problem
    return path


def check_place(path: Path) -> None:
    """Find out whether a file could be written, before long work; leaves nothing behind.

    Raises
    ------
    PeelbackError
        The place cannot be written; says why.
    """
    path = Path(path)
    if path.is_dir():
        raise PeelbackError(f"cannot write {path}: it is a folder")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, probe = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        os.close(handle)
        os.unlink(probe)
    except OSError as problem:
        raise PeelbackError(f"cannot write {path}: {problem.strerror or problem}") from problem


def read_glb(path: Path) -> dict[str, trimesh.Trimesh]:
    """Read a GLB back with trimesh: part id -> mesh in glTF's frame (metres)."""
    import trimesh

    scene = trimesh.load(path, file_type="glb", process=False)
    return {name: scene.geometry[scene.graph[name][1]] for name in scene.graph.nodes_geometry}


def _linear(srgb: tuple[float, float, float]) -> list[float]:
    """glTF wants base colours in linear light (IEC 61966-2-1)."""
    return [round(c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4, 4) for c in srgb]
