"""A lab sheet as it was asked for, found to be possible."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from meshes.catalogue.plan import PlanStep, steps
from meshes.errors import PeelbackError
from meshes.export import check_place
from viewer.state.view_state import SIDE_CHOICES

PAPERS: dict[str, tuple[float, float]] = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
"""Width and height, mm (ISO 216; ANSI/ASME Y14.1)."""


@dataclass(frozen=True, slots=True)
class SheetOrder:
    """What to print.

    Attributes
    ----------
    out : Path
    paper : str
        A key of ``PAPERS``.
    blank : bool
        Numbers and lines to write on in place of names, answers on the last page.
    short : bool
        Two to four pages, one row a step.
    side : {"both", "left", "right"}
        The side that the table works on; the pictures open that side.
    steps : tuple of PlanStep
        In plan order.
    """

    out: Path
    paper: str
    blank: bool
    side: str
    steps: tuple[PlanStep, ...]
    short: bool = False

    @classmethod
    def checked(
        cls,
        *,
        out: Path,
        paper: str = "A4",
        blank: bool = False,
        side: str = "both",
        wanted: str = "",
        short: bool = False,
    ) -> SheetOrder:
        """Make an order from the words of the command.

        Parameters
        ----------
        wanted : str
            Steps by id, number or range of numbers: "trapezius,7,9-11"; "" for all.

        Raises
        ------
        PeelbackError
            One of the words is none of those allowed, or the place cannot be written.
        """
        named = {name.lower(): name for name in PAPERS}
        if paper.lower() not in named:
            raise PeelbackError(f"paper must be one of {', '.join(PAPERS)}, got {paper!r}")
        if side not in SIDE_CHOICES:
            raise PeelbackError(f"side must be one of {', '.join(SIDE_CHOICES)}, got {side!r}")
        if out.suffix.lower() != ".pdf":
            raise PeelbackError(f"out must end in .pdf, got {out.name!r}")
        if short and blank:
            raise PeelbackError("short and blank don't go together: choose one of the two sheets")
        chosen = chosen_steps(wanted)
        check_place(out)
        return cls(out, named[paper.lower()], blank, side, chosen, short)


def chosen_steps(wanted: str) -> tuple[PlanStep, ...]:
    """Return the steps that words ask for by id or printed number, in plan order; all for "".

    Raises
    ------
    PeelbackError
        A word is no step; the message lists those there are.
    """
    plan = steps()
    words = [word.strip() for word in wanted.split(",") if word.strip()]
    if not words:
        if wanted.strip():
            raise PeelbackError(_none_such(wanted))
        return plan
    # As they stand on the sheet and in the window.
    numbered = list(enumerate(plan, start=1))
    chosen: set[str] = set()
    for word in words:
        span = re.fullmatch(r"(\d+)(?:-(\d+))?", word)
        if span:
            low, high = int(span[1]), int(span[2] or span[1])
            found = {step.id for n, step in numbered if low <= n <= high}
        else:
            found = {step.id for step in plan if step.id == word}
        if not found:
            raise PeelbackError(_none_such(word))
        chosen |= found
    return tuple(step for step in plan if step.id in chosen)


def _none_such(word: str) -> str:
    plan = steps()
    return f"no step {word!r}; steps are 1–{len(plan)} or {', '.join(step.id for step in plan)}"
