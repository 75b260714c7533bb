"""A guide's text with one thing changed: pure functions from text to text.

What is not touched stays byte for byte, comments and blank lines included; so they
splice the text and write nothing of it anew. A path that leads nowhere is a
LookupError.

`tomlkit` gives every shipped guide back as it was, but it moves tables whose list is
interrupted by another table, puts a new one without the indent and the blank line of
its neighbours, and leaves a table's comment behind when the table is moved.
"""

import tomllib
from collections.abc import Mapping
from typing import Any

from fieldid.guides.inline import into_inline, without_item
from fieldid.guides.refusals import Path
from fieldid.guides.walk import Section, Walk, line_end, line_start
from fieldid.guides.written import (
    UNDER_HEADERS,
    dotted,
    is_deep,
    key_text,
    laid_out,
    pair,
    section,
    written,
)

ORDER = ("model", "model_year", "part", "clue", "set", "flag", "caution", "prices")
"""Where a guide's first table of a kind goes."""


def put(text: str, path: Path, value: object) -> str:
    """The text with a value at a path, new or in place of another one.

    >>> put('id = "a" # ours', ("id",), "b")
    'id = "b" # ours'
    """
    walk = Walk(text)
    if path in walk.pieces:
        return _replaced(text, walk, path, value)
    if path in walk.first and isinstance(value, Mapping):
        return _merged(text, path, value)
    if not path or isinstance(path[-1], int):
        raise LookupError(path)
    if path in walk.first:
        # A table makes way for a value.
        return put(drop(text, path), path, value)
    return _new(text, walk, path, value)


def drop(text: str, path: Path) -> str:
    """The text without what is at a path; the same text if nothing is."""
    walk = Walk(text)
    if path[:-1] in walk.pieces:
        return without_item(text, walk, path) if path in walk.pieces else text
    ranges = _blocks(text, walk, path)
    ranges += [
        (line_start(text, piece.start), line_end(text, piece.stop))
        for at, piece in walk.pieces.items()
        if at[: len(path)] == path
        and _is_outermost(walk, at)
        and not any(start <= piece.start < stop for start, stop in ranges)
    ]
    for start, stop in sorted(ranges, reverse=True):
        # The blank line between tables goes with the last one.
        end = text[:start].rstrip("\n") + "\n" if stop == len(text) else text[:start]
        text = (end if end != "\n" else "") + text[stop:]
    return text


def added(text: str, path: Path, table: Mapping[str, Any]) -> str:
    """The text with one more table at the end of a list of tables."""
    walk = Walk(text)
    if path in walk.pieces:
        return into_inline(text, walk, path, "", table)
    count = sum(1 for at in walk.first if at[:-1] == path and isinstance(at[-1], int))
    if not count and (path[-1] not in UNDER_HEADERS or path[:-1] in walk.pieces):
        return put(text, path, [dict(table)])
    at = (*path, count)
    if count:
        last = (*path, count - 1)
        stop, indent = _blocks(text, walk, last)[-1][1], _indent(text, walk, last)
    elif len(path) == 1:
        stop, indent = _end_of(text, walk, path), ""
    else:
        blocks = _blocks(text, walk, path[:-1])
        if not blocks:
            raise LookupError(path)
        stop, indent = blocks[-1][1], _indent(text, walk, path[:-1]) + "  "
    return _insert(text, stop, section(at, table, indent))


def moved(text: str, path: Path, step: int) -> str:
    """The text with an element of a list moved by so many places, as far as it goes."""
    way = 1 if step > 0 else -1
    for _ in range(abs(step)):
        *parent, place = path
        assert isinstance(place, int)
        other = (*parent, place + way)
        walk = Walk(text)
        if path not in walk.first:
            raise LookupError(path)
        if place + way < 0 or other not in walk.first:
            break
        text = _swapped(text, walk, *sorted([path, other], key=lambda at: at[-1]))
        path = other
    return text


def _new(text: str, walk: Walk, path: Path, value: object) -> str:
    """The text with a value where none was."""
    parent = path[:-1]
    if parent in walk.pieces:
        return into_inline(text, walk, parent, f"{key_text(str(path[-1]))} = ", value)
    if isinstance(value, Mapping) and (not parent or is_deep(value)):
        return _insert(text, _end_of(text, walk, path), section(path, value))
    home = next((each for each in walk.sections if each.path == parent), None)
    if home is not None:
        return _into_section(text, walk, home, path, value)
    if parent in walk.first:
        return _beside_dotted(text, walk, path, value)
    return put(text, parent, {path[-1]: value})


def _replaced(text: str, walk: Walk, path: Path, value: object) -> str:
    piece = walk.pieces[path]
    old = text[piece.value : piece.stop]
    # Written alike is the same: to Python true is 1, and 1 is 1.0.
    if written(tomllib.loads(f"x = {old}")["x"]) == written(value):
        return text
    line = line_start(text, piece.start)
    alone = not text[line : piece.start].strip() and piece.value > piece.start
    indent = text[line : piece.start] if alone else ""
    new = laid_out(value, piece.value - piece.start, indent) if alone else ""
    return text[: piece.value] + (new or written(value)) + text[piece.stop :]


def _merged(text: str, path: Path, table: Mapping[str, Any]) -> str:
    """A table that stands under a header, made to hold just these keys."""
    held = [at for at in Walk(text).first if at[:-1] == path]
    for at in held:
        if at[-1] not in table:
            text = drop(text, at)
    for key, value in table.items():
        text = put(text, (*path, key), value)
    return text


def _into_section(
    text: str, walk: Walk, home: Section, path: Path, value: object
) -> str:
    """A new pair below the last one of a section."""
    pairs = [
        piece
        for at, piece in walk.pieces.items()
        if home.body <= piece.start < home.stop and _is_outermost(walk, at)
    ]
    after = max((each.stop for each in pairs), default=home.body)
    start = pairs[-1].start if pairs else home.start
    line = line_start(text, start)
    # The root has no header to stand below.
    at = line_end(text, after) if pairs or home.path else 0
    head = "" if not at or text[at - 1] == "\n" else "\n"
    new = pair(str(path[-1]), value, text[line:start])
    return text[:at] + head + new + text[at:]


def _beside_dotted(text: str, walk: Walk, path: Path, value: object) -> str:
    """A new pair in a table that no header names: `prices.off` or `model.floor = 1`
    did.
    """
    parent = path[:-1]
    for home in walk.sections:
        if home.path[: len(parent)] == parent:
            start = _begin(text, walk, home)
            return _insert(text, start, section(parent, {str(path[-1]): value}))
    piece = next(
        piece
        for at, piece in walk.pieces.items()
        if at[: len(parent)] == parent and _is_outermost(walk, at)
    )
    home = next(h for h in reversed(walk.sections) if h.start <= piece.start)
    key = dotted(path[len(home.path) :])
    indent = text[line_start(text, piece.start) : piece.start]
    end = line_end(text, piece.stop)
    new = f"{indent}{key} = {written(value)}\n"
    return text[:end] + "\n" * (text[end - 1] != "\n") + new + text[end:]


def _swapped(text: str, walk: Walk, one: Path, other: Path) -> str:
    if one in walk.pieces:
        a, b = walk.pieces[one], walk.pieces[other]
        between = text[a.stop : b.start]
        first, second = text[a.start : a.stop], text[b.start : b.stop]
        return text[: a.start] + second + between + first + text[b.stop :]
    blocks = _blocks(text, walk, one), _blocks(text, walk, other)
    cores = ["".join(text[i:j] for i, j in found).rstrip() for found in blocks]
    changes = []
    for found, core in zip(blocks, reversed(cores), strict=True):
        (start, stop), *others = found
        tail = text[start + len(text[start:stop].rstrip()) : stop]
        changes += [(start, stop, core + tail), *((i, j, "") for i, j in others)]
    for start, stop, new in sorted(changes, reverse=True):
        text = text[:start] + new + text[stop:]
    return text


def _blocks(text: str, walk: Walk, path: Path) -> list[tuple[int, int]]:
    """The stretches of text under the headers of a table, with what is in it and with
    the comments right above.
    """
    found: list[tuple[int, int]] = []
    begins = [_begin(text, walk, each) for each in walk.sections] + [len(text)]
    for place, each in enumerate(walk.sections):
        if path and each.path[: len(path)] == path:
            start, stop = begins[place], begins[place + 1]
            if found and found[-1][1] == start:
                start = found.pop()[0]
            found.append((start, stop))
    return found


def _begin(text: str, walk: Walk, home: Section) -> int:
    """Where a section begins, with the comments right above its header."""
    if not home.path:
        return 0
    start = line_start(text, home.start)
    bodies = [each.body for each in walk.sections if each.body < home.start]
    stops = [piece.stop for piece in walk.pieces.values() if piece.stop < start]
    floor = line_end(text, max(bodies + stops)) if bodies + stops else 0
    # The root without a pair ends nowhere.
    floor = 0 if not stops and len(bodies) == 1 else floor
    while start > floor:
        above = line_start(text, start - 1)
        if not text[above:start].lstrip().startswith("#"):
            break
        start = above
    return start


def _end_of(text: str, walk: Walk, path: Path) -> int:
    """Where a new table goes: after the tables that stand before it in a guide."""
    under = path[0]
    before = ORDER[: ORDER.index(under) + 1] if under in ORDER else ORDER
    last = max(
        place
        for place, each in enumerate(walk.sections)
        if not each.path or each.path[0] in before
    )
    after = walk.sections[last + 1 :]
    return _begin(text, walk, after[0]) if after else len(text)


def _insert(text: str, at: int, new: str) -> str:
    """A section between two others, with a blank line on either side."""
    before, after = text[:at], text[at:]
    if before and not before.endswith("\n\n"):
        before += "\n" if before.endswith("\n") else "\n\n"
    return before + new + ("\n" + after if after else "")


def _indent(text: str, walk: Walk, path: Path) -> str:
    """The blanks before the header of a table."""
    home = next(each for each in walk.sections if each.path[: len(path)] == path)
    return text[line_start(text, home.start) : home.start]


def _is_outermost(walk: Walk, path: Path) -> bool:
    """Whether a pair stands in no inline list or table."""
    return not any(path[:n] in walk.pieces for n in range(1, len(path)))
