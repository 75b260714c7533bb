"""The grip: its pattern and colour, and the cap on its end."""

from typing import Annotated

from fieldid.draw.devices import DEVICES, device
from fieldid.draw.nodes import (
    FINE,
    Node,
    black,
    body,
    canvas,
    line,
    printed,
    solid,
    tag,
)
from fieldid.draw.params import COLOUR, OneOf
from fieldid.draw.swatches import coloured

PATTERNS = ("smooth", "ribbed", "diamond", "wrapped", "dimpled", "arrows")
OUTLINE = "M24 6Q44 -2 64 6L60 90H28Z"


def _lattice() -> str:
    """Crossed strokes from edge to edge; the grip narrows by 4 a side on its way."""
    strokes = ["M44 7L63 21M44 7L25 21"]
    for y in range(10, 90, 14):
        left, right = 24 + y / 21, 64 - y / 21
        strokes.append(f"M{left:.4g} {y}L{right - 1:.4g} {y + 28}")
        strokes.append(f"M{right:.4g} {y}L{left + 1:.4g} {y + 28}")
    return "".join(strokes)


MARKS: dict[str, str] = {
    "smooth": "M34 10L36 88",
    "ribbed": "M31 8L33.5 88M37.5 6L38.8 88M44 5V88M50.5 6L49.2 88M57 8L54.5 88",
    "diamond": _lattice(),
    "wrapped": "M24 22L63 8M25 40L63 26M26 58L62 44M27 76L61 62M36 88L60 80",
    "dimpled": "".join(
        f"M{x + (row % 2) * 4.5} {14 + 9 * row}h0.1"
        for row in range(9)
        for x in (32.2, 41.2, 50.2)
    ),
    "arrows": "M30 26L44 14L58 26M30 44L44 32L58 44M30 62L44 50L58 62"
    "M31 80L44 68L57 80",
}


def grip(
    *,
    pattern: Annotated[str, OneOf(PATTERNS)] = "smooth",
    colour: Annotated[str, OneOf((*COLOUR.words, "none"))] = "none",
) -> Node:
    """The end of the grip, cap up; a colour or a pattern, for both at once confuse."""
    width = 4.2 if pattern == "dimpled" else FINE
    ground = body(OUTLINE) if colour == "none" else coloured(OUTLINE, colour)
    marks = [line(MARKS[pattern], stroke_width=width)] if colour == "none" else []
    return canvas(ground, *marks, black("M24 6Q44 -2 64 6L63.8 10Q44 2 24.2 10Z"))


def cap(
    *,
    colour: Annotated[str, COLOUR] = "black",
    device: Annotated[str, OneOf(DEVICES)] = "none",
    hole: Annotated[str, OneOf(("none", "vent"))] = "none",
) -> Node:
    """The end of the grip seen from its end: a coloured ring round an emblem."""
    return canvas(coloured("M44 4A40 40 0 1 1 43.9 4Z", colour), _centre(device, hole))


def _centre(emblem: str, hole: str) -> Node:
    if hole == "vent":
        return printed(_disc(14), solid("M44 36A8 8 0 1 1 43.9 36Z"))
    if emblem == "none":
        return tag("circle", class_="drawing__groove", cx=44, cy=44, r=29)
    return printed(_disc(26), device(emblem, middle=(44, 44), size=34))


def _disc(radius: float) -> Node:
    """A plain field, so that no pattern eats what stands on it."""
    return tag("circle", class_="drawing__plain", cx=44, cy=44, r=radius)
