"""Charts from plain numbers, for pages and print: shape tells, colour only helps.

Bars and bands are without letters: they stretch in the cell of a table, whose words
stay text of the page. The matrix and the curve have letters, large enough for a small
phone. Figures stand beside all of them, so they are hidden from screen readers.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import groupby

from fieldid.draw.nodes import Node, canvas, group, tag, written

WIDTH = 320.0
EDGE = 8.0
SMALL = 15.0
"""Height of the letters, of which a phone of 320 pixels shows nine tenths."""
LETTER = 9.0
"""The width of a figure at that height."""

BAR = 100.0
"""The length of the longest bar."""
FEW = 16
"""So many years have a line each."""

LEFT, TOP = 44.0, 22.0
"""Where the squares of a matrix begin."""
HUNDREDTHS = 100
SIDE = 200.0


def bar(length: float) -> Node:
    """A bar as long as its number, from 0 to 1."""
    return _strip("bar", BAR, _path(f"M0 0H{written(BAR * length)}V1H0"))


def band(shares: Sequence[float]) -> Node:
    """When a thing was seen: a band as high as its share of each year, above `lines`
    of the same years.
    """
    lines = tag("use", href=f"#{LINES}")
    return _strip("band", len(shares), lines, _path(_steps(shares)))


LINES = "lines"
"""What the lines of the bands of a page are called, which stand on it once."""


def lines(years: Sequence[int]) -> Node:
    """The lines between the years of a band, or of many years at round ones."""
    at = [y for y in range(len(years) + 1) if _lined(years, y)]
    drawn = "".join(f"M{y} 0V1" for y in at)
    return tag("path", id=LINES, class_="band__lines", d=drawn)


def apart(years: Sequence[int]) -> int:
    """Years from one line of a band to the next."""
    if len(years) <= FEW:
        return 1
    return next(step for step in (5, 10, 20, 50, 100, 1000) if len(years) / step <= 7)


def matrix(names: Sequence[str], rows: Sequence[Sequence[float]]) -> Node:
    """A square of squares: each as large as its number, from 0 to 1, in its row."""
    side = (WIDTH - LEFT - EDGE) / len(names)
    every = math.ceil(2.2 * LETTER / side)
    drawn = [
        tag("path", class_="chart__frame", d=_frame(len(names), side)),
        tag("path", class_="chart__solid", d="".join(_squares(rows, side))),
        *(
            _words(LEFT + (i + 0.5) * side, 15, name[-2:], anchor="middle")
            for i, name in enumerate(names)
            if i % every == 0
        ),
        *(
            _words(LEFT - 4, TOP + (i + 0.5) * side + 5, name, anchor="end")
            for i, name in enumerate(names)
            if i % every == 0
        ),
    ]
    return _chart(*drawn, height=TOP + side * len(names) + EDGE)


def curve(points: Sequence[tuple[str, float]]) -> Node:
    """Shares from 0 to 1, joined from left to right, each with its per cent above."""
    step = (WIDTH - 4 * EDGE) / max(len(points) - 1, 1)
    placed = [
        (2 * EDGE + i * step, 26 + (1 - share) * SIDE)
        for i, (_, share) in enumerate(points)
    ]
    path = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in placed)
    rails = "".join(
        f"M{EDGE:g} {26 + SIDE * k / 4:g}H{WIDTH - EDGE:g}" for k in range(5)
    )
    drawn = [
        tag("path", class_="chart__frame", d=rails),
        tag("path", class_="chart__curve", d=path, stroke_width=2.5),
        *(
            group(
                tag("circle", class_="chart__solid", cx=x, cy=y, r=4),
                _words(x, y - 9, _whole(share), anchor="middle"),
                _words(x, 26 + SIDE + 20, name, anchor="middle"),
            )
            for (name, share), (x, y) in zip(points, placed, strict=True)
        ),
    ]
    return _chart(*drawn, height=26 + SIDE + 28)


def _whole(share: float) -> str:
    """A half is rounded up, as in the figures beside the curve.

    >>> _whole(0.125), _whole(0.995)
    ('13', '100')
    """
    return f"{math.floor(HUNDREDTHS * share + 0.5)}"


def _strip(name: str, length: float, *children: Node) -> Node:
    """A drawing without letters that stretches to its room."""
    return tag(
        "svg",
        *children,
        class_=name,
        viewBox=f"0 0 {written(length)} 1",
        preserveAspectRatio="none",
        aria_hidden="true",
    )


def _path(d: str) -> Node:
    return tag("path", d=d)


def _steps(shares: Sequence[float]) -> str:
    """The outline of a band, one step for all years in which the share is the same."""
    path = "M0 1"
    for share, run in groupby(enumerate(shares), key=lambda pair: round(pair[1], 2)):
        last = max(y for y, _ in run)
        path += f"V{written(1 - share)}H{last + 1}"
    return f"{path}V1"


def _lined(years: Sequence[int], y: int) -> bool:
    if y in (0, len(years)):
        return True
    return years[y] % apart(years) == 0


def _frame(many: int, side: float) -> str:
    """All lines of a matrix."""
    whole = side * many
    down = (f"M{LEFT + i * side:.1f} {TOP:g}v{whole:.1f}" for i in range(many + 1))
    across = (f"M{LEFT:g} {TOP + i * side:.1f}h{whole:.1f}" for i in range(many + 1))
    return "".join((*down, *across))


def _squares(rows: Sequence[Sequence[float]], side: float) -> Iterator[str]:
    """Each as large by area as its number, amid its place."""
    for i, row in enumerate(rows):
        for k, share in enumerate(row):
            edge = (side - 2) * share**0.5
            if edge >= 1:
                x, y = LEFT + (k + 0.5) * side - edge / 2, TOP + (i + 0.5) * side
                square = f"h{edge:.2f}v{edge:.2f}h-{edge:.2f}z"
                yield f"M{x:.2f} {y - edge / 2:.2f}{square}"


def _chart(*children: Node, height: float) -> Node:
    name, attributes, drawn = canvas(*children, width=WIDTH, height=height)
    classed = tuple(
        (key, "chart" if key == "class" else value)
        for key, value in attributes
        if key != "focusable"
    )
    return name, classed, drawn


def _words(x: float, y: float, text: str, anchor: str) -> Node:
    return tag("text", text, x=x, y=y, font_size=SMALL, text_anchor=anchor)
