"""The window's commands for undo, files and pictures."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from viewer.building import GrowingModel
from viewer.panels.sheets import (
    PictureSheet,
    version,
)
from viewer.state.tongue import told
from viewer.state.working_file import (
    SUFFIX,
    WorkingFileError,
    open_working_file,
    save_working_file,
)


class FileMenu:
    """What the File and Edit menus call."""

    def undo(self) -> None:
        """Take the last change back."""
        if self.talk_has_focus():
            self.talk_undo()
            return
        self._note_camera()
        if name := self.session.undo():
            self.say(told("Undone: {what}", what=name))

    def redo(self) -> None:
        """Do again what was undone."""
        if self.talk_has_focus():
            self.talk_redo()
            return
        self._note_camera()
        if name := self.session.redo():
            self.say(told("Done again: {what}", what=name))

    def open_state(self) -> None:
        """Ask for a working state and open it."""
        name, _ = QFileDialog.getOpenFileName(
            self,
            told("Open state"),
            str(self._file or Path.home()),
            told("Working states") + f" (*{SUFFIX})",
        )
        if name:
            self.open_file(Path(name))

    def open_file(self, path: Path) -> bool:
        """Open a working state; refuses broken and foreign files with a sentence."""
        try:
            opened = open_working_file(path)
        except WorkingFileError as error:
            QMessageBox.warning(self, told("Open state"), str(error))
            return False
        self._file = path
        own = self.model.body.as_dict()
        differs = [k for k, v in opened.body.items() if k in own and own[k] != v]
        if isinstance(self.model, GrowingModel):
            self._opened = opened.state
        else:
            self.session.replace_state(opened.state)
        unknown = (opened.state.hidden | opened.state.removed) - set(self.model.parts)
        words = told("Opened {file}.", file=path.name)
        if differs:
            words += " " + told(
                "It was saved on another body ({fields}); this body is kept.",
                fields=", ".join(differs),
            )
        elif unknown and not isinstance(self.model, GrowingModel):
            words += " " + told(
                "{count} parts in it are not in this model; they are kept in the file.",
                count=len(unknown),
            )
        self.say(words, 12000)
        return True

    def save_state(self) -> None:
        """Save to the present file, or ask for one."""
        if self._file is None:
            self.save_state_as()
        else:
            self.save_file(self._file)

    def save_state_as(self) -> None:
        """Ask where to save."""
        start = self._file or Path.home() / f"back{SUFFIX}"
        name, _ = QFileDialog.getSaveFileName(
            self, told("Save state as"), str(start), told("Working states") + f" (*{SUFFIX})"
        )
        if name:
            path = Path(name)
            self.save_file(path if path.suffix else path.with_suffix(SUFFIX))

    def save_file(self, path: Path) -> bool:
        """Save the working state to a file."""
        self._note_camera()
        try:
            save_working_file(
                path, self.state, self.model.body.as_dict(), self.model.detail, version()
            )
        except OSError as error:
            QMessageBox.warning(
                self,
                told("Save state"),
                told("{path} cannot be written: {why}", path=path, why=error.strerror),
            )
            return False
        self._file = path
        self.say(told("Saved {file}", file=path.name))
        return True

    def _picture(self, size: tuple[int, int] | None) -> QImage:
        picture = np.ascontiguousarray(self.scene_widget.scene.screenshot(size))
        height, width = picture.shape[:2]
        return QImage(picture.data, width, height, 3 * width, QImage.Format.Format_RGB888).copy()

    def copy_picture(self) -> None:
        """Put the picture on the clipboard."""
        if self.scene_widget is not None:
            QApplication.clipboard().setImage(self._picture(None))
            self.say("Picture copied")

    def save_picture(self) -> None:
        """Ask for size and place and save the picture."""
        if self.scene_widget is None:
            return
        sheet = PictureSheet(self.settings.picture_width, self.settings.picture_height, self)
        if not sheet.exec():
            return
        name, _ = QFileDialog.getSaveFileName(
            self,
            told("Save picture"),
            str(Path.home() / "back.png"),
            told("Pictures") + " (*.png *.jpg *.tif)",
        )
        if name:
            self.save_picture_to(Path(name), sheet.size_wanted)

    def save_picture_to(self, path: Path, size: tuple[int, int]) -> bool:
        """Save the picture at a size in pixels."""
        if not path.suffix:
            path = path.with_suffix(".png")
        self._take_settings(replace(self.settings, picture_width=size[0], picture_height=size[1]))
        if not self._picture(size).save(str(path)):
            QMessageBox.warning(
                self, told("Save picture"), told("{path} could not be written.", path=path)
            )
            return False
        self.say(told("Saved {file}", file=f"{path.name}, {size[0]} × {size[1]}"))
        return True
