"""Names that must be used once, and names that must exist."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from fieldid.errors import nearest
from fieldid.guides.refusals import Finding, Path, quote, refusal


@dataclass(frozen=True, slots=True)
class Names:
    """The names of one kind of thing, called `what` in a message.

    `unnamed` says that one of them has no name of its own that could be read.
    """

    what: str
    known: tuple[str, ...]
    unnamed: bool = False

    def unknown(self, name: str, path: Path) -> Iterator[Finding]:
        """The refusal of a name that is not known."""
        if name in self.known or not self.known:
            return
        right = nearest(name, self.known)
        # It may be the one without a name of its own: that is one mistake.
        if self.unnamed and right.startswith("one of"):
            return
        told = refusal("unknown-name", value=quote(name), what=self.what, nearest=right)
        yield path, told


def names(what: str, tables: Iterable[Any]) -> Names:
    """The ids of some tables."""
    tables = tuple(tables)
    ids = tuple(table["id"] for table in tables if "id" in table)
    known = tuple(dict.fromkeys(ids))
    return Names(what, known, len(known) < len(tables))


def twice(tables: Iterable[Any], path: Path, key: str = "id") -> Iterator[Finding]:
    """The refusal of names that were used before."""
    used: list[str] = []
    for place, table in enumerate(tables):
        name = table.get(key)
        if name in used:
            yield (*path, place, key), refusal("id-twice", value=quote(name))
        elif name is not None:
            used.append(name)
