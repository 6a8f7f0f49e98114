"""The facts that go into the take-home page: parts, captions, plan, cautions, scenes."""

from __future__ import annotations

import json
import re
import zlib
from base64 import b64encode
from collections.abc import Mapping, Sequence
from importlib.resources import files
from typing import Any

from meshes.catalogue.plan import PlanStep, part_ids_of
from meshes.catalogue.plan import cautions as plan_cautions
from meshes.catalogue.plan import steps as plan_steps
from meshes.export import peelback_version
from meshes.model import BackModel, Part, other_side
from viewer.scene.camera import VIEWS as DIRECTIONS
from viewer.scene.camera import pose_from_dict
from viewer.scene.looks import MATERIALS, base_colour, material_of, tendon_colour
from viewer.share.pack import FIBRE_STEP_MM, STEP_MM, PackedMeshes
from viewer.state.captions import (
    KIND_WORDS,
    caption_of,
    neighbours_of,
    part_title,
    search_index,
)
from viewer.state.folding import is_folded
from viewer.state.plan import plan_from_records
from viewer.state.rail import CORE_COLOURS
from viewer.state.step_words import PLAN_NOTE, called, step_words
from viewer.state.tongue import figure, told
from viewer.state.view_state import STRATA, VIEWS, ViewState
from viewer.state.visibility import FILM_OPACITY, SEE_THROUGH_OPACITY, is_film, taken_off
from viewer.talk.scenes import Talk, TalkScene

_TOLD_IN_SCRIPT = re.compile(r'\btold\(\s*"([^"]+)"')
TOLD_IN_FRAME = re.compile(r"\[\[(.+?)\]\](?!\])")
"""Text of the page's frame: [[in two pairs of brackets]]."""

LOOKS = ("by_kind",)
TITLE = "The back, peeled from skin to bone"
CAUTION = "Teaching model: not for needle or surgical guidance. Local rules come first."

SHORT_VIEWS = {
    "posterior": "Behind",
    "oblique_left": "Oblique L",
    "oblique_right": "Oblique R",
    "lateral_left": "Side L",
    "lateral_right": "Side R",
    "superior": "Above",
    "inferior": "Below",
    "anterior": "Front",
}


def payload_text(facts: Mapping[str, Any], meshes: PackedMeshes) -> str:
    """Return facts and meshes as one compressed stretch of base64."""
    head = json.dumps(facts, ensure_ascii=False, separators=(",", ":")).encode()
    data = len(head).to_bytes(4, "little") + head + meshes.data
    return b64encode(zlib.compress(data, 9)).decode("ascii")


def page_facts(
    model: BackModel,
    meshes: PackedMeshes,
    licences: Sequence[str],
    talk: Talk | None = None,
    notes: bool = False,
) -> dict[str, Any]:
    """Return everything the page knows beside the meshes, as plain values.

    Parameters
    ----------
    model : BackModel
    meshes : PackedMeshes
        From ``viewer.share.pack``.
    licences : sequence of str
        Of what is inside the page.
    talk : Talk or None
        Scenes that travel with it.
    notes : bool
        The speaker's notes travel too; by default they stay at home.
    """
    parts = list(model.parts.values())
    number = {part.id: i for i, part in enumerate(parts)}
    captions, sources, caption_of_part = _captions(model, parts)
    return {
        "step_mm": STEP_MM,
        "fibre_step_mm": FIBRE_STEP_MM,
        "meshes": [[mesh.vertices, mesh.faces] for mesh in meshes.meshes],
        "parts": [
            _part_facts(part, model, meshes, number, caption_of_part[part.id]) for part in parts
        ],
        "captions": captions,
        "sources": sources,
        "index": [
            {
                "title": named.title,
                "names": list(named.names),
                "parts": [number[i] for i in named.ids],
                "stratum": named.stratum,
            }
            for named in sorted(search_index(model), key=lambda named: named.stratum)
        ],
        "see_through": SEE_THROUGH_OPACITY,
        "film": FILM_OPACITY,
        "words": page_words(),
        "strata": [told(name) for name in STRATA],
        "rail": [[int(colour[k : k + 2], 16) for k in (1, 3, 5)] for colour in CORE_COLOURS],
        "looks": [{"name": look, "tendon": list(tendon_colour(look))} for look in LOOKS],
        "views": {
            name: {
                "title": told(VIEWS[name]),
                "short": told(SHORT_VIEWS[name]),
                "azimuth": DIRECTIONS[name][0],
                "elevation": DIRECTIONS[name][1],
            }
            for name in VIEWS
        },
        "steps": _steps(model, number),
        "plan_note": told(PLAN_NOTE),
        "cautions": [
            {"title": told(caution.title), "text": told(caution.text)}
            for caution in sorted(plan_cautions(), key=lambda caution: caution.id != "model")
        ],
        "talk_title": talk.title if talk else "",
        "scenes": [scene_facts(scene, model, notes) for scene in talk.scenes] if talk else [],
        "about": about(model),
        "licences": list(licences),
    }


def about(model: BackModel) -> list[str]:
    """Return what the page says of itself."""
    body = model.body
    return [
        told(
            "Peelback {version}, a back computed from a few numbers: {sex}, {stature} mm tall. "
            "Nothing was scanned, and nobody's body is shown.",
            version=peelback_version(),
            sex=told(body.sex),
            stature=figure(body.stature_mm),
        ),
        told(CAUTION),
        told(
            "This file holds everything it needs and never opens a connection. It opens in "
            "browsers of 2023 or later."
        ),
        told(
            "What the desktop program does and this page does not: folding flaps on their hinge, "
            "sections, probing and measuring, tests, other bodies."
        ),
        told("The body stands, arms a little away from the trunk; a donor lies prone."),
        told(
            "Facts marked 'from memory' were not looked up; a name in Latin with a question mark "
            "was recalled only."
        ),
    ]


def page_texts() -> tuple[str, ...]:
    """Return the texts of the page itself, as they are written: of its script and its frame."""
    found: list[str] = []
    for file in sorted((files("viewer.share") / "source").iterdir(), key=lambda file: file.name):
        if file.name.endswith(".js"):
            found += _TOLD_IN_SCRIPT.findall(file.read_text(encoding="utf-8"))
    frame = (files("viewer.share") / "web" / "page.html").read_text(encoding="utf-8")
    found += TOLD_IN_FRAME.findall(frame)
    return tuple(dict.fromkeys(found))


def page_words() -> dict[str, str]:
    """Return the words that the page shows in another way than they are written."""
    return {text: words for text in page_texts() if (words := told(text)) != text}


def _part_facts(
    part: Part, model: BackModel, meshes: PackedMeshes, number: Mapping[str, int], caption: int
) -> dict[str, Any]:
    mesh, mirrored = meshes.shows[part.id]
    twin = other_side(part.id)
    return {
        "id": part.id,
        "title": part_title(part, model.catalogue),
        "kind": told(KIND_WORDS.get(part.kind, part.kind)),
        "context": part.kind == "context",
        "stratum": part.stratum,
        "side": (part.side or "")[:1],
        "mesh": mesh,
        "mirrored": mirrored,
        "pattern": MATERIALS.index(material_of(part)),
        "colours": [[int(round(c)) for c in base_colour(part, look)] for look in LOOKS],
        "caption": caption,
        "film": is_film(part),
        "covers": part.kind in ("skin", "fascia", "muscle"),
        "twin": number.get(twin, -1) if twin != part.id else -1,
    }


def _captions(model: BackModel, parts: Sequence[Part]) -> tuple[list, list[str], dict[str, int]]:
    """Captions without repeats, the sources they name, and which part has which."""
    made: list[dict[str, Any]] = []
    sources: dict[str, int] = {}
    seen: dict[tuple, int] = {}
    by_part = {}
    for part in parts:
        caption = caption_of(part, model)
        key = (caption.latin, caption.lines, caption.sources)
        if key not in seen:
            seen[key] = len(made)
            made.append(
                {
                    "latin": caption.latin,
                    "lines": [[told(head), text] for head, text in caption.lines],
                    "sources": [sources.setdefault(s, len(sources)) for s in caption.sources],
                }
            )
        by_part[part.id] = seen[key]
    return made, list(sources), by_part


def _steps(model: BackModel, number: Mapping[str, int]) -> list[dict[str, Any]]:
    catalogue = model.catalogue
    records = plan_steps()
    plan = plan_from_records(records, lambda name: part_ids_of(name, catalogue))
    out = []
    for record in records:
        words = step_words(record, catalogue)
        out.append(
            {
                "id": record.id,
                "title": words.title,
                "needs": list(record.needs),
                "side": record.side,
                "optional": record.optional,
                "do": words.do,
                "cut": words.cut,
                "hinge": " – ".join(w for w in (words.hinge, words.fold) if w),
                "keep": ", ".join(words.keep),
                "stop": " ".join(words.stop),
                "caution": words.caution,
                "differs": words.differs,
                "removes": {
                    side: sorted(number[i] for i in plan.removed_by(plan[record.id], model, side))
                    for side in ("left", "right")
                },
                "reveals": _reveals(record, model, number),
            }
        )
    return out


def _reveals(record: PlanStep, model: BackModel, number: Mapping[str, int]) -> list[dict]:
    """What a step brings to light: words, and a part to go to (-1: none in this model)."""
    out = []
    for name in record.reveals:
        ids = [i for i in part_ids_of(name, model.catalogue) if i in number]
        out.append({"words": called(name, model.catalogue), "part": number[ids[0]] if ids else -1})
    return out


def scene_facts(scene: TalkScene, model: BackModel, notes: bool = False) -> dict[str, Any]:
    """Return a scene as the page reads it; parts that the model lacks are left out."""
    state = scene.state
    number = {part_id: n for n, part_id in enumerate(model.parts)}

    def numbers(ids) -> list[int]:
        return sorted(number[i] for i in ids if i in number)

    peeled_only = ViewState(peeled=state.peeled, strata_off=state.strata_off)
    gone = {
        part.id
        for part in model.parts.values()
        if taken_off(part, state) and not taken_off(part, peeled_only)
    }
    # The page folds nothing: what lies folded back is out of the way.
    gone |= {part_id for part_id in model.parts if is_folded(state, part_id)}
    hidden = set(state.hidden) | (set() if state.neighbours else neighbours_of(model))
    selected = state.selected
    return {
        "title": scene.title,
        "line": scene.line,
        "notes": scene.notes if notes else "",
        "peeled": {"left": state.peeled.left, "right": state.peeled.right},
        "off": {"left": sorted(state.strata_off.left), "right": sorted(state.strata_off.right)},
        "ticked": {"left": sorted(state.ticked.left), "right": sorted(state.ticked.right)},
        "removed": numbers(gone - hidden),
        "hidden": numbers(hidden),
        "through": numbers(state.see_through),
        "alone": numbers(state.alone),
        "selected": number.get(selected, -1) if selected else -1,
        "shown": state.side_shown,
        "view": state.view,
        "pose": _pose(state),
    }


def _pose(state: ViewState) -> dict[str, Any] | None:
    """The camera in the page's own terms; None stands for the fixed view."""
    if state.camera is None:
        return None
    camera = state.camera
    pose = pose_from_dict(
        {
            "position": camera.position,
            "focal_point": camera.focal_point,
            "view_up": camera.view_up,
            "parallel_scale": camera.parallel_scale,
        }
    )
    return {
        "azimuth": pose.azimuth_deg,
        "elevation": pose.elevation_deg,
        "focus": list(pose.focus),
        "scale": pose.scale_mm,
    }
