"""One table: what, ours, the plain way in the same run, how many times quicker or smaller."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table.

    Attributes
    ----------
    what : str
    unit : str
    ours : float
    plain : float or None
        The plain way; None where there is none.
    bar : float or None
        What it must not exceed.
    note : str
        What was sampled or left out.
    """

    what: str
    unit: str
    ours: float
    plain: float | None = None
    bar: float | None = None
    note: str = ""

    @property
    def ratio(self) -> float | None:
        """How many times less than the plain way, None without one."""
        return None if self.plain is None or self.ours <= 0 else self.plain / self.ours

    def line(self) -> str:
        """Return the line as printed."""
        ratio = "" if self.ratio is None else f"{self.ratio:.3g}x"
        plain = "" if self.plain is None else f"{self.plain:,.4g}"
        bar = "" if self.bar is None else f"<= {self.bar:g}"
        line = (
            f"{self.what:46} {self.unit:4} {self.ours:>9,.4g} {plain:>10} {ratio:>8} {bar:>8}"
            f"  {self.note}"
        )
        return line.rstrip()


HEAD = f"{'what':46} {'unit':4} {'ours':>9} {'plain way':>10} {'ratio':>8} {'bar':>8}  note"


def show(rows: Iterable[Row]) -> list[Row]:
    """Print rows as they come and return them."""
    kept = []
    print(HEAD)
    for row in rows:
        print(row.line(), flush=True)
        kept.append(row)
    return kept
