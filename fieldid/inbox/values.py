"""One value of JSON as it is taken, whoever wrote it, and as a sentence shows it."""

import math
import re
from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any

_MOST_WHOLE = 2**53
"""Larger whole numbers are not whole on the phone."""
_SHOWN = 40
"""Of a value that is refused, so much is shown."""
_HALF = re.compile("[\ud800-\udfff]")


def number(value: object) -> float | int | None:
    """The value if it is a number, as the phone has it; None if it is none."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    if isinstance(value, int) and abs(value) <= _MOST_WHOLE:
        return value
    try:
        found = float(value)
    except OverflowError:
        return None
    return found if math.isfinite(found) else None


def whole_letters(text: str) -> str:
    """The text without halves of letters, which no file could hold."""
    return _HALF.sub("\ufffd", text)


def sentence(messages: Any) -> str:
    """The first sentence of all that marshmallow collected."""
    while not isinstance(messages, str):
        inner = messages.values() if isinstance(messages, Mapping) else messages
        messages = next(iter(inner))
    return messages


def shown(value: object) -> str:
    """A value as a person can read it, however large it is.

    >>> shown(None), shown([]), shown({}), shown("a" * 50), shown(True)
    ('empty', 'an empty list', 'a table', '"aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa…', 'true')
    """  # noqa: E501  # one line, as doctest prints it
    if value is None:
        return "empty"
    if isinstance(value, list):
        return "a list" if value else "an empty list"
    if isinstance(value, Mapping):
        return "a table"
    said = f'"{value}"' if isinstance(value, str) else str(value)
    said = whole_letters(said.lower() if isinstance(value, bool) else said)
    return f"{said[:_SHOWN]}…" if len(said) > _SHOWN else said


def written(moment: datetime) -> str:
    """A moment as it is kept.

    >>> written(datetime(2026, 11, 25, 10, tzinfo=UTC))
    '2026-11-25T10:00:00.000Z'
    """
    return moment.astimezone(UTC).isoformat(timespec="milliseconds")[:-6] + "Z"


def moment(text: str) -> datetime | None:
    """The moment that a text says; None if it is none."""
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        return None
