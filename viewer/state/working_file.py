"""Saved working states: a small JSON file, written whole or not at all.

Shape of the file::

    {"format": "peelback working state", "version": 1,
     "program": "0.1.0", "body": {parameters by name},
     "detail": "full", "state": {fields of ViewState}}

Sets are sorted lists, pairs of sides are {"left": …, "right": …}. Ids that the
present model does not have are kept, so that nothing is lost when a state
travels between versions.
"""

from __future__ import annotations

import json
import os
import tempfile
from dataclasses import asdict, dataclass, fields
from pathlib import Path
from typing import Any

from meshes.catalogue.folds import Laid
from meshes.errors import PeelbackError
from viewer.state.cut_line import CutLine, cut_from_json
from viewer.state.section_plane import SectionPlane, section_from_json
from viewer.state.tongue import told
from viewer.state.view_state import Camera, Pin, Sides, ViewState

FORMAT = "peelback working state"
VERSION = 1
SUFFIX = ".peelback"
SIZE_LIMIT = 20_000_000


class WorkingFileError(PeelbackError):
    """A file is no working state of this program."""


@dataclass(frozen=True, slots=True)
class WorkingFile:
    """What a file holds: the body it belongs to and the state."""

    state: ViewState
    body: dict[str, Any]
    detail: str = "full"


def write_atomically(path: Path, text: str) -> None:
    """Write a text file so that either the old or the new one is there, never half of it.

    Raises
    ------
    OSError
        The folder cannot be written to; the old file is untouched.
    """
    path = Path(path)
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, temporary = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(temporary, path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise


def put_aside(path: Path) -> Path | None:
    """Give a file that cannot be read another name beside it; None where that cannot be done.

    It is never deleted, and what was put aside before is not written over.
    """
    number = 1
    while (aside := path.with_name(f"{path.stem}.broken-{number}{path.suffix}")).exists():
        number += 1
    try:
        path.rename(aside)
    except OSError:
        return None
    return aside


def _plain(value: Any) -> Any:
    if isinstance(value, Sides):
        return {"left": _plain(value.left), "right": _plain(value.right)}
    if isinstance(value, frozenset):
        return sorted(value)
    if isinstance(value, (Pin, Camera, SectionPlane, CutLine, Laid)):
        return asdict(value)
    if isinstance(value, tuple):
        return [_plain(v) for v in value]
    return value


def state_to_json(state: ViewState) -> dict[str, Any]:
    """Return a state as plain JSON values."""
    return {f.name: _plain(getattr(state, f.name)) for f in fields(ViewState)}


def state_from_json(values: dict[str, Any]) -> ViewState:
    """Make a state from plain JSON values.

    Raises
    ------
    WorkingFileError
        A field is unknown or holds something else than it should.
    """
    if not isinstance(values, dict):
        raise WorkingFileError(told("state must be an object, got {given}", given=brief(values)))
    known = {f.name for f in fields(ViewState)}
    made: dict[str, Any] = {}
    for name, value in values.items():
        if name not in known:
            raise WorkingFileError(told("unknown field {name} in state", name=repr(name)))
        try:
            made[name] = _read_field(name, value)
        except (TypeError, KeyError, AttributeError):
            why = told("{what} is wanted, got {given}", what=told(WANTED[name]), given=brief(value))
            raise WorkingFileError(_unread(name, why)) from None
        except (ValueError, PeelbackError) as error:
            raise WorkingFileError(_unread(name, error)) from None
    try:
        return ViewState(**made)
    except (TypeError, ValueError) as error:
        raise WorkingFileError(str(error)) from None


def brief(value: Any) -> str:
    """Return a value of a file as it stands there, shortened."""
    words = json.dumps(value, default=str)
    return words if len(words) <= 60 else f"{words[:57]}…"


def _unread(name: str, why: object) -> str:
    return told("state field {name} cannot be read: {why}", name=repr(name), why=why)


_SIDES = "an object with “left” and “right”"
WANTED: dict[str, str] = {
    **{f.name: "another kind of value" for f in fields(ViewState)},
    **dict.fromkeys(("peeled", "strata_off", "ticked", "overridden"), _SIDES),
    **dict.fromkeys(("removed", "hidden", "see_through", "alone"), "a list of names"),
    **dict.fromkeys(("selection", "covers_of"), "a list of names"),
    "measure": "a list of places of three numbers",
    "folds": "a list of objects with “fold_id” and “share”",
    "pins": "a list of objects with “point” and “text”",
    "camera": "an object with “position”, “focal_point”, “view_up” and “parallel_scale”",
    "section": "an object that places the section",
    "cut_line": "an object with the cut's places",
    "label_density": "a number",
}
"""What each field of a state must hold, for those whose value has another shape."""
KINDS = {"bool": "true or false", "str": "text", "int": "a whole number", "float": "a number"}


def _words(value: Any) -> frozenset[str]:
    if not isinstance(value, list) or not all(isinstance(v, str) for v in value):
        raise ValueError(told("a list of names is wanted"))
    return frozenset(value)


def _whole(value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise ValueError(told("a whole number is wanted, got {given}", given=repr(value)))
    return value


def _point(value: Any) -> tuple[float, float, float]:
    x, y, z = (float(v) for v in value)
    return (x, y, z)


def _read_field(name: str, value: Any) -> Any:
    if name == "peeled":
        return Sides(_whole(value["left"]), _whole(value["right"]))
    if name == "strata_off":
        return Sides(
            frozenset(_whole(v) for v in value["left"]),
            frozenset(_whole(v) for v in value["right"]),
        )
    if name in ("ticked", "overridden"):
        return Sides(_words(value["left"]), _words(value["right"]))
    if name in ("removed", "hidden", "see_through", "alone"):
        return _words(value)
    if name in ("selection", "covers_of"):
        _words(value)
        return tuple(value)
    if name == "measure":
        return tuple(_point(p) for p in value)
    if name == "folds":
        return tuple(Laid(str(f["fold_id"]), float(f["share"])) for f in value)
    if name == "pins":
        return tuple(
            Pin(_point(p["point"]), str(p["text"]), str(p.get("part_id", ""))) for p in value
        )
    if name == "camera":
        if value is None:
            return None
        return Camera(
            _point(value["position"]),
            _point(value["focal_point"]),
            _point(value["view_up"]),
            float(value["parallel_scale"]),
            bool(value.get("parallel", True)),
        )
    if name == "section":
        return section_from_json(value)
    if name == "cut_line":
        return cut_from_json(value)
    if name == "label_density":
        return float(value)
    default = getattr(ViewState(), name)
    if not isinstance(value, type(default)):
        kind = KINDS.get(type(default).__name__, "another kind of value")
        raise ValueError(told("{what} is wanted, got {given}", what=told(kind), given=repr(value)))
    return value


def save_working_file(
    path: Path, state: ViewState, body: dict[str, Any], detail: str, program: str
) -> None:
    """Write a working state; the file is replaced as a whole."""
    record = {
        "format": FORMAT,
        "version": VERSION,
        "program": program,
        "body": body,
        "detail": detail,
        "state": state_to_json(state),
    }
    write_atomically(path, json.dumps(record, indent=1, ensure_ascii=False, sort_keys=True) + "\n")


def read_text(path: Path, refusal: type[PeelbackError], foreign: str) -> str:
    """Return the text of one of this program's own files.

    Parameters
    ----------
    path : Path
    refusal : type
        Raised, with one line, when it cannot be read, is too large or is no text.
    foreign : str
        That line for a file that is no text.
    """
    try:
        size = path.stat().st_size
        if size > SIZE_LIMIT:
            raise refusal(
                told(
                    "{file} is too large: {size} MB, up to {most} are read",
                    file=path.name,
                    size=f"{size / 1e6:.0f}",
                    most=f"{SIZE_LIMIT / 1e6:.0f}",
                )
            )
        return path.read_text(encoding="utf-8")
    except OSError as error:
        raise refusal(told("{path} cannot be read: {why}", path=path, why=error.strerror)) from None
    except UnicodeDecodeError:
        raise refusal(foreign) from None


def check_version(version: Any, newest: int, name: str, refusal: type[PeelbackError]) -> None:
    """Refuse a file that names no version, or one that this program does not know."""
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise refusal(told("{file} names no version; nothing was opened", file=name))
    if version > newest:
        raise refusal(
            told(
                "{file} was saved by a newer Peelback (file version {version}, this one reads up "
                "to {newest})",
                file=name,
                version=version,
                newest=newest,
            )
        )


def open_working_file(path: Path) -> WorkingFile:
    """Read a working state.

    Raises
    ------
    WorkingFileError
        With one line that says what is wrong with the file.
    """
    path = Path(path)
    foreign = told("{file} is not a working state of Peelback", file=path.name)
    text = read_text(path, WorkingFileError, foreign)
    try:
        record = json.loads(text)
    except json.JSONDecodeError as error:
        raise WorkingFileError(
            told(
                "{file} is broken at line {line}; nothing was opened",
                file=path.name,
                line=error.lineno,
            )
        ) from None
    except RecursionError:
        raise WorkingFileError(
            told("{file} is broken; nothing was opened", file=path.name)
        ) from None
    if not isinstance(record, dict) or record.get("format") != FORMAT:
        raise WorkingFileError(foreign)
    check_version(record.get("version"), VERSION, path.name, WorkingFileError)
    state = state_from_json(record.get("state", {}))
    body = record.get("body", {})
    if not isinstance(body, dict):
        raise WorkingFileError(told("body of {file} must be an object", file=path.name))
    detail = record.get("detail", "full")
    if detail not in ("preview", "full"):
        raise WorkingFileError(
            told("detail must be preview or full, got {given}", given=repr(detail))
        )
    return WorkingFile(state, body, detail)
