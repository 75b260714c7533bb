"""The named colours, each with a pattern of its own, so that colour is never alone.

The hatching follows the engravers' custom of the 1600s where it has one (red upright,
blue level, black crossed, green slanting, gold dotted, white bare); the rest is made up
to match.
The colours themselves are custom properties in static/css/tokens.css.
"""

from collections.abc import Collection

from fieldid.draw.nodes import Node, tag

SIDE = 8
"""Side of a pattern's repeat, in the units of the drawing it fills."""

SWATCHES: dict[str, str] = {
    "black": "M0 4H8M4 0V8",
    "white": "",
    "ivory": "M2 2V2.1M6 6V6.1",
    "grey": "M-1 -1L9 9M-1 9L9 -1",
    "silver": "M0 2H3M4 6H7",
    "green": "M-1 7L1 9M-1 3L5 9M-1 -1L9 9M3 -1L9 5M7 -1L9 1",
    "navy": "M0 1H8M0 5H8",
    "red": "M2 0V8M6 0V8",
    "gold": "M1 1V1.1M5 1V1.1M3 3.7V3.8M7 3.7V3.8M1 6.4V6.5M5 6.4V6.5",
    "bronze": "M0 2Q2 0 4 2T8 2M0 6Q2 4 4 6T8 6",
    "brown": "M-1 1L1 -1M-1 5L5 -1M-1 9L9 -1M3 9L9 3M7 9L9 7",
    "tan": "M0 5L2 2L4 5L6 2L8 5",
}
"""Colour name -> the strokes of its pattern."""


def swatches(used: Collection[str] = tuple(SWATCHES)) -> Node:
    """The patterns of all colours, or of those that are used, in one hidden `<svg>`,
    put once into a page.
    """
    patterns = (
        _pattern(name, strokes) for name, strokes in SWATCHES.items() if name in used
    )
    return tag(
        "svg",
        tag("defs", *patterns),
        class_="drawing__swatches",
        width=0,
        height=0,
        aria_hidden="true",
        focusable="false",
    )


def paint(colour: str) -> str:
    """The value of `fill` that paints with a named colour.

    >>> paint("green")
    'url(#swatch-green)'
    """
    return f"url(#swatch-{colour})"


def coloured(d: str, colour: str) -> Node:
    """A closed outline in ink, filled with a named colour."""
    return tag("path", class_="drawing__edge", d=d, fill=paint(colour))


def _pattern(name: str, strokes: str) -> Node:
    ground = tag("rect", class_=f"swatch swatch--{name}", width=SIDE, height=SIDE)
    marks = tag("path", class_=f"swatch__marks swatch__marks--{name}", d=strokes)
    return tag(
        "pattern",
        ground,
        *([marks] if strokes else []),
        id=f"swatch-{name}",
        width=SIDE,
        height=SIDE,
        patternUnits="userSpaceOnUse",
    )
