"""Where I stand: the donor prone on a table, told in words. Plain values."""

from __future__ import annotations

from viewer.state.tongue import told

TABLE_PLACES: dict[str, str] = {
    "": "Standing, as in anatomy",
    "left": "Prone, from the left side",
    "right": "Prone, from the right side",
    "head": "Prone, from the head end",
    "foot": "Prone, from the foot end",
}
"""Values of ``ViewState.table`` and what they are called."""

LYING_NOTE = "Standing model laid down: blades and arms not moved"
"""Said on the picture: the geometry of the arms as on the table is not modelled."""

PRONE_ANGLE_MM = 18.4
"""How much lower the inferior angle of the scapula stands in prone people with their arms
forward on rests, mm, about one vertebral level, n = 20 (J Can Chiropr Assoc 2009;53:121-128,
as quoted in a review of landmarks; not re-read). With the arms at the sides it stands higher."""


def pose_lines(table: str) -> tuple[str, ...]:
    """Return the lines that tell on the picture which pose is on."""
    if not table:
        return (told("Pose: {name}", name=told(TABLE_PLACES[""])),)
    return (told("Pose: {name}", name=told(TABLE_PLACES[table])), told(LYING_NOTE))


def pose_sentence(table: str) -> str:
    """Return the same for screen readers, with what it means for levels."""
    if not table:
        return told("Pose: {name}.", name=told(TABLE_PLACES[""]))
    return told(
        "Pose: {name}. {note}. In a donor with the arms forward the lower angle of the shoulder "
        "blade lies about one level further down.",
        name=told(TABLE_PLACES[table]),
        note=told(LYING_NOTE),
    )
