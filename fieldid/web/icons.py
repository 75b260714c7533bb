"""The app's icon: the year ribbon, drawn once, cut to what each system asks for.

Its colours are written out here because an icon has no style sheet to read. Phones want
PNG, and no bitmap is kept in the project: `resvg-py` renders the drawing and `oxipng`
halves the file without changing a pixel, both the same on every machine.
"""

from dataclasses import dataclass
from functools import cache

import oxipng
from resvg_py import svg_to_bytes

SIDE = 512
PAPER, SHEET = "#f4ecd8", "#fffaf0"
INK, VIOLET = "#1f1b18", "#5b2a86"

BASE = 388
"""Where the columns stand."""
WIDE, GAP = 56, 18
COLUMNS = (70, 148, 262, 184, 96)
"""Heights of the columns; the tallest is the year that leads."""


@dataclass(frozen=True, slots=True)
class Cut:
    """How an icon is cut: its side in pixels, its corners, how large it is drawn."""

    side: int
    corner: int
    scale: float
    purpose: str = ""


CUTS = {
    "icon-192.png": Cut(192, 96, 1.0, "any"),
    "icon-512.png": Cut(512, 96, 1.0, "any"),
    # Systems cut this one to any shape that holds a circle of four fifths.
    "icon-maskable-512.png": Cut(512, 0, 0.74, "maskable"),
    "apple-touch-icon.png": Cut(180, 0, 0.9),
}


def icon(cut: Cut = CUTS["icon-512.png"]) -> str:
    """The icon as SVG."""
    middle = SIDE / 2
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SIDE} {SIDE}">'
        f'<rect width="{SIDE}" height="{SIDE}" rx="{cut.corner}" fill="{PAPER}"/>'
        f'<g transform="translate({middle:g} {middle:g}) scale({cut.scale:g}) '
        f'translate({-middle:g} {-middle:g})">{_ribbon()}</g></svg>\n'
    )


# Reckoned once, since one takes a tenth of a second.
@cache
def png(cut: Cut) -> bytes:
    """The icon as PNG; the same cut is always the same bytes."""
    drawn = svg_to_bytes(svg_string=icon(cut), width=cut.side, height=cut.side)
    return oxipng.optimize_from_memory(
        bytes(drawn), level=2, strip=oxipng.StripChunks.all()
    )


def _ribbon() -> str:
    total = len(COLUMNS) * WIDE + (len(COLUMNS) - 1) * GAP
    left = (SIDE - total) / 2
    lines = "".join(
        f'<path d="M84 {y}H428" stroke="{INK}" stroke-opacity=".22" stroke-width="4"/>'
        for y in range(BASE - 240, BASE, 80)
    )
    columns = "".join(
        _column(left + place * (WIDE + GAP), height)
        for place, height in enumerate(COLUMNS)
    )
    return (
        f"{lines}{columns}"
        f'<path d="M70 {BASE}H442" stroke="{INK}" stroke-width="18" '
        'stroke-linecap="round"/>'
    )


def _column(x: float, height: int) -> str:
    """A hatched column, or the filled one that leads."""
    leads = height == max(COLUMNS)
    top = BASE - height
    strokes = (
        ""
        if leads
        else "".join(
            f"M{x:g} {y}L{x + WIDE:g} {y - WIDE / 2:g}"
            for y in range(top + 50, BASE - 4, 28)
        )
    )
    ground = VIOLET if leads else SHEET
    return (
        f'<rect x="{x:g}" y="{top}" width="{WIDE}" height="{height}" fill="{ground}" '
        f'stroke="{INK}" stroke-width="12" stroke-linejoin="round"/>'
        f'<path d="{strokes}" stroke="{INK}" stroke-width="7"/>'
    )
