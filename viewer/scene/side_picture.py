"""Small pictures of other states than the one that is on, drawn in memory. No Qt.

The window's own picture is left alone, and the work comes in pieces, so that whoever
asks can give way to a key or a turn of the model between any two.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from viewer.scene.drawn import Shell
from viewer.scene.scene import PartLook, Scene


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureOrder:
    """What a small picture shows.

    Attributes
    ----------
    looks, whole : mapping of part id to PartLook
        What is shown, and in the second picture of a comparison (empty: none).
    moved : mapping of part id and detail to Shell
        Parts that are folded.
    look, table : str
    lying : bool
        Limbs lie as on the table.
    pose_lines : tuple of str
    camera : mapping or None
        As of ``Scene.pose_of``.
    view : str
    labels : tuple
        Arguments of ``Scene.set_labels``.
    pins, marks : sequence
        As of ``Scene.set_pins`` and ``Scene.set_surface_marks``.
    section : callable or None
        Gives the arguments of ``Scene.set_section``.
    """

    looks: Mapping[str, PartLook]
    whole: Mapping[str, PartLook] = field(default_factory=dict)
    moved: Mapping[str, Mapping[str, Shell]] = field(default_factory=dict)
    look: str = "by_kind"
    table: str = ""
    lying: bool = False
    pose_lines: tuple[str, ...] = ()
    camera: Mapping | None = None
    view: str = "posterior"
    labels: tuple = (False,)
    pins: tuple = ()
    marks: tuple = ()
    section: Callable[[], tuple] | None = None


class SidePicture:
    """A second scene in memory beside one on the screen; it takes that one's parts.

    Parameters
    ----------
    main : Scene
    size : tuple of int
        Pixels.
    """

    def __init__(self, main: Scene, size: tuple[int, int]) -> None:
        self._main, self.size = main, size
        self._scene: Scene | None = None

    def draw(self, order: PictureOrder) -> Iterator[np.ndarray | None]:
        """Work on a picture; yields None between the pieces and (h, w, 3) uint8 at the end."""
        yield from self._make()
        scene = self._scene
        scene.set_look(order.look)
        scene.set_compare(bool(order.whole))
        scene.apply(order.looks)
        if order.whole:
            scene.apply_whole(order.whole)
        yield None
        scene.move_parts(order.moved)
        scene.set_table(order.table)
        scene.lay_limbs(order.lying)
        scene.pose_lines = order.pose_lines
        scene.set_labels(*order.labels)
        scene.set_pins(order.pins)
        scene.set_surface_marks(order.marks, bool(order.marks))
        yield None
        scene.set_section(*(order.section() if order.section is not None else ()))
        scene.pose = scene.pose_of(order.view, order.camera, order.table)
        yield None
        yield scene.screenshot()

    def _make(self) -> Iterator[None]:
        """Make the second scene and take the parts over, a batch at a time."""
        main = self._main
        if self._scene is None:
            scene = self._scene = Scene(size=self.size)
            scene.set_theme(main.theme)
            # Letters keep their share of the picture.
            scene.set_font_scale(main.font_scale * self.size[0] / max(main.size()[0], 1))
            scene.pixel_ratio = main.pixel_ratio
            scene.most_labels = main.most_labels
            scene.share_limbs(main)
        groups: dict[Any, list[str]] = {}
        held = frozenset(self._scene.part_ids())
        for name in main.part_ids():
            if name not in held:
                groups.setdefault(main.batch_of(name), []).append(name)
        for names in groups.values():
            yield None
            self._scene.add_parts(main.part_in_place(name) for name in names)

    def finalize(self) -> None:
        """Let go of the graphics; may be called twice."""
        if self._scene is not None:
            self._scene.finalize()
            self._scene = None
