"""What becomes of a find: accepted into the census or refused with a reason, and back.

The census is a file of its own. It is written inside the inbox's transaction, and
writing the same twice changes nothing; so whatever cuts a decision short, making it
once more completes it.
"""

import sqlite3
from collections.abc import Callable
from pathlib import Path

from fieldid.errors import InboxError
from fieldid.inbox.looking import Decision, What, decision_of
from fieldid.inbox.store import writing

GONE = "This find is not in the inbox any more."
DECIDED = "This find was {what} already: undo that first."
OTHER = (
    "Another edition of this find stands in the census, and one object counts once: "
    "undo that decision first."
)
UNDONE = "This decision was undone already."


def accept(
    inbox: Path, number: int, *, rows: str, now: str, write: Callable[[], None]
) -> None:
    """Accepts a find; `write` puts it into the census, `rows` says what that was."""
    with writing(inbox) as file:
        _check(file, number)
        if file.execute(
            "SELECT 1 FROM decision JOIN find ON find.number = decision.find "
            "WHERE undone IS NULL AND what = 'accepted' "
            "AND id = (SELECT id FROM find WHERE number = ?)",
            (number,),
        ).fetchone():
            raise InboxError(OTHER)
        _decide(file, number, "accepted", "", rows, now)
        write()


def refuse(inbox: Path, number: int, *, reason: str, now: str) -> None:
    """Refuses a find; the reason is kept."""
    with writing(inbox) as file:
        _check(file, number)
        _decide(file, number, "refused", reason, "[]", now)


def undo(
    inbox: Path, decision: int, *, now: str, unwrite: Callable[[Decision], None]
) -> Decision:
    """Takes a decision back; `unwrite` takes an accepted find out of the census."""
    with writing(inbox) as file:
        row = file.execute(
            "SELECT * FROM decision WHERE number = ?", (decision,)
        ).fetchone()
        if row is None or row["undone"]:
            raise InboxError(UNDONE)
        made = decision_of(row)
        file.execute("UPDATE decision SET undone = ? WHERE number = ?", (now, decision))
        if made.what == "accepted":
            unwrite(made)
    return made


def _check(file: sqlite3.Connection, number: int) -> None:
    """Refuses what is gone or was decided on meanwhile, on another page perhaps."""
    if not file.execute("SELECT 1 FROM find WHERE number = ?", (number,)).fetchone():
        raise InboxError(GONE)
    row = file.execute(
        "SELECT what FROM decision WHERE find = ? AND undone IS NULL", (number,)
    ).fetchone()
    if row:
        raise InboxError(DECIDED.format(what=row["what"]))


def _decide(
    file: sqlite3.Connection, number: int, what: What, reason: str, rows: str, now: str
) -> None:
    file.execute(
        "INSERT INTO decision (find, what, reason, rows, at) VALUES (?, ?, ?, ?, ?)",
        (number, what, reason, rows, now),
    )
