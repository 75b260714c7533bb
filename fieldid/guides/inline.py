"""Inline lists and tables of a TOML text with one item more or less."""

import re
from collections.abc import Mapping

from fieldid.guides.refusals import Path
from fieldid.guides.walk import Piece, Walk, line_end, line_start
from fieldid.guides.written import WIDE, written


def into_inline(text: str, walk: Walk, path: Path, key: str, value: object) -> str:
    """One more item at the end of an inline list or table."""
    piece, items = walk.pieces[path], _items(walk, path)
    new = key + written(value)
    if not items:
        opens, closes = text[piece.value], text[piece.stop - 1]
        inner = f" {new} " if opens == "{" else new
        return text[: piece.value] + opens + inner + closes + text[piece.stop :]
    last = items[-1]
    line = line_start(text, last.start)
    if not text[line : last.start].strip():
        return _on_new_line(text, last, text[line : last.start] + new)
    longer = text[: last.stop] + f", {new}" + text[last.stop :]
    return _on_many_lines(longer, path) if isinstance(value, Mapping) else longer


def _on_new_line(text: str, last: Piece, line: str) -> str:
    comma = _COMMA.match(text, last.stop)
    if comma:
        at = line_end(text, comma.end())
        return text[:at] + f"{line},\n" + text[at:]
    at = line_end(text, last.stop)
    return f"{text[: last.stop]},{text[last.stop : at]}{line}\n{text[at:]}"


def _on_many_lines(text: str, path: Path) -> str:
    """A list of tables that is too long for its line, with one table a line."""
    walk = Walk(text)
    piece, items = walk.pieces[path], _items(walk, path)
    start = line_start(text, piece.start)
    indent = _BLANKS.match(text, start)[0]  # type: ignore[index]  # it always matches
    inner = text[piece.value : piece.stop]
    too_wide = line_end(text, piece.stop) - start > WIDE
    if "\n" in inner or inner[0] != "[" or not too_wide:
        return text
    rows = [f"{indent}  {text[each.start : each.stop]},\n" for each in items]
    many = f"[\n{''.join(rows)}{indent}]"
    return text[: piece.value] + many + text[piece.stop :]


def without_item(text: str, walk: Walk, path: Path) -> str:
    """An inline list or table with one item less."""
    piece, items = walk.pieces[path], _items(walk, path[:-1])
    place = items.index(piece)
    comma = _COMMA.match(text, piece.stop)
    stop = comma.end() if comma else piece.stop
    line, end = line_start(text, piece.start), line_end(text, stop)
    rest = text[stop:end].strip()
    if not text[line : piece.start].strip() and (not rest or rest[0] == "#"):
        return text[:line] + text[end:]
    if place < len(items) - 1:
        return text[: piece.start] + text[items[place + 1].start :]
    if place:
        return text[: items[place - 1].stop] + text[piece.stop :]
    return text[: piece.start].rstrip(" ") + text[stop:].lstrip(" ")


def _items(walk: Walk, path: Path) -> list[Piece]:
    """What an inline list or table holds, in the order of the text."""
    deep = len(path)
    inner = {at: piece for at, piece in walk.pieces.items() if at[:deep] == path}
    return sorted(
        (
            piece
            for at, piece in inner.items()
            # A dotted key makes a table without a piece of its own.
            if at != path and not any(at[:n] in inner for n in range(deep + 1, len(at)))
        ),
        key=lambda piece: piece.start,
    )


_COMMA = re.compile(r"\s*,")


_BLANKS = re.compile(r"[ \t]*")
