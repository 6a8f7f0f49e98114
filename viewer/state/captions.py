"""What is said of a part: its title, its caption, and the index that search uses."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from meshes.catalogue.levels import placeholders, spoken
from viewer.state.search import Named
from viewer.state.spelling import spelled
from viewer.state.tongue import figure, told
from viewer.state.view_state import STRATA, ViewState
from viewer.state.visibility import taken_off

if TYPE_CHECKING:
    from meshes.model import BackModel, Part

KIND_WORDS = {
    "bone": "bone",
    "cartilage": "cartilage",
    "disc": "intervertebral disc",
    "ligament": "ligament",
    "muscle": "muscle",
    "tendon": "tendon",
    "fascia": "fascia",
    "nerve": "nerve",
    "artery": "artery",
    "vein": "vein",
    "canal": "content of the vertebral canal",
    "skin": "skin",
    "context": "context, not modelled here",
}

ATTACHED = {"origin": "from {words}", "insertion": "to {words}", "attach": "at {words}"}

FIELDS = (
    "Attachments",
    "Nerve",
    "Artery",
    "Action",
    "Course",
    "Thickness",
    "Covered by",
    "To note",
    "Sources differ",
)

OWN_NOTE = "My note"
"""Heading of a note of the reader's own."""


@dataclass(frozen=True, slots=True)
class Caption:
    """The text under a part.

    Attributes
    ----------
    title : str
        "Rhomboid major, left".
    latin : str
        With a question mark where it was recalled only.
    place : str
        Kind, stratum and what has been done to it.
    lines : tuple of (str, str)
        Heading and text, in the order of ``FIELDS``; empty ones left out.
    sources : tuple of str
    """

    title: str
    latin: str
    place: str
    lines: tuple[tuple[str, str], ...]
    sources: tuple[str, ...]

    def spelled(self, spelling: str) -> Caption:
        """Return the caption in one spelling; sources stay as they were published."""
        return replace(
            self,
            title=spelled(self.title, spelling),
            place=spelled(self.place, spelling),
            lines=tuple((spelled(h, spelling), spelled(t, spelling)) for h, t in self.lines),
        )

    def with_note(self, words: str) -> Caption:
        """Return the caption with a note of the reader's own before the facts; "" adds none."""
        return replace(self, lines=((OWN_NOTE, words), *self.lines)) if words else self

    def spoken(self) -> str:
        """Return the whole caption as sentences for screen readers."""
        facts = " ".join(f"{told(head)}: {text.rstrip('.')}." for head, text in self.lines)
        return f"{self.title}. {self.latin}. {self.place}. {facts}".replace(". .", ".")


def english_name(part: Part, catalogue: Mapping[str, object]) -> str:
    """Return the English name without side, lower case as in running text."""
    row = catalogue.get(part.entry) if part.entry in catalogue else None
    if row is None:
        return part.name.replace("_", " ")
    name_at = getattr(row, "name_at", None)
    return name_at(row_level(part, row)) if name_at else row.english


def row_level(part: Part, row: object) -> str:
    """Return the level that its row of the catalogue gives a part: "T6_T7" of a ligament.

    A part itself may know only the upper one of two, or none ("5th intercostal space").
    """
    level_of = getattr(row, "level_of", None)
    return (level_of(part.name) if level_of else "") or getattr(part, "level", "")


def common_name(part: Part, catalogue: Mapping[str, object]) -> str:
    """Return the name without side in the language that is shown, as in running text."""
    row = catalogue.get(part.entry) if part.entry in catalogue else None
    pattern = getattr(row, "part_english", "")
    level = row_level(part, row) if pattern else ""
    if level and level in row.levels:
        return told(pattern, **{k: spoken(v) for k, v in placeholders(level).items()})
    return told(english_name(part, catalogue))


def sentence_case(text: str) -> str:
    """Return text with its first letter large, the rest as it is."""
    return text[:1].upper() + text[1:]


def shown_name(
    part: Part, catalogue: Mapping[str, object], *, latin: bool = False, spelling: str = "uk"
) -> str:
    """Return the name without side, as a title: Latin where wanted and known, else English."""
    row = catalogue.get(part.entry) if part.entry in catalogue else None
    name = (getattr(row, "latin", "") or "") if latin else ""
    level = row_level(part, row) if name else ""
    if level and level not in name:
        between = level.replace("_", "–")
        name = f"{name} {between}"
    return sentence_case(name or spelled(common_name(part, catalogue), spelling))


def part_title(
    part: Part, catalogue: Mapping[str, object], *, latin: bool = False, spelling: str = "uk"
) -> str:
    """Return "Rhomboid major, left"."""
    name = shown_name(part, catalogue, latin=latin, spelling=spelling)
    return f"{name}, {told(part.side)}" if part.side else name


def part_titles(model: BackModel, *, latin: bool = False, spelling: str = "uk") -> dict[str, str]:
    """Return the title of every part by id."""
    return {
        part.id: part_title(part, model.catalogue, latin=latin, spelling=spelling)
        for part in model.parts.values()
    }


def title_of_several(ids: Sequence[str], titles: Mapping[str, str]) -> str:
    """Return one part's title, "Rhomboid major, both sides" for twins, or how many they are.

    Parameters
    ----------
    ids : sequence of str
    titles : mapping of id to title
    """
    ids = list(dict.fromkeys(ids))
    if len(ids) == 1:
        return titles.get(ids[0], ids[0])
    stems = {i.removesuffix(".left").removesuffix(".right") for i in ids}
    if len(ids) == 2 and len(stems) == 1:
        name = titles.get(ids[0], ids[0])
        for side in ("left", "right"):
            name = name.removesuffix(f", {told(side)}")
        return f"{name}, {told('both sides')}"
    return told("{count} parts", count=len(ids))


def _attachment_words(row: object) -> str:
    rules = getattr(row, "attachments", ())
    out = []
    for kind, head in ATTACHED.items():
        words = [
            told(rule.words) + (told(" (inconstant)") if rule.inconstant else "")
            for rule in rules
            if rule.kind == kind
        ]
        if words:
            out.append(told(head, words="; ".join(dict.fromkeys(words))))
    return " — ".join(out)


def caption_of(
    part: Part, model: BackModel, state: ViewState | None = None, covered: str = ""
) -> Caption:
    """Return the caption of a part of the model.

    Parameters
    ----------
    covered : str
        What lies over it, in words; "" while that is not known.
    """
    catalogue = model.catalogue
    row = catalogue.get(part.entry) if part.entry in catalogue else None
    latin = getattr(row, "latin", "") or ""
    if latin and not getattr(row, "latin_sure", True):
        latin += " (?)"
    done = ""
    if state is not None and taken_off(part, state):
        done = told(", taken off")
    place = told(
        "{kind}, stratum {n} ({name}){done}",
        kind=told(KIND_WORDS.get(part.kind, part.kind)),
        n=part.stratum,
        name=told(STRATA[part.stratum]),
        done=done,
    )
    nerve = told(getattr(row, "nerve", ""))
    if nerve and getattr(row, "roots", ()):
        roots = ", ".join(row.roots)
        if not any(root in nerve for root in row.roots):
            nerve = f"{nerve} ({roots})"
    texts = (
        _attachment_words(row) or _model_attachments(part, model),
        nerve,
        told(getattr(row, "artery", "")),
        "; ".join(map(told, getattr(row, "actions", ()))),
        told(getattr(row, "course", "")),
        _thickness_words(part, row, model),
        covered,
        told(getattr(row, "note", "")),
        "; ".join(map(told, getattr(row, "doubts", ()))),
    )
    lines = tuple((head, text) for head, text in zip(FIELDS, texts, strict=True) if text)
    return Caption(
        part_title(part, catalogue), latin, place, lines, tuple(getattr(row, "sources", ()))
    )


def drawn_words(part: Part, model: BackModel) -> str:
    """Return that a layer is drawn thicker than it was published, "" where it is not."""
    if not part.drawn_thicker:
        return ""
    row = model.catalogue.get(part.entry) if part.entry in model.catalogue else None
    thickness = getattr(row, "thickness", None)
    if thickness is None:
        return told("drawn thicker")
    mm = figure(thickness.for_sex(model.body.sex))
    return told("drawn thicker; published {mm} mm", mm=mm)


def _thickness_words(part: Part, row: object, model: BackModel) -> str:
    """The published thickness; a mesh that is drawn thicker says so."""
    thickness = getattr(row, "thickness", None)
    words = ""
    if thickness is not None:
        mm = thickness.for_sex(model.body.sex)
        words = told("{mm} mm at its thickest", mm=figure(mm))
    if part.drawn_thicker:
        words = (
            told("{words}; drawn thicker", words=words)
            if words
            else told("drawn thicker than it is")
        )
    return words


def _model_attachments(part: Part, model: BackModel) -> str:
    """What the mesh itself is fixed to, when the catalogue says nothing."""
    ends: dict[str, list[str]] = {}
    for attachment in part.attachments:
        other = model.parts.get(attachment.to)
        name = common_name(other, model.catalogue) if other else attachment.to.replace("_", " ")
        ends.setdefault(attachment.kind, []).append(name)
    return " — ".join(
        told(ATTACHED.get(kind, ATTACHED["attach"]), words=", ".join(dict.fromkeys(names)))
        for kind, names in ends.items()
    )


def search_index(model: BackModel, *, latin: bool = False, spelling: str = "uk") -> list[Named]:
    """Return everything that can be found by name: parts and named groups."""
    by_name: dict[str, list[Part]] = {}
    for part in model.parts.values():
        by_name.setdefault(part.name, []).append(part)
    index = []
    groups: dict[str, list[Part]] = {}
    for name, parts in by_name.items():
        first = parts[0]
        row = model.catalogue.get(first.entry) if first.entry in model.catalogue else None
        english = english_name(first, model.catalogue)
        names = [english, common_name(first, model.catalogue), name.replace("_", " ")]
        if row is not None:
            names += [row.english, row.latin, *row.synonyms]
        index.append(
            Named(
                shown_name(first, model.catalogue, latin=latin, spelling=spelling),
                tuple(p.id for p in parts),
                tuple(
                    dict.fromkeys(n for n in (*names, *(spelled(n, "us") for n in names if n)) if n)
                ),
                first.stratum,
            )
        )
        if first.group:
            groups.setdefault(first.group, []).extend(parts)
    titles = {named.title.casefold() for named in index}
    for group, parts in groups.items():
        words = group.replace("_", " ")
        if words.casefold() not in titles:
            index.append(
                Named(
                    told("{name} (group)", name=sentence_case(_group_name(group, model))),
                    tuple(p.id for p in parts),
                    (words, *_group_synonyms(group, model)),
                    min(p.stratum for p in parts),
                )
            )
    return index


def _group_name(group: str, model: BackModel) -> str:
    groups = getattr(model.catalogue, "groups", {})
    row = groups.get(group) or model.catalogue.get(group)
    words = told(row.english) if row is not None else ""
    # In English the group goes by the name that its parts carry.
    return words if row is not None and words != row.english else group.replace("_", " ")


_GROUP_SYNONYMS = {
    "erector_spinae": ("sacrospinalis", "musculus erector spinae"),
    "trapezius": ("musculus trapezius",),
}


def _group_synonyms(group: str, model: BackModel) -> tuple[str, ...]:
    row = model.catalogue.get(group) if group in model.catalogue else None
    if row is not None:
        return tuple(n for n in (row.english, row.latin, *row.synonyms) if n)
    return _GROUP_SYNONYMS.get(group, ())


def neighbours_of(model: BackModel) -> frozenset[str]:
    """Return the ids of muscles at the edge that have a switch of their own."""
    return frozenset(
        part.id
        for part in model.parts.values()
        if part.entry in model.catalogue
        and getattr(model.catalogue[part.entry], "depth_group", "") == "neighbour"
    )


REGIONS = ("head", "neck", "thorax", "loin", "pelvis", "shoulder", "arm")


def tree_of_parts(
    parts: Iterable[Part],
    catalogue: Mapping[str, object],
    *,
    latin: bool = False,
    spelling: str = "uk",
) -> list[tuple[int, list[tuple[str, list[tuple[str, tuple[str, ...]]]]]]]:
    """Return the parts by stratum, then region, then name.

    Returns
    -------
    list of (stratum, list of (region, list of (title, part ids)))
    """
    tree: dict[int, dict[str, dict[str, list[Part]]]] = {}
    for part in parts:
        regions = tree.setdefault(part.stratum, {})
        regions.setdefault(part.region or "whole back", {}).setdefault(part.name, []).append(part)

    def rank(region: str) -> tuple[int, str]:
        return (REGIONS.index(region) if region in REGIONS else len(REGIONS), region)

    return [
        (
            stratum,
            [
                (
                    region,
                    [
                        (
                            shown_name(twins[0], catalogue, latin=latin, spelling=spelling),
                            tuple(p.id for p in twins),
                        )
                        for twins in tree[stratum][region].values()
                    ],
                )
                for region in sorted(tree[stratum], key=rank)
            ],
        )
        for stratum in sorted(tree)
    ]
