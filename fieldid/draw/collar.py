"""The collar: the black sleeve between head and shaft, with its rings and its pin."""

from typing import Annotated

from fieldid.draw.nodes import FINE, Node, body, canvas, line, solid, tone
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

PINS = {"none": "", "brass": "gold", "steel": "silver", "hole": "black"}


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
        solid(_silhouette(steps)),
        *(_ring(steps, at, colour) for at, colour in enumerate(rings)),
    )


def _silhouette(steps: tuple[tuple[float, float], ...]) -> str:
    left = " ".join(f"{MIDDLE - half} {y}" for y, half in steps)
    right = " ".join(f"{MIDDLE + half} {y}" for y, half in reversed(steps))
    return f"M{left} {right}Z"


def _ring(steps: tuple[tuple[float, float], ...], at: int, colour: str) -> Node:
    low = JOINT - 3 - at * RING
    high = low - RING
    below, above = _half(steps, low), _half(steps, high)
    return coloured(
        f"M{MIDDLE - below:.4g} {low}L{MIDDLE - above:.4g} {high}"
        f"H{MIDDLE + above:.4g}L{MIDDLE + below:.4g} {low}Z",
        colour,
    )


def _half(steps: tuple[tuple[float, float], ...], y: float) -> float:
    """Half the collar's width at a height, with an edge to spare for the ring's ink."""
    for (y0, half0), (y1, half1) in zip(steps, steps[1:], strict=False):
        if y1 <= y <= y0:
            return half0 + (half1 - half0) * (y0 - y) / (y0 - y1) + 1
    return steps[-1][1] + 1


def _pin(colour: str) -> tuple[Node, ...]:
    if not colour:
        return ()
    return (coloured("M44 73A5 5 0 1 1 43.9 73Z", colour),)
