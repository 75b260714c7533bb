"""The app's icons: small files that show the drawing to the pixel."""

import io

import pytest
from PIL import Image
from resvg_py import svg_to_bytes

from fieldid.web.icons import CUTS, icon, png


def drawn(cut):
    """The icon as it comes from the drawing, in full colour."""
    return bytes(svg_to_bytes(svg_string=icon(cut), width=cut.side, height=cut.side))


def pixels(data):
    return Image.open(io.BytesIO(data)).convert("RGBA").tobytes()


@pytest.mark.parametrize("cut", CUTS.values(), ids=CUTS)
def test_icon_shows_the_drawing_to_the_pixel(cut):
    assert pixels(png(cut)) == pixels(drawn(cut))


@pytest.mark.parametrize("cut", CUTS.values(), ids=CUTS)
def test_icon_takes_little_more_than_half(cut):
    assert len(png(cut)) < 0.6 * len(drawn(cut))
