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
from viewer.state.tongue import told
from viewer.state.view_state import ViewState
from viewer.state.working_file import (
    WorkingFileError,
    brief,
    check_version,
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
    """A file is no talk of this program, or a broken one."""


class ForeignFileError(TalkFileError):
    """What lies there cannot be read as a talk; it may be another file of this program."""


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
    text = read_text(
        path, ForeignFileError, told("{file} is not a talk of Peelback", file=path.name)
    )
    return talk_from_text(text, path.name)


def talk_from_text(text: str, name: str) -> Talk:
    """Read a talk from the text of its file; ``name`` stands in the refusal."""
    try:
        record = json.loads(text, parse_constant=_no_number)
    except json.JSONDecodeError as error:
        raise TalkFileError(
            told(
                "{file} is broken at line {line}; nothing was opened", file=name, line=error.lineno
            )
        ) from None
    except RecursionError:
        raise TalkFileError(told("{file} is broken; nothing was opened", file=name)) from None
    except ValueError as error:
        raise TalkFileError(
            told("{file} is broken ({why}); nothing was opened", file=name, why=error)
        ) from None
    if not isinstance(record, dict) or record.get("format") != FORMAT:
        raise ForeignFileError(told("{file} is not a talk of Peelback", file=name))
    check_version(record.get("version"), VERSION, name, TalkFileError)
    scenes = record.get("scenes")
    if not isinstance(scenes, list):
        raise TalkFileError(told("{file} holds no list of scenes", file=name))
    if len(scenes) > SCENES_LIMIT:
        raise TalkFileError(
            told(
                "{file} holds {count} scenes; up to {most} are read",
                file=name,
                count=len(scenes),
                most=SCENES_LIMIT,
            )
        )
    made = []
    for number, values in enumerate(scenes, start=1):
        try:
            made.append(_scene_from_json(values))
        except (PeelbackError, ValueError, TypeError, OverflowError) as error:
            raise TalkFileError(
                told("scene {n} of {file}: {why}", n=number, file=name, why=error)
            ) from None
    try:
        return Talk(_text(record, "title", UNTITLED), tuple(made))
    except ValueError as error:
        raise TalkFileError(f"{name}: {error}") from None


def _no_number(word: str) -> NoReturn:
    raise ValueError(told("{word} is no number", word=word))


def _text(values: dict[str, Any], name: str, default: str = "") -> str:
    value = values.get(name, default)
    if not isinstance(value, str):
        raise ValueError(told("{name} must be text, got {given}", name=name, given=repr(value)))
    return value


def _scene_from_json(values: Any) -> TalkScene:
    if not isinstance(values, dict):
        raise ValueError(told("must be an object, got {given}", given=brief(values)))
    if unknown := sorted(values.keys() - _SCENE_FIELDS):
        raise ValueError(told("unknown field {name}", name=repr(unknown[0])))
    if "state" not in values:
        raise ValueError(told("holds no state"))
    seconds = values.get("seconds", 0)
    if isinstance(seconds, bool) or not isinstance(seconds, (int, float)):
        raise ValueError(told("seconds must be a number, got {given}", given=repr(seconds)))
    try:
        state = state_from_json(values["state"])
    except WorkingFileError as error:
        raise ValueError(str(error)) from None
    return TalkScene(
        state, _text(values, "title"), _text(values, "notes"), _text(values, "line"), float(seconds)
    )
