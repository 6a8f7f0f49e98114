"""Where two parts may touch: the places that contacts declare, and how far each reaches.

Builders and checks read the same rule: an exemption is local, the same pair counts
everywhere else.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numba import njit

from meshes.model import Contact, Part

ATTACH_REACH_MM = 8.0
ATTACH_DEPTH_MM = 2.0
BORDER_REACH_MM = 5.0
PIERCE_RADII = 2.0
"""Reach of each kind of declared contact, outside which the same pair counts."""

_SEGMENT_MM = 20.0
"""Neighbouring points of a place farther apart than this are points, not a line:
slips attach to one rib after another and not to the air between them."""

TUBES = ("nerve", "artery", "vein", "canal")


@dataclass(frozen=True, slots=True, eq=False)
class Place:
    """Where a pair may overlap (within ``reach`` mm), and how deep (mm)."""

    contact: Contact
    reach: float
    depth: float


def declared_places(
    parts: Mapping[str, Part],
    contacts: Iterable[Contact],
    radii: dict[str, float] | None = None,
) -> dict[tuple[str, str], list[Place]]:
    """Return the declared places by pair of part ids, in both orders.

    An attachment of a part declares an "attach" contact by itself. ``radii`` keeps the radii
    of parts between calls.
    """
    places: dict[tuple[str, str], list[Place]] = defaultdict(list)
    contacts = list(contacts)
    contacts += [
        Contact(part.id, a.to, "attach", a.curve)
        for part in parts.values()
        for a in part.attachments
    ]
    radii = {} if radii is None else radii
    for contact in contacts:
        place = place_of(contact, parts, radii)
        places[contact.a, contact.b].append(place)
        places[contact.b, contact.a].append(place)
    return places


def place_of(
    contact: Contact, parts: Mapping[str, Part], radii: dict[str, float] | None = None
) -> Place:
    """Return the reach and the depth that a contact allows.

    ``radii`` keeps the radii of parts between calls.
    """
    if contact.kind == "attach":
        return Place(contact, ATTACH_REACH_MM, ATTACH_DEPTH_MM)
    if contact.kind == "pierce":
        return Place(contact, PIERCE_RADII * tube_radius(contact, parts, radii), np.inf)
    return Place(contact, BORDER_REACH_MM, np.inf)


def tube_radius(
    contact: Contact, parts: Mapping[str, Part], known: dict[str, float] | None = None
) -> float:
    """Return the radius of the piercing tube, mm (2 volume / surface, as of a cylinder)."""
    known = {} if known is None else known
    radii = []
    for part_id in (contact.a, contact.b):
        part = parts.get(part_id)
        if part is not None and (part.kind in TUBES or part_id == contact.a):
            if part_id not in known:
                known[part_id] = _radius(part)
            radii.append(known[part_id])
    return max(min(radii, default=0.0), 0.5)


def _radius(part: Part) -> float:
    corners = np.asarray(part.mesh.vertices)[np.asarray(part.mesh.faces)]
    corners = corners - corners[0, 0]
    cross = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    volume = abs(float(np.einsum("ij,ij->", corners[:, 0], cross))) / 6.0
    area = 0.5 * float(np.linalg.norm(cross, axis=1).sum())
    return 2.0 * volume / max(area, 1e-9)


def exempt(points: np.ndarray, depth: np.ndarray, places: Sequence[Place]) -> np.ndarray:
    """(n,) bool: which points, so deep in the other part, lie at a place declared for it.

    Parameters
    ----------
    points : (n, 3) float
    depth : (n,) float
        mm, positive.
    places : sequence of Place
        Of this pair.
    """
    found = np.zeros(len(points), dtype=bool)
    for place in places:
        if place.contact.kind != "contain":
            found |= (depth <= place.depth) & within(points, place.contact.place, place.reach)
    return found


def within(points: np.ndarray, place: np.ndarray, reach: float) -> np.ndarray:
    """(n,) bool: which points lie within reach of a place (points, joined where close)."""
    place = np.ascontiguousarray(place, dtype=np.float64).reshape(-1, 3)
    if len(place) == 0:
        return np.zeros(len(points), dtype=bool)
    return _within(np.ascontiguousarray(points, dtype=np.float64), place, float(reach))


@njit(cache=True, nogil=True)
def _within(points, place, reach):
    found = np.zeros(points.shape[0], np.bool_)
    last = place.shape[0] - 1
    for i in range(points.shape[0]):
        for k in range(max(last, 1)):
            stop = min(k + 1, last)
            length2 = dot = 0.0
            for m in range(3):
                along = place[stop, m] - place[k, m]
                length2 += along * along
                dot += (points[i, m] - place[k, m]) * along
            t = 0.0
            if length2 > 0:
                t = min(max(dot / length2, 0.0), 1.0)
            if length2 > _SEGMENT_MM * _SEGMENT_MM:
                t = 0.0 if t < 0.5 else 1.0
            gap2 = 0.0
            for m in range(3):
                here = place[k, m] + t * (place[stop, m] - place[k, m])
                gap2 += (points[i, m] - here) ** 2
            if gap2 <= reach * reach:
                found[i] = True
                break
    return found
