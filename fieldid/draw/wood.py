"""The scene of a wood: the whole club, and its small places enlarged in circles."""

from fieldid.draw.club import (
    MAKER,
    cap,
    club,
    leaders,
    lens,
    placed,
    plain,
    scene,
    spot,
    tube,
)
from fieldid.draw.cover import OUTLINE, tuft
from fieldid.draw.letters import word
from fieldid.draw.nodes import Node, black, body, group, line, sample, tag, tone
from fieldid.draw.woodhead import (
    ABOVE_NECK,
    FRONT,
    INSERTS,
    PINS,
    PLATES,
    SCREWS,
    SOLE,
    SOLE_NECK,
    above,
    aim,
    lying,
    pin,
    scored,
    screw,
)


def wood() -> Node:
    """A wood that lies aslant, its head from three sides, and its headcover."""
    whipping = spot("whipping", black("M46 -3.2L66 -2.4V2.4L46 3.2Z"))
    return scene(
        leaders("M36 118L46 146", _turn(140, 288), _turn(216, 270)),
        _cover(),
        club(lying((48, 0), scale=0.48), whipping),
        tube(MAKER),
        cap("feather"),
        _front(),
        _above(),
        _below(),
    )


def _front() -> Node:
    """The head face on, with its neck and the thread round it."""
    shaft = "M76.6 -8L83.2 -6.2L85 -14.4L79 -16Z"
    head = (
        spot("shaft", plain(shaft), line("M77 -8L79 -16M83.2 -6.2L85 -14.4")),
        spot("head", spot("face", body(FRONT))),
        line(scored("block"), stroke_width=1),
        spot(
            "insert",
            body(INSERTS["block"]),
            spot("pins", *map(pin, PINS["four"])),
        ),
        spot("whipping", black(_THREAD), *_turns()),
        spot("brand", _brand()),
    )
    place = placed((76, 217), (41, 34), 1.18)
    return group(lens(76, 217, 74), group(*head, transform=place, stroke_width=1.5))


_THREAD = "M67.6 14Q72 4 74 -9L86 -6Q84 8 80.6 17Z"


def _turns() -> tuple[Node, ...]:
    d = "M74.4 -4.2L85.6 -1.4M73.2 0.6L84.6 3.6M71.8 5.4L83.4 8.4M70 10L82 13"
    return (tag("path", class_="drawing__groove", d=d, stroke_width=1),)


def _brand() -> Node:
    letters = word("C3", middle=(0, 0), height=6, weight=1.2)
    return group(
        plain("M-8 -4.6H8V4.6H-8Z"),
        sample(letters),
        transform="translate(70.4 27.4) rotate(-76)",
    )


def _above() -> Node:
    """The crown, as the player sees it."""
    head = (
        spot("head", spot("crown", body(above("pear")))),
        line("M17 13Q12.5 36 19 61", stroke_width=1),
        spot("mark", aim("arrow")),
        spot("whipping", black(ABOVE_NECK)),
    )
    place = placed((201, 205), (40, 40), 0.9)
    return group(lens(201, 205, 49), group(*head, transform=place, stroke_width=1.9))


def _below() -> Node:
    """The sole with its plate."""
    screws = (screw(at, weight=1.4) for at in SCREWS["four"])
    head = (
        spot("head", tone(SOLE), line(SOLE)),
        spot("whipping", black(SOLE_NECK)),
        spot(
            "plate",
            body(PLATES["shield"]),
            spot("screws", *screws),
            spot(
                "code",
                plain("M27 34H57V46H27Z"),
                sample(word("L38", middle=(42, 40), height=8, weight=1.4)),
            ),
        ),
    )
    place = placed((303, 237), (48, 40), 0.86)
    return group(lens(303, 237, 55), group(*head, transform=place, stroke_width=1.7))


def _cover() -> Node:
    """The headcover, drawn off the head."""
    return group(
        spot(
            "headcover",
            tuft(),
            body(OUTLINE),
            line("M22 66H62M22.4 75H61.6M22.8 84H61.2"),
            sample(word("3", middle=(44, 36), height=24, weight=4)),
        ),
        transform="translate(32 68) rotate(-36) scale(0.46) translate(-42 -92)",
        stroke_width=3.2,
    )


def _turn(x: float, y: float) -> str:
    """An arrow that turns the head round, from left to right."""
    return f"M{x} {y}q14 8 28 0m-5.5 -2.6l5.5 2.6l-2 5.8"
