"""The whipping: the thread that binds the neck of a wood."""

from collections.abc import Iterator
from typing import Annotated

from fieldid.draw.nodes import FINE, Node, body, canvas, group, tag, tone
from fieldid.draw.params import COLOUR, Several
from fieldid.draw.swatches import coloured

MIDDLE, TOP, FOOT = 44, 18, 72
"""The axis, and the heights between which the thread is wound."""

TURN, BAND = 5, 10
"""How tall one turn of thread and one band of a few turns are drawn."""


def whipping(
    *,
    thread: Annotated[str, COLOUR] = "black",
    bands: Annotated[tuple[str, ...], Several(COLOUR, most=3)] = (),
) -> Node:
    """The neck upright, bands named from the head upwards."""
    return canvas(neck(thread), *_stack(bands))


def neck(thread: str) -> Node:
    """Shaft and neck with the thread wound round them."""
    return group(
        body("M35 -2H53V18H35Z"),
        tone("M47 -2H52V18H47Z"),
        body("M4 92C14 90 21 84 21 72H67C67 84 74 90 84 92Z"),
        coloured(_wound(TOP, FOOT), thread),
        *_turns(thread),
    )


def _half(y: float) -> float:
    """Half the width of the thread at a height: the neck widens downwards."""
    return 17 + (y - TOP) * 0.115


def _wound(top: float, foot: float) -> str:
    """The outline of the turns of thread between two heights."""
    high, low = _half(top), _half(foot)
    return (
        f"M{MIDDLE - high:.4g} {top:.4g}H{MIDDLE + high:.4g}"
        f"L{MIDDLE + low:.4g} {foot:.4g}H{MIDDLE - low:.4g}Z"
    )


def _turns(thread: str) -> Iterator[Node]:
    """The single turns; the pattern of the swatch black looks like them already."""
    if thread == "black":
        return
    ys = [TOP + TURN * at for at in range(1, int((FOOT - TOP) / TURN))]
    d = "".join(f"M{MIDDLE - _half(y):.4g} {y:.4g}H{MIDDLE + _half(y):.4g}" for y in ys)
    yield tag("path", class_="drawing__groove", d=d, stroke_width=FINE)


def _stack(bands: tuple[str, ...]) -> Iterator[Node]:
    """The bands, with a few turns below, between and above them."""
    foot = FOOT - 6.0
    for colour in bands:
        yield coloured(_wound(foot - BAND, foot), colour)
        foot -= BAND + 6
