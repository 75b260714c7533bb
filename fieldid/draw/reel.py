"""The scene of a fly reel: from the handle's side and the line's, and small places."""

from fieldid.draw.club import HAIR, HIGH, WIDE, lens, long_lens, placed, plain, spot
from fieldid.draw.drum import FRAME, HUB, MIDDLE, disc, grasp, pierced
from fieldid.draw.letters import word
from fieldid.draw.nodes import Node, body, canvas, group, line, sample, tag, tone
from fieldid.draw.reelfoot import curved, plate, turned
from fieldid.draw.reelworks import check, packed


def reel() -> Node:
    """A reel twice, its foot, back and check in circles, its pouch beside it."""
    return canvas(
        _leaders(),
        spot("whole", _front(), _edge()),
        _pouch(),
        _foot(),
        _back(),
        _check(),
        width=WIDE,
        height=HIGH,
    )


def _front() -> Node:
    """The reel from the side of its handle, the line leaving to the left."""
    drum = spot("spool", disc(33), spot("holes", *pierced("small")), disc(HUB))
    foot = spot(
        "foot", body("M35 4H53L58 13H30Z"), body("M6 5Q44 -1 82 5L80 8Q44 3 8 8Z")
    )
    return group(
        foot,
        spot("frame", disc(FRAME)),
        drum,
        spot("handle", grasp()),
        spot("guard", body("M5 30L10 32V42L5 44Z")),
        transform=placed((88, 112), (44, 49), 1.95),
        stroke_width=0.85,
    )


def _edge() -> Node:
    """The reel from the side on which the line leaves it."""
    return group(
        spot("foot", body("M-14 -95Q0 -99 14 -95V-91Q0 -95 -14 -91Z"), body(_STEM)),
        spot("frame", body("M-24 -73H-16V73H-24Z")),
        spot(
            "spool",
            spot(
                "width",
                tone("M-12 -44H17V44H-12Z"),
                line("M-12 -44H17M-12 44H17"),
                line(_WOUND, stroke_width=HAIR),
                body("M-16 -65H-12V65H-16Z"),
                body("M17 -65H21V65H17Z"),
            ),
        ),
        spot("frame", body("M-16 -72H24V-66H-16Z"), body("M-16 66H24V72H-16Z")),
        spot("handle", body("M21 38H27V46H21Z"), body(_KNOB)),
        spot(
            "guard",
            body("M-16 -17H24V-11H-16Z"),
            body("M4 -29A15 15 0 1 1 3.9 -29Z"),
            tag("path", class_="drawing__cut", d="M4 -23A9 9 0 1 1 3.9 -23Z"),
        ),
        transform="translate(206 112)",
        stroke_width=1.6,
    )


_STEM = "M-7 -92Q0 -94 7 -92L12 -73H-12Z"
_WOUND = "".join(f"M-12 {y}H17" for y in range(-34, 44, 10))
_KNOB = "M27 34Q38 30 40 36V48Q38 54 27 50Z"


def _foot() -> Node:
    """The foot off the rod, with the stamp at one of its ends."""
    turn = "rotate(90) translate(-44 -44) "
    return group(
        long_lens(10, 212, 154, 62),
        spot(
            "foot",
            group(
                plate("round"),
                spot("ends", _TIP, turned(_TIP)),
                transform=f"translate(87 243) scale(1.7) {turn}",
                stroke_width=0.95,
            ),
            spot(
                "stamp",
                plain("M110 235H142V251H110Z"),
                sample(word("2755", middle=(126.5, 243), height=8.5, weight=1.5)),
            ),
        ),
        stroke_width=1.6,
    )


_TIP = group(
    plain("M31 14Q31 3 44 3T57 14Z"), line("M31 14Q31 3 44 3T57 14M31 14V16M57 14V16")
)
"""One end of the foot, which lights up without the rest."""


def _back() -> Node:
    """The back of the frame, with the plate of the patent and the number on its rim."""
    return group(
        lens(222, 236, 45),
        spot("frame", body("M222 198A38 38 0 1 1 221.9 198Z"), _number()),
        spot(
            "patent",
            body("M209 216H235A10.5 10.5 0 0 1 235 237H209A10.5 10.5 0 0 1 209 216Z"),
            sample(word("41207", middle=(222, 226.5), height=8, weight=1.3)),
        ),
        stroke_width=1.6,
    )


def _number() -> Node:
    return spot(
        "number",
        plain("M203 250Q222 259 241 250L246 258Q222 274 198 258Z"),
        sample(*curved("12086", middle=(222, 260), height=8, weight=1.4)),
    )


def _check() -> Node:
    """The inside of the frame with the spool off."""
    works = group(
        spot("frame", disc(48)),
        spot("check", check("fine")),
        transform=placed((312, 196), MIDDLE, 0.9),
        stroke_width=1.7,
    )
    return group(lens(312, 196, 47), works)


def _pouch() -> Node:
    return group(
        spot("pouch", *packed("flap")),
        transform=placed((312, 66), (44, 46), 0.95),
        stroke_width=1.7,
    )


def _leaders() -> Node:
    """Hair lines from the small to the enlarged, and arrows that turn the reel."""
    return tag("path", class_="drawing__leader", d=_LEADS, stroke_width=HAIR)


_LEADS = (
    "M13 36Q4 70 5 140T22 221"
    "M150 191q14 8 28 0m-5.5 -2.6l5.5 2.6l-2 5.8"
    "M186 187L192 203"
    "M234 112H258M252 108L258 112L252 116M258 112L278 152"
)
"""To the foot; the turn from view to view; to the back; the spool's way off."""
