"""Whether a value has the form that `givenshape` describes; the phone's twin is
`guests/fit.js`, which says the same of the same values.
"""

import re
from collections.abc import Callable, Iterator
from datetime import date
from itertools import chain
from typing import Any

from fieldid.guides.givendrawing import DRAWING
from fieldid.guides.refusals import Finding, Path, Refusal, quote, refusal

GIVEN: dict[str, str] = {
    "no-guide": "is no file of a guide",
    "damaged": "is not what it was when it was given",
    "too-many": "has {count}, of at most {most}",
    "drawing-element": "{value} is no part of a drawing",
    "drawing-attribute": "{value} is no attribute of {tag}",
    "drawing-value": "{value} does not fit the attribute {name}",
    "drawing-large": "is no drawing of at most {most} parts, {deep} deep",
    "too-much": "takes {count} steps to judge with, of at most {most}",
}
"""Refusals that a guide's file does not know."""

_IDS = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_DAYS = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_CURRENCIES = re.compile(r"[A-Z]{3}")
_SEEN = re.compile(r"[^\x00-\x20]")
_HALF = re.compile(r"[\ud800-\udfff]")
_ELEMENTS = dict(DRAWING["elements"])
_VALUES = {name: re.compile(pattern) for name, pattern in DRAWING["values"]}


def given(code: str, **words: object) -> Refusal:
    """A refusal that is told of guides that were given alone."""
    return Refusal(code, GIVEN[code].format(**words), "")


def misfits(value: Any, shape: Any, path: Path = ()) -> Iterator[Finding]:
    """All that is wrong with the form of a value."""
    kind = shape["is"]
    if kind in _HOLDS:
        yield from _HOLDS[kind](value, shape, path)
    elif not _FITS[kind](value, shape):
        yield path, refusal("not-that", value=_said(value), wants="")


def _maybe(value: Any, shape: Any, path: Path) -> Iterator[Finding]:
    if value is not None:
        yield from misfits(value, shape["of"], path)


def _record(value: Any, shape: Any, path: Path) -> Iterator[Finding]:
    if not isinstance(value, dict):
        yield path, refusal("not-that", value=_said(value), wants="")
        return
    known = [name for name, _ in shape["fields"]]
    for key in sorted(value.keys() - set(known)):
        yield (*path, key), refusal("unknown-key", nearest="")
    for name, each in shape["fields"]:
        if name in value:
            yield from misfits(value[name], each, (*path, name))
        else:
            yield (*path, name), refusal("missing", wants="")


def _kinds(value: Any, shape: Any, path: Path) -> Iterator[Finding]:
    name = value.get(shape["by"]) if isinstance(value, dict) else value
    found = [each for kind, each in shape["of"] if kind == name]
    if found:
        yield from misfits(value, found[0], path)
    else:
        yield path, refusal("unread-kind", value=_said(name), nearest="")


def _list(value: Any, shape: Any, path: Path) -> Iterator[Finding]:
    if not isinstance(value, list):
        yield path, refusal("not-that", value=_said(value), wants="")
        return
    count = len(value)
    if count < shape["least"]:
        yield path, refusal("too-few", count=count, wants="")
    if count > shape["most"]:
        yield path, given("too-many", count=count, most=shape["most"])
        return
    wrong = [
        told
        for place, each in enumerate(value)
        for told in misfits(each, shape["of"], (*path, place))
    ]
    yield from wrong
    if shape["once"] and not wrong:
        yield from _twice(value, path)


def _twice(value: list[Any], path: Path) -> Iterator[Finding]:
    known = set()
    for place, each in enumerate(value):
        name = each[0] if isinstance(each, list) else each
        if name in known:
            yield (*path, place), refusal("listed-twice", value=_said(name))
        known.add(name)


def _row(value: Any, shape: Any, path: Path) -> Iterator[Finding]:
    if not isinstance(value, list) or len(value) != len(shape["of"]):
        yield path, refusal("not-that", value=_said(value), wants="")
        return
    wrong = [
        told
        for place, each in enumerate(value)
        for told in misfits(each, shape["of"][place], (*path, place))
    ]
    yield from wrong
    if shape.get("rises") and not wrong and value[1] < value[0]:
        yield path, refusal("backwards", value=quote(f"{value[0]} to {value[1]}"))


def _drawing(value: Any, _: Any, path: Path) -> Iterator[Finding]:
    """The first thing that a drawing may not be."""
    if found := _node(value, 1, [0]):
        yield path, found
    elif not isinstance(value, list) or value[0] != "svg":
        name = value[0] if isinstance(value, list) else value
        yield path, given("drawing-element", value=_said(name))


def _node(node: Any, deep: int, count: list[int]) -> Refusal | None:
    count[0] += 1
    if deep > DRAWING["deep"] or count[0] > DRAWING["most"]:
        return given("drawing-large", most=DRAWING["most"], deep=DRAWING["deep"])
    if isinstance(node, str):
        is_short = len(node) <= DRAWING["long"] and _is_whole(node)
        return None if is_short else given("drawing-element", value=_said(node))
    if not _is_node(node):
        return given("drawing-element", value=_said(node))
    tag, attributes, children = node
    if tag not in _ELEMENTS or (tag == "svg" and deep > 1):
        return given("drawing-element", value=_said(tag))
    told = (_attribute(tag, each) for each in attributes)
    inside = (_node(each, deep + 1, count) for each in children)
    return next(filter(None, chain(told, inside)), None)


def _is_node(node: Any) -> bool:
    if not isinstance(node, list) or len(node) != 3:
        return False
    tag, attributes, children = node
    lists = isinstance(attributes, list) and isinstance(children, list)
    return isinstance(tag, str) and lists


def _attribute(tag: str, pair: Any) -> Refusal | None:
    is_pair = isinstance(pair, list) and len(pair) == 2
    if not is_pair or not isinstance(pair[0], str) or pair[0] not in _ELEMENTS[tag]:
        name = pair[0] if is_pair else pair
        return given("drawing-attribute", value=_said(name), tag=quote(tag))
    name, value = pair
    is_short = isinstance(value, str) and len(value) <= DRAWING["long"]
    if is_short and _VALUES[name].fullmatch(value):
        return None
    return given("drawing-value", value=_said(value), name=quote(name))


def _is_text(value: Any, shape: Any) -> bool:
    if not isinstance(value, str) or len(value) > shape["most"]:
        return False
    return _is_whole(value) and (not shape["least"] or bool(_SEEN.search(value)))


def _is_whole(text: str) -> bool:
    """Half of a character can be written in JSON, and nowhere else."""
    return not _HALF.search(text)


def _is_number(value: Any, shape: Any) -> bool:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return False
    return bool(shape["least"] <= value <= shape["most"])


def _is_day(value: Any, shape: Any) -> bool:
    if not isinstance(value, str) or not _DAYS.fullmatch(value):
        return False
    try:
        date.fromisoformat(value)
    except ValueError:
        return False
    return True


_HOLDS: dict[str, Callable[[Any, Any, Path], Iterator[Finding]]] = {
    "maybe": _maybe,
    "record": _record,
    "kinds": _kinds,
    "list": _list,
    "row": _row,
    "drawing": _drawing,
}
_FITS: dict[str, Any] = {
    "text": _is_text,
    "id": lambda value, shape: _is_named(_IDS, value) and len(value) <= shape["most"],
    "day": _is_day,
    "currency": lambda value, shape: _is_named(_CURRENCIES, value),
    "word": lambda value, shape: isinstance(value, str) and value in shape["of"],
    "truth": lambda value, shape: isinstance(value, bool),
    "number": _is_number,
    "whole": lambda value, shape: _is_number(value, shape) and value == int(value),
}


def _is_named(pattern: re.Pattern[str], value: Any) -> bool:
    return isinstance(value, str) and pattern.fullmatch(value) is not None


def _said(value: Any) -> str:
    return "nothing" if value is None else quote(value)
