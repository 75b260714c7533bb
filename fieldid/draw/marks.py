"""Marks of words: what is printed, stamped or woven, and the diamond of a design."""

from typing import Annotated

from fieldid.draw.nodes import (
    FINE,
    TILE,
    Node,
    body,
    canvas,
    group,
    line,
    tag,
    tone,
)
from fieldid.draw.nodes import printed as in_print
from fieldid.draw.params import OneOf, Several, Words

WIDEST, LARGEST = 68.0, 19.0
"""How much room a line of words has on a tile, and how large it may become."""

ADVANCE = 0.6
"""How wide a letter is, beside its height: the page's font is not known here."""

GROUNDS: dict[str, tuple[Node, ...]] = {
    "paper": (body("M4 6H84V82H4Z"),),
    "metal": (tone("M0 0H88V88H0Z"), line("M8 4H80M8 84H80", stroke_width=FINE)),
    "cloth": (
        body("M5 6H83V82H5Z"),
        line("M5 14H83M5 74H83", stroke_width=FINE, stroke_dasharray="5 4"),
    ),
    "glass": (
        body("M16 -2V22Q4 28 4 40V90H84V40Q84 28 72 22V-2"),
        line("M22.5 2V13", stroke_width=FINE),
    ),
}
"""What words stand on -> how that is drawn."""

SETTINGS: dict[str, str] = {
    "none": "",
    "ring": "M44 11A33 33 0 1 1 43.9 11Z",
    "box": "M8 22H80V66H8Z",
}


def printed(
    *,
    lines: Annotated[tuple[str, ...], Several(Words(14), most=3)] = (),
    on: Annotated[str, OneOf(tuple(GROUNDS))] = "paper",
    setting: Annotated[str, OneOf(tuple(SETTINGS))] = "none",
) -> Node:
    """Up to three lines of words; without any, a place that bears none."""
    frame = [line(SETTINGS[setting])] if setting != "none" else []
    room = WIDEST if setting == "none" else WIDEST - 16
    # The shoulders of a bottle leave less room above.
    middle = (44, 57 if on == "glass" and not frame else 44)
    drawn = (*GROUNDS[on], *frame, *written(lines, middle=middle, room=room))
    return canvas(in_print(*drawn) if on == "paper" else group(*drawn))


def written(
    lines: tuple[str, ...], *, middle: tuple[float, float], room: float
) -> list[Node]:
    """Lines of words below each other, all of one size that fits the room."""
    if not lines:
        return []
    x, y = middle
    longest = max(map(len, lines))
    size = min(LARGEST if len(lines) > 1 else LARGEST + 5, room / longest / ADVANCE)
    pitch = max(size * 1.2, 14)
    top = y - pitch * (len(lines) - 1) / 2
    return [
        letters(text, at=(x, top + pitch * row), size=size, room=room)
        for row, text in enumerate(lines)
    ]


def letters(text: str, *, at: tuple[float, float], size: float, room: float) -> Node:
    """One line of words round its middle, as wide in every font."""
    x, y = at
    long = {"textLength": min(room, len(text) * size * ADVANCE)} if text[1:] else {}
    return tag(
        "text",
        text,
        class_="drawing__words",
        x=x,
        y=y + size * 0.36,
        font_size=size,
        text_anchor="middle",
        **long,
        **({"lengthAdjust": "spacingAndGlyphs"} if long else {}),
    )


PERIODS: dict[str, tuple[str, str, str, str, str]] = {
    "first": ("E", "K", "9", "2", "1842-67"),
    "second": ("9", "4", "C", "R", "1868-83"),
}
"""Period -> what stands at the top, left, right and bottom, and its years."""

CORNERS = {"top": (44, 31), "left": (20, 53), "right": (68, 53), "bottom": (44, 75)}
YEAR_CORNER = {"first": "top", "second": "right"}


def diamond(
    *,
    period: Annotated[str, OneOf(("both", "first", "second"))] = "both",
    lit: Annotated[str, OneOf(("year", "none", *CORNERS))] = "year",
) -> Node:
    """The mark of a registered design in one or both of its layouts, a corner lit."""
    shown = tuple(PERIODS) if period == "both" else (period,)
    marks = (
        group(*_mark(name, lit), transform=f"translate({TILE * at} 0)")
        for at, name in enumerate(shown)
    )
    return canvas(*marks, width=TILE * len(shown), height=TILE + 18)


def _mark(period: str, lit: str) -> list[Node]:
    *texts, years = PERIODS[period]
    lit = YEAR_CORNER[period] if lit == "year" else lit
    frame = (
        body("M44 17L82 53L44 89L6 53Z"),
        body("M44 1A9 9 0 1 1 43.9 1Z"),
        _text("IV", (44, 10), 10),
        _text("Rd", (44, 53), 15),
        _text(years, (44, 98), 12),
    )
    corners = [
        _corner(text, CORNERS[name], lit == name)
        for name, text in zip(CORNERS, texts, strict=True)
    ]
    return [*frame, *corners]


def _corner(text: str, at: tuple[float, float], lit: bool) -> Node:
    if not lit:
        return _text(text, at, 15)
    x, y = at
    spot = body(f"M{x} {y - 10}A10 10 0 1 1 {x - 0.1:.4g} {y - 10}Z")
    drawn = (spot, _text(text, at, 15))
    return group(*drawn, class_="drawing__spot drawing__spot--lit")


def _text(text: str, at: tuple[float, float], size: float) -> Node:
    return letters(text, at=at, size=size, room=WIDEST)
