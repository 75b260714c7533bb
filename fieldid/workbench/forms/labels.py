"""An answer that is named by its words where its short name belongs."""

from collections.abc import Sequence
from typing import Any

from fieldid.workbench.forms.form import Opened, Slot
from fieldid.workbench.text.answers import Options, answers_at


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
    clue = None
    if slot.path[-1] == "is":
        clue = opened.form[f"{slot.name.removesuffix('is')}clue"].data
    return answers_at(opened.data, opened.path, slot.path, clue)


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
    meant = [id for id, label in options if _alike(label, words)]
    return meant[0] if len(meant) == 1 else None


def _alike(one: str, other: str) -> bool:
    return one.casefold().split() == other.casefold().split()
