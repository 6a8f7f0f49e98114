"""The parameters of a body as options of a command."""

from __future__ import annotations

import argparse
from dataclasses import fields

from meshes.body import RANGES, SEXES, Body

_MEANING = {
    "sex": "table of sizes",
    "stature_mm": "standing height",
    "biacromial_mm": "breadth between the acromia",
    "cervical_lordosis_deg": "C2–C7 Cobb angle",
    "thoracic_kyphosis_deg": "T4–T12 Cobb angle",
    "lumbar_lordosis_deg": "L1–S1 Cobb angle",
    "sacral_slope_deg": "tilt of the S1 endplate",
    "fat_upper_mm": "superficial fascia over the upper back",
    "fat_lower_mm": "superficial fascia over the loin",
    "muscle_bulk": "factor on muscle thickness",
    "arm_abduction_deg": "arm away from the trunk",
    "scapular_upward_rotation_deg": "pose of the scapulae",
    "scapular_protraction_mm": "pose of the scapulae",
    "scapular_elevation_mm": "pose of the scapulae",
    "scapular_slip": "variant: slip of latissimus from the inferior angle",
    "trapezius_to_T10": "variant: trapezius ends at T10",
}


def option_of(field: str) -> str:
    """Return the option's name: ``stature_mm`` is ``--stature-mm``."""
    return "--" + field.replace("_", "-")


def add_body_options(parser: argparse.ArgumentParser) -> None:
    """Give a parser one option for every field of :class:`meshes.body.Body`.

    Options that are not given leave no trace, so that the defaults stay in one place.
    """
    group = parser.add_argument_group("the body (defaults are published medians)")
    for field in fields(Body):
        common = {
            "dest": f"body_{field.name}",
            "default": argparse.SUPPRESS,
            "help": _MEANING.get(field.name, ""),
        }
        if field.name == "sex":
            group.add_argument("--sex", metavar="|".join(SEXES), **common)
        elif field.name in RANGES:
            low, high = RANGES[field.name]
            unit = (
                "mm" if field.name.endswith("_mm") else "°" if field.name.endswith("_deg") else ""
            )
            common["help"] += f", {low:g}–{high:g} {unit}".rstrip()
            group.add_argument(option_of(field.name), type=_number, metavar="N", **common)
        else:
            group.add_argument(
                option_of(field.name), action=argparse.BooleanOptionalAction, **common
            )


def body_from(words: argparse.Namespace) -> Body:
    """Return the body that the options describe.

    Raises
    ------
    meshes.body.BodyError
        A value outside its range.
    """
    given = {
        name.removeprefix("body_"): value
        for name, value in vars(words).items()
        if name.startswith("body_")
    }
    return Body.from_dict(given)


def words_of(body: Body) -> list[str]:
    """Return the options that make a body again; those at their defaults are left out."""
    plain = Body().as_dict()
    options: list[str] = []
    for name, value in body.as_dict().items():
        if value == plain[name]:
            continue
        if isinstance(value, bool):
            options.append(option_of(name) if value else option_of(f"no_{name}"))
        else:
            # One word, so that a negative number is not taken for an option.
            options.append(f"{option_of(name)}={value}")
    return options


def _number(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"must be a number, got {text!r}") from None
