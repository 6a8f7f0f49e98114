"""Talk files: small JSON, written whole or not at all, refused with a reason.

Shape of the file (UTF-8)::

    {"format": "peelback talk", "version": 1, "program": "0.1.0",
     "title": "…",
     "scenes": [{"title": "…", "line": "…", "notes": "…", "seconds": 0,
                 "state": {fields of ViewState that differ from the default}}]}

``line``, ``notes`` and ``seconds`` may be left out. States have the form of
working states (``viewer.state.working_file``); part ids that a model lacks are
kept, so that a talk survives the way between versions.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, NoReturn

from meshes.errors import PeelbackError
from viewer.state.view_state import ViewState
from viewer.state.working_file import (
    WorkingFileError,
    read_text,
    state_from_json,
    state_to_json,
    write_atomically,
)
from viewer.talk.scenes import SCENES_LIMIT, UNTITLED, Talk, TalkScene

FORMAT = "peelback talk"
VERSION = 1
SUFFIX = ".talk"
_SCENE_FIELDS = {"title", "line", "notes", "seconds", "state"}


class TalkFileError(PeelbackError):
    """A file is no talk of this program."""


def scene_to_json(scene: TalkScene) -> dict[str, Any]:
    """Return a scene as plain JSON values, the state without what is default."""
    plain = state_to_json(ViewState())
    state = {k: v for k, v in state_to_json(scene.state).items() if v != plain[k]}
    record: dict[str, Any] = {"title": scene.title}
    for name in ("line", "notes", "seconds"):
        if value := getattr(scene, name):
            record[name] = value
    return {**record, "state": state}


def talk_to_json(talk: Talk, program: str) -> dict[str, Any]:
    """Return a talk as plain JSON values."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "program": program,
        "title": talk.title,
        "scenes": [scene_to_json(scene) for scene in talk.scenes],
    }


def save_talk(path: Path, talk: Talk, program: str) -> None:
    """Write a talk; the file is replaced as a whole.

    Raises
    ------
    OSError
        The place cannot be written to; the old file is untouched.
    """
    text = json.dumps(talk_to_json(talk, program), indent=1, ensure_ascii=False)
    write_atomically(path, text + "\n")


def open_talk(path: Path) -> Talk:
    """Read a talk.

    Raises
    ------
    TalkFileError
        With one line that says what is wrong with the file.
    """
    path = Path(path)
    return talk_from_text(read_text(path, "a talk", TalkFileError), path.name)


def talk_from_text(text: str, name: str) -> Talk:
    """Read a talk from the text of its file; ``name`` stands in the refusal."""
    try:
        record = json.loads(text, parse_constant=_no_number)
    except json.JSONDecodeError as error:
        raise TalkFileError(
            f"{name} is broken at line {error.lineno}; nothing was opened"
        ) from None
    except (RecursionError, ValueError) as error:
        raise TalkFileError(f"{name} is broken ({error}); nothing was opened") from None
    if not isinstance(record, dict) or record.get("format") != FORMAT:
        raise TalkFileError(f"{name} is not a talk of Peelback")
    version = record.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise TalkFileError(f"{name} names no version; nothing was opened")
    if version > VERSION:
        raise TalkFileError(
            f"{name} was saved by a newer Peelback (file version {version}, this one reads up "
            f"to {VERSION})"
        )
    scenes = record.get("scenes")
    if not isinstance(scenes, list):
        raise TalkFileError(f"{name} holds no list of scenes")
    if len(scenes) > SCENES_LIMIT:
        raise TalkFileError(f"{name} holds {len(scenes)} scenes; up to {SCENES_LIMIT} are read")
    made = []
    for number, values in enumerate(scenes, start=1):
        try:
            made.append(_scene_from_json(values))
        except (PeelbackError, ValueError, TypeError, OverflowError) as error:
            raise TalkFileError(f"scene {number} of {name}: {error}") from None
    try:
        return Talk(_text(record, "title", UNTITLED), tuple(made))
    except ValueError as error:
        raise TalkFileError(f"{name}: {error}") from None


def _no_number(word: str) -> NoReturn:
    raise ValueError(f"{word} is no number")


def _text(values: dict[str, Any], name: str, default: str = "") -> str:
    value = values.get(name, default)
    if not isinstance(value, str):
        raise ValueError(f"{name} must be text, got {value!r}")
    return value


def _scene_from_json(values: Any) -> TalkScene:
    if not isinstance(values, dict):
        raise ValueError(f"must be an object, got {type(values).__name__}")
    if unknown := sorted(values.keys() - _SCENE_FIELDS):
        raise ValueError(f"unknown field {unknown[0]!r}")
    if "state" not in values:
        raise ValueError("holds no state")
    seconds = values.get("seconds", 0)
    if isinstance(seconds, bool) or not isinstance(seconds, (int, float)):
        raise ValueError(f"seconds must be a number, got {seconds!r}")
    try:
        state = state_from_json(values["state"])
    except WorkingFileError as error:
        raise ValueError(str(error)) from None
    return TalkScene(
        state, _text(values, "title"), _text(values, "notes"), _text(values, "line"), float(seconds)
    )
