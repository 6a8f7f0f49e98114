"""Questions about a section: name the marked area, or point to an area that is named."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from meshes.questions.stations import stations
from viewer.state.places import plane_in_words
from viewer.state.section_plane import SectionPlane
from viewer.state.tongue import told
from viewer.state.view_state import Pin, ViewState

if TYPE_CHECKING:
    import random

    from meshes.questions.section import Region
    from viewer.study.questions import Question, QuestionMaker

LEAST_INSIDE_MM = 2.0
"""A circle of this radius fits into an area that is asked about."""
LEAST_AREA_CM2 = 0.3
_TRIES = 4


def cut_question(
    maker: QuestionMaker, rng: random.Random, kind: str, part_id: str
) -> Question | None:
    """Return a question on a level section in which a part has an area, None where it has none.

    Parameters
    ----------
    kind : {"area", "area_point"}
        Name the marked area; point to the area of a named structure.
    """
    low, high = maker.model.parts[part_id].mesh.bounds[:, 2]
    places = [s for s in stations(maker.model, "transverse") if low < s.position_mm < high]
    rng.shuffle(places)
    for station in places[:_TRIES]:
        section = SectionPlane(position_mm=float(station.position_mm), whole=True)
        cut = {r.part_id: r for r in maker.slicer.cut(section.plane(), None)}
        spot = inside(cut[part_id]) if part_id in cut else None
        if spot is None:
            continue
        plane = section.plane()
        place = plane.origin + spot[0] * plane.right + spot[1] * plane.up
        where = tuple(float(c) for c in place)
        return _ask(maker, rng, kind, part_id, section, where, cut, station.name)
    return None


def inside(region: Region) -> tuple[float, float] | None:
    """Return the place of an area that is farthest from its border, None where it is too small."""
    if region.area_cm2 < LEAST_AREA_CM2:
        return None
    largest = max(region.polygons.geoms, key=lambda piece: piece.area)
    import shapely

    circle = shapely.maximum_inscribed_circle(largest, tolerance=0.5)
    if circle.length < LEAST_INSIDE_MM:
        return None
    x, y = circle.coords[0]
    return float(x), float(y)


def _ask(maker, rng, kind, part_id, section, where, cut, station: str) -> Question | None:
    from viewer.study.questions import ask

    state = ViewState(section=section)
    name = maker.english(part_id)
    # Where the answer is itself a level, the place of the cut would tell it.
    where_cut = (
        told("Section at {place}.", place=plane_in_words(station))
        if not maker.family(part_id)
        else told("A level section.")
    )
    if kind == "area_point":
        prompt = f"{where_cut} " + told("Point to {name}: click on its area.", name=name)
        return ask(maker, kind, part_id, prompt, state, place=where)
    middle = np.asarray(where)
    plane = section.plane()

    def distance(region: Region) -> float:
        centre = region.polygons.centroid
        spot = plane.origin + centre.x * plane.right + centre.y * plane.up
        return float(np.linalg.norm(spot - middle))

    askable = set(maker.askable)
    beside = [
        maker.english(r.part_id)
        for r in sorted(cut.values(), key=distance)
        if r.part_id in askable and r.area_cm2 >= LEAST_AREA_CM2
    ]
    wrong = [words for words in dict.fromkeys(beside) if words != name][:6]
    rng.shuffle(wrong)
    found = maker.options(rng, name, wrong)
    if found is None:
        return None
    choices, right = found
    pinned = ViewState(section=section, pins=(Pin(where, "", part_id),))
    return ask(
        maker, kind, part_id, f"{where_cut} " + told("Name the marked area."), pinned, place=where, pin=where,
        choices=choices, right=right, accepted=maker.accepted(part_id),
    )  # fmt: skip
