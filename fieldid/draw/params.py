"""What a shape's parameter may be: one small check a kind, named in the annotation.

Each check says nothing ("") about a fitting value, else "wrong; what would be right".
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from inspect import signature
from typing import Protocol, get_type_hints

from fieldid.draw.letters import LETTERS
from fieldid.draw.nodes import Node
from fieldid.draw.swatches import SWATCHES

Shape = Callable[..., Node]

NUMBER, CODE = "number", "code"
"""What words of a picture are by way of example: the club's number, its code."""


class Check(Protocol):
    """Something that can judge a value."""

    def wrong(self, value: object) -> str:
        """Say what is wrong with the value and what would be right."""
        ...


@dataclass(frozen=True, slots=True)
class OneOf:
    """One word of a list."""

    words: tuple[str, ...]

    def wrong(self, value: object) -> str:
        """Name the nearest word of the list.

        >>> OneOf(("plain", "ribbed")).wrong("plane")
        "'plane' is not known; use 'plain'"
        """
        if value in self.words:
            return ""
        return f"{value!r} is not known; use {instead(value, self.words)}"


@dataclass(frozen=True, slots=True)
class Number:
    """A number within limits, both included."""

    low: float
    high: float

    def wrong(self, value: object) -> str:
        """Name the limits."""
        right = f"a number from {self.low:g} to {self.high:g}"
        if isinstance(value, bool) or not isinstance(value, int | float):
            return f"{value!r} is not a number; use {right}"
        if not self.low <= value <= self.high:
            return f"{value!r} is out of range; use {right}"
        return ""


@dataclass(frozen=True, slots=True)
class Stamped:
    """Text that can be drawn in stamped letters."""

    most: int

    def wrong(self, value: object) -> str:
        """Name the letter that no stamp has, or the greatest length."""
        if not isinstance(value, str):
            return f"{value!r} is not text; use text in quotes"
        missing = [letter for letter in value if letter not in LETTERS]
        if missing:
            return f"{missing[0]!r} is no stamped letter; use {''.join(LETTERS)!r}"
        if len(value) > self.most:
            return f"{value!r} is too long; use {self.most} letters at most"
        return ""


@dataclass(frozen=True, slots=True)
class Words:
    """Any text that still fits under a drawing."""

    most: int

    def wrong(self, value: object) -> str:
        """Name the greatest length."""
        if not isinstance(value, str):
            return f"{value!r} is not text; use text in quotes"
        if len(value) > self.most:
            return f"{value!r} is too long; use {self.most} letters at most"
        return ""


@dataclass(frozen=True, slots=True)
class Several:
    """A list of values that each pass the same check."""

    each: Check
    most: int
    least: int = 0

    def wrong(self, value: object) -> str:
        """Count the values, then say what the first unfitting one says."""
        if not isinstance(value, list | tuple):
            return f"{value!r} is not a list; use [ ... ]"
        if not self.least <= len(value) <= self.most:
            return f"{len(value)} values; use {self.least} to {self.most}"
        return next(filter(None, map(self.each.wrong, value)), "")


COLOUR = OneOf(tuple(SWATCHES))


def checks(shape: Shape) -> dict[str, Check]:
    """Each parameter's check, in the order of the shape's signature."""
    hints = get_type_hints(shape, include_extras=True)
    return {name: hints[name].__metadata__[0] for name in signature(shape).parameters}


def examples(shape: Shape) -> dict[str, str]:
    """The parameters that are examples, each with what it stands for."""
    hints = get_type_hints(shape, include_extras=True)
    noted = {name: hints[name].__metadata__[1:] for name in signature(shape).parameters}
    return {name: note for name, notes in noted.items() for note in notes}


def needed(shape: Shape) -> tuple[str, ...]:
    """The parameters that have no default."""
    parameters = signature(shape).parameters.values()
    return tuple(each.name for each in parameters if each.default is each.empty)


def instead(word: object, known: Iterable[str]) -> str:
    """What to write in place of `word`: the nearest known one, or any of them.

    >>> instead("gren", ["green", "navy"]), instead(7, ["green", "navy"])
    ("'green'", "one of 'green', 'navy'")
    """
    names = tuple(known)
    close = get_close_matches(str(word), names, n=1)
    if close:
        return repr(close[0])
    return "one of " + ", ".join(map(repr, names)) if names else "nothing"
