"""The head of a wood: crown from above, insert face on, plate from below."""

from typing import Annotated

from fieldid.draw.devices import DEVICES, device
from fieldid.draw.nodes import (
    FINE,
    LINE,
    Node,
    black,
    body,
    canvas,
    group,
    line,
    solid,
    tone,
)
from fieldid.draw.params import COLOUR, OneOf
from fieldid.draw.swatches import coloured

FRONT = (
    "M72 -2C69 12 64 23 55 29C45 22 34 19 24 22C10 26 2 39 2 53C2 67 9 77 22 79.5"
    "Q42 83 58 80.5C70 78 75 70 75 57C75 44 80 20 85 -2Z"
)
FRONT_NECK = "M72 -2Q70.5 6 67.6 14L80.6 17Q82.6 8 85 -2Z"
"""The head face on, toe to the left, neck up to the right; and the thread on it."""

SOLE = (
    "M4 24Q40 11 69 17Q76 8 80.5 -8L94.5 -3.5C92 12 89 24 85 37C78 58 64 85 38 85"
    "C12 85 -1 55 2 33Q2 27 4 24Z"
)
SOLE_NECK = "M75 8.4Q78.4 1 80.5 -8L94.5 -3.5Q92.6 6 90.6 14Z"
"""The head from below, face above, the neck beyond the heel; and the thread on it."""

CROWNS: dict[str, tuple[str, str]] = {
    "pear": ("C11 8 20 3 34 4", "C64 7 85 28 83 49C81 64 60 63 47 66"),
    "round": ("C11 7 22 2 38 3", "C66 5 84 18 84 40C84 64 66 72 46 72"),
    "shallow": ("C11 8 18 5 27 6", "C44 9 61 24 61 43C61 58 54 64 43 68"),
    "blunt": ("C10 6 14 4 22 4", "L68 5C80 6 83 20 83 40C83 60 64 62 47 66"),
    "long": ("C9 4 17 -1 27 2", "C50 9 88 42 87 58C86 68 64 62 47 66"),
}
"""Outline -> the toe and the back, seen from above: face to the left, neck below."""

MOUTH = (78.5, -2)
"""The middle of the neck's end, seen from the front, where the thread begins."""

ABOVE_NECK = "M18.4 77Q19 84 18.6 90H33.4Q33 84 34.8 77Z"

MARKS: dict[str, str] = {
    "arrow": "M24 22L44 38L24 54",
    "stripes": "M26 26H50M26 38H62M26 50H50",
    "dot": "M40 38H40.1",
}
"""What helps to aim, on the crown behind the face."""

INSERTS: dict[str, str] = {
    "block": "M17 33H61L55 75H23Z",
    "waisted": "M17 33H61L48 54L57 75H21L30 54Z",
    "diamond": "M39 30L63 54L39 78L15 54Z",
    "round": "M39 31A23 23 0 1 1 38.9 31Z",
    "bar": "M27 31H51V76H27Z",
}
"""Outline -> the inlay in the middle of the face."""

PLATES: dict[str, str] = {
    "shield": "M12 22Q42 16 70 21L66 48Q56 67 42 75Q26 67 18 48Z",
    "tongue": "M10 22Q42 15 72 21V37H56V66Q42 77 28 66V37H10Z",
    "oblong": "M12 22Q42 16 70 21V53Q42 59 12 53Z",
    "keyhole": "M26 19Q42 17 58 19L53 42A19 19 0 1 1 31 42Z",
    "wings": "M10 22Q42 15 72 21L55 44L66 63Q42 75 18 63L29 44Z",
}
"""Outline -> the plate on the sole, the face above it."""

Places = tuple[tuple[float, float], ...]

PINS: dict[str, Places] = {
    "none": (),
    "two": ((39, 43), (39, 65)),
    "three": ((30, 44), (48, 44), (39, 64)),
    "four": ((30, 43), (48, 43), (31, 65), (47, 65)),
    "five": ((28, 42), (50, 42), (39, 54), (30, 66), (48, 66)),
}

SCREWS: dict[str, Places] = {
    "none": (),
    "three": ((22, 29), (61, 29), (42, 65)),
    "four": ((22, 29), (61, 29), (30, 55), (54, 55)),
    "five": ((22, 29), (61, 29), (28, 51), (56, 51), (42, 66)),
    "six": ((21, 29), (42, 27), (62, 29), (28, 51), (56, 51), (42, 66)),
    "plug": ((22, 29), (61, 29), (42, 65)),
}
"""How many -> where; `plug` is three, and lead in a hole between them."""


def crown(
    *,
    outline: Annotated[str, OneOf(tuple(CROWNS))] = "pear",
    stain: Annotated[str, OneOf((*COLOUR.words, "none"))] = "none",
    mark: Annotated[str, OneOf((*DEVICES, *MARKS))] = "none",
) -> Node:
    """The head from above, as the player sees it; a stain or a mark, not both."""
    d = above(outline)
    if stain != "none":
        return canvas(coloured(d, stain), black(ABOVE_NECK))
    edge = line("M17 13Q12.5 36 19 61", stroke_width=FINE)
    return canvas(body(d), black(ABOVE_NECK), edge, aim(mark))


def insert(
    *,
    outline: Annotated[str, OneOf(tuple(INSERTS))] = "block",
    colour: Annotated[str, OneOf((*COLOUR.words, "none"))] = "none",
    pins: Annotated[str, OneOf(tuple(PINS))] = "none",
) -> Node:
    """The face with its inlay and the pins that hold it."""
    painted = [] if colour == "none" else [coloured(INSERTS[outline], colour)]
    return canvas(front(outline), *painted, *map(pin, PINS[pins]))


def plate(
    *,
    outline: Annotated[str, OneOf(tuple(PLATES))] = "shield",
    screws: Annotated[str, OneOf(tuple(SCREWS))] = "none",
) -> Node:
    """The sole from below with its plate and the screws that hold it."""
    lead = [solid("M42 37A7 7 0 1 1 41.9 37Z")] if screws == "plug" else []
    return canvas(sole(outline), *map(screw, SCREWS[screws]), *lead)


def front(inlay: str) -> Node:
    """The head face on, with an inlay of that outline."""
    return group(
        body(FRONT),
        black(FRONT_NECK),
        line(scored(inlay), stroke_width=FINE),
        tone(INSERTS[inlay]),
        line(INSERTS[inlay]),
    )


def sole(fitted: str) -> Node:
    """The head from below, with a plate of that outline."""
    return group(tone(SOLE), line(SOLE), black(SOLE_NECK), body(PLATES[fitted]))


def above(outline: str) -> str:
    """The path of a head seen from above.

    >>> above("pear").startswith("M18.6 90C20 78")
    True
    """
    toe, back = CROWNS[outline]
    return f"M18.6 90C20 78 16 70 13 58Q7 36 10 16{toe}{back}C38 68 33 78 33.4 90Z"


def lying(mouth: tuple[float, float], *, scale: float) -> Node:
    """The head of a club that lies level: neck's end at `mouth`, toe downwards."""
    x, y = mouth
    place = f"translate({x:g} {y:g}) scale({scale:g} {-scale:g})"
    turn = f"rotate(76) translate({-MOUTH[0]:g} {-MOUTH[1]:g})"
    return group(
        body(FRONT),
        line(INSERTS["block"], stroke_width=1.1 / scale),
        transform=f"{place} {turn}",
        stroke_width=LINE / scale,
    )


def aim(mark: str) -> Node:
    """The mark on the crown."""
    if mark in MARKS:
        return line(MARKS[mark], stroke_width=9 if mark == "dot" else 3.5)
    return device(mark, middle=(43, 38), size=34)


def scored(outline: str) -> str:
    """The scoring on both sides of the inlay, as far as it leaves room."""
    room = {"bar": 8, "diamond": -4}.get(outline, 0)
    return "".join(
        f"M{left} {y}H{16 + room - inset}M{62 - room + inset} {y}H{72 - left / 4:g}"
        for y, left, inset in ((46, 8, 1), (55, 7, 2), (64, 8, 0))
    )


def pin(at: tuple[float, float]) -> Node:
    """The head of a pin."""
    x, y = at
    return body(f"M{x} {y - 4.5}A4.5 4.5 0 1 1 {x - 0.1} {y - 4.5}Z")


def screw(at: tuple[float, float], *, weight: float = LINE) -> Node:
    """A screw with its slot."""
    x, y = at
    return group(
        body(f"M{x} {y - 5}A5 5 0 1 1 {x - 0.1} {y - 5}Z"),
        line(f"M{x - 2.4} {y + 2.4}L{x + 2.4} {y - 2.4}"),
        stroke_width=weight,
    )
