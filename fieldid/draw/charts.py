"""Charts from plain numbers, for pages and print: shape tells, colour only helps.

Each is as wide as a small phone and grows with its column. What it shows stands beside
it as a table, so it is hidden from screen readers.
"""

from collections.abc import Sequence
from itertools import groupby

from fieldid.draw.nodes import Node, canvas, group, tag

WIDTH = 320.0
EDGE = 8.0
SMALL = 12.0
"""Height of the letters, in pixels on a phone of 320."""

BAND = 16.0
ROW = 36.0
AXIS = 20.0
FEW = 16
"""So many years have room for a figure each."""

HUNDREDTHS = 100
SIDE = 200.0


def spans(years: Sequence[int], rows: Sequence[tuple[str, Sequence[float]]]) -> Node:
    """When each thing was seen: a band a row, as high as its share of each year."""
    wide = (WIDTH - 2 * EDGE) / len(years)
    height = ROW * len(rows) + AXIS
    drawn = [
        *_year_lines(years, wide, height - AXIS),
        *(_band(i, name, shares, wide) for i, (name, shares) in enumerate(rows)),
        *_year_names(years, wide, height - 6),
    ]
    return _chart(*drawn, height=height)


def bars(rows: Sequence[tuple[str, float, str]]) -> Node:
    """Names with a bar each, of which the longest fills the width, and a figure."""
    longest = max((length for _, length, _ in rows), default=0.0) or 1.0
    drawn = [
        group(
            _words(EDGE, 14, name),
            _words(WIDTH - EDGE, 14, figure, anchor="end"),
            _rail(EDGE, 20, WIDTH - 2 * EDGE, 10),
            _solid(EDGE, 20, (WIDTH - 2 * EDGE) * length / longest, 10),
            transform=f"translate(0 {ROW * i:g})",
        )
        for i, (name, length, figure) in enumerate(rows)
    ]
    return _chart(*drawn, height=ROW * len(rows))


def matrix(names: Sequence[str], rows: Sequence[Sequence[float]]) -> Node:
    """A square of squares: each as large as its number, from 0 to 1, in its row."""
    left, top = 34.0, 20.0
    side = (WIDTH - left - EDGE) / len(names)
    drawn = [
        *(
            _words(left + (i + 0.5) * side, 14, name[-2:], anchor="middle")
            for i, name in enumerate(names)
        ),
        *(_matrix_row(i, names[i], row, side) for i, row in enumerate(rows)),
    ]
    return _chart(*drawn, height=top + side * len(names) + EDGE)


def curve(points: Sequence[tuple[str, float]]) -> Node:
    """Shares from 0 to 1, joined from left to right, each with its per cent above."""
    step = (WIDTH - 4 * EDGE) / max(len(points) - 1, 1)
    placed = [
        (2 * EDGE + i * step, 24 + (1 - share) * SIDE)
        for i, (_, share) in enumerate(points)
    ]
    path = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in placed)
    drawn = [
        *(_rail(EDGE, 24 + SIDE * k / 4, WIDTH - 2 * EDGE, 0.5) for k in range(5)),
        tag("path", class_="chart__curve", d=path, stroke_width=2.5),
        *(
            group(
                tag("circle", class_="chart__solid", cx=x, cy=y, r=4),
                _words(x, y - 9, f"{HUNDREDTHS * share:.0f}", anchor="middle"),
                _words(x, 24 + SIDE + 18, name, anchor="middle"),
            )
            for (name, share), (x, y) in zip(points, placed, strict=True)
        ),
    ]
    return _chart(*drawn, height=24 + SIDE + 26)


def _chart(*children: Node, height: float) -> Node:
    return _named_chart(canvas(*children, width=WIDTH, height=max(height, 1.0)))


def _named_chart(root: Node) -> Node:
    """The drawing with the class of charts beside its own."""
    name, attributes, children = root
    classed = tuple(
        (key, f"{value} chart" if key == "class" else value)
        for key, value in attributes
    )
    return name, classed, children


def _band(i: int, name: str, shares: Sequence[float], wide: float) -> Node:
    """One row: its name, and above a line the share of each year, upwards."""
    foot = 18 + BAND
    return group(
        _words(EDGE, 14, name),
        _rail(EDGE, foot, WIDTH - 2 * EDGE, 1),
        tag("path", class_="chart__solid", d=_steps(shares, wide, foot)),
        transform=f"translate(0 {ROW * i:g})",
    )


def _steps(shares: Sequence[float], wide: float, foot: float) -> str:
    """The outline of a band, one step for all years in which the share is the same."""
    path = f"M{EDGE:g} {foot:g}"
    for share, run in groupby(enumerate(shares), key=lambda pair: round(pair[1], 2)):
        last = max(y for y, _ in run)
        path += f"V{foot - BAND * share:g}H{EDGE + (last + 1) * wide:.1f}"
    return f"{path}V{foot:g}Z"


def _matrix_row(i: int, name: str, row: Sequence[float], side: float) -> Node:
    squares = []
    for k, share in enumerate(row):
        squares.append(_frame(34 + k * side, 20 + i * side, side))
        edge = (side - 2) * share**0.5
        inset = (side - edge) / 2
        if edge >= 1:
            squares.append(
                _solid(34 + k * side + inset, 20 + i * side + inset, edge, edge)
            )
    return group(_words(30, 20 + (i + 0.5) * side + 4, name, anchor="end"), *squares)


def _year_lines(years: Sequence[int], wide: float, height: float) -> list[Node]:
    return [
        _rail(EDGE + y * wide, 0, 0.5, height)
        for y in range(len(years) + 1)
        if y in (0, len(years)) or _named(years, y)
    ]


def _year_names(years: Sequence[int], wide: float, y: float) -> list[Node]:
    few = len(years) <= FEW
    return [
        _words(
            EDGE + (i + 0.5 * few) * wide,
            y,
            f"{year % 100:02}" if few else str(year),
            anchor="middle" if few or 0 < i < len(years) - 5 else "start",
        )
        for i, year in enumerate(years)
        if few or _named(years, i)
    ]


def _named(years: Sequence[int], i: int) -> bool:
    """Whether the axis names the year at this place."""
    if len(years) <= FEW:
        return True
    return i < len(years) and years[i] % _step(len(years)) == 0


def _step(many: int) -> int:
    """Years from one name to the next, where there is no room for all."""
    return next(step for step in (5, 10, 20, 50, 100, 1000) if many / step <= 7)


def _words(x: float, y: float, text: str, anchor: str = "start") -> Node:
    return tag(
        "text",
        text,
        class_="chart__words",
        x=x,
        y=y,
        font_size=SMALL,
        text_anchor=anchor,
    )


def _solid(x: float, y: float, width: float, height: float) -> Node:
    return tag("rect", class_="chart__solid", x=x, y=y, width=width, height=height)


def _rail(x: float, y: float, width: float, height: float) -> Node:
    return tag("rect", class_="chart__rail", x=x, y=y, width=width, height=height)


def _frame(x: float, y: float, side: float) -> Node:
    return tag(
        "rect",
        class_="chart__frame",
        x=x,
        y=y,
        width=side,
        height=side,
        stroke_width=0.5,
    )
