"""Does a talk hold on the model at hand? Findings by scene, in words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from viewer.state.captions import neighbours_of
from viewer.state.tongue import told
from viewer.state.visibility import visible_parts
from viewer.talk.scenes import Talk, TalkScene

LINE_FOR_HALL = 60
"""Letters of the short line that fit in one row at the size the last row needs; common
practice, no source."""


@dataclass(frozen=True, slots=True)
class SceneReport:
    """What one scene shows, and what is wrong with it.

    Attributes
    ----------
    number : int
        From 1.
    title : str
    shown : int
        Parts seen.
    picked : tuple of str
        Part ids that are picked.
    faults : tuple of str
        The scene does not show what it should.
    remarks : tuple of str
        Worth a look.
    """

    number: int
    title: str
    shown: int
    picked: tuple[str, ...]
    faults: tuple[str, ...]
    remarks: tuple[str, ...]


def check_scene(
    scene: TalkScene, number: int, model: Any, neighbours: frozenset[str]
) -> SceneReport:
    """Judge one scene on a model."""
    state = scene.state
    shown = visible_parts(model, state, neighbours)
    faults, remarks = [], []
    if not shown:
        faults.append(told("nothing is shown"))
    for name in ("selection", "alone", "see_through"):
        if unknown := sorted(set(getattr(state, name)) - set(model.parts)):
            faults.append(told("{field}: {part} is not in this model", part=unknown[0], field=name))
    if unknown := sorted((state.removed | state.hidden) - set(model.parts)):
        remarks.append(
            told(
                "{count} parts taken off are not in this model ({part})",
                count=len(unknown),
                part=unknown[0],
            )
        )
    for part_id in state.selection:
        if part_id in model.parts and part_id not in shown:
            faults.append(told("{part} is picked but not shown", part=part_id))
    if not scene.notes.strip():
        remarks.append(told("no notes"))
    if len(scene.line) > LINE_FOR_HALL:
        remarks.append(
            told(
                "the line has {count} letters; {most} fit in one row",
                count=len(scene.line),
                most=LINE_FOR_HALL,
            )
        )
    return SceneReport(
        number, scene.title, len(shown), state.selection, tuple(faults), tuple(remarks)
    )


def check_talk(talk: Talk, model: Any) -> list[SceneReport]:
    """Judge every scene of a talk on a model."""
    neighbours = neighbours_of(model)
    return [
        check_scene(scene, number, model, neighbours)
        for number, scene in enumerate(talk.scenes, start=1)
    ]
