"""Nerves and vessels that reach the skin of the back, nape and buttock."""

from __future__ import annotations

import numpy as np

from meshes.soft.canal import nerve_range
from meshes.soft.nerves_neck import on_skull
from meshes.soft.small import resample
from meshes.soft.tubes import lay_tube
from meshes.soft.workbench import Workbench

_FORWARD = np.array([0.0, -1.0, 0.0])

CLUNEAL_FROM_MIDLINE_MM = (72.5, 79.0, 86.0)
"""Where the superior cluneal nerves cross the crest (medial one 65 and 81 mm, mean of all 72 mm
in three series)."""
IN_THE_FAT_MM = np.array([0.9, 2.1, 2.8, 2.9, 2.9])
"""Height over the muscles along a cutaneous nerve: under the deep fascia where it comes up,
then through it, then in the fat."""
MIDLINE_PIERCE_MM = 11.0
LATERAL_PIERCE_MM = 62.0


def surface(
    bench: Workbench,
    points: np.ndarray,
    above: float | np.ndarray,
    way: np.ndarray = _FORWARD,
) -> np.ndarray:
    """Points (n, 3) lowered on to what is laid, ``above`` mm over it (one for all, or each)."""
    points = np.asarray(points, float).reshape(-1, 3)
    start = points - 70.0 * way
    gone = np.zeros(len(points))
    for _ in range(80):
        height = bench.field.sample(start + gone[:, None] * way) - above
        gone = np.minimum(gone + np.where(height > 0.05, np.maximum(0.8 * height, 0.1), 0.0), 140.0)
    return start + gone[:, None] * way


def lay_posterior_cutaneous(bench: Workbench) -> None:
    """Lay the cutaneous ends: medial branches near the midline to T6, lateral ones below."""
    scale = bench.frame.scale
    for nerve in nerve_range("C4", "T12"):
        part_id = f"posterior_cutaneous_branch_{nerve}.left"
        if nerve in ("C6", "C7", "C8"):
            continue
        medial = nerve[0] == "C" or int(nerve[1:]) <= 6
        branch = f"{'medial' if medial else 'lateral'}_branch_{nerve}.left"
        line = bench.parts[branch].fibres[0]
        start = line[-1] - 0.6 * (line[-1] - line[-2]) / np.linalg.norm(line[-1] - line[-2])
        pierce = MIDLINE_PIERCE_MM * scale if medial else max(LATERAL_PIERCE_MM * scale, start[0])
        reach = 38.0 if nerve[0] == "C" else (62.0 if medial else 46.0)
        slope = 0.25 if nerve[0] == "C" else 0.32
        across = pierce + reach * scale * np.array([0.0, 0.12, 0.35, 0.62, 1.0])
        z = start[2] - 3.0 - slope * (across - pierce)
        x0 = np.stack([across, np.full(5, start[1]), z], axis=1)
        skin = surface(bench, x0, IN_THE_FAT_MM[:5])
        # A nerve leaves steeply, then runs outward in the fat.
        emerge = 0.35 * start + 0.65 * (skin[0] + [-1.0, -3.0, 1.0])
        lay_tube(bench, part_id, "posterior_cutaneous_branch",
                 np.concatenate([[start, emerge], skin]), (0.75, 0.6), joins=(branch,),
                 clings_to="superficial_fascia.left", triangles=(360, 90), level=nerve)  # fmt: skip


def lay_cluneal(bench: Workbench) -> None:
    """Lay the superior cluneal nerves over the crest and the middle ones beside the sacrum."""
    scale = bench.frame.scale
    crest = resample(bench.landmark("ilium.left.crest"), 120)
    for k, nerve in enumerate(("L1", "L2", "L3")):
        branch = f"lateral_branch_{nerve}.left"
        line = bench.parts[branch].fibres[0]
        start = line[-1] - 0.6 * (line[-1] - line[-2]) / np.linalg.norm(line[-1] - line[-2])
        across = CLUNEAL_FROM_MIDLINE_MM[2 - k] * scale
        back = crest[crest[:, 1] > crest[:, 1].mean()]
        cross = back[np.argmin(np.abs(back[:, 0] - across))]
        cross = np.array([across, cross[1], cross[2]])
        high = cross + [-6.0, 4.0, 14.0]
        low = cross + [7.0 - 3.0 * k, 0.0, -30.0]
        lower = cross + [12.0 - 6.0 * k, 0.0, -58.0]
        skin = surface(bench, np.array([high, cross, low, lower]), IN_THE_FAT_MM[:4])
        middle = 0.5 * (start + high) + [0.0, -2.0, 0.0]
        lay_tube(bench, f"superior_cluneal_nerve_{nerve}.left", "superior_cluneal_nerve",
                 np.concatenate([[start, middle], skin]), (0.8, 0.65), joins=(branch,),
                 clings_to="superficial_fascia.left", triangles=(480, 110),
                 level=nerve)  # fmt: skip
    for k, nerve in enumerate(("S1", "S2", "S3")):
        ramus = bench.parts[f"posterior_ramus_{nerve}.left"].fibres[0]
        start = ramus[-1] - 0.4 * (ramus[-1] - ramus[-2]) / np.linalg.norm(ramus[-1] - ramus[-2])
        out = np.array(
            [
                start + [12.0, 6.0, -4.0],
                start + [26.0, 6.0, -10.0],
                start + [44.0 - 3.0 * k, 2.0, -19.0],
            ]
        )
        skin = surface(bench, out, IN_THE_FAT_MM[:3])
        lay_tube(bench, f"middle_cluneal_nerve_{nerve}.left", "middle_cluneal_nerve",
                 np.concatenate([[start, start + [3.0, 5.0, -1.0]], skin]), (0.7, 0.6),
                 joins=(f"posterior_ramus_{nerve}.left",), clings_to="superficial_fascia.left",
                 triangles=(320, 80), level=nerve)  # fmt: skip


def lay_neck_skin(bench: Workbench) -> None:
    """Lay the lesser occipital and great auricular nerves round the edge of sternocleidomastoid."""
    mastoid = bench.landmark("temporal.left.mastoid_tip")
    inward = np.array([-0.85, -0.5, 0.0])
    inward /= np.linalg.norm(inward)
    low = mastoid + [-5.0, 20.0, -46.0]
    deep = low + [-9.0, -9.0, -4.0]
    path = np.array([low, mastoid + [0.0, 18.0, -22.0], mastoid + [2.0, 20.0, 2.0],
                     mastoid + [4.0, 22.0, 24.0]])  # fmt: skip
    skin = surface(bench, path, 1.2, inward)
    lay_tube(bench, "lesser_occipital_nerve.left", "lesser_occipital_nerve",
             np.concatenate([[deep], skin]), (0.8, 0.65),
             clings_to="superficial_fascia.left", triangles=(420, 100))  # fmt: skip
    path = np.array([low + [0.0, -1.0, -6.0], mastoid + [0.0, 4.0, -34.0],
                     mastoid + [0.0, -8.0, -14.0], mastoid + [2.0, -14.0, 4.0]])  # fmt: skip
    skin = surface(bench, path, 1.2, np.array([-1.0, 0.0, 0.0]))
    lay_tube(bench, "great_auricular_nerve.left", "great_auricular_nerve",
             np.concatenate([[deep + [0.0, -2.0, -5.0]], skin]), (0.9, 0.7),
             clings_to="superficial_fascia.left", triangles=(420, 100))  # fmt: skip


def lay_occipital_artery(bench: Workbench) -> None:
    """Lay the occipital artery: medial to the mastoid, then into the scalp beside the nerve."""
    scale = bench.frame.scale
    top = bench.landmark("occipital.external_protuberance")
    mastoid = bench.landmark("temporal.left.mastoid_tip")
    start = mastoid + [-12.0, 6.0, 2.0]
    points = [start, mastoid + [-11.0, 16.0, 9.0]]
    points += [on_skull(bench, x * scale, top[2] + z * scale, h)
               for x, z, h in ((42.0, -14.0, 8.0), (35.0, -4.0, 5.0), (32.0, 10.0, 3.5),
                               (34.0, 28.0, 3.0), (37.0, 44.0, 3.0))]  # fmt: skip
    lay_tube(bench, "occipital_artery.left", "occipital_artery", np.array(points), (1.25, 0.9),
             clings_to="superficial_fascia.left", triangles=(560, 130))  # fmt: skip
