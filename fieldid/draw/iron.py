"""The scene of an iron: the whole club, and its small places enlarged in circles."""

from fieldid.draw.devices import device
from fieldid.draw.head import MOUTH, lying, outline, scored
from fieldid.draw.letters import word
from fieldid.draw.nodes import Node, Value, body, canvas, group, line, solid, tag, tone
from fieldid.draw.swatches import coloured

WIDE, HIGH = 360, 300
HAIR = 1.1


def iron() -> Node:
    """An iron that lies aslant, its head twice enlarged, its label and cap once."""
    return canvas(
        _leaders(),
        _club(),
        _tube(),
        _cap(),
        _front(),
        _behind(),
        width=WIDE,
        height=HIGH,
    )


def spot(name: str, *children: Node) -> Node:
    """A place to look, which a class lights up."""
    return group(*children, class_="drawing__spot", data_spot=name)


def _club() -> Node:
    whole = (
        spot("head", lying((44, 0), scale=0.5)),
        spot(
            "shaft",
            body("M53 -1.8L246 -3.2V3.2L53 1.8Z"),
            line("M90 -2V2M120 -2.3V2.3M150 -2.6V2.6M180 -2.8V2.8", stroke_width=HAIR),
        ),
        spot("collar", solid("M43 -3.4L58 -2.4V2.4L43 3.4Z")),
        spot("label", body("M206 -4H224V4H206Z")),
        spot("band", solid("M233 -3.8H238V3.8H233Z")),
        spot(
            "grip",
            body("M245 -4.2Q300 -5 338 -6.8V6.8Q300 5 245 4.2Z"),
            line(_grooves(), stroke_width=HAIR),
        ),
        spot("cap", solid("M337 -7.4H341Q345 0 341 7.4H337Z")),
    )
    return group(
        spot("whole", *whole), transform="translate(2 84) rotate(-9)", stroke_width=1.6
    )


def _grooves() -> str:
    return "".join(f"M{x} -3.6L{x + 6} 3.8" for x in range(250, 332, 8))


def _front() -> Node:
    """The head face on, with hosel and collar."""
    head = group(
        spot(
            "head",
            body(outline("round")),
            spot("face", _plain("M18 33L26 29L55 48V71H18Z"), *scored("lines")),
            spot("toe", _toe()),
            _hosel(),
            _collar(),
        ),
        transform=_placed((88, 206), (53, 36), 1.44),
        stroke_width=1.25,
    )
    return group(_lens(88, 206, 83), head)


def _toe() -> Node:
    return line("M24 77.3L20 76C8 70 3 55 5 41C6.5 29 11 20 19 20L27 25", stroke_width=2.6)


def _hosel() -> Node:
    """The hosel, upright round its own axis, then leant into place."""
    return group(
        spot("hosel", body("M-5.5 -1V29H5.5V-1Z"), _code()),
        spot("pin", coloured("M0 2.5A2.6 2.6 0 1 1 -0.1 2.5Z", "white")),
        transform=_leant(),
    )


def _code() -> Node:
    letters = word("F624", middle=(0, 0), height=5.2, weight=1.1)
    return group(letters, transform="translate(0 18.5) rotate(-90)")


def _collar() -> Node:
    return group(
        body("M-3 -18V-29H3V-18Z"),
        spot(
            "collar",
            solid("M-6 0L-3.8 -21H3.8L6 0Z"),
            _plain("M-5.7 -3L-5.2 -8H5.2L5.7 -3Z"),
            _plain("M-4.9 -10.5L-4.4 -15.5H4.4L4.9 -10.5Z"),
        ),
        transform=_leant(),
    )


def _behind() -> Node:
    """The head from behind and a little from below."""
    head = group(
        spot("head", body(outline("round"))),
        spot("sole", body(_SOLE)),
        spot("pad", body(_PAD)),
        transform="translate(88 0) scale(-1 1)",
    )
    marks = group(
        spot("back", _plain("M60 27.5A11 11 0 1 1 59.9 27.5Z"), _emblem()),
        spot("sole", word("7", middle=(50, 85), height=8, weight=1.5)),
    )
    both = group(
        head, marks, transform=_placed((270, 222), (44, 55), 1.4), stroke_width=1.25
    )
    return group(_lens(270, 222, 73), both)


_SOLE = (
    "M8 62C11 69 15 74 20 76C28 78.6 38 79.5 48 77.6C58 77 66.5 73 66 66"
    "Q70 74 63 81C56 89 46 92 36 91.5C22 91 9 84 8 62Z"
)
_PAD = (
    "M5.4 50Q24 53 40 56Q58 59 65 69Q60 76.5 48 77.6"
    "C38 79.5 28 78.6 20 76C12 72 7 62 5.4 50Z"
)


def _emblem() -> Node:
    return device("lantern", middle=(60, 38.5), size=17, weight=1.2)


def _tube() -> Node:
    """A piece of shaft with the label and the bands below the grip."""
    return group(
        tag("rect", class_="drawing__lens", x=128, y=92, width=128, height=42, rx=21),
        spot("shaft", body("M129 105L255 103V123L129 121Z")),
        spot(
            "label",
            body("M152 102H208V124H152Z"),
            line("M158 102V124M202 102V124", stroke_width=HAIR),
            word("W&T", middle=(180, 113), height=9, weight=1.4),
        ),
        spot("band", solid("M222 102.4H228V123.6H222ZM233 102.2H239V123.8H233Z")),
        stroke_width=1.6,
    )


def _cap() -> Node:
    return group(
        tag("circle", class_="drawing__lens", cx=322, cy=104, r=30),
        spot(
            "cap",
            body("M322 80A24 24 0 1 1 321.9 80Z"),
            line("M322 87A17 17 0 1 1 321.9 87Z", stroke_width=HAIR),
            device("lantern", middle=(322, 104), size=20, weight=1.4),
        ),
        stroke_width=1.6,
    )


def _leaders() -> Node:
    """Hair lines from the small to the enlarged, and the arrow that turns the head."""
    d = "M44 104L58 128M214 56L204 92M338 42L330 74"
    turn = "M166 262Q184 276 204 264M197 261.5L204.5 263.5L203 271"
    return tag("path", class_="drawing__leader", d=d + turn, stroke_width=HAIR)


def _lens(x: float, y: float, radius: float) -> Node:
    return tag("circle", class_="drawing__lens", cx=x, cy=y, r=radius, stroke_width=HAIR)


def _placed(at: tuple[float, float], centre: tuple[float, float], scale: float) -> str:
    x, y = at[0] - centre[0] * scale, at[1] - centre[1] * scale
    return f"translate({x:.4g} {y:.4g}) scale({scale:g})"


def _leant() -> str:
    return f"translate({MOUTH[0]:g} {MOUTH[1]:g}) rotate(30)"


def _plain(d: str, **attributes: Value) -> Node:
    return tag("path", class_="drawing__plain", d=d, **attributes)
