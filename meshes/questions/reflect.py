"""Folds a muscle back on its hinge, as the plan says, with nothing stretched.

The flap is a sheet that keeps the length of every fibre, turned about the
line on which it stays fixed and laid on what is under it (``folding`` holds
the parts of the computation). What clings to its face comes along.

A teaching model: where a flap really comes to lie depends on the donor.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from meshes.catalogue.folds import (
    OUT_OF_THE_WAY,
    FoldRule,
    Laid,
    fold_named,
    load_folds,
    own_parts,
)
from meshes.errors import PeelbackError
from meshes.model import BackModel, mirror_points, other_side
from meshes.questions.folding.cloth import march
from meshes.questions.folding.control_sheet import Carried, ControlSheet, sheet_through
from meshes.questions.folding.ground import ground_of
from meshes.questions.folding.riders import Rider, rider_of
from meshes.questions.folding.turning import Turn, free_nodes, poses

THIN_KINDS = frozenset({"nerve", "artery", "vein"})
"""What is no ground for a flap: it is pushed aside, or rides on it."""

COVERS = ("skin", "superficial_fascia", "deep_fascia")
"""What lies over all muscles, outermost first: gone before they are folded, so no ground."""

BACKING_MM = (2.0, 4.0, 6.0, 8.0, 10.0)
"""A flap that lies folded counts as solid to this depth beneath it."""

BACKED_FROM_MM = 40.0

KEPT_PATHS = 48


@dataclass(frozen=True, slots=True, eq=False)
class FoldPath:
    """The whole way of one flap, worked out once.

    Attributes
    ----------
    rule : FoldRule
    side : {"left", "right"}
    sheet : ControlSheet
        At rest; of the left side even where ``side`` is right (the right is its mirror).
    grids : (count, rows, columns, 3) float
        Poses of the sheet's grid, at rest first.
    free, along : (rows, columns) and (rows, columns - 1) float
        0 for held nodes, else 1; lengths of the links along the fibres, mm.
    carried : mapping of str to Carried
        The flap's own parts, by id.
    riders : mapping of str to Rider
        What clings, by id.
    """

    rule: FoldRule
    side: str
    sheet: ControlSheet
    grids: np.ndarray
    free: np.ndarray
    along: np.ndarray
    carried: Mapping[str, Carried]
    riders: Mapping[str, Rider]

    def grid(self, share: float) -> np.ndarray:
        """Return the sheet's grid at a share of the way, (rows, columns, 3) mm."""
        at = float(np.clip(share, 0.0, 1.0)) * (len(self.grids) - 1)
        low = min(int(at), len(self.grids) - 2)
        grid = self.grids[low] + (at - low) * (self.grids[low + 1] - self.grids[low])
        if 0 < at - low < 1 and low > 0:
            # Between two poses the straight way is a little short: give fibres their length.
            march(grid, self.free, self.along)
        return grid

    def mirrored(self) -> FoldPath:
        """Return the same way on the other side."""
        return replace(
            self,
            side="left" if self.side == "right" else "right",
            carried={other_side(i): c for i, c in self.carried.items()},
            riders={other_side(i): r for i, r in self.riders.items()},
        )

    def part_ids(self) -> tuple[str, ...]:
        """Return the ids of all that moves."""
        return (*self.carried, *self.riders)

    def hinge(self) -> np.ndarray:
        """Return the hinge's points (rows, 3), mm LPS."""
        return self._on_side({"hinge": self.sheet.mid[:, 0]})["hinge"]

    def vertices(self, share: float) -> dict[str, np.ndarray]:
        """Return the vertices of every moved part at a share of the way, mm LPS."""
        grid = self.grid(share)
        moved = {i: c.place(grid) for i, c in self.carried.items()}
        moved.update({i: r.place(grid) for i, r in self.riders.items()})
        return self._on_side(moved)

    def carrier(self, part_id: str, points: np.ndarray) -> Carried | Rider:
        """Prepare other points of a moved part (a coarser mesh of it) to be carried along.

        Give the answer to ``carry``.
        """
        points = np.asarray(points, float)
        points = mirror_points(points) if self.side == "right" else points
        if part_id in self.riders:
            return self.riders[part_id].for_points(points)
        return Carried(self.sheet, points)

    def carry(self, carriers: Mapping[object, Carried | Rider], share: float) -> dict:
        """Return prepared points at a share of the way, by the same keys."""
        grid = self.grid(share)
        return self._on_side({key: c.place(grid) for key, c in carriers.items()})

    def _on_side(self, moved: dict) -> dict:
        if self.side == "left":
            return moved
        return {key: mirror_points(points) for key, points in moved.items()}


class Reflector:
    """Folds of one model, kept once worked out.

    Parameters
    ----------
    model : BackModel
    """

    def __init__(self, model: BackModel) -> None:
        self.model = model
        self._paths: dict[tuple, FoldPath] = {}

    def possible(self) -> tuple[str, ...]:
        """Return the folds that this model has the parts for, with their sides."""
        return tuple(
            f"{rule.id}.{side}"
            for rule in load_folds()
            for side in ("left", "right")
            if all(i in self.model.parts for i in rule.part_ids(side))
        )

    def key(self, fold_id: str, gone: Collection[str] = (), before: Sequence[Laid] = ()) -> tuple:
        """Return what a path depends on; two equal keys share one path."""
        rule, side = fold_named(fold_id)
        relevant = frozenset(
            i for i in gone if i in self.model.parts and self._is_ground(i, rule, side)
        )
        earlier = tuple(
            (laid.fold_id, laid.share >= OUT_OF_THE_WAY)
            for laid in before
            if laid.fold_id != fold_id and laid.share > 0 and laid.side == side
        )
        return (fold_id, relevant, earlier)

    def is_ready(self, fold_id: str, gone: Collection[str] = (), before: Sequence[Laid] = ()):
        """Return whether a path is worked out already (its frames are then quick)."""
        return self.key(fold_id, gone, before) in self._paths

    def path(
        self, fold_id: str, gone: Collection[str] = (), before: Sequence[Laid] = ()
    ) -> FoldPath:
        """Return the way of a flap over what stays.

        Parameters
        ----------
        fold_id : str
            ``trapezius.left``.
        gone : collection of str
            Ids of parts that have been taken away and can't hold a flap any more.
        before : sequence of Laid
            Flaps that were folded earlier and lie there already.

        Raises
        ------
        PeelbackError
            No such fold, or the model lacks its parts.
        """
        key = self.key(fold_id, gone, before)
        if key not in self._paths:
            if len(self._paths) >= KEPT_PATHS:
                self._paths.pop(next(iter(self._paths)))
            rule, side = fold_named(fold_id)
            if side == "right" and self._is_mirror_image(rule):
                # What is known of the left holds for the right: no fold is worked out twice.
                left = self.path(
                    f"{rule.id}.left",
                    [other_side(i) for i in gone],
                    [Laid(other_side(b.fold_id), b.share) for b in before if b.side == side],
                )
                self._paths[key] = left.mirrored()
            else:
                self._paths[key] = self._worked_out(fold_id, key[1], before)
        return self._paths[key]

    def laid(self, folds: Sequence[Laid], gone: Collection[str] = ()) -> dict[str, np.ndarray]:
        """Return the vertices of everything that lies folded, mm LPS, by part id.

        Parameters
        ----------
        folds : sequence of Laid
            In the order in which they were done; those at share 0 move nothing.
        gone : collection of str
        """
        moved: dict[str, np.ndarray] = {}
        for k, laid in enumerate(folds):
            if laid.share > 0:
                moved.update(self.path(laid.fold_id, gone, folds[:k]).vertices(laid.share))
        return moved

    def _is_mirror_image(self, rule: FoldRule) -> bool:
        """Tell whether the flap's two sides are mirror images, vertex by vertex."""
        parts = self.model.parts
        for left, right in zip(rule.part_ids("left"), rule.part_ids("right"), strict=True):
            if left not in parts or right not in parts:
                return False
            a = np.asarray(parts[left].mesh.vertices)
            b = np.asarray(parts[right].mesh.vertices)
            if a.shape != b.shape or not np.array_equal(mirror_points(a), b):
                return False
        return True

    def stays(self, part_id: str, fold_id: str) -> bool:
        """Tell whether a part can hold a flap: it is there and does not ride on it."""
        rule, side = fold_named(fold_id)
        return part_id not in {*rule.part_ids(side), *rule.cling_ids(side)} and self._is_ground(
            part_id, rule, side
        )

    def _is_ground(self, part_id: str, rule: FoldRule, side: str) -> bool:
        """Tell whether a flap may come to lie on a part: nothing that lies over it at rest."""
        parts = self.model.parts
        part = parts[part_id]
        own = [parts[i] for i in rule.part_ids(side) if i in parts]
        if part.kind in THIN_KINDS or part.side not in (side, None) or not own:
            return False
        if part.entry in COVERS:
            outer = [COVERS.index(p.entry) for p in own if p.entry in COVERS]
            return bool(outer) and COVERS.index(part.entry) > max(outer)
        return part.stratum >= min(p.stratum for p in own)

    def _hinge_line(self, rule: FoldRule, turned, side: str) -> np.ndarray | None:
        if not rule.hinge:
            return None
        names = [name.format(side=side) for name in rule.hinge]
        missing = [name for name in names if name not in self.model.landmarks]
        if missing:
            raise PeelbackError(f"fold {rule.id} has no hinge: the model lacks {missing[0]}")
        ends = [np.reshape(self.model.landmarks[name], (-1, 3)).mean(axis=0) for name in names]
        return turned(np.array(ends)) + [rule.hinge_out_mm, 0.0, 0.0]

    def _worked_out(self, fold_id: str, gone: frozenset[str], before: Sequence[Laid]) -> FoldPath:
        rule, side = fold_named(fold_id)
        parts = self.model.parts
        own = rule.part_ids(side)
        missing = [i for i in own if i not in parts]
        if missing:
            raise PeelbackError(f"fold {fold_id} cannot be drawn: the model has no {missing[0]}")
        # All is worked out on the left: the right is its mirror image.
        turned = mirror_points if side == "right" else np.asarray

        def shell(part_id: str, moved: Mapping[str, np.ndarray]):
            vertices = moved.get(part_id, parts[part_id].mesh.vertices)
            faces = np.asarray(parts[part_id].mesh.faces)
            return turned(np.asarray(vertices, float)), faces[:, ::-1] if side == "right" else faces

        # A flap that was folded before counts as laid back; one only lifted is in no one's way.
        folded = [b for b in before if b.side == side and b.share > 0]
        lying = self.laid(
            [Laid(b.fold_id) for b in folded if b.share >= OUT_OF_THE_WAY and b.fold_id != fold_id],
            gone,
        )
        lifted = {i for b in folded if b.share < OUT_OF_THE_WAY for i in own_parts(b.fold_id)}
        sheet = sheet_through(
            [turned(np.asarray(parts[i].fibres, float)) for i in own],
            [turned(np.asarray(parts[i].mesh.vertices, float)) for i in own],
            rule.cut_end,
            self._hinge_line(rule, turned, side),
            rule.held,
            rule.crosswise,
            rule.belly,
        )
        bounds = _reach(sheet)
        moving = {*own, *rule.cling_ids(side), *lifted}
        stays = [
            i for i in parts
            if i not in moving and i not in gone and self._is_ground(i, rule, side)
        ]  # fmt: skip
        shells = [shell(i, lying) for i in stays]
        for i in stays:
            if i in lying:
                shells.extend(_backed(*shell(i, lying), shell(i, {})[0]))
        ground = ground_of(shells, bounds)
        axis = None if rule.axis is None else np.asarray(rule.axis, float)
        falls = np.asarray(rule.falls, float)
        grids = poses(
            sheet, ground, Turn(rule.turn_deg, falls / np.linalg.norm(falls), axis, rule.square)
        )
        carried = {
            i: Carried(sheet, turned(np.asarray(parts[i].mesh.vertices, float))) for i in own
        }
        riders = {
            i: rider_of(
                sheet,
                turned(np.asarray(parts[i].mesh.vertices, float)),
                turned(np.asarray(parts[i].fibres, float)),
            )
            for i in rule.cling_ids(side)
            if i in parts and parts[i].fibres is not None
        }
        along = np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2)
        free = free_nodes(sheet)
        return FoldPath(rule, side, sheet, grids, free, along, carried, riders)


def _backed(vertices: np.ndarray, faces: np.ndarray, at_rest: np.ndarray):
    """Copies of a flap sunk towards the body's axis: what comes to lie on it can't slip under.

    Only of what lies far from its old place: by its hinge a flap covers nothing new.
    """
    moved = np.linalg.norm(vertices - at_rest, axis=1) > BACKED_FROM_MM
    faces = faces[moved[faces].all(axis=1)]
    inward = -vertices
    inward[:, 1] -= 40.0
    inward[:, 2] = 0.0
    inward /= np.maximum(np.linalg.norm(inward, axis=1, keepdims=True), 1e-9)
    for depth in BACKING_MM:
        yield vertices + depth * inward, faces


def _reach(sheet: ControlSheet) -> np.ndarray:
    """Return the box (2, 3) that a flap can come to lie in, mm."""
    length = float(np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2).sum(axis=1).max())
    hinge, whole = sheet.mid[:, 0], sheet.mid.reshape(-1, 3)
    return np.array(
        [
            np.minimum(whole.min(axis=0) - 10, hinge.min(axis=0) - 0.95 * length - 8),
            np.maximum(whole.max(axis=0) + 10, hinge.max(axis=0) + 0.95 * length + 8),
        ]
    )


@lru_cache(maxsize=2)
def _reflector(holder: _Held) -> Reflector:
    return Reflector(holder.model)


@dataclass(frozen=True, slots=True, eq=False)
class _Held:
    """A model as a key: equal only to itself."""

    model: BackModel

    def __hash__(self) -> int:
        return id(self.model)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Held) and other.model is self.model


def reflector_of(model: BackModel) -> Reflector:
    """Return the reflector of a model, the same one each time."""
    return _reflector(_Held(model))


def reflect(
    model: BackModel, fold_id: str, share: float, gone: Collection[str] = ()
) -> dict[str, np.ndarray]:
    """Return where a flap and what clings to it lie at a share of its fold.

    Parameters
    ----------
    model : BackModel
    fold_id : str
        ``trapezius.left``; see ``meshes.catalogue.folds.fold_ids``.
    share : float
        0 in place, 1 laid back.
    gone : collection of str
        Ids of parts that were taken away before.

    Returns
    -------
    dict of str to (n, 3) float
        Vertices by part id, mm LPS; the faces stay as they are.

    Raises
    ------
    PeelbackError
        No such fold, an impossible share, or the model lacks its parts.
    """
    return reflector_of(model).laid([Laid(fold_id, share)], gone)
