"""From a filled-in form to a change of the guide's text, or to a new table."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Any

from fieldid.guides.edit import added, drop, put
from fieldid.guides.refusals import Path
from fieldid.workbench.fields.kinds import MisreadError
from fieldid.workbench.forms.form import Opened, Slot, tell
from fieldid.workbench.forms.labels import with_ids
from fieldid.workbench.forms.units import without_unit
from fieldid.workbench.text.drafts import tables
from fieldid.workbench.text.places import held


def changed(opened: Opened, text: str) -> str:
    """The text with what the form changes; a MisreadError is told at its field."""
    rows = [each.key for each in opened.table.rows]
    for slot in opened.slots:
        if slot.path[0] not in rows and opened.is_changed(slot):
            text = _one(opened, text, slot)
    for key in rows:
        text = _lines(opened, text, key)
    return _without_empty(opened, text)


def new_table(opened: Opened) -> dict[str, Any]:
    """The table that a form describes which is not in the guide yet."""
    made: dict[str, Any] = {}
    for slot in opened.slots:
        if opened.sent(slot):
            _assign(made, slot.path, _read(opened, slot))
    for rows in opened.table.rows:
        lines = [line for line in made.get(rows.key, ()) if line]
        if lines:
            made[rows.key] = lines
    return made


def _one(opened: Opened, text: str, slot: Slot) -> str:
    path = (*opened.path, *slot.path)
    if opened.sent(slot):
        return put(text, path, _read(opened, slot))
    return drop(text, path)


def _lines(opened: Opened, text: str, key: str) -> str:
    """What changed in the lines of a list; those that were emptied go."""
    by_place: dict[int, list[Slot]] = {}
    for slot in opened.slots:
        if slot.path[0] == key and len(slot.path) > 2:
            by_place.setdefault(int(slot.path[1]), []).append(slot)
    there = held(opened.data, (*opened.path, key))
    single = isinstance(there, Mapping)
    count = 1 if single else len(there) if isinstance(there, list) else 0
    emptied = []
    for place, slots in by_place.items():
        if place >= count:
            text = _new_line(opened, text, key, slots)
            continue
        touched = list(filter(opened.is_changed, slots))
        # A line that was always empty is a span of all times.
        if touched and not any(map(opened.sent, slots)):
            emptied.append(place)
            continue
        for slot in touched:
            at = (key, *slot.path[2:]) if single else slot.path
            text = _one(opened, text, replace(slot, path=at))
    for place in reversed(emptied):
        alone = single or len(emptied) == count
        path = (*opened.path, key)
        text = drop(text, path if alone else (*path, place))
    return text


def _new_line(opened: Opened, text: str, key: str, slots: Sequence[Slot]) -> str:
    line: dict[str, Any] = {}
    for slot in slots:
        if opened.sent(slot):
            _assign(line, slot.path[2:], _read(opened, slot))
    if not line:
        return text
    path = (*opened.path, key)
    there = held(tables(text), path)
    if isinstance(there, Mapping):
        return put(drop(text, path), path, [dict(there), line])
    if there is not None and not isinstance(there, list):
        return put(text, path, [line])
    return added(text, path, line)


def _without_empty(opened: Opened, text: str) -> str:
    """Without small tables that lost all that they held, as `follows = {}`."""
    heads = {slot.path[0] for slot in opened.slots if len(slot.entry.path) > 1}
    for head in sorted(map(str, heads)):
        path = (*opened.path, head)
        slots = [each for each in opened.slots if each.path[0] == head]
        touched = any(map(opened.is_changed, slots))
        if touched and not any(map(opened.sent, slots)):
            text = drop(text, path)
    return text


def _read(opened: Opened, slot: Slot) -> Any:
    try:
        typed = without_unit(opened, slot, opened.sent(slot))
        value = slot.entry.kind.read(typed)
    except MisreadError as error:
        tell(opened.form[slot.name], str(error))
        raise
    return with_ids(opened, slot, value)


def _assign(table: dict[str, Any], path: Path, value: Any) -> None:
    """Puts a value into tables and lists that are made on the way."""
    at: Any = table
    for key, after in pairwise(path):
        empty: Any = [] if isinstance(after, int) else {}
        at = _step(at, key, empty)
    if isinstance(path[-1], int):
        raise LookupError(path)
    at[path[-1]] = value


def _step(at: Any, key: str | int, empty: Any) -> Any:
    if isinstance(key, str):
        return at.setdefault(key, empty)
    while len(at) <= key:
        at.append({})
    return at[key]
