"""A new short name, taken over wherever a guide points at the old one, and in
its census.
"""

from collections.abc import Iterator, Mapping
from pathlib import Path as FilePath
from typing import Any

from fieldid import draw
from fieldid.census.read import beside
from fieldid.census.write import with_name
from fieldid.errors import FieldidError
from fieldid.guides.document import opened, saved
from fieldid.guides.edit import drop, put
from fieldid.guides.refusals import Path
from fieldid.guides.written import dotted
from fieldid.workbench.text.drafts import tables
from fieldid.workbench.text.places import held

RENAMED = ("part", "clue", "clue.option")
"""Tables at whose short names others point."""


def renamed(text: str, data: Mapping[str, Any], path: Path) -> str:
    """The text in which what has a new name at `path` is called that elsewhere as well.

    `data` is the guide as it was before.
    """
    old, new = _names(text, data, path)
    if old == new:
        return text
    for at in _named(data, path, old):
        text = put(text, at, new)
    for at in _keyed(path, old):
        value = held(data, at)
        if value is not None:
            text = drop(put(text, (*at[:-1], new), value), at)
    return _spots(text, data, old, new) if dotted(path) == "part" else text


def carried(file: FilePath, data: Mapping[str, Any], path: Path, text: str) -> str:
    """Takes a new name over into the guide's census too, and says so."""
    old, new = _names(text, data, path)
    census = beside(file)
    if old == new or not census.exists():
        return ""
    column = {"clue": "", "part": "gone"}.get(dotted(path))
    if column is None:
        column = str(held(data, (*path[:2], "id")))
    try:
        document = opened(census)
        after = with_name(document.text, old, new, column=column)
        if after == document.text:
            return ""
        saved(document, after)
    except FieldidError as error:
        return f"The census still says “{old}”; mend it in {census.name}: {error}."
    return f"“{old}” is “{new}” in {census.name} too."


def _names(text: str, data: Mapping[str, Any], path: Path) -> tuple[str, str]:
    """The old name and the new one, or two that are alike if nothing was renamed."""
    if dotted(path) not in RENAMED:
        return "", ""
    old, new = ((held(each, path) or {}).get("id") for each in (data, tables(text)))
    if isinstance(old, str) and isinstance(new, str) and old and new:
        return old, new
    return "", ""


def _named(data: Mapping[str, Any], path: Path, old: str) -> Iterator[Path]:
    """Where the old name stands as a value."""
    what = dotted(path)
    if what == "clue.option":
        yield from _options(data, path, old)
        return
    if what == "part":
        yield from _having(data, ("clue",), "part", old)
        for place, _ in _each(data, ("part",)):
            yield from _in(data, (*place, "follows"), "part", old)
    if what in ("part", "clue"):
        for when in _whens(data):
            yield from _in(data, when, what, old)


def _options(data: Mapping[str, Any], path: Path, old: str) -> Iterator[Path]:
    """Where answers are taken for this one, and what flags wait for it."""
    for place, _ in _each(data, path[:3]):
        yield from _listed(data, (*place, "like"), old)
    clue = held(data, (*path[:2], "id"))
    for when in _whens(data):
        if held(data, (*when, "clue")) == clue:
            yield from _listed(data, (*when, "is"), old)


def _keyed(path: Path, old: str) -> list[Path]:
    """Where the old name may stand as a key."""
    if dotted(path) == "part":
        return [("prices", key, old) for key in ("off", "put_right")]
    if dotted(path) == "clue.option":
        return [(*path[:2], "replacement", old)]
    return []


def _spots(text: str, data: Mapping[str, Any], old: str, new: str) -> str:
    """A clue that names no place on the drawing keeps that of its part's old name."""
    drawing = data.get("drawing")
    spots = draw.SCENES.get(drawing, ()) if isinstance(drawing, str) else ()
    if old not in spots or new in spots:
        return text
    for at in _having(data, ("clue",), "part", old):
        if held(data, (*at[:-1], "spot")) is None:
            text = put(text, (*at[:-1], "spot"), old)
    return text


def _each(data: Any, path: Path) -> Iterator[tuple[Path, Any]]:
    """The tables of a list, each with its path."""
    found = held(data, path)
    for place, table in enumerate(found if isinstance(found, list) else ()):
        if isinstance(table, Mapping):
            yield (*path, place), table


def _whens(data: Any) -> Iterator[Path]:
    """What the guide's flags wait for, in a list or alone."""
    for place, flag in _each(data, ("flag",)):
        if isinstance(flag.get("when"), Mapping):
            yield (*place, "when")
        for at, _ in _each(data, (*place, "when")):
            yield at


def _having(data: Any, path: Path, key: str, old: str) -> Iterator[Path]:
    for place, _ in _each(data, path):
        yield from _in(data, place, key, old)


def _in(data: Any, path: Path, key: str, old: str) -> Iterator[Path]:
    if held(data, (*path, key)) == old:
        yield (*path, key)


def _listed(data: Any, path: Path, old: str) -> Iterator[Path]:
    found = held(data, path)
    for place, name in enumerate(found if isinstance(found, list) else ()):
        if name == old:
            yield (*path, place)
