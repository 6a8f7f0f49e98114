"""Folded flaps as the scene draws them: both details carried along the flap's way."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence

import numpy as np

from meshes.catalogue.folds import Laid
from meshes.questions.reflect import FoldPath, Reflector
from viewer.scene.drawn import DrawnPart, Shell, vertex_normals

LIT_FROM = 0.15
"""At this share of a fold the face that was covered lies in the open."""


class FoldedShells:
    """Works out the shells of folded parts; holds what was prepared for each way.

    Parameters
    ----------
    reflector : Reflector
    in_place : callable
        Part id to its drawn arrays in the whole body.
    """

    def __init__(self, reflector: Reflector, in_place) -> None:
        self.reflector = reflector
        self._in_place = in_place
        self._carriers: dict[tuple[int, str], tuple[FoldPath, dict]] = {}

    def ready(self, folds: Sequence[Laid], gone: Collection[str]) -> bool:
        """Tell whether these flaps can be drawn at once."""
        return all(
            self.reflector.is_ready(laid.fold_id, gone, folds[:k])
            for k, laid in enumerate(folds)
            if laid.share > 0
        )

    def work_out(self, folds: Sequence[Laid], gone: Collection[str]) -> None:
        """Work out the ways of these flaps; takes seconds, and may run beside the window."""
        for path in self.paths(folds, gone).values():
            for detail in ("still", "moving"):
                self._carriers_of(path, detail)

    def paths(self, folds: Sequence[Laid], gone: Collection[str]) -> dict[str, FoldPath]:
        """Return the ways of these flaps by fold id."""
        return {
            laid.fold_id: self.reflector.path(laid.fold_id, gone, folds[:k])
            for k, laid in enumerate(folds)
            if laid.share > 0
        }

    def shells(
        self,
        paths: Mapping[str, FoldPath],
        shares: Mapping[str, float],
        details: Iterable[str] = ("still", "moving"),
    ) -> dict[str, dict[str, Shell]]:
        """Return the moved shells by part id and detail, for ``Scene.move_parts``.

        Parameters
        ----------
        paths : mapping of fold id to FoldPath
        shares : mapping of fold id to float
            How far each is folded now, 0 to 1.
        details : iterable of str
        """
        moved: dict[str, dict[str, Shell]] = {}
        for fold_id, path in paths.items():
            share = shares.get(fold_id, 0.0)
            if share <= 0:
                continue
            for detail in details:
                carriers = self._carriers_of(path, detail)
                for name, points in path.carry(carriers, share).items():
                    shell = getattr(self._in_place(name), detail)
                    moved.setdefault(name, {})[detail] = _moved(shell, points, share)
        return moved

    def _carriers_of(self, path: FoldPath, detail: str) -> dict:
        key = (id(path), detail)
        if key not in self._carriers:
            if len(self._carriers) > 64:
                self._carriers.clear()
            made = {}
            for name in path.part_ids():
                try:
                    drawn: DrawnPart = self._in_place(name)
                except KeyError:
                    continue
                made[name] = path.carrier(name, getattr(drawn, detail).points)
            # The way is held with its carriers, so that its id stays its own.
            self._carriers[key] = (path, made)
        return self._carriers[key][1]


def _moved(shell: Shell, points: np.ndarray, share: float) -> Shell:
    points = np.ascontiguousarray(points, np.float32)
    surface = shell.surface.copy()
    # What was worked out for the covered face holds no more once it is turned up.
    surface[:, 3] += (1.0 - surface[:, 3]) * min(share / LIT_FROM, 1.0)
    return Shell(points, vertex_normals(points, shell.faces), shell.faces, surface, shell.source)
