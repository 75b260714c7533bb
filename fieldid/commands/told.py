"""A find as the arguments of a command tell it, word by word in their order."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from fieldid.engine.guide import FORMAT, Clue, Guide, Measure, Number
from fieldid.errors import FindError, UsageError

CANNOT_TELL = "?"
PLUS_MINUS, ASCII_PLUS_MINUS = "±", "+-"
"""Between a size and its error; the second where a keyboard lacks the first."""

Words = Sequence[tuple[str, str]]
"""Each of "member", "read" and "gone" with its value, in the order of the command."""


@dataclass(frozen=True, slots=True)
class Told:
    """What was read, and what is claimed; readings as rings=green."""

    words: tuple[tuple[str, str], ...] = ()
    claim: int | None = None
    cites: tuple[str, ...] = ()


def find_of(guide: Guide, told: Told) -> dict[str, Any]:
    """A find as its file would have it."""
    if told.cites and told.claim is None:
        raise UsageError("--cites needs --claim YEAR: what is it cited for?")
    claim = {"model_year": told.claim, "cites": list(told.cites)}
    return {
        "format": FORMAT,
        "guide": guide.id,
        "items": [_item(guide, words) for words in _objects(told.words)],
        "claim": None if told.claim is None else claim,
    }


def _objects(words: Words) -> list[Words]:
    """The words of each object: each member begins the next one.

    A single member may stand anywhere, since all is then of that one object.
    """
    starts = [i for i, (kind, _) in enumerate(words) if kind == "member"]
    if len(starts) < 2:
        return [words]
    if starts[0] > 0:
        kind, value = words[0]
        raise UsageError(
            f"--{kind} {value!r} stands before the first --member; "
            "name the member that it is of first"
        )
    ends = [*starts[1:], len(words)]
    return [words[start:end] for start, end in zip(starts, ends, strict=True)]


def _item(guide: Guide, words: Words) -> dict[str, Any]:
    return {
        "member": next((value for kind, value in words if kind == "member"), None),
        "readings": _readings(guide, [v for kind, v in words if kind == "read"]),
        "gone": [value for kind, value in words if kind == "gone"],
    }


def _readings(guide: Guide, read: Sequence[str]) -> dict[str, Any]:
    """Readings by clue, from pairs such as rings=green."""
    clues = {clue.id: clue for clue in guide.clues}
    readings: dict[str, Any] = {}
    for pair in read:
        clue, equals, value = pair.partition("=")
        if not equals:
            raise UsageError(f"--read {pair!r} is no reading; write CLUE=READING")
        if clue in readings:
            raise UsageError(f"--read {clue!r} stands twice; say it once")
        readings[clue] = _value(clues.get(clue), value)
    return readings


def _value(clue: Clue | None, value: str) -> str | float | dict[str, float] | None:
    if value == CANNOT_TELL or clue is None:
        return None if value == CANNOT_TELL else value
    try:
        match clue.kind:
            case Measure():
                return _size(value)
            case Number():
                return int(value)
    except ValueError as error:
        raise FindError(
            f"{clue.id}: {value!r} is no number; would be right: {_wants(clue)}"
        ) from error
    return value


def _size(value: str) -> float | dict[str, float]:
    """A size, or one with its error.

    >>> _size("6.1"), _size("6.1+-0.2")
    (6.1, {'value': 6.1, 'error': 0.2})
    """
    size, mark, error = value.replace(PLUS_MINUS, ASCII_PLUS_MINUS).partition(
        ASCII_PLUS_MINUS
    )
    return {"value": float(size), "error": float(error)} if mark else float(size)


def _wants(clue: Clue) -> str:
    if isinstance(clue.kind, Measure):
        return f"a size in {clue.kind.unit}, or one with its error as 6.1±0.2"
    return "digits alone"
