"""What a rehearsed cut would do, told in headed lines. No Qt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, NamedTuple

from viewer.state.tongue import counted, figure, told

if TYPE_CHECKING:
    from meshes.questions.rehearse import Comparison, Rehearsal

CLEARANCES_TOLD = 6
"""So many things that stay are named, the nearest ones."""
NAMED = 3
"""So many nerves and vessels are named in the verdict."""
TUBES = frozenset({"nerve", "artery", "vein"})


class AnswerLine(NamedTuple):
    """A line of an answer; ``loss`` says that it speaks of something lost that must stay."""

    words: str
    loss: bool = False


Headed = tuple[str, tuple[AnswerLine, ...]]


def headed(heading: str, *lines: str) -> Headed:
    """Return a heading with lines that speak of no loss."""
    return heading, tuple(map(AnswerLine, lines))


def _mm(number: float) -> str:
    return figure(number, ".1f")


def answer_in_words(answer: Rehearsal, titles: Mapping[str, str]) -> tuple[Headed, ...]:
    """Return an answer as headed lines: length, the plan's line, losses, clearances, layers.

    Parameters
    ----------
    answer : Rehearsal
    titles : mapping of part id to its title
    """
    first = (
        ()
        if answer.safe_mm is None
        else (told("The first thing to be kept lies {mm} mm down.", mm=_mm(answer.safe_mm)),)
    )
    long = told(
        "{long} mm long, blade {deep} mm deep",
        long=f"{answer.length_mm:.0f}",
        deep=figure(answer.depth_mm),
    )
    lines = [headed(long, *first)]
    if answer.comparison is not None:
        lines.append((told("Beside the plan's line"), _comparison(answer.comparison)))
    lines += [
        (told("Would be lost"), _losses(answer, titles)),
        (told("Clearance to what must stay"), _clearances(answer, titles)),
        (told("Layers under the line"), _layers(answer, titles)),
    ]
    return tuple(lines)


def line_in_words(words: str) -> str:
    """Return the words of a line of cut: the plan's own, or at the origin of which muscle."""
    from meshes.questions.rehearse import AT_ORIGIN

    if words.startswith(AT_ORIGIN):
        return told("at the origin of {muscle}", muscle=told(words.removeprefix(AT_ORIGIN)))
    return told(words)


def _comparison(beside: Comparison) -> tuple[AnswerLine, ...]:
    return (
        AnswerLine(
            told(
                "“{line}”, {mm} mm", line=line_in_words(beside.words), mm=f"{beside.length_mm:.0f}"
            )
        ),
        AnswerLine(
            told(
                "{mean} mm away on the mean, {most} mm at most; {share} % of it followed",
                mean=_mm(beside.mean_mm),
                most=_mm(beside.largest_mm),
                share=f"{100 * beside.followed:.0f}",
            )
        ),
    )


def _losses(answer: Rehearsal, titles: Mapping[str, str]) -> tuple[AnswerLine, ...]:
    found = []
    for loss in answer.losses:
        words = told(
            "{part}: over {long} mm, from {deep} mm down",
            part=titles.get(loss.part_id, loss.part_id),
            long=f"{loss.length_mm:.0f}",
            deep=_mm(loss.depth_mm),
        )
        if loss.kept:
            words = told("{loss} – must be kept", loss=words)
        found.append(AnswerLine(words, loss.kept))
    return tuple(found) or (AnswerLine(told("Nothing but the layer itself.")),)


def _clearances(answer: Rehearsal, titles: Mapping[str, str]) -> tuple[AnswerLine, ...]:
    found = []
    for one in answer.clearances[:CLEARANCES_TOLD]:
        part, cut = titles.get(one.part_id, one.part_id), one.mm <= 0
        words = (
            told("{part}: cut", part=part)
            if cut
            else told("{part}: {mm} mm", part=part, mm=_mm(one.mm))
        )
        found.append(AnswerLine(words, cut))
    return tuple(found) or (AnswerLine(told("This step keeps nothing near here.")),)


def _layers(answer: Rehearsal, titles: Mapping[str, str]) -> tuple[AnswerLine, ...]:
    found = []
    for one in answer.layers:
        words = [
            told(
                "{part}: {mean} mm thick (least {least})",
                part=titles.get(one.part_id, one.part_id),
                mean=_mm(one.mean_mm),
                least=_mm(one.least_mm),
            )
        ]
        if one.depth_mm >= 0.5:
            words.append(told("{mm} mm down", mm=_mm(one.depth_mm)))
        if one.share < 0.95:
            words.append(told("under {share} % of the line", share=f"{100 * one.share:.0f}"))
        found.append(AnswerLine(", ".join(words)))
    return tuple(found)


def verdict(
    answer: Rehearsal, titles: Mapping[str, str], kinds: Mapping[str, str]
) -> tuple[str, bool]:
    """Return a cut in one sentence, and whether it loses what nobody should cut.

    Parameters
    ----------
    answer : Rehearsal
    titles, kinds : mapping of part id to its title and to its kind
    """
    kept = sum(loss.kept for loss in answer.losses)
    if kept:
        words = counted(
            kept,
            "This cut loses {count} thing that must stay.",
            "This cut loses {count} things that must stay.",
        )
        return words, True
    ids: Sequence[str] = [x.part_id for x in answer.losses if kinds.get(x.part_id) in TUBES]
    if ids:
        names = ", ".join(titles.get(i, i) for i in ids[:NAMED])
        return told("The blade goes through {names}.", names=names), True
    if answer.losses:
        return told("Nothing that must stay is cut, but the blade goes beyond the layer."), False
    return told("This cut loses nothing but the layer itself."), False
