"""A take-home page as it was asked for, found to be possible."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from meshes.errors import PeelbackError
from meshes.export import check_place

FILE_ENDINGS = (".html", ".htm")


@dataclass(frozen=True, slots=True)
class ShareOrder:
    """What to write and where.

    Attributes
    ----------
    out : Path
    """

    out: Path

    @classmethod
    def checked(cls, *, out: Path) -> ShareOrder:
        """Make an order from the words of the command.

        Raises
        ------
        PeelbackError
            The file is no page, or its place cannot be written.
        """
        if out.suffix.lower() not in FILE_ENDINGS:
            raise PeelbackError(
                f"out must end in one of {', '.join(FILE_ENDINGS)}, got {out.name!r}"
            )
        check_place(out)
        return cls(out)
