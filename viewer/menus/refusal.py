"""What the window says of a file that could not be written."""

from __future__ import annotations

from pathlib import Path

from meshes.errors import PeelbackError
from viewer.state.tongue import refused, told


def unwritten(path: Path, error: PeelbackError | OSError) -> str:
    """Return why a file or folder was not written, in the language that is shown.

    The computer's own reason is behind it.
    """
    cause = error if isinstance(error, OSError) else error.__cause__
    if isinstance(cause, OSError):
        return told("{path} cannot be written: {why}", path=path, why=cause.strerror or cause)
    return refused(error) if isinstance(error, PeelbackError) else str(error)
