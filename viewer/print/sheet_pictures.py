"""Two pictures a step: the back before it, with line of cut and hinge, and after it, with finds."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

import numpy as np
from scipy.ndimage import binary_dilation, label
from scipy.spatial import cKDTree

from meshes.catalogue.plan import PlanStep, part_ids_of, steps
from meshes.model import BackModel
from meshes.questions.rehearse import Rehearser
from viewer.print.ink import inked
from viewer.scene import camera as cameras
from viewer.scene.label_layout import Anchor
from viewer.scene.looks import BACKGROUNDS
from viewer.scene.scene import PartLook, Scene
from viewer.state.places import surface_marks
from viewer.state.plan import Plan, plan_from_records
from viewer.state.step_words import called
from viewer.state.view_state import SideChoice, ViewState, sides_of
from viewer.state.visibility import opacities

LEAST_VIEW_MM, LEAST_CLOSE_MM = 130.0, 85.0
"""Half the height of the closest picture: nearer, one would not know where one is. A picture
with the names comes nearer than the one beside it, which shows the place."""

CLOSER_FROM = 0.7
"""What changes in the picture gives the frame where it is so much smaller than the parts."""

STRAY_SHARE, CLOSE_MARGIN = 0.1, 1.4
"""What lies at the edges, as a thread that runs far beyond the rest, sets no frame; the margin
gives back what an even patch loses by that, and a little more."""

ROUGH_PX, JOINED_PX = 320, 2
"""Height of the picture in which the frame is looked for; patches so near belong together."""

PAPER_TONE = np.rint(255 * np.linspace(0, 1, 256) ** 0.68).astype(np.uint8)
"""Screen tone to paper tone: flesh would print nearly black in black and white."""

LEAST_CHANGE = 6
"""Of a channel, 0..255: a smaller change of tint is none."""

HELD_MM = 14.0
"""A rib is held by a slip that comes so near."""


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """A line over a picture: kind "cut" or "hinge", points (k, 2) in pixels, y down."""

    kind: str
    points: np.ndarray


@dataclass(frozen=True, slots=True)
class StepPicture:
    """One picture without any writing in it.

    Attributes
    ----------
    pixels : (h, w, 3) uint8
    anchors : tuple of Anchor
        Where leaders to named parts end, the best seen first.
    lines : tuple of DrawnLine
    kept : frozenset of str
        Texts of anchors that are on the keep list.
    """

    pixels: np.ndarray
    anchors: tuple[Anchor, ...] = ()
    lines: tuple[DrawnLine, ...] = ()
    kept: frozenset[str] = frozenset()


class StepPictures:
    """Draws the pictures of steps with one offscreen scene; ``close`` it afterwards."""

    def __init__(self, model: BackModel, side: SideChoice = "both") -> None:
        from viewer.print.plates import plate_scene

        self.model = model
        self.side = side
        catalogue = model.catalogue
        self.plan: Plan = plan_from_records(steps(), lambda name: part_ids_of(name, catalogue))
        self.rehearser = Rehearser(model)
        self.scene: Scene = plate_scene(model)
        self.scene.set_look("by_kind")
        self.scene.set_theme("light")
        # The scene writes nothing here; its letter size only says how little is worth a leader.
        self.scene.set_font_scale(0.6)

    def close(self) -> None:
        """Give the graphics memory back."""
        self.scene.finalize()

    def __enter__(self) -> StepPictures:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def before(self, step: PlanStep) -> ViewState:
        """Return the state in which a step is begun: all earlier steps done on the side.

        Optional steps count only where this one needs them.
        """
        needed = {s.id for s in self.plan.before(step.id)}
        removed: set[str] = set()
        for record in steps():
            if record.id == step.id:
                break
            if not record.optional or record.id in needed:
                removed |= self._removed(record)
        return ViewState(removed=frozenset(removed))

    def after(self, step: PlanStep) -> ViewState:
        """Return the state in which a step is done."""
        state = self.before(step)
        return state.with_(removed=state.removed | self._removed(step))

    def _removed(self, step: PlanStep) -> set[str]:
        taken: set[str] = set()
        for side in sides_of("both" if step.side == "both" else self.side):
            taken |= self.plan.removed_by(self.plan[step.id], self.model, side)
        return taken

    def pair(
        self, step: PlanStep, small: tuple[int, int], large: tuple[int, int]
    ) -> tuple[StepPicture | None, StepPicture]:
        """Return the pictures before and after a step, in pixels (width, height).

        The first is None for a step that takes nothing away and cuts nothing.
        """
        before, after = self.before(step), self.after(step)
        # What is felt through the skin lies all over it.
        focus, close = self._whole(step), self._close(step) if step.needs else None
        names, _ = self._names(step)
        if close is not None:
            shown = []
            for points in (focus, close):
                self._show(after, points, large, LEAST_CLOSE_MM)
                shown.append(len(self.scene.seen_anchors(names)))
            if shown[1] >= shown[0]:
                focus = close
        first = None
        if self.has_first(step):
            self._show(before, focus, small)
            first = StepPicture(self._pixels(small), lines=self._lines(step, small))
        self._show(after, focus, large, LEAST_CLOSE_MM if focus is close else LEAST_VIEW_MM)
        names, kept = self._names(step)
        if first is None and not step.needs:
            records = getattr(self.model.catalogue, "landmarks", None) or {}
            felt = {n: p for n, p in self.model.landmarks.items() if n in records}
            self.scene.set_surface_marks(surface_marks(felt, records))
            anchors = self._felt(large)
        else:
            anchors = self.scene.seen_anchors(names, first=list(names))
        pixels = self._pixels(large)
        self.scene.set_surface_marks([], False)
        return first, StepPicture(pixels, tuple(anchors), (), kept)

    def has_first(self, step: PlanStep) -> bool:
        """Return whether there is anything to show before a step: it takes away, or cuts."""
        return bool(self._removed(step) or step.cuts)

    def has_names(self, step: PlanStep) -> bool:
        """Return whether anything could be named in the picture of a step."""
        return bool(self._names(step)[0])

    def _felt(self, size: tuple[int, int]) -> list[Anchor]:
        """Anchors at what is felt through the skin, once where there are two sides."""
        taken: dict[str, Anchor] = {}
        for name, point in self.scene.surface_marks():
            x, y = self._projected(_telling_point(point), size)[0]
            # Bony points come before levels of spines, which are counted from them.
            weight = 500.0 if re.fullmatch(r"[TLS]\d+", name) else 1000.0
            if name not in taken and 0 < x < size[0] and 0 < y < size[1]:
                taken[name] = Anchor(name, name, float(x), float(y), weight)
        return list(taken.values())

    def _whole(self, step: PlanStep) -> np.ndarray:
        """Return corners (k, 3) mm of the boxes of what a step takes away and brings to light."""
        ids = sorted(self._about(step))
        return np.concatenate([self.model.parts[i].mesh.bounds for i in ids or self.model.parts])

    def _about(self, step: PlanStep) -> set[str]:
        side = "both" if step.side == "both" else self.side
        return set(self.plan.parts_of((*step.removes, *step.reveals), self.model, side))

    def _close(self, step: PlanStep) -> np.ndarray | None:
        """Return corners (2, 3) mm of a frame much closer than that of the boxes, if there is one.

        It lies round what the step changes in the picture, or else round what is seen of its
        parts: a window in the canal is less than all dura, and of the vertebral artery only a
        few millimetres come into the triangle.
        """
        whole, size = self._whole(step), (ROUGH_PX, ROUGH_PX)
        self._show(self.before(step), whole, size)
        plain = self.scene.screenshot(size, overlays=False)
        if self._removed(step):
            self._show(self.after(step), whole, size)
            change = self.scene.screenshot(size, overlays=False).astype(int) - plain
        else:
            about = self._about(step)
            looks = {i: replace(look, covering=i in about) for i, look in self.shown.items()}
            change = self._change(looks, plain, size)
        rows, columns = np.nonzero(_main_patches(np.abs(change).max(axis=2) >= LEAST_CHANGE))
        if not len(rows):
            return None
        share = [STRAY_SHARE, 1.0 - STRAY_SHARE]
        right, up, _ = self.scene.pose.axes()
        mm_per_px = 2.0 * self.scene.pose.scale_mm / size[1]
        across = (np.quantile(columns, share) - size[0] / 2) * mm_per_px
        along = (size[1] / 2 - np.quantile(rows, share)) * mm_per_px
        if max(np.ptp(across), np.ptp(along)) * CLOSE_MARGIN > CLOSER_FROM * np.ptp(whole, 0).max():
            return None
        grown = [v.mean() + (v - v.mean()) * CLOSE_MARGIN for v in (across, along)]
        return (
            np.asarray(self.scene.pose.focus) + np.outer(grown[0], right) + np.outer(grown[1], up)
        )

    def _names(self, step: PlanStep) -> tuple[dict[str, str], frozenset[str]]:
        """What is to be named in the picture of a step, and which of it is to be kept."""
        names: dict[str, str] = {}
        for group in (step.reveals, step.keep):
            for name in group:
                for part_id in self.plan.parts_of([name], self.model, self.side):
                    names.setdefault(part_id, called(name, self.model.catalogue))
        kept = frozenset(called(name, self.model.catalogue) for name in step.keep)
        return names, kept

    def _show(
        self,
        state: ViewState,
        focus: np.ndarray,
        size: tuple[int, int],
        least_mm: float = LEAST_VIEW_MM,
    ) -> None:
        scene = self.scene
        scene.window.SetSize(*size)
        self.shown = {i: PartLook(opacity) for i, opacity in opacities(self.model, state).items()}
        scene.apply(self.shown)
        scene.set_labels(False)
        pose = cameras.view_pose("posterior", scene.pose)
        pose = cameras.framed(pose, focus, size[0] / size[1], 1.06)
        scene.pose = replace(pose, scale_mm=max(pose.scale_mm, least_mm))

    def _pixels(self, size: tuple[int, int]) -> np.ndarray:
        plain = self.scene.screenshot(size, overlays=False)
        return inked(for_paper(plain), *self._tubes(plain, size))

    def _tubes(self, plain: np.ndarray, size: tuple[int, int]) -> tuple[np.ndarray, np.ndarray]:
        """Where the picture that was just drawn shows nerves, and where vessels, (h, w) bool.

        It is drawn once more with nerves tinted blue and vessels tinted a little: what changes
        is what is seen of them.
        """
        kinds = {i: self.model.parts[i].kind for i in self.shown}
        tinted = {
            i: replace(look, covering=kinds[i] == "nerve", hovered=kinds[i] in ("artery", "vein"))
            for i, look in self.shown.items()
        }
        change = self._change(tinted, plain, size)
        nerves = change[..., 0] <= -LEAST_CHANGE
        return nerves, (change[..., 1] >= LEAST_CHANGE) & ~nerves

    def _change(
        self, looks: dict[str, PartLook], plain: np.ndarray, size: tuple[int, int]
    ) -> np.ndarray:
        """Return by how much other looks of the same parts change the picture, (h, w, 3) int."""
        self.scene.apply(looks)
        change = self.scene.screenshot(size, overlays=False).astype(int) - plain
        self.scene.apply(self.shown)
        return change

    def _lines(self, step: PlanStep, size: tuple[int, int]) -> tuple[DrawnLine, ...]:
        lines = []
        for side in sides_of("both" if step.side == "both" else self.side):
            for line in self.rehearser.plan_lines(step.id, side) if step.cuts else ():
                if not line.derived:
                    lines.append(
                        DrawnLine("cut", smoothed_line(self._projected(line.points, size)))
                    )
            hinge = self._hinge(step, side)
            if hinge is not None:
                lines.append(DrawnLine("hinge", self._projected(hinge, size)))
        return tuple(lines)

    def _hinge(self, step: PlanStep, side: str) -> np.ndarray | None:
        """Return the line on which the flap stays, (k, 3), or None where the plan has no places."""
        if step.hinge is None:
            return None
        places = [
            np.asarray(self.model.landmarks[name], float).reshape(-1, 3)
            for pattern in step.hinge.along
            if (name := pattern.format(side=side)) in self.model.landmarks
        ]
        if len(places) > 1 and all(".shaft" in name for name in step.hinge.along):
            # Slips on several ribs: the hinge crosses the ribs, it does not run along them.
            places = [self._outermost_held(step, side, curve) for curve in places]
        if not places or sum(map(len, places)) < 2:
            return None
        return np.concatenate(places)

    def _outermost_held(self, step: PlanStep, side: str, curve: np.ndarray) -> np.ndarray:
        """Return the outermost point of a curve that what is folded comes near to, (1, 3)."""
        ids = self.plan.removed_by(self.plan[step.id], self.model, side)
        tree = cKDTree(np.concatenate([self.model.parts[i].mesh.vertices for i in ids]))
        near = curve[tree.query(curve)[0] < HELD_MM]
        near = near if len(near) else curve
        return near[[np.abs(near[:, 0]).argmax()]]

    def _projected(self, points: np.ndarray, size: tuple[int, int]) -> np.ndarray:
        """Return pixels (k, 2), y down."""
        right, up, _ = self.scene.pose.axes()
        away = np.asarray(points, float) - np.asarray(self.scene.pose.focus)
        scale = size[1] / (2.0 * self.scene.pose.scale_mm)
        return np.column_stack(
            [size[0] / 2 + (away @ right) * scale, size[1] / 2 - (away @ up) * scale]
        )


def _main_patches(mask: np.ndarray) -> np.ndarray:
    """Return the largest patch of a mask (h, w) with those at least half as large as it."""
    patches, count = label(binary_dilation(mask, iterations=JOINED_PX))
    sizes = np.bincount(patches[mask], minlength=count + 1)
    return mask & (2 * sizes >= sizes.max())[patches]


def _telling_point(place: np.ndarray) -> np.ndarray:
    """Return the point (1, 3) at which a landmark is named: of a border its middle, not its end."""
    place = np.asarray(place, float).reshape(-1, 3)
    return place[[len(place) // 2]]


def smoothed_line(points: np.ndarray, rounds: int = 12) -> np.ndarray:
    """Return a line without the zigzag of the vertices it was laid on; its ends stay."""
    points = np.array(points, float)
    for _ in range(rounds):
        points[1:-1] = 0.5 * points[1:-1] + 0.25 * (points[:-2] + points[2:])
    return points


def for_paper(pixels: np.ndarray, theme: str = "light") -> np.ndarray:
    """Return a picture lightened, as ink spreads, and with its even ground made white.

    Parameters
    ----------
    pixels : (h, w, 3) uint8
    """
    ground = np.rint(np.array(BACKGROUNDS[theme]) * 255)
    plain = (np.abs(pixels.astype(int) - ground) <= 2).all(axis=2)
    answer = PAPER_TONE[pixels]
    answer[plain] = 255
    return answer
