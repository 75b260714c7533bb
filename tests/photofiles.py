"""Photos made in code, as cameras write them: turned, with a place, cut short, huge."""

import io
import random
import struct
import zlib

from PIL import Image

SIZE = (240, 180)
CORNERS = ("red", "lime", "blue", "yellow")
"""Colours of an upright photo: top left, top right, bottom left, bottom right."""
PLACE = {1: "N", 2: (48.0, 12.0, 30.0), 3: "E", 4: (16.0, 22.0, 5.0)}
XMP = b"http://ns.adobe.com/xap/1.0/\0<x exif:GPSLatitude='48,12.5N'/>"

# How a picture is stored that the given orientation turns upright again.
_STORED = {
    1: (),
    2: (Image.Transpose.FLIP_LEFT_RIGHT,),
    3: (Image.Transpose.ROTATE_180,),
    4: (Image.Transpose.FLIP_TOP_BOTTOM,),
    5: (Image.Transpose.TRANSPOSE,),
    6: (Image.Transpose.ROTATE_90,),
    7: (Image.Transpose.TRANSVERSE,),
    8: (Image.Transpose.ROTATE_270,),
}


def upright(size=SIZE) -> Image.Image:
    """A picture of four corners in four colours."""
    width, height = size
    picture = Image.new("RGB", size)
    for i, colour in enumerate(CORNERS):
        left, top = i % 2 * (width // 2), i // 2 * (height // 2)
        picture.paste(colour, (left, top, left + width // 2, top + height // 2))
    return picture


def camera_photo(orientation: int, size=SIZE, **options) -> bytes:
    """A JPEG stored as a camera held that way stores it, with its place and more."""
    picture = upright(size)
    for step in _STORED[orientation]:
        picture = picture.transpose(step)
    exif = Image.Exif()
    exif[0x0112] = orientation
    exif[0x010F] = "Camera of nobody"
    exif.get_ifd(0x8825).update(PLACE)
    options = {"exif": exif, "comment": b"taken at home", "quality": 95, **options}
    return with_part(saved(picture, "JPEG", **options), 0xE1, XMP)


def saved(picture: Image.Image, kind: str, **options) -> bytes:
    out = io.BytesIO()
    picture.save(out, kind, **options)
    return out.getvalue()


def with_part(jpeg: bytes, marker: int, inside: bytes) -> bytes:
    """The JPEG with one more part right after its start."""
    part = struct.pack(">BBH", 0xFF, marker, len(inside) + 2) + inside
    return jpeg[:2] + part + jpeg[2:]


def claiming_jpeg(width: int, height: int) -> bytes:
    """A small JPEG whose header says that it is of that size."""
    jpeg = bytearray(saved(upright(), "JPEG"))
    at = jpeg.index(b"\xff\xc0")
    jpeg[at + 5 : at + 9] = struct.pack(">HH", height, width)
    return bytes(jpeg)


def claiming_png(width: int, height: int) -> bytes:
    """A PNG of a few bytes whose header says that it is of that size."""
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(inside)) + kind + inside + _check(kind + inside)
        for kind, inside in [
            (b"IHDR", header),
            (b"IDAT", zlib.compress(bytes(3 * width + 1))),
            (b"IEND", b""),
        ]
    )


def _check(data: bytes) -> bytes:
    return struct.pack(">I", zlib.crc32(data))


def huge_photo(width: int, height: int) -> bytes:
    """A whole JPEG of that size, of soft random colours."""
    soft = _grains((width // 100, height // 100)).resize((width, height))
    return saved(soft, "JPEG", quality=85)


def noise(size: int) -> bytes:
    """A picture that hardly any compression makes smaller."""
    return saved(_grains((size, size)), "PNG")


def _grains(size: tuple[int, int]) -> Image.Image:
    """The same random colours each time."""
    width, height = size
    return Image.frombytes("RGB", size, random.Random(1).randbytes(3 * width * height))


def heic_head() -> bytes:
    """The beginning of a HEIC file, and nothing that could be decoded."""
    brands = b"heic" + bytes(4) + b"mif1heic"
    return struct.pack(">I", len(brands) + 8) + b"ftyp" + brands + bytes(400)


def parts(jpeg: bytes) -> list[tuple[int, bytes]]:
    """Each part of a JPEG up to its first scan: its marker and what it carries."""
    assert jpeg[:2] == b"\xff\xd8"
    at, found = 2, []
    while not found or found[-1][0] != 0xDA:
        assert jpeg[at] == 0xFF
        length = int.from_bytes(jpeg[at + 2 : at + 4])
        found.append((jpeg[at + 1], jpeg[at + 4 : at + 2 + length]))
        at += 2 + length
    return found
