"""The headcover of a wood: what it is made of, and how it tells its number."""

from collections.abc import Iterator
from typing import Annotated

from fieldid.draw.letters import word
from fieldid.draw.nodes import FINE, Node, body, canvas, line, solid, tone
from fieldid.draw.params import NUMBER, OneOf, Stamped

OUTLINE = (
    "M23 92L22 62C11 56 6 46 7 34C9 17 24 10 41 10C63 10 81 19 81 36"
    "C81 49 72 56 62 61L61 92Z"
)
"""The head of the club upwards, the neck below."""

MAKES: dict[str, str] = {
    "knitted": "M22 64H62M22.3 71H61.6M22.6 78H61.3M23 85H61"
    "M20 27l5 6l5 -6M38 22l5 6l5 -6M56 27l5 6l5 -6M13 43l5 6l5 -6M31 40l5 6l5 -6"
    "M49 40l5 6l5 -6M65 43l5 6l5 -6",
    "leather": "M11 48Q42 66 77 48M42 57V90M36 65H48M36 73H48M36 81H48",
    "quilted": "M8 42L42 10M19 57L68 16M36 63L79 28M52 63L80 42"
    "M24 14L70 54M41 10L79 46M9 28L49 63M10 46L28 62",
    "felt": "M22 64Q42 71 62 63M9 40h7M21 42h7M33 43h7M45 43h7M57 42h7M69 40h7",
    "plain": "M22 69H62M22.5 79H61.5",
}
"""What it is made of -> how that is drawn."""

TOP, FOOT, SAG, THICKEST = 14.0, 51.0, 9.0, 8.0
"""Between what heights rings go round the crown, how far they hang through, and how
thick one may be."""

SIDES = (
    (10, 41, 41),
    (14, 24, 60),
    (20, 15, 71),
    (28, 9, 78.5),
    (36, 6.9, 81),
    (44, 8.4, 79.4),
    (52, 13, 73.5),
)
"""The outline: height, left and right edge."""

RINGS = {"1": 1, "2": 2, "3": 3, "4": 4, "5": 5}
SOME = 3
"""Number -> how many rings; more would run into each other, so others have some."""

TAGS = ("none", "disc", "flap", "sewn", "rings")


def cover(
    *,
    make: Annotated[str, OneOf(tuple(MAKES))] = "plain",
    tag: Annotated[str, OneOf(TAGS)] = "none",
    figure: Annotated[str, Stamped(1), NUMBER] = "3",
) -> Node:
    """A headcover that stands on its neck; its make or its tag, not both."""
    wool = [tuft()] if make == "knitted" else []
    seams = line(MAKES[make], stroke_width=FINE)
    return canvas(*wool, body(OUTLINE), seams, *_tag(tag, figure))


def tuft() -> Node:
    """The ball of wool on top."""
    return line("M44 10V1M40 10L36 2M48 10L52 2M37 11L29 6M51 11L59 6")


def _tag(tag: str, figure: str) -> tuple[Node, ...]:
    """What shows the club's number."""
    flap = "M28 17H60V42L44 54L28 42Z"
    return {
        "none": (),
        "disc": (
            line("M44 8Q50 14 50 20"),
            body("M50 20A17 17 0 1 1 49.9 20Z"),
            word(figure, middle=(50, 37), height=18, weight=3),
        ),
        "flap": (
            tone(flap),
            line(flap),
            word(figure, middle=(44, 33), height=18, weight=3),
        ),
        "sewn": (word(figure, middle=(43, 34), height=32, weight=5),),
        "rings": tuple(_rings(RINGS.get(figure, SOME))),
    }[tag]


def _rings(count: int) -> Iterator[Node]:
    """Black rings about the crown, evenly down it."""
    pitch = (FOOT - TOP) / count
    thick = min(pitch / 2, THICKEST)
    for at in range(count):
        top = TOP + pitch * (at + 0.5) - thick / 2
        foot = top + thick
        (left, right), (low_left, low_right) = _edges(top), _edges(foot)
        yield solid(
            f"M{left:.4g} {top:.4g}Q44 {top + SAG:.4g} {right:.4g} {top:.4g}"
            f"L{low_right:.4g} {foot:.4g}"
            f"Q44 {foot + SAG:.4g} {low_left:.4g} {foot:.4g}Z"
        )


def _edges(y: float) -> tuple[float, float]:
    """Where the outline lies at that height, on the left and on the right."""
    below = next(row for row in SIDES if row[0] >= y)
    above = SIDES[SIDES.index(below) - 1]
    share = (y - above[0]) / (below[0] - above[0])
    _, left, right = (a + share * (b - a) for a, b in zip(above, below, strict=True))
    return left, right
