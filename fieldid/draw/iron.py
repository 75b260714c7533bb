"""The scene of an iron: the whole club, and its small places enlarged in circles."""

from fieldid.draw.devices import device
from fieldid.draw.head import MOUTH, lying, outline, scored
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
    tone,
)

WIDE, HIGH = 360, 282
HAIR = 1.1


def iron() -> Node:
    """An iron that lies aslant, its head twice enlarged, its label and cap once."""
    parts = (_leaders(), _club(), _tube(), _cap(), _front(), _behind())
    return canvas(
        group(*parts, transform="translate(0 -18)"),
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
        spot("collar", black("M43 -3.4L58 -2.4V2.4L43 3.4Z")),
        spot("label", body("M206 -4H224V4H206Z")),
        spot("band", solid("M233 -3.8H238V3.8H233Z")),
        spot(
            "grip",
            body("M245 -4.2Q300 -5 338 -6.8V6.8Q300 5 245 4.2Z"),
            line(_grooves(), stroke_width=HAIR),
        ),
        spot("cap", black("M337 -7.4H341Q345 0 341 7.4H337Z")),
    )
    return group(
        spot("whole", *whole), transform="translate(2 84) rotate(-9)", stroke_width=1.6
    )


def _grooves() -> str:
    return "".join(f"M{x} -3.6L{x + 6} 3.8" for x in range(250, 332, 8))


def _front() -> Node:
    """The head face on, with hosel and collar."""
    head = spot(
        "head",
        body(outline("round")),
        spot("face", _plain(_FACE), *scored("lines", weight=1)),
        line(outline("round")),
        spot("toe", body(_TOE)),
        _hosel(),
    )
    place = _placed((90, 205), (52, 40), 1.5)
    return group(
        _lens(90, 205, 84),
        group(head, _collar(), transform=place, stroke_width=1.2),
    )


_FACE = (
    "M19 29L50 49Q57 52.5 60 48L66.8 60V65C67.5 72 59 77 48 78"
    "C38 79 28 79 20 76.5C16 70 14.5 62 14.5 52C14.5 42 16 34 19 29Z"
)
_TOE = (
    "M19 29C11 28 6 36 4.5 48C3 60 9 72 20 76.5"
    "C16 70 14.5 62 14.5 52C14.5 42 16 34 19 29Z"
)


def _hosel() -> Node:
    """The hosel, upright round its own axis, then leant into place."""
    return group(
        spot("hosel", body("M-5.5 0V30H5.5V0Z"), tone("M3 0.6V29.4H4.9V0.6Z"), _code()),
        spot("pin", solid("M0 3A2.4 2.4 0 1 1 -0.1 3Z")),
        transform=_leant(),
    )


def _code() -> Node:
    letters = word("F624", middle=(0, 0), height=4.8, weight=1)
    return group(letters, transform="translate(-0.8 19) rotate(-90)")


def _collar() -> Node:
    return group(
        _plain("M-3 -18V-23.6L3 -21.8V-18Z"),
        line("M-3 -18V-23.4M3 -18V-21.6"),
        spot(
            "collar",
            black("M-6.1 0.4L-3.8 -19H3.8L6.1 0.4Z"),
            _white("M-5.6 -3L-5.1 -7.4H5.1L5.6 -3Z"),
            _white("M-4.8 -9.8L-4.3 -14.2H4.3L4.8 -9.8Z"),
        ),
        transform=_leant(),
    )


def _behind() -> Node:
    """The head from behind and a little from below."""
    mirrored = group(
        _shaded(outline("round")),
        spot("back", tone(_BACK)),
        line(outline("round")),
        spot("sole", body(_SOLE), tone(_SOLE_SHADE)),
        spot("pad", body(_PAD)),
        transform="translate(88 0) scale(-1 1)",
    )
    head = spot(
        "head",
        mirrored,
        spot("back", device("lantern", middle=(67, 45), size=15, weight=1.1)),
        spot("sole", word("7", middle=(49, 84), height=6, weight=1.3)),
    )
    place = _placed((270, 222), (44.5, 54), 1.38)
    return group(_lens(270, 222, 73), group(head, transform=place, stroke_width=1.25))


_BACK = (
    "M19 29L50 49Q53 51 56 50.5L58 64Q48 60.8 40 60"
    "Q24 57 4.8 55L4.5 48C6 36 11 28 19 29Z"
)
_SOLE = (
    "M6 62C9 70 14 74.5 20 76.5C28 79 38 79 48 78C58 77 66 73 67 66"
    "Q69 74 62 81C55 88 46 90 36 89C22 88 10 80 6 62Z"
)
_SOLE_SHADE = "M12 74Q22 86 38 87Q52 88 61 80.5Q54 88 44 88.6Q22 89 12 74Z"
_PAD = (
    "M4.8 55Q24 57 40 60Q56 62 65 70Q60 77 48 78"
    "C38 79 28 79 20 76.5C12 73 6.5 65 4.8 55Z"
)


def _tube() -> Node:
    """A piece of shaft with the label and the bands below the grip."""
    return group(
        tag(
            "rect",
            class_="drawing__lens",
            x=128,
            y=92,
            width=128,
            height=42,
            rx=21,
            stroke_width=HAIR,
        ),
        spot("shaft", _plain("M130 105L254 103V123L130 121Z"), line(_EDGES)),
        spot(
            "label",
            body("M152 102H208V124H152Z"),
            line("M158 102V124M202 102V124", stroke_width=HAIR),
            word("W&T", middle=(180, 113), height=9, weight=1.4),
        ),
        spot("band", solid("M222 102.4H228V123.6H222ZM233 102.2H239V123.8H233Z")),
        stroke_width=1.6,
    )


_EDGES = "M130.6 105L254 103M130.6 121L254 123"


def _cap() -> Node:
    return group(
        _lens(322, 104, 30),
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
    d = "M31 108L45 133M214 56L204 92M338 42L330 74"
    turn = "M166 262Q184 276 204 264M197 261.5L204.5 263.5L203 271"
    return tag("path", class_="drawing__leader", d=d + turn, stroke_width=HAIR)


def _lens(x: float, y: float, radius: float) -> Node:
    return tag(
        "circle", class_="drawing__lens", cx=x, cy=y, r=radius, stroke_width=HAIR
    )


def _placed(at: tuple[float, float], centre: tuple[float, float], scale: float) -> str:
    x, y = at[0] - centre[0] * scale, at[1] - centre[1] * scale
    return f"translate({x:.4g} {y:.4g}) scale({scale:g})"


def _leant() -> str:
    return f"translate({MOUTH[0]:g} {MOUTH[1]:g}) rotate(30)"


def _shaded(d: str) -> Node:
    return tag("path", class_="drawing__cut", d=d)


def _white(d: str) -> Node:
    return tag("path", class_="swatch swatch--white", d=d)


def _plain(d: str, **attributes: Value) -> Node:
    return tag("path", class_="drawing__plain", d=d, **attributes)
