"""What lies over a part in the present state, and the steps that bring it into view."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from viewer.state import commands
from viewer.state.captions import drawn_words, title_of_several
from viewer.state.commands import Command
from viewer.state.folding import is_folded
from viewer.state.plan import Plan, names_in_words
from viewer.state.step_words import called
from viewer.state.tongue import figure, told
from viewer.state.view_state import BOTH_SIDES, STRATA, ViewState, on_side
from viewer.state.visibility import HasParts, taken_off

if TYPE_CHECKING:
    from meshes.model import BackModel
    from meshes.questions.cover import Cover, Layers
    from meshes.questions.expose import WayIn

LISTED_SHARE = 0.01
"""What hides less of a part than this is not listed."""

CAPTION_COVERS = 3
"""How many covers a caption names; the list under 'Over it' has all."""

REACHABLE = ("little is gained by taking it",)
"""Why something stays that a step could take: it is not what ends the way."""

TINTED_SHARE = 0.03
"""What hides less than this is not tinted: the tint would tell more than there is."""


@dataclass(frozen=True, slots=True)
class CoverRow:
    """One line of the list of what lies over a part.

    Attributes
    ----------
    part_ids : tuple of str
        One part, or two twins where both sides are asked about together.
    title : str
        It names the side only where it is not that of the asked part.
    share : float
        Share (0–1) of the asked part's area that it hides.
    depth_mm, thickness_mm : float
        Where it covers: mean depth of its outer face under the skin, and mean thickness.
    detail : str
        Stratum, group and thickness in words.
    """

    part_ids: tuple[str, ...]
    title: str
    share: float
    depth_mm: float
    thickness_mm: float
    detail: str


def ask(ids: Iterable[str]) -> Command:
    """Ask what lies over parts; with none, ask no more. Undo passes over it."""
    ids = tuple(dict.fromkeys(ids))
    return Command("what lies over it", lambda state: replace(state, covers_of=ids), recorded=False)


def taken(model: HasParts, state: ViewState) -> frozenset[str]:
    """Return the ids that the dissection has taken away; ways of looking do not matter."""
    return frozenset(part.id for part in model.parts.values() if taken_off(part, state))


def cover_rows(
    layers: Layers, model: BackModel, state: ViewState, titles: Mapping[str, str]
) -> tuple[float | None, tuple[CoverRow, ...]]:
    """Return the share of the asked part in view (None: not met), and what lies over it."""
    asked = [i for i in state.covers_of if i in model.parts]
    if not asked:
        return None, ()
    there = frozenset(layers.ids) - taken(model, state)
    sides = {model.parts[i].side for i in asked}
    rows = []
    for covers in _twins_together(layers.covers(asked, there), model, sides):
        share = sum(c.share for c in covers)
        if share < LISTED_SHARE:
            continue
        part = model.parts[covers[0].part_id]
        group = f", {called(part.group, model.catalogue)}" if part.group else ""
        ids = tuple(c.part_id for c in covers)
        title = title_of_several(ids, titles)
        if sides == {part.side} and part.side is not None:
            title = title.removesuffix(f", {told(part.side)}")
        elif len(ids) == 2:
            title = title.removesuffix(f", {told('both sides')}")
        if all(is_folded(state, part_id) for part_id in ids):
            title = told("{title} (folded)", title=title)
        thickness = sum(c.thickness_mm * c.share for c in covers) / share
        rows.append(
            CoverRow(
                ids,
                title,
                share,
                sum(c.depth_mm * c.share for c in covers) / share,
                thickness,
                told(
                    "stratum {n} ({name}){group}; {mm} mm thick there",
                    n=part.stratum,
                    name=told(STRATA[part.stratum]),
                    group=group,
                    mm=figure(thickness, ".1f"),
                ),
            )
        )
    return layers.in_view(asked, there), tuple(rows)


def _twins_together(
    covers: Sequence[Cover], model: BackModel, sides: Collection[str | None]
) -> Iterable[tuple[Cover, ...]]:
    """Yield covers one by one; those of twins as one where both sides are asked about."""
    if not {"left", "right"} <= set(sides):
        yield from ((cover,) for cover in covers)
        return
    together: dict[str, tuple[Cover, ...]] = {}
    for cover in covers:
        name = model.parts[cover.part_id].name
        together[name] = (*together.get(name, ()), cover)
    yield from together.values()


def percent(share: float) -> str:
    """Return a share in words: "96 %", "1.4 %"."""
    return f"{figure(100 * share, '.1f' if 0 < share < 0.0995 else '.0f')} %"


def covered_by_words(
    layers: Layers, model: BackModel, state: ViewState, part_id: str, titles: Mapping[str, str]
) -> str:
    """Return what lies over a part in a state, for its caption: the three that hide most."""
    asked = replace(state, covers_of=(part_id,))
    in_view, rows = cover_rows(layers, model, asked, titles)
    if in_view is None:
        return told("not reached from behind")
    if not rows:
        return told("nothing; {share} in view", share=percent(in_view))
    most = sorted(rows, key=lambda row: -row.share)[:CAPTION_COVERS]
    listed = "; ".join(f"{row.title} {percent(row.share)}" for row in most)
    if len(rows) > len(most):
        listed += told(" and {count} more", count=len(rows) - len(most))
    return told("{listed}. In view: {share}", listed=listed, share=percent(in_view))


def covers_in_words(title: str, in_view: float | None, rows: Sequence[CoverRow]) -> str:
    """Return the answer as sentences, for screen readers and the status line."""
    if in_view is None:
        return told("{title} is not reached from behind.", title=title)
    if not rows:
        return told(
            "Nothing lies over {title}: {share} in view.", title=title, share=percent(in_view)
        )
    listed = "; ".join(
        told("{title} hides {share}", title=row.title, share=percent(row.share)) for row in rows
    )
    return told(
        "{title}, {share} in view. {listed}.", title=title, share=percent(in_view), listed=listed
    )


def way_in(
    plan: Plan,
    layers: Layers,
    model: BackModel,
    state: ViewState,
    ids: Sequence[str],
    share: float,
) -> WayIn:
    """Return the fewest steps that bring parts into view from the present state."""
    from meshes.questions.expose import expose

    done = {side: plan.done(model, state, side) for side in BOTH_SIDES}
    return expose(model, layers, ids, share, taken(model, state) - set(ids), done)


def play(
    plan: Plan,
    model: HasParts,
    state: ViewState,
    ids: Sequence[str],
    way: WayIn,
    title: str,
    fold: bool = False,
) -> list[Command]:
    """Return the commands that bring parts into view, one a step; they make one undo entry.

    What is asked for is laid back first where the dissection took it away, and
    shown if only the other side was. With ``fold`` flaps are folded back where the
    plan says so; otherwise they are taken away.
    """
    name = f"bring {title} into view"
    first: list[Command] = []
    sides = {model.parts[i].side for i in ids}
    if any(taken_off(model.parts[i], state) for i in ids):
        first.append(commands.show(ids, model, title))
    if any(not on_side(side, state.side_shown) for side in sides) or (
        state.alone and not state.alone >= set(ids)
    ):
        first.append(Command(name, lambda s: replace(s, side_shown="both", alone=frozenset())))
    steps = [plan.do_step(step.step_id, model, step.side, fold) for step in way.steps]
    return [replace(c, name=name, merges_with=name) for c in (*first, *steps)]


def way_in_words(way: WayIn, title: str, titles: Mapping[str, str]) -> str:
    """Return in one sentence or two what a way in comes to."""
    count = len(way.steps)
    if not count and way.reached:
        return told(
            "{title} is in view already: {share} of it.", title=title, share=percent(way.before)
        )
    words = told("{title}: {share} in view", title=title, share=percent(way.after))
    if count == 1:
        words += told(" after 1 step.")
    else:
        words += told(" after {count} steps.", count=count) if count else "."
    if way.reached:
        return words
    words += told(" The plan brings no more of it into view")
    # What no step may take comes before what only lies in front of that.
    most = max(
        way.remains,
        key=lambda cover: (way.stays[cover.part_id] not in REACHABLE, cover.share),
        default=None,
    )
    if most is None:
        return f"{words}."
    name = titles.get(most.part_id, most.part_id)
    return told(
        "{words}: {name} still hides {share} ({why}).",
        words=words,
        name=name,
        share=percent(most.share),
        why=told(way.stays[most.part_id]),
    )


def risks_in_words(way: WayIn, titles: Mapping[str, str], names: Mapping[str, str]) -> str:
    """Return what must be kept on a way in, with distances from the cuts; "" without steps."""
    if not way.steps:
        return ""
    nearest: dict[str, tuple[float, tuple[str, ...]]] = {}
    for step in way.steps:
        for risk in step.at_risk:
            # Twins are told of once, with the nearer one's distance.
            name = risk.part_id.removesuffix(".left").removesuffix(".right")
            mm, ids = nearest.get(name, (1e9, ()))
            ids = tuple(sorted({*ids, risk.part_id}))
            nearest[name] = min(risk.clearance_mm, mm), ids
    if nearest:
        listed = [
            f"{title_of_several(ids, titles)} {told('under 1') if mm < 1 else format(mm, '.0f')} mm"
            for mm, ids in sorted(nearest.values())
        ]
        more = told(" and {count} more", count=len(listed) - 4) if len(listed) > 4 else ""
        return told(
            "At risk, from the cuts: {listed}{more}.", listed="; ".join(listed[:4]), more=more
        )
    keep = way.steps[-1].keep
    return told("Keep: {names}.", names=names_in_words(keep, names)) if keep else ""


def share_after_folds(title: str, in_view: float | None, rows: Sequence[CoverRow]) -> str:
    """Return what is in view now that flaps have come to lie somewhere, and the worst cover."""
    if in_view is None:
        return told("{title} is not reached from behind.", title=title)
    worst = max(rows, key=lambda row: row.share, default=None)
    words = told("{title}: {share} in view", title=title, share=percent(in_view))
    if not worst:
        return f"{words}."
    hides = told("{title} hides {share}", title=worst.title, share=percent(worst.share))
    return f"{words}; {hides}."


@dataclass(frozen=True, slots=True)
class Rung:
    """One line of the answer to 'Probe at': words and numbers ready to be shown."""

    part_id: str
    title: str
    enters: str
    thick: str
    leaves: str
    note: str


def ladder_rows(ladder: Any, model: BackModel, titles: Mapping[str, str]) -> tuple[Rung, ...]:
    """Return a probe's ladder as lines, outermost first (mm)."""
    return tuple(
        Rung(
            rung.part_id,
            titles.get(rung.part_id, rung.part_id),
            figure(rung.enter_mm, ".1f"),
            figure(rung.thickness_mm, ".1f"),
            figure(rung.leave_mm, ".1f"),
            drawn_words(model.parts[rung.part_id], model),
        )
        for rung in ladder.rungs
    )


def ladder_text(place: str, rows: Sequence[Rung], caution: str) -> str:
    """Return a ladder as a small table in plain text, for the clipboard."""
    width = max((len(row.title) for row in rows), default=4)
    heads = [told(head) for head in ("Part", "Enters", "Thick", "Leaves")]
    wide = [max(len(head), 7) for head in heads[1:]]
    lines = [
        told("{place} (mm from the skin)", place=place),
        "  ".join([f"{heads[0]:<{width}}", *map("{:>{}}".format, heads[1:], wide)]),
    ]
    for row in rows:
        note = f"  {row.note}" if row.note else ""
        figures = map("{:>{}}".format, (row.enters, row.thick, row.leaves), wide)
        lines.append("  ".join([f"{row.title:<{width}}", *figures]) + note)
    return "\n".join([*lines, caution, ""])
