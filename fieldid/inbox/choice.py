"""Finds of the inbox to try a guide on: those that it can judge."""

from dataclasses import dataclass
from pathlib import Path

from fieldid.engine.find import Find
from fieldid.engine.guide import Guide
from fieldid.errors import FindError
from fieldid.guides import finds
from fieldid.inbox.entry import Entry, entry_from
from fieldid.inbox.store import reading

MOST = 100
"""The latest so many."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """A find under the guide that it was asked for, by its number in the inbox."""

    number: int
    title: str
    find: Find


def chosen(inbox: Path, guide: Guide) -> tuple[Chosen, ...]:
    """The finds that the guide can judge as it is, the latest first; none that was
    refused, and none at all where there is no inbox yet.
    """
    with reading(inbox) as file:
        rows = file.execute(
            "SELECT number, entry FROM find WHERE guide = ? AND number NOT IN "
            "(SELECT find FROM decision WHERE undone IS NULL AND what = 'refused') "
            "ORDER BY number DESC LIMIT ?",
            (guide.id, MOST),
        ).fetchall()
    entries = ((row["number"], entry_from(row["entry"])) for row in rows)
    return tuple(
        Chosen(number, named(number, entry), find)
        for number, entry in entries
        if (find := _judgeable(entry, guide))
    )


def named(number: int, entry: Entry) -> str:
    """What a find is called in a list: its title, if its owner gave it one."""
    return entry.title.strip() or f"Find {number}"


def _judgeable(entry: Entry, guide: Guide) -> Find | None:
    try:
        return finds.load(entry.find, [guide])
    except FindError:
        return None
