"""The take-home lab in the window: step by step, each cut drawn on the model and handed in."""

from __future__ import annotations

import logging
from dataclasses import replace
from html import escape
from pathlib import Path
from typing import Any

import numpy as np
from PySide6.QtGui import QCursor, QPageSize, QPdfWriter, QTextDocument
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox, QPushButton

from meshes.errors import PeelbackError
from meshes.model import other_side
from viewer.panels.lab_panel import LabPanel
from viewer.panels.takeover import Takeover
from viewer.state.captions import common_name
from viewer.state.cut_line import CutLine, add_cut_point, begin_cut, change_cut, end_cut
from viewer.state.cut_words import answer_in_words, headed, line_in_words
from viewer.state.plan import Step, names_in_words
from viewer.state.tongue import figure, refused, told, told_each
from viewer.state.view_state import VIEWS, ViewState
from viewer.state.visibility import taken_off, visible_parts
from viewer.state.working_file import write_atomically
from viewer.study.lab import LabBook, StepRecord, drawn_cut, lines_of, record_to_json
from viewer.study.results import ResultsError

LOG = logging.getLogger("peelback")

NEAR_MM = 15.0
LIFT_MM = 0.6
FIRST_DEPTH_MM = 3.0
UNDER_MM = 6.0
"""A layer so near beneath what was clicked on was meant."""
SIDES = {"left": "Left side", "right": "Right side"}


class TakeHomeLab(Takeover):
    """Goes through the plan on one side until ``finish``.

    Parameters
    ----------
    window : MainWindow
    book : LabBook
        What has been done already.
    keep : callable
        Takes a ``StepRecord``'s step and its JSON, and keeps them; may raise ``ResultsError``.
    forget : callable
        Drops all that was kept of this side.
    """

    def __init__(self, window: Any, book: LabBook, keep: Any, forget: Any) -> None:
        self.lab: LabPanel = LabPanel()
        super().__init__(window, self.lab, keep=tuple(f"view_{v}" for v in VIEWS))
        self.book = book
        self.step: Step | None = None
        self.answer: Any = None
        self._planned: tuple = ()
        self._news = ""
        self._keep_record, self._forget = keep, forget
        lab = self.lab
        lab.depth_wanted.connect(self.set_depth)
        lab.hand_in_wanted.connect(self.hand_in)
        lab.point_back_wanted.connect(self.point_back)
        lab.again_wanted.connect(self.again)
        lab.go_on_wanted.connect(self.go_on)
        lab.step_back_wanted.connect(self.step_back)
        lab.sum_wanted.connect(self.show_sum)
        lab.csv_wanted.connect(self._ask_csv)
        lab.pdf_wanted.connect(self._ask_pdf)
        lab.anew_wanted.connect(self._ask_anew)
        lab.leave_wanted.connect(self.finish)
        for keys, deed in (
            ("Return", self.press_enter),
            ("Enter", self.press_enter),
            ("Backspace", self.point_back),
            ("Esc", self.finish),
            ("Ctrl+Left", lambda: self.aim(-1, 0)),
            ("Ctrl+Right", lambda: self.aim(1, 0)),
            ("Ctrl+Up", lambda: self.aim(0, -1)),
            ("Ctrl+Down", lambda: self.aim(0, 1)),
        ):
            self.key(keys, deed)
        self.take()
        self.begin()

    # --- steps ----------------------------------------------------------------------------------

    def begin(self) -> None:
        """Show the dissection as far as it was done, and the first step that is not."""
        before = self.window.state
        self._plain = ViewState(
            look=before.look, working_side=self.book.side, orbit=before.orbit, view="posterior"
        )
        self.show_state(self._state_of(self.book), "lab")
        self.show_next()

    def _state_of(self, book: LabBook) -> ViewState:
        """Return the dissection as far as a book goes.

        The flap of the last step lies folded; those before it are out of the way, or their
        flaps and stumps would lie over what comes next.
        """
        state, done = self._plain, [s for s in book.steps if book.of(s).done]
        for step_id in done:
            fold = step_id == done[-1] and self._folds(step_id)
            command = self.window.plan.do_step(step_id, self.window.model, book.side, fold=fold)
            state = command.change(state)
        return replace(state, surface_marks=self._feels(book))

    def _feels(self, book: LabBook) -> bool:
        """Tell whether the step that comes only feels through the skin: its marks are then shown."""
        step = self.window.plan[book.next] if book.next is not None else None
        return step is not None and not step.needs and not step.removes

    def _guard(self) -> tuple[str, str]:
        """Return how the step keeps the blade off what lies beneath, and why; "" where it can't.

        Bone is sawn short of the canal, dura lifted with forceps; under muscle and fascia
        goes a finger. Common practice, no source.
        """
        if self.step is None:
            return "", ""
        plan, model = self.window.plan, self.window.model
        taken = plan.removed_by(self.step, model, self.book.side)
        kinds = {model.parts[i].kind for i in taken}
        if "bone" in kinds:
            return (
                told("&Short of the canal, the rest bluntly"),
                told("The saw stops in the bone; what is left of it is broken and lifted off"),
            )
        if "canal" in kinds:
            return (
                told("Lifted with &forceps first"),
                told("The sheet is drawn away from what it covers: the scissors cut only it"),
            )
        if kinds & {"muscle", "fascia"}:
            return (
                told("A &finger underneath"),
                told(
                    "The layer is loosened and lifted first: the blade goes through it and no "
                    "further"
                ),
            )
        return "", ""

    def _folds(self, step_id: str) -> bool:
        """True where a step lays something back: skin, fat, fascia or muscle."""
        plan = self.window.plan
        return bool(plan.folds_of(plan[step_id], self.window.model, self.book.side))

    def _goes(self) -> str:
        """Return what becomes of what the step frees: "fold", "off", or "" where it frees none."""
        if self.step is None:
            return ""
        if self._folds(self.step.id):
            return "fold"
        plan, model = self.window.plan, self.window.model
        return "off" if plan.removed_by(self.step, model, self.book.side) else ""

    def _prepare(self, step_id: str) -> None:
        """Work the step's fold out while its cut is drawn."""
        if self._folds(step_id):
            after = self._state_of(self.book.put(replace(self.book.of(step_id), done=True)))
            self.window.folds.prepare([(after.folds, after.removed)])

    def show_next(self) -> None:
        """Show the next step, or the sum."""
        window = self.window
        self.answer = None
        step_id = self.book.next
        if step_id is None:
            self.step = None
            window.session.do(end_cut())
            self._draw()
            self.show_sum(True)
            return
        self.step = window.plan[step_id]
        self._planned = ()
        rehearser = window._ready_rehearser()
        try:
            self._planned = rehearser.plan_lines(step_id, self.book.side)
        except PeelbackError as error:
            LOG.warning("no lines for %s: %s", step_id, error)
        # Where the plan cuts nothing, an attachment is no line that anybody should draw.
        self._planned = tuple(line for line in self._planned if self.step.cut or not line.derived)
        record = replace(self.book.of(step_id), lines=lines_of(self._planned))
        self.book = self.book.put(record)
        if record.lines:
            window.session.do(begin_cut(step_id))
            window.session.do(change_cut("blade", depth_mm=FIRST_DEPTH_MM))
            self.lab.say(
                told("Click along the line in the picture; Ctrl with the arrows and Enter do, too.")
            )
        else:
            window.session.do(end_cut())
            self.lab.say(told("This step cuts nothing: look, free, and go on."))
        if self._news:
            self.lab.say(self._news)
            self._news = ""
        self._show_step()
        self._draw()
        self._prepare(step_id)

    def _show_step(self) -> None:
        step, book = self.step, self.book
        names = self.window._names_of_things()
        cuts = step.cut.split("; ") if step.cut else book.of(step.id).lines
        parts = [
            (told("Do"), told(step.do)),
            (told("Cut"), "; ".join(map(line_in_words, cuts))),
            (told("Keep"), names_in_words(step.keep, names)),
            (told("Too deep if"), _sentences(told_each(step.stop, "; "))),
            (told("Hinge"), told_each(step.hinge, " – ")),
            (told("Caution"), told(step.caution)),
        ]
        where = told(
            "Step {k} of {count}, {side}",
            k=book.steps.index(step.id) + 1,
            count=len(book.steps),
            side=told(book.side),
        )
        self.lab.show_step(where, told(step.title), parts, book.of(step.id))
        self.lab.show_way(book)
        self._show_line()

    def _show_line(self) -> None:
        line = self.window.state.cut_line
        record = self.book.of(self.step.id) if self.step else StepRecord("")
        self.lab.show_line(
            line.depth_mm if line else FIRST_DEPTH_MM,
            len(line.points) if line else 0,
            self._goes(),
            len(record.missing),
            self._guard(),
        )
        self.lab.step_back.setEnabled(self.book.done > 0)

    def go_on(self) -> None:
        """Finish the step: fold or take away what it frees, and show the next."""
        if self.step is None:
            return
        step, window = self.step, self.window
        record = replace(self.book.of(step.id), done=True)
        self._put(record)
        self._show_dissection(step.title)
        shown = names_in_words(step.reveals, window._names_of_things())
        removes = window.plan.removed_by(step, window.model, self.book.side)
        self._news = told("In view now: {names}.", names=shown) if shown and removes else ""
        self.show_next()

    def step_back(self) -> None:
        """Lay the last step back, to do it again; what was drawn for it is kept."""
        done = [s for s in self.book.steps if self.book.of(s).done]
        if not done:
            return
        self._put(replace(self.book.of(done[-1]), done=False))
        self._show_dissection("step back")
        self.show_next()

    def _show_dissection(self, name: str) -> None:
        """Show what the book says is done, from where one stands and in the look one has."""
        now, camera = self.window.state, self.window._present_camera()
        state = self._state_of(self.book)
        self.show_state(
            replace(state, camera=camera or now.camera, view=now.view, look=now.look), name
        )

    def _put(self, record: StepRecord) -> None:
        self.book = self.book.put(record)
        try:
            self._keep_record(record.step_id, record_to_json(record))
        except ResultsError as error:
            self.window.say(told("The step was not kept: {why}.", why=error), 0)

    # --- the line -------------------------------------------------------------------------------

    def on_hover(self, hit: Any) -> None:
        """Name what the pointer is over: at a table one may look and feel."""
        window = self.window
        if hit is None:
            window.statusBar().clearMessage()
        else:
            window.say(window._titles.get(hit.part_id, hit.part_id), 0)

    def on_pick(self, hit: Any, adding: bool) -> None:
        """Add a place to the line; on another layer than the step cuts it is refused."""
        window = self.window
        line = window.state.cut_line
        if hit is None or line is None or self.step is None or self.answer is not None:
            return
        wanted = window.plan.removed_by(self.step, window.model, self.book.side)
        hit = self._beneath_flaps(hit)
        if hit is None:
            return
        if not line.points and wanted and hit.part_id not in wanted:
            hit = self._just_beneath(hit, wanted) or self._over_the_midline(hit, wanted) or hit
        if not line.points and wanted and hit.part_id not in wanted:
            record = self.book.of(self.step.id)
            self._put(replace(record, strays=record.strays + 1))
            self.lab.say(
                told(
                    "That is {part}; this step cuts {wanted}.",
                    part=window._titles.get(hit.part_id, hit.part_id),
                    wanted=names_in_words(self.step.removes[:1], window._names_of_things()),
                )
            )
            return
        window.session.do(add_cut_point(hit.point, line.part_id or hit.part_id))
        self._draw()
        self._show_line()

    def _beneath_flaps(self, hit: Any) -> Any:
        """Return what is taken when the last step's flap and stump are held aside."""
        window = self.window
        freed: set[str] = set()
        for step_id in self.book.steps:
            if self.book.of(step_id).done:
                step = window.plan[step_id]
                freed |= window.plan.removed_by(step, window.model, self.book.side)
        if hit.part_id not in freed:
            return hit
        scene = window.scene_widget.scene
        (pixel,), _ = scene.pixels_of(hit.point[None])
        return scene.pick(*pixel, without=freed)

    def _just_beneath(self, hit: Any, wanted: frozenset[str]) -> Any:
        """Return the wanted layer where it lies right under the click, None where it does not.

        A thread of nerve or fat over the edge that is meant is no other layer.
        """
        scene = self.window.scene_widget.scene
        (pixel,), _ = scene.pixels_of(np.asarray(hit.point)[None])
        others = frozenset(scene.shown()) - wanted
        under = scene.pick(*pixel, without=others)
        if under is None or np.linalg.norm(under.point - hit.point) > UNDER_MM:
            return None
        return under

    def _over_the_midline(self, hit: Any, wanted: frozenset[str]) -> Any:
        """Return the wanted side's place for a click on the other side's edge, else None.

        A cut in the midline is meant for both; a hand is no steadier than a few millimetres.
        """
        twin = other_side(hit.part_id)
        if twin not in wanted or abs(hit.point[0]) > UNDER_MM:
            return None
        return replace(hit, part_id=twin)

    def press_enter(self) -> None:
        """Press the button that has the focus; else cut under the pointer, or go on."""
        focus = QApplication.focusWidget()
        if isinstance(focus, QPushButton) and self.lab.isAncestorOf(focus):
            focus.click()
            return
        line = self.window.state.cut_line
        drawing = line is not None and line.points and self.answer is None
        if self.step is not None and not drawing and not self.book.of(self.step.id).missing:
            self.go_on()
            return
        widget = self.window.scene_widget
        self.on_pick(widget.pick_at(widget.mapFromGlobal(QCursor.pos())), False)

    def set_depth(self, depth_mm: float, dragging: bool = False) -> None:
        """Choose how deep the blade goes."""
        if self.window.state.cut_line is not None:
            self.window.session.do(change_cut("blade", dragging=dragging, depth_mm=depth_mm))
            self._show_line()

    def point_back(self) -> None:
        """Take the last place away."""
        line = self.window.state.cut_line
        if line is None or not line.points or self.answer is not None:
            return
        points = line.points[:-1]
        part_id = line.part_id if points else ""
        self.window.session.do(change_cut("point back", points=points, part_id=part_id))
        self._draw()
        self._show_line()

    def again(self) -> None:
        """Begin another line."""
        self.answer = None
        self.window.session.do(change_cut("again", points=(), part_id=""))
        self._draw()
        self._show_line()
        self.lab.say(told("Click along the next line."))

    def hand_in(self) -> None:
        """Say what the line would lose, and keep it."""
        window = self.window
        line: CutLine | None = window.state.cut_line
        if line is None or len(line.points) < 2 or self.step is None or self.answer is not None:
            return
        rehearser = window._ready_rehearser()
        path = window._path_of(line)
        if path is None:
            self.lab.say(told("A cut needs two places at least."))
            return
        present = visible_parts(window.model, window.state, window._neighbours)
        present |= {i for i, p in window.model.parts.items() if not taken_off(p, window.state)}
        try:
            lifted = bool(self._guard()[0]) and self.lab.finger.isChecked()
            answer = rehearser.rehearse(
                path, line.part_id, line.depth_mm, self.step.id, present, lifted
            )
        except PeelbackError as error:
            self.lab.say(refused(error))
            return
        self.answer = answer
        cut = drawn_cut(answer)
        record = self.book.of(self.step.id)
        self._put(replace(record, cuts=(*record.cuts, cut)))
        self._show_step()
        self._draw()
        words, lost = window._verdict(answer)
        lines = list(answer_in_words(answer, window._titles))
        if not cut.through:
            thick = told("The layer is {mm} mm thick here.", mm=figure(answer.through_mm, ".1f"))
            lines.insert(0, headed(told("The blade does not go through"), thick))
        if lost and self.step.stop:
            signs = _sentences(told_each(self.step.stop, "; "))
            lines.insert(0, headed(told("Too deep if"), signs))
        worth = told("{points} points.", points=f"{cut.score:.0f}")
        self.lab.show_answer(f"{words} {worth}", lost, lines)
        self.lab.hand_in.setEnabled(False)
        self.lab.back.setEnabled(False)
        (self.lab.again if self.book.of(self.step.id).missing else self.lab.go_on).setFocus()

    def _draw(self) -> None:
        """Draw the line; the plan's own, and what came near, once it was handed in."""
        window = self.window
        scene, line = window.scene_widget.scene, window.state.cut_line
        window._rehearse_timer.stop()
        if line is None:
            scene.set_cut_lines()
        elif self.answer is not None:
            answer = self.answer
            near = [c.place for c in answer.clearances if c.mm < NEAR_MM]
            near += [loss.place for loss in answer.losses if loss.kept]
            planned = [p.points for p in self._planned]
            scene.set_cut_lines(line.points, answer.line - LIFT_MM * answer.inward, planned, near)
        else:
            path = window._path_of(line) if len(line.points) > 1 else None
            if path is not None:
                path = path - LIFT_MM * window._ready_rehearser().inward(path)
            scene.set_cut_lines(line.points, path)
        window.scene_widget.refresh()

    def _hold(self, *states: ViewState) -> None:
        super()._hold(*states)
        # The rehearsal's own answer would show the plan's line before it was handed in.
        self.window._rehearse_timer.stop()

    # --- the sum --------------------------------------------------------------------------------

    def show_sum(self, on: bool) -> None:
        """Show the sum, or go back to the steps."""
        if on:
            self.lab.show_way(self.book)
            self.lab.to_steps.setEnabled(self.book.next is not None)
            self.lab.show_sum(self.sum_html(), told("Summary, {side}", side=told(self.book.side)))
        elif self.book.next is not None:
            self.show_next()

    def _titles(self) -> dict[str, str]:
        return {step.id: told(step.title) for step in self.window.plan.steps}

    def _names(self) -> dict[str, str]:
        parts, catalogue = self.window.model.parts, self.window.model.catalogue
        return {i: common_name(p, catalogue) for i, p in parts.items()}

    def sum_html(self) -> str:
        """Return the sum as a table: points by step, lines drawn, what was lost."""
        theme, titles, names = self.window.theme, self._titles(), self._names()
        score = self.book.score
        head = told("{done} of {count} steps done.", done=self.book.done, count=len(titles))
        if score is not None:
            head += " " + told("{points} points of 100 on the mean.", points=f"{score:.0f}")
        rows = [
            f"<p><b>{escape(head)}</b></p>"
            "<table cellpadding='3' cellspacing='0' width='100%'>"
            f"<tr><td width='14%'></td><td width='46%'><b>{escape(told('Step'))}</b></td>"
            f"<td width='20%' align='right'><b>{escape(told('Lines'))}</b></td>"
            f"<td width='20%' align='right'><b>{escape(told('Points'))}</b></td></tr>"
        ]
        for number, step_id in enumerate(self.book.steps, start=1):
            record = self.book.of(step_id)
            mark = "✓" if record.done else "○"
            drawn = len(record.lines) - len(record.missing)
            lines = f"{drawn} / {len(record.lines)}" if record.lines else "–"
            points = "–"
            if record.score is not None and (record.done or record.cuts):
                points = f"{record.score:.0f}"
            rows.append(
                f"<tr><td>{mark} {number}</td><td>{escape(titles.get(step_id, step_id))}</td>"
                f"<td align='right'>{lines}</td><td align='right'>{points}</td></tr>"
            )
            lost = ", ".join(names.get(x.part_id, x.part_id) for x in record.lost)
            if lost:
                words = told("Lost: {names}", names=lost)
                rows.append(
                    f"<tr><td></td><td colspan='3' style='color:{theme.caution}'>"
                    f"<b>{escape(words)}</b></td></tr>"
                )
        rows.append("</table>")
        rows.append(
            "<p>"
            + escape(
                told(
                    "Points on a scale of our own: half for what must stay, three tenths for the "
                    "plan's line, two tenths for the depth of the blade."
                )
            )
            + "</p>"
        )
        return "".join(rows)

    def _ask_csv(self) -> None:
        path = self._place("lab.csv", "CSV (*.csv)")
        if path is not None:
            self.write_csv(path)

    def _ask_pdf(self) -> None:
        path = self._place("lab.pdf", "PDF (*.pdf)")
        if path is not None:
            self.write_pdf(path)

    def _place(self, name: str, kinds: str) -> Path | None:
        chosen, _ = QFileDialog.getSaveFileName(
            self.window, told("Take-home lab"), str(Path.home() / name), kinds
        )
        if not chosen:
            return None
        path = Path(chosen)
        return path if path.suffix else path.with_suffix(Path(name).suffix)

    def write_csv(self, path: Path) -> bool:
        """Write every cut that counts, whole or not at all."""
        return self._written(
            path, lambda: write_atomically(path, self.book.csv(self._titles(), self._names()))
        )

    def write_pdf(self, path: Path) -> bool:
        """Write the sum for printing, with the teaching note on it."""
        from viewer.panels.style import LIGHT
        from viewer.state.measuring import TEACHING_NOTE

        def write() -> None:
            part = path.with_name(f".{path.name}.part")
            writer = QPdfWriter(str(part))
            writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
            writer.setTitle(told("Take-home lab"))
            document = QTextDocument()
            html = self.sum_html().replace(self.window.theme.caution, LIGHT.caution)
            side = told(SIDES[self.book.side])
            document.setHtml(
                f"<div style='color:#000'><h2>{escape(told('Take-home lab'))}: {escape(side)}</h2>"
                f"{html}<p><b>{escape(told(TEACHING_NOTE))}</b></p></div>"
            )
            document.print_(writer)
            del writer
            if not part.exists():
                raise OSError(2, "the folder cannot be written")
            part.replace(path)

        return self._written(path, write)

    def _written(self, path: Path, write: Any) -> bool:
        try:
            write()
        except OSError as error:
            QMessageBox.warning(
                self.window,
                "Take-home lab",
                told("{path} cannot be written: {why}", path=path, why=error.strerror),
            )
            return False
        self.window.say(told("Saved {name}", name=path.name))
        return True

    def _ask_anew(self) -> None:
        box = QMessageBox(self.window)
        box.setWindowTitle("Take-home lab")
        box.setText(told("Begin this side anew? What was drawn on it is dropped."))
        yes = box.addButton(told("Begin anew"), QMessageBox.ButtonRole.DestructiveRole)
        stay = box.addButton(told("Keep"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(stay)
        box.exec()
        if box.clickedButton() is yes:
            self.begin_anew()

    def begin_anew(self) -> None:
        """Drop all records of this side and begin with the whole back."""
        self._forget()
        self.book = LabBook(self.book.side, self.book.steps, {})
        self._news = ""
        self.begin()

    def finish(self) -> None:
        """Give the window back as it was; may be repeated."""
        if self._over:
            return
        self.window.scene_widget.scene.set_cut_lines()
        super().finish()
        if self.window.state.cut_line is not None:
            self.window._rehearse_timer.start()


def _sentences(text: str) -> str:
    """Return signs that the plan lists one after another as sentences."""
    return text.replace(".; ", ". ")
