"""Rapid review: the whole back from skin to cord, each part named, in about a minute.

The order is that of the dissection plan: every step's parts in the order in
which the step names them, then the muscles it lays bare and no step takes away.
Nerves and vessels go with the step that takes them and are not stops of their
own, and of segmental families all levels make one stop.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from viewer.state.captions import common_name, neighbours_of, sentence_case
from viewer.state.plan import Plan
from viewer.state.tongue import told
from viewer.state.view_state import SIDE_CHOICES, SideChoice, ViewState, on_side, sides_of
from viewer.talk.framing import camera_on, corners_of
from viewer.talk.scenes import Talk, TalkScene

REVIEW_SECONDS = 60.0
SECONDS_RANGE = (15.0, 600.0)
SMALL_MM = 130.0
"""Parts lower than this, all in one place, are looked at from nearer."""
NARROW_MM = (40.0, 320.0)
"""So are parts narrower and lower than this: of the whole back they would be a thread."""

_KINDS_TAKEN = frozenset({"skin", "fascia", "muscle", "tendon", "canal"})
_KINDS_LEFT = frozenset({"muscle", "canal"})


@dataclass(frozen=True, slots=True)
class ReviewStop:
    """One name of the review.

    Attributes
    ----------
    name : str
        English, first letter large.
    ids : tuple of str
        Its parts, on the sides that are reviewed.
    step : str
        Title of the step of the plan.
    taken : bool
        True when the step takes it away, False when it only comes into view.
    """

    name: str
    ids: tuple[str, ...]
    step: str
    taken: bool


def review_stops(plan: Plan, model: Any, side: SideChoice = "both") -> list[ReviewStop]:
    """Return the names in plan order, each once."""
    if side not in SIDE_CHOICES:
        raise ValueError(f"side must be one of {', '.join(SIDE_CHOICES)}, got {side!r}")
    edge = neighbours_of(model)
    ever = {
        i for step in plan.steps for s in sides_of(side) for i in plan.removed_by(step, model, s)
    }
    # A family of which something stays is named when it comes into view.
    left = {p.entry for p in model.parts.values() if on_side(p.side, side) and p.id not in ever}
    taken_wholly = {model.parts[i].entry for i in ever} - left
    seen: set[str] = set()
    stops: list[ReviewStop] = []
    for step in plan.steps:
        for names, kinds, taken in (
            (step.removes, _KINDS_TAKEN, True),
            (step.reveals, _KINDS_LEFT, False),
        ):
            ids = {
                i: model.parts[i]
                for name in names
                for i in sorted(plan.parts_of([name], model, side) - edge - seen)
                if model.parts[i].kind in kinds and (model.parts[i].entry in taken_wholly) == taken
            }
            # What covers goes first, where a step names it last (an aponeurosis on its muscle).
            ordered = sorted(ids.values(), key=lambda p: (p.stratum, p.kind != "fascia"))
            for words, members in _named(model, ordered):
                stops.append(ReviewStop(words, tuple(members), step.title, taken))
            seen |= ids.keys()
    return stops


def _group(model: Any, group: str) -> str:
    row = getattr(model.catalogue, "groups", {}).get(group)
    words = told(row.english) if row is not None else ""
    return words if row is not None and words != row.english else group.replace("_", " ")


def _named(model: Any, parts: list[Any]) -> list[tuple[str, list[str]]]:
    """Gather parts under the name that is said: sides, levels and parts of one muscle together."""
    out: dict[str, list[str]] = {}
    for part in parts:
        if part.group and all(
            p.name.startswith(f"{part.group}_")
            for p in model.parts.values()
            if p.group == part.group
        ):
            words = _group(model, part.group)
        elif part.level and part.entry in model.catalogue:
            words = told(model.catalogue[part.entry].english)
        else:
            words = common_name(part, model.catalogue)
        out.setdefault(sentence_case(words), []).append(part.id)
    return list(out.items())


def _margin(extent: np.ndarray) -> float:
    """Return the room about parts of this extent, (3,) mm; 0 shows the whole back."""
    width, _, height = extent
    if height < SMALL_MM:
        return 2.2
    return 1.3 if width < NARROW_MM[0] and height < NARROW_MM[1] else 0.0


def review_talk(
    plan: Plan,
    model: Any,
    side: SideChoice = "both",
    seconds: float = REVIEW_SECONDS,
    look: str = "by_kind",
) -> Talk:
    """Return the review as a talk that plays by itself.

    Parameters
    ----------
    side : {"left", "right", "both"}
        The side that is peeled; the other stays whole.
    seconds : float
        For all of it.
    """
    low, high = SECONDS_RANGE
    if not low <= seconds <= high:
        raise ValueError(f"seconds must lie in {low:g}–{high:g}, got {seconds:g}")
    stops = review_stops(plan, model, side)
    if not stops:
        raise ValueError("this model has none of the parts of the plan")
    # What each step takes, and what all steps before it took, nerves and vessels with it.
    takes = {
        step.title: frozenset(i for s in sides_of(side) for i in plan.removed_by(step, model, s))
        for step in plan.steps
    }
    before: dict[str, frozenset[str]] = {}
    gone: frozenset[str] = frozenset()
    for title, ids in takes.items():
        before[title] = gone
        gone |= ids
    named: frozenset[str] = frozenset()
    scenes = []
    for stop in stops:
        removed = before[stop.step] | (named if stop.taken else takes[stop.step])
        removed -= frozenset(stop.ids)
        margin = _margin(np.ptp(corners_of(model, stop.ids), axis=0))
        state = ViewState(
            removed=removed,
            selection=stop.ids,
            neighbours=False,
            look=look,
            camera=camera_on(model, stop.ids, margin=margin) if margin else None,
        )
        scenes.append(
            TalkScene(state, stop.name, line=told(stop.step), seconds=seconds / len(stops))
        )
        if stop.taken:
            named |= frozenset(stop.ids)
    where = told("both sides" if side == "both" else side)
    return Talk(told("Rapid review, {where}", where=where), tuple(scenes))
