"""The window: model in the middle, depth rail on its left, step line beneath, caption beside."""

from __future__ import annotations

import logging
import time
from collections.abc import Callable, Iterable
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

import numpy as np
from PySide6.QtCore import QPoint, QSize, Qt, QTimer
from PySide6.QtGui import QAction, QActionGroup, QCloseEvent, QImage, QKeySequence
from PySide6.QtWidgets import (
    QApplication,
    QButtonGroup,
    QFileDialog,
    QFrame,
    QHBoxLayout,
    QInputDialog,
    QLabel,
    QMainWindow,
    QMenu,
    QMessageBox,
    QProgressBar,
    QSplitter,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from viewer.building import GrowingModel, ModelSource
from viewer.panels.caption_panel import CaptionPanel
from viewer.panels.depth_rail import DepthRail
from viewer.panels.glyphs import program_icon
from viewer.panels.hidden_strip import HiddenStrip
from viewer.panels.parts_tree import PartsTree
from viewer.panels.search_box import SearchBox
from viewer.panels.sheets import (
    PictureSheet,
    PinSheet,
    SettingsSheet,
    Sheet,
    about_html,
    cautions_html,
    help_html,
    version,
)
from viewer.panels.step_line import StepLineBar
from viewer.panels.style import THEMES, apply_theme, font
from viewer.panels.tool_row import ToolRow
from viewer.settings import (
    FONT_SCALES,
    Settings,
    last_session_path,
    load_settings,
    log_path,
    save_settings,
)
from viewer.state import commands, rail
from viewer.state.actions import by_menu
from viewer.state.captions import (
    caption_of,
    neighbours_of,
    part_title,
    part_titles,
    search_index,
)
from viewer.state.commands import Command
from viewer.state.measuring import TEACHING_NOTE, measure_words
from viewer.state.places import level_heights, place_in_words, surface_marks
from viewer.state.plan import Plan, names_in_words, plan_from_records
from viewer.state.search import Named
from viewer.state.session import Session
from viewer.state.view_state import (
    LOOKS,
    STRATUM_COUNT,
    VIEWS,
    Camera,
    Pin,
    SideChoice,
    ViewState,
)
from viewer.state.visibility import (
    HiddenThing,
    opacities,
    taken_off,
    visible_parts,
    what_is_hidden,
)
from viewer.state.working_file import (
    SUFFIX,
    WorkingFileError,
    open_working_file,
    save_working_file,
)

LOG = logging.getLogger("peelback")

PROBE_EVERY_MS = 70
SAY_MS = 6000
AUTOSAVE_MS = 60_000
HOVER_TINT_MS = 60.0


class MainWindow(QMainWindow):
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
        self._message = ""
        if settings is None:
            settings, self._message = load_settings()
        self.settings = settings
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
        self._neighbours: frozenset[str] = frozenset()
        self._heights: dict[str, float] = {}
        self._probe: Any = None
        self._hovered = ""
        self._last_place: tuple | None = None
        self._measuring = False
        self._flying = False
        self._closed = False
        self._actions: dict[str, QAction] = {}
        self._pin_sheet: PinSheet | None = None
        self._half_width, self._half_depth = 170.0, 110.0
        self._make_actions()
        self._lay_out()
        self._probe_timer = QTimer(self)
        self._probe_timer.setSingleShot(True)
        self._probe_timer.timeout.connect(self._probe_here)
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

    # --- laying out -----------------------------------------------------------------------

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
        self.caption = CaptionPanel()
        self.caption.action_wanted.connect(lambda name: self._actions[name].trigger())
        self.search = SearchBox()
        self.search.found.connect(self.go_to_named)
        self.search.nothing_found.connect(lambda text: self.say(f"No part is called “{text}”."))
        self.tree = PartsTree()
        self.tree.selection_wanted.connect(lambda ids: self.do(commands.select(ids)))
        self.tree.shown_wanted.connect(self._show_or_hide)
        self.tree.fly_wanted.connect(self.fly_to)

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
        self._side_split.addWidget(self.tree)
        self._side_split.setChildrenCollapsible(False)
        self._side_split.setStretchFactor(0, 3)
        self._side_split.setStretchFactor(1, 2)
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
        self._markers = QLabel()
        self._note = QLabel(TEACHING_NOTE)
        self._note.setProperty("caution", True)
        bar = self.statusBar()
        bar.addPermanentWidget(self._markers)
        bar.addPermanentWidget(self._note)
        self._note.setContentsMargins(8, 0, 8, 0)
        bar.setSizeGripEnabled(False)
        # Tab goes as the eye does: rail, model, steps, search, caption, tree.
        order = (self.rail, self.steps.do_button, self.search, self.caption.text, self.tree)
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
        for panel in (self.tools, self.strip, self.rail, self.steps):
            panel.set_dress(self.theme, self.scale)
        self.caption.set_dress(self.theme, self.scale, self.settings.latin_first)
        self.menuBar().setFont(font(self.scale))
        for menu in self.menuBar().findChildren(QMenu):
            menu.setFont(font(self.scale))
        for widget in (self.search, self.tree, self.progress, self._waiting, self.statusBar()):
            widget.setFont(font(self.scale))
        for label in (self._markers, self._note, self._rail_place):
            label.setFont(font(self.scale, 0.88))
        for button in self._side_buttons.buttons():
            button.setFont(font(self.scale, 0.92))
        self._rail_head.setFont(font(self.scale, 1.0, bold=True))
        self.tree.set_column_width(round(30 * self.scale))
        self.tree.header().setFont(font(self.scale, 0.9))
        self._share_room()
        self.side_panel.setVisible(self.settings.side_panel)
        self._actions["dark"].setChecked(self.settings.theme == "dark")
        self._actions["tree"].setChecked(self.settings.side_panel)
        if self.scene_widget is not None:
            scene = self.scene_widget.scene
            scene.set_theme(self.settings.theme)
            scene.set_font_scale(self.scale)
            scene.animate = not self.settings.calm
            self.scene_widget.refresh()

    def _share_room(self) -> None:
        """Leave the model most of the window, whatever the size of the letters."""
        width, height = max(self.width(), 640), max(self.height(), 480)
        self.side_panel.setFixedWidth(round(min(290 * self.scale, 0.28 * width)))
        self.rail.set_room(round(0.24 * width))
        self.steps.set_room(round(0.26 * height))

    def resizeEvent(self, event: Any) -> None:
        super().resizeEvent(event)
        self._share_room()

    # --- starting -------------------------------------------------------------------------

    def begin(self, *, reopen: bool = True) -> None:
        """Make the picture and fetch the model; call once, after ``show``."""
        if reopen and self.settings.reopen:
            self._reopen()
        QTimer.singleShot(0, self, self._start_scene)

    def tell_later(self, message: str) -> None:
        """Say something as soon as the model starts."""
        self._message = message or self._message

    def _reopen(self) -> None:
        path = last_session_path()
        if not path.exists():
            return
        try:
            self._opened = open_working_file(path).state
        except WorkingFileError as error:
            LOG.warning("last session not reopened: %s", error)
            self._message = f"The last session could not be reopened: {error}"

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
                "The 3D picture cannot be shown: no usable OpenGL was found.\n"
                "Install a graphics driver (on Linux without one: Mesa), or write pictures with "
                f"“peelback plate”.\n\n{error}\n\nLog: {log_path()}"
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
        widget.setAccessibleName("Picture of the back")
        self._stage_box.addWidget(widget, 1)
        widget.show()
        widget.hovered.connect(self._on_hover)
        widget.picked.connect(self._on_pick)
        widget.view_changed.connect(self._on_view_changed)
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

    def _start_model(self) -> None:
        self.source = ModelSource(self.model.body, self.model.detail, self)
        self.source.catalogue_ready.connect(self._on_catalogue)
        self.source.progressed.connect(self._on_progress)
        self.source.parts_ready.connect(self._on_parts)
        self.source.finished.connect(self.take_model)
        self.source.failed.connect(self._on_failed)
        self.source.start()
        if self._message:
            self.say(self._message, 15000)

    def _on_catalogue(self, catalogue: Any) -> None:
        if isinstance(self.model, GrowingModel):
            self.model.catalogue = catalogue

    def _on_progress(self, share: float, what: str) -> None:
        self.progress.setValue(round(share * 1000))
        self.progress.setFormat(f"Laid: {what} – %p %")

    def _on_parts(self, parts: Iterable[Any]) -> None:
        if not isinstance(self.model, GrowingModel):
            return
        parts = list(parts)
        first = not self.model.parts
        for part in parts:
            self.model.parts[part.id] = part
            self._titles[part.id] = part_title(part, self.model.catalogue)
        if self.scene_widget is not None:
            scene = self.scene_widget.scene
            scene.add_parts(parts)
            self._draw()
            if first:
                scene.set_view(self.session.state.view)
            self.scene_widget.refresh()

    def _on_failed(self, words: str) -> None:
        self.progress.hide()
        text = f"The model could not be built: {words} The log is in {log_path()}."
        self.say(text, 0)
        if self.scene_widget is None:
            self._waiting.setText(text)

    def take_model(self, model: Any) -> None:
        """Show a finished model."""
        started = time.perf_counter()
        had = isinstance(self.model, GrowingModel) and set(self.model.parts) == set(model.parts)
        empty = not self.model.parts
        self.model = model
        self._titles = part_titles(model)
        self._neighbours = neighbours_of(model)
        self._heights = level_heights(model.landmarks)
        self._probe = None
        self.plan = load_plan(model)
        self.steps.set_steps(self.plan.steps, self._names_of_things())
        self.tree.set_model_parts(model)
        self.search.set_index(search_index(model))
        self.progress.hide()
        self._measure_trunk()
        if self.scene_widget is not None:
            scene = self.scene_widget.scene
            if not had:
                scene.set_model(model)
            self._draw()
            if empty:
                scene.set_view(self.session.state.view)
        if self._opened is not None:
            state, self._opened = self._opened, None
            self.session.replace_state(state)
        else:
            self._follow(None, self.session.state)
        if self.scene_widget is not None:
            self.scene_widget.scene.animate = not self.settings.calm
            self.scene_widget.refresh()
        QTimer.singleShot(200, self, self._probe_usual_place)
        LOG.info(
            "model of %d parts shown in %.2f s", len(model.parts), time.perf_counter() - started
        )

    def _names_of_things(self) -> dict[str, str]:
        """English names of parts without side, of rows and of groups, for the step line."""
        names: dict[str, str] = {}
        for key in self.model.catalogue:
            names[key] = self.model.catalogue[key].english
        for part in self.model.parts.values():
            names.setdefault(part.name, self._titles[part.id].rsplit(",", 1)[0].lower())
        return names

    def _measure_trunk(self) -> None:
        """Half axes of the trunk, for the direction of the drill, mm."""
        ribs = [
            p.mesh.bounds
            for p in self.model.parts.values()
            if p.kind == "bone" and p.region in ("thorax", "loin", "pelvis")
        ]
        if ribs:
            boxes = np.array(ribs)
            self._half_width = max(float(np.abs(boxes[:, :, 0]).max()), 60.0)
            self._half_depth = max(float(boxes[:, 1, 1].max()), 50.0)

    # --- state ----------------------------------------------------------------------------

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
            ("measure", self._measuring),
            ("measure_surface", after.measure_surface),
            ("surface", after.surface_marks),
            (f"side_{after.side_shown}", True),
            (f"look_{after.look}", True),
            (f"work_{after.working_side}", True),
        ):
            actions[name].setChecked(on)
        for name in (
            "hide",
            "show_part",
            "alone",
            "see_through",
            "fly",
            "other_side",
            "select_group",
            "pin",
        ):
            actions[name].setEnabled(bool(after.selection))
        # A part that is alone keeps its way back even when nothing is picked.
        if after.alone:
            actions["alone"].setEnabled(True)
        self._name_undo()
        for button in self._side_buttons.buttons():
            button.setChecked(button.property("side") == after.working_side)
        self.rail.set_state(after)
        self.tools.show_density(after.label_density)
        self.strip.show_hidden(what_is_hidden(after, self._titles, self.model))
        if self.plan.steps and self.model.parts:
            self.steps.show_lines(
                self.plan.lines(self.model, after, "left"),
                self.plan.lines(self.model, after, "right"),
                after.working_side,
            )
        self.tree.show_selection(after.selection)
        self._show_caption()
        self._follow_scene(before, after)
        if self._pin_sheet is not None and (before is None or before.pins != after.pins):
            self._pin_sheet.show_pins(after.pins, self._titles)

    def _follow_scene(self, before: ViewState | None, after: ViewState) -> None:
        def changed(*names: str) -> bool:
            return before is None or any(getattr(before, n) != getattr(after, n) for n in names)

        shown = visible_parts(self.model, after, self._neighbours)
        self.tree.show_visible(shown)
        if self.scene_widget is None:
            return
        scene = self.scene_widget.scene
        if changed("look"):
            scene.set_look(after.look)
        if changed("orbit"):
            scene.set_orbit(after.orbit)
        if changed("compare"):
            scene.set_compare(after.compare)
        self._draw()
        if changed("labels", "label_density", "blank_labels"):
            self._set_labels()
        if changed("pins"):
            scene.set_pins([(np.array(p.point), p.text) for p in after.pins])
        if changed("measure", "measure_surface"):
            self._set_measure()
        if changed("surface_marks"):
            records = getattr(self.model.catalogue, "landmarks", None)
            scene.set_surface_marks(
                surface_marks(self.model.landmarks, records), after.surface_marks
            )
        if self.model.parts and changed("view", "camera") and not self._flying:
            self.scene_widget.end_flight()
            if after.camera is None:
                scene.set_view(after.view)
            else:
                scene.set_camera({**asdict(after.camera), "view": after.view})
            self._tell_markers()
        self.scene_widget.refresh()

    def _draw(self) -> None:
        """Tell the scene what is shown and how."""
        if self.scene_widget is None:
            return
        from viewer.scene.scene import PartLook

        state, scene = self.state, self.scene_widget.scene
        chosen = set(state.selection)
        scene.apply(
            {
                part_id: PartLook(opacity, part_id in chosen, part_id == self._hovered)
                for part_id, opacity in opacities(self.model, state, self._neighbours).items()
            }
        )
        if state.compare:
            whole = ViewState(neighbours=state.neighbours, side_shown=state.side_shown)
            scene.apply_whole(
                {
                    part_id: PartLook(1.0, part_id in chosen, part_id == self._hovered)
                    for part_id in visible_parts(self.model, whole, self._neighbours)
                }
            )

    def _set_labels(self) -> None:
        state = self.state
        names = {}
        if state.labels:
            for part in self.model.parts.values():
                title = self._titles.get(part.id, part.id)
                if self.settings.latin_first:
                    row = (
                        self.model.catalogue.get(part.entry)
                        if part.entry in self.model.catalogue
                        else None
                    )
                    title = getattr(row, "latin", "") or title
                names[part.id] = title.rsplit(",", 1)[0] if part.side else title
        self.scene_widget.scene.set_labels(
            state.labels, state.label_density, state.blank_labels, names
        )

    def _name_undo(self) -> None:
        for name, words, what in (
            ("undo", "Undo", self.session.undo_name),
            ("redo", "Redo", self.session.redo_name),
        ):
            self._actions[name].setText(f"{words} {what}" if what else words)
            self._actions[name].setEnabled(bool(what))

    def _show_caption(self) -> None:
        state = self.state
        part_id = self._hovered or state.selected or ""
        part = self.model.parts.get(part_id)
        caption = caption_of(part, self.model, state) if part is not None else None
        self.caption.show_caption(caption, picked=part_id == state.selected)
        chosen = frozenset(state.selection)
        self.caption.show_toggles(
            enabled=bool(chosen),
            alone=bool(state.alone) and state.alone == chosen,
            see_through=bool(chosen) and chosen <= state.see_through,
            peek=state.peek,
        )

    def say(self, words: str, ms: int = SAY_MS) -> None:
        """Say something in the status line."""
        self.statusBar().showMessage(words, ms)

    # --- the pointer ----------------------------------------------------------------------

    def _on_hover(self, hit: Any) -> None:
        part_id = hit.part_id if hit is not None else ""
        if hit is not None:
            self._last_place = tuple(float(c) for c in hit.point)
            if not self._probe_timer.isActive():
                self._probe_timer.start(PROBE_EVERY_MS)
        if part_id == self._hovered:
            return
        self._hovered = part_id
        self._show_caption()
        # A tint under the pointer is worth a frame only where frames are quick.
        if self.scene_widget.last_frame_ms < HOVER_TINT_MS:
            self._draw()
            self.scene_widget.refresh(moving=False)
        if part_id:
            part = self.model.parts.get(part_id)
            if part is not None:
                where = place_in_words(self._last_place, self._heights)
                self.say(f"{self._titles.get(part_id, part_id)} · {where}", 0)
        else:
            self.statusBar().clearMessage()

    def _probe_usual_place(self) -> None:
        """Before the pointer has been anywhere: 40 mm left of spine T7."""
        if self._closed or self._last_place is not None:
            return
        z = self._heights.get("T7")
        if z is None:
            return
        self._last_place = (40.0, self._half_depth, z)
        self._probe_here()

    def _probe_here(self) -> None:
        if self._last_place is None or isinstance(self.model, GrowingModel) or self._closed:
            return
        if self.rail.pointer_inside:
            return
        try:
            if self._probe is None:
                from meshes.questions.probe import Probe

                self._probe = Probe(self.model)
            direction = rail.inward(self._last_place, self._half_width, self._half_depth)
            ladder = self._probe.along(rail.drill(self._last_place, direction), direction)
        except Exception:
            LOG.exception("the probe failed")
            return
        self.rail.set_ladder(rail.thickness_by_stratum(ladder.rungs, self.model))
        self._rail_place.setText(f"at {place_in_words(self._last_place, self._heights)}")

    def _on_pick(self, hit: Any, adding: bool) -> None:
        if self._measuring:
            if hit is not None:
                self._add_measure_point(hit.point)
            return
        if hit is None:
            if not adding:
                self.do(commands.select(()))
            return
        self._last_place = tuple(float(c) for c in hit.point)
        self.do(commands.select([hit.part_id], adding=adding))

    def _on_view_changed(self) -> None:
        self._note_camera()
        self._tell_markers()

    def _tell_markers(self) -> None:
        if self.scene_widget is None:
            return
        words = self.scene_widget.scene.markers_text()
        self._markers.setText(words)
        self.scene_widget.setAccessibleDescription(words)

    def _on_context(self, hit: Any, at: QPoint) -> None:
        if hit is not None and hit.part_id not in self.state.selection:
            self.do(commands.select([hit.part_id]))
        menu = QMenu(self)
        if hit is not None:
            menu.addSection(self._titles.get(hit.part_id, hit.part_id))
        for name in (
            "hide",
            "alone",
            "see_through",
            "peek",
            "show_part",
            "fly",
            "other_side",
            "select_group",
            "pin",
        ):
            menu.addAction(self._actions[name])
        menu.addSeparator()
        menu.addAction(self._actions["all_back"])
        menu.exec(at)

    # --- peel and steps -------------------------------------------------------------------

    def _peel(self, depth: int, side: SideChoice, dragging: bool) -> None:
        self.do(commands.peel_to(depth, side, self.model, dragging=dragging))

    def _nudge(self, by: int) -> None:
        state = self.state
        side = state.working_side
        depth = max(state.peeled) if side == "both" else state.peeled.of(side)
        self._peel(min(max(depth + by, 0), STRATUM_COUNT), side, False)

    def peel_deeper(self) -> None:
        """Take one more stratum off."""
        self._nudge(1)

    def peel_shallower(self) -> None:
        """Lay one stratum back."""
        self._nudge(-1)

    def peel_none(self) -> None:
        """Lay all strata back on the working side."""
        self._peel(0, self.state.working_side, False)

    def bring_all_back(self) -> None:
        """Show everything, as it was before any peeling or hiding."""
        self.do(commands.bring_all_back())

    def _restore(self, thing: HiddenThing) -> None:
        self.do(commands.restore(thing.restore, thing.side, thing.stratum))

    def work_on(self, side: SideChoice) -> None:
        """Choose the side on which rail and steps act."""
        self.do(commands.set_working_side(side))

    def do_step(self, step_id: str, anyway: bool = False) -> None:
        """Do a step of the plan, or say why not."""
        if step_id not in self.plan:
            return
        side = self.state.working_side
        reason = self.plan.refusal(step_id, self.model, self.state, side)
        if reason and not anyway:
            self.say(reason, 10000)
            return
        self.do(self.plan.do_step(step_id, self.model, side))
        step = self.plan[step_id]
        if step.keep:
            self.say(f"Keep: {names_in_words(step.keep, self._names_of_things())}", 10000)

    def lay_step_back(self, step_id: str) -> None:
        """Lay a step back, and all that need it."""
        if step_id in self.plan:
            self.do(self.plan.undo_step(step_id, self.model, self.state.working_side))

    def _step_side(self) -> str:
        """The side that decides which step is next when both are worked on: the one behind."""
        side = self.state.working_side
        if side != "both":
            return side
        left = len(self.plan.done(self.model, self.state, "left"))
        right = len(self.plan.done(self.model, self.state, "right"))
        return "left" if left <= right else "right"

    def next_step(self) -> None:
        """Do the next step that is allowed."""
        step = self.plan.next_step(self.model, self.state, self._step_side())
        if step is None:
            self.say("Every step of the plan is done.")
            return
        self.do(self.plan.do_step(step.id, self.model, self.state.working_side))
        self.say(f"Done: {step.title}")

    def previous_step(self) -> None:
        """Lay the last step back."""
        side = self.state.working_side
        other = self._step_side()
        if side == "both":
            other = "right" if other == "left" else "left"
        step = self.plan.last_done(self.model, self.state, other)
        if step is None:
            self.say("No step has been done yet.")
            return
        self.do(self.plan.undo_step(step.id, self.model, side))
        self.say(f"Laid back: {step.title}")

    # --- parts ----------------------------------------------------------------------------

    def _selection_words(self) -> str:
        chosen = self.state.selection
        if len(chosen) == 1:
            return self._titles.get(chosen[0], chosen[0])
        return f"{len(chosen)} parts"

    def hide_selected(self) -> None:
        """Hide what is picked."""
        if self.state.selection:
            words = self._selection_words()
            self.do(commands.hide(self.state.selection, words))
            self.say(f"Hidden: {words}. The strip above the model brings it back.")

    def show_selected(self) -> None:
        """Bring what is picked into view."""
        if self.state.selection:
            self.do(commands.show(self.state.selection, self.model, self._selection_words()))

    def _show_or_hide(self, ids: Iterable[str], wanted: bool) -> None:
        ids = list(ids)
        words = self._titles.get(ids[0], ids[0]) if len(ids) == 1 else f"{len(ids)} parts"
        if wanted:
            self.do(commands.show(ids, self.model, words))
        else:
            self.do(commands.hide(ids, words))
        self.tree.show_visible(visible_parts(self.model, self.state, self._neighbours))

    def alone_selected(self, on: bool = True) -> None:
        """Show what is picked alone, or all again."""
        ids = self.state.selection or tuple(self.state.alone)
        if ids:
            self.do(commands.toggle_alone(ids, self._selection_words()))

    def see_through_selected(self, on: bool = True) -> None:
        """Make what is picked see-through, or solid again."""
        if self.state.selection:
            self.do(commands.toggle_see_through(self.state.selection, self._selection_words()))

    def set_peek(self, on: bool) -> None:
        """Look through what covers the selection."""
        self.do(commands.set_peek(on))

    def select_twin(self) -> None:
        """Pick the same parts on the other side."""
        from meshes.model import other_side

        self.do(commands.select([other_side(i) for i in self.state.selection]))

    def select_group(self) -> None:
        """Pick all parts of the picked part's group, on its side."""
        part = self.model.parts.get(self.state.selected or "")
        if part is None:
            return
        if not part.group:
            self.say(f"{self._titles[part.id]} belongs to no group.")
            return
        ids = [
            p.id for p in self.model.parts.values() if p.group == part.group and p.side == part.side
        ]
        self.do(commands.select(ids))

    def let_go(self) -> None:
        """Stop measuring, else let go of what is picked."""
        if self._measuring:
            self.set_measuring(False)
        elif self.state.peek:
            self.set_peek(False)
        elif self.state.selection:
            self.do(commands.select(()))
        elif self.state.alone:
            self.do(commands.restore("alone"))

    def focus_search(self) -> None:
        """Go to the search field."""
        if not self.settings.side_panel:
            self.show_side_panel(True)
        self.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.search.selectAll()

    def go_to_named(self, named: Named) -> None:
        """Pick what was searched for and fly there; say it when it is not in view."""
        self.do(commands.select(named.ids))
        self.fly_to(named.ids)
        hidden = [
            i
            for i in named.ids
            if i in self.model.parts and taken_off(self.model.parts[i], self.state)
        ]
        state = self.state
        covered = any(
            self.model.parts[i].stratum > min(state.peeled)
            for i in named.ids
            if i in self.model.parts
        )
        if hidden:
            self.say(f"{named.title} is not in view: S brings it back, P shows it through.", 0)
        elif covered:
            self.say(f"{named.title} may be covered: P peeks through what lies over it.", 0)
        self.stage.setFocus()

    def fly_to(self, ids: Iterable[str]) -> None:
        """Let the camera go to parts."""
        ids = [i for i in ids if i in self.model.parts]
        if not ids or self.scene_widget is None:
            return
        self._note_camera()
        scene = self.scene_widget.scene
        animate, scene.animate = scene.animate, False
        start = scene.camera()
        scene.fly_to(ids, keep_direction=False)
        camera, view = self._present_camera(), scene.camera().get("view", self.state.view)
        title = self._titles.get(ids[0], ids[0]) if len(ids) == 1 else f"{len(ids)} parts"
        scene.animate = animate
        if animate:
            # Start again from where one was, and let the flight bring the picture there.
            scene.set_camera(start)
            scene.fly_to(ids, keep_direction=False)
        self._flying = True
        try:
            command = commands.fly(camera, title)
            self.session.do(
                replace(command, change=lambda s: replace(command.change(s), view=view))
            )
        finally:
            self._flying = False
        self._tell_markers()
        self.scene_widget.refresh()

    def fly_to_selected(self) -> None:
        """Let the camera go to what is picked."""
        self.fly_to(self.state.selection)

    # --- views ----------------------------------------------------------------------------

    def go_to_view(self, name: str) -> None:
        """Go to a fixed view."""
        self.do(commands.set_view(name))
        self.say(VIEWS[name])

    def return_to_view(self) -> None:
        """Go back to the last fixed view."""
        self.do(commands.set_view(self.state.view))

    def set_free_orbit(self, on: bool) -> None:
        """Free the orbit, or hold it near the fixed view again."""
        self.do(commands.set_orbit("free" if on else "limited"))
        self.say("Free orbit. Home returns to the fixed view." if on else "Gentle orbit.")

    def turn(self, angles: tuple[float, float]) -> None:
        """Turn by (azimuth, elevation) degrees."""
        self._move(lambda scene: scene.orbit(*angles))

    def pan(self, pixels: tuple[float, float]) -> None:
        """Move the picture by pixels."""
        self._move(lambda scene: scene.pan(*pixels))

    def zoom(self, factor: float) -> None:
        """Come closer (above 1) or go away."""
        self._move(lambda scene: scene.zoom(factor))

    def _move(self, how: Callable[[Any], None]) -> None:
        if self.scene_widget is None:
            return
        how(self.scene_widget.scene)
        self._note_camera()
        self._tell_markers()
        self.scene_widget.refresh()

    def show_side(self, side: SideChoice) -> None:
        """Show the left side, the right side or both."""
        self.do(commands.show_side(side))

    def set_compare(self, on: bool) -> None:
        """Show the dissected back beside the whole one."""
        self.do(commands.set_flag("compare", on, "dissected beside whole"))

    def set_neighbours(self, on: bool) -> None:
        """Show the muscles at the edge that do not belong to the back."""
        self.do(commands.set_flag("neighbours", on, "neighbours at the edge"))

    def set_look(self, look: str) -> None:
        """Change the colours of tissues."""
        self.do(commands.set_look(look))

    def next_look(self) -> None:
        """Go on to the next look."""
        names = list(LOOKS)
        self.set_look(names[(names.index(self.state.look) + 1) % len(names)])

    def set_dark(self, on: bool) -> None:
        """Dark or light window."""
        self._take_settings(replace(self.settings, theme="dark" if on else "light"))

    def larger_letters(self) -> None:
        """Letters larger by 10 %."""
        self._set_letters(self.scale + 0.1)

    def smaller_letters(self) -> None:
        """Letters smaller by 10 %."""
        self._set_letters(self.scale - 0.1)

    def normal_letters(self) -> None:
        """Letters at 100 %."""
        self._set_letters(1.0)

    def _set_letters(self, scale: float) -> None:
        low, high = FONT_SCALES
        scale = min(max(round(scale, 2), low), high)
        self._take_settings(replace(self.settings, font_scale=scale))
        self.say(f"Letters at {scale:.0%}")

    def show_side_panel(self, on: bool) -> None:
        """Show caption and tree, or give their room to the model."""
        self._take_settings(replace(self.settings, side_panel=on))

    def set_full_screen(self, on: bool) -> None:
        """Fill the screen."""
        if on:
            self.showFullScreen()
        else:
            self.showNormal()

    # --- tools ----------------------------------------------------------------------------

    def set_labels(self, on: bool) -> None:
        """Switch labels on or off."""
        self.do(commands.set_flag("labels", on, "labels"))

    def set_blank_labels(self, on: bool) -> None:
        """Numbers in place of names."""
        self.do(commands.set_flag("blank_labels", on, "numbers in place of names"))
        if on and not self.state.labels:
            self.set_labels(True)

    def change_density(self, by: float) -> None:
        """More labels, or fewer."""
        density = min(max(round(self.state.label_density + by, 2), 0.0), 1.0)
        self.do(commands.set_label_density(density))

    def set_measuring(self, on: bool) -> None:
        """Let clicks set the points of a measure."""
        self._measuring = on
        self._actions["measure"].setChecked(on)
        if self.scene_widget is not None:
            self.scene_widget.mode = "measure" if on else "pick"
        self.say(f"Click two points. {TEACHING_NOTE}" if on else "", 0)

    def set_measure_surface(self, on: bool) -> None:
        """Measure along the surface rather than straight."""
        self.do(commands.set_flag("measure_surface", on, "measure along the surface"))

    def _add_measure_point(self, point: Iterable[float]) -> None:
        points = self.state.measure
        if len(points) >= 2:
            points = ()
        self.do(commands.set_measure([*points, tuple(float(c) for c in point)]))

    def clear_measure(self) -> None:
        """Take the measuring line away."""
        self.do(commands.set_measure(()))

    def _set_measure(self) -> None:
        state, scene = self.state, self.scene_widget.scene
        path = None
        if state.measure_surface and len(state.measure) == 2:
            path = scene.surface_path(*(np.array(p) for p in state.measure))
        words = measure_words(state.measure, path)
        scene.set_measure(np.array(state.measure).reshape(-1, 3), path, words)
        if words:
            unable = state.measure_surface and path is None
            note = " No way along one part joins the points." if unable else ""
            self.say(f"{words}.{note} {TEACHING_NOTE}", 0)

    def set_surface_marks(self, on: bool) -> None:
        """Draw the palpable landmarks on the skin."""
        self.do(commands.set_flag("surface_marks", on, "landmarks on the skin"))

    def pin_selected(self) -> None:
        """Stick a note to the place that was picked last."""
        part_id = self.state.selected
        if part_id is None:
            self.say("Pick a part first; the note sticks where it was clicked.")
            return
        words, good = QInputDialog.getText(
            self, "Pin a note", f"Note on {self._titles.get(part_id, part_id)}:"
        )
        if good and words.strip():
            self.add_pin(words.strip())

    def add_pin(self, words: str) -> None:
        """Stick a note to the picked part, where it was clicked or at its outermost point."""
        part = self.model.parts.get(self.state.selected or "")
        if part is None:
            return
        vertices = np.asarray(part.mesh.vertices)
        place = np.array(self._last_place if self._last_place else vertices.mean(axis=0))
        if self._last_place is None or np.min(np.linalg.norm(vertices - place, axis=1)) > 25:
            place = vertices[np.argmax(vertices[:, 1])]
        self.do(commands.add_pin(Pin(tuple(float(c) for c in place), words, part.id)))

    def open_pins(self) -> None:
        """Read and change the notes."""
        sheet = PinSheet(self)
        self._pin_sheet = sheet
        sheet.show_pins(self.state.pins, self._titles)
        sheet.pin_changed.connect(lambda k, text: self.do(commands.change_pin(k, text)))
        sheet.pin_wanted.connect(lambda k: self.fly_to([self.state.pins[k].part_id]))
        self._open(sheet)
        sheet.finished.connect(self._forget_pin_sheet)

    def _forget_pin_sheet(self) -> None:
        self._pin_sheet = None

    # --- files ----------------------------------------------------------------------------

    def undo(self) -> None:
        """Take the last change back."""
        self._note_camera()
        if name := self.session.undo():
            self.say(f"Undone: {name}")

    def redo(self) -> None:
        """Do again what was undone."""
        self._note_camera()
        if name := self.session.redo():
            self.say(f"Done again: {name}")

    def open_state(self) -> None:
        """Ask for a working state and open it."""
        name, _ = QFileDialog.getOpenFileName(
            self, "Open state", str(self._file or Path.home()), f"Working states (*{SUFFIX})"
        )
        if name:
            self.open_file(Path(name))

    def open_file(self, path: Path) -> bool:
        """Open a working state; refuses broken and foreign files with a sentence."""
        try:
            opened = open_working_file(path)
        except WorkingFileError as error:
            QMessageBox.warning(self, "Open state", str(error))
            return False
        self._file = path
        own = self.model.body.as_dict()
        differs = [k for k, v in opened.body.items() if k in own and own[k] != v]
        if isinstance(self.model, GrowingModel):
            self._opened = opened.state
        else:
            self.session.replace_state(opened.state)
        unknown = (opened.state.hidden | opened.state.removed) - set(self.model.parts)
        words = f"Opened {path.name}."
        if differs:
            words += f" It was saved on another body ({', '.join(differs)}); this body is kept."
        elif unknown and not isinstance(self.model, GrowingModel):
            words += (
                f" {len(unknown)} parts in it are not in this model; they are kept in the file."
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
            self, "Save state as", str(start), f"Working states (*{SUFFIX})"
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
            QMessageBox.warning(self, "Save state", f"{path} cannot be written: {error.strerror}")
            return False
        self._file = path
        self.say(f"Saved {path.name}")
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
            self, "Save picture", str(Path.home() / "back.png"), "Pictures (*.png *.jpg *.tif)"
        )
        if name:
            self.save_picture_to(Path(name), sheet.size_wanted)

    def save_picture_to(self, path: Path, size: tuple[int, int]) -> bool:
        """Save the picture at a size in pixels."""
        if not path.suffix:
            path = path.with_suffix(".png")
        self._take_settings(replace(self.settings, picture_width=size[0], picture_height=size[1]))
        if not self._picture(size).save(str(path)):
            QMessageBox.warning(self, "Save picture", f"{path} could not be written.")
            return False
        self.say(f"Saved {path.name}, {size[0]} × {size[1]}")
        return True

    # --- sheets ---------------------------------------------------------------------------

    def _open(self, sheet: Any) -> None:
        sheet.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        sheet.open()

    def open_help(self) -> None:
        """Keys, how to begin, cautions."""
        self._open(Sheet("Help", help_html(self.theme), self))

    def open_cautions(self) -> None:
        """The cautions."""
        self._open(Sheet("Cautions", cautions_html(self.theme), self))

    def show_first_cautions(self) -> None:
        """The cautions once, at the first start."""
        if self.settings.cautions_seen:
            return
        sheet = Sheet(
            "Before you begin", cautions_html(self.theme), self, close_words="I have read this"
        )
        sheet.accepted.connect(
            lambda: self._take_settings(replace(self.settings, cautions_seen=True))
        )
        self._open(sheet)

    def open_log(self) -> None:
        """Say where the log file is."""
        self._open(
            Sheet(
                "Log file",
                f"<p>What went wrong is written to</p><p><b>{log_path()}</b></p>"
                "<p>It holds no names and leaves this machine only when you send it.</p>",
                self,
            )
        )

    def open_about(self) -> None:
        """Version, licences, sources."""
        citations = getattr(self.model.catalogue, "citations", {})
        self._open(Sheet("About Peelback", about_html(self.theme, list(citations.values())), self))

    def open_settings(self) -> None:
        """Choices that stay."""
        sheet = SettingsSheet(self.settings, self)
        sheet.changed.connect(self._take_settings)
        self._open(sheet)

    def _take_settings(self, settings: Settings) -> None:
        before, self.settings = self.settings, settings
        if self._keep and (message := save_settings(settings)):
            self.say(message, 12000)
        if settings.look != before.look:
            self.set_look(settings.look)
        self._dress()
        if settings.latin_first != before.latin_first and self.scene_widget is not None:
            self._set_labels()
            self.scene_widget.refresh()

    # --- end ------------------------------------------------------------------------------

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
        self._probe_timer.stop()
        self._autosave.stop()
        if self._keep:
            self._keep_session()
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
        if isinstance(self.model, GrowingModel):
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


def load_plan(model: Any) -> Plan:
    """Return the plan of the catalogue, with its names spelled out by the model's rows."""
    from meshes.catalogue.plan import part_ids_of, steps

    return plan_from_records(steps(), lambda name: part_ids_of(name, model.catalogue))
