import io
import random
import struct
import zlib
from collections.abc import Sequence

import pytest
from PIL import Image

from fieldid.errors import BuildError
from fieldid.web.icons import CUTS, icon, png
from fieldid.web.indexed import indexed

SIDE = 9
WAYS = range(5)


def chunk(name: bytes, body: bytes) -> bytes:
    checked = struct.pack(">I", zlib.crc32(name + body))
    return struct.pack(">I", len(body)) + name + body + checked


def told(rows: bytes, *, bits: int = 8, parted: int = 1) -> bytes:
    """A PNG that tells these rows as they are, its pixels in so many chunks."""
    head = struct.pack(">IIBBBBB", SIDE, SIDE, bits, 6, 0, 0, 0)
    packed = zlib.compress(rows)
    size = -(-len(packed) // parted)
    pixels = [packed[i : i + size] for i in range(0, len(packed), size)]
    parts = ((b"IHDR", head), *((b"IDAT", each) for each in pixels), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunk(*part) for part in parts)


def noise(way: int, values: Sequence[int] = range(256)) -> bytes:
    """Rows of any of the bytes, all told in one of the ways of PNG."""
    chance = random.Random(way)
    rows = (chance.choices(values, k=4 * SIDE) for _ in range(SIDE))
    return b"".join(bytes((way, *row)) for row in rows)


def pixels(data: bytes) -> bytes:
    return Image.open(io.BytesIO(data)).convert("RGBA").tobytes()


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("values", [range(256), (0, 1, 255)])
def test_pixels_stay_as_they_were(way, values):
    """Few values have neighbours that lie as near to what is expected."""
    drawn = told(noise(way, values))
    made = indexed(drawn)

    assert Image.open(io.BytesIO(made)).mode == "P"
    assert pixels(made) == pixels(drawn)


def test_pixels_may_come_in_pieces():
    assert pixels(indexed(told(noise(1), parted=3))) == pixels(told(noise(1)))


def test_ways_may_change_row_by_row():
    rows = b"".join(noise(way)[: 1 + 4 * SIDE] for way in (0, 4, 3, 1, 2, 4, 4, 1, 3))

    assert pixels(indexed(told(rows))) == pixels(told(rows))


def test_many_colours_stay_untouched(monkeypatch):
    monkeypatch.setattr("fieldid.web.indexed.MOST", SIDE * SIDE - 1)

    assert indexed(told(noise(0))) == told(noise(0))


def test_opaque_picture_has_no_opacity():
    rows = (b"\0" + b"\1\2\3\xff\4\5\6\xff\7\x08\x09\xff" * 3) * SIDE

    assert b"tRNS" not in indexed(told(rows))
    assert pixels(indexed(told(rows))) == pixels(told(rows))


def test_other_forms_are_refused():
    with pytest.raises(BuildError, match=r"form \[16, 6, 0, 0, 0\]"):
        indexed(told(noise(0), bits=16))


@pytest.mark.parametrize("name", CUTS)
def test_icon_has_a_table_of_colours(name):
    cut = CUTS[name]

    assert Image.open(io.BytesIO(png(cut))).mode == "P"
    assert f'rx="{cut.corner}"' in icon(cut)
