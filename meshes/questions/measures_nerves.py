"""Measures of nerves, vessels and the spaces they run through, read off the finished model."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np
from scipy.spatial import cKDTree

from meshes.questions.measures import Measured, Unmeasurable


def _course(measured: Measured, nerve: str) -> np.ndarray:
    """Middle lines of a nerve, (n, 3) mm, evenly dense."""
    part_id = nerve if nerve in measured.model.parts else f"{nerve}.left"
    if part_id not in measured.model.parts:
        raise Unmeasurable(f"{nerve} is not built")
    lines = measured.model.parts[part_id].fibres
    if lines is None:
        raise Unmeasurable(f"{nerve} has no middle line")
    dense = []
    for line in np.asarray(lines, dtype=float):
        along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
        if along[-1] < 1e-6:
            continue
        at = np.arange(0.0, along[-1], 0.5)
        dense.append(np.column_stack([np.interp(at, along, line[:, k]) for k in range(3)]))
    return np.concatenate(dense)


def _inside(measured: Measured, points: np.ndarray, part_id: str) -> np.ndarray:
    """Which of the points (n, 3) lie within a part."""
    return np.asarray(measured.mesh(part_id).contains(points))


def _pierces_at(measured: Measured, words: str) -> np.ndarray:
    """Where a nerve leaves a muscle on its outer side: "nerve|muscle", (3,) mm."""
    nerve, muscle = words.split("|")
    part_id = f"{muscle}.left"
    points = _course(measured, nerve)
    inside = _inside(measured, points, part_id)
    if not inside.any():
        distance, _ = cKDTree(measured.mesh(part_id).vertices).query(points)
        nearest = int(np.argmin(distance))
        if distance[nearest] > 6.0:
            raise Unmeasurable(f"{nerve} does not reach {muscle}")
        return points[nearest]
    through = points[inside]
    # The outer face is the one further from the column.
    return through[int(np.argmax(through[:, 1]))]


def leaves_lateral(measured: Measured, words: str) -> float:
    """Where a nerve comes through a muscle: mm lateral to the external protuberance."""
    return float(abs(_pierces_at(measured, words)[0]))


def leaves_below(measured: Measured, words: str) -> float:
    """Where a nerve comes through a muscle: mm below the external protuberance."""
    top = float(measured.landmark("occipital.external_protuberance")[2])
    return top - float(_pierces_at(measured, words)[2])


def _nearest_to(measured: Measured, nerve: str, target: str) -> np.ndarray:
    points = _course(measured, nerve)
    distance, _ = cKDTree(measured.mesh(f"{target}.left").vertices).query(points)
    return points[int(np.argmin(distance))]


def winds_lateral(measured: Measured, words: str) -> float:
    """Where a nerve winds round a muscle: mm lateral to the external protuberance."""
    nerve, muscle = words.split("|")
    return float(abs(_nearest_to(measured, nerve, muscle)[0]))


def winds_below(measured: Measured, words: str) -> float:
    """Where a nerve winds round a muscle: mm below the external protuberance."""
    nerve, muscle = words.split("|")
    top = float(measured.landmark("occipital.external_protuberance")[2])
    return top - float(_nearest_to(measured, nerve, muscle)[2])


def _accessory_at_sternocleidomastoid(measured: Measured) -> np.ndarray:
    """Where the accessory nerve leaves the posterior border of sternocleidomastoid."""
    points = _course(measured, "accessory_nerve")
    distance, _ = cKDTree(measured.mesh("sternocleidomastoid.left").vertices).query(points)
    near = points[distance < 8.0]
    if len(near) == 0:
        raise Unmeasurable("the accessory nerve does not pass sternocleidomastoid")
    return near[int(np.argmax(near[:, 1]))]


def _accessory_at_trapezius(measured: Measured) -> np.ndarray:
    """Where the accessory nerve passes under the anterior border of trapezius."""
    points = _course(measured, "accessory_nerve")
    leaving = _accessory_at_sternocleidomastoid(measured)
    points = points[points[:, 2] < leaving[2]]
    distance, _ = cKDTree(measured.mesh("trapezius_descending.left").vertices).query(points)
    near = points[distance < 8.0]
    if len(near) == 0:
        raise Unmeasurable("the accessory nerve does not reach trapezius")
    return near[int(np.argmax(near[:, 2]))]


def _above_clavicle(measured: Measured, place: np.ndarray) -> float:
    line = measured.landmark("clavicle.left.superior_face")
    beneath = line[int(np.argmin(np.linalg.norm((line - place)[:, :2], axis=1)))]
    return float(place[2] - beneath[2])


def accessory_leaves_above_clavicle(measured: Measured, _: str) -> float:
    """Height above the clavicle where the accessory nerve leaves sternocleidomastoid, mm."""
    return _above_clavicle(measured, _accessory_at_sternocleidomastoid(measured))


def accessory_enters_above_clavicle(measured: Measured, _: str) -> float:
    """Height above the clavicle where the accessory nerve passes under trapezius, mm."""
    return _above_clavicle(measured, _accessory_at_trapezius(measured))


def accessory_below_mastoid(measured: Measured, _: str) -> float:
    """Distance from the mastoid tip to where the nerve leaves sternocleidomastoid, mm."""
    return float(
        np.linalg.norm(
            _accessory_at_sternocleidomastoid(measured)
            - measured.landmark("temporal.left.mastoid_tip")
        )
    )


def accessory_in_triangle(measured: Measured, _: str) -> float:
    """Length of the accessory nerve in the posterior triangle (straight), mm."""
    return float(
        np.linalg.norm(
            _accessory_at_sternocleidomastoid(measured) - _accessory_at_trapezius(measured)
        )
    )


def dorsal_scapular_from_border(measured: Measured, _: str) -> float:
    """Distance of the dorsal scapular nerve from the medial border of the scapula, mm.

    At the superior border of rhomboid minor.
    """
    border = measured.landmark("scapula.left.medial_border")
    points = _course(measured, "dorsal_scapular_nerve")
    minor = np.asarray(measured.mesh("rhomboid_minor.left").vertices)
    near = minor[np.linalg.norm(minor[:, None] - border[None], axis=2).min(axis=1) < 35.0]
    if len(near) == 0:
        raise Unmeasurable("rhomboid minor does not reach the medial border")
    level = float(near[:, 2].max())
    at = points[int(np.argmin(np.abs(points[:, 2] - level)))]
    return float(np.linalg.norm(border - at, axis=1).min())


def thoracodorsal_hilum(measured: Measured, _: str) -> float:
    """Distance from the inferior angle to where the thoracodorsal nerve meets latissimus, mm."""
    points = _course(measured, "thoracodorsal_nerve")
    distance, _index = cKDTree(measured.mesh("latissimus_dorsi.left").vertices).query(points)
    touching = points[distance < 4.0]
    if len(touching) == 0:
        raise Unmeasurable("the thoracodorsal nerve does not reach latissimus")
    first = touching[int(np.argmax(touching[:, 2]))]
    return float(np.linalg.norm(first - measured.landmark("scapula.left.inferior_angle")))


def _cluneal_at_crest(measured: Measured) -> list[np.ndarray]:
    """Where the superior cluneal nerves cross the iliac crest, medial first, (3,) mm each."""
    line = measured.landmark("ilium.left.crest")
    found = []
    for part_id in measured.model.parts:
        if not part_id.startswith("superior_cluneal_nerve") or not part_id.endswith(".left"):
            continue
        points = _course(measured, part_id)
        flat = np.linalg.norm((points[:, None] - line[None])[:, :, [0, 2]], axis=2).min(axis=1)
        found.append(points[int(np.argmin(flat))])
    if not found:
        raise Unmeasurable("no superior cluneal nerve is built")
    return sorted(found, key=lambda p: p[0])


def cluneal_lateral(measured: Measured, which: str) -> float:
    """Distance from the midline of the superior cluneal nerve at the crest, mm.

    ``which``: "medial" for the medial branch, "mean" for the mean of all.
    """
    at = _cluneal_at_crest(measured)
    return float(at[0][0] if which == "medial" else np.mean([p[0] for p in at]))


def cluneal_from_psis(measured: Measured, which: str) -> float:
    """Distance along the crest from the PSIS to the superior cluneal nerve, mm."""
    at = _cluneal_at_crest(measured)
    psis = measured.landmark("ilium.left.PSIS")
    away = [float(np.linalg.norm(p - psis)) for p in at]
    return away[0] if which == "medial" else float(np.mean(away))


def suboccipital_triangle_area(measured: Measured, _: str) -> float:
    """Area of the triangle between the three suboccipital muscles, cm².

    Corners: where the middle lines of rectus capitis posterior major, obliquus
    capitis superior and obliquus capitis inferior come nearest to one another.
    """
    lines = [
        _middle_line(measured, f"{name}.left")
        for name in (
            "rectus_capitis_posterior_major",
            "obliquus_capitis_superior",
            "obliquus_capitis_inferior",
        )
    ]
    corners = []
    for a, b in ((0, 1), (1, 2), (2, 0)):
        gaps = np.linalg.norm(lines[a][:, None] - lines[b][None], axis=2)
        i, j = np.unravel_index(int(np.argmin(gaps)), gaps.shape)
        corners.append((lines[a][i] + lines[b][j]) / 2)
    first, second, third = corners
    return float(np.linalg.norm(np.cross(second - first, third - first)) / 2) / 100.0


def _middle_line(measured: Measured, part_id: str) -> np.ndarray:
    fibres = measured.model.parts[part_id].fibres if part_id in measured.model.parts else None
    if fibres is None:
        raise Unmeasurable(f"{part_id} has no fibres")
    return np.asarray(fibres, dtype=float).mean(axis=0)


MEASURES: Mapping[str, Callable[[Measured, str], float]] = {
    function.__name__: function
    for function in (
        leaves_lateral,
        leaves_below,
        winds_lateral,
        winds_below,
        accessory_leaves_above_clavicle,
        accessory_enters_above_clavicle,
        accessory_below_mastoid,
        accessory_in_triangle,
        dorsal_scapular_from_border,
        thoracodorsal_hilum,
        cluneal_lateral,
        cluneal_from_psis,
        suboccipital_triangle_area,
    )
}
"""Measures by name, as the table of published values calls them."""
