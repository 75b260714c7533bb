"""A fly reel's smaller things: the line guard, the check wheel, what it came in."""

from collections.abc import Iterator
from math import cos, pi, sin
from typing import Annotated

from fieldid.draw.nodes import FINE, Node, body, canvas, group, line, solid, tag, tone
from fieldid.draw.params import OneOf

GUARDS = ("none", "bow", "ring", "rollers")

TEETH: dict[str, tuple[int, float, float, float]] = {
    "coarse": (9, 8, 0.34, 0.2),
    "fine": (26, 5, 0.3, 0.14),
    "slanted": (12, 9, 0.9, 0.0),
    "holed": (16, 6, 0.34, 0.2),
}
"""Wheel -> how many teeth, how tall they are, and the share of a tooth's room that its
rising flank and its crest take; what is left falls and lies low."""

SPINDLE = (44, 40)
WHEEL = 30.0
"""Where the check wheel turns, and how far out its teeth reach."""

POUCHES = ("bag", "flap", "box", "tin")


def guard(*, form: Annotated[str, OneOf(GUARDS)] = "none") -> Node:
    """The side where the line leaves the reel, and what guards it there."""
    return canvas(
        tone("M16 -2H72V90H16Z"),
        line("M20 6H68M20 22H68M20 38H68M20 54H68M20 70H68", stroke_width=FINE),
        body("M4 -4H16V92H4Z"),
        body("M72 -4H84V92H72Z"),
        body("M16 76H72V84H16Z"),
        *fitted(form),
    )


def wheel(*, teeth: Annotated[str, OneOf(tuple(TEETH))]) -> Node:
    """The check with the spool off: a toothed wheel and the pawl that clicks on it."""
    return canvas(check(teeth))


def pouch(*, make: Annotated[str, OneOf(POUCHES)]) -> Node:
    """What the reel was sold in."""
    return canvas(*packed(make))


def fitted(form: str) -> tuple[Node, ...]:
    """The guard between the two plates."""
    return {
        "none": (),
        "bow": (
            body("M16 58Q44 -8 72 58L66 62Q44 10 22 62Z"),
            solid("M13 56H23V66H13ZM65 56H75V66H65Z"),
        ),
        "ring": (
            body("M16 38H72V46H16Z"),
            body("M44 20A22 22 0 1 1 43.9 20Z"),
            tag("path", class_="drawing__cut", d="M44 29A13 13 0 1 1 43.9 29Z"),
        ),
        "rollers": (*_roller(20), *_roller(48)),
    }[form]


def check(teeth: str) -> Node:
    """The wheel on its spindle, the pawl below it and the spring behind."""
    holes = map(_hole, range(5)) if teeth == "holed" else ()
    return group(
        tag("path", class_="drawing__cut", d=_toothed(*TEETH[teeth])),
        *holes,
        body("M44 31A9 9 0 1 1 43.9 31Z"),
        solid("M44 37A3 3 0 1 1 43.9 37Z"),
        line("M20 86Q30 78 36 84"),
        body("M44 69L52 79V88H36V79Z"),
        line("M52 84Q62 78 72 86"),
    )


def bobbin() -> Node:
    """The spool by itself, from its edge, its knob to the right."""
    return group(
        body("M68 64H76V70H68Z"),
        body("M76 60Q84 58 86 63V71Q84 76 76 74Z"),
        tone("M26 24H62V64H26Z"),
        line("M26 24H62M26 64H62"),
        line("M26 34H62M26 44H62M26 54H62", stroke_width=FINE),
        body("M20 4H26V84H20Z"),
        body("M62 4H68V84H62Z"),
    )


def packed(make: str) -> tuple[Node, ...]:
    """A bag with a string, a leather pouch with a flap, a card box, a round tin."""
    return {
        "bag": (
            line("M62 26Q78 30 74 44M62 26Q80 22 82 34"),
            body("M34 24Q22 12 28 6Q36 10 44 5Q52 10 60 6Q66 12 54 24Z"),
            body("M32 24H56Q80 44 76 66Q72 84 44 84T12 66Q8 44 32 24Z"),
            line("M38 32Q32 42 32 54M50 32Q56 42 56 54", stroke_width=FINE),
            solid("M30 21H58V28H30Z"),
        ),
        "flap": (
            body("M8 34Q8 14 44 12T80 34V66Q80 82 44 82T8 66Z"),
            body("M8 34Q8 14 44 12T80 34Q76 58 44 60Q12 58 8 34Z"),
            solid("M44 46A5 5 0 1 1 43.9 46Z"),
            line("M15 36Q18 51 44 53M73 36Q70 51 44 53", stroke_dasharray="4 4"),
        ),
        "box": (
            body("M8 36L28 20H80L66 36Z"),
            tone("M66 36L80 20V66L66 82Z"),
            line("M66 36L80 20V66L66 82Z"),
            body("M8 36H66V82H8Z"),
            line("M8 48H66L80 32"),
            body("M20 56H54V74H20Z"),
            line("M26 62H48M26 68H42", stroke_width=FINE),
        ),
        "tin": (
            body("M6 30V64A38 18 0 0 0 82 64V30Z"),
            body("M6 30A38 18 0 0 1 82 30V38A38 18 0 0 1 6 38Z"),
            line("M6 30A38 18 0 0 0 82 30"),
            line("M20 27A24 9 0 1 0 68 27A24 9 0 1 0 20 27", stroke_width=FINE),
        ),
    }[make]


def _roller(y: float) -> tuple[Node, ...]:
    """A rod that turns between the plates, thicker in its middle."""
    return (
        body(f"M16 {y + 4}H72V{y + 10}H16Z"),
        body(f"M22 {y}H66V{y + 14}H22Z"),
        tone(f"M23 {y + 9}H65V{y + 13}H23Z"),
    )


def _toothed(count: int, tall: float, rise: float, crest: float) -> str:
    """The outline of a wheel, a tooth pointing at the pawl."""
    points = []
    for at in range(count):
        for share, way in _tooth(tall, rise, crest):
            turn = pi / 2 + 2 * pi * (at + share) / count
            x, y = SPINDLE[0] + way * cos(turn), SPINDLE[1] + way * sin(turn)
            points.append(f"{x:.4g} {y:.4g}")
    return f"M{' '.join(points)}Z"


def _tooth(tall: float, rise: float, crest: float) -> Iterator[tuple[float, float]]:
    """Where a tooth's flanks bend: the share of its room, and how far out."""
    yield 0, WHEEL - tall
    yield rise, WHEEL
    if crest:
        yield rise + crest, WHEEL
        yield min(1.0, 2 * rise + crest), WHEEL - tall


def _hole(at: int) -> Node:
    turn = 2 * pi * at / 5 - pi / 2
    x, y = SPINDLE[0] + 16 * cos(turn), SPINDLE[1] + 16 * sin(turn)
    return body(f"M{x:.4g} {y - 4:.4g}A4 4 0 1 1 {x - 0.1:.4g} {y - 4:.4g}Z")
