"""A file that may hold finds, opened and judged find by find.

Whoever wrote it is not trusted: what comes out is built anew, and all else is refused
in a sentence. The limits are those of the phone.
"""

import re
from codecs import BOM_UTF8
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, BinaryIO

from fieldid.errors import InboxError
from fieldid.inbox.alone import entry_alone, is_alone
from fieldid.inbox.entry import MOST_PHOTO_BYTES, Entry, Note, entry_of
from fieldid.inbox.jpeg import fault
from fieldid.inbox.jsontext import parsed
from fieldid.inbox.zipped import Stored, size_of, unzip

FORMAT = 1
APP = "fieldid"
FINDS = "finds.json"
MOST_FINDS = 5000
MOST_JSON, MOST_FILE = 10_000_000, 200_000_000
PAGE = (
    "This is a page to be read, and no file of finds. "
    "The app makes one under “Finds”: “File of all finds”."
)
_PHOTO = re.compile(r"photos/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\.jpg")
_SHOWN = 60


@dataclass(frozen=True, slots=True)
class Incoming:
    """An entry that a file brings, where in it, and those photos that come with it."""

    place: int
    entry: Entry
    held: tuple[tuple[Note, Stored], ...]
    alone: bool = False
    """Whether it is a find by itself, which is the same under the same id."""


@dataclass(frozen=True, slots=True)
class Refused:
    """A find that cannot be taken: where in the file it is, from 1 on, and why."""

    place: int
    name: str
    why: str


@dataclass(frozen=True, slots=True)
class Opened:
    """All that a file brings, in its order."""

    incoming: tuple[Incoming, ...]
    refused: tuple[Refused, ...]


def opened(stream: BinaryIO, *, name: str = "", now: str) -> Opened:
    """The finds of a file, each with a way to its photos, and those that are refused;
    an InboxError if it is no file of finds. `now` is the time, as entries write it.
    """
    size = _checked_size(stream, MOST_FILE)
    files = unzip(stream, _room) if _is_zip(stream, name) else None
    if files is None and _is_page(stream):
        raise InboxError(PAGE)
    json = parsed(_finds(stream, files, size))
    if is_alone(json):
        return _alone(json, now)
    tables = _tables(json)
    taken: dict[int, Entry] = {}
    refused: list[Refused] = []
    for place, table in enumerate(tables, start=1):
        try:
            taken[place] = entry_of(table)
        except InboxError as error:
            refused.append(Refused(place, _name_of(table), str(error)))
    incoming = []
    twice = _repeated(tuple(taken.values()))
    for place, entry in taken.items():
        try:
            _check_once(entry, twice)
            incoming.append(_brought(place, entry, files))
        except InboxError as error:
            refused.append(Refused(place, _name_of(tables[place - 1]), str(error)))
    refused.sort(key=lambda each: each.place)
    return Opened(tuple(incoming), tuple(refused))


def zipped_finds(stream: BinaryIO) -> bytes:
    """The text of the finds in a ZIP file; an InboxError says what is wrong with it."""
    size = _checked_size(stream, MOST_FILE)
    return _finds(stream, unzip(stream, _room), size)


def _checked_size(stream: BinaryIO, most: int) -> int:
    size = size_of(stream)
    if size == 0:
        raise InboxError("This file is empty.")
    if size > most:
        raise InboxError(
            f"This file has {-(-size // 10**6)} megabytes; "
            f"at most {most // 10**6} can be read."
        )
    return size


def _is_zip(stream: BinaryIO, name: str) -> bool:
    stream.seek(0)
    return name.lower().endswith(".zip") or stream.read(2) == b"PK"


def _room(name: str) -> int | None:
    """The most bytes that a file of this name may have, if it may be there at all."""
    if name == FINDS:
        return MOST_JSON
    return MOST_PHOTO_BYTES if _PHOTO.fullmatch(name) else None


def _finds(stream: BinaryIO, files: Mapping[str, Stored] | None, size: int) -> bytes:
    if files is None:
        _checked_size(stream, MOST_JSON)
        stream.seek(0)
        return stream.read(size)
    if FINDS not in files:
        raise InboxError(f"This ZIP file holds no {FINDS}, so it has no finds.")
    return files[FINDS].read()


def _is_page(stream: BinaryIO) -> bool:
    """Whether it is HTML, as a report that the app saves."""
    stream.seek(0)
    return stream.read(_SHOWN).removeprefix(BOM_UTF8).lstrip().startswith(b"<")


def _alone(json: Any, now: str) -> Opened:
    """The file of one find, which comes without photos."""
    try:
        entry = entry_alone(json, now=now)
    except InboxError as error:
        return Opened((), (Refused(1, _name_of(json), str(error)),))
    return Opened((Incoming(1, entry, (), alone=True),), ())


def _tables(json: object) -> Sequence[Any]:
    """The finds of an export, none of them looked at yet."""
    log = json if isinstance(json, dict) else {}
    form, finds = log.get("format"), log.get("finds")
    known = log.get("app") == APP
    if known and type(form) is int and form > FORMAT:
        raise InboxError(
            f"This file was written by a newer version of {APP} "
            f"(format {min(form, 10**9)}; this one reads {FORMAT})."
        )
    if not known or type(form) is bool or form != FORMAT or not isinstance(finds, list):
        raise InboxError(f"This file holds no log that {APP} exported.")
    if len(finds) > MOST_FINDS:
        raise InboxError(
            f"This file holds {len(finds)} finds; at most {MOST_FINDS} can be read."
        )
    return finds


def _repeated(entries: Sequence[Entry]) -> frozenset[str]:
    """The ids of finds, and of photos, that are there more than once."""
    ids = Counter(entry.id for entry in entries)
    photos = Counter(note.id for entry in entries for note in entry.photos)
    return frozenset(id for id, count in [*ids.items(), *photos.items()] if count > 1)


def _check_once(entry: Entry, twice: frozenset[str]) -> None:
    """Refuses all that share an id: which of them is right cannot be known."""
    if entry.id in twice:
        raise InboxError("Another find in this file has the same id.")
    if any(note.id in twice for note in entry.photos):
        raise InboxError("A photo of another find in this file has the same id.")


def _brought(place: int, entry: Entry, files: Mapping[str, Stored] | None) -> Incoming:
    """The entry, once all its photos are seen to be good."""
    if files is None:
        return Incoming(place, entry, ())
    held = []
    for number, note in enumerate(entry.photos, start=1):
        stored = files.get(f"photos/{note.id}.jpg")
        if stored is None:
            raise InboxError(f"Photo {number} is missing in this file.")
        why = photo_fault(stored.read(), note)
        if why:
            raise InboxError(f"Photo {number} cannot be taken. {why}")
        held.append((note, stored))
    return Incoming(place, entry, tuple(held))


def photo_fault(content: bytes, note: Note) -> str:
    """What is wrong with a photo of which the note is; empty if nothing is."""
    return fault(content, width=note.width, height=note.height, length=note.length)


def _name_of(table: object) -> str:
    """What a person may know a refused find by."""
    told = table if isinstance(table, dict) else {}
    texts = (told.get("title"), told.get("guide"))
    name = next((text for text in texts if isinstance(text, str) and text), "")
    return name[:_SHOWN].encode("utf-8", "replace").decode()
