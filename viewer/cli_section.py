"""A flat cut through the model at a vertebral level, as regions and as a picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from meshes.errors import PeelbackError
from meshes.export import part_names, write_bytes
from meshes.model import BackModel
from meshes.questions.section import (
    FREE,
    PLANES,
    TILT_LIMIT_DEG,
    CutPlane,
    Region,
    Slicer,
    placed_plane,
)
from viewer.cli_plate import THEMES, one_of, size_from
from viewer.state.view_state import LOOKS

LEVELS = (
    *(f"C{n}" for n in range(1, 8)),
    *(f"T{n}" for n in range(1, 13)),
    *(f"L{n}" for n in range(1, 6)),
    "S1",
)
FILE_ENDINGS = (".png", ".svg", ".pdf")
OFFSET_LIMIT_MM = 1000.0


@dataclass(frozen=True, slots=True)
class SectionOrder:
    """A cut as it was asked for, found to be possible.

    Attributes
    ----------
    level : str
        "C1" to "S1"; the plane goes through the centre of its body.
    plane : {"transverse", "sagittal", "coronal"}
    offset_mm : float
        How far the plane is moved from there, along +z, +x or +y.
    tilt_deg : (float, float)
        Only of a transverse plane.
    width, height : int
        Pixels.
    look, theme : str
    labels : bool
    out : Path or None
    """

    level: str
    plane: str
    offset_mm: float
    tilt_deg: tuple[float, float]
    width: int
    height: int
    look: str
    theme: str
    labels: bool
    out: Path | None

    @classmethod
    def checked(
        cls,
        *,
        level: str,
        plane: str,
        size: str,
        offset: float = 0.0,
        tilt: str | None = None,
        look: str,
        theme: str,
        labels: bool,
        out: Path | None,
    ) -> SectionOrder:
        """Make an order from the words of the command.

        Raises
        ------
        PeelbackError
            One of the words is none of those allowed.
        """
        one_of("level", level, LEVELS)
        one_of("plane", plane, PLANES)
        one_of("look", look, LOOKS)
        one_of("theme", theme, THEMES)
        if out is not None and out.suffix.lower() not in FILE_ENDINGS:
            raise PeelbackError(
                f"out must end in one of {', '.join(FILE_ENDINGS)}, got {out.name!r}"
            )
        if not abs(offset) <= OFFSET_LIMIT_MM:
            raise PeelbackError(f"offset must lie in ±{OFFSET_LIMIT_MM:.0f} mm, got {offset:g}")
        tilts = _tilt_from(tilt)
        if any(tilts) and plane != "transverse":
            raise PeelbackError(f"only a transverse plane can be tilted, got --plane {plane}")
        width, height = size_from(size)
        return cls(level, plane, float(offset), tilts, width, height, look, theme, labels, out)


def _tilt_from(words: str | None) -> tuple[float, float]:
    """Read "30,10" as degrees."""
    if words is None:
        return (0.0, 0.0)
    try:
        nod, lean = (float(word) for word in words.split(","))
    except ValueError:
        raise PeelbackError(f"tilt must be two numbers such as 30,10, got {words!r}") from None
    if not max(abs(nod), abs(lean)) <= TILT_LIMIT_DEG:
        raise PeelbackError(f"tilt must lie in -90–90 degrees, got {words!r}")
    return (nod, lean)


def section_title(order: SectionOrder) -> str:
    """Return what the picture says above the cut."""
    title = f"{order.plane.capitalize()} section through {order.level}"
    if order.offset_mm:
        ways = {"transverse": ("above", "below"), "sagittal": ("left of", "right of")}
        way = ways.get(order.plane, ("behind", "in front of"))[order.offset_mm < 0]
        where = f"{abs(order.offset_mm):g} mm {way} {order.level}"
        title = f"{order.plane.capitalize()} section, {where}"
    if any(order.tilt_deg):
        title += ", tilted {:g}° and {:g}°".format(*order.tilt_deg)
    return title


def cut(model: BackModel, order: SectionOrder) -> tuple[CutPlane, list[Region]]:
    """Cut the model.

    Raises
    ------
    PeelbackError
        The model has no such level.
    """
    if order.level == "S1":
        centre = np.zeros(3)
    else:
        for name in (f"{order.level}.body_centre", f"{order.level}.spinous_process"):
            if name in model.landmarks:
                centre = np.asarray(model.landmarks[name], dtype=float).reshape(-1, 3)[0]
                break
        else:
            raise PeelbackError(f"this model has no level {order.level}")
    axis = {"sagittal": 0, "coronal": 1}.get(order.plane, 2)
    kind = FREE if any(order.tilt_deg) else order.plane
    plane = placed_plane(kind, centre[axis] + order.offset_mm, order.tilt_deg)
    return plane, Slicer(model).cut(plane)


def draw_section(
    model: BackModel, order: SectionOrder, plane: CutPlane, regions: Sequence[Region]
) -> None:
    """Write the labelled picture of a cut: PNG, SVG or PDF by the file's ending."""
    from viewer.scene.section_picture import (
        letter_px,
        section_layout,
        section_png,
        section_svg,
        short_name,
    )

    measure = None
    if order.out.suffix.lower() == ".pdf":
        # Measured in the letters that the page is written in.
        from viewer.print.section_page import letters_measure

        measure = letters_measure(letter_px(order.height))
    layout = section_layout(
        model,
        plane,
        regions,
        (order.width, order.height),
        {
            r.part_id: short_name(part_names(model.parts[r.part_id], model)["english"])
            for r in regions
        },
        section_title(order),
        order.look,
        order.theme,
        order.labels,
        measure=measure,
    )
    if order.out.suffix.lower() == ".svg":
        write_bytes(order.out, section_svg(layout).encode())
    elif order.out.suffix.lower() == ".pdf":
        from viewer.print.section_page import write_section_pdf

        write_section_pdf(order.out, layout)
    else:
        write_bytes(order.out, section_png(layout))
