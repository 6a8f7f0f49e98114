"""White sheets on the roof of the deep muscles: aponeurosis and thoracolumbar fascia."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from scipy.interpolate import PchipInterpolator

from meshes.drape.sheet import SheetGrid
from meshes.model import Contact
from meshes.skeleton.frame import LUMBAR, THORACIC
from meshes.soft.gutter import Gutter
from meshes.soft.relief import Relief, raised
from meshes.soft.sheets import End, at_ligament, part_of_curve, put_sheet
from meshes.soft.workbench import Workbench

APONEUROSIS_MM = 0.9
"""Drawn thickness of the aponeurosis of erector spinae."""
FASCIA_MM = 0.8
"""Drawn thickness of the posterior layer (published 0.5-0.6 mm: drawn thicker)."""
_MEDIAN_MM = 0.2
_ROOM_MM = 0.2
_BED = ("vertebra_", "rib_", "sacrum", "hip_bone")
_MEDIAN = ("supraspinous_ligament", "nuchal_ligament")
_BESIDE_MM = 8.0
_HOLD_MM = 4.0
_NEAR_MM = 30.0
_RAPHE_FADE_MM = 12.0
_BELOW_RIB_MM = 4.0
_BESIDE_EDGE_MM = 0.9
_RAPHE_GAP_MM = 1.4
_INTO_FLESH_MM = 30.0
"""Length over which the aponeurosis of erector spinae frays into the flesh (common practice, no
source)."""
_INTO_NECK_MM = 45.0
"""The same for the fascia under serratus posterior superior."""
_NECK_DROP_MM = 34.0
"""How much lower the fascia ends at its lateral edge than beside the spines."""
_FASCIAL_SPINES = ("T10", "T11", "T12", "L1", "L2", "L3", "L4")


def aponeurosis_top(bench: Workbench, t: np.ndarray) -> np.ndarray:
    """Height up to which the aponeurosis of erector spinae covers the muscle, by t across.

    High beside the spines, low over iliocostalis (common practice, no source).
    """
    z = [bench.frame[level].centre[2] for level in ("T12", "L1", "L3", "L5")]
    floor = float(bench.landmark("S1.median_crest")[2])
    return np.interp(t, [0.0, 0.25, 0.55, 0.8, 1.0], [z[0], z[1], z[2], z[3], floor])


def _on_roof(
    bench: Workbench,
    z_low: float,
    z_top: Callable[[np.ndarray], np.ndarray] | float,
    t_last: float,
    height: float,
    thickness: float,
    across: int,
    along: int,
    over_tips: float,
    raphe: Callable[[np.ndarray], tuple[np.ndarray, np.ndarray, np.ndarray]] | None = None,
) -> SheetGrid:
    """Grid over the roof: v from the midline outward, u from below upward.

    With a raphe, (x, y, share) by height, the sheet runs on round the lateral edge down to it.
    """
    gutter: Gutter = bench.gutter
    t = np.linspace(0, t_last, across)
    top = z_top(t) if callable(z_top) else np.full(across, z_top)
    u = np.linspace(0, 1, along)
    z = z_low + u[None, :] * (top - z_low)[:, None]
    x = _MEDIAN_MM + t[:, None] * (gutter.edge(z) - _MEDIAN_MM)
    # Low over the spine tips, which the sheets over it take as well.
    y = gutter.roof_at(x, z) + height
    # Where bellies stand out of the roof the sheet runs over them.
    low, high = (0.0, float(z.min()) - 3.0), (float(x.max()) + 3.0, float(z.max()) + 3.0)
    near = bench.near_ids(np.stack([x, y, z], axis=-1), 12.0)
    bones = [i for i in near if i.startswith(_BED)]
    bellies = [
        i for i in near if bench.parts[i].kind not in ("bone", "context") and i not in _MEDIAN
    ]
    least = Relief.of(bench, bellies, low, high).at(x, z)
    beside = x > _BESIDE_MM
    bony = Relief.of(bench, bones, low, high)
    least = np.maximum(least, np.where(beside, bony.at(x, z), least))
    y = raised(y, least + 0.5 * thickness + _ROOM_MM)
    # On to the spine tips and the crest of the sacrum in the very midline.
    hold = np.clip(1 - (x - _MEDIAN_MM) / _HOLD_MM, 0, 1) ** 2
    spines = np.maximum(_tip_line(bench)(z), bony.at(0 * x, z))
    y = (1 - hold) * y + hold * (spines + over_tips)
    mid = np.stack([x, y, z], axis=-1)
    if raphe is not None:
        mid = _round_the_edge(mid, *raphe(mid[-1, :, 2]))
    thin = np.full((across, along), thickness)
    grid = SheetGrid(mid, thin, None, 1)
    sign = 1 if float(grid.normals()[..., 1].mean()) > 0 else -1
    return SheetGrid(mid, thin, None, sign)


def _round_the_edge(mid: np.ndarray, x: np.ndarray, y: np.ndarray, share: np.ndarray) -> np.ndarray:
    """Grid led on from its lateral border straight towards (x, y) of each row, as far as share.

    The columns of those rows are spread anew.
    """
    out = mid.copy()
    for row in np.flatnonzero(share > 0):
        last = mid[-1, row]
        corner = np.array([x[row], last[1] - 1.0, last[2]])
        end = np.array([x[row], last[1] + share[row] * (y[row] - last[1]), last[2]])
        if end[1] < corner[1] - 0.5:
            out[:, row] = part_of_curve(
                np.concatenate([mid[:, row], [corner, end]]), 0, 1, len(mid)
            )
    return out


def _raphe(bench: Workbench) -> Callable[[np.ndarray], tuple[np.ndarray, np.ndarray, np.ndarray]]:
    """Lateral raphe, where the posterior layer meets the middle one, by height.

    Gives x and y, mm, and how far the sheet is led on to it, 0-1: near the last rib and the crest
    not at all, there it ends on the roof.
    """
    border = bench.sheets["thoracolumbar_fascia_middle.left"].mid[-1]
    border = border[np.argsort(border[:, 2])]
    gutter: Gutter = bench.gutter

    def place(z: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        inside = np.minimum(z - border[0, 2], border[-1, 2] - z - _BELOW_RIB_MM) / _RAPHE_FADE_MM
        y = np.interp(z, border[:, 2], border[:, 1]) + _RAPHE_GAP_MM
        return gutter.edge(z) + _BESIDE_EDGE_MM, y, np.clip(inside, 0.0, 1.0)

    return place


def thinned_out(
    sheet: SheetGrid, over_mm: float, below: bool = False
) -> Callable[[np.ndarray, np.ndarray], np.ndarray]:
    """White of a fascia that thins out into the muscles' own at one of its ends.

    Parameters
    ----------
    sheet : SheetGrid
        u from below upward.
    over_mm : float
        Length over which it thins out.
    below : bool
        True at its lower end, False at its upper one.

    Returns
    -------
    callable (u, v) -> (n,)
        0 at that end to 1, as `put_sheet` takes it.
    """
    length = np.linalg.norm(np.diff(sheet.mid, axis=1), axis=2).sum(axis=1)
    at = np.linspace(0, 1, len(length))

    def white(u: np.ndarray, v: np.ndarray) -> np.ndarray:
        left = (u if below else 1.0 - u) * np.interp(v, at, length)
        share = np.clip(left / over_mm, 0.0, 1.0)
        return share * share * (3.0 - 2.0 * share)

    return white


def _tip_line(bench: Workbench) -> PchipInterpolator:
    """y of the spine tips and the sacral crest by height."""
    tips = [bench.landmark(f"{v}.spinous_process") for v in ("C7", *THORACIC, *LUMBAR)]
    tips += [bench.landmark(f"S{i}.median_crest") for i in (1, 2, 3, 4)]
    points = np.array(sorted(tips, key=lambda p: float(p[2])))
    return PchipInterpolator(points[:, 2], points[:, 1], extrapolate=True)


def _between(bench: Workbench, sheet: SheetGrid, landmark: str, bone: str) -> np.ndarray:
    """Point (1, 3) half-way between a sheet and a bone, near a landmark, mm."""
    flat = sheet.mid.reshape(-1, 3)
    flat = flat[np.linalg.norm(flat - bench.landmark(landmark), axis=1) < _NEAR_MM]
    away, on_bone, _ = bench.index(bone).signed_distance(flat)
    nearest = int(np.argmin(np.abs(away)))
    return 0.5 * (flat[[nearest]] + on_bone[[nearest]])


def lay_aponeurosis(bench: Workbench) -> None:
    """Lay the aponeurosis of erector spinae on the muscle, under the fascia."""
    crest = bench.landmark("S4.median_crest")
    across, along = (36, 70) if bench.full else (14, 24)
    sheet = _on_roof(
        bench, float(crest[2]) + 4.0, lambda t: aponeurosis_top(bench, t), 0.97,
        -0.15 - APONEUROSIS_MM / 2, APONEUROSIS_MM, across, along,
        over_tips=-0.45,
    )  # fmt: skip
    spines = [End(f"vertebra_{v}", bench.landmark(f"{v}.spinous_process")[None] + [1.0, 0, 0])
              for v in ("T11", "T12", "L1", "L2", "L3", "L4", "L5")]  # fmt: skip
    sacral = np.array([bench.landmark(f"S{i}.median_crest") + [1.0, 0, 0] for i in (1, 2, 3)])
    ends = [
        *spines,
        End("sacrum", sacral),
        End("hip_bone.left", _between(bench, sheet, "ilium.left.PSIS", "hip_bone.left")),
    ]
    put_sheet(
        bench, "erector_spinae_aponeurosis", sheet, ends, [], kind="fascia",
        tendon=thinned_out(sheet, _INTO_FLESH_MM), gap=0.15, fibres=24,
        attach_kind=("attach", "attach"), group="erector_spinae", resolve=False,
        contacts=[at_ligament("erector_spinae_aponeurosis.left", sheet.mid[0])],
    )  # fmt: skip


def lay_thoracolumbar_fascia(bench: Workbench) -> None:
    """Lay the posterior layer of the thoracolumbar fascia over erector spinae."""
    crest = bench.landmark("S4.median_crest")
    top = float(bench.landmark("T1.spinous_process")[2])
    across, along = (40, 110) if bench.full else (14, 34)
    sheet = _on_roof(
        bench, float(crest[2]) + 1.0, lambda t: top - _NECK_DROP_MM * t**2, 1.0, 0.25 + FASCIA_MM / 2, FASCIA_MM, across, along,
        over_tips=0.45, raphe=_raphe(bench),
    )  # fmt: skip
    # Over the spine tips runs the supraspinous ligament, down to L4: there the fascia meets it.
    tips = [bench.landmark(f"{v}.spinous_process") for v in _FASCIAL_SPINES]
    ligament = bench.index("supraspinous_ligament").signed_distance(np.array(tips) + [0.5, 3.0, 0])
    spines = [
        End("supraspinous_ligament", ligament[1]),
        *[End(f"vertebra_{v}", bench.landmark(f"{v}.spinous_process")[None] + [0.5, 0.5, 0])
          for v in (*THORACIC, *LUMBAR)],
    ]  # fmt: skip
    sacral = np.array([bench.landmark(f"S{i}.median_crest") + [0.5, 0.5, 0] for i in (1, 2, 3)])
    middle = bench.sheets["thoracolumbar_fascia_middle.left"].mid[-1]
    put_sheet(
        bench, "thoracolumbar_fascia_posterior", sheet, [*spines, End("sacrum", sacral)], [],
        kind="fascia", tendon=thinned_out(sheet, _INTO_NECK_MM), gap=0.15, fibres=24,
        attach_kind=("attach", "attach"), drawn_thicker=True, resolve=False,
        contacts=[Contact("thoracolumbar_fascia_posterior.left",
                          "thoracolumbar_fascia_posterior.right", "abut", sheet.mid[0]),
                  Contact("thoracolumbar_fascia_posterior.left",
                          "thoracolumbar_fascia_middle.left", "abut", middle),
                  at_ligament("thoracolumbar_fascia_posterior.left", sheet.mid[0])],
    )  # fmt: skip
