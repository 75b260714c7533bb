"""The JSON object of a file with finds, whoever wrote it, or why there is none."""

import json
from collections.abc import Mapping
from typing import Any, NoReturn

from fieldid.errors import FindError, Problem
from fieldid.guides.refusals import Path, Refusal, place, quote, refusal


def json_table(source: str | bytes, name: str, most: int) -> Mapping[str, Any]:
    """The JSON object of a text."""
    text = _text(source, name, most)
    once = _once(name)
    try:
        table = json.loads(text, object_pairs_hook=once, parse_constant=_constant)
    except RecursionError as error:
        raise find_error(name, (), refusal("too-deep")) from error
    except json.JSONDecodeError as error:
        why = refusal("not-json", why=f"{error.msg.lower()} (column {error.colno})")
        raise find_error(name, (), why, error.lineno) from error
    except ValueError as error:
        # Python reads no number of thousands of digits.
        told = refusal("not-json", why=str(error).split(";")[0])
        raise find_error(name, (), told) from error
    if not isinstance(table, Mapping):
        wants = 'a table, as {"format": 1, "guide": "...", "items": []}'
        raise find_error(name, (), refusal("not-that", value=quote(table), wants=wants))
    return table


def _text(source: str | bytes, name: str, most: int) -> str:
    if len(source) > most:
        raise find_error(name, (), refusal("too-large", most=most))
    if isinstance(source, str):
        return source.removeprefix("\ufeff")
    try:
        return source.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        byte = f"0x{error.object[error.start]:02x}"
        raise find_error(name, (), refusal("not-utf-8", value=byte)) from error


def _once(name: str) -> Any:
    """Makes an object of its pairs; of a key that stands twice JSON keeps the last."""

    def table(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        made: dict[str, Any] = {}
        for key, value in pairs:
            if key in made:
                raise find_error(name, (), refusal("key-twice", value=quote(key)))
            made[key] = value
        return made

    return table


def _constant(word: str) -> NoReturn:
    """NaN and Infinity are Python's, not JSON's."""
    raise ValueError(f"{word} is no number")


def find_error(name: str, path: Path, told: Refusal, line: int = 0) -> FindError:
    """What is wrong at a place in the file, in the words that every refusal has."""
    return FindError(str(Problem(name, line, place(path), told.wrong, told.right)))
