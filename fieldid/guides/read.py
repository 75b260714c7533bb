"""A guide's file to its TOML table and text; what cannot be read is a Problem."""

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from fieldid.errors import GuideError, Problem
from fieldid.guides.refusals import refusal

MOST_BYTES = 2_000_000


@dataclass(frozen=True, slots=True)
class Source:
    """A file that is TOML: its name, its text and the table it holds."""

    file: str
    text: str
    table: dict[str, Any]


def read(path: Path) -> Source:
    """The file's text and table."""
    return source(content(path), file=str(path))


def content(path: Path) -> bytes:
    """What is in the file, or a little more of it than may be."""
    try:
        with path.open("rb") as stream:
            return stream.read(MOST_BYTES + 1)
    except OSError as error:
        raise problem(str(path), 0, "unreadable", why=error.strerror) from error


def source(content: bytes, *, file: str) -> Source:
    """The text and table of a file's content."""
    text = decoded(content, file=file)
    try:
        return Source(file, text, tomllib.loads(text))
    except RecursionError as error:
        raise problem(file, 0, "too-deep") from error
    except ValueError as error:
        # A ValueError that is no TOMLDecodeError: a number with too many digits.
        why, line = _reason(str(error), text)
        raise problem(file, line, "not-toml", why=why) from error


def problem(file: str, line: int, code: str, **words: object) -> GuideError:
    """The one problem of a file that cannot be looked into."""
    told = refusal(code, **words)
    return GuideError([Problem(file, line, "", told.wrong, told.right)])


def decoded(content: bytes, *, file: str) -> str:
    """The text of a file's content, whether it is TOML or not."""
    if len(content) > MOST_BYTES:
        raise problem(file, 0, "too-large", most=MOST_BYTES)
    try:
        # Some editors write a byte order mark; it means nothing here.
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = error.object.count(b"\n", 0, error.start) + 1
        byte = f"0x{error.object[error.start]:02x}"
        raise problem(file, line, "not-utf-8", value=byte) from error


def _reason(message: str, text: str) -> tuple[str, int]:
    """The parser's reason and the line it complains of (0: it names none)."""
    match = _AT.search(message)
    if not match:
        return message.split(";")[0], 0
    line = int(match[1]) if match[1] else text.rstrip("\n").count("\n") + 1
    return message[: match.start()][:200], line


_AT = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")
