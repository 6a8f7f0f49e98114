"""The records that a catalogue is made of.

All are frozen. Ids are written with placeholders: ``{side}`` stands for
"left" or "right", ``{level}`` and its relatives for a vertebral level (see
``meshes.catalogue.levels``).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from meshes.catalogue.levels import placeholders, spoken

SIDES = ("left", "right")
BEYOND = "beyond"
"""Target of an attachment that the model does not carry (femur, linea alba)."""


@dataclass(frozen=True, slots=True)
class Citation:
    """Where a fact was taken from.

    Attributes
    ----------
    source : str
        Key in ``sources.toml``.
    text : str
        The full reference.
    locator : str
        Page or section, "" for the whole.
    seen : bool
        False when the place was recalled rather than read.
    """

    source: str
    text: str
    locator: str = ""
    seen: bool = True

    def __str__(self) -> str:
        place = f", {self.locator}" if self.locator else ""
        doubt = "" if self.seen or self.source in ("memory", "practice") else " (from memory)"
        return f"{self.text}{place}{doubt}"


@dataclass(frozen=True, slots=True)
class AttachmentRule:
    """One place at which a part is fixed, as a rule over landmarks.

    Attributes
    ----------
    kind : {"origin", "insertion", "attach"}
    to : str
        Id pattern of the part that is attached to, or "beyond".
    landmark : str
        Id pattern of the landmark, "" when the target is soft and has none.
    words : str
        The place in words.
    levels : tuple of str
        Levels over which ``{level}`` runs here; empty when the rule speaks of
        one place, or takes its level from the part itself.
    span : (2,) tuple of float or None
        Share of the landmark curve, from its first point (0) to its last (1);
        of a soft target from its upper end (0) to its lower end (1).
    between : tuple of str
        Two landmarks that bound the stretch of the curve.
    inconstant : bool
        Often missing in people.
    """

    kind: str
    to: str
    landmark: str
    words: str
    levels: tuple[str, ...] = ()
    span: tuple[float, float] | None = None
    between: tuple[str, ...] = ()
    inconstant: bool = False

    @property
    def modelled(self) -> bool:
        """False when its target lies outside the model."""
        return self.to != BEYOND

    def places(self, level: str = "", side: str = "left") -> list[tuple[str, str]]:
        """Spell the rule out.

        Parameters
        ----------
        level : str
            Level of the part, for families.
        side : {"left", "right"}

        Returns
        -------
        list of (part id, landmark id)
            Landmark id is "" where the rule names none.
        """
        out = []
        for each in self.levels or (level,):
            words = {**placeholders(each), "side": side}
            out.append((self.to.format(**words), self.landmark.format(**words)))
        return out

    def bounds(self, level: str = "", side: str = "left") -> list[tuple[str, ...]]:
        """Return the bounding landmarks that belong to each of ``places``, () for none."""
        return [
            tuple(name.format(**placeholders(each), side=side) for name in self.between)
            for each in self.levels or (level,)
        ]


@dataclass(frozen=True, slots=True)
class FascicleRule:
    """A row of fascicles, each from one landmark to another.

    Attributes
    ----------
    start, end : str
        Landmark patterns with ``{a}`` and ``{b}``; a curve may be followed by
        ``@share`` (0 first point, 1 last): ``ilium.{side}.crest@0.2``.
    pairs : tuple of (str, str)
        What ``{a}`` and ``{b}`` stand for, fascicle by fascicle.
    """

    start: str
    end: str
    pairs: tuple[tuple[str, str], ...]

    def ends(self, side: str = "left") -> list[tuple[str, str]]:
        """Return (origin landmark, insertion landmark) of every fascicle."""
        return [
            (self.start.format(a=a, b=b, side=side), self.end.format(a=a, b=b, side=side))
            for a, b in self.pairs
        ]


@dataclass(frozen=True, slots=True)
class Thickness:
    """Published (or judged) thickness of a part.

    Attributes
    ----------
    male_mm, female_mm : float
        At the thickest place, mm.
    profile : (k, 2) tuple of (float, float)
        Share of that thickness along the fibres: u from origin (0) to
        insertion (1), share 0 to 1.
    cited : tuple of Citation
    """

    male_mm: float
    female_mm: float
    profile: tuple[tuple[float, float], ...]
    cited: tuple[Citation, ...]

    def for_sex(self, sex: str) -> float:
        """Return mm for "male" or "female"; the mean for anything else."""
        if sex == "male":
            return self.male_mm
        if sex == "female":
            return self.female_mm
        return (self.male_mm + self.female_mm) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """What every row of every table has.

    Attributes
    ----------
    id : str
        Key of the row, snake_case.
    kind : str
        As ``meshes.model.Part.kind``; "space" for named outlines.
    english, latin : str
        Terminologia Anatomica. ``latin_sure`` is False where the Latin was
        recalled and may read otherwise in the second edition.
    part_english : str
        Name of one part of a family, with ``{level}``; "" for single parts.
    synonyms : tuple of str
    stratum : int
        0 (skin) to 10 (canal).
    depth_group : str
        "cover", "superficial", "intermediate", "deep", "neighbour",
        "skeleton" or "canal". Order of depth and grouping by name are two
        different things: see spinalis cervicis.
    group : str
        Named group ("trapezius", "erector_spinae"), or "".
    region : str
    paired : bool
    levels : tuple of str
        Levels of a segmental family, () for a single part.
    pattern : str
        Part name with ``{level}``; the id itself for single parts.
    attachments : tuple of AttachmentRule
        Origins first.
    nerve, artery, course, note : str
        In words; "" where it does not apply. ``note`` is the point to learn.
    nerve_entries, artery_entries : tuple of str
        Rows of the catalogue that supply it.
    roots : tuple of str
        Spinal segments of its nerve.
    ramus : str
        "anterior", "posterior", "cranial", "mixed" or "".
    actions : tuple of str
    doubts : tuple of str
        Where sources differ, in words; shown rather than decided.
    cited : mapping of str to tuple of Citation
        By the fact that it vouches for ("attachments", "nerve", ...).
    ids : mapping of str to str
        Ontology ids: "uberon", "fma".
    clings_to : str
        Row of the sheet on whose face a nerve or vessel runs, "" if none.
    """

    id: str
    kind: str
    english: str
    stratum: int
    region: str
    note: str
    cited: Mapping[str, tuple[Citation, ...]] = field(hash=False)
    latin: str = ""
    latin_sure: bool = True
    part_english: str = ""
    synonyms: tuple[str, ...] = ()
    depth_group: str = ""
    group: str = ""
    paired: bool = True
    levels: tuple[str, ...] = ()
    pattern: str = ""
    attachments: tuple[AttachmentRule, ...] = ()
    nerve: str = ""
    nerve_entries: tuple[str, ...] = ()
    roots: tuple[str, ...] = ()
    ramus: str = ""
    artery: str = ""
    artery_entries: tuple[str, ...] = ()
    actions: tuple[str, ...] = ()
    course: str = ""
    clings_to: str = ""
    doubts: tuple[str, ...] = ()
    optional: bool = False
    ids: Mapping[str, str] = field(default_factory=dict, hash=False)

    @property
    def sources(self) -> tuple[str, ...]:
        """Every reference of the row in full, without repeats."""
        return tuple(dict.fromkeys(str(c) for group in self.cited.values() for c in group))

    @property
    def origins(self) -> tuple[AttachmentRule, ...]:
        """Attachments at the end where fibres start."""
        return tuple(a for a in self.attachments if a.kind == "origin")

    @property
    def insertions(self) -> tuple[AttachmentRule, ...]:
        """Attachments at the end where fibres stop."""
        return tuple(a for a in self.attachments if a.kind == "insertion")

    @property
    def origin_words(self) -> str:
        """Origins in words, joined."""
        return "; ".join(a.words for a in self.origins)

    @property
    def insertion_words(self) -> str:
        """Insertions in words, joined."""
        return "; ".join(a.words for a in self.insertions)

    def part_names(self) -> tuple[str, ...]:
        """Names of its parts without side: one, or one a level."""
        if not self.levels:
            return (self.pattern or self.id,)
        return tuple(self.pattern.format(**placeholders(level)) for level in self.levels)

    def part_ids(self) -> tuple[str, ...]:
        """Ids of all its parts, left before right."""
        if not self.paired:
            return self.part_names()
        return tuple(f"{name}.{side}" for name in self.part_names() for side in SIDES)

    def level_of(self, part_name: str) -> str:
        """Return the level of one of its parts, "" for a single part."""
        for level in self.levels:
            if self.pattern.format(**placeholders(level)) == part_name:
                return level
        return ""

    def name_at(self, level: str = "") -> str:
        """Return the English name of the part at a level; the family's where there is none such."""
        if level in self.levels and self.part_english:
            words = {k: spoken(v) for k, v in placeholders(level).items()}
            return self.part_english.format(**words)
        return self.english

    def attachments_at(
        self, level: str = "", side: str = "left"
    ) -> list[tuple[AttachmentRule, str, str]]:
        """Spell out all attachments of one part that lie inside the model.

        Returns
        -------
        list of (rule, part id, landmark id)
        """
        return [
            (rule, to, landmark)
            for rule in self.attachments
            if rule.modelled
            for to, landmark in rule.places(level, side)
        ]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bone(Entry):
    """A bone, a disc or a costal cartilage."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ligament(Entry):
    """A ligament, a membrane or a joint."""

    thickness: Thickness | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fascia(Entry):
    """A fascia or an aponeurosis; ``splits_round`` are the rows that it encloses."""

    thickness: Thickness | None = None
    splits_round: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Muscle(Entry):
    """A muscle, a named part of one, or a family of small ones.

    Attributes
    ----------
    built_as : {"sheet", "bundle", "tube", "solid"}
    slips : int
        Number of digitations of a sheet, 0 when its end is whole.
    thickness : Thickness or None
    fascicles : tuple of FascicleRule
        Level rules of a bundle.
    tendon : str
        Where it is tendon or aponeurosis, in words.
    tendon_shares : (2,) tuple of float
        Tendinous share of the fibre length at origin and at insertion.
    """

    built_as: str
    slips: int = 0
    thickness: Thickness | None = None
    fascicles: tuple[FascicleRule, ...] = ()
    tendon: str = ""
    tendon_shares: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Nerve(Entry):
    """A nerve or a branch.

    Attributes
    ----------
    pierces : tuple of str
        Rows through which it passes, in order from its start.
    supplies : tuple of str
        Rows that it supplies; "skin" among them for cutaneous nerves.
    calibre_mm : float
        Diameter drawn, mm.
    """

    pierces: tuple[str, ...] = ()
    supplies: tuple[str, ...] = ()
    calibre_mm: float = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Vessel(Entry):
    """An artery, a vein or a plexus; ``comes_from`` in words."""

    pierces: tuple[str, ...] = ()
    comes_from: str = ""
    calibre_mm: float = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalPart(Entry):
    """Something inside the vertebral canal."""

    calibre_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Skin(Entry):
    """The skin."""

    thickness: Thickness | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Space(Entry):
    """A named outline without a mesh.

    Attributes
    ----------
    borders : tuple of str
        Rows along its edge, in order round it.
    border_words : tuple of str
        The edges in words.
    floor, roof, contents : tuple of str
        Rows.
    opens_after : str
        Step of the plan after which it can be seen, "" when at once.
    """

    borders: tuple[str, ...]
    border_words: tuple[str, ...] = ()
    floor: tuple[str, ...] = ()
    roof: tuple[str, ...] = ()
    contents: tuple[str, ...] = ()
    opens_after: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Landmark:
    """A named point or curve on a bone.

    Attributes
    ----------
    pattern : str
        Id with ``{level}`` and ``{side}``.
    english : str
    form : {"point", "curve", "patch", "free"}
        "free" points lie off the bone (centres of foramina and discs).
    levels : tuple of str
    palpable : bool
        Can be felt through the skin.
    on : str
        Pattern of the part that it lies on.
    """

    pattern: str
    english: str
    form: str
    on: str
    levels: tuple[str, ...] = ()
    palpable: bool = False
    latin: str = ""
    note: str = ""

    def names(self) -> list[str]:
        """Spell out all its ids, both sides."""
        out = []
        for level in self.levels or ("",):
            words = placeholders(level)
            for side in SIDES if "{side}" in self.pattern else ("",):
                out.append(self.pattern.format(**words, side=side))
        return out


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A name that people use for several rows at once.

    Attributes
    ----------
    members : tuple of str
        Rows, from superficial or medial onward as the trade lists them.
    """

    id: str
    english: str
    members: tuple[str, ...]
    note: str
    cited: Mapping[str, tuple[Citation, ...]] = field(hash=False)
    latin: str = ""
    latin_sure: bool = True
    synonyms: tuple[str, ...] = ()


class Catalogue(Mapping[str, Entry]):
    """All rows by key, in the order of the tables.

    Attributes
    ----------
    landmarks : mapping of str to Landmark
        Every landmark id, spelled out, to its row.
    citations : mapping of str to str
        Keys of sources to full references.
    groups : mapping of str to Group
    """

    __slots__ = ("_entries", "_parts", "citations", "groups", "landmarks")

    def __init__(
        self,
        entries: Mapping[str, Entry],
        landmarks: Mapping[str, Landmark],
        citations: Mapping[str, str],
        groups: Mapping[str, Group] | None = None,
    ) -> None:
        self._entries = dict(entries)
        self.landmarks = MappingProxyType(dict(landmarks))
        self.citations = MappingProxyType(dict(citations))
        self.groups = MappingProxyType(dict(groups or {}))
        self._parts: dict[str, str] = {
            name: entry.id
            for entry in self._entries.values()
            if entry.kind != "space"
            for name in entry.part_names()
        }

    def __getitem__(self, key: str) -> Entry:
        return self._entries[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)

    def __reduce__(self):
        # Mapping proxies do not pickle; the cache of built models pickles the catalogue.
        stored = (self._entries, dict(self.landmarks), dict(self.citations), dict(self.groups))
        return (Catalogue, stored)

    def part_names(self, optional: bool = True) -> tuple[str, ...]:
        """Names of all parts without side; leave out the optional ones on request."""
        return tuple(n for n, key in self._parts.items() if optional or not self[key].optional)

    def part_ids(self, optional: bool = True) -> tuple[str, ...]:
        """Ids of all parts, both sides."""
        return tuple(
            part_id
            for entry in self._entries.values()
            if entry.kind != "space" and (optional or not entry.optional)
            for part_id in entry.part_ids()
        )

    def entry_of_part(self, part_id: str) -> Entry:
        """Return the row of a part, by its id with or without side.

        Raises
        ------
        KeyError
            No row yields such a part.
        """
        name = part_id.removesuffix(".left").removesuffix(".right")
        return self._entries[self._parts[name]]

    def english_of_part(self, part_id: str, with_side: bool = True) -> str:
        """Return the English name of a part, with its side first: "left rhomboid minor"."""
        entry = self.entry_of_part(part_id)
        name, _, side = part_id.partition(".")
        english = entry.name_at(entry.level_of(name))
        return f"{side} {english}" if side and with_side else english

    def group(self, name: str) -> tuple[Entry, ...]:
        """Return all rows of a named group."""
        return tuple(e for e in self._entries.values() if e.group == name)

    def of_kind(self, kind: str) -> tuple[Entry, ...]:
        """Return all rows of a kind."""
        return tuple(e for e in self._entries.values() if e.kind == kind)
