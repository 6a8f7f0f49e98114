"""A flat cut through the model at a vertebral level, as regions and as a picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from meshes.errors import PeelbackError
from meshes.export import part_names, write_bytes
from meshes.model import BackModel
from meshes.questions.section import PLANES, CutPlane, Region, Slicer, cut_plane
from viewer.cli_plate import THEMES, one_of, size_from
from viewer.state.view_state import LOOKS

LEVELS = (
    *(f"C{n}" for n in range(1, 8)),
    *(f"T{n}" for n in range(1, 13)),
    *(f"L{n}" for n in range(1, 6)),
    "S1",
)
FILE_ENDINGS = (".png", ".svg")


@dataclass(frozen=True, slots=True)
class SectionOrder:
    """A cut as it was asked for, found to be possible.

    Attributes
    ----------
    level : str
        "C1" to "S1"; the plane goes through the centre of its body.
    plane : {"transverse", "sagittal", "coronal"}
    width, height : int
        Pixels.
    look, theme : str
    labels : bool
    out : Path or None
    """

    level: str
    plane: str
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
        width, height = size_from(size)
        return cls(level, plane, width, height, look, theme, labels, out)


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
    plane = cut_plane(order.plane, centre)
    return plane, Slicer(model).cut(plane)


def draw_section(
    model: BackModel, order: SectionOrder, plane: CutPlane, regions: Sequence[Region]
) -> None:
    """Write the labelled picture of a cut, PNG or SVG by the file's ending."""
    from viewer.scene.section_picture import section_layout, section_png, section_svg

    layout = section_layout(
        model,
        plane,
        regions,
        (order.width, order.height),
        {r.part_id: part_names(model.parts[r.part_id], model)["english"] for r in regions},
        f"{order.plane.capitalize()} section through {order.level}",
        order.look,
        order.theme,
        order.labels,
    )
    if order.out.suffix.lower() == ".svg":
        write_bytes(order.out, section_svg(layout).encode())
    else:
        write_bytes(order.out, section_png(layout))
