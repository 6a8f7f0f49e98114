"""What goes wrong most often at the table: how it looks, how to tell, what to save.

Pure functions over ``mistakes.toml``; nothing here knows a model or a window.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from functools import lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from meshes.catalogue.loader import (
    check_fields,
    entry_error,
    load_catalogue,
    read_citations,
    read_toml,
)
from meshes.catalogue.plan import DissectionPlan, load_plan, part_ids_of
from meshes.catalogue.records import Catalogue, Citation

FILE = "mistakes.toml"
VIEWS = (
    "posterior",
    "oblique_left",
    "oblique_right",
    "lateral_left",
    "lateral_right",
    "superior",
    "inferior",
    "anterior",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mistake:
    """One of the commonest mistakes.

    Attributes
    ----------
    id, title : str
    step : str
        Id of the step of the plan in which it happens.
    looks, tell, cause, avoid, save : str
        What one sees, how to know it, why it happens, how not to, what can still be done.
    gone : tuple of str
        Rows, groups or part names that it takes away besides what the step removes.
    bare : tuple of str
        What it lays bare or leaves behind.
    view : str
        The fixed view that shows it.
    marks : bool
        Shown with the palpable landmarks.
    sources : tuple of (str, tuple of Citation)
    """

    id: str
    title: str
    step: str
    looks: str
    tell: str
    cause: str
    avoid: str
    save: str
    gone: tuple[str, ...] = ()
    bare: tuple[str, ...] = ()
    view: str = "posterior"
    marks: bool = False
    sources: tuple[tuple[str, tuple[Citation, ...]], ...] = ()


@lru_cache(maxsize=1)
def load_mistakes() -> tuple[Mistake, ...]:
    """Return the mistakes that ship with the package (read once)."""
    return read_mistakes(files("meshes.catalogue"), load_catalogue(), load_plan())


def read_mistakes(
    folder: Traversable | Path, catalogue: Catalogue, plan: DissectionPlan
) -> tuple[Mistake, ...]:
    """Read and check the table of mistakes.

    Raises
    ------
    PeelbackError
        One line naming the mistake, for an unknown field, step, row or view, or an id
        that is used twice.
    """
    table = read_toml(folder, FILE)
    cited = read_citations(FILE, "mistakes", table.get("sources", {}), catalogue.citations)
    if not cited:
        raise entry_error(FILE, "mistakes", "source is missing")
    allowed = {f.name for f in fields(Mistake)} - {"sources"}
    needed = ("id", "title", "step", "looks", "tell", "cause", "avoid", "save")
    steps = {step.id for step in plan.steps}
    made: list[Mistake] = []
    for row in table.get("mistake", []):
        key = row.get("id", "(no id)")
        check_fields(FILE, key, row, allowed, needed)
        if key in {m.id for m in made}:
            raise entry_error(FILE, key, "is a mistake already")
        if row["step"] not in steps:
            raise entry_error(FILE, key, f"unknown step {row['step']!r}")
        for name in (*row.get("gone", ()), *row.get("bare", ())):
            if not part_ids_of(name, catalogue):
                raise entry_error(FILE, key, f"names an unknown row or part {name!r}")
        if row.get("view", "posterior") not in VIEWS:
            raise entry_error(
                FILE, key, f"view must be one of {', '.join(VIEWS)}, got {row['view']!r}"
            )
        empty = [name for name in needed if not str(row[name]).strip()]
        if empty:
            raise entry_error(FILE, key, f"{empty[0]} is empty")
        lists = {name: tuple(value) for name, value in row.items() if isinstance(value, list)}
        made.append(Mistake(**{**row, **lists}, sources=tuple(cited.items())))
    return tuple(made)


def mistakes_of(step_id: str) -> tuple[Mistake, ...]:
    """Return the shipped mistakes of one step of the plan."""
    return tuple(m for m in load_mistakes() if m.step == step_id)
