"""Vertebral levels, their order, and the small language of ranges and placeholders.

A range is written ``"T6..T10"``; single levels and ranges are strung together
with blanks: ``"C7 T1..T6"``. Plain numbers (ribs) and neighbouring pairs
(``"C2_C3..L5_S1"``) work the same way.
"""

from __future__ import annotations

from functools import cache

VERTEBRAE: tuple[str, ...] = (
    *(f"C{n}" for n in range(1, 8)),
    *(f"T{n}" for n in range(1, 13)),
    *(f"L{n}" for n in range(1, 6)),
    *(f"S{n}" for n in range(1, 6)),
)
"""Vertebrae from the atlas to the last piece of the sacrum."""

NERVES: tuple[str, ...] = (
    *(f"C{n}" for n in range(1, 9)),
    *(f"T{n}" for n in range(1, 13)),
    *(f"L{n}" for n in range(1, 6)),
    *(f"S{n}" for n in range(1, 6)),
)
"""Spinal nerves; there are eight in the neck for seven vertebrae."""


@cache
def parse_levels(text: str, nerves: bool = False) -> tuple[str, ...]:
    """Spell out a string of levels and ranges.

    Parameters
    ----------
    text : str
        ``"C7 T1..T6"``, ``"9..12"`` or ``"C2_C3..L5_S1"``.
    nerves : bool
        Count by nerves (with a C8) rather than by vertebrae.

    Returns
    -------
    tuple of str
        In the order written.

    Raises
    ------
    ValueError
        A level that does not exist, or a range that runs backwards.

    Examples
    --------
    >>> parse_levels("C6..T1")
    ('C6', 'C7', 'T1')
    >>> parse_levels("L4_L5..L5_S1")
    ('L4_L5', 'L5_S1')
    """
    out: list[str] = []
    for word in text.split():
        first, _, last = word.partition("..")
        out.extend(_run(first, last or first, nerves))
    return tuple(out)


def _run(first: str, last: str, nerves: bool) -> list[str]:
    if first.isdigit() and last.isdigit():
        low, high = int(first), int(last)
        if low > high:
            raise ValueError(f"range {first}..{last} runs backwards")
        return [str(n) for n in range(low, high + 1)]
    if "_" in first:
        tops = _run(first.split("_")[0], last.split("_")[0], nerves)
        pairs = [f"{top}_{neighbour(top, 1)}" for top in tops]
        if pairs[0] != first or pairs[-1] != last:
            raise ValueError(f"{first}..{last} is no run of neighbours")
        return pairs
    order = NERVES if nerves else VERTEBRAE
    for level in (first, last):
        if level not in order:
            raise ValueError(f"no level {level!r}")
    low, high = order.index(first), order.index(last)
    if low > high:
        raise ValueError(f"range {first}..{last} runs backwards")
    return list(order[low : high + 1])


def neighbour(level: str, steps: int) -> str:
    """Return the vertebra so many steps below (negative: above), "" past either end."""
    place = VERTEBRAE.index(level) + steps
    return VERTEBRAE[place] if 0 <= place < len(VERTEBRAE) else ""


@cache
def placeholders(level: str) -> dict[str, str]:
    """Return what ``{level}``, ``{above}``, ``{rib_below}`` ... stand for at one level.

    ``{upper}`` and ``{lower}`` are the two of a pair; ``{rib}`` is the rib of a
    thoracic vertebra, ``{rib_below}`` the next one (C7 gives rib 1) and
    ``{rib_below2}`` the next but one. ``{exit}`` is the vertebra below whose
    pedicle a nerve leaves: its own, but the one above in the neck.
    """
    words = {"level": level, "n": level.lstrip("CTLS")}
    if level == "" or level.isdigit():
        if level.isdigit():
            words |= {"next": str(int(level) + 1), "vertebra": f"T{level}"}
            words["vertebra_above"] = neighbour(f"T{level}", -1) if int(level) < 13 else ""
        return words
    if "_" in level:
        words["upper"], words["lower"] = level.split("_")
        words["n"] = words["upper"]
        return words
    if level[0] == "C":
        above = f"C{int(level[1:]) - 1}" if level != "C1" else ""
        words["exit"] = above
    else:
        words["exit"] = level
    if level in VERTEBRAE:
        for name, steps in (("above", -1), ("above2", -2), ("below", 1), ("below2", 2)):
            words[name] = neighbour(level, steps)
        if level[0] == "T" or level == "C7":
            rib = int(level[1:]) if level[0] == "T" else 0
            words["rib"] = str(rib)
            words["rib_below"] = str(rib + 1)
            words["rib_below2"] = str(rib + 2)
    return words


def spoken(level: str) -> str:
    """Return a level for people: "T5", "C4 and C5", "7"."""
    return level.replace("_", " and ")
