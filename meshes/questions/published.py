"""Holds published values against the finished model.

A value that shaped the model ("input") only shows that the model does what it
was told; what was kept out of it ("held_out") is the test. Rows whose source
was read and rows from memory are told apart, and nothing is called passed
because it can be explained.
"""

from __future__ import annotations

import math
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any

from meshes.body import MEDIAN_STATURE_MM, Body
from meshes.errors import PeelbackError
from meshes.model import BackModel
from meshes.questions import measures, measures_body, measures_nerves
from meshes.questions.measures import Measured, Unmeasurable
from meshes.questions.specimens import bones_of

MEASURES = {**measures.MEASURES, **measures_body.MEASURES, **measures_nerves.MEASURES}
"""Measures by name, as the table of published values calls them."""
ROLES = ("input", "held_out")
SPREADS = ("sd", "range", "none")
_TABLE_KEYS = {"quantity", "measure", "unit", "role", "source", "seen", "sex", "spread", "values"}
_OPTIONAL = {"note", "about", "specimens_mm"}
BONE_MEASURES = frozenset(
    {
        "upper_endplate_width", "upper_endplate_depth", "posterior_body_height",
        "anterior_body_height", "canal_width", "canal_depth", "transverse_width", "disc_height",
        "region_length", "crest_level", "scapula_height", "scapula_breadth",
        "scapular_spine_length", "scapula_width_above_angle", "clavicle_length",
        "biacromial_breadth", "bicristal_breadth", "c7_above_crest", "c7_above_acromion",
        "tenth_rib_above_crest", "c7_above_trochanter",
    }
)  # fmt: skip
"""Measures that need bones and discs only."""
COLUMN_MEASURES = frozenset(
    {
        "upper_endplate_width", "upper_endplate_depth", "posterior_body_height",
        "anterior_body_height", "canal_width", "canal_depth", "transverse_width", "disc_height",
        "region_length",
    }
)  # fmt: skip
"""Those of them that need the column only."""


@dataclass(frozen=True, slots=True)
class PublishedValue:
    """One published number.

    Attributes
    ----------
    quantity : str
        In words, with the level where there is one.
    measure, about : str
        The function that measures it and what that is told.
    unit : {"mm", "deg", "cm2", "level"}
    role : {"input", "held_out"}
    published : float
    spread : float or None
        Standard deviation. A range or a standard error is no spread.
    low, high : float or None
        Range, where the source gives one instead.
    source : str
    seen : bool
        The value was read in the source or a copy of it; False: from memory.
    sex : {"male", "female", "any"}
    note : str
    specimens_mm : float or None
        Mean stature of the source's specimens: the bones of a body of that stature are
        measured. None: the model itself is, and lengths are scaled by stature.
    """

    quantity: str
    measure: str
    about: str
    unit: str
    role: str
    published: float
    spread: float | None
    low: float | None
    high: float | None
    source: str
    seen: bool
    sex: str
    note: str = ""
    specimens_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Comparison:
    """A published value beside the model's own.

    Attributes
    ----------
    quantity, role, source, seen, unit, note
        As in :class:`PublishedValue`.
    published, spread : float, float or None
        Lengths scaled by stature to the body at hand.
    model : float or None
        None where the model lacks what is measured; ``note`` says what.
    within_1, within_2 : bool or None
        Within one and two standard deviations; None where there is no spread.
    within_range : bool or None
        For sources that give a range.
    """

    quantity: str
    role: str
    published: float
    spread: float | None
    model: float | None
    source: str
    seen: bool
    within_1: bool | None
    within_2: bool | None
    unit: str
    within_range: bool | None
    note: str

    def as_dict(self) -> dict[str, Any]:
        """Return the fields by name."""
        return asdict(self)

    def line(self) -> str:
        """Return the comparison in one line."""
        if self.model is None:
            found, verdict = "not measured", self.note
        else:
            found = f"{self.model:.1f}"
            if self.within_1 is not None:
                verdict = (
                    "within 1 sd" if self.within_1 else "within 2 sd" if self.within_2 else "OFF"
                )
            elif self.within_range is not None:
                verdict = "within the range" if self.within_range else "OFF"
            else:
                verdict = "no spread published"
        spread = f" ± {self.spread:.1f}" if self.spread is not None else ""
        memory = "" if self.seen else ", from memory"
        return (
            f"{self.role:8} {self.quantity}: {found} against {self.published:.1f}{spread} "
            f"{self.unit}: {verdict} ({self.source}{memory})"
        )


@lru_cache(maxsize=1)
def published_values() -> tuple[PublishedValue, ...]:
    """Return every published value of the table.

    Raises
    ------
    PeelbackError
        A row of the table is wrong; the message names it.
    """
    text = files("meshes.questions").joinpath("published.toml").read_text(encoding="utf-8")
    return tuple(_rows(tomllib.loads(text)))


def _rows(document: Mapping[str, Any]) -> Iterator[PublishedValue]:
    sources = document["sources"]
    for number, table in enumerate(document["table"], start=1):
        name = f"published.toml, table {number} ({table.get('quantity', '?')})"
        unknown = set(table) - _TABLE_KEYS - _OPTIONAL
        missing = _TABLE_KEYS - set(table)
        if unknown or missing:
            raise PeelbackError(f"{name}: unknown {sorted(unknown)}, missing {sorted(missing)}")
        if table["measure"] not in MEASURES:
            raise PeelbackError(f"{name}: unknown measure {table['measure']!r}")
        if table["role"] not in ROLES or table["spread"] not in SPREADS:
            raise PeelbackError(f"{name}: role or spread is none of {ROLES}, {SPREADS}")
        if table["source"] not in sources:
            raise PeelbackError(f"{name}: unknown source {table['source']!r}")
        if "specimens_mm" in table and table["measure"] not in COLUMN_MEASURES:
            raise PeelbackError(f"{name}: specimens_mm is for measures of the column")
        for about, numbers in table["values"].items():
            value, spread, low, high = _numbers(name, table["spread"], numbers)
            yield PublishedValue(
                quantity=table["quantity"].format(about=about),
                measure=table["measure"],
                about=table.get("about", about),
                unit=table["unit"],
                role=table["role"],
                published=value,
                spread=spread,
                low=low,
                high=high,
                source=sources[table["source"]],
                seen=table["seen"],
                sex=table["sex"],
                note=table.get("note", ""),
                specimens_mm=table.get("specimens_mm"),
            )


def _numbers(
    name: str, spread: str, numbers: list[float]
) -> tuple[float, float | None, float | None, float | None]:
    count = {"sd": 2, "range": 3, "none": 1}[spread]
    if len(numbers) != count or not all(math.isfinite(n) for n in numbers):
        raise PeelbackError(f"{name}: {count} numbers are needed, got {numbers}")
    if spread == "sd":
        return numbers[0], numbers[1], None, None
    if spread == "range":
        return numbers[0], None, numbers[1], numbers[2]
    return numbers[0], None, None, None


def compare(model: BackModel) -> list[Comparison]:
    """Measure the model for every published value of its sex.

    Lengths are scaled by stature relative to the median of the sex, areas by its
    square; angles and levels are not. Where the source tells the stature of its specimens,
    the column of a body of that stature is measured instead.
    """
    measured = Measured(model)
    body = model.body
    scale = float(body.stature_mm) / MEDIAN_STATURE_MM[body.sex]
    rows, columns = [], {}
    for value in published_values():
        if value.sex not in ("any", body.sex):
            continue
        if value.specimens_mm is None:
            by_unit = {"mm": scale, "cm2": scale**2}
            rows.append(_compare(measured, value, by_unit.get(value.unit, 1.0)))
            continue
        if value.specimens_mm not in columns:
            like = Body(sex=body.sex, stature_mm=value.specimens_mm)
            columns[value.specimens_mm] = Measured(bones_of(like, model.detail, True))
        rows.append(_compare(columns[value.specimens_mm], value, 1.0))
    return rows


def compare_other_sex(model: BackModel) -> list[Comparison]:
    """Measure the bones of the median body of the other sex for the values of that sex."""
    sex = "female" if model.body.sex == "male" else "male"
    chosen = [v for v in published_values() if v.sex == sex and v.measure in BONE_MEASURES]
    measured = Measured(bones_of(Body(sex=sex), model.detail))
    return [_compare(measured, value, 1.0) for value in chosen if value.specimens_mm is None]


def _compare(measured: Measured, value: PublishedValue, scale: float) -> Comparison:
    published = value.published * scale
    spread = None if value.spread is None else value.spread * scale
    note = value.note
    found: float | None
    try:
        found = round(MEASURES[value.measure](measured, value.about), 2)
    except Unmeasurable as reason:
        found, note = None, str(reason)
    within_1 = within_2 = within_range = None
    if found is not None:
        if spread is not None:
            within_1 = abs(found - published) <= spread
            within_2 = abs(found - published) <= 2 * spread
        if value.low is not None and value.high is not None:
            within_range = value.low * scale <= found <= value.high * scale
    return Comparison(
        quantity=value.quantity,
        role=value.role,
        published=round(published, 2),
        spread=None if spread is None else round(spread, 2),
        model=found,
        source=value.source,
        seen=value.seen,
        within_1=within_1,
        within_2=within_2,
        unit=value.unit,
        within_range=within_range,
        note=note,
    )
