"""The foot of a fly reel, and what its works stamped: on the foot, rim and plate."""

from collections.abc import Iterator
from math import cos, sin
from typing import Annotated

from fieldid.draw.club import plain
from fieldid.draw.letters import GAP, HIGH, WIDE, word
from fieldid.draw.nodes import Node, body, canvas, group, line, tag, tone
from fieldid.draw.params import OneOf, Several, Stamped, Words
from fieldid.draw.stamps import stamp

ENDS: dict[str, str] = {
    "spear": "L27 21L44 2L61 21L57 34",
    "round": "L31 15Q31 3 44 3T57 15L57 34",
    "square": "L31 4H57V34",
    "paddle": "Q38 28 37 21Q27 3 44 3T51 21Q50 28 57 34",
}
"""Form -> the upper end of an upright foot, from its left edge to its right."""

MIDDLE = 44
"""The lower end is the upper one turned over at this height."""

BRIM = 150.0
"""How far above the letters of a rim the reel's middle lies, in a tile."""


def foot(*, ends: Annotated[str, OneOf(tuple(ENDS))]) -> Node:
    """The foot off the rod, from the side that lies against it."""
    return canvas(plate(ends))


def plate(ends: str) -> Node:
    """The foot upright, with the rivets that hold it."""
    edge = f"V34{ENDS[ends]}V"
    # The fill laps over the middle, where a seam would show when it is lit.
    fill, outline = plain(f"M31 46{edge}46Z"), line(f"M31 44{edge}44")
    return group(fill, turned(fill), outline, turned(outline), *map(_rivet, (36, 52)))


def turned(node: Node) -> Node:
    """What is drawn at the upper end of an upright foot, at its lower end."""
    return group(node, transform=f"translate(0 {2 * MIDDLE}) scale(1 -1)")


def layouts(
    *,
    stamps: Annotated[
        tuple[tuple[str, ...], ...],
        Several(Several(Stamped(4), most=4, least=1), most=2, least=1),
    ],
    names: Annotated[
        tuple[tuple[str, ...], ...],
        Several(Several(Words(12), most=4, least=1), most=2, least=1),
    ],
) -> Node:
    """A code that was laid out in two ways, one above the other, with their names."""
    rows = [
        stamp(fields=fields, names=under)
        for fields, under in zip(stamps, names, strict=False)
    ]
    return canvas(
        *(
            tag("g", *children, transform=f"translate(0 {88 * at})")
            for at, (_, _, children) in enumerate(rows)
        ),
        width=176,
        height=88 * len(rows),
    )


def engraved(
    *,
    place: Annotated[str, OneOf(("rim", "plate"))],
    number: Annotated[str, Stamped(6)] = "12086",
) -> Node:
    """A number as the works cut it: along the rim, or on a small plate with screws."""
    drawn = _rim(number) if place == "rim" else _oval(number)
    return canvas(*drawn, width=176)


def _rivet(y: float) -> Node:
    return body(f"M44 {y - 4.5}A4.5 4.5 0 1 1 43.9 {y - 4.5}Z")


def _rim(number: str) -> Iterator[Node]:
    """The lower edge of the reel's back, from near."""
    yield body("M-4 -4H180V46Q88 96 -4 46Z")
    yield tone("M-4 34Q88 84 180 34V46Q88 96 -4 46Z")
    yield line("M-4 34Q88 84 180 34M-4 46Q88 96 180 46")
    yield from curved(number, middle=(88, 34), height=24, weight=3)


def _oval(number: str) -> tuple[Node, ...]:
    return (
        tone("M0 0H176V88H0Z"),
        body("M44 8H132A36 36 0 0 1 132 80H44A36 36 0 0 1 44 8Z"),
        _screw(24),
        _screw(152),
        word("PAT", middle=(88, 27), height=15, weight=2.4),
        word(number, middle=(88, 55), height=23, weight=3),
    )


def _screw(x: float) -> Node:
    return group(
        body(f"M{x} 37A7 7 0 1 1 {x - 0.1} 37Z"), line(f"M{x - 3} 47L{x + 3} 41")
    )


def curved(
    text: str, *, middle: tuple[float, float], height: float, weight: float
) -> Iterator[Node]:
    """Letters along a rim that curves upwards on both sides."""
    x, y = middle
    step = (WIDE + GAP) * height / HIGH * 1.15
    bend = BRIM * height / 24
    for at, letter in enumerate(text):
        turn = ((len(text) - 1) / 2 - at) * step / bend
        shape = word(letter, middle=(0, 0), height=height, weight=weight)
        place = f"{x - bend * sin(turn):.4g} {y - bend * (1 - cos(turn)):.4g}"
        yield group(shape, transform=f"translate({place}) rotate({turn * 57.3:.4g})")
