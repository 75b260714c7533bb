"""A find as its phone kept it: its shape, its limits, and how one is made of whatever
lies in a file. What comes out is built anew from known fields alone.
"""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from hashlib import sha256
from json import dumps, loads
from typing import Any

from marshmallow import ValidationError

from fieldid.errors import InboxError
from fieldid.inbox.fields import (
    DEAREST,
    Currency,
    Day,
    Id,
    Kept,
    Number,
    Rows,
    Short,
    Table,
    Text,
    Time,
    Told,
    Uuid,
    Whole,
)
from fieldid.inbox.findshape import Finds, check, written_find
from fieldid.inbox.values import number, sentence, shown

FORMAT = 1
MOST_PHOTOS, MOST_PHOTO_BYTES = 6, 5_000_000
_FLAGS, _PIXELS = 200, 100_000


@dataclass(frozen=True, slots=True)
class Note:
    """What an entry says of a photo of its own; `length` is how many bytes it has."""

    id: str
    clue: str | None
    width: int
    height: int
    length: int


@dataclass(frozen=True, slots=True)
class Entry:
    """A find with what its owner says of it; `find` is as a file has it.

    `say` and `flags` are of the verdict that the phone gave when it `judged`, by the
    guide with that `stamp`, last `updated` on that day.
    """

    id: str
    guide: str
    find: Mapping[str, Any]
    stamp: str
    updated: str
    say: str
    flags: tuple[str, ...]
    judged: str
    title: str
    note: str
    place: str
    date: str
    asked: float | None
    paid: float | None
    currency: str
    created: str
    changed: str
    photos: tuple[Note, ...] = ()

    @property
    def mark(self) -> str:
        """A hash of all it says beside its photos, the same in every file."""
        said = {name: getattr(self, name) for name in _SAID}
        return sha256(dumps(said, sort_keys=True).encode()).hexdigest()

    @property
    def text(self) -> str:
        """The entry as the inbox keeps it."""
        return dumps(asdict(self))


def entry_from(text: str) -> Entry:
    """The entry that the inbox kept."""
    told = loads(text)
    notes = tuple(Note(**note) for note in told.pop("photos"))
    return Entry(**(told | {"flags": tuple(told["flags"])}), photos=notes)


_SAID = tuple(name for name in Entry.__dataclass_fields__ if name != "photos")


class Format(Told):
    """The number of a find's format."""

    wanted = f"{FORMAT} is needed"

    def _deserialize(self, value: object, *args: object, **kwargs: object) -> int:
        found = number(value)
        if found is not None and found > FORMAT and found == int(found):
            raise ValidationError(
                "This find was written by a newer version of the app "
                f"(format {int(found)}; this one reads {FORMAT})."
            )
        if found != FORMAT:
            raise self.refused(shown(value))
        return FORMAT


class Versions(Kept):
    """The guide by which a phone judged."""

    stamp = Short("guide's stamp")
    updated = Day("guide's day")


class Ranges(Kept):
    """The range of a verdict, which is judged anew here."""

    since = Whole("range's first year")
    until = Whole("range's last year")


class Verdicts(Kept):
    """A verdict in short."""

    say = Text("verdict's sentence")
    leading = Whole("leading model year", optional=True)
    probability = Number("verdict's probability", 0, 1)
    outside = Number("probability of none of these", 0, 1)
    range = Table("range", Ranges(), optional=True)
    flags = Rows("red flags", Text("red flag"), _FLAGS)


class Notes(Kept):
    """A photo."""

    id = Uuid("photo's id")
    clue = Id("photo's clue", optional=True)
    width = Whole("photo's width", 1, _PIXELS)
    height = Whole("photo's height", 1, _PIXELS)
    bytes = Whole("photo's number of bytes", 1, MOST_PHOTO_BYTES)


class Entries(Kept):
    """A find as its phone kept it."""

    format = Format("find's format")
    id = Uuid("find's id")
    guide = Id("guide")
    find = Table("find's readings", Finds())
    version = Table("guide's version", Versions())
    verdict = Table("verdict", Verdicts())
    judged = Time("time of the verdict")
    title = Short("title")
    note = Text("note")
    place = Short("place")
    date = Day("date")
    asked = Number("price asked", 0, DEAREST, optional=True)
    paid = Number("price paid", 0, DEAREST, optional=True)
    currency = Currency("currency")
    photos = Rows(
        "photos",
        Table("photo", Notes()),
        MOST_PHOTOS,
        optional=True,
        key=lambda note: note["id"],
    )
    created = Time("time of keeping")
    changed = Time("time of the last change")


_ENTRY = Table("find", Entries())


def entry_of(json: object) -> Entry:
    """The entry, or an InboxError that says why it is none."""
    try:
        told = _ENTRY.deserialize(json)
        check(told["find"], told["guide"])
    except ValidationError as error:
        raise InboxError(sentence(error.messages)) from error
    version, verdict = told.pop("version"), told.pop("verdict")
    notes = told.pop("photos") or ()
    del told["format"]
    return Entry(
        **(told | {"find": written_find(told["find"])}),
        stamp=version["stamp"],
        updated=version["updated"],
        say=verdict["say"],
        flags=verdict["flags"],
        photos=tuple(_note(note) for note in notes),
    )


def _note(note: Mapping[str, Any]) -> Note:
    rest = {name: value for name, value in note.items() if name != "bytes"}
    return Note(**rest, length=note["bytes"])
