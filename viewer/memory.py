"""Giving memory that is free again back to the system.

What is worked out once after a start (trees over a million triangles) takes large arrays that are
dropped at once. The C library keeps such room for itself when it was taken beside the main
thread: 150 MiB at full detail. On a small laptop other programs need it.
"""

from __future__ import annotations

import ctypes
import sys


def give_back() -> bool:
    """Ask the C library to return free memory; returns whether it could (glibc only)."""
    if not sys.platform.startswith("linux"):
        return False
    try:
        trim = ctypes.CDLL(None).malloc_trim
    except (AttributeError, OSError):
        # Another C library (musl), which keeps little.
        return False
    return bool(trim(0))
