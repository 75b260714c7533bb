"""A file of finds into the inbox: what is new is added, and nothing twice."""

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass, replace
from hashlib import file_digest
from pathlib import Path
from typing import BinaryIO

from fieldid.errors import InboxError
from fieldid.inbox.entry import Entry, Note, entry_from
from fieldid.inbox.opening import Incoming, Refused, opened
from fieldid.inbox.store import reading, writing
from fieldid.inbox.zipped import Stored

OTHER = (
    "Another find with this id and the same time of the last change is here, and it "
    "says something else: which of the two is right cannot be known."
)
_LONGEST_NAME = 100


@dataclass(frozen=True, slots=True)
class Taken:
    """What became of a file: how many of its finds were `added`, took the place of an
    older edition (`renewed`), were given photos that had been missing (`pictured`), are
    here `already`, or are `older` than what is here; and which were refused.

    `before` is when the very same file was taken in, if it was.
    """

    name: str
    added: int = 0
    renewed: int = 0
    pictured: int = 0
    already: int = 0
    older: int = 0
    refused: tuple[Refused, ...] = ()
    before: str = ""


def take(inbox: Path, stream: BinaryIO, *, name: str, now: str) -> Taken:
    """Takes in a file, all of its good finds at one stroke; an InboxError if it is no
    file of finds. `now` is the time, as entries write it.
    """
    name = _shown(name)
    stream.seek(0)
    # SHA-256 of the whole file; it is read in pieces.
    hash = file_digest(stream, "sha256").hexdigest()  # type: ignore[arg-type]  # any file that is open will do
    with reading(inbox) as before:
        known = before.execute("SELECT at FROM arrival WHERE hash = ?", (hash,))
        if row := known.fetchone():
            return Taken(name, before=row["at"])
    found = opened(stream, name=name, now=now)
    return _written(inbox, found.incoming, found.refused, (hash, name, now))


def _written(
    inbox: Path,
    incoming: Iterable[Incoming],
    refused: tuple[Refused, ...],
    arrival: tuple[str, str, str],
) -> Taken:
    became: list[str] = []
    told = list(refused)
    with writing(inbox) as file:
        number = file.execute(
            "INSERT INTO arrival (hash, name, at) VALUES (?, ?, ?) "
            "ON CONFLICT (hash) DO UPDATE SET at = at RETURNING number",
            arrival,
        ).fetchone()["number"]
        for each in incoming:
            try:
                became.append(_kept(file, each, number))
            except InboxError as error:
                told.append(Refused(each.place, each.entry.title, str(error)))
        if told:
            # A newer version may take what this one refuses: it is not done with.
            file.execute(
                "UPDATE arrival SET hash = hash || ' ' || number WHERE number = ?",
                (number,),
            )
    told.sort(key=lambda each: each.place)
    return Taken(
        arrival[1],
        added=became.count("added"),
        renewed=became.count("renewed"),
        pictured=became.count("pictured"),
        already=became.count("already"),
        older=became.count("older"),
        refused=tuple(told),
    )


def _kept(file: sqlite3.Connection, each: Incoming, arrival: int) -> str:
    """What became of a find, as the field of `Taken` that counts it."""
    entry = each.entry
    newest = file.execute(
        "SELECT find.*, decision.number AS decided FROM find "
        "LEFT JOIN decision ON decision.find = find.number AND undone IS NULL "
        "WHERE id = ? ORDER BY changed DESC LIMIT 1",
        (entry.id,),
    ).fetchone()
    if newest and each.alone:
        return "already"
    if newest is None or (newest["changed"] < entry.changed and newest["decided"]):
        _add(file, each, arrival)
        return "added" if newest is None else "renewed"
    if newest["changed"] < entry.changed:
        _replace(file, each, newest["number"], arrival)
        return "renewed"
    if newest["changed"] > entry.changed:
        return "older"
    if newest["mark"] != entry.mark:
        raise InboxError(OTHER)
    return _pictured(file, each, newest)


def _add(file: sqlite3.Connection, each: Incoming, arrival: int) -> None:
    number = file.execute(
        "INSERT INTO find (arrival, id, changed, guide, mark, entry) "
        "VALUES (:arrival, :id, :changed, :guide, :mark, :entry) RETURNING number",
        _columns(each.entry, arrival),
    ).fetchone()["number"]
    _put_photos(file, number, each.held)


def _replace(
    file: sqlite3.Connection, each: Incoming, number: int, arrival: int
) -> None:
    """A newer edition in the place of one that waits; photos that it still has stay."""
    file.execute(
        "UPDATE find SET arrival = :arrival, changed = :changed, guide = :guide, "
        "mark = :mark, entry = :entry WHERE number = :number",
        {**_columns(each.entry, arrival), "number": number},
    )
    own = {note.id for note in each.entry.photos}
    for row in file.execute(
        "SELECT number, id FROM photo WHERE find = ?", (number,)
    ).fetchall():
        if row["id"] not in own:
            file.execute("DELETE FROM photo WHERE number = ?", (row["number"],))
    _put_photos(file, number, each.held)


def _pictured(file: sqlite3.Connection, each: Incoming, here: sqlite3.Row) -> str:
    """The same edition once more: perhaps with photos that had been missing."""
    before = entry_from(here["entry"])
    listed = {note.id for note in before.photos}
    more = tuple(note for note in each.entry.photos if note.id not in listed)
    if more:
        whole = replace(before, photos=(*before.photos, *more))
        file.execute(
            "UPDATE find SET entry = ? WHERE number = ?", (whole.text, here["number"])
        )
    added = _put_photos(file, here["number"], each.held)
    return "pictured" if added else "already"


def _put_photos(
    file: sqlite3.Connection, number: int, held: Iterable[tuple[Note, Stored]]
) -> int:
    """How many photos are new; they are read from the file one at a time."""
    return sum(
        file.execute(
            "INSERT INTO photo (find, id, width, height, jpeg) "
            "VALUES (?, ?, ?, ?, ?) ON CONFLICT DO NOTHING",
            (number, note.id, note.width, note.height, stored.read()),
        ).rowcount
        for note, stored in held
    )


def _columns(entry: Entry, arrival: int) -> dict[str, object]:
    return {
        "arrival": arrival,
        "id": entry.id,
        "changed": entry.changed,
        "guide": entry.guide,
        "mark": entry.mark,
        "entry": entry.text,
    }


def _shown(name: str) -> str:
    """A file's name as a page can show it: it is never used as a path."""
    seen = "".join(c for c in name if c.isprintable())
    return seen[-_LONGEST_NAME:].encode("utf-8", "replace").decode() or "a file"
