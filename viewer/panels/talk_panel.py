"""The list of scenes: keep, order, write, undo. A thin view on ``TalkDesk``."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QGridLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPlainTextEdit,
    QPushButton,
    QScrollArea,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from viewer.panels.flow import FlowLayout
from viewer.panels.style import Theme, font
from viewer.state.tongue import counted, told
from viewer.talk.scenes import LINE_LIMIT, TITLE_LIMIT, UNTITLED, TalkDesk

DEEDS = (
    ("keep", "Keep view", "Keep this view as a scene after the chosen one"),
    ("update", "New view", "Give the chosen scene this view"),
    ("duplicate", "Double", "Duplicate the chosen scene"),
    ("delete", "Delete", "Delete the chosen scene (undo brings it back)"),
    ("up", "▲", "Move the scene up (Alt+Up)"),
    ("down", "▼", "Move the scene down (Alt+Down)"),
    ("undo", "Undo", "Undo the last change of the talk"),
    ("redo", "Redo", "Do again what was undone"),
)


LEAST_ROWS = 4.5
"""Rows of scenes and of notes that are seen at once, whatever the size of the letters."""


class _Scenes(QListWidget):
    """The list, with its own keys.

    Signals
    -------
    moved : int, int
        A scene was dragged from one row to another.
    deed : str
    """

    moved = Signal(int, int)
    deed = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setDefaultDropAction(Qt.DropAction.MoveAction)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setAccessibleName("Scenes of the talk")
        self.setWordWrap(True)
        self.model().rowsMoved.connect(self._rows_moved)

    def _rows_moved(self, _parent, start: int, _end: int, _to_parent, row: int) -> None:
        self.moved.emit(start, row if row < start else row - 1)

    def keyPressEvent(self, event) -> None:
        alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        deeds = {
            (Qt.Key.Key_Up, True): "up",
            (Qt.Key.Key_Down, True): "down",
            (Qt.Key.Key_Delete, False): "delete",
            (Qt.Key.Key_Return, False): "show",
            (Qt.Key.Key_Enter, False): "show",
            (Qt.Key.Key_F2, False): "rename",
        }
        if deed := deeds.get((Qt.Key(event.key()), alt)):
            self.deed.emit(deed)
            event.accept()
            return
        super().keyPressEvent(event)

    def event(self, event) -> bool:
        # Keys of the list come before the window's own (arrows turn the model there).
        if event.type() == event.Type.ShortcutOverride and event.key() in (
            Qt.Key.Key_Up,
            Qt.Key.Key_Down,
            Qt.Key.Key_Delete,
            Qt.Key.Key_Return,
            Qt.Key.Key_Home,
            Qt.Key.Key_End,
        ):
            event.accept()
            return True
        return super().event(event)


class TalkPanel(QWidget):
    """Scenes and the words of the chosen one.

    Signals
    -------
    deed : str
        "keep", "update", "duplicate", "delete", "up", "down", "undo", "redo",
        "show", "rename", "present".
    chosen : int
    moved : int, int
    written : str, str
        A field of the chosen scene and its text.
    """

    deed = Signal(str)
    chosen = Signal(int)
    moved = Signal(int, int)
    written = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        self.head = QLabel("Talk")
        self.head.setObjectName("heading")
        self.head.setWordWrap(True)
        self.list = _Scenes()
        self.list.moved.connect(self.moved)
        self.list.deed.connect(self._deed_of_list)
        self.list.currentRowChanged.connect(self.chosen)
        self.list.itemDoubleClicked.connect(lambda _: self.deed.emit("show"))
        buttons = QWidget()
        row = FlowLayout(buttons)
        self.buttons: dict[str, QToolButton] = {}
        for deed, words, tip in DEEDS:
            button = QToolButton()
            button.setText(words)
            button.setToolTip(tip)
            button.setAccessibleName(tip)
            button.clicked.connect(lambda _=False, d=deed: self.deed.emit(d))
            self.buttons[deed] = button
            row.addWidget(button)
        self.title, self.line = QLineEdit(), QLineEdit()
        self.title.setMaxLength(TITLE_LIMIT)
        self.line.setMaxLength(LINE_LIMIT)
        self.line.setPlaceholderText("Short line for the hall")
        self.title.setPlaceholderText("Title")
        self.notes = QPlainTextEdit()
        self.notes.setPlaceholderText("Notes for the speaker")
        self.notes.setTabChangesFocus(True)
        for widget, name in (
            (self.title, "Title of the scene"),
            (self.line, "Short line for the hall"),
            (self.notes, "Notes for the speaker"),
        ):
            widget.setAccessibleName(name)
        self.title.textEdited.connect(lambda text: self.written.emit("title", text))
        self.line.textEdited.connect(lambda text: self.written.emit("line", text))
        self.notes.textChanged.connect(lambda: self.written.emit("notes", self.notes.toPlainText()))
        self.present = QPushButton("Present (F5)")
        self.present.setProperty("strong", True)
        self.present.clicked.connect(lambda: self.deed.emit("present"))
        words = QGridLayout()
        words.addWidget(self.title, 0, 0)
        words.addWidget(self.line, 1, 0)
        words.addWidget(self.notes, 2, 0)
        # With large letters in a small window all of it is still reached, by scrolling.
        desk = QWidget()
        box = QVBoxLayout(desk)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(5)
        box.addWidget(self.head)
        box.addWidget(self.list, 3)
        box.addWidget(buttons)
        box.addLayout(words, 2)
        self.scroll = QScrollArea()
        self.scroll.setWidget(desk)
        self.scroll.setWidgetResizable(True)
        self.scroll.setFrameShape(QFrame.Shape.NoFrame)
        self.scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 4, 0, 0)
        box.setSpacing(5)
        box.addWidget(self.scroll, 1)
        box.addWidget(self.present)

    def _deed_of_list(self, deed: str) -> None:
        if deed == "rename":
            self.title.setFocus()
            self.title.selectAll()
        else:
            self.deed.emit(deed)

    def set_dress(self, _theme: Theme, scale: float) -> None:
        """Take the letter scale."""
        for widget in (self.list, self.title, self.line, self.notes):
            widget.setFont(font(scale))
        row = QFontMetrics(font(scale)).lineSpacing()
        self.list.setMinimumHeight(round(LEAST_ROWS * row))
        self.notes.setMinimumHeight(round(LEAST_ROWS * row))
        self.head.setFont(font(scale, 1.0, bold=True))
        self.present.setFont(font(scale, 1.0, bold=True))
        for button in self.buttons.values():
            button.setFont(font(scale, 0.9))
        self.notes.setMinimumHeight(round(48 * scale))
        self.list.setMinimumHeight(round(70 * scale))

    def show_desk(self, desk: TalkDesk, file_name: str) -> None:
        """Show the talk as it stands."""
        talk = desk.talk
        mark = " *" if desk.unsaved else ""
        name = file_name or told("not saved yet")
        self.head.setText(
            f"{told(talk.title) if talk.title == UNTITLED else talk.title}{mark}\n"
            + counted(len(talk.scenes), "{count} scene", "{count} scenes")
            + f" · {name}"
        )
        blocked = [QSignalBlocker(w) for w in (self.list, self.title, self.line, self.notes)]
        titles = [f"{n}  {scene.title}" for n, scene in enumerate(talk.scenes, start=1)]
        if titles != [self.list.item(k).text() for k in range(self.list.count())]:
            self.list.clear()
            for words in titles:
                self.list.addItem(QListWidgetItem(words))
        self.list.setCurrentRow(desk.chosen)
        scene = talk.scenes[desk.chosen] if desk.chosen >= 0 else None
        for field in (self.title, self.line):
            text = getattr(scene, "title" if field is self.title else "line") if scene else ""
            # The cursor stays where it is while one writes.
            if field.text() != text and not (field is self.title and field.hasFocus()):
                field.setText(text)
                # A long line is read from its beginning.
                if not field.hasFocus():
                    field.setCursorPosition(0)
            field.setEnabled(scene is not None)
        notes = scene.notes if scene else ""
        if self.notes.toPlainText() != notes:
            self.notes.setPlainText(notes)
        self.notes.setEnabled(scene is not None)
        for deed in ("update", "duplicate", "delete"):
            self.buttons[deed].setEnabled(scene is not None)
        self.buttons["up"].setEnabled(desk.chosen > 0)
        self.buttons["down"].setEnabled(0 <= desk.chosen < len(talk.scenes) - 1)
        for deed, what in (("undo", desk.undo_name), ("redo", desk.redo_name)):
            self.buttons[deed].setEnabled(bool(what))
            self.buttons[deed].setToolTip(told(deed.capitalize()))
        self.present.setEnabled(bool(talk.scenes))
        del blocked
