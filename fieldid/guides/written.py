"""Values as TOML writes them: keys, pairs, and whole tables under their headers."""

import re
from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any

from fieldid.guides.refusals import Path

WIDE = 88
"""A longer line is broken where TOML lets it be."""

UNDER_HEADERS = (
    *("model_year", "part", "clue", "option", "field", "layout", "flag", "caution"),
)
"""Lists whose tables stand under headers of their own; those of others stand inline."""


def written(value: object) -> str:
    """A value on one line.

    >>> written({"years": 1952, "share": "41/43", "except": ["W"]})
    '{ years = 1952, share = "41/43", except = ["W"] }'
    """
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return f'"{_escaped(value, every=True)}"'
    if isinstance(value, Mapping):
        pairs = ", ".join(f"{key_text(k)} = {written(v)}" for k, v in value.items())
        return f"{{ {pairs} }}" if pairs else "{}"
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(written, value))}]"
    assert isinstance(value, int | float | date), value
    return str(value)


def key_text(key: str) -> str:
    """A key, in quotes where it needs them."""
    return key if _BARE.fullmatch(key) else written(key)


def dotted(path: Path) -> str:
    """What stands in a header: the keys, without the places in lists.

    >>> dotted(("clue", 0, "option", 2))
    'clue.option'
    """
    return ".".join(key_text(key) for key in path if isinstance(key, str))


def pair(key: str, value: object, indent: str = "") -> str:
    """`key = value` with the end of its line, over several lines where it is long."""
    return f"{indent}{key_text(key)} = {laid_out(value, len(key), indent)}\n"


def laid_out(value: object, before: int = 0, indent: str = "") -> str:
    """A value of a pair, over several lines where it is long; `before` is the width of
    what stands before it on its line.
    """
    line = written(value)
    if isinstance(value, str) and ("\n" in value or len(line) > WIDE):
        return '"""\n' + "\n".join(_broken(value)) + '"""'
    wide = before + len(indent) + 3 + len(line) > WIDE
    if isinstance(value, list) and _is_tables(value) and (wide or len(value) > 1):
        rows = "".join(f"{indent}  {written(each)},\n" for each in value)
        return f"[\n{rows}{indent}]"
    return line


def section(path: Path, table: Mapping[str, Any], indent: str = "") -> str:
    """A table under its header, with the tables in it under theirs."""
    header = dotted(path)
    many = isinstance(path[-1], int)
    text = indent + (f"[[{header}]]\n" if many else f"[{header}]\n")
    below = [key for key, value in table.items() if _has_headers(key, value)]
    for key, value in table.items():
        if key not in below:
            text += pair(key, value, indent)
    for key in below:
        tables = table[key] if isinstance(table[key], list) else [table[key]]
        for place, each in enumerate(tables):
            at = (*path, key, place) if isinstance(table[key], list) else (*path, key)
            text += "\n" + section(at, each, indent + "  " * many)
    return text


def is_deep(value: object) -> bool:
    """Whether a table holds tables, and so is better under a header."""
    return isinstance(value, Mapping) and any(
        isinstance(each, Mapping) for each in value.values()
    )


def _has_headers(key: str, value: object) -> bool:
    return is_deep(value) or (key in UNDER_HEADERS and _is_tables(value))


def _is_tables(value: Any) -> bool:
    return isinstance(value, list) and any(isinstance(v, Mapping) for v in value)


def _broken(text: str) -> Iterator[str]:
    """Lines of a long text; a backslash joins what was broken to fit."""
    for line in _escaped(text, every=False).split("\n"):
        rest = line
        while len(rest) > WIDE:
            cut = _cut(rest)
            if not cut:
                break
            yield f"{rest[:cut]}\\"
            rest = rest[cut:]
        yield rest


def _cut(line: str) -> int:
    """Where a line may end: after the last blanks that fit, before a word; else 0."""
    cuts = [m.end() for m in re.finditer(r" +(?=[^\s])", line) if m.end() < WIDE]
    return cuts[-1] if cuts else 0


def _escaped(text: str, *, every: bool) -> str:
    """Text between quotes; `every` for one line, where no quote and no end of line may
    stand as it is.
    """
    text = text.replace("\\", "\\\\")
    text = text.replace('"', '\\"') if every else text.replace('""', '"\\"')
    unseen = _UNSEEN if every else _UNSEEN_BUT_LINES
    return unseen.sub(lambda m: _SHORT.get(m[0], f"\\u{ord(m[0]):04x}"), text)


_BARE = re.compile(r"[A-Za-z0-9_-]+")
_UNSEEN = re.compile(r"[\x00-\x08\x0a-\x1f\x7f]")
_UNSEEN_BUT_LINES = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")
_SHORT = {"\n": "\\n", "\r": "\\r"}
