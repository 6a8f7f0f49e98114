"""Questions that join a structure to the plan: which step meets it, what a cut would lose.

Right and wrong are read off the plan and off what covers what on this model: a step meets a
structure when it takes it off, or when what is in view of it grows by that step; a cut loses
what a blade along the marked line goes into (`meshes.questions.rehearse`).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from meshes.catalogue.plan import PlanStep, part_ids_of, removed_by, steps
from viewer.state.captions import sentence_case
from viewer.state.tongue import figure, told
from viewer.state.view_state import BOTH_SIDES

if TYPE_CHECKING:
    import random

    from meshes.model import BackModel
    from meshes.questions.rehearse import Loss
    from viewer.study.questions import Question, QuestionMaker

TAKES_PROMPT = "Which step of the plan takes the tagged structure off, or folds it away?"
SHOWS_PROMPT = "Which step of the plan brings the tagged structure into view?"
LOSE_PROMPT = (
    "A blade follows the white line, {mm} mm deep, in the layer with the tag. "
    "Which of these would be lost?"
)
LEAST_GAIN = 0.05
"""A step brings a structure into view when so much more of its area is seen after it."""
DEPTHS_MM = (6.0, 10.0, 15.0, 22.0, 30.0)
LEAST_LOST_MM = 2.0
"""What is lost is met along so much of the line at least; what is not, nowhere."""
NEAR_LINE_MM = 8.0
"""The tag stands so near to the line."""
TUBES = ("nerve", "artery", "vein")
_LOST_KINDS = ("nerve", "artery", "vein", "muscle", "ligament", "fascia")


@dataclass(frozen=True, slots=True)
class PlanPlaces:
    """Where the parts of a model come in the plan.

    Attributes
    ----------
    takes : mapping of str to PlanStep
        The step that takes a part off.
    shows : mapping of str to tuple of PlanStep
        Steps that say that they bring it to light, in plan order.
    speaks : mapping of str to frozenset of str
        Ids of all steps that speak of it: none of them is a wrong option.
    """

    takes: Mapping[str, PlanStep]
    shows: Mapping[str, tuple[PlanStep, ...]]
    speaks: Mapping[str, frozenset[str]]


def plan_places(model: BackModel) -> PlanPlaces:
    """Return where the parts of a model come in the plan."""
    takes: dict[str, PlanStep] = {}
    shows: dict[str, tuple[PlanStep, ...]] = {}
    speaks: dict[str, frozenset[str]] = {}
    for step in steps():
        removed = set(removed_by(step, "both", model.catalogue)) & set(model.parts)
        for part_id in removed:
            # Nerves and vessels go with the layer that holds them, and are to be kept before:
            # of them it is asked which step brings them to light.
            if model.parts[part_id].kind not in TUBES:
                takes.setdefault(part_id, step)
        for name in step.reveals:
            for part_id in part_ids_of(name, model.catalogue):
                if part_id in model.parts and step not in shows.get(part_id, ()):
                    shows[part_id] = (*shows.get(part_id, ()), step)
        named = {i for n in (*step.reveals, *step.keep) for i in part_ids_of(n, model.catalogue)}
        for part_id in removed | named:
            speaks[part_id] = speaks.get(part_id, frozenset()) | {step.id}
    return PlanPlaces(takes, shows, speaks)


def may_ask(maker: QuestionMaker, kind: str, part_id: str) -> bool:
    """True where the plan gives rise to a question of a kind on a part."""
    places = maker.plan_places
    if kind == "step":
        return part_id in places.takes or part_id in places.shows
    step = places.takes.get(part_id)
    part = maker.model.parts[part_id]
    return (
        step is not None
        and bool(step.cuts)
        and part.kind in ("muscle", "fascia")
        and part.side in BOTH_SIDES
        and not part.level
    )


def step_question(
    maker: QuestionMaker, rng: random.Random, part_id: str, state, _ray: int
) -> Question | None:
    """Ask which step takes the tagged structure off or, where none does, brings it into view."""
    from viewer.study.questions import chosen

    places = maker.plan_places
    right, prompt = places.takes.get(part_id), TAKES_PROMPT
    if right is None:
        right, prompt = bringing_step(maker, part_id), SHOWS_PROMPT
    if right is None:
        return None
    others = [s for s in steps() if s.id not in places.speaks[part_id]]
    others.sort(key=lambda step: abs(step.number - right.number))
    # The next steps are the likeliest mistakes, but not always the same three.
    near = others[:5]
    rng.shuffle(near)
    question = chosen(
        maker, rng, "step", part_id, state, told(prompt), right.title, (s.title for s in near)
    )
    if question is None:
        return None
    number = [step.id for step in steps()].index(right.id) + 1
    does = told("Step {n}, {title}: {do}", n=number, title=told(right.title), do=told(right.do))
    return replace(question, explanation=f"{does} {question.explanation}")


def bringing_step(maker: QuestionMaker, part_id: str) -> PlanStep | None:
    """Return the step by which most of a part comes into view, None where none brings much."""
    best, most = None, LEAST_GAIN
    for step in maker.plan_places.shows.get(part_id, ()):
        gain = seen_after(maker, step, part_id) - seen_after(maker, step, part_id, without=True)
        if gain > most:
            best, most = step, gain
    return best


def seen_after(
    maker: QuestionMaker, step: PlanStep, part_id: str, *, without: bool = False
) -> float:
    """Return the share of a part in view when a step and all that it needs are done.

    Parameters
    ----------
    without : bool
        All that it needs is done, and the step itself is not.
    """
    by_id = {each.id: each for each in steps()}
    open_ids, done = [step.id], set()
    while open_ids:
        each = open_ids.pop()
        if each not in done:
            done.add(each)
            open_ids += by_id[each].needs
    if without:
        done.discard(step.id)
    gone = {i for each in done for i in removed_by(by_id[each], "both", maker.model.catalogue)}
    return maker.layers.in_view(part_id, frozenset(set(maker.layers.ids) - gone)) or 0.0


def lose_question(
    maker: QuestionMaker, rng: random.Random, part_id: str, state, _ray: int
) -> Question | None:
    """Ask what a blade along the plan's line, deeper than the plan's, would go into."""
    from viewer.study.questions import chosen

    model, step = maker.model, maker.plan_places.takes[part_id]
    there = maker.there(state)
    open_places, _ = maker.layers.places_in_view(part_id, there)
    lines = [
        line.points
        for line in maker.rehearser.plan_lines(step.id, model.parts[part_id].side)
        if len(line.points) > 1
    ]
    rng.shuffle(lines)
    for points in lines:
        apart = np.linalg.norm(open_places[:, None] - points[None, ::4], axis=2).min(axis=1)
        if not len(apart) or apart.min() > NEAR_LINE_MM:
            continue
        place = tuple(float(c) for c in open_places[int(apart.argmin())])
        for depth in DEPTHS_MM:
            found = maker.rehearser.rehearse(points, part_id, depth, step.id, there)
            own = model.parts[part_id].group
            lost = [
                loss.part_id
                for loss in found.losses
                if loss.length_mm >= LEAST_LOST_MM
                and loss.part_id in maker.named
                and model.parts[loss.part_id].kind in _LOST_KINDS
                and not (own and model.parts[loss.part_id].group == own)
            ]
            if lost:
                break
        else:
            continue
        right = next((loss for loss in lost if loss in found_kept(found)), lost[0])
        touched = {
            maker.english(loss.part_id) for loss in found.losses if loss.part_id in maker.named
        }
        touched |= {maker.english(i) for i in maker.family_of_layer(part_id)}
        near = [clear.part_id for clear in found.clearances if clear.part_id in maker.named]
        near += [i for i in maker.neighbours(right)[:14] if i not in near]
        wrong = [words for i in near if (words := maker.english(i)) not in touched]
        prompt = told(LOSE_PROMPT, mm=figure(depth))
        question = chosen(
            maker, rng, "lose", part_id, state, prompt, maker.english(right), wrong,
            shows=(right,), through=(part_id,),
        )  # fmt: skip
        if question is not None:
            line = tuple(tuple(float(c) for c in point) for point in points)
            why = lost_in_words(maker, next(x for x in found.losses if x.part_id == right))
            told_all = f"{why} {maker.explanation(right)}"
            return replace(question, place=place, line=line, explanation=told_all)
    return None


def lost_in_words(maker: QuestionMaker, loss: Loss) -> str:
    """Return how deep under the line something lies, and how much of the line meets it."""
    words = told(
        "{name}: {depth} mm under the line at the nearest, met along {length} mm of it.",
        name=sentence_case(maker.english(loss.part_id)),
        depth=figure(loss.depth_mm, ".0f"),
        length=figure(loss.length_mm, ".0f"),
    )
    return words + " " + told("The step keeps it.") if loss.kept else words


def found_kept(found) -> frozenset[str]:
    """Return which of the losses the step wants kept."""
    return frozenset(loss.part_id for loss in found.losses if loss.kept)
