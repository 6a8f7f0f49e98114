"""How far the start has come, told to whoever measures it.

``scripts/bench start`` sets PEELBACK_MILESTONES; otherwise nothing is said.
"""

from __future__ import annotations

import os
import sys
import time

VARIABLE = "PEELBACK_MILESTONES"


def reached(what: str) -> None:
    """Write "milestone NAME CLOCK CPU" on standard error: s on the system's clock and used so far."""
    if os.environ.get(VARIABLE):
        spent = time.process_time()
        print(f"milestone {what} {time.time():.4f} {spent:.4f}", file=sys.stderr, flush=True)
