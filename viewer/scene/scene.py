"""The one object that tells VTK what to show: it compares what is wanted with what is shown.

It knows parts, looks and a pose; it knows no Qt and nothing of the dissection.
All coordinates are mm LPS; picture coordinates are pixels, x right and y down
from the top left corner.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkCommonCore import vtkFloatArray, vtkUnsignedCharArray
from vtkmodules.vtkRenderingCore import vtkLight, vtkRenderer

from viewer.scene import anchors as anchor_finding
from viewer.scene import camera as cameras
from viewer.scene import looks, overlay
from viewer.scene.batches import DETAILS, Batch, BatchActors
from viewer.scene.camera import Flight, Pose
from viewer.scene.caps import GRIP_PX, Caps
from viewer.scene.corners import EDGE_PX, Corners, CornerWords, with_corners
from viewer.scene.drawn import DrawnPart, Shell, draw_parts, vertex_normals
from viewer.scene.drawn_cache import drawn_model
from viewer.scene.felt import Felt
from viewer.scene.hidden import SeenSearch
from viewer.scene.label_layout import Anchor, Label
from viewer.scene.labels import Labels, cap_anchors, seen_parts
from viewer.scene.looks import batch_key
from viewer.scene.model_marks import ModelMarks
from viewer.scene.outline import Outline
from viewer.scene.picture_layer import PictureLayer
from viewer.scene.sight import Sight
from viewer.scene.table_pose import HEIGHT_DEG, STANDS, table_pose, walked, with_room_above
from viewer.scene.table_view import TableView
from viewer.scene.tag_mark import TagMark
from viewer.scene.window import offscreen_window, set_up
from viewer.state.visibility import is_film

if TYPE_CHECKING:
    from viewer.scene.table_limbs import Limbs

VIEWS: tuple[str, ...] = tuple(cameras.VIEWS)
THEMES = tuple(looks.BACKGROUNDS)
SOLID_FROM = 0.995
SMOOTHED_IN_MOTION_PX = 5_000_000
"""Edges of a larger picture are not smoothed while it moves: its pixels are finer than an eye that
follows a movement can tell, and the pass costs a quarter of the frame at 3840 by 2160."""
SURFACE_SLACK_MM = 6.0
"""Both ends of a way along a surface must lie so near to a vertex of one part."""


@dataclass(frozen=True, slots=True)
class PartLook:
    """How one shown part is to look.

    Attributes
    ----------
    opacity : float
        1 solid, less is see-through; a hidden part is left out instead.
    highlighted, hovered : bool
        Selected (tint and outline), or under the pointer (slight tint).
    covering : bool
        Lies over the part that is asked about (a tint of its own).
    """

    opacity: float = 1.0
    highlighted: bool = False
    hovered: bool = False
    covering: bool = False


@dataclass(frozen=True, slots=True)
class PickHit:
    """What lies under a pixel: part, point (3,) mm and outward unit normal (3,)."""

    part_id: str
    point: np.ndarray
    normal: np.ndarray


class Viewport:
    """One picture of the model in the window: a renderer and its actors."""

    def __init__(self, window, share: tuple[float, float, float, float]):
        self.renderer = vtkRenderer()
        self.renderer.SetViewport(*share)
        self.renderer.SetLayer(0)
        self.renderer.SetAutomaticLightCreation(False)
        self.renderer.SetUseDepthPeeling(True)
        self.renderer.SetMaximumNumberOfPeels(4)
        self.renderer.SetOcclusionRatio(0.0)
        # VTK passes normals on only when there is a light; the shader has its own tone.
        lamp = vtkLight()
        lamp.SetLightTypeToHeadlight()
        self.renderer.AddLight(lamp)
        window.AddRenderer(self.renderer)
        self.actors: dict[tuple[int, str], dict[str, BatchActors]] = {}
        self.shown: dict[str, PartLook] = {}
        # Films lie outermost and in one layer: they blend without peeling.
        self.peels = False


def _at(shell: Shell, points: np.ndarray) -> Shell:
    """Return a shell with its points elsewhere."""
    points = np.ascontiguousarray(points, np.float32)
    normals = vertex_normals(points, shell.faces)
    return Shell(points, normals, shell.faces, shell.surface, shell.source, shell.cut)


def _renderer_before(window, layer: int, like: vtkRenderer | None = None) -> vtkRenderer:
    """Return a renderer in front of the model, with the things of another one where given."""
    renderer = vtkRenderer()
    renderer.SetLayer(layer)
    renderer.InteractiveOff()
    renderer.SetAutomaticLightCreation(False)
    window.AddRenderer(renderer)
    if like is not None:
        for thing in like.GetViewProps():
            renderer.AddViewProp(thing)
    return renderer


class Scene:
    """A back on a render window (its own, in memory, when none is given)."""

    def __init__(self, render_window=None, size: tuple[int, int] = (1280, 800)):
        self.window = render_window if render_window is not None else offscreen_window(size)
        self.offscreen = render_window is None
        if render_window is not None:
            set_up(render_window)
        self._viewports: list[Viewport] = [Viewport(self.window, (0, 0, 1, 1))]
        self._table: TableView | None = None
        self.table = ""
        self.pose_lines: tuple[str, ...] = ()
        # Lines and spots lie before the model, what is written before both. While two pictures
        # are compared the same lines stand in either.
        self._front = _renderer_before(self.window, 1)
        self._front_second: vtkRenderer | None = None
        self._written = _renderer_before(self.window, 2)
        self._drawn: dict[str, DrawnPart] = {}
        self._key_of: dict[str, tuple[int, str]] = {}
        self._batches: dict[tuple[int, str], dict[str, Batch]] = {}
        # The whole picture of a comparison has batches of its own where the first one is folded.
        self._whole_batches: dict[tuple[int, str], dict[str, Batch]] = {}
        self._whole_target = None
        self._painted: dict[str, tuple] = {}
        self._in_place: dict[str, DrawnPart] = {}
        # Flaps that were folded last, and how the limbs lie while the donor does.
        self._folded: Mapping[str, Mapping[str, Shell]] = {}
        self._limbs: Limbs | None = None
        self._lying: dict[str, dict[str, Shell]] = {}
        self.limbs_lie = self._whole_lies = False
        self._target = None
        self._corners_of: dict[str, np.ndarray] = {}
        # By the set of solid parts: which of them can be seen from outside.
        self._seen_by: dict[frozenset[str], frozenset[str]] = {}
        self._seen: frozenset[str] | None = None
        self.pose = Pose()
        self.limited = True
        self.look = "by_kind"
        self.theme = "light"
        self.font_scale = 1.0
        self.pixel_ratio = 1.0
        self.animate = False
        self.last_draw_ms = 0.0
        self.on_flight: Callable[[Flight], None] | None = None
        self.on_parts: Callable[[], None] | None = None
        self.pattern = True
        self._labels = Labels()
        self._corners_shown = Corners(self._written)
        self.directions = True
        """Whether the cross that tells left from right is shown."""
        self._label_layers = PictureLayer(self._written), PictureLayer(self._written)
        self._outline = Outline(self._viewports[0].renderer)
        self._caps = Caps(self._viewports[0].renderer)
        self._marks = ModelMarks(self._front, self._viewports[0].renderer)
        self._felt: Felt | None = None
        self._felt_marks: list[tuple[str, np.ndarray]] = []
        self._marks_lie = True
        self._tag = TagMark(self._front)
        self._cap_hover = ""
        self._cut_off: frozenset[str] = frozenset()
        self._boxes: np.ndarray | None = None
        self._finalized = False
        self.set_theme("light")

    # Model ------------------------------------------------------------------------------

    def set_model(self, model, drawn: Sequence[DrawnPart] | None = None) -> None:
        """Take all parts of a model and no others; nothing is done twice for parts held.

        Parameters
        ----------
        drawn : sequence of DrawnPart, optional
            The model's drawn parts where they have been fetched already (``drawn_model``).
        """
        held = {name: drawn.part for name, drawn in self._drawn.items()}
        if held and all(
            name in held and _same_mesh(held[name], part) for name, part in model.parts.items()
        ):
            self._drop(held.keys() - model.parts.keys())
            return
        self.clear()
        self.add_parts(drawn_model(model) if drawn is None else drawn)

    def _drop(self, ids: Iterable[str]) -> None:
        changed = set()
        for name in ids:
            del self._drawn[name]
            changed.add(self._key_of.pop(name))
            self._in_place.pop(name, None)
            for viewport in self._every_viewport():
                viewport.shown.pop(name, None)
        for key in changed:
            self._rebuild_batch(key)
        self._forget_places()

    def clear(self) -> None:
        """Drop all parts."""
        for viewport in self._every_viewport():
            for pair in viewport.actors.values():
                for actors in pair.values():
                    actors.remove()
            viewport.actors.clear()
            viewport.shown.clear()
        self._drawn.clear()
        self._folded, self._limbs, self._lying = {}, None, {}
        self.limbs_lie = False
        self._key_of.clear()
        self._batches.clear()
        self._whole_batches.clear()
        self._painted.clear()
        self._in_place.clear()
        self._forget_places()
        self._outline.clear()

    def add_parts(self, parts: Iterable) -> None:
        """Add parts (or ``DrawnPart`` prepared in another thread); same ids are replaced.

        They stay hidden until ``apply`` names them.
        """
        changed = set()
        ready = list(parts)
        raw = iter(draw_parts(p for p in ready if not isinstance(p, DrawnPart)))
        for part in ready:
            drawn = part if isinstance(part, DrawnPart) else next(raw)
            name = drawn.part.id
            if name in self._drawn:
                changed.add(self._key_of[name])
            self._drawn[name] = drawn
            self._key_of[name] = batch_key(drawn.part)
            self._in_place.pop(name, None)
            changed.add(self._key_of[name])
        for key in changed:
            self._rebuild_batch(key)
        self._forget_places()
        if changed and self.on_parts is not None:
            self.on_parts()

    def part_ids(self) -> tuple[str, ...]:
        """Return the ids of all parts held, shown or not."""
        return tuple(self._drawn)

    def batch_of(self, name: str) -> tuple[int, str]:
        """Return what is the same for parts that are drawn together."""
        return self._key_of[name]

    def drawn_parts(self) -> Mapping[str, DrawnPart]:
        """Return the drawn arrays by id (read only)."""
        return self._drawn

    def set_openness(self, openness: Mapping[str, Mapping[str, np.ndarray]]) -> None:
        """Set the furrow shade: detail -> part id -> (n,) values, as from ``shade``."""
        for detail, values in openness.items():
            for name, shade in values.items():
                drawn = self._drawn.get(name)
                if drawn is None:
                    continue
                shell = getattr(drawn, detail)
                if len(shade) != len(shell.points):
                    continue
                drawn.shaded = True
                shell.surface[:, 3] = shade
                for batches in (self._batches, self._whole_batches):
                    batch = batches.get(self._key_of[name], {}).get(detail)
                    if batch is not None:
                        batch.set_openness(name, shade)

    # Folded parts ----------------------------------------------------------------------

    def part_in_place(self, name: str) -> DrawnPart:
        """Return the drawn arrays of a part as it lies in the whole body."""
        return self._in_place.get(name, self._drawn[name])

    def moved_parts(self) -> frozenset[str]:
        """Return the ids of parts that are drawn elsewhere than in the whole body."""
        return frozenset(self._in_place)

    def lay_limbs(self, on: bool) -> None:
        """Lay shoulder blades and arms as on the table, or as standing. Does not render."""
        if on:
            self.prepare_limbs()
        on = on and bool(self._limbs)
        if on != self.limbs_lie:
            self.limbs_lie = on
            self.move_parts(self._folded)

    def prepare_limbs(self) -> None:
        """Work out how the limbs lie, which takes a second or two once, before it is wanted."""
        if self._limbs is None and self._drawn:
            homes = {name: self.part_in_place(name) for name in self._drawn}
            from viewer.scene.table_limbs import Limbs

            self._limbs = Limbs(
                {name: home.moving.points for name, home in homes.items()},
                {name: home.part.kind for name, home in homes.items()},
            )
            if self._limbs:
                self._with_limbs({})

    def share_limbs(self, other: Scene) -> None:
        """Let the limbs lie as another scene of the same model has worked out."""
        self._limbs, self._lying = other._limbs, other._lying

    def standing_place(self, name: str, point: np.ndarray) -> np.ndarray:
        """Return the place in the standing body of a point that is seen on a part, (3,) mm."""
        return self._limbs.back(name, point) if self.limbs_lie else point

    def _with_limbs(self, folded: Mapping[str, Mapping[str, Shell]]) -> dict:
        """Return the shells of folded parts and of all that the limbs take along."""
        moved = {}
        for name in self._drawn:
            home = self.part_in_place(name)
            shells = folded.get(name, {})
            if not self._limbs.touches(name, home.still.points):
                if shells:
                    moved[name] = shells
                continue
            # What is not folded lies where it lay before: worked out once.
            if name not in self._lying:
                self._lying[name] = {
                    detail: _at(shell, self._limbs.moved(name, shell.points))
                    for detail in DETAILS
                    for shell in (getattr(home, detail),)
                }
            moved[name] = {
                **self._lying[name],
                **{
                    detail: _at(shell, self._limbs.moved(name, shell.points))
                    for detail, shell in shells.items()
                },
            }
        return moved

    def move_parts(self, moved: Mapping[str, Mapping[str, Shell]]) -> None:
        """Draw exactly these parts elsewhere, all others in their place. Does not render.

        The whole picture of a comparison stays as it is.

        Parameters
        ----------
        moved : mapping of part id to mapping of detail to Shell
            A shell may have other faces than the part's own (it is cut); it is then drawn
            anew, which takes some milliseconds once. A detail that is left out stays.
        """
        self._folded = moved
        self._marks_lie = not self._felt_marks
        if self.limbs_lie:
            moved = self._with_limbs(moved)
        touched: dict[int, Batch] = {}
        recut = set()
        back = {name: {} for name in self._in_place.keys() - moved.keys()}
        for name, shells in (*moved.items(), *back.items()):
            if name not in self._drawn:
                continue
            home = self._in_place.setdefault(name, self._drawn[name])
            now = self._drawn[name]
            if shells and all(getattr(now, detail) is shell for detail, shell in shells.items()):
                continue
            if name in back:
                shells = {detail: getattr(home, detail) for detail in DETAILS}
                drawn = self._in_place.pop(name)
            else:
                drawn = DrawnPart(
                    home.part,
                    shells.get("still", now.still),
                    shells.get("moving", now.moving),
                    home.shaded,
                )
            other = [d for d in shells if len(shells[d].points) != len(getattr(now, d).points)]
            if other and name not in back:
                # Both details are cut at once.
                fine = shells.get("still", shells[other[0]])
                drawn.still = shells.get("still", fine)
                drawn.moving = shells.get("moving", fine)
            self._drawn[name] = drawn
            key = self._key_of[name]
            if other:
                recut.add(key)
            else:
                for detail, shell in shells.items():
                    batch = self._batches[key][detail]
                    batch.move(name, shell.points, shell.normals)
                    batch.set_openness(name, shell.surface[:, 3])
                    touched[id(batch)] = batch
            if other or "still" in shells:
                self._boxes = None
            if self._target is not None:
                if other:
                    self._target = None
                elif "still" in shells:
                    self._target.move(name, drawn.still.points, drawn.still.faces)
        for batch in touched.values():
            batch.touch_shape()
        for key in recut:
            self._rebuild_batch(key)
        self._part_whole_picture()
        if touched or recut:
            self._outline.clear()
            self._outline_shown()
            for name in moved.keys() | back.keys():
                self._corners_of.pop(name, None)
            self._seen_by.clear()
            self._use_seen()

    def _part_whole_picture(self) -> None:
        """Give the whole picture batches of its own where the first one is folded."""
        compared = len(self._viewports) > 1
        wanted = {self._key_of[name] for name in self._folded if name in self._key_of}
        wanted = wanted if compared else set()
        if self.limbs_lie != self._whole_lies:
            # The limbs lie in both pictures: what was gathered for a standing body is no use.
            self._whole_lies = self.limbs_lie
            self._whole_target = None
            stale = set(self._whole_batches)
        else:
            stale = self._whole_batches.keys() - wanted
        for key in stale:
            del self._whole_batches[key]
        changed = stale | (wanted - self._whole_batches.keys())
        for key in wanted - self._whole_batches.keys():
            members = {name: self._whole_part(name) for name, k in self._key_of.items() if k == key}
            self._whole_batches[key] = {detail: Batch(members, detail) for detail in DETAILS}
            for name in members:
                self._painted.pop(name, None)
        if not (changed and compared):
            return
        second = self._viewports[1]
        for key in changed & self._batches.keys():
            for actors in second.actors.pop(key, {}).values():
                actors.remove()
            self._add_actors(second, key)
        self._order_actors()
        for key in changed & self._batches.keys():
            self._want(second, key)
            for viewport in reversed(self._viewports):
                self._paint(viewport.shown, self._batches[key]["still"].ids)

    def _whole_part(self, name: str) -> DrawnPart:
        """Return a part as the whole picture draws it: not folded, its limb as it lies."""
        home = self.part_in_place(name)
        if self.limbs_lie and name in self._lying:
            lying = self._lying[name]
            return DrawnPart(home.part, lying["still"], lying["moving"], home.shaded)
        return home

    def _batch(self, viewport: Viewport, key) -> dict[str, Batch]:
        whole = len(self._viewports) > 1 and viewport is self._viewports[1]
        return (self._whole_batches.get(key) if whole else None) or self._batches[key]

    def _outline_shown(self) -> None:
        lit = [name for name, look in self.shown().items() if look.highlighted]
        self._outline.show({name: self._drawn[name].moving for name in lit})

    def _rebuild_batch(self, key) -> None:
        members = {name: self._drawn[name] for name, k in self._key_of.items() if k == key}
        for viewport in self._every_viewport():
            for actors in viewport.actors.pop(key, {}).values():
                actors.remove()
        self._batches.pop(key, None)
        self._whole_batches.pop(key, None)
        self._whole_target = None
        if not members:
            return
        self._batches[key] = {detail: Batch(members, detail) for detail in DETAILS}
        for name in members:
            self._painted.pop(name, None)
        for viewport in self._every_viewport():
            self._add_actors(viewport, key)
        self._order_actors()
        for viewport in self._every_viewport():
            self._want(viewport, key)
            self._paint(viewport.shown, members)

    def _add_actors(self, viewport: Viewport, key) -> None:
        viewport.actors[key] = {
            detail: BatchActors(batch, key, detail, viewport.renderer, self.pattern)
            for detail, batch in self._batch(viewport, key).items()
        }

    def _order_actors(self) -> None:
        """Draw shallow strata first, so that what they cover costs no shading."""
        for viewport in self._every_viewport():
            for key in sorted(viewport.actors):
                for actors in viewport.actors[key].values():
                    for actor in actors.actors.values():
                        viewport.renderer.RemoveActor(actor)
                        viewport.renderer.AddActor(actor)

    # What is shown ----------------------------------------------------------------------

    def apply(self, shown: Mapping[str, PartLook]) -> None:
        """Show exactly these parts so; absent ids are hidden. Does not render."""
        self._apply(self._viewports[0], shown)

    def apply_whole(self, shown: Mapping[str, PartLook]) -> None:
        """Say what the comparison picture shows."""
        if len(self._viewports) > 1:
            self._apply(self._viewports[1], shown)

    def shown(self) -> Mapping[str, PartLook]:
        """Return what is shown now."""
        return self._viewports[0].shown

    def _apply(self, viewport: Viewport, shown: Mapping[str, PartLook]) -> None:
        wanted = {}
        for name, look in shown.items():
            if not 0.0 < look.opacity <= 1.0:
                raise ValueError(
                    f"opacity of {name} must lie in (0, 1], got {look.opacity}; leave it out to "
                    "hide it"
                )
            if name in self._drawn:
                wanted[name] = look
        before = viewport.shown
        viewport.shown = wanted
        viewport.peels = any(
            look.opacity < SOLID_FROM and not is_film(self._drawn[name].part)
            for name, look in wanted.items()
        )
        touched = {
            self._key_of[name] for name in before.keys() ^ wanted.keys() if name in self._key_of
        }
        repaint = []
        for name, look in wanted.items():
            old = before.get(name)
            if old is None or old != look:
                repaint.append(name)
                if old is not None and (old.opacity < SOLID_FROM) != (look.opacity < SOLID_FROM):
                    touched.add(self._key_of[name])
        for key in touched:
            self._want(viewport, key)
        self._paint(wanted, repaint)
        if viewport is self._viewports[0]:
            self._marks_lie = not self._felt_marks
            self._outline_shown()
            self._paint_caps()
            self._use_seen()

    # What can be seen from outside ------------------------------------------------------

    def _solids(self) -> frozenset[str]:
        shown = self._viewports[0].shown
        return frozenset(name for name, look in shown.items() if look.opacity >= SOLID_FROM)

    def to_search(self) -> frozenset[str] | None:
        """Return the solid parts of the present picture, None when it is known what is seen.

        While a section is open, everything is drawn; so is all of a second picture.
        """
        solids = self._solids()
        return None if solids in self._seen_by or self._caps.on else solids

    def seen_search(self) -> SeenSearch:
        """Return a search for what can be seen of the present picture."""
        shells = {name: self._drawn[name].moving for name in sorted(self._solids())}
        return SeenSearch({name: (s.points, s.faces) for name, s in shells.items()})

    def take_seen(self, search: SeenSearch) -> None:
        """Leave out of the moving picture what a finished search did not see."""
        if len(self._seen_by) > 64:
            self._seen_by.clear()
        self._seen_by[frozenset(search.names)] = frozenset(search.seen)
        self._use_seen()

    def _use_seen(self) -> None:
        seen = None if self._caps.on else self._seen_by.get(self._solids())
        if seen == self._seen:
            return
        self._seen = seen
        for key in self._batches:
            self._want(self._viewports[0], key)

    def _want(self, viewport: Viewport, key) -> None:
        solid, see_through = [], []
        cut_off = self._cut_off if viewport is self._viewports[0] else frozenset()
        for name in self._batches[key]["still"].ids:
            if name in cut_off:
                continue
            look = viewport.shown.get(name)
            if look is not None:
                (solid if look.opacity >= SOLID_FROM else see_through).append(name)
        seen = self._seen if viewport is self._viewports[0] else None
        for detail, actors in viewport.actors[key].items():
            drawn = solid if seen is None or detail == "still" else [n for n in solid if n in seen]
            actors.want(tuple(drawn), tuple(see_through))

    def _paint(self, shown: Mapping[str, PartLook], names: Iterable[str]) -> None:
        touched = {}
        for name in names:
            look = shown.get(name)
            if look is None:
                continue
            state = (self.look, look.highlighted, look.hovered, look.opacity, look.covering)
            if self._painted.get(name) == state:
                continue
            self._painted[name] = state
            key = self._key_of[name]
            for batches in (self._batches[key], self._whole_batches.get(key, {})):
                for batch in batches.values():
                    batch.paint(name, *state)
                    touched[id(batch)] = batch
        for batch in touched.values():
            batch.touch()

    def _every_viewport(self) -> list[Viewport]:
        return self._viewports + ([self._table.viewport] if self._table is not None else [])

    def set_look(self, look: str) -> None:
        """Choose the colours: "by_kind", "as_fixed" or "high_contrast"."""
        if look not in looks.LOOKS:
            raise ValueError(f"look must be one of {', '.join(looks.LOOKS)}, got {look!r}")
        self.look = look
        for viewport in reversed(self._viewports):
            self._paint(viewport.shown, viewport.shown)
        self._paint_caps()

    def set_theme(self, theme: str) -> None:
        """Choose the background: "light" or "dark"."""
        if theme not in looks.BACKGROUNDS:
            raise ValueError(f"theme must be one of {', '.join(THEMES)}, got {theme!r}")
        self.theme = theme
        for viewport in self._viewports:
            viewport.renderer.SetBackground(*looks.BACKGROUNDS[theme])
        if self._table is not None:
            self._table.set_theme(theme)
        self._corners_shown.forget()

    def set_font_scale(self, scale: float) -> None:
        """Set the size of all writing, 1 to 2."""
        if not 0.5 <= scale <= 12.0:
            raise ValueError(f"font scale must lie in 0.5..12, got {scale}")
        self.font_scale = float(scale)
        self._corners_shown.forget()

    @property
    def font_px(self) -> int:
        """Return the letter size in picture pixels."""
        return round(overlay.BASE_FONT_PX * self.font_scale * self.pixel_ratio)

    @property
    def small_px(self) -> int:
        """Return the letter size of marker, scale bar and pose in picture pixels.

        Where letters are very large (a hall) these take four fifths: 16 in place of 20 minutes.
        In a low picture they leave the model its room.
        """
        wanted = self.font_px if self.font_px <= 30 else round(0.8 * self.font_px)
        return max(min(wanted, round(self.size()[1] / 14)), 12)

    def set_compare(self, on: bool) -> None:
        """Show two pictures side by side under one camera: as dissected, and whole."""
        if on == (len(self._viewports) > 1):
            return
        if on:
            self._viewports[0].renderer.SetViewport(0, 0, 0.5, 1)
            self._front.SetViewport(0, 0, 0.5, 1)
            self._front_second = _renderer_before(self.window, 1, self._front)
            self._front_second.SetViewport(0.5, 0, 1, 1)
            second = Viewport(self.window, (0.5, 0, 1, 1))
            self._viewports.append(second)
            for key in self._batches:
                self._add_actors(second, key)
            self._order_actors()
            self._part_whole_picture()
        else:
            second = self._viewports.pop()
            for pair in second.actors.values():
                for actors in pair.values():
                    actors.remove()
            self._whole_batches.clear()
            self._whole_target = None
            self.window.RemoveRenderer(second.renderer)
            self._front_second.RemoveAllViewProps()
            self.window.RemoveRenderer(self._front_second)
            self._front_second = None
            self._viewports[0].renderer.SetViewport(0, 0, 1, 1)
            self._front.SetViewport(0, 0, 1, 1)
            self._label_layers[1].hide()
        self.set_theme(self.theme)

    # Section ----------------------------------------------------------------------------

    def set_section(self, outlines=None, near_half: bool = False, strips=None) -> None:
        """Cut the first picture flat, or not at all with None. Does not render.

        Parameters
        ----------
        outlines : meshes.questions.section.Outlines or None
            The cut of the parts that are to show on the cut face.
        near_half : bool
            Keep the half towards the reader of the flat picture, not the half beyond.
        strips : (n, 4) float, optional
            Loose tissue between the parts (``meshes.questions.loose_tissue``).
        """
        self._caps.show(outlines, near_half, strips)
        self._marks_lie = not self._felt_marks
        self._use_seen()
        self._leave_out_what_is_cut_off()
        self._paint_caps()

    def set_section_spots(self, spots: Mapping[str, tuple[np.ndarray, float]]) -> None:
        """Say where each part on the cut face can be labelled. Does not render.

        Parameters
        ----------
        spots : mapping of part id to ((3,) place in mm, area in mm²)
            A new cut forgets them.
        """
        self._caps.spots = {
            name: (np.asarray(at, float), area) for name, (at, area) in spots.items()
        }

    def set_section_hover(self, part_id: str) -> None:
        """Tint one part on the cut face ("" for none). Does not render."""
        if part_id != self._cap_hover:
            self._cap_hover = part_id
            self._paint_caps()

    def show_section_grip(self, on: bool) -> None:
        """Show or hide the frame and the grip by which the plane is dragged."""
        self._caps.with_grip = on

    @property
    def sectioned(self) -> bool:
        """True while the model is cut flat."""
        return self._caps.on

    def section_grip_at(self, x: float, y: float) -> bool:
        """Return whether a pixel lies on the grip of the plane."""
        if self._caps.grip is None:
            return False
        (pixel,), _ = self.pixels_of(self._caps.grip[None])
        return bool(np.hypot(*(pixel - (x, y))) <= GRIP_PX * self.pixel_ratio)

    def section_drag_mm(self, dx_px: float, dy_px: float) -> float:
        """Return how far a drag in the picture moves the plane along its normal, mm.

        Where one looks along the normal, dragging upward brings the plane nearer.
        """
        if not self._caps.on:
            return 0.0
        right, up, back = self.pose.axes()
        normal = self._caps.outlines.plane.normal
        mm_per_px = 2.0 * self.pose.scale_mm / self.size()[1]
        across = np.array([normal @ right, -(normal @ up)])
        length = float(np.hypot(*across))
        if length < 0.25:
            return float(-dy_px * mm_per_px * (1.0 if normal @ back > 0 else -1.0))
        return float((across @ (dx_px, dy_px)) * mm_per_px / length**2)

    def _leave_out_what_is_cut_off(self) -> None:
        """Drop parts that lie wholly in the half that is taken away: clipping them costs as much
        as drawing them.
        """
        gone: frozenset[str] = frozenset()
        if self._caps.on:
            if self._boxes is None:
                self._boxes = np.array([d.bounds for d in self._drawn.values()]).reshape(-1, 2, 3)
            gone = frozenset(np.array(list(self._drawn), object)[self._caps.beyond(self._boxes)])
        changed, self._cut_off = gone ^ self._cut_off, gone
        viewport = self._viewports[0]
        for key in {self._key_of[name] for name in changed if name in self._key_of}:
            self._want(viewport, key)

    def _paint_caps(self) -> None:
        if not self._caps.on:
            return
        shown = self._viewports[0].shown
        self._caps.paint(
            {name: drawn.part for name, drawn in self._drawn.items()},
            self.look,
            [name for name, look in shown.items() if look.highlighted],
            [name for name, look in shown.items() if look.hovered] + [self._cap_hover],
        )

    def _clip(self) -> None:
        """Clip all that the first picture draws; new batches come unclipped."""
        mappers = [
            actor.GetMapper()
            for pair in self._viewports[0].actors.values()
            for actors in pair.values()
            for actor in actors.actors.values()
        ]
        self._caps.clip([*mappers, self._outline.actor.GetMapper()])

    def _first_hit(self, origin, direction, shown):
        """Return what a sight line of the first picture meets, with the section counted."""
        return self._caps.first_hit(
            np.asarray(origin, float),
            np.asarray(direction, float),
            lambda start: self.target().first_hit(start, direction, shown),
        )

    def set_table(self, table: str) -> None:
        """Show the donor lying on a table, seen from a side of it; "" shows it upright.

        The eye stays where it is: ``stand`` and ``set_view`` move it.
        """
        if table and table not in STANDS:
            raise ValueError(f"table must be one of {', '.join(STANDS)}, got {table!r}")
        self.table = table
        self._corners_shown.forget()
        if not table:
            self.lay_limbs(False)
            if self._table is not None:
                view, self._table = self._table, None
                for pair in view.viewport.actors.values():
                    for actors in pair.values():
                        actors.remove()
                view.remove()
                self.window.RemoveRenderer(view.viewport.renderer)
            return
        if self._table is None:
            self._table = TableView(
                self.window,
                Viewport(self.window, (0.7, 0.5, 1, 1)),
                self._viewports[0].renderer,
                self._front,
            )
            for key in self._batches:
                self._add_actors(self._table.viewport, key)
            self._order_actors()
        self._table.lay(self._points(self._drawn), self.theme)

    def stand(self) -> None:
        """Go to the place at the table that ``set_table`` named, the whole donor in view."""
        self._go(self.pose_of(table=self.table))

    def pose_of(
        self, view: str = "posterior", camera: Mapping | None = None, table: str = ""
    ) -> Pose:
        """Return the pose of a camera, or of a place at the table, or of a fixed view."""
        if camera is not None:
            return cameras.pose_from_dict(camera)
        if table:
            points = self._points(self._drawn)
            pose = table_pose(STANDS[table], HEIGHT_DEG, self.pose)
            return with_room_above(cameras.framed(pose, points, self._aspect(), 1.12), points)
        pose = cameras.view_pose(view, self.pose)
        return cameras.framed(pose, self._points(self.shown()), self._aspect())

    def set_spot(self, point: np.ndarray | None) -> None:
        """Mark one point, (3,) mm, in the table picture and in the upright one."""
        if self._table is not None:
            if point is not None and self.limbs_lie:
                point = point + self._limbs.shift(point)[0]
            self._table.set_spot(point)

    # Camera -----------------------------------------------------------------------------

    def size(self) -> tuple[int, int]:
        """Return (width, height) of the window in pixels."""
        width, height = self.window.GetSize()
        return max(int(width), 1), max(int(height), 1)

    def _view_size(self) -> tuple[int, int]:
        width, height = self.size()
        return (width // len(self._viewports), height)

    def _aspect(self) -> float:
        width, height = self._view_size()
        return width / height

    def set_view(self, name: str) -> None:
        """Turn to a fixed view that frames everything shown."""
        self._go(self.pose_of(name))

    def frame_view(
        self, name: str, aspect: float, picture_size: tuple[int, int], margin: float = 1.08
    ) -> None:
        """Turn to a fixed view at once, leaving room beside the body for labels.

        Parameters
        ----------
        aspect : float
            Width over height of the room that the body may take.
        picture_size : (width, height)
            Of the whole picture; the room is as high as the picture less title lines.
        """
        pose = cameras.view_pose(name, self.pose)
        pose = cameras.framed(pose, self._points(self.shown()), aspect, margin)
        lines = 4.6 * self.font_px
        share = max((picture_size[1] - lines) / picture_size[1], 0.3)
        self.pose = replace(pose, scale_mm=pose.scale_mm / share)

    def fly_to(self, ids: Iterable[str], *, keep_direction: bool = True) -> None:
        """Frame these parts; otherwise also turn to the fixed view nearest to their outside."""
        ids = [name for name in ids if name in self._drawn]
        points = self._points(ids)
        if not len(points):
            return
        pose = self.pose
        if not keep_direction:
            outward = points.mean(axis=0) - self._points(self._drawn).mean(axis=0)
            outward[2] = 0.0
            azimuth = float(np.degrees(np.arctan2(outward[0], abs(outward[1]) + 60.0)))
            pose = cameras.view_pose(cameras.nearest_view(azimuth, 0.0), pose)
        self._go(cameras.framed(pose, points, self._aspect(), margin=1.6))

    def _go(self, pose: Pose) -> None:
        if self.animate and self.on_flight is not None:
            self.on_flight(Flight(self.pose, pose))
        else:
            self.pose = pose

    def _points(self, ids: Iterable[str]) -> np.ndarray:
        boxes = [self._corners(name) for name in ids if name in self._drawn]
        return np.concatenate(boxes) if boxes else np.zeros((0, 3))

    def _corners(self, name: str) -> np.ndarray:
        if name not in self._corners_of:
            self._corners_of[name] = _corners(self._drawn[name].bounds)
        return self._corners_of[name]

    def _forget_places(self) -> None:
        """Drop what was worked out from where the parts lie."""
        self._target = self._whole_target = self._boxes = self._felt = None
        self._marks_lie = not self._felt_marks
        self._corners_of.clear()
        self._seen_by.clear()
        self._seen = None

    def orbit(self, azimuth_deg: float, elevation_deg: float) -> None:
        """Turn the eye round the body, or walk round the table; gently limited unless free."""
        if self.table:
            self.pose = walked(self.pose, azimuth_deg, elevation_deg, self.table, self.limited)
            return
        self.pose = cameras.orbited(self.pose, azimuth_deg, elevation_deg, self.limited)

    def pan(self, dx_px: float, dy_px: float) -> None:
        """Shift the picture by pixels (y down)."""
        self.pose = cameras.panned(self.pose, dx_px, dy_px, self.size()[1])

    def zoom(self, factor: float, at: tuple[float, float] | None = None) -> None:
        """Enlarge by a factor, keeping the point under a pixel in its place."""
        before = self.pose
        self.pose = cameras.zoomed(self.pose, factor)
        if at is not None:
            width, height = self._view_size()
            away = at[0] % width - width / 2, at[1] - height / 2
            share = before.scale_mm / self.pose.scale_mm
            self.pan(away[0] * (1 - share), away[1] * (1 - share))

    def set_orbit(self, mode: str) -> None:
        """Choose "limited" (about the last fixed view) or "free" turning."""
        if mode not in ("limited", "free"):
            raise ValueError(f"orbit must be limited or free, got {mode!r}")
        self.limited = mode == "limited"
        if self.limited:
            view = cameras.nearest_view(self.pose.azimuth_deg, self.pose.elevation_deg)
            self.pose = replace(self.pose, view=view)

    def camera(self) -> dict:
        """Return the pose as JSON values."""
        return self.pose.to_dict()

    def set_camera(self, values: Mapping) -> None:
        """Take a pose from ``camera``."""
        self.pose = cameras.pose_from_dict(values)

    def markers_text(self) -> str:
        """Return in words which way the subject lies in the picture."""
        return cameras.markers_sentence(self.pose)

    def _place_cameras(self) -> None:
        right, up, back = self.pose.axes()
        focus = np.asarray(self.pose.focus)
        near, far = self._clipping(back, focus)
        for renderer in [v.renderer for v in self._viewports] + self._fronts():
            eye = renderer.GetActiveCamera()
            eye.ParallelProjectionOn()
            eye.SetFocalPoint(*focus)
            eye.SetPosition(*(focus + cameras.EYE_DISTANCE_MM * back))
            eye.SetViewUp(*up)
            eye.SetParallelScale(self.pose.scale_mm)
            eye.SetClippingRange(near, far)
        if self._table is not None:
            self._table.place(self.size())
            if self._table.viewport.shown != self._viewports[0].shown:
                self._apply(self._table.viewport, self._viewports[0].shown)

    def _clipping(self, back: np.ndarray, focus: np.ndarray) -> tuple[float, float]:
        points = self._points(self._drawn)
        if not len(points):
            return 1.0, 2 * cameras.EYE_DISTANCE_MM
        depth = cameras.EYE_DISTANCE_MM - (points - focus) @ back
        return max(float(depth.min()) - 20.0, 1.0), float(depth.max()) + 20.0

    # Pictures ---------------------------------------------------------------------------

    def render(self, moving: bool = False, full_look: bool = False) -> None:
        """Draw once: coarse and without labels while moving, in full when still.

        Parameters
        ----------
        moving : bool
        full_look : bool
            While moving: draw as at rest (for fast cards), but without labels, and what is
            seen through as a share of its pixels.
        """
        if self._finalized:
            return
        self._corners_shown.show(self._corner_words(self.size()), self._table)
        if not moving:
            self._lay_marks()
        if not moving and self._has_texts():
            self._write_labels()
        else:
            for layer in self._label_layers:
                layer.hide()
        self._place_tag()
        began = time.perf_counter()
        self._draw_model(moving, full_look)
        self.window.Render()
        # A card draws on after the call returns.
        self.window.WaitForCompletion()
        self.last_draw_ms = 1000.0 * (time.perf_counter() - began)

    def _place_tag(self) -> None:
        if self._tag.point is not None:
            pixel, hit = self.sight_of(self._tag.point)
            self._tag.place(pixel, self.font_px, self.size()[1], hit is None)

    def _draw_model(self, moving: bool, full_look: bool = False) -> None:
        self._place_cameras()
        self._clip()
        coarse = moving and not full_look
        width, height = self.size()
        smooth = not moving or (full_look and width * height <= SMOOTHED_IN_MOTION_PX)
        for viewport in self._every_viewport():
            for pair in viewport.actors.values():
                # Peeling costs several pictures: what is seen through is dotted in any motion.
                pair["moving"].draw(coarse)
                pair["still"].draw(not coarse, dotted=moving)
            viewport.renderer.SetUseFXAA(smooth)
            viewport.renderer.SetUseDepthPeeling(viewport.peels and not moving)
            # Blending free of order draws into two float pictures of its own and costs as
            # much as the model; one layer of film needs no order, so a moving one goes without.
            viewport.renderer.SetUseOIT(not moving)
        near, far = self._viewports[0].renderer.GetActiveCamera().GetClippingRange()
        self._outline.step(
            self._view_size(), self.pixel_ratio, coarse=coarse, depth_mm=max(far - near, 1.0)
        )
        for renderer in self._renderers_before():
            # Even an empty layer clears the depths of the whole picture.
            renderer.SetDraw(any(thing.GetVisibility() for thing in renderer.GetViewProps()))

    def _fronts(self) -> list[vtkRenderer]:
        """Return the renderers of lines and spots, one a picture."""
        return [self._front] + ([self._front_second] if self._front_second else [])

    def _renderers_before(self) -> list[vtkRenderer]:
        """Return the renderers of what lies before the model."""
        return [*self._fronts(), self._written]

    def _has_texts(self) -> bool:
        return self._labels.wanted() or self._marks.has_texts()

    def _write_labels(self) -> None:
        width, height = self._view_size()
        for i, layer in enumerate(self._label_layers[: len(self._viewports)]):
            labels = self._laid_out_labels(self._sight((width, height), whole=i == 1))
            picture = overlay.labels_picture((width, height), labels, self.font_px, self.theme)
            layer.show(picture, i * width, 0)

    def _corner_words(self, size: tuple[int, int]) -> CornerWords:
        return CornerWords(
            size, self.pose, self.small_px, self.theme, self.pose_lines, self.table, self.directions
        )

    def screenshot(
        self, size: tuple[int, int] | None = None, supersample: int = 1, overlays: bool = True
    ) -> np.ndarray:
        """Return the still picture, (h, w, 3) uint8.

        A size other than the window's is drawn by a second scene in memory, so
        that the window on the screen is left alone.

        Parameters
        ----------
        supersample : int
            Draw so many times larger a side and average down.
        overlays : bool
            Labels, scale bar and side marker.
        """
        size = tuple(int(s) for s in (size or self.size()))
        if min(size) < 16 or max(size) > 16384:
            raise ValueError(f"picture sides must lie in 16..16384 px, got {size[0]}x{size[1]}")
        if not self.offscreen and (size != self.size() or supersample > 1):
            twin = self.twin(size)
            try:
                return twin.screenshot(size, supersample, overlays)
            finally:
                twin.finalize()
        before = self.size()
        large = (size[0] * supersample, size[1] * supersample)
        if large != before:
            self.window.SetSize(*large)
        self._lay_marks()
        self._corners_shown.hide()
        for layer in (*self._label_layers, self._tag):
            layer.hide()
        try:
            depths = []
            if overlays and self._has_texts():
                depths = [self._depth_mm(second=i == 1) for i in range(len(self._viewports))]
            self._draw_model(moving=False)
            self.window.Render()
            picture = self.grab()
        finally:
            if large != before:
                self.window.SetSize(*before)
        if supersample > 1:
            picture = _averaged(picture, supersample)
            depths = [depth[::supersample, ::supersample] for depth in depths]
        if not overlays:
            return picture
        view = (size[0] // len(self._viewports), size[1])
        for i, depth in enumerate(depths):
            labels = self._laid_out_labels(self._sight(view, depth, whole=i == 1))
            layer = overlay.labels_picture(view, labels, self.font_px, self.theme)
            picture = overlay.blended(picture, layer, i * view[0], 0)
        if self._tag.point is not None:
            pixel, hit = self.sight_of(self._tag.point)
            picture = self._tag.laid_over(picture, pixel, self.font_px, hit is None)
        return with_corners(picture, self._corner_words(size), self._table)

    def twin(self, size: tuple[int, int]) -> Scene:
        """Return an offscreen scene that shows the same (arrays are shared)."""
        self._lay_marks()
        twin = Scene(size=size)
        folded = self._folded if len(self._viewports) > 1 else {}
        twin.add_parts(
            self._whole_part(name) if name in folded else drawn
            for name, drawn in self._drawn.items()
        )
        if folded:
            # Folded only where the whole picture stands beside it: each keeps its own shells.
            twin.move_parts(
                {
                    name: {d: getattr(self._drawn[name], d) for d in DETAILS}
                    for name in folded
                    if name in self._drawn
                }
            )
        if len(self._viewports) > 1:
            twin.set_compare(True)
            twin.apply_whole(self._viewports[1].shown)
        twin.set_table(self.table)
        twin.pose_lines = self.pose_lines
        twin.set_theme(self.theme)
        twin.font_scale, twin.pixel_ratio = self.font_scale, self.pixel_ratio
        twin.look = self.look
        twin.apply(self.shown())
        twin.pose, twin.limited = self.pose, self.limited
        self._labels.copy_to(twin._labels)
        self._marks.copy_to(twin._marks)
        twin.set_tag(self._tag.point)
        if self._caps.on:
            twin._caps.with_grip, twin._cap_hover = False, self._cap_hover
            twin.set_section(self._caps.outlines, self._caps.near_half, self._caps.strips)
            twin.set_section_spots(self._caps.spots)
        return twin

    def grab(self) -> np.ndarray:
        """Return the pixels that were drawn last, labels and marks included, (h, w, 3) uint8."""
        width, height = self.size()
        pixels = vtkUnsignedCharArray()
        self.window.GetPixelData(0, 0, width - 1, height - 1, 0, pixels, 0)
        return vtk_to_numpy(pixels).reshape(height, width, 3)[::-1].copy()

    def _depth_mm(self, second: bool = False) -> np.ndarray:
        """Return how far from the eye's plane each pixel of one picture is, (h, w) mm.

        Drawn coarse and without what lies on top, whose layer would clear the depths.
        """
        before = self._renderers_before()
        try:
            self._draw_model(moving=True)
            for renderer in before:
                renderer.DrawOff()
            for viewport in self._viewports:
                viewport.renderer.SetUseFXAA(False)
            self.window.Render()
            width, height = self._view_size()
            left = width if second else 0
            values = vtkFloatArray()
            self.window.GetZbufferData(left, 0, left + width - 1, height - 1, values)
        finally:
            for renderer in before:
                renderer.DrawOn()
        share = vtk_to_numpy(values).reshape(height, width)[::-1]
        near, far = self._viewports[0].renderer.GetActiveCamera().GetClippingRange()
        return np.where(share >= 1.0, np.inf, near + share * (far - near))

    # Picking and projection -------------------------------------------------------------

    def ray(self, x: float, y: float) -> tuple[np.ndarray, np.ndarray]:
        """Return (origin, unit direction) of the sight line through a pixel."""
        width, height = self._view_size()
        return cameras.sight_line(self.pose, x % max(width, 1), y, (width, height))

    def pick(self, x: float, y: float, without: Collection[str] = ()) -> PickHit | None:
        """Return what is shown at a pixel, or None; ``without`` are ids to be looked through."""
        width, _ = self._view_size()
        second = len(self._viewports) > 1 and x >= width
        # A film is looked through, so that a click takes the muscle under it.
        shown = [
            name
            for name, look in self._viewports[1 if second else 0].shown.items()
            if name not in without
            and (look.opacity >= SOLID_FROM or not is_film(self._drawn[name].part))
        ]
        if self._table is not None and self._table.inside(x, y, self.size()):
            left, top, *small = self._table.box(self.size())
            pose = self._table.pose_at(self.size())
            line = cameras.sight_line(pose, x - left, y - top, tuple(small))
            cast = self.target().first_hit
        else:
            line = self.ray(x, y)
            cast = self._whole_hit if second else self._first_hit
        from viewer.scene.raycast import seen_at_midline

        hit = seen_at_midline(cast, *line, shown)
        if hit is None:
            return None
        name, point, normal = hit
        return PickHit(name, self.standing_place(name, point), normal)

    def target(self):
        """Return the ray target of all parts, made when first asked for."""
        if self._target is None:
            from viewer.scene.raycast import RayTarget

            self._target = RayTarget(
                {name: (d.still.points, d.still.faces) for name, d in self._drawn.items()}
            )
        return self._target

    def _whole_hit(self, origin, direction, shown):
        """Return what a sight line of the whole picture of a comparison meets."""
        if not self._whole_batches:
            return self.target().first_hit(origin, direction, shown)
        if self._whole_target is None:
            from viewer.scene.raycast import RayTarget

            shells = {name: self._whole_part(name).still for name in self._drawn}
            self._whole_target = RayTarget({n: (s.points, s.faces) for n, s in shells.items()})
        return self._whole_target.first_hit(origin, direction, shown)

    def project(self, points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Return pixels (n, 2) and whether each point is not hidden (by a ray), (n,) bool."""
        pixels, _ = self.pixels_of(points)
        visible = np.zeros(len(pixels), bool)
        width, height = self._view_size()
        shown = self.shown()
        for i, (x, y) in enumerate(pixels):
            if 0 <= x < width and 0 <= y < height:
                origin, direction = self.ray(x, y)
                hit = self._first_hit(origin, direction, shown)
                distance = float((np.asarray(points[i]) - origin) @ direction)
                visible[i] = hit is None or (
                    float((hit[1] - origin) @ direction) >= distance - anchor_finding.DEPTH_SLACK_MM
                )
        return pixels, visible

    def sight_of(self, point) -> tuple[np.ndarray, PickHit | None]:
        """Return the pixel (2,) of a place, (3,) mm, and what a click there picks.

        None in place of the hit when the place is outside the picture or something solid
        lies before it: films are looked through, as a click does.
        """
        point = np.asarray(point, float)
        (pixel,), _ = self.pixels_of(point[None])
        width, height = self._view_size()
        if not (0 <= pixel[0] < width and 0 <= pixel[1] < height):
            return pixel, None
        hit = self.pick(*pixel)
        if hit is None:
            return pixel, None
        before = float((hit.point - point) @ self.pose.axes()[2])
        return pixel, hit if before <= anchor_finding.DEPTH_SLACK_MM else None

    def pixels_of(self, points) -> tuple[np.ndarray, np.ndarray]:
        """Return ((n, 2) pixels, (n,) distance from the eye's plane, mm) of points (n, 3) mm."""
        return cameras.projected(self.pose, points, self._view_size())

    # Labels and marks -------------------------------------------------------------------

    def set_labels(
        self,
        on: bool,
        density: float = 0.5,
        blank: bool = False,
        names: Mapping[str, str] | None = None,
        first: Iterable[str] = (),
    ) -> None:
        """Switch labels on.

        Parameters
        ----------
        density : float
            0 none to 1 as many as fit.
        blank : bool
            Numbers in place of names.
        names : mapping of part id to text, optional
            None keeps the present ones.
        first : iterable of part id
            Parts to be labelled before others of their size.
        """
        self._labels.on = on
        self._labels.density = float(density)
        self._labels.blank = bool(blank)
        self._labels.first = frozenset(first)
        if names is not None:
            self._labels.names = dict(names)

    @property
    def most_labels(self) -> int:
        """Return how many labels a picture bears at most, 0 for no limit."""
        return self._labels.most

    @most_labels.setter
    def most_labels(self, most: int) -> None:
        self._labels.most = int(most)

    def labels(self) -> list[Label]:
        """Return the labels of the picture drawn last, in reading order."""
        return list(self._labels.laid_out)

    def _sight(
        self, size: tuple[int, int], depth: np.ndarray | None = None, whole: bool = False
    ) -> Sight:
        """Return one picture as it is drawn; its depths are drawn where they are not given."""
        viewport = self._viewports[1 if whole else 0]
        solid = [name for name, look in viewport.shown.items() if look.opacity >= SOLID_FROM]
        return Sight(
            self.pose,
            size,
            self._depth_mm(second=whole) if depth is None else depth,
            {
                name: self._whole_part(name).moving.points if whole else self._kept_points(name)
                for name in solid
            },
            {name: self.part_in_place(name).area for name in solid},
            self._whole_hit if whole else self._first_hit,
            whole,
        )

    def _cap_anchors(self, sight: Sight, names: Mapping[str, str]) -> list[Anchor]:
        """Return the anchors on the cut face; the whole picture has none."""
        caps = self._caps
        if not caps.on or sight.whole:
            return []
        return cap_anchors(caps.spots, caps.towards, names, sight, self.font_px, self.shown())

    def _laid_out_labels(self, sight: Sight) -> list[Label]:
        laid_out = self._labels.lay_out(
            sight,
            self.font_px,
            notes=self._marks.notes(),
            landmarks=self._marks.landmarks,
            cap=self._cap_anchors(sight, self._labels.names) if self._labels.on else (),
            top_px=self._table.box(sight.size)[3] if self._table is not None else 0,
            bottom_px=overlay.marker_top(self.small_px) + EDGE_PX,
        )
        if not sight.whole:
            self._labels.laid_out = laid_out
        return laid_out

    def seen_anchors(
        self, names: Mapping[str, str], first: Iterable[str] = (), inset_px: float = 4.0
    ) -> list[Anchor]:
        """Return where leaders to the seen parts would end, for whoever writes the labels.

        Parameters
        ----------
        names : mapping of part id to text
            Only these are looked for; of twins the better seen one is given.
        first : iterable of part id
            Given before others of their size.
        inset_px : float
            Distance kept from the edge of the picture.

        Returns
        -------
        list of Anchor
            Pixels of a picture of the scene's own size.
        """
        sight = self._sight(self._view_size())
        cap = self._cap_anchors(sight, names)
        found = seen_parts(sight, names, frozenset(first), self.font_px, cap)
        return anchor_finding.spread_out(found, sight.size, inset_px)

    def _kept_points(self, name: str) -> np.ndarray:
        points = self._drawn[name].moving.points
        return points[self._caps.kept(points)] if self._caps.on else points

    def set_pins(self, pins: Sequence[tuple[np.ndarray, str]]) -> None:
        """Show notes stuck to points of the model."""
        self._marks.set_pins(pins)

    def set_tag(self, point=None) -> None:
        """Put the flag of a tag test on a place, (3,) mm; None takes it away."""
        self._tag.set_point(point)

    def set_measure(self, points=(), path=None, text: str = "") -> None:
        """Show a measured line: its ends (k, 3), an optional way (m, 3), and the figure."""
        self._marks.set_measure(points, path, text)

    def set_cut_lines(self, points=(), path=None, planned=(), near=()) -> None:
        """Show a rehearsed cut.

        Parameters
        ----------
        points : (k, 3) float
            Where the reader clicked, mm.
        path : (n, 3) float, optional
            The way over the layer through them.
        planned : sequence of (n, 3) float
            The plan's lines.
        near : (m, 3) float
            Places of what must stay that the cut comes near.
        """
        self._marks.set_cut(points, path, planned, near)

    def set_surface_marks(self, marks_: Sequence[tuple[str, np.ndarray]], on: bool = True) -> None:
        """Draw named points or curves of bones, (3,) or (k, 3) mm, on the outermost surface shown.

        They are laid anew when something else is shown, before the resting picture.
        """
        self._felt_marks = list(marks_) if on else []
        self._marks.set_landmarks([])
        self._marks_lie = not self._felt_marks

    def surface_marks(self) -> list[tuple[str, np.ndarray]]:
        """Return the surface marks as they lie now: name, (3,) or (k, 3) mm."""
        self._lay_marks()
        return list(self._marks.landmarks)

    def _lay_marks(self) -> None:
        """Lay the surface marks where the finger would be."""
        if self._marks_lie:
            return
        from viewer.scene.raycast import seen_at_midline

        self._marks_lie = True
        if self._felt is None:
            skins = [n for n, d in self._drawn.items() if d.part.kind == "skin"]
            if not skins:
                self._marks.set_landmarks(self._felt_marks)
                return
            self._felt = Felt(np.concatenate([self.part_in_place(n).moving.points for n in skins]))
        solid = [
            name
            for name, look in self.shown().items()
            if look.opacity >= SOLID_FROM or not is_film(self._drawn[name].part)
        ]

        def cast(origin: np.ndarray, direction: np.ndarray):
            return seen_at_midline(self._first_hit, origin, direction, solid)

        laid = []
        for name, bone in self._felt_marks:
            place = self._felt.laid(bone, cast)
            # What a section has taken away is not felt any more.
            stays = self._caps.kept(place)
            if place.ndim == 1 and stays[0]:
                laid.append((name, place))
            elif place.ndim == 2 and stays.sum() > 1:
                laid.append((name, place[stays]))
        self._marks.set_landmarks(laid)

    def surface_path(self, a: np.ndarray, b: np.ndarray) -> np.ndarray | None:
        """Return a short way along the surface of the part under ``a``, (m, 3) mm, or None."""
        from meshes.shapes.surface_path import shortest_on_surface

        best = None
        on_it = 2.0 * SURFACE_SLACK_MM**2
        for name in self.shown():
            shell = self._drawn[name].still
            gap = min(_box_gap(self._drawn[name].bounds, p) for p in (a, b))
            if gap > 2.0:
                continue
            both = sum(float(((shell.points - p) ** 2).sum(axis=1).min()) for p in (a, b))
            if both < (on_it if best is None else best[0]):
                best = both, shell
        if best is None:
            return None
        return shortest_on_surface(best[1].points, best[1].faces, np.asarray(a), np.asarray(b))

    # End --------------------------------------------------------------------------------

    def face_counts(self) -> dict[str, int]:
        """Return the triangles drawn at each detail by what is shown now."""
        return {
            detail: sum(
                pair[detail].face_count()
                for viewport in self._viewports
                for pair in viewport.actors.values()
            )
            for detail in DETAILS
        }

    def finalize(self) -> None:
        """Let go of the graphics; may be called twice."""
        if self._finalized:
            return
        self._finalized = True
        self.on_flight = self.on_parts = None
        self.set_table("")
        self.set_compare(False)
        self.clear()
        for viewport in self._viewports:
            viewport.renderer.RemoveAllViewProps()
            self.window.RemoveRenderer(viewport.renderer)
        for renderer in (self._front, self._written):
            renderer.RemoveAllViewProps()
            self.window.RemoveRenderer(renderer)
        self.window.Finalize()


def _same_mesh(held, part) -> bool:
    return held is part or (
        held.kind == part.kind
        and held.stratum == part.stratum
        and np.array_equal(held.vertices, part.vertices)
        and np.array_equal(held.faces, part.faces)
    )


def _corners(bounds: np.ndarray) -> np.ndarray:
    low, high = bounds
    return np.array(
        [[x, y, z] for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])]
    )


def _box_gap(bounds: np.ndarray, point) -> float:
    low, high = bounds
    outside = np.maximum(np.maximum(low - point, np.asarray(point) - high), 0.0)
    return float(np.linalg.norm(outside))


def _averaged(picture: np.ndarray, factor: int) -> np.ndarray:
    height, width = picture.shape[0] // factor, picture.shape[1] // factor
    blocks = picture[: height * factor, : width * factor].astype(np.float32)
    blocks = blocks.reshape(height, factor, width, factor, 3)
    return np.rint(blocks.mean(axis=(1, 3))).astype(np.uint8)
