"""What a drawing in a guide that somebody gave may consist of: the elements and the
attributes that our own drawings have, and no other; so that none of it can ask for
anything, lead anywhere, or cover the page.

A test holds everything that `fieldid.draw` can draw against this table.
"""

from typing import Any

_FIGURE = r"-?[0-9]{1,4}(\.[0-9]{1,4})?"
_FIGURES = rf"{_FIGURE}( {_FIGURE}){{0,11}}"
_MOVE = rf"(translate|rotate|scale|skewX)\({_FIGURES}\)"

DRAWING: dict[str, Any] = {
    "deep": 16,
    "most": 800,
    "long": 6_000,
    "elements": [
        ["svg", ["class", "viewBox", "stroke-width", "aria-hidden", "focusable"]],
        ["g", ["class", "data-spot", "stroke-width", "transform"]],
        [
            "path",
            [
                *("class", "d", "fill", "fill-rule", "transform"),
                *("stroke-width", "stroke-dasharray"),
            ],
        ],
        ["circle", ["class", "cx", "cy", "r", "stroke-width"]],
        ["rect", ["class", "x", "y", "width", "height", "rx", "stroke-width"]],
        [
            "text",
            [
                *("class", "x", "y", "font-size", "text-anchor"),
                *("textLength", "lengthAdjust"),
            ],
        ],
    ],
    "values": [
        ["class", r"(drawing|swatch)[a-z-]*(__[a-z-]+)?( (drawing|swatch)[a-z_-]+)?"],
        ["data-spot", r"[a-z0-9]+(-[a-z0-9]+)*"],
        ["viewBox", _FIGURES],
        ["aria-hidden", "true"],
        ["focusable", "false"],
        ["d", r"[MmLlHhVvCcSsQqTtAaZz0-9 .,-]*"],
        ["fill", r"url\(#swatch-[a-z]+\)"],
        ["fill-rule", "evenodd"],
        ["transform", f"{_MOVE}( {_MOVE}){{0,3}} ?"],
        ["text-anchor", "middle"],
        ["lengthAdjust", "spacingAndGlyphs"],
        *(
            [name, _FIGURES]
            for name in (
                *("stroke-width", "stroke-dasharray", "cx", "cy", "r"),
                *("x", "y", "width", "height", "rx", "font-size", "textLength"),
            )
        ),
    ],
}
"""How deep nodes may lie, how many there may be and how long a value; the attributes
of each element, and the whole pattern of each attribute's values."""
