"""Keeps what was answered, per learner, structure and kind of question, in a local file.

The interval until a card comes again is worked out by the schedule library (FSRS).
Nothing leaves the machine.
"""

from __future__ import annotations

import csv
import io
import json
import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from zlib import crc32

from fsrs import Card, Rating, Scheduler

from viewer.state.tongue import told

FORMAT = 1
_TABLES = """
create table if not exists learner (id integer primary key, name text not null unique);
create table if not exists card (
    learner integer not null references learner(id),
    structure text not null, kind text not null, stratum integer not null,
    state text not null, due text not null,
    primary key (learner, structure, kind));
create table if not exists review (
    id integer primary key, learner integer not null references learner(id),
    structure text not null, kind text not null, stratum integer not null,
    at text not null, outcome integer not null, given text not null, seconds real not null);
create table if not exists exam (
    learner integer primary key references learner(id), day text not null);
create table if not exists note (
    learner integer not null references learner(id),
    structure text not null, text text not null, at text not null,
    primary key (learner, structure));
create table if not exists lab (
    learner integer not null references learner(id),
    side text not null, step text not null, record text not null, at text not null,
    primary key (learner, side, step));
"""
_LONGEST_NAME = 60
_NOT_BROKEN = ("database is locked", "unable to open", "attempt to write a readonly", "disk")
"""How messages begin that speak of the disk or another program, not of a broken file."""


class ResultsError(Exception):
    """Results that cannot be kept or read; the message is one line."""


@dataclass(frozen=True, slots=True)
class Answered:
    """One answer as it is kept.

    Attributes
    ----------
    structure : str
        Row of the catalogue, with its level where it has one.
    kind : str
        Kind of question.
    stratum : int
    right : bool
    near : bool
        Wrong, but close.
    given : str
    seconds : float
    """

    structure: str
    kind: str
    stratum: int
    right: bool
    near: bool = False
    given: str = ""
    seconds: float = 0.0

    @property
    def rating(self) -> Rating:
        """What the schedule is told: slow right answers were hard."""
        if not self.right:
            return Rating.Again
        return Rating.Hard if self.seconds > 30.0 else Rating.Good


@dataclass(frozen=True, slots=True)
class Weakness:
    """How one stratum or structure goes: answers, right ones, due cards."""

    name: str
    answers: int
    right: int
    due: int

    @property
    def share(self) -> float:
        """Share (0-1) of right answers."""
        return self.right / self.answers if self.answers else 0.0


class Results:
    """The results file.

    Parameters
    ----------
    path : Path
        A broken file is moved aside and never deleted; ``message`` then says so. One of a newer
        program is refused and stays where it is.
    wait_s : float
        How long to wait for another program that writes it.

    Raises
    ------
    ResultsError
        The place cannot be written, or another program holds the file.
    """

    def __init__(self, path: Path, wait_s: float = 5.0) -> None:
        self.path = Path(path)
        self._wait_s = wait_s
        self.message = ""
        self._scheduler = Scheduler(enable_fuzzing=False)
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            self._base = self._opened()
        except sqlite3.DatabaseError as error:
            if str(error).startswith(_NOT_BROKEN):
                raise ResultsError(_unusable(self.path, error)) from error
            aside = self._aside()
            self.message = told(
                "The results in {file} cannot be read ({why}); the file was kept as {aside} and a "
                "new one begun.",
                file=self.path.name,
                why=error,
                aside=aside.name,
            )
            self._base = self._opened()
        except OSError as error:
            raise ResultsError(
                told("{path} cannot be written: {why}", path=self.path, why=error.strerror)
            ) from error

    def _opened(self) -> sqlite3.Connection:
        base = sqlite3.connect(self.path, timeout=self._wait_s)
        try:
            version = base.execute("pragma user_version").fetchone()[0]
            if version > FORMAT:
                # Not broken: the program that wrote it must find it where it is.
                raise ResultsError(
                    _unusable(
                        self.path,
                        told("written by a newer Peelback, format {version}", version=version),
                    )
                )
            if base.execute("pragma quick_check").fetchone()[0] != "ok":
                raise sqlite3.DatabaseError(told("the file is damaged"))
            base.executescript(_TABLES)
            base.execute(f"pragma user_version = {FORMAT}")
            base.execute("select learner, structure, kind, stratum, state, due from card limit 1")
            base.execute("select stratum, at, outcome, given, seconds from review limit 1")
            base.commit()
        except (sqlite3.DatabaseError, ResultsError):
            base.close()
            raise
        return base

    def _aside(self) -> Path:
        number = 1
        while (aside := self.path.with_name(f"{self.path.name}.broken-{number}")).exists():
            number += 1
        self.path.replace(aside)
        return aside

    def close(self) -> None:
        """Let go of the file."""
        self._base.close()

    # Learners ---------------------------------------------------------------------------

    def learners(self) -> tuple[str, ...]:
        """Return the names of all learners."""
        return tuple(row[0] for row in self._base.execute("select name from learner order by name"))

    def add_learner(self, name: str) -> str:
        """Add a learner; a name that is there already is taken as it is."""
        name = " ".join(name.split())
        if not 1 <= len(name) <= _LONGEST_NAME:
            raise ResultsError(
                told(
                    "a learner's name needs 1 to {most} letters, got {count}",
                    most=_LONGEST_NAME,
                    count=len(name),
                )
            )
        try:
            with self._base:
                self._base.execute("insert or ignore into learner (name) values (?)", (name,))
        except sqlite3.Error as error:
            raise ResultsError(told("the learner was not kept: {why}", why=error)) from error
        return name

    def remove_learner(self, name: str) -> None:
        """Take a learner away, with all answers, cards and notes; there is no way back.

        Raises
        ------
        ResultsError
            The file cannot be written now; nothing was taken away.
        """
        who = self._learner(name)
        try:
            with self._base:
                for table in ("card", "review", "note", "lab", "exam"):
                    self._base.execute(f"delete from {table} where learner = ?", (who,))
                self._base.execute("delete from learner where id = ?", (who,))
        except sqlite3.Error as error:
            raise ResultsError(told("the learner was not deleted: {why}", why=error)) from error

    def _learner(self, name: str) -> int:
        row = self._base.execute("select id from learner where name = ?", (name,)).fetchone()
        if row is None:
            raise ResultsError(told("there is no learner “{name}”", name=name))
        return row[0]

    # Answers ----------------------------------------------------------------------------

    def keep(self, learner: str, answer: Answered, now: datetime | None = None) -> datetime:
        """Keep an answer and return when its card comes again (UTC).

        Raises
        ------
        ResultsError
            The file cannot be written now.
        """
        try:
            return self._kept(learner, answer, now or datetime.now(UTC))
        except sqlite3.Error as error:
            raise ResultsError(told("the answer was not kept: {why}", why=error)) from error

    def _kept(self, learner: str, answer: Answered, now: datetime) -> datetime:
        who = self._learner(learner)
        row = self._base.execute(
            "select state from card where learner = ? and structure = ? and kind = ?",
            (who, answer.structure, answer.kind),
        ).fetchone()
        card = Card.from_dict(json.loads(row[0])) if row else Card(due=now)
        card, _ = self._scheduler.review_card(card, answer.rating, review_datetime=now)
        due = before_exam(card.due, now, self.exam(learner), f"{answer.structure} {answer.kind}")
        outcome = 2 if answer.right else 1 if answer.near else 0
        with self._base:
            self._base.execute(
                "insert or replace into card values (?, ?, ?, ?, ?, ?)",
                (who, answer.structure, answer.kind, answer.stratum,
                 json.dumps(card.to_dict()), due.isoformat()),
            )  # fmt: skip
            self._base.execute(
                "insert into review (learner, structure, kind, stratum, at, outcome, given, seconds)"
                " values (?, ?, ?, ?, ?, ?, ?, ?)",
                (who, answer.structure, answer.kind, answer.stratum, now.isoformat(),
                 outcome, answer.given, answer.seconds),
            )  # fmt: skip
        return due

    def due(self, learner: str, now: datetime | None = None) -> tuple[tuple[str, str], ...]:
        """Return (structure, kind) of the cards whose time has come, longest due first."""
        now = now or datetime.now(UTC)
        rows = self._base.execute(
            "select structure, kind, due from card where learner = ?", (self._learner(learner),)
        ).fetchall()
        ripe = [(datetime.fromisoformat(d), s, k) for s, k, d in rows]
        return tuple((s, k) for d, s, k in sorted(ripe) if d <= now)

    def coming(self, learner: str, most: int = 50) -> tuple[tuple[datetime, str, str], ...]:
        """Return (when due, structure, kind) of the next cards, the first due first."""
        rows = self._base.execute(
            "select due, structure, kind from card where learner = ?", (self._learner(learner),)
        )
        dated = sorted((datetime.fromisoformat(d), s, k) for d, s, k in rows)
        return tuple(dated[:most])

    def met(self, learner: str) -> frozenset[tuple[str, str]]:
        """Return (structure, kind) of every card there is."""
        rows = self._base.execute(
            "select structure, kind from card where learner = ?", (self._learner(learner),)
        )
        return frozenset((s, k) for s, k in rows)

    # The examination --------------------------------------------------------------------

    def exam(self, learner: str) -> date | None:
        """Return the day of a learner's examination, None where none is set."""
        row = self._base.execute(
            "select day from exam where learner = ?", (self._learner(learner),)
        ).fetchone()
        return date.fromisoformat(row[0]) if row else None

    def set_exam(self, learner: str, day: date | None, now: datetime | None = None) -> None:
        """Set the day of the examination, or none; every card then comes again before it.

        Raises
        ------
        ResultsError
            The file cannot be written now.
        """
        now, who = now or datetime.now(UTC), self._learner(learner)
        try:
            with self._base:
                self._base.execute("delete from exam where learner = ?", (who,))
                if day is not None:
                    self._base.execute("insert into exam values (?, ?)", (who, day.isoformat()))
                rows = self._base.execute(
                    "select structure, kind, state from card where learner = ?", (who,)
                ).fetchall()
                for structure, kind, state in rows:
                    own = Card.from_dict(json.loads(state)).due
                    due = before_exam(own, now, day, f"{structure} {kind}")
                    self._base.execute(
                        "update card set due = ? where learner = ? and structure = ? and kind = ?",
                        (due.isoformat(), who, structure, kind),
                    )
        except sqlite3.Error as error:
            raise ResultsError(told("the examination was not kept: {why}", why=error)) from error

    # What is weak -----------------------------------------------------------------------

    def by_stratum(self, learner: str, now: datetime | None = None) -> tuple[Weakness, ...]:
        """Return how each stratum goes that was asked, outermost first; named by its number."""
        return self._grouped(learner, "stratum", now)

    def by_kind(self, learner: str, now: datetime | None = None) -> tuple[Weakness, ...]:
        """Return how each kind of question goes, weakest first."""
        found = self._grouped(learner, "kind", now)
        return tuple(sorted(found, key=lambda w: (w.share, -w.answers, w.name)))

    def by_structure(self, learner: str, now: datetime | None = None) -> tuple[Weakness, ...]:
        """Return how each structure goes, weakest first."""
        found = self._grouped(learner, "structure", now)
        return tuple(sorted(found, key=lambda w: (w.share, -w.answers, w.name)))

    def _grouped(self, learner: str, column: str, now: datetime | None) -> tuple[Weakness, ...]:
        now = now or datetime.now(UTC)
        who = self._learner(learner)
        due: dict[object, int] = {}
        for name, when in self._base.execute(
            f"select {column}, due from card where learner = ?", (who,)
        ):
            due[name] = due.get(name, 0) + (datetime.fromisoformat(when) <= now)
        rows = self._base.execute(
            f"select {column}, count(*), sum(outcome = 2) from review where learner = ?"
            f" group by {column} order by {column}",
            (who,),
        )
        return tuple(Weakness(str(n), count, right, due.get(n, 0)) for n, count, right in rows)

    def csv(self, learner: str) -> str:
        """Return every answer of a learner as comma-separated values."""
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(("at", "structure", "kind", "stratum", "outcome", "given", "seconds"))
        words = ("wrong", "near", "right")
        for at, structure, kind, stratum, outcome, given, seconds in self._base.execute(
            "select at, structure, kind, stratum, outcome, given, seconds from review"
            " where learner = ? order by id",
            (self._learner(learner),),
        ):
            writer.writerow(
                (at, structure, kind, stratum, words[outcome], _harmless(given), f"{seconds:.1f}")
            )
        return out.getvalue()

    # Notes ------------------------------------------------------------------------------

    def set_note(self, learner: str, structure: str, text: str) -> None:
        """Keep a learner's own note on a structure; an empty one is taken away.

        Raises
        ------
        ResultsError
            The file cannot be written now.
        """
        try:
            self._set_note(learner, structure, text)
        except sqlite3.Error as error:
            raise ResultsError(str(error)) from error

    def _set_note(self, learner: str, structure: str, text: str) -> None:
        who = self._learner(learner)
        with self._base:
            if text.strip():
                self._base.execute(
                    "insert or replace into note values (?, ?, ?, ?)",
                    (who, structure, text.strip(), datetime.now(UTC).isoformat()),
                )
            else:
                self._base.execute(
                    "delete from note where learner = ? and structure = ?", (who, structure)
                )

    def notes(self, learner: str) -> dict[str, str]:
        """Return a learner's notes by structure."""
        rows = self._base.execute(
            "select structure, text from note where learner = ?", (self._learner(learner),)
        )
        return dict(rows.fetchall())

    # Take-home lab ----------------------------------------------------------------------

    def keep_lab(self, learner: str, side: str, step: str, record: str) -> None:
        """Keep how a step of the take-home lab went; ``record`` is JSON of the lab's own.

        Raises
        ------
        ResultsError
            The file cannot be written now.
        """
        try:
            with self._base:
                self._base.execute(
                    "insert or replace into lab values (?, ?, ?, ?, ?)",
                    (self._learner(learner), side, step, record, datetime.now(UTC).isoformat()),
                )
        except sqlite3.Error as error:
            raise ResultsError(str(error)) from error

    def lab(self, learner: str, side: str) -> tuple[str, ...]:
        """Return the kept records of a side."""
        rows = self._base.execute(
            "select record from lab where learner = ? and side = ? order by at",
            (self._learner(learner), side),
        )
        return tuple(row[0] for row in rows)

    def forget_lab(self, learner: str, side: str) -> None:
        """Take all records of a side away, to begin anew."""
        with self._base:
            self._base.execute(
                "delete from lab where learner = ? and side = ?", (self._learner(learner), side)
            )


def _unusable(path: Path, why: object) -> str:
    return told("{path} cannot be used: {why}", path=path, why=why)


def _harmless(text: str) -> str:
    """Return a cell that a spreadsheet will not take for a formula."""
    return f"'{text}" if text[:1] in ("=", "+", "-", "@") else text


LAST_STRETCH = 0.6
"""Of the time left, cards that would come too late are spread over what follows this share."""


def before_exam(due: datetime, now: datetime, exam: date | None, card: str) -> datetime:
    """Return when a card comes again, in time for an examination.

    A card that the schedule would bring after the eve of the examination comes in the last
    stretch before it instead; which day is settled by its name, so that not all come at once.
    On the eve and after it the schedule's own day stands.

    Parameters
    ----------
    due, now : datetime
        UTC.
    exam : date or None
    card : str
        Structure and kind.
    """
    if exam is None:
        return due
    eve = datetime.combine(exam, time(), UTC) - timedelta(days=1)
    if due <= eve or now >= eve:
        return due
    share = LAST_STRETCH + (1.0 - LAST_STRETCH) * (crc32(card.encode()) % 1000) / 1000.0
    return now + share * (eve - now)


def in_order(
    wanted: Iterable[tuple[str, str]],
    due: Iterable[tuple[str, str]],
    met: Iterable[tuple[str, str]],
) -> list[tuple[str, str]]:
    """Return what to ask: cards that are due, then new ones, then the rest.

    Each group keeps its order; of ``due`` only what is wanted comes.
    """
    wanted = list(dict.fromkeys(wanted))
    asked, known = set(wanted), set(met)
    first = [pair for pair in due if pair in asked]
    taken = set(first)
    new = [pair for pair in wanted if pair not in known and pair not in taken]
    taken |= set(new)
    return first + new + [pair for pair in wanted if pair not in taken]
