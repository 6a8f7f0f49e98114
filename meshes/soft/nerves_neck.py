"""Nerves and vessels of the nape: vertebral artery, suboccipital and occipital nerves."""

from __future__ import annotations

import numpy as np

from meshes.soft.tubes import Branch, lay_tube
from meshes.soft.workbench import Workbench


def lay_vertebral_artery(bench: Workbench) -> None:
    """Lay the vertebral artery: C6 to C1, the groove of the atlas, the foramen magnum."""
    path = [bench.landmark("C7.left.foramen_transversarium") + [4.0, -9.0, -14.0]]
    path.append(bench.landmark("C7.left.foramen_transversarium") + [1.0, -8.0, 2.0])
    for level in ("C6", "C5", "C4", "C3", "C2"):
        path.append(bench.landmark(f"{level}.left.foramen_transversarium"))
    c1 = bench.landmark("C1.left.foramen_transversarium")
    groove = bench.landmark("C1.left.vertebral_groove")
    path += [c1 + [0.0, 0.0, -4.0], c1 + [0.0, 0.0, 3.0]]
    path += [c1 + [-1.5, 6.5, 6.5], groove + [-0.5, 0.5, 2.4]]
    magnum = bench.landmark("occipital.foramen_magnum").mean(0)
    middle = bench.landmark("C1.canal_centre")
    path += [np.array([11.0, groove[1] + 2.0, groove[2] + 5.5])]
    path += [np.array([7.0, 0.5 * (middle[1] + magnum[1]) - 4.0, magnum[2] - 4.0])]
    path += [np.array([5.5, magnum[1] - 7.0, magnum[2] + 2.0])]
    lay_tube(bench, "vertebral_artery.left", "vertebral_artery", np.array(path), (1.7, 1.6, 1.5),
             pierces=("posterior_atlanto_occipital_membrane", "spinal_dura_mater",
                      "spinal_arachnoid_mater"),
             triangles=(900, 220), gap=0.1)  # fmt: skip


def lay_suboccipital(bench: Workbench) -> None:
    """Lay the suboccipital nerve with its branches, and the veins round it."""
    groove = bench.landmark("C1.left.vertebral_groove")
    magnum = bench.landmark("occipital.opisthion")
    process = bench.landmark("C1.left.transverse_process")
    tubercle = bench.landmark("C1.posterior_tubercle")
    start = np.array([10.5, groove[1] + 4.0, groove[2] + 1.0])
    out = np.array([groove[0] - 2.0, groove[1] + 9.0, groove[2] + 3.0])
    hub = out + [1.0, 5.0, 3.0]
    goals = (
        np.array([12.0, magnum[1] + 4.0, magnum[2] - 5.0]),
        0.45 * hub + 0.55 * (process + [-2.0, 5.0, 9.0]),
        0.5 * hub + 0.5 * (process + [-8.0, 6.0, -6.0]),
        np.array([5.5, tubercle[1] + 1.5, tubercle[2] + 6.0]),
    )
    lay_tube(bench, "suboccipital_nerve.left", "suboccipital_nerve",
             np.array([start, out, hub, hub + [0.5, 4.0, 6.0]]), (0.8, 0.7, 0.6),
             branches=[Branch(np.array([hub, 0.5 * (hub + g) + [0, 0.8, 0], g]), 0.6)
                       for g in goals],
             pierces=("posterior_atlanto_occipital_membrane",),
             triangles=(560, 150), gap=0.15)  # fmt: skip
    vein = np.array(
        [
            np.array([7.0, tubercle[1] + 4.0, tubercle[2] + 3.0]),
            out + [-2.0, 7.0, -1.5],
            out + [5.0, 5.0, -1.0],
            process + [-7.0, 5.0, 3.0],
        ]
    )
    up = np.array([vein[1], vein[1] + [1.0, 3.0, 6.0], [13.0, magnum[1] + 7.0, magnum[2] - 2.5]])
    down = np.array([vein[2], vein[2] + [-1.0, 2.0, -5.0], vein[2] + [-3.0, 5.0, -11.0]])
    lay_tube(bench, "suboccipital_venous_plexus.left", "suboccipital_venous_plexus", vein, 0.9,
             branches=[Branch(up, 0.8), Branch(down, 0.8)], triangles=(420, 120),
             gap=0.2)  # fmt: skip


def back_of(bench: Workbench, part_id: str, x: float, z: float, fallback: float) -> float:
    """How far back (y, mm) the surface of a part reaches near a place."""
    if part_id not in bench.parts:
        return fallback
    v = bench.parts[part_id].mesh.vertices
    near = v[(np.abs(v[:, 2] - z) < 8.0) & (np.abs(v[:, 0] - x) < 5.0)]
    return float(near[:, 1].max()) if len(near) else fallback


def lay_deep_cervical_artery(bench: Workbench) -> None:
    """Lay the deep cervical artery: between C7 and rib 1, then up between the semispinales."""
    process = bench.landmark("C7.left.transverse_process")
    rib = bench.landmark("rib_1.left.neck")
    path = [0.5 * (process + rib) + [-2.0, -8.0, -2.0], 0.5 * (process + rib) + [0.0, 2.0, 2.0]]
    for level, x in (("C7", 19.0), ("C6", 17.0), ("C5", 15.5), ("C4", 14.5), ("C3", 14.0)):
        lamina = bench.landmark(f"{level}.left.lamina")
        y = back_of(bench, "semispinalis_cervicis.left", x, lamina[2], lamina[1] + 9.0)
        path.append(np.array([x, y + 0.5, lamina[2]]))
    lay_tube(bench, "deep_cervical_artery.left", "deep_cervical_artery", np.array(path),
             (1.1, 0.8), clings_to="semispinalis_cervicis.left", triangles=(420, 100))  # fmt: skip


def on_skull(bench: Workbench, x: float, z: float, off: float) -> np.ndarray:
    """Point over the skull at a place seen from behind, ``off`` mm from the bone."""
    index = bench.index("cranium")
    y = bench.landmark("occipital.external_protuberance")[1] + 30.0
    for _ in range(30):
        d = float(index.signed_distance(np.array([[x, y, z]]))[0][0])
        if d < off + 0.05:
            break
        y -= max(0.9 * (d - off), 0.05)
    return np.array([x, y, z])


# Kim HS et al., Sci Rep 2018;8:870 (60 sides), means: lateral to and below the external
# protuberance, mm.
_GREATER_WINDS_MM = 30.0
"""Where the greater occipital nerve winds round obliquus inferior (30.2 +- 8.9 lateral)."""
_GREATER_THROUGH_SEMISPINALIS_MM = (13.1, -27.7)
_GREATER_THROUGH_TRAPEZIUS_MM = (22.6, -16.3)
_THIRD_THROUGH_SEMISPINALIS_MM = (11.5, -58.0)
_THIRD_THROUGH_TRAPEZIUS_MM = (12.9, -44.2)


def _behind(bench: Workbench, part_ids: tuple[str, ...], place: np.ndarray, off: float):
    """A place (3,) moved back until it is ``off`` mm behind the parts there."""
    x, y, z = place
    for part_id in part_ids:
        y = max(y, back_of(bench, part_id, x, z, y - off) + off)
    return np.array([x, y, z])


def _round_obliquus(bench: Workbench, x: float) -> np.ndarray:
    """Places (3, 3) in front of, below and behind obliquus capitis inferior at a distance x."""
    whole = bench.parts["obliquus_capitis_inferior.left"].mesh.vertices
    inner = whole[np.abs(whole[:, 0] - x + 4.0) < 3.0]
    front = inner[np.argmin(inner[:, 1])]
    v = whole[np.abs(whole[:, 0] - x) < 3.0]
    low, back = v[np.argmin(v[:, 2])], v[np.argmax(v[:, 1])]
    return np.array(
        [
            [x - 4.0, front[1] - 1.8, front[2]],
            [x, low[1] - 0.5, low[2] - 2.4],
            [x - 1.0, back[1] + 2.0, back[2] + 1.0],
        ]
    )


def lay_occipital_nerves(bench: Workbench) -> None:
    """Lay the greater and the third occipital nerve, through the muscles to the scalp.

    The greater one winds round the lower border of obliquus capitis inferior, climbs
    medially, and comes through semispinalis and trapezius; the third one comes through
    both lower down and nearer to the midline.
    """
    scale = bench.frame.scale
    top = bench.landmark("occipital.external_protuberance")
    deep, cover = "semispinalis_capitis.left", "trapezius_descending.left"

    def place(shares: tuple[float, float], parts: tuple[str, ...], off: float) -> np.ndarray:
        x, z = shares[0] * scale, top[2] + shares[1] * scale
        start = np.array([x, back_of(bench, deep, x, z, top[1] - 20.0), z])
        return _behind(bench, parts, start, off)

    start = bench.parts["posterior_ramus_C2.left"].fibres[0][-1]
    winds = _round_obliquus(bench, _GREATER_WINDS_MM * scale)
    through = place(_GREATER_THROUGH_SEMISPINALIS_MM, (deep,), 1.2)
    between = place((17.5, -22.5), (deep,), 1.2)
    out = on_skull(bench, _GREATER_THROUGH_TRAPEZIUS_MM[0] * scale,
                   top[2] + _GREATER_THROUGH_TRAPEZIUS_MM[1] * scale, 8.0)  # fmt: skip
    out = _behind(bench, (deep, cover), out, 1.2)
    inside = through + np.array([0.6, -7.0, -3.5]) * scale
    climb = 0.5 * (winds[2] + inside) + [0.0, -1.0, 0.0]
    scalp = [on_skull(bench, x * scale, top[2] + z * scale, 4.0)
             for x, z in ((24.0, 4.0), (27.0, 22.0), (30.0, 40.0))]  # fmt: skip
    lay_tube(bench, "greater_occipital_nerve.left", "greater_occipital_nerve",
             np.array([start, *winds, climb, inside, through, between, out, *scalp]),
             (1.2, 1.1, 0.8), joins=("posterior_ramus_C2.left",), clings_to=deep,
             triangles=(900, 200))  # fmt: skip
    start = bench.parts["posterior_ramus_C3.left"].fibres[0][-1]
    lamina = bench.landmark("C3.left.lamina")
    bend = 0.45 * start + 0.55 * lamina + [2.0, 7.0, 5.0]
    through = place(_THIRD_THROUGH_SEMISPINALIS_MM, (deep,), 1.0)
    out = place(_THIRD_THROUGH_TRAPEZIUS_MM, (deep, cover), 1.0)
    # From there on it stays in the fat, behind the origin of trapezius.
    over = [_behind(bench, (deep, cover), on_skull(bench, x * scale, top[2] + z * scale, 6.0), 1.4)
            for x, z in ((11.2, -33.0), (9.6, -22.0), (8.8, -11.0))]  # fmt: skip
    scalp = _behind(bench, (cover,), on_skull(bench, 8.5 * scale, top[2], 4.0), 1.4)
    inside = 0.5 * (bend + through) + [0.0, 1.0, 0.0]
    lay_tube(bench, "third_occipital_nerve.left", "third_occipital_nerve",
             np.array([start, bend, inside, through, out, *over, scalp]),
             (0.75, 0.6), joins=("posterior_ramus_C3.left",), clings_to=deep,
             triangles=(480, 110))  # fmt: skip
