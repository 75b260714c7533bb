"""The head of an iron: its outline, its face's scoring, the numeral on its sole."""

from collections.abc import Iterator
from typing import Annotated

from fieldid.draw.letters import word
from fieldid.draw.nodes import FINE, LINE, Node, body, canvas, group, line, tag, tone
from fieldid.draw.params import NUMBER, OneOf, Stamped

_NECK = "L50 49Q57 52.5 61.5 45L76.5 19L86 24.6L68.5 55.5Q66 60 67 65"
_HEEL = "C67.5 72 59 77 48 78"

TOES: dict[str, tuple[str, str, str]] = {
    "round": ("19 29", "20 76.5", "C9 72 3 60 4.5 48C6 36 11 28 19 29Z"),
    "square": ("13 27", "18 77.5", "C11 76.5 9 72 8.5 65L6 34Q5.6 27 13 27Z"),
    "peaked": ("23 16", "21 76", "C10 70 7 57 8.5 44C9.5 32 15 12 23 16Z"),
    "low": ("17 41", "17 77", "C5 74 1 62 4 53C6.5 45 10 39 17 41Z"),
    "clipped": ("31 34", "20 76.5", "C9 72 3 62 5 53L13 39Q19 30 31 34Z"),
}
"""Toe -> where the top line starts, where the sole ends, and the toe between them."""

MOUTH = (81.25, 21.8)
"""The middle of the hosel's mouth, where the collar begins."""

SCORINGS = (
    *("plain", "lines", "dotted", "framed", "crosses", "lines and dots"),
    "slots",
)
NUMERALS = ("plain", "serif", "boxed", "ringed", "slanted", "roman", "underlined")
ROMAN = ("", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX")


def outline(toe: str) -> str:
    """The path of a head that faces us, toe to the left, hosel up to the right.

    >>> outline("round").startswith("M19 29L50 49Q57")
    True
    """
    top, foot, end = TOES[toe]
    return f"M{top}{_NECK}{_HEEL}C38 79 28 79 {foot}{end}"


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
    _, foot, end = TOES[line_of]
    return canvas(
        tone(outline(line_of)),
        line(outline(line_of)),
        line(f"M{foot}{end.removesuffix('Z')}", stroke_width=4.5),
    )


def face(*, scoring: Annotated[str, OneOf(SCORINGS)]) -> Node:
    """The head face on, with its scoring."""
    return canvas(body(outline("round")), *scored(scoring))


def numeral(
    *,
    style: Annotated[str, OneOf(NUMERALS)],
    figure: Annotated[str, Stamped(1), NUMBER] = "7",
) -> Node:
    """The sole from below, heel to the right, with the club's number."""
    return canvas(
        body("M-4 26Q44 8 92 30V66Q44 84 -4 62Z"),
        tone("M-4 58Q44 79 92 61V66Q44 84 -4 62Z"),
        *_figure(style, figure),
    )


def scored(scoring: str, *, weight: float = FINE) -> tuple[Node, ...]:
    """The marks on a face, in the units of the head's outline."""
    rows = tuple(_rows())
    lines = tuple(_level(row, weight) for row in rows)
    dots = tuple(_dots(*row) for row in rows)
    frame = line("M19 37V71M53 54V71", stroke_width=2.5)
    return {
        "plain": (),
        "lines": lines,
        "dotted": dots,
        "framed": (*lines, frame),
        "crosses": tuple(_crosses(*row) for row in rows[::2]),
        "lines and dots": tuple(
            made for pair in zip(lines[::2], dots[1::2], strict=False) for made in pair
        ),
        "slots": tuple(_level(row, 3 * weight) for row in rows[::2]),
    }[scoring]


def _rows() -> Iterator[tuple[float, float, float]]:
    """Each scoring line's height, and where it starts and ends under the top line."""
    for at in range(6):
        y = 40 + 6.2 * at
        yield y, 19, min(53, 22 + (y - 35) * 1.7)


def _level(row: tuple[float, float, float], weight: float) -> Node:
    y, left, right = row
    return line(f"M{left} {y:.4g}H{right:.4g}", stroke_width=weight)


def _dots(y: float, left: float, right: float) -> Node:
    count = int((right - left) // 6.4)
    marks = "".join(
        f"M{left + 1 + 6.4 * at:.4g} {y:.4g}h0.1" for at in range(count + 1)
    )
    return line(marks, stroke_width=3.4)


def _crosses(y: float, left: float, right: float) -> Node:
    count = int((right - left) // 8.5)
    marks = (
        f"M{left + 8.5 * at:.4g} {y - 2:.4g}l5 5m-5 0l5 -5" for at in range(count + 1)
    )
    return line("".join(marks), stroke_width=FINE)


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
    half = len(text) * 9 + 3
    return group(bars, line(f"M{44 - half} 35h{2 * half}M{44 - half} 57h{2 * half}"))
