"""Texts, bytes and JSON with a few mistakes each, the same ones for the same seed."""

import json
import random
from collections.abc import Callable
from typing import Any

TOKENS = (
    *("", " ", "\n", "\r\n", "\t", "\0", "\ufeff", "\u202e", "é", "\u0301", "💥", "ß"),
    *("[", "]", "{", "}", "[[", "]]", '"', "'", '"""', "\\", "\\u0000", "#", "=", ","),
    *("0", "-1", "1e999", "-0.0", "nan", "inf", "9" * 40, "0x10", "1_000", "12/7", "%"),
    *("true", "null", "1952-1954", "9999-0001", "usually", "1952-01", "__proto__"),
    *("[" * 300, '{"a":' * 300, "a." * 300, "x" * 5000),
)
"""What is put into texts: marks of the formats, numbers at the edge, letters that are
more than one, and what is too deep or too long.
"""
VALUES: tuple[Any, ...] = (
    *(
        None,
        True,
        False,
        "",
        "x",
        "\ud800",
        "<b>",
        "constructor",
        "__proto__",
        "x" * 4000,
    ),
    *(0, -1, 1, 2, 0.5, -0.0, 1e-320, 1e300, 2**53, 10**30, 1952, 9999),
    *([], {}, [[]], [None], [0, 0], {"id": "x"}, {"toString": 1}),
)
"""What is put in the place of a value of JSON."""

Random = random.Random


def chance(seed: int, name: str) -> Random:
    """The dice of a case."""
    # Not for secrets: the same seed must give the same case.
    return random.Random(f"{name} {seed}")


def some(dice: Random, content: bytes) -> bytes:
    """Some bytes or lines of it others, moved, gone, twice."""
    for _ in range(dice.choice((1, 1, 1, 2, 3, 8))):
        content = dice.choice(BYTEWISE)(dice, content)
    return content


def _flip(dice: Random, content: bytes) -> bytes:
    at = dice.randrange(len(content) + 1)
    return content[:at] + bytes([dice.randrange(256)]) + content[at + 1 :]


def _cut(dice: Random, content: bytes) -> bytes:
    start, end = sorted(dice.randrange(len(content) + 1) for _ in range(2))
    return content[:start] + content[min(end, start + dice.choice((1, 9, 999))) :]


def _end(dice: Random, content: bytes) -> bytes:
    return content[: dice.randrange(len(content) + 1)]


def _insert(dice: Random, content: bytes) -> bytes:
    at = dice.randrange(len(content) + 1)
    return content[:at] + dice.choice(TOKENS).encode() + content[at:]


def _lines(dice: Random, content: bytes) -> bytes:
    lines = content.splitlines(keepends=True) or [b""]
    line = dice.choice(lines)
    at = dice.randrange(len(lines) + 1)
    if dice.random() < 0.5:
        lines.remove(line)
    return b"".join([*lines[:at], line, *lines[at:]])


def _number(dice: Random, content: bytes) -> bytes:
    """Another number in the place of one."""
    digits = [i for i, byte in enumerate(content) if chr(byte).isdigit()]
    if not digits:
        return content
    start = end = dice.choice(digits)
    while end < len(content) and chr(content[end]).isdigit():
        end += 1
    numbers = (b"0", b"-1", b"1e999", b"9" * 30, b"0.0", b"2", b'"2"')
    return content[:start] + dice.choice(numbers) + content[end:]


BYTEWISE: tuple[Callable[[Random, bytes], bytes], ...] = (
    *(_flip, _cut, _end, _insert, _insert, _lines, _lines, _number),
)


def table(dice: Random, whole: Any) -> Any:
    """JSON of which a few values are others; the given one stays as it is."""
    made = copied(whole)
    for _ in range(dice.choice((1, 1, 1, 2, 4))):
        _change(dice, made)
    return made


def copied(value: Any) -> Any:
    """The same by itself, so that a change to one is none to the other."""
    return json.loads(json.dumps(value))


def _change(dice: Random, whole: Any) -> None:
    """One value somewhere in it, drawn by depth and not by number: most lie deep."""
    inner, key = whole, None
    while isinstance(inner, list | dict) and inner:
        above = inner
        key = dice.choice(list(above) if isinstance(above, dict) else range(len(above)))
        inner = above[key]
        if dice.random() < 0.1:
            break
    if key is not None:
        dice.choice(CHANGES)(dice, above, key)


def _drop(dice: Random, above: Any, key: Any) -> None:
    del above[key]


def _twice(dice: Random, above: Any, key: Any) -> None:
    """Once more, in a table under a name that means something elsewhere."""
    again = copied(above[key])
    if isinstance(above, list):
        above.insert(dice.randrange(len(above) + 1), again)
    else:
        above[dice.choice(("new", "", "__proto__", "constructor", "id"))] = again


def _reorder(dice: Random, above: Any, key: Any) -> None:
    values = above if isinstance(above, list) else list(above.values())
    dice.shuffle(values)
    if isinstance(above, dict):
        above.update(zip(list(above), values, strict=True))


def _other(dice: Random, above: Any, key: Any) -> None:
    above[key] = copied(dice.choice(VALUES))


def _shift(dice: Random, above: Any, key: Any) -> None:
    if isinstance(above[key], int | float):
        above[key] = _near(dice, above[key])
    else:
        _other(dice, above, key)


CHANGES: tuple[Callable[[Random, Any, Any], None], ...] = (
    *(_drop, _twice, _reorder, _other, _other, _shift, _shift),
)


def _near(dice: Random, number: float) -> float:
    return dice.choice((-number, number + 1, number - 1, number * 2, number / 3))
