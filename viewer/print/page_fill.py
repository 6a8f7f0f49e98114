"""Which steps share a page, and how high their pictures can be so that the page is full."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache


def filled_pages(
    fixed: Sequence[float], first_room: float, room: float, least: float, most: float
) -> list[list[float]]:
    """Return the heights of pictures, page by page, in the order of their blocks.

    Every block holds a picture and something of a fixed height beside it. Blocks keep their
    order and are never parted. As few pages as possible are taken, and of the ways to do so
    the one that leaves the least empty.

    Parameters
    ----------
    fixed : sequence of float
        Height of each block without its picture.
    first_room, room : float
        Height of the page that is begun already (0 for none), and of the others.
    least, most : float
        Bounds for the height of a picture.

    Returns
    -------
    list of list of float
        One list a page; the first may be empty when nothing fits on what is left of its page.
        A block too high for a page gets the least picture and a page of its own.
    """
    count = len(fixed)

    def height(start: int, end: int, page: float) -> float:
        """Height of the pictures of a page that holds these blocks; less than ``least``: too low."""
        return min(most, (page - sum(fixed[start:end])) / (end - start))

    @cache
    def best(start: int, first: bool) -> tuple[int, float, tuple[int, ...]]:
        """(pages, emptiness, ends of pages) for the blocks from ``start`` on."""
        if start == count:
            return (0, 0.0, ())
        page = first_room if first else room
        ways = []
        if first:
            pages, empty, ends = best(start, False)
            ways.append((pages, empty + first_room**2, (start, *ends)))
        for end in range(start + 1, count + 1):
            tall = height(start, end, page)
            if tall < least and (first or end > start + 1):
                break
            pages, empty, ends = best(end, False)
            left = max(page - sum(fixed[start:end]) - max(tall, least) * (end - start), 0.0)
            # The last page may end early.
            left = 0.0 if end == count else left
            ways.append((pages + (not first), empty + left**2, (end, *ends)))
        return min(ways)

    _, _, ends = best(0, True)
    answer, start = [], 0
    for number, end in enumerate(ends):
        page = first_room if number == 0 else room
        tall = max(height(start, end, page), least) if end > start else 0.0
        answer.append([tall] * (end - start))
        start = end
    return answer
