"""What a lab sheet holds, before it is drawn."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from meshes.catalogue.plan import PlanStep, part_ids_of
from meshes.catalogue.plan import steps as all_steps
from meshes.catalogue.records import Entry
from meshes.model import BackModel
from viewer.state.tongue import counted, figure, told

SIDES = {"both": "both sides", "left": "the left side", "right": "the right side"}


class Chosen(Protocol):
    """What ``sheet_in_words`` needs to know of a choice."""

    paper: str
    blank: bool
    side: str
    steps: tuple[str, ...]
    short: bool


def muscles_of(chosen: Iterable[PlanStep], model: BackModel) -> list[Entry]:
    """Return the rows of muscles that steps take away or bring to light, in depth order."""
    catalogue = model.catalogue
    there = {part.entry for part in model.parts.values()}
    rows: dict[str, Entry] = {}
    for record in chosen:
        for name in (*record.removes, *record.reveals):
            for part_id in part_ids_of(name, catalogue):
                entry = catalogue.entry_of_part(part_id)
                if entry.kind == "muscle" and entry.id in there:
                    rows[entry.id] = entry
    return sorted(rows.values(), key=lambda entry: entry.stratum)


def sheet_in_words(choice: Chosen, model: BackModel) -> str:
    """Return a sentence or two on what the sheet will hold."""
    records = [step for step in all_steps() if step.id in choice.steps]
    each = sum(step.minutes for step in records if step.side == "each")
    once = sum(step.minutes for step in records if step.side != "each")
    count = counted(len(records), "{count} step", "{count} steps")
    head = f"{choice.paper}, {count}, {told(SIDES[choice.side])}"
    minutes = [told("{n} minutes a side", n=figure(each))] if each else []
    minutes += [told("{n} minutes for both together", n=figure(once))] if once else []
    planned = told(" and ").join(minutes)
    if choice.blank:
        return told(
            "{head}. Cautions; for each step its pictures with numbers and lines to write on; "
            "the answers on the last page.",
            head=head,
        )
    if choice.short:
        return told(
            "{head}, planned for {minutes}. Two to four pages: cautions and kit; one row a step "
            "with boxes to tick, pictures, cut, hinge, what to keep, stop sign; the end of the "
            "day; the table of muscles where it fits.",
            head=head,
            minutes=planned,
        )
    return told(
        "{head}, planned for {minutes}. Cautions and kit; the plan with boxes to tick; for each "
        "step pictures before and after, what to do, keep and find; a table of {muscles} with "
        "ends, nerve, artery, action and sources; a log of variants.",
        head=head,
        minutes=planned,
        muscles=counted(len(muscles_of(records, model)), "{count} muscle", "{count} muscles"),
    )
