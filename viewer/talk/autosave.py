"""A talk being made is kept on the side, so that a crash loses a minute at most."""

from __future__ import annotations

import json
import logging
import os
from dataclasses import dataclass
from pathlib import Path

import platformdirs

from viewer.state.tongue import told
from viewer.state.working_file import put_aside, write_atomically
from viewer.talk.scenes import Talk
from viewer.talk.talk_file import TalkFileError, talk_from_text, talk_to_json

LOG = logging.getLogger("peelback")


@dataclass(frozen=True, slots=True)
class Recovered:
    """A talk that was never saved, and the file it came from (None: it had none)."""

    talk: Talk
    file: Path | None


def autosave_path() -> Path:
    """Return the file on the side, in the platform's data folder."""
    given = os.environ.get("PEELBACK_CONFIG")
    folder = Path(given) if given else Path(platformdirs.user_data_dir("peelback", False))
    return folder / "unsaved-talk.json"


def keep_unsaved(talk: Talk, file: Path | None, program: str) -> str:
    """Write the talk to the side; returns what the user must be told, "" when all is well."""
    record = talk_to_json(talk, program)
    record["file"] = str(file) if file else ""
    try:
        write_atomically(autosave_path(), json.dumps(record, ensure_ascii=False) + "\n")
    except OSError as error:
        return told(
            "The talk could not be kept on the side in {path}: {why}.",
            path=autosave_path(),
            why=error.strerror,
        )
    return ""


def forget_unsaved() -> None:
    """Take the file on the side away: the talk is in its own file, or was given up."""
    try:
        autosave_path().unlink(missing_ok=True)
    except OSError as error:
        LOG.warning("the talk on the side stays: %s", error)


def recover() -> tuple[Recovered | None, str]:
    """Read what was left on the side.

    Returns
    -------
    recovered : Recovered or None
    message : str
        What the user must be told when it cannot be read; the file is then put
        aside under another name, never deleted.
    """
    path = autosave_path()
    try:
        text = path.read_text(encoding="utf-8")
    except FileNotFoundError:
        return None, ""
    except (OSError, UnicodeDecodeError) as error:
        return None, _put_aside(path, str(error))
    try:
        talk = talk_from_text(text, told("the unsaved talk"))
        file = json.loads(text).get("file") or ""
    except TalkFileError as error:
        return None, _put_aside(path, str(error))
    return Recovered(talk, Path(file) if isinstance(file, str) and file else None), ""


def _put_aside(path: Path, why: str) -> str:
    aside = put_aside(path)
    if aside is None:
        return told("An unsaved talk in {path} could not be read ({why}).", path=path, why=why)
    return told(
        "An unsaved talk could not be read ({why}). It was kept as {path}.", path=aside, why=why
    )
