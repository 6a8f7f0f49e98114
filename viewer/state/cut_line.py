"""The line that a reader draws to rehearse a cut, as a small immutable value, and its commands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from viewer.state.commands import Command
from viewer.state.tongue import told

if TYPE_CHECKING:
    from viewer.state.view_state import ViewState

DEPTH_MM = (0.5, 30.0)
POINT_LIMIT = 200


@dataclass(frozen=True, slots=True)
class CutLine:
    """A rehearsed cut.

    Attributes
    ----------
    points : tuple of (3,)
        Where the reader clicked, in order, mm LPS, on the surface of what is cut.
    part_id : str
        The part under the first click: the layer that is to be cut.
    step_id : str
        The step of the plan that the line is compared with; "" for none.
    depth_mm : float
        How deep the blade goes below the surface.
    """

    points: tuple[tuple[float, float, float], ...] = ()
    part_id: str = ""
    step_id: str = ""
    depth_mm: float = 3.0

    def __post_init__(self) -> None:
        if not DEPTH_MM[0] <= self.depth_mm <= DEPTH_MM[1]:
            raise ValueError(
                told(
                    "{name} must lie in {range}, got {given}",
                    name="depth_mm",
                    range=f"{DEPTH_MM[0]:g}–{DEPTH_MM[1]:g} mm",
                    given=f"{self.depth_mm:g}",
                )
            )
        if len(self.points) > POINT_LIMIT:
            raise ValueError(
                told(
                    "a cut has at most {most} points, got {count}",
                    most=POINT_LIMIT,
                    count=len(self.points),
                )
            )


def cut_from_json(value: Mapping[str, Any] | None) -> CutLine | None:
    """Make a line from plain JSON values.

    Raises
    ------
    ValueError
        An unknown field, or a value of another type than it should have.
    """
    if value is None:
        return None
    if not isinstance(value, Mapping):
        raise ValueError(told("an object or null is wanted, got {given}", given=repr(value)))
    unknown = set(value) - {"points", "part_id", "step_id", "depth_mm"}
    if unknown:
        raise ValueError(told("unknown field {name}", name=repr(sorted(unknown)[0])))
    points = []
    for point in value.get("points", ()):
        x, y, z = (float(c) for c in point)
        points.append((x, y, z))
    return CutLine(
        tuple(points),
        str(value.get("part_id", "")),
        str(value.get("step_id", "")),
        float(value.get("depth_mm", CutLine().depth_mm)),
    )


def begin_cut(step_id: str = "") -> Command:
    """Begin a line, keeping the depth of the one before."""

    def change(state: ViewState) -> ViewState:
        depth = state.cut_line.depth_mm if state.cut_line else CutLine().depth_mm
        return replace(state, cut_line=CutLine(step_id=step_id, depth_mm=depth))

    return Command("rehearse a cut", change)


def add_cut_point(point, part_id: str) -> Command:
    """Add a point to the line; the first one also tells which layer is cut."""
    place = tuple(float(c) for c in point)

    def change(state: ViewState) -> ViewState:
        line = state.cut_line or CutLine()
        if len(line.points) >= POINT_LIMIT:
            return state
        return replace(
            state,
            cut_line=replace(line, points=(*line.points, place), part_id=line.part_id or part_id),
        )

    return Command("add to the rehearsed cut", change)


def change_cut(name: str, *, dragging: bool = False, **changes: object) -> Command:
    """Change some fields of the present line; without one nothing happens."""

    def change(state: ViewState) -> ViewState:
        if state.cut_line is None:
            return state
        return replace(state, cut_line=replace(state.cut_line, **changes))

    return Command(name, change, merges_with=f"cut {name}" if dragging else "")


def end_cut() -> Command:
    """Take the line away."""
    return Command("end the rehearsal", lambda state: replace(state, cut_line=None))
