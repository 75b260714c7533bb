"""The inbox's one file: an SQLite database, and how it is opened, read and written.

Each use has a connection of its own and at most one transaction: it is in the file
wholly or not at all, whatever happens meanwhile. The census is written inside a
decision's transaction, and writing a row twice changes nothing; so a decision that was
cut short is completed by making it once more.
"""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from fieldid.errors import InboxError

KIND = 0x66696478
"""Tells an inbox from any other database: the letters "fidx"."""
STEPS = (
    """
    CREATE TABLE arrival (
      number INTEGER PRIMARY KEY,
      hash TEXT NOT NULL UNIQUE,
      name TEXT NOT NULL,
      at TEXT NOT NULL
    );
    CREATE TABLE find (
      number INTEGER PRIMARY KEY AUTOINCREMENT,
      arrival INTEGER NOT NULL REFERENCES arrival,
      id TEXT NOT NULL,
      changed TEXT NOT NULL,
      guide TEXT NOT NULL,
      mark TEXT NOT NULL,
      entry TEXT NOT NULL,
      UNIQUE (id, changed)
    );
    CREATE INDEX of_guide ON find (guide);
    CREATE TABLE photo (
      number INTEGER PRIMARY KEY AUTOINCREMENT,
      find INTEGER NOT NULL REFERENCES find ON DELETE CASCADE,
      id TEXT NOT NULL,
      width INTEGER NOT NULL,
      height INTEGER NOT NULL,
      jpeg BLOB NOT NULL,
      UNIQUE (find, id)
    );
    CREATE TABLE decision (
      number INTEGER PRIMARY KEY AUTOINCREMENT,
      find INTEGER NOT NULL REFERENCES find,
      what TEXT NOT NULL CHECK (what IN ('accepted', 'refused')),
      reason TEXT NOT NULL,
      rows TEXT NOT NULL,
      at TEXT NOT NULL,
      undone TEXT
    );
    CREATE UNIQUE INDEX standing ON decision (find) WHERE undone IS NULL;
    """,
)
"""From each version of the file to the next; steps are only added. `photo` holds bare
JPEG files, `undone` is when a decision was taken back, which stays as a record.
"""
PATIENCE = 5.0
"""Seconds that a transaction waits for another one."""

BUSY = "The inbox is in use elsewhere. Nothing was changed: try again in a moment."
FULL = "There is no room left on the disk. Nothing was changed: make room, try again."
_SAID = {
    sqlite3.SQLITE_BUSY: BUSY,
    sqlite3.SQLITE_LOCKED: BUSY,
    sqlite3.SQLITE_FULL: FULL,
}


def beside(rules: Path) -> Path:
    """Where the inbox of a folder of guides lies: beside it, so that whoever hands the
    guides on does not hand on people's finds.

    >>> beside(Path("here/rules")).name
    'rules-inbox.sqlite'
    """
    return rules.with_name(f"{rules.name}-inbox.sqlite")


@contextmanager
def reading(path: Path) -> Iterator[sqlite3.Connection]:
    """The inbox as it is at one moment; an empty one where there is none yet."""
    with _told(path), closing(_opened(path if path.exists() else None)) as inbox:
        inbox.execute("BEGIN")
        yield inbox


@contextmanager
def writing(path: Path) -> Iterator[sqlite3.Connection]:
    """The inbox in one transaction, alone with it; kept if nothing is raised inside."""
    with _told(path):
        _create(path)
        with closing(_opened(path)) as inbox:
            inbox.execute("BEGIN IMMEDIATE")
            try:
                yield inbox
                inbox.execute("COMMIT")
            except BaseException:
                # A full disk may have rolled it back already.
                with suppress(sqlite3.OperationalError):
                    inbox.execute("ROLLBACK")
                raise


@contextmanager
def _told(path: Path) -> Iterator[None]:
    """Turns what the file or the disk refuses into a sentence."""
    try:
        yield
    except (sqlite3.IntegrityError, sqlite3.ProgrammingError):
        raise
    except sqlite3.DatabaseError as error:
        code = getattr(error, "sqlite_errorcode", 0) & 0xFF
        told = f"The inbox {path.name} cannot be used: {error}. Nothing was changed."
        raise InboxError(_SAID.get(code, told)) from error


def _create(path: Path) -> None:
    """Makes the file for its owner alone: it holds people's finds."""
    try:
        os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))
    except OSError as error:
        what = f"The inbox {path.name} cannot be written: {error.strerror}."
        raise InboxError(what) from error


def _opened(path: Path | None) -> sqlite3.Connection:
    inbox = sqlite3.connect(path or ":memory:", timeout=PATIENCE, isolation_level=None)
    try:
        inbox.row_factory = sqlite3.Row
        inbox.execute("PRAGMA foreign_keys = ON")
        # What a hostile file could bring along is neither trusted nor run.
        inbox.execute("PRAGMA trusted_schema = OFF")
        inbox.execute("PRAGMA journal_mode = WAL")
        inbox.execute("PRAGMA synchronous = FULL")
        _bring_up(inbox, str(path and path.name))
    except BaseException:
        inbox.close()
        raise
    return inbox


def _bring_up(inbox: sqlite3.Connection, name: str) -> None:
    """Gives a new file its tables, and an older one what came since."""
    if _version(inbox, name) == len(STEPS):
        return
    inbox.execute("BEGIN IMMEDIATE")
    # Somebody else may have been quicker.
    for step in STEPS[_version(inbox, name) :]:
        for statement in step.split(";"):
            inbox.execute(statement)
    inbox.execute(f"PRAGMA application_id = {KIND}")
    inbox.execute(f"PRAGMA user_version = {len(STEPS)}")
    inbox.execute("COMMIT")


def _version(inbox: sqlite3.Connection, name: str) -> int:
    """The version of an inbox, 0 if it is empty; anything else is refused."""
    (kind,) = inbox.execute("PRAGMA application_id").fetchone()
    (version,) = inbox.execute("PRAGMA user_version").fetchone()
    (tables,) = inbox.execute("SELECT count(*) FROM sqlite_schema").fetchone()
    if kind != KIND and (tables or version or kind):
        raise InboxError(f"The file {name} is another database, and no inbox.")
    if version > len(STEPS):
        raise InboxError(
            f"The inbox {name} was written by a newer version of fieldid "
            f"(format {version}; this one reads {len(STEPS)})."
        )
    return int(version)
