"""Letters at 200 % in a small window: every text can be read whole."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QScreen
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QLabel, QPushButton

from meshes.questions.cover import layers_of
from tests.viewer.clipping import cut_texts
from tests.viewer.conftest import shown_window
from viewer.state import commands
from viewer.translations.texts import all_sheets
from viewer.wording import choose, reword

WALKED = (
    "covers", "into_view", "stand_left", "section", "rehearse", "mistakes", "talk_panel",
    "compare", "measure", "all_back",
)  # fmt: skip

BESIDE_PX = 660
"""Height of a panel beside the model in a window of 800, with menu, step and status lines."""


@pytest.fixture
def large(qtbot, request):
    """Return a window of 1280 by 800 with letters at 200 %."""
    yield from shown_window(qtbot, font_scale=2.0, language=getattr(request, "param", "en"))
    choose("en", "uk")


both_languages = pytest.mark.parametrize("large", ["en", "de"], indirect=True)


def cut_now(window):
    """Return the texts of all that is open that are still cut when the layouts have settled."""
    reword(window)
    found = set()
    # A text that has just come to need a second line gets it a turn later: what the pointer
    # meets may change at any time.
    for _ in range(10):
        QApplication.processEvents()
        tops = [top for top in QApplication.topLevelWidgets() if top.isVisible()]
        found = {line for top in tops for line in cut_texts(top)}
        if not found:
            break
        QTest.qWait(10)
    return found


@both_languages
def test_no_text_of_the_window_is_cut_at_twice_the_letter_size(qtbot, large):
    window = large
    window._layers = layers_of(window.model)
    assert window.width() <= 1280
    found = {"at the start": cut_now(window)}
    for name in WALKED:
        window.do(commands.select(["rhomboid_major.left"]))
        window._actions[name].trigger()
        qtbot.wait(20)
        found[name] = cut_now(window)
        if window._actions[name].isChecked() and not name.startswith("stand"):
            window._actions[name].trigger()
    assert {name: lines for name, lines in found.items() if lines} == {}


@both_languages
def test_no_text_of_a_sheet_is_cut_and_all_fit_a_small_screen(qtbot, large, monkeypatch):
    monkeypatch.setattr(QScreen, "availableSize", lambda self: QSize(1280, 800))
    cut, sizes = {}, {}
    for sheet in all_sheets(large):
        name = type(sheet).__name__
        if not isinstance(sheet, QDialog):
            # Alone on the screen it gets the height that it has beside the model.
            sheet.setParent(None)
            sheet.resize(sheet.sizeHint().width(), BESIDE_PX)
        sheet.show()
        # Rows that wrap ask their panel for height once they know their width: that takes turns.
        for _ in range(4):
            qtbot.wait(10)
        cut[name], sizes[name] = cut_texts(sheet), sheet.size().toTuple()
        sheet.close()
    assert {name: lines for name, lines in cut.items() if lines} == {}
    dialogs = {n: s for n, s in sizes.items() if n not in ("NotesWindow", "CaptionBand")}
    assert {n: s for n, s in dialogs.items() if s[0] > 1280 or s[1] > 800} == {}


def test_a_message_without_room_is_shown_whole_above_the_status_line(qtbot, large):
    words = "The session could not be kept, since the disk that it lies on is full. " * 2
    bar = large.statusBar()
    qtbot.wait(20)
    bar.showMessage(words)
    assert bar.whole.isVisible() and bar.whole.text() == words
    assert cut_texts(large) == []
    assert bar.whole.geometry().bottom() < bar.y() + 1
    bar.showMessage("Kept.")
    assert not bar.whole.isVisible()
    bar.showMessage(words)
    bar.clearMessage()
    assert not bar.whole.isVisible()


def test_what_is_hidden_is_listed_behind_a_last_button_where_room_is_scarce(qtbot, large):
    for stratum in (2, 3, 5, 8):
        large.do(commands.toggle_stratum(stratum, "both"))
    chips = large.strip.chips
    shown = [chip for chip in chips.chips if chip.isVisible()]
    assert len(shown) + len(chips.menu.actions()) == len(large.strip.things) > 0
    assert chips.more.isVisible()
    chips.menu.actions()[-1].trigger()
    assert len(large.strip.things) == 3


def test_the_pose_is_told_beside_the_cross_and_not_under_it(large):
    scene = large.scene_widget.scene
    told = scene._corner_words(scene.size())
    assert told.words(None).shape[1] + 8 < told.size[0] - told.marker().shape[1] - 6
    large.stand_at("left")
    told = scene._corner_words(scene.size())
    assert told.words(scene._table).shape[1] + 8 < scene._table.box(told.size)[0]


def test_the_walk_finds_a_text_that_is_cut(qtbot):
    label, button = QLabel("A long sentence that has no room"), QPushButton("Bring it into view")
    for widget in (label, button):
        qtbot.addWidget(widget)
        widget.show()
        assert cut_texts(widget) == []
        widget.setFixedWidth(40)
        assert len(cut_texts(widget)) == 1
    label.setWordWrap(True)
    label.setFixedSize(120, 16)
    assert len(cut_texts(label)) == 1
