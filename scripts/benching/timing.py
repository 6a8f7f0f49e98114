"""Timing calls on a machine that may have other work."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from typing import Any


def times(action: Callable[[], Any], count: int) -> list[float]:
    """Milliseconds of each of ``count`` runs, after one that does not count."""
    action()
    found = []
    for _ in range(count):
        started = time.perf_counter()
        action()
        found.append(1000 * (time.perf_counter() - started))
    return found


def median(action: Callable[[], Any], count: int) -> float:
    """Return the median of ``times``, ms."""
    return statistics.median(times(action, count))


def spent(action: Callable[[], Any], count: int) -> float:
    """Return the median processor time of ``count`` runs, ms, over all threads.

    Other work on the machine lengthens the wait, hardly the work itself.
    """
    action()
    found = []
    for _ in range(count):
        started = time.process_time()
        action()
        found.append(1000 * (time.process_time() - started))
    return statistics.median(found)
