"""One way to lay a flat muscle, fascia or aponeurosis: draped, cleared, thickened, declared."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from meshes.drape.resolve import resolve_sheet
from meshes.drape.sheet import SheetGrid, thicken
from meshes.model import Attachment, Contact, Part
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

    Returns
    -------
    Part
    """
    part_id = part_id or f"{entry}.left"
    ids = bench.near_ids(sheet.mid, 6.0, without)
    if resolve:
        sheet = resolve_sheet(sheet, [bench.index(i) for i in ids], gap)
    thick = thicken(sheet, tendon=tendon, fibres=fibres)
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
    bench.field.add_sheet(sheet.outer(), depth=slab_mm, outward=radial(bench))
    bench.sheets[part_id] = sheet
    return part


def part_of_curve(curve: np.ndarray, first: float, last: float, count: int = 12) -> np.ndarray:
    """Points (count, 3) along a curve between two shares of its length."""
    curve = np.asarray(curve, float)
    s = np.concatenate([[0.0], np.linalg.norm(np.diff(curve, axis=0), axis=1).cumsum()])
    wanted = np.linspace(first, last, count) * s[-1]
    return np.stack([np.interp(wanted, s, curve[:, i]) for i in range(3)], axis=1)
