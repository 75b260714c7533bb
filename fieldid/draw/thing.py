"""The scene of a thing of any kind: a lidded tin, and what may come with it."""

from fieldid.draw.club import HAIR, HIGH, WIDE, lens, plain, spot
from fieldid.draw.nodes import Node, black, body, canvas, group, line, solid, tag, tone


def thing() -> Node:
    """A tin from the side and from below, its label and flex, a box and a tag."""
    return canvas(
        spot("whole", _flex(), _tin(), _box(), _cloth()),
        tag("path", class_="drawing__leader", d=_LEADER, stroke_width=HAIR),
        _base(),
        width=WIDE,
        height=HIGH,
    )


_LEADER = "M118 209L136 222M60 215A30 9 0 0 0 104 218M97 214.5L104.6 218L98 223"


def _tin() -> Node:
    """The tin with its lid and its paper label."""
    side = "M24 58V196A58 15 0 0 0 140 196V58Z"
    tin = spot(
        "body",
        body(side),
        tone("M118 60V207.8A58 15 0 0 0 139.6 197.5V60Z"),
        spot("label", body(_LABEL), tone(_LABEL_SHADE), _written(_LABEL_LINES)),
        spot("lid", body(_LID), body("M20 40A62 16 0 0 1 144 40A62 16 0 0 1 20 40Z")),
        line("M52 36A32 7 0 0 1 112 36", stroke_width=HAIR),
    )
    return group(tin, stroke_width=1.8)


_LID = "M20 40V56A62 16 0 0 0 144 56V40Z"
_LABEL = "M24 92A58 15 0 0 0 140 92V160A58 15 0 0 1 24 160Z"
_LABEL_SHADE = "M118 103.8A58 15 0 0 0 139.6 93.5V161.5A58 15 0 0 1 118 171.8Z"
_LABEL_LINES = "M48 121Q80 128 110 122M44 134Q78 142 112 136M52 149Q80 155 104 151"


def _written(d: str) -> Node:
    return line(d, stroke_width=2.6, stroke_dasharray="9 4 15 4 6 4")


def _base() -> Node:
    """The tin turned over: what is stamped or moulded there."""
    ring = "M188 172A48 48 0 1 1 187.9 172Z"
    return group(
        lens(188, 220, 55),
        spot("body", spot("base", body(ring), *_stamped())),
        stroke_width=1.8,
    )


def _stamped() -> tuple[Node, ...]:
    return (
        line("M188 179A41 41 0 1 1 187.9 179Z", stroke_width=HAIR),
        _written("M162 208H214M158 221H218"),
        line("M180 247L188 233L196 247Z", stroke_width=2.2),
        line("M188 192V199M184.5 195.5H191.5", stroke_width=2.2),
    )


def _flex() -> Node:
    """The flex out of the foot of the tin, with its plug."""
    cable = "M34 200C10 212 6 236 26 244S70 246 82 256"
    return spot(
        "flex",
        line(cable, stroke_width=5.4),
        tag("path", class_="drawing__groove", d=cable, stroke_width=2),
        spot(
            "plug",
            black("M82 248H93Q104 248 106 253V263Q104 268 93 268H82Q78 258 82 248Z"),
            line("M107 254H119M107 262H119", stroke_width=3),
        ),
    )


def _box() -> Node:
    """The box that it was sold in."""
    box = spot(
        "box",
        body("M206 50L296 58V146L206 134Z"),
        body("M296 58L334 44V126L296 146Z"),
        tone("M297 60L333 46.4V124.6L297 144Z"),
        body("M206 50L248 38L334 44L296 58Z"),
        line("M227 44L315 51"),
        plain("M214 104L252 108.4V130L214 125.2Z"),
        solid(_BARS),
        _written("M216 70L284 76.6M216 84L270 89.4"),
    )
    return group(box, stroke_width=1.8)


_BARS = "".join(
    f"M{x} {104.6 + (x - 214) * 0.116:.4g}v19.4h{w}v-19.4Z"
    for x, w in (
        (216, 1.6),
        (219.2, 3),
        (224, 1.4),
        (227, 2.4),
        (231.4, 1.2),
        (234, 3.2),
        (239, 1.4),
        (242.2, 2.6),
        (246.6, 1.6),
    )
)


def _cloth() -> Node:
    """The neck of a garment, with the tag sewn in."""
    return group(
        plain(_GARMENT),
        line("M250 196Q254 186 262 180Q300 204 346 176Q352 180 356 188"),
        line("M263 187Q301 211 346 183", stroke_width=HAIR, stroke_dasharray="4 3"),
        spot(
            "tag",
            body("M284 194Q303 200 324 192L326 254Q306 262 286 256Z"),
            line("M289 199V203M303 200.4V204.4M318 197V201", stroke_width=2),
            _written("M293 218L317 215.6M293 230L318 227.6M294 242L312 240.4"),
        ),
        line("M250 196V268M356 188V262"),
        stroke_width=1.8,
    )


_GARMENT = (
    "M250 196Q254 186 262 180Q300 204 346 176Q352 180 356 188V262Q300 280 250 268Z"
)
