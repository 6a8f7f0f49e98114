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
from scipy.spatial import cKDTree

from meshes.catalogue.folds import (
    OUT_OF_THE_WAY,
    FoldRule,
    Incision,
    Laid,
    fold_named,
    fold_of_part,
    load_folds,
    own_parts,
)
from meshes.catalogue.plan import load_plan, removed_by
from meshes.drape.distance import MeshIndex
from meshes.errors import PeelbackError
from meshes.model import BackModel, mirror_points, other_side
from meshes.questions.folding.aside import AsideCarried, AsideFlap, Shift, drawn_aside
from meshes.questions.folding.belly import Belly, belly_of
from meshes.questions.folding.bulk import Bulk, bulk_of
from meshes.questions.folding.carrying import Carried
from meshes.questions.folding.cloth import march
from meshes.questions.folding.control_sheet import (
    ControlSheet,
    sheet_through,
    trimmed,
    without_short_ends,
)
from meshes.questions.folding.cutting import cut_across, cut_out, stumps
from meshes.questions.folding.flap_mesh import STAYS, FlapMesh, uncut
from meshes.questions.folding.ground import ground_of
from meshes.questions.folding.patch import PatchLines, patch_sheet
from meshes.questions.folding.riders import Rider, rider_of
from meshes.questions.folding.rod import Reeds, Rod, RodCarried
from meshes.questions.folding.rod_ways import between
from meshes.questions.folding.strands import Strands, strands_of
from meshes.questions.folding.turning import Turn, free_nodes, poses

THIN_KINDS = frozenset({"nerve", "artery", "vein"})
"""What is no ground for a flap: it is pushed aside, or rides on it."""

COVERS = ("skin", "superficial_fascia", "deep_fascia")
"""What lies over all muscles, outermost first: gone before they are folded, so no ground."""

BACKING_MM = (2.0, 4.0, 6.0, 8.0, 10.0)
"""A flap that lies folded counts as solid to this depth beneath it."""

BACKED_FROM_MM = 40.0

KEPT_PATHS = 48

ROLL_MM, ROLL_OF_HALF = 6.0, 1.4
"""Least radius of a roll, mm, and as a multiple of half the flesh's thickness."""


@dataclass(frozen=True, slots=True, eq=False)
class Flap:
    """One sheet that turns about one hinge.

    Attributes
    ----------
    sheet : ControlSheet
        At rest; of the left side even where the fold is of the right (which is its mirror).
    grids : (count, rows, columns, 3) float
        Poses of the sheet's grid, at rest first.
    free, along : (rows, columns) and (rows, columns - 1) float
        0 for held nodes, else 1; lengths of the links along the fibres, mm.
    """

    sheet: ControlSheet
    grids: np.ndarray
    free: np.ndarray
    along: np.ndarray

    def grid(self, share: float) -> np.ndarray:
        """Return the sheet's grid at a share of the way, (rows, columns, 3) mm."""
        at = float(np.clip(share, 0.0, 1.0)) * (len(self.grids) - 1)
        low = min(int(at), len(self.grids) - 2)
        grid = self.grids[low] + (at - low) * (self.grids[low + 1] - self.grids[low])
        if 0 < at - low < 1 and low > 0:
            # Between two poses the straight way is a little short: give fibres their length.
            march(grid, self.free, self.along)
        return grid

    def pose(self, share: float) -> np.ndarray:
        """Return what carries the flap's points at a share of the way."""
        return self.grid(share)

    def carried(self, points: np.ndarray) -> Carried:
        """Prepare points (n, 3), mm at rest, to be carried along."""
        return Carried(self.sheet, points)


@dataclass(frozen=True, slots=True, eq=False)
class RodFlap:
    """A belly that turns over, about its middle line.

    Attributes
    ----------
    sheet : ControlSheet
        Laid through it at rest; its column 0 is where it stays fixed.
    rods : tuple of Rod
        Its middle line's poses, at rest first.
    nodes : RodCarried
        The sheet's nodes.
    """

    sheet: ControlSheet
    rods: tuple[Rod, ...]
    nodes: RodCarried

    @property
    def reeds(self) -> Reeds:
        """Its fibres."""
        return self.nodes.reeds

    def pose(self, share: float) -> Rod:
        """Return what carries the flap's points at a share of the way."""
        at = float(np.clip(share, 0.0, 1.0)) * (len(self.rods) - 1)
        low = min(int(at), len(self.rods) - 2)
        return between(self.rods[low], self.rods[low + 1], at - low)

    def grid(self, share: float) -> np.ndarray:
        """Return the sheet's grid at a share of the way, (rows, columns, 3) mm."""
        return self.nodes.place(self.pose(share)).reshape(self.sheet.mid.shape)

    def carried(self, points: np.ndarray) -> RodCarried:
        """Prepare points (n, 3), mm at rest, to be carried along."""
        return RodCarried(self.rods[0], self.reeds, points)


@dataclass(frozen=True, slots=True, eq=False)
class CutPart:
    """A part that is cut and folded: its mesh and what carries each vertex.

    Attributes
    ----------
    mesh : FlapMesh
    rest : (n, 3) float
        mm, left side.
    carried : tuple of Carried
        One for each flap, of the vertices ``at`` names.
    at : tuple of (k,) int
    strands : Strands or None
        Of a muscle with one flap: its own fibre lines, which keep their length.
    bulk : tuple of Bulk
        One for each flap: what it holds.
    """

    mesh: FlapMesh
    rest: np.ndarray
    carried: tuple[Carried | RodCarried | AsideCarried, ...]
    at: tuple[np.ndarray, ...]
    strands: Strands | None = None
    bulk: tuple[Bulk, ...] = ()

    def place(self, poses: Sequence[np.ndarray | Rod | Shift]) -> np.ndarray:
        """Return the vertices (n, 3) for the poses of the flaps, mm."""
        moved = self.rest.copy()
        for carried, at, pose in zip(self.carried, self.at, poses, strict=True):
            if len(at):
                moved[at] = carried.place(pose)
        if self.strands is not None:
            (at,) = self.at
            moved[at] += self.strands.shift(poses[0])
        for bulk in self.bulk:
            bulk.restore(moved)
        return moved


@dataclass(frozen=True, slots=True, eq=False)
class FoldPath:
    """The whole way of one fold, worked out once.

    Attributes
    ----------
    rule : FoldRule
    side : {"left", "right"}
    flaps : tuple of Flap
    parts : mapping of str to CutPart
        The flaps' own parts, by id.
    riders : mapping of str to Rider
        What clings, by id; it rides on the first flap.
    """

    rule: FoldRule
    side: str
    flaps: tuple[Flap | RodFlap | AsideFlap, ...]
    parts: Mapping[str, CutPart]
    riders: Mapping[str, Rider]

    def poses(self, share: float) -> list[np.ndarray | Rod | Shift]:
        """Return what carries each flap at a share of the way."""
        return [flap.pose(share) for flap in self.flaps]

    def mirrored(self) -> FoldPath:
        """Return the same way on the other side."""
        return replace(
            self,
            side="left" if self.side == "right" else "right",
            parts={
                other_side(i): replace(c, mesh=c.mesh.mirrored()) for i, c in self.parts.items()
            },
            riders={other_side(i): r for i, r in self.riders.items()},
        )

    def part_ids(self) -> tuple[str, ...]:
        """Return the ids of all that moves."""
        return (*self.parts, *self.riders)

    def hinge(self) -> np.ndarray:
        """Return the hinges' points (n, 3), mm LPS."""
        points = np.concatenate([flap.sheet.mid[:, 0] for flap in self.flaps])
        return self._on_side({"hinge": points})["hinge"]

    def vertices(self, share: float) -> dict[str, np.ndarray]:
        """Return the vertices of every moved part at a share of the way, mm LPS.

        Those of a part that is cut belong to the faces of ``parts[id].mesh``; those of
        what rides to the faces of the model's own mesh.
        """
        poses = self.poses(share)
        moved = {i: c.place(poses) for i, c in self.parts.items()}
        moved.update({i: r.place(poses[0]) for i, r in self.riders.items()})
        return self._on_side(moved)

    def carrier(self, part_id: str, points: np.ndarray) -> CutPart | Rider:
        """Prepare other points of a moved part to be carried along; for ``carry``."""
        points = np.asarray(points, float)
        points = mirror_points(points) if self.side == "right" else points
        if part_id in self.riders:
            return self.riders[part_id].for_points(points)
        own = self.parts[part_id]
        near = cKDTree(own.rest).query(points)[1]
        at = tuple(np.flatnonzero(own.mesh.piece[near] == k) for k in range(len(self.flaps)))
        carried = tuple(flap.carried(points[a]) for flap, a in zip(self.flaps, at, strict=True))
        strands = own.strands and own.strands.for_points(points[at[0]])
        return CutPart(own.mesh, points, carried, at, strands)

    def carry(self, carriers: Mapping[object, CutPart | Rider], share: float) -> dict:
        """Return prepared points at a share of the way, by the same keys."""
        poses = self.poses(share)
        moved = {
            key: c.place(poses[0]) if isinstance(c, Rider) else c.place(poses)
            for key, c in carriers.items()
        }
        return self._on_side(moved)

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
        self._taken: dict[tuple[str, str], frozenset[str]] = {}

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

    def laid(
        self, folds: Sequence[Laid], gone: Collection[str] = ()
    ) -> dict[str, tuple[np.ndarray, np.ndarray]]:
        """Return the surface of everything that lies folded, by part id.

        Parameters
        ----------
        folds : sequence of Laid
            In the order in which they were done; those at share 0 move nothing.
        gone : collection of str

        Returns
        -------
        dict of str to (vertices (n, 3) float, faces (m, 3) int)
            mm LPS; flap and stump are closed surfaces of one mesh.
        """
        moved: dict[str, tuple[np.ndarray, np.ndarray]] = {}
        for k, laid in enumerate(folds):
            if laid.share <= 0:
                continue
            path = self.path(laid.fold_id, gone, folds[:k])
            for part_id, vertices in path.vertices(laid.share).items():
                moved[part_id] = (vertices, self.faces(path, part_id))
        return moved

    def faces(self, path: FoldPath, part_id: str) -> np.ndarray:
        """Return the faces (m, 3) that belong to a way's vertices of a part."""
        if part_id in path.parts:
            return path.parts[part_id].mesh.faces
        return np.asarray(self.model.parts[part_id].mesh.faces)

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
        if part_id in self._taken_with(rule, side):
            return False
        if part.kind in THIN_KINDS or part.side not in (side, None) or not own:
            return False
        if part.entry in COVERS:
            outer = [COVERS.index(p.entry) for p in own if p.entry in COVERS]
            return bool(outer) and COVERS.index(part.entry) > max(outer)
        return part.stratum >= min(p.stratum for p in own)

    def _taken_with(self, rule: FoldRule, side: str) -> frozenset[str]:
        """Return what the fold's own step takes away altogether: it can bear no flap."""
        key = (rule.step, side)
        if key not in self._taken:
            taken = removed_by(load_plan().step(rule.step), side, self.model.catalogue)
            self._taken[key] = frozenset(i for i in taken if not fold_of_part(i))
        return self._taken[key]

    def _hinge_line(self, rule: FoldRule, turned, side: str) -> np.ndarray | None:
        if not rule.hinge:
            return None
        ends = np.array([self._landmark(rule, name, turned, side) for name in rule.hinge])
        return ends + [rule.hinge_out_mm, 0.0, 0.0]

    def _landmark(self, rule: FoldRule, name: str, turned, side: str) -> np.ndarray:
        name = name.format(side=side)
        if name not in self.model.landmarks:
            raise PeelbackError(f"fold {rule.id} cannot be drawn: the model lacks {name}")
        return turned(np.reshape(self.model.landmarks[name], (-1, 3)).mean(axis=0)[None])[0]

    def _lines(self, rule: FoldRule, incision: Incision, turned, side: str) -> PatchLines:
        """Return a flap's lines of incision as the plan has them, seen from behind."""
        cuts = rule.cuts or load_plan().step(rule.lines_of or rule.step).cuts

        def line(number: int) -> np.ndarray:
            points = [self._landmark(rule, n, turned, side)[[0, 2]] for n in cuts[number].along]
            return np.array(points)

        hinge = np.array(
            [self._landmark(rule, name, turned, side)[[0, 2]] for name in incision.hinge]
        )
        hinge[:, 0] += incision.hinge_out_mm
        medial = None
        if incision.medial is not None:
            medial = line(incision.medial) + [cuts[incision.medial].offset_mm, 0.0]
        ends = []
        for number, end in ((incision.top, 0), (incision.bottom, -1)):
            if number is None:
                # Across, at the end of the medial cut.
                z = medial[np.argsort(-medial[:, 1])][end, 1]
                ends.append(np.array([[0.0, z], [400.0, z]]))
            else:
                ends.append(line(number))
        for k in (0, 1):
            # The hinge ends on the lines across.
            order = np.argsort(ends[k][:, 0])
            hinge[k, 1] = np.interp(hinge[k, 0], *ends[k][order].T)
        return PatchLines(ends[0], ends[1], hinge, medial)

    def _worked_out(self, fold_id: str, gone: frozenset[str], before: Sequence[Laid]) -> FoldPath:
        rule, side = fold_named(fold_id)
        parts = self.model.parts
        own = rule.part_ids(side)
        missing = [i for i in own if i not in parts]
        if missing:
            raise PeelbackError(f"fold {fold_id} cannot be drawn: the model has no {missing[0]}")
        # All is worked out on the left: the right is its mirror image.
        turned = mirror_points if side == "right" else np.asarray

        def surface(vertices, faces):
            faces = np.asarray(faces)
            return turned(np.asarray(vertices, float)), faces[:, ::-1] if side == "right" else faces

        def shell(part_id: str):
            return surface(parts[part_id].mesh.vertices, parts[part_id].mesh.faces)

        belly = None
        if rule.aside_mm:
            sheets, cut = [], {}
        elif rule.flaps:
            sheets, cut = self._by_incisions(rule, side, turned, shell)
        elif rule.belly:
            belly, cut = self._as_belly(rule, side, turned, shell)
            sheets = [belly.sheet]
        else:
            sheets, cut = self._by_fibres(rule, side, turned, shell)
        # A flap that was folded before counts as laid back; one only lifted is in no one's way.
        folded = [b for b in before if b.side == side and b.share > 0 and b.fold_id != fold_id]
        back = [Laid(b.fold_id) for b in folded if b.share >= OUT_OF_THE_WAY]
        lying = self.laid(back, gone)
        lifted = {i for b in folded if b.share < OUT_OF_THE_WAY for i in own_parts(b.fold_id)}
        moving = {*own, *rule.cling_ids(side), *lifted}
        stays = [
            i for i in parts
            if i not in moving and i not in gone and self._is_ground(i, rule, side)
        ]  # fmt: skip
        under = self._next_cover(rule, stays)
        shells = [shell(i) for i in (under or stays) if i not in lying]
        fixed = len(shells)
        for i, (vertices, faces) in lying.items():
            if i in moving or i in gone or parts[i].kind in THIN_KINDS:
                continue
            vertices, faces = surface(vertices, faces)
            shells.append((vertices, faces))
            # The way that it took then, over what lay there before it.
            earlier = next(k for k, b in enumerate(back) if b.fold_id == fold_of_part(i))
            path = self.path(back[earlier].fold_id, gone, back[:earlier])
            if i in path.parts and not rule.aside_mm:
                shells.extend(_backed(vertices, faces, path.parts[i].rest))
        if rule.flaps:
            # What stays of the sheet itself lies beside its flaps, beyond their hinges.
            for part in cut.values():
                mine = (part.mesh.piece[part.mesh.faces] == STAYS).all(axis=1)
                shells.append((part.rest, part.mesh.faces[mine]))
        if rule.belly:
            # A belly that is turned over comes to lie on the end of it that stays.
            for part in cut.values():
                held = belly.held(part.rest)
                shells.append((part.rest, part.mesh.faces[held[part.mesh.faces].all(axis=1)]))
        if rule.aside_mm:
            flap, cut = self._aside(rule, side, turned, shell, (shells[:fixed], shells[fixed:]))
            return FoldPath(rule, side, (flap,), cut, self._riders(rule, side, turned, flap))
        ground = ground_of(shells, _reach(sheets))
        if belly is not None:
            flap = RodFlap(belly.sheet, tuple(belly.way(rule, ground)), belly.nodes())
            return FoldPath(rule, side, (flap,), cut, {})
        axis = None if rule.axis is None else np.asarray(rule.axis, float)
        falls = np.asarray(rule.falls, float)
        falls /= np.linalg.norm(falls)
        flaps = []
        for sheet in sheets:
            turn = Turn(rule.turn_deg, falls, axis, rule.square, _roll_radius(sheet))
            along = np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2)
            flaps.append(Flap(sheet, poses(sheet, ground, turn), free_nodes(sheet), along))
        riders = self._riders(rule, side, turned, flaps[0])
        return FoldPath(rule, side, tuple(flaps), cut, riders)

    def _riders(self, rule: FoldRule, side: str, turned, flap) -> dict[str, Rider]:
        """Return what clings to a flap."""
        parts = self.model.parts
        return {
            i: rider_of(
                flap,
                turned(np.asarray(parts[i].mesh.vertices, float)),
                turned(np.asarray(parts[i].fibres, float)),
            )
            for i in rule.cling_ids(side)
            if i in parts and parts[i].fibres is not None
        }

    def _aside(self, rule: FoldRule, side: str, turned, shell, ground):
        """Return columns that are drawn aside uncut, and their parts."""
        parts = self.model.parts
        own = rule.part_ids(side)
        shells = {i: shell(i) for i in own}
        low, high = sorted(float(self._landmark(rule, name, turned, side)[2]) for name in rule.bow)
        fibres = [turned(np.asarray(parts[i].fibres, float)) for i in own]
        flap, pressed = drawn_aside(
            list(shells.values()), fibres, *ground, (low, high), rule.aside_mm
        )
        cut = {}
        for (i, (vertices, faces)), by in zip(shells.items(), pressed, strict=True):
            carried = flap.carried(vertices, by)
            at = np.arange(len(vertices))
            bulk = bulk_of(vertices, faces, at, carried.column)
            cut[i] = CutPart(
                uncut(len(vertices), faces), vertices, (carried,), (at,), None, (bulk,)
            )
        return flap, cut

    def _next_cover(self, rule: FoldRule, stays: Sequence[str]) -> list[str]:
        """Return the cover next under a cover that is folded: it alone can bear the flap."""
        own = [COVERS.index(name) for name in rule.parts if name in COVERS]
        if not own:
            return []
        entries = {self.model.parts[i].entry: i for i in stays}
        return next(([entries[n]] for n in COVERS[max(own) + 1 :] if n in entries), [])

    def _by_fibres(self, rule: FoldRule, side: str, turned, shell):
        """Return the sheet laid through fibres, and its parts cut across them."""
        parts = self.model.parts
        own = rule.part_ids(side)
        shells = {i: shell(i) for i in own}
        whole = sheet_through(
            [turned(np.asarray(parts[i].fibres, float)) for i in own],
            [MeshIndex(*shells[i]) for i in own],
            rule.cut_end,
            self._hinge_line(rule, turned, side),
            rule.held,
            rule.belly,
        )
        stump = stumps(whole, rule.stump_mm, rule.stump_from_midline)
        sheet = without_short_ends(trimmed(whole, stump))
        cut = {i: cut_across(whole, sheet, stump, *shells[i]) for i in own}
        made = {}
        for i, mesh in cut.items():
            part = _cut_part(mesh, shells[i][0], [sheet])
            strands = strands_of(sheet, part, turned(np.asarray(parts[i].fibres, float)))
            made[i] = replace(part, strands=strands)
        return [sheet], made

    def _as_belly(self, rule: FoldRule, side: str, turned, shell):
        """Return a belly as a rod, and its parts cut across their fibres."""
        parts = self.model.parts
        own = rule.part_ids(side)
        shells = {i: shell(i) for i in own}
        fibres = [turned(np.asarray(parts[i].fibres, float)) for i in own]
        whole = sheet_through(
            fibres, [MeshIndex(*shells[i]) for i in own], rule.cut_end, None, rule.held, True
        )
        stump = stumps(whole, rule.stump_mm, rule.stump_from_midline)
        sheet = without_short_ends(trimmed(whole, stump))
        cut = {i: cut_across(whole, sheet, stump, *shells[i]) for i in own}
        belly = belly_of(sheet, np.concatenate([v for v, _ in shells.values()]), fibres)
        return belly, {i: _cut_part(m, shells[i][0], [belly]) for i, m in cut.items()}

    def _by_incisions(self, rule: FoldRule, side: str, turned, shell):
        """Return the sheets between lines of incision, and the part cut along them."""
        (part_id,) = rule.part_ids(side)
        vertices, faces = shell(part_id)
        lines = [self._lines(rule, incision, turned, side) for incision in rule.flaps]
        sheets = [patch_sheet(vertices, faces, each) for each in lines]
        mesh = cut_out(sheets, lines, vertices, faces)
        return sheets, {part_id: _cut_part(mesh, vertices, sheets)}


def _cut_part(
    mesh: FlapMesh, vertices: np.ndarray, sheets: Sequence[ControlSheet | Belly]
) -> CutPart:
    rest = mesh.weights @ vertices
    at = tuple(np.flatnonzero(mesh.piece == k) for k in range(len(sheets)))
    carried = tuple(
        sheet.carried(rest[a]) if isinstance(sheet, Belly) else Carried(sheet, rest[a])
        for sheet, a in zip(sheets, at, strict=True)
    )
    bulk = tuple(
        bulk_of(rest, mesh.faces[(mesh.piece[mesh.faces] == k).all(axis=1)], a, c.column)
        for k, (a, c) in enumerate(zip(at, carried, strict=True))
        if len(a)
    )
    return CutPart(mesh, rest, carried, at, None, bulk)


def _roll_radius(sheet: ControlSheet) -> float:
    """Return the least radius of a roll, mm: thick flesh rolls wider than thin."""
    columns = max(3, sheet.mid.shape[1] // 3)
    return max(ROLL_MM, ROLL_OF_HALF * float(np.percentile(sheet.half_mm[:, :columns], 90)))


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


def _reach(sheets: Sequence[ControlSheet]) -> np.ndarray:
    """Return the box (2, 3) that flaps can come to lie in, mm."""
    boxes = []
    for sheet in sheets:
        length = float(np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2).sum(axis=1).max())
        hinge, whole = sheet.mid[:, 0], sheet.mid.reshape(-1, 3)
        boxes.append(
            [
                np.minimum(whole.min(axis=0) - 10, hinge.min(axis=0) - 0.95 * length - 8),
                np.maximum(whole.max(axis=0) + 10, hinge.max(axis=0) + 0.95 * length + 8),
            ]
        )
    boxes = np.array(boxes)
    return np.array([boxes[:, 0].min(axis=0), boxes[:, 1].max(axis=0)])


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
) -> dict[str, tuple[np.ndarray, np.ndarray]]:
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
    dict of str to (vertices (n, 3) float, faces (m, 3) int)
        By part id, mm LPS: cut, flap and stump apart.

    Raises
    ------
    PeelbackError
        No such fold, an impossible share, or the model lacks its parts.
    """
    return reflector_of(model).laid([Laid(fold_id, share)], gone)
