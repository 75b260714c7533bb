"""Whether a photo is the bare JPEG that its find says it is: a picture, and nothing of
where or by whom it was taken. No picture is decoded here.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

_START, _END, _SCAN = 0xD8, 0xD9, 0xDA
_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
"""Markers whose piece has the size; the three define tables."""
_NEEDED = range(0xC0, 0xE0)
"""What decoders need; all else is for people or programs."""
_LOOKS = {0xE0: b"JFIF\0", 0xE2: b"ICC_PROFILE\0", 0xEE: b"Adobe"}
"""Application data without which the picture would look different, by marker."""
_MARKER = re.compile(rb"\xff[\x02-\xcf\xd8-\xfe]")
"""Fill bytes, stuffed zeros and restarts are none."""
_MOST_SEGMENTS = 20_000
_MOST_PIXELS = 25_000_000
"""The app writes 1600 pixels a side; a few bytes may claim thousands of millions, which
would fill the memory of whoever looks.
"""
_NO_JPEG = "It is no JPEG picture, or damaged."


@dataclass(frozen=True, slots=True)
class _Segment:
    """A piece from its marker on; what it carries begins at `inside`."""

    marker: int
    start: int
    inside: int
    end: int


def fault(content: bytes, *, width: int, height: int, length: int) -> str:
    """What is wrong with a photo of which that is said; empty if nothing is.

    >>> fault(b"GIF89a", width=1, height=1, length=6)
    'It is no JPEG picture, or damaged.'
    """
    if len(content) != length:
        return f"It has {len(content)} bytes, and the find says {length}."
    segments = list(_segments(content))
    if not segments or segments[-1].marker != _END:
        return _NO_JPEG
    size = _size(content, segments)
    if size is None:
        return _NO_JPEG
    if size != (width, height):
        told = f"{size[0]} by {size[1]} pixels"
        return f"It has {told}, and the find says {width} by {height}."
    if width * height > _MOST_PIXELS:
        return f"It has {width} by {height} pixels, more than the app writes."
    covered = sum(segment.end - segment.start for segment in segments)
    if covered < len(content) or any(_is_note(content, each) for each in segments):
        return "It holds more than a picture, perhaps where it was taken."
    return ""


def _segments(content: bytes) -> Iterator[_Segment]:
    """All pieces up to the end of the image, each scan with its data; no end if the
    file is cut short or damaged.

    What lies between two pieces belongs to none: decoders skip it, too.
    """
    if content[:3] != b"\xff\xd8\xff":
        return
    yield _Segment(_START, 0, 2, 2)
    at = 2
    for _ in range(_MOST_SEGMENTS):
        found = _MARKER.search(content, at)
        if found is None:
            return
        start, marker = found.start(), content[found.start() + 1]
        if marker == _END:
            yield _Segment(marker, start, start + 2, start + 2)
            return
        end = start + 2 + int.from_bytes(content[start + 2 : start + 4])
        if end < start + 4 or end > len(content):
            return
        if marker == _SCAN:
            after = _MARKER.search(content, end)
            end = after.start() if after else len(content)
        yield _Segment(marker, start, start + 4, end)
        at = end


def _size(content: bytes, segments: list[_Segment]) -> tuple[int, int] | None:
    """Width and height as the first frame says; None if it does not."""
    for segment in segments:
        if segment.marker in _FRAMES:
            # One byte of precision comes first.
            inside = content[segment.inside : segment.end]
            height, width = int.from_bytes(inside[1:3]), int.from_bytes(inside[3:5])
            return (width, height) if width and height and len(inside) >= 5 else None
    return None


def _is_note(content: bytes, segment: _Segment) -> bool:
    """Whether the picture looks the same without it."""
    if segment.marker in _NEEDED:
        return False
    look = _LOOKS.get(segment.marker)
    carried = content[segment.inside : segment.end]
    return look is None or not carried.startswith(look)
