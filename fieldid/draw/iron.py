"""The scene of an iron: the whole club, and its small places enlarged in circles."""

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
from fieldid.draw.devices import device
from fieldid.draw.head import MOUTH, lying, outline, scored
from fieldid.draw.letters import word
from fieldid.draw.nodes import (
    Node,
    black,
    body,
    group,
    line,
    sample,
    solid,
    tag,
    tone,
)

EMBLEM, CODE = "lantern", "F624"
UNMARKED = "---"


def iron(*, marked: bool = True) -> Node:
    """An iron that lies aslant, its head twice enlarged, its label and cap once.

    One that is not marked has no maker's letters and emblems, only their places.
    """
    collar = spot("collar", black("M43 -3.4L58 -2.4V2.4L43 3.4Z"))
    return scene(
        leaders(
            "M31 108L45 133", "M166 262Q184 276 204 264M197 261.5L204.5 263.5L203 271"
        ),
        club(lying((44, 0), scale=0.5), collar),
        tube(MAKER if marked else UNMARKED),
        cap(EMBLEM if marked else "none"),
        _front(CODE if marked else UNMARKED),
        _behind(EMBLEM if marked else "none"),
    )


def _front(code: str) -> Node:
    """The head face on, with hosel and collar."""
    head = spot(
        "head",
        body(outline("round")),
        spot("face", plain(_FACE), *scored("lines", weight=1)),
        line(outline("round")),
        spot("toe", body(_TOE)),
        _hosel(code),
    )
    place = placed((90, 205), (52, 40), 1.5)
    return group(
        lens(90, 205, 84),
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


def _hosel(code: str) -> Node:
    """The hosel, upright round its own axis, then leant into place."""
    return group(
        spot(
            "hosel",
            body("M-5.5 0V30H5.5V0Z"),
            tone("M3 0.6V29.4H4.9V0.6Z"),
            _code(code),
        ),
        spot("pin", solid("M0 3A2.4 2.4 0 1 1 -0.1 3Z")),
        transform=_leant(),
    )


def _code(code: str) -> Node:
    letters = word(code, middle=(0, 0), height=4.8, weight=1)
    return group(sample(letters), transform="translate(-0.8 19) rotate(-90)")


def _collar() -> Node:
    return group(
        plain("M-3 -18V-23.6L3 -21.8V-18Z"),
        line("M-3 -18V-23.4M3 -18V-21.6"),
        spot(
            "collar",
            black("M-6.1 0.4L-3.8 -19H3.8L6.1 0.4Z"),
            _white("M-5.6 -3L-5.1 -7.4H5.1L5.6 -3Z"),
            _white("M-4.8 -9.8L-4.3 -14.2H4.3L4.8 -9.8Z"),
        ),
        transform=_leant(),
    )


def _behind(emblem: str) -> Node:
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
        spot("back", device(emblem, middle=(67, 45), size=15, weight=1.1)),
        spot("sole", sample(word("7", middle=(49, 84), height=6, weight=1.3))),
    )
    place = placed((270, 222), (44.5, 54), 1.38)
    return group(lens(270, 222, 73), group(head, transform=place, stroke_width=1.25))


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


def _leant() -> str:
    return f"translate({MOUTH[0]:g} {MOUTH[1]:g}) rotate(30)"


def _shaded(d: str) -> Node:
    return tag("path", class_="drawing__cut", d=d)


def _white(d: str) -> Node:
    return tag("path", class_="swatch swatch--white", d=d)
