"""`fieldid judge`: finds in, verdicts out; many at once as JSON lines or as a log."""

import json
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from io import BufferedReader, BytesIO
from pathlib import Path
from typing import Any, BinaryIO, cast

from fieldid.commands.shelf import load_all, path_of
from fieldid.commands.telling import letter, story
from fieldid.commands.told import Told, find_of
from fieldid.engine import Find, Tables, judge, message, prepare
from fieldid.engine.guide import Guide
from fieldid.errors import FindError, InboxError
from fieldid.guides import finds
from fieldid.guides.load import load
from fieldid.guides.pack import plain
from fieldid.inbox.opening import MOST_FILE, zipped_finds

STDIN = "-"


@dataclass(frozen=True, slots=True)
class Wishes:
    """How to judge and what to print."""

    as_json: bool = False
    away: bool = False
    without: tuple[str, ...] = ()
    photos: bool = False
    message: bool = False


def judge_file(name: str | None, source: str, wishes: Wishes) -> int:
    """Judges every find of a file, or of standard input; the exit code.

    Without a guide's name each find names its own among those that come along. A find
    that cannot be judged costs its own line only: the others are judged.
    """
    guides = load_all([] if name is None else [name])
    tables: dict[str, Tables] = {}
    bad = 0
    with _opened(source) as stream:
        for find in _loaded(stream, guides, "find" if source == STDIN else source):
            if isinstance(find, FindError):
                bad = find.exit_code
                print(find, file=sys.stderr)
                if wishes.as_json:
                    # Its place is kept, so that line n out answers find n in.
                    print(json.dumps({"error": str(find)}, ensure_ascii=False))
                continue
            if find.guide not in tables:
                guide = next(guide for guide in guides if guide.id == find.guide)
                tables[find.guide] = prepare(guide)
            _judge(tables[find.guide], find, wishes)
    return bad


def judge_told(name: str, told: Told, wishes: Wishes) -> int:
    """Judges the one find that the command's own arguments tell; the exit code."""
    guide = load(path_of(name))
    find = finds.load(find_of(guide, told), [guide])
    _judge(prepare(guide), find, wishes)
    return 0


def _opened(source: str) -> BinaryIO:
    try:
        if source == STDIN:
            return _unpacked(cast(BufferedReader, sys.stdin.buffer))
        return _unpacked(Path(source).open("rb"))
    except OSError as error:
        raise FindError(f"{source}: {error.strerror}") from error
    except InboxError as error:
        raise FindError(f"{source}: {error}") from error


def _unpacked(stream: BufferedReader) -> BinaryIO:
    """The stream, or the list of finds that is in it if it is a ZIP."""
    # A pipe can be looked at ahead, but not wound back.
    if not stream.peek(2).startswith(b"PK"):
        return stream
    with stream:
        whole = stream if stream.seekable() else BytesIO(stream.read(MOST_FILE + 1))
        return BytesIO(zipped_finds(whole))


def _loaded(
    stream: BinaryIO, guides: Sequence[Guide], name: str
) -> Iterator[Find | FindError]:
    """Each find of a stream, or why it cannot be judged."""
    for place, content in _pieces(stream, name):
        yield from finds.load_all(content, guides, name=place)


def _pieces(stream: BinaryIO, name: str) -> Iterator[tuple[str, bytes]]:
    """Each piece with its place: one a line, or the whole stream as one.

    However large the stream is, no more than one find or log is held in memory.
    """
    first = stream.readline(finds.MOST_BYTES + 1)
    if len(first) > finds.MOST_BYTES or not _is_whole(first):
        yield name, first + stream.read(finds.MOST_LOG_BYTES + 1 - len(first))
        return
    number = 1
    while first:
        if first.strip():
            yield f"{name}:{number}", first
        first = stream.readline(finds.MOST_BYTES + 1)
        number += 1


def _is_whole(line: bytes) -> bool:
    """Whether a line looks like a JSON object by itself, well written or not.

    >>> _is_whole(b'{"format": 1}\\n'), _is_whole(b"{\\n")
    (True, False)
    """
    text = line.strip()
    return text.startswith(b"{") and text.endswith(b"}")


def _judge(tables: Tables, find: Find, wishes: Wishes) -> None:
    """Judges a find and prints what is wished for."""
    verdict = judge(
        tables, find, away=wishes.away, without=wishes.without, photos=wishes.photos
    )
    told = message(tables, find, verdict) if wishes.message else None
    if wishes.as_json:
        written: Mapping[str, Any] = finds.verdict_json(verdict)
        if told:
            written = {**written, "message": plain(told)}
        print(json.dumps(written, ensure_ascii=False))
    else:
        print(story(tables.guide, verdict))
        if told:
            print(letter(told))
