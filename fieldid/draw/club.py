"""What the scenes of all clubs share: shaft and grip, places to look, enlargements."""

from fieldid.draw.devices import device
from fieldid.draw.letters import word
from fieldid.draw.nodes import (
    Node,
    Value,
    black,
    body,
    canvas,
    group,
    line,
    solid,
    tag,
)

WIDE, HIGH = 360, 282
HAIR = 1.1


def scene(*parts: Node) -> Node:
    """A whole club and its enlargements, in the room that every scene has."""
    return canvas(group(*parts, transform="translate(0 -18)"), width=WIDE, height=HIGH)


def spot(name: str, *children: Node) -> Node:
    """A place to look, which a class lights up."""
    return group(*children, class_="drawing__spot", data_spot=name)


def club(head: Node, *neck: Node) -> Node:
    """The club aslant: its head, what is on its neck, its shaft and its grip."""
    shaft = spot(
        "shaft",
        body("M53 -1.8L246 -3.2V3.2L53 1.8Z"),
        line("M90 -2V2M120 -2.3V2.3M150 -2.6V2.6M180 -2.8V2.8", stroke_width=HAIR),
    )
    grip = spot(
        "grip",
        body("M245 -4.2Q300 -5 338 -6.8V6.8Q300 5 245 4.2Z"),
        line(_GROOVES, stroke_width=HAIR),
    )
    whole = (
        spot("head", head),
        shaft,
        *neck,
        spot("label", body("M206 -4H224V4H206Z")),
        spot("band", solid("M233 -3.8H238V3.8H233Z")),
        grip,
        spot("cap", black("M337 -7.4H341Q345 0 341 7.4H337Z")),
    )
    return group(
        spot("whole", *whole), transform="translate(2 84) rotate(-9)", stroke_width=1.6
    )


MAKER = "W&T"
"""The letters of the invented makers."""


def tube(words: str) -> Node:
    """A piece of shaft with the label and the bands below the grip."""
    return group(
        long_lens(128, 92, 128, 42),
        spot("shaft", plain("M130 105L254 103V123L130 121Z"), line(_EDGES)),
        spot(
            "label",
            body("M152 102H208V124H152Z"),
            line("M158 102V124M202 102V124", stroke_width=HAIR),
            word(words, middle=(180, 113), height=9, weight=1.4),
        ),
        spot("band", solid("M222 102.4H228V123.6H222ZM233 102.2H239V123.8H233Z")),
        stroke_width=1.6,
    )


def cap(emblem: str) -> Node:
    """The end of the grip, straight on."""
    return group(
        lens(322, 104, 30),
        spot(
            "cap",
            body("M322 80A24 24 0 1 1 321.9 80Z"),
            line("M322 87A17 17 0 1 1 321.9 87Z", stroke_width=HAIR),
            device(emblem, middle=(322, 104), size=20, weight=1.4),
        ),
        stroke_width=1.6,
    )


def leaders(head: str, *turns: str) -> Node:
    """Hair lines from the small to the enlarged, and arrows that turn the head."""
    d = f"{head}M214 56L204 92M338 42L330 74{''.join(turns)}"
    return tag("path", class_="drawing__leader", d=d, stroke_width=HAIR)


def lens(x: float, y: float, radius: float) -> Node:
    """The circle round something enlarged."""
    return tag(
        "circle", class_="drawing__lens", cx=x, cy=y, r=radius, stroke_width=HAIR
    )


def long_lens(x: float, y: float, width: float, height: float) -> Node:
    """The frame round something enlarged that is longer than high."""
    return tag(
        "rect",
        class_="drawing__lens",
        x=x,
        y=y,
        width=width,
        height=height,
        rx=height / 2,
        stroke_width=HAIR,
    )


def placed(at: tuple[float, float], centre: tuple[float, float], scale: float) -> str:
    """The transform that brings a drawing's centre to a place, larger or smaller."""
    x, y = at[0] - centre[0] * scale, at[1] - centre[1] * scale
    return f"translate({x:.4g} {y:.4g}) scale({scale:g})"


def plain(d: str, **attributes: Value) -> Node:
    """Paper without an outline."""
    return tag("path", class_="drawing__plain", d=d, **attributes)


_GROOVES = "".join(f"M{x} -3.6L{x + 6} 3.8" for x in range(250, 332, 8))
_EDGES = "M130.6 105L254 103M130.6 121L254 123"
