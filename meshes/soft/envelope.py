"""Skin, superficial fascia and deep fascia: three shells on the same ways from muscle to skin.

One open surface over nape, back, shoulder, flank and buttock is cut along the
borders of the region and along the skin cuts of the plan. From each of its
points a way runs outward. Each shell takes two depths on every way, so that
the shells lie in one another exactly; only the deepest face has to be kept
clear of the parts beneath.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
import trimesh
from scipy.ndimage import gaussian_filter1d
from scipy.sparse import csr_matrix, diags
from scipy.spatial import cKDTree

from meshes.drape.audit import self_intersections
from meshes.drape.distance import MeshIndex, merge
from meshes.model import Attachment, Contact, Part
from meshes.soft.outline import Outline, make_outline
from meshes.soft.sheets import part_of_curve
from meshes.soft.small import resample
from meshes.soft.surface_grid import (
    MEDIAN_X_MM,
    NO_LINE,
    Line,
    along_way,
    ascent_lines,
    border_edges,
    compact,
    cut_surface,
    is_plain,
    neighbour_mean,
    surface_net,
)
from meshes.soft.workbench import Workbench, trimesh_of

_STEP_MM = {"full": 8.0, "preview": 18.0}
_BASE_LEVELS_MM = (11.0, 14.0, 17.0, 20.0, 23.0)
_HOLLOW_LEVEL_MM = -3.0
_INWARD_MM = 34.0
_GAP_MM = 0.25
_DEEP_FASCIA_MM = 0.7
"""Drawn thickness of the deep fascia; published ones are thinner."""
_TUBES = ("nerve", "artery", "vein")
_MOST_REPAIRS = 8
_MOST_SQUEEZES = 6
_MOST_FAT_MM = 60.0
"""No nerve runs deeper in the fat than this."""
_FILLED_MM2 = 3000.0
"""How wide the hollows are that fat fills on loin, flank and buttock: rounds times mm²."""
_SLIVER = 0.04
"""Faces smaller than this share of the median one have no say in which way a shell looks."""
_LEANS_APART = 0.03
"""How much less the cosine between way and face is at a place than around it, at most."""
_LEAST_FAT = 0.15
"""Share of its thickness that squeezed fat keeps."""
_SHELLS = (
    ("deep_fascia_inner", "deep_fascia_outer"),
    ("fat_inner", "fat_outer"),
    ("skin_inner", "skin_outer"),
)


@dataclass(slots=True)
class Envelope:
    """Ways from the muscles to the skin and the depths of the shells on them.

    Attributes
    ----------
    outline : Outline
    faces : (m, 3) int
    way : (n, k, 3) float
        Points on each way, deepest first, mm.
    s : (k,) float
        Distance along the ways, mm.
    depths : dict of str to (n,) float
        ``deep_fascia_inner``, ``deep_fascia_outer``, ``fat_inner``, ``fat_outer``,
        ``skin_inner``, ``skin_outer``: distance along the ways.
    uv : (n, 2) float32
    below_nuchal : (m,) bool
        Faces below the superior nuchal line.
    loops : dict of str to (n,) bool
        Vertices on each named line.
    borders : dict of str to callable
        Functions of points whose zero is where the shells end.
    """

    outline: Outline
    faces: np.ndarray
    way: np.ndarray
    s: np.ndarray
    depths: dict[str, np.ndarray]
    uv: np.ndarray
    below_nuchal: np.ndarray
    loops: dict[str, np.ndarray] = field(default_factory=dict)
    borders: dict[str, Line] = field(default_factory=dict)

    def points(self, name: str) -> np.ndarray:
        """(n, 3) vertices of one face of a shell, mm."""
        return along_way(self.way, self.s, self.depths[name])

    def face_mesh(self, name: str) -> trimesh.Trimesh:
        """One open face of a shell."""
        return trimesh_of(self.points(name), self.faces)


def envelope_of(bench: Workbench) -> Envelope:
    """The bench's envelope, made when first asked for (all muscles must be laid)."""
    if getattr(bench, "envelope", None) is None:
        bench.envelope = make_envelope(bench)
    return bench.envelope


def make_envelope(bench: Workbench) -> Envelope:
    """Lay the ways and set the depths of the three shells.

    Parameters
    ----------
    bench : Workbench
        With all muscles.

    Returns
    -------
    Envelope
    """
    outline = make_outline(bench)
    borders, cuts = _borders(bench, outline), _cut_lines(bench)
    # Further out every surface is plainer: one that a pit pinches, or on which the shells run
    # through themselves, is left below. Where none is free the one that is most so is taken.
    best, least = None, np.inf
    for level in _BASE_LEVELS_MM:
        last = best is None and level == _BASE_LEVELS_MM[-1]
        envelope = _envelope_at(bench, outline, borders, cuts, level, pinched=last)
        if envelope is None:
            continue
        crossing = _set_depths(bench, envelope)
        if crossing < least:
            best, least = envelope, crossing
        if least == 0:
            break
    return best


def _envelope_at(
    bench: Workbench,
    outline: Outline,
    borders: dict[str, Line],
    cuts: dict[str, Line],
    level: float,
    pinched: bool = False,
) -> Envelope | None:
    """Ways from a level of the outline, mm, without depths; None where that is pinched.

    ``pinched`` takes it even then.
    """
    vertices, faces = surface_net(outline.smooth, level, _STEP_MM[bench.detail])
    vertices, faces, held = cut_surface(
        vertices, faces, outline.smooth, level, list(borders.values()), list(cuts.values())
    )
    if not pinched and not is_plain(faces):
        return None
    # The cut ends are flat; along the front border the edge follows the ways, upright on the face.
    flat = ("thigh_end", "arm_end")
    lines: list[Line] = [lambda p: p[:, 0] - MEDIAN_X_MM, *(borders[name] for name in flat)]
    outward = 40.0 + 1.3 * max(bench.body.fat_lower_mm + 12.0, bench.body.fat_upper_mm)
    way, s = ascent_lines(
        vertices, outline.smooth, _INWARD_MM, outward, 2.0, held[:, : len(lines)], lines
    )
    way[held[:, 0], :, 0] = MEDIAN_X_MM
    nuchal = list(cuts).index("nuchal_line")
    below = cuts["nuchal_line"](vertices)
    below = np.where(held[:, 1 + len(borders) + nuchal], 0.0, below)
    names = ["midline", *borders, *cuts]
    return Envelope(
        outline,
        faces,
        way,
        s,
        {},
        _uv(bench, outline, vertices),
        below[faces].sum(1) > 0,
        {name: held[:, k] for k, name in enumerate(names)},
        borders,
    )


# --- where it ends, where it is cut ---------------------------------------------------------------


def _borders(bench: Workbench, outline: Outline) -> dict[str, Line]:
    core, scale = outline.core, bench.frame.scale
    head = core.arm_head
    cranium = bench.parts["cranium"].mesh.bounds
    vertex = float(cranium[1, 1]) - 98.0 * scale
    neck_edge, neck_share = _edge_of_neck(bench, outline)
    levels = bench.frame.vertebrae
    z = np.array(
        [core.thigh_end, -70.0 * scale, 0.0, levels["L2"].centre[2], levels["T9"].centre[2],
         levels["T7"].centre[2], levels["T1"].centre[2], levels["C6"].centre[2],
         levels["C3"].centre[2], core.neck_top + 10.0, cranium[1, 2]]
    )  # fmt: skip
    # On the flank it reaches as far as the obliques do, so that nothing of the wall lies bare.
    y = np.array(
        [core.thigh_centre[1] - 4.0, core.thigh_centre[1] - 10.0, -24.0 - 34.0 * scale,
         core.column_y(z[3]) - 86.0 * scale, core.column_y(z[4]) - 106.0 * scale,
         core.column_y(z[5]) - 52.0 * scale, core.column_y(z[6]) - 13.0,
         core.column_y(z[7]) - 14.0, core.column_y(z[8]) - 10.0, vertex + 14.0, vertex]
    )  # fmt: skip
    knots = np.linspace(z[0] - 60.0, z[-1] + 60.0, 200)
    curtain = gaussian_filter1d(np.interp(knots, z, y), 3.5, mode="nearest")

    def divider(height: np.ndarray) -> np.ndarray:
        """x between arm and chest."""
        apex = head[2] - 105.0 * scale
        return head[0] - 24.0 * scale + 0.36 * np.maximum(apex - height, 0.0)

    def front(p: np.ndarray) -> np.ndarray:
        a = p[:, 1] - np.interp(p[:, 2], knots, curtain)
        share = neck_share(p[:, 2])
        a = (1 - share) * a + share * neck_edge(p)
        # The arm is covered all round.
        b = np.minimum(p[:, 0] - divider(p[:, 2]), 0.5 * (p[:, 2] - core.thigh_end - 250.0 * scale))
        share = np.clip(0.5 + 0.5 * (a - b) / 25.0, 0.0, 1.0)
        return share * a + (1 - share) * b + 25.0 * share * (1 - share)

    def arm(p: np.ndarray) -> np.ndarray:
        along = core.arm_length - 1.0 - (p - head) @ core.arm_axis
        return np.maximum(along, divider(p[:, 2]) - p[:, 0])

    return {
        "thigh_end": lambda p: p[:, 2] - core.thigh_end - 1.0,
        "arm_end": arm,
        "front_border": front,
    }


def _edge_of_neck(bench: Workbench, outline: Outline) -> tuple[Line, Callable]:
    """Where the cover of the neck ends, and how much that counts at each height.

    The cover reaches round the neck to the front edge of sternocleidomastoid, whose
    outline the skin has to show.
    """
    core, scale = outline.core, bench.frame.scale
    v = bench.parts["sternocleidomastoid.left"].mesh.vertices
    z = np.arange(v[:, 2].min() + 6.0, v[:, 2].max() - 10.0, 6.0)
    middle = core.column_y(z) - 22.0 * scale
    turn = np.empty(len(z))
    for k, height in enumerate(z):
        near = v[np.abs(v[:, 2] - height) < 6.0]
        turn[k] = np.arctan2(near[:, 0], near[:, 1] - middle[k]).max()
    turn = np.clip(gaussian_filter1d(turn, 2.0, mode="nearest") + 0.10, 1.5, 2.55)
    base = float(bench.frame["T2"].centre[2])

    def edge(p: np.ndarray) -> np.ndarray:
        y = p[:, 1] - core.column_y(p[:, 2]) + 22.0 * scale
        at = np.arctan2(np.maximum(p[:, 0], 0.0), y)
        reach = np.maximum(np.hypot(p[:, 0], y), 20.0)
        return reach * (np.interp(p[:, 2], z, turn) - at)

    def share(height: np.ndarray) -> np.ndarray:
        low = _ease((height - base) / (45.0 * scale))
        return low * _ease((core.neck_top + 4.0 - height) / (40.0 * scale))

    return edge, share


def _cut_lines(bench: Workbench) -> dict[str, Line]:
    mark = bench.landmark
    protuberance = mark("occipital.external_protuberance")
    mastoid = mark("temporal.left.mastoid_tip")
    top = bench.frame["C7"]

    def nuchal(p: np.ndarray) -> np.ndarray:
        t = np.clip(p[:, 0] / mastoid[0], 0.0, 1.15)
        return protuberance[2] + 6.0 - t * (protuberance[2] + 6.0 - mastoid[2] - 12.0) - p[:, 2]

    def across(a: np.ndarray, b: np.ndarray, bend: float = 0.0) -> Line:
        def line(p: np.ndarray) -> np.ndarray:
            t = p[:, 0] / b[0]
            height = a[2] + t * (b[2] - a[2]) + bend * np.sin(np.pi * np.clip(t, 0.0, 1.0))
            # Only on the back; in front and past the end it is no line at all.
            return np.where(
                (p[:, 0] < b[0] + 4.0) & (p[:, 1] > top.centre[1] - 70.0), p[:, 2] - height, NO_LINE
            )

        return line

    curve = mark("ilium.left.crest")
    curve = curve[: int(np.argmax(curve[:, 2])) + 1]
    crest_x = np.linspace(0.0, 2.0 * curve[-1, 0], 60)
    crest_z = np.interp(
        crest_x, [0.0, *curve[:, 0]], [float(mark("S2.median_crest")[2]), *curve[:, 2]]
    )
    crest_z = gaussian_filter1d(crest_z, 4.0, mode="nearest")

    def crest(p: np.ndarray) -> np.ndarray:
        return p[:, 2] - np.interp(p[:, 0], crest_x, crest_z)

    angle = mark("scapula.left.inferior_angle")
    return {
        "nuchal_line": nuchal,
        "shoulder_line": across(mark("C7.spinous_process"), mark("scapula.left.acromion_tip"), 8.0),
        "angle_line": across(mark("T8.spinous_process"), angle + [40.0, 0.0, 0.0]),
        "crest_line": crest,
    }


def _uv(bench: Workbench, outline: Outline, p: np.ndarray) -> np.ndarray:
    """u from the midline outward, v from below upward."""
    middle = outline.core.column_y(p[:, 2]) - 30.0
    u = np.arctan2(np.maximum(p[:, 0], 0.0), p[:, 1] - middle) / np.pi
    low, high = p[:, 2].min(), p[:, 2].max()
    return np.stack([np.clip(u, 0, 1), (p[:, 2] - low) / (high - low)], 1).astype(np.float32)


# --- how thick --------------------------------------------------------------------------------


def _ease(x: np.ndarray) -> np.ndarray:
    x = np.clip(x, 0.0, 1.0)
    return x * x * (3 - 2 * x)


def fat_thickness(bench: Workbench, points: np.ndarray) -> np.ndarray:
    """Wanted thickness of the superficial fascia (n,) at points (n, 3), mm.

    Thin over the spines, the scapular spine, the acromion and the posterior
    superior iliac spine, thick over nape, loin and buttock (common practice,
    no source).
    """
    p = np.asarray(points, float)
    body, z, s = bench.body, p[:, 2], bench.frame.scale
    level = bench.frame.vertebrae
    upper, lower = body.fat_upper_mm, body.fat_lower_mm
    buttock = min(2.2 * lower, lower + 14.0)
    knots = [
        (-240.0 * s, 1.0 * lower), (-185.0 * s, 1.0 * lower), (-150.0 * s, buttock),
        (-90.0 * s, buttock), (-40.0 * s, 0.8 * buttock),
        (level["L5"].centre[2], 1.15 * lower), (level["L3"].centre[2], lower),
        (level["L1"].centre[2], lower), (level["T9"].centre[2], 0.5 * (upper + lower)),
        (level["T6"].centre[2], upper), (level["T2"].centre[2], 1.1 * upper),
        (level["C7"].centre[2], 1.6 * upper), (level["C4"].centre[2], 1.4 * upper),
        (level["C1"].centre[2], min(1.0 * upper, 6.0)),
        (bench.landmark("occipital.external_protuberance")[2] + 15.0, min(0.8 * upper, 4.0)),
    ]  # fmt: skip
    knots = np.array(knots)
    wanted = np.interp(z, knots[:, 0], knots[:, 1])
    # The buttock is rounded out above its fold.
    tuber = bench.landmark("ilium.left.ischial_tuberosity")
    off = (p[:, [0, 2]] - [tuber[0] + 28.0 * s, tuber[2] + 52.0 * s]) / [62.0 * s, 62.0 * s]
    wanted += 1.2 * min(lower, 15.0) * np.exp(-(off**2).sum(1)) * _ease((p[:, 1] + 10.0) / 30.0)
    # On the side of the neck there is little of it (common practice, no source).
    behind = p[:, 1] - np.interp(z, *_column(bench)) + 22.0 * s
    beside = _ease((np.arctan2(p[:, 0], behind) - 0.6) / 0.6)
    wanted *= 1.0 - 0.6 * beside * _ease((z - level["C7"].centre[2]) / (25.0 * s))
    # On the flank and beside the hip it is thinner than behind (common practice, no source).
    flank = _ease((np.arctan2(p[:, 0], behind + 8.0 * s) - 0.8) / 0.6)
    wanted *= 1.0 - 0.5 * flank * _ease((level["T4"].centre[2] - z) / (60.0 * s))
    # Arm.
    head = bench.landmark("humerus.left.head_centre")
    on_arm = _ease((p[:, 0] - head[0] + 5.0) / 25.0) * _ease((z - 120.0 * s) / 60.0)
    wanted = (1 - on_arm) * wanted + on_arm * np.minimum(wanted, 1.0 * upper)
    # Bony places under the skin.
    spines = np.concatenate(
        [bench.landmark(f"{v}.spinous_process")[None] for v in level if v not in ("C1", "C2", "C3")]
        + [bench.landmark("sacrum.median_crest")]
    )
    spines = part_of_curve(spines[np.argsort(spines[:, 2])], 0.0, 1.0, 120)
    shoulder = np.concatenate(
        [bench.landmark("scapula.left.spine_crest_lower_lip"),
         bench.landmark("scapula.left.acromion_lateral_margin")]
    )  # fmt: skip
    hips = bench.landmark("ilium.left.PSIS")[None]
    # Beside the furrow the fat lies thicker on the columns, by as much as it lacks in it.
    column = np.interp(z, [level["S1"].centre[2] if "S1" in level else 0.0, level["L4"].centre[2],
                           level["T10"].centre[2], level["T5"].centre[2]], [0.0, 1.0, 0.8, 0.0])  # fmt: skip
    wanted += 0.28 * lower * column * np.exp(-(((p[:, 0] - 42.0 * s) / (17.0 * s)) ** 2))
    for places, reach, share in ((spines, 26.0, 0.25), (shoulder, 24.0, 0.55), (hips, 24.0, 0.35)):
        distance, _ = cKDTree(places).query(p, distance_upper_bound=80.0)
        near = 1.0 - _ease((np.minimum(distance, 80.0) / s - 6.0) / reach)
        wanted = wanted * (1.0 - (1.0 - share) * near)
    return np.maximum(wanted, 1.2)


def _column(bench: Workbench) -> tuple[np.ndarray, np.ndarray]:
    """Heights and y of the middle of the column, from below upward, mm."""
    levels = list(bench.frame.vertebrae.values())[::-1]
    return np.array([v.centre[2] for v in levels]), np.array([v.centre[1] for v in levels])


def skin_thickness(bench: Workbench, points: np.ndarray) -> np.ndarray:
    """Thickness of the skin (n,) at points (n, 3), mm.

    2-4 mm on the back, thickest over nape and shoulders (common practice, no
    source); in proportion to the catalogue's mean of the sex.
    """
    p = np.asarray(points, float)
    level = bench.frame.vertebrae
    z = [-200.0, level["L3"].centre[2], level["T8"].centre[2], level["T3"].centre[2],
         level["C6"].centre[2], level["C1"].centre[2], level["C1"].centre[2] + 60.0]  # fmt: skip
    back = np.interp(p[:, 2], z, [2.4, 2.8, 3.4, 3.8, 3.9, 3.2, 2.6])
    head = bench.landmark("humerus.left.head_centre")
    beside = _ease((p[:, 0] - 70.0) / 90.0) * _ease(1.0 - (p[:, 1] - 20.0) / 50.0)
    arm = _ease((p[:, 0] - head[0] + 10.0) / 30.0)
    thick = back * (1.0 - 0.28 * np.maximum(beside, arm))
    record = bench.catalogue["skin"].thickness if bench.catalogue is not None else None
    mean = {"male": 3.2, "female": 2.6}[bench.body.sex]
    if record is not None:
        mean = getattr(record, f"{bench.body.sex}_mm", mean)
    # Skin does not grow with stature.
    return np.clip(thick * mean / 3.2, 1.6, 4.4) / bench.body.factor


def _set_depths(bench: Workbench, envelope: Envelope) -> int:
    """Find the muscles' surface on every way, drape the fascia over it, add fat and skin.

    Returns at how many places a shell still runs through itself.
    """
    mean = neighbour_mean(envelope.faces, len(envelope.way))
    ground = _ground(bench, envelope)
    # Taut over hollows.
    for _ in range(max(2, int(round((15.0 / _STEP_MM[bench.detail]) ** 2 * 3)))):
        ground = np.maximum(ground, mean @ ground)
    ground = np.maximum(ground, _deepest(envelope))
    ground = _not_steep(envelope, ground)
    ground = _lay_close(bench, envelope, ground, mean)
    squeeze = np.ones(len(ground))
    for number in range(_MOST_REPAIRS + _MOST_SQUEEZES):
        _stack(bench, envelope, ground, mean, squeeze)
        crossing = _crossing_vertices(envelope)
        if not crossing.any():
            break
        if number >= 2:
            # Where two walls face each other (armpit, fold of the buttock) thick fat meets
            # its like: there it is squeezed, and less so all around.
            near = crossing.astype(float)
            for _ in range(1 + number // 3):
                near = np.maximum(near, mean @ near)
            squeeze = (
                np.minimum(squeeze, 1.0 - 0.3 * near)
                if number < 4
                else np.maximum(squeeze * (1.0 - 0.25 * near), _LEAST_FAT)
            )
        if number >= _MOST_REPAIRS:
            continue
        # Further out the ways diverge and every face is plainer.
        for _ in range(2 + number // 2):
            crossing |= mean @ crossing.astype(float) > 0
        for _ in range(6):
            lifted = np.maximum(ground, mean @ ground) + 0.1 * (1 + number)
            ground = np.where(crossing, lifted, ground)
    return int(crossing.sum())


def _stack(
    bench: Workbench,
    envelope: Envelope,
    ground: np.ndarray,
    mean: csr_matrix,
    squeeze: np.ndarray,
) -> None:
    """Set the depths of the three shells over the ground; the fat squeezed by a factor (n,)."""
    way, s, depths = envelope.way, envelope.s, envelope.depths
    depths["deep_fascia_inner"] = ground
    lean = _lean(envelope, ground)
    depths["deep_fascia_outer"] = ground + _DEEP_FASCIA_MM / lean
    depths["fat_inner"] = depths["deep_fascia_outer"] + _GAP_MM / lean
    # The fat evens out what lies under it over a few centimetres.
    wanted = squeeze * fat_thickness(bench, along_way(way, s, ground))
    rounds = max(2, int(round((11.0 / _STEP_MM[bench.detail]) ** 2 * 5)))
    smooth = depths["fat_inner"]
    for _ in range(rounds):
        smooth = 0.4 * smooth + 0.6 * (mean @ smooth)
    least = np.maximum(0.25 * wanted, 1.0) / lean
    outer = np.maximum(smooth + wanted, depths["fat_inner"] + least)
    # A bony tip is a gentle rise under the skin, not a knob.
    outer = _not_steep(envelope, outer, 0.34)
    # Borders of muscles and the crest don't show through on loin, flank and buttock.
    share = _loin_and_flank(bench, along_way(way, s, ground))
    outer = _hollows_filled(envelope, outer, mean, share, _STEP_MM[bench.detail])
    for _ in range(3):
        outer = np.maximum(0.5 * outer + 0.5 * (mean @ outer), depths["fat_inner"] + least)
    depths["fat_outer"] = outer
    lean = _lean(envelope, outer)
    depths["skin_inner"] = outer + _GAP_MM / lean
    # One steep face, such as stands beside a cut, makes no welt of the skin about it.
    for _ in range(3):
        lean = np.maximum(lean, mean @ lean - _LEANS_APART)
    thick = skin_thickness(bench, along_way(way, s, outer)) / lean
    skin = depths["skin_inner"] + thick
    even = skin
    for _ in range(max(1, rounds // 3)):
        even = 0.5 * even + 0.5 * (mean @ even)
    depths["skin_outer"] = np.maximum(even, depths["skin_inner"] + 0.85 * thick)


def _hollows_filled(
    envelope: Envelope, depth: np.ndarray, mean: csr_matrix, share: np.ndarray, step_mm: float
) -> np.ndarray:
    """Depth of a face with wide hollows filled where share (n,) is not 0; nothing sinks."""
    # A border is evened out along itself.
    a, b = border_edges(envelope.faces).T
    n = len(depth)
    on = csr_matrix((np.ones(2 * len(a)), (np.r_[a, b], np.r_[b, a])), (n, n))
    count = np.asarray(on.sum(1)).ravel()
    within = diags((count == 0).astype(float))
    mean = within @ mean + diags(1.0 / np.maximum(count, 1.0)) @ on
    even = depth
    for _ in range(max(1, int(_FILLED_MM2 / step_mm**2))):
        p = along_way(envelope.way, envelope.s, even)
        ahead = along_way(envelope.way, envelope.s, even + 1.0) - p
        step = np.einsum("nd,nd->n", (mean @ p) - p, ahead)
        even = even + 0.6 * share * step / np.maximum((ahead**2).sum(1), 0.25)
        even = np.maximum(even, depth)
    return even


def _loin_and_flank(bench: Workbench, p: np.ndarray) -> np.ndarray:
    """1 on loin, flank and buttock beside the furrow, 0 in it and above T9, at points (n, 3)."""
    beside = _ease((p[:, 0] / bench.frame.scale - 26.0) / 44.0)
    return beside * _ease((bench.frame["T9"].centre[2] - p[:, 2]) / (70.0 * bench.frame.scale))


def _crossing_vertices(envelope: Envelope) -> np.ndarray:
    """Vertices (n,) bool of the open surface at which a shell runs through itself."""
    found = np.zeros(len(envelope.way), bool)
    for inner, outer in _SHELLS:
        mesh, of = _shell(envelope, inner, outer)
        pairs = self_intersections(mesh)
        found[of[mesh.faces[np.unique(pairs)]]] = True
    return found


def _lean(envelope: Envelope, depth: np.ndarray) -> np.ndarray:
    """Cosine (n,) between the way and the normal of the face at a depth, not below 0.45."""
    p = along_way(envelope.way, envelope.s, depth)
    ahead = along_way(envelope.way, envelope.s, depth + 1.0) - p
    f = envelope.faces
    cross = np.cross(p[f[:, 1]] - p[f[:, 0]], p[f[:, 2]] - p[f[:, 0]])
    area = np.linalg.norm(cross, axis=1)
    unit = cross / np.maximum(area, 1e-9)[:, None]
    ahead /= np.maximum(np.linalg.norm(ahead, axis=1, keepdims=True), 1e-9)
    # The steepest face at a vertex decides; slivers beside a cut look anywhere.
    least = np.ones(len(p))
    cosine = np.einsum("fkd,fd->fk", ahead[f], unit)
    cosine[area < _SLIVER * np.median(area)] = 1.0
    np.minimum.at(least, f.ravel(), cosine.ravel())
    return np.maximum(least, 0.45)


def _ground(bench: Workbench, envelope: Envelope) -> np.ndarray:
    """Outermost depth (n,) at which a way meets a part, the core or a bridged cleft."""
    way, s = envelope.way, envelope.s
    points = way.reshape(-1, 3)
    parts = np.minimum(bench.field.sample(points), envelope.outline.core.distance(points))
    parts = parts.reshape(way.shape[:2]) - _GAP_MM
    closed = envelope.outline.close.sample(points).reshape(way.shape[:2]) + 1.0
    values = np.minimum(parts, closed)
    inside = values < 0
    last = inside.shape[1] - 1 - np.argmax(inside[:, ::-1], axis=1)
    last = np.where(inside.any(1), np.minimum(last, len(s) - 2), 0)
    row = np.arange(len(way))
    a, b = values[row, last], values[row, last + 1]
    share = np.clip(a / np.where(np.abs(a - b) < 1e-9, -1.0, a - b), 0.0, 1.0)
    return s[last] + share * (s[1] - s[0])


def _deepest(envelope: Envelope) -> np.ndarray:
    """Depth (n,) below which the fascia spans a hollow instead of lining it."""
    values = envelope.outline.smooth.sample(envelope.way.reshape(-1, 3))
    values = values.reshape(envelope.way.shape[:2])
    last = values.shape[1] - 1 - np.argmax(values[:, ::-1] < _HOLLOW_LEVEL_MM, axis=1)
    return envelope.s[np.where((values < _HOLLOW_LEVEL_MM).any(1), last, 0)]


def _not_steep(envelope: Envelope, depth: np.ndarray, slope: float = 0.9) -> np.ndarray:
    """Raise what lies beside a steep step, so that the face leans instead of standing up."""
    f = envelope.faces
    edges = np.concatenate([f[:, [0, 1]], f[:, [1, 2]], f[:, [2, 0]]])
    edges = np.concatenate([edges, edges[:, ::-1]])
    start = along_way(envelope.way, envelope.s, depth)
    room = slope * np.linalg.norm(start[edges[:, 0]] - start[edges[:, 1]], axis=1)
    depth = depth.copy()
    for _ in range(4):
        np.maximum.at(depth, edges[:, 0], depth[edges[:, 1]] - room)
    return depth


def _lay_close(
    bench: Workbench, envelope: Envelope, ground: np.ndarray, mean: csr_matrix
) -> np.ndarray:
    """Lift the deepest face clear of the real meshes, and let it down where it floats."""
    faces = envelope.faces
    found = _candidates(bench, envelope)
    if found is None:
        return ground
    merged, samples = found
    corner = faces
    for number in range(7):
        p = along_way(envelope.way, envelope.s, ground)
        points = np.concatenate(
            [p, p[corner].mean(1), p[faces[:, [0, 1]]].mean(1), p[faces[:, [1, 2]]].mean(1),
             p[faces[:, [2, 0]]].mean(1)]
        )  # fmt: skip
        d = merged.signed_distance(points, 14.0)[0]
        d = np.where(np.isfinite(d), d, 14.0)
        lack = _GAP_MM + 0.1 - d
        count, m = len(p), len(faces)
        lift = lack[:count].copy()
        np.maximum.at(lift, corner.ravel(), np.repeat(lack[count : count + m], 3))
        for k, (a, b) in enumerate(((0, 1), (1, 2), (2, 0))):
            part = lack[count + (k + 1) * m : count + (k + 2) * m]
            np.maximum.at(lift, faces[:, a], part)
            np.maximum.at(lift, faces[:, b], part)
        # Points of the parts that stand out through the face.
        sheet = MeshIndex(p, faces)
        out, _, _, face = sheet.query(samples, 8.0)
        hit = (face >= 0) & np.isfinite(out) & (out > -_GAP_MM)
        np.maximum.at(lift, faces[face[hit]].ravel(), np.repeat(out[hit] + _GAP_MM + 0.1, 3))
        if number < 2:
            # A floating face sinks, but no deeper than its neighbours would let it.
            sink = np.clip(lift + 0.2, -2.5, 0.0)
            ground = ground + np.minimum(np.maximum(lift, 0.0), 4.0) + 0.8 * sink
            ground = np.maximum(ground, mean @ ground - 0.4)
        else:
            rise = np.clip(lift, 0.0, 4.0)
            if rise.max() < 0.05:
                break
            ground = ground + rise
        ground = _not_steep(envelope, ground)
    return ground


def _candidates(bench: Workbench, envelope: Envelope) -> tuple[MeshIndex, np.ndarray] | None:
    """Exact index of the parts near the outline, and points on them."""
    close = envelope.outline.close
    ids = []
    samples = []
    for part_id, part in bench.parts.items():
        if part.kind in _TUBES and part.stratum <= 1:
            continue
        v = np.asarray(part.mesh.vertices)
        at = close.sample(v)
        if at.max() < -7.0:
            continue
        ids.append(part_id)
        f = np.asarray(part.mesh.faces)
        f = f[at[f].max(1) > -7.0]
        samples.append(v[at > -7.0])
        samples.append(v[f].mean(1))
    if not ids:
        return None
    points = np.concatenate(samples)
    # Past its rim an open face has no right side.
    within = points[:, 0] > 0.5
    for border in envelope.borders.values():
        within &= border(points) > 0.5
    box = np.array([envelope.way.min((0, 1)), envelope.way.max((0, 1))])
    merged = merge([bench.index(i) for i in ids], box, 2.0)
    return None if merged is None else (merged[0], points[within])


# --- the shells -----------------------------------------------------------------------------------


def _shell(
    envelope: Envelope, inner: str, outer: str, faces: np.ndarray | None = None
) -> tuple[trimesh.Trimesh, np.ndarray]:
    """Closed mesh between two faces, and which way each vertex is on."""
    faces = envelope.faces if faces is None else faces
    chosen, faces = compact(faces, len(envelope.way))
    low, high = envelope.points(inner)[chosen], envelope.points(outer)[chosen]
    n = len(chosen)
    rim = border_edges(faces)
    a, b = rim[:, 0], rim[:, 1]
    walls = np.concatenate([np.stack([b, a, a + n], 1), np.stack([b, a + n, b + n], 1)])
    closed = np.concatenate([faces, faces[:, ::-1] + n, walls])
    mesh = trimesh_of(np.concatenate([high, low]), closed)
    return mesh, np.concatenate([chosen, chosen])


def _put(
    bench: Workbench,
    entry: str,
    kind: str,
    inner: str,
    outer: str,
    *,
    faces: np.ndarray | None = None,
    attachments: tuple[Attachment, ...] = (),
    drawn_thicker: bool = False,
) -> Part:
    envelope = envelope_of(bench)
    mesh, of = _shell(envelope, inner, outer, faces)
    record = bench.catalogue[entry]
    part = Part(
        id=f"{entry}.left",
        entry=entry,
        kind=kind,
        stratum=record.stratum,
        group=record.group,
        mesh=mesh,
        uv=envelope.uv[of],
        attachments=attachments,
        region=record.region,
        drawn_thicker=drawn_thicker,
    )
    used = np.zeros(len(envelope.way), bool)
    used[of] = True
    middle = np.flatnonzero(envelope.loops["midline"] & used)
    middle = middle[np.argsort(envelope.way[middle, 0, 2])]
    seam = 0.5 * (envelope.points(inner) + envelope.points(outer))[middle]
    contacts = [Contact(part.id, f"{entry}.right", "abut", seam)]
    contacts += [Contact(part.id, a.to, "attach", a.curve) for a in attachments]
    if kind == "fascia":
        contacts += _pierced_by(bench, part)
    # Shells are no ground for anything laid later: the next shell knows its depth already.
    return bench.add(part, contacts, solid=False)


def _pierced_by(bench: Workbench, shell: Part) -> list[Contact]:
    """Cutaneous nerves and vessels come through the deep fascia and run in the fat."""
    index = MeshIndex.of(shell.mesh)
    found = []
    for tube in bench.parts.values():
        if tube.kind not in _TUBES or tube.stratum > 1 or tube.fibres is None:
            continue
        line = resample(tube.fibres[0], max(int(tube.fibres[0].shape[0]), 40))
        near = index.signed_distance(line, _MOST_FAT_MM)[0] < 2.0
        if near.any():
            found.append(Contact(tube.id, shell.id, "pierce", line[near]))
    return found


def lay_deep_fascia(bench: Workbench) -> None:
    """Deep fascia over the first sheet of muscles, from nuchal line to gluteal fold."""
    envelope = envelope_of(bench)
    _put(
        bench, "deep_fascia", "fascia", "deep_fascia_inner", "deep_fascia_outer",
        faces=envelope.faces[envelope.below_nuchal], drawn_thicker=True,
    )  # fmt: skip


def lay_superficial_fascia(bench: Workbench) -> None:
    """The fat under the skin."""
    _put(bench, "superficial_fascia", "fascia", "fat_inner", "fat_outer")


def lay_skin(bench: Workbench) -> None:
    """The skin; the plan's cuts are edge loops on it, their courses landmarks."""
    envelope = envelope_of(bench)
    _put(bench, "skin", "skin", "skin_inner", "skin_outer")
    outer = envelope.points("skin_outer")
    for name in ("midline", "nuchal_line", "shoulder_line", "angle_line", "crest_line"):
        at = np.flatnonzero(envelope.loops[name])
        if len(at) > 1:
            along = 2 if name == "midline" else 0
            bench.landmarks[f"skin.left.{name}"] = outer[at[np.argsort(outer[at, along])]]
