"""Questions on the layers at a tag: what lies next inwards or outwards, and which tissue it is.

What lies next is read off the rays about the tag (`meshes.questions.cover`), fasciae that are
thin as a film included: under the fat comes the deep fascia, not the muscle. It is asked only
where most of the rays nearby agree.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator
from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from viewer.state.tongue import told
from viewer.state.view_state import Sides
from viewer.state.visibility import bare_films, visible_parts

if TYPE_CHECKING:
    import random

    from meshes.model import Part
    from viewer.state.view_state import ViewState
    from viewer.study.questions import Question, QuestionMaker

DEEP_PROMPT = "The pin stands on {name}. What lies directly deep to it there?"
OVER_PROMPT = (
    "The pin stands on {name}. In the whole back, what lies directly superficial to it there?"
)
TISSUE_PROMPT = "Of which tissue or layer is the place that carries the tag?"

TISSUES: dict[str, str] = {
    "skin": "skin",
    "superficial_fascia": "superficial fascia",
    "deep_fascia": "deep fascia",
    "muscle": "muscle",
    "tendon": "aponeurosis or tendon",
    "ligament": "ligament",
    "bone": "bone",
    "nerve": "nerve",
    "artery": "artery",
}
TELLS: dict[str, str] = {
    # Common practice at the table, no source.
    "skin": "Skin: when it is cut through, its edges gape and yellow fat shows between them.",
    "superficial_fascia": "Superficial fascia: fat in lobules, with cutaneous nerves and vessels.",
    "deep_fascia": "Deep fascia: a thin white sheet without flesh, stuck to what it covers.",
    "muscle": "Muscle: red flesh, its bundles run side by side.",
    "tendon": "Aponeurosis or tendon: white and shining, the flesh of a muscle passes into it.",
    "ligament": "Ligament: white fibres from bone to bone, without a belly.",
    "bone": "Bone: hard under the probe, and it does not give.",
    "nerve": "Nerve: a white cord that branches and stays round when it is pressed.",
    "artery": "Artery: a tube with a firm wall that springs back when it is pressed.",
}
_LIKE: dict[str, tuple[str, ...]] = {
    "skin": ("superficial_fascia", "deep_fascia", "muscle"),
    "superficial_fascia": ("deep_fascia", "skin", "muscle", "tendon"),
    "deep_fascia": ("superficial_fascia", "tendon", "ligament", "muscle"),
    "muscle": ("deep_fascia", "tendon", "ligament", "superficial_fascia"),
    "tendon": ("deep_fascia", "ligament", "muscle", "bone", "nerve"),
    "ligament": ("tendon", "deep_fascia", "bone", "muscle", "nerve"),
    "bone": ("ligament", "tendon", "muscle", "deep_fascia"),
    "nerve": ("artery", "ligament", "tendon", "muscle"),
    "artery": ("nerve", "ligament", "tendon", "muscle"),
}
"""What each is taken for, the likeliest first."""

NEAR_MM = 6.0
"""Rays so near to the tag are asked whether the layers are the same there."""
AGREE = 0.6
"""Share of them that must name the same structure next."""
ALSO = 0.15
"""What so many of them name is no wrong option."""
FLESH, SINEW = 0.1, 0.9
"""A vertex of a muscle is flesh below the one tendon fraction and sinew above the other."""
PURE = 0.8
"""Share of the open places about the tag that are the one or the other as the tag is."""
_CAPSULES = ("joint", "membrane")
"""Rows of ligaments that a learner may rightly call something else end so."""


# What lies next -------------------------------------------------------------------------


def next_to(
    maker: QuestionMaker,
    part_id: str,
    ray: int,
    visible: Collection[str] | None,
    *,
    outward: bool = False,
) -> tuple[str, frozenset[str]] | None:
    """Return what lies next to a part on a ray, None where the rays nearby do not agree.

    Parameters
    ----------
    ray : int
        Of the tag.
    visible : collection of str or None
        Ids of what is there; None for the whole back.
    outward : bool
        Towards the skin instead of inwards.

    Returns
    -------
    part_id : str
    also : frozenset of str
        Names that some of the rays nearby give; none of them is a wrong answer.
    """
    answer = _neighbour(maker, part_id, ray, visible, outward)
    if answer is None:
        return None
    origins = maker.layers.rays.origins
    near = maker.skin_tree.query_ball_point(origins[ray], NEAR_MM)
    named: Counter[str] = Counter()
    for one in near:
        found = _neighbour(maker, part_id, int(one), visible, outward)
        if found is not None:
            named[maker.english(found)] += 1
    total, name = sum(named.values()), maker.english(answer)
    if named[name] < AGREE * total or name == maker.english(part_id):
        return None
    over, under = (answer, part_id) if outward else (part_id, answer)
    if not _holds(maker, over, under) or _apart(maker, over, under):
        return None
    return answer, frozenset(n for n, count in named.items() if count >= ALSO * total)


def _neighbour(maker, part_id, ray, visible, outward) -> str | None:
    order = maker.layers.order_on(ray, visible)
    if part_id not in order:
        return None
    k = order.index(part_id) + (-1 if outward else 1)
    if not 0 <= k < len(order):
        return None
    part = maker.model.parts[order[k]]
    # What has no name of its own (the stand-in of the front) ends the question.
    return part.id if part.entry in maker.model.catalogue and part.kind != "context" else None


def _holds(maker, over: str, under: str) -> bool:
    """True when one part lies over another in more places than under it.

    At an edge that bends round a border a ray may meet two layers the other way about.
    """
    parts = maker.model.parts
    if {parts[over].kind, parts[under].kind} & {"nerve", "artery", "vein"}:
        return True
    return _area_over(maker, over, under) >= _area_over(maker, under, over)


def _apart(maker, over: str, under: str) -> bool:
    """True where the books have a layer between two parts that no part of the model is.

    On the skull the epicranial aponeurosis, loose tissue and the pericranium lie under the fat
    (Gray 1918, pp. 378-380); round the spinal dura mater lies the epidural fat (the meninges, same book).
    """
    parts = maker.model.parts
    if parts[under].entry == "cranium":
        return parts[over].kind in ("fascia", "skin")
    return parts[under].entry == "spinal_dura_mater" and parts[over].entry != "epidural_fat"


def _area_over(maker, over: str, under: str) -> float:
    return sum(c.area_cm2 for c in maker.layers.covers(under) if c.part_id == over)


def _beyond(maker, part_id, ray, visible, outward) -> list[str]:
    """Return the names of what lies still farther that way, the nearest first."""
    order = maker.layers.order_on(ray, visible)
    k = order.index(part_id)
    far = order[: max(k - 1, 0)][::-1] if outward else order[k + 2 :]
    parts = maker.model.parts
    return [maker.english(i) for i in far if i in maker.named and parts[i].kind != "context"][:2]


def _next_question(maker, rng, kind, part_id, state, ray, visible, prompt, outward, **more):
    from viewer.study.questions import chosen

    found = next_to(maker, part_id, ray, visible, outward=outward)
    if found is None:
        return None
    answer, also = found
    # Whatever lies still farther there is the likeliest mistake.
    wrong = _beyond(maker, part_id, ray, visible, outward)
    wrong += [maker.english(i) for i in maker.neighbours(answer)[:8]]
    own = {maker.english(part_id), *also}
    wrong = [words for words in wrong if words not in own]
    return chosen(
        maker, rng, kind, part_id, state,
        told(prompt, name=maker.english(part_id)), maker.english(answer), wrong,
        shows=(answer,), **more,
    )  # fmt: skip


def deep_to_question(
    maker: QuestionMaker, rng: random.Random, part_id: str, state: ViewState, ray: int
) -> Question | None:
    """Ask what lies directly under the tag."""
    return _next_question(
        maker, rng, "deep_to", part_id, state, ray, maker.there(state), DEEP_PROMPT, False,
        through=(part_id,),
    )  # fmt: skip


def superficial_to_question(
    maker: QuestionMaker, rng: random.Random, part_id: str, state: ViewState, ray: int
) -> Question | None:
    """Ask what lay directly over the tag before anything was taken away."""
    question = _next_question(
        maker, rng, "superficial_to", part_id, state, ray, None, OVER_PROMPT, True
    )
    if question is None:
        return None
    (answer,) = question.shows
    depth = min(maker.model.parts[answer].stratum, *state.peeled)
    back = replace(state, peeled=Sides(depth, depth), removed=state.removed - {answer})
    return replace(question, through=(answer,), shown_in=back)


# Which tissue ---------------------------------------------------------------------------


def tissue_of(part: Part) -> str:
    """Return the key in ``TISSUES`` of a part's main tissue, "" where none fits it alone."""
    if part.kind == "fascia":
        if part.entry == "superficial_fascia":
            return "superficial_fascia"
        return "tendon" if "aponeurosis" in part.entry else "deep_fascia"
    if part.kind == "ligament" and part.entry.endswith(_CAPSULES):
        return ""
    return part.kind if part.kind in TISSUES else ""


def tissue_question(
    maker: QuestionMaker, rng: random.Random, part_id: str, state: ViewState, ray: int
) -> Question | None:
    """Ask of which tissue the tagged place is; a muscle may be tagged where it is sinew."""
    from viewer.study.questions import ask

    part = maker.model.parts[part_id]
    place: tuple[float, float, float] | None = None
    tissue = tissue_of(part)
    # A film in the open lies over the place as well, and would be as right.
    films = bare_films(maker.model, state, visible_parts(maker.model, state))
    state = replace(state, removed=state.removed | films)
    if part.kind == "muscle" and maker.row(part_id).tendon and part.tendon is not None:
        kinds = ["muscle", "tendon"]
        rng.shuffle(kinds)
        for tissue in kinds:
            found = _pure_place(maker, rng, part, state, tissue == "tendon")
            if found is not None:
                place, ray = found
                break
        else:
            return None
    if not tissue:
        return None
    doubtful = set(_also_said_of(maker, part, tissue))
    wrong = [told(TISSUES[other]) for other in _LIKE[tissue] if other not in doubtful]
    found = maker.options(rng, told(TISSUES[tissue]), wrong)
    if found is None:
        return None
    choices, right = found
    question = ask(
        maker, "tissue", part_id, told(TISSUE_PROMPT), state, choices=choices, right=right
    )
    words = [told(TELLS[tissue])]
    if part.kind == "muscle" and tissue == "tendon":
        words.append(
            told(
                "Sinew of {name}: {which}.",
                name=maker.english(part_id),
                which=told(maker.row(part_id).tendon),
            )
        )
    ladder = [maker.english(i) for i in _ladder(maker, part_id, ray)]
    if ladder:
        names = "; ".join(dict.fromkeys(ladder))
        words.append(told("From the skin inwards at the tag: {names}.", names=names))
    words.append(question.explanation)
    question = replace(question, explanation=" ".join(words))
    return question if place is None else replace(question, place=place)


def _also_said_of(maker, part, tissue: str) -> Iterator[str]:
    """Give the tissues that somebody may rightly say of a place as well.

    The posterior layer of the thoracolumbar fascia is in its outer lamina the aponeurosis of
    latissimus (Bogduk and Macintosh 1984), and the middle one is sinew of transversus.
    """
    row = maker.row(part.id)
    if tissue == "deep_fascia" and row.group == "thoracolumbar_fascia":
        yield "tendon"
    fused = [row.tendon] if part.kind == "muscle" else [a.words for a in row.attachments]
    if tissue == "tendon" and any("fascia" in words for words in fused):
        yield "deep_fascia"


def _pure_place(maker, rng, part, state, sinew: bool):
    """Return an open place and its ray where a muscle is all flesh or all sinew, or None."""
    from scipy.spatial import cKDTree

    places, rays = maker.layers.places_in_view(part.id, maker.there(state))
    if not len(places):
        return None
    away, near = cKDTree(part.vertices).query(places, 3)
    weight = 1.0 / np.maximum(away, 1e-3)
    share = (np.asarray(part.tendon)[near] * weight).sum(axis=1) / weight.sum(axis=1)
    fits = share > SINEW if sinew else share < FLESH
    good = []
    tree = cKDTree(places)
    for k in np.nonzero(fits)[0]:
        about = tree.query_ball_point(places[k], NEAR_MM)
        if fits[about].mean() >= PURE:
            good.append((len(about), int(k)))
    if not good:
        return None
    # Well inside what lies open, so that the tag is not on an edge.
    good.sort()
    best = good[-max(1, len(good) // 5) :]
    k = best[rng.randrange(len(best))][1]
    return tuple(float(c) for c in places[k]), int(rays[k])


def _ladder(maker, part_id: str, ray: int) -> list[str]:
    """Return what lies at a tag in the whole back: all over it, itself, and one thing under it.

    Empty where the ray meets two layers the other way about than most of their places do.
    """
    parts = maker.model.parts
    order = [
        i
        for i in maker.layers.order_on(ray)
        if parts[i].entry in maker.model.catalogue and parts[i].kind != "context"
    ]
    if part_id not in order:
        return []
    order = order[: order.index(part_id) + 2]
    if any(_apart(maker, a, b) for a, b in pairwise(order)):
        return []
    return order if all(_holds(maker, a, b) for a, b in pairwise(order)) else []
