"""What a form asks for, as data: a field, a list of lines, a whole table."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from fieldid import draw
from fieldid.guides.refusals import Path
from fieldid.workbench.fields.drawn import object_lit
from fieldid.workbench.fields.kinds import AREA, LINE, LIST, SHARE, Kind

Choices = Callable[[Mapping[str, Any]], Sequence[tuple[str, str]]]
"""What a list offers, given the guide's table as it lies in the file."""


Drawn = Callable[[Mapping[str, Any], str], Markup | None]
"""What draws one of those, given the same."""


Suits = Callable[[Mapping[str, Any]], bool]
"""Whether a field makes sense, given the same."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One field: its key, dotted where it lies deeper, its words and its kind."""

    key: str
    label: str
    hint: str = ""
    kind: Kind = LINE
    choices: Choices | None = None
    drawn: Drawn | None = None
    is_needed: bool = False
    """Whether a row of drawings offers none to be left open."""
    suits: Suits | None = None
    """Whether it is asked in a guide; None: in every one."""

    @property
    def path(self) -> Path:
        """The key as a path from the table.

        >>> Entry("seen.0.years", "Model years").path
        ('seen', 0, 'years')
        """
        keys = self.key.split(".")
        return tuple(int(key) if key.isdecimal() else key for key in keys)

    def is_asked(self, data: Mapping[str, Any]) -> bool:
        """Whether it makes sense in the guide."""
        return self.suits is None or self.suits(data)


@dataclass(frozen=True, slots=True)
class Rows:
    """A list of small tables that are edited on the same page, a row each."""

    key: str
    label: str
    hint: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A page: what it is called, what it asks for, and the lists that lie under it."""

    noun: str
    intro: str
    entries: tuple[Entry, ...]
    rows: tuple[Rows, ...] = ()
    lists: tuple[str, ...] = ()


def offered(*pairs: tuple[str, str]) -> Choices:
    """A list that is the same in every guide."""
    return lambda data: pairs


def _ids(key: str, words: str) -> Choices:
    def choices(data: Mapping[str, Any]) -> Sequence[tuple[str, str]]:
        tables = data.get(key)
        tables = tables if isinstance(tables, list) else []
        found = [each for each in tables if isinstance(each, Mapping)]
        known = [each["id"] for each in found if isinstance(each.get("id"), str)]
        names = [str(each.get(words, each.get("id"))) for each in found if "id" in each]
        return list(zip(known, names, strict=False))

    return choices


def spots(data: Mapping[str, Any]) -> Sequence[tuple[str, str]]:
    """The places of the guide's drawing."""
    drawing = data.get("drawing")
    known = draw.SCENES.get(drawing, ()) if isinstance(drawing, str) else ()
    return [(spot, spot) for spot in known]


def spot_drawn(data: Mapping[str, Any], spot: str) -> Markup | None:
    """The guide's drawing with the place lit."""
    drawing = data.get("drawing")
    return object_lit(drawing, spot) if spot and isinstance(drawing, str) else None


def object_drawn(data: Mapping[str, Any], drawing: str) -> Markup | None:
    """A whole object."""
    return object_lit(drawing)


PARTS = _ids("part", "name")


CLUES = _ids("clue", "ask")


YES = offered(("true", "yes"), ("false", "no"))


DRAWINGS = offered(
    ("iron", "an iron, with its marks"),
    ("unmarked-iron", "an iron, without marks"),
    ("wood", "a wood"),
    ("reel", "a fly reel"),
    ("thing", "any object"),
)


WEIGHTS = (
    "Shares are weights: answers that were made in the same year share it between "
    "them, so that usually beside rarely comes to 96\u00a0% and 4\u00a0%."
)


SHARE_HINT = "A word, as usually; a count, as 41/43; or a number, as 0.25 or 25 %."


def how_often(key: str, label: str, said: str = "", *, empty: str = "") -> Entry:
    """A field for a share: what it is of, how to write it, and what it is if empty."""
    left = f"Left empty: {empty}." if empty else ""
    hint = " ".join(filter(None, (said, SHARE_HINT, left)))
    return Entry(key, label, hint, SHARE)


ID_HINT = "What other tables call it: small letters, digits, single hyphens."


NEW_ID = f"{ID_HINT} Left empty, it is made of the name."


SOURCE = Entry("source", "Source", "Where this knowledge comes from.", AREA)


PICTURE_HINT = "A shape, and what is particular about it."


def has_set(data: Mapping[str, Any]) -> bool:
    """Whether there are members to speak of."""
    return "set" in data


MEMBERS = (
    Entry("members", "Only members", "With commas, as 3, 4.", LIST, suits=has_set),
    Entry("except", "But for members", "With commas, as W.", LIST, suits=has_set),
)
