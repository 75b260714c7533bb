"""A file that people edit: opened with a tag, replaced as a whole or not at all, and
never over a change that somebody else made meanwhile.
"""

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path

from fieldid.errors import ChangedError, TakenError, WriteError
from fieldid.guides.read import content, decoded

_MARK = b"\xef\xbb\xbf"
"""The byte order mark that some editors write."""


@dataclass(frozen=True, slots=True)
class Document:
    """A file as it was when it was opened: its text, with `\\n` at the end of every
    line, and the hash of its bytes.
    """

    path: Path
    text: str
    tag: str


def opened(path: Path) -> Document:
    """The file as it is now."""
    found = content(path)
    text = decoded(found, file=str(path))
    return Document(path, text.replace("\r\n", "\n"), _tag(found))


def saved(document: Document, text: str) -> Document:
    """The file with another text; a ChangedError if it is not what was opened."""
    # A link stays a link: what it leads to is replaced.
    path = document.path.resolve()
    with _only_one(path.parent):
        before = _bytes(path)
        if before is None or _tag(before) != document.tag:
            raise ChangedError(f"{path.name} was changed on disk since it was opened")
        after = _as_before(text, before)
        if after != before:
            _replace(path, after)
    return replace(document, text=text, tag=_tag(after))


def created(path: Path, text: str) -> Document:
    """A new file; a TakenError if there is one of this name."""
    with _only_one(path.parent):
        if path.exists() or path.is_symlink():
            raise TakenError(f"{path.name} is there already")
        _replace(path, text.encode())
    return Document(path, text, _tag(text.encode()))


def relocated(path: Path, to: Path, *, tag: str | None = None) -> None:
    """Moves a file to a place that is free; with a `tag`, a ChangedError if it is not
    what was opened.
    """
    with _only_one(path.resolve().parent):
        before = _bytes(path)
        if before is None or tag not in (None, _tag(before)):
            raise ChangedError(f"{path.name} was changed on disk since it was opened")
        if path.is_symlink():
            # It may lead on from where it lies, and would lead nowhere from elsewhere.
            raise WriteError(f"{path.name} is a link, which can be moved by hand alone")
        if to.exists() or to.is_symlink():
            raise TakenError(f"{to.name} is there already")
        try:
            path.rename(to)
            _settle(path.parent)
            _settle(to.parent)
        except OSError as error:
            raise _unwritten(to, error) from error


def _tag(content: bytes) -> str:
    return sha256(content).hexdigest()


def _bytes(path: Path) -> bytes | None:
    """What is in the file; None if it is gone."""
    try:
        return path.read_bytes()
    except FileNotFoundError:
        return None
    except OSError as error:
        raise _unwritten(path, error) from error


def _as_before(text: str, before: bytes) -> bytes:
    """The text with the mark and the ends of lines that the file had."""
    lines = before.count(b"\n")
    if lines and before.count(b"\r\n") == lines:
        text = text.replace("\n", "\r\n")
    return _MARK * before.startswith(_MARK) + text.encode()


@contextmanager
def _only_one(folder: Path) -> Iterator[None]:
    """One process and one thread at a time; the lock ends with whoever holds it.

    It is on the folder itself, so that no file is left beside the guides.
    """
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError as error:
        raise _unwritten(folder, error) from error
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


def _replace(path: Path, content: bytes) -> None:
    """Puts the content in the file's place at one stroke; the lock is held.

    The name beside it is always the same, so what a crash left there is used again.
    """
    beside = path.with_name(f".{path.name}.new")
    try:
        _write(beside, content, like=path)
        os.replace(beside, path)
        _settle(path.parent)
    except OSError as error:
        with suppress(OSError):
            beside.unlink()
        raise _unwritten(path, error) from error


def _write(path: Path, content: bytes, *, like: Path) -> None:
    flags = os.O_WRONLY | os.O_CREAT | os.O_TRUNC | os.O_NOFOLLOW
    with open(os.open(path, flags, 0o666), "wb") as stream:
        if like.exists():
            os.fchmod(stream.fileno(), like.stat().st_mode & 0o777)
        stream.write(content)
        stream.flush()
        os.fsync(stream.fileno())


def _settle(folder: Path) -> None:
    """The new name outlasts a loss of power, too."""
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _unwritten(path: Path, error: OSError) -> WriteError:
    return WriteError(f"{path.name} could not be written: {error.strerror}")
