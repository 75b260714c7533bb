"""Whether a place in a guide still holds the table that a form was opened with."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from fieldid.guides.refusals import Path
from fieldid.workbench.text.places import held, named


@dataclass(frozen=True, slots=True)
class Trait:
    """What a table in a list is known by: its short name, its words, how many there
    are in the list.
    """

    id: str
    name: str
    count: int


def traits(data: Any, path: Path) -> str:
    """What a form takes along of its table and of those that it lies in."""
    found = [[each.id, each.name, each.count] for each in _traits(data, path)]
    return json.dumps(found, ensure_ascii=False)


def is_same(was: str, data: Any, path: Path) -> bool:
    """Whether what a form took along is of the table that lies at the path now."""
    before, now = _brought(was), list(_traits(data, path))
    if len(before) != len(now):
        return False
    lists = [path[:n] for n, key in enumerate(path) if isinstance(key, int)]
    return all(
        _is_known(one, other, held(data, at))
        for one, other, at in zip(before, now, lists, strict=True)
    )


def _traits(data: Any, path: Path) -> Iterator[Trait]:
    for n, key in enumerate(path):
        if isinstance(key, int):
            lines, table = held(data, path[:n]), held(data, path[: n + 1])
            count = len(lines) if isinstance(lines, list) else 0
            yield Trait(_id(table), named(table), count)


def _id(table: Any) -> str:
    return str(table.get("id", "")) if isinstance(table, Mapping) else ""


def _is_known(before: Trait, now: Trait, lines: Any) -> bool:
    """By the short name or the words; what has no short name, by its place in a list
    of as many, unless its words stand elsewhere there.
    """
    if before.name == now.name or (before.id and before.id == now.id):
        return True
    if before.id or now.id or before.count != now.count:
        return False
    return before.name not in map(named, lines)


def _brought(was: str) -> list[Trait]:
    """What a form brought along, if it is what ours brings."""
    try:
        return [
            Trait(str(id), str(name), int(count)) for id, name, count in json.loads(was)
        ]
    except (ValueError, TypeError, RecursionError):
        return []
