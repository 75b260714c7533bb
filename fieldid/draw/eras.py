"""What tells the eras of golf apart: joints, grooves and backs of clubs, their balance,
the size of a ball.
"""

from typing import Annotated

from fieldid.draw.head import outline
from fieldid.draw.measuring import CLUBS, WIDE, level, measure
from fieldid.draw.nodes import FINE, Node, body, canvas, group, line, solid, tag, tone
from fieldid.draw.params import OneOf

JOINTS: dict[str, tuple[str, str, str]] = {
    "heel": (
        "M10 58H64Q80 58 80 67T70 76H12Q5 76 5 67T10 58Z",
        "M80 -2L66 58L74 61L88 -2Z",
        "M12 71H72",
    ),
    "middle": (
        "M10 58H78Q83 58 83 67T76 76H12Q5 76 5 67T10 58Z",
        "M54 -2L40 58H48L62 -2Z",
        "M12 71H75",
    ),
    "upright": (
        "M6 54H82V80H6Z",
        "M40 -2V54H48V-2Z",
        "M14 54V80M74 54V80M20 67H68",
    ),
}
"""Where the shaft joins -> the head from the player's side, the shaft, fine lines."""

GROOVES = {
    "v": "M-2 30H8L18 50L28 30H34L44 50L54 30H60L70 50L80 30H90V76H-2Z",
    "box": "M-2 30H8V48H28V30H34V48H54V30H60V48H80V30H90V76H-2Z",
}
"""How grooves are cut -> a cut through a face that lies level, its grooves above."""

BACKS = {
    "full": "M4.4 54Q36 56 67 62C67.5 72 59 77 48 78C38 79 28 79 20 76.5"
    "C11 72 5 64 4.4 54Z",
    "hollow": "M20 37L47 53Q55 57 59 56L60 64Q56 70 46 71Q30 72 23 70Q15 56 20 37Z",
}
"""What is shaded on the back of an iron: the thick lower part, or a hollow."""

BALLS = {"small": 27, "large": 38, "other": 18}
"""Ball -> its radius beside the hole in a card, which has 33."""


def joint(*, at: Annotated[str, OneOf(tuple(JOINTS))]) -> Node:
    """A putter's head and where the shaft joins it."""
    head, shaft, lines = JOINTS[at]
    # The one place that counts is the only thing that is shaded.
    return canvas(body(head), tone(shaft), line(shaft), line(lines, stroke_width=FINE))


def groove(*, cut: Annotated[str, OneOf(tuple(GROOVES))]) -> Node:
    """A cut through the face, square to its grooves."""
    return canvas(tag("path", class_="drawing__cut", d=GROOVES[cut]))


def back(*, made: Annotated[str, OneOf(tuple(BACKS))]) -> Node:
    """The back of an iron's head."""
    drawn = (body(outline("round")), tone(BACKS[made]), line(BACKS[made]))
    return canvas(group(*drawn, transform="translate(88 0) scale(-1 1)"))


def ball(*, size: Annotated[str, OneOf(tuple(BALLS))]) -> Node:
    """A ball before the hole that tells its size."""
    dimples = "M36 40h0.1M44 36h0.1M52 40h0.1M40 48h0.1M48 48h0.1"
    return canvas(
        tag("circle", class_="drawing__body", cx=44, cy=44, r=BALLS[size]),
        line(dimples, stroke_width=3.4),
        tag("circle", class_="drawing__measure", cx=44, cy=44, r=33),
    )


def balance(*, club: Annotated[str, OneOf(tuple(CLUBS))] = "iron") -> Node:
    """A club that lies level on an edge, with the length to its butt end."""
    return canvas(
        *level(club),
        solid("M78 37L71 52H85Z"),
        measure("M78 74H171M78 68V80M171 68V80"),
        measure("M171 42V64M78 54V64", stroke_dasharray="1 4"),
        width=WIDE,
    )
