"""`fieldid inbox`: files of finds into the inbox of a folder of guides."""

import sys
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from pathlib import Path

from fieldid.errors import InboxError
from fieldid.inbox.store import beside
from fieldid.inbox.taking import Taken, take
from fieldid.inbox.values import written
from fieldid.paths import RULES

ENDS = (".json", ".zip")


def inbox(paths: Sequence[Path], rules: Path | None) -> int:
    """Takes in files, and those of folders, beside a folder of guides; the exit code.

    A file that is no file of finds costs the others nothing.
    """
    code, into = 0, beside((rules or RULES).resolve())
    for path in _files(paths):
        try:
            for line in _told(path, _taken(path, into)):
                print(line)
        except InboxError as error:
            code = error.exit_code
            print(f"{path}: {error}", file=sys.stderr)
    print(f"The inbox is {into}.")
    return code


def _files(paths: Sequence[Path]) -> Iterator[Path]:
    """The files that are named, and what a folder holds of the right kind."""
    for path in paths:
        if path.is_dir():
            yield from sorted(
                each for each in path.iterdir() if each.suffix.lower() in ENDS
            )
        else:
            yield path


def _taken(path: Path, into: Path) -> Taken:
    try:
        with path.open("rb") as stream:
            now = written(datetime.now(UTC))
            return take(into, stream, name=path.name, now=now)
    except OSError as error:
        raise InboxError(f"It cannot be read: {error.strerror}.") from error


def _told(path: Path, taken: Taken) -> Iterator[str]:
    """What became of a file, one fact a line."""
    if taken.before:
        yield f"{path}: taken in before; nothing is new"
        return
    for count, what in (
        (taken.added, "new"),
        (taken.renewed, "changed on the phone since"),
        (taken.pictured, "with photos now"),
        (taken.already, "here already"),
        (taken.older, "here in a newer edition"),
        (len(taken.refused), "not taken"),
    ):
        if count:
            yield f"{path}: {count} {what}"
    for each in taken.refused:
        name = f" ({each.name})" if each.name else ""
        yield f"{path}: find {each.place}{name}: {each.why}"
