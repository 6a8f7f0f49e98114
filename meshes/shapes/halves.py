"""Long kernels cut in two, one half for each of two cores.

Kernels let go of the interpreter's lock, so that threads do run side by side.
What a half computes depends on its rows alone: the outcome is the same on any
machine and for any number of cores.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from typing import TypeVar

T = TypeVar("T")


@cache
def _helper(process: int) -> ThreadPoolExecutor:
    """One thread beside the calling one; a forked process needs its own."""
    return ThreadPoolExecutor(1, thread_name_prefix="half")


def in_halves(work: Callable[[int, int], T], count: int, least: int = 2000) -> list[T]:
    """Do rows ``0 .. count`` in two halves at once.

    Parameters
    ----------
    work : callable (first, last) -> T
        Does rows first up to last (exclusive); spends its time in a kernel.
    count : int
        Number of rows.
    least : int
        With fewer rows than this, all are done in one go.

    Returns
    -------
    list of T
        One outcome, or two in order.
    """
    if count < least:
        return [work(0, count)]
    middle = count // 2
    second = _helper(os.getpid()).submit(work, middle, count)
    return [work(0, middle), second.result()]
