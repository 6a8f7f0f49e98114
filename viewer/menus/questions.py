"""The window's commands that ask the model: what lies over, the way in, the probe."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from PySide6.QtCore import Qt, QTimer

from meshes.errors import PeelbackError
from viewer.asking import QuestionSource
from viewer.building import GrowingModel
from viewer.panels.probe_sheet import ProbeSheet
from viewer.state import commands, covering
from viewer.state.captions import title_of_several
from viewer.state.commands import Command
from viewer.state.tongue import refused, told
from viewer.state.view_state import DONE_FIELDS, ViewState

STEP_MS = 650
"""Time between two steps that are played, long enough to see what each uncovers."""

ROOM_FOR_TREE = 720
"""The list of covers leaves the tree of parts in sight in a side panel so high (pixels at 100 %)."""

LAYERS_AFTER_MS = 2500
"""So long after the probe the layers are looked through, before anybody has asked."""


class QuestionsMenu:
    """What 'Bring into view', 'What lies over it' and 'Probe at' call."""

    def _begin_questions(self) -> None:
        self._layers: Any = None
        self._folded_layers: tuple[tuple, Any] | None = None
        self._questions = QuestionSource(self)
        self._questions.probe_ready.connect(self._take_probe)
        self._questions.layers_ready.connect(self._take_layers)
        self._questions.folded_ready.connect(self._take_folded)
        self._questions.failed.connect(self._on_no_answer)
        self._when_layers: list[Any] = []
        self._covering: frozenset[str] = frozenset()
        self._covered_key: tuple = ()
        self._covered = ""
        self._playing: deque[Command] = deque()
        self._played: ViewState | None = None
        self._play_end = ""
        self._way_note: tuple[tuple[str, ...], str] = ((), "")
        self._way_done: tuple | None = None
        self._play_timer = QTimer(self, singleShot=True, interval=STEP_MS)
        self._play_timer.timeout.connect(self._play_on)
        self._probe_sheet: ProbeSheet | None = None

    def _prepare_questions(self, model: Any) -> None:
        self._probe = self._layers = self._folded_layers = None
        self._covering = frozenset()
        self._covered_key = ()
        self._questions.prepare(model)

    def _end_questions(self) -> None:
        self._play_timer.stop()
        self._playing.clear()
        self._questions.stop()

    def _take_probe(self, model: Any, probe: Any) -> None:
        if model is not self.model or self._closed:
            return
        self._probe = probe
        self._probe_here()
        QTimer.singleShot(LAYERS_AFTER_MS, self, lambda: self._layers_ahead(model))
        if self.state.covers_of:
            self._show_covers()

    def _layers_ahead(self, model: Any) -> None:
        """Have the layers at hand when they are first asked for."""
        if model is self.model and not self._closed and self._layers is None:
            self._questions.want_layers()

    def _take_layers(self, model: Any, layers: Any) -> None:
        if model is not self.model or self._closed:
            return
        self._layers = layers
        waiting, self._when_layers = self._when_layers, []
        for go_on in waiting:
            self._with_layers(go_on)

    def _take_folded(self, model: Any, key: tuple, layers: Any) -> None:
        if model is not self.model or self._closed:
            return
        self._folded_layers = (key, layers)
        waiting, self._when_layers = self._when_layers, []
        for go_on in waiting:
            self._with_layers(go_on)

    def _layers_now(self) -> Any:
        """Return the layers with all flaps where they lie, or None while they are on their way."""
        folds = tuple(laid for laid in self.state.folds if laid.share > 0)
        if self._layers is None or not folds:
            return self._layers
        key = (folds, self.state.removed)
        if self._folded_layers is not None and self._folded_layers[0] == key:
            return self._folded_layers[1]
        if not self.folds.playing:
            self._questions.want_folded(self._layers, self.folds.reflector, *key)
        return None

    def _follow_flaps(self) -> None:
        """A flap has come to lie somewhere: those who waited for that go on."""
        if not self.folds.playing:
            waiting, self._when_layers = self._when_layers, []
            for go_on in waiting:
                self._with_layers(go_on)

    def _on_no_answer(self, model: Any, words: str) -> None:
        if model is self.model:
            self._when_layers = []
            self.say(words, 0)

    def _with_layers(self, go_on: Any) -> bool:
        """Go on when the layers are there: at once, or later. Returns whether at once."""
        if self._layers_now() is not None:
            go_on()
            return True
        if isinstance(self.model, GrowingModel):
            self.say("The model is still being built.")
            return False
        if go_on not in self._when_layers:
            self._when_layers.append(go_on)
        if self._layers is None:
            self._questions.want_layers()
        return False

    # --- what lies over it -----------------------------------------------------------------

    def ask_what_covers(self, on: bool = True) -> None:
        """Tint and list what lies over what is picked, or end that."""
        ids = [i for i in self.state.selection if i in self.model.parts]
        if on and not ids:
            self.say("Pick a part first: then what lies over it is tinted and listed.")
            self._actions["covers"].setChecked(bool(self.state.covers_of))
            return
        if on and not self.settings.side_panel:
            self.show_side_panel(True)
        self.do(covering.ask(ids if on else ()))
        if on:
            self.covers.list.setFocus()

    def toggle_covers(self, on: bool) -> None:
        """Ask about what is picked; asked again about the same, end it."""
        self.ask_what_covers(on or set(self.state.selection) != set(self.state.covers_of))

    def covered_words(self, part_id: str, *, picked: bool) -> str:
        """Return what lies over a part, "" until that is known.

        The layers are fetched when a part is picked, not while the pointer wanders.
        """
        folds = any(laid.share > 0 for laid in self.state.folds)
        if self._layers is None or (folds and self._layers_now() is None):
            if picked and not isinstance(self.model, GrowingModel):
                self._with_layers(self._caption_again)
            return ""
        key = (part_id, *(getattr(self.state, name) for name in DONE_FIELDS), folds)
        if self._covered_key != key:
            layers = self._layers_now()
            self._covered_key = key
            self._covered = covering.covered_by_words(
                layers, self.model, self.state, part_id, self._titles
            )
        return self._covered

    def _caption_again(self) -> None:
        self._show_caption()

    def covering_ids(self) -> frozenset[str]:
        """Return the ids that are tinted because they lie over the part asked about."""
        return self._covering

    def _title_of(self, ids: Iterable[str]) -> str:
        return title_of_several(list(ids), self._titles)

    def _follow_questions(self, before: ViewState | None, after: ViewState) -> None:
        names = ("covers_of", *DONE_FIELDS)
        if before is not None and all(getattr(before, n) == getattr(after, n) for n in names):
            return
        if after.covers_of and self.model.parts:
            self._show_covers()
        elif self._covering or self.covers.isVisibleTo(self.side_panel):
            self._covering = frozenset()
            self.covers.hide()
            self.tree.show()

    def _show_covers(self) -> None:
        state = self.state
        ids = [i for i in state.covers_of if i in self.model.parts]
        title = self._title_of(ids)
        self.covers.show()
        # With large letters on a small screen the list gets the tree's room as well.
        self.tree.setVisible(self.side_panel.height() >= ROOM_FOR_TREE * self.scale)
        layers = self._layers_now()
        if layers is None:
            self._covering = frozenset()
            self.covers.show_waiting(title)
            if not isinstance(self.model, GrowingModel):
                self._with_layers(self._covers_came)
            return
        in_view, rows = covering.cover_rows(layers, self.model, state, self._titles)
        self._covering = frozenset(
            part_id
            for row in rows
            if row.share >= covering.TINTED_SHARE
            for part_id in row.part_ids
        )
        # What was at risk on the way in is told while its steps stand, not after undo.
        stands = self._way_done in (None, self._done_now())
        note = self._way_note[1] if stands and self._way_note[0] == state.covers_of else ""
        self.covers.show_rows(title, in_view, rows, note)

    def _done_now(self) -> tuple:
        return tuple(getattr(self.state, name) for name in DONE_FIELDS)

    def _covers_came(self) -> None:
        if self.state.covers_of:
            self._show_covers()
            self._draw()
            if self.scene_widget is not None:
                self.scene_widget.refresh()

    # --- the way in ------------------------------------------------------------------------

    def bring_asked_into_view(self) -> None:
        """Bring the part whose covers are listed into view."""
        self._bring(self.state.covers_of)

    def bring_into_view(self) -> None:
        """Do the fewest steps of the plan that uncover what is picked."""
        if not self.state.selection:
            self.say("Pick a part first: then the fewest steps that uncover it are done.")
            return
        self._bring(self.state.selection)

    def _bring(self, ids: Iterable[str]) -> None:
        ids = tuple(i for i in ids if i in self.model.parts)
        if not ids:
            return
        self.stop_playing()
        if self._layers_now() is None:
            self.say("Looking through the layers …", 0)
        self._with_layers(lambda: self._bring_now(ids))

    def _bring_now(self, ids: tuple[str, ...]) -> None:
        title = self._title_of(ids)
        share = self.settings.share_in_view
        try:
            way = covering.way_in(self.plan, self._layers_now(), self.model, self.state, ids, share)
        except PeelbackError as refusal:
            self.say(f"{title}: {refused(refusal)}.", 0)
            return
        self._play_end = covering.way_in_words(way, title, self._titles)
        self._way_note = (
            ids,
            covering.risks_in_words(way, self._titles, self._names_of_things()),
        )
        self._playing = deque(
            covering.play(
                self.plan, self.model, self.state, ids, way, title, self.settings.steps_fold
            )
        )
        self._played = self._way_done = None
        if not self._playing:
            self._finish_playing()
            return
        self.session.close_gesture()
        if self.settings.calm or self.scene_widget is None:
            while self._playing:
                self.do(self._playing.popleft())
            self._finish_playing()
        else:
            self._play_on()

    def set_share_in_view(self, share: float) -> None:
        """Choose which share (0–1) of a part counts as brought into view."""
        self.settings = replace(self.settings, share_in_view=share)
        self.covers.set_share(share)
        self.say(told("In view from now on: {share} of a part.", share=covering.percent(share)))

    def _say_share(self, ids: tuple[str, ...]) -> None:
        state = replace(self.state, covers_of=ids)
        layers = self._layers_now()
        in_view, rows = covering.cover_rows(layers, self.model, state, self._titles)
        self.say(covering.share_after_folds(self._title_of(ids), in_view, rows), 0)

    def _play_on(self) -> None:
        """Do the next step, unless the state was changed by another hand meanwhile."""
        if self._closed or not self._playing:
            return
        if self._played is not None and any(
            getattr(self._played, n) != getattr(self.state, n) for n in DONE_FIELDS
        ):
            self.stop_playing()
            return
        if self.folds.playing:
            # The flap of the step before is still on its way.
            self._play_timer.start()
            return
        left = len(self._playing)
        self.do(self._playing.popleft())
        self._played = self.state
        if self._playing:
            title = self._play_end.split(":")[0]
            self.say(told("{title}: {count} more …  (Esc stops)", title=title, count=left - 1), 0)
            self._play_timer.start()
        else:
            self._finish_playing()

    def _finish_playing(self) -> None:
        """Say how far it went, and list what still lies over it and what was at risk."""
        self._played = None
        self._way_done = self._done_now()
        self.session.close_gesture()
        ids = self._way_note[0]
        if self.settings.side_panel:
            self.do(covering.ask(()))
            self.do(covering.ask(ids))
        if any(laid.share > 0 for laid in self.state.folds):
            # Where flaps lie is known only now: say what is in view in truth.
            self._with_layers(lambda: self._say_share(ids))
        self.say(self._play_end, 0)

    def stop_playing(self) -> bool:
        """Stop steps that are being played; returns whether any were."""
        if not self._playing:
            return False
        self._play_timer.stop()
        self._playing.clear()
        self._played = None
        self._way_done = self._done_now()
        self.session.close_gesture()
        self.say("Stopped; undo takes back what was done.")
        return True

    # --- probe -------------------------------------------------------------------------------

    def open_probe(self) -> None:
        """Open the form that probes at a level, a distance from the midline and a side."""
        if self._probe is None:
            self.say("The model is not ready to be probed yet.")
            return
        from meshes.questions.probe import CAUTION

        probe, model = self._probe, self.model

        def ask(level: str, lateral: float, side: str) -> Any:
            return covering.ladder_rows(probe.at(level, lateral, side), model, self._titles)

        sheet = ProbeSheet(probe.levels, probe.half_width_mm, ask, CAUTION, self.scale, self)
        sheet.part_wanted.connect(self._pick_probed)
        level, lateral, side = self._place_to_probe()
        sheet.set_place(level, lateral, side)
        self._probe_sheet = sheet
        # Beside the window, not before it: the model may be turned and picked meanwhile.
        sheet.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        sheet.show()
        sheet.finished.connect(self._forget_probe_sheet)

    def _place_to_probe(self) -> tuple[str, float, str]:
        """Level, distance and side nearest to where the pointer was last."""
        place = self._last_place or (40.0, 0.0, self._heights.get("T7", 0.0))
        known = {n: z for n, z in self._heights.items() if n in self._probe.levels}
        level = min(known, key=lambda n: abs(known[n] - place[2]), default="T7")
        return level, float(round(abs(place[0]))), "left" if place[0] >= 0 else "right"

    def _pick_probed(self, part_id: str) -> None:
        self.do(commands.select([part_id]))

    def _forget_probe_sheet(self) -> None:
        self._probe_sheet = None
