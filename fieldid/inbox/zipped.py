"""The files of a ZIP as phones write it: stored, so that nothing is ever inflated.

The twin of the phone's reader, in the same order and with the same sentences: no figure
is trusted before another one confirms it (APPNOTE.TXT 6.3, the published description
of the format).
"""

import re
import zlib
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from struct import Struct
from typing import BinaryIO

from fieldid.errors import InboxError

_LOCAL = Struct("<4s5H3I2H")
_LISTED = Struct("<4sH5H3I2H3H2I")
_END = Struct("<4s4H2IH")
_STORED, _LOCKED, _UTF8 = 0, 1, 0x800
_FULL_2, _FULL_4 = 0xFFFF, 0xFFFFFFFF
_MOST_EXTRA = 0xFFFF
_MOST_LISTED = 512
"""A file's part of the directory is mostly 82 bytes."""
_SHOWN = 60

_DAMAGED = (
    "This ZIP file is damaged: its directory does not describe it. "
    "Choose another copy of it."
)
_LARGE = "This ZIP file is of the kind for more than 4 GB, which cannot be read here."
_GONE = "The file can no longer be read: choose it again."


@dataclass(frozen=True, slots=True)
class _Says:
    """What both headers of a file must agree on."""

    flags: int
    method: int
    crc: int
    packed: int
    size: int
    named: int


@dataclass(frozen=True, slots=True)
class _Listed:
    """A file as the directory has it, which is on this disk, and begins there."""

    name: str
    says: _Says
    disk: int
    at: int


@dataclass(frozen=True, slots=True)
class Stored:
    """A file that lies in the ZIP between two places, its header included."""

    stream: BinaryIO
    name: str
    says: _Says
    start: int
    stop: int

    def read(self) -> bytes:
        """Its bytes, once its own header and its check sum were seen to agree."""
        whole = _between(self.stream, self.start, self.stop)
        mark, says, extra = _own(whole)
        at = _LOCAL.size + says.named
        agrees = (
            mark == b"PK\3\4"
            and says == self.says
            and at + extra + says.size == len(whole)
            and _decoded(whole[_LOCAL.size : at]) == self.name
        )
        if not agrees:
            raise InboxError(f"This ZIP file says two things about {self.name}.")
        found = whole[at + extra :]
        if zlib.crc32(found) != says.crc:
            raise InboxError(
                f"In this ZIP file {self.name} is damaged: its check sum differs."
            )
        return found


def unzip(stream: BinaryIO, room: Callable[[str], int | None]) -> dict[str, Stored]:
    """The files by name; each one's bytes are read, and checked, when asked for.

    `room` gives the most bytes that a file of a name may have; None for a name that has
    no business here.
    """
    at, length, count = _ending(stream)
    files = list(_directory(_between(stream, at, at + length), count))
    for file in files:
        _check(file, room(file.name))
    if len({file.name for file in files}) < len(files):
        raise InboxError("This ZIP file holds two files of one name.")
    return {stored.name: stored for stored in _places(stream, files, at)}


def size_of(stream: BinaryIO) -> int:
    """How many bytes there are."""
    return stream.seek(0, 2)


def _ending(stream: BinaryIO) -> tuple[int, int, int]:
    """Where the directory lies, its length, and how many files it lists."""
    last = size_of(stream) - _END.size
    if last < 0:
        raise InboxError("This file is too short to be a ZIP file.")
    mark, disk, first, on_disk, count, length, at, comment = _END.unpack(
        _between(stream, last, last + _END.size)
    )
    if mark != b"PK\5\6" or comment != 0:
        raise InboxError("This is no ZIP file, or its end is missing.")
    if count == _FULL_2 or _FULL_4 in (length, at):
        raise InboxError(_LARGE)
    if disk != 0 or first != 0 or on_disk != count:
        raise InboxError("This is one of several parts of a ZIP file.")
    if at + length != last or length > count * _MOST_LISTED:
        raise InboxError(_DAMAGED)
    return at, length, count


def _directory(directory: bytes, count: int) -> Iterator[_Listed]:
    at = 0
    for _ in range(count):
        named = at + _LISTED.size
        if named > len(directory):
            raise InboxError(_DAMAGED)
        (
            mark,
            _,
            _,
            flags,
            method,
            _,
            _,
            crc,
            packed,
            size,
            name,
            extra,
            comment,
            *rest,
        ) = _LISTED.unpack_from(directory, at)
        disk, _, _, place = rest
        at = named + name + extra + comment
        if mark != b"PK\1\2" or at > len(directory):
            raise InboxError(_DAMAGED)
        says = _Says(flags, method, crc, packed, size, name)
        yield _Listed(_decoded(directory[named : named + name]), says, disk, place)
    if at != len(directory):
        raise InboxError(_DAMAGED)


def _check(file: _Listed, room: int | None) -> None:
    """Refuses what is not simply stored here."""
    says = file.says
    if room is None:
        raise InboxError(
            f"This ZIP file holds {_shown(file.name)}, which does not belong in it."
        )
    if says.flags & _LOCKED:
        raise InboxError("This ZIP file is locked with a password: unlock it first.")
    if _FULL_4 in (says.packed, says.size, file.at):
        raise InboxError(_LARGE)
    if says.method != _STORED or says.flags & ~_UTF8:
        raise InboxError(
            "This ZIP file is compressed. Choose the file as it was exported, or pack "
            "it again without compression."
        )
    if says.packed != says.size or file.disk != 0:
        raise InboxError(_DAMAGED)
    if says.size > room:
        raise InboxError(
            f"In this ZIP file {file.name} is too large: at most {room} bytes."
        )


def _places(
    stream: BinaryIO, files: Sequence[_Listed], directory: int
) -> Iterator[Stored]:
    """Where each file begins and ends; together they leave no gap and share no byte."""
    ordered = sorted(files, key=lambda file: file.at)
    starts = [*(file.at for file in ordered), directory]
    if starts[0] != 0:
        raise InboxError(_DAMAGED)
    for file, stop in zip(ordered, starts[1:], strict=True):
        over = stop - file.at - (_LOCAL.size + file.says.named + file.says.size)
        if over < 0:
            raise InboxError("In this ZIP file two files lie over each other.")
        if over > _MOST_EXTRA:
            raise InboxError(_DAMAGED)
        yield Stored(stream, file.name, file.says, file.at, stop)


def _own(whole: bytes) -> tuple[bytes, _Says, int]:
    """What stands before the bytes of a file: its mark, what it says, what is extra."""
    mark, _, flags, method, _, _, crc, packed, size, name, extra = _LOCAL.unpack_from(
        whole
    )
    return mark, _Says(flags, method, crc, packed, size, name), extra


def _between(stream: BinaryIO, start: int, stop: int) -> bytes:
    stream.seek(start)
    found = stream.read(stop - start)
    if len(found) != stop - start:
        raise InboxError(_GONE)
    return found


def _decoded(name: bytes) -> str:
    return name.decode("utf-8", "replace")


def _shown(name: str) -> str:
    """A name as a sentence can show it, whatever it holds."""
    seen = re.sub(r"\s+", " ", "".join(c if c.isprintable() else " " for c in name))
    return f'"{seen[:_SHOWN]}..."' if len(seen) > _SHOWN else f'"{seen}"'
