"""What a step of the plan says, with every name spelled out: for paper and for the page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from meshes.catalogue import Catalogue
from meshes.catalogue.levels import placeholders, spoken
from meshes.catalogue.plan import PlanStep
from viewer.state.tongue import told

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
    hinge = told(step.hinge.words) if step.hinge else ""
    return StepWords(
        id=step.id,
        title=told(step.title),
        do=told(step.do),
        cut="; ".join(told(cut.words) for cut in step.cuts),
        hinge=hinge,
        fold=told(step.fold),
        keep=called_all(step.keep, catalogue),
        find=called_all(step.reveals, catalogue),
        stop=tuple(map(told, step.stop)),
        caution=told(step.caution),
        differs=told(step.differs),
        each_side=step.side == "each",
        minutes=step.minutes,
        optional=step.optional,
    )


def name_of(part_name: str, catalogue: Catalogue) -> str:
    """Return the name of a part (id, with or without side) without side, as it is shown.

    Raises
    ------
    KeyError
        No such part.
    """
    name = part_name.partition(".")[0]
    row = catalogue.entry_of_part(name)
    level = row.level_of(name)
    if level and row.part_english:
        words = {key: spoken(value) for key, value in placeholders(level).items()}
        return told(row.part_english, **words)
    return told(row.english)


def called_all(names: Iterable[str], catalogue: Catalogue) -> tuple[str, ...]:
    """Return names of the plan as they are read, without repeats."""
    return tuple(dict.fromkeys(called(name, catalogue) for name in names))


def called(name: str, catalogue: Catalogue) -> str:
    """Return a row, group or part name as it is read: "rhomboid major", "vertebra T6"."""
    if name in catalogue:
        return told(catalogue[name].english)
    if name in catalogue.groups:
        return told(catalogue.groups[name].english)
    try:
        return name_of(name, catalogue)
    except KeyError:
        return told(name.replace("_", " "))
