"""``peelback talk FILE``: does a talk open, and does each scene hold on this model?"""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import Any

from meshes.errors import PeelbackError
from viewer.talk.check import SceneReport, check_talk
from viewer.talk.scenes import Talk
from viewer.talk.talk_file import open_talk


def opened(path: Path, scene: int | None) -> Talk:
    """Return the talk of a file; refuses before any model is built.

    Raises
    ------
    PeelbackError
        The file is no talk, or has no such scene.
    """
    talk = open_talk(path)
    if not talk.scenes:
        raise PeelbackError(f"{path.name} holds no scene")
    if scene is not None and not 1 <= scene <= len(talk.scenes):
        raise PeelbackError(f"scene must lie in 1–{len(talk.scenes)}, got {scene}")
    return talk


def reports(talk: Talk, model: Any, scene: int | None) -> list[SceneReport]:
    """Return the reports that were asked for."""
    found = check_talk(talk, model)
    return found if scene is None else [found[scene - 1]]


def as_facts(talk: Talk, found: list[SceneReport]) -> dict[str, Any]:
    """Return talk and reports as plain JSON values."""
    scenes = [
        {
            **asdict(report),
            "line": talk.scenes[report.number - 1].line,
            "notes": talk.scenes[report.number - 1].notes,
            "seconds": talk.scenes[report.number - 1].seconds,
        }
        for report in found
    ]
    return {"title": talk.title, "scenes": scenes, "good": not any(r.faults for r in found)}


def as_words(talk: Talk, found: list[SceneReport], *, notes: bool) -> list[str]:
    """Return lines for a terminal."""
    lines = [f"{talk.title}: {len(talk.scenes)} scenes"]
    for report in found:
        lines.append(f"{report.number:3} {report.title} ({report.shown} parts seen)")
        lines += [f"      fault: {words}" for words in report.faults]
        lines += [f"      {words}" for words in report.remarks]
        if notes:
            scene = talk.scenes[report.number - 1]
            lines += [f"      {row}" for row in (scene.line, *scene.notes.splitlines()) if row]
    faults = sum(bool(r.faults) for r in found)
    lines.append(f"{faults} scenes with faults" if faults else "every scene holds")
    return lines
