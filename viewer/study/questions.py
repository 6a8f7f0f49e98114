"""Makes tag-test questions from the catalogue, the model and what covers what.

No question is stored: a structure, a state of the dissection and a kind of question give
one, by a seed. A tag is a pin on a place that the state leaves open; wrong options come
from plausible neighbours: the same stratum and kind, what lies over and under, and muscles
that slope alike.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any

import numpy as np

from meshes.catalogue.names import names_of, plain
from viewer.state.captions import neighbours_of, sentence_case
from viewer.state.step_words import name_of
from viewer.state.tongue import told
from viewer.state.view_state import BOTH_SIDES, STRATA, Pin, Sides, ViewState, on_side
from viewer.state.visibility import bare_films, is_film, visible_parts
from viewer.study.areas import cut_question
from viewer.study.layer_questions import (
    deep_to_question,
    superficial_to_question,
    tissue_of,
    tissue_question,
)
from viewer.study.plan_questions import (
    PlanPlaces,
    lose_question,
    may_ask,
    plan_places,
    step_question,
)

if TYPE_CHECKING:
    from scipy.spatial import cKDTree

    from meshes.model import BackModel, Part
    from meshes.questions.cover import Layers
    from meshes.questions.rehearse import Rehearser
    from meshes.questions.section import Slicer

KINDS: dict[str, str] = {
    "name": "Name the tagged structure",
    "nerve": "Its nerve",
    "artery": "Its artery",
    "attachment": "An attachment",
    "action": "An action",
    "tissue": "Which tissue or layer it is",
    "deep_to": "What lies directly deep to the pin",
    "superficial_to": "What lies directly superficial to it",
    "level": "Which level",
    "side": "Left or right",
    "point_to": "Point to it",
    "order": "Put five in order of depth",
    "step": "Which step of the plan meets it",
    "lose": "What a cut would lose",
    "area": "Name an area in a section",
    "area_point": "Point to an area in a section",
}
TYPED_KINDS = frozenset({"name", "level", "area"})
"""Kinds that can be answered by typing; the others are chosen or pointed."""
POINTED_KINDS = frozenset({"point_to", "area_point"})
"""Kinds that are answered by a click on the model; they carry no tag."""
SECTION_KINDS = frozenset({"area", "area_point"})
PLAN_KINDS = frozenset({"step", "lose"})

BONE_FAMILIES = ("vertebra", "rib")
"""Bones of which there is one a level, as the ids of their rows begin."""
NOWHERE = (0.0, 0.0, 0.0)
"""Place of a question that takes the one that was laid open for it."""
CHOICES = 4
LEAST_OPEN = 0.06
"""A tagged structure lies open with at least this share of its area."""
LEAST_PLACES = 6
"""and at so many places, two millimetres apart."""
_ASKED_KINDS = ("muscle", "bone", "nerve", "artery", "ligament", "fascia")
_SLOPE_DEG = 25.0


@dataclass(frozen=True, slots=True)
class Question:
    """One question with its state, its answer and the reason.

    Attributes
    ----------
    kind : str
        A key of ``KINDS``.
    part_id : str
        The structure that is asked about.
    structure : str
        Its row with its level: the name under which results are kept.
    stratum : int
    prompt : str
    accepted : tuple of str
        Right typed answers, the one to show first; () where it is not typed.
    choices : tuple of str
        Options to choose from, () for pointing and ordering.
    right : int
        Place of the right option.
    order : tuple of str
        For "order": the titles, outermost first; ``choices`` has them shuffled.
    pin : (3,) tuple of float or None
        Where the tag stands, mm LPS; None where there is none.
    place : (3,) tuple of float
        A place at which the structure lies open, tagged or not: the picture must show it.
    state : ViewState
        What the reader sees.
    explanation : str
    shows : tuple of str
        Ids that the explanation tints.
    through : tuple of str
        Ids that must be looked through to see those.
    line : tuple of (3,)
        A line of cut that is drawn over the picture, mm LPS; () for none.
    shown_in : ViewState or None
        What is peeled and taken away where the answer is shown, None for as in the question.
    """

    kind: str
    part_id: str
    structure: str
    stratum: int
    prompt: str
    state: ViewState
    explanation: str
    accepted: tuple[str, ...] = ()
    choices: tuple[str, ...] = ()
    right: int = -1
    order: tuple[str, ...] = ()
    pin: tuple[float, float, float] | None = None
    place: tuple[float, float, float] = NOWHERE
    shows: tuple[str, ...] = ()
    through: tuple[str, ...] = ()
    line: tuple[tuple[float, float, float], ...] = ()
    shown_in: ViewState | None = None


def structure_of(part: Part) -> str:
    """Return the name under which results and notes on a part are kept: its id without side."""
    return part.id.rsplit(".", 1)[0] if part.side else part.id


@dataclass(eq=False, repr=False)
class QuestionMaker:
    """Makes questions on one model.

    Parameters
    ----------
    model : BackModel
    layers : Layers
        From ``meshes.questions.cover.layers_of``.
    """

    model: BackModel
    layers: Layers
    _slopes: dict[str, np.ndarray | None] = field(default_factory=dict)

    @cached_property
    def askable(self) -> tuple[str, ...]:
        """Ids of parts that can be asked about: named, and met by rays from behind."""
        met = set(self.layers.ids)
        neighbours = neighbours_of(self.model)
        return tuple(
            part.id
            for part in self.model.parts.values()
            if part.kind in _ASKED_KINDS
            and part.id in met
            and part.entry in self.model.catalogue
            and not is_film(part)
            and (part.id not in neighbours or part.kind == "muscle")
        )

    @cached_property
    def tagged(self) -> tuple[str, ...]:
        """Ids of parts that can carry a tag: the askable ones, and the skin for its tissue."""
        skins = (p.id for p in self.model.parts.values() if p.kind == "skin")
        return (*self.askable, *(i for i in skins if i in self.layers.ids))

    @cached_property
    def named(self) -> frozenset[str]:
        """Ids of parts that can stand among the options: named in the catalogue, and no film."""
        return frozenset(
            part.id
            for part in self.model.parts.values()
            if part.entry in self.model.catalogue and not is_film(part)
        )

    @cached_property
    def plan_places(self) -> PlanPlaces:
        """Where the parts come in the plan."""
        return plan_places(self.model)

    @cached_property
    def rehearser(self) -> Rehearser:
        """Answers cuts; a window that has one gives its own."""
        from meshes.questions.rehearse import Rehearser

        return Rehearser(self.model)

    def family_of_layer(self, part_id: str) -> tuple[str, ...]:
        """Return the parts that are cut as one with a part: its group on its side."""
        part = self.model.parts[part_id]
        return tuple(
            other.id
            for other in self.model.parts.values()
            if other.id == part_id
            or (part.group and other.group == part.group and other.side == part.side)
        )

    @cached_property
    def slicer(self) -> Slicer:
        """Cuts the model for questions on sections."""
        from meshes.questions.section import Slicer

        return Slicer(self.model)

    def among(
        self, strata: Collection[int] = (), regions: Collection[str] = (), side: str = "both"
    ) -> tuple[str, ...]:
        """Return the askable parts of some strata and regions (none named: all) and a side."""
        return tuple(
            i
            for i in self.tagged
            if (not strata or self.model.parts[i].stratum in strata)
            and (not regions or self.model.parts[i].region in regions)
            and on_side(self.model.parts[i].side, side)
        )

    def structure(self, part_id: str) -> str:
        """Return the name under which results of a part are kept: its id without side."""
        return structure_of(self.model.parts[part_id])

    def make(
        self,
        seed: int,
        kinds: Collection[str] = tuple(KINDS),
        structure: str = "",
        side: str = "both",
    ) -> Question | None:
        """Return a question, None where this seed, structure and kinds give none.

        Parameters
        ----------
        seed : int
        kinds : collection of str
        structure : str
            Ask about this one; "" for any.
        side : {"both", "left", "right"}
            Side of what is asked about; median parts lie on either.
        """
        for kind in kinds:
            if kind not in KINDS:
                raise ValueError(f"kinds are {', '.join(KINDS)}, got {kind!r}")
        rng = random.Random(seed)
        pool = [
            i
            for i in self.tagged
            if (not structure or self.structure(i) == structure)
            and on_side(self.model.parts[i].side, side)
        ]
        rng.shuffle(pool)
        # Where one kind alone is wanted, what it can't be asked of is not even laid open.
        pool = [i for i in pool if any(self.may(kind, i) for kind in kinds)]
        for part_id in pool[:40]:
            left = sorted(kinds, key=list(KINDS).index)
            rng.shuffle(left)
            question = self._ask(rng, part_id, left)
            if question is not None:
                return question
        return None

    def _ask(self, rng: random.Random, part_id: str, kinds: list[str]) -> Question | None:
        """Return a question of the first kind that the part, laid open or cut, allows."""
        laid, tried = None, False
        for kind in kinds:
            if not self.may(kind, part_id):
                continue
            if kind in SECTION_KINDS:
                question = cut_question(self, rng, kind, part_id)
                if question is not None:
                    return question
                continue
            if not tried:
                laid, tried = self._laid_open(rng, part_id), True
            if laid is None:
                continue
            state, place, ray = laid
            question = _MAKERS[kind](self, rng, part_id, state, ray)
            if question is None:
                continue
            place = place if question.place is NOWHERE else question.place
            pin = None if kind in POINTED_KINDS else place
            pins = () if pin is None else (Pin(pin, "", part_id),)
            return replace(question, pin=pin, place=place, state=replace(question.state, pins=pins))
        return None

    def may(self, kind: str, part_id: str) -> bool:
        """True where a kind of question makes sense of a part; it may still give none."""
        part = self.model.parts[part_id]
        if kind == "tissue":
            return tissue_of(part) != ""
        if part.kind == "skin":
            return False
        if kind in SECTION_KINDS:
            return part.kind in ("muscle", "bone", "ligament")
        if kind == "level":
            return part.kind == "bone" and part.level in self.family(part_id)
        if kind in ("nerve", "artery", "attachment", "action"):
            return part.kind == "muscle"
        if kind in PLAN_KINDS:
            return may_ask(self, kind, part_id)
        return kind != "side" or part.side is not None

    def family(self, part_id: str) -> tuple[str, ...]:
        """Return the levels of the bones of a part's family, in order; () for a single bone.

        Vertebrae and ribs have a row each; the family is what their names share.
        """
        stem, _, number = self.model.parts[part_id].entry.rpartition("_")
        if not stem or number != self.model.parts[part_id].level:
            return ()
        found = {p.level: None for p in self.model.parts.values() if p.entry == f"{stem}_{p.level}"}
        return tuple(
            sorted(found, key=lambda level: ("CTLS".find(level[:1]), int(level.strip("CTLS"))))
        )

    # For the picture and the explanation ------------------------------------------------

    @cached_property
    def skin_tree(self) -> cKDTree:
        """Where the inward rays begin, as a tree of their origins."""
        from scipy.spatial import cKDTree

        return cKDTree(self.layers.rays.origins)

    def inward_at(self, place: tuple[float, float, float]) -> np.ndarray:
        """Return the unit vector (3,) into the body at a place, square to the skin near it."""
        near = self.skin_tree.query(np.asarray(place, float), 8)[1]
        mean = self.layers.rays.directions[near].mean(axis=0)
        return mean / np.linalg.norm(mean)

    def over(self, part_id: str, most: int = 4) -> tuple[str, ...]:
        """Return what lies over a part in the whole back, outermost first: "trapezius (96 %)"."""
        if part_id not in self.layers.ids:
            return ()
        found: dict[str, float] = {}
        for cover in self.layers.covers(part_id):
            part = self.model.parts.get(cover.part_id)
            if part is None or part.entry not in self.model.catalogue or is_film(part):
                continue
            if cover.share >= 0.1:
                found.setdefault(self.english(part.id), cover.share)
        return tuple(f"{name} ({share:.0%})" for name, share in list(found.items())[-most:])

    # The state --------------------------------------------------------------------------

    def there(self, state: ViewState) -> frozenset[str]:
        """Return the ids that cover something in a state: films in the open do not."""
        shown = visible_parts(self.model, state)
        return frozenset(shown - bare_films(self.model, state, shown))

    def _laid_open(
        self, rng: random.Random, part_id: str
    ) -> tuple[ViewState, tuple[float, float, float], int] | None:
        """Peel at random so that a part lies open; return state, place and ray of the tag."""
        from scipy.spatial import cKDTree

        part = self.model.parts[part_id]
        depths = list(range(max(part.stratum - 2, 0), part.stratum + 1))
        rng.shuffle(depths)
        for depth in depths:
            state = ViewState(peeled=Sides(depth, depth))
            there = self.there(state)
            open_share = self.layers.in_view(part_id, there)
            if not open_share or open_share < LEAST_OPEN:
                continue
            state, there = self._one_more_away(rng, part_id, state, there)
            places, rays = self.layers.places_in_view(part_id, there)
            if len(places) < LEAST_PLACES:
                continue
            # Well inside what lies open, so that the tag is not on an edge.
            crowd = [len(n) for n in cKDTree(places).query_ball_point(places, 8.0)]
            best = np.argsort(crowd, kind="stable")[-max(1, len(places) // 5) :]
            k = int(best[rng.randrange(len(best))])
            return state, tuple(float(x) for x in places[k]), int(rays[k])
        return None

    def _one_more_away(self, rng, part_id, state, there):
        """Take one or two neighbouring muscles away as well, now and then."""
        if rng.random() < 0.5 or max(state.peeled) < 2:
            return state, there
        part = self.model.parts[part_id]
        others = sorted(
            i
            for i in there
            if i != part_id
            and self.model.parts[i].kind == "muscle"
            and abs(self.model.parts[i].stratum - part.stratum) <= 1
        )
        if not others:
            return state, there
        gone = frozenset(rng.sample(others, min(len(others), rng.randint(1, 2))))
        state = replace(state, removed=gone)
        return state, self.there(state)

    # Wrong options ----------------------------------------------------------------------

    def slope(self, part_id: str) -> np.ndarray | None:
        """Return the mean direction of a muscle's fibres, on the right as on the left; unit."""
        key = self.structure(part_id)
        if key not in self._slopes:
            fibres = self.model.parts[part_id].fibres
            way = None
            if fibres is not None and self.model.parts[part_id].kind == "muscle":
                way = (np.asarray(fibres)[:, -1] - np.asarray(fibres)[:, 0]).mean(axis=0)
                if self.model.parts[part_id].side == "right":
                    way = way * np.array([-1.0, 1.0, 1.0])
                length = float(np.linalg.norm(way))
                way = way / length if length > 0 else None
            self._slopes[key] = way
        return self._slopes[key]

    def look_alike(self, a: str, b: str) -> bool:
        """True when the fibres of two muscles run alike."""
        first, second = self.slope(a), self.slope(b)
        if first is None or second is None:
            return False
        return abs(float(first @ second)) > np.cos(np.radians(_SLOPE_DEG))

    def neighbours(self, part_id: str) -> list[str]:
        """Return other parts, the most easily taken for this one first, one a structure."""
        part = self.model.parts[part_id]
        beside = {c.part_id for c in self.layers.covers(part_id)}
        best: dict[str, tuple[float, str]] = {}
        for other_id in self.askable:
            other = self.model.parts[other_id]
            if other.entry == part.entry:
                continue
            likeness = (
                3.0 * (other.kind == part.kind)
                + max(0.0, 2.0 - abs(other.stratum - part.stratum))
                + 1.0 * (other.region == part.region)
                + 1.5 * (other_id in beside)
                + 1.5 * self.look_alike(part_id, other_id)
                + 1.0 * (other.group == part.group != "")
            )
            key = other.entry
            if key not in best or likeness > best[key][0]:
                best[key] = (likeness, other_id)
        return [i for _, i in sorted(best.values(), key=lambda pair: (-pair[0], pair[1]))]

    def options(
        self, rng: random.Random, right: str, wrong: Iterable[str], count: int = CHOICES
    ) -> tuple[tuple[str, ...], int] | None:
        """Return shuffled options with the right one once, and its place; None if too few."""
        taken, seen = [], {plain(right)}
        for words in wrong:
            if words and plain(words) not in seen:
                seen.add(plain(words))
                taken.append(words)
            if len(taken) == count - 1:
                break
        if len(taken) < min(count - 1, 2):
            return None
        choices = [right, *taken]
        rng.shuffle(choices)
        return tuple(choices), choices.index(right)

    # Words ------------------------------------------------------------------------------

    def row(self, part_id: str) -> Any:
        """Return the row of a part."""
        return self.model.catalogue[self.model.parts[part_id].entry]

    def english(self, part_id: str) -> str:
        """Return the name of a part without its side, in the language that is shown."""
        return name_of(part_id, self.model.catalogue)

    def accepted(self, part_id: str) -> tuple[str, ...]:
        """Return every name of a part that is right."""
        part, row = self.model.parts[part_id], self.row(part_id)
        shown = self.english(part_id)
        if row.levels:
            english = self.model.catalogue.english_of_part(part_id, with_side=False)
            return tuple(dict.fromkeys((shown, english, self.structure(part_id).replace("_", " "))))
        return tuple(dict.fromkeys((shown, *names_of(part.entry, self.model.catalogue))))

    def explanation(self, part_id: str) -> str:
        """Return what is to be learnt about a part, in two or three sentences."""
        part, row = self.model.parts[part_id], self.row(part_id)
        words = [
            told(
                "{name}, stratum {n} ({layer}).",
                name=sentence_case(self.english(part_id)),
                n=part.stratum,
                layer=told(STRATA[part.stratum]),
            )
        ]
        if row.attachments and part.kind == "muscle":
            ends = ("; ".join(told(a.words) for a in e) for e in (row.origins, row.insertions))
            words.append(told("From {start} to {end}.", start=next(ends), end=next(ends)))
        if row.nerve:
            words.append(told("Nerve: {nerve}.", nerve=told(row.nerve)))
        if row.note:
            words.append(told(row.note))
        return " ".join(words)


# Kinds of question -----------------------------------------------------------------------


def ask(
    maker: QuestionMaker, kind: str, part_id: str, prompt: str, state: ViewState, **more: Any
) -> Question:
    """Return a question about a part, with the fields that every kind has filled in."""
    more = {"shows": (part_id,)} | more
    part: Part = maker.model.parts[part_id]
    return Question(
        kind,
        part_id,
        maker.structure(part_id),
        part.stratum,
        prompt,
        state,
        maker.explanation(part_id),
        **more,
    )


def chosen(maker, rng, kind, part_id, state, prompt, right, wrong, **more) -> Question | None:
    """Return a question with options, None where there are too few that are wrong."""
    found = maker.options(rng, told(right), map(told, wrong))
    if found is None:
        return None
    choices, place = found
    return ask(maker, kind, part_id, prompt, state, choices=choices, right=place, **more)


def _name(maker, rng, part_id, state, ray) -> Question | None:
    near = maker.neighbours(part_id)[:8]
    rng.shuffle(near)
    return chosen(
        maker, rng, "name", part_id, state, told("Name the tagged structure."),
        maker.english(part_id), (maker.english(i) for i in near),
        accepted=maker.accepted(part_id),
    )  # fmt: skip


NERVE_PROMPT = "Which nerve supplies the tagged structure?"
ARTERY_PROMPT = "Which artery supplies the tagged structure?"


def _fact(kind: str, words: str) -> Callable:
    def make(maker, rng, part_id, state, ray) -> Question | None:
        row = maker.row(part_id)
        right = getattr(row, kind)
        if not right or row.kind != "muscle" or row.doubts and _in_doubt(kind, row.doubts):
            return None
        wrong = [getattr(maker.row(i), kind) for i in maker.neighbours(part_id)]
        wrong = [w for w in wrong if w and not _overlap(w, right)]
        prompt = told(words)
        return chosen(maker, rng, kind, part_id, state, prompt, right, wrong)

    return make


def _in_doubt(kind: str, doubts: Iterable[str]) -> bool:
    return any(kind in plain(words) for words in doubts)


_SMALL = frozenset({"and", "or", "of", "the", "to", "by", "from", "at", "on", "in"})


def _overlap(a: str, b: str) -> bool:
    """True when one statement says all that the other says: both would be right."""
    first, second = plain(a), plain(b)
    if first in second or second in first:
        return True
    one, other = _stems(first), _stems(second)
    return one <= other or other <= one


def _stems(text: str) -> set[str]:
    """Return how the words of a text begin: lower and lowest are no answers to choose between."""
    return {word[:4] for word in text.split() if word not in _SMALL}


def _attachment(maker, rng, part_id, state, ray) -> Question | None:
    row = maker.row(part_id)
    if row.kind != "muscle":
        return None
    rules = [r for r in row.attachments if r.kind in ("origin", "insertion") and not r.inconstant]
    if not rules:
        return None
    rule = rules[rng.randrange(len(rules))]
    own = [r.words for r in row.attachments]
    wrong = [
        r.words
        for i in maker.neighbours(part_id)
        for r in maker.row(i).attachments
        if r.kind == rule.kind and not any(_overlap(r.words, w) for w in own)
    ]
    # Either end may move: which of them is the origin is a matter of words.
    prompt = told("To which of these is the tagged structure attached?")
    return chosen(maker, rng, "attachment", part_id, state, prompt, rule.words, wrong)


def _action(maker, rng, part_id, state, ray) -> Question | None:
    row = maker.row(part_id)
    if row.kind != "muscle" or not row.actions or _in_doubt("action", row.doubts):
        return None
    right = row.actions[rng.randrange(len(row.actions))]
    wrong = [
        words
        for i in maker.neighbours(part_id)
        for words in maker.row(i).actions
        if not any(_overlap(words, own) for own in row.actions)
    ]
    prompt = told("Which of these does the tagged structure do?")
    return chosen(maker, rng, "action", part_id, state, prompt, right, wrong)


def _level(maker, rng, part_id, state, ray) -> Question | None:
    part = maker.model.parts[part_id]
    family = maker.family(part_id)
    if part.kind != "bone" or part.level not in family:
        return None
    k = family.index(part.level)
    # Levels next to it are the likeliest mistakes; at either end there are more on one side.
    near = sorted(family, key=lambda level: abs(family.index(level) - k))[1:]
    what = told(part.entry.rpartition("_")[0])

    def shown(level: str) -> str:
        return f"{what} {level}" if level.isdigit() else level

    return chosen(
        maker, rng, "level", part_id, state, told("{bone}: which level carries the tag?", bone=sentence_case(what)),
        shown(str(part.level)), [shown(level) for level in near], accepted=(shown(str(part.level)), str(part.level), *maker.accepted(part_id)),
    )  # fmt: skip


def _side(maker, rng, part_id, state, ray) -> Question | None:
    part = maker.model.parts[part_id]
    if part.side not in BOTH_SIDES:
        return None
    prompt = told("The tag is on {name}. Of which side of the donor?", name=maker.english(part_id))
    return ask(
        maker, "side", part_id, prompt, state, choices=tuple(map(told, BOTH_SIDES)),
        right=BOTH_SIDES.index(part.side),
    )  # fmt: skip


def _point_to(maker, rng, part_id, state, ray) -> Question | None:
    return ask(
        maker,
        "point_to",
        part_id,
        told("Point to {name}: click on it.", name=maker.english(part_id)),
        state,
    )


def _order(maker, rng, part_id, state, ray) -> Question | None:
    titles: dict[str, str] = {}
    known = set(maker.askable)
    for i in maker.layers.order_on(ray):
        if i in known:
            titles.setdefault(maker.english(i), i)
    if len(titles) < 5:
        return None
    kept = sorted(rng.sample(range(len(titles)), 5))
    order = tuple(list(titles)[k] for k in kept)
    ids = tuple(titles[words] for words in order)
    shuffled = list(order)
    while tuple(shuffled) == order:
        rng.shuffle(shuffled)
    return ask(
        maker, "order", part_id,
        told("Put these in order under the pin, from the skin inwards."), state,
        choices=tuple(shuffled), order=order, shows=ids, through=ids[:-1],
    )  # fmt: skip


_MAKERS: Mapping[str, Callable[..., Question | None]] = {
    "name": _name,
    "nerve": _fact("nerve", NERVE_PROMPT),
    "artery": _fact("artery", ARTERY_PROMPT),
    "attachment": _attachment,
    "action": _action,
    "tissue": tissue_question,
    "deep_to": deep_to_question,
    "superficial_to": superficial_to_question,
    "level": _level,
    "side": _side,
    "point_to": _point_to,
    "order": _order,
    "step": step_question,
    "lose": lose_question,
}
