"""`fieldid judge`: finds in, verdicts out; many at once as JSON lines."""

import json
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, BinaryIO

from fieldid.commands.shelf import path_of
from fieldid.commands.telling import story
from fieldid.engine import Tables, Verdict, judge, prepare
from fieldid.engine.guide import FORMAT, Clue, Guide, Measure
from fieldid.errors import FindError, UsageError
from fieldid.guides import finds
from fieldid.guides.load import load

CANNOT_TELL = "?"
STDIN = "-"


@dataclass(frozen=True, slots=True)
class Wishes:
    """How to judge and what to print."""

    as_json: bool = False
    away: bool = False
    without: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Told:
    """A find as the command line tells it; readings as rings=green."""

    read: Sequence[str] = ()
    gone: Sequence[str] = ()
    member: str | None = None
    claim: int | None = None
    cites: Sequence[str] = ()


def judge_file(name: str, source: str, wishes: Wishes) -> int:
    """Judges every find of a file, or of standard input; the exit code.

    A find that cannot be judged costs its own line only: the others are judged.
    """
    tables = prepare(load(path_of(name)))
    bad = 0
    with _opened(source) as stream:
        for place, content in _finds(stream, "find" if source == STDIN else source):
            try:
                verdict = _judged(tables, content, place, wishes)
            except FindError as error:
                bad = error.exit_code
                print(error, file=sys.stderr)
                if wishes.as_json:
                    # Its place is kept, so that line n out answers line n in.
                    print(json.dumps({"error": str(error)}, ensure_ascii=False))
                continue
            _print(tables.guide, verdict, wishes)
    return bad


def judge_told(name: str, told: Told, wishes: Wishes) -> int:
    """Judges the one find that the command's own arguments tell; the exit code."""
    guide = load(path_of(name))
    find = _find_of(guide, told)
    _print(guide, _judged(prepare(guide), find, "find", wishes), wishes)
    return 0


def _find_of(guide: Guide, told: Told) -> dict[str, Any]:
    """A find as its file would have it."""
    if told.cites and told.claim is None:
        raise UsageError("--cites needs --claim YEAR: what is it cited for?")
    claim = {"model_year": told.claim, "cites": list(told.cites)}
    item = {
        "member": told.member,
        "readings": _readings(guide, told.read),
        "gone": list(told.gone),
    }
    return {
        "format": FORMAT,
        "guide": guide.id,
        "items": [item],
        "claim": None if told.claim is None else claim,
    }


def _readings(guide: Guide, read: Sequence[str]) -> dict[str, Any]:
    """Readings by clue, from pairs such as rings=green."""
    clues = {clue.id: clue for clue in guide.clues}
    readings: dict[str, Any] = {}
    for pair in read:
        clue, equals, value = pair.partition("=")
        if not equals:
            raise UsageError(f"--read {pair!r} is no reading; write CLUE=READING")
        if clue in readings:
            raise UsageError(f"--read {clue!r} stands twice; say it once")
        readings[clue] = _value(clues.get(clue), value)
    return readings


def _value(clue: Clue | None, value: str) -> str | float | None:
    if value == CANNOT_TELL:
        return None
    if clue and isinstance(clue.kind, Measure):
        try:
            return float(value)
        except ValueError as error:
            raise FindError(
                f"{clue.id}: {value!r} is no number; "
                f"would be right: a size in {clue.kind.unit}"
            ) from error
    return value


def _opened(source: str) -> BinaryIO:
    if source == STDIN:
        return sys.stdin.buffer
    try:
        return Path(source).open("rb")
    except OSError as error:
        raise FindError(f"{source}: {error.strerror}") from error


def _finds(stream: BinaryIO, name: str) -> Iterator[tuple[str, bytes]]:
    """Each find with its place: one a line, or the whole stream as one.

    However large the stream is, no more than one find is held in memory.
    """
    first = stream.readline(finds.MOST_BYTES + 1)
    if not _is_whole(first):
        yield name, first + stream.read(finds.MOST_BYTES + 1 - len(first))
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


def _judged(
    tables: Tables, content: bytes | Mapping[str, Any], place: str, wishes: Wishes
) -> Verdict:
    find = finds.load(content, [tables.guide], name=place)
    return judge(tables, find, away=wishes.away, without=wishes.without)


def _print(guide: Guide, verdict: Verdict, wishes: Wishes) -> None:
    if wishes.as_json:
        print(json.dumps(finds.verdict_json(verdict), ensure_ascii=False))
    else:
        print(story(guide, verdict))
