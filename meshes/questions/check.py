"""Verifies a finished model: what is closed, what touches what, what lies where.

Every check yields findings, good ones too; a finding that is not ok fails the
model. Geometry is judged on the meshes alone, never on the field they were
laid over.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np

from meshes.catalogue.levels import placeholders
from meshes.contacts import PIERCE_RADII, Place, declared_places, exempt, tube_radius
from meshes.drape import audit
from meshes.drape.distance import MeshIndex
from meshes.model import BackModel, Part, mirror_points, other_side

# --- limits: all in one place ----------------------------------------------------
OVERLAP_MM = 0.5
"""Deepest that a part may lie in another outside their declared contacts."""
ATTACHMENT_MM = 2.0
"""Farthest that an attachment may be from its own part and from what it is fixed to."""
LANDMARK_MM = 0.5
"""Farthest that a landmark may be from the bone it names."""
SYMMETRY_MM = 1e-6
CONTACT_GAP_MM = 3.0
"""A declared contact happens when the surfaces come this close at its place."""
SAMPLE_STEP_MM = 2.0
"""Vertices, edge midpoints and face centres are tested, at most this far apart."""

_DEEP_MM = 40.0
_THREADS = 2


@dataclass(frozen=True, slots=True)
class Finding:
    """The answer to one question about one thing.

    Attributes
    ----------
    id : str
        ``check:what it is about``.
    what : str
        In words.
    value, limit : float or None
        Measured, and allowed at most (mm unless the words say otherwise).
    ok : bool
    """

    id: str
    what: str
    value: float | None
    limit: float | None
    ok: bool

    @property
    def check(self) -> str:
        """The check that found it."""
        return self.id.split(":", 1)[0]

    def as_dict(self) -> dict[str, Any]:
        """Return the fields by name."""
        return asdict(self)

    def line(self) -> str:
        """Return the finding in one line."""
        told = "" if self.value is None else f" [{self.value:.2f}; at most {self.limit:g}]"
        return f"{'ok  ' if self.ok else 'FAIL'} {self.id}: {self.what}{told}"


def check_model(model: BackModel) -> list[Finding]:
    """Run every check.

    Parameters
    ----------
    model : BackModel

    Returns
    -------
    list of Finding
        In the order of the checks.
    """
    with ThreadPoolExecutor(_THREADS) as pool:
        indexes = dict(
            zip(model.parts, pool.map(lambda part: MeshIndex.of(part.mesh), model.parts.values()))
        )
    findings: list[Finding] = []
    findings += inventory(model)
    findings += soundness(model.parts.values())
    findings += interpenetration(model, indexes)
    findings += contacts_happen(model, indexes)
    findings += attachments(model, indexes)
    findings += symmetry(model.parts)
    findings += landmarks_on_bone(model, indexes)
    findings += landmark_order(model)
    return findings


# --- inventory -------------------------------------------------------------------


def inventory(model: BackModel) -> Iterator[Finding]:
    """Every part that the catalogue names is there, and none that it does not."""
    wanted = set(model.catalogue.part_ids(optional=False))
    known = set(model.catalogue.part_ids())
    for part_id in sorted(wanted - set(model.parts)):
        yield Finding(
            f"inventory:{part_id}", "named by the catalogue, not built", None, None, False
        )
    for part_id in model.parts:
        if part_id not in known and model.parts[part_id].kind != "context":
            yield Finding(
                f"inventory:{part_id}", "built, not named by the catalogue", None, None, False
            )
    yield Finding(
        "inventory:count",
        f"{len(set(model.parts) & known)} of {len(wanted)} wanted parts are built",
        None,
        None,
        wanted <= set(model.parts),
    )


# --- each mesh by itself -----------------------------------------------------------


def soundness(parts: Iterable[Part]) -> list[Finding]:
    """Closed, outward, free of self-intersection: three findings a part."""
    with ThreadPoolExecutor(_THREADS) as pool:
        return [finding for three in pool.map(_soundness_of, parts) for finding in three]


def _soundness_of(part: Part) -> list[Finding]:
    open_edges = open_edge_count(part.mesh.faces)
    crossings = len(audit.self_intersections(part.mesh))
    volume = signed_volume(part.mesh.vertices, part.mesh.faces)
    degenerate = _bad_numbers(part)
    return [
        Finding(
            f"closed:{part.id}",
            "open or wrongly shared edges" + (f"; {degenerate}" if degenerate else ""),
            float(open_edges),
            0.0,
            open_edges == 0 and not degenerate,
        ),
        Finding(
            f"outward:{part.id}",
            f"volume {volume / 1000:.2f} cm³, every piece outward",
            None,
            None,
            volume > 0 and audit.is_outward(part.mesh),
        ),
        Finding(
            f"self_intersection:{part.id}",
            "pairs of triangles that cross",
            float(crossings),
            0.0,
            crossings == 0,
        ),
    ]


def open_edge_count(faces: np.ndarray) -> int:
    """Count edges that are not used once in each direction; 0 for a closed, oriented mesh."""
    faces = np.asarray(faces)
    start, stop = faces.ravel(), np.roll(faces, -1, axis=1).ravel()
    size = int(faces.max()) + 1 if faces.size else 0
    forward = start.astype(np.int64) * size + stop
    backward = stop.astype(np.int64) * size + start
    unique, count = np.unique(forward, return_counts=True)
    return int((count > 1).sum() + (~np.isin(backward, unique)).sum())


def signed_volume(vertices: np.ndarray, faces: np.ndarray) -> float:
    """Return the volume, mm³; negative when the faces look inward."""
    vertices = np.asarray(vertices)
    corners = (vertices - vertices.mean(axis=0))[np.asarray(faces)]
    return float(np.einsum("ij,ij->", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6.0)


def _bad_numbers(part: Part) -> str:
    """Name what does not fit in the arrays of a part; "" when all does."""
    count = len(part.mesh.vertices)
    if not np.all(np.isfinite(part.mesh.vertices)):
        return "a vertex is not a number"
    for name in ("uv", "tendon"):
        array = getattr(part, name)
        if array is None:
            continue
        if len(array) != count:
            return f"{name} has {len(array)} rows for {count} vertices"
        if not np.all(np.isfinite(array)):
            return f"{name} is not a number somewhere"
    return ""


# --- parts against each other ------------------------------------------------------


def interpenetration(model: BackModel, indexes: Mapping[str, MeshIndex]) -> list[Finding]:
    """How deep parts lie in one another outside the places declared for it.

    Yields a finding for every pair that overlaps by more than a twentieth of
    a millimetre outside its declared contacts, and a last one with the worst.
    """
    declared = declared_places(model.parts, model.contacts)
    ids = list(indexes)
    boxes = np.array([indexes[part_id].bounds for part_id in ids])
    with ThreadPoolExecutor(_THREADS) as pool:
        samples = dict(zip(ids, pool.map(lambda i: _by_height(indexes[i]), ids)))
        pairs = [
            (a, b)
            for a in range(len(ids))
            for b in range(a + 1, len(ids))
            if np.all(boxes[a, 0] <= boxes[b, 1]) and np.all(boxes[b, 0] <= boxes[a, 1])
        ]

        twins = _exact_twins(model, declared)
        mirrored = {
            pair: (other_side(ids[pair[0]]), other_side(ids[pair[1]]))
            for pair in pairs
            if (ids[pair[0]], ids[pair[1]]) in twins
        }
        done = [pair for pair in pairs if pair not in mirrored]

        def measure(pair: tuple[int, int]) -> tuple[float, np.ndarray | None]:
            a, b = ids[pair[0]], ids[pair[1]]
            if not audit.cross(indexes[a], indexes[b]) and not (
                _lies_in(indexes[a], indexes[b]) or _lies_in(indexes[b], indexes[a])
            ):
                return 0.0, None
            places = declared.get((a, b), ())
            one = _depth_of(samples[a], indexes[b], places, a, b)
            two = _depth_of(samples[b], indexes[a], places, b, a)
            return max(one, two, key=lambda found: found[0])

        depths = {
            frozenset((ids[a], ids[b])): found
            for (a, b), found in zip(done, pool.map(measure, done))
        }
    findings = []
    worst = 0.0
    for a, b in pairs:
        if (a, b) in mirrored:
            depth, place = depths.get(frozenset(mirrored[a, b]), (0.0, None))
            place = None if place is None else mirror_points(place)
        else:
            depth, place = depths[frozenset((ids[a], ids[b]))]
        worst = max(worst, depth)
        if depth <= 0.05 or place is None:
            continue
        where = ", ".join(f"{value:.0f}" for value in place)
        findings.append(
            Finding(
                f"overlap:{ids[a]}|{ids[b]}",
                f"overlap in mm, deepest at ({where})",
                round(depth, 3),
                OVERLAP_MM,
                depth <= OVERLAP_MM,
            )
        )
    findings.append(
        Finding(
            "overlap:worst",
            f"deepest overlap in mm of {len(pairs)} pairs whose boxes meet",
            round(worst, 3),
            OVERLAP_MM,
            worst <= OVERLAP_MM,
        )
    )
    return findings


def _by_height(index: MeshIndex) -> np.ndarray:
    """Test points of a surface, (n, 3) mm, sorted by height."""
    points = index.samples(SAMPLE_STEP_MM)[0]
    return points[np.argsort(points[:, 2])]


def _far_distance(points: np.ndarray, other: MeshIndex) -> np.ndarray:
    """(n,) signed distances, also of points that lie deep inside, mm."""
    distance = other.signed_distance(points, reach=_DEEP_MM)[0]
    # Beyond the reach the sign is unknown.
    unknown = ~np.isfinite(distance)
    if unknown.any():
        distance[unknown] = other.signed_distance(points[unknown])[0]
    return distance


def _lies_in(inner: MeshIndex, outer: MeshIndex) -> bool:
    """Whether a mesh lies wholly inside another whose surface it does not cross."""
    low, high = outer.bounds
    one, two = inner.bounds
    return bool(np.all(one >= low) and np.all(two <= high) and outer.inside(inner.vertices[:1])[0])


def _exact_twins(
    model: BackModel, declared: Mapping[tuple[str, str], list[Place]]
) -> set[tuple[str, str]]:
    """Pairs of right parts that need no measuring: their left twins are the same, mirrored.

    Only where meshes and declared places mirror each other to the last vertex.
    """
    exact = {
        other_side(finding.id.split(":", 1)[1])
        for finding in symmetry(model.parts)
        if finding.value is not None and finding.ok
    }

    def same_places(a: str, b: str) -> bool:
        right, left = declared.get((a, b), []), declared.get((other_side(a), other_side(b)), [])
        return len(right) == len(left) and all(
            r.contact.kind == k.contact.kind
            and np.shape(r.contact.place) == np.shape(k.contact.place)
            and np.allclose(mirror_points(r.contact.place), k.contact.place)
            for r, k in zip(right, left)
        )

    return {(a, b) for a in exact for b in exact if a != b and same_places(a, b)}


def _depth_of(
    points: np.ndarray, other: MeshIndex, places: Sequence[Place], inside: str, outside: str
) -> tuple[float, np.ndarray | None]:
    """Return how deep ``points`` of one part lie in another, exempt places left out.

    The points come sorted by height, so that those beside the other part cost nothing.

    Returns
    -------
    depth : float
        mm, 0 when they don't.
    place : (3,) float or None
        The deepest point.
    """
    for place in places:
        if place.contact.kind == "contain" and (place.contact.a, place.contact.b) == (
            outside,
            inside,
        ):
            return 0.0, None
    low, high = other.bounds
    first, last = np.searchsorted(points[:, 2], (low[2], high[2]))
    near = points[first:last]
    for axis in (0, 1):
        near = near[(near[:, axis] > low[axis]) & (near[:, axis] < high[axis])]
    if len(near) == 0:
        return 0.0, None
    # Short reach first: it settles nearly all pairs at little cost. Where a part
    # enters another, some of its points lie just below the surface; only a part
    # that is wholly inside has none, and then any few of its points tell.
    distance = other.signed_distance(near, reach=3.0)[0]
    shallow = bool(np.any(distance < -0.02))
    if not shallow:
        whole = len(near) == len(points)
        few = near[:: max(1, len(near) // 8)][:8]
        if not (whole and np.any(other.inside(few))):
            return 0.0, None
    # Neighbouring samples lie at most 2 mm apart, so that whatever is deeper than the reach
    # has samples of its own surface on the way down.
    if not shallow or np.any(distance < -0.9):
        distance = _far_distance(near, other)
    deep = distance < 0
    near, depth = near[deep], -distance[deep]
    depth = np.where(exempt(near, depth, places), 0.0, depth)
    if len(depth) == 0:
        return 0.0, None
    k = int(np.argmax(depth))
    return float(depth[k]), near[k]


def contacts_happen(model: BackModel, indexes: Mapping[str, MeshIndex]) -> list[Finding]:
    """Each declared contact is one: the two parts come together at its place."""
    findings = []
    for contact in model.contacts:
        name = f"contact:{contact.kind}:{contact.a}|{contact.b}"
        missing = [i for i in (contact.a, contact.b) if i not in indexes]
        if missing:
            findings.append(
                Finding(name, f"declared with {', '.join(missing)}, not built", None, None, False)
            )
            continue
        if contact.kind == "contain":
            inner = indexes[contact.b].samples(SAMPLE_STEP_MM)[0]
            outside = max(float(indexes[contact.a].signed_distance(inner)[0].max()), 0.0)
            findings.append(
                Finding(
                    name,
                    "how far the inner one reaches out, mm",
                    round(outside, 3),
                    OVERLAP_MM,
                    outside <= OVERLAP_MM,
                )
            )
            continue
        place = np.asarray(contact.place, dtype=float).reshape(-1, 3)
        if len(place) == 0:
            findings.append(Finding(name, "declared without a place", None, None, False))
            continue
        if contact.kind == "pierce":
            limit = max(
                PIERCE_RADII * tube_radius(contact, model.parts) + OVERLAP_MM, CONTACT_GAP_MM
            )
        else:
            limit = CONTACT_GAP_MM
        # The nearest point of each surface to a place, then from there to the other.
        gap = np.inf
        for one, two in ((contact.a, contact.b), (contact.b, contact.a)):
            closest = indexes[one].signed_distance(place)[1]
            gap = min(gap, float(np.abs(indexes[two].signed_distance(closest)[0]).min()))
        findings.append(
            Finding(name, "gap at the declared place, mm", round(gap, 3), limit, gap <= limit)
        )
    return findings


def attachments(model: BackModel, indexes: Mapping[str, MeshIndex]) -> list[Finding]:
    """Each attachment lies on its part and on what the part is fixed to."""
    findings = []
    for part in model.parts.values():
        for number, attachment in enumerate(part.attachments):
            name = f"attachment:{part.id}:{attachment.kind}:{number}:{attachment.to}"
            if attachment.to not in indexes:
                findings.append(
                    Finding(name, "fixed to a part that is not built", None, None, False)
                )
                continue
            curve = np.asarray(attachment.curve, dtype=float).reshape(-1, 3)
            if len(curve) == 0 or not np.all(np.isfinite(curve)):
                findings.append(Finding(name, "has no attachment line", None, None, False))
                continue
            to_other = np.abs(indexes[attachment.to].signed_distance(curve)[0]).max()
            to_own = np.abs(indexes[part.id].signed_distance(curve)[0]).max()
            farthest = float(max(to_other, to_own))
            blame = "what it is fixed to" if to_other >= to_own else "its own part"
            findings.append(
                Finding(
                    name,
                    f"farthest point of the line from {blame}, mm",
                    round(farthest, 3),
                    ATTACHMENT_MM,
                    farthest <= ATTACHMENT_MM,
                )
            )
    return findings


def symmetry(parts: Mapping[str, Part]) -> list[Finding]:
    """Left and right parts mirror each other, vertex by vertex."""
    findings = []
    for part_id, part in parts.items():
        if part.side is None:
            continue
        twin = parts.get(other_side(part_id))
        if twin is None:
            findings.append(
                Finding(f"symmetry:{part_id}", "has no twin on the other side", None, None, False)
            )
        elif part.side == "left":
            same = np.shape(part.mesh.vertices) == np.shape(twin.mesh.vertices)
            gap = (
                float(np.abs(mirror_points(part.mesh.vertices) - twin.mesh.vertices).max())
                if same
                else np.inf
            )
            findings.append(
                Finding(
                    f"symmetry:{part_id}",
                    "farthest vertex from its mirrored twin, mm",
                    gap if same else None,
                    SYMMETRY_MM,
                    gap <= SYMMETRY_MM,
                )
            )
    return findings


# --- landmarks -----------------------------------------------------------------------


def landmarks_on_bone(model: BackModel, indexes: Mapping[str, MeshIndex]) -> list[Finding]:
    """Every landmark lies on its bone; free points (centres, foramina) do not count."""
    known = _landmark_homes(model)
    findings = []
    for name, place in model.landmarks.items():
        form, home = known.get(name, ("free", ""))
        if form == "free":
            continue
        if home not in indexes:
            findings.append(
                Finding(
                    f"landmark:{name}", f"lies on {home}, which is not built", None, None, False
                )
            )
            continue
        points = np.asarray(place, dtype=float).reshape(-1, 3)
        gap = float(np.abs(indexes[home].signed_distance(points)[0]).max())
        findings.append(
            Finding(
                f"landmark:{name}",
                f"distance from {home}, mm",
                round(gap, 3),
                LANDMARK_MM,
                gap <= LANDMARK_MM,
            )
        )
    return findings


def _landmark_homes(model: BackModel) -> dict[str, tuple[str, str]]:
    """Spell out the catalogue's landmarks: id -> (form, id of the part it lies on)."""
    homes = {}
    for landmark in model.catalogue.landmarks.values():
        for level in landmark.levels or ("",):
            words = placeholders(level) if level else {}
            for side in ("left", "right"):
                name = landmark.pattern.format(**words, side=side)
                homes[name] = (landmark.form, landmark.on.format(**words, side=side))
    return homes


def landmark_order(model: BackModel) -> list[Finding]:
    """Spinous processes follow each other from head to foot, ribs likewise."""
    levels = [
        *(f"C{n}" for n in range(2, 8)),
        *(f"T{n}" for n in range(1, 13)),
        *(f"L{n}" for n in range(1, 6)),
    ]
    rows = [f"{level}.spinous_process" for level in levels]
    ribs = [f"rib_{n}.left.head" for n in range(1, 13)]
    findings = []
    for names, what in ((rows, "spinous processes"), (ribs, "heads of ribs")):
        present = [name for name in names if name in model.landmarks]
        heights = np.array(
            [float(np.reshape(model.landmarks[n], (-1, 3))[:, 2].mean()) for n in present]
        )
        wrong = [present[i + 1] for i in np.flatnonzero(np.diff(heights) >= 0)]
        findings.append(
            Finding(
                f"order:{what.replace(' ', '_')}",
                f"{what} from head to foot: {len(present)} of {len(names)} present"
                + (f"; out of order: {', '.join(wrong)}" if wrong else ""),
                None,
                None,
                not wrong and len(present) == len(names),
            )
        )
    return findings


def summary(findings: Sequence[Finding]) -> list[str]:
    """Return one line a check: how many findings it has and how many of them failed."""
    counts: dict[str, list[int]] = {}
    for finding in findings:
        total = counts.setdefault(finding.check, [0, 0])
        total[0] += 1
        total[1] += not finding.ok
    return [
        f"{'ok  ' if bad == 0 else 'FAIL'} {check}: {total - bad} of {total}"
        for check, (total, bad) in counts.items()
    ]
