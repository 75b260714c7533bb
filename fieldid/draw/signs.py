"""Marks without words: bar codes, recycling and disposal signs, care symbols."""

from typing import Annotated

from fieldid.draw.marks import GROUNDS, letters, written
from fieldid.draw.nodes import Node, body, canvas, group, line, printed, solid
from fieldid.draw.params import OneOf, Stamped

BARS = (3, 2, 1, 1, 2, 3, 1, 1, 4, 1, 1, 2, 2, 3, 1, 2, 1, 4, 2, 1, 1, 2, 3, 1, 2, 2, 1)
"""Widths of bar, gap, bar and so on, in modules."""

DOTS = (
    "     # #     ",
    "    #  ##    ",
    "     ##      ",
    "    # # #    ",
    "     #  #    ",
    "#  ## # # ## ",
    " ## #  ### # ",
    "# ##  # #  ##",
    "    ## # # # ",
    "     # ##  ##",
    "    #  # ##  ",
    "     ##  # # ",
    "    # # ## ##",
)
"""The dots between the eyes of a square, row by row."""


def barcode(
    *, kind: Annotated[str, OneOf(("upc", "ean", "isbn", "square"))] = "upc"
) -> Node:
    """A bar code with its figures as they are set, or a square of dots."""
    drawn = {"upc": _upc, "ean": _ean, "isbn": _isbn, "square": _square}[kind]
    return canvas(printed(body("M2 10H86V80H2Z"), *drawn()))


def dustbin(*, mark: Annotated[str, OneOf(("none", "bar", "date"))] = "none") -> Node:
    """A bin on wheels, crossed out, and what stands under it."""
    under = {
        "none": (),
        "bar": (solid("M20 76H68V85H20Z"),),
        "date": (letters("2006", at=(44, 80), size=13, room=40),),
    }[mark]
    return canvas(
        body("M26 22H62L58 64H31Z"),
        line("M22 22H64M30 22Q31 14 44 14T58 22M38 14V10H50V14M36 30V50M44 30V50"),
        line("M52 30V50", stroke_width=2),
        solid("M33 62A5.5 5.5 0 1 1 32.9 62Z"),
        line("M14 8L74 70M74 8L14 70", stroke_width=3.4),
        *under,
    )


def arrows(
    *,
    kind: Annotated[str, OneOf(("loop", "arrows", "triangle"))] = "loop",
    figure: Annotated[str, Stamped(2)] = "",
) -> Node:
    """Three arrows that chase each other, thin or broad, or a plain triangle."""
    inside = [letters(figure, at=(44, 54), size=24, room=30)] if figure else []
    return canvas(*_chase(kind), *inside)


def care(
    *, kind: Annotated[str, OneOf(("symbols", "words", "numbered"))] = "symbols"
) -> Node:
    """A sewn tag that tells how to wash: in words or in signs, these also with RN."""
    words = ("MACHINE", "WASH", "WARM")
    shown = {
        "symbols": (_symbols(44),),
        "words": written(words, middle=(44, 44), room=60),
        "numbered": (_symbols(34), *written(("RN 00000",), middle=(44, 58), room=60)),
    }[kind]
    return canvas(*GROUNDS["cloth"], *shown)


def _bars(left: float, right: float, top: float, foot: float) -> Node:
    module = (right - left) / sum(BARS)
    x, d = left, ""
    for at, width in enumerate(BARS):
        if at % 2 == 0:
            d += f"M{x:.4g} {top}H{x + width * module:.4g}V{foot}H{x:.4g}Z"
        x += width * module
    return solid(d)


def _figures(*groups: tuple[str, float, float]) -> list[Node]:
    return [letters(text, at=(x, 72), size=10, room=room) for text, x, room in groups]


def _upc() -> list[Node]:
    figures = (("0", 8, 8), ("12345", 30, 26), ("67890", 58, 26), ("5", 80, 8))
    return [_bars(14, 74, 17, 65), *_figures(*figures)]


def _ean() -> list[Node]:
    figures = (("4", 8, 8), ("012345", 31, 32), ("678901", 64, 32))
    return [_bars(14, 80, 17, 65), *_figures(*figures)]


def _isbn() -> list[Node]:
    above = letters("ISBN 0-00", at=(44, 20), size=11, room=66)
    return [above, _bars(12, 76, 29, 72)]


def _square() -> list[Node]:
    """Three eyes and some dots, in the manner of such squares, that read nothing."""
    eyes = "".join(
        f"M{x} {y}h17v17h-17ZM{x + 4} {y + 4}v9h9v-9Z"
        for x, y in ((18, 18), (53, 18), (18, 53))
    )
    dots = "".join(
        f"M{18 + 4 * at} {18 + 4 * row}h4v4h-4Z"
        for row, text in enumerate(DOTS)
        for at, dot in enumerate(text)
        if dot == "#"
    )
    return [solid(eyes, fill_rule="evenodd"), solid(dots)]


def _chase(kind: str) -> list[Node]:
    if kind == "triangle":
        return [line("M44 14L78 73H10Z", stroke_width=5)]
    broad = kind == "loop"
    shaft, head, width = (_BROAD, _BROAD_HEAD, 10) if broad else (_THIN, _HEAD, 4)
    turns = (f"rotate({120 * turn} 44 52)" for turn in range(3))
    return [
        group(line(shaft, stroke_width=width), solid(head), transform=turn)
        for turn in turns
    ]


_BROAD = "M33 32L38 23Q44 15 50 23L54 30"
_BROAD_HEAD = "M66 48L43 37L64 24Z"
_THIN = "M24 44L38 21Q44 13 50 21L58 35"
_HEAD = "M64 45L50.4 38L65 29.6Z"


def _symbols(y: float) -> Node:
    """Wash tub, bleach, dryer and iron."""
    d = (
        "M-36 -7L-33 8H-19L-16 -7M-36 -4Q-31 -9 -26 -4T-16 -4"
        "M-4 -8L4 8H-12Z"
        "M9 -8H25V8H9ZM17 -6A6 6 0 1 1 16.9 -6Z"
        "M30 8H46L43 -7H35M30 8Q31 0 44.4 0"
    )
    place = f"translate(39.8 {y:g}) scale(0.84)"
    return line(d, transform=place, stroke_width=2.2)
