"""Reads the TOML tables, checks every row, and turns them into records.

Whatever is wrong comes out as one line that names file and entry.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import MISSING, fields
from difflib import get_close_matches
from functools import cache, lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from meshes.catalogue.levels import parse_levels
from meshes.catalogue.records import (
    BEYOND,
    SIDES,
    AttachmentRule,
    Bone,
    CanalPart,
    Catalogue,
    Citation,
    Entry,
    Fascia,
    FascicleRule,
    Group,
    Landmark,
    Ligament,
    Muscle,
    Nerve,
    Skin,
    Space,
    Thickness,
    Vessel,
)
from meshes.errors import PeelbackError

TABLES: Mapping[str, tuple[type[Entry], str]] = {
    "bones": (Bone, "bone"),
    "ligaments": (Ligament, "ligament"),
    "fasciae": (Fascia, "fascia"),
    "muscles": (Muscle, "muscle"),
    "nerves": (Nerve, "nerve"),
    "vessels": (Vessel, "artery"),
    "canal": (CanalPart, "canal"),
    "skin": (Skin, "skin"),
    "spaces": (Space, "space"),
}
"""Table name to (record type, kind of its rows unless they say otherwise)."""

KINDS = (
    *("bone", "cartilage", "disc", "ligament", "muscle", "tendon", "fascia"),
    *("nerve", "artery", "vein", "canal", "skin", "context", "space"),
)
REGIONS = ("head", "neck", "thorax", "loin", "pelvis", "shoulder", "arm", "back")
RAMI = ("", "anterior", "posterior", "cranial", "mixed")
BUILT_AS = ("sheet", "bundle", "tube", "solid")
FORMS = ("point", "curve", "patch", "free")
DEPTH_GROUPS = (
    *("cover", "superficial", "intermediate", "deep"),
    *("neighbour", "skeleton", "canal", "space"),
)
NEEDED_SOURCES: Mapping[str, tuple[str, ...]] = {
    "muscles": ("attachments", "nerve", "artery", "actions"),
    "nerves": ("course",),
    "vessels": ("course",),
    "spaces": ("borders",),
}
"""Facts that need a source of their own, by table; every row needs one at least."""

# Keys written in the files that do not carry the name of a field of the record.
_WRITTEN = {"sources", "origin", "insertion", "attach"}
_SET_BY_LOADER = {"id", "cited", "attachments"}
_SNAKE = re.compile(r"[a-z][a-z0-9]*(_[A-Za-z0-9]+)*")


@lru_cache(maxsize=1)
def load_catalogue() -> Catalogue:
    """Return the catalogue that ships with the package (read once)."""
    return read_catalogue(files("meshes.catalogue"))


def read_catalogue(folder: Traversable | Path) -> Catalogue:
    """Read and check a folder of tables.

    Parameters
    ----------
    folder : path
        Holds ``sources.toml``, ``landmarks.toml`` and one file per table.

    Returns
    -------
    Catalogue

    Raises
    ------
    PeelbackError
        One line naming file and entry, for anything that is wrong.
    """
    citations = _read_sources(folder)
    landmarks = _read_landmarks(folder)
    entries: dict[str, Entry] = {}
    home: dict[str, str] = {}
    for table in TABLES:
        file = f"{table}.toml"
        for key, row in read_toml(folder, file).items():
            if key in entries:
                raise entry_error(file, key, f"is already an entry of {home[key]}")
            entries[key] = _make_entry(table, key, row, citations)
            home[key] = file
    _check_names(entries, home)
    _check_references(entries, home, landmarks)
    groups = _read_groups(folder, entries, citations)
    return Catalogue(entries, landmarks, citations, groups)


def entry_error(file: str, entry: str, message: str) -> PeelbackError:
    """Return the error for one entry: a single line naming file and entry."""
    return PeelbackError(f"{file}, {entry}: {message}")


def read_toml(folder: Traversable | Path, file: str) -> dict:
    """Read one table, or say in one line why it cannot be read."""
    try:
        text = (folder / file).read_text(encoding="utf-8")
    except (FileNotFoundError, NotADirectoryError):
        raise PeelbackError(f"{file}: this table of the catalogue is missing") from None
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        # tomllib reports a key written twice as "Cannot declare (...) twice".
        raise PeelbackError(f"{file}: {str(error).splitlines()[0]}") from None


def _read_sources(folder: Traversable | Path) -> dict[str, str]:
    citations = {}
    for key, text in read_toml(folder, "sources.toml").items():
        if not isinstance(text, str) or not text:
            raise entry_error("sources.toml", key, "must be a reference in words")
        citations[key] = text
    return citations


def _read_landmarks(folder: Traversable | Path) -> dict[str, Landmark]:
    file = "landmarks.toml"
    allowed = {f.name for f in fields(Landmark)}
    out: dict[str, Landmark] = {}
    for row in read_toml(folder, file).get("landmark", []):
        name = row.get("pattern", "(no pattern)")
        check_fields(file, name, row, allowed, {"pattern", "english", "form", "on"})
        if row["form"] not in FORMS:
            raise entry_error(
                file, name, f"form must be one of {', '.join(FORMS)}, got {row['form']!r}"
            )
        row["levels"] = _levels(file, name, row.get("levels", ""), False)
        landmark = Landmark(**row)
        for spelled in landmark.names():
            if spelled in out:
                raise entry_error(file, name, f"landmark {spelled} is named twice")
            out[spelled] = landmark
    return out


def _read_groups(
    folder: Traversable | Path, entries: Mapping[str, Entry], citations: Mapping[str, str]
) -> dict[str, Group]:
    file = "groups.toml"
    allowed = {f.name for f in fields(Group)} - {"id", "cited"} | {"sources"}
    out = {}
    for key, row in read_toml(folder, file).items():
        check_fields(file, key, row, allowed, {"english", "members", "note", "sources"})
        cited = read_citations(file, key, row.pop("sources"), citations)
        if not cited:
            raise entry_error(file, key, "source is missing")
        for member in row["members"]:
            if member not in entries:
                raise entry_error(file, key, f"members names an unknown entry {member!r}")
        for name in ("members", "synonyms"):
            row[name] = tuple(row.get(name, ()))
        out[key] = Group(id=key, cited=cited, **row)
    return out


def check_fields(
    file: str, entry: str, row: Mapping, allowed: Iterable[str], needed: Iterable[str]
) -> None:
    """Refuse unknown fields (with a guess at what was meant) and missing ones."""
    if not isinstance(row, Mapping):
        raise entry_error(file, entry, f"must be a table of fields, got {row!r}")
    allowed = set(allowed)
    for name in row:
        if name not in allowed:
            close = get_close_matches(name, allowed, 1)
            hint = f", did you mean {close[0]!r}?" if close else ""
            raise entry_error(file, entry, f"unknown field {name!r}{hint}")
    for name in needed:
        if name not in row:
            raise entry_error(file, entry, f"field {name!r} is missing")


def _levels(file: str, entry: str, text: object, nerves: bool) -> tuple[str, ...]:
    try:
        return parse_levels(str(text), nerves)
    except ValueError as error:
        raise entry_error(file, entry, f"levels {text!r}: {error}") from None


@cache
def _fields_of(record: type[Entry]) -> tuple[frozenset[str], frozenset[str]]:
    """Return (fields that may be written, fields that must be written) of a record type."""
    written = [f for f in fields(record) if f.name not in _SET_BY_LOADER]
    needed = {
        f.name
        for f in written
        if f.default is MISSING and f.default_factory is MISSING and f.name not in ("kind",)
    }
    return frozenset(f.name for f in written) | _WRITTEN, frozenset(needed)


def _make_entry(table: str, key: str, row: dict, citations: Mapping[str, str]) -> Entry:
    file = f"{table}.toml"
    record, kind = TABLES[table]
    allowed, needed = _fields_of(record)
    if not _SNAKE.fullmatch(key):
        raise entry_error(file, key, "an entry is named in snake_case")
    check_fields(file, key, row, allowed, needed)
    row = dict(row)
    cited = read_citations(file, key, row.pop("sources", {}), citations)
    for fact in NEEDED_SOURCES.get(table, ()):
        if fact not in cited:
            raise entry_error(file, key, f"source for {fact!r} is missing")
    if not cited:
        raise entry_error(file, key, "source is missing")
    row.setdefault("kind", kind)
    row["levels"] = _levels(file, key, row.get("levels", ""), table in ("nerves", "vessels"))
    row.setdefault("pattern", key + "_{level}" if row["levels"] else key)
    attachments = tuple(
        _attachment(file, key, end, rule)
        for end in ("origin", "insertion", "attach")
        for rule in row.pop(end, ())
    )
    if "thickness" in row:
        row["thickness"] = _thickness(file, key, row["thickness"], citations)
    if "fascicles" in row:
        row["fascicles"] = tuple(_fascicles(file, key, rule) for rule in row["fascicles"])
    for name, value in row.items():
        if isinstance(value, list):
            row[name] = tuple(value)
    _check_words(file, key, row)
    return record(id=key, cited=cited, attachments=attachments, **row)


def _check_words(file: str, key: str, row: Mapping) -> None:
    choices: tuple[tuple[str, Iterable], ...] = (
        ("kind", KINDS),
        ("region", REGIONS),
        ("ramus", RAMI),
        ("built_as", BUILT_AS),
        ("depth_group", ("", *DEPTH_GROUPS)),
    )
    for name, allowed in choices:
        if name in row and row[name] not in allowed:
            listed = ", ".join(a for a in allowed if a)
            raise entry_error(file, key, f"{name} must be one of {listed}, got {row[name]!r}")
    stratum = row["stratum"]
    if isinstance(stratum, bool) or not isinstance(stratum, int) or not 0 <= stratum <= 10:
        raise entry_error(file, key, f"stratum must be a whole number 0 to 10, got {stratum!r}")
    if "note" in row and not row["note"].strip():
        raise entry_error(file, key, "note must say the point to learn")


def read_citations(
    file: str, key: str, written: object, citations: Mapping[str, str]
) -> dict[str, tuple[Citation, ...]]:
    """Turn ``{ nerve = "gray p. 434", actions = ["memory", ...] }`` into citations.

    A reference is a key of ``sources.toml``, then a locator; a question mark
    after the key marks a place that was recalled rather than read.
    """
    if not isinstance(written, Mapping):
        raise entry_error(file, key, "sources must name the fact that each one vouches for")
    out = {}
    for fact, references in written.items():
        listed = [references] if isinstance(references, str) else references
        out[fact] = tuple(_citation(file, key, text, citations) for text in listed)
    return out


def _citation(file: str, key: str, text: str, citations: Mapping[str, str]) -> Citation:
    source, _, locator = text.partition(" ")
    seen = not source.endswith("?")
    source = source.rstrip("?")
    if source not in citations:
        raise entry_error(file, key, f"unknown source {source!r} (see sources.toml)")
    return Citation(source, citations[source], locator.strip(), seen)


def _attachment(file: str, key: str, end: str, rule: dict) -> AttachmentRule:
    allowed = {"to", "landmark", "words", "levels", "span", "between", "inconstant"}
    check_fields(file, key, rule, allowed, {"to", "words"})
    span = rule.get("span")
    if span is not None and not (len(span) == 2 and 0 <= span[0] < span[1] <= 1):
        raise entry_error(file, key, f"span must be two rising shares from 0 to 1, got {span!r}")
    return AttachmentRule(
        end,
        rule["to"],
        rule.get("landmark", ""),
        rule["words"],
        _levels(file, key, rule.get("levels", ""), False),
        None if span is None else (float(span[0]), float(span[1])),
        tuple(rule.get("between", ())),
        rule.get("inconstant", False),
    )


def _thickness(file: str, key: str, row: dict, citations: Mapping[str, str]) -> Thickness:
    needed = {"male_mm", "female_mm", "source"}
    check_fields(file, key, row, needed | {"profile"}, needed)
    profile = tuple((float(u), float(share)) for u, share in row.get("profile", [[0, 1], [1, 1]]))
    rising = all(a[0] < b[0] for a, b in zip(profile, profile[1:]))
    if not rising or profile[0][0] != 0 or profile[-1][0] != 1:
        raise entry_error(file, key, "thickness profile must run over u from 0 to 1")
    listed = [row["source"]] if isinstance(row["source"], str) else row["source"]
    cited = tuple(_citation(file, key, text, citations) for text in listed)
    return Thickness(float(row["male_mm"]), float(row["female_mm"]), profile, cited)


def _fascicles(file: str, key: str, row: dict) -> FascicleRule:
    check_fields(file, key, row, {"start", "end", "pairs"}, {"start", "end", "pairs"})
    pairs = []
    for word in row["pairs"].split():
        a, arrow, b = word.partition(">")
        if not (a and arrow and b):
            raise entry_error(file, key, f"a fascicle is written a>b, got {word!r}")
        pairs.append((a, b))
    return FascicleRule(row["start"], row["end"], tuple(pairs))


def _check_names(entries: Mapping[str, Entry], home: Mapping[str, str]) -> None:
    owner: dict[str, str] = {}
    for key, entry in entries.items():
        try:
            names = entry.part_names()
            for level in entry.levels:
                entry.name_at(level)
        except KeyError as error:
            raise entry_error(home[key], key, f"no placeholder {error} in its part names") from None
        for name in names:
            if name in owner:
                raise entry_error(home[key], key, f"part {name} is already a part of {owner[name]}")
            owner[name] = key


def _check_references(
    entries: Mapping[str, Entry], home: Mapping[str, str], landmarks: Mapping[str, Landmark]
) -> None:
    """Every part, landmark and row that a row names must exist."""
    parts = {part_id for entry in entries.values() for part_id in entry.part_ids()}

    def landmark_known(name: str) -> bool:
        return name.partition("@")[0] in landmarks

    for key, entry in entries.items():
        file = home[key]
        for rule in entry.attachments:
            _check_rule(file, key, entry, rule, parts, landmark_known)
        for rule in getattr(entry, "fascicles", ()):
            for start, end in rule.ends("left"):
                for name in (start, end):
                    if not landmark_known(name):
                        raise entry_error(file, key, f"unknown landmark {name!r} of a fascicle")
        for name in ("nerve_entries", "artery_entries", "pierces", "supplies", "splits_round",
                     "borders", "floor", "roof", "contents"):  # fmt: skip
            for other in getattr(entry, name, ()):
                if other not in entries:
                    raise entry_error(file, key, f"{name} names an unknown entry {other!r}")
        if entry.clings_to and entry.clings_to not in entries:
            raise entry_error(file, key, f"clings_to names an unknown entry {entry.clings_to!r}")


def _check_rule(
    file: str,
    key: str,
    entry: Entry,
    rule: AttachmentRule,
    parts: set[str],
    landmark_known: Callable[[str], bool],
) -> None:
    if rule.to == BEYOND:
        return
    # Right is the mirror of left, so one side is enough to find a wrong pattern.
    for level in entry.levels or ("",):
        try:
            places = rule.places(level, SIDES[0])
            bounds = rule.bounds(level, SIDES[0])
        except KeyError as error:
            raise entry_error(file, key, f"no placeholder {error} in {rule.words!r}") from None
        for to, landmark in places:
            if to not in parts:
                raise entry_error(file, key, f"attached to unknown part {to!r}")
            if landmark and not landmark_known(landmark):
                raise entry_error(file, key, f"unknown landmark {landmark!r}")
        for pair in bounds:
            for name in pair:
                if not landmark_known(name):
                    raise entry_error(file, key, f"unknown landmark {name!r}")
