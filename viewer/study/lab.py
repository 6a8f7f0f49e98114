"""The take-home lab: every step of the plan gone through, each cut drawn, and what it was worth.

A cut is scored on a scale of our own, without a source: half for what must stay, three
tenths for keeping to the plan's line, two tenths for the depth of the blade.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from meshes.questions.rehearse import PlanLine, Rehearsal

KEEPING, FOLLOWING, DEPTH = 50.0, 30.0, 20.0
"""Points of a cut: for what must stay, for the plan's line, for the blade."""
EACH_LOSS = 25.0
"""Points that each thing lost costs that must stay."""
AWAY_MM = 25.0
"""Mean distance from the plan's line at which nothing is left of its points."""
TEACHING = "Teaching model: not for needle or surgical guidance."


@dataclass(frozen=True, slots=True)
class Lost:
    """Something that a cut went into: id, depth below the line (mm), must it stay."""

    part_id: str
    depth_mm: float
    length_mm: float
    kept: bool


@dataclass(frozen=True, slots=True)
class DrawnCut:
    """A cut that was handed in.

    Attributes
    ----------
    line : str
        The plan's line that it lies nearest to, in the plan's words.
    followed : float
        Share of the plan's line that it comes within 10 mm of, 0-1.
    mean_mm, largest_mm : float
        Distance from the plan's line.
    length_mm, depth_mm : float
        Of the cut; of the blade.
    through : bool
        The blade goes through the layer that is to be cut.
    lost : tuple of Lost
    nearest : tuple of (str, float)
        What must stay and how near the blade came, mm, nearest first.
    """

    line: str
    followed: float
    mean_mm: float
    largest_mm: float
    length_mm: float
    depth_mm: float
    through: bool
    lost: tuple[Lost, ...] = ()
    nearest: tuple[tuple[str, float], ...] = ()

    @property
    def score(self) -> float:
        """Points, 0-100."""
        bad = sum(loss.kept for loss in self.lost)
        keeping = max(KEEPING - EACH_LOSS * bad, 0.0)
        near = max(1.0 - self.mean_mm / AWAY_MM, 0.0)
        following = FOLLOWING * min(self.followed, 1.0) * near
        beyond = any(not loss.kept for loss in self.lost)
        depth = DEPTH * (0.5 * self.through + 0.5 * (not beyond and not bad))
        return round(keeping + following + depth, 1)


def drawn_cut(answer: Rehearsal) -> DrawnCut:
    """Return what is kept of the answer to a drawn line."""
    told = answer.comparison
    return DrawnCut(
        told.words if told else "",
        told.followed if told else 0.0,
        told.mean_mm if told else AWAY_MM,
        told.largest_mm if told else AWAY_MM,
        answer.length_mm,
        answer.depth_mm,
        bool(answer.layers) and answer.depth_mm >= answer.through_mm,
        tuple(Lost(x.part_id, x.depth_mm, x.length_mm, x.kept) for x in answer.losses),
        tuple((c.part_id, c.mm) for c in answer.clearances[:6]),
    )


@dataclass(frozen=True, slots=True)
class StepRecord:
    """How one step went on one side.

    Attributes
    ----------
    step_id : str
    lines : tuple of str
        The plan's lines that are to be drawn; () where the step cuts nothing.
    cuts : tuple of DrawnCut
        All that were handed in, in order.
    strays : int
        Clicks that would have begun a cut on another layer.
    done : bool
        The step is finished and what it frees is out of the way.
    """

    step_id: str
    lines: tuple[str, ...] = ()
    cuts: tuple[DrawnCut, ...] = ()
    strays: int = 0
    done: bool = False

    def best(self, line: str) -> DrawnCut | None:
        """Return the best cut along one of the plan's lines, None where there is none."""
        found = [cut for cut in self.cuts if cut.line == line]
        return max(found, key=lambda cut: cut.score, default=None)

    @property
    def missing(self) -> tuple[str, ...]:
        """Lines of the plan that no cut went along yet."""
        return tuple(line for line in self.lines if self.best(line) is None)

    @property
    def score(self) -> float | None:
        """Mean points of the plan's lines, a missing one counts 0; None where nothing is cut."""
        if not self.lines:
            return None
        best = [self.best(line) for line in self.lines]
        return round(sum(cut.score if cut else 0.0 for cut in best) / len(best), 1)

    @property
    def lost(self) -> tuple[Lost, ...]:
        """What must stay and was cut, each once, by the best cut of each line."""
        cuts = [self.best(line) for line in self.lines]
        found = {x.part_id: x for cut in cuts if cut for x in cut.lost if x.kept}
        return tuple(found.values())


def lines_of(planned: Iterable[PlanLine]) -> tuple[str, ...]:
    """Return the plan's lines by their words, pieces of one line once."""
    return tuple(dict.fromkeys(line.words for line in planned))


@dataclass(frozen=True, slots=True)
class LabBook:
    """One learner's way through the plan on one side.

    Attributes
    ----------
    side : {"left", "right"}
    steps : tuple of str
        Ids of the plan's steps, in order.
    records : mapping of step id to StepRecord
    """

    side: str
    steps: tuple[str, ...]
    records: Mapping[str, StepRecord]

    def of(self, step_id: str) -> StepRecord:
        """Return the record of a step, an empty one where there is none."""
        return self.records.get(step_id, StepRecord(step_id))

    def put(self, record: StepRecord) -> LabBook:
        """Return the book with one record replaced."""
        return replace(self, records={**self.records, record.step_id: record})

    @property
    def next(self) -> str | None:
        """The first step that is not done, None at the end."""
        return next((s for s in self.steps if not self.of(s).done), None)

    @property
    def done(self) -> int:
        """How many steps are done."""
        return sum(self.of(s).done for s in self.steps)

    @property
    def score(self) -> float | None:
        """Mean of the steps that are done and have a score."""
        scores = [s for i in self.steps if self.of(i).done and (s := self.of(i).score) is not None]
        return round(sum(scores) / len(scores), 1) if scores else None

    def rows(self, titles: Mapping[str, str], names: Mapping[str, str]) -> list[dict[str, Any]]:
        """Return one row for each cut that counts, and one for each step without."""
        rows = []
        for number, step_id in enumerate(self.steps, start=1):
            record = self.of(step_id)
            head = {
                "number": number,
                "step": titles.get(step_id, step_id),
                "side": self.side,
                "done": "yes" if record.done else "no",
            }
            if not record.lines:
                rows.append(head)
            for line in record.lines:
                cut = record.best(line)
                row = {**head, "line": line, "tries": sum(c.line == line for c in record.cuts)}
                if cut is not None:
                    row |= {
                        "points": cut.score,
                        "followed": f"{cut.followed:.0%}",
                        "mean_mm": f"{cut.mean_mm:.1f}",
                        "blade_mm": f"{cut.depth_mm:.1f}",
                        "lost_that_must_stay": _named(
                            (x.part_id for x in cut.lost if x.kept), names
                        ),
                        "lost_besides": _named((x.part_id for x in cut.lost if not x.kept), names),
                        "nearest": "; ".join(
                            f"{names.get(i, i)} {mm:.1f} mm" for i, mm in cut.nearest[:3]
                        ),
                    }
                rows.append(row)
        return rows

    def csv(self, titles: Mapping[str, str], names: Mapping[str, str]) -> str:
        """Return the rows as comma-separated values, the teaching note in the last."""
        heads = (
            "number", "step", "side", "done", "line", "tries", "points", "followed", "mean_mm",
            "blade_mm", "lost_that_must_stay", "lost_besides", "nearest",
        )  # fmt: skip
        out = io.StringIO()
        writer = csv.DictWriter(out, heads, lineterminator="\n", restval="")
        writer.writeheader()
        writer.writerows(self.rows(titles, names))
        writer.writerow({"step": TEACHING})
        return out.getvalue()


def _named(ids: Iterable[str], names: Mapping[str, str]) -> str:
    return "; ".join(names.get(i, i) for i in ids)


def record_to_json(record: StepRecord) -> str:
    """Return a record as one line of JSON."""
    return json.dumps(asdict(record), sort_keys=True)


def record_from_json(text: str) -> StepRecord:
    """Return a record from its JSON.

    Raises
    ------
    ValueError
        Not such a record.
    """
    try:
        values = json.loads(text)
        cuts = tuple(
            DrawnCut(
                **{
                    **cut,
                    "lost": tuple(Lost(**x) for x in cut.get("lost", ())),
                    "nearest": tuple((str(i), float(mm)) for i, mm in cut.get("nearest", ())),
                }
            )
            for cut in values.get("cuts", ())
        )
        return StepRecord(
            str(values["step_id"]),
            tuple(str(line) for line in values.get("lines", ())),
            cuts,
            int(values.get("strays", 0)),
            bool(values.get("done", False)),
        )
    except (TypeError, KeyError, AttributeError) as error:
        raise ValueError(f"not a record of the lab: {error}") from error


def lab_book(side: str, steps: Sequence[str], kept: Iterable[str]) -> tuple[LabBook, int]:
    """Return the book of a side from kept records, and how many could not be read."""
    if side not in ("left", "right"):
        raise ValueError(f"side must be left or right, got {side!r}")
    records, broken = {}, 0
    for text in kept:
        try:
            record = record_from_json(text)
        except ValueError:
            broken += 1
            continue
        if record.step_id in steps:
            records[record.step_id] = record
    return LabBook(side, tuple(steps), records), broken
