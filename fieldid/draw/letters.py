"""The works' stamps: capitals and figures as strokes, so that no font is needed."""

import re
from collections.abc import Sequence
from itertools import cycle

from fieldid.draw.nodes import FINE, Node, line, written

WIDE, HIGH, GAP = 4.0, 6.0, 1.6
"""A letter's box and the space after it, in the units of its strokes."""

LETTERS: dict[str, str] = {
    " ": "",
    "A": "M0 6L2 0L4 6M0.8 4H3.2",
    "B": "M0 6V0H2.2Q3.6 0 3.6 1.4T2.2 2.8H0M2.2 2.8Q4 2.8 4 4.4T2.2 6H0",
    "C": "M4 1.2Q3.5 0 2.1 0Q0 0 0 3T2.1 6Q3.5 6 4 4.8",
    "D": "M0 0V6H1.6Q4 6 4 3T1.6 0Z",
    "E": "M4 0H0V6H4M0 2.8H3",
    "F": "M4 0H0V6M0 2.9H3",
    "G": "M3.9 1.2Q3.4 0 2.1 0Q0 0 0 3T2.1 6Q4 6 4 3.3H2.4",
    "H": "M0 0V6M4 0V6M0 3H4",
    "I": "M2 0V6M1 0H3M1 6H3",
    "J": "M3.4 0V4.2Q3.4 6 1.8 6Q0.4 6 0.2 4.6",
    "K": "M0 0V6M4 0L0 3.6M1.4 2.6L4 6",
    "L": "M0 0V6H4",
    "M": "M0 6V0L2 3.4L4 0V6",
    "N": "M0 6V0L4 6V0",
    "O": "M2 0Q4 0 4 3T2 6Q0 6 0 3T2 0Z",
    "P": "M0 6V0H2.2Q4 0 4 1.6T2.2 3.2H0",
    "Q": "M2 0Q4 0 4 3T2 6Q0 6 0 3T2 0ZM2.4 4.4L4.2 6.4",
    "R": "M0 6V0H2.2Q4 0 4 1.6T2.2 3.2H0M2 3.2L4 6",
    "S": "M3.8 1Q3.2 0 2 0Q0.2 0 0.2 1.5Q0.2 2.7 2 3T3.9 4.5Q3.9 6 2 6Q0.6 6 0.1 4.9",
    "T": "M0 0H4M2 0V6",
    "U": "M0 0V4Q0 6 2 6T4 4V0",
    "V": "M0 0L2 6L4 0",
    "W": "M0 0L0.9 6L2 2.4L3.1 6L4 0",
    "X": "M0 0L4 6M4 0L0 6",
    "Y": "M0 0L2 3L4 0M2 3V6",
    "Z": "M0 0H4L0 6H4",
    "0": "M2 0Q4 0 4 3T2 6Q0 6 0 3T2 0Z",
    "1": "M0.8 1.4L2.2 0V6M1 6H3.4",
    "2": "M0.2 1.5Q0.4 0 2 0T3.8 1.6Q3.8 2.8 0 6H4",
    "3": "M0.2 0H3.8L1.8 2.4Q4 2.4 4 4.2T2 6Q0.5 6 0 4.8",
    "4": "M2.8 6V0L0 4.3H4",
    "5": "M3.6 0H0.6L0.3 2.7Q1 2.2 2 2.2Q4 2.2 4 4.1T1.9 6Q0.5 6 0 5",
    "6": "M3.5 0.6Q3 0 2.1 0Q0 0 0 3.6Q0 6 2 6T4 4.2T2 2.5T0.1 4",
    "7": "M0 0H4L1.6 6",
    "8": "M2 0Q3.6 0 3.6 1.4T2 2.8T0.4 1.4T2 0ZM2 2.8Q4 2.8 4 4.4T2 6T0 4.4T2 2.8Z",
    "9": "M0.5 5.4Q1 6 1.9 6Q4 6 4 2.4Q4 0 2 0T0 1.8T2 3.5T3.9 2",
    "&": "M4 6L0.9 1.7Q0.7 0 1.9 0T2.9 1.5Q2.6 2.3 1 3T0 4.6Q0.2 6 1.6 6Q3.2 6 3.9 3.4",
    "-": "M0.6 3H3.4",
    ".": "M2 5.9V6",
    "?": "M0.4 1.4Q0.6 0 2 0T3.6 1.6Q3.6 2.6 2 3.2V4.2M2 5.9V6",
}

WORN = "#"
"""Stands for a letter that is there and tells nothing: hatched, as what is worn."""

STROKES = LETTERS | {WORN: "M0 2.4L1.6 0M0 5.6L3.7 0.1M1.4 6L4 2.1M3.4 6L4 5.1"}


def breadth(text: str, height: float) -> float:
    """How wide the text comes out at that height.

    >>> breadth("AB", 6)
    9.6
    """
    return (len(text) * (WIDE + GAP) - GAP) * height / HIGH


def word(
    text: str,
    *,
    middle: tuple[float, float],
    height: float,
    weight: float = FINE,
    slant: float = 0,
) -> Node:
    """The text in stamped letters round its middle; `slant` in degrees."""
    x, y = middle
    scale = height / HIGH
    left = -breadth(text, HIGH) / 2
    strokes = (
        moved(STROKES[letter], left + at * (WIDE + GAP), -HIGH / 2)
        for at, letter in enumerate(text)
    )
    lean = f" skewX({-slant:g})" if slant else ""
    place = f"translate({x:.4g} {y:.4g}) scale({scale:.4g}){lean}"
    # One path a word: each further node costs a phone time to lay out.
    return line("".join(strokes), transform=place, stroke_width=weight / scale)


def moved(strokes: str, across: float, down: float) -> str:
    """The strokes, of absolute M, L, H, V, Q, T and Z, moved by so much.

    >>> moved("M0 0H4M2 0V6", 10, -3)
    'M10 -3H14M12 -3V3'
    """
    ways = {"H": (across,), "V": (down,)}
    return "".join(
        command + _moved(figures, ways.get(command, (across, down)))
        for command, figures in re.findall(r"([A-Z])([^A-Z]*)", strokes)
    )


def _moved(figures: str, ways: Sequence[float]) -> str:
    pairs = zip(figures.split(), cycle(ways), strict=False)
    return " ".join(written(float(figure) + way) for figure, way in pairs)
