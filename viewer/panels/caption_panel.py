"""The caption: all that is said of the part under the pointer or of the picked one."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QTextBrowser, QToolButton, QVBoxLayout, QWidget

from viewer.panels.flow import FlowLayout
from viewer.panels.style import LIGHT, Theme, font, point_size
from viewer.state.captions import Caption
from viewer.state.tongue import told

BUTTONS = (
    ("hide", "Hide", "Hide the part (H)"),
    ("alone", "Alone", "Show it with nothing else (O)"),
    ("see_through", "See through", "Make it see-through (T)"),
    ("show_part", "Put back", "Lay it back, however it was taken off (S)"),
    ("into_view", "Into view", "Do the fewest steps that uncover it (D)"),
    ("covers", "Over it", "Tint and list what lies over it (W)"),
    ("peek", "Peek", "Look through what covers it, changing nothing (P)"),
    ("fly", "Go to", "Let the camera go there (F)"),
)


class CaptionPanel(QWidget):
    """Name, Latin, facts and sources, and what can be done with the part.

    Signals
    -------
    action_wanted : str
        Id of an action of the table.
    """

    action_wanted = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._theme: Theme = LIGHT
        self._scale = 1.0
        self._caption: Caption | None = None
        self._picked = False
        self._latin_first = False
        self.text = QTextBrowser()
        self.text.setOpenExternalLinks(False)
        self.text.setOpenLinks(False)
        self.text.setAccessibleName("Caption")
        self.buttons: dict[str, QToolButton] = {}
        self._tools = tools = QWidget()
        row = FlowLayout(tools, spacing=4, line_gap=4)
        row.setContentsMargins(0, 0, 0, 0)
        for action, title, tip in BUTTONS:
            button = QToolButton()
            button.setText(title)
            button.setToolTip(tip)
            button.setAccessibleName(title)
            button.setCheckable(action in ("alone", "see_through", "peek", "covers"))
            button.clicked.connect(lambda _=False, a=action: self.action_wanted.emit(a))
            self.buttons[action] = button
            row.addWidget(button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(6)
        layout.addWidget(self.text, 1)
        layout.addWidget(tools)
        self.show_caption(None, picked=False)

    def set_dress(self, theme: Theme, scale: float, latin_first: bool = False) -> None:
        """Take colours, letter scale and which name stands first."""
        self._theme, self._scale, self._latin_first = theme, scale, latin_first
        self.text.setFont(font(scale))
        for button in self.buttons.values():
            button.setFont(font(scale, 0.92))
        self._write()

    def show_caption(self, caption: Caption | None, *, picked: bool) -> None:
        """Show a caption; ``picked`` tells a picked part from one under the pointer."""
        if caption == self._caption and picked == self._picked and self.text.toPlainText():
            return
        self._caption, self._picked = caption, picked
        self._write()

    def set_cramped(self, cramped: bool) -> None:
        """Leave the room to the words; all that the buttons do is in the menu 'Part' as well."""
        self._tools.setVisible(not cramped)

    def show_toggles(
        self, *, enabled: bool, alone: bool, see_through: bool, peek: bool, covers: bool = False
    ) -> None:
        """Show which ways of looking are on."""
        for action, on in (
            ("alone", alone),
            ("see_through", see_through),
            ("peek", peek),
            ("covers", covers),
        ):
            self.buttons[action].setChecked(on)
        for action, button in self.buttons.items():
            button.setEnabled(enabled or action == "peek" or (action == "covers" and covers))

    @property
    def title(self) -> str:
        """Title of the part that is shown, "" for none."""
        return self._caption.title if self._caption else ""

    def _write(self) -> None:
        t = self._theme
        if self._caption is None:
            self.text.setHtml(
                f"<p style='color:{t.soft}'>"
                + told("Point at a part to see what it is; click to pick it.")
                + f"</p><p style='color:{t.soft}'>"
                + told("Type any name in the search field above to find one.")
                + "</p>"
            )
            self.text.setAccessibleDescription(told("No part"))
            return
        c = self._caption
        large, small = point_size(self._scale, 1.42), point_size(self._scale, 0.9)
        names = (c.title, c.latin)
        if self._latin_first and c.latin:
            side = c.title.rpartition(", ")[2]
            side = f", {side}" if side in (told("left"), told("right")) else ""
            names = (f"{c.latin[:1].upper()}{c.latin[1:]}{side}", c.title)
        rows = [f"<div style='font-size:{large:.1f}pt; font-weight:600'>{escape(names[0])}</div>"]
        if names[1]:
            rows.append(f"<div style='color:{t.soft}'><i>{escape(names[1])}</i></div>")
        mark = told("picked") if self._picked else told("under the pointer")
        rows.append(
            f"<div style='color:{t.soft}; font-size:{small:.1f}pt; margin-bottom:5px'>"
            f"{escape(c.place)} · {mark}</div>"
        )
        for head, text in c.lines:
            colour = t.caution if head == "Sources differ" else t.accent
            words = escape(text).replace("\n", "<br>")
            rows.append(
                f"<div style='margin-top:5px'><b style='color:{colour}'>{escape(told(head))}</b><br>"
                f"{words}</div>"
            )
        if c.sources:
            cited = "<br>".join(f"· {escape(s)}" for s in c.sources)
            rows.append(
                f"<div style='margin-top:8px; color:{t.soft}; font-size:{small:.1f}pt'>"
                f"<b>{told('Sources')}</b><br>{cited}</div>"
            )
        at = self.text.verticalScrollBar().value() if self._picked else 0
        self.text.setHtml("".join(rows))
        self.text.verticalScrollBar().setValue(at if at else 0)
        self.text.setAccessibleDescription(c.spoken())
        self.text.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse
            | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
