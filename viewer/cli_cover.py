"""The answers of ``peelback cover`` and ``peelback expose``, as facts and as lines."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any

from meshes.catalogue.plan import load_plan
from meshes.errors import PeelbackError
from meshes.export import part_names
from meshes.model import BackModel
from meshes.questions.cover import Cover, Layers, layers_of
from meshes.questions.expose import WayIn, WayStep, expose, removed_parts
from meshes.questions.named import parts_named
from meshes.questions.probe import CAUTION

LISTED_SHARE = 0.01

MOST_LEFT = 8
"""So many parts that a way in leaves over its goal are named one by one; JSON has all."""

SIDES = ("left", "right")


@dataclass(frozen=True, slots=True, eq=False)
class Question:
    """A part asked about in a state.

    Attributes
    ----------
    target : tuple of str
        Part ids.
    gone : frozenset of str
        Ids of what is taken away.
    after : str
        The step after which it is asked, "" for the whole back.
    keep : frozenset of str
        Ids of what no step may take away.
    """

    model: BackModel
    layers: Layers
    target: tuple[str, ...]
    gone: frozenset[str]
    after: str = ""
    keep: frozenset[str] = frozenset()

    @property
    def visible(self) -> frozenset[str]:
        """Ids of what is there."""
        return frozenset(self.layers.ids) - self.gone


def question(
    model: BackModel,
    name: str,
    side: str,
    after: str | None = None,
    keep: Sequence[str] = (),
) -> Question:
    """Return a checked question.

    Raises
    ------
    PeelbackError
        Unknown part, side or step; or the part is gone after that step.
    """
    if side not in SIDES:
        raise PeelbackError(f"side must be left or right, got {side!r}")
    target = parts_named(model, name)
    if {model.parts[i].side for i in target} >= set(SIDES):
        # A name without a side: the body is the same on both, one of them is asked about.
        target = tuple(i for i in target if model.parts[i].side in (side, None))
    gone: set[str] = set()
    if after is not None:
        plan = load_plan()
        for step in (*plan.before(after), plan.step(after)):
            gone.update(i for s in SIDES for i in removed_parts(model, step, s))
    taken = sorted(gone & set(target))
    if taken:
        raise PeelbackError(f"{taken[0]!r} is taken away by then; ask after an earlier step")
    kept = frozenset(i for each in keep for i in parts_named(model, each))
    return Question(model, layers_of(model), target, frozenset(gone), after or "", kept)


def _name(asked: Question, part_id: str) -> str:
    return part_names(asked.model.parts[part_id], asked.model)["english"]


def _names(asked: Question) -> str:
    names = [_name(asked, part_id) for part_id in asked.target]
    return ", ".join(names[:3]) + (f" and {len(names) - 3} more" if len(names) > 3 else "")


def _percent(share: float) -> str:
    return f"{100 * share:.1f} %" if 0 < share < 0.0995 else f"{100 * share:.0f} %"


def _gap(mm: float) -> str:
    return "under 1 mm" if mm < 1.0 else f"{mm:.0f} mm"


# --- cover -------------------------------------------------------------------------------


def cover_facts(asked: Question, everything: bool = False) -> dict[str, Any]:
    """Return what lies over the part as plain values, outermost first."""
    rows = _listed(asked, everything)
    share = asked.layers.in_view(asked.target, asked.visible)
    return {
        "target": list(asked.target),
        "after": asked.after or None,
        "area_cm2": round(asked.layers.area_cm2(asked.target), 2),
        "in_view": None if share is None else round(share, 4),
        "covers": [_cover_fact(asked, row) for row in rows],
        "caution": CAUTION,
    }


def _cover_fact(asked: Question, row: Cover) -> dict[str, Any]:
    part = asked.model.parts[row.part_id]
    return {
        "id": row.part_id,
        "stratum": part.stratum,
        "group": part.group,
        **{k: round(v, 4) for k, v in asdict(row).items() if k != "part_id"},
    }


def _listed(asked: Question, everything: bool) -> tuple[Cover, ...]:
    rows = asked.layers.covers(asked.target, asked.visible)
    return rows if everything else tuple(row for row in rows if row.share >= LISTED_SHARE)


def cover_lines(asked: Question, everything: bool = False) -> list[str]:
    """Return what lies over the part in lines, outermost first."""
    share = asked.layers.in_view(asked.target, asked.visible)
    if share is None:
        return [f"{_names(asked)}: not reached from behind"]
    lines = [
        f"{_names(asked)}: {asked.layers.area_cm2(asked.target):.0f} cm² from outside, "
        f"{_percent(share)} of it in view"
    ]
    rows = _listed(asked, everything)
    if rows:
        lines.append(f"{'hides':>7} {'depth':>8} {'thick':>8}  what lies over it, from outside")
    for row in rows:
        lines.append(
            f"{_percent(row.share):>7} {row.depth_mm:5.1f} mm {row.thickness_mm:5.1f} mm"
            f"  {_name(asked, row.part_id)}"
        )
    return [*lines, CAUTION]


# --- expose ------------------------------------------------------------------------------


def way_in(asked: Question, share: float) -> WayIn:
    """Return the way in to the part that is asked about."""
    return expose(asked.model, asked.layers, asked.target, share, asked.gone, keep=asked.keep)


def expose_facts(asked: Question, share: float) -> dict[str, Any]:
    """Return the way in as plain values."""
    way = way_in(asked, share)
    return {
        "target": list(way.target),
        "after": asked.after or None,
        "share": share,
        "in_view_before": round(way.before, 4),
        "in_view_after": round(way.after, 4),
        "reached": way.reached,
        "steps": [
            {
                "step": step.step_id,
                "title": step.title,
                "side": step.side,
                "removes": list(step.removes),
                "in_view": round(step.in_view, 4),
                "keep": list(step.keep),
                "at_risk": [
                    {
                        "id": risk.part_id,
                        "clearance_mm": round(risk.clearance_mm, 1),
                        "line": risk.line,
                    }
                    for risk in step.at_risk
                ],
            }
            for step in way.steps
        ],
        "remains": [
            {**_cover_fact(asked, row), "stays_because": way.stays.get(row.part_id)}
            for row in way.remains
        ],
        "caution": CAUTION,
    }


def expose_lines(asked: Question, share: float) -> list[str]:
    """Return the way in, in lines."""
    way = way_in(asked, share)
    lines = [f"{_names(asked)}: {_percent(way.before)} in view, {_percent(way.wanted)} wanted"]
    if not way.steps and way.reached:
        lines.append("It is in view already: no step is needed.")
    for number, step in enumerate(way.steps, 1):
        lines += _step_lines(asked, number, step)
    if not way.reached:
        lines.append(f"The plan brings no more than {_percent(way.after)} of it into view.")
    lines += _remaining_lines(asked, way)
    return [*lines, CAUTION]


def _remaining_lines(asked: Question, way: WayIn) -> list[str]:
    """Return what still lies over the part, most first and one a line, and why it stays."""
    left = sorted(
        (row for row in way.remains if row.share >= LISTED_SHARE), key=lambda row: -row.share
    )
    lines = ["Still over it:"] if left else []
    for row in left[:MOST_LEFT]:
        why = f"  ({way.stays[row.part_id]})" if row.part_id in way.stays else ""
        lines.append(f"{_percent(row.share):>7}  {_name(asked, row.part_id)}{why}")
    more = len(left) - MOST_LEFT
    if more > 0:
        lines.append(f"         and {more} more, none of which hides more")
    return lines


def _step_lines(asked: Question, number: int, step: WayStep) -> list[str]:
    side = "both sides" if step.side == "both" else step.side
    lines = [f"{number:3}. {step.title} ({side}): {_percent(step.in_view)} in view"]
    if step.at_risk:
        risks = "; ".join(
            f"{_name(asked, risk.part_id)} {_gap(risk.clearance_mm)} from the cut"
            for risk in step.at_risk[:4]
        )
        lines.append(f"     at risk: {risks}")
    near = {asked.model.parts[risk.part_id].entry for risk in step.at_risk}
    other = [name for name in step.keep if name not in near]
    if other:
        catalogue = asked.model.catalogue
        words = (
            catalogue[name].english if name in catalogue else name.replace("_", " ")
            for name in other
        )
        lines.append(f"     keep: {', '.join(words)}")
    return lines
