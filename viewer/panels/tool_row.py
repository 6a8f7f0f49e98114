"""The row of tools above the model; every button is one of the table's actions."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSlider, QToolButton, QWidget

from viewer.panels.flow import FlowLayout
from viewer.panels.glyphs import glyph, glyph_size
from viewer.panels.style import LIGHT, Theme, font

# Groups of (action id, drawing, words on the button); an empty drawing means words only.
_GROUPS: tuple[tuple[str, tuple[tuple[str, str, str], ...]], ...] = (
    ("", (("undo", "undo", ""), ("redo", "redo", ""))),
    (
        "",
        (
            ("view_posterior", "posterior", ""),
            ("view_oblique_left", "oblique_left", ""),
            ("view_oblique_right", "oblique_right", ""),
            ("view_lateral_left", "lateral_left", ""),
            ("view_lateral_right", "lateral_right", ""),
            ("view_superior", "superior", ""),
            ("return_view", "return", ""),
        ),
    ),
    (
        "",
        (("side_left", "left", ""), ("side_both", "both", ""), ("side_right", "right", "")),
    ),
    (
        "",
        (
            ("look_by_kind", "", "By kind"),
            ("look_as_fixed", "", "As fixed"),
            ("look_high_contrast", "", "Contrast"),
        ),
    ),
    (
        "",
        (
            ("compare", "compare", "Compare"),
            ("surface", "surface", "Marks"),
            ("section", "", "Section"),
            ("measure", "measure", "Measure"),
            ("labels", "labels", "Labels"),
        ),
    ),
)


class ToolRow(QFrame):
    """Buttons for the actions that one wants within reach, and the label slider.

    Signals
    -------
    density_wanted : float
        0-1.
    """

    density_wanted = Signal(float)

    def __init__(self, actions: dict[str, QAction], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bar")
        self._theme: Theme = LIGHT
        self._buttons: list[tuple[QToolButton, str]] = []
        self._heads: list[QLabel] = []
        self._spare: list[QWidget] = []
        flow = FlowLayout(self, spacing=10)
        flow.setContentsMargins(8, 5, 8, 5)
        for head, entries in _GROUPS:
            group = QWidget()
            row = QHBoxLayout(group)
            row.setContentsMargins(0, 0, 0, 0)
            row.setSpacing(0)
            if head:
                label = QLabel(head)
                label.setProperty("soft", True)
                label.setContentsMargins(0, 0, 6, 0)
                self._heads.append(label)
                row.addWidget(label)
            if entries[0][0].startswith("look_"):
                self._spare.append(group)
            for k, (action_id, drawing, words) in enumerate(entries):
                button = _ActionButton(actions[action_id], words, bool(drawing))
                place = "first" if k == 0 else "last" if k == len(entries) - 1 else "middle"
                button.setProperty("place", place)
                self._buttons.append((button, drawing))
                row.addWidget(button)
            flow.addWidget(group)
        self._density = QSlider(Qt.Orientation.Horizontal)
        self._density.setRange(0, 100)
        self._density.setSingleStep(5)
        self._density.setAccessibleName("Label density")
        self._density.setToolTip("How many labels  ( ,  . )")
        self._density.valueChanged.connect(lambda v: self.density_wanted.emit(v / 100))
        flow.addWidget(self._density)
        self._spare.append(self._density)

    def set_cramped(self, cramped: bool) -> None:
        """Keep to one line: looks and label slider (both in the menus) and words go."""
        for widget in self._spare:
            widget.setVisible(not cramped)
        for button, drawing in self._buttons:
            if drawing and button.text():
                button.setToolButtonStyle(
                    Qt.ToolButtonStyle.ToolButtonIconOnly
                    if cramped
                    else Qt.ToolButtonStyle.ToolButtonTextBesideIcon
                )
        self.layout().invalidate()
        self.updateGeometry()

    def set_dress(self, theme: Theme, scale: float) -> None:
        """Take colours and letter scale."""
        self._theme = theme
        size = glyph_size(scale)
        for button, drawing in self._buttons:
            button.setFont(font(scale, 0.92))
            if drawing:
                button.setIcon(glyph(drawing, theme, size.width()))
                button.setIconSize(size)
        for label in self._heads:
            label.setFont(font(scale, 0.85))
        self._density.setFixedWidth(round(84 * scale))
        self.layout().invalidate()

    def show_density(self, density: float) -> None:
        """Put the slider where the state says, without telling anybody."""
        self._density.blockSignals(True)
        self._density.setValue(round(density * 100))
        self._density.blockSignals(False)


class _ActionButton(QToolButton):
    """A button that follows an action but keeps its own words and drawing."""

    def __init__(self, action: QAction, words: str, drawn: bool) -> None:
        super().__init__()
        self._action = action
        self.setText(words)
        self.setToolButtonStyle(
            Qt.ToolButtonStyle.ToolButtonTextBesideIcon
            if drawn and words
            else Qt.ToolButtonStyle.ToolButtonIconOnly
            if drawn
            else Qt.ToolButtonStyle.ToolButtonTextOnly
        )
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setCheckable(action.isCheckable())
        self.clicked.connect(self._pressed)
        action.changed.connect(self._follow)
        self._follow()

    def _pressed(self) -> None:
        self._action.trigger()
        self._follow()

    def _follow(self) -> None:
        action = self._action
        self.setEnabled(action.isEnabled())
        if action.isCheckable():
            self.setChecked(action.isChecked())
        title = action.text().replace("&", "").rstrip("…")
        keys = " or ".join(k.toString() for k in action.shortcuts())
        tip = f"{title}  ({keys})" if keys else title
        if action.statusTip() and action.statusTip() != title:
            tip += f"\n{action.statusTip()}"
        self.setToolTip(tip)
        self.setAccessibleName(title)
