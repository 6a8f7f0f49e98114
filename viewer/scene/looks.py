"""Colours of the parts: by kind, as on the table, and for poor projectors. No VTK.

Arteries red, veins blue, nerves yellow: common practice, no source. Nothing on
the table is colour-coded, so the second look shows muted brown muscle, cream
nerves and dark vessels. The high-contrast look began with hues of Okabe and
Ito's set of eight (from memory) and was moved until every two kinds stay 14
units of CIELAB apart for three kinds of colour-blind viewers as well
(`tests/viewer/scene/test_looks.py` simulates them).
"""

from __future__ import annotations

import zlib
from functools import lru_cache

import numpy as np

from viewer.state.visibility import is_film

LOOKS = ("by_kind", "as_fixed", "high_contrast")

MATERIALS = ("muscle", "bone", "gristle", "sheet", "film", "fat", "tube", "skin", "context")
"""Surface kinds that are shaded alike and drawn together."""

_MATERIAL_OF_KIND = {
    "bone": "bone",
    "cartilage": "gristle",
    "disc": "gristle",
    "ligament": "gristle",
    "muscle": "muscle",
    "tendon": "muscle",
    "fascia": "sheet",
    "nerve": "tube",
    "artery": "tube",
    "vein": "tube",
    "canal": "tube",
    "skin": "skin",
    "context": "context",
}

_PALETTES: dict[str, dict[str, tuple[int, int, int]]] = {
    "by_kind": {
        "bone": (232, 219, 190),
        "cartilage": (178, 197, 205),
        "disc": (186, 200, 204),
        "ligament": (224, 222, 210),
        "muscle_outer": (168, 68, 57),
        "muscle_middle": (160, 78, 66),
        "muscle_deep": (148, 60, 58),
        "tendon": (220, 213, 200),
        "fascia": (218, 214, 204),
        "fat": (232, 208, 146),
        "nerve": (222, 190, 58),
        "artery": (176, 34, 36),
        "vein": (58, 80, 150),
        "canal": (206, 198, 178),
        "skin": (218, 175, 148),
        "context": (142, 138, 134),
    },
    "as_fixed": {
        "bone": (216, 203, 172),
        "cartilage": (190, 190, 176),
        "disc": (190, 186, 168),
        "ligament": (204, 198, 178),
        "muscle_outer": (142, 106, 86),
        "muscle_middle": (134, 104, 86),
        "muscle_deep": (124, 94, 80),
        "tendon": (196, 187, 168),
        "fascia": (196, 188, 170),
        "fat": (190, 168, 116),
        "nerve": (202, 193, 166),
        "artery": (112, 70, 60),
        "vein": (66, 54, 62),
        "canal": (196, 188, 168),
        "skin": (176, 152, 128),
        "context": (134, 130, 126),
    },
    "high_contrast": {
        "bone": (239, 244, 214),
        "cartilage": (87, 181, 218),
        "disc": (87, 181, 218),
        "ligament": (0, 148, 106),
        "muscle_outer": (200, 90, 8),
        "muscle_middle": (224, 158, 20),
        "muscle_deep": (181, 98, 143),
        "tendon": (252, 202, 185),
        "fascia": (192, 200, 217),
        "fat": (176, 160, 66),
        "nerve": (252, 237, 41),
        "artery": (170, 0, 0),
        "vein": (0, 70, 170),
        "canal": (146, 127, 211),
        "skin": (211, 158, 149),
        "context": (90, 90, 96),
    },
}

HIGHLIGHT = (255, 214, 64)
HIGHLIGHT_SHARE = 0.42
HOVER_SHARE = 0.16
COVERING = (38, 108, 214)
COVERING_SHARE = 0.5
"""Tint of what lies over a part: blue, far from the yellow of what is picked for every eye."""

BACKGROUNDS = {"light": (0.90, 0.905, 0.91), "dark": (0.10, 0.107, 0.122)}
"""One even colour for each theme, 0..1: a gradient cost 8 ms a frame on software GL."""


def material_of(part) -> str:
    """Return which surface shading a part takes."""
    if is_fat(part):
        return "fat"
    if is_film(part):
        return "film"
    return _MATERIAL_OF_KIND[part.kind]


def batch_key(part) -> tuple[int, str]:
    """Return (stratum, material): parts with the same key are drawn together."""
    return part.stratum, material_of(part)


def is_fat(part) -> bool:
    """Return whether a fascia is the fatty one under the skin."""
    return part.kind == "fascia" and part.stratum == 1


def depth_group(stratum: int) -> str:
    """Return "outer" (strata 0-3), "middle" (4-5) or "deep" (6-10)."""
    if stratum <= 3:
        return "outer"
    return "middle" if stratum <= 5 else "deep"


def base_colour(part, look: str = "by_kind") -> np.ndarray:
    """Return the flat colour of a part, (3,) float 0..255.

    Neighbours of one kind differ a little (by name, alike on both sides), so
    that the border between two bellies shows.
    """
    return np.array(_base_colour(part.kind, part.stratum, part.name, is_fat(part), look))


@lru_cache(maxsize=8192)
def _base_colour(
    kind: str, stratum: int, name: str, fat: bool, look: str
) -> tuple[float, float, float]:
    if look not in LOOKS:
        raise ValueError(f"look must be one of {', '.join(LOOKS)}, got {look!r}")
    palette = _PALETTES[look]
    if fat:
        key = "fat"
    elif kind == "muscle":
        key = f"muscle_{depth_group(stratum)}"
    else:
        key = kind
    colour = np.array(palette[key], float)
    spread = {"muscle": 0.075, "bone": 0.025, "disc": 0.02, "ligament": 0.03}.get(kind, 0.0)
    if spread:
        seed = zlib.crc32(name.encode())
        shade = ((seed & 0xFFFF) / 0xFFFF - 0.5) * 2.0
        warmth = ((seed >> 16) / 0xFFFF - 0.5) * 2.0
        colour = colour * (1.0 + spread * shade)
        colour *= 1.0 + np.array([0.25, 0.0, -0.35]) * spread * warmth
    return tuple(np.clip(colour, 0, 240).tolist())


def tendon_colour(look: str = "by_kind") -> tuple[int, int, int]:
    """Return the colour that flesh turns to where it is tendon, 0..255."""
    return _PALETTES[look]["tendon"]


RAW = {"muscle": (0.62, 0.45, 0.44), "skin": (1.08, 1.04, 1.0), "fat": (1.06, 1.0, 0.72)}
"""Freshly cut flesh is darker and redder than its surface, dermis whiter, fat more yellow."""

DEEP_SHARE = {"muscle": 0.42, "skin": 0.7, "fat": 0.5, "sheet": 0.2, "film": 0.2}
"""How far the deep surface takes on the colour of what clings to it."""


def cut_colours(part, colour: np.ndarray, cut: np.ndarray, look: str) -> np.ndarray:
    """Return the colours of a part that is cut and folded.

    The deep surface of a muscle is veiled by its perimysium, that of the skin by fat,
    that of the fat by its membranous layer.

    Parameters
    ----------
    colour : (n, 3) float
        0..255, without the cut.
    cut : (n, 2) float
        Shares of raw face and of deep surface.
    """
    palette = _PALETTES[look]
    material = material_of(part)
    veil = np.array(palette["fat" if material == "skin" else "fascia"], float)
    share = DEEP_SHARE.get(material, 0.0)
    colour = colour + share * cut[:, 1:] * (veil - colour)
    raw = np.clip(base_colour(part, look) * RAW.get(material, (1.06, 1.06, 1.06)), 0, 245)
    return colour + cut[:, :1] * (raw - colour)


SHOWS_THROUGH = 0.85
"""Share of the flesh's colour where a fascia has thinned out."""


def vertex_colours(
    part,
    tendon,
    look: str,
    highlighted: bool,
    hovered: bool,
    covering: bool = False,
    cut: np.ndarray | None = None,
) -> np.ndarray:
    """Return the colours of a part's drawn vertices.

    Parameters
    ----------
    tendon : (n,) float
        0 fleshy to 1 tendon, a value a drawn vertex.
    cut : (n, 2) float, optional
        As in ``cut_colours``.

    Returns
    -------
    (n, 3) uint8
    """
    tendon = np.asarray(tendon, float)
    colour = np.array(_base_colour(part.kind, part.stratum, part.name, is_fat(part), look))[None]
    if part.kind in ("muscle", "tendon"):
        # A soft step: flesh frays into tendon over a short way, not along the whole belly.
        share = tendon * tendon * (3.0 - 2.0 * tendon)
        pale = np.array(_PALETTES[look]["tendon"], float)
        colour = colour + share[:, None] * (pale - colour)
    elif part.kind == "fascia" and part.tendon is not None:
        # Where a fascia thins out into the muscle's own, the flesh shows through.
        flesh = np.array(_base_colour("muscle", part.stratum, part.name, False, look), float)
        colour = colour + SHOWS_THROUGH * (1.0 - tendon)[:, None] * (flesh - colour)
    if cut is not None:
        colour = cut_colours(part, colour, np.asarray(cut, float), look)
    if covering:
        colour = colour + COVERING_SHARE * (np.array(COVERING, float) - colour)
    mark = HIGHLIGHT_SHARE if highlighted else HOVER_SHARE if hovered else 0.0
    if mark:
        colour = colour + mark * (np.array(HIGHLIGHT, float) - colour)
    colour = np.clip(np.rint(colour), 0, 255).astype(np.uint8)
    return np.broadcast_to(colour, (len(tendon), 3))


LOOSE_TISSUE = (243, 234, 206)
"""Between the parts of a cut face, where no part stands for the tissue; paler than the fat."""


def section_colour(part, look: str = "by_kind") -> tuple[int, int, int]:
    """Return a part's colour in a section, as whole numbers.

    Cut bellies lie side by side without relief, so that neighbours differ more
    than on the surface.
    """
    # Psoas stands for what lies in front of the loin, and is cut there as the muscle it is.
    kind = "muscle" if part.kind == "context" and part.name != "context_trunk" else part.kind
    colour = np.array(_base_colour(kind, part.stratum, part.name, is_fat(part), look), float)
    if kind == "muscle":
        seed = zlib.crc32(part.id.split(".", 1)[0].encode())
        shade = (seed % 5 - 2) / 2.0
        colour = colour * (1.0 + 0.16 * shade) + np.array([8.0, 10.0, 9.0]) * shade
    return tuple(int(c) for c in np.clip(np.rint(colour), 0, 240))
