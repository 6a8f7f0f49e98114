"""The window: model in the middle, depth rail on its left, step line beneath, caption beside."""

from __future__ import annotations

import logging
import time
from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path
from typing import Any

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QAction, QActionGroup, QCloseEvent, QKeySequence
from PySide6.QtWidgets import (
    QApplication,
    QButtonGroup,
    QDockWidget,
    QFrame,
    QHBoxLayout,
    QLabel,
    QMainWindow,
    QMenu,
    QProgressBar,
    QSplitter,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from viewer.building import GrowingModel, ModelSource
from viewer.menus.file import FileMenu
from viewer.menus.fold import FoldMenu, FoldPlayer
from viewer.menus.help import HelpMenu
from viewer.menus.mistakes import MistakesMenu
from viewer.menus.part import PartMenu
from viewer.menus.peel import PeelMenu
from viewer.menus.picture import Picture
from viewer.menus.pointer import PROBE_EVERY_MS, Pointer
from viewer.menus.questions import QuestionsMenu
from viewer.menus.rehearse import RehearseMenu
from viewer.menus.section import WARM_AFTER_MS, SectionMenu
from viewer.menus.study import StudyMenu
from viewer.menus.take_home import TakeHomeMenu
from viewer.menus.talk import TalkMenu
from viewer.menus.tools import ToolsMenu
from viewer.menus.view import ViewMenu
from viewer.panels.caption_panel import CaptionPanel
from viewer.panels.cover_panel import CoverPanel
from viewer.panels.depth_rail import DepthRail
from viewer.panels.glyphs import program_icon
from viewer.panels.hidden_strip import HiddenStrip
from viewer.panels.parts_tree import PartsTree
from viewer.panels.search_box import SearchBox
from viewer.panels.sheets import (
    PinSheet,
    version,
)
from viewer.panels.status_line import ElidedLabel, StatusLine
from viewer.panels.step_line import StepLineBar
from viewer.panels.style import THEMES, apply_theme, font
from viewer.panels.tool_row import ToolRow
from viewer.settings import (
    Settings,
    last_session_path,
    load_settings,
    log_path,
    save_settings,
)
from viewer.state import commands
from viewer.state.actions import by_menu
from viewer.state.captions import (
    caption_of,
    neighbours_of,
    part_title,
    part_titles,
    search_index,
)
from viewer.state.commands import Command
from viewer.state.measuring import TEACHING_NOTE
from viewer.state.places import level_heights
from viewer.state.plan import Plan, plan_with_folds
from viewer.state.rail import folded_strata
from viewer.state.session import Session
from viewer.state.tongue import told
from viewer.state.view_state import (
    Camera,
    ViewState,
)
from viewer.state.visibility import (
    what_is_hidden,
)
from viewer.state.working_file import (
    WorkingFileError,
    open_working_file,
    put_aside,
    save_working_file,
)
from viewer.wording import choose, in_plain_english, language_of, reword, shown

LOG = logging.getLogger("peelback")

SAY_MS = 6000
AUTOSAVE_MS = 60_000
LEAST_PICTURE_PX = 130
BONY = ("bone", "disc", "cartilage")


class MainWindow(
    Picture,
    Pointer,
    PeelMenu,
    PartMenu,
    QuestionsMenu,
    FoldMenu,
    ViewMenu,
    ToolsMenu,
    SectionMenu,
    RehearseMenu,
    MistakesMenu,
    FileMenu,
    TakeHomeMenu,
    TalkMenu,
    StudyMenu,
    HelpMenu,
    QMainWindow,
):
    """Joins state, panels and scene; the state decides, all others follow.

    Parameters
    ----------
    body : Body
    detail : {"preview", "full"}
    settings : Settings, optional
        Read from the settings file when not given.
    make_scene : callable, optional
        Makes the widget with the 3D picture; the real one when not given.
    keep : bool
        Write settings and the last session (off in tests and previews).
    """

    def __init__(
        self,
        body: Any,
        detail: str = "full",
        settings: Settings | None = None,
        make_scene: Callable[[QWidget], QWidget] | None = None,
        keep: bool = True,
    ) -> None:
        super().__init__()
        self.setWindowTitle("Peelback")
        self.setWindowIcon(program_icon())
        self._faults: list[str] = []
        if settings is None:
            settings, message = load_settings(language=lambda: language_of("system"))
            if message:
                self._faults.append(message)
        self.settings = settings
        # First, since panels write their sentences when they are made.
        choose(self.settings.language, self.settings.spelling)
        self._keep = keep
        self._make_scene = make_scene
        self.session = Session(ViewState(look=settings.look, label_density=settings.label_density))
        self.model: Any = GrowingModel(body, detail)
        self.plan = Plan([])
        self.scene_widget: Any = None
        self.source: ModelSource | None = None
        self._opened: ViewState | None = None
        self._file: Path | None = None
        self._titles: dict[str, str] = {}
        self._framed: Any = None
        self._neighbours: frozenset[str] = frozenset()
        self._heights: dict[str, float] = {}
        self._probe: Any = None
        self._begin_questions()
        self._hovered = ""
        self._last_place: tuple | None = None
        self._measuring = False
        self._flying = False
        self._cramped = False
        self._closed = False
        self._actions: dict[str, QAction] = {}
        self._pin_sheet: PinSheet | None = None
        self._half_depth = 110.0
        self._make_section()
        self._make_rehearsal()
        self._make_mistakes()
        self._make_study()
        self.folds = FoldPlayer(self)
        self.folds.moved.connect(self._on_folds_moved)
        self.folds.moved.connect(self._follow_flaps)
        self.folds.moved.connect(self._cut_after_fold)
        self.folds.waiting.connect(lambda words: self.say(words, 0))
        self._make_actions()
        self._lay_out()
        self._probe_timer = QTimer(self)
        self._probe_timer.setSingleShot(True)
        self._probe_timer.timeout.connect(self._probe_here)
        self._reword_timer = QTimer(self)
        self._reword_timer.setSingleShot(True)
        self._reword_timer.setInterval(30)
        self._reword_timer.timeout.connect(lambda: reword(self))
        self._kept = self.session.state
        self._autosave = QTimer(self)
        self._autosave.setInterval(AUTOSAVE_MS)
        self._autosave.timeout.connect(self._keep_work)
        if keep:
            self._autosave.start()
        self._dress()
        self.session.subscribe(self._on_state)
        self._follow(None, self.session.state)
        if len(settings.window) == 4:
            self.setGeometry(*settings.window)
        else:
            screen = self.screen().availableSize()
            self.resize(min(1500, screen.width()), min(960, screen.height()))

    # --- laying out ----------------------------------------------------------------------------

    def _make_actions(self) -> None:
        """Make menus and keys from the table of actions."""
        groups: dict[str, QActionGroup] = {}
        for menu_name, rows in by_menu().items():
            menu = self.menuBar().addMenu(menu_name)
            menu.setToolTipsVisible(True)
            for row in rows:
                if row.separator:
                    menu.addSeparator()
                action = QAction(row.title, self)
                action.setShortcuts([QKeySequence(k) for k in row.keys])
                action.setStatusTip(row.tip or row.title.rstrip("…"))
                action.setCheckable(row.checkable)
                if row.radio:
                    group = groups.setdefault(row.radio, QActionGroup(self))
                    group.addAction(action)
                callback = getattr(self, row.callback)
                action.triggered.connect(_call(callback, row.argument, row.checkable, row.radio))
                menu.addAction(action)
                self._actions[row.id] = action

    def _lay_out(self) -> None:
        self.tools = ToolRow(self._actions)
        self.tools.density_wanted.connect(lambda d: self.do(commands.set_label_density(d)))
        self.strip = HiddenStrip()
        self.strip.restore_wanted.connect(self._restore)
        self.strip.all_back_wanted.connect(self.bring_all_back)
        self.rail = DepthRail()
        self.rail.depth_wanted.connect(self._peel)
        self.rail.drag_ended.connect(self.session.close_gesture)
        self.rail.stratum_clicked.connect(lambda n, side: self.do(commands.toggle_stratum(n, side)))
        self.rail.installEventFilter(self)
        self.steps = StepLineBar()
        self.steps.step_wanted.connect(self.do_step)
        self.steps.lay_back_wanted.connect(self.lay_step_back)
        self.steps.fold_wanted.connect(self.fold_step_to)
        self.steps.fold_ended.connect(self.session.close_gesture)
        self.steps.whole_wanted.connect(self._read_step)
        self.caption = CaptionPanel()
        self.caption.action_wanted.connect(lambda name: self._actions[name].trigger())
        self.search = SearchBox()
        self.search.found.connect(self.go_to_named)
        self.search.nothing_found.connect(
            lambda text: self.say(told("No part is called “{text}”.", text=text))
        )
        self.tree = PartsTree()
        self.tree.selection_wanted.connect(lambda ids: self.do(commands.select(ids)))
        self.tree.shown_wanted.connect(self._show_or_hide)
        self.tree.fly_wanted.connect(self.fly_to)
        self.tree.menu_wanted.connect(self._on_tree_menu)

        self._rail_head = QLabel("Depth")
        self._rail_head.setObjectName("heading")
        self._rail_place = QLabel("typical thickness, not to measure")
        self._rail_place.setProperty("soft", True)
        self._rail_place.setWordWrap(True)
        self._side_buttons = QButtonGroup(self)
        sides = QHBoxLayout()
        sides.setSpacing(0)
        for k, (side, words) in enumerate((("left", "Left"), ("both", "Both"), ("right", "Right"))):
            button = QToolButton()
            button.setText(words)
            button.setCheckable(True)
            button.setToolTip(f"Rail and steps work on {words.lower()}")
            button.setAccessibleName(f"Work on {words.lower()}")
            button.setProperty("place", ("first", "middle", "last")[k])
            button.setProperty("side", side)
            button.setSizePolicy(
                button.sizePolicy().Policy.Expanding, button.sizePolicy().Policy.Fixed
            )
            button.clicked.connect(lambda _=False, s=side: self.work_on(s))
            self._side_buttons.addButton(button)
            sides.addWidget(button)
        rail_frame = QFrame()
        rail_frame.setObjectName("rail")
        rail_box = QVBoxLayout(rail_frame)
        rail_box.setContentsMargins(8, 8, 6, 6)
        rail_box.setSpacing(5)
        rail_box.addWidget(self._rail_head)
        rail_box.addLayout(sides)
        rail_box.addWidget(self._rail_place)
        rail_box.addWidget(self.rail, 1)

        self.stage = QWidget()
        self.stage.setObjectName("ground")
        self.stage.setAccessibleName("The model")
        self._stage_box = QVBoxLayout(self.stage)
        self._stage_box.setContentsMargins(0, 0, 0, 0)
        self._stage_box.setSpacing(0)
        self._waiting = QLabel("Preparing the picture …")
        self._waiting.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._waiting.setProperty("soft", True)
        self._waiting.setWordWrap(True)
        self._stage_box.addWidget(self._waiting, 1)

        self.progress = QProgressBar()
        self.progress.setRange(0, 1000)
        self.progress.setAccessibleName("Building the model")
        self.progress.setFormat("Looking for a finished model …")

        side_frame = QFrame()
        side_frame.setObjectName("side")
        side_box = QVBoxLayout(side_frame)
        side_box.setContentsMargins(8, 8, 8, 8)
        side_box.setSpacing(6)
        side_box.addWidget(self.search)
        self._side_split = QSplitter(Qt.Orientation.Vertical)
        self._side_split.addWidget(self.caption)
        self.covers = CoverPanel()
        self.covers.hide()
        self.covers.parts_wanted.connect(lambda ids: self.do(commands.select(ids)))
        self.covers.into_view_wanted.connect(self.bring_asked_into_view)
        self.covers.share_wanted.connect(self.set_share_in_view)
        self.covers.set_share(self.settings.share_in_view)
        self.covers.close_wanted.connect(lambda: self.ask_what_covers(False))
        self._side_split.addWidget(self.covers)
        self._side_split.addWidget(self.tree)
        self._make_talk()
        self._side_split.addWidget(self.talk_panel)
        self._side_split.setChildrenCollapsible(False)
        self._side_split.setStretchFactor(0, 3)
        self._side_split.setStretchFactor(1, 3)
        self._side_split.setStretchFactor(2, 2)
        self._side_split.setStretchFactor(3, 5)
        side_box.addWidget(self._side_split, 1)
        self.side_panel = side_frame

        middle = QWidget()
        middle_box = QVBoxLayout(middle)
        middle_box.setContentsMargins(0, 0, 0, 0)
        middle_box.setSpacing(0)
        middle_box.addWidget(self.strip)
        middle_box.addWidget(self.stage, 1)
        middle_box.addWidget(self.progress)
        middle_box.addWidget(self.steps)

        central = QWidget()
        outer = QVBoxLayout(central)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.setSpacing(0)
        outer.addWidget(self.tools)
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(rail_frame)
        row.addWidget(middle, 1)
        row.addWidget(side_frame)
        outer.addLayout(row, 1)
        self.setCentralWidget(central)
        # Docks come and go at once: a glide that is broken off leaves the middle too narrow.
        self.setAnimated(False)
        self.setStatusBar(StatusLine(self))
        self._markers = ElidedLabel()
        self._note = QLabel(TEACHING_NOTE)
        self._note.setProperty("caution", True)
        bar = self.statusBar()
        # A message stands in for the markers, which the picture shows as well.
        bar.addWidget(self._markers, 1)
        bar.addPermanentWidget(self._make_faults_button())
        bar.addPermanentWidget(self._note)
        self._note.setContentsMargins(8, 0, 8, 0)
        bar.setSizeGripEnabled(False)
        # Tab goes as the eye does: rail, model, steps, search, caption, tree.
        order = (
            self.rail,
            self.steps.do_button,
            self.search,
            self.caption.text,
            self.covers.list,
            self.tree,
        )
        for first, second in zip(order, order[1:], strict=False):
            QWidget.setTabOrder(first, second)

    @property
    def theme(self):
        """The present colours."""
        return THEMES[self.settings.theme]

    @property
    def scale(self) -> float:
        """The present letter scale, 1-2."""
        return self.settings.font_scale

    def _dress(self) -> None:
        """Give all parts of the window the theme and the letter scale."""
        app = QApplication.instance()
        apply_theme(app, self.theme, self.scale)
        # First, since some panels write their sentences anew when they are dressed.
        choose(self.settings.language, self.settings.spelling)
        for panel in (self.tools, self.strip, self.rail, self.steps):
            panel.set_dress(self.theme, self.scale)
        self.caption.set_dress(self.theme, self.scale, self.settings.latin_first)
        if self.section_dock is not None:
            self.section_dock.set_dress(self.theme, self.scale)
        if self.rehearse_dock is not None:
            self.rehearse_dock.set_dress(self.theme, self.scale)
        if self.mistakes_dock is not None:
            self.mistakes_dock.set_dress(self.theme, self.scale)
        self.covers.set_dress(self.theme, self.scale)
        self.talk_panel.set_dress(self.theme, self.scale)
        self.strip.show_hidden(self.strip.things)
        self.menuBar().setFont(font(self.scale))
        for menu in self.menuBar().findChildren(QMenu):
            menu.setFont(font(self.scale))
        for widget in (self.search, self.tree, self.progress, self._waiting, self.statusBar()):
            widget.setFont(font(self.scale))
        for label in (self._markers, self._note, self._rail_place):
            label.setFont(font(self.scale, 0.88))
        for button in (*self._side_buttons.buttons(), self._faults_button):
            button.setFont(font(self.scale, 0.92))
        self._rail_head.setFont(font(self.scale, 1.0, bold=True))
        self.tree.set_column_width(round(30 * self.scale))
        self.tree.header().setFont(font(self.scale, 0.9))
        reword(self)
        self.search.invite()
        self._actions["latin_first"].setChecked(self.settings.latin_first)
        self._share_room()
        if not (self._docked and self._dock_needs_room):
            self.side_panel.setVisible(self.settings.side_panel)
        self._actions["dark"].setChecked(self.settings.theme == "dark")
        self._actions["tree"].setChecked(self.settings.side_panel)
        self._actions["steps_fold"].setChecked(self.settings.steps_fold)
        self.folds.calm = self.settings.calm
        if self.scene_widget is not None:
            scene = self.scene_widget.scene
            scene.set_theme(self.settings.theme)
            scene.set_font_scale(self.scale)
            scene.animate = not self.settings.calm
            self.scene_widget.refresh()
        if self.takeover is not None:
            self.takeover.settle()

    @property
    def lent(self) -> bool:
        """True while a talk, a test or the lab has the window; only one of them can."""
        return self.presenting is not None or self.takeover is not None

    def _share_room(self) -> None:
        """Leave the model most of the window, whatever the size of the letters."""
        width, height = max(self.width(), 640), max(self.height(), 480)
        self.side_panel.setFixedWidth(round(min(290 * self.scale, 0.28 * width)))
        self.rail.set_room(round(0.24 * width))
        # Large letters on a small screen: the tools keep to one line, the step gets theirs.
        cramped = width < 900 * self.scale
        self.tools.set_cramped(cramped)
        self.caption.set_cramped(cramped)
        self.covers.set_cramped(cramped)
        self._cramped = cramped
        self.steps.set_room(round((0.33 if cramped else 0.26) * height), self._most_for_step)

    def _most_for_step(self) -> int:
        """The height that leaves the picture a strip, whatever else stands above and below."""
        others = (self.menuBar(), self.tools, self.strip, self.statusBar())
        return self.height() - sum(widget.height() for widget in others) - LEAST_PICTURE_PX

    @property
    def _docked(self) -> bool:
        return any(dock.isVisible() for dock in self.findChildren(QDockWidget))

    @property
    def _dock_needs_room(self) -> bool:
        """True where the window is too narrow for a dock beside caption and tree."""
        return self.width() < 1500 * self.scale

    def _read_step(self, on: bool) -> None:
        """Give the step's words the side panel's width as well where letters are large."""
        if self._cramped and not self._docked and not self.lent:
            self.side_panel.setVisible(self.settings.side_panel and not on)

    def _open_dock(self, dock: QDockWidget) -> None:
        """Open a dock on about a third of the window; caption and tree make way in a narrow one."""
        width = self.width()
        # First, or the window would grow beyond a small screen to hold both.
        if self._dock_needs_room:
            self.side_panel.hide()
            self.centralWidget().layout().activate()
        dock.show()
        dock.raise_()
        self.resizeDocks([dock], [round(0.36 * width)], Qt.Orientation.Horizontal)

    def _take_room_back(self) -> None:
        """Bring caption and tree back when no dock is open."""
        if not self.lent and not self._docked:
            self.side_panel.setVisible(self.settings.side_panel)
            # The middle was laid out twice, while the dock still took its room and after: say
            # to its inner rows that the second time counts.
            QTimer.singleShot(0, self, self._lay_middle)

    def _lay_middle(self) -> None:
        middle = self.stage.parentWidget()
        for layout in (self.centralWidget().layout(), middle.layout()):
            layout.invalidate()
            layout.activate()

    def resizeEvent(self, event: Any) -> None:
        super().resizeEvent(event)
        self._share_room()

    # --- starting ------------------------------------------------------------------------------

    def begin(self, *, reopen: bool = True) -> None:
        """Make the picture and fetch the model; call once, after ``show``."""
        if reopen and self.settings.reopen:
            self._reopen()
        QTimer.singleShot(0, self, self._start_scene)

    def tell_later(self, message: str) -> None:
        """Say something as soon as the model starts."""
        if message:
            self._faults.append(message)

    def _reopen(self) -> None:
        path = last_session_path()
        if not path.exists():
            return
        try:
            self._opened = open_working_file(path).state
        except WorkingFileError as error:
            LOG.warning("last session not reopened: %s", error)
            words = told("The last session could not be reopened: {why}", why=error)
            # Or this session would be written over it.
            if aside := put_aside(path):
                words += " " + told("It was kept as {path}.", path=aside)
            self._faults.append(words)

    def _start_scene(self) -> None:
        try:
            if self._make_scene is not None:
                widget = self._make_scene(self.stage)
            else:
                from viewer.scene.widget import SceneWidget

                widget = SceneWidget(self.stage)
        except Exception as error:
            LOG.exception("no picture")
            self._waiting.setText(
                told(
                    "The 3D picture cannot be shown: no usable OpenGL was found.\n"
                    "Install a graphics driver (on Linux without one: Mesa), or write pictures "
                    "with “peelback plate”.\n\n{why}\n\nLog: {path}",
                    why=error,
                    path=log_path(),
                )
            )
            self._start_model()
            return
        self.take_scene(widget)
        self._start_model()

    def take_scene(self, widget: Any) -> None:
        """Put the widget with the 3D picture in the middle."""
        self._stage_box.removeWidget(self._waiting)
        self._waiting.hide()
        self.scene_widget = widget
        widget.setAccessibleName(told("Picture of the back"))
        self._stage_box.addWidget(widget, 1)
        widget.show()
        widget.hovered.connect(self._on_hover)
        widget.picked.connect(self._on_pick)
        widget.view_changed.connect(self._on_view_changed)
        if hasattr(widget, "section_dragged"):
            widget.section_dragged.connect(self._drag_section)
            widget.section_drag_ended.connect(self._end_section_drag)
        if hasattr(widget, "context_requested"):
            widget.context_requested.connect(self._on_context)
        state = self.session.state
        scene = widget.scene
        scene.set_theme(self.settings.theme)
        scene.set_font_scale(self.scale)
        scene.set_look(state.look)
        scene.set_orbit(state.orbit)
        scene.animate = False
        if self.model.parts:
            scene.add_parts(self.model.parts.values())
            self._draw()
            scene.set_view(state.view)
            self._framed = scene.pose

    def _start_model(self) -> None:
        self.source = ModelSource(self.model.body, self.model.detail, self)
        self.source.catalogue_ready.connect(self._on_catalogue)
        self.source.progressed.connect(self._on_progress)
        self.source.parts_ready.connect(self._on_parts)
        self.source.finished.connect(self.take_model)
        self.source.failed.connect(self._on_failed)
        self.source.start()
        self._show_faults()

    def _on_catalogue(self, catalogue: Any) -> None:
        if isinstance(self.model, GrowingModel):
            self.model.catalogue = catalogue

    def _on_progress(self, share: float, what: str) -> None:
        self.progress.setValue(round(share * 1000))
        self.progress.setFormat(told("Laid: {what} – %p %", what=told(what)))
        if self.scene_widget is not None:
            self.scene_widget.milestone = f"picture of {what}"

    def _on_parts(self, parts: Iterable[Any]) -> None:
        if not isinstance(self.model, GrowingModel):
            return
        parts = list(parts)
        first = not self.model.parts
        for part in parts:
            self.model.parts[part.id] = part
            self._titles[part.id] = part_title(
                part,
                self.model.catalogue,
                latin=self.settings.latin_first,
                spelling=self.settings.spelling,
            )
        if self.scene_widget is not None:
            scene = self.scene_widget.scene
            scene.add_parts(parts)
            self._draw()
            # The bones come group by group: they are framed anew unless someone turned them.
            if first or (scene.pose is self._framed and all(p.kind in BONY for p in parts)):
                scene.set_view(self.session.state.view)
                self._framed = scene.pose
            self.scene_widget.refresh()

    def _on_failed(self, words: str) -> None:
        self.progress.hide()
        text = told(
            "The model could not be built: {why} The log is in {path}.", why=words, path=log_path()
        )
        self.say(text, 0)
        if self.scene_widget is None:
            self._waiting.setText(text)

    def take_model(self, model: Any) -> None:
        """Show a finished model."""
        started = time.perf_counter()
        had = isinstance(self.model, GrowingModel) and set(self.model.parts) == set(model.parts)
        empty = not self.model.parts
        self.model = model
        self._titles = self._titles_now()
        self._neighbours = neighbours_of(model)
        self._heights = level_heights(model.landmarks)
        self._prepare_questions(model)
        self.plan = plan_with_folds(model.catalogue)
        self.steps.set_steps(self.plan.steps, self._names_of_things())
        self.tree.set_model_parts(
            model, latin=self.settings.latin_first, spelling=self.settings.spelling
        )
        self.search.set_index(
            search_index(model, latin=self.settings.latin_first, spelling=self.settings.spelling)
        )
        self.progress.hide()
        self._measure_trunk()
        if self.scene_widget is not None:
            scene = self.scene_widget.scene
            drawn = None if self.source is None else self.source.drawn
            if drawn and model.parts.get(drawn[0].part.id) is drawn[0].part:
                scene.set_model(model, drawn)
                self.source.drawn = None
            elif not had:
                scene.set_model(model)
            self.folds.set_model(model, scene)
        if self._opened is not None:
            if self.scene_widget is not None:
                self._draw()
                if empty:
                    scene.set_view(self.session.state.view)
            state, self._opened = self._opened, None
            self.session.replace_state(state)
        else:
            self._follow(None, self.session.state)
        if self.scene_widget is not None:
            self.scene_widget.scene.animate = not self.settings.calm
            if empty:
                # All came at once, from the cache: the first picture may be the full one.
                self.scene_widget.rest()
            else:
                self.scene_widget.refresh()
        QTimer.singleShot(200, self, self._probe_usual_place)
        QTimer.singleShot(WARM_AFTER_MS, self, self._warm_section)
        LOG.info(
            "model of %d parts shown in %.2f s", len(model.parts), time.perf_counter() - started
        )

    def _titles_now(self) -> dict[str, str]:
        """Titles of parts in the chosen tongue and spelling."""
        return part_titles(
            self.model, latin=self.settings.latin_first, spelling=self.settings.spelling
        )

    def _name_parts(self) -> None:
        """Name all parts anew where their names are shown."""
        if isinstance(self.model, GrowingModel):
            return
        latin, spelling = self.settings.latin_first, self.settings.spelling
        self._titles = self._titles_now()
        self.steps.set_steps(self.plan.steps, self._names_of_things())
        self.tree.set_model_parts(self.model, latin=latin, spelling=spelling)
        self.search.set_index(search_index(self.model, latin=latin, spelling=spelling))
        if self.scene_widget is not None:
            self._set_labels()
        self._follow(None, self.state)

    def _names_of_things(self) -> dict[str, str]:
        """English names of parts without side, of rows and of groups, for the step line."""
        names: dict[str, str] = {}
        for key in self.model.catalogue:
            names[key] = told(self.model.catalogue[key].english)
        for part in self.model.parts.values():
            names.setdefault(part.name, self._titles[part.id].rsplit(",", 1)[0].lower())
        return names

    def _measure_trunk(self) -> None:
        """How far the trunk reaches back, mm."""
        ribs = [
            p.vertices[:, 1].max()
            for p in self.model.parts.values()
            if p.kind == "bone" and p.region in ("thorax", "loin", "pelvis")
        ]
        if ribs:
            self._half_depth = max(float(max(ribs)), 50.0)

    # --- state ---------------------------------------------------------------------------------

    @property
    def state(self) -> ViewState:
        """The present state."""
        return self.session.state

    def do(self, command: Command) -> None:
        """Carry out a command of the state."""
        self._note_camera()
        self.session.do(command)

    def _note_camera(self) -> None:
        camera = self._present_camera()
        if camera is not None and self.model.parts:
            self.session.note_camera(camera)

    def _present_camera(self) -> Camera | None:
        if self.scene_widget is None or self.scene_widget.flying:
            return None
        pose = self.scene_widget.scene.camera()
        return Camera(
            tuple(float(c) for c in pose["position"]),
            tuple(float(c) for c in pose["focal_point"]),
            tuple(float(c) for c in pose["view_up"]),
            float(pose["parallel_scale"]),
            bool(pose.get("parallel", True)),
        )

    def _on_state(self, before: ViewState, after: ViewState) -> None:
        self._follow(before, after)

    def _follow(self, before: ViewState | None, after: ViewState) -> None:
        """Bring everything that is seen up to a state."""
        if before is not None and before == replace(after, section=before.section):
            # A plane that is dragged must keep up with the hand: nothing else has changed.
            self._name_undo()
            self._lay_limbs(after)
            self._follow_section(before, after)
            return
        if before is not None and before == replace(after, cut_line=before.cut_line):
            self._name_undo()
            self._lay_limbs(after)
            self._follow_rehearsal(before, after)
            return
        actions = self._actions
        for name, on in (
            ("alone", bool(after.alone) and after.alone == frozenset(after.selection)),
            ("see_through", bool(after.selection) and set(after.selection) <= after.see_through),
            ("peek", after.peek),
            ("orbit_free", after.orbit == "free"),
            ("compare", after.compare),
            ("neighbours", after.neighbours),
            ("labels", after.labels),
            ("blank_labels", after.blank_labels),
            ("covers", bool(after.covers_of)),
            ("measure", self._measuring),
            ("measure_surface", after.measure_surface),
            ("surface", after.surface_marks),
            (f"side_{after.side_shown}", True),
            (f"look_{after.look}", True),
            (f"work_{after.working_side}", True),
            (f"stand_{after.table or 'upright'}", True),
        ):
            actions[name].setChecked(on)
        for name in (
            "hide",
            "show_part",
            "into_view",
            "covers",
            "alone",
            "see_through",
            "fly",
            "fold",
            "other_side",
            "select_group",
            "pin",
            "my_note",
        ):
            actions[name].setEnabled(bool(after.selection))
        if after.covers_of:
            actions["covers"].setEnabled(True)
        # A part that is alone keeps its way back even when nothing is picked.
        if after.alone:
            actions["alone"].setEnabled(True)
        self._name_undo()
        for button in self._side_buttons.buttons():
            button.setChecked(button.property("side") == after.working_side)
        self.rail.set_state(after, folded_strata(after, self.model))
        self.tools.show_density(after.label_density)
        self.strip.show_hidden(what_is_hidden(after, self._titles, self.model))
        if self.plan.steps and self.model.parts:
            self.steps.show_lines(
                self.plan.lines(self.model, after, "left"),
                self.plan.lines(self.model, after, "right"),
                after.working_side,
            )
            self.steps.show_fold(self._share_of_step)
        if self.takeover is None:
            self.tree.show_selection(after.selection)
        self._follow_questions(before, after)
        self._show_caption()
        self._follow_scene(before, after)
        self._follow_section(before, after)
        self._follow_rehearsal(before, after)
        if not in_plain_english():
            self._reword_timer.start()
        if self._pin_sheet is not None and (before is None or before.pins != after.pins):
            self._pin_sheet.show_pins(after.pins, self._titles)

    def _name_undo(self) -> None:
        for name, words, what in (
            ("undo", "Undo", self.session.undo_name),
            ("redo", "Redo", self.session.redo_name),
        ):
            words = shown(words)
            told_what = shown(what)
            if what and (in_plain_english() or told_what != what):
                words = f"{words} {told_what}".strip()
            self._actions[name].setText(words)
            self._actions[name].setEnabled(bool(what))

    def _show_caption(self) -> None:
        state = self.state
        part_id = self._hovered or state.selected or ""
        part = self.model.parts.get(part_id)
        caption = None
        if part is not None:
            covered = self.covered_words(part_id, picked=part_id == state.selected)
            caption = caption_of(part, self.model, state, covered)
        if caption is not None:
            caption = caption.spelled(self.settings.spelling).with_note(self.own_words_on(part))
        self.caption.show_caption(caption, picked=part_id == state.selected)
        chosen = frozenset(state.selection)
        self.caption.show_toggles(
            enabled=bool(chosen),
            alone=bool(state.alone) and state.alone == chosen,
            see_through=bool(chosen) and chosen <= state.see_through,
            peek=state.peek,
            covers=bool(state.covers_of),
        )

    def say(self, words: str, ms: int = SAY_MS) -> None:
        """Say something in the status line; never to a hall."""
        self.statusBar().showMessage(shown(words), ms)

    # --- end -----------------------------------------------------------------------------------

    def eventFilter(self, watched: Any, event: Any) -> bool:
        if watched is self.rail and event.type() == event.Type.Leave:
            self._probe_timer.start(PROBE_EVERY_MS)
        return super().eventFilter(watched, event)

    def sizeHint(self) -> QSize:
        return QSize(1500, 960)

    def closeEvent(self, event: QCloseEvent) -> None:
        self.shut_down()
        super().closeEvent(event)

    def close(self) -> bool:
        # A window that was never shown gets no close event, and the picture must go all the same.
        closed = super().close()
        self.shut_down()
        return closed

    def shut_down(self) -> None:
        """Keep what must be kept and let go of the picture and the builder; may be repeated."""
        if self._closed:
            return
        self._closed = True
        self.stop_verb()
        if self.presenting is not None:
            self.presenting.finish()
        self._end_study()
        self._probe_timer.stop()
        self._autosave.stop()
        self._talk_timer.stop()
        self.keep_talk()
        self.folds.let_go()
        if self._keep:
            self._keep_session()
        self._end_questions()
        if self.source is not None:
            self.source.stop()
        if self.scene_widget is not None:
            self.scene_widget.finalize()

    def _keep_session(self) -> None:
        geometry = self.normalGeometry() if self.isMaximized() else self.geometry()
        self.settings = replace(
            self.settings,
            window=(geometry.x(), geometry.y(), geometry.width(), geometry.height()),
        )
        save_settings(self.settings)
        self._keep_work()

    def _keep_work(self) -> None:
        """Write the state to where the next session begins, so that a crash loses a minute."""
        if isinstance(self.model, GrowingModel) or self.in_hall:
            return
        self._note_camera()
        if self.state == self._kept:
            return
        try:
            save_working_file(
                last_session_path(),
                self.state,
                self.model.body.as_dict(),
                self.model.detail,
                version(),
            )
            self._kept = self.state
        except OSError as error:
            LOG.warning("the session was not kept: %s", error)


def _call(
    callback: Callable[..., Any], argument: object, checkable: bool, radio: str
) -> Callable[[bool], None]:
    def triggered(checked: bool = False) -> None:
        if argument is not None:
            callback(argument)
        elif checkable and not radio:
            callback(checked)
        else:
            callback()

    return triggered
