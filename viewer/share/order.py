"""A take-home page as it was asked for, found to be possible."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from meshes.errors import PeelbackError
from meshes.export import check_place
from viewer.talk.scenes import Talk
from viewer.talk.talk_file import open_talk

FILE_ENDINGS = (".html", ".htm")


@dataclass(frozen=True, slots=True)
class ShareOrder:
    """What to write and where.

    Attributes
    ----------
    out : Path
    talk : Talk or None
        Scenes that travel with the page.
    notes : bool
        With the speaker's notes.
    """

    out: Path
    talk: Talk | None = None
    notes: bool = False

    @classmethod
    def checked(cls, *, out: Path, talk: Path | None = None, notes: bool = False) -> ShareOrder:
        """Make an order from the words of the command.

        Raises
        ------
        PeelbackError
            The file is no page, its place cannot be written, or the talk cannot be read.
        """
        if out.suffix.lower() not in FILE_ENDINGS:
            raise PeelbackError(
                f"out must end in one of {', '.join(FILE_ENDINGS)}, got {out.name!r}"
            )
        if notes and talk is None:
            raise PeelbackError("notes needs a talk, as in: --talk lecture.talk --notes")
        scenes = None if talk is None else open_talk(talk)
        check_place(out)
        return cls(out, scenes, notes)
