"""Which part lies over which: shared area and depth, for any state of the dissection.

One set of rays goes inward over the whole back (``meshes.questions.outward``). What
each passes is kept in order; every question about covering is then a question to
that list, for all parts or only for those that a dissection has left, and with
folded parts in their new places.

Two orders are kept apart: depth (from geometry, here) and group (from naming, the
catalogue). A part may belong to the deep group and lie at the surface.

Depths are those of this computed model. It is a teaching model: never for needle
or surgical guidance.
"""

from __future__ import annotations

import hashlib
import logging
import os
import tempfile
import zipfile
import zlib
from collections.abc import Collection, Iterable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numba import njit

from meshes.drape.distance import KERNEL
from meshes.errors import PeelbackError
from meshes.model import BackModel, Part
from meshes.questions.outward import SPACING_MM, START_MM, InwardRays, inward_rays
from meshes.questions.rays import RayIndex

if TYPE_CHECKING:
    import trimesh

log = logging.getLogger(__name__)

REACH_MM = 150.0
"""Rays end here, or before where they meet the neutral front of the trunk."""

FOLDED_FROM_MM = 150.0
"""A folded part is looked for so far outside the skin: flaps stand off the body."""

LEAST_SHARE = 0.002
"""Covers that hide less of a part than this are left out of lists: the width of a ray or two."""

LEAST_ORDERED = 0.02
"""A part has to hide so much of another to come before it in the order of depth."""

FORMAT = 1


@dataclass(frozen=True, slots=True)
class Cover:
    """One part that lies over another.

    Attributes
    ----------
    part_id : str
    share : float
        Share (0–1) of the covered part's area that it hides.
    area_cm2 : float
        The hidden area, across the rays.
    depth_mm : float
        Mean depth of its outer face below the skin's outer face, where it covers.
    thickness_mm : float
        Mean way through it, where it covers.
    gap_mm : float
        Mean distance from its inner face to the covered part; what lies between
        is counted in, and a part that lies inside it gives a negative gap.
    next_share : float
        Share in which nothing else lies between the two.
    """

    part_id: str
    share: float
    area_cm2: float
    depth_mm: float
    thickness_mm: float
    gap_mm: float
    next_share: float


@dataclass(frozen=True, slots=True, eq=False)
class CoverGraph:
    """Everything over everything, for one state.

    Attributes
    ----------
    ids : tuple of str
    area_mm2 : (n,) float
        Area of each part as rays meet it, covered or not; 0 for a part not met.
    in_view_mm2 : (n,) float
        The part of it over which nothing lies.
    depth_mm : (n,) float
        Mean depth of the outer face below the skin; nan for a part not met.
    shared_mm2 : (n, n) float
        [i, j]: area of part j over which part i lies.
    """

    ids: tuple[str, ...]
    area_mm2: np.ndarray
    in_view_mm2: np.ndarray
    depth_mm: np.ndarray
    shared_mm2: np.ndarray

    def share(self, over: str, under: str) -> float:
        """Return the share (0–1) of ``under`` over which ``over`` lies."""
        i, j = self.ids.index(over), self.ids.index(under)
        return float(self.shared_mm2[i, j] / self.area_mm2[j]) if self.area_mm2[j] > 0 else 0.0

    def shares_in_view(self) -> dict[str, float]:
        """Return the share of each met part over which nothing lies."""
        met = self.area_mm2 > 0
        shares = self.in_view_mm2[met] / self.area_mm2[met]
        return dict(zip(np.array(self.ids, object)[met], shares.tolist(), strict=True))

    def depth_order(self) -> tuple[str, ...]:
        """Return the met parts from outside inward, by geometry alone.

        A part comes after those that hide more of it than it hides of them. Among
        parts that are free to come next the shallower comes first; a ring of parts
        that cover one another is broken where the least lies over.
        """
        met = np.nonzero(self.area_mm2 > 0)[0]
        shared = self.shared_mm2[np.ix_(met, met)]
        hides = shared / self.area_mm2[met]
        over = (hides > LEAST_ORDERED) & (hides > hides.T)
        waiting = over.sum(axis=0)
        depth = self.depth_mm[met]
        left = list(range(len(met)))
        order = []
        while left:
            first = min(left, key=lambda k: (waiting[k], depth[k]))
            left.remove(first)
            waiting = waiting - over[first]
            order.append(self.ids[met[first]])
        return tuple(order)


@dataclass(frozen=True, slots=True, eq=False)
class _Stretches:
    """What the rays pass: flat arrays, ray by ray, outermost first."""

    start: np.ndarray  # (rays + 1,) int64: where each ray begins
    part: np.ndarray  # (n,) int32
    enter: np.ndarray  # (n,) float32, mm from the ray's origin; may be negative after a fold
    leave: np.ndarray  # (n,) float32
    thick: np.ndarray  # (n,) float32


class Layers:
    """The layers of the back under every place of the skin.

    Use :func:`layers_of`, which keeps them beside the cached model.
    """

    def __init__(
        self, ids: Sequence[str], rays: InwardRays, stretches: _Stretches, spacing_mm: float
    ) -> None:
        self.ids = tuple(ids)
        self.rays = rays
        self.spacing_mm = spacing_mm
        self._s = stretches
        self._number = {part_id: k for k, part_id in enumerate(self.ids)}

    @cached_property
    def _ray(self) -> np.ndarray:
        return np.repeat(np.arange(len(self._s.start) - 1), np.diff(self._s.start))

    @cached_property
    def _area(self) -> np.ndarray:
        """Area (mm²) that each stretch's entry stands for."""
        return self.rays.area(self._ray, self._s.enter.astype(np.float64))

    def _mask(self, visible: Collection[str] | None) -> np.ndarray:
        if visible is None:
            return np.ones(len(self.ids), np.bool_)
        mask = np.zeros(len(self.ids), np.bool_)
        mask[[self._number[i] for i in visible if i in self._number]] = True
        return mask

    def _targets(self, target: str | Iterable[str]) -> list[int]:
        names = [target] if isinstance(target, str) else list(target)
        for name in names:
            if name not in self._number:
                raise PeelbackError(f"no part of this model is called {name!r}")
        return [self._number[name] for name in names]

    # --- questions -----------------------------------------------------------------------

    def covers(
        self, target: str | Iterable[str], visible: Collection[str] | None = None
    ) -> tuple[Cover, ...]:
        """Return what lies over a part, or over several taken as one, outermost first.

        Parameters
        ----------
        target : str or iterable of str
            Part ids.
        visible : collection of str or None
            Ids of what is there; None for the whole back. The target need not be among them.
        """
        wanted = self._targets(target)
        ray, item, total = self._over(wanted, self._mask(visible))
        if total <= 0 or not len(item):
            return ()
        s = self._s
        area, over = self._area[item], s.part[ray]
        rows = np.bincount(over, area, len(self.ids))
        depth = np.bincount(over, area * (s.enter[ray] - START_MM), len(self.ids))
        thick = np.bincount(over, area * s.thick[ray], len(self.ids))
        gap = np.bincount(over, area * (s.enter[item] - s.leave[ray]), len(self.ids))
        last = np.append(item[1:] != item[:-1], True)
        beside = np.bincount(over[last], area[last], len(self.ids))
        found = [
            Cover(
                self.ids[k],
                float(rows[k] / total),
                float(rows[k] / 100.0),
                # The skin itself lies at 0 up to the rounding of its rays.
                max(0.0, float(depth[k] / rows[k])),
                float(thick[k] / rows[k]),
                float(gap[k] / rows[k]),
                float(beside[k] / total),
            )
            for k in np.nonzero(rows > LEAST_SHARE * total)[0]
        ]
        return tuple(sorted(found, key=lambda c: (c.depth_mm, c.part_id)))

    def in_view(
        self, target: str | Iterable[str], visible: Collection[str] | None = None
    ) -> float | None:
        """Return the share (0–1) of a part over which nothing lies; None where no ray meets it."""
        wanted = self._targets(target)
        _, item, total = self._over(wanted, self._mask(visible))
        if total <= 0:
            return None
        hidden = np.unique(item)
        return float(max(0.0, 1.0 - self._area[hidden].sum() / total))

    def area_cm2(self, target: str | Iterable[str]) -> float:
        """Return the area of a part across the rays that meet it."""
        entries = np.isin(self._s.part, self._targets(target))
        return float(self._area[entries].sum() / 100.0)

    def faces_of(self, target: str | Iterable[str]) -> tuple[np.ndarray, np.ndarray]:
        """Return where the rays enter and leave a part, (n, 3) and (n, 3) mm LPS.

        The first are places on its outer face, a ray's width apart; the second lie
        beneath them on its inner face.
        """
        entries = np.nonzero(np.isin(self._s.part, self._targets(target)))[0]
        ray = self._ray[entries]
        start, along = self.rays.origins[ray], self.rays.directions[ray]
        enter, leave = (
            reach[entries].astype(np.float64)[:, None] for reach in (self._s.enter, self._s.leave)
        )
        return start + enter * along, start + leave * along

    def places_in_view(
        self, target: str | Iterable[str], visible: Collection[str] | None = None
    ) -> tuple[np.ndarray, np.ndarray]:
        """Return where a part lies open: places on its outer face, (n, 3) mm, and their rays.

        Parameters
        ----------
        target : str or iterable of str
        visible : collection of str or None
            Ids of what is there; None for the whole back.
        """
        wanted = self._targets(target)
        _, item, _ = self._over(wanted, self._mask(visible))
        entries = np.nonzero(np.isin(self._s.part, wanted))[0]
        entries = np.setdiff1d(entries, item)
        ray = self._ray[entries]
        # Of a ray that meets the part twice, the second time lies under the first.
        ray, first = np.unique(ray, return_index=True)
        enter = self._s.enter[entries[first]].astype(np.float64)[:, None]
        return self.rays.origins[ray] + enter * self.rays.directions[ray], ray

    def order_on(self, ray: int, visible: Collection[str] | None = None) -> tuple[str, ...]:
        """Return the ids of what one ray passes, outermost first, each once."""
        mask = self._mask(visible)
        part = self._s.part[self._s.start[ray] : self._s.start[ray + 1]]
        return tuple(dict.fromkeys(self.ids[k] for k in part if mask[k]))

    def _over(self, wanted: list[int], mask: np.ndarray) -> tuple[np.ndarray, np.ndarray, float]:
        """Return (covering stretch, covered stretch) pairs in order, and the target's area."""
        s = self._s
        mine = np.zeros(len(self.ids), np.bool_)
        mine[wanted] = True
        entries = np.nonzero(mine[s.part])[0]
        total = float(self._area[entries].sum())
        first = s.start[self._ray[entries]]
        count = entries - first
        item = np.repeat(entries, count)
        over = np.arange(len(item)) - np.repeat(np.cumsum(count) - count, count)
        over = over + np.repeat(first, count)
        keep = mask[s.part[over]] & ~mine[s.part[over]]
        return over[keep], item[keep], total

    def needs_of(
        self, target: str | Iterable[str], marks: Mapping[str, int], visible: Collection[str] | None
    ) -> dict[int, float]:
        """Return what must go from over a part, with the share of its area, by mark.

        Parameters
        ----------
        marks : mapping of part id to int
            A number with one bit set (or several) for each part that can go.
            Parts without a mark cannot go: areas under them are left out.

        Returns
        -------
        dict of int to float
            Marks of all parts over a place joined by "or", and the share of such places;
            0 stands for what is in view already.
        """
        wanted = self._targets(target)
        over, item, total = self._over(wanted, self._mask(visible))
        if total <= 0:
            return {}
        entries = np.nonzero(np.isin(self._s.part, wanted))[0]
        bits = np.array([marks.get(i, -1) for i in self.ids], np.int64)
        joined = dict.fromkeys(entries.tolist(), 0)
        if len(item):
            firsts = np.nonzero(np.diff(item, prepend=-1))[0]
            each = np.bitwise_or.reduceat(bits[self._s.part[over]], firsts)
            joined.update(zip(item[firsts].tolist(), each.tolist(), strict=True))
        shares: dict[int, float] = {}
        for entry, value in joined.items():
            if value >= 0:
                shares[value] = shares.get(value, 0.0) + float(self._area[entry]) / total
        return shares

    def graph(self, visible: Collection[str] | None = None) -> CoverGraph:
        """Return everything over everything for what is there (None: the whole back)."""
        s = self._s
        area, view, deep, shared = _gather(
            s.start, s.part, s.enter, self._area, self._mask(visible), len(self.ids)
        )
        with np.errstate(invalid="ignore", divide="ignore"):
            depth = deep / area - START_MM
        return CoverGraph(self.ids, area, view, depth, shared)

    # --- other states --------------------------------------------------------------------

    def folded(self, meshes: Mapping[str, trimesh.Trimesh | None]) -> Layers:
        """Return the layers with some parts in new places.

        Parameters
        ----------
        meshes : mapping of part id to mesh (mm LPS), or to None for a part taken away
        """
        self._targets(list(meshes))
        s = self._s
        moved = np.zeros(len(self.ids), np.bool_)
        moved[[self._number[i] for i in meshes]] = True
        stay = ~moved[s.part]
        arrays = [self._ray[stay], *(a[stay] for a in (s.part, s.enter, s.leave, s.thick))]
        there = {i: mesh for i, mesh in meshes.items() if mesh is not None}
        if there:
            owner = np.repeat(
                [self._number[i] for i in there], [len(m.faces) for m in there.values()]
            ).astype(np.int32)
            index = _index(there.values())
            r = self.rays
            away = r.origins - FOLDED_FROM_MM * r.directions
            new = _cast(index, away, r.directions, FOLDED_FROM_MM + REACH_MM, owner, -1)
            ray = np.repeat(np.arange(len(away)), np.diff(new.start))
            added = (
                ray,
                new.part,
                new.enter - np.float32(FOLDED_FROM_MM),
                new.leave - np.float32(FOLDED_FROM_MM),
                new.thick,
            )
            arrays = [np.concatenate(pair) for pair in zip(arrays, added, strict=True)]
        order = np.lexsort((arrays[2], arrays[0]))
        ray, part, enter, leave, thick = (a[order] for a in arrays)
        start = np.searchsorted(ray, np.arange(len(self.rays.origins) + 1))
        return Layers(
            self.ids, self.rays, _Stretches(start, part, enter, leave, thick), self.spacing_mm
        )


# --- casting -----------------------------------------------------------------------------


def cast_layers(
    model: BackModel, spacing_mm: float = SPACING_MM, index: RayIndex | None = None
) -> Layers:
    """Cast the rays; :func:`layers_of` asks the cache first.

    Parameters
    ----------
    model : BackModel
    spacing_mm : float
    index : RayIndex or None
        Of all parts in the model's order, if there is one already.
    """
    if not model.parts:
        raise PeelbackError("there is nothing to ask about: the model has no parts")
    parts = list(model.parts.values())
    if index is None:
        index = _index(parts)
    rays = inward_rays(model, index, spacing_mm)
    owner = np.repeat(np.arange(len(parts)), [len(p.faces) for p in parts]).astype(np.int32)
    ids = [part.id for part in parts]
    stop = ids.index("context_trunk") if "context_trunk" in ids else -1
    stretches = _cast(index, rays.origins, rays.directions, REACH_MM, owner, stop)
    return Layers(ids, rays, stretches, spacing_mm)


def _index(meshes: Iterable[Part | trimesh.Trimesh]) -> RayIndex:
    meshes = list(meshes)
    starts = np.cumsum([0] + [len(m.vertices) for m in meshes]).astype(np.int32)
    vertices = np.concatenate([np.asarray(m.vertices) for m in meshes])
    faces = np.concatenate([np.asarray(m.faces) + s for m, s in zip(meshes, starts)])
    return RayIndex(vertices, faces)


def _cast(
    index: RayIndex,
    origins: np.ndarray,
    directions: np.ndarray,
    reach: float,
    owner: np.ndarray,
    stop: int,
) -> _Stretches:
    """Cast rays on all cores (the kernels let go of the interpreter)."""
    cores = max(1, min(8, os.cpu_count() or 1))
    pieces = np.array_split(np.arange(len(origins)), max(cores, len(origins) // 20_000 + 1))

    def one(piece: np.ndarray) -> tuple:
        crossed = index.unsorted(origins[piece], directions[piece], reach, side_by_side=True)
        return _stretch(*crossed, owner, len(piece), stop)

    with ThreadPoolExecutor(cores) as pool:
        made = list(pool.map(one, pieces))
    count = np.concatenate([m[0] for m in made])
    start = np.concatenate([[0], np.cumsum(count)])
    return _Stretches(start, *(np.concatenate([m[k] for m in made]) for k in range(1, 5)))


@njit(**KERNEL)
def _stretch(ray_of, face_of, distance, facing, owner, n_rays, stop):
    """Turn crossings, ray by ray in any order, into one stretch a part, outermost first.

    The way through a part is the sum of its leavings less its enterings, so that
    one that is crossed twice counts without what lies between.
    """
    n = len(ray_of)
    count = np.zeros(n_rays, np.int64)
    part = np.empty(n, np.int32)
    enter = np.empty(n, np.float32)
    leave = np.empty(n, np.float32)
    thick = np.empty(n, np.float32)
    used = 0
    i = 0
    while i < n:
        ray = ray_of[i]
        first = used
        end = np.inf
        while i < n and ray_of[i] == ray:
            p = owner[face_of[i]]
            t = distance[i]
            into = facing[i] > 0
            slot = first
            while slot < used and part[slot] != p:
                slot += 1
            if slot == used:
                part[slot], enter[slot], leave[slot], thick[slot] = p, t, t, 0.0
                used += 1
            enter[slot] = min(enter[slot], t)
            leave[slot] = max(leave[slot], t)
            thick[slot] += -t if into else t
            if p == stop:
                end = min(end, t)
            i += 1
        # Insertion sort: a ray passes a dozen parts.
        for a in range(first + 1, used):
            p, e, f, g = part[a], enter[a], leave[a], thick[a]
            b = a - 1
            while b >= first and enter[b] > e:
                part[b + 1], enter[b + 1], leave[b + 1], thick[b + 1] = (
                    part[b],
                    enter[b],
                    leave[b],
                    thick[b],
                )
                b -= 1
            part[b + 1], enter[b + 1], leave[b + 1], thick[b + 1] = p, e, f, g
        kept = first
        for a in range(first, used):
            if enter[a] < end:
                # A part cut off by the ray's end, or begun before its start, has no whole sum.
                thick[a] = min(max(thick[a], 0.0), leave[a] - enter[a])
                kept += 1
        used = kept
        count[ray] = used - first
    return count, part[:used].copy(), enter[:used].copy(), leave[:used].copy(), thick[:used].copy()


@njit(**KERNEL)
def _gather(start, part, enter, area, visible, n):
    total = np.zeros(n)
    view = np.zeros(n)
    deep = np.zeros(n)
    shared = np.zeros((n, n))
    for ray in range(len(start) - 1):
        for i in range(start[ray], start[ray + 1]):
            p = part[i]
            total[p] += area[i]
            deep[p] += area[i] * enter[i]
            free = True
            for j in range(start[ray], i):
                q = part[j]
                if visible[q] and q != p:
                    shared[q, p] += area[i]
                    free = False
            if free:
                view[p] += area[i]
    return total, view, deep, shared


# --- keeping -----------------------------------------------------------------------------


def layers_of(model: BackModel, index: RayIndex | None = None) -> Layers:
    """Return the layers of a model, kept beside it in the cache.

    Whatever is wrong with what is kept, the rays are cast again. A model that was
    changed after it was cached, or never cached, is told by its content.
    """
    from meshes.cache import model_folder

    folder = model_folder(model.body, model.detail)
    place = folder / f"layers-{_mark(model)}.npz"
    if place.exists():
        try:
            return _read(place, tuple(model.parts))
        except (OSError, ValueError, KeyError, zipfile.BadZipFile, zlib.error) as problem:
            log.warning("kept layers %s are broken (%s): casting again", place.name, problem)
    layers = cast_layers(model, index=index)
    if (folder / "index.json").exists():
        _keep(layers, place)
    return layers


def _mark(model: BackModel) -> str:
    """Return a hash of the geometry and of the code that asks it."""
    digest = hashlib.blake2b(f"{FORMAT} {SPACING_MM}".encode(), digest_size=10)
    for name in ("cover.py", "outward.py", "rays.py"):
        digest.update(Path(__file__).with_name(name).read_bytes())
    for part in model.parts.values():
        digest.update(part.id.encode())
        digest.update(np.ascontiguousarray(part.vertices))
    return digest.hexdigest()


def _keep(layers: Layers, place: Path) -> None:
    s, r = layers._s, layers.rays
    temporary = None
    try:
        handle, temporary = tempfile.mkstemp(prefix=".layers-", suffix=".npz", dir=place.parent)
        with os.fdopen(handle, "wb") as file:
            np.savez(
                file,
                ids=np.array(layers.ids),
                spacing=layers.spacing_mm,
                origins=r.origins.astype(np.float32),
                directions=r.directions.astype(np.float32),
                tube=r.tube.astype(np.float32),
                start=s.start,
                part=s.part.astype(np.uint16 if len(layers.ids) < 2**16 else np.int32),
                enter=s.enter,
                leave=s.leave,
                thick=s.thick,
            )
        os.replace(temporary, place)
    except OSError as problem:
        log.warning("the layers could not be kept in %s: %s", place.parent, problem)
        if temporary is not None:
            Path(temporary).unlink(missing_ok=True)


def _read(place: Path, ids: tuple[str, ...]) -> Layers:
    with np.load(place, allow_pickle=False) as kept:
        if tuple(kept["ids"].tolist()) != ids:
            raise ValueError("they belong to other parts")
        rays = InwardRays(
            *(kept[name].astype(np.float64) for name in ("origins", "directions", "tube"))
        )
        stretches = _Stretches(
            kept["start"],
            kept["part"].astype(np.int32),
            kept["enter"],
            kept["leave"],
            kept["thick"],
        )
        if stretches.start[-1] != len(stretches.part) or len(stretches.start) != len(rays.tube) + 1:
            raise ValueError("their lengths do not fit")
        return Layers(ids, rays, stretches, float(kept["spacing"]))
