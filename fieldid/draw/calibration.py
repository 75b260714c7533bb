"""What was told against what came true: on the line where both are the same."""

from collections.abc import Sequence

from fieldid.draw.nodes import Node, tag, written

SIDE = 240.0
LEFT, TOP = 52.0, 12.0
"""Where the square begins; the figures stand left of it and below."""
QUARTERS = (0.0, 0.25, 0.5, 0.75, 1.0)
LETTERS = 15.0
RADIUS = 4.0

Point = tuple[float, float, float, float]
"""What was told, what came true, and the ends of its interval, each from 0 to 1."""


def calibration(points: Sequence[Point]) -> Node:
    """A point each, with its interval as an upright line.

    Figures stand beside it, so it is hidden from screen readers.
    """
    width, height = LEFT + SIDE + 16, TOP + SIDE + 32
    return tag(
        "svg",
        tag("path", class_="chart__frame", d=_grid()),
        tag("path", class_="chart__curve", d=SAME, stroke_dasharray="5 5"),
        *(node for point in points for node in _point(point)),
        *(node for share in QUARTERS for node in _figures(share)),
        class_="chart",
        viewBox=f"0 0 {written(width)} {written(height)}",
        aria_hidden="true",
    )


def _grid() -> str:
    across = (_line((0.0, share), (1.0, share)) for share in QUARTERS)
    up = (_line((share, 0.0), (share, 1.0)) for share in QUARTERS)
    return "".join((*across, *up))


def _point(point: Point) -> tuple[Node, Node]:
    told, true, low, high = point
    interval = _line((told, low), (told, high))
    return (
        tag("path", class_="chart__curve", d=interval, stroke_width=2),
        tag("circle", class_="chart__solid", cx=_x(told), cy=_y(true), r=RADIUS),
    )


def _figures(share: float) -> tuple[Node, Node]:
    """A figure below the square, and one on its left."""
    text = f"{100 * share:.0f}"
    return (
        _words(_x(share), TOP + SIDE + 20, text, "middle"),
        _words(LEFT - 6, _y(share) + 5, text, "end"),
    )


def _line(start: tuple[float, float], end: tuple[float, float]) -> str:
    (a, b), (c, d) = start, end
    return f"M{written(_x(a))} {written(_y(b))}L{written(_x(c))} {written(_y(d))}"


def _x(share: float) -> float:
    return LEFT + SIDE * share


def _y(share: float) -> float:
    return TOP + SIDE * (1 - share)


def _words(x: float, y: float, text: str, anchor: str) -> Node:
    return tag("text", text, x=x, y=y, font_size=LETTERS, text_anchor=anchor)


SAME = _line((0.0, 0.0), (1.0, 1.0))
"""Where what was told and what came true are the same."""
