"""What is in the inbox, to be looked at: the list, one find, one photo."""

import sqlite3
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from fieldid.inbox.entry import Entry, Note, entry_from
from fieldid.inbox.jpeg import fault
from fieldid.inbox.store import reading

MOST_LISTED = 200
"""So many finds of a kind a list shows at once."""

What = Literal["accepted", "refused"]


@dataclass(frozen=True, slots=True)
class Decision:
    """What became of the find of that number, and when; `reason` is why it was refused,
    `rows` what was written of it into the census; `undone` is when it was taken back.
    """

    number: int
    find: int
    what: What
    reason: str
    rows: str
    at: str
    undone: str


@dataclass(frozen=True, slots=True)
class Line:
    """A find in a list."""

    number: int
    entry: Entry
    photos: int
    decision: Decision | None


@dataclass(frozen=True, slots=True)
class Shelf:
    """The finds that wait, the oldest first, and those decided on, the latest first;
    how many of each there are; and the find of the last decision that stands.
    """

    waiting: tuple[Line, ...]
    decided: tuple[Line, ...]
    waits: int
    decisions: int
    last: Line | None


@dataclass(frozen=True, slots=True)
class Held:
    """A photo of a find, with the number that it is asked for by; none if the file that
    brought the find did not hold it.
    """

    note: Note
    number: int | None


@dataclass(frozen=True, slots=True)
class Kept:
    """One find, with where it came from, its neighbours among those that wait, and what
    was decided on it and on `other` editions of it.
    """

    number: int
    entry: Entry
    file: str
    at: str
    photos: tuple[Held, ...]
    decision: Decision | None
    before: tuple[Decision, ...]
    other: tuple[Decision, ...]
    previous: int | None
    next: int | None


_LINES = (
    "SELECT find.number AS own, find.entry, decision.*, "
    "(SELECT count(*) FROM photo WHERE photo.find = find.number) AS photos "
    "FROM find LEFT JOIN decision ON decision.find = find.number AND undone IS NULL "
)
_OF_OTHERS = (
    "undone IS NULL AND find IN (SELECT number FROM find WHERE id = ? AND number <> ?)"
)
_WAITS = "find.number NOT IN (SELECT find FROM decision WHERE undone IS NULL)"


def shelf(inbox: Path) -> Shelf:
    """All that is in the inbox, as far as a list shows it."""
    with reading(inbox) as file:
        waiting = file.execute(
            f"{_LINES} WHERE decision.number IS NULL ORDER BY own LIMIT ?",
            (MOST_LISTED,),
        ).fetchall()
        decided = file.execute(
            f"{_LINES} WHERE decision.number IS NOT NULL "
            "ORDER BY decision.number DESC LIMIT ?",
            (MOST_LISTED,),
        ).fetchall()
        waits = _count(file, f"SELECT count(*) FROM find WHERE {_WAITS}")
        decisions = _count(file, "SELECT count(*) FROM decision WHERE undone IS NULL")
    lines = tuple(_line(row) for row in decided)
    return Shelf(
        tuple(_line(row) for row in waiting),
        lines,
        waits,
        decisions,
        lines[0] if lines else None,
    )


def kept(inbox: Path, number: int) -> Kept | None:
    """The find of this number; None if there is none."""
    with reading(inbox) as file:
        row = file.execute(
            "SELECT find.*, name, at FROM find "
            "JOIN arrival ON arrival.number = find.arrival WHERE find.number = ?",
            (number,),
        ).fetchone()
        if row is None:
            return None
        entry = entry_from(row["entry"])
        own = _decisions(file, "find = ?", number)
        return Kept(
            number,
            entry,
            row["name"],
            row["at"],
            _photos(file, number, entry),
            next((each for each in own if not each.undone), None),
            tuple(each for each in own if each.undone),
            _decisions(file, _OF_OTHERS, entry.id, number),
            *_neighbours(file, number),
        )


def photo(inbox: Path, number: int) -> bytes | None:
    """The photo of this number, seen once more to be a bare JPEG; None if it is not,
    or there is none.
    """
    with reading(inbox) as file:
        row = file.execute(
            "SELECT jpeg, width, height FROM photo WHERE number = ?", (number,)
        ).fetchone()
    if row is None:
        return None
    content = bytes(row["jpeg"])
    size = {"width": row["width"], "height": row["height"]}
    return None if fault(content, **size, length=len(content)) else content


def decision_of(row: sqlite3.Row) -> Decision:
    """A decision from its row."""
    names = ("number", "find", "what", "reason", "rows", "at")
    return Decision(**{name: row[name] for name in names}, undone=row["undone"] or "")


def _line(row: sqlite3.Row) -> Line:
    decision = decision_of(row) if row["number"] is not None else None
    return Line(row["own"], entry_from(row["entry"]), row["photos"], decision)


def _decisions(
    file: sqlite3.Connection, where: str, *values: object
) -> tuple[Decision, ...]:
    rows = file.execute(f"SELECT * FROM decision WHERE {where} ORDER BY number", values)
    return tuple(decision_of(row) for row in rows)


def _photos(file: sqlite3.Connection, number: int, entry: Entry) -> tuple[Held, ...]:
    rows = file.execute("SELECT number, id FROM photo WHERE find = ?", (number,))
    numbers: dict[str, int] = {row["id"]: row["number"] for row in rows}
    return tuple(Held(note, numbers.get(note.id)) for note in entry.photos)


def _neighbours(file: sqlite3.Connection, number: int) -> tuple[int | None, int | None]:
    """The finds that wait before this one and after it."""
    row = file.execute(
        f"SELECT (SELECT max(number) FROM find WHERE number < :own AND {_WAITS}), "
        f"(SELECT min(number) FROM find WHERE number > :own AND {_WAITS})",
        {"own": number},
    ).fetchone()
    return row[0], row[1]


def _count(file: sqlite3.Connection, question: str) -> int:
    return int(file.execute(question).fetchone()[0])
