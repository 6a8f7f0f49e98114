"""Where the model is cut flat, as a small immutable value, and the commands that move the plane."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from typing import TYPE_CHECKING, Any

from meshes.questions.planes import CutPlane, placed_plane
from viewer.state.commands import Command
from viewer.state.tongue import figure, told

if TYPE_CHECKING:
    from viewer.state.view_state import ViewState

KINDS: dict[str, str] = {
    "transverse": "Transverse",
    "sagittal": "Sagittal",
    "coronal": "Coronal",
    "free": "Free (tilted)",
}
KEPT: dict[str, tuple[str, str]] = {
    "transverse": ("upper half", "lower half"),
    "sagittal": ("right half", "left half"),
    "coronal": ("front half", "back half"),
    "free": ("upper half", "lower half"),
}
"""What the half beyond the plane and the half before it are called, by kind of plane."""

POSITION_LIMIT_MM = 2000.0
TILT_LIMIT_DEG = 90.0


@dataclass(frozen=True, slots=True)
class SectionPlane:
    """A flat cut through the model.

    Attributes
    ----------
    kind : {"transverse", "sagittal", "coronal", "free"}
    position_mm : float
        z of a transverse or free plane, x of a sagittal, y of a coronal one; mm LPS.
    tilt_deg : (float, float)
        Only of a free plane: how far a transverse one is turned about the picture's
        horizontal axis, then about its vertical one.
    near_half : bool
        True keeps the half towards the one who reads the picture, False the half beyond.
    whole : bool
        True cuts the whole back, whatever the dissection took off; False what is left.
    as_imaged : bool
        Turns transverse pictures as images are read: front up, the subject's left on the
        viewer's right. Otherwise they lie as the donor does: back up.
    """

    kind: str = "transverse"
    position_mm: float = 0.0
    tilt_deg: tuple[float, float] = (0.0, 0.0)
    near_half: bool = False
    whole: bool = False
    as_imaged: bool = False

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(
                told(
                    "{name} must be one of {allowed}, got {given}",
                    name="kind",
                    allowed=", ".join(KINDS),
                    given=repr(self.kind),
                )
            )
        if not -POSITION_LIMIT_MM <= self.position_mm <= POSITION_LIMIT_MM:
            raise ValueError(
                told(
                    "{name} must lie in {range}, got {given}",
                    name="position_mm",
                    range=f"±{POSITION_LIMIT_MM:g} mm",
                    given=f"{self.position_mm:g}",
                )
            )
        if len(self.tilt_deg) != 2 or not all(abs(t) <= TILT_LIMIT_DEG for t in self.tilt_deg):
            raise ValueError(
                told(
                    "{name} must lie in {range}, got {given}",
                    name="tilt_deg",
                    range=f"±{TILT_LIMIT_DEG:g}°",
                    given=self.tilt_deg,
                )
            )

    @property
    def kept_words(self) -> str:
        """What stays, in words."""
        return KEPT[self.kind][self.near_half]

    def plane(self) -> CutPlane:
        """Return the plane with the axes of its picture."""
        tilt = self.tilt_deg if self.kind == "free" else (0.0, 0.0)
        plane = placed_plane(self.kind, self.position_mm, tilt)
        if self.as_imaged and self.kind in ("transverse", "free"):
            return CutPlane(plane.origin, -plane.right, -plane.up)
        return plane


def section_from_json(value: Mapping[str, Any] | None) -> SectionPlane | None:
    """Make a plane from plain JSON values.

    Raises
    ------
    ValueError
        An unknown field, or a value of another type than it should have.
    """
    if value is None:
        return None
    if not isinstance(value, Mapping):
        raise ValueError(told("an object or null is wanted, got {given}", given=repr(value)))
    plain = asdict(SectionPlane())
    for name, given in value.items():
        if name not in plain:
            raise ValueError(told("unknown field {name}", name=repr(name)))
        if isinstance(plain[name], bool) != isinstance(given, bool):
            raise ValueError(told("{name} cannot be {given}", name=name, given=repr(given)))
    made = dict(value)
    if "position_mm" in made:
        made["position_mm"] = float(made["position_mm"])
    if "tilt_deg" in made:
        nod, lean = made["tilt_deg"]
        made["tilt_deg"] = (float(nod), float(lean))
    return SectionPlane(**made)


def set_section(section: SectionPlane | None, name: str = "", *, dragging: bool = False) -> Command:
    """Put the plane somewhere, or take it away with None; a drag is one undo entry."""
    words = name or ("cut a section" if section else "close the section")
    return Command(
        words,
        lambda state: replace(state, section=section),
        merges_with="section plane" if dragging else "",
    )


def change_section(name: str, *, dragging: bool = False, **changes: object) -> Command:
    """Change some fields of the present plane; without one nothing happens."""

    def change(state: ViewState) -> ViewState:
        if state.section is None:
            return state
        return replace(state, section=replace(state.section, **changes))

    return Command(name, change, merges_with="section plane" if dragging else "")


def area_words(cm2: float) -> str:
    """Return an area (cm²) as it is listed: what is cut is never said to be nothing."""
    return figure(cm2, ".2f") if cm2 >= 0.005 else f"< {figure(0.01, '.2f')}"
