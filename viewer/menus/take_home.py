"""The window's commands for what leaves it: lab sheet, take-home page, meshes."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QFileDialog, QMessageBox

from meshes.catalogue.plan import steps
from meshes.errors import PeelbackError
from meshes.export import write_bytes, write_pieces
from viewer.building import GrowingModel
from viewer.cli_body import words_of
from viewer.menus.refusal import unwritten
from viewer.menus.verb_run import VerbRun
from viewer.panels.page_preview import PagePreview
from viewer.panels.sheets import version
from viewer.panels.take_home import ExportChoices, ShareChoices, SheetChoice, SheetChoices
from viewer.print.sheet_words import sheet_in_words
from viewer.state.tongue import told
from viewer.state.view_state import sides_of
from viewer.state.visibility import visible_parts
from viewer.talk.talk_file import SUFFIX, save_talk
from viewer.wording import language_of


class TakeHomeMenu:
    """What the File menu calls to print, share and export."""

    _verb_run: VerbRun | None = None

    def _is_ready(self) -> bool:
        if isinstance(self.model, GrowingModel):
            self.say(told("The back is still being built; try again when it is there."))
            return False
        if self._verb_run is not None:
            self.say("One file is still being written; wait for it.")
            return False
        return True

    def make_sheet(self) -> None:
        """Ask what a lab sheet shall hold and where it goes."""
        if not self._is_ready():
            return
        dialog = SheetChoices(
            [(step.id, told(step.title), step.minutes) for step in steps()],
            self._open_steps(),
            lambda choice: sheet_in_words(choice, self.model),
            self,
        )
        if not dialog.exec():
            return
        self.preview_sheet(dialog.choice)

    def preview_sheet(self, choice: SheetChoice) -> None:
        """Set the sheet beside the window and show its pages; what is liked is saved."""
        scrap = tempfile.TemporaryDirectory(prefix="peelback-")
        path = Path(scrap.name) / "lab.pdf"
        self.write_sheet_to(path, choice, scrap, self._show_pages)

    def _show_pages(self, path: Path) -> None:
        preview = PagePreview(path.read_bytes(), self)
        preview.save_wanted.connect(lambda: self._save_pages(preview))
        self._open(preview)

    def _save_pages(self, preview: PagePreview) -> None:
        path = self._place_for("Lab sheet", "lab.pdf", "PDF (*.pdf)")
        if path is not None and self.save_pages_to(path, preview.data):
            preview.accept()

    def save_pages_to(self, path: Path, data: bytes) -> bool:
        """Save pages that were looked at; a place that cannot be written is said."""
        try:
            write_bytes(path, data)
        except PeelbackError as error:
            QMessageBox.warning(self, told("Lab sheet"), unwritten(path, error))
            return False
        self.say(told("Saved {file}", file=path.name))
        return True

    def _open_steps(self) -> tuple[str, ...]:
        """Steps that are not done yet on the working side; all when all are done."""
        done = set.intersection(
            *(
                self.plan.done(self.model, self.state, side)
                for side in sides_of(self.state.working_side)
            )
        )
        left = tuple(step.id for step in steps() if step.id not in done)
        return left or tuple(step.id for step in steps())

    def write_sheet_to(
        self,
        path: Path,
        choice: SheetChoice,
        scrap: Any = None,
        then: Callable[[Path], None] | None = None,
    ) -> None:
        """Write a lab sheet beside the window; ``then`` is called when it is there."""
        words = ["sheet", f"--out={path}", f"--paper={choice.paper}", f"--side={choice.side}"]
        words.append(f"--steps={','.join(choice.steps)}")
        if choice.blank:
            words.append("--blank")
        if choice.short:
            words.append("--short")
        self._run_verb(words, path, scrap, then)

    def make_page(self) -> None:
        """Ask what travels with the take-home page and where it goes."""
        if not self._is_ready():
            return
        talk = self.desk.talk
        dialog = ShareChoices(talk.title if talk.scenes else "", self)
        if not dialog.exec():
            return
        path = self._place_for("Take-home page", "back.html", told("Pages") + " (*.html)")
        if path is None:
            return
        kind, notes = dialog.talk.currentData(), dialog.notes.isChecked()
        talk_file = Path(dialog.file.text().strip()) if kind == "file" else None
        self.write_page_to(path, talk_file, notes, with_open_talk=kind == "open")

    def write_page_to(
        self,
        path: Path,
        talk_file: Path | None = None,
        notes: bool = False,
        with_open_talk: bool = False,
    ) -> None:
        """Write the take-home page beside the window."""
        words = ["share", f"--out={path}"]
        scrap = None
        if with_open_talk:
            scrap = tempfile.TemporaryDirectory(prefix="peelback-")
            talk_file = Path(scrap.name) / f"open{SUFFIX}"
            save_talk(talk_file, self.desk.talk, version())
        if talk_file is not None:
            words.append(f"--talk={talk_file}")
            words += ["--notes"] if notes else []
        self._run_verb(words, path, scrap)

    def _run_verb(
        self,
        words: list[str],
        path: Path,
        scrap: Any = None,
        then: Callable[[Path], None] | None = None,
    ) -> None:
        """Run a verb for this body and detail; ``scrap`` is let go when it has ended."""
        spoken = language_of(self.settings.language)
        words = [*words, f"--language={spoken}", f"--detail={self.model.detail}"]
        words += words_of(self.model.body)
        run = VerbRun(words, self)

        def tell(good: bool, said: str) -> None:
            self._verb_run = None
            if good and then is not None:
                self.statusBar().clearMessage()
                then(path)
            elif good:
                self.say(told("Written: {what}", what=said), 12000)
            else:
                self.statusBar().clearMessage()
                QMessageBox.warning(self, "Not written", f"{path.name}: {said}")
            if scrap is not None:
                scrap.cleanup()
            run.deleteLater()

        run.ended.connect(tell)
        self._verb_run = run
        self.say(
            told("Writing {file} … it takes up to a minute; go on working.", file=path.name), 0
        )
        run.start()

    def stop_verb(self) -> None:
        """End what is still being written; called when the window closes."""
        if self._verb_run is not None:
            self._verb_run.stop()
            self._verb_run = None

    def export_meshes(self) -> None:
        """Ask which meshes to write and into which folder."""
        if not self._is_ready():
            return
        chosen = self._parts_to_export()
        dialog = ExportChoices({key: len(ids) for key, ids in chosen.items()}, self)
        if not dialog.exec():
            return
        folder = QFileDialog.getExistingDirectory(
            self, told("Folder for the meshes"), str(Path.home())
        )
        if folder:
            self.write_meshes_to(
                Path(folder),
                dialog.form_box.currentData(),
                dialog.pieces.currentData(),
                chosen[dialog.which.currentData()],
            )

    def _parts_to_export(self) -> dict[str, list[str]]:
        seen = visible_parts(self.model, self.state, self._neighbours)
        picked = [i for i in self.state.selection if i in self.model.parts]
        return {"picked": picked, "seen": sorted(seen), "all": list(self.model.parts)}

    def write_meshes_to(self, folder: Path, form: str, pieces: str, ids: list[str]) -> bool:
        """Write meshes into a folder; says how many files it became."""
        try:
            paths = write_pieces(self.model, folder, form, pieces, ids)
        except PeelbackError as error:
            QMessageBox.warning(self, told("Export meshes"), unwritten(folder, error))
            return False
        count = told("1 file") if len(paths) == 1 else told("{count} files", count=len(paths))
        self.say(told("Written: {what} in {folder}", what=count, folder=folder), 12000)
        return True

    def _place_for(self, title: str, name: str, kinds: str) -> Path | None:
        chosen, _ = QFileDialog.getSaveFileName(self, told(title), str(Path.home() / name), kinds)
        if not chosen:
            return None
        path = Path(chosen)
        return path if path.suffix else path.with_suffix(Path(name).suffix)
