"""Level rules of the deep muscles: from which landmark to which each fascicle runs.

Levels after Macintosh JE & Bogduk N, Clin Biomech 1986;1:196-213 and Spine
1987;12:658-668 (multifidus, longissimus, iliocostalis) and Gray H., Anatomy of
the Human Body, 20th ed., 1918, Deep muscles of the back (the rest); both as
recalled, see the catalogue for what was seen.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.drape.distance import MeshIndex, merge
from meshes.skeleton.frame import LEVELS
from meshes.soft.gutter import Gutter
from meshes.soft.parting import free_place
from meshes.soft.workbench import Workbench


@dataclass(frozen=True, slots=True)
class Fascicle:
    """One fascicle of a deep muscle.

    Attributes
    ----------
    muscle : str
        Catalogue entry.
    origin, insertion : str
        What it says of its ends: part ids attached to.
    line : (n, 3) float
        Its course, origin end first, mm.
    reach : float
        How far its claim on the gutter reaches beyond its neighbours', mm.
    """

    muscle: str
    origin: str
    insertion: str
    line: np.ndarray
    reach: float


# Where each muscle lies in the gutter: share of the way from midline to lateral
# edge, and depth (0 floor, 1 roof), by region or level. A fascicle is led through these
# places between its ends. Common practice, no source; regional order after
# Gray 1918: spinalis, longissimus, iliocostalis from medial to lateral.
_LANE = {
    "iliocostalis_lumborum": {
        "L": (0.82, 0.55), "L4": (0.84, 0.55), "L5": (0.88, 0.6), "T": (0.88, 0.55),
        "S": (0.86, 0.75),
    },
    "iliocostalis_thoracis": {"T": (0.84, 0.60), "C": (0.95, 0.60)},
    "iliocostalis_cervicis": {"T": (0.82, 0.75), "C": (0.97, 0.55)},
    "longissimus_thoracis": {
        "S": (0.76, 0.85), "L": (0.50, 0.70), "L4": (0.58, 0.70), "L5": (0.75, 0.72),
        "T": (0.54, 0.62),
    },
    "longissimus_cervicis": {"T": (0.58, 0.70), "C": (0.90, 0.45)},
    "longissimus_capitis": {"T": (0.52, 0.72), "C": (0.80, 0.66)},
    "spinalis_thoracis": {"L": (0.07, 0.92), "T": (0.09, 0.88)},
    "spinalis_cervicis": {"T": (0.08, 0.75), "C": (0.10, 0.42)},
    "semispinalis_thoracis": {"T": (0.22, 0.50), "C": (0.20, 0.40)},
    "semispinalis_cervicis": {"T": (0.26, 0.48), "C": (0.36, 0.38)},
    "semispinalis_capitis": {"T": (0.36, 0.66), "C": (0.38, 0.72)},
    "multifidus_cervicis": {"T": (0.2, 0.25), "C": (0.38, 0.14)},
    "multifidus_thoracis": {"T": (0.17, 0.22)},
    "multifidus_lumborum": {
        "T": (0.16, 0.3), "L": (0.24, 0.42), "L4": (0.30, 0.45), "L5": (0.47, 0.5),
        "S": (0.50, 0.50),
    },
}  # fmt: skip

# Claim in mm: makes large muscles win cells from small ones at equal distance.
_REACH = {
    "iliocostalis_lumborum": 4.0,
    "iliocostalis_thoracis": 4.0,
    "iliocostalis_cervicis": 3.0,
    "longissimus_thoracis": 6.0,
    "longissimus_cervicis": 4.5,
    "longissimus_capitis": 3.0,
    "spinalis_thoracis": 1.2,
    "spinalis_cervicis": 1.5,
    "semispinalis_thoracis": 3.5,
    "semispinalis_cervicis": 3.0,
    "semispinalis_capitis": 3.0,
    "multifidus_cervicis": 1.5,
    "multifidus_thoracis": 2.0,
    "multifidus_lumborum": 9.0,
}


def level_range(first: str, last: str) -> list[str]:
    """Levels from first to last, both included, head first."""
    return list(LEVELS[LEVELS.index(first) : LEVELS.index(last) + 1])


def deep_fascicles(bench: Workbench, gutter: Gutter) -> list[Fascicle]:
    """All fascicles of the left deep muscles that fill the gutter.

    Parameters
    ----------
    bench : Workbench
    gutter : Gutter

    Returns
    -------
    list of Fascicle
    """
    rules = [
        *_iliocostalis(bench),
        *_longissimus(bench),
        *_spinalis(bench),
        *_semispinalis(bench),
        *_multifidus(bench),
    ]
    crowd = _crowd(bench)
    ends: dict[str, list[tuple[str, np.ndarray]]] = {}

    def on(part_id: str, muscle: str, wanted) -> np.ndarray:
        others = [p for name, p in ends.setdefault(part_id, []) if name != muscle]
        place = free_place(
            bench.index(part_id), crowd, np.asarray(wanted, float), clear=_CLEAR_MM,
            taken=np.array(others) if others else None, apart=_ENDS_APART_MM,
        )  # fmt: skip
        ends[part_id].append((muscle, place))
        return place

    return [
        Fascicle(
            muscle, origin, insertion,
            _course(bench, gutter, muscle, on(origin, muscle, a), on(insertion, muscle, b)),
            _REACH[muscle],
        )
        for muscle, origin, a, insertion, b in rules
    ]  # fmt: skip


_CLEAR_MM = 2.0
_ENDS_APART_MM = 3.6
"""Between the ends of two muscles on one bone; those of one muscle may meet."""
_SMALL = (
    "intertrans", "interspin", "rotator_", "levator_costarum", "rectus_capitis", "obliquus_capitis",
    "external_intercostal", "posterior_ramus", "suboccipital", "spinal_nerve",
)  # fmt: skip


def _crowd(bench: Workbench) -> MeshIndex | None:
    """What may stand on a bone where a fascicle wants to end."""
    merged = merge([bench.index(p.id) for p in bench.parts.values() if p.entry.startswith(_SMALL)])
    return None if merged is None else merged[0]


def _spine(bench: Workbench, level: str, muscle: str = "") -> np.ndarray:
    """Point on the left of a spine: each muscle has its own share of the way to the tip."""
    root, tip = (bench.landmark(f"{level}.spinous_{end}") for end in ("root", "process"))
    share, drop = _ON_SPINE.get(muscle, (0.96, 0.0))
    return root + share * (tip - root) + np.array([1.6, 0.0, -drop * bench.frame.scale])


# Share of the way from root to tip, and mm towards the feet: multifidus under semispinalis
# under spinalis (order after Gray 1918; distances common practice, no source).
_ON_SPINE = {
    "spinalis": (0.94, 0.0),
    "semispinalis": (0.80, 0.5),
    "multifidus": (0.66, 2.0),
    "multifidus_lumborum": (0.85, 4.0),
}


# Several muscles share one transverse process; each keeps to its own facet of it, mm
# from the tip in the vertebra's own axes: longissimus at the tip, semispinalis and
# multifidus further in (order after Gray 1918; distances common practice, no source).
_FACET = {
    "longissimus_thoracis": (0.5, 0.0, -2.0),
    "longissimus_cervicis": (1.0, -0.5, 2.5),
    "longissimus_capitis": (-2.5, 0.5, 3.0),
    "semispinalis": (-5.0, 0.0, 1.5),
    "multifidus": (-9.0, -0.5, 1.0),
}


def _process(bench: Workbench, level: str, muscle: str = "") -> np.ndarray:
    """Where a muscle is attached to a transverse process, brought on to the bone, mm."""
    tip = bench.landmark(f"{level}.left.transverse_process")
    if muscle not in _FACET:
        return tip
    wanted = tip + bench.frame[level].axes @ (np.array(_FACET[muscle]) * bench.frame.scale)
    return bench.index(f"vertebra_{level}").signed_distance(wanted[None])[1][0]


def _angle(bench: Workbench, rib: int) -> np.ndarray:
    """Angle of a rib; the twelfth has none, and iliocostalis takes the middle of its shaft."""
    if rib < 12:
        return bench.landmark(f"rib_{rib}.left.angle")
    shaft = bench.landmark("rib_12.left.shaft")
    return shaft[int(0.5 * (len(shaft) - 1))]


def _iliocostalis(bench: Workbench):
    crest = bench.landmark("ilium.left.crest")
    # The posterior part of the crest, from the spine upward and outward.
    step = np.linalg.norm(np.diff(crest, axis=0), axis=1).cumsum()
    share = np.concatenate([[0.0], step]) / step[-1]

    def on_crest(s: float) -> np.ndarray:
        # The inner lip: the outer one belongs to latissimus and the gluteal muscles.
        lip = np.array([np.interp(s, share, crest[:, i]) for i in range(3)])
        return lip + np.array([-8.0, -5.0, -2.0]) * bench.frame.scale

    for i, number in enumerate(range(12, 5, -1)):
        origin = on_crest(0.24 - 0.032 * i)
        yield ("iliocostalis_lumborum", "hip_bone.left", origin,
               f"rib_{number}.left", _angle(bench, number))  # fmt: skip
    for i, level in enumerate(level_range("L1", "L4")):
        yield ("iliocostalis_lumborum", "hip_bone.left", on_crest(0.08 + 0.05 * i),
               f"vertebra_{level}", _process(bench, level))  # fmt: skip
    for upper in range(1, 7):
        lower = upper + 6
        inside = _angle(bench, lower) + np.array([-6.0, 0, 4.0])
        yield ("iliocostalis_thoracis", f"rib_{lower}.left", inside,
               f"rib_{upper}.left", _angle(bench, upper))  # fmt: skip
    yield ("iliocostalis_thoracis", "rib_7.left", bench.landmark("rib_7.left.angle"),
           "vertebra_C7", _process(bench, "C7"))  # fmt: skip
    for level, rib in (("C6", 6), ("C6", 5), ("C5", 4), ("C4", 3)):
        inside = _angle(bench, rib) + np.array([-5.0, 0, 3.0])
        yield ("iliocostalis_cervicis", f"rib_{rib}.left", inside,
               f"vertebra_{level}", bench.landmark(f"{level}.left.posterior_tubercle"))  # fmt: skip


def _longissimus(bench: Workbench):
    # Thoracic part: long tendons from lumbar and sacral spines, one for each level above.
    sources = ["L1", "L2", "L3", "L3", "L4", "L4", "L5", "L5", "S1", "S2", "S2", "S3"]
    for level, source in zip(level_range("T1", "T12"), sources, strict=True):
        if source[0] == "S":
            start, part = bench.landmark(f"{source}.median_crest"), "sacrum"
        else:
            start, part = _spine(bench, source), f"vertebra_{source}"
        start = start + np.array([1.0, 0.0, 0.0])
        yield (
            "longissimus_thoracis",
            part,
            start,
            f"vertebra_{level}",
            _process(bench, level, "longissimus_thoracis"),
        )
        number = int(level[1:])
        if number >= 3:
            tubercle = bench.landmark(f"rib_{number}.left.tubercle")
            angle = bench.landmark(f"rib_{number}.left.angle")
            yield ("longissimus_thoracis", part, start,
                   f"rib_{number}.left", tubercle + 0.43 * (angle - tubercle))  # fmt: skip
    spine = bench.landmark("ilium.left.PSIS")
    for i, level in enumerate(level_range("L1", "L5")):
        start = spine + np.array([-3.0, 0.0, 2.0 + 1.5 * i])
        yield ("longissimus_thoracis", "hip_bone.left", start,
               f"vertebra_{level}", bench.landmark(f"{level}.left.accessory_process"))  # fmt: skip
    for level, target in zip(level_range("T1", "T5"), level_range("C2", "C6"), strict=True):
        start = _process(bench, level, "longissimus_cervicis")
        # The tips of the upper tubercles belong to splenius and levator scapulae.
        inward = np.array([-3.0, 1.5, 0.0]) * bench.frame.scale
        yield ("longissimus_cervicis", f"vertebra_{level}", start,
               f"vertebra_{target}",
               bench.landmark(f"{target}.left.posterior_tubercle") + inward)  # fmt: skip
    mastoid = bench.landmark("temporal.left.mastoid_tip")
    for i, level in enumerate([*level_range("C4", "C7"), *level_range("T1", "T5")]):
        key = "articular_pillar" if level[0] == "C" else "transverse_process"
        end = mastoid + np.array([-3.0, 4.0, 1.0 + 0.8 * i])
        start = bench.landmark(f"{level}.left.{key}")
        if level[0] == "T":
            start = _process(bench, level, "longissimus_capitis")
        yield ("longissimus_capitis", f"vertebra_{level}", start, "cranium",
               bench.index("cranium").signed_distance(end[None])[1][0])  # fmt: skip


def _spinalis(bench: Workbench):
    for low, highs in (("T11", ("T8", "T7")), ("T12", ("T6", "T5")),
                       ("L1", ("T4", "T3")), ("L2", ("T2", "T1"))):  # fmt: skip
        for high in highs:
            yield ("spinalis_thoracis", f"vertebra_{low}", _spine(bench, low, "spinalis"),
                   f"vertebra_{high}", _spine(bench, high, "spinalis"))  # fmt: skip
    for low, high in (("C7", "C4"), ("T1", "C3"), ("T2", "C2")):
        yield ("spinalis_cervicis", f"vertebra_{low}", _spine(bench, low, "spinalis"),
               f"vertebra_{high}", _spine(bench, high, "spinalis"))  # fmt: skip


def _semispinalis(bench: Workbench):
    for low, high in zip(level_range("T6", "T10"), ("C6", "C7", "T1", "T2", "T3"), strict=True):
        yield ("semispinalis_thoracis", f"vertebra_{low}", _process(bench, low, "semispinalis"),
               f"vertebra_{high}", _spine(bench, high, "semispinalis"))  # fmt: skip
    yield ("semispinalis_thoracis", "vertebra_T10", _process(bench, "T10", "semispinalis"),
           "vertebra_T4", _spine(bench, "T4", "semispinalis"))  # fmt: skip
    for low, high in zip(
        level_range("T1", "T6"), ("C2", "C2", "C3", "C4", "C5", "C5"), strict=True
    ):
        yield ("semispinalis_cervicis", f"vertebra_{low}", _process(bench, low, "semispinalis"),
               f"vertebra_{high}", _spine(bench, high, "semispinalis"))  # fmt: skip
    line = bench.landmark("occipital.left.between_lines_medial")
    order = np.argsort(line[:, 0])
    levels = [*level_range("C4", "C7"), *level_range("T1", "T6")]
    for i, level in enumerate(levels):
        key = "articular_pillar" if level in ("C4", "C5", "C6") else "transverse_process"
        # Lateral fascicles come from the lowest levels and end medially (nearly vertical course).
        end = line[order[int(round((1 - i / (len(levels) - 1)) * (len(order) - 1)))]]
        start = bench.landmark(f"{level}.left.{key}")
        if key == "transverse_process":
            start = _process(bench, level, "semispinalis") + np.array([2.0, 0.0, 0.0])
        yield ("semispinalis_capitis", f"vertebra_{level}", start, "cranium", end)


def _multifidus(bench: Workbench):
    def caudal(level_index: int) -> tuple[str, str, np.ndarray] | None:
        """Caudal end at a place down the column: mamillary, transverse or articular process."""
        if level_index < len(LEVELS):
            level = LEVELS[level_index]
            if level[0] == "L":
                return f"vertebra_{level}", level, bench.landmark(f"{level}.left.mamillary_process")
            if level[0] == "T":
                return f"vertebra_{level}", level, _process(bench, level, "multifidus")
            if level in ("C4", "C5", "C6", "C7"):
                return f"vertebra_{level}", level, bench.landmark(f"{level}.left.articular_pillar")
            return None
        number = level_index - len(LEVELS) + 1
        if number > 4:
            return None
        if number <= 2:
            spine = bench.landmark("ilium.left.PSIS")
            if number == 2:
                return "hip_bone.left", "S2", spine + np.array([-4.0, -3.0, 0.0])
        crest = bench.landmark("sacrum.left.intermediate_crest")
        z = bench.landmark(f"S{number}.median_crest")[2]
        row = int(np.argmin(np.abs(crest[:, 2] - z)))
        return "sacrum", f"S{number}", crest[row] + np.array([4.0, 0.0, 0.0])

    for index, level in enumerate(LEVELS):
        if level == "C1":
            continue
        region = {"C": "cervicis", "T": "thoracis", "L": "lumborum"}[level[0]]
        # From each spine two to four levels down (five from the loin to the sacrum).
        for span in (2, 3, 4) if level[0] != "L" else (2, 3, 4, 5):
            end = caudal(index + span)
            if end is None:
                continue
            part, _, point = end
            name = f"multifidus_{region}"
            if region == "thoracis" and index + span >= LEVELS.index("L2"):
                name = "multifidus_lumborum"
            rule = "multifidus_lumborum" if level[0] == "L" else "multifidus"
            yield (name, part, point, f"vertebra_{level}", _spine(bench, level, rule))


def _course(bench: Workbench, gutter: Gutter, muscle: str, a, b) -> np.ndarray:
    """Lead a fascicle from a to b through its lane, a place at each level passed."""
    a, b = np.asarray(a, float), np.asarray(b, float)
    lane = _LANE[muscle]
    bottom, top = min(a[2], b[2]), max(a[2], b[2])
    stations = []
    for level in LEVELS:
        z = bench.frame[level].centre[2]
        place = lane.get(level, lane.get(level[0]))
        if bottom + 6 < z < top - 6 and place is not None:
            stations.append((z, place))
    if "S" in lane:
        for number in (1, 2, 3):
            z = float(bench.landmark(f"S{number}.median_crest")[2])
            if bottom + 6 < z < top - 6:
                stations.append((z, lane["S"]))
    stations.sort(reverse=bool(a[2] > b[2]))
    line = [a]
    span = max(top - bottom, 1e-6)
    for z, (share, depth) in stations:
        progress = abs(z - a[2]) / span
        edge = float(gutter.edge(np.array([z]))[0])
        target = gutter.place(share * edge, depth, z)
        chord = a + progress * (b - a)
        # Near its ends a fascicle follows the straight line to its bone, in between its lane.
        hold = np.sin(np.pi * np.clip(progress, 0, 1)) ** 0.5
        pull = 0.85 * hold
        line.append((1 - pull) * chord + pull * target)
    line.append(b)
    line = np.array(line)
    if len(line) > 3:
        smooth = line.copy()
        smooth[1:-1] = 0.25 * line[:-2] + 0.5 * line[1:-1] + 0.25 * line[2:]
        line = smooth
    return line
