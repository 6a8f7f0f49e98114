"""What a step of the plan says, with every name spelled out: for paper and for the page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from meshes.catalogue import Catalogue
from meshes.catalogue.plan import PlanStep

PLAN_NOTE = (
    "Order, cuts, keep lists and minutes are common practice, without a source; courses differ."
)


@dataclass(frozen=True, slots=True)
class StepWords:
    """One step as it is read.

    Attributes
    ----------
    id, title, do, cut, hinge, fold, caution, differs : str
    keep, find : tuple of str
        Names in running text.
    stop : tuple of str
        Signs of being too deep.
    each_side : bool
        False when it is done once for both sides.
    minutes : float
    optional : bool
    """

    id: str
    title: str
    do: str
    cut: str
    hinge: str
    fold: str
    keep: tuple[str, ...]
    find: tuple[str, ...]
    stop: tuple[str, ...]
    caution: str
    differs: str
    each_side: bool
    minutes: float
    optional: bool


def step_words(step: PlanStep, catalogue: Catalogue) -> StepWords:
    """Return a step with its names spelled out."""
    hinge = step.hinge.words if step.hinge else ""
    return StepWords(
        id=step.id,
        title=step.title,
        do=step.do,
        cut="; ".join(cut.words for cut in step.cuts),
        hinge=hinge,
        fold=step.fold,
        keep=called_all(step.keep, catalogue),
        find=called_all(step.reveals, catalogue),
        stop=step.stop,
        caution=step.caution,
        differs=step.differs,
        each_side=step.side == "each",
        minutes=step.minutes,
        optional=step.optional,
    )


def called_all(names: Iterable[str], catalogue: Catalogue) -> tuple[str, ...]:
    """Return names of the plan as they are read, without repeats."""
    return tuple(dict.fromkeys(called(name, catalogue) for name in names))


def called(name: str, catalogue: Catalogue) -> str:
    """Return a row, group or part name as it is read: "rhomboid major", "vertebra T6"."""
    if name in catalogue:
        return catalogue[name].english
    if name in catalogue.groups:
        return catalogue.groups[name].english
    try:
        return catalogue.english_of_part(name, with_side=False)
    except KeyError:
        return name.replace("_", " ")
