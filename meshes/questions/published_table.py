"""Writes the comparison with published values as a page that people read."""

from __future__ import annotations

from collections.abc import Sequence

from meshes.questions.published import Comparison

_HEAD = (
    "| quantity | role | published | model | unit | verdict | source |",
    "|---|---|---|---|---|---|---|",
)


def verdict(row: Comparison) -> str:
    """Return the verdict on one row in a few words."""
    if row.model is None:
        return "not measured"
    if row.within_1 is not None:
        if row.within_1:
            return "within 1 sd"
        return "within 2 sd" if row.within_2 else "outside 2 sd"
    if row.within_range is not None:
        return "in the range" if row.within_range else "outside the range"
    return "no spread published"


def tally(rows: Sequence[Comparison]) -> dict[str, int]:
    """Count rows: all, with a standard deviation, within one and two of them."""
    spread = [row for row in rows if row.within_1 is not None]
    return {
        "rows": len(rows),
        "with_sd": len(spread),
        "within_1": sum(bool(row.within_1) for row in spread),
        "within_2": sum(bool(row.within_2) for row in spread),
    }


def published_markdown(rows: Sequence[Comparison], title: str) -> str:
    """Return the page: the tally first, then rows that were read, then rows from memory.

    Parameters
    ----------
    rows : sequence of Comparison
    title : str
        What body was measured.

    Returns
    -------
    str
        Markdown, ending with a line break.
    """
    lines = [
        "# The model against published values",
        "",
        f"{title}. Written by `peelback check --table FILE`; values and sources stand in",
        "`meshes/questions/published.toml`. `input`: the value shaped the model; `held_out`: it",
        "did not. An explained row is not a passed row; rows from memory are counted apart.",
        "",
        "| rows | count | with a standard deviation | within one | within two |",
        "|---|---|---|---|---|",
    ]
    groups = (
        ("held out, read", [r for r in rows if r.role == "held_out" and r.seen]),
        ("input, read", [r for r in rows if r.role == "input" and r.seen]),
        ("held out, from memory", [r for r in rows if r.role == "held_out" and not r.seen]),
        ("input, from memory", [r for r in rows if r.role == "input" and not r.seen]),
        ("all", list(rows)),
    )
    for name, group in groups:
        t = tally(group)
        lines.append(
            f"| {name} | {t['rows']} | {t['with_sd']} | {t['within_1']} | {t['within_2']} |"
        )
    for heading, seen in (("Read in the source or a copy of it", True), ("From memory", False)):
        chosen = [row for row in rows if row.seen is seen]
        if not chosen:
            continue
        lines += ["", f"## {heading}", "", *_HEAD]
        lines += [_line(row) for row in sorted(chosen, key=lambda r: (r.quantity, r.source))]
    return "\n".join(lines) + "\n"


def _line(row: Comparison) -> str:
    published = f"{row.published:.1f}"
    if row.spread is not None:
        published += f" ± {row.spread:.1f}"
    model = "–" if row.model is None else f"{row.model:.1f}"
    words = verdict(row)
    if row.note and words not in ("within 1 sd", "in the range"):
        words += f": {row.note}"
    cells = (row.quantity, row.role, published, model, row.unit, words, row.source)
    return "| " + " | ".join(cell.replace("|", "/") for cell in cells) + " |"
