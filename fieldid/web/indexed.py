"""A PNG of few colours, written anew with a table of them: half the bytes.

Not one pixel changes. Pixels are taken as whole numbers, four bytes each, of which a
drawing has only a few; so most of the work is to look up what was reckoned before.
"""

import struct
import zlib
from collections.abc import Iterator, Sequence
from functools import lru_cache

from fieldid.errors import BuildError

MOST = 256
"""So many colours a table holds."""
_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_EIGHT_BITS, _IN_TABLE, _WITH_ALPHA = 8, 3, 6
_PIXEL = 4
_OPAQUE = b"\xff"


def indexed(png: bytes) -> bytes:
    """The same picture with a table of colours, if it has few enough; the PNG must have
    eight bits each of red, green, blue and opacity.
    """
    chunks = dict(_chunks(png))
    size, form = chunks["IHDR"][:8], list(chunks["IHDR"][8:])
    if form != [_EIGHT_BITS, _WITH_ALPHA, 0, 0, 0]:
        raise BuildError(f"a PNG to index has the form {form}, which is not known here")
    width, _ = struct.unpack(">II", size)
    rows = list(_rows(zlib.decompress(chunks["IDAT"]), width))
    # In the order in which they come, neighbours in the drawing are close in the table.
    colours = list(dict.fromkeys(pixel for row in rows for pixel in row))
    if len(colours) > MOST:
        return png
    table = [colour.to_bytes(_PIXEL, "big") for colour in colours]
    written = {
        "IHDR": size + bytes((_EIGHT_BITS, _IN_TABLE, 0, 0, 0)),
        "PLTE": b"".join(colour[:-1] for colour in table),
        "tRNS": b"".join(colour[-1:] for colour in table).rstrip(_OPAQUE),
        "IDAT": _packed(rows, colours),
        "IEND": b"",
    }
    needless = () if written["tRNS"] else ("tRNS",)
    return _SIGNATURE + b"".join(
        _chunk(name, body) for name, body in written.items() if name not in needless
    )


def _chunks(png: bytes) -> Iterator[tuple[str, bytes]]:
    """What each chunk of the file holds; several of pixels count as one."""
    place, pixels = len(_SIGNATURE), b""
    while place < len(png):
        length, name = struct.unpack(">I4s", png[place : place + 8])
        body = png[place + 8 : place + 8 + length]
        pixels += body if name == b"IDAT" else b""
        yield name.decode(), pixels if name == b"IDAT" else body
        place += length + 12


def _chunk(name: str, body: bytes) -> bytes:
    named = name.encode() + body
    return struct.pack(">I", len(body)) + named + struct.pack(">I", zlib.crc32(named))


def _rows(unpacked: bytes, width: int) -> Iterator[tuple[int, ...]]:
    """Every row of pixels, told from what is left of it and from the row above."""
    length = 1 + width * _PIXEL
    above: Sequence[int] = (0,) * width
    for start in range(0, len(unpacked), length):
        kind, *told = struct.unpack_from(f">B{width}I", unpacked, start)
        row: list[int] = []
        left = corner = 0
        for rest, up in zip(told, above, strict=True):
            left = _pixel(kind, rest, left, up, corner)
            corner = up
            row.append(left)
        above = row
        yield tuple(row)


@lru_cache(maxsize=1 << 16)
def _pixel(kind: int, rest: int, left: int, up: int, corner: int) -> int:
    """A pixel from the rest that is told of it and its three neighbours."""
    each = (pixel.to_bytes(_PIXEL, "big") for pixel in (rest, left, up, corner))
    bytewise = zip(*each, strict=True)
    found = ((told + _guess(kind, *near)) % 256 for told, *near in bytewise)
    return int.from_bytes(found, "big")


def _guess(kind: int, left: int, up: int, corner: int) -> int:
    """A byte as its neighbours let expect it, in the five ways that PNG numbers."""
    likely = left + up - corner
    nearest = min(left, up, corner, key=lambda near: abs(likely - near))
    return (0, left, up, (left + up) // 2, nearest)[kind]


def _packed(rows: Sequence[Sequence[int]], colours: Sequence[int]) -> bytes:
    """The rows as places in the table, as they are or each less the one above."""
    place = {colour: index for index, colour in enumerate(colours)}
    told = [bytes(place[pixel] for pixel in row) for row in rows]
    above = [bytes(len(told[0])), *told]
    less = (
        bytes((here - up) % 256 for here, up in zip(row, before, strict=True))
        for row, before in zip(told, above, strict=False)
    )
    ways = (
        b"".join(b"\0" + row for row in told),
        b"".join(b"\2" + row for row in less),
    )
    return min((zlib.compress(way, 9) for way in ways), key=len)
