"""An answer that is named by its words where its short name belongs."""

from collections.abc import Sequence
from typing import Any

from fieldid.guides.refusals import Path
from fieldid.workbench.forms import Opened, Slot
from fieldid.workbench.places import held

Options = Sequence[tuple[str, str]]


def with_ids(opened: Opened, slot: Slot, value: Any) -> Any:
    """The value with the short names of answers that are named by their words."""
    options = _options(opened, slot)
    if isinstance(value, list):
        return _listed(value, options)
    if options and isinstance(value, dict):
        named = {key: _id(key, options) or key for key in value}
        # Two lines for one answer are told as they were typed.
        same = len(set(named.values())) == len(named)
        return {named[key]: each for key, each in value.items()} if same else value
    return value


def _options(opened: Opened, slot: Slot) -> Options:
    """Short name and words of each answer that the field may name."""
    path, key = opened.path, slot.path[-1]
    if path[2:3] == ("option",) and key == "like":
        return _pairs(opened.data, path[:3])
    if path[:1] == ("clue",) and slot.path == ("replacement",):
        return _pairs(opened.data, (*path, "option"))
    if path[:1] == ("flag",) and key == "is":
        clue = opened.form[f"{slot.name.removesuffix('is')}clue"].data
        clues = held(opened.data, ("clue",))
        for place, each in enumerate(clues if isinstance(clues, list) else ()):
            if held(each, ("id",)) == clue:
                return _pairs(opened.data, ("clue", place, "option"))
    return ()


def _pairs(data: Any, path: Path) -> Options:
    found = held(data, path)
    pairs = [
        (held(each, ("id",)), held(each, ("label",)))
        for each in (found if isinstance(found, list) else ())
    ]
    return [(id, words) for id, words in pairs if isinstance(id, str)]


def _listed(pieces: Sequence[str], options: Options) -> list[str]:
    """Each piece by its short name; words with commas in them are several pieces."""
    found, at = [], 0
    while at < len(pieces):
        ends = range(len(pieces), at, -1) if options else ()
        ids = ((end, _id(", ".join(pieces[at:end]), options)) for end in ends)
        at, id = next(((end, id) for end, id in ids if id), (at + 1, pieces[at]))
        found.append(id)
    return found


def _id(words: str, options: Options) -> str | None:
    """The short name of the one answer that is meant without doubt."""
    if words in dict(options):
        return words
    meant = [id for id, label in options if _alike(str(label), words)]
    return meant[0] if len(meant) == 1 else None


def _alike(one: str, other: str) -> bool:
    return one.casefold().split() == other.casefold().split()
