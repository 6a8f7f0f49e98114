"""One way to lay a flat muscle, fascia or aponeurosis: draped, cleared, thickened, declared."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from meshes.drape.distance import MeshIndex, reaching
from meshes.drape.resolve import resolve_sheet, without_wrinkles
from meshes.drape.several import Several
from meshes.drape.sheet import LEAST_END_THICKNESS, SheetGrid, arc_length, share_fibres, thicken
from meshes.model import Attachment, Contact, Part
from meshes.soft.midline import flat_beside_spines
from meshes.soft.workbench import Workbench


@dataclass(frozen=True, slots=True)
class End:
    """One piece of an attachment: where it is and to what.

    Attributes
    ----------
    to : str
        Part id.
    curve : (k, 3) float
        mm.
    """

    to: str
    curve: np.ndarray


def radial(bench: Workbench, forward_mm: float = 25.0) -> Callable[[np.ndarray], np.ndarray]:
    """Outward directions away from a line a little in front of the column.

    Parameters
    ----------
    forward_mm : float
        How far the line lies in front of the vertebral bodies.

    Returns
    -------
    callable (n, 3) -> (n, 3)
        Unit vectors, level.
    """
    levels = list(bench.frame.vertebrae.values())
    z = np.array([v.centre[2] for v in levels])[::-1]
    y = np.array([v.centre[1] for v in levels])[::-1] - forward_mm

    def direction(points: np.ndarray) -> np.ndarray:
        points = np.asarray(points, float)
        away = points.copy()
        away[..., 1] -= np.interp(points[..., 2], z, y)
        away[..., 2] = 0.0
        return away / np.maximum(np.linalg.norm(away, axis=-1, keepdims=True), 1e-9)

    return direction


def put_sheet(
    bench: Workbench,
    entry: str,
    sheet: SheetGrid,
    origins: Sequence[End],
    insertions: Sequence[End],
    *,
    part_id: str | None = None,
    kind: str = "muscle",
    tendon: tuple[float, float] | Callable | None = (0.06, 0.08),
    contacts: Sequence[Contact] = (),
    without: Sequence[str] = (),
    gap: float = 0.25,
    detail: float = 1.0,
    slab_mm: float = 8.0,
    fibres: int = 16,
    resolve: bool = True,
    attach_kind: tuple[str, str] = ("origin", "insertion"),
    drawn_thicker: bool = False,
    group: str | None = None,
    held_by_first_border: bool = False,
    outermost: bool = False,
    outward: Callable | None = None,
    end_taper: float | None = None,
    from_spines: bool = False,
) -> Part:
    """Clear a sheet of its neighbours, close it and put it on the bench.

    Parameters
    ----------
    bench : Workbench
    entry : str
        Catalogue row.
    sheet : SheetGrid
    origins, insertions : sequence of End
    without : sequence of str
        Parts that are no obstacle.
    slab_mm : float
        Depth to which the ground under the sheet counts as solid for what is laid later.
    detail : float
        Factor on the grid at full detail.
    held_by_first_border : bool
        True when the sheet hangs by its border v = 0 (the midline) and not by its ends.
    outermost : bool
        True when everything near lies under the sheet.
    outward : callable (n, 3) -> (n, 3) or None
        Its outer side; None away from the column.
    end_taper : float or None
        Thickness gained per mm from the last end on; None as at the first, which lies on
        the spines beside other sheets.
    from_spines : bool
        True when it starts in the midline, flat on the sheets that take the same spines.

    Returns
    -------
    Part
    """
    part_id = part_id or f"{entry}.left"
    ids = bench.near_ids(sheet.mid, 6.0, without)
    if resolve:
        laid = sheet
        own = fixed_to(origins, insertions, contacts)
        if held_by_first_border:
            sheet = _turned(clear_sheet(bench, _turned(sheet), ids, own, gap, outermost, outward))
        else:
            sheet = clear_sheet(bench, sheet, ids, own, gap, outermost, outward, end_taper)
        if from_spines:
            sheet = flat_beside_spines(bench, laid, sheet, ids, gap)
    # Whatever brought it where it lies, it never runs through itself.
    sheet = without_wrinkles(sheet)
    rim = 3 if bench.full else (2 if sheet.thickness.max() > _CHAMFER_MM else 1)
    thick = thicken(sheet, rim_points=rim, tendon=tendon, fibres=fibres)
    record = bench.catalogue[entry]
    attachments = [Attachment(attach_kind[0], e.to, np.asarray(e.curve, float)) for e in origins]
    attachments += [
        Attachment(attach_kind[1], e.to, np.asarray(e.curve, float)) for e in insertions
    ]
    part = Part(
        id=part_id,
        entry=entry,
        kind=kind,
        stratum=record.stratum,
        group=record.group if group is None else group,
        mesh=thick.mesh,
        uv=thick.uv,
        tendon=thick.tendon,
        fibres=thick.fibres,
        attachments=tuple(attachments),
        region=record.region,
        drawn_thicker=drawn_thicker,
    )
    declared = [Contact(part_id, a.to, "attach", a.curve) for a in attachments]
    bench.add(part, [*declared, *contacts], solid=False)
    bench.field.add_sheet(sheet.outer(), depth=slab_mm, outward=outward or radial(bench))
    bench.sheets[part_id] = sheet
    return part


def fixed_to(
    origins: Sequence[End], insertions: Sequence[End], contacts: Sequence[Contact]
) -> set[str]:
    """Ids of the parts that a sheet may touch at its ends."""
    ends = {end.to for end in (*origins, *insertions)}
    return ends | {c.b for c in contacts if c.kind == "attach"}


def clear_sheet(
    bench: Workbench,
    sheet: SheetGrid,
    near: Sequence[str],
    own: set[str],
    gap: float = 0.25,
    outermost: bool = False,
    outward: Callable | None = None,
    end_taper: float | None = None,
) -> SheetGrid:
    """Clear a sheet of the parts near it; only what it is fixed to may take its ends in.

    Parameters
    ----------
    bench : Workbench
    sheet : SheetGrid
    near : sequence of str
        Ids of the parts to keep clear of.
    own : set of str
        Ids of those to which its ends are fixed.
    gap : float
        mm.
    outermost : bool
        True when everything near lies under the sheet.
    outward : callable (n, 3) -> (n, 3) or None
        Where its ends are lifted to; None away from the column.
    end_taper : float or None
        As in `put_sheet`.

    Returns
    -------
    SheetGrid
    """
    gaps = [(bench.index(i), -_END_SINK_MM if i in own else _END_GAP_MM) for i in near]
    sheet = _lift_ends(_thin_ends(sheet, end_taper), gaps, outward or radial(bench))
    indexes = [bench.index(i) for i in near]
    return resolve_sheet(
        sheet,
        indexes,
        gap,
        attached=[bench.index(i) for i in near if i in own],
        outermost=outermost,
    )


def _turned(sheet: SheetGrid) -> SheetGrid:
    """The same sheet with fibres and rows exchanged."""
    return SheetGrid(
        np.ascontiguousarray(sheet.mid.transpose(1, 0, 2)),
        np.ascontiguousarray(sheet.thickness.T),
        None if sheet.cells is None else np.ascontiguousarray(sheet.cells.T),
        -sheet.sign,
    )


def free_spot(
    bench: Workbench, bone: str, point: np.ndarray, reach: float = 7.0, room: float = 0.6
) -> np.ndarray:
    """Place on a bone nearest to a wanted one that nothing else takes, (3,) mm.

    Parameters
    ----------
    bench : Workbench
    bone : str
        Part id.
    point : (3,) float
        Where it would be best, mm.
    reach : float
        How far it may be from there, mm.
    room : float
        Clearance wanted from all that is laid, mm.
    """
    point = np.asarray(point, float)
    candidates = bench.index(bone).samples(1.0)[0]
    away = np.linalg.norm(candidates - point, axis=1)
    candidates, away = candidates[away < reach], away[away < reach]
    if len(candidates) == 0:
        return point
    others = [bench.index(i) for i in bench.near_ids(candidates, room) if i != bone]
    lack = np.maximum(room - Several(others).least(candidates, 12.0, 12.0), 0.0)
    return candidates[int(np.argmin(away + 4.0 * lack))]


_CHAMFER_MM = 6.0
"""Thickness up to which a preview's sheet has its rim bevelled instead of rounded: less than
a millimetre is missing then."""
_END_LIFT_MM = 3.0
_END_FADE_MM = 12.0
_END_GAP_MM = 0.05
_END_SINK_MM = 0.8
_END_THICKNESS_MM = 0.3
_END_TAPER = 0.12
"""Sheets that take the same spines lie on one another there, so each runs out thin."""


def _thin_ends(sheet: SheetGrid, end_taper: float | None = None) -> SheetGrid:
    """Let a sheet run out thin towards its ends; ``end_taper`` is the slope at the last one."""
    s = arc_length(sheet.mid)
    last = _END_TAPER if end_taper is None else end_taper
    most = _END_THICKNESS_MM + np.minimum(_END_TAPER * s, last * (s[:, -1:] - s))
    return replace(sheet, thickness=np.minimum(sheet.thickness, most))


def _lift_ends(
    sheet: SheetGrid, others: Sequence[tuple[MeshIndex, float]], outward: Callable
) -> SheetGrid:
    """Lift the ends of a sheet off what is near, to a gap each, mm; the fibres follow."""
    mid, way = sheet.mid.copy(), outward(sheet.mid.reshape(-1, 3)).reshape(sheet.mid.shape)
    s = arc_length(sheet.mid)
    used = sheet.used()
    indexes = [index for index, _ in others]
    for end, reach in ((0, s), (-1, s[:, -1:] - s)):
        points, out = mid[:, end], way[:, end]
        half = 0.5 * np.maximum(sheet.thickness[:, end], LEAST_END_THICKNESS)
        lift = np.zeros(len(points))
        for _ in range(4):
            moved = False
            # A point rises by 1.5 mm at most for each; what is out of reach stays so.
            reachable = {id(index) for index, _ in reaching(indexes, points, _END_LIFT_MM + 20.0)}
            for index, gap in others:
                if id(index) not in reachable:
                    continue
                now = points + lift[:, None] * out
                low, high = index.bounds
                near = np.flatnonzero(
                    ((now > low - 2.0) & (now < high + 2.0)).all(axis=1) & used[:, end]
                )
                if len(near) == 0:
                    continue
                distance, _, normal = index.signed_distance(now[near], 6.0)
                facing = np.einsum("nd,nd->n", normal, out[near])
                lack = half[near] + gap - distance
                under = np.isfinite(distance) & (lack > 0.01) & (facing > 0.2)
                if under.any():
                    rows = near[under]
                    lift[rows] += np.minimum(lack[under] / np.maximum(facing[under], 0.5), 1.5)
                    moved = True
            if not moved:
                break
        if not lift.any():
            continue
        lift = np.minimum(lift, _END_LIFT_MM)
        fade = np.clip(1 - reach / _END_FADE_MM, 0, 1) ** 2
        mid = mid + (fade * lift[:, None])[..., None] * out[:, None]
    return replace(sheet, mid=mid)


def part_of_curve(curve: np.ndarray, first: float, last: float, count: int = 12) -> np.ndarray:
    """Points (count, 3) along a curve between two shares of its length."""
    curve = np.asarray(curve, float)
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(curve, axis=0), axis=1).cumsum()])
    wanted = np.linspace(first, last, count) * s[-1]
    return np.stack([np.interp(wanted, s, curve[:, i]) for i in range(3)], axis=1)


def joined(pieces: Sequence[np.ndarray], count: int) -> np.ndarray:
    """Points (count, 3) along curves laid end to end, the ends of each among them."""
    counts = share_fibres(pieces, count)
    return np.concatenate(
        [part_of_curve(p, 0.0, 1.0, n) for p, n in zip(pieces, counts, strict=True)]
    )


def at_ligament(part_id: str, spines: np.ndarray) -> Contact:
    """Hold a sheet to the supraspinous ligament, which runs over the spine tips that it takes."""
    count = max(int(np.linalg.norm(np.diff(spines, axis=0), axis=1).sum() / 5.0), 2)
    return Contact(
        part_id, "supraspinous_ligament", "attach", part_of_curve(spines, 0.0, 1.0, count)
    )
