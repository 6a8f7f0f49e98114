"""How much of the full look a moving picture can have on the machine that it finds.

A fast graphics card draws the resting picture in a few milliseconds and may then show it while
the body turns, too; software drawing takes coarse shells. Nothing is asked of the machine but how
long its pictures take: each resting picture tells what the full look costs, each moving one
whether it was too much. The look is raised only between two movements and lowered at most once
in each, so that it never flickers. No VTK, no Qt and no clock: times are handed in.
"""

from __future__ import annotations

RAISE_BELOW_MS = 18.0
"""A resting picture that took less may be drawn while moving: a screen of 60 Hz waits up to 17."""
LOWER_ABOVE_MS = 30.0
"""A moving picture in full look that takes more, over some frames, is too slow."""
SMOOTHING = 0.3
FRAMES_BEFORE_LOWERING = 4
MOST_PATIENCE = 64


class FrameBudget:
    """Decides between coarse and full look of the moving picture.

    Attributes
    ----------
    full : bool
        The next moving picture is to have the full look.
    """

    def __init__(self) -> None:
        self.full = False
        self._quick_rests = 0
        self._patience = 1
        self._mean_ms = 0.0
        self._frames = 0

    def rested(self, ms: float) -> None:
        """Take note of a resting picture and how long its drawing took."""
        self._frames = 0
        if ms >= RAISE_BELOW_MS:
            # Too slow at rest is too slow in motion; one slow upload alone does not lower it.
            self._quick_rests = 0
            return
        self._quick_rests += 1
        if self._quick_rests >= self._patience:
            self.full = True

    def moved(self, ms: float) -> None:
        """Take note of a moving picture and how long its drawing took."""
        if not self.full:
            return
        self._frames += 1
        weight = 1.0 if self._frames == 1 else SMOOTHING
        self._mean_ms += weight * (ms - self._mean_ms)
        if self._frames >= FRAMES_BEFORE_LOWERING and self._mean_ms > LOWER_ABOVE_MS:
            self.full = False
            self._quick_rests = 0
            # The more often the full look was too much, the longer until it is tried again.
            self._patience = min(2 * self._patience, MOST_PATIENCE)
