"""A tag test in the window: the marked structure in the picture, the question beside it.

What is asked about is looked for in the finished picture, as a click would: a question whose
place no view shows is not asked.
"""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

import numpy as np
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QCursor
from PySide6.QtWidgets import QApplication, QLabel, QMessageBox, QPushButton

from viewer.panels.tag_panel import TagPanel, reason_html
from viewer.panels.takeover import Takeover
from viewer.scene.camera import VIEWS, Flight, Pose, view_pose
from viewer.state.captions import sentence_case
from viewer.state.section_plane import SectionPlane
from viewer.state.table_view import TABLE_PLACES
from viewer.state.tongue import told
from viewer.state.view_state import STRATA, Camera, ViewState
from viewer.study.answers import Verdict
from viewer.study.questions import KINDS, POINTED_KINDS, SECTION_KINDS, Question
from viewer.study.tag_test import TagTest

TICK_MS = 200
BELL_MS = 2500
SCALES_MM = (60.0, 230.0)
"""Half the height of the picture about a tag: for the smallest parts and for the largest."""
CUT_SCALE_MM = 70.0
LEAST_FACING = 0.25
"""A view is tried when it looks at the place at no flatter slope than this (a cosine)."""
UNUSUAL = ("superior", "inferior", "anterior")
"""Views that are taken when no other shows the place."""
RIM_MM = 8.0
ROUND_PX = 6
ROUND_SHARE = 0.5
"""Of the places so far round a tag on a broad part, as many must belong to it."""
_PIN_KINDS = (*SECTION_KINDS, "tissue", "deep_to", "superficial_to", "order", "lose")
"""Kinds that ask about a place; a tint of the whole structure would not tell it."""
_BROAD = ("muscle", "bone", "fascia")


class Sitting(Takeover):
    """Runs a tag test in a main window until ``finish``.

    Parameters
    ----------
    window : MainWindow
    test : TagTest
    seed : int
        Of the views.
    """

    def __init__(self, window: Any, test: TagTest, maker: Any, seed: int = 0) -> None:
        self.panel_: TagPanel = TagPanel()
        super().__init__(window, self.panel_)
        self.test, self.maker = test, maker
        self._rng = random.Random(seed)
        self._asked: list[Question] = []
        self._paused = False
        self._covered = QLabel(told("Paused"))
        self._covered.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._covered.hide()
        window._stage_box.addWidget(self._covered, 1)
        panel = self.panel_
        panel.chosen.connect(self.choose)
        panel.typed.connect(self.type_answer)
        panel.ordered.connect(self.put_in_order)
        panel.unknown_wanted.connect(self.give_up)
        panel.next_wanted.connect(self.next)
        panel.pause_wanted.connect(self.pause)
        panel.end_wanted.connect(self.end)
        panel.again_wanted.connect(self.again)
        panel.results_wanted.connect(window.open_results)
        panel.shown_wanted.connect(self.show_again)
        for k in range(9):
            self.key(str(k + 1), lambda k=k: self.press_number(k))
        for keys, deed in (
            ("Return", self.press_enter),
            ("Enter", self.press_enter),
            ("P", self.pause),
            ("Home", self.look_again),
            ("R", self.look_again),
            ("Esc", self.end),
            ("Alt+Up", lambda: panel.move_title(-1)),
            ("Alt+Down", lambda: panel.move_title(1)),
            ("Ctrl+Left", lambda: self.aim(-1, 0)),
            ("Ctrl+Right", lambda: self.aim(1, 0)),
            ("Ctrl+Up", lambda: self.aim(0, -1)),
            ("Ctrl+Down", lambda: self.aim(0, 1)),
        ):
            self.key(keys, deed)
        self._tick = QTimer(self, interval=TICK_MS)
        self._tick.timeout.connect(self._on_tick)
        self._bell = QTimer(self, singleShot=True, interval=BELL_MS)
        self._bell.timeout.connect(self._after_bell)
        self.take()
        self.next()

    # --- questions ------------------------------------------------------------------------------

    def next(self) -> None:
        """Ask the next question, or sum up."""
        if self._paused or (self.test.question is not None and self.test.verdict is None):
            return
        self._bell.stop()
        question = self.test.next(self.fit)
        if question is None:
            self.sum_up()
            return
        self._asked.append(question)
        self._draw_line(question)
        # The cross would answer what is asked.
        self.window.scene_widget.scene.directions = question.kind != "side"
        test = self.test
        way = "choice"
        if test.typed:
            way = "typed"
        elif question.kind in POINTED_KINDS:
            way = "point"
        elif question.kind == "order":
            way = "order"
        self.panel_.show_question(
            told("Question {k} of {count}", k=len(test.asked) + 1, count=test.choice.number),
            question.prompt,
            self.state_in_words(question),
            way,
            question.choices,
        )
        if way == "point":
            self.window.scene_widget.setFocus()
        self._show_time()
        if test.choice.station_s is not None:
            self._tick.start()

    def _draw_line(self, question: Question | None) -> None:
        """Draw the line of cut that a question speaks of, or none."""
        scene = self.window.scene_widget.scene
        line = np.array(question.line if question is not None else ()).reshape(-1, 3)
        scene.set_cut_lines(line[[0, -1]] if len(line) else (), line if len(line) else None)

    def state_in_words(self, question: Question) -> str:
        """Say what the picture shows, without a name."""
        state = question.state
        if state.section is not None:
            return told("The lower half is taken away; you look up at the cut from the feet.")
        depth = max(state.peeled)
        words = told("The whole back.")
        if depth:
            words = told(
                "Peeled to stratum {n} ({name}).", n=depth, name=told(STRATA[min(depth, 10)])
            )
        if state.removed:
            words += " " + told("A little more is taken away.")
        if state.table:
            words += f" {told(TABLE_PLACES[state.table])}."
        return words

    def fit(self, question: Question) -> Question | None:
        """Return the question with a view that shows its place, None where no view does."""
        now = self.window.state
        base = replace(
            question.state,
            look=now.look,
            neighbours=True,
            orbit=now.orbit,
            selection=(question.part_id,) if self._tinted(question) else (),
            pins=() if self._tinted(question) else question.state.pins,
        )
        for state in self._views(question, base):
            self.show_state(state)
            if self.shows(question):
                return replace(question, state=state)
        return None

    def _tinted(self, question: Question) -> bool:
        return (
            self.test.choice.mark == "tint"
            and question.pin is not None
            and question.kind not in _PIN_KINDS
        )

    def _views(self, question: Question, base: ViewState) -> list[ViewState]:
        """Return the state under every camera that may show the place, the likeliest first."""
        scene = self.window.scene_widget.scene
        place = tuple(float(c) for c in question.place)
        part = self.maker.model.parts[question.part_id]
        if question.kind in SECTION_KINDS:
            return [_with_pose(base, self._facing_cut(place[2]))]
        low, high = part.mesh.bounds
        extent = float(np.linalg.norm(high - low))
        least, most = SCALES_MM
        scale = float(np.clip(0.8 * extent, least, most))
        outward = -self.maker.inward_at(place)
        poses = []
        for name in VIEWS:
            pose = view_pose(name, Pose(focus=place, scale_mm=scale))
            facing = float(pose.axes()[2] @ outward)
            if facing < LEAST_FACING:
                continue
            if question.kind in ("level", "side", "lose"):
                # Levels are counted, sides told and lines followed from the whole.
                pose = scene.pose_of(name)
            poses.append((name in UNUSUAL, -facing, name, pose))
        poses.sort(key=lambda one: one[:3])
        found = [_with_pose(base, pose) for *_, pose in poses]
        if self.test.choice.places == "table" and self._rng.random() < 0.5:
            stand = self._rng.choice([name for name in TABLE_PLACES if name])
            pose = scene.pose_of(table=stand)
            if question.kind not in ("level", "side"):
                pose = replace(pose, focus=place, scale_mm=1.3 * scale)
            found.insert(0, _with_pose(replace(base, table=stand), pose))
        return found

    def _facing_cut(self, height: float) -> Pose:
        """Return the pose that looks up at a level cut, the skin's outline filling the picture."""
        skins = [p.mesh.vertices for p in self.maker.model.parts.values() if p.kind == "skin"]
        rim = np.concatenate([v[np.abs(v[:, 2] - height) < RIM_MM] for v in skins])
        if not len(rim):
            rim = np.array([[-200.0, -100.0, height], [200.0, 100.0, height]])
        low, high = rim.min(axis=0), rim.max(axis=0)
        aspect = self.window.scene_widget.width() / max(self.window.scene_widget.height(), 1)
        half = max(0.5 * (high[1] - low[1]), 0.5 * (high[0] - low[0]) / aspect)
        focus = (0.0, float(0.5 * (low[1] + high[1])), height)
        return view_pose("inferior", Pose(focus=focus, scale_mm=1.15 * float(half)))

    def shows(self, question: Question) -> bool:
        """Tell whether the picture shows the place: a click there takes the structure."""
        scene = self.window.scene_widget.scene
        pixel, hit = scene.sight_of(question.place)
        if hit is None or hit.part_id != question.part_id:
            return False
        if self.maker.model.parts[question.part_id].kind not in _BROAD:
            return True
        ring = [
            scene.pick(pixel[0] + ROUND_PX * np.cos(a), pixel[1] + ROUND_PX * np.sin(a))
            for a in np.arange(8) * np.pi / 4
        ]
        own = sum(one is not None and one.part_id == question.part_id for one in ring)
        return own >= ROUND_SHARE * len(ring)

    def look_again(self) -> None:
        """Go back to the view in which the question was asked."""
        question = self.test.question
        if question is not None:
            self.show_state(replace(self.window.state, camera=question.state.camera))

    # --- answers --------------------------------------------------------------------------------

    @property
    def is_open(self) -> bool:
        """True while a question waits for its answer."""
        return not self._paused and self.test.question is not None and self.test.verdict is None

    def choose(self, place: int) -> None:
        """Answer by a choice."""
        if self.is_open and self.test.question.right >= 0:
            if 0 <= place < len(self.test.question.choices):
                self._tell(self.test.answer_choice(place), place)

    def press_number(self, place: int) -> None:
        """Take the choice with this number."""
        if self.panel_.choices:
            self.choose(place)

    def type_answer(self, text: str) -> None:
        """Answer by typing; an empty line is no answer yet."""
        if self.is_open and self.test.typed and text.strip():
            self._tell(self.test.answer_typed(text))

    def put_in_order(self, titles: tuple[str, ...]) -> None:
        """Answer by an order."""
        if self.is_open and self.test.question.kind == "order":
            self._tell(self.test.answer_order(titles))

    def on_pick(self, hit: Any, adding: bool) -> None:
        """A click answers a question that is pointed at."""
        if hit is None or not self.is_open or self.test.question.kind not in POINTED_KINDS:
            return
        self._tell(self.test.answer_part(hit.part_id), hit=hit)

    def give_up(self) -> None:
        """The answer is not known."""
        if self.is_open:
            self._tell(self.test.give_up())

    def press_enter(self) -> None:
        """Do what is next: answer, go on, or press the button that has the focus."""
        focus = QApplication.focusWidget()
        question = self.test.question
        if isinstance(focus, QPushButton) and self.panel_.isAncestorOf(focus):
            focus.click()
        elif self._paused:
            self.pause()
        elif not self.is_open:
            if self.panel_.stack.currentIndex() == 0:
                self.next()
        elif self.test.typed:
            self.type_answer(self.panel_.line.text())
        elif question.kind == "order":
            self.put_in_order(self.panel_.titles_in_order())
        elif question.kind in POINTED_KINDS:
            widget = self.window.scene_widget
            self.on_pick(widget.pick_at(widget.mapFromGlobal(QCursor.pos())), False)

    def on_hover(self, hit: Any) -> None:
        """Name what is under the pointer, once there is nothing left to give away."""
        window = self.window
        if self.is_open or self._paused or hit is None:
            window.statusBar().clearMessage()
            return
        window.say(window._titles.get(hit.part_id, hit.part_id), 0)

    def _tell(self, verdict: Verdict, chosen: int = -1, hit: Any = None) -> None:
        """Show what the answer was worth; explained on the model, unless that waits for the end."""
        self._tick.stop()
        question, test = self.test.question, self.test
        if test.choice.explain == "end":
            self.next()
            return
        self.window.scene_widget.scene.directions = True
        self.panel_.show_verdict(
            verdict.words,
            verdict.right,
            verdict.near,
            self.reason(question, test.trouble or self._comes_again()),
            question.right,
            chosen,
        )
        self._show_time()
        self.explain(question)

    def _comes_again(self) -> str:
        due = self.test.due
        if due is None:
            return ""
        days = (due.astimezone().date() - self.test.now.astimezone().date()).days
        if days <= 0:
            return told("Comes again later today.")
        if days == 1:
            return told("Comes again tomorrow.")
        return told("Comes again in {days} days.", days=days)

    def reason(self, question: Question, last: str = "") -> str:
        """Return why, as HTML: the structure, and what lies over it."""
        maker = self.maker
        said = [("", question.explanation)]
        if question.kind == "deep_to":
            said.append((told("Under the pin"), maker.explanation(question.shows[0])))
        if question.kind == "superficial_to":
            said.append((told("Over the pin"), maker.explanation(question.shows[0])))
        if question.order:
            said = [(told("From the skin inwards"), "; ".join(question.order) + ".")]
        # Of a cut what is lost is explained, and not the layer that is cut.
        about = question.shows[0] if question.kind == "lose" else question.part_id
        over = maker.over(about)
        if over and not question.order:
            said.append((told("Over it"), "; ".join(over) + "."))
        if last:
            said.append(("", last))
        return reason_html(self.window.theme, "", said)

    def explain(self, question: Question) -> None:
        """Show the answer on the model: tinted, flown to, through what hides it."""
        if question.kind == "order":
            self.show_state(self._cut_through(question), "explain")
            return
        state = replace(
            self._explained_in(question),
            camera=self.window._present_camera() or question.state.camera,
            selection=question.shows,
            see_through=frozenset(question.through),
        )
        self.show_state(state, "explain")
        if question.kind not in SECTION_KINDS:
            self._fly(question.shows)

    def _explained_in(self, question: Question) -> ViewState:
        """Return the dissection in which an answer is shown, as the question was seen."""
        asked, shown = question.state, question.shown_in
        if shown is None:
            return asked
        return replace(asked, peeled=shown.peeled, removed=shown.removed)

    def _cut_through(self, question: Question) -> ViewState:
        """Return a level cut through the pin of the whole back, the five tinted where they lie."""
        place = question.place
        state = ViewState(
            section=SectionPlane(position_mm=place[2], whole=True),
            pins=question.state.pins,
            look=question.state.look,
            orbit=question.state.orbit,
            selection=question.shows,
        )
        pose = replace(self._facing_cut(place[2]), focus=place, scale_mm=CUT_SCALE_MM)
        return _with_pose(state, pose)

    def _fly(self, ids: tuple[str, ...]) -> None:
        """Go to parts without turning, and not so near that nothing round them is seen."""
        widget = self.window.scene_widget
        scene = widget.scene
        start, animate = scene.pose, scene.animate
        scene.animate = False
        scene.fly_to(ids)
        end = replace(scene.pose, scale_mm=max(scene.pose.scale_mm, SCALES_MM[0]))
        scene.animate = animate
        scene.pose = start if animate else end
        if animate:
            widget._start_flight(Flight(start, end))
        widget.refresh()

    # --- time -----------------------------------------------------------------------------------

    def _show_time(self) -> None:
        whole = self.test.choice.station_s
        if whole is None or self.test.verdict is not None:
            self.panel_.show_time(None)
        else:
            self.panel_.show_time(whole - self.test.seconds, whole)

    def _on_tick(self) -> None:
        if not self.is_open:
            self._tick.stop()
            return
        self._show_time()
        if self.test.seconds >= self.test.choice.station_s:
            self._tick.stop()
            if self.test.choice.bell:
                QApplication.beep()
            self.panel_.ring()
            text = self.panel_.line.text().strip()
            # What stands there when the bell rings is handed in.
            if self.test.typed and text:
                self.type_answer(text)
            else:
                self.give_up()
            self.panel_.ring()
            self._bell.start()

    def _after_bell(self) -> None:
        self.panel_.bell.hide()

    def pause(self) -> None:
        """Stop the clock and cover question and picture, or go on."""
        if self.panel_.stack.currentIndex() != 0:
            return
        self._paused = not self._paused
        self.panel_.show_paused(self._paused)
        self._covered.setVisible(self._paused)
        self.window.scene_widget.setVisible(not self._paused)
        if self._paused:
            self.test.halt()
            self._tick.stop()
        else:
            self.test.go_on()
            if self.test.choice.station_s is not None and self.test.verdict is None:
                self._tick.start()

    # --- the end --------------------------------------------------------------------------------

    def sum_up(self) -> None:
        """Show how it went."""
        self._tick.stop()
        self._draw_line(None)
        self.window.scene_widget.scene.directions = True
        test, theme = self.test, self.window.theme
        rows = []
        for stratum, (right, asked) in test.by_stratum().items():
            rows.append(
                f"<tr><td>{stratum}&nbsp;&nbsp;{told(STRATA[stratum])}</td>"
                f"<td align='right'>&nbsp;&nbsp;{right} / {asked}</td></tr>"
            )
        words = test.summary()
        if not test.asked:
            words = told("Nothing that was chosen can be asked: choose more strata or kinds.")
        elif len(test.asked) < test.choice.number and test.question is None:
            words += " " + told("There was no more to ask within what was chosen.")
        table = f"<table style='margin-top:8px'>{''.join(rows)}</table>" if rows else ""
        html = f"<div style='color:{theme.text}'>{words}</div>{table}"
        lines = [
            (f"{sentence_case(self.maker.english(q.part_id))} – {told(KINDS[q.kind])}", v)
            for q, v in test.asked
        ]
        self.panel_.show_sum(html, lines)

    def show_again(self, row: int) -> None:
        """Show one of the questions on the model, with its answer."""
        if not 0 <= row < len(self.test.asked):
            return
        question, verdict = self.test.asked[row]
        self.show_state(question.state)
        self._draw_line(question)
        self.explain(question)
        self.panel_.sum.setHtml(
            reason_html(self.window.theme, question.prompt, [("", verdict.words)])
            + self.reason(question)
        )

    def again(self) -> None:
        """Give the window back and ask for another test."""
        window = self.window
        self.finish()
        QTimer.singleShot(0, window, window.start_tag_test)

    def end(self) -> None:
        """Sum up, or leave; a test that is under way asks first."""
        if self.panel_.stack.currentIndex() != 0:
            self.finish()
            return
        if self._paused:
            self.pause()
        if not self.test.asked:
            self.finish()
            return
        self.test.halt()
        box = QMessageBox(self.window)
        box.setWindowTitle(told("Tag test"))
        box.setText(told("End the test here? What was answered is kept."))
        yes = box.addButton(told("End it"), QMessageBox.ButtonRole.AcceptRole)
        box.addButton(told("Go on"), QMessageBox.ButtonRole.RejectRole)
        box.exec()
        self.test.go_on()
        if box.clickedButton() is yes:
            self.sum_up()

    def finish(self) -> None:
        """Give the window back as it was; may be repeated."""
        if self._over:
            return
        self._tick.stop()
        self._bell.stop()
        self._draw_line(None)
        self.window.scene_widget.scene.directions = True
        self.window.scene_widget.setVisible(True)
        self._covered.hide()
        self.window._stage_box.removeWidget(self._covered)
        self._covered.deleteLater()
        super().finish()


def _with_pose(state: ViewState, pose: Pose) -> ViewState:
    """Return a state seen from a pose."""
    values = pose.to_dict()
    camera = Camera(
        tuple(values["position"]),
        tuple(values["focal_point"]),
        tuple(values["view_up"]),
        values["parallel_scale"],
    )
    return replace(state, camera=camera, view=pose.view)
