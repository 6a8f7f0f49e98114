"""The window's commands for the talk: making, files, presenting, review, the table."""

from __future__ import annotations

import logging
from dataclasses import replace
from pathlib import Path
from typing import Any

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from meshes.errors import PeelbackError
from viewer.building import GrowingModel
from viewer.panels.sheets import version
from viewer.panels.talk_panel import TalkPanel
from viewer.state import commands
from viewer.state.plan import Plan
from viewer.state.table_view import TABLE_PLACES, pose_sentence
from viewer.state.tongue import told
from viewer.state.view_state import STRATA, STRATUM_COUNT, SideChoice, ViewState
from viewer.talk import autosave
from viewer.talk.back_lab import lab_talk
from viewer.talk.check import check_talk
from viewer.talk.review import review_talk
from viewer.talk.room import Room
from viewer.talk.scenes import Talk, TalkDesk, TalkScene
from viewer.talk.talk_file import (
    SUFFIX,
    ForeignFileError,
    TalkFileError,
    open_talk,
    save_talk,
)

LOG = logging.getLogger("peelback")

KEEP_AFTER_MS = 4000
"""How long after a change of the talk it is kept on the side."""


def suggested_title(state: ViewState, titles: dict[str, str], plan: Plan) -> str:
    """Return a first title for a kept view: the picked part, the stratum that lies open, or the
    last step that was done."""
    if state.selected in titles:
        return titles[state.selected]
    depth = max(state.peeled)
    if state.table:
        return told(TABLE_PLACES[state.table])
    if 0 < depth < STRATUM_COUNT:
        name = told(STRATA[depth])
        return name[:1].upper() + name[1:]
    done = [s.title for s in plan.steps if s.id in state.ticked.left | state.ticked.right]
    return told(done[-1]) if done else told("The whole back")


class TalkMenu:
    """What the Talk menu calls."""

    def _make_talk(self) -> None:
        """Set up the talk's desk and panel; called while the window is laid out."""
        self.desk = TalkDesk()
        self._talk_file: Path | None = None
        self._kept_talk = self.desk.talk
        self.presenting: Any = None
        self.talk_pictures: dict[TalkScene, Any] = {}
        self._pictured: tuple = ()
        self.talk_panel = TalkPanel()
        panel = self.talk_panel
        panel.hide()
        panel.deed.connect(self._talk_deed)
        panel.chosen.connect(self._choose_scene)
        panel.moved.connect(self._drag_scene)
        panel.written.connect(self._write_scene)
        self._talk_timer = QTimer(self, singleShot=True, interval=KEEP_AFTER_MS)
        self._talk_timer.timeout.connect(self.keep_talk)
        self._show_talk()

    # --- making --------------------------------------------------------------------------------

    def _show_talk(self) -> None:
        self.talk_panel.show_desk(self.desk, self._talk_file.name if self._talk_file else "")
        if self.desk.unsaved and self.desk.talk != self._kept_talk:
            self._talk_timer.start()

    def _talk_deed(self, deed: str) -> None:
        {
            "keep": self.keep_scene,
            "update": self.update_scene,
            "duplicate": lambda: self._edit(self.desk.duplicate),
            "delete": self._delete_scene,
            "up": lambda: self._shift_scene(-1),
            "down": lambda: self._shift_scene(1),
            "undo": self.talk_undo,
            "redo": self.talk_redo,
            "show": self.show_scene,
            "present": self.present,
        }[deed]()

    def _edit(self, how: Any) -> None:
        if self.desk.chosen >= 0:
            how()
            self._show_talk()

    def _delete_scene(self) -> None:
        if self.desk.chosen >= 0:
            title = self.desk.talk.scenes[self.desk.chosen].title
            self.desk.delete()
            self._show_talk()
            self.say(told("Deleted “{title}”. Undo in the talk brings it back.", title=title))

    def _shift_scene(self, by: int) -> None:
        self._edit(lambda: self.desk.move(self.desk.chosen, self.desk.chosen + by))

    def _drag_scene(self, start: int, to: int) -> None:
        self.desk.move(start, to)
        # The list is in the middle of its own change: it is filled again afterwards.
        QTimer.singleShot(0, self, self._show_talk)

    def _choose_scene(self, row: int) -> None:
        if 0 <= row < len(self.desk.talk.scenes) and row != self.desk.chosen:
            self.desk.chosen = row
            self._show_talk()
            self.show_scene()

    def _write_scene(self, field: str, text: str) -> None:
        if self.desk.chosen < 0:
            return
        try:
            self.desk.write(field, text)
        except ValueError as error:
            self.say(told("Not kept: {why}.", why=error))
        self._show_talk()

    def talk_undo(self) -> None:
        """Take the last change of the talk back."""
        if name := self.desk.undo():
            self.say(told("Undone in the talk: {what}", what=name))
        self._show_talk()

    def talk_redo(self) -> None:
        """Do again what was undone in the talk."""
        if name := self.desk.redo():
            self.say(told("Done again in the talk: {what}", what=name))
        self._show_talk()

    def talk_has_focus(self) -> bool:
        """True while the list of scenes has the keyboard: then undo is the talk's."""
        return self.focusWidget() is self.talk_panel.list

    def show_talk_panel(self, on: bool) -> None:
        """Show the scenes in place of the tree of parts."""
        self.talk_panel.setVisible(on)
        self.tree.setVisible(not on)
        # A low window has room for the scenes or for the caption, not for both.
        self.caption.setVisible(not on or self.height() > 880 * self.scale)
        self._actions["talk_panel"].setChecked(on)
        if on and not self.settings.side_panel:
            self.show_side_panel(True)
        if on:
            self.talk_panel.list.setFocus()

    def keep_scene(self) -> None:
        """Keep what is seen as a scene after the chosen one."""
        self._note_camera()
        title = suggested_title(self.state, self._titles, self.plan)
        self.desk.keep(self.state.with_(peek=False), title)
        self._show_talk()
        self.say(told("Kept as scene {n}, “{title}”.", n=self.desk.chosen + 1, title=title))

    def update_scene(self) -> None:
        """Give the chosen scene the view that is seen."""
        if self.desk.chosen < 0:
            self.say("There is no scene yet: keep a view first.")
            return
        self._note_camera()
        self.desk.update(self.state.with_(peek=False))
        self._show_talk()
        self.say(told("Scene {n} shows this view now.", n=self.desk.chosen + 1))

    def show_scene(self) -> None:
        """Show the chosen scene in the window; undo returns to what was seen."""
        if self.desk.chosen < 0:
            return
        scene = self.desk.talk.scenes[self.desk.chosen]
        self.do(
            commands.Command(
                told("show scene “{title}”", title=scene.title), lambda _: scene.state, True, True
            )
        )

    # --- files ---------------------------------------------------------------------------------

    def _take_talk(self, talk: Talk, file: Path | None) -> None:
        self.desk = TalkDesk(talk)
        self._talk_file = file
        self._kept_talk = talk
        self._show_talk()
        self.show_talk_panel(True)

    def _may_leave_talk(self) -> bool:
        """Ask what becomes of an unsaved talk; False: stay."""
        if not self.desk.unsaved:
            return True
        box = QMessageBox(self)
        box.setWindowTitle("Talk")
        box.setText(
            told("“{title}” has changes that are not saved.", title=told(self.desk.talk.title))
        )
        save = box.addButton(told("Save"), QMessageBox.ButtonRole.AcceptRole)
        box.addButton(told("Don't save"), QMessageBox.ButtonRole.DestructiveRole)
        cancel = box.addButton(told("Cancel"), QMessageBox.ButtonRole.RejectRole)
        box.exec()
        if box.clickedButton() is save:
            self.save_talk()
            return not self.desk.unsaved
        return box.clickedButton() is not cancel

    def new_talk(self) -> None:
        """Begin an empty talk."""
        if self._may_leave_talk():
            autosave.forget_unsaved()
            self._take_talk(Talk(), None)

    def open_talk(self) -> None:
        """Ask for a talk and open it."""
        start = self._talk_file or Path.home()
        name, _ = QFileDialog.getOpenFileName(
            self,
            told("Open talk"),
            str(start),
            f"{told('Talks')} (*{SUFFIX});;{told('All files')} (*)",
        )
        if name:
            self.open_talk_file(Path(name))

    def open_talk_file(self, path: Path) -> bool:
        """Open a talk; a broken or foreign file is refused and the present talk stays."""
        try:
            talk = open_talk(path)
        except TalkFileError as error:
            QMessageBox.warning(self, told("Open talk"), str(error))
            return False
        if not self._may_leave_talk():
            return False
        autosave.forget_unsaved()
        self._take_talk(talk, path)
        self.say(
            told(
                "Opened {file}, {count} scenes. F5 presents it.",
                file=path.name,
                count=len(talk.scenes),
            ),
            12000,
        )
        return True

    def open_any_file(self, path: Path) -> bool:
        """Open a talk or a working state, whichever the file is."""
        try:
            open_talk(path)
        except TalkFileError as error:
            if path.suffix == SUFFIX or not isinstance(error, ForeignFileError):
                QMessageBox.warning(self, told("Open talk"), str(error))
                return False
            return self.open_file(path)
        return self.open_talk_file(path)

    def save_talk(self) -> None:
        """Save the talk to its file, or ask for one."""
        if self._talk_file is None:
            self.save_talk_as()
        else:
            self.save_talk_file(self._talk_file)

    def save_talk_as(self) -> None:
        """Ask where to save the talk."""
        start = self._talk_file or Path.home() / f"back{SUFFIX}"
        name, _ = QFileDialog.getSaveFileName(
            self, told("Save talk as"), str(start), f"{told('Talks')} (*{SUFFIX})"
        )
        if name:
            path = Path(name)
            self.save_talk_file(path if path.suffix else path.with_suffix(SUFFIX))

    def save_talk_file(self, path: Path) -> bool:
        """Save the talk to a file; an untitled talk takes the file's name."""
        if self.desk.talk.title == Talk().title:
            self.desk.do(replace(self.desk.talk, title=path.stem), told("name the talk"))
        try:
            save_talk(path, self.desk.talk, version())
        except OSError as error:
            QMessageBox.warning(
                self,
                told("Save talk"),
                told("{path} cannot be written: {why}", path=path, why=error.strerror),
            )
            return False
        self._talk_file = path
        self.desk.mark_saved()
        autosave.forget_unsaved()
        self._show_talk()
        self.say(told("Saved {file}", file=path.name))
        return True

    def keep_talk(self) -> None:
        """Keep an unsaved talk on the side."""
        if not self._keep or not self.desk.unsaved or self.desk.talk == self._kept_talk:
            return
        if message := autosave.keep_unsaved(self.desk.talk, self._talk_file, version()):
            self.tell_fault(message)
        self._kept_talk = self.desk.talk

    def offer_recovered_talk(self) -> None:
        """At the start: offer a talk that was never saved."""
        if not self._keep:
            return
        found, message = autosave.recover()
        if message:
            self.tell_fault(message)
        if found is None:
            return
        box = QMessageBox(self)
        box.setWindowTitle("Unsaved talk")
        box.setText(
            told(
                "“{title}” with {count} scenes was not saved to {file}."
                if found.file
                else "“{title}” with {count} scenes was not saved.",
                title=told(found.talk.title),
                count=len(found.talk.scenes),
                file=found.file.name if found.file else "",
            )
        )
        yes = box.addButton(told("Bring it back"), QMessageBox.ButtonRole.AcceptRole)
        box.addButton(told("Later"), QMessageBox.ButtonRole.RejectRole)
        drop = box.addButton(told("Give it up"), QMessageBox.ButtonRole.DestructiveRole)
        box.finished.connect(lambda _: self._recovered(found, box.clickedButton(), yes, drop))
        box.open()

    def _recovered(self, found: Any, clicked: Any, yes: Any, drop: Any) -> None:
        if clicked is yes:
            self.desk = TalkDesk()
            self.desk.do(found.talk, told("bring the talk back"))
            self._talk_file = found.file
            self._show_talk()
            self.show_talk_panel(True)
        elif clicked is drop:
            autosave.forget_unsaved()

    def open_lab_talk(self) -> None:
        """Open the sample talk as a talk of one's own."""
        if self._model_ready() and self._may_leave_talk():
            self._take_talk(lab_talk(self.model, self.plan), None)
            self.say("The sample talk. Change it as you like; save it under a name of your own.")

    # --- presenting ----------------------------------------------------------------------------

    def _model_ready(self) -> bool:
        if isinstance(self.model, GrowingModel) or self.scene_widget is None:
            self.say("The model is still being built.")
            return False
        return True

    def present(self) -> None:
        """Show cautions and room check, then present from the first scene."""
        self._ask_room(0)

    def present_from_here(self) -> None:
        """Show cautions and room check, then present from the chosen scene."""
        self._ask_room(max(self.desk.chosen, 0))

    def _ask_room(self, start: int) -> None:
        if self.lent or not self._model_ready():
            return
        if not self.desk.talk.scenes:
            self.say("The talk has no scene yet: F7 keeps a view; or open the sample talk.")
            return
        from viewer.panels.room_sheet import RoomSheet

        self._prepare_folds(self.desk.talk)
        s = self.settings
        sheet = RoomSheet(
            s.hall_distance_m,
            s.hall_height_m,
            s.hall_light,
            s.theme,
            self.screen().geometry(),
            self,
        )
        reports = check_talk(self.desk.talk, self.model)
        sheet.show_scenes(
            [f"{r.number} {r.title}: {w}" for r in reports for w in (*r.faults, *r.remarks)]
            or [told("Every scene shows what it should on this model.")]
        )
        sheet.rehearse_wanted.connect(lambda: self.rehearse(sheet))
        sheet.accepted.connect(lambda: self._start_from_sheet(sheet, start))
        self._open(sheet)

    def _prepare_folds(self, talk: Talk) -> None:
        """Work out flaps before the hall waits for them."""
        self.folds.prepare((s.state.folds, s.state.removed) for s in talk.scenes if s.state.folds)

    def rehearse(self, sheet: Any) -> list[str]:
        """Show every scene once and say what the hall would see."""
        from viewer.panels.presenting import MOST_LABELS, keep_picture

        before = self.state
        scene = self.scene_widget.scene
        lines = []
        self._note_camera()
        for number, kept in enumerate(self.desk.talk.scenes, start=1):
            self.session.do(commands.Command("rehearse", lambda _, s=kept.state: s, recorded=False))
            self.scene_widget.end_flight()
            if kept.state.folds:
                self.folds.finish()
            scene.render(moving=False)
            keep_picture(self, kept)
            labels = len(scene.labels())
            if labels > MOST_LABELS:
                lines.append(
                    told(
                        "{n} {title}: {count} labels; the hall is shown {most}",
                        n=number,
                        title=kept.title,
                        count=labels,
                        most=MOST_LABELS,
                    )
                )
            QApplication.processEvents()
        self.session.do(commands.Command("rehearsed", lambda _: before, recorded=False))
        self.scene_widget.end_flight()
        count = len(self.desk.talk.scenes)
        sheet.show_scenes(lines or [told("All {count} scenes looked through.", count=count)])
        return lines

    def _start_from_sheet(self, sheet: Any, start: int) -> None:
        room, place = sheet.room, sheet.chosen_place
        self._take_settings(
            replace(
                self.settings,
                hall_distance_m=room.distance_m,
                hall_height_m=room.height_m,
                hall_light=sheet.light.currentData(),
            )
        )
        # The sheet must be off the screen before the picture is on it.
        QTimer.singleShot(
            0, self, lambda: self.start_presenting(self.desk.talk, start, room=room, place=place)
        )

    def start_presenting(self, talk: Talk, start: int = 0, **how: Any) -> Any:
        """Present at once; see ``Presenting`` for the choices."""
        if self.lent or not self._model_ready():
            return None
        from viewer.panels.presenting import Presenting

        self._note_camera()
        self._prepare_folds(talk)
        if self._pictured != (id(self.model), self.theme):
            self._pictured = (id(self.model), self.theme)
            self.talk_pictures.clear()
        if any(scene.state.table for scene in talk.scenes):
            self.scene_widget.scene.prepare_limbs()
        s = self.settings
        how.setdefault("room", Room(s.hall_distance_m, s.hall_height_m))
        self.presenting = Presenting(self, talk, start, **how)
        self.presenting.finished.connect(self._presented)
        return self.presenting

    def _presented(self) -> None:
        self.presenting = None
        self.say("Presenting ended.")

    def rapid_review(self, side: SideChoice) -> None:
        """Go through the whole back in about a minute."""
        if not self._model_ready():
            return
        try:
            talk = review_talk(
                self.plan, self.model, side, self.settings.review_seconds, self.state.look
            )
        except (PeelbackError, ValueError) as error:
            self.say(told("No review: {why}.", why=error))
            return
        self.start_presenting(talk, playing=True)

    def guided_tour(self) -> None:
        """Go through the sample talk alone, with its notes under the picture."""
        if self._model_ready():
            self.start_presenting(lab_talk(self.model, self.plan), full=False, notes_in_band=True)

    # --- the table -----------------------------------------------------------------------------

    def stand_at(self, table: str) -> None:
        """Stand at a side of the table with the donor prone, or set the body upright."""
        self.do(commands.stand_at(table))
        lying = self.scene_widget is not None and self.scene_widget.scene.limbs_lie
        self.say(pose_sentence(table, lying), 12000)

    def _share_pointer(self, hit: Any) -> None:
        """Show the place under the pointer in the table picture and in the upright one."""
        if self.state.table and self.scene_widget is not None:
            self.scene_widget.scene.set_spot(None if hit is None else hit.point)
            self.scene_widget.refresh(moving=hit is not None)
