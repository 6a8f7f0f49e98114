"""The window's commands for studying: tag test, results, notes, take-home lab."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

from viewer.panels.own_notes import OwnNotes
from viewer.panels.results_sheet import ResultsSheet
from viewer.panels.sitting import Sitting
from viewer.panels.test_choices import TestChoices
from viewer.state import commands
from viewer.state.captions import common_name, sentence_case
from viewer.state.step_words import name_of
from viewer.state.tongue import told
from viewer.study.lab import LabBook, lab_book
from viewer.study.questions import QuestionMaker, structure_of
from viewer.study.results import Results, ResultsError
from viewer.study.store import open_results, results_path
from viewer.study.tag_test import REGIONS, TagTest, TestChoice


class StudyMenu:
    """What the Study menu calls."""

    def _make_study(self) -> None:
        """Set up what studying needs; files are opened when they are first wanted."""
        self.takeover: Any = None
        self._results: Results | None = None
        self._maker: QuestionMaker | None = None
        self._test_choice: TestChoice | None = None
        self._own_notes: dict[str, str] | None = None

    @property
    def results(self) -> Results:
        """The results of this machine, opened at the first wish."""
        if self._results is None:
            self._results, message = open_results()
            if message:
                self.tell_fault(message)
        return self._results

    @property
    def learner(self) -> str:
        """Who studies: the learner chosen last, else the first."""
        names = self.results.learners()
        chosen = self.settings.learner
        return chosen if chosen in names else names[0]

    def choose_learner(self, name: str) -> None:
        """Take a learner for all that follows."""
        if name != self.settings.learner:
            self._take_settings(replace(self.settings, learner=name))

    def _end_study(self) -> None:
        if self.takeover is not None:
            self.takeover.finish()
        if self._results is not None:
            self._results.close()
            self._results = None

    # --- tag test -------------------------------------------------------------------------------

    def start_tag_test(self) -> None:
        """Ask what the tag test shall be, and begin."""
        if self.lent or not self._model_ready():
            return
        if self._layers is None:
            self.say("Looking through the layers …", 0)
        self._with_plain_layers(self._ask_tag_test)

    def _with_plain_layers(self, go_on: Any) -> None:
        """Go on when the layers of the back in place are there."""
        if self._layers is not None:
            go_on()
            return
        if go_on not in self._when_layers:
            self._when_layers.append(go_on)
        self._questions.want_layers()

    def question_maker(self) -> QuestionMaker:
        """Return the maker of questions on the present model."""
        if self._maker is None or self._maker.model is not self.model:
            self._maker = QuestionMaker(self.model, self._layers)
        return self._maker

    def _ask_tag_test(self) -> None:
        if self.lent or self._closed:
            return
        self.statusBar().clearMessage()
        sheet = TestChoices(
            self.results.learners(),
            replace(self._test_choice or TestChoice(self.learner), learner=self.learner),
            self._what_there_is,
            self,
            self.results.exam,
        )
        sheet.learner_added.connect(lambda name: self._add_learner(name, sheet))
        sheet.exam_changed.connect(lambda name, day: self._set_exam(name, day, sheet))
        sheet.accepted.connect(lambda: self.begin_tag_test(sheet.choice))
        self._test_sheet = sheet
        self._open(sheet)

    def _add_learner(self, name: str, sheet: Any) -> None:
        try:
            name = self.results.add_learner(name)
        except ResultsError as error:
            sheet.told.setText(str(error))
            return
        self.choose_learner(name)
        sheet.show_learners(self.results.learners(), name)

    def _set_exam(self, name: str, day: Any, sheet: Any) -> None:
        try:
            self.results.set_exam(name, day)
        except ResultsError as error:
            sheet.told.setText(str(error))

    def _what_there_is(self, choice: TestChoice) -> tuple[str, bool]:
        """Say how much a choice can ask, and how much of it is due."""
        maker = self.question_maker()
        ids = maker.among(choice.strata, REGIONS[choice.region], choice.side)
        pairs = {
            (maker.structure(i), kind) for i in ids for kind in choice.kinds if maker.may(kind, i)
        }
        if not pairs:
            return told("Nothing can be asked of this; choose more strata or kinds."), False
        structures = len({structure for structure, _ in pairs})
        due = sum(pair in pairs for pair in self.results.due(choice.learner))
        words = told(
            "{count} structures can be asked about, in {ways} ways.",
            count=structures,
            ways=len(pairs),
        )
        if due:
            words += " " + told("Due and coming first: {count}.", count=due)
        return words, True

    def begin_tag_test(self, choice: TestChoice | None, seed: int | None = None) -> Sitting | None:
        """Begin a tag test in the window.

        Parameters
        ----------
        choice : TestChoice or None
            None begins nothing.
        seed : int, optional
            Decides the questions, given what is due; chance when not given.
        """
        if choice is None or self.lent:
            return None
        self._test_choice = choice
        self.choose_learner(choice.learner)
        seed = random.SystemRandom().randrange(2**31) if seed is None else seed
        test = TagTest(self.question_maker(), self.results, choice, seed)
        return Sitting(self, test, self.question_maker(), seed)

    # --- results --------------------------------------------------------------------------------

    def _structure_names(self) -> dict[str, str]:
        """Names of structures without side, as results and notes are kept."""
        names: dict[str, str] = {}
        for part in self.model.parts.values():
            try:
                name = name_of(part.id, self.model.catalogue)
            except KeyError:
                name = common_name(part, self.model.catalogue)
            names.setdefault(structure_of(part), sentence_case(name))
        return names

    def open_results(self) -> None:
        """Show what is weak, what comes next, and who learns."""
        names = self._structure_names()
        sheet = ResultsSheet(
            self.results,
            self.learner,
            lambda s: names.get(s, s.replace("_", " ").capitalize()),
            self,
        )
        sheet.learner_chosen.connect(self._switch_learner)
        if self.takeover is not None:
            sheet.practise.setEnabled(False)
        sheet.test_wanted.connect(self.start_tag_test)
        self._results_sheet = sheet
        self._open(sheet)

    def _switch_learner(self, name: str) -> None:
        self.choose_learner(name)
        self._own_notes = None
        self._show_caption()

    # --- notes ----------------------------------------------------------------------------------

    def note_on(self, part: Any) -> str:
        """Return the learner's own note on a part, "" for none."""
        if self._own_notes is None:
            if self._results is None and not results_path().exists():
                return ""
            self._own_notes = self.results.notes(self.learner)
        return self._own_notes.get(structure_of(part), "")

    def own_words_on(self, part: Any) -> str:
        """Return what the reader has written on a part: the note, and the pins stuck to it."""
        pins = [p.text for p in self.state.pins if p.part_id == part.id and p.text]
        note = self.note_on(part)
        lines = [note] if note else []
        lines += [told("Pin: {words}", words=words) for words in pins]
        return "\n".join(lines)

    def write_note(self, structure: str, words: str) -> str:
        """Keep a note of one's own, or take it away; returns why it was not kept, "" when it was."""
        try:
            self.results.set_note(self.learner, structure, words)
        except ResultsError as error:
            why = told("The note was not kept: {why}.", why=error)
            self.say(why, 0)
            return why
        self._own_notes = None
        self._show_caption()
        return ""

    def note_selected(self) -> None:
        """Write a note on the picked part."""
        part = self.model.parts.get(self.state.selected or "")
        if part is None:
            self.say("Pick a part first: the note is shown in its caption.")
            return
        self.open_notes(structure_of(part))
        self._notes_sheet.words.setFocus()

    def open_notes(self, at: str = "") -> None:
        """Read and change one's own notes."""
        sheet = OwnNotes(self)
        names = self._structure_names()

        def change(structure: str, words: str) -> None:
            if why := self.write_note(structure, words):
                sheet.tell(why)
                return
            notes = self.results.notes(self.learner)
            # The part that was come for keeps its row until its own note is taken out.
            listed = notes if structure == at or not at else {at: "", **notes}
            sheet.show_notes(listed, names, structure if structure in notes else "")

        sheet.note_changed.connect(change)
        sheet.wanted.connect(self._go_to_structure)
        sheet.show_notes(self.results.notes(self.learner), names, at)
        self._notes_sheet = sheet
        self._open(sheet)

    def _go_to_structure(self, structure: str) -> None:
        ids = [p.id for p in self.model.parts.values() if structure_of(p) == structure]
        if ids:
            self.do(commands.select(ids))
            self.fly_to(ids)

    # --- take-home lab --------------------------------------------------------------------------

    def start_lab(self) -> None:
        """Show the cautions, ask for the side, and go on with the take-home lab."""
        if self.lent or not self._model_ready():
            return
        from viewer.panels.lab_panel import LabStart
        from viewer.panels.sheets import cautions_html

        way = {}
        for side in ("left", "right"):
            book = self._lab_book(side)
            way[side] = (book.done, len(book.steps))
        sheet = LabStart(cautions_html(self.theme), way, self.learner, self)
        sheet.accepted.connect(lambda: self.begin_lab(sheet.side.currentData()))
        self._lab_sheet = sheet
        self._open(sheet)

    def _lab_book(self, side: str) -> LabBook:
        steps = [step.id for step in self.plan.steps]
        book, broken = lab_book(side, steps, self.results.lab(self.learner, side))
        if broken:
            self.say(told("{count} kept steps of the lab could not be read.", count=broken), 0)
        return book

    def begin_lab(self, side: str) -> Any:
        """Go on with the take-home lab on a side."""
        if self.lent or not self._model_ready():
            return None
        from viewer.panels.take_home_lab import TakeHomeLab

        learner, results = self.learner, self.results
        return TakeHomeLab(
            self,
            self._lab_book(side),
            lambda step, record: results.keep_lab(learner, side, step, record),
            lambda: results.forget_lab(learner, side),
        )
