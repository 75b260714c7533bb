"""The shaft: its surface, the bands below the grip, and the label round it."""

from typing import Annotated

from fieldid.draw.devices import DEVICES, device
from fieldid.draw.letters import breadth, word
from fieldid.draw.nodes import (
    FINE,
    Node,
    black,
    body,
    canvas,
    line,
    printed,
    tag,
    tone,
)
from fieldid.draw.params import COLOUR, OneOf, Several, Stamped
from fieldid.draw.swatches import coloured, paint

FINISHES = (
    *("smooth", "stepped", "fine steps", "fluted", "sheathed", "wavy"),
    *("grained", "woven"),
)

GRAIN = (
    "M37 -2Q39 24 37.5 44T39 90M44 -2Q45 30 43.5 50T45.5 90"
    "M51 -2Q50 16 51 34M50 46Q49 64 49 90"
)
FIBRES = "".join(
    f"M{32 + y / 26:.4g} {y}L{56 - y / 26:.4g} {y + 10}" for y in range(4, 80, 14)
)


def shaft(
    *,
    finish: Annotated[str, OneOf(FINISHES)] = "smooth",
    bands: Annotated[tuple[str, ...], Several(COLOUR, most=3)] = (),
) -> Node:
    """A length of shaft, thick end up, with its surface and its painted bands."""
    painted = (
        coloured(f"M30 {20 + 18 * at}H58V{31 + 18 * at}H30Z", colour)
        for at, colour in enumerate(bands)
    )
    return canvas(*_surface(finish), *painted)


def label(
    *,
    ground: Annotated[str, COLOUR] = "white",
    bands: Annotated[str, COLOUR] = "white",
    device: Annotated[str, OneOf(DEVICES)] = "none",
    words: Annotated[str, Stamped(8)] = "",
    edge: Annotated[str, OneOf(("square", "shield", "none"))] = "square",
) -> Node:
    """The paper label round the shaft, which lies level; `edge` none: never one."""
    tube = (body("M-2 22H90V66H-2Z"), tone("M-2 55H90V65H-2Z"))
    if edge == "none":
        return canvas(*tube, line("M-2 30H90", stroke_width=FINE))
    return canvas(*tube, *_paper(ground, bands, edge), printed(*_print(device, words)))


def _surface(finish: str) -> tuple[Node, ...]:
    edges = {
        "stepped": _steps((2, 26, 50, 74), 2.5),
        "fine steps": _steps(tuple(range(6, 88, 10)), 0.9),
    }
    if finish in edges:
        outline, rings = edges[finish]
        return body(outline), line(rings)
    outline = "M31 -2H57L53 90H35Z"
    if finish == "sheathed":
        skin = tag("path", class_="drawing__edge", d=outline, fill=paint("brown"))
        return skin, line("M40 -2V90", stroke_width=2.5)
    if finish == "grained":
        wood = tag("path", class_="drawing__edge swatch--tan", d=outline)
        return (printed(wood, line(GRAIN, stroke_width=FINE)),)
    if finish == "woven":
        fibres = tag("path", class_="drawing__groove", d=FIBRES, stroke_width=FINE)
        return black(outline), fibres
    marks = {
        "smooth": "M38 -2L40 90",
        "fluted": "M36 -2L39 90M41 -2L42.5 90M46.5 -2L46 90M52 -2L49.5 90",
        "wavy": "M32 10Q44 20 56 10M33 26Q44 36 55 26M34 42Q44 52 54 42"
        "M34.5 58Q44 68 53.5 58M35 74Q44 84 53 74",
    }
    return body(outline), line(marks[finish], stroke_width=FINE)


def _steps(heights: tuple[int, ...], drop: float) -> tuple[str, str]:
    """A shaft that narrows by `drop` a side at each height: outline and step lines."""
    half = 16.0
    left, right, rings = [f"M{44 - half} -2"], [f"L{44 + half} -2"], []
    for y in heights:
        rings.append(f"M{44 - half:.4g} {y}H{44 + half:.4g}")
        narrow = half - drop
        left.append(f"L{44 - half:.4g} {y}L{44 - narrow:.4g} {y + 2}")
        right.append(f"L{44 + half:.4g} {y}L{44 + narrow:.4g} {y + 2}")
        half = narrow
    foot = f"L{44 - half:.4g} 90L{44 + half:.4g} 90"
    back = "".join(reversed([f"L{p}" for each in right for p in each[1:].split("L")]))
    return "".join(left) + foot + back + "Z", "".join(rings)


def _paper(ground: str, bands: str, edge: str) -> tuple[Node, ...]:
    shape = {
        "square": "M5 14H83V74H5Z",
        "shield": "M14 14H74Q84 30 84 44T74 74H14Q4 58 4 44T14 14Z",
    }[edge]
    ends = "M5 14H15V74H5ZM73 14H83V74H73Z"
    if edge == "shield":
        ends = "M14 14H22V74H14Q4 58 4 44T14 14ZM74 14H66V74H74Q84 58 84 44T74 14Z"
    return coloured(shape, ground), coloured(ends, bands)


def _print(emblem: str, words: str) -> tuple[Node, ...]:
    """Emblem and words on a plain field, so that no pattern eats them."""
    if emblem == "none":
        return _field(34, 54), *_text(words, 44)
    if not words:
        return _field(24, 64), device(emblem, middle=(44, 44), size=34)
    return _field(19, 69), device(emblem, middle=(44, 35), size=26), *_text(words, 60)


def _field(top: float, foot: float) -> Node:
    return tag("path", class_="drawing__plain", d=f"M18 {top}H70V{foot}H18Z")


def _text(words: str, y: float) -> tuple[Node, ...]:
    height = min(13.0, 13 * 48 / breadth(words, 13))
    return (word(words, middle=(44, y), height=height),)
