"""The headcover of a wood: what it is made of, and how it tells its number."""

from typing import Annotated

from fieldid.draw.letters import word
from fieldid.draw.nodes import FINE, Node, body, canvas, line, solid, tone
from fieldid.draw.params import OneOf, Stamped

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

TAGS = ("none", "disc", "flap", "sewn", "rings")


def cover(
    *,
    make: Annotated[str, OneOf(tuple(MAKES))] = "plain",
    tag: Annotated[str, OneOf(TAGS)] = "none",
    figure: Annotated[str, Stamped(1)] = "3",
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
        "rings": (
            solid("M13 20Q44 30 75.5 23L79 31Q44 38 9 27Z"),
            solid("M8.4 37Q44 48 79.6 39L77 46.5Q44 56 11.6 45Z"),
        ),
    }[tag]
