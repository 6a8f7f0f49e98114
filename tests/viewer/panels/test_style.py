"""What is drawn by the style can be told from its ground."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QCheckBox, QListWidget, QListWidgetItem

from viewer.panels.style import THEMES, apply_theme
from viewer.talk.room import contrast

LEAST = 3.0
"""Of the parts of a control against what lies beside them (WCAG 2.2, 1.4.11)."""


def strongest(picture, ground):
    """Return the highest contrast of any pixel of a picture with its ground."""
    seen = {
        picture.pixelColor(x, y).name()
        for x in range(picture.width())
        for y in range(picture.height())
    }
    return max(contrast(colour, ground) for colour in seen)


@pytest.mark.parametrize("name", sorted(THEMES))
@pytest.mark.parametrize("checked", [False, True])
def test_boxes_to_tick_are_seen_ticked_or_not(qtbot, name, checked):
    app = QApplication.instance()
    apply_theme(app, THEMES[name], 1.0)
    box = QCheckBox("")
    items = QListWidget()
    item = QListWidgetItem("")
    item.setCheckState(Qt.CheckState.Checked if checked else Qt.CheckState.Unchecked)
    items.addItem(item)
    box.setChecked(checked)
    for widget in (box, items):
        qtbot.addWidget(widget)
        widget.resize(60, 24)
        widget.show()
        app.processEvents()
    assert strongest(box.grab().toImage(), THEMES[name].panel) >= LEAST
    around = items.viewport().grab().toImage().copy(0, 0, 30, 20)
    assert strongest(around, THEMES[name].raised) >= LEAST
    apply_theme(app, THEMES["light"], 1.0)
