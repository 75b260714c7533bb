"""What tells the eras of golf clubs apart: a putter's joint, the cut of a groove."""

from typing import Annotated

from fieldid.draw.nodes import FINE, Node, body, canvas, line, tag, tone
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


def joint(*, at: Annotated[str, OneOf(tuple(JOINTS))]) -> Node:
    """A putter's head and where the shaft joins it."""
    head, shaft, lines = JOINTS[at]
    # The one place that counts is the only thing that is shaded.
    return canvas(body(head), tone(shaft), line(shaft), line(lines, stroke_width=FINE))


def groove(*, cut: Annotated[str, OneOf(tuple(GROOVES))]) -> Node:
    """A cut through the face, square to its grooves."""
    return canvas(tag("path", class_="drawing__cut", d=GROOVES[cut]))
