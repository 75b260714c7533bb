"""A fly reel square on: the drum and its holes, the back of the frame, the knob."""

from collections.abc import Iterator
from math import cos, pi, sin
from typing import Annotated

from fieldid.draw.nodes import FINE, Node, body, canvas, group, line, solid, tag, tone
from fieldid.draw.params import COLOUR, OneOf
from fieldid.draw.swatches import coloured

MIDDLE = (44, 49)
FRAME, DRUM, HUB, WAY = 37.5, 33.0, 8.0, 21.0
"""Half the width of frame, drum and hub, and how far out the holes and the knob lie."""

KNOBS: dict[str, str] = {
    "ball": "M44 9A25 25 0 1 1 43.9 9Z",
    "barrel": "M28 14Q44 8 60 14Q69 37 60 60Q44 66 28 60Q19 37 28 14Z",
    "waisted": "M24 12Q44 6 64 12Q46 36 62 61Q44 66 26 61Q42 36 24 12Z",
    "cone": "M20 14Q44 4 68 14Q69 20 66 23L53 62H35L22 23Q19 20 20 14Z",
    "button": "M12 37Q13 29 44 28Q75 29 76 37V45Q75 52 44 53Q13 52 12 45Z",
}
"""Form -> the knob from the side, its foot at a height of about 62."""

HOLES = ("none", "small", "large", "petals", "slots", "two rings")


def drum(*, holes: Annotated[str, OneOf(HOLES)] = "none") -> Node:
    """The reel from the side of its handle, to tell the holes in the drum."""
    return canvas(stand(), disc(FRAME), spool(holes), grasp())


def cage(*, finish: Annotated[str, COLOUR] = "black") -> Node:
    """The reel from behind, painted as its frame is."""
    inner = tag(
        "circle", class_="drawing__groove", cx=MIDDLE[0], cy=MIDDLE[1], r=DRUM - 3
    )
    return canvas(
        stand(), coloured(_round(MIDDLE, FRAME), finish), inner, disc(HUB), _slot()
    )


def knob(*, form: Annotated[str, OneOf(tuple(KNOBS))]) -> Node:
    """The handle's knob from the side, on the rim of the drum."""
    return canvas(
        body("M39 50H49V74H39Z"),
        body("M31 66H57V74H31Z"),
        body(KNOBS[form]),
        tone("M-4 75H92V86H-4Z"),
        line("M-4 74H92M-4 87H92"),
    )


def disc(radius: float) -> Node:
    """A round of metal about the spindle."""
    return body(_round(MIDDLE, radius))


def spool(holes: str) -> Node:
    """The drum's face with its holes and the nut on its spindle."""
    return group(disc(DRUM), *pierced(holes), disc(HUB), _slot())


def grasp() -> Node:
    """The knob from its end, low on the drum."""
    x, y = MIDDLE[0], MIDDLE[1] + WAY + 1
    return group(body(_round((x, y), 6.5)), solid(_round((x, y), 2)))


def stand() -> Node:
    """The foot from its side, on top of the frame."""
    return group(body("M35 4H53L58 13H30Z"), body("M6 5Q44 -1 82 5L80 8Q44 3 8 8Z"))


def pierced(holes: str) -> tuple[Node, ...]:
    """The holes in the drum; none is where the knob sits."""
    return {
        "none": (),
        "small": tuple(_hole(at, 3) for at in _ring(12, WAY + 2)),
        "large": tuple(_hole(at, 7.2) for at in _ring(6, WAY)),
        "petals": tuple(map(_petal, _turns(8))),
        "slots": tuple(map(_slit, _turns(6))),
        "two rings": tuple(
            _hole(at, 2.4) for at in (*_ring(10, WAY - 6), *_ring(16, WAY + 6.5))
        ),
    }[holes]


def _turns(count: int) -> Iterator[float]:
    """Angles all round, from the knob's on, without its own."""
    for at in range(1, count):
        yield pi / 2 + 2 * pi * at / count


def _ring(count: int, way: float) -> Iterator[tuple[float, float]]:
    for turn in _turns(count):
        yield _at(turn, way)


def _at(turn: float, way: float) -> tuple[float, float]:
    return MIDDLE[0] + way * cos(turn), MIDDLE[1] + way * sin(turn)


def _round(middle: tuple[float, float], radius: float) -> str:
    x, y = middle
    return (
        f"M{x:.4g} {y - radius:.4g}"
        f"A{radius:g} {radius:g} 0 1 1 {x - 0.1:.4g} {y - radius:.4g}Z"
    )


def _hole(middle: tuple[float, float], radius: float) -> Node:
    return _cut(_round(middle, radius))


def _petal(turn: float) -> Node:
    """A leaf that points outwards."""
    inner, outer = _at(turn, WAY - 10), _at(turn, WAY + 10)
    left, right = _at(turn - 0.35, WAY + 1), _at(turn + 0.35, WAY + 1)
    return _cut(
        f"M{_point(inner)}Q{_point(left)} {_point(outer)}"
        f"Q{_point(right)} {_point(inner)}Z"
    )


def _slit(turn: float) -> Node:
    """A long hole that follows the rim."""
    low, high = WAY - 3.0, WAY + 3.5
    start, end = turn - 0.36, turn + 0.36
    return _cut(
        f"M{_point(_at(start, low))}A{low:g} {low:g} 0 0 1 {_point(_at(end, low))}"
        f"L{_point(_at(end, high))}"
        f"A{high:g} {high:g} 0 0 0 {_point(_at(start, high))}Z"
    )


def _point(at: tuple[float, float]) -> str:
    return f"{at[0]:.4g} {at[1]:.4g}"


def _slot() -> Node:
    """The slot of the nut in the middle."""
    x, y = MIDDLE
    return line(f"M{x - 3.5} {y + 3.5}L{x + 3.5} {y - 3.5}", stroke_width=FINE)


def _cut(d: str) -> Node:
    return tag("path", class_="drawing__cut", d=d)
