"""Where things are edited: from a path in a guide to its page, and to its name."""

import ast
import re
from collections.abc import Mapping
from typing import Any

from fieldid.guides.refusals import Path
from fieldid.guides.written import dotted
from fieldid.workbench.fields.clue import CLUE, CLUE_KINDS
from fieldid.workbench.fields.entries import Entry, Rows, Table
from fieldid.workbench.fields.tables import ALONE, TABLES

ROOT = "guide"
"""How an address names the guide itself."""


def path_of(key: str) -> Path:
    """The path that a problem's key shows.

    >>> path_of("clue[1].option[3].like"), path_of("stray_for.'a b'")
    (('clue', 0, 'option', 2, 'like'), ('stray_for', 'a b'))
    """
    found: list[str | int] = []
    for bare, quoted, place in _STEP.findall(key):
        if place:
            found.append(int(place) - 1)
        else:
            found.append(bare or str(ast.literal_eval(quoted)))
    return tuple(found)


def is_table(path: Path) -> bool:
    """Whether the path leads to what has a page of its own: each key of a list has its
    place behind it, and no other has.
    """
    keys = [key for key in path if isinstance(key, str)]
    wanted: list[type] = []
    for n in range(len(keys)):
        wanted += [str] if ".".join(keys[: n + 1]) in ALONE else [str, int]
    return ".".join(keys) in TABLES and [type(key) for key in path] == wanted


def home_of(path: Path) -> tuple[Path, Path]:
    """The table on whose page the path is edited, and the rest of the path."""
    cut = next(n for n in range(len(path), -1, -1) if is_table(path[:n]))
    return path[:cut], path[cut:]


def held(data: Any, path: Path) -> Any:
    """What lies at a path of a guide's tables; None if there is nothing."""
    for key in path:
        if isinstance(key, int):
            if not isinstance(data, list) or key >= len(data):
                return None
            data = data[key]
        else:
            data = data.get(key) if isinstance(data, Mapping) else None
    return data


def table_for(path: Path, data: Any) -> Table:
    """What the page of a path asks for; a clue by its kind."""
    name = dotted(path)
    if name != "clue":
        return TABLES[name]
    kind = (held(data, path) or {}).get("kind")
    return CLUE_KINDS.get(kind, CLUE) if isinstance(kind, str) else CLUE


def named(table: Any) -> str:
    """What tells a table from its neighbours, for people and for a form that was opened
    before somebody moved it.
    """
    if not isinstance(table, Mapping):
        return ""
    words = ("name", "label", "say", "ask", "year", "years", "id", "title")
    return next((str(table[key]) for key in words if table.get(key)), "")


def counted(path: Path, place: int) -> str:
    """What a table of the list at a path is called that has no words of its own.

    >>> counted(("clue", 6, "layout"), 1)
    'Layout 2'
    """
    return f"{TABLES[dotted(path)].noun} {place + 1}"


def spoken(data: Any, home: Path, rest: Path) -> str:
    """A place in a guide in words: the table, what tells it from others, the field."""
    table = table_for(home, data)
    name = named(held(data, home)) if home else ""
    labels = (each.label for each in asked_at(table, rest) if each)
    return ": ".join((f"{table.noun} {name}".strip(), *labels))


def asked_at(table: Table, rest: Path) -> tuple[Rows | None, Entry | None]:
    """The list and the field in which a place of a table is asked for."""
    rows = next((each for each in table.rows if rest[:1] == (each.key,)), None)
    entries, within = (rows.entries, rest[1:]) if rows else (table.entries, rest)
    if rows and isinstance(next(iter(within), None), int):
        # Of a line in a list, what is in it; where there is one, it may stand alone.
        within = within[1:]
    near = (
        each for n in (len(within), 1) for each in entries if _is_at(each, within[:n])
    )
    return rows, next(near, None)


def _is_at(entry: Entry, path: Path) -> bool:
    """Whether the field is the one of the path, or holds it, or is held by it."""
    n = min(len(entry.path), len(path))
    return n > 0 and entry.path[:n] == path[:n]


def address(path: Path) -> str:
    """The path as the end of an address.

    >>> address(("clue", 0, "option", 2)), address(())
    ('clue/0/option/2', 'guide')
    """
    return "/".join(map(str, path)) or ROOT


def from_address(text: str) -> Path:
    """The path that the end of an address names."""
    if text == ROOT:
        return ()
    return tuple(int(key) if _PLACE.fullmatch(key) else key for key in text.split("/"))


_STEP = re.compile(r"""\.?([A-Za-z0-9_-]+)|\.?('[^']*'|"[^"]*")|\[(\d+)\]""")
_PLACE = re.compile(r"0|[1-9][0-9]{0,4}")
