"""The grip: its pattern and colour, and the cap on its end."""

from typing import Annotated

from fieldid.draw.devices import DEVICES, device
from fieldid.draw.nodes import FINE, Node, body, canvas, line, solid, tag
from fieldid.draw.params import COLOUR, OneOf
from fieldid.draw.swatches import coloured

PATTERNS = ("smooth", "ribbed", "diamond", "wrapped", "dimpled", "arrows")
OUTLINE = "M24 6Q44 -2 64 6L60 90H28Z"

MARKS: dict[str, str] = {
    "smooth": "M34 10L36 88",
    "ribbed": "M31 8L33.5 88M37.5 6L38.8 88M44 5V88M50.5 6L49.2 88M57 8L54.5 88",
    "diamond": "M25 20L44 6L63 20M25.5 40L44 24L62.5 40M26 60L44 44L62 60M27 80L44 64L61 80"
    "M25 20L44 34L63 20M25.5 40L44 54L62.5 40M26 60L44 74L62 60M27 80L38 88M61 80L50 88",
    "wrapped": "M24 22L63 8M25 40L63 26M26 58L62 44M27 76L61 62M36 88L60 80",
    "dimpled": "".join(
        f"M{x + (row % 2) * 4.5} {14 + 9 * row}h0.1" for row in range(9) for x in (31, 40, 49)
    ),
    "arrows": "M30 26L44 14L58 26M30 44L44 32L58 44M30 62L44 50L58 62M31 80L44 68L57 80",
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
    return canvas(ground, *marks, solid("M24 6Q44 -2 64 6L63.8 10Q44 2 24.2 10Z"))


def cap(
    *,
    colour: Annotated[str, COLOUR] = "black",
    device: Annotated[str, OneOf(DEVICES)] = "none",
    hole: Annotated[str, OneOf(("none", "vent"))] = "none",
) -> Node:
    """The end of the grip seen from its end: a coloured ring round an emblem."""
    return canvas(
        coloured("M44 4A40 40 0 1 1 43.9 4Z", colour), *_centre(device, hole)
    )


def _centre(emblem: str, hole: str) -> tuple[Node, ...]:
    if hole == "vent":
        return (solid("M44 37A7 7 0 1 1 43.9 37Z"), line("M44 30A14 14 0 1 1 43.9 30Z"))
    if emblem == "none":
        return (line("M44 13A31 31 0 1 1 43.9 13Z"),)
    disc = tag("path", class_="drawing__plain", d="M44 18A26 26 0 1 1 43.9 18Z")
    return disc, device(emblem, middle=(44, 44), size=34)
