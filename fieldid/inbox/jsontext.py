"""JSON from a file that anybody may have written: read without harm, or refused."""

import json
import re
from typing import NoReturn

from fieldid.errors import InboxError

MOST_DEEP = 20
"""A find lies nine deep in an export."""
MOST_VALUES = 500_000
"""Ten megabytes of finds hold fewer; more of them cost seconds and memory."""
MOST_WIDE = 10_000
"""The finds are the longest list."""

_NO_FINDS = (
    "This is no file of finds, or a part of it is missing. "
    "The app makes one: “File of all finds”."
)
_SIGN = re.compile(
    # Everything up to the next sign that counts, texts in quotes included; possessive,
    # so that nothing is remembered for a way back.
    r'(?s:(?:[^"\[\]{},]++|"(?:[^"\\]++|\\.)*+"?+)++|[\[\]{},])'
)


def parsed(content: bytes) -> object:
    """The value of a JSON text, which is no larger than a file of finds can be."""
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise InboxError("This file is no text, so it has no finds.") from error
    _measure(text)
    try:
        return json.loads(text, parse_constant=_constant)
    # Among them numbers of thousands of digits, which Python does not read.
    except ValueError as error:
        raise InboxError(_NO_FINDS) from error


def _measure(text: str) -> None:
    """Refuses what is nested too deeply or holds too much, before it is read as JSON,
    which would fill the memory or the stack first.
    """
    values, lengths = 1, [1]
    for found in _SIGN.finditer(text):
        sign = found[0]
        if sign == ",":
            values += 1
            lengths[-1] += 1
        elif sign in ("[", "{"):
            values += 1
            lengths.append(1)
        elif sign in ("]", "}") and len(lengths) > 1:
            lengths.pop()
        if len(lengths) > MOST_DEEP + 1:
            raise InboxError("This file is nested too deeply to be read.")
        if values > MOST_VALUES or lengths[-1] > MOST_WIDE:
            raise InboxError("This file holds more than a file of finds can hold.")


def _constant(word: str) -> NoReturn:
    """NaN and Infinity are Python's, not JSON's."""
    raise ValueError(f"{word} is no number")
