"""The collar: the black sleeve between head and shaft, with its rings and its pin."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Annotated

from fieldid.draw.nodes import FINE, Node, black, body, canvas, line, tone
from fieldid.draw.params import COLOUR, OneOf, Several
from fieldid.draw.swatches import coloured

MIDDLE, JOINT, RING = 44, 66, 8.5
"""The axis, the height where collar meets head, and how tall a ring is drawn."""

PROFILES: dict[str, tuple[tuple[float, float], ...]] = {
    "straight": ((66, 18), (18, 11)),
    "short": ((66, 18), (40, 13)),
    "bell": ((66, 25), (60, 23), (52, 17), (42, 13), (30, 11.2), (18, 10.6)),
    "stepped": ((66, 18), (46, 18), (45.9, 14), (28, 14), (27.9, 10.5), (18, 10.5)),
}
"""From the joint upwards: (height, half the width there)."""

PINS = {
    "none": "",
    "brass": "gold",
    "steel": "white",
    "hole": "black",
    "filled": "grey",
}
"""What shows on the hosel -> the colour that it is drawn with."""


def collar(
    *,
    rings: Annotated[tuple[str, ...], Several(COLOUR, most=5)] = (),
    profile: Annotated[str, OneOf(tuple(PROFILES))] = "straight",
    pin: Annotated[str, OneOf(tuple(PINS))] = "none",
) -> Node:
    """A collar square on, rings named from the head upwards."""
    steps = PROFILES[profile]
    return canvas(
        body(f"M{MIDDLE - 9} -2H{MIDDLE + 9}V{JOINT}H{MIDDLE - 9}Z"),
        line(f"M{MIDDLE - 4} -2V{steps[-1][0] - 4}", stroke_width=FINE),
        body(f"M{MIDDLE - 20} 90V{JOINT}H{MIDDLE + 20}V90Z"),
        tone(f"M{MIDDLE + 8} 90V{JOINT + 1}H{MIDDLE + 19}V90Z"),
        *_pin(PINS[pin]),
        black(_silhouette(steps)),
        *_stack(steps, rings),
    )


def _silhouette(steps: tuple[tuple[float, float], ...]) -> str:
    left = " ".join(f"{MIDDLE - half} {y}" for y, half in steps)
    right = " ".join(f"{MIDDLE + half} {y}" for y, half in reversed(steps))
    return f"M{left} {right}Z"


def _stack(
    steps: tuple[tuple[float, float], ...], rings: tuple[str, ...]
) -> Iterator[Node]:
    """The rings from the joint upwards, thinner where the collar is too short."""
    low = JOINT - 3.0
    tall = min(RING, (low - steps[-1][0]) / max(1, len(rings)))
    for colour in rings:
        yield _ring(steps, (low, low - tall), colour)
        low -= tall


def _ring(
    steps: tuple[tuple[float, float], ...], reach: tuple[float, float], colour: str
) -> Node:
    low, high = reach
    below, above = _half(steps, low), _half(steps, high)
    return coloured(
        f"M{MIDDLE - below:.4g} {low:.4g}L{MIDDLE - above:.4g} {high:.4g}"
        f"H{MIDDLE + above:.4g}L{MIDDLE + below:.4g} {low:.4g}Z",
        colour,
    )


def _half(steps: tuple[tuple[float, float], ...], y: float) -> float:
    """Half the collar's width at a height."""
    for (y0, half0), (y1, half1) in pairwise(steps):
        if y1 <= y <= y0:
            return half0 + (half1 - half0) * (y0 - y) / (y0 - y1)
    return steps[-1][1]


def _pin(colour: str) -> tuple[Node, ...]:
    if not colour:
        return ()
    return (coloured("M44 70.5A6 6 0 1 1 43.9 70.5Z", colour),)
