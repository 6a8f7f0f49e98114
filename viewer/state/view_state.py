"""What is shown and what has been done, as one small immutable value.

Undo, saved files, the depth rail, the step line and tests all use this value;
none of them knows how it is drawn.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Generic, Literal, NamedTuple, TypeVar

if TYPE_CHECKING:
    from viewer.state.cut_line import CutLine
    from viewer.state.section_plane import SectionPlane

from meshes.catalogue.folds import Laid
from viewer.state.table_view import TABLE_PLACES
from viewer.state.tongue import told

STRATUM_COUNT = 11
BOTH_SIDES = ("left", "right")

SideChoice = Literal["left", "right", "both"]
SIDE_CHOICES: tuple[str, ...] = ("both", "left", "right")
LOOKS: dict[str, str] = {
    "by_kind": "By kind",
    "as_fixed": "As fixed",
    "high_contrast": "High contrast",
}
VIEWS: dict[str, str] = {
    "posterior": "From behind",
    "oblique_left": "Oblique, left",
    "oblique_right": "Oblique, right",
    "lateral_left": "From the left",
    "lateral_right": "From the right",
    "superior": "From above",
    "inferior": "From below",
    "anterior": "From the front",
}
STRATA: tuple[str, ...] = (
    "skin",
    "superficial fascia",
    "first sheet",
    "second sheet",
    "intermediate",
    "fascia, splenii",
    "erector spinae",
    "transversospinales",
    "segmental",
    "ligaments, bones",
    "canal",
)
"""What each stratum is called on the rail, skin first."""

DEPTH_GROUPS: dict[str, tuple[int, ...]] = {
    "covering": (0, 1),
    "superficial": (2, 3),
    "intermediate": (4,),
    "deep": (5, 6, 7, 8),
    "frame": (9, 10),
}


T = TypeVar("T")


class Sides(NamedTuple, Generic[T]):
    """One value for each side of the donor."""

    left: T
    right: T

    def put(self, side: SideChoice, value: T) -> Sides[T]:
        """Return the pair with ``value`` on one side or on both."""
        return Sides(
            value if side in ("left", "both") else self.left,
            value if side in ("right", "both") else self.right,
        )

    def of(self, side: str) -> T:
        """Return the value of "left" or "right"."""
        return self.left if side == "left" else self.right


_WHOLE: Sides = Sides(0, 0)
_NONE_EACH: Sides = Sides(frozenset(), frozenset())


@dataclass(frozen=True, slots=True)
class Pin:
    """A note stuck to a place on the model, without words a tag; ``point`` in mm, LPS."""

    point: tuple[float, float, float]
    text: str
    part_id: str = ""


@dataclass(frozen=True, slots=True)
class Camera:
    """Where one looks from; mm, LPS."""

    position: tuple[float, float, float]
    focal_point: tuple[float, float, float]
    view_up: tuple[float, float, float]
    parallel_scale: float
    parallel: bool = True


@dataclass(frozen=True, slots=True)
class ViewState:
    """The whole state of a dissection on the screen.

    *Done* (what the dissector did; kept until undone):

    Attributes
    ----------
    peeled : Sides of int
        How many strata have been taken off, 0 (whole) to 11 (nothing left).
    strata_off : Sides of frozenset of int
        Single strata taken out by a click on their band.
    removed : frozenset of str
        Ids of parts that steps of the plan took away.
    ticked : Sides of frozenset of str
        Steps marked as done that take nothing away by themselves.
    overridden : Sides of frozenset of str
        Steps done 'anyway', before what they need.
    hidden : frozenset of str
        Ids of parts hidden by hand.
    folds : tuple of Laid
        Flaps that are folded back, in the order in which they were folded.
    working_side : {"left", "right", "both"}
        The side on which rail and steps act.

    *Looking* (never changes what was done):

    see_through, alone : frozenset of str
        Ids shown see-through; ids shown with nothing else (empty: all).
    peek : bool
        Look through what covers the selection, or through the outermost stratum.
    selection : tuple of str
        Picked ids, last one leading.
    covers_of : tuple of str
        Ids of the part that is asked about: what lies over it is tinted and listed.
    side_shown : {"left", "right", "both"}
    look : {"by_kind", "as_fixed", "high_contrast"}
    compare : bool
        The dissected back beside the whole one, under one camera.
    labels, label_density, blank_labels
        Labels on, their density 0-1, and numbers in place of names.
    measure : tuple of (3,) points
    measure_surface : bool
        Measure along the surface instead of straight.
    pins : tuple of Pin
    surface_marks : bool
        Palpable landmarks and levels drawn on the skin.
    neighbours : bool
        Muscles at the edge that do not belong to the back.
    view : str
        The last fixed view.
    camera : Camera or None
        Present pose; None means the fixed view exactly.
    orbit : {"limited", "free"}
    section : SectionPlane or None
        Where the model is cut flat; None shows it uncut.
    cut_line : CutLine or None
        The line that the reader draws to rehearse a cut.
    table : {"", "left", "right", "head", "foot"}
        Where one stands at the table with the donor lying prone; "" shows the body upright.
    """

    peeled: Sides[int] = _WHOLE
    strata_off: Sides[frozenset[int]] = _NONE_EACH
    removed: frozenset[str] = frozenset()
    ticked: Sides[frozenset[str]] = _NONE_EACH
    overridden: Sides[frozenset[str]] = _NONE_EACH
    hidden: frozenset[str] = frozenset()
    folds: tuple[Laid, ...] = ()
    working_side: SideChoice = "both"

    see_through: frozenset[str] = frozenset()
    alone: frozenset[str] = frozenset()
    peek: bool = False
    selection: tuple[str, ...] = ()
    covers_of: tuple[str, ...] = ()
    side_shown: SideChoice = "both"
    look: str = "by_kind"
    compare: bool = False
    labels: bool = False
    label_density: float = 0.4
    blank_labels: bool = False
    measure: tuple[tuple[float, float, float], ...] = ()
    measure_surface: bool = False
    pins: tuple[Pin, ...] = ()
    surface_marks: bool = False
    neighbours: bool = True
    view: str = "posterior"
    camera: Camera | None = None
    orbit: str = "limited"
    section: SectionPlane | None = None
    cut_line: CutLine | None = None
    table: str = ""

    def __post_init__(self) -> None:
        for side in BOTH_SIDES:
            depth = self.peeled.of(side)
            if not 0 <= depth <= STRATUM_COUNT:
                raise ValueError(_not_in("peeled", f"0–{STRATUM_COUNT}", depth))
        for name, allowed in (
            ("working_side", SIDE_CHOICES),
            ("side_shown", SIDE_CHOICES),
            ("look", LOOKS),
            ("view", VIEWS),
            ("orbit", ("limited", "free")),
            ("table", tuple(TABLE_PLACES)),
        ):
            if getattr(self, name) not in allowed:
                raise ValueError(
                    told(
                        "{name} must be one of {allowed}, got {given}",
                        name=name,
                        allowed=", ".join(allowed),
                        given=repr(getattr(self, name)),
                    )
                )
        names = [laid.fold_id for laid in self.folds]
        if len(set(names)) < len(names):
            raise ValueError(
                told("each fold may lie there once, got {names}", names=", ".join(names))
            )
        if not 0.0 <= self.label_density <= 1.0:
            raise ValueError(_not_in("label_density", "0–1", f"{self.label_density:g}"))

    @property
    def selected(self) -> str | None:
        """The part picked last."""
        return self.selection[-1] if self.selection else None

    def with_(self, **changes: object) -> ViewState:
        """Return a copy with some fields changed."""
        return replace(self, **changes)


def _not_in(name: str, allowed: str, given: object) -> str:
    return told("{name} must lie in {range}, got {given}", name=name, range=allowed, given=given)


DONE_FIELDS = frozenset(
    {"peeled", "strata_off", "removed", "ticked", "overridden", "hidden", "folds"}
)
"""Fields that belong to the dissection; all others are ways of looking at it."""


def sides_of(choice: SideChoice) -> tuple[str, ...]:
    """Return the sides that a choice stands for."""
    return BOTH_SIDES if choice == "both" else (choice,)


def on_side(part_side: str | None, choice: SideChoice) -> bool:
    """True when a part lies on the chosen side; median parts lie on either."""
    return choice == "both" or part_side is None or part_side == choice


def stratum_set(numbers: Iterable[int]) -> frozenset[int]:
    """Return strata as a set, refusing numbers that are none."""
    strata = frozenset(int(n) for n in numbers)
    for n in strata:
        if not 0 <= n < STRATUM_COUNT:
            raise ValueError(_not_in("stratum", f"0–{STRATUM_COUNT - 1}", n))
    return strata
