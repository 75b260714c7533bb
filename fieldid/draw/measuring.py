"""Where and how to measure: a section through the head, the whole club, a ruler."""

from typing import Annotated

from fieldid.draw import reelfoot, reelworks, whipping, woodhead
from fieldid.draw.head import lying
from fieldid.draw.nodes import FINE, TILE, Node, body, canvas, group, line, solid, tag
from fieldid.draw.params import Number, OneOf

SCALE = 2.6
"""Units a millimetre, in sections and on the ruler."""

WIDE = 2 * TILE
EDGE = (46, 86)
"""Where the leading edge of a section stands."""

REACHES = {"to heel": (20, 48), "to sole": (11, 66)}
"""Where the measured length ends on the left, and what height it comes from."""

CLUBS = {
    "iron": lying((50, 34), scale=0.6),
    "wood": woodhead.lying((50, 34), scale=0.48),
}

GAUGES: dict[str, tuple[Node, str, str]] = {
    "face": (woodhead.front("block"), "M6 35V94M1 35H11M1 94H11", "M14 35H46M14 94H44"),
    "foot": (
        reelfoot.plate("round"),
        "M18 16V98M13 16H23M13 98H23",
        "M27 16H62M27 98H62",
    ),
    "spool": (
        reelworks.bobbin(),
        "M42 105H90M42 100V110M90 100V110",
        "M42 98V102M90 98V102",
    ),
    "thread": (
        whipping.neck("black"),
        "M16 31V85M11 31H21M11 85H21",
        "M25 31H44M25 85H38",
    ),
}
"""What to measure -> how it is drawn, the measure, what it is taken from."""


def section(
    *,
    across: Annotated[str, OneOf(("pad", "sole"))],
    mm: Annotated[float, Number(2, 26)],
) -> Node:
    """The head cut through its middle, seen from the toe, to scale for `mm`."""
    pad, sole = (mm, 15.0) if across == "pad" else (6.0, mm)
    cut = _cut(pad * SCALE, sole * SCALE)
    jaws = _across_pad(pad * SCALE) if across == "pad" else _across_sole(sole * SCALE)
    ground = line("M12 92H132", stroke_width=1, stroke_dasharray="1 4")
    return canvas(ground, cut, *jaws, width=144, height=110)


def gauge(*, across: Annotated[str, OneOf(tuple(GAUGES))]) -> Node:
    """A place on a wood with the length to measure beside it."""
    place, taken, edges = GAUGES[across]
    return canvas(
        group(place, transform="translate(22 13)"),
        measure(taken),
        measure(edges, stroke_dasharray="1 4"),
        width=120,
        height=110,
    )


def length(
    *,
    reach: Annotated[str, OneOf(tuple(REACHES))],
    club: Annotated[str, OneOf(tuple(CLUBS))] = "iron",
) -> Node:
    """The whole club beside the length to measure, from the end of the cap."""
    left, drop = REACHES[reach]
    return canvas(
        *level(club),
        measure(f"M{left} 78H171M{left} 72V84M171 72V84"),
        measure(f"M171 42V68M{left} {drop}V68", stroke_dasharray="1 4"),
        width=WIDE,
    )


def level(club: str) -> tuple[Node, ...]:
    """A whole club that lies level, grip to the right."""
    return (
        CLUBS[club],
        body("M50 31.5L120 30V38L50 36.5Z"),
        solid("M50 30.5H60V37.5H50Z"),
        body("M118 29.5L168 27.5Q172 34 168 40.5L118 38.5Z"),
        line("M128 30V38M138 29.5V38.5M148 29V39M158 28.5V39.5", stroke_width=FINE),
    )


def ruler(*, mm: Annotated[float, Number(1, 60)]) -> Node:
    """Two marks on a strip of paper, laid against a millimetre rule."""
    ticks = "".join(f"M{10 + at * SCALE:.4g} 50v{_tick(at)}" for at in range(61))
    figures = (_figure(str(at), 10 + at * SCALE) for at in range(10, 60, 10))
    end = 10 + mm * SCALE
    return canvas(
        body("M2 10H166L170 17L166 24L170 31L167 38L170 46H2Z"),
        measure(f"M10 22V46M{end:.4g} 22V46M10 30H{end:.4g}"),
        body("M2 50H174V84H2Z"),
        line(ticks, stroke_width=1),
        *figures,
        width=WIDE,
    )


def measure(d: str, **attributes: float | str) -> Node:
    """A stroke that shows what to measure."""
    return tag("path", class_="drawing__measure", d=d, **attributes)


def _cut(thick: float, foot: float) -> Node:
    """Blade above, pad below, sole at the foot."""
    blade, waist = 8.0, max(thick, 8.5)
    heel, corner = EDGE[0] + foot, EDGE[0] + 20 + 0.866 * waist
    return tag(
        "path",
        class_="drawing__cut",
        d=f"M{_at(0, 0)}L{_at(94, 0)}Q{_at(98, blade / 2)} {_at(94, blade)}"
        f"L{_at(68, blade)}C{_at(59, blade)} {_at(59, waist)} {_at(51, waist)}"
        f"L{_at(40, waist)}Q{corner - 2:.4g} 74 {heel:.4g} 84"
        f"Q{EDGE[0] + foot / 2:.4g} 95 {_at(0, 0)}Z",
    )


def _at(along: float, into: float) -> str:
    """A point so far up the face and so far into the steel; the face leans back 30°."""
    x = EDGE[0] + 0.5 * along + 0.866 * into
    y = EDGE[1] - 0.866 * along + 0.5 * into
    return f"{x:.4g} {y:.4g}"


def _across_pad(thick: float) -> tuple[Node, ...]:
    at = 45.0
    return (
        measure(
            f"M{_at(at, -24)}L{_at(at, -3)}M{_at(at, thick + 24)}L{_at(at, thick + 3)}"
        ),
        _arrow((at, -1.5), -1),
        _arrow((at, thick + 1.5), 1),
    )


def _arrow(tip: tuple[float, float], side: int) -> Node:
    along, into = tip
    back = into + 8 * side
    head = f"M{_at(along, into)}L{_at(along - 4, back)}L{_at(along + 4, back)}Z"
    return tag("path", class_="drawing__mark", d=head)


def _across_sole(foot: float) -> tuple[Node, ...]:
    left, right = EDGE[0], EDGE[0] + foot
    return (measure(f"M{left} 102H{right:.4g}M{left} 95V109M{right:.4g} 95V109"),)


def _tick(at: int) -> int:
    return 16 if at % 10 == 0 else 11 if at % 5 == 0 else 7


def _figure(text: str, x: float) -> Node:
    return tag(
        "text",
        text,
        class_="drawing__words",
        x=x,
        y=79,
        font_size=11,
        text_anchor="middle",
    )
