"""Folded flaps as the scene draws them: cut, and carried along their way."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from meshes.catalogue.folds import Laid
from meshes.questions.reflect import FoldPath, Reflector
from viewer.scene.drawn import DrawnPart, Shell, vertex_normals

LIT_FROM = 0.15
"""At this share of a fold the face that was covered lies in the open."""


@dataclass(frozen=True, slots=True, eq=False)
class _CutShell:
    """What the drawn vertices of a cut part keep on the way: (n, 4) surface, (n, 2) cut."""

    surface: np.ndarray
    cut: np.ndarray
    faces: np.ndarray


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
        self._prepared: dict[int, tuple[FoldPath, dict, dict]] = {}

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
            self._prepare(path)

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
            cut, riders = self._prepare(path)
            own = {i: v for i, v in path.vertices(share).items() if i in cut}
            for name, vertices in own.items():
                shell = _cut_shell(path.parts[name].mesh.drawn, vertices, cut[name], share)
                # One shell serves both details: the cut is what is looked at.
                moved[name] = dict.fromkeys(details, shell)
            for detail in details:
                carriers = {n: c[detail] for n, c in riders.items()}
                for name, points in path.carry(carriers, share).items():
                    shell = getattr(self._in_place(name), detail)
                    moved.setdefault(name, {})[detail] = _moved(shell, points, share)
        return moved

    def _prepare(self, path: FoldPath) -> tuple[dict, dict]:
        key = id(path)
        if key not in self._prepared:
            if len(self._prepared) > 64:
                self._prepared.clear()
            cut, riders = {}, {}
            for name in path.part_ids():
                try:
                    drawn: DrawnPart = self._in_place(name)
                except KeyError:
                    continue
                if name in path.parts:
                    cut[name] = _prepared_cut(path.parts[name].mesh, drawn.still)
                else:
                    riders[name] = {
                        detail: path.carrier(name, getattr(drawn, detail).points)
                        for detail in ("still", "moving")
                    }
            # The way is held with what was prepared, so that its id stays its own.
            self._prepared[key] = (path, cut, riders)
        return self._prepared[key][1:]


def _prepared_cut(mesh, still: Shell) -> _CutShell:
    surface = np.asarray(mesh.weights @ still.surface.astype(float), np.float32)[mesh.drawn]
    surface[mesh.raw, 2] = 0.0
    cut = np.column_stack([mesh.raw, mesh.deep]).astype(np.float32)
    return _CutShell(surface, cut, np.ascontiguousarray(mesh.drawn_faces, np.int32))


def _cut_shell(drawn: np.ndarray, vertices: np.ndarray, kept: _CutShell, share: float) -> Shell:
    points = np.ascontiguousarray(vertices[drawn], np.float32)
    return Shell(
        points,
        vertex_normals(points, kept.faces),
        kept.faces,
        _lit(kept.surface, share),
        None,
        kept.cut,
    )


def _lit(surface: np.ndarray, share: float) -> np.ndarray:
    """What was worked out for the covered face holds no more once it is turned up."""
    surface = surface.copy()
    surface[:, 3] += (1.0 - surface[:, 3]) * min(share / LIT_FROM, 1.0)
    return surface


def _moved(shell: Shell, points: np.ndarray, share: float) -> Shell:
    points = np.ascontiguousarray(points, np.float32)
    normals = vertex_normals(points, shell.faces)
    return Shell(points, normals, shell.faces, _lit(shell.surface, share), shell.source)
