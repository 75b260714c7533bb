"""Emblems of the invented works, each as strokes in a box of 24 by 24."""

from fieldid.draw.nodes import LINE, Node, group, line, solid

LINES: dict[str, str] = {
    "none": "",
    "lantern": "M8 8H16L18 20H6ZM12 8V5M9 5Q9 1.5 12 1.5T15 5M5 22.5H19"
    "M12 17.5Q9.6 15.5 12 11.5Q14.4 15.5 12 17.5Z",
    "wave": "M1 9Q5 3 9 9Q12 13 15 9Q19 3 23 9M1 17Q5 11 9 17Q12 21 15 17Q19 11 23 17",
    "star": "M12 1.5L14.9 8.6L22.5 9.2L16.7 14.1L18.5 21.5L12 17.5L5.5 21.5L7.3 14.1"
    "L1.5 9.2L9.1 8.6Z",
    "nails": "M5 3H10M7.5 3V21M14 3H19M16.5 3V21M3 12H21",
    "bird": "M2 9L5 8Q6 4.5 9 5Q11.5 5.5 12 8.5Q17 8.5 22 13Q17 17 12.5 16.5"
    "Q8 16 7 11.5Q6.8 10 5 10ZM11 16.5V22M11 22H8.5M15 16.2V22M15 22H12.5",
    "target": "M12 1.5A10.5 10.5 0 1 1 11.9 1.5ZM12 7A5 5 0 1 1 11.9 7Z",
    "feather": "M4 22L9 15M9 15Q5 8 20 2Q21 15 9 15ZM9 15L16 7",
}
SPOTS: dict[str, str] = {
    "target": "M12 10.2A1.8 1.8 0 1 1 11.9 10.2Z",
    "bird": "M8.2 7.2A0.9 0.9 0 1 1 8.1 7.2Z",
}

DEVICES = tuple(LINES)


def device(
    name: str, *, middle: tuple[float, float], size: float, weight: float = LINE
) -> Node:
    """The emblem round its middle, `size` units high."""
    left, top = middle[0] - size / 2, middle[1] - size / 2
    scale = size / 24
    return group(
        line(LINES[name]),
        *([solid(SPOTS[name])] if name in SPOTS else []),
        transform=f"translate({left:.4g} {top:.4g}) scale({scale:.4g})",
        stroke_width=weight / scale,
    )
