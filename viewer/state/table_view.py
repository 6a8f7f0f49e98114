"""Where I stand: the donor prone on a table, told in words. Plain values."""

from __future__ import annotations

from typing import TYPE_CHECKING

from viewer.state.tongue import told

if TYPE_CHECKING:
    from viewer.state.view_state import ViewState

TABLE_PLACES: dict[str, str] = {
    "": "Standing, as in anatomy",
    "left": "Prone, from the left side",
    "right": "Prone, from the right side",
    "head": "Prone, from the head end",
    "foot": "Prone, from the foot end",
}
"""Values of ``ViewState.table`` and what they are called."""

LYING_NOTE = "Standing model laid down: blades and arms not moved"
"""Said on the picture while blades and arms are drawn as standing."""

LIMBS_NOTE = "Arms and blades as they lie; layers as standing"
"""Said on the picture while they are drawn as on the table: answers are for the standing body."""


def limbs_lie(state: ViewState) -> bool:
    """Tell whether blades and arms are drawn as on the table.

    Not while something is cut through the model or stuck to it: its place is known
    in the standing body only.
    """
    stuck = state.pins or state.measure or state.surface_marks
    return bool(state.table) and state.section is None and state.cut_line is None and not stuck


PRONE_ANGLE_MM = 18.4
"""How much lower the inferior angle of the scapula stands in prone people with their arms
forward on rests, mm, about one vertebral level, n = 20 (J Can Chiropr Assoc 2009;53:121-128,
as quoted in a review of landmarks; not re-read). With the arms at the sides it stands higher."""


def pose_lines(table: str, lying: bool = False) -> tuple[str, ...]:
    """Return the lines that tell on the picture which pose is on."""
    if not table:
        return (told("Pose: {name}", name=told(TABLE_PLACES[""])),)
    return (
        told("Pose: {name}", name=told(TABLE_PLACES[table])),
        told(LIMBS_NOTE if lying else LYING_NOTE),
    )


def pose_sentence(table: str, lying: bool = False) -> str:
    """Return the same for screen readers, with what it means for levels."""
    if not table:
        return told("Pose: {name}.", name=told(TABLE_PLACES[""]))
    return told(
        "Pose: {name}. {note}. In a donor with the arms forward the lower angle of the shoulder "
        "blade lies about one level further down.",
        name=told(TABLE_PLACES[table]),
        note=told(LIMBS_NOTE if lying else LYING_NOTE),
    )
