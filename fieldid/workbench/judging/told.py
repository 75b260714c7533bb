"""What was read of a find in words, also where its guide is not here or knows a clue no
longer: by the ids then.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from fieldid.engine.guide import Choice, Guide
from fieldid.engine.typical import shown
from fieldid.engine.words import called, capital
from fieldid.guides.readings import as_read, misfit

CANNOT_TELL = "can’t tell"


@dataclass(frozen=True, slots=True)
class ItemTold:
    """One object: what it is called in a set, its readings by clue, what is gone."""

    member: str
    readings: tuple[tuple[str, str], ...]
    gone: tuple[str, ...]


def items_told(find: Mapping[str, Any], guide: Guide | None) -> Iterator[ItemTold]:
    """Each object of a find as a file has it."""
    parts = {part.id: part.name for part in guide.parts} if guide else {}
    for item in find["items"]:
        member = item["member"] or ""
        yield ItemTold(
            called(guide, member) if guide else member,
            tuple(
                (_name(guide, clue), _reading(guide, clue, value))
                for clue, value in item["readings"].items()
            ),
            tuple(parts.get(part, part) for part in item["gone"]),
        )


def _name(guide: Guide | None, id: str) -> str:
    names = {clue.id: clue.name for clue in guide.clues} if guide else {}
    return capital(names.get(id, id))


def _reading(guide: Guide | None, id: str, value: Any) -> str:
    if value is None:
        return CANNOT_TELL
    clue = next((c for c in guide.clues if c.id == id), None) if guide else None
    if clue and misfit(value, clue) is None:
        if isinstance(clue.kind, Choice):
            labels = {option.id: option.label for option in clue.kind.options}
            return labels[value]
        return shown(clue, as_read(value, clue))
    if isinstance(value, Mapping):
        return f"{value['value']:.12g}, give or take {value['error']:.12g}"
    return value if isinstance(value, str) else f"{value:.12g}"
