"""The head of an iron: its outline, the scoring of its face, the numeral on its sole."""

from collections.abc import Iterator
from typing import Annotated

from fieldid.draw.letters import word
from fieldid.draw.nodes import FINE, LINE, Node, body, canvas, group, line, solid, tag, tone
from fieldid.draw.params import OneOf, Stamped

_NECK = "Q58 52 62 44L76.5 19L86 24.6L68.5 55.5Q65.5 61 66 66"
_HEEL = "C66.5 73 58 77 48 77.6"

TOES: dict[str, tuple[str, str]] = {
    "round": ("M19 20", "C38 79.5 28 78.6 20 76C8 70 3 55 5 41C6.5 29 11 20 19 20Z"),
    "square": ("M13 19", "C38 79.5 26 79 18 77C11 75 8.5 69 8 61L6 26Q5.6 19 13 19Z"),
    "peaked": ("M22 7", "C38 79.5 28 78.6 21 75C11 68 7 52 9 36C10 24 15 7 22 7Z"),
    "low": ("M17 36", "C38 79.5 24 79 15 76C4 71 2 60 4 50C6 41 10 36 17 36Z"),
    "clipped": ("M30 27", "C38 79.5 28 78.6 20 76C10 71 5 60 6 48L12 36Q18 24 30 27Z"),
}
"""Toe -> where the top line starts, and the sole and toe that close the outline."""

MOUTH = (81.25, 21.8)
"""The middle of the hosel's mouth, where the collar begins."""

SCORINGS = ("plain", "lines", "dotted", "framed", "hatched", "lines and dots")
NUMERALS = ("plain", "serif", "boxed", "ringed", "slanted", "roman", "underlined")
ROMAN = ("", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX")


def outline(toe: str) -> str:
    """The path of a head that faces us, toe to the left, hosel up to the right.

    >>> outline("round").startswith("M19 20L51 47Q58 52")
    True
    """
    start, rest = TOES[toe]
    return f"{start}L51 47{_NECK}{_HEEL}{rest}"


def lying(mouth: tuple[float, float], *, scale: float) -> Node:
    """The head of a club that lies level: hosel mouth at `mouth`, toe downwards."""
    x, y = mouth
    place = f"translate({x:g} {y:g}) scale({scale:g} {-scale:g})"
    turn = f"rotate(60) translate({-MOUTH[0]:g} {-MOUTH[1]:g})"
    return group(
        body(outline("round")), transform=f"{place} {turn}", stroke_width=LINE / scale
    )


def toe(*, line_of: Annotated[str, OneOf(tuple(TOES))]) -> Node:
    """The head as a silhouette, to tell the line of its toe."""
    return canvas(
        tone(outline(line_of)),
        line(outline(line_of)),
        line(f"M48 77.6{TOES[line_of][1].removesuffix('Z')}", stroke_width=4),
    )


def face(*, scoring: Annotated[str, OneOf(SCORINGS)]) -> Node:
    """The head face on, with its scoring."""
    return canvas(body(outline("round")), *scored(scoring))


def numeral(
    *,
    style: Annotated[str, OneOf(NUMERALS)],
    figure: Annotated[str, Stamped(1)] = "7",
) -> Node:
    """The sole from below, heel to the right, with the club's number."""
    return canvas(
        body("M-4 26Q44 8 92 30V66Q44 84 -4 62Z"),
        tone("M-4 58Q44 79 92 61V66Q44 84 -4 62Z"),
        *_figure(style, figure),
    )


def scored(scoring: str) -> tuple[Node, ...]:
    """The marks on a face, in the units of the head's outline."""
    rows = tuple(_rows())
    lines = tuple(line(f"M{left} {y}H{right}", stroke_width=FINE) for y, left, right in rows)
    dots = tuple(_dots(*row) for row in rows)
    frame = line("M19 31V70M53 53V70", stroke_width=2.5)
    return {
        "plain": (),
        "lines": lines,
        "dotted": dots,
        "framed": (*lines, frame),
        "hatched": (_hatching(),),
        "lines and dots": tuple(
            made for pair in zip(lines[::2], dots[1::2], strict=False) for made in pair
        ),
    }[scoring]


def _rows() -> Iterator[tuple[float, float, float]]:
    """Each scoring line's height, and where it starts and ends under the top line."""
    for at in range(6):
        y = 36 + 6.8 * at
        yield y, 19, min(53, 22 + (y - 30) * 1.5)


def _dots(y: float, left: float, right: float) -> Node:
    count = int((right - left) // 6.5)
    marks = "".join(f"M{left + 1 + 6.5 * at:.4g} {y:.4g}h0.1" for at in range(count + 1))
    return line(marks, stroke_width=3.4)


def _hatching() -> Node:
    """Crossed strokes inside the scored field."""
    rising = "M19 46L29 40M19 56L38 44M19 66L46 49M25 70L53 53M38 70L53 61"
    falling = "M19 36L53 62M19 46L50 70M19 56L37 70M19 66L24 70M36 43L53 56"
    return line(rising + falling, stroke_width=FINE)


def _figure(style: str, figure: str) -> tuple[Node, ...]:
    middle = (44, 46)
    plain = word(figure, middle=middle, height=26, weight=3.5)
    small = word(figure, middle=middle, height=18, weight=3)
    return {
        "plain": (plain,),
        "serif": (_serif(figure),),
        "boxed": (small, line("M30 32H58V60H30Z", stroke_width=LINE)),
        "ringed": (small, line("M44 30A16 16 0 1 1 43.9 30Z", stroke_width=LINE)),
        "slanted": (word(figure, middle=middle, height=26, weight=3.5, slant=18),),
        "roman": (_roman(figure),),
        "underlined": (
            word(figure, middle=(44, 42), height=22, weight=3.5),
            line("M32 61H56", stroke_width=3),
        ),
    }[style]


def _serif(figure: str) -> Node:
    return tag(
        "text",
        figure,
        class_="drawing__serif",
        x=44,
        y=58,
        font_size=37,
        text_anchor="middle",
    )


def _roman(figure: str) -> Node:
    text = ROMAN[int(figure)] if figure.isdigit() else figure
    bars = word(text, middle=(44, 46), height=20, weight=3)
    half = len(text) * 10
    return group(bars, solid(f"M{44 - half} 30h{2 * half}v2.5h-{2 * half}Z"))
