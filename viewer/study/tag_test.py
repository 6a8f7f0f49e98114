"""One sitting of a tag test: what comes next, what the answer was worth, and the sum."""

from __future__ import annotations

import random
from collections.abc import Callable, Collection
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from viewer.state.tongue import told
from viewer.state.view_state import SIDE_CHOICES, STRATUM_COUNT
from viewer.study.answers import Verdict, judge
from viewer.study.layer_questions import tissue_of
from viewer.study.questions import KINDS, TYPED_KINDS, Question, QuestionMaker
from viewer.study.results import Answered, Results, ResultsError, in_order

if TYPE_CHECKING:
    from meshes.model import Part

NUMBERS = (1, 100)
"""Least and most questions of a sitting."""
STATION_S = (10, 600)
"""Shortest and longest station, s."""
REGIONS: dict[str, tuple[str, ...]] = {
    "all": (),
    "neck": ("neck", "head"),
    "trunk": ("thorax", "back", "shoulder", "arm"),
    "loin": ("loin", "pelvis", "back"),
}
"""Parts of the back that a sitting can be kept to, by regions of the catalogue; () for all."""
MARKS: dict[str, str] = {"pin": "A pin", "tint": "A tint"}
EXPLAINED: dict[str, str] = {"each": "After each question", "end": "At the end"}
PLACES: dict[str, str] = {"upright": "Upright", "table": "On the table, too"}
_TRIES = 60


@dataclass(frozen=True, slots=True)
class TestChoice:
    """What a sitting shall be.

    Attributes
    ----------
    learner : str
    kinds : tuple of str
        Keys of ``KINDS``.
    number : int
        Questions, within ``NUMBERS``.
    typed : bool
        Type the answer where the kind allows it, rather than choose.
    station_s : int or None
        Time for a question, within ``STATION_S``; None for as long as it takes.
    bell : bool
        A bell is heard, not only seen, when a station ends.
    strata : tuple of int
        Strata that are asked about; () for all.
    region : str
        A key of ``REGIONS``.
    side : {"both", "left", "right"}
        Side of the donor that is asked about.
    mark : str
        A key of ``MARKS``: how the structure is marked.
    explain : str
        A key of ``EXPLAINED``: when answers are explained.
    places : str
        A key of ``PLACES``: how the donor lies.

    Raises
    ------
    ValueError
        On a value that is not allowed; the message names it.
    """

    __test__ = False

    learner: str
    kinds: tuple[str, ...] = tuple(KINDS)
    number: int = 10
    typed: bool = False
    station_s: int | None = None
    bell: bool = False
    strata: tuple[int, ...] = ()
    region: str = "all"
    side: str = "both"
    mark: str = "pin"
    explain: str = "each"
    places: str = "upright"

    def __post_init__(self) -> None:
        for name, allowed in (
            ("region", REGIONS),
            ("side", SIDE_CHOICES),
            ("mark", MARKS),
            ("explain", EXPLAINED),
            ("places", PLACES),
        ):
            if getattr(self, name) not in allowed:
                raise ValueError(
                    f"{name} must be one of {', '.join(allowed)}, got {getattr(self, name)!r}"
                )
        for stratum in self.strata:
            if not 0 <= stratum < STRATUM_COUNT:
                raise ValueError(f"strata lie in 0–{STRATUM_COUNT - 1}, got {stratum}")
        if not self.kinds:
            raise ValueError("choose at least one kind of question")
        for kind in self.kinds:
            if kind not in KINDS:
                raise ValueError(f"kinds are {', '.join(KINDS)}, got {kind!r}")
        low, high = NUMBERS
        if not low <= self.number <= high:
            raise ValueError(f"the number of questions lies in {low}–{high}, got {self.number}")
        low, high = STATION_S
        if self.station_s is not None and not low <= self.station_s <= high:
            raise ValueError(f"a station takes {low}–{high} seconds, got {self.station_s}")


class TagTest:
    """A sitting.

    Parameters
    ----------
    maker : QuestionMaker
    results : Results
    choice : TestChoice
        Its learner must be there.
    seed : int
        Decides every question, given what is due.
    clock : callable, optional
        Returns the present time, UTC.

    Attributes
    ----------
    question : Question or None
        The open one, or the one that was answered last.
    verdict : Verdict or None
        On it, None while it is open.
    asked : list of (Question, Verdict)
    due : datetime or None
        When the answered question comes again.
    trouble : str
        Why the last answer was not kept, "" when it was.
    """

    def __init__(
        self,
        maker: QuestionMaker,
        results: Results,
        choice: TestChoice,
        seed: int,
        clock: Callable[[], datetime] = lambda: datetime.now(UTC),
    ) -> None:
        self.choice = choice
        self.question: Question | None = None
        self.verdict: Verdict | None = None
        self.asked: list[tuple[Question, Verdict]] = []
        self.due: datetime | None = None
        self.trouble = ""
        self._maker, self._results, self._clock = maker, results, clock
        self._rng = random.Random(seed)
        self._began = clock()
        self._halted: datetime | None = None
        wanted = self._wanted()
        due = results.due(choice.learner, self._began)
        self._coming = in_order(wanted, due, results.met(choice.learner))

    def _wanted(self) -> list[tuple[str, str]]:
        """Return (structure, kind) of all that may be asked, shuffled, every row in its turn.

        A row with thirty levels must not crowd out a muscle that there is once.
        """
        maker, choice = self._maker, self.choice
        pairs = list(
            dict.fromkeys(
                (maker.structure(i), kind, _turn(maker.model.parts[i], kind))
                for i in maker.among(choice.strata, REGIONS[choice.region], choice.side)
                for kind in choice.kinds
                if maker.may(kind, i)
            )
        )
        self._rng.shuffle(pairs)
        turns: dict[str, int] = {}
        placed = []
        for structure, kind, whose in pairs:
            turns[whose] = turns.get(whose, -1) + 1
            placed.append((turns[whose], structure, kind))
        placed.sort(key=lambda pair: pair[0])
        return [(structure, kind) for _, structure, kind in placed]

    @property
    def typed(self) -> bool:
        """True when the open question is answered by typing."""
        q = self.question
        return q is not None and self.choice.typed and q.kind in TYPED_KINDS and bool(q.accepted)

    @property
    def over(self) -> bool:
        """True when all questions have been asked."""
        return len(self.asked) >= self.choice.number

    def next(
        self, fits: Callable[[Question], Question | None] = lambda question: question
    ) -> Question | None:
        """Return the next question; None when the sitting is over or nothing is left to ask.

        Parameters
        ----------
        fits : callable
            Returns the question as it will be shown, None where the picture would not show
            what is asked about; another is then made.
        """
        self.question = self.verdict = None
        tries = 0
        while not self.over and self._coming and tries < _TRIES:
            structure, kind = self._coming.pop(0)
            made = self._maker.make(
                self._rng.randrange(2**31), (kind,), structure, self.choice.side
            )
            self.question = fits(made) if made is not None else None
            if self.question is not None:
                break
            tries += 1
        self._began = self._clock()
        self._halted = None
        return self.question

    @property
    def now(self) -> datetime:
        """The present time, UTC."""
        return self._clock()

    def halt(self) -> None:
        """Stop the clock."""
        if self._halted is None:
            self._halted = self._clock()

    def go_on(self) -> None:
        """Let the clock go on; the time between is not counted."""
        if self._halted is not None:
            self._began += self._clock() - self._halted
            self._halted = None

    @property
    def seconds(self) -> float:
        """Time spent on the open question, s."""
        return max(((self._halted or self._clock()) - self._began).total_seconds(), 0.0)

    def answer_typed(self, text: str) -> Verdict:
        """Answer by typing."""
        return self._keep(judge(text, self._open.accepted), text.strip())

    def answer_choice(self, place: int) -> Verdict:
        """Answer by the place of a choice, from 0."""
        q = self._open
        if not 0 <= place < len(q.choices) or q.right < 0:
            raise ValueError(f"there are {len(q.choices)} choices, got {place}")
        return self._keep(_verdict(place == q.right, q.choices[q.right]), q.choices[place])

    def answer_part(self, part_id: str) -> Verdict:
        """Answer by pointing; the same structure on the other side is as good."""
        q = self._open
        named = self._maker.model.parts
        hit = part_id in named and self._maker.structure(part_id) == q.structure
        said = self._maker.english(part_id) if self._known(part_id) else part_id
        words = "" if hit else told("You pointed to {name}.", name=said) + " "
        verdict = _verdict(hit, self._maker.english(q.part_id))
        return self._keep(Verdict(hit, False, words + verdict.words), said)

    def answer_order(self, titles: Collection[str]) -> Verdict:
        """Answer by an order, outermost first; one swap of neighbours is close."""
        q, titles = self._open, tuple(titles)
        right = titles == q.order
        swaps = [
            (*q.order[:k], q.order[k + 1], q.order[k], *q.order[k + 2 :])
            for k in range(len(q.order) - 1)
        ]
        verdict = _verdict(right, ", ".join(q.order), near=titles in swaps)
        return self._keep(verdict, ", ".join(titles))

    def give_up(self) -> Verdict:
        """Leave the question unanswered: the time is over, or it is not known."""
        q = self._open
        right = (
            ", ".join(q.order)
            or (q.choices[q.right] if q.right >= 0 else "")
            or self._maker.english(q.part_id)
        )
        return self._keep(Verdict(False, False, told("No answer. It is {name}.", name=right)), "")

    @property
    def right(self) -> int:
        """How many answers were right."""
        return sum(verdict.right for _, verdict in self.asked)

    def by_stratum(self) -> dict[int, tuple[int, int]]:
        """Return (right, asked) by stratum, outermost first."""
        found: dict[int, tuple[int, int]] = {}
        for question, verdict in self.asked:
            right, asked = found.get(question.stratum, (0, 0))
            found[question.stratum] = (right + verdict.right, asked + 1)
        return dict(sorted(found.items()))

    def summary(self) -> str:
        """Return how it went, in a sentence or two."""
        if not self.asked:
            return told("No question was answered.")
        count = len(self.asked)
        words = told("{right} of {count} right.", right=self.right, count=count)
        if near := sum(v.near for _, v in self.asked):
            words += " " + told("Close: {count}.", count=near)
        missed = dict.fromkeys(self._maker.english(q.part_id) for q, v in self.asked if not v.right)
        if missed:
            words += " " + told("To look at again: {names}.", names=", ".join(missed))
        return words

    @property
    def _open(self) -> Question:
        if self.question is None or self.verdict is not None:
            raise ValueError("no question is open")
        return self.question

    def _known(self, part_id: str) -> bool:
        part = self._maker.model.parts.get(part_id)
        return part is not None and part.entry in self._maker.model.catalogue

    def _keep(self, verdict: Verdict, given: str) -> Verdict:
        q = self._open
        answer = Answered(
            q.structure, q.kind, q.stratum, verdict.right, verdict.near, given, self.seconds
        )
        self.due, self.trouble = None, ""
        try:
            self.due = self._results.keep(self.choice.learner, answer, self._clock())
        except ResultsError as error:
            # The sitting goes on; what was answered still counts in its sum.
            self.trouble = str(error)
        self.verdict = verdict
        self.asked.append((q, verdict))
        return verdict


def _turn(part: Part, kind: str) -> str:
    """Return who takes turns: rows, and for the question of tissue the tissues.

    There are a hundred bones and nerves to one skin.
    """
    return f"tissue {tissue_of(part)}" if kind == "tissue" else part.entry


def _verdict(right: bool, shown: str, near: bool = False) -> Verdict:
    if right:
        words = told("Right: {name}.", name=shown)
    elif near:
        words = told("Close, but no: it is {name}.", name=shown)
    else:
        words = told("No: it is {name}.", name=shown)
    return Verdict(right, near and not right, words)
