"""Colours, letter sizes and the style sheet of the window, in one place."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtGui import QColor, QFont, QPalette
from PySide6.QtWidgets import QApplication

BASE_POINT_SIZE = 9.5

_BASE = {"family": "", "size": 0.0}


@dataclass(frozen=True, slots=True)
class Theme:
    """The window's colours; text keeps at least 4.5:1 on its ground.

    Attributes
    ----------
    ground, panel, raised, line : str
        Behind everything, behind panels, of things one can press, of borders.
    text, soft : str
        Main and secondary text.
    accent, on_accent : str
        What is on, and text on it.
    caution : str
        Cautions and refusals; never the only sign.
    done : str
        Steps that are done.
    """

    name: str
    ground: str
    panel: str
    raised: str
    line: str
    text: str
    soft: str
    accent: str
    on_accent: str
    accent_wash: str
    caution: str
    done: str
    shadow: str


LIGHT = Theme(
    name="light",
    ground="#e4e2dd",
    panel="#f3f1ec",
    raised="#fdfcfa",
    line="#c6c2b8",
    text="#22262b",
    soft="#575c63",
    accent="#0d5c63",
    on_accent="#ffffff",
    accent_wash="#d4e5e3",
    caution="#8a3b12",
    done="#2f6b3a",
    shadow="#00000026",
)
DARK = Theme(
    name="dark",
    ground="#14171a",
    panel="#1c2024",
    raised="#282d33",
    line="#3c434b",
    text="#e9e7e2",
    soft="#a9afb6",
    accent="#63c1bd",
    on_accent="#0c1b1c",
    accent_wash="#21393b",
    caution="#efa476",
    done="#84c58f",
    shadow="#00000066",
)
THEMES = {"light": LIGHT, "dark": DARK}


def point_size(scale: float, factor: float = 1.0) -> float:
    """Return a letter size in points."""
    return BASE_POINT_SIZE * scale * factor


def font(scale: float, factor: float = 1.0, *, bold: bool = False, italic: bool = False) -> QFont:
    """Return the window's font at a scale."""
    made = QFont(QApplication.font())
    made.setPointSizeF(point_size(scale, factor))
    made.setBold(bold)
    made.setItalic(italic)
    return made


def apply_theme(app: QApplication, theme: Theme, scale: float) -> None:
    """Dress the whole program."""
    made = QFont(app.font())
    made.setPointSizeF(point_size(scale))
    app.setFont(made)
    palette = QPalette()
    roles = {
        QPalette.ColorRole.Window: theme.panel,
        QPalette.ColorRole.Base: theme.raised,
        QPalette.ColorRole.AlternateBase: theme.panel,
        QPalette.ColorRole.Button: theme.raised,
        QPalette.ColorRole.WindowText: theme.text,
        QPalette.ColorRole.Text: theme.text,
        QPalette.ColorRole.ButtonText: theme.text,
        QPalette.ColorRole.ToolTipBase: theme.raised,
        QPalette.ColorRole.ToolTipText: theme.text,
        QPalette.ColorRole.PlaceholderText: theme.soft,
        QPalette.ColorRole.Highlight: theme.accent,
        QPalette.ColorRole.HighlightedText: theme.on_accent,
        QPalette.ColorRole.Link: theme.accent,
        QPalette.ColorRole.Mid: theme.line,
        QPalette.ColorRole.Dark: theme.line,
        QPalette.ColorRole.Light: theme.raised,
    }
    for role, colour in roles.items():
        palette.setColor(role, QColor(colour))
    for role in (
        QPalette.ColorRole.WindowText,
        QPalette.ColorRole.Text,
        QPalette.ColorRole.ButtonText,
    ):
        shade = QColor(theme.soft)
        shade.setAlpha(150)
        palette.setColor(QPalette.ColorGroup.Disabled, role, shade)
    app.setPalette(palette)
    app.setStyleSheet(style_sheet(theme, scale))


def style_sheet(theme: Theme, scale: float) -> str:
    """Return the style sheet for a theme and a letter scale."""
    pad = round(5 * scale)
    small = round(3 * scale)
    # Width of the two buttons of a number, and half that of their arrows.
    step, tip = round(18 * scale), round(4 * scale)
    t = theme
    return f"""
QMainWindow, QDialog {{ background: {t.panel}; }}
QWidget#ground {{ background: {t.ground}; }}
QMenuBar {{ background: {t.panel}; color: {t.text}; border-bottom: 1px solid {t.line}; }}
QMenuBar::item {{ padding: {small}px {pad + 4}px; background: transparent; }}
QMenuBar::item:selected {{ background: {t.accent_wash}; }}
QMenu {{ background: {t.raised}; color: {t.text}; border: 1px solid {t.line}; padding: 4px; }}
QMenu::item {{ padding: {small + 1}px {pad * 4}px {small + 1}px {pad * 4}px; border-radius: 3px; }}
QMenu::item:selected {{ background: {t.accent}; color: {t.on_accent}; }}
QMenu::item:disabled {{ color: {t.soft}; }}
QMenu::separator {{ height: 1px; background: {t.line}; margin: 4px 8px; }}
QToolTip {{ background: {t.raised}; color: {t.text}; border: 1px solid {t.line}; padding: 3px; }}

QToolButton, QPushButton {{
  background: {t.raised}; color: {t.text}; border: 1px solid {t.line};
  border-radius: 4px; padding: {small}px {pad}px; min-height: {round(17 * scale)}px;
}}
QToolButton:hover, QPushButton:hover {{ border-color: {t.accent}; }}
QToolButton:pressed, QPushButton:pressed {{ background: {t.accent_wash}; }}
QToolButton:checked, QPushButton:checked {{
  background: {t.accent}; color: {t.on_accent}; border-color: {t.accent};
}}
QToolButton:disabled, QPushButton:disabled {{ color: {t.soft}; background: {t.panel};
  border-color: {t.line}; }}
QToolButton:focus, QPushButton:focus, QLineEdit:focus, QComboBox:focus, QTreeWidget:focus,
QTextBrowser:focus, QAbstractSpinBox:focus {{ border: 2px solid {t.accent}; }}
QToolButton::menu-indicator {{ image: none; }}
QToolButton[flat="true"] {{ background: transparent; border: 1px solid transparent; }}
QToolButton[flat="true"]:hover {{ background: {t.raised}; border-color: {t.line}; }}
QToolButton[flat="true"]:checked {{ background: {t.accent}; color: {t.on_accent}; }}
QToolButton[flat="true"]:focus {{ border: 2px solid {t.accent}; }}
QToolButton[place="first"] {{ border-top-right-radius: 0; border-bottom-right-radius: 0; }}
QToolButton[place="middle"] {{ border-radius: 0; border-left: none; }}
QToolButton[place="last"] {{ border-top-left-radius: 0; border-bottom-left-radius: 0;
  border-left: none; }}
QPushButton[strong="true"] {{ background: {t.accent}; color: {t.on_accent};
  border-color: {t.accent}; font-weight: bold; }}
QPushButton[strong="true"]:disabled {{ background: {t.panel}; color: {t.soft};
  border-color: {t.line}; }}

QLineEdit, QAbstractSpinBox, QComboBox {{
  background: {t.raised}; color: {t.text}; border: 1px solid {t.line}; border-radius: 4px;
  padding: {small}px {pad}px; min-height: {round(18 * scale)}px;
  selection-background-color: {t.accent}; selection-color: {t.on_accent};
}}
QAbstractSpinBox {{ padding-right: {step + small}px; }}
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{
  subcontrol-origin: border; width: {step}px; border: none; background: transparent;
}}
QAbstractSpinBox::up-button {{ subcontrol-position: top right; }}
QAbstractSpinBox::down-button {{ subcontrol-position: bottom right; }}
QComboBox {{ padding-right: {step + small}px; }}
QComboBox::drop-down {{
  subcontrol-origin: border; width: {step}px; border: none; background: transparent; }}
QAbstractSpinBox::up-arrow, QAbstractSpinBox::down-arrow, QComboBox::down-arrow {{
  width: 0; height: 0; border-left: {tip}px solid {t.raised};
  border-right: {tip}px solid {t.raised}; }}
QAbstractSpinBox::up-arrow {{ border-bottom: {tip}px solid {t.text}; }}
QAbstractSpinBox::down-arrow, QComboBox::down-arrow {{ border-top: {tip}px solid {t.text}; }}
QAbstractSpinBox::up-arrow:off {{ border-bottom-color: {t.line}; }}
QAbstractSpinBox::down-arrow:off {{ border-top-color: {t.line}; }}
QTreeWidget, QListView, QTextBrowser {{
  background: {t.raised}; color: {t.text}; border: 1px solid {t.line}; border-radius: 4px;
  outline: none;
}}
QTreeWidget::item {{ padding: {max(1, small - 1)}px 0; }}
QListView::item:selected {{ background: {t.accent}; color: {t.on_accent}; }}
QTreeWidget::item:selected {{ background: {t.accent_wash}; color: {t.text}; }}
QHeaderView::section {{ background: {t.panel}; color: {t.soft}; border: none;
  border-bottom: 1px solid {t.line}; padding: {small}px; }}

QFrame#rail, QFrame#side {{ background: {t.panel}; }}
QFrame#rail {{ border-right: 1px solid {t.line}; }}
QFrame#side {{ border-left: 1px solid {t.line}; }}
QFrame#steps {{ background: {t.panel}; border-top: 1px solid {t.line}; }}
QFrame#bar {{ background: {t.panel}; border-bottom: 1px solid {t.line}; }}
QFrame#strip {{ background: {t.ground}; border-bottom: 1px solid {t.line}; }}
QLabel#heading {{ color: {t.soft}; font-weight: bold; }}
QLabel[soft="true"] {{ color: {t.soft}; }}
QLabel[caution="true"] {{ color: {t.caution}; font-weight: bold; }}
QStatusBar {{ background: {t.panel}; color: {t.soft}; border-top: 1px solid {t.line}; }}
QStatusBar QLabel {{ color: {t.soft}; }}
QStatusBar::item {{ border: none; }}
QLabel#said {{ background: {t.accent_wash}; color: {t.text}; border-top: 2px solid {t.accent}; }}
QCheckBox::indicator, QTreeView::indicator, QListView::indicator {{
  width: {round(13 * scale)}px; height: {round(13 * scale)}px;
}}
QCheckBox::indicator:unchecked, QTreeView::indicator:unchecked, QListView::indicator:unchecked {{
  width: {round(13 * scale) - 2}px; height: {round(13 * scale) - 2}px;
  border: 1px solid {t.soft}; border-radius: 2px; background: {t.raised};
}}
QProgressBar {{ background: {t.raised}; border: 1px solid {t.line}; border-radius: 3px;
  text-align: center; color: {t.text}; min-height: {round(14 * scale)}px; }}
QProgressBar::chunk {{ background: {t.accent_wash}; border-right: 2px solid {t.accent}; }}
QScrollBar:vertical {{ background: transparent; width: {round(10 * scale)}px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: {round(10 * scale)}px; margin: 0; }}
QScrollBar::handle {{ background: {t.line}; border-radius: 4px; min-width: 24px;
  min-height: 24px; }}
QScrollBar::handle:hover {{ background: {t.soft}; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QSlider::groove:horizontal {{ height: 4px; background: {t.line}; border-radius: 2px; }}
QSlider::sub-page:horizontal {{ background: {t.accent}; border-radius: 2px; }}
QSlider::handle:horizontal {{ background: {t.raised}; border: 2px solid {t.accent};
  width: {round(11 * scale)}px; margin: -{round(6 * scale)}px 0;
  border-radius: {round(7 * scale)}px;
}}
QSlider:focus {{ border: 2px solid {t.accent}; border-radius: 4px; }}
QScrollArea, QScrollArea > QWidget > QWidget {{ background: transparent; }}
QSplitter::handle {{ background: {t.line}; }}
"""
