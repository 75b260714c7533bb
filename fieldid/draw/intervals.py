"""A count beside a share: interval, count and share on one line from 0 to 1.

Without letters, so that it stretches in the cell of a table, whose words stay text.
"""

from fieldid.draw.nodes import Node, tag, written

LENGTH = 100.0
TALL = 1.0
"""The height; the interval's bar takes the middle third of it."""


def interval(low: float, high: float, *, count: float, share: float) -> Node:
    """The interval as a bar, the count as a short mark on it, the share as a tall one.

    >>> interval(0.25, 0.75, count=0.5, share=0.1)[2][1][1][1][1]
    'M25 0.33H75V0.67H25Z'
    """
    return tag(
        "svg",
        _path("rail", f"M0 0.5H{written(LENGTH)}"),
        _path("range", f"M{_at(low)} 0.33H{_at(high)}V0.67H{_at(low)}Z"),
        _path("count", f"M{_at(count)} 0.33V0.67"),
        _path("share", f"M{_at(share)} 0V{written(TALL)}"),
        class_="interval",
        viewBox=f"0 0 {written(LENGTH)} {written(TALL)}",
        preserveAspectRatio="none",
        aria_hidden="true",
    )


def _path(name: str, d: str) -> Node:
    return tag("path", class_=f"interval__{name}", d=d)


def _at(share: float) -> str:
    return written(LENGTH * share)
